"""The tree of one file as plain data, and what is amiss with its keys, numbers and texts."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import cached_property
from typing import Any

import yaml

from almanac.findings import Finding, Place, error
from almanac.source.said.bare_times import of_a_day
from almanac.source.scalars import in_quotes
from almanac.source.stream import DEEPEST
from almanac.source.syntax.as_written import (
    Lines,
    Slip,
    of_block,
    of_brackets,
    of_plain,
    of_quoted,
)
from almanac.source.syntax.slips import field_names

CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\r(?!\n)"
)
# What has no shape of its own: all of Unicode's Default_Ignorable_Code_Point, and the empty cell of
# braille. With blanks and control characters, nothing of a text of these can be seen.
_SHAPELESS = (
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f\u200b-\u200f\u202a-\u202e\u2060-\u206f\u2800"
    "\u3164\ufe00-\ufe0f\ufeff\uffa0\ufff0-\ufffb\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e0fff"
)
_UNSEEN = re.compile(rf"[\s\x00-\x1f\x7f-\x9f{_SHAPELESS}]+")
_MAY_LACK_SPACE = re.compile(r"""["'\]}]#""")
# In brackets the parser takes a question mark for one that stands before a key, and drops it.
_ONE_OF_TWO = "keep one of the two"
_MAY_BE_DROPPED = re.compile(r"[\[{,]\s*\?")
_BEFORE_KEY = re.compile(r"\?[ ]*$")
_INTEGER = re.compile(r"[-+]?(0|[1-9][0-9]*)")
_BEGIN_NUMBERS = frozenset("+-0123456789")
_DECIMAL = re.compile(r"[-+]?(0|[1-9][0-9]*)\.[0-9]+")
_IN_CURLY = re.compile(r"[“„‘«]([^“”„‘’«»]*)[”“’»]")
_WORDS: dict[str, Any] = {"true": True, "false": False, "null": None, "~": None, "": None}
_LONGEST_NUMBER = 15
_NAME = re.compile(r"[a-z_-]+")


def _seen(text: str) -> str:
    return "".join(char for char in text if char.isprintable())


def _is_behind_comma(node: yaml.MappingNode, key: yaml.ScalarNode, value: yaml.Node) -> bool:
    is_empty = isinstance(value, yaml.ScalarNode) and not value.value and not value.style
    return bool(node.flow_style and is_empty and key.value[:1].isdigit())


def control_words(char: str) -> str:
    """A control character for the beginning of a sentence."""
    name = unicodedata.name(char, "").lower()
    return f"a control character, U+{ord(char):04X}{f' ({name})' if name else ''},"


class Builder:
    """Turns composed nodes into plain data and gathers findings on the way."""

    def __init__(self, file: str, text: str) -> None:
        self.file, self._text = file, text
        self.findings: list[Finding] = []
        self.is_unsound = False  # what is read is surely not what was meant
        # A look at the whole text spares nearly every file a look at each node.
        self._may_be_dropped = "?" in text and _MAY_BE_DROPPED.search(text) is not None
        self._may_lack_space = "#" in text and _MAY_LACK_SPACE.search(text) is not None

    def value(self, node: yaml.Node, depth: int = 0, indent: int = -1) -> Any:
        """The data of a node in a block that begins ``indent`` columns in."""
        if isinstance(node, yaml.ScalarNode):
            if node.style:
                self._written(node, indent)
                return node.value
            return self._plain(node)
        if depth == DEEPEST:
            self._say(
                "too-deep",
                node,
                f"nested more than {DEEPEST} deep",
                "flatten it: an entry never needs as much",
            )
            return None
        assert isinstance(node, yaml.CollectionNode)
        if node.flow_style:
            if self._may_lack_space or node.start_mark.line != node.end_mark.line:
                self._tell(of_brackets(node, self._lines, indent))
        else:
            indent = node.start_mark.column
        if isinstance(node, yaml.MappingNode):
            return dict(self._pairs(node, depth + 1, indent))
        return [self.value(item, depth + 1, indent) for item in node.value]

    def place(self, node: yaml.Node) -> Place:
        """Where a node begins."""
        return Place(self.file, node.start_mark.line + 1, node.start_mark.column + 1)

    @cached_property
    def _lines(self) -> Lines:
        return self._text.split("\n")

    def _written(self, node: yaml.ScalarNode, indent: int) -> None:
        """A text in quotes or in a block: what is written must be what is read."""
        if node.style in {"|", ">"}:
            self._tell(of_block(node, self._lines, indent))
        elif self._may_lack_space or node.start_mark.line != node.end_mark.line:
            self._tell(of_quoted(node, self._lines, indent))
        if _UNSEEN.fullmatch(node.value):
            self._unseen(node)
        # characters that were written as escapes, past the look at the file's own text
        hidden = node.style == '"' and (CONTROL.search(node.value) or re.search("\r", node.value))
        if hidden:
            self._say(
                "control-character",
                node,
                f"{control_words(hidden[0])} is written in this text",
                "a backslash in double quotes begins a code: write two, or use single quotes",
            )

    def _plain(self, node: yaml.ScalarNode) -> Any:
        text: str = node.value
        if text in _WORDS:
            return _WORDS[text]
        is_number = text[0] in _BEGIN_NUMBERS
        is_integer = is_number and _INTEGER.fullmatch(text) is not None
        if not is_integer and not (is_number and _DECIMAL.fullmatch(text)):
            if not text.isascii():
                self._odd(node)
            if " - " in text and node.start_mark.line != node.end_mark.line:
                slips = list(of_plain(node, self._lines))
                self.is_unsound = self.is_unsound or bool(slips)
                self._tell(iter(slips))
            return text
        if len(text) > _LONGEST_NUMBER:
            typed = of_a_day(float(text))
            first = (
                f"write {typed} if it is a time from a spreadsheet; else " if typed else "write "
            )
            hint = f"{first}at most {_LONGEST_NUMBER}, or put text in quotes"
            self._say("long-number", node, f"a number of {len(text)} characters", hint)
            return 0
        return int(text) if is_integer else float(text)

    def _odd(self, node: yaml.ScalarNode) -> None:
        """A text of which nothing is seen, or one between quotation marks that are none here."""
        if _UNSEEN.fullmatch(node.value):
            self._unseen(node)
        elif found := _IN_CURLY.fullmatch(node.value):
            message = "curly quotation marks are no quotes here: they would be part of the text"
            mend = (
                f"write {in_quotes(found[1])}" if found[1].isprintable() else "write straight ones"
            )
            self._say("yaml-syntax", node, message, mend)

    def _pairs(self, node: yaml.MappingNode, depth: int, indent: int) -> Iterator[tuple[str, Any]]:
        first: dict[str, yaml.Node] = {}
        if node.flow_style and self._may_be_dropped:
            self._dropped(node)
        for key, value in node.value:
            if node.flow_style and isinstance(key, yaml.MappingNode):
                self.is_unsound = True
                message = "double braces hold no text, and nothing is filled in here"
                self._say("bad-key", key, message, "write the text itself, without braces")
            elif not isinstance(key, yaml.ScalarNode) or (
                not key.style and key.value in {"", "null", "~"}
            ):
                self._say(
                    "bad-key",
                    key,
                    "a key must be a word",
                    "write the field's name before the colon",
                )
            elif (seen := _seen(key.value)) != key.value and _NAME.fullmatch(seen):
                message = "this name has a character that cannot be seen"
                self._say("bad-key", key, message, f"write {seen} anew")
                yield seen, self.value(value, depth, indent)
            elif not key.value.isprintable():
                self._say(
                    "bad-key",
                    key,
                    "a key must be plain words on one line",
                    "write the field's name before the colon",
                )
            elif key.value == "<<" and not key.style:
                self._say(
                    "merge-key", key, "merge keys ('<<') are not used here", "write the fields out"
                )
            elif key.value in first and _is_behind_comma(node, key, value):
                continue  # of a second decimal comma in brackets: told at the first
            elif key.value in first:
                line = first[key.value].start_mark.line + 1
                other = key.start_mark.line + 1
                message = f"'{key.value[:60]}' is given twice, first on line {line}"
                hint = f"keep one of line {line} and line {other}" if line != other else _ONE_OF_TWO
                if isinstance(value, yaml.MappingNode) and key.value not in field_names():
                    hint += ", or give one of them another name"
                self._say("duplicate-key", key, message, hint)
            else:
                first[key.value] = key
                yield key.value, self.value(value, depth, indent)

    def _dropped(self, node: yaml.MappingNode) -> None:
        """Question marks before the keys of a mapping in brackets."""
        for key, _ in node.value:
            mark = key.start_mark
            before = _BEFORE_KEY.search(self._lines[mark.line], 0, mark.column)
            if before:
                at = (mark.line, before.start())
                self._tell(iter([(at, "'?' cannot begin a text here", "put the text in quotes")]))

    def _unseen(self, node: yaml.ScalarNode) -> None:
        message = "nothing can be seen in this text: it is blanks, or characters without a shape"
        self._say("blank-text", node, message, "write the text, or take the field out")

    def _tell(self, slips: Iterator[Slip]) -> None:
        for (line, column), message, hint in slips:
            place = Place(self.file, line + 1, column + 1)
            self.findings.append(error("yaml-syntax", place, message, hint))

    def _say(self, code: str, node: yaml.Node, message: str, hint: str) -> None:
        self.findings.append(error(code, self.place(node), message, hint))
