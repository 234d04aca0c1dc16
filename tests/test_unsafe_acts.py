"""Sentences that ask for what no session asks for are told; those of sound sessions are not.

The list is our own: attacks that were written without a look at the rules, and what passed them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
import yaml

from almanac.wording.abreast import abreast_in
from almanac.wording.acts import starts_of
from almanac.wording.blind import BLIND, covers_the_eyes, moves_blind
from almanac.wording.clothes import swims_clothed
from almanac.wording.lifts import names_a_high_jump
from almanac.wording.neglect import NEGLECT
from almanac.wording.somersaults import somersaults_in
from almanac.wording.stunts import STUNTS

ACTS = yaml.load((Path(__file__).parent / "sessions/acts.yml").read_text("utf-8"), yaml.CSafeLoader)
SOUND = ACTS.pop("sound")
TELLS: Mapping[str, Callable[[str], object]] = {
    "stunt": lambda text: STUNTS.asked_in(text, starts_of(text)) or moves_blind(text),
    "neglect": lambda text: NEGLECT.asked_in(text, starts_of(text)),
    "somersaults": lambda text: somersaults_in(text) > 3,
    "clothes": swims_clothed,
    "abreast": lambda text: abreast_in(text) > 2,
    "high_jump": names_a_high_jump,
}


@pytest.mark.parametrize("act", TELLS)
def test_each_is_told(act: str) -> None:
    assert [text for text in ACTS[act] if not TELLS[act](text)] == []


@pytest.mark.parametrize("act", TELLS)
def test_sound_ones_are_not(act: str) -> None:
    assert [text for text in SOUND if TELLS[act](text)] == []


def test_whoever_moves_with_eyes_shut_is_told_by_words_that_the_rule_looks_out_for() -> None:
    text = "Close the eyes at the flags and sprint for the wall."
    assert moves_blind(text) and BLIND & starts_of(text)


def test_gear_that_covers_the_eyes() -> None:
    assert covers_the_eyes("Blacked-out goggles: the swimmer sees nothing and feels the line.")
    assert not covers_the_eyes("A cap with a seam along the middle shows whether the head moves.")
