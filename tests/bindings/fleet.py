# SPDX-License-Identifier: Apache-2.0
"""The example `fleet` of a language says what Python's says of the same file: fleet.py EXAMPLES COMMAND..."""
import os
import subprocess
import sys
import tempfile


def lines(*command):
    said = subprocess.run(command, stdout=subprocess.PIPE, encoding="utf-8", check=True, timeout=60).stdout.splitlines()
    return [line for line in said if "picture" not in line]


def main(examples, *command):
    with tempfile.TemporaryDirectory() as folder:
        wanted = lines(sys.executable, os.path.join(examples, "python", "fleet.py"),
                       os.path.join(examples, "data", "fleet.csv"), os.path.join(folder, "fleet.png"))
    said = lines(*command)
    assert len(wanted) > 10 and said == wanted, "\n".join(said)


if __name__ == "__main__":
    main(*sys.argv[1:])
