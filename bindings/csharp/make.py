# SPDX-License-Identifier: Apache-2.0
"""Makes the package for C#; the same tree gives the same bytes.

    make.py dll OUT MCS WORDS HEADERS FILE... -- SWIG ARGUMENT...    the assembly of all classes, those of SWIG among
                                                                     them, with its documentation beside it
    make.py package OUT DLL VERSION NATIVE PLACE README              a package in the layout of NuGet

WORDS is the program of bindings/words.c; bindings/described.py says what is made of it."""
import html
import pathlib
import re
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from described import NUMBERS, TEXTS, WHOLE, class_name, classes, wrapped, write_zip  # noqa: E402

NUSPEC = """<?xml version="1.0" encoding="utf-8"?>
<package xmlns="http://schemas.microsoft.com/packaging/2013/05/nuspec.xsd">
  <metadata>
    <id>rodtravel</id>
    <version>{version}</version>
    <authors>rodtravel</authors>
    <description>Judges the pushrod stroke of air brakes: from a tape reading to a verdict, exactly.</description>
    <license type="expression">Apache-2.0</license>
    <readme>README.md</readme>
  </metadata>
</package>
"""
TYPES = """<?xml version="1.0" encoding="utf-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
  <Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
  <Default Extension="nuspec" ContentType="application/octet"/>
  <Default Extension="dll" ContentType="application/octet"/>
  <Default Extension="xml" ContentType="application/octet"/>
  <Default Extension="md" ContentType="application/octet"/>
  <Default Extension="{suffix}" ContentType="application/octet"/>
</Types>
"""
RELATIONS = """<?xml version="1.0" encoding="utf-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
  <Relationship Type="http://schemas.microsoft.com/packaging/2010/07/manifest" Target="/rodtravel.nuspec" Id="R1"/>
</Relationships>
"""


def method(name):
    return "".join(part.capitalize() for part in name.split("_"))


def documented(name, text):
    text = re.sub(r"`([^`]*)`", r"<c>\1</c>", f"<c>{name}</c>{text}")
    return wrapped(text if text.endswith(".") else text + ".", "    /// <summary>", "    ///", "</summary>")


def setter(owner, name):
    at = f'this["{name}"]'
    return f"        public object {method(name)} {{ get {{ return {at}; }} set {{ {at} = value; }} }}\n"


def answer(kind, path, of):
    """Type and expression of a member."""
    if kind in NUMBERS:
        return "Ratio?", f'Exact("{path}")'
    if kind in WHOLE:
        return "long", f'WholeAt("{path}")'
    if kind == "date":
        return "System.DateTime?", f'DayAt("{path}")'
    if kind == "boolean":
        return "bool", f'Get("{path}") == "true"'
    if kind == "enumerator":
        return class_name(of), f'WordAt<{class_name(of)}>("{path}")'
    if kind == "set":
        return f"System.Collections.Generic.IReadOnlyList<{class_name(of)}>", f'SetAt<{class_name(of)}>("{path}")'
    if kind in TEXTS or of == "rodt_chamber":
        return "string", f'Get("{path}")'
    return None, None


def getter(name, kind, of, path):
    typed, expression = answer(kind, path, of)
    return typed and f"        public {typed} {method(name)} {{ get {{ return {expression}; }} }}\n"


def enumeration(name, rows):
    each = ",\n\n".join(f"        /// <summary>{html.escape(text, quote=False).capitalize()}.</summary>\n"
                        f"        [Word({quoted(word)}, {quoted(text)})]\n"
                        f"        {method(symbol.lower())} = {number}" for symbol, number, word, text in rows)
    return (f"// SPDX-License-Identifier: Apache-2.0\nnamespace Rodtravel\n{{\n"
            f"    /// <summary>The words of <c>{name}</c>.</summary>\n"
            f"    public enum {class_name(name)}\n    {{\n{each}\n"
            "    }\n}\n")


def quoted(text):
    return '"' + text.replace('"', '\\"') + '"'


def dll(out, mcs, program, headers, *given):
    texts = classes(program, headers, given, sys.modules[__name__])
    with tempfile.TemporaryDirectory() as folder:
        for name, text in texts.items():
            pathlib.Path(folder, f"{name}.cs").write_text(text, encoding="utf-8")
        subprocess.run([mcs, "-target:library", "-optimize+", "-warnaserror+", "-codepage:utf8", "-r:System.Numerics",
                        "-r:System.Core", f"-out:{out}", f"-doc:{pathlib.Path(out).with_suffix('.xml')}",
                        *sorted(map(str, pathlib.Path(folder).glob("*.cs")))], check=True)


def package(out, assembly, version, native, place, readme):
    assembly, native = pathlib.Path(assembly), pathlib.Path(native)
    write_zip(out, {
        "rodtravel.nuspec": NUSPEC.format(version=version).encode(),
        "[Content_Types].xml": TYPES.format(suffix=native.suffix[1:]).encode(),
        "_rels/.rels": RELATIONS.encode(),
        "README.md": pathlib.Path(readme).read_bytes(),
        f"lib/net45/{assembly.name}": assembly.read_bytes(),
        f"lib/net45/{assembly.with_suffix('.xml').name}": assembly.with_suffix(".xml").read_bytes(),
        f"runtimes/{place}/native/{native.name}": native.read_bytes()})


if __name__ == "__main__":
    {"dll": dll, "package": package}[sys.argv[1]](*sys.argv[2:])
