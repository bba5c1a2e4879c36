# SPDX-License-Identifier: Apache-2.0
"""What `rodtravel report` makes of a record: python3 test_report.py PATH_TO_RODTRAVEL

The schema is used with an independent validator where one is installed (jsonschema); elsewhere a small one of our own
walks the same schema, as far as the schema goes."""
import html
import html.parser
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest
import unicodedata
import xml.etree.ElementTree as ElementTree
from pathlib import Path

from tap import Tap

try:
    import jsonschema
except ImportError:
    jsonschema = None

DATA = Path(__file__).resolve().parent.parent.parent / "examples" / "data"
EXAMPLE = DATA / "inspection.json"
SCHEMA = json.loads((DATA / "inspection.schema.json").read_text(encoding="utf-8"))


def run(*arguments, data=None, cwd=None):
    if data is not None and not isinstance(data, (str, bytes)):
        data = json.dumps(data)
    data = data.encode() if isinstance(data, str) else data
    result = subprocess.run([COMMAND, "report", *map(str, arguments)], input=data, capture_output=True, timeout=60,
                            check=False, cwd=cwd)
    result.stdout, result.stderr = result.stdout.decode(), result.stderr.decode()
    return result


def example(**changes):
    record = json.loads(EXAMPLE.read_text(encoding="utf-8"))
    record.update(changes)
    return record


def small(**changes):
    """One axle, both brakes in adjustment: type 30, 1 3/4 of 2 in (49 CFR 393.47(e)(1))."""
    end = {"chamber": "clamp 30", "stroke_class": "standard", "released": "2", "applied": "3 3/4", "psi": "95"}
    return {"record": "brake-stroke-inspection", "version": 1, "date": "2026-11-20", "rules": "us-fmcsr",
            "wheel_ends": [{"position": "1L", **end}, {"position": "1R", **end}], **changes}


def with_end(**changes):
    record = small()
    record["wheel_ends"][1].update(changes)
    return record


def own_validator(value, schema):
    """The part of JSON Schema that the schema uses."""
    if "$ref" in schema:
        schema = {**SCHEMA["$defs"][schema["$ref"].rsplit("/", 1)[1]], **schema}
    kinds = {"object": dict, "array": list, "string": str, "integer": int}
    if "type" in schema and (not isinstance(value, kinds[schema["type"]]) or isinstance(value, bool)):
        return False
    if value != schema.get("const", value) or value not in schema.get("enum", [value]):
        return False
    if isinstance(value, str):
        return re.search(schema.get("pattern", ""), value) is not None
    if isinstance(value, int):
        return schema.get("minimum", value) <= value <= schema.get("maximum", value)
    if isinstance(value, list):
        return len(value) <= schema["maxItems"] and all(own_validator(item, schema["items"]) for item in value)
    known = schema["properties"]
    return (all(name in value for name in schema["required"]) and set(value) <= set(known)
            and all(own_validator(item, known[name]) for name, item in value.items()))


def is_valid(record):
    mine = own_validator(record, SCHEMA)
    if jsonschema is not None:
        jsonschema.Draft202012Validator.check_schema(SCHEMA)
        theirs = jsonschema.Draft202012Validator(SCHEMA).is_valid(record)
        assert mine == theirs, record
    return mine


class Record(unittest.TestCase):
    # What is broken, and what the message must name. The second value says whether the form alone is broken (then the
    # schema refuses it too) or only the meaning of a text.
    BROKEN = {
        "no record": (small(record="shopping list"), True, ["record: "]),
        "no version": ({k: v for k, v in small().items() if k != "version"}, True, ["version: "]),
        "no date": ({k: v for k, v in small().items() if k != "date"}, True, ["date: is missing"]),
        "date": (small(date="20.11.2026"), True, ["date"]),
        "no such day": (small(date="2026-02-30"), False, ["date"]),
        "no rules": (small(rules=" "), True, ["rules: is empty"]),
        "rules": (small(rules="us-mars"), False, ["rules: there is no rule set \"us-mars\""]),
        "unknown entry": (small(colour="red"), True, ["colour: there is no such entry"]),
        "an entry under two names": (with_end(psi="95", PSI="60"), True, ["entry 2 (1R), psi: is there twice"]),
        "number for text": (with_end(applied=3.75), True, ["wheel_ends, entry 2 (1R), applied", "text in quotes"]),
        "null": (with_end(applied=None), True, ["wheel_ends, entry 2 (1R), applied"]),
        "empty": (with_end(psi=""), True, ["wheel_ends, entry 2 (1R), psi: is empty"]),
        "typo in a key": (with_end(aplied="4"), True, ["wheel_ends, entry 2 (1R), aplied"]),
        "no position": (small(wheel_ends=[{"chamber": "30"}]), True, ["wheel_ends, entry 1, position: is missing"]),
        "position twice": (with_end(position="1L"), False, ["entry 2 (1L)", "twice"]),
        "position": (with_end(position="left"), False, ["wheel_ends, entry 2 (left), position", "^"]),
        "date cell": (with_end(applied="3-Apr"), False, ["entry 2 (1R), applied", "3-Apr", "^"]),
        "behind a gap": (small(wheel_ends=[{"position": "1L", "applied": "3-Apr"}]), False, ["entry 1 (1L), applied", "^"]),
        "steps": (small(version=2, steps=[{"step": "chocks"}]), True, ["steps, entry 1 (chocks), answer: is missing"]),
        "no steps": (small(version=2, steps={}), True, ["steps: a list"]),
        "step": (small(version=2, steps=["chocks"]), True, ["steps, entry 1, entry: an object"]),
        "words": (with_end(applied="about three"), False, ["entry 2 (1R), applied", "^"]),
        "lost point": (with_end(applied="375"), False, ["entry 2 (1R), applied"]),
        "pressure": (with_end(psi="95 lbs"), False, ["entry 2 (1R), psi"]),
        "class": (with_end(stroke_class="huge"), False, ["entry 2 (1R), stroke_class"]),
        "arm": (with_end(arm_length="six"), False, ["entry 2 (1R), arm_length"]),
        "adjuster": (with_end(adjuster="robot"), True, ["entry 2 (1R), adjuster is automatic or manual"]),
        "drum": (with_end(drum="boiling"), True, ["entry 2 (1R), drum"]),
        "too few brakes": (small(brakes=1), False, ["brakes is 1"]),
        "brakes as text": (small(brakes="10"), True, ["brakes: a whole number"]),
        "no brakes": (small(brakes=0), True, ["brakes: a whole number"]),
        "ends": (small(wheel_ends={}), True, ["wheel_ends: a list"]),
        "end": (small(wheel_ends=["1L"]), True, ["wheel_ends, entry 1, entry: an object"]),
        "check": (small(air_checks=[{"check": "smell"}]), True, ["air_checks, entry 1 (smell)"]),
        "check pressure": (small(air_checks=[{"check": "warning", "pressure": "sixty"}]), False,
                           ["air_checks, entry 1 (warning), pressure", "^"]),
        "answer": (small(air_checks=[{"check": "drain", "answer": "free"}]), True,
                   ["air_checks, entry 1 (drain), answer is yes or no"]),
        "seconds": (small(air_checks=[{"check": "build-up", "seconds": "long"}]), False,
                    ["air_checks, entry 1 (build-up), seconds"]),
        "volume": (small(air_checks=[{"check": "build-up", "reservoir_volume": "2848 l"}]), False,
                   ["air_checks, entry 1 (build-up), reservoir_volume", "^"]),
        "towed bus": (small(vehicle="bus", towed_units=1), False, ["towed_units"]),
        "built": (small(built="last year"), True, ["built"]),
    }

    def refused(self, data, *says):
        result = run("-", data=data)
        self.assertEqual((result.returncode, result.stdout), (2, ""), result.stderr)
        said = " ".join(result.stderr.replace("rodtravel: ", " ").split())
        for words in says:
            self.assertIn(words, said)

    def test_good_records_are_valid(self):
        for record in (example(), small(), small(air_checks=[{"check": "warning", "pressure": "62"}])):
            self.assertTrue(is_valid(record))
            self.assertIn(run("-", data=record).returncode, (0, 1, 3))

    def test_broken_records_are_refused_with_the_place(self):
        for name, (record, by_form, says) in self.BROKEN.items():
            with self.subTest(name):
                self.assertEqual(is_valid(record), not by_form)
                self.refused(record, *says)

    def test_no_json(self):
        self.refused('{"record": "brake-stroke-inspection",\n "version": 1,,}', "standard input:2:15: this is no JSON")
        self.refused("", "standard input:1:1: this is no JSON")
        self.refused('{"record": "brake-stroke-inspection", "é": "\n"}', "standard input:1:45: this is no JSON")
        self.refused("[]", "one object")
        self.refused(b'{"record": "\xff"}', "this is no JSON")
        self.refused('{"record": "brake-stroke-inspection", "record": "x"}', "record: is there twice")
        self.refused(" " * (1 << 20), "too long")
        for entry in ('"place": "\\ud83d"', '"place": "a\\u0000b"'):
            self.refused('{"record": "brake-stroke-inspection", "version": 1, %s}' % entry, "place: holds half a character")
        for entry in ('"pla\\ud83d": "a"', '"wheel_ends\\u0000": []'):
            self.refused('{"record": "brake-stroke-inspection", "version": 1, %s}' % entry, "there is no such entry")

    def test_a_later_version_is_refused_politely(self):
        """Before anything else: what a later version holds is not looked at."""
        self.refused({"record": "brake-stroke-inspection", "version": 4, "surprise": []}, "of version 4",
                     "a newer rodtravel reads it")

    def test_every_key_is_in_schema_and_program(self):
        record = example(length_unit="in", program="by hand", repair="M. Example, 2026-11-21")
        record["wheel_ends"][0].update(rated_stroke="2 1/2", marked_limit="2", psi_after="80", engine="off",
                                       spring_brake="released", drum="cold", remark="-")
        record["air_checks"] = [{"check": name} for name in
                                SCHEMA["$defs"]["air_check"]["properties"]["check"]["enum"]]
        record["air_checks"][0].update(pressure="62", before="110", after="100", seconds="2:05", span="warning",
                                       applications=2, cut_out="125", reservoir_volume="2848", required_volume="2000",
                                       answer="yes", remark="-")
        record.update(steps=[{"step": "chocks", "answer": "yes"}])
        self.assertTrue(is_valid(record))
        self.assertEqual(set(record["units"][0]), set(SCHEMA["$defs"]["unit"]["properties"]))
        self.assertEqual(set(record["steps"][0]), set(SCHEMA["$defs"]["step"]["properties"]))
        self.assertEqual(set(record), set(SCHEMA["properties"]))
        self.assertEqual(set(record["wheel_ends"][0]), set(SCHEMA["$defs"]["wheel_end"]["properties"]))
        self.assertEqual(set(record["air_checks"][0]), set(SCHEMA["$defs"]["air_check"]["properties"]))
        result = run("-", "--record", "-", data=record)
        self.assertEqual(result.stderr, "")
        self.assertEqual(json.loads(result.stdout), record)

    def test_version_is_the_oldest_that_serves(self):
        """Older programs read what has nothing new in it."""
        steps = {"steps": [{"step": "chocks", "answer": "yes"}]}
        for entries, version in (({}, 1), (steps, 2), ({"carrier": "x"}, 3), ({"time": "06:40"}, 3),
                                 ({"repair": "x"}, 3), ({"units": [{"kind": "truck"}]}, 3)):
            record = json.loads(run("-", "--record", "-", data=small(**entries)).stdout)
            self.assertEqual(record["version"], version, entries)

    def test_units(self):
        """Their axles are those of the wheel ends; a record that says otherwise is refused."""
        for units, says in (([{"kind": "boat"}], "kind is truck"), ([{"kind": "truck", "axles": 1}, {"kind": "trailer"}],
                                                                  "for all of them"),
                            ([{"axles": 1}], "kind: is missing"), ([{"kind": "truck"}] * 13, "more units")):
            self.refused(small(units=units), says)
        record = example()
        record["units"][0]["axles"] = 2
        self.refused(record, "they have 4 axles, but there is a wheel end of axle 5")
        told = run("-", data=example()).stdout
        for words in ("tractor AB 1234, 3 axles", "trailer R 27, 2 axles", "Example Haulage", "06:40"):
            self.assertIn(words, told)
            self.assertIn(words, run("-", "--html", "-", data=example()).stdout)
        self.assertEqual(json.loads(run("-", "--json", data=example()).stdout)["head"]["units"],
                         example()["units"])

    def test_read_write_read(self):
        """The example is in the published order already; a shuffled one is after one pass."""
        text = EXAMPLE.read_text(encoding="utf-8")
        self.assertEqual(run("-", "--record", "-", data=text).stdout, text)
        mixed = dict(reversed(example(remarks='½ "quoted" \\ \u202e \u00e9 \U0001f600 </script>').items()))
        once = run("-", "--record", "-", data=mixed).stdout
        self.assertEqual(run("-", "--record", "-", data=once).stdout, once)
        self.assertEqual(json.loads(once), mixed)


class Report(unittest.TestCase):
    def test_status(self):
        self.assertEqual(run("-", data=small()).returncode, 0)
        self.assertEqual(run("-", data=with_end(applied="4 1/8")).returncode, 1)
        self.assertEqual(run("-", data=small(brakes=4)).returncode, 3)
        loss = {"check": "loss-released", "before": "110"}
        for after, status in (("109", 0), ("100", 1)):
            record = small(air_checks=[{**loss, "after": after}], air_rules="us-cdl", vehicle="single")
            said = run("-", data=record)
            self.assertEqual(said.returncode, status, after)
            for text in (said.stdout, run("-", "--html", "-", data=record).stdout):
                self.assertEqual([words in text for words in ("AIR SYSTEM DEFECTIVE", "Do not drive it")],
                                 [status == 1] * 2, "good strokes alone do not let it go")
        self.assertEqual(run("-", data=small(air_checks=[loss], air_rules="us-cdl")).returncode, 3)

    def test_ranks(self):
        """Ontario ranks defects: a minor one is reported and driven, a major one is first and decides the headline."""
        leak, slow = {"check": "audible-leak", "answer": "yes"}, {"check": "build-up", "before": "85", "after": "100",
                                                                  "seconds": "150"}
        late = {"check": "warning", "pressure": "40"}
        for checks, headline, action in (
                ([leak], "AIR SYSTEM: A MINOR DEFECT", "Minor defect: write it in the report and tell the carrier."),
                ([leak, slow], "AIR SYSTEM: A MINOR DEFECT", "With a slow build-up the handbook says not to drive."),
                ([leak, late], "AIR SYSTEM: A MAJOR DEFECT, DO NOT DRIVE", "Do not drive it: report it")):
            record = small(air_checks=checks, air_rules="ca-on", vehicle="single")
            text, page = run("-", data=record).stdout, run("-", "--html", "-", data=record).stdout
            for said in (" ".join(text.split()), page):
                for words in (headline, action, "By the strokes: ALL BRAKES IN ADJUSTMENT", "air, minor defect"):
                    self.assertIn(words, said)
                self.assertEqual("Do not drive it: report it" in said, late in checks)
            self.assertEqual(re.findall("<strong>([A-Z ,:]+)</strong>", page), [headline])  # no second headline
            self.assertNotIn("<dt>Unit</dt>", page)  # beside "Unit 1" it is not told which it is
            if late in checks:
                self.assertLess(text.index("air, major defect:"), text.index("air, minor defect:"))

    def test_a_warning_that_never_came(self):
        """A record says it in the words of `air` and of a form."""
        for check in ({"check": "warning", "pressure": "never"}, {"check": "build-up", "seconds": "did not"}):
            record = small(air_checks=[check], air_rules="us-cdl", vehicle="single")
            said = run("-", "--json", data=record)
            self.assertEqual((said.returncode, json.loads(said.stdout)["air_checks"][0]["result"]), (1, "defective"))

    def test_own_air_figures(self):
        """1 1/2 psi in a minute is good by the law of us-cdl (less than 2 psi), and too much for the carrier."""
        loss = {"check": "loss-released", "before": "110", "after": "108.5", "seconds": "60"}
        record = small(air_checks=[loss, {"check": "warning", "pressure": "62"}], air_rules="us-cdl", vehicle="single")
        law = "Commercial Driver Manual, section 5"
        with tempfile.TemporaryDirectory() as folder:
            own = Path(folder) / "own.csv"
            own.write_text("check,vehicle,comparison,value,measure,source\n"
                           "loss-released,single,not-more-than,1,psi-per-minute,Shop bulletin 7\n", encoding="utf-8")
            for options, status in (((), 0), (("--limits", own), 1)):
                pages = [run("-", *options, *form, data=record) for form in ((), ("--html", "-"), ("--json",))]
                self.assertEqual([page.returncode for page in pages], [status] * 3)
                text, shown = (html.unescape(re.sub(r"\s+", " ", re.sub("<[^>]*>", "", page.stdout)))
                              for page in pages[:2])
                for said in (text, shown):
                    self.assertEqual(["1 psi per minute: defective (the carrier's own figure; by the law: good)" in said,
                                      "AIR SYSTEM DEFECTIVE" in said], [status == 1] * 2)
                    self.assertEqual("own figure, pressure loss, brakes released: Shop bulletin 7" in
                                     said.replace(" :", ":"), status == 1)
                    self.assertIn(f"pressure loss, brakes released: {law}", said.replace(" :", ":"))
                told, other = json.loads(pages[2].stdout)["air_checks"]
                self.assertEqual((told["result"], told["law_result"], told["rules"], told["law_published"]),
                                 ("defective" if status else "good", "good", "us-cdl", "less than 2 psi in one minute"))
                self.assertIn(law, told["law_source"])
                if status:
                    self.assertEqual((told["allowed"], told["source"]), ("1", "Shop bulletin 7"))
                    self.assertTrue(told["own_limits"].endswith("own.csv"), told["own_limits"])
                else:
                    self.assertIsNone(told["own_limits"])
                self.assertEqual((other["result"], other["rules"]), ("good", "us-cdl"))
                self.assertEqual(other["source"], other["law_source"], "the carrier has no figure for it")

    def test_text_fits_80_columns(self):
        long = "a remark of many words that goes on " * 12 + "\u4e2d\u6587" * 3
        record = example(unit=long, remarks=long)
        record["wheel_ends"][0]["remark"] = long
        for line in run("-", data=record).stdout.splitlines():
            width = sum(2 if unicodedata.east_asian_width(sign) in "WF" else 1 for sign in line)
            self.assertLessEqual(width, 80, line)

    def test_text_says_it_all(self):
        said = " ".join(run(EXAMPLE).stdout.split())
        for words in ("T-114 with trailer R-27", "DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION",
                      "3L: 2 1/8 to 4 1/4 is 2 1/8; limit 2; over by 1/8", "the rod did not move",
                      "AIR SYSTEM DEFECTIVE: SEE THE DEFECTS", "Air checks", "Signed", "393.47(e)(1)", "Chock the wheels"):
            self.assertIn(words, said)

    def test_both_sources_of_a_carriers_limit_are_said(self):
        with tempfile.TemporaryDirectory() as folder:
            own = Path(folder) / "own.csv"
            own.write_text("family,size,class,limit,source\nclamp,30,standard,1 1/2,Shop rule 7\n", encoding="utf-8")
            options = str(EXAMPLE), "--limits", str(own)
            self.assertIn("own limits: Shop rule 7", run(*options).stdout)
            ends = json.loads(run(*options, "--json").stdout)["stroke"]["wheel_ends"]
            of_shop = [end for end in ends if end["source"] == "Shop rule 7"]
            self.assertTrue(of_shop and all("393.47" in end["law_source"] for end in of_shop))

    def test_json(self):
        said = json.loads(run(EXAMPLE, "--json").stdout)
        self.assertEqual(said["head"]["unit"], "T-114 with trailer R-27")
        self.assertEqual([end["verdict"] for end in said["stroke"]["wheel_ends"] if end["position"] in ("3L", "4R")],
                         ["out-of-adjustment", "inoperative"])
        self.assertEqual(said["air_checks"][2]["result"], "defective")


class Elements(html.parser.HTMLParser):
    """Tags and texts of a page; every tag must be closed in its turn."""
    EMPTY = {"meta", "br", "path", "rect"}

    def __init__(self, text):
        super().__init__()
        self.open, self.seen, self.texts = [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.seen.append((tag, dict(attrs)))
        if tag not in self.EMPTY:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.seen.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag, tag

    def handle_data(self, data):
        self.texts.append(data)


class Page(unittest.TestCase):
    EVIL = "<script>alert(1)</script> \" ' & </style> </title> <!-- --> \u202e\u2066\u2069\u202a\u0007"

    def test_page_is_whole_and_needs_nothing(self):
        text = run(EXAMPLE, "--html", "-").stdout
        page = Elements(text)
        self.assertEqual(page.open, [])
        tags = {tag for tag, _ in page.seen}
        self.assertFalse(tags & {"script", "link", "img", "iframe", "object", "base", "form"})
        self.assertFalse(re.search(r"(https?:)?//|url\((?!#)|@import", text.replace("http://www.w3.org/2000/svg", "")))
        self.assertIn(("html", {"lang": "en"}), page.seen)
        words = " ".join(page.texts)
        for said in ("T-114 with trailer R-27", "OVER by 1/8", "DID NOT MOVE", "Signature", "Air checks",
                     "Defects", "393.47(e)(1)", "unconfirmed", "Chock the wheels"):
            self.assertIn(said, words)
        ids = [attributes["id"] for _, attributes in page.seen if "id" in attributes]
        self.assertEqual(len(ids), len(set(ids)))

    def test_every_wheel_end_is_drawn(self):
        root = ElementTree.fromstring(run(EXAMPLE, "--svg", "-").stdout)
        names = [node.text for node in root.iter("{http://www.w3.org/2000/svg}tspan") if node.get("class") == "name"]
        self.assertEqual(names, [f"{axle}{side}" for axle in range(1, 6) for side in "LR"])
        kinds = [node.get("class") for node in root.iter("{http://www.w3.org/2000/svg}rect")]
        self.assertEqual([kinds.count(kind) for kind in ("wheel good", "wheel over", "wheel dead", "excess")], [8, 1, 1, 1])

    def rectangles(self, data=None):
        root = ElementTree.fromstring(run("-" if data else EXAMPLE, "--svg", "-", data=data).stdout)
        for node in root.iter("{http://www.w3.org/2000/svg}rect"):
            yield node.get("class"), float(node.get("width"))

    def test_bars_are_to_scale(self):
        """A full bar of 122 pixels is the limit: 2 5/16 of 2 1/2 in are 37/40 of it. At the limit it is full."""
        bars = list(self.rectangles())
        self.assertAlmostEqual([width for kind, width in bars if kind == "fill"][3], 122 * 37 / 40, delta=0.06)
        self.assertEqual([width for kind, width in bars if kind == "edge"], [122, 122])

    def test_a_bar_over_the_limit_is_red_from_end_to_end_and_sticks_out(self):
        bars = list(self.rectangles(with_end(applied="3 63/64", released="2")))
        self.assertEqual([width for kind, width in bars if kind in ("full", "excess")], [])
        bars = list(self.rectangles(with_end(applied="4 1/64", released="2")))
        self.assertEqual([width for kind, width in bars if kind == "full"], [122])
        self.assertGreaterEqual([width for kind, width in bars if kind == "excess"][0], 8)

    def test_units_are_drawn_apart(self):
        """The frame is broken between the tractor and the trailer, and only where the record knows units."""
        together = example()
        del together["units"]
        for record, frames in ((example(), 4), (together, 2)):
            drawing = run("-", "--svg", "-", data=record).stdout
            self.assertEqual(drawing.count('<rect class="body"'), frames)
            self.assertEqual(">trailer</text>" in drawing, frames == 4)

    def test_a_dead_brake_of_the_steering_axle_decides(self):
        """The first axle of a vehicle of a known kind steers; of one of no kind it is only said that it may."""
        for kind, wanted in (({"vehicle": "single"}, "OUT OF SERVICE\n"), ({}, "OUT OF SERVICE IF AXLE 1 STEERS\n")):
            record = small(brakes=10, **kind)
            record["wheel_ends"][0]["applied"] = record["wheel_ends"][0]["released"]
            self.assertIn(wanted, run("-", data=record).stdout)

    def test_no_text_of_the_drawing_is_cut(self):
        """A card has 150 pixels; a large digit takes 12 of them, a small one 7."""
        record = with_end(chamber="clamp 18")
        del record["wheel_ends"][1]["applied"]
        said = run("-", "--svg", "-", data=record).stdout
        self.assertIn("no limit known", said)
        for large, rest in re.findall(r'<tspan class="(?:large|word)">([^<]*)</tspan> ([^<]*)</text>', said):
            self.assertLessEqual((12 if len(large) < 8 else 8) * len(large) + 7 * len(rest), 172, (large, rest))

    def test_the_first_sheet_has_verdict_action_and_signature(self):
        text = run(EXAMPLE, "--html", "-").stdout
        places = [text.index(words) for words in ("BELOW THE OUT-OF-SERVICE CRITERION", "Do not drive it", "<svg",
                                                  "Signature of the inspector", "<h2>Wheel ends", "<h2>Air checks", "Sources")]
        self.assertEqual(places, sorted(places))

    def test_words_instead_of_codes(self):
        record = example(air_checks=[{"check": "warning"}])
        for text in (run("-", "--html", "-", data=record).stdout, run("-", data=record).stdout):
            self.assertIn("United States, motor carriers", " ".join(text.split()))
            for code in ("in-adjustment", "out-of-adjustment", "not-done"):
                self.assertNotIn(code, text)

    def test_pressures_of_good_brakes_too(self):
        record = with_end(psi="96", psi_after="91")
        self.assertRegex(run("-", data=record).stdout, r"\n1R +\S.* 96 +91 ")
        self.assertIn(">96 to 91</td>", run("-", "--html", "-", data=record).stdout)

    def test_a_phone_needs_no_scrolling(self):
        """Every cell of a wheel end names itself, so that its row can be a card."""
        text = run(EXAMPLE, "--html", "-").stdout
        self.assertEqual(text.count('<td data-l="Stroke"'), 10)
        self.assertNotIn("overflow-x", text)

    def test_an_end_that_is_missing_is_drawn_as_such(self):
        record = small()
        del record["wheel_ends"][1]
        drawing = run("-", "--svg", "-", data=record).stdout
        self.assertIn("not recorded", drawing)
        self.assertIn("not measured", drawing)
        self.assertIn("wheel open", drawing)

    def test_everything_from_outside_is_escaped(self):
        record = example(**{key: self.EVIL for key in ("unit", "inspector", "place", "odometer", "remarks", "program")})
        for entry in record["wheel_ends"] + record["air_checks"]:
            entry["remark"] = self.EVIL
        for option in ("--html", "--svg"):
            text = run("-", option, "-", data=record).stdout
            self.assertNotIn("<script", text)
            for sign in "\u202e\u2066\u2069\u202a\u0007":
                self.assertNotIn(sign, text)
            self.assertIn("&lt;script&gt;alert(1)&lt;/script&gt; &quot; &#39; &amp; ", text)
            self.assertIn("&lt;U+202E&gt;&lt;U+2066&gt;&lt;U+2069&gt;&lt;U+202A&gt;&lt;U+0007&gt;", text)
            if option == "--html":
                self.assertEqual(len(Elements(text).seen), len(Elements(run("-", option, "-", data=self.plain(record))
                                                                        .stdout).seen))
            else:
                ElementTree.fromstring(text)

    @staticmethod
    def plain(record):
        return json.loads(json.dumps(record).replace(json.dumps(Page.EVIL)[1:-1], "plain"))


class Files(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def test_written_like_standard_output(self):
        for option in ("--html", "--svg", "--record"):
            file = self.folder / option
            self.assertEqual(run(EXAMPLE, option, file).stdout, "")
            self.assertEqual(file.read_text(encoding="utf-8"), run(EXAMPLE, option, "-").stdout)
        self.assertEqual(len(list(self.folder.iterdir())), 3)

    def test_a_full_disk_is_said(self):
        if not os.path.exists("/dev/full"):
            return
        for option in ("--html", "--svg", "--record"):
            result = run(EXAMPLE, option, "/dev/full")
            self.assertEqual((result.returncode, result.stdout), (2, ""))
            self.assertIn("/dev/full could not be written: No space left", result.stderr)
        with open("/dev/full", "w", encoding="ascii") as full:
            for option in (["--html", "-"], []):
                result = subprocess.run([COMMAND, "report", EXAMPLE, *option], stdout=full, stderr=subprocess.PIPE,
                                        check=False)
                self.assertEqual(result.returncode, 2)
        self.assertTrue(Path("/dev/full").is_char_device())

    def test_nothing_is_half_written(self):
        """A file size limit of 4 kB stops the page in the middle; the older page stays as it was."""
        old = self.folder / "report.html"
        old.write_text("older", encoding="utf-8")
        limited = f'trap "" XFSZ; ulimit -f 8; "{COMMAND}" report "{EXAMPLE}" --html "$1"'
        for name in (old, self.folder / "new.html"):
            result = subprocess.run(["sh", "-c", limited, "sh", str(name)], capture_output=True, text=True, check=False)
            self.assertEqual((result.returncode, result.stdout), (2, ""))
            self.assertIn("could not be written", result.stderr)
        self.assertEqual([file.name for file in self.folder.iterdir()], ["report.html"])
        self.assertEqual(old.read_text(encoding="utf-8"), "older")

    def test_a_record_that_is_refused_leaves_no_file(self):
        file = self.folder / "report.html"
        self.assertEqual(run("-", "--html", file, data=with_end(applied="x")).returncode, 2)
        self.assertFalse(file.exists())

    def test_no_such_folder(self):
        result = run(EXAMPLE, "--html", self.folder / "no" / "report.html")
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        self.assertIn("could not be written: No such file", " ".join(result.stderr.split()))

    def test_a_link_stays_a_link(self):
        target, link = self.folder / "target.svg", self.folder / "link.svg"
        target.write_text("older", encoding="utf-8")
        target.chmod(0o640)
        link.symlink_to("target.svg")
        run(EXAMPLE, "--svg", link)
        self.assertTrue(link.is_symlink())
        self.assertIn("</svg>", target.read_text(encoding="utf-8"))
        self.assertEqual(target.stat().st_mode & 0o777, 0o640)


if __name__ == "__main__":
    COMMAND = os.path.abspath(sys.argv[1])
    load = unittest.defaultTestLoader.loadTestsFromTestCase
    suite = unittest.TestSuite(load(case) for case in (Record, Report, Page, Files))
    print(f"1..{suite.countTestCases()}")
    sys.exit(not suite.run(Tap()).wasSuccessful())
