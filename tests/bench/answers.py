# SPDX-License-Identifier: Apache-2.0
"""Answers of `rodtravel batch` and of its rivals, read from their files to be compared."""
import csv
import json
from functools import lru_cache
from operator import itemgetter

import files

VISIT = ("unit_no", "date", "verdict", "brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined",
         "defective", "whole_needed")
inches = lru_cache(maxsize=None)(files.inches)


@lru_cache(maxsize=None)
def stroke_of(text, step):
    """In inches; swapped readings have none."""
    stroke = files.inches(text) * step if text else -1
    return stroke if stroke >= 0 else None


def read_columns(path, job, names):
    """The cells of some columns, row by row."""
    with open(path, newline="", encoding="utf-8") as file:
        if job == "ndjson":
            yield from map(itemgetter(*names), map(json.loads, file))
        else:
            rows = csv.reader(file)
            yield from map(itemgetter(*map(next(rows).index, names)), rows)


def of_rows(path, job, stroke_name, step):
    """Verdict and stroke of each row."""
    return [(verdict, stroke_of("" if stroke is None else str(stroke), step))
            for verdict, stroke in read_columns(path, job, ("verdict", stroke_name))]


def of_visits(path):
    """All counts of each vehicle and day; the order of the lines is free."""
    return sorted((unit, day, verdict, *map(inches, counts))
                  for unit, day, verdict, *counts in read_columns(path, "visits", VISIT))


def of_batch(path, job):
    return of_visits(path) if job == "visits" else of_rows(path, job, "applied_stroke", 1)


def of_rival(path, job, form):
    return of_visits(path) if job == "visits" else of_rows(path, job, "stroke", form.step)


def differences(ours, theirs):
    """What differs, in pairs; a line that one of them has not is a difference, too."""
    if len(ours) != len(theirs):
        return [(f"{len(ours)} lines", f"{len(theirs)} lines")]
    return [pair for pair in zip(ours, theirs) if pair[0] != pair[1]]
