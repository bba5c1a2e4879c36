# SPDX-License-Identifier: Apache-2.0
"""Published documents."""
from __future__ import annotations

from ._record import Field, Record


class Source(Record, of="rodt_source"):
    """A published document, as text; "" where something is not known. `str()` is one line for a form.

    >>> print(judge("30", "2 1/8", "4 1/8").source)
    49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076
    """

    __slots__ = ()
    id: Field[str] = Field("The id in the tables.")
    body: Field[str] = Field("Who published it.")
    document: Field[str] = Field('"49 CFR Part 393".')
    section: Field[str] = Field('"393.47(e)(1)".')
    edition: Field[str] = Field("Edition, amendment or date of the text that was read.")
    address: Field[str] = Field("Where the body publishes it.")

    def __str__(self) -> str:
        return ", ".join(part for part in (self.document, self.section, self.edition) if part)
