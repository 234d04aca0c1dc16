"""Judge it with the club's own faults: each that has first words is asked, off by more than a coach
lets go, and the page's script draws and asks as it should.
"""

from __future__ import annotations

import json
import random
import re
from pathlib import Path

import pytest
from node_scripts import run_by_node
from shared import share

from almanac.drawing.swimmer.judged import between
from almanac.model.catalogue import Catalogue
from almanac.model.load import Loaded
from almanac.site.judge_page import LEAST_PX, STANDING_CM, asked, judge_data

SCRIPT = Path(__file__).parent / "judge" / "judge.test.js"


@pytest.fixture(scope="module")
def club_catalogue(club: Loaded) -> Catalogue:
    assert club.catalogue is not None
    return club.catalogue


def test_each_fault_that_is_asked_is_off_by_more_than_a_coach_lets_go(club_catalogue):
    found = list(asked(club_catalogue))
    faults = {one.fault.id for one in found}
    assert len(faults) >= 25
    assert sum(one.deck for one in found) >= 20
    for one in found:
        cm = one.fault.drawing.tolerance_cm or club_catalogue.policy.limit("judged_tolerance")
        assert (
            one.least * one.drawn.shift * STANDING_CM
            > cm
            > one.within * one.drawn.shift * STANDING_CM
        )
        assert one.least * one.drawn.shift_px > LEAST_PX
        assert one.drawn.height <= 170.5
    with_words = {
        id
        for id, fault in club_catalogue.faults.items()
        if fault.first_words and not fault.drawing.matter_of_time
    }
    assert faults == with_words, "first words without a picture that is asked"


def test_the_page_draws_and_asks_as_it_should(club_catalogue, tmp_path):
    found = list(asked(club_catalogue))
    data = judge_data(club_catalogue, found)
    chance = random.Random(3)
    drawn = []
    for at, one in share(list(enumerate(found)), 12):
        along = chance.uniform(-0.2, 1.1)
        parts = [part for part in between(one.drawn, along)
                 if not re.search(r'figure-(water|surface|ripple)"', part)]  # fmt: skip
        drawn.append({"at": at, "along": along, "parts": parts})
    tolerance = [
        {"shift": one.drawn.shift, "scale": one.drawn.scale,
         "least": (one.fault.drawing.tolerance_cm or club_catalogue.policy.limit(
             "judged_tolerance")) / STANDING_CM}
        for one in found
    ]  # fmt: skip
    path = tmp_path / "judged.json"
    path.write_text(json.dumps({"data": data, "drawn": drawn, "tolerance": tolerance}), "utf-8")
    run_by_node(SCRIPT, JUDGED=str(path))
