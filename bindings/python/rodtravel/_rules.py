# SPDX-License-Identifier: Apache-2.0
"""Rule sets: one authority's limits, dated, each row with its source."""
from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from . import _rodtravel as _low
from ._chambers import Chamber, chamber_of
from ._enums import (AirKind, Basis, Check, Comparison, Evidence, Family, Measure, Span, StrokeClass, VehicleClass,
                     from_number)
from ._error import Error, Status
from ._html import table
from ._record import Field, ReadOnly, Record, millimetres
from ._source import Source
from ._types import Day

if TYPE_CHECKING:
    from typing_extensions import Never, Self

DEFAULT_RULES = "us-fmcsr"
_NAME_BYTES_MAX = 39  # bytes of the id of a Rules


class Limit(Record, of="rodt_limit"):
    """One row of a table of adjustment limits.

    >>> row = rule_set("us-fmcsr").limits[0]
    >>> row.published, row.limit, row.printed_mm, str(row.evidence)
    ('1 1/4', Fraction(5, 4), Fraction(159, 5), 'checked')
    """

    __slots__ = ()
    family: Field[Family] = Field("A Family.")
    stroke_class: Field[StrokeClass] = Field('A StrokeClass; "any" = the family has one limit for every class.')
    size: Field[str] = Field("Type number or letter, text.")
    rated_stroke: Field[Fraction | None] = Field(
        "Inches; the row holds only for this marked rated stroke; None = for any.")
    rated_stroke_mm: Field[Fraction | None] = Field("The printed millimetres of that.", millimetres)
    limit: Field[Fraction] = Field("The adjustment limit, inches.")
    published: Field[str] = Field("The figure as printed, text.")
    printed_mm: Field[Fraction | None] = Field(
        "The millimetres printed beside it; None = none printed.", millimetres)
    valid_from: Field[date | None] = Field("First day; None = the day of effect was not found.", of="from")
    valid_until: Field[date | None] = Field(
        "Last day; None = still in force in the text that was read.", of="until")
    source: Field[Source] = Field("The Source.")
    evidence: Field[Evidence] = Field("How the figure was checked, an Evidence.")


class AirLimit(Record, of="rodt_air_limit"):
    """One row of a table of air checks; it states the acceptable condition.

    >>> row = [row for row in rule_set("us-cdl").air_limits if row.check == "loss-released"][0]
    >>> row.published, row.edge
    ('less than 2 psi in one minute', 'defective at 2 psi per minute or more')
    """

    __slots__ = ()
    check: Field[Check] = Field("A Check.")
    kind: Field[AirKind] = Field("How the rule set ranks it, an AirKind.")
    vehicle: Field[VehicleClass] = Field("A VehicleClass.")
    towed_units: Field[int] = Field("For just this many towed units; -1 = any number.")
    towed_or_more: Field[bool] = Field("For that many and more.")
    comparison: Field[Comparison] = Field("A Comparison.")
    measure: Field[Measure] = Field("What the figures are in, a Measure.")
    value: Field[Fraction | None] = Field("The bound; the lower one of two; None for yes or no.")
    upper: Field[Fraction | None] = Field("The upper bound of two; None otherwise.")
    per_towed_unit: Field[Fraction | None] = Field("Added for each towed unit after the first; None = nothing.")
    span: Field[Span] = Field("Build-up: what is timed, a Span.")
    start: Field[Fraction | None] = Field("Pressure in psi at which that begins; or None.")
    stop: Field[Fraction | None] = Field("Pressure in psi at which it ends; or None.")
    start_kpa: Field[Fraction | None] = Field("The kPa printed beside `start`, in psi; None = none printed.")
    stop_kpa: Field[Fraction | None] = Field("The kPa printed beside `stop`, in psi; None = none printed.")
    applications: Field[int] = Field("Reserve: full applications between the readings; 0 otherwise.")
    by_volume: Field[bool] = Field("Build-up: value times actual by required reservoir volume (49 CFR 571.121 S5.1.1).")
    half_cut_out: Field[bool] = Field("Warning: or half of the governor's cut-out, whichever is less; alone without a value.")
    below_cut_out: Field[bool] = Field("Cut-in: the measured value is how far it is below the governor's cut-out.")
    built_from: Field[date | None] = Field("For vehicles built from this day on; None = any.")
    built_until: Field[date | None] = Field("For vehicles built until this day; None = any.")
    published: Field[str] = Field("The figure and its edge as worded.")
    setup: Field[str] = Field("How the check is set up.")
    source: Field[Source] = Field("The Source.")
    evidence: Field[Evidence] = Field("How the figure was checked, an Evidence.")
    edge: Field[str] = Field("What would be defective, a sentence.")


class LimitAnswer(Record, of="rodt_limit_answer"):
    """What the limit is for a chamber on a day, and what it is based on.

    >>> answer = rule_set("us-fmcsr").find_limit("clamp 36", day="2021-10-13")
    >>> answer.limit, str(answer.law_basis), answer.assumed_standard
    (Fraction(9, 4), 'table', True)
    """

    __slots__ = ()
    law_basis: Field[Basis] = Field("What the law's limit is based on, a Basis.")
    limit: Field[Fraction | None] = Field(
        "The limit that judges, inches: the stricter of the law's and the carrier's own; None = none.")
    source: Field[Source | None] = Field("Source of `limit`; or None.")
    evidence: Field[Evidence] = Field("How `limit` was checked, an Evidence.")
    law_limit: Field[Fraction | None] = Field("The law's limit, inches; or None.")
    law_source: Field[Source | None] = Field("Source of `law_limit`; or None.")
    law_evidence: Field[Evidence] = Field("How `law_limit` was checked, an Evidence.")
    law_row: Field[Limit | None] = Field("The law's row, a Limit; or None.")
    own_row: Field[Limit | None] = Field("The carrier's row, a Limit; or None.")
    assumed_clamp: Field[bool] = Field("The family was not known; a bare type number is taken as clamp.")
    assumed_standard: Field[bool] = Field("The stroke class was not known; standard is taken.")
    conflicting_marks: Field[bool] = Field("The marks contradict each other; standard is taken.")


class Rules(ReadOnly):
    """The law of one authority, or a carrier's own limits on top of a law. Made by rule_set and load_rules.

    Read-only and shared: any number of threads may use one. Two are equal if they judge alike.

    >>> rules = rule_set("us-fmcsr")
    >>> rules.id, rules.at_limit_passes, rules.pressure_window
    ('us-fmcsr', True, (Fraction(90, 1), Fraction(100, 1)))
    """

    __slots__ = ("_kept", "_made_from", "_rows", "_air")
    _kept: Any
    _made_from: tuple[str, ...]
    _rows: tuple[Limit, ...] | None
    _air: tuple[AirLimit, ...] | None

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError("a Rules is made by rule_set and load_rules, not by hand")

    @classmethod
    def _make(cls, kept: Any, made_from: tuple[str, ...]) -> Self:
        return cls._of_slots(kept, made_from, None, None)

    def __repr__(self) -> str:
        return f"Rules({self.id!r})"

    def __eq__(self, other: object) -> bool:
        return self._made_from == other._made_from if isinstance(other, Rules) else NotImplemented

    def __hash__(self) -> int:
        return hash(self._made_from)

    def __reduce__(self) -> Any:
        return (load_rules, self._made_from) if len(self._made_from) > 1 else (rule_set, self._made_from)

    def __copy__(self) -> Self:
        return self

    def __deepcopy__(self, _memo: Any) -> Self:
        return self

    def _repr_html_(self) -> str:
        head = ("family", "size", "class", "rated stroke", "limit", "from", "until", "source")
        rows = [(row.family, row.size, row.stroke_class, row.rated_stroke, row.published, row.valid_from, row.valid_until,
                 row.source) for row in self.limits]
        return table(f"{self.id}: {self.title}", head, rows)

    @property
    def id(self) -> str:
        """Its name for rule_set; of a carrier's limits the name that they were given."""
        return _low.rodt_rules_id(self._kept)

    @property
    def title(self) -> str:
        """One line for a list."""
        return _low.rodt_rules_title(self._kept)

    @property
    def authority(self) -> str:
        """Who enforces it, and where."""
        return _low.rodt_rules_authority(self._kept)

    @property
    def source(self) -> Source | None:
        """The Source, or None."""
        return Source._read(_low.rodt_rules_source(self._kept))

    @property
    def evidence(self) -> Evidence:
        """How it was checked against its source, an Evidence."""
        return from_number(Evidence)(_low.rodt_rules_evidence(self._kept))

    @property
    def valid_from(self) -> date | None:
        """First day on which it can judge; None = open."""
        return _low.rodt_rules_from(self._kept)

    @property
    def valid_until(self) -> date | None:
        """Last day on which it can judge; None = open."""
        return _low.rodt_rules_until(self._kept)

    @property
    def law(self) -> Rules | None:
        """The Rules that a carrier's own limits are based on; None for a law."""
        law = _low.law_id(self._kept)
        return None if law is None else rule_set(law)

    @property
    def air_law(self) -> Rules | None:
        """The Rules that a carrier's own air checks are based on; None for a law."""
        law = _low.air_law_id(self._kept)
        return None if law is None else rule_set(law)

    @property
    def at_limit_passes(self) -> bool:
        """True if a stroke exactly at the limit passes."""
        return _low.rodt_rules_at_limit_passes(self._kept)

    @property
    def pressure_window(self) -> tuple[Fraction, Fraction] | None:
        """Reservoir pressure for the stroke test, psi, both ends inside: (from, until); None = there is none."""
        window = (_low.rodt_rules_pressure_from(self._kept), _low.rodt_rules_pressure_until(self._kept))
        return None if window == (None, None) else window

    @property
    def pressure_source(self) -> Source | None:
        """Source of the window, or None."""
        return Source._read(_low.rodt_rules_pressure_source(self._kept))

    @property
    def pressure_evidence(self) -> Evidence:
        """How the window was checked, an Evidence."""
        return from_number(Evidence)(_low.rodt_rules_pressure_evidence(self._kept))

    @property
    def major_source(self) -> Source | None:
        """The text that calls a brake over its limit, or inoperative, a major defect; None = it has no rank."""
        return Source._read(_low.rodt_rules_major_source(self._kept))

    @property
    def rated_share(self) -> Fraction | None:
        """The part of the marked rated stroke that limits an actuator which is in no table; None = nothing said."""
        return _low.rodt_rules_rated_share(self._kept)

    @property
    def limits(self) -> tuple[Limit, ...]:
        """The rows of limits, a tuple of Limit; of a carrier's limits its own rows only."""
        return self._cached("_rows", Limit, _low.rodt_rules_limit_at, _low.rodt_rules_limit_count)

    @property
    def air_limits(self) -> tuple[AirLimit, ...]:
        """The rows of air checks, a tuple of AirLimit; of a carrier's limits its own rows only."""
        return self._cached("_air", AirLimit, _low.rodt_rules_air_at, _low.rodt_rules_air_count)

    def _cached(self, slot: str, kind: type[Record], row: Any, count: Any) -> tuple[Any, ...]:
        """The rows in that slot, read once."""
        if getattr(self, slot) is None:
            object.__setattr__(self, slot, tuple(kind._read(row(self._kept, i)) for i in range(count(self._kept))))
        return getattr(self, slot)

    def find_limit(self, chamber: Chamber | str, day: Day | None = None) -> LimitAnswer:
        """The limit for a chamber, text or Chamber, on a day, as a LimitAnswer; without a day by the newest text.

        An answer without a limit is an answer too. Raises Error if the chamber cannot be read or has no size.
        """
        return LimitAnswer._read(_low.rodt_rules_find_limit(self._kept, chamber_of(chamber)._raw(), day))


_known: dict[str, Rules] = {}


def rule_set(id: Rules | str = "us-fmcsr") -> Rules:
    """The compiled-in Rules of that id: "us-fmcsr", "us-periodic", "ca-on", "us-cdl" …; a Rules is given back.

    Raises Error with Status.UNKNOWN_RULES if there is none.

    >>> rule_set("us-fmcsr").limits[0].source.document
    '49 CFR Part 393'
    >>> rule_set("atlantis")
    Traceback (most recent call last):
    rodtravel.Error: rules: there is no rule set "atlantis"; rule_sets() lists them
    """
    if isinstance(id, Rules):
        return id
    if not isinstance(id, str):
        raise TypeError("rules are a Rules, or the id of a rule set as text")
    found = _known.get(id)
    if found is None:
        kept = _low.rodt_rules_find(id)
        if kept is None:
            raise Error(Status.UNKNOWN_RULES, f'there is no rule set "{id}"; rule_sets() lists them',
                        field="rules")
        found = _known.setdefault(id, Rules._make(kept, (id,)))
    return found


def rule_sets() -> tuple[Rules, ...]:
    """All compiled-in Rules, as a tuple.

    >>> [rules.id for rules in rule_sets()][:2]
    ['us-fmcsr', 'us-periodic']
    """
    return tuple(rule_set(_low.rodt_rules_id(_low.rodt_rules_at(i))) for i in range(_low.rodt_rules_count()))


def load_rules(text: str, name: str = "own limits", law: Rules | str = "us-fmcsr",
               air_law: Rules | str | None = None) -> Rules:
    """A carrier's own limits, based on a law: a Rules. `text` is a table in the format of tables/limits.csv, one of air
    checks in the format of tables/aircheck.csv, or both one below the other.

    `name`, at most 39 bytes, is its id; that of a law is refused. `air_law` is the law of the air checks; None = `law`.
    Every row must be at least as strict as the law.
    Raises Error with line and column where the table is broken (Status.TABLE) or laxer than the law (Status.LAXER).

    >>> own = load_rules("family,size,class,limit\\nclamp,30,standard,1 7/8\\n", name="yard")
    >>> [str(reason) for reason in judge("30", "2 1/8", "4 1/16", rules=own).reasons][:1]
    ['over-own-limit']
    >>> load_rules("family,size,class,limit\\nclamp,30,standard,2 1/8\\n", name="yard")
    Traceback (most recent call last):
    rodtravel.Error: limit, line 2, column 19: 2 1/8 is laxer than the law, which has 2 for clamp 30 standard
    """
    law, air_law = rule_set(law), rule_set(law if air_law is None else air_law)
    if not isinstance(name, str):
        raise TypeError("name is text")
    if not name.strip() or len(name.encode(errors="replace")) > _NAME_BYTES_MAX or name in (each.id for each in rule_sets()):
        raise Error(Status.ARGUMENT, f"{name!r} is no name: it is 1 to {_NAME_BYTES_MAX} bytes, and not that of a law",
                    field="name")
    kept = _low.rodt_rules_load_with_air(law._kept, air_law._kept, name, text)
    return Rules._make(kept, (text, name, law.id, air_law.id))
