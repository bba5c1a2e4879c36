# SPDX-License-Identifier: Apache-2.0
"""A Judge: the answers of judge_row for every row of every kind of table, numbers with a division, strokes alone, streams.
Needs the standard library alone; what is about a package that is not installed is left out."""
import collections
import os
import pickle
import random
import tempfile
import threading
import warnings
from array import array
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


def on_a_column(length, per_inch):
    return length if length is not None and per_inch % length.denominator == 0 else None


def same_as_judge_row(judge, table):
    """Verdict, reasons, stroke, limit and margin of every row; how many rows have a stroke."""
    answers = judge(table)
    strokes = 0
    for row, cells in enumerate(zip(*table.values())):
        finding, _ = rt.judge_row(**dict(zip(table, cells)), date_order="day-first", default_date="2021-10-14")
        answer = answers[row]
        assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons), cells
        assert answer.applied_stroke == on_a_column(finding.applied_stroke, rt.PARTS_PER_INCH), cells
        assert answer.limit == on_a_column(finding.limit, rt.UNITS_PER_INCH), cells
        if answer.applied_stroke is not None and answer.limit is not None:
            assert answer.margin == finding.margin, cells
        else:
            assert answer.margin is None, cells
        units = None if answer.margin is None or answers.stroke[row] == rt.NO_STROKE else answer.margin * rt.UNITS_PER_INCH
        assert answers.margin[row] == (rt.NO_MARGIN if units is None else units), cells
        strokes += answer.applied_stroke is not None
    return strokes


def drawn_reading():
    """A reading as people write it, seldom twice the same."""
    number = CHANCE.randrange(10**CHANCE.randrange(1, 7))
    return CHANCE.choice([f"{number % 8}.{number}", f"{number % 200}.{number % 10} mm", f"{number % 8} {number % 64}/64",
                          f"{number % 8}-{number % 16}/16\"", f"{number % 12}", f"{number / 1000} cm"])


def test_every_row_like_judge_row():
    """And the sentences, which hold the figures of the row."""
    table = table_of(2500)
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    for _ in range(2):
        same_as_judge_row(judge, table)
    sentences = judge.frame(table, sentences=True)["sentences"]
    for row in range(2500):
        finding, _ = rt.judge_row(**{name: cells[row] for name, cells in table.items()}, date_order="day-first",
                                  default_date="2021-10-14")
        assert sentences[row] == "; ".join(finding.sentences), row
    answers = judge(table)
    assert any(answer.limit is None for answer in answers) and sum(answers.counts().values()) == 2500


def test_many_rows_like_judge_row():
    """JUDGE_ROWS, 10000 if not given: readings that differ, and a new table for each block."""
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    rows = int(os.environ.get("JUDGE_ROWS", "10000"))
    strokes = 0
    for _ in range(0, rows, 2500):
        table = table_of(2500)
        for name in ("released", "applied"):
            table[name][::2] = [drawn_reading() for _ in range(1250)]
        strokes += same_as_judge_row(judge, table)
    assert strokes > rows // 100


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


def test_errors_name_what_the_caller_named():
    """By the caller's own word, whichever default of a table it is."""
    columns = {"chamber": ["30"], "released": ["2"], "applied": ["4"]}
    for function, words in ((rt.Judge, ("date", "psi", "division", "psi_division")),
                            (rt.Plan, ("date", "psi", "psi_after")),
                            (lambda **given: rt.judge_columns(columns, **given), ("default_date", "default_psi"))):
        for name in words:
            assert tap.refused(rt.Error, function, **{name: "x"}).field == name, name
            for wrong in (b"5", 0.5):
                assert str(tap.refused(TypeError, function, **{name: wrong})).startswith(name + " "), name
    for name in ("division", "psi_division"):
        assert tap.refused(rt.Error, rt.Judge, **{name: 0}).field == name


def test_wrong_calls_are_sentences():
    """What beginners try: each is told what is wanted."""
    judge = rt.Judge(psi=95)
    table = {**SMALL, "Unit No": ["T-1"] * 3}
    found, answers = judge.vehicles(table, by="Unit No"), judge(table)
    kinds = {TypeError: [
        (judge, ("fleet.csv",), {}, "not the name of a file"), (judge.frame, (os,), {}, "not module"),
        (judge.vehicles, (table, None), {}, "by is the heading that names the vehicle"),
        (judge.vehicles, (table, b"Unit No"), {}, "not bytes"), (judge.vehicles, (table, 5), {}, "not int"),
        (judge.vehicles, (table, [5]), {}, "by is the heading of a column, a text, not int"),
        (judge.vehicles, (table, "Unit"), {}, "its columns are 'Chamber', 'Released', 'Applied', 'Unit No'"),
        (judge.vehicles, (table, "Unit No"), {"position": 5}, "position is the heading of a column"),
        (judge.vehicles, ({"unit_no": ["1"], "released": ["2"], "applied": ["4"]}, "unit_no"), {}, "a column chamber is needed; "
         "its columns are 'unit_no', 'released', 'applied'"),
        (judge, ({str(number): ["x"] for number in range(30)},), {}, "'19' and others"),
        (judge, (), {}, "a column chamber is needed"), (judge.frame, (table,), {"sentences": 5}, "not int"),
        (lambda: list(judge.batches(5)), (), {}, "batches come from"),
        (lambda: list(judge.batches("fleet.csv")), (), {}, "not the name of a file"),
        (rt.Judge, (), {"limits": 5}, "limits are the text of a table"), (rt.Judge, (), {"columns": 5}, "columns is a mapping"),
        (rt.Judge, (), {"columns": {"psi": 5}}, "the heading of psi is text, not int"),
        (found.__getitem__, ("T-1",), {}, "a row is a number"), (answers.__getitem__, ("x",), {}, "a row is a number")],
        rt.Error: [(rt.Judge, (), {"limits": "own.csv"}, "its path is a pathlib.Path"),
                   (rt.Judge, (), {"date": "yesterday"}, "date, column 1"),
                   (judge.frame, (table,), {"sentences": "klingon"}, "no catalogue of 'klingon'")],
        IndexError: [(found.__getitem__, (9,), {}, "there are 1 inspections"), (answers.__getitem__, (-4,), {}, "there are 3 rows")]}
    for kind, calls in kinds.items():
        for function, args, words, says in calls:
            said = str(tap.refused(kind, function, *args, **words))
            assert says in said, (says, said)
    assert "pathlib" not in str(tap.refused(rt.Error, rt.Judge, limits="a,b\n1,2\n"))
    assert rt.Judge(columns=None) == rt.Judge(columns={}) and answers[-1] == answers[2]
    column = type("Series", (), {"dtype": "str", "__arrow_c_stream__": None})()
    assert "this is one column" in str(tap.refused(TypeError, judge, column))

    class Frame:
        """As one of pandas is without pyarrow."""
        columns = [*table]
        __getitem__ = table.__getitem__

        def __arrow_c_stream__(self, _schema=None):
            raise ImportError("pyarrow")
    assert list(judge.batches(Frame())) == [answers] == list(judge.batches([Frame()]))
    french = judge.frame(table, sentences="fr")["sentences"]
    assert french == judge.frame(table, sentences=rt.catalogue("fr"))["sentences"] != judge.frame(table, sentences=True)[
        "sentences"]


def test_sets_of_reasons():
    """Numbered in the order of their first rows, and counted, however many there are."""
    from rodtravel import _rodtravel as low
    chance = random.Random(7)
    for sets, rows in (([], 0), ([0], 3), ([2**64 - 1, 0, 1 << 40], 50), (range(64), 500), (range(65), 500),
                       ([chance.getrandbits(64) for _ in range(3000)], 9000), ([n << 50 for n in range(2000)], 9000)):
        cells = [chance.choice(sets) for _ in range(rows)]
        numbers, found = low.answer_sets(memoryview(array("Q", cells)))
        assert found == tuple(collections.Counter(cells).items())
        assert [found[number][0] for number in memoryview(numbers).cast("i")] == cells
    tap.refused(TypeError, low.answer_sets, None)


def test_least_margin():
    answers = rt.Judge(psi=95)(table_of(500))
    margins = [answer.margin for answer in answers if answer.margin is not None]
    assert answers.summary().least_margin == min(margins) < 0
    assert rt.Judge()({**SMALL, "chamber": ["?"] * 3}, chamber=["?"] * 3).summary().least_margin is None
    over = rt.Judge(psi=95)({"chamber": ["30"] * 2, "released": ["0"] * 2, "applied": ["2", "1"]}).summary()
    assert over.least_margin == 0


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
    used, margin = (list(numbers_of(answers, name)) for name in ("used", "margin"))
    assert used[0] < 100 == used[1] < used[2] and margin[0] > 0 == margin[1] > margin[2]


def test_strokes_of_six_decimals():
    """Finer than a unit of columns, and exact all the same; ten decimals are no reading."""
    cells = {"chamber": ["30 standard"] * 4, "released": ["1.123457", "1.000001", "30.000001 mm", "1.0000000001"],
             "applied": ["3.123457", "3.000003", "80.810001 mm", "3"]}
    frame = rt.Judge(psi=95).frame(cells)
    strokes = [Fraction(2), Fraction("2.000002"), Fraction("50.81") / Fraction("25.4")]
    assert frame["applied_stroke_in"] == [*map(float, strokes), None]
    assert frame["margin_in"] == [float(2 - stroke) for stroke in strokes] + [None]
    assert frame["used_percent"] == [float(50 * stroke) for stroke in strokes] + [None]
    assert frame["verdict"] == ["in-adjustment", *["out-of-adjustment"] * 2, "undetermined"]
    assert frame["margin_in"][1] < 0 and frame["used_percent"][1] > 100
    from rodtravel._frames import numbers_of
    for name, column in zip(("stroke", "limit", "margin", "used"), frame.values()):
        assert [None if cell != cell else cell for cell in numbers_of(rt.Judge(psi=95)(cells), name)] == column
    cells["released"][2] = "1"  # the last two wait for each other: no row is another's
    assert rt.Judge(psi=95).frame({name: column * 700 for name, column in cells.items()})["applied_stroke_in"] == (
        [*map(float, strokes[:2]), float(Fraction("80.810001") / Fraction("25.4") - 1), None] * 700)


def frame_of(answers):
    """The columns that a frame has of answers, worked out row by row."""
    def share(answer):
        return 100 * answer.applied_stroke / answer.limit if answer.margin is not None and answer.limit else None
    made = {name: [None if (cell := number(answer)) is None else float(cell) for answer in answers] for name, number in (
        ("applied_stroke_in", lambda answer: answer.applied_stroke), ("limit_in", lambda answer: answer.limit),
        ("margin_in", lambda answer: answer.margin), ("used_percent", share))}
    made["verdict"] = [answer.verdict.value for answer in answers]
    made["reasons"] = [" ".join(reason.value for reason in answer.reasons) for answer in answers]
    made["words"] = ["; ".join(reason.text for reason in answer.reasons) for answer in answers]
    return made


def test_frames_hold_what_answers_hold():
    """However many rows: a frame is made by the block, and the bits of its missing numbers by the eight."""
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    for rows in (0, 1, 7, 8, 9, 2047, 2048, 2049, 5000):
        table = table_of(rows) if rows else {name: [] for name in CELLS}
        assert judge.frame(table) == frame_of(judge(table)), rows


def arrow_frames_of_chunks():
    """Blocks that begin in the middle of a chunk, and chunks that end in the middle of a byte of bits."""
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    table = pa.table({name: pa.array(cells, pa.string()) for name, cells in table_of(9000).items()})
    want = frame_of(judge(table))
    for cuts in ((3, 10, 2057, 4105, 4106, 8999), (0, 2048, 2048, 4096), range(0, 9000, 13)):
        ends = [0, *cuts, 9000]
        cut = pa.concat_tables([table.slice(start, end - start) for start, end in zip(ends, ends[1:])])
        frame = judge.frame(cut)
        assert {name: frame[name].to_pylist() for name in frame.column_names} == want
        for name in ("applied_stroke_in", "limit_in", "margin_in", "used_percent"):
            assert frame[name].null_count == want[name].count(None) > 0, name
        frame.validate(full=True)


def pandas_frames_alike():
    """As answers, with few sets of reasons and with more than a byte can number; and the frames of answers."""
    judge = rt.Judge("us-fmcsr", date_order="day-first", date="2021-10-14")
    for rows in (60, 5000):
        table = table_of(rows)
        answers, frame = judge(table), judge.frame(pd.DataFrame(table, index=range(rows, 0, -1)))
        want = frame_of(answers)
        for name in frame:
            assert [None if cell != cell else cell for cell in frame[name]] == want[name], name
        assert list(frame.index) == list(range(rows, 0, -1)) and (rows < 5000) == (len(set(want["reasons"])) < 128)
        whole = answers.to_pandas(frame.index)
        assert list(whole["verdict"]) == want["verdict"] and list(whole["reasons"]) == want["reasons"]
        texts = [None if cell != cell else cell for cell in whole["applied_stroke"]]
        assert texts == [None if each is None else rt.write_length(each) for each in
                         (answer.applied_stroke for answer in answers)]
        assert whole["reasons"].dtype == "category"
    assert rt.judge_columns(chamber=[], released=[], applied=[]).to_pandas().shape == (0, 3)


def test_lists_of_frames_refuse():
    from rodtravel import _rodtravel as low
    assert low.list_of_codes(bytes([1, 0]), ["a", "b"]) == ["b", "a"]
    tap.refused(IndexError, low.list_of_codes, bytes([2]), ["a", "b"])
    for function, given in ((low.list_of_numbers, (None,)), (low.list_of_codes, (None, [])), (low.columns_frame, (None, (), 1))):
        tap.refused((TypeError, ValueError), function, *given)


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


# --- Shares of vehicles

def test_names_with_line_ends():
    """A line of an inspection may hold line ends, between quotes."""
    names = ["A", 'B"\nC', '"', 'D\n\n"E"', "A"]
    table = {"unit_no": names, "chamber": ["30"] * 5, "released": ["2"] * 5, "applied": ["4"] * 5}
    found = rt.Judge().vehicles(table, by="unit_no")
    assert len(found) == 4 and [found[i].name for i in range(4)] == [(name,) for name in names[:4]]
    assert [each.name for each in found] == [(name,) for name in names[:4]]


def test_shares_split_no_vehicle():
    """Rows have one number where vehicles counts them together, in any spelling and order, and in another process."""
    spellings = ["T-1", " t-1", "T - 1\u00a0", "1 12", "11 2", "112", "\u00c9 7", "\u00e97", "", None, " ", "x" * 512, "x" * 511]
    rows = [(CHANCE.choice(spellings), CHANCE.choice(["A", "a ", "", "b"])) for _ in range(400)]
    table = {"Unit": [row[0] for row in rows], "fleet": [row[1] for row in rows]}
    shares = rt.Judge().shares(table, by=["Unit", "fleet"])
    together = collections.defaultdict(set)
    for row, share in zip(rows, shares):
        one = {"Unit": [row[0]], "fleet": [row[1]], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
        assert list(rt.Judge().shares(one, ["Unit", "fleet"])) == [share] and 0 <= share < 2**31
        together[share].add(row)
    for alike in together.values():  # no share has two vehicles here
        both = {"Unit": [row[0] for row in alike], "fleet": [row[1] for row in alike], "chamber": ["30"] * len(alike)}
        both.update(released=["2"] * len(alike), applied=["4"] * len(alike))
        assert len(rt.Judge(columns={"unit": ""}).vehicles(both, by=["Unit", "fleet"])) == 1, alike
    many = {**both, **table, **{name: [both[name][0]] * len(rows) for name in ("chamber", "released", "applied")}}
    assert len(rt.Judge(columns={"unit": ""}).vehicles(many, by=["Unit", "fleet"])) == len(together)
    assert list(rt.Judge().shares({"unit_no": ["T-1"]}, "unit_no")) == [276239104]
    for by, says in (("unit", "no column"), (5, "by is the heading"), (["Unit", "Unit"], "twice"), ([], "one to")):
        assert says in str(tap.refused(TypeError, rt.Judge().shares, {"Unit": ["1"]} if by != "unit" else {"x": ["1"]}, by))
    tap.refused(ValueError, rt.Judge().shares, {"a": ["1"], "b": ["1", "2"]}, ["a", "b"])


def inspections_keep_their_types():
    empty = pa.table(rt.Judge().vehicles({**{name: [] for name in SMALL}, "unit_no": [], "date": []}, by="unit_no")).schema
    undated = {**SMALL, "unit_no": [None] * 3, "date": [None] * 3}
    assert pa.table(rt.Judge().vehicles(undated, by="unit_no")).schema == empty
    assert empty.field("date").type == pa.date32() and empty.field("unit_no").type == pa.large_string()


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
                "numpy_columns": np, "arrow_stream": pa, "inspections_keep_their_types": pa, "arrow_frames_of_chunks": pa, "pandas_frames_alike": pd and np}
    for name, package in packages.items():
        if package:
            globals()["test_" + name] = globals()[name]
    tap.run(dict(globals()))
