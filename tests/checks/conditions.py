# SPDX-License-Identifier: Apache-2.0
"""Which conditions no test proves: modified condition/decision coverage of the library, and of the command's files.

A condition is proven if the tests show both of its outcomes and, where its decision has several, two runs between which
it alone turns the decision. A condition that nothing outside can turn is marked ALWAYS(...) or NEVER(...) of
lib/core/always.h, with the reason in a comment beside it. The compilers of tables and catalogues run while the library
is built; their lines count, their conditions are not held.

Arguments: the root, what `llvm-cov export` says of the programs that ran, and a folder (all). Prints what is missing
there, and a table."""
import collections
import json
import os
import re

import tree
from tree import Finding

LIBRARY = ("lib/", "include/")
# Parts of LIBRARY whose conditions are all proven, and files of the command whose branches all go both ways; all their
# statements run.
HELD = ("include/", "lib/core/", "lib/quantity/", "lib/message/", "lib/chamber/", "lib/rules/", "lib/air/", "lib/identify/",
        "lib/judge/", "lib/vehicle/", "lib/column/", "lib/describe/")
HELD_FILES = ("examples/cli/io/", "examples/cli/ui/files.c")
UNHELD = ("lib/tablec/", "lib/catalogc/")
MARKS = "lib/core/always.h"
LINES_LEAST = 95  # per cent of the lines of the library and the command
MARK = re.compile(r"\b(?:ALWAYS|NEVER)\s*\(")
UNREACHED = re.compile(r"\bALWAYS\s*\(\s*false\s*\)")  # in a label of a switch that no value has
CODE, EXPANSION, DECISION_BRANCH = 0, 1, 6  # kinds of regions, in numbers of the export

Place = collections.namedtuple("Place", "path line column end_line end_column")
# Both outcomes are seen; the number of a condition among those of its decision, None for one that stands alone.
Condition = collections.namedtuple("Condition", "place decision number proven")


def slice_of(text, place):
    """The text at a place; the compiler counts columns in bytes."""
    lines = [line.encode("utf-8", "surrogateescape") for line in text.split("\n")[place.line - 1:place.end_line]]
    lines[-1] = lines[-1][:place.end_column - 1]
    lines[0] = lines[0][place.column - 1:]
    return " ".join(b" ".join(lines).decode("utf-8", "replace").split())


class Function:
    """One function of the export. A place within a macro is that where the function uses the macro; a function that is
    a macro as a whole is where the macro is."""

    def __init__(self, data, root):
        self.paths = [os.path.relpath(name, root) for name in data["filenames"]]
        self.path = self.paths[0]
        self.data = data
        self.uses = {region[6]: region for region in data["regions"] if region[7] == EXPANSION}

    def place(self, region, file):
        while file in self.uses:
            region, file = self.uses[file], self.uses[file][5]
        return Place(self.paths[file], *region[:4])

    def branches(self):
        """(place, place in the macro, counts of both outcomes, whether it is part of a decision, file) of each."""
        return sorted((self.place(branch, branch[6]), tuple(branch[:4]), branch[4:6], branch[8] == DECISION_BRANCH,
                       branch[6]) for branch in self.data["branches"])

    def statements(self):
        return [(self.place(region, region[5]), region[4]) for region in self.data["regions"]
                if region[7] == CODE and region[5] == 0]

    def conditions(self, texts):
        branches = self.branches()
        for place, _, counts, part, _ in branches:
            text = texts.get(place.path)
            if not part and text is not None and not is_no_label(text, place):
                label = is_label(text, place)
                seen = counts[0] > 0 and (counts[1] > 0 or label)
                yield Condition(place, place, None, seen or (label and is_unreached(text, place)))
        parts, taken = [branch for branch in branches if branch[3]], set()
        for record in self.data["mcdc_records"]:
            decision = Place(self.path, *record[:4])
            here = [branch for branch in parts if branch[0].path == self.path and within(branch[0], decision)]
            if not here or decision.end_line > texts[self.path].count("\n"):
                decision, here = self.of_macro(record, parts, taken)
            yield from self.of_decision(texts, decision, record[6], here)

    def of_macro(self, record, parts, taken):
        """The export does not say in which use of a macro a decision stands; one use after the other."""
        for file in sorted({branch[4] for branch in parts if branch[4] != 0} - taken):
            here = [branch for branch in parts if branch[4] == file and tuple(record[:2]) <= branch[1][:2]
                    and branch[1][2:] <= tuple(record[2:4])]
            if len(here) == len(record[6]):
                taken.add(file)
                return self.place(record, file), here
        return Place(self.path, 1, 1, 1, 1), []

    def of_decision(self, texts, decision, proven, branches):
        """The export has the first one of the text, then those outside of macros, then the others. A marked one is a
        constant: it has no branch."""
        found = [(branch[4], branch[1], branch[0], False) for branch in branches]
        if len(found) != len(proven):
            found += [(file, (), self.place(use, use[5]), True) for file, use in self.uses.items()
                      if MARK.match(slice_of(texts[self.path], Place(self.path, *use[:4])) + "(")
                      and within(self.place(use, use[5]), decision)]
        if len(found) != len(proven):
            yield Condition(decision, decision, 0, False)
            return
        first = min(found, key=lambda condition: (condition[2], condition[1]))
        found = [first] + sorted(condition for condition in found if condition is not first)
        known = {(place, inner): mark or is_proven for (_, inner, place, mark), is_proven in zip(found, proven)}
        for number, ((place, _), is_proven) in enumerate(sorted(known.items()), 1):
            yield Condition(place, decision, number, is_proven)


def is_label(text, place):
    """A label of a switch: the outcome that counts is that it is taken."""
    return re.match(r"(case|default)\b", slice_of(text, place)) is not None


def is_unreached(text, place):
    """A statement or a label whose line is marked: no value of the switch has it."""
    return UNREACHED.search(tree.code(text).split("\n")[place.line - 1]) is not None


def is_no_label(text, place):
    """The value of a switch: that none of its labels is taken is no outcome where it lists all there are."""
    line = text.split("\n")[place.line - 1].encode("utf-8", "surrogateescape")[:place.column - 1]
    return re.search(rb"\bswitch\s*\($", line) is not None


def within(place, outer):
    return place.path == outer.path and outer[:3] <= place[:3] and place[3:] <= outer[3:]


def lines_of(file):
    """(lines that ran, all lines). The summary takes the lines of an inline function that never ran in one copy, with those
    that the preprocessor leaves out, and those that ran in another copy; the segments are of all copies."""
    lines = file["summary"]["lines"]
    whole = all(count > 0 for _, _, count, has_count, *_ in file["segments"] if has_count)
    return lines["count"] if whole else lines["covered"], lines["count"]


class Coverage:
    def __init__(self, root, export):
        self.root = os.path.realpath(root)
        data = json.load(export)["data"][0]
        self.lines = dict(self.paths((f["filename"], lines_of(f)) for f in data["files"]))
        self.texts = {path: tree.read(root, path) for path in self.lines}
        self.conditions, self.statements, self.branches = {}, collections.Counter(), {}
        for function in (Function(data, self.root) for data in data["functions"]):
            if function.path in self.texts:
                self.add(function)

    def paths(self, rows):
        """Files of the library and the command that stand in the tree; not what is generated."""
        for path, value in rows:
            path = os.path.relpath(path, self.root)
            if path.startswith(("lib/", "include/", "examples/cli/")) and os.path.exists(os.path.join(self.root, path)):
                yield path, value

    def add(self, function):
        """A function of a header, or of a file that is compiled twice, is proven where any of its copies is."""
        for condition in function.conditions(self.texts):
            key = condition[:3]
            if condition.place.path not in self.texts:
                continue
            self.conditions[key] = self.conditions.get(key, False) or condition.proven
        for place, count in function.statements():
            self.statements[place] += count
        for place, inner, counts, *_ in function.branches():
            if place.path not in self.texts:
                continue
            seen = self.branches.get((place, inner), (0, 0))
            self.branches[place, inner] = (seen[0] + counts[0], seen[1] + counts[1])

    def source(self, place):
        return slice_of(self.texts[place.path], place)

    def missing_conditions(self):
        missing = [key for key, proven in self.conditions.items() if not proven]
        for place, decision, number in sorted(missing, key=lambda key: (key[0], key[2] or 0)):
            if number is None:
                yield place, f"one outcome of ({self.source(place)}) is not tested"
            else:
                yield place, (f"condition {number}, {self.source(place)}, of ({self.source(decision)}) does not decide "
                              "by itself")

    def missing_branches(self):
        for (place, _), (taken, passed) in sorted(self.branches.items()):
            if not taken or (not passed and not is_label(self.texts[place.path], place)):
                yield place, f"one outcome of ({self.source(place)}) is not tested"

    def missing_statements(self):
        """The outermost ones; what follows a condition that is marked as never true is no statement that could run."""
        after = {}
        for path, text in self.texts.items():
            ends = [place_of(path, text, end) for end in bodies(text)]
            after.update({place[:3]: place for place in ends})
        outer = None
        for place, count in sorted(self.statements.items()):
            if count or (outer and within(place, outer)):
                continue
            outer = place
            if place[:3] not in after and not is_unreached(self.texts[place.path], place):
                yield place, f"never runs: {self.source(place)[:60]}"


def bodies(text):
    """Where statements begin that a mark keeps from running."""
    plain = tree.code(text)
    for match in re.finditer(r"\bif\s*(?=\(\s*NEVER\s*\()", plain):
        depth = 0
        for sign in re.finditer(r"[()]", plain[match.end():]):
            depth += 1 if sign.group() == "(" else -1
            if depth == 0:
                end = match.end() + sign.end()
                yield end + len(plain[end:]) - len(plain[end:].lstrip())
                break


def place_of(path, text, offset):
    line = tree.line_of(text, offset)
    column = len(text[text.rfind("\n", 0, offset) + 1:offset].encode("utf-8", "surrogateescape")) + 1
    return Place(path, line, column, line, column)


def marks(root):
    """(path, line, whether a comment stands on the line or ends on the line above) of each mark."""
    for path in tree.files(root, "lib", (".c", ".h")) + tree.files(root, "examples/cli", (".c", ".h")):
        if path == MARKS:
            continue
        text = tree.read(root, path)
        lines = [""] + text.split("\n")
        for match in MARK.finditer(tree.code(text)):
            line = tree.line_of(text, match.start())
            yield path, line, "/*" in lines[line] or lines[line - 1].rstrip().endswith("*/")


def share(numbers):
    part, all_of_them = numbers
    return f"{part:6} of {all_of_them:<6}{100 * part / all_of_them if all_of_them else 100:6.1f} %"


def print_table(coverage, marked):
    """A line for each folder: lines, both outcomes of each branch, conditions, marks."""
    rows = collections.defaultdict(lambda: [[0, 0], [0, 0], [0, 0], 0])

    def add(path, column, part, whole):
        for name in (os.path.dirname(path), "all"):
            rows[name][column][0] += part
            rows[name][column][1] += whole

    for path, (part, whole) in coverage.lines.items():
        add(path, 0, part, whole)
    for (place, _), counts in coverage.branches.items():
        add(place.path, 1, sum(count > 0 for count in counts), 2)
    for (place, *_), proven in coverage.conditions.items():
        add(place.path, 2, proven, 1)
    for path, *_ in marked:
        rows[os.path.dirname(path)][3] += 1
        rows["all"][3] += 1
    print(f"{'':24}{'lines':>10}{'outcomes':>24}{'conditions':>24}{'marks':>20}")
    for name, (lines, outcomes, conditions, count) in sorted(rows.items(), key=lambda row: (row[0] == "all", row[0])):
        print(f"{name:24}{share(lines)}{share(outcomes)}{share(conditions)}{count:5}")
    return rows["all"][0]


def check(root, export, under="", held=HELD):
    with open(export, encoding="utf-8") as file:
        coverage = Coverage(root, file)
    findings = []
    for missing, kept, shown in ((coverage.missing_conditions, held, LIBRARY),
                                 (coverage.missing_branches, HELD_FILES, HELD_FILES),
                                 (coverage.missing_statements, held + HELD_FILES, LIBRARY + HELD_FILES)):
        for place, text in missing():
            finding = Finding(place.path, place.line, text)
            if place.path.startswith(kept):
                findings.append(finding)
            elif place.path.startswith(shown) and place.path.startswith(under) and not place.path.startswith(UNHELD):
                tree.report([finding])
    marked = list(marks(root))
    findings += [Finding(path, line, "a mark without the reason in a comment beside it")
                 for path, line, reason in marked if not reason]
    part, whole = print_table(coverage, marked)
    print(f"{len(marked)} conditions are marked as never turned, {sum(mark[2] for mark in marked)} with the reason")
    if whole == 0 or 100 * part < LINES_LEAST * whole:
        findings.append(Finding("lib", 0, f"{part} of {whole} lines run, and {LINES_LEAST} of 100 are the least"))
    return findings


if __name__ == "__main__":
    tree.main(check)
