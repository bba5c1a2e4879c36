# SPDX-License-Identifier: Apache-2.0
"""Columns of numbers: NumPy arrays through the Python package against the same arrays given to the library itself, in
one run; medians. Nothing fails because a machine is slow. compare.py has texts and the scalar judge.

    python3 bench_python.py LIBRODTRAVEL.SO [ROWS...]       with PYTHONPATH at the package
"""
import ctypes
import importlib.util
import statistics
import sys
import time

import rodtravel as rt


def median(function, repeats=5):
    times = []
    for _ in range(repeats):
        begin = time.perf_counter()
        function()
        times.append(time.perf_counter() - begin)
    return statistics.median(times)


MARKS = ["30 standard", "30 long", "24 standard", "24 long", "20 standard", "16 long", "36 standard", "bolt C"]


class Bits(ctypes.Structure):
    _fields_ = [("bits", ctypes.c_void_p), ("start", ctypes.c_size_t)]


class ColumnIn(ctypes.Structure):
    _fields_ = ([(name, ctypes.c_void_p) for name in ("released", "applied", "released64", "applied64", "chamber",
                                                      "psi", "date")] +
                [(f"valid{n}", Bits) for n in range(6)] + [("reserved", ctypes.c_uint64 * 4)])


class ColumnOut(ctypes.Structure):
    _fields_ = ([(name, ctypes.c_void_p) for name in ("stroke", "verdict", "reasons", "flags", "limit")] +
                [("reserved", ctypes.c_uint64 * 3)])


def kernel_in_c(library, columns, out, rows):
    """The same arrays given to the library itself: a function without arguments."""
    c = ctypes.CDLL(library)
    c.rodt_rules_find.restype = ctypes.c_void_p
    plan, chamber, code = ctypes.c_void_p(), ctypes.create_string_buffer(1 << 10), ctypes.c_uint32()
    assert c.rodt_column_plan_new(ctypes.c_void_p(c.rodt_rules_find(b"us-fmcsr")), None, ctypes.byref(plan), None) == 0
    for mark in MARKS:
        assert c.rodt_chamber_parse(mark.encode(), chamber, None) == 0
        assert c.rodt_column_plan_add(plan, chamber, ctypes.byref(code), None) == 0
    given = ColumnIn(released=columns[0].ctypes.data, applied=columns[1].ctypes.data, chamber=columns[2].ctypes.data)
    answers = ColumnOut(*(column.ctypes.data for column in out))
    return lambda: c.rodt_column_plan_judge(plan, ctypes.byref(given), ctypes.c_size_t(rows), ctypes.byref(answers),
                                            None)


def numbers(library, rows):
    import numpy as np
    chance = np.random.default_rng(1)
    plan = rt.Plan()
    codes = np.array([plan.add(mark) for mark in MARKS], dtype=np.uint8)
    released = (chance.integers(64, 192, rows) * rt.UNITS_PER_64TH).astype(np.int32)
    applied = released + (chance.integers(32, 192, rows) * rt.UNITS_PER_64TH).astype(np.int32)
    chamber = codes[chance.integers(0, 8, rows)]
    out, other = ([np.empty(rows, kind) for kind in (np.int32, np.uint8, np.uint64, np.uint8)] for _ in range(2))
    kernel = kernel_in_c(library, (released, applied, chamber), other, rows)
    assert kernel() == 0
    plan.judge(released, applied, chamber, out=out)
    assert all(np.array_equal(a, b) for a, b in zip(out, other))
    pairs = [(median(lambda: plan.judge(released, applied, chamber, out=out)), median(kernel)) for _ in range(9)]
    ours, native = (statistics.median(times) for times in zip(*pairs))
    print(f"{rows} rows of numbers: NumPy {rows / ours * 1e-6:.0f} Mrows/s, the library itself "
          f"{rows / native * 1e-6:.0f} Mrows/s, ratio {statistics.median(b / a for a, b in pairs):.2f}")


if __name__ == "__main__":
    if importlib.util.find_spec("numpy") is None:
        print("left out: the Python package numpy is not installed")
        sys.exit(77)
    for count in sys.argv[2:] or ("4000000", "100000"):
        numbers(sys.argv[1], int(count))
