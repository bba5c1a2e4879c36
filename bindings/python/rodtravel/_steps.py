# SPDX-License-Identifier: Apache-2.0
"""The steps of an inspection as they are said aloud."""
from __future__ import annotations

from datetime import date
from itertools import count
from typing import NamedTuple

from . import _rodtravel as _low
from ._enums import Step, VehicleClass, from_number, number_of
from ._record import raw
from ._rules import AirLimit, Rules, rule_set


class StepText(NamedTuple):
    """One step, by one row of the rule set.

    >>> print(steps("ca-on", vehicle="single")[3].defective)
    It would be defective if the warning came on too late (below 55 psi), or did not come on at all. That is a major defect.
    """

    step: Step
    row: AirLimit | None
    title: str
    do: str
    see: str
    good: str
    defective: str


def steps(rules: Rules | str = "us-fmcsr", *, vehicle: VehicleClass | str = "any", towed_units: int = 0,
          built: date | str | int | None = None) -> tuple[StepText, ...]:
    """Every step of an inspection by `rules`, in its order: what one does, what one sees, why it is good, and what would
    have been defective. A step with several rows, one for each vehicle that is not ruled out, comes once for each.

    Raises Error for a word that there is not.

    >>> [text.title for text in steps("ca-on")][:3]
    ['Securing the vehicle', 'Draining the reservoirs', 'Compressor and belt']
    """
    of, kind = rule_set(rules), number_of(VehicleClass, vehicle, "vehicle")
    reading = raw("rodt_air_reading", vehicle=kind, towed_units=towed_units, built=built)
    found = []
    for index in range(_low.rodt_step_count(of._kept, kind)):
        step = _low.rodt_step_at(of._kept, kind, index)
        for number in count():
            row = _low.rodt_step_row_at(step, of._kept, reading, number)
            if row is None and number > 0:
                break
            texts = (_low.rodt_step_text_at(step, part, of._kept, reading, number) for part in range(5))
            found.append(StepText(from_number(Step)(step), None if row is None else AirLimit._read(row), *texts))
    return tuple(found)
