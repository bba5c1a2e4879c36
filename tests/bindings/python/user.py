# SPDX-License-Identifier: Apache-2.0
"""A program that uses the types; checked, and run too."""
from __future__ import annotations

from array import array
from datetime import date
from decimal import Decimal
from fractions import Fraction

import rodtravel as rt


def worst(readings: list[tuple[str, str]]) -> Fraction | None:
    findings = [rt.judge("30", released, applied, date=date(2024, 6, 5)) for released, applied in readings]
    margins = [finding.margin for finding in findings if finding.margin is not None]
    return min(margins, default=None)


def words(finding: rt.Finding) -> list[str]:
    return [reason.value for reason in finding.reasons if reason is not rt.Reason.WITHIN_LIMIT]


assert worst([("2", "4"), ("2", "4 1/8")]) == Fraction(-1, 8)
assert words(rt.judge(rt.Chamber("30", stroke_class=rt.StrokeClass.LONG), Decimal("2.5"), 5, psi=95)) == ["at-limit"]
ends = [rt.WheelEnd("1L", rt.judge("20", "2", "3 1/2")), rt.WheelEnd(rt.Position(1, "right"), rt.judge("20", "2", "4"))]
outcome: rt.Outcome = rt.judge_vehicle(ends, brakes=10).count.outcome
counts: dict[rt.Verdict, int] = rt.judge_columns(chamber=["30"], released=["2"], applied=["4"]).counts()
try:
    rt.read_length("1,000")
except rt.Error as error:
    column: int | None = error.column
answers: rt.Answers = rt.judge_columns(chamber=["30"] * 2, released=["2"] * 2, applied=["4"] * 2)[1:]
first: rt.Answer = answers[0]
plan = rt.Plan()
readings = array("i", [2 * rt.UNITS_PER_INCH])
again: rt.Answers = plan.judge(readings, memoryview(readings), bytes([plan.add("30")]))
verdicts: tuple[rt.Verdict, ...] = tuple(each.verdict for each in answers)
limits: list[Fraction] = [row.limit for row in rt.rule_set().limits if row.source.document]

judge = rt.Judge("us-fmcsr", limits=None, division=Fraction(1, 16), psi=95, date=date(2024, 6, 5))
table: dict[str, list[object]] = {"unit_no": ["T-1", "T-1"], "chamber": ["30", 30], "released": [2.125, Decimal(2)],
                                  "applied": ["4 1/8", 4.0625]}
judged: rt.Answers = judge(table)
margin: Fraction | None = judged[0].margin
parts: list[rt.Answers] = list(judge.batches([table, table]))
inspections: rt.Inspections = judge.vehicles(table, by=["unit_no"], pool=True)
worst_outcome: rt.Outcome = max((each.outcome for each in inspections), key=lambda outcome: outcome.number)
strokes: rt.Answers = judge({"chamber": ["30"]}, stroke=["2 1/8"])
