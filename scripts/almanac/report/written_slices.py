"""An entry's file cut up by its keys and the parts of its list, word for word, so that a changed
one keeps what was not changed, comments and all.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.source.reader import Document

_INDENT = 2  # of the dash of a part, as entries are written


def of_keys(document: Document) -> Iterator[tuple[str, str]]:
    """Each key of an entry with its lines, in the order of the file; what is said above a key is
    its own.
    """
    lines = document.text.splitlines()
    begins = [_begin(lines, document.place((key,), of_key=True).line - 1) for key in document.data]
    begins = [0, *begins[1:]]
    for key, start, end in zip(document.data, begins, [*begins[1:], len(lines)], strict=True):
        yield key, _text(lines[start:end])


def above(text: str) -> str:
    """Of the lines of a key what is said above it."""
    lines = text.splitlines()
    return _text(lines[: next(at for at, line in enumerate(lines) if _is_said(line))])


def of_parts(document: Document, key: str) -> list[str] | None:
    """The lines of each thing of a list, its dash two blanks in, with what is said above it; None
    where the list does not stand a thing a line.
    """
    node = document.node((key,))
    if getattr(node, "flow_style", True):
        return None
    lines = document.text.splitlines()
    starts = [own.start_mark.line for own in node.value]
    if any(not lines[start].lstrip().startswith("- ") for start in starts):
        return None
    begins = [_begin(lines, start) for start in starts]
    text = dict(of_keys(document))[key]
    last = _begin(lines, document.place((key,), of_key=True).line - 1) + len(text.splitlines())
    shift = _INDENT - (len(lines[starts[0]]) - len(lines[starts[0]].lstrip()))
    return [
        _text([_shifted(line, shift) for line in lines[start:end]])
        for start, end in zip(begins, [*begins[1:], last], strict=True)
    ]


def _begin(lines: Sequence[str], start: int) -> int:
    """Where what begins in a line really begins: with the comments above it."""
    while start and not _is_said(lines[start - 1]):
        start -= 1
    return start


def _is_said(line: str) -> bool:
    """Whether a line is neither blank nor a comment."""
    return bool(line.strip()) and not line.lstrip().startswith("#")


def _shifted(line: str, by: int) -> str:
    """A line so many blanks further in; further out by no more than it has."""
    blanks = len(line) - len(line.lstrip())
    return " " * max(0, blanks + by) + line[blanks:] if line.strip() else line


def _text(lines: Sequence[str]) -> str:
    return "".join(f"{line}\n" for line in lines)
