# SPDX-License-Identifier: Apache-2.0
"""`rodtravel batch` caches results and works on several threads; its output is always that of one thread without a
cache: python3 test_batch_cache.py RODTRAVEL RODTRAVEL_WITH_SMALL_BLOCKS [long]"""
import csv
import io
import json
import os
import pty
import random
import resource
import select
import signal
import subprocess
import sys
import tempfile
import unittest
from datetime import date, timedelta
from pathlib import Path

import dialogue
import tap

HERE = Path(__file__).resolve().parent
CASES = HERE.parent / "cases"
FLEET = HERE.parent.parent / "examples" / "data" / "fleet.csv"
FRENCH = ["--separator", ";", "--decimal-comma", "--encoding", "windows-1252",
          "--column", "chamber=Récepteur", "--column", "stroke_class=Course", "--column", "released=Relâché (po)",
          "--column", "applied=Serré (po)", "--column", "psi=Pression (psi)", "--column", "date=Date"]
DAY = ["--as-of", "2024-06-05"]
HEADER = b"unit_no,date,chamber,stroke_class,released,applied,psi\n"
JOBS = [1, 2, 3, 8]


def run(command, *options, data=None):
    day = [] if "--as-of" in options else DAY
    return subprocess.run([command, "batch", *day, *map(str, options)], input=data, capture_output=True, timeout=120,
                          check=False)


def table(*rows, end="\r\n", separator=",", quoting=csv.QUOTE_MINIMAL):
    text = io.StringIO(newline="")
    csv.writer(text, lineterminator=end, delimiter=separator, quoting=quoting).writerows(rows)
    return text.getvalue().encode()


def limit_files():
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))


def column_of(name, column):
    with open(CASES / name, encoding="utf-8", newline="") as file:
        return [row[column] for row in csv.DictReader(file)]


class Same(unittest.TestCase):
    def same(self, *options, data=None, jobs=JOBS, commands=None):
        """Compares the output of every path with that of the reference path, which is returned. Only without a summary
        are rows written like others that differ in the stroke alone."""
        self.same_output([COMMAND], jobs[:1], *options, data=data)
        return self.same_output(commands or [COMMAND, SMALL], jobs, "--summary", *options, data=data)

    def same_output(self, commands, jobs, *options, data=None):
        reference = run(COMMAND, "--no-cache", "--jobs", 1, *options, data=data)
        for command in commands:
            for count in jobs:
                got = run(command, "--jobs", count, *options, data=data)
                self.assertEqual((got.returncode, got.stdout, got.stderr),
                                 (reference.returncode, reference.stdout, reference.stderr), (command, count, options))
        return reference


class Files(Same):
    def test_fleet(self):
        self.same(FLEET)
        self.same("--by", "unit_no", FLEET)

    def test_dirty_files(self):
        self.same(CASES / "dirty-1.csv")
        self.same(CASES / "dirty-2.csv", *FRENCH)
        self.same(CASES / "dirty-2.csv", *FRENCH, "--date-order", "dmy")

    def test_flaws(self):
        for name in ["quotes", "flaws"]:
            self.same(HERE / "batch" / (name + ".csv"))

    def test_every_spelling(self):
        """Each spelling as a reading, twice, so that it is new once and cached once."""
        texts = column_of("spellings.csv", "text")
        rows = [["chamber", "released", "applied", "rated_stroke", "division"]]
        for text in texts * 2:
            rows += [["30", text, "4"], ["30", "1 1/2", text], ["18", "2", "3", text], ["30", "2", "3", "", text]]
        rows = [row + [""] * (5 - len(row)) for row in rows]
        for options in [[], ["--unit", "mm"], ["--decimal-comma"], ["--unit", "cm", "--decimal-comma"]]:
            self.same(*options, data=table(*rows))
        self.same("--separator", "tab", data=table(*rows, separator="\t"), commands=[COMMAND])

    def test_every_chamber(self):
        marks = column_of("chamber_marks.csv", "mark")
        rows = [["chamber", "stroke_class", "released", "applied", "date"]]
        rows += [[mark, stroke_class, "2", "4", day] for mark in marks for stroke_class in ("", "long", "standard", "?")
                 for day in ("2021-10-13", "2021-10-14", "")]
        self.same(data=table(*rows, *rows[1:]))
        self.same(data=table(*rows, *rows[1:], quoting=csv.QUOTE_ALL), jobs=[1, 2])


class Alike(Same):
    """Readings that never come again: rows are written like others that differ in the stroke alone."""

    def rows(self):
        chance = random.Random(7)
        yield ["chamber", "released", "applied", "unit", "rated_stroke"]
        for i in range(6000):
            released = 1 + i / 8000
            applied = released + chance.choice([0, 0.01, 2, chance.uniform(-0.5, 3), chance.uniform(1, 3)])
            yield [chance.choice(["30", "clamp 24 long", "36", "16", "x"] if i % 9 == 0 else ["30", "20"]),
                   f"{released:.6f}" if i % 50 else "1e3", f"{applied:.{chance.choice([1, 3, 6, 6, 6, 7])}f}",
                   chance.choice(["", "", "", "mm", "furlong"]), chance.choice(["", "", "2 1/2", "5.999999999"])]

    def test_readings_that_never_repeat(self):
        rows = list(self.rows())
        for quoting in [csv.QUOTE_MINIMAL, csv.QUOTE_ALL]:
            data = table(*rows, quoting=quoting)
            self.same_output([COMMAND, SMALL], [1, 2], data=data)
            self.same_output([COMMAND], [1], "--decimals", "3", "--rules", "us-periodic", data=data)
        self.same_output([COMMAND, SMALL], [1], "--decimal-comma", "--separator", ";",
                         data=table(*rows, separator=";").replace(b".", b","))

    def test_lines_of_json(self):
        rows = list(self.rows())
        data = b"".join(json.dumps({name: cell for name, cell in zip(rows[0], row) if cell}).encode() + b"\n"
                        for row in rows[1:])
        self.same_output([COMMAND, SMALL], [1, 2], "--format", "ndjson", data=data)


class Objects(Same):
    """Lines of JSON of which many have one shape: all but their values is the same."""

    VALUES = ['"30"', '"clamp 24 long"', '"2 1/8"', "2.125", '"2.125"', "-0", "4e0", '"2,5"', "2.5", "null", "true",
              "[1]", '{"a": 1}', '""', '"\\u0034"', '"\\\\u0034"', '"4\\""', '"\\\\"', '"é"', '"' + "4" * 40 + '"',
              '" 4 "', "01", "nul", '"', '"\t"', '"\\x"', "[", ""]
    SHAPES = ['{"chamber":%s,"released":%s,"applied":%s,"remarks":%s}', '{"chamber": %s, "released": %s, "applied": %s}',
              ' { "no" : %s ,"chamber":%s,"applied":%s , "released":%s, "unit":%s } ', '{"applied":%s}',
              '{"chamber":%s,"the first of two long names":%s,"released":"1","applied":%s}',
              '{"chamber":%s,"the first of two long texts":%s,"released":"1","applied":%s}',
              '{"chamber":%s,"released":1,"applied":%s,\t"date":"2020-01-01"}', '{"chamber":%s,"chamber":"20","applied":%s}']

    def random_lines(self, chance):
        """Runs of lines of one shape; most values are good."""
        while True:
            shape = chance.choice(self.SHAPES)
            for _ in range(chance.choice([1, 3, 20])):
                good = chance.random() < 0.9
                values = [chance.choice(self.VALUES[:5] if good else self.VALUES) for _ in range(shape.count("%s"))]
                yield shape % tuple(values)

    def test_random_lines(self):
        chance = random.Random(3)
        for end in ("\n", "\r\n"):
            lines = [line for line, _ in zip(self.random_lines(chance), range(4000))]
            data = end.join(lines).encode()
            for options in [["--column", "psi=the first of two long texts"], ["--decimal-comma"], ["--decimals", "1"]]:
                self.same_output([COMMAND, SMALL], [1, 2], "--format", "ndjson", *options, data=data)
        self.same_output([COMMAND], [1], "--format", "ndjson", data=data.replace(b"\r\n", b"\r"))

    def test_more_shapes_than_are_learned(self):
        """Also members and bytes beyond those of a shape, and names that end a line."""
        many = [{"chamber": "30", "released": "1", "applied": "2", **{f"more {i}": "" for i in range(count)}}
                for count in [*range(12), 60, 61, 62, 70, 61]]
        wide = [{"chamber": "30", "released": "1", "applied": "2", "n" * size: "4"} for size in (2000, 2010, 2100)]
        control = [b'{"chamber":"30","released":"1","applied":"2",\r"a":1}'] * 3
        data = b"".join(json.dumps(line).encode() + b"\n" for line in (many + wide) * 3 for _ in range(3))
        self.same("--format", "ndjson", data=data + b"\n".join(control))

    def test_one_name_of_units_and_results(self):
        """A result that is there stops the run wherever it is."""
        good = b'{"unit":"%d","chamber":"30","released":"1","applied":"2","Datum":""}\n'
        self.same("--format", "ndjson", data=b"".join(good % (i % 40) for i in range(3000)))
        self.same("--format", "ndjson", data=good % 1 * 9 + good.replace(b"Datum", b"verdict") % 1 + good % 1)
        inches = good.replace(b"%d", b"in")
        self.same("--format", "ndjson", data=inches * 50 + inches.replace(b'"in"', b'"mm"') * 50)


class Kinds(Same):
    def test_every_column(self):
        cells = {"chamber": ["30", "clamp 18", "24L", "bolt C", "", "zz"], "stroke_class": ["", "long", "?"],
                 "rated_stroke": ["", "2 1/2", "3", "x"], "marked_limit": ["", "1 1/2"], "psi": ["", "89", "90", "100",
                 "100.5", "?", "650 kPa"], "psi_after": ["", "80", "95"], "division": ["", "1/16", "0", "fine"],
                 "unit": ["", "in", "mm", "cm", "?"], "engine": ["", "on", "off", "?"], "spring_brake": ["", "on"],
                 "drum": ["", "hot"], "date": ["", "2021-10-13", "2021-10-14", "06/05/2021", "x", "14-Oct-21",
                 "2012-01-01", "45293"], "released": ["2", "50.8", "5 cm", "", "2-Jan", "1/3", "0.000001", "x"],
                 "applied": ["2", "4", "104.8", "10.2 cm", "3 3/4", "n/a", "1.99"]}
        chance = random.Random(1)
        rows = [list(cells)] + [[chance.choice(texts) for texts in cells.values()] for _ in range(6000)]
        asked = [part for word in ("engine", "spring_brake", "drum") for part in ("--column", f"{word}={word}")]
        self.same(*asked, data=table(*rows), jobs=[1, 3])
        self.same(*asked, "--rules", "ca-nsc", "--date-order", "dmy", data=table(*rows, end="\n"), jobs=[2],
                  commands=[COMMAND])

    def test_one_text_in_two_units(self):
        """2.54 is 1 in where the unit is cm, and 2.54 in elsewhere, whichever came first. Taken for the others, the two
        rows in inches would have one stroke."""
        before = [["cm", "30", "2.54", "10.16"], ["cm", "30", "1.27", "10.16"]]
        rows = [["in", "30", "2.54", "4"], ["in", "30", "1.27", "3.5"]]
        for order in [before + rows, rows + before]:
            out = self.same(data=table(["unit", "chamber", "released", "applied"], *order * 3)).stdout
            self.assertEqual((out.count(b",2.54,4,1 23/50,"), out.count(b",1.27,3.5,2 23/100,")), (3, 3))

    def test_limits_that_change_every_day(self):
        """So many days are told apart as a carrier's own table can have, and each from no day."""
        first = date(2022, 1, 1)
        days = [first + timedelta(i) for i in range(300)]
        with tempfile.TemporaryDirectory() as folder:
            limits = Path(folder) / "own.csv"
            rows = [f"clamp,30,standard,{2 - i % 2 / 2},{day},{day}\n" for i, day in enumerate(days)]
            for more in ["", "bolt,C,any,1 1/2,2013-01-01,\n"]:
                limits.write_text("family,size,class,limit,from,until\n" + more + "".join(rows), encoding="utf-8")
                for at in range(90, 120):
                    cells = [["30", "1", "2 3/4", day] for day in ["", *days[at:at + 2]] * 2]
                    self.same("--limits", limits, "--as-of", first + timedelta(1 - at % 2), commands=[COMMAND], jobs=[1],
                              data=table(["chamber", "released", "applied", "date"], *cells))

    def test_header_that_could_be_a_row(self):
        header, row, good = b"30,released,applied,x\n", b"30,released,applied,y\n", b"30,2,4,x\n"
        out = self.same("--column", "chamber=30", data=header + (row + good) * 4 + (header + row) * 3).stdout
        self.assertEqual(out.count(b"x,,,,,\n"), 3)
        self.same("--column", "chamber=30", "--by", "x", data=header + (row + good) * 9 + (header + row) * 3)

    def test_long_texts(self):
        """Texts of every length around those that are kept in another way, or not at all."""
        rows = [["chamber", "released", "applied", "note"]]
        for size in range(0, 70):
            rows += [["30" + " " * size, " " * size + "2", "4" + " " * (size // 2), "n" * size],
                     ["clamp 30 " + "x" * size, "2", "4", "n"], ["30", "2 1/8", "0" * size + "4", ""]]
        self.same(data=table(*rows, *rows[1:], *rows[1:]))

    def test_texts_that_differ_late(self):
        rows = [["chamber", "released", "applied"]]
        for text in ["clamp 24 long stroke", "clamp 24 long strokE", "clamp 24 standard   ", "clamp 24 standard  "]:
            rows += [[text, "2", "4"], [text, "2", "4 1/4"]] * 3
        self.same(data=table(*rows))

    def test_readings_of_which_one_is_no_stroke(self):
        """Nothing, words, dates, negative and too fine numbers beside every other reading, also in other units."""
        unusual = ["", " ", "n/a", "-1", "-13 1/2", "2-Jan", "02/01/2024", "1 3/2", "x mm", "1e3", "0.0000001", "1/3", "54 mm", '3 5/8"',
               "2", "4 1/4", "175", "1/0"]
        rows = [["chamber", "released", "applied", "psi", "date"]]
        rows += [["30", a, b, psi, day] for a in unusual for b in unusual for psi in ["95", "x", "2-Jan", ""] for day in ["2024-06-05", "?", ""]]
        for options in [[], ["--unit", "mm"], ["--rules", "ca-nsc", "--date-order", "dmy"]]:
            self.same(*options, data=table(*rows, *rows[1:]), jobs=[1, 2], commands=[COMMAND])
        rows = [["unit", *rows[0]]] + [[unit, *row] for row in rows[1::5] for unit in ["in", "mm", "?"]]
        self.same(data=table(*rows, *rows[1:]), jobs=[1], commands=[COMMAND])

    def test_vehicles(self):
        """One line a vehicle: names, days and positions of every kind, cached and new, in groups and in disorder."""
        chance = random.Random(6)
        cells = {"unit_no": ["T-1", "T-2", 'T "3"', "", " T-1", "x" * 40, "y" * 600, "T,4", "é"],
                 "position": ["1L", "1R", "2 left", "", "?", "essieu 3 gauche", "99R", "axle 12 right side of it"],
                 "date": ["2024-06-05", "05/06/2024", "", "?", "2-Jan", "2021-10-13", "14-Oct-21"],
                 "chamber": ["30", "clamp 36", "bolt C", "", "zz"], "released": ["2", "2 1/8", "", "x"],
                 "applied": ["3", "4 1/4", "4", "1", "n/a"]}
        rows = [[chance.choice(texts) for texts in cells.values()] for _ in range(5000)]
        for order in [rows, sorted(rows)]:
            for options in [["--by", "unit_no"], ["--by", "unit_no", "--date-order", "dmy"], ["--by", "position"], ["--by", "date"],
                            ["--by", "unit_no", "--pool"], ["--by", "date", "--by", "unit_no"]]:
                self.same(*options, data=table(list(cells), *order), jobs=[1, 2])
        for left_out in ["position", "date"]:
            names = [name for name in cells if name != left_out]
            few = [[cell for name, cell in zip(cells, row) if name != left_out] for row in rows]
            for order in [few, sorted(few)]:
                self.same("--by", "unit_no", data=table(names, *order), jobs=[1], commands=[COMMAND])
        self.same("--by", "unit_no", data=table(["unit", *cells], *[["mm", *row] for row in rows]), jobs=[1], commands=[COMMAND])

    def test_more_vehicles_than_fit_in_memory(self):
        rows = [[f"T-{i * 7919 % 70001}", "30", "2", "4"] for i in range(70000)]
        self.same("--by", "unit_no", data=table(["unit_no", "chamber", "released", "applied"], *rows), jobs=[1], commands=[COMMAND])

    def test_no_room_for_more_vehicles(self):
        """The reason of the system is told, and no line: no row is at fault."""
        data = table(["unit_no", "chamber", "released", "applied"], *[[f"T-{i}", "30", "2", "4"] for i in range(200)])
        says = "a temporary file could not be written or read (TMPDIR names another folder): {} (--by unit_no)"
        for reason, options in (("File too large", {"preexec_fn": limit_files}),
                                ("No such file or directory", {"env": {**os.environ, "TMPDIR": "/nowhere"}})):
            result = subprocess.run([SMALL, "batch", "--by", "unit_no", *DAY], input=data, capture_output=True, check=False,
                                    timeout=60, **options)
            self.assertEqual(result.returncode, 2)
            said = " ".join(result.stderr.decode().replace("rodtravel: ", "").split())
            self.assertTrue(said.startswith(says.format(reason)), said)

    def test_every_cell_quoted(self):
        texts = ["2", "4", '3 5/8"', "4½", "", "n/a", "54 mm", "1 15/16", 'a,b', "2024-06-05"]
        rows = [["chamber", "released", "applied", "date", "note"]]
        rows += [["30", a, b, "2024-06-05", note] for a in texts for b in texts for note in texts[2::3]]
        for quoting in [csv.QUOTE_ALL, csv.QUOTE_MINIMAL, csv.QUOTE_NONNUMERIC]:
            self.same(data=table(*rows, *rows[1:], quoting=quoting), jobs=[1, 2])
        plain = b"chamber,released,applied\n" + b'30,2",4"\n30,2,4"\n30,2 1/8",3\n30,"2",4"\n' * 5
        self.same(data=plain)

    def test_zero_bytes(self):
        body = b"30,2,4\n30,2,4\x00\n30,2\x00,4\n30\x00,2,4\n\x00,2,4\n30,2,4\x00\x00\n" * 3
        self.same(data=b"chamber,released,applied\n" + body)

    def test_more_kinds_than_are_kept(self):
        rows = [["chamber", "released", "applied"]] + [[str(i % 900 + 1), f"{i % 7}.{i % 97}", f"{i % 9}.{i % 89}"]
                                                       for i in range(30000)]
        self.same(data=table(*rows), jobs=[1, 2], commands=[COMMAND])


class Lines(Same):
    GOOD = b"T-1,2024-06-05,30,,2 1/8,4,95\n"

    def test_line_ends(self):
        for end in [b"\n", b"\r\n", b"\r"]:
            data = HEADER + self.GOOD * 5 + b"T,2024-06-05,30,,2 \r1/8,4,95\nT\r\n\n" + self.GOOD * 5
            self.same(data=data.replace(b"\n", end))
            self.same(data=data.replace(b"\n", end)[:-len(end)])
        self.same(data=b"\xef\xbb\xbf" + HEADER + self.GOOD.replace(b"\n", b"\r\n") + self.GOOD * 3)

    def test_line_ends_of_both_kinds(self):
        """The last cell is a reading or a name, and lines end in one way or the other: mostly, or one after the other."""
        chance = random.Random(4)
        for columns in ("chamber,released,unit_no,applied", "chamber,released,applied,unit_no"):
            for often in (0, 1, 50, 99, 100):
                lines = [columns]
                for i in range(400):
                    cells = {"chamber": "30", "released": "2", "unit_no": f"T {i // 3 % 5}", "applied": f"{4 + i % 3}"}
                    lines.append(",".join(cells[name] for name in columns.split(",")))
                data = b"".join(line.encode() + (b"\r\n" if chance.randrange(100) < often else b"\n") for line in lines)
                self.same(data=data, jobs=[1, 2])
                self.same("--by", "unit_no", data=data, jobs=[1])

    def test_quotes(self):
        unusual = [b'"T ""1""",2024-06-05,"30",,"2 1/8","4",95\n', b'"T\n1",2024-06-05,30,,2,4,95\n', b'T"1,2024-06-05,30,,2,4,95\n',
               b'"T"1,2024-06-05,30,,2,4,95\n', b'T,2024-06-05,30,,2,4,"95\n', b'T,2024-06-05,"3""0",,2,4,95\n',
               b'"",,"","","","",""\n', b',,,,,,\n', b'T,2024-06-05,30,,2,4,95,more\n', b'T,2024-06-05,30,,2,4\n',
               HEADER, HEADER.upper(), b'\n', b'"T\r\n1",2024-06-05,30,,2,4,"95"\r\n', b'"\n\n\n"\n']
        chance = random.Random(2)
        for start in range(40):
            lines = [chance.choice(unusual + [self.GOOD] * 8) for _ in range(60)]
            self.same(data=HEADER + b"".join(lines), jobs=[1, 1 + start % 4])

    def test_quotes_that_swallow_each_other_end(self):
        swallowing, rows = b"a\",b,\"\n", self.GOOD * 1000
        few = run(SMALL, data=HEADER + swallowing * 10 + rows)
        self.assertEqual((few.returncode, few.stdout.count(b"T-1,")), (3, 1000))
        many = run(SMALL, data=HEADER + swallowing * 20000 + rows)
        self.assertEqual(many.returncode, 2)
        self.assertIn(b"never closed", many.stderr)

    def test_other_header_stops_everywhere(self):
        for count in [0, 1, 3, 5000]:
            result = self.same(data=HEADER + self.GOOD * count + b"unit_no,date,chamber,applied,released,stroke_class,psi\n"
                               + self.GOOD * 5000, jobs=[1, 2, 8])
            self.assertEqual(result.returncode, 2)

    def test_first_line_of_each_flaw(self):
        for count in [1, 100, 20000]:
            result = self.same(data=HEADER + self.GOOD * count + b"T,2024-06-05,30,,2,4\n" + self.GOOD * count + b'"T"x,\n', jobs=[1, 3])
            self.assertIn(f"line {count + 2})".encode(), result.stderr.replace(b"\n           ", b" "))
            self.assertIn(f"line {2 * count + 3})".encode(), result.stderr.replace(b"\n           ", b" "))

    def test_faults_after_good_rows(self):
        for bad in [b"," * 70000 + b"\n", b"y" * (17 << 20), b'"' + b"y\n" * 70000 + b'"' + b",\n" * 70000]:
            self.same(data=HEADER + self.GOOD * 3000 + bad, jobs=[1, 2], commands=[COMMAND])

    def test_quoted_cells_of_many_lines(self):
        """Records near the greatest count of cells, whose quotes the reference reader gives up."""
        for count in [65000, 65535, 65536, 70000]:
            data = HEADER + self.GOOD + b'"a\n","b",' + b"," * count + b'\n"x\n' + self.GOOD * 10 + b'"\n' + self.GOOD
            self.same(data=data, jobs=[1, 2])

    def test_cut_anywhere(self):
        """A file cut at any byte, of which every eleventh in short."""
        data = (CASES / "dirty-1.csv").read_bytes()
        for cut in range(0, len(data), 1 if LONG else 11):
            self.same(data=data[:cut], jobs=[1 + cut % 3], commands=[SMALL])

    def test_random_files(self):
        chance = random.Random(3)
        signs = [b"30", b"2", b"4", b",", b",", b",", b"\n", b"\n", b"\r\n", b'"', b'""', b" ", b"1/8", b"\r", b"95", b"x"]
        for seed in range(150 if LONG else 50):
            data = HEADER + b"".join(chance.choice(signs) for _ in range(chance.randrange(400)))
            self.same(data=data, jobs=[1 + seed % 3], commands=[SMALL if seed % 2 else COMMAND])

    def test_encodings(self):
        text = "chamber,released,applied,note\n" + "30,2 1/8,4½,é\n30,2,\"4\",\"a\nb\"\n" * 300
        for encoding in ["utf-16", "windows-1252"]:
            self.same("--encoding", encoding, data=text.encode(encoding))
        self.same("--encoding", "utf-8", data=text.encode() + b"30,2,3,\xc2\n" + text.encode(), jobs=[1, 2])


class Large(Same):
    def test_many_rows(self):
        chance = random.Random(4)
        inches = lambda k: f"{k // 16} {k % 16}/16"
        rows = [HEADER]
        for i in range(60000):
            released = chance.randrange(16, 48)
            rows.append(b"T-%d,20%02d-%02d-%02d,%s,%s,%s,%s,%d\n" % (
                i // 10, chance.randrange(12, 26), chance.randrange(1, 13), chance.randrange(1, 29),
                chance.choice([b"20", b"24L", b"30", b"36", b"clamp 24 long"]), chance.choice([b"", b"long"]),
                inches(released).encode(), inches(released + chance.randrange(0, 44)).encode(),
                chance.randrange(85, 105)))
        self.same(data=b"".join(rows))

    def test_rows_come_before_the_end_of_the_input(self):
        for options in [["--jobs", "1"], ["--jobs", "2"], ["--jobs", "4"], ["--encoding", "windows-1252"]]:
            with subprocess.Popen([COMMAND, "batch", *DAY, *options], stdin=subprocess.PIPE,
                                  stdout=subprocess.PIPE, bufsize=0) as process:
                for data in [HEADER, Lines.GOOD, Lines.GOOD * 3, Lines.GOOD]:
                    process.stdin.write(data)
                    got = b""
                    while got.count(b"\n") < data.count(b"\n") and select.select([process.stdout], [], [], 30)[0]:
                        got += os.read(process.stdout.fileno(), 65536)
                    self.assertEqual(got.count(b"\n"), data.count(b"\n"), options)
                process.stdin.close()
                self.assertEqual(process.wait(timeout=60), 0)

    def test_full_disk_with_threads(self):
        with open("/dev/full", "wb") as full, tempfile.NamedTemporaryFile() as file:
            file.write(HEADER + Lines.GOOD * 100000)
            file.flush()
            for jobs in JOBS:
                result = subprocess.run([COMMAND, "batch", "--jobs", str(jobs), file.name], stdout=full,
                                        stderr=subprocess.PIPE, timeout=60, check=False)
                self.assertEqual(result.returncode, 2)
                self.assertEqual(result.stderr.count(b"cannot be written"), 1)


class Ends(unittest.TestCase):
    def start(self, *options, **more):
        return subprocess.Popen([COMMAND, "batch", *DAY, *options], stdin=subprocess.PIPE, bufsize=0, **more)

    def test_interrupt(self):
        """What was read is judged and written as complete rows, and the message names the last line."""
        for jobs in ["1", "3"]:
            for number in [signal.SIGINT, signal.SIGTERM]:
                with self.start("--jobs", jobs, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
                    process.stdin.write(HEADER + Lines.GOOD * 3 + Lines.GOOD[:-5])
                    got = b""
                    while got.count(b"\n") < 4:
                        got += os.read(process.stdout.fileno(), 65536)
                    process.send_signal(number)
                    got += process.stdout.read()
                    message = b" ".join(process.stderr.read().split())
                    process.wait(timeout=60)
                self.assertEqual(process.returncode, 2)
                self.assertEqual(got.count(b"\n"), 4)
                self.assertTrue(got.endswith(b"\n"))
                self.assertIn(b"interrupted after line 4: the 3 rows", message)

    def test_interrupt_of_a_file(self):
        with tempfile.NamedTemporaryFile() as file:
            file.write(HEADER + Lines.GOOD * 100000)
            file.flush()
            with self.start("--jobs", "2", file.name, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
                got = os.read(process.stdout.fileno(), 1000)  # the pipe is full, so the run waits with rows in hand
                process.send_signal(signal.SIGINT)
                got += process.stdout.read()
                message = b" ".join(process.stderr.read().split())
            self.assertEqual(process.returncode, 2)
            self.assertTrue(got.endswith(b"within-limit assumed-standard assumed-clamp\n"), got[-100:])
            self.assertIn(b"the %d rows" % (got.count(b"\n") - 1), message)

    def test_reader_has_gone_and_nothing_comes(self):
        """The threads that wait for input hear of it, too."""
        for jobs in ["1", "2", "8"]:
            with self.start("--jobs", jobs, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
                process.stdout.close()
                process.stdin.write(HEADER + Lines.GOOD * 3)
                self.assertEqual(process.stderr.read(), b"")
                self.assertEqual(process.wait(timeout=60), 2)

    def test_progress_on_a_terminal_only(self):
        if not dialogue.has_terminals():
            print("# no pseudo-terminal here: progress on a terminal was not looked at")
            return
        ours, theirs = pty.openpty()
        shown = b""
        with self.start(stdout=subprocess.DEVNULL, stderr=theirs) as process:
            os.close(theirs)
            process.stdin.write(HEADER)
            while b"a second" not in shown:
                process.stdin.write(Lines.GOOD)
                if select.select([ours], [], [], 0.02)[0]:
                    shown += os.read(ours, 4096)
            process.stdin.close()
            self.assertEqual(process.wait(timeout=60), 0)
        shown += os.read(ours, 4096)
        os.close(ours)
        self.assertRegex(shown, rb"^\r\d+ rows, \d+ a second +")
        self.assertTrue(shown.endswith(b"\r" + b" " * 78 + b"\r"), shown)


if __name__ == "__main__":
    if sys.argv[3:] not in ([], ["long"]):
        sys.exit(__doc__)
    COMMAND, SMALL = sys.argv[1:3]
    LONG = "long" in sys.argv
    tap.main()
