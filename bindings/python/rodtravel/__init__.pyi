# SPDX-License-Identifier: Apache-2.0
# The whole public interface with its types; the meaning of each name is in its docstring.
import enum
from array import array
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any, ClassVar, Final, Protocol, SupportsIndex, Union, overload

from typing_extensions import Never, Self

_Number = Union[int, Fraction, Decimal]
_Exact = Union[str, int, Fraction, Decimal]
_Day = Union[date, str]

class _ArrowArray(Protocol):
    def __arrow_c_array__(self, requested_schema: Any = ...) -> tuple[Any, Any]: ...

class _ArrowStream(Protocol):
    def __arrow_c_stream__(self, requested_schema: Any = ...) -> Any: ...

class _ArrayLike(Protocol):
    def __array__(self) -> Any: ...

_Numbers = Union[_ArrowArray, _ArrowStream, _ArrayLike, memoryview, bytes, bytearray, array[int]]
_Texts = Union[_ArrowArray, _ArrowStream, _ArrayLike, Sequence[Union[str, None]]]

__all__ = [
    "Adjuster", "Advice", "AdviceNote", "AirFinding", "AirKind", "AirLimit", "AirMissing", "AirReading",
    "AirResult", "Answer", "Answers", "Axle", "AxleRemark", "Basis", "Candidate", "Chamber", "ChamberRow", "Check",
    "Clue", "Column", "Comparison", "Count", "CriterionPart", "DateOrder", "Defect", "Drum", "Error", "Evidence",
    "Family", "Finding", "Identification", "Limit", "LimitAnswer", "Measure", "NO_STROKE", "Observation", "Oddity",
    "Outcome", "Plan", "Port", "Position", "Proof", "Reason", "Record", "Rounding", "Rules", "Side", "Source",
    "Span", "Status", "StrokeClass", "Tag", "Tally", "UNITS_PER_64TH", "UNITS_PER_INCH", "UNITS_PER_MM",
    "UNITS_PER_PSI", "Unit", "VehicleClass", "VehicleFinding", "Verdict", "VolumeRow", "WheelEnd", "Word",
    "al_factor", "build_up_seconds", "chamber_rows", "check_title", "criterion_parts", "estimate_application",
    "estimate_applications", "identify", "inches_from_mm", "judge", "judge_air", "judge_columns", "judge_row",
    "judge_vehicle", "load_rules", "psi_from_kpa", "pushrod_force", "rated_volume", "read_chamber", "read_date",
    "read_length", "read_length_unit", "read_position", "read_pressure", "required_volume", "round_length",
    "rule_set", "rule_sets", "tables_edition", "volume_rows", "write_decimal", "write_length", "write_pressure",
]

__version__: Final[str]
tables_edition: Final[str]

# --- Errors

class Status(enum.IntEnum):
    ARGUMENT = 1
    SPACE = 2
    EMPTY = 10
    SYNTAX = 11
    AMBIGUOUS = 12
    UNIT = 13
    DATE_CELL = 14
    NEGATIVE = 15
    IMPLAUSIBLE = 16
    RANGE = 17
    UNKNOWN_RULES = 20
    UNKNOWN_CHAMBER = 21
    TABLE = 30
    LAXER = 31
    MEMORY = 40
    INTERNAL = 50

class Error(ValueError):
    status: Status
    text: str
    column: int | None
    line: int | None
    field: str | None
    def __init__(
        self, status: int, text: str, column: int | None = 0, line: int | None = 0, field: str | None = ""
    ) -> None: ...

# --- Words

class Word(str, enum.Enum):  # type: ignore[misc]
    def __new__(cls, value: str) -> Word: ...
    @property
    def number(self) -> int: ...

class Verdict(Word):
    UNDETERMINED = "undetermined"
    IN_ADJUSTMENT = "in-adjustment"
    OUT_OF_ADJUSTMENT = "out-of-adjustment"
    INOPERATIVE = "inoperative"

class Proof(Word):
    NOT_ASKED = "not-asked"
    PROVEN_WITHIN = "proven-within"
    PROVEN_OVER = "proven-over"
    NOT_RESOLVED = "not-resolved"

class Reason(Word):
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

class Unit(Word):
    INCH = "in"
    MM = "mm"
    CM = "cm"

class Rounding(Word):
    HALF_EVEN = "half-even"
    HALF_UP = "half-up"
    DOWN = "down"
    UP = "up"

class DateOrder(Word):
    UNKNOWN = "unknown"
    DAY_FIRST = "day-first"
    MONTH_FIRST = "month-first"

class Family(Word):
    UNKNOWN = "unknown"
    CLAMP = "clamp"
    BOLT = "bolt"
    ROTOCHAMBER = "rotochamber"
    DD3 = "DD-3"

class StrokeClass(Word):
    UNKNOWN = "unknown"
    STANDARD = "standard"
    LONG = "long"

class Evidence(Word):
    CHECKED = "checked"
    SECOND_HAND = "second-hand"
    FROM_MEMORY = "from-memory"

class Basis(Word):
    NONE = "none"
    TABLE = "table"
    RATED_SHARE = "rated-share"
    MARKED_LIMIT = "marked-limit"
    NOT_IN_FORCE = "not-in-force"

class Drum(Word):
    NOT_RECORDED = "not-recorded"
    COLD = "cold"
    WARM = "warm"
    HOT = "hot"

class Port(Word):
    NOT_SEEN = "not-seen"
    ROUND = "round"
    SQUARE = "square"

class Tag(Word):
    NOT_SEEN = "not-seen"
    NONE = "none"
    TRAPEZOID = "trapezoid"

class Clue(Word):
    STAMP = "stamp"
    FAMILY = "family"
    PORT = "port shape"
    TAG = "tag"
    RATED_STROKE = "rated stroke"
    DIAMETER = "diameter"

class Observation(Word):
    NOTHING = "nothing"
    FAMILY = "family"
    STAMP = "stamp"
    LONG_SIGN = "long-sign"
    RATED_STROKE = "rated-stroke"
    DIAMETER = "diameter"

class Side(Word):
    UNKNOWN = "unknown"
    LEFT = "left"
    RIGHT = "right"

class Adjuster(Word):
    NOT_RECORDED = "not-recorded"
    MANUAL = "manual"
    AUTOMATIC = "automatic"

class Defect(Word):
    NONE = "none"
    HALF = "half"
    FULL = "full"
    UNKNOWN = "unknown"

class Outcome(Word):
    UNDETERMINED = "undetermined"
    BELOW_CRITERION = "below-criterion"
    AMBIGUOUS = "ambiguous"
    OUT_OF_SERVICE = "out-of-service"

class Advice(Word):
    NONE = "none"
    ADJUST = "adjust"
    FIND_FAULT = "find-fault"
    FIND_ADJUSTER = "find-adjuster"
    REPAIR = "repair"
    MEASURE = "measure"
    LOOK = "look"

class Oddity(Word):
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
    NONE = ""
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
    ANY = "any"
    SINGLE = "single"
    COMBINATION = "combination"
    BUS = "bus"

class Comparison(Word):
    LESS_THAN = "less-than"
    NOT_MORE_THAN = "not-more-than"
    MORE_THAN = "more-than"
    NOT_LESS_THAN = "not-less-than"
    BETWEEN = "between"
    MUST_BE_YES = "must-be-yes"
    MUST_BE_NO = "must-be-no"

class Measure(Word):
    PSI = "psi"
    KPA = "kPa"
    SECONDS = "s"
    PSI_PER_MINUTE = "psi per minute"
    KPA_PER_MINUTE = "kPa per minute"
    PERCENT_LEFT = "% left"
    PERCENT_LOST = "% lost"
    YES_NO = ""

class AirKind(Word):
    LIMIT = "limit"
    MAJOR = "major"
    USUAL = "usual"
    LIMIT_MAJOR = "limit-and-major"
    LIMIT_MINOR = "limit-and-minor"

class Span(Word):
    PRESSURES = "pressures"
    FROM_WARNING = "from-warning"
    FROM_APPLICATIONS = "from-applications"
    RECOVERY = "recovery"

class AirResult(Word):
    NOT_DONE = "not-done"
    GOOD = "good"
    DEFECTIVE = "defective"
    UNDETERMINED = "undetermined"
    NOTED = "noted"

class AirMissing(Word):
    NOTHING = ""
    ROW = "row"
    VEHICLE = "vehicle"
    BUILT = "built"
    VOLUME = "volume"
    SPAN = "span"
    VALUE = "value"
    SENSE = "sense"
    CUT_OUT = "cut-out"
    APPLICATIONS = "applications"

# --- Lengths, pressures, days

def read_length(text: str, *, unit: Unit | str = "in", decimal_comma: bool = False) -> Fraction: ...
def read_length_unit(text: str, *, unit: Unit | str = "in", decimal_comma: bool = False) -> tuple[Fraction, Unit]: ...
def write_length(length: _Exact) -> str: ...
def write_decimal(
    length: _Exact, digits: int, *, unit: Unit | str = "in", rounding: Rounding | str = "half-even"
) -> str: ...
def round_length(length: _Exact, division: _Exact, *, rounding: Rounding | str = "half-even") -> Fraction: ...
def inches_from_mm(millimetres: _Number) -> Fraction: ...
def read_pressure(text: str, *, decimal_comma: bool = False) -> Fraction: ...
def write_pressure(pressure: _Exact) -> str: ...
def psi_from_kpa(kilopascals: _Number) -> Fraction: ...
def read_date(text: str, *, order: DateOrder | str = "unknown") -> date: ...

# --- Records

# What only functions make takes no argument.
class Record:
    def __init__(self, *_args: Never, **_words: Never) -> None: ...
    def asdict(self) -> dict[str, Any]: ...
    def __copy__(self) -> Self: ...
    def __deepcopy__(self, _memo: Any) -> Self: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Source(Record):
    @property
    def id(self) -> str: ...
    @property
    def body(self) -> str: ...
    @property
    def document(self) -> str: ...
    @property
    def section(self) -> str: ...
    @property
    def edition(self) -> str: ...
    @property
    def address(self) -> str: ...

class Limit(Record):
    @property
    def family(self) -> Family: ...
    @property
    def stroke_class(self) -> StrokeClass: ...
    @property
    def size(self) -> str: ...
    @property
    def rated_stroke(self) -> Fraction | None: ...
    @property
    def rated_stroke_mm(self) -> Fraction | None: ...
    @property
    def limit(self) -> Fraction: ...
    @property
    def published(self) -> str: ...
    @property
    def printed_mm(self) -> Fraction | None: ...
    @property
    def valid_from(self) -> date | None: ...
    @property
    def valid_until(self) -> date | None: ...
    @property
    def source(self) -> Source: ...
    @property
    def evidence(self) -> Evidence: ...

class AirLimit(Record):
    @property
    def check(self) -> Check: ...
    @property
    def kind(self) -> AirKind: ...
    @property
    def vehicle(self) -> VehicleClass: ...
    @property
    def towed_units(self) -> int: ...
    @property
    def towed_or_more(self) -> bool: ...
    @property
    def comparison(self) -> Comparison: ...
    @property
    def measure(self) -> Measure: ...
    @property
    def value(self) -> Fraction | None: ...
    @property
    def upper(self) -> Fraction | None: ...
    @property
    def per_towed_unit(self) -> Fraction | None: ...
    @property
    def span(self) -> Span: ...
    @property
    def start(self) -> Fraction | None: ...
    @property
    def stop(self) -> Fraction | None: ...
    @property
    def applications(self) -> int: ...
    @property
    def by_volume(self) -> bool: ...
    @property
    def half_cut_out(self) -> bool: ...
    @property
    def below_cut_out(self) -> bool: ...
    @property
    def built_from(self) -> date | None: ...
    @property
    def built_until(self) -> date | None: ...
    @property
    def published(self) -> str: ...
    @property
    def setup(self) -> str: ...
    @property
    def source(self) -> Source: ...
    @property
    def evidence(self) -> Evidence: ...
    @property
    def edge(self) -> str: ...

class LimitAnswer(Record):
    @property
    def basis(self) -> Basis: ...
    @property
    def limit(self) -> Fraction | None: ...
    @property
    def law_limit(self) -> Fraction | None: ...
    @property
    def row(self) -> Limit | None: ...
    @property
    def own_row(self) -> Limit | None: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def evidence(self) -> Evidence: ...
    @property
    def assumed_clamp(self) -> bool: ...
    @property
    def assumed_standard(self) -> bool: ...
    @property
    def conflicting_marks(self) -> bool: ...

class Rules:
    def __init__(self, *_args: Never, **_words: Never) -> None: ...
    @property
    def id(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def authority(self) -> str: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def evidence(self) -> Evidence: ...
    @property
    def valid_from(self) -> date | None: ...
    @property
    def valid_until(self) -> date | None: ...
    @property
    def law(self) -> Rules | None: ...
    @property
    def at_limit_passes(self) -> bool: ...
    @property
    def pressure_window(self) -> tuple[Fraction, Fraction] | None: ...
    @property
    def pressure_source(self) -> Source | None: ...
    @property
    def pressure_evidence(self) -> Evidence: ...
    @property
    def rated_share(self) -> Fraction | None: ...
    @property
    def limits(self) -> tuple[Limit, ...]: ...
    @property
    def air_limits(self) -> tuple[AirLimit, ...]: ...
    def __copy__(self) -> Self: ...
    def __deepcopy__(self, _memo: Any) -> Self: ...
    def find_limit(self, chamber: Chamber | str, day: _Day | None = None) -> LimitAnswer: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

def rule_set(id: Rules | str = "us-fmcsr") -> Rules: ...
def rule_sets() -> tuple[Rules, ...]: ...
def load_rules(text: str, name: str = "own limits", law: Rules | str = "us-fmcsr") -> Rules: ...

class Chamber(Record):
    def __init__(
        self,
        size: str | None = None,
        *,
        family: Family | str = "unknown",
        stroke_class: StrokeClass | str = "unknown",
        spring_size: str | None = None,
        rated_stroke: _Exact | None = None,
        marked_limit: _Exact | None = None,
    ) -> None: ...
    @property
    def family(self) -> Family: ...
    @property
    def stroke_class(self) -> StrokeClass: ...
    @property
    def size(self) -> str | None: ...
    @property
    def spring_size(self) -> str | None: ...
    @property
    def rated_stroke(self) -> Fraction | None: ...
    @property
    def marked_limit(self) -> Fraction | None: ...

def read_chamber(text: str) -> Chamber: ...

class ChamberRow(Record):
    @property
    def family(self) -> Family: ...
    @property
    def size(self) -> str: ...
    @property
    def outside_diameter(self) -> Fraction | None: ...
    @property
    def outside_diameter_mm(self) -> Fraction | None: ...
    @property
    def standard_rated_stroke(self) -> Fraction | None: ...
    @property
    def source(self) -> Source | None: ...

def chamber_rows() -> tuple[ChamberRow, ...]: ...

class Candidate(Record):
    @property
    def chamber(self) -> Chamber: ...
    @property
    def limit(self) -> Fraction | None: ...
    @property
    def diameter(self) -> Fraction | None: ...
    @property
    def diameter_distance(self) -> Fraction | None: ...
    @property
    def clues_for(self) -> tuple[Clue, ...]: ...
    @property
    def clues_against(self) -> tuple[Clue, ...]: ...

class Identification(Record):
    @property
    def candidates(self) -> tuple[Candidate, ...]: ...
    @property
    def strict_limit(self) -> Fraction | None: ...
    @property
    def contradiction(self) -> tuple[Clue, ...]: ...
    @property
    def settle_by(self) -> Observation: ...
    @property
    def advice(self) -> str: ...

def identify(
    *,
    stamp: Chamber | str | None = None,
    family: Family | str = "unknown",
    port: Port | str = "not-seen",
    tag: Tag | str = "not-seen",
    rated_stroke: _Exact | None = None,
    diameter: _Exact | None = None,
    diameter_division: _Exact | None = None,
    rules: Rules | str = "us-fmcsr",
    day: _Day | None = None,
) -> Identification: ...

# --- Findings

class Finding(Record):
    @property
    def verdict(self) -> Verdict: ...
    @property
    def proof(self) -> Proof: ...
    @property
    def reasons(self) -> tuple[Reason, ...]: ...
    @property
    def chamber(self) -> Chamber: ...
    @property
    def released(self) -> Fraction | None: ...
    @property
    def applied(self) -> Fraction | None: ...
    @property
    def applied_stroke(self) -> Fraction | None: ...
    @property
    def limit(self) -> Fraction | None: ...
    @property
    def law_limit(self) -> Fraction | None: ...
    @property
    def margin(self) -> Fraction | None: ...
    @property
    def long_limit(self) -> Fraction | None: ...
    @property
    def unit(self) -> Unit: ...
    @property
    def division(self) -> Fraction | None: ...
    @property
    def probability_over(self) -> Fraction | None: ...
    @property
    def pressure(self) -> Fraction | None: ...
    @property
    def pressure_after(self) -> Fraction | None: ...
    @property
    def day(self) -> date | None: ...
    @property
    def other_day(self) -> date | None: ...
    @property
    def basis(self) -> Basis: ...
    @property
    def evidence(self) -> Evidence: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def rules(self) -> Rules: ...
    @property
    def limit_row(self) -> Limit | None: ...
    @property
    def own_row(self) -> Limit | None: ...
    @property
    def sentence(self) -> str: ...
    @property
    def proof_sentence(self) -> str: ...
    @property
    def sentences(self) -> tuple[str, ...]: ...
    @property
    def defect(self) -> Defect: ...

def judge(
    chamber: Chamber | str,
    released: _Exact,
    applied: _Exact,
    *,
    stroke_class: StrokeClass | str | None = None,
    rated_stroke: _Exact | None = None,
    marked_limit: _Exact | None = None,
    pressure: _Exact | None = None,
    pressure_after: _Exact | None = None,
    division: _Exact | None = None,
    day: _Day | None = None,
    unit: Unit | str = "in",
    engine_running: bool | None = None,
    spring_brake_applied: bool | None = None,
    drum: Drum | str | None = None,
    rules: Rules | str = "us-fmcsr",
    decimal_comma: bool = False,
) -> Finding: ...
def judge_row(
    *,
    chamber: Chamber | str | None = None,
    released: _Exact | None = None,
    applied: _Exact | None = None,
    stroke_class: StrokeClass | str | None = None,
    rated_stroke: _Exact | None = None,
    marked_limit: _Exact | None = None,
    pressure: _Exact | None = None,
    pressure_after: _Exact | None = None,
    division: _Exact | None = None,
    day: _Day | None = None,
    unit: str | None = None,
    engine: str | None = None,
    spring_brake: str | None = None,
    drum: str | None = None,
    rules: Rules | str = "us-fmcsr",
    form_unit: Unit | str = "in",
    decimal_comma: bool = False,
    date_order: DateOrder | str = "unknown",
    default_day: _Day | None = None,
) -> tuple[Finding, Error | None]: ...
def pushrod_force(chamber: Chamber | str, pressure: _Exact) -> Fraction: ...
def al_factor(chamber: Chamber | str, arm_length: _Exact) -> Fraction: ...

# --- Vehicles

class Position(Record):
    def __init__(self, axle: int, side: Side | str) -> None: ...
    @property
    def axle(self) -> int: ...
    @property
    def side(self) -> Side: ...

def read_position(text: str) -> Position: ...

class Count(Record):
    @property
    def outcome(self) -> Outcome: ...
    @property
    def brakes(self) -> int: ...
    @property
    def unmeasured(self) -> int: ...
    @property
    def tally(self) -> Tally: ...
    @property
    def defective(self) -> Fraction: ...
    @property
    def share(self) -> Fraction | None: ...
    @property
    def worst_share(self) -> Fraction | None: ...
    @property
    def known_share(self) -> Fraction | None: ...
    @property
    def criterion(self) -> Fraction: ...
    @property
    def whole_needed(self) -> int: ...
    @property
    def sentence(self) -> str: ...

class Tally(Record):
    def __init__(
        self, brakes: int = 0, full: int = 0, half: int = 0, unknown: int = 0, inoperative: int = 0
    ) -> None: ...
    @property
    def brakes(self) -> int: ...
    @property
    def full(self) -> int: ...
    @property
    def half(self) -> int: ...
    @property
    def unknown(self) -> int: ...
    @property
    def inoperative(self) -> int: ...
    def __add__(self, finding: Finding) -> Tally: ...
    def judge(self, brakes: int | None = None) -> Count: ...

class CriterionPart(Record):
    @property
    def words(self) -> str: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def evidence(self) -> Evidence: ...

def criterion_parts() -> tuple[CriterionPart, ...]: ...

class WheelEnd(Record):
    def __init__(
        self,
        position: Position | str,
        finding: Finding,
        *,
        adjuster: Adjuster | str = "not-recorded",
        arm_length: _Exact | None = None,
    ) -> None: ...
    @property
    def position(self) -> Position: ...
    @property
    def finding(self) -> Finding: ...
    @property
    def adjuster(self) -> Adjuster: ...
    @property
    def arm_length(self) -> Fraction | None: ...

class AxleRemark(Record):
    @property
    def oddity(self) -> Oddity: ...
    @property
    def sentence(self) -> str: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def evidence(self) -> Evidence: ...

class Axle(Record):
    @property
    def axle(self) -> int: ...
    @property
    def remarks(self) -> tuple[AxleRemark, ...]: ...
    @property
    def left(self) -> int | None: ...
    @property
    def right(self) -> int | None: ...
    @property
    def stroke_difference(self) -> Fraction | None: ...
    @property
    def al_left(self) -> Fraction | None: ...
    @property
    def al_right(self) -> Fraction | None: ...

class AdviceNote(Record):
    @property
    def advice(self) -> Advice: ...
    @property
    def sentence(self) -> str: ...
    @property
    def source(self) -> Source | None: ...
    @property
    def evidence(self) -> Evidence: ...

class VehicleFinding(Record):
    @property
    def count(self) -> Count: ...
    @property
    def in_adjustment(self) -> int: ...
    @property
    def out_of_adjustment(self) -> int: ...
    @property
    def inoperative(self) -> int: ...
    @property
    def undetermined(self) -> int: ...
    @property
    def odd_axles(self) -> int: ...
    @property
    def mixed_days(self) -> int: ...
    @property
    def axles(self) -> tuple[Axle, ...]: ...
    @property
    def advice(self) -> tuple[AdviceNote, ...]: ...

def judge_vehicle(ends: Iterable[WheelEnd], *, brakes: int | None = None) -> VehicleFinding: ...

# --- Air

class AirReading(Record):
    @property
    def check(self) -> Check: ...
    @property
    def vehicle(self) -> VehicleClass: ...
    @property
    def span(self) -> Span: ...
    @property
    def answer(self) -> bool | None: ...
    @property
    def towed_units(self) -> int: ...
    @property
    def applications(self) -> int: ...
    @property
    def built(self) -> date | int | None: ...
    @property
    def pressure(self) -> Fraction | None: ...
    @property
    def before(self) -> Fraction | None: ...
    @property
    def after(self) -> Fraction | None: ...
    @property
    def cut_out(self) -> Fraction | None: ...
    @property
    def seconds(self) -> Fraction | None: ...
    @property
    def actual_volume(self) -> Fraction | None: ...
    @property
    def required_volume(self) -> Fraction | None: ...

class AirFinding(Record):
    @property
    def result(self) -> AirResult: ...
    @property
    def missing(self) -> AirMissing: ...
    @property
    def major(self) -> bool: ...
    @property
    def minor(self) -> bool: ...
    @property
    def at_limit(self) -> bool: ...
    @property
    def reading(self) -> AirReading: ...
    @property
    def measured(self) -> Fraction | None: ...
    @property
    def allowed(self) -> Fraction | None: ...
    @property
    def row(self) -> AirLimit | None: ...
    @property
    def sentence(self) -> str: ...
    @property
    def edge(self) -> str: ...

def judge_air(
    check: Check | str,
    *,
    vehicle: VehicleClass | str = "any",
    span: Span | str = "pressures",
    answer: bool | None = None,
    towed_units: int = 0,
    applications: int = 0,
    built: date | str | int | None = None,
    pressure: _Exact | None = None,
    before: _Exact | None = None,
    after: _Exact | None = None,
    cut_out: _Exact | None = None,
    seconds: _Number | None = None,
    actual_volume: _Number | None = None,
    required_volume: _Number | None = None,
    rules: Rules | str = "us-fmcsr",
) -> AirFinding: ...
def check_title(check: Check | str) -> str: ...

class VolumeRow(Record):
    @property
    def size(self) -> str: ...
    @property
    def stroke_from(self) -> Fraction: ...
    @property
    def stroke_until(self) -> Fraction: ...
    @property
    def volume(self) -> Fraction: ...
    @property
    def source(self) -> Source: ...

def volume_rows() -> tuple[VolumeRow, ...]: ...
def rated_volume(chamber: Chamber | str) -> Fraction: ...
def required_volume(chambers: _Number, *, trailer: bool = False) -> Fraction: ...
def build_up_seconds(actual: _Number, required: _Number) -> Fraction: ...
def estimate_application(
    pressure: _Exact, reservoir: _Number, chambers: _Number, fill: _Number = 1
) -> Fraction: ...
def estimate_applications(
    pressure: _Exact, floor: _Exact, reservoir: _Number, chambers: _Number, fill: _Number = 1
) -> int: ...

# --- Columns

UNITS_PER_INCH: Final = 5080000
UNITS_PER_64TH: Final = 79375
UNITS_PER_MM: Final = 200000
UNITS_PER_PSI: Final = 1000
NO_STROKE: Final = -1

class Column:
    def __init__(self, *_args: Never, **_words: Never) -> None: ...
    @property
    def name(self) -> str: ...
    @property
    def view(self) -> memoryview: ...
    def __len__(self) -> int: ...
    @overload
    def __getitem__(self, row: SupportsIndex) -> int: ...
    @overload
    def __getitem__(self, row: slice) -> memoryview: ...
    def __eq__(self, other: object) -> bool: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __iter__(self) -> Iterator[int]: ...
    def __buffer__(self, flags: int) -> memoryview: ...
    def __array__(self, dtype: Any = None, copy: bool | None = None) -> Any: ...
    def __arrow_c_schema__(self) -> Any: ...
    def __arrow_c_array__(self, requested_schema: Any = None) -> tuple[Any, Any]: ...

class Answer(Record):
    @property
    def applied_stroke(self) -> Fraction | None: ...
    @property
    def verdict(self) -> Verdict: ...
    @property
    def reasons(self) -> tuple[Reason, ...]: ...

class Answers:
    def __init__(self, *_args: Never, **_words: Never) -> None: ...
    @property
    def stroke(self) -> Column: ...
    @property
    def verdict(self) -> Column: ...
    @property
    def reasons(self) -> Column: ...
    @property
    def flags(self) -> Column: ...
    def __len__(self) -> int: ...
    @overload
    def __getitem__(self, row: SupportsIndex) -> Answer: ...
    @overload
    def __getitem__(self, row: slice) -> Answers: ...
    def __eq__(self, other: object) -> bool: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __iter__(self) -> Iterator[Answer]: ...
    def counts(self) -> dict[Verdict, int]: ...
    def __arrow_c_schema__(self) -> Any: ...
    def __arrow_c_array__(self, requested_schema: Any = None) -> tuple[Any, Any]: ...
    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any: ...

class Plan:
    def __init__(
        self,
        rules: Rules | str = "us-fmcsr",
        *,
        unit: Unit | str = "in",
        day: _Day | None = None,
        pressure: _Exact | None = None,
        pressure_after: _Exact | None = None,
        engine_running: bool | None = None,
        spring_brake_applied: bool | None = None,
        drum: Drum | str | None = None,
    ) -> None: ...
    @property
    def rules(self) -> Rules: ...
    def add(self, chamber: Chamber | str) -> int: ...
    def judge(
        self,
        released: _Numbers,
        applied: _Numbers,
        chamber: _Numbers | _Texts,
        *,
        pressure: _Numbers | None = None,
        day: _Numbers | None = None,
        out: Sequence[Any] | None = None,
    ) -> Answers: ...

def judge_columns(
    table: _ArrowStream | _ArrowArray | Mapping[str, Any] | Any | None = None,
    *,
    chamber: _Texts | None = None,
    released: _Texts | None = None,
    applied: _Texts | None = None,
    stroke_class: _Texts | None = None,
    rated_stroke: _Texts | None = None,
    marked_limit: _Texts | None = None,
    pressure: _Texts | None = None,
    pressure_after: _Texts | None = None,
    division: _Texts | None = None,
    day: _Texts | None = None,
    unit: _Texts | None = None,
    engine: _Texts | None = None,
    spring_brake: _Texts | None = None,
    drum: _Texts | None = None,
    rules: Rules | str = "us-fmcsr",
    form_unit: Unit | str = "in",
    decimal_comma: bool = False,
    date_order: DateOrder | str = "unknown",
    default_day: _Day | None = None,
    default_pressure: _Exact | None = None,
    out: Sequence[Any] | None = None,
) -> Answers: ...
