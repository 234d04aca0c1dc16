"""A block beside what was wished of it, wish by wish: what its page, ``sum`` and ``compose block``
tell in the same words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from almanac.analysis.figures import by_name, table
from almanac.analysis.figures.figure import NamedFigure
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_wishes import (
    GoalOfBlock,
    goals_of,
    loads_of,
    practices_wished,
    strokes_of,
    weeks_run,
)
from almanac.findings import counted
from almanac.model.block import Block, ShareRange
from almanac.model.catalogue import Catalogue
from almanac.report.block.ways import block_ways
from almanac.report.shown import rounded, shown, with_working
from almanac.report.working_text import formula
from almanac.units import show_number, show_share

SHARE_WORDS = {
    "kick_share": "kick",
    "supine_share": "flutter on the back, of all flutter",
    "resisted_share": "resisted",
    "fast_share": "fast",
    "dolphin_share": "dolphin kick",
}
OF_BLOCK = "a goal of the block"
"""In place of a number that nobody wished."""
LOAD_NEAR = 5
"""Hundredths that a week may be off its load before it is told."""


@dataclass(frozen=True)
class WishRow:
    """A wish: its ``key`` and what it is of, how much was wished, how much is planned, as words.
    ``met`` is None where it is not known. ``figures`` are those of the registry, the planned first.
    """

    key: tuple[str, str]
    what: str
    wished: str
    planned: str
    met: bool | None
    figures: tuple[NamedFigure, ...] = ()


def wish_rows(catalogue: Catalogue, summary: BlockSummary) -> list[WishRow]:
    """Every wish that a block knows of, beside what it has, for one lane group."""
    return [
        *_loads(summary),
        *_shares(summary),
        *_goals(catalogue, summary),
        *_strokes(catalogue, summary),
        *_tests(catalogue, summary),
        *_taper(catalogue, summary),
    ]


def wish_lines(rows: Sequence[WishRow]) -> Iterator[str]:
    """The rows for a terminal."""
    for row in rows:
        mark = "; not met" if row.met is False else ""
        wished = row.wished if row.wished == OF_BLOCK else f"wished {row.wished}"
        yield f"  {row.what}: {row.planned}, {wished}{mark}"
        yield from (f"    {with_working(figure)}" for figure in row.figures[1:])


def missed_words(catalogue: Catalogue, groups: Mapping[str, BlockSummary]) -> str:
    """What a lane group misses of what was wished, each wish once, and how many are not known."""
    rows = [row for _, own in block_ways(groups) for row in wish_rows(catalogue, own)]
    missed = dict.fromkeys(row.what for row in rows if row.met is False)
    unknown = len({row.key for row in rows if row.met is None})
    told = [f"not met: {', '.join(missed)}"] if missed else []
    told += [f"{unknown} not known"] if unknown else []
    return "; ".join(told) or "all met"


def wishes_json(summary: BlockSummary) -> dict[str, Any]:
    """What was wished beside what there is, for programs; nothing where nothing was."""
    block = summary.block
    shares = {
        name: {"from": own.least, "to": own.most} for name, own in block.wished_shares.items()
    }
    goals = {own.goal: _figures(own.wished, "goal", own) for own in goals_of(summary)}
    least = block.wishes.strokes if block.wishes else 0.0
    strokes = {own.stroke: _figures(least, "stroke", own) for own in strokes_of(summary)}
    loads = {
        str(own.week.number): _figures(own.wished / 100, "wished load", own)
        for own in loads_of(summary)
    }
    found = {"shares": shares, "goals": goals, "strokes": strokes, "loads": loads}
    return {name: own for name, own in found.items() if own}


def _figures(wished: float, section: str, subject: Any) -> dict[str, float | None]:
    figures = table("block", section, "wishes", subject)
    return {"wished": wished, **{own.figure.name: rounded(own) for own in figures}}


def _loads(summary: BlockSummary) -> Iterator[WishRow]:
    for own in loads_of(summary):
        figure, *more = table("block", "wished load", "wishes", own)
        near = None if own.part is None else abs(own.part - own.wished) <= LOAD_NEAR
        number = str(own.week.number)
        what, wished = f"week {number} of a full one", show_share(own.wished / 100)
        if own.races:
            what += ", without its races"
        yield WishRow(("load", number), what, wished, shown(figure), near, (figure, *more))


def _shares(summary: BlockSummary) -> Iterator[WishRow]:
    figures = by_name("block", "block", summary)
    for name, wished in summary.block.wished_shares.items():
        figure = figures[name.replace("_", " ")]
        met = wished.holds(figure.value)
        plain = met and all(round(1000 * own) % 10 == 0 for own in (wished.least, wished.most))
        planned = shown(figure) if plain else exact(figure.value)
        span = span_words(wished)
        yield WishRow(("share", name), SHARE_WORDS[name], span, planned, met, (figure,))


def _goals(catalogue: Catalogue, summary: BlockSummary) -> Iterator[WishRow]:
    words = catalogue.words("goals")
    for own in goals_of(summary):
        figures = tuple(table("block", "goal", "wishes", own))
        count = round(figures[0].value or 0)
        yield WishRow(("goal", own.goal), words[own.goal].title.lower(), goal_words(own),
                      counted(count, "practice"), count >= own.wished, figures)  # fmt: skip


def goal_words(of: GoalOfBlock) -> str:
    """What was wished of a goal, as it was wished, and how many practices that comes to."""
    if not of.whole:
        return OF_BLOCK
    if of.weight == of.whole:
        return f"all {of.practices}"
    parts = f"{of.weight} of {of.whole} parts"
    return f"{parts}: {of.wished} ({formula(practices_wished(of))})"


def _strokes(catalogue: Catalogue, summary: BlockSummary) -> Iterator[WishRow]:
    words = catalogue.words("strokes")
    for own in strokes_of(summary):
        figures = tuple(table("block", "stroke", "wishes", own))
        share, least = figures[0].value or 0.0, _strokes_wished(summary.block)
        met = round(share, 6) >= least
        first, _ = own.least
        planned = shown(figures[0]) if met else exact(share)
        yield WishRow(("stroke", own.stroke), f"{words[own.stroke].title.lower()} of any two weeks",
                      span_words(ShareRange(least, 1.0)),
                      f"{planned} in weeks {first} and {first + 1}", met, figures)  # fmt: skip


def _strokes_wished(block: Block) -> float:
    return block.wishes.strokes if block.wishes else 0.0


def _tests(catalogue: Catalogue, summary: BlockSummary) -> Iterator[WishRow]:
    run = weeks_run(summary, catalogue.benchmarks)
    for id, weeks in run.items():
        wished = [n for n, week in enumerate(summary.block.weeks, 1) if id in week.benchmarks]
        yield WishRow(("test", id), catalogue.benchmarks[id].title, weeks_words(wished),
                      weeks_words(weeks), set(wished) <= {*weeks})  # fmt: skip


def _taper(catalogue: Catalogue, summary: BlockSummary) -> Iterator[WishRow]:
    """The taper beside the policy: how far it cuts, or at this level how many days are lighter."""
    figures, days = by_name("block", "block", summary), summary.rules.light_days
    policy = catalogue.policy
    cut, lighter = figures["taper"], figures["taper days"]
    if cut.value is not None:
        wished = ShareRange(policy.limit("taper_cut_least"), policy.limit("taper_cut_most"))
        met = wished.holds(cut.value)
        planned = shown(cut) if met else exact(cut.value)
        words = f"{span_words(wished)}, by the policy"
        yield WishRow(("taper", "cut"), "metres that the taper cuts", words, planned, met, (cut,))
    if days is not None and lighter.value is not None:
        words = f"{days.least} to {days.most}, by the policy"
        met = days.least <= lighter.value <= days.most
        yield WishRow(("taper", "days"), "lighter days of the taper", words,
                      shown(lighter), met, (lighter,))  # fmt: skip


def weeks_words(weeks: Sequence[int]) -> str:
    """Weeks in words: none, week 1, weeks 1, 4 and 8."""
    if not weeks:
        return "in no week"
    *first, last = map(str, weeks)
    return f"weeks {', '.join(first)} and {last}" if first else f"week {last}"


def span_words(wished: ShareRange) -> str:
    """A range of a share in words."""
    if wished.most >= 1:
        return f"{exact(wished.least)} or more"
    if not wished.least:
        return f"{exact(wished.most)} at most"
    return f"{exact(wished.least)} to {exact(wished.most)}"


def exact(share: float | None) -> str:
    """A share to a tenth of a hundredth: rounded, it might be the very bound that it misses."""
    return "none" if share is None else f"{show_number(round(100 * share, 6))} %"
