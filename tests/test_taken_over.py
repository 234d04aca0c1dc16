"""What an analysis takes over of the one before it is what it would work out anew: after a save
that a figure, a time or a brief hangs on, nothing of before the save is shown.
"""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY, copied
from shown_checks import computed

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.report.reports import REPORTS

# Each save touches one thing that figures or briefs of sets and practices are made from.
SAVES = {
    "the control of a hazard": (
        "drills/vocabulary/hazards.yml", "Count from the flags, slowly",
        "Count from the first flag, slowly"),
    "the gravity of a hazard": (
        "drills/vocabulary/hazards.yml", 'gravity: can-kill, control: "Count from',
        'gravity: can-ache, control: "Count from'),
    "the name of a gravity": ("drills/vocabulary/gravities.yml", "title: Life", "title: Lives"),
    "an effort": ("drills/vocabulary/efforts.yml", "share_of_best: 0.80", "share_of_best: 0.81"),
    "a piece of gear that a set does not name": ("drills/gear/fins.yml", "change_s: 30",
                                                 "change_s: 40"),
    "a test": ("plans/club.yml", "time: 1:18.0", "time: 1:19.0"),
    "a drill of a practice": (
        "drills/skills/{}/back-kick-with-fins.yml", "hazard: cramp", "hazard: line-under-load"),
    "a drill of a set": (
        "drills/skills/{}/back-kick-in-socks.yml", "hazard: ankle-or-foot",
        "hazard: line-under-load"),
    "a set of a practice": ("plans/sets/heron-warm-up.yml", "reps: 4", "reps: 6"),
}  # fmt: skip


def told(analysis: Analysis) -> dict[str, str]:
    """What a terminal is told of every set and practice: their figures, clocks and briefs."""
    return {
        f"{kind} {id}": REPORTS[kind].text(
            analysis.catalogue, REPORTS[kind].summed(analysis, id, None, None)
        )
        for kind, ids in computed(analysis)
        if kind != "block"
        for id in ids
    }


def analysed(root: Path) -> Analysis:
    loaded = load(root)
    assert loaded.catalogue is not None, loaded.findings
    return Analysis(loaded.catalogue, DAY)


@pytest.fixture(scope="module")
def before() -> Analysis:
    """The small catalogue with all that can be taken over worked out."""
    return analysed(CATALOGUE)


@pytest.fixture(scope="module", autouse=True)
def told_before(before: Analysis) -> dict[str, str]:
    return told(before)


@pytest.mark.parametrize("save", SAVES)
def test_nothing_of_before_a_save_is_shown(
    save: str, before: Analysis, told_before: dict[str, str], tmp_path: Path
) -> None:
    root = copied(CATALOGUE, tmp_path)
    form, old, new = SAVES[save]
    (file,) = root.glob(form.replace("{}", "*"))
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")
    fresh = analysed(root)
    after = told(fresh)
    assert after != told_before, "the save shows nowhere"
    assert told(before.continued(fresh.catalogue, DAY)) == after


def test_what_a_save_leaves_as_it_was_is_taken_over(before: Analysis, tmp_path: Path) -> None:
    root = copied(CATALOGUE, tmp_path)
    file = root / "plans/sets/heron-warm-up.yml"
    file.write_text(file.read_text("utf-8").replace("reps: 4", "reps: 6", 1), "utf-8")
    after = before.continued(analysed(root).catalogue, DAY)
    assert after.summary("kick-and-go") is before.summary("kick-and-go")
    assert after.summary("heron-warm-up") is not before.summary("heron-warm-up")
    assert after.practices["osprey-ladder"] is before.practices["osprey-ladder"]
    assert after.practices["heron-kick-and-go"] is not before.practices["heron-kick-and-go"]


def test_another_day_takes_nothing_over(before: Analysis) -> None:
    after = before.continued(before.catalogue, DAY + timedelta(1))
    assert after.summary("kick-and-go") is not before.summary("kick-and-go")
