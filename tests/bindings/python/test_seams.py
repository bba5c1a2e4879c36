# SPDX-License-Identifier: Apache-2.0
"""One file, one verdict: what the command answers for a CSV, judge_columns answers for the same table."""
import csv
import io
import itertools
import os
import pickle
import random
import re
import subprocess
import warnings
from fractions import Fraction

import rodtravel as rt
import tap

COMMAND = os.environ.get("COMMAND")
if not COMMAND:
    tap.skip("the command is not built")

CHANCE = random.Random(4)
HEADINGS = {
    "chamber": ["chamber", "Chamber", "CHAMBER "], "released": ["released", "Released"], "applied": ["applied", "APPLIED"],
    "stroke_class": ["stroke_class", "Stroke Class", "strokeClass", "STROKE-CLASS"],
    "rated_stroke": ["rated_stroke", "Rated stroke", "ratedStroke"], "marked_limit": ["marked_limit", "Marked Limit"],
    "psi": ["psi", "PSI", "Pressure"], "psi_after": ["psi_after", "psiAfter", "psi after", "Pressure After"],
    "division": ["division", "Division"], "date": ["date", "Date", "Inspection date", "insp_date"],
    "unit": ["unit", "Unit"], "engine": ["engine", "Engine"], "spring_brake": ["spring_brake", "Spring Brake"],
    "drum": ["drum", "Drum"]}
CELLS = {
    "chamber": ["30", "30L", "24", "24L", "36", "16LS", "bolt C", "?", ""],
    "released": ["2", "2 1/8", "31/8", "50", "2.125", "2.000001", ""],
    "applied": ["4", "4 1/4", "41/8", "101 mm", "2-Jan", "9/1/2013", "x", "2 1/8", "4.123457"],
    "stroke_class": ["", "long", "standard", "LS", "?"], "rated_stroke": ["", "3", "2 1/2", "2 1/4", "0"],
    "marked_limit": ["", "2"], "psi": ["", "95", "60", "655 kPa", "0", "lots"], "psi_after": ["", "95", "70"],
    "division": ["", "1/16", "Midwest"],
    "date": ["", "2015-06-01", "2021-10-14", "9/1/2013 8:00", "9/1/2010 8:00", "06/05/2024", "2010-9-1", "Sep 1, 2010"],
    "unit": ["", "in", "mm", "cm", "T-104", "pouce"], "engine": ["", "off", "on", "D13"],
    "spring_brake": ["", "released", "applied", "aplied"], "drum": ["", "cold", "hot", "16.5"]}


def command(headings, rows, *options):
    """(verdict, reasons) of each row, what was said on the error output, and the exit status."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(headings)
    writer.writerows(rows)
    done = subprocess.run([COMMAND, "batch", *options, "-"], input=text.getvalue(), capture_output=True, text=True)
    answers = [(row["verdict"], row["reasons"].split()) for row in csv.DictReader(io.StringIO(done.stdout))]
    return answers, " ".join(done.stderr.split()), done.returncode


def python(headings, rows, **words):
    """The same of judge_columns, and its warnings."""
    with warnings.catch_warnings(record=True) as caught:
        warnings.simplefilter("always")
        table = {heading: [row[number] for row in rows] for number, heading in enumerate(headings)}
        answers = rt.judge_columns(table, **words)
    return [(answer.verdict.value, [reason.value for reason in answer.reasons]) for answer in answers], \
        [str(each.message) for each in caught]


def test_headings_and_cells():
    """Random tables: every heading of every field, cells right and wrong, the first row included."""
    for _ in range(60):
        fields = ["chamber", "released", "applied"] + CHANCE.sample([*HEADINGS][3:], CHANCE.randrange(8))
        CHANCE.shuffle(fields)
        headings = [CHANCE.choice(HEADINGS[field]) for field in fields]
        rows = [[CHANCE.choice(CELLS[field]) for field in fields] for _ in range(40)]
        expected, said, _ = command(headings, rows)
        answers, warned = python(headings, rows)
        assert answers == expected, next((headings, row, a, b) for row, a, b in zip(rows, answers, expected) if a != b)
        # Each warning is about a column that the command names too.
        for sentence in warned:
            heading = sentence.split("'")[1]
            field = next(field for field, known in HEADINGS.items() if heading in known)
            assert f'the column "{field}"' in said, (sentence, said)


def test_a_judge_reads_as_the_command():
    """With every option that both have, and the limits, strokes and margins too."""
    pairs = [({"unit": "mm", "date": "2021-10-14"}, ["--unit", "mm", "--as-of", "2021-10-14"]),
             ({"decimal_comma": True}, ["--decimal-comma"]), ({"date_order": "day-first"}, ["--date-order", "dmy"]),
             ({"rules": "ca-nsc", "columns": {"chamber": "Pot"}}, ["--rules", "ca-nsc", "--column", "chamber=Pot"])]
    for words, options in pairs * 3:
        headings = [*HEADINGS]
        rows = [[CHANCE.choice(CELLS[field]) for field in headings] for _ in range(40)]
        headings[0] = words.get("columns", {}).get("chamber", headings[0])
        table = {heading: [row[number] for row in rows] for number, heading in enumerate(headings)}
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            answers = rt.Judge(**words)(table)
        lines = list(lines_of(headings, rows, *options))
        assert len(answers) == len(lines)       # Python 3.9 has no strict zip
        for row, line in zip(answers, lines):
            assert (row.verdict.value, [reason.value for reason in row.reasons]) == (line["verdict"], line["reasons"].split())
            for member in ("applied_stroke", "limit", "margin"):
                value = getattr(row, member)
                assert value is None or fraction(line[member]) == value, (member, line, row)


def lines_of(headings, rows, *options):
    """The lines of the command, as dicts."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerows([headings, *rows])
    done = subprocess.run([COMMAND, "batch", *options, "-"], input=text.getvalue(), capture_output=True, text=True)
    return csv.DictReader(io.StringIO(done.stdout))


def fraction(text):
    sign = -1 if text.startswith("-") else 1
    return sign * sum(map(Fraction, text.lstrip("-").split()))


NAMES = ["T-1", "t-1 ", "T - 1", "T-2", "T2", "", " ", "\u00c4-7", "\u00e4-7", 'a "b", c', "a\nb", "7", "1 12", "11 2", "x" * 600]
FLEETS = ["A", "a", "B", ""]


def vehicle_rows(count):
    fields = ["chamber", "released", "applied", "psi", "date"]
    return [[CHANCE.choice(NAMES), CHANCE.choice(FLEETS), CHANCE.choice(["1L", "1 r", "2L", "axle 3 left", "x", ""]),
             *(CHANCE.choice(CELLS[field]) for field in fields)] for _ in range(count)]


def test_vehicles_like_the_command():
    """Row by row, with several columns of names, spellings, days that cannot be read, positions twice, pooled or not."""
    headings = ["Unit No", "fleet", "Position", "chamber", "released", "applied", "psi", "Inspection date"]
    for number in range(40):
        rows = vehicle_rows(CHANCE.choice([1, 10, 200]))
        by = CHANCE.choice([["unit_no"], ["fleet", "Unit No"], ["Unit No", "Inspection date"]])
        pool, dated, placed = (CHANCE.random() < 0.4 for _ in range(3))
        kept = [place for place in range(8) if (place != 7 or dated or "Inspection date" in by) and (place != 2 or placed)]
        shown = [headings[place] for place in kept]
        cells = [[row[place] for place in kept] for row in rows]
        options = [word for name in by for word in ("--by", name)] + ["--pool"] * pool
        expected = list(lines_of(shown, cells, *options, "--as-of", "2024-06-05"))
        table = {heading: [row[place] for row in cells] for place, heading in enumerate(shown)}
        found = rt.Judge(date="2024-06-05").vehicles(table, by, pool=pool)
        columns = found.columns()
        assert len(found) == len(expected) and list(columns) == list(expected[0]), (columns.keys(), expected[0].keys())
        for place, line in enumerate(expected):
            for heading, cell in line.items():
                value = columns[heading][place]
                if isinstance(value, Fraction):
                    assert value == fraction(cell), (heading, value, cell)
                else:
                    assert str("" if value is None else value) == cell, (number, heading, value, line)


def test_vehicles_by_row():
    """A row by its number, in turn, and of a part is the one of the columns; so is one that was pickled."""
    headings = ["Unit No", "fleet", "Position", "chamber", "released", "applied", "psi", "date"]
    rows = vehicle_rows(100)
    table = {heading: [row[place] for row in rows] for place, heading in enumerate(headings)}
    for by, pool in itertools.product((["unit_no"], ["fleet", "Unit No"]), (False, True)):
        found = rt.Judge().vehicles(table, by, pool=pool)
        columns, all_rows, count = found.columns(), list(found), len(found)
        assert count == len(all_rows) > 5 and all_rows == [found[row] for row in range(count)]
        for row, one in enumerate(all_rows):
            cells = [*one.name, *(() if pool else (one.day,)), one.brakes, one.in_adjustment, one.out_of_adjustment,
                     one.inoperative, one.undetermined, one.defective, 100 * one.share, one.outcome.value,
                     one.whole_needed, " ".join(one.remarks)]
            assert cells == [column[row] for column in columns.values()]
        for part in (slice(3, 7), slice(None, None, -1), slice(-2, None), slice(5, 2), slice(0, count, 3)):
            some = pickle.loads(pickle.dumps(found[part]))
            assert some == found[part] and some.headings == found.headings and list(some.columns()) == list(columns)
            assert list(some) == [some[row] for row in range(len(some))] == all_rows[part]
        assert found[-1] == all_rows[-1] and found[:] == found != found[1:]
        assert found.counts() == {outcome: sum(one.outcome == outcome for one in all_rows) for outcome in rt.Outcome}
        assert len(rt.Judge().vehicles({name: [] for name in headings}, by)) == 0
        for row in (count, -count - 1):
            tap.refused(IndexError, found.__getitem__, row)
        tap.refused(TypeError, found.__getitem__, "1")


def test_vehicles_are_refused_like_the_command():
    table = {"unit": ["in"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
    rows = [[cell for cell, in table.values()]]
    for by in (["unit"], ["nobody"], ["chamber", "Chamber"]):
        expected, said, status = command([*table], rows, *(word for name in by for word in ("--by", name)))
        assert status == 2 and not expected, said
        tap.refused(TypeError, rt.Judge().vehicles, table, by)
    table["unit"] = ["T-104"]
    with warnings.catch_warnings(record=True):
        assert rt.Judge().vehicles(table, "unit")[0].name == ("T-104",)
        tap.refused(TypeError, rt.Judge().vehicles, table, [])
        tap.refused(TypeError, rt.Judge().vehicles, table, ["unit"] * 9)


def test_summary_like_the_command():
    """Counts by verdict and reason, and the half percents of the limit that strokes do not exceed."""
    fields = [*HEADINGS][:7]
    rows = [[CHANCE.choice(CELLS[field]) for field in fields] for _ in range(500)]
    _, said, _ = command(fields, rows, "--summary")
    said = said.split("verdicts ")[1]
    numbers = dict(re.findall(r"([a-z-]+) (\d+)(?= |$)", said.split(" chambers ")[0]))
    table = {heading: [row[number] for row in rows] for number, heading in enumerate(fields)}
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        answers = rt.judge_columns(table)
    found = answers.summary()
    assert {str(verdict): number for verdict, number in found.verdicts.items()} == {
        str(verdict): int(numbers[verdict.value]) for verdict in rt.Verdict}
    for reason, number in found.reasons.items():
        assert number == int(numbers.get(reason.value, 0)), reason
    counted, *steps = re.search(r" all (\d+) ([\d.]+|more) ([\d.]+|more) ([\d.]+|more) ([\d.]+|more)", said).groups()
    assert found.compared == int(counted)
    assert ["more" if step is None else f"{float(step):.1f}" for step in (*found.used.values(), found.most)] == steps
    assert answers[:200].summary() + answers[200:].summary() == found


def test_every_heading_alone():
    """A heading that is not read is the worst: the row would be judged without the cell."""
    row = {"chamber": "30", "released": "2", "applied": "4", "psi": "95"}
    for field, headings in HEADINGS.items():
        for heading, cell in itertools.product(headings, CELLS[field]):
            table = {HEADINGS[name][0]: value for name, value in row.items() if name != field}
            table[heading] = cell
            expected = command(list(table), [list(table.values())])[0]
            assert python(list(table), [list(table.values())])[0] == expected, (heading, cell)


def test_columns_that_are_not_read():
    base = ["chamber", "released", "applied"]
    for heading in ("psi reading", "Test kPa", "stroke type", "Day", "Datum", "Date of test", "Parking brake", "Engine running",
                    "remark", "unit_no", "position"):
        expected, said, _ = command([*base, heading], [["30", "2", "4", ""]])
        answers, warned = python([*base, heading], [["30", "2", "4", ""]])
        assert answers == expected and len(warned) == said.count("is not read"), (heading, warned, said)


def test_two_columns_of_one_field():
    for pair in (("psi", "Pressure"), ("date", "Inspection date"), ("Unit", "unit"), ("stroke class", "strokeClass")):
        headings = ["chamber", "released", "applied", *pair]
        expected, said, status = command(headings, [["30", "2", "4", "", ""]])
        assert status == 2 and not expected and all(heading in said for heading in pair), said
        refusal = str(tap.refused(TypeError, python, headings, [["30", "2", "4", "", ""]]))
        assert all(repr(heading) in refusal for heading in pair), refusal


def test_units_in_headings():
    """A heading that names another unit than bare numbers are read in is refused, unless a column has the units."""
    for heading, unit, more in (("Released (mm)", "in", []), ("Released (mm)", "mm", []), ("rest in", "in", []),
                                ("rest in", "cm", []), ("rest in cm", "mm", []), ("in the yard", "mm", []),
                                ("Released (mm)", "in", ["unit"])):
        headings = ["chamber", heading, "applied", *more]
        rows = [["30", "2", "4", *("in" for _ in more)]]
        expected, said, status = command(headings, rows, "--column", f"released={heading}", "--unit", unit)
        table = {name: [cell] for name, cell in zip(headings, rows[0])}
        for function in (lambda: rt.judge_columns(table, released=heading, default_unit=unit),
                         lambda: rt.Judge(unit=unit)(table, released=heading)):
            if status == 2:
                assert "bare numbers are read in" in said and "bare numbers are read in" in str(tap.refused(TypeError, function))
            else:
                assert [function()[0].verdict.value] == [verdict for verdict, _ in expected]


def test_columns_named_by_the_user():
    headings = ["Kammer", "zu", "auf", "unit", "engine"]
    rows = [["30", "2", "4 1/8", "T-104", "D13"], ["30L", "50 mm", "115 mm", "mm", "off"]]
    expected, said, _ = command(headings, rows, "--column", "chamber=Kammer", "--column", "released=AUF", "--column",
                            "applied=zu", "--column", "unit=", "--column", "engine=")
    answers, warned = python(headings, rows, chamber="Kammer", released="AUF", applied="zu", unit="", engine="")
    assert answers == expected and not warned and "column" not in said, (answers, expected, said)


if __name__ == "__main__":
    tap.run(globals())
