"""The strict YAML reader: text to plain data, with the line and column of every key and value.

YAML 1.1 reads ``1:15`` as the number 75 and ``no`` as false, and lets a second key silently replace
the first. Here a plain scalar is an integer, a decimal, ``true``/``false``, ``null`` or text, and
whatever can hide a mistake is a finding: keys given twice, anchors, aliases, merge keys, tags,
several documents in one file.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property
from itertools import islice
from typing import Any

import yaml

from almanac.findings import Finding, Place, counted, error
from almanac.source.plain_loader import PlainLoader
from almanac.source.snapshot import MOST_BYTES
from almanac.source.stream import hidden_structure, may_hide_structure
from almanac.source.syntax.finding import syntax_finding
from almanac.source.syntax.given_twice import given_twice
from almanac.source.tree import CONTROL, Builder, control_words

DataPath = tuple[str | int, ...]

_TAB_INDENT = re.compile(r"(?m)^ *(\t)[ \t]*[^\s]")
_MOST = 20


@dataclass(frozen=True)
class Document:
    """One file's data, and where each piece of it stands. What is ``lent`` is the program's."""

    file: str
    text: str
    data: dict[str, Any]
    lent: bool = False

    def place(self, path: DataPath = (), of_key: bool = False) -> Place:
        """The place of the value at ``path``, or of its key; the nearest known parent's if it is
        missing.
        """
        if not path and self.text[:1].isalpha():  # as nearly all begin: the first key does
            return Place(self.file, 1, 1)
        node, mark = self._root, self._root.start_mark
        for step in path:
            found = _child(node, step)
            if found is None:
                break
            key, node = found
            mark = key.start_mark if of_key else node.start_mark
        return Place(self.file, mark.line + 1, mark.column + 1)

    def node(self, path: DataPath) -> yaml.Node:
        """The YAML node of the value at ``path``. Raises KeyError where there is none."""
        node = self._root
        for step in path:
            found = _child(node, step)
            if found is None:
                raise KeyError(path)
            node = found[1]
        return node

    @cached_property
    def _root(self) -> yaml.Node:
        # Findings are rare and most documents need no place, so the tree is built only when asked
        # for.
        root = yaml.compose(self.text, Loader=PlainLoader)
        assert root is not None  # read() has found a mapping in this very text
        return root


def _child(node: yaml.Node, step: str | int) -> tuple[yaml.Node, yaml.Node] | None:
    if isinstance(node, yaml.MappingNode):
        return next(((key, value) for key, value in node.value if key.value == step), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return node.value[step], node.value[step]
    return None


def read(raw: bytes, file: str) -> tuple[Document | None, list[Finding]]:
    """Read one file's bytes.

    Returns the document, or None where nothing sound can be made of it, and the findings on its
    YAML. Never raises for anything that the bytes hold.
    """
    text, findings = _decode(raw, file)
    if findings:
        return None, findings
    if may_hide_structure(text):
        findings, unsound = hidden_structure(text, file)
        if unsound:
            return None, findings
    try:
        root = yaml.compose(text, Loader=PlainLoader)
    except yaml.YAMLError as problem:
        return None, [*findings, syntax_finding(problem, text, file)]
    builder = Builder(file, text)
    data = builder.value(root) if root is not None else None
    twice = [own for own in builder.findings if own.code == "duplicate-key"]
    if twice and (told := given_twice(text, file, twice)) != twice:
        others = (own for own in builder.findings if own.code != "duplicate-key")
        return None, [*findings, *others, *told]
    findings = [*findings, *builder.findings]
    if root is None or data is None:
        return None, [
            *findings,
            error(
                "empty-file",
                Place(file),
                "the file is empty",
                "write the entry, or remove the file",
            ),
        ]
    if not isinstance(data, dict):
        what = "list" if isinstance(data, list) else "text"
        message = f"an entry is fields, each as 'name: value', and this is a {what}"
        return None, [
            *findings,
            error("not-a-mapping", builder.place(root), message, "write fields as 'title: ...'"),
        ]
    return None if builder.is_unsound else Document(file, text, data), findings


def _decode(raw: bytes, file: str) -> tuple[str, list[Finding]]:
    if len(raw) > MOST_BYTES:
        message = (
            f"the file has more than {MOST_BYTES:,} bytes (64 KiB), the most that an entry may have"
        )
        return "", [
            error("file-too-large", Place(file), message, "split the entry, or shorten its text")
        ]
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as problem:
        before = raw[: problem.start].decode("utf-8", "replace")
        message = f"byte 0x{raw[problem.start]:02x} is not UTF-8"
        return "", [
            error("not-utf8", _place_after(before, file), message, "save the file as UTF-8")
        ]
    text = text.removeprefix("\ufeff")
    first = {own[0]: own for own in reversed([*CONTROL.finditer(text)])}
    found = [_control(own, text, file) for own in islice(sorted(first.values(), key=_start), _MOST)]
    tabs = [*_TAB_INDENT.finditer(text)]
    if tabs:  # whoever has one in a line has it in others
        more = f", as in {counted(len(tabs) - 1, 'line')} more" if len(tabs) > 1 else ""
        place = _place_after(text[: tabs[0].start(1)], file)
        message = f"a tab stands in the indent{more}"
        found.append(error("tab-indent", place, message, "indent with spaces"))
    return text, found


def _start(found: re.Match[str]) -> int:
    return found.start()


def _control(found: re.Match[str], text: str, file: str) -> Finding:
    """The first of one control character, which tells of the others."""
    place, many = _place_after(text[: found.start()], file), text.count(found[0])
    if found[0] == "\r" and "\n" not in text:
        message = "all lines are one: they end as those of old computers did, in U+000D alone"
        return error("control-character", place, message, "save the file with usual line ends")
    if found[0] == "\0" and many > len(text) // 3:
        message = "the file is saved as UTF-16, and an entry is read as UTF-8"
        return error("not-utf8", place, message, "save the file as UTF-8")
    more = f", and {many - 1} more of it below" if many > 1 else ""
    message = f"{control_words(found[0])} stands here{more}"
    return error("control-character", place, message, "delete it")


def _place_after(text: str, file: str) -> Place:
    lines = text.split("\n")
    return Place(file, len(lines), len(lines[-1]) + 1)
