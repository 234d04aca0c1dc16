"""The page Judge it: pictures with one thing wrong, or nothing, as a script draws them between two
drawings of a body, and what is asked of each.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from almanac.drawing.paints import PAINTS
from almanac.drawing.swimmer.judged import NUMBER, Judged, judged
from almanac.model.catalogue import Catalogue
from almanac.model.fault import Fault
from almanac.model.fault_drawing import FaultDrawing
from almanac.site.links import Page, page_of
from almanac.site.templates import script_json

LEAST_PX = 8.0
"""The least that a joint must be off on a picture 320 px wide to be seen."""
MARGIN = 1.1  # what is wrong is so much over what is let go
RIGHT = 0.5  # what is right is off by at most so much of what is let go, to be told from it by eye
LEAST = 0.35  # less of a fault's own drawing looks like none; found by looking at all of them
MOST = 1.1  # a fault is drawn at most so large, of its picture
STANDING_CM = 170.0
_HALVES = 2  # numbers are sent in halves of a unit
_CLASS = re.compile(r'class="figure-([\w-]+)"')
_PAGE_DRAWS = ('class="figure-water"', 'class="figure-surface"', 'class="figure-ripple"')
_PAGE_PAINTS = ("gear", "surface", "wall", "water")
_DRILLS = 4


@dataclass(frozen=True)
class AskedFault:
    """A fault in one view, with how much of it is drawn: at least ``least`` of the way to its
    drawing where it is wrong, at most ``within`` where it is right.
    """

    fault: Fault
    deck: bool
    drawn: Judged
    least: float
    within: float


def asked(catalogue: Catalogue) -> Iterator[AskedFault]:
    """Every fault that is asked: a still picture shows it, and it has first words."""
    return (one for one in _shown(catalogue) if _is_asked(one.fault))


def _is_asked(fault: Fault) -> bool:
    return bool(fault.first_words and fault.drawing and not fault.drawing.matter_of_time)


def _shown(catalogue: Catalogue) -> Iterator[AskedFault]:
    """Every fault that a still picture can draw, in each view in which it shows enough: over the
    tolerance and 8 px.
    """
    usual_cm = catalogue.policy.limit("judged_tolerance")
    for fault in catalogue.faults.values():
        if fault.drawing is None:
            continue
        lets_go = (fault.drawing.tolerance_cm or usual_cm) / STANDING_CM
        for deck in (False, True):
            drawn = _judged(fault.drawing, deck)
            if drawn is None:
                continue
            least = max(LEAST, MARGIN * max(lets_go, LEAST_PX / drawn.scale) / drawn.shift)
            if least < 1:
                yield AskedFault(fault, deck, drawn, least, RIGHT * lets_go / drawn.shift)


@lru_cache(maxsize=256)
def _judged(drawing: FaultDrawing, deck: bool) -> Judged | None:
    return judged(drawing, deck=deck)


def judge_page(catalogue: Catalogue) -> Page:
    """The page, with all that its script draws and asks."""
    found = list(asked(catalogue))
    data = script_json(judge_data(catalogue, found))
    context = {"data": data, "places": PLACE_NAMES, "faults": len(_faults(found))}
    return Page("judge.md", "judge", context)


PLACE_NAMES = {
    "head": "head", "hand": "hand", "elbow": "elbow", "waist": "back or belly", "hip": "hip",
    "knee": "knee", "foot": "foot",
}  # fmt: skip


def _faults(found: list[AskedFault]) -> dict[str, Fault]:
    return {one.fault.id: one.fault for one in found}


def judge_data(catalogue: Catalogue, found: list[AskedFault]) -> dict[str, Any]:
    """What the script reads. Numbers of drawings are halves of a unit, each less the one two before
    it; the wrong ones are what they differ by. One that is not asked comes
    last: it is never asked, and offered as an answer where too few others would do.
    """
    offered = [*found, *(one for one in _shown(catalogue) if not _is_asked(one.fault))]
    shapes: dict[str, int] = {}
    drawings = [
        {
            "fault": one.fault.id,
            "deck": one.deck,
            "above": one.drawn.level is None,
            "height": round(one.drawn.height, 1),
            "level": one.drawn.level and round(one.drawn.level, 1),
            "where": [[round(at, 1) for at in spot] for spot in one.drawn.where],
            "ring": round(one.drawn.ring, 1),
            "least": round(one.least, 4),
            "within": round(one.within, 4),
            "parts": list(_parts(one.drawn, shapes)),
        }
        for one in offered
    ]
    classes = {name for shape in shapes for name in _CLASS.findall(shape)}
    return {
        "most": MOST,
        "shapes": list(shapes),
        "paints": {name: PAINTS[name] for name in sorted(classes | {*_PAGE_PAINTS})},
        "drawings": drawings,
        "faults": {
            id: _told(catalogue, fault) | {"shows_too": _shown_too(fault, _faults(offered))}
            for id, fault in _faults(offered).items()
        },
    }


def _shown_too(fault: Fault, others: dict[str, Fault]) -> list[str]:
    """The faults whose picture has nothing that this one's has not: hips that sink where the head
    lifts too.
    """
    own = _slips(fault)
    return [
        id for id, other in others.items() if other is not fault and own > _slips(other) > set()
    ]


def _slips(fault: Fault) -> set[str]:
    return set(fault.drawing.wrong.slips) if fault.drawing else set()


def _parts(drawn: Judged, shapes: dict[str, int]) -> Iterator[list[Any]]:
    for right, wrong in zip(drawn.right, drawn.wrong, strict=True):
        if any(mark in right for mark in _PAGE_DRAWS):
            continue
        shape = shapes.setdefault(NUMBER.sub("#", right), len(shapes))
        own, other = (
            [_in_halves(text) for text in NUMBER.findall(part)] for part in (right, wrong)
        )
        steps = [value - (own[at - 2] if at > 1 else 0) for at, value in enumerate(own)]
        moves = [there - here for here, there in zip(own, other, strict=True)]
        yield [shape, _row(steps), *([_row(moves)] if any(moves) else [])]


def _in_halves(text: str) -> int:
    return round(float(text) * _HALVES)


def _row(numbers: list[int]) -> str:
    return " ".join(map(str, numbers))


def _told(catalogue: Catalogue, fault: Fault) -> dict[str, Any]:
    assert fault.drawing is not None
    drills = dict.fromkeys(id for cause in fault.causes for id in cause.mended_by)
    return {
        "title": fault.title,
        "href": page_of(fault),
        "body": [fault.drawing.position, fault.stroke],
        "place": fault.drawing.place.removeprefix("far-"),
        "sign": fault.drawing.wrong.says,
        "right": fault.drawing.says,
        "see": fault.see[0].what,
        "words": list(fault.first_words) if _is_asked(fault) else [],
        "drills": [catalogue.drills[id].title for id in list(drills)[:_DRILLS]],
        "all_drills": [catalogue.drills[id].title for id in list(drills)[_DRILLS:]],
    }
