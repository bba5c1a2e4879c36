# SPDX-License-Identifier: Apache-2.0
"""Vehicles of a table: the brakes of each inspection, counted by the roadside criterion."""
from __future__ import annotations

import csv
import functools
import io
import itertools
from array import array
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from fractions import Fraction
from typing import TYPE_CHECKING, Any, ClassVar, SupportsIndex, overload

from . import _rodtravel as _low
from ._columns import TextPlans
from ._enums import Outcome
from ._html import ROWS_SHOWN, table
from ._record import Field, ReadOnly, Record, row_number
from ._tables import FIELDS, Opened, by_heading

if TYPE_CHECKING:
    from typing_extensions import Never, Self


@functools.lru_cache(4096)
def _number(text: str) -> Fraction | None:
    """A mixed fraction."""
    return sum(map(Fraction, text.split()), Fraction(0)) if text else None


def _float(text: str) -> float | None:
    number = _number(text)
    return None if number is None else float(number)


def _day(text: str) -> date | None:
    return date.fromisoformat(text) if text else None


def _values(cells: list[str], names: int, dated: bool) -> tuple[Any, ...]:
    """The members of an Inspection from the cells of its line."""
    day = _day(cells[names]) if dated else None
    *counts, defective, percent, outcome, whole, remarks = cells[names + dated:]
    share = _number(percent)
    return (tuple(cells[:names]), day, *map(int, counts), _number(defective), None if share is None else share / 100,
            Outcome(outcome), int(whole), tuple(remarks.split()))


def _cells_of(lines: bytes) -> Iterator[list[str]]:
    """The cells of lines of CSV; a cell may have line breaks."""
    return csv.reader(io.StringIO(lines.decode(errors="replace"), newline=""))


class Inspection(Record):
    """What was counted of one vehicle on one day.

    >>> rows = {"unit": ["T-1"], "chamber": ["30"], "released": ["2"], "applied": ["4 1/4"], "date": ["2024-06-05"]}
    >>> one = Judge(psi=95, columns={"unit": ""}).vehicles(rows, by="unit")[0]
    >>> str(one.outcome), one.share, one.day.isoformat()
    ('out-of-service', Fraction(1, 1), '2024-06-05')
    """

    __slots__ = ()
    name: Field[tuple[str, ...]] = Field("What names the vehicle, as it was spelled first: a text for each column.")
    day: Field[date | None] = Field("Its day; None where it cannot be read, or days are not told apart.")
    brakes: Field[int] = Field("Rows.")
    in_adjustment: Field[int] = Field("Rows in adjustment.")
    out_of_adjustment: Field[int] = Field("Rows out of adjustment.")
    inoperative: Field[int] = Field("Rows whose rod did not move.")
    undetermined: Field[int] = Field("Rows of which nothing is proven.")
    defective: Field[Fraction] = Field("Full defects and half of the half ones, in brakes.")
    share: Field[Fraction | None] = Field("That of all brakes.")
    outcome: Field[Outcome] = Field("Whether the criterion is met, an Outcome.")
    whole_needed: Field[int] = Field("Brakes that the chart of whole brakes requires.")
    remarks: Field[tuple[str, ...]] = Field('"mixed-days", "position-twice", "undated-rows": a tuple of text.')


class Inspections(ReadOnly):
    """The inspections of a table, in the order of the first row of each; made by vehicles of a Judge.

    A row is an Inspection. pyarrow, polars and DuckDB take the whole as a table, with the columns of `rodtravel batch
    --by`; to_pandas makes a frame.

    >>> rows = {"fleet": ["A", "B"], "unit_no": ["1", "1"], "chamber": ["30"] * 2, "released": ["2"] * 2,
    ...         "applied": ["4"] * 2}
    >>> found = Judge(psi=95).vehicles(rows, by=["fleet", "unit_no"])
    >>> len(found), found.headings[:3], found[1].name
    (2, ('fleet', 'unit_no', 'brakes'), ('B', '1'))
    """

    __slots__ = ("headings", "_lines", "_ends", "_names")
    headings: tuple[str, ...]
    _lines: bytes  # as the command writes them; they are read when somebody looks
    _ends: memoryview  # of the lines, after a 0
    _names: int
    __hash__: ClassVar[None]  # type: ignore[assignment]

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError("Inspections are made by vehicles of a Judge, not by hand")

    @classmethod
    def _make(cls, headings: tuple[str, ...], lines: bytes, ends: memoryview, names: int) -> Self:
        return cls._of_slots(headings, lines, ends, names)

    def __len__(self) -> int:
        return len(self._ends) - 1

    @property
    def _dated(self) -> bool:
        return len(self.headings) > self._names + len(_COUNTED)

    def _each_line(self, rows: Iterable[int]) -> Iterator[bytes]:
        return (self._lines[self._ends[row]:self._ends[row + 1]] for row in rows)

    def _inspections(self, lines: bytes) -> Iterator[Inspection]:
        return (Inspection._make(_values(cells, self._names, self._dated)) for cells in _cells_of(lines))

    @overload
    def __getitem__(self, row: SupportsIndex) -> Inspection: ...
    @overload
    def __getitem__(self, row: slice) -> Inspections: ...
    def __getitem__(self, row: Any) -> Any:
        if isinstance(row, slice):
            lines = tuple(self._each_line(range(len(self))[row]))
            ends = memoryview(array("q", itertools.accumulate(map(len, lines), initial=0)))
            return self._make(self.headings, b"".join(lines), ends, self._names)
        line, = self._each_line((row_number(row, len(self), "inspections"),))
        return next(self._inspections(line))

    def __iter__(self) -> Iterator[Inspection]:
        return self._inspections(self._lines)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Inspections):
            return NotImplemented
        return (self.headings, self._names, self._lines) == (other.headings, other._names, other._lines)

    def __repr__(self) -> str:
        counts = ", ".join(f"{outcome} {number}" for outcome, number in self.counts().items() if number)
        return f"<Inspections: {len(self)}{': ' if counts else ''}{counts}>"

    def __reduce__(self) -> Any:
        return _unpickle, (self.headings, self._lines, bytes(self._ends), self._names)

    def _repr_html_(self) -> str:
        columns = self[:ROWS_SHOWN].columns()
        return table(repr(self).strip("<>"), self.headings, zip(*columns.values()), len(self) - ROWS_SHOWN)

    def counts(self) -> dict[Outcome, int]:
        """How many have each Outcome, a dict.

        >>> rows = {"unit_no": ["1"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
        >>> Judge(psi=95).vehicles(rows, by="unit_no").counts()[Outcome.BELOW_CRITERION]
        1
        """
        found = Counter(line.rsplit(b",", 3)[1] for line in self._each_line(range(len(self))))
        return {outcome: found[outcome.value.encode()] for outcome in Outcome}

    def _readers(self, number: Callable[[str], Any]) -> tuple[Callable[[str], Any], ...]:
        """What reads a cell of each column; `number` reads exact numbers."""
        return *(str,) * self._names, *(_day,) * self._dated, *(int,) * 5, number, number, str, int, str

    def _columns(self, number: Callable[[str], Any]) -> dict[str, list[Any]]:
        """The columns by heading. What is the same text is read once."""
        readers = self._readers(number)
        columns = list(zip(*_cells_of(self._lines))) or [()] * len(readers)
        known = ({text: read(text) for text in set(cells)} for cells, read in zip(columns, readers))
        return {heading: list(map(found.__getitem__, cells)) for heading, found, cells in
                zip(self.headings, known, columns)}

    def columns(self) -> dict[str, list[Any]]:
        """The columns by heading, as lists: exact numbers are Fraction, percent is 100 times the share.

        >>> rows = {"unit_no": ["1"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
        >>> Judge(psi=95).vehicles(rows, by="unit_no").columns()["verdict"]
        ['below-criterion']
        """
        return self._columns(_number)

    def to_pandas(self) -> Any:
        """A DataFrame, a row for each inspection; exact numbers become floats.

        >>> rows = {"unit_no": ["1"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
        >>> found = Judge(psi=95).vehicles(rows, by="unit_no")  # found.to_pandas()["percent"]
        """
        import pandas
        frame = pandas.DataFrame(self._columns(_float))
        frame["verdict"] = pandas.Categorical(frame["verdict"], [outcome.value for outcome in Outcome])
        return frame

    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any:
        columns = tuple(_arrow_column(heading, cells, reader) for (heading, cells), reader in
                        zip(self._columns(_float).items(), self._readers(_float)))
        return _low.arrow_stream(("+s", "", 0, len(self), 0, (None,), columns, None))


_COUNTED = ("brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined", "defective", "percent",
            "verdict", "whole_needed", "remarks")


def _unpickle(headings: tuple[str, ...], lines: bytes, ends: bytes, names: int) -> Inspections:
    return Inspections._make(headings, lines, memoryview(ends).cast("q"), names)


def _arrow_column(heading: str, cells: list[Any], reader: Callable[[str], Any]) -> tuple[Any, ...]:
    """Whole numbers, floats or texts; days are date32. The type is that of the column, also where no cell is there."""
    bits = bytearray(len(cells) // 8 + 1)
    for row, cell in enumerate(cells):
        bits[row // 8] |= (cell is not None) << row % 8
    missing = sum(cell is None for cell in cells)
    if reader is str:
        words = [cell.encode() for cell in cells]
        ends = array("q", [0, *itertools.accumulate(map(len, words))])
        return "U", heading, 2, len(cells), missing, (bits, memoryview(ends), b"".join(words)), (), None
    form, code = _ARROW_FORMS[reader]
    made = array(code, [0 if cell is None else cell.toordinal() - _FIRST_DAY if isinstance(cell, date) else cell
                        for cell in cells])
    return form, heading, 2, len(cells), missing, (bits, memoryview(made)), (), None


_FIRST_DAY = date(1970, 1, 1).toordinal()
_ARROW_FORMS: dict[Callable[[str], Any], tuple[str, Any]] = {int: ("l", "q"), _day: ("tdD", "i"), _float: ("g", "d")}


def names_of(by: str | Sequence[str]) -> tuple[str, ...]:
    """The headings that name the vehicle."""
    if isinstance(by, bytes) or not isinstance(by, Iterable):
        raise TypeError(f"by is the heading that names the vehicle, or several, not {type(by).__name__}")
    return (by,) if isinstance(by, str) else tuple(by)


def _numbers_of(opened: Opened, by: tuple[str, ...]) -> list[int]:
    """The numbers of the columns that name the vehicle."""
    if not 1 <= len(by) <= _low.NAMES_MAX:
        raise TypeError(f"by is the headings of one to {_low.NAMES_MAX} columns")
    numbers = [by_heading(opened.names, "by", heading) for heading in by]
    if len(set(numbers)) < len(numbers):
        raise TypeError("by names a column twice")
    return numbers


def _columns_of(opened: Opened, fields: tuple[Any, ...], by: tuple[str, ...]) -> list[int]:
    """The same; none of them is read as something else."""
    numbers = _numbers_of(opened, by)
    if fields[FIELDS.index("unit")] is not None and opened.chosen.get("unit") in numbers:
        raise TypeError(f"the column {opened.names[opened.chosen['unit']]!r} is read as the unit of the lengths; if it "
                        "names vehicles, say unit=''")
    return numbers


def _position_of(opened: Opened, heading: str | None) -> int | None:
    """The number of the column of positions."""
    if heading is not None:
        return by_heading(opened.names, "position", heading) if heading else None
    found = [number for number, name in enumerate(opened.names)
             if isinstance(name, str) and _low.rodt_field_name(_low.rodt_field_of_heading(name)) == "position"]
    if len(found) > 1:
        raise TypeError("two columns are positions; say which one: position=")
    return found[0] if found else None


def inspections_of(plans: TextPlans, opened: Opened, fields: tuple[Any, ...], by: tuple[str, ...], pool: bool,
                   position: str | None) -> Inspections:
    """The inspections of a table whose fields are opened."""
    numbers = _columns_of(opened, fields, by)
    place = _position_of(opened, position)
    columns = (*fields, None if place is None else opened.open(place, "position"),
               *(opened.open(number, "by") for number in numbers))
    day = opened.chosen.get("date")
    dated = not pool and fields[FIELDS.index("date")] is not None and day not in numbers
    headings = [str(opened.names[number]) for number in numbers]
    if dated:
        headings.append("date" if day is None else str(opened.names[day]))
    head, lines, ends = plans.run(lambda plan: _low.columns_inspect(plan, columns, tuple(headings)))
    return Inspections._make(tuple(next(_cells_of(head))), lines, memoryview(ends).cast("q"), len(numbers))


def shares_of(opened: Opened, by: tuple[str, ...]) -> bytes:
    """The number of each row's vehicle, int32."""
    others = (None,) * (len(FIELDS) + 1)
    names = tuple(opened.open(number, "by") for number in _numbers_of(opened, by))
    numbers: bytes = _low.columns_share((*others, *names))
    return numbers
