# SPDX-License-Identifier: Apache-2.0
"""The changes that no test can notice (tests/mutants/survivors): each is complete and is about a line that is there."""
import collections
import os
import re

import tree
from tree import Finding

FOLDER = "tests/mutants/survivors"
CLOSED = re.compile(r"^closed: (.*)$", re.M)

Entry = collections.namedtuple("Entry", "path line where text changes reason")


def entries(root):
    """(file, its line, the lines of the block): where, the line, its changes, the reason."""
    for path in tree.files(root, FOLDER, (".txt",)):
        text, at = CLOSED.sub(lambda match: "#" + match.group()[1:], tree.read(root, path)), 1
        for block in re.split(r"\n{2,}", text):
            lines = [line.strip() for line in block.splitlines() if line.strip() and not line.startswith("#")]
            at = text.index(block, at - 1) + len(block)
            if lines:
                yield Entry(path, tree.line_of(text, at - len(block)), lines[0], lines[1:2], lines[2:-1], lines[-1])


def places(entry):
    return [(*entry.where.split(), *entry.text, change) for change in entry.changes]


def read(root):
    """{(path, function, line, change): reason}"""
    return {place: entry.reason for entry in entries(root) if not _fault(root, entry) for place in places(entry)}


def closed(root):
    """{file whose every survivor has its reason: where that is said}"""
    return {name: path for path in tree.files(root, FOLDER, (".txt",)) for match in CLOSED.finditer(tree.read(root, path))
            for name in match.group(1).split()}


def _fault(root, entry):
    if not entry.changes or len(entry.where.split()) != 2 or len(entry.reason.split()) < 3 or "->" in entry.reason:
        return "needs four lines or more: file and function, the line, each change, the reason"
    path, function = entry.where.split()
    text = tree.read(root, path) if os.path.exists(os.path.join(root, path)) else ""
    if not re.search(rf"\b{re.escape(function)}\(", text) and function != "-":
        return f"{path} has no function {function}"
    if entry.text[0] not in (" ".join(line.split()) for line in text.splitlines()):
        return f"{path} has no such line: {entry.text[0]}"
    return None


def check(root):
    found = [Finding(path, 0, f"there is no {name}") for name, path in closed(root).items() if not os.path.exists(os.path.join(root, name))]
    seen = set()
    for entry in entries(root):
        fault = _fault(root, entry) or ("is there twice" if seen & set(places(entry)) else None)
        seen |= set(places(entry)) if not fault else set()
        if fault:
            found.append(Finding(entry.path, entry.line, fault))
    return found


if __name__ == "__main__":
    tree.main(check)
