"""The page of a need: when to stop and whom to refer to, what changes in general, and how every
drill, piece of gear and set fits it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from almanac.analysis.adapted import answers_of, done_by
from almanac.analysis.analysis import Analysis
from almanac.arithmetic.adapting import NeedFit
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.need import AS_IS, CHANGED, LEAVE_OUT, Need
from almanac.site.entry_page import entry_page, evidence_rows
from almanac.site.links import Link, Page, link


@dataclass(frozen=True)
class AlikeEntries:
    """Entries that a rule changes alike: what is done otherwise, or why they are left out."""

    says: str
    entries: tuple[Link, ...]


@dataclass(frozen=True)
class Fitting:
    """Entries that fit a need alike: by rule, and each with what it says itself."""

    many: int
    groups: tuple[AlikeEntries, ...]
    own: tuple[tuple[Link, str], ...]

    @property
    def first(self) -> str:
        """The first words of what changes."""
        return next((group.says for group in self.groups), "each in its own way")


def need_page(analysis: Analysis, need: Need) -> Page:
    """The page of a need."""
    catalogue, known = analysis.catalogue, answers_of(analysis)
    drills = [(own, known.of[need.id, own]) for own in analysis.teaching_order]
    gear = [(own, known.of_gear[need.id, own]) for own in catalogue.gear]
    as_is = [catalogue.drills[id] for id, own in drills if own.fits == AS_IS]
    return entry_page(
        catalogue,
        need,
        house=[catalogue.policy.house_rules[name] for name in need.house_rules],
        as_is=list(_by_kick(analysis, as_is)),
        many=len(as_is),
        fittings=[
            (
                title,
                id,
                _fitting(catalogue.drills, drills, fits),
                _fitting(catalogue.gear, gear, fits),
            )
            for fits, title, id in (
                (CHANGED, "Changed", "changed"),
                (LEAVE_OUT, "Left out", "left-out"),
            )
        ],
        sets=list(_sets(analysis, need)),
        evidence=evidence_rows(catalogue, need.evidence),
    )


def _fitting(
    entries: Mapping[str, Drill] | Mapping[str, Gear], answers: list[tuple[str, NeedFit]], fits: str
) -> Fitting:
    """The entries that fit a need in one way, by the first rule that says so."""
    groups: dict[str, list[Link]] = {}
    own = []
    found = [(link(entries[id]), answer) for id, answer in answers if answer.fits == fits]
    for entry, answer in found:
        if answer.is_own:
            own.append((entry, " ".join(answer.changes)))
        else:
            groups.setdefault(answer.changes[0], []).append(entry)
    by_size = sorted(groups.items(), key=lambda group: -len(group[1]))
    return Fitting(
        len(found), tuple(AlikeEntries(says, tuple(alike)) for says, alike in by_size), tuple(own)
    )


def _by_kick(
    analysis: Analysis, drills: list[Drill]
) -> Iterator[tuple[str, int, list[tuple[str, list[Link]]]]]:
    """Drills by kick, how many they are, and by level, in their order; those on land apart."""
    words = analysis.catalogue.words
    sorts: list[tuple[str, Callable[[Drill], bool]]] = [
        (kick.title, lambda own, id=id: own.kick == id and not own.is_on_land)  # type: ignore[misc]
        for id, kick in words("kicks").items()
    ]
    for title, holds in [*sorts, ("On land", lambda own: own.is_on_land)]:
        found = [own for own in drills if holds(own)]
        levels = [
            (level.title, [link(own) for own in found if own.level == id])
            for id, level in words("levels").items()
        ]
        if found:
            yield title, len(found), [(name, own) for name, own in levels if own]


def _sets(analysis: Analysis, need: Need) -> Iterator[tuple[str, list[Link]]]:
    """By level the sets of which nothing is left out."""
    fit = [own for own in analysis.catalogue.sets.values() if need.id in done_by(analysis, own)]
    for id, level in analysis.catalogue.words("levels").items():
        found = sorted(
            (own for own in fit if own.level == id), key=lambda own: own.title.casefold()
        )
        if found:
            yield level.title, [link(own) for own in found]
