// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A chamber, by the mark on its housing. */
public final class Chamber extends Value {
    private Chamber(CoreRecord core) {
        super(core);
    }

    /** Reads a mark, "30LS". One that is not known is refused. */
    public static Chamber of(String mark) {
        return new Chamber(Core.chamber(Texts.of("chamber", mark)));
    }

    // answers of rodt_chamber

    /** Its family, size and class, as far as they are known: "clamp 30 long". */
    @Override
    public String sentence(String language) {
        return Stream.of("family", "size", "stroke_class").map(this::get)
                .filter(word -> !word.isEmpty() && !word.equals("unknown")).collect(Collectors.joining(" "));
    }
}
