"""A planned block as an entry of the catalogue, in YAML as entries are written."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from datetime import date, timedelta

from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.planning_choices import Choice, DaySlot
from almanac.arithmetic.planning_model import Plan
from almanac.arithmetic.planning_wishes import LOADING, BlockWishes, Permille
from almanac.model.catalogue import Catalogue
from almanac.report.planning_problem import Planning
from almanac.report.planning_request import BlockRequest, meet_of
from almanac.report.planning_usual import RACE_MINUTES, RACE_RATING
from almanac.source.scalars import in_quotes

LINE, SUMMARY_MOST, LINE_MOST = 112, 120, 240
_WORDS = {2: "Two", 3: "Three", 4: "Four", 5: "Five", 6: "Six", 7: "Seven", 8: "Eight",
          9: "Nine", 10: "Ten", 12: "Twelve"}  # fmt: skip
_KINDS = {"test": "with tests", "recovery": "a lighter week", "taper": "taper"}
_FULL_FROM = 98  # hundredths


def standing(planning: Planning, plan: Plan) -> Mapping[date, Sequence[tuple[DaySlot, Choice]]]:
    """By day what stands in its slots."""
    found: dict[date, list[tuple[DaySlot, Choice]]] = {}
    for slot, place in zip(planning.slots, plan, strict=True):
        if place and 0 <= slot.week < len(planning.wishes.weeks):
            found.setdefault(slot.on, []).append((slot, planning.grid.choices[place]))
    return found


def block_text(
    planning: Planning,
    asked: BlockRequest,
    plan: Plan,
    met: Sequence[str],
    unserved: Collection[str] = (),
) -> str:
    """The text of the entry; ``met`` are the shares that the plan keeps to, ``unserved`` the goals
    that nothing in it serves.
    """
    return "\n".join([*_head(planning, asked, unserved), *_weeks(planning, asked, plan),
                      *_tail(planning, asked, met)]) + "\n"  # fmt: skip


def _head(planning: Planning, asked: BlockRequest, unserved: Collection[str]) -> Iterator[str]:
    catalogue, wishes = planning.analysis.catalogue, planning.wishes
    squad = catalogue.club.squads[asked.squad].title
    chief = " and ".join(_titles(catalogue, wishes)[:2])
    weeks = _count(len(wishes.weeks))
    yield f"title: {in_quotes(f'{squad}: {chief}'[:60].rstrip(', '))}"
    summary = f"{weeks} for {squad}: {', '.join(_titles(catalogue, wishes))}."
    if len(summary) > SUMMARY_MOST:
        summary = f"{weeks} for {squad}: {chief}."
    yield f"summary: {in_quotes(summary)}"
    yield f"squad: {asked.squad}"
    served = [goal for goal in _by_weight(wishes) if goal not in unserved]
    yield f"goals: [{', '.join(served or _by_weight(wishes))}]"
    yield f"starts: {wishes.first}"
    yield "purpose: >-"
    yield from (f"  {line}" for line in _wrapped(_purpose(planning, asked)))


def _by_weight(wishes: BlockWishes) -> list[str]:
    return sorted(wishes.goals, key=lambda goal: -wishes.goals[goal])


def _titles(catalogue: Catalogue, wishes: BlockWishes) -> list[str]:
    words = catalogue.words("goals")
    return [words[goal].title.lower() for goal in _by_weight(wishes)]


def _count(weeks: int) -> str:
    return f"{_WORDS.get(weeks, str(weeks))} weeks" if weeks > 1 else "A week"


def _purpose(planning: Planning, asked: BlockRequest) -> str:
    """What it is for and how it will show, from the wishes."""
    catalogue, wishes = planning.analysis.catalogue, planning.wishes
    titles = _titles(catalogue, wishes)
    said = [f"For {titles[0]} above all" if len(titles) > 1 else f"For {titles[0]}"]
    if len(titles) > 1:
        said[0] += f", beside it {', '.join(titles[1:])}"
    said[0] += f", over {_count(len(wishes.weeks)).lower()}."
    tested: dict[str, list[int]] = {}
    for number, week in enumerate(wishes.weeks, 1):
        for benchmark in week.benchmarks:
            tested.setdefault(benchmark, []).append(number)
    again = {benchmark: weeks for benchmark, weeks in tested.items() if len(weeks) > 1}
    if again:
        names = " and ".join(f"the {_small(catalogue.benchmarks[id].title)}" for id in again)
        first, last = (sorted({weeks[n] for weeks in again.values()}) for n in (0, -1))
        one = len(again) == 1
        said.append(
            f"It has worked when {names} of {_weeks_of(last)} {'is' if one else 'are'} quicker "
            f"than {'that' if one else 'those'} of {_weeks_of(first)} by more than "
            f"{'the test calls' if one else 'the tests call'} a change."
        )
    else:
        said.append("It has worked when what each evening asks for holds to its last repeat.")
    meet = meet_of(catalogue, asked)
    if meet:
        said.append(f"It leads to {meet.title}.")
    said.append("Planned by almanac compose block from the practices of the squad.")
    return " ".join(said)


def _small(title: str) -> str:
    return title[:1].lower() + title[1:]


def _weeks_of(numbers: Sequence[int]) -> str:
    return f"week{'s' * (len(numbers) > 1)} {' and '.join(map(str, numbers))}"


def _wrapped(text: str) -> Iterator[str]:
    line = ""
    for word in text.split():
        if line and len(line) + 1 + len(word) > LINE:
            yield line
            line = word
        else:
            line = f"{line} {word}".strip()
    yield line


def _weeks(planning: Planning, asked: BlockRequest, plan: Plan) -> Iterator[str]:
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

    there = [goal for goal in _by_weight(planning.wishes) if any(goal in c.goals for c in choices)]
    words = catalogue.words("goals")
    best = [words[goal].title.lower() for goal in sorted(there, key=lambda own: -above(own))[:2]]
    about = " and ".join(best) or "easy swimming"
    squad = f"{catalogue.club.squads[planning.squad].title}: "
    own = [one for one in choices if not one.is_test] or list(choices)
    names = list(dict.fromkeys(_small(_short(one, squad)) for one in own))[:2]
    how = _KINDS.get(wish.kind, "a full week" if wish.load >= _FULL_FROM else "")
    done = f": {' and '.join(names)}" if names else ""
    return f"{about[:1].upper()}{about[1:]}{done}{f'; {how}' if how else ''}."[:LINE_MOST]


def _short(choice: Choice, squad: str) -> str:
    """A practice's title without its squad, of a composed one without the goals before its set."""
    title = choice.title.removeprefix(squad)
    return title.rpartition(" – ")[2] if choice.composed else title


def _tail(planning: Planning, asked: BlockRequest, met: Sequence[str]) -> Iterator[str]:
    wishes = planning.wishes
    own = planning.limits.light_days is not None
    if wishes.taper and own:
        yield f"taper: {{from: {wishes.taper.first}, to: {wishes.taper.last}}}"
    if wishes.race:
        yield f"race_day: {wishes.race}"
    if asked.meet:
        yield f"meet: {asked.meet}"
    kept = {name: own for name, own in wishes.shares.items() if name in met}
    if kept:
        yield "balance:"
        yield from _ranges(kept, 2)
    yield from _wishes(
        planning, asked, {n: own for n, own in wishes.shares.items() if n not in met}
    )


def _wishes(
    planning: Planning, asked: BlockRequest, missed: Mapping[str, Permille]
) -> Iterator[str]:
    """What was wished and nothing else in the block says."""
    goals = ", ".join(
        f"{goal}: {planning.wishes.goals[goal]}" for goal in _by_weight(planning.wishes)
    )
    yield "wishes:"
    yield f"  goals: {{{goals}}}"
    if missed:
        yield "  shares:"
        yield from _ranges(missed, 4)
    if planning.wishes.strokes:
        yield f"  strokes: {planning.wishes.strokes / 1000:g}"
    if planning.aims.full:
        yield f"  loads: [{', '.join(map(str, planning.aims.loads(asked.loads)))}]"
        yield f"  full_load: {planning.aims.full}"


def _ranges(shares: Mapping[str, Permille], indent: int) -> Iterator[str]:
    for name, (least, most) in shares.items():
        yield f"{indent * ' '}{name}: {{from: {least / 1000:g}, to: {most / 1000:g}}}"
