# SPDX-License-Identifier: Apache-2.0
"""What is promised is there: comments of public functions, tests, options of the command.

Arguments: root, and the command if it was built."""
import os
import re
import subprocess

import tree
from tree import Finding

MANUAL = "examples/cli/rodtravel.1"
PROMISES = ("lib/README.md", "DEVELOPERS.md")
OPTION = re.compile(r"(?<![\w-])--[a-z][a-z-]*")
INLINE = re.compile(r"^RODT_INLINE [^(\n]*?\b(rodt_\w+)\(", re.M)


def _comments(root):
    """A function has a comment right above it, or above the lines that lead to it without a blank line."""
    functions = {(path, line): name for name, (path, line) in tree.public_functions(root).items()}
    for path in tree.files(root, "include", ".h"):
        text = tree.read(root, path)
        functions.update({(path, tree.line_of(text, m.start())): m.group(1) for m in INLINE.finditer(text)})
    for (path, line), name in sorted(functions.items()):
        above = tree.read(root, path).splitlines()[:line - 1]
        while above and above[-1].strip() and "*/" not in above[-1]:
            above.pop()
        if not above or "*/" not in above[-1]:
            yield Finding(path, line, f"{name} has no comment")


def _tested(root):
    text = "\n".join(tree.code(tree.read(root, path)) for path in tree.files(root, "tests", ".c"))
    for name, place in sorted(tree.public_functions(root).items()):
        if not re.search(rf"\b{name}\b", text):
            yield Finding(*place, f"{name} is called by no test")


def _help(command):
    """All that the command says of itself: its help, and the help of each subcommand, listed or shown, that it names."""
    def run(*words):
        return subprocess.run([command, *words], capture_output=True, text=True, check=False).stdout
    top = run("--help")
    words = set(re.findall(r"^  ([a-z]+)  ", top, re.M) + re.findall(r"rodtravel ([a-z]+)", top))
    return top + "".join(run(word, "--help") for word in sorted(words))


def _manual(root):
    """In a manual page made with mdoc, an option --json is written Fl -json."""
    return {"-" + name for name in re.findall(r"\bFl (-[a-z][a-z-]*)", tree.read(root, MANUAL))}


def _options(root, command):
    helped = set(OPTION.findall(_help(command)))
    manual = _manual(root)
    for option in sorted(manual - helped):
        yield Finding(MANUAL, 0, f"{option} is in the manual but not in the help")
    for option in sorted(helped - manual):
        yield Finding(MANUAL, 0, f"{option} is in the help but not in the manual")
    yield from _readme_options(root, helped | {"--help", "--version"})


def _readme_options(root, known):
    if not os.path.isfile(os.path.join(root, "README.md")):
        return
    for number, line in enumerate(tree.read(root, "README.md").splitlines(), 1):
        if re.search(r"\brodtravel [a-z]", line):
            for option in sorted(set(OPTION.findall(line)) - known):
                yield Finding("README.md", number, f"{option} is no option of the command")


def _named_tests(root):
    """A promise that names its test names one that is there."""
    for path in PROMISES:
        text = tree.read(root, path) if os.path.isfile(os.path.join(root, path)) else ""
        for match in re.finditer(r"`(tests/[\w/.-]+)`", text):
            if not os.path.exists(os.path.join(root, match.group(1))):
                yield Finding(path, tree.line_of(text, match.start()), f"{match.group(1)} is not there")


def check(root, command=None):
    findings = [*_comments(root), *_tested(root), *_named_tests(root)]
    return findings + list(_options(root, command)) if command else findings


if __name__ == "__main__":
    tree.main(check)
