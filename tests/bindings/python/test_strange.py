# SPDX-License-Identifier: Apache-2.0
"""What an analyst has at hand by accident: texts and numbers of other libraries, columns that are none, copies."""
import array
import copy
import ctypes
import importlib.util
import itertools
import os
import pickle
import warnings
from datetime import datetime

import rodtravel as rt
import tap

ROWS = {"chamber": ["30", "30", "24L"], "released": ["2", "2 1/8", "2"], "applied": ["4", "4 1/4", "4 1/2"]}


class Text(str):
    """As NumPy's str_ is one."""


np, pd, pa, duckdb = (tap.package(name) for name in ("numpy", "pandas", "pyarrow", "duckdb"))


def words(answers):
    return [str(answer.verdict) for answer in answers]


def test_texts_of_other_classes():
    want = rt.judge("30L", "2", "4")
    assert rt.judge(Text("30L"), Text("2"), Text("4"), rules=Text("us-fmcsr")) == want
    assert rt.judge_row(chamber=Text("30L"), released=Text("2"), applied=Text("4"))[0] == want
    assert rt.read_chamber(Text("30L")) == rt.read_chamber("30L")


def test_rules_of_another_type():
    for rules in ([], {}, 1, None, b"us-fmcsr"):
        message = str(tap.refused(TypeError, rt.judge, "30", "2", "4", rules=rules))
        assert message == "rules are a Rules, or the id of a rule set as text"


def test_names_of_own_limits():
    table = "family,size,class,limit\nclamp,30,standard,1 7/8\n"
    for name in ("", " ", "us-fmcsr", "x" * 40, "é" * 20):
        assert tap.refused(rt.Error, rt.load_rules, table, name).field == "name"
    tap.refused(TypeError, rt.load_rules, table, None)
    assert rt.load_rules(table, "x" * 39).id == "x" * 39


def test_a_row_is_never_refused():
    for cell in ("2\0", "\ud800", "2 \udfff1/8"):
        for name in ("chamber", "released", "applied", "psi", "date", "drum"):
            row = {"chamber": "30", "released": "2", "applied": "4", name: cell}
            finding, error = rt.judge_row(**row)
            assert error.field == name and any(f"{part}-unreadable" in finding.reasons for part in
                                               (name, "date", "other")), (name, error, finding.reasons)
            answers = rt.judge_columns({key: [value, "2"] for key, value in row.items()})
            assert answers[0].reasons == finding.reasons, (name, cell)


def test_messages_tell_what_was_expected():
    for call, part in ((lambda: rt.judge_air("build-up", actual_volume="20"), "actual_volume is a plain number"),
                       (lambda: rt.inches_from_mm("25.4"), "millimetres is a plain number"),
                       (lambda: rt.psi_from_kpa(None), "kilopascals is a plain number"),
                       (lambda: rt.write_length(None), "length is a number, not NoneType"),
                       (lambda: rt.pushrod_force("30", None), "pressure is a number, not NoneType"),
                       (lambda: rt.read_length(2), "text, not int"),
                       (lambda: rt.WheelEnd("1L", rt.judge("30", "2", "4"), arm_length=5.5), "arm_length is a binary"),
                       (lambda: rt.judge("30", "2", "4", date=20210101), "date is a datetime.date"),
                       (lambda: rt.Tally(1.5), "float"), (lambda: rt.judge_air("warning", answer=1), "answer is True")):
        assert part in str(tap.refused(TypeError, call)), part
    end = rt.WheelEnd("1L", rt.judge("30", "2", "4"))
    for call, part in ((lambda: rt.round_length("2", 0), "division: a division must be above zero"),
                       (lambda: rt.required_volume(-1), "chambers: no volume is below zero"),
                       (lambda: rt.build_up_seconds(0, 1), "volumes are above zero"),
                       (lambda: rt.estimate_application(105, 5568, 464, 2), "a fill is 0 to 1"),
                       (lambda: rt.judge_air("build-up", seconds=-1), "the figure is below zero"),
                       (lambda: rt.judge_air(""), "check: a check has a name"),
                       (lambda: rt.identify(diameter="8 1/8", diameter_division=0), "diameter_division: the length is zero"),
                       (lambda: rt.Position(1, "unknown"), "side: a position has a side"),
                       (lambda: rt.Chamber("30", rated_stroke=-1), "rated_stroke: the figure is below zero"),
                       (lambda: rt.Chamber("30", marked_limit=7), "marked_limit: a chamber is marked with 3/4 to 6 in"),
                       (lambda: rt.Tally(1, full=2), "tally: full, half and unknown ones are brakes"),
                       (lambda: rt.Tally(2, full=1).judge(1), "brakes: more brakes were counted than the vehicle has"),
                       (lambda: rt.judge_vehicle([]), "one wheel end is needed at least"),
                       (lambda: rt.judge_vehicle([end, end]), "position, line 2: this position is there twice")):
        assert part in str(tap.refused(rt.Error, call)), part


def test_columns_that_are_none():
    for column in ({"2", "3", "4"}, frozenset("234"), {"2": 1, "3": 1, "4": 1}, 5, object()):
        assert "released is a column" in str(tap.refused(TypeError, rt.judge_columns, {**ROWS, "released": column}))
    for table in ("x", [ROWS], 5):
        assert "table is a mapping" in str(tap.refused(TypeError, rt.judge_columns, table))


def test_headings_of_files():
    """A date that is not read would be judged by the newest text."""
    table = {"chamber": ["clamp 36"], "released": ["2"], "applied": ["4 3/8"]}
    old = rt.judge_columns(**table, date=["2021-10-13"], psi=["95"], psi_after=["85"])
    assert words(old) != words(rt.judge_columns(table)) and words(old) == ["out-of-adjustment"]
    for date, psi, after in (("date", "psi", "psi_after"), ("Inspection Date", "PSI", "psiAfter"),
                             ("insp_date", "Pressure", "PRESSURE-AFTER")):
        file = {**table, date: ["2021-10-13"], psi: ["95"], after: ["85"]}
        assert rt.judge_columns(file) == old and rt.judge_columns(file, date=["2021-10-14"]) != old
        twice = {**file, "DATE ": ["2021-10-13"]}
        refusal = str(tap.refused(TypeError, rt.judge_columns, twice))
        assert f"the columns {date!r} and 'DATE ' both mean date; say which one: date='DATE '" in refusal, refusal
        assert rt.judge_columns(twice, date=date) == old
        if pa is not None:
            assert rt.judge_columns(pa.table(file).to_reader()) == old
            assert "both mean date" in str(tap.refused(TypeError, rt.judge_columns, pa.table(twice).to_reader()))


def warned(*args, **words):
    with warnings.catch_warnings(record=True) as caught:
        warnings.simplefilter("always")
        answers = rt.judge_columns(*args, **words)
    assert all(each.category is rt.UnreadColumnWarning and each.filename == __file__ for each in caught), caught
    return answers, [str(each.message) for each in caught]


def test_columns_that_are_not_read_are_named():
    _, said = warned({**ROWS, "Day": [None] * 3, "stroke type": ["long"] * 3, "remark": ["x"] * 3})
    assert len(said) == 2 and "'Day' is not read; if it is date, say date='Day', otherwise date=''" in said[0], said
    assert "'stroke type' is not read" in said[1]
    dated, said = warned({**ROWS, "Day": ["2010-01-01"] * 3}, date="Day")
    assert not said and "rules-not-in-force" in dated[0].reasons
    assert warned({**ROWS, "Day": [None] * 3}, date="")[1] == warned({**ROWS, "Day": [None] * 3}, date=["x"] * 3)[1] == []
    assert rt.judge_columns({**ROWS, "Day": ["2010-01-01"] * 3}, date="DAY") == dated
    assert "no column of that name" in str(tap.refused(TypeError, rt.judge_columns, ROWS, date="Day"))
    assert "chamber is needed" in str(tap.refused(TypeError, rt.judge_columns, ROWS, chamber=""))


def test_units_that_are_vehicles():
    want = rt.judge_columns(ROWS)
    for names in (["T-104", "T-105", ""], ["12", "in", "in"]):
        answers, said = warned({**ROWS, "Unit": names})
        assert answers == want and len(said) == 1 and f"'Unit' names vehicles ('{names[0]}')" in said[0], said
        assert words(rt.judge_columns({**ROWS, "Unit": names}, unit="Unit"))[0] == "undetermined"
    answers, said = warned({**ROWS, "Unit": array.array("i", [101, 102, 103])})
    assert answers == want and len(said) == 1 and "'Unit' names vehicles, so" in said[0], said
    metric, said = warned({**ROWS, "Unit": ["cm", "cm", "in"]})
    assert metric != want and not said


def test_cells_of_another_field():
    for heading, cell in (("engine", "D13"), ("Division", "Midwest"), ("spring brake", "yes?"), ("drum", "16.5"),
                          ("unit", "pouce?")):
        field = heading.lower().replace(" ", "_")
        answers, said = warned({**ROWS, heading: [cell] * 3})
        assert words(answers) == ["undetermined"] * 3, heading
        assert len(said) == 1 and f"{heading!r} holds {cell!r}, which cannot be read as {field};" in said[0] and f"{field}=''" in said[0], said
        answers, said = warned({**ROWS, heading: [cell] * 3}, **{field: ""})
        assert answers == rt.judge_columns(ROWS) and not said
    assert "drum='' leaves the column out" in str(
        tap.refused(TypeError, rt.judge_columns, {**ROWS, "drum": array.array("d", [16.5] * 3)}))


def test_slices_and_equality():
    answers = rt.judge_columns(ROWS)
    assert words(answers[1:]) == words(answers)[1:] and words(answers[::-2]) == words(answers)[::-2]
    assert len(answers[5:]) == 0 and answers[-1] == answers[2]
    tap.refused(IndexError, answers.__getitem__, 3)
    assert answers == rt.judge_columns(ROWS) and answers[:1] != answers and answers != ROWS
    assert answers.stroke == answers[:].stroke and answers.verdict != answers.flags
    for again in (pickle.loads(pickle.dumps(answers.stroke)), copy.copy(answers.stroke), copy.deepcopy(answers.stroke)):
        assert again == answers.stroke and list(again) == list(answers.stroke)


def test_a_plan_is_not_copied():
    for call in (copy.copy, copy.deepcopy, pickle.dumps):
        assert "make one in each process" in str(tap.refused(TypeError, call, rt.Plan()))


def plan_of_three():
    plan = rt.Plan()
    return plan, array.array("i", [2 * rt.UNITS_PER_INCH] * 3), array.array("i", [4 * rt.UNITS_PER_INCH] * 3), \
        bytes([plan.add("30")] * 3)


def test_answers_in_foreign_columns():
    plan, released, applied, codes = plan_of_three()
    out = [(ctypes.c_int32 * 3)(), (ctypes.c_uint8 * 3)(), (ctypes.c_uint64 * 3)(), (ctypes.c_uint8 * 3)()]
    answers = plan.judge(released, applied, codes, out=out)
    assert words(answers) == ["in-adjustment"] * 3 and list(out[0]) == list(answers.stroke)
    assert answers == plan.judge(released, applied, codes)
    assert "stroke: answers go into a writable buffer" in str(
        tap.refused(TypeError, plan.judge, released, applied, codes, out=[bytes(12), *out[1:]]))
    for wrong in (5, "four"):
        assert "out is four columns" in str(tap.refused(TypeError, plan.judge, released, applied, codes, out=wrong))


def test_numpy_columns():
    if np is None:
        return
    plan, released, applied, codes = plan_of_three()
    masked = np.ma.masked_array(np.frombuffer(codes, np.uint8), mask=[1, 0, 0])
    assert "chamber: the mask" in str(tap.refused(TypeError, plan.judge, released, applied, masked))
    masked = np.ma.masked_array(released, mask=[1, 0, 0])
    assert "released: the mask" in str(tap.refused(TypeError, plan.judge, masked, applied, codes))
    assert words(plan.judge(np.ma.masked_array(released, mask=[0, 0, 0]), applied, codes)) == ["in-adjustment"] * 3
    text = np.ma.masked_array(["2", "2", "2"], mask=[1, 0, 0])
    assert words(rt.judge_columns({**ROWS, "released": text}))[0] == "undetermined"
    tap.refused(TypeError, rt.judge_columns, chamber=np.array("30"), released=["2"] * 2, applied=["4"] * 2)
    tap.refused(TypeError, rt.judge_columns, {**ROWS, "released": np.array([ROWS["released"]])})
    assert "astype(str)" in str(tap.refused(TypeError, rt.judge_columns, {**ROWS, "released": np.array([b"2"] * 3)}))
    numbers = np.array(["2", np.float64(2.5), None], dtype=object)
    assert "row 1 holds" in str(tap.refused(TypeError, rt.judge_columns, {**ROWS, "released": numbers}))
    tap.refused(ValueError, rt.judge_columns(ROWS).stroke.__array__, dtype="f8", copy=False)


def test_pandas_columns():
    if pd is None:
        return
    gaps = np.array(["2", pd.NA, pd.NaT], dtype=object)
    assert words(rt.judge_columns({**ROWS, "released": gaps})) == ["in-adjustment", "undetermined", "undetermined"]
    assert "date is NaT" in str(tap.refused(TypeError, rt.judge, "30", "2", "4", date=pd.NaT))
    assert rt.judge("30", "2", "4", date=pd.Timestamp(2021, 1, 2, 3)).day == datetime(2021, 1, 2).date()
    frame = pd.DataFrame(ROWS)
    assert "row 0 holds 2.5" in str(tap.refused(TypeError, rt.judge_columns, frame,
                                                  released=pd.Series([2.5, "2", None], dtype=object)))
    if pa is not None:
        assert "dtype=str" in str(tap.refused(TypeError, rt.judge_columns, frame, psi=pd.Series([95, None, 95])))
        assert "2021-10-14" in str(tap.refused(TypeError, rt.judge_columns, frame, date=pd.to_datetime(["2021-01-01"] * 3)))
        two = pa.table([[*ROWS["chamber"]], ROWS["released"], ROWS["applied"], ROWS["applied"]],
                       ["chamber", "released", "applied", "applied"])
        assert "both mean applied" in str(tap.refused(TypeError, rt.judge_columns, two.to_reader()))


def test_answers_with_an_index():
    """Answers are in the order of rows, so a frame that was filtered must lend them its index."""
    if pd is None:
        return
    frame = pd.DataFrame(ROWS)
    some = frame[frame.applied != "4"]
    joined = some.join(rt.judge_columns(some).to_pandas(some.index))
    assert joined.index.tolist() == [1, 2] and joined.verdict.tolist() == words(rt.judge_columns(frame))[1:]
    assert joined.applied_stroke.tolist() == ["2 1/8", "2 1/2"] and "over-limit" in joined.reasons[2].split()
    assert rt.judge_columns({**ROWS, "applied": ["", "4", "4"]}).to_pandas().applied_stroke.isna().tolist() == [True, False, False]


def test_readers_and_queries_are_run_once():
    """The columns of a query in no order must be those of one run."""
    if pa is not None:
        table = pa.table({**ROWS, "remark": [1.5, 2.5, 3.5]})
        want = rt.judge_columns(ROWS)
        assert rt.judge_columns(table.to_reader(max_chunksize=2)) == want
        assert rt.judge_columns(table.to_reader(), released=["9", "9", "9"]) != want
        assert "chamber is needed" in str(tap.refused(TypeError, rt.judge_columns, table.drop("chamber").to_reader()))
    if duckdb is not None and pa is not None:
        many = pa.table({"chamber": ["30"] * 500, "released": [f"{i % 64}/64" for i in range(500)],
                         "applied": [f"2 {i % 64}/64" for i in range(500)]})
        assert many.num_rows == 500
        answers = rt.judge_columns(duckdb.sql("select * from many order by random()"))
        assert set(answers.stroke) == {2 * rt.UNITS_PER_INCH}


def test_answers_in_a_later_piece():
    if pa is None:
        return
    plan, released, applied, codes = plan_of_three()
    cells = np.array([2 * rt.UNITS_PER_INCH] * 6, dtype=np.int32)
    column = pa.chunked_array([pa.array(released, pa.int32()), pa.array(cells[3:])])
    out = [cells, np.zeros(6, "u1"), np.zeros(6, "u8"), np.zeros(6, "u1")]
    assert "overlap" in str(tap.refused(ValueError, plan.judge, column, applied * 2, codes * 2, out=out))
    assert set(cells) == {2 * rt.UNITS_PER_INCH}


def test_restored_with_damaged_values():
    """Whatever a stored finding holds, it is refused or looked at without harm."""
    def looked_at(finding):
        for look in (str, repr, hash, rt.Finding.asdict, finding.__eq__):
            look(finding)
        return [getattr(finding, name) for name in ("verdict", "sentence", "spoken", "json", "proof_sentence", "sentences",
                                                    "defect")]
    sound = rt.judge("30", "2", "4 1/8", psi=95, division="1/16")
    restore, ((values, *rows), rules, edition) = sound.__reduce__()
    want, seen = looked_at(sound), 0
    assert looked_at(restore((values, *rows), rules, edition)) == want
    for place, wrong in itertools.product(range(len(values)), (-1, -2**31, 2**31 - 1, 99, 2**63, None, "x", (), (1, 2))):
        damaged = (*values[:place], wrong, *values[place + 1:])
        for numbers in (rows, (-1, -1), (10**6, 10**6), (-5, 7)):
            try:
                seen += len(looked_at(restore((damaged, *numbers), rules, edition))) > 0
            except (rt.Error, TypeError, ValueError, KeyError, OverflowError):
                pass
    assert seen > 100, seen


def test_place_of_installation():
    """Debian's Python does not look where meson would install below /usr/local."""
    path = os.path.join(os.path.dirname(os.environ["EXAMPLES"]), "bindings", "python", "install_dir.py")
    spec = importlib.util.spec_from_file_location("install_dir", path)
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    debian = ["", "/usr/lib/python3.11", "/usr/local/lib/python3.11/dist-packages", "/usr/lib/python3/dist-packages"]
    local = "/usr/local/lib/python3/dist-packages"
    assert made.place("/usr/local", local, debian) == "/usr/local/lib/python3.11/dist-packages"
    assert made.place("/usr", "/usr/lib/python3/dist-packages", debian) == ""
    assert made.place("/opt/x", "/opt/x/lib/python3/dist-packages", debian) == ""
    assert made.place("/usr/loc", "/usr/loc/lib/python3/dist-packages", debian) == ""


if __name__ == "__main__":
    tap.run(globals())
