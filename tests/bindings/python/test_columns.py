# SPDX-License-Identifier: Apache-2.0
"""Columns: the answers of judge for every row, and every wrong buffer refused. Needs the standard library alone."""
import array
import ctypes
import pickle
import random
import sys
import sysconfig
import threading
from fractions import Fraction

import rodtravel as rt
import tap

INCH = rt.UNITS_PER_INCH
CHANCE = random.Random(1)
FREE_THREADED = sysconfig.get_config_var("Py_GIL_DISABLED")


def numbers(count):
    """Readings in 64ths, with some at the ends and some impossible."""
    steps = [CHANCE.randrange(0, 6 * 64) for _ in range(count)]
    released = array.array("i", [step * rt.UNITS_PER_64TH for step in steps])
    applied = array.array("i", [(step + CHANCE.randrange(-4, 4 * 64)) * rt.UNITS_PER_64TH for step in steps])
    released[0], applied[1] = -5, 2**31 - 1
    return released, applied


def test_numbers_like_judge():
    marks = ["30", "24 long", "clamp 36", "bolt C", "DD-3"]
    plan = rt.Plan(psi=95, date="2021-10-13")
    codes = [plan.add(mark) for mark in marks]
    assert codes == [2, 3, 4, 5, 6]
    released, applied = numbers(997)
    chosen = [CHANCE.randrange(5) for _ in released]
    answers = plan.judge(released, applied, bytes(codes[n] for n in chosen))
    text = plan.judge(released, applied, [marks[n] for n in chosen])
    for row in range(2, len(answers)):
        finding = one(marks[chosen[row]], released[row], applied[row])
        assert answers[row] == text[row]
        if finding is not None:
            assert (answers[row].verdict, answers[row].reasons) == (finding.verdict, finding.reasons), row
            assert answers[row].applied_stroke == finding.applied_stroke
    assert "released-unreadable" in answers[0].reasons and answers.flags[0] == 2


def one(mark, released, applied):
    if applied < 0:
        return None
    return rt.judge(mark, Fraction(released, INCH), Fraction(applied, INCH), psi=95, date="2021-10-13")


def test_pressure_and_day_of_each_row():
    plan = rt.Plan()
    code = plan.add("clamp 36")
    days = array.array("i", [18913, 18914, 18914, 10**6])  # 2021-10-13 and after
    pressures = array.array("i", [95000, 95000, 80000, 95000])
    answers = plan.judge(array.array("i", [INCH * 2] * 4), array.array("i", [INCH * 9 // 2] * 4), bytes([code] * 4),
                         psi=pressures, date=days)
    assert [str(answer.verdict) for answer in answers] == ["out-of-adjustment", "in-adjustment", "undetermined",
                                                           "undetermined"]


def test_wide_and_other_buffers():
    plan = rt.Plan()
    code = plan.add("30")
    released, applied = numbers(100)
    want = list(plan.judge(released, applied, bytes([code] * 100)))
    wide = [array.array("q", column) for column in (released, applied)]
    kinds = [wide, [memoryview(released), memoryview(applied)],
             [(ctypes.c_int32 * 100)(*released), (ctypes.c_int32 * 100)(*applied)]]
    for pair in kinds:
        assert list(plan.judge(*pair, bytearray([code] * 100))) == want
    assert len(plan.judge(array.array("i"), array.array("i"), b"")) == 0


def test_wrong_buffers():
    plan = rt.Plan()
    good = array.array("i", [INCH] * 6)
    codes = bytes(6)
    wide = array.array("i", [INCH] * 12)
    bad = [array.array("f", [1] * 6), array.array("d", [1] * 6), array.array("I", [1] * 6), array.array("h", [1] * 6),
           memoryview(wide)[::2], memoryview(good)[::-1], memoryview(bytes(24)).cast("i", (2, 3)),
           memoryview(bytes(25))[1:].cast("i"), b"123456", bytearray(6), (ctypes.c_int32.__ctype_be__ * 6)(),
           "123456", 6, object(), ["2", 2, "2"], [1, 2, 3, 4, 5, 6], array.array("B", [1] * 6)]
    for column in bad:
        tap.refused(TypeError, plan.judge, column, good, codes)
        tap.refused(TypeError, plan.judge, good, column, codes)
    for column in bad[:4]:
        tap.refused(TypeError, plan.judge, good, good, column)
        tap.refused(TypeError, plan.judge, good, good, codes, psi=column)
        tap.refused(TypeError, plan.judge, good, good, codes, date=column)
    assert "binary floats" in str(tap.refused(TypeError, plan.judge, bad[1], good, codes))
    for missing in ((None, good, codes), (good, None, codes), (good, good, None)):
        tap.refused(TypeError, plan.judge, *missing)
    gone = memoryview(bytes(24)).cast("i")
    gone.release()
    tap.refused((TypeError, ValueError), plan.judge, gone, good, codes)


def test_lengths():
    plan = rt.Plan()
    good = array.array("i", [INCH] * 6)
    for columns in ((good[:5], good, bytes(6)), (good, good[:5], bytes(6)), (good, good, bytes(7))):
        message = str(tap.refused(ValueError, plan.judge, *columns))
        assert "rows" in message, message
    tap.refused(ValueError, plan.judge, good, good, bytes(6), psi=good[:2])
    tap.refused(ValueError, rt.judge_columns, chamber=["30"], released=["2", "2"], applied=["3"])


def room(rows):
    return [array.array("i", [7] * rows), bytearray(rows), array.array("Q", [7] * rows), bytearray(rows)]


def test_answers_of_the_caller():
    plan = rt.Plan()
    code = plan.add("30")
    good = array.array("i", [INCH, 2 * INCH])
    out = room(2)
    answers = plan.judge(array.array("i", [0, 0]), good, bytes([code] * 2), out=out)
    assert list(out[0]) == [INCH, 2 * INCH] and answers.stroke.view.obj is out[0]
    wrong = [room(3), room(1), room(2)[:3], [bytes(8), bytearray(2), array.array("Q", [0, 0]), bytearray(2)],
             [array.array("I", [0, 0]), *room(2)[1:]], [array.array("q", [0, 0]), *room(2)[1:]],
             [memoryview(array.array("i", [7] * 4))[::2], *room(2)[1:]], [None] * 4]
    for out in wrong:
        tap.refused((TypeError, ValueError, BufferError), plan.judge, good, good, bytes([code] * 2), out=out)
    out = room(2)
    assert "overlap" in str(tap.refused(ValueError, plan.judge, good, good, bytes(2), out=[good, *out[1:]]))
    out[3] = out[1]
    tap.refused(ValueError, plan.judge, good, good, bytes(2), out=out)
    assert list(out[0]) == [7, 7] and list(good) == [INCH, 2 * INCH]
    assert list(array.array("i", good)) == list(good)


def test_a_buffer_in_use_cannot_be_resized():
    answers = rt.judge_columns(chamber=["30"], released=["2"], applied=["4"])
    tap.refused(BufferError, answers.stroke.view.obj.extend, b"1234")
    column = array.array("i", [INCH])
    rt.Plan().judge(column, column, bytes(1))
    column.append(1)  # it was given back


def test_too_many_chambers():
    plan = rt.Plan()
    error = tap.refused(rt.Error, lambda: [plan.add(f"{size}") for size in range(1, 90) for _ in range(9)])
    assert error.status is rt.Status.SPACE
    plan = rt.Plan()
    column = array.array("i", [INCH] * 600)
    chambers = [f"{n % 90 + 1} {word}" for n in range(150) for word in ("", "long", "standard", "clamp")]
    error = tap.refused(rt.Error, plan.judge, column, column, chambers)
    assert error.status is rt.Status.SPACE


def test_texts_like_judge_row():
    """Every keyword, as a column and as what all rows share."""
    choices = {"chamber": ["30", "24L", "36", "?", None, ""], "released": ["2", "2 1/8", "31/8", "50 mm", "2-Jan", None, " "],
               "applied": ["4", "4 1/4", "41/8", "106 mm", "x", "4,5"], "stroke_class": [None, "long", "standard", "?"],
               "rated_stroke": [None, "3", "0", "?"], "marked_limit": [None, "2"], "psi": [None, "95", "0", "655 kPa", "?"],
               "psi_after": [None, "95", "50"], "division": [None, "1/16", "0"],
               "date": [None, "2021-10-13", "06/05/2024", "9/1/2013 8:00", "?"], "unit": [None, "in", "mm"], "engine": [None, "off", "on"],
               "spring_brake": [None, "released", "on"], "drum": [None, "hot"]}
    rows = [{name: CHANCE.choice(some) for name, some in choices.items()} for _ in range(3000)]
    for row in rows[:1500]:
        for name in ("unit", "engine", "spring_brake", "drum", "psi_after"):
            row[name] = None
    defaults = {"rules": "us-fmcsr", "decimal_comma": True, "date_order": "day-first", "default_date": "2021-10-14"}
    columns = {name: [row[name] for row in rows] for name in choices}
    answers = rt.judge_columns(columns, **defaults)
    for row, answer in zip(rows, answers):
        finding, _ = rt.judge_row(**row, **defaults)
        assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons), (row, answer, finding)
        assert answer.applied_stroke == finding.applied_stroke, row
    assert sum(answers.counts().values()) == 3000


def test_strokes_finer_than_units():
    """Six decimals and more, wherever the first of them is: a block of rows is judged at a time."""
    fine = {"chamber": ["30 standard"] * 5, "released": ["1.123457", "1.000001", "30.000001 mm", "1.0000000001", ""],
            "applied": ["3.123457", "3.000003", "80.810001 mm", "3", "2"]}
    strokes = [Fraction(2), Fraction("2.000002"), Fraction("50.81") / Fraction("25.4"), None, None]
    for before in (0, 1, 4095, 4096, 4097, 9000):
        column = {name: ["30 standard" if name == "chamber" else "1"] * before + cells for name, cells in fine.items()}
        answers = rt.judge_columns(column, default_psi=95)
        assert [answer.applied_stroke for answer in answers[before:]] == strokes
        assert [answer.margin for answer in answers[before:]] == [None if stroke is None else 2 - stroke for stroke in strokes]
        assert list(answers.stroke[before:]) == [2 * INCH, rt.NO_STROKE, strokes[2] * INCH, *[rt.NO_STROKE] * 2]
        assert list(answers.stroke_parts) == [0] * before + [
            rt.NO_STROKE if stroke is None else stroke * rt.PARTS_PER_INCH for stroke in strokes]
        for row, answer in enumerate(answers[before:before + 3]):
            finding, _ = rt.judge_row(**{name: cells[row] for name, cells in fine.items()}, psi=95)
            assert (answer.applied_stroke, answer.verdict, answer.reasons) == (
                finding.applied_stroke, finding.verdict, finding.reasons)
    often = rt.judge_columns({name: cells * 3000 for name, cells in fine.items()}, default_psi=95)
    assert list(often.stroke_parts) == list(answers[-5:].stroke_parts) * 3000
    copy = pickle.loads(pickle.dumps(answers))
    assert copy == answers != rt.judge_columns({**column, "applied": [*column["applied"][:-5], "3.123458", *fine["applied"][1:]]},
                                               default_psi=95)
    assert copy[-4].applied_stroke == Fraction("2.000002") == answers[::-1][3].applied_stroke
    other = rt.judge_columns({**column, "applied": [*column["applied"][:-4], "3.000004", *fine["applied"][2:]]},
                             default_psi=95)
    assert list(other.stroke) == list(answers.stroke) and other != answers
    summary = answers[-5:].summary()
    assert (summary.compared, summary.least_margin, summary.most) == (3, 2 - strokes[2], Fraction(201, 2))
    whole = rt.judge_columns(chamber=["30"], released=["2"], applied=["4"])
    assert list(whole.stroke_parts) == [2 * rt.PARTS_PER_INCH] and whole == whole[:]
    room = [array.array(form, [0] * 5) for form in ("i", "B", "Q", "B")]
    given = rt.judge_columns(fine, default_psi=95, out=room)
    assert given == answers[-5:] and list(room[0]) == list(answers.stroke[-5:])


def test_wrong_texts():
    for column in ("30", b"30", [30], [2.5], [b"30"], ["30", 1], 5):
        tap.refused((TypeError, ValueError), rt.judge_columns, chamber=column, released=["2"], applied=["4"])
    tap.refused(TypeError, rt.judge_columns, chamber=["30"], released=["2"])
    tap.refused(TypeError, rt.judge_columns, {"chamber": ["30"], "released": ["2"]})
    tap.refused(rt.Error, rt.judge_columns, chamber=["30"], released=["2"], applied=["4"], default_psi="lots")
    long = rt.judge_columns(chamber=["30"] * 2, released=["2", "2" + " " * 300], applied=["4", "4"])
    assert [str(answer.verdict) for answer in long] == ["in-adjustment", "undetermined"]


def test_a_plan_is_used_again():
    """Calls with other defaults, and a refusal between them, give the answers of a first call."""
    columns = {"chamber": ["36", "36"], "released": ["2", "50"], "applied": ["4 3/8", "111"]}
    choices = [{"default_psi": 95}, {"default_psi": "60"}, {"default_date": "2021-10-13"}, {"default_unit": "mm"},
               {"rules": "ca-nsc"}, {"date_order": "day-first"}, {"decimal_comma": True}, {}]
    want = [list(rt.judge_columns(columns, **words)) for words in choices]
    assert len({repr(answers) for answers in want}) >= 5
    for words, answers in [*zip(choices, want)] * 3:
        assert list(rt.judge_columns(columns, **words)) == answers, words
        assert "binary float" in str(tap.refused(TypeError, rt.judge_columns, columns, default_psi=95.0))
        tap.refused(TypeError, rt.judge_columns, columns, out=[bytes(8)] * 4, **words)
    threads = [threading.Thread(target=lambda: [rt.judge_columns(columns, default_psi=95) for _ in range(200)])
               for _ in range(4)]
    for thread in threads:
        thread.start()
    for _ in range(200):
        assert list(rt.judge_columns(columns, default_psi=95)) == want[0]
    for thread in threads:
        thread.join()


def makers_of_answers():
    """Functions from an applied stroke in inches, and rows, to answers."""
    plan, judge = rt.Plan(), rt.Judge()
    code = plan.add("30")

    def of_numbers(inches, rows):
        return plan.judge(array.array("i", [0]) * rows, array.array("i", [inches * INCH]) * rows, bytes([code]) * rows)

    def of_texts(inches, rows):
        return judge({"chamber": ["30"] * rows, "released": ["0"] * rows, "applied": [str(inches)] * rows})

    return of_numbers, of_texts


def memory_of(answers):
    return len(answers.stroke.view.obj)


def test_memory_of_answers():
    """It is used again when they are gone, and never while anything of them is kept; few answers do not hold that of
    many."""
    views = (lambda answers: answers, lambda answers: answers.stroke, lambda answers: answers.stroke.view[1:],
             lambda answers: answers.stroke.view.toreadonly(), lambda answers: answers.stroke.view.cast("B").cast("i"))
    for make in makers_of_answers():
        many = memory_of(make(1, 5000))
        assert memory_of(make(1, 4000)) == many or FREE_THREADED
        assert memory_of(make(1, 5001)) > many > 100 * memory_of(make(1, 1)) and len(make(1, 0)) == 0
        for view in views:
            kept = [(inches, view(make(inches, 5000))) for inches in (1, 2, 3, 1, 2, 3)]
            for inches, each in kept:
                strokes = {answer.applied_stroke * INCH for answer in each} if isinstance(each, rt.Answers) else {*each}
                assert strokes == {inches * INCH}


def test_memory_of_finer_strokes():
    judge, cells = rt.Judge(), [(1, 900), (2, 800), (3, 700), (1, 900), (2, 1), (3, 700)]

    def judged(end, rows):
        return judge({"chamber": ["30"] * rows, "released": ["0"] * rows, "applied": [f"1.00000{end}"] * rows})

    kept = [judged(*each) for each in cells]
    for again in (lambda place: kept[place], lambda place: judged(*cells[place])):
        for place, (end, rows) in enumerate(cells):
            assert list(again(place).stroke_parts) == [rt.PARTS_PER_INCH * (10**6 + end) // 10**6] * rows


def order_of_threads(plan, column, codes):
    """The order in which two threads finish when no switch interval forces the judging one to release the lock."""
    order, go = [], threading.Event()

    def other():
        go.wait()
        order.append("other")

    thread = threading.Thread(target=other)
    thread.start()
    before = sys.getswitchinterval()
    sys.setswitchinterval(100)
    go.set()
    plan.judge(column, column, codes)
    order.append("judged")
    sys.setswitchinterval(before)
    thread.join(60)
    return order


def test_threads_judge_at_the_same_time():
    """The lock is released while columns are judged."""
    plan = rt.Plan()
    code = plan.add("30")
    column = array.array("i", [INCH]) * 4_000_000
    codes = bytes([code]) * 4_000_000
    assert any(order_of_threads(plan, column, codes) == ["other", "judged"] for _ in range(20))


def test_chambers_are_not_added_meanwhile():
    """New marks while another thread judges: the answers are right, and the plan in use does not change."""
    plan = rt.Plan()
    code = plan.add("30")
    column = array.array("i", [INCH]) * 3_000_000
    codes = bytes([code]) * 3_000_000
    thread = threading.Thread(target=lambda: [plan.judge(column, column, codes) for _ in range(10)])
    thread.start()
    refused = 0
    for number in range(40):
        answers = plan.judge(column[:2], column[:2], ["30", f"{number % 30 + 1}"])
        assert len(answers) == 2
        try:
            plan.add("24")
        except RuntimeError:
            refused += 1
        except rt.Error as error:
            assert error.status is rt.Status.SPACE
    thread.join()
    assert plan.add("24") > code or refused == 0


def test_answers_are_pickled():
    answers = rt.judge_columns(chamber=["30", "x"], released=["2", "2"], applied=["4 1/8", "3"])
    back = pickle.loads(pickle.dumps(answers))
    assert list(back) == list(answers) and list(back.flags) == list(answers.flags)


def test_threads_give_the_same_answers():
    plan = rt.Plan()
    code = plan.add("30")
    released, applied = numbers(50000)
    codes = bytes([code] * 50000)
    want = bytes(plan.judge(released, applied, codes).reasons.view)
    got = [None] * 8

    def work(number):
        got[number] = bytes(plan.judge(released, applied, codes).reasons.view)

    threads = [threading.Thread(target=work, args=(number,)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert got == [want] * 8


if __name__ == "__main__":
    tap.run(globals())
