# SPDX-License-Identifier: Apache-2.0
"""The programs of examples/python run and say what they must; those whose package is not installed are left out."""
import importlib.util
import os
import subprocess
import sys
import tempfile

import tap

HERE = os.path.join(os.environ["EXAMPLES"], "python")
# They judge one fleet, of which the command says: 31 in adjustment, 14 out, 1 inoperative, 11 undetermined.
# Program, the packages it needs, what its output must contain.
EXAMPLES = [("stroke", [], ["out-of-adjustment", "over by 1/16", "Refused: applied, column 1"]),
            ("vehicle", [], ["below-criterion: 1/2 of 10 brakes defective", "3L  out-of-adjustment"]),
            ("fleet", [], ["least to spare", "W-42        1    0     1     2   1/8 in"]),
            ("fleet_judge", [], ["out-of-adjustment                             14", "W-42   no day        2 brakes, undetermined", "out of service: 4"]),
            ("numpy_columns", ["numpy"], ["<Answers: 1000000 rows: in-adjustment"]),
            ("pandas_frame", ["pandas", "pyarrow"], ["K-12                 5            0                  1"]),
            ("polars_frame", ["polars"], ["in-adjustment     ┆ 31", "undetermined      ┆ 11"]),
            ("pyarrow_table", ["pyarrow"], ["['in-adjustment', 'out-of-adjustment', 'undetermined']"]),
            ("duckdb_query", ["duckdb", "pyarrow"], ["in-adjustment     │         31", "undetermined      │         11"])]


def run(name, *words):
    with tempfile.TemporaryDirectory() as where:
        done = subprocess.run([sys.executable, os.path.join(HERE, name + ".py"), *words], cwd=where, text=True,
                              capture_output=True, check=False)
        picture = os.path.join(where, "fleet.png")
        size = os.path.getsize(picture) if os.path.exists(picture) else 0
    assert done.returncode == 0, done.stderr
    return done.stdout, size


def one(name, expected):
    def test():
        said, size = run(name)
        for part in expected:
            assert part in said, (part, said)
        if name == "fleet":
            assert (size > 20000) == (importlib.util.find_spec("matplotlib") is not None)
    return test


def test_every_example_is_listed():
    files = {name[:-3] for name in os.listdir(HERE) if name.endswith(".py")}
    assert files == {name for name, _, _ in EXAMPLES} | {"parquet_file", "dask_fleet", "spark_fleet"}  # test_files.py, ../cluster


def test_wrong_file():
    done = subprocess.run([sys.executable, os.path.join(HERE, "fleet.py"), "no-such-file.csv"], capture_output=True,
                          check=False)
    assert done.returncode != 0


if __name__ == "__main__":
    chosen = {name: test for name, test in globals().items() if name.startswith("test_")}
    for name, packages, expected in EXAMPLES:
        if all(importlib.util.find_spec(package) for package in packages):
            chosen["test_" + name] = one(name, expected)
        else:
            print(f"# left out: {name} needs {', '.join(packages)}")
    tap.run(chosen)
