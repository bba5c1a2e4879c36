// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Linq;

namespace Rodtravel
{
    /// <summary>
    /// What was found of many wheel ends: a list for each answer, with an element for each row. Immutable.
    /// </summary>
    public sealed class Columns
    {
        /// <summary>Between the cells of a column.</summary>
        private const string CellEnd = "\u001f";

        /// <summary>How many rows there are.</summary>
        public int Size { get; }

        /// <summary>The verdict of each row.</summary>
        public IReadOnlyList<Verdict> Verdicts { get; }

        /// <summary>Why, of each row.</summary>
        public IReadOnlyList<IReadOnlyList<Reason>> Reasons { get; }

        /// <summary>Which cells of each row could not be used.</summary>
        public IReadOnlyList<IReadOnlyList<ColumnFlag>> Flags { get; }

        /// <summary>The stroke of each row in inches; null where there is none, or it is no whole number of
        /// 1/127000000000 in (up to nine decimals are).</summary>
        public IReadOnlyList<Ratio?> Strokes { get; }

        /// <summary>The limit of each row in inches; null where there is none, or it is no whole number of 1/5080000 in.
        /// </summary>
        public IReadOnlyList<Ratio?> Limits { get; }

        private Columns(CoreColumns core, int rows)
        {
            Size = rows;
            Verdicts = Answers(core, "verdict", Words.Constant<Verdict>);
            Reasons = Answers(core, "reasons", Words.Set<Reason>);
            Flags = Answers(core, "flags", Words.Set<ColumnFlag>);
            Strokes = Answers(core, "stroke", Texts.Number);
            Limits = Answers(core, "limit", Texts.Number);
        }

        internal static Columns Judged(CoreForm form, CoreRules law, IDictionary<string, object[]> given)
        {
            int rows = given.Count == 0 ? 0 : given.Values.Max(cells => cells.Length);
            using (var core = new CoreColumns())
            {
                foreach (var column in given)
                {
                    var cells = column.Value.Select(cell => Texts.Of(column.Key, cell));
                    core.set(Texts.Of("name", column.Key), string.Join(CellEnd, cells), column.Value.Length);
                }
                core.judge(law, form, rows);
                return new Columns(core, rows);
            }
        }

        private IReadOnlyList<T> Answers<T>(CoreColumns core, string name, Func<string, T> read)
        {
            var cells = Size == 0 ? new string[0] : core.column(name).Split(CellEnd[0]);
            var known = cells.Distinct().ToDictionary(cell => cell, read); // few texts of many rows differ
            return Array.AsReadOnly(cells.Select(cell => known[cell]).ToArray());
        }
    }
}
