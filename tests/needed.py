# SPDX-License-Identifier: Apache-2.0
"""Names what ninja has to build for some tests: needed.py DIRECTORY SUITE|FOLDER/...

A suite stands for what its tests depend on, a folder of the build for the programs in it that are built by default."""
import json
import os
import subprocess
import sys


def main(directory, *wanted):
    top = os.path.realpath(directory)
    found = json.loads(subprocess.run(["meson", "introspect", "--tests", "--targets", top], check=True, capture_output=True,
                                      text=True).stdout)
    needed = {target for test in found["tests"] for target in test["depends"]
              if {suite.partition(":")[2] for suite in test["suite"]} & set(wanted)}
    folders = tuple(each for each in wanted if each.endswith("/"))
    for target in found["targets"]:
        chosen = target["build_by_default"] and target["type"] == "executable"
        for path in (os.path.relpath(each, top) for each in target["filename"]):
            if target["id"] in needed or (chosen and path.startswith(folders)):
                print(path)


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
