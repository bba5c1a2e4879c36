# SPDX-License-Identifier: Apache-2.0
"""Made once more, in another place and later, a file is the same, byte by byte: twice.py FILE COMMAND..., where @OUT@ is
the new file."""
import pathlib
import subprocess
import sys
import tempfile
import time


def main(file, *command):
    time.sleep(1.1)  # times in files are whole seconds
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder, pathlib.Path(file).name)
        subprocess.run([word.replace("@OUT@", str(out)) for word in command], check=True)
        assert out.read_bytes() == pathlib.Path(file).read_bytes(), "another file"


main(*sys.argv[1:])
