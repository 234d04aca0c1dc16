"""Cords in use at the same moment, and the adults that they take, counted by hand.

Squad osprey: `quick` is 10 heads on 3 lanes, `slow` 6 on 2. Fins stand for a cord here: what ties
is a fact of the gear.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import club, part, practice_of, summarised, swim
from arithmetic_world import HAZARD, PIECES, events, swim_set

from almanac.arithmetic.cords import CordsAtOnce, cords_at_once, is_tied, ties, tows
from almanac.model.policy import LevelLimits, Limit
from almanac.model.practice import ListOfSome, PartOfSome, PracticePart
from almanac.model.structure import structure_items

CORD = frozenset({"fins"})


def held(by: str = "", **more: Any) -> dict[str, Any]:
    """One 100 on a cord."""
    cord = {"cord": {"held_by": by, "at": "the wall"}} if by else {}
    return swim(gear=["fins"], sendoff=120, **cord, **more)


def counted(*parts: PracticePart, owned: dict[str, int] | None = None, **more: Any) -> list[Any]:
    """At each moment: cords, by adults, by swimmers, whether others do something."""
    practice = practice_of(*parts)
    sheet = summarised(practice, club(practice, **more)).sheet
    return [
        (own.run.number, own.cords, own.by_adults, own.by_swimmers, own.others)
        for own in cords_at_once(sheet, CORD, owned or {})
    ]


def test_gear_that_ties() -> None:
    gear = {"fins": replace(PIECES["fins"], tied_to="anchor"), "socks": PIECES["socks"]}
    assert ties(gear) == CORD
    tied, free = events(held(), swim(gear=["socks"]))
    piece = {"distance": 50, "do": "crawl", "effort": "easy"}
    (mixed,) = events({"reps": 1, "parts": [piece, {**piece, "gear": ["fins"]}]})
    assert [is_tied(own, CORD) for own in (tied, free, mixed)] == [True, False, True]  # type: ignore[arg-type]


def test_gear_that_tows_a_line_resists_ties_nobody_and_names_the_danger() -> None:
    line = replace(HAZARD, hazard="caught-in-line")
    chute = replace(PIECES["chute"], hazards=(HAZARD, line))
    gear = {
        "chute": chute, "tied": replace(chute, tied_to="anchor"),
        "fins": replace(PIECES["fins"], hazards=(line,)),
        "socks": PIECES["socks"], "bare": replace(chute, hazards=()),
    }  # fmt: skip
    assert tows(gear) == {"chute"}


def test_as_many_cords_as_heads_and_no_more_than_are_owned() -> None:
    assert counted(part(held("adult"))) == [(0, 16, 16, 0, False)]
    assert counted(part(held("swimmer")), owned={"fins": 4}) == [(0, 4, 0, 4, True)]
    assert counted(part(held("anchor")), owned={"fins": 16}) == [(0, 16, 0, 0, False)]
    assert counted(part(held("anchor")), owned={"fins": 15}) == [(0, 15, 0, 0, True)]
    assert counted(part(held("anchor")), owned={"fins": 40}) == [(0, 16, 0, 0, False)]
    assert counted(part(held()), owned={"fins": 0}) == [(0, 0, 0, 0, True)]
    assert counted(part(swim(sendoff=120)), part(swim(gear=["socks"], sendoff=120))) == []


def test_only_moments_with_a_cord_are_told() -> None:
    assert counted(part(swim(sendoff=120)), part(held("adult")))[0][:2] == (1, 16)


def test_some_held_by_adults_and_some_by_swimmers() -> None:
    both = part(held("adult"), held("swimmer"))
    assert counted(both) == [(0, 16, 16, 16, False)]
    one = part(swim(sendoff=120), held("adult"))
    assert counted(one, owned={"fins": 3}) == [(0, 3, 3, 0, True)]


def of(group: str, *written: dict[str, Any]) -> ListOfSome:
    items = structure_items(list(written))
    return ListOfSome((PartOfSome("main", items=items),), (group,))


def test_lane_groups_at_the_same_moment_are_added() -> None:
    apart = PracticePart("main", apart=(of("quick", held("adult")), of("slow", held("swimmer"))))
    assert counted(apart) == [(0, 16, 10, 6, False)]
    (first,) = cords_at_once(summarised(practice_of(apart)).sheet, CORD, {})
    assert first.run.path == ("parts", 0, "apart", 0, "parts", 0)
    alone = PracticePart("main", apart=(of("quick", held("adult")), of("slow", swim(sendoff=120))))
    assert counted(alone) == [(0, 10, 10, 0, True)]
    other = PracticePart("main", apart=(of("quick", swim(sendoff=120)), of("slow", held("adult"))))
    assert counted(other) == [(0, 6, 6, 0, True)]


def test_two_kinds_of_cord_count_by_themselves() -> None:
    apart = PracticePart(
        "main",
        apart=(
            of("quick", held("adult")),
            of("slow", swim(gear=["socks"], sendoff=120, cord={"held_by": "adult", "at": "wall"})),
        ),
    )
    practice = practice_of(apart)
    sheet = summarised(practice).sheet
    owned = {"fins": 8, "socks": 2}
    (own,) = cords_at_once(sheet, frozenset({"fins", "socks"}), owned)
    assert (own.cords, own.by_adults, own.others) == (10, 10, True)


def test_a_set_that_lets_few_into_a_lane_uses_fewer_at_once() -> None:
    few = replace(swim_set(held("adult")), most_in_lane=1)
    # five lanes, one swimmer in each; the others of the sixteen are not tied
    (told,) = (
        cords_at_once(summarised(practice, club(practice, few)).sheet, CORD, {})
        for practice in [practice_of(PracticePart("main", set="a-set"))]
    )
    assert [(own.cords, own.by_adults, own.others) for own in told] == [(5, 5, True)]


@pytest.mark.parametrize(
    ("cords", "by_adults", "others", "each", "adults"),
    [
        (6, 6, False, 3, 6),  # an adult at each
        (6, 0, False, 3, 2),
        (7, 0, False, 3, 3),
        (7, 1, False, 3, 3),  # one at the cord they hold, two for six others
        (7, 1, True, 3, 4),  # and one for everybody else
        (2, 0, False, 0, 2),  # nobody said how many an adult may see to: one each
    ],
)
def test_adults(cords: int, by_adults: int, others: bool, each: float, adults: int) -> None:
    own = CordsAtOnce(None, cords, by_adults, 0, others)  # type: ignore[arg-type]
    limits = LevelLimits({"cords_each_adult_most": Limit(each, "", "", "")})
    assert own.adults(limits) == adults
