"""Words of vocabularies in a catalogue on disk: where each is used, and how to put another there.

The places are found by walking the schemas for their ``vocabulary`` keywords, so that a vocabulary
or a field that comes later is walked, too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from almanac.model.load import Loaded
from almanac.source import schemas
from almanac.source.reader import DataPath, Document


@dataclass(frozen=True)
class Use:
    """A word where an entry uses it: the schema's piece, and the place in the file (both from
    0).
    """

    kind: str
    entry: str
    path: DataPath
    of_key: bool
    piece: int
    vocabulary: str
    word: str
    file: str
    line: int
    column: int

    @property
    def where(self) -> tuple[str, ...]:
        """The field, whichever entry, item or key it is in."""
        steps = tuple(step for step in self.path if isinstance(step, str))
        return (self.kind, *(steps[:-1] if self.of_key else steps))


_found: dict[tuple[str, str, str], list[Use]] = {}  # by kind, file and text


def uses(loaded: Loaded) -> list[Use]:
    """Every word of a vocabulary that an entry uses, once for each place in a file."""
    return [
        use
        for (kind, id), document in loaded.documents.items()
        for use in _uses_in(kind, id, document)
    ]


def _uses_in(kind: str, id: str, document: Document) -> list[Use]:
    """Most files of one changed copy stand in the next, too: each is looked through once."""
    key = (kind, document.file, document.text)
    if key not in _found:
        root, at = schemas.bundled(kind), {}
        for piece, path, of_key, word in _walk(root, root, document.data, (), False):
            place = document.place(path, of_key)
            where = (document.file, place.line - 1, place.column - 1)
            at[where] = Use(kind, id, path, of_key, id_of(piece), piece["vocabulary"], word, *where)
        _found[key] = list(at.values())
    return _found[key]


def id_of(piece: Mapping[str, Any]) -> int:
    """What tells a piece of a schema from others: bundled schemas are made once."""
    return id(piece)


def offered(kind: str) -> Iterator[Mapping[str, Any]]:
    """Every piece of a kind's schema that takes a word of a vocabulary."""

    def walk(piece: Any) -> Iterator[Mapping[str, Any]]:
        if isinstance(piece, list):
            for item in piece:
                yield from walk(item)
        elif isinstance(piece, dict):
            if isinstance(piece.get("vocabulary"), str):
                yield piece
            for value in piece.values():
                yield from walk(value)

    return walk(schemas.bundled(kind))


def _walk(
    piece: Any, root: Any, data: Any, path: DataPath, of_key: bool
) -> Iterator[tuple[Any, DataPath, bool, str]]:
    if not isinstance(piece, dict):
        return
    if isinstance(piece.get("vocabulary"), str) and isinstance(data, str):
        yield piece, path, of_key, data
    if "$ref" in piece:
        yield from _walk(root["$defs"][piece["$ref"].rpartition("/")[2]], root, data, path, of_key)
    for keyword in ("then", "else"):
        yield from _walk(piece.get(keyword), root, data, path, of_key)
    if isinstance(data, list):
        for number, item in enumerate(data):
            yield from _walk(piece.get("items"), root, item, (*path, number), False)
    if isinstance(data, dict):
        for key, value in data.items():
            own = piece.get("properties", {}).get(key, piece.get("additionalProperties"))
            yield from _walk(own, root, value, (*path, key), False)
            yield from _walk(piece.get("propertyNames"), root, key, (*path, key), True)


def put(root: Path, changes: Iterable[tuple[Use, str]]) -> None:
    """Write other words in the places of these, below a root."""
    for use, word in sorted(changes, key=lambda change: (change[0].file, -change[0].column)):
        file = root / use.file
        lines = file.read_text("utf-8").splitlines(keepends=True)
        line, end = lines[use.line], use.column + len(use.word)
        assert line[use.column : end] == use.word, (use, line)
        lines[use.line] = line[: use.column] + word + line[end:]
        file.write_text("".join(lines), "utf-8")


def define(root: Path, vocabulary: str, line: str, after: str = "") -> None:
    """Add a word's line to a vocabulary: below the word ``after``, else at the end."""
    file = root / f"drills/vocabulary/{vocabulary}.yml"
    lines = file.read_text("utf-8").splitlines()
    number = next(
        (n for n, own in enumerate(lines) if own.startswith(f"  {after}:")), len(lines) - 1
    )
    lines.insert(number + 1, f"  {line}")
    file.write_text("\n".join(lines) + "\n", "utf-8")


def without(root: Path, documents: Mapping[tuple[str, str], Document], field: str) -> None:
    """Take a top-level field out of every entry, below a root."""
    for document in documents.values():
        if field in document.data:
            file = root / document.file
            lines = file.read_text("utf-8").splitlines(keepends=True)
            first = document.place((field,), of_key=True).line - 1
            last = first + 1
            while last < len(lines) and lines[last].startswith(" "):
                last += 1
            file.write_text("".join(lines[:first] + lines[last:]), "utf-8")
