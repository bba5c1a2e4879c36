# SPDX-License-Identifier: Apache-2.0
"""A judge of tables: made once, called for one table, frame or batch after the other."""
from __future__ import annotations

import contextlib
import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Union

from . import _rodtravel as _low
from ._answers import Answers, Column
from ._catalogue import Catalogue, catalogue
from ._cells import Writer
from ._columns import TextPlans, defaults_of
from ._enums import DateOrder, Unit, from_number, number_of
from ._error import Error, called
from ._frames import Parts, frame_like, frame_parts
from ._inspections import Inspections, inspections_of, names_of, shares_of
from ._record import ReadOnly
from ._rules import DEFAULT_RULES, Rules, load_rules, rule_set
from ._tables import FIELDS, Batch, Opened, refuse_path
from ._types import ArrowArray, ArrowStream, Day, Exact, Numbers, Texts

Table = Union[ArrowStream, ArrowArray, Mapping[str, Any], Any]
Cells = Union[Texts, Numbers, Sequence[Any], str]


def _limits_of(rules: Rules, limits: Rules | str | os.PathLike[str] | None) -> Rules:
    """The rules that judge: the law, or a carrier's own limits on top of it."""
    if limits is None or isinstance(limits, Rules):
        return limits or rules
    if isinstance(limits, str):
        with _explained_path(limits):
            return load_rules(limits, law=rules)
    if not isinstance(limits, os.PathLike):
        raise TypeError(f"limits are the text of a table, its path as a pathlib.Path, or Rules, not {type(limits).__name__}")
    path = Path(limits)
    return load_rules(path.read_text(encoding="utf-8-sig"), path.stem, law=rules)


@contextlib.contextmanager
def _explained_path(limits: str) -> Iterator[None]:
    """Says what a path has to be: one line is no table."""
    try:
        yield
    except Error as error:
        if "\n" in limits.strip():
            raise
        raise Error(error.status, f"{error.text}; limits that are text are the table itself; its path is a pathlib.Path",
                    error.column, error.line, "limits", error.parts) from None


def _headings_given(columns: Mapping[str, str] | None) -> dict[str, str]:
    """The headings that were named beforehand."""
    if columns is not None and not isinstance(columns, Mapping):
        raise TypeError("columns is a mapping of fields to headings, such as {'released': 'Rest'}")
    for field, heading in (columns or {}).items():
        if not isinstance(heading, str):
            raise TypeError(f"columns: the heading of {field} is text, not {type(heading).__name__}")
    return dict(columns or {})


class Judge(ReadOnly):
    """Judges tables by one rule set. What can be worked out beforehand is, so a call costs little; a Judge can be
    pickled, and any number of threads may use one.

    `limits` are a carrier's own on top of `rules`: the text of a table, the path of one, or a Rules. `unit`,
    `decimal_comma` and `date_order` say how cells are written. `date` is the day of rows that have none, `psi` their
    pressure. `columns` names the heading of a field that has another one than the library knows, "" = do not read it.

    A column is text, or whole numbers, Fraction, Decimal and days, which are exact. Binary floats are refused unless
    `division` says to which graduation they were read, 1/16 or "0.1 mm" (of pressures: `psi_division`): then a float is
    the nearest multiple of it, and is unreadable, with a warning, if it is not within a thousandth of the division of one.

    Raises Error for what cannot be read.

    >>> judge_yard = Judge("us-fmcsr", psi=95, division="1/16")
    >>> answers = judge_yard({"Chamber": [30, 30], "Released": [2.125, 2.0], "Applied": [4.125, 4.0625]})
    >>> [str(answer.verdict) for answer in answers]
    ['in-adjustment', 'out-of-adjustment']
    """

    __slots__ = ("rules", "unit", "_words", "_writer", "_plans", "_choices", "_headings")
    rules: Rules
    unit: Unit
    _words: dict[str, Any]
    _writer: Writer
    _plans: TextPlans
    _choices: dict[Any, Any]
    _headings: dict[str, Any]

    def __init__(self, rules: Rules | str = DEFAULT_RULES, *, limits: Rules | str | os.PathLike[str] | None = None,
                 unit: Unit | str = "in", date: Day | None = None, psi: Exact | None = None,
                 division: Exact | None = None, psi_division: Exact | None = None, decimal_comma: bool = False,
                 date_order: DateOrder | str = "unknown", columns: Mapping[str, str] | None = None) -> None:
        put = object.__setattr__
        put(self, "rules", _limits_of(rule_set(rules), limits))
        put(self, "unit", from_number(Unit)(number_of(Unit, unit, "unit")))
        put(self, "_words", {"rules": self.rules, "unit": self.unit.value, "date": date, "psi": psi, "division": division,
                             "psi_division": psi_division, "decimal_comma": decimal_comma, "date_order": date_order,
                             "columns": _headings_given(columns)})
        with called({"default_date": "date"}):
            put(self, "_plans", TextPlans(self.rules, defaults_of({"psi": psi, "division": division}, unit, decimal_comma,
                                                                  date_order, date)))
        put(self, "_writer", Writer(self.unit, bool(decimal_comma), division, psi_division))
        put(self, "_choices", {})
        put(self, "_headings", self._given(self._words["columns"]))

    def __repr__(self) -> str:
        words = "".join(f", {name}={value!r}" for name, value in self._words.items() if value and name != "rules")
        return f"Judge({self.rules.id!r}{words})"

    def __eq__(self, other: object) -> bool:
        return self._words == other._words if isinstance(other, Judge) else NotImplemented

    def __hash__(self) -> int:
        return hash((self.rules, self.unit))

    def __reduce__(self) -> Any:
        return _unpickle, (self._words,)

    @staticmethod
    def _given(columns: Mapping[str, Any], base: Mapping[str, Any] | None = None) -> dict[str, Any]:
        for field in columns:
            if field not in FIELDS:
                raise TypeError(f"there is no field {field!r}; they are {', '.join(FIELDS)}")
        return {field: columns.get(field, None if base is None else base[field]) for field in FIELDS}

    def _open(self, table: Any, stroke: Any, columns: Mapping[str, Any]) -> tuple[Opened, tuple[Any, ...]]:
        """The table, and capsules of its columns by field."""
        given = self._given(columns, self._headings)
        if stroke is not None:
            if given["released"] or given["applied"]:
                raise TypeError("a stroke stands in place of released and applied")
            given.update(released="", applied=stroke)
        opened = Opened(_collected(table, given), given, self._writer, self._choices)
        fields = opened.fields(self.unit.number)
        if stroke is not None and fields[2] is not None:  # a rod that was at 0
            zeros = _low.column_from_texts(("0",) * _low.column_rows(fields[2]), "released")
            fields = (fields[0], zeros, *fields[2:])
        opened.check_needed(fields)
        return opened, fields

    def __call__(self, table: Table | None = None, *, stroke: Cells | None = None, out: Sequence[Any] | None = None,
                 **columns: Cells) -> Answers:
        """Judges every row as judge_row would, to the last reason, and returns Answers.

        `table` is a frame of pandas or polars (also lazy), a table or reader of pyarrow, a query of DuckDB, any Arrow
        table, or a mapping; its columns are found by their headings, as judge_columns does. A keyword gives a field's
        column itself, or its heading. A file that has strokes only gives `stroke`, a column or its heading, in place of
        released and applied.

        >>> Judge(psi=95)({"chamber": ["30"], "Travel": ["2 1/8"]}, stroke="Travel")[0].margin
        Fraction(-1, 8)
        """
        return self._plans.judge(self._open(table, stroke, columns)[1], out)

    def frame(self, table: Table, *, stroke: Cells | None = None, sentences: bool | str | Catalogue = False,
              **columns: Cells) -> Any:
        """The answers as a frame of the kind of the table, row by row and with its index: pandas, polars (lazy for a
        lazy one), pyarrow; a dict of lists for a mapping, an Arrow table for anything else.

        Its columns are those of `rodtravel batch --decimals`: applied_stroke_in, limit_in, margin_in (of `unit`: _mm,
        _cm), used_percent, verdict, reasons (codes); then `words`, which says the reasons in words, and `sentences`, if
        asked for, which says them with the figures of the row, in the language of a Catalogue, or "fr", if given. The
        numbers are for tables and drawings; their signs, and whether a share is above 100, are exact.

        >>> frame = Judge(psi=95).frame({"chamber": ["30 standard"], "released": ["2"], "applied": ["4 1/8"]},
        ...                             sentences=True)
        >>> frame["margin_in"], frame["used_percent"], frame["reasons"]
        ([-0.125], [106.25], ['over-limit assumed-clamp'])
        >>> frame["words"][0].split("; ")[0], frame["sentences"][0].split("; ")[0]
        ("the stroke is over the law's limit", 'stroke is over the limit by 1/8')
        """
        if _is_lazy(table):
            return _lazy_frame(self, table, {"stroke": stroke, "sentences": sentences, **columns})
        opened, fields = self._open(table, stroke, columns)
        made = self._plans.run(lambda plan: frame_parts(plan, fields, self.unit))
        said = None
        if sentences is not False:
            kept = _catalogue_of(sentences)
            said = self._plans.run(lambda plan: _low.columns_say(plan, fields, kept))
        return frame_like(table, Parts(made, self.unit, said))

    def vehicles(self, table: Table, by: str | Sequence[str], *, pool: bool = False, stroke: Cells | None = None,
                 position: str | None = None, **columns: Cells) -> Inspections:
        """Counts the brakes of each vehicle on each day by the roadside criterion, as `rodtravel batch --by` does: an
        Inspections, in the order of the first row of each.

        `by` is the heading that names the vehicle, or several. Rows of one vehicle and of several days are several
        inspections unless `pool` takes them together; without a column of dates there is one. `position` is the heading
        of the wheel end, if it has another one.

        >>> rows = {"unit_no": ["T-1"] * 2, "chamber": ["30"] * 2, "released": ["2"] * 2, "applied": ["4", "4 1/4"]}
        >>> found = Judge(psi=95).vehicles(rows, by="unit_no")
        >>> found[0].name, found[0].brakes, found[0].defective, str(found[0].outcome)
        (('T-1',), 2, Fraction(1, 1), 'out-of-service')
        """
        opened, fields = self._open(table, stroke, columns)
        return inspections_of(self._plans, opened, fields, names_of(by), pool, position)

    def shares(self, table: Table, by: str | Sequence[str]) -> Column:
        """A number for each row, by which rows are spread over machines so that no vehicle is split: a Column of int32,
        0 to 2**31 - 1. It is the same for all spellings of one vehicle that `vehicles` takes for one, in every run; two
        vehicles may share one. All rows with one number must come to the same call of `vehicles`.

        >>> rows = {"unit_no": ["T-1", "t - 1 ", "T-2"]}
        >>> one, other, third = Judge().shares(rows, by="unit_no")
        >>> one == other, one == third
        (True, False)
        """
        names = names_of(by)
        opened = Opened(_collected(table, dict(enumerate(names))), self._given(dict.fromkeys(FIELDS, "")), self._writer,
                        self._choices)
        return Column._make("share", memoryview(shares_of(opened, names)).cast("i"))

    def batches(self, source: ArrowStream | Iterable[Table], **words: Any) -> Iterator[Answers]:
        """The answers of a stream, batch by batch; no more than one batch is held.

        `source` is a reader of pyarrow, a query of DuckDB, anything else with the Arrow stream interface, or an iterable
        of tables. The keywords are those of a call.

        >>> parts = [{"chamber": ["30"], "released": ["2"], "applied": ["4"]}] * 3
        >>> sum(len(answers) for answers in Judge().batches(parts))
        3
        """
        return (self(batch, **words) for batch in batches_of(source))


def _catalogue_of(sentences: bool | str | Catalogue) -> Any:
    """The catalogue in which sentences are said; None for English."""
    if isinstance(sentences, str):
        sentences = catalogue(sentences)
    if not isinstance(sentences, (bool, Catalogue)):
        raise TypeError(f"sentences are wanted or not, or in the language of a Catalogue, not {type(sentences).__name__}")
    return sentences._kept if isinstance(sentences, Catalogue) else None


def _unpickle(words: dict[str, Any]) -> Judge:
    return Judge(**words)


# --- Sources

def batches_of(source: Any) -> Iterator[Any]:
    """The batches of a stream, or the tables of an iterable."""
    if _is_lazy(source):
        if hasattr(source, "collect_batches"):
            yield from source.collect_batches()
        else:
            yield source
        return
    if isinstance(source, Mapping) or not hasattr(source, "__arrow_c_stream__"):
        refuse_path(source)
        if not isinstance(source, Iterable):
            raise TypeError(f"batches come from a reader, a query or an iterable of tables, not {type(source).__name__}")
        yield from ([source] if isinstance(source, Mapping) else source)
        return
    try:
        stream = source.__arrow_c_stream__()
    except ImportError:  # a frame of pandas without pyarrow
        yield source
        return
    while (batch := _low.table_next(stream)) is not None:
        yield Batch(batch)


def _is_lazy(table: Any) -> bool:
    return hasattr(table, "collect") and hasattr(table, "collect_schema")


def _collected(table: Any, given: Mapping[Any, Any]) -> Any:
    """A lazy frame with no more columns than may be read."""
    if not _is_lazy(table):
        return table
    names = table.collect_schema().names()
    headings = [each for each in given.values() if isinstance(each, str)]
    wanted = [name for name in names if _low.rodt_field_of_heading(name) < _low.ALL_FIELDS or
              any(_low.rodt_heading_equal(name, heading) for heading in headings)]
    return table.select(wanted).collect()


def _lazy_frame(judge: Judge, table: Any, words: dict[str, Any]) -> Any:
    """A lazy frame of the answers, judged when it is collected."""
    empty = judge.frame(table.limit(0).collect(), **words)
    return table.map_batches(lambda frame: judge.frame(frame, **words), schema=dict(empty.schema))
