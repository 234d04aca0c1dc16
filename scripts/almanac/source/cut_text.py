"""Texts that a comment cuts short: in YAML, `#` behind a blank begins one in any text without
quotes.

A comment behind a number, a list, a word of a vocabulary or an id stays one: nobody writes "#2" as
part of those. So does one that is set apart as comments are, `text  # why`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import yaml

from almanac.findings import Finding, Place, error
from almanac.source.edits.style import marked
from almanac.source.reader import Document
from almanac.source.scalars import in_quotes

_COMMENT = re.compile(r"\S[ \t]+#")
_SET_APART = re.compile(r" {2,}# +\S")
_FREE_TEXT = "minLength"  # of every text that is not taken from a list, and of those alone
_LONGEST_SHOWN = 120


def cut_texts(document: Document, kind: str) -> Iterator[tuple[Place, Finding]]:
    """An error for each text of an entry that a comment follows on its line, with the place of the
    text's value: whatever else is amiss there comes of it.
    """
    if "#" not in document.text or not _COMMENT.search(document.text):
        return
    lines = document.text.split("\n")
    for path in marked(document, kind, _FREE_TEXT):
        node = document.node(path)
        if isinstance(node, yaml.ScalarNode) and not node.style:
            for finding in _cut(node, lines, document.file):
                yield document.place(path), finding


def _cut(node: yaml.ScalarNode, lines: list[str], file: str) -> Iterator[Finding]:
    start, end = node.start_mark, node.end_mark
    line = lines[end.line]
    behind = line[end.column :].rstrip()
    if not behind.lstrip().startswith("#") or behind.startswith("#"):
        return
    if node.value and _SET_APART.match(behind):
        return
    blanks = 0 if node.value else len(behind) - len(behind.lstrip())
    place = Place(file, start.line + 1, start.column + blanks + 1)
    whole = line[start.column :].strip() if start.line == end.line else ""
    mend = "put the whole text in quotes"
    if whole and len(whole) <= _LONGEST_SHOWN and whole.isprintable():
        mend = f"write {in_quotes(whole)}"
    left = f"only '{node.value[-40:]}' is left" if node.value else "nothing is left"
    yield error(
        "cut-text",
        place,
        f"' #' begins a comment, so that {left} of this text",
        f"{mend}; or put the comment on a line of its own",
    )
