# SPDX-License-Identifier: Apache-2.0
"""NumPy, pandas, polars, pyarrow and DuckDB: columns of each in, answers to each out, nothing copied. Tests of what is
not installed are left out; with none of them the file is skipped."""
import gc
import sys

import rodtravel as rt
import tap

ROWS = {"chamber": ["30", "24L", "bolt C", None, "30", "30"], "released": ["2 1/8", "2", "1", "1", "2-Jan", None],
        "applied": ["4 1/8", "4 1/4", "2", None, "3 and a long remark", "4"],
        "psi": ["95", None, "80", "x", "", "101"], "unit_no": ["a", "b", "c", "d", "e", "f"]}
WANT = [(answer.verdict, answer.reasons, answer.applied_stroke) for answer in rt.judge_columns(ROWS)]
STROKES = [10160000, 11430000, 5080000, None, None, None]
WORDS = [str(verdict) for verdict, _, _ in WANT]


np, pd, pl, pa, duckdb = (tap.package(name) for name in ("numpy", "pandas", "polars", "pyarrow", "duckdb"))


def same(table, **words):
    answers = rt.judge_columns(table, **words)
    assert [(answer.verdict, answer.reasons, answer.applied_stroke) for answer in answers] == WANT, answers
    return answers


def numbers():
    released = np.arange(1000, dtype=np.int32) * rt.UNITS_PER_64TH
    applied = released + np.int32(rt.UNITS_PER_INCH * 2 - 10 * rt.UNITS_PER_64TH) + np.int32(rt.UNITS_PER_64TH) * (
        np.arange(1000, dtype=np.int32) % 20)
    return released, applied


def numpy_texts():
    """Arrays of objects, of fixed-width text."""
    for dtype in (object, "U"):
        table = {name: np.array([cell or "" for cell in cells], dtype=dtype) for name, cells in ROWS.items()}
        same(table)


def numpy_no_copy():
    plan = rt.Plan()
    released, applied = numbers()
    codes = np.full(1000, plan.add("30"), dtype=np.uint8)
    answers = plan.judge(released, applied, codes)
    stroke = np.asarray(answers.stroke)
    assert stroke.dtype == np.int32 and np.array_equal(stroke, applied - released)
    assert np.asarray(answers.verdict).dtype == np.uint8 and np.asarray(answers.reasons).dtype == np.uint64
    assert stroke.__array_interface__["data"][0] == np.asarray(answers.stroke).__array_interface__["data"][0]
    out = [np.empty(1000, kind) for kind in (np.int32, np.uint8, np.uint64, np.uint8)]
    plan.judge(released, applied, codes, out=out)
    assert np.array_equal(out[0], stroke)
    assert list(plan.judge(released.astype(np.int64), applied.astype(np.int64), codes).verdict) == list(answers.verdict)


def numpy_refused():
    plan = rt.Plan()
    released, applied = numbers()
    codes = np.zeros(1000, dtype=np.uint8)
    frozen = np.empty(1000, np.int32)
    frozen.flags.writeable = False
    for bad in (released.astype(np.float64), released.astype(np.float32), released[::2], released[::-1],
                released.astype(">i4"), released.reshape(10, 100), released.astype(np.uint32), released.astype("M8[D]"),
                np.zeros(4001, np.uint8)[1:].view(np.int32), released.astype(bool), released.astype(complex)):
        tap.refused(TypeError, plan.judge, bad, applied, codes)
    tap.refused(ValueError, plan.judge, released[:10], applied, codes)
    others = [np.empty(1000, kind) for kind in (np.uint8, np.uint64, np.uint8)]
    tap.refused(TypeError, plan.judge, released, applied, codes, out=[frozen, *others])
    tap.refused(TypeError, rt.judge, "30", np.float64(2.5), "4")
    tap.refused(TypeError, rt.judge, "30", np.float32(2.5), "4")
    assert rt.judge("30", np.int64(2), "4").applied_stroke == 2


def pandas_frames():
    frame = pd.DataFrame(ROWS)
    same(frame)
    for kind in (object, "string[python]", *(["string[pyarrow]", pd.ArrowDtype(pa.string())] if pa else [])):
        same(frame.astype(kind))
    same(frame.astype({"chamber": "category"}))
    same(frame[["released", "applied", "chamber", "psi"]][::-1][::-1])
    answers = rt.judge_columns(frame)
    if hasattr(pd.DataFrame, "from_arrow"):
        assert list(pd.DataFrame.from_arrow(answers)["verdict"]) == WORDS
    plan = rt.Plan()
    released, applied = numbers()
    plan.judge(pd.Series(released), pd.Series(applied), pd.Series(["30"] * 1000))


def polars_frames():
    frame = pl.DataFrame(ROWS)
    same(frame)
    same(frame.with_columns(pl.col("chamber").cast(pl.Categorical)))
    same(pl.concat([frame[:2], frame[2:]], rechunk=False))
    same(pl.concat([frame, frame]).slice(6, 6))
    same(frame.with_columns(division=pl.lit(None)))
    back = pl.DataFrame(rt.judge_columns(frame))
    assert back["verdict"].cast(pl.String).to_list() == WORDS and back["stroke"].to_list() == STROKES
    assert pl.Series(rt.judge_columns(frame).reasons).dtype == pl.UInt64


def pyarrow_tables():
    table = pa.table(ROWS)
    same(table)
    same(table.slice(0, 6))
    same(pa.concat_tables([table, table]).slice(6))
    same(table.to_batches()[0])
    same(table.cast(pa.schema([(name, pa.large_string()) for name in ROWS])))
    same(table.cast(pa.schema([(name, pa.string_view()) for name in ROWS])))
    same({name: table[name].combine_chunks().dictionary_encode() for name in ROWS})
    same({name: pa.chunked_array([table[name].chunk(0)[:2], table[name].chunk(0)[2:5], table[name].chunk(0)[5:]])
          if name == "applied" else table[name] for name in ROWS})
    back = pa.table(rt.judge_columns(table))
    assert back["verdict"].to_pylist() == WORDS and back["stroke"].to_pylist() == STROKES
    back.validate(full=True)
    answers = rt.judge_columns(table)
    assert pa.array(answers.stroke).buffers()[1].address == pa.array(answers.stroke).buffers()[1].address
    stroke = pa.array(answers.stroke)
    del answers
    gc.collect()
    assert stroke.to_pylist() == STROKES  # it owns what it points into


def pyarrow_numbers():
    plan = rt.Plan()
    code = plan.add("30")
    inch = rt.UNITS_PER_INCH
    readings = {"released": pa.array([None, inch, inch, -1], pa.int32()), "applied": pa.array([inch, None, 3 * inch, inch])}
    codes = pa.array([code, code, code, 77], pa.uint8())
    answers = plan.judge(readings["released"], readings["applied"], codes)
    assert [flag for flag in answers.flags] == [1, 1, 0, 2]
    days = pa.array([20000, None, 20000, 20000], pa.int32()).cast(pa.date32())
    assert len(plan.judge(readings["released"].slice(1), readings["applied"].slice(1), codes.slice(1),
                          date=days.slice(1))) == 3
    for bad in (pa.array([1.0] * 4), pa.array([1] * 4, pa.uint64()), pa.array([[1]] * 4), pa.array([True] * 4)):
        tap.refused(TypeError, plan.judge, bad, readings["applied"], codes)
        tap.refused(TypeError, rt.judge_columns, chamber=bad, released=["1"] * 4, applied=["2"] * 4)
    stream = pa.table(ROWS).__arrow_c_stream__()

    class Once:
        def __arrow_c_stream__(self, requested_schema=None):
            return stream

    again = Once()
    rt.judge_columns(chamber=again, released=["1"] * 6, applied=["2"] * 6)
    tap.refused((TypeError, ValueError), rt.judge_columns, chamber=again, released=["1"] * 6, applied=["2"] * 6)


def duckdb_results():
    connection = duckdb.connect()
    connection.execute("create table yard (chamber text, released text, applied text, psi text, unit_no text)")
    connection.executemany("insert into yard values (?, ?, ?, ?, ?)", list(zip(*ROWS.values())))
    relation = connection.sql("select * from yard order by unit_no")
    same(relation)
    if pa is None:
        return
    answers = same(relation.to_arrow_table() if hasattr(relation, "to_arrow_table") else relation.fetch_arrow_table())
    found = connection.sql("select verdict, count(*) from answers group by verdict order by verdict").fetchall()
    assert found == sorted((word, WORDS.count(word)) for word in set(WORDS)), found


def tables_of(judge, table):
    """Answers and frames of a table in everything that is installed, each with a way to its strokes."""
    answers = judge(table)
    if np:
        yield np.asarray(answers.stroke), np.ndarray.tolist
    if pa:
        yield pa.table(answers), lambda kept: kept["stroke"].to_pylist()
        yield judge.frame(pa.table(table)), lambda kept: kept["applied_stroke_in"].to_pylist()
    if pl:
        yield pl.DataFrame(answers), lambda kept: kept["stroke"].to_list()
        yield judge.frame(pl.DataFrame(table)), lambda kept: kept["applied_stroke_in"].to_list()
    if pd:
        yield judge.frame(pd.DataFrame(table)), lambda kept: kept["applied_stroke_in"].tolist()


def kept_answers():
    """What other packages hold stays as it was while the next tables are judged, in memory that is free again."""
    judge = rt.Judge()
    tables = [{"chamber": ["30"] * 3000, "released": ["0"] * 3000, "applied": [f"{inches}"] * 3000} for inches in (1, 2)]
    kept = [(inches, each, read) for _ in range(3) for inches, table in enumerate(tables, 1)
            for each, read in tables_of(judge, table)]
    gc.collect()
    assert len(kept) >= 6
    for inches, each, read in kept:
        assert set(read(each)) in ({inches}, {inches * rt.UNITS_PER_INCH}), type(each)


def references():
    """Nothing of a table is held once its answers are there."""
    table = [pa.table(ROWS) if pa else pl.DataFrame(ROWS)]
    before = sys.getrefcount(table[0])
    for _ in range(100):
        rt.judge_columns(table[0])
    gc.collect()
    assert sys.getrefcount(table[0]) == before


TESTS = {"numpy": (np, [numpy_texts, numpy_no_copy, numpy_refused]), "pandas": (np and pd, [pandas_frames]),
         "polars": (pl, [polars_frames]), "pyarrow": (np and pa, [pyarrow_tables, pyarrow_numbers]),
         "duckdb": (duckdb, [duckdb_results]), "references": (pa or pl, [references, kept_answers])}

if __name__ == "__main__":
    chosen = {"test_" + test.__name__: test for there, tests in TESTS.values() if there for test in tests}
    if not chosen:
        tap.skip("none of NumPy, pandas, polars, pyarrow and DuckDB is installed")
    for name, (there, _) in TESTS.items():
        if not there:
            print(f"# left out: {name} is not installed")
    tap.run(chosen)
