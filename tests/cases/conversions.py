# SPDX-License-Identifier: Apache-2.0
"""The exact factors of the library against the outside program GNU units. Arguments: units, conversions."""
import subprocess
import sys
from fractions import Fraction


def outside(units, have, want):
    """Under the plain locale, whatever the library is tried under."""
    out = subprocess.run([units, "--terse", "--digits", "15", have, want], capture_output=True, text=True, check=True,
                         env={"LC_ALL": "C"})
    return Fraction(out.stdout.strip())


def main(units, program):
    asked = [("mm", "in", n) for n in (1, 5, 10, 44.5, 57.2, 63.5, 76, 254, 609.6)] + [("kPa", "psi", n) for n in (1, 6.9, 620, 655, 690, 1000)]
    ours = subprocess.run([program], input="".join(f"{unit} {n}\n" for unit, _, n in asked), capture_output=True, text=True,
                          check=True).stdout.split()
    failed = 0
    print(f"1..{len(asked)}")
    for number, ((unit, want, n), text) in enumerate(zip(asked, ours, strict=True), 1):
        theirs = outside(units, f"{n} {unit}", {"in": "inch", "psi": "psi"}[want])
        near = abs(Fraction(text) - theirs) <= theirs * Fraction(1, 10**14)
        print(f"{'ok' if near else 'not ok'} {number} - {n} {unit} is {text} {want}; units says {float(theirs)}")
        failed += not near
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
