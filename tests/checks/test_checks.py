# SPDX-License-Identifier: Apache-2.0
"""Proves that each check can fail: a valid small tree passes, and each fault planted in it is found at its place.

Argument: C compiler command... Prints TAP."""
import contextlib
import io
import json
import os
import shutil
import subprocess
import sys
import tempfile

import abi
import bill
import calls
import conditions
import describe
import docs
import hardening
import headers
import layers
import ledger
import lengths
import reference
import survivors
import symbols
import translations
import tree
import words

SPDX = "/* SPDX-License-Identifier: Apache-2.0 */\n"
HEADER = SPDX + """#define RODT_API
/* Returns a number. */
RODT_API int rodt_one(void);
"""
LEDGER = "<!-- SPDX-License-Identifier: Apache-2.0 -->\n| target | function |\n| fuzz_one | `rodt_one` |\n"
VALID = {
    "include/rodtravel/status.h": HEADER,
    "include/rodtravel/length.h": SPDX + '#include "status.h"\n',
    "include/rodtravel/pressure.h": SPDX,
    "include/rodtravel/rodtravel.h": SPDX + '#include "length.h"\n',
    "lib/core/common.h": SPDX,
    "lib/core/number.h": SPDX + '#include "core/common.h"\nint number(void);\n',
    "lib/core/exact.c": SPDX + '#include "core/number.h"\n#include "core/limbs_gmp.h"\nint number(void) { return 1; }\n',
    "lib/core/limbs_gmp.h": SPDX + '#include <gmp.h>\n',
    "lib/quantity/length.c": SPDX + '#include "rodtravel/length.h"\n#include "core/number.h"\n'
                             "/* strtod( is only mentioned */\nconst char *text = \"double exit(1)\";\n",
    "examples/c/one.c": SPDX + "#include <rodtravel/rodtravel.h>\n",
    "examples/cli/ui/wrap.h": SPDX + "#include <rodtravel/rodtravel.h>\nstatic inline int twice(void) { return wrap() * 2; }\n",
    "examples/cli/ui/wrap.c": SPDX + '#include "ui/wrap.h"\nint wrap(void) { return number(); }\n'
                              "static int number(void) { return twice(); }\n",
    "bindings/python/rodtravel/_error.py": "# SPDX-License-Identifier: Apache-2.0\nfrom . import _rodtravel\n",
    "bindings/python/rodtravel/_record.py": "# SPDX-License-Identifier: Apache-2.0\nimport re\nfrom ._error import Error\n",
    "tests/unit/test_one.c": SPDX + "int main(void) { return rodt_one(); }\n",
    "tests/fuzz/LEDGER.md": LEDGER,
    "tests/fuzz/fuzz_one.c": SPDX,
    "tests/fuzz/corpus/one/1": "1",
    "examples/cli/rodtravel.1": '.\\" SPDX-License-Identifier: Apache-2.0\n.It Fl -json\n',
    "examples/cli/languages/fr.po": '# SPDX-License-Identifier: Apache-2.0\nmsgid ""\nmsgstr ""\n',
    "README.md": "<!-- SPDX-License-Identifier: Apache-2.0 -->\nrodtravel stroke 30 2 4 --json\n",
    "tests/cases/one.csv": "2 1/8\n",
    words.NO_COMMENTS: "# SPDX-License-Identifier: Apache-2.0\nFiles: *\n\nFiles: tests/one.txt\n tests/cases/*.csv\n tests/fuzz/corpus/*\n",
}
PO = '# SPDX-License-Identifier: Apache-2.0\nmsgid ""\nmsgstr ""\n'
SAYING = {"examples/cli/ui/wrap.c": SPDX + 'int a = say("one %s");\n'}
FAKE_COMMAND = "#!/bin/sh\necho '--json and --as-of'\n"
LONG_FUNCTION = SPDX + "static int f(int a)\n{\n" + "    a++;\n" * 58 + "    return a;\n}\n"

# A public struct and an enumeration, and a program that describes them.
TABLED = SPDX + """typedef enum rodt_one RODT_ENUM_TYPE { RODT_ONE_A = 0, RODT_ONE_B, /* , } */ } rodt_one;
typedef struct rodt_two {
    RODT_ENUM32(rodt_one) one;
    char text[4], *far;
} rodt_two;
#define RODT_ONE_END 2 /* one more than the last */
"""
SAYS = """record rodt_two 16 input
member rodt_two one 0 4 1 enumerator rodt_one - -
member rodt_two text 4 4 1 text - - -
member rodt_two far 8 8 1 pointer - - -
enumeration rodt_one numbers
enumerator rodt_one RODT_ONE_A 0 a
enumerator rodt_one RODT_ONE_B 1 b
"""


def described(header, says):
    """Files and a check for a header and what the program says."""
    return (lambda root: describe.check(root, os.path.join(root, "tests/described")),
            {"include/rodtravel/length.h": header, "tests/described": "#!/bin/sh\ncat <<'END'\n" + says + "END\n"})


ABI = """function rodt_one int (int, const char *)
member rodt_two one at 0 1 x 4 enumerator
member rodt_two text at 4 1 x 4 text
member rodt_two far at 8 1 x 8 pointer
record rodt_two 16
enumerator RODT_ONE_A 0 a
enumerator RODT_ONE_B 1 b
"""
FUNCTION = SPDX + "RODT_API int rodt_one(int number,\n    const char *text);\n"


def kept(interface, says=SAYS, header=FUNCTION):
    """Files and a check for an interface that is kept, and what there is."""
    return (lambda root: abi.check(root, os.path.join(root, "tests/described")),
            {"include/rodtravel/status.h": header, abi.KEPT: interface, "tests/described": "#!/bin/sh\ncat <<'END'\n" + says + "END\n"})


BOTH = "/* a is never so */ int f(int a, int b) { if (NEVER(a)) return 2; return a && b; }\n"


def covered(branches=((3, 2, 6), (3, 2, 6)), proven=(True, True), ran=2, lines=100, text=BOTH, whole=100, before=()):
    """A library of one line, and what a coverage program says of it: (counts, kind) of branches, and their conditions.
    `before` are regions of a file that comes first."""
    at = [text.find("return a") + 8, text.find("b; }") + 1]
    body = text.find("return 2") + 1
    function = {"filenames": ["lib/core/text.c"], "regions": [[2, 1, 2, len(text), ran, 0, 0, 0], [2, body, 2, body + 9, 0, 0, 0, 0]],
                "branches": [[2, at[i], 2, at[i] + 1, true, false, 0, 0, kind] for i, (true, false, kind) in enumerate(branches)],
                "mcdc_records": [[2, at[0], 2, at[1] + 1, 0, 5, list(proven)]] if proven else []}
    first = {"regions": list(before), "branches": [], "mcdc_records": []}

    def check(root):
        paths = [os.path.join(root, path) for path in ("lib/core/first.c", "lib/core/text.c")]
        export = {"files": [{"filename": path, "segments": [[2, 1, ran if lines == whole else 0, True, True, False]],
                             "summary": {"lines": {"count": whole, "covered": lines}}} for path in paths],
                  "functions": [{**first, "filenames": paths[:1]}, {**function, "filenames": paths[1:]}]}
        path = os.path.join(root, "tests/export.json")
        with open(path, "w", encoding="utf-8") as file:
            json.dump({"data": [export]}, file)
        with contextlib.redirect_stdout(io.StringIO()):
            return conditions.check(root, path, held=("lib/",))
    return check, {"lib/core/first.c": SPDX + "int g(void)\n{\n    return 1;\n}\n", "lib/core/text.c": SPDX + text}


RESERVED = ABI.replace("far at 8 1 x 8 pointer", "far at 8 1 x 8 reserve")

SOURCED = SPDX.replace("/*", "#").replace(" */", "") + "id,body,document,section,edition,address,read_on\na,Ministry,Handbook,part 1,2019,,2026-11-25\n"
BILL = json.dumps({"components": [
    {"type": "data", "bom-ref": "table limits.csv", "name": "tables/limits.csv"},
    {"type": "data", "bom-ref": "source a", "name": "Handbook", "version": "2019", "publisher": "Ministry", "properties": [
        {"name": "rodtravel:section", "value": "part 1"}, {"name": "rodtravel:read_on", "value": "2026-11-25"},
        {"name": "rodtravel:figures", "value": "limits.csv, 1 checked"}]}],
    "dependencies": [{"ref": "table limits.csv", "dependsOn": ["source a"]}]})


def billed(bill_text=BILL, sources=SOURCED, evidence="checked"):
    """Files and a check for a table that cites a source, and the bill."""
    return (lambda root: bill.check(root, os.path.join(root, "tests/bill.json")),
            {"tests/bill.json": bill_text, "tables/sources.csv": sources,
             "tables/limits.csv": f"# SPDX-License-Identifier: Apache-2.0\nlimit,source,evidence\n2,a,{evidence}\n"})


# name, check, what is written over the valid tree, what the finding must say
SURVIVORS = survivors.FOLDER + "/quantity.txt"
SURVIVES = {SURVIVORS: "closed: lib/quantity/length.c\n\nlib/quantity/length.c f\nreturn 1;\n1 -> 2\nIt is the same.\n",
            "lib/quantity/length.c": SPDX + "int f(void)\n{\n    return 1;\n}\n"}
BROKEN = [
    ("upward include", layers.check, {"lib/core/number.h": SPDX + '#include "rodtravel/length.h"\n'},
     "lib/core/number.h:2: includes include/rodtravel/length.h, which is 1 above it"),
    ("include of a peer", layers.check, {"lib/air/air.c": SPDX + '\n#include "rodtravel/identify.h"\n',
                                         "include/rodtravel/identify.h": SPDX},
     "lib/air/air.c:3: includes its peer include/rodtravel/identify.h"),
    ("upward include in the command", layers.check, {"examples/cli/ui/wrap.h": SPDX + '#include "io/csv.h"\n',
                                                     "examples/cli/io/csv.h": SPDX},
     "examples/cli/ui/wrap.h:2: includes examples/cli/io/csv.h, which is 1 above it"),
    ("upward call", layers.check, {"lib/core/text.c": SPDX + "int fa(void);\nint fa(void) { return fb(); }\n",
                                   "lib/judge/b.c": SPDX + "int fb(void)\n{\n    return 1;\n}\n"},
     "lib/core/text.c:3: calls fb in lib/judge/b.c, which is 5 above it"),
    ("upward use of a table", layers.check,
     {"lib/core/text.c": SPDX + "int a(void) { return names[0][0]; }\n",
      "lib/judge/b.c": SPDX + 'const char *const names[2] = {\n    "a"\n};\n'},
     "lib/core/text.c:2: calls names in lib/judge/b.c, which is 5 above it"),
    ("call of a peer", layers.check, {"examples/cli/air/a.c": SPDX + "struct s t = {.f = fb};\n",
                                      "examples/cli/vehicle/b.c": SPDX + "int fb(void) { return 1; }\n"},
     "examples/cli/air/a.c:2: calls fb in its peer examples/cli/vehicle/b.c"),
    ("cycle of includes", layers.check,
     {"lib/judge/a.h": SPDX + '#include "judge/b.h"\n', "lib/judge/b.h": SPDX + '#include "a.h"\n'},
     "lib/judge/a.h:2: is in a cycle: a.h includes b.h; b.h includes a.h"),
    ("cycle of calls through one header", layers.check,
     {"lib/judge/all.h": SPDX + "int fa(void);\nint fb(void);\nint fc(void);\n",
      "lib/judge/a.c": SPDX + '#include "judge/all.h"\nint fa(void) { return fb(); }\n',
      "lib/judge/b.c": SPDX + '#include "judge/all.h"\nint fb(void) { return fc(); }\n',
      "lib/judge/c.c": SPDX + '#include "judge/all.h"\nint fc(void) { return fa(); }\n'},
     "lib/judge/a.c:3: is in a cycle: a.c calls fb in b.c; b.c calls fc in c.c; c.c calls fa in a.c"),
    ("gmp.h elsewhere", layers.check, {"lib/quantity/length.c": SPDX + "#include <gmp.h>\n"},
     "lib/quantity/length.c:2: gmp.h belongs to"),
    ("unlisted folder", layers.check, {"lib/drawer/a.c": SPDX}, "lib/drawer/a.c:1: is in no layer"),
    ("another header of the library", layers.check, {"examples/c/one.c": SPDX + "#include <rodtravel/length.h>\n"},
     "examples/c/one.c:2: includes rodtravel/length.h; above the library"),
    ("private header above", layers.check, {"examples/cli/ui/wrap.c": SPDX + '#include "../../../lib/core/number.h"\n'},
     "examples/cli/ui/wrap.c:2: includes ../../../lib/core/number.h; above the library"),
    ("upward import", layers.check, {"bindings/python/rodtravel/_error.py": "from ._record import Record\n"},
     "_error.py:1: imports _record, which is not before it"),
    ("hidden import", layers.check,
     {"bindings/python/rodtravel/_record.py": "def f():\n    from ._error import Error\n    return Error\n"},
     "_record.py:2: imports _error inside of a block"),
    ("unlisted module", layers.check, {"bindings/python/rodtravel/_drawer.py": ""}, "_drawer.py:1: is not in the list"),
    ("machine path", words.check, {"lib/core/common.h": SPDX + "\n/* see /ho" + "me/pat/x */\n"}, "lib/core/common.h:3: '/ho" + "me/p'"),
    ("word made at home", words.check, {"lib/core/common.h": SPDX + "/* met be" + "fore */\n"},
     "lib/core/common.h:2: 'met be" + "fore': write cached"),
    ("unfinished", words.check, {"lib/core/common.h": SPDX + "/* TO" + "DO */\n"}, "lib/core/common.h:2: 'TO" + "DO': unfinished"),
    ("blanks at the end", words.check, {"lib/core/common.h": SPDX + "int a; \n"}, "lib/core/common.h:2: '': blanks"),
    ("no licence line", words.check, {"lib/core/common.h": "int a;\n"}, "lib/core/common.h:1: has no line SPDX"),
    ("no licence line in a page", words.check, {"lib/docs/page.md": "# Page\n"}, "lib/docs/page.md:1: has no line SPDX"),
    ("file that is not listed", words.check, {words.NO_COMMENTS: "Files: *\n"}, "tests/cases/one.csv:1: has no line SPDX"),
    ("stray top entry", words.check, {"notes.txt": "x\n"}, "notes.txt:0: does not belong at the top level"),
    ("long function", lengths.check, {"lib/quantity/length.c": LONG_FUNCTION}, "lib/quantity/length.c:2: f has 62 lines"),
    ("long function in extern C", lengths.check, {"lib/quantity/length.c": 'extern "C" {\n' + LONG_FUNCTION + "}\n"},
     "lib/quantity/length.c:3: f has 62 lines"),
    ("long file", lengths.check, {"lib/quantity/length.c": SPDX + "int a;\n" * 700}, "lib/quantity/length.c:701: has 701 lines"),
    ("wide line", lengths.check, {"lib/quantity/length.c": SPDX + "int a;" + " " * 115 + "\n"}, "lib/quantity/length.c:2: is 121 columns"),
    ("survivor without a reason", survivors.check, {SURVIVORS: "lib/quantity/length.c f\nreturn 1;\n1 -> 2\n"}, "quantity.txt:1: needs four lines"),
    ("closed file that is not there", survivors.check, {SURVIVORS: "closed: lib/quantity/length.c lib/quantity/other.c\n", "lib/quantity/length.c": SPDX}, "quantity.txt:0: there is no lib/quantity/other.c"),
    ("survivor in no file", survivors.check, {SURVIVORS: "lib/quantity/other.c f\nreturn 1;\n1 -> 2\nIt is the same.\n"}, "has no function f"),
    ("survivor without its line", survivors.check, {**SURVIVES, "lib/quantity/length.c": SPDX + "int f(void)\n{\n    return 3;\n}\n"}, "quantity.txt:3: lib/quantity/length.c has no such line: return 1;"),
    ("survivor twice", survivors.check, {**SURVIVES, SURVIVORS: (SURVIVES[SURVIVORS] + "\n") * 2}, "quantity.txt:10: is there twice"),
    ("text without a translation", translations.check, {"examples/cli/ui/wrap.c": SPDX + 'int a = say("an\\n" "other");\n'}, "has no translation of: an"),
    ("translation with another placeholder", translations.check, {**SAYING, "examples/cli/languages/fr.po": PO + '\nmsgid "one %s"\nmsgstr "un %d"\n'}, "fr.po:0: other placeholders than: one %s"),
    ("translation that is empty", translations.check, {**SAYING, "examples/cli/languages/fr.po": PO + '\nmsgid "one %s"\nmsgstr ""\n'}, "wrap.c:2: examples/cli/languages/fr.po has no translation of: one %s"),
    ("translation that is fuzzy", translations.check, {**SAYING, "examples/cli/languages/fr.po": PO + '\n#, fuzzy\nmsgid "one %s"\nmsgstr "un %s"\n'}, "has no translation of: one %s"),
    ("option without a translation", translations.check, {"examples/cli/ui/wrap.c": SPDX + '    [A_B] = {"a", "WORD", "first " NAME "; last", false},\n#define NAME "x"\n'}, "has no translation of: first x; last"),
    ("value of an option without a translation", translations.check, {"examples/cli/ui/wrap.c": SPDX + '    [A_B] = {"a", "WORD", "a", false},\n'}, "has no translation of: WORD"),
    ("line of a help without a translation", translations.check, {"examples/cli/ui/wrap.c": SPDX + 'int a = TO_SAY_LINES("One.\\n  two  of it\\n");\n'}, "has no translation of: of it"),
    ("title without a translation", translations.check, {"tables/rulesets.csv": "# SPDX-License-Identifier: Apache-2.0\nid,title\na,Brakes\n"}, "rulesets.csv:3: examples/cli/languages/fr.po has no translation of: Brakes"),
    ("sentence in English alone", translations.check, {"examples/cli/ui/wrap.c": SPDX + "int a = '\"', b = f(\"two words\");\n"}, "wrap.c:2: in English alone; say it, or add it to NO_LANGUAGE: two words"),
    ("name in English alone", translations.check, {"examples/cli/ui/wrap.c": SPDX + 'int a = f("Brakes");\n'}, "wrap.c:2: in English alone; say it, or add it to NO_LANGUAGE: Brakes"),
    ("word that is printed in English alone", translations.check, {"examples/cli/ui/wrap.c": SPDX + 'void f(void) { printf("<b>%s brakes</b>", a); }\n'}, "wrap.c:2: in English alone; say it, or add it to NO_LANGUAGE: <b>%s brakes</b>"),
    ("blank that breaks", translations.check, {"examples/cli/languages/fr.po": PO + '\nmsgid "a: %s"\nmsgstr "a : %s"\n'}, "fr.po:6: a blank before a colon"),
    ("translation that nobody says", translations.check, {"examples/cli/languages/fr.po": PO + '\nmsgid "two"\nmsgstr "deux"\n'}, "fr.po:0: nobody says: two"),
    ("label that is too long", translations.check, {"examples/cli/ui/wrap.c": SPDX + 'print_wrapped(stdout, say("Why"), INDENT, a);\n', "examples/cli/languages/fr.po": PO + '\nmsgid "Why"\nmsgstr "Pourquoi"\n'}, "Pourquoi: a label has at most 7"),
    ("locale reader", calls.check, {"lib/quantity/length.c": SPDX + "\ndouble_ x = strtod (s, 0);\n"}, "lib/quantity/length.c:3: strtod: rounds"),
    ("output", calls.check, {"lib/quantity/length.c": SPDX + 'void f(void) { printf("x"); }\n'}, "lib/quantity/length.c:2: printf: the library prints"),
    ("screen", calls.check, {"examples/cli/walkround/plan.c": SPDX + 'void f(void) { fputs("x", stdout); }\n'}, "examples/cli/walkround/plan.c:2: stdout: all that is shown"),
    ("memory", calls.check, {"lib/quantity/length.c": SPDX + "void *p = malloc(3);\n"}, "lib/quantity/length.c:2: malloc: memory is allocated only"),
    ("binary float", calls.check, {"lib/quantity/length.c": SPDX + "double a;\n"}, "lib/quantity/length.c:2: double: binary"),
    ("reader in the table compiler", calls.check, {"lib/tablec/main.c": SPDX + 'int a = atoi("1");\n'}, "lib/tablec/main.c:2: atoi: rounds"),
    ("struct without description", *described(TABLED + "struct rodt_three { int a; };\n", SAYS), "length.h:8: struct rodt_three is not in"),
    ("member without description", *described(TABLED.replace("*far;", "*far;\n    int near;"), SAYS), "length.h:6: rodt_two.near is not in"),
    ("member of another enumeration", *described(TABLED, SAYS.replace("enumerator rodt_one -", "enumerator rodt_two -")), "length.h:4: rodt_two.one is rodt_one here"),
    ("reserve of another kind", *described(TABLED.replace("*far", "*reserved"), SAYS.replace(" far ", " reserved ")), "rodt_two.reserved is pointer"),
    ("members in another order", *described(TABLED.replace("[4], *far", "[4]").replace("    RODT", "    char *far;\n    RODT"), SAYS), "length.h:3: lib/describe/records.c has the members of rodt_two"),
    ("enumerator of another enumeration", *described(TABLED.replace("RODT_ONE_B", "RODT_TWO_B"), SAYS.replace("RODT_ONE_B", "RODT_TWO_B")), "length.h:2: RODT_TWO_B is of rodt_one: call it RODT_ONE_..."),
    ("word that is not the name", *described(TABLED, SAYS.replace("RODT_ONE_B 1 b", "RODT_ONE_B 1 bee")), 'length.h:2: "bee" is not the word that RODT_ONE_B spells'),
    ("enumeration without words", *described(TABLED + "enum rodt_four { RODT_FOUR };\n", SAYS), "length.h:8: enum rodt_four is not in"),
    ("enumerator without words", *described(TABLED.replace("RODT_ONE_B,", "RODT_ONE_B, RODT_ONE_C = 1u << 3,"), SAYS), "length.h:2: RODT_ONE_C = 8 is not in words.c"),
    ("enumerator with another number", *described(TABLED.replace("RODT_ONE_B", "RODT_ONE_B = 3"), SAYS), "length.h:2: RODT_ONE_B = 3 is not in"),
    ("word of two enumerators", *described(TABLED, SAYS.replace("RODT_ONE_B 1 b", "RODT_ONE_B 1 a")), 'two enumerators of rodt_one have the word "a"'),
    ("enumeration without an end", *described(TABLED.replace("_END 2", "_LAST 2"), SAYS), "length.h:2: RODT_ONE_END is not defined"),
    ("end of another number", *described(TABLED.replace("_END 2", "_END 3"), SAYS), "length.h:2: RODT_ONE_END is 3; it is 2"),
    ("description of nothing", *described(SPDX, SAYS), "records.c:0: rodt_two is in no public header"),
    ("new function", *kept(ABI.replace("function rodt_one int (int, const char *)\n", "")), '"function rodt_one int (int, const char *)" is new'),
    ("interface that grew", *kept(ABI.replace("function rodt_one int (int, const char *)\n", "")), "the interface grew"),
    ("function gone", *kept(ABI + "function rodt_old void (void)\n"), '"function rodt_old void (void)" is now "gone"'),
    ("other constant", *kept(ABI + "constant RODT_PER_INCH 64\n", header=FUNCTION + "#define RODT_PER_INCH 32 /* parts */\n"),
     '"constant RODT_PER_INCH 64" is now "constant RODT_PER_INCH 32"'),
    ("interface that broke", *kept(ABI + "function rodt_old void (void)\n"), "programs that are built already would break"),
    ("function of another type", *kept(ABI, header=FUNCTION.replace("int number", "long number")), 'is now "function rodt_one int (long, const char *)"'),
    ("moved member", *kept(ABI, SAYS.replace("far 8 8", "far 12 8")), "programs that are built already would break"),
    ("larger record", *kept(ABI, SAYS.replace("rodt_two 16", "rodt_two 24")), "programs that are built already would break"),
    ("other number", *kept(ABI, SAYS.replace("RODT_ONE_B 1", "RODT_ONE_B 2")), "programs that are built already would break"),
    ("member in the place of a reserve", *kept(RESERVED, SAYS.replace("far 8 8 1 pointer", "near 8 8 1 pointer")), "the interface grew"),
    ("reserve that changed with the size", *kept(RESERVED, SAYS.replace("rodt_two 16", "rodt_two 24")), "programs that are built already would break"),
    ("document that the bill lacks", *billed(sources=SOURCED + "b,Ministry,Act,part 2,2020,,\n"), "sources.csv:4: b is not in the bill"),
    ("document of another day", *billed(BILL.replace("11-25", "11-26")), "sources.csv:3: a is not in the bill as it is here"),
    ("document of another status", *billed(evidence="from-memory"), "sources.csv:3: a is not in the bill as it is here"),
    ("document that no table has", *billed(sources=SOURCED.replace("\na,", "\nb,")), "bill.json:0: a is in no table"),
    ("document that the table's entry lacks", *billed(BILL.replace('["source a"]', "[]")), "limits.csv and source a: only one"),
    ("reference to nothing", *billed(BILL.replace('["source a"]', '["source a", "source b"]')), "rests on source b, which is not there"),
    ("function without comment", docs.check,
     {"include/rodtravel/status.h": SPDX + "#define RODT_API\n\nRODT_API int rodt_one(void);\n"}, "status.h:4: rodt_one has no comment"),
    ("condition that never decides", *covered(((3, 2, 6), (5, 0, 6)), (True, False)),
     "text.c:2: condition 2, b, of (a && b) does not decide by itself"),
    ("outcome that is not seen", *covered(((3, 0, 4), (1, 1, 4)), ()), "text.c:2: one outcome of (a) is not tested"),
    ("function that never runs", *covered(ran=0), "text.c:2: never runs: /* a is"),
    ("the same behind a longer one of another file", *covered(ran=0, before=([2, 1, 5, 2, 0, 0, 0, 0],)),
     "text.c:2: never runs: /* a is"),
    ("mark without a reason", *covered(text="\n" + BOTH.replace("/* a is never so */", "")), "text.c:3: a mark without"),
    ("lines that do not run", *covered(lines=94), "lib:0: 188 of 200 lines run"),
    ("nothing that was counted", *covered(lines=0, whole=0), "lib:0: 0 of 0 lines run"),
    ("not in the ledger", ledger.check, {"tests/fuzz/LEDGER.md": "nothing\n"}, "status.h:4: rodt_one is not in tests/fuzz"),
    ("ledger with an unknown function", ledger.check, {"tests/fuzz/LEDGER.md": LEDGER + "| fuzz_one | `rodt_two` |\n"},
     "LEDGER.md:0: rodt_two is no public"),
    ("no ledger", ledger.check, {"tests/fuzz/LEDGER.md": None}, "LEDGER.md:0: is missing"),
    ("row without a target or a reason", ledger.check, {"tests/fuzz/LEDGER.md": LEDGER + "| trivial | `rodt_one` |\n"},
     "LEDGER.md:4: a row begins with its target"),
    ("unknown target", ledger.check, {"tests/fuzz/LEDGER.md": LEDGER + "| fuzz_two | `rodt_one` |\n"}, "there is no fuzz_two"),
    ("target without a row", ledger.check, {"tests/fuzz/fuzz_two.c": SPDX, "tests/fuzz/corpus/two/1": "1"}, "fuzz_two has no row"),
    ("target without inputs", ledger.check, {"tests/fuzz/corpus/one/1": None}, "no input of fuzz_one is kept"),
    ("reader of the command", ledger.check, {"examples/cli/io/one.c": SPDX + "int one(void) { return getchar(); }\n"},
     "one.c:2: reads, and is not in tests/fuzz"),
    ("reader that is gone", ledger.check, {"tests/fuzz/LEDGER.md": LEDGER + "| fuzz_one | `read_two` |\n"},
     "the command has no read_two"),
    ("option that nothing gives", lambda root: ledger.check(root, os.path.join(root, "tests/command")),
     {"tests/command": "#!/bin/sh\necho '  one  x'\necho '  --json  x'\n"}, "no input gives --json to one"),
    ("function that nothing enters", lambda root: ledger.check_reached(root, root),
     {"tests/fuzz/fuzz_one": "#!/bin/sh\necho 'COVERED_FUNC: hits: 1 edges: 1/1 main a.c:1' >&2\n"},
     "LEDGER.md:3: no kept input of fuzz_one enters rodt_one"),
    ("untested function", docs.check, {"tests/unit/test_one.c": SPDX}, "status.h:4: rodt_one is called by no test"),
    ("promise without its test", docs.check, {"lib/README.md": SPDX + "\n| whole | `tests/unit/test_two.c` |\n"},
     "lib/README.md:3: tests/unit/test_two.c is not there"),
    ("option not in the manual", lambda root: docs.check(root, os.path.join(root, "tests/command")),
     {"tests/command": FAKE_COMMAND}, "rodtravel.1:0: --as-of is in the help but not"),
    ("option not in the help", lambda root: docs.check(root, os.path.join(root, "tests/command")),
     {"tests/command": "#!/bin/sh\n"}, "rodtravel.1:0: --json is in the manual but not"),
    ("invented option in the README", lambda root: docs.check(root, os.path.join(root, "tests/command")),
     {"tests/command": FAKE_COMMAND, "README.md": "\n    rodtravel limits --all\n"}, "README.md:2: --all is no option"),
]


def plant(root, changes):
    for path, text in {**VALID, **changes}.items():
        if text is not None:
            os.makedirs(os.path.dirname(os.path.join(root, path)), exist_ok=True)
            with open(os.path.join(root, path), "w", encoding="utf-8") as file:
                file.write(text)
            os.chmod(os.path.join(root, path), 0o755)
    for name in (layers.LIST, words.LIST):
        os.makedirs(os.path.join(root, "tests/checks"), exist_ok=True)
        with open(os.path.join(root, name), "w", encoding="utf-8") as file:
            file.write(tree.read(os.path.join(os.path.dirname(__file__), "..", ".."), name))


def findings(check, changes):
    with tempfile.TemporaryDirectory() as root:
        plant(root, changes)
        return [f"{f.path}:{f.line}: {f.text}" for f in check(root)]


def libraries(compiler, text):
    """Checks a shared library and an object made of text against the valid header."""
    with tempfile.TemporaryDirectory() as root:
        plant(root, {"tests/lib.c": text})
        source, shared, static = (os.path.join(root, "tests", name) for name in ("lib.c", "lib.so", "lib.o"))
        subprocess.run([*compiler, "-fPIC", "-shared", "-o", shared, source], check=True)
        subprocess.run([*compiler, "-fPIC", "-c", "-o", static, source], check=True)
        return [f"{f.path}:{f.line}: {f.text}" for f in symbols.check(root, shared, static)]


GUARDED = '#include <stdio.h>\nint main(int n, char **v) { char t[9]; scanf("%8s", t); return sprintf(t, v[0], n); }\n'
HARD = ["-O2", "-g", "-fPIE", "-pie", "-fstack-protector-strong", "-fstack-clash-protection", "-D_FORTIFY_SOURCE=2",
        "-Wl,-z,relro,-z,now"]


def soft_trouble(compiler, soft):
    with tempfile.TemporaryDirectory() as root:
        plant(root, {"tests/one.c": GUARDED})
        source, program = (os.path.join(root, "tests", name) for name in ("one.c", "one"))
        subprocess.run([*compiler, "-w", *HARD, *soft, "-o", program, source], check=True)
        return [what for what, _, good in hardening.loaded(program) if not good]


def hardening_results(compiler):
    found = soft_trouble(compiler, [])
    yield "hardening: a hardened program passes", not found, found
    for soft, expected in [(["-no-pie"], "fixed address"), (["-Wl,-z,norelro"], "relro"), (["-Wl,-z,lazy"], "late"),
                           (["-Wl,-z,execstack"], "a stack that runs"), (["-fno-stack-protector"], "no stack protector"),
                           (["-U_FORTIFY_SOURCE"], "no sizes"), (["-fno-stack-clash-protection"], "over the guard")]:
        found = soft_trouble(compiler, soft)
        yield f"hardening: {soft[0]}", any(expected in line for line in found), found
    for protection, there in [("full", True), ("none", False)]:
        yield f"hardening: jumps of objects with {protection} protection", jumps_protected(compiler, protection) in (there, None), ""


def jumps_protected(compiler, protection):
    """None on a machine whose compiler has no such argument."""
    with tempfile.TemporaryDirectory() as root:
        plant(root, {"tests/one.c": GUARDED})
        source, made, library = (os.path.join(root, "tests", name) for name in ("one.c", "one.o", "one.a"))
        if subprocess.run([*compiler, "-w", f"-fcf-protection={protection}", "-c", "-o", made, source],
                          capture_output=True, check=False).returncode != 0:
            return None
        subprocess.run(["ar", "rcs", library, made], check=True)
        ((_, _, good),) = hardening.objects(library)
        return good


def header_trouble(compiler, text):
    return findings(lambda root: headers.check(root, "c", *compiler), {"include/rodtravel/status.h": text})


def finder_trouble(text):
    return findings(headers.check_finders, {"include/rodtravel/status.h": text})


DESCRIBED = SPDX + """/* Numbers. */
#ifndef STATUS_H
#define STATUS_H

/* A pair, as rodt_one has it. */
struct rodt_pair {
    int first; /* the one */
};

/* What there is. */
enum rodt_kind { RODT_KIND_ONE /* the one */ };

/*
 * Returns a number.
 *
 * number  how many
 */
RODT_API int rodt_one(int number);
#endif
"""


def reference_results():
    for name, old, new, expected in [
            ("reference: a described header passes", "", "", None),
            ("member without a meaning", " /* the one */\n};", "\n};", "status.h:0: rodt_pair.first is not documented"),
            ("enumerator without a meaning", " /* the one */ };", " };", "status.h:0: RODT_KIND_ONE is not documented"),
            ("struct without a meaning", "/* A pair, as rodt_one has it. */\n", "", "rodt_pair is not documented"),
            ("name that does not exist", "as rodt_one", "as rodt_two", "unable to resolve reference to 'rodt_two'"),
            ("argument that there is not", "int number)", "int count)", "argument 'number' of command @param is not found")]:
        text = DESCRIBED.replace(old, new, 1) if old else DESCRIBED
        found = findings(reference.check, {"include/rodtravel/status.h": text, "lib/docs/README.md": "# Start\n",
                                           "include/rodtravel/length.h": SPDX + "/* Lengths. */\n",
                                           "include/rodtravel/pressure.h": SPDX + "/* Pressures. */\n",
                                           "include/rodtravel/rodtravel.h": SPDX + "/* All. */\n"})
        yield name, not found if expected is None else any(expected in line for line in found), found


def results(compiler):
    """(name, whether it passed, what was found instead)"""
    yield "bill: what is cited passes", not findings(*billed()), findings(*billed())
    for check in (layers.check, words.check, lengths.check, calls.check, docs.check, ledger.check):
        found = findings(check, {})
        yield f"{check.__module__}: a valid tree passes", not found, found
    found = findings(survivors.check, SURVIVES)
    yield "survivors: an entry with its line passes", not found, found
    found = findings(*described(TABLED, SAYS))
    yield "describe: a described header passes", not found, found
    found = findings(*covered(((3, 2, 6), (5, 1, 6))))
    yield "conditions: a library that is proven passes", not found, found
    found = findings(*kept(ABI))
    yield "abi: the interface that is kept passes", not found, found
    for name, check, changes, expected in BROKEN:
        found = findings(check, changes)
        yield name, any(expected in line for line in found), found
    function = "int rodt_one(void); int rodt_one(void) { return 1; }\n"
    table = "const char *const names[] = {\"a\"};\n"
    for name, text, expected in [
            ("symbols: a valid library passes", "static " + table + function + "extern const char *const *rodti_n(void);\n"
             "__attribute__((visibility(\"hidden\"))) const char *const *rodti_n(void) { return names; }\n", None),
            ("missing symbol", "int a(void); static int one(void) { return 1; } "
             "__attribute__((visibility(\"hidden\"))) int a(void) { return one(); }\n", "rodt_one is declared but not exported"),
            ("stray symbol", function + "int helper(void); int helper(void) { return 1; }\n", "helper is exported but in no"),
            ("global state", function + "static int count; int *rodt_c(void); int *rodt_c(void) { return &count; }\n",
             "count can be changed"),
            ("global without a prefix", function + "__attribute__((visibility(\"hidden\"))) int text_error(void);\n"
             "int text_error(void) { return 1; }\n", "text_error is a global without the prefix")]:
        found = libraries(compiler, text)
        yield name, not found if expected is None else any(expected in line for line in found), found
    if shutil.which("doxygen"):
        yield from reference_results()
    yield "headers: a valid header passes", not header_trouble(compiler, "#ifndef A\n#define A\nstruct a { int b; };\n#endif\n"), ""
    row = "RODT_API const rodt_rules *rodt_rules_find(const char *id);\n"
    word = "RODT_API RODT_MUST_CHECK rodt_status rodt_side_find(const char *word, RODT_ENUM32(rodt_side) *out);\n"
    yield "headers: both ways to find pass", not finder_trouble(row + word), finder_trouble(row + word)
    for name, text in [("a bool", "RODT_API bool rodt_side_find(const char *word, RODT_ENUM32(rodt_side) *out);\n"),
                       ("an enumerator", "RODT_API rodt_side rodt_side_find(const char *word);\n"),
                       ("a size without _n", row.replace("id)", "id, size_t size)")),
                       ("_n without a size", word.replace("_find(", "_find_n("))]:
        yield "headers: finds by " + name, finder_trouble(text), "nothing"
    yield from hardening_results(compiler)
    yield "header without a guard", header_trouble(compiler, "struct a { int b; };\n"), "nothing"
    yield "header that needs another", header_trouble(compiler, "uint8_t a(void);\n"), "nothing"


def main(compiler):
    outcome = list(results(compiler))
    print(f"1..{len(outcome)}")
    for number, (name, passed, found) in enumerate(outcome, 1):
        print(f"{'ok' if passed else 'not ok'} {number} - {name}")
        if not passed:
            print("".join(f"# {line}\n" for line in ([found] if isinstance(found, str) else found or ["nothing was found"])), end="")
    return 0 if all(passed for _, passed, _ in outcome) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
