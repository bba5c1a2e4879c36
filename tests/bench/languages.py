# SPDX-License-Identifier: Apache-2.0
"""One table of the languages of a build: the size of what is loaded, the time of a call, and that of a column.

    languages.py BUILD [ROWS [CALLS [TURNS]]]

Asked are the languages that have a program in languages/, which runs where the conformance kit of the build runs. Times
are those of the processor, user and system, the fewest of TURNS (3) runs: of one of CALLS (100000) judgements by texts
without the start of the interpreter, and of ROWS (1000000) rows of four columns without the making of the lists, as for a
million. A size is that
of the compiled module, stripped."""
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


def seconds(command, environment, *arguments):
    """Processor time of one run."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([*command, *map(str, arguments)], env=environment, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def between(command, environment, turns, more, less):
    """Seconds that one run takes more than the other."""
    return max(0, min(seconds(command, environment, *more) for _ in range(turns)) -
               min(seconds(command, environment, *less) for _ in range(turns)))


def size(folder):
    """Bytes of the greatest module in a folder."""
    modules = [path for path in folder.rglob("*") if path.suffix in (".so", ".mjs") and path.is_file()]
    module = max(modules, key=lambda path: path.stat().st_size)
    with tempfile.TemporaryDirectory() as made:
        copy = shutil.copy(module, made)
        if module.suffix == ".so":
            subprocess.run(["strip", copy], check=True)
        return os.path.getsize(copy)


def programs(build):
    """(name, command, environment) of each language that has a program."""
    tests = json.loads((build / "meson-info" / "intro-tests.json").read_text(encoding="utf-8"))
    for name, (command, environment) in table.judges(tests, build).items():
        program = HERE / "languages" / f"bench{pathlib.Path(command[-1]).suffix}"
        if len(command) > 1 and program.is_file():
            yield name, [*command[:-1], str(program)], environment


def main(build, rows="1000000", calls="100000", turns="3"):
    build, rows, calls, turns = pathlib.Path(build).resolve(), int(rows), int(calls), int(turns)
    print("| language | module, kB | a call, µs | a million rows, s |\n|---|---|---|---|")
    for name, command, environment in programs(build):
        call = between(command, environment, turns, ("call", calls), ("call", 0))
        column = between(command, environment, turns, ("column", rows), ("lists", rows))
        print(f"| {name} | {size(build / 'bindings' / name) // 1000} | {call / calls * 1e6:.0f} | "
              f"{column / rows * 1e6:.1f} |", flush=True)


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8")
    main(*sys.argv[1:])
