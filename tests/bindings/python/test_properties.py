# SPDX-License-Identifier: Apache-2.0
"""Properties that hold for all inputs, against Python's own fractions. Needs hypothesis."""
import os
import pickle
import re
import tempfile
from fractions import Fraction

import tap

os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = tempfile.mkdtemp()

try:
    from hypothesis import given, settings, strategies as st
except ImportError:
    tap.skip("hypothesis is not installed")

import rodtravel as rt

settings.register_profile("steady", derandomize=True, max_examples=150, deadline=None, database=None)
settings.load_profile("steady")

TAPES = st.sampled_from([1, 2, 4, 8, 16, 32, 64, 10, 100, 1000])
READINGS = st.builds(Fraction, st.integers(0, 24 * 64), TAPES).filter(lambda length: length <= 24)
LIMITS = {"6": Fraction(5, 4), "9": Fraction(11, 8), "16": Fraction(7, 4), "24": Fraction(7, 4), "30": Fraction(2)}


def mixed(length):
    """A mixed fraction, not by the library."""
    whole, rest = divmod(length, 1)
    return f"{whole} {rest}" if whole and rest else f"{rest or whole}"


@given(READINGS)
def test_reading_and_writing(length):
    assert rt.read_length(mixed(length)) == length
    assert rt.write_length(length) == mixed(length)
    assert rt.read_length(f"{float(length):.6f}") == Fraction(f"{float(length):.6f}")


@given(st.integers(-10**9, 10**9), st.integers(1, 10**6), st.integers(1, 64))
def test_rounding(num, den, parts):
    value, division = Fraction(num, den), Fraction(1, parts)
    assert rt.round_length(value, division) == round(value / division) * division


@given(st.integers(0, 10**6), st.integers(1, 10**4))
def test_millimetres(num, den):
    assert rt.inches_from_mm(Fraction(num, den)) == Fraction(num, den) * 5 / 127


@given(st.sampled_from(sorted(LIMITS)), READINGS, READINGS)
def test_verdict(size, released, applied):
    finding = rt.judge(size, released, applied, stroke_class="standard", psi=95)
    stroke, limit = applied - released, LIMITS[size]
    want = ("undetermined" if stroke < 0 else "inoperative" if stroke == 0 else
            "out-of-adjustment" if stroke > limit else "in-adjustment")
    assert finding.verdict == want
    if stroke >= 0:
        assert (finding.applied_stroke, finding.margin) == (stroke, limit - stroke)
        assert ("at-limit" in finding.reasons) == (stroke == limit)
    assert pickle.loads(pickle.dumps(finding)) == finding


@given(READINGS, READINGS, st.sampled_from([Fraction(1, 8), Fraction(1, 16), Fraction(1, 32)]))
def test_chance_of_being_over(released, applied, division):
    """The triangular law of two readings, each off by half a division at most, integrated by hand."""
    finding = rt.judge("30", released, applied, division=division)
    if finding.probability_over is None:
        return
    over = (applied - released - 2) / division
    below = max(Fraction(0), 1 - abs(over)) ** 2 / 2
    assert finding.probability_over == (1 - below if over > 0 else below)


@given(st.text(max_size=20))
def test_any_text(text):
    """Whatever is written is a length or an Error, and never a surprise."""
    for read in (rt.read_length, rt.read_pressure, rt.read_chamber, rt.read_date, rt.read_position):
        try:
            read(text)
        except rt.Error as error:
            assert error.column is None or 1 <= error.column <= len(text) + 1, (text, error.column)


ROWS = st.lists(st.tuples(st.sampled_from(["30", "24 long", "x", "", None]),
                          st.one_of(st.none(), st.text("0123456789 /-.,½mnic\"", max_size=8), READINGS.map(mixed)),
                          READINGS.map(mixed)), max_size=40)


@given(ROWS)
def test_columns(rows):
    answers = rt.judge_columns(chamber=[row[0] for row in rows], released=[row[1] for row in rows],
                               applied=[row[2] for row in rows])
    for row, answer in zip(rows, answers):
        finding, _ = rt.judge_row(chamber=row[0], released=row[1], applied=row[2])
        assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons)


@given(st.integers(0, 40), st.integers(0, 40), st.integers(0, 40))
def test_count(full, half, rest):
    brakes = full + half + rest
    if brakes == 0:
        return
    count = rt.Tally(brakes=brakes, full=full, half=half).judge()
    share = Fraction(2 * full + half, 2 * brakes)
    needed = -(-brakes // 5)
    assert count.share == share and count.whole_needed == needed
    want = ("below-criterion" if share < Fraction(1, 5) else
            "out-of-service" if full + Fraction(half, 2) >= needed else "ambiguous")
    assert count.outcome == want


@given(st.sampled_from(["30", "24/30 LS", "bolt C", "roto 16", "DD-3"]), st.sampled_from(list(rt.StrokeClass)[:3]),
       st.one_of(st.none(), READINGS.filter(lambda inches: Fraction(3, 4) <= inches <= 6)))
def test_chambers(mark, stroke_class, rated):
    read = rt.read_chamber(mark)
    chamber = rt.Chamber(read.size, family=read.family, stroke_class=stroke_class, spring_size=read.spring_size,
                         rated_stroke=rated)
    assert pickle.loads(pickle.dumps(chamber)) == chamber and chamber.rated_stroke == rated
    assert str(chamber) == re.sub(r"\s+", " ", str(chamber))


if __name__ == "__main__":
    tap.run(globals())
