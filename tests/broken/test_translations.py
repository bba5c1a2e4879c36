# SPDX-License-Identifier: Apache-2.0
"""Translations of the library: python3 test_translations.py CATALOGC FILE.po... The files are complete and of today;
changed in one place they are refused, with the line. Prints TAP."""
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from test_broken import report

# (what is changed, the text before, the text after, what --check must say)
CASES = [
    ("a sentence that is not translated", re.compile(r'(msgid "good"\n)msgstr ".*"'), r'\1msgstr ""',
     "not translated, fuzzy, no sentence, or not its English of today: air.good"),
    ("a fuzzy one", re.compile(r'(msgctxt "air.good")'), r"#, fuzzy\n\1",
     "not translated, fuzzy, no sentence, or not its English of today: air.good"),
    ("English that has changed", re.compile(r'msgid "good"'), 'msgid "fine"',
     "not translated, fuzzy, no sentence, or not its English of today: air.good"),
    ("a sentence that does not exist", re.compile(r'msgctxt "air.good"'), 'msgctxt "air.bad"', "no translation of air.good"),
    ("a figure that is left out", re.compile(r'(msgid "above \{bound\}"\nmsgstr) ".*"'), r'\1 "x"',
     "air.edge.above: it leaves out the argument bound"),
    ("an argument that does not exist", re.compile(r'(msgid "above \{bound\}"\nmsgstr) "'), r'\1 "{limit} ',
     "air.edge.above: it has no argument of the name limit"),
    ("a string that does not end", re.compile(r'msgid "good"'), 'msgid "good', "this is no line of a file of translations"),
    ("an escape that does not exist", re.compile(r'msgid "good"'), r'msgid "go\\qod"', "this is no line of a file"),
    ("a word of no meaning", re.compile(r'msgid "good"'), 'msgod "good"', "this is no line of a file of translations"),
    ("a text that stands twice", re.compile(r'(msgid "good")'), r'\1\n\1', "no sentence, or not its English of today"),
    ("a text of the tables that is not translated", re.compile(r'(msgctxt "table"\nmsgid "must hold"\n)msgstr ".*"'), r'\1msgstr ""',
     "not translated, fuzzy, no sentence, or not its English of today: must hold"),
    ("a text of the tables that is left out", re.compile(r'msgctxt "table"\nmsgid "must hold"\nmsgstr ".*"\n'), "",
     "there is no translation of a text of the tables: must hold"),
    ("a text that no table has", re.compile(r'msgid "must hold"'), 'msgid "must not hold"',
     "not translated, fuzzy, no sentence, or not its English of today: must not hold"),
    ("a sentence of a step that is left out", re.compile(r'msgctxt "step.warning.good"\nmsgid ".*"\nmsgstr ".*"\n'), "",
     "there is no translation of step.warning.good"),
    ("a figure of a step that is left out", re.compile(r"(msgctxt \"step.warning.good\"\n.*\nmsgstr \".*)\{required\}"), r"\1",
     "step.warning.good: it leaves out the argument required"),
    ("no header", re.compile(r'^msgid ""\nmsgstr ""\n("[^\n]*\n)+', re.M), "", "the header is missing"),
    ("another rule of plurals", re.compile(r"plural=\(n [^)]*\)"), "plural=(n > 7)", "no rule of Plural-Forms"),
    ("no decimal sign", re.compile(r"X-Decimal-Sign: [.,]"), "X-Decimal-Sign: ;", "X-Decimal-Sign: . or ,"),
]


def run(*command):
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8", check=False)
    return done.returncode, done.stdout


def gettext_results(path):
    """What GNU gettext says of the file, where it is there."""
    if shutil.which("msgfmt"):
        status, said = run("msgfmt", "--check-format", "--check-domain", "-o", "/dev/null", path)
        yield f"{path.name}: msgfmt reads it", status == 0 and "fuzzy" not in said, said


FIGURE = re.compile(r"\d+(?:[.,]\d+)*")


def other_figures(path):
    """Texts of the tables whose translation has not the figures of the English one."""
    entries = re.findall(r'^msgctxt "table"\nmsgid "(.*)"\nmsgstr "(.*)"$', path.read_text(encoding="utf-8"), re.M)
    return [english for english, said in entries if sorted(FIGURE.findall(english)) != sorted(FIGURE.findall(said))]


def results(catalogc, paths, folder):
    for path in paths:
        yield f"{path.name}: the figures of the tables", other_figures(path) == [], other_figures(path)
        yield f"{path.name}: complete and of today", run(catalogc, "--check", path) == (0, ""), run(catalogc, "--check", path)[1]
        yield from gettext_results(path)
        for name, before, after, wanted in CASES:
            changed, count = before.subn(after, path.read_text(encoding="utf-8"), count=1)
            (folder / path.name).write_text(changed, encoding="utf-8")
            status, said = run(catalogc, "--check", folder / path.name)
            yield f"{path.name}: {name}", count == 1 and status == 1 and wanted in said, said
    status, said = run(catalogc, "--start")
    ids = re.findall(r'^msgctxt "(.+)"$', said, re.M)
    sentences = [name for name in ids if name != "table"]
    yield "a new language begins with every sentence", status == 0 and len(sentences) == len(set(sentences)) > 400, said[:200]
    yield "and with every text of the tables", 100 < ids.count("table"), said[-200:]


def main(catalogc, *paths):
    with tempfile.TemporaryDirectory() as folder:
        return report(list(results(catalogc, [Path(path) for path in paths], Path(folder))))


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
