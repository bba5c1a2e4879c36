# SPDX-License-Identifier: Apache-2.0
"""A drawn fleet in Parquet, what the command says of it, and whether a cluster said the same."""
import csv
import glob
import hashlib
import os
import random
import re
import subprocess
import time
from fractions import Fraction

import pyarrow as pa
import pyarrow.parquet as pq

HEADINGS = ["row", "fleet", "unit_no", "position", "chamber", "released", "applied", "psi", "remarks", "date"]
NUMBERS = ["applied_stroke", "limit", "margin"]
COUNTED = ["brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined", "defective", "percent",
           "verdict", "whole_needed"]


def guide():
    """The page of how a cluster judges."""
    with open(os.path.join(os.environ["ROOT"], "bindings", "python", "CLUSTER.md"), encoding="utf-8") as file:
        return file.read()


def recipe(word):
    """The program of the guide that has the word."""
    return next(lines for lines in re.findall(r"```python\n(.*?)```", guide(), re.DOTALL) if word in lines)


def draw(count, seed=17):
    """Rows of text or nothing; an inspection is spread over the whole file, and some have no day or no name."""
    chance = random.Random(seed)
    names = [None, "", *(form.format(number) for number in range(count // 40 + 1)
                         for form in ("T-{}", "t - {} ", "\u00c9 {}", "Robert'); DROP TABLE {};--"))]
    cells = [["A", "b"], names, ["1L", "1R", "2L", "2R", "", None],
             ["30", "30L", "24 standard", "bolt C", "?", "", None, "30\n\"x\""],
             ["2", "2 1/8", "1.95", "50 mm", "50", "", None],
             ["4", "4 1/4", "3 31/32", "4.0625", "105 mm", "2-Jan", None], ["95", "90 kPa", "x", None], ["", None, "=1+1"],
             ["2024-06-05", "2024-06-06", "2021-10-13", "1999-01-01", "x", None]]
    return [[str(number), *map(chance.choice, cells)] for number in range(count)]


def write(rows, where, parts=2):
    """Directories by date as Hive names them, some files in each."""
    table = pa.table({name: pa.array(cells, pa.string()) for name, cells in zip(HEADINGS, zip(*rows))})
    for part in range(parts):
        pq.write_to_dataset(table.slice(part * len(rows) // parts, len(rows) // parts), where, partition_cols=["date"],
                            basename_template=f"part-{part}-{{i}}.parquet")


def command(rows, path, *words):
    """What the command says of the rows, line by line."""
    with open(path, "w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows([HEADINGS, *(["" if cell is None else cell for cell in row] for row in rows)])
    done = subprocess.run([os.environ["COMMAND"], "batch", path, *words], stdout=subprocess.PIPE,
                          stderr=subprocess.DEVNULL, encoding="utf-8", check=False)
    assert done.returncode < 2
    return list(csv.DictReader(done.stdout.splitlines(keepends=True)))


def number(text):
    sign = -1 if text.startswith("-") else 1
    return float(sign * sum(map(Fraction, text.lstrip("-").split()))) if text else None


def read(where):
    """The rows of a directory of Parquet, without the files that are no data."""
    files = [file for file in glob.glob(f"{where}/**/*.parquet", recursive=True) if "_temporary" not in file]
    return [row for file in files for row in pq.ParquetFile(file).read().to_pylist()]


def digest(answers):
    """Of row, verdict, stroke, limit, margin and reasons."""
    lines = sorted(repr(answer) for answer in answers)
    return len(lines), hashlib.sha256("\n".join(lines).encode()).hexdigest()


def same_verdicts(rows, where, path):
    """Every row once, with the command's answer."""
    wanted = [(line["row"], line["verdict"], *(number(line[name]) for name in NUMBERS), line["reasons"])
              for line in command(rows, path)]
    found = [(row["row"], row["verdict"], *(row[f"{name}_in"] for name in NUMBERS), row["reasons"])
             for row in read(where)]
    assert digest(found) == digest(wanted), sorted(set(wanted) ^ set(found))[:4]


def inspection(line, by, get):
    """A vehicle as any of its spellings has it, and its counts."""
    name = tuple("".join((line[heading] or "").lower().split()) for heading in by)
    return (*name, str(line["date"] or ""), *(get(line[heading]) for heading in COUNTED),
            tuple((line["remarks"] or "").split()))


def same_vehicles(rows, where, path, by):
    """Every vehicle and day once, with the command's counts."""
    def told(cell):
        try:
            return None if cell == "" else number(str(cell))
        except ValueError:
            return cell

    words = tuple(word for heading in by for word in ("--by", heading))
    wanted = sorted(map(repr, (inspection(line, by, told) for line in command(rows, path, *words))))
    found = sorted(map(repr, (inspection(row, by, lambda cell: float(cell) if isinstance(cell, int) else cell)
                              for row in read(where))))
    assert found == wanted, [pair for pair in zip(found, wanted) if pair[0] != pair[1]][:3]


def whole_summary(rows, judge):
    """What one run over all rows says."""
    return judge({name: [row[place] for row in rows] for place, name in enumerate(HEADINGS)}).summary()


def same_summary(rows, summary, judge):
    """The sum over the parts is the same, quantiles and all."""
    whole = whole_summary(rows, judge)
    assert summary == whole and str(summary) == str(whole) and summary.used == whole.used, (str(summary), str(whole))


def wait_for(what, until, seconds=300):
    """What `until` gives once it is true."""
    end = time.monotonic() + seconds
    while not (found := until()):
        assert time.monotonic() < end, f"waited in vain for {what}"
        time.sleep(0.05)
    return found
