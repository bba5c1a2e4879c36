# SPDX-License-Identifier: Apache-2.0
"""Files to measure with: a form is one way to write a reading, and a file has one form, the same rows in every run.

Every cell can be read, so that a rival needs no more than its form. Some strokes are zero or below it, some at the
limit."""
import csv
import json
import random
from fractions import Fraction

CHAMBERS = [("clamp 16", "long"), ("clamp 20", "standard"), ("clamp 24", "standard"), ("clamp 24", "long"),
            ("clamp 30", "standard"), ("clamp 30", "long"), ("clamp 36", "standard"), ("clamp 12", "standard")]
HEAD = ["unit_no", "date", "position", "chamber", "stroke_class", "released", "applied", "remarks"]
MM = Fraction(10, 254)


def mixed(count):
    """16ths as a tape shows them."""
    whole, part = divmod(Fraction(count, 16), 1)
    return f"{whole} {part}" if whole and part else str(part or whole)


def decimal(digits):
    return lambda count: f"{count // 10**digits}.{count % 10**digits:0{digits}}"


class Form:
    """How readings are written: each is a whole number of `grain` inches, which `write` puts into words. Rivals count
    in `step` inches."""

    def __init__(self, title, grain, write, unit="in", suffix="", step=None, fresh=False):
        self.title = title
        self.grain = grain
        self.write = lambda count: write(count) + suffix
        self.unit = unit
        self.suffix = suffix
        self.step = step or grain
        self.fresh = fresh
        self.head = HEAD

    @property
    def default_unit(self):
        """What a reader must be told of cells without a unit."""
        return "in" if self.suffix else self.unit

    def factor(self, unit):
        """Steps in an inch or a millimetre, a whole number."""
        return int((MM if unit == "mm" else 1) / self.step)

    def readings(self, chance):
        """Cells of a row, without an end: released and applied. If fresh, no row has a text of another, as long as there
        are enough."""
        low, high, most = (int(inches / self.grain) for inches in (1, 4, Fraction(11, 4)))
        used = set()
        while True:
            released = low + int(chance.random() * (high - low))
            kind, stroke = chance.random(), 1 + int(chance.random() * most)
            applied = released + (stroke if kind < 0.97 else 0 if kind < 0.98 else -stroke // 8)
            if self.fresh and len(used) > (high - low) * 3 // 4:
                used.clear()
            if self.fresh and (released in used or applied in used):
                continue
            if self.fresh:
                used.update((released, applied))
            yield self.write(released), self.write(applied)


class MixedForm(Form):
    """Rows in millimetres and in inches, with the unit in a column of its own."""

    def __init__(self, title, forms):
        super().__init__(title, Fraction(1, 127000), decimal(3))
        self.forms = forms
        self.head = [*HEAD, "unit"]

    def readings(self, chance):
        rows = [(form.unit, form.readings(chance)) for form in self.forms]
        while True:
            unit, cells = chance.choice(rows)
            yield *next(cells), unit


FORMS = {"tape": Form("1/16 in", Fraction(1, 16), mixed, step=Fraction(1, 64)),
         "mm1": Form("0.1 mm", MM / 10, decimal(1), "mm"),
         "in3": Form("0.001 in", Fraction(1, 1000), decimal(3)),
         "mm2": Form("0.01 mm", MM / 100, decimal(2), "mm"),
         "in6": Form("six decimals, all different", Fraction(1, 10**6), decimal(6), fresh=True),
         "mm": Form("0.1 mm, \"mm\" in each cell", MM / 10, decimal(1), "mm", suffix=" mm")}
FORMS["unit"] = MixedForm("unit in a column", [FORMS["mm1"], FORMS["in3"]])


# --- Rows ----------------------------------------------------------------------------------------------------

def make_rows(form, count, width=0):
    chance = random.Random(count)

    def choose(values):
        return chance.choices(values, k=count)

    columns = zip(choose([f"K-{number}" for number in range(10000)]),
                  choose([f"2024-{month:02}-{day:02}" for month in range(1, 13) for day in range(1, 29)]),
                  choose([f"{axle}{side}" for axle in range(1, 6) for side in "LR"]), choose(CHAMBERS),
                  form.readings(chance), choose(["", "", "", "greased", "arm replaced in the spring"]))
    for unit, day, position, chamber, (released, applied, *own), remark in columns:
        yield [unit, day, position, *chamber, released, applied, remark, *own, *(["0" * 12] * width)]


def make_visits(form, count, units, mixed_up):
    """Rows of vehicles on days, without positions: all of an inspection one after the other, or mixed up. With fewer
    vehicles than 1000 each is inspected on all days of a month."""
    chance = random.Random(count + units)
    visits = [(f"K-{number}", f"2024-03-{day:02}") for number in range(units)
              for day in (range(1, 29) if units < 1000 else [number % 28 + 1])]
    named = [visits[row * len(visits) // count] for row in range(count)]
    if mixed_up:
        chance.shuffle(named)
    for (unit, day), row in zip(named, make_rows(form, count)):
        yield [unit, day, "", *row[3:]]


# --- Files ---------------------------------------------------------------------------------------------------

def write_csv(path, head, rows, quoting=csv.QUOTE_MINIMAL, line_end="\n"):
    with open(path, "w", newline="", encoding="utf-8") as file:
        out = csv.writer(file, quoting=quoting, lineterminator=line_end)
        out.writerow(head)
        out.writerows(rows)
    return path


def write_ndjson(path, head, rows):
    with open(path, "w", encoding="utf-8") as file:
        for row in rows:
            file.write(json.dumps(dict(zip(head, row)), separators=(",", ":")) + "\n")
    return path


def make_file(path, form, count, kind="csv"):
    write = write_ndjson if kind == "ndjson" else write_csv
    return write(path, form.head, make_rows(form, count))


def make_wide(path, count, width):
    form = FORMS["tape"]
    return write_csv(path, form.head + [f"more_{i}" for i in range(width)], make_rows(form, count, width))


def make_broken_cells(path, count):
    """Line ends and quotes in a cell of each row."""
    rows = (row[:7] + ["first line\nsecond \"line\", the last"] for row in make_rows(FORMS["tape"], count))
    return write_csv(path, HEAD, rows)


def make_long(path, block, size):
    """The rows of a file again and again, up to a size."""
    head, body = block.read_bytes().split(b"\n", 1)
    with open(path, "wb") as file:
        file.write(head + b"\n")
        for _ in range(size // len(body)):
            file.write(body)
    return path


# --- Tables for rivals ---------------------------------------------------------------------------------------

def inches(text):
    """A mixed fraction, exactly."""
    whole, _, part = text.rpartition(" ")
    return int(whole or 0) + Fraction(part)


def write_limits(path, form, limits):
    """chamber, class and limit in steps of the form, from the command's own table."""
    rows = [(row["chamber"], row["class"], float(inches(row["limit"]) / form.step)) for row in limits
            if row["class"] != "any" and row["rated_stroke"] is None]
    with open(path, "w", newline="", encoding="utf-8") as file:
        csv.writer(file, lineterminator="\n").writerows(rows)


def write_marks(path):
    """Every mark of a tape up to 24 in, and its steps."""
    tape = FORMS["tape"]
    with open(path, "w", newline="", encoding="utf-8") as file:
        csv.writer(file, lineterminator="\n").writerows(
            (tape.write(count), int(count * tape.grain / tape.step)) for count in range(24 * 16 + 1))
