# SPDX-License-Identifier: Apache-2.0
"""The reference: every symbol of the public headers has a meaning, every name in a comment exists, and every function
has a manual page that a manual reader takes.

Argument: root."""
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import tree
from tree import Finding

sys.path.append(os.path.join(os.path.dirname(__file__), "../../lib/docs/reference"))
import make  # noqa: E402

INCLUDE = "include/rodtravel"


def _place(warning):
    """Doxygen reads converted headers, whose lines have other numbers."""
    path, _, rest = warning.partition(":")
    number, _, text = rest.partition(":")
    known = os.path.basename(path)
    return Finding(f"{INCLUDE}/{known}" if known.endswith(".h") else known, 0, (text if number.isdigit() else rest).strip())


def _lint(folder):
    if not shutil.which("mandoc"):
        return
    pages = sorted(str(page) for page in folder.iterdir())
    done = subprocess.run(["mandoc", "-T", "lint", "-W", "warning", *pages], check=False, capture_output=True, encoding="utf-8")
    for line in done.stdout.splitlines() + done.stderr.splitlines():
        yield Finding("man3", 0, line.removeprefix("mandoc: ").replace(str(folder) + os.sep, ""))


def check(root):
    with tempfile.TemporaryDirectory() as folder:
        html, man = Path(folder, "html"), Path(folder, "man3")
        findings = [_place(warning) for warning in make.make("html", Path(root), "1.2.3", html)]
        make.make("man", Path(root), "1.2.3", man)
        findings += [Finding(*place, f"{name} has no manual page") for name, place in sorted(tree.public_functions(root).items())
                     if not (man / f"{name}.3").is_file()]
        return findings + list(_lint(man))


if __name__ == "__main__":
    tree.main(check)
