# SPDX-License-Identifier: Apache-2.0
"""The job of `rodtravel batch` in other programs: chamber to limit, two readings to a stroke, and the verdict.

    python3 rivals.py NAME JOB FORM FOLDER INPUT OUTPUT THREADS

NAME is python, mawk, duckdb or polars; JOB is rows, ndjson or visits (one line for each vehicle and day); FORM is one
of files.FORMS. FOLDER has limits-FORM.csv and marks.csv. Rows get the columns stroke, in steps of the form, and
verdict. Prints the seconds of the processor and of the clock for the work alone, without the start of the program that does it.

Each is written as somebody who knows it well would write it for speed, and for one form only: it reads no other, checks
nothing and gives no reasons. Marks of a tape are few, so they are looked up in a table."""
import csv
import importlib.util
import os
import resource
import shutil
import subprocess
import sys
import time
from fractions import Fraction
from pathlib import Path

from files import FORMS, HEAD

NAMES = ["python", "mawk", "duckdb", "polars"]
VISIT = ["unit_no", "date", "brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined", "defective",
         "percent", "verdict", "whole_needed"]


def missing(name):
    """Why a program cannot run here, or None."""
    if name == "mawk":
        return None if shutil.which("mawk") else "mawk is not installed"
    if name == "python" or importlib.util.find_spec(name):
        return None
    return f"the Python package {name} is not installed"


class Task:
    """What is to be done, and where everything is."""

    def __init__(self, job, form, folder, source, target, threads):
        self.job, self.form, self.source, self.target, self.threads = job, FORMS[form], source, target, threads
        self.limits = Path(folder) / f"limits-{form}.csv"
        self.marks = Path(folder) / "marks.csv"
        self.tape, self.mixed = form == "tape", form == "unit"

    def factor(self, choose):
        """Steps in the number of a cell. `choose` makes an expression of those of a millimetre and of an inch."""
        if self.mixed:
            return choose(self.form.factor("mm"), self.form.factor("in"))
        return self.form.factor(self.form.unit)


def timed(work):
    """Seconds of the processor, children included, and of the clock."""
    def now():
        both = resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN)
        return sum(used.ru_utime + used.ru_stime for used in both), time.perf_counter()
    begin = now()
    work()
    return tuple(b - a for a, b in zip(begin, now()))


# --- Python --------------------------------------------------------------------------------------------------

def verdict_of(stroke, limit):
    if stroke < 0:
        return "undetermined"
    if stroke == 0:
        return "inoperative"
    return "out-of-adjustment" if stroke > limit else "in-adjustment"


def read_fraction(text):
    """A mixed fraction or a decimal, exactly."""
    whole, _, part = text.rpartition(" ")
    return Fraction(whole) + Fraction(part) if whole else Fraction(part)


def run_python(task):
    """Row by row in exact fractions: to compare with, not to be fast."""
    with open(task.limits, encoding="utf-8") as file:
        known = {(row[0], row[1]): Fraction(row[2]) for row in csv.reader(file)}
    scale = {"mm": task.form.factor("mm"), "in": task.form.factor("in"), "": task.form.factor(task.form.unit)}

    def work():
        with open(task.source, newline="", encoding="utf-8") as file, open(task.target, "w", encoding="utf-8") as out:
            rows, write = csv.DictReader(file), csv.writer(out, lineterminator="\n").writerow
            write(rows.fieldnames + ["stroke", "verdict"])
            for row in rows:
                first, second = (read_fraction(row[name].removesuffix(task.form.suffix))
                                 for name in ("released", "applied"))
                stroke = (second - first) * scale[row.get("unit", "")]
                write([*row.values(), stroke, verdict_of(stroke, known[row["chamber"], row["stroke_class"]])])
    return timed(work)


# --- mawk ----------------------------------------------------------------------------------------------------

AWK_TABLES = r"""
FILENAME ~ /limits-[a-z0-9]*[.]csv$/ { split($0, part, ","); limit[part[1] "," part[2]] = part[3] + 0; next }
FILENAME ~ /marks[.]csv$/ { split($0, part, ","); mark[part[1]] = part[2] + 0; next }
"""
AWK_VERDICT = '(s < 0 ? "undetermined" : s == 0 ? "inoperative" : s > l ? "out-of-adjustment" : "in-adjustment")'
AWK_COUNT = r"""
    key = $1 FS $2; brakes[key]++
    if (v == "in-adjustment") good[key]++
    else if (v == "undetermined") unknown[key]++
    else if (v == "inoperative") { still[key]++; halves[key] += 2 }
    else { out[key]++; halves[key] += s - l >= quarter ? 2 : 1 }"""
AWK_VISITS = r"""
END { for (key in brakes) {
    n = brakes[key]; half = halves[key] + 0; needed = int((n + 4) / 5)
    word = half * 5 >= n * 2 ? (half >= needed * 2 ? "out-of-service" : "ambiguous") \
           : (half + unknown[key] * 2) * 5 >= n * 2 ? "undetermined" : "below-criterion"
    print key, n, good[key] + 0, out[key] + 0, still[key] + 0, unknown[key] + 0, half / 2, half * 50 / n, word, needed
} }"""


def awk_stroke(task, first, last):
    if task.tape:
        return f"mark[{last}] - mark[{first}]"
    factor = task.factor(lambda mm, inch: f'($9 == "mm" ? {mm} : {inch})')
    return f"int(({last} - {first}) * {factor} + 10000000.5) - 10000000"  # int() cuts towards zero


def awk_program(task):
    job = task.job
    # A line of JSON is split at its quotes: the members are the same in each, in one order.
    released, applied, chamber, kind = (f"${HEAD.index(name) * 4 + 4 if job == 'ndjson' else HEAD.index(name) + 1}"
                                        for name in ("released", "applied", "chamber", "stroke_class"))
    begin = r'FS = "\""' if job == "ndjson" else 'FS = OFS = ","'
    head = {"rows": 'FNR == 1 { print $0, "stroke", "verdict"; next }', "ndjson": "",
            "visits": f'FNR == 1 {{ print "{",".join(VISIT)}"; next }}'}[job]
    finish = {"rows": "print $0, s, v", "visits": AWK_COUNT,
              "ndjson": r'print substr($0, 1, length($0) - 1) ",\"stroke\":" s ",\"verdict\":\"" v "\"}"'}[job]
    return f"""BEGIN {{ {begin}; quarter = {task.form.factor("in") / 4} }} {AWK_TABLES} {head}
        {{ s = {awk_stroke(task, released, applied)}; l = limit[{chamber} "," {kind}]; v = {AWK_VERDICT}; {finish} }}
        {AWK_VISITS if job == "visits" else ""}"""


# mawk reads and writes numbers with the comma of a locale that has one.
POINT = {**os.environ, "LC_ALL": "C"}


def run_mawk(task):
    words = ["mawk", awk_program(task), str(task.limits), str(task.marks), str(task.source)]
    with open(task.target, "wb") as out:
        return timed(lambda: subprocess.run(words, env=POINT, stdout=out, check=True))


# --- DuckDB --------------------------------------------------------------------------------------------------

SQL_VERDICT = """CASE WHEN stroke < 0 THEN 'undetermined' WHEN stroke = 0 THEN 'inoperative'
                      WHEN stroke > steps THEN 'out-of-adjustment' ELSE 'in-adjustment' END"""
SQL_VISITS = """
    SELECT *, defective * 100 / brakes AS percent,
           CASE WHEN defective * 5 >= brakes THEN
                     CASE WHEN defective >= (brakes + 4) // 5 THEN 'out-of-service' ELSE 'ambiguous' END
                WHEN (defective + undetermined) * 5 >= brakes THEN 'undetermined' ELSE 'below-criterion' END AS verdict,
           (brakes + 4) // 5 AS whole_needed
    FROM (SELECT unit_no, date, count(*) AS brakes, count(*) FILTER (stroke > 0 AND stroke <= steps) AS in_adjustment,
                 count(*) FILTER (stroke > steps) AS out_of_adjustment, count(*) FILTER (stroke = 0) AS inoperative,
                 count(*) FILTER (stroke < 0) AS undetermined,
                 sum(CASE WHEN stroke = 0 OR stroke - steps >= {quarter} THEN 2
                          WHEN stroke > steps THEN 1 ELSE 0 END) / 2 AS defective
          FROM ({rows}) GROUP BY unit_no, date)"""


def sql_strokes(task, source):
    """Rows of the source with their stroke and its limit, in steps."""
    if task.tape:
        stroke = "last.steps - first.steps"
        tables = "JOIN marks first ON first.mark = released JOIN marks last ON last.mark = applied"
    else:
        cell = f"replace({{}}, '{task.form.suffix}', '')" if task.form.suffix else "{}"
        first, last = (f"CAST({cell.format(name)} AS DECIMAL(9, 6))" for name in ("released", "applied"))
        factor = task.factor(lambda mm, inch: f"CASE unit WHEN 'mm' THEN {mm} ELSE {inch} END")
        stroke, tables = f"CAST(({last} - {first}) * {factor} AS INTEGER)", ""
    return f"""SELECT cells.*, {stroke} AS stroke, limits.steps FROM {source} cells {tables}
               JOIN limits ON limits.chamber = cells.chamber AND limits.stroke_class = cells.stroke_class"""


def sql_query(task, source):
    rows = sql_strokes(task, source)
    if task.job == "visits":
        return SQL_VISITS.format(rows=rows, quarter=task.form.factor("in") / 4)
    return f"SELECT * EXCLUDE (steps), {SQL_VERDICT} AS verdict FROM ({rows})"


def open_duckdb(task):
    import duckdb
    base = duckdb.connect()
    # The small tables are looked up in, so that rows keep their order.
    base.execute(f"""SET threads = {task.threads}; SET disabled_optimizers = 'join_order,build_side_probe_side';
        CREATE TABLE limits AS SELECT * FROM read_csv('{task.limits}', header = false, columns =
            {{'chamber': 'VARCHAR', 'stroke_class': 'VARCHAR', 'steps': 'DOUBLE'}});
        CREATE TABLE marks AS SELECT * FROM read_csv('{task.marks}', header = false, columns =
            {{'mark': 'VARCHAR', 'steps': 'INTEGER'}})""")
    return base


def run_duckdb(task):
    base = open_duckdb(task)
    if task.job == "ndjson":
        columns = ", ".join(f"'{name}': 'VARCHAR'" for name in task.form.head)
        source, kind = f"read_json('{task.source}', format = 'newline_delimited', columns = {{{columns}}})", "json"
    else:
        source, kind = f"""read_csv('{task.source}', all_varchar = true, header = true, nullstr = '\x01', delim = ',',
                                    quote = '"', escape = '"', parallel = false)""", "csv, HEADER"
    query = f"COPY ({sql_query(task, source)}) TO '{task.target}' (FORMAT {kind}, USE_TMP_FILE false)"
    return timed(lambda: base.execute(query))


# --- polars --------------------------------------------------------------------------------------------------

def polars_number(task, name):
    import polars as pl
    cell = pl.col(name)
    if task.tape:
        marks = pl.read_csv(task.marks, has_header=False, schema={"mark": pl.String, "steps": pl.Int32})
        return cell.replace_strict(marks["mark"], marks["steps"])
    return (cell.str.strip_suffix(task.form.suffix) if task.form.suffix else cell).cast(pl.Float64)


def polars_stroke(task):
    import polars as pl
    stroke = polars_number(task, "applied") - polars_number(task, "released")
    if task.tape:
        return stroke
    factor = task.factor(lambda mm, inch: pl.when(pl.col("unit") == "mm").then(mm).otherwise(inch))
    return (stroke * factor).round().cast(pl.Int32)


def polars_verdict():
    import polars as pl
    stroke = pl.col("stroke")
    return (pl.when(stroke < 0).then(pl.lit("undetermined")).when(stroke == 0).then(pl.lit("inoperative"))
            .when(stroke > pl.col("steps")).then(pl.lit("out-of-adjustment")).otherwise(pl.lit("in-adjustment")))


def polars_visits(task, rows):
    import polars as pl
    stroke, steps = pl.col("stroke"), pl.col("steps")
    brakes, defective = pl.col("brakes"), pl.col("defective")
    full = (stroke == 0) | (stroke - steps >= task.form.factor("in") / 4)
    counted = rows.group_by("unit_no", "date").agg(
        pl.len().cast(pl.Int64).alias("brakes"), ((stroke > 0) & (stroke <= steps)).sum().alias("in_adjustment"),
        (stroke > steps).sum().alias("out_of_adjustment"), (stroke == 0).sum().alias("inoperative"),
        (stroke < 0).sum().alias("undetermined"),
        ((full.sum() + ((stroke > steps) | full).sum()) / 2).alias("defective"))
    needed = (brakes + 4) // 5
    return counted.with_columns(
        (defective * 100 / brakes).alias("percent"),
        pl.when(defective * 5 >= brakes)
        .then(pl.when(defective >= needed).then(pl.lit("out-of-service")).otherwise(pl.lit("ambiguous")))
        .when((defective + pl.col("undetermined")) * 5 >= brakes).then(pl.lit("undetermined"))
        .otherwise(pl.lit("below-criterion")).alias("verdict"), needed.alias("whole_needed"))


def polars_query(task, cells):
    """The answers of a lazy frame, which has all columns of the cells."""
    import polars as pl
    limits = pl.read_csv(task.limits, has_header=False, schema={"chamber": pl.String, "stroke_class": pl.String,
                                                              "steps": pl.Float64}).lazy()
    rows = cells.join(limits, on=["chamber", "stroke_class"], how="left", maintain_order="left")
    rows = rows.with_columns(polars_stroke(task).alias("stroke"))
    return polars_visits(task, rows) if task.job == "visits" else rows.with_columns(
        polars_verdict().alias("verdict")).drop("steps")


def run_polars(task):
    import polars as pl
    if task.job == "ndjson":
        query = polars_query(task, pl.scan_ndjson(task.source, schema={name: pl.String for name in task.form.head}))
        return timed(lambda: query.sink_ndjson(task.target))
    query = polars_query(task, pl.scan_csv(task.source, infer_schema=False))
    return timed(lambda: query.sink_csv(task.target))


if __name__ == "__main__":
    given, *rest = sys.argv[1:]
    print(*globals()["run_" + given](Task(*rest)))
