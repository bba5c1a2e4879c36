# SPDX-License-Identifier: Apache-2.0
"""Rule sets: one authority's limits, dated, each row with its source."""
from . import _rodtravel as _low
from ._error import Error, Status
from ._record import Record, field
from ._source import Source
from ._words import (AirKind, Basis, Check, Comparison, Evidence, Family, Measure, Span, StrokeClass, VehicleClass,
                     from_number)

DEFAULT_RULES = "us-fmcsr"
_NAME_MOST = 39  # bytes of the id of a Rules


class Limit(Record):
    """One row of a table of adjustment limits.

    >>> row = rule_set("us-fmcsr").limits[0]
    >>> row.published, row.limit, row.printed_mm, str(row.evidence)
    ('1 1/4', Fraction(5, 4), Fraction(159, 5), 'checked')
    """

    __slots__ = ()
    family = field("A Family.", from_number(Family))
    stroke_class = field('A StrokeClass; "unknown" = the family has one limit for every class.',
                         from_number(StrokeClass))
    size = field("Type number or letter, text.")
    rated_stroke = field("Inches; the row holds only for this marked rated stroke; None = for any.")
    rated_stroke_mm = field("The printed millimetres of that.")
    limit = field("The adjustment limit, inches.")
    published = field("The figure as printed, text.")
    printed_mm = field("The millimetres printed beside it; None = none printed.")
    valid_from = field("First day; None = the day of effect was not found.")
    valid_until = field("Last day; None = still in force in the text that was read.")
    source = field("The Source.", Source._read)
    evidence = field("How the figure was checked, an Evidence.", from_number(Evidence))


class AirLimit(Record):
    """One row of a table of air checks; it states the acceptable condition.

    >>> row = [row for row in rule_set("us-cdl").air_limits if row.check == "loss-released"][0]
    >>> row.published, row.edge
    ('less than 2 psi in one minute', 'defective at 2 psi per minute or more')
    """

    __slots__ = ()
    check = field("A Check.", from_number(Check))
    kind = field("How the rule set ranks it, an AirKind.", from_number(AirKind))
    vehicle = field("A VehicleClass.", from_number(VehicleClass))
    towed_units = field("For just this many towed units; -1 = any number.")
    towed_or_more = field("For that many and more.")
    comparison = field("A Comparison.", from_number(Comparison))
    measure = field("What the figures are in, a Measure.", from_number(Measure))
    value = field("The bound; the lower one of two; None for yes or no.")
    upper = field("The upper bound of two; None otherwise.")
    per_towed_unit = field("Added for each towed unit after the first; None = nothing.")
    span = field("Build-up: what is timed, a Span.", from_number(Span))
    start = field("Pressure in psi at which that begins; or None.")
    stop = field("Pressure in psi at which it ends; or None.")
    applications = field("Reserve: full applications between the readings; 0 otherwise.")
    by_volume = field("Build-up: value times actual by required reservoir volume (49 CFR 571.121 S5.1.1).")
    half_cut_out = field("Warning: or half of the governor's cut-out, whichever is less.")
    below_cut_out = field("Cut-in: measured is how far it lies below the governor's cut-out.")
    built_from = field("For vehicles built from this day on; None = any.")
    built_until = field("For vehicles built until this day; None = any.")
    published = field("The figure and its edge as worded.")
    setup = field("How the check is set up.")
    source = field("The Source.", Source._read)
    evidence = field("How the figure was checked, an Evidence.", from_number(Evidence))
    edge = field("What would be defective, a sentence.")


class LimitAnswer(Record):
    """What the limit is for a chamber on a day, and what it rests on.

    >>> answer = rule_set("us-fmcsr").find_limit("clamp 36", day="2021-10-13")
    >>> answer.limit, str(answer.basis), answer.assumed_standard
    (Fraction(9, 4), 'table', True)
    """

    __slots__ = ()
    basis = field("What the law's limit rests on, a Basis.", from_number(Basis))
    limit = field("The limit that judges, inches: the stricter of the law's and the carrier's own; None = none.")
    law_limit = field("The law's own limit, inches; or None.")
    row = field("The law's row, a Limit; or None.", Limit._read)
    own_row = field("The carrier's row, a Limit; or None.", Limit._read)
    source = field("Source of the law's limit; or None.", Source._read)
    evidence = field("How the law's limit was checked, an Evidence.", from_number(Evidence))
    assumed_clamp = field("The family was not known; a bare type number is taken as clamp.")
    assumed_standard = field("The stroke class was not known; standard is taken.")
    conflicting_marks = field("The marks contradict each other; standard is taken.")


class Rules:
    """The law of one authority, or a carrier's own limits on top of a law. Made by rule_set and load_rules.

    Read-only and shared: any number of threads may use one. Two are equal if they judge alike.

    >>> rules = rule_set("us-fmcsr")
    >>> rules.id, rules.at_limit_passes, rules.pressure_window
    ('us-fmcsr', True, (Fraction(90, 1), Fraction(100, 1)))
    """

    __slots__ = ("_kept", "_made_from", "_rows", "_air")

    def __init__(self, *_args, **_words):
        raise TypeError("a Rules is made by rule_set and load_rules, not by hand")

    @classmethod
    def _make(cls, kept, made_from):
        made = object.__new__(cls)
        for name, value in (("_kept", kept), ("_made_from", made_from), ("_rows", None), ("_air", None)):
            object.__setattr__(made, name, value)
        return made

    def __setattr__(self, name, _value):
        raise AttributeError(f"Rules is read-only: {name} cannot be set")

    def __delattr__(self, name):
        raise AttributeError(f"Rules is read-only: {name} cannot be deleted")

    def __repr__(self):
        return f"Rules({self.id!r})"

    def __eq__(self, other):
        return self._made_from == other._made_from if isinstance(other, Rules) else NotImplemented

    def __hash__(self):
        return hash(self._made_from)

    def __reduce__(self):
        return (load_rules, self._made_from) if len(self._made_from) > 1 else (rule_set, self._made_from)

    def __copy__(self):
        return self

    def __deepcopy__(self, _memo):
        return self

    @property
    def id(self):
        """The name by which it is asked for; of a carrier's limits the name that they were given."""
        return _low.rodt_rules_id(self._kept)

    @property
    def title(self):
        """One line for a list."""
        return _low.rodt_rules_title(self._kept)

    @property
    def authority(self):
        """Who enforces it, and where."""
        return _low.rodt_rules_authority(self._kept)

    @property
    def source(self):
        """The Source, or None."""
        return Source._read(_low.rodt_rules_source(self._kept))

    @property
    def evidence(self):
        """How it was checked against its source, an Evidence."""
        return from_number(Evidence)(_low.rodt_rules_evidence(self._kept))

    @property
    def valid_from(self):
        """First day on which it can judge; None = open."""
        return _low.rodt_rules_from(self._kept)

    @property
    def valid_until(self):
        """Last day on which it can judge; None = open."""
        return _low.rodt_rules_until(self._kept)

    @property
    def law(self):
        """The Rules that a carrier's own limits stand on; None for a law."""
        law = _low.law_id(self._kept)
        return None if law is None else rule_set(law)

    @property
    def at_limit_passes(self):
        """True if a stroke exactly at the limit passes."""
        return _low.rodt_rules_at_limit_passes(self._kept)

    @property
    def pressure_window(self):
        """Reservoir pressure for the stroke test, psi, both ends inside: (from, until); None = there is none."""
        window = (_low.rodt_rules_pressure_from(self._kept), _low.rodt_rules_pressure_until(self._kept))
        return None if window == (None, None) else window

    @property
    def pressure_source(self):
        """Source of the window, or None."""
        return Source._read(_low.rodt_rules_pressure_source(self._kept))

    @property
    def pressure_evidence(self):
        """How the window was checked, an Evidence."""
        return from_number(Evidence)(_low.rodt_rules_pressure_evidence(self._kept))

    @property
    def rated_share(self):
        """The part of the marked rated stroke that limits an actuator which is in no table; None = nothing said."""
        return _low.rodt_rules_rated_share(self._kept)

    @property
    def limits(self):
        """The rows of limits, a tuple of Limit; of a carrier's limits its own rows only."""
        if self._rows is None:
            count = _low.rodt_rules_limit_count(self._kept)
            rows = tuple(Limit._read(_low.rodt_rules_limit(self._kept, i)) for i in range(count))
            object.__setattr__(self, "_rows", rows)
        return self._rows

    @property
    def air_limits(self):
        """The rows of air checks, a tuple of AirLimit; of a carrier's limits those of its law."""
        if self._air is None:
            count = _low.rodt_rules_air_count(self._kept)
            rows = tuple(AirLimit._read(_low.rodt_rules_air(self._kept, i)) for i in range(count))
            object.__setattr__(self, "_air", rows)
        return self._air

    def find_limit(self, chamber, day=None):
        """The limit for a chamber, text or Chamber, on a day, as a LimitAnswer; without a day by the newest text.

        An answer without a limit is an answer too. Raises Error if the chamber cannot be read or has no size.
        """
        from ._chambers import chamber_of
        return LimitAnswer._read(_low.rodt_rules_find_limit(self._kept, chamber_of(chamber)._raw(), day))


_known = {}


def rule_set(id=DEFAULT_RULES):
    """The compiled-in Rules of that id: "us-fmcsr", "us-periodic", "ca-on", "us-cdl" …; a Rules is given back.

    Raises Error with Status.UNKNOWN_RULES if there is none.

    >>> rule_set("us-fmcsr").limits[0].source.document
    '49 CFR Part 393'
    >>> rule_set("atlantis")
    Traceback (most recent call last):
    rodtravel.Error: rules: there is no rule set "atlantis"; rule_sets() tells those that there are
    """
    if isinstance(id, Rules):
        return id
    if not isinstance(id, str):
        raise TypeError("rules are a Rules, or the id of a rule set as text")
    found = _known.get(id)
    if found is None:
        kept = _low.rodt_rules_find(id)
        if kept is None:
            raise Error(Status.UNKNOWN_RULES, f'there is no rule set "{id}"; rule_sets() tells those that there are',
                        field="rules")
        found = _known.setdefault(id, Rules._make(kept, (id,)))
    return found


def rule_sets():
    """All compiled-in Rules, as a tuple.

    >>> [rules.id for rules in rule_sets()][:2]
    ['us-fmcsr', 'us-periodic']
    """
    return tuple(rule_set(_low.rodt_rules_id(_low.rodt_rules_at(i))) for i in range(_low.rodt_rules_count()))


def load_rules(text, name="own limits", law=DEFAULT_RULES):
    """A carrier's own limits, to stand on a law: a Rules. `text` is a table in the form of tables/limits.csv.

    `name`, at most 39 bytes, is its id; that of a law is refused. Every row must be at least as strict as the law.
    Raises Error with line and column where the table is broken (Status.TABLE) or laxer than the law (Status.LAXER).

    >>> own = load_rules("family,size,class,limit\\nclamp,30,standard,1 7/8\\n", name="yard")
    >>> [str(reason) for reason in judge("30", "2 1/8", "4 1/16", rules=own).reasons][:1]
    ['over-own-limit']
    >>> load_rules("family,size,class,limit\\nclamp,30,standard,2 1/8\\n", name="yard")
    Traceback (most recent call last):
    rodtravel.Error: limit, line 2, column 19: 2 1/8 is laxer than the law, which has 2 for clamp 30 standard
    """
    law = rule_set(law)
    if not isinstance(name, str):
        raise TypeError("name is text")
    if not name.strip() or len(name.encode(errors="replace")) > _NAME_MOST or name in (each.id for each in rule_sets()):
        raise Error(Status.ARGUMENT, f"{name!r} is no name: it is 1 to {_NAME_MOST} bytes, and not that of a law",
                    field="name")
    kept = _low.rodt_rules_load(law._kept, name, text)
    return Rules._make(kept, (text, name, law.id))
