"""How drills, gear and sets fit needs: by rule, by what they say themselves, and what is done
instead.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_world import DRILLS as UNSAID
from arithmetic_world import PIECES

from almanac.arithmetic.adapting import (
    NeedFit,
    answer,
    answers,
    by_rules,
    traits_of_drill,
    traits_of_gear,
)
from almanac.arithmetic.adapting_sets import SetAsks, set_answers
from almanac.model.drill import EffortRange, GearUse
from almanac.model.entry import Hazard
from almanac.model.need import AS_IS, CHANGED, LEAVE_OUT, Adapt, Need, NeedRule, Where

DRILLS = {id: replace(own, effort=EffortRange("easy", "fast")) for id, own in UNSAID.items()}
LEVELS = ["foundation", "building", "performing"]


def need(*rules, id="arm"):
    made = tuple(NeedRule(where, fits, change) for where, fits, change in rules)
    return Need(
        id=id, file=f"{id}.yml", title=id, change=(), stop=(), refer_on="", evidence=(), rules=made
    )


OVERHEAD = need(
    (Where(arms=("streamline", "board"), modes=("kick",)), LEAVE_OUT, "Held overhead."),
    (Where(gear=("chute",)), LEAVE_OUT, "Hands hold the line."),
    (Where(effects=("resists",)), CHANGED, "Half of it."),
    (Where(kicks=("flutter",), positions=("supine",)), CHANGED, "Small."),
)


@pytest.mark.parametrize(
    ("drill", "fits", "changes"),
    [
        ("kick", LEAVE_OUT, ("Held overhead.",)),
        ("chute-kick", LEAVE_OUT, ("Held overhead.", "Hands hold the line.")),
        ("board-kick", LEAVE_OUT, ("Held overhead.",)),
        ("backstroke", CHANGED, ("Small.",)),
        ("crawl", AS_IS, ()),
        ("float", AS_IS, ()),  # on the back, and no flutter: both must agree
        ("upright", AS_IS, ()),
    ],
)
def test_the_gravest_rule_that_holds(drill, fits, changes):
    assert by_rules(OVERHEAD, traits_of_drill(DRILLS[drill], PIECES)) == NeedFit(fits, changes)


@pytest.mark.parametrize(
    ("gear", "fits", "changes"),
    [
        ("chute", LEAVE_OUT, ("Hands hold the line.",)),
        ("socks", CHANGED, ("Half of it.",)),
        ("fins", AS_IS, ()),
    ],
)
def test_gear_is_known_by_what_it_is_and_does(gear, fits, changes):
    assert by_rules(OVERHEAD, traits_of_gear(PIECES[gear])) == NeedFit(fits, changes)


def test_a_rule_of_gear_and_more_is_of_drills_alone():
    both = need((Where(gear=("chute",), modes=("kick",)), LEAVE_OUT, "No."))
    assert by_rules(both, traits_of_gear(PIECES["chute"])).fits == AS_IS
    assert by_rules(both, traits_of_drill(DRILLS["chute-kick"], PIECES)).is_left_out


@pytest.mark.parametrize(
    ("where", "holds"),
    [
        (Where(strokes=("backstroke",)), True),
        (Where(strokes=("freestyle",)), False),
        (Where(levels=(DRILLS["kick"].level,)), True),
        (Where(levels=("none",)), False),
        (Where(starts=("dive",)), True),
        (Where(starts=("edge-dive",)), False),
        (Where(efforts=("steady",)), True),
        (Where(efforts=("fast",)), False),  # it may be done more gently
        (Where(hazards=("rope", "cold")), True),
        (Where(hazards=("rope",)), False),
        (Where(under_water=True), True),
        (Where(gear=("socks",)), True),
        (Where(gear=("fins",)), False),
        (Where(effects=("resists",)), True),
        (Where(effects=("assists",)), False),
    ],
)
def test_every_field_of_a_rule(where, holds):
    drill = replace(
        DRILLS["kick"], start="dive", effort=EffortRange("steady", "fast"), under_water=5.0,
        hazards=(Hazard("cold"),), gear=GearUse(needs=("socks",)),
    )  # fmt: skip
    found = by_rules(need((where, LEAVE_OUT, "No.")), traits_of_drill(drill, PIECES))
    assert found.is_left_out is holds


def test_gear_that_is_broken_is_known_by_its_name_alone():
    traits = traits_of_drill(DRILLS["socks-kick"], {})
    assert (traits["gear"], traits["effects"]) == ({"socks"}, frozenset())
    assert by_rules(OVERHEAD, traits).is_own is False


def test_what_stays_at_the_surface_is_not_under_water():
    rule = need((Where(under_water=True), LEAVE_OUT, "No."))
    assert by_rules(rule, traits_of_drill(DRILLS["kick"], {})).fits == AS_IS
    shallow = replace(DRILLS["kick"], under_water=0)
    assert by_rules(rule, traits_of_drill(shallow, {})).fits == AS_IS
    below = replace(DRILLS["kick"], mode="underwater")
    assert by_rules(rule, traits_of_drill(below, {})).is_left_out


def test_an_entry_speaks_before_the_rules():
    lines = (Adapt("knee", LEAVE_OUT), Adapt("arm", CHANGED, "One arm down."))
    traits = traits_of_drill(DRILLS["kick"], PIECES)
    assert answer(OVERHEAD, traits, lines) == NeedFit(CHANGED, ("One arm down.",), is_own=True)
    assert answer(OVERHEAD, traits, (Adapt("arm", AS_IS),)) == NeedFit(AS_IS, is_own=True)
    assert answer(OVERHEAD, traits, (Adapt("knee", AS_IS),)).is_left_out


def test_every_drill_and_piece_of_gear_has_its_answer():
    said = replace(DRILLS["crawl"], adapt=(Adapt("arm", LEAVE_OUT, "It turns the arm."),))
    gear = {"fins": replace(PIECES["fins"], adapt=(Adapt("arm", CHANGED, "By another."),))}
    found = answers({"arm": OVERHEAD, "knee": need(id="knee")}, {"crawl": said}, gear, LEVELS)
    assert found.of["arm", "crawl"] == NeedFit(LEAVE_OUT, ("It turns the arm.",), is_own=True)
    assert found.of_gear["arm", "fins"] == NeedFit(CHANGED, ("By another.",), is_own=True)
    assert found.of["knee", "crawl"] == found.of_gear["knee", "fins"] == NeedFit(AS_IS)


# What is done instead.

SIDES = replace(DRILLS["kick"], id="sides", arms="at-sides", level="foundation")
KICK = replace(DRILLS["kick"], goals=("legs", "line"), level="building")


def stand_in(*others, drill=KICK, rules=OVERHEAD):
    drills = {own.id: own for own in (drill, *others)}
    found = answers({"arm": rules}, drills, PIECES, LEVELS).instead("arm", drill)
    return found.id if found else None


def test_the_likest_drill_that_is_not_left_out():
    sides = replace(SIDES, goals=("legs",))
    both = replace(SIDES, id="both", goals=("line", "legs"))
    assert stand_in(sides) == "sides"
    assert stand_in(sides, both) == "both"
    assert stand_in(sides, both, drill=replace(KICK, easier=("sides",))) == "sides"
    assert stand_in(replace(both, id="b"), replace(both, id="a")) == "a"
    assert stand_in(replace(both, level="building")) == "both"


def test_what_makes_a_drill_the_likest():
    """A point for each goal and word, two for the easier one and for one that is as it is."""
    two = replace(SIDES, id="b", goals=("legs", "line"))
    elsewhere = replace(SIDES, id="a", goals=("legs", "arms", "breath", "turns"))
    assert stand_in(two, elsewhere) == "b"  # goals that both serve, not goals that either does
    far = replace(SIDES, id="a", stroke="any", mode="drill", goals=("legs", "line"))
    assert stand_in(two, far) == "b"
    easier = replace(KICK, easier=("b",))
    one = replace(SIDES, id="b", goals=("legs",), stroke="any")
    assert stand_in(one, replace(SIDES, id="a", goals=("legs", "line")), drill=easier) == "a"
    same = replace(
        SIDES, id="a", goals=("legs",), position="side"
    )  # as it is, but of another place
    changed = replace(SIDES, id="b", goals=("legs", "line"))
    assert stand_in(same, changed) == "a"
    assert stand_in(replace(same, stroke="any"), changed) == "b"
    assert stand_in(replace(same, id="c"), changed) == "b"


def test_at_no_wall_any_drill_of_the_goal_will_do():
    swim = replace(
        SIDES, goals=("legs",), mode="swim", stroke="any", kick="none", position="side", arms="free"
    )
    assert stand_in(swim) == "sides"


def test_as_it_is_counts_for_two():
    changed = replace(
        SIDES, id="a-changed", goals=("legs", "line")
    )  # changed, by its kick on the back
    plain = replace(SIDES, id="b-plain", position="side", goals=("legs", "line"))
    assert stand_in(changed, plain) == "b-plain"


@pytest.mark.parametrize(
    "change",
    [
        {"goals": ("arms",)},
        {"level": "performing"},
        {"arms": "board"},
        {"position": "on-land"},
        {"gear": GearUse(needs=("fins",))},
    ],
)
def test_what_cannot_stand_for_it(change):
    sides = replace(SIDES, goals=("legs",))
    assert stand_in(replace(sides, **change)) is None
    assert stand_in(replace(sides, **change), sides) == "sides"


def test_gear_that_the_drill_has_or_may_add_is_at_hand():
    finned = replace(SIDES, goals=("legs",), gear=GearUse(needs=("fins",)))
    assert stand_in(finned, drill=replace(KICK, gear=GearUse(may_add=("fins",)))) == "sides"
    assert stand_in(finned, drill=replace(KICK, gear=GearUse(needs=("fins",)))) == "sides"


def test_work_at_a_wall_stands_for_what_starts_alike_and_is_like_it():
    reach = need((Where(arms=("streamline",)), LEAVE_OUT, "It reaches."))
    turn = replace(KICK, mode="wall", start="push-off")
    plant = replace(turn, id="plant", arms="at-sides", level="foundation")
    sides = replace(SIDES, goals=("legs",))

    def for_turn(other, drill=turn):
        return stand_in(other, drill=drill, rules=reach)

    assert for_turn(plant) == "plant"
    assert for_turn(replace(plant, start="dive")) is None
    assert for_turn(replace(plant, kick="dolphin")) == "plant"  # three words alike
    assert for_turn(replace(plant, kick="dolphin", stroke="any")) is None
    assert for_turn(plant, KICK) is None  # it starts otherwise
    assert for_turn(sides) == "sides"  # at no wall: kick, stroke and position are alike
    assert for_turn(replace(sides, position="side")) is None


# Sets.


def of_set(drills, own=(), rules=OVERHEAD, **asked):
    every = {**DRILLS, "kick": KICK, "sides": replace(SIDES, goals=("legs",))}
    needs = {"arm": rules}
    known = answers(needs, every, PIECES, LEVELS)
    (found,) = set_answers(needs, known, SetAsks([every[id] for id in drills], **asked), own)
    return found


def test_a_set_fits_as_its_drills_do():
    found = of_set(["kick", "backstroke", "crawl"])
    assert [(drill.id, other.id) for drill, other in found.left_out] == [("kick", "sides")]
    assert [drill.id for drill in found.changed] == ["backstroke"]
    assert (found.fits, found.drills, found.leaves_out) == (CHANGED, 3, True)
    assert of_set(["kick"]).fits == LEAVE_OUT
    assert of_set(["crawl"]).fits == AS_IS
    assert not of_set(["crawl"]).leaves_out
    assert (of_set(["backstroke"]).fits, of_set(["backstroke"]).leaves_out) == (CHANGED, False)
    assert of_set([]).fits == AS_IS


def test_a_set_without_its_gear():
    found = of_set(["crawl"], gear=("chute", "fins", "socks"))
    assert (found.without, found.fits, found.leaves_out) == (("chute",), CHANGED, True)


HARD = need(
    (Where(efforts=("fast", "all-out")), LEAVE_OUT, "Not at a talk."),
    (Where(efforts=("strong",)), CHANGED, "With more rest."),
    (Where(starts=("dive",)), LEAVE_OUT, "From the water."),
    (Where(starts=("push-off",)), CHANGED, "Softly."),
    (Where(efforts=("easy",), kicks=("flutter",)), LEAVE_OUT, "A drill's."),
)


@pytest.mark.parametrize(
    ("asked", "efforts", "starts", "changes", "fits"),
    [
        ({"efforts": ("steady",)}, (), (), (), AS_IS),
        ({"efforts": ("strong", "fast")}, ("fast",), (), ("With more rest.",), CHANGED),
        ({"efforts": ("strong",)}, (), (), ("With more rest.",), CHANGED),
        ({"starts": ("dive", "push-off")}, (), ("dive",), ("Softly.",), CHANGED),
        ({"efforts": ("easy",)}, (), (), (), AS_IS),  # a rule that asks for more is of drills alone
    ],
)
def test_what_a_set_asks_of_drills_that_can_be_done_more_gently(
    asked, efforts, starts, changes, fits
):
    found = of_set(["float"], rules=HARD, **asked)
    assert (found.efforts, found.starts, found.changes) == (efforts, starts, changes)
    assert (found.fits, found.leaves_out) == (fits, bool(efforts or starts))


def test_a_set_is_as_it_says():
    own = of_set(["kick"], own=(Adapt("arm", CHANGED, "Sit on the edge."),))
    assert (own.fits, own.own.change) == (CHANGED, "Sit on the edge.")
    assert of_set(["crawl"], own=(Adapt("arm", LEAVE_OUT),)).fits == LEAVE_OUT
    assert of_set(["crawl"], own=(Adapt("leg", LEAVE_OUT),)).fits == AS_IS
