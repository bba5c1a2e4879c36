# SPDX-License-Identifier: Apache-2.0
"""What is promised in words: the public names, a docstring with an example for each, and examples that run."""
import contextlib
import doctest
import fnmatch
import glob
import importlib.util
import inspect
import io
import os
import pydoc
import re
from decimal import Decimal
from fractions import Fraction

import rodtravel
import rodtravel as rt
import tap

# A name is added or removed here on purpose only.
NAMES = """
Adjuster Advice AdviceNote AirFinding AirKind AirLimit AirMissing AirReading AirResult Answer Answers Axle AxleRemark
Basis Candidate Catalogue Chamber ChamberRow Check Clue Column Comparison Count CriterionPart DateOrder Defect Drum Error
Evidence Family Finding Identification Inspection Inspections Judge Limit LimitAnswer Measure Mismatch NO_LIMIT
NO_MARGIN NO_STROKE Observation Outcome Plan Port
Position PressureUnit Proof Reason Record Rounding Rules Side Source Span Status Step StepText StrokeClass Summary Tag Tally UNITS_PER_64TH
UNITS_PER_INCH UNITS_PER_MM UNITS_PER_PSI Unit UnreadColumnWarning VehicleClass VehicleFinding Verdict VolumeRow
WheelEnd Word al_factor build_up_seconds catalogue chamber_rows check_title criterion_parts english_sentences estimate_application
estimate_applications identify inches_from_mm judge judge_air judge_columns judge_row judge_vehicle load_rules plot_limit plot_map plot_used
psi_from_kpa pushrod_force rated_volume read_chamber read_date read_length read_length_unit read_position
read_pressure read_pressure_unit required_volume round_length rule_set rule_sets steps tables_edition volume_rows write_decimal write_length
write_pressure
""".split()


def test_public_names():
    assert sorted(rt.__all__) == sorted(NAMES), set(rt.__all__) ^ set(NAMES)
    loose = [name for name in vars(rt) if name[0] != "_" and name not in rt.__all__]
    assert not loose, loose


def members():
    for name in rt.__all__:
        value = getattr(rt, name)
        if inspect.isclass(value):
            for member, inner in vars(value).items():
                if member[0] != "_" and (inspect.isfunction(inner) or isinstance(inner, property)):
                    yield f"{name}.{member}", inner
        yield name, value


def test_no_name_of_the_wrapper():
    for name, _ in members():
        assert not any(part in name.lower() for part in ("swig", "rodt_", "_get", "this")), name


def test_help_is_short():
    """Enumerations are texts; the methods of every text are not listed again for each of them."""
    assert "swapcase" not in pydoc.render_doc(rt.Verdict) and "swapcase" not in dir(rt.Verdict)
    assert "OUT_OF_ADJUSTMENT" in dir(rt.Verdict) and rt.Verdict.INOPERATIVE.upper() == "INOPERATIVE"


def test_docstrings():
    for name, value in members():
        if inspect.isclass(value) or callable(value) or isinstance(value, property):
            assert value.__doc__, name
    for name in rt.__all__:
        value = getattr(rt, name)
        if callable(value) and value not in (rt.Word, rt.Record):
            assert ">>>" in value.__doc__, f"{name} has no example"


def test_examples_in_docstrings():
    names = {name: getattr(rt, name) for name in rt.__all__}
    names.update(Fraction=Fraction, Decimal=Decimal)
    finder = doctest.DocTestFinder()
    runner = doctest.DocTestRunner(optionflags=doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE)
    tried, said = 0, []
    for name in rt.__all__:
        for example in finder.find(getattr(rt, name), name, module=False, globs=dict(names)):
            tried += runner.run(example, out=said.append).attempted
    tried += runner.run(doctest.DocTestParser().get_doctest(rt.__doc__, names, "rodtravel", None, None),
                        out=said.append).attempted
    assert tried > 100 and runner.failures == 0, f"{tried} {runner.failures}\n{''.join(said)}"


def functions_of_c(root):
    """The public functions, by name."""
    for path in sorted(glob.glob(os.path.join(root, "include", "rodtravel", "*.h"))):
        with open(path, encoding="utf-8") as file:
            text = re.sub(r"/\*.*?\*/", "", file.read(), flags=re.S)
        yield from re.findall(r"(?:RODT_API|RODT_INLINE)\b[^;{]*?\b(rodt_\w+)\(", text)


def test_every_function_of_c_is_there_or_left_out_by_name():
    root = os.environ.get("ROOT")
    if not root:
        return  # a wheel is tested outside of the tree
    called = ""
    for path in glob.glob(os.path.join(root, "bindings", "python", "ext", "*.c")):
        with open(path, encoding="utf-8") as file:
            called += file.read()
    with open(os.path.join(root, "bindings", "python", "left_out.txt"), encoding="utf-8") as file:
        left = [line.split()[0] for line in file if not line.startswith("#")]
    absent = [name for name in functions_of_c(root)
              if not hasattr(rodtravel._rodtravel, name) and not re.search(rf"\b{name}\b", called)]
    assert len(absent) > 50
    lost = [name for name in absent if not any(fnmatch.fnmatchcase(name, pattern) for pattern in left)]
    assert not lost, f"in no line of bindings/python/left_out.txt: {lost}"
    idle = [pattern for pattern in left if not fnmatch.filter(absent, pattern)]
    assert not idle, f"bindings/python/left_out.txt names what is there: {idle}"


def test_readme():
    """Each printed line is what the comment after it says."""
    for path in os.environ.get("README", "").split(os.pathsep):
        if not path:
            return  # a wheel is tested outside of the tree
        with open(path, encoding="utf-8") as file:
            blocks = re.findall(r"```python\n(.*?)```", file.read(), re.S)
        assert blocks, path
        for block in blocks:
            if not all(importlib.util.find_spec(name) for name in re.findall(r"^import (\w+)", block, re.M)):
                continue  # of a package that is not installed
            with contextlib.redirect_stdout(io.StringIO()) as said:
                exec(block, {})
            assert said.getvalue().splitlines() == re.findall(r"print\(.*\)\s+# (.*)", block), said.getvalue()


if __name__ == "__main__":
    tap.run(globals())
