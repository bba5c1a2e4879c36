# SPDX-License-Identifier: Apache-2.0
"""A fleet by one Judge: a summary, the inspections of each unit, and the pictures if matplotlib is installed.

    python3 fleet_judge.py [FLEET.csv]
"""
import csv
import sys
from pathlib import Path

import rodtravel as rt

FLEET = Path(__file__).parent.parent / "data" / "fleet.csv"


def read(path):
    """The columns of a file by heading, without empty records and repeated headings."""
    with open(path, encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    rows = [row for row in rows if any(row.values()) and row["chamber"] != "chamber"]
    return {heading: [row[heading] for row in rows] for heading in rows[0]}


def main(fleet=FLEET):
    judge = rt.Judge()
    table = read(fleet)
    answers = judge(table)
    print(answers.summary())
    for inspection in judge.vehicles(table, by="unit_no"):
        print(f"{inspection.name[0]:6} {str(inspection.day or 'no day'):12}{inspection.brakes:3} brakes, {inspection.outcome}")
    print("out of service:", judge.vehicles(table, by="unit_no").counts()[rt.Outcome.OUT_OF_SERVICE])
    try:
        for name, axes in (("used", rt.plot_used(answers, by=table["chamber"])), ("limit", rt.plot_limit(answers)),
                           ("map", rt.plot_map(answers, rows=table["unit_no"], columns=table["position"]))):
            axes.figure.savefig(f"{name}.png", dpi=100)
    except ImportError:
        print("no pictures: matplotlib is not installed")


if __name__ == "__main__":
    main(*sys.argv[1:])
