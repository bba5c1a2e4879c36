# SPDX-License-Identifier: Apache-2.0
"""Air-system checks, and the reservoirs."""
from __future__ import annotations

import operator
from datetime import date
from fractions import Fraction
from typing import Any

from . import _rodtravel as _low
from ._chambers import Chamber, chamber_of
from ._enums import AirMissing, AirResult, Check, PressureUnit, Span, VehicleClass, number_of
from ._error import Error, Status, explained
from ._lengths import read_pressure_unit
from ._record import Field, Record, raw
from ._rules import AirLimit, Rules, rule_set
from ._source import Source
from ._types import Exact, Number

_YES_NO = (None, False, True)
_ESTIMATED = "the reservoir is above zero, the chambers are not below it, and a fill is 0 to 1"


class AirReading(Record, of="rodt_air_reading"):
    """One check of the air system as it was done; a part of an AirFinding.

    >>> judge_air("warning", pressure="62 psi").reading.pressure
    Fraction(62, 1)
    """

    __slots__ = ()
    check: Field[Check] = Field("The Check.")
    vehicle: Field[VehicleClass] = Field("The VehicleClass.")
    span: Field[Span] = Field("Build-up: what was timed, a Span.")
    answer: Field[bool | None] = Field("Yes or no; None = not recorded.", _YES_NO.__getitem__)
    towed_units: Field[int] = Field("Towed units; 0 = not recorded.")
    applications: Field[int] = Field("Full applications made; 0 = as many as the rule set requires.")
    built: Field[date | int | None] = Field("Day of build, or its year; None = not known.")
    pressure_unit: Field[PressureUnit] = Field("The PressureUnit that the gauge was read in; the sentences speak in it.")
    pressure: Field[Fraction | None] = Field("Where it happened, psi; or None.")
    before: Field[Fraction | None] = Field("Pressure at the start, psi; or None.")
    after: Field[Fraction | None] = Field("Pressure at the end, psi; or None.")
    cut_out: Field[Fraction | None] = Field("The governor's cut-out, psi; or None.")
    cut_in: Field[Fraction | None] = Field("The governor's cut-in, psi; or None.")
    seconds: Field[Fraction | None] = Field("Time, s; or None.")
    actual_volume: Field[Fraction | None] = Field("Reservoirs, in3; or None.")
    required_volume: Field[Fraction | None] = Field("Reservoirs as required, in3; or None.")


class AirFinding(Record, of="rodt_air_finding"):
    """The judgement of one air check, made by judge_air. `str()` is its sentence.

    >>> print(judge_air("warning", pressure=62, rules="us-cdl"))
    the low-pressure warning came on at 62 psi; required: not less than 60 psi: good
    """

    __slots__ = ()
    result: Field[AirResult] = Field("The AirResult.")
    missing: Field[AirMissing] = Field("What was missing for an undetermined one, an AirMissing.")
    major: Field[bool] = Field("A major defect by the rule set's own ranking.")
    minor: Field[bool] = Field("A minor one by that ranking.")
    at_limit: Field[bool] = Field("Exactly at the bound.")
    reading: Field[AirReading] = Field("As given, an AirReading.")
    measured: Field[Fraction | None] = Field("In the measure of the row; None = none.")
    allowed: Field[Fraction | None] = Field("The bound that judged, in the measure of the row; None for yes or no.")
    row: Field[AirLimit | None] = Field("The row that judged, an AirLimit; None = none.")
    law_row: Field[AirLimit | None] = Field("The law's row, an AirLimit; or None.")
    own_row: Field[AirLimit | None] = Field("The carrier's row, an AirLimit; or None.")
    law_result: Field[AirResult] = Field("What the law alone says, an AirResult; a carrier's figure is only stricter.")
    sentence: Field[str] = Field("The judgement as a sentence for a form.")
    edge: Field[str] = Field('What would have been defective, a sentence; "" without a row.')
    spoken: Field[str] = Field("What one says aloud after the check: sentences.")
    note: Field[str] = Field('What it does not settle, such as a printed kPa figure that is rounded; "" = nothing.')
    _json: Field[str] = Field("The report as JSON.", of="json")
    _message: Field[Any] = Field("The sentence as data.", of="message")
    _edge_message: Field[Any] = Field("`edge` as data.", of="edge_message")
    _spoken_message: Field[Any] = Field("`spoken` as data.", of="spoken_message")
    _note_message: Field[Any] = Field("`note` as data.", of="note_message")

    @property
    def json(self) -> str:
        """The report as JSON, with the names of `rodtravel air --json`."""
        return self._json

    def __str__(self) -> str:
        return self.sentence


def _unit_of(*pressures: Exact | None) -> int:
    """The unit of the gauge: kPa, if a text says so. One that cannot be read is refused later, with its field."""
    for text in pressures:
        try:
            if isinstance(text, str) and read_pressure_unit(text)[1] is PressureUnit.KPA:
                return PressureUnit.KPA.number
        except Error:
            pass
    return PressureUnit.PSI.number


def judge_air(check: Check | str, *, vehicle: VehicleClass | str = "any", span: Span | str = "pressures",
              answer: bool | None = None, towed_units: int = 0, applications: int = 0,
              built: date | str | int | None = None, pressure: Exact | None = None, before: Exact | None = None,
              after: Exact | None = None, cut_out: Exact | None = None, cut_in: Exact | None = None,
              seconds: Exact | None = None, actual_volume: Number | None = None, required_volume: Number | None = None,
              rules: Rules | str = "us-fmcsr") -> AirFinding:
    """Judges one check of the air system by the published edge of `rules`.

    `check` is a Check or its word. Pressures are psi, numbers or text ("655 kPa"); `seconds` is a number or text ("2:05", "1 min
    30 s"); volumes (in3) are exact numbers; `answer` is True or False for checks of yes and no, and False for a warning, a build-up, a governor or a valve
    that never came; `built` is a date, its text, or a year.

    A fact that is missing makes the finding undetermined, never an error. Raises Error for a word that there is not or a
    text that cannot be read, TypeError for binary floats.

    >>> finding = judge_air("loss-released", before=120, after=118, vehicle="single", rules="us-cdl")
    >>> str(finding.result), finding.edge
    ('defective', 'defective at 2 psi per minute or more')
    """
    if answer is not None and answer is not True and answer is not False:
        raise TypeError("answer is True, False or None (not recorded)")
    if not check:
        raise Error(Status.ARGUMENT, "a check has a name, such as 'warning'", field="check")
    for name, number in (("towed_units", towed_units), ("applications", applications)):
        if not 0 <= operator.index(number) <= 1000:
            raise Error(Status.ARGUMENT, f"{number} is no number of {name}", field=name)
    reading = raw("rodt_air_reading", check=number_of(Check, check, "check"),
                  vehicle=number_of(VehicleClass, vehicle, "vehicle"), span=number_of(Span, span, "span"),
                  answer=_YES_NO.index(answer), towed_units=towed_units, applications=applications, built=built,
                  pressure_unit=_unit_of(pressure, before, after, cut_out, cut_in), pressure=pressure, before=before,
                  after=after, cut_out=cut_out, cut_in=cut_in, seconds=seconds,
                  actual_volume=actual_volume, required_volume=required_volume)
    return AirFinding._read(_low.rodt_air_reading_judge(reading, rule_set(rules)._kept))


def check_title(check: Check | str) -> str:
    """What a check is called in a sentence.

    >>> check_title("warning")
    'low-pressure warning'
    """
    return _low.rodt_air_check_title(number_of(Check, check, "check"))


class VolumeRow(Record, of="rodt_volume_row"):
    """Rated volume of a service chamber, a row of Table V of 49 CFR 571.121.

    >>> volume_rows()[0].size, volume_rows()[0].volume
    ('9', Fraction(25, 1))
    """

    __slots__ = ()
    size: Field[str] = Field("Clamp-type number, text.")
    stroke_from: Field[Fraction] = Field("Full stroke from, inches, inside.")
    stroke_until: Field[Fraction] = Field("Full stroke until, inches, inside.")
    volume: Field[Fraction] = Field("In3.")
    source: Field[Source] = Field("The Source.")


def volume_rows() -> tuple[VolumeRow, ...]:
    """Every row of Table V, a tuple of VolumeRow.

    >>> len(volume_rows())
    9
    """
    return tuple(VolumeRow._read(_low.rodt_volume_row_at(i)) for i in range(_low.rodt_volume_row_count()))


def rated_volume(chamber: Chamber | str) -> Fraction:
    """Rated volume of a chamber, text or Chamber, in3, by Table V of 49 CFR 571.121.

    Raises Error with Status.UNKNOWN_CHAMBER where the table has no row; then its actual volume counts.

    >>> rated_volume("30")
    Fraction(89, 1)
    """
    return _low.rodt_chamber_rated_volume(chamber_of(chamber)._raw())


def required_volume(chambers: Number, *, trailer: bool = False) -> Fraction:
    """Required volume of the reservoirs, in3, for chambers of so many in3 in all: x 12, or x 8 for a trailer.

    Raises Error for a volume below zero.

    >>> required_volume(89 * 4 + 54 * 2)
    Fraction(5568, 1)
    """
    with explained("no volume is below zero", "chambers"):
        return _low.rodt_reservoir_required_volume(chambers, bool(trailer))


def build_up_seconds(actual: Number, required: Number) -> Fraction:
    """Time allowed for 85 to 100 psi, s: 25 s x actual / required volume (49 CFR 571.121 S5.1.1).

    Raises Error for volumes that are not above zero.

    >>> build_up_seconds(11136, 5568)
    Fraction(50, 1)
    """
    with explained("volumes are above zero", "volumes"):
        return _low.rodt_reservoir_build_up_seconds(actual, required)


def estimate_application(pressure: Exact, reservoir: Number, chambers: Number, fill: Number = 1 ) -> Fraction:
    """An estimate, no figure of law: psi in the reservoirs after one full application with the engine off.

    `reservoir` and `chambers` are in3 in all, `fill` the part of the rated volume that an application fills: 1 for the
    worst case. Raises Error for a fill outside 0 to 1.

    >>> estimate_application(105, 5568, 464)
    Fraction(12453, 130)
    """
    with explained(_ESTIMATED, "estimate"):
        return _low.rodt_reservoir_estimate_application(pressure, reservoir, chambers, fill)


def estimate_applications(pressure: Exact, floor: Exact, reservoir: Number, chambers: Number, fill: Number = 1 ) -> int:
    """An estimate: how many full applications keep the reservoirs at `floor` psi or above, starting at `pressure`; at
    most 99. Raises Error as estimate_application does.

    >>> estimate_applications(105, 60, 5568, 464)
    5
    """
    with explained(_ESTIMATED, "estimate"):
        return _low.rodt_reservoir_estimate_applications(pressure, floor, reservoir, chambers, fill)
