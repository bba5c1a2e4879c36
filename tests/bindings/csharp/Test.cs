// SPDX-License-Identifier: Apache-2.0
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Numerics;
using System.Text;
using System.Threading;
using Rodtravel;

/// <summary>What the package finds and refuses. Prints TAP.</summary>
static class Test
{
    static int count;
    static bool failed;

    static void Ok(bool right, string what)
    {
        failed |= !right;
        Console.WriteLine((right ? "ok " : "not ok ") + ++count + " - " + what);
    }

    static void Is(object found, object wanted, string what)
    {
        Ok(Equals(found, wanted), what);
        if (!Equals(found, wanted))
            Console.WriteLine("# found " + found + ", wanted " + wanted);
    }

    /// <summary>Status, field, column and line of what a call must refuse.</summary>
    static void Refused(string wanted, Action call)
    {
        string found = "nothing";
        try
        {
            call();
        }
        catch (RodtravelException error)
        {
            found = error.Status.Word() + " " + (error.Field == "" ? "-" : error.Field) + " " + error.Column + " " + error.Line;
        }
        Is(found, wanted, "refused: " + wanted);
    }

    static Form Over(object applied = null)
    {
        return new Form { Chamber = "30L", Released = "2 3/4", Applied = applied ?? "5 5/16", Psi = 95 };
    }

    static Ratio Of(long a, long b)
    {
        return new Ratio(a, b);
    }

    static void OneWheelEnd()
    {
        Finding over = Over().Judge();
        Is(over.Verdict, Verdict.OutOfAdjustment, "the verdict");
        Ok(over.Verdict.Meaning() != "" && over.Verdict.Word() == "out-of-adjustment", "as a word");
        Is(over.Margin, (Ratio?)Of(-1, 16), "the margin is exact");
        Is(over.AppliedStroke + over.Limit, (Ratio?)Of(81, 16), "stroke and limit");
        Ok(over.Reasons.SequenceEqual(new[] { Reason.OverLimit }), "reasons");
        Is(over.ToString(), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text");
        Is(over.LongLimit, null, "what is not given is null");
        Is(over.Defect, Defect.Half, "the defect");
        Ok(over.Source.StartsWith("49 CFR Part 393, 393.47", StringComparison.Ordinal), "the source");
        Is(over.Get("law_row.published"), "2 1/2", "a member by its path");
        Is(over.Chamber + "," + over.Rules, "clamp 30 long,us-fmcsr", "texts");
        Ok(over.Sentences("fr")[0].Contains("dépasse la limite") && over.Sentences().Count == 1, "a reason in French");
        Ok(over.Sentence("es").Contains("límite"), "the finding in Spanish");
        Ok(over.Spoken().StartsWith("Released 2 3/4", StringComparison.Ordinal), "what is said aloud");
        Ok(over.Json("fr").Contains("\"limit\":") && over.Json("fr") != over.Json(), "as JSON");
        Ok(over == Over().Judge() && over != Over("5").Judge() && over != null && !over.Equals(3), "equal by value");
        Is(new Dictionary<Finding, int> { { over, 1 } }[Over().Judge()], 1, "a key of a dictionary");
        var form = Over();
        form.Division = "1/8";
        form.Date = new DateTime(2024, 5, 6);
        Is(form.Judge().Proof, Proof.NotResolved, "what the division proves");
        Is(form.Judge().Day, (DateTime?)new DateTime(2024, 5, 6), "a day in and out");
        Is(new Form { Chamber = "30", Released = "50,8", Applied = "104,8", DefaultUnit = Unit.Mm, DecimalComma = true }
               .Judge().Verdict, Verdict.OutOfAdjustment, "a form in millimetres with decimal commas");
        RodtravelException error = Over("2-Jan").JudgeRow().Error;
        Is(error.Status.Word() + error.Field + error.Column, "date-cellapplied1", "a row");
        Is(Over("2-Jan").JudgeRow().Verdict, Verdict.Undetermined, "its verdict");
        Ok(Over().JudgeRow() == over && over.Error == null, "a sound row");
    }

    static void TheRest()
    {
        Finding over = Over().Judge();
        Vehicle vehicle = Vehicle.Judge(new[] { new WheelEnd("1L", over) { Adjuster = "automatic", ArmLength = 6 },
                                                new WheelEnd("1R", Over(5).Judge()) });
        Is(vehicle.Outcome.Word() + vehicle.Share, "ambiguous1/4", "half a brake of two");
        Is(vehicle.OutOfAdjustment + vehicle.InAdjustment, 2L, "counts are numbers");
        Ok(vehicle.Json().Contains("find-fault"), "what to do next");
        Is(Vehicle.Judge(new[] { new WheelEnd("1L", over) }, 10).Outcome, Outcome.Undetermined, "brakes not measured");
        Is(new AirForm("warning") { Pressure = 62, Rules = Rules.Of("us-cdl") }.Judge().Result, AirResult.Good, "a warning");
        Is(new AirForm(AirCheck.Warning) { Pressure = "60", Rules = Rules.Of("us-newvehicle") }.Judge().AtLimit, true,
           "at the edge");
        Count counted = new Tally { Brakes = 6, Full = 1, Half = 1 }.Judge();
        Is(counted.Outcome.Word() + counted.Brakes, "ambiguous6", "the chart of whole brakes");
        Identification which = new Clues { Stamp = "24" }.Identify();
        Is(which.StrictLimit + " " + which.NextObservation.Word(), "7/4 long-sign", "identified");
        Ok(which.Count > 2 && which.ToString().Contains("candidates"), "candidates");
        Is(Chamber.Of("30LS").Size + Chamber.Of("30LS").StrokeClass.Word(), "30long", "a mark");
        Is(Chamber.Of("30LS").ToString(), "clamp 30 long", "as a text");
        Is(new Marks("36").FindLimit(new DateTime(2021, 10, 13)).Get("limit"), "2 1/4", "a limit on a day");
        Is(new Marks("24") { RatedStroke = 3 }.FindLimit().Exact("limit"), (Ratio?)Of(5, 2), "with a mark more");
        Ok(Rules.All.Count > 5 && Rules.Of("us-cdl").AirLimits("fr").Count > 3 && Rules.All.Contains(Rules.Of("us-cdl"))
           && Rules.Of("us-fmcsr").Limits().Contains("limits"), "rules");
        Form form = Over("5 1/4");
        form.Rules = Rules.Of("us-fmcsr").Load("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard");
        Finding kept = form.Judge();
        Ok(kept.Reasons.Contains(Reason.OverOwnLimit) && kept.Limit.Value < kept.LawLimit.Value && kept.Rules == "yard",
           "a carrier's own limit");
    }

    static Dictionary<string, object[]> Cells(params object[][] columns)
    {
        return new Dictionary<string, object[]> { { "chamber", columns[0] }, { "Released", columns[1] },
                                                  { "applied", columns[2] } };
    }

    static void ManyWheelEnds()
    {
        var cells = Cells(new object[] { "30L", "30", null, "30L", "30" },
                          new object[] { "2 3/4", "2 1/8", "1", "2-Jan", "2.750001" },
                          new object[] { "5 5/16", Of(33, 8), "2", "5", "4.612345" });
        Columns found = new Form { Psi = 95 }.JudgeColumns(cells);
        for (int i = 0; i < 5; i++)
        {
            Finding one = new Form { Psi = 95, Chamber = cells["chamber"][i], Released = cells["Released"][i],
                                     Applied = cells["applied"][i] }.JudgeRow();
            Ok(found.Verdicts[i] == one.Verdict && found.Reasons[i].SequenceEqual(one.Reasons)
               && found.Strokes[i] == one.AppliedStroke && found.Limits[i] == one.Limit, "row " + i + " of columns");
        }
        Is(string.Join("|", found.Flags.Select(flags => string.Join(",", flags))), "||Missing|Invalid|", "flags");
        Is(new Form().JudgeColumns(Cells(new object[0], new object[0], new object[0])).Size, 0, "no rows");
        object[] blank = { "" }, one1 = { "1" }, two = { "1", "2" };
        Is(new Form().JudgeColumns(Cells(blank, blank, blank)).Verdicts.Single(), Verdict.Undetermined, "a blank row");
        Refused("argument Released 0 0", () => new Form().JudgeColumns(Cells(two, new object[] { "1\u001f", "1" }, two)));
        Refused("argument released 0 0", () => new Form().JudgeColumns(Cells(two, one1, two)));
        Refused("argument applied 0 0", () => new Form().JudgeColumns(Cells(two, two, new object[] { 2.5, "1" })));
        Refused("argument colour 0 0", () => new Form().JudgeColumns(new Dictionary<string, object[]> { { "colour", two } }));
        Refused("syntax psi 1 0", () => new Form { Psi = "high" }.JudgeColumns(Cells(two, two, two)));
    }

    static void StepsAndReservoirs()
    {
        Rules law = Rules.Of("ca-on");
        var steps = new Steps { Vehicle = VehicleClass.Single, Rules = law }.In();
        Is(steps[3].Step, Step.Warning, "a step");
        Ok(steps[3].Text(StepPart.Defective).Contains("below 55 psi") && steps[3].Row.Contains("warning"), "its figures");
        Ok(new Steps { Rules = law }.In("fr")[0].Text(StepPart.Title) != steps[0].Text(StepPart.Title), "in French");
        Ok(new Steps { Vehicle = "combination", Rules = law }.In().Count > steps.Count, "a combination has more steps");
        Refused("syntax vehicle 1 0", () => new Steps { Vehicle = "sledge" }.In());
        Is(Reservoirs.RatedVolume("30"), Of(89, 1), "the volume of a chamber");
        Ok(Reservoirs.RequiredVolume(464) == 5568 && Reservoirs.RequiredVolume(464, true) == 3712, "of its reservoirs");
        Is(Reservoirs.BuildUpSeconds(11136, 5568), Of(50, 1), "seconds");
        Is(Reservoirs.EstimateApplication(105, 5568, 464, 1), Of(12453, 130), "an estimate");
        Is(Reservoirs.EstimateApplications(105, 60, 5568, 464, 1), 5, "another");
        Refused("argument chambers 0 0", () => Reservoirs.RequiredVolume(-1));
        Refused("argument volumes 0 0", () => Reservoirs.BuildUpSeconds(1, 0));
        Refused("argument estimate 0 0", () => Reservoirs.EstimateApplication(1, 1, 1, 2));
        Refused("unknown-chamber chamber 0 0", () => Reservoirs.RatedVolume("bolt A"));
    }

    static void Numbers()
    {
        foreach (object applied in new object[] { "4 1/8", "4.125", "4⅛", Of(33, 8), 4.125m })
            Is(new Form { Chamber = "30", Released = "2 1/8", Applied = applied }.Judge().AppliedStroke, (Ratio?)2,
               applied.GetType().Name);
        foreach (object applied in new object[] { 4, 4L, 4u, (byte)4, new BigInteger(4), 4.00m })
            Is(new Form { Chamber = "30", Released = "2 1/8", Applied = applied }.Judge().AppliedStroke, (Ratio?)Of(15, 8),
               applied.GetType().Name);
        Is(Library.ReadLength("44.45 mm"), Of(7, 4), "millimetres");
        Is(Library.ReadLength("44.45", Unit.Mm), Of(7, 4), "by their unit");
        Ok(Library.ReadPressure("95") == 95 && Library.ReadSeconds("1:30") == 90
           && Library.ReadDate("14-OCT-21") == new DateTime(2021, 10, 14), "readers");
        Is(Library.WriteLength(Of(-7, 4)), "-1 3/4", "back to a text");
        Ratio half = Ratio.Parse("2/4");
        Ok(half + 1 == Of(3, 2) && half - 1 == Of(1, -2) && half * half == Of(1, 4) && half / -3 == Of(-1, 6), "arithmetic");
        Ok(default(Ratio) == 0 && new Ratio(-79228162514264337593543950335m).Numerator.ToString() ==
           "-79228162514264337593543950335" && new Ratio(-0.5m) == -half && half > 0 && half.GetHashCode() == Of(1, 2).GetHashCode(),
           "numbers");
        Is(Ratio.Parse("-1/16") + " " + Of(4, 2), "-1/16 2", "and texts");
        try
        {
            new Ratio(1, 0).ToString();
            Ok(false, "no denominator of zero");
        }
        catch (DivideByZeroException)
        {
            Ok(true, "no denominator of zero");
        }
    }

    static void RefusedTexts()
    {
        foreach (object value in new object[] { 4.125, 4.0f, 1e300, double.NaN })
            Refused("argument applied 0 0", () => Over(value));
        Refused("date-cell applied 1 0", () => Over("2-Jan").Judge());
        Refused("syntax applied 5 0", () => Over("4 1/").Judge());
        Refused("negative applied 1 0", () => Over(Of(-1, 8)).Judge());
        Refused("empty applied 0 0", () => Over("").Judge());
        Refused("argument colour 0 0", () => { Form form = Over(); form["colour"] = "red"; form.Judge(); });
        Refused("argument applied 0 0", () => Over("4\0"));
        Refused("argument applied 0 0", () => Over("4\ud83d"));
        Refused("syntax applied 2 0", () => Over("4\ud83d\ude00").Judge());
        Refused("argument applied 0 0", () => Over(new[] { 4 }));
        Refused("argument date 0 0", () => Over().Date = new DateTime(2024, 5, 6, 7, 8, 9));
        Refused("argument applied 0 0", () => Over(DayOfWeek.Monday));
        Refused("syntax default_unit 1 0", () => new Form { DefaultUnit = "ells" }.Judge());
        Refused("unknown-rules - 0 0", () => Rules.Of("atlantis"));
        Refused("unknown-rules - 0 0", () => Rules.Of(null));
        Refused("argument unit 0 0", () => Library.ReadLength("3", "ells"));
        Refused("syntax - 3 0", () => Library.ReadLength("4½¼"));
        Refused("range length 0 0", () => Library.WriteLength(BigInteger.Pow(10, 30)));
        Refused("laxer limit 19 2", () => Rules.Of("us-fmcsr").Load("family,size,class,limit\nclamp,30,standard,3\n", "yard"));
        Refused("argument word 0 0", () => Words.Constant<StrokeClass>("tall"));
        Refused("argument word 0 0", () => DayOfWeek.Monday.Word());
    }

    static void RefusedValues()
    {
        Finding over = Over().Judge();
        Refused("argument ends 0 0", () => Vehicle.Judge(new WheelEnd[0]));
        Refused("argument finding 0 1", () => Vehicle.Judge(new[] { new WheelEnd("1L", null) }));
        Refused("syntax position 1 2", () => Vehicle.Judge(new[] { new WheelEnd("1L", over), new WheelEnd("left", over) }));
        Refused("argument adjuster 0 1", () => Vehicle.Judge(new[] { new WheelEnd("1L", over) { Adjuster = 1.5 } }));
        Refused("argument brakes 0 0", () => Vehicle.Judge(new[] { new WheelEnd("1L", over) }, -1));
        Refused("syntax pressure 1 0", () => new AirForm("warning") { Pressure = "high" }.Judge());
        Refused("argument tally 0 0", () => new Tally { Brakes = 1, Full = 2 }.Judge());
        Refused("argument language 0 0", () => over.Json("xx"));
        Refused("argument colour 0 0", () => over.Get("colour"));
        Refused("argument verdict 0 0", () => over.Exact("verdict"));
        Finding closed = Over().Judge();
        closed.Dispose();
        closed.Dispose();
        Refused("argument - 0 0", () => closed.Verdict.Word());
        Refused("argument - 0 0", () => closed.Json());
        Refused("argument - 0 1", () => Vehicle.Judge(new[] { new WheelEnd("1L", closed) }));
        try
        {
            Over("2-Jan").Judge();
        }
        catch (ArgumentException error)
        {
            Is(error.Message, "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "as a text");
            var own = (RodtravelException)error;
            Ok(own.Say("fr-CA") != own.Text && own.Say("xx") == own.Text, "in another language");
        }
        Ok(Over().Judge() == over, "after an error all is well");
    }

    static bool Work(int times)
    {
        return Enumerable.Range(0, times).All(i =>
        {
            try
            {
                Over("2-Jan").Judge();
                return false;
            }
            catch (RodtravelException error)
            {
                return error.Column == 1 && Over().Judge().Margin == Of(-1, 16);
            }
        });
    }

    static void Threads()
    {
        var right = new bool[4];
        Finding shared = Over().Judge();
        var all = Enumerable.Range(0, 4).Select(i => new Thread(() => right[i] = Work(200))).ToList();
        all.Add(new Thread(shared.Dispose));
        all.ForEach(each => each.Start());
        Refused("argument - 0 0", () => { while (shared.Verdict == Verdict.OutOfAdjustment) Thread.Yield(); });
        all.ForEach(each => each.Join());
        Ok(right.All(each => each), "threads");
    }

    static long Pages()
    {
        return File.Exists("/proc/self/statm") ? long.Parse(File.ReadAllText("/proc/self/statm").Split(' ')[1]) : 0;
    }

    /// <summary>So many calls, and the memory before and after; one value in two is left to the collector.</summary>
    static void Memory(int calls)
    {
        long before = 0;
        for (int part = 0; part < 5; part++)
        {
            for (int i = 0; i < calls / 10; i++)
            {
                Over().JudgeRow().Sentence();
                using (Finding closed = Over("2-Jan").JudgeRow())
                    closed.Get("verdict");
            }
            GC.Collect();
            GC.WaitForPendingFinalizers();
            before = part == 1 ? Pages() : before;
        }
        long more = Pages() - before;
        Ok(more < 8000, "nothing is lost");
        Console.WriteLine("# " + more + " pages more");
    }

    static int Main(string[] arguments)
    {
        Console.SetOut(new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true });
        Thread.CurrentThread.CurrentCulture = new CultureInfo("fr-FR");
        if (arguments.Length > 0)
        {
            Memory(int.Parse(arguments[0]));
        }
        else
        {
            OneWheelEnd();
            TheRest();
            ManyWheelEnds();
            StepsAndReservoirs();
            Numbers();
            RefusedTexts();
            RefusedValues();
            Threads();
            Memory(10000);
        }
        Console.WriteLine("1.." + count);
        return failed ? 1 : 0;
    }
}
