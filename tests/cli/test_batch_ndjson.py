# SPDX-License-Identifier: Apache-2.0
"""Lines of JSON through `rodtravel batch --format ndjson`: python3 test_batch_ndjson.py RODTRAVEL RODTRAVEL_WITH_SMALL_BLOCKS

Python's json is the second reader: what it takes and refuses is compared line by line."""
import csv
import io
import json
import random
import subprocess
import sys
import unittest
from pathlib import Path

import tap

HERE = Path(__file__).resolve().parent
FLEET = HERE.parent.parent / "examples" / "data" / "fleet.csv"
RESULTS = ["applied_stroke", "limit", "margin", "verdict", "reasons"]
GOOD = b'{"chamber": "clamp 30", "released": "2 1/8", "applied": 4, "psi": 95}\n'
JSON_GOOD = [b'{}', b' { } ', b'{"a":1}', b'{"a":-0.5e+10,"b":[1,2,{"c":[]}],"d":{}}', b'{"a":"\\u00e9\\ud83d\\ude00\\n"}',
             b'\t{"a" : [ [ ] , [ { } ] ] }\r', b'{"a":true,"b":false,"c":null}', b'{"":""}', b'{"a":0}', b'{"a":10E5}',
             b'{"a":' + b"[" * 60 + b"]" * 60 + b"}"]
JSON_BAD = [b'[]', b'1', b'"x"', b'{', b'}', b'{"a"}', b'{"a":}', b'{"a":1,}', b'{,}', b'{"a":1 "b":2}', b'{"a":01}', b'{"a":1.}',
            b'{"a":.5}', b'{"a":+1}', b'{"a":1e}', b'{"a":tru}', b'{"a":[1,]}', b'{"a":[1}', b'{"a":{"b":1]}', b'{"a":"\\x"}',
            b'{"a":"\\u12g4"}', b'{"a":"\t"}', b"{'a':1}", b'{a:1}', b'{"a":1}}', b'{"a":1} {"b":2}', b'{"a":1}x', b'{"a":"b}',
            b'{"a":-}', b'{"a":[,1]}', b'{"a":{,}}', b'{"a":{"b"}}', b'{"a":[1 2]}', b'nul', b'{"a":nul}', b'{"a":"\\',
            b'{"a":' + b"[" * 70 + b"]" * 70 + b"}"]


def run(*options, data=None, command=None, form="ndjson"):
    return subprocess.run([command or COMMAND, "batch", "--format", form, "--as-of", "2024-06-05", *map(str, options)],
                          input=data, capture_output=True, timeout=120, check=False)


def objects(data):
    return [json.loads(line) for line in data.splitlines()]


class Objects(unittest.TestCase):
    def test_same_as_the_table(self):
        """The invented fleet as objects has the answers of the table."""
        table = subprocess.run([COMMAND, "batch", "--as-of", "2024-06-05", FLEET], capture_output=True, check=False)
        rows = [row for row in csv.DictReader(io.StringIO(table.stdout.decode(), newline="")) if row["verdict"]]
        lines = [json.dumps({key: row[key] for key in row if key not in RESULTS}, ensure_ascii=i % 2 == 0)
                 for i, row in enumerate(rows)]
        for jobs in (1, 2, 3, 8):
            for command in (COMMAND, SMALL):
                result = run("--jobs", jobs, data="\n".join(lines).encode(), command=command)
                self.assertEqual(result.returncode, table.returncode)
                for row, line, got in zip(rows, lines, result.stdout.decode().splitlines()):
                    self.assertTrue(got.startswith(line[:-1] + ", "))
                    answer = json.loads(got)
                    self.assertEqual([answer[name] or "" for name in RESULTS[:4]], [row[name] for name in RESULTS[:4]])
                    self.assertEqual(" ".join(answer["reasons"]), row["reasons"])

    def test_decimals(self):
        """The numbers of the table; a result that a line has already stops the run."""
        numbers = ["applied_stroke_mm", "limit_mm", "margin_mm", "used_percent"]
        options = ["--unit", "mm", "--decimals", 3]
        table = run(*options, data=FLEET.read_bytes(), form="csv")
        rows = [row for row in csv.DictReader(io.StringIO(table.stdout.decode(), newline="")) if row["verdict"]]
        lines = "\n".join(json.dumps({key: row[key] for key in row if key not in RESULTS + numbers}) for row in rows)
        got = run(*options, data=lines.encode()).stdout.decode().splitlines()
        for row, line in zip(rows, got):
            answer = json.loads(line, parse_float=str)
            self.assertEqual([answer[name] or "" for name in numbers], [row[name] for name in numbers])
        self.assertEqual(len(got), len(rows))
        self.assertIn(b"is a member \"margin_mm\" already", run(*options, data=b'{"margin_mm": 1}\n').stderr)

    def test_bytes_stay(self):
        for line in JSON_GOOD:
            out = run(data=line + b"\n").stdout
            head = line.rstrip()[:-1]
            self.assertTrue(out.startswith(head), line)
            self.assertTrue(out.endswith(b"\n"))
            answer = json.loads(out)
            self.assertEqual(list(answer), list(json.loads(line)) + RESULTS)
            self.assertEqual({name: answer[name] for name in json.loads(line)}, json.loads(line))

    def test_lines_that_are_no_objects(self):
        """Each stays in its place, as an object that holds it."""
        for line in JSON_BAD + [b"\xff\xfe{}", b'{"a":1}\x00', b"\x7f"]:
            result = run(data=GOOD + line + b"\n" + GOOD)
            self.assertEqual(result.returncode, 3, line)
            first, bad, last = objects(result.stdout)
            self.assertEqual((first["verdict"], last["verdict"]), ("in-adjustment", "in-adjustment"))
            self.assertEqual((bad["line"], bad["verdict"], bad["reasons"]),
                             (line.decode(errors="replace").replace("\r", ""), "undetermined", ["bad-object"]), line)
            self.assertIn(b"first on line 2", result.stderr)

    def test_random_lines_against_a_second_reader(self):
        chance = random.Random(5)
        pieces = ['{', '}', '[', ']', ',', ':', '"a"', '"b"', '1', '-2.5', 'true', 'null', ' ', '"\\n"', '0', 'e', '"']
        lines = [b'{"a"' + "".join(chance.choice(pieces) for _ in range(chance.randrange(9))).encode() + b"}" for _ in range(3000)]
        got = objects(run(data=b"\n".join(lines)).stdout)
        self.assertEqual(len(got), len(lines))
        for line, answer in zip(lines, got):
            try:
                good = isinstance(json.loads(line, parse_constant=lambda _: 1 / 0), dict)
            except ValueError:
                good = False
            self.assertEqual("line" not in answer, good, line)

    def test_values(self):
        for value, stroke in [("4", "2"), ("4.0", "2"), ('"4"', "2"), ('"4\\u00bd"', "2 1/2"), ("4.0625", "2 1/16"),
                              ('"4\\u0020\\u0031/2 in"', "2 1/2"), ("null", None), ("true", None), ("[4]", None),
                              ("4e0", None), ('"4\\u0000"', None), ('"\\ud800"', None), ("1e400", None), ('""', None)]:
            (answer,) = objects(run(data=b'{"chamber":30,"released":2,"applied":%s}' % value.encode()).stdout)
            self.assertEqual(answer["applied_stroke"], stroke, value)

    def test_decimal_comma_is_for_texts(self):
        for value in [b"4.125", b'"4,125"']:
            (answer,) = objects(run("--decimal-comma", data=b'{"chamber":"30","released":2,"applied":%s}' % value).stdout)
            self.assertEqual(answer["applied_stroke"], "2 1/8")

    def test_names(self):
        line = b'{"Wheel":"30","In":2,"out":4,"ENGINE":"on"}\n'
        columns = ["--column", "chamber=wheel", "--column", "released=in", "--column", "applied=OUT"]
        left = run(*columns, "--column", "engine=", data=line)
        self.assertEqual(objects(left.stdout)[0]["verdict"], "in-adjustment")
        read = run(*columns, data=line)
        self.assertEqual(objects(read.stdout)[0]["reasons"][-3:], ["engine-running", "assumed-standard", "assumed-clamp"])
        self.assertEqual(read.stderr, b"")
        meant = run(*columns, data=line.replace(b"ENGINE", b"Engine running?"))
        self.assertIn(b'the member "Engine running?" is not read', b" ".join(meant.stderr.split()))
        lost = run(data=line)
        self.assertIn(b'no object has a member "released"', b" ".join(lost.stderr.split()))

    def test_a_name_that_one_object_alone_has(self):
        lines = (b'{"chamber":"30","released":"1","applied":"2","date":"2024-01-01"}\n'
                 b'{"chamber":"36","released":"1","applied":"3 3/8","Datum":"2013-09-01"}\n')
        for more in [(), ("--no-cache",)]:
            self.assertIn(b'the member "Datum" is not read', b" ".join(run(*more, data=lines).stderr.split()))
        both = run(data=lines.replace(b'"Datum"', b'"date":"2013-09-01","Datum"'))
        self.assertNotIn(b"Datum", both.stderr)

    def test_one_name_for_two_fields(self):
        for columns in (["date=psi"], ["date=a", "psi=A"]):
            result = run(*(part for column in columns for part in ("--column", column)), data=GOOD)
            self.assertEqual(result.returncode, 2)
            self.assertIn(b"one member cannot be both", b" ".join(result.stderr.split()))

    def test_twice(self):
        for line in [b'{"chamber":"30","chamber":"30","released":2,"applied":4}', b'{"date":"2024-01-01","Date":"2021-01-01"}']:
            (answer,) = [json.loads(run(data=line).stdout)]
            self.assertEqual(answer["reasons"], ["member-twice"])

    def test_refusals(self):
        judged = run(data=GOOD)
        again = run(data=GOOD + judged.stdout)
        self.assertEqual(again.returncode, 2)
        self.assertIn(b'line 2: there is a member "applied_stroke" already', b" ".join(again.stderr.split()))
        self.assertEqual(again.stdout, judged.stdout)
        for options, says in [(["--by", "x"], b"--by"), (["--separator", ";"], b"--separator"), (["--format", "xml"], b"--format"),
                              (["--column", "released=released_mm"], b"--unit mm")]:
            result = run(*options, data=GOOD)
            self.assertEqual(result.returncode, 2)
            self.assertIn(says, result.stderr)

    def test_empty_lines_pass(self):
        result = run(data=b"\n" + GOOD + b" \t\r\n")
        self.assertTrue(result.stdout.startswith(b"\n{"))
        self.assertTrue(result.stdout.endswith(b"]}\n \t\r\n"))
        self.assertIn(b"2 empty lines", result.stderr)
        self.assertEqual(run(data=b"").returncode, 0)

    def test_threads_and_blocks(self):
        data = GOOD * 3000 + b"x\n" + GOOD * 3000 + b'{"a":"' + b"y" * 300000 + b'"}\n' + GOOD * 3000
        wanted = run("--jobs", 1, "--summary", data=data)
        for command in (COMMAND, SMALL):
            for jobs in (1, 2, 3, 8):
                got = run("--jobs", jobs, "--summary", data=data, command=command)
                self.assertEqual((got.returncode, got.stdout, got.stderr), (3, wanted.stdout, wanted.stderr))

    def test_cached_results(self):
        """Members of every kind, in every order, cached and new: the output is that without a cache."""
        chance = random.Random(7)
        values = {"chamber": ['"30"', "30", '"clamp 36"', '"24L"', '""', "null", '"zz"'],
                  "released": ["2", '"2 1/8"', "2.125", '"2,125"', "null", '"n/a"', '"-1"', '"54 mm"', "[2]", '"3 5/8\\""', '"2\\u0000"', "2e0"],
                  "applied": ["4", '"4 1/4"', '"3 5/8"', "null", '"2-Jan"', "1", '"4\\u00bd"', "101.6", '"' + "4" * 40 + '"'],
                  "date": ['"2024-06-05"', '"2021-10-13"', '"05/06/2021"', "null", '"?"', '""'],
                  "unit": ['"in"', '"mm"', "null", '"?"'], "psi": ["95", '"x"', "null", "101"],
                  "stroke_class": ['"long"', "null", '"?"'], "note": ['"a\\nb"', '{"a":[1,2]}', "true"],
                  "\\u0063hamber": ['"20"'], "a name of more than thirty-two bytes": ["1"]}
        lines = []
        for _ in range(6000):
            names = [name for name in values if chance.random() < (0.02 if name[0] in "\\a" and name != "applied" else 0.85)]
            chance.shuffle(names)
            blank = chance.choice(["", " "])
            lines.append("{" + f",{blank}".join(f'"{name}":{blank}{chance.choice(values[name])}' for name in names) + "}")
        data = "\n".join(lines).encode() + b"\n"
        for options in [["--column", "unit=unit"], ["--decimal-comma", "--column", "unit=unit"], ["--date-order", "dmy", "--column", "unit="]]:
            wanted = run("--no-cache", "--jobs", 1, "--summary", *options, data=data)
            self.assertEqual(wanted.stdout.count(b"\n"), len(lines))
            for command in (COMMAND, SMALL):
                for jobs in (1, 2, 3):
                    got = run("--jobs", jobs, "--summary", *options, data=data, command=command)
                    self.assertEqual((got.returncode, got.stdout, got.stderr), (wanted.returncode, wanted.stdout, wanted.stderr))

    def test_cut_anywhere(self):
        for cut in range(len(GOOD)):
            result = run(data=GOOD + GOOD[:cut])
            self.assertEqual(result.returncode, 3 if 0 < cut < len(GOOD) - 1 else 0)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    COMMAND, SMALL = sys.argv[1:]
    tap.main()
