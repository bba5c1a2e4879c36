# SPDX-License-Identifier: Apache-2.0
"""The machines that wheels are built for, the Pythons, and how Meson is told about them."""
import json
import os
import subprocess
import typing

import ziglang

# Its C compiler is clang, with the C libraries of every target.
ZIG_FOLDER = os.path.dirname(ziglang.__file__)
ZIG = [os.path.join(ZIG_FOLDER, "zig")]


class Target(typing.NamedTuple):
    triple: str         # of the compiler, with the oldest system that it must run on
    processor: str
    platforms: str      # of the tag of a wheel


TARGETS = {
    "manylinux-x86_64": Target("x86_64-linux-gnu.2.17", "x86_64",
                               "manylinux2014_x86_64.manylinux_2_17_x86_64"),
    "manylinux-aarch64": Target("aarch64-linux-gnu.2.17", "aarch64",
                                "manylinux2014_aarch64.manylinux_2_17_aarch64"),
    "musllinux-x86_64": Target("x86_64-linux-musl", "x86_64", "musllinux_1_2_x86_64"),
    "musllinux-aarch64": Target("aarch64-linux-musl", "aarch64", "musllinux_1_2_aarch64"),
}

QUESTION = """
import json, sys, sysconfig
limited = sys.version_info >= (3, 11) and not sysconfig.get_config_var("Py_GIL_DISABLED")
version = "cp3%d" % sys.version_info[1]
abi = version + ("t" if sysconfig.get_config_var("Py_GIL_DISABLED") else "")
tag = "cp311-abi3" if limited else version + "-" + abi
print(json.dumps([sys.version_info[1], tag, sysconfig.get_path("include"), limited]))
"""


class Python(typing.NamedTuple):
    minor: int          # 11 of 3.11
    tag: str            # of interpreter and ABI
    headers: str        # serve every target: 64-bit Linux differs in nothing that a module sees
    limited: bool       # one module serves 3.11 and every later version


def ask_python(interpreter):
    return Python(*json.loads(subprocess.run([interpreter, "-c", QUESTION], check=True, capture_output=True).stdout))


def write_cross_file(path, target, sections):
    """sections: {section: {key: value}} that only this build has."""
    # Any x86-64 will do. The compiler names every instruction set that is left out, which even a function that names it
    # cannot undo for CRC32; only the functions that ask the processor first have the instruction.
    zig_cc = ZIG + ["cc", "-target", target.triple] + ["-mcpu=x86_64+crc32"] * (target.processor == "x86_64")
    whole = {
        "binaries": {"c": zig_cc, "ar": ZIG + ["ar"], "ranlib": ZIG + ["ranlib"], "pkgconfig": "pkg-config"},
        "host_machine": {"system": "linux", "cpu_family": target.processor, "cpu": target.processor,
                         "endian": "little"},
        # The page would be made by another compiler, which few machines have.
        "properties": {"exact": "plain", "page": False},
        "built-in options": {"c_link_args": ["-s"]}}   # symbols for debuggers are left out
    for section, values in sections.items():
        whole.setdefault(section, {}).update(values)
    with open(path, "w", encoding="utf-8") as file:
        for section, values in whole.items():
            # Texts, truth values and lists look alike in both languages, but for the capital letters.
            lines = (f"{key} = {str(value).lower() if isinstance(value, bool) else repr(value)}\n"
                     for key, value in values.items())
            file.write(f"[{section}]\n" + "".join(lines))
