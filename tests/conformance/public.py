# SPDX-License-Identifier: Apache-2.0
"""What a binding lacks of public.txt. Its list of what it leaves out has lines of a name, which may hold *, and what one
uses instead."""
import fnmatch
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent


def names():
    """(kind, name) of every public function and record."""
    text = (HERE / "public.txt").read_text(encoding="utf-8")
    return [tuple(line.split()) for line in text.splitlines() if not line.startswith("#")]


def is_named_in(sources):
    """A test whether C, SWIG or other sources of a binding use a name, or declare a type of a record: AirLimit."""
    text = "\n".join(pathlib.Path(path).read_text(encoding="utf-8") for path in sources)
    used = set(re.findall(r"\brodt_\w+", re.sub(r"/\*.*?\*/", "", text, flags=re.S)))
    used |= {"rodt" + re.sub("[A-Z]", lambda letter: "_" + letter[0].lower(), name)
             for name in re.findall(r"^export interface (\w+)", text, flags=re.M)}
    return lambda name: name in used


def faults(has, left_out):
    """Names that neither the binding has nor its list names, and lines that name nothing that it lacks.

    has       says of a name whether the binding has it
    left_out  the path of the list"""
    text = pathlib.Path(left_out).read_text(encoding="utf-8")
    patterns = [line.split()[0] for line in text.splitlines() if line.strip() and not line.startswith("#")]
    absent = [name for _, name in names() if not has(name)]
    lost = [name for name in absent if not any(fnmatch.fnmatchcase(name, pattern) for pattern in patterns)]
    idle = [pattern for pattern in patterns if not fnmatch.filter(absent, pattern)]
    return [f"{name} is in no line of {left_out}" for name in lost] + [f"{left_out} names {one}, which is there" for one in idle]


if __name__ == "__main__":
    # A binding's list, and the sources that show what it has.
    found = faults(is_named_in(sys.argv[2:]), sys.argv[1])
    print("\n".join(found))
    sys.exit(1 if found else 0)
