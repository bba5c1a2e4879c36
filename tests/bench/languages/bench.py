# SPDX-License-Identifier: Apache-2.0
"""bench.py call|lists|column COUNT (../languages.py)"""
import sys

import rodtravel as rt

what, count = sys.argv[1], int(sys.argv[2])
if what == "call":
    for _ in range(count):
        rt.judge("30L", "2 3/4", "5 5/16", psi="95").verdict
else:
    applied = [f"{4 + i % 2} {1 + 2 * (i % 8)}/16" for i in range(count)]
    columns = {"chamber": ["30L"] * count, "released": ["2 3/4"] * count, "applied": applied, "psi": ["95"] * count}
    if what == "column":
        rt.judge_columns(columns)
