# SPDX-License-Identifier: Apache-2.0
"""Writes the words of the enumerations as constants of a language: write_words.py LANGUAGE WORDS > FILE

LANGUAGE is go or rust, WORDS the program of words.c. A constant is a type's name and the word: VerdictInAdjustment in
Go, Verdict::InAdjustment in Rust.
"""
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent / "python"))
sys.dont_write_bytecode = True
from write_enums import enumerations  # noqa: E402

# What the description, the catalogues and the headings of files are made of; and what only C has.
INNER = {"argument_kind", "count_part", "field", "json_option", "member_kind", "message_code", "plural_rule", "rounding",
         "step", "step_part", "text_layout", "air_kind", "air_measure", "comparison"}
CAPITALS = {"ok": "OK", "psi": "PSI", "kpa": "KPA", "mm": "MM", "cm": "CM", "dd": "DD"}


def camel(name, capitals=()):
    parts = name.replace("_", "-").split("-")
    return "".join(CAPITALS[part] if part in capitals else part.capitalize() for part in parts)


def public(program):
    """(name, rows) of the enumerations that a binding has; a row is symbol, number, word, text."""
    for name, rows in sorted(enumerations(program).items()):
        if name.removeprefix("rodt_") not in INNER:
            yield name.removeprefix("rodt_"), rows



def go(program):
    yield "// SPDX-License-Identifier: Apache-2.0\n// Made by bindings/write_words.py.\n\npackage rodtravel"
    for name, rows in public(program):
        kind = camel(name)
        yield f"\n// {kind} is a stable word of rodt_{name}.\ntype {kind} string\n\nconst ("
        for _, _, word, text in rows:
            yield (f"\t// {text}\n" if text else "") + f"\t{kind}{camel(word, CAPITALS)} {kind} = \"{word}\""
        yield ")"


def rust(program):
    yield "// SPDX-License-Identifier: Apache-2.0\n// Made by bindings/write_words.py."
    for name, rows in public(program):
        yield f"\nwords! {{\n    /// Words of `rodt_{name}`.\n    {camel(name)}, \"rodt_{name}\", {{"
        for _, number, word, text in rows:
            yield f"        /// `{word}`" + (f": {text.replace('[', '(').replace(']', ')')}." if text else ".")
            yield f"        {camel(word)} = {number},"
        yield "    }\n}"


if __name__ == "__main__":
    print(*{"go": go, "rust": rust}[sys.argv[1]](sys.argv[2]), sep="\n")
