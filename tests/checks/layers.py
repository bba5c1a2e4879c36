# SPDX-License-Identifier: Apache-2.0
"""Dependencies point down, by includes and by calls, and nothing depends on itself: the layers are in layers.txt."""
import ast
import collections
import os
import posixpath
import re

import tree
from tree import Finding

LIST = "tests/checks/layers.txt"
INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.M)
# A name links within its program only; a layer above the library includes the library's interface alone.
PROGRAMS = (("lib", "include"), ("examples/cli",), ("bindings",))
ABOVE_LIBRARY = ("examples/", "bindings/")
INCLUDE_ROOTS = ("lib/", "include/", "examples/cli/", "bindings/python/ext/")
ONLY_WITH_GMP = "lib/core/limbs_gmp.h"
PYTHON = "bindings/python/rodtravel"

Edge = collections.namedtuple("Edge", "path line verb target")  # verb: "includes" or "calls NAME in"


class Layers:
    def __init__(self, root):
        self.places, self.lists = {}, collections.defaultdict(list)
        for line in tree.read(root, LIST).splitlines():
            key, *words = line.split() or "#"
            if key.isdigit():
                self.places.update((place, (int(key), words[0])) for place in words[1:])
            elif key != "#":
                self.lists[key] += words

    def of(self, path):
        """(level, name) of a file's layer, or None."""
        return self.places.get(path) or self.places.get(posixpath.dirname(path) + "/")


def includes(root, path):
    """An edge for each include; its target is None where the file is none of the project's."""
    text = tree.code(tree.read(root, path), keep_strings=True)
    for match in INCLUDE.finditer(text):
        name = match.group(2)
        beside = [posixpath.normpath(posixpath.join(posixpath.dirname(path), name))] if match.group(1) == '"' else []
        found = (t for t in beside + [top + name for top in INCLUDE_ROOTS] if os.path.isfile(os.path.join(root, t)))
        yield name, Edge(path, tree.line_of(text, match.start()), "includes", next(found, None))


# A head before a brace: of a function, or of a table that is not of a type without a name.
HEAD = re.compile(r"(\w+)\s*\([^{}]*\)\s*$|\w[\s*]+(\w+)\s*(?:\[[^\]]*\]\s*)*=\s*$")


def _parse(text):
    """(names that other files can link to, names of the file's own, text inside of braces) of a C file."""
    plain = tree.outside_directives(tree.code(text))
    linked, own, inside = set(), set(), []
    depth, last = 0, 0
    for match in re.finditer(r"[{}]", plain):
        piece, last = plain[last:match.start()], match.end()
        inside.append(piece if depth else "\n" * piece.count("\n"))
        if match.group() == "{":
            head = re.split(r"[;}]", piece)[-1]
            name = None if depth else HEAD.search(head)
            if name:
                (own if re.search(r"\bstatic\b", head) else linked).add(name.group(1) or name.group(2))
            depth += 1
        else:
            depth = max(0, depth - 1)
    return linked, own, " ".join(inside)


def calls(root, paths):
    """An edge for each use of a function or a table that another of the files defines."""
    parsed = {path: _parse(tree.read(root, path)) for path in paths}
    home = collections.defaultdict(set)
    for path, (linked, _, _) in parsed.items():
        for name in linked:
            home[name].add(path)
    for path, (linked, own, inside) in parsed.items():
        for match in re.finditer(r"(?<![\w.>])[a-z]\w+", inside):
            name = match.group()
            for target in home[name] if name in home and name not in linked | own else ():
                yield Edge(path, tree.line_of(inside, match.start()), f"calls {name} in", target)


def _wrong_way(layers, edge):
    """The sentence about one edge, or None."""
    here, there = layers.of(edge.path), layers.of(edge.target)
    if here is None or here == there:
        return None
    if there is None:
        return f"{edge.verb} {edge.target}, which is in no layer"
    if there[0] > here[0]:
        return f"{edge.verb} {edge.target}, which is {there[0] - here[0]} above it"
    return f"{edge.verb} its peer {edge.target}" if there[0] == here[0] else None


def _wrong_include(layers, name, edge):
    if name == "gmp.h" and edge.path != ONLY_WITH_GMP:
        return f"gmp.h belongs to {ONLY_WITH_GMP} alone"
    if edge.target is None:
        return None
    if edge.path.startswith(ABOVE_LIBRARY) and edge.target.startswith(("lib/", "include/")):
        return None if name == "rodtravel/rodtravel.h" else f"includes {name}; above the library only <rodtravel/rodtravel.h> is seen"
    return _wrong_way(layers, edge)


def _shortest_cycle(near, start):
    """The edges of a shortest way from start back to it, or None."""
    came, todo = {}, [start]
    for node in todo:
        for following, edge in near[node].items():
            if following == start:
                way = [edge]
                while node != start:
                    way.insert(0, came[node][1])
                    node = came[node][0]
                return way
            if following not in came:
                came[following] = node, edge
                todo.append(following)
    return None


def _cycles(edges):
    """Names each file of a cycle once. What a header's inline functions call in its own file makes no cycle."""
    near, named = collections.defaultdict(dict), set()
    for edge in edges:
        if posixpath.splitext(edge.path)[0] != posixpath.splitext(edge.target)[0] or edge.verb == "includes":
            near[edge.path].setdefault(edge.target, edge)
    for start in sorted(near):
        way = None if start in named else _shortest_cycle(near, start)
        if way:
            named.update(edge.path for edge in way)
            steps = "; ".join(f"{posixpath.basename(edge.path)} {edge.verb} {posixpath.basename(edge.target)}" for edge in way)
            yield Finding(way[0].path, way[0].line, f"is in a cycle: {steps}")


def _c(root, layers):
    for program in PROGRAMS:
        paths = [path for top in program for path in tree.files(root, top, (".c", ".h"))]
        edges = list(calls(root, paths))
        yield from (Finding(path, 1, f"is in no layer of {LIST}") for path in paths
                    if layers.of(path) is None and not path.startswith("bindings/"))
        yield from (Finding(edge.path, edge.line, sentence) for edge in edges for sentence in [_wrong_way(layers, edge)] if sentence)
        yield from _cycles(edges + [edge for path in paths for _, edge in includes(root, path) if edge.target])
    for path in tree.files(root, "", (".c", ".h", ".cpp", ".i")):
        for name, edge in includes(root, path) if path.startswith(("lib/", "include/") + ABOVE_LIBRARY) else ():
            sentence = _wrong_include(layers, name, edge)
            if sentence:
                yield Finding(path, edge.line, sentence)


def _imports(text):
    """(line, module, whether inside a function) of each import of a module of the package itself."""
    tops = ast.parse(text).body
    for node in ast.walk(ast.Module(tops, [])):
        if isinstance(node, ast.ImportFrom) and node.level == 1:
            for name in [node.module] if node.module else [alias.name for alias in node.names]:
                yield node.lineno, name, node not in tops


def _python(root, layers):
    order = layers.lists["python"]
    for path in tree.files(root, PYTHON, (".py", ".py.in")):
        module = posixpath.basename(path).split(".")[0]
        if module not in order:
            yield Finding(path, 1, f"is not in the list of modules in {LIST}")
            continue
        for line, name, inside in _imports(tree.read(root, path)):
            if inside:
                yield Finding(path, line, f"imports {name} inside of a block, which hides the order")
            elif name in order and order.index(name) >= order.index(module):
                yield Finding(path, line, f"imports {name}, which is not before it")


def check(root):
    layers = Layers(root)
    return [*_c(root, layers), *_python(root, layers)]


if __name__ == "__main__":
    tree.main(check)
