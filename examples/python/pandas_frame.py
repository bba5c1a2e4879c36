# SPDX-License-Identifier: Apache-2.0
"""A pandas frame of texts as they were written down: judged in one call, joined, grouped. Needs pandas and pyarrow."""
from pathlib import Path

import numpy as np
import pandas as pd

import rodtravel as rt

frame = pd.read_csv(Path(__file__).parent.parent / "data" / "fleet.csv", dtype=str)
frame = frame[frame["chamber"] != "chamber"].dropna(how="all").reset_index(drop=True)  # the heading once more; nothing
answers = rt.judge_columns(frame)
verdicts = np.array([str(verdict) for verdict in rt.Verdict])
frame["verdict"] = verdicts[np.asarray(answers.verdict)]
print(frame.groupby(["unit_no", "verdict"]).size().unstack(fill_value=0).to_string())
