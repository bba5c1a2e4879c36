# SPDX-License-Identifier: Apache-2.0
"""A Judge: the answers of judge_row for every row of every kind of table, numbers with a division, strokes alone, streams.
Needs the standard library alone; what is about a package that is not installed is left out."""
import os
import pickle
import random
import tempfile
import threading
import warnings
from datetime import date, datetime, timezone
from decimal import Decimal
from fractions import Fraction

import rodtravel as rt
import tap

CHANCE = random.Random(7)
CELLS = {"chamber": ["30", "24L", "36", "?", None, "", "30.0", "bolt C"],
         "released": ["2", "2 1/8", "31/8", "50 mm", "2-Jan", None, " ", "1.7777", "x" * 300],
         "applied": ["4", "4 1/4", "41/8", "106 mm", "x", "2 1/8", "4\x00", "3.9999"],
         "stroke_class": [None, "long", "standard", "?"], "rated_stroke": [None, "3", "0", "2 1/3"],
         "marked_limit": [None, "2", "1 7/9"], "psi": [None, "95", "0", "655 kPa", "?"], "psi_after": [None, "95", "50"],
         "division": ["1/16", None, "0"], "date": [None, "2021-10-13", "06/05/2024", "?"], "unit": [None, "in", "mm"],
         "engine": [None, "off", "on"], "spring_brake": [None, "released", "on"], "drum": [None, "hot"]}
OWN = "family,size,class,limit\nclamp,30,standard,1 7/8\n"
SMALL = {"Chamber": ["30", "30L", None], "Released": ["2 1/8"] * 3, "Applied": ["4 1/4", "4 1/4", "4"]}
LINES = [("out-of-adjustment", 2.125, 2.0, -0.125, 106.25), ("in-adjustment", 2.125, 2.5, 0.375, 85.0),
         ("undetermined", 1.875, None, None, None)]


np, pd, pl, pa, duckdb = (tap.package(name) for name in ("numpy", "pandas", "polars", "pyarrow", "duckdb"))


def table_of(rows):
    plain = [{name: CHANCE.choice(cells) for name, cells in CELLS.items()} for _ in range(rows)]
    for row in plain[::2]:
        for name in ("unit", "engine", "spring_brake", "drum", "psi_after", "date", "rated_stroke"):
            row[name] = None
    plain[0].update(division="1/16", unit=None, engine=None, spring_brake=None, drum=None)  # what the first row says is told
    return {name: [row[name] for row in plain] for name in CELLS}


def on_a_column(length):
    return length if length is not None and rt.UNITS_PER_INCH % length.denominator == 0 else None


def test_every_row_like_judge_row():
    """Verdict, reasons, stroke, limit and margin; and the sentences, which hold the figures of the row."""
    table = table_of(2500)
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    for _ in range(2):
        answers = judge(table)
    sentences = judge.frame(table, sentences=True)["sentences"]
    for row in range(2500):
        finding, _ = rt.judge_row(**{name: cells[row] for name, cells in table.items()}, date_order="day-first",
                                  default_date="2021-10-14")
        answer = answers[row]
        assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons), row
        assert answer.applied_stroke == on_a_column(finding.applied_stroke), row
        assert answer.limit == on_a_column(finding.limit), row
        if answer.applied_stroke is not None and answer.limit is not None:
            assert answer.margin == finding.margin and answers.margin[row] == finding.margin * rt.UNITS_PER_INCH, row
        else:
            assert answer.margin is None and answers.margin[row] == rt.NO_MARGIN, row
        assert sentences[row] == "; ".join(finding.sentences), row
    assert any(answer.limit is None for answer in answers) and sum(answers.counts().values()) == 2500


def test_a_judge_is_a_value():
    judge = rt.Judge("us-fmcsr", limits=OWN, psi=95, columns={"released": "Rest"})
    again = pickle.loads(pickle.dumps(judge))
    assert again == judge and hash(again) == hash(judge) and again != rt.Judge()
    table = {"Chamber": ["30 standard"], "rest": ["2"], "applied": ["3 15/16"]}
    for each in (judge, again):
        answer = each(table)[0]
        assert str(answer.verdict) == "out-of-adjustment" and answer.limit == Fraction(15, 8)
    tap.refused(AttributeError, setattr, judge, "rules", None)
    with tempfile.TemporaryDirectory() as where:
        path = os.path.join(where, "yard.csv")
        with open(path, "w", encoding="utf-8") as file:
            file.write(OWN)
        from pathlib import Path
        assert rt.Judge(limits=Path(path)).rules.id == "yard"
    assert rt.Judge(limits=rt.load_rules(OWN)).rules == rt.Judge(limits=OWN).rules
    for words in ({"unit": "yards"}, {"psi": "lots"}, {"division": "0"}, {"rules": "atlantis"}, {"limits": "x"}):
        tap.refused(rt.Error, rt.Judge, **words)
    for words in ({"psi": 95.0}, {"division": 0.1}, {"columns": {"kammer": "x"}}):
        tap.refused(TypeError, rt.Judge, **words)
    tap.refused(TypeError, rt.Judge(), {"chamber": ["30"], "released": ["2"]})
    tap.refused(TypeError, rt.Judge(), SMALL, kammer=["30"])


def test_threads_share_a_judge():
    judge = rt.Judge(psi=95)
    table = table_of(300)
    want = judge(table)
    got = []
    threads = [threading.Thread(target=lambda: got.extend(judge(table) == want for _ in range(30))) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert got == [True] * 120


def warned(function, *args, **words):
    """What it gives, and its warnings, which name this file as their place."""
    with warnings.catch_warnings(record=True) as caught:
        warnings.simplefilter("always")
        made = function(*args, **words)
    assert all(each.filename == __file__ for each in caught), [each.filename for each in caught]
    return made, [str(each.message) for each in caught]


def test_headings_again_and_again():
    """What was chosen for the headings of one table holds for the next, warnings included."""
    judge = rt.Judge()
    table = {**SMALL, "psi reading": ["95"] * 3, "unit": ["T-104"] * 3}
    first = warned(judge, table)
    assert len(first[1]) == 2 and warned(judge, table) == first
    assert warned(rt.judge_columns, table) == first
    for wanted in ({"psi": "psi reading", "unit": ""}, {"psi": "", "unit": ""}):
        answers, said = warned(judge, table, **wanted)
        assert not said and ("pressure-not-recorded" in answers[0].reasons) == (wanted["psi"] == "")
    assert warned(judge, table) == first


# --- Numbers

def verdicts(answers):
    return [str(answer.verdict) for answer in answers]


def test_floats_need_a_division():
    floats = {"chamber": ["30"] * 4, "released": [2.0, 2.0625, 2.1, float("nan")], "applied": [4.0, 4.125, 4.0, 4.0]}
    message = str(tap.refused(TypeError, rt.Judge(), floats))
    assert "division='1/16'" in message and "released" in message, message
    answers, said = warned(rt.Judge(division="1/16", psi=95), floats)
    assert verdicts(answers) == ["in-adjustment", "out-of-adjustment", "undetermined", "undetermined"]
    assert "released-unreadable" in answers[2].reasons and "released-missing" in answers[3].reasons
    assert len(said) == 1 and "2.1" in said[0] and "1/16" in said[0], said
    tap.refused(TypeError, rt.judge_columns, floats)
    assert "psi_division" in str(tap.refused(TypeError, rt.Judge(), {**SMALL, "psi": [95.0] * 3}))
    answers, said = warned(rt.Judge(psi_division=1), {**SMALL, "psi": [95.0, float("nan"), 94.5]})
    assert "pressure-not-recorded" in answers[1].reasons and "other-unreadable" in answers[2].reasons and len(said) == 1


def test_floats_are_the_numbers_that_were_read():
    """Every multiple of a division, by the float nearest to it and by sums with errors, is what its text is."""
    for division, unit, count in (("1/16", "in", 380), ("1/64", "in", 1500), ("0.1", "mm", 6000), ("0.001", "in", 23000)):
        step = Fraction(division)
        exact = [step * n for n in range(count)]
        near = [float(value) if n % 3 else float(step) * n for n, value in enumerate(exact)]
        judge = rt.Judge(division=division, unit=unit, psi=95)
        rows = {"chamber": ["30"] * count, "released": [0] * count}
        answers, said = warned(judge, {**rows, "applied": near})
        assert not said and answers == judge({**rows, "applied": exact}), division
        off, said = warned(judge, {**rows, "applied": [value + float(step) / 3 for value in near]})
        assert all("applied-unreadable" in answer.reasons for answer in off) and len(said) == 1


def test_exact_cells():
    judge = rt.Judge(unit="mm", psi=95)
    table = {"chamber": [30, Decimal("30"), "30"], "released": [54, Decimal("53.9"), Fraction(107, 2)],
             "applied": ["105", None, Decimal("105.25")], "date": [date(2024, 6, 5), datetime(2024, 6, 5, 8), None],
             "engine": [True, False, None]}
    answers = judge(table)
    assert [answer.applied_stroke for answer in answers] == [Fraction(510, 254), None, Fraction(5175, 2540)]
    assert verdicts(answers)[0] == "undetermined" and "engine-running" in answers[0].reasons
    assert "date-unreadable" not in {str(reason) for answer in answers for reason in answer.reasons}
    for name, cells in (("date", [20240605] * 3), ("drum", [1, 2, 3]), ("released", [True] * 3), ("chamber", [b"30"] * 3),
                        ("date", [datetime(2024, 6, 5, tzinfo=timezone.utc)] * 3), ("unit", [1, 2, 3])):
        tap.refused(TypeError, judge, {**table, name: cells})
    odd, said = warned(judge, {**table, "released": [-1, 10**9, 2**70]})
    assert verdicts(odd) == ["undetermined"] * 3 and len(said) == 1 and str(2**70) in said[0]


def test_strokes_alone():
    judge = rt.Judge(psi=95)
    strokes = ["2", "2 1/8", "0", "51 mm", "x", None]
    table = {"chamber": ["30"] * 6, "Travel": strokes, "released": ["9"] * 6}
    answers = judge(table, stroke="travel")
    assert answers == judge(chamber=["30"] * 6, released=["0"] * 6, applied=strokes)
    assert answers == judge({"chamber": ["30"] * 6}, stroke=strokes)
    assert verdicts(answers) == ["in-adjustment", "out-of-adjustment", "inoperative", "out-of-adjustment", "undetermined",
                                 "undetermined"]
    tap.refused(TypeError, judge, table, stroke="Travel", applied=strokes)
    tap.refused(TypeError, judge, table, stroke="no such heading")


# --- Frames

def lines(columns):
    """The rows of a frame that is given as lists."""
    names = ("verdict", "applied_stroke_in", "limit_in", "margin_in", "used_percent")
    clean = [[None if cell is None or cell != cell else cell for cell in columns[name]] for name in names]
    assert [str(cell).split()[0] for cell in columns["reasons"]] == ["over-limit", "within-limit", "pressure-not-recorded"]
    assert str(columns["words"][1]) == "the stroke is within the limit; no pressure was recorded"
    return list(zip(*clean))


def test_frame_of_lists():
    frame = rt.Judge().frame(SMALL)
    assert lines(frame) == LINES and "sentences" not in frame
    french = rt.Judge().frame(SMALL, sentences=rt.catalogue("fr"))
    assert french["sentences"][0].startswith("la course"), french["sentences"][0]
    assert list(rt.Judge(unit="mm").frame({"chamber": ["30"], "released": ["50"], "applied": ["100"]}))[:4] == [
        "applied_stroke_mm", "limit_mm", "margin_mm", "used_percent"]


def test_signs_of_numbers_are_exact():
    """One unit of a column over the limit, or within it, is seen in the numbers."""
    plan = rt.Plan(psi=95)
    from array import array
    limit = 2 * rt.UNITS_PER_INCH
    answers = plan.judge(array("i", [0] * 3), array("i", [limit - 1, limit, limit + 1]), bytes([plan.add("30 standard")] * 3))
    from rodtravel._frames import numbers_of
    used, margin = (list(numbers_of(answers, name)[0]) for name in ("used", "margin"))
    assert used[0] < 100 == used[1] < used[2] and margin[0] > 0 == margin[1] > margin[2]


def pandas_frame():
    frame = pd.DataFrame(SMALL, index=[7, 3, 5])
    judged = rt.Judge().frame(frame)
    assert list(judged.index) == [7, 3, 5] and lines({name: list(judged[name]) for name in judged}) == LINES
    assert list(frame.join(judged).loc[[3]]["verdict"]) == ["in-adjustment"]
    kept = frame[frame.index != 3]
    assert list(rt.Judge().frame(kept)["verdict"]) == ["out-of-adjustment", "undetermined"]
    floats = pd.DataFrame({"chamber": [30, 30, 24], "released": [2.0, None, 2.0625], "applied": [4.0, 4.0, 3.75],
                           "psi": [95, None, 60], "date": pd.to_datetime(["2024-06-05", None, "2014-01-02"])})
    assert verdicts(rt.Judge(division="1/16", psi_division=1)(floats)) == ["in-adjustment", "undetermined", "undetermined"]
    nullable = floats.convert_dtypes()
    assert rt.Judge(division="1/16", psi_division=1)(nullable) == rt.Judge(division="1/16", psi_division=1)(floats)


def polars_frame():
    frame = pl.DataFrame(SMALL)
    judged = rt.Judge().frame(frame)
    assert lines(judged.with_columns(pl.selectors.categorical().cast(pl.String)).to_dict(as_series=False)) == LINES
    lazy = frame.lazy().with_columns(other=pl.lit(1))
    assert rt.Judge()(lazy) == rt.Judge()(frame)
    later = rt.Judge().frame(lazy, sentences=True)
    assert isinstance(later, pl.LazyFrame) and later.select("margin_in").collect()["margin_in"].to_list()[:2] == [-0.125, 0.375]
    assert [len(part) for part in rt.Judge().batches(lazy)] and sum(map(len, rt.Judge().batches(lazy))) == 3
    numbers = pl.DataFrame({"chamber": [30, 24], "released": [2.0, 2.5], "applied": pl.Series([4, 5], dtype=pl.Int32),
                            "date": [date(2024, 6, 5), None]})
    assert verdicts(rt.Judge(division="1/8", psi=95)(numbers)) == ["in-adjustment", "out-of-adjustment"]
    decimals = pl.DataFrame({"chamber": ["30"], "released": ["2.125"], "applied": ["4.125"]}).with_columns(
        pl.col("released", "applied").cast(pl.Decimal(10, 3)))
    assert rt.Judge()(decimals)[0].applied_stroke == 2


def pyarrow_frame():
    table = pa.table(SMALL)
    assert lines(rt.Judge().frame(table).to_pydict()) == LINES
    floats = pa.table({"chamber": pa.array([30, 30], pa.int64()), "released": pa.array([2.0, None]),
                       "applied": pa.array([4.0625, 4.0], pa.float32()), "date": pa.array([date(2024, 6, 5)] * 2)})
    judge = rt.Judge(division="1/16", psi=95)
    assert verdicts(judge(floats)) == ["out-of-adjustment", "undetermined"]
    assert judge(floats.to_reader()) == judge(floats)
    exact = floats.set_column(1, "released", pa.array([Decimal("2.000"), None], pa.decimal128(6, 3)))
    assert judge(exact) == judge(floats)


def duckdb_frame():
    with duckdb.connect() as base:
        query = base.sql("SELECT * FROM (VALUES ('30', '2 1/8', '4 1/4'), ('30L', '2 1/8', '4 1/4'), (NULL, '2 1/8', '4')) "
                         "AS t(chamber, released, applied)")
        assert sum(map(len, rt.Judge().batches(query))) == 3
        if pa:
            assert lines(rt.Judge().frame(query).to_pydict()) == LINES


def numpy_columns():
    count = 1000
    table = {"chamber": np.full(count, 30), "released": np.full(count, 2.0), "applied": np.arange(count) % 64 / 16 + 2,
             "date": np.full(count, "2024-06-05", dtype="M8[D]")}
    judge = rt.Judge(division="1/16", psi=95)
    answers = judge(table)
    assert answers[32].margin == 0 and answers[33].margin == Fraction(-1, 16) and answers.counts()[rt.Verdict.IN_ADJUSTMENT]
    nanoseconds = {**table, "date": table["date"].astype("M8[ns]")}
    assert judge(nanoseconds) == answers and judge({**table, "applied": table["applied"].astype(np.float32)}) == answers


# --- Streams

class Counted:
    """Batches as they are asked for."""

    def __init__(self, parts):
        self.parts, self.given = parts, 0

    def __iter__(self):
        for part in self.parts:
            self.given += 1
            yield part


def test_batches_are_taken_one_by_one():
    judge = rt.Judge(psi=95)
    tables = [table_of(50) for _ in range(6)]
    source = Counted(tables)
    walk = judge.batches(source)
    for number, answers in enumerate(walk, 1):
        assert source.given == number and answers == judge(tables[number - 1])
    assert number == 6 and list(judge.batches([])) == []
    assert [len(part) for part in judge.batches(SMALL)] == [3]


def arrow_stream():
    table = pa.table(table_of(1000)).select(["chamber", "released", "applied", "psi", "date"])
    taken = []

    def parts():
        for batch in table.to_batches(max_chunksize=100):
            taken.append(batch.num_rows)
            yield batch

    judge = rt.Judge()
    reader = pa.RecordBatchReader.from_batches(table.schema, parts())
    walk = judge.batches(reader)
    first = next(walk)
    assert len(first) == 100 and len(taken) <= 2, taken
    rest = list(walk)
    assert [answer for part in (first, *rest) for answer in part] == list(judge(table))
    assert list(judge.batches(pa.RecordBatchReader.from_batches(table.schema, []))) == []
    broken = pa.RecordBatchReader.from_batches(table.schema, (1 / 0 for _ in range(1)))
    tap.refused((TypeError, ZeroDivisionError), list, judge.batches(broken))
    tap.refused(TypeError, list, judge.batches(pa.chunked_array([["30"]])))


if __name__ == "__main__":
    packages = {"pandas_frame": pd and np, "polars_frame": pl, "pyarrow_frame": pa, "duckdb_frame": duckdb and pa,
                "numpy_columns": np, "arrow_stream": pa}
    for name, package in packages.items():
        if package:
            globals()["test_" + name] = globals()[name]
    tap.run(dict(globals()))
