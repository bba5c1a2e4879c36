# SPDX-License-Identifier: Apache-2.0
"""What all checks of the tree share: the list of files, C without its comments, how a finding is printed."""
import collections
import os
import re
import sys

Finding = collections.namedtuple("Finding", "path line text")

SKIPPED_DIRS = re.compile(r"^(\.git|build.*|__pycache__|\.[a-z]+_cache)$")


def files(root, under="", ends=""):
    """Paths below root/under that end so, relative to root, sorted; builds and the version store are no part."""
    found = []
    for where, dirs, names in os.walk(os.path.join(root, under)):
        dirs[:] = [d for d in dirs if not SKIPPED_DIRS.match(d)]
        found += [os.path.relpath(os.path.join(where, n), root) for n in names if n.endswith(ends) and n != ".git"]
    return sorted(found)


def read(root, path):
    with open(os.path.join(root, path), encoding="utf-8", errors="surrogateescape", newline="") as file:
        return file.read()


TOKENS = re.compile(r'/\*.*?\*/|//[^\n]*|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'', re.S)


def _only_newlines(match):
    return re.sub(r"[^\n]", " ", match.group())


def _blank(match, keep_strings):
    text = match.group()
    if text[0] == "/":
        return _only_newlines(match)
    return text if keep_strings else text[0] + " " * (len(text) - 2) + text[-1]


def code(text, keep_strings=False):
    """C text with comments, and the insides of strings, blanked out; every line keeps its number."""
    return TOKENS.sub(lambda match: _blank(match, keep_strings), text)


DIRECTIVE = re.compile(r"^[ \t]*#(?:[^\n\\]|\\.)*", re.M | re.S)
EXTERN_C = re.compile(r'extern\s*"[^"]*"\s*\{')


def outside_directives(plain):
    """The same without lines of the preprocessor and the opening of extern "C", blanked out."""
    return EXTERN_C.sub(_only_newlines, DIRECTIVE.sub(_only_newlines, plain))


def line_of(text, offset):
    return text.count("\n", 0, offset) + 1


DECLARED = re.compile(r"\bRODT_(?:API|INLINE)\b[^;{]*?\b(rodt_\w+)\s*\(")


def public_functions(root):
    """{name: (path, line)} of all functions that the public headers export."""
    found = {}
    for path in files(root, "include", ".h"):
        text = re.sub(r"^[ \t]*#[^\n]*", "", code(read(root, path)), flags=re.M)
        for match in DECLARED.finditer(text):
            found[match.group(1)] = (path, line_of(text, match.start()))
    return found


def report(findings):
    for finding in findings:
        print(f"{finding.path}:{finding.line}: {finding.text}")
    return 1 if findings else 0


def main(check):
    """Runs check(root, further arguments...) on the command line's arguments."""
    sys.exit(report(check(*sys.argv[1:])))
