"""A brief in words: what of it stands in sight, what behind a tap, and what on paper."""

from __future__ import annotations

import pytest

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import IN_FULL, BriefHazard, BriefSource
from almanac.model.catalogue import Catalogue
from almanac.report.brief_text import (
    MOST_IN_SIGHT,
    MOST_LEFT,
    ShownHazard,
    brief_lines,
    shown_brief,
)

OWN = "practice", "osprey-ladder"  # the practice whose brief it is
SHORT = BriefSource(OWN, "The lane is full", "Two wait at the wall")
WORDS = "The lane is full. Two wait at the wall."


@pytest.fixture(scope="module")
def catalogue(analysis: Analysis) -> Catalogue:
    return analysis.catalogue


def hazard(number: int, *sources: BriefSource) -> BriefHazard:
    return BriefHazard(f"h{number}", f"Hazard {number}", "can-injure", "Always this.", sources)


def brief_with(number: int, *sources: BriefSource) -> list[BriefHazard]:
    """Five hazards, of which one has these sources and the others come from a drill."""
    drill = BriefSource(("drill", "backstroke-swim"), "", "")
    return [hazard(at, *(sources if at == number else (drill,))) for at in range(5)]


def shown(catalogue: Catalogue, number: int, *sources: BriefSource) -> ShownHazard:
    return shown_brief(catalogue, brief_with(number, *sources), OWN)[number]


@pytest.mark.parametrize("number", range(IN_FULL))
def test_what_the_entry_adds_to_the_gravest_stands_in_sight(
    catalogue: Catalogue, number: int
) -> None:
    line = shown(catalogue, number, SHORT)
    assert (line.here, line.left, line.adds) == (WORDS, "", ())
    assert line.does == "Two wait at the wall."
    assert (line.gravity, line.control) == ("Injury", "Always this.")


@pytest.mark.parametrize("number", range(IN_FULL, 5))
def test_what_it_adds_to_the_others_is_behind_a_tap_and_on_paper(
    catalogue: Catalogue, number: int
) -> None:
    line = shown(catalogue, number, SHORT)
    assert (line.here, line.left) == ("", WORDS)
    assert line.adds == ((catalogue.practices[OWN[1]].title, WORDS),)


def test_what_has_no_room_in_sight_nor_on_paper_is_behind_a_tap(catalogue: Catalogue) -> None:
    long = BriefSource(OWN, "x" * MOST_IN_SIGHT, "")
    line = shown(catalogue, 0, long)
    assert (line.here, line.left) == ("", "")
    assert line.adds == ((catalogue.practices[OWN[1]].title, f"{long.own}."),)
    (whole,) = shown_brief(catalogue, [hazard(0, long)], OWN, is_whole=True)
    assert (whole.here, whole.adds) == (f"{long.own}.", ())


def test_the_room_on_paper_is_shared_out_from_the_gravest(catalogue: Catalogue) -> None:
    half = BriefSource(OWN, "x" * (MOST_LEFT // 2 + 10), "")
    brief = [*brief_with(0)[:IN_FULL], hazard(3, half), hazard(4, half)]
    left = [line.left for line in shown_brief(catalogue, brief, OWN)[IN_FULL:]]
    assert left == [f"{half.own}.", ""]


def test_it_says_in_short_where_a_hazard_comes_from(catalogue: Catalogue) -> None:
    named = [
        BriefSource(key, "", "") for key in (OWN, ("drill", "backstroke-swim"), ("gear", "fins"))
    ]
    line = shown(catalogue, 4, *named)
    assert (line.whence, line.on_paper) == ("fins, Backstroke", "fins, 1 drill")
    line = shown(catalogue, 4, *named, BriefSource(("drill", "easy-choice-swim"), "", ""))
    assert (line.whence, line.on_paper) == ("fins, 2 drills", "fins, 2 drills")
    assert shown(catalogue, 4, BriefSource(("vocabulary", "starts"), "", "")).whence == "starts"


def test_a_terminal_tells_the_control_of_the_gravest_alone(catalogue: Catalogue) -> None:
    lines = list(brief_lines(catalogue, brief_with(4, SHORT), OWN))
    assert sum("Always this." in line for line in lines) == IN_FULL
    assert f"    here: {WORDS}" in lines
    assert lines[-1].startswith("House rules")
