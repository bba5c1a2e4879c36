# SPDX-License-Identifier: Apache-2.0
"""examples/java/SparkJudge.java in a cluster, registered by the lines of the guide: it finds what
examples/python/spark_fleet.py finds of the same rows."""
import csv
import glob
import os
import subprocess
import zipfile
from fractions import Fraction

import fleets
import pyspark
import spark_fleet

import rodtravel as rt


def compiled(where, javac, jar):
    """A jar of the class."""
    classes = os.path.join(os.path.dirname(pyspark.__file__), "jars", "*")
    subprocess.run([javac, "--release", "17", "-Xlint:all,-classfile,-path,-processing", "-Werror", "-cp",
                    f"{classes}:{jar}", "-d", where, os.path.join(os.environ["EXAMPLES"], "java", "SparkJudge.java")],
                   check=True)
    made = os.path.join(where, "spark-judge.jar")
    with zipfile.ZipFile(made, "w") as out:
        for file in glob.glob(f"{where}/*.class"):
            out.write(file, os.path.basename(file))
    return made


def fleet():
    """The invented fleet, and rows that nobody can read."""
    with open(os.path.join(os.environ["EXAMPLES"], "data", "fleet.csv"), encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    rows = [row for row in rows if any(row)]
    odd = [[cell or None for cell in row] for row in rows[:3]]
    odd[0][head.index("applied")] = "2-Jan"
    odd[1][head.index("chamber")] = "\u00c9\U0001f69a"
    odd[2][head.index("released")] = "4" * 300
    return head, rows + odd


def exact(text):
    return None if text is None else float(Fraction(text))


def same_as_python(spark):
    """In a session that was opened with the jars."""
    head, rows = fleet()
    given = spark.createDataFrame(rows, ", ".join(f"{name} string" for name in head)).repartition(2)
    given.createOrReplaceTempView("fleet")
    lines = {"spark": spark}
    exec(fleets.recipe("registerJavaFunction"), lines)
    java = sorted(((*row[:4], *map(exact, row[4:])) for row in lines["found"].collect()), key=repr)
    names = ("unit_no", "position", "verdict", "reasons", "applied_stroke_in", "limit_in", "margin_in")
    python = sorted((tuple(row[name] for name in names)
                     for row in spark_fleet.judged_rows(given, rt.Judge()).collect()), key=repr)
    assert len(java) == len(rows) > 40, java
    assert java == python, [pair for pair in zip(java, python) if pair[0] != pair[1]][:3]
    assert {row[2] for row in java} == {"in-adjustment", "out-of-adjustment", "inoperative", "undetermined"}
