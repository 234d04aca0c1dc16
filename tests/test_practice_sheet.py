"""The page of a practice: what is needed on deck comes first, each lane group in its column."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from almanac.analysis.analysis import Analysis
from almanac.report.gear_text import fetch_words, gear_of
from almanac.site.practice_sheet import sheet_rows, timed_boards
from almanac.site.site_pages import SitePages

STATIONS, LADDER = "heron-kick-and-go", "osprey-ladder"


@pytest.fixture(scope="module")
def page(analysis: Analysis) -> str:
    pages = SitePages(analysis, {})
    return dict(pages.of_entries(lambda entry: entry.id == LADDER))[f"practices/{LADDER}.md"]


def test_the_run_sheet_stands_right_under_the_title_and_danger_before_the_totals(page: str) -> None:
    marks = ["<h1>", '<ol class="sheet', 'id="gear"', 'id="brief"', 'id="totals"', "deck-card"]
    places = [page.index(mark) for mark in marks]
    assert places == sorted(places)
    read = re.sub(
        r"<select.*?</select>|<svg.*?</svg>", "", page[places[0] : places[1]], flags=re.DOTALL
    )
    assert len(re.sub(r"<[^>]+>|\s+", " ", read).split()) < 80


def test_every_part_is_a_row_that_opens_so_that_all_and_the_danger_come_soon(page: str) -> None:
    sheet = page[page.index('<ol class="sheet') : page.index("</ol>")]
    assert len(re.findall(r"<details[ >]", sheet)) == 5
    assert "<details open>" not in sheet
    first = page.index('class="danger danger-first"')
    assert first < page.index('<ol class="sheet') < page.index('id="brief"')


def test_the_clock_line_tells_each_part_to_scale(page: str) -> None:
    (line,) = re.findall(r'<svg class="parts-line".*?</svg>', page, re.DOTALL)[:1]
    boxes = re.findall(r'<rect class="(?:effort|parts)[^>]*x="(\d+)" [^>]*width="(\d+)"', line)
    assert len(boxes) == 5
    ends = [int(left) + int(width) for left, width in boxes]
    assert all(end <= int(left) for end, (left, _) in zip(ends, boxes[1:], strict=False))
    assert ends[-1] <= 1000 and "to spare" in line and "Warm-up" in line


def test_ids_of_entries_stand_nowhere_in_the_text(page: str, analysis: Analysis) -> None:
    text = re.sub(r"<[^>]+>", " ", page[page.index("<h1>") : page.index('class="entry-foot"')])
    ids = {key[1] for key in analysis.catalogue.entries if "-" in key[1]}
    assert not ids & set(re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)+", text))


def test_page_and_table_share_the_boards_of_their_own_analysis(analysis: Analysis) -> None:
    boards = timed_boards(analysis, LADDER)
    timed_boards(analysis, STATIONS)
    assert timed_boards(analysis, LADDER) is boards
    other = Analysis(analysis.catalogue, analysis.today)
    assert timed_boards(other, LADDER) is not boards
    assert timed_boards(other, LADDER) == boards


def test_lane_groups_that_part_have_their_own_columns_on_one_axis(analysis: Analysis) -> None:
    catalogue, summary = analysis.catalogue, analysis.practices[STATIONS]
    rows = sheet_rows(catalogue, summary, timed_boards(analysis, STATIONS))
    for row in rows:
        first, after, starts, ends = row["place"]
        assert first < after and starts < ends
        assert (after - first == 2) == (not row["groups"])
    starts = [float(row["starts_s"]) for row in rows]
    assert sorted(starts) == starts
    taken: set[tuple[int, int]] = set()
    for row in rows:
        first, after, starts, ends = row["place"]
        cells = {(column, line) for column in range(first, after) for line in range(starts, ends)}
        assert not taken & cells
        taken |= cells


def test_gear_says_who_fetches_it_for_what(analysis: Analysis) -> None:
    catalogue, summary = analysis.catalogue, analysis.practices["reed-kick-then-swim"]
    assert [need.gear for need in summary.gear] == ["fins"]
    assert fetch_words(catalogue, summary, "fins") == "the coach fetches it for Speed, 17:17:24"
    led = tuple(
        replace(row, run=replace(row.run, doing=replace(row.run.doing, led_by="assistant-coach")))
        for row in summary.sheet
    )
    words = fetch_words(catalogue, replace(summary, sheet=led), "fins")
    assert words == "the assistant coach fetches it for Speed, 17:17:24"


def test_a_lane_group_is_told_its_own_gear(analysis: Analysis) -> None:
    for summary in analysis.practices.values():
        needed = {need.gear: need.needed for need in summary.gear}
        own = [dict(gear_of(summary, group)) for group in summary.groups]
        assert {gear for each in own for gear in each} == set(needed)
        for gear, count in needed.items():
            assert max(each.get(gear, 0) for each in own) <= count
