# SPDX-License-Identifier: Apache-2.0
"""The mutator itself: it finds every place of a small file, and each change makes the program answer differently.

    python3 test_places.py"""
import os
import subprocess
import sys
import tempfile
import unittest

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)
sys.path.insert(0, os.path.join(HERE, "..", "checks"))
sys.path.insert(0, os.path.join(HERE, "..", "cli"))
import mutants  # noqa: E402
import tap  # noqa: E402

LIBRARY = """#include <stdbool.h>
#define PUBLIC __attribute__((visibility("default"), warn_unused_result))
#define TWICE(x) (2 * (x))

static const int table[] = {4, 5};

static int minus(int a, int b) { return a - b; }

PUBLIC int answer(int a, int b)
{
    int sum = a;
    for (int i = 0; i < b; i++)
        sum += TWICE(a);
    if (a == 3 && !(b > 3))
        sum++;
    if (b < 0)
        return 99;
    return minus(sum, b) + table[1];
}
"""
PROGRAM = "#include <stdio.h>\nint answer(int, int);\nint main(void) { for (int a = 1; a < 5; a++) for (int b = -1; b < 5; b++) " \
          "printf(\"%d \", answer(a, b)); return 0; }\n"
EXPECTED = ["a - b -> a + b", "0 -> 1", "i < b -> i <= b", "i < b -> i >= b", "i++ -> i--", "sum += TWICE(a) -> sum -= TWICE(a)",
            "without sum += TWICE(a);", "a == 3 -> a != 3", "3 -> 4", "3 -> 2", "b > 3 -> b >= 3", "b > 3 -> b <= 3",
            "a == 3 && !(b > 3) -> a == 3 || !(b > 3)", "without sum++;", "sum++ -> sum--", "b < 0 -> b <= 0", "without return 99;",
            "99 -> 100", "99 -> 98", "minus(sum, b) -> minus(b, sum)", "minus(sum, b) + table[1] -> minus(sum, b) - table[1]", "1 -> 0"]


def source(folder, text=LIBRARY):
    """As a file of the library in its folders."""
    path = os.path.join(folder, "lib", "part", "answer.c")
    os.makedirs(os.path.dirname(path))
    os.makedirs(os.path.join(folder, "tests"))
    os.symlink(HERE, os.path.join(folder, "tests", "mutants"))
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path, mutants.Source(folder, folder, "lib/part/answer.c", 1)


class Places(unittest.TestCase):
    def test_every_place_is_found(self):
        with tempfile.TemporaryDirectory() as folder:
            _, of = source(folder)
        found = [mutant.change for mutant in of.mutants if not mutant.constant]
        missing = [change for change in EXPECTED if change not in found]
        self.assertEqual(missing, [], found)
        self.assertEqual({mutant.function for mutant in of.mutants}, {"answer", "minus", "-"})
        self.assertEqual([mutant.change for mutant in of.mutants if mutant.constant], ["4 -> 5", "4 -> 3", "5 -> 6", "5 -> 4"])
        self.assertEqual(len({mutant.number for mutant in of.mutants}), len(of.mutants))

    def test_every_change_is_made(self):
        """A loop without an end is ended by its seconds."""
        with tempfile.TemporaryDirectory() as folder:
            path, of = source(folder)
            with open(path, "w", encoding="utf-8") as file:
                file.write(of.instrumented(set()))
            program = os.path.join(folder, "program")
            with open(program + ".c", "w", encoding="utf-8") as file:
                file.write(PROGRAM)
            subprocess.run(["cc", "-std=gnu11", "-w", "-o", program, program + ".c", path], check=True)

            def say(change):
                return subprocess.run([program], capture_output=True, check=False,
                                      env={**os.environ, "MUTANT": str(change), "MUTANT_SECONDS": "1"}).stdout
            plain = say(-1)
            self.assertTrue(plain.startswith(b"99 "), plain)
            same = [mutant.change for mutant in of.mutants if not mutant.constant and say(mutant.number) == plain]
        self.assertEqual(same, [])

    def test_a_changed_constant(self):
        with tempfile.TemporaryDirectory() as folder:
            _, of = source(folder)
        self.assertIn("{4, 6};", of.changed(next(mutant for mutant in of.mutants if mutant.change == "5 -> 6")))

    def test_a_changed_constant_is_written_in_full(self):
        """Its words are shortened, and a changed sign binds as the old one did."""
        terms = [f"0x{1 << i:08x}u" for i in range(20)]
        with tempfile.TemporaryDirectory() as folder:
            of = source(folder, f"static const unsigned all = {' | '.join(terms)};\n")[1]
        found = [of.changed(mutant) for mutant in of.mutants if " & " in mutant.change]
        wanted = [f"(({' | '.join(terms[:i])}) & ({terms[i]})){''.join(' | ' + term for term in terms[i + 1:])};" for i in range(1, 20)]
        self.assertEqual(sorted(text.split(" = ")[1].strip() for text in found), sorted(wanted))


if __name__ == "__main__":
    tap.main()
