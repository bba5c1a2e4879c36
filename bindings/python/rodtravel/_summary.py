# SPDX-License-Identifier: Apache-2.0
"""What many answers come to."""
from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING, Any, ClassVar

from . import _rodtravel as _low
from ._enums import Reason, Verdict, set_of
from ._html import table
from ._record import ReadOnly

if TYPE_CHECKING:
    from typing_extensions import Never, Self

_reasons = set_of(Reason, of_bits=False)
_PERCENTS = (50, 90, 99)


class Summary(ReadOnly):
    """Counts of answers, made by summary of Answers; of two batches they can be added. `str()` is a table of text.

    >>> answers = judge_columns(chamber=["30"] * 2, released=["2"] * 2, applied=["4", "4 1/8"], default_psi=95)
    >>> found = answers.summary() + answers.summary()
    >>> found.rows, found.verdicts[Verdict.OUT_OF_ADJUSTMENT], found.reasons[Reason.AT_LIMIT], found.least_margin
    (4, 2, 2, Fraction(-1, 8))
    >>> found.used[50], found.most
    (Fraction(100, 1), Fraction(213, 2))
    """

    __slots__ = ("rows", "verdicts", "reasons", "least_margin", "_steps")
    rows: int
    verdicts: Mapping[Verdict, int]
    reasons: Mapping[Reason, int]
    least_margin: Fraction | None
    _steps: tuple[int, ...]  # of half a percent of the limit
    __hash__: ClassVar[None]  # type: ignore[assignment]

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError("a Summary is made by summary of Answers, not by hand")

    @classmethod
    def _make(cls, rows: int, verdicts: Mapping[Verdict, int], reasons: Mapping[Reason, int],
              least_margin: Fraction | None, steps: tuple[int, ...]) -> Self:
        return cls._of_slots(rows, verdicts, reasons, least_margin, steps)

    def _values(self) -> tuple[Any, ...]:
        return tuple(getattr(self, name) for name in self.__slots__)

    def __eq__(self, other: object) -> bool:
        return self._values() == other._values() if isinstance(other, Summary) else NotImplemented

    def __reduce__(self) -> Any:
        return _unpickle, self._values()

    def __add__(self, other: Summary) -> Summary:
        if not isinstance(other, Summary):
            return NotImplemented
        margins = [each.least_margin for each in (self, other) if each.least_margin is not None]
        return self._make(self.rows + other.rows, {key: self.verdicts[key] + other.verdicts[key] for key in Verdict},
                          {key: self.reasons[key] + other.reasons[key] for key in Reason}, min(margins, default=None),
                          tuple(map(sum, zip(self._steps, other._steps))))

    @property
    def compared(self) -> int:
        """Rows with a stroke and a limit."""
        return sum(self._steps)

    @property
    def used(self) -> dict[int, Fraction | None]:
        """How much of their limits strokes use, in percent and rounded up to a half: that which 50, 90 and 99 percent of
        the rows do not exceed, by that number. None where nothing was compared, or it is more than 500."""
        return {percent: self._step(-(-self.compared * percent // 100)) for percent in _PERCENTS}

    @property
    def most(self) -> Fraction | None:
        """The largest of them; None likewise."""
        return self._step(self.compared)

    def _step(self, needed: int) -> Fraction | None:
        """The half percents that so many rows do not exceed."""
        counted = 0
        for step, number in enumerate(self._steps[:-1]):
            counted += number
            if needed and counted >= needed:
                return Fraction(step, 2)
        return None

    def _lines(self) -> list[tuple[str, str]]:
        shown = [(str(verdict), str(number)) for verdict, number in self.verdicts.items()]
        shown += [("rows", str(self.rows))]
        shown += [(str(reason), str(number)) for reason, number in self.reasons.items() if number]
        if self.compared:
            shown += [(f"{percent} % of strokes use at most", _percent(step)) for percent, step in self.used.items()]
            shown += [("the longest uses", _percent(self.most))]
        return shown

    def __str__(self) -> str:
        return "\n".join(f"{name:<36}{value:>12}" for name, value in self._lines())

    def __repr__(self) -> str:
        counts = ", ".join(f"{verdict} {number}" for verdict, number in self.verdicts.items() if number)
        return f"<Summary: {self.rows} rows{': ' if counts else ''}{counts}>"

    def _repr_html_(self) -> str:
        return table(f"{self.rows} rows", (), self._lines())


def _percent(step: Fraction | None) -> str:
    return "more than 500 %" if step is None else f"{float(step):.1f} %"


def _unpickle(*values: Any) -> Summary:
    return Summary._make(*values)


def summary_of(stroke: Any, parts: Any, limit: Any, verdicts: Mapping[Verdict, int], reasons: Any, per_inch: int) -> Summary:
    """The Summary of columns of answers; the least margin is so many parts an inch."""
    found: Counter[Reason] = Counter()
    for bits, number in _low.answer_sets(reasons)[1]:
        for reason in _reasons(bits):
            found[reason] += number
    steps, least = _low.answer_steps(stroke, parts, limit)
    return Summary._make(len(reasons), verdicts, {reason: found[reason] for reason in Reason},
                         None if least is None else Fraction(least, per_inch), tuple(memoryview(steps).cast("Q")))
