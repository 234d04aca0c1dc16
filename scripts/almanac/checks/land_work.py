"""Rules on work on land: its level, its length, and who looks on."""

from __future__ import annotations

import math
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.at_once import Busy, moments
from almanac.checks.each_practice import practices_at_levels
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import lowest
from almanac.model.block import Block
from almanac.model.drill import Drill
from almanac.model.practice import Practice
from almanac.source.reader import DataPath
from almanac.units import show_time
from almanac.wording.lifts import names_a_high_jump, names_a_lift


@refuses("land-level")
def land_level(analysis: Analysis) -> Iterator[Problem]:
    """What is done on land is of the level of the squad, or of the circuit's, or below: a load that
    is too hard for the line hurts where no water carries it.
    """
    catalogue = analysis.catalogue
    order = list(catalogue.words("levels"))
    for practice, summary, level in practices_at_levels(analysis):
        told = set[tuple[DataPath, str]]()
        for run in summary.runs:
            for drill in {p.drill.id: p.drill for own in run.each for p in own.pieces}.values():
                key = run.path, drill.id
                above = drill.is_on_land and order.index(drill.level) > order.index(level)
                if above and key not in told:
                    told.add(key)
                    text = f"{drill.title} is of level {drill.level}, and the squad is {level}"
                    yield Problem(practice, run.path, text, _EASIER, level=level)
    for id, swim_set in analysis.computable.items():
        if swim_set.is_on_land:
            pieces = [p for own in analysis.summary(id).each for p in own.pieces]
            for drill in {p.drill.id: p.drill for p in pieces}.values():
                if order.index(drill.level) > order.index(swim_set.level):
                    text = f"{drill.title} is of level {drill.level}, above {swim_set.level}"
                    yield Problem(swim_set, ("level",), text, _EASIER, level=swim_set.level)

    for block in analysis.catalogue.blocks.values():
        level = analysis.catalogue.club.squads[block.squad].level
        for week, day, id in _circuits(block):
            hard = _above(analysis, id, order.index(level))
            if hard:
                text = f"{hard.title} is of level {hard.level}, and the squad is {level}"
                yield Problem(block, ("weeks", week, "days", day), text, _EASIER, level=level)


def _above(analysis: Analysis, id: str, most: int) -> Drill | None:
    """A drill of a circuit whose level is above one, by its place in their order."""
    if id not in analysis.computable:
        return None
    order = list(analysis.catalogue.words("levels"))
    pieces = (piece for own in analysis.summary(id).each for piece in own.pieces)
    return next((p.drill for p in pieces if order.index(p.drill.level) > most), None)


def _circuits(block: Block) -> Iterator[tuple[int, str, str]]:
    """Every circuit of a block, with its week and its day."""
    for number, week in enumerate(block.weeks):
        for name, day in week.days.items():
            for id in day.circuits:
                yield number, name, id


_EASIER = "choose an easier drill; pain goes to a licensed health professional, never into a set"


@refuses("land-load")
def land_load(analysis: Analysis) -> Iterator[Problem]:
    """Work on land carries the body that does it: no drill has anybody lift or carry another, or a
    barbell, by its own words. Beside a pool the floor is wet, and children's backs are still
    growing. Of the lowest level nobody jumps from a height or on to one.
    """
    for drill in analysis.catalogue.drills.values():
        if not drill.is_on_land:
            continue
        texts: list[tuple[DataPath, str]] = [
            (("title",), drill.title),
            (("summary",), drill.summary),
        ]
        texts += [(("steps", number), step) for number, step in enumerate(drill.steps)]
        told = next((path for path, text in texts if names_a_lift(text)), None)
        if told:
            text = "somebody or something heavy is lifted or carried"
            mend = "take the load out: the body's own weight is enough"
            yield Problem(drill, told, text, mend, level=drill.level)
        jump = next((path for path, text in texts if names_a_high_jump(text)), None)
        if jump and drill.level == lowest(analysis.catalogue, analysis.catalogue.words("levels")):
            text = f"somebody jumps from a height, or on to one, and {drill.level} lands badly yet"
            mend = "low hops on a mat, each landing without a sound, or nothing"
            yield Problem(drill, jump, text, mend, level=drill.level)


@refuses("land-long")
def land_long(analysis: Analysis) -> Iterator[Problem]:
    """A practice, and a circuit, holds no more work on land than the policy lets its level do
    (``land_minutes_most``); how long it takes is known.
    """
    policy = analysis.catalogue.policy
    for practice, summary, level in practices_at_levels(analysis):
        most_s = 60 * policy.of_level(level).limit("land_minutes_most")
        for group in summary.groups:
            rows = [row for row in summary.rows_of(group) if not row.run.is_in_water]
            taken = [
                cell.ends.s - row.starts.s
                for row in rows
                for cell in row.cells
                if cell.group == group and not cell.ends.missing
            ]
            if rows and len(taken) < len(rows):
                text = "how long the work on land takes is not known"
                mend = "give its reps a rest or a send-off"
                yield Problem(practice, rows[0].run.path, text, mend, level=level)
                break
            if sum(taken) > most_s:
                text = f"{show_time(sum(taken))} are on land, and {level} does {show_time(most_s)}"
                yield Problem(practice, rows[0].run.path, text, _SHORTER, level=level)
                break
    for id, swim_set in analysis.computable.items():
        if swim_set.is_on_land:
            most_s = 60 * policy.of_level(swim_set.level).limit("land_minutes_most")
            took = _length_s(analysis, id)
            if took > most_s:
                text = f"it takes {show_time(took)}, and {swim_set.level} does {show_time(most_s)}"
                yield Problem(swim_set, ("items",), text, _SHORTER, True, swim_set.level)

    for block in analysis.catalogue.blocks.values():
        level = analysis.catalogue.club.squads[block.squad].level
        most_s = 60 * policy.of_level(level).limit("land_minutes_most")
        for week, day, id in _circuits(block):
            took = _length_s(analysis, id)
            if took > most_s:
                text = f"'{id}' takes {show_time(took)}, and {level} does {show_time(most_s)}"
                yield Problem(block, ("weeks", week, "days", day), text, _SHORTER, level=level)


def _length_s(analysis: Analysis, id: str) -> float:
    """How long a circuit takes, in seconds, as far as that is known."""
    if id not in analysis.computable:
        return 0.0
    clocks = analysis.summary(id).clocks.values()
    return max((own.clock.value for own in clocks if own.clock), default=0.0)


_SHORTER = "fewer rounds, or shorter ones, and the rest on another day"


@refuses("land-alone")
def land_alone(analysis: Analysis) -> Iterator[Problem]:
    """Whoever works on land while others swim has an adult of their own there (``led_by``, or a
    helper who is an adult); and one adult looks after no more heads on land than the policy says
    (``land_heads_each_adult_most``).
    """
    most = int(analysis.catalogue.policy.limit("land_heads_each_adult_most"))
    for practice, summary, level in practices_at_levels(analysis):
        told = set[DataPath]()
        for busy in moments(summary.sheet):
            for path, text, mend in _alone(practice, busy, most):
                if path not in told:
                    told.add(path)
                    yield Problem(practice, path, text, mend, level=level)


def _alone(
    practice: Practice, busy: tuple[Busy, ...], most: int
) -> Iterator[tuple[DataPath, str, str]]:
    land = {row.run.path: row.run for row, _ in busy if not row.run.is_in_water}
    water = any(row.run.is_in_water for row, _ in busy)
    for path, run in land.items():
        heads = sum(cell.crew.heads for row, cell in busy if row.run.path == path)
        adults = sum(helper.adult for helper in run.doing.helpers) + bool(run.doing.led_by)
        if not water:
            adults = max(adults, practice.adults or 1)
        if not adults:
            text = f"{heads} heads are on land while others swim, with no adult of their own"
            yield path, text, "write led_by with the role of the adult who takes it"
        elif heads > most * adults:
            has = "1 adult" if adults == 1 else f"{adults} adults"
            text = f"{heads} heads are on land with {has}, and it takes {math.ceil(heads / most)}"
            yield path, text, "write `adults`, add helpers who are adults, or split the group"
