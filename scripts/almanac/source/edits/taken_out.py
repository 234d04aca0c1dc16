"""Pieces taken out of a file's text, at the places where they stand; everything else, comments too,
stays to the letter.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import yaml

from almanac.source.plain_loader import PlainLoader

Spot = tuple[int, int]  # line and column of the start of a piece, from 1


class _Step(NamedTuple):
    """A collection on the way to a piece, and which of its items leads there."""

    within: yaml.CollectionNode
    number: int


def without_items(text: str, spots: Iterable[Spot]) -> str:
    """A text without the items of lists that begin at each spot, mappings as they are."""
    return _taken(text, spots, items=True)


def without(text: str, spots: Iterable[Spot]) -> str:
    """A text without the item of a list, or the key with its value, that begins at each spot; where
    nothing then is left of a list or mapping, without that too. The value of a key takes the
    mapping that it is in along, where that is one item of a list. A spot where nothing begins is
    passed over.
    """
    return _taken(text, spots, items=False)


def _taken(text: str, spots: Iterable[Spot], items: bool) -> str:
    for line, column in sorted(spots, reverse=True):
        root = yaml.compose(text, Loader=PlainLoader)
        way = _way(root, (line - 1, column - 1), items) if root else None
        if way:
            text = _cut(text, way)
    return text


def _way(node: yaml.Node, spot: Spot, items: bool) -> list[_Step] | None:
    """The way to the piece that begins at a spot, from outside in."""
    if not isinstance(node, yaml.CollectionNode):
        return None
    for number, item in enumerate(node.value):
        parts: Sequence[yaml.Node] = item if isinstance(item, tuple) else (item,)
        for place, part in enumerate(parts):
            if items and isinstance(node, yaml.SequenceNode) and _start(part) == spot:
                return [_Step(node, number)]
            inner = _way(part, spot, items)
            if inner:
                return [_Step(node, number), *inner]
            if not items and not isinstance(part, yaml.CollectionNode) and _start(part) == spot:
                # the value of a key: without it, the mapping says nothing
                return [] if place == 1 else [_Step(node, number)]
            if inner == []:
                return [_Step(node, number)]
    return None


def _start(node: yaml.Node) -> Spot:
    return node.start_mark.line, node.start_mark.column


def _cut(text: str, way: list[_Step]) -> str:
    while len(way) > 1 and len(way[-1].within.value) == 1:
        way = way[:-1]
    within, number = way[-1]
    spans = [_span(item) for item in within.value]
    if within.flow_style:
        kept = [text[start:end] for at, (start, end) in enumerate(spans) if at != number]
        first, last = within.start_mark.index, within.end_mark.index
        return f"{text[: first + 1]}{', '.join(kept)}{text[last - 1 :]}"
    start = _line_start(text, spans[number][0])
    if number + 1 < len(spans):
        end = _line_start(text, spans[number + 1][0])
    else:
        end = _line_start(text, within.end_mark.index)
    if isinstance(within, yaml.MappingNode) and number == 0 and len(way) > 1:
        # the first key may stand behind the dash of an item: what follows takes its place
        start, end = spans[0][0], spans[1][0]
    return text[:start] + text[_before_comments(text, start, end) :]


def _span(item: yaml.Node | tuple[yaml.Node, yaml.Node]) -> Spot:
    first, last = item if isinstance(item, tuple) else (item, item)
    return first.start_mark.index, last.end_mark.index


def _line_start(text: str, index: int) -> int:
    return index if index >= len(text) else text.rfind("\n", 0, index) + 1


def _before_comments(text: str, start: int, end: int) -> int:
    """The end of what is cut, before comments in lines of their own, which are of what follows."""
    while end > start:
        before = text.rfind("\n", 0, end - 1) + 1
        if before <= start or not text[before:end].lstrip().startswith("#"):
            return end
        end = before
    return end
