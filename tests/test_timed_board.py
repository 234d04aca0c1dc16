"""The whiteboard with times: each lane group's own send-off and target on its own line."""

from __future__ import annotations

from dataclasses import replace

import pytest

from almanac.analysis.analysis import Analysis
from almanac.model.structure import structure_items
from almanac.report.board_line import BoardLine, lines_for
from almanac.report.set_words import gear_words
from almanac.report.timed_board import timed_lines
from almanac.report.whiteboard import board_lines
from almanac.site.set_page import set_page

GROUPS = ("osprey-1", "osprey-2")


@pytest.fixture(scope="module")
def parts(analysis: Analysis) -> list[list[BoardLine]]:
    """The lines of each part of a practice, with times for both lane groups."""
    catalogue = analysis.catalogue
    return [
        timed_lines(
            catalogue,
            board_lines(
                catalogue, row.run.swim_set.items if row.run.swim_set else row.run.doing.items
            ),
            row.run.clocks,
            GROUPS,
        )
        for row in analysis.practices["osprey-ladder"].sheet
    ]


def told(lines: list[BoardLine], group: str) -> list[tuple[str, str, str]]:
    return [(line.what, line.go, line.target) for line in lines_for(lines, (group,))]


def test_a_lane_group_has_its_own_send_off_and_target(parts: list[list[BoardLine]]) -> None:
    assert [told(parts[0], group)[0] for group in GROUPS] == [
        ("4 × 100 Easy swim, own choice", "on 2:00", "target 1:36.3"),
        ("4 × 100 Easy swim, own choice", "on 2:05", "target 1:44.3 (estimated)"),
    ]
    both = lines_for(parts[0], GROUPS)[0]
    assert [(group, words) for group, _, words in both.go_of] == [
        ("osprey-1", "on 2:00"),
        ("osprey-2", "on 2:05"),
    ]


def test_what_is_of_no_reps_has_no_times(parts: list[list[BoardLine]]) -> None:
    assert told(parts[0], "osprey-1")[1] == ("Pause 1:00", "", "")
    assert told(parts[2], "osprey-1")[0] == ("2 rounds", "1:00 between rounds", "")


def test_every_rep_of_a_descend_or_a_rotation_has_its_own_target(
    parts: list[list[BoardLine]],
) -> None:
    words = told(parts[2], "osprey-1")[1][2].removeprefix("target ")
    assert len(words.split(", ")) == 6
    assert sorted(words.split(", "), reverse=True) == words.split(", ")
    turns = told(parts[1], "osprey-1")[0][2].removeprefix("target ").split(", ")
    assert turns[0] == turns[2] > turns[1] == turns[3]


def test_a_send_off_that_nobody_wrote_is_marked(analysis: Analysis) -> None:
    summary = analysis.summary("ladder-on-back")
    lines = board_lines(analysis.catalogue, summary.swim_set.items)
    timed = timed_lines(analysis.catalogue, lines, summary.clocks, ("osprey-1", "reed-1"))
    assert not any("suggested" in line.go for line in lines_for(timed, ("osprey-1",)))
    reed = lines_for(timed, ("reed-1",))
    assert any(line.go.endswith("(suggested)") for line in reed if line.path)


def test_the_board_of_a_set_says_when_to_go_to_whoever_it_gives_no_send_off(
    analysis: Analysis,
) -> None:
    """Nothing vanishes from a set's page: the send-off that the clock counts with stands,
    marked.
    """
    marked = 0
    for id in analysis.computable:
        summary = analysis.summary(id)
        page = set_page(analysis, summary, (), [])
        lines: list[BoardLine] = [line for line in _lines(page.context["board"]) if line.path]
        for group, run in summary.clocks.items():
            for timed in run.reps:
                own = [
                    line for line in lines if line.path == timed.rep.path and _is_for(line, group)
                ]
                words = {{id: go for id, _, go in line.go_of}.get(group, line.go) for line in own}
                if timed.suggested:
                    assert all("(suggested)" in told for told in words), (id, group, words)
                    marked += len(words)
    assert marked


def _is_for(line: BoardLine, group: str) -> bool:
    return not line.groups or group in line.groups


def _lines(found: object) -> list[BoardLine]:
    assert isinstance(found, list)
    return found


def test_a_whiteboard_says_how_gear_is_used(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    assert gear_words(catalogue, ("fins", "snorkel")) == "with fins and with snorkel"
    chute = replace(catalogue.gear["parachute"], said="in the chute")
    known = replace(catalogue, entries={**catalogue.entries, ("gear", "parachute"): chute})
    assert gear_words(known, ("parachute", "fins")) == "in the chute and with fins"


@pytest.mark.parametrize(
    ("effort", "reps", "said"),
    [
        ({"rotate": ["easy", "strong"]}, 1, "easy"),
        ({"rotate": ["easy", "strong"]}, 2, "in turn easy, strong"),
        ({"descend": ["steady", "fast"]}, 1, "steady"),
        ({"build": ["easy", "fast"]}, 1, "build easy to fast"),
    ],
)
def test_one_rep_of_those_that_go_in_turn_is_told_as_it_is_swum(
    analysis: Analysis, effort: dict[str, list[str]], reps: int, said: str
) -> None:
    """As a piece that is cut to it has it."""
    own = {"reps": reps, "distance": 50, "do": next(iter(analysis.catalogue.drills))}
    (line,) = board_lines(analysis.catalogue, structure_items([{**own, "effort": effort}]))
    assert line.effort == said
