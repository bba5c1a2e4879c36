# SPDX-License-Identifier: Apache-2.0
"""The extension of SQLite, asked by its shell: the case files, the conformance kit, wrong input of every kind."""
import csv
import json
import os
import re
import subprocess
import tempfile
from fractions import Fraction

import engine_cases
import tap

ROOT = os.environ["ROOT"]
ARGUMENTS = ("chamber released applied psi date stroke_class rules rated_stroke marked_limit psi_after division unit "
             "engine spring_brake drum").split()
FUNCTIONS = "verdict stroke limit margin reasons defect".split()
AGGREGATES = "outcome defective share count".split()
OVER = {"chamber": "30L", "released": "2 3/4", "applied": "5 5/16", "psi": "95"}


def shell(script, mode="json", cwd=None):
    """What the shell says and what it complains of."""
    return subprocess.run([os.environ["SQLITE"], "-batch", "-cmd", f".load '{os.environ['EXTENSION']}'", "-cmd",
                           f".mode {mode}", ":memory:"], input=script, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                          encoding="utf-8", timeout=60, check=False, cwd=cwd)


def rows(script):
    """The rows of a script's one query."""
    ran = shell(script)
    assert ran.returncode == 0 and not ran.stderr, ran.stderr
    return json.loads(ran.stdout or "[]")


def one(expression):
    return list(rows(f"SELECT {expression};")[0].values())[0]


def refused(expression):
    ran = shell(f"SELECT {expression};")
    assert ran.stderr and not ran.stdout, (expression, ran.stdout)
    return ran.stderr


def literal(value):
    if isinstance(value, str):
        return f"CAST(x'{value.encode().hex()}' AS TEXT)"
    return "NULL" if value is None else f"x'{value.hex()}'" if isinstance(value, bytes) else str(value)


def listed(texts):
    return ", ".join(literal(texts.get(name)) for name in ARGUMENTS)


def call(function, **texts):
    return one(f"rodt_{function}({listed({**OVER, **texts})})")


def judged(questions):
    """Every question through every way in: functions, aggregates of one row, parts by place and by name."""
    script = [f"CREATE TABLE asked(id INTEGER PRIMARY KEY, {', '.join(ARGUMENTS)});"]
    script += [f"INSERT INTO asked VALUES({number}, {listed(texts)});" for number, texts in enumerate(questions)]
    names = ", ".join(ARGUMENTS)
    own = ", ".join("a." + name for name in ARGUMENTS)
    calls = ", ".join(f'rodt_{name}({names}) AS "{name}"' for name in FUNCTIONS + AGGREGATES)
    found = rows("".join(script) + f"SELECT {calls} FROM asked GROUP BY id ORDER BY id;")
    named = " AND ".join(f"f.{name} = a.{name}" for name in ARGUMENTS)
    for query in (f"JOIN rodt_finding({own}) AS f", f"JOIN rodt_finding AS f ON {named}"):
        parts = rows("".join(script) + f"SELECT a.id, f.name, f.value FROM asked AS a {query};")
        for number, row in enumerate(found):
            said = {part["name"]: part["value"] for part in parts if part["id"] == number}
            assert all(row[name] == said[{"stroke": "applied_stroke"}.get(name, name)] for name in FUNCTIONS[:5]), row
            row["parts"] = said
    assert len(found) == len(questions)
    return found


def test_wheel_ends():
    engine_cases.check_wheel_ends(judged)


def test_conformance():
    for answer, error, row in engine_cases.check_conformance(judged):
        parts = row["parts"]
        assert parts["proof"] == answer["proof"] and parts["probability_over"] == answer["probability_over"], row
        assert (parts["error_status"], parts["error_field"], int(parts["error_column"])) == \
            (error["status"], error["field"], error["column"]), row


def test_numbers_and_nulls():
    assert call("margin") == "-1/16" and call("margin", psi=95) == "-1/16"
    assert call("stroke", released=2, applied=4) == "2"
    nothing = judged([{}])[0]
    assert nothing["verdict"] == "undetermined" and nothing["margin"] is None and nothing["limit"] is None
    assert nothing["outcome"] == "undetermined" and nothing["share"] == "0"
    assert "chamber-missing released-missing applied-missing" in nothing["reasons"]


def test_what_is_no_text_is_unreadable():
    """A blob, a text with a zero byte or of too many bytes: data, and never a pass."""
    sound = {"chamber": "30L", "released": "2 3/4", "applied": "5", "psi": "95", "date": "2024-05-06",
             "stroke_class": "long", "rated_stroke": "3", "marked_limit": "2 1/2", "psi_after": "94",
             "division": "1/16", "unit": "in", "engine": "off", "spring_brake": "released", "drum": "cold"}
    assert judged([sound])[0]["verdict"] == "in-adjustment"
    names, questions = [], []
    for name, text in sound.items():
        for wrong in (text.encode(), text + "\0", text + "\0 or more", "\0" + text, text + " " * 1000, b"",
                      "x" * 100000, "'); DROP TABLE asked; --"):
            names.append((name, wrong))
            questions.append({**sound, name: wrong})
    for (name, wrong), row in zip(names, judged(questions)):
        assert row["verdict"] == "undetermined" and row["parts"]["error_field"] == name, (name, wrong, row)
        assert "unreadable" in row["reasons"] and row["outcome"] == "undetermined", (name, wrong, row)


def test_finest_readings():
    """The finest that can be read have an exact stroke; what is finer is data, too."""
    stroke = Fraction("600.1234567") / Fraction("25.4") - Fraction(1, 10**9)
    assert Fraction(call("stroke", released="0.000000001", applied="600.1234567 mm")) == stroke
    assert call("reasons", released="1", applied="3.1234567891") == "applied-unreadable"


def test_binary_fractions_are_refused():
    for name in ARGUMENTS:
        for function in FUNCTIONS + AGGREGATES:
            said = refused(f"rodt_{function}({listed(OVER).replace('NULL', '2.5')})")
            assert "is a REAL, which is only nearly what was read" in said and f"rodt_{function}: " in said, said
        texts = ", ".join("2.5" if name == other else literal(OVER.get(other)) for other in ARGUMENTS)
        assert f"rodt_finding: {name} is a REAL" in refused(f"* FROM rodt_finding({texts})"), name
    assert "rodt_length: a REAL" in refused("rodt_length(2.5)") and "REAL" in refused("rodt_date(2.5)")


def test_wrong_calls():
    for function in FUNCTIONS + AGGREGATES:
        for count in (0, 1, 2, 16):
            assert "wrong number of arguments" in refused(f"rodt_{function}({', '.join(['1'] * count)})")
        for rules in ("", "us", "us-fmcsr\0", b"us-fmcsr", 7, "'; --", "é" * 5000):
            said = refused(f"rodt_{function}({listed({**OVER, 'rules': rules})})")
            assert f"rodt_{function}: there is no rule set" in said and len(said) < 300, said
    assert "there is no rule set" in refused(f"* FROM rodt_finding({listed({**OVER, 'rules': 'us'})})")
    assert "too many arguments" in refused(f"* FROM rodt_finding({listed(OVER)}, 1)")
    assert "may not be modified" in shell("DELETE FROM rodt_limits;").stderr


def test_texts():
    for text, exact in (("2 1/8", "17/8"), ("54 mm", "270/127"), (2, "2"), ("31/8", None), ("2-Jan", None),
                        (None, None), (b"2", None), ("", None), ("2\0", None)):
        assert one(f"rodt_length({literal(text)})") == exact, text
    assert one("rodt_length('54', 'mm')") == "270/127" and one("rodt_length('54', 'miles')") is None
    assert one("rodt_length('54', NULL)") is None
    assert one("rodt_length_format('-1/16')") == "-1/16" and one("rodt_length_format('41/16')") == "2 9/16"
    for text in ("", "x", "1/", "1/0", "/2", "1 3/4", "1" * 19, "1/2x", "-", None):
        assert one(f"rodt_length_format({literal(text)})") is None, text
    for text, day in (("13-OCT-21", "2021-10-13"), ("10/14/2021", "2021-10-14"), ("1/2/2024", None), ("", None),
                      (None, None)):
        assert one(f"rodt_date({literal(text)})") == day, text
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", one("rodt_tables_edition()"))


def test_order():
    numbers = ["10", "9/1", "-1/16", "0", "1/3", "5/16", "-5/2", "2/4"]
    others = ["", "1 3/4", "x", "xy"]
    values = ", ".join(f"({literal(text)})" for text in others + numbers)
    found = [row["t"] for row in rows(f"WITH v(t) AS (VALUES {values}) SELECT t FROM v ORDER BY t COLLATE rodt_exact;")]
    assert found == sorted(numbers, key=Fraction) + others, found
    assert one("'1/2' = '2/4' COLLATE rodt_exact") == 1 and one("min('1/3' COLLATE rodt_exact, '1/4')") == "1/4"


def test_schema():
    """A generated column and an index, in a schema that nobody trusts."""
    script = """PRAGMA trusted_schema = OFF;
        CREATE TABLE ends(chamber TEXT, released TEXT, applied TEXT, psi TEXT,
            verdict TEXT GENERATED ALWAYS AS (rodt_verdict(chamber, released, applied, psi)) STORED,
            CHECK (rodt_date('2024-05-06') IS NOT NULL));
        CREATE INDEX margins ON ends(rodt_margin(chamber, released, applied, psi) COLLATE rodt_exact);
        INSERT INTO ends VALUES ('30L', '2 3/4', '5 5/16', '95'), ('30L', '2 3/4', '5', 95), (NULL, 'x', '5', '95');"""
    found = rows(script + "SELECT verdict FROM ends;")
    assert [row["verdict"] for row in found] == ["out-of-adjustment", "in-adjustment", "undetermined"]
    over = "FROM ends WHERE rodt_margin(chamber, released, applied, psi) COLLATE rodt_exact < '0'"
    assert rows(script + f"SELECT applied {over};") == [{"applied": "5 5/16"}]
    assert "USING INDEX margins" in shell(script + f"EXPLAIN QUERY PLAN SELECT applied {over};", "list").stdout


def test_tables():
    with open(os.path.join(ROOT, "tables/limits.csv"), encoding="utf-8", newline="") as file:
        lines = (line for line in file if not line.startswith("#"))
        wanted = [row for row in csv.DictReader(lines) if row["rules"] == "us-fmcsr"]
    found = rows("SELECT * FROM rodt_limits WHERE rules = 'us-fmcsr';")
    assert len(found) == len(wanted) > 20
    for row, typed in zip(found, wanted):
        assert (row["family"], row["size"], row["stroke_class"]) == (typed["family"], typed["size"], typed["class"])
        assert Fraction(row["stroke_limit"]) == sum(map(Fraction, typed["limit"].split())), row
        assert row["source"] and row["from_day"] == (typed["from"] or None), row
        assert row["until_day"] == (typed["until"] or None) and row["evidence"] == typed["evidence"], row
    assert one("count(DISTINCT rowid) = count(*) FROM rodt_limits") == 1
    assert one("count(*) FROM rodt_finding('30', '2', '4') WHERE value IS NULL AND name = 'day'") == 1
    joined = rows("SELECT f.value FROM rodt_finding AS f, (SELECT '30' AS c) AS t WHERE f.chamber = t.c "
                  "AND f.released = '2' AND f.applied = '4' AND f.name = 'verdict';")
    assert joined == [{"value": "in-adjustment"}]


FLEET = (f".import --csv '{ROOT}/examples/data/fleet.csv' fleet\n"
         "DELETE FROM fleet WHERE unit_no = 'unit_no' OR position = '';")
READ = "chamber, released, applied, psi, date, stroke_class, NULL, rated_stroke, NULL, NULL, division"


def test_vehicles():
    """As `rodtravel batch --by` counts them."""
    if not os.environ["COMMAND"]:
        return
    ran = subprocess.run([os.environ["COMMAND"], "batch", "--by", "unit_no", f"{ROOT}/examples/data/fleet.csv"],
                         stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, encoding="utf-8", timeout=60, check=False)
    wanted = [[line["unit_no"], line["date"], int(line["brakes"]), line["verdict"], line["defective"]]
              for line in csv.DictReader(ran.stdout.splitlines())]
    ran = shell(FLEET + f"SELECT unit_no, coalesce(rodt_date(date), '') AS day, count(*), rodt_outcome({READ}), "
                f"rodt_length_format(rodt_defective({READ})) FROM fleet GROUP BY unit_no, day;")
    found = [list(row.values()) for row in json.loads(ran.stdout)]
    assert len(wanted) > 10 and sorted(found) == sorted(wanted), found
    assert one("rodt_outcome(1, 2, 3) FROM (SELECT 1 WHERE 0)") == "undetermined"


def test_memory():
    """A query that has no memory says so."""
    read = re.sub(r"(?<![.\w])([a-z_]+)", r"f.\1", READ)
    ends = []
    for limit in list(range(80000, 130000, 2000)) + [300000, 600000, 3000000]:
        ran = shell(f"{FLEET}PRAGMA hard_heap_limit = {limit};"
                    f"SELECT length(group_concat(rodt_reasons({read}))), rodt_count({read}) FROM fleet f, fleet g;"
                    f"SELECT length(group_concat(value)) FROM fleet AS f, rodt_finding({read});", "list")
        assert ran.returncode >= 0, ran
        assert all("out of memory" in said for said in re.findall(".*rror.*", ran.stderr)), ran
        ends.append("out of memory" in ran.stderr)
    assert ends[0] and not ends[-1], ends


def test_readme():
    """Each statement says what the comments below it say."""
    with open(os.path.join(ROOT, "bindings/sqlite/README.md"), encoding="utf-8") as file:
        blocks = re.findall(r"```sql\n(.*?)```", file.read(), re.DOTALL)
    assert len(blocks) > 2
    with tempfile.TemporaryDirectory() as folder:
        place_of_example(folder)
        text = "".join(blocks)
        ran = shell("\n".join(line for line in text.splitlines() if not line.startswith("-- ")), "list", folder)
    wanted = [line[3:] for line in text.splitlines() if line.startswith("-- ")]
    assert ran.stdout.splitlines() == wanted, ran.stdout + ran.stderr


def place_of_example(folder):
    """Where the tree has been built in `build`."""
    os.makedirs(os.path.join(folder, "build/bindings/sqlite"))
    os.symlink(os.environ["EXTENSION"], os.path.join(folder, "build/bindings/sqlite/rodtravel.so"))
    os.symlink(os.path.join(ROOT, "examples"), os.path.join(folder, "examples"))


def test_example():
    with tempfile.TemporaryDirectory() as folder:
        place_of_example(folder)
        undated = ("INSERT INTO fleet(unit_no, date) VALUES ('B-7', '1/2/2024');"
                   "SELECT group_concat(outcome) FROM inspections WHERE unit_no = 'B-7';")
        ran = subprocess.run([os.environ["SQLITE"], "-batch", "-init", os.path.join(ROOT, "examples/sql/fleet.sql"),
                              ":memory:", undated], stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8",
                             timeout=60, check=True, cwd=folder)
    for line in ("D-4      2024-06-11  out-of-service   2 of 5 brakes defective, 40 %: 20 % is reached",
                 "D-4      2024-06-11  3L        3030      out-of-adjustment  -1/127  over-limit assumed-standard",
                 "B-7      2024-06-10  below-criterion", "\nundetermined,undetermined"):
        assert line in ran.stdout, ran.stdout + ran.stderr


def test_symbols():
    """The library inside is nobody else's."""
    said = subprocess.run(["nm", "-D", "--defined-only", os.environ["EXTENSION"]], stdout=subprocess.PIPE,
                          encoding="utf-8", check=True, timeout=60).stdout
    assert [line.split()[-1] for line in said.splitlines()] == ["sqlite3_rodtravel_init"], said


tap.run(globals())
