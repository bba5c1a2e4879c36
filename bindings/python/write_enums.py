# SPDX-License-Identifier: Apache-2.0
"""Writes the members of enumerations into a module: write_enums.py WORDS TEMPLATE > MODULE

WORDS is the program of bindings/words.c. In the template the line "# rodt_verdict" becomes the members of that
enumeration, and "# classes" a dict of the classes by those names. A member is called as in C, without the prefix.
"""
import os
import re
import subprocess
import sys


def enumerations(program):
    """The rows of each enumeration, by its name: symbol, number, word, text."""
    found = {}
    for line in subprocess.run([program], check=True, capture_output=True, encoding="utf-8").stdout.splitlines():
        name, *row = line.split("\t")
        rows = found.setdefault(name, []) if name else rows
        if row:
            rows.append(row)
    return found


def members(rows, is_number):
    """RODT_OK is no fault, and has no member."""
    rows = [row for row in rows if row[0] != "RODT_OK"]
    start = os.path.commonprefix([row[0] for row in rows]).rindex("_") + 1
    for symbol, number, word, text in rows:
        yield f"    {symbol[start:]} = {number if is_number else (word, int(number), text)}"


def main(program, template):
    known = enumerations(program)
    classes = {}
    with open(template, encoding="utf-8") as file:
        for line in file.read().splitlines():
            marker = re.fullmatch(r" *# (rodt_\w+|classes)", line)
            header = re.match(r"class (\w+)\(([\w.]+)", line)
            if header:
                name, base = header.groups()
            if not marker:
                print(line)
            elif marker[1] == "classes":
                print("CLASSES = {" + ", ".join(f"{key!r}: {each}" for key, each in classes.items()) + "}")
            else:
                classes[marker[1]] = name
                print(*members(known[marker[1]], base == "enum.IntEnum"), sep="\n")


if __name__ == "__main__":
    main(*sys.argv[1:])
