# SPDX-License-Identifier: Apache-2.0
"""Feeds broken tables to the table compiler: python3 test_broken.py TABLEC. The valid set is in good/; each case of
TABLE.cases changes lines of TABLE.csv, and the compiler must then say exactly what the case says, fail, and write nothing.
Prints TAP.

    = NAME          a case begins
    7 TEXT          line 7 becomes TEXT; a line after the last is added, and a line without a text is left out
    ! DIAGNOSTIC    one line of what the compiler must say"""
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
TABLES = ["sources", "chambers", "limits", "rulesets", "vehicle", "aircheck", "volumes", "steps"]


def read_cases(path):
    """(name, {number: text}, diagnostics) of each case."""
    for block in path.read_text(encoding="utf-8").split("\n= ")[1:]:
        name, *lines = block.rstrip("\n").split("\n")
        changes = dict((line.split(" ", 1) + [None])[:2] for line in lines if line[:1].isdigit())
        yield name, changes, "".join(line[2:] + "\n" for line in lines if line.startswith("! "))


class Place:
    """A folder with the valid tables, and the compiler run in it."""

    def __init__(self, compiler, folder):
        self.compiler, self.folder = Path(compiler).resolve(), Path(folder)
        self.restore()

    def restore(self):
        for table in TABLES:
            shutil.copy(HERE / "good" / f"{table}.csv", self.folder)

    def change(self, table, changes):
        path = self.folder / f"{table}.csv"
        lines = dict(enumerate(path.read_text(encoding="utf-8").splitlines(), 1))
        lines.update((int(number), text) for number, text in changes.items())
        path.write_text("".join(lines[n] + "\n" for n in sorted(lines) if lines[n] is not None), encoding="utf-8")

    def compile(self, output="out.c"):
        """(exit status, what was said, the bytes written or None)"""
        written = [self.folder / name for name in (output, "sentences.h", "texts.h")]
        for path in written:
            path.unlink(missing_ok=True)
        outputs = [output] if output == "--check" else [path.name for path in written]
        run = subprocess.run([self.compiler, *outputs, *(f"{table}.csv" for table in TABLES)], cwd=self.folder, text=True,
                             stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
        found = [path.read_bytes() for path in written if path.exists()]
        return run.returncode, run.stdout, b"".join(found) if found else None


def results(place):
    """(name, whether it is right, what the compiler said)"""
    status, said, first = place.compile()
    yield "the valid set compiles without a word", (status, said) == (0, "") and bool(first), said
    yield "the same tables give the same bytes", place.compile() == (0, "", first), said
    yield "--check writes nothing", place.compile("--check") == (0, "", None), said
    for table in sorted(TABLES):
        for name, changes, expected in read_cases(HERE / f"{table}.cases"):
            place.restore()
            place.change(table, changes)
            status, said, written = place.compile()
            yield f"{table}: {name}", (status, said, written) == (1, expected, None) and expected != "", said
    place.restore()
    (place.folder / "limits.csv").unlink()
    status, said, written = place.compile()
    yield "a table that is not there", (status, written) == (1, None) and "limits.csv:0: the file cannot be read\n" in said, said


def report(outcome):
    """Prints the results as TAP, and gives the exit status."""
    print(f"1..{len(outcome)}")
    for number, (name, right, said) in enumerate(outcome, 1):
        print(f"{'ok' if right else 'not ok'} {number} - {name}")
        if not right:
            print("".join(f"# said: {line}\n" for line in said.splitlines()), end="")
    return 0 if all(right for _, right, _ in outcome) else 1


def main(compiler):
    with tempfile.TemporaryDirectory() as folder:
        return report(list(results(Place(compiler, folder))))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
