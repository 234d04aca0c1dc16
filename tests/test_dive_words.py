"""Words that structure is held against: starts from above the water, steps that stay under it."""

from __future__ import annotations

import pytest

from almanac.arithmetic.start_limits import BACKWARDS, FEET_FIRST, HEAD_FIRST, IN_THE_WATER, enters
from almanac.model.policy import Word
from almanac.wording.dives import names_a_dive, names_a_start
from almanac.wording.lengths_under import goes_on_under
from almanac.wording.lifts import names_a_lift


@pytest.mark.parametrize(
    "text",
    [
        "Dive in off the block.",
        "Grab start, flat and long.",
        "Two track starts each.",
        "Sit on the edge, chin on chest, hands pointing at the water and topple forward.",
        "Kneel at the poolside and lean out until you fall in.",
        "Hands first off the side.",
        "From the deck, roll in over one shoulder.",
    ],
)
def test_a_fall_off_the_edge_is_a_dive(text: str) -> None:
    assert names_a_dive(text)


@pytest.mark.parametrize(
    "text",
    [
        "Sit on the edge with the legs in the water and kick.",
        "Fall in behind the swimmer ahead, and keep the gap.",
        "Never topple in off the edge.",
        "Hold the edge, lean back and let the hips come up.",
        "Fingers point at the far wall; roll in the water from back to front.",
        "Feet first, one step off the edge.",
    ],
)
def test_what_only_looks_like_a_dive(text: str) -> None:
    assert not names_a_dive(text)


def test_a_jump_is_a_start_and_no_dive() -> None:
    for text in ("Jump in from the side.", "One step off the edge, feet first."):
        assert names_a_start(text) and not names_a_dive(text)
    assert not names_a_start("Squat jumps on the mat beside the pool.")


@pytest.mark.parametrize(
    ("how", "off", "means", "counts_as"),
    [
        (IN_THE_WATER, "", "Feet on the wall, hands ahead.", IN_THE_WATER),
        (IN_THE_WATER, "platform", "Flat and long.", HEAD_FIRST),
        (IN_THE_WATER, "edge", "Flat and long.", HEAD_FIRST),
        (IN_THE_WATER, "", "Off the block, flat and long.", HEAD_FIRST),
        (IN_THE_WATER, "", "Jump in off the side.", HEAD_FIRST),
        (BACKWARDS, "ledge", "Toes on the ledge.", BACKWARDS),
        (BACKWARDS, "platform", "Back to the water.", HEAD_FIRST),
        (FEET_FIRST, "edge", "One step off the edge.", FEET_FIRST),
        (FEET_FIRST, "", "Dive in and come up.", HEAD_FIRST),
        ("", "", "A word that says not how.", HEAD_FIRST),
    ],
)
def test_a_start_counts_as_what_it_is(how: str, off: str, means: str, counts_as: str) -> None:
    assert enters(Word("Start", means, enters=how, off=off)) == counts_as


@pytest.mark.parametrize(
    ("step", "goes_on"),
    [
        ("Small and quick, all the way to the wall ahead, then stand up.", True),
        ("Dolphin to the far wall.", True),
        ("Keep the beat for the whole length.", True),
        ("The first arm pulls through the surface, then swim easy to the wall.", False),
        ("Then easy to the wall.", False),
        ("Rise by the flags. Flutter to the other end.", False),
        ("One watcher at the far wall; the others wait.", False),
        ("Hands and head still.", False),
    ],
)
def test_a_step_that_stays_under_to_the_far_wall(step: str, goes_on: bool) -> None:
    assert goes_on_under(step) == goes_on


@pytest.mark.parametrize(
    ("text", "lifts"),
    [
        ("Take a mate of your own weight on the shoulders.", True),
        ("With a partner on your back, ten squats.", True),
        ("Piggy-back to the far wall and change.", True),
        ("Carry your partner along the deck.", True),
        ("A barbell of 40 kg across the shoulders.", True),
        ("Lie on your back; a partner watches the ribs.", False),
        ("Seat lifted to a straight line from shoulders to knees.", False),
        ("Nobody lifts a partner here.", False),
        ("A partner holds the ankles while the shoulders stay down.", False),
        ("Swimmer by the rope, hands on the shoulders of nobody.", False),
    ],
)
def test_a_lift_on_land(text: str, lifts: bool) -> None:
    assert names_a_lift(text) == lifts
