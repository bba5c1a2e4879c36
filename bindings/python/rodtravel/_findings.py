# SPDX-License-Identifier: Apache-2.0
"""The judgement of one wheel end."""
from __future__ import annotations

import operator
import re
from collections.abc import Callable
from datetime import date as Date
from fractions import Fraction
from typing import Any

from . import _rodtravel as _low
from ._chambers import Chamber, chamber_of
from ._enums import (Basis, DateOrder, Defect, Drum, Evidence, PressureUnit, Proof, Reason, StrokeClass, Unit, Verdict,
                     from_number, number_of)
from ._error import Error, Status
from ._html import table
from ._record import Field, Record, layout_of
from ._rules import DEFAULT_RULES, Limit, Rules, _known, rule_set
from ._source import Source
from ._types import Day, Exact

class Finding(Record, of="rodt_finding"):
    """The judgement of one wheel end, made by judge and judge_row. Read-only.

    >>> finding = judge("20", "3 3/8", "4 13/16", stroke_class="standard", psi=95)
    >>> str(finding.verdict), finding.applied_stroke, finding.margin
    ('in-adjustment', Fraction(23, 16), Fraction(5, 16))
    >>> print(finding)
    3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare
    """

    __slots__ = ("_kept", "_rules", "_cached")
    _kept: Any  # the C struct
    _rules: Rules
    _cached: dict[int, Any]  # members that were looked up, by index
    verdict: Field[Verdict] = Field("The Verdict.")
    proof: Field[Proof] = Field("What the divisions of the tape prove, a Proof; it never changes the verdict.")
    reasons: Field[tuple[Reason, ...]] = Field("Why, a tuple of Reason.")
    chamber: Field[Chamber] = Field("The Chamber as it was judged: what was assumed is filled in.")
    released: Field[Fraction | None] = Field("Released measurement, inches; None = missing or unreadable.")
    applied: Field[Fraction | None] = Field("Applied measurement, inches; None = missing or unreadable.")
    applied_stroke: Field[Fraction | None] = Field(
        "Applied less released, inches; None where one is missing or they are swapped.")
    limit: Field[Fraction | None] = Field(
        "The limit that judged, inches: the stricter of the law's and a carrier's own; None = none.")
    source: Field[Source | None] = Field("Source of `limit`; or None.")
    evidence: Field[Evidence] = Field("How `limit` was checked, an Evidence.")
    law_evidence: Field[Evidence] = Field("How `law_limit` was checked, an Evidence.")
    law_limit: Field[Fraction | None] = Field(
        "The law's limit, inches; it differs from `limit` under a carrier's own limits only.")
    law_source: Field[Source | None] = Field("Source of `law_limit`; or None.")
    margin: Field[Fraction | None] = Field(
        "Limit less applied stroke, inches; negative = over; None where one is missing; the whole limit if inoperative.")
    long_limit: Field[Fraction | None] = Field(
        "With `assumed-standard`: the limit that the long-stroke chamber of this size has, inches.")
    unit: Field[Unit] = Field("The Unit of the sentences.")
    pressure_unit: Field[PressureUnit] = Field("The PressureUnit that the gauge was read in; the sentences speak in it.")
    division: Field[Fraction | None] = Field("Smallest graduation that was read, inches; or None.")
    probability_over: Field[Fraction | None] = Field(
        "Exact probability that the true stroke is over the limit; given with a proof.")
    pressure: Field[Fraction | None] = Field("Reservoir pressure before the application, psi; None = not recorded.")
    pressure_after: Field[Fraction | None] = Field("Reservoir pressure after it, psi; None = not recorded.")
    day: Field[Date | None] = Field("The day whose law judged; None = the newest text.")
    other_day: Field[Date | None] = Field("The second meaning of an ambiguous date; or None.")
    law_basis: Field[Basis] = Field("What the law's limit is based on, a Basis.")
    _row: Field[int] = Field("Number of the law's row; -1 = none.", operator.index, of="law_row")
    _own_row: Field[int] = Field("Number of the carrier's row; -1 = none.", operator.index, of="own_row")

    @classmethod
    def _getter(cls, index: int) -> Callable[[Any], Any]:
        """Converts the member when it is looked up for the first time, which most members of findings never are."""
        item = cls._pick(range(len(layout_of("rodt_finding"))))[index]
        read = dict(cls._readers).get(index)

        def look(self: Finding) -> Any:
            cached = getattr(self, "_cached", None)
            if cached is None:
                cached = {}
                _set_cached(self, cached)
            elif index in cached:
                return cached[index]
            value = _low.finding_value(self._kept, item)
            cached[index] = value if value is None or read is None else read(value)
            return cached[index]
        return look

    @property
    def _values(self) -> tuple[Any, ...]:  # type: ignore[override]
        return tuple(getattr(self, name) for name in (*self._fields, "_row", "_own_row"))

    @property
    def rules(self) -> Rules:
        """The Rules that judged."""
        return self._rules

    @property
    def law_row(self) -> Limit | None:
        """The law's row, a Limit; None where the limit is based on no table."""
        return None if self._row < 0 else (self._rules.law or self._rules).limits[self._row]

    @property
    def own_row(self) -> Limit | None:
        """The carrier's row, a Limit; or None."""
        return None if self._own_row < 0 else self._rules.limits[self._own_row]

    @property
    def sentence(self) -> str:
        """The comparison in one line."""
        return _low.rodt_finding_format(self._kept)

    @property
    def spoken(self) -> str:
        """What one says aloud after the measurement: sentences."""
        return _low.rodt_finding_spoken_format(self._kept)

    @property
    def json(self) -> str:
        """The report as JSON, with the names of `rodtravel stroke --json`."""
        return _low.finding_json(self._kept)

    @property
    def proof_sentence(self) -> str:
        """What the divisions of the tape prove, a sentence; "" without a division."""
        return _low.rodt_finding_proof_format(self._kept)

    @property
    def sentences(self) -> tuple[str, ...]:
        """One sentence for each reason, with its figures and what would change the answer: a tuple of text."""
        return tuple(_low.rodt_finding_reason_format(self._kept, reason.number) for reason in self.reasons)

    @property
    def defect(self) -> Defect:
        """How it counts among the defective brakes, a Defect."""
        return _defect(_low.rodt_finding_defect(self._kept))

    def __str__(self) -> str:
        return self.sentence

    def __repr__(self) -> str:
        return f"<Finding {self.verdict}: {self.sentence}>"

    def _repr_html_(self) -> str:
        rows = [("verdict", self.verdict), ("comparison", self.sentence), *(("reason", each) for each in self.sentences),
                ("proof", self.proof_sentence), ("source", self.source)]
        return table(str(self.chamber), (), [row for row in rows if row[1]])

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Finding):
            return NotImplemented
        return self._values == other._values and self._rules == other._rules

    def __hash__(self) -> int:
        return hash((self._values, self._rules))

    def asdict(self) -> dict[str, Any]:
        """The members by name, as plain values; `rules` is the id of the rule set."""
        return {**super().asdict(), "rules": self._rules.id}

    def __reduce__(self) -> Any:
        values = _low.finding_values(self._kept), self._row, self._own_row
        return _restore, (values, self._rules, _low.rodt_tables_edition())


# The most frequent lookup does not convert the rest.
setattr(Finding, "verdict", property(_low.verdict_of, doc="The Verdict."))
_defect = from_number(Defect)
_set_cached = vars(Finding)["_cached"].__set__
_low.finding_class(Finding, tuple(Verdict))
_finding: Callable[[Any, Rules], Finding] = _low.finding


def _restore(values: tuple[Any, ...], rules: Rules, edition: str) -> Finding:
    """A finding of another process. Rows are known by their number, so the tables must be the same."""
    if edition != _low.rodt_tables_edition():
        raise Error(Status.ARGUMENT, f"this finding was made with the tables of {edition}; judge its readings again")
    return _finding(_low.finding_from_values(*values, rules._kept), rules)


def _chamber_texts(chamber: Any, stroke_class: Any, rated_stroke: Any, marked_limit: Any) -> tuple[Any, Any, Any, Any]:
    """A Chamber as texts. Its name says its class; marks given beside it have precedence."""
    if not isinstance(chamber, Chamber):
        raise TypeError("chamber is text or a Chamber")
    name = str(chamber) if chamber.size else None
    return (name, stroke_class, chamber.rated_stroke if rated_stroke is None else rated_stroke,
            chamber.marked_limit if marked_limit is None else marked_limit)


_RECORDED: dict[Any, str | None] = {None: None, False: "off", True: "on"}


def recorded(value: bool | None, field_name: str) -> str | None:
    """The text of a condition."""
    if value is None or value is True or value is False:
        return _RECORDED[value]
    raise TypeError(f"{field_name} is True, False or None (not recorded)")


def judge(chamber: Chamber | str, released: Exact, applied: Exact, *, stroke_class: StrokeClass | str | None = None,
          rated_stroke: Exact | None = None, marked_limit: Exact | None = None, psi: Exact | None = None,
          psi_after: Exact | None = None, division: Exact | None = None, date: Day | None = None,
          unit: Unit | str = "in", engine_running: bool | None = None, spring_brake_applied: bool | None = None,
          drum: Drum | str | None = None, rules: Rules | str = DEFAULT_RULES, decimal_comma: bool = False) -> Finding:
    """Judges one wheel end and returns a Finding.

    `chamber` is text such as "30L", "24/30", "bolt C", or a Chamber. `released` and `applied` are the measurements from
    chamber face to clevis pin; they, `rated_stroke`, `marked_limit` and `division` are text ("4 13/16", "54 mm"), int,
    Fraction or Decimal; numbers are read like text, in `unit`. `psi` and `psi_after` are the reservoir pressure before
    and after the application: psi, or text with a unit. `date` is a date or its text; None judges by the newest text of
    `rules`, an id or a Rules. `engine_running` and `spring_brake_applied` are True, False or None, `drum` is "cold",
    "warm" or "hot".

    What was not recorded is named among the reasons. Raises Error with the field and column of a text that cannot be
    read, TypeError for binary floats.

    >>> finding = judge("30", "2 3/4", "5 5/16", stroke_class="long", psi=95)
    >>> str(finding.verdict), [str(reason) for reason in finding.reasons]
    ('out-of-adjustment', ['over-limit', 'assumed-clamp'])
    >>> judge("30", 2.125, "4")
    Traceback (most recent call last):
    TypeError: released is a binary float (2.125), which is seldom the number that was read; give text, ...
    """
    if type(rules) is not Rules:
        rules = _known[rules] if type(rules) is str and rules in _known else rule_set(rules)
    if type(chamber) is not str and not isinstance(chamber, str):
        chamber, stroke_class, rated_stroke, marked_limit = _chamber_texts(chamber, stroke_class, rated_stroke,
                                                                           marked_limit)
    engine = spring = None
    if engine_running is not None or spring_brake_applied is not None:
        engine = recorded(engine_running, "engine_running")
        spring = recorded(spring_brake_applied, "spring_brake_applied")
    if drum is not None:
        drum = (None, "cold", "warm", "hot")[number_of(Drum, drum, "drum")]
    return _judge(rules, 0 if unit == "in" else number_of(Unit, unit, "unit"), decimal_comma, chamber, released, applied,
                  stroke_class, rated_stroke, marked_limit, psi, psi_after, division, date, None, engine, spring, drum)


_judge: Callable[..., Finding] = _low.judge

_NO_UTF8_TEXT = re.compile("[\0\ud800-\udfff]")


def readable(cell: Any) -> Any:
    """The cell; a zero byte or half of a surrogate pair in it becomes a character that no reader accepts."""
    return _NO_UTF8_TEXT.sub("\ufffd", cell) if isinstance(cell, str) else cell


def judge_row(*, chamber: Chamber | str | None = None, released: Exact | None = None, applied: Exact | None = None,
              stroke_class: StrokeClass | str | None = None, rated_stroke: Exact | None = None,
              marked_limit: Exact | None = None, psi: Exact | None = None, psi_after: Exact | None = None,
              division: Exact | None = None, date: Day | None = None, unit: str | None = None,
              engine: str | None = None, spring_brake: str | None = None, drum: str | None = None,
              rules: Rules | str = DEFAULT_RULES, default_unit: Unit | str = "in", decimal_comma: bool = False,
              date_order: DateOrder | str = "unknown", default_date: Day | None = None) -> tuple[Finding, Error | None]:
    """Judges one row of a file as it is, and never refuses a text: returns (Finding, Error or None).

    Every cell is text or None, or an exact number; one that cannot be read makes the finding undetermined, its reason
    says which, and the first such Error is returned, not raised. `unit` is a cell of the row, `default_unit` the unit of
    the whole file; `default_date` is for rows without a date of their own.

    Raises TypeError for binary floats, Error for an unknown rule set, unit or order of dates.

    >>> finding, error = judge_row(chamber="30", released="2 1/8", applied="2-Jan")
    >>> str(finding.verdict), error.field
    ('undetermined', 'applied')
    """
    rules = rule_set(rules)
    if chamber is not None and not isinstance(chamber, str):
        chamber, stroke_class, rated_stroke, marked_limit = _chamber_texts(chamber, stroke_class, rated_stroke,
                                                                           marked_limit)
    cells = (chamber, released, applied, stroke_class, rated_stroke, marked_limit, psi, psi_after, division, date, unit,
             engine, spring_brake, drum)
    kept, error = _low.judge_row((*map(readable, cells), number_of(Unit, default_unit, "default_unit"), 0,
                                  bool(decimal_comma), number_of(DateOrder, date_order, "date_order"), default_date),
                                 rules._kept)
    return _finding(kept, rules), error


def pushrod_force(chamber: Chamber | str, pressure: Exact) -> Fraction:
    """Ideal pushrod force in pound-force, exactly: type number x pressure in psi. Information only; it leaves out
    springs and friction, and the force falls off beyond the limit.

    Raises Error for a size that is no number.

    >>> pushrod_force("30", 60)
    Fraction(1800, 1)
    """
    return _low.rodt_chamber_pushrod_force(chamber_of(chamber)._raw(), pressure)


def al_factor(chamber: Chamber | str, arm_length: Exact) -> Fraction:
    """AL factor in cubic inches, exactly: type number x effective arm length in inches.

    Raises Error for a size that is no number.

    >>> al_factor("30", "5 1/2")
    Fraction(165, 1)
    """
    return _low.rodt_chamber_al_factor(chamber_of(chamber)._raw(), arm_length)
