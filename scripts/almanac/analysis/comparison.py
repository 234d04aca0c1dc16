"""What a change does: entries, figures, findings, likeness and use, before against after."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePosixPath

from almanac.analysis.analysis import Analysis
from almanac.analysis.figure_moves import (
    FigureMove,
    Table,
    figure_moves,
    figure_table,
    standing_still,
)
from almanac.analysis.sameness import Sameness
from almanac.analysis.texts import TEXT_KINDS, texts_of
from almanac.arithmetic.likeness import Likeness, alike
from almanac.findings import Finding, worst_first
from almanac.kinds import kind_of_path
from almanac.model.catalogue import Key
from almanac.model.compare import EntryChange, compare
from almanac.model.entry import Entry
from almanac.model.followed import Followed, followed
from almanac.model.loosened import Loosened, loosened
from almanac.source.git.objects import ChangedFile
from almanac.source.reader import Document

NEAR = 0.1  # a reviewer wants to see likeness well before the check warns of it


@dataclass(frozen=True)
class Side:
    """One side of a review: its documents, its analysis (None where its foundations are broken),
    its findings, and its figures where they are known.
    """

    documents: Mapping[Key, Document]
    analysis: Analysis | None
    findings: list[Finding]
    figures: Table | None = None

    def figured(self, before: Side | None = None) -> Side:
        """The same with its figures; what is the same on a side before it is taken from there."""
        if self.analysis is None or self.figures is not None:
            return self
        known: Table = {}
        if before and before.analysis and before.figures is not None:
            same = Sameness(before.analysis.catalogue, self.analysis.catalogue)
            known = standing_still(same, before.figures)
        return replace(self, figures=figure_table(self.analysis, known))


@dataclass(frozen=True)
class Comparison:
    """Everything that a change does; ``comparable`` is False where the figures of a side could not
    be worked out. ``files`` are those that change and are no entries; ``loosened`` is what must not
    be missed; ``naming`` are entries in which only another entry's new id is new.
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
    naming: Collection[Key] = ()

    @property
    def new_errors(self) -> int:
        """Errors that the change brings."""
        return sum(finding.is_error for finding in self.appeared)


def review(before: Side, after: Side, files: Sequence[ChangedFile] = ()) -> Comparison:
    """Compare two sides of a change. ``files`` are those of the repository that it changes."""
    follow = followed(before.documents, after.documents)
    entries = _unreadable(compare(follow.before, after.documents), before, after)
    looser = loosened(entries, follow.before, after.documents)
    entries += follow.in_club
    others = [file for file in files if not file.is_entry]
    touched = {(change.kind, change.id): change.moved_from for change in entries}
    told = _as_now(before.findings, entries, follow)
    appeared = _new_findings(told.values(), after.findings)
    known = {(finding.code, finding.place.file, finding.message) for finding in after.findings}
    gone = worst_first(
        finding
        for finding, now in told.items()
        if (now.code, now.place.file, now.message) not in known
    )
    before = before.figured()
    after = after.figured(before)
    if before.analysis is None or after.analysis is None:
        return Comparison(entries, [], appeared, gone, [], [], others, looser, False, follow.naming)
    return Comparison(
        entries,
        list(_moves(before, after, touched, follow.lane_groups)),
        appeared,
        gone,
        list(_alike(after.analysis, touched)),
        list(_unused(before.analysis, after.analysis, _broken(before, after))),
        others,
        looser,
        naming=follow.naming,
    )


def _moves(
    before: Side, after: Side, touched: Mapping[Key, str], renamed: Mapping[str, str]
) -> Iterator[FigureMove]:
    assert before.analysis is not None
    assert after.analysis is not None
    groups = {**before.analysis.catalogue.lane_groups, **after.analysis.catalogue.lane_groups}
    titles = {id: group.title for id, group in groups.items()}
    return figure_moves(before.figures or {}, after.figures or {}, titles, touched, renamed)


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


def _as_now(
    findings: Iterable[Finding], entries: Iterable[EntryChange], follow: Followed
) -> dict[Finding, Finding]:
    """Findings as they would be told of files and ids as they are now."""
    if not follow.ids:
        return {finding: finding for finding in findings}
    files = {
        follow.before[change.kind, change.moved_from].file: change.file
        for change in entries
        if change.what == "moved" and (change.kind, change.moved_from) in follow.before
    }
    return {
        finding: replace(
            finding,
            place=replace(finding.place, file=files.get(finding.place.file, finding.place.file)),
            message=follow.words(finding.message),
        )
        for finding in findings
    }


def _new_findings(old: Iterable[Finding], new: Iterable[Finding]) -> list[Finding]:
    """Findings that only ``new`` has; a finding that merely moved to another line is the same."""
    known = {(finding.code, finding.place.file, finding.message) for finding in old}
    return worst_first(f for f in new if (f.code, f.place.file, f.message) not in known)


def _alike(analysis: Analysis, touched: Collection[Key]) -> Iterator[tuple[str, Likeness]]:
    for kind in dict.fromkeys(kind for kind, _ in touched if kind in TEXT_KINDS):
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
