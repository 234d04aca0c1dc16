"""Rules on seasons: dates in order, blocks within them, no week of a term without a plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.season_days import last_day, unplanned
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.block import Block
from almanac.model.season import Season, Stretch
from almanac.source.reader import DataPath


def blocks_in(analysis: Analysis, season: Season, squad: str) -> list[Block]:
    """The blocks of a squad that a season names, the earliest first."""
    named = (analysis.catalogue.blocks[id] for id in season.squads[squad].blocks)
    return sorted(named, key=lambda block: block.starts)


def _on_mondays(blocks: list[Block]) -> list[Block]:
    """Blocks without those that start in the middle of a week, which is told of themselves: where
    they lie is not what was meant.
    """
    return [block for block in blocks if not block.starts.weekday()]


@forbids("season-dates")
def season_dates(analysis: Analysis) -> Iterator[Problem]:
    """A season ends after it begins, and so does whatever it holds; all of that lies within it,
    and its meets do; terms follow each other, and so do outlines of a squad.
    """
    for season in analysis.catalogue.seasons.values():
        if season.last <= season.first:
            said = f"it lasts from {season.first} to {season.last}"
            yield Problem(season, ("to",), said, "write the later day last")
            continue  # nothing lies in it
        for path, own in _stretches(season):
            yield from _within(season, path, own)
        for path, each in _in_order(season):
            for number, (before, own) in enumerate(pairwise(each), 1):
                if own.first <= before.last:
                    said = f"it begins on {own.first}, and the one before lasts until {before.last}"
                    mend = "write them in order, and none over another"
                    yield Problem(season, (*path, number, "from"), said, mend)
        for number, id in enumerate(season.meets):
            meet = analysis.catalogue.meets[id]
            if not season.first <= meet.first <= meet.last <= season.last:
                said = f"'{id}' is on {meet.first}, and not in the season"
                yield Problem(season, ("meets", number), said, "take it out, or correct a date")


def _stretches(season: Season) -> Iterator[tuple[DataPath, Stretch]]:
    each: Mapping[str, Sequence[Stretch]] = {
        "terms": season.terms,
        "closures": season.closures,
        "exams": season.exams,
        "courses": season.courses,
    }
    for key, own in each.items():
        yield from (((key, number), one) for number, one in enumerate(own))
    for squad, plan in season.squads.items():
        for number, outline in enumerate(plan.outlines):
            yield ("squads", squad, "outlines", number), outline


def _in_order(season: Season) -> Iterator[tuple[DataPath, Sequence[Stretch]]]:
    yield ("terms",), season.terms
    for squad, plan in season.squads.items():
        yield ("squads", squad, "outlines"), plan.outlines


def _within(season: Season, path: DataPath, own: Stretch) -> Iterator[Problem]:
    if own.last < own.first:
        said = f"it lasts from {own.first} to {own.last}"
        yield Problem(season, (*path, "to"), said, "write the later day last")
    elif not season.first <= own.first <= own.last <= season.last:
        said = f"{own.first} to {own.last} does not lie in the season"
        mend = f"the season lasts from {season.first} to {season.last}"
        yield Problem(season, (*path, "from"), said, mend)


@forbids("block-outside-season")
def block_outside_season(analysis: Analysis) -> Iterator[Problem]:
    """A block stands in a season under its own squad, and all of its weeks lie in the season."""
    for season in analysis.catalogue.seasons.values():
        if season.last <= season.first:
            continue  # nothing lies in it: season-dates tells it
        for squad, plan in season.squads.items():
            for number, id in enumerate(plan.blocks):
                block, path = analysis.catalogue.blocks[id], ("squads", squad, "blocks", number)
                if block.squad != squad:
                    mend = f"name a block of {squad}"
                    yield Problem(season, path, f"'{id}' is a block of {block.squad}", mend)
                elif block.starts < season.first or last_day(block) > season.last:
                    said = f"'{id}' lasts from {block.starts} to {last_day(block)}"
                    mend = f"the season lasts from {season.first} to {season.last}"
                    yield Problem(season, path, said, mend)


@forbids("blocks-overlap")
def blocks_overlap(analysis: Analysis) -> Iterator[Problem]:
    """No two blocks of a squad in a season hold the same day, and no outline of it a day that a
    block holds.
    """
    for season in analysis.catalogue.seasons.values():
        for squad, plan in season.squads.items():
            blocks = _on_mondays(blocks_in(analysis, season, squad))
            for before, block in pairwise(blocks):
                if block.starts <= last_day(before):
                    said = f"'{block.id}' begins on {block.starts}, and '{before.id}' lasts until"
                    mend = "shorten one of them, or begin the other later"
                    path = ("squads", squad, "blocks", plan.blocks.index(block.id))
                    yield Problem(season, path, f"{said} {last_day(before)}", mend)
            for number, outline in enumerate(plan.outlines):
                over = (own for own in blocks if outline.meets(own.starts, last_day(own)))
                if held := next(over, None):
                    said = f"'{held.id}' holds {held.starts} to {last_day(held)}"
                    mend = "end the outline before it, or begin it after"
                    path = ("squads", squad, "outlines", number)
                    yield Problem(season, path, said, mend)


@warns("block-unlisted")
def block_unlisted(analysis: Analysis) -> Iterator[Problem]:
    """A block whose weeks lie in a season that has its squad stands in that season; and so does the
    meet that it leads to.
    """
    for season in analysis.catalogue.seasons.values():
        for block in analysis.catalogue.blocks.values():
            plan = season.squads.get(block.squad)
            if plan is None or last_day(block) < season.first or season.last < block.starts:
                continue
            if block.id not in plan.blocks:
                said = f"'{block.id}' of {block.squad} begins on {block.starts}, and is not here"
                path: DataPath = ("squads", block.squad)
                yield Problem(season, path, said, "name it under blocks", of_key=True)
            elif block.meet and block.meet not in season.meets:
                said = f"'{block.id}' leads to '{block.meet}', which is not here"
                yield Problem(season, ("meets",), said, "name it", of_key=True)


@warns("weeks-unplanned")
def weeks_unplanned(analysis: Analysis) -> Iterator[Problem]:
    """Every day of a term lies in a block or an outline of each squad of a season."""
    for season in analysis.catalogue.seasons.values():
        for squad, plan in season.squads.items():
            blocks = blocks_in(analysis, season, squad)
            if blocks != _on_mondays(blocks):
                continue
            for first, last in unplanned(season, plan, blocks):
                when = f"from {first} to {last}" if last > first else f"on {first}"
                said = f"nothing is planned for {squad} {when}"
                mend = "write a block, or an outline that says what is meant"
                yield Problem(season, ("squads", squad), said, mend, of_key=True)
