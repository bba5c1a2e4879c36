# SPDX-License-Identifier: Apache-2.0
"""What is said aloud and printed for it: python3 test_cards.py PATH_TO_RODTRAVEL EXAMPLE_INSPECTION

inspection.txt is a whole spoken inspection; the test prints it, and `--rewrite` as the third argument makes it anew."""
import re
import subprocess
import sys
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree
from html.parser import HTMLParser
from pathlib import Path

import tap

HERE = Path(__file__).resolve().parent
DIALOGUE = HERE / "inspection.txt"
ANSWERS = HERE.parent.parent / "examples/data/walkround.txt"
ALL_SETS = ["us-fmcsr", "us-periodic", "ca-on", "us-inuse", "us-newvehicle", "us-oos", "us-cdl", "us-cdl-skills", "us-ca",
            "us-nv", "us-sc", "us-tx", "ca-ab", "ca-bc", "ca-nb", "ca-nl", "ca-qc", "ca-sk", "au", "nz"]
STROKES = ["us-fmcsr", "us-periodic", "ca-on"]


def run(*arguments):
    return subprocess.run([COMMAND, *map(str, arguments)], capture_output=True, text=True, encoding="utf-8", timeout=60,
                          check=False)


class Page(HTMLParser):
    """Tags that are open at the end, classes of elements, and the text."""
    VOID = {"meta", "br", "link", "input", "img", "hr"}

    def __init__(self, text):
        super().__init__()
        self.open, self.classes, self.words, self.wrong = [], [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.classes += (dict(attrs).get("class") or "").split()
        if tag not in self.VOID:
            self.open.append(tag)
        self.wrong += [name for name, _ in attrs if name in ("src", "href", "onclick")]

    def handle_startendtag(self, tag, attrs):
        self.classes += (dict(attrs).get("class") or "").split()

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.wrong.append(tag)

    def handle_data(self, data):
        self.words.append(data)

    def text(self):
        return " ".join(" ".join(self.words).replace("\xa0", " ").split())


class Case(unittest.TestCase):
    def said(self, *arguments, status=0):
        result = run(*arguments)
        self.assertEqual((result.returncode, result.stderr), (status, ""), result.stdout)
        self.assertLessEqual(max(map(len, result.stdout.splitlines())), 80)
        return " ".join(result.stdout.split())

    def page(self, *arguments):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder, "page")
            result = run(*arguments, path)
            self.assertEqual((result.returncode, result.stdout, result.stderr), (0, "", ""))
            return path.read_text("utf-8")

    def refused(self, *arguments):
        result = run(*arguments)
        self.assertEqual((result.returncode, result.stdout), (2, ""), result.stdout)
        return result.stderr


class Cards(Case):
    def test_every_rule_set(self):
        for rules in ALL_SETS:
            text = self.said("cards", "--rules", rules)
            self.assertIn("Securing the vehicle", text)
            self.assertIn("The verdict, and what to do", text)
            self.assertEqual("Stroke and limit" in text, rules in STROKES, rules)
            self.assertNotRegex(text, r"[{}]|  \(|\(\)", rules)

    def test_a_step_has_four_sentences(self):
        result = run("cards", "--rules", "ca-on", "--vehicle", "single")
        for card in result.stdout.split("\n\n")[1:-1]:
            labels = re.findall(r"^(Do|See|Good|Defective) +\S", card, re.M)
            self.assertEqual(labels, ["Do", "See", "Good", "Defective"], card)

    def test_the_figures_are_those_of_the_rule_set(self):
        self.assertIn("too late (below 55 psi), or did not come on at all. That is a major defect.",
                      self.said("cards", "--rules", "ca-on"))
        self.assertIn("too late (below 60 psi), or did not come on at all. See", self.said("cards", "--rules", "us-cdl").replace(
            "Source", "See"))

    def test_the_vehicle_decides(self):
        every = self.said("cards", "--rules", "ca-on")
        self.assertIn("combination with 2 or more towed units: major defect above 6 psi per minute", every)
        single = self.said("cards", "--rules", "ca-on", "--vehicle", "single")
        self.assertNotIn("Tractor protection", single)
        self.assertIn("fell too fast (above 3 psi per minute). That is a major defect.", single)
        train = self.said("cards", "--rules", "ca-on", "--towed", "3")
        self.assertIn("Tractor protection", train)
        self.assertIn("fell too fast (above 6 psi per minute). That is a major defect.", train)

    def test_a_single_vehicle_hears_nothing_of_trailers(self):
        for rules in ALL_SETS:
            single = self.said("cards", "--rules", rules, "--vehicle", "single")
            self.assertNotRegex(single, "trailer supply|trailer lines", rules)
        for arguments in (("--towed", "1"), ()):
            self.assertIn("trailer supply valve closed, 600 to 900 rpm", self.said("cards", "--rules", "ca-on", *arguments))

    def test_tractor_protection_is_heard_at_the_service_line(self):
        """The rule of Ontario looks for air there, and so do what is said and what is practised."""
        card = self.said("cards", "--rules", "ca-on", "--towed", "1").split("Tractor protection Do")[1].split("Source")[0]
        see, defective = card.split("See")[1].split("Good")[0], card.split("Defective")[1]
        self.assertIn("service line", see)
        self.assertIn("service line", defective)
        key = self.said("practice", "--checks", "--rules", "ca-on", "--vehicle", "combination", "--seed", "3", "--key", "-")
        self.assertIn("air comes out of the service line", key.split("Tractor protection: ")[1].split("Answer")[0])

    def test_no_card_of_a_loss_without_a_figure(self):
        """A loss that is too much, by no figure, teaches nothing; with one the card is there."""
        self.assertNotIn("Air loss, brakes released", self.said("cards", "--rules", "ca-on"))
        self.assertIn("Air loss, brakes released", self.said("cards", "--rules", "us-cdl"))

    def test_usage(self):
        self.assertIn("only a combination has towed units", self.refused("cards", "--vehicle", "bus", "--towed", "1"))
        self.assertIn("--towed is a whole number", self.refused("cards", "--towed", "1/2"))
        self.refused("cards", "--rules", "atlantis")
        self.refused("cards", "--built", "soon")
        self.refused("cards", "card")

    def test_the_page(self):
        text = self.page("cards", "--rules", "ca-on", "--html")
        page = Page(text)
        self.assertEqual((page.open, page.wrong), ([], []))
        self.assertEqual(page.classes.count("card"), 20)
        self.assertEqual(page.classes.count("sheet"), 5)
        self.assertEqual(page.classes.count("cut"), 45)
        self.assertIn("the warning comes on while there is still air to stop with: on at 380 kPa (55 psi) or above.",
                      page.text())
        self.assertIn("(from memory, unconfirmed)", page.text())
        self.assertIn("&nbsp;psi", text)  # no figure is torn from its unit


class Limits(Case):
    def drawing(self, *arguments):
        root = ElementTree.fromstring(self.page("limits", *arguments, "--svg"))
        return [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]

    def test_the_page_for_the_cab(self):
        texts = self.drawing("--as-of", "2026-11-01")
        for wanted in ("30", "1 3/4 in", "44.4 mm", "2 1/2 in", "63.5 mm", "square ports", "trapezoid tag", "L or LS in the mark",
                       "bolt C: 1 3/4 in, 44.4 mm"):
            self.assertIn(wanted, texts)
        self.assertEqual(texts.count("2 1/2 in"), 4)  # 30 long, 36, and 20 and 24 marked 3 in
        self.assertFalse([text for text in texts if "*" in text])
        self.assertEqual(self.drawing("--as-of", "2020-11-01").count("2 1/4 in"), 1)  # type 36 before its change

    def test_unconfirmed(self):
        texts = self.drawing("--rules", "ca-on")
        self.assertIn("1 3/4 in *", texts)
        self.assertIn("1 3/4 in +", texts)  # common practice is no source that was left unread
        self.assertIn("* unconfirmed: not read in its source, and not law. + common practice, no source: not law.", texts)
        self.assertFalse([text for text in self.drawing() if re.search(r"[*+]", text)])

    def test_a_carrier(self):
        with tempfile.TemporaryDirectory() as folder:
            own = Path(folder, "own.csv")
            own.write_text("family,size,class,limit\nclamp,30,standard,1 7/8\n", "utf-8")
            self.assertIn("1 7/8 in", self.drawing("--limits", str(own)))

    def test_sources_in_force(self):
        """Clamp 36 had another limit by another text until 13 October 2021."""
        for day, superseded in (("2021-10-13", True), ("2021-10-14", False)):
            text = Page(self.page("limits", "--as-of", day, "--html")).text()
            self.assertIn("86 FR 57076", text)
            self.assertEqual("77 FR 46638" in text, superseded, day)

    def test_html(self):
        page = Page(self.page("limits", "--html"))
        self.assertEqual((page.open, page.wrong), ([], []))
        self.assertIn("A stroke exactly at the limit passes.", page.text())
        self.assertIn("rotochamber 50: 3 in, 76.2 mm", page.text())

    def test_the_page_is_text(self):
        """A telephone makes a drawing small, and nobody reads its sources."""
        text = self.page("limits", "--rules", "ca-on", "--html")
        drawn = " ".join(re.findall(r"<svg.*?</svg>", text, re.S))
        page = Page(re.sub(r"<svg.*?</svg>", "", text, flags=re.S)).text()
        for wanted in ("R.R.O. 1990, Reg. 587", "* unconfirmed:", "+ common practice", "do not judge them by this page",
                       "2 1/2 in * 63.5 mm", "Millimetres are rounded down."):
            self.assertIn(wanted, page)
            self.assertNotIn(wanted, drawn)

    def test_usage(self):
        self.assertIn("us-cdl has air checks only", self.refused("limits", "--rules", "us-cdl", "--html", "-"))
        self.assertIn("go with", self.refused("limits", "30", "--html", "-"))
        self.assertIn("go with", self.refused("limits", "--air", "--svg", "-"))


class Spoken(Case):
    def test_a_check(self):
        text = self.said("air", "warning", "62", "--rules", "ca-on", "--speak")
        self.assertIn("Say The low-pressure warning came on at 62 psi; that is good. Below 55 psi it would be a major defect.",
                      text)
        self.assertIn("Do I bring the air pressure down until the low air warning comes on", text)
        text = self.said("air", "loss-applied", "--before", "110", "--after", "105", "--towed", "1", "--rules", "ca-on",
                         "--speak", status=1)
        self.assertIn("that is a major defect, and nobody drives the vehicle until it is repaired. Required: not more than "
                      "4 psi per minute.", text)

    def test_a_stroke(self):
        self.assertIn("Say Released 2 1/8, applied 3 7/8: the stroke is 1 3/4. The limit is 2; that is good. Above 2 it would "
                      "be defective.", self.said("stroke", "30", "2 1/8", "3 7/8", "--class", "standard", "--psi", "95",
                                                 "--speak"))

    def test_a_walk_round(self):
        with tempfile.TemporaryDirectory() as folder:
            text = self.said("walkround", Path(folder, "r.json"), "--speak", "--answers", ANSWERS, status=1)
        self.assertEqual(text.count("See I see the rod all the way back"), 1)  # once, before the first of the readings
        self.assertIn("Say The low-pressure warning came on at 62 psi; that is good. Below 60 psi it would be defective.", text)
        self.assertIn("Say Released 2 1/16, applied 4 1/8: the stroke is 2 1/16. The limit is 2; that is over by 1/16, so the "
                      "brake is out of adjustment. That is defective, and I report it and do not drive.", text)

    def test_help_at_a_question(self):
        with tempfile.TemporaryDirectory() as folder:
            answers = Path(folder, "answers")
            answers.write_text(ANSWERS.read_text("utf-8").replace("# Chocks\n", "help\n"), "utf-8")
            text = self.said("walkround", Path(folder, "r.json"), "--answers", answers, status=1)
        self.assertEqual(text.count("Do I park on firm, level ground"), 1)
        self.assertNotIn("Say ", text)

    def test_a_whole_inspection(self):
        said = subprocess.run([EXAMPLE], capture_output=True, text=True, encoding="utf-8", timeout=60, check=True).stdout
        if "--rewrite" in sys.argv:
            DIALOGUE.write_text(said, "utf-8")
        tap.Tap.tell(said)
        self.assertEqual(said, DIALOGUE.read_text("utf-8"))
        self.assertLessEqual(max(map(len, said.splitlines())), 100)


class Checks(Case):
    """Practice of the checks in the cab."""

    def key(self, *options):
        result = run("practice", "--checks", "--key", "-", *options)
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        self.assertLessEqual(max(map(len, result.stdout.splitlines())), 80)
        return " ".join(result.stdout.split())

    def answers(self, *options):
        """What the key says, as it would be typed."""
        typed = []
        for title, result, rank, action in re.findall(r"\d+\. ([A-Z][^:]+): .*? Answer (\w+)(?:, (\w+))?; (go on|write|stop)",
                                                      self.key(*options)):
            typed += [result, *([rank] if rank and title != "Securing the vehicle" else []),
                      {"write": "report"}.get(action, action)]
        return typed

    def asked(self, typed, *options):
        return subprocess.run([COMMAND, "practice", "--checks", *options], input="".join(line + "\n" for line in typed),
                              capture_output=True, text=True, encoding="utf-8", timeout=60, check=False)

    def test_the_key_is_right_in_every_rule_set(self):
        for rules in ALL_SETS:
            for seed, level in ((1, "basic"), (2, "mixed"), (3, "hard")):
                options = ["--rules", rules, "--seed", str(seed), "--level", level]
                result = self.asked(self.answers(*options), *options)
                self.assertEqual((result.returncode, result.stderr), (0, ""), result.stdout)
                self.assertNotIn("wrong", result.stdout)

    def test_every_seed_is_made_again(self):
        options = ["--rules", "ca-on", "--seed", "7", "--count", "3"]
        self.assertEqual(self.key(*options), self.key(*options))
        self.assertNotEqual(self.key("--rules", "ca-on", "--seed", "7"), self.key("--rules", "ca-on", "--seed", "8"))

    def test_good_and_defective_are_both_asked(self):
        typed = [word for seed in range(6) for word in self.answers("--rules", "ca-on", "--seed", str(seed))]
        for word in ("good", "defective", "minor", "major", "report", "stop", "go on"):
            self.assertIn(word, typed)

    def test_a_wrong_answer_says_why(self):
        options = ["--rules", "ca-on", "--seed", "7"]
        typed = self.answers(*options)
        other = {"good": "defective", "defective": "good"}[typed[0]]
        result = self.asked([other, *typed[1:]], *options)
        self.assertEqual(result.returncode, 1)
        self.assertIn(f"wrong: {typed[0]}", result.stdout)
        self.assertIn("Why", result.stdout)
        self.assertEqual(self.asked([], *options).returncode, 3)
        self.assertEqual(self.asked(["x" * 200 + " good", *typed], *options).returncode, 0)  # a long line is one answer

    def test_sheets(self):
        sheet = self.page("practice", "--checks", "--rules", "ca-on", "--seed", "7", "--sheet")
        self.assertNotIn("Why", sheet)
        for page in (sheet, self.page("practice", "--checks", "--rules", "ca-on", "--seed", "7", "--key")):
            self.assertNotIn("<svg", page)
        with tempfile.TemporaryDirectory() as folder:
            paper, key = Path(folder, "sheet.html"), Path(folder, "key.html")
            run("practice", "--checks", "--rules", "ca-qc", "--seed", "7", "--count", "2", "--sheet", paper, "--key", key)
            page, answers = Page(paper.read_text("utf-8")), Page(key.read_text("utf-8"))
        self.assertEqual((page.open, page.wrong, answers.open, answers.wrong), ([], [], [], []))
        self.assertGreater(page.classes.count("gauge"), 4)
        self.assertNotIn("that is good", page.text())
        self.assertIn("that is good", answers.text())

    def test_usage(self):
        for option in (("--json",), ("--metric",), ("--answers", "f"), ("--describe",)):
            self.assertIn("--checks does not go with", self.refused("practice", "--checks", *option))


if __name__ == "__main__":
    COMMAND, EXAMPLE = sys.argv[1], sys.argv[2]
    sys.exit(tap.main())
