// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Optional;

/** Values of Java as texts of the library, and its answers as values of Java. */
final class Texts {
    /** After the point; a number with more is written as a fraction. */
    private static final int MOST_DIGITS = 9;

    private Texts() {}

    static byte[] bytes(String text) {
        return text == null ? null : text.getBytes(StandardCharsets.UTF_8);
    }

    static String string(byte[] bytes) {
        return bytes == null ? null : new String(bytes, StandardCharsets.UTF_8);
    }

    static RodtravelException refusal(String field, String text) {
        return new RodtravelException(Status.ARGUMENT, field, text, 0);
    }

    /** null is a text that is not given. */
    static String of(String name, Object value) {
        if (value == null)
            return "";
        if (value instanceof CharSequence)
            return readable(name, value.toString());
        if (value instanceof Integer || value instanceof Long || value instanceof Short || value instanceof Byte
                || value instanceof BigInteger || value instanceof Boolean || value instanceof LocalDate)
            return value.toString();
        if (value instanceof Word)
            return ((Word) value).word();
        if (value instanceof Ratio)
            return number((Ratio) value);
        if (value instanceof BigDecimal)
            return number(exact(name, (BigDecimal) value));
        if (value instanceof Double || value instanceof Float)
            throw refusal(name, value + " is a binary float, which is only nearly what was read; give it as a text");
        throw refusal(name, value.getClass().getName() + " is no text, exact number or day");
    }

    private static Ratio exact(String name, BigDecimal value) {
        try {
            return Ratio.of(value);
        } catch (ArithmeticException error) {
            throw new RodtravelException(Status.RANGE, name, Status.RANGE.text(), 0);
        }
    }

    /** A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for 3 3/8. */
    private static String number(Ratio value) {
        for (int digits = 0; digits <= MOST_DIGITS; digits++) {
            Ratio scaled = value.times(Ratio.of(BigInteger.TEN.pow(digits), BigInteger.ONE));
            if (scaled.denominator().equals(BigInteger.ONE))
                return new BigDecimal(scaled.numerator(), digits).toPlainString();
        }
        return value.toString();
    }

    private static String readable(String name, String text) {
        if (text.indexOf('\0') >= 0)
            throw refusal(name, "a text of the library has no zero character");
        if (text.codePoints().anyMatch(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE))
            throw refusal(name, "the text has half of a character");
        return text;
    }

    static Optional<Ratio> ratio(String text) {
        return text == null || text.isEmpty() ? Optional.empty() : Optional.of(Ratio.of(text));
    }

    static Optional<LocalDate> day(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    }
}
