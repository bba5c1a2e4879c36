# SPDX-License-Identifier: Apache-2.0
"""Puts the footer that DuckDB looks for behind a library: python3 footer.py MODULE OUT PLATFORM INTERFACE VERSION

Eight fields of 32 bytes, the last one first, then room for a signature of 256 bytes. INTERFACE is the oldest interface
in C that will do, with which every later DuckDB loads the file."""
import sys


def main(module, out, platform, interface, version):
    fields = ["4", platform, interface, version, "C_STRUCT", "", "", ""]
    with open(module, "rb") as file:
        code = file.read()
    with open(out, "wb") as file:
        file.write(code + b"".join(field.encode().ljust(32, b"\0") for field in reversed(fields)) + bytes(256))


main(*sys.argv[1:])
