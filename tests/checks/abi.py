# SPDX-License-Identifier: Apache-2.0
"""The binary interface is the one that is kept in tests/abi/rodtravel.abi: functions with their types, sizes and
offsets of records, numbers of enumerators, constants that callers compile in, on machines of 64 bits.

Arguments: root, the program `described`; --refresh before them keeps the interface as it is now."""
import os
import re
import sys

import describe
import tree
from tree import Finding

KEPT = "tests/abi/rodtravel.abi"
HEAD = "# SPDX-License-Identifier: Apache-2.0\n# Written by tests/checks/abi.py --refresh; see tests/README.md.\n"
REFRESH = "`python3 tests/checks/abi.py --refresh . BUILD/tests/checks/described`, and commit " + KEPT
GREW = "the interface grew; programs that are built already still work. Keep it as it is now: " + REFRESH
BROKE = ("programs that are built already would break. Undo it, or raise `soversion` in lib/meson.build, the node in "
         "lib/rodtravel.map and the version, say so in lib/docs/changelog.md, and keep it as it is now: " + REFRESH)
# The library gives pointers to these, and nobody else makes one: they may grow at their end.
ROWS = {"rodt_source", "rodt_chamber_row", "rodt_limit", "rodt_air_limit", "rodt_volume_row", "rodt_enumerator",
        "rodt_member"}

FUNCTION = re.compile(r"\bRODT_(?:API|INLINE)\b([^;{]*?)\b(rodt_\w+)\s*\(([^;{]*?)\)\s*[;{]")
# Ends of enumerations grow with them, and a version is there to change.
CONSTANT = re.compile(r"^#define[ \t]+(?!RODT_\w*VERSION|\w+_END\b)(RODT_\w+)[ \t]+((?:U?INT64_C)?[(\d\"-][^\n]*)", re.M)
NAME_OF_PARAMETER = re.compile(r"(?<=[\s*)])\w+(?=(?:\[[^\]]*\])?$)")


def _parameter(text):
    text = re.sub(r"\s+", " ", text).strip()
    return NAME_OF_PARAMETER.sub("", text).strip() if " " in text else text


def functions(root):
    """{name: the line that is kept} of the public functions."""
    found = {}
    for path in tree.files(root, "include", ".h"):
        text = tree.outside_directives(tree.code(tree.read(root, path)))
        for match in FUNCTION.finditer(text):
            gives = re.sub(r"\s+", " ", re.sub(r"\bRODT_MUST_CHECK\b", "", match.group(1))).strip()
            # A comma inside of a macro's parentheses is none between parameters.
            takes = ", ".join(_parameter(part) for part in re.split(r",(?![^(]*\))", match.group(3)))
            found[match.group(2)] = f"function {match.group(2)} {gives} ({takes})"
    return found


def constants(root):
    """{name: value} of the macros that are numbers or texts."""
    found = {}
    for path in tree.files(root, "include", ".h"):
        found.update(CONSTANT.findall(tree.code(tree.read(root, path), keep_strings=True)))
    return {name: re.sub(r"\s+", " ", value).strip() for name, value in found.items()}


def interface(root, program):
    """{what it is about: its line}."""
    lines = {f"function {name}": line for name, line in functions(root).items()}
    lines.update({f"constant {name}": f"constant {name} {value}" for name, value in constants(root).items()})
    records, enums = describe.described(program)
    for name, members in records.items():
        for member, row in members.items():
            offset, size, count, kind = row[3:7]
            lines[f"member {name} {member}"] = f"member {name} {member} at {offset} {count} x {size} {kind}"
    for name, size in describe.sizes(program).items():
        lines[f"record {name}"] = f"record {name} {size}"
    for name, rows in enums.items():
        for symbol, (number, word) in rows.items():
            lines[f"enumerator {symbol}"] = f"enumerator {symbol} {number} {word}"
    return lines


def _key(line):
    words = line.split(" ")
    return " ".join(words[:3 if words[0] == "member" else 2])


def _size(lines, record):
    return int(lines.get(f"record {record}", "record - 0").split(" ")[2])


def _is_compatible(key, old, new, kept, now):
    """True for a reserve that became smaller, and for a row that grew."""
    record = key.split(" ")[1]
    same_size = _size(kept, record) == _size(now, record) > 0
    if key.startswith("record "):
        return record in ROWS and _size(kept, record) <= _size(now, record)
    return old.endswith(" reserve") and same_size and (new is None or new.endswith(" reserve"))


def check(root, program):
    now = interface(root, program)
    lines = tree.read(root, KEPT).splitlines() if os.path.exists(os.path.join(root, KEPT)) else []
    kept = {_key(line): line for line in lines if line and not line.startswith("#")}
    numbers = {_key(line): i for i, line in enumerate(lines, 1)}
    changed = [(key, old, now.get(key)) for key, old in kept.items() if now.get(key) != old]
    findings = [Finding(KEPT, numbers[key], f'"{old}" is now "{new or "gone"}"') for key, old, new in changed]
    findings += [Finding(KEPT, 0, f'"{now[key]}" is new') for key in sorted(now.keys() - kept.keys())]
    breaks = any(not _is_compatible(key, old, new, kept, now) for key, old, new in changed)
    return findings + ([Finding(KEPT, 0, BROKE if breaks else GREW)] if findings else [])


def refresh(root, program):
    lines = sorted(interface(root, program).values())
    with open(os.path.join(root, KEPT), "w", encoding="utf-8", newline="\n") as file:
        file.write(HEAD + "".join(f"{line}\n" for line in lines))
    return []


if __name__ == "__main__":
    if sys.argv[1:2] == ["--refresh"]:
        del sys.argv[1]
        tree.main(refresh)
    tree.main(check)
