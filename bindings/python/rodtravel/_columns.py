# SPDX-License-Identifier: Apache-2.0
"""Many wheel ends at once: columns in, columns out, nothing copied on the way."""
from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from . import _rodtravel as _low
from ._answers import Answers, buffers, from_buffers
from ._chambers import Chamber, chamber_of
from ._enums import DateOrder, Drum, Unit, number_of
from ._error import called
from ._findings import recorded
from ._record import ReadOnly
from ._rules import DEFAULT_RULES, Rules, rule_set
from ._tables import FIELDS, Opened, open_column
from ._types import ArrowArray, ArrowStream, Day, Exact, Numbers, Texts


class Plan(ReadOnly):
    """Judges columns of numbers: a rule set, what all rows share, and codes for the chambers.

    Readings are int32 or int64, whole numbers of 5 nm: UNITS_PER_INCH, UNITS_PER_64TH and UNITS_PER_MM of them make a
    unit of a tape. Pressures are int32 thousandths of a psi, dates int32 days since 1970-01-01 (date32). The keywords
    hold for rows without a value of their own; their meaning is that of judge.

    Raises Error for what cannot be read, TypeError for binary floats.

    >>> from array import array
    >>> plan = Plan(psi=95)
    >>> code = plan.add("30L")
    >>> answers = plan.judge(array("i", [2 * UNITS_PER_INCH]), array("i", [5 * UNITS_PER_INCH]), bytes([code]))
    >>> str(answers[0].verdict)
    'out-of-adjustment'
    """

    __slots__ = ("rules", "_kept")
    rules: Rules
    _kept: Any

    def __init__(self, rules: Rules | str = DEFAULT_RULES, *, unit: Unit | str = "in", date: Day | None = None,
                 psi: Exact | None = None, psi_after: Exact | None = None, engine_running: bool | None = None,
                 spring_brake_applied: bool | None = None, drum: Drum | str | None = None) -> None:
        object.__setattr__(self, "rules", rule_set(rules))
        engine = (None, "off", "on").index(recorded(engine_running, "engine_running"))
        spring = (None, "off", "on").index(recorded(spring_brake_applied, "spring_brake_applied"))
        heat = 0 if drum is None else number_of(Drum, drum, "drum")
        shared = (number_of(Unit, unit, "unit"), date, psi, psi_after, engine, spring, heat)
        object.__setattr__(self, "_kept", _low.plan_start(self.rules._kept, shared))

    def __repr__(self) -> str:
        return f"Plan({self.rules.id!r})"

    def __reduce__(self) -> Any:
        raise TypeError("a Plan cannot be copied or pickled; make one in each process")

    def add(self, chamber: Chamber | str) -> int:
        """Adds a chamber, text or Chamber, and returns its code, 2 to 255; 0 is a missing chamber, 1 an unreadable one.

        Raises Error with Status.SPACE when the plan is full, RuntimeError while another thread is judging with it.
        """
        return _low.plan_add(self._kept, chamber_of(chamber)._raw())

    def judge(self, released: Numbers, applied: Numbers, chamber: Numbers | Texts, *, psi: Numbers | None = None,
              date: Numbers | None = None, out: Sequence[Any] | None = None) -> Answers:
        """Judges every row as judge would, to the last reason, and returns Answers.

        A column is anything with the buffer protocol (array, NumPy) or the Arrow interface (pyarrow, polars, DuckDB,
        pandas); `chamber` is uint8 codes of this plan, or text. `out` is writable columns for the answers, in the order
        of Answers (limit may be left out); None makes them. The interpreter's lock is released, so threads judge at the same time with one
        plan; no two may write the same columns, and chambers are added before.

        Raises TypeError for a column of another type, ValueError where lengths differ or columns overlap.
        """
        given = {"chamber": chamber, "released": released, "applied": applied, "psi": psi, "date": date}
        columns = tuple(open_column(given.get(field), field) for field in FIELDS)
        if None in columns[:3]:
            raise TypeError("released, applied and chamber are columns")
        room = buffers(self._kept, _low.column_rows(columns[0]), out)
        _low.columns_judge_numbers(self._kept, columns, room)
        return from_buffers(room)


class TextPlans:
    """Plans for columns of text, all alike. One serves a call at a time, and its caches make the next call faster."""

    def __init__(self, rules: Rules, defaults: tuple[Any, ...]) -> None:
        self.rules, self.defaults = rules, defaults
        self.idle: list[Any] = []
        self.run(lambda plan: None)  # what cannot be read is refused here

    def run(self, work: Callable[[Any], Any]) -> Any:
        """What the work gives for a plan that no other call uses meanwhile."""
        try:
            plan = self.idle.pop()
        except IndexError:
            plan = _low.text_plan_new(self.defaults, self.rules._kept)
        try:
            return work(plan)
        finally:
            self.idle.append(plan)

    def judge(self, columns: tuple[Any, ...], out: Sequence[Any] | None = None) -> Answers:
        """The answers for capsules of columns by field."""
        def work(plan: Any) -> Answers:
            room = buffers(plan, _low.column_rows(columns[0]), out)
            return from_buffers(room, _low.columns_judge_texts(plan, columns, room))
        return self.run(work)


def defaults_of(shared: Mapping[str, Any], unit: Unit | str, decimal_comma: bool, date_order: DateOrder | str,
                day: Day | None) -> tuple[Any, ...]:
    """What all rows share, as the wrapper reads it."""
    return (*(shared.get(field) for field in FIELDS), number_of(Unit, unit, "unit"), 0, bool(decimal_comma),
            number_of(DateOrder, date_order, "date_order"), day)


# By what they judge by.
_plans: dict[Any, TextPlans] = {}
_PLANS_MAX = 4


def judge_columns(table: ArrowStream | ArrowArray | Mapping[str, Any] | Any | None = None, *,
                  chamber: Texts | None = None, released: Texts | None = None, applied: Texts | None = None,
                  stroke_class: Texts | None = None, rated_stroke: Texts | None = None,
                  marked_limit: Texts | None = None, psi: Texts | None = None, psi_after: Texts | None = None,
                  division: Texts | None = None, date: Texts | None = None, unit: Texts | None = None,
                  engine: Texts | None = None, spring_brake: Texts | None = None, drum: Texts | None = None,
                  rules: Rules | str = DEFAULT_RULES, default_unit: Unit | str = "in", decimal_comma: bool = False,
                  date_order: DateOrder | str = "unknown", default_date: Day | None = None,
                  default_psi: Exact | None = None, out: Sequence[Any] | None = None) -> Answers:
    """Judges every row of columns of text as judge_row would, to the last reason, and returns Answers.

    Each column is a sequence of text and None, or text with the Arrow interface (pyarrow, polars, DuckDB, pandas),
    dictionaries included; those are read where they are, in C. `table` is a whole Arrow table, a reader of one, a query
    of DuckDB (run once), or a mapping such as a DataFrame. Its columns are found by their headings, as the command does:
    capitals, blanks, "_", "-" and camelCase make no difference, "Pressure" is psi and "Inspection date" is date. A
    column that is given by itself takes precedence; one text in place of a column is its heading, and "" is none.

    An UnreadColumnWarning names a column that probably means one of these but is not read, a `unit` that names vehicles,
    and a division, engine, spring_brake or drum whose first cell is none. `default_unit`, `decimal_comma` and
    `date_order` say how the cells are written; `default_date` and `default_psi` hold for rows that have none.

    No cell is refused: a row that cannot be read is undetermined. Raises TypeError for a column that is no text and for
    two columns of one field, ValueError where lengths differ.

    >>> answers = judge_columns({"Chamber": ["30", "30L"], "Released": ["2 1/8"] * 2, "Applied": ["4 1/4", "2-Jan"]})
    >>> answers.counts()[Verdict.OUT_OF_ADJUSTMENT], [str(reason) for reason in answers[1].reasons][-1]
    (1, 'spreadsheet-date')
    """
    given = dict(zip(FIELDS, (
        chamber, released, applied, stroke_class, rated_stroke, marked_limit, psi, psi_after, division, date, unit, engine,
        spring_brake, drum)))
    opened = Opened(table, given)
    columns = opened.fields(number_of(Unit, default_unit, "default_unit"))
    opened.check_needed(columns)
    rules = rule_set(rules)
    defaults = defaults_of({"psi": default_psi}, default_unit, decimal_comma, date_order, default_date)
    # The type is part of the key because 95.0 equals 95, and binary floats are refused.
    key = (rules, defaults, type(default_psi))
    plans = _plans.get(key)
    if plans is None:
        with called({"psi": "default_psi"}):
            plans = TextPlans(rules, defaults)
        if len(_plans) >= _PLANS_MAX:
            _plans.clear()
        _plans[key] = plans
    return plans.judge(columns, out)
