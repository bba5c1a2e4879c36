# SPDX-License-Identifier: Apache-2.0
"""What the command says in other languages: every say("...") has a translation in every language, with the same
placeholders in the same order; a label fits before its text; nothing is translated that nobody says."""
import re

import tree
from tree import Finding

LANGUAGES = "examples/cli/languages"
STRING = r'"(?:[^"\\]|\\.)*"(?:[\s\\]*(?:[A-Z][A-Z_]+\s*)?"(?:[^"\\]|\\.)*")*'
SAID = re.compile(rf"\b(say|say_number|TO_SAY|print_error)\(\s*({STRING})(?:,\s*({STRING}))?")
STOPPED = re.compile(rf"\bbatch_chunk_stop\([^;\"]*({STRING})")
LINES = re.compile(rf"(?:\bTO_SAY_LINES\(|^    \.help =)\s*({STRING})", re.M)
COMMAND = re.compile(rf"\.(?:operands|summary) =\s*({STRING})")
OPTION = re.compile(rf"\[[A-Z]+_[A-Z_]+\] = \{{\s*\"[a-z-]+\", (NULL|{STRING}),\s*({STRING}),\s*(?:true|false)\}}")
TRANSLATED = re.compile(r"[a-z] |(?!PSI)[A-Z]{3}") # what options take is typed, its placeholder is not
DEFINED = re.compile(r'^#define (\w+) ("[^"\n]*")', re.M)
LABEL = re.compile(rf"print_wrapped\(stdout, (?:[^,;]*\? )?say\(({STRING})\)(?: : say\(({STRING})\))?, INDENT")
PLACEHOLDER = re.compile(r"%(?:[-+#.*\d]*(?:ll|l|z|j)?[a-z])?")  # of printf, or of markup_put
LABEL_COLUMNS = 7


def text_of(literal, defined=None):
    """The text of a string of C or of a .po file, over one or more pairs of quotes, and of names between them."""
    literal = re.sub(r'("(?:[^"\\]|\\.)*")|\b([A-Z]\w+)', lambda m: m.group(1) or (defined or {})[m.group(2)], literal)
    parts = re.findall(r'"((?:[^"\\]|\\.)*)"', literal)
    return "".join(parts).replace("\\n", "\n").replace('\\"', '"').replace("\\\\", "\\")


def lines_of(text):
    """What print_paragraphs looks up: (text, whether a translation is needed). First columns are mostly typed."""
    for line in filter(None, text.split("\n")):
        columns = re.fullmatch(r"( +)(\S.*?)  +(\S.*)", line)
        if columns:
            yield columns.group(2), False
            yield columns.group(3), True
        elif line[0] != " ":
            yield line, True


def texts_of(source, defined):
    """(offset, text, whether a translation is needed) of each text of a file that the command looks up."""
    for match in SAID.finditer(source):
        for literal in match.groups()[1:] if match.group(1) == "say_number" else match.groups()[1:2]:
            yield match.start(), text_of(literal, defined), match.group(1) != "print_error"
    for pattern in (COMMAND, OPTION, STOPPED):
        for match in pattern.finditer(source):
            for literal in match.groups():
                text = text_of(literal, defined) if literal != "NULL" else ""
                yield match.start(), text, TRANSLATED.search(text) is not None
    for match in LINES.finditer(source):
        for text, needed in lines_of(text_of(match.group(1), defined)):
            yield match.start(), text, needed


def said(root):
    """(path, line, text, whether a translation is needed) of each text that the command looks up."""
    paths = tree.files(root, "examples/cli", (".c", ".h"))
    defined = {}
    for path in [*paths, *tree.files(root, "include", ".h")]:
        defined.update(DEFINED.findall(tree.read(root, path)))
    for path in paths:
        source = tree.read(root, path)
        for offset, text, needed in texts_of(source, defined):
            yield path, tree.line_of(source, offset), text, needed


def read_po(root, path):
    """{English: [translations]}; a plural is under both of its forms."""
    found = {}
    for block in re.split(r"\n\s*\n", tree.read(root, path))[1:]:
        entry = {key: text_of(value) for key, value in re.findall(rf"^(msg\w+(?:\[\d\])?) ({STRING})", block, re.M)}
        texts = [value for key, value in entry.items() if key.startswith("msgstr")]
        if "fuzzy" not in block:
            found.update({entry[key]: texts for key in ("msgid", "msgid_plural") if key in entry})
    return found


def check_language(path, found, uses):
    for file, line, text, needed in uses:
        translations = found.get(text, [])
        if needed and (not translations or "" in translations):
            yield Finding(file, line, f"{path} has no translation of: {text}")
        for translation in translations:
            if PLACEHOLDER.findall(translation) != PLACEHOLDER.findall(text):
                yield Finding(path, 0, f"other placeholders than: {text}")
    for text in sorted(found.keys() - {use[2] for use in uses}):
        yield Finding(path, 0, f"nobody says: {text}")


def check_labels(root, path, found):
    for file in tree.files(root, "examples/cli", ".c"):
        source = tree.read(root, file)
        for match in LABEL.finditer(source):
            for literal in filter(None, match.groups()):
                for translation in found.get(text_of(literal), []):
                    if len(translation) > LABEL_COLUMNS:
                        yield Finding(path, 0, f"{translation}: a label has at most {LABEL_COLUMNS} columns")


def check(root):
    uses = list(said(root))
    findings = []
    for path in tree.files(root, LANGUAGES, ".po"):
        found = read_po(root, path)
        findings += [*check_language(path, found, uses), *check_labels(root, path, found)]
    return findings


if __name__ == "__main__":
    tree.main(check)
