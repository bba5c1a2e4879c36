# SPDX-License-Identifier: Apache-2.0
"""One table of all languages of a build: how many answers of the conformance kit are right, and the digest of all.

    table.py BUILD [KIND [LANGUAGE=FOUND...]]

KIND is small or full. The judges are those that the tests of the build ask, C's among them. LANGUAGE=FOUND is what
bindings_found of bindings/meson.build says; by itself it is read from the build. Exit status: 0 = every judge answers
as it is published; 1 = one does not, or there is none. Build first: nothing is built here."""
import json
import os
import pathlib
import re
import sys

import generate
import run

OURS = re.compile(r"conformance_table_")


def judges(tests, build):
    """{name of the test without conformance_: (command, environment)}."""
    found = {}
    for test in tests:
        if test["name"].startswith("conformance_") and pathlib.Path(test["cmd"][1]).name == "run.py":
            first, *rest = test["cmd"][2:]
            inside = build / first  # a program of the build is named from there
            found[test["name"].split("_", 1)[1]] = ([str(inside) if inside.exists() else first, *rest],
                                                    {**os.environ, **test["env"]})
    return found


def languages(tests):
    """The LANGUAGE=FOUND of the build's own table."""
    return next((test["cmd"][4:] for test in tests if OURS.match(test["name"])), [])


def slug(language):
    """As the test of the language is called: C# is csharp."""
    return language.lower().replace("#", "sharp")


def row(*cells):
    return " | ".join(f"{cell:<{width}}" for cell, width in zip(cells, (12, 16, 16, 5))).rstrip()


def asked(language, judge, vectors, build):
    """The line of a language, and what is wrong."""
    right, digest, published, faults = run.opinion(judge[0], vectors, env=judge[1], cwd=build)
    if digest != published:
        faults = faults or ["the digest is not the published one"]
    return (row(language, f"{right} of {len(vectors)}", digest[:16], "no" if faults else "yes"),
            [f"{language}: {fault}" for fault in faults])


def table(build, kind, *given):
    build = pathlib.Path(build).resolve()
    tests = json.loads((build / "meson-info" / "intro-tests.json").read_text(encoding="utf-8"))
    found = dict(one.split("=", 1) for one in ("C=", *(given or languages(tests))))
    judge = judges(tests, build)
    named = {slug(language): language for language in found}
    faults = [f"{name} is no language of the build" for name in judge if name not in named]
    vectors = list(generate.vectors(judge["c"][0][0], kind))
    print(row("language", "cases passed", "digest", "equal"))
    for name, language in named.items():
        line = row(language, f"not built: {found[language][4:]}" if found[language].startswith("no: ") else
                   "not asked: it has no judge of the kit")
        if name in judge:
            line, wrong = asked(language, judge[name], vectors, build)
            faults += wrong
        print(line, flush=True)
    return faults


def main(build, kind="small", *given):
    faults = table(build, kind, *given)
    print("\n".join(faults or ["all digests are equal, and as published"]))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8")
    sys.exit(main(*sys.argv[1:]))
