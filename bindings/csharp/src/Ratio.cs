// SPDX-License-Identifier: Apache-2.0
using System;
using System.Globalization;
using System.Numerics;

namespace Rodtravel
{
    /// <summary>An exact number: two whole numbers in lowest terms, the second above zero. Immutable.</summary>
    public struct Ratio : IComparable<Ratio>, IEquatable<Ratio>
    {
        private readonly BigInteger lower; // less one, so that what nobody made is 0

        /// <summary>The upper number, which has the sign.</summary>
        public BigInteger Numerator { get; }

        /// <summary>The lower number, above zero.</summary>
        public BigInteger Denominator { get { return lower + 1; } }

        /// <summary>A fraction. A denominator that is zero is refused with a DivideByZeroException.</summary>
        public Ratio(BigInteger numerator, BigInteger denominator)
        {
            if (denominator.IsZero)
                throw new DivideByZeroException("a fraction has no denominator that is zero");
            BigInteger common = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
            Numerator = numerator / common;
            lower = denominator / common - 1;
        }

        /// <summary>A decimal number, exactly.</summary>
        public Ratio(decimal number)
        {
            int[] parts = decimal.GetBits(number);
            BigInteger upper = new BigInteger((uint)parts[2]) << 32 | (uint)parts[1];
            BigInteger digits = upper << 32 | (uint)parts[0];
            this = new Ratio(parts[3] < 0 ? -digits : digits, BigInteger.Pow(10, parts[3] >> 16 & 255));
        }

        /// <summary>Reads what ToString writes, "-1/16" or "2"; anything else is refused with a FormatException.</summary>
        public static Ratio Parse(string text)
        {
            string[] parts = text.Split('/');
            if (parts.Length > 2)
                throw new FormatException("a whole number or a fraction was expected, such as -1/16");
            return new Ratio(Whole(parts[0]), parts.Length == 2 ? Whole(parts[1]) : 1);
        }

        private static BigInteger Whole(string text)
        {
            return BigInteger.Parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        }

        /// <summary>A whole number is exact.</summary>
        public static implicit operator Ratio(long number) { return new Ratio(number, 1); }

        /// <summary>A whole number is exact.</summary>
        public static implicit operator Ratio(BigInteger number) { return new Ratio(number, 1); }

        /// <summary>The sum, exactly.</summary>
        public static Ratio operator +(Ratio a, Ratio b)
        {
            return new Ratio(a.Numerator * b.Denominator + b.Numerator * a.Denominator, a.Denominator * b.Denominator);
        }

        /// <summary>The number with the other sign.</summary>
        public static Ratio operator -(Ratio a) { return new Ratio(-a.Numerator, a.Denominator); }

        /// <summary>The difference, exactly.</summary>
        public static Ratio operator -(Ratio a, Ratio b) { return a + -b; }

        /// <summary>The product, exactly.</summary>
        public static Ratio operator *(Ratio a, Ratio b)
        {
            return new Ratio(a.Numerator * b.Numerator, a.Denominator * b.Denominator);
        }

        /// <summary>The quotient, exactly. To divide by zero is refused with a DivideByZeroException.</summary>
        public static Ratio operator /(Ratio a, Ratio b)
        {
            return new Ratio(a.Numerator * b.Denominator, a.Denominator * b.Numerator);
        }

        /// <summary>True for the same number.</summary>
        public static bool operator ==(Ratio a, Ratio b) { return a.Equals(b); }

        /// <summary>True for another number.</summary>
        public static bool operator !=(Ratio a, Ratio b) { return !a.Equals(b); }

        /// <summary>True if the first is less.</summary>
        public static bool operator <(Ratio a, Ratio b) { return a.CompareTo(b) < 0; }

        /// <summary>True if the first is more.</summary>
        public static bool operator >(Ratio a, Ratio b) { return a.CompareTo(b) > 0; }

        /// <summary>Below, at or above zero, as the first is less, the same or more.</summary>
        public int CompareTo(Ratio other)
        {
            return (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);
        }

        /// <summary>True for the same number.</summary>
        public bool Equals(Ratio other) { return Numerator == other.Numerator && lower == other.lower; }

        /// <summary>True for the same number.</summary>
        public override bool Equals(object other) { return other is Ratio && Equals((Ratio)other); }

        /// <summary>Of the number.</summary>
        public override int GetHashCode() { return Numerator.GetHashCode() * 31 + lower.GetHashCode(); }

        /// <summary>"-1/16", or "2" of a whole number, whatever the culture.</summary>
        public override string ToString()
        {
            string whole = Numerator.ToString(CultureInfo.InvariantCulture);
            return lower.IsZero ? whole : whole + "/" + Denominator.ToString(CultureInfo.InvariantCulture);
        }
    }
}
