# SPDX-License-Identifier: Apache-2.0
"""What the library never calls: readers that round or depend on the locale, output, exits, the clock, files; and that
the walk-round speaks through its terminal alone."""
import re

import tree
from tree import Finding

ROUNDS = "rounds, or depends on the locale; the library has its own reader"
FORBIDDEN = {
    r"(strto(d|f|ld|l|ul|ll|ull|imax|umax)|ato(f|i|l|ll)|v?sscanf|scanf)": ROUNDS,
    r"(is(alnum|alpha|blank|cntrl|digit|graph|lower|print|punct|space|upper|xdigit)|to(lower|upper)|strn?casecmp)":
        "depends on the locale; use the tests in core/text.h",
    r"(setlocale|localeconv|uselocale|newlocale)": "touches the locale",
    r"(v?printf|v?fprintf|puts|fputs|putchar|fputc|putc|fwrite|perror|syslog|write)": "the library prints nothing",
    r"(exit|_exit|_Exit|abort|quick_exit|raise|signal|longjmp|assert_fail)": "the library never ends its caller",
    r"(fopen|freopen|open|fread|fgets|getline|getenv|secure_getenv)": "the library reads only what it is given",
    r"(time|clock|clock_gettime|localtime(_r)?|gmtime(_r)?|mktime|rand|random|srand)": "an answer depends on its input alone",
    r"(strcpy|strcat|sprintf|vsprintf|gets|strtok)": "writes without a bound, or keeps state",
    r"(mpq_set_str|mpz_set_str|mpq_inp_str|mpz_inp_str|mpq_get_d|mpz_get_d|mpq_set_d|mp_set_memory_functions)":
        "text and floating point never reach GNU MP, and its memory is the program's",
}
MEMORY = r"(malloc|calloc|realloc|aligned_alloc|strn?dup|alloca)"
# They make what a matching _free gives back: loaded rules, and the caches of columns of texts.
MAY_ALLOCATE = {"lib/rules/rules_load.c", *(f"lib/column/{name}.c" for name in ("plan", "cache", "row_cache", "text_map", "text_plan", "chamber_reader"))}
BINARY_FLOAT = r"\b(float|double|long double)\b"
PROGRAMS = re.compile(r"^lib/(tablec|catalogc)/")  # the compilers of tables and catalogues are programs: they read, print and exit


def rules_for(path):
    rules = {rf"(?<![\w.>]){name}\s*\(": text for name, text in FORBIDDEN.items() if not PROGRAMS.match(path) or text == ROUNDS}
    rules[BINARY_FLOAT] = "binary floating point cannot represent a reading"
    if path not in MAY_ALLOCATE and not PROGRAMS.match(path):
        rules[rf"(?<![\w.>]){MEMORY}\s*\("] = "memory is allocated only in the files of MAY_ALLOCATE"
    return rules


# A page shows the same walk-round in place of a terminal.
WALKROUND = "examples/cli/walkround"
SCREEN = {r"\bstdout\b|(?<![\w.>])(v?printf|puts|putchar)\s*\(": "all that is shown goes through walkround/terminal.c"}


def check(root):
    findings = []
    rules = [(path, rules_for(path)) for path in tree.files(root, "lib", (".c", ".h")) + tree.files(root, "include", ".h")]
    rules += [(path, SCREEN) for path in tree.files(root, WALKROUND, ".c") if not path.endswith("/terminal.c")]
    for path, patterns in rules:
        text = tree.code(tree.read(root, path))
        for pattern, sentence in patterns.items():
            findings += [Finding(path, tree.line_of(text, m.start()), f"{m.group().rstrip('( ')}: {sentence}")
                         for m in re.finditer(pattern, text)]
    return findings


if __name__ == "__main__":
    tree.main(check)
