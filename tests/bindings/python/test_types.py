# SPDX-License-Identifier: Apache-2.0
"""The package is typed throughout, a program that follows its types passes, and one that does not is refused. Needs mypy."""
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
    'rt.judge("30", "2", "4").verdict = rt.Verdict.INOPERATIVE': "assignment",
    'rt.rule_set("ca-on").law = None': "misc",
    'rt.judge("30", "2", "4").margin + 1': "operator",
    'rt.Finding("x")': "arg-type",
    "rt.no_such_name": "attr-defined",
    "rt.Plan().judge([1], [2], bytes([2]))": "arg-type",  # a list is copied cell by cell: it is no column of numbers
}


def run(*words):
    env = {**os.environ, "MYPYPATH": os.environ["PYTHONPATH"]}
    words = ["-m", "mypy", "--config-file", os.path.join(HERE, "mypy.ini"), *words]
    with tempfile.TemporaryDirectory() as cache:
        done = subprocess.run([sys.executable, *words], cwd=cache, env=env, capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


def test_package():
    code, said = run("-p", "rodtravel")
    assert code == 0, said


def test_user():
    code, said = run(os.path.join(HERE, "user.py"))
    assert code == 0, said
    subprocess.run([sys.executable, os.path.join(HERE, "user.py")], check=True)


def test_wrong_user():
    for line, kind in WRONG.items():
        code, said = run("-c", f"import rodtravel as rt\n{line}\n")
        assert code == 1 and f"[{kind}]" in said, (line, said)


if __name__ == "__main__":
    tap.run(globals())
