"""What a change lets happen that was not let before: dangers no longer told, limits and doses
raised, findings accepted.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from almanac.model.compare import EntryChange
from almanac.model.guard_changes import (
    ACCEPTED,
    GONE,
    LOOSER,
    OTHER,
    Documents,
    items_of,
    of_guard,
    of_steps,
)
from almanac.model.vocabularies import BELOW, BLACKOUT, DONE
from almanac.source.looser import guarded_vocabularies, guards
from almanac.source.reader import DataPath, Document

STEPS = "steps"


@dataclass(frozen=True)
class Loosened:
    """One thing that a reviewer must not miss.

    ``sort`` is ``gone`` (a danger or another guard that no longer stands), ``accepted`` (a finding
    that is accepted from now on, or otherwise), ``looser`` (a limit or a dose that lets more
    happen) or ``other`` (a guard that is worded otherwise). ``before`` and ``after`` are None where
    nothing stands. ``hazard`` is what the vocabulary said of a danger's word; ``successor`` the id
    that takes the place of one that is retired; ``under_water`` whether it is of a drill that goes
    there.
    """

    sort: str
    kind: str
    id: str
    file: str
    path: DataPath
    before: Any
    after: Any
    hazard: Mapping[str, Any] = field(default_factory=dict)
    successor: str = ""
    under_water: bool = False


def loosened(changes: Iterable[EntryChange], before: Documents, after: Documents) -> list[Loosened]:
    """All that a change loosens: the gravest sort first, of dangers the gravest first, then what is
    under water. Documents need not be sound.
    """
    sorts = (GONE, LOOSER, ACCEPTED, OTHER)
    listed = before.get(("vocabulary", "gravities"))
    grave = list(map(str, listed.data.get("words") or ())) if listed else []

    def order(one: Loosened) -> tuple[int, bool, int, bool]:
        gravity = str(one.hazard.get("gravity"))
        place = (
            grave.index(gravity) if gravity in grave else -1
        )  # one that is not known comes first
        return sorts.index(one.sort), not is_danger(one.before), place, not one.under_water

    found = [one for change in changes for one in _of_entry(change, before, after)]
    found += _of_words(before, after)
    return sorted((replace(one, hazard=_word(one, before)) for one in found), key=order)


def _of_entry(change: EntryChange, before: Documents, after: Documents) -> Iterator[Loosened]:
    key = change.kind, change.id
    stub = (change.kind, change.moved_from) if change.what == "moved" else key
    is_other = change.what in ("removed", "retired")
    takes_over = (change.kind, change.moved_to) if change.what == "retired" else key
    old, new = before.get(stub) or before.get(key), after.get(takes_over)
    if change.what == "unreadable":  # the finding on it says that nothing of it is known
        return
    is_under = change.kind == "drill" and any(
        side and _is_under(side, all) for side, all in ((old, before), (new, after))
    )
    was = guards(change.kind, old.data) if old else {}
    now = guards(change.kind, new.data) if new else {}
    for path in dict.fromkeys([*was, *now]):
        if not old and now[path].way == "any":
            continue  # of an entry that is new, nothing stood
        for sort, one, other in of_guard(was.get(path), now.get(path), after):
            if not is_other or (sort == GONE and _is_said(one)):
                own = Loosened(sort, change.kind, change.id, change.file, path, one, other)
                yield replace(own, successor=change.moved_to, under_water=is_under)
    if old and new and is_under and not is_other:
        for sort, one, other in of_steps(
            items_of(old.data.get(STEPS)), items_of(new.data.get(STEPS))
        ):
            yield Loosened(sort, change.kind, change.id, change.file, (STEPS,), one, other)


def _is_under(drill: Document, documents: Documents) -> bool:
    """Whether a drill goes under water, by whatever it says of that."""
    data, listed = drill.data, documents.get(("vocabulary", "modes"))
    words = listed.data.get("words") if listed else None
    mode = str(data.get("mode"))
    own = words.get(mode) if isinstance(words, Mapping) else None
    done = own.get("done") if isinstance(own, Mapping) else None
    hazards = [
        own.get("hazard") for own in items_of(data.get("safety")) if isinstance(own, Mapping)
    ]
    is_mode = BELOW in (done, DONE.get(mode))
    return is_mode or "under_water" in data or BLACKOUT in hazards


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
