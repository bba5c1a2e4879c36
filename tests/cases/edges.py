# SPDX-License-Identifier: Apache-2.0
"""Every figure of the tables has cases just below it, at it and just above it, and beside each case stands where the
figure is published.

Arguments: the folder of the tables, the folder of the cases. Prints TAP."""
import csv
import datetime
import pathlib
import sys
from fractions import Fraction

KPA = Fraction("0.45359237") * Fraction("9.80665") / Fraction("0.0254") ** 2 / 1000  # kPa of one psi
SPANS = ("warning", "applications", "recovery")
STEP = Fraction(1)  # how near to a figure of an air check "just" is, in the measure of its row


def load(path):
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if line.strip() and not line.startswith("#")))


def number(text):
    """2 1/4 or 44.5 as a fraction; none for an empty cell."""
    return sum(map(Fraction, text.split())) if text else None


def psi(text):
    return None if not text else number(text[:-4]) / KPA if text.endswith(" kPa") else number(text.removesuffix(" psi"))


def days(text, last=False):
    if len(text) == 4:
        text += "-12-31" if last else "-01-01"
    return datetime.date.fromisoformat(text)


# --- Air checks ------------------------------------------------------------------------------------------------------

def towed_units(case):
    return int(case["towed"] or (1 if case["vehicle"] == "combination" else 0))


def is_for_vehicle(row, case):
    towed = towed_units(case)
    if row["vehicle"] == "combination":
        wanted = int(row["towed"][0]) if row["towed"] else towed
        return towed > 0 and (towed >= wanted if row["towed"].endswith("+") else towed == wanted)
    return row["vehicle"] in ("any", case["vehicle"])


def is_for_day(row, case):
    if not (row["built_from"] or row["built_until"]):
        return True
    return (case["built"] != "" and (not row["built_from"] or days(row["built_from"]) <= days(case["built"])) and
            (not row["built_until"] or days(case["built"], True) <= days(row["built_until"])))


def is_for_span(row, case):
    if row["check"] != "build-up":
        return row["check"] != "reserve" or (case["applications"] or "1") == row["applications"]
    if row["start"] in SPANS:
        return case["span"] == row["start"]
    ends = [(psi(case[name]), psi(row[end]), psi(row[end + "_kpa"])) for name, end in (("before", "start"), ("after", "stop"))]
    return case["span"] == "" and all(read is not None and read in wanted for read, *wanted in ends)


def measured(row, case):
    """What the case measures, in the measure of the row; none if it says nothing of it."""
    measure, pressure = row["measure"], psi(case["pressure"])
    if measure == "seconds":
        return number(case["seconds"])
    if measure in ("psi", "kPa"):
        if row["by"] == "below-cut-out" and case["cut_out"]:
            pressure = psi(case["cut_out"]) - pressure
        return None if pressure is None else pressure * (KPA if measure == "kPa" else 1)
    if not case["before"] or not case["after"]:
        return None
    before, after = psi(case["before"]), psi(case["after"])
    if measure.startswith("percent"):
        return (after if measure == "percent-left" else before - after) * 100 / before
    rate = (before - after) * 60 / (number(case["seconds"]) or 60)
    return rate * (KPA if measure == "kPa-per-minute" else 1)


def bound(row, name, case):
    """The figure of the row as it is for the case; none if the case does not ask for it."""
    value = number(row["value"])
    if name == "upper":
        return number(row["upper"])
    if name == "half":
        return psi(case["cut_out"]) / 2 if case["cut_out"] else None
    if name == "per_towed":
        more = towed_units(case) - 1
        return value + more * number(row["per_towed"]) if more > 0 else None
    if row["per_towed"] and towed_units(case) != 1:
        return None
    if row["by"] == "half-cut-out" and case["cut_out"] and psi(case["cut_out"]) / 2 < value:
        return None
    if row["by"] == "volume":
        return value * number(case["actual_volume"]) / number(case["required_volume"]) if case["actual_volume"] else None
    return value


def figures(row):
    names = [name for name in ("value", "upper", "per_towed") if row[name]]
    if row["value"] and row["value"] == row["upper"]:
        names.remove("upper")
    return names + (["half"] if row["by"] == "half-cut-out" else [])


def sides(distances, step):
    """Which of below, at and above there is no distance for."""
    has = {"below": any(-step <= d < 0 for d in distances), "at": 0 in distances, "above": any(0 < d <= step for d in distances)}
    return [side for side, found in has.items() if not found]


def air_gaps(row, cases):
    fitting = [case for case in cases if (case["rules"], case["check"]) == (row["rules"], row["check"]) and
               is_for_vehicle(row, case) and is_for_day(row, case)]
    if row["measure"] == "yes-no":
        return [f"answer {answer}" for answer in ("yes", "no") if not any(case["answer"] == answer for case in fitting)]
    gaps = []
    for name in figures(row):
        distances = [measured(row, case) - bound(row, name, case) for case in fitting if is_for_span(row, case) and
                     measured(row, case) is not None and bound(row, name, case) is not None]
        gaps += [f"{side} {name} {row[name] if name in row else ''}" for side in sides(distances, STEP)]
    return gaps


# --- Limits and the vehicle ------------------------------------------------------------------------------------------

def limit_gaps(row, cases):
    fitting = [case for case in cases if case["rules"] == row["rules"] and
               all(case[name] == row[name] for name in ("family", "size", "class", "rated_stroke")) and
               (case["as_of"] or "9999-12-31") >= row["from"] and (case["as_of"] or "9999-12-31") <= (row["until"] or "9999-12-31")]
    return sides([number(case["stroke"]) - number(row["limit"]) for case in fitting], Fraction(1, 16))


VEHICLE_STEPS = {"share": Fraction(1, 40), "full_from": Fraction(1, 64), "axle_size": Fraction(6), "axle_arm": Fraction(1, 16)}


def vehicle_gaps(row, cases):
    distances = [number(case["measured"]) - number(row["value"]) for case in cases if case["part"] == row["part"]]
    gaps = sides(distances, VEHICLE_STEPS.get(row["part"], Fraction(1)))
    return [gap for gap in gaps if gap != "below" or number(row["value"]) > 0]


CHECKS = (("aircheck.csv", "air_edges.csv", air_gaps, ("rules", "check", "published")),
          ("limits.csv", "limit_edges.csv", limit_gaps, ("rules", "family", "size", "class", "limit")),
          ("vehicle.csv", "vehicle_edges.csv", vehicle_gaps, ("part", "value")))


def faults_of(tables, folder):
    for table, edges, gaps, names in CHECKS:
        rows, cases = load(tables / table), load(folder / edges)
        rows = [row for row in rows if table != "vehicle.csv" or row["value"]]
        yield f"{edges} has cases around every figure of {table}", [
            f"{' '.join(row[name] for name in names)}: {', '.join(missing)}" for row in rows if (missing := gaps(row, cases))]
        yield f"{edges} says where each case is published", [str(case) for case in cases if not case["source"]]
        yield f"without {edges} every figure of {table} is missed", [str(row) for row in rows if not gaps(row, [])]


def main(tables, folder):
    failed, count = 0, 0
    for count, (name, faults) in enumerate(faults_of(pathlib.Path(tables), pathlib.Path(folder)), 1):
        print(f"{'not ok' if faults else 'ok'} {count} - {name}")
        print("".join(f"# {fault}\n" for fault in faults), end="")
        failed += bool(faults)
    print(f"1..{count}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
