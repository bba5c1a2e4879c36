# SPDX-License-Identifier: Apache-2.0
"""Ratios of the Python package, side by side in one run; medians. Nothing fails because a machine is slow.

    python3 bench_python.py LIBRODTRAVEL.SO        with PYTHONPATH at the package

1. Columns of numbers: NumPy arrays through the package against the same arrays given to the library itself.
2. One wheel end from text: judge against the same done with fractions.Fraction and nothing else.
3. A million rows of text: judge_columns against DuckDB, polars and pandas doing the same job, answers compared. The others
   only split mixed fractions, look up one limit a chamber and compare; they read no other spelling and give no reasons.
"""
import ctypes
import re
import statistics
import sys
import time
from fractions import Fraction

import rodtravel as rt

ROWS = 1_000_000
REPEATS = 7


def median(function, repeats=REPEATS):
    times = []
    for _ in range(repeats):
        begin = time.perf_counter()
        function()
        times.append(time.perf_counter() - begin)
    return statistics.median(times)


# --- 1

MARKS = ["30 standard", "30 long", "24 standard", "24 long", "20 standard", "16 long", "36 standard", "bolt C"]


class Bits(ctypes.Structure):
    _fields_ = [("bits", ctypes.c_void_p), ("start", ctypes.c_size_t)]


class ColumnIn(ctypes.Structure):
    _fields_ = ([(name, ctypes.c_void_p) for name in ("released", "applied", "released64", "applied64", "chamber", "pressure",
                                                      "day")] +
                [(f"valid{n}", Bits) for n in range(6)] + [("reserved", ctypes.c_uint64 * 4)])


class ColumnOut(ctypes.Structure):
    _fields_ = ([(name, ctypes.c_void_p) for name in ("stroke", "verdict", "reasons", "flags")] +
                [("reserved", ctypes.c_uint64 * 4)])


def kernel_in_c(library, columns, out, rows):
    """The same arrays given to the library itself: a function without arguments."""
    c = ctypes.CDLL(library)
    c.rodt_rules_find.restype = ctypes.c_void_p
    plan, chamber, code = ctypes.c_void_p(), ctypes.create_string_buffer(1 << 10), ctypes.c_uint32()
    assert c.rodt_column_plan_new(ctypes.c_void_p(c.rodt_rules_find(b"us-fmcsr")), None, ctypes.byref(plan), None) == 0
    for mark in MARKS:
        assert c.rodt_chamber_parse(mark.encode(), chamber, None) == 0
        assert c.rodt_column_plan_add(plan, chamber, ctypes.byref(code), None) == 0
    given = ColumnIn(released=columns[0].ctypes.data, applied=columns[1].ctypes.data, chamber=columns[2].ctypes.data)
    answers = ColumnOut(*(column.ctypes.data for column in out))
    return lambda: c.rodt_column_plan_judge(plan, ctypes.byref(given), ctypes.c_size_t(rows), ctypes.byref(answers), None)


def numbers(library, rows):
    import numpy as np
    chance = np.random.default_rng(1)
    plan = rt.Plan()
    codes = np.array([plan.add(mark) for mark in MARKS], dtype=np.uint8)
    released = (chance.integers(64, 192, rows) * rt.UNITS_PER_64TH).astype(np.int32)
    applied = released + (chance.integers(32, 192, rows) * rt.UNITS_PER_64TH).astype(np.int32)
    chamber = codes[chance.integers(0, 8, rows)]
    out, other = ([np.empty(rows, kind) for kind in (np.int32, np.uint8, np.uint32, np.uint8)] for _ in range(2))
    kernel = kernel_in_c(library, (released, applied, chamber), other, rows)
    assert kernel() == 0
    plan.judge(released, applied, chamber, out=out)
    assert all(np.array_equal(a, b) for a, b in zip(out, other))
    pairs = [(median(lambda: plan.judge(released, applied, chamber, out=out), 5), median(kernel, 5)) for _ in range(9)]
    ours, native = (statistics.median(times) for times in zip(*pairs))
    print(f"{rows} rows of numbers: NumPy {rows / ours * 1e-6:.0f} Mrows/s, the library itself "
          f"{rows / native * 1e-6:.0f} Mrows/s, ratio {statistics.median(b / a for a, b in pairs):.2f}")


# --- 2

MIXED = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)|(\d+)")
LIMITS = {("30", "standard"): Fraction(2), ("30", "long"): Fraction(5, 2), ("24", "standard"): Fraction(7, 4)}


def read(text):
    match = MIXED.fullmatch(text)
    if match is None:
        raise ValueError(text)
    whole, num, den, alone = match.groups()
    return Fraction(int(alone)) if alone else int(whole or 0) + Fraction(int(num), int(den))


def judge_by_fractions(chamber, released, applied, pressure):
    """The least that is the same job: one spelling, three chambers, verdict and reasons."""
    size, stroke_class = (chamber[:-1], "long") if chamber.endswith("L") else (chamber, "standard")
    stroke = read(applied) - read(released)
    limit = LIMITS[size, stroke_class]
    reasons = []
    if not 90 <= Fraction(pressure) <= 100:
        reasons.append("pressure")
    if stroke < 0:
        return "undetermined", stroke, limit, limit - stroke, ["readings-swapped", *reasons]
    if stroke == 0:
        return "inoperative", stroke, limit, limit - stroke, ["no-movement", *reasons]
    reasons.append("over-limit" if stroke > limit else "at-limit" if stroke == limit else "within-limit")
    return "out-of-adjustment" if stroke > limit else "in-adjustment", stroke, limit, limit - stroke, reasons


def one_wheel_end():
    cases = [(chamber, f"2 {a}/16", f"4 {b}/16", "95") for chamber in ("30", "30L", "24") for a in (1, 3, 5) for b in (1, 7)]
    for case in cases:
        finding = rt.judge(*case[:3], pressure=case[3])
        verdict, stroke, limit, margin, _ = judge_by_fractions(*case)
        assert (finding.verdict, finding.applied_stroke, finding.limit, finding.margin) == (verdict, stroke, limit, margin)

    def ours():
        for chamber, released, applied, pressure in cases * 200:
            rt.judge(chamber, released, applied, pressure=pressure).verdict

    def theirs():
        for chamber, released, applied, pressure in cases * 200:
            judge_by_fractions(chamber, released, applied, pressure)

    pairs = [(median(ours, 3), median(theirs, 3)) for _ in range(REPEATS)]
    mine, fractions = (statistics.median(times) / len(cases) / 200 for times in zip(*pairs))
    ratio = statistics.median(b / a for a, b in pairs)
    print(f"one wheel end from text: {mine * 1e6:.2f} us, by fractions.Fraction {fractions * 1e6:.2f} us, ratio {ratio:.1f}")


# --- 3

SQL = """
with halves as (select chamber, {split} from yard)
select case when a - r < 0 then 'undetermined' when a = r then 'inoperative'
            when a - r > case chamber when '30' then 128 when '30L' then 160 else 112 end then 'out-of-adjustment'
            else 'in-adjustment' end as verdict from halves
"""


def sixty_fourths(column):
    """SQL: a mixed fraction of inches in sixty-fourths, a whole number."""
    part = f"string_split({column}, ' ')"
    last = f"{part}[-1]"
    return (f"(case when position('/' in {column}) = 0 then cast({column} as int) * 64 else "
            f"(case when len({part}) = 2 then cast({part}[1] as int) * 64 else 0 end) + "
            f"cast(string_split({last}, '/')[1] as int) * 64 // cast(string_split({last}, '/')[2] as int) end)")


def polars_length(pl, name):
    column = pl.col(name)
    whole = column.str.extract(r"^(\d+)(?: |$)").cast(pl.Int32).fill_null(0) * 64
    num = column.str.extract(r"(\d+)/").cast(pl.Int32).fill_null(0)
    den = column.str.extract(r"/(\d+)").cast(pl.Int32).fill_null(1)
    return whole + num * 64 // den


def polars_job(pl, frame):
    limit = pl.when(pl.col("chamber") == "30").then(128).when(pl.col("chamber") == "30L").then(160).otherwise(112)
    stroke = polars_length(pl, "applied") - polars_length(pl, "released")
    verdict = (pl.when(stroke < 0).then(pl.lit("undetermined")).when(stroke == 0).then(pl.lit("inoperative"))
               .when(stroke > limit).then(pl.lit("out-of-adjustment")).otherwise(pl.lit("in-adjustment")))
    return frame.select(verdict.alias("verdict"))["verdict"]


def pandas_length(column):
    parts = column.str.extract(r"^(?:(\d+)(?: |$))?(?:(\d+)/(\d+))?$")
    whole = parts[0].fillna("0").astype("int32") * 64
    return whole + parts[1].fillna("0").astype("int32") * 64 // parts[2].fillna("1").astype("int32")


def pandas_job(np, frame):
    limit = frame["chamber"].map({"30": 128, "30L": 160, "24": 112})
    stroke = pandas_length(frame["applied"]) - pandas_length(frame["released"])
    return np.select([stroke < 0, stroke == 0, stroke > limit], ["undetermined", "inoperative", "out-of-adjustment"],
                     "in-adjustment")


def texts():
    import numpy as np
    chance = np.random.default_rng(2)
    words = np.array([f"{n // 16} {Fraction(n % 16, 16)}" if n % 16 else f"{n // 16}" for n in range(96)])
    released = chance.integers(16, 48, ROWS)
    return {"chamber": np.array(["30", "30L", "24"])[chance.integers(0, 3, ROWS)], "released": words[released],
            "applied": words[released + chance.integers(0, 46, ROWS)]}


def million_rows():
    import duckdb
    import numpy as np
    import pandas as pd
    import polars as pl
    import pyarrow as pa
    table = pa.table(texts())
    frame, panda = pl.from_arrow(table), table.to_pandas()
    connection = duckdb.connect()
    yard = connection.from_arrow(table)
    sql = SQL.format(split=f"{sixty_fourths('released')} as r, {sixty_fourths('applied')} as a")
    jobs = {"DuckDB": lambda: yard.query("yard", sql).to_arrow_table()["verdict"],
            "polars": lambda: polars_job(pl, frame), "pandas": lambda: pandas_job(np, panda)}
    want = pa.table(rt.judge_columns(table))["verdict"].cast(pa.string()).to_pylist()
    for name, job in jobs.items():
        got = job()
        assert (got.to_pylist() if name == "DuckDB" else list(got)) == want, name
    rounds = [{name: median(job, 1) for name, job in {"rodtravel": lambda: rt.judge_columns(table), **jobs}.items()}
              for _ in range(REPEATS)]
    mine = statistics.median(times["rodtravel"] for times in rounds)
    print(f"a million rows of text: rodtravel {mine * 1e3:.0f} ms on one thread, reasons and all")
    for name in jobs:
        print(f"    {name:8} {statistics.median(times[name] for times in rounds) * 1e3:6.0f} ms   ratio "
              f"{statistics.median(times[name] / times['rodtravel'] for times in rounds):.1f}")


if __name__ == "__main__":
    for job in (lambda: numbers(sys.argv[1], 4_000_000), lambda: numbers(sys.argv[1], 100_000), one_wheel_end,
                million_rows):
        try:
            job()
        except ImportError as error:
            print(f"left out: {error}")
