# SPDX-License-Identifier: Apache-2.0
"""What judging adds to a job of Spark that hands its rows through Python as they are.

    python3 cluster.py [ROWS [TURNS]]

The same rows are read from Parquet, go through mapInArrow and are written nowhere, with and without their answers, in
turns; the first turn warms up. Times are those of the processor, of all processes together, with one task at a time. Needs
what examples/python/spark_fleet.py needs."""
import os
import statistics
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path[:0] = [HERE, os.path.join(HERE, "..", "..", "examples", "python")]
import files  # noqa: E402
import pyarrow as pa  # noqa: E402
import pyarrow.parquet as pq  # noqa: E402
import spark_fleet  # noqa: E402

import rodtravel as rt  # noqa: E402


def processor_seconds(of=None):
    """Of a process and all that it started, as far as they live or were waited for."""
    parents, used = {}, {}
    for number in filter(str.isdigit, os.listdir("/proc")):
        try:
            with open(f"/proc/{number}/stat", encoding="utf-8", errors="replace") as file:
                cells = file.read().rpartition(")")[2].split()
        except OSError:
            continue
        parents[int(number)] = int(cells[1])
        used[int(number)] = sum(map(int, cells[11:15])) / os.sysconf("SC_CLK_TCK")
    family = {of or os.getpid()}
    while (found := {child for child, parent in parents.items() if parent in family} - family):
        family |= found
    return sum(used.get(number, 0) for number in family)


def handed_on(batches):
    """For mapInArrow: the rows as they came."""
    yield from batches


def measure(job):
    """The processor seconds of a job."""
    before = processor_seconds()
    job.write.format("noop").mode("overwrite").save()
    return processor_seconds() - before


def main(rows=400000, turns=5):
    judge = rt.Judge()
    with tempfile.TemporaryDirectory() as where:
        for key in ("tape", "in6"):
            form = files.FORMS[key]
            table = pa.table(dict(zip(form.head, map(list, zip(*files.make_rows(form, rows))))))
            pq.write_table(table, os.path.join(where, f"{key}.parquet"))
        session = spark_fleet.open_session("local[1]")
        for key in ("tape", "in6"):
            given = session.read.parquet(os.path.join(where, f"{key}.parquet"))
            jobs = {"handed on": spark_fleet.mapped(given, handed_on, given.schema),
                    "judged": spark_fleet.judged_rows(given, judge)}
            times = {name: [] for name in jobs}
            for _ in range(turns + 1):
                for name, job in jobs.items():
                    times[name].append(measure(job) * 1e9 / rows)
            one, other = (statistics.median(times[name][1:]) for name in jobs)
            print(f"{files.FORMS[key].title}: {one:.0f} ns a row handed on, {other:.0f} judged, {100 * (other / one - 1):+.0f} %",
                  flush=True)
        session.stop()


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
