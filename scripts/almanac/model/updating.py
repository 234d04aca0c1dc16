"""A catalogue of an older form brought to the present one: what its files then hold, and what was
done, in numbers.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from almanac.model.bringing import Origin, bring
from almanac.model.catalogue import Key
from almanac.model.citations import cited_by
from almanac.model.closed import CLUB
from almanac.model.load import Loaded
from almanac.source.edits.style import span
from almanac.source.forms import FORM, form_of
from almanac.source.names import Names
from almanac.source.old_shapes import (
    CITATION,
    HAZARD,
    NOT_FOR,
    SPEED,
    STILL,
    OldShape,
    old_shapes,
)
from almanac.source.reader import DataPath, Document
from almanac.source.said.hazards import HazardsMeant
from almanac.source.to_present_form import Choices, to_present_form
from almanac.source.validate import Shapes

_HAZARDS = ("vocabulary", "hazards")


class NotUpdated(Exception):
    """Nothing was changed; the message says which file is in the way, and what to do."""


@dataclass
class Updated:
    """What files hold afterwards, and how many entries, dangers (and of these how many by a guess),
    lists of whom gear is not for, drawings that begin at rest, and citations (how many of them name
    an entry) are written anew;
    ``brought`` are the files of sources that came along.
    """

    texts: dict[str, str | None] = field(default_factory=dict)
    entries: int = 0
    hazards: int = 0
    guessed: int = 0
    lists: int = 0
    speeds: int = 0
    cited: int = 0
    uncited: int = 0
    brought: tuple[str, ...] = ()


def cites(documents: Mapping[Key, Document]) -> bool:
    """Whether an entry of an older form names a publication in words."""
    own = (document for document in documents.values() if not document.lent)
    return any(shape.sort == CITATION for document in own for shape in old_shapes(document))


def updating(loaded: Loaded, shelf: Loaded | None, origin: Origin) -> Updated:
    """All that leads to the present form. ``shelf`` is the catalogue that the program comes with,
    whose sources come along where an entry cites one. Raises NotUpdated and NotBrought.
    """
    _require_whole(loaded)
    documents = loaded.documents
    hazards = documents.get(_HAZARDS)
    words = hazards.data.get("words") if hazards else None
    meant = HazardsMeant(words if isinstance(words, dict) else {})
    known = {key: it for key, it in documents.items() if key[0] == "source"}
    shelved = dict(_that_fit(shelf, loaded.names)) if shelf else {}
    done, wanted = Updated(), dict[str, None]()
    is_effort = STILL in loaded.names.of("vocabulary", "efforts")
    for document in documents.values():
        shapes = [] if document.lent else list(old_shapes(document))
        shapes = [shape for shape in shapes if shape.sort != SPEED or not is_effort]
        if shapes:
            choices = _choices(document, shapes, meant, {**shelved, **known}, is_effort)
            text = to_present_form(document, choices)
            if text is None:
                raise NotUpdated(f"{document.file} cannot be written anew: mend it by hand")
            done.texts[document.file] = text
            wanted |= dict.fromkeys(id for own in choices.cited.values() for id in own.ids)
            _count(done, shapes, choices)
    done.entries = len(done.texts)
    new = [("source", id) for id in wanted if ("source", id) not in known]
    if shelf and new:
        files = bring(shelf, loaded.names, new, origin).files
        done.texts |= files
        done.brought = tuple(files)
    club = documents.get(CLUB)
    if club is not None and form_of(club.data) < FORM:
        done.texts[club.file] = _of_form(club)
    return done


def _require_whole(loaded: Loaded) -> None:
    read = {document.file for document in loaded.documents.values()}
    for finding in loaded.findings:
        file = finding.place.file
        if finding.is_error and file.endswith(".yml") and file not in read:
            raise NotUpdated(f"{file} cannot be read: mend it first ({finding.message})")


def _that_fit(shelf: Loaded, names: Names) -> Iterator[tuple[Key, Document]]:
    """The sources of a catalogue that need no word which another has not."""
    shapes = Shapes(names)
    for key, document in shelf.documents.items():
        if key[0] == "source" and shapes.check(document, "source").sound:
            yield key, document


def _choices(
    document: Document,
    shapes: Iterable[OldShape],
    meant: HazardsMeant,
    sources: Mapping[Key, Document],
    still_is_effort: bool,
) -> Choices:
    told: dict[DataPath, list[DataPath]] = {}  # by the list that they stand in
    cited = {}
    for shape in shapes:
        if shape.sort == HAZARD:
            told.setdefault(shape.path[:-2], []).append(shape.path)
        elif shape.sort == CITATION:
            cited[shape.path] = cited_by(_at(document, shape.path), sources)
    hazards: dict[DataPath, list[str]] = {}
    if told and meant.is_empty:
        raise NotUpdated(f"drills/vocabulary/hazards.yml has no words: {document.file} needs some")
    for within, paths in told.items():
        items = [_at(document, path[:-1]) for path in paths]
        every = [own for own in _at(document, within) if isinstance(own, dict)]
        taken = {str(own.get(HAZARD)) for own in every}
        sentences = [(own[HAZARD], str(own.get("control", ""))) for own in items]
        hazards |= zip(paths, meant.each(sentences, taken), strict=True)
    return Choices(hazards, cited, still_is_effort)


def _at(document: Document, path: DataPath) -> Any:
    value: Any = document.data
    for step in path:
        value = value[step]
    return value


def _count(done: Updated, shapes: Iterable[OldShape], choices: Choices) -> None:
    for words in choices.hazards.values():
        done.hazards += 1
        done.guessed += len(words) > 1
    for own in choices.cited.values():
        done.cited += 1
        done.uncited += not own.is_whole
    done.lists += sum(shape.sort == NOT_FOR for shape in shapes)
    done.speeds += sum(shape.sort == SPEED for shape in shapes)


def _of_form(club: Document) -> str:
    """The club's text with the present form said in it."""
    path: DataPath = ("form",)
    if "form" in club.data:
        start, end = span(club.text, club.node(path))
        return f"{club.text[:start]}{FORM}{club.text[end:]}"
    first = next(iter(club.data))
    line = club.place((first,), of_key=True).line - 1
    lines = club.text.split("\n")
    lines.insert(line, f"form: {FORM}" + ("\r" if lines[line].endswith("\r") else ""))
    return "\n".join(lines)
