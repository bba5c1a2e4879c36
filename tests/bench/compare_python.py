# SPDX-License-Identifier: Apache-2.0
"""The Python package beside other packages on columns of texts, and its scalar judge beside fractions.Fraction.

    python3 compare_python.py FOLDER ROWS REPEATS [WORD]

compare.py runs this in a process of its own and makes its table of the lines of JSON. FOLDER has the tables of
rivals.py; REPEATS 0 compares answers only; WORD selects contests by their titles. Exit status 1: answers differ."""
import json
import re
import sys
import time
from fractions import Fraction
from functools import lru_cache

import files
import rivals
import rodtravel as rt

COLUMNS = ["chamber", "stroke_class", "released", "applied", "unit"]


def make_table(form, count):
    import pyarrow as pa
    kept = [form.head.index(name) for name in COLUMNS if name in form.head]
    columns = zip(*([row[place] for place in kept] for row in files.make_rows(form, count)))
    return pa.table({name: pa.array(cells, pa.string()) for name, cells in zip(COLUMNS, columns)})


# --- The job, and its answer as verdicts and strokes -----------------------------------------------------------

def rodtravel_columns(task, table):
    return lambda: rt.judge_columns(table, default_unit=task.form.default_unit)


judge_of = lru_cache(maxsize=None)(rt.Judge)


def frame_maker(kind, convert):
    """Frames of a kind of table, made of the Arrow table before."""
    def rodtravel_frame(task, table):
        judge, given = judge_of(unit=task.form.default_unit), convert(table)
        return lambda: judge.frame(given)
    return f"rodtravel frame, {kind}", rodtravel_frame


def polars_of(table):
    import polars as pl
    return pl.from_arrow(table)


FRAMES = {"pyarrow": lambda table: table, "polars": polars_of, "pandas": lambda table: table.to_pandas()}


def duckdb_columns(task, table):
    base = rivals.open_duckdb(task)
    base.register("yard", table)
    query = f"SELECT stroke, {rivals.SQL_VERDICT} AS verdict FROM ({rivals.sql_strokes(task, 'yard')})"
    return lambda: base.sql(query).to_arrow_table()


def polars_columns(task, table):
    import polars as pl
    query = rivals.polars_query(task, pl.from_arrow(table).lazy()).select("stroke", "verdict")
    return query.collect


def pandas_columns(task, table):
    import numpy as np
    import pandas as pd
    frame = table.to_pandas()
    limits = pd.read_csv(task.limits, names=["chamber", "stroke_class", "steps"])
    marks = pd.read_csv(task.marks, names=["mark", "steps"], index_col="mark", dtype={"mark": str})["steps"]

    def number(name):
        if task.tape:
            return frame[name].map(marks)
        cells = frame[name].str.removesuffix(task.form.suffix) if task.form.suffix else frame[name]
        return cells.astype("float64")

    def work():
        factor = task.factor(lambda mm, inch: np.where(frame["unit"] == "mm", mm, inch))
        stroke = ((number("applied") - number("released")) * (1 if task.tape else factor)).round()
        steps = frame[["chamber", "stroke_class"]].merge(limits, how="left")["steps"]
        verdict = np.select([stroke < 0, stroke == 0, stroke > steps],
                            ["undetermined", "inoperative", "out-of-adjustment"], "in-adjustment")
        return pd.DataFrame({"stroke": stroke, "verdict": verdict})
    return work


def arrow_of(answer):
    import pyarrow as pa
    table = pa.Table.from_pandas(answer) if type(answer).__module__.startswith("pandas") else pa.table(answer)
    return {name: table[name].to_pylist() for name in table.column_names}


def has_stroke(name, answer, stroke, row, form):
    """Whether a stroke in steps of the form is that of our answer. Columns have none that is no whole number of 5 nm,
    and none of swapped readings; a frame has doubles."""
    if "columns" in name:
        ours = answer["stroke"][row]
        return ours is None or ours == max(stroke, 0) * form.step * rt.UNITS_PER_INCH
    ours = answer[f"applied_stroke_{form.default_unit}"][row]
    return stroke < 0 if ours is None else abs(ours - stroke / form.factor(form.default_unit)) < 1e-9


def same_answers(title, answers, form):
    """All programs against the first rival, row by row."""
    answers = {name: arrow_of(answer) for name, answer in answers.items()}
    strokes, verdicts = (answers["duckdb" if "duckdb" in answers else next(reversed(answers))][name]
                         for name in ("stroke", "verdict"))
    good = True
    for name, answer in answers.items():
        same = (lambda row: has_stroke(name, answer, strokes[row], row, form)) if name.startswith("rodtravel") else (
            lambda row: answer["stroke"][row] == strokes[row])
        wrong = [row for row in range(len(strokes)) if answer["verdict"][row] != verdicts[row] or not same(row)]
        if wrong or len(answer["verdict"]) != len(strokes):
            print(f"{title}: {name} differs in {len(wrong)} rows, first {wrong[:3]}", file=sys.stderr)
            good = False
    if good:
        print(f"columns, {title}: {len(strokes)} rows, the same from {', '.join(answers)}", file=sys.stderr)
    return good


# --- One wheel end -------------------------------------------------------------------------------------------

MIXED = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)|(\d+)")
LIMITS = {("30", "standard"): Fraction(2), ("30", "long"): Fraction(5, 2), ("24", "standard"): Fraction(7, 4)}
CASES = [(chamber, f"2 {a}/16", f"4 {b}/16", "95")
         for chamber in ("30", "30L", "24") for a in (1, 3, 5) for b in (1, 7)]


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


def same_findings():
    for case in CASES:
        finding = rt.judge(*case[:3], psi=case[3])
        verdict, stroke, limit, margin, _ = judge_by_fractions(*case)
        if (finding.verdict, finding.applied_stroke, finding.limit, finding.margin) != (verdict, stroke, limit, margin):
            print(f"fractions differ: {case}", file=sys.stderr)
            return False
    return True


def judge_cases():
    for chamber, released, applied, pressure in CASES * 200:
        rt.judge(chamber, released, applied, psi=pressure).verdict


def judge_cases_by_fractions():
    for chamber, released, applied, pressure in CASES * 200:
        judge_by_fractions(chamber, released, applied, pressure)


# --- Contests ------------------------------------------------------------------------------------------------

def in_turns(turns):
    """Processor seconds of each program, one after the other and then all again."""
    times = {}
    for contest in turns:
        for name, run in contest.items():
            begin = time.process_time()
            run()
            times.setdefault(name, []).append(time.process_time() - begin)
    return times


def tell(title, goal, rows, times, ours="rodtravel"):
    kept = {name: each for name, each in times.items() if name == ours or not name.startswith("rodtravel")}
    print(json.dumps({"title": title, "goal": goal, "rows": rows, "times": kept}), flush=True)


MAKERS = {"rodtravel columns": rodtravel_columns, **dict(frame_maker(*each) for each in FRAMES.items()),
          "duckdb": duckdb_columns, "polars": polars_columns, "pandas": pandas_columns}


def compare_columns(name, folder, rows, repeats):
    """Each turn has rows of its own: what a plan keeps helps with texts that come again, and with no others."""
    form, task = files.FORMS[name], rivals.Task("rows", name, folder, None, None, 1)
    makers = {maker: make for maker, make in MAKERS.items() if maker == "rodtravel columns" or
              not rivals.missing(maker.rpartition(", ")[2])}
    table = make_table(form, rows * (repeats + 1))
    slices = [table.slice(turn * rows, rows).combine_chunks() for turn in range(repeats + 1)]

    def contests(some):
        """Tables are converted in their own turn, or the processor's caches would hold those of some programs alone."""
        return ({maker: make(task, each) for maker, make in makers.items()} for each in some)

    good = same_answers(form.title, {one: run() for one, run in next(contests(slices)).items()}, form)
    if good and repeats:
        times = in_turns(contests(slices[1:]))
        tell(f"`judge_columns`, {form.title}", 3, rows, times, "rodtravel columns")
        for kind in FRAMES:
            if f"rodtravel frame, {kind}" in times:
                tell(f"`Judge.frame` of {kind}, {form.title}", 3, rows, times, f"rodtravel frame, {kind}")
    return good


def compare_scalar(repeats):
    good = same_findings()
    if good and repeats:
        times = in_turns([{"rodtravel": judge_cases, "fractions": judge_cases_by_fractions}] * repeats)
        tell("one wheel end in Python", 10, len(CASES) * 200, times)
    return good


def main(folder, rows, repeats, only=""):
    good = True
    for name, form in files.FORMS.items():
        if only in f"`judge_columns`, {form.title}":
            good &= compare_columns(name, folder, int(rows), int(repeats))
    if only in "one wheel end in Python":
        good &= compare_scalar(int(repeats))
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
