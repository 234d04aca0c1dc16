"""Learn: what a device keeps of answers, by its own tests in JavaScript; keys of questions, and
what a page shows of a stage.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from node_scripts import run_by_node

from almanac.analysis.analysis import Analysis
from almanac.site.progression_page import learn_page, progression_page

TESTS = Path(__file__).resolve().parent / "learn"


@pytest.mark.parametrize("path", sorted(TESTS.glob("*.test.js")), ids=lambda path: path.name)
def test_what_is_kept(path: Path) -> None:
    run_by_node(path)


def test_a_question_is_known_by_its_words(analysis: Analysis) -> None:
    questions = [
        question
        for progression in analysis.catalogue.progressions.values()
        for question in progression.questions
    ]
    assert len({question.key for question in questions}) == len(questions)
    first = questions[0]
    assert replace(first, question=first.question + "?").key != first.key
    assert replace(first, options=()).key == first.key


def test_learn_leads_to_every_progression_with_its_questions(analysis: Analysis) -> None:
    rows = {row["link"].href: row for row in learn_page(analysis.catalogue).context["rows"]}
    for id, progression in analysis.catalogue.progressions.items():
        keys = [question.key for question in progression.questions]
        assert rows[f"progressions/{id}.html"]["questions"].split() == keys


def test_a_stage_shows_its_drill_its_danger_and_what_goes_wrong(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    for progression in catalogue.progressions.values():
        for part in progression_page(catalogue, progression).context["stages"]:
            drill = catalogue.drills[part["stage"].drills[0]]
            assert bool(part["dangers"]) == bool(drill.hazards)
            assert drill.purpose.startswith(part["why"]) and part["why"][-1] in ".!?"
            assert part["figure"].startswith("drills/")
            mends = {cause_drill for link in part["faults"]
                     for cause in catalogue.faults[link.href.split("/")[-1][:-5]].causes
                     for cause_drill in cause.mended_by}  # fmt: skip
            assert not part["faults"] or mends & set(part["stage"].drills)


def test_a_picture_of_a_stage_is_told_and_is_of_its_body(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    of_its_body = 0
    for progression in catalogue.progressions.values():
        for part in progression_page(catalogue, progression).context["stages"]:
            assert part["told"].words.startswith(("Swimmer ", "1. "))
            if not part["wrong"]:
                continue
            told = part["wrong"]["told"].title
            assert "wrong" in told and "right" in told
            own = catalogue.drills[part["stage"].drills[0]].activity
            fits = [fault.title for fault in catalogue.faults.values() if fault.drawing
                    and (fault.drawing.position, fault.drawing.arms) == (own.position, own.arms)
                    and any(drill in cause.mended_by for cause in fault.causes for drill in part[
                        "stage"].drills)]  # fmt: skip
            assert not fits or part["wrong"]["title"] in fits
            of_its_body += bool(fits)
    assert of_its_body >= 5
