# SPDX-License-Identifier: Apache-2.0
"""Installs the package in a fresh place and runs programs that use it.

    run.py program MCS MONO PACKAGE FILE [ARGUMENT...]    compiles a program and runs it in its place
    run.py readme MCS MONO PACKAGE README                 each line of the README that prints does print what its comment says
"""
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile

CLASS = """{usings}
class Run
{{
    static void Main()
    {{
        Console.SetOut(new System.IO.StreamWriter(Console.OpenStandardOutput()) {{ AutoFlush = true }});
{body}
    }}
}}
"""


def built(folder, mcs, package, source):
    """The program, beside the assembly and the library of the package."""
    with zipfile.ZipFile(package) as files:
        for name in files.namelist():
            if name.startswith("lib/") or "/native/" in name:
                pathlib.Path(folder, pathlib.Path(name).name).write_bytes(files.read(name))
    out = str(pathlib.Path(folder, "program.exe"))
    subprocess.run([mcs, "-warnaserror+", "-codepage:utf8", f"-lib:{folder}", "-r:Rodtravel.dll", "-r:System.Numerics",
                    "-r:System.Core", f"-out:{out}", str(source)], check=True)
    return out


def program(mcs, mono, package, source, *arguments):
    with tempfile.TemporaryDirectory() as folder:
        return subprocess.run([mono, built(folder, mcs, package, source), *arguments]).returncode


def readme(mcs, mono, package, path):
    runs = re.findall(r"```csharp\n(.*?)```", pathlib.Path(path).read_text(encoding="utf-8"), re.S)
    assert len(runs) == 3, runs
    for run in runs:
        wanted = re.findall(r"WriteLine\(.*;\s+// (.*)$", run, re.M)
        with tempfile.TemporaryDirectory() as folder:
            source = pathlib.Path(folder, "Run.cs")
            source.write_text(CLASS.format(usings="\n".join(re.findall(r"^using .*;$", run, re.M)),
                                           body=re.sub(r"^using .*;$", "", run, flags=re.M)), encoding="utf-8")
            found = subprocess.run([mono, built(folder, mcs, package, source)], stdout=subprocess.PIPE, encoding="utf-8",
                                   check=True).stdout.splitlines()
        assert found == wanted and wanted, "\n".join(found)
    return 0


if __name__ == "__main__":
    sys.exit({"program": program, "readme": readme}[sys.argv[1]](*sys.argv[2:]))
