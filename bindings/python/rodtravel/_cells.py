# SPDX-License-Identifier: Apache-2.0
"""Cells that are no text: numbers and days of the caller, written as they would be read."""
from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

from . import _rodtravel as _low
from ._enums import Unit
from ._error import Error, Status, called
from ._findings import _RECORDED
from ._lengths import read_length, read_pressure
from ._tables import _LENGTHS, FIELDS, Opener, open_any, warn
from ._types import Exact

_PRESSURES = ("psi", "psi_after")
_RECORDS = ("engine", "spring_brake")
_MM_PER_INCH = Fraction(127, 5)
_PER_INCH = {Unit.IN: Fraction(1), Unit.MM: _MM_PER_INCH, Unit.CM: _MM_PER_INCH / 10}
# A float is off by far less than this part of a division, and a figure that was rounded to too few places by more.
_TINY = Fraction(1, 1000)
_FIRST_DAY = date(1970, 1, 1).toordinal()


def _list_of(column: Any) -> Any:
    """The cells as objects of Python; None if it has no such list."""
    kind = getattr(getattr(column, "dtype", None), "kind", "")
    if kind == "M" and not hasattr(column, "tz_convert") and hasattr(column, "astype"):
        return column.astype("datetime64[D]").tolist() if not hasattr(column, "index") else column.tolist()
    for name in ("to_pylist", "to_list", "tolist"):
        if hasattr(column, name):
            return getattr(column, name)()
    return column if isinstance(column, (list, tuple)) else None


def _positive(division: Fraction) -> Fraction:
    if division <= 0:
        raise Error(Status.ARGUMENT, "a division is more than nothing")
    return division


class Writer(Opener):
    """Writes numbers and days as texts for the readers: lengths in `unit`, pressures in psi.

    Whole numbers, Fraction and Decimal are exact. A binary float is what it is only nearly, so the division that it was
    read to must be stated: it becomes the nearest multiple of that, and is unreadable if it is not within a thousandth
    of the division of one.
    """

    def __init__(self, unit: Unit, decimal_comma: bool, division: Exact | None, psi_division: Exact | None) -> None:
        self.unit, self.comma = unit, decimal_comma
        self.division = self.psi_division = None
        with called({None: "division"}):
            if division is not None:
                text = _low.cell_text(division, FIELDS.index("division"), decimal_comma)
                self.division = _positive(read_length(text, unit=unit, decimal_comma=decimal_comma) * _PER_INCH[unit])
        with called({None: "psi_division", "psi": "psi_division"}):
            if psi_division is not None:
                text = _low.cell_text(psi_division, FIELDS.index("psi"), decimal_comma)
                self.psi_division = _positive(read_pressure(text, decimal_comma=decimal_comma))

    def _step(self, field: str) -> Fraction:
        step = self.division if field in _LENGTHS else self.psi_division
        if step is None:
            name = "division" if field in _LENGTHS else "psi_division"
            raise TypeError(f"{field}: these are binary floats, which are seldom the numbers that were read; say to which "
                            f"division they were, such as {name}={'1/16' if name == 'division' else '1'!r}, or give text")
        return step

    def _float(self, field: str, cell: float) -> str | None:
        """None: it is no multiple of the division."""
        if field in _LENGTHS or field in _PRESSURES:
            step = self._step(field)
            if cell != cell or cell in (float("inf"), float("-inf")):
                return None
            times = round(Fraction(cell) / step)
            if times < 0 or abs(Fraction(cell) - times * step) > _TINY * step:
                return None
            return _low.cell_text(times * step, FIELDS.index(field), self.comma)
        return str(int(cell)) if cell == cell and cell.is_integer() else None

    def text(self, field: str, cell: Any) -> str | None:
        """The text of a cell that is neither text nor missing; None if a float is no multiple of its division."""
        if isinstance(cell, bool) and field in _RECORDS:
            return _RECORDED[cell]
        if isinstance(cell, datetime) and field == "date":
            if cell.tzinfo is not None:
                raise TypeError("date: a point in time with a zone has another day elsewhere; give the day")
            return cell.date().isoformat()
        if isinstance(cell, float):
            return self._float(field, cell)
        number = isinstance(cell, (int, Fraction, Decimal)) and not isinstance(cell, bool)
        if field in (*_LENGTHS, *_PRESSURES) and number or field == "date" and isinstance(cell, date):
            return _low.cell_text(cell, FIELDS.index(field), self.comma)
        if number and field not in FIELDS or number and field == "chamber":
            return str(cell)
        raise TypeError(f"{field}: {cell!r} is no {'day' if field == 'date' else 'text'}, and no number that could be one")

    def texts(self, field: str, heading: str, cells: Iterable[Any]) -> tuple[str | None, ...]:
        """The column as texts; each different cell is written once. Unreadable floats are told."""
        known: dict[Any, str | None] = {}
        refused: list[Any] = []
        made = []
        for cell in cells:
            if cell is None or isinstance(cell, str):
                made.append(cell)
                continue
            try:
                key = cell.__class__, cell
                if key not in known:
                    known[key] = self._known(field, cell, refused)
            except (TypeError, ValueError) as error:
                if _is_nothing(cell):
                    made.append(None)
                    continue
                raise TypeError(str(error)) from None
            made.append(known[key])
        if refused:
            step = self.division if field in _LENGTHS else self.psi_division
            warn(f"the column {heading!r} holds {len(refused)} different numbers that cannot be read, such as "
                 f"{refused[0]!r}" + (f"; its division is {step}" if step else ""))
        return tuple(made)

    def _known(self, field: str, cell: Any, refused: list[Any]) -> str | None:
        if _is_nothing(cell):
            return None
        try:
            text = self.text(field, cell)
        except Error:  # a number that nobody measures
            text = None
        if text is None:
            refused.append(cell)
        return "?" if text is None else text

    def open(self, column: Any, field: str, heading: str) -> Any:
        try:
            opened = open_any(column, field, heading)
        except TypeError:
            cells = _list_of(column)
            if cells is None:
                raise
            return _low.column_from_texts(self.texts(field, heading, cells), field)
        return self.take(opened, field, heading)

    def take(self, opened: Any, field: str, heading: str) -> Any:
        """Texts in place of numbers and days."""
        if opened is None or _low.column_is_text(opened):
            return opened
        cells = _low.column_numbers(opened)
        if _low.column_is_days(opened):
            cells = tuple(None if cell is None else date.fromordinal(_FIRST_DAY + cell) for cell in cells)
        return _low.column_from_texts(self.texts(field, heading, cells), field)


def _is_nothing(cell: Any) -> bool:
    """What tables have for nothing: a float that is no number, NA or NaT."""
    try:
        return bool(cell != cell)
    except TypeError:  # pandas.NA is neither
        return True
    except ValueError:  # an array
        return False
