# SPDX-License-Identifier: Apache-2.0
"""Writes the declarations of the public headers in Rust: write_sys.py HEADER... > sys.rs

Structs, constants that are whole numbers, and functions, under their names in C. An enumerator is a u32. The crate's own
test compares each struct with the library's description of it."""
import pathlib
import re
import sys

SIMPLE = {"void": "c_void", "char": "c_char", "bool": "bool", "int": "c_int", "unsigned": "c_uint", "size_t": "usize",
          "int8_t": "i8", "int16_t": "i16", "int32_t": "i32", "int64_t": "i64", "uint8_t": "u8", "uint16_t": "u16",
          "uint32_t": "u32", "uint64_t": "u64"}
WORDS = {"type": "type_", "in": "in_", "of": "of", "ref": "ref_", "where": "where_"}
HEAD = """// SPDX-License-Identifier: Apache-2.0
// Made by write_sys.py from the public headers.
#![allow(non_camel_case_types, dead_code, missing_docs, clippy::all)]
use std::os::raw::{c_char, c_int, c_uint, c_void};

#[cfg(test)]
macro_rules! place {
    ($record:ident, $member:ident) => {{
        let made = std::mem::MaybeUninit::<$record>::uninit();
        let start = made.as_ptr();
        unsafe { std::ptr::addr_of!((*start).$member) as usize - start as usize }
    }};
}
"""


def plain(text):
    """Without comments, blanks at the ends of lines, and what holds for one language or compiler only."""
    text = re.sub(r"/\*.*?\*/", " ", text, flags=re.S)
    text = re.sub(r"\\\n", " ", text)
    return re.sub(r"RODT_ENUM32\((\w+)\)", r"\1", text)


class Headers:
    def __init__(self, texts):
        text = "\n".join(map(plain, texts))
        self.constants = dict(re.findall(r"^#define (RODT_\w+) \(?(-?\d+)u?\)?\s*$", text, re.M))
        self.texts = dict(re.findall(r'^#define (RODT_\w+) ("\S+")\s*$', text, re.M))
        text = re.sub(r"^[ \t]*#.*$", "", text, flags=re.M)
        self.enums = set(re.findall(r"typedef enum (\w+)", text))
        self.opaque = sorted(set(re.findall(r"typedef struct (\w+) \1;", text)))
        self.structs = re.findall(r"typedef struct (\w+) \{(.*?)\} \1;", text, re.S)
        text = re.sub(r"typedef (enum|struct) \w+[^{;]*\{.*?\}[^;]*;", "", text, flags=re.S)
        self.functions = re.findall(r"RODT_(?:API|INLINE)\s+(?:RODT_MUST_CHECK\s+)?([\w\s*]+?)(\w+)\(([^)]*)\)", text)

    def type_of(self, text):
        """A type of C in Rust: pointers from the inside to the outside."""
        base, *stars = re.split(r"(?=\*)", text.strip())
        of_const = "const" in base.split()
        name = re.sub(r"\b(const|struct)\b", "", base).strip()
        known = name in self.opaque or name in dict(self.structs)
        made = SIMPLE.get(name) or ("u32" if name in self.enums else name if known else "c_void")  # else a function, Arrow
        for star in stars:
            made = f"*{'const' if of_const else 'mut'} {made}"
            of_const = "const" in star
        return made

    def declared(self, text, is_argument=False):
        """(name, type) of `type name` or `type name[COUNT]`, which as an argument is a pointer."""
        whole, name, count = re.fullmatch(r"\s*(.*?[\s*])(\w+)\s*(?:\[(\w+)\])?\s*", text, re.S).groups()
        made = self.type_of(re.sub(r"\s+", " ", whole))
        if count and is_argument:
            made = f"*{'const' if 'const' in whole.split() else 'mut'} {made}"
        elif count:
            made = f"[{made}; {self.constants.get(count, count)}]"
        return WORDS.get(name, name), made

    def rust(self):
        yield HEAD
        yield from (f"pub const {name}: i64 = {number};" for name, number in sorted(self.constants.items()))
        yield from (f"pub const {name}: &str = {text[:-1]}\\0\";" for name, text in sorted(self.texts.items()))
        for name in self.opaque:
            yield f"\n#[repr(C)]\npub struct {name} {{\n    _private: [u8; 0],\n}}"
        for name, body in self.structs:
            yield f"\n#[repr(C)]\n#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]\npub struct {name} {{"
            yield from (f"    pub {each}: {kind}," for each, kind in map(self.declared, filter(str.strip, body.split(";"))))
            yield "}"
        yield "\nextern \"C\" {"
        for result, name, given in self.functions:
            arguments = [] if given.strip() in ("", "void") else [self.declared(each, True) for each in given.split(",")]
            back = "" if result.strip() == "void" else f" -> {self.type_of(result)}"
            yield f"    pub fn {name}({', '.join(f'{each}: {kind}' for each, kind in arguments)}){back};"
        yield "}"
        yield from self.layouts()

    def layouts(self):
        """Of each struct its size, and the place of each member, for the test."""
        yield "\n#[cfg(test)]\npub fn layouts() -> Vec<(&'static str, usize, Vec<(&'static str, usize)>)> {\n    vec!["
        for name, body in self.structs:
            members = [self.declared(each)[0] for each in body.split(";") if each.strip()]
            places = ", ".join(f"(\"{each.rstrip('_')}\", place!({name}, {each}))" for each in members)
            yield f"        (\"{name}\", std::mem::size_of::<{name}>(), vec![{places}]),"
        yield "    ]\n}"


if __name__ == "__main__":
    print(*Headers([pathlib.Path(path).read_text(encoding="utf-8") for path in sys.argv[1:]]).rust(), sep="\n")
