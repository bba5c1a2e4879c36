# SPDX-License-Identifier: Apache-2.0
"""A pandas frame of texts as they were written down: judged in one call, joined, grouped. Needs pandas and pyarrow."""
from pathlib import Path

import numpy as np
import pandas as pd

import rodtravel as rt

frame = pd.read_csv(Path(__file__).parent.parent / "data" / "fleet.csv", dtype=str)
answers = rt.judge_columns(chamber=frame["chamber"], stroke_class=frame["stroke_class"], released=frame["released"],
                           applied=frame["applied"], pressure=frame["psi"], day=frame["date"])
verdicts = np.array([str(verdict) for verdict in rt.Verdict])
frame["verdict"] = verdicts[np.asarray(answers.verdict)]
print(frame.groupby(["unit_no", "verdict"]).size().unstack(fill_value=0).to_string())
