"""The rule on how hard work on land is."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import Said, Way, judged_ways
from almanac.model.catalogue import Catalogue
from almanac.units import show_number


def _judged(analysis: Analysis) -> Iterator[Coded]:
    catalogue = analysis.catalogue
    on_land = {id for id, drill in catalogue.drills.items() if drill.is_on_land}
    for id in on_land:
        drill = catalogue.drills[id]
        for message, mend in _too_hard(catalogue, [drill.effort.hardest], drill.level):
            yield "land-effort", Problem(drill, ("effort",), message, mend, level=drill.level)

    def way_of(way: Way) -> Iterator[Said]:
        told = set[tuple[object, ...]]()
        for rep in way.swum.reps:
            for piece in rep.pieces:
                key = rep.path, piece.effort
                if piece.drill.id in on_land and key not in told:
                    told.add(key)
                    words = list(analysis.scale.split(piece.effort))
                    for message, mend in _too_hard(catalogue, words, way.level):
                        yield "land-effort", rep.path, message, mend

    yield from judged_ways(analysis, way_of)


def _too_hard(catalogue: Catalogue, words: list[str], level: str) -> Iterator[tuple[str, str]]:
    """What is amiss where one of some efforts lies above what a level does on land."""
    most = catalogue.policy.of_level(level).limit("land_effort_most")
    ratings = {word: own.rating.most for word in words if (own := catalogue.efforts[word]).rating}
    hardest = max(ratings, key=ratings.__getitem__, default="")
    if hardest and ratings[hardest] > most:
        rating = show_number(ratings[hardest])
        message = (
            f"'{hardest}' is up to {rating} of 10, and on land {level} has {show_number(most)}"
        )
        yield message, "do it easier; a landing or a hold that loses its shape ends it"


_found = once(_judged)


@refuses("land-effort")
def land_effort(analysis: Analysis) -> Iterator[Problem]:
    """Work on land is no harder than the level of those who do it bears (``land_effort_most``, a
    rating from 0 to 10): no water carries the one who is too tired to land or to hold.
    """
    yield from _found(analysis, "land-effort")
