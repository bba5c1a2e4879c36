# SPDX-License-Identifier: Apache-2.0
"""Arrow arrays whose producer is written in Python, sound and damaged: what cannot be is refused, nothing is read before
or behind the cells, and every array is released once, whatever else goes wrong."""
import ctypes
import itertools
from ctypes import POINTER, c_char_p, c_int, c_int64, c_void_p

import rodtravel as rt
import tap


class Schema(ctypes.Structure):
    """As the specification has it."""


class Array(ctypes.Structure):
    """As the specification has it."""


class Stream(ctypes.Structure):
    """As the specification has it."""


RELEASE_SCHEMA, RELEASE_ARRAY, RELEASE_STREAM = (ctypes.CFUNCTYPE(None, POINTER(of)) for of in (Schema, Array, Stream))
GET_SCHEMA, GET_ARRAY = (ctypes.CFUNCTYPE(c_int, POINTER(Stream), POINTER(of)) for of in (Schema, Array))
Schema._fields_ = [("format", c_char_p), ("name", c_char_p), ("metadata", c_char_p), ("flags", c_int64),
                   ("n_children", c_int64), ("children", POINTER(POINTER(Schema))), ("dictionary", POINTER(Schema)),
                   ("release", RELEASE_SCHEMA), ("private_data", c_void_p)]
Array._fields_ = [("length", c_int64), ("null_count", c_int64), ("offset", c_int64), ("n_buffers", c_int64),
                  ("n_children", c_int64), ("buffers", POINTER(c_void_p)), ("children", POINTER(POINTER(Array))),
                  ("dictionary", POINTER(Array)), ("release", RELEASE_ARRAY), ("private_data", c_void_p)]
Stream._fields_ = [("get_schema", GET_SCHEMA), ("get_next", GET_ARRAY), ("last_error", c_void_p),
                   ("release", RELEASE_STREAM), ("private_data", c_void_p)]

capsule = ctypes.pythonapi.PyCapsule_New
capsule.restype, capsule.argtypes = ctypes.py_object, [c_void_p, c_char_p, c_void_p]
HUGE = (-1, -4, -2**63, 2**63 - 1, 2**60)


def many(of, items):
    return ctypes.cast((of * max(1, len(items)))(*items), POINTER(of))


class Producer:
    """A column, or with `columns` a table of them; counts how often it was released."""

    def __init__(self, form="i", cells=b"", length=0, null_count=0, name=None, columns=None):
        self.released, self.columns, self.cells = [0, 0], columns, ctypes.create_string_buffer(cells, len(cells) + 8)
        self.calls = RELEASE_SCHEMA(lambda at: self.release(0, at)), RELEASE_ARRAY(lambda at: self.release(1, at))
        buffers = [None] if columns is not None else [None, ctypes.addressof(self.cells)]
        parts = columns or []
        self.schema = Schema(form.encode() if form else None, name and name.encode(), None, 0, len(parts),
                             many(POINTER(Schema), [ctypes.pointer(part.schema) for part in parts]), None, self.calls[0])
        self.array = Array(length, null_count, 0, len(buffers), len(parts), many(c_void_p, buffers),
                           many(POINTER(Array), [ctypes.pointer(part.array) for part in parts]), None, self.calls[1])

    def release(self, which, at):
        self.released[which] += 1
        at.contents.release = (RELEASE_SCHEMA, RELEASE_ARRAY)[which]()

    def __arrow_c_array__(self, requested_schema=None):
        return (capsule(ctypes.addressof(self.schema), b"arrow_schema", None),
                capsule(ctypes.addressof(self.array), b"arrow_array", None))


class Reader:
    """A stream of one batch; with `broken` it breaks off behind it."""

    def __init__(self, producer, broken=False):
        left = [producer]

        def get_schema(_stream, out):
            ctypes.memmove(out, ctypes.byref(producer.schema), ctypes.sizeof(Schema))
            return 0

        def get_next(_stream, out):
            if not left:
                return 5 if broken else 0
            ctypes.memmove(out, ctypes.byref(left.pop().array), ctypes.sizeof(Array))
            return 0

        def release(stream):
            stream.contents.release = RELEASE_STREAM()

        self.calls = GET_SCHEMA(get_schema), GET_ARRAY(get_next), RELEASE_STREAM(release)
        self.stream = Stream(self.calls[0], self.calls[1], None, self.calls[2])

    def __arrow_c_stream__(self, requested_schema=None):
        return capsule(ctypes.addressof(self.stream), b"arrow_array_stream", None)


def number(inches, **words):
    return Producer("i", b"".join((rt.UNITS_PER_INCH * each).to_bytes(4, "little") for each in inches), len(inches), **words)


def judged(released, **words):
    plan = rt.Plan(psi=95)
    return plan.judge(released, number([4, 5]), Producer("C", bytes([plan.add("30")] * 2), 2), **words)


def refused(released):
    """What is said; every array was released once by then, or was never taken."""
    error = tap.refused(TypeError, judged, released)
    assert str(error).startswith("released: "), error
    return str(error)


def test_sound():
    column = number([2, 2])
    assert [str(answer.verdict) for answer in judged(column)] == ["in-adjustment", "out-of-adjustment"]
    assert column.released == [1, 1]
    column = number([9, 2, 2])
    column.array.offset, column.array.length = 1, 2
    assert [str(answer.verdict) for answer in judged(column)] == ["in-adjustment", "out-of-adjustment"]


def test_figures_that_cannot_be():
    for member, wrong in itertools.product(("length", "offset"), HUGE):
        column = number([2, 2])
        setattr(column.array, member, wrong)
        assert "cannot be" in refused(column), (member, wrong)
        assert column.released == [1, 1]
    for member, wrong in (("null_count", -2), ("null_count", -2**63), ("null_count", 3), ("n_buffers", 1), ("n_buffers", 3),
                          ("n_buffers", -1), ("buffers", None)):
        column = number([2, 2])
        setattr(column.array, member, wrong)
        assert refused(column), (member, wrong)
        assert column.released == [1, 1]


def test_schemas_that_cannot_be():
    for form, said in ((None, "no format"), (b"", "the Arrow format"), (b"g", "binary floats"), (b"z", "the Arrow format")):
        column = number([2, 2])
        column.schema.format = form
        assert said in refused(column), form
    column = number([2, 2])
    column.schema.n_children = -1
    refused(column)
    column = number([2, 2])
    column.schema.n_children = 2
    column.schema.children = None
    refused(column)


def text(cells, name):
    """A column of texts by 32-bit offsets."""
    made = Producer("u", "".join(cells).encode(), len(cells), name=name)
    ends = [0, *itertools.accumulate(map(len, cells))]
    made.ends = (ctypes.c_int32 * len(ends))(*ends)
    made.array.n_buffers = 3
    made.array.buffers = many(c_void_p, [None, ctypes.addressof(made.ends), ctypes.addressof(made.cells)])
    return made


def table():
    columns = [text(["30", "30"], "chamber"), text(["2", "2"], "released"), text(["4", "5"], "applied")]
    return Producer("+s", length=2, columns=columns)


def test_tables():
    """Both ways of a table: its columns one by one, and a reader that is run once."""
    assert [str(answer.verdict) for answer in rt.judge_columns(Reader(table()))] == ["in-adjustment", "out-of-adjustment"]

    def damages():
        for member, wrong in itertools.product(("length", "offset"), HUGE):
            yield lambda of: setattr(of.array, member, wrong)
            yield lambda of: setattr(of.columns[1].array, member, wrong)
        yield lambda of: setattr(of.array, "null_count", 3)
        yield lambda of: setattr(of.array, "n_children", 2)
        yield lambda of: setattr(of.array, "children", None)
        yield lambda of: setattr(of.array, "offset", 1)  # its columns have no row more
        yield lambda of: setattr(of.columns[1].array, "null_count", 3)
        yield lambda of: setattr(of.columns[1].array, "length", 1)
        yield lambda of: setattr(of.columns[1].array, "release", RELEASE_ARRAY())
        yield lambda of: setattr(of.columns[1].schema, "format", None)
        yield lambda of: of.array.children.__setitem__(1, POINTER(Array)())
        yield lambda of: of.schema.children.__setitem__(1, POINTER(Schema)())
        yield lambda of: setattr(of.schema, "children", None)
        yield lambda of: setattr(of.schema, "format", None)
    for number_of_damage, damage in enumerate(damages()):
        for broken in (False, True):
            whole = table()
            damage(whole)
            str(tap.refused(TypeError, rt.judge_columns, Reader(whole, broken)))  # an exception would hold the table
            assert whole.released[0] == 1, (number_of_damage, whole.released)


def test_released_with_an_exception():
    """The release of a producer in Python runs while the refusal is on its way."""
    column = number([2, 2])
    column.schema.format = b"g"
    assert "binary floats" in refused(column)
    assert column.released == [1, 1]
    whole = table()
    assert "broke off" in str(tap.refused(TypeError, rt.judge_columns, Reader(whole, broken=True)))
    assert whole.released == [1, 1]
    column = number([2])
    tap.refused(ValueError, judged, column)
    assert column.released == [1, 1]


if __name__ == "__main__":
    tap.run(globals())
