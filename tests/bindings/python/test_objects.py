# SPDX-License-Identifier: Apache-2.0
"""Objects are read-only values: equal, hashable, copied, pickled, and freed."""
import copy
import gc
import itertools
import json
import os
import pickle
import threading
from datetime import date
from fractions import Fraction

import rodtravel as rt
import tap


def one_of_each():
    finding = rt.judge("24/30", "2 1/4", "4 1/16", psi=95, division="1/16", date=date(2024, 2, 11))
    end = rt.WheelEnd("1L", finding, adjuster="automatic", arm_length="5 1/2")
    vehicle = rt.judge_vehicle([end, rt.WheelEnd("1R", rt.judge("20", "2", "2"))], brakes=4)
    identified = rt.identify(stamp="30", port="square", diameter="8 1/8")
    rules = rt.rule_set("us-fmcsr")
    air = rt.judge_air("loss-released", before=120, after=118, vehicle="single", rules="us-cdl", built=1999)
    answers = rt.judge_columns(chamber=["30"], released=["2"], applied=["4"])
    return [finding, finding.chamber, finding.source, finding.law_row, end, end.position, vehicle, vehicle.count,
            vehicle.count.tally, *vehicle.axles, *vehicle.axles[0].remarks, *vehicle.advice, identified,
            *identified.candidates, rules, rules.limits[0], rules.find_limit("30"), rt.rule_set("us-cdl").air_limits[0],
            air, air.reading, rt.chamber_rows()[0], rt.volume_rows()[0], rt.criterion_parts()[0], answers[0],
            rt.Judge().vehicles({"unit_no": ["1"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}, "unit_no")[0]]


def test_every_class_is_here():
    found = {type(value) for value in one_of_each()}
    records = {value for value in vars(rt).values() if isinstance(value, type) and issubclass(value, rt.Record)}
    assert records - found == {rt.Record}, records - found


def test_equal_hash_copy_pickle():
    for value, again in zip(one_of_each(), one_of_each()):
        assert value == again and hash(value) == hash(again), value
        assert copy.copy(value) == value and copy.deepcopy(value) == value
        for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
            back = pickle.loads(pickle.dumps(value, protocol))
            assert back == value and hash(back) == hash(value) and repr(back) == repr(value), value
        assert value != "text" and value != None  # noqa: E711
        assert len({value, again}) == 1


def test_unequal():
    values = one_of_each()
    for number, value in enumerate(values):
        assert not any(value == other for other in values[number + 1:] if type(other) is not type(value))
    assert rt.judge("30", "2", "4") != rt.judge("30", "2", "4 1/8")
    assert rt.judge("30", "2", "4") != rt.judge("30", "2", "4", rules="us-periodic")
    assert rt.Position(1, "left") != rt.Position(1, "right")


def test_read_only():
    for value in one_of_each():
        name = next(name for name in dir(type(value)) if isinstance(getattr(type(value), name), property))
        tap.refused(AttributeError, setattr, value, name, 1)
        tap.refused(AttributeError, delattr, value, name)
        tap.refused(AttributeError, setattr, value, "anything", 1)


def test_what_is_held_is_read_only():
    """Of objects with slots of their own, too: nothing can be put in their place or taken out."""
    judge, row = rt.Judge(), {"unit_no": ["1"], "chamber": ["30"], "released": ["2"], "applied": ["4"]}
    answers = judge(row)
    for value in (judge, answers, answers.verdict, answers.summary(), judge.vehicles(row, "unit_no"), rt.Plan(), judge.rules):
        for name in type(value).__slots__:
            tap.refused(AttributeError, setattr, value, name, None)
            tap.refused(AttributeError, delattr, value, name)


def test_not_made_by_hand():
    for kind in (rt.Finding, rt.Rules, rt.Limit, rt.Source, rt.Answers, rt.Column, rt.Record, rt.Identification):
        assert "not by hand" in str(tap.refused(TypeError, kind))


def test_repr_and_asdict():
    for value in one_of_each():
        assert "SWIG" not in repr(value).upper() and "0x" not in repr(value), repr(value)
        if isinstance(value, rt.Record):
            assert list(value.asdict()) >= list(value._fields)
            assert all(type(item) in (dict, list, str, int, bool, Fraction, date, type(None))
                       for item in value.asdict().values()), value.asdict()
    assert eval(repr(rt.read_chamber("30L")), vars(rt)).size == "30"


def test_sentences_after_pickling():
    for rules in ("us-fmcsr", "ca-nsc", "rated-80", own_rules()):
        for applied in ("3", "3 15/16", "4", "4 1/4", "2", "1"):
            finding = rt.judge("30", "2", applied, division="1/16", rules=rules, date="2024-01-01", rated_stroke="2 1/2")
            back = pickle.loads(pickle.dumps(finding))
            assert (back.sentence, back.sentences, back.proof_sentence) == (finding.sentence, finding.sentences,
                                                                            finding.proof_sentence)
            assert (back.law_row, back.own_row, back.source, back.defect) == (finding.law_row, finding.own_row,
                                                                                finding.source, finding.defect)


# Of records: what the package says otherwise, or keeps to itself.
NO_FIELDS = {"rodt_finding": {"other_released", "other_applied"}, "rodt_identification": {"count"},
             "rodt_axle_finding": {"mismatches"}, "rodt_vehicle_finding": {"axle_count"}}


def test_every_member_of_a_record_has_a_field():
    from rodtravel import _record, _rodtravel as low
    for name, kind in _record._records.items():
        described = {member for member, *_ in low.record_layout(name)}
        assert described - set(kind._members) == NO_FIELDS.get(name, set()), name


def test_a_lost_blank_is_pickled_too():
    finding = rt.judge("30", "17/8", "4 1/8")
    back = pickle.loads(pickle.dumps(finding))
    assert "lost-blank" in finding.reasons and back.sentences == finding.sentences, back.sentences


def test_pickle_of_other_tables_is_refused():
    from rodtravel import _findings
    values = rt.judge("30", "2", "4").__reduce__()[1]
    error = tap.refused(rt.Error, _findings._restore, values[0], values[1], "1999-01-01")
    assert "1999-01-01" in str(error)


def own_rules():
    return rt.load_rules("family,size,class,limit\nclamp,30,standard,1 7/8\n", name="yard")


OWN_AIR = "check,comparison,value,measure\nwarning,not-less-than,70,psi\n"


def test_own_air_checks_on_another_law():
    own = rt.load_rules("family,size,class,limit\nclamp,30,standard,1 7/8\n" + OWN_AIR, name="yard", air_law="us-cdl")
    assert (own.law.id, own.air_law.id, rt.rule_set("us-cdl").air_law) == ("us-fmcsr", "us-cdl", None)
    strict, lax = (rt.judge_air("warning", pressure=psi, rules=own) for psi in (65, 75))
    assert (str(strict.result), str(strict.law_result)) == ("defective", "good")
    assert (str(lax.result), strict.own_row.value, strict.law_row.value) == ("good", 70, 60)
    assert str(rt.judge("30", "2", "3 15/16", rules=own).verdict) == "out-of-adjustment"
    again = pickle.loads(pickle.dumps(own))
    assert again == own and again.air_law.id == "us-cdl"
    assert own != rt.load_rules(own._made_from[0], name="yard")
    error = tap.refused(rt.Error, rt.load_rules, OWN_AIR.replace("70", "50"), "yard", "us-fmcsr", "us-cdl")
    assert error.status == rt.Status.LAXER and error.line == 2


def test_reports_as_json():
    """Findings, checks and vehicles in the names of the command; exact numbers are texts."""
    own = rt.load_rules(OWN_AIR, name="yard", air_law="us-cdl")
    air = json.loads(rt.judge_air("warning", pressure=65, rules=own).json)
    assert (air["result"], air["own_limits"], air["law_result"], air["rules"]) == ("defective", "yard", "good", "us-cdl")
    finding = rt.judge("30", "2", "4 1/8", stroke_class="standard", psi=95)
    stroke = json.loads(finding.json)
    assert (stroke["verdict"], stroke["margin"], len(stroke["sentences"])) == (
        "out-of-adjustment", "-1/8", len(finding.sentences))
    vehicle = rt.judge_vehicle([rt.WheelEnd("1L", finding, adjuster="manual")], brakes=2)
    told = json.loads(vehicle.json)
    assert (told["sentence"], told["wheel_ends"][0]["advice"]) == (vehicle.count.sentence, vehicle.advice[0].sentence)
    assert "json" not in vehicle.asdict() and "sentences" not in repr(vehicle)


def test_a_note_on_a_printed_figure():
    loss = {"after": "700 kPa", "vehicle": "single", "rules": "ca-on"}
    assert "whole kPa" in rt.judge_air("loss-applied", before="721 kPa", **loss).note
    assert rt.judge_air("loss-applied", before="722 kPa", **loss).note == ""


def test_printed_kpa_of_a_build_up():
    rows = [row for row in rt.rule_set("ca-on").air_limits if row.start_kpa is not None]
    assert rows and all(abs(row.start_kpa - row.start) < 2 and abs(row.stop_kpa - row.stop) < 2 for row in rows)


def test_a_time_as_text():
    texts = ("2:05", "125", "2 min 5 s", 125)
    assert {rt.judge_air("build-up", seconds=text).reading.seconds for text in texts} == {125}
    error = tap.refused(rt.Error, rt.judge_air, "build-up", seconds="1:75")
    assert (error.field, error.status) == ("seconds", rt.Status.SYNTAX)
    tap.refused(TypeError, rt.judge_air, "build-up", seconds=2.5)


def test_members_looked_up_are_those_of_the_tuple():
    low = rt._rodtravel
    finding = rt.judge("24/30", "2 1/4", "4 1/16", psi=95, division="1/16", date=date(2024, 2, 11), rules=own_rules())
    want = rt.Finding._convert(low.finding_values(finding._kept))
    assert tuple(getattr(finding, name) for name in rt.Finding._fields[::-1])[::-1] == want[:-2]
    assert finding._values == want and finding.margin is finding.margin
    for item in (-1, 99):
        tap.refused(IndexError, low.finding_value, finding._kept, item)


def test_a_finding_keeps_its_rules_alive():
    finding = rt.judge("30", "2", "3 15/16", rules=own_rules())
    gc.collect()
    [own_rules() for _ in range(100)]
    assert finding.rules.id == "yard" and finding.own_row.published == "1 7/8"
    assert "over-own-limit" in finding.reasons and finding.law_limit == 2


def test_what_the_library_keeps_outlives_the_rules():
    """The collector chooses the order: a finding and its rule set are freed in any."""
    from rodtravel import _rodtravel as low
    for order in itertools.permutations(("finding", "rules", "kept", "values")):
        held = {"rules": own_rules()}
        held["finding"] = rt.judge("30", "2", "3 15/16", rules=held["rules"])
        held["kept"], held["values"] = held["finding"]._kept, pickle.dumps(held["finding"])
        sentences = held["finding"].sentences
        for name in order:
            del held[name]
            gc.collect()
            [own_rules() for _ in range(20)]
            if "kept" in held:
                reasons = [word for word in rt.Reason if word.value in ("over-own-limit", "assumed-clamp")]
                assert {low.rodt_finding_reason_format(held["kept"], word.number) for word in reasons} <= {*sentences}
            if "values" in held:
                assert pickle.loads(held["values"]).sentences == sentences


def test_words_are_those_of_the_library():
    from rodtravel import _enums, _rodtravel as low
    for enumeration, words in _enums.CLASSES.items():
        name = getattr(low, enumeration + "_name")
        assert {word.number: word.value for word in words} == {n: name(n) for n in range(600) if name(n)}, words
        assert all(words(word.value) is word and word.text is not None for word in words)
    assert [clue.number for clue in rt.Clue] == [1, 2, 4, 8, 16, 32] and rt.Proof.PROVEN_OVER.text == "at best still over the limit"
    for status in rt.Status:
        assert low.rodt_status_text(status) != "unknown status", status
    known = [number for number in range(1, 60) if low.rodt_status_text(number) != "unknown status"]
    assert known == [status.value for status in rt.Status]


def test_a_word_is_text():
    assert str(rt.Verdict.IN_ADJUSTMENT) == f"{rt.Verdict.IN_ADJUSTMENT}" == "in-adjustment"
    assert {"in-adjustment": 1}[rt.Verdict.IN_ADJUSTMENT] == 1
    assert pickle.loads(pickle.dumps(rt.Reason.AT_LIMIT)) is rt.Reason.AT_LIMIT


def resident():
    with open("/proc/self/statm", encoding="ascii") as file:
        return int(file.read().split()[1])


def test_nothing_is_left_behind():
    """200,000 objects made, looked at and dropped, and as many refusals."""
    if "INSTRUMENTED" in os.environ:
        return  # a sanitizer delays what is freed
    def turn(count):
        for number in range(count):
            finding = rt.judge("30L", "2 1/8", Fraction(4 * 16 + number % 16, 16))
            assert finding.verdict
            if number % 50 == 0:
                assert finding.reasons and finding.sentence and finding.asdict() and finding.source
            if number % 500 == 0:
                pickle.loads(pickle.dumps(finding))
                rt.judge_columns(chamber=["30"] * 9, released=["2"] * 9, applied=["4 1/8"] * 9)
                own_rules()
            try:
                rt.read_length("1,000")
            except rt.Error:
                pass
    turn(20000)
    gc.collect()
    before = resident()
    turn(200000)
    gc.collect()
    assert resident() - before < 500, f"{resident() - before} pages more"


def test_threads():
    """Any number of threads judge with one rule set."""
    wrong = []

    def work():
        for number in range(3000):
            if rt.judge("30", "2", Fraction(32 + number % 64, 16)).applied_stroke != Fraction(number % 64, 16):
                wrong.append(number)

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not wrong


if __name__ == "__main__":
    tap.run(globals())
