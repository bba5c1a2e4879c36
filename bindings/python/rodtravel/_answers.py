# SPDX-License-Identifier: Apache-2.0
"""The answers for columns: columns themselves, handed out without a copy."""
from __future__ import annotations

import functools
import itertools
import struct
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import TYPE_CHECKING, Any, ClassVar, SupportsIndex, overload

from . import _rodtravel as _low
from ._enums import Reason, Verdict, set_of
from ._html import ROWS_SHOWN, table
from ._record import Field, ReadOnly, Record, row_number
from ._summary import Summary, summary_of

if TYPE_CHECKING:
    from typing_extensions import Never, Self

UNITS_PER_INCH = 5080000
UNITS_PER_64TH = 79375
UNITS_PER_MM = 200000
UNITS_PER_PSI = 1000
PARTS_PER_INCH = 127 * 10**9
NO_STROKE = NO_LIMIT = -1
NO_MARGIN = -2**31

_NULLABLE = 2
_ARROW_FORMATS = {"i": "i", "q": "l", "Q": "L", "B": "C"}
_FORMATS = "iBQBi"  # of memoryviews: stroke, verdict, reasons, flags, limit
_WIDTHS = (4, 1, 8, 1, 4)
_APART = 64  # a column begins on a cache line of its own
_NONE = {"stroke": NO_STROKE, "stroke_parts": NO_STROKE, "limit": NO_LIMIT, "margin": NO_MARGIN}
_reasons = set_of(Reason, of_bits=False)
_SETS_KEPT = 1024  # sets of reasons whose texts are kept; a table has few


class Column(ReadOnly):
    """One column of answers: read by index, as a memoryview (`view`), by NumPy and through Arrow without a copy.
    Two are equal if their names and cells are.

    >>> answers = judge_columns(chamber=["30", "30"], released=["2", "2"], applied=["4", "4 1/8"])
    >>> list(answers.verdict), len(answers.stroke), answers.stroke[1] == 2 * UNITS_PER_INCH + 8 * UNITS_PER_64TH
    ([1, 2], 2, True)
    """

    __slots__ = ("_name", "_view")
    _name: str
    _view: memoryview
    __hash__: ClassVar[None]  # type: ignore[assignment]

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError("a Column is made by judge_columns and Plan.judge, not by hand")

    @classmethod
    def _make(cls, name: str, view: memoryview) -> Self:
        return cls._of_slots(name, view)

    @property
    def name(self) -> str:
        """What the column is called: "stroke", "verdict", "reasons", "flags", "limit", "stroke_parts",
        "margin" or "share"."""
        return self._name

    @property
    def view(self) -> memoryview:
        """The cells, a memoryview."""
        return self._view

    def __len__(self) -> int:
        return len(self._view)

    @overload
    def __getitem__(self, row: SupportsIndex) -> int: ...
    @overload
    def __getitem__(self, row: slice) -> memoryview: ...
    def __getitem__(self, row: Any) -> Any:
        return self._view[row]

    def __iter__(self) -> Iterator[int]:
        return iter(self._view)

    def __repr__(self) -> str:
        return f"<Column {self._name}: {len(self)} rows>"

    def __buffer__(self, flags: int) -> memoryview:
        return memoryview(self._view)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Column):
            return NotImplemented
        return self._name == other._name and self._view == other._view

    def __reduce__(self) -> Any:
        return _unpickle_column, (self._name, bytes(self._view), self._view.format)

    def __array__(self, dtype: Any = None, copy: bool | None = None) -> Any:
        import numpy
        array = numpy.frombuffer(self._view, dtype=numpy.dtype(self._view.format))
        if dtype is not None and numpy.dtype(dtype) != array.dtype:
            if copy is False:
                raise ValueError(f"the column {self._name} is {array.dtype}; {dtype} of it is a copy")
            return array.astype(dtype)
        return array.copy() if copy else array

    def _arrow_part(self) -> tuple[Any, ...]:
        bits, missing = _low.given_bits(self._view, _NONE[self._name]) if self._name in _NONE else (None, 0)
        return (_ARROW_FORMATS[self._view.format], self._name, _NULLABLE if self._name in _NONE else 0, len(self),
                missing, (bits, self._view), (), verdict_dictionary() if self._name == "verdict" else None)

    def __arrow_c_schema__(self) -> Any:
        return _low.arrow_schema(self._arrow_part())

    def __arrow_c_array__(self, requested_schema: Any = None) -> tuple[Any, Any]:
        part = self._arrow_part()
        return _low.arrow_schema(part), _low.arrow_array(part)


def _unpickle_column(name: str, cells: bytes, form: Any) -> Column:
    return Column._make(name, memoryview(bytearray(cells)).cast(form))


def dictionary(texts: Iterable[str]) -> tuple[Any, ...]:
    """Texts as an Arrow dictionary."""
    words = [text.encode() for text in texts]
    ends = [0, *itertools.accumulate(map(len, words))]
    return "u", "", 0, len(words), 0, (None, struct.pack(f"{len(ends)}i", *ends), b"".join(words)), (), None


@functools.lru_cache(None)
def verdict_dictionary() -> tuple[Any, ...]:
    """The verdicts, in the order of their numbers."""
    return dictionary(verdict.value for verdict in Verdict)


def _in_inches(cell: int, per_inch: int) -> Fraction | None:
    """The length of a cell."""
    return None if cell < 0 else Fraction(cell, per_inch)


def _length_text(parts: int) -> str | None:
    """The length of a cell as it is written."""
    text: str | None = None if parts < 0 else _low.rodt_length_format(Fraction(parts, PARTS_PER_INCH))
    return text


@functools.lru_cache(_SETS_KEPT)
def reason_codes(bits: int) -> str:
    """The codes of a set of reasons, with blanks between them."""
    return " ".join(reason.value for reason in _reasons(bits))


@functools.lru_cache(_SETS_KEPT)
def reason_words(bits: int) -> str:
    """The same in words."""
    return "; ".join(reason.text for reason in _reasons(bits))


class Answer(Record):
    """One row of answers.

    >>> judge_columns(chamber=["30"], released=["2"], applied=["4"])[0].applied_stroke
    Fraction(2, 1)
    """

    __slots__ = ()
    applied_stroke: Field[Fraction | None] = Field(
        "Inches; None where there is none, or it is no whole number of parts: up to nine decimals are.")
    verdict: Field[Verdict] = Field("The Verdict.", Verdict)
    reasons: Field[tuple[Reason, ...]] = Field("Why, a tuple of Reason.", _reasons)
    limit: Field[Fraction | None] = Field("The limit that judged, inches; None where there is none.")
    margin: Field[Fraction | None] = Field("Limit less applied stroke, inches; negative = over; or None.")


class Answers(ReadOnly):
    """Columns of answers: stroke (int32, units of 5 nm; NO_STROKE = none), verdict (uint8, the number of a Verdict),
    reasons (uint64, bit n = the Reason of number n), flags (uint8: 1 = something is missing, 2 = unreadable) and limit
    (int32, the limit that judged, units of 5 nm; NO_LIMIT = none). `margin` is limit less stroke (NO_MARGIN = none).
    A stroke that is no whole number of units, such as one of six decimals, is none there; `stroke_parts` has it.

    A row is an Answer, a slice of them is Answers with cells of its own. NumPy takes the columns, and pyarrow, polars
    and DuckDB take columns or the whole table, without a copy; there the verdicts are words and strokes that are none
    are null. Rows are in the order of the table that was judged; to_pandas gives them its index.

    >>> answers = judge_columns(chamber=["30", "24"], released=["2", ""], applied=["4 1/8", "3"])
    >>> [str(answer.verdict) for answer in answers]
    ['out-of-adjustment', 'undetermined']
    """

    __slots__ = ("stroke", "verdict", "reasons", "flags", "limit", "_parts")
    stroke: Column
    verdict: Column
    reasons: Column
    flags: Column
    limit: Column
    _parts: memoryview | None  # the strokes in parts; None = all are whole units
    __hash__: ClassVar[None]  # type: ignore[assignment]

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError("Answers are made by judge_columns and Plan.judge, not by hand")

    @classmethod
    def _make(cls, views: Iterable[memoryview], parts: Any = None) -> Self:
        return cls._of_slots(*map(Column._make, cls.__slots__, views), None if parts is None else _cast(parts, "q"))

    def __len__(self) -> int:
        return len(self.verdict)

    @overload
    def __getitem__(self, row: SupportsIndex) -> Answer: ...
    @overload
    def __getitem__(self, row: slice) -> Answers: ...
    def __getitem__(self, row: Any) -> Answer | Answers:
        if isinstance(row, slice):
            return _unpickle(*(None if cells is None else cells[row].tobytes() for cells in self._cells()))
        row = row_number(row, len(self), "rows")
        limit = _in_inches(self.limit[row], UNITS_PER_INCH)
        stroke = (_in_inches(self.stroke[row], UNITS_PER_INCH) if self._parts is None else
                  _in_inches(self._parts[row], PARTS_PER_INCH))
        margin = None if stroke is None or limit is None else limit - stroke
        answer: Answer = Answer._read((stroke, self.verdict[row], self.reasons[row], limit, margin))
        return answer

    def __iter__(self) -> Iterator[Answer]:
        return (self[row] for row in range(len(self)))

    def __repr__(self) -> str:
        counts = ", ".join(f"{verdict} {number}" for verdict, number in self.counts().items() if number)
        return f"<Answers: {len(self)} rows{': ' if counts else ''}{counts}>"

    @property
    def margin(self) -> Column:
        """Limit less stroke of each row, a Column of int32 in units of 5 nm; negative = over, NO_MARGIN = none.

        >>> answers = judge_columns(chamber=["30"], released=["2"], applied=["4 1/8"])
        >>> answers.margin[0] == -8 * UNITS_PER_64TH
        True
        """
        margins = _low.answer_margins(self.stroke.view, self.limit.view, NO_MARGIN)
        return Column._make("margin", _cast(margins, "i"))

    @property
    def stroke_parts(self) -> Column:
        """The stroke of each row, a Column of int64 in PARTS_PER_INCH, of which every decimal of up to nine digits in
        inches or a metric unit is a whole number; NO_STROKE = none.

        >>> answers = judge_columns(chamber=["30"], released=["2.000001"], applied=["4"])
        >>> answers.stroke[0] == NO_STROKE, Fraction(answers.stroke_parts[0], PARTS_PER_INCH)
        (True, Fraction(1999999, 1000000))
        """
        parts = _cast(_low.answer_parts(self.stroke.view), "q") if self._parts is None else self._parts
        return Column._make("stroke_parts", parts)

    def counts(self) -> dict[Verdict, int]:
        """How many rows have each Verdict, a dict.

        >>> judge_columns(chamber=["30"], released=["2"], applied=["4"]).counts()[Verdict.IN_ADJUSTMENT]
        1
        """
        cells = bytes(self.verdict.view)
        return {verdict: cells.count(verdict.number) for verdict in Verdict}

    def summary(self) -> Summary:
        """Counts by verdict and reason, and how much of their limits strokes use: a Summary.

        >>> print(judge_columns(chamber=["30"], released=["2"], applied=["4"]).summary().used[90])
        100
        """
        return summary_of(self.stroke.view, self._parts, self.limit.view, self.counts(), self.reasons.view, PARTS_PER_INCH)

    def _repr_html_(self) -> str:
        head = ("applied stroke", "limit", "margin", "verdict", "reasons")
        rows = [(each.applied_stroke, each.limit, each.margin, each.verdict, each.reasons) for each in self[:ROWS_SHOWN]]
        return table(repr(self).strip("<>"), head, rows, len(self) - len(rows))

    def to_pandas(self, index: Any = None) -> Any:
        """A DataFrame: stroke in inches as text, verdict and reasons as categories, reasons being codes with blanks
        between them.

        `index` is that of the frame that was judged, so that the answers can be joined to it. The frame of a Judge has
        numbers and more columns.
        """
        import numpy
        import pandas
        code, strokes = pandas.factorize(numpy.asarray(self.stroke_parts))
        lengths = numpy.array([_length_text(parts) for parts in strokes.tolist()] or [None], dtype=object)
        bits, sets = _low.answer_sets(self.reasons.view)
        return pandas.DataFrame({
            "applied_stroke": lengths[code],
            "verdict": pandas.Categorical.from_codes(numpy.asarray(self.verdict).view("int8"),
                                                     [verdict.value for verdict in Verdict]),
            "reasons": pandas.Categorical.from_codes(numpy.frombuffer(bits, dtype="int32"),
                                                     [reason_codes(each) for each, _ in sets])}, index=index, copy=False)

    def _columns(self) -> tuple[Column, ...]:
        return self.stroke, self.verdict, self.reasons, self.flags, self.limit

    def _cells(self) -> tuple[memoryview | None, ...]:
        return *(column.view for column in self._columns()), self._parts

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Answers):
            return NotImplemented
        return self._columns() == other._columns() and self.stroke_parts == other.stroke_parts

    def __reduce__(self) -> Any:
        return _unpickle, tuple(None if cells is None else bytes(cells) for cells in self._cells())

    def _arrow_part(self) -> tuple[Any, ...]:
        return "+s", "", 0, len(self), 0, (None,), tuple(column._arrow_part() for column in self._columns()), None

    def __arrow_c_schema__(self) -> Any:
        return _low.arrow_schema(self._arrow_part())

    def __arrow_c_array__(self, requested_schema: Any = None) -> tuple[Any, Any]:
        part = self._arrow_part()
        return _low.arrow_schema(part), _low.arrow_array(part)

    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any:
        return _low.arrow_stream(self._arrow_part())


def _cast(cells: bytearray | memoryview, form: Any) -> memoryview:
    return memoryview(cells).cast(form)


def _unpickle(*cells: bytes | None) -> Answers:
    *columns, parts = map(_copied, cells)
    return Answers._make((_cast(cell, form) for cell, form in zip(columns, _FORMATS)), parts)


def _copied(cells: bytes | None) -> Any:
    return None if cells is None else bytearray(cells)


def buffers(plan: Any, rows: int, out: Iterable[Any] | None) -> tuple[Any, ...]:
    """The buffers for the answers of so many rows: of the plan's capsule, or the caller's."""
    if out is None:
        ends = [0, *itertools.accumulate(-(-rows * width // _APART) * _APART for width in _WIDTHS)]
        room = memoryview(_low.plan_room(plan, ends[-1]))
        return tuple(_cast(room[start:start + rows * width], form) for start, width, form in zip(ends, _WIDTHS, _FORMATS))
    if isinstance(out, str) or not isinstance(out, Iterable):
        raise TypeError("out is four columns for the answers: stroke, verdict, reasons, flags; limit may follow them")
    given = tuple(out)
    return (*given, _cast(bytearray(rows * 4), "i")) if len(given) == len(_FORMATS) - 1 else given


def from_buffers(out: Iterable[Any], parts: Any = None) -> Answers:
    """Answers of filled buffers, as memoryviews of native cells: ctypes names its formats "<i"."""
    views = [memoryview(each) for each in out]
    return Answers._make((view if view.format == form else _cast(view.cast("B"), form)
                          for view, form in zip(views, _FORMATS)), parts)
