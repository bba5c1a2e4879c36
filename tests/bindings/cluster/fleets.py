# SPDX-License-Identifier: Apache-2.0
"""A drawn fleet in Parquet, what the command says of it, and whether a cluster said the same."""
import csv
import functools
import glob
import hashlib
import os
import random
import re
import subprocess
import time
from fractions import Fraction

import pyarrow as pa
import pyarrow.csv
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


def draw(count, seed=17, block=200000):
    """A table of texts or nothing; an inspection is spread over the whole file, and some have no day or no name."""
    chance = random.Random(seed)
    names = [None, "", *(form.format(number) for number in range(count // 40 + 1)
                         for form in ("T-{}", "t - {} ", "\u00c9 {}", "Robert'); DROP TABLE {};--"))]
    cells = [["A", "b"], names, ["1L", "1R", "2L", "2R", "", None],
             ["30", "30L", "24 standard", "bolt C", "?", "", None, "30\n\"x\""],
             ["2", "2 1/8", "1.95", "50 mm", "50", "", None],
             ["4", "4 1/4", "3 31/32", "4.0625", "105 mm", "2-Jan", None], ["95", "90 kPa", "x", None],
             ["", None, "=1+1"], ["2024-06-05", "2024-06-06", "2021-10-13", "1999-01-01", "x", None]]
    parts = [range(first, min(first + block, count)) for first in range(0, count, block)]
    return pa.concat_tables(drawn(chance, cells, numbers) for numbers in parts)


def drawn(chance, cells, numbers):
    """The rows of these numbers: of each column one of its cells."""
    columns = [list(map(str, numbers)), *(chance.choices(each, k=len(numbers)) for each in cells)]
    return pa.table({name: pa.array(column, pa.string()) for name, column in zip(HEADINGS, columns)})


def write(rows, where, parts=2, most=200000):
    """Directories by date as Hive names them, some files in each, none of more than `most` rows."""
    size = min(most, max(1, len(rows) // parts))
    for part, first in enumerate(range(0, len(rows), size)):
        pq.write_to_dataset(rows.slice(first, size), where, partition_cols=["date"],
                            basename_template=f"part-{part}-{{i}}.parquet")


def command(rows, path, *words):
    """What the command says of the rows, line by line."""
    pa.csv.write_csv(rows, path)
    with subprocess.Popen([os.environ["COMMAND"], "batch", path, *words], stdout=subprocess.PIPE,
                          stderr=subprocess.DEVNULL, encoding="utf-8") as ran:
        yield from csv.DictReader(ran.stdout)
    assert ran.returncode < 2


@functools.lru_cache(maxsize=1 << 16)
def number(text):
    sign = -1 if text.startswith("-") else 1
    return float(sign * sum(map(Fraction, text.lstrip("-").split()))) if text else None


def read(where):
    """The rows of a directory of Parquet, without the files that are no data."""
    for file in glob.glob(f"{where}/**/*.parquet", recursive=True):
        if "_temporary" not in file:
            for batch in pq.ParquetFile(file).iter_batches(10000):
                yield from batch.to_pylist()


def digest(answers):
    """How many there are, and a sum of hashes, which their order does not change."""
    count = total = 0
    for answer in answers:
        count += 1
        total += int.from_bytes(hashlib.sha256(repr(answer).encode()).digest(), "big")
    return count, f"{total:x}"


def same(found, wanted):
    """The same answers in any order; each is a function that gives them, so that no more than a few are held."""
    digests = digest(found()), digest(wanted())
    assert digests[0] == digests[1] and digests[0][0] > 0, (digests, [*set(found()) ^ set(wanted())][:4])
    print("#", *digests[0], flush=True)


def same_verdicts(rows, where, path):
    """Every row once, with the command's answer."""
    same(lambda: ((row["row"], row["verdict"], *(row[f"{name}_in"] for name in NUMBERS), row["reasons"])
                  for row in read(where)),
         lambda: ((line["row"], line["verdict"], *(number(line[name]) for name in NUMBERS), line["reasons"])
                  for line in command(rows, path)))


def inspection(line, by, get):
    """A vehicle as any of its spellings has it, and its counts."""
    name = tuple("".join((line[heading] or "").lower().split()) for heading in by)
    return (*name, str(line["date"] or ""), *(get(line[heading]) for heading in COUNTED),
            tuple((line["remarks"] or "").split()))


@functools.lru_cache(maxsize=1 << 16)
def told(cell):
    """A number where it is one."""
    try:
        return None if cell == "" else number(cell)
    except ValueError:
        return cell


def same_vehicles(rows, where, path, by):
    """Every vehicle and day once, with the command's counts."""
    words = tuple(word for heading in by for word in ("--by", heading))
    same(lambda: (inspection(row, by, lambda cell: float(cell) if isinstance(cell, int) else cell)
                  for row in read(where)),
         lambda: (inspection(line, by, told) for line in command(rows, path, *words)))


def whole_summary(rows, judge):
    """What one run over all rows says."""
    return judge(rows).summary()


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
