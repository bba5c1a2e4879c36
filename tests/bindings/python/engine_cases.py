# SPDX-License-Identifier: Apache-2.0
"""What every extension of a database is asked: the file of wheel ends, and the wheel ends of the conformance kit.

`judged` takes texts by argument, one dictionary a wheel end, and gives a row of answers for each."""
import csv
import json
import os
from fractions import Fraction

ROOT = os.environ["ROOT"]


def is_exact(found, wanted):
    return found is None if not wanted else found is not None and Fraction(found) == Fraction(wanted)


def check_wheel_ends(judged):
    with open(os.path.join(ROOT, "tests/cases/wheel_ends.csv"), encoding="utf-8", newline="") as file:
        cases = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(cases) > 50
    found = judged([{"chamber": case["chamber_text"], "stroke_class": case["stroke_class"], "date": case["as_of"],
                     "rated_stroke": case["rated_stroke_in"], "rules": case["ruleset"], "psi": case["psi"],
                     "released": case["released"], "applied": case["applied"]} for case in cases])
    assert len(found) == len(cases)
    for case, row in zip(cases, found):
        assert row["verdict"] == case["expect_verdict"], (case["id"], row)
        assert not case["expect_stroke_in"] or is_exact(row["stroke"], case["expect_stroke_in"]), case["id"]
        assert not case["expect_limit_in"] or is_exact(row["limit"], case["expect_limit_in"]), case["id"]


def check_conformance(judged, is_text=lambda text: True):
    """Gives (the answer of the kit, its error, the row) for what an extension has beside them.

    `is_text` says of a text whether the database can hold it."""
    with open(os.path.join(ROOT, "tests/conformance/small.jsonl"), encoding="utf-8") as file:
        vectors = [vector for vector in map(json.loads, file) if vector["question"]["ask"] == "wheel-end"]
    vectors = [vector for vector in vectors
               if "verdict" in vector["answer"] and is_text("".join(map(str, vector["question"].values())))]
    assert len(vectors) > 200
    found = judged([vector["question"] for vector in vectors])
    assert len(found) == len(vectors)
    for vector, row in zip(vectors, found):
        answer = vector["answer"]
        for name in ("verdict", "stroke", "limit", "margin"):
            assert row[name] == answer[name], (vector, row)
        assert row["reasons"].split() == answer["reasons"], (vector, row)
        yield answer, answer["error"] or {"status": "ok", "field": None, "column": 0}, row
