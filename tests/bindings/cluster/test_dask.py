# SPDX-License-Identifier: Apache-2.0
"""examples/python/dask_fleet.py on two processes, one of which is killed while it judges."""
import contextlib
import io
import os
import signal
import sys
import tempfile
import threading

sys.path[:0] = [os.path.join(os.environ["EXAMPLES"], "python"),
                os.path.join(os.environ["ROOT"], "tests", "bindings", "python")]
import dask_fleet  # noqa: E402
import fleets  # noqa: E402
import tap  # noqa: E402
from dask.distributed import Client, LocalCluster, get_worker  # noqa: E402

import rodtravel as rt  # noqa: E402

ROWS = int(os.environ.get("ROWS", "3000"))
BY = ["fleet", "unit_no"]
judged_at_once = dask_fleet.judged


def judged_slowly(rows, judge):
    """Leaves a mark, so that the test knows who is at work."""
    try:
        where = f"{os.environ['MARKS']}/{os.getpid()}"
        get_worker()
    except (KeyError, ValueError):  # no worker
        return judged_at_once(rows, judge)
    with open(where, "a", encoding="ascii") as file:
        file.write(".")
    threading.Event().wait(float(os.environ["SLOWLY"]))
    return judged_at_once(rows, judge)


def count(where):
    """Marks that were left."""
    return sum(os.path.getsize(os.path.join(where, name)) for name in os.listdir(where))


def kill_one(where, killed):
    """Kills a worker as soon as both are at work."""
    marks = fleets.wait_for("two workers at work", lambda: len(names := os.listdir(where)) == 2 and names)
    os.kill(int(marks[0]), signal.SIGKILL)
    killed.append(count(where))


def test_a_worker_is_killed():
    rows, judge = fleets.draw(ROWS), rt.Judge()
    with tempfile.TemporaryDirectory() as where:
        source, target, marks, path = (os.path.join(where, name) for name in ("in", "out", "marks", "rows.csv"))
        os.mkdir(marks)
        os.environ.update(MARKS=marks, SLOWLY="1")
        fleets.write(rows, source)
        killed = []
        dask_fleet.judged = judged_slowly
        with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster):
            killer = threading.Thread(target=kill_one, args=(marks, killed))
            killer.start()
            summary = dask_fleet.judge_fleet(judge, source, target, BY, "date")
            killer.join()
        assert killed and count(marks) > killed[0], "the worker was not killed midway"
        fleets.same_verdicts(rows, os.path.join(target, "verdicts"), path)
        fleets.same_vehicles(rows, os.path.join(target, "vehicles"), path, BY)
        fleets.same_summary(rows, summary, judge)


def test_recipe():
    """The lines of the guide count as one Judge does."""
    rows = fleets.draw(400)
    rows = rows.filter(rows["date"].is_valid())
    with tempfile.TemporaryDirectory() as where:
        fleets.write(rows, where)
        with contextlib.redirect_stdout(io.StringIO()) as said, Client(n_workers=1, dashboard_address=None):
            exec(fleets.recipe("dask").replace('"fleet/"', repr(where)), {"__name__": "__main__"})
        assert said.getvalue().strip() == str(fleets.whole_summary(rows, rt.Judge())), said.getvalue()


def test_no_column_of_chambers():
    with tempfile.TemporaryDirectory() as where:
        fleets.write(fleets.draw(50), os.path.join(where, "in"))
        wrong = rt.Judge(columns={"chamber": ""})
        said = tap.refused(TypeError, dask_fleet.judge_fleet, wrong, os.path.join(where, "in"), where, BY, "date")
        assert "a column chamber is needed" in str(said) and not os.path.exists(os.path.join(where, "verdicts"))


if __name__ == "__main__":
    tap.run(globals())
