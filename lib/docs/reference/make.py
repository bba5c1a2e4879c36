# SPDX-License-Identifier: Apache-2.0
"""Makes the reference out of the public headers and the pages beside this folder, by Doxygen.

python3 make.py html|man ROOT VERSION OUTPUT

html  pages for a browser; a symbol without a meaning, or a name that does not exist, is an error
man   a folder of manual pages for section 3
"""
import csv
import os
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import comments
import manual

HERE = Path(__file__).resolve().parent


def code_text(match, links):
    """Names of symbols as links, other code as HTML: Doxygen takes an apostrophe for the end of `code`."""
    if match[1] is None:
        return match[0]
    if links and comments.NAME.fullmatch(match[1]):
        return comments.linked(match[1])
    return f"<code>{comments.escape(match[1])}</code>"


def page_text(page):
    """A page without its line of licence, its code outside of blocks as Doxygen reads it. Changes name what is gone."""
    text = re.sub(r"\A<!--.*?-->\n", "", page.read_text("utf-8"))
    links = page.stem != "changelog"
    return re.sub(r"^```.*?^```|`([^`\n]+)`", lambda match: code_text(match, links), text, flags=re.M | re.S)


STRING = r'"((?:[^"\\]|\\.)*)"'


def templates(root):
    """What each code of a message says in English; the header has no second copy."""
    paths = *sorted((root / "lib/message").glob("english.[ch]")), *(root / "lib/core").glob("sentences.h")
    texts = [path.read_text("utf-8") for path in paths]
    text = "".join(texts).replace("\\\n", "")
    named = {name: "".join(re.findall(STRING, value)) for name, value in re.findall(r"#define (\w+) +(.*)", text)}
    for code, parts in re.findall(r'ENUMERATOR\((RODT_MESSAGE_\w+),((?:[^"()]|"(?:[^"\\]|\\.)*")*)\)', text):
        _, *template = re.findall(STRING + r"|(\b[A-Z]\w+)", parts)
        yield code, "".join(string or named.get(name, "") for string, name in template)
    steps = [line for path in (root / "tables").glob("steps.csv") for line in path.read_text("utf-8").splitlines()]
    for row in csv.DictReader(line for line in steps if not line.startswith("#")):
        for part in ("title", "do", "see", "good", "defective"):
            yield f"RODT_MESSAGE_STEP_{row['step']}_{part}".upper().replace("-", "_"), row[part]


def header_text(header, said):
    """A header with the marks of Doxygen."""
    text = re.sub(r"^( +(RODT_MESSAGE_\w+) = \d+,?)$",
                  lambda line: f'{line[1]} /* "{said[line[2]]}" */' if line[2] in said else line[1],
                  header.read_text("utf-8"), flags=re.M)
    return comments.marked(text)


def stage(root, folder):
    """What Doxygen reads: headers with its marks, and the pages."""
    (folder / "rodtravel").mkdir(parents=True)
    said = dict(templates(root))
    for header in sorted((root / "include/rodtravel").glob("*.h")):
        (folder / "rodtravel" / header.name).write_text(header_text(header, said), "utf-8")
    for page in sorted((root / "lib/docs").glob("*.md")):
        (folder / page.name).write_text(page_text(page), "utf-8")


def doxygen(folder, version, html):
    """Runs it in the folder, and gives its warnings."""
    env = os.environ | {"HERE": str(HERE), "VERSION": version, "HTML": "YES" if html else "NO"}
    done = subprocess.run(["doxygen", str(HERE / "Doxyfile")], cwd=folder, env=env, check=False, capture_output=True,
                          encoding="utf-8")
    lines = [line.replace(str(folder) + os.sep, "") for line in done.stderr.splitlines() if line.strip()]
    return lines + ([f"doxygen ended with {done.returncode}"] if done.returncode else [])


def is_described(element):
    return any("".join(element.find(name).itertext()).strip() for name in ("briefdescription", "detaileddescription"))


def without_meaning(folder):
    """Enumerators, and members of structs, of which Doxygen does not warn."""
    for path in sorted((folder / "xml").glob("*.xml")):
        compound = ElementTree.parse(path).find("compounddef")
        if compound is None:
            continue
        for member in compound.iter("memberdef"):
            parts = member.findall("enumvalue") if member.get("kind") == "enum" else [member] if compound.get("kind") == "struct" else []
            header = Path(member.find("location").get("file")).name
            owner = compound.findtext("compoundname") + "." if compound.get("kind") == "struct" else ""
            yield from (f"{header}: {owner}{part.findtext('name')} is not documented" for part in parts if not is_described(part))


def make(kind, root, version, output):
    """Makes html or man, and gives what is wrong with the headers and the pages."""
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder).resolve()
        stage(root, folder)
        warnings = doxygen(folder, version, kind == "html") + list(without_meaning(folder))
        if kind == "man":
            newest = max(header.stat().st_mtime for header in (root / "include/rodtravel").glob("*.h"))
            manual.write(folder / "xml", version, newest, folder / "man")
        shutil.rmtree(output, ignore_errors=True)
        shutil.copytree(folder / kind, output, ignore=shutil.ignore_patterns("*.js", "*.png", "*.svg", "tabs.css"))
        return warnings


def main(kind, root, version, output):
    warnings = make(kind, root, version, output)
    if kind == "man":  # a newer Doxygen may warn of more, and keeps nobody from installing
        return 0
    print("\n".join(warnings), end="\n" if warnings else "")
    return 1 if warnings else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], Path(sys.argv[2]).resolve(), sys.argv[3], Path(sys.argv[4])))
