# SPDX-License-Identifier: Apache-2.0
"""Published documents."""
from ._record import Record, field


class Source(Record):
    """A published document, as text; "" where something is not known. `str()` is one line for a form.

    >>> print(judge("30", "2 1/8", "4 1/8").source)
    49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076
    """

    __slots__ = ()
    id = field("As the tables name it.")
    body = field("Who published it.")
    document = field('"49 CFR Part 393".')
    section = field('"393.47(e)(1)".')
    edition = field("Edition, amendment or date of the text that was read.")
    address = field("Where the body publishes it.")

    def __str__(self):
        return ", ".join(part for part in (self.document, self.section, self.edition) if part)
