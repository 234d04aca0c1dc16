"""Sets that were worked out by hand, through the reader of files, the laying out and the clock.

``hand_worked/*.yml`` holds them by topic, each with its working in a comment. They are swum by the
lane groups of ``catalogue/plans/club.yml`` with the efforts, drills, gear and policy of that
catalogue. No number there was taken from the program: each comes from the comment above it, with a
pocket calculator.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest
from hand_worked_cases import CASES, read_all, summary
from shared import DAY

from almanac.analysis.analysis import Analysis
from almanac.checks import RULES, check
from almanac.model.load import Loaded
from almanac.source import schemas
from almanac.units import parse_time

OF_A_SET = {"distance", "metres", "lengths", "reps", "by", "misfits"}
OF_A_GROUP = {
    "distance", "lengths", "reps", "by", "clock", "work", "rest", "density", "rated_work",
    "last_touch",
    "targets", "sendoffs", "aims", "fits", "unknown", "assumed",
}  # fmt: skip


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    return read_all(tmp_path_factory, moved=False)


def about(text: str) -> Any:
    """A number as it was worked out: good to half of its last digit, with a hair for its
    rounding.
    """
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
    refusals = {rule.code for rule in RULES if rule.is_refusal}  # sums are worked, not safe doses
    errors = [said for said in checked if said.is_error and said.code not in refusals]
    assert [str(said) for said in errors if said.place.file in ours] == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_it_comes_to_what_was_worked_out(case, loaded):
    found = summary(loaded, case.id, case.told.get("in_course"), case.told.get("asked", {}))
    worked = dict(case.worked)
    groups = worked.pop("groups", {})
    assert set(worked) <= OF_A_SET, "a figure that nothing compares"
    compare_swum(found.first, worked)
    if "misfits" in worked:
        assert len(found.misfits) == int(worked["misfits"])
    for name, told in groups.items():
        assert set(told) <= OF_A_GROUP, "a figure that nothing compares"
        compare_swum(found.of(name), told)
        compare_clock(found.clocks[name], told)


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
    if "assumed" in told:
        assert list(run.assumed) == told["assumed"]
    if "unknown" in told:
        assert [missing.drill for missing in run.missing] == told["unknown"]


def test_every_construct_stands_in_one_of_them():
    """Whatever the schema lets an item say, but for notes and who holds a cord: neither swims."""
    defs = schemas.raw("common")["$defs"]
    shapes = [shape for name, shape in defs.items() if name in SAY_WHAT_IS_SWUM]
    assert len(shapes) == len(SAY_WHAT_IS_SWUM)
    told = set().union(*map(keys, shapes)) - {"note", "cord"}
    written = "\n".join(item for case in CASES for item in case.items)
    assert {key for key in told if not re.search(rf"\b{key}:", written)} == set()
    marks = set(defs["part"]["properties"]["to"]["enum"])
    assert marks == set(re.findall(r"\bto: ([\w-]+)", written))


SAY_WHAT_IS_SWUM = (
    "item", "reps", "round", "pause", "part", "change", "round_change", "do_plan", "do_in_turn",
    "effort_plan",
    "one_effort_plan", "descend_and_build",
)  # fmt: skip


def keys(shape: Any) -> set[str]:
    """The keys that a shape names, those of shapes within it too."""
    if isinstance(shape, list):
        return set().union(*map(keys, shape))
    if not isinstance(shape, dict):
        return set()
    return set(shape.get("properties", {})).union(*map(keys, shape.values()))
