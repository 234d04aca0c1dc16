"""The page of a progression."""

from __future__ import annotations

import re
from typing import Any

from almanac.model.catalogue import Catalogue
from almanac.model.fault import Fault
from almanac.model.progression import Progression, Stage
from almanac.site.drawing_html import (
    fault_file,
    fault_told,
    figure_file,
    figure_told,
    ladder_chart,
)
from almanac.site.entry_page import dangers, entry_page, evidence_rows
from almanac.site.links import Link, Page, is_listed, link

_FAULTS = 3
_SENTENCE_END = re.compile(r"(?<=[.!?])\s")


def _faults(catalogue: Catalogue, stage: Stage) -> list[Link]:
    """What goes wrong here: the faults that the stage's drills mend, those of its first drill
    first.
    """
    return [link(fault) for fault in _mended(catalogue, stage)][:_FAULTS]


def _mended(catalogue: Catalogue, stage: Stage) -> list[Fault]:
    found = {
        fault.id: fault
        for drill in stage.drills
        for fault in catalogue.users(catalogue.drills[drill], Fault, "mended_by")
    }
    return list(found.values())


def _wrong(catalogue: Catalogue, stage: Stage) -> dict[str, Any] | None:
    """The picture of wrong beside right: of the faults that a stage's drills mend and that have
    one, the first whose body lies and holds its arms as the first drill's does, else the first.
    """
    own = catalogue.drills[stage.drills[0]].activity
    drawn = [fault for fault in _mended(catalogue, stage) if fault.drawing is not None]
    if not drawn:
        return None
    fault = max(drawn, key=lambda fault: _body(fault) == (own.position, own.arms))
    return {
        "file": fault_file(fault.id),
        "title": fault.title,
        "href": link(fault).href,
        "told": fault_told(fault),
    }


def _body(fault: Fault) -> tuple[str | None, str | None]:
    return (fault.drawing.position, fault.drawing.arms) if fault.drawing else (None, None)


def _why(catalogue: Catalogue, stage: Stage) -> str:
    """What a stage is for: the first sentence of what its first drill is for."""
    return _SENTENCE_END.split(catalogue.drills[stage.drills[0]].purpose, maxsplit=1)[0]


def learn_page(catalogue: Catalogue) -> Page:
    """The page Learn: each progression with the keys of its questions, easiest level first."""
    levels = list(catalogue.words("levels"))
    ordered = sorted(
        catalogue.progressions.values(), key=lambda own: (levels.index(own.level), own.title)
    )
    rows = [
        {
            "link": link(own),
            "level": catalogue.words("levels")[own.level].title,
            "stages": len(own.stages),
            "questions": " ".join(question.key for question in own.questions),
        }
        for own in ordered
    ]
    return Page("learn.md", "learn", {"rows": rows})


def progression_page(catalogue: Catalogue, progression: Progression) -> Page:
    """The page of a progression."""
    stages = [
        {
            "stage": stage,
            "why": _why(catalogue, stage),
            "figure": figure_file(catalogue, stage.drills[0]),
            "told": figure_told(catalogue, stage.drills[0]),
            "dangers": dangers(catalogue, catalogue.drills[stage.drills[0]]),
            "faults": _faults(catalogue, stage),
            "wrong": _wrong(catalogue, stage),
            "drills": [link(catalogue.drills[id]) for id in stage.drills],
            "sets": [link(catalogue.sets[id]) for id in stage.sets],
            "sessions": f"{stage.sessions.least} to {stage.sessions.most}",
        }
        for stage in progression.stages
    ]
    return entry_page(
        catalogue,
        progression,
        goal=catalogue.words("goals")[progression.goal].title,
        is_listed=is_listed(catalogue, progression.goal),
        level=catalogue.words("levels")[progression.level].title,
        ladder=ladder_chart(progression),
        questions=len(progression.questions),
        stages=stages,
        evidence=evidence_rows(catalogue, progression.evidence),
    )
