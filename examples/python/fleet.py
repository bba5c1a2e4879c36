# SPDX-License-Identifier: Apache-2.0
"""From a file of recorded strokes to a picture: how much of its limit each wheel end used, chamber by chamber.

    python3 fleet.py [FLEET.csv [PICTURE.png]]

Reads examples/data/fleet.csv, judges each row by the law of its day, prints one line a unit, and draws the distribution
of stroke used, as a part of the limit. The picture needs matplotlib; without it only the lines are printed.
"""
import collections
import csv
import sys
from pathlib import Path

import rodtravel as rt

FLEET = Path(__file__).parent.parent / "data" / "fleet.csv"

# Distinct in lightness and in shape, so that the picture can be read on a grey printer.
LOOKS = {rt.Verdict.IN_ADJUSTMENT: ("#2f6f8f", "o", "in adjustment"),
         rt.Verdict.OUT_OF_ADJUSTMENT: ("#c2571a", "D", "out of adjustment"),
         rt.Verdict.INOPERATIVE: ("#1c1c1c", "X", "inoperative"),
         rt.Verdict.UNDETERMINED: ("#9a927f", "s", "undetermined")}


def read(path):
    """The rows of the file that are wheel ends, with their findings."""
    with open(path, encoding="utf-8-sig", newline="") as file:
        for row in csv.DictReader(file):
            if row["chamber"] in ("", "chamber") and not row["released"].strip("releasd"):
                continue  # an empty record, or the heading once more
            finding, _ = rt.judge_row(chamber=row["chamber"], stroke_class=row["stroke_class"],
                                      rated_stroke=row["rated_stroke"], released=row["released"], applied=row["applied"],
                                      psi=row["psi"], division=row["division"], date=row["date"])
            yield row, finding


def by_unit(judged):
    """Prints one line a unit: how many wheel ends have each verdict, and the tightest margin."""
    units = collections.defaultdict(list)
    for row, finding in judged:
        units[row["unit_no"]].append(finding)
    print(f"{'unit':8}{'in':>5}{'out':>5}{'dead':>6}{'open':>6}   least to spare")
    for unit, findings in sorted(units.items()):
        counts = collections.Counter(finding.verdict for finding in findings)
        margins = [finding.margin for finding in findings if finding.margin is not None]
        least = rt.write_length(min(margins)) + " in" if margins else "not known"
        print(f"{unit:8}{counts[rt.Verdict.IN_ADJUSTMENT]:5}{counts[rt.Verdict.OUT_OF_ADJUSTMENT]:5}"
              f"{counts[rt.Verdict.INOPERATIVE]:6}{counts[rt.Verdict.UNDETERMINED]:6}   {least}")


def used(judged):
    """{service chamber: [(stroke as a part of the limit, verdict)]}, by family and size; the spring brake does not change
    the limit."""
    chambers = collections.defaultdict(list)
    for _, finding in judged:
        if finding.applied_stroke is not None and finding.limit:
            chamber = finding.chamber
            service = rt.Chamber(chamber.size, family=chamber.family, stroke_class=chamber.stroke_class)
            chambers[service].append((finding.applied_stroke / finding.limit, finding.verdict))
    return dict(sorted(chambers.items(), key=lambda item: (item[0].family.number, item[0].size.zfill(3), str(item[0]))))


def stack(points):
    """Each point with a height, so that points close together are stacked."""
    heights = collections.Counter()
    for share, verdict in sorted(points, key=lambda point: point[0]):
        place = round(share * 50)
        yield float(share), heights[place], verdict
        heights[place] += 1


def draw(chambers, path):
    import matplotlib
    matplotlib.use("Agg")
    import matplotlib.pyplot as plt
    plt.rcParams.update({"font.size": 10, "axes.spines.top": False, "axes.spines.right": False, "axes.spines.left": False})
    figure, axes = plt.subplots(figsize=(9, 1.7 + 0.4 * len(chambers)), layout="constrained")
    for line, (chamber, points) in enumerate(chambers.items()):
        axes.axhline(line, color="#e4e0d8", linewidth=1, zorder=0)
        for share, height, verdict in stack(points):
            color, marker, _ = LOOKS[verdict]
            axes.plot(share, line - 0.2 * height, marker=marker, color=color, markersize=7, markeredgecolor="white",
                      markeredgewidth=0.6, linestyle="none", zorder=3)
    axes.axvline(1, color="#1c1c1c", linewidth=1.2, linestyle=(0, (4, 2)), zorder=2)
    axes.annotate("adjustment limit", (1, -1.15), xytext=(5, 0), textcoords="offset points", va="center", fontsize=9)
    axes.set_yticks(range(len(chambers)), [f"{name}  ({len(points)})" for name, points in chambers.items()])
    axes.tick_params(axis="y", length=0)
    axes.set_ylim(len(chambers) - 0.5, -1.5)
    axes.set_xlim(left=-0.03)
    axes.annotate("did not move", (0, -1.15), va="center", ha="left", fontsize=9, xytext=(-4, 0),
                  textcoords="offset points")
    axes.xaxis.set_major_formatter(matplotlib.ticker.PercentFormatter(1))
    axes.set_xlabel("applied stroke as a part of the adjustment limit of the chamber on that day")
    shown = {verdict for points in chambers.values() for _, verdict in points}
    for verdict in LOOKS:
        if verdict in shown:
            color, marker, label = LOOKS[verdict]
            axes.plot([], [], marker=marker, color=color, linestyle="none", label=label)
    figure.legend(loc="outside lower center", ncols=len(shown), frameon=False)
    figure.suptitle("Stroke used, one mark a wheel end", x=0.01, ha="left", fontweight="bold")
    figure.savefig(path, dpi=150)


def main(fleet=FLEET, picture="fleet.png"):
    judged = list(read(fleet))
    by_unit(judged)
    try:
        draw(used(judged), picture)
    except ImportError:
        print("no picture: matplotlib is not installed")
    else:
        print(f"picture: {picture}")


if __name__ == "__main__":
    main(*sys.argv[1:])
