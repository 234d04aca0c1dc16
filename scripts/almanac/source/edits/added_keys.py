"""Keys added to mappings of an entry's text; every other byte stays."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import yaml

from almanac.source.edits.style import span
from almanac.source.reader import DataPath, Document, read

Added = Mapping[DataPath, Mapping[str, str]]
"""By the way to a mapping the keys that it gets, each with its value as written, on one line."""
_BARE_KEY = re.compile(r" *[\w-]+: ")
"""All that stands in a line before the value of a key."""
_INDENT = 2


def with_keys(document: Document, added: Added, order: Sequence[str]) -> str | None:
    """The document's text with keys added to mappings, each before the next of those that follow it
    in ``order``; None where the text would not read back as just that.
    """
    edits = list[tuple[int, int, str]]()
    for path, keys in added.items():
        node = document.node(path)
        if not isinstance(node, yaml.MappingNode):
            return None
        names = sorted(keys, key=order.index)
        if node.value:
            put = (_edit(document.text, node, name, keys[name], order) for name in names)
            edits += [(at, at, words) for at, words in put]
        else:
            edits += _in_empty(document.text, node, {name: keys[name] for name in names})
    text = document.text
    edits.sort(key=lambda own: own[0])  # those of one place stay in order
    for at, ends, words in edits[::-1]:
        text = text[:at] + words + text[ends:]
    return text if _is_just_that(document, text, added) else None


def _in_empty(
    text: str, node: yaml.MappingNode, keys: Mapping[str, str]
) -> Iterator[tuple[int, int, str]]:
    """The keys in place of the ``{}`` that a line ends with, a line each; else between its braces.
    What is said after it stays where it is.
    """
    at, ends = span(text, node)
    begins, (line, _, _) = text.rfind("\n", 0, at) + 1, text[at:].partition("\n")
    key, rest = text[begins:at], text[ends : at + len(line)]
    if not _BARE_KEY.fullmatch(key) or (rest.strip() and not rest.lstrip().startswith("#")):
        yield at + 1, ends - 1, ", ".join(f"{name}: {value}" for name, value in keys.items())
        return
    end = "\r\n" if "\r\n" in text else "\n"
    indent = " " * (len(key) - len(key.lstrip()) + _INDENT)
    lines = "".join(f"{end}{indent}{name}: {value}" for name, value in keys.items())
    yield at - 1, ends, ""
    put = at + len(line.rstrip("\r"))
    yield put, put, lines


def _edit(
    text: str, node: yaml.MappingNode, name: str, value: str, order: Sequence[str]
) -> tuple[int, str]:
    """Where a key is put in, and what."""
    place = order.index(name)
    later = [key for key, _ in node.value if key.value in order and order.index(key.value) > place]
    if node.flow_style:
        if later:
            return span(text, later[0])[0], f"{name}: {value}, "
        return span(text, node.value[-1][1])[1], f", {name}: {value}"
    end = "\r\n" if "\r\n" in text else "\n"
    indent = " " * node.value[0][0].start_mark.column
    lines = text.split("\n")
    if later:
        line = later[0].start_mark.line
        while line and lines[line - 1].strip().startswith("#"):
            line -= 1  # what is said above a key is said of it
    else:
        line = _last_line(text, node) + 1
    at = sum(len(before) + 1 for before in lines[:line])
    if at > len(text):  # the file ends without a line's end
        return len(text), f"{end}{indent}{name}: {value}"
    return at, f"{indent}{name}: {value}{end}"


def _last_line(text: str, node: yaml.Node) -> int:
    """The last line of what a node holds, without what is empty or said below it."""
    if isinstance(node, yaml.MappingNode) and not node.flow_style and node.value:
        return _last_line(text, node.value[-1][1])
    if isinstance(node, yaml.SequenceNode) and not node.flow_style and node.value:
        return _last_line(text, node.value[-1])
    _, ends = span(text, node)
    held = text[:ends].rstrip()
    return held.count("\n")


def _is_just_that(document: Document, text: str, added: Added) -> bool:
    """Whether the text reads as the document with those keys, and nothing else."""
    again, findings = read(text.encode("utf-8"), document.file)
    if again is None or findings:
        return False
    data: Any = copy.deepcopy(again.data)
    for path, keys in added.items():
        found = data
        for step in path:
            found = found[step]
        for name in keys:
            if name not in found:
                return False
            del found[name]
    return bool(data == document.data)
