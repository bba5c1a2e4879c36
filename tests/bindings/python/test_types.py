# SPDX-License-Identifier: Apache-2.0
"""The stub tells the truth, a program that keeps to it passes, and one that does not is refused. Needs mypy."""
import os
import subprocess
import sys
import tempfile

import tap

try:
    import mypy  # noqa: F401
except ImportError:
    tap.skip("mypy is not installed")

HERE = os.path.dirname(os.path.abspath(__file__))
WRONG = {
    'rt.judge("30", 2.5, "4")': "arg-type",
    'rt.judge("30", "2")': "call-arg",
    'rt.judge("30", "2", "4").verdict = rt.Verdict.INOPERATIVE': "misc",
    'rt.judge("30", "2", "4").margin + 1': "operator",
    'rt.Finding("x")': "arg-type",
    "rt.no_such_name": "attr-defined",
    "rt.Plan().judge([1], [2], bytes([2]))": "arg-type",  # a list is copied cell by cell: it is no column of numbers
}


def run(module, *words):
    env = {**os.environ, "MYPYPATH": os.environ["PYTHONPATH"]}
    with tempfile.TemporaryDirectory() as cache:
        done = subprocess.run([sys.executable, "-m", module, *words], cwd=cache, env=env, capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


def test_stub():
    code, said = run("mypy.stubtest", "rodtravel", "--concise", "--mypy-config-file", os.path.join(HERE, "mypy.ini"),
                     "--allowlist", os.path.join(HERE, "stubtest.allow"))
    assert code == 0, said


def test_user():
    code, said = run("mypy", "--strict", os.path.join(HERE, "user.py"))
    assert code == 0, said
    subprocess.run([sys.executable, os.path.join(HERE, "user.py")], check=True)


def test_wrong_user():
    for line, kind in WRONG.items():
        code, said = run("mypy", "--strict", "-c", f"import rodtravel as rt\n{line}\n")
        assert code == 1 and f"[{kind}]" in said, (line, said)


if __name__ == "__main__":
    tap.run(globals())
