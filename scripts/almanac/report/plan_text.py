"""Summaries of practices and blocks for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.arithmetic.block import DAYS, BlockSummary, Taper, WeekPlan
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.facets import FACETS
from almanac.arithmetic.practice import PracticeSummary, SheetRow
from almanac.model.catalogue import Catalogue
from almanac.model.policy import Policy
from almanac.report.whiteboard import facet_title, in_order
from almanac.report.working_text import formula
from almanac.units import clock_time, show_change, show_distance, show_number, show_share, show_time


def practice_text(catalogue: Catalogue, summary: PracticeSummary) -> str:
    """A practice: its run sheet, totals, gear and brief."""
    practice, unit = summary.practice, summary.pool.course.unit
    squad = catalogue.club.squads[practice.squad].title
    sections = [
        [
            f"{practice.title} ({practice.id}), {squad}, {summary.pool.title} "
            f"({summary.pool.course})",
            practice.focus,
        ],
        list(sheet_lines(catalogue, summary)),
        [f"Distance {show_distance(summary.distance.value, unit)} = {formula(summary.distance)}"],
        [_facet_line(catalogue, summary, facet) for facet in FACETS],
        list(_loads(summary)),
        [f"Gear: {_gear(catalogue, summary) or 'none'}", "Brief:"]
        + [
            f"  - {line.hazard.rstrip('.')}: {line.control} [{', '.join(line.sources)}]"
            for line in summary.brief
        ],
    ]
    return "\n\n".join("\n".join(lines) for lines in sections)


def sheet_lines(catalogue: Catalogue, summary: PracticeSummary) -> Iterator[str]:
    """The run sheet by the clock."""
    start = summary.practice.slot.start
    for row in summary.sheet:
        title = part_title(catalogue, row)
        talk = f", {show_time(row.talk_s)} talk before it" if row.talk_s else ""
        gear = f", {show_time(row.gear_s)} to change gear" if row.gear_s else ""
        yield f"{clock_time(start, row.starts_s)}  {title}{talk}{gear}"
        for cell in row.cells:
            if cell.ends_s is None:
                yield f"         {cell.group}: no number, because a target is not known"
            else:
                waits = f", waits {show_time(cell.waits_s or 0)}" if cell.waits_s else ""
                yield f"         {cell.group} until {clock_time(start, cell.ends_s)}{waits}"
    yield slack_words(summary)


def part_title(catalogue: Catalogue, row: SheetRow) -> str:
    """A part by its word and its set."""
    part = row.run.part
    word = catalogue.words("practice-parts")[part.part].title
    return f"{word}: {row.run.swim_set.title}" if row.run.swim_set else word


def slack_words(summary: PracticeSummary) -> str:
    """Whether it fits the slot."""
    slack, minutes = summary.slack_s, summary.practice.slot.minutes
    if slack is None:
        return "When it ends is not known, because a target is not known."
    end = clock_time(summary.practice.slot.start, summary.ends_s or 0)
    if slack < 0:
        return f"Ends at {end}: {show_time(-slack)} over the slot of {minutes} minutes."
    return f"Ends at {end}: {show_time(slack)} to spare in a slot of {minutes} minutes."


def _facet_line(catalogue: Catalogue, summary: PracticeSummary, facet: str) -> str:
    split, unit = summary.by[facet], summary.pool.course.unit
    whole = summary.distance.value or 1
    shown = [
        f"{facet_title(catalogue, facet, word)} {show_distance(float(split[word]), unit)} "
        f"({show_share(float(split[word]) / whole)})"
        for word in in_order(catalogue, facet, split)
    ]
    return f"{facet.capitalize():9} {', '.join(shown)}"


def _loads(summary: PracticeSummary) -> Iterator[str]:
    for group in summary.groups:
        load = summary.load(group)
        yield f"Planned load {group}: {show_number(load.value) if load else 'no number'}"


def _gear(catalogue: Catalogue, summary: PracticeSummary) -> str:
    return ", ".join(
        f"{need.needed} × {catalogue.gear[need.gear].title.lower()} (owned {need.owned or 0})"
        for need in summary.gear
    )


def block_text(catalogue: Catalogue, groups: Mapping[str, BlockSummary]) -> str:
    """A block: a line a week for each lane group, then the balance of the whole."""
    first = next(iter(groups.values()))
    block = first.block
    lines = [
        f"{block.title} ({block.id}), {catalogue.club.squads[block.squad].title}, from "
        f"{block.starts}",
        block.purpose,
    ]
    for group, summary in groups.items():
        lines += [
            "",
            f"{group}",
            f"{'week':5}{'metres':>8}{'kick':>7}{'back':>7}{'resist':>8}{'fast':>7}"
            f"{'load':>8}{'monot.':>8}{'strain':>9}  change",
        ]
        lines += [_week_line(week) for week in summary.weeks]
    lines += ["", *balance_sentences(catalogue, first)]
    return "\n".join(lines)


def _week_line(week: WeekPlan) -> str:
    balance, load = week.balance, week.load
    days = "".join(
        "P" if day.practice else "·" if day.is_off else "o" if day.day else "?" for day in week.days
    )
    columns = f"{week.number:<5}{show_number(balance.metres, 0):>8}"
    columns += f"{show_share(balance.kick_share):>7}{show_share(balance.supine_share):>7}"
    columns += f"{show_share(balance.resisted_share):>8}{show_share(balance.fast_share):>7}"
    columns += f"{'–' if load is None else show_number(load.total):>8}"
    columns += (
        f"{'–' if load is None or load.monotony is None else show_number(load.monotony, 2):>8}"
    )
    columns += f"{'–' if load is None or load.strain is None else show_number(load.strain, 0):>9}"
    return f"{columns}  {'' if week.change is None else show_change(week.change.metres)}  {days}"


def balance_sentences(catalogue: Catalogue, summary: BlockSummary) -> Iterator[str]:
    """The balance of a block in sentences, with the conventions named."""
    balance = summary.balance
    yield f"{show_number(balance.metres, 0)} m in all; kick {show_share(balance.kick_share)} of it."
    yield f"Of the flutter kick, {show_share(balance.supine_share)} is on the back."
    yield (
        f"{show_number(balance.resisted_m, 0)} m resisted, {show_number(balance.fast_m, 0)} m "
        f"{EffortScale(catalogue.efforts).fast_words('or')}."
    )
    yield f"{show_number(balance.kick_into_stroke_m, 0)} m of stroke straight out of the kick."
    if summary.taper:
        yield _taper_words(catalogue.policy, summary.taper)
    yield (
        "Monotony is the daily mean over the standard deviation of the sample; strain is total "
        "× monotony (Foster 1998)."
    )
    yield f"Days: {' '.join(DAYS)}; P practice, o other work, · rest, ? not planned."


def _taper_words(policy: Policy, taper: Taper) -> str:
    """How far a taper cuts, beside what the policy asks for and why."""
    least, most = policy.limits["taper_cut_least"], policy.limits["taper_cut_most"]
    reasons = dict.fromkeys(f"{limit.reason} ({limit.source})" for limit in (least, most))
    return (
        f"The taper cuts distance by {show_share(taper.cut)}; the policy asks for "
        f"{show_share(least.value)} to {show_share(most.value)}. {' '.join(reasons)}"
    )
