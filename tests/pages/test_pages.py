# SPDX-License-Identifier: Apache-2.0
"""Looks at the pages that the command writes with programs made for it: an HTML checker, an accessibility checker in a
browser, a JSON Schema validator, and the browser's printer.

python3 test_pages.py PATH_TO_RODTRAVEL FOLDER_WITH_NODE_MODULES
"""
import copy
import html
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "cli"))
import tap  # noqa: E402

DATA = ROOT / "examples" / "data"
RECORD = json.loads((DATA / "inspection.json").read_text(encoding="utf-8"))
BROWSER = ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
           "--disable-background-networking", "--disable-component-update", "--disable-sync"]
AXE = """<script>%s</script><script>
axe.run().then(function (found) {
  var rules = found.violations.map(function (one) { return one.id + ": " + one.nodes[0].html; });
  document.title = "axe " + found.passes.length + " passed " + JSON.stringify(rules);
});
</script></body>"""
# Cards whose text is cut off, in a browser that shows them as high as on Letter.
CUT_OFF = """<script>
var cut = [].filter.call(document.querySelectorAll(".card"), function (card) {
  return card.scrollHeight > card.clientHeight || card.scrollWidth > card.clientWidth;
});
document.title = "fit " + document.querySelectorAll(".card").length + " " + JSON.stringify(cut.map(function (card) {
  return card.closest("[data-page]").dataset.page + ": " + card.querySelector("h2").textContent;
}));
</script></body>"""
# Texts of a drawing that leave it, or are over each other; a line takes half of the height of its box.
OVERLAPS = """<script>
var found = [], all = 0;
document.querySelectorAll("svg").forEach(function (svg) {
  var boxes = [].map.call(svg.querySelectorAll("text"), function (text) {
    var box = text.getBBox(), quarter = box.height / 4;
    return {text: text.textContent, left: box.x, right: box.x + box.width, top: box.y + quarter,
            bottom: box.y + box.height - quarter};
  });
  all += boxes.length;
  boxes.forEach(function (one, i) {
    var over = boxes.slice(i + 1).find(function (two) {
      return one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom;
    });
    if (one.left < -9 || one.right > svg.viewBox.baseVal.width || one.bottom > svg.viewBox.baseVal.height || over)
      found.push(svg.closest("[data-page]").dataset.page + ": " + one.text);
  });
});
document.title = "fit " + all + " " + JSON.stringify(found);
</script></body>"""
LANGUAGES = ("en", "fr", "es")
VALIDATE = """
const Ajv = require("ajv/dist/2020");
const input = JSON.parse(require("fs").readFileSync(0, "utf8"));
const check = new Ajv({strict: true, allErrors: true}).compile(input.schema);
console.log(JSON.stringify(input.records.map((record) => check(record))));
"""


def run(*command, **more):
    return subprocess.run([str(word) for word in command], capture_output=True, encoding="utf-8", timeout=120, check=False,
                          **more)


def hostile():
    record = copy.deepcopy(RECORD)
    record["unit"] = "<script>alert(1)</script> \"T-114\" \u202e&amp; 'R'"
    record["wheel_ends"][0]["remark"] = "</td></table><b>" + "very long " * 40
    return record


def one_axle():
    return {**{key: RECORD[key] for key in ("record", "version", "date", "rules")}, "wheel_ends": RECORD["wheel_ends"][:2]}


class Pages(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def page(self, record, name="report"):
        path = self.folder / f"{name}.html"
        result = run(COMMAND, "report", "-", "--html", path, input=json.dumps(record))
        self.assertIn(result.returncode, (0, 1, 3), result.stderr)
        return path

    def practice(self, seed):
        paths = self.folder / f"sheet-{seed}.html", self.folder / f"key-{seed}.html"
        result = run(COMMAND, "practice", "--seed", seed, "--vehicle", "combination", "--level", "hard", "--sheet", paths[0],
                     "--key", paths[1])
        self.assertEqual(result.returncode, 0, result.stderr)
        return paths

    def spoken(self):
        """Pages that need no record: cards, the limits for the cab, checks to be practised and their key."""
        paths = [self.folder / f"{name}.html" for name in ("cards", "limits", "checks", "checks-key")]
        for arguments in (("cards", "--rules", "ca-on", "--html", paths[0]), ("limits", "--html", paths[1]),
                          ("practice", "--checks", "--rules", "ca-on", "--seed", 7, "--sheet", paths[2], "--key", paths[3])):
            result = run(COMMAND, *arguments)
            self.assertEqual(result.returncode, 0, result.stderr)
        return paths

    def validate(self, page):
        (self.folder / ".htmlvalidate.json").write_text(
            '{"root": true, "extends": ["html-validate:standard", "html-validate:a11y"]}', encoding="utf-8")
        result = run(MODULES / ".bin" / "html-validate", page, cwd=self.folder)
        self.assertEqual(result.returncode, 0, result.stdout + result.stderr)

    def browse(self, *options):
        return run(*BROWSER, f"--user-data-dir={self.folder / 'profile'}", *options)

    def test_html(self):
        for name, record in (("example", RECORD), ("hostile", hostile()), ("small", one_axle())):
            with self.subTest(name):
                self.validate(self.page(record, name))
        for seed in (1, 2):
            for page in self.practice(seed):
                with self.subTest(page.name):
                    self.validate(page)
        for page in self.spoken():
            with self.subTest(page.name):
                self.validate(page)

    def test_the_html_checker_can_fail(self):
        page = self.folder / "bad.html"
        page.write_text("<!DOCTYPE html><html><head><title>x</title></head><body><p><div></p><img></body></html>",
                        encoding="utf-8")
        self.assertNotEqual(run(MODULES / ".bin" / "html-validate", page).returncode, 0)

    def axe(self, text, size):
        page = self.folder / "axe.html"
        script = (MODULES / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
        # The page forbids scripts; the checker is one.
        text = re.sub('<meta http-equiv="Content-Security-Policy"[^>]*>', "", text)
        page.write_text(text.replace("</body>", AXE % script), encoding="utf-8")
        text = self.browse(f"--window-size={size}", "--virtual-time-budget=20000", "--dump-dom", page.as_uri()).stdout
        found = re.search(r"<title>axe (\d+) passed (\[.*?\])</title>", text, re.DOTALL)
        self.assertIsNotNone(found, text[:500])
        return int(found[1]), json.loads(found[2].replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))

    def test_accessible(self):
        for name, record in (("example", RECORD), ("hostile", hostile())):
            for size in ("1280,1000", "390,844"):
                with self.subTest(name, size=size):
                    passed, violations = self.axe(self.page(record).read_text(encoding="utf-8"), size)
                    self.assertGreater(passed, 10)
                    self.assertEqual(violations, [])
        for page in (*self.practice(3), *self.spoken()):
            with self.subTest(page.name):
                self.assertEqual(self.axe(page.read_text(encoding="utf-8"), "390,844")[1], [])

    def test_the_accessibility_checker_can_fail(self):
        _, violations = self.axe('<!DOCTYPE html><html><head><title>x</title></head><body><img src="x.png">'
                                 '<p style="color:#eee;background:#fff">pale</p></body></html>', "800,600")
        self.assertTrue(any(one.startswith("html-has-lang") for one in violations), violations)
        self.assertTrue(any(one.startswith("image-alt") for one in violations), violations)

    def printed(self, page, paper):
        paper_file = self.folder / "page.pdf"
        text = page.read_text(encoding="utf-8").replace("</style>", f"@page{{size:{paper}}}</style>", 1)
        page.write_text(text, encoding="utf-8")
        self.browse("--no-pdf-header-footer", f"--print-to-pdf={paper_file}", page.as_uri())
        data = paper_file.read_bytes()
        sizes = {tuple(round(float(n)) for n in box.split()) for box in re.findall(rb"/MediaBox \[([^\]]*)\]", data)}
        return len(re.findall(rb"/Type /Page\b", data)), sizes

    def test_paper(self):
        for paper, box in (("A4", (0, 0, 595, 842)), ("letter", (0, 0, 612, 792))):
            with self.subTest(paper):
                for page in (self.page(RECORD), self.practice(4)[0]):
                    count, sizes = self.printed(page, paper)
                    self.assertIn(count, (1, 2), page.name)
                    self.assertEqual(len(sizes), 1)
                    self.assertTrue(all(abs(a - b) <= 1 for a, b in zip(sizes.pop(), box)))
                cards, limits, *_ = self.spoken()
                self.assertEqual((self.printed(cards, paper)[0], self.printed(limits, paper)[0]), (5, 1))
                half = self.folder / "half.html"  # the last sheet has its upper cards only
                run(COMMAND, "cards", "--rules", "ca-on", "--vehicle", "single", "--html", half)
                self.assertEqual(self.printed(half, paper)[0], 5)
                for language in LANGUAGES[1:]:
                    for rules in ("us-fmcsr", "ca-on"):
                        cab = self.folder / f"{rules}-{language}.html"
                        run(COMMAND, "limits", "--rules", rules, "--language", language, "--html", cab)
                        self.assertEqual(self.printed(cab, paper)[0], 1, cab.name)

    def find_misfits(self, script, part, pages, form="--html"):
        """One page of those parts of many; what the script finds there."""
        parts, style = [], ""
        for arguments in pages:
            result = run(COMMAND, *arguments, form, "-")
            self.assertIn(result.returncode, (0, 3), result.stderr)
            style = re.search("(?s)<style>.*?</style>", result.stdout)[0]
            parts += [f'<div data-page="{" ".join(arguments)}">', *re.findall(part, result.stdout), "</div>"]
        page = self.folder / "fit.html"
        page.write_text("<!DOCTYPE html><html><head><meta charset=utf-8><title></title>" + style + "</head><body>" +
                        "".join(parts) + script + "</html>", encoding="utf-8")
        text = self.browse("--window-size=1280,1000", "--virtual-time-budget=20000", "--dump-dom", page.as_uri()).stdout
        found = re.search(r"<title>fit (\d+) (\[.*?\])</title>", text, re.DOTALL)
        self.assertIsNotNone(found, text[:500])
        return int(found[1]), json.loads(html.unescape(found[2]))

    def test_every_card_fits_in_every_language(self):
        sets = json.loads(run(COMMAND, "limits", "--list", "--json").stdout)["rule_sets"]
        pages = [["cards", "--rules", one["rules"], "--language", language, *more] for one in sets
                 for language in LANGUAGES for more in ([], ["--vehicle", "single"], ["--towed", "2"])]
        count, cut = self.find_misfits(CUT_OFF, "(?s)<section.*?</section>", pages)
        self.assertGreater(count, 2000)
        self.assertEqual(cut, [])

    def test_the_drawing_for_the_cab_fits_in_every_language(self):
        pages = [["limits", "--rules", rules, "--language", language]
                 for rules in ("us-fmcsr", "us-periodic", "ca-on", "ca-nsc") for language in LANGUAGES]
        count, over = self.find_misfits(OVERLAPS, "(?s)<svg.*?</svg>", pages, "--svg")
        self.assertGreater(count, 400)
        self.assertEqual(over, [])

    def test_schema(self):
        """By a validator that shares nothing with the command; the command refuses the same records."""
        good = [RECORD, hostile(), one_axle()]
        bad = [{**one_axle(), "version": 99}, {**one_axle(), "aplied": "3"}, {**one_axle(), "date": 20261120},
               {**one_axle(), "wheel_ends": [{"position": "1L", "released": 2.5}]}, [], {"record": "something-else"}]
        schema = json.loads((DATA / "inspection.schema.json").read_text(encoding="utf-8"))
        result = run("node", "-e", VALIDATE, input=json.dumps({"schema": schema, "records": good + bad}),
                     env={**os.environ, "NODE_PATH": str(MODULES)})
        self.assertEqual(result.stdout.strip(), json.dumps([True] * len(good) + [False] * len(bad)).replace(" ", ""),
                         result.stderr)
        for record in bad:
            self.assertEqual(run(COMMAND, "report", "-", input=json.dumps(record)).returncode, 2, record)


if __name__ == "__main__":
    COMMAND, MODULES = Path(sys.argv[1]).resolve(), Path(sys.argv[2]).resolve() / "node_modules"
    tap.main()
