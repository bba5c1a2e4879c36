# SPDX-License-Identifier: Apache-2.0
"""The estimate of full applications against a second calculation with Python's fractions, and against figures worked
out once and rounded. Arguments: reservoir, and units if it is there (for the atmosphere's unit)."""
import random
import subprocess
import sys
from fractions import Fraction

ATMOSPHERE = Fraction(147, 10)

# Start psi; the same after one full application at full rated volume with 8 and 12 times the chambers' volume.
ONE = [(90, "78.4", "81.9"), (95, "82.8", "86.6"), (100, "87.3", "91.2"), (110, "96.1", "100.4"), (120, "105.0", "109.6"),
       (125, "109.5", "114.3")]
# Start psi; applications that keep 60 psi with 12 times the volume, for a filled part of 1, 0.8, 0.6, 0.4.
MANY = [(100, (5, 6, 8, 13)), (120, (7, 9, 12, 17))]


def one(psi, reservoir, chambers, fill):
    return max(Fraction(0), (psi + ATMOSPHERE) * reservoir / (reservoir + chambers * fill) - ATMOSPHERE)


def many(psi, floor, reservoir, chambers, fill):
    """By going on from application to application, which the library does not."""
    air, count = psi + ATMOSPHERE, 0
    while count < 99:
        air = air * reservoir / (reservoir + chambers * fill)
        if air < floor + ATMOSPHERE:
            break
        count += 1
    return count


def cases():
    for psi, _, _ in ONE:
        yield psi, 60, 8, 1, Fraction(1)
        yield psi, 60, 12, 1, Fraction(1)
    for psi, _ in MANY:
        for tenths in (10, 8, 6, 4):
            yield psi, 60, 12, 1, Fraction(tenths, 10)
    chance = random.Random(1)
    for _ in range(2000):
        yield (chance.randrange(0, 300), chance.randrange(0, 200), chance.randrange(100, 20000), chance.randrange(1, 2000),
               Fraction(chance.randrange(0, 101), 100))


def judge(program):
    asked = list(cases())
    text = "".join(f"{p} {f} {v} {c} {x.numerator} {x.denominator}\n" for p, f, v, c, x in asked)
    said = subprocess.run([program], input=text, capture_output=True, text=True, check=True).stdout.splitlines()
    answers = {}
    for case, line in zip(asked, said, strict=True):
        pressure, count = line.split()
        answers[case] = Fraction(pressure), int(count)
        yield answers[case] == (one(case[0], *case[2:]), many(*case)), f"{case} is {line}"
    for psi, eight, twelve in ONE:
        for times, text in ((8, eight), (12, twelve)):
            found = answers[psi, 60, times, 1, Fraction(1)][0]
            yield abs(found - Fraction(text)) <= Fraction(1, 20), f"{psi} psi, {times} x: about {text}"
    for psi, counts in MANY:
        found = tuple(answers[psi, 60, 12, 1, Fraction(t, 10)][1] for t in (10, 8, 6, 4))
        yield found == counts, f"{psi} psi to 60: {found}"


def main(program, units=None):
    results = list(judge(program))
    if units:
        out = subprocess.run([units, "--terse", "--digits", "12", "atm", "psi"], capture_output=True, text=True, check=True,
                             env={"LC_ALL": "C"}).stdout
        results.append((round(Fraction(out.strip()), 1) == ATMOSPHERE, f"an atmosphere is {out.strip()} psi, 14.7 rounded"))
    print(f"1..{len(results)}")
    for number, (good, what) in enumerate(results, 1):
        print(f"{'ok' if good else 'not ok'} {number} - {what}")
    return 0 if all(good for good, _ in results) else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
