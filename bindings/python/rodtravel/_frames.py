# SPDX-License-Identifier: Apache-2.0
"""Answers as a frame of the kind that was judged."""
from __future__ import annotations

from array import array
from typing import Any

from . import _rodtravel as _low
from ._answers import UNITS_PER_INCH, UNITS_PER_MM, Answers, dictionary, reason_codes, reason_words, verdict_dictionary
from ._enums import Unit, Verdict

_PER_UNIT = {Unit.IN: UNITS_PER_INCH, Unit.MM: UNITS_PER_MM, Unit.CM: 10 * UNITS_PER_MM}


def _number_names(unit: Unit) -> dict[str, str]:
    """The columns of numbers, named as in the command, and what they hold."""
    return {f"applied_stroke_{unit}": "stroke", f"limit_{unit}": "limit", f"margin_{unit}": "margin",
            "used_percent": "used"}


def numbers_of(answers: Answers, name: str, unit: Unit = Unit.IN) -> tuple[Any, Any, int]:
    """Doubles, the bits of those that are there, and how many are not."""
    cells, bits, missing = _low.answer_numbers(answers.stroke.view, answers.limit.view, name, _PER_UNIT[unit])
    return memoryview(cells).cast("d"), bits, missing


class Parts:
    """The columns of a frame, each computed once."""

    def __init__(self, answers: Answers, unit: Unit, said: tuple[bytes, bytes] | None) -> None:
        self.answers, self.said = answers, said
        self.numbers = {name: numbers_of(answers, held, unit) for name, held in _number_names(unit).items()}
        sets = {bits: place for place, bits in enumerate(dict.fromkeys(answers.reasons.view))}
        self.codes = [reason_codes(bits) for bits in sets]
        self.words = [reason_words(bits) for bits in sets]
        self.code = memoryview(array("i", map(sets.__getitem__, answers.reasons.view)))

    def sentences(self) -> list[str]:
        """The sentences of each row."""
        assert self.said is not None
        ends, texts = memoryview(self.said[0]).cast("q"), self.said[1]
        return [texts[start:end].decode() for start, end in zip(ends, ends[1:])]

    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any:
        rows = len(self.answers)
        columns: list[tuple[Any, ...]] = [("g", name, 2, rows, missing, (bits, cells), (), None)
                                          for name, (cells, bits, missing) in self.numbers.items()]
        columns += [("C", "verdict", 0, rows, 0, (None, self.answers.verdict.view), (), verdict_dictionary()),
                    ("i", "reasons", 0, rows, 0, (None, self.code), (), dictionary(self.codes)),
                    ("i", "words", 0, rows, 0, (None, self.code), (), dictionary(self.words))]
        if self.said is not None:
            columns.append(("U", "sentences", 0, rows, 0, (None, *self.said), (), None))
        return _low.arrow_stream(("+s", "", 0, rows, 0, (None,), tuple(columns), None))


def _to_pandas(parts: Parts, index: Any) -> Any:
    import numpy
    import pandas
    columns = {name: numpy.frombuffer(cells, dtype=float) for name, (cells, _, _) in parts.numbers.items()}
    columns["verdict"] = pandas.Categorical.from_codes(numpy.asarray(parts.answers.verdict).astype("int8"),
                                                       [verdict.value for verdict in Verdict])
    for name, texts in (("reasons", parts.codes), ("words", parts.words)):
        columns[name] = pandas.Categorical.from_codes(numpy.asarray(parts.code), texts)
    if parts.said is not None:
        columns["sentences"] = numpy.array(parts.sentences(), dtype=object)
    return pandas.DataFrame(columns, index=index)


def _to_lists(parts: Parts) -> dict[str, list[Any]]:
    columns: dict[str, list[Any]] = {name: [None if cell != cell else cell for cell in cells]
                                     for name, (cells, _, _) in parts.numbers.items()}
    words = [verdict.value for verdict in Verdict]
    columns["verdict"] = [words[number] for number in parts.answers.verdict]
    columns["reasons"] = [parts.codes[code] for code in parts.code]
    columns["words"] = [parts.words[code] for code in parts.code]
    if parts.said is not None:
        columns["sentences"] = parts.sentences()
    return columns


def library_of(table: Any) -> str:
    """The package that a table comes from."""
    return type(table).__module__.partition(".")[0]


def frame_like(table: Any, answers: Answers, unit: Unit, said: tuple[bytes, bytes] | None) -> Any:
    """A frame of the table's kind, with its index."""
    parts = Parts(answers, unit, said)
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
