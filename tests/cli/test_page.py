# SPDX-License-Identifier: Apache-2.0
"""The page carries the command: what its module says, keeps and reports is what the command does, byte by byte.

python3 test_page.py PATH_TO_RODTRAVEL ROOT. The module is that of the page that the command writes; Node runs it."""
import csv
import json
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction
from pathlib import Path

import tap
from dialogue import has_terminals, on_terminal

COMMAND, ROOT = os.path.abspath(sys.argv[1]), Path(sys.argv[2]).resolve()
DATA, CASES = ROOT / "examples/data", ROOT / "tests/cases"
DAY = ["--as-of", "2026-11-20"]
NOW = "2026-11-20T06:40:00"
ANSWERS = [line for line in (DATA / "walkround.txt").read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
LANGUAGES = ["en", "fr", "es"]
SOME_COMMANDS = [
    ["--help"], ["--version"], [], ["nothing"], ["stroke", "--help"], ["report", "--help"], ["vehicle", "x.csv"],
    ["stroke", "30", "2 1/8", "4 1/4", "--psi", "95", "--why", *DAY], ["stroke", "30", "31/8", "41/8", *DAY], ["stroke", "30", "2/0", "4", *DAY],
    ["stroke", "24L", "50.8mm", "112.4mm", "--json", *DAY], ["air", "warning", "62", "--rules", "ca-on", "--speak"],
    ["air", "estimate", "--psi", "105", "--reservoirs", "5568", "--chambers", "20,20,30,30,30,30"],
    ["identify", "--stamp", "30", "--port", "square", "--diameter", "8 1/8", *DAY], ["limits", "--list"], ["limits", "--air", "--rules", "nz"],
    ["limits", "--rules", "us-fmcsr", "--html", "-", *DAY], ["cards", "--rules", "ca-on", "--vehicle", "single"], ["cards", "--html", "-"],
    ["practice", "--seed", "9", "--json"], ["practice", "--seed", "7", "--faults", "2", "--sheet", "-", *DAY],
    ["limits", "30", "--limits", "not there"],
]


def native(arguments, folder=None, given="", language="en"):
    done = subprocess.run([COMMAND, "--language", language, *map(str, arguments)], input=given, capture_output=True,
                          encoding="utf-8", check=False, cwd=folder, timeout=60, env={"PATH": os.environ["PATH"], "TZ": "UTC"})
    return {"status": done.returncode, "out": done.stdout, "err": done.stderr}


def options(row, names):
    """Of a row of cases: what stands under these headings, as options of these names."""
    return [part for column, name in names.items() if row[column] for part in ("--" + name, row[column])]


def mixed(number):
    """2 1/8, as the tape has it."""
    whole, rest = divmod(number, 1)
    return " ".join(str(part) for part in (whole, rest) if part) or "0"


def look_up(answers, question):
    """The answer to a question that the walk-round asks; "" = Enter, and what is unlikely is kept."""
    if question["asked"] != "question":
        return question["keep"]
    for place in (question["place"], question["id"]):
        if place in answers:
            return answers[place]
    return "skip" if question["default"] is None and question["skip"] else ""


class Module:
    """The module of the page in Node: requests in, replies out."""

    def __init__(self, page):
        self.node = subprocess.Popen(["node", Path(__file__).with_name("page_calls.js"), page, ROOT / "examples/web/module.js"],
                                     stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8")

    def send(self, request):
        self.node.stdin.write(json.dumps(request) + "\n")
        self.node.stdin.flush()
        return json.loads(self.node.stdout.readline())

    def call(self, action, **request):
        return self.send({"do": action, "now": NOW, **request})

    def close(self):
        self.node.stdin.close()
        self.node.stdout.close()
        self.node.wait(20)


class Page(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.room = tempfile.TemporaryDirectory()
        cls.folder = Path(cls.room.name)
        cls.page = cls.folder / "brakes.html"
        wrote = native(["page", "--html", cls.page])
        assert wrote["status"] == 0, wrote
        cls.module = Module(cls.page) if shutil.which("node") else None

    @classmethod
    def tearDownClass(cls):
        if cls.module is not None:
            cls.module.close()
        cls.room.cleanup()

    def setUp(self):
        self.answers, self.maxDiff = 0, 2000
        for file in self.folder.iterdir():
            if file != self.page:
                file.unlink()

    def call(self, action, **request):
        reply = self.module.call(action, **request)
        self.assertNotIn("error", reply, (request, reply))
        return reply

    def begin(self, *arguments, **request):
        return self.call("begin", name="w.json", arguments=list(arguments), **request)

    def answer(self, line):
        self.answers += 1
        reply = self.call("answer", line=line)
        self.assertLess(self.answers, 3000, (line, reply["question"] and reply["question"]["place"], reply["said"]))
        return reply

    def refused(self, reply):
        return [line["text"] for line in reply["said"] if line["kind"] == "refused"]

    def walk(self, lines, *arguments, **request):
        """Every reply of a walk-round."""
        replies = [self.begin(*arguments, **request)]
        for line in lines:
            self.assertFalse(replies[-1]["over"], line)
            replies.append(self.answer(line))
        return replies

    def native_walk(self, lines, *arguments, language="en"):
        """The record of the command's own walk-round, and how it ended."""
        record = self.folder / "w.json"
        (self.folder / "answers").write_text("\n".join(lines) + "\n", encoding="utf-8")
        done = native(["walkround", "w.json", *arguments, "--answers", "answers"], self.folder, language=language)
        return record.read_text(encoding="utf-8"), done


class WalkRound(Page):
    def test_record_is_that_of_the_command(self):
        for language in LANGUAGES:
            for more in ([], ["--rules", "ca-on"], ["--order", "axle", "--air-rules", "us-inuse"]):
                (self.folder / "w.json").unlink(missing_ok=True)
                with self.subTest(language=language, more=more):
                    lines = ANSWERS if not more else self.adaptive(more, language)
                    last = self.walk(lines, *DAY, *more, language=language)[-1]
                    record, done = self.native_walk(lines, *DAY, *more, language=language)
                    self.assertTrue(last["over"])
                    self.assertEqual((last["record"], last["status"]), (record, done["status"]), done)
                    self.same_words(last, done["out"])

    def adaptive(self, arguments, language="en"):
        """The lines that answer the questions of another rule set, in words of that language."""
        answers = {"cautions": "yes", "vehicle": "s", "axles": "2", "chocks": "yes", "spring_brake": "yes", "engine": "yes",
                   "time": "06:40", "1L chamber": "20", "1L stroke_class": "s", "1L adjuster": "m", "2L chamber": "30", "1L released": "1 1/2",
                   "1R released": "38 mm", "2L released": "2", "2R released": "2", "psi": "95", "application": "yes",
                   "1L applied": "3", "1R applied": "80 mm", "2L applied": "4 1/16", "parked": "yes"}
        reply, lines = self.begin(*DAY, *arguments, language=language), []
        while not reply["over"]:
            question = reply["question"]
            means = {word["means"]: word["word"] for word in question["words"]}
            line = look_up(answers, question)
            line = means.get(line, line)
            lines.append(line)
            self.assertLess(len(lines), 300)
            reply = self.answer(line)
            self.assertEqual(self.refused(reply), [], (question["prompt"], line))
        return lines

    def same_words(self, reply, out):
        """Every sentence of the reply is one of the command, wherever its lines fold; one is for people alone."""
        plain = "".join(out.split())
        for line in reply["said"]:
            if "--back 2L" not in line["text"]:
                self.assertIn("".join(line["text"].split()), plain)

    def test_reports_are_those_of_the_command(self):
        record = self.walk(ANSWERS, *DAY)[-1]["record"]
        (self.folder / "w.json").write_text(record, encoding="utf-8")
        for language in LANGUAGES:
            for kind, options in (("text", []), ("html", ["--html", "-"]), ("svg", ["--svg", "-"]), ("json", ["--json"])):
                with self.subTest(language=language, kind=kind):
                    reply = self.call("report", record=record, format=kind, name="w.json", language=language)
                    self.assertEqual(reply, native(["report", *options, "w.json"], self.folder, language=language))

    def test_vehicle_is_that_of_the_report(self):
        """A wheel end has a verdict as soon as both readings are there, and never before."""
        replies = self.walk(ANSWERS, *DAY)
        for reply in replies:
            for end in reply["vehicle"]["ends"]:
                self.assertEqual(end["verdict"] is not None, end["released"] is not None and end["applied"] is not None, end)
        judged = json.loads(self.call("report", record=replies[-1]["record"], format="json", language="en")["out"])
        ends = judged["stroke"]["wheel_ends"]
        self.assertEqual([(end["position"], end["verdict"]) for end in replies[-1]["vehicle"]["ends"]],
                         [(end["position"], end["verdict"]) for end in ends])
        self.assertIn("out-of-adjustment", [end["verdict"] for end in ends])
        self.assertEqual(replies[-1]["outcome"]["strokes"]["paint"], "bad")
        self.assertEqual(replies[-1]["progress"]["at"], replies[-1]["progress"]["of"])

    def test_taken_up_after_every_answer(self):
        """Kept records lose nothing: each is read as it was given out, and the walk-round goes on to the same end."""
        replies = self.walk(ANSWERS, *DAY)
        for reply in replies[:-1]:
            again = self.begin(record=reply["record"])
            self.assertFalse(again["over"], again["said"])
            self.assertEqual(again["record"], reply["record"])
        given, reply = {}, replies[0]
        for before, line in zip(replies, ANSWERS):
            reply = self.begin(record=reply["record"])
            while reply["question"]["place"] != before["question"]["place"]:
                reply = self.answer(given[reply["question"]["place"]])
                self.assertEqual(self.refused(reply), [])
            given[before["question"]["place"]] = line
            reply = self.answer(line)
        whole, again = json.loads(replies[-1]["record"]), json.loads(reply["record"])
        self.assertEqual((reply["over"], again["wheel_ends"], again["air_checks"]),
                         (True, whole["wheel_ends"], whole["air_checks"]))

    def test_words_are_answers(self):
        """Every word that a question offers is one: it is taken, or doubted, and never misunderstood."""
        for language in LANGUAGES:
            reply = self.begin(*DAY, "--rules", "us-fmcsr", language=language)
            for line in ANSWERS:
                question, record = reply["question"], reply["record"]
                for word in question["words"]:
                    tried = self.begin(record=record, language=language)
                    if tried["question"]["place"] != question["place"]:
                        continue
                    taken = self.answer(word["word"])
                    self.assertEqual(self.refused(taken), [], (language, question["prompt"], word))
                self.begin(record=record, language=language)
                reply = self.go_to(question["place"], line, language)
                if reply["over"]:
                    break

    def go_to(self, place, line, language):
        """The answer of a record that was taken up, behind what is asked once more."""
        reply = self.module.call("answer", line="help")
        for _ in range(9):
            question = reply["question"]
            if question["place"] == place:
                break
            means = {word["means"]: word["word"] for word in question["words"]}
            reply = self.answer(means.get("yes", means.get("released", means.get("off", "95" if question["kind"] == "pressure" else ""))))
        return self.answer(line)

    def test_questions_are_data(self):
        seen = {}
        for reply in self.walk(ANSWERS, *DAY)[:-1]:
            question = reply["question"]
            seen.setdefault(question["kind"], question)
            self.assertTrue(question["prompt"].replace("\xa0", " ").startswith(question["prompt"][:3]))
            self.assertTrue(question["help"] and question["title"], question)
            self.assertEqual(question["part"]["of"], 10)
        self.assertLessEqual({"words", "text", "axles", "length", "pressure", "chamber", "number", "plates", "built"}, set(seen))
        self.assertIn("clamp 30", seen["chamber"]["chambers"])
        self.assertEqual(seen["length"]["unit"], "in")
        self.assertEqual([part["label"] for part in seen["chamber"]["speak"][1:]], ["Do", "See", "Good", "Defective"])

    def test_what_is_said_has_its_kind(self):
        first, refused = self.begin(*DAY), self.answer("maybe")
        self.assertEqual([line["kind"] for line in first["said"]], ["text", "text", "heading"] + ["caution"] * 5)
        self.assertEqual(refused["said"][0], {"kind": "refused", "text": "one of these is expected: y, yes"})
        self.answer("yes")
        noted = self.answer("T-1")
        self.assertEqual(noted["said"][0], {"kind": "noted", "text": "T-1"})
        kinds = [line["kind"] for line in self.walk(ANSWERS, *DAY)[-1]["said"]]
        self.assertIn("bad", kinds)
        self.assertNotIn("refused", kinds)

    def test_doubted_answers(self):
        reply = self.begin(*DAY)
        while reply["question"]["place"] != "1L released":
            reply = self.answer(self.line_for(reply["question"]))
        reply = self.answer("9 1/2")
        self.assertEqual((reply["question"]["asked"], reply["question"]["doubted"]), ("keep", "9 1/2"))
        self.assertIn("warning", [line["kind"] for line in reply["said"]])
        self.assertEqual(reply["question"]["place"], "1L released")
        self.assertNotIn("9 1/2", reply["record"])
        self.assertIn("9 1/2", self.answer(reply["question"]["keep"])["record"])

    def test_clues(self):
        """Every word of a clue is one in each language; what they allow is what identify finds, and settles the answer."""
        for language in LANGUAGES:
            reply = self.begin(*DAY, "--rules", "us-fmcsr", language=language)
            while reply["question"]["place"] != "1L chamber":
                means = {word["means"]: word["word"] for word in reply["question"]["words"]}
                line = self.line_for(reply["question"])
                reply = self.answer({"yes": means.get("yes", means.get("released", means.get("off", line))),
                                     "s": means.get("single", line)}.get(line, line))
            question = reply["question"]
            self.assertEqual((question["identified"], question["settled"]), (None, None))
            clues = {clue["clue"]: clue for clue in question["clues"]}
            for clue in clues.values():
                for word in clue["words"]:
                    self.assertEqual(self.refused(self.answer(f"{question['clues_word']} {word['word']}")), [], word)
            seen = {word["means"]: word["word"] for clue in clues.values() for word in clue["words"]}
            line = f"{question['clues_word']} {seen['clamp']}; {seen['square']}; {clues['diameter']['before']} 8 1/8"
            found = self.answer(line)["question"]
            alone = native(["identify", "--family", "clamp", "--port", "square", "--diameter", "8 1/8", "--json", *DAY])
            self.assertEqual(found["identified"], json.loads(alone["out"]))
            self.assertEqual(found["settled"], "clamp 30 long")
            found = self.answer(f"{question['clues_word']} {clues['rated-stroke']['before']} 2 1/2")["question"]
            self.assertIsNone(found["settled"])
            self.assertNotEqual(found["identified"]["next_observation"], "nothing")
            self.assertEqual([(one["clue"], one["value"]) for one in found["seen"]], [("rated-stroke", "2 1/2")])
            self.assertEqual(self.answer("?")["question"]["identified"], found["identified"])
            self.assertEqual(self.answer("clues -")["question"]["seen"], [])

    def test_clues_of_a_page_that_was_gone(self):
        """They are in the record after each of them, in every language the same; the last one is taken back first."""
        reply = self.begin(*DAY, "--rules", "us-fmcsr")
        while reply["question"]["place"] != "1L chamber":
            reply = self.answer(self.line_for(reply["question"]))
        kept, seen = [], ""
        for one in ("family clamp", "stamp ?", "diameter 206 mm", "port-shape square"):
            seen += ("; " if seen else "") + one
            reply = self.answer("clues " + seen)
            kept.append((reply["record"], reply["question"]["seen"], reply["question"]["settled"]))
        for language in LANGUAGES:
            for record, before, settled in kept:
                self.assertIn("1L clues", record)
                reply = self.begin(record=record, language=language)
                while reply["question"]["place"] != "1L chamber":
                    words = {word["means"]: word["word"] for word in reply["question"]["words"]}
                    reply = self.answer(words.get("yes", words.get("released", words.get("off"))))
                after = reply["question"]["seen"]
                self.assertEqual([(one["clue"], one["value"]) for one in after],
                                 [(one["clue"], one["value"]) for one in before])
                self.assertEqual([one["says"] is None for one in after], [one["value"] == "?" for one in after])
                self.assertEqual(reply["question"]["settled"], settled)
        for record, before, _ in reversed(kept[:-1]):
            reply = self.answer("<")
            self.assertEqual([one["value"] for one in reply["question"]["seen"]], [one["value"] for one in before])
        reply = self.answer("<")
        self.assertEqual((reply["question"]["place"], reply["question"]["seen"]), ("1L chamber", []))
        self.assertNotEqual(self.answer("<")["question"]["place"], "1L chamber")

    def line_for(self, question):
        return look_up({"cautions": "yes", "vehicle": "s", "axles": "1", "chocks": "yes", "spring_brake": "yes", "engine": "yes",
                        "1L chamber": "20", "1L stroke_class": "s", "1L adjuster": "a"}, question)

    def test_clocks_are_the_page_s(self):
        """Nobody waits for a key: seconds are given."""
        for reply in self.walk(ANSWERS, *DAY)[:-1]:
            timed = reply["question"]["timed"]
            self.assertEqual(timed is not None, reply["question"]["kind"] == "seconds")
            self.assertNotIn("Enter", " ".join(line["text"] for line in reply["said"] if line["kind"] == "text"
                                                and "clock" in line["text"]))
        answers = {"cautions": "yes", "vehicle": "s", "axles": "1", "chocks": "yes", "air_ready": "yes", "drains_closed": "yes",
                   "before": "110", "after": "108", "pressure": "62", "answer": "yes"}
        reply, found = self.begin(*DAY, "--air-rules", "us-cdl"), set()
        while reply["question"]["part"]["id"] != "set-up":
            timed = reply["question"]["asked"] == "question" and reply["question"]["timed"]
            if timed:
                found.add((timed["counts_down"], timed["seconds"]))
                self.assertTrue(self.refused(self.answer("t 60")))
            reply = self.answer("38" if timed else look_up(answers, reply["question"]))
        self.assertEqual(found, {(True, "60"), (False, None)})

    def test_from_the_last_record(self):
        last = self.walk(ANSWERS, *DAY)[-1]["record"]
        (self.folder / "last.json").write_text(last, encoding="utf-8")
        reply = self.begin("--as-of", "2026-11-21", "--from", "last.json", files={"last.json": last})
        (self.folder / "answers").write_text("", encoding="utf-8")
        native(["walkround", "w.json", "--as-of", "2026-11-21", "--from", "last.json", "--answers", "answers"], self.folder)
        self.assertEqual(reply["record"], (self.folder / "w.json").read_text(encoding="utf-8"))
        self.assertEqual(len(reply["vehicle"]["ends"]), 4)

    def test_day_and_hour_are_given(self):
        reply = self.begin()
        self.assertIn('"date": "2026-11-20"', reply["record"])
        while reply["question"]["id"] != "time":
            reply = self.answer(look_up({"cautions": "yes"}, reply["question"]))
        self.assertEqual(reply["question"]["default"], {"effect": "take", "says": "06:40", "text": "06:40"})

    def test_what_cannot_begin(self):
        for arguments, record, said in ((["--rules", "nothing"], "", "no rule set"), (["--nothing"], "", "--nothing"),
                                        (["--answers", "a"], "", "cannot open a"), (["x"], "", "too many operands"),
                                        ([], "{}", ""), ([], "[", ""), ([], '{"record": "other"}', ""),
                                        (["--from", "none"], "", "cannot open none")):
            reply = self.begin(*arguments, record=record)
            self.assertEqual((reply["over"], reply["status"], reply["question"]), (True, 2, None), reply)
            self.assertTrue(self.refused(reply) and said in " ".join(self.refused(reply)), reply["said"])
            self.assertEqual(self.module.call("answer", line="yes"), {"error": "no-question"})


class Commands(Page):
    def test_commands_are_the_same(self):
        for language in LANGUAGES:
            for arguments in SOME_COMMANDS:
                with self.subTest(language=language, arguments=arguments):
                    reply = self.call("run", arguments=arguments, language=language)
                    own = native(arguments, self.folder, language=language)
                    if arguments in (["--help"], [], ["vehicle", "x.csv"]):
                        self.assertEqual(reply["status"], own["status"])
                    else:
                        self.assertEqual(reply, own)

    CASES = {
        "wheel_ends.csv": lambda row: ["stroke", *options(row, {"stroke_class": "class", "rated_stroke_in": "rated", "psi": "psi",
                                                                "as_of": "as-of", "ruleset": "rules"}),
                                       *([] if row["as_of"] else DAY), "--", row["chamber_text"], row["released"], row["applied"]],
        "limit_edges.csv": lambda row: ["stroke", *options(row, {"class": "class", "rated_stroke": "rated", "as_of": "as-of", "rules": "rules"}),
                                        *([] if row["as_of"] else DAY), "--", f"{row['family']} {row['size']}", "1/64", row["stroke"]],
        "chamber_marks.csv": lambda row: ["stroke", *DAY, "--", row["mark"], "2", "4"],
        "spellings.csv": lambda row: ["stroke", *DAY, "--", "30", row["text"], "4"],
        "air_edges.csv": lambda row: ["air", *options(row, {"rules": "rules", "vehicle": "vehicle", "towed": "towed", "built": "built",
                                                            "before": "before", "after": "after", "seconds": "seconds", "cut_out": "cut-out",
                                                            "span": "start", "applications": "applications"}),
                                      "--", row["check"], *filter(None, [row["pressure"] or row["answer"]])],
        "us-393-47.csv": lambda row: ["stroke", "--class", row["class"] if row["class"] in ("standard", "long") else "unknown",
                                       *options({"rated": row["rated_note"].split("-inch")[0]}, {"rated": "rated"}),
                                       "--as-of", row["from"], "--",
                                       f"{row['family']} {row['size']}", "1/64", row["limit_in"]],
        "us-571-121-table-v.csv": lambda row: ["air", "estimate", "--psi", "105", "--reservoirs", "5568", "--chambers", row["type"]],
        "damages.csv": lambda row: ["stroke", *DAY, "--", "30", row["text"], "4"],
    }
    REFUSED = ["damages.csv"]  # nearly every text of it

    @staticmethod
    def cases(name):
        with open(CASES / name, encoding="utf-8", newline="") as file:
            return list(csv.DictReader(text for text in file if not text.startswith("#")))

    def judged(self, ends):
        """What the report says of a record with these wheel ends; the module's bytes are the command's."""
        record = {"record": "brake-stroke-inspection", "version": 1, "date": "2026-11-20", "rules": "us-fmcsr", "brakes": len(ends),
                  "wheel_ends": [{"position": f"{1 + at // 2}{'LR'[at % 2]}", "psi": "95", **end} for at, end in enumerate(ends)]}
        given = json.dumps(record)
        reply = self.call("run", arguments=["report", "-", "--json"], input=given, language="en")
        self.assertEqual(reply, native(["report", "-", "--json"], given=given))
        return json.loads(reply["out"])["stroke"]

    @staticmethod
    def brake(over):
        """Of type 30, whose limit is 2 in, over that by so many inches."""
        return {"chamber": "30", "stroke_class": "standard", "released": "2", "applied": mixed(4 + Fraction(over))}

    def brakes(self, count, full, half):
        kinds = ["1/4"] * full + ["1/8"] * half
        return [self.brake(over) for over in kinds + ["-1/4"] * (count - len(kinds))]

    def test_vehicles(self):
        words = {"yes": "out-of-service", "no": "below-criterion", "ambiguous": "ambiguous"}
        for row in self.cases("vehicles.csv"):
            found = self.judged(self.brakes(*(int(row[name]) for name in ("brakes", "full_defects", "half_defects"))))
            self.assertEqual((found["outcome"], found["percent"]),
                             (words[row["expect_out_of_service"]], mixed(Fraction(row["expect_percent"]))), row)

    def halves(self, count, halves):
        return self.judged(self.brakes(count, int(halves) // 2, int(halves) % 2))

    def pair(self, left, right):
        found = self.judged([{**self.brake("-1/4"), **left}, {**self.brake("-1/4"), **right}])
        return [one["code"] for one in found["axles"][0]["mismatches"]]

    def test_edges_of_vehicles(self):
        """Each figure of a vehicle by itself: what is measured, and what the file says of it."""
        dead = {"applied": "2"}
        found = {
            "share": lambda of: self.halves(40, 80 * of)["outcome"],
            "full_from": lambda of: "full" if self.judged([self.brake(of)])["full_defects"] else "half",
            "half": lambda of: self.halves(10, 2 * of)["defective"],
            "chart": lambda of: str(self.halves(int(5 * of), 0)["whole_needed"]),
            "steering": lambda of: "yes" if "steering-dead" in self.pair(dead if of > 0 else {}, dead if of > 1 else {}) else "no",
            "axle_size": lambda of: "unlike" if "size-differs" in self.pair({}, {"chamber": str(30 - of)}) else "alike",
            "axle_arm": lambda of: "unlike" if "arm-differs" in self.pair({"arm_length": "5 1/2"}, {"arm_length": mixed(of + Fraction(11, 2))})
            else "alike"}
        for row in self.cases("vehicle_edges.csv"):
            self.assertEqual(found[row["part"]](Fraction(row["measured"])), row["expect"], row)

    def test_published_figures(self):
        """The limit and the volume that the document has, typed from it, not from a table of the library."""
        for row in self.cases("us-393-47.csv"):
            line = ["stroke", "--json", *self.CASES["us-393-47.csv"](row)[1:]]
            self.assertEqual(json.loads(self.call("run", arguments=line)["out"])["limit"], row["limit_in"], row)
        for row in self.cases("us-571-121-table-v.csv"):
            line = [*self.CASES["us-571-121-table-v.csv"](row), "--json"]
            self.assertEqual(json.loads(self.call("run", arguments=line)["out"])["chambers"], row["volume"], row)

    def test_cases_are_judged_alike(self):
        """Each row of the cases as one command: the same bytes, whether it is judged or refused."""
        for name, line in self.CASES.items():
            rows = self.cases(name)
            lines = [line(row) for row in rows]
            lines = [[words[0], "--json", *words[1:]] for words in lines if "\0" not in "".join(words)]
            with ThreadPoolExecutor(2) as threads:
                natives = list(threads.map(native, lines))
            judged = sum(one["status"] != 2 for one in natives)
            self.assertGreater(len(rows) - judged if name in self.REFUSED else judged, len(rows) // 4, name)
            for words, own in zip(lines, natives):
                self.assertEqual(self.call("run", arguments=words, language="en"), own, words)

    def test_files_are_given(self):
        limits = "family,size,class,limit\nclamp,30,standard,1 3/4\n"
        (self.folder / "own.csv").write_text(limits, encoding="utf-8")
        arguments = ["stroke", "30", "2", "4", "--limits", "own.csv", *DAY]
        self.assertEqual(self.call("run", arguments=arguments, files={"own.csv": limits}, language="en"), native(arguments, self.folder))
        given = (DATA / "inspection.json").read_text(encoding="utf-8")
        self.assertEqual(self.call("run", arguments=["report", "-", "--json"], input=given, language="en"),
                         native(["report", "-", "--json"], given=given))

    def test_files_come_back(self):
        """What a command writes is in the reply, as on the disk."""
        for language in LANGUAGES:
            for words in (["--checks"], []):
                line = ["practice", *words, "--seed", "7", "--sheet", "s.html", "--key", "k.txt"]
                reply = self.call("run", arguments=line, language=language)
                self.assertEqual(native(line, self.folder, language=language), {name: reply[name] for name in ("status", "out", "err")})
                self.assertEqual(reply["files"], {name: (self.folder / name).read_text(encoding="utf-8") for name in ("s.html", "k.txt")})
        self.assertNotIn("files", self.call("run", arguments=["practice", "--seed", "7", "--sheet", "-"], files={"given": "x"}))

    def test_checks_are_those_of_the_interview(self):
        """The answers that the lesson calls right are right at the terminal, in each language."""
        for language in LANGUAGES:
            for rules in ("us-cdl", "ca-on"):
                lesson = self.call("checks", arguments=[rules, "9"], language=language)
                asked = [question for story in lesson["stories"] for question in story["questions"]]
                given = "".join(next(one["says"] for one in question["choices"] if one["word"] == question["right"]) + "\n" for question in asked)
                done = native(["practice", "--checks", "--rules", rules, "--seed", "9"], given=given, language=language)
                self.assertEqual(done["status"], 0, done["out"][-600:])
                plain = "".join(done["out"].split())
                for story in lesson["stories"]:
                    for text in (story["title"], story["text"], story["why"], story["action"], *(one["prompt"] for one in story["questions"])):
                        self.assertIn("".join(text.split()), plain)

    def test_about(self):
        about = self.call("about", language="fr")
        ids = re.findall(r"^  ([a-z-]+) ", native(["limits", "--list"])["out"], re.M)
        self.assertLessEqual(set(ids) - {"rule"}, {rules["id"] for rules in about["rules"]})
        self.assertEqual(about["version"], native(["--version"])["out"].split()[1])


class Requests(Page):
    WRONG = [
        ("", "no-json"), ("{", "no-json"), ("[]", "no-json"), ("{}", "no-action"), ('{"do":"begin"}', "no-time"),
        ('{"do":"x","now":"2026-11-20T06:40"}', "unknown-action"), ('{"do":1}', "bad-member"), ('{"x":"y"}', "bad-member"),
        ('{"do":"answer","now":"2026-11-20T06:40"}', "no-question"), ('{"do":"begin","now":"today"}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","arguments":["a",1]}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","arguments":{}}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","files":{"":"x"}}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","line":"a\\u0000b"}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","line":"\\ud800"}', "bad-member"),
        ('{"do":"begin","now":"2026-11-20T06:40","name":""}', "bad-name"), ('{"do":"begin","now":"2026-11-20T06:40","name":"-"}', "bad-name"),
        ('{"do":"begin","now":"2026-11-20T06:40","language":"english"}', "bad-language"),
        ('{"do":"about","now":"2026-11-20T06:40","language":"de"}', "bad-language"),
        ('{"do":"checks","now":"2026-11-20T06:40"}', "bad-seed"), ('{"do":"checks","now":"2026-11-20T06:40","arguments":["us-cdl","-1"]}', "bad-seed"),
        ('{"do":"checks","now":"2026-11-20T06:40","arguments":["nowhere","1"]}', "bad-rules"),
        ('{"do":"report","now":"2026-11-20T06:40","format":"x"}', "bad-format"), ('{"do":"report","now":"2026-11-20T06:40"}', "no-record"),
        ('{"do":"run","now":"2026-11-20T06:40","arguments":[' + ",".join(['"x"'] * 65) + "]}", "bad-member"),
        ('{"do":"run","now":"2026-11-20T06:40"} x', "no-json"),
    ]

    def raw(self, text, fresh=False):
        return self.module.send({"raw": text.encode().decode("latin-1"), "fresh": fresh})

    def test_wrong_requests(self):
        for text, error in self.WRONG:
            self.assertEqual(json.loads(self.raw(text, fresh=True)["raw"]), {"error": error}, text)

    def test_damaged_requests(self):
        """No request ends the module, and its memory does not grow with their number."""
        chance = random.Random(7)
        record = (DATA / "inspection.json").read_text(encoding="utf-8")
        good = [json.dumps({"do": "begin", "now": NOW, "record": record, "arguments": DAY[:0]}),
                json.dumps({"do": "report", "now": NOW, "record": record, "format": "html", "language": "fr"}),
                json.dumps({"do": "run", "now": NOW, "arguments": ["stroke", "30", "2 1/8", "4 1/4", "--why"]}),
                *(json.dumps({"do": "answer", "now": NOW, "line": line}) for line in
                  ("yes", "", "<", "again 1L", "note x", "-", "=", "?", "k", "x" * 500, "2 1/8", "q"))]
        memory = []
        for number in range(600):
            text = list(chance.choice(good))
            for _ in range(chance.choice([0, 0, 1, 3])):
                at = chance.randrange(len(text))
                text[at:at + chance.choice([0, 1, 1, 9])] = chance.choice(["", "\\", '"', "{", "]", "\0", "\xff", "9", "\\u00"])
            reply = self.raw("".join(text))
            self.assertNotIn("trap", reply, (number, "".join(text)))
            json.loads(reply["raw"])
            memory.append(reply["memory"])
        self.assertEqual(max(memory), max(memory[:300]))
        for _ in range(2):
            reply = json.loads(self.raw(json.dumps({"do": "begin", "now": NOW, "arguments": ["--rules", "ca-on"]}))["raw"])
            self.assertEqual(reply["question"]["id"], "cautions")

    def test_what_is_too_long(self):
        reply = self.module.call("run", arguments=["x" * (9 << 20)])
        self.assertEqual(reply, {"error": "too-long"})
        reply = self.module.call("report", record="x" * (2 << 20), format="text")
        self.assertEqual(reply["status"], 2)


class File(Page):
    def test_asks_for_nothing(self):
        text = self.page.read_text(encoding="utf-8")
        head, body = text.split("</head>", 1)
        body = body.split("</html>")[0]
        self.assertIn("default-src 'none'", head)
        self.assertNotRegex(text, r'(?:src|href)="(?!data:|#)')
        self.assertNotRegex(body, r"\b(?:fetch|XMLHttpRequest|WebSocket|importScripts)\(")

    def test_has_the_notices(self):
        notices = Path("/usr/share/doc/wasi-libc/copyright")
        if not notices.exists():
            self.skipTest("the C library of WASI has no notices here")
        self.assertIn(notices.read_text(encoding="utf-8").splitlines()[-1], self.page.read_text(encoding="utf-8"))

    def test_speaks_the_language_of_the_command(self):
        for language, tag in (("en", "en"), ("fr", "fr-CA"), ("es", "es-US")):
            text = native(["page"], language=language)["out"]
            self.assertIn(f'<html lang="{tag}">', text[:200])
            self.assertEqual(text.replace(tag, "en", 1), native(["page"])["out"])

    def test_service_worker(self):
        """Beside the page, by its name; the page itself is otherwise the same."""
        made = native(["page", "--html", "p.html", "--service-worker", "w.js", "--language", "es"], self.folder)
        self.assertEqual(made, {"status": 0, "out": "", "err": ""})
        text, worker = ((self.folder / name).read_text(encoding="utf-8") for name in ("p.html", "w.js"))
        self.assertEqual(text.replace(' data-worker="w.js"', "", 1), native(["page"], language="es")["out"])
        self.assertRegex(worker, r'^const PAGE = "p.html", EDITION = "[0-9a-f]{16} es-US";\n')
        self.assertIn((ROOT / "examples/web/worker.js").read_text(encoding="utf-8"), worker)
        for line in (["--service-worker", "w2.js"], ["--html", "-", "--service-worker", "w2.js"], ["--html", "q.html", "--service-worker", "-"],
                     ["--html", "q.html", "--service-worker", "sub/w2.js"], ["--html", "q.html", "--service-worker", 'w"2.js'],
                     ["--html", "é.html", "--service-worker", "w2.js"], ["--html", "q.html", "--service-worker", "q.html"]):
            made = native(["page", *line], self.folder)
            self.assertEqual((made["status"], made["out"]), (2, ""), line)
        self.assertEqual({file.name for file in self.folder.iterdir()}, {"brakes.html", "p.html", "w.js"})

    @unittest.skipUnless(has_terminals(), "no pseudo-terminal here")
    def test_no_page_on_a_screen(self):
        status, shown = on_terminal([COMMAND, "page"], dict(os.environ, TERM="dumb"))
        self.assertEqual((status, shown), (2, ""))


class WithoutPage(unittest.TestCase):
    def test_says_so(self):
        wrote = native(["page"])
        self.assertEqual((wrote["status"], wrote["out"]), (2, ""))
        self.assertIn("was built without the page", " ".join(wrote["err"].split()))


if __name__ == "__main__":
    built = native(["page"])["status"] == 0
    if built:
        del WithoutPage
    if not built or shutil.which("node") is None:
        print("# the page is not run:", "no Node here" if built else "this command was built without it")
        for name in ("Page", "WalkRound", "Commands", "Requests", *(["File"] if not built else [])):
            del globals()[name]
    tap.main()
