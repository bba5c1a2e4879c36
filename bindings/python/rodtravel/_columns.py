# SPDX-License-Identifier: Apache-2.0
"""Many wheel ends at once: columns in, columns out, nothing copied on the way."""
import struct
from collections.abc import Iterable, Mapping, Set
from fractions import Fraction

from . import _rodtravel as _low
from ._chambers import chamber_of
from ._findings import _answer, _reasons
from ._record import Record, field
from ._rules import DEFAULT_RULES, rule_set
from ._words import DateOrder, Drum, Unit, Verdict, from_number, number_of

UNITS_PER_INCH = 5080000
UNITS_PER_64TH = 79375
UNITS_PER_MM = 200000
UNITS_PER_PSI = 1000
NO_STROKE = -1

_NULLABLE = 2
_FORMATS = {"i": "i", "Q": "L", "B": "C"}


class Column:
    """One column of answers: read by index, as a memoryview (`view`), by NumPy and through Arrow without a copy.
    Two are equal if their names and cells are.

    >>> answers = judge_columns(chamber=["30", "30"], released=["2", "2"], applied=["4", "4 1/8"])
    >>> list(answers.verdict), len(answers.stroke), answers.stroke[1] == 2 * UNITS_PER_INCH + 8 * UNITS_PER_64TH
    ([1, 2], 2, True)
    """

    __slots__ = ("_name", "_view", "_part")

    def __init__(self, *_args, **_words):
        raise TypeError("a Column is made by judge_columns and Plan.judge, not by hand")

    @classmethod
    def _make(cls, name, view, words=None):
        made = object.__new__(cls)
        made._name, made._view, made._part = name, view, words
        return made

    @property
    def name(self):
        """What the column is called: "stroke", "verdict", "reasons" or "flags"."""
        return self._name

    @property
    def view(self):
        """The cells, a memoryview."""
        return self._view

    def __len__(self):
        return len(self._view)

    def __getitem__(self, row):
        return self._view[row]

    def __iter__(self):
        return iter(self._view)

    def __repr__(self):
        return f"<Column {self._name}: {len(self)} rows>"

    def __buffer__(self, flags):
        return memoryview(self._view)

    def __eq__(self, other):
        if type(other) is not Column:
            return NotImplemented
        return self._name == other._name and self._view == other._view

    def __reduce__(self):
        return _column_again, (self._name, bytes(self._view), self._view.format)

    def __array__(self, dtype=None, copy=None):
        import numpy
        array = numpy.frombuffer(self._view, dtype=numpy.dtype(self._view.format))
        if dtype is not None and numpy.dtype(dtype) != array.dtype:
            if copy is False:
                raise ValueError(f"the column {self._name} is {array.dtype}; {dtype} of it is a copy")
            return array.astype(dtype)
        return array.copy() if copy else array

    def _described(self):
        rows, bits, missing = len(self), None, 0
        if self._name == "stroke":
            bits, missing = _low.stroke_bits(self._view)
        return (_FORMATS[self._view.format], self._name, _NULLABLE if self._name == "stroke" else 0, rows, missing,
                (bits, self._view), (), _words_part() if self._name == "verdict" else None)

    def __arrow_c_schema__(self):
        return _low.arrow_schema(self._described())

    def __arrow_c_array__(self, requested_schema=None):
        part = self._described()
        return _low.arrow_schema(part), _low.arrow_array(part)


def _column_again(name, cells, form):
    return Column._make(name, memoryview(bytearray(cells)).cast(form))


def _words_part():
    """The verdicts as an Arrow dictionary, in the order of their numbers."""
    words = [verdict.value.encode() for verdict in Verdict]
    ends = [sum(map(len, words[:i])) for i in range(len(words) + 1)]
    return ("u", "", 0, len(words), 0, (None, struct.pack(f"{len(ends)}i", *ends), b"".join(words)), (), None)


class Answer(Record):
    """One row of answers.

    >>> judge_columns(chamber=["30"], released=["2"], applied=["4"])[0].applied_stroke
    Fraction(2, 1)
    """

    __slots__ = ()
    applied_stroke = field("Inches; None where there is none, or it is finer than a column holds.")
    verdict = field("The Verdict.", from_number(Verdict))
    reasons = field("Why, a tuple of Reason.", _reasons)


class Answers:
    """Columns of answers: stroke (int32, units of 5 nm; NO_STROKE = none), verdict (uint8, the number of a Verdict),
    reasons (uint64, bit n = the nth Reason) and flags (uint8: 1 = something is missing, 2 = unreadable).

    A row is an Answer, a slice of them is Answers with cells of its own. NumPy takes the columns, and pyarrow, polars
    and DuckDB take columns or the whole table, without a copy; there the verdicts are words and strokes that are none
    are null.

    >>> answers = judge_columns(chamber=["30", "24"], released=["2", ""], applied=["4 1/8", "3"])
    >>> [str(answer.verdict) for answer in answers]
    ['out-of-adjustment', 'undetermined']
    """

    __slots__ = ("stroke", "verdict", "reasons", "flags")

    def __init__(self, *_args, **_words):
        raise TypeError("Answers are made by judge_columns and Plan.judge, not by hand")

    @classmethod
    def _make(cls, views):
        made = object.__new__(cls)
        for name, view in zip(cls.__slots__, views):
            object.__setattr__(made, name, Column._make(name, view))
        return made

    def __setattr__(self, name, _value):
        raise AttributeError(f"Answers are read-only: {name} cannot be set")

    def __len__(self):
        return len(self.verdict)

    def __getitem__(self, row):
        if isinstance(row, slice):
            return _answers_again(*(getattr(self, name).view[row].tobytes() for name in self.__slots__))
        try:
            row = range(len(self))[row]
        except IndexError:
            raise IndexError(f"there are {len(self)} rows") from None
        stroke = self.stroke[row]
        return Answer._read((None if stroke == NO_STROKE else Fraction(stroke, UNITS_PER_INCH), self.verdict[row],
                             self.reasons[row]))

    def __iter__(self):
        return (self[row] for row in range(len(self)))

    def __repr__(self):
        counts = ", ".join(f"{verdict} {number}" for verdict, number in self.counts().items() if number)
        return f"<Answers: {len(self)} rows{': ' if counts else ''}{counts}>"

    def counts(self):
        """How many rows have each Verdict, a dict.

        >>> judge_columns(chamber=["30"], released=["2"], applied=["4"]).counts()[Verdict.IN_ADJUSTMENT]
        1
        """
        cells = bytes(self.verdict.view)
        return {verdict: cells.count(verdict.number) for verdict in Verdict}

    def __eq__(self, other):
        if type(other) is not Answers:
            return NotImplemented
        return all(getattr(self, name) == getattr(other, name) for name in self.__slots__)

    def __reduce__(self):
        return _answers_again, tuple(bytes(getattr(self, name).view) for name in self.__slots__)

    def _described(self):
        children = tuple(getattr(self, name)._described() for name in self.__slots__)
        return "+s", "", 0, len(self), 0, (None,), children, None

    def __arrow_c_schema__(self):
        return _low.arrow_schema(self._described())

    def __arrow_c_array__(self, requested_schema=None):
        part = self._described()
        return _low.arrow_schema(part), _low.arrow_array(part)

    def __arrow_c_stream__(self, requested_schema=None):
        return _low.arrow_stream(self._described())


def _answers_again(*cells):
    return Answers._make(memoryview(bytearray(cell)).cast(form) for cell, form in zip(cells, "iBQB"))


def _open(column, name):
    """A column of the caller, held by the wrapper; None stays None."""
    if column is None:
        return None
    if hasattr(column, "__arrow_c_array__"):
        return _low.column_from_array(*column.__arrow_c_array__(), name, name)
    try:
        memoryview(column).release()
    except (TypeError, ValueError, BufferError):
        return _open_other(column, name)
    return _open_buffer(column, name)


def _open_other(column, name):
    """What has no buffer: Arrow streams, things that NumPy can see into, sequences of text."""
    if hasattr(column, "__arrow_c_stream__"):
        try:
            stream = column.__arrow_c_stream__()
        except (ImportError, TypeError, ValueError):  # it needs another library, or a column of one type
            if not hasattr(column, "__array__"):
                raise
        else:
            return _low.column_from_stream(stream, name, name)
    if hasattr(column, "__array__"):
        return _open_buffer(column.__array__(), name)
    if isinstance(column, (str, bytes)):
        raise TypeError(f"{name} is one text; a column has one for each row")
    if isinstance(column, (Set, Mapping)) or not isinstance(column, Iterable):
        raise TypeError(f"{name} is a column, a sequence with text or None for every row, not "
                        f"{type(column).__name__}")
    return _low.column_from_texts(tuple(column), name)


def _open_buffer(column, name):
    kind = getattr(getattr(column, "dtype", None), "kind", "i")
    if getattr(column, "ndim", 1) != 1:
        raise TypeError(f"{name}: a column has one dimension")
    if kind == "S":
        raise TypeError(f"{name} is bytes; a column is text or whole numbers: .astype(str) makes text of it")
    if kind not in "OUT" and hasattr(column, "filled") and getattr(column, "mask", None) is not None:
        if column.mask.any():
            raise TypeError(f"{name}: the mask of a masked array is not read here; pyarrow.array(column) keeps it")
    if kind in "OUT":
        return _low.column_from_texts(tuple(_text_or_none(cell) for cell in column.tolist()), name)
    if kind in "mM":
        raise TypeError(f"{name}: these are points in time; days are text such as 2021-10-14, .astype('datetime64[D]')"
                        ".astype(str), or for a Plan whole numbers since 1970-01-01, .astype('int32') behind that")
    if isinstance(column, (bytes, bytearray)) and name != "chamber":
        raise TypeError(f"{name} is bytes; a column is text or whole numbers")
    return _low.column_from_buffer(column, name)


def _text_or_none(cell):
    """What tables of objects put for nothing: None, a float that is no number, NA or NaT."""
    if isinstance(cell, str):
        return cell
    try:
        return None if cell is None or cell != cell else cell
    except TypeError:  # what pandas calls NA is neither
        return None
    except ValueError:  # an array in a cell; it is told with its row
        return cell


def _room(rows, out):
    if out is not None:
        if isinstance(out, str) or not isinstance(out, Iterable):
            raise TypeError("out is four columns for the answers: stroke, verdict, reasons, flags")
        return tuple(out)
    return tuple(memoryview(bytearray(rows * width)).cast(form) for width, form in ((4, "i"), (1, "B"), (8, "Q"), (1, "B")))


def _views(out):
    """The four columns as memoryviews of native cells, whatever they were called: ctypes says "<i"."""
    views = zip(map(memoryview, out), "iBQB")
    return tuple(view if view.format == form else view.cast("B").cast(form) for view, form in views)


class Plan:
    """Judges columns of numbers: a rule set, what all rows share, and codes for the chambers.

    Readings are int32 or int64, whole numbers of 5 nm: UNITS_PER_INCH, UNITS_PER_64TH and UNITS_PER_MM of them make a
    unit of a tape. Pressures are int32 thousandths of a psi, days int32 since 1970-01-01 (date32). The keywords hold for
    rows without a value of their own; their meaning is that of judge.

    Raises Error for what cannot be read, TypeError for binary floats.

    >>> from array import array
    >>> plan = Plan(pressure=95)
    >>> code = plan.add("30L")
    >>> answers = plan.judge(array("i", [2 * UNITS_PER_INCH]), array("i", [5 * UNITS_PER_INCH]), bytes([code]))
    >>> str(answers[0].verdict)
    'out-of-adjustment'
    """

    __slots__ = ("rules", "_kept")

    def __init__(self, rules=DEFAULT_RULES, *, unit="in", day=None, pressure=None, pressure_after=None,
                 engine_running=None, spring_brake_applied=None, drum=None):
        object.__setattr__(self, "rules", rule_set(rules))
        engine = (None, "off", "on").index(_answer(engine_running, "engine_running"))
        spring = (None, "off", "on").index(_answer(spring_brake_applied, "spring_brake_applied"))
        heat = 0 if drum is None else number_of(Drum, drum, "drum")
        common = (number_of(Unit, unit, "unit"), day, pressure, pressure_after, engine, spring, heat)
        object.__setattr__(self, "_kept", _low.plan_start(self.rules._kept, common))

    def __setattr__(self, name, _value):
        raise AttributeError(f"Plan is read-only: {name} cannot be set")

    def __repr__(self):
        return f"Plan({self.rules.id!r})"

    def __reduce__(self):
        raise TypeError("a Plan cannot be copied or pickled; make one in each process")

    def add(self, chamber):
        """Adds a chamber, text or Chamber, and returns its code, 2 to 255; 0 is a missing chamber, 1 an unreadable one.

        Raises Error with Status.SPACE when the plan is full, RuntimeError while another thread is judging with it.
        """
        return _low.plan_add(self._kept, chamber_of(chamber)._raw())

    def judge(self, released, applied, chamber, *, pressure=None, day=None, out=None):
        """Judges every row as judge would, to the last reason, and returns Answers.

        A column is anything with the buffer protocol (array, NumPy) or the Arrow interface (pyarrow, polars, DuckDB,
        pandas); `chamber` is uint8 codes of this plan, or text. `out` is four writable columns for the answers, in the
        order of Answers; None makes them. The interpreter's lock is released, so threads judge at the same time with one
        plan; no two may write the same columns, and chambers are added before.

        Raises TypeError for a column of another type, ValueError where lengths differ or columns overlap.
        """
        columns = tuple(_open(column, name) for column, name in
                        ((released, "released"), (applied, "applied"), (chamber, "chamber"), (pressure, "pressure"),
                         (day, "day")))
        if None in columns[:3]:
            raise TypeError("released, applied and chamber are columns")
        room = _room(_low.column_rows(columns[0]), out)
        _low.columns_judge_numbers(self._kept, columns, room)
        return Answers._make(_views(room))


_TEXTS = ("chamber", "released", "applied", "stroke_class", "rated_stroke", "marked_limit", "pressure",
          "pressure_after", "division", "day", "unit", "engine", "spring_brake", "drum")
_HEADINGS = {"pressure": "psi", "pressure_after": "psi_after", "day": "date"}  # of a file that the command reads


def judge_columns(table=None, *, chamber=None, released=None, applied=None, stroke_class=None, rated_stroke=None,
                  marked_limit=None, pressure=None, pressure_after=None, division=None, day=None, unit=None, engine=None,
                  spring_brake=None, drum=None, rules=DEFAULT_RULES, form_unit="in", decimal_comma=False,
                  date_order="unknown", default_day=None, default_pressure=None, out=None):
    """Judges every row of columns of text as judge_row would, to the last reason, and returns Answers.

    Each column is a sequence of text and None, or text with the Arrow interface (pyarrow, polars, DuckDB, pandas),
    dictionaries included; those are read where they lie, in C. `table` is a whole Arrow table whose columns have these
    names, a reader of one, a query of DuckDB (run once), or a mapping such as a DataFrame; a column that is given by
    itself goes before. The headings psi, psi_after and date are read as pressure, pressure_after and day; other columns
    are left alone. `form_unit`, `decimal_comma`
    and `date_order` say how the cells are written; `default_day` and `default_pressure` hold for rows that have none.

    No cell is refused: a row that cannot be read is undetermined. Raises TypeError for a column that is no text,
    ValueError where lengths differ.

    >>> answers = judge_columns({"chamber": ["30", "30L"], "released": ["2 1/8"] * 2, "applied": ["4 1/4", "2-Jan"]})
    >>> answers.counts()[Verdict.OUT_OF_ADJUSTMENT], [str(reason) for reason in answers[1].reasons][-1]
    (1, 'spreadsheet-date')
    """
    given = dict(zip(_TEXTS, (chamber, released, applied, stroke_class, rated_stroke, marked_limit, pressure,
                              pressure_after, division, day, unit, engine, spring_brake, drum)))
    find = _finder(table)
    columns = tuple(_of_table(find, name) if given[name] is None else _open(given[name], name) for name in _TEXTS)
    for name, column in zip(_TEXTS[:3], columns):
        if column is None:
            raise TypeError(f"a column {name} is needed")
    form = (None,) * 6 + (default_pressure,) + (None,) * 7 + (
        number_of(Unit, form_unit, "form unit"), bool(decimal_comma), number_of(DateOrder, date_order, "date order"),
        default_day)
    room = _room(_low.column_rows(columns[0]), out)
    _low.columns_judge_texts(form, rule_set(rules)._kept, columns, room)
    return Answers._make(_views(room))


def _names_of(table):
    names = getattr(table, "columns", None) if not hasattr(table, "column_names") else table.column_names
    if names is None or callable(names):
        if not isinstance(table, Mapping):
            raise TypeError(f"table is a mapping, or has columns with names, not {type(table).__name__}")
        names = table.keys()
    return list(names)


def _is_read_once(table):
    """A reader of Arrow batches, or a query: its columns are queries again, and each would run by itself, in an order of
    its own."""
    if not hasattr(table, "__arrow_c_stream__"):
        return False
    if not hasattr(table, "columns") and not hasattr(table, "column_names"):
        return True
    name = next((name for name in _TEXTS[:3] if name in _names_of(table)), None)
    return name is not None and type(table[name]) is type(table)


def _finder(table):
    """A function from a heading and a name to the column of the table, held by the wrapper; None if it has none."""
    if table is None:
        return lambda heading, name: None
    if _is_read_once(table):
        whole = _low.table_from_stream(table.__arrow_c_stream__())
        return lambda heading, name: _low.column_of_table(whole, heading, name)
    names = _names_of(table)
    return lambda heading, name: _open(table[heading], name) if heading in names else None


def _of_table(find, name):
    """The column of that name, or by the heading that files have."""
    column, heading = find(name, name), _HEADINGS.get(name)
    other = None if heading is None else find(heading, name)
    if column is not None and other is not None:
        raise TypeError(f"the table has a column {name} and a column {heading}, which mean the same")
    return other if column is None else column
