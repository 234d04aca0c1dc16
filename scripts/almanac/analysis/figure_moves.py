"""Which computed figures a change moves, by entry and lane group."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.analysis.sameness import Sameness
from almanac.model.catalogue import Key

_OF_NEW = {"clock", "time", "distance", "load"}  # what is told of an entry that was not there


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


Number = tuple[float | None, str]  # a figure's value, and its unit
Figures = Mapping[tuple[str, str], Number]  # by lane group and name
Table = Mapping[Key, Figures]


def figure_table(analysis: Analysis, known: Table | None = None) -> Table:
    """The figures of every entry that can be worked out, for each lane group that it is for, "" for
    one that is the same for all. Those of ``known`` are taken from there.
    """
    found = known or {}
    return {
        (kind, id): found[kind, id] if (kind, id) in found else _by_group(analysis, kind, id)
        for kind, wholes in WHOLES.items()
        for id in wholes.computable(analysis)
    }


def standing_still(same: Sameness, table: Table) -> Table:
    """What of a table is surely the same in the later of two states."""
    keys = [key for key in table if key in same.after.entries and _stands_still(same, key)]
    return {key: table[key] for key in keys}


def figure_moves(
    before: Table,
    after: Table,
    titles: Mapping[str, str],
    touched: Mapping[Key, str],
    renamed: Mapping[str, str],
) -> Iterator[FigureMove]:
    """Every figure that moves. ``titles`` are those of lane groups. ``touched`` gives the changed
    entries, each with the id or the file that it had, "" where it is as before; ``renamed`` the new
    ids of lane groups by their old ones.
    """
    for key, new in after.items():
        had = before.get(key) or before.get((key[0], touched.get(key, "")), {})
        if had == new:
            continue
        had = {(renamed.get(group, group), name): own for (group, name), own in had.items()}
        for group, name in _names(had, new):
            if not had and (key not in touched or name not in _OF_NEW):
                continue
            was, now = _of(had, group, name), _of(new, group, name)
            values = (was[0] if was else None, now[0] if now else None)
            if not _same(*values):
                shown = was or now
                assert shown is not None
                whose = titles[group] if group else ""
                yield FigureMove(*key, group, name, shown[1], *values, key in touched, whose)


def _names(old: Figures, new: Figures) -> Iterator[tuple[str, str]]:
    """Every figure of two sides, once; one that a side has by lane group, for each of them."""
    both = [*old, *(own for own in new if own not in old)]
    groups = dict.fromkeys(group for group, _ in both if group)
    apart = {name for group, name in both if group}
    for name in dict.fromkeys(name for _, name in both):
        yield from ((group, name) for group in (groups if name in apart else ("",)))


def _of(figures: Figures, group: str, name: str) -> Number | None:
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


def _by_group(analysis: Analysis, kind: str, id: str) -> Figures:
    """Figures under their lane group, or under "" where all groups share one value."""
    figures = {
        group: {
            name: (_plain(own.value), own.unit)
            for name, own in figures_for(analysis, kind, id, group).items()
        }
        for group in WHOLES[kind].groups(analysis, id)
    }
    found: dict[tuple[str, str], Number] = {}
    for name in dict.fromkeys(name for own in figures.values() for name in own):
        own = {group: by_name[name] for group, by_name in figures.items() if name in by_name}
        first = next(iter(own.values()))
        if len(own) == len(figures) and all(_same(first[0], other[0]) for other in own.values()):
            found["", name] = first
        else:
            found.update({(group, name): figure for group, figure in own.items()})
    return found


def _plain(value: float | None) -> float | None:
    """A number that is kept as it is: a fraction would not be."""
    return value if value is None or isinstance(value, int) else float(value)
