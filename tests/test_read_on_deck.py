"""How a set that says more than reps and a send-off reads on whiteboard, page and in the text: each
lane group its own, nothing bare, and rests that are what a swimmer rests.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from example_cases import cases
from shared import DAY

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.report.board_line import lines_for
from almanac.report.set_json import set_json
from almanac.report.set_text import set_text
from almanac.report.whiteboard import board, board_text
from almanac.site.site_pages import SitePages

ID = "by-group-and-round"


@pytest.fixture
def club(tmp_path: Path) -> Path:
    """A club of two lane groups, with a partner by turns and a relay of two."""
    next(case for case in cases("accepted") if case.name == "every-field").build(tmp_path)
    file = tmp_path / "plans/club.yml"
    text = file.read_text("utf-8")
    one = text[text.index("  heron-1:\n") : text.index("gear_owned:")]
    two = one.replace("heron-1", "heron-2").replace("lane 1", "lane 2")
    file.write_text(text.replace(one, one + two), "utf-8")
    return tmp_path


def written(club: Path, *items: str) -> Analysis:
    """The club with a set of these items."""
    file = club / f"plans/sets/{ID}.yml"
    head = file.read_text("utf-8").partition("variants:")[0]
    file.write_text(head + "items:\n" + "".join(f"  - {item}\n" for item in items), "utf-8")
    loaded = load(club)
    assert loaded.catalogue is not None
    return Analysis(loaded.catalogue, DAY)


def whiteboard(analysis: Analysis) -> list[str]:
    catalogue = analysis.catalogue
    return board_text(board(catalogue, catalogue.sets[ID])).splitlines()


def page(analysis: Analysis, club: Path) -> str:
    pages = SitePages(analysis, load(club).names)
    return dict(pages.of_entries(lambda entry: entry.id == ID))[f"sets/{ID}.md"]


def rows(page: str) -> list[list[str]]:
    """The cells of the table of reps, as they are read."""
    table = page[page.index('<table class="lanes">') :].partition("</table>")[0]
    cells = [re.findall("<td>(.*?)</td>", row) for row in table.split("<tr>")[2:]]
    return [[re.sub(r"<ul>.*?</ul>|<[^>]+>", "", cell).strip() for cell in each] for each in cells]


def test_a_time_to_hold_is_each_lane_groups_own(club: Path) -> None:
    analysis = written(
        club,
        "{reps: 2, distance: 50, do: back-kick, effort: easy, rest: 0:20, "
        "aim: {heron-1: 1:25.0, heron-2: 1:30.0}}",
    )
    assert whiteboard(analysis) == [
        "2 × 50 Back kick, easy, 0:20 rest, Heron, lane 1 hold 1:25.0; Heron, lane 2 hold 1:30.0"
    ]
    shown = page(analysis, club)
    for group, time in (("heron-1", "1:25.0"), ("heron-2", "1:30.0")):
        assert f'<span class="aim" data-group="{group}">hold {time} <span class="whose">' in shown


def test_a_line_for_one_lane_group_tells_its_time_to_hold_alone(club: Path) -> None:
    analysis = written(
        club,
        "{reps: 2, distance: 50, do: back-kick, effort: easy, rest: 0:20, "
        "aim: {heron-1: 1:25.0, heron-2: 1:30.0}, by_group: {heron-2: {reps: 3}}}",
    )
    two, one = whiteboard(analysis)
    assert "1:25.0" not in two and "1:30.0" in two
    assert "1:25.0" in one and "1:30.0" not in one.partition("Others")[2]


def test_in_a_practice_lane_groups_see_their_own_times_to_hold_alone(club: Path) -> None:
    analysis = written(
        club,
        "{reps: 2, distance: 50, do: back-kick, effort: easy, rest: 0:20, "
        "aim: {heron-1: 1:25.0, heron-2: 1:30.0}}",
        "{reps: 1, distance: 50, do: back-kick, effort: easy, rest: 0:20, aim: {heron-1: 1:25.0}}",
    )
    lines = board(analysis.catalogue, analysis.catalogue.sets[ID])
    alone = lines_for(lines, ["heron-2"])
    assert [(line.aim, line.aim_of) for line in alone] == [("hold 1:30.0", ()), ("", ())]
    both = lines_for(lines, ["heron-1", "heron-2"])
    assert [[own[0] for own in line.aim_of] for line in both] == [
        ["heron-1", "heron-2"],
        ["heron-1"],
    ]
    others = lines_for(lines, ["heron-2", "osprey-1"])
    assert [[own[0] for own in line.aim_of] for line in others] == [["heron-2"], []]
    assert others[1].aim == ""


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ("{distance: 25}", "Round 2: 4 × 25"),
        ("{reps: 2}", "Round 2: 2 × 50"),
        ("{reps: 2, do: back-swim}", "Round 2: 2 × 50 Back swim"),
        ("{do: back-swim}", "Round 2: Back swim"),
    ],
)
def test_what_is_different_in_a_round_is_told_whole(club: Path, change: str, told: str) -> None:
    analysis = written(
        club,
        "{rounds: 2, items: [{reps: 4, distance: 50, do: back-kick, effort: easy, rest: 0:20, "
        f"by_round: {{2: {change}}}}}]}}",
    )
    assert whiteboard(analysis)[-1].strip() == told


def test_in_a_round_the_number_of_reps_stays_each_lane_groups_own(club: Path) -> None:
    analysis = written(
        club,
        "{rounds: 2, items: [{reps: 4, distance: 50, do: back-kick, effort: easy, rest: 0:20, "
        "by_group: {heron-2: {reps: 6}}, by_round: {2: {distance: 25}}}]}",
    )
    assert whiteboard(analysis)[-1].strip() == "Round 2: 25 each"


def test_who_waits_for_a_partner_rests_meanwhile(club: Path) -> None:
    analysis = written(
        club,
        "{reps: 2, distance: 50, do: back-kick, effort: easy, sendoff: 4:00, partner: by-turns}",
    )
    summary = analysis.summary(ID)
    run = summary.clocks["heron-1"]
    (timed, _), rest = run.reps, run.rest
    assert timed.target_s is not None and rest is not None
    row = rows(page(analysis, club))[0]
    assert float(row[3].removesuffix(" s")) == pytest.approx(240 - timed.target_s, abs=0.1)
    told = set_json(summary)["groups"]["heron-1"]["reps"]
    assert sum(rep["rest_s"] for rep in told) == pytest.approx(rest.value, abs=0.2)


def test_a_relay_says_what_each_of_the_team_swims(club: Path) -> None:
    analysis = written(
        club,
        "{reps: 2, distance: 100, do: back-kick, effort: easy, sendoff: 5:00, team: relay-of-two}",
    )
    assert rows(page(analysis, club))[0][0] == "2 × 100, 50 each"


def test_what_is_swum_by_time_has_no_tenths_and_is_estimated_as_a_whole(club: Path) -> None:
    analysis = written(club, "{reps: 1, time: 8:00, do: back-kick, effort: easy}")
    shown = page(analysis, club)
    assert rows(shown)[0][1] == "8:00"
    assert "part estimated" not in shown
    assert re.search(r"(\d+) m \(estimated\)", shown)


@pytest.mark.parametrize(
    ("pause", "told"),
    [("pause: 5:00", "1 gear change, none of it beyond"), ("pause: 0:01", "1 gear change, 0:")],
)
def test_one_gear_change_is_one(club: Path, pause: str, told: str) -> None:
    analysis = written(
        club,
        "{reps: 1, distance: 50, do: back-swim, effort: easy, rest: 0:20}",
        f"{{{pause}}}",
        "{reps: 1, distance: 50, do: back-swim, effort: easy, rest: 0:20, gear: [fins]}",
    )
    assert told in set_text(analysis.catalogue, analysis.summary(ID))
