"""What a change lets happen that was not let before: dangers no longer told, limits and doses
raised, findings accepted.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from difflib import SequenceMatcher
from typing import Any

from almanac.model.catalogue import Key
from almanac.model.compare import EntryChange, had_none
from almanac.model.vocabularies import BELOW, BLACKOUT, DONE
from almanac.source.looser import Guard, guarded_vocabularies, guards
from almanac.source.reader import DataPath, Document
from almanac.units import TimeError, parse_time

GONE, ACCEPTED, LOOSER, OTHER = "gone", "accepted", "looser", "other"
STEPS = "steps"
_REWORDED = 0.6  # two texts with at least this share of letters in common are one, reworded
_MOST_PAIRS, _MOST_LETTERS = 400, 400  # no list of an entry is so long; what is broken may be


@dataclass(frozen=True)
class Loosened:
    """One thing that a reviewer must not miss.

    ``sort`` is ``gone`` (a danger or another guard that no longer stands), ``accepted`` (a finding
    that is accepted from now on, or otherwise), ``looser`` (a limit or a dose that lets more
    happen) or ``other`` (a guard that is worded otherwise). ``before`` and ``after`` are None where
    nothing stands. ``hazard`` is what the vocabulary said of a danger's word.
    """

    sort: str
    kind: str
    id: str
    file: str
    path: DataPath
    before: Any
    after: Any
    hazard: Mapping[str, Any] = field(default_factory=dict)


Documents = Mapping[Key, Document]


def loosened(changes: Iterable[EntryChange], before: Documents, after: Documents) -> list[Loosened]:
    """All that a change loosens: the gravest sort first, of dangers the gravest first. Documents
    need not be sound.
    """
    sorts = (GONE, LOOSER, ACCEPTED, OTHER)
    listed = before.get(("vocabulary", "gravities"))
    grave = list(map(str, listed.data.get("words") or ())) if listed else []

    def order(one: Loosened) -> tuple[int, bool, int]:
        gravity = str(one.hazard.get("gravity"))
        place = (
            grave.index(gravity) if gravity in grave else -1
        )  # one that is not known comes first
        return sorts.index(one.sort), not is_danger(one.before), place

    found = [one for change in changes for one in _of_entry(change, before, after)]
    found += _of_words(before, after)
    return sorted((replace(one, hazard=_word(one, before)) for one in found), key=order)


def _of_entry(change: EntryChange, before: Documents, after: Documents) -> Iterator[Loosened]:
    key = change.kind, change.id
    stub = (change.kind, change.moved_from) if change.what == "moved" else key
    is_other = change.what == "removed" or (
        stub in before.keys() - {key} and not had_none(key, before)
    )
    old, new = before.get(stub) or before.get(key), after.get(key)
    if change.what == "unreadable":  # the finding on it says that nothing of it is known
        return
    was = guards(change.kind, old.data) if old else {}
    now = guards(change.kind, new.data) if new else {}
    for path in dict.fromkeys([*was, *now]):
        if not old and now[path].way == "any":
            continue  # of an entry that is new, nothing stood
        for sort, one, other in _of_guard(was.get(path), now.get(path), after):
            if not is_other or (sort == GONE and _is_said(one)):
                yield Loosened(sort, change.kind, change.id, change.file, path, one, other)
    is_drill = change.kind == "drill"
    if old and new and is_drill and (_is_under(old, before) or _is_under(new, after)):
        for sort, one, other in _of_steps(_items(old.data.get(STEPS)), _items(new.data.get(STEPS))):
            yield Loosened(sort, change.kind, change.id, change.file, (STEPS,), one, other)


def _is_under(drill: Document, documents: Documents) -> bool:
    """Whether a drill goes under water, by whatever it says of that."""
    data, listed = drill.data, documents.get(("vocabulary", "modes"))
    words = listed.data.get("words") if listed else None
    mode = str(data.get("mode"))
    own = words.get(mode) if isinstance(words, Mapping) else None
    done = own.get("done") if isinstance(own, Mapping) else None
    hazards = [own.get("hazard") for own in _items(data.get("safety")) if isinstance(own, Mapping)]
    is_mode = BELOW in (done, DONE.get(mode))
    return is_mode or "under_water" in data or BLACKOUT in hazards


def _of_steps(old: list[Any], new: list[Any]) -> Iterator[Told]:
    """Steps that go, are worded otherwise, or come: under water each of them is a guard."""
    gone = [step for step in old if step not in new]
    come = [step for step in new if step not in old]
    pairs = _pairs(gone, come)
    for number, step in enumerate(gone):
        yield (OTHER, step, come[pairs[number]]) if number in pairs else (GONE, step, None)
    yield from ((OTHER, None, step) for n, step in enumerate(come) if n not in pairs.values())


def _of_words(before: Documents, after: Documents) -> Iterator[Loosened]:
    """The words of each vocabulary that guards take theirs from, in their order: a word that is
    new, or stands elsewhere, can leave limits behind that go by words.
    """
    for name in sorted(guarded_vocabularies()):
        key = "vocabulary", name
        if key in before and key in after:
            listed = [side[key].data.get("words") for side in (before, after)]
            old, new = (list(map(str, own)) if isinstance(own, Mapping) else [] for own in listed)
            if old != new:
                words = ", ".join(old), ", ".join(new)
                yield Loosened(OTHER, *key, after[key].file, ("words",), *words)


def _is_said(item: Any) -> bool:
    """Whether an item says something by itself. Of an entry that is removed, or replaced by
    another, ids and numbers are no loss; a danger of which nobody is told any more is.
    """
    values = item.values() if isinstance(item, Mapping) else (item,)
    return is_danger(item) or any(isinstance(value, str) and " " in value for value in values)


def is_danger(value: Any) -> bool:
    """Whether an item of a list is a hazard with what is done about it."""
    return isinstance(value, Mapping) and "hazard" in value


def _word(one: Loosened, documents: Documents) -> Mapping[str, Any]:
    """What the vocabulary says of the hazard that an item names; nothing where it names none."""
    listed = documents.get(("vocabulary", "hazards"))
    words = listed.data.get("words") if listed and is_danger(one.before) else None
    word = words.get(str(one.before["hazard"])) if isinstance(words, Mapping) else None
    return word if isinstance(word, Mapping) else {}


Told = tuple[str, Any, Any]


def _of_guard(was: Guard | None, now: Guard | None, words: Documents) -> Iterator[Told]:
    guard = now or was
    assert guard is not None
    old, new = was.value if was else None, now.value if now else None
    if guard.way == "neither" or old == new:
        return
    if isinstance(old, list) or isinstance(new, list):
        yield from _of_lists(guard.way, _items(old), _items(new))
    elif old is None:
        if guard.way == "any":
            yield OTHER, None, new
        return  # else a limit where none was
    elif guard.way in ("other", "any"):
        yield (GONE if new is None else OTHER, old, new)
    elif new is None:
        yield GONE, old, None
    else:
        one, other = (_size(value, guard.vocabulary, words) for value in (old, new))
        if one is None or other is None or _unit(old) != _unit(new):
            yield OTHER, old, new
        elif (other > one) if guard.way == "more" else (other < one):
            yield LOOSER, old, new


def _of_lists(way: str, old: list[Any], new: list[Any]) -> Iterator[Told]:
    """Items that go where fewer is looser, and items that come where more is."""
    gone = [item for item in old if item not in new]
    come = [item for item in new if item not in old]
    pairs = _pairs(gone, come)
    if way == "more":
        for number, item in enumerate(come):
            earlier = next((one for one, other in pairs.items() if other == number), None)
            yield ACCEPTED, None if earlier is None else gone[earlier], item
        return
    for number, item in enumerate(gone):
        if number in pairs:
            yield OTHER, item, come[pairs[number]]
        else:
            yield GONE, item, None


def _pairs(gone: list[Any], come: list[Any]) -> dict[int, int]:
    """Which item that goes is which item that comes, worded otherwise: of the same name, else the
    one most alike.
    """
    pairs: dict[int, int] = {}
    if len(gone) * len(come) > _MOST_PAIRS:
        return pairs
    for number, item in enumerate(gone):
        shares = [
            (_likeness(item, other), -place)
            for place, other in enumerate(come)
            if place not in pairs.values()
        ]
        share, place = max(shares, default=(0.0, 0))
        if share >= _REWORDED:
            pairs[number] = -place
    return pairs


def _likeness(one: Any, other: Any) -> float:
    """From 0 to 1; 2 where both are of one name, and two names are never alike."""
    if isinstance(one, str) and " " not in one:
        return 0.0
    for key in ("hazard", "check", "job"):
        if isinstance(one, dict) and isinstance(other, dict) and " " not in str(one.get(key, " ")):
            return 2.0 if one[key] == other.get(key) else 0.0
    old, new = (json.dumps(item, default=str)[:_MOST_LETTERS] for item in (one, other))
    return SequenceMatcher(None, old, new, autojunk=False).ratio()


def _items(value: Any) -> list[Any]:
    if value is None:
        return []
    return value if isinstance(value, list) else [value]


def _size(value: Any, vocabulary: str, words: Documents) -> float | None:
    """A value as a number: of a limit its value, of a span its end, a time in seconds, a word by
    its place in its vocabulary; None where it has no size.
    """
    if isinstance(value, Mapping):
        return _size(value.get("value", value.get("to")), vocabulary, words)
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        return None
    if vocabulary:
        listed = words.get(("vocabulary", vocabulary))
        known = list(listed.data.get("words") or ()) if listed else []
        return float(known.index(value)) if value in known else None
    try:
        return parse_time(value) if isinstance(value, str) else float(value)
    except TimeError:
        return None


def _unit(value: Any) -> Any:
    return value.get("unit") if isinstance(value, Mapping) else None
