# SPDX-License-Identifier: Apache-2.0
"""Base of all read-only objects of the package."""
from __future__ import annotations

import enum
import functools
import operator
from collections.abc import Callable
from fractions import Fraction
from typing import TYPE_CHECKING, Any, ClassVar, Generic, NoReturn, TypeVar, overload

from . import _rodtravel as _low
from ._enums import CLASSES, Word, from_number, set_of

if TYPE_CHECKING:
    from typing_extensions import Never, Self

_T = TypeVar("_T")
_records: dict[str, type[Record]] = {}


class Field(Generic[_T]):
    """A member of a record, in the order of declaration; Record makes a property of it.

    `read` turns the wrapper's value into the member's: an enumeration, a Record, or a function. It follows from the
    library's description where the member is described. None stays None. `of` is the name there, if that is another.
    """

    def __init__(self, doc: str, read: Callable[..., Any] | None = None, *, of: str = "") -> None:
        self.doc = doc
        self.of = of
        if isinstance(read, type):
            read = from_number(read) if issubclass(read, Word) else getattr(read, "_read")
        self.read = read

    if TYPE_CHECKING:
        @overload
        def __get__(self, instance: None, owner: Any) -> Self: ...
        @overload
        def __get__(self, instance: object, owner: Any) -> _T: ...
        def __get__(self, instance: Any, owner: Any) -> Any: ...
        def __set__(self, instance: Any, value: Never) -> NoReturn: ...


def tuple_of(kind: type[Record]) -> Callable[[Any], tuple[Any, ...]]:
    """A function that reads a tuple of records."""
    return lambda all: tuple(kind._read(one) for one in all)


layout_of = functools.lru_cache(None)(_low.record_layout)


@functools.lru_cache(None)
def _names(of: str) -> tuple[str, ...]:
    return tuple(name for name, *_ in layout_of(of))


def raw(of: str, **members: Any) -> tuple[Any, ...]:
    """The wrapper's tuple of a record of the library; what is not given is None."""
    return tuple(map(members.get, _names(of)))


def millimetres(inches: Fraction) -> Fraction:
    """Of printed millimetres, which the library keeps as a length."""
    return inches * Fraction(127, 5)


def _reader(kind: str, of: str, many: bool) -> Callable[..., Any] | None:
    """What reads a member that the library describes so."""
    if kind == "set":
        return set_of(CLASSES[of], many)
    if kind == "enumerator":
        return from_number(CLASSES[of]) if of in CLASSES else None
    if of not in _records:
        return None
    return tuple_of(_records[of]) if many else getattr(_records[of], "_read")


def _plain(value: Any) -> Any:
    """The value without classes of this package: records are dicts, enumerations are text."""
    if isinstance(value, Record):
        return value.asdict()
    if isinstance(value, enum.Enum):
        return value.value
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value


def row_number(row: Any, rows: int, what: str) -> int:
    """The number of a row, from 0, of an index that counts from either end."""
    try:
        return range(rows)[operator.index(row)]
    except IndexError:
        raise IndexError(f"there are {rows} {what}") from None
    except TypeError:
        raise TypeError(f"a row is a number or a slice, not {type(row).__name__}") from None


class ReadOnly:
    """An object whose attributes are set once, when it is made."""

    __slots__: tuple[str, ...] = ()

    @classmethod
    def _of_slots(cls, *values: Any) -> Self:
        """One with these values, in the order of its slots."""
        made = object.__new__(cls)
        for name, value in zip(cls.__slots__, values):
            object.__setattr__(made, name, value)
        return made

    if not TYPE_CHECKING:  # to a type checker every attribute would be allowed
        def __setattr__(self, name, _value):
            raise AttributeError(f"{type(self).__name__} is read-only: {name} cannot be set")

        def __delattr__(self, name):
            raise AttributeError(f"{type(self).__name__} is read-only: {name} cannot be deleted")


class Record(ReadOnly):
    """A read-only value: equal to another with the same members, hashable, copied and pickled by value."""

    __slots__ = ("_values",)
    _values: tuple[Any, ...]
    _fields: ClassVar[tuple[str, ...]] = ()
    _members: ClassVar[tuple[str, ...]] = ()  # as the wrapper calls them
    _pick: ClassVar[Callable[[Any], tuple[Any, ...]]]  # them out of the wrapper's tuple
    _readers: ClassVar[tuple[tuple[int, Callable[..., Any]], ...]] = ()

    def __init_subclass__(cls, of: str = "", **words: Any) -> None:
        """`of` is the record of the library that it is. Fields that it does not have come last in the wrapper's tuple."""
        super().__init_subclass__(**words)
        own = {name: item for name, item in vars(cls).items() if isinstance(item, Field)}
        cls._fields = tuple(name for name in own if name[0] != "_")
        cls._members = tuple(item.of or name for name, item in own.items())
        layout = {name: (place, _reader(*how)) for place, (name, *how) in enumerate(layout_of(of) if of else ())}
        for name in cls._members:
            layout.setdefault(name, (len(layout), None))
        cls._pick = operator.itemgetter(*(layout[name][0] for name in cls._members))
        readers = [item.read or layout[name][1] for name, item in zip(cls._members, own.values())]
        cls._readers = tuple((index, read) for index, read in enumerate(readers) if read)
        if of:
            _records[of] = cls
        for index, (name, item) in enumerate(own.items()):
            setattr(cls, name, property(cls._getter(index), doc=item.doc))

    def __init__(self, *_args: Never, **_words: Never) -> None:
        raise TypeError(f"a {type(self).__name__} is made by the functions of rodtravel, not by hand")

    @classmethod
    def _getter(cls, index: int) -> Callable[[Any], Any]:
        """What looks a member up."""
        pick = operator.itemgetter(index)
        return lambda self: pick(self._values)

    @classmethod
    def _make(cls, values: Any) -> Self:
        made = object.__new__(cls)
        object.__setattr__(made, "_values", tuple(values))
        return made

    @classmethod
    def _convert(cls, values: Any) -> tuple[Any, ...]:
        made = list(cls._pick(values))
        for index, read in cls._readers:
            if made[index] is not None:
                made[index] = read(made[index])
        return tuple(made)

    @classmethod
    def _read(cls, values: Any) -> Any:
        """From what the wrapper gives: None stays None, numbers become members of enumerations, tuples records."""
        return None if values is None else cls._make(cls._convert(values))

    def _raw(self) -> tuple[Any, ...]:
        """The wrapper's tuple, of numbers and tuples."""
        return tuple([value.number if isinstance(value, Word) else value for value in self._values])

    def asdict(self) -> dict[str, Any]:
        """The members by name, as plain dict, list, str, int, bool, Fraction and date."""
        return {name: _plain(getattr(self, name)) for name in self._fields}

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Record) or type(other) is not type(self):
            return NotImplemented
        return self._values == other._values

    def __hash__(self) -> int:
        return hash((type(self).__name__, self._values))

    def __reduce__(self) -> Any:
        return type(self)._make, (self._values,)

    def __copy__(self) -> Self:
        return self

    def __deepcopy__(self, _memo: Any) -> Self:
        return self

    def __repr__(self) -> str:
        shown = ", ".join(f"{name}={self._show(getattr(self, name))}" for name in self._fields
                          if getattr(self, name) is not None)
        return f"{type(self).__name__}({shown})"

    @staticmethod
    def _show(value: Any) -> str:
        return repr(value.value) if isinstance(value, enum.Enum) else repr(value)
