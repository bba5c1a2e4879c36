# SPDX-License-Identifier: Apache-2.0
"""Enumerations. Each member is its text too: Verdict.IN_ADJUSTMENT == "in-adjustment"."""
from __future__ import annotations

import enum
from collections.abc import Callable
from typing import Any, TypeVar

from ._error import Error, Status

_W = TypeVar("_W", bound="Word")
_members: dict[type, tuple[Any, ...]] = {}


class _WordType(enum.EnumMeta):
    def __init__(cls, *args: Any, **words: Any) -> None:
        super().__init__(*args, **words)
        _members[cls] = tuple(cls.__members__.values())

    def __dir__(cls) -> list[str]:
        """The members alone: all methods of str would hide them, in help() too."""
        return ["__doc__", "__module__", "number", *cls.__members__]


class Word(str, enum.Enum, metaclass=_WordType):
    """Base of the enumerations. Members are in the order of the C library's numbers."""

    def __str__(self) -> str:
        return str(self.value)

    def __format__(self, form: str) -> str:
        return format(str(self.value), form)

    @property
    def number(self) -> int:
        """The number of the member in the C library and in columns."""
        # By class, because members of two enumerations can be equal texts.
        return _members[type(self)].index(self)


def from_number(cls: type[_W]) -> Callable[[int], _W]:
    """A function from the library's number to the member."""
    return _members[cls].__getitem__


def number_of(cls: type[_W], word: _W | str, field: str) -> int:
    """The library's number of a member that a caller gave, or of its text."""
    try:
        return _members[cls].index(cls(word))
    except ValueError:
        choice = ", ".join(repr(member.value) for member in _members[cls])
        raise Error(Status.ARGUMENT, f"{word!r} is none of {choice}", field=field) from None


class Verdict(Word):
    """The judgement of one wheel end.

    >>> judge("30", "2 1/8", "4 1/4").verdict == "out-of-adjustment"
    True
    """

    UNDETERMINED = "undetermined"
    IN_ADJUSTMENT = "in-adjustment"
    OUT_OF_ADJUSTMENT = "out-of-adjustment"
    INOPERATIVE = "inoperative"


class Proof(Word):
    """What the divisions of the tape prove, each reading taken as right within half a division.

    >>> str(judge("30", "2 1/8", "3 1/8", division="1/16").proof)
    'proven-within'
    """

    NOT_ASKED = "not-asked"
    PROVEN_WITHIN = "proven-within"
    PROVEN_OVER = "proven-over"
    NOT_RESOLVED = "not-resolved"


class Reason(Word):
    """Why a verdict is what it is; a finding lists them in this order.

    >>> [str(reason) for reason in judge("30", "2", "2", psi=95).reasons]
    ['no-movement', 'assumed-standard', 'assumed-clamp']
    """

    OVER_LIMIT = "over-limit"
    OVER_OWN_LIMIT = "over-own-limit"
    AT_LIMIT = "at-limit"
    WITHIN_LIMIT = "within-limit"
    NO_MOVEMENT = "no-movement"
    READINGS_SWAPPED = "readings-swapped"
    BEYOND_RATED_STROKE = "beyond-rated-stroke"
    PRESSURE_LOW = "pressure-low"
    PRESSURE_HIGH = "pressure-high"
    PRESSURE_NOT_RECORDED = "pressure-not-recorded"
    ENGINE_RUNNING = "engine-running"
    SPRING_BRAKE_APPLIED = "spring-brake-applied"
    ASSUMED_STANDARD = "assumed-standard"
    ASSUMED_CLAMP = "assumed-clamp"
    CONFLICTING_MARKS = "conflicting-marks"
    NO_PUBLISHED_LIMIT = "no-published-limit"
    RULES_NOT_IN_FORCE = "rules-not-in-force"
    LIMIT_UNCONFIRMED = "limit-unconfirmed"
    LIMIT_FROM_RATED = "limit-from-rated"
    LIMIT_MARKED = "limit-marked"
    PRINTED_MM_DIFFERS = "printed-mm-differs"
    DRUM_HOT = "drum-hot"
    CHAMBER_MISSING = "chamber-missing"
    RELEASED_MISSING = "released-missing"
    APPLIED_MISSING = "applied-missing"
    CHAMBER_UNREADABLE = "chamber-unreadable"
    RELEASED_UNREADABLE = "released-unreadable"
    APPLIED_UNREADABLE = "applied-unreadable"
    OTHER_UNREADABLE = "other-unreadable"
    SPREADSHEET_DATE = "spreadsheet-date"
    DATE_AMBIGUOUS = "date-ambiguous"
    DATE_UNREADABLE = "date-unreadable"
    LOST_BLANK = "lost-blank"


class Unit(Word):
    """The unit of a bare number, or in which a length was written.

    >>> read_length("44.45", unit=Unit.MM)
    Fraction(7, 4)
    """

    INCH = "in"
    MM = "mm"
    CM = "cm"


class Rounding(Word):
    """How a number that does not fit is rounded when it is written; nothing else rounds.

    >>> write_decimal("1 3/16", 2, rounding=Rounding.UP)
    '1.19'
    """

    HALF_EVEN = "half-even"
    HALF_UP = "half-up"
    DOWN = "down"
    UP = "up"


class DateOrder(Word):
    """The order of day, month and year in dates made of numbers only. YEAR_FIRST is for years of two digits.

    >>> read_date("06/05/2024", order=DateOrder.DAY_FIRST)
    datetime.date(2024, 5, 6)
    """

    UNKNOWN = "unknown"
    DAY_FIRST = "day-first"
    MONTH_FIRST = "month-first"
    YEAR_FIRST = "year-first"


class Family(Word):
    """How the housing of a chamber is built.

    >>> read_chamber("bolt C").family
    <Family.BOLT: 'bolt'>
    """

    UNKNOWN = "unknown"
    CLAMP = "clamp"
    BOLT = "bolt"
    ROTOCHAMBER = "rotochamber"
    DD3 = "DD-3"


class StrokeClass(Word):
    """Standard or long stroke. A chamber without a known mark is unknown, and is judged as standard. A row of limits
    for every class has `any`; no chamber does.

    >>> read_chamber("30L").stroke_class
    <StrokeClass.LONG: 'long'>
    """

    UNKNOWN = "unknown"
    STANDARD = "standard"
    LONG = "long"
    ANY = "any"


class Evidence(Word):
    """How a figure was checked against its source. Only `checked` may be shown as law.

    >>> str(rule_set("us-fmcsr").limits[0].evidence)
    'checked'
    """

    NONE = "none"
    CHECKED = "checked"
    SECOND_HAND = "second-hand"
    FROM_MEMORY = "from-memory"


class Basis(Word):
    """What a limit rests on.

    >>> str(judge("30", "2 1/8", "4 1/8").basis)
    'table'
    """

    NONE = "none"
    TABLE = "table"
    RATED_SHARE = "rated-share"
    MARKED_LIMIT = "marked-limit"
    NOT_IN_FORCE = "not-in-force"


class Drum(Word):
    """Temperature of the brake drum when the stroke was read; a hot one lengthens the stroke.

    >>> "drum-hot" in judge("30", "2", "4 1/4", drum=Drum.HOT).reasons
    True
    """

    NOT_RECORDED = "not-recorded"
    COLD = "cold"
    WARM = "warm"
    HOT = "hot"


class Port(Word):
    """Shape of the bosses of the air ports. Square means long stroke; round proves nothing.

    >>> identify(stamp="30", port=Port.SQUARE).candidates[0].chamber.stroke_class
    <StrokeClass.LONG: 'long'>
    """

    NOT_SEEN = "not-seen"
    ROUND = "round"
    SQUARE = "square"


class Tag(Word):
    """Tag under a clamp bolt. A trapezoid means long stroke; no tag proves nothing.

    >>> identify(stamp="30", tag=Tag.TRAPEZOID).strict_limit
    Fraction(5, 2)
    """

    NOT_SEEN = "not-seen"
    NONE = "none"
    TRAPEZOID = "trapezoid"


class Clue(Word):
    """One of the things that can be seen of a chamber.

    >>> [str(clue) for clue in identify(stamp="30", port="square").candidates[0].clues_for]
    ['stamp', 'port shape']
    """

    STAMP = "stamp"
    FAMILY = "family"
    PORT = "port shape"
    TAG = "tag"
    RATED_STROKE = "rated stroke"
    DIAMETER = "diameter"


class Observation(Word):
    """What would distinguish the candidates best.

    >>> str(identify(diameter="8 1/8").next_observation)
    'family'
    """

    NOTHING = "nothing"
    FAMILY = "family"
    STAMP = "stamp"
    LONG_SIGN = "long-sign"
    RATED_STROKE = "rated-stroke"
    DIAMETER = "diameter"


class Side(Word):
    """A side of the vehicle.

    >>> read_position("2R").side
    <Side.RIGHT: 'right'>
    """

    UNKNOWN = "unknown"
    LEFT = "left"
    RIGHT = "right"


class Adjuster(Word):
    """Kind of slack adjuster. It changes no verdict; it changes what to do about it.

    >>> WheelEnd("1L", judge("30", "2", "3"), adjuster="automatic").adjuster
    <Adjuster.AUTOMATIC: 'automatic'>
    """

    NOT_RECORDED = "not-recorded"
    MANUAL = "manual"
    AUTOMATIC = "automatic"


class Defect(Word):
    """How one finding counts among the defective brakes.

    >>> str(judge("30", "2 1/8", "4 1/4").defect)
    'half'
    """

    NONE = "none"
    HALF = "half"
    FULL = "full"
    UNKNOWN = "unknown"


class Outcome(Word):
    """Whether the roadside criterion is met.

    >>> str(Tally(brakes=10, full=2).judge().outcome)
    'out-of-service'
    """

    UNDETERMINED = "undetermined"
    BELOW_CRITERION = "below-criterion"
    AMBIGUOUS = "ambiguous"
    OUT_OF_SERVICE = "out-of-service"


class Advice(Word):
    """What to do next about one wheel end.

    >>> end = WheelEnd("1L", judge("30", "2", "4 1/2"), adjuster="automatic")
    >>> str(judge_vehicle([end]).advice[0].advice)
    'find-fault'
    """

    NONE = "none"
    ADJUST = "adjust"
    FIND_FAULT = "find-fault"
    FIND_ADJUSTER = "find-adjuster"
    REPAIR = "repair"
    MEASURE = "measure"
    LOOK = "look"


class Mismatch(Word):
    """What does not match about an axle.

    >>> ends = [WheelEnd("1L", judge("20", "2", "3")), WheelEnd("1R", judge("24", "2", "3"))]
    >>> str(judge_vehicle(ends).axles[0].remarks[0].mismatch)
    'size-differs'
    """

    SIZE_DIFFERS = "size-differs"
    SPRING_DIFFERS = "spring-differs"
    FAMILY_DIFFERS = "family-differs"
    CLASS_DIFFERS = "class-differs"
    ARM_DIFFERS = "arm-differs"
    STROKES_DIFFER = "strokes-differ"
    TORQUE_DIFFERS = "torque-differs"
    END_MISSING = "end-missing"
    STEERING_DEAD = "steering-dead"


class Check(Word):
    """A check of the air system done in the cab.

    >>> str(judge_air("warning", pressure=62, rules="us-cdl").result)
    'good'
    """

    NONE = "none"
    WARNING = "warning"
    BUILD_UP = "build-up"
    CUT_OUT = "cut-out"
    CUT_IN = "cut-in"
    LOSS_RELEASED = "loss-released"
    LOSS_APPLIED = "loss-applied"
    RESERVE = "reserve"
    SPRING_BRAKE = "spring-brake"
    TRACTOR_PROTECTION = "tractor-protection"
    SUPPLY_VALVE = "supply-valve"
    PARKING_VALVE = "parking-valve"
    DRAIN = "drain"
    AUDIBLE_LEAK = "audible-leak"
    CONTAMINATION = "contamination"


class VehicleClass(Word):
    """Which vehicle an air check was made on.

    >>> str(judge_air("loss-released", before=120, after=118, vehicle=VehicleClass.SINGLE, rules="us-cdl").result)
    'defective'
    """

    ANY = "any"
    SINGLE = "single"
    COMBINATION = "combination"
    BUS = "bus"


class Comparison(Word):
    """How a measured figure must compare with the bound of a row.

    >>> str(rule_set("us-inuse").air_limits[0].comparison)
    'not-less-than'
    """

    LESS_THAN = "less-than"
    NOT_MORE_THAN = "not-more-than"
    MORE_THAN = "more-than"
    NOT_LESS_THAN = "not-less-than"
    BETWEEN = "between"
    MUST_BE_YES = "must-be-yes"
    MUST_BE_NO = "must-be-no"


class Measure(Word):
    """What the figures of an air check are measured in.

    >>> str(rule_set("us-inuse").air_limits[0].measure)
    'psi'
    """

    PSI = "psi"
    KPA = "kPa"
    SECONDS = "s"
    PSI_PER_MINUTE = "psi per minute"
    KPA_PER_MINUTE = "kPa per minute"
    PERCENT_LEFT = "% left"
    PERCENT_LOST = "% lost"
    YES_NO = "yes-no"


class AirKind(Word):
    """How a rule set ranks a row of air checks.

    >>> str(rule_set("us-inuse").air_limits[0].kind)
    'limit'
    """

    LIMIT = "limit"
    MAJOR = "major"
    USUAL = "usual"
    LIMIT_MAJOR = "limit-and-major"
    LIMIT_MINOR = "limit-and-minor"
    EITHER = "either"


class Span(Word):
    """What a build-up is timed over.

    >>> str(judge_air("build-up", span=Span.PRESSURES, rules="us-inuse").result)
    'not-done'
    """

    PRESSURES = "pressures"
    FROM_WARNING = "warning"
    FROM_APPLICATIONS = "applications"
    RECOVERY = "recovery"


class AirResult(Word):
    """The judgement of one air check.

    >>> str(judge_air("warning", pressure="59", rules="us-cdl").result)
    'defective'
    """

    NOT_DONE = "not-done"
    GOOD = "good"
    DEFECTIVE = "defective"
    UNDETERMINED = "undetermined"
    NOTED = "noted"


class AirMissing(Word):
    """What was missing where an air check is undetermined.

    >>> str(judge_air("loss-released", before=120, after="117 1/2", rules="us-cdl").missing)
    'vehicle'
    """

    NOTHING = "nothing"
    ROW = "row"
    VEHICLE = "vehicle"
    BUILT = "built"
    VOLUME = "volume"
    SPAN = "span"
    VALUE = "value"
    SENSE = "sense"
    CUT_OUT = "cut-out"
    APPLICATIONS = "applications"
    OTHER_WAY = "other-way"
