"""What is told of the slots of a planned block: practices that leave much of theirs, weeks with
more of them than practices, and days of the week that were wished and have none.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.arithmetic.planning.choices import DaySlot
from almanac.arithmetic.planning.greedy import Standing
from almanac.arithmetic.planning.model import Plan, PlanRule
from almanac.findings import counted
from almanac.report.block.judged import JudgedBlock, JudgedWeek
from almanac.report.block.wishes import SHARE_WORDS
from almanac.report.planning.problem import Planning
from almanac.report.planning.request import BlockRequest, last_of

_MUCH = 15  # minutes of a slot that are left and asked about
_LIGHT = 85  # hundredths of a full week, as weeks with a test weigh: with less it is so by intent
_AGAIN = "longer ones would come again too soon or too often"
_HARD = "longer ones are too hard beside the days around them"
_NONE = "no practice that may stand there is longer"
_EASED = "longer ones ease too little before the race"
_WORDS = {
    "load over": "longer ones would make the week too heavy",
    "load under": "longer ones would leave the week too light",
    "first week": "longer ones would make the week too heavy",
    "stroke under": "longer ones have too little of a stroke",
    "not tested": "longer ones run no test",
    **dict.fromkeys(("again", "same again", "too often", "same warm-up"), _AGAIN),
    **dict.fromkeys(("hard days that touch", "tests that touch", "never light"), _HARD),
    "light before tests": _HARD,
}
"""What is missed more with a longer practice, by what a rule is about."""


def short_words(judged: JudgedBlock, planning: Planning, plan: Plan) -> Iterator[str]:
    """Of each week the practices that are much shorter than their slots, and why."""
    standing = Standing(planning.problem, list(plan))
    for week in judged.weeks:
        told: dict[str, list[str]] = {}
        for number, (slot, place) in enumerate(zip(planning.slots, plan, strict=True)):
            choice = planning.grid.choices[place]
            is_short = place and not slot.only and slot.minutes - choice.minutes >= _MUCH
            if is_short and slot.week == week.number - 1:
                own = f"{DAYS[slot.on.weekday()]} {choice.minutes} of {slot.minutes} minutes"
                told.setdefault(_why(planning, standing, number, week), []).append(own)
        for why, each in told.items():
            yield f"shorter than the slot in week {week.number}: {'; '.join(each)}, as {why}"


def _why(planning: Planning, standing: Standing, slot: int, week: JudgedWeek) -> str:
    """The wish that is missed the most, were the best of the longer practices to stand there."""
    problem, plan = standing.problem, standing.plan
    least = problem.choices[plan[slot]].minutes + _MUCH
    longer = [n for n in problem.may[slot] if problem.choices[n].minutes >= least]
    found = [(standing.dearer((slot,), (n,)), n) for n in longer]
    best = [
        (cost, n) for cost, n in found if cost is not None and standing.is_taught((slot,), (n,))
    ]
    if not best:
        return "a limit or the order of teaching keeps longer ones out" if longer else _NONE
    place = min(best)[1]
    dearer = {
        rule: problem.rules[rule].points
        * (problem.rules[rule].over_by(standing.sums[rule] + change)
           - problem.rules[rule].over_by(standing.sums[rule]))
        for rule, change in standing.changes((slot,), (place,)).items()
    }  # fmt: skip
    most = max(dearer, key=lambda rule: dearer[rule], default=None)
    if most is None or dearer[most] <= 0:
        return "longer ones serve none of the goals, or would have to be composed"
    return _words(planning, problem.rules[most], week)


def _words(planning: Planning, rule: PlanRule, week: JudgedWeek) -> str:
    goals = planning.analysis.catalogue.words("goals")
    if rule.about.startswith("goal "):
        return f"longer ones serve {goals[rule.which.split()[0]].title.lower()} less"
    if rule.about == "load over" and week.wished is not None and week.wished <= _LIGHT:
        kind = "" if week.kind == "loading" else f", a {week.kind} week,"
        return f"the week{kind} is to weigh {week.wished} % of a full one"
    share = rule.about.split()[0]
    if share in SHARE_WORDS:
        return f"with longer ones the share is missed of what is {SHARE_WORDS[share]}"
    return _WORDS.get(rule.about, _EASED)


def few_words(planning: Planning, plan: Plan) -> Iterator[str]:
    """That a week has more slots than there are practices for, where it does."""
    weeks = Counter(slot.week for slot in planning.slots if not slot.only)
    own = {place for slot, place in zip(planning.slots, plan, strict=True) if not slot.only}
    most, there = max(weeks.values(), default=0), len(own - {0})
    if 0 < there < most:
        yield (
            f"{counted(there, 'practice')} for {most} slots a week: with more sets the same come "
            "again less soon; bring some (almanac bring ID --from FOLDER), or write one (almanac "
            "new set ID)"
        )


def no_slot_words(asked: BlockRequest, slots: Sequence[DaySlot]) -> Iterator[str]:
    """The days of the week that were wished and have no slot in any week of the block."""
    last = last_of(asked)
    has = {DAYS[slot.on.weekday()] for slot in slots if asked.first <= slot.on <= last}
    for day in dict.fromkeys(asked.days):
        if day not in has:
            name = DAY_NAMES[DAYS.index(day)]
            yield (
                f"no slot on a {name} from {asked.first} to {last}: name one with "
                f"--slot {day}=17:30+60, or leave {day} out of --days"
            )
