"""Practices composed for a block where the squad has none that fits: for a goal that nothing in a
slot serves, for a slot that few fit, for a week that is to be light.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.request import BadWish, Request, wishes_of
from almanac.arithmetic.composing.wishes import MINUTES_LEAST, MINUTES_MOST
from almanac.arithmetic.planning.choices import HEAVY, LOAD, Choice
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.named import TITLE_MOST, title
from almanac.report.compose.table import Made, compose_table
from almanac.report.planning.problem import Planning
from almanac.source.paths import MOST_ID, plain_id
from almanac.source.scalars import in_quotes

FEW = 4
"""With fewer practices that fit, others are composed for each goal."""
LIGHT_SHARE = 70
"""A week that is to be light has practices of so much of a usual one, in hundredths; where easier
work in the whole slot is not enough, as much of the slot.
"""
_NUMBER = 4  # letters of ", 12" after a title that another has
_STEP = 5  # minutes that a slot is cut by are in such steps


@dataclass(frozen=True)
class Draft:
    """A composed practice: its id, the title that it would have, and its text, whose first line is
    the title that it has, ``called``.
    """

    id: str
    title: str
    text: str
    called: str = ""

    def titled(self, taken: set[str]) -> Draft:
        """The same under a title that no other has."""
        line, _, rest = self.text.partition("\n")
        called = _free(self.title, ", ", taken)
        assert line.startswith("title: ")
        return replace(self, text=f"title: {in_quotes(called)}\n{rest}", called=called)


@dataclass(frozen=True)
class _Kind:
    """Slots that are alike: one pool, so long, in the same lanes."""

    pool: str
    minutes: int
    begins: str
    lanes: frozenset[int]


def drafts(planning: Planning, broken: frozenset[str]) -> Iterator[Draft]:
    """What is composed for the slots of a block, by what they lack."""
    kinds: dict[_Kind, list[int]] = {}
    for number, slot in enumerate(planning.slots):
        if not slot.only:
            lanes = slot.lanes or frozenset()
            kinds.setdefault(_Kind(slot.pool, slot.minutes, slot.begins, lanes), []).append(number)
    wanted = {kind: [*_requests(planning, kind, slots)] for kind, slots in kinds.items()}
    pools = [pool for pool in dict.fromkeys(kind.pool for kind in kinds) if pool]
    if not any(wanted.values()):
        return
    made = compose_table(planning.analysis, planning.squad, broken, pools)
    there = planning.analysis.catalogue.practices
    names = _Names({*there}, {own.title for own in there.values()})
    seen, opened = set[tuple[object, ...]](), Counter[int]()
    for kind, requests in wanted.items():
        for request in requests:
            for draft in _composed(made, kind, request, names, opened):
                # The same under another title, or at another time of day, is one practice.
                swum = draft.text.partition("\nparts:")[2]
                own = (kind.pool, request.minutes, kind.lanes, swum)
                if own not in seen:
                    seen.add(own)
                    yield draft


def _requests(planning: Planning, kind: _Kind, slots: Sequence[int]) -> Iterator[Request]:
    """What is asked of composing for slots of a kind."""
    goals = sorted(planning.wishes.goals, key=lambda goal: -planning.wishes.goals[goal])
    own = [planning.grid.choices[place] for place in planning.grid.may[slots[0]] if place]
    fit = [choice for choice in own if not choice.is_test]
    lacking = [goal for goal in goals if sum(goal in own.goals for own in fit) < FEW]
    lanes = _lanes(planning.analysis, planning.squad, kind.lanes)
    minutes = min(kind.minutes, MINUTES_MOST)
    if all(own.needs for own in fit):  # else nothing could stand in the first of them
        untaught = dict.fromkeys(planning.analysis.catalogue.progressions, 0)
        for goal in goals:
            yield Request(kind.pool, minutes, [goal], lanes=lanes, taught=untaught)
    for taught in _light_lacking(planning, slots, fit):
        yield from _light(planning, kind, goals, lanes, taught)
    for goal in lacking:
        for asked in _beside(goal, goals):
            yield Request(kind.pool, minutes, asked, lanes=lanes)


def _light(
    planning: Planning,
    kind: _Kind,
    goals: Sequence[str],
    lanes: Mapping[str, int],
    taught: Mapping[str, int],
) -> Iterator[Request]:
    """What is asked for light days: easier work in the whole slot, then a shorter practice."""
    minutes = min(kind.minutes, MINUTES_MOST)
    short = max(MINUTES_LEAST, minutes * LIGHT_SHARE // 100 // _STEP * _STEP)
    efforts = [*planning.analysis.catalogue.efforts][:2]
    for effort, goal in product(efforts, goals):
        for asked in _beside(goal, goals) if effort == efforts[0] else [[goal]]:
            yield Request(kind.pool, minutes, asked, lanes=lanes, effort=effort, taught=taught)
    for effort, goal in product(efforts[:1], goals):
        yield Request(kind.pool, short, [goal], lanes=lanes, effort=effort, taught=taught)


def _beside(goal: str, goals: Sequence[str]) -> Iterator[list[str]]:
    """A goal by itself, and beside another."""
    yield [goal]
    yield from ([goal, other] for other in [own for own in goals if own != goal][:1])


def _light_lacking(
    planning: Planning, slots: Sequence[int], fit: Sequence[Choice]
) -> Iterator[Mapping[str, int]]:
    """Where few light practices are there for weeks that are to be light, or have a test beside
    which another practice stands: the stages that are taught, for whom more are composed. Before
    the first test of a block nothing in it has been taught, so that it takes some that need
    nothing.
    """
    wishes, slot_of = planning.wishes, planning.slots
    weeks = {slot_of[slot].week for slot in slots}
    tests = {week for week in weeks if wishes.weeks[week].benchmarks}
    mean = sum(choice.sums[LOAD] for choice in fit) // max(1, len(fit))
    easy = [
        own for own in fit if not own.most.get(HEAVY) and 100 * own.sums[LOAD] <= LIGHT_SHARE * mean
    ]
    is_light = any(wishes.is_light(slot_of[slot].on) for slot in slots)
    if (is_light or tests) and len(easy) < FEW:
        yield {}
    first = {*wishes.weeks[0].benchmarks}
    needs = {
        need
        for own in planning.choices
        if own.is_test and (not own.tests or first & {*own.tests})
        for need in own.needs
    }
    if 0 in tests and needs and not any(needs & own.teaches and not own.needs for own in easy):
        yield dict.fromkeys(planning.analysis.catalogue.progressions, 0)


def _lanes(analysis: Analysis, squad: str, lanes: frozenset[int]) -> Mapping[str, int]:
    """By lane group how many of the slot's lanes it has, where the usual ones are not there."""
    groups = {id: own for id, own in analysis.catalogue.lane_groups.items() if own.squad == squad}
    usual = sum(group.lanes for group in groups.values())
    if not lanes or set(range(1, usual + 1)) <= lanes:
        return {}
    shared = {id: max(1, own.lanes * len(lanes) // usual) for id, own in groups.items()}
    return shared if sum(shared.values()) <= len(lanes) else {}


def _composed(
    made: Made, kind: _Kind, request: Request, names: _Names, opened: Counter[int]
) -> Iterator[Draft]:
    """The proposals of a request as entries; none where it cannot be. ``opened`` counts what opens
    them, so that warm-ups vary.
    """
    try:
        wishes = wishes_of(made.table, request)
    except BadWish:
        return
    numbered, free = dict[str, list[int]](), sorted(kind.lanes)
    for group, count in request.lanes.items():
        numbered[group], free = free[:count], free[count:]
    for own in compose(made.table, wishes, opened=opened):
        opened[own.order[0].own.place] += 1
        entry = practice_entry(made.table, made.candidates, wishes, own, kind.begins, numbered)
        id, called = names.found(made, own, request)
        draft = Draft(id, called, as_yaml({**entry, "title": called}))
        yield draft.titled(names.titles)


@dataclass
class _Names:
    """Ids and titles that practices have."""

    ids: set[str]
    titles: set[str]

    def found(self, made: Made, own: Proposal, request: Request) -> tuple[str, str]:
        """A title with room for a number, and by it an id that no practice has: the squad's own
        before what the title says behind its name.
        """
        called = title(Asked(made.table, wishes_of(made.table, request)), own, TITLE_MOST - _NUMBER)
        squad = made.table.squad
        words = plain_id(called.removeprefix(squad.title))
        id = f"{squad.id}-{words}"[: MOST_ID - _NUMBER].strip("-")
        return _free(id, "-", self.ids), called


def _free(name: str, mark: str, taken: set[str]) -> str:
    """The name, with a number where it is taken; it is then."""
    each = (f"{name}{mark}{number}" for number in range(2, len(taken) + 3))
    found = name if name not in taken else next(one for one in each if one not in taken)
    taken.add(found)
    return found
