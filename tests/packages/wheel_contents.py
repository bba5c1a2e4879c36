# SPDX-License-Identifier: Apache-2.0
"""Each wheel is what its name says: python3 wheel_contents.py ROOT WHEEL...

The files and digests of RECORD, metadata, licences, bill of materials, and the processor, system and needed libraries of
the module and the command. auditwheel confirms the tags of manylinux; where it runs, it takes a file of GNU's C library
for that of musl."""
import base64
import csv
import hashlib
import io
import json
import re
import subprocess
import sys
import zipfile

import elftools.elf.elffile as elf

# What a module or a command may need of the system.
NEEDED = {"manylinux": {"libc.so.6", "libpthread.so.0", "ld-linux-x86-64.so.2", "ld-linux-aarch64.so.1"},
          "musllinux": {"libc.so"}}
PROCESSORS = {"x86_64": "EM_X86_64", "aarch64": "EM_AARCH64"}


def check_record(files, about):
    """RECORD names every file, with its digest."""
    rows = {row[0]: row[1] for row in csv.reader(io.StringIO(files[about + "RECORD"].decode()))}
    assert set(rows) == set(files), set(rows) ^ set(files)
    for path, content in files.items():
        digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
        assert path.endswith("RECORD") or rows[path] == f"sha256={digest}", path


def check_words(files, about, version):
    """Metadata, licences and the bill of materials belong together."""
    text = files[about + "METADATA"].decode()
    assert f"\nVersion: {version}\n" in text
    named = re.findall("(?m)^License-File: (.*)$", text)
    licences = about + "licenses/"
    assert sorted(named) == sorted(path.removeprefix(licences) for path in files if path.startswith(licences))
    assert all(files[licences + name].strip() for name in named)
    expression = re.search("(?m)^License-Expression: (.*)$", text).group(1)
    bill = json.loads(files[about + "sboms/rodtravel.cdx.json"])
    parts = {part["name"]: part for part in bill["components"] if part.get("scope") == "optional"}
    assert set(parts) == {"zlib", "zstd", "libxlsxwriter"}, parts
    for part in parts.values():
        assert part["version"] and part["licenses"][0]["expression"] in expression, part


def needed_elf(content, processor):
    program = elf.ELFFile(io.BytesIO(content))
    assert program["e_machine"] == PROCESSORS[processor], program["e_machine"]
    dynamic = program.get_section_by_name(".dynamic")
    tags = [] if dynamic is None else list(dynamic.iter_tags())
    assert not any(tag.entry.d_tag in ("DT_RPATH", "DT_RUNPATH") for tag in tags)
    return {tag.needed for tag in tags if tag.entry.d_tag == "DT_NEEDED"}


def check_programs(files, platform):
    """The module and the command."""
    system, processor = re.match(r"([a-z]+)_?[0-9_]*?_(x86_64|aarch64)$", platform).groups()
    programs = [path for path in files if path.endswith(".so") or "/scripts/" in path]
    assert len(programs) == 2, programs
    for path in programs:
        needed = needed_elf(files[path], processor)
        assert needed <= NEEDED[system], (path, needed)
    return system


def check(path, version):
    name = path.rsplit("/", 1)[-1]
    with zipfile.ZipFile(path) as wheel:
        files = {member.filename: wheel.read(member) for member in wheel.infolist()}
    about = f"rodtravel-{version}.dist-info/"
    check_record(files, about)
    check_words(files, about, version)
    platform = name.removesuffix(".whl").rsplit("-", 1)[1].rsplit(".", 1)[-1]
    if check_programs(files, platform) == "manylinux":
        said = subprocess.run(["auditwheel", "show", path], check=True, capture_output=True, text=True).stdout
        assert f'"{platform}"' in " ".join(said.split()).split("system-provided")[0], said
    print(f"{name}: {len(files)} files")


def main(root, *wheels):
    with open(f"{root}/meson.build", encoding="utf-8") as file:
        version = re.search("version: '([^']+)'", file.read()).group(1)
    assert wheels
    for path in wheels:
        check(path, version)


if __name__ == "__main__":
    main(*sys.argv[1:])
