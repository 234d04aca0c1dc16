"""Who goes together in which lanes, worked by hand: whole lane groups, and halves of their lanes
and heads.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_world import group

from almanac.arithmetic.crews import Crew, crew_of, crews_named, usual_lanes
from almanac.model.practice import LanesInUse

# ten heads on lanes 1 to 3, seven on 4 and 5, three on 6
GROUPS = {
    "quick": replace(group(heads=10, lanes=3), title="Quick"),
    "slow": replace(group(heads=7, lanes=2), title="Slow"),
    "new": replace(group(heads=3, lanes=1), title="New"),
}
NONE = LanesInUse()


def crew(id: str, half: str = "", in_use: LanesInUse = NONE, **of_part: tuple[int, ...]) -> Crew:
    return crew_of(id, half, GROUPS, in_use, of_part)


def test_groups_fill_the_lanes_in_the_clubs_order() -> None:
    assert usual_lanes(GROUPS) == {"quick": (1, 2, 3), "slow": (4, 5), "new": (6,)}
    assert usual_lanes({}) == {}


def test_a_whole_group_is_as_usual() -> None:
    own = crew("slow")
    assert (own.lanes, own.heads, own.is_usual) == ((4, 5), 7, True)
    assert own.lane_group == GROUPS["slow"]
    assert (own.name, own.title) == ("slow", "Slow")
    assert own.halves == (("slow", "first"), ("slow", "second"))


@pytest.mark.parametrize(
    ("id", "half", "lanes", "heads"),
    [
        ("quick", "first", (1, 2), 5),
        ("quick", "second", (3,), 5),
        ("slow", "first", (4,), 4),  # the larger half
        ("slow", "second", (5,), 3),
        ("new", "first", (6,), 2),  # both in its one lane
        ("new", "second", (6,), 1),
    ],
)
def test_halves(id: str, half: str, lanes: tuple[int, ...], heads: int) -> None:
    own = crew(id, half)
    assert (own.lanes, own.heads, own.lane_group.lanes) == (lanes, heads, len(lanes))
    assert not own.is_usual
    assert (own.name, own.title) == (f"{id}, {half} half", f"{GROUPS[id].title}, {half} half")
    assert own.halves == ((id, half),)


def test_lanes_of_the_part_come_before_those_of_the_practice_and_these_before_the_usual() -> None:
    tonight = LanesInUse(out_of_use=(2,), groups={"slow": (2, 3, 8)})
    assert crew("slow", "", tonight, slow=(5, 2)).lanes == (5,)
    own = crew("slow", "", tonight, quick=(7,))
    assert (own.lanes, own.lane_group.lanes, own.is_usual) == ((3, 8), 2, True)
    assert crew("quick", "", tonight).lanes == (1, 3)
    assert not crew("quick", "", tonight).is_usual


@pytest.mark.parametrize("half", ["", "first", "second"])
def test_a_group_without_a_lane_is_reckoned_as_in_one(half: str) -> None:
    own = crew("new", half, LanesInUse(out_of_use=(6,)))
    assert (own.lanes, own.lane_group.lanes) == ((), 1)


def test_heads_at_once_are_no_more_than_there_are_nor_than_the_lanes_hold() -> None:
    quick, second = crew("quick"), crew("slow", "second")
    assert [quick.heads_at_once(most) for most in (None, 1, 2, 3, 4)] == [10, 3, 6, 9, 10]
    assert [second.heads_at_once(most) for most in (None, 2, 5)] == [3, 2, 3]


def test_named_groups_come_in_the_clubs_order_and_a_half_is_that_of_all() -> None:
    def named(names: tuple[str, ...], half: str = "") -> list[str]:
        return [own.name for own in crews_named(names, half, GROUPS, NONE, {})]

    assert named(("new", "quick")) == ["quick", "new"]
    assert named(()) == []
    assert named((), "second") == [f"{id}, second half" for id in GROUPS]
    (own,) = crews_named(("slow",), "", GROUPS, LanesInUse(out_of_use=(4,)), {"slow": (3, 4)})
    assert own.lanes == (3,)
