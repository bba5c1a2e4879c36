# SPDX-License-Identifier: Apache-2.0
"""What `rodtravel air` and `rodtravel limits --air` say: python3 test_air.py PATH_TO_RODTRAVEL EXAMPLE_AIRCHECK"""
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import tap

RULES = ["us-fmcsr", "us-periodic", "ca-on", "us-inuse", "us-newvehicle", "us-oos", "us-cdl", "us-cdl-later", "us-cdl-skills",
         "us-ca", "us-nh", "us-nv", "us-sc", "us-tx", "ca-ab", "ca-bc", "ca-nb", "ca-nl", "ca-qc", "ca-sk", "au", "nz"]


def run(*arguments):
    return subprocess.run([COMMAND, *map(str, arguments)], capture_output=True, text=True, encoding="utf-8", timeout=60,
                          check=False)


class Case(unittest.TestCase):
    def answer(self, status, line):
        result = run("air", *line.split(" "))
        self.assertEqual((result.returncode, result.stderr), (status, ""), result.stdout)
        if "--json" not in line:
            self.assertLessEqual(max(map(len, result.stdout.splitlines())), 80, result.stdout)
        return result.stdout

    def said(self, status, line):
        """The answer without its line ends, and the first word of it."""
        text = self.answer(status, line)
        return text.split()[0], " ".join(text.split())

    def judged(self, status, line):
        return json.loads(self.answer(status, line + " --json"))

    def refused(self, line, *says):
        result = run("air", *line.split(" "))
        self.assertEqual((result.returncode, result.stdout), (2, ""), line)
        for word in says:
            self.assertIn(word, " ".join(result.stderr.split()))


class Checks(Case):
    def test_warning(self):
        word, text = self.said(0, "warning 62")
        self.assertEqual(word, "GOOD")
        self.assertIn("came on at 62 psi; required: not less than 60 psi: good", text)
        self.assertIn("Limit defective below 60 psi", text)
        self.assertIn("us-fmcsr: 49 CFR 571.121, S5.1.5", text)
        self.assertIn("Chock the wheels", text)
        self.assertEqual(self.said(1, "warning 59 --built 2015")[0], "DEFECTIVE")
        self.assertIn("exactly the edge, which passes", self.said(0, "warning 60 --built 2015")[1])
        word, text = self.said(3, "warning 57")
        self.assertEqual(word, "UNDETERMINED")
        self.assertIn("the day of build decides", text)
        self.assertEqual(self.said(0, "warning 50 --built 1970 --cut-out 100")[0], "GOOD")
        self.assertEqual(self.said(3, "warning 50 --built 1970")[0], "UNDETERMINED")

    def test_never(self):
        word, text = self.said(1, "warning never --rules ca-on")
        self.assertEqual(word, "DEFECTIVE")
        self.assertIn("never came on; required: not less than 55 psi: defective, a major defect", text)
        for line in "build-up never --rules ca-on", "parking-valve never --rules ca-ab", "cut-out no --rules us-inuse":
            self.assertEqual(self.said(1, line)[0], "DEFECTIVE")
        self.assertIn("the governor never cut out: defective", self.said(1, "cut-out never --rules us-cdl")[1])
        self.assertEqual(self.said(1, "build-up --seconds never --rules ca-on"), self.said(1, "build-up never --rules ca-on"))
        self.refused("loss-applied --before 110 --after 105 --seconds never", "--seconds")
        self.refused("loss-applied never", "takes options and no operand")
        self.refused("drain never", "free or stuck")

    def test_what_cannot_be(self):
        for line in ("cut-in 140 --cut-out 120", "cut-out 120 --cut-in 120", "warning 110", "warning 85 --cut-in 80",
                     "cut-out 40", "build-up --seconds 0 --from 85 --to 100"):
            self.assertIn("again", self.said(3, line + " --rules ca-on")[1])
        self.assertEqual(self.said(3, "cut-in 0 --rules us-cdl")[0], "UNDETERMINED")

    def test_build_up(self):
        self.assertEqual(self.said(0, "build-up --seconds 38 --from 85 --to 100 --rules us-cdl")[0], "GOOD")
        self.assertEqual(self.said(0, "build-up --seconds 2:00 --from 85 --to 100 --rules ca-on")[0], "GOOD")
        self.assertEqual(self.said(1, "build-up --seconds 2:01 --from 85 --to 100 --rules ca-on")[0], "DEFECTIVE")
        self.assertEqual(self.said(1, "build-up --seconds 3:00 --from 350kPa --to 620kPa --rules ca-qc")[0], "DEFECTIVE")
        volume = "--reservoirs 6960 --chambers 20,20,30,30,30,30 --rules us-newvehicle"
        self.assertEqual(self.said(0, f"build-up --seconds 31.25 --from 85 --to 100 {volume}")[0], "GOOD")
        self.assertEqual(self.said(1, f"build-up --seconds 31.26 --from 85 --to 100 {volume}")[0], "DEFECTIVE")
        self.assertIn("--reservoirs", self.said(3, "build-up --seconds 30 --from 85 --to 100 --rules us-newvehicle")[1])
        self.assertIn("another span, 85 psi to 100 psi",
                      self.said(3, "build-up --seconds 30 --from 80 --to 100 --rules ca-on")[1])
        self.assertEqual(self.said(0, "build-up --seconds 1:30 --start applications --vehicle bus --built 2001 --rules nz")[0],
                         "GOOD")

    def test_a_trailer_has_no_compressor(self):
        """49 CFR 571.121, S5.1.1 is for trucks and buses: their own reservoirs, at x 12 of S5.1.2.1, never x 8."""
        alone = "build-up --seconds 26 --from 85 --to 100 --reservoirs 2848 --chambers 30,30,30,30 --rules us-newvehicle"
        self.assertEqual(self.judged(1, alone)["allowed"], "16 2/3")
        self.refused(alone + " --trailer", "--trailer")
        self.assertIn("by Table V; where the actual volume of the chambers is lower, more time is allowed",
                      self.said(1, alone)[1])

    def test_a_rounded_twin(self):
        """21 kPa is printed beside 3 psi, which is 20.68 kPa; the psi figure judges, and that is said."""
        loss = "loss-applied --before {}kPa --after 700kPa --vehicle single --rules ca-on"
        self.assertIn("Note in whole kPa the reading is at the edge", self.said(1, loss.format(721))[1])
        self.assertNotIn("whole kPa", self.said(1, loss.format(722))[1])
        self.assertNotIn("whole kPa", self.said(0, loss.format(720))[1])
        self.assertIn("whole kPa", self.said(1, "cut-out 931kPa --rules ca-on")[1])
        self.assertIn("whole kPa", self.said(1, "warning 379kPa --rules ca-on")[1])
        self.assertNotIn("whole kPa", self.said(0, "cut-out 135 --rules ca-on")[1])
        self.assertNotIn("whole kPa", self.said(1, "warning 379kPa --rules ca-qc")[1])
        self.assertIn("whole kPa", self.said(1, "parking-valve 311kPa --rules ca-ab")[1])
        self.assertNotIn("whole kPa", self.said(1, "parking-valve 312kPa --rules ca-ab")[1])
        self.assertNotIn("whole kPa", self.said(0, "supply-valve 414kPa --rules ca-ab")[1])
        self.assertIn("whole kPa", self.judged(1, loss.format(721))["note"])
        self.assertIsNone(self.judged(1, loss.format(722))["note"])
        valve = "parking-valve {}kPa --rules ca-ab"  # 20 to 45 psi (138 to 311 kPa), and 45 psi is 310.26 kPa
        self.assertIn("whole kPa", self.said(1, valve.format(311))[1])
        self.assertNotIn("whole kPa", self.said(1, valve.format(312))[1])

    def test_what_was_not_said_stays_open(self):
        loss = "loss-applied --before 110 --after 105 --rules us-ca"
        self.assertEqual(self.said(3, loss)[0], "UNDETERMINED")
        self.assertIn("number of towed units decides", self.said(3, loss + " --vehicle combination")[1])
        self.assertEqual(self.said(0, loss + " --towed 2")[0], "GOOD")
        self.assertIn("another way", self.said(3, "build-up --seconds 95 --start applications --vehicle single --rules nz")[1])
        self.assertEqual(self.said(0, "build-up --seconds 170 --from 345kPa --to 620kPa --rules ca-bc")[0], "GOOD")

    def test_governor(self):
        self.assertEqual(self.said(0, "cut-out 135 --rules us-inuse")[0], "GOOD")
        self.assertEqual(self.said(1, "cut-out 130 --rules us-ca")[0], "DEFECTIVE")
        self.assertEqual(self.said(0, "cut-out 150 --rules us-cdl")[0], "NOTED")
        self.assertEqual(self.said(0, "cut-in 100 --cut-out 125 --rules ca-sk")[0], "GOOD")
        self.assertEqual(self.said(1, "cut-in 106 --cut-out 125 --rules ca-sk")[0], "DEFECTIVE")
        self.assertEqual(self.said(0, "cut-in 90 --vehicle bus --built 2015 --rules us-newvehicle")[0], "GOOD")
        self.assertIn("bus decides", self.said(3, "cut-in 90 --built 2015 --rules us-newvehicle")[1])
        self.assertIn("us-inuse", self.said(3, "cut-out 125")[1])

    def test_losses(self):
        self.assertEqual(self.said(1, "loss-released --before 110 --after 108 --vehicle single --rules us-cdl")[0], "DEFECTIVE")
        self.assertEqual(self.said(0, "loss-applied --before 110 --after 107 --vehicle single --rules us-cdl")[0], "GOOD")
        self.assertIn("is 6 psi per minute", self.said(1, "loss-applied --before 110 --after 107 --seconds 30 --towed 1 --rules us-cdl")[1])
        self.assertEqual(self.judged(0, "loss-applied --before 110 --after 105 --towed 2 --rules us-inuse")["allowed"], "5")
        kpa = self.judged(1, "loss-applied --before 800kPa --after 759kPa --vehicle single --rules ca-qc")
        self.assertEqual((kpa["measured"], kpa["measure"], kpa["major"]), ("41", "kPa-per-minute", True))
        self.assertEqual(self.said(0, "loss-applied --before 800kPa --after 760kPa --vehicle single --rules ca-qc")[0], "NOTED")
        self.assertEqual(self.judged(3, "loss-applied --before 100 --after 101 --vehicle single --rules us-cdl")["missing"], "sense")

    def test_reserve(self):
        text = self.said(0, "reserve --before 120 --after 105 --built 1970")[1]
        self.assertIn("87 1/2 % left", text)
        self.assertIn("unconfirmed", text)
        self.assertIn("the day of build decides", self.said(3, "reserve --before 120 --after 105")[1])
        self.assertIn("us-fmcsr has no figure", self.said(3, "reserve --before 120 --after 60 --built 2015")[1])
        self.assertEqual(self.said(1, "reserve --before 100 --after 79 --rules us-tx")[0], "DEFECTIVE")
        self.assertEqual(self.judged(3, "reserve --before 100 --after 60 --applications 1 --rules au")["missing"], "applications")

    def test_words(self):
        for check, good, bad in (("spring-brake", "holds", "moves"), ("drain", "free", "stuck"),
                                 ("contamination", "none", "found")):
            self.assertEqual(self.said(0, f"{check} {good}")[0], "GOOD")
            word, text = self.said(1, f"{check} {bad}")
            self.assertEqual(word, "DEFECTIVE")
            self.assertIn("common practice, no source", text)
            self.assertIn("Do not drive", text)
        self.assertEqual(self.said(1, "audible-leak heard --rules ca-qc")[0], "DEFECTIVE")

    def test_ontario(self):
        text = self.said(1, "cut-out 140 --rules ca-on")[1]
        self.assertIn("required: not more than 135 psi: defective (figure common practice, no source)", text)
        self.assertIn("prints 80 to 135 psi (6-1-6) and 80 to 145 psi (6-1-4)", text)
        self.assertIn("a major defect", self.said(1, "tractor-protection escapes --rules ca-on")[1])
        self.assertEqual(self.said(0, "tractor-protection holds --rules ca-on")[0], "GOOD")
        self.assertEqual(self.said(3, "tractor-protection 60 --rules ca-on")[0], "UNDETERMINED")
        self.assertEqual(self.said(0, "trailer-brakes apply --rules ca-on")[0], "GOOD")
        self.assertIn("a major defect", self.said(1, "trailer-brakes none --rules ca-on")[1])
        self.assertIn("moisture, oil or sludge", self.said(1, "contamination found --rules ca-on")[1])
        loss = self.said(0, "loss-applied --before 110 --after 107 --vehicle single --rules ca-on")[1]
        self.assertIn("wheels chocked, spring brakes released, 80 to 135 psi, engine off, key on", loss)
        self.assertIn("minor", self.said(1, "build-up --seconds 121 --from 85 --to 100 --rules ca-on")[1])

    def test_a_minor_defect_is_said_as_such(self):
        # Ontario Truck handbook, section 6-1-4: a minor defect is written down and told, it does not forbid driving.
        text = self.said(1, "audible-leak heard --rules ca-on")[1]
        self.assertIn("audible leak, a minor defect", text)
        self.assertNotIn("Do not drive", text)
        self.assertIn("Write it on the inspection report", text)
        found = self.judged(1, "audible-leak heard --rules ca-on")
        self.assertEqual((found["major"], found["minor"]), (False, True))

    def test_nothing_recorded(self):
        self.assertEqual(self.said(3, "warning")[0], "NOT-DONE")
        self.assertEqual(self.judged(3, "drain")["result"], "not-done")


class Estimate(Case):
    def test_trailer(self):
        text = self.said(0, "estimate --psi 105 --reservoirs 2848 --chambers 30,30,30,30 --fill 3/5 --floor 90")[1]
        self.assertIn("96.6 psi after 1, 88.9 psi after 2", text)
        self.assertIn("1 full application keeps 90 psi or more", text)
        self.assertIn("no figure of law", text)

    def test_exact(self):
        data = self.judged(0, "estimate --psi 100 --reservoirs 5568 --chambers 20,20,30,30,30,30 --floor 60")
        self.assertEqual((data["psi_after_one"], data["psi_after_one_rounded"], data["applications"]),
                         ("91 23/130", "91.2", "5"))
        self.assertIs(data["estimate"], True)

    def test_floor_of_the_window(self):
        self.assertEqual(self.judged(0, "estimate --psi 100 --reservoirs 5568 --chambers 30,30")["floor"], "90")
        self.refused("estimate --psi 100 --reservoirs 5568 --chambers 30,30 --rules us-cdl", "--floor")


class Refusals(Case):
    def test_usage(self):
        self.refused("warnings 62", 'no check "warnings"', "warning, build-up", "estimate")
        self.refused("warning 62 --seconds 3", "does not take --seconds")
        self.refused("reserve 62", "takes options")
        self.refused("spring-brake yes", "holds or moves")
        self.refused("warning 6O", "cannot be read")
        self.refused("warning 620", "300 psi")
        self.refused("warning 62 --rules us-xx", "us-xx")
        self.refused("warning 62 --built 1975-02-30", "--built")
        self.refused("loss-applied --before 110 --after 108 --vehicle single --towed 1", "--towed")
        self.refused("loss-applied --before 110 --after 108 --towed 0", "from 1 to 99")
        self.refused("build-up --seconds x --from 85 --to 100", "--seconds")
        self.refused("build-up --seconds 1:75 --from 85 --to 100", "--seconds")
        self.refused("build-up --seconds 9999999999 --from 85 --to 100", "--seconds")
        self.refused("build-up --seconds 30 --from 85 --to 100 --chambers 30,C", "cannot be read")
        self.refused("build-up --seconds 30 --from 85 --to 100 --chambers dd3", "Table V")
        self.refused("build-up --seconds 30 --from 85 --to 100 --chambers 30,", "ends in a comma")
        self.refused("build-up --seconds 30 --from 85 --to 100 --reservoirs 0", "above zero")
        self.refused("estimate --psi 100", "needs --psi")
        self.refused("estimate --psi 100 --reservoirs 100 --chambers 30 --fill 3/2", "0 to 1")
        self.refused("estimate --psi 100 --before 3", "only")
        self.refused("estimate 100 --psi 100 --reservoirs 100 --chambers 30", "no operand")


OWN_FIGURES = """\
# Invented figures of a carrier.
check,vehicle,comparison,value,measure,source
loss-applied,single,not-more-than,2,psi-per-minute,Shop bulletin 7
cut-out,,not-more-than,130,psi,
"""


class OwnFigures(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.file = Path(folder.name) / "own.csv"
        self.file.write_text(OWN_FIGURES, encoding="utf-8")

    def test_stricter(self):
        own = f"--rules us-cdl --limits {self.file}"
        loss = "loss-applied --before 110 --after {} --vehicle single " + own
        text = self.said(1, loss.format(107))[1]
        self.assertIn("defective (the carrier's own figure; by the law: good)", text)
        self.assertIn("own.csv: Shop bulletin 7 (none)", text.replace(str(self.file.parent) + "/", ""))
        self.assertNotIn("read in the source", text.split(" Law ")[0])
        self.assertRegex(text, r" Law more than 3 psi in one minute is too much; us-cdl: .* \(read in the source\)")
        text = self.said(1, loss.format(106))[1]
        self.assertIn("us-cdl:", text)
        self.assertNotIn("carrier", text)
        self.assertEqual(self.said(0, loss.format(108))[0], "GOOD")
        self.assertEqual(self.said(1, f"cut-out 140 {own}")[0], "DEFECTIVE")
        self.assertEqual(self.said(0, "cut-out 140 --rules us-cdl")[0], "NOTED")
        self.assertEqual(self.said(0, f"warning 62 {own}")[0], "GOOD")

    def test_wrong_files(self):
        for row, says in (("loss-applied,single,not-more-than,4,psi-per-minute,", "own.csv:3: value: \"not more than 4 psi/min\" is "
                           "laxer than the law, which has not more than 3 psi/min for a single vehicle"),
                          ("loss-applied,single,not-more-than,4,bar,", "own.csv:3: measure: expected psi, kPa, seconds"),
                          ("warning,single,not-less-than,70,seconds,", "own.csv:3: check \"warning\" is not measured in \"seconds\"")):
            self.file.write_text("\n".join(OWN_FIGURES.splitlines()[:2]) + "\n" + row + "\n", encoding="utf-8")
            self.refused(f"warning 62 --rules us-cdl --limits {self.file}", says)

    def test_strokes_and_air_in_one_file(self):
        self.file.write_text(OWN_FIGURES + "\nfamily,size,class,limit\nclamp,30,standard,1 7/8\n", encoding="utf-8")
        self.assertIn("single vehicle", self.said(3, f"loss-applied --before 110 --after 107 --limits {self.file}")[1])
        stroke = run("stroke", "30", "2", "4", "--class", "standard", "--limits", self.file)
        self.assertEqual(stroke.returncode, 1, stroke.stdout + stroke.stderr)
        table = run("limits", "--air", "--rules", "us-cdl", "--limits", self.file)
        self.assertEqual(table.returncode, 0)
        self.assertIn("not more than 2 psi/min", table.stdout)
        rows = json.loads(run("limits", "--air", "--rules", "us-cdl", "--limits", self.file, "--json").stdout)
        self.assertEqual([row["check"] for row in rows["own_air"]], ["loss-applied", "cut-out"])


class Table(unittest.TestCase):
    def test_every_rule_set_fits_the_screen(self):
        rows = 0
        for rules in RULES:
            result = run("limits", "--air", "--rules", rules)
            self.assertEqual((result.returncode, result.stderr), (0, ""))
            self.assertTrue(all(len(line) <= 80 for line in result.stdout.splitlines()), rules)
            table = json.loads(run("limits", "--air", "--rules", rules, "--json").stdout)
            self.assertEqual(table["rules"], rules)
            rows += len(table["air"])
            unconfirmed = sum(row["evidence"] in ("second-hand", "from-memory") for row in table["air"])
            self.assertEqual(" ".join(result.stdout.split()).count("unconfirmed)"), unconfirmed)
        self.assertEqual(rows, 149)

    def test_rows_say_what_is_timed_and_how(self):
        said = " ".join(run("limits", "--air", "--rules", "us-cdl").stdout.split())
        self.assertIn("within 3 minutes; timed from 50 to 90 psi", said)
        self.assertIn("how: engine off, brakes released, drop timed for one minute", said)
        said = " ".join(run("limits", "--air", "--rules", "us-inuse").stdout.split())
        self.assertIn("not more than 30 seconds; timed after a full application, back to the pressure before", said)
        said = " ".join(run("air", "build-up", "--seconds", "100", "--from", "85", "--to", "100", "--rules",
                            "ca-on").stdout.split())
        self.assertIn("timed from 85 to 100 psi", said)
        said = " ".join(run("air", "warning", "62", "--built", "2015").stdout.split())
        self.assertIn("built from 1975-03-01 on", said)

    def test_a_rule_set_without(self):
        result = run("limits", "--air", "--rules", "rated-80")
        self.assertEqual(result.returncode, 3)
        self.assertIn("no air check", result.stdout)

    def test_usage(self):
        for line in (["30"], ["--class", "long"]):
            self.assertEqual(run("limits", "--air", *line).returncode, 2)


class Lists(unittest.TestCase):
    def test_rule_sets_without_limits(self):
        """A rule set that has air checks only says nothing of strokes."""
        said = run("limits", "--rules", "ca-bc").stdout
        self.assertNotIn("exactly at the limit", said)
        self.assertIn("air checks only", said)
        self.assertEqual(run("limits", "30", "--rules", "ca-bc").returncode, 3)
        self.assertEqual(run("stroke", "30", "2", "4", "--rules", "ca-bc").returncode, 3)
        self.assertEqual(run("limits", "--list").stdout.count("and no limits of strokes"), 19)

    def test_version_fits_the_screen(self):
        lines = run("--version").stdout.splitlines()
        self.assertTrue(all(len(line) <= 80 for line in lines))
        self.assertEqual(" ".join(lines[2:]).split()[:3], ["rule", "sets:", "us-fmcsr"])


class Example(unittest.TestCase):
    def test_output(self):
        result = subprocess.run([EXAMPLE], capture_output=True, text=True, check=True)
        self.assertEqual(result.stdout, """\
the low-pressure warning came on at 62 psi; required: not less than 60 psi: good
  defective below 60 psi
85 psi to 100 psi took 38 s; required: not more than 45 s: good
  defective above 45 s
the governor cut out at 125 psi; usual: 120 to 140 psi: noted, which is not a limit
  nothing is defective by a usual figure: usually around 120 to 140 psi
brakes applied, 110 psi to 105 psi in 60 s is 5 psi per minute; required: not more than 4 psi per minute: defective
  defective above 4 psi per minute
the parking brake held; the rule: must hold: good (rule from memory, unconfirmed)
  defective if the parking brake does not hold
464 in3 of chambers need 5568 in3 of reservoirs
estimate: 100 psi falls to 91 23/130 psi in one full application; 5 keep 60 psi
""")


if __name__ == "__main__":
    COMMAND, EXAMPLE = sys.argv[1:]
    tap.main()
