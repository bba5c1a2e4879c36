# SPDX-License-Identifier: Apache-2.0
"""French and Spanish: the same figures, exit statuses and JSON, in lines that fold. Argument: the command."""
import html
import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from dialogue import has_terminals, on_terminal

DATA = Path(__file__).resolve().parent.parent.parent / "examples" / "data"
VEHICLE = str(DATA / "demo_vehicle.csv")
INSPECTION = str(DATA / "inspection.json")
BROKEN, TWICE, EMPTY, NOTED, JOINED = "broken.csv", "twice.csv", "empty.csv", "noted.csv", "joined.csv"
FILES = {EMPTY: "",
         TWICE: "position,chamber,released,applied\n1L,20,1,2\n1L,20,1,2\n",
         NOTED: 'chamber,released,applied,date,temp of drum\n20,1,2,14/31/2024,x\n20,1\n20,1,2,,,,9\n20,"1"x,2\n\n,,\n'
                "chamber,released,applied,date,temp of drum\n20,1,2,,\n20,1,2,12/31/2024,\n",
         JOINED: "chamber,released,applied\n20,1,2\nchamber,released,applied,psi\n20,1,2,90\n",
         BROKEN: """position,chamber,released,applied,psi,adjuster,division,engine
1L,20,1 1/2,3 1/8,95,automatic,1/16,on
1R,30,2,4 3/8,95,automatic,x/q,
3R,30,2,2,,manual,,
3L,30,2,4 1/4,,manual,,
4L,24L,2,,,manual,,
5L,30,2,4 1/8,95,,,
"""}

RUNS = [
    ("over", ["stroke", "30", "2 1/8", "4 3/8", "--psi", "95", "--division", "1/16", "--why"]),
    ("at the limit", ["stroke", "30", "2 1/8", "4 1/8", "--class", "standard"]),
    ("millimetres", ["stroke", "30", "54.1 mm", "104.9 mm", "--why"]),
    ("nothing moved", ["stroke", "30", "2", "2", "--psi", "60"]),
    ("swapped", ["stroke", "24L", "3", "2", "--speak"]),
    ("one line", ["stroke", "20", "1 1/2", "3", "--short"]),
    ("lost blank", ["stroke", "30", "21/8", "4 1/8"]),
    ("a warning", ["air", "warning", "62", "--built", "1998", "--speak"]),
    ("a loss", ["air", "loss-applied", "--before", "110", "--after", "101", "--vehicle", "single", "--rules", "us-cdl"]),
    ("a usual figure", ["air", "cut-out", "125", "--rules", "us-inuse"]),
    ("not known", ["air", "warning", "50"]),
    ("which chamber", ["identify", "--stamp", "30", "--family", "clamp"]),
    ("no limit is safe", ["identify", "--diameter", "8 1/8", "--port", "round"]),
    ("one limit", ["limits", "24L", "--rated", "3"]),
    ("no limit", ["limits", "19"]),
    ("all limits", ["limits", "--rules", "ca-nsc"]),
    ("no law yet", ["limits", "--rules", "ca-on"]),
    ("rule sets", ["limits", "--list"]),
    ("air of a rule set", ["limits", "--air", "--rules", "ca-on"]),
    ("a vehicle", ["vehicle", VEHICLE, "--why"]),
    ("not every brake", ["vehicle", VEHICLE, "--brakes", "12"]),
    ("every verdict", ["vehicle", BROKEN]),
    ("an inspection", ["report", INSPECTION]),
    ("an estimate", ["air", "estimate", "--psi", "100", "--reservoirs", "2848", "--chambers", "30,30,30,30"]),
    ("no application", ["air", "estimate", "--psi", "91", "--reservoirs", "100", "--chambers", "30"]),
    ("a part of a pound", ["air", "loss-released", "--before", "110", "--after", "107.5", "--vehicle", "single"]),
    ("cards", ["cards", "--rules", "ca-on"]),
    ("cards of a train", ["cards", "--rules", "us-cdl", "--towed", "2", "--built", "2015"]),
]
# (arguments before the place of the page, whether the markup is the same in every language)
PAGES = [
    (["report", INSPECTION, "--html"], True),
    (["report", INSPECTION, "--svg"], True),
    (["cards", "--rules", "ca-on", "--html"], False),  # the size of the type differs
    (["limits", "--html"], False),                     # lines are broken elsewhere
    (["limits", "--rules", "ca-on", "--svg"], False),
]
AS_OF = ["--as-of", "2024-05-06"]
MARKUP = re.compile(r"<[^>]*>")
ENGLISH = ["FRONT", "REAR", "over by", "OVER", "to spare", "DID NOT", "Brake inspection", "Unit 1", "Carrier", "DEFECTIVE",
           "Count:", "From above", "Stroke", "Released", "Adjuster", "Check\\b", "Result\\b", "Defects", "Axles", "Next", "automatic<",
           "good\\b", "axles?\\b", "Remarks", "Judged by", "Signature of the", "A full bar", "Pushrod", "from above", "trailer<",
           "I DO", "BECAUSE", "I see", "That is good", "It would be", "Inspection,", "round ports", "Look for", "Type", "Standard<?$",
           "Millimetres", "Adjustment", "read in", "applied-stroke check"]
# What goes wrong, and what is noted beside an answer.
WRONG = [
    ["nothing"], ["--nothing"], ["stroke", "--nothing"], ["stroke", "30"], ["stroke", "30", "2", "4", "5"],
    ["stroke", "30", "-2", "4"], ["stroke", "30", "2", "4", "--psi"], ["stroke", "30", "2", "4", "--psi", "x"],
    ["stroke", "30", "2", "4", "--why", "--why"], ["stroke", "30", "2", "4", "--rules", "nothing"],
    ["stroke", "30", "2", "4", "--as-of", "06/05/24"], ["stroke", "30", "2", "4", "--limits", "not there"],
    ["stroke", "30", "2", "4", "--limits", "/"],
    ["stroke", "30", "2", "4", "--limits", BROKEN],
    ["identify"], ["identify", "--port", "oval"], ["identify", "--stamp", "x"], ["identify", "more", "--port", "round"],
    ["limits", "--class", "long"], ["limits", "--air", "20"], ["limits", "--list", "--air"],
    ["limits", "--html", "-", "--json"], ["limits", "--html", "no/where.html"], ["limits", "x"],
    ["vehicle", "not there"], ["vehicle", TWICE], ["vehicle", EMPTY], ["vehicle", BROKEN, "--brakes", "x"],
    ["vehicle", BROKEN, "--brakes", "2"], ["vehicle", BROKEN, "--decimal-comma"], ["vehicle", BROKEN, "--column", "x"],
    ["vehicle", BROKEN, "--separator", "xx"], ["vehicle", BROKEN, "--unit", "ft"],
    ["vehicle", BROKEN, "--date-order", "x"], ["vehicle", BROKEN, "--separator", ";"],
    ["air", "nothing"], ["air", "warning", "x"], ["air", "warning", "60", "--vehicle", "single", "--towed", "1"],
    ["air", "reserve", "60"], ["air", "drain", "maybe"], ["air", "build-up", "--seconds", "x"],
    ["air", "loss-released", "--before", "1", "--after", "1", "--towed", "0"], ["air", "warning", "60", "--seconds", "2"],
    ["air", "build-up", "--chambers", "20,"], ["air", "build-up", "--chambers", "x"],
    ["batch", "not there"], ["batch", EMPTY], ["batch", BROKEN, "--jobs", "0"], ["batch", BROKEN, "--by", "x"],
    ["batch", BROKEN, "--column", "x"], ["batch", BROKEN, "--column", "date=a", "--column", "date=b"],
    ["batch", BROKEN, "--encoding", "x"], ["batch", BROKEN, "--format", "ndjson", "--by", "x"],
    ["batch", BROKEN, "--format", "ndjson"], ["batch", BROKEN, "--separator", ";"], ["batch", BROKEN, "--summary"],
    ["batch", BROKEN, "--by", "adjuster", "--summary"], ["batch", NOTED, "--date-order", "dmy"], ["batch", JOINED],
    ["batch", "/"], ["report", "not there"], ["report"], ["report", BROKEN], ["practice", "x"],
    ["practice", "--level", "x"], ["cards", "x"], ["cards", "--vehicle", "x"], ["walkround"], ["page", "x"],
]
# Said in the file.
QUOTED_TEXT = re.compile("(?s)(texte anglais|texto en inglés).*")
QUOTED = {"temp of drum"}
COMMANDS = ["stroke", "vehicle", "air", "walkround", "report", "identify", "limits", "batch", "practice", "cards",
            "page"]
HELPS = [["--help"], *([command, "--help"] for command in COMMANDS)]
THREE_WORDS = re.compile(r"(?=\b([A-Za-z]{2,} [a-z]+ [a-z]{2,})\b)") # what is typed or quoted has no three words in a row
TYPED = {"Rod at rest", "on drum cold"}
EXAMPLE = re.compile(r"^ +rodtravel.*?(  |$)", re.M)
OPTION = re.compile(r"^  (--[a-z-]+)", re.M)
COLUMN_NAMES = re.compile(r"^  ([a-z_]+(?:, [a-z_]+)*)  +\S", re.M)
COLUMNS = re.compile(r"( +\S.*?  +)\S")
TERMINAL = {"TERM": "dumb", "LC_ALL": "C.UTF-8"}
NUMBER = re.compile(r"\d+(?:\.\d+)*(?:/\d+)?")


def bare(command, arguments, **environment):
    plain = {k: v for k, v in os.environ.items() if not k.startswith("LC_") and k not in ("LANG", "LANGUAGE")}
    done = subprocess.run([command, *arguments], capture_output=True, encoding="utf-8", check=False,
                          env={**plain, **environment})
    return done.returncode, done.stdout, done.stderr


def run(command, arguments, **environment):
    """The same on a day that stays."""
    extra = AS_OF if arguments[0] not in ("air", "cards", "report") and "--list" not in arguments else []
    return bare(command, [*arguments, *extra], **environment)


def shown(page):
    return MARKUP.sub("<>", re.sub("(?s)<style>.*?</style>", "", page))


def figures(page):
    return sorted(NUMBER.findall(html.unescape(page)))


def pages(command):
    """A page and a drawing differ in their words alone."""
    for arguments, alike in PAGES:
        page = " ".join(arguments[:1] + arguments[-1:])
        status, english, _ = run(command, [*arguments, "-"])
        for language, locale, tag in (("fr", "fr_CA.UTF-8", "fr-CA"), ("es", "es_MX.UTF-8", "es-US")):
            said = run(command, [*arguments, "-", "--language", language])
            where = f"{page}, {language}"
            bare = [re.sub(' (data-l|lang)="[^"]*"', "", mark) for mark in MARKUP.findall(said[1])]
            text = shown(said[1])
            words = [word for word in ENGLISH if re.search(rf"\b{word}", text) or f'data-l="{word}"' in said[1]]
            yield f"{where}: same status", said[0] == status and said[2] == "", said
            yield f"{where}: same markup", not alike or bare == [re.sub(' (data-l|lang)="[^"]*"', "", m) for m in MARKUP.findall(english)], ""
            yield f"{where}: same figures", figures(shown(said[1])) == figures(shown(english)), ""
            yield f"{where}: no English", words == [], words
            yield f"{where}: names its language", page.endswith("--svg") or f'<html lang="{tag}">' in said[1], ""
            yield f"{where}: the locale chooses too", run(command, [*arguments, "-"], LC_ALL=locale) == said, ""


def anywhere(command):
    """--language chooses wherever it stands, also for what is said about arguments before it."""
    usual, french = ["stroke", "20", "1 1/2", "3"], ["--language", "fr"]
    said = run(command, [*usual, *french])
    for place in range(len(usual) - 1):
        yield f"--language after {place} arguments", run(command, [*usual[:place], *french, *usual[place:]]) == said, ""
    yield "--language=fr", run(command, [*usual, "--language=fr"]) == said, ""
    yield "after --, it is an operand", run(command, ["stroke", "--", "20", "1", *french])[0] == 2, ""
    for wrong in (["--nothing"], ["--rules", "nothing"], ["--psi", "x"]):
        english, other = (run(command, [*usual, *wrong, "--language", word]) for word in ("en", "fr"))
        yield f"{wrong} before it", english[0] == other[0] == 2 and english[2] != other[2], (english, other)
    for before, after in ([], usual), (usual, []):
        status, shown, said = run(command, [*before, "--language", "de", *after], LC_ALL="C")
        yield "a language that is not there", status == 2 and shown == "" and "en, fr or es" in said, said
    yield "a language without a value", run(command, ["--language"])[0] == 2, ""
    yield "not a part of the list", run(command, [*usual, "--language", "n|"])[0] == 2, ""
    yield "given twice", run(command, [*usual, *french, *french])[0] == 2, ""


def three_words(text):
    return set(THREE_WORDS.findall(" ".join(EXAMPLE.sub("|", text).split())))


def helps(command):
    """The help of every command: in the language, without English, folded, its second columns under each other."""
    for arguments in HELPS:
        status, english, _ = bare(command, arguments)
        for language in ("fr", "es"):
            where = f"{' '.join(arguments)}, {language}"
            said = bare(command, [*arguments, "--language", language])
            left = three_words(said[1]) & three_words(english)
            yield f"{where}: answered", status == said[0] == 0 and said[2] == "", said
            yield f"{where}: no English", left <= TYPED, left
            yield f"{where}: the option may be first", bare(command, ["--language", language, *arguments]) == said, ""
            yield f"{where}: same options", OPTION.findall(said[1]) == OPTION.findall(english), said[1]
            if arguments[0] in ("batch", "vehicle"):
                names = [COLUMN_NAMES.findall(text) for text in (said[1], english)]
                yield f"{where}: the columns of a file keep their names", names[0] == names[1] != [], names
            yield f"{where}: columns", begins(said[1]) == begins(english), (begins(said[1]), begins(english))
            for columns in (40, 80) if has_terminals() else ():
                shown = on_terminal([command, *arguments, "--language", language], TERMINAL, columns)[1].splitlines()
                wide = [line for line in shown if len(line) >= columns]
                yield f"{where}: {columns} columns", shown != [] and wide == [], wide


def errors(command):
    """What goes wrong: same exit status and output, another message, no English in it."""
    for arguments in WRONG:
        english = bare(command, ["--language", "en", *arguments])
        for language, locale in (("fr", "fr_CA.UTF-8"), ("es", "es_MX.UTF-8")):
            where = f"{' '.join(arguments)}, {language}"
            said = bare(command, ["--language", language, *arguments])
            left = three_words(QUOTED_TEXT.sub("", said[2])) & three_words(english[2])
            yield f"{where}: same status and output", said[:2] == english[:2], (said, english)
            yield f"{where}: another message", (said[2] != english[2] or left) and left <= QUOTED, (said[2], left)
            yield f"{where}: the locale chooses too", bare(command, arguments, LC_ALL=locale) == said, said


def begins(text):
    """Where the second columns of a help begin."""
    return {len(found.group(1)) for found in map(COLUMNS.match, text.splitlines()) if found}


def results(command):
    for name, arguments in RUNS:
        status, english, _ = run(command, arguments)
        has_json = arguments[0] != "cards" and "--speak" not in arguments and "--short" not in arguments
        json = run(command, [*arguments, "--json"]) if has_json else None
        for language, locale in (("fr", "fr_CA.UTF-8"), ("es", "es_MX.UTF-8")):
            said = run(command, [*arguments, "--language", language])
            where = f"{name}, {language}"
            yield f"{where}: same status", said[0] == status, said
            yield f"{where}: another language", said[1] != english and said[2] == "", said
            yield f"{where}: no figure is new or another", set(NUMBER.findall(said[1])) <= set(NUMBER.findall(english)), said
            yield f"{where}: no comma in a figure", re.search(r"\d,\d(?!\d\d\b)", said[1]) is None, said
            yield f"{where}: the locale chooses too", run(command, arguments, LC_ALL=locale) == said, said
            yield f"{where}: LC_MESSAGES before LANG", run(command, arguments, LC_MESSAGES=locale, LANG="en_US.UTF-8") == said, said
            yield f"{where}: the option is before the locale", run(command, [*arguments, "--language", "en"], LC_ALL=locale)[1] == english, said
            if json:
                yield f"{where}: the same JSON", run(command, [*arguments, "--json", "--language", language]) == json, json
                yield f"{where}: the same JSON in its locale", run(command, [*arguments, "--json"], LC_ALL=locale) == json, json
            for columns in (40, 80) if has_terminals() else ():
                lines = on_terminal([command, *arguments, "--language", language], TERMINAL, columns)[1].splitlines()
                wide = [line for line in lines if len(line) >= columns]
                yield f"{where}: {columns} columns", lines != [] and wide == [], wide
    yield "a comma locale of another language", all(run(command, a, LC_ALL="de_DE.UTF-8") == run(command, a) for _, a in RUNS), ""
    yield from pages(command)
    status, _, said = run(command, ["stroke", "30", "2 x", "4", "--language", "es"])
    yield "an error is said too", status == 2 and "aquí se esperaba" in said and "no se puede leer" in said, said
    for language in ("fr", "es"):
        rule = run(command, ["air", "drain", "free", "--rules", "ca-on", "--language", language])[1]
        yield f"{language}: a translated rule is called no English one", re.search("angl|ingl", rule) is None, rule
        limits = run(command, ["limits", "24L", "--language", language])[1]
        yield f"{language}: the stroke class is translated", re.search(r"\blong\b", limits) is None, limits
        cards = run(command, ["cards", "--rules", "ca-on", "--language", language])[1]
        yield f"{language}: the title of a rule set", "applied-stroke" not in cards, cards[:200]
    yield from anywhere(command)
    yield from helps(command)
    yield from errors(command)


if __name__ == "__main__":
    command_path = os.path.abspath(sys.argv[1])
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        for file_name, content in FILES.items():
            Path(file_name).write_text(content, encoding="utf-8")
        outcome = list(results(command_path))
        os.chdir("/")
    print(f"1..{len(outcome)}")
    for number, (title, right, what) in enumerate(outcome, 1):
        print(f"{'ok' if right else 'not ok'} {number} - {title}")
        if not right:
            print("".join(f"# {line}\n" for line in str(what).replace("\\n", "\n").splitlines()), end="")
    sys.exit(0 if all(right for _, right, _ in outcome) else 1)
