# SPDX-License-Identifier: Apache-2.0
"""No damaged, missing or contradictory entry makes an answer of the command more favourable: python3 test_damage.py
RODTRAVEL CASES [long]

Every option of a command, every column of a file, every entry of a record and every answer of a walk-round is in turn
left out, doubled with a contrary value, misspelled, and replaced by the texts of cases/damages.csv. What each is, and why
some may be left out, is in cases/entries.csv; more favourable is defined in lib/README.md. `long` tries every text with
every base, otherwise they take turns."""
import csv
import io
import itertools
import json
import os
import random
import re
import subprocess
import sys
import tempfile
import unittest
from fractions import Fraction

import tap

PASS, FAIL, REFUSED, OPEN = range(4)  # exit statuses
DAY = "2024-05-06"


def cases(name):
    with open(os.path.join(CASES, name), encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("# ")))


def run(*arguments, data=""):
    return subprocess.run([COMMAND, *arguments], input=data, capture_output=True, text=True, encoding="utf-8", timeout=60,
                          check=False)


def options_of(command):
    """The options that take an argument, from the help."""
    found = re.findall(r"^  --([a-z-]+)(?: ([A-Z][A-Z0-9]*(?:=HEADING)?|[a-z]+(?:\|[a-z]+)+))?(?= )",
                       run(command, "--help").stdout, re.MULTILINE)
    assert len(found) > 3, command
    return [name for name, argument in found if argument and name != "language"]


class Damage(unittest.TestCase):
    """Damages of one entry, and what must be said of them."""

    @classmethod
    def setUpClass(cls):
        cls.entries = {(row["group"], row["entry"]): row for row in cases("entries.csv")}
        cls.texts = cases("damages.csv")
        cls.tried = 0

    @classmethod
    def tearDownClass(cls):
        print(f"# {cls.__name__}: {cls.tried} damages")

    def entry(self, group, name):
        self.assertIn((group, name), self.entries, "cases/entries.csv has no row for this entry")
        return self.entries[group, name]

    def damages(self, kind):
        """Each text, and whether it is a value of this kind, says nothing, or cannot be read."""
        yield from (("", "nothing"), (" \t", "nothing"))
        for row in self.texts:
            how = ("value" if kind == "free" or kind in row["value_of"].split() else
                   "nothing" if kind in row["nothing_for"].split() else "unreadable")
            yield row["text"], how

    def turns(self, kind, bases):
        """Damages with a base each; all of them with all in the long form."""
        if LONG:
            yield from ((base, *damage) for base in bases for damage in self.damages(kind))
        else:
            yield from ((base, *damage) for base, damage in zip(itertools.cycle(bases), self.damages(kind)))

    def expect(self, row, how, before, after, said=""):
        """Exit statuses of the sound and of the damaged run."""
        type(self).tried += 1
        if how == "unreadable":
            self.assertEqual(after, REFUSED, said)
        elif how == "nothing" and after == PASS:
            self.assertTrue(before == PASS or row["absence"], said)


class Stroke(Damage):
    OPTIONS = {"class": "stroke_class", "rated": "rated_stroke", "marked-limit": "marked_limit", "psi": "psi",
               "psi-after": "psi_after", "division": "division", "as-of": "date", "unit": "unit", "engine": "engine",
               "spring-brake": "spring_brake", "drum": "drum"}
    OPERANDS = ("chamber", "released", "applied")
    APPLIED = ("3 15/16", "4", "4 1/16", "2")  # the limit is 2 in from 2

    def status(self, values, options, *more):
        words = [values[name] for name in self.OPERANDS]
        for name, text in options.items():
            words += [f"--{name}", text]
        done = run("stroke", *words, *more, "--json")
        if done.returncode != REFUSED:
            verdict = json.loads(done.stdout)["verdict"]
            self.assertEqual(done.returncode, {"in-adjustment": PASS, "undetermined": OPEN}.get(verdict, FAIL))
        return done.returncode

    def setUp(self):
        self.values = {name: self.entry("reading", name)["sound"] for name in self.OPERANDS}
        self.sound = {name: self.entry("reading", entry)["sound"] for name, entry in self.OPTIONS.items()}
        self.bases = [({**self.values, "applied": applied}, self.status({**self.values, "applied": applied}, self.sound))
                      for applied in self.APPLIED]
        self.assertEqual([before for _, before in self.bases], [PASS, PASS, FAIL, FAIL])

    def test_every_option_has_an_entry(self):
        self.assertEqual(set(options_of("stroke")), {*self.OPTIONS, "rules", "limits"})

    def test_options(self):
        for name, entry in self.OPTIONS.items():
            row = self.entry("reading", entry)
            for values, before in self.bases:
                left = {option: text for option, text in self.sound.items() if option != name}
                self.expect(row, "nothing", before, self.status(values, left), f"without {name}")
            for (values, before), text, how in self.turns(row["kind"], self.bases):
                self.expect(row, how, before, self.status(values, {**self.sound, name: text}), f"{name} {text!r}")

    def test_operands(self):
        for name in self.OPERANDS:
            row = self.entry("reading", name)
            for (values, before), text, how in self.turns(row["kind"], self.bases):
                self.expect(row, how, before, self.status({**values, name: text}, self.sound), f"{name} {text!r}")
        for count in range(3):
            self.assertEqual(run("stroke", *["2"] * count).returncode, REFUSED)
        self.assertEqual(run("stroke", "30", "2", "3", "3").returncode, REFUSED)

    def test_contrary(self):
        values, _ = self.bases[0]
        for name, entry in self.OPTIONS.items():
            row = self.entry("reading", entry)
            contrary = row["contrary"] or row["sound"]
            type(self).tried += 3
            self.assertEqual(self.status(values, self.sound, f"--{name}", contrary), REFUSED, f"{name} twice")
            self.assertEqual(self.status(values, self.sound, f"--{name[:-1]}", contrary), REFUSED, f"{name} misspelled")
            if row["contrary"]:
                self.assertNotEqual(self.status(values, {**self.sound, name: contrary}), PASS)


class Limits(Damage):
    """A carrier's limits that are damaged, or not there, are refused by every command: nobody is judged without them."""
    SOUND = "family,size,class,limit\nclamp,30,standard,1 7/8\n"
    COMMANDS = (("stroke", "30", "2", "3"), ("limits", "30"), ("batch", "-"), ("vehicle", "-"), ("air", "warning", "62"))

    def test_files(self):
        broken = [self.SOUND.replace(cell, text) for cell in ("clamp", "30", "standard", "1 7/8", "limit", "class")
                  for text in ("", "?", "x", "2 1/8 ft", "n.m.")] + ["", "\n", "x", self.SOUND + self.SOUND, self.SOUND * 2]
        rows = "position,chamber,released,applied,psi\n1L,30,2,3,95\n1R,30,2,3,95\n"
        with tempfile.TemporaryDirectory() as folder:
            file = os.path.join(folder, "own.csv")
            for words in self.COMMANDS:
                self.assertEqual(run(*words, "--limits", file, data=rows).returncode, REFUSED, words)
                for text in (self.SOUND, *broken):
                    type(self).tried += 1
                    with open(file, "w", encoding="utf-8") as own:
                        own.write(text)
                    status = run(*words, "--limits", file, data=rows).returncode
                    self.assertEqual(status == REFUSED, text != self.SOUND, (words, text, status))

    def test_no_row_is_lost(self):
        """A row whose first cell cannot be read is not taken for a comment: its limit was the lower one."""
        with tempfile.TemporaryDirectory() as folder:
            file = os.path.join(folder, "own.csv")
            for damage in (row["text"] for row in self.texts if "family" not in row["value_of"].split()):
                type(self).tried += 1
                with open(file, "w", encoding="utf-8", newline="") as own:
                    csv.writer(own, lineterminator="\n").writerows(
                        [["family", "size", "class", "limit"], ["clamp", "24", "standard", "1 5/8"],
                         [damage, "30", "standard", "1 7/8"]])
                done = run("stroke", "30", "2", "3 15/16", "--limits", file)
                self.assertEqual(done.returncode, REFUSED, (damage, done.stdout))


class Rows(Damage):
    """Files of wheel ends. All damages of cells are rows of one file, whose first row is sound."""
    APPLIED = Stroke.APPLIED

    def setUp(self):
        self.fields = [entry for group, entry in self.entries if group == "reading"]
        sound = {field: self.entry("reading", field)["sound"] for field in self.fields}
        self.bases = [{**sound, "applied": applied} for applied in self.APPLIED]

    def damaged_rows(self):
        """The base, the row of entries.csv, how, and the wheel end. An entry that is None is left out."""
        for field in self.fields:
            row = self.entry("reading", field)
            bases = list(self.bases)
            if row["contrary"]:
                bases.append({**self.bases[0], field: row["contrary"]})
            for base in bases:
                for text, how in ((None, "nothing"), *self.damages(row["kind"])):
                    yield base, row, how, {**base, field: text}

    def table(self, ends, fields=None):
        text = io.StringIO()
        writer = csv.DictWriter(text, fields or self.fields, lineterminator="\n")
        writer.writeheader()
        writer.writerows(ends)
        return text.getvalue()

    def batch(self, ends, *options):
        done = run("batch", "--as-of", DAY, *options, "-", data=self.table(ends))
        judged = list(csv.DictReader(io.StringIO(done.stdout)))
        self.assertEqual(len(judged), len(ends), done.stderr)
        verdicts = {row["verdict"] for row in judged}
        self.assertEqual(done.returncode, FAIL if verdicts & {"out-of-adjustment", "inoperative"} else
                         OPEN if "undetermined" in verdicts else PASS)
        return [(row["verdict"], row["applied_stroke"], row["limit"], row["margin"], row["reasons"].split()) for row in judged]

    def ndjson(self, ends):
        lines = "".join(json.dumps({name: text for name, text in end.items() if text is not None}) + "\n" for end in ends)
        judged = map(json.loads, run("batch", "--as-of", DAY, "--format", "ndjson", "-", data=lines).stdout.splitlines())
        return [(row["verdict"], *(row[name] or "" for name in ("applied_stroke", "limit", "margin")), row["reasons"])
                for row in judged]

    def test_cells(self):
        damages = list(self.damaged_rows())
        ends = [self.bases[0], *(end for *_, end in damages), *(base for base, *_ in damages)]
        judged = self.batch(ends)
        self.assertEqual(judged, self.batch(ends, "--no-cache", "--jobs", "1"))
        self.assertEqual(judged, self.ndjson(ends))
        for number, (base, row, how, end) in enumerate(damages):
            type(self).tried += 1
            after, before = judged[1 + number][0], judged[1 + len(damages) + number][0]
            good = after == "in-adjustment"
            said = f"{row['entry']} {end[row['entry']]!r}: {before} became {after}"
            if how == "unreadable":
                self.assertTrue(any(re.search("unreadable|spreadsheet", code) for code in judged[1 + number][4]), said)
                self.assertFalse(good and (row["entry"] != "date" or before != "in-adjustment"), said)
            elif how == "nothing":
                self.assertTrue(not good or before == "in-adjustment" or row["absence"], said)

    def test_pairs(self):
        """Two damages at a time: neither hides the other."""
        draw = random.Random(7)
        fields = [self.entry("reading", field) for field in self.fields]
        kinds = {row["kind"]: list(self.damages(row["kind"])) for row in fields}
        of_mm = {text for text, how in self.damages("division_mm") if how == "value"}
        ends, spoiled = [self.bases[0]], [False]
        for _ in range(200000 if LONG else 6000):
            base = draw.choice(self.bases)
            damaged = [(row, *draw.choice(kinds[row["kind"]])) for row in draw.sample(fields, 2)]
            ends.append({**base, **{row["entry"]: text for row, text, _ in damaged}})
            spoiled.append(any(how == "unreadable" and row["kind"] != "date" and
                               not (row["kind"] == "division" and ends[-1]["unit"] == "mm" and text in of_mm)
                               for row, text, how in damaged))
        judged = self.batch(ends)
        type(self).tried += 2 * len(ends)
        for end, bad, (verdict, *_) in zip(ends, spoiled, judged):
            self.assertFalse(bad and verdict == "in-adjustment", end)

    def test_values_of_json(self):
        """A member that is no text and no number cannot be read; null says nothing."""
        for field in self.fields:
            row = self.entry("reading", field)
            for base in (self.bases[0], {**self.bases[0], field: row["contrary"]}):
                for value in (True, False, [], [95], {}, {"a": 1}, ["2"], None, [None]):
                    type(self).tried += 1
                    lines = json.dumps(self.bases[0]) + "\n" + json.dumps({**base, field: value}) + "\n"
                    done = run("batch", "--as-of", DAY, "--format", "ndjson", "-", data=lines)
                    verdict = json.loads(done.stdout.splitlines()[1])["verdict"]
                    good = verdict == "in-adjustment"
                    if value is not None:
                        self.assertFalse(good and field != "date", (field, value))
                    else:
                        self.assertTrue(not good or not row["contrary"] or row["absence"], field)

    def test_headings(self):
        """A column that is doubled is refused; one that is misspelled is named, or the file is refused."""
        for field in self.fields:
            row = self.entry("reading", field)
            base = {**self.bases[0], field: row["contrary"] or row["sound"]}
            for other in (field, field.upper(), field.replace("_", " ") + " "):
                type(self).tried += 1
                text = self.table([{**self.bases[0], "twice": base[field]}], [*self.fields, "twice"]).replace("twice", other, 1)
                self.assertEqual(run("batch", "-", data=text).returncode, REFUSED, other)
            for slip in (field[:-1], field + field[-1], field[1:], field[0] + "x" + field[1:], field[1] + field[0] + field[2:]):
                type(self).tried += 1
                head, rest = self.table([base]).split("\n", 1)
                text = ",".join(slip if name == field else name for name in head.split(",")) + "\n" + rest
                done = run("batch", "--as-of", DAY, "-", data=text)
                named = f'"{slip}" is not read' in " ".join(done.stderr.split())
                self.assertTrue(done.returncode == REFUSED or named, (slip, done.stderr))

    def test_counts_of_vehicles(self):
        """Four brakes a vehicle, one of them damaged; the criterion is reached by one of them."""
        damages = [(base, row, how, end) for base, row, how, end in self.damaged_rows() if how != "value"]
        vehicles = [end for *_, end in damages] + [base for base, *_ in damages]
        ends = [{**end, "vehicle": f"V{number}"} for number, damaged in enumerate(vehicles)
                for end in (self.bases[0], damaged, self.bases[1], self.bases[0])]
        done = run("batch", "--as-of", DAY, "--by", "vehicle", "--pool", "-", data=self.table(ends, [*self.fields, "vehicle"]))
        counts = list(csv.DictReader(io.StringIO(done.stdout)))
        self.assertEqual(len(counts), len(vehicles), done.stderr)
        for number, (_, row, how, end) in enumerate(damages):
            type(self).tried += 1
            after, before = counts[number], counts[len(damages) + number]
            self.assertEqual(after["brakes"], "4")
            better = (int(after["in_adjustment"]) > int(before["in_adjustment"]) or
                      after["verdict"] == "below-criterion" != before["verdict"])
            self.assertTrue(not better or (how == "nothing" and row["absence"]), (row["entry"], end, before, after))


class Vehicle(Damage):
    """A truck of two axles: good, with a brake over its limit, with a dead one, with one that nobody measured."""
    APPLIED = (("4", "3", "3 1/2", "3"), ("4 1/8", "3", "3 1/2", "3"), ("2", "3", "3 1/2", "3"), ("3", "", "3 1/2", "3"))
    POSITIONS = ("1L", "1R", "2L", "2R")

    def setUp(self):
        self.groups = {entry: group for group, entry in self.entries if group in ("reading", "vehicle")}
        sound = {name: self.entry(group, name)["sound"] for name, group in self.groups.items()}
        self.bases = [[{**sound, "position": position, "applied": stroke} for position, stroke in zip(self.POSITIONS, applied)]
                      for applied in self.APPLIED]
        self.before = [self.judge(ends) for ends in self.bases]
        self.assertEqual([status for status, _ in self.before], [PASS, FAIL, FAIL, OPEN])

    def judge(self, ends, *options, head=None):
        text = io.StringIO()
        writer = csv.writer(text, lineterminator="\n")
        writer.writerow(head or list(self.groups))
        writer.writerows(list(end.values()) for end in ends)
        done = run("vehicle", "--json", *options, "-", data=text.getvalue())
        return done.returncode, json.loads(done.stdout) if done.stdout else {"said": done.stderr}

    def expect_vehicle(self, row, how, before, after, said):
        """No vehicle passes that did not, no brake more is good, and no brake is lost to the count."""
        type(self).tried += 1
        if how == "unreadable" and row["group"] == "vehicle":
            self.assertEqual(after[0], REFUSED, said)
        if how == "value" or after[0] == REFUSED or (how == "nothing" and row["absence"]):
            return
        self.assertTrue(after[0] != PASS or before[0] == PASS, said)
        self.assertLessEqual(after[1]["in_adjustment"], before[1]["in_adjustment"], said)
        self.assertEqual(after[1]["brakes"], before[1]["brakes"], said)
        if how == "unreadable" and row["kind"] != "date":
            self.assertNotEqual(after[0], PASS, said)

    def test_cells(self):
        for name, group in self.groups.items():
            row = self.entry(group, name)
            bases = list(zip(self.bases, self.before))
            if row["contrary"]:
                contrary = [{**self.bases[0][0], name: row["contrary"]}, *self.bases[0][1:]]
                bases.append((contrary, self.judge(contrary)))
                self.assertNotEqual(bases[-1][1][0], PASS, name)
            places = itertools.cycle(range(1 if name == "unit" else 0, 4))  # a number in the first row names vehicles
            for (ends, before), text, how in self.turns(row["kind"], bases):
                place = 0 if before is bases[-1][1] else next(places)
                damaged = [{**end, name: text} if number == place else end for number, end in enumerate(ends)]
                self.expect_vehicle(row, how, before, self.judge(damaged), f"{name} {text!r} at {place}")

    def test_columns(self):
        for name, group in self.groups.items():
            row = self.entry(group, name)
            names = list(self.groups)
            for ends, before in zip(self.bases, self.before):
                left = [{key: text for key, text in end.items() if key != name} for end in ends]
                self.expect_vehicle(row, "nothing", before, self.judge(left, head=[key for key in names if key != name]), name)
            contrary = [{**end, name: row["contrary"] or end[name]} for end in self.bases[0]]
            twice = self.judge([{**end, "twice": more[name]} for end, more in zip(self.bases[0], contrary)], head=[*names, name])
            self.assertEqual(twice[0], REFUSED, name)
            for slip in (name[:-1], name + name[-1], name[0] + "x" + name[1:]):
                type(self).tried += 1
                text = io.StringIO()
                writer = csv.writer(text, lineterminator="\n")
                writer.writerows([[slip if key == name else key for key in names], *(end.values() for end in contrary)])
                done = run("vehicle", "-", data=text.getvalue())
                self.assertTrue(done.returncode == REFUSED or f'"{slip}" is not read' in " ".join(done.stderr.split()), slip)

    def test_wheel_ends(self):
        """One that is not in the file is not measured; one that is there twice is refused; no axle is jumped over."""
        for ends, before in zip(self.bases, self.before):
            for place in range(4):
                type(self).tried += 2
                status, left = self.judge(ends[:place] + ends[place + 1:])
                self.assertNotEqual(status, PASS)
                self.assertEqual(left["brakes"], 4)
                self.assertEqual(self.judge([*ends, ends[place]])[0], REFUSED)
            for axle in (slice(0, 2), slice(2, 4)):
                type(self).tried += 1
                moved = [{**end, "position": end["position"].replace("2", "3")} for end in ends]
                status, left = self.judge(moved)
                self.assertTrue(status != PASS and left["brakes"] == 6, f"an axle between {axle} is not there: {left['sentence']}")


class Air(Damage):
    OPTIONS = {"seconds": "seconds", "from": "before", "to": "after", "start": "span", "before": "before", "after": "after",
               "applications": "applications", "vehicle": "vehicle", "towed": "towed_units", "built": "built",
               "cut-out": "cut_out", "cut-in": "cut_in", "reservoirs": "actual_volume"}
    ESTIMATES = {"psi", "fill", "floor", "chambers"}
    WORDS = {"spring-brake": ("holds", "moves"), "tractor-protection": ("holds", "escapes"), "drain": ("free", "stuck"),
             "contamination": ("found", "none"), "trailer-brakes": ("apply", "none"), "audible-leak": ("heard", "none")}

    def setUp(self):
        """Of each check and result two readings, of different rule sets."""
        kept = {}
        for case in cases("air_edges.csv"):
            if not case["actual_volume"] and not case["required_volume"]:
                kept.setdefault((case["check"], case["result"], case["rules"]), case)
        chosen = {}
        for (check, result, _), case in kept.items():
            chosen.setdefault((check, result), []).append(case)
        self.bases = [(words, options, self.status(words, options))
                      for some in chosen.values() for words, options in map(self.command_line, some[:2])]
        self.assertGreater(len(self.bases), 50)

    def command_line(self, case):
        words = [case["check"]]
        if case["pressure"]:
            words.append(case["pressure"])
        elif case["answer"]:
            words.append(self.WORDS.get(case["check"], ("", "never"))[case["answer"] == "no"])
        timed = case["check"] == "build-up"
        given = {"seconds": case["seconds"], "from" if timed else "before": case["before"],
                 "to" if timed else "after": case["after"], "start": case["span"], "applications": case["applications"],
                 "vehicle": case["vehicle"], "towed": case["towed"], "built": case["built"], "cut-out": case["cut_out"]}
        return words, {"rules": case["rules"], **{name: text for name, text in given.items() if text}}

    def status(self, words, options, *more):
        for name, text in options.items():
            words = [*words, f"--{name}", text]
        done = run("air", *words, *more, "--json")
        if done.returncode != REFUSED:
            result = json.loads(done.stdout)["result"]
            self.assertEqual(done.returncode, {"good": PASS, "noted": PASS, "defective": FAIL}.get(result, OPEN))
        return done.returncode

    def test_every_option_has_an_entry(self):
        self.assertEqual(set(options_of("air")), {*self.OPTIONS, *self.ESTIMATES, "rules", "limits"})

    def test_options(self):
        for name, entry in self.OPTIONS.items():
            row = self.entry("air", entry)
            with_it = [base for base in self.bases if name in base[1]] or self.bases
            for words, options, before in with_it:
                left = {option: text for option, text in options.items() if option != name}
                self.expect(row, "nothing", before, self.status(words, left), f"{words} {options} without {name}")
            for (words, options, before), text, how in self.turns(row["kind"], with_it):
                after = self.status(words, {**options, name: text})
                self.expect(row, how, before, after, f"{words} {options}: {name} {text!r}")
            for words, options, _ in with_it[:4]:
                type(self).tried += 2
                self.assertEqual(self.status(words, {name: row["sound"], **options}, f"--{name}", row["sound"]), REFUSED)
                self.assertEqual(self.status(words, options, f"--{name[:-1]}", row["sound"]), REFUSED, name)

    def test_operands(self):
        row = self.entry("air", "pressure")
        for (words, options, before), text, how in self.turns(row["kind"], self.bases):
            if words[0] in self.WORDS or len(words) < 2:
                how = "nothing" if how == "nothing" else "value"  # a word of its own, or no reading is taken
            self.expect({**row, "absence": ""}, how, before, self.status([words[0], text], options), f"{words} as {text!r}")
        for words, options, before in self.bases:
            type(self).tried += 2
            self.assertTrue(self.status(words[:1], options) != PASS or len(words) == 1, words)
            self.assertEqual(self.status([words[0] + "x", *words[1:]], options), REFUSED)


class Report(Damage):
    """A record: it is somebody's word, so what cannot be read is refused."""
    NO_TEXTS = (True, False, None, [], {}, [1], {"a": 1}, 1.5, -1, 10**20)
    LISTS = {"units": "unit", "wheel_ends": "wheel_end", "air_checks": "air_check", "steps": "step"}
    CHECKS = ({"check": "warning", "pressure": "62", "cut_out": "125", "remark": "late", "answer": "yes"},
              {"check": "loss-applied", "before": "110", "after": "108", "seconds": "60"},
              {"check": "build-up", "span": "recovery", "seconds": "25", "reservoir_volume": "6960",
               "required_volume": "5568"},
              {"check": "reserve", "before": "100", "after": "90", "applications": 1})

    def setUp(self):
        with open(os.path.join(CASES, "../../examples/data/inspection.schema.json"), encoding="utf-8") as file:
            self.schema = json.load(file)
        whole = {"brakes": int, "towed_units": int, "version": int, "axles": int}
        head = {name: whole.get(name, str)(self.entry("record", name)["sound"]) for name in self.schema["properties"]
                if name not in self.LISTS}
        end = {name: self.place_of("wheel_end", name)["sound"] for name in self.schema["$defs"]["wheel_end"]["properties"]}
        del end["marked_limit"]  # it is for chambers that are in no table
        ends = [{**end, "position": position} for position in ("1L", "1R", "2L", "2R", "3L", "3R", "4L", "4R")]
        self.sound = {**head, "units": [{"kind": "tractor", "plate": "AB 1234", "axles": 2}, {"kind": "trailer", "axles": 2}],
                      "wheel_ends": ends, "air_checks": [dict(check) for check in self.CHECKS],
                      "steps": [{"step": "cautions", "answer": "yes"}]}

    def place_of(self, kind, name):
        """The row of entries.csv of an entry of that part of a record."""
        if name == "remark":
            return self.entry("record", "remark")
        if kind == "air_check":
            return self.entry("air", {"reservoir_volume": "actual_volume"}.get(name, name))
        if kind == "wheel_end":
            return self.entry("vehicle" if ("vehicle", name) in self.entries else "reading", name)
        return self.entry(kind, name)

    @staticmethod
    def judge(record):
        """Exit status, and how many brakes and checks are good."""
        done = run("report", "-", "--json", data=record if isinstance(record, str) else json.dumps(record))
        if done.returncode == REFUSED:
            return REFUSED, 0
        judged = json.loads(done.stdout)
        return done.returncode, judged["stroke"]["in_adjustment"] + sum(
            check["result"] in ("good", "noted") for check in judged["air_checks"])

    def copies(self):
        """Good, a brake over its limit, one dead, one not measured, a bad check, one that is open, one not done."""
        for part, place, changes in ((None, 0, {}), ("wheel_ends", 2, {"applied": "4 1/8"}), ("wheel_ends", 0, {"applied": "2"}),
                                     ("wheel_ends", 5, {"applied": None}), ("air_checks", 1, {"after": "99"}),
                                     ("air_checks", 0, {"pressure": "126"}), ("air_checks", 3, {"after": None})):
            record = json.loads(json.dumps(self.sound))
            for name, text in changes.items():
                record[part][place][name] = text
                if text is None:
                    del record[part][place][name]
            yield record

    def parts(self, record):
        """Each object of the record, and what kind of object it is."""
        yield "record", record
        for name, kind in self.LISTS.items():
            for part in record[name]:
                yield kind, part

    def test_every_entry_is_there(self):
        for kind, schema in (("record", self.schema), *((kind, self.schema["$defs"][kind]) for kind in self.LISTS.values())):
            there = {name for other, part in self.parts(self.sound) if other == kind for name in part}
            missing = set(schema["properties"]) - there - {"marked_limit"}
            self.assertFalse(missing, f"entries of a {kind} that are not tested")

    def expect_record(self, row, how, before, after, said):
        type(self).tried += 1
        if how == "unreadable":
            self.assertEqual(after[0], REFUSED, said)
        elif how == "nothing" and not row["absence"] and after[0] != REFUSED:
            self.assertTrue(after[0] != PASS or before[0] == PASS, said)
            self.assertLessEqual(after[1], before[1], said)

    def each_place(self, record):
        """Every part that has an entry, once for a wheel end, since they are alike; a part of its own for each base."""
        for number, (kind, part) in enumerate(self.parts(record)):
            if kind != "wheel_end" or part["position"] == "1R" or LONG:
                yield from ((kind, part, name) for name in list(part) if kind != "record" or name not in self.LISTS)

    def test_entries(self):
        turn = itertools.count()
        bases = [(record, self.judge(record)) for record in self.copies()]
        self.assertEqual([before[0] for _, before in bases], [PASS, FAIL, FAIL, OPEN, FAIL, OPEN, OPEN])
        for number, (record, before) in enumerate(bases):
            for kind, part, name in self.each_place(record):
                row, kept = self.place_of(kind, name), part[name]
                del part[name]
                self.expect_record(row, "nothing", before, self.judge(record), f"{number}: without {kind} {name}")
                damages = [*self.damages(row["kind"]), *((value, "unreadable") for value in self.NO_TEXTS)]
                for value, how in damages:
                    if not LONG and (next(turn) % (3 * len(bases)) or row["kind"] == "free" and how == "value"):
                        continue
                    part[name] = value
                    self.expect_record(row, how, before, self.judge(record), f"{number}: {kind} {name} {value!r}")
                part[name] = kept
        self.assertEqual([self.judge(record) for record, _ in bases], [before for _, before in bases])

    def test_names_of_entries(self):
        """One that is misspelled, or there twice, is refused."""
        for kind, part, name in self.each_place(self.sound):
            kept = part.pop(name)
            for slip in (name[:-1] or "x", name + name[-1], "x" + name[1:], name[1] + name[0] + name[2:]):
                type(self).tried += 1
                part[slip] = kept
                self.assertEqual(self.judge(self.sound)[0], REFUSED, f"{kind} {slip}")
                del part[slip]
            part["twice"], part[name] = kept, kept
            for other in (name, name.upper(), name.replace("_", "-") + " "):
                type(self).tried += 1
                twice = json.dumps(self.sound).replace("twice", other, 1)
                self.assertEqual(self.judge(twice)[0], REFUSED, f"{kind} {name} twice, as {other}")
            del part["twice"]

    def test_parts_that_are_left_out(self):
        """A wheel end less is a brake that nobody measured; a record needs its list of them."""
        for record in self.copies():
            before = self.judge(record)
            for place in range(len(record["wheel_ends"])):
                type(self).tried += 1
                left = {**record, "wheel_ends": record["wheel_ends"][:place] + record["wheel_ends"][place + 1:]}
                after = self.judge(left)
                self.assertTrue(after[0] not in (PASS,) and after[1] <= before[1], place)
            self.assertEqual(self.judge({**record, "wheel_ends": record["wheel_ends"] * 2})[0], REFUSED)
            self.assertNotEqual(self.judge({**record, "wheel_ends": []})[0], PASS)


class Identify(Damage):
    """A clue less never leaves fewer chambers, nor a greater limit to judge by; one that cannot be read is refused."""

    def judge(self, clues, *more):
        """Exit status, how many chambers are left, and the limit to judge by."""
        done = run("identify", *(word for name, text in clues.items() for word in (f"--{name}", text)), *more, "--json")
        if done.returncode == REFUSED:
            return REFUSED, 0, None
        judged = json.loads(done.stdout)
        return done.returncode, len(judged["candidates"]), judged["strict_limit"]

    @staticmethod
    def inches(limit):
        return sum(map(Fraction, limit.split()))

    def test_clues(self):
        rows = {name: row for (group, name), row in self.entries.items() if group == "identify"}
        self.assertEqual(set(options_of("identify")), {*rows, "rules", "as-of"})
        sound = {name: row["sound"] for name, row in rows.items()}
        before = self.judge(sound)
        self.assertEqual(before[0], PASS)
        for name, row in rows.items():
            left = self.judge({clue: text for clue, text in sound.items() if clue != name})
            self.assertTrue(left[1] >= before[1] and self.inches(left[2]) <= self.inches(before[2]), name)
            self.assertEqual(self.judge(sound, f"--{name}", row["sound"])[0], REFUSED, f"{name} twice")
            for text, how in self.damages(row["kind"]):
                type(self).tried += 1
                after = self.judge({**sound, name: text})
                self.assertTrue(how != "unreadable" or after[0] == REFUSED, f"{name} {text!r}: {after}")
                if how == "nothing" and after[0] == PASS:
                    self.assertEqual(after, left, f"{name} {text!r}")


class Walkround(Damage):
    """The answers of a guided inspection: a text that is none makes no brake and no check good that was not. One that is
    missing or there twice moves those behind it to other questions, and what they say there is another inspection: it does
    not end well either."""
    CONTRARY = {"62": "40", "4 1/8": "4 3/4", "n": "y"}  # a bad warning, a brake that is far over, oil in the reservoirs

    def setUp(self):
        with open(os.path.join(CASES, "../../examples/data/walkround.txt"), encoding="utf-8") as file:
            self.sound = [line for line in file.read().split("\n")[:-1] if not line.startswith("#")]
        self.assertGreater(len(self.sound), 40)
        self.bad = [row["text"] for row in self.texts if not row["value_of"] and not row["nothing_for"]]
        memory = "/dev/shm"  # every answer is written to the disk for good, which takes its time
        folder = tempfile.TemporaryDirectory(dir=memory if os.access(memory, os.W_OK) else None)
        self.addCleanup(folder.cleanup)
        self.record, self.answers = os.path.join(folder.name, "w.json"), os.path.join(folder.name, "answers.txt")

    def judge(self, lines):
        """Exit status of the walk-round, that of its record, and the brakes and checks that are good in it."""
        with open(self.answers, "w", encoding="utf-8") as file:
            file.write("\n".join(lines) + "\n")
        if os.path.exists(self.record):
            os.remove(self.record)
        walked = run("walkround", self.record, "--as-of", "2026-11-20", "--answers", self.answers)
        if not os.path.exists(self.record):
            return walked, REFUSED, set()
        done = run("report", self.record, "--json")
        if not done.stdout:
            return walked, done.returncode, set()
        judged = json.loads(done.stdout)
        good = {end["position"] for end in judged["stroke"]["wheel_ends"] if end["verdict"] == "in-adjustment"}
        return walked, done.returncode, good | {check["check"] for check in judged["air_checks"]
                                                if check["result"] in ("good", "noted")}

    def bases(self):
        yield self.sound
        for place, line in enumerate(self.sound):
            if line in self.CONTRARY and (line != "n" or self.sound[place - 2] == "62"):
                yield [*self.sound[:place], self.CONTRARY[line], "k", *self.sound[place + 1:]]  # k: keeps an unlikely answer
                yield [*self.sound[:place], self.CONTRARY[line], *self.sound[place + 1:]]

    def damaged(self, lines, turn):
        """Each answer replaced by texts that are no answer to any question; left out, there twice, blank, skipped."""
        for place in range(len(lines)):
            before, after = lines[:place], lines[place + 1:]
            moved = [[], [lines[place]] * 2, [""], ["skip"]]
            texts = self.bad if LONG else [self.bad[next(turn) % len(self.bad)]]
            for changed in (*([text] for text in texts), *(moved if LONG else [moved[next(turn) % 4]])):
                yield place, changed, [*before, *changed, *after]

    def test_answers(self):
        turn = itertools.count()
        for lines in self.bases():
            walked, status, good = self.judge(lines)
            if walked.returncode == REFUSED:
                continue  # this contrary answer takes no confirmation, or needs one
            self.assertNotEqual(status, PASS)
            for place, changed, damaged in self.damaged(lines, turn):
                type(self).tried += 1
                again, after, better = self.judge(damaged)
                said = f"answer {place}, {lines[place]!r} became {changed}: {status} became {after}, {better - good} are good"
                moved = changed in ([], [""], ["skip"]) or len(changed) > 1
                self.assertTrue((moved or better <= good) and PASS not in (after, again.returncode), said + again.stderr)


if __name__ == "__main__":
    COMMAND, CASES = sys.argv[1:3]
    LONG = "long" in sys.argv
    tap.main()
