"""A practice that is changed by hand, fitted into its slot again: against every way to fit it, over
small tables by chance.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from itertools import combinations, product
from typing import Any

import pytest
from composing_world import asked, drawn, piece, size, sized

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.changes import (
    DOWN,
    FREE,
    KEEP,
    OUT,
    SWAP,
    UP,
    Deed,
    change,
)
from almanac.arithmetic.composing.chosen import Chosen, ChosenPractice, practice_of, standing
from almanac.arithmetic.composing.costs import (
    BOTH_FAST,
    HARD_IDLE,
    IDLE_MAIN,
    IDLE_SECOND,
    NO_SKILL,
    SAME_GOAL,
)
from almanac.arithmetic.composing.fit import Fitted, RoleSlot, cost_of, fitted, held
from almanac.arithmetic.composing.order import Stood, laid, unsafe, whole
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.composing.shape import SAME_SWIM

SEEDS = 100
Order = Sequence[tuple[str, Sized]]


@cache
def proposals() -> list[tuple[Asked, tuple[Stood, ...]]]:
    """The first answer for each table that has one."""
    every = [drawn(seed) for seed in range(SEEDS)]
    found = [(own, one.order) for own in every for one in compose(own.table, own.wishes, most=1)]
    assert len(found) >= SEEDS // 3
    return found


def sizes(asked: Asked, own: Sized) -> list[Sized]:
    """The other sizes of a piece."""
    (offer,) = (offer for offer in asked.offers if offer.piece == own.place)
    return [each for each in asked.sized(offer) if each.number != own.number]


def ways(asked: Asked, slots: Sequence[RoleSlot], count: int) -> Iterator[tuple[int, int, Order]]:
    """Every way to do so many pieces in another size: what is left, what it costs, the order."""
    for places in combinations(range(len(slots)), count):
        for chosen in product(*(slots[place].others for place in places)):
            own = dict(zip(places, chosen, strict=True))
            order = [(slot.role, own.get(at, slot.now)) for at, slot in enumerate(slots)]
            left = asked.slot - whole(laid(asked, order))
            if left >= 0 and not unsafe(asked, laid(asked, order)):
                yield left, cost_of(asked, order), order


def best(
    asked: Asked, slots: Sequence[RoleSlot], counts: Sequence[int], leaves: bool = False
) -> Order | None:
    """The fewest changes that leave two minutes at most, of them the cheapest; else, where that may
    be, what leaves the least. Of what is alike the first.
    """
    for count in counts:
        fit = [(cost, order) for left, cost, order in ways(asked, slots, count) if left <= 1200]
        if fit:
            return min(fit, key=lambda own: own[0])[1]
    every = [way for count in counts for way in least(asked, slots, count)]
    return min(every, key=lambda own: own[0])[2] if leaves and every else None


def least(asked: Asked, slots: Sequence[RoleSlot], count: int) -> list[tuple[int, int, Order]]:
    """Of so many changes what leaves the least, and of that the cheapest."""
    return sorted(ways(asked, slots, count), key=lambda own: own[:2])[:1]


def told(found: Fitted | None) -> list[tuple[str, Sized]] | None:
    return found and [(one.role, one.own) for one in found.order]


def test_as_few_pieces_as_can_be_are_changed_and_of_the_ways_the_cheapest_is_taken() -> None:
    seen: set[str] = set()
    for number, (own, order) in enumerate(proposals()):
        chance = random.Random(number)
        for _ in range(4):
            slots = []
            for one in order:
                now = chance.choice([one.own, *sizes(own, one.own)])
                slots.append(RoleSlot(one.role, now, tuple(sizes(own, now))))
            at = chance.randrange(len(slots))
            slots[at] = held(slots[at])
            counts = chance.choice(((0, 1, 2), (0, 1), (2,), (1,)))
            expected = best(own, slots, counts)
            found = fitted(own, slots, counts)
            assert told(found) == expected
            if found:
                assert found == Fitted(laid(own, expected or ()), cost_of(own, expected or ()))
            leaving = fitted(own, slots, counts, leaves=True)
            assert told(leaving) == best(own, slots, counts, leaves=True)
            seen.add("fits" if expected else "leaves" if leaving else "neither")
    assert seen == {"fits", "leaves", "neither"}


def test_the_cheapest_swap_is_found_with_at_most_one_other_piece_changed_else_with_two() -> None:
    seen: set[bool] = set()
    for number, (own, order) in enumerate(proposals()):
        chance = random.Random(number)
        for place in range(len(order)):
            kept = chance.choice([at for at in range(len(order)) if at != place])
            parts = practice_of(order).parts
            out = tuple(part.key for part in own.table.pieces if chance.random() < 0.1)
            held_one = tuple(replace(part, kept=at == kept) for at, part in enumerate(parts))
            practice = ChosenPractice(held_one, out)
            cost = cheapest_swap(own, practice, order, place)
            try:
                after = change(own, practice, Deed(SWAP, parts[place].role))
            except BadWish as problem:
                assert cost is None and str(problem).startswith("Nothing else fits there as ")
            else:
                assert standing(own, after).cost == cost
                assert after.out == (*out, parts[place].piece)
                assert [part.kept for part in after.parts] == [part.kept for part in held_one]
                assert after.parts[kept] == practice.parts[kept]
            seen.add(cost is None)
    assert seen == {True, False}


def cheapest_swap(
    own: Asked, practice: ChosenPractice, order: Sequence[Stood], place: int
) -> int | None:
    role = order[place].role
    letter = "m" if role == "n" else role
    others = [
        RoleSlot(one.role, one.own, () if practice.parts[at].kept else tuple(sizes(own, one.own)))
        for at, one in enumerate(order)
    ]
    free = Asked(own.table, replace(own.wishes, kept=()))
    gone = {part.piece for part in practice.parts} | {*practice.out}
    wished = {*own.wishes.goals}
    candidates = [
        [
            each
            for each in free.sized(offer)
            if role not in "mn" or each.takes >= (1800 if wished & {*each.piece.goals} else 3000)
        ]
        for offer in free.offers
        if letter in own.table.pieces[offer.piece].roles
        and own.table.pieces[offer.piece].key not in gone
        and not free.why_not(offer, role)
    ]  # fmt: skip
    for counts in ((0, 1), (2,)):
        costs = []
        for one in candidates:
            for count in counts:
                fit = [
                    cost
                    for each in one
                    for left, cost, _ in ways(
                        own, [*others[:place], RoleSlot(role, each), *others[place + 1 :]], count
                    )
                    if left <= 1200
                ]
                if fit:
                    costs.append(min(fit))
                    break
        if costs:
            return min(costs)
    return None


# A practice by hand, of 100 minutes: 20 warm-up, 20 skill, 35 main set, 12 and a half easy, 11 and
# a half cool-down.
PIECES = [
    (piece(id, roles, what="rounds", goals=(0,)), tuple(size(each * n, n) for n in (1, 2)))
    for id, roles, each in (
        ("open", "w", 6000), ("skill", "s", 6000), ("main", "m", 10500), ("other", "m", 9000),
        ("ease", "e", 3750),
        ("close", "c", 3450), ("shut", "c", 3500),
    )
]  # fmt: skip
HERE = asked(*PIECES)


def parts(*roles: str, **more: Any) -> tuple[Chosen, ...]:
    ids = {"w": "open", "s": "skill", "m": "main", "n": "other", "e": "ease", "c": "close"} | more
    return tuple(Chosen(role, f"set/{ids[role]}", 2) for role in roles)


WHOLE = ChosenPractice(parts(*"wsmec"))


def refused(practice: ChosenPractice, do: str, role: str, own: Asked = HERE) -> str:
    with pytest.raises(BadWish) as problem:
        change(own, practice, Deed(do, role))
    return str(problem.value)


def test_a_practice_stands_as_it_is_written() -> None:
    found = standing(HERE, WHOLE)
    assert [(one.role, one.own.takes) for one in found.order] == [
        ("w", 12000), ("s", 12000), ("m", 21000), ("e", 7500), ("c", 6900),
    ]  # fmt: skip
    assert found.cost == cost_of(HERE, [(one.role, one.own) for one in found.order])


@pytest.mark.parametrize(
    ("practice", "sentence"),
    [
        (parts(*"smec"), "A practice begins with a warm-up"),
        (parts(*"wsme"), "ends with a cool-down"),
        (parts(*"wsec"), "has a main set"), (parts(*"wssmc"), "A practice begins"),
        (parts(*"wxmc", x="main"), "A practice begins"),
        (parts(*"wmnc", n="main"), "No piece stands in a practice twice."),
        (parts(*"wmc", m="flying"), "there is no piece 'set/flying'"),
        (parts(*"wmc", m="skill"), "set/skill cannot stand there"),
        (parts(*"wmnsec"), "It does not fit into the slot so"),
        ((Chosen("w", "set/open", 3), *parts(*"mc")), "set/open cannot stand there"),
    ],
)  # fmt: skip
def test_what_is_no_practice_is_refused(practice: tuple[Chosen, ...], sentence: str) -> None:
    with pytest.raises(BadWish) as problem:
        standing(HERE, ChosenPractice(practice))
    assert sentence in str(problem.value)


def test_what_may_not_stand_says_why() -> None:
    late = replace(HERE.wishes, days={2: 0})
    with pytest.raises(BadWish) as problem:
        standing(Asked(HERE.table, late), WHOLE)
    assert str(problem.value) == (
        "Main cannot stand there: what serves it was a main set in the last seven days."
    )
    with pytest.raises(BadWish) as problem:
        standing(Asked(HERE.table, replace(HERE.wishes, pool="away")), WHOLE)
    assert str(problem.value).endswith("nothing of it is written for these lane groups.")


def test_a_limit_that_is_broken_is_told() -> None:
    fast = [(own, tuple(replace(each, fast=401) for each in of)) for own, of in PIECES]
    with pytest.raises(BadWish) as problem:
        standing(asked(*fast), WHOLE)
    assert str(problem.value).startswith("So there would be more fast")


def test_a_piece_is_kept_and_freed_and_else_nothing_changes() -> None:
    kept = change(HERE, WHOLE, Deed(KEEP, "s"))
    assert [own.kept for own in kept.parts] == [False, True, False, False, False]
    assert change(HERE, kept, Deed(KEEP, "s")) == kept
    assert change(HERE, kept, Deed(FREE, "s")) == WHOLE
    for do in (SWAP, OUT):
        assert refused(kept, do, "s") == "Skill is kept: free it first."
    moved = change(HERE, kept, Deed(DOWN, "s"))
    assert [(own.role, own.kept) for own in moved.parts] == [
        ("w", False), ("m", False), ("s", True), ("e", False), ("c", False),
    ]  # fmt: skip


def test_a_piece_moves_past_its_neighbour_but_not_past_either_end() -> None:
    def roles(practice: ChosenPractice) -> str:
        return "".join(own.role for own in practice.parts)

    assert roles(change(HERE, WHOLE, Deed(UP, "m"))) == "wmsec"
    assert roles(change(HERE, WHOLE, Deed(DOWN, "m"))) == "wsemc"
    for do, role in ((UP, "s"), (DOWN, "w"), (UP, "w")):
        assert refused(WHOLE, do, role) == "A practice begins with its warm-up."
    for do, role in ((DOWN, "e"), (UP, "c"), (DOWN, "c")):
        assert refused(WHOLE, do, role) == "A practice ends with its cool-down."


def test_what_is_taken_out_leaves_its_time_to_the_others_and_does_not_come_back() -> None:
    after = change(HERE, WHOLE, Deed(OUT, "e"))
    assert [own.role for own in after.parts] == ["w", "s", "m", "c"]
    # 52 500 tenths are left of 60 000, all that is done is done twice, and once would be less.
    assert [own.number for own in after.parts] == [2, 2, 2, 2]
    assert after.out == ("set/ease",)
    for role, word in (("w", "warm-up"), ("m", "main set"), ("c", "cool-down")):
        sentence = f"A practice needs its {word}: swap it for another."
        assert refused(WHOLE, OUT, role) == sentence
    assert refused(WHOLE, OUT, "n") == "there is nothing to out as n"
    assert refused(WHOLE, "fly", "m") == "there is nothing to fly as m"


def test_without_the_first_main_set_the_second_is_the_first() -> None:
    of = [Chosen("w", "set/open", 1), *parts("m", "n"), Chosen("c", "set/close", 2)]
    after = change(HERE, ChosenPractice(tuple(of)), Deed(OUT, "m"))
    assert [(own.role, own.piece) for own in after.parts] == [
        ("w", "set/open"), ("m", "set/other"), ("c", "set/close"),
    ]  # fmt: skip
    of = [of[0], of[1], of[2], of[3]]
    alone = change(HERE, ChosenPractice(tuple(of)), Deed(OUT, "n"))
    assert [own.piece for own in alone.parts] == ["set/open", "set/main", "set/close"]


def test_a_swap_takes_what_fits_and_says_where_nothing_does() -> None:
    after = change(HERE, WHOLE, Deed(SWAP, "c"))
    assert [own.piece for own in after.parts][-1] == "set/shut" and after.out == ("set/close",)
    assert refused(after, SWAP, "c") == "Nothing else fits there as cool-down."
    assert refused(WHOLE, SWAP, "w") == "Nothing else fits there as warm-up."


def test_nothing_is_done_to_what_is_no_practice() -> None:
    for do, role in ((KEEP, "s"), (DOWN, "s"), (SWAP, "c")):
        assert refused(ChosenPractice(parts(*"wsec")), do, role).startswith(
            "A practice begins with"
        )


def test_where_a_piece_is_taken_out_one_other_is_lengthened() -> None:
    """Of 40 200 tenths 10 000 are free, and the main set grows by as much."""
    sizes = {"w": (5000,), "m": (20000, 30000), "e": (10000,), "c": (5000,)}
    own = asked(
        *(
            (
                piece(role, role, what="rounds"),
                tuple(size(takes, n) for n, takes in enumerate(of, 1)),
            )
            for role, of in sizes.items()
        ),
        minutes=67,
    )
    before = ChosenPractice(tuple(Chosen(role, f"set/{role}", 1) for role in "wmec"))
    after = change(own, before, Deed(OUT, "e"))
    assert [(part.role, part.number) for part in after.parts] == [("w", 1), ("m", 2), ("c", 1)]


def test_two_main_sets_cost_what_they_cost_together() -> None:
    """167 permille, then 200 and 100 that together are long enough, then 90; 2660 s are left, 2630
    more than well.
    """
    own = asked(goals=(), effort=4)
    opens, main, second, closes = (
        sized(takes, place=place, hardest=4)
        for place, takes in enumerate((10000, 12000, 6000, 5400))
    )
    alike = IDLE_MAIN + IDLE_SECOND + NO_SKILL + BOTH_FAST + SAME_GOAL + 2630 // 2
    alike += 2 * 3 * HARD_IDLE + SAME_SWIM  # each three words beyond gentle; it opens as it closes
    order = [("w", opens), ("m", main), ("n", second), ("c", closes)]
    assert cost_of(own, order) == alike
    easy = replace(second, piece=replace(second.piece, hardest=0, goals=(1,), shares=(1000,)))
    order[2] = ("n", easy)
    assert cost_of(own, order) == alike - BOTH_FAST - SAME_GOAL


def test_of_one_piece_all_sizes_are_tried_and_of_two_a_few() -> None:
    """Of fourteen sizes of 1500 each those few are the 1st, 5th, 9th and 14th; 30 000 tenths are
    left for two of them.
    """
    every = [sized(1500 * n, size(1500 * n, n), what="rounds") for n in range(1, 15)]
    main = RoleSlot("m", sized(30000, place=98))

    def slots(first: int, last: int, more: int = 0) -> list[RoleSlot]:
        opens, closes = (
            RoleSlot(role, replace(every[n - 1], place=place), tuple(every))
            for role, n, place in (("w", first, 96), ("c", last, 97))
        )
        return [opens, replace(main, now=sized(30000 + more, place=98)), closes]

    def numbers(of: list[RoleSlot], count: int) -> list[int] | None:
        found = fitted(HERE, of, (count,))
        return found and [one.own.number for one in found.order if one.role != "m"]

    assert numbers(slots(1, 8), 1) == [12, 8]  # one of both, and nothing is left
    assert numbers(slots(1, 8, 1), 1) is None  # a tenth too much
    assert numbers(slots(1, 8), 2) is None  # no two of the few are 20 together
    assert sum(numbers(slots(1, 8, 1500), 2) or ()) == 19
    assert numbers(slots(12, 8), 0) == [12, 8] and numbers(slots(12, 8, 1), 0) is None


def test_of_ways_that_cost_the_same_the_first_is_taken() -> None:
    now, one, other = (
        sized(takes, size(takes, n), place=96, what="rounds", written=2)
        for takes, n in ((9000, 2), (12000, 3), (12000, 1))
    )
    rest = [RoleSlot("m", sized(35000, place=97)), RoleSlot("c", sized(12000, place=98))]
    for others in ((one, other), (other, one)):
        found = fitted(HERE, [RoleSlot("w", now, others), *rest], (1,))
        assert found and found.order[0].own is others[0]


def test_a_held_place_has_no_other_size() -> None:
    slot = RoleSlot("m", sized(), (sized(700),))
    assert held(slot) == RoleSlot("m", slot.now)
