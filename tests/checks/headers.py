# SPDX-License-Identifier: Apache-2.0
"""Each public header compiles alone, and twice, with the strict flags of its language. Members that hold an enumerator
need no cast, and no option of the compiler changes the size of a struct.

Arguments: root, language (c or c++), compiler command..."""
import os
import re
import subprocess
import tempfile

import tree
from tree import Finding

FLAGS = {
    "c": ["-x", "c", "-std=c11", "-pedantic-errors", "-Wall", "-Wextra", "-Wstrict-prototypes", "-Wundef", "-Werror"],
    "c++": ["-x", "c++", "-std=c++11", "-pedantic-errors", "-Wall", "-Wextra", "-Wundef", "-Werror"],
}


MEMBERS = """#include <rodtravel/rodtravel.h>
const char *words(rodt_finding *finding, rodt_verdict verdict);
const char *words(rodt_finding *finding, rodt_verdict verdict)
{
    finding->verdict = verdict;
    finding->evidence = RODT_EVIDENCE_NONE;
    (void)!rodt_unit_find("mm", &finding->unit);
    return finding->verdict == RODT_VERDICT_INOPERATIVE ? "" : rodt_verdict_name(finding->verdict);
}
"""


def compile_text(text, options):
    """What the compiler says of a program, and the assembly that it makes of it."""
    with tempfile.TemporaryDirectory() as place:
        source, made = os.path.join(place, "program.c"), os.path.join(place, "program.s")
        with open(source, "w", encoding="ascii") as file:
            file.write(text)
        run = subprocess.run([*options, "-S", source, "-o", made], capture_output=True, text=True)
        if run.returncode:
            return run.stderr.strip()[:600] or "it does not compile", None
        with open(made, encoding="ascii") as file:
            return None, file.read()


def structs(root):
    """The public structs that are complete in the headers."""
    for path in tree.files(root, "include", ".h"):
        with open(os.path.join(root, path), encoding="utf-8") as file:
            yield from re.findall(r"^typedef struct (rodt_\w+) \{", file.read(), re.MULTILINE)


# The two shapes of a _find function, and of its twin for a text of `size` bytes (rodtravel.h).
FOUND = re.compile(r"RODT_API (const )?rodt_\w+ \*\w+_find(_n)?\([^;]*\);|"
                   r"RODT_API RODT_MUST_CHECK rodt_status \w+_find(_n)?\([^;]*RODT_ENUM32\(rodt_\w+\) \*out\);")
OF_A_ROW = "rodt_row_cache_find"  # a row of cells, by no word


def check_finders(root):
    """A word is looked up in one way: a row is returned, or an enumerator is written; `size` only where _n says so."""
    findings = []
    for path in tree.files(root, "include", ".h"):
        with open(os.path.join(root, path), encoding="utf-8") as file:
            text = file.read()
        for found in re.finditer(r"RODT_API[^;{}]*?(\w+_find(?:_n)?)\([^;]*\);", text):
            line = text.count("\n", 0, found.start()) + 1
            if found[1] == OF_A_ROW:
                continue
            if not FOUND.fullmatch(found[0]):
                findings.append(Finding(path, line, f"{found[1]} neither returns a row nor writes an enumerator to *out"))
            elif ("size_t size" in found[0]) != found[1].endswith("_n"):
                findings.append(Finding(path, line, f"{found[1]}: a text of `size` bytes is for a function in _n"))
    return findings


def check_members(options):
    said, _ = compile_text(MEMBERS, options)
    return [] if said is None else [Finding("include", 0, "a member that holds an enumerator needs a cast: " + said)]


def have_one_size(names, options):
    sizes = "".join(f"extern const unsigned of_{name};\nconst unsigned of_{name} = sizeof({name});\n" for name in names)
    made = [compile_text("#include <rodtravel/rodtravel.h>\n" + sizes, [*options, option])[1]
            for option in ("-fno-short-enums", "-fshort-enums")]
    return made[0] is not None and made[0] == made[1]


def check_sizes(root, options):
    """An enumeration of few members may take one byte, a member of a struct may not."""
    names = list(structs(root))
    if have_one_size(names, options):
        return []
    return [Finding("include", 0, f"{name} has another size with -fshort-enums")
            for name in names if not have_one_size([name], options)]


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


def check_all(root, language, *compiler):
    options = [*compiler, *FLAGS[language], "-I", os.path.join(root, "include")]
    return (check(root, language, *compiler) + check_members(options) + check_sizes(root, options) +
            check_finders(root))


if __name__ == "__main__":
    tree.main(check_all)
