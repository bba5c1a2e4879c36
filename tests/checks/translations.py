# SPDX-License-Identifier: Apache-2.0
"""What the command says in other languages: every say("...") has a translation in every language, with the same
placeholders in the same order; a label fits before its text; nothing is translated that nobody says."""
import collections
import csv
import os
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
# Of a page or a drawing, and what is the same in every language: options, commands, units.
MARKUP = re.compile(r"(?s)<style>.*|^\*\{.*|<[^<>]*>?|^[^<>]*>|[a-z:-]+=\"[^\"]*\"?|&\w+;|--[a-z-]+|rodtravel( [a-z]+)?|kPa|psi")
PRINTED = re.compile(r"\b(?:printf|fprintf|snprintf|puts|fputs|print_\w+|walk_\w+|markup_\w+)\(")
SENTENCE = re.compile(r"[A-Za-z]{2,}[,;:]? [A-Za-z]{2,}")
CAPITALISED = re.compile(r"\b[A-Z][a-z]{2,}")
WORD = re.compile(r"[A-Za-z]{3,}")
TYPED = re.compile(r"[a-z]+(?:[_-][a-z]+)*") # a stable word, or the name of a class in a page
LABEL = re.compile(rf"print_wrapped\(stdout, (?:[^,;]*\? )?say\(({STRING})\)(?: : say\(({STRING})\))?, INDENT")
PLACEHOLDER = re.compile(r"%(?:[-+#.*\d]*(?:ll|l|z|j)?[a-z])?")  # of printf, or of markup_put
LABEL_COLUMNS = 7


# What has words and is the same in every language: paths below the root, and patterns of the whole text.
NO_LANGUAGE = {
    "examples/cli/input/columns.c": ["rule set"], # a heading
    "examples/cli/io/atomic_file.c": [r"%\.\*s\.XXXXXX"], # the name of a file
    "examples/cli/batch/workbook.c": ["/dev/fd/%d"], # a path
    "examples/cli/input/text_file.c": ["SQLite format 3"], # the first bytes of a file
    "examples/cli/io/decompress.c": ["Zstandard"], # a name
    "examples/cli/io/temporary_file.c": ["%s/rodtravel-XXXXXX", "/tmp"], # the same
    "examples/cli/page/command.c": [r"const PAGE = [^;]*;\s*"], # a script
    "examples/cli/practice/checks_ask.c": ["go on"], # typed
    "examples/cli/practice/command.c": ["seed %"], # typed in a file of answers
    "examples/cli/practice/generate.c": ["TYPE "], # stamped on a chamber
    "examples/cli/practice/html.c": [" in STROKE</text>"], # stamped on a chamber
    "examples/cli/practice/text.c": ["Law"], # compared
    "examples/cli/ui/json_writer.c": [r"\\ufffd"], # JSON
    "examples/cli/walkround/answers.c": [r"changed: %\.380s", "one minute"], # of a record; compared
    "examples/cli/walkround/file.c": ["a file"], # of a record
}


def text_of(literal, defined=()):
    """The text of a string of C or of a .po file, over one or more pairs of quotes, and of names between them."""
    literal = re.sub(r'("(?:[^"\\]|\\.)*")|\b([A-Z]\w+)', lambda m: m.group(1) or defined[m.group(2)], literal)
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
            yield match.start(), text_of(literal, defined), True
    for pattern in (COMMAND, OPTION, STOPPED):
        for match in pattern.finditer(source):
            for literal in match.groups():
                text = text_of(literal, defined) if literal != "NULL" else ""
                yield match.start(), text, TRANSLATED.search(text) is not None
    for match in LINES.finditer(source):
        for text, needed in lines_of(text_of(match.group(1), defined)):
            yield match.start(), text, needed


def titles(root):
    """(path, line, text) of the titles of rule sets."""
    path = "tables/rulesets.csv"
    if os.path.exists(os.path.join(root, path)):
        lines = enumerate(tree.read(root, path).splitlines(), 1)
        rows = [(number, line) for number, line in lines if line and not line.startswith("#")]
        for (number, _), row in zip(rows[1:], csv.DictReader(line for _, line in rows)):
            yield path, number, row["title"]


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
    for path, line, text in titles(root):
        yield path, line, text, True


def arguments_end(source, offset):
    """The end of the call whose opening bracket is at offset."""
    depth = 0
    for match in re.finditer(rf"{STRING}|[()]", source[offset:]):
        depth += {"(": 1, ")": -1}.get(match.group(), 0)
        if depth == 0:
            return offset + match.end()
    return len(source)


def is_english(text, is_printed):
    plain = PLACEHOLDER.sub(" | ", MARKUP.sub(" | ", text))
    return SENTENCE.search(plain) or CAPITALISED.search(plain) or (
        is_printed and WORD.search(plain) and not TYPED.fullmatch(text))


def check_unmarked(root):
    """A text with words that is printed and in no language but English."""
    for path in tree.files(root, "examples/cli", (".c", ".h")):
        source = tree.code(tree.read(root, path), keep_strings=True)
        source = re.sub(r"'(?:\\.|[^'\\])'", lambda match: " " * len(match.group()), source)
        source = re.sub(r"#include[^\n]*|_Static_assert\([^;]*", lambda match: " " * len(match.group()), source)
        marked, printed = set(), set()
        for pattern in (SAID, STOPPED, LINES, COMMAND, OPTION):
            for match in pattern.finditer(source):
                marked.update(range(match.start(), match.end()))
        for match in PRINTED.finditer(source):
            printed.update(range(match.start(), arguments_end(source, match.end() - 1)))
        for match in re.finditer(STRING, source):
            text = text_of(match.group(), collections.defaultdict(str))
            known = any(re.fullmatch(pattern, text) for pattern in NO_LANGUAGE.get(path, ()))
            if match.start() not in marked and not known and is_english(text, match.start() in printed):
                yield Finding(path, tree.line_of(source, match.start()), f"in English alone; say it, or add it to NO_LANGUAGE: {' '.join(text.split())}")


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


def check_blanks(root, path):
    """A colon at the start of a line, in French."""
    for number, line in enumerate(tree.read(root, path).splitlines(), 1):
        if path.endswith("fr.po") and line.startswith("msgstr") and re.search(" [:»]|« ", line):
            yield Finding(path, number, "a blank before a colon, or inside quotation marks, is one that does not break")


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
    findings = [*check_unmarked(root)]
    for path in tree.files(root, LANGUAGES, ".po"):
        found = read_po(root, path)
        findings += [*check_language(path, found, uses), *check_labels(root, path, found), *check_blanks(root, path)]
    return findings


if __name__ == "__main__":
    tree.main(check)
