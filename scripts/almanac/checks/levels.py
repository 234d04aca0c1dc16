"""The rule on drills that are above those who do them."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import Said, Way, is_above, judged_ways


@refuses("drill-level")
def drill_level(analysis: Analysis) -> Iterator[Problem]:
    """Nobody does in the water a drill of a higher level than their own: a set holds no drill above
    its level or above the squads that its lane groups are of, a practice none above its squad. What
    a drill asks first, and how much of it is safe, was written for those of its level.
    """
    told = set[tuple[object, ...]]()
    for _, problem in judged_ways(analysis, lambda way: _above(analysis, way)):
        key = problem.entry.file, problem.path, problem.message
        if key not in told:
            told.add(key)
            yield problem


def _above(analysis: Analysis, way: Way) -> Iterator[Said]:
    if way.is_scaled:  # more of the same drills
        return
    for drill in {id(piece.drill): piece.drill for piece in way.swum.pieces}.values():
        if not drill.is_on_land and is_above(analysis.catalogue, drill.level, way.level):
            path = next(
                rep.path
                for rep in way.swum.reps
                if any(piece.drill is drill for piece in rep.pieces)
            )
            message = f"'{drill.title}' is of level {drill.level}, and {way.level} does it here"
            yield "drill-level", path, message, "take one of their level, or an easier one"
