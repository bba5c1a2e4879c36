# SPDX-License-Identifier: Apache-2.0
"""examples/python/spark_fleet.py on a master and two workers, which the lines of the guide start; one worker is killed
while it judges. In the same cluster a function in Java judges, too.

    test_spark.py [JAVAC JAR]"""
import contextlib
import os
import re
import shlex
import signal
import socket
import subprocess
import sys
import tempfile
import threading

sys.path[:0] = [os.path.join(os.environ["EXAMPLES"], "python"),
                os.path.join(os.environ["ROOT"], "tests", "bindings", "python")]
import fleets  # noqa: E402
import pyspark  # noqa: E402
import spark_fleet  # noqa: E402
import spark_java  # noqa: E402
import tap  # noqa: E402

import rodtravel as rt  # noqa: E402

ROWS = int(os.environ.get("ROWS", "3000"))
JAVA = list(map(os.path.abspath, sys.argv[1:]))
BY = ["fleet", "unit_no"]
judging_at_once = spark_fleet.judging
SPARK = os.path.dirname(pyspark.__file__)
os.environ.update(SPARK_LOCAL_IP="127.0.0.1", SPARK_HOME=SPARK, PYSPARK_PYTHON=sys.executable,
                  PATH=os.path.join(SPARK, "bin") + os.pathsep + os.environ["PATH"], PYTHONPATH=os.pathsep.join(sys.path))


def judging_slowly(judge):
    """Leaves a mark in the directory of the worker, so that the test knows who is at work."""
    judged = judging_at_once(judge)

    def slowly(batches):
        for batch in judged(batches):
            with open("mark", "a", encoding="ascii") as file:
                file.write(".")
            threading.Event().wait(float(os.environ.get("SLOWLY", "0.5")))
            yield batch
    return slowly


def lines_of_guide(port, work):
    """The lines that start a master and two workers, with a port that is free and a directory of the test."""
    lines = re.findall(r"^spark-class .*$", fleets.guide(), re.MULTILINE)
    assert len(lines) == 2
    master, worker = (line.replace("7077", str(port)).rstrip("& ") + " --webui-port 0" for line in lines)
    places = (shlex.quote(os.path.join(work, name)) for name in ("one", "other"))
    return [master, *(worker.replace("Worker ", f"Worker -d {place} ") for place in places)]


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


def listens(port):
    with socket.socket() as one:
        return one.connect_ex(("127.0.0.1", port)) == 0


@contextlib.contextmanager
def daemons(work):
    """The address of the master, and the processes: each leads a session, with all that it starts."""
    port, started = free_port(), []
    try:
        for line in lines_of_guide(port, work):
            with open(os.path.join(work, f"log-{len(started)}"), "wb") as log:
                started.append(subprocess.Popen(shlex.split(line), stdout=log, stderr=log, start_new_session=True))
            fleets.wait_for("the master", lambda: listens(port))
        yield f"spark://127.0.0.1:{port}", started
    finally:
        for process in started:
            end(process)


def end(process):
    """Kills a process and all that it started."""
    for number in filter(str.isdigit, os.listdir("/proc")):
        with contextlib.suppress(OSError):
            if os.getsid(int(number)) == process.pid:
                os.kill(int(number), signal.SIGKILL)
    process.wait()


def marked(work, name):
    """The marks of a worker's executors."""
    return [where for where, _, files in os.walk(os.path.join(work, name)) if "mark" in files]


def kill_one(work, process, killed):
    """Kills a worker as soon as both are at work."""
    fleets.wait_for("two workers at work", lambda: marked(work, "one") and marked(work, "other"))
    end(process)
    killed.append(sum(os.path.getsize(os.path.join(at, "mark")) for at in marked(work, "other")))


def spark_recipe(rows, source, where):
    """The lines of the guide judge as the command does."""
    target = os.path.join(where, "recipe")
    lines = fleets.recipe("pyspark").replace('"fleet/"', repr(source)).replace('"judged/"', repr(target))
    exec(lines, {"__name__": "recipe"})  # not __main__, which the workers would look into
    fleets.same(lambda: ((row["row"], row["verdict"], row["margin"]) for row in fleets.read(target)),
                lambda: ((line["row"], line["verdict"], fleets.number(line["margin"]))
                         for line in fleets.command(rows, os.path.join(where, "rows.csv"))))


def test_a_worker_is_killed():
    rows, judge = fleets.draw(ROWS), rt.Judge()
    with tempfile.TemporaryDirectory() as where, daemons(where) as (master, started):
        source, target, path = (os.path.join(where, name) for name in ("in", "out", "rows.csv"))
        fleets.write(rows, source, parts=4)
        killed = []
        if JAVA:
            jars = f"{JAVA[1]},{spark_java.compiled(where, *JAVA)}"
            os.environ["PYSPARK_SUBMIT_ARGS"] = f"--jars {jars} pyspark-shell"
        session = spark_fleet.open_session(master)
        killer = threading.Thread(target=kill_one, args=(where, started[1], killed), daemon=True)
        try:
            if JAVA:
                spark_java.same_as_python(session)
            spark_fleet.judging = judging_slowly
            spark_recipe(rows, source, where)
            killer.start()
            summary = spark_fleet.judge_fleet(session.read.parquet(source), judge, target, BY, "date")
            killer.join()
        finally:
            session.stop()
        left = sum(os.path.getsize(os.path.join(at, "mark")) for at in marked(where, "other"))
        assert killed and left > killed[0], "the worker was not killed midway"
        fleets.same_verdicts(rows, os.path.join(target, "verdicts"), path)
        fleets.same_vehicles(rows, os.path.join(target, "vehicles"), path, BY)
        fleets.same_summary(rows, summary, judge)


if __name__ == "__main__":
    tap.run(globals())
