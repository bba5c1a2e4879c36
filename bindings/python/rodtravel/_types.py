# SPDX-License-Identifier: Apache-2.0
"""Types of arguments."""
from __future__ import annotations

from array import array
from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any, Protocol, Union

Number = Union[int, Fraction, Decimal]
Exact = Union[str, int, Fraction, Decimal]
Day = Union[date, str]


class ArrowArray(Protocol):
    def __arrow_c_array__(self, requested_schema: Any = ...) -> tuple[Any, Any]: ...


class ArrowStream(Protocol):
    def __arrow_c_stream__(self, requested_schema: Any = ...) -> Any: ...


class ArrayLike(Protocol):
    def __array__(self) -> Any: ...


Numbers = Union[ArrowArray, ArrowStream, ArrayLike, memoryview, bytes, bytearray, "array[int]"]
Texts = Union[ArrowArray, ArrowStream, ArrayLike, Sequence[Union[str, None]]]
