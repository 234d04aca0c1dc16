"""Which computed figures a change moves, by entry and lane group."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.analysis.sameness import Sameness
from almanac.model.catalogue import Key

_OF_NEW = {"clock", "minutes", "distance", "load"}  # what is told of an entry that was not there


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


Figures = dict[tuple[str, str], NamedFigure]  # by lane group and name


def figure_moves(
    before: Analysis,
    after: Analysis,
    touched: Mapping[Key, str],
    renamed: Mapping[str, str],
) -> Iterator[FigureMove]:
    """Every figure that moves. ``touched`` gives the changed entries, each with the id or the file
    that it had, "" where it is as before; ``renamed`` the new ids of lane groups by their old ones.
    """
    groups = {**before.catalogue.lane_groups, **after.catalogue.lane_groups}
    titles = {id: group.title for id, group in groups.items()}
    same = Sameness(before.catalogue, after.catalogue)
    known = {key for key in after.catalogue.entries if _stands_still(same, key)}
    old, new = _all_figures(before, known, renamed), _all_figures(after, known, {})
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
    # What floats lose where terms are added in another order is no move.
    return abs(before - after) <= 1e-6 * max(1.0, abs(before))


def _stands_still(same: Sameness, key: Key) -> bool:
    """Whether the figures of an entry surely are the same on both sides."""
    return key[0] in ("set", "practice") and same.foundations and same.holds(*key)


def _all_figures(
    analysis: Analysis, known: Collection[Key], renamed: Mapping[str, str]
) -> dict[Key, Figures]:
    """The figures of every entry that can be worked out, for each lane group that it is for, but
    for those that are ``known`` to be the same.
    """
    return {
        (kind, id): _by_group(
            {
                renamed.get(group, group): figures_for(analysis, kind, id, group)
                for group in wholes.groups(analysis, id)
            }
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
