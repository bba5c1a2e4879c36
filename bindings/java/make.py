# SPDX-License-Identifier: Apache-2.0
"""Makes the package for Java; the same tree gives the same bytes.

    make.py sources OUT WORDS HEADERS FILE... -- SWIG ARGUMENT...    a zip file of all classes, those of SWIG among them
    make.py jar OUT JAVAC SOURCES VERSION NATIVE PLACE
    make.py docs OUT JAVADOC SOURCES             the reference, as a zip file

WORDS is the program of bindings/words.c; bindings/described.py says what is made of it."""
import html
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from described import NUMBERS, TEXTS, WHOLE, class_name, classes, wrapped, write_zip  # noqa: E402

# Both tools end before the second compiler of Java pays.
SHORT = "-J-XX:TieredStopAtLevel=1"


def method(name):
    first, *rest = name.split("_")
    return first + "".join(part.capitalize() for part in rest)


def documented(name, text):
    text = re.sub(r"`([^`]*)`", r"{@code \1}", f"{{@code {name}}}{text}")
    return wrapped(text if text.endswith(".") else text + ".", "/**", " *", " */")


def setter(owner, name):
    return f"    public {owner} {method(name)}(Object value) {{\n        return set(\"{name}\", value);\n    }}\n"


def answer(kind, path, of):
    """Type and expression of a member."""
    if kind in NUMBERS:
        return "Optional<Ratio>", f'exact("{path}")'
    if kind in WHOLE:
        return "long", f'Long.parseLong(get("{path}"))'
    if kind == "date":
        return "Optional<LocalDate>", f'day("{path}")'
    if kind == "boolean":
        return "boolean", f'Boolean.parseBoolean(get("{path}"))'
    if kind == "enumerator":
        return class_name(of), f'{class_name(of)}.of(get("{path}"))'
    if kind == "set":
        return f"List<{class_name(of)}>", f'words("{path}", {class_name(of)}::of)'
    if kind in TEXTS or of == "rodt_chamber":
        return "String", f'get("{path}")'
    return None, None


def getter(name, kind, of, path):
    typed, expression = answer(kind, path, of)
    return typed and f"    public {typed} {method(name)}() {{\n        return {expression};\n    }}\n"


def enumeration(name, rows):
    own = class_name(name)
    quoted = ((symbol, word, text.replace('"', '\\"')) for symbol, _, word, text in rows)
    each = ",\n".join(f'    /** {html.escape(text, quote=False).capitalize()}. */\n'
                      f'    {symbol}("{word}", "{text}")' for symbol, word, text in quoted)
    return f"""// SPDX-License-Identifier: Apache-2.0
package rodtravel;

/** The words of {{@code {name}}}. */
public enum {own} implements Word {{
{each};

    private final String word;
    private final String text;

    {own}(String word, String text) {{
        this.word = word;
        this.text = text;
    }}

    /** The constant of a word, "{rows[0][2]}"; one that is none is refused. */
    public static {own} of(String word) {{
        for ({own} each : values())
            if (each.word.equals(word))
                return each;
        throw Texts.refusal("{name[5:]}", "there is no such word");
    }}

    @Override
    public String word() {{
        return word;
    }}

    @Override
    public String text() {{
        return text;
    }}

    @Override
    public String toString() {{
        return word;
    }}
}}
"""


def sources(out, program, headers, *given):
    texts = classes(program, headers, given, sys.modules[__name__])
    write_zip(out, {f"rodtravel/{name}.java": text.encode() for name, text in texts.items()})


def tree(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def unpacked(packed, folder):
    with zipfile.ZipFile(packed) as files:
        files.extractall(folder)
    return [str(path) for path in sorted(pathlib.Path(folder).rglob("*.java"))]


def jar(out, javac, packed, version, native, place):
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryDirectory() as made:
        subprocess.run([javac, SHORT, "--release", "11", "-Xlint:all", "-Werror", "-encoding", "UTF-8", "-d", made,
                        *unpacked(packed, folder)], check=True)
        files = tree(pathlib.Path(made))
    files[f"rodtravel/native/{place}/{pathlib.Path(native).name}"] = pathlib.Path(native).read_bytes()
    manifest = ("Manifest-Version: 1.0", "Automatic-Module-Name: rodtravel", "Implementation-Title: rodtravel",
                f"Implementation-Version: {version}", "")
    first = "META-INF/MANIFEST.MF"
    write_zip(out, {first: "".join(line + "\r\n" for line in manifest).encode(), **files}, first)


def docs(out, javadoc, packed):
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryDirectory() as made:
        subprocess.run([javadoc, SHORT, "-quiet", "-Xdoclint:all,-missing", "-Werror", "-encoding", "UTF-8",
                        "-notimestamp", "-d", made, *unpacked(packed, folder)], check=True)
        write_zip(out, tree(pathlib.Path(made)))


if __name__ == "__main__":
    {"sources": sources, "jar": jar, "docs": docs}[sys.argv[1]](*sys.argv[2:])
