# SPDX-License-Identifier: Apache-2.0
"""Tests of the conformance kit.

    test_kit.py kept JUDGE                  the kept files are what generate.py makes, and small.jsonl keeps to the schema
    test_kit.py runner JUDGE                run.py names what a judge says wrongly, whatever it does wrong
    test_kit.py full JUDGE COMMAND...       a judge answers every vector there is
    test_kit.py table JUDGE BUILD           table.py names the binding of a build that has a fault, and what is not built

JUDGE is the program of judge.c. Prints TAP."""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import generate
import run

SMALL = generate.HERE / "small.jsonl"


def kept_files(judge):
    for what, name in (("small", "small.jsonl"), ("schema", "vector.schema.json"), ("digests", "digests.txt"),
                       ("public", "public.txt")):
        kept = (generate.HERE / name).read_text(encoding="utf-8").splitlines()
        made = generate.lines(judge, what)
        changed = [f"{name}:{at}: {old!r} is kept, {new!r} is made"
                   for at, (old, new) in enumerate(zip(kept, made), 1) if old != new]
        yield f"{name} is what generate.py makes: python3 tests/conformance/generate.py JUDGE {what}", changed + (
            [f"{name}: {len(kept)} lines are kept, {len(made)} made"] if len(kept) != len(made) else [])


# --- The schema ------------------------------------------------------------------------------------------------------

TYPES = {"object": dict, "array": list, "string": str, "integer": int, "null": type(None)}


def fits(value, schema):
    """True if a value keeps to the part of JSON Schema that the kit's has."""
    types = schema.get("type", [])
    types = [types] if isinstance(types, str) else types
    checks = [not types or any(isinstance(value, TYPES[name]) for name in types), value in schema.get("enum", [value])]
    if isinstance(value, str):
        checks.append(re.search(schema.get("pattern", ""), value))
    if isinstance(value, dict):
        known, more = schema.get("properties", {}), schema.get("additionalProperties", True)
        checks.append(set(schema.get("required", [])) <= set(value))
        checks += [fits(inner, known[name]) if name in known else fits(inner, more) if isinstance(more, dict) else more
                   for name, inner in value.items()]
    if isinstance(value, list):
        checks += [fits(inner, schema.get("items", {})) for inner in value]
    if "anyOf" in schema:
        checks.append(any(fits(value, one) for one in schema["anyOf"]))
    return all(checks)


def broken(vector):
    """The same vector in ways that no schema may accept."""
    yield {**vector, "id": 7}
    yield {**vector, "more": ""}
    yield {name: vector[name] for name in vector if name != "answer"}
    yield {**vector, "question": {**vector["question"], "ask": "weight"}}
    yield {**vector, "answer": {**vector["answer"], "error": {"status": "no-such-status", "field": "", "column": 0}}}
    yield {**vector, "answer": {**vector["answer"], "colour": "red"}}


def keeps_to_schema():
    schema = json.loads((generate.HERE / "vector.schema.json").read_text(encoding="utf-8"))
    vectors = [json.loads(line) for line in SMALL.read_text(encoding="utf-8").splitlines()]
    yield "small.jsonl keeps to the schema", [vector["id"] for vector in vectors if not fits(vector, schema)]
    yield "the schema refuses broken vectors", [str(wrong) for vector in vectors for wrong in broken(vector)
                                                if fits(wrong, schema)]
    yield "every kind of question is asked", sorted(
        set(schema["properties"]["question"]["properties"]["ask"]["enum"]) ^ {vector["question"]["ask"] for vector in vectors})


# --- The runner ------------------------------------------------------------------------------------------------------

# Answers of a sound judge, and what a bad one makes of them.
FAULTS = {
    "another verdict": 'line.replace("out-of-adjustment", "in-adjustment")',
    "a number not in lowest terms": 'line.replace(\'"7/4"\', \'"14/8"\')',
    "a number that is none": 'line.replace(\'"7/4"\', "1.75")',
    "a reason too many": 'line.replace(\'"reasons":[\', \'"reasons":["drum-hot",\')',
    "another column": 'line.replace(\'"column":1}\', \'"column":2}\')',
    "an answer left out": '"" if number == 3 else line',
    "an answer twice": 'line * 2 if number == 3 else line',
    "an answer too many": 'line * 2 if number + 1 == len(lines) else line',
    "what is no JSON": '"yes\\n" if number == 3 else line',
    "JSON that is no object": '"[]\\n" if number == 3 else line',
    "no answer at all": '""',
    "another order": '"".join(reversed(lines[number:number + 2])) if number == 0 else "" if number == 1 else line',
}
BAD_JUDGE = """import subprocess, sys
if "--describe" in sys.argv:
    sys.exit(subprocess.run(sys.argv[1:]).returncode)
lines = subprocess.run([sys.argv[1]], stdin=sys.stdin, stdout=subprocess.PIPE, encoding="utf-8").stdout.splitlines(True)
sys.stdout.reconfigure(encoding="utf-8")
for number, line in enumerate(lines):
    sys.stdout.write(%s)
"""


def run_kit(*command):
    return subprocess.run([sys.executable, "-B", str(generate.HERE / "run.py"), *command], stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, encoding="utf-8")


def last_but_one(done):
    return (["", ""] + done.stdout.splitlines())[-2]


def runner(judge):
    count = len(SMALL.read_text(encoding="utf-8").splitlines())
    sound = run_kit(judge)
    yield "a sound judge passes", [] if (sound.returncode, last_but_one(sound)) == (
        0, f"{count} of {count} answers are right") and "as published" in sound.stdout else [sound.stdout, sound.stderr]
    with tempfile.TemporaryDirectory() as folder:
        for what, change in FAULTS.items():
            path = os.path.join(folder, "bad.py")
            with open(path, "w", encoding="utf-8") as file:
                file.write(BAD_JUDGE % change)
            done = run_kit(sys.executable, path, judge)
            named = " right is " in done.stdout or f"{count + 1} answers to {count} questions" in done.stdout
            yield f"a judge with {what} is caught", [] if done.returncode == 1 and named else [done.stdout, done.stderr]
        yield from other_vectors(judge, folder)
        yield from generator_refuses(judge, folder)
    away = run_kit(os.path.join(folder, "gone"))
    yield "a judge that is not there is no failed judge", [] if away.returncode == 2 and away.stderr else [away.stdout]
    early = run_kit(sys.executable, "-c", "raise SystemExit(3)")
    yield "a judge that ends early is caught", [] if early.returncode == 1 and "status 3" in early.stdout else [early.stdout]


def generator_refuses(judge, folder):
    """What contradicts a case or the second judge never becomes a vector."""
    path, script = os.path.join(folder, "bad"), os.path.join(folder, "bad.py")
    with open(path, "w", encoding="utf-8") as file:
        file.write(f'#!/bin/sh\nexec "{sys.executable}" "{script}" "{judge}" "$@"\n')
    os.chmod(path, 0o755)
    for told, change in (("wanted", 'line.replace(\'"value":"7/4"\', \'"value":"7/8"\')'),
                         ("second judge", 'line.replace("out-of-adjustment", "in-adjustment")')):
        with open(script, "w", encoding="utf-8") as file:
            file.write(BAD_JUDGE % change)
        done = subprocess.run([sys.executable, "-B", str(generate.HERE / "generate.py"), path, "small"], stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, encoding="utf-8")
        yield f"no vectors of answers that are not what is {told}", [] if (
            done.returncode == 1 and told in done.stderr and not done.stdout) else [done.stderr]


def other_vectors(judge, folder):
    """A changed answer in the file of vectors does not go with the published digest."""
    path = os.path.join(folder, "changed.jsonl")
    text = SMALL.read_text(encoding="utf-8")
    with open(path, "w", encoding="utf-8") as file:
        file.write(text.replace('"in-adjustment"', '"inoperative"', 1))
    done = run_kit("--vectors", path, judge)
    yield "a changed vector is caught", [] if done.returncode == 1 and "as published" in done.stdout else [done.stdout]
    with open(path, "w", encoding="utf-8") as file:
        file.write(text.splitlines(True)[0])
    done = run_kit("--vectors", path, judge)
    yield "questions of one's own have no published digest", [] if (
        done.returncode == 0 and "not published" in done.stdout) else [done.stdout]
    with open(path, "w", encoding="utf-8"):
        pass
    done = run_kit("--vectors", path, judge)
    yield "no question is no success", [] if done.returncode == 1 else [done.stdout]


def full(judge, *command):
    said = list(run.judge(command, generate.vectors(judge, "full")))
    yield said[-2], said if run.judge.failed or "as published" not in said[-1] else []


# --- The table -------------------------------------------------------------------------------------------------------

# A binding's file, and a change to it that loses no answer and breaks no call.
PLANTED = {
    "perl": ("Rodtravel/Values.pm", "eq 'true'", "ne 'true'"),
    "lua": ("rodtravel.lua", 'word("at_limit")(self) == "true"', 'word("at_limit")(self) ~= "true"'),
    "ruby": ("rodtravel.rb", 'get(path) == "true"', 'get(path) != "true"'),
    "tcl": ("rodtravel.tcl", "{rules language position adjuster arm_length}", "{rules language position psi}"),
}


def table_of(folder, tests, *found):
    """What table.py says of a build with these tests."""
    (folder / "meson-info").mkdir(exist_ok=True)
    (folder / "meson-info" / "intro-tests.json").write_text(json.dumps(tests), encoding="utf-8")
    return subprocess.run([sys.executable, "-B", str(generate.HERE / "table.py"), str(folder), "small", *found],
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8")


def planted(build, folder, name, test):
    """The test of a binding with its files in another folder, where one is changed."""
    path, old, new = PLANTED[name]
    here, there = str(build / "bindings" / name), str(folder / name)
    shutil.copytree(here, there, ignore=shutil.ignore_patterns("*.p", "dist"))
    changed = pathlib.Path(there, path)
    text = changed.read_text(encoding="utf-8")
    assert old in text, f"{path} has no {old}"
    changed.write_text(text.replace(old, new), encoding="utf-8")
    return {**test, "env": {key: value.replace(here, there) for key, value in test["env"].items()}}


def table(judge, build):
    build = pathlib.Path(build).resolve()
    tests = {test["name"]: test for test in json.loads((build / "meson-info" / "intro-tests.json").read_text())}
    c = {**tests["conformance_c"], "cmd": [*tests["conformance_c"]["cmd"][:2], str(pathlib.Path(judge).resolve())]}
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(made)
        done = table_of(folder, [c], "Java=no: needs a JDK", "SQL=3")
        yield "what is not built is named", [] if done.returncode == 0 and (
            "Java         | not built: needs a JDK\nSQL          | not asked" in done.stdout) else [done.stdout, done.stderr]
        done = table_of(folder, [c, {**c, "name": "conformance_cobol"}])
        yield "a judge of no language is named", [] if done.returncode == 1 and "cobol" in done.stdout else [done.stdout]
        yield from planted_faults(build, folder, c, tests)


def planted_faults(build, folder, c, tests):
    """A line for each language; that of C is sound beside them."""
    built = [name for name in PLANTED if f"conformance_{name}" in tests]
    done = table_of(folder, [c, *(planted(build, folder, name, tests[f"conformance_{name}"]) for name in built)],
                    *(f"{name}=planted" for name in built))
    lines = dict(line.split(" ", 1) for line in done.stdout.splitlines()[1:len(built) + 2])
    yield "what is sound beside faults is equal", [] if lines["C"].endswith(" yes") else [done.stdout, done.stderr]
    for name in PLANTED:
        if name not in built:
            print(f"# {name} is not built")
            continue
        yield f"a fault in {name} is caught", [] if (
            done.returncode == 1 and lines[name].endswith(" no") and f"{name}: " in done.stdout) else [done.stdout, done.stderr]


def kept(judge):
    yield from kept_files(judge)
    yield from keeps_to_schema()


def main(what, *arguments):
    failed = count = 0
    for count, (name, faults) in enumerate({"kept": kept, "runner": runner, "full": full, "table": table}[what](*arguments), 1):
        print(f"{'not ok' if faults else 'ok'} {count} - {name}")
        print("".join(f"# {line}\n" for fault in faults[:5] for line in str(fault).splitlines()), end="", flush=True)
        failed += bool(faults)
    print(f"1..{count}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8")
    sys.exit(main(*sys.argv[1:]))
