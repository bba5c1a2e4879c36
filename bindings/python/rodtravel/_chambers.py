# SPDX-License-Identifier: Apache-2.0
"""Service brake chambers."""
from __future__ import annotations

from fractions import Fraction

from . import _rodtravel as _low
from ._enums import Family, StrokeClass, number_of
from ._record import Field, Record, millimetres, raw
from ._source import Source
from ._types import Exact


class Chamber(Record, of="rodt_chamber"):
    """One service brake chamber, as far as it is known. What is not known is "unknown" or None.

    `size` and `spring_size` are text, a type number or a letter; `rated_stroke` and `marked_limit` are what is marked
    on the housing, inches as Fraction. Raises Error for a size that is none, TypeError for binary floats.

    >>> chamber = Chamber("30", family="clamp", stroke_class="long")
    >>> str(chamber), chamber.size
    ('clamp 30 long', '30')
    """

    __slots__ = ()
    family: Field[Family] = Field("How the housing is built, a Family.")
    stroke_class: Field[StrokeClass] = Field("Standard or long stroke, a StrokeClass.")
    size: Field[str | None] = Field('Type number "30" or letter "C"; None = not known.')
    spring_size: Field[str | None] = Field("Spring brake part of a double mark such as 24/30; None = none said.")
    rated_stroke: Field[Fraction | None] = Field(
        "Full travel marked on the housing, inches; None = no mark read. Not the limit!")
    marked_limit: Field[Fraction | None] = Field("Readjustment limit marked on the housing, inches; None = none.")

    def __init__(self, size: str | None = None, *, family: Family | str = "unknown",
                 stroke_class: StrokeClass | str = "unknown", spring_size: str | None = None,
                 rated_stroke: Exact | None = None, marked_limit: Exact | None = None) -> None:
        checked = _low.chamber_check(raw(
            "rodt_chamber", family=number_of(Family, family, "family"),
            stroke_class=number_of(StrokeClass, stroke_class, "stroke_class"), size=size, spring_size=spring_size,
            rated_stroke=rated_stroke, marked_limit=marked_limit))
        object.__setattr__(self, "_values", self._read(checked)._values)

    def __str__(self) -> str:
        return _low.rodt_chamber_format(self._raw()) if self.size or self.family is not Family.UNKNOWN else "unknown"


def chamber_of(value: Chamber | str) -> Chamber:
    """A Chamber that a caller gave, or the chamber that a text names."""
    if isinstance(value, Chamber):
        return value
    return read_chamber(value)


def read_chamber(text: str) -> Chamber:
    """Reads a chamber as it is written: "30", "T30", "30LS", "24 long", "3030", "24/30", "bolt C", "roto 30", "DD-3".

    What the text does not say stays unknown. Raises Error with the column where it is no chamber mark.

    >>> read_chamber("24/30 LS")
    Chamber(family='clamp', stroke_class='long', size='24', spring_size='30')
    """
    return Chamber._read(_low.rodt_chamber_parse_n(text))


class ChamberRow(Record, of="rodt_chamber_row"):
    """One chamber as published: its outside diameter and rated stroke.

    >>> chamber_rows()[0].size, chamber_rows()[0].outside_diameter
    ('6', Fraction(9, 2))
    """

    __slots__ = ()
    family: Field[Family] = Field("A Family.")
    size: Field[str] = Field("Type number or letter, text.")
    outside_diameter: Field[Fraction | None] = Field("Inches; None = none published.")
    outside_diameter_mm: Field[Fraction | None] = Field(
        "The millimetres printed beside it, rounded by the source; None = none.", millimetres)
    standard_rated_stroke: Field[Fraction | None] = Field(
        "Inches, of the standard stroke class; None = none published.")
    source: Field[Source | None] = Field("Source of the diameter.")


def chamber_rows() -> tuple[ChamberRow, ...]:
    """Every chamber that the tables know, as a tuple of ChamberRow.

    >>> len(chamber_rows()) > 20
    True
    """
    return tuple(ChamberRow._read(_low.rodt_chamber_row_at(i)) for i in range(_low.rodt_chamber_row_count()))
