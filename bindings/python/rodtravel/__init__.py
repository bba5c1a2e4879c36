# SPDX-License-Identifier: Apache-2.0
"""Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly.

>>> finding = judge("30L", "2 3/4", "5 5/16", psi=95)
>>> str(finding.verdict)
'out-of-adjustment'

Numbers are fractions.Fraction in inches and psi. Text, int, Fraction and Decimal are accepted; binary floats are refused.
All that is refused is an Error, a ValueError with `status`, `column` and `field`. Objects are read-only values.

Chock the wheels. Never get under a vehicle that can roll. Never open a spring brake. The cited law and a licensed
inspector decide.
"""
from ._rodtravel import rodt_tables_edition as _edition, rodt_version as _version
from ._enums import (Adjuster, Advice, AirKind, AirMissing, AirResult, Basis, Check, Clue, Comparison, DateOrder, Defect,
                     Drum, Evidence, Family, Measure, Mismatch, Observation, Outcome, Port, PressureUnit, Proof, Reason,
                     Rounding, Side, Span, Step, StrokeClass, Tag, Unit, VehicleClass, Verdict, Word)
from ._error import Error, Status
from ._record import Record
from ._source import Source
from ._lengths import (inches_from_mm, psi_from_kpa, read_date, read_length, read_length_unit, read_pressure,
                       read_pressure_unit, round_length, write_decimal, write_length, write_pressure)
from ._chambers import Chamber, ChamberRow, chamber_rows, read_chamber
from ._rules import AirLimit, Limit, LimitAnswer, Rules, load_rules, rule_set, rule_sets
from ._identify import Candidate, Identification, identify
from ._findings import Finding, al_factor, judge, judge_row, pushrod_force
from ._vehicles import (AdviceNote, Axle, AxleRemark, Count, CriterionPart, Position, Tally, VehicleFinding, WheelEnd,
                        criterion_parts, judge_vehicle, read_position)
from ._air import (AirFinding, AirReading, VolumeRow, build_up_seconds, check_title, estimate_application,
                   estimate_applications, judge_air, rated_volume, required_volume, volume_rows)
from ._steps import StepText, steps
from ._catalogue import Catalogue, catalogue, english_sentences
from ._answers import NO_LIMIT, NO_MARGIN, NO_STROKE, PARTS_PER_INCH, UNITS_PER_64TH, UNITS_PER_INCH, UNITS_PER_MM, UNITS_PER_PSI, Answer, Answers, Column
from ._tables import UnreadColumnWarning
from ._columns import Plan, judge_columns
from ._inspections import Inspection, Inspections
from ._judge import Judge
from ._plots import plot_limit, plot_map, plot_used
from ._sqlite import register_sqlite
from ._summary import Summary

__version__: str = _version()
tables_edition: str = _edition()
"""Day on which the last row of the tables was changed or read again in its source, ISO."""

__all__ = [
    "Adjuster", "Advice", "AdviceNote", "AirFinding", "AirKind", "AirLimit", "AirMissing", "AirReading",
    "AirResult", "Answer", "Answers", "Axle", "AxleRemark", "Basis", "Candidate", "Catalogue", "Chamber", "ChamberRow",
    "Check",
    "Clue", "Column", "Comparison", "Count", "CriterionPart", "DateOrder", "Defect", "Drum", "Error", "Evidence",
    "Family", "Finding", "Identification", "Inspection", "Inspections", "Judge", "Limit", "LimitAnswer", "Measure", "Mismatch", "NO_LIMIT", "NO_MARGIN",
    "NO_STROKE",
    "Observation", "Outcome", "PARTS_PER_INCH", "Plan", "Port", "Position", "PressureUnit", "Proof", "Reason", "Record", "Rounding", "Rules", "Side",
    "Source", "Span", "Status", "Step", "StepText", "StrokeClass", "Summary", "Tag", "Tally", "UNITS_PER_64TH", "UNITS_PER_INCH", "UNITS_PER_MM",
    "UNITS_PER_PSI", "Unit", "UnreadColumnWarning", "VehicleClass", "VehicleFinding", "Verdict", "VolumeRow",
    "WheelEnd", "Word", "al_factor", "build_up_seconds", "catalogue", "chamber_rows", "check_title", "criterion_parts",
    "english_sentences",
    "estimate_application", "estimate_applications", "identify", "inches_from_mm", "judge", "judge_air",
    "judge_columns", "judge_row", "judge_vehicle", "load_rules", "plot_limit", "plot_map", "plot_used", "psi_from_kpa", "pushrod_force", "rated_volume",
    "read_chamber", "read_date", "read_length", "read_length_unit", "read_position", "read_pressure",
    "read_pressure_unit", "register_sqlite", "required_volume", "round_length", "rule_set", "rule_sets", "steps", "tables_edition", "volume_rows", "write_decimal",
    "write_length", "write_pressure",
]

for _name in __all__:
    if hasattr(globals()[_name], "__module__") and isinstance(globals()[_name], type):
        globals()[_name].__module__ = __name__
del _name
