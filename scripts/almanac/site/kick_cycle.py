"""The page of the kick cycle: eight moments of a flutter, on the back and on the front, each leg's
phase named.
"""

from __future__ import annotations

from collections import Counter

from markupsafe import Markup

from almanac.drawing.swimmer.kick_cycle import SIDES, moment_drawing, moment_words
from almanac.drawing.swimmer.kicks import MOMENTS
from almanac.model.catalogue import Catalogue
from almanac.model.vocabularies import COMMON_PRACTICE, PUBLISHED
from almanac.site.links import Page


def kick_cycle_page(catalogue: Catalogue) -> Page:
    """The page, which stands without JavaScript; its script can show the eight one after the
    other.
    """
    bases = catalogue.words("bases")
    return Page(
        "kick-cycle.md",
        "kick_cycle",
        {
            "goal": _goal(catalogue),
            "moments": [_moment(moment) for moment in range(MOMENTS)],
            "sides": [title for _, title in SIDES],
            "bases": {id: bases[id].title for id in (COMMON_PRACTICE, PUBLISHED)},
            "rates": [
                (word.title, word.beat) for word in catalogue.words("kicks").values() if word.beat
            ],
        },
    )


def _goal(catalogue: Catalogue) -> dict[str, str] | None:
    """The goal that most drills of flutter kick serve first; None where there are none."""
    chief = Counter(drill.goals[0] for drill in catalogue.drills.values() if drill.is_flutter_kick)
    for id, _ in chief.most_common(1):
        return {"id": id, "title": catalogue.words("goals")[id].title.lower()}
    return None


def _moment(moment: int) -> dict[str, object]:
    """A moment for the template: its number as people count, its figure, and a row a leg with a
    cell a side.
    """
    both = [moment_words(moment, lie) for lie, _ in SIDES]
    rows = list(zip(("Near", "Far"), zip(*both, strict=True), strict=True))
    return {
        "number": moment + 1,
        "figure": Markup(moment_drawing(moment, identifier=f"moment-{moment + 1}")),
        "rows": rows,
    }
