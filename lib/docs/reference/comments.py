# SPDX-License-Identifier: Apache-2.0
"""Gives the plain comments of a public header the marks of Doxygen.

A comment on a line of its own belongs to the declaration below it, and to those that follow without a blank line; a
comment after code belongs to that code. In a comment, lines of a name, two blanks and a text are arguments or statuses.
"""
import re

COMMENT = re.compile(r"/\*.*?\*/", re.S)
LEADING = re.compile(r"([ \t]*)/\*(?:(?!\*/).)*\*/[ \t]*$", re.S)
ENTRY = re.compile(r"(\w+(?:, \w+)*)  +(\S.*)")
# Names of the library, but for those that only a compiler's command line has.
NAME = re.compile(r"\b(?!RODT_(?:STATIC|BUILDING)\b)(rodt_\w*[a-z0-9]|RODT_\w*[A-Z0-9])\b")
SENTENCE = re.compile(r"(.*?[^.]\.)\s+(?=[A-Z\"`])", re.S)
OWN = re.compile(r"#define [^\n]*/\*")  # a macro with a comment of its own
DEFINED = re.compile(r"\s*#\s*define\s+(\w+)")


def escape(text):
    return re.sub(r"[\\@<>&#%*|$\"]", r"\\\g<0>", text)


def linked(text):
    """Names become links; one that does not exist is then a warning of Doxygen."""
    pieces = NAME.split(text)
    return "".join(f'@ref {piece} "{piece}"' if i % 2 else escape(piece) for i, piece in enumerate(pieces))


def prose(text):
    """`quoted` words, and the *name of a result, are code."""
    pieces = re.split(r"`([^`]+)`|(?<![\w*])(\*\w+)", text)
    return "".join(linked(piece or "") if i % 3 == 0 else piece and f"<code>{escape(piece)}</code>" or ""
                   for i, piece in enumerate(pieces))


def content(comment):
    """The lines of a comment without its marks, as paragraphs."""
    inside = comment.strip()[2:-2]
    lines = [re.sub(r"^\s*\*( |$)", "", line) if i else line.strip() for i, line in enumerate(inside.split("\n"))]
    hanging = not any(re.match(r"\s*\*( |$)", line) for line in inside.split("\n")[1:])
    lines = [line.strip() if hanging else line.rstrip() for line in lines]
    return [part.strip("\n").split("\n") for part in re.split(r"\n{2,}", "\n".join(lines).strip("\n")) if part.strip()]


def entries(lines):
    """(names, text) of each entry of a list of arguments or statuses, and the lines after it; None if it is no list."""
    found = []
    for i, line in enumerate(lines):
        entry = ENTRY.fullmatch(line)
        if entry:
            found.append([entry[1].split(", "), entry[2]])
        elif found and line.startswith("  "):
            found[-1][1] += " " + line.strip()
        else:
            return (found, lines[i:]) if found else None
    return found, []


def listed(found, arguments):
    for names, text in found:
        if all(name.startswith("RODT_") for name in names):
            yield from (f"@retval {name} {prose(text)}" for name in names)
        elif arguments:  # Doxygen warns of one that the function does not have
            yield f"@param {','.join(names)} {prose(text)}"
        else:
            yield f"- <code>{', '.join(names)}</code>: {prose(text)}"


def paragraph(lines, arguments):
    if all(line.startswith("    ") for line in lines):
        return ["@code{.c}", *(line[4:] for line in lines), "@endcode"]
    found = entries(lines)
    if found is None:
        text = [line.strip() for line in lines]
        return [prose("\n".join(text))]
    rest = paragraph(found[1], arguments) if found[1] else []
    return [*listed(found[0], arguments), "", *rest]


def brief(lines):
    """The first sentence of a comment, apart."""
    text = "\n".join(line.strip() for line in lines)
    first = SENTENCE.match(text)
    return (first[1], text[first.end():].split("\n")) if first else (text, [])


def converted(comment, arguments=(), head="", is_new=True):
    first, *others = content(comment)
    parts = [head] if head else []
    if is_new and entries(first) is None:
        sentence, rest = brief(first)
        parts.append("@brief " + prose(sentence).replace("\n", " "))
        first = rest
    for lines in [first, *others]:
        if lines:
            parts += ["", *paragraph(lines, arguments)]
    return "/** " + "\n".join(parts) + " */"


def arguments_of(code):
    """Names of the arguments of the function that a piece of code begins with."""
    declared = re.match(r"[^;{}#]*?\b\w+\(([^;{}]*)\)\s*[;{]", code)
    return re.findall(r"(\w+)\s*(?:\[[^\]]*\])?\s*(?:,|$)", declared[1]) if declared else []


def split_lines(text):
    """(comment or None, code) by turns: a line that begins with a comment, and what comes before the next such line."""
    last = 0
    for match in re.finditer(r"^[ \t]*/\*.*?\*/[ \t]*\n", text, re.M | re.S):
        yield None, text[last:match.start()]
        yield match.group().rstrip("\n"), None
        last = match.end()
    yield None, text[last:]


def trailing(code):
    """Comments after code."""
    def marked(match):
        line = code[code.rfind("\n", 0, match.start()) + 1:match.start()]
        if not line.strip() or re.match(r"\s*#\s*(if|else|endif)", line):
            return match.group()
        text = " ".join(line for lines in content(match.group()) for line in lines)
        return f"/**< {prose(text)} */"
    return COMMENT.sub(marked, code)


def repeated(comment, code):
    """The comment once more before each declaration that follows without a blank line."""
    block = re.match(r"(?:[^\n]*\S[^\n]*\n)*", code)[0]
    pieces = re.split(r"^(?=RODT_API\b|#define\b)", block, flags=re.M)
    first = pieces.index(next(filter(str.strip, pieces), pieces[0]))
    out = [("" if OWN.match(piece) else converted(comment, arguments_of(piece)) + "\n") + trailing(piece)
           for piece in pieces]
    out[:first + 1] = [trailing(piece) for piece in pieces[:first + 1]]
    return "".join(out) + trailing(code[len(block):])


def documented(comment, code):
    """A comment and the code below it."""
    line = code.split("\n", 1)[0]
    if not line.strip():  # a heading, or more about the header as a whole
        return (comment if "/* ---" in comment else converted(comment, head="@file", is_new=False)) + "\n" + trailing(code)
    if re.match(r"\s*#\s*if", line):  # macros with a definition for each machine
        names = dict.fromkeys(DEFINED.findall(code.split("\n\n", 1)[0]))
        return "".join(converted(comment, head=f"@def {name}") + "\n" for name in names) + trailing(code)
    if re.match(r"\s+RODT_\w+[^/\n]*/\*", line):  # the heading of a group of enumerators, which have their own
        return comment + "\n" + trailing(code)
    return converted(comment, arguments_of(code)) + "\n" + repeated(comment, code)


def marked(text):
    licence, rest = text.split("\n", 1)
    pieces = list(split_lines(rest))
    out, waiting, head = [licence + "\n"], None, True
    for comment, code in pieces:
        if comment is not None and head:
            out.append(converted(comment, head="@file") + "\n")
            head = False
        elif comment is not None:
            if waiting:
                out.append(waiting + "\n")
            waiting = comment
        elif waiting:
            out.append(documented(waiting, code))
            waiting = None
        else:
            out.append(trailing(code))
    return "".join(out)

