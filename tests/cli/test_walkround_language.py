# SPDX-License-Identifier: Apache-2.0
"""The walk-round in French and Spanish: the same record whatever is spoken, words that mean one thing, lines that fold,
and no English left. Arguments: the command, the root of the project."""
import os
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import test_walkround
from dialogue import Dialogue, has_terminals, on_terminal
from tap import Tap
from test_walkround import TEN, TRUCK, look_up

PLAIN = {"TERM": "dumb", "LC_ALL": "C.UTF-8", "PATH": os.environ["PATH"]}
LOCALES = {"fr": "fr_CA.UTF-8", "es": "es_MX.UTF-8"}
# A bus has the words that the other two lack; drums are told, a pressure never came, an answer is doubted.
BUS = {**TRUCK, "Vehicle": "b", "Drums": "h", "Engine off": "y", "1L stroke class": "u", "2L stroke class": "square",
       "2L adjuster": "m", "Warning came on": "never", "2R applied": "2 3/16", "Everybody clear": "-",
       "Nobody at the rods": "yes"}
RUNS = {"truck": (TRUCK, []), "bus": (BUS, ["--speak"]), "ten": (TEN, ["--air-rules", "us-cdl"])}

# What somebody types in place of the English word, by the beginning of the question ("" = any).
WORDS = {
    "fr": {("Vehicle", "s"): "camion", ("Vehicle", "combination"): "e", ("Vehicle", "b"): "autobus", ("Drums", "h"): "brulant",
           ("1L stroke", "s"): "Standard", ("5L stroke", "u"): "inconnue", ("1L stroke", "u"): "i",
           ("2L stroke", "l"): "longue", ("2L stroke", "square"): "carrés", ("1L adjuster", "a"): "automatique",
           ("2L adjuster", "m"): "Manuel", ("Engine", "y"): "arrêté", ("Parking brake rel", "y"): "desserre",
           ("Is that", "k"): "g", ("", "yes"): "OUI", ("", "y"): "o", ("", "n"): "non", ("", "-"): "passer",
           ("", "never"): "jamais"},
    "es": {("Vehicle", "s"): "camion", ("Vehicle", "combination"): "t", ("Vehicle", "b"): "AUTOBÚS",
           ("Drums", "h"): "m", ("1L stroke", "s"): "e", ("5L stroke", "u"): "d", ("1L stroke", "u"): "Desconocida",
           ("2L stroke", "l"): "larga", ("2L stroke", "square"): "cuadrados", ("1L adjuster", "a"): "automatico",
           ("2L adjuster", "m"): "manual", ("Engine", "y"): "apagado", ("Parking brake rel", "y"): "liberado",
           ("Is that", "k"): "guardar", ("", "yes"): "sí", ("", "y"): "si", ("", "n"): "no", ("", "-"): "saltar",
           ("", "never"): "nunca"},
}

# English letters that begin another answer in French or Spanish are written out.
WHOLE = {("Vehicle", "c"): "combination", ("Drums", "c"): "cold"}


def written_out(question, answer):
    return next((word for (start, letter), word in WHOLE.items() if answer == letter and question.startswith(start)),
                answer)


def translated(language, question, answer):
    for (start, word), said in WORDS[language].items():
        if answer == word and question.startswith(start):
            return said
    return answer


class Spoken(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def talk(self, answers, options):
        """Questions and answers of a run in English, and its record."""
        file, given = self.folder / "en.json", []
        file.unlink(missing_ok=True)
        talk = Dialogue(COMMAND, file, "--as-of", "2026-11-20", *options, terminal=False, environment=PLAIN)
        question = talk.prompt()
        while question is not None:
            headings = re.findall(r"^Check: (.*)$", talk.said, re.M)
            answer = look_up(answers, question, headings[-1].strip() if headings else "")
            given.append((question, written_out(question, answer)))
            talk.send(given[-1][1])
            question = talk.prompt()
        return given, file.read_bytes(), talk.wait(), talk.said

    def arguments(self, name, lines, options):
        """Of a run that has its answers in a file, and its record."""
        answers, file = self.folder / f"{name}.txt", self.folder / f"{name}.json"
        answers.write_text("".join(f"{line}\n" for line in lines), encoding="utf-8")
        file.unlink(missing_ok=True)
        return [COMMAND, "walkround", file, "--as-of", "2026-11-20", "--answers", answers, *options], file

    def test_one_record_in_every_language(self):
        for name, (answers, options) in RUNS.items():
            given, record, status, english = self.talk(answers, options)
            for language, locale in LOCALES.items():
                own = [translated(language, question, answer) for question, answer in given]
                self.assertNotEqual(own, [answer for _, answer in given])
                for kind, lines in (("own", own), ("english", [answer for _, answer in given])):
                    with self.subTest(run=name, language=language, words=kind):
                        words, file = self.arguments(f"{name}-{language}-{kind}", lines, options)
                        done = subprocess.run([*words, "--language", language], capture_output=True, text=True,
                                              check=False, env=PLAIN)
                        self.assertEqual((done.returncode, done.stderr), (status, ""), done.stdout[-300:])
                        self.assertEqual(file.read_bytes(), record)
                        self.assertEqual(self.untranslated(english, done.stdout), [])
                        file.unlink()
                        again = subprocess.run(words, capture_output=True, text=True, check=False,
                                               env={**PLAIN, "LC_ALL": locale})
                        self.assertEqual(file.read_bytes(), record)
                        self.assertEqual(again.stdout.splitlines()[8:60], done.stdout.splitlines()[8:60])

    @staticmethod
    def untranslated(english, said):
        """Lines of both that are no echo of an answer. A word or two are the same in both languages."""
        both = set(english.splitlines()) & set(said.splitlines())
        return sorted(line for line in both if len(re.findall("[a-z]{3,}", line.replace("psi", ""))) > 1
                      and not line.startswith(("      ", "    (", "    inspector", "= ")))

    @staticmethod
    def with_help(given):
        """The help of every question, and once all that was entered, before each answer."""
        return [line for question, answer in given
                for line in ([] if question.startswith("Is that") else ["help", "show"] if "applied" in question else ["help"])
                + [answer]]

    def test_help_and_what_was_entered(self):
        for name, (answers, options) in RUNS.items():
            given = self.with_help(self.talk(answers, options)[0])
            words, file = self.arguments(name, given, options)
            said = {}
            for language in ("en", *LOCALES):
                file.unlink(missing_ok=True)
                said[language] = subprocess.run([*words, "--language", language], capture_output=True, text=True,
                                                check=False, env=PLAIN).stdout
            for language in LOCALES:
                with self.subTest(run=name, language=language):
                    self.assertEqual(self.untranslated(said["en"], said[language]), [])

    @unittest.skipUnless(has_terminals(), "no pseudo-terminal")
    def test_no_line_is_wider_than_the_screen(self):
        for name, (answers, options) in RUNS.items():
            given, _, status, _ = self.talk(answers, options)
            for language in LOCALES:
                for columns in (40, 80):
                    with self.subTest(run=name, language=language, columns=columns):
                        words, _ = self.arguments(f"{name}-{language}-{columns}", self.with_help(given), options)
                        done, shown = on_terminal([*words, "--language", language], PLAIN, columns)
                        self.assertEqual(done, status, shown[-300:])
                        wide = [line for line in shown.splitlines() if len(line) >= columns]
                        self.assertEqual([line for line in wide if str(self.folder) not in line], [])
                        torn = [line for line in shown.splitlines() if re.match(r"\s*[:»]", line) or line.endswith("«")]
                        self.assertEqual(torn, [])

    def test_words_of_every_question(self):
        """Each is followed, with its accents and without."""
        self.talk(TRUCK, [])
        file = self.folder / "en.json"
        begun = file.read_bytes()
        for language, words in (("fr", ["aide", "Voir", "note à revoir", "retour 1L", "refaire 1L", "24", "g", "quitter"]),
                                ("es", ["ayuda", "ver", "nota así", "atras 1L", "Repetir 1L", "24", "g", "salir"])):
            with self.subTest(language=language):
                file.write_bytes(begun)
                done = subprocess.run([COMMAND, "walkround", file, "--language", language, "--back", "2R"],
                                      input="\n".join([*words, ""]), capture_output=True, text=True, check=False,
                                      env=PLAIN)
                self.assertEqual((done.returncode, done.stderr), (1, ""), done.stdout[-600:])
                record = file.read_text(encoding="utf-8")
                self.assertIn(f'"remark": "{words[2].split(" ", 1)[1]}"', record)
                self.assertIn('"chamber": "24"', record)

    def test_no_letter_of_another_language(self):
        """"c" is cold in English and begins "chaud" and "caliente", which are hot; "camion" is no combination."""
        self.talk(TRUCK, [])
        begun = (self.folder / "en.json").read_bytes()
        for language in LOCALES:
            for question, listed in (("drum", "chaud|caliente"), ("vehicle", "camion|camión")):
                with self.subTest(language=language, question=question):
                    file = self.folder / f"{question}-{language}.json"
                    file.write_bytes(begun)
                    done = subprocess.run([COMMAND, "walkround", file, "--language", language, "--back", question],
                                          input="c\n", capture_output=True, text=True, check=False, env=PLAIN)
                    self.assertEqual(done.returncode, 2, done.stdout[-300:])
                    self.assertRegex(done.stderr, listed)
                    self.assertEqual(file.read_bytes(), begun)

    def test_an_answer_that_was_replaced(self):
        """Its word is kept in English, and said in the chosen language."""
        self.talk(BUS, [])
        file = self.folder / "en.json"
        subprocess.run([COMMAND, "walkround", file, "--back", "warning"], input="62\n", capture_output=True, text=True,
                       check=False, env=PLAIN)
        self.assertIn('"answer": "never (', file.read_text(encoding="utf-8"))
        for language, was in (("en", "it was never ("), ("fr", "c'était jamais ("), ("es", "era nunca (")):
            with self.subTest(language=language):
                done = subprocess.run([COMMAND, "report", file, "--language", language], capture_output=True, text=True,
                                      check=False, env=PLAIN)
                self.assertIn(was, " ".join(done.stdout.split()))

    def test_a_check_by_its_title(self):
        """As it is headed in the chosen language, beside its English word."""
        self.talk(TRUCK, [])
        file = self.folder / "en.json"
        begun = file.read_bytes()
        for language, back, again, title in (
                ("fr", "retour", "refaire", "Avertisseur de basse pression"),
                ("es", "atras", "repetir", "aviso de baja presion"), ("en", "back", "again", "low-pressure warning")):
            for line in (f"{back} {title}", f"{again} {title}", f"{back} warning", f"{again} warning"):
                with self.subTest(language=language, line=line):
                    file.write_bytes(begun)
                    done = subprocess.run([COMMAND, "--language", language, "walkround", file, "--back", "2R"],
                                          input=f"{line}\n61\n", capture_output=True, text=True, check=False, env=PLAIN)
                    self.assertEqual(done.stderr, "")
                    self.assertIn('"pressure": "61"', file.read_text(encoding="utf-8"))

    def test_the_language_of_the_command_to_go_on_with(self):
        for before, after in ((["--language", "fr"], []), ([], ["--language", "fr"]), (["--language=fr"], []),
                              (["--language", "es"], ["--language", "fr"])):
            with self.subTest(before=before, after=after):
                done = subprocess.run([COMMAND, *before, "walkround", self.folder / "go.json", *after], input="",
                                      capture_output=True, text=True, check=False, env=PLAIN)
                self.assertIn("go.json --language fr", " ".join(done.stdout.split()))
        done = subprocess.run([COMMAND, "walkround", self.folder / "go.json"], input="", capture_output=True, text=True,
                              check=False, env=PLAIN)
        self.assertNotIn("--language", done.stdout)

    def test_a_new_day(self):
        """What changed is kept in English, and said in the chosen language."""
        self.talk(TRUCK, [])
        answers = ["yes", "", "", "", "", "yes", "110", "100", "62", "y", "n", "yes", "y", "y", "", "2R", "show"]
        for language, changed in (("en", "changed: 2R"), ("fr", "changées : 2R"), ("es", "cambiadas: 2R")):
            with self.subTest(language=language):
                file = self.folder / f"day-{language}.json"
                done = subprocess.run([COMMAND, "walkround", file, "--from", self.folder / "en.json", "--as-of",
                                       "2026-11-21", "--language", language], input="\n".join([*answers, ""]),
                                      capture_output=True, text=True, check=False, env=PLAIN)
                self.assertEqual(done.stderr, "")
                self.assertEqual(done.stdout.replace("\u00a0", " ").count(changed), 2, done.stdout[-400:])
                self.assertIn('"answer": "changed: 2R"', file.read_text(encoding="utf-8"))


class Words(unittest.TestCase):
    """No word means two things at one question, in any language."""

    @staticmethod
    def folded(word):
        return word.lower().translate(str.maketrans("áàâéèêëíîïóôúûùüñç", "aaaeeeeiiioouuuunc")).replace(" ", "-")

    @classmethod
    def lists(cls):
        """The words of each question by what they mean, and those of every question."""
        source = (ROOT / "examples/cli/walkround/questions.c").read_text(encoding="utf-8")
        header = (ROOT / "examples/cli/walkround/walkround.h").read_text(encoding="utf-8")
        named = dict(re.findall(r'#define (WORDS_\w+) TO_SAY\("([^"]*)"\)', header))
        questions = {}
        for name, body in re.findall(r"static const walk_word (\w+)\[\] = \{(.*?)\{NULL", source, re.S):
            questions[name] = {meaning: [named.get(words) or re.match(r'TO_SAY\("(.*)"\)', words).group(1)]
                               for words, meaning in re.findall(r'\{(WORDS_\w+|TO_SAY\("[^"]*"\)), "(\w+)"\}', body)}
        answers = {words for question in questions.values() for (words,) in question.values()}
        common = {name: [words] for name, words in named.items()
                  if words not in answers and name not in ("WORDS_NEVER", "WORDS_DIAMETER")}
        return questions, common, named

    @staticmethod
    def translations(language):
        text = (ROOT / f"examples/cli/languages/{language}.po").read_text(encoding="utf-8")
        return dict(re.findall(r'^msgid "(.*)"\nmsgstr "(.*)"$', text, re.M))

    def meanings(self, lists, translated_words):
        """{word: {meanings}} of English words and their translations."""
        found = {}
        for meaning, english in lists.items():
            for words in english + [translated_words[words] for words in english]:
                for word in words.split(", "):
                    found.setdefault(self.folded(word), set()).add(meaning)
        return found

    def test_one_meaning(self):
        questions, common, named = self.lists()
        self.assertGreaterEqual(len(questions), 8)
        self.assertGreaterEqual(len(common), 8)
        pressure = {"never": [named["WORDS_NEVER"]]}
        for language in LOCALES:
            said = self.translations(language)
            for name, lists in {**questions, "pressure": pressure}.items():
                with self.subTest(language=language, question=name):
                    found = self.meanings({**lists, **common}, said)
                    self.assertEqual({word: means for word, means in found.items() if len(means) > 1}, {})

    def test_a_wrong_answer_names_the_words(self):
        for language, expected in (("fr", "o, oui"), ("es", "s, sí")):
            with self.subTest(language=language), tempfile.TemporaryDirectory() as folder:
                done = subprocess.run([COMMAND, "walkround", Path(folder) / "t.json", "--language", language],
                                      input="x\n", capture_output=True, text=True, check=False, env=PLAIN)
                self.assertEqual(done.returncode, 2)
                self.assertIn(expected, done.stderr)


if __name__ == "__main__":
    COMMAND = test_walkround.COMMAND = os.path.abspath(sys.argv[1])
    ROOT = Path(sys.argv[2])
    suite = unittest.TestSuite(unittest.defaultTestLoader.loadTestsFromTestCase(case) for case in (Spoken, Words))
    print(f"1..{suite.countTestCases()}")
    sys.exit(not suite.run(Tap()).wasSuccessful())
