# SPDX-License-Identifier: Apache-2.0
"""The changes that no test can notice (tests/mutants/survivors.txt): each is complete and is about a line that is there."""
import collections
import os
import re

import tree
from tree import Finding

LIST = "tests/mutants/survivors.txt"
CLOSED = re.compile(r"^closed: (.*)$", re.M)

Entry = collections.namedtuple("Entry", "path function line change reason")


def entries(root):
    """(line, its block as lines) of each entry: where, the line, the change, the reason."""
    text, at = CLOSED.sub(lambda match: "#" + match.group()[1:], tree.read(root, LIST)), 1
    for block in re.split(r"\n{2,}", text):
        lines = [line.strip() for line in block.splitlines() if line.strip() and not line.startswith("#")]
        if lines:
            yield tree.line_of(text, text.index(block, at - 1)), lines
        at = text.index(block, at - 1) + len(block)


def read(root):
    """{(path, function, line, change): reason}"""
    return {(*lines[0].split(), *lines[1:3]): lines[3] for _, lines in entries(root) if not _fault(root, lines)}


def closed(root):
    """Files whose every survivor has its reason."""
    return [path for match in CLOSED.finditer(tree.read(root, LIST)) for path in match.group(1).split()]


def _fault(root, lines):
    if len(lines) != 4 or len(lines[0].split()) != 2 or len(lines[3].split()) < 3:
        return "needs four lines: file and function, the line, the change, the reason"
    path, function = lines[0].split()
    text = tree.read(root, path) if os.path.exists(os.path.join(root, path)) else ""
    if not re.search(rf"\b{re.escape(function)}\(", text) and function != "-":
        return f"{path} has no function {function}"
    if lines[1] not in (" ".join(line.split()) for line in text.splitlines()):
        return f"{path} has no such line: {lines[1]}"
    return None


def check(root):
    found, seen = [Finding(LIST, 0, f"there is no {p}") for p in closed(root) if not os.path.exists(os.path.join(root, p))], set()
    for line, lines in entries(root):
        fault = _fault(root, lines) or ("is there twice" if tuple(lines[:3]) in seen else None)
        seen.add(tuple(lines[:3]))
        if fault:
            found.append(Finding(LIST, line, fault))
    return found


if __name__ == "__main__":
    tree.main(check)
