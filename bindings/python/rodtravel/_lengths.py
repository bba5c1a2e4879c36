# SPDX-License-Identifier: Apache-2.0
"""Exact lengths, pressures and days: read as people write them, written exactly unless a rounding is given."""
from __future__ import annotations

import operator
from datetime import date
from fractions import Fraction

from . import _rodtravel as _low
from ._enums import DateOrder, PressureUnit, Rounding, Unit, from_number, number_of
from ._error import Error, Status, explained
from ._types import Exact, Number

_unit = from_number(Unit)
_pressure_unit = from_number(PressureUnit)
_PSI = PressureUnit.PSI.number
_IN = Unit.IN.number


def read_length(text: str, *, unit: Unit | str = "in", decimal_comma: bool = False) -> Fraction:
    """Reads one length as it is written on a form and returns inches, exactly, as a Fraction.

    `unit` is that of a number which names none: "in", "mm" or "cm"; a unit in the text is stronger. With
    `decimal_comma` a comma is the decimal point. The result is 0 to 24 in.

    Raises Error where the text could mean two values, or none; `column` is the place.

    >>> read_length("4 13/16"), read_length("44.45 mm"), read_length("2,125", decimal_comma=True)
    (Fraction(77, 16), Fraction(7, 4), Fraction(17, 8))
    >>> read_length("1,000")
    Traceback (most recent call last):
    rodtravel.Error: column 2: a comma can part decimals or thousands; write a point, or set the decimal comma
    """
    return read_length_unit(text, unit=unit, decimal_comma=decimal_comma)[0]


def read_length_unit(text: str, *, unit: Unit | str = "in", decimal_comma: bool = False) -> tuple[Fraction, Unit]:
    """As read_length, and the unit in which the text was written: (inches, unit).

    Raises Error as read_length does.

    >>> read_length_unit("25.4 mm")
    (Fraction(1, 1), <Unit.MM: 'mm'>)
    """
    inches, written = _low.rodt_length_parse_n(text, (number_of(Unit, unit, "unit"), _PSI, decimal_comma))
    return inches, _unit(written)


def write_length(length: Exact) -> str:
    """Writes inches as a mixed fraction in lowest terms, exactly.

    `length` is in inches: an int, a Fraction, a Decimal, or text that is read first. Raises Error for a number that does
    not fit in 64-bit parts.

    >>> write_length(Fraction(77, 16)), write_length(Fraction(-1, 8)), write_length("50.8 mm")
    ('4 13/16', '-1/8', '2')
    """
    return _low.rodt_length_format(length)


def write_decimal(length: Exact, digits: int, *, unit: Unit | str = "in",
                  rounding: Rounding | str = "half-even") -> str:
    """Writes a length, given in inches, as a decimal number in `unit` with 0 to 12 `digits` after the point.

    Raises Error for a unit, a rounding or a number of digits that there is not.

    >>> write_decimal(Fraction(7, 4), 2, unit="mm")
    '44.45'
    """
    digits = operator.index(digits)
    if not 0 <= digits <= 12:
        raise Error(Status.ARGUMENT, "there are 0 to 12 digits after the point", field="digits")
    return _low.rodt_length_format_decimal(length, number_of(Unit, unit, "unit"), digits,
                                          number_of(Rounding, rounding, "rounding"))


def round_length(length: Exact, division: Exact, *, rounding: Rounding | str = "half-even") -> Fraction:
    """Rounds a length to a whole number of divisions, both in inches: the nearest sixteenth, for example.

    Raises Error unless the division is above zero.

    >>> round_length(Fraction(17, 100), Fraction(1, 16))
    Fraction(3, 16)
    """
    with explained("a division must be above zero", "division"):
        return _low.rodt_length_round(length, division, number_of(Rounding, rounding, "rounding"))


def inches_from_mm(millimetres: Number) -> Fraction:
    """Millimetres, a number, as inches, exactly: 1 in is 25.4 mm.

    Raises Error for a number that does not fit in 64-bit parts.

    >>> inches_from_mm(Decimal("44.45"))
    Fraction(7, 4)
    """
    parts = _low.rational(millimetres, "millimetres")
    return _low.rodt_length_from_mm(*parts)


def read_pressure(text: str, *, unit: PressureUnit | str = "psi", decimal_comma: bool = False) -> Fraction:
    """Reads one gauge pressure, "95", "92.5 psi" or "655 kPa", and returns psi, exactly, as a Fraction.

    `unit` is that of a number which names none: "psi" or "kpa". Raises Error as read_length does; above 300 psi a
    reading is implausible.

    >>> read_pressure("92.5 psi"), read_pressure("0", unit="kpa")
    (Fraction(185, 2), Fraction(0, 1))
    """
    return read_pressure_unit(text, unit=unit, decimal_comma=decimal_comma)[0]


def read_pressure_unit(text: str, *, unit: PressureUnit | str = "psi",
                       decimal_comma: bool = False) -> tuple[Fraction, PressureUnit]:
    """As read_pressure, and the unit in which the text was written: (psi, unit).

    Raises Error as read_pressure does.

    >>> read_pressure_unit("95")
    (Fraction(95, 1), <PressureUnit.PSI: 'psi'>)
    """
    psi, written = _low.rodt_pressure_parse_n(text, (_IN, number_of(PressureUnit, unit, "unit"), decimal_comma))
    return psi, _pressure_unit(written)


def write_pressure(pressure: Exact, *, unit: PressureUnit | str | None = None) -> str:
    """Writes psi as a whole number or a mixed fraction, exactly, without the unit.

    With the `unit` that the pressure was read in: exactly what was read, with that unit. Raises Error for a number that
    does not fit in 64-bit parts.

    >>> write_pressure(Fraction(185, 2)), write_pressure("650 kPa", unit="kpa")
    ('92 1/2', '650 kPa')
    """
    if unit is None:
        return _low.rodt_pressure_format(pressure)
    return _low.rodt_pressure_format_unit(pressure, number_of(PressureUnit, unit, "unit"))


def psi_from_kpa(kilopascals: Number) -> Fraction:
    """Kilopascals, a number, as psi, exactly, as a Fraction.

    Raises Error for a number that does not fit in 64-bit parts.

    >>> float(psi_from_kpa(655))
    94.9997182...
    """
    parts = _low.rational(kilopascals, "kilopascals")
    return _low.rodt_pressure_from_kpa(*parts)


def read_date(text: str, *, order: DateOrder | str = "unknown") -> date:
    """Reads a day from a form: 2021-10-14, 14-OCT-21, 10/14/2021; a time after it is dropped.

    `order` says what comes first in dates made of numbers: "day-first" or "month-first". Raises Error where day and
    month are ambiguous, and where there is no such day.

    >>> read_date("14-OCT-21")
    datetime.date(2021, 10, 14)
    """
    return _low.rodt_date_parse_n(text, number_of(DateOrder, order, "order"))
