# SPDX-License-Identifier: Apache-2.0
"""Service brake chambers, and how to find out which one it is."""
from . import _rodtravel as _low
from ._error import Error, Status, asked
from ._record import Record, field
from ._rules import rule_set
from ._source import Source
from ._words import Clue, Family, Observation, Port, StrokeClass, Tag, from_number, number_of


class Chamber(Record):
    """One service brake chamber, as far as it is known. What is not known is "unknown" or None.

    `size` and `spring_size` are text, a type number or a letter; `rated_stroke` and `marked_limit` are what is marked
    on the housing, inches as Fraction. Raises Error for a size that is none, TypeError for binary floats.

    >>> chamber = Chamber("30", family="clamp", stroke_class="long")
    >>> str(chamber), chamber.size
    ('clamp 30 long', '30')
    """

    __slots__ = ()
    family = field("How the housing is built, a Family.", from_number(Family))
    stroke_class = field("Standard or long stroke, a StrokeClass.", from_number(StrokeClass))
    size = field('Type number "30" or letter "C"; None = not known.')
    spring_size = field("Spring brake part of a double mark such as 24/30; None = none said.")
    rated_stroke = field("Full travel marked on the housing, inches; None = no mark read. Not the limit!")
    marked_limit = field("Readjustment limit marked on the housing, inches; None = none.")

    def __init__(self, size=None, *, family="unknown", stroke_class="unknown", spring_size=None, rated_stroke=None,
                 marked_limit=None):
        raw = (number_of(Family, family, "family"), number_of(StrokeClass, stroke_class, "stroke class"), size,
               spring_size, rated_stroke, marked_limit)
        checked = _low.chamber_check(raw)
        for name, mark in (("rated stroke", checked[4]), ("marked limit", checked[5])):
            if mark is not None and mark < 0:
                raise Error(Status.NEGATIVE, "a mark cannot be below zero", field=name)
        object.__setattr__(self, "_values", self._read(checked)._values)

    def _raw(self):
        return (self.family.number, self.stroke_class.number) + self._values[2:]

    def __str__(self):
        return _low.rodt_chamber_format(self._raw()) if self.size or self.family is not Family.UNKNOWN else "unknown"


def chamber_of(value):
    """A Chamber that a caller gave, or the one that a text names."""
    if isinstance(value, Chamber):
        return value
    return read_chamber(value)


def read_chamber(text):
    """Reads a chamber as people write it: "30", "T30", "30LS", "24 long", "3030", "24/30", "bolt C", "roto 30", "DD-3".

    What the text does not say stays unknown. Raises Error with the column where it is no chamber mark.

    >>> read_chamber("24/30 LS")
    Chamber(family='clamp', stroke_class='long', size='24', spring_size='30')
    """
    return Chamber._read(_low.rodt_chamber_read(text))


class ChamberRow(Record):
    """One chamber as published: its outside diameter and rated stroke.

    >>> chamber_rows()[0].size, chamber_rows()[0].outside_diameter
    ('6', Fraction(9, 2))
    """

    __slots__ = ()
    family = field("A Family.", from_number(Family))
    size = field("Type number or letter, text.")
    outside_diameter = field("Inches; None = none published.")
    outside_diameter_mm = field("The millimetres printed beside it, rounded by the source; None = none.")
    standard_rated_stroke = field("Inches, of the standard stroke class; None = none published.")
    source = field("Source of the diameter.", Source._read)


def chamber_rows():
    """Every chamber that the tables know, as a tuple of ChamberRow.

    >>> len(chamber_rows()) > 20
    True
    """
    return tuple(ChamberRow._read(_low.rodt_chamber_row_at(i)) for i in range(_low.rodt_chamber_row_count()))


def _clues(bits):
    return tuple(clue for number, clue in enumerate(Clue) if bits >> number & 1)


class Candidate(Record):
    """One chamber that the clues allow.

    >>> identify(stamp="30L").candidates[0].limit
    Fraction(5, 2)
    """

    __slots__ = ()
    chamber = field("The Chamber; its rated stroke where that decides.", Chamber._read)
    limit = field("Its adjustment limit, inches; None = none published.")
    diameter = field("Its published outside diameter, inches; None = none.")
    diameter_distance = field("How far the tape reading is from it, inches; None = no reading.")
    clues_for = field("The clues that speak for it, a tuple of Clue.", _clues)
    clues_against = field("The clues that speak against it; empty unless the clues contradict each other.", _clues)


class Identification(Record):
    """Which chamber it can be, the best candidate first.

    >>> found = identify(stamp="30", port="round")
    >>> found.strict_limit, str(found.settle_by)
    (Fraction(2, 1), 'family')
    """

    __slots__ = ()
    candidates = field("A tuple of Candidate; empty = the tables know none that fits.",
                       lambda all: tuple(Candidate._read(one) for one in all))
    strict_limit = field("The smallest limit among them, inches: judge by it until they are told apart; or None.")
    contradiction = field("The clues that cannot all be true, a tuple of Clue.", _clues)
    settle_by = field("What to look at next, an Observation.", from_number(Observation))

    @property
    def advice(self):
        """One sentence that tells what to look at and what it would show."""
        return _low.rodt_observation_text(self.settle_by.number)


def identify(*, stamp=None, family="unknown", port="not-seen", tag="not-seen", rated_stroke=None, diameter=None,
             diameter_division=None, rules="us-fmcsr", day=None):
    """Lists the chambers that can be the one that was seen.

    `stamp` is the stamped text or a Chamber; `rated_stroke` the marked one, `diameter` the outside diameter by tape,
    both inches or text; `diameter_division` the graduation it was read to (1/8 in is taken). `rules` and `day` say whose
    limits are told.

    Raises Error if there is no clue at all, or one cannot be read.

    >>> found = identify(stamp="30", port="square", diameter="8 1/8")
    >>> [str(candidate.chamber) for candidate in found.candidates]
    ['clamp 30 long']
    """
    raw = (None if stamp is None else chamber_of(stamp)._raw(), number_of(Family, family, "family"),
           number_of(Port, port, "port"), number_of(Tag, tag, "tag"), rated_stroke, diameter, diameter_division)
    if raw == (None, 0, 0, 0, None, None, diameter_division):
        raise Error(Status.ARGUMENT, "there is no clue: give a stamp, a family, a port, a tag, a rated stroke or a diameter")
    with asked("a division of the tape is longer than nothing, and no clue is below zero", "clues"):
        return Identification._read(_low.rodt_identify(raw, rule_set(rules)._kept, day))
