"""Sets that were worked out by hand, through the reader of files, the laying out and the clock.

``hand_worked/*.yml`` holds them by topic, each with its working in a comment. They are swum by the lane
groups of ``catalogue/plans/club.yml`` with the efforts, drills, gear and policy of that catalogue. No number
there was taken from the program: each comes from the comment above it, with a pocket calculator.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml
from shared import CATALOGUE, copied, made_once

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.timing import Timing
from almanac.checks import check
from almanac.model.load import Loaded, load
from almanac.units import COURSES, parse_time

FOLDER = Path(__file__).parent / "hand_worked"
DAY = date(2026, 11, 25)
WORDS = {  # that the small catalogue has no need of
    "starts": "dive: {title: From a dive, means: Head first from the edge., ready_s: 20, "
    "safety: [{hazard: Head meets the bottom., control: Deep end only.}]}",
    "partners": "by-turns: {title: By turns, means: One goes as the other rests., takes_turns: true}",
    "teams": "relay-of-four: {title: Relay of four, means: Four share the distance., swimmers: 4}",
}
OF_A_SET = {"distance", "metres", "lengths", "reps", "by", "misfits"}
OF_A_GROUP = {
    "distance", "lengths", "reps", "by", "clock", "work", "rest", "density", "rated_work", "last_touch",
    "targets", "sendoffs", "aims", "fits", "unknown",
}  # fmt: skip


@dataclass(frozen=True)
class Case:
    """A set as it is written, and what was worked out for it by hand; all values as written."""

    id: str
    entry: str
    in_course: str | None
    worked: Mapping[str, Any]


def cases() -> list[Case]:
    """Every set of the folder."""
    return [case for path in sorted(FOLDER.glob("*.yml")) for case in _cases(path.read_text())]


def _cases(text: str) -> list[Case]:
    lines, found = text.splitlines(), []
    for key, value in yaml.compose(text, yaml.BaseLoader).value:
        items = next(node for name, node in value.value if name.value == "items")
        # as it is written: the reader of the program is to read it
        written = "\n".join(lines[items.start_mark.line : items.end_mark.line])
        told = yaml.load(text, yaml.BaseLoader)[key.value]
        most = f"most_in_lane: {told['most_in_lane']}\n" if "most_in_lane" in told else ""
        entry = (
            f"title: {key.value.replace('-', ' ').capitalize()}\n"
            "purpose: A set whose totals were worked out by hand.\n"
            "goals: [kick-technique]\nlevel: performing\n"
            f"course: {told.get('course', '25m')}\n{most}items:\n{written}\n"
        )
        found.append(Case(key.value, entry, told.get("in_course"), told["worked"]))
    return found


CASES = cases()


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    def make(folder: Path) -> None:
        copied(CATALOGUE, folder)
        for name, word in WORDS.items():
            with (folder / "drills" / "vocabulary" / f"{name}.yml").open("a") as vocabulary:
                vocabulary.write(f"  {word}\n")
        for case in CASES:
            (folder / "plans" / "sets" / f"{case.id}.yml").write_text(case.entry)

    return load(made_once(tmp_path_factory, "hand-worked", make))


def of(case: Case, loaded: Loaded, course: str | None = None) -> SetSummary:
    """The set of a case added up by the program, in its own course or another."""
    catalogue = loaded.catalogue
    assert catalogue is not None
    laid = course or case.in_course
    return summarise(Timing(catalogue, day=DAY), catalogue.sets[case.id], laid and COURSES[laid])


def about(text: str) -> Any:
    """A number as it was worked out: good to half of its last digit, with a hair for its rounding."""
    digits = len(text.partition(".")[2])
    return pytest.approx(
        float(parse_time(text)) if ":" in text else float(text), abs=0.51 * 10**-digits
    )


def compare_split(found: Mapping[str, Fraction], worked: Mapping[str, str]) -> None:
    assert {word: float(share) for word, share in found.items() if share} == {
        word: about(share) for word, share in worked.items()
    }


def test_there_are_forty_of_them_and_every_id_once():
    assert len(CASES) >= 40 and len({case.id for case in CASES}) == len(CASES)


def test_the_reader_takes_them_all(loaded):
    ours = {f"plans/sets/{case.id}.yml" for case in CASES}
    assert [str(said) for said in loaded.findings if said.place.file in ours] == []
    assert loaded.catalogue is not None
    checked = check(Analysis(loaded.catalogue, DAY))
    assert [str(said) for said in checked if said.is_error and said.place.file in ours] == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_it_comes_to_what_was_worked_out(case, loaded):
    summary, worked = of(case, loaded), dict(case.worked)
    groups = worked.pop("groups", {})
    assert set(worked) <= OF_A_SET, "a figure that nothing compares"
    compare_swum(summary.first, worked)
    if "misfits" in worked:
        assert len(summary.misfits) == int(worked["misfits"])
    for name, told in groups.items():
        assert set(told) <= OF_A_GROUP, "a figure that nothing compares"
        compare_swum(summary.of(name), told)
        compare_clock(summary.clocks[name], told)


def compare_swum(swum: Any, told: Mapping[str, Any]) -> None:
    if "distance" in told:
        assert swum.distance.value == about(told["distance"])
        assert float(swum.lengths) == about(told.get("lengths", str(float(swum.lengths))))
    if "metres" in told:
        assert swum.metres == about(told["metres"])
    if "reps" in told:
        assert len(swum.reps) == int(told["reps"])
    for facet, split in told.get("by", {}).items():
        compare_split(swum.by[facet], split)


def compare_clock(run: Any, told: Mapping[str, Any]) -> None:
    for figure in ("clock", "work", "rest", "density", "rated_work", "last_touch"):
        if figure in told:
            found = getattr(run, figure)
            value = None if found is None else found.value
            assert value == (None if told[figure] == "unknown" else about(told[figure])), figure
    if "targets" in told:
        found = [timed.target_s for timed in run.reps]
        assert found == [None if text == "unknown" else about(text) for text in told["targets"]]
    if "sendoffs" in told:
        assert [timed.sendoff_s for timed in run.reps] == [about(text) for text in told["sendoffs"]]
    if "aims" in told:
        aims = [timed.aim and timed.aim.value for timed in run.reps]
        assert aims == [None if text == "none" else about(text) for text in told["aims"]]
    if "fits" in told:
        assert [unfit.fits_s for unfit in run.unfit] == [about(text) for text in told["fits"]]
    if "unknown" in told:
        assert [missing.drill for missing in run.missing] == told["unknown"]
