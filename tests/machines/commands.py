# SPDX-License-Identifier: Apache-2.0
"""Every command says the same bytes on another machine as on this one: screen, exit status and the files it writes.

python3 commands.py ROOT OWN-COMMAND OTHER-COMMAND [EMULATOR...]
"""
import pathlib
import shlex
import subprocess
import sys
import tempfile

# Threads do not run under every emulator, so a file is judged by one.
COMMANDS = """
stroke 30 "2 1/8" "4 1/4" --class standard --psi 95 --why
stroke 24L 50.8mm 112.4mm --json
stroke "bolt C" 1½ 3.125 --class standard --as-of 2019-06-05
stroke 30 31/8 41/8
stroke 30 2/0 4
vehicle DATA/demo_vehicle.csv --brakes 10
vehicle DATA/demo_vehicle.csv --json
air loss-applied --before 110 --after 107 --vehicle single --rules us-cdl
air warning 62 --rules ca-on --speak
air estimate --psi 105 --reservoirs 5568 --chambers 20,20,30,30,30,30
identify --stamp 30 --port square --diameter "8 1/8"
limits --list
limits --rules us-fmcsr --html limits.html
limits --air --rules nz
batch DATA/fleet.csv --jobs 1 --summary
batch DATA/fleet.csv --jobs 1 --no-cache
batch DATA/fleet.csv --jobs 1 --by unit_no
batch DATA/releves.csv --jobs 1 --separator ; --decimal-comma --encoding windows-1252 --date-order dmy --column chamber=Récepteur --column released="Relâché (po)" --column applied="Serré (po)"
batch DATA/readings.ndjson --jobs 1 --format ndjson
report DATA/inspection.json --html report.html --svg report.svg
report DATA/inspection.json --json
cards --rules ca-on --vehicle single
cards --html cards.html
practice --seed 7 --faults 2 --sheet sheet.html --key key.html --as-of 2026-11-20
practice --seed 9 --json
walkround record.json --as-of 2026-11-20 --answers DATA/walkround.txt
report record.json
"""


def answers(root, command, folder, language):
    """What each line says, and the files that are there at the end."""
    data = str(pathlib.Path(root, "examples/data").resolve())
    environment = {"TZ": "UTC", "PATH": "/usr/bin:/bin", "LC_ALL": language}
    said = {}
    for line in COMMANDS.strip().splitlines():
        words = [word.replace("DATA", data) for word in shlex.split(line)]
        done = subprocess.run([*command, *words], cwd=folder, env=environment, capture_output=True, timeout=120, check=False)
        said[line] = done.returncode, done.stdout, done.stderr
    return said | {path.name: path.read_bytes() for path in sorted(pathlib.Path(folder).iterdir())}


def in_all_languages(root, command):
    said = {}
    for language in ("C.UTF-8", "fr_CA.UTF-8", "es_MX.UTF-8"):
        with tempfile.TemporaryDirectory() as folder:
            said |= {f"{language}: {name}": answer for name, answer in answers(root, command, folder, language).items()}
    return said


def main(root, own, other, *emulator):
    expected, found = in_all_languages(root, [own]), in_all_languages(root, [*emulator, other])
    differs = [name for name in expected | found if expected.get(name) != found.get(name)]
    for name in differs:
        print(f"differs: {name}\n  here:  {expected.get(name)!r}\n  there: {found.get(name)!r}"[:2000])
    wrong = [name for name, said in expected.items() if isinstance(said, tuple) and b"--help" in said[2]]
    print(*(f"no such use: {name}" for name in wrong), sep="\n", end="\n" if wrong else "")
    print(f"{len(expected)} answers and files, {len(differs)} differ")
    return 1 if differs or wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
