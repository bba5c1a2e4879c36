// SPDX-License-Identifier: Apache-2.0
using System.Collections.Generic;
using System.Linq;
using Rodtravel;

/// <summary>What languages.py asks of C#: bench call|lists|column COUNT.</summary>
static class Bench
{
    static object[] Column(int rows, params string[] cells)
    {
        return Enumerable.Range(0, rows).Select(row => (object)cells[row % cells.Length]).ToArray();
    }

    static void Main(string[] arguments)
    {
        int count = int.Parse(arguments[1]);
        if (arguments[0] == "call")
        {
            for (int i = 0; i < count; i++)
                new Form { Chamber = "30L", Released = "2 3/4", Applied = "5 5/16", Psi = "95" }.Judge().Get("verdict");
            return;
        }
        var columns = new Dictionary<string, object[]> {
            { "chamber", Column(count, "30L") }, { "released", Column(count, "2 3/4") },
            { "applied", Column(count, Enumerable.Range(0, 8).Select(i => 4 + i % 2 + " " + (1 + 2 * i) + "/16").ToArray()) },
            { "psi", Column(count, "95") } };
        if (arguments[0] == "column")
            new Form().JudgeColumns(columns);
    }
}
