// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;

namespace Rodtravel
{
    /// <summary>One wheel end, as it was written down.</summary>
    public sealed class Form : Input
    {
        /// <summary>Arguments that are about the whole form, and their paths in the C interface.</summary>
        private static readonly Dictionary<string, string> Wide = new Dictionary<string, string>
        {
            { "default_unit", "style.unit" },
            { "decimal_comma", "style.decimal_comma" },
            { "default_date", "default_day" }
        };

        // inputs of rodt_form

        /// <summary>The unit of lengths without one: a Unit or its word. Otherwise it is inches.</summary>
        public object DefaultUnit { get { return this["default_unit"]; } set { this["default_unit"] = value; } }

        /// <summary>Whether a comma is a decimal point, as in French.</summary>
        public object DecimalComma { get { return this["decimal_comma"]; } set { this["decimal_comma"] = value; } }

        /// <summary>The order of a day that is written in numbers: a DateOrder or its word.</summary>
        public object DateOrder { get { return this["date_order"]; } set { this["date_order"] = value; } }

        /// <summary>The day of a form without one.</summary>
        public object DefaultDate { get { return this["default_date"]; } set { this["default_date"] = value; } }

        /// <summary>Judges it. The first text that cannot be read is refused.</summary>
        public Finding Judge()
        {
            return new Finding(Judged((form, law) => form.judge(law)));
        }

        /// <summary>Judges it as a row of a file, which no text stops: Finding.Error is what could not be read.</summary>
        public Finding JudgeRow()
        {
            return new Finding(Judged((form, law) => form.judge_row(law)));
        }

        /// <summary>
        /// Judges many wheel ends as JudgeRow would each. An array is a column, by its name or heading, with a cell for
        /// each row; what the form has is that of every row.
        /// </summary>
        public Columns JudgeColumns(IDictionary<string, object[]> columns)
        {
            return Judged((form, law) => Columns.Judged(form, law, columns));
        }

        private T Judged<T>(Func<CoreForm, CoreRules, T> judge)
        {
            using (var form = new CoreForm())
            {
                foreach (var text in Given)
                    Set(form, text.Key, text.Value);
                return judge(form, Law);
            }
        }

        private static void Set(CoreForm form, string name, string text)
        {
            string path;
            try
            {
                form.set(Wide.TryGetValue(name, out path) ? path : name, text);
            }
            catch (RodtravelException error) when (Wide.ContainsKey(name))
            {
                throw error.At(name, 0);
            }
        }
    }
}
