"""Plain rest that is shorter than an effort needs, by hand.

Of the policy here strong needs 5 s for each 50 m, steady 4 s, easy 3 s; fast a quarter of its time.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_world import clock, events

from almanac.arithmetic.lanes import rests_too_short
from almanac.model.manner import Manner


def short(*written: dict[str, Any]) -> list[tuple[int, float]]:
    """By item that is too short of rest the number of its worst rep and what that needs."""
    on = clock()
    return [
        (timed.rep.number, least) for timed, least in rests_too_short(on.run(events(*written)), on)
    ]


def item(**more: Any) -> dict[str, Any]:
    return {"reps": 4, "distance": 50, "do": "kick", "effort": "strong", **more}


@pytest.mark.parametrize(
    ("own", "least"),
    [
        # Half a second is nothing that anybody reads from a pace clock.
        ({"rest": 4}, 5), ({"rest": 4.4}, 5), ({"rest": 4.5}, None), ({"rest": 5}, None),
        ({"rest": 9, "distance": 100}, 10),
        ({"rest": 3, "effort": "steady"}, 4), ({"rest": 4, "reps": 2}, 5),
        ({"rest": 4, "reps": 1}, None),
        ({"sendoff": 50}, None), ({}, None), ({"rest": 1, "do": "board-kick"}, None),
    ],
)  # fmt: skip
def test_an_item_is_short_of_rest_where_its_effort_needs_more(
    own: dict[str, Any], least: float | None
) -> None:
    found = [needed for _, needed in short(item(**own))]
    assert found == ([] if least is None else [pytest.approx(least)])


def test_the_rep_that_lacks_most_is_told_once_for_each_item() -> None:
    """From easy to strong the last needs most; from strong to easy the first; of reps that need the
    same the first.
    """
    up, down = {"descend": ["easy", "strong"]}, {"descend": ["strong", "easy"]}
    assert short(item(rest=2, effort=up)) == [(4, pytest.approx(5))]
    assert short(item(rest=2, effort=down)) == [(1, pytest.approx(5))]
    assert [number for number, _ in short(item(rest=2), item(rest=9), item(rest=3))] == [1, 1]
    assert [least for _, least in short(item(rest=2), item(rest=3, effort="steady"))] == [5, 4]


def test_a_rep_that_somebody_else_goes_meanwhile_has_rest_enough() -> None:
    on = clock()
    alone = events(item(rest=2))
    team = [replace(one, item=replace(one.item, manner=Manner(turns=2))) for one in alone]  # type: ignore[union-attr, type-var]
    assert rests_too_short(on.run(alone), on) and not rests_too_short(on.run(tuple(team)), on)
