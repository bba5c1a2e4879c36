# SPDX-License-Identifier: Apache-2.0
"""Whatever fails, and whenever a run is ended: a right answer or a sentence, whole files or the old ones, nothing left.

python3 test_faults.py PATH_TO_RODTRAVEL PATH_TO_RODTRAVEL_SMALL PATH_TO_FAULTS [long]

Each command line of ROWS runs with one fault after the other, made by faults.c. `long` tries every place of every
fault; without it some places, chosen by FAULTS_SEED, which is printed."""
import errno
import os
import random
import re
import resource
import shlex
import signal
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path
from typing import NamedTuple

from tap import main

DATA = Path(__file__).resolve().parent.parent.parent / "examples" / "data"
COMMAND, SMALL, FAULTS = map(os.path.abspath, sys.argv[1:4])
LONG = "long" in sys.argv[4:]
SEED = int(os.environ.get("FAULTS_SEED", random.randrange(10**6)))
RANDOM = random.Random(SEED)
MEMORY = "/dev/shm" if os.access("/dev/shm", os.W_OK) else None  # a disk would be asked to sync ten thousand times
SECONDS = 120  # only an endless run is stopped
OLDER = b"older"
NO_PROFILE = {"LLVM_PROFILE_FILE": "/dev/null"}  # counts of coverage would be cut off, too
# What they find ends the program with a status that it has not. They look for leaks by system calls of their own.
SANITIZERS = {"ASAN_OPTIONS": "verify_asan_link_order=0:detect_leaks=0:allocator_may_return_null=1:exitcode=99",
              "UBSAN_OPTIONS": "exitcode=99:print_stacktrace=1"}
TEMPORARY = re.compile(r"(.+)\.rodtravel-[A-Za-z0-9]{6}")


# --- What runs -----------------------------------------------------------------------------------------------------

class Row(NamedTuple):
    line: str
    writes: tuple = ()
    stdin: str = os.devnull
    small: bool = False  # with blocks of a few bytes, so that a short file is many chunks

    @property
    def arguments(self):
        return shlex.split(self.line)

    @property
    def name(self):
        return f"{self.line}{' < ' * (self.stdin != os.devnull)}{self.stdin.replace(os.devnull, '')}"


DAY = "--as-of 2026-11-20"
ROWS = [
    Row(f"stroke 30 '2 1/8' '4 1/8' --class standard --psi 95 --why {DAY}"),
    Row(f"stroke 30 2 4 --limits limits.csv --json {DAY}"),
    Row(f"stroke 24L 2 '4 1/2' --rated 3 --division 1/16 --speak --language fr {DAY}"),
    Row(f"vehicle truck.csv --brakes 10 {DAY}"),
    Row(f"vehicle - --limits limits.csv --json {DAY}", stdin="truck.csv"),
    Row("air build-up --seconds 38 --from 85 --to 100 --rules us-cdl --speak"),
    Row("air cut-out 131 --limits air_limits.csv --json"),
    Row(f"identify --stamp 30 --port square {DAY}"),
    Row(f"identify --diameter '8 1/8' --family clamp --json {DAY}"),
    Row(f"limits {DAY}"),
    Row(f"limits 24L --rated 3 --json --limits limits.csv {DAY}"),
    Row(f"limits --html l.html --svg l.svg --limits limits.csv {DAY}", ("l.html", "l.svg")),
    Row("cards"),
    Row("cards --rules us-cdl --vehicle combination --towed 1 --html c.html", ("c.html",)),
    Row(f"batch fleet.csv --summary --jobs 1 {DAY}"),
    Row(f"batch - --by unit_no --summary {DAY}", stdin="fleet.csv"),
    Row(f"batch fleet.csv --by unit_no --summary --json {DAY}"),
    Row(f"batch fleet.csv --by unit_no --format csv {DAY}", small=True),
    Row(f"batch fleet.csv --jobs 2 --limits limits.csv --summary {DAY}", small=True),
    Row(f"batch rows.ndjson --format ndjson --jobs 2 {DAY}", small=True),
    Row(f"batch releves.csv --separator ; --decimal-comma --encoding windows-1252 --column chamber=Récepteur "
        f"--column 'released=Relâché (po)' --column 'applied=Serré (po)' --date-order dmy --no-cache {DAY}"),
    Row("report inspection.json"),
    Row("report - --limits limits.csv --json", stdin="inspection.json"),
    Row("report inspection.json --html r.html --svg r.svg --record again.json", ("r.html", "r.svg", "again.json")),
    Row("report inspection.json --html - --svg r.svg --language es", ("r.svg",)),
    Row("practice --seed 7 --sheet s.html --key k.txt", ("s.html", "k.txt")),
    Row("practice --seed 7 --answers practice.txt"),
    Row("practice --seed 7 --answers - --json", stdin="practice.txt"),
    Row("practice --seed 7 --describe", stdin="typed.txt"),
    Row("practice --seed 7 --checks --rules ca-on --sheet s.html --key k.html", ("s.html", "k.html")),
    Row("practice --seed 7 --checks", stdin="typed.txt"),
]


PAGE = Row("page --html p.html --service-worker w.js", ("p.html", "w.js"))
if subprocess.run([COMMAND, "page"], capture_output=True, check=False).returncode == 0:  # it was built with it
    ROWS.append(PAGE)


class Walk(NamedTuple):
    """A walk-round: its record may be one that so many of the answers make."""
    line: str
    again: str  # how one goes on with the record
    answered: int = 0  # by an earlier run
    until: int = 1000

    stdin = "answers"
    small = False
    arguments = Row.arguments
    name = Row.name


GO_ON = "walkround w.json --answers -"
WALKS = [
    Walk(f"{GO_ON} {DAY}", GO_ON, until=24),
    Walk(f"{GO_ON} --speak", GO_ON, answered=24),
    Walk(f"{GO_ON} --from inspection.json --limits limits.csv {DAY}", f"{GO_ON} --limits limits.csv", until=1),
]
LINES = [line for line in (DATA / "walkround.txt").read_bytes().splitlines(keepends=True) if line[:1] != b"#"]

LIMITS = b"family,size,class,limit\nclamp,30,standard,1 3/4\n"
AIR_LIMITS = b"check,vehicle,comparison,value,measure,source\ncut-out,,not-more-than,130,psi,\n"
PRACTICE = b"seed 7\n1L: 1 1/16; 1 3/4; in; within-limit\n1R: 2; 2 1/2; in; 1\nvehicle: 1 1/2; below\n"
TYPED = b"2\n3 1/16\n1 1/16\n?\nnone\nin\n\n2 1/16 x\nskip\n\n1\ngood\ngo\nstop\nquit\n"


class Outcome(NamedTuple):
    status: int
    out: bytes
    said: bytes
    files: dict


def spread(last, most):
    """The places 1 to last: all of them, or so many, with the first two and the last."""
    if LONG or last <= most:
        return range(1, last + 1)
    return sorted({1, 2, last, *RANDOM.sample(range(1, last + 1), most - 2)})


def has_sentence(said):
    return b"rodtravel: " in said and len(said.split()) > 2


def same_beginning(a, b):
    return len(os.path.commonprefix([a, b]))


class Runs(unittest.TestCase):
    """Runs command lines in a folder of inputs, and judges what comes of it."""

    @classmethod
    def setUpClass(cls):
        folder = tempfile.TemporaryDirectory(dir=MEMORY)
        cls.addClassCleanup(folder.cleanup)
        cls.folder = Path(folder.name)
        files = {name: (DATA / name).read_bytes() for name in ("fleet.csv", "releves.csv", "inspection.json")}
        files |= {"rows.ndjson": (DATA / "readings.ndjson").read_bytes(),
                  "truck.csv": (DATA / "demo_vehicle.csv").read_bytes(), "limits.csv": LIMITS,
                  "air_limits.csv": AIR_LIMITS, "practice.txt": PRACTICE, "typed.txt": TYPED, "answers": b""}
        for name, data in files.items():
            (cls.folder / name).write_bytes(data)
        cls.inputs = set(files)
        cls.whole, cls.states = {}, {}

    def setUp(self):
        self.bad, self.runs = [], 0

    def tearDown(self):
        print(f"# {self.runs} runs, {len(self.bad)} bad")

    def expect(self, good, row, fault, what, outcome):
        if not good:
            said = (outcome.said or outcome.out)[-200:].decode(errors="replace")
            self.bad.append(f"{row.name} | {fault}: {what} (status {outcome.status}, {said!r}, {sorted(outcome.files)})")

    def finish(self):
        for text in self.bad[:40]:
            print("#", text)
        self.assertEqual(len(self.bad), 0)

    # --- Running --------------------------------------------------------------------------------------------------

    def run_line(self, row, arguments=None, faults=None, **options):
        """Options are those of subprocess."""
        self.runs += 1
        with open(self.folder / row.stdin, "rb") as stdin, tempfile.TemporaryFile(dir=MEMORY) as out:
            options = {"stdin": stdin, "stdout": out, "stderr": subprocess.PIPE, **options}
            result = subprocess.run([SMALL if row.small else COMMAND, *(arguments or row.arguments)], **options,
                                    cwd=self.folder, check=False, timeout=SECONDS, env=self.environment(faults))
            return Outcome(result.returncode, self.all_of(out), result.stderr or b"", self.outputs())

    @staticmethod
    def environment(faults):
        return {**os.environ, "LC_ALL": "C", **SANITIZERS, **({"LD_PRELOAD": FAULTS, **faults} if faults else {})}

    @staticmethod
    def all_of(file):
        file.seek(0)
        return file.read()

    def outputs(self):
        return {file.name: file.read_bytes() for file in self.folder.iterdir() if file.name not in self.inputs}

    def attempt(self, row, **options):
        self.begin(row)
        return self.run_line(row, **options)

    def begin(self, row):
        """Older files stand at the places of the outputs."""
        self.clean()
        if isinstance(row, Walk):
            self.begin_walk(row, row.until)
        else:
            for name in row.writes:
                (self.folder / name).write_bytes(OLDER)

    def clean(self):
        for name in self.outputs():
            (self.folder / name).unlink()

    def whole_of(self, row):
        """How it is if nothing fails."""
        if row not in self.whole:
            outcome = self.attempt(row)
            self.assertIn(outcome.status, (0, 1, 3), (row, outcome.said))
            self.assertEqual(sorted(outcome.files), sorted(["w.json"] if isinstance(row, Walk) else row.writes), row)
            self.assertTrue(all(len(data) > 100 for data in outcome.files.values()), row)
            self.whole[row] = outcome
        return self.whole[row]

    def rows(self):
        """All of them, when it is known how each is if nothing fails."""
        for row in ROWS + WALKS:
            self.whole_of(row)
            if isinstance(row, Walk):
                self.states_of(row)
            yield row

    def counts_of(self, row):
        with tempfile.NamedTemporaryFile(dir=MEMORY) as file:
            self.attempt(row, faults={"COUNT": file.name})
            return self.read_counts(file)

    @staticmethod
    def read_counts(file):
        return {kind: int(count) for kind, count in map(str.split, file.read().decode().splitlines())}

    def attempt_counted(self, row, fault, kind):
        """With how many calls there were: the order of a seeded table differs from run to run."""
        with tempfile.NamedTemporaryFile(dir=MEMORY) as file:
            outcome = self.attempt(row, faults={"FAULT": fault, "COUNT": file.name})
            return outcome, self.read_counts(file).get(kind, 0)

    # --- Judging --------------------------------------------------------------------------------------------------

    def judge(self, row, fault, outcome, silent=False):
        """Right in all, or refused with a sentence."""
        whole = self.whole_of(row)
        if outcome.status == 2:
            self.expect(silent or has_sentence(outcome.said), row, fault, "no sentence", outcome)
        else:
            self.expect(outcome.status == whole.status, row, fault, f"the status is not {whole.status}", outcome)
            self.expect(outcome.out == whole.out, row, fault, "another output", outcome)
            self.expect(silent or outcome.said == whole.said, row, fault, "other remarks", outcome)
            self.expect(outcome.files == whole.files, row, fault, "other files", outcome)
        self.judge_files(row, fault, outcome)

    def judge_files(self, row, fault, outcome, left=False):
        """Every file is right or as it was; a run that was killed may leave temporary ones."""
        names = {name for name in outcome.files if not (left and TEMPORARY.fullmatch(name))}
        if isinstance(row, Walk):
            self.judge_record(row, fault, outcome)
            self.expect(names <= {"w.json"}, row, fault, "files that are no outputs", outcome)
            return
        whole = self.whole_of(row)
        self.expect(names == set(row.writes), row, fault, "other files than the outputs", outcome)
        for name in names & set(row.writes):
            self.expect(outcome.files[name] in (OLDER, whole.files[name]), row, fault, f"{name} is broken", outcome)
        if row.arguments[0] == "batch" and "--json" not in row.arguments:  # one object that is cut off is none
            self.expect(whole.out.startswith(outcome.out) and outcome.out[-1:] in (b"", b"\n"), row, fault,
                        "no beginning of whole rows", outcome)

    # --- Walk-rounds ----------------------------------------------------------------------------------------------

    def begin_walk(self, walk, until):
        """The record so far, and the answers from there on."""
        if walk.answered:
            records = self.states_of(WALKS[0])[0]
            record = next(record for record, count in records.items() if count == walk.answered)
            self.clean()
            (self.folder / "w.json").write_bytes(record)
        (self.folder / "answers").write_bytes(b"".join(LINES[walk.answered:until]))

    def states_of(self, walk):
        """The records in their order, how many answers each has, and how much is printed when the next question is
        asked. Some answers bring a second change of the record, which is saved by itself."""
        if walk not in self.states:
            whole, names = self.whole_of(walk), self.counts_of(walk)["name"]
            answered, printed = {}, {}
            for until in range(walk.answered, min(walk.until, len(LINES)) + 1):
                self.clean()
                self.begin_walk(walk, until)
                outcome = self.run_line(walk)
                answered.setdefault(outcome.files["w.json"], until)
                printed[until] = same_beginning(outcome.out, whole.out)
            between = [self.attempt(walk, faults={"FAULT": f"name from {place} {errno.EIO}"}).files.get("w.json")
                       for place in range(1, names + 1)]
            records, count = {}, walk.until
            for record in reversed([*between, whole.files["w.json"]]):
                count = answered.get(record, count)
                records[record] = count
            self.states[walk] = records, printed
        return self.states[walk]

    def judge_record(self, walk, fault, outcome):
        """No answer is missing after which another question was asked. Returns how many there are, or None."""
        records, printed = self.states_of(walk)
        shown = same_beginning(outcome.out, self.whole_of(walk).out)
        needed = [count for count in sorted(records.values()) if printed.get(count, shown + 1) <= shown]
        record = outcome.files.get("w.json")
        self.expect(record is None or record in records, walk, fault, "the record is broken", outcome)
        missing = needed and records.get(record, -1) < needed[-1]
        self.expect(not missing, walk, fault, "an answer is missing", outcome)
        return records.get(record)

    def go_on(self, walk, fault, outcome):
        """The next run takes the record up, and removes what was left."""
        answered = self.judge_record(walk, fault, outcome)
        begun = "w.json" in outcome.files
        (self.folder / "answers").write_bytes(b"".join(LINES[answered if begun else walk.answered:walk.until]))
        again = self.run_line(walk, shlex.split(walk.again) if begun else walk.arguments)
        self.expect(again.files == self.whole_of(walk).files, walk, fault, "another record in the end", again)


# --- What fails ----------------------------------------------------------------------------------------------------

INJECTIONS = [
    ("allocate", "once", 0), ("allocate", "from", 0), ("thread", "once", 0), ("thread", "from", 0),
    ("read", "once", errno.EIO), ("read", "half", errno.EIO),
    ("write", "once", errno.ENOSPC), ("write", "from", errno.EIO), ("write", "half", errno.ENOSPC),
    ("write", "once", errno.EPIPE), ("say", "once", errno.EIO), ("say", "from", errno.ENOSPC),
    ("open", "once", errno.EMFILE), ("open", "from", errno.EROFS), ("close", "once", errno.EIO),
    ("sync", "once", errno.EIO), ("sync", "from", errno.ENOSPC), ("name", "once", errno.EACCES),
    ("name", "from", errno.EPERM), ("remove", "once", errno.EIO), ("look", "once", errno.EIO),
    ("look", "from", errno.EACCES), ("lock", "once", errno.EAGAIN), ("lock", "from", errno.ENOLCK),
    ("change", "once", errno.EPERM), ("copy", "once", errno.EMFILE), ("list", "once", errno.EIO),
    ("wait", "once", errno.ENOMEM), ("pipe", "once", errno.EMFILE),
]


class Failures(Runs):
    """One call fails, or all from one on."""

    @staticmethod
    def must_be_told(kind, how):
        """Where there are no links, a file is renamed."""
        return kind in ("write", "sync") or (kind == "name" and how == "from")

    def inject(self, kind, how, number):
        """A reader of records has hundreds of allocations, each of which may lose a byte of a text."""
        for row in self.rows():
            last = self.counts_of(row)[kind]
            all_of_it = how == "once" and row.line == "report inspection.json"
            for place in spread(last, last if all_of_it else 6 if kind == "allocate" else 3):
                fault = f"{kind} {how} {place} {number}"
                outcome, reached = self.attempt_counted(row, fault, kind)
                silent = kind == "say" or (number == errno.EPIPE and row.arguments[0] == "batch")
                self.judge(row, f"{fault} of {last}", outcome, silent)
                told = outcome.status == 2 or reached < place or not self.must_be_told(kind, how)
                self.expect(told, row, fault, "is not told", outcome)
                if isinstance(row, Walk) and RANDOM.random() < 0.1:
                    self.go_on(row, fault, outcome)
        self.finish()


for of_kind in INJECTIONS:
    setattr(Failures, "test_" + "_".join(map(str, of_kind)), lambda self, what=of_kind: self.inject(*what))


class Parts(Runs):
    """Reads and writes that move less than was asked for, or are interrupted, change nothing."""

    def every_row(self, fault):
        for row in self.rows():
            yield row, self.attempt(row, faults={"FAULT": fault})

    def test_short(self):
        for most in (1, 2, 7, 1000):
            for row, outcome in self.every_row(f"any short {most} 0"):
                self.expect(outcome == self.whole[row], row, f"short {most}", "not the same", outcome)
        self.finish()

    def test_interrupted(self):
        """What reads and writes while signals can come goes on; the rest may say that it was interrupted."""
        for kind in ("read", "write", "wait", "open", "close", "sync"):
            for row, outcome in self.every_row(f"{kind} interrupt 2 0"):
                self.judge(row, f"{kind} interrupted", outcome)
                rows = row.arguments[0] == "batch" and not {"--limits", "--by"} & set(row.arguments)
                if kind in ("wait", "close") or (kind in ("read", "write") and rows):
                    self.expect(outcome == self.whole[row], row, f"{kind} interrupted", "not the same", outcome)
        self.finish()

    def test_stopped_and_continued(self):
        """A job that is put into the background and back."""
        for row in self.rows():
            for place in spread(self.counts_of(row)["any"], 2):
                process = self.stopped(row, f"any after {place} {signal.SIGSTOP:d}")
                self.expect(process == self.whole[row], row, f"stopped at {place}", "not the same", process)
        self.finish()

    def stopped(self, row, fault):
        self.begin(row)
        self.runs += 1
        with open(self.folder / row.stdin, "rb") as stdin, tempfile.TemporaryFile(dir=MEMORY) as out, \
                tempfile.TemporaryFile(dir=MEMORY) as said:
            process = subprocess.Popen([SMALL if row.small else COMMAND, *row.arguments], stdin=stdin, stdout=out,
                                       stderr=said, cwd=self.folder, env=self.environment({"FAULT": fault}))
            os.waitid(os.P_PID, process.pid, os.WSTOPPED | os.WEXITED | os.WNOWAIT)
            process.send_signal(signal.SIGCONT)
            status = process.wait(SECONDS)
            return Outcome(status, self.all_of(out), self.all_of(said), self.outputs())


class Kills(Runs):
    """A signal comes before or after any call: what is there is right or old, and the next run makes all of it."""

    def kill(self, row, number, fault):
        outcome = self.attempt(row, faults={"FAULT": f"{fault} {number:d}"})
        self.expect(outcome.status in (-number, 0, 1, 2, 3), row, fault, "the status", outcome)
        self.expect(outcome.status != 2 or has_sentence(outcome.said), row, fault, "no sentence", outcome)
        self.judge_files(row, fault, outcome, left=True)
        if isinstance(row, Walk):
            self.go_on(row, fault, outcome)
        else:
            again = self.run_line(row)
            self.expect(again == self.whole_of(row), row, fault, "another answer of the next run", again)

    def every_row(self, number):
        for row in self.rows():
            last = self.counts_of(row)["any"]
            for _ in range(max(1, 1000 // len(ROWS + WALKS) // 4) if LONG else 1):
                self.kill(row, number, f"any {RANDOM.choice(('before', 'after'))} {RANDOM.randint(1, last)}")
        self.finish()

    def test_around_a_name(self):
        """Where a file gets its name, everything has to be in it."""
        for row in self.rows():
            for place in spread(self.counts_of(row)["name"], 6):
                for how in ("before", "after"):
                    self.kill(row, signal.SIGKILL, f"name {how} {place}")
        self.finish()

    def test_kill(self):
        self.every_row(signal.SIGKILL)

    def test_terminate(self):
        self.every_row(signal.SIGTERM)

    def test_interrupt(self):
        self.every_row(signal.SIGINT)

    def test_hang_up(self):
        self.every_row(signal.SIGHUP)


# --- How it is called ------------------------------------------------------------------------------------------------

class Streams(Runs):
    def test_closed(self):
        """A file must not take the place of a stream that is closed."""
        for row in self.rows():
            whole = self.whole_of(row)
            for closed in ((0,), (1,), (2,), (0, 1), (0, 2), (1, 2), (0, 1, 2)):
                outcome = self.attempt(row, preexec_fn=lambda which=closed: [os.close(i) for i in which])
                lost = (1 in closed and whole.out) or (0 in closed and row.stdin != os.devnull)
                self.judge(row, f"closed {closed}", outcome, silent=2 in closed)
                self.expect(outcome.status == (2 if lost else whole.status), row, f"closed {closed}", "the status",
                            outcome)
        self.finish()

    def test_full(self):
        for row in self.rows():
            whole = self.whole_of(row)
            for stream, said in (("stdout", whole.out), ("stderr", whole.said)):
                with open("/dev/full", "wb") as full:
                    outcome = self.attempt(row, **{stream: full})
                self.judge(row, f"{stream} full", outcome, silent=stream == "stderr")
                self.expect(outcome.status == (2 if said else whole.status), row, f"{stream} full", "the status",
                            outcome)
            for name in row.writes if isinstance(row, Row) else ():
                self.clean()
                outcome = self.run_line(row, ["/dev/full" if word == name else word for word in row.arguments])
                self.expect(outcome.status == 2 and has_sentence(outcome.said), row, "--option /dev/full", "the status",
                            outcome)
        self.finish()

    def test_nobody_reads(self):
        for row in self.rows():
            whole = self.whole_of(row)
            reader, writer = os.pipe()
            os.close(reader)
            outcome = self.attempt(row, stdout=writer)
            os.close(writer)
            self.expect(outcome.status in (-signal.SIGPIPE, 2) or not whole.out, row, "no reader", "the status", outcome)
            self.judge_files(row, "no reader", outcome)
        self.finish()

    def test_limit_of_size(self):
        for row in self.rows():
            whole = self.whole_of(row)
            most = max(map(len, [whole.out, *whole.files.values()]))
            for size in {0, 1, most // 2, most - 1}:
                outcome = self.attempt(row, faults=NO_PROFILE, preexec_fn=lambda to=size: resource.setrlimit(
                    resource.RLIMIT_FSIZE, (to, to)))
                self.judge(row, f"at most {size} bytes", outcome)
                self.expect(outcome.status == 2, row, f"at most {size} bytes", "the status", outcome)
        self.finish()

    def test_many_descriptors(self):
        if resource.getrlimit(resource.RLIMIT_NOFILE)[1] < 1400:
            self.skipTest("fewer descriptors may be open here")

        def fill():
            resource.setrlimit(resource.RLIMIT_NOFILE, (1400, resource.getrlimit(resource.RLIMIT_NOFILE)[1]))
            for descriptor in range(3, 1303):
                os.dup2(0, descriptor)
        for row in self.rows():
            whole = self.whole_of(row)
            outcome = self.attempt(row, preexec_fn=fill, close_fds=False)
            self.expect(outcome == whole, row, "1300 descriptors", "not the same", outcome)
        self.finish()


class Lines(Runs):
    def test_every_command(self):
        """A new command, or a new option that names a file, needs a row."""
        commands = re.findall(r"^  ([a-z]+)  +\S", self.say("--help").split("Examples:")[0], re.MULTILINE)
        words = {row.arguments[0]: set() for row in ROWS + WALKS + [PAGE]}
        self.assertEqual(set(commands), set(words))
        for row in ROWS + WALKS + [PAGE]:
            words[row.arguments[0]].update(row.arguments)
        for command in commands:
            files = set(re.findall(r"^  (--\S+) (?:FILE|LAST)", self.say(command, "--help"), re.MULTILINE))
            self.assertLessEqual(files, words[command], command)

    @staticmethod
    def say(*arguments):
        return subprocess.run([COMMAND, *arguments], stdout=subprocess.PIPE, check=True).stdout.decode()

    def test_an_output_that_is_an_input(self):
        """By its name and by links."""
        for row in ROWS:
            for output in row.writes:
                for name in self.inputs & {*row.arguments, row.stdin}:
                    before = (self.folder / name).read_bytes()
                    for link in (None, os.link, os.symlink):
                        self.clean()
                        if link:
                            link(self.folder / name, self.folder / output)
                        outcome = self.run_line(row, [name if word == output and not link else word
                                                      for word in row.arguments])
                        same = (self.folder / name).read_bytes() == before
                        self.expect(outcome.status == 2 and has_sentence(outcome.said) and same, row, name,
                                    "is not refused", outcome)
        self.finish()

    def test_long_arguments(self):
        """The longest that the system passes on, in the place of each; a search from the start for each character, or
        a sum of ever longer parts, does not end within the limit."""
        def limit():
            resource.setrlimit(resource.RLIMIT_CPU, (20, 20))
        for row in ROWS:
            for i, word in enumerate(row.arguments[1:], 1):
                for text in LONG_TEXTS if LONG else RANDOM.sample(LONG_TEXTS, 1):
                    if not word.startswith("--"):
                        outcome = self.attempt_with(row, i, text(131000), preexec_fn=limit)
                        self.expect(outcome.status in (0, 1, 2, 3), row, f"a long {word}", "the status", outcome)
                        self.expect(outcome.status != 2 or has_sentence(outcome.said), row, f"a long {word}",
                                    "no sentence", outcome)
        self.finish()

    def attempt_with(self, row, place, word, **options):
        self.clean()
        return self.run_line(row, [*row.arguments[:place], word, *row.arguments[place + 1:]], **options)

    def test_long_texts_in_files(self):
        """A text of a megabyte in the place of each cell, entry and line."""
        def limit():
            resource.setrlimit(resource.RLIMIT_CPU, (20, 20))
        for row in ROWS:
            for name in sorted(self.inputs & {*row.arguments, row.stdin}):
                before = (self.folder / name).read_bytes()
                parts = list(re.finditer(rb'[^,;\n"]+', before))
                for part in RANDOM.sample(parts, min(len(parts), 20 if LONG else 2)):
                    text = RANDOM.choice(LONG_TEXTS)((1 << 20) - len(before) - 100).encode()
                    (self.folder / name).write_bytes(before[:part.start()] + text + before[part.end():])
                    outcome = self.attempt(row, preexec_fn=limit)
                    what = f"a long {part[0].decode(errors='replace')} in {name}"
                    self.expect(outcome.status in (0, 1, 2, 3), row, what, "the status", outcome)
                    self.expect(outcome.status != 2 or has_sentence(outcome.said), row, what, "no sentence", outcome)
                    (self.folder / name).write_bytes(before)
        self.finish()


LONG_TEXTS = [lambda size: "2" + " " * (size - 2) + "x", lambda size: "9" * size, lambda size: "1/" * (size // 2),
              lambda size: "\u00e9" * (size // 2), lambda size: "2 1/8 in " * (size // 9), lambda size: "-" * size,
              lambda size: "(" * size, lambda size: "0." + "0" * (size - 3) + "1", lambda size: "30 " * (size // 3)]


if __name__ == "__main__":
    print("# FAULTS_SEED", SEED)
    main()
