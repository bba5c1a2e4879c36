# SPDX-License-Identifier: Apache-2.0
"""Air-system checks, and the reservoirs."""
import operator

from . import _rodtravel as _low
from ._chambers import chamber_of
from ._error import Error, Status, asked
from ._record import Record, field
from ._rules import DEFAULT_RULES, AirLimit, rule_set
from ._source import Source
from ._words import AirMissing, AirResult, Check, Span, VehicleClass, from_number, number_of

_YES_NO = (None, False, True)
_ESTIMATED = "the reservoir is above zero, the chambers are not below it, and a fill is 0 to 1"


class AirReading(Record):
    """One check of the air system as it was done; a part of an AirFinding.

    >>> judge_air("warning", pressure="62 psi").reading.pressure
    Fraction(62, 1)
    """

    __slots__ = ()
    check = field("The Check.", from_number(Check))
    vehicle = field("The VehicleClass.", from_number(VehicleClass))
    span = field("Build-up: what was timed, a Span.", from_number(Span))
    answer = field("Yes or no; None = not recorded.", _YES_NO.__getitem__)
    towed_units = field("Towed units; 0 = not said.")
    applications = field("Full applications made; 0 = as many as the rule set asks for.")
    built = field("Day of build, or its year; None = not known.")
    pressure = field("Where it happened, psi; or None.")
    before = field("Pressure at the start, psi; or None.")
    after = field("Pressure at the end, psi; or None.")
    cut_out = field("The governor's cut-out, psi; or None.")
    seconds = field("Time, s; or None.")
    actual_volume = field("Reservoirs, in3; or None.")
    required_volume = field("Reservoirs as required, in3; or None.")


class AirFinding(Record):
    """The judgement of one air check, made by judge_air. `str()` is its sentence.

    >>> print(judge_air("warning", pressure=62, rules="us-cdl"))
    the low-pressure warning came on at 62 psi; required: not less than 60 psi: good
    """

    __slots__ = ()
    result = field("The AirResult.", from_number(AirResult))
    missing = field("What was missing for an undetermined one, an AirMissing.", from_number(AirMissing))
    major = field("A major defect by the rule set's own ranking.")
    minor = field("A minor one by that ranking.")
    at_limit = field("Exactly at the bound.")
    reading = field("As given, an AirReading.", AirReading._read)
    measured = field("In the measure of the row; None = none.")
    allowed = field("The bound that judged, in the measure of the row; None for yes or no.")
    row = field("The row that judged, an AirLimit; None = none.", AirLimit._read)
    sentence = field("The judgement as a sentence for a form.")
    edge = field('What would have been defective, a sentence; "" without a row.')

    def __str__(self):
        return self.sentence


def judge_air(check, *, vehicle="any", span="pressures", answer=None, towed_units=0, applications=0, built=None,
              pressure=None, before=None, after=None, cut_out=None, seconds=None, actual_volume=None,
              required_volume=None, rules=DEFAULT_RULES):
    """Judges one check of the air system by the published edge of `rules`.

    `check` is a Check or its word. Pressures are psi, numbers or text ("655 kPa"); `seconds` and volumes (in3) are exact
    numbers; `answer` is True or False for checks of yes and no; `built` is a date, its text, or a year.

    A fact that is missing makes the finding undetermined, never an error. Raises Error for a word that there is not or a
    text that cannot be read, TypeError for binary floats.

    >>> finding = judge_air("loss-released", before=120, after=118, vehicle="single", rules="us-cdl")
    >>> str(finding.result), finding.edge
    ('defective', 'defective at 2 psi per minute or more')
    """
    if answer is not None and answer is not True and answer is not False:
        raise TypeError("answer is True, False or None (not recorded)")
    if not check:
        raise Error(Status.ARGUMENT, "a check has a name, such as 'warning'", field="check")
    for name, number in (("towed units", towed_units), ("applications", applications)):
        if not 0 <= operator.index(number) <= 1000:
            raise Error(Status.ARGUMENT, f"{number} is no number of {name}", field=name)
    raw = (number_of(Check, check, "check"), number_of(VehicleClass, vehicle, "vehicle"),
           number_of(Span, span, "span"), _YES_NO.index(answer), towed_units, applications, built, pressure, before,
           after, cut_out, seconds, actual_volume, required_volume)
    with asked("no time and no volume is below zero", "reading"):
        return AirFinding._read(_low.rodt_air_judge(raw, rule_set(rules)._kept))


def check_title(check):
    """What a check is called in a sentence.

    >>> check_title("warning")
    'low-pressure warning'
    """
    return _low.rodt_check_title(number_of(Check, check, "check"))


class VolumeRow(Record):
    """Rated volume of a service chamber, a row of Table V of 49 CFR 571.121.

    >>> volume_rows()[0].size, volume_rows()[0].volume
    ('9', Fraction(25, 1))
    """

    __slots__ = ()
    size = field("Clamp-type number, text.")
    stroke_from = field("Full stroke from, inches, inside.")
    stroke_until = field("Full stroke until, inches, inside.")
    volume = field("In3.")
    source = field("The Source.", Source._read)


def volume_rows():
    """Every row of Table V, a tuple of VolumeRow.

    >>> len(volume_rows())
    9
    """
    return tuple(VolumeRow._read(_low.rodt_volume_row_at(i)) for i in range(_low.rodt_volume_row_count()))


def rated_volume(chamber):
    """Rated volume of a chamber, text or Chamber, in3, by Table V of 49 CFR 571.121.

    Raises Error with Status.UNKNOWN_CHAMBER where the table has no row; then its actual volume counts.

    >>> rated_volume("30")
    Fraction(89, 1)
    """
    return _low.rodt_rated_volume(chamber_of(chamber)._raw())


def required_volume(chambers, *, trailer=False):
    """Required volume of the reservoirs, in3, for chambers of so many in3 in all: x 12, or x 8 for a trailer.

    Raises Error for a volume below zero.

    >>> required_volume(89 * 4 + 54 * 2)
    Fraction(5568, 1)
    """
    with asked("no volume is below zero", "chambers"):
        return _low.rodt_required_volume(chambers, bool(trailer))


def build_up_seconds(actual, required):
    """Time allowed for 85 to 100 psi, s: 25 s x actual / required volume (49 CFR 571.121 S5.1.1).

    Raises Error for volumes that are not above zero.

    >>> build_up_seconds(11136, 5568)
    Fraction(50, 1)
    """
    with asked("volumes are above zero", "volumes"):
        return _low.rodt_build_up_seconds(actual, required)


def estimate_application(pressure, reservoir, chambers, fill=1):
    """An estimate, no figure of law: psi in the reservoirs after one full application with the engine off.

    `reservoir` and `chambers` are in3 in all, `fill` the part of the rated volume that an application fills: 1 for the
    worst case. Raises Error for a fill outside 0 to 1.

    >>> estimate_application(105, 5568, 464)
    Fraction(12453, 130)
    """
    with asked(_ESTIMATED, "estimate"):
        return _low.rodt_estimate_application(pressure, reservoir, chambers, fill)


def estimate_applications(pressure, floor, reservoir, chambers, fill=1):
    """An estimate: how many full applications keep the reservoirs at `floor` psi or above, starting at `pressure`; at
    most 99. Raises Error as estimate_application does.

    >>> estimate_applications(105, 60, 5568, 464)
    5
    """
    with asked(_ESTIMATED, "estimate"):
        return _low.rodt_estimate_applications(pressure, floor, reservoir, chambers, fill)
