# SPDX-License-Identifier: Apache-2.0
"""Runs what the pages for users show, as it is written there: python3 test_readme.py PATH_TO_RODTRAVEL ROOT

The output of a line after `$ ` is compared byte by byte, down to a line `...`; a line of an `sh` block that starts with
`rodtravel` ends with status 0, 1 or 3. Only the day of today may differ. Files and links that a page names must exist.
"""
import os
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import tap

PAGES = ["README.md", "examples/data/README.md"]
FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FILE = re.compile(r"`([\w./-]+\.(?:c|h|i|py|sh|csv|md|txt|json|cases|map|html))`")
LINK = re.compile(r"\]\(([^)#:]+)[^)]*\)")
ELSEWHERE = re.compile(r"gmp\.h|sheet\.html|key\.html|report\.html|filled\.txt|build/lib/docs/reference/index\.html|truck\.csv|yard\.csv|tables_data\.c|step_sentences\.h|inspection\.json|T-114\.json")
TODAY = re.compile(r"on \d{4}-\d\d-\d\d")


def blocks(page):
    return FENCE.findall((ROOT / page).read_text(encoding="utf-8"))


def shown_answers():
    for page in PAGES:
        for _, text in blocks(page):
            for part in re.split(r"^\$ ", text, flags=re.MULTILINE)[1:]:
                line, _, answer = part.partition("\n")
                if line.startswith("rodtravel "):
                    yield page, line, answer


def shown_commands():
    for page in PAGES:
        for kind, text in blocks(page):
            if kind == "sh":
                for line in text.replace("\\\n", " ").splitlines():
                    if line.startswith("rodtravel "):
                        yield page, line


def files_of_tree():
    """All but builds, which other tests may be making and removing at this moment."""
    for folder, folders, names in os.walk(ROOT):
        folders[:] = [name for name in folders if name != ".git" and not name.startswith("build")]
        yield from (Path(folder) / name for name in names)


def missing_files():
    """Files that a page names, by their path from the top or from the page, or by the end of it alone."""
    files = sorted(files_of_tree())
    paths = ["/" + str(path.relative_to(ROOT)) for path in files]
    for page in (path for path in files if path.suffix == ".md"):
        text = page.read_text(encoding="utf-8")
        named = [name for name in FILE.findall(text) if not ELSEWHERE.fullmatch(name)]
        yield from ((page, name) for name in named if not any(path.endswith("/" + name) for path in paths))
        yield from ((page, link) for link in LINK.findall(text) if not (page.parent / link).exists())


def undefined_hops():
    """Functions of the tables "hop by hop" that none of the files in their row defines."""
    command = ROOT / "examples" / "cli"
    for line in (command / "README.md").read_text(encoding="utf-8").splitlines():
        cells = line.split("|")
        names, files = (re.findall(r"`([\w./]+)`", cell) for cell in cells[1:3]) if len(cells) == 5 else ([], [])
        paths = [ROOT / name if name.startswith(("lib/", "examples/")) else command / name for name in files]
        text = "\n".join(path.read_text(encoding="utf-8") for path in paths if path.suffix in (".c", ".h"))
        yield from (f"{name} in {files}" for name in names
                    if re.fullmatch(r"[a-z]\w*", name) and not re.search(rf"^\w[^\n;]*\b{name}\(", text, re.M))


class Readme(unittest.TestCase):
    def setUp(self):
        self.folder = Path(tempfile.mkdtemp())
        self.addCleanup(shutil.rmtree, self.folder)
        shutil.copytree(ROOT / "examples" / "data", self.folder / "examples" / "data")
        (self.folder / "rodtravel").symlink_to(Path(COMMAND).resolve())

    def run_line(self, line):
        path = f"{self.folder}:/usr/local/bin:/usr/bin:/bin"
        return subprocess.run(["sh", "-c", line], cwd=self.folder, capture_output=True, encoding="utf-8", timeout=60,
                              env={"PATH": path, "LC_ALL": "C.UTF-8"}, check=False)

    def test_answers(self):
        count = 0
        for page, line, answer in shown_answers():
            with self.subTest(page=page, line=line):
                result = self.run_line(line + " 2>&1")
                wanted, cut, _ = answer.rstrip("\n").partition("\n...")
                got = TODAY.sub("on DAY", result.stdout.strip("\n"))
                wanted = TODAY.sub("on DAY", wanted.strip("\n"))
                self.assertEqual(got[:len(wanted)] if cut else got, wanted)
                count += 1
        self.assertGreaterEqual(count, 2)

    def test_commands(self):
        count = 0
        for page, line in shown_commands():
            with self.subTest(page=page, line=line):
                result = self.run_line(line)
                self.assertIn(result.returncode, (0, 1, 3), result.stderr)
                count += 1
        self.assertGreaterEqual(count, 5)

    def test_hops_are_functions(self):
        self.assertEqual(list(undefined_hops()), [])

    def test_files_exist(self):
        self.assertEqual([f"{page.relative_to(ROOT)}: {name}" for page, name in missing_files()], [])


if __name__ == "__main__":
    COMMAND, ROOT = sys.argv[1], Path(sys.argv[2])
    tap.main()
