# SPDX-License-Identifier: Apache-2.0
"""Which chamber it is, by what can be seen of it."""
from __future__ import annotations

from fractions import Fraction

from . import _rodtravel as _low
from ._chambers import Chamber, chamber_of
from ._enums import Clue, Family, Observation, Port, Tag, number_of
from ._error import Error, Status
from ._record import Field, Record, raw
from ._rules import Rules, rule_set
from ._types import Day, Exact


class Candidate(Record, of="rodt_candidate"):
    """One chamber that the clues allow.

    >>> identify(stamp="30L").candidates[0].limit
    Fraction(5, 2)
    """

    __slots__ = ()
    chamber: Field[Chamber] = Field("The Chamber; its rated stroke where that decides.")
    limit: Field[Fraction | None] = Field("Its adjustment limit, inches; None = none published.")
    diameter: Field[Fraction | None] = Field("Its published outside diameter, inches; None = none.")
    diameter_distance: Field[Fraction | None] = Field("How far the tape reading is from it, inches; None = no reading.")
    clues_for: Field[tuple[Clue, ...]] = Field("The clues for it, a tuple of Clue.")
    clues_against: Field[tuple[Clue, ...]] = Field(
        "The clues against it; empty unless the clues contradict each other.")


class Identification(Record, of="rodt_identification"):
    """Which chamber it can be, the best candidate first.

    >>> found = identify(stamp="30", port="round")
    >>> found.strict_limit, str(found.next_observation)
    (Fraction(2, 1), 'family')
    """

    __slots__ = ()
    candidates: Field[tuple[Candidate, ...]] = Field(
        "A tuple of Candidate; empty = the tables know none that fits.")
    strict_limit: Field[Fraction | None] = Field(
        "The smallest limit among them, inches: judge by it until one is left; or None.")
    without_limit: Field[int] = Field("Candidates without a limit; with one, the strict limit is no safe side.")
    contradiction: Field[tuple[Clue, ...]] = Field("The clues that cannot all be true, a tuple of Clue.")
    next_observation: Field[Observation] = Field("What to look at next, an Observation.")
    _json: Field[str] = Field("The report as JSON.", of="json")

    @property
    def json(self) -> str:
        """The report as JSON, with the names of `rodtravel identify --json`."""
        return self._json

    @property
    def advice(self) -> str:
        """One sentence: what to look at, and what it would show."""
        return _low.rodt_observation_text(self.next_observation.number)


def identify(*, stamp: Chamber | str | None = None, family: Family | str = "unknown", port: Port | str = "not-seen",
             tag: Tag | str = "not-seen", rated_stroke: Exact | None = None, diameter: Exact | None = None,
             diameter_division: Exact | None = None, rules: Rules | str = "us-fmcsr",
             day: Day | None = None) -> Identification:
    """Lists the chambers that can be the one that was seen.

    `stamp` is the stamped text or a Chamber; `rated_stroke` the marked one, `diameter` the outside diameter by tape,
    both inches or text; `diameter_division` the graduation it was read to (1/8 in is taken). `rules` and `day` say whose
    limits are given.

    Raises Error if there is no clue at all, or one cannot be read.

    >>> found = identify(stamp="30", port="square", diameter="8 1/8")
    >>> [str(candidate.chamber) for candidate in found.candidates]
    ['clamp 30 long']
    """
    clues = raw("rodt_clues", stamp=None if stamp is None else chamber_of(stamp)._raw(),
                family=number_of(Family, family, "family"), port=number_of(Port, port, "port"),
                tag=number_of(Tag, tag, "tag"), rated_stroke=rated_stroke, diameter=diameter,
                diameter_division=diameter_division)
    if stamp is rated_stroke is diameter is None and family == "unknown" and port == tag == "not-seen":
        raise Error(Status.ARGUMENT, "there is no clue: give a stamp, a family, a port, a tag, a rated stroke or a diameter")
    kept = rule_set(rules)._kept
    found = _low.rodt_clues_identify(clues, kept, day)
    return Identification._read((*found, _low.identification_json(clues, kept, day)))
