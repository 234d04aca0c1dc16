"""The page "How it is computed": what it tells is asked for by what somebody is shown, and each number that
stands in the data of a page is told of.
"""

from __future__ import annotations

import sys
from types import CodeType, FrameType
from typing import Any

import pytest
from shared import CATALOGUE, DAY, copied
from shown_checks import texts_of

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import registered
from almanac.analysis.figures.figure import Documented
from almanac.checks import check
from almanac.model.load import load
from almanac.site.computed import chapters, code_of, computed_page
from almanac.site.data_files import data_files
from almanac.site.formulas import FOR_CALCULATORS

TOLD = {
    code_of(member).removeprefix("arithmetic."): member
    for members in chapters().values()
    for _, member in members
}


def code(member: Documented) -> CodeType:
    """What runs where a formula is asked: of a class, its making."""
    function: Any = getattr(member, "fget", None) or getattr(member, "func", None) or member
    function = function.__init__ if isinstance(function, type) else function
    return function.__code__


NOBODY_KNOWS = """\
title: Nobody knows how long
summary: A part without a length, and one with marks.
squad: reed
pool: home
slot: {start: "18:00", minutes: 45}
focus: A part without a length.
parts:
  - part: main
    items:
      - {reps: 4, distance: 25, do: board-flutter-kick, effort: easy, rest: 0:20, by_group: {reed-2: {reps: 3}}}
      - {reps: 1, time: 5:00, do: freestyle-swim, effort: easy}
      - reps: 1
        distance: 25
        parts:
          - {to: 15m, do: freestyle-swim, effort: fast}
          - {to: end, do: freestyle-swim, effort: easy}
        rest: 0:20
"""


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> set[CodeType]:
    """All code that runs while pages, cards, data, reports and findings are made of the small
    catalogue, with a practice beside its own of which a clock is not known.
    """
    seen: set[CodeType] = set()

    def notice(frame: FrameType, event: str, _: object) -> None:
        if event == "call":
            seen.add(frame.f_code)

    unknown = copied(CATALOGUE, tmp_path_factory.mktemp("unknown") / "club")
    (unknown / "plans" / "practices" / "nobody-knows-how-long.yml").write_text(NOBODY_KNOWS)
    loaded = load(unknown)
    assert loaded.findings == []
    assert loaded.catalogue is not None
    analysis = Analysis(loaded.catalogue, DAY)
    before = sys.getprofile()
    sys.setprofile(notice)
    try:
        check(analysis)
        for _ in texts_of(analysis, loaded.names):
            pass
        for _ in data_files(analysis, loaded.names, ""):
            pass
    finally:
        sys.setprofile(before)
    return seen


@pytest.mark.parametrize("name", TOLD)
def test_what_is_told_is_asked_for_by_what_is_shown(name: str, asked: set[CodeType]) -> None:
    member = TOLD[name]
    assert (code(member) in asked) != (member in FOR_CALCULATORS), name


def test_the_page_says_which_formulas_nothing_shows(analysis: Analysis) -> None:
    shown = {
        formula.code: formula.is_shown
        for section in computed_page(analysis).context["sections"]
        for formula in section["formulas"]
    }
    assert {code for code, is_shown in shown.items() if not is_shown} == set(
        map(code_of, FOR_CALCULATORS)
    )
    assert not set(FOR_CALCULATORS) & {
        member for _, figure in registered() for member in figure.documented
    }
