"""What may stand in a node's place: one small slip, as a tired writer makes them.

Comparisons, arithmetic, `and` and `or`, `not`, signs, numbers by one, strings, `if` and `while`
taken or not, conditions of comprehensions, min and max, any and all, ceil and floor, sorting,
bounds of slices, keywords and defaults of calls, returned values, and statements left out.
"""

from __future__ import annotations

import ast
import copy
from collections.abc import Iterator

COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.FloorDiv,
    ast.Pow: ast.Mult,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
    ast.BitXor: ast.BitOr,
    ast.LShift: ast.RShift,
    ast.RShift: ast.LShift,
    ast.MatMult: ast.Mult,
}
TWINS = {"min": "max", "any": "all", "ceil": "floor", "stdev": "pstdev"}
TWINS |= {other: one for one, other in TWINS.items()} | {"sorted": "list"}
LAST_IS_OPTIONAL = {"get", "getattr", "sum", "round", "pop", "next"}
GUARDS = {"strict", "repr", "init"}  # keywords that no figure hangs on


def changes(node: ast.AST, holder: ast.AST, field: str) -> list[ast.AST]:
    """What may stand in the place of a node that ``holder`` has in ``field``."""
    make = getattr(_Changes, f"of_{type(node).__name__.lower()}", None)
    found: list[ast.AST] = [] if make is None else list(make(node, holder))
    if field == "test" and isinstance(holder, (ast.If, ast.While)):
        ways = (True, False) if isinstance(holder, ast.If) else (False,)
        found += [ast.Constant(way) for way in ways]
    return found


def _with(node: ast.AST, **fields: object) -> ast.AST:
    changed = copy.copy(node)
    for name, value in fields.items():
        setattr(changed, name, value)
    return changed


def _without(items: list, index: int) -> list:  # type: ignore[type-arg]
    return [item for number, item in enumerate(items) if number != index]


class _Changes:
    """By kind of node, what may stand in its place."""

    @staticmethod
    def of_compare(node: ast.Compare, _: ast.AST) -> Iterator[ast.AST]:
        for index, operator in enumerate(node.ops):
            for other in COMPARISONS[type(operator)]:
                yield _with(node, ops=[*node.ops[:index], other(), *node.ops[index + 1 :]])

    @staticmethod
    def of_binop(node: ast.BinOp, _: ast.AST) -> Iterator[ast.AST]:
        yield _with(node, op=OPERATORS[type(node.op)]())

    @staticmethod
    def of_augassign(node: ast.AugAssign, _: ast.AST) -> Iterator[ast.AST]:
        yield _with(node, op=OPERATORS[type(node.op)]())
        yield ast.Pass()

    @staticmethod
    def of_boolop(node: ast.BoolOp, _: ast.AST) -> Iterator[ast.AST]:
        yield _with(node, op=ast.Or() if isinstance(node.op, ast.And) else ast.And())
        for index in range(len(node.values)):
            rest = _without(node.values, index)
            yield rest[0] if len(rest) == 1 else _with(node, values=rest)

    @staticmethod
    def of_unaryop(node: ast.UnaryOp, _: ast.AST) -> Iterator[ast.AST]:
        yield node.operand

    @staticmethod
    def of_constant(node: ast.Constant, holder: ast.AST) -> Iterator[ast.AST]:
        value = node.value
        if isinstance(value, bool):
            yield ast.Constant(not value)
        elif isinstance(value, int):
            yield ast.Constant(value + 1)
            yield ast.Constant(value - 1)
        elif isinstance(value, float):
            yield ast.Constant(value + 1)
        elif isinstance(value, str) and not isinstance(holder, ast.JoinedStr):
            yield ast.Constant("XX" + value)

    @staticmethod
    def of_joinedstr(node: ast.JoinedStr, holder: ast.AST) -> Iterator[ast.AST]:
        if not isinstance(holder, ast.FormattedValue):
            yield _with(node, values=[ast.Constant("XX"), *node.values])

    @staticmethod
    def of_ifexp(node: ast.IfExp, _: ast.AST) -> Iterator[ast.AST]:
        yield node.body
        yield node.orelse

    @staticmethod
    def of_comprehension(node: ast.comprehension, _: ast.AST) -> Iterator[ast.AST]:
        for index in range(len(node.ifs)):
            yield _with(node, ifs=_without(node.ifs, index))

    @staticmethod
    def of_slice(node: ast.Slice, _: ast.AST) -> Iterator[ast.AST]:
        for bound in ("lower", "upper", "step"):
            if getattr(node, bound) is not None:
                yield _with(node, **{bound: None})

    @staticmethod
    def of_call(node: ast.Call, _: ast.AST) -> Iterator[ast.AST]:
        name = getattr(node.func, "id", getattr(node.func, "attr", ""))
        twin = TWINS.get(name)
        if twin and isinstance(node.func, ast.Name) and (twin != "list" or not node.keywords):
            yield _with(node, func=ast.Name(twin, ast.Load()))
        elif twin and isinstance(node.func, ast.Attribute):
            yield _with(node, func=_with(node.func, attr=twin))
        if name in ("min", "max") and len(node.args) == 2:
            yield from node.args
        if name in LAST_IS_OPTIONAL and len(node.args) > 1:
            yield _with(node, args=node.args[:-1])
        for index, keyword in enumerate(node.keywords):
            if keyword.arg is not None and keyword.arg not in GUARDS:
                yield _with(node, keywords=_without(node.keywords, index))

    @staticmethod
    def of_return(node: ast.Return, _: ast.AST) -> Iterator[ast.AST]:
        if node.value is not None and not (
            isinstance(node.value, ast.Constant) and node.value.value is None
        ):
            yield ast.Return(ast.Constant(None))

    @staticmethod
    def of_expr(_node: ast.Expr, _: ast.AST) -> Iterator[ast.AST]:
        yield ast.Pass()

    @staticmethod
    def of_assign(node: ast.Assign, _: ast.AST) -> Iterator[ast.AST]:
        if isinstance(node.targets[0], (ast.Subscript, ast.Attribute)):
            yield ast.Pass()

    @staticmethod
    def of_raise(_node: ast.Raise, _: ast.AST) -> Iterator[ast.AST]:
        yield ast.Pass()

    @staticmethod
    def of_delete(_node: ast.Delete, _: ast.AST) -> Iterator[ast.AST]:
        yield ast.Pass()

    @staticmethod
    def of_continue(_node: ast.Continue, _: ast.AST) -> Iterator[ast.AST]:
        yield ast.Break()

    @staticmethod
    def of_break(_node: ast.Break, _: ast.AST) -> Iterator[ast.AST]:
        yield ast.Continue()
