# SPDX-License-Identifier: Apache-2.0
"""Writes the commands of a compiler with every file once, and once more if it is also built with arithmetic in plain C:
once.py COMPILE_COMMANDS.json FILE

A file is in several programs, with other folders of headers and other sizes of buffers, and clang-tidy reads it for each."""
import json
import os
import sys


def main(path, to):
    with open(path, encoding="utf-8") as file:
        commands = json.load(file)
    chosen = {}
    for each in commands:
        source = os.path.normpath(os.path.join(each["directory"], each["file"]))
        chosen.setdefault((source, "-DRODT_EXACT_PLAIN" in each["command"]), each)
    with open(to, "w", encoding="utf-8") as file:
        json.dump(list(chosen.values()), file)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
