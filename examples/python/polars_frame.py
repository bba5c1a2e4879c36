# SPDX-License-Identifier: Apache-2.0
"""The same with polars: columns are passed by the Arrow interface, answers are a frame again. Needs polars."""
from pathlib import Path

import polars as pl

import rodtravel as rt

frame = pl.read_csv(Path(__file__).parent.parent / "data" / "fleet.csv", infer_schema=False)
frame = frame.filter(~pl.all_horizontal(pl.all().is_null()), pl.col("unit_no") != "unit_no")  # nothing; the heading again
answers = rt.judge_columns(frame)
judged = pl.concat([frame, pl.DataFrame(answers)], how="horizontal")
print(judged.group_by("verdict").len().sort("verdict"))
