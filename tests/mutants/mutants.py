# SPDX-License-Identifier: Apache-2.0
"""Do the tests notice? Breaks the library in one small place at a time and runs the test programs that come by it.

    python3 tests/mutants/mutants.py ROOT BUILD [all | NUMBER | FILE-OR-FOLDER...]

All changes of the files that are named are compiled at once, each chosen by a number in the environment; only a changed entry of a
constant table is compiled by itself. NUMBER (60) is a sample, spread evenly. What was found out is kept in BUILD and
used again as long as the function and the test are the same; a change of another function is not looked at, so a
release begins with an empty BUILD. The run fails on a survivor in a closed file that is not in survivors/, and on an entry
there that a test notices or that is no place. MUTANT=NUMBER build/tests/unit/test_X runs a test with a change."""
import collections
import hashlib
import json
import os
import re
import resource
import subprocess
import sys
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "checks"))
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import places  # noqa: E402
import survivors  # noqa: E402
import tree  # noqa: E402

SUITES = ("unit", "cases", "fuzz")
SLOWEST = float(os.environ.get("MUTANTS_SLOWEST", "3"))  # seconds of the processor: tests that take longer are not asked
FILES = 10000  # changes a file can have, as in chosen.h
BUILD_TIME = re.compile(r"^lib/(tablec|catalogc)/")

Mutant = collections.namedtuple("Mutant", "number path function line change key constant place which")
Test = collections.namedtuple("Test", "name command env seconds hash reached")


def digest(*texts):
    return hashlib.sha256("\0".join(texts).encode("utf-8", "surrogateescape")).hexdigest()[:16]


def line_at(text, at):
    return " ".join(text[text.rfind("\n", 0, at) + 1:(text + "\n").find("\n", at)].split())


class Source:
    """One file of the library with its places."""

    def __init__(self, root, build, path, number):
        self.path, self.number = path, number
        command = ["clang", "-std=c11", "-DRODT_BUILDING", "-D_GNU_SOURCE", "-w", f"-I{root}/include", f"-I{root}/lib", f"-I{build}/lib"]
        self.text, found = places.places(command, os.path.join(root, path))
        self.places = [p for p in found if not p.constant]
        self.constants = [p for p in found if p.constant and path.endswith(".c")]
        self.mutants = list(self.number_all(self.places)) + list(self.number_all(self.constants, len(self.places) * 3))

    def number_all(self, found, start=0):
        plain = self.text.encode("latin-1").decode("utf-8", "replace")
        bodies = {name: body for name, body in function_bodies(plain)}
        outside = plain
        for body in bodies.values():
            outside = outside.replace(body, "")
        seen = collections.Counter()
        number = start
        for place in found:
            place.numbers = []
            line = line_at(self.text, place.at).encode("latin-1").decode("utf-8", "replace")
            for which, change in enumerate(place.changes):
                change = change.encode("latin-1").decode("utf-8", "replace")
                spot = (place.function, line, change)
                seen[spot] += 1
                if seen[spot] > 1:
                    change += f" ({seen[spot]})"
                key = digest(self.path, place.function or "", line, change, bodies.get(place.function, ""), outside)
                yield Mutant(self.number * FILES + number, self.path, place.function or "-", line, change, key,
                             place.constant, place, which)
                place.numbers.append(number)
                number += 1
        self.count = number

    def nest(self, left_out):
        """Places in each other, by their offsets; the outermost ones."""
        top, stack = [], []
        for place in sorted((p for p in self.places if id(p) not in left_out), key=lambda p: (p.begin, -p.end)):
            place.inner = []
            while stack and stack[-1].end <= place.begin:
                stack.pop()
            if stack and place.end > stack[-1].end:
                continue
            (stack[-1].inner if stack else top).append(place)
            stack.append(place)
        return top

    def render(self, begin, end, inner):
        out, at = [], begin
        for place in inner:
            if begin <= place.begin and place.end <= end:
                out += [self.text[at:place.begin], self.written(place)]
                at = place.end
        return "".join(out) + self.text[at:end]

    def written(self, place):
        chosen = [f"mutant_{self.number}({n})" for n in place.numbers]
        text = place.write(chosen, [self.render(b, e, place.inner) for b, e, *_ in place.parts])
        missing = self.text.count("\n", place.begin, place.end) - text.count("\n")
        return text + "\n" * max(0, missing)

    def instrumented(self, left_out):
        head = f'#include "../../tests/mutants/chosen.h"\nCHOSEN({self.number}, {max(1, self.count)})\n'
        guard = f"#ifndef CHANGED_{self.number}\n#define CHANGED_{self.number}\n{head}#endif\n#line 1\n"
        return guard + self.render(0, len(self.text), self.nest(left_out))

    def changed(self, mutant):
        """The text with the one change of a constant."""
        place = mutant.place
        return self.text[:place.begin] + place.alone[mutant.which] + self.text[place.end:]


FUNCTION = re.compile(r"^\w[^\n;={}]*?(\w+)\([^;{}]*\)\s*\n?\{\n.*?^\}", re.M | re.S)


def function_bodies(text):
    for match in FUNCTION.finditer(text):
        yield match.group(1), match.group()


def run(command, **more):
    return subprocess.run(command, capture_output=True, check=False, **more)


def limit():
    """For all that is started from here on: a broken program may ask for any amount."""
    resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def children():
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


class Work:
    """The copy of the tree with all changes in it, its build, its tests, and what is known."""

    def __init__(self, root, place, wanted):
        self.root, self.place = os.path.abspath(root), os.path.abspath(place)
        self.copy, self.build = os.path.join(self.place, "tree"), os.path.join(self.place, "build")
        os.makedirs(self.place, exist_ok=True)
        self.kept = os.path.join(self.place, "known.json")
        self.known = json.load(open(self.kept, encoding="utf-8")) if os.path.exists(self.kept) else {}
        self.generated()
        paths = [p for p in tree.files(self.root, "lib", (".c", ".h")) if not BUILD_TIME.match(p)]
        self.sources = {path: Source(self.root, self.plain, path, i + 1) for i, path in enumerate(paths) if is_asked(path, wanted)}
        self.mutants = [m for s in self.sources.values() for m in s.mutants]

    def generated(self):
        """Sentences and tables that the library's own files include."""
        self.plain = os.path.join(self.place, "plain")
        made = os.path.join(self.plain, "lib", "step_sentences.h")
        tables = [os.path.join(self.root, path) for under in ("tables", "lib/tablec") for path in tree.files(self.root, under)]
        if os.path.exists(made) and all(os.path.getmtime(path) < os.path.getmtime(made) for path in tables):
            return
        if not os.path.exists(os.path.join(self.plain, "build.ninja")):
            self.must(["meson", "setup", self.plain, self.root, "-Dwerror=false"])
        self.must(["ninja", "-C", self.plain, "lib/step_sentences.h"])

    @staticmethod
    def must(command):
        done = run(command)
        if done.returncode:
            sys.exit((done.stdout + done.stderr).decode()[-3000:])

    def sync(self):
        """Copies what is new, and writes the files of the library with their changes."""
        wanted = {}
        for path in tree.files(self.root):
            if not path.startswith("."):
                with open(os.path.join(self.root, path), "rb") as file:
                    wanted[path] = file.read()
        for path in self.sources:
            wanted[path] = self.usable(path).encode("latin-1")
        for path in tree.files(self.copy):
            if path not in wanted:
                os.remove(os.path.join(self.copy, path))
        for path, data in wanted.items():
            target = os.path.join(self.copy, path)
            os.makedirs(os.path.dirname(target), exist_ok=True)
            old = open(target, "rb").read() if os.path.exists(target) else None
            if old != data:
                with open(target, "wb") as file:
                    file.write(data)

    def usable(self, path):
        """The file with all changes that a compiler takes together; the rest is left out and named."""
        source, left_out = self.sources[path], set()
        trial = os.path.join(self.place, "trial" + os.path.splitext(path)[1])
        for _ in range(20):
            text = source.instrumented(left_out)
            key = "compiles " + digest(text, path)
            if self.known.get(key):
                break
            with open(trial, "w", encoding="latin-1", newline="") as file:
                file.write(text)
            done = run(["cc", "-fsyntax-only", "-std=gnu11", "-w", "-DRODT_BUILDING", f"-I{self.root}/include", f"-I{self.root}/lib",
                        f"-I{os.path.dirname(os.path.join(self.root, path))}", f"-I{self.plain}/lib", "-x", "c", trial])
            lines = {int(n) for n in re.findall(r"^[^:\n]*:(\d+):\d+: error", done.stderr.decode(), re.M)}
            if not done.returncode:
                self.known[key] = 1
                break
            wrong = {id(p) for p in source.places if lines & set(self.lines(source, p))} - left_out
            if not wrong:
                print(f"{path}: cannot be built with its changes: {done.stderr.decode()[:300]}")
                left_out |= {id(p) for p in source.places}
            left_out |= wrong
        source.left_out = left_out
        return text if len(left_out) < len(source.places) else source.text

    @staticmethod
    def lines(source, place):
        first = tree.line_of(source.text, place.begin)
        return range(first, first + source.text.count("\n", place.begin, place.end) + 1)

    def compile(self):
        if not os.path.exists(os.path.join(self.build, "build.ninja")):
            self.must(["meson", "setup", self.build, self.copy, "-Dwerror=false", "-Dc_args=-w", "-Doptimization=1", "-Ddebug=false"])
        self.programs = self.introspect()
        self.must(["ninja", "-C", self.build, "-j", os.environ.get("JOBS", "1"), *sorted({t for p in self.programs for t in p["targets"]})])

    def introspect(self):
        show = lambda what: json.loads(run(["meson", "introspect", self.build, "--" + what]).stdout)
        targets = {t["id"]: t for t in show("targets")}
        found = []
        for test in show("tests"):
            suites = {s.split(":")[-1] for s in test["suite"]}
            if suites & set(SUITES):
                used = [targets[d] for d in test["depends"]]
                test["targets"] = [os.path.relpath(f, self.build) for t in used for f in t["filename"]]
                test["texts"] = sorted({s for t in used for g in t["target_sources"] for s in g.get("sources", ()) if "/tests/" in s}
                                       | {a for a in test["cmd"] if a.startswith(self.copy) and os.path.exists(a)})
                found.append(test)
        return found

    def hash_of(self, test):
        texts = []
        for path in test["texts"]:
            inside = [os.path.join(w, n) for w, _, ns in os.walk(path) for n in ns] if os.path.isdir(path) else [path]
            texts += [open(p, encoding="latin-1").read() for p in sorted(inside) if "/corpus/" not in p or os.path.isfile(p)]
        cases = {name for text in texts for name in re.findall(r'CASES "/([^"]+)"', text)}
        texts += [open(os.path.join(self.copy, "tests/cases", name), encoding="latin-1").read() for name in sorted(cases)]
        support = os.path.join(self.copy, "tests/unit/support.c")
        return digest(" ".join(test["cmd"]), open(support, encoding="utf-8").read(), *texts)

    def library_hash(self):
        return digest(*(f"{s.number} {s.count} {s.text}" for s in self.sources.values()))

    def measure(self):
        """Each test once without a change: its seconds, and the changes that it comes by."""
        self.tests = []
        now = self.library_hash()
        for test in self.programs:
            mark = self.hash_of(test)
            key = f"reach {test['name']}"
            known, seconds, _ = self.known.get(key, ("", 0, ()))
            if known != now + mark and seconds <= SLOWEST:
                self.known[key] = [now + mark, *self.once(test)]
            _, seconds, reached = self.known[key]
            if seconds <= SLOWEST:
                self.tests.append(Test(test["name"], test["cmd"], test["env"], seconds, mark, frozenset(reached)))
        self.tests.sort(key=lambda t: t.seconds)

    def once(self, test):
        told = os.path.join(self.place, "reached")
        if os.path.exists(told):
            os.remove(told)
        began = children()
        done = run(test["cmd"], cwd=self.build, env={**os.environ, **test["env"], "MUTANT_REACHED": told})
        seconds = children() - began
        if done.returncode or b"\nnot ok" in done.stdout:
            sys.exit(f"{test['name']} fails before anything is broken:\n{done.stdout.decode()[-2000:]}")
        reached = sorted({int(n) for n in open(told).read().split()}) if os.path.exists(told) else []
        return [round(seconds, 3), reached]

    def notices(self, test, number):
        env = {**os.environ, **test.env, "MUTANT": str(number), "MUTANT_SECONDS": str(2 + int(5 * test.seconds)), "CMOCKA_TEST_ABORT": "1"}
        try:
            done = run(test.command, cwd=self.build, env=env, timeout=120, close_fds=False)
        except subprocess.TimeoutExpired:
            return True
        return done.returncode != 0 or b"not ok" in done.stdout

    def judge(self, mutant):
        """True if a test notices, False if none does, None if it does not build."""
        if mutant.constant:
            return self.judge_constant(mutant)
        if id(mutant.place) in self.sources[mutant.path].left_out:
            return None
        return self.ask(mutant, [t for t in self.tests if mutant.number in t.reached])

    lucky = {}  # which test noticed last in a function: it is asked first there

    def ask(self, mutant, tests, prepare=lambda test: True):
        known = self.known.setdefault(mutant.key, {"passed": {}})
        if any(known.get("noticed") == [t.name, t.hash] for t in self.tests):
            return True
        first = known.pop("noticed", [self.lucky.get((mutant.path, mutant.function))])[0]
        for test in sorted(tests, key=lambda t: (t.name != first, t.seconds)):
            if known["passed"].get(test.name) != test.hash:
                if prepare(test) and self.notices(test, mutant.number):
                    known["noticed"] = [test.name, test.hash]
                    self.lucky[mutant.path, mutant.function] = test.name
                    return True
                known["passed"][test.name] = test.hash
        return False

    # A constant is compiled: the object, then each program that is asked.

    def judge_constant(self, mutant):
        known = self.known.get(mutant.key, {})
        if known.get("broken"):
            return None
        compiled = []

        def prepare(test):
            if not compiled:
                compiled.append(self.compile_changed(mutant))
            return compiled[0] and self.link(test)
        seen = self.ask(mutant, self.tests, prepare)  # a table is read past every place of its file
        if compiled:
            self.touched.add(mutant.path)
            if not compiled[0]:
                self.known[mutant.key] = {"passed": {}, "broken": 1}
                return None
        return seen

    touched = set()

    def compile_changed(self, mutant):
        source = self.sources[mutant.path]
        target = os.path.join(self.copy, mutant.path)
        plain = open(target, "rb").read()
        with open(target, "w", encoding="latin-1", newline="") as file:
            file.write(source.changed(mutant))
        try:
            return all(run(c, shell=True, cwd=self.build).returncode == 0 for c in self.objects(mutant.path))
        finally:
            with open(target, "wb") as file:
                file.write(plain)

    def objects(self, path):
        commands = json.load(open(os.path.join(self.build, "compile_commands.json"), encoding="utf-8"))
        return [c["command"] for c in commands if os.path.normpath(os.path.join(self.build, c["file"])) == os.path.join(self.copy, path)
                and re.search(r"lib(rodtravel|column_kernel)\.(so|a)\S*\.p/", c["output"])]

    def link(self, test):
        for target in next(p["targets"] for p in self.programs if p["name"] == test.name):
            commands = run(["ninja", "-C", self.build, "-t", "commands", target]).stdout.decode().splitlines()
            for command in commands:
                links = " -c " not in command and re.search(r"(-o|ar csr\w*) lib/librodtravel\.", command)
                if links or f" -o {target} " in command:
                    if run(command, shell=True, cwd=self.build).returncode:
                        return False
        return True

    def restore(self):
        """The object is newer than all that it is in, so that the next build links again."""
        for path in self.touched:
            for command in self.objects(path):
                self.must(["sh", "-c", f"cd {self.build} && {command}"])
        self.touched.clear()

    def keep(self):
        with open(self.kept + ".new", "w", encoding="utf-8") as file:
            json.dump(self.known, file)
        os.replace(self.kept + ".new", self.kept)


def spot(mutant):
    return mutant.path, mutant.function, mutant.line, mutant.change


def is_asked(path, wanted):
    """Whether a file or its folder is named; a number and "all" ask for every file."""
    return wanted == ["all"] or wanted[0].isdigit() or any(path == w or path.startswith(w.rstrip("/") + "/") for w in wanted)


def chosen(mutants, wanted):
    if wanted[0].isdigit():
        return mutants[::max(1, len(mutants) // int(wanted[0]))]
    return sorted(mutants, key=lambda m: next((i for i, w in enumerate(wanted) if is_asked(m.path, [w])), 0))


def table(results):
    folders = collections.defaultdict(collections.Counter)
    for mutant, seen in results:
        folders[mutant.path.split("/")[1]][seen] += 1
    print(f"{'folder':12} made  built  noticed  survived")
    for name, c in [*sorted(folders.items()), ("all", sum(folders.values(), collections.Counter()))]:
        print(f"{name:12} {sum(c.values()):5} {c[True] + c[False]:5} {c[True]:7} {c[False]:7}")


def main(root, place, *wanted):
    argued, closed = survivors.read(root), survivors.closed(root)
    began = time.monotonic()
    wanted = list(wanted) or ["60"]
    work = Work(root, place, wanted)
    everywhere = {spot(m) for m in work.mutants}
    gone = [e for e in argued if e[0] in work.sources and e not in everywhere]
    work.sync()
    work.compile()
    work.measure()
    work.keep()
    mutants = chosen(work.mutants, wanted)
    print(f"{len(work.mutants)} places, {len(mutants)} asked; ready after {time.monotonic() - began:.0f} s", flush=True)
    limit()
    results, faults, file = [], [], None
    for i, mutant in enumerate(sorted(mutants, key=lambda m: m.constant)):
        if not mutant.constant or mutant.path != file:
            work.restore()
        file = mutant.path
        seen = work.judge(mutant)
        results.append((mutant, seen))
        if seen is False and spot(mutant) not in argued or seen and spot(mutant) in argued:
            wrong = seen or mutant.path in closed
            faults += [mutant] if wrong else []
            state = "is noticed, and yet in survivors/" if seen else "not argued" if wrong else "open"
            print(f"{mutant.path} {mutant.function}\n{mutant.line}\n{mutant.change}\n# {state}, MUTANT={mutant.number}\n", flush=True)
        if i % 200 == 199:
            work.keep()
    work.restore()
    work.keep()
    for entry in gone:
        print("survivors: no such place: " + " | ".join(entry))
    if results:
        table(results)
    print(f"{time.monotonic() - began:.0f} s")
    return 1 if faults or gone else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
