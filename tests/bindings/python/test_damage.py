# SPDX-License-Identifier: Apache-2.0
"""No damaged, missing or contradictory argument, cell or column makes an answer more favourable (lib/README.md): every
keyword of judge, judge_row, judge_columns, judge_vehicle and judge_air, by their signatures, in turn left out and replaced
by the texts of cases/damages.csv and by objects that are no text."""
import csv
import inspect
import itertools
import os
import warnings
from decimal import Decimal
from fractions import Fraction

import rodtravel as rt
import tap

STYLE = {"rules", "decimal_comma", "default_unit", "date_order", "default_date", "default_psi", "out", "table"}
NAMES = {"engine_running": "engine", "spring_brake_applied": "spring_brake"}  # of judge, which takes booleans
GOOD, AT, OVER, DEAD = "3 15/16", "4", "4 1/16", "2"
PASS = "in-adjustment"


def cases(name):
    with open(os.path.join(os.environ["CASES"], name), encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("# ")))


ENTRIES = {(row["group"], row["entry"]): row for row in cases("entries.csv")}
TEXTS = cases("damages.csv")
SOUND = {entry: row["sound"] for (group, entry), row in ENTRIES.items() if group == "reading"}
OBJECTS = (2.5, float("nan"), True, False, b"2", [], {}, object(), 2 + 0j, ["2"])


def damages(kind):
    yield from (("", "nothing"), (" \t", "nothing"), (None, "nothing"))
    for row in TEXTS:
        yield row["text"], ("value" if kind in row["value_of"].split() else
                            "nothing" if kind in row["nothing_for"].split() else "unreadable")


def parameters(function):
    return [name for name in inspect.signature(function).parameters if name not in STYLE]


def outcome(function, *args, **words):
    """A verdict, or the refusal."""
    try:
        return function(*args, **words)
    except (rt.Error, TypeError, ValueError) as error:
        return error


def bases():
    yield from ({**SOUND, "applied": applied} for applied in (GOOD, AT, OVER, DEAD))
    yield from ({**SOUND, "applied": GOOD, entry: ENTRIES["reading", entry]["contrary"]} for entry in SOUND
                if ENTRIES["reading", entry]["contrary"])


def expect(row, how, before, after, said):
    """Verdicts, and what was refused."""
    refused = isinstance(after, Exception)
    assert how != "unreadable" or refused or after != PASS or (row["kind"] == "date" and before == PASS), said
    assert how != "nothing" or refused or after != PASS or before == PASS or row["absence"], said


def test_rows():
    assert parameters(rt.judge_row) == list(SOUND) == parameters(rt.judge_columns), "entries.csv lacks an argument"
    for base in bases():
        before = rt.judge_row(**base)[0].verdict
        for entry in SOUND:
            row = ENTRIES["reading", entry]
            column = list(damages(row["kind"]))
            table = {name: [text] + [text] * len(column) for name, text in base.items()}
            table[entry] = [base[entry], *(text for text, _ in column)]
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                answers = rt.judge_columns(table)
            for (text, how), answer in itertools.zip_longest(column, answers[1:]):
                finding, error = rt.judge_row(**{**base, entry: text})
                assert (finding.verdict, finding.reasons) == (answer.verdict, answer.reasons), (entry, text)
                assert how != "unreadable" or error is not None and error.field == entry, (entry, text, error)
                expect(row, how, before, finding.verdict, f"{entry} {text!r}: {before} became {finding.verdict}")


def test_objects_in_rows():
    """What is no text and no exact number is refused, wherever it stands."""
    for entry, wrong in itertools.product(SOUND, OBJECTS):
        if isinstance(wrong, bool) and ENTRIES["reading", entry]["kind"] in ("length", "mark", "division", "pressure"):
            continue  # Python's True is 1
        tap.refused((TypeError, rt.Error), rt.judge_row, **{**SOUND, entry: wrong})
        tap.refused((TypeError, rt.Error), rt.judge_columns, {**{name: [text] * 2 for name, text in SOUND.items()},
                                                              entry: [SOUND[entry], wrong]})
    for entry in SOUND:
        exact = outcome(rt.judge_row, **{**SOUND, entry: Fraction(7, 1)})
        assert isinstance(exact, Exception) or exact[0].verdict != PASS, (entry, exact)
        assert outcome(rt.judge_row, **{**SOUND, entry: Decimal("NaN")}).__class__ in (TypeError, rt.Error), entry


def test_judge():
    """One wheel end is refused where a row is open."""
    names = {name: NAMES.get(name, name) for name in parameters(rt.judge)}
    assert set(names.values()) == set(SOUND), "entries.csv lacks an argument"
    for base in bases():
        sound = {name: base[entry] for name, entry in names.items() if name not in NAMES}
        before = outcome(rt.judge, **sound)
        before = before if isinstance(before, Exception) else before.verdict
        for name, entry in names.items():
            row = ENTRIES["reading", entry]
            for text, how in damages(row["kind"]):
                after = outcome(rt.judge, **{**sound, name: text})
                after = after if isinstance(after, Exception) else after.verdict
                assert how != "unreadable" or isinstance(after, Exception), (name, text, after)
                if name not in NAMES or text is not None:
                    expect(row, how, before, after, f"{name} {text!r}: {before} became {after}")
            assert isinstance(outcome(rt.judge, **{**sound, name + "s": base[entry]}), TypeError), name


def test_vehicles():
    """A brake that is damaged, left out or there twice."""
    positions = ("1L", "1R", "2L", "2R")
    for patterns in ((GOOD, AT, GOOD, GOOD), (OVER, AT, GOOD, GOOD), (DEAD, AT, GOOD, GOOD), ("?", AT, GOOD, GOOD)):
        findings = [rt.judge_row(**{**SOUND, "applied": applied})[0] for applied in patterns]
        ends = [rt.WheelEnd(position, finding) for position, finding in zip(positions, findings)]
        before = rt.judge_vehicle(ends)
        for place in range(4):
            left = rt.judge_vehicle(ends[:place] + ends[place + 1:])
            assert left.count.brakes == 4 and left.count.worst_share >= before.count.worst_share
            assert left.in_adjustment <= before.in_adjustment
            assert left.count.outcome != "below-criterion" or before.count.outcome == "below-criterion"
            tap.refused(rt.Error, rt.judge_vehicle, [*ends, ends[place]])
            for entry, text in (("released", "x"), ("applied", None), ("chamber", "?"), ("psi", "lots"), ("unit", "ft")):
                damaged = rt.judge_row(**{**SOUND, "applied": patterns[place], entry: text})[0]
                after = rt.judge_vehicle([*ends[:place], rt.WheelEnd(positions[place], damaged), *ends[place + 1:]])
                assert after.count.worst_share >= before.count.worst_share and after.in_adjustment <= before.in_adjustment
                assert after.count.outcome != "below-criterion" or before.count.outcome == "below-criterion"
        for wrong in (-1, 3, 0.5, "4", True):
            after = outcome(rt.judge_vehicle, ends, brakes=wrong)
            assert isinstance(after, Exception), wrong
    finding = rt.judge_row(**SOUND)[0]
    jumped = rt.judge_vehicle([rt.WheelEnd(position, finding) for position in ("1L", "1R", "3L", "3R")])
    assert (jumped.count.brakes, jumped.count.unmeasured, str(jumped.count.outcome)) == (6, 2, "undetermined")


def test_air():
    names = set(parameters(rt.judge_air))
    assert names == {entry for group, entry in ENTRIES if group == "air"}, "entries.csv lacks an argument"
    lists = {"pressure", "before", "after", "cut_out", "cut_in", "seconds"}
    numbers = {"towed_units": int, "applications": int}
    for case in cases("air_edges.csv"):
        given = {{"towed": "towed_units"}.get(name, name): text for name, text in case.items()
                 if text and name not in ("result", "at_limit", "source")}
        given.update({name: kind(given[name]) for name, kind in numbers.items() if name in given})
        given.update({name: Fraction(given[name]) for name in ("actual_volume", "required_volume") if name in given})
        if len(given.get("built", "")) == 4:
            given["built"] = int(given["built"])  # a year
        if "answer" in given:
            given["answer"] = given["answer"] == "yes"
        before = rt.judge_air(**given).result
        assert before == case["result"], case
        for name in set(given) - {"check", "rules"}:
            after = rt.judge_air(**{key: value for key, value in given.items() if key != name}).result
            assert after not in ("good", "noted") or before in ("good", "noted") or ENTRIES["air", name]["absence"], (case, name)
    for name in lists:
        for text, how in damages(ENTRIES["air", name]["kind"]):
            if how == "unreadable" or text in ("", " \t"):
                after = outcome(rt.judge_air, "loss-applied", **{"before": "100", "after": "99", name: text})
                assert isinstance(after, Exception), (name, text, after)
    for name, wrong in itertools.product(names - {"check"}, OBJECTS):
        if isinstance(wrong, bool):
            continue  # an answer, or 1
        assert isinstance(outcome(rt.judge_air, "warning", **{name: wrong}), Exception), (name, wrong)


if __name__ == "__main__":
    tap.run(globals())
