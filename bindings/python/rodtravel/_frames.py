# SPDX-License-Identifier: Apache-2.0
"""Answers as a frame of the kind that was judged."""
from __future__ import annotations

import functools
from collections.abc import Iterable
from typing import Any

from . import _rodtravel as _low
from ._answers import UNITS_PER_INCH, UNITS_PER_MM, Answers, dictionary, reason_codes, reason_words, verdict_dictionary
from ._enums import Unit, Verdict

_PER_UNIT = {Unit.IN: UNITS_PER_INCH, Unit.MM: UNITS_PER_MM, Unit.CM: 10 * UNITS_PER_MM}


@functools.lru_cache(None)
def _number_names(unit: Unit) -> dict[str, str]:
    """The columns of numbers, named as in the command, and what they hold."""
    return {f"applied_stroke_{unit}": "stroke", f"limit_{unit}": "limit", f"margin_{unit}": "margin",
            "used_percent": "used"}


def numbers_of(answers: Answers, name: str, unit: Unit = Unit.IN) -> Any:
    """Doubles; what is not there is no number."""
    return memoryview(_low.answer_numbers(answers.stroke.view, answers._parts, answers.limit.view, name,
                                           _PER_UNIT[unit])).cast("d")


class Parts:
    """The columns of a frame, each computed once."""

    def __init__(self, made: tuple[Any, ...], unit: Unit, said: tuple[bytes, bytes] | None) -> None:
        """`made` is what columns_frame makes."""
        (self.verdict, code, *numbers), missing, sets = made
        self.rows, self.said = len(self.verdict), said
        cells = (each.cast("d") for each in numbers[::2])
        self.numbers = dict(zip(_number_names(unit), zip(cells, numbers[1::2], missing)))
        self.codes = [reason_codes(bits) for bits, _ in sets]
        self.words = [reason_words(bits) for bits, _ in sets]
        self.code = code.cast("i")

    def sentences(self) -> list[str]:
        """The sentences of each row."""
        assert self.said is not None
        ends, texts = memoryview(self.said[0]).cast("q"), self.said[1]
        return [texts[start:end].decode() for start, end in zip(ends, ends[1:])]

    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any:
        columns: list[tuple[Any, ...]] = [("g", name, 2, self.rows, missing, (bits, cells), (), None)
                                          for name, (cells, bits, missing) in self.numbers.items()]
        columns += [("C", "verdict", 0, self.rows, 0, (None, self.verdict), (), verdict_dictionary()),
                    ("i", "reasons", 0, self.rows, 0, (None, self.code), (), dictionary(self.codes)),
                    ("i", "words", 0, self.rows, 0, (None, self.code), (), dictionary(self.words))]
        if self.said is not None:
            columns.append(("U", "sentences", 0, self.rows, 0, (None, *self.said), (), None))
        return _low.arrow_stream(("+s", "", 0, self.rows, 0, (None,), tuple(columns), None))


def frame_parts(plan: Any, fields: tuple[Any, ...], unit: Unit) -> tuple[Any, ...]:
    """What Parts are made of."""
    made: tuple[Any, ...] = _low.columns_frame(plan, fields, _PER_UNIT[unit])
    return made


@functools.lru_cache(64)
def _categories(texts: tuple[str, ...]) -> Any:
    """A type of pandas, which makes one slowly."""
    import pandas
    return pandas.CategoricalDtype(texts)


def _category(code: Any, texts: Iterable[str]) -> Any:
    """Texts by their numbers, for pandas."""
    import pandas
    return pandas.Categorical.from_codes(code, dtype=_categories(tuple(texts)))


def verdict_category(numbers: Any) -> Any:
    """The verdicts of a buffer of their numbers, for pandas."""
    import numpy
    return _category(numpy.frombuffer(numbers, dtype="int8"), (verdict.value for verdict in Verdict))


def _to_pandas(parts: Parts, index: Any) -> Any:
    """Each array is a column as it is: `copy` would make one block of those of numbers."""
    import numpy
    import pandas
    columns = {name: numpy.frombuffer(cells, dtype=float) for name, (cells, _, _) in parts.numbers.items()}
    columns["verdict"] = verdict_category(parts.verdict)
    code = numpy.asarray(parts.code)
    if len(parts.codes) <= _CODES_OF_A_BYTE:
        code = code.astype("int8")  # as pandas would, twice
    for name, texts in (("reasons", parts.codes), ("words", parts.words)):
        columns[name] = _category(code, texts)
    if parts.said is not None:
        columns["sentences"] = numpy.array(parts.sentences(), dtype=object)
    return pandas.DataFrame(columns, index=index, copy=False)


_CODES_OF_A_BYTE = 127


def _to_lists(parts: Parts) -> dict[str, list[Any]]:
    columns: dict[str, list[Any]] = {name: _low.list_of_numbers(cells) for name, (cells, _, _) in parts.numbers.items()}
    columns["verdict"] = _low.list_of_codes(parts.verdict, [verdict.value for verdict in Verdict])
    columns["reasons"] = _low.list_of_codes(parts.code, parts.codes)
    columns["words"] = _low.list_of_codes(parts.code, parts.words)
    if parts.said is not None:
        columns["sentences"] = parts.sentences()
    return columns


def library_of(table: Any) -> str:
    """The package that a table comes from."""
    return type(table).__module__.partition(".")[0]


def frame_like(table: Any, parts: Parts) -> Any:
    """A frame of the table's kind, with its index."""
    kind = library_of(table)
    if kind == "pandas":
        return _to_pandas(parts, table.index)
    if kind == "polars":
        import polars
        return polars.DataFrame(parts)
    if kind in ("pyarrow", "duckdb", "_duckdb"):
        import pyarrow
        return pyarrow.table(parts)
    return parts if hasattr(table, "__arrow_c_stream__") else _to_lists(parts)
