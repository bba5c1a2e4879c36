# SPDX-License-Identifier: Apache-2.0
"""No C function is longer than 60 lines; outside the tests no C file is longer than 700 and no line wider than 120
(the aim is 110)."""
import re

import tree
from tree import Finding

FUNCTION_LINES = 60
FILE_LINES = 700
COLUMNS = 120


def functions(text):
    """(name, first line, lines) of each function body in a C text."""
    plain = tree.outside_directives(tree.code(text))
    depth, start = 0, 0
    name, first = None, 0
    for match in re.finditer(r"[{};]", plain):
        sign = match.group()
        if sign == "{":
            if depth == 0:
                head = plain[start:match.start()]
                called = re.search(r"(\w+)\s*\(.*\)\s*$", head, re.S)
                name = re.search(r"(\w+)\s*\(", head).group(1) if called else None
                first = tree.line_of(plain, start + len(head) - len(head.lstrip()))
            depth += 1
        elif sign == "}":
            depth = max(0, depth - 1)  # the brace that closes extern "C"
            if depth == 0 and name:
                yield name, first, tree.line_of(plain, match.start()) - first + 1
                name = None
        if depth == 0:
            start = match.end()


def check(root):
    findings = []
    for path in tree.files(root, "", (".c", ".h")):
        text = tree.read(root, path)
        lines = text.splitlines()
        findings += [Finding(path, first, f"{name} has {count} lines; {FUNCTION_LINES} is the most")
                     for name, first, count in functions(text) if count > FUNCTION_LINES]
        if path.startswith("tests/"):
            continue
        if len(lines) > FILE_LINES:
            findings.append(Finding(path, len(lines), f"has {len(lines)} lines; {FILE_LINES} is the most"))
        findings += [Finding(path, i, f"is {len(line)} columns wide; {COLUMNS} is the most")
                     for i, line in enumerate(lines, 1) if len(line) > COLUMNS]
    return findings


if __name__ == "__main__":
    tree.main(check)
