# SPDX-License-Identifier: Apache-2.0
"""The judgement of one wheel end."""
import re

from . import _rodtravel as _low
from ._chambers import Chamber
from ._error import Error, Status
from ._record import Record, field
from ._rules import DEFAULT_RULES, Rules, _known, rule_set
from ._source import Source
from ._words import (Basis, DateOrder, Defect, Drum, Evidence, Proof, Reason, StrokeClass, Unit, Verdict, from_number,
                     number_of)

_ALL_REASONS = tuple(Reason)


def _reasons(bits):
    return tuple(reason for number, reason in enumerate(_ALL_REASONS) if bits >> number & 1)


class _Values(Record):
    """All that a finding says, as the wrapper tells it; looked up once somebody asks."""

    __slots__ = ()
    verdict = field("The Verdict.", from_number(Verdict))
    proof = field("What the divisions of the tape prove, a Proof; it never changes the verdict.", from_number(Proof))
    reasons = field("Why, a tuple of Reason.", _reasons)
    chamber = field("The Chamber as it was judged: what was assumed is filled in.", Chamber._read)
    released = field("Released measurement, inches; None = missing or unreadable.")
    applied = field("Applied measurement, inches; None = missing or unreadable.")
    applied_stroke = field("Applied less released, inches; None where one is missing or they are swapped.")
    limit = field("The limit that judged, inches; None = none.")
    law_limit = field("The law's limit, inches; it differs from `limit` under a carrier's own limits only.")
    margin = field("Limit less applied stroke, inches; negative = over; None where one is missing.")
    long_limit = field("With `assumed-standard`: the limit that the long-stroke chamber of this size has, inches.")
    unit = field("The Unit in which the sentences speak.", from_number(Unit))
    division = field("Smallest graduation that was read, inches; or None.")
    probability_over = field("Exact chance that the true stroke is over the limit; given with a proof.")
    pressure = field("Reservoir pressure before the application, psi; None = not recorded.")
    pressure_after = field("Reservoir pressure after it, psi; None = not recorded.")
    day = field("The day whose law judged; None = the newest text.")
    other_day = field("The second meaning of an ambiguous date; or None.")
    basis = field("What the law's limit rests on, a Basis.", from_number(Basis))
    evidence = field("How the law's limit was checked, an Evidence.", from_number(Evidence))
    _row = field("Number of the law's row.")
    _own_row = field("Number of the carrier's row.")
    source = field("Source of the law's limit; or None.", Source._read)


def _member(name):
    index = _Values._fields.index(name)
    doc = next(vars(cls)[name].__doc__ for cls in (_Values,))
    return property(lambda self: self._values[index], doc=doc)


class Finding(Record):
    """The judgement of one wheel end, made by judge and judge_row. Read-only.

    >>> finding = judge("20", "3 3/8", "4 13/16", stroke_class="standard", pressure=95)
    >>> str(finding.verdict), finding.applied_stroke, finding.margin
    ('in-adjustment', Fraction(23, 16), Fraction(5, 16))
    >>> print(finding)
    3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare
    """

    __slots__ = ("_kept", "rules", "_told")
    _fields = tuple(name for name in _Values._fields if name[0] != "_")

    @property
    def _values(self):
        try:
            return self._told
        except AttributeError:
            told = _Values._read(_low.finding_values(self._kept))._values
            _set_told(self, told)
            return told

    limit_row = property(lambda self: self._row_of(_ROW, self.rules.law or self.rules),
                         doc="The law's row, a Limit; None where the limit rests on no table.")
    own_row = property(lambda self: self._row_of(_OWN_ROW, self.rules),
                       doc="The carrier's row, a Limit; or None.")

    def _row_of(self, index, rules):
        number = self._values[index]
        return None if number < 0 else rules.limits[number]

    @property
    def sentence(self):
        """The comparison in one line."""
        return _low.rodt_finding_format(self._kept)

    @property
    def proof_sentence(self):
        """What the divisions of the tape prove, a sentence; "" where no proof was asked."""
        return _low.rodt_finding_proof_format(self._kept)

    @property
    def sentences(self):
        """One sentence for each reason, with its figures and what would change the answer: a tuple of text."""
        return tuple(_low.rodt_finding_reason_format(self._kept, reason.number) for reason in self.reasons)

    @property
    def defect(self):
        """What it weighs in the count of defective brakes, a Defect."""
        return _defect(_low.rodt_finding_defect(self._kept))

    def __str__(self):
        return self.sentence

    def __repr__(self):
        return f"<Finding {self.verdict}: {self.sentence}>"

    def __eq__(self, other):
        if type(other) is not Finding:
            return NotImplemented
        return self._values == other._values and self.rules == other.rules

    def __hash__(self):
        return hash((self._values, self.rules))

    def asdict(self):
        """The members by name, as plain values; `rules` is the id of the rule set."""
        return {**super().asdict(), "rules": self.rules.id}

    def __reduce__(self):
        return _restore, (_low.finding_values(self._kept), self.rules, _low.rodt_tables_edition())


for _name in Finding._fields:
    setattr(Finding, _name, _member(_name))
del _name
# What is asked most often does not look at the rest.
_verdict = from_number(Verdict)
_number_of_verdict = _low.finding_verdict
Finding.verdict = property(lambda self: _verdict(_number_of_verdict(self._kept)), doc=Finding.verdict.__doc__)
_ROW = _Values._fields.index("_row")
_OWN_ROW = _Values._fields.index("_own_row")
_defect = from_number(Defect)
_new = object.__new__
_set_kept = Finding._kept.__set__
_set_rules = Finding.rules.__set__
_set_told = Finding._told.__set__


def _finding(kept, rules):
    made = _new(Finding)
    _set_kept(made, kept)
    _set_rules(made, rules)
    return made


def _restore(values, rules, edition):
    """A finding out of another process. Rows are known by their number, so the tables must be the same."""
    if edition != _low.rodt_tables_edition():
        raise Error(Status.ARGUMENT, f"this finding was made with the tables of {edition}; judge its readings again")
    return _finding(_low.finding_from_values(values, rules._kept), rules)


def _chamber_texts(chamber, stroke_class, rated_stroke, marked_limit):
    """A Chamber as the texts of a form: what it says itself goes before what is said beside it."""
    if not isinstance(chamber, Chamber):
        raise TypeError("chamber is text or a Chamber")
    name = str(chamber) if chamber.size else None
    return (name, stroke_class, chamber.rated_stroke if rated_stroke is None else rated_stroke,
            chamber.marked_limit if marked_limit is None else marked_limit)


_ANSWERS = {None: None, False: "off", True: "on"}


def _answer(value, field_name):
    if value is None or value is True or value is False:
        return _ANSWERS[value]
    raise TypeError(f"{field_name} is True, False or None (not recorded)")


def judge(chamber, released, applied, *, stroke_class=None, rated_stroke=None, marked_limit=None, pressure=None,
          pressure_after=None, division=None, day=None, unit="in", engine_running=None, spring_brake_applied=None,
          drum=None, rules=DEFAULT_RULES, decimal_comma=False):
    """Judges one wheel end and returns a Finding.

    `chamber` is text such as "30L", "24/30", "bolt C", or a Chamber. `released` and `applied` are the measurements from
    chamber face to clevis pin; they, `rated_stroke`, `marked_limit` and `division` are text ("4 13/16", "54 mm"), int,
    Fraction or Decimal; numbers are read like text, in `unit`. Pressures are psi, or text with a unit. `day` is a date
    or its text; None judges by the newest text of `rules`, an id or a Rules. `engine_running` and
    `spring_brake_applied` are True, False or None, `drum` is "cold", "warm" or "hot".

    What was not recorded is named among the reasons. Raises Error with the field and column of a text that cannot be
    read, TypeError for binary floats.

    >>> finding = judge("30", "2 3/4", "5 5/16", stroke_class="long", pressure=95)
    >>> str(finding.verdict), [str(reason) for reason in finding.reasons]
    ('out-of-adjustment', ['over-limit', 'assumed-clamp'])
    >>> judge("30", 2.125, "4")
    Traceback (most recent call last):
    TypeError: released is a binary float (2.125), which is seldom the number that was read; give text, ...
    """
    if rules.__class__ is not Rules:
        rules = rules.__class__ is str and _known.get(rules) or rule_set(rules)
    if chamber.__class__ is not str and not isinstance(chamber, str):
        chamber, stroke_class, rated_stroke, marked_limit = _chamber_texts(chamber, stroke_class, rated_stroke,
                                                                           marked_limit)
    engine = spring = None
    if engine_running is not None or spring_brake_applied is not None:
        engine = _answer(engine_running, "engine_running")
        spring = _answer(spring_brake_applied, "spring_brake_applied")
    if drum is not None:
        drum = _drum(drum)
    if (stroke_class is rated_stroke is marked_limit is pressure_after is division is day is drum is engine is spring
            is None and unit == "in" and not decimal_comma):
        form = (chamber, released, applied, pressure)
    else:
        form = (chamber, released, applied, stroke_class, rated_stroke, marked_limit, pressure, pressure_after, division,
                day, None, engine, spring, drum, number_of(Unit, unit, "unit"), bool(decimal_comma), 0, None)
    made = _new(Finding)
    _set_kept(made, _judge_text(form, rules._kept))
    _set_rules(made, rules)
    return made


_judge_text = _low.rodt_judge_text


def _drum(drum):
    return (None, "cold", "warm", "hot")[number_of(Drum, drum, "drum")]


_UNFIT = re.compile("[\0\ud800-\udfff]")


def _fit(cell):
    """The cell; a zero byte or half of a surrogate pair in it becomes a sign that nothing can be read in."""
    return _UNFIT.sub("\ufffd", cell) if isinstance(cell, str) else cell


def judge_row(*, chamber=None, released=None, applied=None, stroke_class=None, rated_stroke=None, marked_limit=None,
              pressure=None, pressure_after=None, division=None, day=None, unit=None, engine=None, spring_brake=None,
              drum=None, rules=DEFAULT_RULES, form_unit="in", decimal_comma=False, date_order="unknown",
              default_day=None):
    """Judges one row of a file as it stands, and never refuses a text: returns (Finding, Error or None).

    Every cell is text or None, or an exact number; one that cannot be read makes the finding undetermined, its reason
    says which, and the first such Error is returned, not raised. `unit` is a cell of the row, `form_unit` that of the
    whole file; `default_day` is for rows without a day of their own.

    Raises TypeError for binary floats, Error for an unknown rule set or word of the keywords.

    >>> finding, error = judge_row(chamber="30", released="2 1/8", applied="2-Jan")
    >>> str(finding.verdict), error.field
    ('undetermined', 'applied')
    """
    rules = rule_set(rules)
    if chamber is not None and not isinstance(chamber, str):
        chamber, stroke_class, rated_stroke, marked_limit = _chamber_texts(chamber, stroke_class, rated_stroke,
                                                                           marked_limit)
    cells = (chamber, released, applied, stroke_class, rated_stroke, marked_limit, pressure, pressure_after, division,
             day, unit, engine, spring_brake, drum)
    kept, error = _low.judge_row((*map(_fit, cells), number_of(Unit, form_unit, "form unit"), bool(decimal_comma),
                                  number_of(DateOrder, date_order, "date order"), default_day), rules._kept)
    return _finding(kept, rules), error


def pushrod_force(chamber, pressure):
    """Ideal pushrod force in pound-force, exactly: type number x pressure in psi. Information only; it leaves out
    springs and friction, and the force falls off beyond the limit.

    Raises Error for a size that is no number.

    >>> pushrod_force("30", 60)
    Fraction(1800, 1)
    """
    from ._chambers import chamber_of
    return _low.rodt_pushrod_force(chamber_of(chamber)._raw(), pressure)


def al_factor(chamber, arm_length):
    """AL factor in cubic inches, exactly: type number x effective arm length in inches.

    Raises Error for a size that is no number.

    >>> al_factor("30", "5 1/2")
    Fraction(165, 1)
    """
    from ._chambers import chamber_of
    return _low.rodt_al_factor(chamber_of(chamber)._raw(), arm_length)
