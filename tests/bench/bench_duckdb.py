# SPDX-License-Identifier: Apache-2.0
"""Rows of texts judged inside of DuckDB, beside reading the lengths of the same texts, the rule in plain SQL, and the C
engine on the same columns, in one run; the best of some turns. Nothing fails because a machine is slow.

    python3 bench_duckdb.py RODTRAVEL EXTENSION [ROWS]       with PYTHONPATH at the package, which has the C engine
"""
import importlib.util
import json
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import files
import rivals

TURNS = 5
GIVEN = ["chamber", "released", "applied", "date", "stroke_class"]
ANSWERS = ["verdict", "stroke", "limit", "margin", "reasons"]


def open_table(folder, name, form, rows):
    """A table of texts, and the small tables that the plain rule looks up."""
    task = rivals.Task("rows", name, folder, files.make_file(Path(folder) / f"{name}.csv", form, rows), None, 1)
    base = rivals.open_duckdb(task)
    base.execute(f"CREATE TABLE cells AS FROM read_csv('{task.source}', all_varchar = true, header = true, "
                 "nullstr = '\x01', delim = ',')")
    return task, base


def queries(task):
    """By what they are: each counts its answers."""
    unit = "unit" if task.mixed else f"'{task.form.default_unit}'"
    more = "" if unit == "'in'" else f", 'unit': {unit}"
    given = f"(chamber, released, applied, {{'date': date, 'stroke_class': stroke_class{more}}})"
    answers = [f"rodt_{name}{given}" for name in ANSWERS]
    parts = ", ".join(f'sum(length(f."{name}"))' for name in ANSWERS)
    lengths = ", ".join(f"sum(length({name}))" for name in GIVEN + ["unit"] * task.mixed)
    return {"lengths": f"SELECT {lengths} FROM cells",
            "plain SQL": f"SELECT verdict, count(*) FROM ({rivals.sql_query(task, 'cells')}) GROUP BY 1 ORDER BY 1",
            "extension": f"SELECT {answers[0]} AS verdict, count(*) FROM cells GROUP BY 1 ORDER BY 1",
            "five functions": f"SELECT {', '.join(f'sum(length({answer}))' for answer in answers)} FROM cells",
            "one struct": f"SELECT {parts} FROM (SELECT rodt_finding{given} AS f FROM cells)"}


def engine(task, base):
    """The C engine on the same columns as Arrow tables; None where the packages are not installed."""
    if not all(importlib.util.find_spec(name) for name in ("pyarrow", "rodtravel")):
        return None
    import rodtravel
    names = GIVEN + ["unit"] * task.mixed
    table = base.sql(f"SELECT {', '.join(names)} FROM cells").to_arrow_table()
    judge = rodtravel.Judge(unit=task.form.default_unit)
    return lambda: sorted((str(verdict), count) for verdict, count in judge(table).counts().items() if count)


def measure(name, form, rows, folder, extension):
    """Nanoseconds a row of the processor, by what is measured. The verdicts must be the same."""
    import duckdb
    task, base = open_table(folder, name, form, rows)
    loaded = duckdb.connect(config={"allow_unsigned_extensions": "true", "threads": 1})
    loaded.load_extension(extension)
    loaded.register("given", base.sql("FROM cells").to_arrow_table())
    loaded.execute("CREATE TABLE cells AS FROM given")
    jobs = {job: (lambda query=query, on=loaded if job != "plain SQL" else base: on.execute(query).fetchall())
            for job, query in queries(task).items()}
    jobs["C engine"] = engine(task, base)
    best, answers = {}, {}
    for _ in range(TURNS):
        for job, run in jobs.items():
            if run is None:
                continue
            begin = time.process_time()
            answers[job] = run()
            best[job] = min(best.get(job, 1e9), (time.process_time() - begin) * 1e9 / rows)
    same = [sorted(map(tuple, answers[job])) for job in ("plain SQL", "extension", "C engine") if job in answers]
    assert all(found == same[0] for found in same), (name, answers)
    assert answers["five functions"] == answers["one struct"], (name, answers)
    return best


def main(command, extension, rows=200000):
    if importlib.util.find_spec("duckdb") is None or importlib.util.find_spec("pyarrow") is None:
        print("left out: the Python packages duckdb and pyarrow are not installed")
        sys.exit(77)
    ran = subprocess.run([command, "limits", "--json"], stdout=subprocess.PIPE, check=True)
    limits = json.loads(ran.stdout)["limits"]
    with tempfile.TemporaryDirectory() as folder:
        files.write_marks(Path(folder) / "marks.csv")
        for name, form in files.FORMS.items():
            files.write_limits(Path(folder) / f"limits-{name}.csv", form, limits)
            best = measure(name, form, int(rows), folder, extension)
            said = ", ".join(f"{job} {taken:.0f}" for job, taken in best.items())
            ratios = ", ".join(f"beside {job} {best['extension'] / best[job]:.2f}" for job in ("lengths", "plain SQL"))
            print(f"{form.title}: ns a row: {said}; extension {ratios}", flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
