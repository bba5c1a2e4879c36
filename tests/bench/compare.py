# SPDX-License-Identifier: Apache-2.0
"""Measures `rodtravel batch` beside other programs on the same files, in turns and in one run.

    python3 compare.py RODTRAVEL [--rows N] [--repeats N] [--memory MB,MB] [--huge] [--bench-judge PATH] [--check]

Every figure is a median of the repeats with the spread between the quartiles; nothing here passes or fails by the
clock. --check only compares the answers of all programs on every row, and fails if two differ. What is not installed
is named (DuckDB and polars: pip install duckdb polars). --huge adds a file of 2 GB to the figures of memory."""
import argparse
import csv
import datetime
import json
import os
import platform
import random
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from fractions import Fraction
from pathlib import Path

import rivals

HERE = Path(__file__).resolve().parent
CHAMBERS = [("clamp 16", "long"), ("clamp 20", "standard"), ("clamp 24", "standard"), ("clamp 24", "long"),
            ("clamp 30", "standard"), ("clamp 30", "long"), ("clamp 36", "standard"), ("clamp 12", "standard")]
HEAD = ["unit_no", "date", "position", "chamber", "stroke_class", "released", "applied", "remarks"]


# --- Files ---------------------------------------------------------------------------------------------------

def mixed(count):
    """64ths as a tape shows them."""
    whole, part = divmod(Fraction(count, 64), 1)
    return f"{whole} {part}" if whole and part else str(part or whole)


def odd_reading(chance):
    """What stands in one of fifty cells: all other ways to write, and no reading at all."""
    return chance.choice(["2.125", "54 mm", "2½", "", "n/a", "2-Jan", "1 3/2", "175", "3 5/8\"", "-1"])


def make_row(chance, width):
    released = chance.randrange(64, 256, chance.choice([1, 4, 4, 8]))
    cells = [mixed(released), mixed(released + chance.choice([0, -8] + 98 * [1]) * chance.randrange(64, 170, 4))
             if chance.random() < 0.99 else mixed(released)]
    if chance.random() < 0.02:
        cells[chance.randrange(2)] = odd_reading(chance)
    chamber, kind = chance.choice(CHAMBERS)
    return [f"K-{chance.randrange(10000)}", f"2024-{chance.randrange(1, 13):02}-{chance.randrange(1, 29):02}",
            f"{chance.randrange(1, 6)}{chance.choice('LR')}", chamber, kind, *cells,
            chance.choice(["", "", "", "greased", "arm replaced in the spring"]), *(["0" * 12] * width)]


def make_file(path, rows, width=0, quoting=csv.QUOTE_MINIMAL, broken_cells=False, line_end="\n"):
    chance = random.Random(rows + width)
    with open(path, "w", newline="", encoding="utf-8") as file:
        out = csv.writer(file, quoting=quoting, lineterminator=line_end)
        out.writerow(HEAD + [f"more_{i}" for i in range(width)])
        for _ in range(rows):
            row = make_row(chance, width)
            if broken_cells:
                row[7] = "first line\nsecond \"line\", the last"
            out.writerow(row)
    return path


def make_long(path, block, size):
    """The rows of a file again and again, up to a size."""
    head, body = block.read_bytes().split(b"\n", 1)
    with open(path, "wb") as file:
        file.write(head + b"\n")
        for _ in range(size // len(body)):
            file.write(body)
    return path


def make_limits(command, path):
    said = subprocess.run([command, "limits", "--json"], capture_output=True, check=True).stdout
    with open(path, "w", newline="", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["chamber", "stroke_class", "limit64"])
        for row in json.loads(said)["limits"]:
            if row["class"] != "any" and row["rated_stroke"] is None:
                out.writerow([row["chamber"], row["class"], inches(row["limit"]) * 64])
    return path


def inches(text):
    whole, _, part = text.rpartition(" ")
    return int(whole or 0) + Fraction(part)


# --- Running -------------------------------------------------------------------------------------------------

class Bench:
    """Where everything lies, and how a program is run and timed."""

    def __init__(self, options, folder):
        self.command = options.rodtravel
        self.repeats = options.repeats
        self.folder = Path(folder)
        self.limits = make_limits(self.command, self.folder / "limits.csv")

    def time_shell(self, line):
        begin = time.perf_counter()
        status = subprocess.run(["sh", "-c", line], check=False).returncode
        if status not in (0, 1, 3):
            sys.exit(f"{line}: exit status {status}")
        return time.perf_counter() - begin

    def words(self, jobs=1):
        """The command line so far; without --jobs it would take all processors."""
        return f"{self.command} batch --jobs {jobs}"

    def batch(self, path, jobs=1, out="/dev/null"):
        return lambda: self.time_shell(f"{self.words(jobs)} {path} > {out}")

    def rival(self, name, path, threads=1, out="/dev/null"):
        def run():
            words = [sys.executable, str(HERE / "rivals.py"), name, str(self.limits), str(path), str(out), str(threads)]
            said = subprocess.run(words, capture_output=True, text=True, check=False,
                                  env={**os.environ, "POLARS_MAX_THREADS": str(threads)})
            if said.returncode != 0:
                sys.exit(f"{name}: {said.stderr}")
            return float(said.stdout)
        return run

    def in_turns(self, contests):
        """Seconds of each contest, one after the other and then all again, so that a slow minute is everybody's."""
        times = {name: [] for name in contests}
        for _ in range(self.repeats):
            for name, run in contests.items():
                times[name].append(run())
        return times


def quartiles(times):
    if len(times) < 2:
        return times[0], times[0], times[0]
    return statistics.quantiles(times, n=4, method="inclusive")


def report(title, size, rows, times, base):
    """One line a contest; the last column tells how many times as long as the base it took."""
    print(f"\n{title}: {size / 1e6:.1f} MB, {rows} rows")
    print(f"  {'':32} {'ms':>9} {'spread':>7} {'MB/s':>7} {'Mrows/s':>8} {'x ' + base:>11}")
    for name, each in times.items():
        low, middle, high = quartiles(each)
        ratio = statistics.median(a / b for a, b in zip(each, times[base]))
        print(f"  {name:32} {middle * 1e3:9.1f} {(high - low) / middle:7.0%} {size / middle / 1e6:7.0f} "
              f"{rows / middle / 1e6:8.2f} {ratio:11.2f}")


# --- Answers -------------------------------------------------------------------------------------------------

def answers_of_batch(path):
    with open(path, newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    return [(row["verdict"], inches(row["applied_stroke"]) * 64 if row["applied_stroke"] else None) for row in rows]


def answers_of_rival(path):
    with open(path, newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    return [(row["verdict"], Fraction(row["stroke64"]) if row["stroke64"] else None) for row in rows]


def differences(batch, rival):
    """Rows that the rival can do, and those of them where it says something else. Swapped readings have no stroke."""
    done = [i for i, (_, stroke) in enumerate(rival) if stroke is not None]
    wrong = [i for i in done if batch[i][0] != rival[i][0] or (rival[i][1] >= 0 and batch[i][1] != rival[i][1])]
    return done, wrong


def check(bench, rows):
    path = make_file(bench.folder / "answers.csv", rows)
    bench.batch(path, out=bench.folder / "batch.csv")()
    batch = answers_of_batch(bench.folder / "batch.csv")
    read = sum(verdict != "undetermined" for verdict, _ in batch)
    print(f"answers on {rows} rows; rodtravel decides {read} of {len(batch)}")
    good = len(batch) == rows
    for name in rivals.NAMES:
        reason = rivals.missing(name)
        if reason:
            print(f"  {name:10} left out: {reason}")
            continue
        bench.rival(name, path, out=bench.folder / "rival.csv")()
        rival = answers_of_rival(bench.folder / "rival.csv")
        done, wrong = differences(batch, rival) if len(rival) == len(batch) else ([], [0])
        print(f"  {name:10} can do {len(done)} rows ({len(done) / rows:.1%}), differs in {len(wrong)}")
        if len(rival) != rows or len(done) < rows * 9 // 10:
            print(f"  {name:10} does too few of {rows} rows")
            good = False
        for i in wrong[:3]:
            print(f"    row {i + 1}: rodtravel {batch[i]}, {name} {rival[i] if i < len(rival) else None}")
            good = False
    return good


# --- Figures -------------------------------------------------------------------------------------------------

def compare_programs(bench, rows):
    path = make_file(bench.folder / "rows.csv", rows)
    size = path.stat().st_size
    contests = {"batch": bench.batch(path), "batch, 2 threads": bench.batch(path, 2),
                "batch from a pipe": lambda: bench.time_shell(f"cat {path} | {bench.words()} - > /dev/null"),
                "batch into a pipe": lambda: bench.time_shell(f"{bench.words()} {path} | cat > /dev/null"),
                "wc -l": lambda: bench.time_shell(f"wc -l {path} > /dev/null"),
                "cat": lambda: bench.time_shell(f"cat {path} > /dev/null"),
                "cat through a pipe": lambda: bench.time_shell(f"cat {path} | cat > /dev/null")}
    for name in rivals.NAMES:
        if rivals.missing(name):
            print(f"left out: {rivals.missing(name)}")
            continue
        contests[name] = bench.rival(name, path)
        if name in ("duckdb", "polars"):
            contests[f"{name}, 2 threads"] = bench.rival(name, path, 2)
    report("The same job, one thread if nothing is said", size, rows, bench.in_turns(contests), "batch")


def compare_forms(bench, rows):
    forms = {"8 columns": {}, "28 columns": {"width": 20}, "108 columns": {"width": 100},
             "all quoted": {"quoting": csv.QUOTE_ALL}, "line ends in cells": {"broken_cells": True},
             "CRLF": {"line_end": "\r\n"}}
    for name, form in forms.items():
        path = make_file(bench.folder / "form.csv", rows, **form)
        times = bench.in_turns({"batch": bench.batch(path),
                                "wc -l": lambda: bench.time_shell(f"wc -l {bench.folder / 'form.csv'} > /dev/null")})
        report(name, path.stat().st_size, rows, times, "wc -l")


def compare_lengths(bench, rows):
    print("\nGrowth with the rows (1 = as many times longer as the file)")
    paths = {count: make_file(bench.folder / f"{count}.csv", count) for count in (rows // 4, rows // 2, rows)}
    times = bench.in_turns({count: bench.batch(path) for count, path in paths.items()})
    first = statistics.median(times[rows // 4]) / (rows // 4)
    for count, each in times.items():
        middle = statistics.median(each)
        print(f"  {count:10} rows {middle * 1e3:9.1f} ms {middle / count * 1e9:8.0f} ns/row {middle / count / first:6.2f}")


def peak_of(words):
    """The most memory of a program, in MiB. It is read while the program lives, from its own counter: what the
    operating system tells of a child afterwards holds the memory of the parent at its start too."""
    peak = 0
    with subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as child:
        while child.poll() is None:
            try:
                status = Path(f"/proc/{child.pid}/status").read_text(encoding="ascii")
            except OSError:
                break
            is_child = f"Name:\t{Path(words[0]).name[:15]}\n" in status # not before it has become the program
            for line in status.splitlines():
                if line.startswith("VmHWM:") and is_child:
                    peak = max(peak, int(line.split()[1]))
            time.sleep(0.002)
    return peak / 1024


def compare_memory(bench, sizes):
    print("\nMost memory of batch, MiB")
    if not Path("/proc/self/status").exists():
        print("  left out: this system has no /proc")
        return
    block = make_file(bench.folder / "block.csv", 20000)
    for size in sizes:
        path = make_long(bench.folder / "long.csv", block, size * 1000000)
        peaks = [peak_of([bench.command, "batch", "--jobs", jobs, str(path)]) for jobs in ("1", "2")]
        print(f"  file of {size:5} MB {peaks[0]:8.1f}    with --jobs 2 {peaks[1]:8.1f}")
        path.unlink()


def compare_scalar(path):
    print("\nOne wheel end from text to finding")
    if path is None:
        print("  left out: --bench-judge was not given")
        return
    subprocess.run([path], check=True)
    count = 20000
    begin = time.perf_counter()
    for _ in range(count):
        stroke = rivals.read_fraction("5 5/16") - rivals.read_fraction("2 3/4")
        rivals.verdict_of(stroke, Fraction(5, 2))
    print(f"Python fractions, two readings and a verdict: {(time.perf_counter() - begin) / count * 1e9:.0f} ns")


def machine():
    model = platform.processor() or platform.machine()
    try:
        for line in Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines():
            if line.startswith("model name"):
                model = line.split(":", 1)[1].strip()
                break
    except OSError:
        pass
    load = "{:.1f} {:.1f} {:.1f}".format(*os.getloadavg())
    return (f"{datetime.date.today()}, {model}, {os.cpu_count()} processors, {platform.system()} {platform.release()}, "
            f"Python {platform.python_version()}, load {load}")


def versions(command):
    said = subprocess.run([command, "--version"], capture_output=True, text=True, check=False).stdout.strip()
    found = [said.splitlines()[0] if said else command]
    for name in ("duckdb", "polars"):
        if not rivals.missing(name):
            found.append(f"{name} {__import__(name).__version__}")
    return ", ".join(found)


def read_options():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("rodtravel")
    parser.add_argument("--rows", type=int, default=200000)
    parser.add_argument("--repeats", type=int, default=5)
    parser.add_argument("--memory", default="10,100", metavar="MB,MB")
    parser.add_argument("--huge", action="store_true")
    parser.add_argument("--bench-judge", metavar="PATH")
    parser.add_argument("--check", action="store_true")
    return parser.parse_args()


def main():
    options = read_options()
    options.rodtravel = shutil.which(options.rodtravel) or options.rodtravel
    sys.stdout.reconfigure(line_buffering=True)
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(options, folder)
        if options.check:
            return 0 if check(bench, options.rows) else 1
        print(machine())
        print(versions(options.rodtravel))
        if not check(bench, min(options.rows, 20000)):
            return 1
        compare_programs(bench, options.rows)
        compare_forms(bench, options.rows // 2)
        compare_lengths(bench, options.rows)
        compare_memory(bench, [int(size) for size in options.memory.split(",") if size] + [2000] * options.huge)
        compare_scalar(options.bench_judge)
    return 0


if __name__ == "__main__":
    sys.exit(main())
