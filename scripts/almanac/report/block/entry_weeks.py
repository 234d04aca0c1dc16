"""The weeks of a planned block as its entry has them: what each is about, and what stands on
its days.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.planning.choices import Choice, DaySlot
from almanac.arithmetic.planning.model import Plan
from almanac.arithmetic.planning.wishes import LOADING, BlockWishes
from almanac.report.planning.problem import Planning
from almanac.report.planning.request import BlockRequest, meet_of
from almanac.report.planning.usual import RACE_MINUTES, RACE_RATING
from almanac.source.scalars import in_quotes

_FOCUS_MOST = 240  # characters, as the schema has it
_KINDS = {"test": "with tests", "recovery": "a lighter week", "taper": "taper"}
_FULL_FROM = 98  # hundredths


def standing(planning: Planning, plan: Plan) -> Mapping[date, Sequence[tuple[DaySlot, Choice]]]:
    """By day what stands in its slots."""
    found: dict[date, list[tuple[DaySlot, Choice]]] = {}
    for slot, place in zip(planning.slots, plan, strict=True):
        if place and 0 <= slot.week < len(planning.wishes.weeks):
            found.setdefault(slot.on, []).append((slot, planning.grid.choices[place]))
    return found


def week_lines(planning: Planning, asked: BlockRequest, plan: Plan) -> Iterator[str]:
    """The weeks of the entry, line by line: what each is about, its days and its tests."""
    wishes, by_day = planning.wishes, standing(planning, plan)
    yield "weeks:"
    for number, week in enumerate(wishes.weeks):
        days = [wishes.first + timedelta(days=7 * number + n) for n in range(7)]
        choices = [choice for on in days for _, choice in by_day.get(on, ())]
        every = [choice for own in by_day.values() for _, choice in own]
        about = focus(planning, number, choices, every)
        yield f"  - focus: {in_quotes(about)}"
        if week.kind != LOADING:
            yield f"    kind: {week.kind}"
        yield "    days:"
        for name, on in zip(DAYS, days, strict=True):
            yield f"      {name}: {day_text(planning, asked, on, by_day.get(on, ()))}"
        if week.benchmarks:
            yield f"    benchmarks: [{', '.join(week.benchmarks)}]"


def day_text(
    planning: Planning, asked: BlockRequest, on: date, stands: Sequence[tuple[DaySlot, Choice]]
) -> str:
    """A day on one line: what stands, the meet, or rest."""
    if on in planning.wishes.races:
        meet = meet_of(planning.analysis.catalogue, asked)
        other = in_quotes(f"{meet.title}." if meet else "The race.")
        return f"{{other: {other}, minutes: {RACE_MINUTES}, rating: {RACE_RATING}}}"
    if not stands:
        return "{rest: true}"
    sessions = [
        f"practice: {choice.id}"
        if choice.begins == slot.begins
        else f'start: "{slot.begins}", practice: {choice.id}'
        for slot, choice in stands
    ]
    if len(stands) == 1 and stands[0][0].begins == stands[0][1].begins:
        return f"{{{sessions[0]}}}"
    return f"{{sessions: [{', '.join(f'{{{own}}}' for own in sessions)}]}}"


def focus(planning: Planning, week: int, choices: Sequence[Choice], every: Sequence[Choice]) -> str:
    """What a week is about: the wished goals that more of its practices are for than of the whole
    block's, and two practices by name.
    """
    catalogue, wish = planning.analysis.catalogue, planning.wishes.weeks[week]

    def above(goal: str) -> float:
        here = sum(goal in own.goals for own in choices) / max(1, len(choices))
        return here - sum(goal in own.goals for own in every) / max(1, len(every))

    there = [goal for goal in by_weight(planning.wishes) if any(goal in c.goals for c in choices)]
    words = catalogue.words("goals")
    best = [words[goal].title.lower() for goal in sorted(there, key=lambda own: -above(own))[:2]]
    about = " and ".join(best) or "easy swimming"
    squad = f"{catalogue.club.squads[planning.squad].title}: "
    own = [one for one in choices if not one.is_test] or list(choices)
    names = list(dict.fromkeys(small(_short(one, squad)) for one in own))[:2]
    how = _KINDS.get(wish.kind, "a full week" if wish.load >= _FULL_FROM else "")
    done = f": {' and '.join(names)}" if names else ""
    return f"{about[:1].upper()}{about[1:]}{done}{f'; {how}' if how else ''}."[:_FOCUS_MOST]


def _short(choice: Choice, squad: str) -> str:
    """A practice's title without its squad, of a composed one without the goals before its set."""
    title = choice.title.removeprefix(squad)
    return title.rpartition(" – ")[2] if choice.composed else title


def small(title: str) -> str:
    """A title as it stands inside a sentence."""
    return title[:1].lower() + title[1:]


def by_weight(wishes: BlockWishes) -> list[str]:
    """The wished goals, what weighs most first."""
    return sorted(wishes.goals, key=lambda goal: -wishes.goals[goal])
