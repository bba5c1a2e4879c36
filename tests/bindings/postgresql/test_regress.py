# SPDX-License-Identifier: Apache-2.0
"""pg_regress: what psql shows of every statement of regress/sql, byte by byte.

    test_regress.py PG_REGRESS BINDIR"""
import os
import subprocess
import sys

import tap
from cluster import ROOT, WHERE


def test_regress():
    where = os.path.join(ROOT, "tests/bindings/postgresql/regress")
    out = os.path.join(WHERE, "regress")
    ran = subprocess.run([sys.argv[1], "--bindir=" + sys.argv[2], "--inputdir=" + where, "--outputdir=" + out,
                          "--host=" + WHERE, "--user=postgres", "--load-extension=rodtravel", "rodtravel"],
                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8", timeout=120, check=False)
    differs = os.path.join(out, "regression.diffs")
    if ran.returncode != 0 and os.path.exists(differs):
        with open(differs, encoding="utf-8") as file:
            ran.stdout += file.read()
    assert ran.returncode == 0, ran.stdout


tap.run(globals())
