"""Two catalogues side by side: entries added, removed, moved and changed, field by field."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from typing import Any

from almanac.model.catalogue import Key
from almanac.source.reader import DataPath, Document


@dataclass(frozen=True)
class FieldChange:
    """One field that differs. ``before`` is None where it is new, ``after`` None where it is
    gone. ``within`` is what the innermost item of a list that it stands in is known by, "" where
    that is no more than its number.
    """

    path: DataPath
    before: Any
    after: Any
    within: str = field(default="", compare=False)


@dataclass(frozen=True)
class EntryChange:
    """What happened to one entry: ``added``, ``removed``, ``moved`` (to another file or id),
    ``changed`` or ``retired``, where ``moved_to`` takes its place. ``data`` is all that an added
    one says.
    """

    what: str
    kind: str
    id: str
    file: str
    fields: tuple[FieldChange, ...] = ()
    moved_from: str = ""
    moved_to: str = ""
    data: Mapping[str, Any] = field(default_factory=dict, compare=False, repr=False)


def compare(before: Mapping[Key, Document], after: Mapping[Key, Document]) -> list[EntryChange]:
    """Every entry that differs between two sets of documents, by kind and id.

    An entry is moved where its file stands in another folder, or where its old id now holds
    ``moved_to``; an id that had no entry before is then the same entry, and not told as added too.
    """
    changes: list[EntryChange] = []
    renamed = {(kind, new) for (kind, _), new in renamed_entries(before, after).items()}
    for key in sorted(before.keys() | after.keys()):
        old, new = before.get(key), after.get(key)
        if key in renamed:
            continue
        if old is None and new is not None:
            changes.append(EntryChange("added", *key, new.file, data=new.data))
        elif new is None and old is not None:
            changes.append(EntryChange("removed", *key, old.file))
        elif old is not None and new is not None and (old.data != new.data or old.file != new.file):
            changes.append(_changed(key, before, after))
    return changes


def renamed_entries(
    before: Mapping[Key, Document], after: Mapping[Key, Document]
) -> dict[Key, str]:
    """By kind and old id the new id of each entry that has one: its old id leads to an id that had
    no entry, and does not say that it is retired.
    """
    leads = {
        key: str(new.data["moved_to"])
        for key, new in after.items()
        if key in before and _leads_on(new) and not _leads_on(before[key])
    }
    return {
        key: to
        for key, to in leads.items()
        if had_none((key[0], to), before) and "retired" not in after[key].data
    }


def had_none(key: Key, before: Mapping[Key, Document]) -> bool:
    """Whether an id had no entry of its own before."""
    return key not in before or _leads_on(before[key])


def _leads_on(document: Document) -> bool:
    return "moved_to" in document.data


def _changed(
    key: Key, before: Mapping[Key, Document], after: Mapping[Key, Document]
) -> EntryChange:
    old, new = before[key], after[key]
    if _leads_on(new) and not _leads_on(old):
        to = key[0], str(new.data["moved_to"])
        if "retired" in new.data or not had_none(to, before):
            return EntryChange("retired", *key, new.file, moved_to=to[1])
        own = after.get(to)
        told = tuple(field_changes(old.data, own.data)) if own else ()
        return EntryChange("moved", *to, (own or new).file, told, moved_from=key[1])
    fields = tuple(field_changes(old.data, new.data))
    if old.file != new.file:
        return EntryChange("moved", *key, new.file, fields, moved_from=old.file)
    return EntryChange("changed", *key, new.file, fields)


# What people know an item of a list by, the first that it has.
_KNOWN_BY = (
    *("title", "hazard", "benchmark", "squad", "do", "set", "practice", "pool"),
    *("focus", "see", "claim", "effort"),
)
_BESIDE, _INNER = "days", "items"  # a squad has several slots


def _known_by(item: Any) -> str:
    if not isinstance(item, dict):
        return ""
    said = next((item[key] for key in _KNOWN_BY if isinstance(item.get(key), (str, int))), "")
    inner = item.get(_INNER)
    if not said and isinstance(inner, list) and inner:  # rounds, by what they begin with
        return f"{own} …" if (own := _known_by(inner[0])) else ""
    days = item.get(_BESIDE)
    return " ".join([str(said), *map(str, days if isinstance(days, list) else ())]).strip()


def field_changes(
    before: Any, after: Any, path: DataPath = (), within: str = ""
) -> Iterator[FieldChange]:
    """The least fields that differ: mappings by key, lists by item. Paths of list items are those
    of ``after``, or of ``before`` for items that are gone.
    """
    if before == after and type(before) is type(after):
        return
    if isinstance(before, dict) and isinstance(after, dict):
        for key in [*before, *(key for key in after if key not in before)]:
            yield from field_changes(before.get(key), after.get(key), (*path, key), within)
    elif isinstance(before, list) and isinstance(after, list):
        yield from _item_changes(before, after, path, within)
    else:
        yield FieldChange(path, before, after, within)


def _item_changes(
    before: list[Any], after: list[Any], path: DataPath, within: str
) -> Iterator[FieldChange]:
    matcher = SequenceMatcher(
        None, [repr(item) for item in before], [repr(item) for item in after], autojunk=False
    )
    for what, old, old_end, new, new_end in matcher.get_opcodes():
        if what == "equal":
            continue
        paired = min(old_end - old, new_end - new)
        for step in range(paired):
            was, now = before[old + step], after[new + step]
            own = _known_by(was) or within
            yield from field_changes(was, now, (*path, new + step), own)
        for step in range(old + paired, old_end):
            yield FieldChange((*path, step), before[step], None, within)
        for step in range(new + paired, new_end):
            yield FieldChange((*path, step), None, after[step], within)
