# SPDX-License-Identifier: Apache-2.0
"""Runs the functions of a test file whose names begin with test_, and reports the results as TAP."""
import importlib
import sys
import traceback


def run(names):
    """names: the globals of the test file."""
    tests = [(name, function) for name, function in names.items() if name.startswith("test_")]
    print(f"1..{len(tests)}")
    for number, (name, function) in enumerate(tests, 1):
        try:
            function()
            print(f"ok {number} - {name}")
        except Exception:
            print(f"not ok {number} - {name}")
            print("".join("# " + line + "\n" for line in traceback.format_exc().splitlines()), end="")
    sys.stdout.flush()


def package(name):
    """A package that a test can use; None = it is not installed."""
    try:
        return importlib.import_module(name)
    except ImportError:
        return None


def skip(why):
    """Nothing can be tested."""
    print(f"1..0 # SKIP {why}")
    sys.exit(0)


def refused(kind, function, *args, **words):
    """The exception of that kind which the call must raise."""
    try:
        given = function(*args, **words)
    except kind as error:
        return error
    raise AssertionError(f"{args} {words} gave {given!r}")
