# SPDX-License-Identifier: Apache-2.0
"""One file has one verdict, whichever way it goes in: python3 test_seams.py RODTRAVEL

Every case is one wheel end under headings as people write them, some cells damaged. It goes through `batch` as a table
and as lines of JSON, through `vehicle`, as a record through `report`, and through Python where the package is built. A
record is somebody's signed word, so a text that cannot be read is refused there by its name, and nothing else differs."""
import csv
import io
import json
import random
import re
import subprocess
import sys
import tempfile
import unittest

import tap

try:
    import rodtravel
except ImportError:
    rodtravel = None

DAY = "2024-05-06"
LAWS = "36,1,3 3/8,standard,95"  # 2 3/8 in passes clamp 36 since 2021-10-14 (limit 2 1/2), not before (2 1/4)
TESTED = "chamber,released,applied,stroke_class,psi"

# Headings, cells, verdict, limit, reasons that must be there. Limits: 49 CFR 393.47(e)(1).
CASES = [
    # Headings.
    (TESTED, LAWS, "in-adjustment", "2 1/2", ""),
    ("Chamber,RELEASED,Applied,Stroke Class,PSI", LAWS, "in-adjustment", "2 1/2", ""),
    ("chamber,released,applied,strokeClass,Pressure,date", LAWS + ",2020-05-01", "out-of-adjustment", "2 1/4", ""),
    ("chamber,released,applied,STROKECLASS,psi,Inspection date", LAWS + ",2020-05-01", "out-of-adjustment", "2 1/4", ""),
    ("chamber,released,applied,stroke-class,psi,insp_date", LAWS + ",2020-05-01", "out-of-adjustment", "2 1/4", ""),
    ("chamber,released,applied,Stroke.Class,psi,dateOfInspection", LAWS + ",2020-05-01", "out-of-adjustment", "2 1/4", ""),
    (TESTED + ",psi after", LAWS + ",70", "undetermined", "2 1/2", "pressure-low"),
    (TESTED + ",psiAfter", LAWS + ",70", "undetermined", "2 1/2", "pressure-low"),
    (TESTED + ",Pressure After", LAWS + ",70", "undetermined", "2 1/2", "pressure-low"),
    (TESTED + ",engine", LAWS + ",on", "undetermined", "2 1/2", "engine-running"),
    (TESTED + ",Spring Brake", LAWS + ",on", "undetermined", "2 1/2", "spring-brake-applied"),
    (TESTED + ",drum", LAWS + ",hot", "in-adjustment", "2 1/2", "drum-hot"),
    ("chamber,released,applied,stroke class,psi,Rated stroke", "24,1,3 1/2,long,95,3", "in-adjustment", "2 1/2", ""),
    ("chamber,released,applied,stroke class,psi,ratedStroke", "24,1,3 1/2,,95,3", "in-adjustment", "2 1/2", ""),
    (TESTED + ",note", LAWS + ",x", "in-adjustment", "2 1/2", ""),
    # Dates.
    (TESTED + ",date", LAWS + ",9/1/2013", "out-of-adjustment", "2 1/4", "date-ambiguous"),
    (TESTED + ",date", LAWS + ",9/1/2013 8:00", "undetermined", "", "date-unreadable"),
    (TESTED + ",date", LAWS + ",9/1/2013 8:00 AM", "undetermined", "", "date-unreadable"),
    (TESTED + ",date", LAWS + ",10/11/2021x", "undetermined", "", "date-unreadable"),
    (TESTED + ",date", LAWS + ",7/9/0213", "undetermined", "", "date-unreadable"),
    (TESTED + ",date", "30,1,3,standard,95,2010-9-1", "undetermined", None, "date-unreadable"),
    (TESTED + ",date", "30,1,3,standard,95,2010-09-01", "undetermined", "", "rules-not-in-force"),
    (TESTED + ",date", LAWS + ",", "in-adjustment", "2 1/2", ""),
    # Units.
    (TESTED + ",unit", "30,54,104,standard,95,mm", "in-adjustment", "2", ""),
    (TESTED + ",Unit", "30,54,106,standard,95,mm", "out-of-adjustment", "2", ""),
    (TESTED + ",unit", "30,5.4,10.4,standard,95,cm", "in-adjustment", "2", ""),
    (TESTED + ",unit", "30,54 1/8,104,standard,95,mm", "undetermined", "2", "released-unreadable"),
    (TESTED + ",unit", "30,2 1/8,4 1/4,standard,95,centimeter s", "undetermined", "2", "other-unreadable"),
    (TESTED + ",unit,rated_stroke", "24,25,87,long,95,mm,3", "undetermined", None, "other-unreadable"),
    (TESTED + ",unit,rated_stroke", "24,25,87,long,95,mm,3 in", "in-adjustment", "2 1/2", ""),
    # Cells.
    (TESTED, "30,31/8,5 1/4,standard,95", "undetermined", "2", "lost-blank"),
    (TESTED, "30,2-Jan,4,standard,95", "undetermined", "2", "spreadsheet-date"),
    (TESTED, "30,,4,standard,95", "undetermined", "2", "released-missing"),
    (TESTED, "30,1,3,short,95", "undetermined", "2", "other-unreadable"),
    (TESTED, "30,1,3,standard,lots", "undetermined", "2", "other-unreadable"),
    (TESTED + ",division", "30,1,3,standard,95,16", "undetermined", "2", "other-unreadable"),
    (TESTED + ",rated stroke", "30,1,3,standard,95,0", "undetermined", "2", "other-unreadable"),
    (TESTED + ",spring_brake", "30,2,2,standard,95,aplied", "undetermined", "2", "no-movement"),
    (TESTED, "30,2,2,standard,95", "inoperative", "2", "no-movement"),
    (TESTED, "30,2,2,standard,0", "undetermined", "2", "no-movement"),
    (TESTED, "20L,2,4,,95", "in-adjustment", "2", ""),
    (TESTED + ",rated_stroke", "20L,2,4,,95,2 1/4", "out-of-adjustment", "1 3/4", "conflicting-marks"),
    (TESTED, "??,1,3,standard,95", "undetermined", "", "chamber-unreadable"),
]

# Cells for rows at random, sound and damaged.
LENGTHS = ["2", "2 1/8", "2-1/8", "2.125", "2⅛", "17/8", "31/8", "54 mm", "5.4 cm", "", "n/a", "2-Jan", "2 1/8 ft", "175", "-1", "x"]
POOLS = {
    "chamber": ["30", "30L", "T36", "24 LS", "bolt C", "roto 30", "dd3", "20L", "3030", "18", "", "??", "30.0"],
    "released": LENGTHS, "applied": ["4", "4 1/4", "4.125", "41/8", "104 mm", "10.4 cm", "3 7/8", *LENGTHS],
    "Stroke class": ["standard", "long", "", "unknown", "short"],
    "ratedStroke": ["", "", "2 1/2", "3", "0", "76 mm", "x"],
    "PSI": ["95", "95", "85", "105", "0", "655 kPa", "", "lots"],
    "psi_after": ["", "", "92", "60", "x"],
    "division": ["", "", "1/16", "1 mm", "16", "0", "x"],
    "Inspection date": ["", "2024-01-02", "2020-05-01", "9/1/2013", "10/11/2021", "2010-09-01", "9/1/2013 8:00", "42"],
    "unit": ["in", "in", "", "mm", "cm", "ft"],
    "engine": ["", "off", "on", "idle"], "spring brake": ["", "released", "on", "x"], "drum": ["", "cold", "hot", "x"],
}

# Names that a record has at its head, not at a wheel end.
HEAD = {"date": "date", "unit": "length_unit"}
FIELDS = ["chamber", "released", "applied", "stroke_class", "rated_stroke", "psi", "psi_after", "division", "date", "unit",
          "engine", "spring_brake", "drum"]
ALIASES = {"pressure": "psi", "pressureafter": "psi_after", "inspdate": "date", "inspectiondate": "date",
           "dateofinspection": "date"}


def field_of(heading):
    """A second reader of headings."""
    word = re.sub("[ _.-]", "", heading).lower()
    return {name.replace("_", ""): name for name in FIELDS}.get(word, ALIASES.get(word))


def run(*arguments, data):
    return subprocess.run([COMMAND, *arguments], input=data, capture_output=True, text=True, encoding="utf-8", timeout=60,
                          check=False)


def batch(head, cells):
    result = run("batch", "--as-of", DAY, "-", data=f"{head}\n{cells}\n")
    row = next(csv.DictReader(io.StringIO(result.stdout)))
    return row["verdict"], row["limit"], row["reasons"].split(), row["applied_stroke"], row["margin"]


def from_json(answer):
    return (answer["verdict"], answer["limit"] or "", answer["reasons"], answer["applied_stroke"] or "",
            answer["margin"] or "")


def ndjson(head, cells):
    line = json.dumps(dict(zip(head.split(","), cells.split(","))))
    return from_json(json.loads(run("batch", "--as-of", DAY, "--format", "ndjson", "-", data=line + "\n").stdout))


def vehicle(head, cells):
    result = run("vehicle", "--as-of", DAY, "--json", "-", data=f"position,{head}\n1L,{cells}\n1R,{cells}\n")
    return from_json(json.loads(result.stdout)["wheel_ends"][1])


def report(head, cells):
    """The answer, or the message of a refusal."""
    values = {field_of(heading): cell for heading, cell in zip(head.split(","), cells.split(",")) if cell}
    end = {name: text for name, text in values.items() if name is not None and name not in HEAD}
    record = {"record": "brake-stroke-inspection", "version": 1, "date": DAY, "rules": "us-fmcsr"}
    record.update({HEAD[name]: text for name, text in values.items() if name in HEAD})
    record["wheel_ends"] = [{"position": position, **end} for position in ("1L", "1R")]
    result = run("report", "--json", "-", data=json.dumps(record))
    if result.returncode == 2:
        return result.stderr
    return from_json(json.loads(result.stdout)["stroke"]["wheel_ends"][1])


def written(value):
    """A mixed fraction."""
    if value is None:
        return ""
    whole, rest = divmod(abs(value), 1)
    return "-" * (value < 0) + (" ".join([str(whole)] * (whole > 0) + [str(rest)] * (rest > 0)) or "0")


def python(head, cells):
    """judge_columns by the headings, and judge_row by the fields, which must agree."""
    words = dict(zip(head.split(","), cells.split(",")))
    answer = rodtravel.judge_columns({heading: [cell] for heading, cell in words.items()}, default_date=DAY)[0]
    row = {field_of(heading): cell for heading, cell in words.items() if field_of(heading)}
    finding, _ = rodtravel.judge_row(**row, default_date=DAY)
    assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons)
    return (str(finding.verdict), written(finding.limit), [str(reason) for reason in finding.reasons],
            written(finding.applied_stroke), written(finding.margin))


class Seams(unittest.TestCase):
    def test_the_table(self):
        for head, cells, verdict, limit, reason in CASES:
            with self.subTest(f"{head}: {cells}"):
                judged = batch(head, cells)
                self.assertEqual(judged[:2], (verdict, judged[1] if limit is None else limit))
                self.assertLessEqual(set(reason.split()), set(judged[2]))

    def same_as_the_table(self, way):
        for head, cells, *_ in CASES:
            with self.subTest(f"{head}: {cells}"):
                self.assertEqual(way(head, cells), batch(head, cells))

    def test_lines_of_json(self):
        self.same_as_the_table(ndjson)

    def test_vehicles(self):
        self.same_as_the_table(vehicle)

    @unittest.skipIf(rodtravel is None, "the Python package is not built")
    def test_python(self):
        self.same_as_the_table(python)

    def test_rows_at_random(self):
        """Files of eighty rows, as a table, as lines of JSON, as a vehicle and as columns."""
        draw = random.Random(5)
        positions = [f"{axle}{side}" for axle in range(1, 41) for side in "LR"]
        for _ in range(6):
            rows = [{heading: draw.choice(pool) for heading, pool in POOLS.items()} for _ in positions]
            text = io.StringIO()
            table = csv.DictWriter(text, ["position", *POOLS], lineterminator="\n")
            table.writeheader()
            table.writerows({"position": position, **row} for position, row in zip(positions, rows))
            judged = [(row["verdict"], row["limit"], row["reasons"].split(), row["applied_stroke"], row["margin"])
                      for row in csv.DictReader(io.StringIO(run("batch", "--as-of", DAY, "-", data=text.getvalue()).stdout))]
            ends = json.loads(run("vehicle", "--as-of", DAY, "--json", "-", data=text.getvalue()).stdout)["wheel_ends"]
            lines = run("batch", "--as-of", DAY, "--format", "ndjson", "-",
                        data="".join(json.dumps(row) + "\n" for row in rows)).stdout.splitlines()
            self.assertEqual([from_json(end) for end in ends], judged)
            self.assertEqual([from_json(json.loads(line)) for line in lines], judged)
            if rodtravel is not None:
                answers = rodtravel.judge_columns({heading: [row[heading] for row in rows] for heading in POOLS},
                                                  default_date=DAY)
                self.assertEqual([(str(answer.verdict), [str(reason) for reason in answer.reasons])
                                  for answer in answers], [(row[0], row[2]) for row in judged])

    def test_a_unit_that_names_vehicles(self):
        """Fleets call a vehicle a unit: such a column is not that of the lengths."""
        head, cells = TESTED + ",unit", "30,2,4,standard,95,T-104"
        self.assertEqual(batch(head, cells)[0], "in-adjustment")
        for way in (ndjson, vehicle):
            self.assertEqual(way(head, cells), batch(head, cells))

    def test_records(self):
        """What only a file judges around is refused, and its name is said."""
        for head, cells, *_ in CASES:
            with self.subTest(f"{head}: {cells}"):
                told, judged = report(head, cells), batch(head, cells)
                if isinstance(told, str):
                    self.assertTrue(any(re.search("unreadable|spreadsheet|ambiguous", code) for code in judged[2]), told)
                    named = [field_of(heading) for heading in head.split(",")]
                    self.assertTrue(any(name and HEAD.get(name, name) in told for name in named), told)
                else:
                    self.assertEqual(told, judged)

    def test_a_lost_blank(self):
        """21/4 may be 2 1/4: as a mark, an arm, a diameter or a figure of a carrier it is refused, and the hint says so."""
        hint = "a blank may be lost"
        end = {"position": "1L", "chamber": "20", "released": "1", "applied": "2"}
        record = {"record": "brake-stroke-inspection", "version": 1, "date": DAY, "rules": "us-fmcsr"}
        own = tempfile.NamedTemporaryFile("w", suffix=".csv")
        self.addCleanup(own.close)
        own.write("family,size,class,limit\nclamp,30,standard,11/4\n")
        own.flush()
        ways = [run("stroke", "20L", "1", "2", "--rated", "21/4", data=""),
                run("stroke", "20L", "1", "2", "--marked-limit", "11/4", data=""),
                run("limits", "20L", "--rated", "21/4", data=""), run("identify", "--rated", "21/4", data=""),
                run("identify", "--diameter", "81/8", data=""),
                run("stroke", "30", "1", "2", "--limits", own.name, data=""),
                run("vehicle", "-", data="position,chamber,released,applied,arm_length\n1L,20,1,2,11/2\n")]
        ways += [run("report", "-", data=json.dumps({**record, "wheel_ends": [{**end, key: text}]}))
                 for key, text in (("rated_stroke", "21/4"), ("marked_limit", "11/4"), ("arm_length", "11/2"))]
        for done in ways:
            with self.subTest(done.args):
                self.assertEqual((done.returncode, hint in " ".join(done.stderr.split())), (2, True), done.stderr)

    @unittest.skipIf(rodtravel is None, "the Python package is not built")
    def test_a_lost_blank_in_python(self):
        for call in (lambda: rodtravel.judge("20L", "1", "2", rated_stroke="21/4"),
                     lambda: rodtravel.Chamber(family="clamp", size="20", rated_stroke="21/4"),
                     lambda: rodtravel.identify(diameter="81/8"), lambda: rodtravel.identify(rated_stroke="21/4"),
                     lambda: rodtravel.WheelEnd("1L", rodtravel.judge("20", "1", "2"), arm_length="11/2"),
                     lambda: rodtravel.load_rules("family,size,class,limit\nclamp,30,standard,11/4\n")):
            with self.assertRaisesRegex(rodtravel.Error, "a blank may be lost"):
                call()

    def test_a_noted_check(self):
        """A usual figure is no limit: the check by itself and the inspection with it end alike."""
        check = {"check": "cut-out", "pressure": "150"}
        end = {"chamber": "30", "released": "2", "applied": "3", "psi": "95"}
        record = {"record": "brake-stroke-inspection", "version": 1, "date": DAY, "rules": "us-fmcsr",
                  "air_rules": "us-cdl", "air_checks": [check],
                  "wheel_ends": [{"position": position, **end} for position in ("1L", "1R")]}
        air = run("air", "cut-out", "150", "--rules", "us-cdl", data="")
        self.assertIn("NOTED", air.stdout)
        self.assertEqual((air.returncode, run("report", "-", data=json.dumps(record)).returncode), (0, 0))


if __name__ == "__main__":
    COMMAND = sys.argv[1]
    tap.main()
