"""By kind, how an analysis gives the whole that figures are of: which entries can be worked out,
which lane groups each is for, and the entry added up for one of them.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import all_figures
from almanac.analysis.figures.benchmarks import BenchmarkForGroup, trials_of
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.gear import GearForGroup, comparisons_of
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.analysis.figures.sets import SetForGroup
from almanac.arithmetic.group_clock import DoesNotFit
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.summary import summarise
from almanac.model.entry import Entry
from almanac.units import Course


@dataclass(frozen=True)
class Wholes:
    """How the entries of a kind are worked out.

    ``groups`` are the lane groups that an entry is for, the first of them the one that is taken
    where nobody names one; ``any_group`` where another of the club's may be asked for. ``missing``
    tells why some figures of a whole have no number.
    """

    computable: Callable[[Analysis], Collection[str]]
    groups: Callable[[Analysis, str], tuple[str, ...]]
    whole: Callable[[Analysis, str, str | None, Course | None], Any]
    any_group: bool = False
    missing: Callable[[Any], tuple[NoNumber | DoesNotFit, ...]] = lambda whole: ()


def _set(analysis: Analysis, id: str, group: str | None, course: Course | None) -> SetForGroup:
    if course is None:
        return SetForGroup(analysis.summary(id), group)
    groups = None if group is None else [group]
    return SetForGroup(summarise(analysis.timing, analysis.computable[id], course, groups), group)


def _missing_of_set(whole: SetForGroup) -> tuple[NoNumber | DoesNotFit, ...]:
    if whole.group is None:
        return ()
    run = whole.summary.clocks[whole.group]
    return (*run.missing, *run.unfit)


def _practice(
    analysis: Analysis, id: str, group: str | None, course: Course | None
) -> PracticeForGroup:
    summary = analysis.practices[id]
    return PracticeForGroup(summary, group or next(iter(summary.groups)))


def _block(analysis: Analysis, id: str, group: str | None, course: Course | None) -> Any:
    groups = analysis.blocks[id]
    return groups[group or next(iter(groups))]


def _benchmark(
    analysis: Analysis, id: str, group: str | None, course: Course | None
) -> BenchmarkForGroup:
    return BenchmarkForGroup(
        analysis.catalogue, analysis.catalogue.benchmarks[id], group, analysis.today
    )


def _gear(analysis: Analysis, id: str, group: str | None, course: Course | None) -> GearForGroup:
    return GearForGroup(analysis.catalogue, analysis.catalogue.gear[id], group, analysis.today)


def _benchmark_groups(analysis: Analysis, id: str) -> tuple[str, ...]:
    """Every lane group, those whose tests tell something first."""
    catalogue = analysis.catalogue
    tested = (
        found.group for found in trials_of(catalogue, catalogue.benchmarks[id], analysis.today)
    )
    return tuple(dict.fromkeys((*tested, *catalogue.lane_groups)))


def _gear_groups(analysis: Analysis, id: str) -> tuple[str, ...]:
    """Every lane group, those with a comparison first."""
    catalogue = analysis.catalogue
    compared = (found.group for found in comparisons_of(catalogue, id, analysis.today))
    return tuple(dict.fromkeys((*compared, *catalogue.lane_groups)))


WHOLES: Mapping[str, Wholes] = {
    "set": Wholes(
        lambda analysis: analysis.computable,
        lambda analysis, id: analysis.meant(analysis.computable[id]),
        _set,
        any_group=True,
        missing=_missing_of_set,
    ),
    "practice": Wholes(
        lambda analysis: analysis.computable_practices,
        lambda analysis, id: tuple(analysis.practices[id].groups),
        _practice,
    ),
    "block": Wholes(
        lambda analysis: analysis.blocks,
        lambda analysis, id: tuple(analysis.blocks[id]),
        _block,
    ),
    "benchmark": Wholes(
        lambda analysis: analysis.catalogue.benchmarks,
        _benchmark_groups,
        _benchmark,
        any_group=True,
    ),
    "gear": Wholes(lambda analysis: analysis.catalogue.gear, _gear_groups, _gear, any_group=True),
}


def is_computable(analysis: Analysis, entry: Entry) -> bool:
    """Whether the figures of an entry can be worked out, if it has figures at all."""
    known = WHOLES.get(entry.kind)
    return known is None or entry.id in known.computable(analysis)


def figures_for(
    analysis: Analysis, kind: str, id: str, group: str | None
) -> dict[str, NamedFigure]:
    """Every figure of a computable entry that has a number, for one lane group, by name."""
    return all_figures(kind, WHOLES[kind].whole(analysis, id, group, None))
