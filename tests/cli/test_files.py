# SPDX-License-Identifier: Apache-2.0
"""No file is lost: outputs that are inputs, links, what runs that were killed have left, names of every kind.

python3 test_files.py PATH_TO_RODTRAVEL PATH_TO_FAULTS (a library to preload; "" = without)"""
import errno
import fcntl
import json
import os
import re
import resource
import signal
import subprocess
import sys
import tempfile
import time
import unittest
import xml.etree.ElementTree as ElementTree
from pathlib import Path

from dialogue import Dialogue, has_terminals
from tap import main

DATA = Path(__file__).resolve().parent.parent.parent / "examples" / "data"
RECORD, ANSWERS, FLEET = DATA / "inspection.json", DATA / "walkround.txt", DATA / "fleet.csv"
COMMAND, FAULTS = os.path.abspath(sys.argv[1]), sys.argv[2]
COUNTS = b"LLVM_PROFILE_FILE" in Path(COMMAND).read_bytes()  # a program that counts allocates once more at its end
LIMITS = b"family,size,class,limit,unit\n"


def run(*arguments, faults=None, **options):
    environment = {**os.environ, **({"LD_PRELOAD": FAULTS, **faults} if faults else {})}
    options.setdefault("stdin", subprocess.DEVNULL)
    options.setdefault("stdout", subprocess.PIPE)
    result = subprocess.run([COMMAND, *map(str, arguments)], stderr=subprocess.PIPE, check=False, timeout=60,
                            env=environment, **options)
    result.said = " ".join(result.stderr.decode(errors="replace").replace("rodtravel: ", "").split())
    return result


def needs_faults(test):
    return unittest.skipUnless(FAULTS, "no library to preload")(test)


class Folder(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def copy(self, name, source=RECORD):
        file = self.folder / name
        file.write_bytes(source if isinstance(source, bytes) else source.read_bytes())
        return file

    def names(self):
        return sorted(file.name for file in self.folder.iterdir())


class Same(Folder):
    """An output that is an input or another output, by whatever name."""

    def refused(self, *arguments, says=(), **options):
        before = {file.name: file.read_bytes() for file in self.folder.iterdir() if file.is_file()}
        result = run(*arguments, **options)
        self.assertEqual(result.returncode, 2, arguments)
        for words in ("are the same file", *map(str, says)):
            self.assertIn(words, result.said)
        self.assertEqual({file.name: file.read_bytes() for file in self.folder.iterdir() if file.is_file()}, before)

    def test_every_name_of_an_input(self):
        record = self.copy("r.json")
        (self.folder / "soft").symlink_to("r.json")
        os.link(record, self.folder / "hard")
        (self.folder / "up").symlink_to(self.folder)
        for name in ("r.json", "soft", "hard", "./r.json", "up/r.json"):
            for option in ("--html", "--svg", "--record"):
                output = f"{self.folder}/{name}"
                self.refused("report", record, option, output, says=[record, f"{option} {output}"])

    def test_outputs_of_one_name(self):
        (self.folder / "soft").symlink_to("a.html")
        for one, other in (("a.html", "a.html"), ("a.html", "A.HTML"), ("a.html", "./a.html"), ("soft", "a.html"),
                           ("-", "-")):
            pair = [name if name == "-" else f"{self.folder}/{name}" for name in (one, other)]
            for command in (["report", RECORD, "--html", pair[0], "--svg", pair[1]],
                            ["limits", "--html", pair[0], "--svg", pair[1]],
                            ["practice", "--seed", "1", "--sheet", pair[0], "--key", pair[1]],
                            ["practice", "--checks", "--seed", "1", "--sheet", pair[0], "--key", pair[1]]):
                self.refused(*command)
        self.assertEqual(self.names(), ["soft"])

    def test_other_outputs_are_written(self):
        self.assertEqual(run("report", RECORD, "--html", self.folder / "a", "--svg", self.folder / "b").returncode, 1)
        self.assertEqual(run("report", RECORD, "--html", "-", "--svg", self.folder / "b",
                             stdout=open(self.folder / "c", "wb")).returncode, 1)
        self.assertEqual(run("report", RECORD, "--html", "/dev/null", "--svg", "/dev/null").returncode, 1)
        self.assertEqual(self.names(), ["a", "b", "c"])

    def test_every_file_of_every_command(self):
        """Whatever the help calls FILE is in the table of its command: it is not standard output as well."""
        commands = re.findall(r"^  ([a-z]+) ", run("--help").stdout.decode().split("Examples:")[0], re.MULTILINE)
        self.assertIn("cards", commands)
        seen = 0
        for command in commands:
            text = run(command, "--help").stdout.decode()
            options = re.findall(r"^  (--\S+) FILE", text, re.MULTILINE)
            operand = re.search(rf"rodtravel {command} .*(FILE|RECORD)", text) is not None
            file = self.copy("x.json")
            needed = {"stroke": ["30", "2", "3"], "air": ["warning", "60"],
                      "report": ["r"], "walkround": ["r"], "vehicle": ["v"]}
            for arguments in [[option, file] for option in options] + [[file]] * operand:
                more = needed.get(command, []) if len(arguments) == 2 else []
                with open(file, "ab") as same:
                    self.refused(command, *more, *arguments, says=[file, "standard output"], stdout=same)
                seen += 1
        self.assertGreater(seen, 15)

    def test_standard_input_and_output(self):
        record = self.copy("r.json")
        with open(record, "rb") as same:
            self.refused("report", "-", "--html", record, says=["standard input"], stdin=same)
        table = self.copy("f.csv", FLEET)
        with open(table, "rb") as to_read, open(table, "ab") as to_write:
            self.refused("batch", stdin=to_read, stdout=to_write)

    def test_limits(self):
        limits = self.copy("l.csv", LIMITS)
        for command in (["report", RECORD, "--html", limits], ["walkround", limits], ["limits", "--svg", limits]):
            self.refused(*command, "--limits", limits, says=[limits])

    def test_answers(self):
        answers = self.copy("a.txt", ANSWERS)
        self.refused("walkround", answers, "--answers", answers)


class Text(Folder):
    def test_a_very_long_text_is_shown_around_the_place(self):
        """A search from the start for each character took hours."""
        record = json.loads(RECORD.read_text(encoding="utf-8"))
        record["wheel_ends"][0]["released"] = "2" + " " * 900000 + "x" + "y" * 1000
        result = run("report", self.copy("r.json", json.dumps(record).encode()))
        self.assertEqual(result.returncode, 2)
        lines = result.stderr.decode().splitlines()
        self.assertLess(max(map(len, lines)), 81)
        self.assertLess(len(lines), 8)
        shown = next(i for i, line in enumerate(lines) if "xyyy" in line)
        self.assertTrue(lines[shown].strip().startswith("...") and lines[shown].endswith("y..."))
        self.assertEqual(lines[shown + 1].index("^"), lines[shown].index("x"))

    def test_what_is_no_character_of_xml(self):
        for code in (0xFFFE, 0xFFFF, 0xFDD0, 0x1FFFE, 0x10FFFF, 0x1, 0x7F, 0xFFFD):
            record = json.loads(RECORD.read_text(encoding="utf-8"))
            record["unit"] = f"T{chr(code)}1"
            result = run("report", self.copy("r.json", json.dumps(record).encode()), "--svg", "-")
            text = "".join(ElementTree.fromstring(result.stdout).itertext())
            self.assertIn("T\uFFFD1" if code == 0xFFFD else f"T<U+{code:04X}>1", text)


class Descriptors(Folder):
    def test_more_than_a_thousand(self):
        def fill():
            for descriptor in range(3, 1100):
                os.dup2(0, descriptor)
        limit = resource.getrlimit(resource.RLIMIT_NOFILE)
        if limit[0] < 1200:
            self.skipTest("fewer descriptors may be open here")
        file = self.folder / "r.json"
        result = run("walkround", file, "--answers", ANSWERS, "--as-of", "2026-11-20", preexec_fn=fill, close_fds=False)
        self.assertEqual(result.returncode, 1, result.said)


class Names(Folder):
    def test_a_dangling_link_is_written_through(self):
        (self.folder / "there").mkdir()
        for i, text in enumerate(("there/r.html", f"{self.folder}/there/s.html")):
            link = self.folder / f"link{i}"
            link.symlink_to(text)
            self.assertEqual(run("report", RECORD, "--html", link).returncode, 1)
            self.assertTrue(link.is_symlink())
            self.assertIn("</html>", link.read_text(encoding="utf-8"))
        self.assertEqual(sorted(file.name for file in (self.folder / "there").iterdir()), ["r.html", "s.html"])

    def test_links_in_a_circle(self):
        (self.folder / "a").symlink_to("b")
        (self.folder / "b").symlink_to("a")
        result = run("report", RECORD, "--html", self.folder / "a")
        self.assertEqual(result.returncode, 2)
        self.assertIn("could not be written", result.said)
        self.assertEqual(self.names(), ["a", "b"])

    def test_a_protected_file_is_refused(self):
        for command in (["report", RECORD, "--html"], ["walkround"]):
            file = self.copy("r.json")
            file.chmod(0o444)
            result = run(*command, file)
            self.assertEqual(result.returncode, 2)
            self.assertIn("is protected against writing", result.said)
            self.assertEqual(file.read_bytes(), RECORD.read_bytes())
            file.chmod(0o644)
        self.assertEqual(self.names(), ["r.json"])

    def test_the_longest_names(self):
        for size in (237, 238, 239, 248, 249, 254, 255):
            for letter in ("a", "é"):
                name = letter * (size // len(letter.encode()))
                name += "b" * (size - len(name.encode()))
                file = self.folder / name
                for _ in range(2):
                    result = run("report", RECORD, "--html", file)
                    self.assertEqual(result.returncode, 1, result.said)
                file.unlink()
        self.assertEqual(self.names(), [])

    def test_a_record_that_is_too_long(self):
        """What could not be read again is not written."""
        record = json.loads(RECORD.read_text(encoding="utf-8"))
        room = (1 << 20) - len(json.dumps(record).encode()) - 50
        record["remarks"] = "x" * room
        file = self.copy("r.json", json.dumps(record).encode())
        result = run("report", file, "--record", self.folder / "again.json")
        self.assertEqual(result.returncode, 2)
        self.assertIn("longer than 1 MiB", result.said)
        self.assertEqual(self.names(), ["r.json"])


class Left(Folder):
    """What a run that was killed leaves, and two runs at once."""

    def test_only_our_own_is_removed(self):
        record = self.copy("r.json")
        ours = [self.copy(name) for name in ("r.json.rodtravel-a1B2c3", "r.json.rodtravel-ZZZZZZ")]
        others = [self.copy(name) for name in ("r.json.backup", "r.json.rodtravel-notes.txt", "r.json.rodtravel-",
                                               "s.json.rodtravel-a1B2c3")]
        (self.folder / "r.json.rodtravel-FOLDER").mkdir()
        (self.folder / "r.json.rodtravel-LINKED").symlink_to("r.json.backup")
        locked = self.copy("r.json.rodtravel-LOCKED")
        with open(locked, "rb") as writer:
            fcntl.flock(writer, fcntl.LOCK_EX)
            self.assertEqual(run("walkround", record).returncode, 1)
        for file in ours:
            self.assertFalse(file.exists(), file)
        for file in (*others, locked, self.folder / "r.json.rodtravel-FOLDER"):
            self.assertTrue(file.exists(), file)
        self.assertTrue((self.folder / "r.json.rodtravel-LINKED").is_symlink())

    def start(self, *arguments, **faults):
        process = subprocess.Popen([COMMAND, *map(str, arguments)], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                                   stderr=subprocess.PIPE, env={**os.environ, "LD_PRELOAD": FAULTS, **faults})
        self.addCleanup(process.communicate)
        return process

    @staticmethod
    def wait_for(condition):
        for _ in range(2000):
            if condition():
                return True
            time.sleep(0.01)
        return False

    @needs_faults
    def test_a_killed_run(self):
        file = self.folder / "r.html"
        process = self.start("report", RECORD, "--html", file, SLOW_NAMES="20000")
        self.assertTrue(self.wait_for(self.names))
        process.send_signal(signal.SIGKILL)
        process.wait()
        self.assertEqual(len(self.names()), 1)
        self.assertEqual(run("report", RECORD, "--html", file).returncode, 1)
        self.assertEqual(self.names(), ["r.html"])

    @needs_faults
    def test_nobody_takes_a_record_that_was_just_named(self):
        file = self.folder / "r.json"
        first = self.start("walkround", file, SLOW_NAMES="3000")
        self.assertTrue(self.wait_for(file.exists))
        second = run("walkround", file)
        self.assertEqual(second.returncode, 2, second.stdout)
        self.assertIn("another walk-round is writing", second.said)
        out, error = first.communicate(b"yes\n")
        self.assertIn(first.returncode, (1, 3), error)
        self.assertNotIn("not on the disk", " ".join(out.decode().split()))
        self.assertIn("cautions", file.read_text(encoding="utf-8"))

    def test_a_record_that_a_walk_round_holds(self):
        file = self.folder / "r.json"
        walk = subprocess.Popen([COMMAND, "walkround", file], stdin=subprocess.PIPE, stdout=subprocess.DEVNULL)
        self.assertTrue(self.wait_for(file.exists))
        self.assertTrue(self.wait_for(lambda: "another" in run("walkround", file).said))
        before = file.read_bytes()
        result = run("report", RECORD, "--record", file)
        self.assertEqual(result.returncode, 2)
        self.assertIn("another program is writing", result.said)
        self.assertEqual(file.read_bytes(), before)
        walk.communicate(b"yes\n")
        self.assertIn("cautions", file.read_text(encoding="utf-8"))

    def test_a_limit_of_size(self):
        def limit():
            resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))
        file = self.copy("r.html", b"older")
        for command in (["report", RECORD, "--html"], ["practice", "--seed", "1", "--sheet"], ["cards", "--html"]):
            result = run(*command, file, preexec_fn=limit)
            self.assertEqual(result.returncode, 2, command)
            self.assertIn("could not be written: File too large", result.said)
            self.assertEqual((self.names(), file.read_bytes()), (["r.html"], b"older"))
        with open(self.folder / "out", "wb") as out:
            result = run("batch", self.copy("f.csv", FLEET.read_bytes() * 99), preexec_fn=limit, stdout=out)
            self.assertEqual(result.returncode, 2)
            self.assertIn("cannot be written: File too large", result.said)


@needs_faults
class Unconfirmed(Folder):
    """The disk does not confirm the name of a file that is complete: that is told, and is no success."""

    SAYS = "is complete and in its place, but the disk has not confirmed that: Input/output error"

    def test_a_report(self):
        file = self.copy("r.html", b"older")
        result = run("report", RECORD, "--html", file, faults={"FAULT": f"sync once 2 {errno.EIO}"})
        self.assertEqual((result.returncode, result.said), (2, f"{file} {self.SAYS}"))
        self.assertTrue(file.read_bytes().endswith(b"</html>\n"))
        self.assertEqual(self.names(), ["r.html"])

    def test_an_answer(self):
        """The record has the answer; it is not called lost, and the same command goes on after it."""
        file = self.folder / "w.json"
        arguments = ["walkround", file, "--answers", ANSWERS, "--as-of", "2026-11-20"]
        result = run(*arguments, faults={"FAULT": f"sync once 4 {errno.EIO}"})
        self.assertEqual((result.returncode, result.said), (2, f"{file} {self.SAYS}"))
        shown = " ".join(result.stdout.decode().split())
        self.assertIn(f"{file} has this answer. A power failure could still lose it.", shown)
        self.assertNotIn("not saved", shown)
        self.assertIn("cautions", file.read_text(encoding="utf-8"))

    def test_a_person_tries_again(self):
        """In the file, in a new one, or not at all."""
        if not has_terminals():
            self.skipTest("no pseudo-terminal here")
        file, other = self.folder / "w.json", self.folder / "x.json"
        for answer, says, last in (("", "Saved in", file), (str(other), "Saved in", other), ("quit", "", file)):
            talk = Dialogue(COMMAND, file, environment={**os.environ, "LD_PRELOAD": FAULTS, "TERM": "dumb",
                                                        "FAULT": f"sync once 4 {errno.EIO}"})
            talk.prompt()
            talk.answer("yes")
            self.assertTrue(talk.prompts[-1].startswith("Enter tries again"), talk.said)
            self.assertIn("cautions", file.read_text(encoding="utf-8"))
            said = talk.answer(answer)
            self.assertIn(says, said)
            self.assertNotIn("lost", said)
            if answer != "quit":
                talk.answer("T-1")
                self.assertIn("T-1", last.read_text(encoding="utf-8"))
            talk.kill()
            file.unlink()
        self.assertEqual(self.names(), ["x.json"])


@needs_faults
@unittest.skipIf(COUNTS, "it counts")
class Memory(Folder):
    def count(self, *arguments):
        with tempfile.NamedTemporaryFile() as file:
            result = run(*arguments, faults={"COUNT": file.name})
            return result, int(file.read().split()[1])

    def test_no_header_without_rows(self):
        """Nothing is written if the memory fails before the first row: a header alone would look like an empty file."""
        for options in ([], ["--by", "unit_no"], ["--format", "ndjson"], ["--encoding", "windows-1252"]):
            data = b'{"chamber":"30","released":"2","applied":"3"}\n' * 50 if "ndjson" in options else FLEET.read_bytes()
            rows = self.copy("fleet", data)
            arguments = ["batch", rows, "--summary", "--jobs", "1", "--as-of", "2026-11-20", *options]
            rows.write_bytes(data.splitlines(keepends=True)[0] if "ndjson" not in options else b"")
            _, before = self.count(*arguments)
            rows.write_bytes(data)
            whole, count = self.count(*arguments)
            self.assertLess(8, before)
            self.assertLess(before, count)
            for at in range(1, before):
                result = run(*arguments, faults={"FAULT": f"allocate once {at} 0"})
                with self.subTest(options, allocation=at, of=count, said=result.said):
                    self.assertIn(result.returncode, (whole.returncode, 2))
                    self.assertEqual(result.stdout, b"" if result.returncode == 2 else whole.stdout)


if __name__ == "__main__":
    main()
