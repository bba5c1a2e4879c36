# SPDX-License-Identifier: Apache-2.0
"""Vehicles: positions, the count of defective brakes, mismatched axles, what to do next."""
from __future__ import annotations

import operator
from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from . import _rodtravel as _low
from ._enums import Adjuster, Advice, Evidence, Mismatch, Outcome, Side, from_number, number_of
from ._error import Error, Status
from ._findings import Finding
from ._html import table
from ._record import Field, Record, raw, tuple_of
from ._source import Source
from ._types import Exact


class Position(Record, of="rodt_position"):
    """One wheel end: axle 1 to 99, counted from the front through every unit, and side. `str()` is "1L".

    Raises Error for an axle or side that there is not.

    >>> str(Position(2, "right"))
    '2R'
    """

    __slots__ = ()
    axle: Field[int] = Field("1 is the foremost.")
    side: Field[Side] = Field("A Side.")

    def __init__(self, axle: int, side: Side | str) -> None:
        axle = operator.index(axle)
        if not 1 <= axle <= 99:
            raise Error(Status.IMPLAUSIBLE, "axles are counted from 1 to 99", field="axle")
        raw = (axle, number_of(Side, side, "side"))
        if not raw[1]:
            raise Error(Status.ARGUMENT, "a position has a side, left or right", field="side")
        object.__setattr__(self, "_values", read_position(_low.rodt_position_format(raw))._values)

    def __str__(self) -> str:
        return _low.rodt_position_format(self._raw())


def read_position(text: str) -> Position:
    """Reads "1L", "2 R", "3-left", "axle 4 right", "essieu 2 gauche": the axle first.

    Raises Error with the column.

    >>> read_position("3-left")
    Position(axle=3, side='left')
    """
    return Position._read(_low.rodt_position_parse_n(text))


_BRAKES_MAX = 10**9


def _brakes(brakes: int) -> int:
    """A number of brakes that a caller gave."""
    brakes = operator.index(brakes)
    if not 1 <= brakes <= _BRAKES_MAX:
        raise Error(Status.ARGUMENT, "a vehicle has 1 to 1 000 000 000 brakes", field="brakes")
    return brakes


class Tally(Record, of="rodt_tally"):
    """Brakes counted one by one: `tally + finding` is the next one.

    The numbers are brakes: all of them, full defects, half defects, unknown ones, and inoperative ones among the full.
    Raises Error for numbers that cannot be.

    >>> tally = Tally() + judge("30", "2 1/8", "4 1/4") + judge("30", "2", "2")
    >>> tally.full, tally.half, str(tally.judge(brakes=10).outcome)
    (1, 1, 'undetermined')
    """

    __slots__ = ()
    brakes: Field[int] = Field("Counted so far.")
    full: Field[int] = Field("Over the law's limit by 1/4 in or more, or inoperative.")
    half: Field[int] = Field("Over it by less.")
    unknown: Field[int] = Field("Undetermined.")
    inoperative: Field[int] = Field("Part of the full ones.")

    def __init__(self, brakes: int = 0, full: int = 0, half: int = 0, unknown: int = 0, inoperative: int = 0 ) -> None:
        counted = tuple(map(operator.index, (brakes, full, half, unknown, inoperative)))
        if min(counted) < 0 or max(counted) > _BRAKES_MAX:
            raise Error(Status.ARGUMENT, "a number of brakes is 0 to 1 000 000 000", field="tally")
        if full + half + unknown > brakes or inoperative > full:
            raise Error(Status.ARGUMENT, "full, half and unknown ones are brakes, inoperative ones are full",
                        field="tally")
        object.__setattr__(self, "_values", counted)

    def __add__(self, finding: Finding) -> Tally:
        if not isinstance(finding, Finding):
            return NotImplemented
        return Tally._read(_low.rodt_tally_add(self._values, finding._kept))

    def judge(self, brakes: int | None = None) -> Count:
        """The Count for a vehicle with so many `brakes`, measured or not; None = as many as were counted.

        Raises Error if there are fewer brakes than counted.
        """
        return Count._read(_low.rodt_tally_judge(self._values, 0 if brakes is None else _brakes(brakes)))


class Count(Record, of="rodt_count"):
    """The roadside count of defective brakes, exact. `str()` is its sentence.

    >>> print(Tally(brakes=6, full=1, half=1).judge())
    1 1/2 of 6 brakes defective, 25 %: 20 % is reached, but not the 2 whole brakes of the chart
    """

    __slots__ = ()
    outcome: Field[Outcome] = Field("Whether the criterion is met, an Outcome.")
    brakes: Field[int] = Field("Brakes of the vehicle, measured or not.")
    unmeasured: Field[int] = Field("Brakes that are there and have no finding.")
    tally: Field[Tally] = Field("What was counted, a Tally.")
    defective: Field[Fraction] = Field("Full defects and half of the half ones, in brakes.")
    share: Field[Fraction | None] = Field("That of all brakes; None without a brake.")
    worst_share: Field[Fraction | None] = Field("The share if every unknown and unmeasured brake were a full defect.")
    known_share: Field[Fraction | None] = Field("The share of the brakes whose state is known; None if there is none.")
    criterion: Field[Fraction] = Field("The share from which the vehicle is out of service: 1/5.")
    whole_needed: Field[int] = Field("Brakes that the chart of whole brakes requires.")
    sentence: Field[str] = Field("The count in one line.")

    def __str__(self) -> str:
        return self.sentence


class CriterionPart(Record):
    """One part of the roadside criterion and where it comes from.

    >>> [str(part.evidence) for part in criterion_parts()][0]
    'checked'
    """

    __slots__ = ()
    words: Field[str] = Field("What the source says, in few words.")
    source: Field[Source | None] = Field("The Source.", Source)
    evidence: Field[Evidence] = Field("How it was checked, an Evidence.", Evidence)


def criterion_parts() -> tuple[CriterionPart, ...]:
    """The share, the weights, the chart and the steering axle of the roadside criterion: a tuple of CriterionPart.

    >>> len(criterion_parts())
    5
    """
    return tuple(CriterionPart._read((_low.rodt_count_part_text(part), *_low.rodt_count_part_source(part)))
                 for part in range(_low.RODT_COUNT_PART_END))


class WheelEnd(Record):
    """One wheel end of a vehicle: where it is, and what was found.

    `position` is text or a Position, `adjuster` "manual" or "automatic", `arm_length` the effective length of the slack
    adjuster in inches. Raises Error for what cannot be read, TypeError for binary floats.

    >>> WheelEnd("1L", judge("20", "2", "3 1/2"), arm_length="5 1/2").arm_length
    Fraction(11, 2)
    """

    __slots__ = ()
    position: Field[Position] = Field("The Position.")
    finding: Field[Finding] = Field("The Finding.")
    adjuster: Field[Adjuster] = Field("Kind of slack adjuster, an Adjuster.")
    arm_length: Field[Fraction | None] = Field("Inches; None = not measured.")

    def __init__(self, position: Position | str, finding: Finding, *, adjuster: Adjuster | str = "not-recorded",
                 arm_length: Exact | None = None) -> None:
        if not isinstance(finding, Finding):
            raise TypeError("finding is a Finding, as judge makes it")
        position = position if isinstance(position, Position) else read_position(position)
        adjuster = from_number(Adjuster)(number_of(Adjuster, adjuster, "adjuster"))
        object.__setattr__(self, "_values", (position, finding, adjuster, _low.length(arm_length, "arm_length")))

    def _raw(self) -> tuple[Any, ...]:
        return raw("rodt_wheel_end", position=self.position._raw(), adjuster=self.adjuster.number,
                   arm_length=self.arm_length), self.finding._kept


class AxleRemark(Record):
    """One mismatch of an axle.

    >>> ends = [WheelEnd("1L", judge("20", "2", "3")), WheelEnd("1R", judge("24", "2", "3"))]
    >>> judge_vehicle(ends).axles[0].remarks[0].source.section
    '393.47(b)'
    """

    __slots__ = ()
    mismatch: Field[Mismatch] = Field("The Mismatch.", Mismatch)
    sentence: Field[str] = Field("The remark as a sentence.")
    source: Field[Source | None] = Field("The Source; None = no figure of law.", Source)
    evidence: Field[Evidence] = Field("How that was checked, an Evidence.", Evidence)
    _message: Field[Any] = Field("The sentence as data.")


class Axle(Record, of="rodt_axle_finding"):
    """One axle of a vehicle.

    >>> judge_vehicle([WheelEnd("1L", judge("20", "2", "3"))]).axles[0].right is None
    True
    """

    __slots__ = ()
    axle: Field[int] = Field("Its number; 1 is the foremost.")
    remarks: Field[tuple[AxleRemark, ...]] = Field("Its mismatches, a tuple of AxleRemark.",
                    tuple_of(AxleRemark))
    left: Field[int | None] = Field("Which of the wheel ends is its left one, counted from 0; None = none.")
    right: Field[int | None] = Field("Which is its right one; None = none.")
    stroke_difference: Field[Fraction | None] = Field("Longer stroke less shorter, inches; None = one is missing.")
    al_left: Field[Fraction | None] = Field("Type number x arm length, in3; None = one is missing.")
    al_right: Field[Fraction | None] = Field("Type number x arm length, in3; None = one is missing.")


class AdviceNote(Record):
    """What to do next about one wheel end.

    >>> judge_vehicle([WheelEnd("1L", judge("20", "2", "2"))]).advice[0].sentence != ""
    True
    """

    __slots__ = ()
    advice: Field[Advice] = Field("The Advice.", Advice)
    sentence: Field[str] = Field('As a sentence; "" for none.')
    source: Field[Source | None] = Field("The Source; or None.", Source)
    evidence: Field[Evidence] = Field("How that was checked, an Evidence.", Evidence)


class VehicleFinding(Record, of="rodt_vehicle_finding"):
    """The judgement of a vehicle, made by judge_vehicle.

    >>> ends = [WheelEnd(place, judge("20", "2", "4")) for place in ("1L", "1R")]
    >>> found = judge_vehicle(ends, brakes=6)
    >>> str(found.count.outcome), found.out_of_adjustment
    ('out-of-service', 2)
    """

    __slots__ = ()
    count: Field[Count] = Field("The roadside Count.")
    in_adjustment: Field[int] = Field("Wheel ends in adjustment.")
    out_of_adjustment: Field[int] = Field("Wheel ends out of adjustment.")
    inoperative: Field[int] = Field("Wheel ends whose rod did not move.")
    undetermined: Field[int] = Field("Wheel ends of which nothing is proven.")
    mismatched_axles: Field[int] = Field("Axles with a mismatch that the law forbids.")
    mixed_days: Field[int] = Field("Wheel ends judged by another day than the first.")
    axles: Field[tuple[Axle, ...]] = Field("From the front, a tuple of Axle.")
    advice: Field[tuple[AdviceNote, ...]] = Field("One AdviceNote for each wheel end, in their order.",
                   tuple_of(AdviceNote))
    _json: Field[str] = Field("The report as JSON.", of="json")

    def _repr_html_(self) -> str:
        rows = [("outcome", self.count.outcome), ("count", self.count.sentence),
                *((f"axle {axle.axle}", remark.sentence) for axle in self.axles for remark in axle.remarks),
                *(("advice", note.sentence) for note in self.advice if note.sentence)]
        return table(f"{self.count.brakes} brakes", (), rows)

    @property
    def json(self) -> str:
        """The report as JSON, with the names of `rodtravel vehicle --json`."""
        return self._json


def judge_vehicle(ends: Iterable[WheelEnd], *, brakes: int | None = None) -> VehicleFinding:
    """Judges a vehicle or combination from its wheel ends, an iterable of WheelEnd in any order.

    `brakes` is how many there are, measured or not; None = both ends of every axle up to the last one. Raises Error if a
    position is given twice or a finding is of another rule set than the first, `line` being the number of the wheel
    end, if there is no wheel end, or if there are fewer brakes than wheel ends.

    >>> ends = [WheelEnd("1L", judge("20", "2", "3 1/2")), WheelEnd("1R", judge("20", "2", "3 5/8"))]
    >>> str(judge_vehicle(ends).count.outcome)
    'below-criterion'
    """
    ends = tuple(ends)
    if not all(isinstance(end, WheelEnd) for end in ends):
        raise TypeError("wheel ends are WheelEnd objects")
    return VehicleFinding._read(_low.vehicle_combine(tuple(end._raw() for end in ends),
                                                    0 if brakes is None else _brakes(brakes)))
