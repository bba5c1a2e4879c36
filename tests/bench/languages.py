# SPDX-License-Identifier: Apache-2.0
"""One table of the languages of a build: the size of what is loaded, the time of a call, that of a column, and both
beside C.

    languages.py BUILD [ROWS [CALLS [TURNS]]]

Asked are the languages that have a program in languages/, which runs where the conformance kit of the build runs; those
of compiled languages are built by ninja bench-languages, and what is not built is named. Times are those of the
processor, user and system, the fewest of TURNS (3) runs: of one of CALLS (100000) judgements by texts without the start
of the interpreter, and of ROWS (1000000) rows of four columns without the making of the lists, as for a million. Every
turn asks all languages, so that what else the machine does meets all of them. With 0 turns the programs only run. A
size is that of the compiled module, stripped; of a language that links the library, of the program."""
import json
import os
import pathlib
import resource
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "conformance"))

import table  # noqa: E402  of the conformance kit

# Where the programs of compiled languages are in a build.
COMPILED = {"c": "tests/bench/bench_languages", "go": "tests/bindings/go/bench",
            "rust": "bindings/rust/target/release/bench"}


def seconds(command, environment, *arguments):
    """Processor time of one run."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([*command, *map(str, arguments)], env=environment, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def stripped(module):
    """Bytes of a file, without its symbols if it has some."""
    with tempfile.TemporaryDirectory() as made:
        copy = shutil.copy(module, made)
        if module.suffix != ".mjs":
            subprocess.run(["strip", copy], check=True)
        return os.path.getsize(copy)


def module(build, name):
    """What is loaded: the library, the program, or the greatest module of the language."""
    if name == "c":
        return build / "lib" / "librodtravel.so"
    if name in COMPILED:
        return build / COMPILED[name]
    modules = [path for path in (build / "bindings" / name).rglob("*") if path.suffix in (".so", ".mjs", ".oct")]
    return max((path for path in modules if path.is_file()), key=lambda path: path.stat().st_size)


def programs(build):
    """{name: (command, environment)} of each language that has a program."""
    tests = json.loads((build / "meson-info" / "intro-tests.json").read_text(encoding="utf-8"))
    found = {}
    for name, (command, environment) in table.judges(tests, build).items():
        program = HERE / "languages" / f"bench{pathlib.Path(command[-1]).suffix}"
        if name in COMPILED:
            if (build / COMPILED[name]).is_file():
                found[name] = [str(build / COMPILED[name])], environment
            else:
                print(f"# {name} is not built: ninja bench-languages")
        elif len(command) > 1 and program.is_file():
            # As people run it, without what Java checks and leaves out in tests.
            found[name] = [*(word for word in command[:-1] if not word.startswith("-X")), str(program)], environment
    return found


def measured(asked, rows, calls, turns):
    """{name: (seconds of a call, of a row)}; a call of a compiled language is so short that it takes more of them."""
    many = {name: calls * (10 if name in COMPILED else 1) for name in asked}
    least = {name: {} for name in asked}
    for _ in range(turns):
        for name, (command, environment) in asked.items():
            for what, count in {"call": many[name], "no call": 0, "column": rows, "lists": rows}.items():
                spent = seconds(command, environment, what.split()[-1], count)
                least[name][what] = min(least[name].get(what, spent), spent)
    return {name: (max(0, of["call"] - of["no call"]) / many[name], max(0, of["column"] - of["lists"]) / rows)
            for name, of in least.items()}


def tried(asked, rows, calls):
    for name, (command, environment) in asked.items():
        seconds(command, environment, "call", calls)
        seconds(command, environment, "column", rows)
        print(f"{name} runs")


def beside(time, of):
    return f"{time / of:.0f}" if of else ""


def main(build, rows="1000000", calls="100000", turns="3"):
    build = pathlib.Path(build).resolve()
    os.chdir(build)  # from where some tests name their files
    if turns == "0":
        return tried(programs(build), rows, calls)
    found = measured(programs(build), int(rows), int(calls), int(turns))
    first = found.get("c", (0, 0))
    print("| language | module, kB | a call, µs | beside C | a million rows, s | beside C |\n|---|---|---|---|---|---|")
    for name, (call, row) in found.items():
        print(f"| {name} | {stripped(module(build, name)) // 1000} | {call * 1e6:.1f} | {beside(call, first[0])} | "
              f"{row * 1e6:.2f} | {beside(row, first[1])} |")


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8")
    main(*sys.argv[1:])
