# SPDX-License-Identifier: Apache-2.0
"""What fuzzes what: every public function and every reader of the command is in the ledger, with a target or a reason
for none; each target has inputs that are kept; each option of each command is given in one of them.

Arguments: root, and the command if it was built. Or: --reached, root, build with .meson/fuzz.ini. That runs the kept
inputs and names what the ledger promises and they do not reach."""
import os
import re
import subprocess
import sys

import tree
from tree import Finding

LEDGER = "tests/fuzz/LEDGER.md"
OPTIONS = "tests/fuzz/corpus/options"
ROW = re.compile(r"^\| *([^|]*?) *\| *([^|]*?) *\|$", re.M)
# What a file of the command takes from outside of the program.
READS = re.compile(r"\b(?:fopen|fread|fgets|getchar|getline|read|open|getopt_long)\(")


def rows(root):
    """(line, targets, names) of each row; no targets where it says why there is none."""
    text = tree.read(root, LEDGER)
    for match in ROW.finditer(text):
        if match[1] not in ("target", "---"):
            yield tree.line_of(text, match.start()), re.findall(r"\bfuzz_\w+", match[1]), match[1], re.findall(r"`([\w./]+)`", match[2])


def _functions(root):
    named = {name for *_, names in rows(root) for name in names if name.startswith("rodt_")}
    declared = tree.public_functions(root)
    for name in sorted(declared.keys() - named):
        yield Finding(*declared[name], f"{name} is not in {LEDGER}")
    for name in sorted(named - declared.keys()):
        yield Finding(LEDGER, 0, f"{name} is no public function")


def _targets(root):
    there = {os.path.basename(path)[:-2] for path in tree.files(root, "tests/fuzz", ".c") if "/fuzz_" in path}
    named = set()
    for line, targets, first, _ in rows(root):
        named.update(targets)
        if not targets and not first.startswith("none: "):
            yield Finding(LEDGER, line, "a row begins with its target, or with none: and the reason")
    for name in sorted(named - there):
        yield Finding(LEDGER, 0, f"there is no {name}")
    for name in sorted(there - named):
        yield Finding(LEDGER, 0, f"{name} has no row")
    for name in sorted(there):
        if not tree.files(root, "tests/fuzz/corpus/" + name[5:]):
            yield Finding("tests/fuzz/corpus", 0, f"no input of {name} is kept")


def _readers(root):
    named = {name for *_, names in rows(root) for name in names if not name.startswith("rodt_")}
    codes = {path[len("examples/cli/"):]: tree.code(tree.read(root, path))
             for path in tree.files(root, "examples/cli", ".c")}
    for path, code in codes.items():
        match = READS.search(code)
        if match and path not in named:
            yield Finding("examples/cli/" + path, tree.line_of(code, match.start()), f"reads, and is not in {LEDGER}")
    page = [tree.code(tree.read(root, path)) for path in tree.files(root, "examples/web", ".c")]
    words = set(re.findall(r"\w+", " ".join([*codes.values(), *page])))
    for name in sorted(named - codes.keys() - words):
        yield Finding(LEDGER, 0, f"the command has no {name}")


def _options(root, command):
    def helped(*words):
        return subprocess.run([command, *words, "--help"], capture_output=True, text=True, check=False).stdout
    given = set()
    for path in tree.files(root, OPTIONS):
        for line in tree.read(root, path).split("\n"):
            words = line.split()
            given.update((words[0], word.split("=")[0]) for word in words[1:])
    for word in re.findall(r"^  ([a-z]+)  ", helped(), re.M):
        for option in re.findall(r"^  (--[a-z-]+)", helped(word), re.M):
            if (word, option) not in given:
                yield Finding(OPTIONS, 0, f"no input gives {option} to {word}")


def check(root, command=None):
    if not os.path.isfile(os.path.join(root, LEDGER)):
        return [Finding(LEDGER, 0, "is missing")]
    findings = [*_functions(root), *_targets(root), *_readers(root)]
    return findings + list(_options(root, command)) if command else findings


def reached(root, build, target):
    """The functions that the kept inputs of a target enter; none where it was not built."""
    if not os.path.isfile(os.path.join(build, "tests/fuzz", target)):
        return set()
    run = subprocess.run([os.path.join(build, "tests/fuzz", target), "-runs=0", "-print_coverage=1",
                          os.path.join(root, "tests/fuzz/corpus", target[5:])], capture_output=True, text=True,
                         errors="replace", check=False)
    return set(re.findall(r"^COVERED_FUNC: .* (\w+) \S+$", run.stderr, re.M))


def _inline(root):
    """Functions that have no place of their own where the compiler puts them into their callers."""
    return {name for path in tree.files(root, "include", ".h")
            for name in re.findall(r"^RODT_INLINE [^(\n]*?\b(rodt_\w+)\(", tree.read(root, path), re.M)}


def check_reached(root, build):
    findings, known, inline = [], {}, _inline(root)
    for line, targets, _, names in rows(root):
        for target in targets:
            known.setdefault(target, reached(root, build, target))
        entered = set().union(*(known[target] for target in targets))
        findings += [Finding(LEDGER, line, f"no kept input of {', '.join(targets)} enters {name}")
                     for name in names if targets and "." not in name and name not in entered | inline]
    return findings


if __name__ == "__main__":
    if sys.argv[1:2] == ["--reached"]:
        sys.exit(tree.report(check_reached(*sys.argv[2:])))
    tree.main(check)
