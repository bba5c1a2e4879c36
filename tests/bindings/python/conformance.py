# SPDX-License-Identifier: Apache-2.0
"""Python's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
standard output."""
import json
import sys
from fractions import Fraction

import rodtravel as rt


def exact(value):
    return None if value is None else str(value)


def error_of(error):
    return error and {"status": error.status.name.lower().replace("_", "-"), "field": error.field or "", "column": error.column or 0}


def wheel_end(question):
    finding, error = rt.judge_row(**question)
    return {"verdict": finding.verdict, "stroke": exact(finding.applied_stroke), "limit": exact(finding.limit),
            "margin": exact(finding.margin), "proof": finding.proof, "probability_over": exact(finding.probability_over),
            "reasons": list(finding.reasons), "error": error_of(error)}


def length(question):
    return {"value": exact(rt.read_length(question["text"]))}


def chamber(question):
    read = rt.read_chamber(question["text"])
    return {"family": read.family, "size": read.size or "", "spring_size": read.spring_size or "",
            "stroke_class": read.stroke_class}


def count(question):
    found = rt.Tally(**{name: int(number) for name, number in question.items()}).judge()
    return {"outcome": found.outcome, "share": exact(found.share)}


def air(question):
    """Texts of pressures are read by judge_air; its numbers are numbers."""
    numbers = {name: Fraction(question.pop(name)) for name in ("seconds", "actual_volume", "required_volume") if name in question}
    numbers.update({name: int(question.pop(name)) for name in ("towed_units", "applications") if name in question})
    built, answer = question.pop("built", ""), question.pop("answer", "")
    if built:
        numbers["built"] = int(built) if built.isdigit() else built
    finding = rt.judge_air(answer={"": None, "yes": True, "no": False}[answer], **numbers, **question)
    return {"result": finding.result, "at_limit": "yes" if finding.at_limit else "no"}


ASKED = {"wheel-end": wheel_end, "length": length, "chamber": chamber, "count": count, "air": air}


def answer_to(question):
    name, ask = question.pop("id"), question.pop("ask")
    try:
        return {"id": name, "error": None, **ASKED[ask](question)}
    except rt.Error as error:
        return {"id": name, "error": error_of(error)}


def main():
    sys.stdin.reconfigure(encoding="utf-8")
    for line in sys.stdin:
        print(json.dumps(answer_to(json.loads(line))))


if __name__ == "__main__":
    main()
