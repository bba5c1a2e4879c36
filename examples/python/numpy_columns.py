# SPDX-License-Identifier: Apache-2.0
"""A million readings in sixty-fourths of an inch, as NumPy columns; nothing is copied. Needs NumPy."""
from fractions import Fraction

import numpy as np

import rodtravel as rt

chance = np.random.default_rng(1)
released = chance.integers(96, 160, 1_000_000, dtype=np.int32)
applied = released + chance.integers(64, 150, 1_000_000, dtype=np.int32)

plan = rt.Plan("us-fmcsr", psi=95)
codes = np.array([plan.add("30"), plan.add("30 long")], dtype=np.uint8)
chamber = codes[chance.integers(0, 2, 1_000_000)]

answers = plan.judge(released * np.int32(rt.UNITS_PER_64TH), applied * np.int32(rt.UNITS_PER_64TH), chamber)
print(answers)
stroke = np.asarray(answers.stroke)
print("longest stroke", rt.write_length(Fraction(int(stroke.max()), rt.UNITS_PER_INCH)), "in")
