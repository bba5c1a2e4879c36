# SPDX-License-Identifier: Apache-2.0
"""What the library says of itself, for languages whose classes are written during the build, and a zip file of them.

A language is an object with the texts of its members: setter(owner, name), getter(name, kind, of, path) or None for
what it does not read, documented(name, text), and method(name), how a member is called. A line "// inputs of rodt_form"
in a class becomes what sets the members of that record, "// answers of rodt_finding" what reads them; "in count" says
where the record is in the value."""
import html
import os
import pathlib
import re
import subprocess
import tempfile
import zipfile

NUMBERS = ("length", "pressure", "ratio")
WHOLE = ("integer", "unsigned")
TEXTS = ("text", "text-pointer", "rules")
UNITS = {"in": "inches", "in3": "cubic inches", "s": "seconds"}
MARKER = re.compile(r" *// (inputs|answers) of (rodt_\w+)(?: in (\w+))?")


def described(program, *what):
    """The rows of each enumeration or record, by its name; program is that of words.c."""
    found = {}
    for line in subprocess.run([program, *what], check=True, capture_output=True, encoding="utf-8").stdout.splitlines():
        name, *row = line.split("\t")
        rows = found.setdefault(name, []) if name else rows
        if row:
            rows.append(row)
    return found


def comments(headers):
    """What the headers say of the members of each record."""
    found = {}
    for path in sorted(pathlib.Path(headers).glob("*.h")):
        text = path.read_text(encoding="utf-8")
        for body, record in re.findall(r"typedef struct \w+ \{(.*?)\n\} (\w+);", text, re.S):
            said = re.findall(r"(\w+)(?:\[\w+\])?;[ \t]*/\*(.*?)\*/", body, re.S)
            found[record] = {name: html.escape(" ".join(text.split()), quote=False) for name, text in said}
    return found


def class_name(name):
    """Verdict of rodt_verdict."""
    return "".join(part.capitalize() for part in name.split("_")[1:])


def enumerators(rows):
    """(its symbol without the prefix, number, word, text) of each. RODT_OK is no fault, and is none."""
    rows = [row for row in rows if row[0] != "RODT_OK"]
    start = os.path.commonprefix([row[0] for row in rows]).rindex("_") + 1
    return [(symbol[start:], number, word, text) for symbol, number, word, text in rows]


def members(marker, owner, text, records, said, language):
    """What a marker stands for; a name that the class has already is left out."""
    what, record, inside = marker.groups()
    rows = [row for row in records[record] if row[3] == "1"]
    if what == "inputs" and any(row[1] == "text-pointer" for row in rows):
        rows = [row for row in rows if row[1] == "text-pointer"]
    for name, kind, unit, _, of in rows:
        path = f"{inside}.{name}" if inside else name
        made = language.setter(owner, name) if what == "inputs" else language.getter(name, kind, of, path)
        if made and not re.search(rf" {language.method(name)}\b *[({{]", text):
            comment = said.get(record, {}).get(name)
            yield language.documented(name, (f", in {UNITS.get(unit, unit)}" if unit else "") +
                                      (f": {comment}" if comment else "")) + "\n" + made


def filled(path, records, said, language):
    """The text of a class with its members."""
    done = path.read_text(encoding="utf-8")
    for marker in list(re.finditer(MARKER, done)):
        made = "\n".join(members(marker, path.stem, done, records, said, language)).rstrip("\n")
        done = done.replace(marker[0], made, 1)
    return done


def classes(program, headers, given, language):
    """{name: text} of classes, and of the enumerations that they name, by language.enumeration(name, rows). given is
    FILE... -- SWIG ARGUMENT..., whose classes are among them."""
    paths, swig = given[:given.index("--")], given[given.index("--") + 1:]
    records, said = described(program, "records"), comments(headers)
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([*swig[:-1], "-outdir", folder, swig[-1]], check=True)
        texts = {path.stem: filled(path, records, said, language)
                 for path in [*map(pathlib.Path, paths), *pathlib.Path(folder).iterdir()]}
    named = set(re.findall(r"\b[A-Z]\w+", "\n".join(texts.values())))
    for name, rows in described(program).items():
        if class_name(name) in named and class_name(name) not in texts:
            texts[class_name(name)] = language.enumeration(name, enumerators(rows))
    return texts


def wrapped(text, first, more, last=""):
    """A comment of lines that are not too long."""
    lines, line = [], "    " + first
    for word in text.split():
        if len(line) + len(word) > 115:
            lines.append(line)
            line = "    " + more
        line += " " + word
    return "\n".join([*lines, line + last])


def write_zip(out, files, first=""):
    """{name: bytes}, with a fixed time; the same files give the same bytes."""
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for name in sorted(files, key=lambda each: (each != first, each)):
            entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            entry.compress_type, entry.external_attr, entry.create_system = zipfile.ZIP_DEFLATED, 0o644 << 16, 3
            packed.writestr(entry, files[name])
