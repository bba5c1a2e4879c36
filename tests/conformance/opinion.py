# SPDX-License-Identifier: Apache-2.0
"""A second judge of wheel ends in Python's fractions, which shares no line with the library: what it can say of a
question. It reads plain numbers only, and asks the limits of 49 CFR 393.47(e) of the table that was typed for the cases
(us-393-47.csv), the others of the library's own description."""
import datetime
import functools
import pathlib
import re
import sys
import unicodedata
from fractions import Fraction

CASES = pathlib.Path(__file__).resolve().parent.parent / "cases"
sys.path.insert(0, str(CASES))

import judge as typed  # noqa: E402  its second judge of every pair of readings

KPA = Fraction("0.45359237") * Fraction("9.80665") / Fraction("0.0254") ** 2 / 1000  # kPa of one psi


PLAIN = r"[0-9](\.[0-9]{1,6}|([ -][0-9]{1,2})?/(2|4|8|16|32|64))?"


def number(text):
    """2 1/4, 3 or 44.5 as a fraction; none for an empty cell."""
    return sum(map(Fraction, text.split())) if text else None


@functools.lru_cache(maxsize=None)
def length(text):
    """A reading that leaves no doubt; none for any other text."""
    if re.fullmatch(r"[0-9]{1,3}(\.[0-9])? mm", text):
        return Fraction(text[:-3]) * 10 / 254
    text = text.removesuffix('"').removesuffix(" in").replace("\u2044", "/")
    if re.fullmatch("[0-9]?[⅛¼⅜½⅝¾⅞]", text):
        return Fraction(text[:-1] or 0) + Fraction(unicodedata.numeric(text[-1]))
    return number(text.replace("-", " ")) if re.fullmatch(PLAIN, text) else None


@functools.lru_cache(maxsize=None)
def psi(text):
    return Fraction(text[:-4]) / KPA if text.endswith(" kPa") else Fraction(text)


def days_around(row):
    """A row's first and last day, and those beside them."""
    ends = [datetime.date.fromisoformat(row[end]) for end in ("from", "until") if row[end]]
    return [str(end + datetime.timedelta(days)) for end in ends for days in (-1, 0, 1)]


@functools.lru_cache
def law():
    return [{"family": row.family, "size": row.size, "class": row.stroke_class if row.stroke_class in ("standard", "long") else "any",
             "rated_stroke": str(row.rated or ""), "limit": row.limit, "from": row.first, "until": row.last}
            for row in typed.law(CASES / "us-393-47.csv")]


@functools.lru_cache(maxsize=None)
def row_of(rules, chamber, stroke_class, rated, day, described):
    """The only row of limits that can be meant; none where it takes more than the marks to know it."""
    family, _, size = chamber.partition(" ")
    if day and not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", day):
        return None
    rows = law() if rules == "us-fmcsr" else [row for row in described.rows if row["rules"] == rules]
    found = [row for row in rows if (row["family"], row["size"]) == (family, size) and
             (row["class"] == "any" and not stroke_class or row["class"] == stroke_class) and
             (row["rated_stroke"] or "") == rated and (row["from"] or "") <= (day or "9999") <= (row["until"] or "9999")]
    return found[0] if len(found) == 1 else None


READ = {"released", "applied", "psi", "psi_after", "chamber", "stroke_class", "rated_stroke", "date", "division", "ask",
        "rules"}


def judged(question, row, window):
    """What the answer must say; reasons of stroke and pressure only."""
    released, applied = (length(question.get(name, "")) for name in ("released", "applied"))
    pressures = [psi(question[name]) for name in ("psi", "psi_after") if name in question]
    limit, stroke = row["limit"], applied - released
    low, high = any(p < window[0] for p in pressures), any(p > window[1] for p in pressures)
    reasons = {"pressure-low": low, "pressure-high": high, "pressure-not-recorded": "psi" not in question,
               "readings-swapped": stroke < 0, "no-movement": stroke == 0, "over-limit": stroke > limit,
               "at-limit": stroke == limit, "within-limit": 0 < stroke < limit}
    told = {"limit": str(limit), "stroke": str(stroke), "margin": str(limit - stroke)}
    if stroke < 0:
        told = {"limit": str(limit), "stroke": None, "margin": None}
    verdict = ("undetermined" if stroke < 0 else "inoperative" if stroke == 0 else
               "out-of-adjustment" if stroke > limit else "in-adjustment")
    if low and verdict == "in-adjustment" or high and verdict == "out-of-adjustment":
        verdict = "undetermined"
    return {**told, "verdict": verdict}, reasons


def differences(question, answer, described):
    """What this judge says otherwise; None where it has no opinion."""
    marks = (question.get(name, "") for name in ("chamber", "stroke_class", "rated_stroke", "date"))
    row = row_of(question["rules"], *marks, described)
    readings = [length(question.get(name, "")) for name in ("released", "applied")]
    numbers = all(re.fullmatch(r"[0-9.]+( kPa)?", question.get(name, "0")) for name in ("psi", "psi_after"))
    if row is None or None in readings or not numbers or not set(question) <= READ:
        return None
    of = described.sets[question["rules"]]
    told, reasons = judged(question, row, (number(of["psi_from"]), number(of["psi_until"])))
    found = [f"{name}: {answer.get(name)!r}, second judge {value!r}" for name, value in told.items() if answer.get(name) != value]
    return found + [f"reason {reason}: second judge {has}" for reason, has in reasons.items()
                    if has != (reason in answer.get("reasons", []))]
