# SPDX-License-Identifier: Apache-2.0
"""A second judge, written from the law alone in Python's fractions, against the library's answer to every
question of a grid: each chamber of 49 CFR 393.47(e), each pair of readings.

Arguments: the program `dump`, the typed table us-393-47.csv, and one word:
  inches       every released and applied measurement from 0 to 8 in by 1/64 in
  millimetres  0 to 203.2 mm by 0.1 mm: each applied one for every 16th released one
  all-millimetres  the same for every released one
  conditions   days around an amendment, pressures around the window, rated strokes, tapes
A second number thins the released ones (for instrumented builds). Prints TAP."""
import collections
import csv
import datetime
import itertools
import subprocess
import sys
from fractions import Fraction

# Bit of a reason in an answer of `dump grid`, behind the two bits of the verdict.
UNDETERMINED, IN, OUT, INOPERATIVE = range(4)
OVER, AT, WITHIN, NO_MOVEMENT, SWAPPED, BEYOND = (1 << i for i in range(2, 8))
MM_DIFFERS = 1 << 14

Row = collections.namedtuple("Row", "family size stroke_class rated limit printed_mm first last")


def number(text):
    """2 1/4, 3 or 44.5 as a fraction; none for an empty cell."""
    return sum(map(Fraction, text.split())) if text else None


RATED_NOTES = {"": None, "3-inch (76 mm) rated stroke": Fraction(3)}


def law(path):
    with open(path, encoding="utf-8", newline="") as file:
        lines = [line for line in file if line.strip() and not line.startswith("#")]
    for row in csv.DictReader(lines):
        yield Row(row["family"], row["size"], row["class"], RATED_NOTES[row["rated_note"]], number(row["limit_in"]),
                  number(row["limit_mm"]), row["from"], row["until"])


def day_of(row):
    """The last day of a row; nothing for the law in force."""
    return row.last


def stroke_class(row):
    return row.stroke_class if row.stroke_class in ("standard", "long") else "standard"


def inch_text(value):
    """A fraction as a person writes it: 2 1/4."""
    whole, rest = divmod(value, 1)
    return str(whole) if rest == 0 else f"{whole} {rest}" if whole else str(rest)


def answer(row, rated, stroke, millimetres=False):
    """Verdict and reasons of a stroke of 0 or more, as bits."""
    if stroke == 0:
        return INOPERATIVE | NO_MOVEMENT
    bits = OUT | OVER if stroke > row.limit else IN | (AT if stroke == row.limit else WITHIN)
    if rated is not None and stroke > rated:
        bits = bits & ~3 | OUT | BEYOND
    if millimetres and row.printed_mm is not None and (stroke > row.limit) != (stroke * Fraction(254, 10) > row.printed_mm):
        bits |= MM_DIFFERS
    return bits


def as_bytes(bits):
    return bits.to_bytes(2, "little")


def questions(rows, rated_too):
    """(row, marked rated stroke): each chamber as the law names it, and one with the end of its travel known."""
    for row in rows:
        yield row, row.rated
        if rated_too and row.rated is None and row.stroke_class != "long":
            yield row, row.limit + Fraction(1, 2)


def first_difference(row, got, expected, released):
    at = next(i for i in range(0, len(expected), 2) if got[i:i + 2] != expected[i:i + 2])
    return (f"{row.family} {row.size} {row.stroke_class}: released {released}, applied {at // 2} steps: "
            f"library {got[at:at + 2].hex()}, this judge {expected[at:at + 2].hex()}")


def grid(dump, asked, unit, denominator, steps, stride):
    """Compares all pairs; yields (name, faults) for each chamber."""
    inch = Fraction(1, denominator) if unit == "in" else Fraction(10, 254 * denominator)
    lines = ["\t".join(("grid", f"{row.family} {row.size}", stroke_class(row), inch_text(rated) if rated else "",
                        day_of(row), "95", unit, str(denominator), str(steps), str(stride))) for row, rated in asked]
    with subprocess.Popen([dump], stdin=subprocess.PIPE, stdout=subprocess.PIPE) as process:
        process.stdin.write("\n".join(lines).encode() + b"\n")
        process.stdin.close()
        for row, rated in asked:
            by_stroke = b"".join(as_bytes(answer(row, rated, i * inch, unit == "mm")) for i in range(steps + 1))
            faults, pairs = [], 0
            for released in range(0, steps + 1, stride):
                expected = as_bytes(UNDETERMINED | SWAPPED) * released + by_stroke[:2 * (steps + 1 - released)]
                got = process.stdout.read(len(expected))
                pairs += len(got) // 2
                if got != expected:
                    faults.append(first_difference(row, got.ljust(len(expected), b"?"), expected, released))
            marked = f", rated {inch_text(rated)}" if rated else ""
            until = f" until {row.last}" if row.last else ""
            yield f"{row.family} {row.size} {row.stroke_class}{marked}{until}: {pairs} pairs in {unit}", faults
        if process.stdout.read(1) or process.wait():
            yield "the library answers each question once", ["more or less output than asked for"]


def chance_over(stroke, limit, division):
    """Each reading is off by up to half a division either way, evenly; their difference is triangular."""
    t = (limit - stroke) / division
    if abs(t) >= 1:
        return Fraction(int(t < 0))
    return (1 - t) ** 2 / 2 if t >= 0 else 1 - (1 + t) ** 2 / 2


def proof(stroke, limit, division):
    if stroke + division <= limit:
        return "proven-within"
    return "proven-over" if stroke - division > limit else "not-resolved"


Condition = collections.namedtuple("Condition", "row rated marked day psi psi_after division released stroke")


def parts(value):
    return "" if value is None else f"{value.numerator}/{value.denominator}"


def words(case):
    """Verdict and reasons of one condition, as words."""
    limit = case.row.limit
    verdict = "out-of-adjustment" if case.stroke > limit else "in-adjustment"
    reasons = {"over-limit" if case.stroke > limit else "at-limit" if case.stroke == limit else "within-limit"}
    pressures = [p for p in (case.psi, case.psi_after) if p is not None]
    if case.psi is None and case.psi_after is None:
        reasons.add("pressure-not-recorded")
    low, high = any(p < 90 for p in pressures), any(p > 100 for p in pressures)
    reasons |= {"pressure-low"} if low else set()
    reasons |= {"pressure-high"} if high else set()
    if low and verdict == "in-adjustment" or high and verdict == "out-of-adjustment":
        verdict = "undetermined"
    return verdict, reasons


def conditions(rows):
    clamp_30 = next(r for r in rows if (r.family, r.size, r.stroke_class) == ("clamp", "30", "standard"))
    clamp_36 = [r for r in rows if (r.family, r.size) == ("clamp", "36")]
    sixteenth = Fraction(1, 16)
    for psi, after, off in itertools.product([None, *range(85, 106), Fraction(179, 2), Fraction(201, 2)], [None, 89, 95, 101], (-1, 0, 1)):
        if psi is not None or after is None:
            yield Condition(clamp_30, None, None, "", psi, after, None, Fraction(29, 8), clamp_30.limit + off * sixteenth)
    amended = datetime.date(2021, 10, 14)
    for days, stroke in itertools.product((-400, -31, -1, 0, 1, 31, 400), range(30, 45)):
        day = (amended + datetime.timedelta(days)).isoformat()
        row = next(r for r in clamp_36 if (not r.first or r.first <= day) and (not r.last or day <= r.last))
        yield Condition(row, None, None, day, 95, None, None, Fraction(2), Fraction(stroke, 16))
    for row, division, off in itertools.product(rows, (Fraction(1, 8), sixteenth, Fraction(1, 32), Fraction(10, 254)), range(-9, 10)):
        yield Condition(row, row.rated, None, day_of(row), 95, None, division, Fraction(3), row.limit + off * Fraction(1, 64))


def ask_rows(dump, cases):
    def line(c):
        texts = (f"{c.row.family} {c.row.size}", stroke_class(c.row), c.rated, c.marked, c.day, c.psi, c.psi_after, c.division,
                 c.released, c.released + c.stroke)
        return "\t".join(["row", *("" if t is None else inch_text(t) if isinstance(t, Fraction) else str(t) for t in texts)])
    text = "".join(line(case) + "\n" for case in cases)
    return subprocess.run([dump], input=text, capture_output=True, text=True, check=True).stdout.splitlines()


def compare_conditions(dump, rows):
    cases = list(conditions(rows))
    faults = []
    for case, got in itertools.zip_longest(cases, ask_rows(dump, cases), fillvalue=""):
        verdict, reasons = words(case)
        tape = case.division
        expected = [verdict, parts(case.stroke), parts(case.row.limit), parts(case.row.limit - case.stroke),
                    proof(case.stroke, case.row.limit, tape) if tape else "",
                    parts(chance_over(case.stroke, case.row.limit, tape)) if tape else ""]
        cells = got.split("\t")
        if cells[:6] != expected or set(cells[6].split()) != reasons:
            faults.append(f"{case}: library {got!r}, this judge {expected} {sorted(reasons)}")
    yield f"{len(cases)} conditions: days, pressures, tapes", faults


def run(dump, table, what, thin=1):
    rows = list(law(table))
    if what == "inches":
        yield from grid(dump, list(questions(rows, True)), "in", 64, 512, thin)
    elif what == "millimetres":
        yield from grid(dump, list(questions(rows, False)), "mm", 10, 2032, 16 * thin)
    elif what == "all-millimetres":
        yield from grid(dump, list(questions(rows, False)), "mm", 10, 2032, 1)
    else:
        yield from compare_conditions(dump, rows)


def main(dump, table, what, thin="1"):
    number_of_cases, failed = 0, 0
    for number_of_cases, (name, faults) in enumerate(run(dump, table, what, int(thin)), 1):
        print(f"{'not ok' if faults else 'ok'} {number_of_cases} - {name}")
        print("".join(f"# {fault}\n" for fault in faults[:5]), end="", flush=True)
        failed += bool(faults)
    print(f"1..{number_of_cases}")
    return 1 if failed or not number_of_cases else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
