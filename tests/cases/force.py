# SPDX-License-Identifier: Apache-2.0
"""Pushrod force and AL factor against GNU units, and the force of a type 30 at 100 psi as British Columbia's guide for
commercial drivers prints it. Arguments: units, force."""
import subprocess
import sys
from fractions import Fraction

TYPES = (9, 12, 16, 20, 24, 30, 36)
PRESSURES = (20, 60, 85, 90, 92.5, 95, 100, 120)
ARMS = (5, 5.5, 6, 6.5, 7)
PUBLISHED = {("force", 30, 100): 3000}


def outside(units, asked):
    """All in one run: a line of have and a line of want for each."""
    lines = []
    for what, size, value in asked:
        lines += [f"{size} in^2 {value} psi", "lbf"] if what == "force" else [f"{size} in^2 {value} in", "in^3"]
    out = subprocess.run([units, "--terse", "--digits", "15", "--quiet"], input="\n".join(lines) + "\n", capture_output=True,
                         text=True, check=True, env={"LC_ALL": "C"})
    return [Fraction(line) for line in out.stdout.split()]


def main(units, program):
    asked = [("force", size, psi) for size in TYPES for psi in PRESSURES] + [("factor", size, arm) for size in TYPES for arm in ARMS]
    ours = subprocess.run([program], input="".join(f"{what} {size} {value}\n" for what, size, value in asked),
                          capture_output=True, text=True, check=True).stdout.split()
    failed = 0
    print(f"1..{len(asked)}")
    for number, (key, text, theirs) in enumerate(zip(asked, ours, outside(units, asked), strict=True), 1):
        value = Fraction(text)
        good = abs(value - theirs) <= theirs * Fraction(1, 10**13) and PUBLISHED.get(key, value) == value
        print(f"{'ok' if good else 'not ok'} {number} - {key[0]} {key[1]} x {key[2]} is {text}; units says {float(theirs)}")
        failed += not good
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
