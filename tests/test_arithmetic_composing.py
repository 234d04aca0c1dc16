"""Composing a practice: every answer held to rules of its own, over requests drawn by chance."""

from __future__ import annotations

import random
from dataclasses import replace
from functools import cache
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
from compose_requests import BAD, Case, told_of, vectors, walked
from node_scripts import run_by_node
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.order import Stood, unsafe, whole
from almanac.arithmetic.composing.pieces import UNKNOWN
from almanac.arithmetic.composing.request import BadWish, Request, wishes_of
from almanac.arithmetic.composing.shape import LEGS_COLD, are_legs_first, warm_up_cost
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import Kept, Wishes
from almanac.model.load import load
from almanac.report.compose.answer import answered
from almanac.report.compose.table import Made, compose_table

SQUADS = ("heron", "osprey", "reed")
SCRIPT = Path(__file__).parent / "compose" / "vectors.test.js"


@cache
def analysed() -> Analysis:
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    return Analysis(catalogue, DAY)


@cache
def made(squad: str) -> Made:
    return compose_table(analysed(), squad)


def table(squad: str) -> ComposeTable:
    return made(squad).table


def usual(own: ComposeTable) -> Request:
    """A request with nothing wrong in it."""
    goal = own.goals[own.pieces[own.squad.offers["home"][0].piece].goals[0]].id
    return Request("home", 60, [goal])


def drawn(seed: int) -> tuple[ComposeTable, Wishes]:
    """What a request by chance wishes."""
    own, request = asked_for(seed)
    return own, wishes_of(own, request)


def asked_for(seed: int) -> tuple[ComposeTable, Request]:
    """A request by chance: goals, minutes, groups, gear, pools, what was done."""
    chance = random.Random(seed)
    own = table(chance.choice(SQUADS))
    offers = own.squad.offers["home"]
    goals = sorted({goal for offer in offers for goal in own.pieces[offer.piece].goals})
    names = [own.goals[goal].id for goal in goals]
    request = Request(
        pool="home",
        minutes=min(own.squad.minutes, chance.randrange(20, 121, 5)),
        goals=chance.sample(names, chance.randint(1, 3)),
        groups=[] if chance.random() < 0.7 else [chance.choice(own.squad.groups).id],
        gear={gear.id: 0 for gear in own.gear if chance.random() < 0.3},
        effort=chance.choice(["", "", *(effort.id for effort in own.efforts)]),
        done=[(chance.choice(own.practices).id, chance.randint(0, 20))] if own.practices else [],
    )
    return own, request


@cache
def answers() -> list[tuple[ComposeTable, Wishes, tuple[Proposal, ...]]]:
    return [(*asked, compose(*asked)) for asked in map(drawn, range(60))]


def each() -> list[tuple[Asked, tuple[Stood, ...]]]:
    return [(Asked(own, wishes), one.order) for own, wishes, found in answers() for one in found]


def test_a_club_of_thirteen_sets_is_composed_from() -> None:
    assert sum(bool(found) for _, _, found in answers()) >= 12


def test_the_slot_is_filled_to_within_two_minutes() -> None:
    for asked, order in each():
        left = 60 * asked.wishes.minutes - sum(one.lead + one.own.takes for one in order) / 10
        assert 0 <= left <= 120


def test_each_begins_with_a_warm_up_and_ends_with_a_cool_down_around_a_main_set() -> None:
    for _, order in each():
        roles = "".join(one.role for one in order)
        assert roles in {
            "w" + skill + mains + easy + "c"
            for skill in ("", "s")
            for mains in ("m", "mn", "nm", *map("".join, permutations("mno")))
            for easy in ("", "e")
        }


def test_gear_suffices_and_no_piece_stands_twice() -> None:
    for asked, order in each():
        assert len({one.own.place for one in order}) == len(order)
        for one in order:
            for gear in one.own.piece.gear:
                heads = sum(asked.wishes.heads[group] for group in asked.wishes.groups)
                most = one.own.piece.most_in_lane
                lanes = sum(asked.wishes.lanes[group] for group in asked.wishes.groups)
                used = min(heads, most * lanes) if most else heads
                assert used <= asked.wishes.gear[gear]


def test_no_main_set_was_done_in_the_last_days_or_stands_in_two_proposals() -> None:
    for _, wishes, found in answers():
        mains = [one.own.place for own in found for one in own.order if one.role in "mn"]
        assert len(mains) == len(set(mains))
        assert not any(wishes.days.get(place, 7) < 7 for place in mains)


def test_limits_of_a_whole_practice_hold() -> None:
    for asked, order in each():
        limits, sizes = asked.table.squad.limits, [one.own.size for one in order]
        assert sum(size.fast for size in sizes) <= limits.fast
        assert sum(size.resisted for size in sizes) <= limits.resisted
        assert sum(size.under for size in sizes) <= limits.under
        doses: dict[int, int] = {}
        for size in sizes:
            for drill, plain, strict in size.doses:
                doses[drill] = doses.get(drill, 0) + (strict if plain == UNKNOWN else plain)
        assert all(dose <= 1000 for dose in doses.values())


def test_every_drill_comes_after_what_it_needs_first() -> None:
    for asked, order in each():
        known = set(asked.wishes.taught)
        for one in order:
            assert set(one.own.piece.asks) <= known
            known |= set(one.own.piece.drills)


def test_the_same_request_gets_the_same_answer_from_a_table_in_another_order_of_days() -> None:
    for own, wishes, found in answers()[:12]:
        shuffled = dict(reversed(list(wishes.days.items())))
        assert compose(own, replace(wishes, days=shuffled)) == found


def test_what_is_kept_stands_and_what_is_left_out_does_not() -> None:
    tried = 0
    for own, wishes, found in answers():
        if len(found) < 2:
            continue
        second = next(one for one in found[1].order if one.role == "m")
        kept = (Kept(second.own.place, "m", second.own.number),)
        for one in compose(own, replace(wishes, kept=kept), most=1):
            assert (second.own.place, "m", second.own.number) in [
                (own.own.place, own.role, own.own.number) for own in one.order
            ]
            tried += 1
        without = replace(wishes, left_out=frozenset([second.own.place]))
        for one in compose(own, without, most=1):
            assert second.own.place not in [own.own.place for own in one.order]
    assert tried


def test_work_under_water_waits_after_fast_work_of_an_earlier_piece() -> None:
    own, wishes = next((own, wishes) for own, wishes, found in answers() if found)
    order = compose(own, wishes, most=1)[0].order
    first, second = order[0], order[1]
    fast = replace(first, own=replace(first.own, size=replace(first.own.size, calm=0)))
    size = replace(second.own.size, goes_under=0)
    under = replace(second, own=replace(second.own, size=size), lead=0)
    asked = Asked(own, wishes)
    assert unsafe(asked, (fast, under)) == "breath"
    late = replace(under, lead=own.squad.limits.under_after_fast)
    assert unsafe(asked, (fast, late)) != "breath"
    assert whole((fast, late)) == whole((fast, under)) + late.lead


@pytest.mark.parametrize(("change", "sentence"), BAD)
def test_a_wish_that_cannot_be_is_told_in_one_sentence(
    change: dict[str, object], sentence: str
) -> None:
    own = table("heron")
    request = replace(usual(own), **change)  # type: ignore[arg-type]
    with pytest.raises(BadWish) as told:
        wishes_of(own, request)
    assert sentence in str(told.value)
    assert "\n" not in str(told.value)


def walk(request: Request) -> list[dict[str, Any]]:
    """Changes of the first proposal for Heron."""
    return [*walked(answered(analysed(), made("heron"), request), random.Random(1), 12)]


def test_the_scripts_of_the_pages_answer_and_refuse_the_same(tmp_path: Path) -> None:
    requests = [(own.squad.id, request) for own, request in map(asked_for, range(30))]
    bad = [replace(usual(table("heron")), **change) for change, _ in BAD]  # type: ignore[arg-type]
    requests += [("heron", request) for request in bad]
    requests += [("reed", replace(usual(table("reed")), minutes=120))]
    request = replace(usual(table("heron")), heads={"heron-1": 4}, lanes={"heron-1": 1}, adults=4)
    cases: list[Case] = [
        (squad, own, told_of(analysed(), made(squad), own), ()) for squad, own in requests
    ]
    cases += [("heron", request, told_of(analysed(), made("heron"), request), walk(request))]
    every = {squad: made(squad) for squad in SQUADS}
    run_by_node(SCRIPT, **vectors(analysed(), every, cases, tmp_path / "vectors.json"))


def test_legs_that_first_work_hard_want_kick_before_them() -> None:
    own = table("heron")
    asked = Asked(own, wishes_of(own, usual(own)))
    sized = next(one for offer in asked.offers for one in asked.sized(offer))

    def piece(kick: int, hardest: int) -> Sized:
        return replace(sized, piece=replace(sized.piece, kick=kick, hardest=hardest, strokes=()))

    hard, easy = piece(800, own.fast), piece(200, own.fast - 2)
    assert are_legs_first(asked, [hard]) and are_legs_first(asked, [piece(0, 0), hard])
    assert not are_legs_first(asked, [easy, hard]) and not are_legs_first(asked, [piece(800, 0)])
    still, kicked = piece(0, own.fast - 1), piece(1, own.fast - 1)
    more = warm_up_cost(asked, still, [hard]) - warm_up_cost(asked, kicked, [hard])
    assert more == LEGS_COLD
    assert warm_up_cost(asked, still, [easy]) == warm_up_cost(asked, kicked, [easy])
