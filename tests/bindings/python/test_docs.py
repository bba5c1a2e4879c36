# SPDX-License-Identifier: Apache-2.0
"""What is promised in words: the public names, a docstring with an example for each, and examples that run."""
import contextlib
import doctest
import glob
import importlib.util
import inspect
import io
import os
import pydoc
import re
import sys
import tempfile
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
NO_MARGIN NO_STROKE Observation Outcome PARTS_PER_INCH Plan Port
Position PressureUnit Proof Reason Record Rounding Rules Side Source Span Status Step StepText StrokeClass Summary Tag Tally UNITS_PER_64TH
UNITS_PER_INCH UNITS_PER_MM UNITS_PER_PSI Unit UnreadColumnWarning VehicleClass VehicleFinding Verdict VolumeRow
WheelEnd Word al_factor build_up_seconds catalogue chamber_rows check_title criterion_parts english_sentences estimate_application
estimate_applications identify inches_from_mm judge judge_air judge_columns judge_row judge_vehicle load_rules plot_limit plot_map plot_used
psi_from_kpa pushrod_force rated_volume read_chamber read_date read_length read_length_unit read_position
read_pressure read_pressure_unit register_sqlite required_volume round_length rule_set rule_sets steps tables_edition volume_rows write_decimal write_length
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


def test_everything_public_is_there_or_left_out_by_name():
    root = os.environ.get("ROOT")
    if not root:
        return  # a wheel is tested outside of the tree
    sys.path.insert(0, os.path.join(root, "tests", "conformance"))
    import public
    binding = os.path.join(root, "bindings", "python")
    named = public.is_named_in(glob.glob(os.path.join(binding, "ext", "*.c")) +
                               glob.glob(os.path.join(binding, "rodtravel", "*.py")))
    faults = public.faults(lambda name: hasattr(rodtravel._rodtravel, name) or named(name),
                           os.path.join(binding, "left_out.txt"))
    assert not faults, faults


@contextlib.contextmanager
def beside_examples():
    """In a folder that has the examples, as a checkout has, and that may be written to."""
    before = os.getcwd()
    with tempfile.TemporaryDirectory() as where:
        os.symlink(os.path.abspath(os.environ["EXAMPLES"]), os.path.join(where, "examples"))
        os.chdir(where)
        try:
            yield
        finally:
            os.chdir(before)


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
            with contextlib.redirect_stdout(io.StringIO()) as said, beside_examples():
                exec(block, {})
            assert said.getvalue().splitlines() == re.findall(r"print\(.*\)\s+# (.*)", block), said.getvalue()


if __name__ == "__main__":
    tap.run(globals())
