"""What a change does: entries, figures, findings, likeness and use, before against after."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePosixPath

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.analysis.sameness import Sameness
from almanac.analysis.texts import TEXT_KINDS, texts_of
from almanac.arithmetic.likeness import Likeness, alike
from almanac.findings import Finding, worst_first
from almanac.kinds import kind_of_path
from almanac.model.catalogue import Key
from almanac.model.compare import EntryChange, compare
from almanac.model.entry import Entry
from almanac.model.loosened import Loosened, loosened
from almanac.source.git_objects import ChangedFile
from almanac.source.reader import Document

NEAR = 0.1  # a reviewer wants to see likeness well before the check warns of it
_OF_NEW = {"clock", "minutes", "distance", "load"}  # what is told of an entry that was not there


@dataclass(frozen=True)
class Side:
    """One side of a review: its documents, its analysis (None where its foundations are broken) and
    its findings.
    """

    documents: Mapping[Key, Document]
    analysis: Analysis | None
    findings: list[Finding]


@dataclass(frozen=True)
class FigureMove:
    """A computed figure that moved. Values in the figure's ``unit``; None where there was or is no
    number.

    ``before`` is None too where there was no entry to work out.
    ``group`` is the lane group that it belongs to, ``whose`` its title; both are "" where it is the
    same for all. ``near`` where the entry itself was changed, else the change came from what it
    uses.
    """

    kind: str
    id: str
    group: str
    name: str
    unit: str
    before: float | None
    after: float | None
    near: bool
    whose: str = ""


@dataclass(frozen=True)
class Comparison:
    """Everything that a change does; ``comparable`` is False where the figures of a side could not
    be worked out. ``files`` are those that change and are no entries; ``loosened`` is what must not
    be missed.
    """

    entries: list[EntryChange]
    figures: list[FigureMove]
    appeared: list[Finding]
    gone: list[Finding]
    alike: list[tuple[str, Likeness]]
    unused: list[tuple[str, str]]
    files: list[ChangedFile]
    loosened: list[Loosened]
    comparable: bool = True

    @property
    def new_errors(self) -> int:
        """Errors that the change brings."""
        return sum(finding.is_error for finding in self.appeared)


def review(before: Side, after: Side, files: Sequence[ChangedFile] = ()) -> Comparison:
    """Compare two sides of a change. ``files`` are those of the repository that it changes."""
    entries = _unreadable(compare(before.documents, after.documents), before, after)
    looser = loosened(entries, before.documents, after.documents)
    others = [file for file in files if not file.is_entry]
    touched = {(change.kind, change.id): change.moved_from for change in entries}
    appeared, gone = (
        _new_findings(before.findings, after.findings),
        _new_findings(after.findings, before.findings),
    )
    if before.analysis is None or after.analysis is None:
        return Comparison(entries, [], appeared, gone, [], [], others, looser, False)
    return Comparison(
        entries,
        list(_moves(before.analysis, after.analysis, touched)),
        appeared,
        gone,
        list(_alike(after.analysis, touched)),
        list(_unused(before.analysis, after.analysis, _broken(before, after))),
        others,
        looser,
    )


def _unreadable(entries: list[EntryChange], before: Side, after: Side) -> list[EntryChange]:
    """The same, with what is there and cannot be read no longer said to be removed, and with new
    files of which nothing can be read.
    """
    broken = {finding.place.file for finding in after.findings if finding.is_error}
    found = [
        replace(change, what="unreadable")
        if change.what == "removed" and change.file in broken
        else change
        for change in entries
    ]
    told = {change.file for change in found} | {own.file for own in after.documents.values()}
    told |= {finding.place.file for finding in before.findings if finding.is_error}
    found += (
        EntryChange("unreadable", kind.key, PurePosixPath(file).stem, file)
        for file in sorted(broken - told)
        if file.endswith(".yml") and (kind := kind_of_path(file))
    )
    return found


def _new_findings(old: list[Finding], new: list[Finding]) -> list[Finding]:
    """Findings that only ``new`` has; a finding that merely moved to another line is the same."""
    known = {(finding.code, finding.place.file, finding.message) for finding in old}
    return worst_first(f for f in new if (f.code, f.place.file, f.message) not in known)


Figures = dict[tuple[str, str], NamedFigure]  # by lane group and name


def _moves(before: Analysis, after: Analysis, touched: Mapping[Key, str]) -> Iterator[FigureMove]:
    """Every figure that moves. ``touched`` gives the changed entries, each with the id or the file
    that it had, "" where it is as before.
    """
    groups = {**before.catalogue.lane_groups, **after.catalogue.lane_groups}
    titles = {id: group.title for id, group in groups.items()}
    same = Sameness(before.catalogue, after.catalogue)
    known = {key for key in after.catalogue.entries if _stands_still(same, key)}
    old, new = _all_figures(before, known), _all_figures(after, known)
    for key in new:
        had = old.get(key) or old.get((key[0], touched.get(key, "")), {})
        for group, name in _names(had, new[key]):
            if not had and (key not in touched or name not in _OF_NEW):
                continue
            was, now = _of(had, group, name), _of(new[key], group, name)
            values = (was.value if was else None, now.value if now else None)
            if not _same(*values):
                shown = was or now
                assert shown is not None
                whose = titles[group] if group else ""
                near = key in touched
                yield FigureMove(*key, group, name, shown.unit, *values, near, whose)


def _names(old: Figures, new: Figures) -> Iterator[tuple[str, str]]:
    """Every figure of two sides, once; one that a side has by lane group, for each of them."""
    both = [*old, *(own for own in new if own not in old)]
    groups = dict.fromkeys(group for group, _ in both if group)
    apart = {name for group, name in both if group}
    for name in dict.fromkeys(name for _, name in both):
        yield from ((group, name) for group in (groups if name in apart else ("",)))


def _of(figures: Figures, group: str, name: str) -> NamedFigure | None:
    """A lane group's own figure, or the one that is the same for all."""
    return figures.get((group, name)) or figures.get(("", name))


def _same(before: float | None, after: float | None) -> bool:
    if before is None or after is None:
        return before is after
    return abs(before - after) <= 1e-6 * max(1.0, abs(before))


def _stands_still(same: Sameness, key: Key) -> bool:
    """Whether the figures of an entry surely are the same on both sides."""
    return key[0] in ("set", "practice") and same.foundations and same.holds(*key)


def _all_figures(analysis: Analysis, known: Collection[Key]) -> dict[Key, Figures]:
    """The figures of every entry that can be worked out, for each lane group that it is for, but
    for those that are ``known`` to be the same.
    """
    return {
        (kind, id): _by_group(
            {group: figures_for(analysis, kind, id, group) for group in wholes.groups(analysis, id)}
        )
        for kind, wholes in WHOLES.items()
        for id in wholes.computable(analysis)
        if (kind, id) not in known
    }


def _by_group(figures: Mapping[str, Mapping[str, NamedFigure]]) -> Figures:
    """Figures under their lane group, or under "" where all groups share one value."""
    found: Figures = {}
    for name in dict.fromkeys(name for own in figures.values() for name in own):
        own = {group: by_name[name] for group, by_name in figures.items() if name in by_name}
        first = next(iter(own.values()))
        if len(own) == len(figures) and all(
            _same(first.value, other.value) for other in own.values()
        ):
            found["", name] = first
        else:
            found.update({(group, name): figure for group, figure in own.items()})
    return found


def _alike(analysis: Analysis, touched: Collection[Key]) -> Iterator[tuple[str, Likeness]]:
    for kind in TEXT_KINDS:
        for pair in alike(texts_of(analysis.catalogue, kind), NEAR):
            if (kind, pair.first) in touched or (kind, pair.second) in touched:
                yield kind, pair


def _broken(before: Side, after: Side) -> set[Key]:
    """Entries of ``before`` that ``after`` still has, but cannot be read or linked there."""
    with_errors = {finding.place.file for finding in after.findings if finding.is_error}
    found = set()
    for key, old in before.documents.items():
        new = after.documents.get(key)
        stands = "moved_to" not in new.data if new else old.file in with_errors
        if stands and after.analysis and key not in after.analysis.catalogue.entries:
            found.add(key)
    return found


def _unused(before: Analysis, after: Analysis, broken: set[Key]) -> Iterator[Key]:
    """Entries that something used before, and nothing uses now. What a ``broken`` entry uses is
    not known, so that what it used before is left out.
    """
    for key, entry in after.catalogue.entries.items():
        old = before.catalogue.entries.get(key)
        users = {(user.kind, user.id) for user in before.catalogue.users(old, Entry)} if old else ()
        is_known = not broken.intersection(users)
        if users and is_known and not any(after.catalogue.users(entry, Entry)):
            yield key
