# SPDX-License-Identifier: Apache-2.0
"""The extension of PostgreSQL beside the same rule in plain SQL, beside reading the lengths of the texts, and beside
the command on the same rows: processor time a row of one process, the best of some turns that take them in turn.

    bench_postgresql.py [ROWS [TURNS]]

The environment is that of tests/bindings/postgresql, which is also on PYTHONPATH. Plain SQL reads one form only, checks
nothing and gives no reasons."""
import json
import os
import re
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

import files
from cluster import PSQL, run

ROWS = int(sys.argv[1]) if len(sys.argv) > 1 else 200000
TURNS = int(sys.argv[2]) if len(sys.argv) > 2 else 5
# A mark of a tape, 2 9/16, as exactly as numeric divides.
MARK = """CASE WHEN {0} LIKE '% %' THEN split_part({0}, ' ', 1)::numeric +
    split_part(split_part({0}, ' ', 2), '/', 1)::numeric / split_part({0}, '/', 2)::numeric
    WHEN {0} LIKE '%/%' THEN split_part({0}, '/', 1)::numeric / split_part({0}, '/', 2)::numeric
    ELSE {0}::numeric END"""
RULE = """CASE WHEN stroke < 0 THEN 'undetermined' WHEN stroke = 0 THEN 'inoperative'
    WHEN stroke > stroke_limit THEN 'out-of-adjustment' ELSE 'in-adjustment' END"""
COUNT = "SELECT verdict, count(*) FROM ({}) AS judged GROUP BY verdict ORDER BY verdict"
OURS = "SELECT rodt_verdict(chamber, released, applied, NULL, {}, stroke_class) AS verdict FROM ends"
SQL = "SELECT " + RULE + """ AS verdict FROM (SELECT {1} - {0} AS stroke, stroke_limit
    FROM ends JOIN sql_limits USING (chamber, stroke_class)) AS strokes"""
LOOKED_UP = "SELECT " + RULE + """ AS verdict FROM (SELECT b.inches - a.inches AS stroke, stroke_limit FROM ends
    JOIN marks AS a ON a.mark = released JOIN marks AS b ON b.mark = applied
    JOIN sql_limits USING (chamber, stroke_class)) AS strokes"""
LENGTHS = "SELECT 'all' AS verdict FROM ends WHERE length(chamber) + length(released) + length(applied) > 0"


def queries(form):
    found = {"lengths of the texts": LENGTHS, "rodt_verdict": OURS.format("NULL"),
             "rodt_verdict, with the day": OURS.format("date")}
    if form == "tape":
        found["plain SQL, numeric"] = SQL.format(MARK.format("released"), MARK.format("applied"))
        found["plain SQL, marks looked up"] = LOOKED_UP
    else:
        found["plain SQL, numeric"] = SQL.format("released::numeric", "applied::numeric")
    return found


def query_seconds(query):
    """Of the executor, and the result."""
    ran = subprocess.run([*PSQL, "-A", "-t", "-c", "SET max_parallel_workers_per_gather = 0; SET jit = off; "
                          "SET log_executor_stats = on; SET client_min_messages = log", "-c", query],
                         stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", check=True)
    stats = re.findall(r"EXECUTOR STATISTICS\s+DETAIL:.*?\n!\s+([0-9.]+) s user, ([0-9.]+) s system", ran.stderr,
                       re.DOTALL)
    return sum(map(float, stats[-1])), ran.stdout


def command_seconds(path):
    def now():
        used = resource.getrusage(resource.RUSAGE_CHILDREN)
        return used.ru_utime + used.ru_stime
    begin = now()
    subprocess.run([os.environ["COMMAND"], "batch", "--jobs", "1", str(path)], stdout=subprocess.DEVNULL,
                   stderr=subprocess.DEVNULL, check=False)
    return now() - begin


def prepare(folder, name):
    form = files.FORMS[name]
    path = files.make_file(Path(folder) / f"{name}.csv", form, ROWS)
    said = subprocess.run([os.environ["COMMAND"], "limits", "--json"], stdout=subprocess.PIPE, check=True).stdout
    limits = Path(folder) / f"limits-{name}.csv"
    files.write_limits(limits, form, json.loads(said)["limits"])
    files.write_marks(Path(folder) / "marks.csv")
    run("DROP TABLE IF EXISTS ends, sql_limits, marks;"
        f"CREATE UNLOGGED TABLE ends({', '.join(column + ' text' for column in form.head)});"
        "CREATE TABLE sql_limits(chamber text, stroke_class text, stroke_limit numeric);"
        "CREATE TABLE marks(mark text, inches numeric);\n"
        f"\\copy ends FROM '{path}' CSV HEADER\n\\copy sql_limits FROM '{limits}' CSV\n"
        f"\\copy marks FROM '{folder}/marks.csv' CSV\n"
        f"UPDATE sql_limits SET stroke_limit = stroke_limit * {form.step}::numeric;"
        "UPDATE marks SET inches = inches / 64; VACUUM ANALYZE ends; ANALYZE sql_limits; ANALYZE marks;")
    return path


def measure(folder, name):
    path = prepare(folder, name)
    times, results = {}, {}
    for _ in range(TURNS):
        for title, query in queries(name).items():
            seconds, said = query_seconds(COUNT.format(query))
            times.setdefault(title, []).append(seconds)
            results[title] = said
        times.setdefault("rodtravel batch, one thread", []).append(command_seconds(path))
    for title, seconds in times.items():
        print(f"{name:6}{title:30}{min(seconds) / ROWS * 1e9:9.0f} ns a row")
    judged = {said for title, said in results.items() if "lengths" not in title}
    print(f"{name:6}the verdicts are {'the same' if len(judged) == 1 else f'NOT THE SAME: {results}'}")


if __name__ == "__main__":
    run("CREATE EXTENSION rodtravel;")
    with tempfile.TemporaryDirectory() as temporary:
        for kind in ("tape", "in3"):
            measure(temporary, kind)
