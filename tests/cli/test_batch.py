# SPDX-License-Identifier: Apache-2.0
"""What `rodtravel batch` makes of files: python3 test_batch.py PATH_TO_RODTRAVEL [XLSX_FILE] [long]

XLSX_FILE is the name of the library that the command loads for a workbook, if it loads one."""
import csv
import functools
import gzip
import io
import itertools
import json
import math
import os
import random
import re
import subprocess
import sys
import tempfile
import unittest
import zipfile
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree

import tap
from dialogue import has_terminals, on_terminal

HERE = Path(__file__).resolve().parent
CASES = HERE.parent / "cases"
FLEET = HERE.parent.parent / "examples" / "data" / "fleet.csv"
MERGE = HERE.parent.parent / "examples" / "cli" / "merge_summaries.py"
NEW = ["applied_stroke", "limit", "margin", "verdict", "reasons"]
FRENCH = ["--separator", ";", "--decimal-comma", "--encoding", "windows-1252",
          "--column", "chamber=Récepteur", "--column", "stroke_class=Course", "--column", "released=Relâché (po)",
          "--column", "applied=Serré (po)", "--column", "psi=Pression (psi)", "--column", "date=Date"]
HEADER = b"chamber,released,applied,psi\n"
GOOD = b"clamp 30,2 1/8,4,95\n"
GOOD_OUT = b"clamp 30,2 1/8,4,95,1 7/8,2,1/8,in-adjustment,within-limit assumed-standard\n"


def run(*options, data=None, **more):
    """Runs the command on `data` as standard input."""
    return subprocess.run([COMMAND, "batch", *map(str, options)], input=data, capture_output=True, timeout=300,
                          check=False, **more)


def worksheet(data):
    """The rows of the first worksheet: {column: (kind, text)}; an empty row is {}."""
    space = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        root = ElementTree.fromstring(book.read("xl/worksheets/sheet1.xml"))
    widths = [int(column.get("min")) for column in root.iter(space + "col")]
    assert len(set(widths)) == len(widths), "a column with two widths"
    found = {}
    for cell in root.iter(space + "c"):
        letters, number = re.fullmatch(r"([A-Z]+)(\d+)", cell.get("r")).groups()
        column = functools.reduce(lambda all, letter: all * 26 + ord(letter) - 64, letters, 0) - 1
        kind = "text" if cell.get("t") == "inlineStr" else "number"
        found.setdefault(int(number) - 1, {})[column] = (kind, "".join(cell.itertext()))
    return [found.get(at, {}) for at in range(max(found) + 1)]


def rows(data, separator=","):
    """Records as lists of texts, read by another reader than the one under test."""
    text = io.StringIO(data.decode("utf-8-sig"), newline="")
    return list(csv.reader(text, delimiter=separator))


def inches(text):
    """The mixed fraction of an output cell; None for an empty one."""
    if text == "":
        return None
    sign = -1 if text[0] == "-" else 1
    return sign * sum(Fraction(part) for part in text.lstrip("-").split(" "))


class Case(unittest.TestCase):
    def judged(self, *options, data, status):
        result = run(*options, data=data)
        self.assertEqual(result.returncode, status, result.stderr.decode())
        return result

    def refused(self, *options, data=None, says, **more):
        result = run(*options, data=data, **more)
        self.assertEqual(result.returncode, 2, result.stdout)
        message = " ".join(result.stderr.decode(errors="replace").split())
        for word in [says] if isinstance(says, str) else says:
            self.assertIn(word, message)
        return result


class DirtyFiles(Case):
    """Every record against tests/cases/dirty.csv, whose figures are by arithmetic and 49 CFR 393.47(e)."""

    def check(self, name, separator, options, header_count):
        data = (CASES / name).read_bytes()
        out = self.judged(CASES / name, *options, data=None, status=1).stdout
        with open(CASES / "dirty.csv", encoding="utf-8", newline="") as file:
            answers = [row for row in csv.DictReader(file) if row["file"] == name]
        got = [row for row in rows(out, separator)[1:] if row]
        self.assertEqual(len(got), len(answers))
        for answer, row in zip(answers, got):
            with self.subTest(name, record=answer["record"], note=answer["note"]):
                self.assertEqual(len(row), header_count + len(NEW))
                stroke, limit, margin, verdict, reasons = row[-5:]
                self.assertEqual(verdict or "none", answer["verdict"])
                self.assertEqual(inches(stroke), inches(answer["stroke_in"]))
                self.assertEqual(inches(limit), inches(answer["limit_in"]))
                if stroke and limit:
                    self.assertEqual(inches(margin), inches(limit) - inches(stroke))
                self.assertEqual(bool(reasons), answer["verdict"] != "none")
        return data, out

    def test_first(self):
        data, out = self.check("dirty-1.csv", ",", [], 10)
        self.assertTrue(out.startswith(b"\xef\xbb\xbfunit_no,"))
        self.assertTrue(out.endswith(b"\r\n\r\n"))
        self.assertEqual([row[:10] for row in rows(out) if row], [row for row in rows(data) if row])

    def test_first_says_what_it_passed(self):
        result = run(CASES / "dirty-1.csv")
        self.assertIn("1 repeated header line, 1 empty record, 1 empty line passed through",
                      " ".join(result.stderr.decode().split()))

    def test_second(self):
        data, out = self.check("dirty-2.csv", ";", [*FRENCH, "--date-order", "dmy"], 12)
        source = [row + [""] * (12 - len(row)) for row in rows(data.decode("windows-1252").encode(), ";")]
        self.assertEqual([row[:12] for row in rows(out, ";")], source)
        self.assertIn("short-record", rows(out, ";")[-1][-1])

    def test_second_without_date_order(self):
        """02/11/2023 has two meanings, and on both days the limit is the same."""
        self.check("dirty-2.csv", ";", FRENCH, 12)

    def test_spreadsheet_dates_are_named(self):
        got = [row for row in rows(run(CASES / "dirty-1.csv").stdout) if row]
        dates = [row[6] for row in got if "spreadsheet-date" in row[-1].split()]
        self.assertEqual(dates, ["2-Jan", "45293"])


class PassThrough(Case):
    """The bytes that came in come out, five cells after them."""

    def test_expected_files(self):
        for name in ["quotes", "flaws"]:
            with self.subTest(name):
                result = run(HERE / "batch" / (name + ".csv"))
                self.assertEqual(result.stdout, (HERE / "batch" / (name + ".expected.csv")).read_bytes())

    def test_flaws_are_said_with_their_first_line(self):
        message = " ".join(run(HERE / "batch" / "flaws.csv").stderr.decode().split())
        for part in ["1 row: too few cells (first on line 4)", "1 row: too many cells, not judged (first on line 3)",
                     "2 rows: broken quotes, not judged (first on line 5)"]:
            self.assertIn(part, message)

    def test_order_of_columns(self):
        cells = {"chamber": "24/30", "released": "2 1/4", "applied": "4 1/16", "stroke_class": "standard",
                 "psi": "95", "note": "\"a, b\""}
        orders = list(itertools.permutations(cells))
        for order in orders if LONG else random.Random(5).sample(orders, 120):
            data = ",".join(order) + "\n" + ",".join(cells[name] for name in order) + "\n"
            out = run(data=data.encode()).stdout.decode().splitlines()
            self.assertEqual(out[0], ",".join(order) + "," + ",".join(NEW))
            self.assertEqual(out[1], data.splitlines()[1] + ",1 13/16,1 3/4,-1/16,out-of-adjustment,over-limit")

    def test_decimals(self):
        """Rounded to the strict side, computed here by fractions from the exact columns."""
        def inches(text):
            sign, text = (-1, text[1:]) if text.startswith("-") else (1, text)
            return sign * sum(Fraction(part) for part in text.split())

        per_unit = {"in": 1, "mm": Fraction(127, 5), "cm": Fraction(127, 50)}
        data = FLEET.read_bytes() + b"T,,,1L,30,standard,,2,4 1/16,95,,\nT,,,1L,30,standard,,2.0001,4.0002,95,,\n"
        for (unit, size), digits in itertools.product(per_unit.items(), (0, 1, 3, 6)):
            exact = list(csv.DictReader(io.StringIO(run("--unit", unit, data=data).stdout.decode(), newline="")))
            result = run("--unit", unit, "--decimals", str(digits), data=data)
            for jobs in (["--jobs", "2"], ["--no-cache"]):
                self.assertEqual(run("--unit", unit, "--decimals", str(digits), *jobs, data=data).stdout, result.stdout)
            for row, line in zip(csv.DictReader(io.StringIO(result.stdout.decode(), newline="")), exact):
                stroke, limit, margin = (line[name] for name in ("applied_stroke", "limit", "margin"))
                values = [(f"applied_stroke_{unit}", stroke and inches(stroke) * size, math.ceil),
                          (f"limit_{unit}", limit and inches(limit) * size, math.floor),
                          (f"margin_{unit}", margin and inches(margin) * size, math.floor),
                          ("used_percent", stroke and limit and inches(stroke) / inches(limit) * 100, math.ceil)]
                for name, value, rounding in values:
                    wanted = value if value == "" else Fraction(rounding(value * 10 ** digits), 10 ** digits)
                    self.assertEqual(row[name] if row[name] == "" else Fraction(row[name]), wanted, (name, row))
                    self.assertTrue(row[name] == "" or len(row[name].partition(".")[2]) == digits)
                self.assertEqual({name: row[name] for name in line}, line)
        comma = run("--decimals", "2", "--decimal-comma", data=HEADER + GOOD).stdout.decode().splitlines()[1]
        self.assertIn('"1,88","2,00","0,12","93,75"', comma)
        for options in (["--decimals", "7"], ["--decimals", ""], ["--decimals", "1.0"], ["--decimals", "-1"]):
            self.refused(*options, data=HEADER + GOOD, says="0 to 6")
        self.refused("--decimals", "2", "--by", "chamber", data=HEADER + GOOD, says="--by")

    def test_lines_before_the_header(self):
        """Titles and the separator of a spreadsheet come out as they came, and are named."""
        titles = b"Inspection of the yard\r\n\nNorth,,2024\n"
        for jobs in ("1", "2"):
            result = run("--jobs", jobs, data=titles + HEADER + GOOD)
            self.assertEqual(result.stdout, titles + run(data=HEADER + GOOD).stdout)
            self.assertIn("line 4 holds the headings; 3 lines before it are not read", " ".join(result.stderr.decode().split()))
        result = run("--by", "chamber", data=titles + HEADER + GOOD)
        self.assertEqual(result.stdout, run("--by", "chamber", data=HEADER + GOOD).stdout)
        semicolons = (HEADER + GOOD).replace(b",", b";")
        wanted = b"sep=;\n" + run("--separator", ";", data=semicolons).stdout
        for options, bom in itertools.product(([], ["--separator", ";"], ["--jobs", "2"]), (b"", b"\xEF\xBB\xBF")):
            result = run(*options, data=bom + b"sep=;\n" + semicolons)
            self.assertEqual(result.stdout, bom + wanted)
            self.assertIn('line 1: "sep=;" names the separator', " ".join(result.stderr.decode().split()))
        result = run("--separator", ",", data=b"SEP=;\n" + HEADER + GOOD)
        self.assertIn("--separator says another one", " ".join(result.stderr.decode().split()))
        self.assertEqual(result.stdout, b"SEP=;\n" + run(data=HEADER + GOOD).stdout)
        for data in (titles, b"sep=;\n", titles * 40 + HEADER + GOOD, b"x" * 70000 + b"\n" + b"y\n" * 5 + HEADER + GOOD,
                     titles + b"chamber,applied\n" + GOOD):
            result = run(data=data)
            self.assertEqual((result.returncode, result.stdout), (2, b""))

    def test_compressed_files(self):
        """gzip by Python's own writer, several members too; Zstandard in frames of raw blocks (RFC 8878, 3.1.1)."""
        plain = HEADER + GOOD * 5000
        half = len(plain) // 2

        def zstd(data):
            blocks = [data[at:at + 100000] for at in range(0, len(data), 100000)] or [b""]
            frame = b"\x28\xB5\x2F\xFD" + bytes([0b10100000]) + len(data).to_bytes(4, "little")
            return frame + b"".join((len(block) << 3 | (at + 1 == len(blocks))).to_bytes(3, "little") + block
                                    for at, block in enumerate(blocks))

        wanted = run(data=plain).stdout
        for name, pack, at in (("gzip", gzip.compress, -6), ("Zstandard", zstd, 9)):
            packed = pack(plain)
            if b"was built without" in run(data=packed).stderr:
                continue
            for data in (packed, pack(plain[:half]) + pack(plain[half:])):
                for jobs in ("1", "2"):
                    result = run("--jobs", jobs, data=data)
                    self.assertEqual((result.returncode, result.stdout), (0, wanted))
            cut = run(data=packed[:len(packed) * 2 // 3])
            self.assertEqual(cut.returncode, 2)
            self.assertTrue(wanted.startswith(cut.stdout))
            self.assertIn(f"the compressed data ({name}) ends too early", " ".join(cut.stderr.decode().split()))
            bad = bytearray(packed)
            bad[at] |= 0x06 # the checksum; the kind of a block
            bad[at] ^= 0x08
            result = run(data=bytes(bad))
            self.assertEqual(result.returncode, 2)
            self.assertIn("is damaged", " ".join(result.stderr.decode().split()))
            self.assertEqual(run("--encoding", "utf-16", data=pack(plain.decode().encode("utf-16"))).stdout, wanted)
        for start in (b"\x1f", b"\x28\xb5"): # shorter than a whole mark: text
            self.assertIn(b"headings", run(data=start).stderr)

    def test_workbook(self):
        """The rows of CSV as a worksheet, read by Python's own readers: the same verdicts and exact lengths."""
        data = (b"fleet of the north\nchamber,released,applied,psi,remark\n30,2 1/8,4,95,=1+1\n30,2,4 9/16,95,\xff\x01&<\n"
                b"\n20,x,3,95,\n30,2,2,95\nchamber,released,applied,psi,remark\n30,1,3.001,95,,,\n")
        options = ["--as-of", "2024-01-01", "--decimals", "3"]
        result = run("--format", "xlsx", *options, data=data)
        if b"was built without" in result.stderr:
            self.skipTest("no libxlsxwriter")
        self.assertEqual(result.returncode, 1)
        self.assertEqual(run("--format", "xlsx", *options, data=data).stdout, result.stdout)
        sheet = worksheet(result.stdout)
        table = rows(run(*options, data=data).stdout.replace(b"\xff", "\ufffd".encode()))
        self.assertEqual([len(row) > 0 for row in sheet], [any(row) for row in table])
        for row, wanted in zip(sheet, table):
            for at, text in enumerate(wanted):
                kind, got = row.get(at, ("text", ""))
                if kind == "number":
                    self.assertEqual(float(got), float(sum(map(Fraction, text.split()))))
                else:
                    self.assertEqual(got, text.replace("\x01", "_x0001_"))
        self.assertEqual([sheet[2][at][0] for at in range(len(table[2]))], ["text"] * 5 + ["number"] * 3 + ["text"] * 2 + ["number"] * 4)
        self.assertEqual([row[8][1] for row in sheet[2:4]], ["in-adjustment", "out-of-adjustment"])
        self.assertEqual(sheet[2][4], ("text", "=1+1"))

    def test_workbook_refusals(self):
        if b"was built without" in run("--format", "xlsx", data=HEADER).stderr:
            self.skipTest("no libxlsxwriter")
        self.refused("--format", "xlsx", "--by", "chamber", data=HEADER + GOOD, says="for rows, not for --by")
        self.refused("--format", "xlsx", "--summary", "--json", data=HEADER + GOOD, says="not for --by or --json")
        long = b"x" * 32767
        good = run("--format", "xlsx", data=b"remark," + HEADER + long + b"," + GOOD).stdout
        self.assertEqual(worksheet(good)[1][0][1], long.decode())
        self.refused("--format", "xlsx", data=b"remark," + HEADER + b"x" + long + b"," + GOOD, says=["line 2", "32767 characters"])
        self.refused("--format", "xlsx", data=b"x," * 16380 + HEADER + GOOD, says="a worksheet ends here")
        self.refused("--format", "xlsx", data=HEADER + GOOD, says="a temporary file cannot be written: No such file",
                     env={**os.environ, "TMPDIR": "/no/such/folder"})
        with open("/dev/full", "wb") as full:
            result = subprocess.run([COMMAND, "batch", "-", "--format", "xlsx"], input=HEADER + GOOD, stdout=full,
                                    stderr=subprocess.PIPE, timeout=60, check=False)
        self.assertEqual((result.returncode, b"No space left" in result.stderr), (2, True))

    def test_workbook_library(self):
        """It is loaded for a workbook alone, and named where it is not there, is damaged, or is another one."""
        if not XLSX_FILE:
            self.skipTest("no library that is loaded for a workbook")
        says = {"en": f"--format xlsx: {XLSX_FILE}, which writes workbooks, cannot be loaded (",
                "fr": f"--format xlsx : {XLSX_FILE}, qui écrit les classeurs, ne peut pas être chargé (",
                "es": f"--format xlsx: {XLSX_FILE}, que escribe libros, no se puede cargar ("}
        another = re.search(r"/\S*/libc\.\S+", Path("/proc/self/maps").read_text(encoding="utf-8")).group()
        with tempfile.TemporaryDirectory() as folder:
            env = {**os.environ, "LD_LIBRARY_PATH": f"{folder}:{os.environ.get('LD_LIBRARY_PATH', '')}"}
            library = Path(folder) / XLSX_FILE
            damaged = Path(folder) / "damaged"
            damaged.write_bytes(b"no library")
            for other, why in ((damaged, f"/{XLSX_FILE}: "), (another, "workbook_new_opt")):
                library.unlink(missing_ok=True)
                library.symlink_to(other)
                for language, text in says.items():
                    result = self.refused("--format", "xlsx", "--language", language, data=HEADER + GOOD,
                                          says=[text, why], env=env)
                    self.assertEqual(result.stdout, b"")
                for options in ([], ["--format", "ndjson"], ["--format", "xlsx", "--by", "chamber"], ["--help"]):
                    self.assertNotIn(b"loaded (", run(*options, data=HEADER + GOOD, env=env).stderr)
                self.assertEqual(run(data=HEADER + GOOD, env=env).stdout.splitlines(keepends=True)[1:], [GOOD_OUT])

    def test_files_that_are_no_text(self):
        for start, says in ((b"PK\x03\x04", "workbook"), (b"PAR1", "Parquet file, not text: judge it in Python"),
                            (b"ARROW1\0\0", "Arrow file"), (b"\xFF\xFF\xFF\xFF\x98\0", "Arrow file"), (b"\xD0\xCF\x11\xE0", "old workbook"), (b"SQLite format 3\0", "database")):
            result = self.refused(data=start + b"\0\1\2\3" * 50, says=says)
            self.assertEqual(result.stdout, b"")

    def test_line_ends(self):
        for end in [b"\n", b"\r\n", b"\r"]:
            out = run(data=HEADER.replace(b"\n", end) + GOOD.replace(b"\n", end)).stdout
            self.assertTrue(out.endswith(GOOD_OUT.replace(b"\n", end)), out)
            self.assertEqual(out.count(end), 2)
        mixed = run(data=HEADER + GOOD.replace(b"\n", b"\r\n") + GOOD[:-1]).stdout
        self.assertTrue(mixed.endswith(GOOD_OUT.replace(b"\n", b"\r\n") + GOOD_OUT[:-1]), mixed)

    def test_bytes_that_are_not_read(self):
        unusual = b"clamp 30,2 1/8,4,95,\xff\xfe\x00\xc3(\x1b[31m\n"
        out = run(data=HEADER[:-1] + b",note\n" + unusual).stdout.splitlines(keepends=True)[1]
        self.assertEqual(out, unusual[:-1] + GOOD_OUT[len(GOOD) - 1:])

    def test_zero_byte_does_not_end_a_reading(self):
        out = run(data=HEADER + b"clamp 30,2 1/8,4\x00 1/2,95\n")
        self.assertEqual(out.returncode, 3)
        self.assertIn(b",,2,,undetermined,assumed-standard applied-unreadable\n", out.stdout)

    def test_headings(self):
        for heading in [b"Stroke Class", b"STROKE-CLASS", b" stroke_class ", b"\"stroke  class\"", b"strokeClass",
                        b"stroke.class", b"STROKECLASS"]:
            out = run(data=heading + b"," + HEADER + b"long," + GOOD).stdout
            self.assertTrue(out.endswith(b",1 7/8,2 1/2,5/8,in-adjustment,within-limit\n"), out)

    def test_header_without_rows(self):
        out = self.judged(data=HEADER, status=0).stdout
        self.assertEqual(out, HEADER[:-1] + b"," + ",".join(NEW).encode() + b"\n")

    def test_longest_reading(self):
        out = run(data=HEADER + b"clamp 30,2 1/8," + b" " * 600 + b"4,95\n").stdout
        self.assertIn(b"undetermined", out)


class Meaning(Case):
    def test_exit_status(self):
        out_row = b"clamp 30,2,4 1/2,95\n"
        open_row = b"clamp 30,2,?,95\n"
        dead_row = b"clamp 30,2,2,95\n"
        for body, status in [(GOOD, 0), (GOOD + open_row, 3), (open_row + out_row, 1), (dead_row + open_row, 1)]:
            self.judged(data=HEADER + body, status=status)

    def test_date_of_each_row(self):
        """Clamp 36: 2 1/4 until 2021-10-13, 2 1/2 from 2021-10-14 on (86 FR 57076)."""
        data = b"date,chamber,released,applied\n2021-10-13,36,2,4 1/2\n2021-10-14,36,2,4 1/2\n,36,2,4 1/2\n"
        for day, verdict in [("2020-01-01", "out-of-adjustment"), ("2024-01-01", "in-adjustment")]:
            got = [row[-2] for row in rows(run("--as-of", day, data=data).stdout)[1:]]
            self.assertEqual(got, ["out-of-adjustment", "in-adjustment", verdict])

    def test_undated_rows_are_said(self):
        self.assertIn(b"1 row has no date", run(data=HEADER + GOOD).stderr)
        self.assertEqual(run("--as-of", "2024-01-01", data=HEADER + GOOD).stderr, b"")

    def test_columns_that_look_meant_are_named(self):
        for heading, field in [("measured date", "date"), ("stroke type", "stroke_class"), ("psi reading", "psi"),
                               ("PSI after stop", "psi_after"), ("drum temperature", "drum"), ("day", "date")]:
            data = f"{heading},chamber,released,applied\n1,30,2 1/8,4\n".encode()
            message = " ".join(run(data=data).stderr.decode().split())
            self.assertIn(f'the column "{heading}" is not read', message)
            self.assertIn(f'--column {field}="{heading}"', message)
            self.assertNotIn(b"is not read", run("--column", f"{field}=", data=data).stderr)

    def test_a_column_of_rule_sets_is_named(self):
        """A row that names another rule set is judged by that of the whole file all the same."""
        for heading in ("rules", "Rule set", "ruleset", "LAW"):
            result = run("--as-of", "2024-01-01", data=f"chamber,released,applied,{heading}\n30,2,4,ca-on\n".encode())
            self.assertIn(f'the column "{heading}" is not read: one rule set judges all rows',
                          " ".join(result.stderr.decode().split()))
        self.assertEqual(run("--as-of", "2024-01-01", data=HEADER + GOOD).stderr, b"")

    def test_other_headings_of_a_field(self):
        """What each says must change the answer: 60 psi, 60 psi after, and a day before the limit of 2021-10-14."""
        for heading, cell, reason in [("Pressure", "60", "pressure-low"), ("pressureAfter", "60", "pressure-low"),
                                      ("psiAfter", "60", "pressure-low"), ("Inspection date", "2020-05-01", "over-limit"),
                                      ("insp_date", "2020-05-01", "over-limit")]:
            data = f"{heading},chamber,released,applied\n{cell},36,1 1/2,3 7/8\n".encode()
            self.assertIn(reason, rows(run(data=data).stdout)[1][-1].split(), heading)
            line = f'{{"{heading}": "{cell}", "chamber": "36", "released": "1 1/2", "applied": "3 7/8"}}\n'.encode()
            self.assertIn(f'"{reason}"'.encode(), run("--format", "ndjson", data=line).stdout, heading)
        self.refused(data=b"Pressure," + HEADER + b"60," + GOOD,
                     says='two columns could be psi: column 1 "Pressure" and column 5 "psi"')

    def test_unit(self):
        for options, data in [(["--unit", "mm"], b"chamber,released,applied\n30,50.8,104.8\n"),
                              ([], b"unit,chamber,released,applied\nmm,30,50.8,104.8\n"),
                              (["--unit", "cm"], b"chamber,released,applied\n30,5.08,10.48\n")]:
            self.assertEqual(rows(run(*options, data=data).stdout)[1][-5], "2 16/127")

    def test_unit_in_a_heading(self):
        data = b"chamber,Released (mm),Applied (mm)\n30,10,20\n"
        columns = ["--column", "released=released (mm)", "--column", "applied=applied (mm)"]
        self.refused(*columns, data=data, says="names mm")
        self.assertEqual(rows(run(*columns, "--unit", "mm", data=data).stdout)[1][-5], "50/127")

    def test_date_order(self):
        data = b"date,chamber,released,applied\n11/10/2021,36,2,4 1/2\n"
        for order, verdict in [("mdy", "in-adjustment"), ("dmy", "out-of-adjustment")]:
            self.assertEqual(rows(run("--date-order", order, data=data).stdout)[1][-2], verdict)
        self.assertEqual(rows(run(data=data).stdout)[1][-2], "undetermined")

    def test_dates_that_contradict_the_declared_order_are_counted(self):
        """10/14/2021 is no day first: then 10/11/2021 beside it is doubtful, too. Cached rows count like new ones."""
        days = ["10/11/2021", "10/14/2021", "14/10/2021", "10/14/2021", "x", "10/15/2021", "2021-10-14"]
        table = "date,chamber,released,applied\n" + "".join(f"{day},36,2,4 1/2\n" for day in days * 50)
        lines = "".join(f'{{"date":"{day}","chamber":"36","released":"2","applied":"4 1/2"}}\n' for day in days * 50)
        said = "150 rows have a date that contradicts --date-order and is not read (first on line {})"
        for options in (["--jobs", "1"], ["--jobs", "2"], ["--no-cache"], ["--by", "chamber"]):
            self.assertIn(said.format(3), " ".join(run("--date-order", "dmy", *options, data=table.encode()).stderr.decode().split()))
        result = run("--date-order", "dmy", "--format", "ndjson", data=lines.encode())
        self.assertIn(said.format(2), " ".join(result.stderr.decode().split()))
        self.assertNotIn(b"contradicts", run(data=table.encode()).stderr)
        self.assertNotIn(b"contradicts", run("--date-order", "dmy", data=table.replace("10/14", "10/1").replace("10/15", "x").encode()).stderr)

    def test_column_left_out(self):
        data = b"unit,chamber,released,applied\nnorth,30,2 1/8,4\n"
        self.judged(data=data, status=3)
        self.judged("--column", "unit=", data=data, status=0)

    def test_a_closed_output_is_said(self):
        result = subprocess.run(["sh", "-c", 'exec "$@" >&-', "sh", COMMAND, "batch", FLEET], capture_output=True, check=False)
        self.assertEqual(result.returncode, 2)
        self.assertIn(b"the output cannot be written: Bad file descriptor", result.stderr)

    def test_unit_may_name_the_vehicle(self):
        """Fleets call a vehicle a unit; the first row tells which is meant, and what may be a division stays strict."""
        table = "unit,chamber,released,applied\n{0},30,2 1/8,4\n{0},30,2 1/8,4\n"
        for name in ("T-104", "104", "K 7", "7B", "#12", '"T-104"'):
            result = run(data=table.format(name).encode())
            self.assertEqual(([row[-2] for row in rows(result.stdout)[1:]], result.returncode),
                             (["in-adjustment"] * 2, 0), name)
            self.assertIn(b"names vehicles", result.stderr)
            lines = rows(run("--by", "unit", data=table.format(name).encode()).stdout)
            self.assertEqual((len(lines), lines[1][0]), (2, name.strip('"')))
        for name, verdict in (("64ths", "undetermined"), ("1/64", "undetermined"), ("64", "undetermined"),
                              ("0.1 mm", "undetermined"), ("yard", "undetermined"), ("in", "in-adjustment")):
            result = run(data=table.format(name).encode())
            self.assertEqual({row[-2] for row in rows(result.stdout)[1:]}, {verdict}, name)
            self.assertEqual(b"is no unit of lengths" in result.stderr, name != "in")
        asked = run("--column", "unit=unit", data=table.format("T-104").encode())
        self.assertEqual(asked.returncode, 3)

    def test_a_unit_in_a_heading_is_not_lost_to_a_vehicle(self):
        data = b"unit,chamber,Released (mm),Applied (mm)\nT-104,30,5,5.5\n"
        columns = ["--column", "released=Released (mm)", "--column", "applied=Applied (mm)"]
        self.refused(*columns, data=data, says="names mm")
        self.assertEqual(run(*columns, "--unit", "mm", data=data).returncode, 0)

    def test_vehicles_in_lines_of_json(self):
        line = b'{"unit": "%s", "chamber": "30", "released": "2 1/8", "applied": "4"}\n'
        self.assertEqual(run("--format", "ndjson", data=line % b"T-104").returncode, 0)
        self.assertEqual(run("--format", "ndjson", data=line % b"yard").returncode, 3)
        named = run("--format", "ndjson", data=line % b"T-104" + line % b"in" + line % b"7")
        self.assertEqual(named.returncode, 0)
        self.assertIn(b'the member "unit" names vehicles ("T-104")', b" ".join(named.stderr.split()))
        slip = run("--format", "ndjson", data=line % b"in" + line % b"cm1")
        self.assertEqual((slip.returncode, slip.stdout.count(b"other-unreadable")), (3, 1))
        first = b"\xef\xbb\xbf\r\n" + line % b"in"
        self.assertTrue(run("--format", "ndjson", data=first).stdout.startswith(b"\r\n{"))

    def test_every_column_counts(self):
        """Each optional column, with a cell that must change the answer of an unlisted clamp 18."""
        plain = {"chamber": "clamp 18", "released": "2", "applied": "3 3/4", "stroke_class": "standard",
                 "rated_stroke": "2 1/2", "marked_limit": "", "psi": "95", "psi_after": "95", "division": "1/16",
                 "date": "2024-01-01", "unit": "in"}
        expected = ["1 3/4", "2", "1/4", "in-adjustment"]
        changes = [({}, expected), ({"rated_stroke": "2"}, ["1 3/4", "1 3/5", "-3/20", "out-of-adjustment"]),
                   ({"marked_limit": "1 1/2"}, ["1 3/4", "1 1/2", "-1/4", "out-of-adjustment"]),
                   ({"psi": "80"}, expected[:3] + ["undetermined"]), ({"unit": "cm"}, None),
                   ({"psi_after": "80"}, expected[:3] + ["undetermined"]),
                   ({"stroke_class": "?"}, expected[:3] + ["undetermined"]),
                   ({"division": "fine"}, expected[:3] + ["undetermined"]), ({"date": "1999-01-01"}, None)]
        for change, answer in changes:
            with self.subTest(change):
                cells = {**plain, **change}
                got = rows(run(data=f"{','.join(cells)}\n{','.join(cells.values())}\n".encode()).stdout)[1][-5:-1]
                if answer:
                    self.assertEqual(got, answer)
                else:
                    self.assertNotEqual(got, expected)

    def test_conditions_are_read_wherever_they_are(self):
        data = b"engine," + HEADER + b"on," + GOOD + b"off," + GOOD
        read = self.judged("--as-of", "2024-01-01", data=data, status=3)
        self.assertEqual([row[-2] for row in rows(read.stdout)[1:]], ["undetermined", "in-adjustment"])
        self.assertEqual(read.stderr, b"")
        left = self.judged("--as-of", "2024-01-01", "--column", "engine=", data=data, status=0)
        self.assertEqual(left.stderr, b"")

    def test_a_column_about_something_else_is_named(self):
        """A first cell that the field cannot hold is named with the remedy; the column is read all the same."""
        for name, cell in [("engine", "D13"), ("spring_brake", "30/30"), ("drum", "16.5x7"), ("division", "Midwest"), ("division", "16"),
                           ("unit", "yard")]:
            for heading in (name, name.upper().replace("_", " ")):
                read = self.judged(data=f"{heading},".encode() + HEADER + f"{cell},".encode() + GOOD, status=3)
                message = " ".join(read.stderr.decode().split())
                self.assertIn(f'the column "{name}" holds "{cell}"', message)
                self.assertIn(f"add --column {name}=", message)
                self.assertIn(b"other-unreadable", read.stdout)
            self.judged("--column", f"{name}=", data=f"{name},".encode() + HEADER + f"{cell},".encode() + GOOD, status=0)
        line = b'{"division": "Midwest", "chamber": "30", "released": "2", "applied": "3"}\n'
        message = " ".join(self.judged("--format", "ndjson", data=line, status=3).stderr.decode().split())
        self.assertIn('the member "division" holds "Midwest"', message)
        blank = self.judged("--as-of", "2024-01-01", data=b"engine,drum," + HEADER + b", ," + GOOD, status=0)
        self.assertEqual(blank.stderr, b"")

    def test_invented_fleet(self):
        """The verdicts that the remarks of the file ask for, counted over its rows."""
        got = [row[-2] for row in rows(self.judged(FLEET, data=None, status=1).stdout)[1:]]
        self.assertEqual({verdict: got.count(verdict) for verdict in set(got)},
                         {"in-adjustment": 31, "out-of-adjustment": 14, "inoperative": 1, "undetermined": 11, "": 2})

    def test_own_limits(self):
        with tempfile.TemporaryDirectory() as folder:
            limits = Path(folder) / "own.csv"
            limits.write_text("family,size,class,limit\nclamp,30,standard,1 3/4\n", encoding="utf-8")
            out = self.judged("--limits", limits, data=HEADER + GOOD, status=1).stdout
            self.assertEqual(rows(out)[1][5:8], ["1 3/4", "-1/8", "out-of-adjustment"])
            limits.write_text("no table at all\n", encoding="utf-8")
            self.refused("--limits", limits, data=HEADER + GOOD, says="own.csv")
            self.refused("--limits", folder + "/none", data=HEADER + GOOD, says="none")

    def test_summary(self):
        result = run("--summary", "--as-of", "2024-01-01", data=HEADER + GOOD * 3 + b"clamp 30,2,4 1/2,95\n")
        lines = [line.split() for line in result.stderr.decode().splitlines()]
        for line in [["in-adjustment", "3"], ["out-of-adjustment", "1"], ["within-limit", "3"], ["over-limit", "1"],
                     ["clamp", "30", "standard", "3", "1", "0", "0"]]:
            self.assertIn(line, lines)
        self.assertEqual(result.stdout.count(b"\n"), 5)

    def test_summary_of_the_limits_used(self):
        """Limit 2 in: strokes of 1/100 to 2 in, and some more, by hand; nearest rank, up to the next half percent.
        22 in are eleven times the limit, which is more than 500 %."""
        body = b"".join(b"clamp 30,1,%d.%02d,95\n" % (1 + i // 100, i % 100) for i in range(1, 201))
        result = run("--summary", "--as-of", "2024-01-01", data=HEADER + body + b"clamp 30,1,3.001,95\nclamp 30,2,2,95\n"
                     b"clamp 30,1,23,95\nclamp 30,2,1,95\n20,2,x,95\n")
        lines = [line.split() for line in result.stderr.decode().splitlines()]
        for line in [["all", "203", "50.5", "91.0", "100.0", "more"], ["in-adjustment", "200", "50.0", "90.0", "99.0", "100.0"],
                     ["out-of-adjustment", "2", "100.5", "more", "more", "more"], ["inoperative", "1"] + ["0.0"] * 4,
                     ["at-limit", "1"] + ["100.0"] * 4, ["clamp", "30", "standard", "203", "50.5", "91.0", "100.0", "more"]]:
            self.assertIn(line, lines)
        self.assertLessEqual(max(map(len, result.stderr.decode().splitlines())), 80)

    def test_summary_as_json(self):
        """The counts of the text, and nothing else on standard output, whatever the path and the language."""
        body = (HEADER + b"".join(b"clamp 30,1,%d.%02d,95\n" % (1 + i // 100, i % 100) for i in range(1, 201)) +
                b"clamp 30,1,3.001,95\nclamp 30,1,23,95\n\n20,2,x,95\nx,2,3,95\n20,2\n")
        wanted = None
        for options in ([], ["--no-cache"], ["--jobs", "2"], ["--language", "fr"], ["--decimals", "2"]):
            result = run("--summary", "--json", "--as-of", "2024-01-01", *options, data=body)
            self.assertEqual((result.returncode, result.stdout.count(b"\n")), (1, 1))
            wanted = wanted or result.stdout
            self.assertEqual(result.stdout, wanted)
        answer = json.loads(wanted)
        self.assertEqual([answer[key] for key in ("rules", "wheel_ends", "undated", "as_of")], ["us-fmcsr", 205, 205, "2024-01-01"])
        self.assertEqual(answer["verdicts"], {"in-adjustment": 200, "out-of-adjustment": 2, "inoperative": 0, "undetermined": 3})
        self.assertEqual([answer["reasons"][code] for code in ("over-limit", "short-record", "chamber-unreadable")], [2, 1, 1])
        steps = dict(answer["used_percent"].pop("steps"))
        self.assertEqual(answer["used_percent"], {"counted": 202, "p50": 50.5, "p90": 91.0, "p99": 100.0, "most": None})
        self.assertEqual((steps[None], steps[100.0], sum(steps.values())), (1, 1, 202))
        self.assertEqual(answer["used_percent_by_verdict"]["in-adjustment"]["most"], 100.0)
        self.assertNotIn("inoperative", answer["used_percent_by_verdict"])
        self.assertEqual([(chamber["chamber"], sum(chamber["verdicts"].values())) for chamber in answer["chambers"]],
                         [("clamp 30 standard", 202), ("clamp 20 standard", 2), (None, 1)])
        self.assertEqual(answer["passed_through"], {"headers": 0, "empty_records": 0, "empty_lines": 1})

    def test_summaries_of_parts_add_up(self):
        """By examples/cli/merge_summaries.py: to what is said of the whole, but for the order."""
        def sorted_chambers(answer):
            return {**answer, "chambers": sorted(answer["chambers"], key=lambda chamber: chamber["chamber"] or "")}

        head, *lines = FLEET.read_bytes().splitlines(keepends=True)
        lines = [line for line in lines if line.count(b",") == head.count(b",")]  # a record a line
        lines.append(b",".join([b""] * 4 + [b"clamp 30", b"", b"", b"1", b"23", b"95"]) + b"," * (head.count(b",") - 9) + b"\n")
        options = ["--summary", "--json", "--as-of", "2024-01-01", "--column", "unit="]
        whole = json.loads(run(*options, data=head + b"".join(lines)).stdout)
        self.assertIsNone(whole["used_percent"]["most"])
        with tempfile.TemporaryDirectory() as folder:
            parts = [os.path.join(folder, f"{part}.json") for part in range(5)]
            for at, part in enumerate(parts):
                Path(part).write_bytes(run(*options, data=head + b"".join(lines[at::5])).stdout)
            merged = subprocess.run([sys.executable, MERGE, *parts], capture_output=True, timeout=60, check=True).stdout
            self.assertEqual(sorted_chambers(json.loads(merged)), sorted_chambers(whole))
            Path(parts[0]).write_bytes(run(*options[:3], "2024-01-02", data=head).stdout)
            refused = subprocess.run([sys.executable, MERGE, *parts], capture_output=True, timeout=60, check=False)
            self.assertEqual((refused.returncode, b"different rules or days" in refused.stderr), (1, True))

    def test_summary_as_json_of_vehicles(self):
        for options, key, verdict in ([], "inspections", {"out-of-service": 2}), (["--pool"], "vehicles", {"ambiguous": 1}):
            result = run(CASES / "dirty-1.csv", "--by", "unit_no", "--summary", "--json", *options)
            told = json.loads(result.stdout)[key]
            lines = run(CASES / "dirty-1.csv", "--by", "unit_no", *options).stdout.splitlines()
            self.assertEqual((told["count"], sum(told["verdicts"].values())), (len(lines) - 1,) * 2)
            self.assertLessEqual(verdict.items(), told["verdicts"].items())

    def test_json_without_a_summary(self):
        self.refused("--json", data=HEADER + GOOD, says=["--json goes with --summary", "--format ndjson"])

    def test_the_older_name_of_no_cache(self):
        self.assertEqual(run("--afresh", data=HEADER + GOOD * 3).stdout, run("--no-cache", data=HEADER + GOOD * 3).stdout)
        self.assertNotIn(b"afresh", run("--help").stdout)

    def test_help_fits_a_terminal(self):
        result = run("--help")
        self.assertEqual(result.returncode, 0)
        self.assertLessEqual(max(len(line) for line in result.stdout.decode().splitlines()), 80)


class OneFileOneVerdict(Case):
    """The same columns through every way in: a table, lines of JSON, and one vehicle."""

    PLAIN = {"chamber": "36", "released": "1 1/2", "applied": "3 7/8", "psi": "95", "date": "2024-06-05"}
    # What is changed in a row that passes, and reasons that must be among its own then.
    CHANGES = [({}, {"within-limit"}), ({"date": None, "Inspection date": "2020-05-01"}, {"over-limit"}),
               ({"date": None, "inspectionDate": "2020-05-01"}, {"over-limit"}), ({"date": "9/1/2013 8:00"}, {"date-unreadable"}),
               ({"date": "2010-9-1"}, {"date-unreadable"}), ({"psi after": "60"}, {"pressure-low"}),
               ({"psiAfter": "60"}, {"pressure-low"}), ({"psi": None, "Pressure": "60"}, {"pressure-low"}),
               ({"Stroke class": "unheard of"}, {"other-unreadable"}), ({"engine": "on"}, {"engine-running"}),
               ({"Spring Brake": "on"}, {"spring-brake-applied"}), ({"drum": "hot"}, {"drum-hot"}),
               ({"division": "16"}, {"other-unreadable"}), ({"rated_stroke": "0"}, {"other-unreadable"}),
               ({"unit": "furlong"}, {"released-unreadable", "applied-unreadable", "other-unreadable"}),
               ({"unit": "mm", "released": "38.1", "applied": "98.425"}, {"within-limit"}),
               ({"unit": "mm"}, {"released-unreadable", "applied-unreadable"}),
               ({"chamber": "24", "strokeClass": "long", "ratedStroke": "3 in"}, {"within-limit"})]

    def of_table(self, row):
        out = rows(run(data=(",".join(row) + "\n" + ",".join(row.values()) + "\n").encode()).stdout)
        return out[1][-2], out[1][-1].split()

    def of_object(self, row):
        out = json.loads(run("--format", "ndjson", data=json.dumps(row).encode() + b"\n").stdout)
        return out["verdict"], out["reasons"]

    def of_vehicle(self, row):
        data = "position," + ",".join(row) + "\n1L," + ",".join(row.values()) + "\n"
        result = subprocess.run([COMMAND, "vehicle", "-", "--json"], input=data.encode(), capture_output=True, timeout=60, check=False)
        (end,) = json.loads(result.stdout)["wheel_ends"]
        return end["verdict"], end["reasons"]

    def test_every_way_in(self):
        for change, reasons in self.CHANGES:
            row = {name: cell for name, cell in {**self.PLAIN, **change}.items() if cell is not None}
            with self.subTest(change):
                verdict = self.of_table(row)
                self.assertEqual(self.of_object(row), verdict)
                self.assertEqual(self.of_vehicle(row), verdict)
                self.assertTrue(reasons <= set(verdict[1]), verdict)
                self.assertEqual(verdict[0] == "in-adjustment", reasons == {"within-limit"} or "drum-hot" in reasons, verdict)


class ByVehicle(Case):
    """One line an inspection. The sums are by arithmetic: 1 for a brake over by 1/4 in or more or without movement, 1/2
    for one that is over by less; out of service from 20 % on (violation text of 49 CFR 396.3(a)(1), 20 % item)."""

    def lines(self, *options, data=None, status=1, separator=","):
        out = self.judged(*options, data=data, status=status).stdout
        return list(csv.DictReader(io.StringIO(out.decode(), newline=""), delimiter=separator))

    def lines_of(self, data):
        return list(csv.DictReader(io.StringIO(run("--by", "v", data=data).stdout.decode(), newline="")))

    def test_first_dirty_file(self):
        dated, undated, early, late = self.lines(CASES / "dirty-1.csv", "--by", "unit_no")
        wanted = {"unit_no": "T-104", "insp_date": "2024-06-05", "brakes": "9", "in_adjustment": "4",
                  "out_of_adjustment": "1", "inoperative": "1", "undetermined": "3", "defective": "1 1/2",
                  "verdict": "undetermined", "remarks": "undated-rows"}
        self.assertEqual({key: dated[key] for key in wanted}, wanted)
        wanted = {"unit_no": "T-104", "insp_date": "", "brakes": "1", "defective": "1", "verdict": "out-of-service"}
        self.assertEqual({key: undated[key] for key in wanted}, wanted)
        self.assertEqual([(line["insp_date"], line["brakes"], line["defective"], line["verdict"]) for line in (early, late)],
                         [("2021-10-13", "1", "1", "out-of-service"), ("2021-10-14", "5", "1/2", "undetermined")])
        first, second = self.lines(CASES / "dirty-1.csv", "--by", "unit_no", "--pool")
        wanted = {"unit_no": "T-104", "brakes": "10", "in_adjustment": "4", "out_of_adjustment": "2", "inoperative": "1",
                  "undetermined": "3", "defective": "2 1/2", "percent": "25", "verdict": "out-of-service"}
        self.assertEqual({key: first[key] for key in wanted}, wanted)
        wanted = {"unit_no": "T-207", "brakes": "6", "defective": "1 1/2", "percent": "25", "verdict": "ambiguous",
                  "whole_needed": "2", "remarks": "mixed-days"}
        self.assertEqual({key: second[key] for key in wanted}, wanted)

    def test_second_dirty_file(self):
        first, second = self.lines(CASES / "dirty-2.csv", *FRENCH, "--by", "Véhicule", "--pool", separator=";")
        self.assertEqual((first["brakes"], first["defective"], first["percent"], first["verdict"]),
                         ("10", "3", "30", "out-of-service"))
        self.assertEqual((second["brakes"], second["defective"], second["verdict"]), ("4", "0", "undetermined"))

    def test_any_order_of_rows(self):
        records = rows(FLEET.read_bytes())
        body = [row for row in records[1:] if row != records[0] and any(row)]

        def counted(of):
            text = io.StringIO(newline="")
            csv.writer(text).writerows([records[0], *of])
            return self.lines("--by", "unit_no", data=text.getvalue().encode())

        straight, turned = counted(body), counted(reversed(body))
        key = lambda line: (line["unit_no"], line["date"])
        for a, b in zip(sorted(straight, key=key), sorted(turned, key=key)):
            self.assertEqual({**a, "remarks": ""}, {**b, "remarks": ""})
        self.assertEqual(sum(int(line["brakes"]) for line in straight), len(body))

    def test_sums_agree_with_the_rows(self):
        out = list(csv.DictReader(io.StringIO(run(FLEET).stdout.decode(), newline="")))
        for line in self.lines(FLEET, "--by", "unit_no", "--pool"):
            mine = [row["verdict"] for row in out if row["unit_no"] == line["unit_no"] and row["verdict"]]
            for verdict, column in (("in-adjustment", "in_adjustment"), ("out-of-adjustment", "out_of_adjustment"),
                                    ("inoperative", "inoperative"), ("undetermined", "undetermined")):
                self.assertEqual(mine.count(verdict), int(line[column]), line)

    def test_rows_that_are_not_judged_count_as_unknown(self):
        (line,) = self.lines("--by", "v", data=b"v,chamber,released,applied\nA,30,2,3\nA,30,2,3,4\n", status=3)
        self.assertEqual((line["brakes"], line["undetermined"], line["verdict"]), ("2", "1", "undetermined"))

    @unittest.skipUnless(has_terminals(), "no pseudo-terminal")
    def test_summary_fits_the_screen(self):
        words = ["sh", "-c", '"$@" 2>&1 >/dev/null', "-", COMMAND, "batch", CASES / "dirty-1.csv", "--by", "unit_no", "--summary"]
        figures = {}
        for language in ("en", "fr", "es"):
            for columns in (40, 60, 80):
                with self.subTest(language=language, columns=columns):
                    status, shown = on_terminal([*words, "--language", language], dict(os.environ, TERM="dumb"), columns)
                    self.assertEqual(status, 1)
                    self.assertEqual([line for line in shown.splitlines() if len(line) > (columns if columns == 80 else columns - 1)], [])
                    numbers = re.findall(r"(?<![\w.])\d+\.\d|(?<![\w.])\d+(?![\w.])", shown)
                    self.assertEqual(sorted(numbers), figures.setdefault(language, sorted(numbers)))
        self.assertIn("  clamp 20 standard: in adj. 1, out of", on_terminal(words, dict(os.environ, TERM="dumb"), 40)[1])

    def test_summary_counts_vehicles(self):
        text = run(CASES / "dirty-1.csv", "--by", "unit_no", "--summary").stderr.decode()
        self.assertRegex(text, r"out-of-service +2\n")
        self.assertRegex(text, r"inspections +4\n")
        text = run(CASES / "dirty-1.csv", "--by", "unit_no", "--summary", "--pool").stderr.decode()
        self.assertRegex(text, r"ambiguous +1\n")
        self.assertRegex(text, r"vehicles +2\n")

    def test_a_heading_that_is_not_there(self):
        # One vehicle, however its name is spelled; only blanks around it are nothing to speak of.
        units = b"v,chamber,released,applied\nT-1,30,2,3\nT-1 ,30,2,3\n t-1,30,2,4.5\n"
        for options in ([], ["--no-cache"]):
            result = self.judged("--by", "v", *options, data=units, status=1)
            self.assertEqual(result.stdout.splitlines()[1:], [b"T-1,3,2,1,0,0,1,33 1/3,out-of-service,1,"])
            self.assertIn('1 vehicle is spelled in several ways and counted as one ("T-1" and "t-1")',
                          " ".join(result.stderr.decode().split()))
        result = self.judged("--by", "v", data=units.replace(b" t", b" T"), status=1)
        self.assertNotIn(b"spelled", result.stderr)
        self.refused("--by", "unit", data=HEADER + GOOD, says=['there is no heading "unit" (--by)', '"chamber"'])
        units = b"unit,chamber,released,applied,psi\nyard,30,2,3,95\n"
        self.refused("--by", "unit", data=units, says="--column unit=")
        (line,) = self.lines("--by", "unit", "--column", "unit=", data=units, status=0)
        self.assertEqual(line["verdict"], "below-criterion")
        self.refused("--by", "v", data=b"v,V,chamber,released,applied\n1,2,30,2,3\n", says="two columns")
        self.refused("--by", "", data=HEADER + GOOD, says="there is no heading")

    def test_days_are_inspections(self):
        """2 of 10 brakes are over by 1/4 in and more on the first day, which is 20 %; none on the days after it."""
        head, good, bad = b"unit,date,chamber,released,applied,psi\n", b"T-1,%s,30,2,3,95\n", b"T-1,%s,30,2,4 3/8,95\n"
        days = [b"2024-01-10", b"2024-03-01", b"1 Mar 2025"]
        data = head + bad % days[0] * 2 + good % days[0] * 8 + good % days[1] * 10 + good % days[2] * 10
        for options in ([], ["--no-cache"], ["--date-order", "dmy"]):
            result = self.judged("--by", "unit", "--column", "unit=", *options, data=data, status=1)
            self.assertEqual(result.stdout.decode().splitlines()[1:],
                             ["T-1,2024-01-10,10,8,2,0,0,2,20,out-of-service,2,",
                              "T-1,2024-03-01,10,10,0,0,0,0,0,below-criterion,2,",
                              "T-1,2025-03-01,10,10,0,0,0,0,0,below-criterion,2,"])
        (line,) = self.lines("--by", "unit", "--column", "unit=", "--pool", data=data)
        self.assertEqual((line["brakes"], line["percent"], line["verdict"], line["remarks"]),
                         ("30", "6 2/3", "below-criterion", "mixed-days"))
        # The date as it is written is a name like any other.
        lines = self.lines("--by", "unit", "--by", "date", "--column", "unit=", data=data)
        self.assertEqual([(line["unit"], line["date"], line["verdict"]) for line in lines],
                         [("T-1", day.decode(), outcome) for day, outcome in
                          zip(days, ["out-of-service", "below-criterion", "below-criterion"])])

    def test_a_damaged_date_makes_no_inspection_better(self):
        """A row that has lost its day or its place could be of any inspection of its vehicle."""
        rank = {"out-of-service": 3, "ambiguous": 2, "undetermined": 1, "below-criterion": 0}
        head, good, bad = "v,date,chamber,released,applied,psi\n", "T-1,{},30,2,3,95\n", "T-1,{},30,2,4 3/8,95\n"
        for broken in ("", "soon", "2024-13-40", "06/05/2024", "2024-01-10,more", '"2024-01-10" x'):
            for kinds in itertools.product((good, bad), repeat=3):
                day = "2024-01-10"
                rest = good.format(day) * 5
                whole, hurt = (self.lines_of((head + kinds[0].format(first) + "".join(kinds[1:]).format(day, day) + rest).encode())
                               for first in (day, broken))
                (line,) = [line for line in hurt if line["date"] == day]
                self.assertEqual(line["remarks"], "undated-rows")
                self.assertGreaterEqual(rank[line["verdict"]], min(rank[whole[0]["verdict"]], 1), (broken, kinds))

    def test_spellings_are_counted_by_inspection(self):
        """One vehicle on two days, spelled in two ways on each: two inspections, not two vehicles."""
        data = b"v,date,chamber,released,applied\n" + b"".join(
            b"%s,2024-01-%d,30,2,3\n" % (name, day) for day in (10, 11) for name in (b"T-1", b"t-1"))
        result = self.judged("--by", "v", data=data, status=0)
        self.assertIn('2 inspections name their vehicle in several ways (the first "T-1" and "t-1")', " ".join(result.stderr.decode().split()))
        result = self.judged("--by", "v", "--pool", data=data, status=0)
        self.assertIn("1 vehicle is spelled in several ways", " ".join(result.stderr.decode().split()))

    def test_several_columns_name_a_vehicle(self):
        data = b"yard,no,chamber,released,applied,psi\n" + b"".join(
            b"%s,%d,30,2,%d,95\n" % (yard, number, 3 + (yard == b"South")) for yard in (b"North", b"South", b"north ") for number in (1, 2))
        result = self.judged("--by", "yard", "--by", "no", data=data, status=0)
        self.assertEqual(result.stdout.decode().splitlines(),
                         ["yard,no,brakes,in_adjustment,out_of_adjustment,inoperative,undetermined,defective,percent,verdict,"
                          "whole_needed,remarks"] +
                         [f"{yard},{number},{brakes},{brakes},0,0,0,0,0,below-criterion,1," for yard, brakes in
                          (("North", 2), ("South", 1)) for number in (1, 2)])
        self.refused("--by", "no", "--by", "NO", data=data, says="twice")
        self.refused("--by", "no", "--by", "city", data=data, says='no heading "city"')
        self.refused(*["--by", "no"] * 9, data=data, says="8 times")
        self.refused("--pool", data=data, says="--pool goes with --by")

    def test_any_number_of_vehicles(self):
        rows_in = [b"%d,30,2,3\n" % (i * 7919 % 70001) for i in range(70001)]
        out = self.judged("--by", "v", data=b"v,chamber,released,applied\n" + b"".join(rows_in + rows_in), status=0).stdout
        self.assertEqual(out.splitlines()[1:], [row.split(b",")[0] + b",2,2,0,0,0,0,0,below-criterion,1," for row in rows_in])


class Refusals(Case):
    def test_options(self):
        for options, says in [(["--separator", "ab"], "--separator"), (["--separator", "/"], "--separator"),
                              (["--separator", ""], "--separator"), (["--unit", "ft"], "--unit"),
                              (["--date-order", "myd"], "--date-order"), (["--jobs", "0"], "--jobs"),
                              (["--column", "released"], "FIELD=HEADING"), (["--column", "arm_length=a"], "the fields are"), (["--column", "reliesed=x"], "reliesed"),
                              (["--column", "psi=a", "--column", "psi=b"], "twice"),
                              (["--column", "psi=nothing"], "there is no heading"), (["--by", "axle"], "--by"),
                              (["--rules", "nowhere"], "nowhere"), (["--as-of", "2021-02-30"], "--as-of"),
                              (["--encoding", "klingon"], "klingon"), (["--encoding", "latin1//IGNORE"], "encoding"),
                              (["--column", "released=applied"], "both"), (["a", "b"], "b")]:
            with self.subTest(options):
                self.refused(*options, data=HEADER + GOOD, says=says)

    def test_headings(self):
        for data, says in [(b"", "empty"), (b"\n\n", "empty"), (b"chamber,released\n", ["applied", "\"released\""]),
                           (b"a;chamber;released;applied\n", ["semicolons", "--separator ';'"]),
                           (b"chamber\treleased\tapplied\n", ["tabs", "--separator tab"]),
                           (b"chamber,released,applied,Applied\n", "two columns"),
                           (b"date,insp_date," + HEADER, "two columns"),
                           (b"chamber,Rel\xe2ch\xe9,applied\n", "--encoding windows-1252"),
                           (b"chamber,\"released\nx,applied\n", "quote"),
                           (HEADER.decode().encode("utf-16"), "--encoding utf-16"),
                           (b"\x7fELF\x00\x00\x00", "not a text file")]:
            with self.subTest(data):
                self.refused(data=data, says=says)

    def test_random_bytes(self):
        self.refused(data=bytes(range(1, 256)) * 500, says="chamber")

    def test_files(self):
        self.refused("/nonexistent/file.csv", says="/nonexistent/file.csv")
        self.refused(str(HERE), says="directory")
        self.refused("/proc/self/mem", says="/proc/self/mem")  # opens, but cannot be read from its start

    def test_joined_files_of_other_columns(self):
        result = self.refused(data=HEADER + GOOD + b"chamber,applied,released,psi\nclamp 30,4,2,95\n",
                              says=["line 3", "other columns"])
        self.assertIn(GOOD_OUT, result.stdout)

    def test_repeated_header_with_a_ragged_end(self):
        """Separators at the end of a line, or an unread heading left out there, move no column that is read."""
        wide = b"chamber,released,applied,psi,remarks\n"
        for header, again in ((HEADER, HEADER.rstrip() + b",\n"), (HEADER, HEADER.rstrip() + b", ,,\n"),
                              (wide, b"chamber,released,applied,psi\n")):
            row = GOOD if header == HEADER else GOOD.rstrip() + b",ok\n"
            result = run(data=header + row + again + row)
            self.assertEqual(result.returncode, 0, again)
            self.assertIn(b"1 repeated header line passed through", result.stderr)
            lines = result.stdout.split(b"\n")
            self.assertEqual((len(lines), lines[1]), (5, lines[3]))
            self.assertTrue(lines[2].startswith(again.rstrip(b"\n")))
        for again in (HEADER.rstrip() + b",remarks\n", b"chamber,released,applied\n"):
            self.refused(data=HEADER + GOOD + again, says=["line 3", "other columns"])

    def test_encoding(self):
        text = "chamber,released,applied\n30,2 1/8,4½\n"
        good = run("--encoding", "utf-16", data=text.encode("utf-16"))
        self.assertTrue(good.stdout.decode().startswith(text.splitlines()[0]))
        self.assertIn(",2 3/8,2,-3/8,out-of-adjustment", good.stdout.decode())
        self.refused("--encoding", "utf-16", data=text.encode("utf-16") + b"x", says="inside a character")
        cut = self.refused("--encoding", "utf-8", data=text.encode() + b"30,2,3\n\xc2", says="byte 46")
        self.assertIn(b"30,2,3,1,2,1", cut.stdout)
        self.refused("--encoding", "windows-1252", data=text.encode("windows-1252") + b"\x81", says="windows-1252")


class Adversarial(Case):
    def test_full_disk(self):
        with open("/dev/full", "wb") as full:
            result = subprocess.run([COMMAND, "batch"], input=HEADER + GOOD, stdout=full, stderr=subprocess.PIPE,
                                    timeout=60, check=False)
        self.assertEqual(result.returncode, 2)
        self.assertIn(b"cannot be written", result.stderr)

    def test_reader_has_gone(self):
        with subprocess.Popen([COMMAND, "batch"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE) as process:
            process.stdout.close()
            try:
                process.stdin.write(HEADER + GOOD * 200000)
                process.stdin.close()
            except BrokenPipeError:
                pass
            self.assertEqual(process.stderr.read(), b"")
            self.assertEqual(process.wait(timeout=60), 2)

    def test_output_onto_input(self):
        with tempfile.NamedTemporaryFile() as file:
            file.write(HEADER + GOOD)
            file.flush()
            with open(file.name, "ab") as same:
                result = subprocess.run([COMMAND, "batch", file.name], stdout=same, stderr=subprocess.PIPE,
                                        timeout=60, check=False)
            self.assertEqual(result.returncode, 2)
            self.assertEqual(Path(file.name).read_bytes(), HEADER + GOOD)

    def test_cut_anywhere(self):
        """A file cut at any byte: no crash, and all that stood before the cut is judged as it was. Every seventh in short."""
        for name, options in [("dirty-1.csv", []), ("dirty-2.csv", FRENCH)]:
            data = (CASES / name).read_bytes()
            whole = run(*options, data=data).stdout
            header = data.index(b"\n") + 1
            for cut in range(0, len(data), 1 if LONG else 7):
                result = run(*options, data=data[:cut])
                self.assertIn(result.returncode, [0, 1, 2, 3], cut)
                complete = data[:cut].count(b"\r\n")
                if cut >= header:
                    lines = whole.split(b"\r\n")[:complete]
                    self.assertTrue(result.stdout.startswith(b"\r\n".join(lines)), (name, cut))

    def test_stray_quote_loses_no_row(self):
        for stray in [b"clamp 30,\"2 1/8,4,95\n", b"clamp 30,\"2 1/8\"\",4,95\n"]:
            for count in [1, 10, 100000]:
                result = run("--as-of", "2024-01-01", data=HEADER + GOOD + stray + GOOD * count)
                self.assertEqual(result.returncode, 3)
                self.assertIn(b"line 3", result.stderr)
                self.assertEqual(result.stdout.split(b"\n", 1)[1],
                                 GOOD_OUT + stray[:-1] + b",,,,undetermined,bad-quotes\n" + GOOD_OUT * count)

    def test_quotes_that_swallow_each_other_end(self):
        if SLOW:
            self.skipTest("a gigabyte is scanned; test_batch_cache.py has a command that scans less")
        result = run(data=HEADER + b"a\",b,\"\n" * 100000)
        self.assertEqual(result.returncode, 2)
        self.assertIn(b"never closed", result.stderr)

    def stream(self, pieces):
        """Streams pieces through the command, in at most 64 MiB of memory; returns exit status and message."""
        with tempfile.TemporaryFile() as errors:
            process = subprocess.Popen([COMMAND, "batch"], stdin=subprocess.PIPE, stdout=subprocess.DEVNULL,
                                       stderr=errors, bufsize=0)
            with process.stdin:
                try:
                    for piece in pieces:
                        process.stdin.write(piece)
                except BrokenPipeError:
                    pass
            _, wait, usage = os.wait4(process.pid, 0)
            process.returncode = os.waitstatus_to_exitcode(wait)
            errors.seek(0)
            if not SANITIZED:
                self.assertLess(usage.ru_maxrss, 64 * 1024)
            return process.returncode, errors.read()

    def test_memory_of_a_long_stream(self):
        block = GOOD * 50000
        count = 300 * 1024 * 1024 // len(block)
        status, _ = self.stream(itertools.chain([HEADER], itertools.repeat(block, count)))
        self.assertEqual(status, 0)

    def test_line_without_end(self):
        block = b"x" * (1 << 20)
        status, message = self.stream(itertools.chain([HEADER, GOOD], itertools.repeat(block, 2048)))
        self.assertEqual(status, 2)
        self.assertIn(b"line 3", message)
        self.assertIn(b"16 MiB", message)

    def test_record_limits(self):
        self.refused(data=HEADER + GOOD + b"," * 70000 + b"\n", says=["line 3", "65536"])
        wide = run(data=HEADER + b"," * 65535 + b"\n")
        self.assertEqual(wide.returncode, 0)

    def test_rows_before_a_fault_stay(self):
        result = run(data=HEADER + GOOD * 1000 + b"y" * (17 << 20))
        self.assertEqual(result.stdout.count(GOOD_OUT), 1000)


if __name__ == "__main__":
    if len(sys.argv) < 2 or len(sys.argv) > 4:
        sys.exit(__doc__)
    COMMAND, LONG = sys.argv[1], "long" in sys.argv[2:]
    XLSX_FILE = next((argument for argument in sys.argv[2:] if argument != "long"), "")
    # A checker of memory needs memory of its own: the bound is the bare command's.
    SANITIZED = b"__asan_init" in Path(COMMAND).read_bytes()
    SLOW = SANITIZED or b"LLVM_PROFILE_FILE" in Path(COMMAND).read_bytes()
    tap.main()
