# SPDX-License-Identifier: Apache-2.0
"""Installs the package of R into a library of the build, with the module that the build made.

    install.py R SOURCE DESCRIPTION MODULE LIBRARY STAMP"""
import pathlib
import shutil
import subprocess
import sys
import tempfile


def main(command, source, description, module, library, stamp):
    library = pathlib.Path(library)
    library.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        package = pathlib.Path(folder) / "rodtravel"
        for name in ("R", "man"):
            shutil.copytree(pathlib.Path(source) / name, package / name)
        shutil.copy(pathlib.Path(source) / "NAMESPACE", package)
        shutil.copy(description, package / "DESCRIPTION")
        (package / "src").mkdir()
        (package / "src" / "Makefile").write_text(f"all:\n\t@cp '{pathlib.Path(module).resolve()}' rodtravel.so\n",
                                                  encoding="utf-8")
        done = subprocess.run([command, "CMD", "INSTALL", "--no-test-load", f"--library={library}", package],
                              capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.exit(done.stdout + done.stderr)
    pathlib.Path(stamp).touch()


if __name__ == "__main__":
    main(*sys.argv[1:])
