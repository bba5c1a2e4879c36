# SPDX-License-Identifier: Apache-2.0
"""What is shown: tables for notebooks, summaries, pictures. Pictures are left out where matplotlib is not installed."""
import importlib.util
import pickle
import subprocess
import sys
import xml.etree.ElementTree as tree
from fractions import Fraction

import rodtravel as rt
import tap

EVIL = '<script>alert("x")</script>&'
ROWS = {"unit_no": [EVIL, "T-2", "T-2"], "chamber": ["30", "30L", None], "released": ["2 1/8"] * 3,
        "applied": ["4 1/4", "4 1/4", "4"], "psi": ["95"] * 3}


def html(value):
    """The texts of its cells, and its whole text. It is well formed, and holds nothing but a table and its rest."""
    text = value._repr_html_()
    whole = tree.fromstring(f"<div>{text}</div>")
    assert {part.tag for part in whole.iter()} <= {"div", "table", "caption", "thead", "tbody", "tr", "th", "td", "p"}
    assert "background" not in text and "#" not in "".join(part.get("style", "") for part in whole.iter())
    return ["".join(part.itertext()) for part in whole.iter() if part.tag in ("th", "td")], "".join(whole.itertext())


def test_tables_of_notebooks():
    finding = rt.judge("30 standard", "2 1/8", "4 1/4", psi=95, division="1/16")
    cells, _ = html(finding)
    assert "out-of-adjustment" in cells and finding.sentence in cells and all(each in cells for each in finding.sentences)
    vehicle = rt.judge_vehicle([rt.WheelEnd("1L", finding), rt.WheelEnd("1R", rt.judge("24", "2", "2"))])
    cells, text = html(vehicle)
    assert str(vehicle.count.outcome) in cells and vehicle.count.sentence in cells and "4" not in vehicle.axles
    assert all(remark.sentence in cells for axle in vehicle.axles for remark in axle.remarks)
    answers = rt.judge_columns(ROWS)
    cells, _ = html(answers)
    assert cells[5:10] == ["2 1/8", "2", "-1/8", "out-of-adjustment",
                           "over-limit, assumed-standard, assumed-clamp"], cells
    found = rt.Judge().vehicles(ROWS, "unit_no")
    assert EVIL in html(found)[0] and "<script>" not in found._repr_html_()
    three = {"unit_no": ["T-3"] * 3, "chamber": ["30"] * 3, "released": ["2"] * 3, "applied": ["4", "4", "4 1/2"]}
    assert "33 1/3" in html(rt.Judge(psi=95).vehicles(three, "unit_no"))[0]  # as `batch --by` says it
    many = rt.judge_columns(chamber=["30"] * 50, released=["2"] * 50, applied=["4"] * 50)
    assert html(many)[1].endswith("30 more rows")
    assert "393.47(e)(1)" in html(rt.rule_set("us-fmcsr"))[1]
    assert "out-of-adjustment" in html(answers.summary())[0]


def test_summary():
    answers = rt.judge_columns(ROWS)
    found = answers.summary()
    assert found.rows == 3 and found.compared == 2 and found.least_margin == Fraction(-1, 8)
    assert found.used == {50: Fraction(85), 90: Fraction(213, 2), 99: Fraction(213, 2)} and found.most == Fraction(213, 2)
    assert "out-of-adjustment" in str(found) and "over-limit" in str(found) and "hardly-moved" not in str(found)
    assert pickle.loads(pickle.dumps(found)) == found
    nothing = answers[:0].summary()
    assert nothing.used == {50: None, 90: None, 99: None} and nothing.most is None and nothing.least_margin is None
    assert nothing + found == found and "%" not in str(nothing)
    far = rt.judge_columns(chamber=["30"], released=["0"], applied=["20"]).summary()
    assert far.compared == 1 and far.most is None and "more than 500 %" in str(far)
    tap.refused(TypeError, lambda: found + 1)
    tap.refused(AttributeError, setattr, found, "rows", 1)


def test_matplotlib_is_not_loaded():
    done = subprocess.run([sys.executable, "-c", "import sys, rodtravel; rodtravel.judge_columns(chamber=['30'], released="
                           "['2'], applied=['4']).summary(); print([name for name in ('matplotlib', 'numpy', 'pandas', "
                           "'pyarrow', 'polars') if name in sys.modules])"], capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n", done.stdout


def texts(axes):
    return [label.get_text() for label in (*axes.get_yticklabels(), *axes.get_xticklabels(), *axes.texts)] + [axes.get_title("left")]


def pictures():
    import matplotlib
    matplotlib.use("Agg")
    import matplotlib.pyplot as plt
    count = 3000
    chambers = [["30 standard", "24 standard", None][n % 3] for n in range(count)]
    applied = [["3 1/2", "4", "3", "4 1/8"][n % 4] for n in range(count)]
    answers = rt.judge_columns(chamber=chambers, released=["2"] * count, applied=applied, default_psi=95)
    shown = texts(rt.plot_used(answers, chambers))
    assert "30 standard  (1,000)" in shown and "24 standard  (1,000)" in shown and len(shown) > 4, shown
    assert "25.0%" in shown and "50.0%" in shown, shown
    ordered = texts(rt.plot_used(answers, [f"{n % 11 + 1}" for n in range(count)]))
    assert [text.split()[0] for text in ordered if "(" in text] == [str(n) for n in range(1, 12)]
    mixed = [None, "7", "", float("nan"), "8", 7] * (count // 6)
    columns = [mixed] + [package.table({"axle": [None, "7", None, "", "8", "7"] * (count // 6)})["axle"]
                         for package in [tap.package("pyarrow")] if package]
    for name in ("pandas", "polars"):
        if tap.package(name):
            columns.append(tap.package(name).Series([None, "7", None, "", "8", "7"] * (count // 6)))
    for labels in columns:
        shown = texts(rt.plot_used(answers[:count], labels))
        assert [text.split("  ")[0] for text in shown if "(" in text] == ["7", "8", "not given"], shown
    many = texts(rt.plot_used(answers, [f"c{n % 100}" for n in range(count)]))
    one = texts(rt.plot_used(answers, [f"c{n % 25}" for n in range(count)]))
    assert any("(1 label more)" in text for text in one)
    assert sum("(" in text and "more" not in text for text in many) == 24 and any("76 labels more" in text for text in many)
    axes = rt.plot_limit(answers)
    heights = [round(bar.get_height()) for bar in axes.patches]
    assert sum(heights) == 2000 and heights[12] == 250, heights  # 30 at 2 in
    fine = rt.judge_columns(chamber=["30"] * 3, released=["1"] * 3, applied=["2.999999", "3", "3.000001"])
    assert [round(bar.get_height()) for bar in rt.plot_limit(fine).patches][11:14] == [1, 1, 1]
    figure, given = plt.subplots()
    assert rt.plot_map(answers, [f"T-{n % 60}" for n in range(count)], [f"{n % 3 + 1}L" for n in range(count)], axes=given) is given
    assert any("worst 40 of 60" in text for text in texts(given))
    tap.refused(ValueError, rt.plot_used, answers, ["30"])
    for labels in ("Chamber", None, 5):
        assert "labels are a column" in str(tap.refused(TypeError, rt.plot_used, answers, labels))
    for draw, words in ((rt.plot_used, [chambers]), (rt.plot_limit, []), (rt.plot_map, [chambers, chambers])):
        assert "a Judge gives when it is called, not dict" in str(tap.refused(TypeError, draw, {}, *words))
    nothing = rt.judge_columns(chamber=[None], released=["2"], applied=["4"])
    for axes in (rt.plot_used(nothing, ["x"]), rt.plot_limit(nothing), rt.plot_map(nothing, ["a"], ["b"]),
                 *(draw(nothing[:0], *labels) for draw, *labels in ((rt.plot_used, []), (rt.plot_limit,), (rt.plot_map, [], [])))):
        axes.figure.canvas.draw()
    plt.close("all")


if __name__ == "__main__":
    if importlib.util.find_spec("matplotlib"):
        test_pictures = pictures
    tap.run(dict(globals()))
