# SPDX-License-Identifier: Apache-2.0
"""One fact reads the same in text, JSON, HTML, SVG, CSV and Python, in every language: python3 test_one_fact.py RODTRAVEL
[long]

Vehicles at random, their readings in fractions, decimals, millimetres and centimetres, go through every command that shows
them. Stroke, limit and margin must be one exact fraction everywhere, verdict, reasons, counts, outcome and days the same
words, and each sentence the one of the catalogue."""
import csv
import html
import io
import json
import random
import re
import subprocess
import sys
import tempfile
import unittest
from fractions import Fraction
from pathlib import Path

import tap

try:
    import rodtravel
except ImportError:
    rodtravel = None

DAY = "2024-05-06"
SEEDS = 40 if "long" in sys.argv else 6
LANGUAGES = ("en", "fr", "es")
POOLS = {
    "chamber": ["30", "30L", "24 LS", "20", "bolt C", "roto 30", "dd3", "3030", "36", "16L", "18"],
    "stroke_class": ["", "", "standard", "long"], "rated_stroke": ["", "", "", "3", "2 1/2", "76 mm"],
    "psi": ["95", "95", "95", "85", "105", "655 kPa", ""], "psi_after": ["", "", "92", "60"],
    "division": ["", "", "1/16", "1 mm"], "engine": ["", "", "", "off", "on"], "spring_brake": ["", "", "", "released", "on"],
    "drum": ["", "cold", "hot"], "adjuster": ["", "automatic", "manual"], "arm_length": ["", "6", "5 1/2"]}
PAIRS = [("2", "4"), ("2", "4 1/16"), ("2 1/8", "4 1/4"), ("2", "3 1/2"), ("2", "2"), ("2", "4.0001"), ("1.9999", "4"),
         ("50.8 mm", "101.6 mm"), ("50.8 mm", "101.601 mm"), ("51 mm", "95 mm"), ("5.1 cm", "9 cm"), ("3", "2"),
         ("2 3/8", "4 1/128"), ("2.123456789", "3.987654321"), ("31/8", "5 1/4"), ("1", "1 1/4"), ("2", ""), ("1", "3.5")]
VERDICTS = {"in-adjustment": ("in adjustment", "at the limit", "hardly moved"), "out-of-adjustment": ("out of adjustment",),
            "inoperative": ("inoperative",), "undetermined": ("undetermined",)}


def run(*arguments, data=""):
    return subprocess.run([COMMAND, *arguments], input=data, capture_output=True, text=True, encoding="utf-8", timeout=60,
                          check=False)


def flat(text):
    """One line; what the page and the screen write as signs of their own is plain again. The command writes a decimal point
    in every language, as it reads one."""
    plain = html.unescape(re.sub(r"<[^>]*>", " ", text)).replace("\u00a0", " ").replace("\u202f", " ")
    return re.sub(r"(?<=\d),(?=\d)", ".", " ".join(plain.split()))


def exact(text):
    """The inches of "2 1/8", "-1/16", "2.0001", "50.80 mm"; None where nothing is shown."""
    found = re.search(r"(-?)(\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)( mm)?", text or "")
    if found is None:
        return None
    value = sum(map(Fraction, found[2].split()))
    return (-value if found[1] else value) * (Fraction(5, 127) if found[3] else 1)


class Vehicle:
    """Ten wheel ends at random."""

    def __init__(self, seed):
        draw = random.Random(seed)
        self.ends = []
        for axle in range(1, 6):
            for side in "LR":
                released, applied = draw.choice(PAIRS)
                end = {"position": f"{axle}{side}", "released": released, "applied": applied}
                end.update({name: draw.choice(pool) for name, pool in POOLS.items()})
                self.ends.append(end)

    def table(self, extra=()):
        text = io.StringIO()
        writer = csv.DictWriter(text, [*self.ends[0], *dict(extra)], lineterminator="\n")
        writer.writeheader()
        writer.writerows({**end, **dict(extra)} for end in self.ends)
        return text.getvalue()

    def record(self):
        return json.dumps({"record": "brake-stroke-inspection", "version": 1, "date": DAY, "rules": "us-fmcsr",
                           "wheel_ends": [{name: text for name, text in end.items() if text} for end in self.ends]})

    def facts(self):
        """Of every wheel end, as `batch` writes it: stroke, limit, margin, verdict, reasons."""
        rows = csv.DictReader(io.StringIO(run("batch", "--as-of", DAY, "-", data=self.table()).stdout))
        return [(*(exact(row[name]) for name in ("applied_stroke", "limit", "margin")), row["verdict"], row["reasons"].split())
                for row in rows]


def of_json(end):
    return (*(exact(end[name]) for name in ("applied_stroke", "limit", "margin")), end["verdict"], end["reasons"])


class OneFact(unittest.TestCase):
    """Every output against the rows of `batch`."""

    @classmethod
    def setUpClass(cls):
        cls.vehicles = [Vehicle(seed) for seed in range(SEEDS)]
        cls.facts = [vehicle.facts() for vehicle in cls.vehicles]
        met = {code for facts in cls.facts for fact in facts for code in fact[4]} | {f[3] for facts in cls.facts for f in facts}
        assert len(met) > 20, met

    def each(self):
        return zip(self.vehicles, self.facts)

    def test_lines_of_json(self):
        for vehicle, facts in self.each():
            lines = "".join(json.dumps(end) + "\n" for end in vehicle.ends)
            said = run("batch", "--as-of", DAY, "--format", "ndjson", "-", data=lines).stdout.splitlines()
            self.assertEqual([of_json(json.loads(line)) for line in said], facts)

    def test_vehicle_and_record(self):
        """Their JSON is one; the counts are those of `batch --by`."""
        for vehicle, facts in self.each():
            judged = json.loads(run("vehicle", "--as-of", DAY, "--json", "-", data=vehicle.table()).stdout)
            self.assertEqual([of_json(end) for end in judged["wheel_ends"]], facts)
            self.assertEqual({end["as_of"] for end in judged["wheel_ends"]}, {DAY})
            line = next(csv.DictReader(io.StringIO(run("batch", "--as-of", DAY, "--by", "house", "-",
                                                       data=vehicle.table({"house": "A"})).stdout)))
            for name in ("brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined", "defective", "percent",
                         "whole_needed"):
                self.assertEqual(str(judged[name]), line[name], name)
            self.assertEqual(judged["outcome"], line["verdict"])
            for verdict, name in (("in-adjustment", "in_adjustment"), ("undetermined", "undetermined")):
                self.assertEqual(judged[name], sum(fact[3] == verdict for fact in facts))
            self.assertEqual(json.loads(run("report", "--json", "-", data=vehicle.record()).stdout)["stroke"], judged)

    def test_one_wheel_end(self):
        """`stroke`: its JSON, and every sentence of it on the screen."""
        options = {"stroke_class": "class", "rated_stroke": "rated", "psi": "psi", "psi_after": "psi-after",
                   "division": "division", "engine": "engine", "spring_brake": "spring-brake", "drum": "drum"}
        for vehicle, facts in self.each():
            for end, fact in zip(vehicle.ends, facts):
                words = [end["chamber"], end["released"], end["applied"], "--as-of", DAY]
                words += [word for name, option in options.items() if end[name] for word in (f"--{option}", end[name])]
                done = run("stroke", *words, "--json")
                if not end["applied"]:
                    self.assertEqual(done.returncode, 2)
                    continue
                judged = json.loads(done.stdout)
                self.assertEqual(of_json(judged), fact)
                shown = flat(run("stroke", *words, "--why").stdout)
                for sentence in (*judged["sentences"], judged["proof_sentence"] or ""):
                    self.assertIn(flat(sentence), shown)
                self.assertIn(f"{judged['rules']} on {DAY}: ", shown)
                for language in LANGUAGES[1:]:
                    self.assertEqual(run("stroke", *words, "--json", "--language", language).stdout, done.stdout)
                self.one_line(words, fact)

    def one_line(self, words, fact):
        """The short line: "OUT OF ADJUSTMENT 2 1/16 of 2 in, clamp 30 standard"."""
        shown = run("stroke", *words, "--short").stdout
        self.assertTrue(any(word in shown.lower() for word in VERDICTS[fact[3]]), shown)
        found = re.search(r"(\d[\d./ ]*(?:mm)?) of (\d[\d./ ]*(?:mm)?)", shown)
        if found and fact[0] is not None and fact[1] is not None:
            self.assertEqual((exact(found[1]), exact(found[2])), fact[:2], shown)

    def margin(self, text, fact):
        """ "over by 1/8", "1/8 to spare", "at the limit", "did not move", "hardly moved"; of another language the figure alone."""
        if exact(text) is not None:
            self.assertEqual(exact(text), abs(fact[2]), text)
        elif fact[2] is not None:
            self.assertTrue(fact[2] == 0 or fact[0] == 0 or "hardly-moved" in fact[4], text)

    def words_of_verdicts(self, pairs):
        """Each word of a language stands for one verdict."""
        meant = {}
        for word, verdict in pairs:
            self.assertEqual(meant.setdefault(word, verdict), verdict, word)

    def test_pages(self):
        """HTML and SVG of a record, in every language."""
        with tempfile.TemporaryDirectory() as folder:
            for vehicle, facts in self.each():
                judged = json.loads(run("report", "--json", "-", data=vehicle.record()).stdout)["stroke"]
                for language in LANGUAGES:
                    page, drawing = Path(folder, "page.html"), Path(folder, "page.svg")
                    run("report", "-", "--html", str(page), "--svg", str(drawing), "--language", language,
                        data=vehicle.record())
                    text = run("report", "-", "--language", language, data=vehicle.record()).stdout
                    self.page(page.read_text(encoding="utf-8"), facts, vehicle)
                    self.drawing(drawing.read_text(encoding="utf-8"), facts)
                    if language == "en":
                        for shown in (flat(text), flat(page.read_text(encoding="utf-8"))):
                            self.assertIn(flat(judged["sentence"]), shown)
                            self.assertIn(DAY, shown)

    def page(self, page, facts, vehicle):
        table = page[page.index('<table class="ends">'):]
        rows = [[flat(cell) for cell in re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", row)]
                for row in re.findall(r"<tr class=.*?</tr>", table[:table.index("</table>")], re.DOTALL)]
        self.assertEqual([row[0] for row in rows], [end["position"] for end in vehicle.ends])
        for row, fact in zip(rows, facts):
            self.assertEqual((exact(row[1]), exact(row[2])), fact[:2], row)
            self.margin(row[4], fact)
        self.words_of_verdicts((row[3], fact[3]) for row, fact in zip(rows, facts))

    def drawing(self, drawing, facts):
        texts = re.findall(r"<text[^>]*>(.*?)</text>", drawing)
        named = [(place, flat(text).split(" ", 1)) for place, text in enumerate(texts) if 'class="name"' in text]
        self.assertEqual(len(named), len(facts))
        for (place, words), fact in zip(named, facts):
            self.margin(words[1] if len(words) > 1 and fact[3] != "undetermined" else "", fact if len(words) > 1 and
                        fact[3] != "undetermined" else (0, 0, None))
            stroke = re.search(r'class="large">(.*?)</tspan>([^<]*)', texts[place + 1]) if place + 1 < len(texts) else None
            if stroke is not None:
                self.assertEqual(exact(flat(stroke[1])), fact[0])
                self.assertTrue(exact(flat(stroke[2])) in (fact[1], None))

    def test_screens(self):
        """The table of a vehicle on the screen: the figures of the page, in the order of the brakes."""
        for vehicle, facts in self.each():
            shown = run("vehicle", "--as-of", DAY, "-", data=vehicle.table()).stdout
            page = flat(shown)
            judged = json.loads(run("vehicle", "--as-of", DAY, "--json", "-", data=vehicle.table()).stdout)
            self.assertIn(flat(judged["sentence"]), page)
            for end, fact in zip(vehicle.ends, facts):
                line = next(line for line in shown.splitlines() if line.startswith(end["position"] + " "))
                cells = re.split(r"  +", line[2:].strip())
                if len(cells) >= 5:
                    self.assertEqual((exact(cells[1]), exact(cells[2])), fact[:2], line)
                    self.margin(cells[3], fact)
                    self.assertTrue(any(word in cells[4] for word in VERDICTS[fact[3]]), line)

    @unittest.skipIf(rodtravel is None, "the Python package is not built")
    def test_python(self):
        catalogues = {language: rodtravel.catalogue(language) for language in LANGUAGES[1:]}
        for vehicle, facts in self.each():
            ends, table = [], {name: [end[name] for end in vehicle.ends] for name in vehicle.ends[0]}
            fields = [name for name in vehicle.ends[0] if name not in ("position", "adjuster", "arm_length")]
            answers = rodtravel.judge_columns({name: table[name] for name in fields}, default_date=DAY)
            for end, fact, answer in zip(vehicle.ends, facts, answers):
                finding, _ = rodtravel.judge_row(**{name: end[name] or None for name in fields}, default_date=DAY)
                self.assertEqual((finding.applied_stroke, finding.limit, finding.margin, str(finding.verdict),
                                  [str(reason) for reason in finding.reasons]), fact)
                self.assertEqual((str(answer.verdict), [str(reason) for reason in answer.reasons]), fact[3:])
                told = json.loads(finding.json)
                self.assertEqual((of_json(told), tuple(told["sentences"]), str(finding.day)), (fact, finding.sentences, DAY))
                ends.append(rodtravel.WheelEnd(end["position"], finding, adjuster=end["adjuster"] or "not-recorded",
                                               arm_length=end["arm_length"] or None))
                if end["applied"]:
                    self.screens_of(end, finding, catalogues)
            whole = rodtravel.judge_vehicle(ends)
            judged = json.loads(run("vehicle", "--as-of", DAY, "--json", "-", data=vehicle.table()).stdout)
            self.assertEqual(json.loads(whole.json), judged)
            self.assertEqual((str(whole.count.outcome), whole.count.share * 100, whole.count.worst_share * 100),
                             (judged["outcome"], exact(judged["percent"]), exact(judged["percent_at_worst"])))

    def screens_of(self, end, finding, catalogues):
        """Each reason's sentence in the languages, as the catalogue of the library says it."""
        words = [end["chamber"], end["released"], end["applied"], "--as-of", DAY, "--why"]
        for name, option in (("stroke_class", "class"), ("rated_stroke", "rated"), ("psi", "psi"), ("psi_after", "psi-after"),
                             ("engine", "engine"), ("spring_brake", "spring-brake"), ("drum", "drum"), ("division", "division")):
            if end[name]:
                words += [f"--{option}", end[name]]
        for language, catalogue in catalogues.items():
            shown = flat(run("stroke", *words, "--language", language).stdout)
            for sentence in catalogue.reasons(finding):
                self.assertIn(flat(sentence), shown, language)

    def test_air_checks(self):
        """A check by itself, in a record, on the page, and in Python."""
        checks = [({"check": "warning", "pressure": text}, [text]) for text in ("62", "60", "59.99", "413 kPa", "100")]
        checks += [({"check": "loss-applied", "before": "100", "after": text}, ["--before", "100", "--after", text])
                   for text in ("97", "96.98", "99", "101")]
        checks += [({"check": "build-up", "before": "85", "after": "100", "seconds": text},
                    ["--from", "85", "--to", "100", "--seconds", text]) for text in ("45", "45.04", "0:38")]
        checks += [({"check": "cut-out", "pressure": "125"}, ["125"]), ({"check": "spring-brake", "answer": "no"}, ["moves"])]
        end = {"chamber": "30", "released": "2", "applied": "3", "psi": "95"}
        record = json.dumps({"record": "brake-stroke-inspection", "version": 1, "date": DAY, "rules": "us-fmcsr",
                             "air_rules": "us-cdl", "vehicle": "single", "air_checks": [check for check, _ in checks],
                             "wheel_ends": [{"position": position, **end} for position in ("1L", "1R")]})
        whole = json.loads(run("report", "--json", "-", data=record).stdout)["air_checks"]
        page = {language: flat(run("report", "-", "--html", "-", "--language", language, data=record).stdout)
                for language in LANGUAGES}
        for number, (check, words) in enumerate(checks):
            words = ["air", check["check"], *words, "--rules", "us-cdl", "--vehicle", "single"]
            judged = json.loads(run(*words, "--json").stdout)
            self.assertEqual(whole[number], judged)
            self.assertIn(flat(judged["sentence"]), page["en"])
            shown = flat(run(*words).stdout)
            self.assertIn(flat(judged["sentence"]), shown)
            if rodtravel is not None:
                given = {**check, "answer": False} if "answer" in check else dict(check)
                finding = rodtravel.judge_air(given.pop("check"), **given, vehicle="single", rules="us-cdl")
                self.assertEqual(json.loads(finding.json), judged)
                self.assertEqual((str(finding.result), finding.measured), (judged["result"], exact(judged["measured"])))
                for language in LANGUAGES[1:]:
                    sentence = flat(rodtravel.catalogue(language).say(finding))
                    self.assertIn(sentence, flat(run(*words, "--language", language).stdout))
                    self.assertTrue(page is None or sentence in page[language], sentence)


if __name__ == "__main__":
    COMMAND = sys.argv[1]
    tap.main()
