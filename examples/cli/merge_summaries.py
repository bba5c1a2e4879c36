# SPDX-License-Identifier: Apache-2.0
"""Adds up what `rodtravel batch --summary --json` said of the parts of a fleet: as if all had been one file.

    python3 merge_summaries.py PART.json...

Counts are added; percentiles are found again in the added steps, by nearest rank, so they are exact. Vehicles are only
added up: an inspection whose rows stand in two parts counts in both."""
import json
import sys

POINTS = {"p50": 50, "p90": 90, "p99": 99, "most": 100}


def beyond(step):
    """Steps in their order; null is beyond all others."""
    return (step is None, step or 0)


def add_used(one, other):
    steps = dict(map(tuple, one["steps"]))
    for step, count in other["steps"]:
        steps[step] = steps.get(step, 0) + count
    counted, passed, found = sum(steps.values()), 0, {}
    for step in sorted(steps, key=beyond):
        passed += steps[step]
        found.update({name: step for name, percent in POINTS.items() if name not in found and passed * 100 >= counted * percent})
    return {"counted": counted, **found, "steps": [[step, steps[step]] for step in sorted(steps, key=beyond)]}


def add(one, other):
    """Two parts of an answer, member by member."""
    if isinstance(one, dict) and "steps" in one:
        return add_used(one, other)
    if isinstance(one, dict):
        return {key: add(one[key], other[key]) if key in one and key in other else one.get(key, other.get(key))
                for key in dict.fromkeys([*one, *other])}
    if isinstance(one, list):  # of chambers
        chambers = {chamber["chamber"]: chamber for chamber in one}
        for chamber in other:
            name = chamber["chamber"]
            same = chambers.get(name)
            chambers[name] = {**add({**same, "chamber": 0}, {**chamber, "chamber": 0}), "chamber": name} if same else chamber
        return list(chambers.values())
    if isinstance(one, int):
        return one + other
    if one != other:
        sys.exit(f"the parts were judged by different rules or days: {one}, {other}")
    return one


def merge(parts):
    total = parts[0]
    for part in parts[1:]:
        total = add(total, part)
    return total


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    texts = []
    for path in sys.argv[1:]:
        with open(path, encoding="utf-8") as file:
            texts.append(json.load(file))
    print(json.dumps(merge(texts)))
