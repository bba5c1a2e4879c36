# SPDX-License-Identifier: Apache-2.0
"""Measures `rodtravel batch` and the Python package beside other programs, and prints one table: goal, ratio, met or
missed.

    python3 compare.py RODTRAVEL [--rows N] [--repeats N] [--only WORD] [--huge] [--check]

Programs do the same job on the same file, in turns and in one run, each on one thread; their answers are compared on
every row first, and nothing is measured if two differ. Times are those of the processor (user and system), since
machines are shared; a ratio is the median of the ratios of each turn. Nothing fails because a machine is slow or a goal
is missed.

--check only compares the answers, also with exact fractions. --only takes the contests with WORD in their titles.
--huge adds the memory for a file of 2 GB. What is not installed is named (DuckDB, polars, pandas and pyarrow come by
pip; the Python package is found by PYTHONPATH)."""
import argparse
import csv
import datetime
import importlib.util
import json
import os
import platform
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import answers
import files
import rivals

HERE = Path(__file__).resolve().parent
FORMS = files.FORMS
GOALS = {"tape": 10, "mm1": 3, "in3": 3, "in6": 3}  # the other forms have none


# --- Running -------------------------------------------------------------------------------------------------

class Bench:
    """Where everything is, and how a program is run and timed."""

    def __init__(self, options, folder):
        self.command, self.rows, self.repeats = options.rodtravel, options.rows, options.repeats
        self.only, self.checks = options.only, options.check
        self.folder = Path(folder)
        self.good = True
        self.table = []
        limits = json.loads(subprocess.run([self.command, "limits", "--json"], capture_output=True, check=True).stdout)
        for name, form in FORMS.items():
            files.write_limits(self.folder / f"limits-{name}.csv", form, limits["limits"])
        files.write_marks(self.folder / "marks.csv")

    def wanted(self, title):
        return self.only is None or self.only in title

    def run(self, words, out="/dev/null"):
        """Processor and clock seconds of a program."""
        with open(out, "wb") as file:
            def work():
                status = subprocess.run(words, stdout=file, stderr=subprocess.DEVNULL, check=False).returncode
                if status not in (0, 1, 3):
                    sys.exit(f"{words}: exit status {status}")
            return rivals.timed(work)

    def batch(self, path, options="", jobs=1, out="/dev/null"):
        """Without --jobs it would take all processors."""
        return lambda: self.run([self.command, "batch", "--jobs", str(jobs), *options.split(), str(path)], out)

    def rival(self, name, job, form, path, out="/dev/null"):
        words = [sys.executable, str(HERE / "rivals.py"), name, job, form, str(self.folder), str(path), str(out), "1"]

        def run():
            said = subprocess.run(words, capture_output=True, text=True, check=False,
                                  env={**os.environ, "POLARS_MAX_THREADS": "1"})
            if said.returncode != 0:
                sys.exit(f"{name}: {said.stderr}")
            return tuple(map(float, said.stdout.split()))
        return run

    def in_turns(self, contest, clock=False):
        """Seconds of each program, one after the other and then all again, so that a slow minute is everybody's."""
        times = {name: [] for name in contest}
        for _ in range(self.repeats):
            for name, run in contest.items():
                times[name].append(run()[clock])
        return times


# --- The table -----------------------------------------------------------------------------------------------

def median_ratio(over, under):
    return statistics.median(a / b for a, b in zip(over, under))


def add_line(bench, title, goal, ours, theirs, ratio, most=False):
    """`most`: the goal is a greatest value, not a least one. Without a goal a ratio is told, and no more."""
    met = "" if goal is None else "met" if (ratio <= goal if most else ratio >= goal) else "missed"
    sign = "" if goal is None else f"{'≤' if most else '≥'} {goal:g}"
    bench.table.append((title, sign, ours, theirs, f"{ratio:.2f}" if ratio < 10 else f"{ratio:.1f}", met))
    print("| " + " | ".join(bench.table[-1]) + " |")


def nanoseconds(times, rows):
    return f"{statistics.median(times) / rows * 1e9:.0f}"


def add_rivals(bench, title, goal, rows, times):
    """The first program against the best of the others."""
    ours, *others = times.values()
    best = min(others, key=statistics.median)
    theirs = ", ".join(f"{name} {nanoseconds(each, rows)}" for name, each in list(times.items())[1:])
    add_line(bench, title, goal, nanoseconds(ours, rows), theirs, median_ratio(best, ours))


# --- The command beside others -------------------------------------------------------------------------------

def rivals_of(bench, job):
    """Exact fractions are compared with, not raced against; they do rows of CSV only."""
    return [name for name in rivals.NAMES if not rivals.missing(name) and
            (name != "python" or (bench.checks and job == "rows"))]


def differ(title, name, ours, theirs):
    wrong = answers.differences(ours, theirs)
    if wrong:
        print(f"{title}: {name} differs in {len(wrong)} of {len(ours)} lines")
    for pair in wrong[:3]:
        print("    rodtravel", *map(str, pair[0]), f"    {name}", *map(str, pair[1]))
    return bool(wrong)


def same_answers(bench, title, job, form, path, options):
    out = bench.folder / "answers"
    bench.batch(path, options, out=out)()
    ours = answers.of_batch(out, job)
    names = rivals_of(bench, job)
    wrong = []
    for name in names:
        bench.rival(name, job, form, path, out)()
        if differ(title, name, ours, answers.of_rival(out, job, FORMS[form])):
            wrong.append(name)
    verdicts = {line[2 if job == "visits" else 0] for line in ours}
    if len(verdicts) < (3 if job == "visits" else 4):  # few brakes are never ambiguous
        print(f"{title}: too few rows for every verdict, {len(ours)}")
        bench.good = False
    if bench.checks:
        print(f"{title}: {len(ours)} lines, the same from {', '.join(name for name in names if name not in wrong)}")
    bench.good &= not wrong
    return not wrong


def race(bench, title, goal, job, form, path, options=""):
    options += f" --unit {FORMS[form].default_unit}"
    if same_answers(bench, title, job, form, path, options) and not bench.checks:
        contest = {"rodtravel": bench.batch(path, options)}
        contest.update((name, bench.rival(name, job, form, path)) for name in rivals_of(bench, job))
        add_rivals(bench, title, goal, bench.rows, bench.in_turns(contest))
    path.unlink()


def compare_rows(bench):
    for name, form in FORMS.items():
        title = f"`batch`, {form.title}"
        if bench.wanted(title):
            race(bench, title, GOALS.get(name), "rows", name,
                 files.make_file(bench.folder / "rows.csv", form, bench.rows))


def compare_ndjson(bench):
    for name in ("tape", "in6"):
        title = f"NDJSON, {FORMS[name].title}"
        if bench.wanted(title):
            race(bench, title, 4, "ndjson", name,
                 files.make_file(bench.folder / "rows.ndjson", FORMS[name], bench.rows, "ndjson"), "--format ndjson")


def compare_visits(bench):
    for words, goal, units, mixed_up in (("60,000 vehicles, sorted", 4, 60000, False),
                                         ("50 vehicles, unsorted", None, 50, True),
                                         ("60,000 vehicles, unsorted", 4, 60000, True)):
        title = f"`--by`, {words}"
        if bench.wanted(title):
            rows = files.make_visits(FORMS["tape"], bench.rows, units, mixed_up)
            race(bench, title, goal, "visits", "tape",
                 files.write_csv(bench.folder / "visits.csv", files.HEAD, rows), "--by unit_no")


# --- The command beside itself and wc ------------------------------------------------------------------------

def compare_threads(bench):
    """On 120 MB, by the clock: the time of the processor cannot become less."""
    for name in ("tape", "in6"):
        title = f"two threads, {FORMS[name].title}"
        if bench.wanted(title):
            block = files.make_file(bench.folder / "block.csv", FORMS[name], bench.rows)
            path = files.make_long(bench.folder / "long.csv", block, 120 * 10**6)
            rows = path.stat().st_size / block.stat().st_size * bench.rows
            times = bench.in_turns({jobs: bench.batch(path, jobs=jobs) for jobs in (1, 2)}, clock=True)
            # A busy processor makes a turn slow and none makes it fast: the best turn of each is nearest to the truth.
            one, two = min(times[1]), min(times[2])
            add_line(bench, title, 1.8, nanoseconds([two], rows), f"one {nanoseconds([one], rows)}", one / two)
            path.unlink()


def compare_quoted(bench):
    if not bench.wanted("every cell quoted"):
        return
    rows = list(files.make_rows(FORMS["tape"], bench.rows))
    plain = files.write_csv(bench.folder / "plain.csv", files.HEAD, rows)
    quoted = files.write_csv(bench.folder / "quoted.csv", files.HEAD, rows, csv.QUOTE_ALL)
    times = bench.in_turns({"quoted": bench.batch(quoted), "plain": bench.batch(plain)})
    add_line(bench, "every cell quoted, beside plain", 2, nanoseconds(times["quoted"], bench.rows),
             f"plain {nanoseconds(times['plain'], bench.rows)}", median_ratio(times["quoted"], times["plain"]),
             most=True)


def compare_wc(bench):
    rows = bench.rows
    makers = {"8 columns": lambda path: files.make_file(path, FORMS["tape"], rows),
              "28 columns": lambda path: files.make_wide(path, rows, 20),
              "108 columns": lambda path: files.make_wide(path, rows, 100),
              "line ends in cells": lambda path: files.make_broken_cells(path, rows)}
    for words, make in makers.items():
        title = f"beside `wc -l`, {words}"
        if bench.wanted(title):
            path = make(bench.folder / "rows.csv")
            times = bench.in_turns({"batch": bench.batch(path), "wc": lambda: bench.run(["wc", "-l", str(path)])})
            add_line(bench, title, 0.25 if words == "8 columns" else None, nanoseconds(times["batch"], rows),
                     f"wc {nanoseconds(times['wc'], rows)}", median_ratio(times["wc"], times["batch"]))


# --- Memory --------------------------------------------------------------------------------------------------

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


def compare_memory(bench, huge):
    if not Path("/proc/self/status").exists():
        print("left out: memory; this system has no /proc")
        return
    block = files.make_file(bench.folder / "block.csv", FORMS["in6"], 20000)
    for size in [100] + [2000] * huge:
        if not bench.wanted(f"memory, {size} MB"):
            continue
        path = files.make_long(bench.folder / "long.csv", block, size * 10**6)
        for jobs in ("1", "2"):
            peak = peak_of([bench.command, "batch", "--jobs", jobs, str(path)])
            add_line(bench, f"memory, {size} MB, {jobs} thread{'s' * (jobs == '2')}, MiB", 32 if size > 1000 else None,
                     "", "", peak, most=True)
        path.unlink()


# --- Python --------------------------------------------------------------------------------------------------

def compare_python(bench):
    """A process of its own, as polars takes the number of its threads from the environment at its start."""
    reason = next((f"the Python package {name} is not installed" for name in ("rodtravel", "numpy", "pyarrow")
                   if importlib.util.find_spec(name) is None), None)
    if reason:
        print(f"left out: columns and the scalar judge; {reason}")
        return
    rows, repeats = (bench.rows, 0) if bench.checks else (bench.rows // 2, bench.repeats)
    words = [sys.executable, str(HERE / "compare_python.py"), str(bench.folder), str(rows), str(repeats),
             bench.only or ""]
    said = subprocess.run(words, stdout=subprocess.PIPE, text=True, check=False,
                          env={**os.environ, "POLARS_MAX_THREADS": "1"})
    bench.good &= said.returncode == 0
    for line in said.stdout.splitlines():
        contest = json.loads(line)
        add_rivals(bench, contest["title"], contest["goal"], contest["rows"], contest["times"])


# --- Everything ----------------------------------------------------------------------------------------------

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
    for name in ("duckdb", "polars", "pandas"):
        if not rivals.missing(name):
            found.append(f"{name} {__import__(name).__version__}")
    return ", ".join(found)


def read_options():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("rodtravel")
    parser.add_argument("--rows", type=int, default=400000)
    parser.add_argument("--repeats", type=int, default=5)
    parser.add_argument("--only", metavar="WORD")
    parser.add_argument("--huge", action="store_true")
    parser.add_argument("--check", action="store_true")
    return parser.parse_args()


def compare_all(bench, huge):
    for name in filter(rivals.missing, [*rivals.NAMES, "pandas"]):
        print(f"left out: {rivals.missing(name)}")
    if not bench.checks:
        print("\n| contest | goal | rodtravel | others | ratio | |\n|---|---|---|---|---|---|")
    for compare in (compare_rows, compare_ndjson, compare_visits, compare_python):
        compare(bench)
    if not bench.checks:
        for compare in (compare_threads, compare_quoted, compare_wc):
            compare(bench)
        compare_memory(bench, huge)


def main():
    options = read_options()
    options.rodtravel = shutil.which(options.rodtravel) or options.rodtravel
    sys.stdout.reconfigure(line_buffering=True)
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(options, folder)
        print(machine())
        print(f"{versions(options.rodtravel)}; {options.rows} rows, {options.repeats} turns, nanoseconds a row")
        compare_all(bench, options.huge)
    return 0 if bench.good else 1


if __name__ == "__main__":
    sys.exit(main())
