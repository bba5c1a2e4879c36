# SPDX-License-Identifier: Apache-2.0
"""Where a C file can be broken, read from clang's syntax tree: each place knows its text, and how it is written with its
changes in it, to be chosen by a number when the program runs."""
import json
import re
import subprocess

NEIGHBOUR = {"<": "<=", "<=": "<", ">": ">=", ">=": ">"}
OPPOSITE = {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="}
OTHER = {"+": "-", "-": "+", "*": "/", "/": "*", "%": "*", "&": "|", "|": "&", "^": "&", "<<": ">>", ">>": "<<"}
LOGIC = {"&&": "||", "||": "&&"}
# What is inside has to be a constant, or is no code of the file.
CONSTANT = {"ConstantExpr", "UnaryExprOrTypeTraitExpr", "OffsetOfExpr", "StaticAssertDecl", "EnumDecl", "RecordDecl",
            "GenericSelectionExpr", "BuiltinTypesCompatibleExpr"}
CONDITION = {"IfStmt": 0, "WhileStmt": 0, "DoStmt": 1, "ForStmt": 2, "ConditionalOperator": 0}
BODIES = {"IfStmt": (1, 2), "WhileStmt": (1,), "DoStmt": (0,), "ForStmt": (4,), "CaseStmt": (1,), "DefaultStmt": (0,),
          "LabelStmt": (0,)}
SHOWN = 100
AROUND = 40  # of an operand, so that the sign between them is always seen


class Place:
    """One expression or statement: offsets, the offset that names its line, its parts, its changes as words, the text
    of each when it is made alone, and write(chosen, parts): C text, where chosen[i] is a call that tells whether change
    i is wanted."""

    def __init__(self, span, at, parts, changes, alone, write):
        self.begin, self.end = span
        self.at, self.parts, self.changes, self.alone, self.write = at, parts, changes, alone, write
        self.function = None
        self.constant = False
        self.inner = []


def tree_of(command, path):
    """The syntax tree of a file, and its text; offsets count bytes, so a byte is a character here."""
    run = subprocess.run([*command, "-fsyntax-only", "-Xclang", "-ast-dump=json", path], capture_output=True, check=True)
    with open(path, encoding="latin-1", newline="") as file:
        return json.loads(run.stdout), file.read()


def short(text):
    text = re.sub(r"\s+", " ", text.strip())
    return text if len(text) <= SHOWN else text[:SHOWN - 20] + " ... " + text[-15:]


class Reader:
    def __init__(self, command, path):
        self.path, self.file = path, None
        tree, self.text = tree_of(command, path)
        self.places, self.function, self.constant = [], None, False
        self.locate(tree)
        for node in tree["inner"]:
            self.top(node)

    # Locations: a file is named only where it changes, so every node is visited in the order of the text.

    def bare(self, loc):
        self.file = loc.get("file", self.file)
        return self.file, loc.get("offset"), loc.get("tokLen", 0)

    def one(self, loc):
        if "expansionLoc" not in loc:
            return (*self.bare(loc), False)
        spelled, expanded = self.bare(loc["spellingLoc"]), self.bare(loc["expansionLoc"])
        # What a definition names is spelled before its use, what stands between the parentheses behind it.
        argument = loc["expansionLoc"].get("isMacroArgExpansion") and spelled[0] == self.path and spelled[1] > expanded[1]
        return (*spelled, False) if argument else (*expanded, True)

    def locate(self, node):
        if node.get("loc"):
            self.one(node["loc"])
        if node.get("range"):
            begin, end = self.one(node["range"]["begin"]), self.one(node["range"]["end"])
            node["span"] = self.span(begin, end)
        for child in node.get("inner", ()):
            self.locate(child)

    def span(self, begin, end):
        """(begin, end, whether all of it comes out of one macro); None if it is no text of this file."""
        if begin[0] != self.path or end[0] != self.path or begin[1] is None or end[1] is None:
            return None
        stop = end[1] + end[2]
        if end[3] and re.match(r"\s*\(", self.text[stop:]):
            stop = self.closing(stop)
        return (begin[1], stop, begin[3] and end[3] and begin[1] == end[1]) if stop > begin[1] else None

    def closing(self, at):
        depth = 0
        for match in re.compile(r"[()]").finditer(self.text, at):
            depth += 1 if match.group() == "(" else -1
            if not depth:
                return match.end()
        return at

    def source(self, span):
        return self.text[span[0]:span[1]]

    # The walk

    def top(self, node):
        if not node.get("span"):
            return
        # The attributes of a public function come behind its body.
        body = next((n for n in node.get("inner", ()) if n["kind"] == "CompoundStmt"), None)
        if node["kind"] == "FunctionDecl" and body:
            self.function = node["name"]
            self.last = self.last_statements(body)
            self.walk(body)
            self.function = None
        elif node["kind"] == "VarDecl":
            self.walk(node)

    def last_statements(self, body):
        """Statements without which the function would end without a result."""
        inner = body.get("inner", ())
        if body["kind"] in ("CompoundStmt", "SwitchStmt"):
            found = self.last_statements(inner[-1]) if inner else set()
            if body["kind"] == "SwitchStmt" or inner and inner[-1]["kind"] == "SwitchStmt":
                found |= {n["id"] for n in self.every(inner[-1]) if n["kind"] == "ReturnStmt"}
            return found
        if body["kind"] == "IfStmt":
            return set().union(*(self.last_statements(n) for n in inner[1:]))
        return {body["id"]}

    def every(self, node):
        yield node
        for child in node.get("inner", ()):
            yield from self.every(child)

    def walk(self, node):
        kind = node.get("kind")
        if kind is None or kind in CONSTANT:
            return
        inner = node.get("inner", [])
        before = self.constant
        if kind == "VarDecl" and (self.function is None or node.get("storageClass") == "static"):
            self.constant = True
        visit = getattr(self, "on_" + kind, None)
        if visit and node.get("span"):
            visit(node, inner)
        if kind in CONDITION:
            self.condition(inner[CONDITION[kind]])
        for i, child in enumerate(inner):
            if kind == "CompoundStmt" or i in BODIES.get(kind, ()):
                self.statement(child)
            self.walk(child)
        self.constant = before

    def add(self, node, at, parts, changes, write, alone=None):
        """Words of an expression are shortened; then alone has the whole texts."""
        if changes:
            alone = alone or [change.split(" -> ")[-1] for change in changes]
            place = Place(node["span"][:2], at, parts, changes, alone, write)
            place.function, place.constant = self.function, self.constant
            self.places.append(place)

    def operator(self, left, right, sign):
        """Offset of the sign between two operands, None if it is not there: a macro hides it."""
        if not left.get("span") or not right.get("span"):
            return None
        between = self.text[left["span"][1]:right["span"][0]]
        plain = re.sub(r"/\*.*?\*/|//[^\n]*", lambda m: " " * len(m.group()), between, flags=re.S)
        return left["span"][1] + plain.index(sign) if plain.strip() == sign else None

    def on_BinaryOperator(self, node, inner):
        sign, (left, right) = node["opcode"], inner
        at = self.operator(left, right, sign)
        if at is None or node["span"][2]:
            return
        signs = [d[sign] for d in (NEIGHBOUR, OPPOSITE, OTHER, LOGIC) if sign in d]
        if "*" in left["type"]["qualType"] and "*" in right["type"]["qualType"] and sign == "-":
            return
        if sign in ("==", "!="):
            self.symmetric(left)
        if sign in LOGIC:
            self.condition(left)
            self.condition(right)
        parts = [left["span"], right["span"]]
        words = self.words(node, at, sign, signs)
        alone = [f"(({self.source(left['span'])}) {s} ({self.source(right['span'])}))" for s in signs]
        self.add(node, at, parts, words, write_logic(sign) if sign in LOGIC else write_binary(sign, signs), alone)

    @staticmethod
    def symmetric(call):
        """Equal is equal either way round."""
        called = call["inner"][0] if call["kind"] == "CallExpr" else {}
        while called.get("inner"):
            called = called["inner"][0]
        if re.search("compare|cmp", called.get("referencedDecl", {}).get("name", "")):
            call["symmetric"] = True

    def words(self, node, at, sign, signs):
        left = re.sub(r"\s+", " ", self.text[node["span"][0]:at].strip())[-AROUND:].strip()
        right = re.sub(r"\s+", " ", self.text[at + len(sign):node["span"][1]].strip())[:AROUND].strip()
        return [f"{left} {sign} {right} -> {left} {s} {right}" for s in signs]

    def on_CompoundAssignOperator(self, node, inner):
        sign, (left, right) = node["opcode"], inner
        at = self.operator(left, right, sign)
        other = OTHER.get(sign[:-1])
        if at is not None and other and not node["span"][2]:
            self.add(node, at, [left["span"], right["span"]], self.words(node, at, sign, [other + "="]),
                     lambda m, p: f"({m[0]} ? ({p[0]} {other}= {p[1]}) : ({p[0]} {sign} {p[1]}))")

    def on_UnaryOperator(self, node, inner):
        sign, span = node["opcode"], node["span"]
        operand = inner[0].get("span")
        if span[2] or not operand:
            return
        if sign in ("++", "--"):
            other = "--" if sign == "++" else "++"
            shown = self.source(span)
            post = node["isPostfix"]
            one, two = ("{}" + sign, "{}" + other) if post else (sign + "{}", other + "{}")
            self.add(node, span[0], [operand], [f"{short(shown)} -> {short(shown.replace(sign, other))}"],
                     lambda m, p: f"({m[0]} ? ({two.format(p[0])}) : ({one.format(p[0])}))")
        elif sign == "-" and self.text[span[0]] == "-":
            self.add(node, span[0], [operand], [f"{short(self.source(span))} -> {short(self.source(operand))}"],
                     lambda m, p: f"({m[0]} ? +({p[0]}) : -({p[0]}))", [self.source(operand)])

    def on_IntegerLiteral(self, node, _):
        text = self.source(node["span"])
        if text in ("true", "false"):
            self.add(node, node["span"][0], [], [f"{text} -> {'false' if text == 'true' else 'true'}"],
                     lambda m, p: f"(({text}) ^ {m[0]})")
        elif not node["span"][2] and re.match(r"\d", text) and not node.get("null"):
            value = int(re.match(r"0[xX][0-9a-fA-F]+|\d+", text).group(), 0 if text[:2].lower() == "0x" else 10)
            if value:
                self.add(node, node["span"][0], [], [f"{text} -> {value + 1}", f"{text} -> {value - 1}"],
                         lambda m, p: f"({text} + {m[0]} - {m[1]})")
            else:
                self.add(node, node["span"][0], [], [f"{text} -> 1"], lambda m, p: f"({text} + {m[0]})")

    def on_CharacterLiteral(self, node, _):
        text = self.source(node["span"])
        if text.startswith("'"):
            self.add(node, node["span"][0], [], [f"{text} -> {text} + 1"], lambda m, p: f"({text} + {m[0]})")

    def on_DeclRefExpr(self, node, _):
        text = self.source(node["span"])
        if node["referencedDecl"]["kind"] == "EnumConstantDecl" and text == node["referencedDecl"]["name"]:
            self.add(node, node["span"][0], [], [f"{text} -> {text} + 1"], lambda m, p: f"({text} + {m[0]})")

    def on_ImplicitCastExpr(self, node, inner):
        if node.get("castKind") == "NullToPointer":
            for child in self.every(node):
                child["null"] = True

    def on_ReturnStmt(self, _, inner):
        if inner and inner[0].get("type", {}).get("qualType") in ("bool", "_Bool"):
            self.condition(inner[0])

    def on_CallExpr(self, node, inner):
        """Two neighbours of one type, swapped; not two literals, not a format."""
        arguments = inner[1:]
        if node.get("symmetric") or node["span"][2] or any(not a.get("span") or a["span"][2] for a in arguments):
            return
        shown = [self.source(a["span"]) for a in arguments]
        types = [a["type"].get("desugaredQualType", a["type"]["qualType"]) for a in arguments]
        for i in range(len(arguments) - 1):
            pair = shown[i:i + 2]
            if types[i] == types[i + 1] and pair[0] != pair[1] and re.search(r"[A-Za-z_]\w*", "".join(pair)) and \
                    not any(text.startswith('"%') for text in pair):
                swapped = [*shown[:i], shown[i + 1], shown[i], *shown[i + 2:]]
                name = self.source(inner[0]["span"]) if inner[0].get("span") else "?"
                self.add(node, node["span"][0], [inner[0]["span"], *(a["span"] for a in arguments)],
                         [f"{name}({short(', '.join(shown))}) -> {name}({short(', '.join(swapped))})"], write_swap(i))
                return

    def condition(self, node):
        """A condition that no changed operator of its own negates."""
        bare = node
        while bare.get("kind") in ("ParenExpr", "ImplicitCastExpr") and bare.get("inner"):
            bare = bare["inner"][0]
        if not node.get("span") or node["span"][2] or bare.get("kind") == "IntegerLiteral" or \
                bare.get("opcode") in OPPOSITE or bare.get("opcode") in LOGIC:
            return
        if bare.get("negated"):
            return
        bare["negated"] = True
        shown = self.source(node["span"])
        self.add(node, node["span"][0], [node["span"]], [f"{short(shown)} -> !({short(shown)})"],
                 lambda m, p: f"(!!({p[0]}) ^ {m[0]})", [f"!({shown})"])

    def statement(self, node):
        """A statement left out."""
        kind, span = node.get("kind"), node.get("span")
        if not span or span[2] or kind not in ("CallExpr", "BinaryOperator", "CompoundAssignOperator", "UnaryOperator", "ReturnStmt",
                                    "BreakStmt", "ContinueStmt") or node["id"] in self.last:
            return
        end = re.compile(r"\s*;").match(self.text, span[1])
        if end:
            shown = short(self.text[span[0]:end.end()])
            whole = {"span": (span[0], end.end(), False)}
            self.add(whole, span[0], [(span[0], end.end())], [f"without {shown}"], lambda m, p: f"{{ if (!{m[0]}) {p[0]} }}")


def write_binary(sign, signs):
    def write(chosen, parts):
        left, right = names(chosen)
        text = f"{left} {sign} {right}"
        for call, other in zip(chosen, signs):
            text = f"{call} ? {left} {other} {right} : {text}"
        return f"({{ __auto_type {left} = {parts[0]}; __auto_type {right} = {parts[1]}; {text}; }})"
    return write


def write_logic(sign):
    """The left side decides alone, or after the change does not."""
    def write(chosen, parts):
        left, _ = names(chosen)
        yes, no = (f"!!({parts[1]})", left) if sign == "&&" else (left, f"!!({parts[1]})")
        return f"({{ int {left} = !!({parts[0]}); ({left} ^ {chosen[0]}) ? {yes} : {no}; }})"
    return write


def write_swap(i):
    def write(chosen, parts):
        one, two = names(chosen)
        swapped = f"int {one}m = {chosen[0]}; __auto_type {one} = {parts[1 + i]}; __auto_type {two} = {parts[2 + i]};"
        arguments = [*parts[1:1 + i], f"{one}m ? {two} : {one}", f"{one}m ? {one} : {two}", *parts[3 + i:]]
        return f"({{ {swapped} {parts[0]}({', '.join(arguments)}); }})"
    return write


def names(chosen):
    number = re.sub(r"\D+", "_", chosen[0]).strip("_")
    return f"l{number}_", f"r{number}_"


def places(command, path):
    reader = Reader(command, path)
    return reader.text, reader.places
