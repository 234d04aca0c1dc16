"""Practices composed from the club's own catalogue: how many wishes are met, and what check says of them."""

from __future__ import annotations

import random
import shutil
from functools import cache
from pathlib import Path

import pytest
from compose_requests import drawn
from shared import DAY, examples, is_long

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing import Proposal, compose
from almanac.arithmetic.composing_order import whole
from almanac.arithmetic.composing_request import wishes_of
from almanac.arithmetic.composing_why import hindering
from almanac.arithmetic.composing_wishes import Wishes
from almanac.checks import check
from almanac.model.load import load
from almanac.report.compose_entry import as_yaml, practice_entry
from almanac.report.compose_table import Made, compose_table

ROOT = Path(__file__).parents[1]
REQUESTS = examples(24, 200)
POOLS = ("home", "home", "home", "home", "long-course", "yards-meet")


@cache
def analysed() -> Analysis:
    catalogue = load(ROOT).catalogue
    assert catalogue is not None
    return Analysis(catalogue, DAY)


@cache
def made(squad: str) -> Made:
    return compose_table(analysed(), squad)


@cache
def answers() -> list[tuple[Made, Wishes, tuple[Proposal, ...]]]:
    found = []
    for seed in range(REQUESTS):
        chance = random.Random(seed)
        own = made(chance.choice(("heron", "osprey", "reed")))
        wishes = wishes_of(own.table, drawn(own.table, chance, chance.choice(POOLS)))
        found.append((own, wishes, compose(own.table, wishes)))
    return found


def test_nearly_every_wish_that_can_be_is_met_to_within_two_minutes() -> None:
    met = [(wishes, found[0]) for _, wishes, found in answers() if found]
    assert len(met) >= 0.95 * REQUESTS
    for wishes, own in met:
        assert 0 <= 600 * wishes.minutes - whole(own.order) <= 1200


def test_where_nothing_fits_some_wish_is_named() -> None:
    for own, wishes, found in answers():
        assert found or hindering(own.table, wishes)


@pytest.mark.skipif(not is_long(), reason="a check of all that the club has; each night")
def test_what_is_composed_passes_every_check(tmp_path: Path) -> None:
    """As entries beside the club's own; of two that are composed it is no wonder that they are alike."""
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, tmp_path / name)
    written = 0
    for own, wishes, found in answers():
        if len(wishes.groups) == len(own.table.squad.groups):
            for one in found[:1]:
                data = practice_entry(own.table, own.candidates, wishes, one, "17:30", {})
                file = tmp_path / f"plans/practices/composed-{written}.yml"
                file.write_text(as_yaml(data), "utf-8")
                written += 1
    loaded = load(tmp_path)
    assert loaded.catalogue is not None and written >= REQUESTS // 3
    findings = [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]
    own = [one for one in findings if "composed-" in one.place.file]
    assert [one for one in own if one.code != "near-duplicate"] == []
    assert not any("(plans/practices/composed-" not in one.message for one in own)
