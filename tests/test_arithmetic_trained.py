"""What swimming trains, by its lines: worked by hand. That a second held counts as a metre, and the
signs of each goal, are house preference; what each sign means is plain from its words.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from arithmetic_world import DRILLS, PIECES, SCALE, events

from almanac.arithmetic.events import Rep
from almanac.arithmetic.expand import expand
from almanac.arithmetic.trained import SIGNS, Training
from almanac.model.structure import structure_items
from almanac.source import schemas

WAYS = {
    "speed": (("fast",),),
    "legs": (("legs", "worked"),),
    "back": (("legs", "on-back"),),
    "into": (("after-kick",),),
    "force": (("legs", "resisted"),),
    "pace": (("paced", "stroke"),),
    "ease": (("easiest",),),
    "calm": (("gentle", "stroke"),),
}
TRAINING = Training(SCALE, PIECES, WAYS)
KICK, SWIM = {"distance": 50, "do": "kick"}, {"distance": 50, "do": "backstroke"}


def share(goal: str, *items: dict) -> Fraction:
    reps = tuple(own for own in events(*items) if isinstance(own, Rep))
    return TRAINING.of(reps, goal).share


@pytest.mark.parametrize(
    ("goal", "items", "expected"),
    [
        # Hundreds that descend to strong hold nothing fast: 0 of 300.
        ("speed", [{"reps": 3, "distance": 100, "do": "backstroke",
                    "effort": {"descend": ["easy", "strong"]}}], 0),
        ("speed", [{"reps": 4, **KICK, "effort": "fast"},
                   {"reps": 1, "distance": 200, "do": "backstroke", "effort": "easy"}],
                   Fraction(1, 2)),
        # 2 x 50 kick strong and 1 x 50 easy: 100 of 150 work the legs.
        ("legs", [{"reps": 2, **KICK, "effort": "strong"}, {"reps": 1, **KICK, "effort": "easy"}],
         Fraction(2, 3)),
        ("legs", [{"reps": 2, **SWIM, "effort": "strong"}], 0),
        # The arithmetic's kick lies on the back, its board kick on the front, and backstroke is no
        # legs alone: 100 of 200, at any effort.
        ("back", [{"reps": 1, **KICK, "effort": "easy"}, {"reps": 1, **KICK, "effort": "fast"},
                  {"reps": 1, "distance": 50, "do": "board-kick", "effort": "steady"},
                  {"reps": 1, **SWIM, "effort": "steady"}], Fraction(1, 2)),
        # 25 kick, then 75 swum without a stop; kick in a rep of its own leads into nothing.
        ("into", [{"reps": 2, "parts": [{"distance": 25, "do": "kick", "effort": "easy"},
                                        {"distance": 75, "do": "backstroke", "effort": "easy"}]}],
                                        Fraction(3, 4)),
        ("into", [{"reps": 2, **KICK, "effort": "easy"}, {"reps": 2, **SWIM, "effort": "easy"}], 0),
        ("force", [{"reps": 1, "distance": 50, "do": "socks-kick", "effort": "easy"},
                   {"reps": 3, **KICK, "effort": "easy"}], Fraction(1, 4)),
        ("pace", [{"reps": 4, **SWIM, "effort": {"descend": ["easy", "fast"]}},
                  {"reps": 4, **SWIM, "effort": "easy"}], Fraction(1, 2)),
        ("ease", [{"reps": 1, **SWIM, "effort": "easy"}, {"reps": 1, **SWIM, "effort": "steady"}],
         Fraction(1, 2)),
        ("calm", [{"reps": 1, **SWIM, "effort": "steady"}, {"reps": 1, **KICK, "effort": "steady"}],
         Fraction(1, 2)),
    ],
)  # fmt: skip
def test_the_share_of_a_goal_is_that_of_its_metres(
    goal: str, items: list[dict], expected: Fraction
) -> None:
    assert share(goal, *items) == expected


def test_a_goal_without_signs_is_what_drills_name_among_their_first_two_goals() -> None:
    goals = ("walls", "rotation", "line")
    own = DRILLS | {
        "kick": replace(DRILLS["kick"], goals=goals),
        "backstroke": replace(DRILLS["backstroke"], goals=goals),
    }
    items = [{"reps": 1, **KICK, "effort": "easy"}, {"reps": 3, **SWIM, "effort": "easy"}]
    reps = tuple(rep for rep in expand(structure_items(items), own, SCALE) if isinstance(rep, Rep))
    shares = [TRAINING.of(reps, goal).share for goal in goals]
    assert shares == [Fraction(1, 4), Fraction(1, 4), 0]  # plain stroke is swum for everything


def test_what_serves_a_goal_is_told_the_most_first_with_its_efforts() -> None:
    items = [
        {"reps": 1, **SWIM, "effort": "fast"},
        {"reps": 2, **KICK, "effort": "fast"},
        {"reps": 1, **KICK, "effort": "all-out"},
    ]
    reps = tuple(own for own in events(*items) if isinstance(own, Rep))
    swims = TRAINING.of(reps, "speed").swims
    assert [(own.drill, own.far) for own in swims] == [("kick", 150), ("backstroke", 50)]
    assert swims[0].efforts == ("fast", "all-out") and not swims[0].held


def test_the_schema_knows_the_signs_that_the_arithmetic_sees() -> None:
    word = schemas.raw("vocabulary")["properties"]["words"]["additionalProperties"]["properties"]
    assert set(word["trained_by"]["items"]["items"]["enum"]) == set(SIGNS)
