# SPDX-License-Identifier: Apache-2.0
"""What `rodtravel vehicle` says of a vehicle: python3 test_vehicle.py PATH_TO_RODTRAVEL EXAMPLE_VEHICLE EXAMPLE_COLUMN"""
import gzip
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import tap

DEMO = Path(__file__).resolve().parent.parent.parent / "examples" / "data" / "demo_vehicle.csv"
HEAD = "position,chamber,stroke_class,released,applied,psi,arm_length,adjuster\n"


def row(position, stroke="1 3/4", chamber="clamp 30", arm="", adjuster="", psi="95"):
    """A wheel end with a type 30 standard, limit 2 in (49 CFR 393.47(e)(1))."""
    whole = stroke.split(" ")
    applied = stroke if not stroke else f"{2 + int(whole[0])}{' ' + whole[1] if len(whole) > 1 else ''}"
    return f"{position},{chamber},standard,2,{applied},{psi},{arm},{adjuster}\n"


def vehicle(axles, **strokes):
    """Rows of a whole vehicle; strokes such as L1="2 1/8" differ from 1 3/4 in."""
    return HEAD + "".join(row(f"{axle}{side}", strokes.get(f"{side}{axle}", "1 3/4"))
                          for axle in range(1, axles + 1) for side in "LR")


def run(*arguments, data=None, day="2024-05-06"):
    words = list(map(str, arguments))
    if day and "--as-of" not in words:
        words += ["--as-of", day]
    return subprocess.run([COMMAND, "vehicle", *words], input=data, capture_output=True, text=True,
                          encoding="utf-8", timeout=60, check=False)


def run_bytes(data, *options):
    return subprocess.run([COMMAND, "vehicle", "-", "--as-of", "2024-05-06", *options], input=data, capture_output=True,
                          timeout=60, check=False)


class Case(unittest.TestCase):
    def judged(self, data, status, *options):
        result = run("-", *options, data=data)
        self.assertEqual((result.returncode, result.stderr), (status, ""), result.stdout)
        return result.stdout

    def judgement(self, data, status, *options):
        return json.loads(self.judged(data, status, "--json", *options))

    def refused(self, data, says, *options):
        result = run("-", *options, data=data)
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        for word in [says] if isinstance(says, str) else says:
            self.assertIn(word, result.stderr)


class Outcome(Case):
    """The first line is the outcome; the status goes with it."""

    def first(self, data, status, *options):
        return self.judged(data, status, *options).splitlines()[0]

    def test_all_good(self):
        self.assertEqual(self.first(vehicle(5), 0), "ALL BRAKES IN ADJUSTMENT")

    def test_limits_that_are_not_law_are_said_at_once(self):
        self.assertEqual(self.first(vehicle(5), 0, "--rules", "ca-nsc"),
                         "ALL BRAKES IN ADJUSTMENT, BY LIMITS OF COMMON PRACTICE")
        self.assertEqual(self.first(vehicle(5).replace("clamp 30", "clamp 24"), 0, "--rules", "ca-nsc"),
                         "ALL BRAKES IN ADJUSTMENT, BUT THE LIMITS ARE UNCONFIRMED")

    def test_a_rod_that_hardly_moved_takes_no_doubt_away(self):
        hardly = vehicle(2, L2="0 1/4")
        self.assertEqual(self.first(hardly, 0), "ALL BRAKES IN ADJUSTMENT, BUT SOME HARDLY MOVED")
        self.assertEqual(self.first(hardly, 0, "--rules", "ca-nsc"),
                         "ALL IN ADJUSTMENT BY COMMON PRACTICE, BUT SOME HARDLY MOVED")
        self.assertEqual(self.first(hardly.replace("clamp 30", "clamp 24"), 0, "--rules", "ca-nsc"),
                         "ALL IN ADJUSTMENT BY UNCONFIRMED LIMITS, BUT SOME HARDLY MOVED")

    def test_a_rod_that_hardly_moved_is_not_called_too_tight(self):
        said = " ".join(self.judged(vehicle(2, L2="0 1/4"), 0).split())
        self.assertIn("2L: the rod hardly moved", said)
        self.assertNotIn("too tight", said)
        self.assertIn("2L: in adjustment, but much shorter", " ".join(self.judged(vehicle(2, L2="1"), 0).split()))

    def test_both_sources_of_a_carriers_limit_are_said(self):
        with tempfile.TemporaryDirectory() as folder:
            own = Path(folder) / "own.csv"
            own.write_text("family,size,class,limit,source\nclamp,30,standard,1 7/8,Shop rule 7\n", encoding="utf-8")
            said = self.judged(vehicle(1), 0, "--limits", own, "--why")
            self.assertIn("    own limits: Shop rule 7\n", said)
            self.assertIn("    limits: 49 CFR Part 393, 393.47(e)(1)", said)
            end = self.judgement(vehicle(1), 0, "--limits", own)["wheel_ends"][0]
            self.assertEqual((end["source"], end["evidence"], end["law_evidence"]),
                             ("Shop rule 7", "none", "checked"))
            self.assertIn("393.47(e)(1)", end["law_source"])
        end = self.judgement(vehicle(1), 0)["wheel_ends"][0]
        self.assertEqual((end["source"], end["evidence"]), (end["law_source"], end["law_evidence"]))
        self.assertNotIn("own limits", self.judged(vehicle(1), 0))

    def test_a_column_class_is_the_stroke_class(self):
        """A long stroke of 2 1/4 is good; taken as standard it would fail."""
        said = self.judged("position,chamber,class,released,applied,psi\n1L,30,long,1,3 1/4,95\n1R,30,long,1,3 1/4,95\n", 0)
        self.assertTrue(said.startswith("ALL BRAKES IN ADJUSTMENT"))

    def test_ontario_says_major(self):
        self.assertEqual(self.first(vehicle(5, L2="2 1/8"), 1, "--rules", "ca-on"),
                         "DEFECTIVE, A MAJOR DEFECT: DO NOT DRIVE")
        self.assertEqual(self.first(vehicle(5, L2="2 1/4", R3="2 1/8", L4="2 1/8"), 1, "--rules", "ca-on"),
                         "OUT OF SERVICE, A MAJOR DEFECT: DO NOT DRIVE")

    def test_exactly_twenty_percent(self):
        """Ten brakes: 1 + 1/2 + 1/2 is out of service, three halves are not."""
        self.assertEqual(self.first(vehicle(5, L2="2 1/4", R3="2 1/8", L4="2 1/8"), 1), "OUT OF SERVICE")
        self.assertEqual(self.first(vehicle(5, L2="2 1/8", R3="2 1/8", L4="2 1/8"), 1),
                         "DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION")

    def test_both_readings_are_shown(self):
        said = " ".join(self.judged(vehicle(3, L2="2 1/4", R2="2 1/8"), 1, "--why").split())
        self.assertTrue(said.startswith("AMBIGUOUS: OUT OF SERVICE BY PERCENT, NOT BY THE CHART"))
        self.assertIn("1 1/2 of 6 brakes defective, 25 %: 20 % is reached, but not the 2 whole brakes of the chart", said)
        self.assertIn("from memory, unconfirmed", said)
        half = "over the limit by less counts as half a defective brake: North American Standard"
        self.assertIn(half, said)
        self.assertNotIn(half, " ".join(self.judged(vehicle(3, L2="2 1/4"), 1, "--why").split()))
        self.assertNotIn("Sources", self.judged(vehicle(3, L2="2 1/4"), 1), "they are behind --why")

    def test_a_dead_brake_of_the_first_axle(self):
        self.assertEqual(self.first(vehicle(5, L1="0"), 1), "OUT OF SERVICE IF AXLE 1 STEERS")
        self.assertEqual(self.first(vehicle(5, L3="0"), 1), "DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION")

    def test_axle_that_does_not_match(self):
        data = HEAD + row("1L", chamber="clamp 24", stroke="1 1/2") + row("1R")
        self.assertEqual(self.first(data, 1), "DEFECTIVE: AN AXLE DOES NOT MATCH")
        self.assertIn("393.47(b)", self.judged(data, 1))
        data = HEAD + row("1L", arm="5 1/2") + row("1R", arm="6")
        self.assertIn("393.47(c)", self.judged(data, 1))

    def test_not_measured_is_neither_zero_nor_good(self):
        some = HEAD + row("1L") + row("1R")
        for options in (["--brakes", "6"], []):
            data = some if options else some + "2L,30,,,,,,\n2R,30,,,,,,\n3L,30,,,,,,\n3R,30,,,,,,\n"
            said = self.judged(data, 3, *options)
            self.assertTrue(said.startswith("UNDETERMINED: NOT EVERY BRAKE IS PROVEN\n"), said)
            self.assertIn("4 brakes not checked", " ".join(said.split()))

    def test_an_end_that_is_missing_counts_as_a_brake(self):
        found = self.judgement(HEAD + row("1L") + row("1R") + row("2L"), 3)
        self.assertEqual((found["brakes"], found["not_given"]), (4, 1))
        self.assertEqual(found["axles"][1]["mismatches"][0]["code"], "end-missing")

    def test_out_and_open(self):
        data = HEAD + row("1L") + row("1R") + row("2L", "2 1/8")
        self.assertEqual(self.first(data, 1, "--brakes", "10"), "DEFECTIVE: WHETHER OUT OF SERVICE IS OPEN")


class Page(Case):
    """What a person in a yard reads."""

    def test_fits_the_screen(self):
        for data in (vehicle(5), vehicle(3, L2="2 1/4", R2="2 1/8"), vehicle(2, L1="0"), DEMO.read_text(encoding="utf-8")):
            for line in run("-", data=data).stdout.splitlines():
                self.assertLessEqual(len(line), 80, line)

    def test_millimetres(self):
        data = HEAD + "1L,clamp 30,standard,54,104.8,95,140,manual\n1R,clamp 30,standard,54 mm,105,95,140,manual\n"
        said = self.judged(data, 1, "--unit", "mm")
        self.assertIn("50.80 mm  2      at the limit ", said)
        self.assertIn("51.00 mm  2      over by 0.20 mm ", said)

    def test_unit_may_name_the_vehicle(self):
        """By the first row for all; a typing error further down is no vehicle."""
        table = "unit,position,chamber,released,applied,psi\n{},1L,30,2 1/8,4,95\n{},1R,30,2 1/8,4,95\n"
        result = run("-", data=table.format("T-104", "T-104"))
        self.assertEqual(result.returncode, 0, result.stdout)
        self.assertIn("names vehicles", result.stderr)
        self.judged(table.format("in", "in"), 0)
        self.judged(table.format("in", "in1"), 3)

    def test_wheel_ends_stand_by_axle(self):
        said = self.judged(HEAD + row("2R") + row("1R") + row("2L") + row("1L"), 0)
        self.assertEqual([line[:2] for line in said.splitlines() if line[:2] in ("1L", "1R", "2L", "2R")],
                         ["1L", "1R", "2L", "2R"])

    def test_advice_by_adjuster(self):
        data = HEAD + row("1L", "2 1/8", adjuster="automatic") + row("1R", "2 1/8", adjuster="manual") + row("2L", "2 1/8") + row("2R")
        said = " ".join(self.judged(data, 1).split())
        self.assertIn("1L: automatic adjuster: do not adjust it by hand to make it pass; find the cause", said)
        self.assertIn("Lessons Learned", said)
        self.assertIn("1R: adjust it, measure again", said)
        self.assertIn("2L: find out which adjuster it is", said)

    def test_one_sentence_for_many(self):
        said = self.judged(vehicle(5).replace(",95,", ",,"), 0)
        self.assertIn("  all: reservoir pressure not recorded", said)
        self.assertEqual(said.count("reservoir pressure not recorded"), 1)

    def test_a_note_that_changes_nothing_is_not_made(self):
        """A bare 30 is judged as a clamp chamber, the smallest limit of its size; another kind is asked for only
        where it could have a smaller one."""
        self.assertNotIn("clamp-band", self.judged(vehicle(5).replace("clamp 30", "30"), 0))

    def test_halves_are_said(self):
        said = " ".join(self.judged(vehicle(2, L1="2 1/8", R2="2 1/8"), 1).split())
        self.assertIn("2 brakes over by less than 1/4 in count half each: that makes 1 defective of 4.", said)
        self.assertIn("Brakes 2 in adjustment, 2 over by less than 1/4 in Counted 4 brakes (2 axles).", said)

    def test_what_a_reading_can_mean_besides(self):
        said = self.judged("position,chamber,released,applied,psi\n1L,24L,2,4 1/4,95\n1R,24L,2,3,95\n", 1)
        self.assertIn("  1L: Read the stroke stamped on the housing: a clamp 24 long stamped 3 in", said)

    def test_safety_words(self):
        for data, status in ((vehicle(2), 0), (vehicle(2, L1="2 1/4"), 1)):
            said = " ".join(self.judged(data, status).split())
            self.assertIn("Chock the wheels.", said)
            self.assertIn("never open a spring brake", said)
            self.assertEqual("Do not drive it" in said, status == 1)

    def test_demo(self):
        said = run(DEMO, "--as-of", "2026-03-02").stdout
        self.assertIn("1/2 of 10 brakes defective, 5 %: below 20 %", said)
        self.assertIn("3L  clamp 30/30 standard 2 1/8     2      over by 1/8      out of adjustment\n", said)


class Numbers(Case):
    def test_exact_texts(self):
        found = self.judgement(vehicle(4, L2="2 1/4", R2="2 1/8"), 1)
        self.assertEqual((found["defective"], found["percent"], found["outcome"], found["whole_needed"]),
                         ("1 1/2", "18 3/4", "below-criterion", 2))
        self.assertEqual([end["defect"] for end in found["wheel_ends"]][2:4], ["full", "half"])

    def test_unreadable_reading_is_kept_as_undetermined(self):
        found = self.judgement(HEAD + "1L,30,standard,2,2-Jan,95,,\n" + row("1R"), 3)
        self.assertEqual(found["wheel_ends"][0]["verdict"], "undetermined")
        self.assertIn("spreadsheet-date", found["wheel_ends"][0]["reasons"])
        self.assertIn("date", found["wheel_ends"][0]["unreadable"])
        self.assertEqual((found["wheel_ends"][0]["unreadable_field"], found["wheel_ends"][1]["unreadable_field"]),
                         ("applied", None))

    def test_days(self):
        head = "position,chamber,stroke_class,released,applied,date\n"
        data = head + "1L,clamp 36,standard,2,4 3/8,2021-10-13\n1R,clamp 36,standard,2,4 3/8,2021-10-14\n"
        found = self.judgement(data, 1)
        self.assertEqual([end["verdict"] for end in found["wheel_ends"]], ["out-of-adjustment", "in-adjustment"])
        self.assertEqual(found["mixed_days"], 1)
        self.assertIn("more than one day", self.judged(data, 1))

    def test_french_form(self):
        data = "Position;Chamber;Released;Applied;psi;remark\r\n1G;30;2,125;4,125;95;\"a;b\"\r\n1D;30;2,125;4,125;95;\r\n"
        found = self.judgement(data, 0, "--separator", ";", "--decimal-comma")
        self.assertEqual([end["position"] for end in found["wheel_ends"]], ["1L", "1R"])
        self.assertEqual(found["wheel_ends"][0]["applied_stroke"], "2")


class Columns(Case):
    """Headings are those of `batch`, and what is not read is named."""

    ROW = "1L,36,1 1/2,3 7/8,standard,95,2020-05-01\n1R,36,1 1/2,3 7/8,standard,95,2020-05-01\n"

    def test_headings_in_every_form(self):
        """Clamp 36 had 2 1/4 in until 2021-10-13: a date that is not seen would pass 2 3/8."""
        for head in ("position,chamber,released,applied,stroke_class,psi,date", "Position,CHAMBER,Released,Applied,"
                     "Stroke class,PSI,Inspection date", "position,chamber,released,applied,strokeClass,pressure,inspDate"):
            found = self.judgement(head + "\n" + self.ROW, 1)
            self.assertEqual([(end["limit"], end["verdict"]) for end in found["wheel_ends"]],
                             [("2 1/4", "out-of-adjustment")] * 2, head)

    def test_conditions_are_read(self):
        head = "position,chamber,released,applied,stroke class,psi,psi after,engine,spring brake\n"
        for cells, reason in (("70,off,released", "pressure-low"), ("95,on,released", "engine-running"),
                              ("95,off,on", "spring-brake-applied")):
            found = self.judgement(head + "".join(f"{end},30,2,3,standard,95,{cells}\n" for end in ("1L", "1R")), 3)
            self.assertIn(reason, found["wheel_ends"][0]["reasons"])

    def test_what_is_not_read_is_named(self):
        head = "position,chamber,released,applied,psi,date of last service\n"
        result = run("-", data=head + "1L,30,2,3,95,2020-01-01\n1R,30,2,3,95,2020-01-01\n")
        self.assertIn('the column "date of last service" is not read', " ".join(result.stderr.split()))
        result = run("-", "--column", "date=", data=head + "1L,30,2,3,95,2020-01-01\n1R,30,2,3,95,2020-01-01\n")
        self.assertEqual((result.returncode, result.stderr), (0, ""))

    def test_a_column_by_its_heading(self):
        data = "Radposition;Zylinder;los;fest\n1L;30;2;4\n1R;30;2;4\n"
        words = "position=Radposition", "chamber=zylinder", "released=los", "applied=fest"
        self.judged(data, 0, "--separator", ";", *(word for column in words for word in ("--column", column)))

    def test_the_law_of_today_is_said(self):
        result = run("-", data=vehicle(1), day=None)
        self.assertIn("2 rows have no date: judged by the law of today", " ".join(result.stderr.split()))
        self.assertEqual(run("-", data=vehicle(1)).stderr, "")

    def test_the_unit_of_a_row_holds_for_its_arm(self):
        """49 CFR 393.47(c): 6 in and 15.24 cm are alike, 6 in and 6 cm are not."""
        data = "position,chamber,released,applied,psi,unit,arm_length\n1L,20,1,2,95,in,6\n1R,20,{}\n"
        for end, status in (("2.54,5.08,95,cm,15.24", 0), ("25.4,50.8,95,mm,6 in", 0), ("1 in,2 in,95,ft,6 in", 3),
                            ("2.54,5.08,95,cm,6", 1)):
            self.assertEqual(self.judgement(data.format(end), status)["mismatched_axles"], int(status == 1), end)
        self.refused(data.format("1 in,2 in,95,ft,6"), "the unit of this number is not known")

    def test_a_date_of_two_meanings(self):
        """9/1/2013 is 9 January or 1 September, both before clamp 36 had 2 1/2 in; 8:00 is no time of day."""
        head = "position,chamber,released,applied,psi,date\n"
        rows = "".join(f"{end},36,1,3 3/8,95,{{}}\n" for end in ("1L", "1R"))
        for day, status in (("9/1/2013", 1), ("2013-09-01", 1), ("9/1/2013 8:00", 3), ("10/11/2021x", 3)):
            self.judged(head + rows.format(day, day), status)
        self.judged(head + rows.format("10/11/2021", "10/11/2021"), 3)
        self.judged(head + rows.format("10/11/2021", "10/11/2021"), 1, "--date-order", "mdy")


class Refusals(Case):
    def test_the_file(self):
        self.refused("", "is empty")
        self.refused(HEAD, "no wheel end")
        self.refused("chamber,released,applied\n", 'no column "position"')
        self.refused("position,chamber,released,applied,Position\n", "two columns could be position")
        self.refused(HEAD + '1L,"30,standard\n', ":2: a quote is opened here")
        self.refused(HEAD + row("1L").strip() + ",extra\n", ":2: the row has more cells")
        missing = run(tempfile.gettempdir() + "/no/such/file.csv")
        self.assertEqual(missing.returncode, 2)
        self.assertIn("no/such/file.csv: No such file", missing.stderr)

    def test_files_that_are_no_text(self):
        for start, says in ((b"PK\x03\x04", "workbook"), (b"PAR1", "Parquet"), (b"SQLite format 3\0", "database")):
            result = run_bytes(start + b"\0\1\2\3" * 50)
            self.assertEqual((result.returncode, result.stdout), (2, b""))
            self.assertIn(says, result.stderr.decode())

    def test_compressed_and_encoded_files(self):
        """As many bytes as there are decide nothing: half a file is no vehicle."""
        text = HEAD.replace("chamber", "récepteur") + "".join(row(f"{axle}{side}") for axle in range(1, 6) for side in "LR")
        plain = text.encode("windows-1252")
        options = ["--encoding", "windows-1252", "--column", "chamber=Récepteur"]
        wanted = run_bytes(plain, *options)
        self.assertEqual((wanted.returncode, wanted.stderr), (0, b""))
        packed = gzip.compress(plain)
        if b"was built without" not in run_bytes(packed, *options).stderr:
            self.assertEqual(run_bytes(packed, *options).stdout, wanted.stdout)
            for data, says in ((packed[:-9], "ends too early"), (packed[:-6] + b"\0\1" + packed[-4:], "is damaged")):
                result = run_bytes(data, *options)
                self.assertEqual((result.returncode, result.stdout), (2, b""))
                self.assertIn(says + "\n", " ".join(result.stderr.decode().split(" ")))
        self.assertEqual(run_bytes(plain, "--column", "chamber=Récepteur").returncode, 2)
        self.assertIn(b"is not known here", run_bytes(plain, "--encoding", "klingon").stderr)

    def test_the_rows(self):
        self.refused(HEAD + row("1L") + row("axle 1 left"), [":3: the position axle 1 left is there twice", "--by"])
        self.refused(HEAD + row("L1"), [':2: a cell of the column "position"', "L1\n    ^", "number of the axle"])
        self.refused(HEAD + row("1L", arm="six"), 'column "arm_length"')
        self.refused(HEAD + row("1L", adjuster="bent"), "adjuster is manual, automatic or empty")
        self.refused(HEAD + "".join(row(f"{axle}{side}") for axle in range(1, 42) for side in "LR"), "more wheel ends")

    def test_the_options(self):
        self.refused(vehicle(2), "--brakes is 3, but standard input has 4", "--brakes", "3")
        for word in ("0", "-1", "1000", "ten", "4.0", "", "4294967300"):
            self.refused(vehicle(2), "--brakes is a whole number", f"--brakes={word}")
        self.refused(vehicle(2), "--separator is one character", "--separator", "||")
        self.refused(vehicle(2), "another separator", "--decimal-comma")
        self.refused(vehicle(2), "no rule set", "--rules", "nowhere")


class Example(unittest.TestCase):
    def test_the_c_example(self):
        said = subprocess.run([EXAMPLE], capture_output=True, text=True, check=True, timeout=60).stdout.splitlines()
        self.assertEqual(said[0], "ambiguous: 1 1/2 of 6 brakes defective, 25 %: 20 % is reached, but not the 2 whole "
                                  "brakes of the chart")
        self.assertEqual(sum(line.startswith("axle 2: ") for line in said), 4)
        self.assertEqual([line[:3] for line in said[5:]], ["2L:", "3L:"])


    def test_the_column_example(self):
        said = subprocess.run([COLUMN], capture_output=True, text=True, check=True, timeout=60).stdout.splitlines()
        self.assertEqual([line.split() for line in said],
                         [["10160000", "in-adjustment", "at-limit", "assumed-clamp"],
                          ["10239375", "out-of-adjustment", "over-limit", "assumed-clamp"],
                          ["0", "inoperative", "no-movement", "assumed-clamp"],
                          ["10200000", "out-of-adjustment", "over-limit"],
                          ["-1", "undetermined", "released-missing"]])


if __name__ == "__main__":
    COMMAND, EXAMPLE, COLUMN = sys.argv[1:4]
    tap.main()
