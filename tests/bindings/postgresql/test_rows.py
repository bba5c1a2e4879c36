# SPDX-License-Identifier: Apache-2.0
"""Generated files of so many rows in all: what PostgreSQL says of each row has the digest of `rodtravel batch`.

    test_rows.py ROWS"""
import csv
import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import files
import tap
from cluster import PSQL, ROOT, run

ROWS = int(sys.argv[1])
ARGUMENTS = "chamber released applied psi date stroke_class rated_stroke division unit".split()
RESULTS = 5  # the last columns of batch: applied_stroke, limit, margin, verdict, reasons

run("CREATE EXTENSION rodtravel;")


def batch_digest(path, options):
    """Of the results alone, and the number of rows."""
    said, count = hashlib.sha256(), 0
    with subprocess.Popen([os.environ["COMMAND"], "batch", *options, str(path)], stdout=subprocess.PIPE,
                          stderr=subprocess.DEVNULL, encoding="utf-8") as ran:
        lines = csv.reader(ran.stdout)
        next(lines)
        for row in lines:
            said.update((",".join(row[-RESULTS:]) + "\n").encode())
            count += 1
    return said.hexdigest(), count


def query_digest(query, settings):
    said, count = hashlib.sha256(), 0
    with subprocess.Popen([*PSQL, "-c", settings, "-c", f"COPY ({query}) TO STDOUT CSV"],
                          stdout=subprocess.PIPE) as ran:
        for line in ran.stdout:
            said.update(line)
            count += 1
    return said.hexdigest(), count


def compare(path, head, options, default_unit):
    given = [name for name in ARGUMENTS if name in head]
    named = ", ".join(f"{name} => {name}" for name in given)
    if default_unit:
        named += f", unit => '{default_unit}'"
    run(f"DROP TABLE IF EXISTS ends; CREATE UNLOGGED TABLE ends(number bigserial, "
        f"{', '.join(name + ' text' for name in head)});\n\\copy ends({', '.join(head)}) FROM '{path}' CSV HEADER\n"
        "ANALYZE ends;")
    exact = ", ".join(f"rodt_length_format(rodt_{name}({named}))" for name in ("stroke", "limit", "margin"))
    each = f"SELECT {exact}, rodt_verdict({named}), rodt_reasons({named}) FROM ends ORDER BY number"
    whole = ("SELECT rodt_length_format(f.applied_stroke), rodt_length_format(f.limit), rodt_length_format(f.margin), "
             f"f.verdict, f.reasons FROM ends, rodt_finding({named}) AS f ORDER BY number")
    wanted = batch_digest(path, options)
    assert wanted[1] > 0
    alone, workers = "SET max_parallel_workers_per_gather = 0", "SET min_parallel_table_scan_size = 0"
    for query, settings in ((each, workers), (each, alone), (whole, workers)):
        found = query_digest(query, settings)
        assert found == wanted, (path, query, found, wanted)
    run("DROP TABLE ends;")


def test_forms():
    with tempfile.TemporaryDirectory() as folder:
        for name, form in files.FORMS.items():
            path = files.make_file(Path(folder) / f"{name}.csv", form, max(1, ROWS // len(files.FORMS)))
            default = form.default_unit if form.default_unit != "in" else ""
            compare(path, form.head, ["--unit", default] if default else [], default)
            path.unlink()


def test_fleet():
    """The invented fleet, without its second line of headings and the blank one."""
    with open(os.path.join(ROOT, "examples/data/fleet.csv"), encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    with tempfile.TemporaryDirectory() as folder:
        path = files.write_csv(Path(folder) / "fleet.csv", head, [row for row in rows if any(row) and row != head])
        compare(path, head, [], "")


tap.run(globals())
