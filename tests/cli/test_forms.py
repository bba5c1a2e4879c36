# SPDX-License-Identifier: Apache-2.0
"""The example that judges forms in threads: python3 test_forms.py EXAMPLE_FORMS RODTRAVEL"""
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import tap

# 49 CFR 393.47(e)(1): type 30 standard, 2 in; type 20 standard, 1 3/4 in. The carrier's is our own, and stricter.
GOOD = "Chamber: 30\nStroke class: standard\nReleased: 2 1/8\nApplied: 4\nPSI: 95\nDate: 2026-03-02\n"
OVER = "chamber: 20\r\nstroke class: standard\r\nreleased: 2\r\napplied: 3 7/8\r\npsi: 95\r\n"
OWN = "family,size,class,limit\nclamp,30,standard,1 3/4\n"


class Forms(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def run_forms(self, limits, *texts):
        for number, text in enumerate(texts):
            (self.folder / f"{number}.txt").write_bytes(text.encode())
        if limits != "-":
            (self.folder / "own.csv").write_text(limits, encoding="utf-8")
            limits = "own.csv"
        names = [f"{number}.txt" for number in range(len(texts))]
        return subprocess.run([EXAMPLE, limits, *names], cwd=self.folder, capture_output=True, encoding="utf-8",
                              timeout=60, check=False)

    def test_json_in_the_order_of_the_forms(self):
        result = self.run_forms("-", *[GOOD, OVER] * 20)
        verdicts = [json.loads(line)["verdict"] for line in result.stdout.splitlines()]
        self.assertEqual(verdicts, ["in-adjustment", "out-of-adjustment"] * 20)
        self.assertEqual((result.returncode, result.stderr), (0, ""))

    def test_finding_is_that_of_the_command(self):
        shown = json.loads(self.run_forms("-", GOOD).stdout)
        command = subprocess.run([COMMAND, "stroke", "30", "2 1/8", "4", "--class", "standard", "--psi", "95", "--as-of", "2026-03-02",
                                  "--json"],
                                 capture_output=True, encoding="utf-8", check=True)
        told = json.loads(command.stdout)
        self.assertEqual({name: told.get(name) for name in shown}, shown)

    def test_own_limit(self):
        result = self.run_forms(OWN, GOOD)
        self.assertEqual(json.loads(result.stdout)["verdict"], "out-of-adjustment", result.stderr)

    def test_errors_at_their_field(self):
        cases = [("chamber: 30\nreleased: 2 1/x\napplied: 4\n", "0.txt: released, column 5"),
                 ("chamber: 30\nreleased: 2\n", "0.txt: applied"), ("chamber: 30\nrelesed: 2\napplied: 4\n", "0.txt: relesed"),
                 ("chamber: 30\nchamber: 30\n", "0.txt: chamber"), ("chamber 30\n", "0.txt: chamber 30")]
        for text, said in cases:
            with self.subTest(text=text):
                result = self.run_forms("-", text)
                self.assertEqual((result.returncode, result.stdout), (2, ""))
                self.assertIn(said, result.stderr)

    def test_every_wrong_field_of_a_form(self):
        result = self.run_forms("-", "chamber: round\nreleased: 2 1/x\napplied: \npsi: 12 mm\n", GOOD)
        self.assertEqual([line.split(",")[0] for line in result.stderr.splitlines()],
                         ["0.txt: chamber", "0.txt: released", "0.txt: applied", "0.txt: psi"])
        self.assertEqual(json.loads(result.stdout)["verdict"], "in-adjustment")

    def test_laxer_limits_are_refused_at_their_line(self):
        result = self.run_forms(OWN.replace("1 3/4", "2 1/4"), GOOD)
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        self.assertIn("own.csv:2:", result.stderr)

    def test_files_that_cannot_be_read(self):
        result = subprocess.run([EXAMPLE, "-", "nothing.txt"], cwd=self.folder, capture_output=True, encoding="utf-8", check=False)
        self.assertEqual(result.returncode, 2)
        self.assertIn("nothing.txt: ", result.stderr)


if __name__ == "__main__":
    EXAMPLE, COMMAND = (str(Path(path).resolve()) for path in sys.argv[1:3])
    tap.main()
