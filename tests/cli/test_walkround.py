# SPDX-License-Identifier: Apache-2.0
"""`rodtravel walkround` as a person and as a script meet it: python3 test_walkround.py PATH_TO_RODTRAVEL

Answers are looked up by the question, so that a changed order shows in the tests of the order alone. Without
pseudo-terminals whole walk-rounds go through pipes, and what only a person can do is passed over."""
import json
import os
import random
import re
import resource
import signal
import subprocess
import sys
import tempfile
import time
import unittest
from fractions import Fraction
from pathlib import Path

from dialogue import Dialogue, has_terminals
from tap import Tap
from test_report import is_valid

PERSON = has_terminals()
# Every answer is forced to the disk. What is tested is the same in memory, and is no wait for a slow disk there.
ROOM = "/dev/shm" if os.access("/dev/shm", os.W_OK | os.X_OK) else None

# A two-axle truck under us-fmcsr, as somebody would type it. A question not named here is answered by Enter.
TRUCK = {
    "Have you read": "yes", "Unit number": "T-1", "Who inspects": "M. Example", "Vehicle": "s", "Year built": "1970", "How many axles": "2",
    "Level ground": "yes", "reserve: Pressure at the start": "110", "reserve: Pressure at the end": "100",
    "Warning came on": "62", "Drain valves": "y", "Did oil": "n", "Parking brake released": "y", "Engine off": "y",
    "1L chamber": "20", "1L stroke class": "s", "1L adjuster": "a", "1L slack arm": "6", "1L released": "1 1/2",
    "2L chamber": "30/30", "2L stroke class": "l", "2L slack arm": "5 1/2", "2L released": "2-1/4",
    "2R released": "2⅛ in", "1R released": "38.1 mm", "Reservoir pressure, psi": "95", "Pedal fully": "yes",
    "1L applied": "3 1/8", "2L applied": "4.75", "2R applied": "4 1/8", "1R applied": "3 1/4",
    "Nobody at the rods": "y", "Everybody clear": "y", "Did the parking brake": "y",
    "Chocks in place": "yes", "All drain valves": "y",
}
# By hand: 1L 1 5/8 of 1 3/4; 1R 38.1 mm is 1 1/2, so 1 3/4 of 1 3/4; 2L 2 1/2 of 2 1/2; 2R 2 of 2 1/2.
# Limits: 49 CFR 393.47(e)(1), clamp 20 standard 1 3/4, clamp 30 long 2 1/2.
TRUCK_STROKES = {"1L": ("1 5/8", "in-adjustment"), "1R": ("1 3/4", "in-adjustment"),
                 "2L": ("2 1/2", "in-adjustment"), "2R": ("2", "in-adjustment")}

# Five axles, ten brakes, air checks by us-cdl. Released and applied of each wheel end.
READINGS = {"1L": ("1 1/2", "3 1/8"), "1R": ("1 1/2", "3 1/4"), "2L": ("2 1/8", "4"), "2R": ("2 1/16", "4 1/16"),
            "3L": ("2 1/8", "4 1/4"), "3R": ("2", "3 3/4"), "4L": ("2 1/4", "4 9/16"), "4R": ("2 3/16", "2 3/16"),
            "5L": ("2", "3 13/16"), "5R": ("2 1/16", "3 15/16")}
TEN = {
    "Have you read": "yes", "Unit number": "T-114", "Vehicle": "c", "How many axles": "5", "Level ground": "yes",
    "pressure loss: Pressure at the start": "110", "pressure loss, brakes released: Pressure at the end": "108",
    "pressure loss, brakes applied: Pressure at the end": "105",
    "Warning came on": "62", "Seconds it took": "38", "Compressor stopped": "125", "Compressor started": "100",
    "reserve: Pressure at the start": "110", "reserve: Pressure at the end": "100", "Drain valves": "y", "Did oil": "n",
    "Is a leak": "n", "Parking valve": "30", "Parking brake released": "y",
    "Engine off": "y", "1L chamber": "20", "1L stroke class": "s", "1L adjuster": "a", "1L slack arm": "6",
    "2L chamber": "30", "2L stroke class": "s", "2L slack arm": "5 1/2",
    "4L chamber": "30L", "5L chamber": "30", "5L stroke class": "u",
    "Reservoir pressure, psi": "95", "Pedal fully": "yes", "Nobody at the rods": "y", "Everybody clear": "-",
    "Chocks in place": "yes", "All drain valves": "y", "Did air come": "n", "Did the trailer": "y",
    **{f"{end} released": first for end, (first, _) in READINGS.items()},
    **{f"{end} applied": second for end, (_, second) in READINGS.items()},
}
# Limits typed from 49 CFR 393.47(e)(1): clamp 20 standard, 30 standard (5 is unknown: judged as standard), 30 long.
TEN_LIMITS = {"1": Fraction(7, 4), "2": Fraction(2), "3": Fraction(2), "4": Fraction(5, 2), "5": Fraction(2)}


def inches(text):
    return sum(Fraction(part) for part in text.split())


def ten_verdicts():
    """A judge of its own: applied less released against the limit."""
    found = {}
    for end, (first, second) in READINGS.items():
        stroke = inches(second) - inches(first)
        over = stroke > TEN_LIMITS[end[0]]
        found[end] = "inoperative" if stroke == 0 else "out-of-adjustment" if over else "in-adjustment"
    return found


def look_up(answers, question, heading=""):
    """The answer to a question; "" = Enter. Questions that several checks share are told apart by the check."""
    if question.startswith("Is that right"):
        return "k"
    for key, answer in answers.items():
        check, _, rest = key.rpartition(": ")
        if question.startswith(rest) and heading.startswith(check):
            return answer
    return ""


def straight(file, text, **options):
    """A run from a pipe to its end."""
    return subprocess.run([COMMAND, "walkround", file], input=text, capture_output=True, text=True, check=False,
                          **options)


def report(file, *options):
    return subprocess.run([COMMAND, "report", file, *options], capture_output=True, text=True, check=False)


class Walk(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory(dir=ROOM)
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        self.file = self.folder / "t.json"
        self.heading = ""

    def begin(self, *arguments, file=None, day=True, **options):
        options.setdefault("terminal", PERSON)
        day = ["--as-of", "2026-11-20"] if day else []
        talk = Dialogue(COMMAND, file or self.file, *day, *arguments, **options)
        self.addCleanup(talk.leave)
        return talk

    def answer_for(self, answers, talk, question):
        headings = re.findall(r"^Check: (.*)$", talk.said, re.M)
        self.heading = headings[-1].strip() if headings else self.heading
        return look_up(answers, question, self.heading)

    DUE = {"Level ground": "yes", "Chocks in place": "yes", "All drain valves": "y", "Parking brake released": "y",
           "Engine off": "y", "Reservoir pressure, psi": "95", "Pedal fully": "yes", "Nobody at the rods": "y",
           "Pressure at the start": "110", "Seconds it lasts [keep": "60"}

    def taken_up(self, talk, wanted=None):
        """The first open question, or the one that is wanted, behind what is asked once more after a break."""
        question = talk.prompt()
        while question is not None and question != wanted and look_up(self.DUE, question):
            talk.send(look_up(self.DUE, question))
            question = talk.prompt()
        return question

    def go_on(self, talk, answers, until=None):
        """Answers until a question begins with `until`, or to the end."""
        question = talk.prompt()
        while question is not None and not (until and question.startswith(until)):
            talk.send(self.answer_for(answers, talk, question))
            question = talk.prompt()
        return question

    def walk(self, answers, *arguments, **options):
        """A whole walk-round: the talk and its exit status."""
        talk = self.begin(*arguments, **options)
        self.go_on(talk, answers)
        return talk, talk.wait()

    def record(self, file=None):
        return json.loads((file or self.file).read_text(encoding="utf-8"))

    def same_as_report(self, talk, status):
        """The verdict is the report's, word for word."""
        told = report(self.file)
        self.assertEqual(status, told.returncode, told.stderr)
        headline = re.search("^(ALL|DEFECTIVE|OUT OF|UNDET|AMBIG).*$", told.stdout, re.M).group()
        self.assertIn("\n" + headline + "\n", talk.said)
        return headline


class Whole(Walk):
    def test_truck(self):
        talk, status = self.walk(TRUCK)
        self.assertEqual(status, 0, talk.said[-2000:])
        self.assertEqual(self.same_as_report(talk, status), "ALL BRAKES IN ADJUSTMENT, SOME EXACTLY AT THE LIMIT")
        ends = json.loads(report(self.file, "--json").stdout)["stroke"]["wheel_ends"]
        self.assertEqual({end["position"]: (end["applied_stroke"], end["verdict"]) for end in ends}, TRUCK_STROKES)
        self.assertTrue(is_valid(self.record()))

    def test_record_holds_what_was_typed(self):
        self.walk(TRUCK)
        record = self.record()
        self.assertEqual((record["date"], record["rules"], record["vehicle"], record["unit"], record["version"]),
                         ("2026-11-20", "us-fmcsr", "single", "T-1", 2))
        self.assertEqual(record["wheel_ends"][3], {
            "position": "2R", "chamber": "30/30", "stroke_class": "long", "released": "2⅛ in", "applied": "4 1/8",
            "division": "1/16", "psi": "95", "engine": "off", "spring_brake": "released", "adjuster": "automatic",
            "arm_length": "5 1/2"})
        self.assertEqual(record["air_checks"], [
            {"check": "reserve", "before": "110", "after": "100"}, {"check": "warning", "pressure": "62"},
            {"check": "drain", "answer": "yes"}, {"check": "contamination", "answer": "no"},
            {"check": "spring-brake", "answer": "yes"}])
        steps = {step["step"]: step["answer"] for step in record["steps"]}
        self.assertEqual(steps["cautions"], "yes")
        self.assertEqual(steps["chocks"], "yes")
        self.assertEqual(steps["place"], "skipped")

    def test_ten_brakes(self):
        """By hand: 3L is over by 1/8, a half; 4R is dead, one: 1 1/2 of 10 is 15 %. The loss is over 4 psi."""
        talk, status = self.walk(TEN, "--air-rules", "us-cdl")
        self.assertEqual(status, 1, talk.said[-3000:])
        self.assertEqual(self.same_as_report(talk, status), "DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION")
        said = " ".join(talk.said.split())
        for words in ("1 1/2 of 10 brakes defective, 15 %", "3L: 2 1/8 to 4 1/4 is 2 1/8; limit 2; over by 1/8",
                      "AIR SYSTEM DEFECTIVE: SEE THE DEFECTS", "Do not drive it"):
            self.assertIn(words, said)
        ends = json.loads(report(self.file, "--json").stdout)["stroke"]["wheel_ends"]
        self.assertEqual({end["position"]: end["verdict"] for end in ends}, ten_verdicts())

    def test_order(self):
        """Down the left side, up the right, twice; nobody crosses under the vehicle."""
        round_trip = ["1L", "2L", "3L", "4L", "5L", "5R", "4R", "3R", "2R", "1R"]
        by_axle = [f"{axle}{side}" for axle in range(1, 6) for side in "LR"]
        for order, wanted in (("round", round_trip), ("axle", by_axle)):
            file = self.folder / order
            talk, _ = self.walk(TEN, "--order", order, file=file)
            for word in ("released", "applied"):
                seen = [prompt[:2] for prompt in talk.prompts if re.match(rf"\d[LR] {word}", prompt)]
                self.assertEqual(seen, wanted)
            parts = re.findall(r"^Part (\d+) of 10", talk.said, re.M)
            self.assertEqual(parts, sorted(parts, key=int))
        def ends(name):
            return self.record(self.folder / name)["wheel_ends"]
        self.assertEqual(ends("round"), ends("axle"))

    def test_cautions_come_first(self):
        talk = self.begin()
        self.assertIn("Have you read", talk.prompt())
        for words in ("Chock the wheels", "can roll", "never open one", "licensed inspector decide"):
            self.assertIn(words, " ".join(talk.said.split()))

    def test_keystrokes(self):
        """Ten brakes alike but for axle 1, no air checks in the way: what a person has to press."""
        talk = self.begin("--air-rules", "us-nv")
        pressed = released = 0
        question = talk.prompt()
        while question is not None:
            answer = self.answer_for(TEN, talk, question)
            pressed += len(answer) + 1
            released += len(answer) + 1 if re.match(r"\d[LR] (released|applied)", question) else 0
            talk.send(answer)
            question = talk.prompt()
        print(f"# a walk-round of ten brakes: {len(talk.prompts)} questions, {pressed} keystrokes, "
              f"{released} of them the twenty readings")
        self.assertLess(pressed - released, 110)

    def test_every_rule_set_of_air_checks(self):
        """Everything that may be left out is; each check of the rule set is asked for, and is in the record."""
        listed = subprocess.run([COMMAND, "--version"], capture_output=True, text=True, check=False).stdout
        rules = listed.partition("rule sets:")[2].split()
        self.assertGreater(len(rules), 20)
        for name in rules:
            with self.subTest(name):
                answers = {"Have you read": "yes", "How many axles": "1", "Level ground": "yes", "Vehicle": "c",
                           "Parking brake released": "y", "Engine off": "y", "Nobody at the rods": "y"}
                file = self.folder / name
                talk = self.begin("--air-rules", name, file=file, terminal=False)
                question = talk.prompt()
                while question is not None:
                    talk.send(look_up(answers, question) or "-")
                    question = talk.prompt()
                self.assertEqual(talk.wait(), 3, talk.said[-1000:])
                table = subprocess.run([COMMAND, "limits", "--air", "--rules", name, "--json"], capture_output=True,
                                       text=True, check=False)
                wanted = {row["check"] for row in json.loads(table.stdout)["air"]}
                asked = [check["check"] for check in self.record(file).get("air_checks", [])]
                self.assertEqual(set(asked), wanted)
                self.falling_pressure(asked)

    def falling_pressure(self, asked):
        """The warning comes on at 50 psi and more, the valves close below that: the other way round the reservoirs
        would have to be filled once more."""
        for valve in ("supply-valve", "tractor-protection", "parking-valve", "drain"):
            if valve in asked and "warning" in asked:
                self.assertLess(asked.index("warning"), asked.index(valve))


class Words(Walk):
    """What a person does beyond answering."""

    def at(self, until, answers=None, rules=None, **options):
        talk = self.begin(*(["--air-rules", rules] if rules else []), **options)
        self.assertIsNotNone(self.go_on(talk, answers or TRUCK, until), talk.said[-500:])
        return talk

    def test_what_cannot_be_read_is_asked_again(self):
        talk = self.at("1L released")
        talk.patient = True
        before = self.file.read_bytes()
        for text, says in (("2-Jan", "a date"), ("1,75", "comma"), ("175", "24 in"), ("x", "Not accepted"),
                           ("1 3/0", "Not accepted"), ("1\x1b[A", "arrow key"), ("2 psi", "Not accepted"), ("", "needed"),
                           ("y", "Not accepted")):
            said = talk.answer(text)
            self.assertIn(says, " ".join(said.split()), repr(text))
            self.assertEqual(talk.prompts[-1], "1L released")
        said = talk.answer("1 1x2")
        self.assertIn("    1 1x2\n", said)
        self.assertRegex(said, r"\n      ? ?\^\n")
        self.assertEqual(self.file.read_bytes(), before)
        self.assertIn("= 1 1/2 in", talk.answer("1 1/2"))

    def test_back_and_keep(self):
        talk = self.at("2L released")
        talk.answer("back")
        self.assertEqual(talk.prompts[-1], "2L slack arm length [keep 5 1/2]")
        talk.answer("<")
        talk.answer("back 1L")
        self.assertEqual(talk.prompts[-1], "1L released [keep 1 1/2]")
        talk.answer("1 5/8")
        self.assertEqual(talk.prompts[-1], "2L released")
        for keep in ("", "k"):
            talk.answer("back 1L")
            talk.answer(keep)
            self.assertEqual(talk.prompts[-1], "2L released")
        self.assertIn("no earlier question", talk.answer("back 9R"))
        self.assertEqual(self.record()["wheel_ends"][0]["released"], "1 5/8")

    def test_back_when_all_is_answered(self):
        self.walk({**TRUCK, "1R applied": "3 3/4"})
        talk = self.begin("--back", "1R", day=False)
        asked = "1R applied" if PERSON else "1R applied [keep 3 3/4]"
        self.assertEqual(self.taken_up(talk), asked)
        self.go_on_with(talk, "3 1/4")
        self.assertEqual(talk.wait(), 0)
        self.assertEqual(talk.prompts, [*(self.SECURED + self.APPLICATION if PERSON else []), asked,
                                        *(self.PARKED if PERSON else []), "Did the parking brake hold, y or n",
                                        "Repaired by whom, and when [skip]"])
        talk = self.begin("--back", "warning", day=False)
        self.assertEqual(self.taken_up(talk), "Warning came on at, psi (or never) [keep 62]")
        for place in ("9L", "mirror"):
            talk = self.begin("--back", place, day=False, terminal=False, file=self.folder / "other.json")
            self.assertEqual(talk.wait(), 2)
            self.assertIn("no answer that is called", " ".join(talk.said.split()))

    SECURED = ["Level ground, wheels chocked front and back, nobody in the way? Type yes",
               "Parking brake released on every unit, y or n", "Engine off, y or n"]
    APPLICATION = ["Reservoir pressure, psi", "Pedal fully down and held? Type yes"]
    PARKED = ["Nobody at the rods, pedal released, then parking brake set? Type yes",
              "Everybody clear, chocks stowed? Type yes"]

    def test_nothing_is_measured_on_a_vehicle_that_was_parked(self):
        """Chocks, parking brake and engine are asked first; afterwards it is parked and pulled once more."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        self.walk(TRUCK)
        finished = self.file.read_bytes()
        for until, word in (("Everybody clear", "again 2L"), ("Did the parking brake", "back 2L"),
                            ("Did the parking brake", "again 2L"), (None, "again 2R"), (None, "back 2R")):
            file = self.folder / f"{until}{word}".replace(" ", "_")
            if until:
                talk = self.begin(file=file)
                self.go_on(talk, TRUCK, until)
                talk.answer(word)
            else:
                file.write_bytes(finished)
                talk = self.begin("--back", "1L", day=False, file=file)
                talk.prompt()
                talk.answer(word)
            self.assertIn("Chock the wheels and release the parking brake first.", " ".join(talk.said.split()))
            start = len(talk.prompts) - 1
            self.assertEqual(talk.prompts[start], self.SECURED[0], word)
            self.assertIn("Not accepted", talk.answer(""))
            talk.answer("again 2L" if word == "again 2L" else "back 2R")
            self.assertEqual(talk.prompts[-1], self.SECURED[0], "no way around the chocks")
            self.go_on_here(talk)
            self.assertEqual(talk.wait(), 0, talk.said[-2000:])
            asked = [prompt for prompt in talk.prompts[start + 2:] if not re.match(r"\d[LR] ", prompt)]
            self.assertEqual(asked, [*self.SECURED, *self.APPLICATION, *self.PARKED,
                                     "Did the parking brake hold, y or n"], word)

    REPLACED = r"3 3/4 \(\d{4}-\d\d-\d\d \d\d:\d\d\)"

    def test_a_reading_replaced_after_a_verdict_leaves_a_trace(self):
        """A vehicle that was out and now passes: the record, the last lines and the report say what it was."""
        self.walk({**TRUCK, "1R applied": "3 3/4"})
        talk = self.begin("--back", "1R", day=False)
        self.taken_up(talk)
        talk.answer("3 1/4")
        talk.kill()
        talk = self.begin(day=False)
        self.taken_up(talk)
        self.go_on_with(talk, self.answer_for(TRUCK, talk, talk.prompts[-1]), {**TRUCK, "Repaired": "J. Example, 10:40"})
        self.assertEqual(talk.wait(), 0, talk.said[-2000:])
        self.assertEqual(self.record()["repair"], "J. Example, 10:40")
        steps = {step["step"]: step["answer"] for step in self.record()["steps"]}
        self.assertRegex(steps["1R applied replaced"], "^" + self.REPLACED + "$")
        self.assertTrue(is_valid(self.record()))
        self.assertIn("Changed after a verdict: 1R applied.", talk.said.split("Done; all is in")[1])
        words = r"1R applied: changed after a verdict; it was " + self.REPLACED
        for options in ([], ["--html", "-"]):
            page = re.sub("<[^>]*>", "", report(self.file, *options).stdout)
            self.assertRegex(" ".join(page.split()), words)
        self.assertNotIn("replaced", json.dumps(self.record()["wheel_ends"]))

    def test_each_replaced_answer_is_kept(self):
        """By again, twice, of a check, and by skipping."""
        self.walk({**TRUCK, "1R applied": "3 3/4"})
        for word, answer, name, wanted in (
                ("1R", "3 11/16", "1R applied", ["3 3/4"]), ("1R", "-", "1R applied", ["3 3/4", "3 11/16"]),
                ("warning", "never", "warning pressure", ["62"]), ("warning", "61", "warning pressure", ["62", "never"])):
            talk = self.begin("--back", word, day=False)
            self.taken_up(talk)
            talk.answer(answer)
            talk.kill()
            steps = {step["step"]: step["answer"] for step in self.record()["steps"]}
            self.assertEqual(re.findall(r"([^;]*?) \([^)]*\)(?:; )?", steps[f"{name} replaced"]), wanted)
        talk = self.begin("--back", "2L", day=False)
        self.taken_up(talk)
        talk.answer("again 2L")
        while talk.prompts[-1][:2] == "2L" and not talk.prompts[-1].startswith("2L released"):
            talk.answer("")
        if PERSON:
            talk.answer("2 3/8")
            self.assertIn('"2L released replaced"', self.file.read_text(encoding="utf-8"))

    UNPROVEN = "Readings that were taken before proved nothing: they are asked again."

    def strokes_of_another_condition(self, answers, until, condition):
        """A walk-round that stops with a condition that proves nothing, and is taken up with a good one: what is asked."""
        file = self.folder / condition
        talk = self.begin(file=file)
        self.go_on(talk, {**TRUCK, **answers}, until)
        talk.kill()
        talk = self.begin(day=False, file=file)
        self.go_on(talk, {**TRUCK, "Reservoir pressure now": "92"})
        self.assertEqual(talk.wait(), 0, talk.said[-2000:])
        self.assertIn(self.UNPROVEN, " ".join(talk.said.split()))
        return talk.prompts

    def test_strokes_of_another_application_are_not_proven_by_this_one(self):
        """Air and engine of a second application say nothing about the readings of the first one."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        for answers, condition in (({"Reservoir pressure, psi": "70"}, "pressure"), ({"Engine off": "n"}, "engine")):
            asked = self.strokes_of_another_condition(answers, "2R applied", condition)
            self.assertEqual([prompt for prompt in asked if re.match(r"\d[LR] ", prompt)],
                             ["1L applied", "2L applied", "2R applied", "1R applied"])

    def test_the_gauge_is_read_again_after_the_engine_ran(self):
        if not PERSON:
            self.skipTest("a script does not go back")
        talk = self.begin()
        self.go_on(talk, {**TRUCK, "Engine off": "n"}, "2R applied")
        before = len(talk.prompts)
        self.go_on_with(talk, "back engine")
        self.assertEqual(talk.wait(), 0, talk.said[-2000:])
        self.assertEqual(talk.prompts[before + 1:][:4], [*self.APPLICATION, "1L applied", "2L applied"])

    def test_a_first_reading_with_the_parking_brake_on_is_taken_again(self):
        if not PERSON:
            self.skipTest("a script is not asked again")
        asked = self.strokes_of_another_condition({"Parking brake released": "n"}, "2R applied", "brake")
        ends = ["1L", "2L", "2R", "1R"]
        self.assertEqual(asked[asked.index("Engine off, y or n") + 1:][:10],
                         [*(f"{end} released" for end in ends), *self.APPLICATION, *(f"{end} applied" for end in ends)])

    def test_pressure_under_the_pedal_is_of_the_last_application(self):
        """Too low after the first one: one wheel end measured again does not prove the others."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        self.walk({**TRUCK, "Reservoir pressure now": "80"})
        talk = self.begin("--back", "2L", day=False)
        self.go_on(talk, {**TRUCK, "Reservoir pressure now": "91"})
        self.assertEqual(talk.wait(), 0, talk.said[-2000:])
        self.assertIn("1L applied", talk.prompts)
        self.assertEqual({end["psi_after"] for end in self.record()["wheel_ends"]}, {"91"})
        talk = self.begin("--back", "2L", day=False)
        self.go_on(talk, {**TRUCK, "Reservoir pressure now": "80"})
        self.assertEqual(talk.wait(), 3, talk.said[-2000:])

    def test_no_stroke_is_made_of_two_applications(self):
        """Broken off after the first reading of again: the second one is open, and what it was is kept."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        self.walk(TRUCK)
        talk = self.begin("--back", "2L", day=False)
        self.taken_up(talk)
        before = talk.said.count("in-adjustment")
        talk.answer("again 2L")
        while not talk.prompts[-1].startswith("2L released"):
            talk.answer("")
        talk.answer("2 3/8")
        self.assertEqual(talk.said.count("in-adjustment"), before, "no verdict of the old second reading")
        talk.kill()
        self.assertNotIn("applied", self.record()["wheel_ends"][2])
        self.assertIn('"2L applied replaced"', self.file.read_text(encoding="utf-8"))
        self.assertEqual(report(self.file).returncode, 3)

    def test_an_answer_given_again_is_no_change(self):
        self.walk(TRUCK)
        talk = self.begin("--back", "1R", day=False)
        self.taken_up(talk)
        if PERSON:
            self.assertIn("an answer is needed", talk.answer(""), "Enter takes no reading of the application before")
        self.go_on_with(talk, "3 1/4")
        self.assertEqual(talk.wait(), 0)
        self.assertNotIn("replaced", self.file.read_text(encoding="utf-8"))

    def test_a_parking_brake_that_does_not_release(self):
        """A defect of its own, whatever the strokes are; yes takes it back."""
        talk = self.begin("--rules", "ca-on")
        self.go_on(talk, TRUCK, "Parking brake released")
        self.assertIn("type never", " ".join(talk.answer("n").split()))
        talk.answer("<")
        self.assertIn("a defect of the parking brake", talk.answer("never"))
        talk.answer("k")
        talk.kill()
        checks = {check["check"]: check.get("answer") for check in self.record()["air_checks"]}
        self.assertEqual(checks["spring-brake"], "no")
        self.assertEqual({end["spring_brake"] for end in self.record()["wheel_ends"]}, {"on"})
        talk = self.begin(day=False)
        self.go_on(talk, {**TRUCK, "Parking brake released": "never", "Everybody clear": "-"})
        self.assertEqual(talk.wait(), 1, talk.said[-2000:])
        self.assertNotIn("Did the parking brake hold", "".join(talk.prompts))
        said = " ".join(talk.said.split())
        self.assertIn("Leave the chocks in: nothing else holds this vehicle.", said)
        self.assertIn("air, major defect: ", said)
        self.assertIn("The parking brake does not release.", said)
        self.assertNotIn("Good strokes", said, "they are not proven")
        talk = self.begin("--back", "spring_brake", day=False)
        self.go_on(talk, {**TRUCK, "Parking brake released": "y"}, "Engine off")
        self.assertNotIn("spring-brake", {check["check"] for check in self.record()["air_checks"]})

    def test_a_broken_parking_brake_is_settled_by_no_rule_set(self):
        """Whether the rule set has a row for it or not, a vehicle whose parking brake is broken never passes."""
        listed = subprocess.run([COMMAND, "--version"], capture_output=True, text=True, check=True).stdout
        words = {"Parking brake released": "The parking brake does not release.",
                 "Nobody at the rods": "The parking brake does not set."}
        for rules in listed.split("rule sets:")[1].split():
            for question, note in words.items():
                with self.subTest(rules=rules, question=question):
                    file = self.folder / f"{rules}-{question[0]}.json"
                    talk = self.begin("--air-rules", rules, file=file, terminal=False)
                    while (asked := talk.prompt()) is not None:
                        answer = self.answer_for({**TRUCK, question: "never", "Everybody clear": "-"}, talk, asked)
                        talk.send(answer or ("" if asked.endswith("]") else "-"))
                    status = talk.wait()
                    self.assertIn(status, (1, 3), talk.said[-1000:])
                    told = report(file)
                    self.assertEqual(told.returncode, status)
                    self.assertIn(note, " ".join(told.stdout.split()))
                    self.assertRegex(" ".join(talk.said.split("Done; all is in")[1].split()),
                                     "(Defective|Not settled): [^.]*parking brake")
                    self.assertRegex(" ".join(told.stdout.split()), "Do not drive it|must not be driven")

    def test_a_parking_brake_that_does_not_set(self):
        for word in ("never", "no"):
            file = self.folder / word
            talk = self.begin(file=file)
            self.go_on(talk, TRUCK, "Nobody at the rods")
            self.assertIn("leave the chocks in", " ".join(talk.answer(word).split()))
            self.assertIn("Not accepted", talk.answer("yes"))
            talk.answer("k")
            self.assertIn("nothing else holds this vehicle. Type skip", " ".join(talk.said.split()))
            self.go_on_with(talk, "-")
            self.assertEqual(talk.wait(), 1, talk.said[-2000:])
            self.assertIn("Defective: parking brake", talk.said)
            self.assertIn("The parking brake does not set.", report(file).stdout)

    def test_a_pressure_that_rose_is_said_in_the_end(self):
        talk, status = self.walk({**TRUCK, "Reservoir pressure now": "99"})
        self.assertEqual(status, 0)
        words = "The reservoir pressure rose from 95 to 99 psi"
        self.assertIn(words, " ".join(talk.said.split("Done; all is in")[1].split()))
        self.assertIn(words, " ".join(report(self.file).stdout.split()))
        self.assertIn(words, " ".join(report(self.file, "--html", "-").stdout.split()))

    def test_a_rod_that_hardly_moved_is_said_in_the_end(self):
        talk, status = self.walk({**TRUCK, "2L applied": "2 5/16"})
        self.assertEqual(status, 0)
        self.assertIn("ALL BRAKES IN ADJUSTMENT, BUT SOME HARDLY MOVED", talk.said)
        self.assertIn("Hardly moved, look again: 2L.", talk.said.split("Done; all is in")[1])
        self.assertIn("2L: the rod hardly moved", " ".join(report(self.file).stdout.split()))
        self.assertEqual(report(self.file, "--svg", "-").stdout.count('class="wheel doubt"'), 1)
        self.same_as_report(talk, status)

    def test_no_air_check_at_all_is_said(self):
        talk, status = self.walk(TRUCK, "--air-rules", "ca-nsc")
        self.assertEqual(status, 0)
        self.assertIn("No air check was done.", talk.said.split("Done; all is in")[1])
        self.assertIn("No air check was done.", report(self.file).stdout)
        self.assertIn("None was found. No air check was done.", report(self.file, "--html", "-").stdout)

    def test_a_break_in_the_end_is_no_way_around_the_chocks(self):
        if not PERSON:
            self.skipTest("a script is not asked again")
        talk = self.begin()
        self.go_on(talk, TRUCK, "Nobody at the rods")
        talk.kill()
        talk = self.begin()
        talk.prompt()
        talk.answer("again 2L")
        for question in self.SECURED:
            self.assertEqual(talk.prompts[-1], question)
            talk.answer(look_up(self.DUE, question))
        self.assertTrue(talk.prompts[-1].startswith("2L chamber"))

    def test_back_at_the_first_question(self):
        talk = self.begin()
        talk.prompt()
        self.assertIn("first question", talk.answer("back"))

    def test_the_way_back_is_no_detour(self):
        """Corrected answers leave the record that would have been written at once."""
        self.walk(TRUCK)
        wanted = self.file.read_bytes()
        file = self.folder / "other.json"
        talk = self.at("2L released", {**TRUCK, "1L chamber": "24", "1L slack arm": "7", "Unit number": "wrong"},
                       file=file)
        talk.answer("back 1L")
        for word in ("back 1L", "back 1L", "back 1L"):
            talk.answer(word)
        while not talk.prompts[-1].startswith("1L chamber"):
            talk.answer("<")
        talk.answer("20")
        self.assertTrue(talk.prompts[-1].startswith("1L stroke class"), "another chamber has other signs")
        talk.answer("s")
        self.assertEqual(talk.prompts[-1], "1L adjuster: a automatic, m manual [keep automatic]")
        talk.answer("")
        self.assertEqual(talk.prompts[-1], "1L slack arm length [keep 7]")
        talk.answer("6")
        self.assertEqual(talk.prompts[-1], "1L released [keep 1 1/2]")
        talk.answer("")
        while not talk.prompts[-1].startswith("Unit number"):
            talk.answer("<")
        talk.answer("T-1")
        self.assertTrue(talk.prompts[-1].startswith("2L released"))
        talk.send(TRUCK["2L released"])
        self.go_on(talk, TRUCK)
        self.assertEqual(talk.wait(), 0)
        self.assertEqual(file.read_bytes(), wanted)

    def test_skip(self):
        talk = self.at("Level ground")
        self.assertIn("cannot be skipped", talk.answer("skip"))
        self.assertIn("Not accepted", talk.answer("no"))
        talk.send("y")
        self.go_on(talk, {**TRUCK, "2R released": "skip", "1L slack arm": "n/a"})
        self.assertEqual(talk.wait(), 3)
        self.assertFalse([prompt for prompt in talk.prompts if prompt.startswith("2R applied")])
        self.assertNotIn("arm_length", self.record()["wheel_ends"][0])
        again = self.begin(day=False)
        self.assertIsNone(again.prompt())
        self.assertEqual(again.wait(), 3)
        asked = self.begin("--skipped", day=False)
        self.assertTrue(asked.prompt().startswith("Carrier"))

    def test_help_show_note(self):
        talk = self.at("1L released")
        before = self.file.read_bytes()
        self.assertIn("clevis pin", talk.answer("?"))
        self.assertEqual(talk.answer("help").count("Chamber face"), 1)
        said = talk.answer("show")
        for words in ("unit: T-1", "1L 20 standard, automatic, arm 6", "62 psi", "chocks: yes"):
            self.assertIn(words, said)
        self.assertEqual(self.file.read_bytes(), before)
        talk.answer("note rod end is dry")
        talk.answer("note grease it")
        self.assertEqual(self.record()["wheel_ends"][0]["remark"], "rod end is dry; grease it")
        self.assertIn("= 1 1/2 in", talk.answer("1 1/2"))

    def test_a_stamp_that_is_gone(self):
        """8 1/8 in across is clamp 30, but DD-3 30 and bolt C lie within the tolerance; bolt C has the least limit."""
        talk = self.at("1L chamber")
        said = " ".join(talk.answer("diameter 8 1/8").split())
        for words in ("clamp 30", "DD-3", "bolt C", "judge by the strictest limit: 1 3/4"):
            self.assertIn(words, said)
        self.assertIn("No known chamber", talk.answer("diameter 2"))
        self.assertIn("Not accepted", talk.answer("diameter big"))
        self.assertIn("a blank may be lost", " ".join(talk.answer("diameter 81/8").split()))
        self.assertIn("Type diameter 8 1/8", " ".join(talk.answer("8 1/8").split()))
        for word in ("u", "unknown"):
            self.assertIn("diameter 8 1/8, or skip", " ".join(talk.answer(word).split()))
        self.assertTrue(talk.prompts[-1].startswith("1L chamber"))
        self.assertNotIn("chamber", self.record()["wheel_ends"][0])

    def test_clues(self):
        """Each clue narrows what it can be, and the one that would settle it is named; the question stays open."""
        talk = self.at("1L chamber")
        talk.patient = True
        said = " ".join(talk.answer("clues clamp").split())
        for words in ("clamp 6 standard", "judge by the strictest limit: 1 1/4", "read the stamped type"):
            self.assertIn(words, said)
        said = " ".join(talk.answer("clues diameter 8 1/8, clamp band").split())
        for words in ("clamp 30 standard", "judge by the strictest limit: 2.", "square ports", "the answer is clamp 30."):
            self.assertIn(words, said)
        said = " ".join(talk.answer("clues clamp; square; diameter 8 1/8; rated stroke 3").split())
        self.assertIn("the answer is clamp 30 long.", said)
        self.assertIn("bolt C: diameter 8 1/16 in, limit 1 3/4", " ".join(talk.answer("clues bolt, stamp C").split()))
        said = " ".join(talk.answer("clues stamp 20,diameter 8 1/8").split())
        self.assertIn("the clues contradict each other (stamp, diameter)", said)
        self.assertNotIn("the answer is", said)
        self.assertIn("No known chamber fits", talk.answer("clues diameter 2"))
        for line, why in (("clues", "clamp, bolt, roto, dd3, stamp ..."), ("clues foo", "one of these is expected"),
                          ("clues round, square", "this clue is there twice"), ("clues clamp, stamp C", "letter"),
                          ("clues rated big", "a number was expected"), ("clues diameter 0", "zero")):
            self.assertIn(why, " ".join(talk.answer(line).split()), line)
        self.assertTrue(talk.prompts[-1].startswith("1L chamber"))
        self.assertNotIn("chamber", self.record()["wheel_ends"][0])
        self.assertIn("clamp 30 long", talk.answer("clamp 30 long"))

    def steps(self):
        return {step["step"]: step["answer"] for step in self.record()["steps"]}

    def test_clues_are_kept(self):
        """As steps in one spelling, whatever was typed, until the chamber is answered; then in the remark."""
        talk = self.at("1L chamber")
        talk.patient = True
        self.assertIn("= seen: square ports; clamp band; tag ?; diameter 8 1/8",
                      " ".join(talk.answer("clues square ports,clamp; tag ?; diameter 8 1/8").split()))
        kept = "port-shape square; family clamp; tag ?; diameter 8 1/8"
        self.assertEqual(self.steps()["1L clues"], kept)
        for line in ("clues", "clues foo", "clues clamp, clamp", "clues family what", "clues stamp", "clues tag",
                     "clues diameter 0", "clues clamp, stamp C"):
            self.assertIn("Not accepted", talk.answer(line), line)
            self.assertEqual(self.steps()["1L clues"], kept, line)
        self.assertIn("1L clues: square ports; clamp band; tag ?; diameter 8 1/8", talk.answer("show"))
        talk.answer("note rod end is dry")
        talk.leave()
        talk = self.begin()
        talk.patient = True
        self.taken_up(talk, "1L chamber")
        said = " ".join(talk.said.split())
        self.assertIn("= seen: square ports; clamp band; tag ?; diameter 8 1/8 clamp 30 long", said)
        self.assertIn("the answer is clamp 30 long.", said)
        self.assertIn("clamp 30 long", talk.answer("clamp 30 long"))
        self.assertNotIn("1L clues", self.steps())
        end = self.record()["wheel_ends"][0]
        self.assertEqual((end["chamber"], end["remark"]),
                         ("clamp 30 long", "rod end is dry; clues: square ports; clamp band; diameter 8 1/8"))
        self.assertTrue(is_valid(self.record()))

    def test_the_last_clue_is_taken_back_first(self):
        talk = self.at("1L chamber")
        talk.patient = True
        talk.answer("clues clamp; stamp ?; diameter 8 1/8")
        for kept in ("family clamp; stamp ?", "family clamp"):
            talk.answer("<")
            self.assertEqual(self.steps()["1L clues"], kept)
        self.assertNotIn("clamp 30 standard", talk.answer("clues stamp ?"))
        self.assertEqual(self.steps()["1L clues"], "stamp ?")
        talk.answer("back")
        self.assertNotIn("1L clues", self.steps())
        self.assertTrue(talk.prompts[-1].startswith("1L chamber"))
        talk.answer("clues clamp")
        talk.answer("clues -")
        self.assertNotIn("1L clues", self.steps())
        talk.answer("<")
        self.assertFalse(talk.prompts[-1].startswith("1L chamber"))

    def test_clues_of_what_is_left_out(self):
        """A chamber that is skipped keeps what was seen of it; what nobody could see says nothing."""
        talk = self.at("1L chamber")
        talk.patient = True
        talk.answer("clues bolt")
        talk.answer("skip")
        talk.answer("back 1L")
        talk.answer("clues tag ?")
        talk.answer("skip")
        self.assertEqual(self.record()["wheel_ends"][0]["remark"], "clues: flange with bolts")
        self.assertFalse([name for name in self.steps() if name.endswith("clues")])

    def test_clues_without_room_in_the_remark(self):
        talk = self.at("1L chamber")
        talk.patient = True
        for _ in range(2):
            talk.answer("note " + 390 * "x")
        talk.answer("clues clamp; diameter 8 1/8")
        talk.answer("30")
        self.assertEqual(self.record()["wheel_ends"][0]["chamber"], "30")
        self.assertEqual(self.steps()["1L clues"], "family clamp; diameter 8 1/8")

    def test_clues_of_another_hand(self):
        """A step that is no clues is shown as it is, and means nothing."""
        talk = self.at("1L chamber")
        talk.answer("clues clamp; diameter 8 1/8")
        talk.leave()
        for text in ("family", "clamp, clamp", "diameter big", "diameter 2 in; foo", "x" * 900, "stamp " + "1" * 900, "-"):
            record = self.record()
            for step in record["steps"]:
                step["answer"] = text if step["step"] == "1L clues" else step["answer"]
            self.file.write_text(json.dumps(record), encoding="utf-8")
            talk = self.begin()
            self.taken_up(talk, "1L chamber")
            self.assertNotIn("seen:", talk.said, text)
            self.assertIn("1L clues: " + text[:60], " ".join(talk.answer("show").split()))
            talk.leave()

    def test_never_where_it_is_no_answer(self):
        talk = self.at("Drain valves")
        self.assertIn("n says that it did not happen; skip, that it was not done",
                      " ".join(talk.answer("never").split()))
        talk = self.at("Level ground", file=self.folder / "yes")
        for word in ("no", "never"):
            self.assertIn("yes is expected once it is done", " ".join(talk.answer(word).split()))

    def test_odd_strokes(self):
        talk = self.at("1L applied")
        for text, says in (("1 1/4", "less than released"), ("1 1/2", "did not move|equal"), ("4 1/4", "full travel"),
                           ("1 7/8", "hardly moved")):
            said = talk.answer(text)
            self.assertRegex(" ".join(said.split()), says)
            self.assertTrue(talk.prompts[-1].startswith("Is that right"))
            self.assertNotIn("applied", self.record()["wheel_ends"][0])
        said = talk.answer("3 1/8")
        self.assertIn("stroke 1 5/8, limit 1 3/4, 1/8 to spare: in-adjustment", " ".join(said.split()))
        talk.answer("2 1/4")
        said = talk.answer("k")
        self.assertEqual(self.record()["wheel_ends"][2]["applied"], "2 1/4")
        self.assertIn("inoperative", said)

    def test_odd_axle(self):
        talk = self.at("1R chamber")
        said = talk.answer("24")
        self.assertIn("393.47(b)", said)
        self.assertTrue(talk.prompts[-1].startswith("Is that right"))
        talk.answer("20")
        talk.answer("l")
        self.assertTrue(talk.prompts[-1].startswith("Is that right"), talk.said[-300:])
        talk.answer("s")
        talk.answer("")
        said = talk.answer("5")
        self.assertIn("393.47(c)", said)
        talk.answer("6")
        self.assertEqual(talk.prompts[-1], "1R released")

    def test_answers_to_the_next_question(self):
        talk = self.at("1L rated stroke", {**TRUCK, "1L chamber": "20L"})
        self.assertIn("hardly the rated stroke", " ".join(talk.answer("6").split()))
        talk.answer("3")
        talk.answer("a")
        for text in ("1 1/2", "1.5", "12"):
            self.assertIn("hardly the length of a slack arm", " ".join(talk.answer(text).split()))
        talk.answer("5 1/2")
        self.assertEqual(talk.prompts[-1], "1L released")
        self.assertEqual([self.record()["wheel_ends"][0][key] for key in ("rated_stroke", "arm_length")], ["3", "5 1/2"])

    def test_odd_pressures(self):
        talk = self.at("Reservoir pressure, psi")
        self.assertIn("below the 90 to 100 psi", talk.answer("85"))
        self.assertIn("above the 90 to 100 psi", talk.answer("101"))
        self.assertNotIn("psi", self.record()["wheel_ends"][0])
        said = talk.answer("90")
        self.assertIn("Pedal", said)
        self.assertEqual(self.record()["wheel_ends"][3]["psi"], "90")

    def test_odd_conditions(self):
        talk = self.at("Engine off")
        self.assertIn("no stroke proves anything", " ".join(talk.answer("n").split()))
        talk.send("k")
        self.go_on(talk, TRUCK)
        self.assertEqual(talk.wait(), 3)
        self.assertIn("UNDETERMINED", talk.said)

    def test_parking_brake_and_engine_are_not_skipped(self):
        talk = self.at("Parking brake released")
        for question, word in (("Parking brake released", "skip"), ("Engine off", "-")):
            self.assertTrue(talk.prompts[-1].startswith(question))
            self.assertIn("this step cannot be skipped", " ".join(talk.answer(word).split()))
            self.assertTrue(talk.prompts[-1].startswith(question))
            talk.answer("y")

    def test_a_yes_does_not_turn_an_answer_round(self):
        """Who says yes to "is that right?" means what was typed before."""
        for number, (until, kept, keys) in enumerate((("Parking brake released", "on", ("no", "N")),
                                                      ("Engine off", "on", ("n", "NO")))):
            for key in keys:
                file = self.folder / f"{number}{key}.json"
                talk = self.at(until, file=file)
                talk.answer(key)
                self.assertEqual(talk.prompts[-1], "Is that right? k = keep 'no', or < to change it")
                for word in ("y", "yes", "YES", "n", "no", ""):
                    self.assertIn("k = keep 'no', or < to change it", " ".join(talk.answer(word).split()))
                    self.assertTrue(talk.prompts[-1].startswith("Is that right"))
                talk.answer("<")
                self.assertTrue(talk.prompts[-1].startswith(until))
                talk.answer(key)
                talk.answer("k")
                self.assertFalse(talk.prompts[-1].startswith("Is that right"))
                end = self.record(file)["wheel_ends"][0]
                self.assertEqual(end["spring_brake" if number == 0 else "engine"], kept)

    def test_the_end(self):
        """Nothing asks for what chocks or a defective vehicle forbid, and skip is said at the question it means."""
        talk = self.at("Nobody at the rods", {**TRUCK, "Drain valves": "n"})
        self.assertIn("By the air checks: DEFECTIVE. Do not drive it", " ".join(talk.said.split()))
        self.assertNotIn("skip.", talk.said)
        self.assertIn("cannot be skipped", talk.answer("skip"))
        self.assertTrue(talk.prompts[-1].startswith("Nobody at the rods"))
        said = " ".join(talk.answer("y").split())
        self.assertIn("Leave the chocks in if it will be repaired here: type skip. Everybody clear", said)
        self.assertIn("must not be driven", " ".join(talk.answer("y").split()))
        self.assertTrue(talk.prompts[-1].startswith("Is that right"))
        said = talk.answer("skip")
        self.assertIn("The pull against the parking brake is not done: this vehicle must not be moved",
                      " ".join(said.split()))
        self.assertEqual(talk.prompts[-1], "Repaired by whom, and when [skip]")
        talk.send("A. Mechanic, 2026-11-21")
        self.assertEqual(talk.wait(), 1)
        self.assertIn("A. Mechanic, 2026-11-21", report(self.file).stdout)
        self.assertFalse([prompt for prompt in talk.prompts if prompt.startswith("Did the parking")])
        self.assertNotIn("gentle pull", talk.said)
        self.assertIn({"check": "spring-brake"}, self.record()["air_checks"])

    def test_no_pull_against_chocks(self):
        talk = self.at("Everybody clear")
        talk.send("skip")
        self.assertEqual(talk.wait(), 3)
        self.assertIn("the chocks are in place and hold", " ".join(talk.said.split()))
        back = self.begin("--back", "chocks_away", day=False)
        back.prompt()
        back.answer("y")
        self.assertEqual(back.prompts[-1], "Did the parking brake hold, y or n")
        back.send("y")
        self.assertEqual(back.wait(), 0)

    def test_chocks_of_a_vehicle_that_is_not_settled(self):
        """The chocks are asked for as on a defective vehicle, and it is not pulled against its parking brake."""
        for number, answers in enumerate(({**TRUCK, "2R applied": "skip"}, {**TRUCK, "reserve: Pressure at the end": "-"})):
            file = self.folder / f"{number}.json"
            talk = self.at("Everybody clear", answers, file=file)
            self.assertIn("Leave the chocks in if it will be measured again: type skip.", " ".join(talk.said.split()))
            said = " ".join(talk.answer("y").split())
            self.assertIn("! it is not settled that this vehicle may be driven: do the chocks really have to go?", said)
            talk.send("k")
            self.assertEqual(talk.wait(), 3)
            self.assertIn("The pull against the parking brake is not done: it is not settled",
                          " ".join(talk.said.split()))
            self.assertNotIn("gentle pull", talk.said)
            self.assertIn({"check": "spring-brake"}, self.record(file)["air_checks"])

    def test_a_parking_brake_that_does_not_hold(self):
        talk = self.at("Did the parking brake")
        self.assertIn("! Foot on the pedal, engine off, chock the wheels.", " ".join(talk.answer("n").split()))
        held = self.at("Did the parking brake", file=self.folder / "held.json")
        held.send("y")
        held.wait()
        self.assertNotIn("Foot on the pedal", held.said)

    def test_without_an_application(self):
        talk = self.at("Pedal fully")
        self.assertTrue(talk.answer("skip"))
        self.assertTrue(talk.prompts[-1].startswith("Reservoir pressure now"))
        self.go_on_here(talk)
        self.assertEqual(talk.wait(), 3)

    def go_on_with(self, talk, answer, answers=None):
        talk.send(answer)
        self.go_on(talk, answers or TRUCK)

    def go_on_here(self, talk):
        self.go_on_with(talk, self.answer_for(TRUCK, talk, talk.prompts[-1]))

    def test_length_of_a_loss_test(self):
        """A rule of one minute has one as its suggestion; ca-ab asks for two minutes, so nothing is suggested."""
        for rules, wanted in (("us-cdl", " [60]"), ("ca-ab", "")):
            talk = self.at("Seconds it lasts", TEN, file=self.folder / rules, rules=rules)
            self.assertEqual(talk.prompts[-1], "Seconds it lasts" + wanted)
            said = " ".join(talk.answer("" if wanted else "2:00").split())
            self.assertIn("= 60 seconds" if wanted else "= 120 seconds", said)

    def test_odd_air(self):
        talk = self.at("Pressure at the end")
        self.assertIn("contradict", talk.answer("120"))
        self.assertIn("gauge", talk.answer("1"))
        talk.answer("100")
        self.assertEqual(self.record()["air_checks"], [{"check": "reserve", "before": "110", "after": "100"}])

    def test_what_never_came(self):
        """A warning, a governor, a valve that never works is a defect, whatever word says it; nothing is left out."""
        for words in ("never", "no", "did not", "not at all", "None", "n"):
            file = self.folder / words.replace(" ", "")
            talk = self.at("Warning came on", file=file)
            self.assertEqual(talk.prompts[-1], "Warning came on at, psi (or never)")
            self.assertIn("that is a defect", talk.answer(words))
            talk.answer("back warning")
            self.assertEqual(talk.prompts[-1], "Warning came on at, psi (or never) [keep never]")
            talk.answer("")
            self.assertIn({"check": "warning", "answer": "no"}, self.record(file)["air_checks"])
            self.go_on_here(talk)
            self.assertEqual(talk.wait(), 1)
            self.assertIn("AIR SYSTEM DEFECTIVE", talk.said)
            self.assertIn("Do not drive it", report(file).stdout)
            self.assertTrue(is_valid(self.record(file)))

    def test_each_gauge_question_takes_never(self):
        file = self.folder / "on.json"
        answers = {**TEN, **{key: "never" for key in ("Warning came on", "Seconds it took", "Compressor stopped",
                                                      "Compressor started", "Pressure kept", "Supply valve",
                                                      "Parking valve")}, "Seconds it lasts": "60"}
        for rules in ("ca-on", "ca-bc", "ca-qc", "us-cdl"):
            file = self.folder / rules
            talk = self.begin("--air-rules", rules, file=file)
            self.go_on(talk, answers)
            self.assertEqual(talk.wait(), 1)
            asked = re.findall(r"^([^\n]*\(or never\))", talk.said, re.M)
            told = json.loads(report(file, "--json").stdout)["air_checks"]
            never = {check["check"]: check["result"] for check in told if check["check"] in (
                "warning", "build-up", "cut-out", "cut-in", "supply-valve", "parking-valve") or
                     rules == "ca-qc" and check["check"] == "tractor-protection"}
            self.assertEqual(set(never.values()), {"defective"}, rules)
            self.assertGreaterEqual(len(asked), len(never), rules)

    def test_no_is_no_never(self):
        """A question that is answered by yes or no keeps its own word."""
        talk = self.at("Did air come", TEN, rules="ca-on")
        for word, seen, held in (("n", "no", "yes"), ("yes", "yes", "no")):
            self.assertIn(f"= {seen}\n", talk.answer(word))
            self.assertIn({"check": "tractor-protection", "answer": held}, self.record()["air_checks"])
            talk.answer("back tractor-protection")
            self.assertTrue(talk.prompts[-1].endswith(f"[keep {seen}]"), talk.prompts[-1])

    def test_a_figure_after_never(self):
        talk = self.at("Warning came on")
        talk.answer("never")
        talk.answer("back warning")
        talk.answer("62")
        self.assertIn({"check": "warning", "pressure": "62"}, self.record()["air_checks"])

    def test_gauges_that_cannot_be_so(self):
        talk = self.at("Warning came on", TEN, rules="us-cdl")
        self.assertIn("hardly comes on there", " ".join(talk.answer("110").split()))
        talk.answer("62")
        self.go_on_until(talk, TEN, "Compressor stopped")
        self.assertIn("hardly stops", " ".join(talk.answer("40").split()))
        talk.answer("125")
        self.assertIn("hardly starts", " ".join(talk.answer("40").split()))
        self.assertIn("governor cut-in at 130 psi must be below governor cut-out at 125", " ".join(
            talk.answer("130").split()))
        self.assertTrue(talk.prompts[-1].startswith("Is that right"))
        talk.answer("100")
        talk.answer("back warning")
        self.assertIn("must be below governor cut-in at 100", " ".join(talk.answer("100").split()))

    def test_the_odd_one_of_two_gauges_is_named(self):
        talk = self.at("Compressor stopped", TEN, rules="us-cdl")
        talk.answer("40")
        talk.answer("k")
        self.assertIn("governor cut-out is the odd one; back cut-out mends it", " ".join(talk.answer("90").split()))
        talk.answer("back cut-out")
        self.assertTrue(talk.prompts[-1].startswith("Compressor stopped"))

    def go_on_until(self, talk, answers, until):
        while not talk.prompts[-1].startswith(until):
            talk.answer(self.answer_for(answers, talk, talk.prompts[-1]))

    def test_a_reading_far_too_long(self):
        talk = self.at("1L released")
        self.assertIn("hardly the distance", " ".join(talk.answer("12").split()))
        self.assertTrue(talk.prompts[-1].startswith("Is that right"))

    def test_back_walks_forward_through_the_check(self):
        """Three answers typed at the fourth question go where they were meant."""
        talk = self.at("Compressor stopped", TEN, rules="us-cdl")
        for _ in range(3):
            talk.answer("<")
        self.assertIn("from", talk.prompts[-1])
        for answer in ("85", "100", "40"):
            talk.answer(answer)
        self.assertTrue(talk.prompts[-1].startswith("Compressor stopped"))
        self.assertIn({"check": "build-up", "before": "85", "after": "100", "seconds": "40"},
                      self.record()["air_checks"])

    def test_set_up_of_the_air_checks(self):
        """The parking brake is released before leaks are looked for, and the drains are closed before the engine runs."""
        talk, _ = self.walk(TEN, "--air-rules", "us-cdl")
        order = [next(i for i, prompt in enumerate(talk.prompts) if prompt.startswith(words)) for words in (
            "Chocks in place, parking brake released", "Pressure at the start", "Drain valves free", "All drain valves",
            "Seconds it took")]
        self.assertEqual(order, sorted(order))
        self.assertIn("Pressure at the start, pedal held, after the first drop, psi", talk.prompts)

    def test_a_minor_defect_is_driven(self):
        """It is written in the report, and the pull against the parking brake is done."""
        answers = {**TEN, "Vehicle": "s", "How many axles": "2", "Is a leak": "y", "Everybody clear": "yes",
                   "pressure loss, brakes applied: Pressure at the end": "108", "Did the parking brake": "y"}
        talk, status = self.walk(answers, "--rules", "ca-on")
        said = " ".join(talk.said.split())
        self.assertEqual(status, 1, said[-2000:])
        for words in ("AIR SYSTEM: A MINOR DEFECT", "By the air checks: A MINOR DEFECT. Minor defect: write it in the report and tell the carrier."):
            self.assertIn(words, said)
        self.assertNotIn("Do not drive it", said)
        self.assertNotIn("must not be", said)
        self.assertIn("Did the parking brake hold, y or n", talk.prompts)

    def test_a_truck_hears_nothing_of_trailers(self):
        truck, train = (" ".join(self.walk({**TEN, **answers}, "--rules", "ca-on", file=self.folder / f"{name}.json")[0]
                                 .said.split()) for name, answers in (("truck", {"Vehicle": "s", "How many axles": "2"}),
                                                                      ("train", {"How many axles": "3 2"})))
        self.assertNotIn("trailer", truck.partition("Part 3")[2])
        self.assertEqual(truck.count("start below 80 psi, 600 to 900 rpm"), 1)
        self.assertEqual(train.count("start below 80 psi"), 1)
        for words in ("start below 80 psi, trailer supply valve closed, 600 to 900 rpm", "put the trailer lines back",
                      "release the parking brake on every unit, trailer supply valve open"):
            self.assertIn(words, train)

    def test_a_parking_brake_that_does_not_release(self):
        """No leak test is done then, and the record says so."""
        talk = self.at("Chocks in place", TEN, rules="us-cdl")
        talk.answer("skip")
        self.assertFalse(talk.prompts[-1].startswith("Pressure at the start, psi") and "loss" in talk.said)
        checks = self.record()["air_checks"]
        self.assertEqual([check["check"] for check in checks], ["loss-released", "loss-applied"])

    def test_checks_without_figures(self):
        """The default rule set says what it does not ask, and how to have it asked."""
        talk = self.at("Level ground")
        said = " ".join(talk.said.split())
        for words in ("Not asked, because us-fmcsr has no figures for:", "build-up", "governor cut-out", "air us-"):
            self.assertIn(words, said)
        self.assertNotIn("air ca-", said)
        self.assertIn("no rule set", talk.answer("air us-mars"))
        self.assertIn("air checks by us-cdl", talk.answer("air us-cdl"))
        talk.send("yes")
        self.go_on(talk, TEN)
        talk.wait()
        self.assertEqual(self.record()["air_rules"], "us-cdl")
        self.assertIn("build-up", [check["check"] for check in self.record()["air_checks"]])

    def test_no_rule_set_has_more(self):
        """What has most already is not offered itself."""
        talk = self.begin("--rules", "ca-on")
        self.go_on(talk, TRUCK, "Level ground")
        self.assertIn("Not asked, because ca-on", talk.said)
        self.assertNotIn("air ca-on", talk.said)

    def test_air_rules_later(self):
        talk = self.at("Level ground")
        talk.kill()
        later = self.begin("--air-rules", "ontario", day=False)
        later.prompt()
        self.assertEqual(self.record()["air_rules"], "ca-on")
        self.assertIn("go by ca-on", " ".join(later.answer("air us-cdl").split()))

    def test_rules_by_a_word(self):
        talk = self.begin("--rules", "Ontario")
        talk.prompt()
        self.assertEqual(self.record()["rules"], "ca-on")

    def test_the_last_lines(self):
        """The outcome, the places and what to do are what stays on a screen of 24 lines."""
        talk, _ = self.walk({**TEN, "Warning came on": "40"}, "--air-rules", "us-cdl")
        last = " ".join(talk.said.rstrip().splitlines()[-6:])
        for words in ("AIR SYSTEM DEFECTIVE", "DEFECTIVE, BELOW", "Defective: 3L; 4R; pressure loss, brakes applied; low-pressure warning.",
                      "Do not drive it: report it and have it repaired."):
            self.assertIn(words, last)

    def test_air_checks_that_were_left_out(self):
        """The last lines and the report name them above the signature; "None was found" does not stand alone."""
        one = {**TRUCK, "Warning came on": "skip"}
        all_of_them = {**one, "Drain valves": "-", "Did oil": "-", "reserve: Pressure at the start": "-",
                       "reserve: Pressure at the end": "-", "Did the parking brake": "-"}
        for number, (answers, count, titles) in enumerate((
                (one, "1 air check not done: ", ["low-pressure warning"]),
                (all_of_them, "5 air checks not done: ", ["low-pressure warning", "drain valves", "parking brake"]))):
            file = self.folder / f"{number}.json"
            talk, status = self.walk(answers, file=file)
            self.assertEqual(status, 3)
            page = report(file, "--html", "-").stdout
            box = page.partition('<div class="outcome')[2].partition("</div>")[0]
            defects = page.partition("<h2>Defects</h2>")[2].partition("</p>")[0]
            last = " ".join(talk.said.rpartition("ALL BRAKES")[2].split())
            for place in (last, box, defects, " ".join(report(file).stdout.partition("Readings")[0].split())):
                self.assertIn(count, place)
                for title in titles:
                    self.assertIn(title, place.partition(count)[2])
        self.walk(TRUCK, file=self.folder / "done.json")
        page = report(self.folder / "done.json", "--html", "-").stdout
        self.assertIn("<p>None was found.</p>", page)
        self.assertNotIn("not done:", page)

    def test_undetermined_says_why_first(self):
        talk, status = self.walk({**TRUCK, "Reservoir pressure, psi": "80", "2R released": "skip"})
        self.assertEqual(status, 3)
        told = talk.said.rpartition("Not settled\n")[2]
        self.assertTrue(talk.said.rpartition("Not settled\n")[0].endswith("\nUNDETERMINED: NOT EVERY BRAKE IS PROVEN\n"))
        self.assertTrue(told.startswith("    1L 1R 2L: too little air: 80 psi"), told)
        self.assertIn("Do not drive it until this is settled.", talk.said.splitlines()[-1])

    def test_a_dead_brake_that_steers(self):
        talk, _ = self.walk({**TRUCK, "1L applied": "1 1/2"})
        self.assertIn("\nOUT OF SERVICE\n", talk.said)
        self.assertNotIn("IF AXLE", talk.said + report(self.file).stdout)

    def test_a_wheel_end_by_one_word(self):
        """skip 2L leaves the rest of it; again 2L walks through it, and asks for the pedal before the second reading."""
        talk = self.at("2L chamber")
        talk.answer("skip 2l")
        self.assertTrue(talk.prompts[-1].startswith("2R chamber"))
        self.assertIn("Not accepted", talk.answer("skip 9L"))
        talk.answer("again 2L")
        self.assertTrue(talk.prompts[-1].startswith("2L chamber"))
        talk.answer("30")
        self.go_on_here(talk)
        self.assertEqual(talk.wait(), 0, talk.said[-2500:])
        again = self.begin("--back", "1R", day=False)
        again.prompt()
        again.answer("again 2L")
        for question in self.SECURED if PERSON else []:
            again.answer(look_up(self.DUE, question))
        self.assertIn("Release the pedal for the first reading", " ".join(again.said.split()))
        seen = []
        while again.prompts[-1].startswith("2L"):
            seen.append(again.prompts[-1].split(" [")[0])
            again.answer("2" if "released" in again.prompts[-1] else "")
        self.assertEqual(seen[-1], "2L released")
        self.assertIn("2L released", again.prompts, "Enter does not take the reading that is in doubt")
        self.assertEqual(again.prompts[-1], "Reservoir pressure, psi")
        again.answer("95")
        self.assertEqual(again.prompts[-1], "Pedal fully down and held? Type yes")
        again.answer("yes")
        self.assertEqual(again.prompts[-1], "2L applied")
        self.assertIn("an answer is needed", again.answer(""))
        self.go_on_with(again, "3 7/8")
        self.assertEqual(again.wait(), 0)
        self.assertEqual(self.record()["wheel_ends"][2]["applied"], "3 7/8")

    def test_a_gauge_is_read_again(self):
        talk = self.at("Drain valves")
        talk.answer("again warning")
        self.assertEqual(talk.prompts[-1], "Warning came on at, psi (or never)")
        self.assertIn("an answer is needed", talk.answer(""))
        talk.answer("64")
        talk.answer("back warning")
        self.assertEqual(talk.prompts[-1], "Warning came on at, psi (or never) [keep 64]")

    def test_words_for_vehicles(self):
        for word, kind in (("truck", "single"), ("Tractor-Trailer", "combination"), ("semi", "combination"),
                           ("coach", "bus"), ("c", "combination")):
            talk = self.at("Vehicle", file=self.folder / word)
            self.assertIn("= " + kind, talk.answer(word))

    def test_units(self):
        """Axles unit by unit; a dolly is no trailer, so the stricter figure of fewer trailers holds."""
        talk = self.at("How many axles", TEN)
        for words in ("3 x", "0 2", "d3", "3 2 99", "3 200", ""):
            self.assertIn("Not accepted", talk.answer(words), words)
        self.assertIn("= 5 axles: tractor 3, trailer 2", talk.answer("3 2"))
        self.assertFalse(talk.prompts[-1].startswith("Towed"))
        talk.answer("back axles")
        self.assertEqual(talk.prompts[-1], "How many axles (a combination: unit by unit, 3 2) [keep 3 2]")
        self.assertIn("= 8 axles: tractor 3, trailer 2, dolly 1, trailer 2", talk.answer("3+2 d1 2"))
        self.assertEqual(self.record()["towed_units"], 2)
        self.go_on_until(talk, TEN, "Plate")
        self.assertIn("more plates than units", talk.answer("a, b, c, d, e"))
        talk.answer("AB 1, R 2, , R 3")
        self.assertEqual(self.record()["units"], [
            {"kind": "tractor", "plate": "AB 1", "axles": 3}, {"kind": "trailer", "plate": "R 2", "axles": 2},
            {"kind": "dolly", "axles": 1}, {"kind": "trailer", "plate": "R 3", "axles": 2}])
        self.assertEqual(len(self.record()["wheel_ends"]), 16)
        self.assertTrue(is_valid(self.record()))

    def test_a_truck_has_one_unit(self):
        talk = self.at("How many axles")
        self.assertEqual(talk.prompts[-1], "How many axles")
        self.assertIn("Not accepted", talk.answer("2 2"))
        talk.answer("2")
        self.go_on_until(talk, TRUCK, "Plate")
        self.assertRegex(talk.prompts[-1], r"^Plate or VIN($| \[)")
        talk.answer("AB 1")
        self.assertEqual(self.record()["units"], [{"kind": "truck", "plate": "AB 1"}])
        self.assertEqual(self.record()["version"], 3)

    def until(self, talk, text):
        before = len(talk.said)
        while text not in talk.said[before:]:
            self.assertIsNotNone(talk.read(5), talk.said[before:])

    def test_clock_of_a_build_up(self):
        talk = self.at("Seconds it took", TEN, rules="us-cdl")
        self.assertIn("Enter starts a clock", talk.said)
        talk.send("")
        self.until(talk, " 1 s ")
        said = talk.answer("")
        self.assertRegex(said, r"= \S+ seconds?")
        self.assertIn("hardly the time of a build-up", " ".join(said.split()))
        talk.answer("k")
        seconds = [check for check in self.record()["air_checks"] if check["check"] == "build-up"][0]["seconds"]
        self.assertLess(float(seconds), 30)

    def test_count_of_a_loss(self):
        """t counts down and rings; a count that is broken off is no test."""
        talk = self.at("Seconds it lasts", TEN, rules="us-cdl")
        self.assertIn("t counts the seconds down", talk.said)
        said = talk.answer("t 1")
        self.assertIn("\a", said)
        self.assertIn("= 1 second", said)
        self.assertIn("shorter than the test of the rule", " ".join(said.split()))
        talk.send("t")
        self.until(talk, " 60 s ")
        self.assertIn("broken off", " ".join(talk.answer("").split()))
        self.assertTrue(talk.prompts[-1].startswith("Seconds it lasts"))
        self.assertIn("how many seconds", talk.answer("t soon"))

    def test_clock_only_for_a_person(self):
        result = straight(self.file, "")
        self.assertNotIn("clock", result.stdout)
        talk = self.begin("--air-rules", "us-cdl", file=self.folder / "u.json", terminal=False)
        self.go_on(talk, TEN, "Seconds it lasts")
        talk.send("t")
        self.assertEqual(talk.wait(), 2)

    def test_words_to_leave(self):
        for word in ("q", "exit", "quit"):
            talk = self.at("Place", file=self.folder / word)
            talk.send(word)
            self.assertEqual(talk.wait(), 3)

    def test_fewer_axles(self):
        talk = self.at("2L slack arm")
        self.assertIn("a blank may be lost", " ".join(talk.answer("11/2").split()))
        talk.answer("back axles")
        self.assertIn("dropped", talk.answer("1"))
        self.assertIn("a lot of axles", talk.answer("22"))
        talk.answer("2")
        self.assertTrue(talk.prompts[-1].startswith("2L slack arm"))
        talk.answer("back axles")
        talk.answer("1")
        talk.answer("k")
        self.assertEqual([end["position"] for end in self.record()["wheel_ends"]], ["1L", "1R"])
        self.assertEqual(talk.prompts[-1].split(" [")[0], "1R chamber")

    def test_estimate(self):
        """14.7 + 100 over 1 + 4 x 50 / 2000 less 14.7 is about 89: Boyle's law, by hand in round figures."""
        talk = self.at("Reservoir pressure, psi", {**TRUCK, "Volume": "5000", "2L stroke class": "s"})
        self.assertRegex(" ".join(talk.said.split()), r"Start near 100: by estimate .* takes 100 psi down to about 9\d")

    def test_columns(self):
        """No line is wider than the screen, on paper of 80 columns or a phone of 40."""
        for columns in (80, 40):
            file = self.folder / f"{columns}.json"
            talk, _ = self.walk(TEN, "--air-rules", "us-cdl", file=file, columns=columns)
            wide = [line for line in talk.said.splitlines() if len(line) > columns and not line.startswith("Whole")]
            self.assertEqual(wide, [])

    def test_colour(self):
        plain = {key: value for key, value in os.environ.items() if key not in ("NO_COLOR", "TERM")}
        for extra, wanted in (({"TERM": "xterm"}, True), ({"TERM": "xterm", "NO_COLOR": "1"}, False)):
            file = self.folder / str(wanted)
            talk, _ = self.walk(TRUCK, file=file, environment={**plain, **extra})
            self.assertEqual("\x1b" in talk.said, wanted)


class Lost(Walk):
    """Nothing that was confirmed is ever lost."""

    def test_killed_at_every_question(self):
        self.walk(TEN, "--air-rules", "us-cdl")
        wanted = self.file.read_bytes()
        file = self.folder / "killed.json"
        arguments = ["--air-rules", "us-cdl"]
        talk = self.begin(*arguments, file=file)
        question, rounds = talk.prompt(), 0
        while question is not None:
            answer = self.answer_for(TEN, talk, question)
            talk.send(answer)
            following = talk.prompt()
            while following is not None and following.startswith("Is that right"):
                talk.send("k")
                following = talk.prompt()
            if following is None:
                break
            self.assertEqual(talk.kill(), -signal.SIGKILL)
            rounds += 1
            self.assertEqual(json.loads(file.read_bytes())["record"], "brake-stroke-inspection")
            talk = self.begin(*arguments, file=file)
            question = self.taken_up(talk, following)
            self.assertEqual(question, following, "goes on at the first open question")
        self.assertEqual(talk.wait(), 1)
        self.assertGreater(rounds, 50)
        self.assertEqual(file.read_bytes(), wanted)
        self.assertEqual(sorted(path.name for path in self.folder.iterdir()), ["killed.json", "t.json"])

    def test_killed_at_any_moment(self):
        """The answer is on its way when the blow falls: afterwards it is there whole or it is asked again."""
        self.walk(TRUCK)
        wanted, file = self.file.read_bytes(), self.folder / "killed.json"
        chance = random.Random(20261120)
        talk = self.begin(file=file)
        question = talk.prompt()
        while question is not None:
            talk.send(self.answer_for(TRUCK, talk, question))
            talk.read(chance.choice((0, 0, 0.0005, 0.001, 0.002)))
            talk.kill()
            talk = self.begin(file=file)
            question = self.taken_up(talk)
            if question is None:
                break
            talk.send(self.answer_for(TRUCK, talk, question))
            question = talk.prompt()
        self.assertEqual(talk.wait(), 0)
        self.assertEqual(file.read_bytes(), wanted)

    def stopped(self, way):
        file = self.folder / f"{way.__name__}.json"
        talk = self.begin(file=file)
        self.go_on(talk, TRUCK, "1L released")
        saved = file.read_bytes()
        talk.send("1 1/", end="")
        way(talk)
        status = talk.wait()
        self.assertEqual(file.read_bytes(), saved)
        rest = self.begin(file=file)
        self.assertEqual(self.taken_up(rest), "1L released")
        self.assertIn("Going on with", rest.said)
        return talk.said, status

    def test_stopped(self):
        if not PERSON:
            self.skipTest("no pseudo-terminal here")

        def interrupt(talk):
            talk.send(b"\x03", end="")

        def terminate(talk):
            talk.process.send_signal(signal.SIGTERM)

        def end_of_input(talk):
            talk.send(b"\x04\x04", end="")

        def hang_up(talk):
            talk.process.send_signal(signal.SIGHUP)

        for way in (terminate, end_of_input, hang_up):
            said, status = self.stopped(way)
            self.assertEqual(status, 3, way.__name__)
            self.assertIn("Stopped at: 1L released", said)
            self.assertIn("Go on with: rodtravel walkround", " ".join(said.split()))

    def test_control_c_is_a_stop(self):
        talk = self.begin()
        self.go_on(talk, TRUCK, "1L released")
        talk.process.send_signal(signal.SIGINT)
        self.assertEqual(talk.wait(), 3)
        self.assertIn("Stopped at: 1L released", talk.said)

    def test_the_terminal_goes_away(self):
        if not PERSON:
            self.skipTest("no pseudo-terminal here")
        talk = self.begin()
        self.go_on(talk, TRUCK, "1L released")
        saved = self.file.read_bytes()
        talk.close()
        self.assertIn(talk.process.wait(60), (2, 3, -signal.SIGHUP))
        self.assertEqual(self.file.read_bytes(), saved)

    def test_after_a_break(self):
        """Over night the parking brake was set, the pedal came up, the air went: nothing of it is taken for granted."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        chocks = "Level ground, wheels chocked front and back, nobody in the way? Type yes"
        ready = "Chocks in place, parking brake released on every unit? Type yes"
        spring, engine = "Parking brake released on every unit, y or n", "Engine off, y or n"
        pedal = ["Reservoir pressure, psi", "Pedal fully down and held? Type yes"]
        air = TEN | {"Vehicle": "s", "How many axles": "2"}
        rules = ["--air-rules", "us-cdl"]
        for until, asked in (
                ("Pressure at the end", [chocks, ready, "Pressure at the start, psi"]),
                ("Warning came on", [chocks]), ("Timed from", [chocks, "All drain valves closed again? Type yes"]),
                ("Drums", [chocks, spring, engine]), ("2L released", [chocks, spring, engine]),
                ("Pedal fully", [chocks, spring, engine, pedal[0]]), ("2R applied", [chocks, spring, engine, *pedal]),
                ("Nobody at the rods", [chocks]), ("Everybody clear", [chocks, "Nobody at the rods, pedal released, then "
                                                                       "parking brake set? Type yes"])):
            file = self.folder / until.replace(" ", "_")
            talk = self.begin(*rules, file=file)
            self.go_on(talk, air, until)
            talk.kill()
            before = file.read_bytes()
            again = self.begin(*rules, file=file)
            for question in asked:
                self.assertEqual(again.prompt(), question, until)
                self.assertIn("an answer is needed", again.answer(""), "Enter is no answer")
                self.assertEqual(again.prompts[-1], question)
                if question == spring:
                    self.assertIn("no stroke proves", " ".join(again.answer("n").split()))
                    again.answer("<")
                again.send(look_up(self.DUE, question))
            question = again.prompt()
            if question.startswith("Seconds it lasts"):  # the whole test begins again
                self.assertEqual(question, "Seconds it lasts [keep 60]")
                again.send("")
                question = again.prompt()
            self.assertTrue(question.startswith(until), question)
            self.assertNotIn("Not asked", again.said)
            again.kill()
            self.assertEqual(file.read_bytes(), before, until)

    def test_back_in_a_break(self):
        """Who goes back first is still asked for what the break may have undone."""
        if not PERSON:
            self.skipTest("a script is not asked again")
        talk = self.begin()
        self.go_on(talk, TRUCK, "2L released")
        talk.kill()
        again = self.begin()
        again.prompt()
        again.answer("back 1L")
        self.assertEqual(again.prompts[-1], "1L released [keep 1 1/2]")
        again.answer("")
        self.assertTrue(again.prompts[-1].startswith("Parking brake released"), again.prompts[-1])

    def test_quit(self):
        talk = self.begin()
        self.go_on(talk, TRUCK, "2R applied")
        talk.send("quit")
        self.assertEqual(talk.wait(), 3)
        out = self.begin(day=False)
        out.prompt()
        out.send("5")
        out.prompt()
        out.send("k") if out.prompts[-1].startswith("Is that") else None
        out.kill()

    def test_quit_when_something_is_out(self):
        talk = self.begin()
        self.go_on(talk, {**TRUCK, "1L applied": "3 3/8"}, "2L applied")
        talk.send("quit")
        self.assertEqual(talk.wait(), 1)


class Disk(Walk):
    @staticmethod
    def limit(size):
        return lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size, resource.RLIM_INFINITY))

    def test_full_at_once(self):
        result = straight(self.file, "", preexec_fn=self.limit(16))
        self.assertEqual(result.returncode, 2)
        self.assertIn("could not be written", result.stderr)
        self.assertEqual(list(self.folder.iterdir()), [])

    def test_full_in_the_middle(self):
        """The older record stays; with room again the answer that was held back is saved."""
        if not PERSON or not hasattr(resource, "prlimit"):
            self.skipTest("no pseudo-terminal here")
        talk = self.begin(before=self.limit(900))
        self.go_on(talk, TRUCK, "Enter tries again")
        saved = self.file.read_bytes()
        self.assertLess(len(saved), 900)
        self.assertIn("not saved", " ".join(talk.said.split()))
        asked = talk.prompts[-2]
        talk.answer("")
        self.assertTrue(talk.prompts[-1].startswith("Enter tries again"))
        talk.answer(str(self.folder / "other.json"))
        self.assertTrue(talk.prompts[-1].startswith("Enter tries again"))
        self.assertEqual(self.file.read_bytes(), saved)
        self.assertEqual([path.name for path in self.folder.iterdir()], ["t.json"])
        resource.prlimit(talk.process.pid, resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
        said = talk.answer("")
        self.assertIn("Saved in", said)
        self.assertNotEqual(talk.prompts[-1], asked)
        self.go_on_from(talk)
        self.assertEqual(talk.wait(), 0)
        whole = self.file.read_bytes()
        self.file = self.folder / "u.json"
        self.walk(TRUCK)
        self.assertEqual(whole, self.file.read_bytes())

    def go_on_from(self, talk):
        talk.send(self.answer_for(TRUCK, talk, talk.prompts[-1]))
        self.go_on(talk, TRUCK)

    def test_saved_elsewhere(self):
        if not PERSON or not hasattr(resource, "prlimit"):
            self.skipTest("no pseudo-terminal here")
        talk = self.begin(before=self.limit(900))
        self.go_on(talk, TRUCK, "Enter tries again")
        saved, other = self.file.read_bytes(), self.folder / "other.json"
        resource.prlimit(talk.process.pid, resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
        taken = self.folder / "taken.json"
        taken.write_text("mine", encoding="ascii")
        talk.answer(str(taken))
        self.assertEqual(taken.read_text(encoding="ascii"), "mine")
        talk.answer(str(other))
        self.go_on_from(talk)
        self.assertEqual(talk.wait(), 0)
        self.assertEqual(self.file.read_bytes(), saved)
        self.assertEqual(report(other).returncode, 0)

    def test_full_for_a_script(self):
        text = "yes\n" + "-\n" * 7 + "9\n-\n-\nyes\n"
        result = straight(self.file, text, preexec_fn=self.limit(500))
        self.assertEqual(result.returncode, 2)
        self.assertNotIn("wheel_ends\": [{", self.file.read_text(encoding="utf-8"))
        self.assertIn("not saved", " ".join(result.stdout.split()))

    def refused(self, file, *says):
        before = file.read_bytes() if file.is_file() else None
        result = straight(file, "yes\n")
        self.assertEqual((result.returncode, result.stdout), (2, ""), result.stderr)
        said = " ".join(result.stderr.replace("rodtravel: ", "").split())
        for words in says:
            self.assertIn(words, said)
        if before is not None:
            self.assertEqual(file.read_bytes(), before)

    def test_no_record_is_overwritten(self):
        for name, text in (("words", "shopping list\n"), ("other", '{"record": "recipe", "version": 1}'), ("empty", ""),
                           ("later", '{"record": "brake-stroke-inspection", "version": 99}')):
            file = self.folder / name
            file.write_text(text, encoding="utf-8")
            self.refused(file, "is unchanged")
        self.refused(self.folder, "no plain file")
        self.refused(Path("/dev/null"), "no plain file")
        self.refused(Path("-"), "give its name")
        self.refused(self.folder / "no" / "t.json", "could not be written")

    def test_no_right_to_write(self):
        closed = self.folder / "closed"
        closed.mkdir()
        before = None
        if os.geteuid() == 0:
            os.chmod(self.folder, 0o755)

            def before():
                os.setgid(65534)
                os.setuid(65534)
        closed.chmod(0o555)
        try:
            result = straight(closed / "t.json", "yes\n", preexec_fn=before)
        except PermissionError:
            self.skipTest("the command is where only its owner may run it")
        finally:
            closed.chmod(0o755)
        self.assertEqual(result.returncode, 2)
        self.assertIn("Permission denied", " ".join(result.stderr.split()))

    def test_two_at_once(self):
        talk = self.begin()
        self.go_on(talk, TRUCK, "1L released")
        self.refused(self.file, "another walk-round")
        talk.send("1 1/2")
        talk.prompt()
        self.refused(self.file, "another walk-round")
        talk.kill()
        free = self.begin()
        self.assertIsNotNone(free.prompt())

    def test_changed_by_somebody_else(self):
        if not PERSON:
            self.skipTest("no pseudo-terminal here")
        talk = self.begin()
        self.go_on(talk, TRUCK, "1L released")
        other = self.record()
        other["unit"] = "T-2"
        self.file.write_text(json.dumps(other), encoding="utf-8")
        said = " ".join(talk.answer("1 1/2").split())
        self.assertIn("changed by another program", said)
        self.assertEqual(self.record()["unit"], "T-2")
        talk.answer(str(self.folder / "mine.json"))
        self.assertEqual(self.record(self.folder / "mine.json")["unit"], "T-1")
        self.assertEqual(self.record()["unit"], "T-2")

    def test_a_link_stays_a_link(self):
        link = self.folder / "link.json"
        self.walk(TRUCK)
        link.symlink_to("t.json")
        self.file.write_text(json.dumps({**self.record(), "steps": []}), encoding="utf-8")
        talk = self.begin(file=link, day=False)
        talk.prompt()
        talk.send("yes")
        talk.prompt()
        self.assertTrue(link.is_symlink())
        self.assertIn("cautions", self.file.read_text(encoding="utf-8"))


class Records(Walk):
    def test_begun_but_empty(self):
        """Readable, and no report yet."""
        talk = self.begin()
        talk.prompt()
        talk.kill()
        self.assertTrue(is_valid(self.record()))
        told = report(self.file)
        self.assertEqual((told.returncode, told.stdout), (2, ""))
        self.assertIn("nothing to report yet", " ".join(told.stderr.split()))

    def test_a_record_made_by_hand_is_taken_up(self):
        """What it has is not asked again."""
        record = {"record": "brake-stroke-inspection", "version": 1, "date": "2026-11-20", "rules": "us-fmcsr",
                  "unit": "T-9", "wheel_ends": [{"position": "1L", "chamber": "20", "released": "1 1/2"},
                                                {"position": "1R"}]}
        self.file.write_text(json.dumps(record), encoding="utf-8")
        talk = self.begin(day=False)
        self.go_on(talk, TRUCK)
        self.assertEqual(talk.wait(), 0, talk.said[-500:])
        self.assertFalse([prompt for prompt in talk.prompts if re.match("Unit number|1L chamber|1L released|How many",
                                                                        prompt)])

    def test_other_axles_than_the_record_says(self):
        """The number of brakes in a record made by hand does not outlive its axles, and does not go silently."""
        end = {"chamber": "20", "stroke_class": "standard", "released": "1 1/2", "applied": "3"}
        record = {"record": "brake-stroke-inspection", "version": 1, "date": "2026-11-20", "rules": "us-fmcsr",
                  "brakes": 4, "wheel_ends": [{"position": name, **end} for name in ("1L", "1R", "2L", "2R")]}
        for axles, keeps in (("2", True), ("1", False), ("3", False)):
            self.file.write_text(json.dumps(record), encoding="utf-8")
            text = "yes\n" + "-\n" * 9 + f"yes\nback axles\n{axles}\n"
            result = straight(self.file, text + ("" if keeps else "k\n"))
            self.assertEqual((result.returncode, result.stderr), (3, ""))
            self.assertEqual("the record says 4 brakes" in " ".join(result.stdout.split()), not keeps)
            self.assertEqual((self.record().get("brakes"), len(self.record()["wheel_ends"])),
                             (4 if keeps else None, 2 * int(axles)))
            self.assertEqual(report(self.file).stderr, "")

    def test_chocks_are_never_taken_for_granted(self):
        self.walk(TRUCK)
        whole = self.record()
        for name, asked in (("cautions", "Have you read"), ("chocks", "Level ground")):
            for answer in ("no", "skipped"):
                steps = [{**step, "answer": answer} if step["step"] == name else step for step in whole["steps"]]
                self.file.write_text(json.dumps({**whole, "steps": steps}), encoding="utf-8")
                talk = self.begin(day=False)
                self.assertTrue(talk.prompt().startswith(asked))
                talk.kill()

    def test_a_broken_record_is_named(self):
        record = {"record": "brake-stroke-inspection", "version": 1, "date": "2026-11-20", "rules": "us-fmcsr",
                  "wheel_ends": [{"position": "1L", "released": "2-Jan"}]}
        self.file.write_text(json.dumps(record), encoding="utf-8")
        result = straight(self.file, "")
        self.assertEqual(result.returncode, 2)
        self.assertIn("2-Jan", result.stderr)

    def test_another_rule_set_is_refused(self):
        self.begin().prompt()
        self.begin().leave()
        for option, value in (("--rules", "us-periodic"), ("--unit", "mm"), ("--as-of", "2020-01-01")):
            file = self.folder / "u.json"
            talk = self.begin(file=file)
            talk.prompt()
            talk.kill()
            again = self.begin(option, value, file=file, day=False, terminal=False)
            self.assertEqual(again.wait(), 2)
            self.assertIn("was started with", again.said)

    def test_limits_of_a_carrier(self):
        """2 1/2 passes clamp 30 long by law and not by 2 3/8; without the carrier's table that is never silent."""
        own = self.folder / "own limits.csv"
        own.write_text("family,size,class,limit\nclamp,30,long,2 3/8\n", encoding="ascii")
        talk, status = self.walk(TRUCK, "--limits", str(own))
        self.assertEqual(status, 1, talk.said[-1500:])
        self.assertTrue(talk.said.startswith("New record"))
        self.assertIn(f"rodtravel report {self.file} --limits '{own}'", " ".join(talk.said.split()))
        for limits, wanted in ((["--limits", own], 1), ([], 3)):  # the pull was not done
            for page in ([], ["--html", "-"]):
                told = report(self.file, *limits, *page)
                self.assertEqual((told.returncode, "this report is without them" in " ".join(told.stdout.split())),
                                 (wanted, not limits), told.stderr)
        again = self.begin(day=False, terminal=False)
        self.assertEqual(again.wait(), 2)
        self.assertIn("go on with --limits", " ".join(again.said.split()))

    def test_air_figures_of_a_carrier(self):
        """TEN loses 2 psi in a minute, brakes released: good by us-cdl (less than 3), too much for the carrier."""
        own = self.folder / "own.csv"
        own.write_text("check,vehicle,comparison,value,measure,source\n"
                       "loss-released,combination,not-more-than,1,psi-per-minute,Shop bulletin 7\n", encoding="ascii")
        words = "1 psi per minute: defective (the carrier's own figure; by the law: good)"
        talk, status = self.walk(TEN, "--air-rules", "us-cdl", "--limits", str(own))
        self.assertEqual(status, 1, talk.said[-1500:])
        said = " ".join(talk.said.split())
        self.assertEqual((words in said, f"rodtravel report {self.file} --limits {own}" in said), (True, True))
        for limits in ([], ["--limits", own]):
            told = {one["check"]: one for one in json.loads(report(self.file, *limits, "--json").stdout)["air_checks"]}
            loss = told["loss-released"]
            self.assertEqual((loss["result"], loss["law_result"]), ("defective" if limits else "good", "good"))
            self.assertEqual(loss["rules"], "us-cdl")
            for page in ([], ["--html", "-"]):
                text = " ".join(report(self.file, *limits, *page).stdout.split()).replace("&#39;", "'")
                self.assertEqual((words in text, "Shop bulletin 7" in text), (bool(limits),) * 2)

    def test_limits_of_a_carrier_are_read_once(self):
        """What the first question was judged by judges the last one too, whatever becomes of the file."""
        own = self.folder / "own.csv"
        own.write_text("family,size,class,limit\nclamp,30,long,2 3/8\n", encoding="ascii")
        talk = self.begin("--limits", own)
        talk.prompt()
        own.unlink()
        talk.send("yes")
        self.go_on(talk, TRUCK)
        self.assertEqual(talk.wait(), 1, talk.said[-1500:])
        self.assertIn("DEFECTIVE", talk.said)

    def test_nothing_is_taken_that_the_record_would_refuse(self):
        """A mark far from what chambers have, a coarse division, a fraction under millimetres."""
        if not PERSON:
            self.skipTest("no pseudo-terminal here")
        talk = self.begin("--unit", "mm")
        self.go_on(talk, TRUCK, "Smallest division")
        self.assertIn("1/16", talk.answer("16"))
        talk.send("1 mm")
        self.go_on(talk, TRUCK, "1L released")
        self.assertIn("no metric tape", talk.answer("54 1/8"))
        talk.send("54")
        self.go_on(talk, {**TRUCK, "2L chamber": "24L"}, "2L rated stroke")
        self.assertIn("3 in", talk.answer("3"))
        self.assertIn("= 3 in", talk.answer("3 in"))

    def test_towed_units_that_are_not_given(self):
        """Every rule for a combination is shown, and one that only some of them pass stays open."""
        talk = self.begin("--air-rules", "us-ca")
        self.go_on(talk, {**TEN, "Towed units": "-"}, "1L chamber")
        said = " ".join(talk.said.split())
        self.assertIn("4 psi", said)
        self.assertIn("6 psi", said)
        self.assertIn("the number of towed units decides", said)

    def test_wrong_options(self):
        for words in (["--rules", "us-mars"], ["--air-rules", "us-mars"], ["--rules", "us-cdl"], ["--order", "random"],
                      ["--unit", "ell"], ["--reservoirs", "many"], ["--as-of", "yesterday"],
                      ["--answers", str(self.folder / "none.txt")]):
            talk = self.begin(*words, day="--as-of" not in words, terminal=False)
            self.assertEqual(talk.wait(), 2, words)
            self.assertFalse(self.file.exists(), words)

    def test_the_law_of_the_day(self):
        """Clamp 36 had 2 1/4 until 2021-10-13 and 2 1/2 from the day after (86 FR 57076)."""
        answers = {**TRUCK, "How many axles": "1", "1L chamber": "36", "1R applied": "3 7/8", "1L applied": "3 7/8"}
        for day, wanted in (("2021-10-13", 1), ("2021-10-14", 0)):
            file = self.folder / day
            talk = self.begin("--as-of", day, file=file, day=False)
            self.go_on(talk, answers)
            self.assertEqual(talk.wait(), wanted, talk.said[-1500:])

    def test_millimetres(self):
        answers = {**TRUCK, "How many axles": "1", "1L slack arm": "152", "1L released": "40", "1R released": "40",
                   "1L applied": "84", "1R applied": "84.4"}
        talk = self.begin("--unit", "mm")
        self.go_on(talk, answers)
        self.assertEqual(talk.wait(), 0, talk.said[-1500:])
        self.assertIn("= 84.4 mm", talk.said)
        self.assertEqual(self.record()["length_unit"], "mm")


class Daily(Walk):
    """A new record begun from the unit's last one."""

    def last(self, answers, *arguments):
        self.walk({**answers, "Carrier": "Example Haulage", "Plate": "AB 1, R 2"}, *arguments)
        return self.file, self.folder / "next.json"

    def next(self, answers, file, *arguments):
        talk = self.begin("--from", self.file, *arguments, file=file)
        self.go_on(talk, answers)
        return talk, talk.wait()

    def test_what_stays_and_what_is_fresh(self):
        last, following = self.last({**TEN, "How many axles": "3 2"}, "--air-rules", "us-cdl")
        before = last.read_bytes()
        answers = {**{key: answer for key, answer in TEN.items() if "chamber" not in key and "arm" not in key},
                   "Is every wheel end": "yes"}
        talk, status = self.next(answers, following)
        self.assertEqual(status, 1)
        asked = [prompt.split(" [")[0] for prompt in talk.prompts]
        for words in ("Unit number", "Carrier", "Vehicle", "How many", "Plate", "1L chamber", "1L adjuster",
                      "1L slack arm", "Smallest division"):
            self.assertFalse([prompt for prompt in asked if prompt.startswith(words)], words)
        for words in ("Who inspects", "Place", "Odometer", "Level ground", "Warning came on", "1L released",
                      "1L applied", "Drums"):
            self.assertTrue([prompt for prompt in asked if prompt.startswith(words)], words)
        self.assertEqual(last.read_bytes(), before)
        old, new = self.record(last), self.record(following)
        for key in ("unit", "carrier", "rules", "air_rules", "vehicle", "towed_units", "units"):
            self.assertEqual(old[key], new[key], key)
        self.assertEqual([end["chamber"] for end in old["wheel_ends"]], [end["chamber"] for end in new["wheel_ends"]])
        self.assertEqual(new["wheel_ends"], old["wheel_ends"], "the same readings were typed")
        said = " ".join(talk.said.split())
        self.assertIn("Kept from the record of 2026-11-20: the vehicle, its chambers, adjusters and arms", said)
        self.assertIn("1L 1R: 20 standard, automatic, arm 6", said)
        self.assertIn("\n4L: 30L, automatic, arm 5 1/2\n4L released: ", talk.said)

    def test_open_defects_of_the_last_record(self):
        """They are said in the beginning, in the list, at the wheel end and at the check, after a break too."""
        bad = {**TRUCK, "2R applied": "5", "Warning came on": "never"}
        _, following = self.last(bad)
        words = "Last record: DEFECTIVE (2R; low-pressure warning). Repair: not recorded."
        again = "! Defective in the last record. Repair: not recorded."
        talk = self.begin("--from", self.file, file=following)
        self.go_on(talk, TRUCK, "Warning came on")
        self.assertEqual(" ".join(talk.said.split()).count(words), 1)
        self.assertIn(again, talk.said.rsplit("Check: ", 1)[1])
        talk.kill()
        talk = self.begin(file=following, day=False)
        self.taken_up(talk)
        talk.send("62")
        self.go_on(talk, {**TRUCK, "Is every wheel end": "yes"}, "Reservoir pressure, psi")
        self.assertIn(words, " ".join(talk.said.split()))
        for end in ("1L", "2L", "2R", "1R"):
            self.assertEqual(talk.said.split(f"\n{end} released")[0].endswith(again), end == "2R", end)
        talk.send("95")
        self.go_on(talk, {**TRUCK, "Is every wheel end": "yes"})
        self.assertEqual(talk.wait(), 0, talk.said[-2000:])
        self.assertIn(words, " ".join(talk.said.split("Done; all is in")[1].split()), "good today, and not repaired")
        self.assertIn(words, " ".join(report(following).stdout.split()))
        self.file.unlink()
        self.last({**bad, "Repaired": "J. Example, 11:00"})
        other = self.folder / "other.json"
        talk = self.begin("--from", self.file, file=other)
        talk.prompt()
        self.assertIn("Repair: J. Example, 11:00.", " ".join(talk.said.split()))

    def test_no_reading_is_kept(self):
        _, following = self.last(TRUCK)
        talk = self.begin("--from", self.file, file=following)
        talk.prompt()
        record = self.record(following)
        for end in record["wheel_ends"]:
            self.assertFalse(set(end) - {"position", "chamber", "stroke_class", "division", "adjuster", "arm_length"})
        self.assertEqual(record["air_checks"], [])
        self.assertTrue(is_valid(record))

    def test_a_changed_chamber(self):
        if not PERSON:
            self.skipTest("no pseudo-terminal here")
        _, following = self.last(TRUCK)
        talk = self.begin("--from", self.file, file=following)
        self.go_on(talk, TRUCK, "Is every wheel end")
        self.assertIn("cannot be skipped", talk.answer("skip"))
        self.assertIn("Not accepted", talk.answer("9L"))
        self.assertIn("= changed: 2l", talk.answer("2l"))
        self.assertEqual(talk.prompts[-1], "1L released")
        talk.answer("1 1/2")
        self.assertTrue(talk.prompts[-1].startswith("2L chamber [as 2R") or talk.prompts[-1].startswith("2L chamber ["))
        talk.answer("24")
        talk.answer("k")
        self.assertTrue(talk.prompts[-1].startswith("2L stroke class"), talk.prompts[-1])

    def test_who_inspects_is_offered(self):
        _, following = self.last({**TRUCK, "Place": "Yard 2"})
        talk = self.begin("--from", self.file, file=following)
        self.go_on(talk, TRUCK, "Who inspects")
        self.assertEqual(talk.prompts[-1], "Who inspects [M. Example]")
        talk.answer("")
        self.assertEqual(talk.prompts[-1], "Place [Yard 2]")

    def test_what_is_no_beginning(self):
        last, following = self.last(TRUCK)
        for options, says in ((["--from", self.folder / "none.json"], "cannot open"),
                              (["--from", last, "--unit", "mm"], "lengths in inches"),
                              (["--from", __file__], "no JSON")):
            talk = self.begin(*options, file=following, terminal=False)
            self.assertEqual(talk.wait(), 2)
            self.assertIn(says, " ".join(talk.said.split()))
            self.assertFalse(following.exists())
        talk = self.begin("--from", last, file=last, terminal=False)
        self.assertEqual(talk.wait(), 2)
        self.assertIn("is there already", " ".join(talk.said.split()))

    def test_keystrokes_of_a_repeat(self):
        """Ten brakes again: what a person presses beyond the twenty readings."""
        _, following = self.last({**TEN, "How many axles": "3 2"}, "--air-rules", "us-cdl")
        talk = self.begin("--from", self.file, file=following)
        pressed = readings = 0
        begun = time.monotonic()
        answers = {**TEN, "Is every wheel end": "y", "Have you read": "y", "Level ground": "y", "Pedal fully": "y",
                   "Chocks in place": "y"}
        question = talk.prompt()
        while question is not None:
            answer = self.answer_for(answers, talk, question)
            pressed += len(answer) + 1
            readings += len(answer) + 1 if re.match(r"\d[LR] (released|applied)", question) else 0
            talk.send(answer)
            question = talk.prompt()
        print(f"# a repeat of ten brakes with all air checks: {len(talk.prompts)} questions, {pressed} keystrokes, "
              f"{readings} of them the twenty readings; the program took {time.monotonic() - begun:.2f} s of it")
        self.assertLess(pressed - readings, 90)


class Script(Walk):
    def script(self, lines, *options, name="answers.txt", file=None):
        answers = self.folder / name
        answers.write_text("".join(line + "\n" for line in lines), encoding="utf-8")
        result = subprocess.run([COMMAND, "walkround", file or self.file, "--as-of", "2026-11-20", "--answers", answers,
                                 *options], capture_output=True, text=True, check=False)
        result.stderr = " ".join(result.stderr.replace("rodtravel: ", "").split())
        return result

    def lines(self):
        """The answers of the truck, one a line, as a person gave them."""
        talk = self.begin(file=self.folder / "by_hand.json", terminal=False)
        found, question = [], talk.prompt()
        while question is not None:
            found.append(self.answer_for(TRUCK, talk, question))
            talk.send(found[-1])
            question = talk.prompt()
        self.assertEqual(talk.wait(), 0)
        return found

    def test_a_file_of_answers(self):
        lines = self.lines()
        result = self.script(["# the truck", *lines[:5], "#", "#\tand so on", *lines[5:], "", "# done"])
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        self.assertEqual(self.file.read_bytes(), (self.folder / "by_hand.json").read_bytes())
        self.assertIn("an answer after the last question", self.script([*lines, "#REF!"], file=self.folder / "b.json").stderr)

    def test_what_nobody_can_read_is_an_answer(self):
        """Whatever stands in the place of an answer: the next line answers another question."""
        lines = self.lines()
        reading = lines.index("1 1/2")
        for number, text in enumerate(("#REF!", "#N/A", "####", "?")):
            result = self.script([*lines[:reading], text, *lines[reading + 1:]], file=self.folder / f"{number}.json")
            self.assertEqual(result.returncode, 2, text)
            self.assertIn(f"answers.txt:{reading + 1}: the answer to", result.stderr)

    def test_a_file_from_elsewhere(self):
        """With a byte-order mark, CR LF and blanks around."""
        lines = self.lines()
        answers = self.folder / "crlf.txt"
        answers.write_bytes(("\ufeff" + "".join(f" {line}\t\r\n" for line in lines)).encode())
        result = subprocess.run([COMMAND, "walkround", self.file, "--as-of", "2026-11-20", "--answers", answers],
                                capture_output=True, text=True, check=False)
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        self.assertEqual(self.file.read_bytes(), (self.folder / "by_hand.json").read_bytes())

    def test_the_example(self):
        """By hand: 2R 4 1/8 less 2 1/16 is 2 1/16, over 2 by 1/16: a half of 4 brakes is 12 1/2 %."""
        answers = Path(__file__).resolve().parent.parent.parent / "examples" / "data" / "walkround.txt"
        result = subprocess.run([COMMAND, "walkround", self.file, "--answers", answers], capture_output=True, text=True,
                                check=False)
        self.assertEqual((result.returncode, result.stderr), (1, ""))
        self.assertIn("\nDEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION\n", result.stdout)
        self.assertIn("1/2 of 4 brakes defective, 12 1/2 %", result.stdout)
        self.assertEqual(self.record()["wheel_ends"][3]["remark"], "rod end is dry")

    def test_standard_input_is_the_same(self):
        text = "".join(line + "\n" for line in self.lines())
        for options in ([], ["--answers", "-"]):
            file = self.folder / f"{len(options)}.json"
            result = subprocess.run([COMMAND, "walkround", file, "--as-of", "2026-11-20", *options], input=text,
                                    capture_output=True, text=True, check=False)
            self.assertEqual((result.returncode, result.stderr), (0, ""))
            self.assertEqual(file.read_bytes(), (self.folder / "by_hand.json").read_bytes())

    def test_each_wrong_answer_has_its_line(self):
        lines = self.lines()
        for at, line in enumerate(lines):
            if line in ("", "T-1", "M. Example"):
                continue
            file = self.folder / f"{at}.json"
            result = self.script([*lines[:at], "bad answer", *lines[at + 1:]], file=file)
            self.assertEqual(result.returncode, 2)
            self.assertIn(f"answers.txt:{at + 1}: the answer to", result.stderr)

    def test_an_odd_answer_must_be_kept(self):
        lines = self.lines()
        at = lines.index("3 1/8")
        result = self.script([*lines[:at], "1 1/2", *lines[at + 1:]])
        self.assertNotEqual(result.returncode, 0)
        file = self.folder / "kept.json"
        result = self.script([*lines[:at], "1 1/2", "keep", *lines[at + 1:-1], "keep", ""], file=file)
        self.assertEqual((result.returncode, result.stderr), (1, ""))

    def test_answers_that_end_early(self):
        lines = self.lines()
        result = self.script(lines[:20])
        self.assertEqual(result.returncode, 3)
        self.assertIn("Stopped at", result.stdout)
        rest = self.script(lines[20:], name="rest.txt")
        self.assertEqual(rest.returncode, 0)
        self.assertEqual(self.file.read_bytes(), (self.folder / "by_hand.json").read_bytes())

    def test_answers_left_over(self):
        result = self.script([*self.lines(), "yes"])
        self.assertEqual(result.returncode, 2)
        self.assertIn("after the last question", result.stderr)

    def test_a_line_that_was_cut_off(self):
        lines = self.lines()
        at = lines.index("1 1/2")
        text = "".join(line + "\n" for line in lines[:at]) + "1 1"
        result = straight(self.file, text)
        self.assertEqual(result.returncode, 2)
        self.assertIn("cut off", " ".join(result.stderr.split()))
        self.assertNotIn("released\": \"1 1", self.file.read_text(encoding="utf-8"))

    def test_cautions_by_option(self):
        result = self.script(self.lines()[1:], "--cautions-confirmed")
        self.assertEqual(result.returncode, 0)
        self.assertIn("by an option, not by a person", " ".join(result.stdout.split()))
        self.assertIn("by an option of the command, not by a person", " ".join(report(self.file).stdout.split()))
        self.assertIn({"step": "cautions", "answer": "by option"}, self.record()["steps"])
        page = report(self.file, "--html", "-").stdout
        self.assertIn("not by a person", page)


class Garbage(Walk):
    def lines(self):
        chance = random.Random(4711)
        for _ in range(150):
            line = bytes(chance.choice(b"\x00\x01\x07\x08\x1b\x7f\x80\xc3\xff\xe2 x[A/12'\"\\") for _ in
                         range(chance.randrange(1, 40)))
            if any(sign < 32 or sign >= 127 for sign in line) or b"x" in line:
                yield line.replace(b"\n", b"?")
        yield b"\xff" * 100000
        yield b"1" * 100000
        yield "１ 1/2".encode()
        yield "1 1/2\u202e".encode()
        yield b"\xc0\x80\xed\xa0\x80\xf4\x90\x80\x80"

    def test_a_person_who_falls_on_the_keys(self):
        if not PERSON:
            self.skipTest("no pseudo-terminal here")
        talk = self.begin(raw=True)
        self.go_on(talk, TRUCK, "1L released")
        saved = self.file.read_bytes()
        for line in self.lines():
            talk.answer(line)
            self.assertEqual(talk.prompts[-1], "1L released", line[:60])
            self.assertEqual(self.file.read_bytes(), saved, line[:60])
        self.assertNotRegex(talk.said, "[\x00-\x09\x0b-\x1f\x7f]")
        talk.send("1 1/2")
        self.go_on(talk, TRUCK)
        self.assertEqual(talk.wait(), 0)

    def test_a_script_of_garbage(self):
        talk = self.begin(terminal=False)
        self.go_on(talk, TRUCK, "1L released")
        talk.kill()
        saved = self.file.read_bytes()
        for line in self.lines():
            result = subprocess.run([COMMAND, "walkround", self.file], input=line + b"\n", capture_output=True,
                                    check=False)
            self.assertEqual(result.returncode, 2, line[:60])
            self.assertEqual(self.file.read_bytes(), saved, line[:60])

    def test_garbage_from_the_start(self):
        """Random lines to random questions: whatever is taken, the record stays one."""
        chance = random.Random(99)
        words = ["yes", "-", "2", "s", "c", "1/16", "30", "20L", "95", "1 1/2", "4", "k", "back", "back 1L", "show",
                 "?", "note \u00e9", "", "x", "<", "0", "24 in", "n", "l"]
        for round_ in range(15):
            file = self.folder / f"{round_}.json"
            talk = self.begin(file=file, terminal=PERSON)
            talk.patient = True
            question = talk.prompt()
            for _ in range(120):
                if question is None:
                    break
                firm = look_up({"Have you read": "yes", "Level ground": "yes", "How many axles": "2"}, question)
                talk.send(firm if firm and chance.random() < 0.5 else chance.choice(words))
                question = talk.prompt()
            self.assertNotIn(talk.kill() if question is not None else talk.wait(), (-6, -11))
            record = self.record(file)
            self.assertTrue(is_valid(record))
            if record["wheel_ends"]:
                self.assertIn(report(file).returncode, (0, 1, 3))


if __name__ == "__main__":
    COMMAND = os.path.abspath(sys.argv[1])
    load = unittest.defaultTestLoader.loadTestsFromTestCase
    cases = [Whole, Lost, Disk, Records, Script, Garbage, Daily] + ([Words] if PERSON else [])
    if not PERSON:
        print("# no pseudo-terminal here: what only a person can do is not looked at")
    suite = unittest.TestSuite(load(case) for case in cases)
    print(f"1..{suite.countTestCases()}")
    sys.exit(not suite.run(Tap()).wasSuccessful())
