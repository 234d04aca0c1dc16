"""The page of a set that lane groups swim differently shows each its own, and names whose it is."""

from __future__ import annotations

import csv
import html
import io
import re
from pathlib import Path

import pytest
from example_cases import cases
from shared import DAY

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.site.data_files import data_files
from almanac.site.entry_parts import Parts
from almanac.site.finder import Finder
from almanac.site.site_pages import SitePages

ITEMS = """items:
  - reps: 4
    distance: 50
    do: back-kick
    effort: easy
    sendoff: [1:50, 1:45, 1:45, 1:40]
    by_group:
      heron-2: {reps: 6, distance: 25, sendoff: 1:00}
  - rounds: 2
    rounds_between: [1, 3]
    by_round: {1: {gear: [fins]}}
    items:
      - {reps: 1, distance: 50, do: back-swim, effort: easy, rest: 0:20}
"""
OTHERS = """items:
  - {reps: 4, distance: 50, do: back-kick, effort: easy, sendoff: {heron-1: 1:50},
      by_group: {heron-2: {reps: 3}}}
  - rounds: 4
    pause_between: 1:00
    by_round: {3: {sendoff: 2:00}}
    by_group: {heron-2: {rounds: 3, pause_between: 1:30}, heron-1: {rounds: 0}}
    items:
      - {reps: 1, distance: 50, do: back-swim, effort: easy, rest: 0:20,
          by_round: {1: {aim: 1:40}, 2: {rest: 0:30, aim: 1:35}}}
"""
TWO_ITEMS = """items:
  - {reps: 4, distance: 25, do: back-kick, effort: easy, sendoff: 1:10}
  - {reps: 6, distance: 50, do: back-swim, effort: easy, sendoff: 2:00, note: Long.,
      by_group: {heron-2: {reps: 4}}}
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    return written(tmp_path_factory.mktemp("by-group"), ITEMS)


def written(root: Path, items: str) -> dict[str, str]:
    """The pages of a set of these items, for two lane groups."""
    next(case for case in cases("accepted") if case.name == "every-field").build(root)
    file = root / "plans/sets/by-group-and-round.yml"
    file.write_text(file.read_text("utf-8").partition("items:")[0] + items, "utf-8")
    club = root / "plans/club.yml"
    text = club.read_text("utf-8")
    one = text[text.index("  heron-1:\n") : text.index("gear_owned:")]
    two = one.replace("heron-1", "heron-2").replace("lane 1", "lane 2")
    club.write_text(text.replace(one, one + two), "utf-8")
    return rendered(root)


@pytest.fixture(scope="module")
def page(site: dict[str, str]) -> str:
    return site["sets/by-group-and-round.md"]


def rendered(root: Path) -> dict[str, str]:
    loaded = load(root)
    assert loaded.catalogue is not None
    pages = SitePages(Analysis(loaded.catalogue, DAY), loaded.names)
    return dict(pages.of_entries(lambda entry: entry.id == "by-group-and-round"))


def plain(text: str) -> str:
    """Text without its tags, as it is read."""
    return re.sub(" {2,}", " ", re.sub("<[^>]+>", "", text))


def test_each_way_has_its_line_on_the_whiteboard(page: str) -> None:
    board = plain(page[page.index('<div class="board">') :])
    lines = [line for line in board.splitlines() if line.strip()][:5]
    assert [line.partition(" target ")[0] for line in lines] == [
        "Heron, lane 2: 6 × 25 Back kick on 1:00 easy",
        "Others: 4 × 50 Back kick on 1:50, 1:45, 1:45, 1:40 easy",
        "2 rounds",
        "1 × 50 Back swim 0:20 rest easy",
        "Round 1 with fins",
    ]
    assert all(" target " in line for line in lines[:2])
    assert '<p class="depth-0" data-group="heron-2">' in page


def test_each_way_has_its_totals_and_facets(page: str) -> None:
    assert "300 m" in page and "250 m" in page  # 4 × 50 and 6 × 25, each with 2 × 50 more
    assert page.count('<table class="facet">') == 2 * 6
    assert len(re.findall(r'<section data-group="heron-[12]">', page)) == 2


def test_the_clock_tells_a_send_off_for_each_rep(page: str) -> None:
    assert "1:50, 1:45, 1:45, 1:40" in page[page.index('<table class="lanes">') :]


def test_fewer_or_more_rounds_stand_beside_the_page(site: dict[str, str], page: str) -> None:
    found = re.findall(r'<a href="[./]*(sets/scaled/[^"]+)">([^<]*)', page)
    links = [(html.unescape(href), words) for href, words in found]
    base = "sets/scaled/by-group-and-round.html#"
    assert links == [(f"{base}1", "1 round"), (f"{base}3", "3 rounds")]
    assert "<strong>2 rounds</strong>" in page
    other = site["sets/scaled/by-group-and-round.md"]
    three = other[other.index('<section id="3">') :]
    # 4 × 50 and 6 × 25, each with 3 × 50 more
    assert 'class="target" data-group="heron-1"' in three, "each lane group has its own"
    assert "Distance 350 m" in three and "Distance 300 m" in three and "3 rounds" in three


def test_a_round_fewer_says_nothing_of_rounds_that_are_not_there(site: dict[str, str]) -> None:
    other = site["sets/scaled/by-group-and-round.md"]
    one = other[other.index('<section id="1">') : other.index('<section id="2">')]
    assert "1 round" in one and "between rounds" not in one and "Round 1" in one


def test_who_goes_round_how_often_and_who_waits(tmp_path: Path) -> None:
    page = written(tmp_path, OTHERS)["sets/by-group-and-round.md"]
    text = page[page.index('<div class="board">') : page.index('<p class="convention" data-pool')]
    board = [line.partition(" target ")[0] for line in plain(text).splitlines() if line.strip()]
    assert board[2:] == [
        "Heron, lane 2: 3 rounds 1:30 between rounds",
        "Heron, lane 1: Wait",
        "1 × 50 Back swim 0:20 rest / 0:30 rest / on 2:00 easy",
        "Round 1 hold 1:40.0",
        "Round 2 0:30 rest hold 1:35.0",
        "Round 3 on 2:00",
    ]
    assert '<p class="depth-1" data-group="heron-2">' in text  # and not who waits


def test_every_rest_and_time_to_hold_of_the_rounds_stands_in_the_table(tmp_path: Path) -> None:
    pages = written(tmp_path, OTHERS)
    clocks = pages["sets/clocks/by-group-and-round.md"]
    assert "0:20 rest / 0:30 rest / 2:00" in clocks
    assert "1:40.0, 1:35.0 asked for of some" in clocks


def test_what_is_scaled_is_named_where_there_is_more_than_one(
    tmp_path: Path, site: dict[str, str], page: str
) -> None:
    pages = written(tmp_path, TWO_ITEMS)
    assert "Fewer of 6 × 50 Back swim: " in pages["sets/by-group-and-round.md"]
    assert "written with 6 reps: 6 × 50 Back swim</p>" in pages["sets/scaled/by-group-and-round.md"]
    assert "Fewer or more: " in page  # of the only rounds that there are


def test_tables_and_finder_say_whose_figures_they_are_and_what_is_assumed(tmp_path: Path) -> None:
    written(tmp_path, OTHERS)
    loaded = load(tmp_path)
    assert loaded.catalogue is not None
    analysis = Analysis(loaded.catalogue, DAY)
    table = dict(data_files(analysis, loaded.names, ""))["data/v1/sets.csv"]
    rows = {row["id"]: row for row in csv.DictReader(io.StringIO(table))}
    assert (rows["by-group-and-round"]["of_groups"], rows["six-fifties"]["of_groups"]) == (
        "heron-1",
        "",
    )
    assert "'" not in {text for row in rows.values() for text in row.values()}
    facts = {fact.entry.id: fact for fact in Finder(Parts(analysis)).facts}
    assert any(takes[0] < 0 for own in facts["assumed"].times.takes for takes in own)
    assert all(takes[0] >= 0 for own in facts["six-fifties"].times.takes for takes in own)
