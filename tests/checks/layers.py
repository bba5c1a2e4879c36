# SPDX-License-Identifier: Apache-2.0
"""Includes point down: library files by the list in layers.txt, everything above the library to its front door."""
import os
import posixpath
import re

import tree
from tree import Finding

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.M)
LIST = "tests/checks/layers.txt"
ABOVE_LIBRARY = ("examples", "bindings")
ONLY_WITH_GMP = {"lib/number.c"}


def read_list(root):
    """{file: (level, subject)}."""
    layers = {}
    for line in tree.read(root, LIST).splitlines():
        if line.strip() and not line.startswith("#"):
            level, subject, *names = line.split()
            layers.update((name, (int(level), subject)) for name in names)
    return layers


def includes(root, path):
    """(line, spelling, the project's file that is meant or None) of each include."""
    text = tree.code(tree.read(root, path), keep_strings=True)
    beside = posixpath.dirname(path)
    for match in INCLUDE.finditer(text):
        name = match.group(2)
        tries = [] if match.group(1) == "<" else [posixpath.normpath(posixpath.join(beside, name)), "lib/" + name]
        tries.append("include/" + name)
        target = next((t for t in tries if os.path.isfile(os.path.join(root, t))), None)
        yield tree.line_of(text, match.start()), name, target


def _wrong(layers, path, name, target):
    """The sentence about one include of the library, or None."""
    if name == "gmp.h" and path not in ONLY_WITH_GMP:
        return "gmp.h belongs to lib/number.c alone"
    if target is None or target == path:
        return None
    if target not in layers:
        return f"includes {target}, which stands in no layer"
    (level, subject), (other_level, other) = layers[path], layers[target]
    if subject != other and other_level > level:
        return f"includes {target}, which is {other_level - level} above it"
    if subject != other and other_level == level:
        return f"includes its peer {target}"
    return None


def _library(root, layers):
    for path in tree.files(root, "lib", (".c", ".h")) + tree.files(root, "include", ".h"):
        if path not in layers:
            yield Finding(path, 1, f"stands in no layer of {LIST}")
            continue
        for line, name, target in includes(root, path):
            sentence = _wrong(layers, path, name, target)
            if sentence:
                yield Finding(path, line, sentence)


def _cycles(root, layers):
    """A file that reaches itself; within one subject the levels alone do not exclude it."""
    direct = {p: {t for _, _, t in includes(root, p) if t and t != p}
              for p in layers if os.path.isfile(os.path.join(root, p))}
    for path in sorted(direct):
        seen, todo = set(), list(direct[path])
        while todo:
            near = todo.pop()
            if near not in seen:
                seen.add(near)
                todo += direct.get(near, ())
        if path in seen:
            yield Finding(path, 1, "includes itself by way of others")


def _above(root):
    for top in ABOVE_LIBRARY:
        for path in tree.files(root, top, (".c", ".h", ".cpp", ".cc", ".i")):
            for line, name, target in includes(root, path):
                inside = target and target.startswith(("lib/", "include/")) and name != "rodtravel/rodtravel.h"
                if inside or name == "gmp.h":
                    yield Finding(path, line, f"includes {name}; above the library only <rodtravel/rodtravel.h> is seen")


def check(root):
    layers = read_list(root)
    return [*_library(root, layers), *_cycles(root, layers), *_above(root)]


if __name__ == "__main__":
    tree.main(check)
