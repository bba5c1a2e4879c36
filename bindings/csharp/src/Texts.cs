// SPDX-License-Identifier: Apache-2.0
using System;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Text;

namespace Rodtravel
{
    /// <summary>Values of C# as texts of the library, and its answers as values of C#.</summary>
    internal static class Texts
    {
        /// <summary>After the point; a number with more is written as a fraction.</summary>
        private const int MostDigits = 9;

        private static readonly UTF8Encoding Strict = new UTF8Encoding(false, true);

        [DllImport("rodtravel_csharp")]
        private static extern void core_give_back(IntPtr text);

        /// <summary>With a zero byte at the end.</summary>
        internal static byte[] Bytes(string text)
        {
            return text == null ? null : Strict.GetBytes(text + "\0");
        }

        /// <summary>The text that the library made, which gets it back.</summary>
        internal static string Taken(IntPtr text)
        {
            if (text == IntPtr.Zero)
                return null;
            int size = 0;
            while (Marshal.ReadByte(text, size) != 0)
                size++;
            byte[] bytes = new byte[size];
            Marshal.Copy(text, bytes, 0, size);
            core_give_back(text);
            return Encoding.UTF8.GetString(bytes);
        }

        /// <summary>null is a text that is not given.</summary>
        internal static string Of(string name, object value)
        {
            if (value == null)
                return "";
            if (value is string)
                return Readable(name, (string)value);
            if (value is bool)
                return (bool)value ? "true" : "false";
            if (value is int || value is long || value is short || value is sbyte || value is byte || value is ushort
                || value is uint || value is ulong || value is BigInteger)
                return ((IFormattable)value).ToString("D", CultureInfo.InvariantCulture);
            if (value is Ratio)
                return Number((Ratio)value);
            if (value is decimal)
                return Number(new Ratio((decimal)value));
            if (value is DateTime)
                return Day(name, (DateTime)value);
            if (value is Enum && Words.Of((Enum)value) != null)
                return Words.Of((Enum)value).Word;
            if (value is double || value is float)
                throw Refusals.Of(name, ((IFormattable)value).ToString(null, CultureInfo.InvariantCulture)
                    + " is a binary float, which is only nearly what was read; give it as a text");
            throw Refusals.Of(name, value.GetType() + " is no text, exact number or day");
        }

        /// <summary>A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for
        /// 3 3/8.</summary>
        private static string Number(Ratio value)
        {
            for (int digits = 0; digits <= MostDigits; digits++)
            {
                Ratio scaled = value * BigInteger.Pow(10, digits);
                if (scaled.Denominator.IsOne)
                    return Point(scaled.Numerator, digits);
            }
            return value.ToString();
        }

        private static string Point(BigInteger scaled, int digits)
        {
            string text = BigInteger.Abs(scaled).ToString(CultureInfo.InvariantCulture).PadLeft(digits + 1, '0');
            return (scaled.Sign < 0 ? "-" : "") + (digits == 0 ? text : text.Insert(text.Length - digits, "."));
        }

        private static string Day(string name, DateTime value)
        {
            if (value.TimeOfDay != TimeSpan.Zero)
                throw Refusals.Of(name, "a day was expected, without a time");
            return value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }

        private static string Readable(string name, string text)
        {
            if (text.IndexOf('\0') >= 0)
                throw Refusals.Of(name, "a text of the library has no zero character");
            try
            {
                Strict.GetByteCount(text);
                return text;
            }
            catch (EncoderFallbackException)
            {
                throw Refusals.Of(name, "the text has half of a character");
            }
        }

        internal static Ratio? Number(string text)
        {
            return string.IsNullOrEmpty(text) ? (Ratio?)null : Ratio.Parse(text);
        }

        internal static DateTime? Day(string text)
        {
            return text.Length == 0 ? (DateTime?)null
                                    : DateTime.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        }
    }
}
