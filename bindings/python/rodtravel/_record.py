# SPDX-License-Identifier: Apache-2.0
"""What all read-only objects of the package share."""
import enum
import operator


class field:
    """A member of a record, in the order in which they stand; turned into a property by Record."""

    def __init__(self, doc, as_type=None):
        self.doc = doc
        self.as_type = as_type


def getter(index):
    pick = operator.itemgetter(index)
    return lambda self: pick(self._values)


def plain(value):
    """The value without classes of this package: records are dicts, words are text."""
    if isinstance(value, Record):
        return value.asdict()
    if isinstance(value, enum.Enum):
        return value.value
    if isinstance(value, tuple):
        return [plain(item) for item in value]
    return value


class Record:
    """A read-only value: equal to another with the same members, hashable, copied and pickled by value."""

    __slots__ = ("_values",)
    _fields = ()
    _types = ()

    def __init_subclass__(cls, **words):
        super().__init_subclass__(**words)
        own = [(name, item) for name, item in vars(cls).items() if isinstance(item, field)]
        start = len(cls._fields)
        cls._fields += tuple(name for name, _ in own)
        cls._types += tuple(item.as_type for _, item in own)
        for index, (name, item) in enumerate(own, start):
            setattr(cls, name, property(getter(index), doc=item.doc))

    def __init__(self, *_args, **_words):
        raise TypeError(f"a {type(self).__name__} is made by the functions of rodtravel, not by hand")

    @classmethod
    def _make(cls, values):
        made = object.__new__(cls)
        object.__setattr__(made, "_values", tuple(values))
        return made

    @classmethod
    def _read(cls, values):
        """From what the wrapper gives: None stays None, numbers of words become words, tuples become records."""
        if values is None:
            return None
        return cls._make(value if kind is None or value is None else kind(value)
                         for kind, value in zip(cls._types, values))

    def asdict(self):
        """The members by name, as plain dict, list, str, int, bool, Fraction and date."""
        return {name: plain(getattr(self, name)) for name in self._fields}

    def __setattr__(self, name, _value):
        raise AttributeError(f"{type(self).__name__} is read-only: {name} cannot be set")

    def __delattr__(self, name):
        raise AttributeError(f"{type(self).__name__} is read-only: {name} cannot be deleted")

    def __eq__(self, other):
        if type(other) is not type(self):
            return NotImplemented
        return self._values == other._values

    def __hash__(self):
        return hash((type(self).__name__, self._values))

    def __reduce__(self):
        return type(self)._make, (self._values,)

    def __copy__(self):
        return self

    def __deepcopy__(self, _memo):
        return self

    def __repr__(self):
        shown = ", ".join(f"{name}={self._show(getattr(self, name))}" for name in self._fields
                          if getattr(self, name) is not None)
        return f"{type(self).__name__}({shown})"

    @staticmethod
    def _show(value):
        return repr(value.value) if isinstance(value, enum.Enum) else repr(value)
