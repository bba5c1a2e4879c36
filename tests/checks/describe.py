# SPDX-License-Identifier: Apache-2.0
"""The library's description of itself has every struct, member, enumeration and enumerator of the public headers, and
every enumeration that counts has its end.

Arguments: root, the program `described`."""
import collections
import re
import subprocess

import tree
from tree import Finding

RECORDS = "lib/describe/records.c"
LISTS = "lib/describe/describe.c"
# Structs of other interfaces.
FOREIGN = {"ArrowSchema", "ArrowArray", "ArrowArrayStream"}
# Every field has a name in files, so none is no row among them.
NO_ROW = "RODT_FIELD_NONE"
# Names of other enumerators begin with that of their enumeration. A status is written more often than any other, and
# rodt_message is a code with arguments.
PREFIXES = {"rodt_status": "RODT_E_", "rodt_message_code": "RODT_MESSAGE_"}
NO_PREFIX = "RODT_OK"
# The stable word is the rest of the name, in small letters with hyphens. A field is named like the members of records,
# and points part the word of a message; a unit and a chamber are written as everybody does.
UNDERSCORES = "rodt_field"
POINTS = "rodt_message_code"
WORDS = {"RODT_AIR_MEASURE_KPA": "kPa", "RODT_AIR_MEASURE_KPA_PER_MINUTE": "kPa-per-minute", "RODT_FAMILY_DD_3": "DD-3"}

STRUCT = re.compile(r"\bstruct\s+(\w+)\s*\{(.*?)\}", re.S)
ENUM = re.compile(r"\benum\s*(\w*)\s*(?:RODT_ENUM_TYPE\s*)?\{(.*?)\}", re.S)
ENUM32 = re.compile(r"RODT_ENUM32\((\w+)\)")
# A pointer to a function is a member too: (*release)(...)
DECLARATOR = re.compile(r"\(\s*\*\s*(\w+)\s*\)|(\w+)\s*((?:\[[^\]]*\]\s*)*)$")

Member = collections.namedtuple("Member", "name type line")
Headers = collections.namedtuple("Headers", "structs enums")  # {name: (path, line, rows)}

# One more than the last enumerator is a macro: a switch that names every enumerator needs no case for it.
END = re.compile(r"^#define (RODT_\w+_END) (\d+) ", re.M)


def _members(body, first):
    for match in re.finditer(r"[^;]+;", body):
        text = match.group()[:-1]
        line = first + body.count("\n", 0, match.start() + len(text) - len(text.lstrip()))
        parts = text.strip().split(",") if "(*" not in text else [text.strip()]
        base = None
        for part in parts:
            name = DECLARATOR.search(part.strip())
            kind = part.strip()[:name.start()].strip() + (name.group(3) or "").strip()
            base = base or part.strip()[:name.start()].strip()
            yield Member(name.group(1) or name.group(2), kind if part is parts[0] else base + (name.group(3) or ""), line)


def _value(text, known):
    plain = re.sub(r"\b(0x[0-9a-fA-F]+|\d+)[uUlL]+\b", r"\1", text)
    return eval(plain, {"__builtins__": {}}, known)  # pylint: disable=eval-used; a constant of our own headers


def _enumerators(body, first):
    known, number = {}, -1
    for match in re.finditer(r"(\w+)\s*(?:=([^,]+))?(?:,|$)", body.rstrip()):
        number = _value(match.group(2), known) if match.group(2) else number + 1
        known[match.group(1)] = number
        yield match.group(1), number, first + body.count("\n", 0, match.start())


def headers(root):
    """The structs and enumerations that the public headers define."""
    structs, enums = {}, {}
    for path in tree.files(root, "include", ".h"):
        text = tree.outside_directives(tree.code(tree.read(root, path)))
        for found, pattern, rows in ((structs, STRUCT, _members), (enums, ENUM, _enumerators)):
            for match in pattern.finditer(text):
                line = tree.line_of(text, match.start())
                name = match.group(1) or f"enum of {path}:{line}"
                found[name] = (path, line, list(rows(match.group(2), tree.line_of(text, match.start(2)))))
    return Headers({name: row for name, row in structs.items() if name not in FOREIGN}, enums)


def _rows(program):
    out = subprocess.run([program], check=True, capture_output=True, text=True).stdout
    return [line.split(" ") for line in out.splitlines()]


def sizes(program):
    """{record: its size in bytes}"""
    return {row[1]: int(row[2]) for row in _rows(program) if row[0] == "record"}


def described(program):
    """({record: {member: its row}}, {enumeration: {symbol: (number, word)}}) as the library says."""
    records, enums = {}, {}
    for row in _rows(program):
        if row[0] == "record":
            records[row[1]] = {}
        elif row[0] == "member":
            records[row[1]][row[2]] = row
        elif row[0] == "enumeration":
            enums[row[1]] = {}
        else:
            enums[row[1]][row[2]] = (int(row[3]), " ".join(row[4:]))
    return records, enums


def _compare_struct(name, where, rows):
    path, line, members = where
    if rows is None:
        return [Finding(path, line, f"struct {name} is not in {RECORDS}: describe it, and add it to EACH_RECORD")]
    found = []
    for member in members:
        enum = ENUM32.match(member.type)
        if member.name not in rows:
            found.append(Finding(path, member.line, f"{name}.{member.name} is not in {RECORDS}: add a row to {name}"))
        elif enum and rows[member.name][7] != enum.group(1):
            found.append(Finding(path, member.line, f"{name}.{member.name} is {enum.group(1)} here and "
                                                    f"{rows[member.name][7]} in {RECORDS}"))
        elif member.name.startswith("reserved") and rows[member.name][6] != "reserve":
            found.append(Finding(path, member.line, f"{name}.{member.name} is {rows[member.name][6]} in {RECORDS}: "
                                                    "make it RESERVE"))
    names = [member.name for member in members]
    if not found and names != list(rows):
        found.append(Finding(path, line, f"{RECORDS} has the members of {name} in another order, or more of them: "
                                         f"{', '.join(rows)}"))
    return found


def ends(root):
    """{name: number} of the macros that are one more than the last enumerator."""
    return {name: int(number) for path in tree.files(root, "include", ".h")
            for name, number in END.findall(tree.read(root, path))}


def _compare_end(name, where, known):
    path, line, enumerators = where
    known = known | {symbol: number for symbol, number, _ in enumerators}
    last = max((number for symbol, number, _ in enumerators if symbol != NO_ROW), default=-1)
    end = PREFIXES.get(name, name.upper() + "_").replace("_E_", "_STATUS_") + "END"
    if known.get(end) != last + 1:
        yield Finding(path, line, f"{end} is {known.get(end, 'not defined')}; it is {last + 1}, one more than the last "
                                  f"of {name}")


def _has_word(name, symbol, word):
    rest = symbol[len(PREFIXES.get(name, name.upper() + "_")):] if symbol != NO_PREFIX else "OK"
    plain = word.replace(".", "-") if name == POINTS else word
    return plain == WORDS.get(symbol, rest.lower() if name == UNDERSCORES else rest.lower().replace("_", "-"))


def _compare_enum(name, where, rows):
    path, line, enumerators = where
    if rows is None:
        return [Finding(path, line, f"enum {name} is not in {LISTS}: give it WORDS in words.c of its layer and add it "
                                    "to the list")]
    found = []
    for symbol, number, at in enumerators:
        if symbol != NO_ROW and rows.get(symbol, (None,))[0] != number:
            found.append(Finding(path, at, f"{symbol} = {number} is not in words.c of its layer: add a row to WORDS "
                                           f"of {name}"))
        prefix = PREFIXES.get(name, name.upper() + "_")
        if symbol != NO_PREFIX and not symbol.startswith(prefix):
            found.append(Finding(path, at, f"{symbol} is of {name}: call it {prefix}..."))
        elif symbol in rows and not _has_word(name, symbol, rows[symbol][1]):
            found.append(Finding(path, at, f'"{rows[symbol][1]}" is not the word that {symbol} spells'))
    words = [word for _, word in rows.values()]
    return found + [Finding(path, line, f'two enumerators of {name} have the word "{word}"')
                    for word in sorted(set(words)) if words.count(word) > 1]


def check(root, program):
    there = headers(root)
    records, enums = described(program)
    findings = []
    for name, where in there.structs.items():
        findings += _compare_struct(name, where, records.get(name))
    bits = {row[1] for row in _rows(program) if row[0] == "enumeration" and row[2] == "bits"}
    known = ends(root)
    for name, where in there.enums.items():
        findings += _compare_enum(name, where, enums.get(name))
        findings += [] if name in bits else _compare_end(name, where, known)
    findings += [Finding(RECORDS, 0, f"{name} is in no public header") for name in records.keys() - there.structs.keys()]
    findings += [Finding(LISTS, 0, f"{name} is in no public header") for name in enums.keys() - there.enums.keys()]
    return findings


if __name__ == "__main__":
    tree.main(check)
