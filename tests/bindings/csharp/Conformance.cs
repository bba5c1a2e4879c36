// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using Rodtravel;

/// <summary>C#'s judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
/// standard output.</summary>
static class Conformance
{
    static readonly Regex Quoted = new Regex("\"((?:[^\"\\\\]|\\\\.)*)\"");
    static readonly Regex Escape = new Regex("\\\\(?:u([0-9a-fA-F]{4})|(.))");

    /// <summary>A question is an object of texts.</summary>
    static Dictionary<string, string> Read(string line)
    {
        string[] texts = Quoted.Matches(line).Cast<Match>().Select(match => Plain(match.Groups[1].Value)).ToArray();
        return Enumerable.Range(0, texts.Length / 2).ToDictionary(i => texts[2 * i], i => texts[2 * i + 1]);
    }

    static string Plain(string text)
    {
        return Escape.Replace(text, match => match.Groups[1].Success
            ? ((char)int.Parse(match.Groups[1].Value, NumberStyles.HexNumber)).ToString() : Escaped(match.Groups[2].Value));
    }

    static string Escaped(string letter)
    {
        int known = "nrtbf".IndexOf(letter, StringComparison.Ordinal);
        return known < 0 ? letter : "\n\r\t\b\f".Substring(known, 1);
    }

    static string Text(string value)
    {
        return "\"" + string.Concat(value.Select(c => c < ' ' || c == '"' || c == '\\' ? "\\u" + ((int)c).ToString("x4")
                                                                                       : c.ToString())) + "\"";
    }

    static string Number(Ratio? value)
    {
        return value == null ? "null" : Text(value.ToString());
    }

    static string Error(RodtravelException error)
    {
        return error == null ? "null" : string.Format("{{\"status\": {0}, \"field\": {1}, \"column\": {2}}}",
                                                      Text(error.Status.Word()), Text(error.Field), error.Column);
    }

    static T Fill<T>(T input, Dictionary<string, string> texts) where T : Input
    {
        foreach (var text in texts)
            if (text.Key == "rules")
                input.Rules = Rules.Of(text.Value);
            else
                input[text.Key] = text.Value;
        return input;
    }

    static string WheelEnd(Dictionary<string, string> of)
    {
        using (Finding found = Fill(new Form(), of).JudgeRow())
            return string.Format("\"verdict\": {0}, \"stroke\": {1}, \"limit\": {2}, \"margin\": {3}, \"proof\": {4}, "
                + "\"probability_over\": {5}, \"reasons\": [{6}], \"error\": {7}", Text(found.Verdict.Word()),
                Number(found.AppliedStroke), Number(found.Limit), Number(found.Margin), Text(found.Proof.Word()),
                Number(found.ProbabilityOver), string.Join(", ", found.Reasons.Select(reason => Text(reason.Word()))),
                Error(found.Error));
    }

    static string ReadChamber(string mark)
    {
        Chamber read = Chamber.Of(mark);
        return string.Format("\"family\": {0}, \"size\": {1}, \"spring_size\": {2}, \"stroke_class\": {3}, \"error\": null",
            Text(read.Family.Word()), Text(read.Size), Text(read.SpringSize), Text(read.StrokeClass.Word()));
    }

    static string JudgeCount(Dictionary<string, string> of)
    {
        Count found = Fill(new Tally(), of).Judge();
        return string.Format("\"outcome\": {0}, \"share\": {1}, \"error\": null", Text(found.Outcome.Word()),
                             Number(found.Share));
    }

    static string JudgeAir(Dictionary<string, string> of)
    {
        AirFinding found = Fill(new AirForm(of["check"]), of).Judge();
        return string.Format("\"result\": {0}, \"at_limit\": \"{1}\", \"error\": null", Text(found.Result.Word()),
                             found.AtLimit ? "yes" : "no");
    }

    static string Answer(string ask, Dictionary<string, string> of)
    {
        switch (ask)
        {
            case "wheel-end": return WheelEnd(of);
            case "length": return "\"value\": " + Number(Library.ReadLength(of["text"])) + ", \"error\": null";
            case "chamber": return ReadChamber(of["text"]);
            case "count": return JudgeCount(of);
            case "air": return JudgeAir(of);
            default: throw new NotSupportedException(ask);
        }
    }

    static void Main()
    {
        var utf8 = new UTF8Encoding(false);
        var input = new StreamReader(Console.OpenStandardInput(), utf8);
        var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { AutoFlush = true };
        for (string line = input.ReadLine(); line != null; line = input.ReadLine())
        {
            Dictionary<string, string> question = Read(line);
            string id = question["id"], ask = question["ask"], said;
            question.Remove("id");
            question.Remove("ask");
            try
            {
                said = Answer(ask, question);
            }
            catch (RodtravelException error)
            {
                said = "\"error\": " + Error(error);
            }
            output.Write("{\"id\": " + Text(id) + ", " + said + "}\n");
        }
    }
}
