# SPDX-License-Identifier: Apache-2.0
"""A whole vehicle from a CSV file (examples/data/demo_vehicle.csv): the count, the axles, what to do next."""
import csv
import sys
from pathlib import Path

import rodtravel as rt

path = sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parent.parent / "data" / "demo_vehicle.csv"
with open(path, encoding="utf-8", newline="") as file:
    rows = list(csv.DictReader(file))

ends = []
for row in rows:
    finding, error = rt.judge_row(chamber=row["chamber"], released=row["released"], applied=row["applied"],
                                  stroke_class=row.get("stroke_class"), psi=row.get("psi"), date=row.get("date"))
    if error:
        print(f"{row['position']}: {error}")
    ends.append(rt.WheelEnd(row["position"], finding, adjuster=row.get("adjuster") or "not-recorded",
                            arm_length=row.get("arm_length") or None))

vehicle = rt.judge_vehicle(ends)
print(f"{vehicle.count.outcome}: {vehicle.count}")
for end, note in zip(ends, vehicle.advice):
    print(f"{end.position}  {end.finding.verdict:18} {end.finding}")
    if note.sentence:
        print(f"    {note.sentence}")
for axle in vehicle.axles:
    for remark in axle.remarks:
        print(f"axle {axle.axle}: {remark.sentence}")
