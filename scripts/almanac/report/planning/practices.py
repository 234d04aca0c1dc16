"""The practices of a squad as a plan of a block sees them: their sums, limits, goals and drills."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from math import ceil

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.balance import balance_of
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.loads import loads_hands, resists, worn_in
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.planning.choices import (
    ALL_OUT,
    DOLPHIN,
    FAST,
    FLUTTER,
    HARD,
    HEAVY,
    KICK,
    LOAD,
    METRES,
    PLATES,
    RESISTED,
    STARTS,
    SUPINE,
    TEST,
    UNDER,
    UNDER_SETS,
    WORN,
    Choice,
)
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.practice_aims import benchmarks_run, chief_goals
from almanac.arithmetic.session_load import planned_load, session_minutes
from almanac.arithmetic.start_limits import HEAD_FIRST, enters
from almanac.arithmetic.under_water import is_under
from almanac.checks.lane_bookings import lanes_of
from almanac.checks.under_water_days import metres_of
from almanac.model import vocabularies as words
from almanac.model.block import Session
from almanac.model.policy import Word

ALL_OUT_FROM = 100
"""Metres at the hardest effort from which on a day counts as all-out; house preference."""


WORK = "|"
"""Between the drills of a main part that stands in no file, how hard it gets, and how far."""
_REACHES = 50, 100, 200  # metres or yards of the longest rep; house preference


def choices_of(
    analysis: Analysis,
    squad: str,
    composed: frozenset[str] = frozenset(),
    kept: Collection[str] = (),
) -> Iterator[Choice]:
    """The squad's practices whose load is known, or that are ``kept``, by id."""
    for id, summary in sorted(analysis.practices.items()):
        if summary.practice.squad == squad:
            choice = choice_of(analysis, summary, id in composed)
            if choice.sums[LOAD] or id in kept:
                yield choice


def choice_of(analysis: Analysis, summary: PracticeSummary, composed: bool = False) -> Choice:
    """A practice as a plan sees it; its load is 0 where it is not known."""
    practice = summary.practice
    teaches, needs = _teaching(analysis, summary)
    return Choice(
        id=practice.id,
        title=practice.title,
        pool=practice.pool,
        minutes=practice.slot.minutes,
        begins=practice.slot.start,
        lanes=frozenset(lanes_of(summary, Session())),
        adults=max(practice.adults or 0, summary.hands.adults if summary.hands else 0),
        sums=_sums(summary),
        most=_most(analysis, summary),
        gear={need.gear: need.needed for need in summary.gear},
        strokes=_strokes(summary),
        goals=chief_goals(summary),
        mains=tuple(_mains(analysis, summary)),
        opens=next((_key(run) for run in summary.runs if run.word == words.OPENS), ""),
        teaches=teaches,
        needs=needs,
        tests=tuple(benchmarks_run(analysis.catalogue.benchmarks, summary)),
        composed=composed,
    )


def _sums(summary: PracticeSummary) -> Mapping[str, int]:
    """Metres and load of the squad's first lane group."""
    group = next(iter(summary.groups), "")
    load = planned_load(summary, group) if group else None
    own = balance_of([summary.of(group)])
    kicks = own.by.get("kick", {})
    found = {
        METRES: own.metres,
        LOAD: load.value if load else 0,
        KICK: own.kick_m,
        FLUTTER: own.flutter_kick_m,
        SUPINE: own.supine_flutter_m,
        DOLPHIN: kicks.get(words.DOLPHIN, 0.0),
        RESISTED: own.resisted_m,
        FAST: own.fast_m,
    }
    return {name: round(amount) for name, amount in found.items()}


def _strokes(summary: PracticeSummary) -> Mapping[str, int]:
    own = balance_of([summary.of(next(iter(summary.groups), None))])
    return {stroke: round(metres) for stroke, metres in own.by.get("stroke", {}).items()}


def _most(analysis: Analysis, summary: PracticeSummary) -> Mapping[str, int]:
    """What any lane group has at most, rounded up."""
    catalogue, policy = analysis.catalogue, analysis.catalogue.policy
    held, push_off = policy.limit("held_as_50"), policy.limit("push_off_most")
    hardest = list(catalogue.efforts)[-1]
    most: dict[str, float] = {}

    def tell(name: str, amount: float) -> None:
        most[name] = max(most.get(name, 0), amount)

    for swum in summary.every_way:
        own = balance_of([swum])
        tell(WORN, worn_in(swum, catalogue.gear, resists, held))
        tell(PLATES, worn_in(swum, catalogue.gear, loads_hands, held))
        tell(UNDER, metres_of(swum, push_off))
        tell(HARD, own.fast_m >= policy.limit("hard_day_fast"))
        tell(HEAVY, own.fast_m > policy.limit("light_fast_most"))
        tell(ALL_OUT, own.by.get("effort", {}).get(hardest, 0) >= ALL_OUT_FROM)
        tell(STARTS, any(_dives(catalogue.words("starts"), rep.item.start) for rep in swum.reps))
    for group in summary.groups:
        runs = summary.runs_of(group)
        sets = [any(is_under(rep, push_off) for rep in run.of(group).reps) for run in runs]
        tell(UNDER_SETS, sum(sets))
        rating = _rating(summary, group)
        tell(HEAVY, rating is None or rating > policy.limit("light_rating_most"))
    tell(TEST, any(run.word == words.TESTS for run in summary.runs))
    return {name: ceil(amount) for name, amount in most.items()}


def _dives(starts: Mapping[str, object], start: str) -> bool:
    word = starts.get(start)
    return isinstance(word, Word) and enters(word) == HEAD_FIRST


def _rating(summary: PracticeSummary, group: str) -> float | None:
    load, minutes = planned_load(summary, group), session_minutes(summary, group)
    return load.value / minutes.value if load and minutes and minutes.value else None


def _mains(analysis: Analysis, summary: PracticeSummary) -> Iterator[str]:
    """What the parts are that a session is for, each once; what is easy throughout is none."""
    aside = (words.OPENS, words.CLOSES, words.TEACHES, words.LEADS_ON, words.TESTS)
    scale, easiest = analysis.scale, next(iter(analysis.catalogue.efforts))
    runs = [
        run
        for run in summary.runs
        if run.word not in aside
        and any(
            word != easiest
            for rep in run.every_rep
            for piece in rep.pieces
            for word in scale.split(piece.effort)
        )
    ]
    yield from dict.fromkeys(_work(scale, run) for run in runs)


def _work(scale: EffortScale, run: PartRun) -> str:
    """What a main part is: its set; else the drills in it, how hard it gets, and whether its reps
    are short, middling or long. Strong 50s and easy 400s of one drill are not the same set.
    """
    if run.swim_set:
        return run.swim_set.id
    efforts = [word for rep in run.every_rep for p in rep.pieces for word in scale.split(p.effort)]
    hardest = max(efforts, key=scale.rating, default="")
    longest = max((rep.distance for rep in run.every_rep), default=0)
    reach = sum(longest > most for most in _REACHES)
    return f"{_key(run)}{WORK}{hardest}{WORK}{reach}"


def _key(run: PartRun) -> str:
    """Its set, else the drills in it."""
    if run.swim_set:
        return run.swim_set.id
    return " ".join(dict.fromkeys(p.drill.id for rep in run.every_rep for p in rep.pieces))


def _teaching(
    analysis: Analysis, summary: PracticeSummary
) -> tuple[frozenset[str], frozenset[str]]:
    """The drills in a practice, and those of the squad's level or above that have to come before
    it.
    """
    drills = analysis.catalogue.drills
    levels = list(analysis.catalogue.words("levels"))
    own = levels.index(analysis.catalogue.club.squads[summary.practice.squad].level)
    teaches, needs = set[str](), set[str]()
    for group in summary.groups:
        seen = set[str]()
        for piece in summary.of(group).pieces:
            for need in piece.drill.needs_first:
                if need not in seen and levels.index(drills[need].level) >= own:
                    needs.add(need)
            seen.add(piece.drill.id)
        teaches |= seen
    return frozenset(teaches), frozenset(needs)
