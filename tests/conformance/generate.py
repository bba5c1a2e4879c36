# SPDX-License-Identifier: Apache-2.0
"""Makes the vectors of the conformance kit: questions with the answers that every judge must give.

    generate.py JUDGE KIND              writes the vectors; KIND: small (kept as small.jsonl) or full
    generate.py JUDGE schema            writes the JSON Schema of a vector (kept as vector.schema.json)
    generate.py JUDGE digests           writes count and digests of each kind (kept as digests.txt)
    generate.py JUDGE public            writes the public functions and records (kept as public.txt)

JUDGE is the program that judge.c makes. The questions are the files of tests/cases, and readings around every limit of
every rule set. The answers are the library's; where a case or the second judge (opinion.py) says what is right and the
library says something else, nothing is written. The same tree gives the same bytes."""
import collections
import csv
import itertools
import json
import pathlib
import subprocess
import sys
from fractions import Fraction

HERE = pathlib.Path(__file__).resolve().parent
CASES, ROOT = HERE.parent / "cases", HERE.parent.parent
sys.path += [str(HERE), str(HERE.parent / "checks")]

import opinion  # noqa: E402  beside this file
import run  # noqa: E402
import tree  # noqa: E402  of the checks

KINDS = ("small", "full")

# A question is flat, all its values are texts. `wanted` holds what the answer must say, by name.
Case = collections.namedtuple("Case", "id question wanted why source")


def rows_of(name):
    with open(CASES / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def written(**texts):
    """Without what is not written on the form."""
    return {name: text for name, text in texts.items() if text not in ("", None)}


# --- The files of tests/cases ----------------------------------------------------------------------------------------

def spellings():
    for row in rows_of("spellings.csv"):
        accepted, refused = {"error": None, "value": row["value_in"]}, {"value": run.ABSENT}
        wanted = {"accept": accepted, "refuse": refused, "either": {}}[row["expect"]]
        yield Case(row["id"], {"ask": "length", "text": row["text"]}, wanted, row["why"], "")
        yield Case(row["id"] + "-row", {"ask": "wheel-end", "rules": "us-fmcsr", "chamber": "30", "released": "1",
                                        "applied": row["text"]}, {}, row["why"], "")


def chamber_marks():
    for number, row in enumerate(rows_of("chamber_marks.csv"), 1):
        if row["outcome"] == "ok":
            wanted = {"family": row["family"], "size": row["size"], "spring_size": row["spring"],
                      "stroke_class": row["class"], "error": None}
        else:
            status = {"unknown": "unknown-chamber", "date": "date-cell"}.get(row["outcome"], row["outcome"])
            wanted = {"error": {"status": status, "field": run.ANY, "column": int(row["column"] or 0)}}
        yield Case(f"CM{number:03}", {"ask": "chamber", "text": row["mark"]}, wanted, "", row["source"])


def wheel_ends():
    for row in rows_of("wheel_ends.csv"):
        question = written(ask="wheel-end", rules=row["ruleset"], chamber=row["chamber_text"], released=row["released"],
                           applied=row["applied"], stroke_class=row["stroke_class"], rated_stroke=row["rated_stroke_in"],
                           psi=row["psi"], date=row["as_of"])
        wanted = {"verdict": row["expect_verdict"], **written(stroke=row["expect_stroke_in"], limit=row["expect_limit_in"])}
        yield Case(row["id"], question, wanted, row["why"], "")


def limit_edges():
    for number, row in enumerate(rows_of("limit_edges.csv"), 1):
        stroke = opinion.number(row["stroke"])
        question = written(ask="wheel-end", rules=row["rules"], chamber=f"{row['family']} {row['size']}", released="2",
                           applied=mixed(2 + stroke), stroke_class=row["class"].replace("any", ""),
                           rated_stroke=row["rated_stroke"], psi="85" if row["rules"] == "us-periodic" else "95",
                           date=row["as_of"])
        yield Case(f"LE{number:03}", question, {"verdict": row["verdict"], "stroke": str(stroke)}, "", row["source"])


def vehicles():
    words = {"yes": "out-of-service", "no": "below-criterion", "ambiguous": "ambiguous"}
    for row in rows_of("vehicles.csv"):
        question = {"ask": "count", "brakes": row["brakes"], "full": row["full_defects"], "half": row["half_defects"]}
        wanted = {"share": str(Fraction(row["expect_percent"]) / 100), "outcome": words[row["expect_out_of_service"]]}
        yield Case(row["vehicle_id"], question, wanted, row["why"], "")


def air_edges():
    for number, row in enumerate(rows_of("air_edges.csv"), 1):
        texts = {name: row[name] for name in row if name not in ("rules", "towed", "result", "at_limit", "source")}
        question = written(ask="air", rules=row["rules"], towed_units=row["towed"], **texts)
        yield Case(f"AE{number:03}", question, {"result": row["result"], "at_limit": row["at_limit"], "error": None}, "",
                   row["source"])


def kept_cases():
    return [*spellings(), *chamber_marks(), *wheel_ends(), *limit_edges(), *vehicles(), *air_edges()]


# --- Readings around every limit -------------------------------------------------------------------------------------

def mixed(value):
    """2 1/4; as a tape is read."""
    whole, rest = divmod(value, 1)
    return str(whole) if rest == 0 else f"{whole} {rest}" if whole else str(rest)


def hyphened(value):
    return mixed(value).replace(" ", "-") + " in"


def marked(value):
    return mixed(value) + '"'


def typographic(value):
    """2⅛ where there is such a character."""
    whole, rest = divmod(value, 1)
    glyphs = {Fraction(1, 8): "⅛", Fraction(1, 4): "¼", Fraction(3, 8): "⅜", Fraction(1, 2): "½", Fraction(5, 8): "⅝",
              Fraction(3, 4): "¾", Fraction(7, 8): "⅞"}
    return f"{whole or ''}{glyphs[rest]}" if rest in glyphs else mixed(value).replace("/", "⁄")


def decimal(value):
    """2.125; finite, as the denominators are powers of two."""
    places = max(0, value.denominator.bit_length() - 1)
    digits = f"{int(value * 10 ** places):0{places + 1}}"
    return digits[:len(digits) - places] + ("." + digits[len(digits) - places:] if places else "")


def millimetres(value):
    """The nearest tenth of a millimetre, which is another length."""
    return tenths(value) + " mm"


def tenths(value):
    of = round(value * 254)
    return f"{of // 10}.{of % 10}"


SPELLINGS = (mixed, hyphened, marked, typographic, decimal, millimetres)
RELEASED = (Fraction(3, 4), Fraction(2), Fraction(17, 8), Fraction(43, 16))
OFFSETS = [Fraction(n, 64) for n in (-32, -16, -8, -4, -3, -2, -1, 0, 1, 2, 3, 4, 8, 16, 32)]
# Before and after the application; the ends of the windows in psi and kPa, and beside them.
PRESSURES = [("", ""), ("79", ""), ("80", ""), ("89", ""), ("89.9", ""), ("90", ""), ("95", ""), ("100", ""), ("100.1", ""),
             ("101", ""), ("95", "88"), ("102", "96"), ("101", "89"), ("", "95"), ("650 kPa", ""), ("620 kPa", "600 kPa"),
             ("690 kPa", "")]
DIVISIONS = ("1/8", "1/16", "1/32", "1 mm")
CONDITIONS = ({"engine": "on"}, {"spring_brake": "on"}, {"drum": "hot"}, {"unit": "mm"}, {"chamber": ""}, {"applied": ""},
              {"released": "2-Jan"}, {"psi": "much"}, {"date": "03/04/2024"}, {"date": "31/02/2024"})


def strokes_of(limit):
    """Around a limit; none at all, hardly any, and one that no rod has."""
    return [Fraction(0), Fraction(1, 4), Fraction(-1, 16), *(limit + off for off in OFFSETS), limit + 2]


def base_of(row):
    """A wheel end of the row of limits, on a day and at a pressure at which it judges."""
    return written(ask="wheel-end", rules=row["rules"], chamber=f"{row['family']} {row['size']}",
                   stroke_class=row["class"].replace("any", ""), rated_stroke=row["rated_stroke"],
                   psi="85" if row["rules"] == "us-periodic" else "95", date=row["until"] or "")


def spelled(row):
    """Every stroke in every spelling, from several rests."""
    for stroke, released, spell in itertools.product(strokes_of(row["limit"]), RELEASED, SPELLINGS):
        if released + stroke >= 0:
            yield {"released": spell(released), "applied": spell(released + stroke)}


def under_conditions(row):
    """Every stroke at every pressure, on days around the row's first and last, and what else a form asks."""
    pairs = [{"released": mixed(Fraction(2)), "applied": mixed(2 + stroke)} for stroke in strokes_of(row["limit"])]
    for pair, (psi, after) in itertools.product(pairs, PRESSURES):
        yield {**pair, "psi": psi, "psi_after": after}
    for pair, day in itertools.product(pairs, ["", *opinion.days_around(row)]):
        yield {**pair, "date": day}
    for pair, division in itertools.product(pairs, DIVISIONS):
        yield {**pair, "division": division}
    for pair, condition in itertools.product(pairs, CONDITIONS):
        yield {**pair, **condition}


def of_marks(row):
    """The same chamber with less or other marks: a bare number, another class, a rated stroke, a limit of its own."""
    size = row["size"]
    changes = [{"chamber": size}, {"chamber": size + "L"}, {"chamber": f"Type {size}", "stroke_class": "long"},
               {"stroke_class": ""}, {"stroke_class": "standard", "rated_stroke": "3"},
               {"chamber": size, "rated_stroke": "2 1/2"}, {"marked_limit": "1 3/4"}]
    for change, stroke in itertools.product(changes, strokes_of(row["limit"])):
        yield {"released": mixed(Fraction(2)), "applied": mixed(2 + stroke), **change}


def unlisted(rules):
    """Actuators that no table lists, judged by a share of their rated stroke or by their mark, if at all."""
    for rated, size in itertools.product(("2 1/2", "3", "2 1/4", "64 mm"), ("18", "clamp 22", "rotochamber 40")):
        share = (Fraction(64 * 10, 254) if "mm" in rated else opinion.number(rated)) * Fraction(4, 5)
        for mark, off in itertools.product(({"rated_stroke": rated}, {"marked_limit": rated}, {}), OFFSETS):
            stroke = Fraction(round(share * 64), 64) + off
            yield {"ask": "wheel-end", "rules": rules, "chamber": size, "psi": "95", "released": "1 1/2",
                   "applied": mixed(Fraction(3, 2) + stroke), **mark}


def grid(described):
    """(question, row or none) around every row of every rule set, numbered in order."""
    for row in described.rows:
        for change in (*spelled(row), *under_conditions(row), *of_marks(row)):
            yield written(**{**base_of(row), **change}), row
    for rules in described.sets:
        for question in unlisted(rules):
            yield question, None


def grid_cases(described):
    for number, (question, row) in enumerate(grid(described), 1):
        yield Case(f"G{number:06}", question, {}, "", row["source"] if row else "")


# --- Answers ---------------------------------------------------------------------------------------------------------

class Described:
    """What the library says of itself: rows of limits, rule sets by id, words by enumeration, names of records."""

    def __init__(self, rows, sets, words, records):
        self.rows, self.sets, self.words, self.records = rows, sets, words, records


def describe(judge):
    """Limits, rule sets and words as the library has them."""
    rows, sets, words, records = [], {}, {}, []
    for line in subprocess.run([judge, "--describe"], stdout=subprocess.PIPE, encoding="utf-8", check=True).stdout.splitlines():
        found = json.loads(line)
        if "row" in found:
            rows.append({**found["row"], "rules": found["rules"], "limit": opinion.number(found["row"]["limit"])})
        elif "set" in found:
            sets[found["rules"]] = found["set"]
        elif "record" in found:
            records.append(found["record"])
        else:
            words[found["enumeration"]] = found["words"]
    return Described(rows, sets, words, records)


def faults_of(case, answer):
    """What a case wants otherwise."""
    return [f"{name}: {answer.get(name, run.ABSENT)!r}, wanted {value!r}" for name, value in case.wanted.items()
            if not run.alike(answer.get(name, run.ABSENT), value)]


def cases_of(kind, described):
    kept, around = kept_cases(), list(grid_cases(described))
    # Of what is small every fifth, and steps that meet every row, offset and change in turn.
    return kept + around if kind == "full" else kept[::5] + around[::911]


def vector_of(case, answer):
    members = {name: answer[name] for name in answer if name != "id"}
    return {"id": case.id, "question": case.question, "answer": members, **written(why=case.why, source=case.source)}


def judged(judge, kind):
    """The vectors, and how many of their answers the second judge gave, too."""
    described = describe(judge)
    cases = cases_of(kind, described)
    answers, faults = run.ask([judge], [run.request(case.id, case.question) for case in cases])
    twice = 0
    for case, answer in zip(cases, answers):
        second = opinion.differences(case.question, answer, described) if case.question["ask"] == "wheel-end" else None
        twice += second is not None
        faults += [f"{case.id} {case.question}: {fault}" for fault in faults_of(case, answer) + (second or [])]
    if faults:
        sys.exit("\n".join([f"{len(faults)} answers are not what they must be", *faults[:10]]))
    return [vector_of(case, answer) for case, answer in zip(cases, answers)], twice


def vectors(judge, kind):
    return judged(judge, kind)[0]


# --- What is kept ----------------------------------------------------------------------------------------------------

def one_of(words):
    return {"enum": sorted(words)}


def closed(required, optional=None):
    return {"type": "object", "required": sorted(required), "properties": {**required, **(optional or {})},
            "additionalProperties": False}


def schema(words):
    text, number = {"type": "string"}, {"type": ["string", "null"], "pattern": "^-?[0-9]+(/[1-9][0-9]*)?$"}
    error = {"anyOf": [{"type": "null"}, closed({"status": one_of(words["rodt_status"]), "field": text,
                                                 "column": {"type": "integer", "minimum": 0}})]}
    finding = {"verdict": one_of(words["rodt_verdict"]), "stroke": number, "limit": number, "margin": number,
               "proof": one_of(words["rodt_proof"]), "probability_over": number,
               "reasons": {"type": "array", "items": one_of(words["rodt_reason"])}}
    chamber = {"family": one_of(words["rodt_family"]), "size": text, "spring_size": text,
               "stroke_class": one_of(words["rodt_stroke_class"])}
    count = {"outcome": one_of(words["rodt_outcome"]), "share": number}
    air = {"result": one_of(words["rodt_air_result"]), "at_limit": one_of(["yes", "no"])}
    answers = [closed({"error": error, **members}) for members in (finding, chamber, count, air, {"value": number})]
    question = {"type": "object", "required": ["ask"], "additionalProperties": text,
                "properties": {"ask": one_of(["wheel-end", "length", "chamber", "count", "air"])}}
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "A vector of the conformance kit",
            **closed({"id": text, "question": question, "answer": {"anyOf": [*answers, closed({"error": error})]}},
                     {"why": text, "source": text})}


def digests(judge):
    for kind in KINDS:
        made, twice = judged(judge, kind)
        yield f"{kind} {len(made)} {run.digest(map(run.asked, made))} {run.digest(map(run.expected, made))} {twice}"


def public(judge):
    yield from (f"function {name}" for name in sorted(tree.public_functions(ROOT)))
    yield from (f"record {name}" for name in sorted(describe(judge).records))


LICENCE = "# SPDX-License-Identifier: Apache-2.0\n"
DIGESTS = """# Made by generate.py: kind; vectors; SHA-256 of their questions and of their answers, a line in canonical form each; how
# many of the answers the second judge gave, too.
"""
PUBLIC = """# Made by generate.py from the headers and the library's description of itself. A binding has each of these, or its list
# of what it leaves out names it.
"""


def lines(judge, what):
    """What is kept, or made on demand, line by line."""
    if what == "schema":
        return json.dumps(schema(describe(judge).words), indent=1, sort_keys=True).splitlines()
    if what == "digests":
        return (LICENCE + DIGESTS).splitlines() + list(digests(judge))
    if what == "public":
        return (LICENCE + PUBLIC).splitlines() + list(public(judge))
    return [json.dumps(vector, ensure_ascii=False) for vector in vectors(judge, what)]


def main(judge, what):
    sys.stdout.reconfigure(encoding="utf-8", newline="\n")
    sys.stdout.writelines(line + "\n" for line in lines(judge, what))


if __name__ == "__main__":
    main(*sys.argv[1:])
