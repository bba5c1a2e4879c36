# SPDX-License-Identifier: Apache-2.0
"""The functions of SQL on a connection of sqlite3: every answer is that of the extension, asked by SQLite's shell."""
import csv
import json
import os
import random
import subprocess
import sqlite3

import rodtravel as rt
import tap

ARGUMENTS = ("chamber released applied psi date stroke_class rules rated_stroke marked_limit psi_after division unit "
             "engine spring_brake drum").split()
FUNCTIONS = "verdict stroke limit margin reasons defect".split()
AGGREGATES = "outcome defective share count".split()
CALLS = ", ".join(f"rodt_{name}({', '.join(ARGUMENTS)})" for name in FUNCTIONS + AGGREGATES)


def connect():
    base = sqlite3.connect(":memory:")
    rt.register_sqlite(base)
    return base


BASE = connect()


def literal(value):
    if isinstance(value, str):
        return f"CAST(x'{value.encode().hex()}' AS TEXT)"
    return "NULL" if value is None else f"x'{value.hex()}'" if isinstance(value, bytes) else str(value)


def compare(script, query):
    """The rows of a query here and in the extension; nothing to compare with where that is not built."""
    base = connect()
    base.executescript(script)
    found = [list(row) for row in base.execute(query)]
    if os.environ.get("EXTENSION") and os.environ.get("SQLITE"):
        ran = subprocess.run([os.environ["SQLITE"], "-batch", "-cmd", f".load '{os.environ['EXTENSION']}'", "-cmd",
                              ".mode json", ":memory:"], input=f"{script}{query};", stdout=subprocess.PIPE,
                             stderr=subprocess.PIPE, encoding="utf-8", timeout=60, check=True)
        wanted = [list(row.values()) for row in json.loads(ran.stdout)]
        assert len(found) == len(wanted) > 0, (len(found), len(wanted), ran.stderr)
        for ours, theirs in zip(found, wanted):
            assert ours == theirs, (query, ours, theirs)
    return found


def table(name, columns, lines):
    values = "".join(f"INSERT INTO {name} VALUES({', '.join(map(literal, line))});" for line in lines)
    return f"CREATE TABLE {name}({', '.join(columns)});{values}"


def read_cases(name, column):
    with open(os.path.join(os.environ["CASES"], name), encoding="utf-8", newline="") as file:
        return [row[column] for row in csv.DictReader(line for line in file if not line.startswith("#"))]


def test_wheel_ends():
    """What people write and worse, in every argument; each row is also a vehicle."""
    chance = random.Random(5)
    lengths = read_cases("spellings.csv", "text")
    odd = ["", " ", "x", "'); DROP TABLE asked; --", b"2", "2\0", "\0", " " * 1001 + "2", "2" + " " * 900, "é" * 600,
           2, -7, None, None, None]
    choices = {"chamber": read_cases("chamber_marks.csv", "mark") + ["30", "30L", 30] * 200,
               "released": lengths + ["2", "2 1/8", "31/8", 2, "1.000001"] * 60,
               "applied": lengths + ["4", "4 1/8", "4 1/4", 4, "0.000000001"] * 60, "psi": ["95", "650 kPa", 60],
               "date": ["2021-10-13", "13-OCT-21", "1/2/2024", "2024-02-30"], "stroke_class": ["standard", "long"],
               "rules": [None, *(rules.id for rules in rt.rule_sets())], "rated_stroke": ["2 1/2", 3, "21/4"],
               "marked_limit": ["2", "2 1/2"], "psi_after": ["94", 50], "division": ["1/16", "1 mm"],
               "unit": ["in", "mm", "cm"], "engine": ["off", "on"], "spring_brake": ["released", "on"],
               "drum": ["cold", "hot"]}
    lines = []
    for number in range(3000):
        share = 0.3 * (number % 2)
        lines.append([number] + [None if chance.random() > 0.9 and number % 5 == 0 else
                                 chance.choice(odd) if name != "rules" and chance.random() < share / 10 else
                                 chance.choice(cells) if name in ARGUMENTS[:3] or chance.random() < share else None
                                 for name, cells in choices.items()])
    found = compare(table("asked", ["id", *choices], lines), f"SELECT {CALLS} FROM asked GROUP BY id ORDER BY id")
    assert {row[0] for row in found} == {str(verdict) for verdict in rt.Verdict}
    assert compare(table("asked", ["id", *choices], lines), f"SELECT {CALLS} FROM asked GROUP BY id % 300")
    assert BASE.execute("SELECT rodt_outcome(1, 2, 3) FROM (SELECT 1 WHERE 0)").fetchall() == [(None,)]


def test_texts():
    lengths = read_cases("spellings.csv", "text") + [2, None, b"2", "", "2\0", "2" + " " * 2000]
    script = table("texts", ["t"], [[text] for text in lengths])
    units = ["in", "mm", " MM ", "inches", "po", "miles", "", None, "mm\0", 2, b"mm"]
    calls = ", ".join(f"rodt_length(t, {literal(unit)})" for unit in units)
    assert len([row for row in compare(script, f"SELECT rodt_length(t), {calls} FROM texts") if row[0]]) > 50
    days = ["13-OCT-21", "10/14/2021", "1/2/2024", "", None, "2024-02-30", "2024-05-06T08:30", 20240506, b"2024-05-06"]
    compare(table("days", ["t"], [[text] for text in days]), "SELECT rodt_date(t) FROM days")
    numbers = ["-1/16", "41/16", "", "x", "1/", "1/0", "/2", "1 3/4", "1" * 18, "1" * 19, "1/2x", "-", None, 7, "1/2/3",
               "\N{FULLWIDTH DIGIT TWO}", "--1", "0", "-0/5", "2/4", "10", "9/1", "1/3"]
    script = table("numbers", ["t"], [[text] for text in numbers])
    compare(script, "SELECT rodt_length_format(t) FROM numbers")
    compare(script, "SELECT t FROM numbers ORDER BY CAST(t AS TEXT) COLLATE rodt_exact, rowid")
    assert BASE.execute("SELECT rodt_tables_edition()").fetchone() == (rt.tables_edition,)


def refused(query, *values):
    return str(tap.refused(sqlite3.OperationalError, lambda: BASE.execute(query, values).fetchall()))


def test_wrong_calls():
    for name in FUNCTIONS + AGGREGATES:
        for count in (0, 1, 2, 16):
            assert "wrong number of arguments" in refused(f"SELECT rodt_{name}({', '.join(['1'] * count)})")
        for place in range(len(ARGUMENTS)):
            cells = ["30", "2", "4", *[None] * 12]
            cells[place] = 2.5
            assert "raised" in refused(f"SELECT rodt_{name}({', '.join('?' * 15)})", *cells), (name, place)
        for rules in ("", "us", "us-fmcsr\0", b"us-fmcsr", 7, "'; --"):
            assert "raised" in refused(f"SELECT rodt_{name}(30, 2, 4, 95, NULL, NULL, ?)", rules), (name, rules)
    assert "raised" in refused("SELECT rodt_length(2.5)") and "raised" in refused("SELECT rodt_date(2.5)")
    assert "no such collation" in str(tap.refused(sqlite3.OperationalError, sqlite3.connect(":memory:").execute,
                                                  "SELECT 1 ORDER BY '1' COLLATE rodt_exact"))
    for wrong in (None, "base.db", 7):
        assert "connection of sqlite3" in str(tap.refused(TypeError, rt.register_sqlite, wrong))
    closed = sqlite3.connect(":memory:")
    closed.close()
    tap.refused(sqlite3.ProgrammingError, rt.register_sqlite, closed)


def test_schema():
    """A generated column and an index need functions that are deterministic."""
    base = connect()
    base.executescript("""
        CREATE TABLE ends(chamber TEXT, released TEXT, applied TEXT, psi TEXT,
            verdict TEXT GENERATED ALWAYS AS (rodt_verdict(chamber, released, applied, psi)) STORED);
        CREATE INDEX margins ON ends(rodt_margin(chamber, released, applied, psi) COLLATE rodt_exact);
        INSERT INTO ends VALUES ('30L', '2 3/4', '5 5/16', '95'), ('30L', '2 3/4', '5', 95), (NULL, 'x', '5', '95');""")
    assert [row[0] for row in base.execute("SELECT verdict FROM ends")] == ["out-of-adjustment", "in-adjustment",
                                                                           "undetermined"]
    over = "FROM ends WHERE rodt_margin(chamber, released, applied, psi) COLLATE rodt_exact < '0'"
    assert base.execute(f"SELECT applied {over}").fetchall() == [("5 5/16",)]
    assert "USING INDEX margins" in str(base.execute(f"EXPLAIN QUERY PLAN SELECT applied {over}").fetchall())
    rt.register_sqlite(base)  # once more changes nothing
    assert base.execute(f"SELECT applied {over}").fetchall() == [("5 5/16",)]


tap.run(globals())
