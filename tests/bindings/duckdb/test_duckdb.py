# SPDX-License-Identifier: Apache-2.0
"""The extension of DuckDB: case files, the conformance kit, wrong input of every kind, answers of `rodtravel batch`.

With a number of rows as its argument it only compares files of so many rows."""
import csv
import hashlib
import itertools
import os
import random
import re
import subprocess
import sys
import tempfile
import threading
from decimal import Decimal
from fractions import Fraction

import engine_cases
import tap

ROOT, COMMAND, SHORT = os.environ["ROOT"], os.environ["COMMAND"], os.environ.get("SHORT")
duckdb = tap.package("duckdb")
if duckdb is None:
    tap.skip("the Python package duckdb is not installed")
import files

ARGUMENTS = ("chamber released applied psi date stroke_class rules rated_stroke marked_limit psi_after division unit "
             "engine spring_brake drum").split()
FUNCTIONS = "verdict stroke limit margin reasons defect".split()
AGGREGATES = "outcome defective share count".split()
PARTS = FUNCTIONS + "error_status error_field error_text".split()
OVER = {"chamber": "30L", "released": "2 3/4", "applied": "5 5/16", "psi": "95"}


def connect(threads=2):
    base = duckdb.connect(config={"allow_unsigned_extensions": "true", "threads": threads})
    base.load_extension(os.environ["EXTENSION"])
    return base


BASE = connect()


def rows(query, values=None):
    return BASE.execute(query, values).fetchall()


def one(expression, *values):
    return rows(f"SELECT {expression}", values)[0][0]


def refused(expression, *values):
    return str(tap.refused(duckdb.Error, one, expression, *values))


def call(function, **texts):
    texts = {**OVER, **texts}
    return one(f"rodt_{function}({', '.join('?' * len(ARGUMENTS))})", *map(texts.get, ARGUMENTS))


def judged(questions):
    """Every question through every way in: functions, aggregates of one row, and the struct."""
    names = ", ".join(ARGUMENTS)
    columns = {name: [question.get(name) for question in questions] for name in ARGUMENTS}
    BASE.execute(f"CREATE OR REPLACE TABLE asked(id INTEGER, {', '.join(name + ' VARCHAR' for name in ARGUMENTS)})")
    BASE.executemany(f"INSERT INTO asked VALUES (?, {', '.join('?' * len(ARGUMENTS))})",
                     [[number, *cells] for number, cells in enumerate(zip(*columns.values()))])
    calls = ", ".join(f"rodt_{name}({names})" for name in FUNCTIONS)
    found = rows(f"SELECT rodt_finding({names}), {calls} FROM asked ORDER BY id")
    named = ", ".join(f"'{name}': {name}" for name in reversed(ARGUMENTS[3:]))
    assert rows(f"SELECT rodt_finding({', '.join(ARGUMENTS[:3])}, {{{named}}}) FROM asked ORDER BY id") == [
        parts[:1] for parts in found]
    totals = ', '.join(f'rodt_{name}({names})' for name in AGGREGATES)
    counted = rows(f"SELECT {totals} FROM asked GROUP BY id ORDER BY id")
    for (parts, *each), counts in zip(found, counted):
        assert list(parts) == PARTS and each == [parts[name] for name in FUNCTIONS], (parts, each)
        parts.update(zip(AGGREGATES, counts))
    assert len(found) == len(questions) == len(counted)
    return [parts for parts, *each in found]


def test_wheel_ends():
    engine_cases.check_wheel_ends(judged)


def test_conformance():
    """Rows of many rule sets, one after the other."""
    for _, error, row in engine_cases.check_conformance(judged):
        assert (row["error_status"], row["error_field"]) == (error["status"], error["field"]), row


def test_types():
    """Whole numbers, decimals and days are read like their texts."""
    wanted = rows("SELECT rodt_finding('30', '2', '3.75', '95', '2021-10-13')")
    for number in ("3.75", "3.75::DECIMAL(4, 2)", "3.75::DECIMAL(9, 4)", "3.75::DECIMAL(18, 12)"):
        for whole in ("TINYINT", "SMALLINT", "INTEGER", "BIGINT", "UTINYINT", "USMALLINT", "UINTEGER", "UBIGINT"):
            row = f"30::{whole}, 2::{whole}, {number}, 95::{whole}, DATE '2021-10-13'"
            assert rows(f"SELECT rodt_finding({row})") == wanted, row
    assert one("rodt_reasons(30, '-1', -0.05::DECIMAL(4, 2))") == one("rodt_reasons('30', '-1', '-0.05')")
    assert "released-unreadable applied-unreadable" in one("rodt_reasons(30, -1, -0.05)")
    for day in ("infinity", "-infinity", "0044-03-15 (BC)", "1899-12-31", "12000-01-01"):
        assert one("rodt_verdict('30', '2', '3.75', 95, ?::DATE)", day) == "undetermined", day
    most, least = f"{2**64 - 1}::UBIGINT", f"({-2**63})::BIGINT"
    assert "released-unreadable applied-unreadable" in one(f"rodt_reasons(30, {most}, {least})")
    assert one("rodt_verdict('30L', '2', '3', NULL, NULL::INTEGER, NULL::DATE)") == "in-adjustment"
    for wrong in ("2.5::DOUBLE", "2.5::FLOAT"):
        assert "binary fraction, which is only nearly what was read" in refused(f"rodt_stroke('30', {wrong}, '4')")
        assert "rodt_length: the text is a binary fraction" in refused(f"rodt_length({wrong})")
    for wrong in ("'a'::BLOB", "true", "now()", "[2]", "{'a': 2}", "2::HUGEINT", "'2'::ENUM('2')"):
        assert "released is of a type that holds no reading" in refused(f"rodt_stroke('30', {wrong}, '4')"), wrong
    assert "more than 18 digits" in refused("rodt_stroke('30', 2::DECIMAL(19, 2), '4')")


def test_names():
    """The last argument may be a struct, whose members are arguments by their names."""
    assert one("rodt_verdict('30', '2', '4', {'psi': 95, 'date': DATE '2024-05-06', 'stroke_class': 'long'})") == (
        one("rodt_verdict('30', '2', '4', 95, '2024-05-06', 'long')")) == "in-adjustment"
    assert one("rodt_stroke('30', '50', '76', {'Unit': 'mm'})") == one("rodt_stroke('30', '50 mm', '76 mm')")
    assert one("rodt_reasons('30', '2', '4', 95, NULL, {'drum': 'cracked', 'unit': NULL})") == (
        one("rodt_reasons('30', '2', '4', 95, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'cracked')"))
    assert one("rodt_outcome('30', '2', '4', {'rules': 'us-fmcsr', 'psi': 95})") == one("rodt_outcome('30', '2', '4', 95)")
    for wrong, said in (("{'unti': 'mm'}", 'rodt_limit: there is no argument "unti"'), ("{'a''b': 1}", 'there is no argument "a\'b"'),
                        ("{'released': '2'}", 'the argument "released" is given twice'),
                        ("{'" + "é" * 30 + "': 1}", '"' + "é" * 20 + '"'),
                        ("{'psi': 2.5::DOUBLE}", "psi is a binary fraction"), ("{'psi': [95]}", "psi is of a type"),
                        ("{'psi': 95}, {'unit': 'mm'}", "psi is of a type that holds no reading")):
        assert said in refused(f"rodt_limit('30', '2', '4', {wrong})"), wrong
    assert "released is of a type" in refused("rodt_limit('30', {'psi': 95}, '4')")
    BASE.execute("CREATE OR REPLACE TABLE marked AS SELECT i, CASE WHEN i % 3 > 0 THEN {'unit': CASE i % 2 WHEN 0 THEN 'mm' "
                 "END, 'date': CASE WHEN i % 5 > 0 THEN 'soon' END} END AS more FROM range(5000) t(i)")
    for i, stroke, reasons, other in rows("""SELECT i, rodt_stroke('30', '2', '4', more),
            rodt_reasons('30', '2', '4', more), rodt_reasons('30', '2', '4', NULL, more.date, {'unit': more.unit})
            FROM marked"""):
        assert stroke == ("10/127" if i % 3 > 0 and i % 2 == 0 else "2"), i
        assert reasons == other and ("date-unreadable" in reasons) == (i % 3 > 0 and i % 5 > 0), (i, reasons)


def test_structs_that_are_null():
    """Nothing of them is taken, whatever lies behind."""
    asked = "SELECT i, rodt_stroke('30', '2', '4', more) FROM"
    given = ("(SELECT i, CASE WHEN i % 2 > 0 THEN {'unit': 'mm'} END AS more FROM range(5000) t(i))",
             "range(5000) t(i) LEFT JOIN (SELECT i AS j, {'unit': 'mm'} AS more FROM range(1, 5000, 2) u(i)) ON j = i")
    for table in given:
        for i, stroke in rows(f"{asked} {table}"):
            assert stroke == ("10/127" if i % 2 > 0 else "2"), (table, i)
    if tap.package("pyarrow") is not None:
        import pyarrow as pa
        more = pa.StructArray.from_arrays([pa.array(["mm"] * 4)], ["unit"], mask=pa.array([True, False] * 2))
        BASE.register("arrow", pa.table({"i": range(4), "more": more}))
        assert rows(f"{asked} arrow") == [(0, "2"), (1, "10/127"), (2, "2"), (3, "10/127")]


def test_enums():
    """A verdict and a defect are ENUMs of all words that there are."""
    verdict, defect = one("typeof(rodt_verdict('30', '2', '4'))"), one("typeof(rodt_defect('30', '2', '4'))")
    assert verdict == "ENUM('undetermined', 'in-adjustment', 'out-of-adjustment', 'inoperative')"
    assert defect == "ENUM('none', 'half', 'full', 'unknown')"
    assert one("typeof(rodt_finding('30', '2', '4').verdict)") == verdict
    assert one("rodt_verdict('30', '2', '4') = 'no such word'") is False
    assert one("rodt_verdict('30', '2', '6', 95) || '!'") == "out-of-adjustment!"


def test_nulls():
    nothing = judged([{}])[0]
    assert nothing["verdict"] == "undetermined" and nothing["margin"] is None and nothing["limit"] is None
    assert nothing["outcome"] == "undetermined" and nothing["share"] == "0"
    assert "chamber-missing released-missing applied-missing" in nothing["reasons"]
    assert one("rodt_outcome(1, 2, 3) FROM range(0)") == "undetermined"
    assert rows("SELECT rodt_verdict(1, 2, 3) FROM range(0)") == []
    names = ", ".join(ARGUMENTS)
    BASE.execute("""CREATE OR REPLACE TABLE holes AS SELECT
        CASE i % 3 WHEN 0 THEN '30' WHEN 1 THEN 'type 30 long stroke' END AS chamber,
        CASE WHEN i % 5 > 0 THEN '2' END AS released, CASE WHEN i % 7 > 0 THEN '4 1/4' END AS applied
        FROM range(10000) t(i)""")
    found = rows("SELECT chamber, released, applied, rodt_reasons(chamber, released, applied), "
                 "rodt_stroke(chamber, released, applied) FROM holes")
    for chamber, released, applied, reasons, stroke in found:
        missing = [f"{name}-missing" for name, cell in (("chamber", chamber), ("released", released),
                                                        ("applied", applied)) if cell is None]
        assert [word for word in reasons.split() if word.endswith("-missing")] == missing
        assert stroke == ("9/4" if released and applied else None)


def test_what_is_no_text_is_unreadable():
    """A text with a zero byte or of too many bytes, and statements: data, and never a pass."""
    sound = {"chamber": "30L", "released": "2 3/4", "applied": "5", "psi": "95", "date": "2024-05-06",
             "stroke_class": "long", "rated_stroke": "3", "marked_limit": "2 1/2", "psi_after": "94",
             "division": "1/16", "unit": "in", "engine": "off", "spring_brake": "released", "drum": "cold"}
    assert judged([sound])[0]["verdict"] == "in-adjustment"
    names, questions = [], []
    for name, text in sound.items():
        for wrong in (text + "\0", text + "\0 or more", "\0" + text, text + " " * 300, "x" * 100000,
                      "'); DROP TABLE asked; --", "\x01", "\N{FULLWIDTH DIGIT TWO}" * 100):
            names.append((name, wrong))
            questions.append({**sound, name: wrong})
    for (name, wrong), row in zip(names, judged(questions)):
        assert row["verdict"] == "undetermined" and row["error_field"] == name, (name, wrong, row)
        assert "unreadable" in row["reasons"] and row["outcome"] == "undetermined", (name, wrong, row)


def test_finest_readings():
    """The finest that can be read have an exact stroke; what is finer is data, too."""
    stroke = Fraction("600.1234567") / Fraction("25.4") - Fraction(1, 10**9)
    assert Fraction(call("stroke", released="0.000000001", applied="600.1234567 mm")) == stroke
    assert call("reasons", released="1", applied="3.1234567891") == "applied-unreadable"


def test_wrong_calls():
    for function in FUNCTIONS + ["finding"] + AGGREGATES:
        for count in (0, 1, 2, 16):
            assert "No function matches" in refused(f"rodt_{function}({', '.join(['1'] * count)})")
        for rules in ("", "us", "us-fmcsr\0", "'; --", "é" * 5000):
            said = refused(f"rodt_{function}('30', '2', '4', 95, NULL, NULL, ?)", rules)
            assert f"rodt_{function}: there is no rule set" in said and len(said) < 300, said
    # A row of another rule set than the one before it, and one of none.
    other = "(SELECT CASE WHEN i = 4000 THEN 'x' END AS r FROM range(5000) t(i))"
    assert "there is no rule set \"x\"" in refused(
        f"count(rodt_verdict('30', '2', '4', 95, NULL, NULL, r)) FROM {other}")
    assert call("verdict") == "out-of-adjustment"


def test_texts():
    for text, exact in (("2 1/8", "17/8"), ("54 mm", "270/127"), ("31/8", None), ("2-Jan", None), (None, None),
                        ("", None), ("2\0", None), ("x" * 300, None)):
        assert one("rodt_length(?::VARCHAR)", text) == exact, text
    assert one("rodt_length(2)") == "2" and one("rodt_length(2.50)") == "5/2"
    assert one("rodt_length('54', 'mm')") == "270/127" and one("rodt_length('54', 'miles')") is None
    assert one("rodt_length('54', NULL)") is None and one("rodt_length('54', ?)", "mm\0") is None
    assert one("rodt_length_format('-1/16')") == "-1/16" and one("rodt_length_format('41/16')") == "2 9/16"
    for text in ("", "x", "1/", "1/0", "/2", "1 3/4", "1" * 19, "1/2x", "-", None):
        assert one("rodt_length_format(?::VARCHAR)", text) is None, text
    for text, number in (("-1/16", "-0.0625"), ("1/3", "0.333333333"), ("41/16", "2.5625"), ("7", "7"),
                         ("x", None), ("1" * 18, None), ("-" + "9" * 9, "-" + "9" * 9), (None, None)):
        assert one("rodt_decimal(?::VARCHAR)", text) == (number and Decimal(number)), text
    for text, day in (("13-OCT-21", "2021-10-13"), ("10/14/2021", "2021-10-14"), ("1/2/2024", None), ("", None),
                      (None, None)):
        assert one("rodt_date(?::VARCHAR)", text) == day, text
    assert one("rodt_date(DATE '2024-05-06')") == "2024-05-06"
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", one("rodt_tables_edition()"))


def test_limits():
    with open(os.path.join(ROOT, "tables/limits.csv"), encoding="utf-8", newline="") as file:
        lines = (line for line in file if not line.startswith("#"))
        wanted = [row for row in csv.DictReader(lines) if row["rules"] == "us-fmcsr"]
    found = BASE.execute("SELECT * FROM rodt_limits() WHERE rules = 'us-fmcsr'")
    names = [column[0] for column in found.description]
    found = [dict(zip(names, row)) for row in found.fetchall()]
    assert len(found) == len(wanted) > 20
    for row, typed in zip(found, wanted):
        assert (row["family"], row["size"], row["stroke_class"]) == (typed["family"], typed["size"], typed["class"])
        assert Fraction(row["stroke_limit"]) == sum(map(Fraction, typed["limit"].split())), row
        assert row["source"] and row["from_day"] == (typed["from"] or None), row
        assert row["until_day"] == (typed["until"] or None) and row["evidence"] == typed["evidence"], row


# --- As the command ------------------------------------------------------------------------------------------

RESULTS = "applied_stroke, \"limit\", margin, verdict, reasons"


def batch(path, *options):
    out = path + ".judged"
    with open(out, "wb") as file:
        ran = subprocess.run([COMMAND, "batch", *options, path], stdout=file, stderr=subprocess.PIPE, timeout=900,
                             check=False)
    assert ran.returncode in (0, 1), ran.stderr
    return out


def cells(path):
    return f"read_csv('{path}', all_varchar = true, header = true, delim = ',', quote = '\"', escape = '\"')"


def digest(query, out, base):
    base.execute(f"COPY ({query}) TO '{out}' (FORMAT csv, HEADER false)")
    said = hashlib.sha256()
    with open(out, "rb") as file:
        while block := file.read(1 << 20):
            said.update(block)
    return said.hexdigest()


def compare(path, head, threads=2, options=()):
    """The results of every row, byte by byte."""
    base = connect(threads)
    given = ", ".join(name if name in head else "NULL" for name in ARGUMENTS)
    ours = (f"SELECT rodt_length_format(f.stroke), rodt_length_format(f.limit), rodt_length_format(f.margin), "
            f"f.verdict, f.reasons FROM (SELECT rodt_finding({given}) AS f FROM {cells(path)})")
    exact = ", ".join(f"rodt_length_format(rodt_{name}({given}))" for name in ("stroke", "limit", "margin"))
    each = f"SELECT {exact}, rodt_verdict({given}), rodt_reasons({given}) FROM {cells(path)}"
    wanted = digest(f"SELECT {RESULTS} FROM {cells(batch(path, *options))}", path + ".theirs", base)
    for query in (ours, each):
        found = digest(query, path + ".ours", base)
        if found != wanted:
            with open(path + ".theirs", encoding="utf-8") as theirs, open(path + ".ours", encoding="utf-8") as mine:
                for number, (a, b) in enumerate(zip(theirs, mine)):
                    assert a == b, (number, a, b)
        assert found == wanted, path
    return wanted


def compare_forms(count):
    with tempfile.TemporaryDirectory() as folder:
        for name, form in files.FORMS.items():
            path = str(files.make_file(f"{folder}/{name}.csv", form, count))
            options = ["--unit", form.default_unit] if form.default_unit != "in" else []
            if options:  # the functions have no default: the unit is a column
                with open(path, encoding="utf-8") as file:
                    head, *lines = file.read().splitlines()
                with open(path, "w", encoding="utf-8") as file:
                    file.write("\n".join([head + ",unit"] + [f"{line},{form.default_unit}" for line in lines]) + "\n")
            compare(path, form.head + ["unit"] if options or "unit" in form.head else form.head)


def odd_texts():
    """What people write, and worse, by argument."""
    with open(os.path.join(ROOT, "tests/cases/spellings.csv"), encoding="utf-8", newline="") as file:
        lengths = [row["text"] for row in csv.DictReader(line for line in file if not line.startswith("#"))]
    with open(os.path.join(ROOT, "tests/cases/chamber_marks.csv"), encoding="utf-8", newline="") as file:
        marks = [row["mark"] for row in csv.DictReader(line for line in file if not line.startswith("#"))]
    few = ["", "", "x", "'; DROP TABLE cells; --", "1/2/2024"]
    return {"chamber": marks + ["30", "30L"] * 200 + few,
            "released": ["2", "2 1/8", "1.000001", "54 mm"] * 300 + lengths + few,
            "applied": ["4", "4 1/8", "4 1/4", "3.9999", "101 mm"] * 300 + lengths + few,
            "psi": ["95", "650 kPa", "60"] + few, "stroke_class": ["standard", "long"] + few,
            "date": ["2021-10-13", "13-OCT-21", "10/15/2021", "2024-02-30"] + few,
            "rated_stroke": ["2 1/2", "3", "21/4"] + few * 2, "marked_limit": ["2", "2 1/2"] + few * 2,
            "psi_after": ["94", "50"] + few, "division": ["1/16", "1 mm"] + few, "unit": ["in", "mm", "cm"] + few,
            "engine": ["off", "on"] + few, "spring_brake": ["released", "on"] + few, "drum": ["cold", "hot"] + few}


def test_odd_texts_as_the_command():
    if not COMMAND:
        return
    chance, texts = random.Random(17), odd_texts()
    head = ["row", *texts]
    first = {"chamber": "30", "released": "2", "applied": "2", "unit": "in"}  # a vehicle there would be another column
    lines = [["0", *(first.get(name, "") for name in texts)]]
    for number in range(12000):
        share = 0.3 * (chance.random() < 0.5)
        lines.append([str(number + 1)] + [
            chance.choice(choices) if name in ARGUMENTS[:3] or chance.random() < share else ""
            for name, choices in texts.items()])
    lines = [[cell.replace("\n", " ").replace("\r", " ") for cell in line] for line in lines]
    with tempfile.TemporaryDirectory() as folder:
        compare(str(files.write_csv(f"{folder}/odd.csv", head, lines)), head)


def test_files_as_the_command():
    if COMMAND:
        compare_forms(600 if SHORT else 6000)


def test_threads():
    """Many connections at once, with rule sets that change from row to row."""
    ids = [row[0] for row in rows("SELECT DISTINCT rules FROM rodt_limits() ORDER BY 1")]
    query = f"""SELECT md5(string_agg(v, '|' ORDER BY v)), count(DISTINCT v) FROM (
        SELECT rodt_reasons(c, '2', a, 95, d, NULL, r) || rodt_margin(c, '2', a, 95, d, NULL, r) AS v FROM (
        SELECT ['30', '24', '36', '30L'][1 + i % 4] AS c, (3 + i % 97 / 40)::DECIMAL(9, 3) AS a,
               '20' || (15 + i % 10) || '-05-06' AS d, {ids}[1 + i * 31 % {len(ids)}] AS r FROM range(60000) t(i)))"""
    wanted = connect(1).execute(query).fetchall()
    assert len(ids) > 3 and wanted[0][1] > 100, wanted
    found = []
    base = connect(4)
    workers = [threading.Thread(target=lambda: found.append(base.cursor().execute(query).fetchall())) for _ in range(8)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert found == [wanted] * 8


FLEET = f"CREATE OR REPLACE TABLE fleet AS FROM {cells(ROOT + '/examples/data/fleet.csv')} WHERE position <> 'position'"
READ = "chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke, NULL, NULL, division"


def test_vehicles():
    """As `rodtravel batch --by` counts them, on one thread and on more."""
    if not COMMAND:
        return
    ran = subprocess.run([COMMAND, "batch", "--by", "unit_no", f"{ROOT}/examples/data/fleet.csv"], encoding="utf-8",
                         stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, timeout=60, check=False)
    wanted = [(line["unit_no"], line["date"], int(line["brakes"]), line["verdict"], line["defective"])
              for line in csv.DictReader(ran.stdout.splitlines())]
    BASE.execute(FLEET)
    found = rows(f"SELECT unit_no, coalesce(rodt_date(date), '') AS day, count(*), rodt_outcome({READ}), "
                 f"rodt_length_format(rodt_defective({READ})) FROM fleet GROUP BY unit_no, day")
    assert len(wanted) > 10 and sorted(found) == sorted(wanted), found
    many = f"SELECT unit_no, rodt_count({READ}), rodt_share({READ}) FROM fleet, range(3000) GROUP BY unit_no ORDER BY 1"
    answers = []
    for threads in (1, 4):
        base = connect(threads)
        base.execute(FLEET)
        answers.append(base.execute(many).fetchall())
    assert answers[0] == answers[1]
    assert rows(f"SELECT rodt_share({READ}) OVER (ORDER BY rowid) FROM fleet ORDER BY rowid")[-1] == rows(
        f"SELECT rodt_share({READ}) FROM fleet")[0]


def repeated(making, threads):
    """Functions that are asked of the same chunks one after the other, and each by itself."""
    base = connect(threads)
    base.execute(f"CREATE TABLE ends AS {making}")
    given = ", ".join(name if name in base.table("ends").columns else "NULL" for name in ARGUMENTS)
    alone = [base.execute(f"SELECT rodt_{name}({given}) FROM ends ORDER BY n").fetchall() for name in FUNCTIONS]
    calls = ", ".join(f"rodt_length(released), rodt_{name}({given})" for name in FUNCTIONS)
    found = [row[1::2] for row in base.execute(f"SELECT {calls} FROM ends ORDER BY n").fetchall()]
    assert found == list(zip(*([cell for cell, in each] for each in alone)))
    return found


def test_repeated_chunks():
    """Chunks that differ from the one before in one cell of one argument, whichever it is, in every type."""
    plain = {"chamber": "'36'", "released": "'2'", "applied": "'4 3/8'", "psi": "95", "date": "DATE '2021-10-13'",
             "rated_stroke": "3::DECIMAL(4, 2)", "unit": "'in'"}
    other = {"chamber": "'24L'", "released": "NULL", "applied": "'4 3/8 inches, about'", "psi": "60", "date": "NULL",
             "rated_stroke": "-3::DECIMAL(4, 2)", "unit": "'mm'"}
    for threads, name in itertools.product((1, 4), plain):
        cells = ", ".join(f"{cell} AS {each}" for each, cell in plain.items() if each != name)
        found = repeated(f"SELECT n, {cells}, CASE WHEN n % 6000 = 4444 THEN {other[name]} ELSE {plain[name]} END AS "
                         f"{name} FROM range(20000) AS r(n)", threads)
        assert len(set(found)) == 2 and len({found[4444], found[10444], found[16444]}) == 1, name
        assert [row for row, one in enumerate(found) if one != found[0]] == [4444, 10444, 16444], name


def test_repeated_bytes():
    """The same bytes are something else in another type, scale or place, and where rows are NULL."""
    least = "(-2147483648)::INTEGER"  # as NULL lies in memory
    columns = (f"4::INTEGER AS whole, DATE '1970-01-05' AS day, 20::DECIMAL(4, 1) AS d, 2::DECIMAL(4, 2) AS e, "
               f"CASE n % 2 WHEN 0 THEN {least} END AS even, CASE n % 2 WHEN 1 THEN {least} END AS odd "
               "FROM range(6000) AS r(n)")
    BASE.execute(f"CREATE OR REPLACE TABLE alike AS SELECT '30' AS chamber, '2' AS released, {columns}")
    for first, second in (("'2', whole", "'2', day"), ("d, 4", "e, 4"), ("'2', even", "'2', odd"),
                          ("released, 4", "released, 4, 60"), ("NULL, released", "released, NULL")):
        calls = [f"rodt_{name}(chamber, {given})" for given in (first, second) for name in ("stroke", "reasons")]
        found = rows(f"SELECT {', '.join(calls)} FROM alike ORDER BY rowid")
        assert found == list(zip(*([cell for cell, in rows(f"SELECT {call} FROM alike ORDER BY rowid")]
                                   for call in calls))), (first, second)
        assert [row[:2] for row in found] != [row[2:] for row in found], (first, second)
    # Long texts of a chunk often lie where those of the chunk before lay.
    ends = "(SELECT repeat(' ', 12) || (3 + n // 2048 % 2) AS applied FROM range(9000) AS r(n))"
    found = connect(1).execute(f"SELECT rodt_verdict('30', '2', applied), rodt_stroke('30', '2', applied) FROM {ends}")
    assert [int(stroke) for _, stroke in found.fetchall()] == [1 + n // 2048 % 2 for n in range(9000)]


def test_arrow():
    pyarrow = tap.package("pyarrow")
    if pyarrow is None:
        return
    ends = pyarrow.table({"chamber": ["30", "30", None], "released": ["2", "2", "2"], "applied": ["4", "4 1/8", "4"]})
    found = BASE.sql("SELECT rodt_verdict(chamber, released, applied, 95) AS verdict FROM ends").to_arrow_table()
    assert found["verdict"].to_pylist() == ["in-adjustment", "out-of-adjustment", "undetermined"]
    coded = ends.set_column(0, "chamber", ends["chamber"].dictionary_encode())
    assert BASE.sql("SELECT rodt_verdict(chamber, released, applied, 95) FROM coded").fetchall() == [
        (text,) for text in found["verdict"].to_pylist()]


def place_of_example(folder):
    """Where the tree has been built in `build`."""
    os.makedirs(os.path.join(folder, "build/bindings/duckdb"))
    os.symlink(os.environ["EXTENSION"], os.path.join(folder, "build/bindings/duckdb/rodtravel.duckdb_extension"))
    os.symlink(os.path.join(ROOT, "examples"), os.path.join(folder, "examples"))


def run_script(script):
    """What each query of a script found, a line a row, as people see it."""
    here, said = os.getcwd(), []
    base = duckdb.connect(config={"allow_unsigned_extensions": "true"})
    with tempfile.TemporaryDirectory() as folder:
        place_of_example(folder)
        os.chdir(folder)
        try:
            for statement in base.extract_statements(script):
                found = base.execute(statement)
                if statement.type == duckdb.StatementType.SELECT:
                    said += ["|".join(map(str, row)) for row in found.fetchall()]
        finally:
            os.chdir(here)
    return said


def test_readme():
    """Each statement says what the comments below it say."""
    with open(os.path.join(ROOT, "bindings/duckdb/README.md"), encoding="utf-8") as file:
        page = file.read()
    text = "".join(re.findall(r"```sql\n(.*?)```", page, re.DOTALL))
    wanted = [line[3:] for line in text.splitlines() if line.startswith("-- ")]
    assert len(wanted) > 4 and run_script(text) == wanted, run_script(text)


def test_example():
    with open(os.path.join(ROOT, "examples/sql/fleet_duckdb.sql"), encoding="utf-8") as file:
        said = "\n".join(run_script(file.read()))
    for line in ("D-4|2024-06-11|out-of-service|2 of 5 brakes defective, 40 %: 20 % is reached",
                 "D-4|2024-06-11|3L|3030|out-of-adjustment|-1/127|over-limit assumed-standard",
                 "B-7|2024-06-10|below-criterion"):
        assert line in said, said


def test_file():
    """The library inside is nobody else's; a file without its footer, or cut, is refused and not run."""
    said = subprocess.run(["nm", "-D", "--defined-only", os.environ["MODULE"]], stdout=subprocess.PIPE,
                          encoding="utf-8", check=True, timeout=60).stdout
    assert [line.split()[-1] for line in said.splitlines()] == ["rodtravel_init_c_api"], said
    base = duckdb.connect(config={"allow_unsigned_extensions": "true"})
    tap.refused(duckdb.Error, base.load_extension, os.environ["MODULE"])
    tap.refused(duckdb.Error, duckdb.connect().load_extension, os.environ["EXTENSION"])
    with open(os.environ["EXTENSION"], "rb") as file:
        footer = file.read()[-512:-256]
    assert [part.strip(b"\0").decode() for part in (footer[i:i + 32] for i in range(224, 127, -32))][2:] == \
        ["v1.2.0", footer[128:160].strip(b"\0").decode()] and b"C_STRUCT" in footer


if len(sys.argv) > 1:
    tap.run({"test_million": lambda: compare_forms(int(sys.argv[1]))})
else:
    tap.run(globals())
