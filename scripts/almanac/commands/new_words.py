"""What the id of a new entry says of it: words of the vocabularies, and the family of a drill."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import PurePosixPath
from typing import Any

from almanac.findings import counted
from almanac.kinds import KIND
from almanac.model.load import Loaded
from almanac.model.vocabularies import KICK, LAND, VOCABULARY_OF, WALL
from almanac.source import schemas
from almanac.source.suggest import fold

ALIKE = ("mode", "stroke", "kick", "position")
"""By what drills of a family are alike."""
_FEW = 3  # of these that a drill shares, and its family takes in the new one
_LONGEST = 3  # words that the name of one word of a vocabulary has
_LONG = 5  # letters: a shorter word says too little of a mode


def words_said(kind: str, id: str, loaded: Loaded) -> dict[str, str]:
    """By field the word that an id names. Beside it stand the words that most drills with these
    have, else those by which the vocabulary says what they mean: butterfly goes with a dolphin
    kick on the front. Empty where the id names none.
    """
    own = {*schemas.fields(kind)} & {*ALIKE, "arms"}
    said = {name: word for name in (*ALIKE, "arms") if name in own
            for word in _words_in(id, name, loaded)}  # fmt: skip
    if "mode" in own and "mode" not in said:
        said |= dict(_mode_by_meaning(id, loaded))
    if not said:
        return {}
    alike = [data for _, data in _drills(loaded) if _agree(data, said) == len(said)]
    most = Counter(tuple(_word(data, name) for name in sorted(own)) for data in alike).most_common(
        1
    )
    usual = dict(zip(sorted(own), most[0][0], strict=True)) if most else {}
    for name in {*own} - {*said, *usual}:
        for field, word in said.items():
            meaning = fold(re.sub(r"[.,:;]", " ", _means(VOCABULARY_OF[field], word, loaded)))
            usual.update((name, it) for it in _words_in(meaning, name, loaded))
    return {**{name: str(word) for name, word in usual.items() if word}, **said}


def family_of(words: Mapping[str, Any], id: str, loaded: Loaded) -> str:
    """The family of a drill: one whose name stands in its id; else that of most of the drills that
    are most like it by its words; where none is like it, a new one by its kick or stroke. Work at
    the wall and on land stands apart.
    """
    apart = words.get("mode") if words.get("mode") in (WALL, LAND) else None
    drills = [own for own in _drills(loaded) if apart in (None, own[1].get("mode"))]
    named = [own for own, _ in drills if f"-{own}-" in f"-{id}-"]
    if named:
        return max(named, key=len)
    own = {name: words.get(name) for name in ALIKE}
    best = max((_agree(data, own) for _, data in drills), default=0)
    if best >= _FEW:
        many = Counter(family for family, data in drills if _agree(data, own) == best)
        return min(many, key=lambda family: (-many[family], family))
    mode = str(own["mode"])
    by_mode = {WALL: "walls", LAND: LAND, KICK: str(own["kick"])}
    return by_mode.get(mode, str(own["stroke"]))


def families(loaded: Loaded) -> dict[str, str]:
    """Every family of drills, and how many are in it."""
    many = Counter(family for family, _ in _drills(loaded))
    return {family: counted(many[family], "drill") for family in sorted(many)}


def _drills(loaded: Loaded) -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Each drill's family and what its file holds."""
    folder = KIND["drill"].files
    for (kind, _), document in loaded.documents.items():
        above = PurePosixPath(document.file).parent
        if kind == "drill" and "moved_to" not in document.data and above.as_posix() != folder:
            yield above.name, document.data


def _agree(data: Mapping[str, Any], words: Mapping[str, Any]) -> int:
    return sum(data.get(name) == word for name, word in words.items())


def _word(data: Mapping[str, Any], field: str) -> str:
    """The word of a field; "" where there is none, or something else."""
    return word if isinstance(word := data.get(field), str) else ""


def _words_in(text: str, field: str, loaded: Loaded) -> Iterator[str]:
    """The first word of a field that a text in the style of ids names, by any name of it."""
    pieces = text.split("-")
    for many in range(_LONGEST, 0, -1):
        for at in range(len(pieces) - many + 1):
            said = "-".join(pieces[at : at + many])
            for own in (said, said.replace("on-", "on-the-")):
                if word := loaded.names.by_name("vocabulary", VOCABULARY_OF[field], own):
                    yield word
                    return


def _mode_by_meaning(id: str, loaded: Loaded) -> Iterator[tuple[str, str]]:
    """The one mode of which the meaning has a word of the id: turns are work at the wall."""
    said = {piece.removesuffix("s") for piece in id.split("-") if len(piece) >= _LONG}
    found = [
        word
        for word in loaded.names.of("vocabulary", "modes")
        if said & {it.removesuffix("s") for it in re.findall(
            r"[a-z]+", _means("modes", word, loaded).lower())}
    ]  # fmt: skip
    if len(found) == 1:
        yield "mode", found[0]


def _means(vocabulary: str, word: str, loaded: Loaded) -> str:
    document = loaded.documents.get(("vocabulary", vocabulary))
    words = document.data.get("words", {}) if document else {}
    return str(words.get(word, {}).get("means", ""))
