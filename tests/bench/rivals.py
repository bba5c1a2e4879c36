# SPDX-License-Identifier: Apache-2.0
"""The job of `rodtravel batch` in other programs: chamber to limit, two mixed fractions to a stroke, and the verdict.

    python3 rivals.py NAME LIMITS INPUT OUTPUT THREADS

NAME is python, mawk, duckdb or polars; LIMITS a CSV file chamber,stroke_class,limit64. The output has the columns of
the input and stroke64 (64ths of an inch) and verdict; a row that the program cannot do has an empty stroke and
`undetermined`. Prints the seconds of the work alone, without the start of the program that does it.

Each is written as somebody who knows it well would write it for speed. They read whole numbers and mixed fractions
with a denominator that divides 64, up to 24 in, and nothing else: no decimals, millimetres, signs of fractions or dates."""
import csv
import importlib.util
import shutil
import subprocess
import sys
import time
from fractions import Fraction

NAMES = ["python", "mawk", "duckdb", "polars"]

AWK = r"""
# A reading in 64ths, or -1.
function read64(text,    part, value) {
    value = -1
    split(text, part, /[ \/]/)
    if (text ~ /^[0-9]+$/) value = text * 64
    else if (text ~ /^[0-9]+\/[0-9]+$/ && part[2] > 0 && 64 % part[2] == 0) value = part[1] * 64 / part[2]
    else if (text ~ /^[0-9]+ [0-9]+\/[0-9]+$/ && part[3] > 0 && 64 % part[3] == 0 && part[2] + 0 < part[3] + 0)
        value = part[1] * 64 + part[2] * 64 / part[3]
    return value > 24 * 64 ? -1 : value
}
BEGIN { FS = OFS = "," }
FNR == NR { limit[$1 FS $2] = $3 + 0; next }
FNR == 1 { for (i = 1; i <= NF; i++) at[$i] = i; print $0, "stroke64", "verdict"; next }
{
    # An array keeps what was read once: there are few different readings.
    a = $at["released"]; b = $at["applied"]
    if (!(a in known)) known[a] = read64(a)
    if (!(b in known)) known[b] = read64(b)
    key = $at["chamber"] FS $at["stroke_class"]
    if (known[a] < 0 || known[b] < 0 || !(key in limit)) { print $0, "", "undetermined"; next }
    s = known[b] - known[a]
    print $0, s, (s < 0 ? "undetermined" : s == 0 ? "inoperative" : \
                  s > limit[key] ? "out-of-adjustment" : "in-adjustment")
}
"""


def missing(name):
    """Why a program cannot run here, or None."""
    if name == "mawk":
        return None if shutil.which("mawk") else "mawk is not installed"
    if name == "python" or importlib.util.find_spec(name):
        return None
    return f"the Python package {name} is not installed"


def verdict_of(stroke, limit):
    if stroke < 0:
        return "undetermined"
    if stroke == 0:
        return "inoperative"
    return "out-of-adjustment" if stroke > limit else "in-adjustment"


def read_fraction(text):
    """A mixed fraction, exactly; None for anything else."""
    whole, _, part = text.rpartition(" ")
    top, slash, low = part.partition("/")
    if not (top.isdecimal() and (low.isdecimal() if slash else not whole) and (whole.isdecimal() or not whole)):
        return None
    if slash and (int(low) == 0 or (whole and int(top) >= int(low))):
        return None
    value = int(whole or 0) + Fraction(int(top), int(low or 1))
    return value if value <= 24 else None


def run_python(limits, source, target, _threads):
    with open(limits, newline="", encoding="utf-8") as file:
        known = {(c, k): Fraction(int(v), 64) for c, k, v in list(csv.reader(file))[1:]}
    begin = time.perf_counter()
    with open(source, newline="", encoding="utf-8") as file, open(target, "w", newline="", encoding="utf-8") as out:
        rows, write = csv.reader(file), csv.writer(out, lineterminator="\n").writerow
        head = next(rows)
        chamber, kind, released, applied = map(head.index, ("chamber", "stroke_class", "released", "applied"))
        write(head + ["stroke64", "verdict"])
        for row in rows:
            first, second = read_fraction(row[released]), read_fraction(row[applied])
            limit = known.get((row[chamber], row[kind]))
            if first is None or second is None or limit is None:
                write(row + ["", "undetermined"])
            else:
                stroke = second - first
                write(row + [stroke * 64, verdict_of(stroke, limit)])
    return time.perf_counter() - begin


def run_mawk(limits, source, target, _threads):
    with open(target, "wb") as out:
        begin = time.perf_counter()
        subprocess.run(["mawk", AWK, limits, source], stdout=out, check=True)
        return time.perf_counter() - begin


SQL_READ = r"""
    SELECT text, CASE WHEN value <= 24 * 64 AND (whole IS NULL OR low IS NULL OR top < low) THEN value END AS value FROM (
        SELECT text, whole, top, low, CASE WHEN low IS NULL THEN whole * 64
                                           ELSE coalesce(whole, 0) * 64 + top * 64 // low END AS value FROM (
            SELECT text, try_cast(part.whole AS INTEGER) AS whole, try_cast(part.top AS INTEGER) AS top,
                   try_cast(part.low AS INTEGER) AS low FROM (
                SELECT text, regexp_extract(text, '^(?:(\d{1,4})(?: |$))?(?:(\d{1,4})/(1|2|4|8|16|32|64))?$',
                                            ['whole', 'top', 'low']) AS part
                FROM (SELECT released AS text FROM cells UNION SELECT applied FROM cells))))
"""


def run_duckdb(limits, source, target, threads):
    import duckdb
    base = duckdb.connect()
    base.execute(f"SET threads = {threads}")
    base.execute(f"CREATE TABLE limits AS SELECT * FROM read_csv('{limits}', types = {{'chamber': 'VARCHAR'}})")
    begin = time.perf_counter()
    # Each different reading is read once: there are few, and a hash join is what the engine is best at.
    base.execute(f"""
        CREATE TEMP TABLE cells AS SELECT * FROM read_csv('{source}', all_varchar = true, header = true,
                                                          nullstr = '\x01', delim = ',', quote = '"', escape = '"');
        CREATE TEMP TABLE readings AS {SQL_READ};
        COPY (SELECT cells.*, b.value - a.value AS stroke64,
                     CASE WHEN stroke64 IS NULL OR limit64 IS NULL OR stroke64 < 0 THEN 'undetermined'
                          WHEN stroke64 = 0 THEN 'inoperative'
                          WHEN stroke64 > limit64 THEN 'out-of-adjustment' ELSE 'in-adjustment' END AS verdict
              FROM cells LEFT JOIN readings a ON a.text = released LEFT JOIN readings b ON b.text = applied
              LEFT JOIN limits ON limits.chamber = cells.chamber AND limits.stroke_class = cells.stroke_class)
        TO '{target}' (FORMAT csv, HEADER, USE_TMP_FILE false)""")
    return time.perf_counter() - begin


def run_polars(limits, source, target, _threads):
    import polars as pl
    known = pl.read_csv(limits, schema_overrides={"chamber": pl.String})
    begin = time.perf_counter()
    cells = pl.read_csv(source, infer_schema=False)

    # Each different reading is read once: there are few.
    text = pl.concat([cells["released"].alias("text"), cells["applied"].alias("text")]).unique().to_frame()
    parts = text.with_columns(pl.col("text").str.extract_groups(
        r"^(?:(?<whole>\d+)(?: |$))?(?:(?<top>\d+)/(?<low>1|2|4|8|16|32|64))?$").alias("part")).unnest("part")
    whole, top, low = (pl.col(name).cast(pl.Int32, strict=False) for name in ("whole", "top", "low"))
    value = pl.when(low.is_null()).then(whole * 64).otherwise(whole.fill_null(0) * 64 + top * 64 // low)
    sound = (value <= 24 * 64) & (whole.is_null() | low.is_null() | (top < low))
    readings = parts.select("text", pl.when(sound).then(value).alias("value"))

    stroke = pl.col("stroke64")
    joined = cells.lazy().join(readings.lazy().rename({"value": "a"}), left_on="released", right_on="text", how="left",
                               maintain_order="left")
    joined = joined.join(readings.lazy().rename({"value": "b"}), left_on="applied", right_on="text", how="left",
                         maintain_order="left")
    joined = joined.join(known.lazy(), on=["chamber", "stroke_class"], how="left", maintain_order="left")
    answers = joined.with_columns((pl.col("b") - pl.col("a")).alias("stroke64")).with_columns(
        pl.when(stroke.is_null() | pl.col("limit64").is_null() | (stroke < 0)).then(pl.lit("undetermined"))
        .when(stroke == 0).then(pl.lit("inoperative"))
        .when(stroke > pl.col("limit64")).then(pl.lit("out-of-adjustment"))
        .otherwise(pl.lit("in-adjustment")).alias("verdict")).drop("a", "b", "limit64")
    answers.collect().write_csv(target)
    return time.perf_counter() - begin


if __name__ == "__main__":
    name, *words = sys.argv[1:]
    print(globals()["run_" + name](*words))
