# SPDX-License-Identifier: Apache-2.0
"""The command and the library are hardened: what the compiler and the linker were asked for is in what they made.

Arguments: command, shared library, static library, and the arguments of the compiler that it does not have."""
import re
import subprocess

import tree
from tree import Finding

ONE_COMPILER = re.compile(r"DW_AT_producer.*: (GNU C\d.*)")


def readelf(path, *options):
    return subprocess.run(["readelf", "-W", *options, path], check=True, capture_output=True, text=True).stdout


def loaded(path):
    """(what is missing, argument that gives it) of a program or a shared library."""
    said = readelf(path, "-h", "-l", "-d", "--dyn-syms")
    yield "is at a fixed address", "-fPIE", re.search(r"Type: +DYN", said)
    yield "lets addresses of functions change at run time (relro)", "-z relro", " GNU_RELRO " in said
    yield "binds functions late (now)", "-z now", re.search(r"\(FLAGS_1\).*\bNOW\b", said)
    yield "has a stack that runs", "-z noexecstack", re.search(r" GNU_STACK +(0x\w+ +){5}RW +0x", said)
    yield "has code that changes", "-fPIC", "(TEXTREL)" not in said and not re.search(r" LOAD .* RWE ", said)
    yield "has no stack protector", "-fstack-protector-strong", "UND __stack_chk_fail" in said
    yield "checks no sizes", "-D_FORTIFY_SOURCE", re.search(r"UND __(mem|str|v?s?n?printf|read)\w*_chk\b", said)
    with_options = ONE_COMPILER.findall(readelf(path, "--debug-dump=info", "--dwarf-depth=1"))
    yield ("has a frame that can jump over the guard of the stack", "-fstack-clash-protection",
           all("-fstack-clash-protection" in options for options in with_options))


def objects(path):
    """The same of every object of a static library: the C library's own objects may lack it."""
    for part in readelf(path, "-h", "-n").split("\nFile: ")[1:]:
        name, machine = part.split("\n", 1)[0], re.search(r"Machine: +(.*)", part).group(1)
        if re.search("X86-64|80386", machine):
            yield f"{name} has jumps without targets", "-fcf-protection", "IBT, SHSTK" in part
        elif "AArch64" in machine:
            yield f"{name} has jumps without targets", "-mbranch-protection=standard", "BTI, PAC" in part


def check(command, shared, static, *lacks):
    rows = [(path, row) for path, read in ((command, loaded), (shared, loaded), (static, objects)) for row in read(path)]
    return [Finding(path, 0, f"{what}: {argument}") for path, (what, argument, good) in rows
            if not good and argument not in lacks]


if __name__ == "__main__":
    tree.main(check)
