# SPDX-License-Identifier: Apache-2.0
"""The functions of the extension of SQLite on an open connection, where loading extensions is forbidden."""
from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from typing import Any, Optional, Protocol, Union

from . import _rodtravel as _low
from ._enums import PressureUnit, Unit
from ._error import Error
from ._findings import Finding, judge_row
from ._lengths import read_date, write_length
from ._rules import DEFAULT_RULES
from ._vehicles import Count, Tally

Value = Union[str, int, float, bytes, None]
Text = Optional[str]

# The order of arguments in every extension of a database.
_ARGUMENTS = ("chamber", "released", "applied", "psi", "date", "stroke_class", "rules", "rated_stroke", "marked_limit",
              "psi_after", "division", "unit", "engine", "spring_brake", "drum")
_NEEDED = 3

# A longer cell is no reading, and no reader takes this in its place.
_BYTES_MOST = 1000
_UNREADABLE = "\x01"

# Findings of rows that were judged last: a query often asks for several parts of one.
_FINDINGS_KEPT = 1024


class SQLiteConnection(Protocol):
    """What is used of a connection of the module sqlite3, or of one like it."""

    def create_function(self, name: str, narg: int, func: Callable[..., Any] | None, /, *,
                        deterministic: bool = False) -> None: ...

    def create_aggregate(self, name: str, n_arg: int, aggregate_class: Callable[[], Any], /) -> None: ...

    def create_collation(self, name: str, callback: Callable[[str, str], int] | None, /) -> None: ...


def _text(value: Value) -> Text:
    """A value of SQL as the text of a cell."""
    if value is None or value.__class__ is str and len(value) < _BYTES_MOST // 4 and "\0" not in value:
        return value
    if isinstance(value, float):
        raise TypeError("a REAL is only nearly what was read; give it as TEXT")
    if isinstance(value, int):
        return str(value)
    if isinstance(value, bytes) or "\0" in value or len(value.encode("utf-8", "surrogatepass")) > _BYTES_MOST:
        return _UNREADABLE
    return value


def _exact(number: Fraction | None) -> Text:
    return None if number is None else str(number)


def _read_exact(text: str) -> Fraction | None:
    """What _exact writes."""
    num, slash, den = text[text[:1] == "-":].partition("/")
    if not all(part.isascii() and part.isdigit() and len(part) <= 18 for part in (num, den if slash else "1")):
        return None
    if slash and int(den) == 0:
        return None
    return Fraction(int(num), int(den or 1)) * (-1 if text[:1] == "-" else 1)


def _compare_exact(a: str, b: str) -> int:
    """Exact numbers by their value, and after them every other text by its bytes."""
    first, second = _read_exact(a), _read_exact(b)
    if first is not None and second is not None:
        return (first > second) - (first < second)
    if first is not None or second is not None:
        return -1 if first is not None else 1
    left, right = a.encode("utf-8", "surrogatepass"), b.encode("utf-8", "surrogatepass")
    return (left > right) - (left < right)


@lru_cache(maxsize=_FINDINGS_KEPT)
def _judged(*texts: Text) -> Finding:
    cells = dict(zip(_ARGUMENTS, texts))
    rules = cells.pop("rules", None)
    return judge_row(**cells, rules=DEFAULT_RULES if rules is None else rules)[0]  # type: ignore[arg-type]


_PARTS: dict[str, Callable[[Finding], Text]] = {
    "rodt_verdict": lambda finding: str(finding.verdict),
    "rodt_stroke": lambda finding: _exact(finding.applied_stroke),
    "rodt_limit": lambda finding: _exact(finding.limit),
    "rodt_margin": lambda finding: _exact(finding.margin),
    "rodt_reasons": lambda finding: " ".join(map(str, finding.reasons)) or None,
    "rodt_defect": lambda finding: str(finding.defect)}

_COUNTS: dict[str, Callable[[Count], Text]] = {
    "rodt_outcome": lambda count: str(count.outcome),
    "rodt_defective": lambda count: _exact(count.defective),
    "rodt_share": lambda count: _exact(count.share),
    "rodt_count": str}


def _function(part: Callable[[Finding], Text]) -> Callable[..., Text]:
    return lambda *values: part(_judged(*map(_text, values)))


def _aggregate(part: Callable[[Count], Text]) -> type[Any]:
    class Brakes:
        def __init__(self) -> None:
            self.tally = Tally()

        def step(self, *values: Value) -> None:
            self.tally += _judged(*map(_text, values))

        def finalize(self) -> Text:
            return part(self.tally.judge())
    return Brakes


def _or_null(read: Callable[..., Text]) -> Callable[..., Text]:
    """NULL for a NULL, and where a text is none or may be two."""
    def call(*values: Value) -> Text:
        texts = [_text(value) for value in values]
        if None in texts:
            return None
        try:
            return read(*texts)
        except Error:
            return None
    return call


def _length(text: str, unit: str = Unit.IN.value) -> Text:
    """A fraction whose blank may be lost has no second value here, so the strict reader."""
    finding, error = judge_row(released="2", unit=unit)  # which knows how a unit is written
    if not unit.strip() or error is not None and error.field == "unit":
        return None
    style = (finding.unit.number, PressureUnit.PSI.number, False)
    return _exact(_low.rodt_length_parse_strict_n(text, style)[0])


def _length_format(text: str) -> Text:
    number = _read_exact(text)
    return None if number is None else write_length(number)


def register_sqlite(connection: SQLiteConnection) -> None:
    """Gives an open connection of `sqlite3` the functions of the extension, under the same names and with the same
    answers: rodt_verdict, rodt_stroke, rodt_limit, rodt_margin, rodt_reasons, rodt_defect of a wheel end; the
    aggregates rodt_outcome, rodt_defective, rodt_share, rodt_count; rodt_length, rodt_date, rodt_length_format,
    rodt_tables_edition; the collation rodt_exact. They are deterministic, for generated columns and indexes.

    What cannot be read is data: the verdict is undetermined. A REAL and a rule set that does not exist are errors;
    sqlite3 says of them only that a function raised an exception. It says NULL for a vehicle without any row. The
    tables rodt_limits and rodt_finding are of the extension alone.

    >>> import sqlite3
    >>> base = sqlite3.connect(":memory:")
    >>> register_sqlite(base)
    >>> base.execute("SELECT rodt_verdict('30L', '2 3/4', '5 5/16', 95), rodt_reasons('30', 2, '4 1/4', 95)").fetchone()
    ('out-of-adjustment', 'over-limit assumed-standard assumed-clamp')
    """
    if not hasattr(connection, "create_function"):
        raise TypeError(f"a connection of sqlite3 is needed, not {type(connection).__name__}")
    for count in range(_NEEDED, len(_ARGUMENTS) + 1):
        for name, part in _PARTS.items():
            connection.create_function(name, count, _function(part), deterministic=True)
        for name, sum_up in _COUNTS.items():
            connection.create_aggregate(name, count, _aggregate(sum_up))
    for name, number, read in (("rodt_length", 1, _length), ("rodt_length", 2, _length),
                               ("rodt_length_format", 1, _length_format),
                               ("rodt_date", 1, lambda text: read_date(text).isoformat())):
        connection.create_function(name, number, _or_null(read), deterministic=True)
    connection.create_function("rodt_tables_edition", 0, _low.rodt_tables_edition, deterministic=True)
    connection.create_collation("rodt_exact", _compare_exact)
