# SPDX-License-Identifier: Apache-2.0
"""A server of one's own for the tests, as the README starts one; it is stopped and removed at the end."""
import atexit
import json
import os
import re
import shutil
import subprocess
import tempfile

ROOT = os.environ["ROOT"]
SCRIPT = os.path.join(ROOT, "bindings/postgresql/cluster.sh")
README = os.path.join(ROOT, "bindings/postgresql/README.md")
# A trial needs no disk; two workers even for small tables.
SETTINGS = "-c fsync=off -c full_page_writes=off -c max_parallel_workers_per_gather=2 -c max_connections=40"


class Refused(Exception):
    """What the server says in place of an answer."""


def start():
    """The directory of a running server: short enough for a socket, and open to the user postgres."""
    where = tempfile.mkdtemp(prefix="rodt-postgresql-")
    os.chmod(where, 0o755)
    atexit.register(stop, where)
    with open(README, encoding="utf-8") as file:
        line = re.search("^(sh .*/cluster.sh) build/fleet$", file.read(), re.MULTILINE).group(1)
    ran = subprocess.run([*line.split(), where, os.environ["BUILD"]], check=True, timeout=120, stdout=subprocess.PIPE,
                         encoding="utf-8", env={**os.environ, "SETTINGS": SETTINGS}, cwd=ROOT)
    assert ran.stdout == f"psql -h {where} -U postgres\n", ran.stdout
    return where


def stop(where):
    subprocess.run(["sh", SCRIPT, "--stop", where], check=False, timeout=60)
    shutil.rmtree(where)


WHERE = start()
PSQL = ["psql", "-X", "-q", "-h", WHERE, "-U", "postgres", "-v", "ON_ERROR_STOP=1"]


def shell(script, database="postgres", *options):
    """What psql says and what it complains of."""
    return subprocess.run([*PSQL, "-d", database, *options], input=script, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, encoding="utf-8", timeout=600, check=False)


def run(script, database="postgres", *options):
    ran = shell(script, database, *options)
    if ran.returncode != 0:
        raise Refused(ran.stderr)
    return ran.stdout


def rows(query, database="postgres"):
    """The rows of a query, by name."""
    found = run(f"SELECT coalesce(json_agg(found_row), '[]') FROM ({query}) AS found_row;", database, "-A", "-t")
    return json.loads(found)


def one(expression, database="postgres"):
    return list(rows(f"SELECT {expression}", database)[0].values())[0]


def refused(statement, database="postgres"):
    """The sentence of an error."""
    try:
        said = run(statement, database)
    except Refused as error:
        return re.search("ERROR: +(.*)", str(error), re.DOTALL).group(1)
    raise AssertionError(f"{statement} gives {said}")


def literal(value):
    if isinstance(value, str):
        return "'" + value.replace("'", "''") + "'"
    return "NULL" if value is None else str(value)
