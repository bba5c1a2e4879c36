// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.List;

/** What is compiled in, and readers of single texts. */
public final class Rodtravel {
    /** The law that judges where no other is asked for. */
    public static final String DEFAULT_RULES = "us-fmcsr";

    private Rodtravel() {}

    /** The version of the library. */
    public static String version() {
        return Core.version();
    }

    /** The edition of its tables of law. */
    public static String tablesEdition() {
        return Core.tables_edition();
    }

    /** The languages of sentences beside English. */
    public static List<String> languages() {
        return IntStream.range(0, Core.language_count()).mapToObj(Core::language)
                .collect(Collectors.toUnmodifiableList());
    }

    /** Reads a length, "1 3/4" or "44.45 mm": exact inches. */
    public static Ratio readLength(String text) {
        return readLength(text, null);
    }

    /** Reads a length; the {@link Unit}, or its word, is that of a number without one. */
    public static Ratio readLength(String text, Object unit) {
        return Ratio.of(Core.read_length(Texts.of("text", text), Texts.of("unit", unit)));
    }

    /** Reads a pressure, "95" or "650 kPa": exact psi. */
    public static Ratio readPressure(String text) {
        return Ratio.of(Core.read_pressure(Texts.of("text", text)));
    }

    /** Reads a time, "90" or "1:30": exact seconds. */
    public static Ratio readSeconds(String text) {
        return Ratio.of(Core.read_seconds(Texts.of("text", text)));
    }

    /** Reads a day, "14-OCT-21". */
    public static LocalDate readDate(String text) {
        return LocalDate.parse(Core.read_date(Texts.of("text", text)));
    }

    /** Inches as a mixed fraction, "1 3/4". */
    public static String writeLength(Ratio length) {
        return Core.write_length(part(length.numerator()), part(length.denominator()));
    }

    private static long part(BigInteger number) {
        if (number.bitLength() > 63)
            throw new RodtravelException(Status.RANGE, "length", Status.RANGE.text(), 0);
        return number.longValue();
    }
}
