# SPDX-License-Identifier: Apache-2.0
"""The shared library exports what the headers declare, no more and no less; no object holds changeable data; and
every global of the static library has a prefix, so that no name of a program that links it can clash.

Arguments: root, shared library, static library."""
import re
import subprocess

import tree
from tree import Finding

VERSION_NODE = re.compile(r"^RODTRAVEL_[0-9.]+$")


def exported(library):
    out = subprocess.run(["nm", "-D", "--defined-only", library], check=True, capture_output=True, text=True).stdout
    names = {line.split()[-1].split("@")[0] for line in out.splitlines() if line.strip()}
    return {name for name in names if not VERSION_NODE.match(name)}


def changeable(library):
    """Objects in .data, .bss or common; a constant table with pointers is in .data.rel.ro."""
    out = subprocess.run(["nm", "-f", "sysv", library], check=True, capture_output=True, text=True).stdout
    rows = [[cell.strip() for cell in line.split("|")] for line in out.splitlines() if line.count("|") == 6]
    return [row[0] for row in rows if re.match(r"(\.data(?!\.rel\.ro)|\.t?bss|\*COM\*|COMMON|\.tdata)", row[6])]


def unprefixed(library):
    out = subprocess.run(["nm", "-g", "--defined-only", library], check=True, capture_output=True, text=True).stdout
    names = {line.split()[2] for line in out.splitlines() if line.count(" ") == 2}
    return sorted(name for name in names if not re.match(r"_?rodti?_", name))


def check(root, shared, static):
    declared = tree.public_functions(root)
    there = exported(shared)
    findings = [Finding(*declared[name], f"{name} is declared but not exported") for name in sorted(declared.keys() - there)]
    findings += [Finding(shared, 0, f"{name} is exported but in no public header") for name in sorted(there - declared.keys())]
    findings += [Finding(static, 0, f"{name} can be changed at run time; the library keeps no state")
                 for name in changeable(static)]
    findings += [Finding(static, 0, f"{name} is a global without the prefix rodt_ or rodti_")
                 for name in unprefixed(static)]
    return findings


if __name__ == "__main__":
    tree.main(check)
