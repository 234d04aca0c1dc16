"""Texts as YAML scalars: the one place that knows how they are quoted."""

from __future__ import annotations

import json
import re

import yaml

_WORD = re.compile(r"[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*")
_NOT_TEXT = {"true", "false", "null", "yes", "no", "on", "off", "y", "n"}
"""Words that YAML, ours or another program's, may take for something else than a text."""


def in_quotes(text: str) -> str:
    """A text in quotation marks: double ones, or single ones where it holds a double one or a
    backslash, so that whoever reads the file sees the text as it is. What cannot be seen is
    escaped.
    """
    if not text.isprintable():
        return re.sub(r"[^ -~]", _escaped, json.dumps(text, ensure_ascii=False))
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"


def scalar(text: str) -> str:
    """A text as it may stand anywhere, in brackets too: a plain word or id as it is, every other
    in quotation marks.
    """
    is_plain = _WORD.fullmatch(text) and text.lower() not in _NOT_TEXT
    return text if is_plain else in_quotes(text)


def name(id: str) -> str:
    """An id as it may stand anywhere: in quotation marks only where YAML takes it for a number, a
    day or the like.
    """
    is_plain = yaml.safe_load(id) == id and id.lower() not in _NOT_TEXT
    return id if is_plain else in_quotes(id)


def _escaped(found: re.Match[str]) -> str:
    letter = found[0]
    return letter if letter.isprintable() else f"\\U{ord(letter):08x}"
