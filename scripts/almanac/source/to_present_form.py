"""An entry's text in the present form. Comments, order, line ends and every byte that is not of an
older shape stay.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import yaml

from almanac.source.edits.style import span
from almanac.source.old_shapes import (
    CITATION,
    FROM_STILL,
    HAZARD,
    SPEED,
    OldShape,
    old_shapes,
)
from almanac.source.reader import DataPath, Document, read

GUESS = "a guess of almanac update"
UNWRITTEN = "No entry of this publication yet"
_PUBLISHED, _PRACTICE = "published", "common-practice"
_Edit = tuple[int, int, str]  # where it begins and ends in the text, and what then stands there


@dataclass(frozen=True)
class Cited:
    """The ids of the sources that a citation in words names, whether those are all of it, and
    whether a published claim may stand on them.
    """

    ids: tuple[str, ...] = ()
    is_whole: bool = False
    bears: bool = False


@dataclass(frozen=True)
class Choices:
    """What is to stand for a danger in a sentence (its word, then what else it might be) and for a
    publication in words, by where these stand; and whether the club calls an effort ``still``.
    """

    hazards: Mapping[DataPath, Sequence[str]] = field(default_factory=dict)
    cited: Mapping[DataPath, Cited] = field(default_factory=dict)
    still_is_effort: bool = False


def to_present_form(document: Document, choices: Choices) -> str | None:
    """The text with every older shape in the present one; None where it would not read back as just
    that.
    """
    text, data = document.text, copy.deepcopy(document.data)
    edits: list[_Edit] = []
    for shape in old_shapes(document):
        if shape.sort == SPEED and choices.still_is_effort:
            continue
        edits += _edits(document, shape, choices)
        _change(data, shape, choices)
    for start, end, new in sorted(edits, reverse=True):
        text = text[:start] + new + text[end:]
    again, _ = read(text.encode("utf-8"), document.file)
    return text if again is not None and again.data == data else None


def _edits(document: Document, shape: OldShape, choices: Choices) -> Iterator[_Edit]:
    if shape.sort == HAZARD:
        yield _named(document, shape.path, choices.hazards[shape.path])
    elif shape.sort == CITATION:
        yield from _cited(document, shape.path, choices.cited[shape.path])
    elif shape.sort == SPEED:
        yield from _from_still(document, shape.path)
    else:
        yield from _under_people(document, shape.path)


def _change(data: Any, shape: OldShape, choices: Choices) -> None:
    """The same change of the data."""
    if shape.sort == SPEED:
        data[shape.path[0]][FROM_STILL] = True
    for step in shape.path[:-1]:
        data = data[step]
    if shape.sort == HAZARD:
        data["own"], data[HAZARD] = data[HAZARD], choices.hazards[shape.path][0]
    elif shape.sort == CITATION:
        del data[CITATION]
        if ids := choices.cited[shape.path].ids:
            data["sources"] = list(ids)
        if not choices.cited[shape.path].bears and data.get("basis") == _PUBLISHED:
            data["basis"] = _PRACTICE
    elif shape.sort == SPEED:
        del data[0]
    else:
        data[shape.path[-1]] = {"people": data[shape.path[-1]]}


def _named(document: Document, path: DataPath, words: Sequence[str]) -> _Edit:
    """A danger's word before its sentence, which stands under ``own`` from now on."""
    key, _, above = _field(document, path)
    start, end = span(document.text, key)
    if above.flow_style:
        return start, end, f"hazard: {words[0]}, own"
    doubt = f"  # {GUESS}; or {', '.join(words[1:])}" if words[1:] else ""
    return start, end, f"hazard: {words[0]}{doubt}{_next_line(document, key)}own"


def _cited(document: Document, path: DataPath, cited: Cited) -> Iterator[_Edit]:
    """The ids of the sources; what is no entry yet stays in a comment, and bears nothing."""
    key, value, above = _field(document, path)
    start, (_, end) = span(document.text, key)[0], span(document.text, value)
    while document.text[end - 1].isspace():  # a folded text ends where the next line begins
        end -= 1
    words = " ".join(str(value.value).split())
    comment = f"# {UNWRITTEN}: {words}"
    named = f"sources: [{', '.join(cited.ids)}]"
    if cited.is_whole:
        yield start, end, named
    elif not above.flow_style:
        first = f"{named}{_next_line(document, key)}" if cited.ids else ""
        yield start, end, f"{first}{comment}"
    else:
        yield _piece(document, start, end) if not cited.ids else (start, end, named)
        line_end = _line_end(document.text, span(document.text, above)[1])
        yield line_end, line_end, f"{_next_line(document, above)}{comment}"
    basis = next((own for name, own in above.value if name.value == "basis"), None)
    if not cited.bears and basis is not None and basis.value == _PUBLISHED:
        yield (*span(document.text, basis), _PRACTICE)


def _under_people(document: Document, path: DataPath) -> Iterator[_Edit]:
    """A list of whom gear is not for, under ``people``."""
    _, value, _ = _field(document, path)
    assert isinstance(value, yaml.SequenceNode)
    start, end = span(document.text, value)
    if value.flow_style:
        yield start, end, f"{{people: {document.text[start:end]}}}"
        return
    assert value.start_mark is not None
    end = span(document.text, value.value[-1])[1]  # what follows it may be a comment on the next
    first = line = document.text.rindex("\n", 0, start) + 1
    deeper = " " * (4 - value.start_mark.column)
    while 0 < line < end:
        if document.text[line:].partition("\n")[0].strip():
            head = f"  people:{_new_line(document)}" if line == first else ""
            yield line, line, f"{head}{deeper}"
        line = document.text.find("\n", line) + 1


def _from_still(document: Document, path: DataPath) -> Iterator[_Edit]:
    """A drawing's speeds without the first, and that it begins at rest."""
    key, value, above = _field(document, path[:-1])
    assert isinstance(value, yaml.SequenceNode)
    start = span(document.text, key)[0]
    apart = ", " if above.flow_style else _next_line(document, key)
    yield start, start, f"{FROM_STILL}: true{apart}"
    yield span(document.text, value.value[0])[0], span(document.text, value.value[1])[0], ""


def _field(document: Document, path: DataPath) -> tuple[yaml.Node, yaml.Node, yaml.MappingNode]:
    """A field's key and value, and the fields that it is one of."""
    above = document.node(path[:-1])
    assert isinstance(above, yaml.MappingNode)
    key, value = next(own for own in above.value if own[0].value == path[-1])
    return key, value, above


def _new_line(document: Document) -> str:
    return "\r\n" if "\r\n" in document.text else "\n"


def _next_line(document: Document, node: yaml.Node) -> str:
    assert node.start_mark is not None
    return _new_line(document) + " " * node.start_mark.column


def _line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    end = len(text) if end < 0 else end
    return end - 1 if text[end - 1 : end] == "\r" else end


def _piece(document: Document, start: int, end: int) -> _Edit:
    """A field in brackets taken out, with the comma that parts it from the next or the last."""
    text = document.text
    after = end
    while text[after].isspace():
        after += 1
    if text[after] == ",":
        after += 1
        while text[after] == " ":
            after += 1
        return start, after, ""
    before = start
    while text[before - 1].isspace():
        before -= 1
    return (before - 1 if text[before - 1] == "," else before), end, ""
