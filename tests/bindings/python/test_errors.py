# SPDX-License-Identifier: Apache-2.0
"""Wrong inputs are refused with their place, and never read as something else."""
import pickle
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction

import rodtravel as rt
import tap

FLOATS = [2.5, float("nan"), True]


def test_family():
    error = tap.refused(ValueError, rt.judge, "30", "2 1/8", "2-Jan")
    assert isinstance(error, rt.Error) and error.status is rt.Status.DATE_CELL
    assert (error.field, error.column, error.line) == ("applied", 1, None)
    back = pickle.loads(pickle.dumps(error))
    assert (type(back), str(back), back.status, back.column) == (rt.Error, str(error), error.status, error.column)


def test_catalogues():
    """An error is data: another language needs no more than its sentences, and keeps what it lacks in English."""
    error = tap.refused(rt.Error, rt.read_length, "2 x")
    german = rt.Catalogue("de", {"error.expected": "{wanted} erwartet, nicht {found}",
                                 "count.none": "keine Bremse gemessen"}, decimal_sign=",")
    assert german.say(error) == "in, mm, cm or the end of the text erwartet, nicht x"
    assert german.say(pickle.loads(pickle.dumps(error))) == german.say(error)
    assert "error.expected" not in german.missing and "error.wanted.number" in german.missing
    own = rt.Error(rt.Status.SYNTAX, "of a program")
    assert own.parts == (0, ()) and german.say(own) == "of a program"
    english = rt.Catalogue("en", rt.english_sentences())
    assert english.missing == () and english.say(error) == error.text
    for chamber, released, applied in (("30", "2 1/8", "4 3/8"), ("24L", "2", "4"), ("7", "1", "3"), ("30", "4", "2")):
        finding = rt.judge(chamber, released, applied, division="1/16")
        assert english.say(finding) == str(finding) and english.proof(finding) == finding.proof_sentence
        assert english.reasons(finding) == finding.sentences
    count = rt.Tally(6, 1, 1).judge()
    assert english.say(count) == str(count) and german.say(rt.Tally().judge()) == "keine Bremse gemessen"


def test_wrong_catalogues():
    for templates, field, words in (({"stroke.nothing": "x"}, "stroke.nothing", "no sentence of this code"),
                                    ({"stroke.over-limit": "{exces}"}, None, "no argument of the name exces"),
                                    ({"stroke.over-limit": "{excess"}, None, "a brace is not closed"),
                                    ({"none": ""}, "none", "no sentence of this code")):
        error = tap.refused(rt.Error, rt.Catalogue, "xx", templates)
        assert error.field == field and words in error.text, error
    tap.refused(rt.Error, lambda: rt.Catalogue("xx", {}, plural="many"))
    tap.refused(TypeError, rt.Catalogue, "xx", {"stroke.over-limit": 1})
    tap.refused(TypeError, rt.Catalogue("xx", {}).say, "text")


def test_floats():
    for value in FLOATS:
        for call in (lambda: rt.judge("30", value, "4"), lambda: rt.judge("30", "2", value),
                     lambda: rt.judge("30", "2", "4", psi=value), lambda: rt.judge("30", "2", "4", division=value),
                     lambda: rt.judge("30", "2", "4", rated_stroke=value), lambda: rt.write_length(value),
                     lambda: rt.write_pressure(value), lambda: rt.inches_from_mm(value), lambda: rt.psi_from_kpa(value),
                     lambda: rt.Chamber("30", rated_stroke=value), lambda: rt.identify(stamp="30", diameter=value),
                     lambda: rt.judge_air("warning", pressure=value), lambda: rt.judge_air("build-up", seconds=value),
                     lambda: rt.al_factor("30", value), lambda: rt.estimate_application(value, 1, 1),
                     lambda: rt.estimate_application(100, value, 1), lambda: rt.round_length(value, "1/16"),
                     lambda: rt.WheelEnd("1L", rt.judge("30", "2", "4"), arm_length=value),
                     lambda: rt.judge_row(chamber="30", released=value), lambda: rt.Plan(psi=value)):
            tap.refused(TypeError, call)
    message = str(tap.refused(TypeError, rt.judge, "30", 2.5, "4"))
    assert message.startswith("released is a binary float (2.5)") and "fractions.Fraction" in message


def test_exact_numbers_in():
    want = rt.judge("30", "2 1/8", "4 1/8")
    for released, applied in ((Fraction(17, 8), Fraction(33, 8)), (Decimal("2.125"), Decimal("4.125")),
                              ("2.125", Fraction(33, 8))):
        assert rt.judge("30", released, applied) == want
    assert "lost-blank" not in want.reasons and "lost-blank" in rt.judge("30", "17/8", "4 1/8").reasons
    assert rt.judge("30", Fraction(17, 8), Fraction(33, 8), decimal_comma=True) == want
    assert rt.judge("30", Decimal("54.5"), Fraction(217, 2), unit="mm").applied_stroke == Fraction(54 * 5, 127)
    assert rt.judge("30", 2, 4).applied_stroke == 2
    assert rt.judge("30", Decimal("44.45"), 95, unit="mm").released == Fraction(7, 4)
    metric = rt.judge("30", "50 mm", "101 mm")
    assert rt.judge("30", metric.released, metric.applied).applied_stroke == metric.applied_stroke


def test_numbers_are_read_like_text():
    for number, status in ((Fraction(1, 3), "SYNTAX"), (-1, "NEGATIVE"), (25, "IMPLAUSIBLE"), (10**30, "RANGE"),
                           (Fraction(1, 10**12), "RANGE"), (Decimal("NaN"), "ARGUMENT"), (Decimal("Infinity"), "ARGUMENT")):
        error = tap.refused(rt.Error, rt.judge, "30", number, "4")
        assert (error.status.name, error.field) == (status, "released"), (number, error)


def test_numbers_of_other_libraries():
    """Whatever is rational by Python's own protocol."""
    class Ratio:
        numerator, denominator = 17, 8
    assert rt.judge("30", Ratio(), "4 1/8") == rt.judge("30", "2 1/8", "4 1/8")
    Ratio.denominator = 0
    tap.refused(rt.Error, rt.judge, "30", Ratio(), "4 1/8")
    Ratio.denominator = "8"
    tap.refused(TypeError, rt.judge, "30", Ratio(), "4 1/8")


def test_texts():
    for text in ("\ud800", "2\0", "", "é" * 1000, "9" * 100000):
        error = tap.refused(rt.Error, rt.judge, "30", text, "4")
        assert error.field == "released", repr(text)
        tap.refused(rt.Error, rt.read_length, text)
        tap.refused(rt.Error, rt.read_chamber, text)
        tap.refused(rt.Error, rt.read_date, text)
        tap.refused(rt.Error, rt.read_position, text)
    error = tap.refused(rt.Error, rt.judge, "30", "2 é", "4")
    assert error.column == 3  # characters, not bytes


def test_wrong_types():
    for value in (object(), [], {}, b"2 1/8", None):
        tap.refused((TypeError, rt.Error), rt.judge, "30", value, "4")
        tap.refused(TypeError, rt.read_length, value)
        if value is not None:
            tap.refused(TypeError, rt.judge, value, "2", "4")
            tap.refused(TypeError, rt.judge, "30", "2", "4", rules=value)
            tap.refused(TypeError, rt.judge, "30", "2", "4", date=value)
    tap.refused(TypeError, rt.judge, "30", "2", "4", engine_running="off")
    tap.refused(TypeError, rt.judge, "30", "2", "4", engine_running=1)
    tap.refused(TypeError, rt.judge, "30", "2", "4", nonsense=1)
    tap.refused(TypeError, rt.judge_vehicle, ["1L"])
    tap.refused(TypeError, rt.WheelEnd, "1L", "good")
    tap.refused(TypeError, lambda: rt.Tally() + "good")


def test_words():
    for words in ({"unit": "ft"}, {"drum": "lukewarm"}, {"stroke_class": "medium"}, {"rules": "atlantis"}):
        error = tap.refused(rt.Error, rt.judge, "30", "2", "4", **words)
        assert error.field, error
    assert "'in', 'mm', 'cm'" in str(tap.refused(rt.Error, rt.read_length, "2", unit="ft"))
    tap.refused(rt.Error, rt.judge_air, "tyres")
    tap.refused(rt.Error, rt.Position, 1, "middle")
    tap.refused(rt.Error, rt.Chamber, "30", family="square")


def test_small_numbers():
    for digits in (-1, 13, 2**40):
        tap.refused(rt.Error, rt.write_decimal, 1, digits)
    tap.refused(TypeError, rt.write_decimal, 1, 1.0)
    for number in (-1, 2**40):
        tap.refused(rt.Error, rt.judge_air, "reserve", applications=number)
        tap.refused(rt.Error, rt.judge_air, "reserve", towed_units=number)
    assert tap.refused(rt.Error, rt.judge_air, "build-up", seconds=-1).field == "seconds"
    assert tap.refused(rt.Error, rt.judge_air, "warning", pressure=400).field == "pressure"
    assert tap.refused(rt.Error, rt.identify, diameter="8 1/8", diameter_division=0).field == "diameter_division"
    tap.refused((rt.Error, TypeError), rt.judge_air, "warning", built=2**70)
    tap.refused((rt.Error, TypeError), rt.judge_air, "warning", answer="yes")


def test_no_name_of_the_wrapper_in_messages():
    for call in (lambda: rt.read_length(3), lambda: rt.write_length(object()), lambda: rt.judge("30", [], "4"),
                 lambda: rt.write_decimal(1, "x"), lambda: rt.load_rules(3), lambda: rt.read_pressure(None),
                 lambda: rt.rated_volume(3), lambda: rt.estimate_application("x", 1, 1), lambda: rt.pushrod_force("30", {})):
        message = str(tap.refused((TypeError, rt.Error), call))
        assert "rodt_" not in message and "in method" not in message, message


def test_a_sentence_is_told_once():
    """A call that has no sentence of its own does not report that of an earlier one."""
    first = tap.refused(rt.Error, rt.read_chamber, "30 blue")
    later = tap.refused(rt.Error, rt.rated_volume, rt.Chamber("99"))
    assert first.status is later.status is rt.Status.UNKNOWN_CHAMBER
    assert first.column and first.text != later.text and later.column is None
    assert "no clue" in str(tap.refused(rt.Error, rt.identify))


def test_days():
    assert rt.judge("36", "2", "4 1/2", date=date(2021, 10, 13)).limit == Fraction(9, 4)
    assert rt.judge("36", "2", "4 1/2", date=datetime(2021, 10, 14, 8, 30)).limit == Fraction(5, 2)
    assert tap.refused(rt.Error, rt.judge, "36", "2", "4", date="06/05/2024").status is rt.Status.AMBIGUOUS
    assert tap.refused(rt.Error, rt.judge, "36", "2", "4", date=date(1066, 10, 14)).field == "date"
    tap.refused(rt.Error, rt.read_date, "2023-02-29")


def test_conditions():
    assert "engine-running" in rt.judge("30", "2", "4", engine_running=True).reasons
    assert "engine-running" not in rt.judge("30", "2", "4", engine_running=False).reasons
    assert "spring-brake-applied" in rt.judge("30", "2", "4", spring_brake_applied=True).reasons
    assert "drum-hot" in rt.judge("30", "2", "4 1/8", drum="hot").reasons


def test_chambers():
    assert rt.judge(rt.Chamber("30", stroke_class="long"), "2", "4 1/2").limit == Fraction(5, 2)
    marked = rt.Chamber("20", stroke_class="long", rated_stroke=3)
    assert rt.judge(marked, "2", "4 1/2").limit == Fraction(5, 2)
    assert rt.judge(marked, "2", "4 1/2", rated_stroke="2 1/2").limit == 2
    assert rt.judge_row(chamber=rt.Chamber(), released="2", applied="3")[0].verdict == "undetermined"
    tap.refused(rt.Error, rt.judge, rt.Chamber(), "2", "3")
    tap.refused(rt.Error, rt.Chamber, "3000")
    tap.refused(rt.Error, rt.Chamber, 30)


def test_rules_from_text():
    head = "family,size,class,limit\n"
    error = tap.refused(rt.Error, rt.load_rules, head + "clamp,30,standard,2 1/8\n")
    assert (error.status, error.line) == (rt.Status.LAXER, 2) and error.column
    error = tap.refused(rt.Error, rt.load_rules, head + "clamp,30,standard,2 1/8\nclamp,zz,,1\n")
    assert error.line
    tap.refused(rt.Error, rt.load_rules, "")
    tap.refused(rt.Error, rt.load_rules, head + "clamp,30,standard,1 7/8\n", law="atlantis")
    own = rt.load_rules(head + "clamp,30,standard,1 7/8\n", name="yard")
    assert own == rt.load_rules(head + "clamp,30,standard,1 7/8\n", name="yard") and own.law.id == "us-fmcsr"
    tap.refused(rt.Error, rt.load_rules, head + "clamp,30,standard,1 3/4\n", law=own)


def test_vehicles():
    ends = [rt.WheelEnd("1L", rt.judge("30", "2", "4")), rt.WheelEnd("1L", rt.judge("30", "2", "4"))]
    ends.insert(1, rt.WheelEnd("1R", ends[0].finding))
    error = tap.refused(rt.Error, rt.judge_vehicle, ends)
    assert (error.status.name, error.field, error.line) == ("ARGUMENT", "position", 3)
    error = tap.refused(rt.Error, rt.judge_vehicle, [rt.WheelEnd(f"{axle}L", ends[0].finding) for axle in range(1, 70)])
    assert (error.status.name, error.field) == ("RANGE", "position") and error.line == 41, error.line
    other = rt.WheelEnd("2L", rt.judge("30", "2", "4", rules="ca-on"))
    error = tap.refused(rt.Error, rt.judge_vehicle, [*ends[:2], other])
    assert (error.status.name, error.field, error.line) == ("ARGUMENT", "rules", 3)
    tap.refused(rt.Error, rt.judge_vehicle, [])
    tap.refused(rt.Error, rt.judge_vehicle, ends[:1], brakes=0)
    tap.refused(rt.Error, rt.judge_vehicle, ends[:1], brakes=-1)
    tap.refused(rt.Error, rt.judge_vehicle, ends[:1], brakes=2**40)
    tap.refused(rt.Error, rt.Tally(brakes=1).judge, 2**70)
    for axle in (0, -1, 100, 2**40):
        assert tap.refused(rt.Error, rt.Position, axle, "left").field == "axle"
    tap.refused(TypeError, rt.Position, 1.0, "left")
    tap.refused(rt.Error, rt.Tally, brakes=2, full=3)
    tap.refused(rt.Error, rt.Tally, brakes=-1)
    tap.refused(TypeError, rt.Tally, brakes=1.5)


if __name__ == "__main__":
    tap.run(globals())
