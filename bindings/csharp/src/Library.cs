// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace Rodtravel
{
    /// <summary>What is compiled in, and readers of single texts.</summary>
    public static class Library
    {
        /// <summary>The law that judges where no other is asked for.</summary>
        public const string DefaultRules = "us-fmcsr";

        /// <summary>The version of the library.</summary>
        public static string Version { get { return Core.version(); } }

        /// <summary>The edition of its tables of law.</summary>
        public static string TablesEdition { get { return Core.tables_edition(); } }

        /// <summary>The languages of sentences beside English.</summary>
        public static IReadOnlyList<string> Languages
        {
            get { return Array.AsReadOnly(Enumerable.Range(0, Core.language_count()).Select(Core.language).ToArray()); }
        }

        /// <summary>Reads a length, "1 3/4" or "44.45 mm": exact inches. The unit, a Unit or its word, is that of a number
        /// without one.</summary>
        public static Ratio ReadLength(string text, object unit = null)
        {
            return Ratio.Parse(Core.read_length(Texts.Of("text", text), Texts.Of("unit", unit)));
        }

        /// <summary>Reads a pressure, "95" or "650 kPa": exact psi.</summary>
        public static Ratio ReadPressure(string text)
        {
            return Ratio.Parse(Core.read_pressure(Texts.Of("text", text)));
        }

        /// <summary>Reads a time, "90" or "1:30": exact seconds.</summary>
        public static Ratio ReadSeconds(string text)
        {
            return Ratio.Parse(Core.read_seconds(Texts.Of("text", text)));
        }

        /// <summary>Reads a day, "14-OCT-21".</summary>
        public static DateTime ReadDate(string text)
        {
            return Texts.Day(Core.read_date(Texts.Of("text", text))).Value;
        }

        /// <summary>Inches as a mixed fraction, "1 3/4".</summary>
        public static string WriteLength(Ratio length)
        {
            return Core.write_length(Part(length.Numerator), Part(length.Denominator));
        }

        private static long Part(BigInteger number)
        {
            if (BigInteger.Abs(number) > long.MaxValue)
                throw new RodtravelException(Status.Range, "length", Status.Range.Meaning());
            return (long)number;
        }
    }
}
