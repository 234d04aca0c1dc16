"""The summary of a block for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.analysis.figures import by_name, section
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DAYS, DayPlan
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.kept import kept_sessions
from almanac.arithmetic.week_change import WeekOfBlock
from almanac.model.catalogue import Catalogue
from almanac.report.block.ways import block_ways
from almanac.report.block.wishes import wish_lines, wish_rows
from almanac.report.block.words import LOAD, MONOTONY, change_words, missing_words, taper_words
from almanac.report.shown import others, shown, with_working

BALANCE = (
    "distance", "kick share", "supine share", "resisted share", "fast share",
    "dolphin share", "resisted distance", "fast distance", "kick into stroke",
    "taper", "taper days",
)  # fmt: skip
WEEK_SHARES = ("resisted share", "fast share")
# Figures of a week that a terminal shows in a place of their own, or with the block's balance.
WEEK_FIGURES_ELSEWHERE = {
    "distance change",
    "resisted distance",
    "resisted change",
    "fast distance",
    "fast change",
    "kick into stroke",
    "load change",
    "kept distance",
    "kept load",
}


def block_text(catalogue: Catalogue, groups: Mapping[str, BlockSummary]) -> str:
    """A block: a line a week for each lane group, then the balance of the whole, of each lane group
    where they differ.
    """
    first = next(iter(groups.values()))
    block = first.block
    lines = [
        (
            f"{block.title} ({block.id}), {catalogue.club.squads[block.squad].title}, from "
            f"{block.starts}"
        ),
        block.purpose,
    ]
    heads = "".join(f"{head:>{width}}" for _, head, width in _columns())
    for group, summary in groups.items():
        lines += ["", catalogue.lane_groups[group].title, f"{'week':5}{heads}"]
        lines += [_week_line(week) for week in weeks_of(summary)]
        lines += _kept_lines(summary)
        lines += [*missing_words(summary), *change_words(catalogue.policy, summary)]
    ways = block_ways(groups)
    for ids, summary in ways:
        who = " and ".join(catalogue.lane_groups[id].title for id in ids)
        lines += ["", *([f"{who}:"] if len(ways) > 1 else [])]
        lines += balance_sentences(catalogue, summary)
        lines += map(with_working, others(by_name("block", "block", summary).values(), BALANCE))
        rows = wish_rows(catalogue, summary)
        lines += ["Beside its goals and wishes:", *wish_lines(rows)] if rows else []
    lines += ["", CHANGE, *conventions()]
    return "\n".join(lines)


CHANGE = (
    "Change is of the metres, against the median of the four weeks before, or of those there are."
)


_CHANGE = "distance change"  # of the metres, and beside them


_WEEK_COLUMNS = (
    ("distance", "metres", 8),
    (_CHANGE, "change", 8),
    ("kick share", "kick", 7),
    ("supine share", "back", 7),
    ("resisted share", "resist", 8),
    ("fast share", "fast", 7),
    ("load", "load", 8),
    ("monotony", "monot.", 8),
    ("strain", "strain", 9),
)


def _columns() -> list[tuple[str, str, int]]:
    """Name, head and width of each column of a week; figures that have none of their own follow."""
    told = {name for name, _, _ in _WEEK_COLUMNS} | WEEK_FIGURES_ELSEWHERE
    tables = section("block", "week").tables.values()
    names = [figure.name for own in tables for figure in own if figure.name not in told]
    return [*_WEEK_COLUMNS, *((name, name, len(name) + 2) for name in names)]


def _week_line(of: WeekOfBlock) -> str:
    figures = by_name("block", "week", of)
    days = " ".join("?" if day.day is None else _session_marks(day) or "·" for day in of.week.days)
    told = {name: shown(figures[name]) for name, _, _ in _columns()}
    if not of.earlier:
        told[_CHANGE] = ""
    cells = "".join(f"{told[name]:>{width}}" for name, _, width in _columns())
    return f"{of.week.number:<5}{cells}  {days}"


def balance_sentences(catalogue: Catalogue, summary: BlockSummary) -> Iterator[str]:
    """The balance of a block in sentences, for a lane group."""
    figures = by_name("block", "block", summary)
    told = {name: shown(figure) for name, figure in figures.items()}
    yield f"{told['distance']} m in all; kick {told['kick share']} of it."
    yield f"Of the flutter kick, {told['supine share']} is on the back."
    fast = EffortScale(catalogue.efforts).fast_words("or")
    yield f"{told['resisted distance']} m resisted, {told['fast distance']} m {fast}."
    yield f"{told['kick into stroke']} m of stroke straight out of the kick."
    yield f"Dolphin kick, with arms or without: {told['dolphin share']} of all metres."
    yield from taper_words(catalogue.policy, summary)


def conventions() -> Iterator[str]:
    """What load and monotony are, and the marks of the days."""
    yield LOAD
    yield MONOTONY
    yield f"Days: {' '.join(DAYS)}; P practice, o other work, · rest, ? not planned."


def _kept_lines(summary: BlockSummary) -> Iterator[str]:
    """What was done beside what was planned, a line a session that was kept."""
    pairs = ("minutes", "metres", "rating", "load")
    told = {f"{when} {name}" for name in pairs for when in ("kept", "planned")}
    for kept in kept_sessions(summary):
        figures = by_name("block", "kept", kept)
        parts = [
            f"{name} {shown(figures[f'kept {name}'])} (planned {shown(figures[f'planned {name}'])})"
            for name in pairs
        ]
        parts += map(with_working, others(figures.values(), told))
        yield f"kept {kept.day.on} {kept.log.what}: {', '.join(parts)}, {kept.log.heads} heads"


def _session_marks(day: DayPlan) -> str:
    return "".join("P" if own.practice else "o" for own in day.sessions)
