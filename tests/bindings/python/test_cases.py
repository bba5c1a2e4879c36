# SPDX-License-Identifier: Apache-2.0
"""The case files of the C tests, read by Python: the answers are the same."""
import csv
import os
from fractions import Fraction

import rodtravel as rt
import tap

CASES = os.environ["CASES"]


def rows(name):
    with open(os.path.join(CASES, name), encoding="utf-8", newline="") as file:
        lines = (line for line in file if not line.startswith("#"))
        found = list(csv.DictReader(lines))
    assert len(found) > 10, name
    return found


def exact(text):
    return Fraction(text) if text else None


def test_spellings():
    for row in rows("spellings.csv"):
        try:
            value = rt.read_length(row["text"])
        except rt.Error as error:
            assert row["expect"] != "accept", (row["id"], str(error))
            assert error.text and error.status is not rt.Status.INTERNAL
        else:
            assert row["expect"] != "refuse", row["id"]
            assert not row["value_in"] or value == Fraction(row["value_in"]), row["id"]
            assert rt.read_length(rt.write_length(value)) == value, row["id"]


def test_chamber_marks():
    names = {"empty": "EMPTY", "unknown": "UNKNOWN_CHAMBER", "ambiguous": "AMBIGUOUS", "date": "DATE_CELL"}
    for row in rows("chamber_marks.csv"):
        try:
            chamber = rt.read_chamber(row["mark"])
        except rt.Error as error:
            assert row["outcome"] != "ok", row
            assert (error.column or 0) == int(row["column"] or 0), (row, error.column)
            assert error.status.name == names.get(row["outcome"], row["outcome"].upper().replace("-", "_")), (row, error)
        else:
            assert row["outcome"] == "ok", row
            read = (chamber.family, chamber.size or "", chamber.spring_size or "", chamber.stroke_class)
            assert read == (row["family"], row["size"], row["spring"], row["class"]), (row, chamber)


def judge_wheel_end(row):
    return rt.judge_row(chamber=row["chamber_text"], stroke_class=row["stroke_class"], rated_stroke=row["rated_stroke_in"],
                        date=row["as_of"], rules=row["ruleset"], released=row["released"], applied=row["applied"],
                        psi=row["psi"])


def test_wheel_ends():
    for row in rows("wheel_ends.csv"):
        finding, _ = judge_wheel_end(row)
        assert finding.verdict == row["expect_verdict"], (row["id"], finding)
        assert not row["expect_stroke_in"] or finding.applied_stroke == exact(row["expect_stroke_in"]), row["id"]
        assert not row["expect_limit_in"] or finding.limit == exact(row["expect_limit_in"]), row["id"]


def test_wheel_ends_judged_strictly():
    """judge gives the same as judge_row wherever it does not refuse."""
    judged = 0
    for row in rows("wheel_ends.csv"):
        lenient, error = judge_wheel_end(row)
        try:
            strict = rt.judge(row["chamber_text"], row["released"], row["applied"], stroke_class=row["stroke_class"],
                              rated_stroke=row["rated_stroke_in"], date=row["as_of"] or None, rules=row["ruleset"],
                              psi=row["psi"])
        except rt.Error as refusal:
            assert (error.status, error.field, error.text) == (refusal.status, refusal.field, refusal.text), row["id"]
        else:
            assert error is None and strict == lenient, row["id"]
            judged += 1
    assert judged > 40


def test_wheel_ends_in_columns():
    columns = {"chamber": "chamber_text", "stroke_class": "stroke_class", "rated_stroke": "rated_stroke_in", "date": "as_of",
               "released": "released", "applied": "applied", "psi": "psi"}
    all_rows = rows("wheel_ends.csv")
    for rules in {row["ruleset"] for row in all_rows}:
        some = [row for row in all_rows if row["ruleset"] == rules]
        answers = rt.judge_columns({name: [row[of] for row in some] for name, of in columns.items()}, rules=rules)
        for row, answer in zip(some, answers):
            finding, _ = judge_wheel_end(row)
            assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons), row["id"]
            assert answer.applied_stroke == finding.applied_stroke, row["id"]


def test_spellings_in_columns():
    texts = [row["text"] for row in rows("spellings.csv")]
    answers = rt.judge_columns(chamber=["30"] * len(texts), released=["1"] * len(texts), applied=texts)
    for text, answer in zip(texts, answers):
        finding, _ = rt.judge_row(chamber="30", released="1", applied=text)
        assert (answer.verdict, answer.reasons) == (finding.verdict, finding.reasons), text


def test_law_cell_by_cell():
    families = {"clamp": "clamp", "bolt": "bolt", "rotochamber": "rotochamber", "DD-3": "DD-3"}
    for row in rows("us-393-47.csv"):
        rated = row["rated_note"].split("-inch")[0] or None
        stroke_class = row["class"] if row["class"] in ("standard", "long") else "unknown"
        chamber = rt.Chamber(row["size"], family=families[row["family"]], stroke_class=stroke_class, rated_stroke=rated)
        answer = rt.rule_set("us-fmcsr").find_limit(chamber, day=row["until"] or row["from"])
        assert answer.limit == rt.read_length(row["limit_in"]), row
        assert answer.law_row.published == row["limit_in"] and answer.evidence == "checked", row


def test_vehicles():
    words = {"yes": "out-of-service", "no": "below-criterion", "ambiguous": "ambiguous"}
    for row in rows("vehicles.csv"):
        brakes, full, half = (int(row[name]) for name in ("brakes", "full_defects", "half_defects"))
        count = rt.Tally(brakes=brakes, full=full, half=half).judge(brakes)
        assert count.share * 100 == exact(row["expect_percent"]), row
        assert count.outcome == words[row["expect_out_of_service"]], row


def test_vehicles_from_findings():
    """The same counts, from brakes that were judged."""
    stroke = {"full": "4 1/4", "half": "4 1/8", "none": "3"}
    for row in rows("vehicles.csv"):
        brakes, full, half = (int(row[name]) for name in ("brakes", "full_defects", "half_defects"))
        kinds = ["full"] * full + ["half"] * half + ["none"] * (brakes - full - half)
        ends = [rt.WheelEnd(f"{1 + n // 2}{'LR'[n % 2]}", rt.judge("30", "2", stroke[kind])) for n, kind in enumerate(kinds)]
        found = rt.judge_vehicle(ends)
        assert found.count.share * 100 == exact(row["expect_percent"]), row
        assert found.out_of_adjustment == full + half and found.in_adjustment == brakes - full - half


def test_air_edges():
    for row in rows("air_edges.csv"):
        words = {"vehicle": row["vehicle"]} if row["vehicle"] else {}
        if row["span"]:
            words["span"] = row["span"]
        numbers = {name: row[name] for name in ("pressure", "before", "after", "cut_out") if row[name]}
        for name in ("seconds", "actual_volume", "required_volume"):
            if row[name]:
                numbers[name] = Fraction(row[name])
        if row["built"]:
            numbers["built"] = int(row["built"]) if row["built"].isdigit() else row["built"]
        answer = {"": None, "yes": True, "no": False}[row["answer"]]
        finding = rt.judge_air(row["check"], answer=answer, towed_units=int(row["towed"] or 0),
                               applications=int(row["applications"] or 0), rules=row["rules"], **words, **numbers)
        assert (finding.result, finding.at_limit) == (row["result"], row["at_limit"] == "yes"), (row, finding.sentence)


def test_rated_volumes():
    for row in volume_rows():
        assert rt.rated_volume(row["type"]) == int(row["volume"]), row


def volume_rows():
    with open(os.path.join(CASES, "us-571-121-table-v.csv"), encoding="utf-8", newline="") as file:
        found = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(found) == len(rt.volume_rows()) == 9
    return found


if __name__ == "__main__":
    tap.run(globals())
