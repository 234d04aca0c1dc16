"""A third main set in a long evening: when it stands there, in which order, and what it costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from composing_world import Own, asked, drawn, piece, size, wishes
from composing_world import table as of_pieces

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.changes import OUT, SWAP, Deed, change
from almanac.arithmetic.composing.chosen import practice_of
from almanac.arithmetic.composing.fit import cost_of
from almanac.arithmetic.composing.order import broken

CLOSES = (piece("closes", "c"), (size(4200),))


def opens(*takes: int) -> Own:
    return (
        piece("opens", "w", what="rounds"),
        tuple(size(own, number + 1) for number, own in enumerate(takes)),
    )


def mains(*goals: int, takes: int = 14400, **more: object) -> list[Own]:
    return [
        (piece(f"main-{at}", "m", goals=(goal,), drills=(at,), **more), (size(takes),))
        for at, goal in enumerate(goals)
    ]


def best(*pieces: Own, **more: object) -> tuple[Asked, Proposal]:
    table, wished = of_pieces(*pieces), wishes(**more)
    return Asked(table, wished), compose(table, wished)[0]


def roles(own: Proposal) -> str:
    return "".join(one.role for one in own.order)


def titles(own: Proposal) -> list[str]:
    return [one.own.piece.id for one in own.order if one.role in "mno"]


def test_what_is_long_is_filled_by_a_third_main_set_and_not_by_the_warm_up() -> None:
    """Of 100 minutes 24, 24 and 24 are main sets, 20 open and 7 close; without the third the
    warm-up takes 44.
    """
    own, found = best(opens(12000, 26400), CLOSES, *mains(0, 0, 0))
    assert roles(found) == "wmnoc"
    assert found.order[0].own.takes == 12000
    assert found.cost == cost_of(own, [(one.role, one.own) for one in found.order])


def test_a_shorter_slot_than_95_minutes_has_two() -> None:
    for minutes, has in ((94, "wmnc"), (95, "wmnoc")):
        of = mains(0, 0, 0, takes=200 * minutes - 7000)
        left = 600 * minutes - 4200 - 2 * of[0][1][0].times[0]  # type: ignore[operator]
        _, found = best(opens(left - of[0][1][0].times[0], left), CLOSES, *of, minutes=minutes)  # type: ignore[operator]
        assert roles(found) == has


def test_where_two_fill_the_slot_well_there_is_no_third() -> None:
    """Of 100 minutes 36 and 36 are main sets; a third of 12 would leave 8 for the warm-up."""
    third = (piece("third", "m", goals=(0,), drills=(2,)), (size(7200),))
    _, found = best(opens(4800, 12000), CLOSES, *mains(0, 0, takes=21600), third)
    assert roles(found) == "wmnc"


def test_what_is_fast_is_first_of_three_and_then_what_has_more_kick() -> None:
    of = [{"hardest": 2, "kick": 100}, {"hardest": 3}, {"hardest": 2, "kick": 900}]
    pieces = [
        (piece(f"main-{at}", "m", goals=(0,), drills=(at,), **more), (size(14400),))
        for at, more in enumerate(of)
    ]
    _, found = best(opens(12000, 26400), CLOSES, *pieces)
    assert titles(found) == ["main-1", "main-2", "main-0"]


def test_a_limit_of_the_whole_practice_holds_with_three() -> None:
    """Of 400 m fast each of three would do 150."""
    pieces = [(own, (replace(sizes[0], fast=150),)) for own, sizes in mains(0, 0, 0)]
    _, found = best(opens(12000, 26400), CLOSES, *pieces)
    assert roles(found) == "wmnc"


def test_what_is_a_third_main_set_may_be_the_first_of_another_proposal() -> None:
    """Beside a fourth of 34 minutes the third of the first proposal fills another."""
    fourth = (piece("fourth", "m", goals=(0,), drills=(3,)), (size(20400),))
    table = of_pieces(opens(12000, 20400, 26400), CLOSES, *mains(0, 0, 0), fourth)
    found = compose(table, wishes())
    assert roles(found[0]) == "wmnoc"
    third = next(one.own.place for one in found[0].order if one.role == "o")
    assert third in [one.own.place for one in found[1].order if one.role in "mn"]
    both = {one.own.place for one in found[0].order if one.role in "mn"}
    assert not both & {one.own.place for own in found[1:] for one in own.order}


def after(deed: str, role: str, pieces: Sequence[Own]) -> list[tuple[str, str]]:
    own, found = best(*pieces)
    changed = change(own, practice_of(found.order), Deed(deed, role))
    return [(each.role, each.piece.removeprefix("set/")) for each in changed.parts[1:-1]]


def test_main_sets_after_one_that_is_taken_out_are_each_the_one_before() -> None:
    pieces = [opens(12000, 26400), CLOSES, *mains(0, 0, 0)]
    assert after(OUT, "m", pieces) == [("m", "main-1"), ("n", "main-2")]
    assert after(OUT, "n", pieces) == [("m", "main-0"), ("n", "main-2")]
    assert after(OUT, "o", pieces) == [("m", "main-0"), ("n", "main-1")]


def test_a_third_main_set_is_swapped_like_another() -> None:
    pieces = [opens(12000, 26400), CLOSES, *mains(0, 0, 0)]
    other = (piece("other", "m", goals=(1,), drills=(0,)), (size(14400),))
    assert after(SWAP, "o", [*pieces, other])[2] == ("o", "other")


@pytest.mark.parametrize("seed", range(60))
def test_by_chance_what_has_a_third_costs_what_it_says_and_breaks_nothing(seed: int) -> None:
    """Tables by chance, in slots as long as their three main sets ask for."""
    of = drawn(seed)
    for minutes in (95, 105, 120):
        own = Asked(of.table, replace(of.wishes, minutes=minutes, kept=()))
        for found in compose(own.table, own.wishes):
            order = [(one.role, one.own) for one in found.order]
            assert not broken(own, found.order)
            again = found.cost - cost_of(own, order)
            assert again == 0 or (again > 0 and found is not compose(own.table, own.wishes)[0])


def test_without_two_there_is_no_third() -> None:
    own = asked(opens(12000), CLOSES, *mains(0), minutes=100)
    assert not compose(own.table, own.wishes)
