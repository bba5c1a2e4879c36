# SPDX-License-Identifier: Apache-2.0
"""Tables for notebooks: escaped, and without a colour of their own, so that they can be read on light and dark."""
from __future__ import annotations

import enum
from collections.abc import Iterable, Sequence
from datetime import date
from fractions import Fraction
from html import escape
from typing import Any

from . import _rodtravel as _low

ROWS_SHOWN = 20
_CELL = "text-align:left;vertical-align:top;padding:.2em .8em .2em 0;border-bottom:1px solid color-mix(in srgb,currentColor 25%,transparent)"


def cell(value: Any) -> str:
    """A value as one reads it."""
    if value is None:
        return ""
    if isinstance(value, Fraction):
        return _low.rodt_ratio_format(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, (tuple, list)):
        return ", ".join(map(cell, value))
    return str(value.value if isinstance(value, enum.Enum) else value)


# A date is not broken at its hyphens; sentences may be.
_SHORT = (date, int, Fraction, enum.Enum)


def _td(value: Any) -> str:
    style = _CELL + ";white-space:nowrap" if isinstance(value, _SHORT) else _CELL
    return f'<td style="{style}">{escape(cell(value))}</td>'


def table(caption: str, head: Sequence[str], rows: Iterable[Sequence[Any]], left_out: int = 0) -> str:
    """A table; the first cell of a row is its heading where there is no head."""
    lines = [f'<table style="border-collapse:collapse"><caption style="text-align:left;font-weight:bold">{escape(caption)}'
             "</caption>"]
    if head:
        lines.append("<thead><tr>" + "".join(f'<th scope="col" style="{_CELL}">{escape(each)}</th>' for each in head) +
                     "</tr></thead>")
    lines.append("<tbody>")
    for row in rows:
        cells = [_td(each) for each in row]
        if not head:
            cells[0] = f'<th scope="row" style="{_CELL}">{escape(cell(row[0]))}</th>'
        lines.append("<tr>" + "".join(cells) + "</tr>")
    lines.append("</tbody></table>")
    return "".join(lines) + (f"<p>{left_out} more rows</p>" if left_out > 0 else "")
