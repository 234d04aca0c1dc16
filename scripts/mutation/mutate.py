"""Mutants of a Python module: its syntax tree with one small slip in it.

Left alone are docstrings, annotations, decorators, asserts, the words of an exception, and a zip's
`strict` (a guard that no input reaches).
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count

from changes import GUARDS, changes

LONGEST_SHOWN = 90  # characters of the expression that a mutant is shown in
NEVER = (ast.arguments, ast.Assert, ast.Import, ast.ImportFrom)


@dataclass(frozen=True)
class Mutant:
    """One slip: where it is, what stood there, what stands there now, the lines that must run to
    meet it.

    ``number`` counts the mutants of its module from 0. ``lines`` is None where it runs as the
    module is imported.
    """

    module: str
    number: int
    place: str
    line: int
    lines: range | None
    was: str
    now: str


@dataclass(frozen=True)
class _Slot:
    """A place in the tree that holds a node."""

    holder: ast.AST
    field: str
    index: int | None

    def put(self, node: ast.AST) -> ast.AST:
        """Put a node here, and give what stood here."""
        held = getattr(self.holder, self.field)
        before: ast.AST = held if self.index is None else held[self.index]
        if self.index is None:
            setattr(self.holder, self.field, node)
        else:
            held[self.index] = node
        return before


@dataclass(frozen=True)
class _Found:
    """A node, where it stands, and what it stands in: the innermost first."""

    node: ast.AST
    slot: _Slot
    around: tuple[ast.AST, ...]


def mutants(module: str, source: str) -> list[Mutant]:
    """Every mutant of a module, in order of its text."""
    tree = ast.parse(source)
    numbers = count()
    return [
        _mutant(module, next(numbers), found, change)
        for found in _walk(tree)
        for change in changes(found.node, found.slot.holder, found.slot.field)
    ]


def mutated(source: str, number: int) -> ast.Module:
    """The syntax tree of a module with the mutant of that number put in."""
    tree = ast.parse(source)
    numbers = count()
    for found in _walk(tree):
        for change in changes(found.node, found.slot.holder, found.slot.field):
            if next(numbers) == number:
                found.slot.put(change)
                return ast.fix_missing_locations(tree)
    raise IndexError(number)


def _mutant(module: str, number: int, found: _Found, change: ast.AST) -> Mutant:
    names = [
        node.name for node in found.around if isinstance(node, (ast.FunctionDef, ast.ClassDef))
    ]
    shown: ast.AST = found.node
    for outer in found.around:
        if isinstance(outer, ast.stmt) and not isinstance(outer, _SIMPLE):
            break
        if isinstance(outer, (ast.expr, ast.stmt)):
            if len(ast.unparse(outer)) > LONGEST_SHOWN:
                break
            shown = outer
    was = ast.unparse(shown)
    before = found.slot.put(change)
    now = ast.unparse(change if shown is found.node else shown)
    found.slot.put(before)
    line = getattr(found.node, "lineno", 0) or found.around[0].lineno  # type: ignore[attr-defined]
    return Mutant(
        module, number, ".".join(reversed(names)) or "(module)", line, _lines(found), was, now
    )


_SIMPLE = (ast.Return, ast.Assign, ast.AugAssign, ast.AnnAssign, ast.Expr, ast.Raise, ast.Delete)


def _lines(found: _Found) -> range | None:
    """The lines of the innermost statement, of its head alone where it holds others; None outside
    of functions.
    """
    chain = (found.node, *found.around)
    inside = next((index for index, node in enumerate(chain) if isinstance(node, ast.stmt)), None)
    if inside is None or not any(isinstance(node, ast.FunctionDef) for node in chain[inside:]):
        return None
    statement = chain[inside]
    if isinstance(statement, ast.FunctionDef):  # a default of an argument
        return None
    head = statement if isinstance(statement, _SIMPLE) or inside == 0 else chain[inside - 1]
    if not hasattr(head, "lineno"):
        head = statement
    return range(head.lineno, (head.end_lineno or head.lineno) + 1)  # type: ignore[attr-defined]


def _walk(tree: ast.AST) -> Iterator[_Found]:
    def down(node: ast.AST, around: tuple[ast.AST, ...]) -> Iterator[_Found]:
        for field, value in ast.iter_fields(node):
            if field in ("annotation", "returns", "decorator_list", "type_comment", "ctx"):
                continue
            for index, child in enumerate(value) if isinstance(value, list) else [(None, value)]:
                if not isinstance(child, ast.AST) or _is_left_alone(child, node, field):
                    continue
                found = _Found(child, _Slot(node, field, index), (node, *around))
                yield found
                yield from down(child, found.around)

    yield from down(tree, ())


def _is_left_alone(node: ast.AST, holder: ast.AST, field: str) -> bool:
    if isinstance(node, NEVER):
        return not isinstance(node, ast.arguments)
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return True  # a docstring
    if isinstance(holder, ast.Raise):
        return True  # the words of an exception
    if isinstance(node, ast.keyword) and node.arg in GUARDS:
        return True
    if isinstance(holder, ast.Call) and getattr(holder.func, "id", "") == "NewType":
        return True  # the name that it shows
    return (
        isinstance(holder, ast.Module)
        and isinstance(node, ast.Assign)
        and isinstance(node.value, ast.BinOp)
    )
