# SPDX-License-Identifier: Apache-2.0
"""Runs Go with the library of a build: with_library.py LIBRARY INCLUDE DIRECTORY COMMAND...

LIBRARY is the static library with what it links after it, as one word; DIRECTORY is where the module is. Nothing is
downloaded. Go does not notice that a library or a header outside of the module has changed, so their digest is among the
flags, and what -o names is made anew."""
import hashlib
import os
import pathlib
import sys


def main(library, include, directory, *command):
    archive = library.split()[0]
    digest = hashlib.sha256()
    for path in sorted(pathlib.Path(include).rglob("*.h")) + [pathlib.Path(archive)]:
        digest.update(path.read_bytes())
    os.environ.update(CGO_ENABLED="1", CGO_LDFLAGS=library, GOFLAGS="-mod=mod", GOTOOLCHAIN="local", GOPROXY="off",
                      CGO_CFLAGS=f"-O2 -I{include} -DRODT_STATIC -DLIBRARY_DIGEST={digest.hexdigest()}")
    command = list(command)
    if "-o" in command:
        made = command.index("-o") + 1
        command[made] = os.path.abspath(command[made])
        pathlib.Path(command[made]).unlink(missing_ok=True)
    os.chdir(directory)
    os.execvp(command[0], command)


if __name__ == "__main__":
    main(*sys.argv[1:])
