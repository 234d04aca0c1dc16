"""The table of a set for every lane group: each as its own whiteboard and clock say."""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.report.board_line import lines_for
from almanac.report.timed_board import timed_lines
from almanac.report.whiteboard import board
from almanac.site.group_table import group_table
from almanac.units import show_time


def test_every_lane_group_finds_its_own_times_in_its_column(analysis: Analysis) -> None:
    catalogue, marked = analysis.catalogue, 0
    titles = {id: group.title for id, group in catalogue.lane_groups.items()}
    for id in catalogue.sets:
        summary = analysis.summary(id)
        timed = timed_lines(
            catalogue, board(catalogue, catalogue.sets[id]), summary.clocks, tuple(titles)
        )
        table = group_table(timed, summary.clocks, titles)
        letters = {letter: f" ({words})" for letter, words in table["marks"]}
        marked += len(letters)
        for column, group in enumerate(titles):
            own = [line for line in lines_for(list(timed), [group]) if line.path]
            cells = [
                cells[column] for _, cells in table["rows"] if cells[column] != ("–", "", "", "")
            ]
            told = [
                (go + "".join(map(letters.get, marks)),
                 target + "".join(map(letters.get, of_target)))
                for go, marks, target, of_target in cells
            ]  # fmt: skip
            assert told == [
                (line.go.removeprefix("on ") or "–", line.target.removeprefix("target "))
                for line in own
                if (line.go, line.target) != ("", "")
            ]
            clock = summary.clocks[group].clock
            assert table["clocks"][column] == (show_time(clock.value) if clock else "–")
    assert marked
