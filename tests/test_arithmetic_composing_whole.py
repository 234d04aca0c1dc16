"""The cheapest practice against every practice that there is, over small tables by chance."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import product
from unittest.mock import patch

import pytest
from composing_world import asked, drawn, piece, size

from almanac.arithmetic.composing import around as composing_around
from almanac.arithmetic.composing import best as composing
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.best import compose, fits
from almanac.arithmetic.composing.costs import is_again
from almanac.arithmetic.composing.fit import cost_of
from almanac.arithmetic.composing.order import broken, laid
from almanac.arithmetic.composing.wishes import Kept

SEEDS = 100
Order = tuple[tuple[str, Sized], ...]


def may(asked: Asked, role: str) -> list[Sized]:
    """What may stand in a role; where a piece is kept there, it alone, and nowhere else."""
    kept = [own for own in asked.wishes.kept if own.role == role]
    elsewhere = [own.piece for own in asked.wishes.kept if own.role != role]
    wished = set(asked.wishes.goals)
    return [
        own
        for offer in asked.offers
        if not asked.why_not(offer, role) and offer.piece not in elsewhere
        for own in asked.sized(offer)
        if ("m" if role == "n" else role) in own.piece.roles
        and (role in "smn" or not own.piece.gear)
        and all(each.piece == own.place and each.number in (-1, own.number) for each in kept)
        # A main set lasts five minutes, three where it serves what is wished.
        and (
            role not in "mn"
            or kept
            or own.takes >= (1800 if wished & {*own.piece.goals} else 3000)
        )
        and (role != "w" or asked.wishes.taught >= {*own.piece.asks})
    ]  # fmt: skip


@cache
def every(seed: int) -> list[tuple[int, Order]]:
    """Every practice that breaks nothing, with what it costs."""
    asked = drawn(seed)
    return [
        (cost_of(asked, order), order)
        for order in orders(asked)
        if 0 <= asked.slot - sum(own.takes for _, own in order) <= 1200 + 6 * 300
        and not broken(asked, laid(asked, order))
    ]


def orders(asked: Asked) -> Iterator[Order]:
    """Every choice of pieces: fast main sets first, then those with more kick, then as chosen."""
    kept = [own.role for own in asked.wishes.kept]
    has_second = asked.slot >= 50 * 600 or "n" in kept
    lists: list[Sequence[Sized | None]] = [
        may(asked, role) if role in "wmc" or role in kept else [None, *may(asked, role)]
        for role in "wsmnec"
    ]
    if not has_second:
        lists[3] = [None]
    for warm, skill, main, second, easy, cool in product(*lists):
        pieces = [own for own in (warm, skill, main, second, easy, cool) if own]
        if len({own.place for own in pieces}) == len(pieces):
            mains = [(role, own) for role, own in (("m", main), ("n", second)) if own]
            mains.sort(key=lambda both: (both[1].piece.hardest < 3, -both[1].piece.kick))
            order = [("w", warm), ("s", skill), *mains, ("e", easy), ("c", cool)]
            yield tuple((role, own) for role, own in order if own)


def places(order: Order | Proposal, roles: str) -> set[int]:
    pairs = order if isinstance(order, tuple) else [(one.role, one.own) for one in order.order]
    return {own.place for role, own in pairs if role in roles}


def serves(asked: Asked, order: Order | Proposal) -> bool:
    mains = [asked.table.pieces[place] for place in places(order, "mn")]
    return any(goal in asked.wishes.goals for own in mains for goal in own.goals)


def again(asked: Asked, order: Order, before: Sequence[Proposal]) -> int:
    """60 for a skill of one before, 250 for work that stood elsewhere in it, 150 for a main set
    that has the drills of one of its main sets.
    """
    stood = [one for own in before for one in own.order if one.role in "smn"]
    cost = 0
    for role, own in order:
        same = {one.role for one in stood if one.own.place == own.place}
        mains = [one.own for one in stood if one.role != "s"]
        if role in "smn" and same:
            cost += 60 if {role} == same == {"s"} else 250
        elif role in "mn":
            cost += 150 * any(is_again(asked, own, other) for other in mains)
    return cost


@pytest.mark.parametrize("seed", range(SEEDS))
def test_each_proposal_is_the_cheapest_of_every_practice(seed: int) -> None:
    """The next with other main sets, dearer with work and 20 with a warm-up of one before; and with
    one that serves a goal where one before it does.
    """
    asked, left, before = drawn(seed), every(seed), list[Proposal]()
    found = compose(asked.table, asked.wishes)
    assert fits(asked.table, asked.wishes) == bool(left)
    for number in range(3):
        used = set().union(*(places(one, "mn") for one in before))
        warm = set().union(*(places(one, "w") for one in before))
        costs = [
            cost + again(asked, order, before) + 20 * bool(places(order, "w") & warm)
            for cost, order in left
            if not places(order, "mn") & used
            and (serves(asked, order) or not any(serves(asked, own) for own in before))
        ]
        least = min(costs, default=None)
        if least is None or (before and least - before[0].cost >= 900):
            assert len(found) == number
            return
        assert found[number].cost == least
        order = tuple((one.role, one.own) for one in found[number].order)
        assert order in [own for _, own in left]
        assert laid(asked, order) == found[number].order
        before.append(found[number])
    assert len(found) == 3


def test_there_is_something_to_choose_from() -> None:
    counts = [len(every(seed)) for seed in range(SEEDS)]
    assert sum(count > 2 for count in counts) >= SEEDS // 3 and 0 in counts
    roles = {
        "".join(role for role, _ in order) for seed in range(SEEDS) for _, order in every(seed)
    }
    assert {"wsmc", "wmc", "wnmc", "wmec", "wsmec"} <= roles
    # Gear comes off before relief in some, and before a cool-down.
    for at, role in ((-2, "e"), (-1, "c")):
        found = [seed for seed in range(SEEDS) if any(off(own, at, role) for _, own in every(seed))]
        assert len(found) >= 5


def off(order: Order, at: int, role: str) -> bool:
    """Whether gear comes off before a piece in a role."""
    return order[at][0] == role and bool(order[at - 1][1].piece.ends)


def made(*of: tuple[str, int, dict[str, int]]) -> Asked:
    """Pieces by role and tenths, with what is limited in them; a slot of 60 000 tenths."""
    return asked(*((piece(role, role), (size(takes, **limited),)) for role, takes, limited in of))


def proposed(own: Asked, tried: int = 400, refused: int = 60) -> list[list[int]]:
    """The pieces of each proposal, where so many are tried, and refused around one heart."""
    with (
        patch.object(composing, "TRIED", tried),
        patch.object(composing_around, "REFUSED", refused),
    ):
        return [[one.own.place for one in found.order] for found in compose(own.table, own.wishes)]


def test_after_so_many_practices_that_break_a_limit_the_work_is_given_up() -> None:
    fast = {"fast": 401}
    opens = [("w", 15000, fast), ("w", 15000, fast), ("w", 15000, {})]
    own = made(*opens, ("m", 30000, {}), ("c", 14000, {}))
    assert proposed(own, refused=3) == [[2, 3, 4]]
    assert proposed(own, refused=2) == []


def test_so_much_work_is_tried_that_may_be_done() -> None:
    """Neither 10 000 nor 20 000 fill the slot beside 35 000 and 10 000; what breaks a limit is not
    counted.
    """
    ends = [("w", 10000, {}), ("w", 20000, {}), ("c", 10000, {})]
    own = made(*ends, ("m", 30000, {"fast": 401}), ("m", 35000, {}), ("m", 30000, {}))
    assert proposed(own, tried=2) == [[1, 5, 2]]
    assert proposed(own, tried=1) == []


def test_an_answer_that_costs_900_more_than_the_first_is_none() -> None:
    """Each round more than is written costs 25; with a warm-up for each none is the same again."""
    for number, count in ((75, 2), (76, 1)):
        other = piece("other", "m", what="rounds", written=40), (size(30000, number),)
        opens = [(piece(role, role), (size(15000),)) for role in "ww"]
        close = (piece("c", "c"), (size(14000),))
        own = asked((piece("one", "m"), (size(30000),)), other, *opens, close)
        assert len(proposed(own)) == count


def test_each_proposal_is_another_practice() -> None:
    """Main sets of the first one's drills, and what was its skill, come after others: a round too
    many of these costs less.
    """
    opens, closes = (
        (piece(role, role), (size(takes),)) for role, takes in (("w", 15000), ("c", 9000))
    )
    goal = {"goals": (0,)}
    works = [
        (piece("a", "m", drills=(0,), **goal), (size(28000),)),
        (piece("b", "sm", **goal), (size(7000),)),
        (piece("c", "m", drills=(0,), **goal), (size(28000),)),
        (piece("d", "m", what="rounds", written=1, **goal), (size(28000, 2),)),
    ]  # fmt: skip
    assert proposed(asked(opens, closes, *works)) == [[0, 3, 2, 1], [0, 3, 5, 1], [0, 3, 4, 1]]


def test_what_has_opened_much_of_a_block_opens_it_less_often() -> None:
    """A round off what is written costs 25, so that the other is taken from the second time on; of
    more than four times no more is counted.
    """
    first, other = piece("a", "w"), piece("b", "w", what="rounds", written=2)
    most = piece("c", "w", what="rounds", written=5)
    own = asked(
        (first, (size(15000),)), (other, (size(15000),)), (most, (size(15000),)),
        (piece("m", "m"), (size(30000),)), (piece("c", "c"), (size(14000),)),
    )  # fmt: skip

    def opens(*often: int) -> int:
        (found, *_) = compose(own.table, own.wishes, 1, dict(enumerate(often)))
        return found.order[0].own.place

    assert [opens(), opens(1), opens(2), opens(3, 1), opens(3, 2)] == [0, 0, 1, 1, 0]
    assert opens(4, 3) == 0 and opens(9, 9) == 0 and opens(9, 2) == 1


def test_a_point_less_is_found_behind_a_dearer_warm_up() -> None:
    """40 s are left, 5 points; with the other warm-up, a round off what is written for 4, the 30 s
    that are well left.
    """
    opens = [piece("a", "w", of="part"), piece("b", "w", of="part", what="rounds", written=2)]
    own = asked(
        (opens[0], (size(10000),)), (opens[1], (size(10100),)), (piece("m", "m"), (size(35000),)),
        (piece("c", "c"), (size(14600),)),
    )  # fmt: skip
    assert proposed(own)[0] == [1, 2, 3]


def test_the_talk_before_a_cool_down_is_in_the_slot() -> None:
    def ends(talk: int) -> list[list[int]]:
        close = (piece("c", "c", talk=talk), (size(14000),))
        own = asked((piece("w", "w"), (size(15000),)), (piece("m", "m"), (size(30000),)), close)
        return proposed(own)

    assert ends(600) == ends(1000) == [[0, 1, 2]]
    assert ends(1010) == []


def test_before_a_cool_down_it_is_the_longer_of_its_talk_and_of_taking_gear_off() -> None:
    """Socks take 10 s to put on and to take off: 59 000 tenths without what goes before the
    cool-down.
    """
    worn = {"gear": (1,), "begins": (1,), "ends": (1,)}

    def ends(talk: int, close: int) -> list[list[int]]:
        last = (piece("c", "c", talk=talk), (size(close),))
        opens = (piece("w", "w"), (size(15000),))
        return proposed(asked(opens, (piece("m", "m", **worn), (size(30000),)), last))

    assert ends(1000, 13900) == ends(0, 14800) == [[0, 1, 2]]
    assert ends(1010, 13900) == ends(0, 14810) == []


@pytest.mark.parametrize(("gear", "takes"), [((1,), 36650), ((0, 1), 36300)])
def test_work_that_only_fills_the_slot_with_its_gear_taken_off_is_tried(
    gear: tuple[int, ...], takes: int
) -> None:
    """10 s to put socks on and 10 to take them off: 115 s are left, and 125 without the latter;
    fins take 30 s.
    """
    worn = {"gear": gear, "begins": gear, "ends": gear, "most_in_lane": 2}
    skill, main = piece("s", "s"), piece("m", "m", **worn)
    ends = [
        (piece(role, role), (size(own),)) for role, own in (("w", 15000), ("e", 2000), ("c", 5000))
    ]
    own = asked(*ends, (main, (size(takes),)))
    assert proposed(own) == [[0, 3, 1, 2]]
    held = asked(*ends, (main, (size(takes - 3000),)), (skill, (size(3000),)), kept=(Kept(4, "s"),))
    assert proposed(held) == [[0, 4, 3, 1, 2]]


def test_work_that_needs_what_nobody_has_taught_is_not_counted_as_tried() -> None:
    own = asked(
        (piece("w", "w"), (size(15000),)), (piece("needs", "m", asks=(0,)), (size(30000),)),
        (piece("m", "m"), (size(30000),)),
        (piece("c", "c"), (size(14000),)),
    )  # fmt: skip
    assert proposed(own, tried=1) == [[0, 2, 3]]
