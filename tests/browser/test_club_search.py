"""What coaches type into the search, against the club's own entries."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from .web import Server, ask

# What coaches type, and a page that must stand among the first three. Written before the weights were set.
WANTED = {
    "knees out of water": "faults/knees-break-surface.html",
    "bicycle kick": "faults/knees-break-surface.html",
    "hips sink": "faults/hips-sink-on-back.html",
    "crossing legs": "faults/crossing-legs.html",
    "stiff feet": "faults/stiff-ankles-hooked-feet.html",
    "head up": "faults/head-lifts-on-back.html",
    "steamline": "drills/back-streamline-kick.html",
    "backstoke 100": "benchmarks/backstroke-100.html",
    "6 beat": "drills/backstroke-six-beat-hold.html",
    "six-beat": "drills/backstroke-six-beat-hold.html",
    "chute": "gear/parachute.html",
    "flippers": "gear/fins.html",
    "paddels": "gear/hand-paddles.html",
    "metronome": "gear/tempo-beeper.html",
    "bungee": "gear/stretch-cord.html",
    "drag suit": "gear/drag-shorts.html",
    "float": "gear/kickboard.html",
    "warmup": "sets/easy-loosener.html",
    "warm-up yards": "sets/meet-warm-up-yards.html",
    "cool down": "sets/osprey-wind-down.html",
    "swim down heron": "sets/heron-wind-down.html",
    "tumble turn": "drills/freestyle-tumble-turn.html",
    "flip turn": "drills/freestyle-tumble-turn.html",
    "fly kick": "drills/dolphin-on-board.html",
    "breakout": "drills/backstroke-break-out.html",
    "vertical kicking": "drills/vertical-flutter-kick.html",
    "ladder": "sets/ladder-on-back.html",
    "hypoxic": "safety.html",
    "breath holding": "safety.html",
    "tapper": "blocks/osprey-towards-200-back.html",
    "100s": "benchmarks/backstroke-100.html",
}  # fmt: skip


@pytest.fixture(scope="module")
def club(club_site: Path) -> Iterator[Server]:
    """The club's own site, served."""
    with Server(club_site) as running:
        yield running


def test_everyday_words_find_what_is_meant(browser: Browser, club: Server) -> None:
    page = browser.new_page()
    answers = ask(page, club.address, *WANTED)
    page.close()
    missed = {
        question: found
        for (question, wanted), found in zip(WANTED.items(), answers, strict=True)
        if wanted not in found
    }
    assert not missed
