# SPDX-License-Identifier: Apache-2.0
"""Plain order in the tree: words that do not belong, licence lines, entries of the top level."""
import fnmatch
import os
import re

import tree
from tree import Finding

LIST = "tests/checks/words.txt"
TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "lib", "include", "bindings", "tests", "examples", "tables"}
LICENCE = "SPDX-License-Identifier: Apache-2.0"
LICENCE_LINES = 5
NO_COMMENTS = ".reuse/dep5"
# Texts whose bytes are the case itself: readings as people type them, tables, what a fuzzer keeps.
DATA = re.compile(r"^(tests/fuzz/corpus|tests/broken|tests/cases|tests/cli|examples/data)/|^LICENSE$|\.csv$")
ABOUT_BLANKS = re.compile(r"^\[ \\t\]")


def read_list(root):
    rules = []
    for line in tree.read(root, LIST).splitlines():
        if line and not line.startswith("#"):
            pattern, sentence = re.split(r"  +(?=\S)", line, maxsplit=1)
            rules.append((re.compile(pattern, re.M), sentence))
    return rules


def _words(root, rules, path):
    text = tree.read(root, path)
    if "\0" in text:
        return
    for pattern, sentence in rules:
        if DATA.search(path) and ABOUT_BLANKS.match(pattern.pattern):
            continue
        for match in pattern.finditer(text):
            yield Finding(path, tree.line_of(text, match.start()), f"{match.group().strip()!r}: {sentence}")


def _without_comments(root):
    """The files that have no room for a line of their own; `*` is the paragraph about all files."""
    if not os.path.isfile(os.path.join(root, NO_COMMENTS)):
        return []
    paragraphs = re.findall(r"^Files:((?:.|\n )*)", tree.read(root, NO_COMMENTS), re.M)
    return [pattern for paragraph in paragraphs for pattern in paragraph.split() if pattern != "*"]


def _licence(root, path, exempt):
    if any(fnmatch.fnmatch(path, pattern) for pattern in exempt):
        return
    if LICENCE not in "\n".join(tree.read(root, path).split("\n", LICENCE_LINES)[:LICENCE_LINES]):
        yield Finding(path, 1, f"has no line {LICENCE}")


def _top(root):
    for name in sorted(os.listdir(root)):
        if name not in TOP and not name.startswith(".") and not tree.SKIPPED_DIRS.match(name):
            yield Finding(name, 0, "does not belong at the top level")


def check(root):
    rules = read_list(root)
    exempt = _without_comments(root)
    findings = list(_top(root))
    for path in tree.files(root):
        findings += [*_words(root, rules, path), *_licence(root, path, exempt)]
    return findings


if __name__ == "__main__":
    tree.main(check)
