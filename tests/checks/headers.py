# SPDX-License-Identifier: Apache-2.0
"""Each public header compiles alone, and twice, with the strict flags of its language.

Arguments: root, language (c or c++), compiler command..."""
import os
import subprocess
import tempfile

import tree
from tree import Finding

FLAGS = {
    "c": ["-x", "c", "-std=c11", "-pedantic-errors", "-Wall", "-Wextra", "-Wstrict-prototypes", "-Wundef", "-Werror"],
    "c++": ["-x", "c++", "-std=c++11", "-pedantic-errors", "-Wall", "-Wextra", "-Wundef", "-Werror"],
}


def check(root, language, *compiler):
    include = os.path.join(root, "include")
    findings = []
    for path in tree.files(root, "include", ".h"):
        name = os.path.relpath(path, "include")
        with tempfile.TemporaryDirectory() as place:
            source = os.path.join(place, "alone.c")
            with open(source, "w", encoding="ascii") as file:
                file.write(f"#include <{name}>\n#include <{name}>\nint alone(void);\nint alone(void) {{ return 0; }}\n")
            run = subprocess.run([*compiler, *FLAGS[language], "-I", include, "-c", source, "-o", source + ".o"],
                                 capture_output=True, text=True)
        if run.returncode:
            findings.append(Finding(path, 0, f"does not compile alone as {language}: " + run.stderr.strip()[:600]))
    return findings


if __name__ == "__main__":
    tree.main(check)
