# SPDX-License-Identifier: Apache-2.0
"""Pictures of a fleet that stay readable at a million rows: counts and shares are drawn, never rows. They need matplotlib
and NumPy; each returns the axes it drew on."""
from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from ._answers import PARTS_PER_INCH, UNITS_PER_INCH, Answers
from ._enums import Verdict
from ._frames import numbers_of

# Distinct in lightness, so that a picture can be read on a grey printer.
_WITHIN, _AT, _OVER = "#2f6f8f", "#e0a53a", "#b3401a"
_LINES_MAX, _UNITS_MAX, _PLACES_MAX = 24, 40, 24
_SIXTEENTHS = 12  # on either side of the limit


def _check(answers: Any) -> None:
    if not isinstance(answers, Answers):
        raise TypeError(f"Answers are drawn, which a Judge gives when it is called, not {type(answers).__name__}")


def _axes_of(axes: Any, width: float, height: float) -> Any:
    if axes is not None:
        return axes
    import matplotlib.pyplot as plt
    return plt.subplots(figsize=(width, height), layout="constrained")[1]


def _label(cell: Any) -> str:
    return "not given" if cell is None or cell != cell or cell == "" else str(cell)


def _codes(labels: Iterable[Any], rows: int) -> tuple[Any, list[str]]:
    """A number for the label of each row, and the labels; nothing is a label too."""
    import numpy
    if isinstance(labels, (str, bytes)) or not isinstance(labels, Iterable):
        raise TypeError(f"labels are a column, one for each row that was judged, not {labels!r}")
    # Objects of Python, as texts are the same label whatever they come from.
    listed = next((getattr(labels, name) for name in ("to_pylist", "to_list", "tolist") if hasattr(labels, name)), None)
    cells = labels if listed is None else listed()
    numbers: defaultdict[Any, int] = defaultdict()
    numbers.default_factory = numbers.__len__
    found = numpy.fromiter(map(numbers.__getitem__, cells), dtype=numpy.int64)
    known: dict[str, int] = {}
    codes = numpy.array([known.setdefault(_label(cell), len(known)) for cell in numbers], dtype=numpy.int64)[found]
    if len(codes) != rows:
        raise ValueError(f"there are {len(codes)} labels, and {rows} answers")
    return codes, list(known)


def _natural(label: str) -> tuple[int, float, str]:
    """Axle 2 comes before axle 10."""
    digits = label.strip().split()[0].rstrip("LRlr") if label.strip() else ""
    return (0, float(digits), label) if digits.isdecimal() else (1, 0, label)


def _plain(axes: Any) -> None:
    for side in ("top", "right", "left"):
        axes.spines[side].set_visible(False)


def plot_used(answers: Answers, by: Iterable[Any], *, axes: Any = None) -> Any:
    """How much of their limits strokes use, a line for each label of `by`: the chamber or the axle of each row.

    A line has the middle half of its rows (bar), the middle 98 % (thin line) and the median (tick); its share over the
    limit stands at the right. The 24 labels with the most rows are drawn.

    >>> answers = judge_columns(chamber=["30", "24"], released=["2"] * 2, applied=["4", "3 3/4"])
    >>> axes = plot_used(answers, by=["30", "24"])  # doctest: +SKIP
    """
    import numpy
    _check(answers)
    used = numpy.frombuffer(numbers_of(answers, "used"), dtype=float)
    codes, labels = _codes(by, len(answers))
    there = ~numpy.isnan(used)
    counts = numpy.bincount(codes[there], minlength=len(labels))
    chosen = sorted(numpy.argsort(-counts, kind="stable")[:_LINES_MAX], key=lambda code: _natural(labels[code]))
    chosen = [code for code in chosen if counts[code]]
    axes = _axes_of(axes, 9, 1.4 + 0.34 * max(1, len(chosen)))
    names = []
    for line, code in enumerate(chosen):
        part = used[there & (codes == code)]
        low, first, middle, third, high = numpy.percentile(part, (1, 25, 50, 75, 99))
        over = float((part > 100).mean())
        axes.plot((low, high), (line, line), color=_WITHIN, linewidth=1.2, solid_capstyle="butt")
        axes.barh(line, third - first, left=first, height=0.5, color=_WITHIN)
        axes.plot((middle, middle), (line - 0.32, line + 0.32), color=_AT, linewidth=2.6, solid_capstyle="butt")
        axes.annotate(f"{over:.1%}", (1.01, line), xycoords=("axes fraction", "data"), va="center",
                      color=_OVER if over else "grey")
        names.append(f"{labels[code]}  ({counts[code]:,})")
    axes.axvline(100, color=_OVER, linewidth=1.2, linestyle=(0, (4, 2)))
    axes.annotate("over", (1.01, 1.0), xycoords="axes fraction", va="bottom", fontsize="small", color=_OVER)
    axes.set_yticks(range(len(names)), names)
    axes.set_ylim(max(1, len(chosen)) - 0.4, -0.6)
    axes.tick_params(axis="y", length=0)
    axes.set_xlabel("stroke in percent of the adjustment limit")
    left = len(labels) - len(chosen)
    axes.set_title("Stroke used" + (f" ({left} label{'s' * (left > 1)} more)" if left > 0 else ""), loc="left", fontweight="bold")
    _plain(axes)
    return axes


def plot_limit(answers: Answers, *, axes: Any = None) -> Any:
    """How many strokes end just within, exactly at and just over their limits, by sixteenths of an inch. A pile at the
    limit, with a gap behind it, is a sign of readings that were made to pass.

    >>> answers = judge_columns(chamber=["30"], released=["2"], applied=["4"])
    >>> axes = plot_limit(answers)  # doctest: +SKIP
    """
    import numpy
    _check(answers)
    strokes, limits = numpy.asarray(answers.stroke_parts), numpy.asarray(answers.limit)
    there = (strokes >= 0) & (limits >= 0)
    margins = limits[there].astype(numpy.int64) * (PARTS_PER_INCH // UNITS_PER_INCH) - strokes[there]
    step = PARTS_PER_INCH // 16
    # What is over lies to the right; at the limit has a place of its own.
    places = numpy.where(margins > 0, -(-margins // step), margins // step)
    places = -numpy.clip(places, -_SIXTEENTHS, _SIXTEENTHS)
    counts = numpy.bincount(places + _SIXTEENTHS, minlength=2 * _SIXTEENTHS + 1)
    axes = _axes_of(axes, 9, 3.6)
    x = numpy.arange(-_SIXTEENTHS, _SIXTEENTHS + 1)
    colors = [_WITHIN if place < 0 else _AT if place == 0 else _OVER for place in x]
    bars = axes.bar(x, counts, width=0.86, color=colors)
    for end in (bars[0], bars[-1]):  # a heap of all that is further away
        end.set_alpha(0.35)
    axes.annotate(f"{counts[_SIXTEENTHS]:,}", (0, counts[_SIXTEENTHS]), ha="center", va="bottom",
                  bbox={"facecolor": "white", "alpha": 0.8, "linewidth": 0, "pad": 1})
    ticks = [place for place in range(-_SIXTEENTHS, _SIXTEENTHS + 1) if place % 4 == 0]
    ends = {-_SIXTEENTHS: f"{_SIXTEENTHS}/16\nand more", _SIXTEENTHS: f"{_SIXTEENTHS}/16\nand more", 0: "at limit"}
    axes.set_xticks(ticks, [ends.get(place, f"{abs(place)}/16") for place in ticks])
    axes.set_xlabel("inches within the limit (left), over it (right)")
    axes.yaxis.set_major_formatter(lambda value, _: f"{value:,.0f}")
    axes.set_ylabel("wheel ends")
    axes.set_title(f"Margins of {len(margins):,} wheel ends", loc="left", fontweight="bold")
    _plain(axes)
    return axes


def plot_map(answers: Answers, rows: Iterable[Any], columns: Iterable[Any], *, axes: Any = None) -> Any:
    """The share of wheel ends out of adjustment or inoperative, a field for each pair of labels: a vehicle, a terminal or
    a chamber, and a position. What is undetermined is left out of a share; a field with nothing is empty.

    The 40 rows with the most that are out, and the 24 columns with the most rows, are drawn.

    >>> answers = judge_columns(chamber=["30"], released=["2"], applied=["4 1/8"])
    >>> axes = plot_map(answers, rows=["T-1"], columns=["1L"])  # doctest: +SKIP
    """
    import numpy
    _check(answers)
    verdicts = numpy.asarray(answers.verdict)
    row, names = _codes(rows, len(answers))
    place, places = _codes(columns, len(answers))
    out = (verdicts == Verdict.OUT_OF_ADJUSTMENT.number) | (verdicts == Verdict.INOPERATIVE.number)
    known = verdicts != Verdict.UNDETERMINED.number
    shape = len(names), len(places)
    field = row * shape[1] + place
    bad, all = (numpy.bincount(field[part], minlength=shape[0] * shape[1]).reshape(shape) for part in (out, known))
    top = numpy.argsort(-bad.sum(axis=1), kind="stable")[:_UNITS_MAX]
    wide = sorted(numpy.argsort(-all.sum(axis=0), kind="stable")[:_PLACES_MAX], key=lambda code: _natural(places[code]))
    bad, all = bad[numpy.ix_(top, wide)], all[numpy.ix_(top, wide)]
    share = numpy.where(all > 0, bad / numpy.maximum(all, 1), numpy.nan)
    axes = _axes_of(axes, 2.6 + 0.5 * len(wide), 1.6 + 0.24 * len(top))
    if share.size:
        drawn = axes.imshow(share, cmap="YlOrBr", vmin=0, vmax=max(0.01, float(numpy.nanmax(share, initial=0))), aspect="auto")
        axes.figure.colorbar(drawn, ax=axes, format=lambda value, _: f"{value:.0%}", label="out of adjustment or inoperative")
    axes.set_facecolor("#d9d9d9")  # of fields with nothing
    axes.set_xticks(range(len(wide)), [places[code] for code in wide], rotation=0 if len(wide) < 14 else 90)
    axes.set_yticks(range(len(top)), [names[code] for code in top])
    axes.tick_params(length=0)
    left = len(names) - len(top)
    axes.set_title("Out of adjustment" + (f": the worst {len(top)} of {len(names):,}" if left > 0 else ""), loc="left",
                   fontweight="bold")
    for side in axes.spines.values():
        side.set_visible(False)
    return axes
