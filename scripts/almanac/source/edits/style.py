"""What has one right answer in how an entry is written, found and mended: key order, quoted times,
list order.

A fix changes nothing else: comments and layout stay to the byte.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import yaml
from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError
from jsonschema.validators import extend

from almanac.findings import Finding, warning
from almanac.kinds import KIND
from almanac.source import schemas
from almanac.source.explain.hints import FIXED
from almanac.source.reader import DataPath, Document

_QUOTED_TIME = re.compile(r"""(["'])(?<!start: .)[\d:.]*\d:\d[\d:.]*\1""")


def style_findings(document: Document, kind: str) -> Iterator[Finding]:
    """Warnings on what ``fixed`` would change in a document that is sound by its schema."""
    wanted = _key_order(document, kind)
    if wanted != list(document.data):
        first = next(key for key, right in zip(document.data, wanted, strict=True) if key != right)
        message = f"'{first}' does not stand in the order of the schema"
        hint = f"{FIXED}; the order is that of the field tables"
        yield warning("key-order", document.place((first,), of_key=True), message, hint)
    for path, node in _quoted_times(document, kind):
        yield warning(
            "quoted-time", document.place(path), f"the time {node.value} needs no quotes", FIXED
        )
    for path, items in _unsorted_lists(document, kind):
        message = f"the list is in order as {', '.join(sorted(items))}"
        yield warning("list-order", document.place(path), message, FIXED)


def fixed(document: Document, kind: str) -> str:
    """The document's text with its key order, quoted times and list order mended, and nothing else
    changed.
    """
    edits = [(span(document.text, node), node.value) for _, node in _quoted_times(document, kind)]
    for path, items in _unsorted_lists(document, kind):
        nodes = [document.node((*path, number)) for number in range(len(items))]
        if (
            "#"
            not in document.text[
                span(document.text, nodes[0])[0] : span(document.text, nodes[-1])[1]
            ]
        ):
            written = {
                item: document.text[slice(*span(document.text, node))]
                for item, node in zip(items, nodes, strict=True)
            }
            edits += [
                (span(document.text, node), written[item])
                for node, item in zip(nodes, sorted(items), strict=True)
            ]
    text = document.text
    for (start, end), new in sorted(edits, reverse=True):
        text = text[:start] + new + text[end:]
    return _reordered(Document(document.file, text, document.data), kind)


def _key_order(document: Document, kind: str) -> list[str]:
    """The top-level keys in the order of the schema."""
    order = {name: number for number, name in enumerate(schemas.fields(kind))}
    return sorted(document.data, key=lambda key: order.get(key, len(order)))


def _reordered(document: Document, kind: str) -> str:
    """The text with its top-level fields in the order of the schema, each with the comments right
    above it.
    """
    wanted = _key_order(document, kind)
    root = document.node(())
    if wanted == list(document.data) or not isinstance(root, yaml.MappingNode) or root.flow_style:
        return document.text
    lines = document.text.splitlines(keepends=True)
    if lines and not lines[-1].endswith("\n"):
        lines[-1] += "\n"
    starts = [
        _first_line(lines, document.place((key,), of_key=True).line - 1) for key in document.data
    ]
    head, ends = lines[: starts[0]], [*starts[1:], len(lines)]
    blocks = {
        key: lines[start:end] for key, start, end in zip(document.data, starts, ends, strict=True)
    }
    return "".join([*head, *(line for key in wanted for line in blocks[key])])


def _first_line(lines: list[str], key_line: int) -> int:
    """Where a field's piece of the file begins: at the comments right above its key, save at the
    file's very top.
    """
    first = key_line
    while first > 0 and lines[first - 1].startswith("#"):
        first -= 1
    return key_line if first == 0 else first


def _quoted_times(document: Document, kind: str) -> Iterator[tuple[DataPath, yaml.ScalarNode]]:
    if not _QUOTED_TIME.search(document.text):
        return
    for path in marked(document, kind, "clock"):
        node = document.node(path)
        if isinstance(node, yaml.ScalarNode) and node.style in {"'", '"'} and _reads_back(node):
            yield path, node


def _reads_back(node: yaml.ScalarNode) -> bool:
    return re.fullmatch(r"\d+(:\d+)+(\.\d+)?", node.value) is not None


def _unsorted_lists(document: Document, kind: str) -> Iterator[tuple[DataPath, list[str]]]:
    if not any(
        items != sorted(items) for items in _lists_named(document.data, _namesmarked("sorted"))
    ):
        return  # the schema is asked where only a list that is out of order can tell
    for path in marked(document, kind, "sorted"):
        items: Any = document.data
        for step in path:
            items = items[step]
        if items != sorted(items):
            yield path, items


def _lists_named(value: Any, names: frozenset[str]) -> Iterator[list[str]]:
    """The lists of texts that stand in data under one of ``names``."""
    for key, inner in value.items() if isinstance(value, dict) else enumerate(value):
        if (
            key in names
            and isinstance(inner, list)
            and all(isinstance(item, str) for item in inner)
        ):
            yield inner
        elif isinstance(inner, (dict, list)):
            yield from _lists_named(inner, names)


@cache
def _namesmarked(keyword: str) -> frozenset[str]:
    """The names of the properties whose schema holds a keyword, in any schema."""

    def named(piece: Any) -> Iterator[str]:
        if isinstance(piece, dict):
            properties = piece.get("properties", {})
            yield from (
                name for name, inner in properties.items() if keyword in schemas.resolve(inner)
            )
            yield from (name for inner in piece.values() for name in named(inner))
        elif isinstance(piece, list):
            yield from (name for inner in piece for name in named(inner))

    return frozenset(name for schema in ("common", *KIND) for name in named(schemas.raw(schema)))


def marked(document: Document, kind: str, keyword: str) -> list[DataPath]:
    """The paths of a document at which its schema holds a keyword, once each."""
    found = (tuple(problem.absolute_path) for problem in problems_marked(document, kind, keyword))
    return list(dict.fromkeys(found))


def problems_marked(document: Document, kind: str, keyword: str) -> Iterator[ValidationError]:
    """The same as ``jsonschema`` tells it: with the value, and what the keyword asks of it."""
    problems = _marker(kind, keyword).iter_errors(document.data)
    return (problem for problem in problems if problem.validator == keyword)


@cache
def _marker(kind: str, keyword: str) -> Any:
    def mark(validator: Any, value: Any, instance: Any, schema: Any) -> Iterator[ValidationError]:
        yield ValidationError(keyword)

    cls: Any = extend(Draft202012Validator, {keyword: mark})  # type: ignore[no-untyped-call]
    return cls(schemas.bundled(kind))


def span(text: str, node: yaml.Node) -> tuple[int, int]:
    """Where a node begins and ends in the text."""
    lines = text.split("\n")
    start, end = node.start_mark, node.end_mark
    assert start is not None
    assert end is not None
    return _offset(lines, start.line, start.column), _offset(lines, end.line, end.column)


def _offset(lines: list[str], line: int, column: int) -> int:
    return sum(len(before) + 1 for before in lines[:line]) + column
