# SPDX-License-Identifier: Apache-2.0
"""Columns and tables of the caller: opened where they are in memory, and found by their headings."""
from __future__ import annotations

import os
import sys
import warnings
from collections.abc import Callable, Iterable, Mapping, Set
from typing import Any

from . import _rodtravel as _low
from ._enums import Unit
from ._findings import readable

FIELDS: tuple[str, ...] = tuple(map(_low.rodt_field_name, range(_low.READING_FIELDS)))


class UnreadColumnWarning(UserWarning):
    """A column of a table is probably about the test but is not read, or its cells seem to be about something else.

    >>> import warnings
    >>> with warnings.catch_warnings(record=True) as caught:
    ...     warnings.simplefilter("always")
    ...     answers = judge_columns({"chamber": ["30"], "released": ["2"], "applied": ["4"], "psi reading": ["60"]})
    >>> print(caught[0].message)
    the column 'psi reading' is not read; if it is psi, say psi='psi reading', otherwise psi=''
    """


# --- Columns

# Cells of Python that are read faster one by one than through Arrow, whose way has a cost of its own.
_FEW = 500

def open_column(column: Any, field: str, heading: str | None = None) -> Any:
    """A capsule of the column; None for None. Binary floats are refused."""
    return None if column is None else _low.column_exact(open_any(column, field, heading), field)


def open_any(column: Any, field: str, heading: str | None = None) -> Any:
    """A capsule of the column. A table in place of a column is searched for the heading."""
    name = field if heading is None else heading
    if getattr(getattr(column, "dtype", None), "kind", "") == "O" and hasattr(column, "tolist") and len(column) <= _FEW:
        return _open_buffer(column, field)
    column = _arrow_in(column)
    if hasattr(column, "__arrow_c_array__"):
        return _low.column_from_array(*column.__arrow_c_array__(), name, field)
    try:
        memoryview(column).release()
    except (TypeError, ValueError, BufferError):
        return _open_other(column, field, name)
    return _open_buffer(column, field)


def _arrow_in(column: Any) -> Any:
    """The Arrow array that a column of pandas has or becomes; other columns as they are. Its stream is of the same array,
    which pandas finds slowly, with the warnings of all threads held back."""
    convert = getattr(getattr(column, "array", None), "__arrow_array__", None)
    try:
        return column if convert is None else convert()
    except (ImportError, TypeError, ValueError):
        return column


def _open_other(column: Any, field: str, name: str) -> Any:
    """What has no buffer: Arrow streams, objects that NumPy can convert, sequences of text."""
    if hasattr(column, "__arrow_c_stream__"):
        try:
            stream = column.__arrow_c_stream__()
        except (ImportError, TypeError, ValueError):  # it needs another library, or a column of one type
            if not hasattr(column, "__array__"):
                raise
        else:
            return _low.column_from_stream(stream, name, field)
    if hasattr(column, "__array__"):
        return _open_buffer(column.__array__(), field)
    if isinstance(column, (str, bytes)):
        raise TypeError(f"{field} is one text; a column has one for each row")
    if isinstance(column, (Set, Mapping)) or not isinstance(column, Iterable):
        raise TypeError(f"{field} is a column, a sequence with text or None for every row, not {type(column).__name__}")
    return _low.column_from_texts(tuple(column), field)


def _open_buffer(column: Any, field: str) -> Any:
    kind = getattr(getattr(column, "dtype", None), "kind", "i")
    if getattr(column, "ndim", 1) != 1:
        raise TypeError(f"{field}: a column has one dimension")
    if kind == "S":
        raise TypeError(f"{field} is bytes; a column is text or whole numbers: .astype(str) makes text of it")
    if kind not in "OUT" and hasattr(column, "filled") and getattr(column, "mask", None) is not None:
        if column.mask.any():
            raise TypeError(f"{field}: the mask of a masked array is not read here; pyarrow.array(column) keeps it")
    if kind in "OUT":
        return _low.column_from_texts(tuple(_text_or_none(cell) for cell in column.tolist()), field)
    if kind in "mM":
        raise TypeError(f"{field}: these are points in time; dates are text such as 2021-10-14, .astype('datetime64[D]')"
                        ".astype(str), or for a Plan whole numbers since 1970-01-01, .astype('int32') after that")
    if isinstance(column, (bytes, bytearray)) and field != "chamber":
        raise TypeError(f"{field} is bytes; a column is text or whole numbers")
    return _low.column_from_buffer(column, field)


def _text_or_none(cell: Any) -> Any:
    """What tables of objects have for nothing: None, a float that is no number, NA or NaT."""
    if isinstance(cell, str):
        return cell
    try:
        return None if cell is None or cell != cell else cell
    except TypeError:  # pandas.NA is neither
        return None
    except ValueError:  # an array in a cell; the error names its row
        return cell


# --- Tables

class Opener:
    """Opens columns as they are."""

    def open(self, column: Any, field: str, heading: str) -> Any:
        """A capsule of a column of the caller."""
        return open_column(column, field, heading)

    def take(self, opened: Any, field: str, heading: str) -> Any:
        """The capsule of a column that is opened, or a better one."""
        return _low.column_exact(opened, field)


class Batch:
    """A table that is held as a whole, as table_from_stream and table_next make it."""

    def __init__(self, kept: Any) -> None:
        self.kept = kept


def _open_table(table: Any, opener: Opener) -> tuple[list[Any], Callable[[int, str], Any]]:
    """The headings of a table, and a function that opens the column of that number for a field."""
    if hasattr(table, "dtype") and hasattr(table, "__arrow_c_stream__"):
        raise TypeError("table is a mapping, or has columns with names; this is one column")
    if not isinstance(table, Batch) and _is_read_once(table):
        table = Batch(_low.table_from_stream(table.__arrow_c_stream__()))
    if isinstance(table, Batch):
        whole = table.kept
        names = list(_low.table_names(whole))
        return names, lambda number, field: opener.take(_low.column_of_table(whole, number, field), field, names[number])
    names = _names_of(table)
    return names, lambda number, field: opener.open(table[names[number]], field, names[number])


def _names_of(table: Any) -> list[Any]:
    names = getattr(table, "columns", None) if not hasattr(table, "column_names") else table.column_names
    if names is None or callable(names):
        refuse_path(table)
        if not isinstance(table, Mapping):
            raise TypeError(f"table is a mapping, or has columns with names, not {type(table).__name__}")
        names = table.keys()
    return list(names)


def refuse_path(table: Any) -> None:
    """Raises TypeError for the name of a file in place of a table."""
    if isinstance(table, (str, bytes, os.PathLike)):
        raise TypeError("table is a mapping, or has columns with names, not the name of a file: read it as text first, such "
                        "as pandas.read_csv(path, dtype=str)")


def _listed(names: list[Any]) -> str:
    """The end of a sentence about a table: what columns there are."""
    shown = ", ".join(map(repr, names[:_NAMES_SHOWN]))
    return f"; its columns are {shown}{' and others' if len(names) > _NAMES_SHOWN else ''}" if names else ""


_NAMES_SHOWN = 20


def _is_read_once(table: Any) -> bool:
    """A reader of Arrow batches, or a query: its columns are queries again, and each would run by itself, in an order of
    its own."""
    if not hasattr(table, "__arrow_c_stream__"):
        return False
    if not hasattr(table, "columns") and not hasattr(table, "column_names"):
        return True
    names = _names_of(table)
    single = next((name for name in names if names.count(name) == 1), None)
    return single is not None and type(table[single]) is type(table)


def by_heading(names: list[Any], field: str, heading: str) -> int:
    """The number of the column with a heading that was given for a field."""
    if not isinstance(heading, str):
        raise TypeError(f"{field} is the heading of a column, a text, not {type(heading).__name__}")
    found = [number for number, name in enumerate(names) if name == heading] or [
        number for number, name in enumerate(names)
        if isinstance(name, str) and _low.rodt_heading_equal(readable(name), readable(heading))]
    if len(found) != 1:
        raise TypeError(f"{field} is the heading {heading!r}, and the table has {'two columns' if found else 'no column'} "
                        f"of that name{_listed(names)}")
    return found[0]


def _choose(names: list[Any], given: Mapping[str, Any]) -> tuple[dict[str, int], list[str]]:
    """The number of the column for each field, by the name that was given, else by the library's rule for headings; and
    what is to be said of columns that are not read."""
    chosen = {field: by_heading(names, field, column) for field, column in given.items()
              if isinstance(column, str) and column}
    others = [(number, readable(name)) for number, name in enumerate(names)
              if isinstance(name, str) and number not in chosen.values()]
    for number, heading in others:
        index = _low.rodt_field_of_heading(heading)
        if index >= len(FIELDS) or given[FIELDS[index]] is not None:
            continue
        field = FIELDS[index]
        if field in chosen:
            if names[chosen[field]] == heading:
                raise TypeError(f"two columns {heading!r} both mean {field}; rename one")
            raise TypeError(f"the columns {names[chosen[field]]!r} and {heading!r} both mean {field}; say which one: "
                            f"{field}={heading!r}")
        chosen[field] = number
    said = []
    for _, heading in others:
        index = _low.rodt_field_meant(heading)
        if index < len(FIELDS) and FIELDS[index] not in chosen and given[FIELDS[index]] is None:
            said.append(f"the column {heading!r} is not read; if it is {FIELDS[index]}, say {FIELDS[index]}={heading!r}, "
                        f"otherwise {FIELDS[index]}=''")
    return chosen, said


_PACKAGE = os.path.dirname(__file__)


def warn(sentence: str) -> None:
    """Warns at the line outside of the package that led here."""
    level, frame = 2, sys._getframe(1)
    while frame.f_back is not None and os.path.dirname(frame.f_code.co_filename) == _PACKAGE:
        level, frame = level + 1, frame.f_back
    warnings.warn(sentence, UnreadColumnWarning, stacklevel=level)


def _checked(field: str, heading: str, column: Any) -> Any:
    """The column that was found by its heading; None if its first cell names a vehicle."""
    first = readable(_low.column_first(column))
    is_number = first is False
    if field == "unit" and (is_number or first is not None and _low.rodt_unit_is_vehicle(first)):
        shown = "" if is_number else f" ({first!r})"
        warn(f"the column {heading!r} names vehicles{shown}, so it is not read as the unit of the lengths")
        return None
    if first and not _low.rodt_field_accepts(FIELDS.index(field), first):
        warn(f"the column {heading!r} holds {first!r}, which cannot be read as {field}; if it is about something else, "
             f"say {field}=''")
    return column


class Opened:
    """A table of the caller, and the number of its column for each field."""

    def __init__(self, table: Any, given: Mapping[str, Any], opener: Opener = Opener(),
                 choices: dict[Any, Any] | None = None) -> None:
        """`choices` keeps what was chosen for the headings of one table for the next table that has them."""
        self.given, self.opener = given, opener
        self.names: list[Any] = []
        if table is not None:
            self.names, self._open_number = _open_table(table, opener)
        self.chosen, said = self._choose({} if choices is None else choices)
        for sentence in said:
            warn(sentence)

    def _choose(self, choices: dict[Any, Any]) -> tuple[dict[str, int], list[str]]:
        key = tuple(self.names), tuple(column if isinstance(column, str) else column is None
                                       for column in self.given.values())
        try:
            found = choices.get(key)
        except TypeError:  # a heading that cannot be hashed
            return _choose(self.names, self.given)
        if found is None:
            found = _choose(self.names, self.given)
            if len(choices) >= _CHOICES_MAX:
                choices.clear()
            choices[key] = found
        return found

    def open(self, number: int, field: str) -> Any:
        """A capsule of the table's column."""
        try:
            return self._open_number(number, field)
        except TypeError as error:
            raise TypeError(f"{error}; {field}='' leaves the column out" if field in FIELDS else str(error)) from None

    def check_needed(self, fields: tuple[Any, ...]) -> None:
        """Refuses a table without a column that every reading has."""
        for field, column in zip(FIELDS[:_low.NEEDED_FIELDS], fields):
            if column is None:
                raise TypeError(f"a column {field} is needed{_listed(self.names)}")

    def check_units(self, unit: int) -> None:
        """Refuses a heading that names another unit than bare numbers are read in; without a column of units."""
        for field in _LENGTHS:
            heading = readable(self.names[self.chosen[field]]) if field in self.chosen else ""
            for other, name in enumerate(_UNITS):
                if other != unit and _low.rodt_heading_names_unit(heading, other):
                    raise TypeError(f"the heading {heading!r} names {name}, but bare numbers are read in {_UNITS[unit]}; say "
                                    f"unit={name!r}, or rename it")

    def fields(self, unit: int) -> tuple[Any, ...]:
        """A capsule or None for each field of a reading: of the column that was given, else of the table's column. Bare
        numbers are read in the unit of that number."""
        columns: list[Any] = []
        for field, column in self.given.items():
            if field in self.chosen:
                number = self.chosen[field]
                opened = self.open(number, field)
                columns.append(opened if column else _checked(field, self.names[number], opened))
            elif column is None or isinstance(column, str):
                columns.append(None)
            else:
                columns.append(self.opener.open(column, field, field))
        if columns[FIELDS.index("unit")] is None:
            self.check_units(unit)
        return tuple(columns)


_CHOICES_MAX = 16
_LENGTHS = ("released", "applied", "rated_stroke", "marked_limit", "division")
_UNITS = tuple(each.value for each in Unit)
