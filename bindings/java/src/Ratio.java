// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Objects;

/** An exact number: two whole numbers in lowest terms, the second above zero. Immutable. */
public final class Ratio implements Comparable<Ratio> {
    private final BigInteger num;
    private final BigInteger den;

    private Ratio(BigInteger num, BigInteger den) {
        this.num = num;
        this.den = den;
    }

    /** A fraction in lowest terms. A denominator that is zero is refused with an ArithmeticException. */
    public static Ratio of(BigInteger num, BigInteger den) {
        if (den.signum() == 0)
            throw new ArithmeticException("a fraction has no denominator that is zero");
        BigInteger common = den.signum() < 0 ? num.gcd(den).negate() : num.gcd(den);
        return new Ratio(num.divide(common), den.divide(common));
    }

    /** A fraction of two whole numbers, as above. */
    public static Ratio of(long num, long den) {
        return of(BigInteger.valueOf(num), BigInteger.valueOf(den));
    }

    /** A whole number. */
    public static Ratio of(long number) {
        return of(number, 1);
    }

    /** A decimal number, exactly; one of more than a thousand places is refused with an ArithmeticException. */
    public static Ratio of(BigDecimal number) {
        if (Math.abs((long) number.scale()) > 1000)
            throw new ArithmeticException("the number has more than a thousand places");
        return of(number.unscaledValue(), BigInteger.ONE).times(
                number.scale() > 0 ? of(BigInteger.ONE, BigInteger.TEN.pow(number.scale()))
                                   : of(BigInteger.TEN.pow(-number.scale()), BigInteger.ONE));
    }

    /** Reads what {@link #toString} writes, "-1/16" or "2"; anything else is refused with a NumberFormatException. */
    public static Ratio of(String text) {
        int slash = text.indexOf('/');
        return slash < 0 ? of(new BigInteger(text), BigInteger.ONE)
                         : of(new BigInteger(text.substring(0, slash)), new BigInteger(text.substring(slash + 1)));
    }

    /** The upper number, which has the sign. */
    public BigInteger numerator() {
        return num;
    }

    /** The lower number, above zero. */
    public BigInteger denominator() {
        return den;
    }

    /** -1, 0 or 1. */
    public int signum() {
        return num.signum();
    }

    /** The sum, exactly, as of the next three. */
    public Ratio plus(Ratio other) {
        return of(num.multiply(other.den).add(other.num.multiply(den)), den.multiply(other.den));
    }

    /** The difference. */
    public Ratio minus(Ratio other) {
        return plus(other.negate());
    }

    /** The product. */
    public Ratio times(Ratio other) {
        return of(num.multiply(other.num), den.multiply(other.den));
    }

    /** The quotient. To divide by zero is refused with an ArithmeticException. */
    public Ratio dividedBy(Ratio other) {
        return of(num.multiply(other.den), den.multiply(other.num));
    }

    /** The same with the other sign. */
    public Ratio negate() {
        return new Ratio(num.negate(), den);
    }

    /** The decimal number, exactly; one that never ends is refused with an ArithmeticException. */
    public BigDecimal toBigDecimal() {
        return new BigDecimal(num).divide(new BigDecimal(den));
    }

    @Override
    public int compareTo(Ratio other) {
        return num.multiply(other.den).compareTo(other.num.multiply(den));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ratio && num.equals(((Ratio) other).num) && den.equals(((Ratio) other).den);
    }

    @Override
    public int hashCode() {
        return Objects.hash(num, den);
    }

    /** "-1/16", or "2" of a whole number. */
    @Override
    public String toString() {
        return den.equals(BigInteger.ONE) ? num.toString() : num + "/" + den;
    }
}
