"""YAML that the parser lets pass though the standard forbids it, and that reads otherwise than it
looks: lines that begin too far out, and comments without a space before them.

The cases 9C9N, QB6E, S98Z, SU5Z and X4QW of the YAML test suite are of this sort.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import yaml

from almanac.findings import counted

Lines = Sequence[str]
Slip = tuple[tuple[int, int], str, str]  # line and column from 0, what is wrong, the mend

_BEFORE_PLAIN = re.compile(r"\s*(?:-\s+)*(?:-|[a-z_]+:)\s+")
_HEADER = re.compile(r"[|>][-+0-9]*#")


def of_plain(node: yaml.ScalarNode, lines: Lines) -> Iterator[Slip]:
    """A text without quotes on several lines, one of which looks like an item of a list."""
    start = node.start_mark
    if not _BEFORE_PLAIN.fullmatch(lines[start.line][: start.column]):
        return
    for number in range(start.line + 1, node.end_mark.line + 1):
        line = lines[number]
        column = len(line) - len(line.lstrip())
        if line.startswith("- ", column):
            message = "this line goes on with the text above it, because it begins further in"
            yield (number, column), message, "line its dash up with the dashes of its list"
            return


def of_quoted(node: yaml.ScalarNode, lines: Lines, indent: int) -> Iterator[Slip]:
    """A text in quotation marks in a block that begins ``indent`` columns in."""
    yield from _comment_without_space(node, lines, "closing quotation mark")
    yield from _too_far_out(node, lines, indent, "text in quotation marks")


def of_brackets(node: yaml.CollectionNode, lines: Lines, indent: int) -> Iterator[Slip]:
    """A list or mapping in brackets in a block that begins ``indent`` columns in."""
    yield from _comment_without_space(node, lines, "closing bracket")
    yield from _too_far_out(node, lines, indent, "bracket")


def of_block(node: yaml.ScalarNode, lines: Lines, indent: int) -> Iterator[Slip]:
    """A text in lines of its own, behind ``|`` or ``>``."""
    start = node.start_mark
    header = _HEADER.match(lines[start.line], start.column)
    if header:
        yield _no_space((start.line, header.end() - 1), f"'{lines[start.line][start.column]}'")
    if node.value.strip():
        return
    for number in range(start.line + 1, len(lines)):
        line = lines[number].rstrip()
        if not line.strip():
            continue
        column = len(line) - len(line.lstrip())
        if column > indent and line[column] == "#":
            message = (
                "the text is empty, and this line, which could be its first, is read as a comment"
            )
            yield (
                (number, column),
                message,
                "take the blanks out of the empty lines above it",
            )
        return


def _comment_without_space(node: yaml.Node, lines: Lines, what: str) -> Iterator[Slip]:
    end = node.end_mark
    if end.line < len(lines) and lines[end.line][end.column : end.column + 1] == "#":
        yield _no_space((end.line, end.column), f"the {what}")


def _no_space(at: tuple[int, int], what: str) -> Slip:
    message = f"'#' follows {what} without a space"
    return at, message, "write a space before a comment, or put the '#' into the text"


def _too_far_out(node: yaml.Node, lines: Lines, indent: int, what: str) -> Iterator[Slip]:
    """The first line that goes on with a node, and begins no further in than the block that it
    stands in.
    """
    first, last = node.start_mark.line, node.end_mark.line
    for number in range(first + 1, last + 1):
        line = lines[number]
        column = len(line) - len(line.lstrip())
        is_text = line.strip() and (isinstance(node, yaml.ScalarNode) or line[column] != "#")
        if is_text and column <= indent:
            message = (
                f"this line goes on with the {what} of line {first + 1}, and begins too far out"
            )
            yield (
                (number, column),
                message,
                f"write at least {counted(indent + 1, 'space')} before it",
            )
            return
