# SPDX-License-Identifier: Apache-2.0
"""Do the tests notice? Breaks one operator or number at a time in a copy of the tree, and runs unit and cases.

Arguments: root, an empty directory, how many (spread evenly over lib/). Prints those that no test noticed; they are
places to check, not faults: some changes mean the same."""
import os
import re
import shutil
import subprocess
import sys

import checks.tree as tree

SWAPS = {"<=": "<", ">=": ">", "<": "<=", ">": ">=", "==": "!=", "!=": "==", "&&": "||", "||": "&&", "+": "-", "-": "+",
         "true": "false", "false": "true", "0": "1", "1": "2"}
SPOT = re.compile(r"(?<= )(<=|>=|==|!=|&&|\|\||<|>|\+|-)(?= )|\b(true|false)\b|(?<![\w.'\"])[01](?![\w.'\"])")


def spots(root):
    for path in tree.files(root, "lib", ".c"):
        if not path.startswith("lib/tablec/"):
            text = re.sub(r"^[ \t]*#[^\n]*", lambda m: " " * len(m.group()), tree.code(tree.read(root, path)), flags=re.M)
            yield from ((path, match.start(), match.group()) for match in SPOT.finditer(text))


def noticed(build):
    if subprocess.run(["ninja", "-C", build], capture_output=True, check=False).returncode:
        return None
    return subprocess.run(["meson", "test", "-C", build, "--no-rebuild", "--suite", "unit", "--suite", "cases", "--maxfail", "1"],
                          capture_output=True, check=False).returncode != 0


def main(root, place, wanted):
    copy, build = os.path.join(place, "tree"), os.path.join(place, "build")
    shutil.copytree(root, copy, ignore=shutil.ignore_patterns(".git", "build*", "__pycache__"))
    subprocess.run(["meson", "setup", build, copy, "-Dwerror=false"], check=True, capture_output=True)
    if noticed(build) is not False:
        sys.exit("the tests fail before anything is broken")
    every = list(spots(root))
    chosen = every[::max(1, len(every) // int(wanted))]
    counts = {True: 0, False: 0, None: 0}
    for path, at, word in chosen:
        text = tree.read(root, path)
        with open(os.path.join(copy, path), "w", encoding="utf-8", newline="") as file:
            file.write(text[:at] + SWAPS[word] + text[at + len(word):])
        seen = noticed(build)
        counts[seen] += 1
        if seen is False:
            line = tree.line_of(text, at)
            print(f"{path}:{line}: {word} to {SWAPS[word]} unnoticed: {text.splitlines()[line - 1].strip()}", flush=True)
        shutil.copy(os.path.join(root, path), os.path.join(copy, path))
    print(f"{len(chosen)} of {len(every)} places: {counts[True]} noticed, {counts[False]} unnoticed, {counts[None]} did not build")


if __name__ == "__main__":
    main(*sys.argv[1:])
