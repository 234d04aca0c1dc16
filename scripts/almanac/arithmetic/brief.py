"""The brief: every hazard that a set or a practice gathers from all it uses, each once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from almanac.arithmetic.events import Rep
from almanac.frozen import quick
from almanac.model.catalogue import Key
from almanac.model.drill import Drill
from almanac.model.entry import Hazard
from almanac.model.gear import Gear
from almanac.model.policy import Vocabulary, Word
from almanac.model.vocabularies import GRAVITIES, HAZARDS

IN_FULL = 3
"""So many hazards, the gravest, are told in full; every other in one line. House preference."""


@quick
@dataclass(frozen=True)
class BriefSource:
    """An entry that names a hazard, by its kind and id, and what it adds of its own."""

    key: Key
    own: str
    control: str


@quick
@dataclass(frozen=True)
class BriefHazard:
    """A hazard: its word, what the vocabulary says of it, and all that it comes from."""

    hazard: str
    title: str
    gravity: str
    control: str
    sources: tuple[BriefSource, ...]

    @property
    def keys(self) -> tuple[Key, ...]:
        """What it comes from, each once, by kind and id: a drill may have the id of its gear."""
        return tuple(dict.fromkeys(source.key for source in self.sources))

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of what it comes from, each once."""
        return tuple(dict.fromkeys(id for _, id in self.keys))


def brief(
    key: Key,
    own: Iterable[tuple[Hazard, Key]],
    reps: Iterable[Rep],
    gear: Mapping[str, Gear],
    vocabularies: Mapping[str, Vocabulary],
) -> tuple[BriefHazard, ...]:
    """Hazards of the set or practice itself, of its starts, partners and teams, of its gear and of
    its drills, each once with all it comes from.

    The gravest come first, by the order of the gravities; of those alike, what the set or practice
    itself, whose ``key`` this is, names; then what comes from more. ``own`` holds what it and the
    sets of a practice name, each with the key of the entry that states it.
    """
    reps = tuple(reps)
    drills = {piece.drill.id: piece.drill for rep in reps for piece in rep.pieces}
    worn = {id: gear[id] for rep in reps for piece in rep.pieces for id in piece.gear}
    with_whom = {
        (hazard, ("vocabulary", words)): None
        for rep in reps
        for hazard, words in rep.item.manner.hazards
    }
    used: list[tuple[Hazard, Key]] = []
    carriers: list[Gear | Drill] = [*worn.values(), *drills.values()]
    for entry in carriers:
        used += [(hazard, entry.key) for hazard in entry.hazards]
    return gathered(key, (*own, *with_whom, *used), vocabularies)


def gathered(
    key: Key | None, named: Iterable[tuple[Hazard, Key]], vocabularies: Mapping[str, Vocabulary]
) -> tuple[BriefHazard, ...]:
    """Hazards, each with the key of the entry that names it, as a brief: each once, gravest first;
    of those alike first what the entry ``key`` names, then by how many name it.
    """
    sources: dict[str, dict[BriefSource, None]] = {}
    for hazard, of in named:
        source = BriefSource(of, hazard.own, hazard.control)
        sources.setdefault(hazard.hazard, {})[source] = None
    words = _words(vocabularies, HAZARDS)
    ranks = {gravity: rank for rank, gravity in enumerate(_words(vocabularies, GRAVITIES))}
    found = [_line(word, words.get(word), tuple(own)) for word, own in sources.items()]
    return tuple(
        sorted(
            found,
            key=lambda line: (
                ranks.get(line.gravity, len(ranks)),
                key not in line.keys,
                -len(line.sources),
            ),
        )
    )


def brief_of_all(
    briefs: Iterable[tuple[Key, Iterable[BriefHazard]]], vocabularies: Mapping[str, Vocabulary]
) -> tuple[BriefHazard, ...]:
    """The hazards of many sessions, each session given by its key and brief: each hazard once,
    gravest first, then by how many sessions hold it.
    """
    named = ((Hazard(line.hazard), key) for key, lines in briefs for line in lines)
    return gathered(None, named, vocabularies)


def _words(vocabularies: Mapping[str, Vocabulary], name: str) -> Mapping[str, Word]:
    return vocabularies[name].words if name in vocabularies else {}


def _line(hazard: str, word: Word | None, sources: tuple[BriefSource, ...]) -> BriefHazard:
    if word is None:
        return BriefHazard(hazard, hazard, "", "", sources)
    return BriefHazard(hazard, word.title, word.gravity, word.control, sources)
