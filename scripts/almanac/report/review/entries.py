"""The entries of a review: every field that differs, and in brief what a head coach reads."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from almanac.analysis.comparison import Comparison
from almanac.findings import Place, counted
from almanac.kinds import IN_CLUB, KIND
from almanac.model.catalogue import Key
from almanac.model.compare import EntryChange, FieldChange
from almanac.model.loosened import is_danger
from almanac.report.fenced import difference, fenced, linked
from almanac.report.review.new import told_as_new
from almanac.report.set_json import dotted
from almanac.report.values_told import words_in_a_row

_MOST_ENTRIES = 6  # told one by one before each kind has a line
_MOST_FIELDS = 4  # of one entry before the rest is counted
_MOST_NAMED = 8  # of a kind before the rest is counted
_LONGEST_NAME = 40  # characters of what an item is known by


def in_full(review: Comparison, address: str) -> Iterator[str]:
    """Each entry, each field that differs in a line below it."""
    for change in review.entries:
        yield f"- {_headed(change, address)}"
        yield from map(_field, change.fields)
    yield from _naming(review.naming)


def in_brief(review: Comparison, address: str) -> Iterator[str]:
    """The same without what stands above among what is read first, and with the rest counted."""
    told = [change for change in review.entries if change not in told_as_new(review)]
    if len(told) > _MOST_ENTRIES:
        yield from _by_kind(told, address)
    else:
        for change in told:
            yield from _briefly(change, address)
    yield from _naming(review.naming)


def _briefly(change: EntryChange, address: str) -> Iterator[str]:
    # a danger that goes stands above, in full
    fields = [own for own in change.fields if not (own.after is None and is_danger(own.before))]
    if change.fields and not fields and change.what == "changed":
        return
    yield f"- {_headed(change, address)}"
    most = _MOST_FIELDS if len(fields) > _MOST_FIELDS + 1 else len(fields)
    yield from map(_field, fields[:most])
    if rest := len(fields) - most:
        yield f"  - and {counted(rest, 'more field')}"


def _by_kind(changes: Sequence[EntryChange], address: str) -> Iterator[str]:
    """What was done to each kind, as a line."""
    same: dict[tuple[str, str], list[EntryChange]] = {}
    for change in changes:
        same.setdefault((change.what, change.kind), []).append(change)
    for (what, kind), own in same.items():
        links = [
            linked(one.id, Place(one.file), address if what != "removed" else "")
            for one in own[:_MOST_NAMED]
        ]
        more = f" and {len(own) - _MOST_NAMED:,} more" if len(own) > _MOST_NAMED else ""
        yield f"- **{what}** {_counted(len(own), kind)}: {', '.join(links)}{more}"


def _headed(change: EntryChange, address: str) -> str:
    link = linked(change.id, Place(change.file), address if change.what != "removed" else "")
    said = f"**{change.what}** {_called(change.kind)} {link}"
    if change.moved_to:
        return f"{said}: {fenced(change.moved_to)} takes its place"
    if change.what == "added" and change.data.get("title"):
        return f"{said}: {fenced(change.data['title'])}"
    return f"{said} from {fenced(change.moved_from)}" if change.moved_from else said


def _field(field: FieldChange) -> str:
    name = fenced(dotted(field.path))
    if field.within:
        name += f" ({fenced(_short(field.within))})"
    if field.before is None:
        return f"  - {name} new: {fenced(words_in_a_row(field.after))}"
    if field.after is None:
        return f"  - {name} gone: {fenced(words_in_a_row(field.before))}"
    return f"  - {name}: {difference(field.before, field.after)}"


def _short(text: str) -> str:
    return text if len(text) <= _LONGEST_NAME else f"{text[: _LONGEST_NAME - 1].rstrip()}…"


def _naming(keys: Collection[Key]) -> Iterator[str]:
    if keys:
        kinds = sorted(kind for kind, _ in keys)
        each = ", ".join(_counted(kinds.count(kind), kind) for kind in dict.fromkeys(kinds))
        yield f"- a new id is named in {each}, and nothing else in them changes"


def _called(kind: str) -> str:
    return kind.replace("_", " ") if kind in IN_CLUB else kind


def _counted(number: int, kind: str) -> str:
    many = KIND[kind].plural.lower() if kind in KIND else f"{_called(kind)}s"
    return f"{number:,} {many if number != 1 else _called(kind)}"
