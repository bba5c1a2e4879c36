# SPDX-License-Identifier: Apache-2.0
"""Writes manual pages of section 3 (mdoc) out of Doxygen's XML: one of each function, type and header."""
import os
import re
import time
import xml.etree.ElementTree as ElementTree

SYMBOL = re.compile(r"rodt_\w*[a-z0-9]")
HEADER = "rodtravel/rodtravel.h"


# --- Text ---

def escape(text):
    return text.replace("\\", "\\e").replace("\u2013", "-")


def quoted(text):
    """An argument of a macro."""
    return '"' + escape(text).replace('"', "\\(dq") + '"'


def inline(element):
    """The text of a paragraph without its lists; code is bold."""
    out = escape(element.text or "")
    for child in element:
        if child.tag in ("ref", "computeroutput", "bold", "emphasis", "ulink"):
            inner = inline(child)
            out += inner if "\\fB" in inner else f"\\fB{inner}\\fR"
        elif child.tag == "sp":
            out += " "
        elif child.tag not in ("parameterlist", "simplesect", "itemizedlist", "programlisting"):
            out += inline(child)
        out += escape(child.tail or "")
    return out


def sentences(text):
    """A line each, as mdoc wants them."""
    text = re.sub(r"\s+", " ", text).strip()
    lines = re.split(r"(?<=[^.][.!?])\s+(?=[A-Z\"(\\])", text) if text else []
    return ["\\&" + line if line[0] in ".'" else line for line in lines]


def literal(lines):
    return [".Bd -literal -offset indent", *(("\\&" if line[:1] in (".", "'") else "") + line for line in lines), ".Ed"]


def listing(element):
    lines = ["".join(inline(part) for part in line) for line in element.iter("codeline")]
    return literal(re.sub(r"\\f[BR]", "", line).rstrip() for line in lines)


def arguments(element):
    for item in element:
        names = " , ".join("Fa " + name.text for name in item.iter("parametername"))
        yield f".It {names}"
        yield from sentences(" ".join(inline(para) for para in item.find("parameterdescription")))


def paragraph(element):
    yield from sentences(inline(element))
    for child in element:
        if child.tag == "programlisting":
            yield from listing(child)
        elif child.tag == "itemizedlist":
            yield ".Bl -bullet"
            for item in child:
                yield ".It"
                yield from sentences(" ".join(inline(para) for para in item))
            yield ".El"
        elif child.tag == "parameterlist" and child.get("kind") == "param":
            yield ".Bl -tag -width Ds"
            yield from arguments(child)
            yield ".El"


def described(element, separator=".Pp"):
    """The brief and the detailed description, statuses left out."""
    parts = []
    for description in ("briefdescription", "detaileddescription"):
        parts += [list(paragraph(para)) for para in element.find(description).findall("para")]
    out = []
    for lines in filter(None, parts):
        needed = out and separator and not out[-1].startswith((".El", ".Ed")) and not lines[0].startswith((".Bl", ".Bd"))
        out += ([separator] if needed or out and out[-1].startswith((".El", ".Ed")) and not lines[0].startswith(".") else []) + lines
    return out


def statuses(element):
    found = [item for part in element.iter("parameterlist") if part.get("kind") == "retval" for item in part]
    if found:
        yield from (".Sh RETURN VALUES", ".Bl -tag -width RODT_E_ARGUMENT")
        for item in found:
            yield ".It Dv " + plain(item.find(".//parametername"))
            yield from sentences(" ".join(inline(para) for para in item.find("parameterdescription")))
        yield ".El"


def plain(element):
    return re.sub(r"\s+", " ", "".join(element.itertext())).strip() if element is not None else ""


def summary(element):
    text = plain(element.find("briefdescription")) or "see below"
    return text.removesuffix(".")


# --- Pages ---

class Page:
    def __init__(self, name, element, synopsis, body, header):
        self.name, self.element, self.synopsis, self.body, self.header = name, element, synopsis, body, header

    def lines(self, stamp, version, known):
        yield from (f".Dd {stamp}", f".Dt {self.name.upper()} 3", f".Os rodtravel {version}", ".Sh NAME",
                    f".Nm {self.name}", f".Nd {quoted(summary(self.element))}", ".Sh SYNOPSIS", f".In {HEADER}", *self.synopsis,
                    ".Sh DESCRIPTION", *self.body, *statuses(self.element), ".Sh SEE ALSO")
        named = set(SYMBOL.findall(" ".join(self.element.itertext()))) & known | {self.header, "rodtravel"}
        others = sorted(named - {self.name, None})
        yield from (f".Xr {name} 3{' ,' if i + 1 < len(others) else ''}" for i, name in enumerate(others))


def declaration(member):
    """A member of a struct as C has it."""
    return f"{plain(member.find('type'))} {member.findtext('name')}{plain(member.find('argsstring'))};".replace("* ", "*")


def function_page(member, header):
    synopsis = [f".Ft {quoted(plain(member.find('type')).replace('static ', '').replace('inline ', ''))}", f".Fo {member.findtext('name')}"]
    for argument in member.findall("param"):
        words = plain(argument.find("type")) + " " + (argument.findtext("declname") or "") + (argument.findtext("array") or "")
        synopsis.append(f".Fa {quoted(words.replace('* ', '*').strip())}")
    return Page(member.findtext("name"), member, [*synopsis, ".Fc"], described(member), header)


def entries(members, macro, text):
    yield ".Bl -tag -width Ds"
    for member in members:
        yield f".It {macro} {quoted(text(member))}"
        yield from described(member, None)
    yield ".El"


def enumerator(value):
    return f"{value.findtext('name')} {plain(value.find('initializer'))}".strip()


def enum_page(member, header):
    name = member.findtext("name")
    values = member.findall("enumvalue")
    synopsis = [".Bd -literal", f"typedef enum {name} {{", *(f"    {enumerator(value)}," for value in values), f"}} {name};", ".Ed"]
    return Page(name, member, synopsis, [*described(member), *entries(values, "Dv", enumerator)], header)


def struct_page(compound, header):
    name = compound.findtext("compoundname")
    members = compound.findall("sectiondef/memberdef")
    lines = [declaration(member) for member in members]
    synopsis = [".Bd -literal", f"typedef struct {name} {{", *("    " + escape(line) for line in lines), f"}} {name};", ".Ed"]
    body = [*described(compound), *entries(members, "Fa", lambda member: member.findtext("name"))]
    return Page(name, compound, synopsis, body, header)


def type_page(member, header):
    synopsis = [".Bd -literal", escape(plain(member.find("definition")) + ";"), ".Ed"]
    return Page(member.findtext("name"), member, synopsis, described(member), header)


def name_of(header):
    stem = header.findtext("compoundname").removesuffix(".h")
    return stem if stem == "rodtravel" else "rodtravel_" + stem


def macro_text(member):
    given = ", ".join(name.text for name in member.iter("defname"))
    return member.findtext("name") + (f"({given})" if given else "")


def header_page(header, pages):
    """What a header declares: macros in full, the rest by a line."""
    members = header.findall("sectiondef/memberdef")
    macros = [member for member in members if member.get("kind") == "define"]
    constants = [member for member in members if member.get("kind") == "enum" and not member.findtext("name")]
    body = described(header)
    if macros:
        body += [".Ss Macros", *entries(macros, "Dv", macro_text)]
    for member in constants:
        body += [".Ss Constants", *described(member), *entries(member.findall("enumvalue"), "Dv", enumerator)]
    if pages:
        body += [".Ss Functions and types", ".Bl -tag -width Ds"]
        for page in pages:
            body += [f".It Xr {page.name} 3", *sentences(escape(summary(page.element)))]
        body.append(".El")
    return Page(name_of(header), header, [], body, None)


def umbrella_page(header, headers):
    body = [*described(header), ".Ss Headers", ".Bl -tag -width Ds"]
    for other in headers:
        if other is not header:
            body += [f".It Xr {name_of(other)} 3", *sentences(escape(summary(other)))]
    return Page("rodtravel", header, [], [*body, ".El"], None)


def pages_of(header, xml):
    name = name_of(header)
    for inner in header.findall("innerclass"):
        if inner.text.startswith("rodt_"):
            yield struct_page(ElementTree.parse(xml / f"{inner.get('refid')}.xml").find("compounddef"), name)
    makers = {"function": function_page, "enum": enum_page, "typedef": type_page}
    for member in header.findall("sectiondef/memberdef"):
        if member.get("kind") in makers and member.findtext("name"):
            yield makers[member.get("kind")](member, name)


def stamp_of(seconds):
    day = time.gmtime(seconds)
    return time.strftime("%B ", day) + f"{day.tm_mday}, {day.tm_year}"


def write(xml, version, seconds, folder):
    """All pages into a new folder; `seconds` since 1970 is the date that they bear."""
    headers = [ElementTree.parse(path).find("compounddef") for path in sorted(xml.glob("*_8h.xml"))]
    pages = []
    for header in headers:
        own = list(pages_of(header, xml))
        umbrella = header.findtext("compoundname") == "rodtravel.h"
        pages += [*own, umbrella_page(header, headers) if umbrella else header_page(header, own)]
    known = {page.name for page in pages}
    folder.mkdir()
    folder.chmod(0o755)  # it is installed as it is, whatever umask it was built under
    stamp = stamp_of(int(os.environ.get("SOURCE_DATE_EPOCH", seconds)))
    for page in pages:
        (folder / f"{page.name}.3").write_text("\n".join(page.lines(stamp, version, known)) + "\n", "utf-8")
