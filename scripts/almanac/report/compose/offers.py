"""What a piece comes to for a squad in a pool: its clocks, gear, adults, and what counts against
the limits of a practice; all rounded up to whole numbers.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from almanac.arithmetic.at_once import hands
from almanac.arithmetic.composing.pieces import TENTHS, UNKNOWN, Size
from almanac.arithmetic.lanes import room_in_lane
from almanac.arithmetic.out_of_breath import NEVER
from almanac.arithmetic.run_sheet import run_sheet
from almanac.arithmetic.stages import SharedStart
from almanac.arithmetic.under_water import is_under
from almanac.checks.after_fast import breath_of
from almanac.checks.dose_sums import DoseSum
from almanac.checks.run_room import Tally, tally
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.laid import Laid, Layer

_CALM_S = 900
"""Fast work that was over so long ago is out of everyone's breath: policies ask for less."""
_A_LITTLE = 1e-6  # of the machine


def up(value: float) -> int:
    """The next whole number, but for what the machine adds to one."""
    return math.ceil(value - _A_LITTLE)


def adults_for(layer: Layer, laid: Laid) -> int:
    """The adults that it needs, with the one who coaches."""
    catalogue = layer.analysis.catalogue
    pieces = [piece for rep in laid.run.every_rep for piece in rep.pieces]
    gear = {id for piece in pieces for id in piece.gear}
    helped = any(piece.drill.helpers for piece in pieces)
    if not helped and not any(catalogue.gear[id].helpers for id in gear):
        return 1
    stage = SharedStart(1, None, 0.0, 0.0, ((laid.run,),))
    owned = catalogue.club.gear_owned
    rows = tuple(run_sheet((stage,), catalogue.gear, layer.analysis.scale, owned))
    need = hands(rows, catalogue.gear, owned)
    return need.adults if need else 1


def room_for(layer: Layer, laid: Laid) -> tuple[int, ...]:
    """By lane group the most that a lane has room for; 0 where nothing says so."""
    return tuple(
        room_in_lane(laid.run.clocks[id], group, laid.run.course) or 0
        for id, group in layer.groups.items()
    )


def size_of(layer: Layer, own: Candidate, number: int, drills: Mapping[str, int]) -> Size | None:
    """What so many of a candidate come to; None where it cannot be done so often."""
    laid = layer.lay(own, number)
    if laid is None:
        return None
    sums = [tally(layer.analysis, swum) for swum in laid.swums]
    far = [swum.distance.value for swum in laid.swums]
    fast = [swum.metres * float(swum.shares.fast or 0) for swum in laid.swums]
    goes_under, calm = _breath(layer, laid)
    return Size(
        number=laid.number,
        distance=up(max(far, default=0)),
        times=tuple(_time(layer, laid, group) for group in layer.groups),
        fast=up(max(fast, default=0)),
        resisted=up(max((own.resisted for own in sums), default=0)),
        plates=up(max((own.plates for own in sums), default=0)),
        under=up(max((own.under_metres for own in sums), default=0)),
        goes_under=goes_under,
        calm=calm,
        doses=tuple(sorted(doses_of(layer, sums, drills))),
    )


def _time(layer: Layer, laid: Laid, group: str) -> int | None:
    clock = laid.run.clocks[group]
    if clock.clock is None or clock.last_touch is None or clock.unfit or not clock.reps:
        return None
    takes = laid.run.takes(group)
    return up(TENTHS * takes.value) if takes else None


def _breath(layer: Layer, laid: Laid) -> tuple[int, int]:
    """Until somebody first goes under water, and since the last fast work, in tenths."""
    push_off = layer.analysis.catalogue.policy.limit("push_off_most")
    under, calm = NEVER, NEVER
    for group in layer.groups:
        swum, clock = laid.run.of(group), laid.run.clocks[group]
        if any(is_under(rep, push_off) for rep in swum.reps):
            before = breath_of(layer.analysis)
            before.since_s = 0.0
            before.swim(swum.events, swum.course, clock)
            under = min([under, *(own.since_s for own in before.found if own.carried)])
        if swum.shares.fast or any(rep.item.aim for rep in swum.reps):
            after = breath_of(layer.analysis)
            after.swim(swum.events, swum.course, clock)
            calm = min(calm, after.since_s)
    return (
        UNKNOWN if under == NEVER else int(TENTHS * under),
        UNKNOWN if calm > _CALM_S else int(TENTHS * calm),
    )


def doses_of(
    layer: Layer, sums: list[Tally], drills: Mapping[str, int]
) -> list[tuple[int, int, int]]:
    """By drill how much is done of what its dose lets the level do, in permille: ``Size.doses``."""
    found: dict[str, tuple[int, int]] = {}
    for own in (dose for one in sums for dose in one.doses.values()):
        plain, strict = found.get(own.drill.id, (0, 0))
        share = _permille(own, own.most(layer.analysis, layer.level))
        least = _permille(own, own.drill.dose.most)
        plain = UNKNOWN if plain == UNKNOWN or not own.is_plain else max(plain, share)
        found[own.drill.id] = plain, max(strict, least)
    return [(drills[id], *both) for id, both in found.items()]


def _permille(own: DoseSum, most: float) -> int:
    """How much of the most that may be done of a drill, in permille."""
    drill, dose = own.drill, own.drill.dose
    shares = [0.0]
    if dose.distance and not drill.is_wall_work:
        shares.append(own.distance / (most * dose.distance))
    if dose.time:
        shares.append(own.held_s / (most * dose.time))
    if not own.is_plain and (drill.is_under_water or drill.is_on_land or drill.is_wall_work):
        shares.append(own.goes / dose.most)
    return up(1000 * max(shares))
