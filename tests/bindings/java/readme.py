# SPDX-License-Identifier: Apache-2.0
"""Each line of the README that prints does print what its comment says: readme.py README COMMAND..., where the command
runs a file of Java."""
import pathlib
import re
import subprocess
import sys
import tempfile

CLASS = """{imports}
class Run {{
    public static void main(String[] arguments) throws Exception {{
        System.setOut(new java.io.PrintStream(System.out, true, "UTF-8"));
{body}
    }}
}}
"""


def said(run, command):
    imports = re.findall(r"^import .*;$", run, re.M)
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder, "Run.java")
        file.write_text(CLASS.format(imports="\n".join(imports), body=re.sub(r"^import .*;$", "", run, flags=re.M)),
                        encoding="utf-8")
        return subprocess.run([*command, file], stdout=subprocess.PIPE, encoding="utf-8", check=True).stdout.splitlines()


def main(readme, *command):
    runs = re.findall(r"```java\n(.*?)```", pathlib.Path(readme).read_text(encoding="utf-8"), re.S)
    assert len(runs) == 3, runs
    for run in runs:
        wanted = re.findall(r"println\(.*;\s+// (.*)$", run, re.M)
        found = said(run, command)
        assert found == wanted and wanted, "\n".join(found)


main(*sys.argv[1:])
