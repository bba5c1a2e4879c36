# SPDX-License-Identifier: Apache-2.0
"""The same with polars: columns go over by the Arrow interface, answers come back as a frame. Needs polars."""
from pathlib import Path

import polars as pl

import rodtravel as rt

frame = pl.read_csv(Path(__file__).parent.parent / "data" / "fleet.csv", infer_schema=False)
answers = rt.judge_columns(frame.select("chamber", "stroke_class", "released", "applied", pressure="psi", day="date"))
judged = pl.concat([frame, pl.DataFrame(answers)], how="horizontal")
print(judged.group_by("verdict").len().sort("verdict"))
