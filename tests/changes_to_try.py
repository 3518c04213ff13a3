"""Choose single changes to the source of a checkout, each of which a good suite notices; run it by hand.

    python tests/changes_to_try.py --count 60 --seed 10 > changes.json

Prints a list of changes: the file, the line before and after, and which of the lines that read alike is meant,
so that the same change can be made in another checkout. The same source and seed always give the same list.
``tests/change_by_change.py`` makes them one at a time and runs the suite over each.
"""

from __future__ import annotations

import argparse
import ast
import json
import random
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

ROOMS = ("geometry", "library")
SEED = 10
COUNT = 60

OPERATORS: dict[type[ast.AST], tuple[str, str, str]] = {
    ast.Lt: ("bound", "<", "<="),
    ast.LtE: ("bound", "<=", "<"),
    ast.Gt: ("bound", ">", ">="),
    ast.GtE: ("bound", ">=", ">"),
    ast.Eq: ("comparison", "==", "!="),
    ast.NotEq: ("comparison", "!=", "=="),
    ast.In: ("comparison", "in", "not in"),
    ast.NotIn: ("comparison", "not in", "in"),
    ast.Is: ("comparison", "is", "is not"),
    ast.IsNot: ("comparison", "is not", "is"),
    ast.Add: ("arithmetic", "+", "-"),
    ast.Sub: ("arithmetic", "-", "+"),
    ast.Mult: ("arithmetic", "*", "/"),
    ast.Div: ("arithmetic", "/", "*"),
    ast.FloorDiv: ("arithmetic", "//", "%"),
    ast.Mod: ("arithmetic", "%", "//"),
    ast.Pow: ("arithmetic", "**", "*"),
    ast.And: ("logic", "and", "or"),
    ast.Or: ("logic", "or", "and"),
}
"""For each operator: the kind of change, how it is written, and what is written in its place."""

PAIRS = ("sin cos", "asin acos", "min max", "floor ceil", "radians degrees", "any all", "first last")
OTHER_NAME = {"tan": "sin", "atan": "sin"} | {
    a: b for pair in PAIRS for a, b in (pair.split(), reversed(pair.split()))
}
UNTOUCHED = {"annotation", "returns", "decorator_list"}
"""Parts of a statement that only a reader or a type checker sees, or that make a class what it is."""


@dataclass(frozen=True, slots=True)
class Site:
    """A place in a source that can be changed: bytes from ``start`` to ``end`` give way to ``text``."""

    kind: str
    start: int
    end: int
    text: bytes


class Source:
    """One file's text, with the places where it can be changed."""

    def __init__(self, source: bytes) -> None:
        self.source = source
        self.tree = ast.parse(source)
        self.starts = [0]
        for line in source.splitlines(keepends=True):
            self.starts.append(self.starts[-1] + len(line))
        self.fields: dict[str, set[str]] = defaultdict(set)
        self.modules: set[str] = set()
        self.called = {id(n.func) for n in ast.walk(self.tree) if isinstance(n, ast.Call)}
        for node in ast.walk(self.tree):
            if isinstance(node, ast.Import | ast.ImportFrom):
                self.modules |= {(alias.asname or alias.name).partition(".")[0] for alias in node.names}
        for node in ast.walk(self.tree):
            if self.is_field(node):
                self.fields[node.value.id].add(node.attr)  # type: ignore[attr-defined]

    def is_field(self, node: ast.AST) -> bool:
        """Whether a node reads a value of an object, as ``row.width`` does and ``math.pi`` does not."""
        return (
            isinstance(node, ast.Attribute)
            and isinstance(node.value, ast.Name)
            and isinstance(node.ctx, ast.Load)
            and node.value.id not in self.modules
            and id(node) not in self.called
        )

    def start(self, node: ast.expr) -> int:
        """Where an expression begins in the bytes of the file."""
        return self.starts[node.lineno - 1] + node.col_offset

    def end(self, node: ast.expr) -> int:
        """Where an expression ends in the bytes of the file."""
        return self.starts[(node.end_lineno or node.lineno) - 1] + (node.end_col_offset or 0)

    def text(self, node: ast.expr) -> bytes:
        """An expression as it is written."""
        return self.source[self.start(node) : self.end(node)]

    def sites(self) -> list[Site]:
        """Every place within one line that can be changed; whether a change holds is asked of a chosen one."""
        found = (site for node in reached(self.tree) for site in self.sites_of(node))
        return [site for site in found if b"\n" not in self.source[site.start : site.end]]

    def holds(self, site: Site) -> bool:
        """Whether a change gives a program, and another one."""
        try:
            changed = ast.parse(self.source[: site.start] + site.text + self.source[site.end :])
        except SyntaxError:
            return False
        return ast.dump(changed) != ast.dump(self.tree)

    def sites_of(self, node: ast.AST) -> Iterator[Site]:
        """The changes that can be made at one node itself."""
        if isinstance(node, ast.Compare):
            for left, operator, right in zip(
                [node.left, *node.comparators], node.ops, node.comparators, strict=False
            ):
                yield from self.operator(operator, left, right)
        elif isinstance(node, ast.BoolOp):
            for left, right in pairwise(node.values):
                yield from self.operator(node.op, left, right)
        elif isinstance(node, ast.BinOp) and not is_text(node.left) and not is_text(node.right):
            yield from self.operator(node.op, node.left, node.right)
        elif isinstance(node, ast.AugAssign) and not is_text(node.value):
            yield from self.operator(node.op, node.target, node.value)
        elif isinstance(node, ast.UnaryOp):
            yield from self.unary(node)
        elif isinstance(node, ast.Constant):
            yield from self.constant(node)
        elif isinstance(node, ast.Call):
            yield from self.swapped(node.args)
            yield from self.swapped([keyword.value for keyword in node.keywords])
        if isinstance(node, ast.Name | ast.Attribute):
            yield from self.name(node)

    def operator(self, operator: ast.AST, left: ast.expr, right: ast.expr) -> Iterator[Site]:
        """Another operator between two expressions."""
        if type(operator) in OPERATORS:
            kind, old, new = OPERATORS[type(operator)]
            words = rb"\s+".join(re.escape(word).encode() for word in old.split())
            between = self.source[self.end(left) : self.start(right)]
            if b"#" not in between and (found := re.search(words, between)):
                at = self.end(left)
                yield Site(kind, at + found.start(), at + found.end(), new.encode())

    def unary(self, node: ast.UnaryOp) -> Iterator[Site]:
        """A minus or a ``not`` left out."""
        written = re.match(rb"not\s*|-", self.text(node))
        if written:
            kind = "sign" if written[0] == b"-" else "logic"
            yield Site(kind, self.start(node), self.start(node) + written.end(), b"")

    def constant(self, node: ast.Constant) -> Iterator[Site]:
        """A count off by one, a measure twice as large, the other truth."""
        value = node.value
        if isinstance(value, bool):
            yield Site("constant", self.start(node), self.end(node), str(not value).encode())
        elif isinstance(value, int | float):
            new = value + 1 if isinstance(value, int) else value * 2 or 1.0
            kind = "off by one" if isinstance(value, int) else "constant"
            yield Site(kind, self.start(node), self.end(node), repr(new).encode())

    def swapped(self, values: list[ast.expr]) -> Iterator[Site]:
        """Two neighbouring arguments in each other's place."""
        for one, two in pairwise(values):
            if not any(isinstance(value, ast.Starred) or is_text(value) for value in (one, two)):
                between = self.source[self.end(one) : self.start(two)]
                text = self.text(two) + between + self.text(one)
                yield Site("swapped argument", self.start(one), self.end(two), text)

    def name(self, node: ast.Name | ast.Attribute) -> Iterator[Site]:
        """The sister function, or another field that the file reads from the same object."""
        name = node.id if isinstance(node, ast.Name) else node.attr
        start, end = self.end(node) - len(name.encode()), self.end(node)
        if id(node) in self.called and name in OTHER_NAME:
            yield Site("function", start, end, OTHER_NAME[name].encode())
        elif isinstance(node, ast.Attribute) and self.is_field(node) and isinstance(node.value, ast.Name):
            for other in sorted(self.fields[node.value.id] - {name}):
                yield Site("swapped field", start, end, other.encode())

    def change(self, file: str, site: Site) -> dict[str, object]:
        """A change as it can be made in any checkout that has the same line."""
        lines = self.source.decode().split("\n")
        line = self.source[: site.start].count(b"\n")
        begin, end = self.starts[line], self.starts[line + 1]
        after = self.source[begin : site.start] + site.text + self.source[site.end : end]
        return {
            "kind": site.kind,
            "file": file,
            "line": line + 1,
            "before": lines[line],
            "after": after.decode().removesuffix("\n"),
            "occurrence": lines[:line].count(lines[line]),
        }


def is_text(node: ast.expr) -> bool:
    """Whether an expression is words for a person rather than a value."""
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


def reached(node: ast.AST) -> Iterator[ast.AST]:
    """All nodes under one that have a meaning when the program runs, messages left out."""
    if isinstance(node, ast.Raise | ast.JoinedStr):
        return
    if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.dump(node.test):
        return
    if isinstance(node, ast.Assign) and any("__all__" in ast.dump(target) for target in node.targets):
        return
    yield node
    for field, value in ast.iter_fields(node):
        if field not in UNTOUCHED:
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.AST):
                    yield from reached(child)


def choose(source: Source, taken: set[Site], chance: random.Random) -> Site | None:
    """A change that was not yet taken: first its kind is drawn, then one of the places for it."""
    kinds: dict[str, list[Site]] = defaultdict(list)
    for site in source.sites():
        if site not in taken:
            kinds[site.kind].append(site)
    while kinds:
        kind = chance.choice(sorted(kinds))
        site = kinds[kind].pop(chance.randrange(len(kinds[kind])))
        taken.add(site)
        if source.holds(site):
            return site
        if not kinds[kind]:
            del kinds[kind]
    return None


def changes(tree: Path, count: int, seed: int) -> list[dict[str, object]]:
    """So many changes, spread over all files of the rooms, and in each over the kinds that it offers."""
    chance = random.Random(seed)
    files = [path for room in ROOMS for path in sorted((tree / room).rglob("*.py"))]
    chance.shuffle(files)
    taken: dict[Path, set[Site]] = {path: set() for path in files}
    chosen: list[dict[str, object]] = []
    while files and len(chosen) < count:
        for path in tuple(files):
            source = Source(path.read_bytes())
            site = choose(source, taken[path], chance)
            if site is None:
                files.remove(path)
            elif len(chosen) < count:
                chosen.append(source.change(path.relative_to(tree).as_posix(), site))
    return chosen


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description="Choose single changes to the source of a checkout.")
    asked.add_argument("--tree", type=Path, default=Path(__file__).resolve().parent.parent)
    asked.add_argument("--count", type=int, default=COUNT)
    asked.add_argument("--seed", type=int, default=SEED)
    words = asked.parse_args()
    print(json.dumps(changes(words.tree, words.count, words.seed), indent=1))
