# SPDX-License-Identifier: Apache-2.0
"""The one family of errors."""
from __future__ import annotations

import contextlib
import enum
from collections.abc import Iterator


class Status(enum.IntEnum):
    """What kind of fault an `Error` is. The numbers are those of the C library, and stable.

    >>> Status.DATE_CELL.value
    14
    """

    ARGUMENT = 1
    SPACE = 2
    EMPTY = 10
    SYNTAX = 11
    AMBIGUOUS = 12
    UNIT = 13
    DATE_CELL = 14
    NEGATIVE = 15
    IMPLAUSIBLE = 16
    RANGE = 17
    UNKNOWN_RULES = 20
    UNKNOWN_CHAMBER = 21
    TABLE = 30
    LAXER = 31
    MEMORY = 40
    INTERNAL = 50


@contextlib.contextmanager
def explained(sentence: str, field: str) -> Iterator[None]:
    """Says what is accepted where the library says no more than that an argument is impossible."""
    try:
        yield
    except Error as error:
        if error.status is not Status.ARGUMENT or error.field is not None:
            raise
        raise Error(Status.ARGUMENT, sentence, field=field) from None


class Error(ValueError):
    """An input was refused. `str()` is a sentence for a person.

    `status` says what kind of fault it is; `text` is the bare sentence; `column` counts characters from 1 and is None
    where the whole text is meant; `line` is that of a table, or None; `field` is which input, "released", or None
    where there is one only.

    A binary float is no such error but a TypeError: no text was read wrongly, the program has to be changed.

    >>> try:
    ...     judge("30", "2 1/8", "2-Jan")
    ... except Error as error:
    ...     print(error.status.name, error.field, error.column, error.text, sep="; ")
    DATE_CELL; applied; 1; this is a date; a spreadsheet makes dates of fractions
    """

    def __init__(self, status: int, text: str, column: int | None = 0, line: int | None = 0,
                 field: str | None = "") -> None:
        super().__init__(int(status), text, column or 0, line or 0, field or "")
        self.status: Status = Status(status)
        self.text: str = text
        self.column: int | None = column or None
        self.line: int | None = line or None
        self.field: str | None = field or None

    def __repr__(self) -> str:
        return f"<Error {self.status.name}: {self}>"

    def __str__(self) -> str:
        places = [self.field, self.line and f"line {self.line}", self.column and f"column {self.column}"]
        place = ", ".join(part for part in places if part)
        return f"{place}: {self.text}" if place else self.text
