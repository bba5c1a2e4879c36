// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using Rodtravel;

/// <summary>From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to
/// spare: mono Fleet.exe examples/data/fleet.csv. Judges each row by the law of its day. A row that cannot be read stops
/// nothing.</summary>
static class Fleet
{
    static readonly string[] Fields = { "chamber", "stroke_class", "rated_stroke", "released", "applied", "psi", "division",
                                        "date" };

    /// <summary>The cells of a file of CSV. A quote inside of a quoted cell is doubled.</summary>
    static List<List<string>> Table(string text)
    {
        var rows = new List<List<string>> { new List<string>() };
        var cell = new StringBuilder();
        bool quoted = false;
        foreach (char c in text + "\n")
        {
            if (c == '"')
            {
                quoted = !quoted;
                if (quoted && cell.Length > 0)
                    cell.Append(c);
            }
            else if (!quoted && (c == ',' || c == '\n'))
            {
                rows.Last().Add(cell.ToString());
                cell.Clear();
                if (c == '\n')
                    rows.Add(new List<string>());
            }
            else if (c != '\r')
            {
                cell.Append(c);
            }
        }
        return rows;
    }

    /// <summary>Records that are wheel ends by their headings: an empty one, or the heading once more, is none.</summary>
    static IEnumerable<Dictionary<string, string>> WheelEnds(List<List<string>> table)
    {
        foreach (List<string> cells in table.Skip(1))
        {
            var row = table[0].Zip(cells, Tuple.Create).ToDictionary(cell => cell.Item1, cell => cell.Item2);
            string chamber, released;
            row.TryGetValue("chamber", out chamber);
            row.TryGetValue("released", out released);
            if ((chamber ?? "") + (released ?? "") != "" && chamber != "chamber")
                yield return row;
        }
    }

    static Finding Judge(Dictionary<string, string> row)
    {
        var form = new Form();
        foreach (string field in Fields)
            form[field] = row.ContainsKey(field) ? row[field] : null;
        return form.JudgeRow();
    }

    static string Line(string unit, Finding[] findings)
    {
        Func<Verdict, int> count = verdict => findings.Count(found => found.Verdict == verdict);
        Ratio? least = findings.Min(found => found.Margin);
        return string.Format("{0,-8}{1,5}{2,5}{3,6}{4,6}   {5}", unit, count(Verdict.InAdjustment),
            count(Verdict.OutOfAdjustment), count(Verdict.Inoperative), count(Verdict.Undetermined),
            least == null ? "not known" : Library.WriteLength(least.Value) + " in");
    }

    static void Main(string[] arguments)
    {
        var units = WheelEnds(Table(File.ReadAllText(arguments[0]))).GroupBy(row => row["unit_no"], Judge);
        Console.WriteLine("{0,-8}{1,5}{2,5}{3,6}{4,6}   least to spare", "unit", "in", "out", "dead", "open");
        foreach (var unit in units.OrderBy(unit => unit.Key, StringComparer.Ordinal))
            Console.WriteLine(Line(unit.Key, unit.ToArray()));
    }
}
