"""What the rules on gear look at: drills, sets, parts of practices, practices and days."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Piece, Rep
from almanac.arithmetic.goes import goes, turns_with
from almanac.arithmetic.loads import (
    excluded,
    loads_hands,
    longest_worn,
    resists,
    worn_in,
    worn_metres,
)
from almanac.arithmetic.swum import Swum
from almanac.checks.gear_on_days import on_days
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.ways import Said, Way, judged_ways
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.policy import Policy
from almanac.source.reader import DataPath
from almanac.units import LAND, show_number


def judged(analysis: Analysis) -> Iterator[Coded]:
    """Every breach, with the code of its rule."""
    catalogue = analysis.catalogue
    loads = _Most.of(catalogue.policy)
    for drill in catalogue.drills.values():
        for code, path, message, hint in _drill(drill, catalogue.gear, loads):
            yield code, Problem(drill, path, message, hint, level=drill.level)
    yield from judged_ways(analysis, lambda way: _way(analysis, way))
    for summary in analysis.practices.values():
        level = catalogue.club.squads[summary.practice.squad].level
        for swum in summary.every_way:
            for code, message, hint in over_amount(analysis, swum, level):
                told = Problem(summary.practice, ("parts",), message, hint, of_key=True)
                yield code, told._replace(level=level)
    yield from on_days(analysis)


def _drill(drill: Drill, gear: dict[str, Gear], loads: _Most) -> Iterator[Said]:
    needs, may_add = drill.gear.needs, drill.gear.may_add
    for key, ids in (("needs", needs), ("may_add", may_add)):
        for number, id in enumerate(ids):
            path: DataPath = ("gear", key, number)
            word = gear[id].not_for.way(drill)
            if not word and key == "needs" and drill.level in gear[id].not_for.levels:
                word = drill.level
            if word:
                message = f"'{id}' is not for {word}"
                hint = "take other gear, or none"
                yield "gear-not-for", path, message, hint
            clash = next((pair for other in needs if (pair := excluded((id, other), gear))), None)
            clash = clash or _loads_too_many({*needs, id}, gear, loads)
            if clash and id != clash[0]:
                yield "gear-together", path, *_clash(clash, gear)


def _clash(pair: tuple[str, str], gear: dict[str, Gear]) -> tuple[str, str]:
    one, other = (gear[id].title.lower() for id in pair)
    return f"{one} and {other} do not go together", "keep one of the two"


class _Most(NamedTuple):
    """How many pieces of gear at once may resist, and how many may change a swimmer's force."""

    resisting: float
    in_all: float

    @staticmethod
    def of(policy: Policy) -> _Most:
        return _Most(policy.limit("resisting_at_once_most"), policy.limit("gear_at_once_most"))


def _loads_too_many(
    ids: Iterable[str], gear: dict[str, Gear], most: _Most
) -> tuple[str, str] | None:
    """The first and the last of some gear that resists, or that resists or assists, where that is
    more than may at once.
    """
    forced = sorted(id for id in ids if gear[id].resists or gear[id].assists)
    loads = [id for id in forced if gear[id].resists]
    if len(loads) > most.resisting:
        return loads[0], loads[-1]
    return (forced[0], forced[-1]) if len(forced) > most.in_all else None


def _way(analysis: Analysis, way: Way) -> Iterator[Said]:
    gear = analysis.catalogue.gear
    policy = analysis.catalogue.policy
    most = policy.of_level(way.level).limit("resisted_rep_most")
    told = set[tuple[object, ...]]()
    for rep in way.swum.reps:
        if not rep.gear:
            continue
        key = (rep.path, tuple((id(piece.drill), piece.gear, piece.effort) for piece in rep.pieces))
        if key in told:
            continue
        told.add(key)
        for piece in rep.pieces:
            yield from _piece(analysis, way, rep, piece)
        metres = longest_worn(rep, way.swum.course, gear, policy.limit("held_as_50"))
        if metres > most:
            message = f"{show_number(metres)} m resisted in one rep"
            hint = f"{way.level} holds {show_number(most)} m at most: shorter reps, or plain ones"
            yield "resisted-rep", rep.path, message, hint
    yield from _goes(analysis, way, most)
    if not way.is_part:  # of a practice all parts are added up
        for code, message, hint in over_amount(analysis, way.swum, way.level):
            worn = next(rep.path for rep in way.swum.reps if rep.gear)
            yield code, worn, message, hint


def _goes(analysis: Analysis, way: Way, most: float) -> Iterator[Said]:
    """What is amiss with what is swum without a stop, in however many reps it is written."""
    gear, course = analysis.catalogue.gear, way.swum.course
    turning = [id for id in way.swum.gear if gear[id].not_for.turns]
    resisting = any(gear[id].resists for id in way.swum.gear)
    if course == LAND or not (turning or resisting):
        return
    held = analysis.catalogue.policy.limit("held_as_50")
    for go in goes(way.swum.events, course):
        for id in turning:
            rep = turns_with(go, id, course)
            if rep:
                message = f"'{id}' is not for reps with a turn in them"
                yield "gear-not-for", rep.path, message, "stop at the wall, or do it without"
        reps = {(rep.path, rep.rounds, rep.number) for rep, _ in go.swum}
        metres = worn_metres((piece for _, piece in go.swum), course, gear, resists, held)
        one_is_over = any(longest_worn(rep, course, gear, held) > most for rep, _ in go.swum)
        if len(reps) > 1 and metres > most and not one_is_over:
            message = f"{show_number(metres)} m resisted without a stop"
            hint = f"{way.level} holds {show_number(most)} m at most: rest between the reps"
            yield "resisted-rep", go.swum[0][0].path, message, hint


def _piece(analysis: Analysis, way: Way, rep: Rep, piece: Piece) -> Iterator[Said]:
    gear, scale = analysis.catalogue.gear, analysis.scale
    most = _Most.of(analysis.catalogue.policy)
    several = len(piece.gear) > 1
    pair = (
        (excluded(piece.gear, gear) or _loads_too_many(piece.gear, gear, most)) if several else None
    )
    if pair:
        yield "gear-together", rep.path, *_clash(pair, gear)
    for id in piece.gear:
        own = gear[id].not_for
        efforts = [word for word in scale.split(piece.effort) if word in own.efforts]
        what = (
            way.level
            if way.level in own.levels
            else own.way(piece.drill) or (efforts[-1] if efforts else "")
        )
        if what:
            message = f"'{id}' is not for {what}"
            yield "gear-not-for", rep.path, message, "do it without, or with other gear"


def over_amount(analysis: Analysis, swum: Swum, level: str) -> Iterator[tuple[str, str, str]]:
    """What is worn farther in a whole than a level allows: the code, message and hint."""
    if not swum.gear:
        return
    limits = analysis.catalogue.policy.of_level(level)
    for code, worn, most, what in (
        ("resisted-dose", resists, limits.limit("resisted_most"), "are resisted"),
        ("plates-dose", loads_hands, limits.limit("plates_most"), "are with plates on the hands"),
    ):
        held = analysis.catalogue.policy.limit("held_as_50")
        metres = worn_in(swum, analysis.catalogue.gear, worn, held)
        if metres > most:
            holds = f"{level} holds {show_number(most)} m at most"
            message = f"{show_number(metres)} m {what}, and {holds}"
            yield code, message, "take such reps out, or swim them plain"
