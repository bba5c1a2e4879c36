# SPDX-License-Identifier: Apache-2.0
"""The command as a person or a program meets it: arguments in; answers, messages and exit status out.

    python3 test_command.py RODTRAVEL [CASES_DIR]
    python3 test_command.py RODTRAVEL --rewrite      writes the *.cases beside this file anew; read the difference

CASES_DIR holds wheel_ends.csv, spellings.csv and us-393-47.csv (sources in its README). Prints TAP."""
import csv
import glob
import json
import os
import re
import shlex
import signal
import subprocess
import sys
import tempfile
import traceback
from fractions import Fraction

from dialogue import has_terminals, on_terminal

HERE = os.path.dirname(os.path.abspath(__file__))
ESCAPE = "\x1b"
DAY = "2024-05-06"


class Command:
    """Runs one build of rodtravel."""

    def __init__(self, path):
        self.path = os.path.abspath(path)

    def __call__(self, *arguments, **more):
        more.setdefault("stdout", subprocess.PIPE)
        done = subprocess.run([self.path, *arguments], stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, timeout=60,
                              **more)
        done.out = (done.stdout or b"").decode("utf-8")
        done.err = done.stderr.decode("utf-8")
        return done

    def json(self, *arguments):
        done = self(*arguments, "--json")
        return done.returncode, json.loads(done.out) if done.returncode != 2 else None


def inches(text):
    """The value of a written mixed fraction: "1 1/8", "-1/8", "17/8", "2.5"."""
    if text.startswith("-"):
        return -inches(text[1:])
    return sum(map(Fraction, text.split()))


def written(value):
    whole, rest = divmod(value, 1)
    return " ".join([str(whole)] * (whole > 0 or rest == 0) + [str(rest)] * (rest > 0))


def rows(folder, name):
    with open(os.path.join(folder, name), encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def equal(what, got, wanted):
    if got != wanted:
        yield f"{what}: {got!r}, wanted {wanted!r}"


# --- Cases of others: each yields the number of comparisons, and what falls short ------------------------


def check_wheel_ends(run, folder):
    """Invented vehicles; limits of 49 CFR 393.47(e)."""
    for row in rows(folder, "wheel_ends.csv"):
        options = ["--rules", row["ruleset"], "--as-of", row["as_of"]]
        options += ["--class", row["stroke_class"]] if row["stroke_class"] != "unknown" else []
        options += ["--psi", row["psi"]] if row["psi"] else []
        options += ["--rated", row["rated_stroke_in"]] if row["rated_stroke_in"] else []
        status, finding = run.json("stroke", row["chamber_text"], row["released"], row["applied"], *options)
        yield 1
        if finding is None:  # a refused reading proves nothing either
            yield from equal(row["id"], "undetermined", row["expect_verdict"])
            continue
        yield from equal(row["id"], finding["verdict"], row["expect_verdict"])
        wanted_status = {"in-adjustment": 0, "undetermined": 3}.get(finding["verdict"], 1)
        yield from equal(row["id"] + " status", status, wanted_status)
        for key, column in (("applied_stroke", "expect_stroke_in"), ("limit", "expect_limit_in")):
            got = None if finding[key] is None else inches(finding[key])
            yield from equal(f"{row['id']} {key}", got, inches(row[column]) if row[column] else None)


def check_spellings(run, folder):
    """Spellings of lengths, as the released measurement in front of 20 in applied."""
    for row in rows(folder, "spellings.csv"):
        if "\0" in row["text"]:
            continue  # no argument of a command can hold it
        status, finding = stroke_of_text(run, row["text"])
        yield 1
        got = None if finding is None else inches(finding["released"])
        if row["expect"] == "refuse":
            yield from equal(row["id"], got, None)
            yield from equal(row["id"] + " status", status, 2)
        elif row["expect"] == "accept" or got is not None:
            yield from equal(row["id"], got, Fraction(row["value_in"]))


def stroke_of_text(run, text):
    done = run("stroke", "--json", "--as-of", DAY, "--", "36", text, "20 in")
    return done.returncode, json.loads(done.out) if done.out else None


def law_rows(folder):
    """Each row as the arguments that name the chamber and day, and its limit."""
    for row in rows(folder, "us-393-47.csv"):
        arguments = [f"{row['family']} {row['size']}", "--as-of", row["until"] or row["from"]]
        arguments += ["--class", row["class"]] if row["class"] != "only" else []
        arguments += ["--rated", "3"] if row["rated_note"] else []
        yield arguments, inches(row["limit_in"]), row["limit_mm"]


def check_law_at_its_limits(run, folder):
    """49 CFR 393.47(e)(1), every row: at the limit, and a 64th of an inch to either side."""
    for arguments, limit, _ in law_rows(folder):
        for over, verdict, margin in ((-1, "in-adjustment", "1/64"), (0, "in-adjustment", "0"),
                                      (1, "out-of-adjustment", "-1/64")):
            applied = written(2 + limit + Fraction(over, 64))
            chamber, options = arguments[0], arguments[1:]
            status, finding = run.json("stroke", chamber, "2", applied, "--psi", "95", *options)
            what = " ".join(arguments) + f" {over:+d}/64"
            yield 1
            yield from equal(what, (status, finding["verdict"], finding["margin"]), (int(over > 0), verdict, margin))
            yield from equal(what + " limit", finding["limit"], written(limit))


def check_law_in_limits(run, folder):
    """49 CFR 393.47(e)(1), every row: `limits CHAMBER` names it, for people and for programs."""
    for arguments, limit, printed_mm in law_rows(folder):
        what = " ".join(arguments)
        status, answer = run.json("limits", *arguments)
        yield 1
        yield from equal(what, (status, answer["limit"]), (0, written(limit)))
        shown = [row["printed_mm"] for row in answer["limits"] if row["limit"] == answer["limit"]]
        yield from equal(what + " mm", printed_mm in shown, True)
        first = run("limits", *arguments).out.split("\n")[0]
        yield from equal(what + " heading", first.startswith(f"LIMIT {written(limit)}  "), True)


def check_whole_table(run, folder):
    """The table of a day has each row of 49 CFR 393.47(e)(1) in force on it, and no other."""
    for day in ("2012-09-05", "2021-10-13", "2021-10-14", DAY):
        wanted = sorted((row["family"], row["size"], row["class"].replace("only", "any"), bool(row["rated_note"]),
                         row["limit_in"], row["limit_mm"])
                        for row in rows(folder, "us-393-47.csv") if row["from"] <= day <= (row["until"] or day))
        _, answer = run.json("limits", "--as-of", day)
        got = sorted((row["family"], row["size"], row["class"], row["rated_stroke"] is not None, row["limit"],
                      row["printed_mm"]) for row in answer["limits"])
        yield 1
        yield from equal(day, got, wanted)
        lines = [line for line in run("limits", "--as-of", day).out.split("\n") if re.search(r"  \d{4}-\d\d", line)]
        yield from equal(day + " printed rows", len(lines), len(wanted))


# --- The command's own manners ----------------------------------------------------------------------------

WRONG = [  # arguments, and what the message names
    ([], "COMMAND"),
    (["judge"], '"judge"'),
    (["--json", "stroke", "30", "1", "2"], '"--json"'),
    (["stroke"], "CHAMBER RELEASED APPLIED"),
    (["stroke", "30", "1"], "2 of 3"),
    (["stroke", "30", "1", "2", "3"], '"3"'),
    (["stroke", "30", "2", "1/8", "4"], '"4"'),
    (["stroke", "30", "1", "2", "--colour"], '"--colour"'),
    (["stroke", "30", "1", "2", "--rat", "3"], '"--rat"'),
    (["stroke", "30", "1", "2", "-x"], '"-x"'),
    (["stroke", "30", "-1", "2"], '"-1"'),
    (["stroke", "30", "1", "2", "--psi"], "--psi"),
    (["stroke", "30", "1", "2", "--json=yes"], "--json"),
    (["stroke", "30", "1", "2", "--psi", "95", "--psi", "85"], "--psi is given twice"),
    (["stroke", "30", "1", "2", "--rules", "mars"], '"mars"'),
    (["stroke", "30", "1", "2", "--rules", ""], '""'),
    (["stroke", "30", "1", "2", "--class", "short"], "--class"),
    (["stroke", "30", "1", "2", "--engine", "idle"], "--engine"),
    (["stroke", "30", "1", "2", "--spring-brake", "yes"], "--spring-brake"),
    (["stroke", "30", "1", "2", "--drum", "wet"], "--drum"),
    (["stroke", "30", "1", "2", "--unit", "ft"], "--unit"),
    (["stroke", "30", "1", "2", "--psi", "lots"], "--psi"),
    (["stroke", "30", "1", "2", "--psi-after", "-3"], "--psi-after"),
    (["stroke", "30", "1", "2", "--division", "0"], "--division"),
    (["stroke", "30", "1", "2", "--rated", "1 3/2"], "--rated"),
    (["stroke", "30", "1", "2", "--marked-limit", "x"], "--marked-limit"),
    (["stroke", "30", "1", "2", "--as-of", "2024-02-30"], "--as-of"),
    (["stroke", "30", "1", "2", "--as-of", "06/05/2024"], "--as-of"),
    (["stroke", "30", "1", "2", "--as-of", ""], "--as-of"),
    (["stroke", "30", "1", "2", "--limits", "/nowhere/own.csv"], "/nowhere/own.csv"),
    (["stroke", "30", "1", "2", "--limits", HERE], HERE),
    (["stroke", "", "1", "2"], "chamber"),
    (["stroke", "C", "1", "2"], "chamber"),
    (["stroke", "30", "", "2"], "released"),
    (["stroke", "30", "1", "n/a"], "applied"),
    (["stroke", "30", "2-Jan", "4"], "released"),
    (["stroke", "30", "2", "175in"], "applied"),
    (["identify"], "clue"),
    (["identify", "30"], '"30"'),
    (["identify", "--port", "oval"], "--port"),
    (["identify", "--tag", "round"], "--tag"),
    (["identify", "--family", "wedge"], "--family"),
    (["identify", "--stamp", "??"], "--stamp"),
    (["identify", "--diameter", "big"], "--diameter"),
    (["identify", "--diameter", "8", "--division", "0"], "--division"),
    (["identify", "--rated", "-3"], "--rated"),
    (["limits", "30", "24"], '"24"'),
    (["limits", "thirty"], "chamber"),
    (["limits", "30", "--rated", "big"], "--rated"),
    (["limits", "--class", "long"], "--class"),
    (["limits", "--list", "30"], "--list"),
    (["limits", "--psi", "95"], '"--psi"'),
]


def check_wrong_usage(run, _):
    """Each kind of mistake: status 2, nothing on stdout, and a message that names it."""
    for arguments, named in WRONG:
        for more in ([], ["--json"] if arguments and arguments[0] in ("stroke", "identify", "limits") else []):
            done = run(*arguments, *more)
            what = shlex.join(arguments + more)
            yield 1
            yield from equal(what + " status", done.returncode, 2)
            yield from equal(what + " stdout", done.out, "")
            message = " ".join(done.err.split())
            if named not in message:
                yield f"{what}: the message does not name {named}: {message}"


CARETS = [  # text of the released measurement, the sign above the caret, its column on the screen
    ("2 l/8", "l", 2), ("1 3/x", "x", 4), ("2 1/8 ft", "f", 6), ("1 3/2", None, None), ("½ x", "x", 2),
    ("1½½", "½", 2), ("1⅛″ x", "x", 4), ("2 1⁄8 z", "z", 6),
    ("2​1/8", "<", 1),              # a sign that cannot be seen is shown by its number
    ("２ 1/8", "２", 0),                # full width: two columns
    ("1 3/4 \u65e5", "\u65e5", 6),
    ("1 3/4e\u0301", "e", 5),
]


def check_carets(run, _):
    """The caret stands under the sign where the reading stopped, counted in columns of the screen."""
    for text, sign, column in CARETS:
        done = run("stroke", "30", text, "4")
        lines = done.err.split("\n")
        carets = [i for i, line in enumerate(lines) if line.strip() == "^"]
        yield 1
        if not carets:
            yield f"{text!r}: no caret: {done.err!r}"
            continue
        if sign is None:
            continue
        at = lines[carets[0]].index("^") - 4
        yield from equal(repr(text), at, column)
        shown = lines[carets[0] - 1][4:]
        yield from equal(repr(text) + " sign", sign in shown and shown[column_index(shown, column):][0], sign)


def column_index(text, column):
    """Index of the character at a column, where full-width signs take two columns and marks none."""
    used = 0
    for index, sign in enumerate(text):
        if used >= column:
            return index
        used += 2 if ord(sign) > 0x2E80 else 0 if 0x300 <= ord(sign) < 0x370 else 1
    return len(text)


def check_control_characters(run, _):
    """Nothing that a person typed can steer the terminal."""
    hostile = "\x1b[31m2\x07\x9b\r\n"
    for arguments in (["stroke", "30", hostile, "4"], ["stroke", hostile, "2", "4"], ["stroke", "--" + hostile],
                      [hostile], ["limits", "--rules", hostile], ["identify", "--stamp", hostile]):
        done = run(*arguments)
        yield 1
        yield from equal(arguments, [c for c in done.err if ord(c) < 32 and c != "\n" or 127 <= ord(c) < 160], [])
    for broken in (b"2\xa01/8", b"\xff", b"2 \xe2\x80", b"\xed\xa0\x80", b"\xf4\x90\x80\x80"):
        done = run("stroke", "30", broken, "4")
        yield 1
        yield from equal(broken, (done.returncode, "\ufffd" in done.err), (2, False))


STROKE_KEYS = {"chamber": str, "rated_stroke": None, "released": str, "applied": str, "applied_stroke": None,
               "limit": None, "law_limit": None, "long_limit": None, "margin": None, "verdict": str, "reasons": list,
               "sentences": list, "proof": None, "probability_over": None, "proof_sentence": None, "rules": str,
               "own_limits": None, "as_of": str, "source": None, "evidence": None,
               "law_source": None, "law_evidence": None, "psi": None, "psi_after": None,
               "pressure": None, "pressure_after": None,
               "pressure_source": None, "units": dict}
VERDICTS = ["in-adjustment", "out-of-adjustment", "inoperative", "undetermined"]


def check_json_of_stroke(run, _):
    """One object on one line, always the same keys; None above = text or null."""
    for arguments in (["30", "2", "4"], ["30", "4", "2"], ["18", "2", "4"], ["30L", "2", "2", "--psi", "92.5"],
                      ["30", "50 mm", "101 mm", "--division", "1 mm", "--psi", "85", "--psi-after", "80"],
                      ["36", "2", "4", "--as-of", "2001-01-01"], ["18", "2", "4", "--rules", "ca-nsc"]):
        done = run("stroke", *arguments, "--json")
        yield 1
        yield from equal(arguments, (done.out.count("\n"), done.err), (1, ""))
        finding = json.loads(done.out)
        yield from equal(f"{arguments} keys", list(finding), list(STROKE_KEYS))
        for key, kind in STROKE_KEYS.items():
            if not isinstance(finding[key], kind or (str, type(None))):
                yield f"{arguments} {key}: {finding[key]!r}"
        yield from equal(f"{arguments} verdict", finding["verdict"] in VERDICTS, True)
        yield from equal(f"{arguments} sentences", len(finding["sentences"]), len(finding["reasons"]))
        yield from equal(f"{arguments} codes", [c for c in finding["reasons"] if not re.fullmatch("[a-z-]+", c)], [])


def check_json_holds(run, _):
    """What the other JSON answers hold."""
    status, answer = run.json("identify", "--stamp", "30", "--port", "square")
    yield 4
    yield from equal("identify", (status, answer["strict_limit"], [c["chamber"] for c in answer["candidates"]]),
                     (0, "2 1/2", ["clamp 30 long"]))
    status, answer = run.json("identify", "--stamp", "30", "--family", "bolt")
    yield from equal("contradiction", (status, answer["contradiction"]), (3, ["stamp", "family"]))
    status, answer = run.json("limits", "18")
    yield from equal("unlisted", (status, answer["limit"], answer["reasons"][-1]), (3, None, "no-published-limit"))
    status, answer = run.json("limits", "--list")
    yield from equal("list", (status, answer["rule_sets"][0]["rules"]), (0, "us-fmcsr"))


def check_conditions(run, _):
    """Readings taken the wrong way prove nothing; a hot drum is named and changes no verdict."""
    for option, code, status in ((["--engine", "on"], "engine-running", 3), (["--engine", "off"], None, 0),
                                 (["--spring-brake", "on"], "spring-brake-applied", 3),
                                 (["--spring-brake", "released"], None, 0), (["--drum", "hot"], "drum-hot", 0),
                                 (["--drum", "cold"], None, 0), (["--psi-after", "80"], "pressure-low", 3)):
        plain = ["stroke", "clamp 30 long", "2", "4", "--psi", "95", "--as-of", DAY]
        got, finding = run.json(*plain, *option)
        yield 1
        yield from equal(option, (got, [c for c in finding["reasons"] if c != "within-limit"]),
                         (status, [code] if code else []))


def refused_names(run, folder):
    """A finding names its rule set: a file that is named as a law, or breaks a line, is refused."""
    for name, sentence in ((b"us-fmcsr", "this is the name of a law"), (b"o\nwn.csv", "a control character"),
                           (b"ow\x7fn.csv", "a control character")):
        with open(os.path.join(folder.encode(), name), "w", encoding="utf-8") as file:
            file.write("family,size,class,limit\nclamp,30,standard,1 7/8\n")
        done = run("stroke", "30", "2", "3", "--limits", name, cwd=folder)
        yield 1
        yield from equal(name, (done.returncode, done.out, sentence in done.err), (2, "", True))


def name_in_json(run, folder):
    """A file may have any other name; the JSON that holds it is sound all the same."""
    for name in (b'o"w\\n.csv', b"\xe9\xed\xa0\x80.csv", "\u00bd\u65e5\U0001f600.csv".encode()):
        with open(os.path.join(folder.encode(), name), "w", encoding="utf-8") as file:
            file.write("family,size,class,limit\nclamp,30,standard,1 7/8\n")
        done = run("stroke", "30", "2", "3", "--json", "--limits", name, cwd=folder)
        yield 1
        yield from equal(name, json.loads(done.out)["own_limits"], name.decode("utf-8", "replace"))


def check_own_limits(run, _):
    """A carrier's own limits are stricter than the law, or refused with file and line."""
    with tempfile.TemporaryDirectory() as folder:
        own = os.path.join(folder, "own.csv")
        with open(own, "w", encoding="utf-8") as file:
            file.write("family,size,class,limit\nclamp,30,standard,1 7/8\n")
        stroke = ["stroke", "30", "2", "4", "--class", "standard", "--limits", own]
        status, finding = run.json(*stroke)
        yield 6
        yield from equal("own", (status, finding["limit"], finding["law_limit"], finding["rules"], "over-own-limit" in
                                 finding["reasons"]), (1, "1 7/8", "2", "us-fmcsr", True))
        yield from equal("own source", (finding["source"], finding["evidence"]), (own[-39:], "none"))
        yield from equal("its law", ("393.47" in finding["law_source"], finding["law_evidence"]),
                         (True, "checked"))
        listed = run.json("limits", "30", "--class", "standard", "--limits", own)[1]
        yield from equal("limits", (listed["source"], "393.47" in listed["law_source"]), (own[-39:], True))
        yield from equal("own for people", "carrier" in run(*stroke).out, True)
        with open(own, "a", encoding="utf-8") as file:
            file.write("clamp,24,standard,1 7/8\n")
        done = run(*stroke)
        yield from name_in_json(run, folder)
        yield from refused_names(run, folder)
        named = "own.csv:3:" in done.err.replace("\n           ", "")
        yield from equal("laxer", (done.returncode, named), (2, True))


def check_order_of_options(run, _):
    """Options before, between and behind the operands give the same answer, whatever the environment says."""
    options = ["--psi", "95", "--class=long", "--as-of", DAY]
    operands = ["30", "2 1/8", "4 1/8"]
    wanted = run("stroke", *operands, *options).out
    posix = dict(os.environ, POSIXLY_CORRECT="1")
    for arguments in (options + operands, operands[:1] + options + operands[1:], options + ["--"] + operands,
                      operands[:2] + options[:2] + operands[2:] + options[2:]):
        yield 2
        yield from equal(arguments, run("stroke", *arguments).out, wanted)
        yield from equal(f"POSIXLY_CORRECT {arguments}", run("stroke", *arguments, env=posix).out, wanted)


def check_lost_output(run, _):
    """An answer that does not arrive is an error: a full disk, a closed output, a pipe that nobody reads."""
    yield 5
    with open("/dev/full", "wb") as full:
        for arguments in (["stroke", "30", "2", "3"], ["limits", "--list"]):
            done = run(*arguments, stdout=full)
            yield from equal("full disk", (done.returncode, "could not be written" in done.err), (2, True))
    closed = subprocess.run(["sh", "-c", 'exec "$@" >&-', "sh", run.path, "stroke", "30", "2", "3"],
                            stderr=subprocess.PIPE, timeout=60)
    yield from equal("closed output", (closed.returncode, b"could not be written" in closed.stderr), (2, True))
    for restore, wanted in ((True, -signal.SIGPIPE), (False, 2)):
        reader, writer = os.pipe()
        os.close(reader)
        done = run("stroke", "30", "2", "3", stdout=writer, restore_signals=restore)
        os.close(writer)
        yield from equal(f"closed pipe, signal {restore}", done.returncode, wanted)


def check_colour(run, _):
    """Colour on a terminal only, and not against NO_COLOR or a terminal that has none."""
    plain = {key: value for key, value in os.environ.items() if key not in ("NO_COLOR", "TERM")}
    xterm = dict(plain, TERM="xterm")
    question = ["stroke", "30", "2", "5"]
    yield 1
    yield from equal("no terminal", ESCAPE in run(*question, env=xterm).out, False)
    if not has_terminals():
        print("# no pseudo-terminal here: colour on a terminal was not looked at")
        return
    for environment, wanted in ((xterm, True), (dict(xterm, NO_COLOR=""), True), (dict(xterm, NO_COLOR="1"), False),
                                (dict(plain, TERM="dumb"), False), (plain, False)):
        status, shown = on_terminal([run.path, *question], environment)
        yield 1
        yield from equal({k: environment.get(k) for k in ("TERM", "NO_COLOR")}, (status, ESCAPE in shown), (1, wanted))
        yield from equal("the verdict is there", "OUT OF ADJUSTMENT" in shown, True)
    yield 1
    yield from equal("JSON", ESCAPE in on_terminal([run.path, *question, "--json"], xterm)[1], False)


def check_locale(run, _):
    """The locale changes the language of some commands (test_language.py), and nothing else."""
    for arguments in (["stroke", "30", "54.5 mm", "101.25 mm", "--psi", "92.5", "--division", "1 mm", "--language", "en"],
                      ["stroke", "30", "54.5 mm", "101.25 mm", "--psi", "92.5", "--json"], ["limits", "--language", "en"],
                      ["stroke", "30", "2,5", "4"], ["identify", "--diameter", "8.125", "--language", "en"]):
        answers = {(run(*arguments, "--as-of", DAY, env=dict(os.environ, LC_ALL=locale)).out)
                   for locale in ("C", "de_DE.UTF-8", "fr_CA.UTF-8", "tr_TR.UTF-8")}
        yield 1
        yield from equal(arguments, len(answers), 1)


def check_help(run, _):
    """Help exists, goes to stdout, fits 80 columns, and names every option."""
    for arguments in (["--help"], ["-h"], ["stroke", "--help"], ["identify", "--help"], ["limits", "--help"],
                      ["stroke", "-h"], ["stroke", "30", "--help"]):
        done = run(*arguments)
        yield 1
        yield from equal(arguments, (done.returncode, done.err, len(done.out) > 200), (0, "", True))
        yield from equal(f"{arguments} too wide", [line for line in done.out.split("\n") if len(line) > 80], [])
    for command, options in (("stroke", "class rated marked-limit rules limits as-of psi psi-after division engine "
                              "spring-brake drum unit json"),
                             ("identify", "stamp family port tag diameter division rated rules as-of json"),
                             ("limits", "class rated rules limits as-of json")):
        shown = run(command, "--help").out
        yield 1
        yield from equal(command, [name for name in options.split() if f"--{name}" not in shown], [])
    version = run("--version").out
    yield 1
    yield from equal("version", bool(re.fullmatch(r"rodtravel \d+\.\d+\.\d+\ntables of \d{4}-\d\d-\d\d\n"
                                                  r"rule sets:(\s+[a-z0-9-]+)+\n", version)), True)


DATA = os.path.join(HERE, "..", "..", "examples", "data")
SCREENS = [  # a command of each kind, and answers for the one that asks
    ["--help"], ["--version"], ["--nothing"], ["stroke", "30", "2 1/8", "4 3/16", "--division", "1/16", "--why"],
    ["stroke", "30", "31/8", "5", "--psi", "85"], ["stroke", "24L", "2", "4 1/4"], ["stroke", "30", "2", "4", "--short"],
    ["stroke", "30", "2 1/8 of something that is far too long", "4"], ["stroke", "18", "2", "4"],
    ["stroke", "30", "2", "5", "--rules", "ca-on"], ["limits"], ["limits", "30"], ["limits", "--rules", "ca-on"],
    ["limits", "--list"], ["limits", "--air", "--rules", "us-cdl"], ["limits", "--as-of", "1990-01-01"],
    ["identify", "--stamp", "30"], ["identify", "--stamp", "30", "--family", "bolt"],
    ["identify", "--diameter", "8 1/8"], ["identify", "--stamp", "20", "--rules", "ca-on"],
    ["vehicle", os.path.join(DATA, "demo_vehicle.csv")], ["report", os.path.join(DATA, "inspection.json")],
    ["air", "warning", "55", "--rules", "us-cdl"], ["air", "estimate", "--psi", "105", "--reservoirs", "5568",
                                                    "--chambers", "20,20,30,30,30,30"],
    ["cards"], ["cards", "--rules", "ca-on"], ["practice", "--checks", "--seed", "1", "--rules", "ca-on"],
    ["practice", "--seed", "7"], ["practice", "--seed", "7", "--metric", "--level", "hard"],
    ["practice", "--seed", "7", "--describe"],
    *([command, "--help"] for command in ("stroke", "vehicle", "air", "walkround", "report", "identify", "limits",
                                          "batch", "practice", "cards"))]
COLOURED = re.compile(ESCAPE + r"\[[0-9;]*m")


def too_wide(shown, columns):
    return [line for line in COLOURED.sub("", shown).replace("\r", "").split("\n") if len(line) > columns]


def check_width(run, _):
    """No line of any command is wider than the terminal, and none of a pipe than 80 columns."""
    for arguments in SCREENS:
        done = run(*arguments)
        yield 1
        yield from equal(f"{arguments} piped", too_wide(done.out + done.err, 80), [])
    for columns in (40, 80, 132) if has_terminals() else ():
        for arguments in SCREENS:
            shown = on_terminal([run.path, *arguments], dict(os.environ, TERM="xterm", LC_ALL="C.UTF-8"), columns)[1]
            yield 1
            yield from equal(f"{arguments} at {columns}", too_wide(shown, columns), [])


def check_screens_say_first_what_decides(run, _):
    """The deciding reason and the action before everything else, and what a reading can mean besides."""
    for arguments, wanted in (
            (["30", "2 1/8", "4 1/8", "--psi", "85"], ["UNDETERMINED", "too little air", "Do not drive until"]),
            (["30", "31/8", "5", "--psi", "95"], ["IN ADJUSTMENT", "If you meant 3 1/8, write it with its blank."]),
            (["24L", "2", "4 1/4", "--psi", "95"], ["OUT OF ADJUSTMENT", "Do not drive", "stamped 3 in has the limit 2"]),
            (["30", "2", "5", "--psi", "95"], ["OUT OF ADJUSTMENT", "more than the full travel of a standard chamber"]),
            (["30", "2", "4", "--rules", "us-cdl"], ["UNDETERMINED", "us-cdl has air checks only"]),
            (["30", "2", "4", "--psi", "95", "--class", "standard"], ["IN ADJUSTMENT, AT THE LIMIT", "2 of 2 in"])):
        shown = " ".join(run("stroke", *arguments).out.split())
        places = [shown.find(words) for words in wanted]
        yield 1
        yield from equal(f"{arguments}: {wanted} in {shown}", places == sorted(places) and places[0] == 0, True)
    for arguments, wanted in ((["30", "2 1/8", "4 1/4"], "OUT OF ADJUSTMENT 2 1/8 of 2 in, clamp 30 standard\n"),
                              (["30", "4", "2"], "UNDETERMINED - of 2 in, clamp 30 standard\n"),
                              (["30", "2", "4", "--rules", "ca-on"], "IN ADJUSTMENT, AT THE LIMIT 2 of 2 in, clamp 30 standard, common practice\n")):
        yield 1
        yield from equal(arguments, run("stroke", *arguments, "--short").out, wanted)
    few, all_of_it = (run("stroke", "30", "2 1/8", "4 1/4", *more).out for more in ([], ["--why"]))
    yield 1
    yield from equal("reasons", (few.count("        - ") + few.count("Why     - "), "stroke is over" in few,
                                 "stroke is over the limit by 1/8" in all_of_it), (2, False, True))


# --- Exact messages ---------------------------------------------------------------------------------------


def read_cases(path):
    """Cases as (arguments, status, expected lines): `$ arguments`, `? status`, `| stdout`, `! stderr`."""
    case = None
    with open(path, encoding="utf-8") as file:
        for line in file.read().split("\n"):
            if line.startswith("$ "):
                if case:
                    yield case
                case = [line[2:], None, []]
            elif line.startswith("? "):
                case[1] = int(line[2:])
            elif line[:1] in ("|", "!"):
                case[2].append(line)
    if case:
        yield case


def answer_lines(run, text):
    done = run(*shlex.split(text))
    lines = ["|" + (" " + line if line else "") for line in done.out.split("\n")[:-1]]
    return done.returncode, lines + ["!" + (" " + line if line else "") for line in done.err.split("\n")[:-1]]


def check_messages(run, _):
    """The answers and messages in *.cases, to the letter, within 80 columns."""
    for path in sorted(glob.glob(os.path.join(HERE, "*.cases"))):
        for text, status, lines in read_cases(path):
            got_status, got = answer_lines(run, text)
            yield 1
            yield from equal(f"{os.path.basename(path)}: {text} status", got_status, status)
            if got != lines:
                yield f"{os.path.basename(path)}: {text}"
                yield from (f"  wanted {line}" for line in lines if line not in got)
                yield from (f"  got    {line}" for line in got if line not in lines)
            if "--json" not in text:
                yield from (f"{text} is too wide: {line}" for line in got if len(line) > 82)


def rewrite(run):
    for path in sorted(glob.glob(os.path.join(HERE, "*.cases"))):
        with open(path, encoding="utf-8") as file:
            kept = [line for line in file.read().split("\n") if line[:1] in ("#", "$")]
        with open(path, "w", encoding="utf-8") as file:
            for line in kept:
                file.write(("\n" if line.startswith("$") else "") + line + "\n")
                if line.startswith("$ "):
                    status, lines = answer_lines(run, line[2:])
                    file.write(f"? {status}\n" + "".join(f"{answer}\n" for answer in lines))


def gather(check, run, folder):
    """What a check yields; an answer that is not there at all ends it, and is a fault like any other."""
    found = []
    try:
        for item in check(run, folder):
            found.append(item)
    except (TypeError, KeyError, IndexError, ValueError, OSError, subprocess.TimeoutExpired):
        found.append(traceback.format_exc())
    return found


def main():
    run = Command(sys.argv[1])
    if sys.argv[2:] == ["--rewrite"]:
        return rewrite(run)
    folder = sys.argv[2] if len(sys.argv) > 2 else os.path.join(HERE, "..", "cases")
    checks = [(name, check) for name, check in globals().items() if name.startswith("check_")]
    print(f"1..{len(checks)}")
    for number, (name, check) in enumerate(checks, 1):
        found = gather(check, run, folder)
        compared = sum(item for item in found if isinstance(item, int))
        short = [item for item in found if not isinstance(item, int)]
        good = compared > 0 and not short
        print(f"{'ok' if good else 'not ok'} {number} - {name[6:].replace('_', ' ')} ({compared})", flush=True)
        for item in short[:30]:
            print("# " + str(item).replace("\n", "\n# "), flush=True)


if __name__ == "__main__":
    main()
