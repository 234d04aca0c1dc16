"""Entries of one catalogue taken into another, with all that they need."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta

import yaml

from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.model.bringing_plans import (
    PLANS,
    Clubs,
    NotFoundAgain,
    Renamed,
    in_words_of,
    parts_alone,
)
from almanac.model.catalogue import Catalogue, Key
from almanac.model.load import Loaded
from almanac.source.edits.mended import mended
from almanac.source.edits.style import span
from almanac.source.edits.taken_out import Spot, without, without_items
from almanac.source.names import Names
from almanac.source.reader import Document, read
from almanac.source.validate import Shapes
from almanac.units import parse_time

BROUGHT = ("drill", "fault", "gear", "benchmark", "progression", "source", "need", "set")
"""Kinds that stand for themselves."""
_LEADS_ON = {
    "easier", "harder", "may_add", "mended_by", "not_to_confuse_with", "pair_with", "excludes",
    "adapt", "rule", "drawn",
}  # fmt: skip
"""What an entry only points at: such a line stays where what it names is there, else it goes."""
_STANDS = timedelta(weeks=4)


class NotBrought(Exception):
    """Something cannot be brought; the message says what, and what to do."""


@dataclass(frozen=True)
class Origin:
    """Where entries come from, in words for their first line; the day on which they come, since the
    review that they had there stands for four weeks of it; the rest that stands in for send-offs of
    lane groups that are not here; by level the lane groups that times are assumed for instead; and
    both clubs, which plans ask for.
    """

    title: str
    day: date
    rest: str = "0:20"
    groups: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    clubs: Clubs | None = None


@dataclass(frozen=True)
class Bringing:
    """What is to be written, by file, and what was there already and stays as it is."""

    files: Mapping[str, str]
    stays: tuple[str, ...]


def closure(catalogue: Catalogue, wanted: Iterable[Key], have: Names) -> list[Key]:
    """The wanted entries and all that they need and ``have`` lacks, in the order they were met."""
    found: dict[Key, None] = {}
    todo = list(wanted)
    while todo:
        key = todo.pop(0)
        if key in found:
            continue
        found[key] = None
        for reference in catalogue.entries[key].references():
            named = (reference.kind, reference.id)
            is_needed = reference.kind in (*BROUGHT, *PLANS) and reference.role not in _LEADS_ON
            if is_needed and not _here(have, *named):
                todo.append(named)
    return list(found)


def bring(of: Loaded, into: Names, wanted: Iterable[Key], origin: Origin) -> Bringing:
    """The texts of entries of one catalogue for another whose names are ``into``. Raises NotBrought
    where they need a word that is not there, or where something of them is amiss already. What has
    another id there by now is there, and is named by that.
    """
    assert of.catalogue is not None
    keys = closure(of.catalogue, wanted, into)
    new = [key for key in keys if not _here(into, *key)]
    _refuse_amiss(of, [KIND["club"].files, *(of.documents[key].file for key in new)])
    names = _with(into, of, new)
    begun = {key: _begun(of.documents[key], names, origin) for key in new}
    renamed = _renamed({key: own for key, own in begun.items() if key[0] in PLANS}, origin)
    texts = {key: _text(own, key[0], names, origin, renamed) for key, own in begun.items()}
    return Bringing(
        {of.documents[key].file: text for key, text in texts.items()},
        tuple(
            into.of("reference", kind)[_here(into, kind, id)]
            for kind, id in keys
            if (kind, id) not in texts
        ),
    )


def _here(names: Names, kind: str, id: str) -> str:
    """The id that an entry has where it is brought to, which may be another by now; "" for none."""
    return id if id in names.of("reference", kind) else names.moved.get((kind, id), "")


def _refuse_amiss(of: Loaded, files: list[str]) -> None:
    """What is amiss there would be amiss here; the club's title comes along in words."""
    for finding in of.findings:
        if finding.is_error and finding.place.file in files:
            raise NotBrought(f"{finding.place}: {finding.message}; it is to be mended there")


def _with(into: Names, of: Loaded, new: Iterable[Key]) -> Names:
    words = dict(into.words)
    for kind, id in new:
        own = words.get(("reference", kind), {})
        words["reference", kind] = {**own, id: of.documents[kind, id].file}
    return replace(into, words=words)


def _begun(document: Document, names: Names, as_: Origin) -> Document:
    """An entry without the times of lane groups that are not here, its review cut to four weeks."""
    text = document.text
    here = as_.groups.get(str(document.data.get("level")), ())
    edits = [*_of_groups(document.node(()), names, as_.rest, here), *_review(document, as_.day)]
    for first, last, words in reversed(edits):
        text = text[: span(text, first)[0]] + words + text[span(text, last)[1] :]
    own, _ = read(text.encode(), document.file)
    assert own is not None, document.file
    return own


def _renamed(plans: Mapping[Key, Document], as_: Origin) -> Renamed:
    """What all that comes names of the club that it comes from, asked for at once."""
    if not plans:
        return {}
    assert as_.clubs is not None, list(plans)
    try:
        return as_.clubs.found_again([(kind, plan) for (kind, _), plan in plans.items()])
    except NotFoundAgain as problem:
        raise NotBrought(str(problem)) from None


def _text(document: Document, kind: str, names: Names, as_: Origin, renamed: Renamed) -> str:
    text = _as_here(document, kind, renamed) if kind in PLANS else document.text
    for _ in range(_MOST_ROUNDS):
        own, _said = read(text.encode(), document.file)
        assert own is not None, document.file
        checked = Shapes(names).check(own, kind)
        if checked.meant and (meant := mended(own, checked.meant)) and meant != text:
            text = meant
            continue
        findings = checked.findings
        for finding in findings:
            if finding.code == "unknown-word":
                raise NotBrought(f"{document.file}: {finding.message}; {finding.hint}")
        lost = [_spot(one) for one in findings if one.code == "unknown-reference"]
        if lost and kind in PLANS:
            said = next(one.message for one in findings if one.code == "unknown-reference")
            raise NotBrought(f"{document.file}: {said}")
        empty = [_spot(one) for one in findings if one.code == "missing-key"]
        if not lost and not empty:
            if kind in PLANS and (alone := parts_alone(own)):
                raise NotBrought(
                    f"{document.file}: its part {alone[0]} is for lane groups apart, and one of "
                    "them alone is left; bring its sets, and write a practice of them"
                )
            break
        text = without(text, lost) if lost else without_items(text, empty)
    return f"# From {as_.title}.\n{text}"


def _as_here(plan: Document, kind: str, renamed: Renamed) -> str:
    try:
        return in_words_of(renamed, plan, kind)
    except NotFoundAgain as problem:
        raise NotBrought(f"{plan.file}: {problem}") from None


_MOST_ROUNDS = 8  # what names one thing in another may be seen only when that has gone


_Edit = tuple[yaml.Node, yaml.Node, str]
"""The first and the last node of what goes, in the order of the text, and what takes its place."""


def _of_groups(node: yaml.Node, names: Names, rest: str, here: tuple[str, ...]) -> Iterator[_Edit]:
    """Send-offs of lane groups that are not here become a rest; a time that is assumed of such is
    assumed of those of the level that are, the slowest.
    """
    for item in node.value if isinstance(node, yaml.CollectionNode) else ():
        if not isinstance(item, tuple):
            yield from _of_groups(item, names, rest, here)
            continue
        key, value = item
        is_by_group = isinstance(value, yaml.MappingNode) and value.value
        if key.value not in ("sendoff", "assume") or not is_by_group:
            yield from _of_groups(value, names, rest, here)
        elif not all(own.value in names.of("reference", "lane_group") for own, _ in value.value):
            if key.value == "sendoff":
                yield key, _last(value), f"rest: {rest}"
            elif here:
                slowest = max((own.value for _, own in value.value), key=parse_time)
                assumed = ", ".join(f"{group}: {slowest}" for group in here)
                yield key, _last(value), f"assume: {{{assumed}}}"


def _last(node: yaml.MappingNode) -> yaml.Node:
    """What ends a mapping: of one in lines of its own the mark is where the next key begins."""
    last: yaml.Node = node if node.flow_style or not node.value else node.value[-1][1]
    return last


def _review(document: Document, day: date) -> Iterator[_Edit]:
    """A review stands for four weeks at most, from the day or from its own, the later one."""
    review = document.data.get("review")
    if review:
        again = document.node(("review", "again"))
        latest = max(date.fromisoformat(str(review["on"])), day) + _STANDS
        yield again, again, min(str(review["again"]), latest.isoformat())


def _spot(finding: Finding) -> Spot:
    return finding.place.line, finding.place.column
