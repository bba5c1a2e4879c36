// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What was found of one wheel end. Lengths are inches, pressures psi. */
public final class Finding extends Value {
    Finding(CoreFinding core) {
        super(core);
    }

    private static CoreFinding core(Held held) {
        return (CoreFinding) held;
    }

    // answers of rodt_finding

    /** How it counts among the defective brakes. */
    public Defect defect() {
        return Defect.of(ask(held -> core(held).defect()));
    }

    /** Where the limit is published, in one line. */
    public Optional<String> source() {
        return Optional.ofNullable(ask(held -> core(held).source()));
    }

    /** What a person says aloud of it, in English. */
    public String spoken() {
        return spoken("");
    }

    /** What a person says aloud of it, in a language. */
    public String spoken(String language) {
        return ask(held -> core(held).spoken(Texts.of("language", language)));
    }

    /** A sentence for each reason, in the order of {@link #reasons}, in English. */
    public List<String> sentences() {
        return sentences("");
    }

    /** A sentence for each reason, in a language. */
    public List<String> sentences(String language) {
        String said = ask(held -> core(held).sentences(Texts.of("language", language)));
        return said == null ? List.of() : List.of(said.split("\n"));
    }

    /** Of {@link Form#judgeRow}: the first text that could not be read. */
    public Optional<RodtravelException> error() {
        return ask(held -> {
            CoreFinding row = core(held);
            return row.row_status().equals("ok") ? Optional.<RodtravelException>empty()
                    : Optional.of(new RodtravelException(Status.of(row.row_status()), row.row_field(), row.row_text(),
                                                         row.row_column(), 0, new String[0]));
        });
    }
}
