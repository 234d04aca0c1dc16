"""Clock, work and load of random sets against a plain reference worked from entries as they are
written.
"""

from __future__ import annotations

import math
from functools import cache

import numpy
import pytest
from arithmetic_strategies import TIMED, distance, items, laid_out, worn
from arithmetic_world import DRILLS, EFFORTS, GEAR, OSPREY, REST, SCALE, best, clock, group
from hypothesis import given

from almanac.arithmetic.expand import expand
from almanac.arithmetic.timeline import timeline
from almanac.model.structure import structure_items


@cache
def plain_best(metres: int, activity: str) -> float:
    return best(metres, activity)


def up_to_five(seconds: float) -> float:
    return math.ceil(round(seconds / 5, 3)) * 5


def plain_target(event, part) -> float:
    """One part's target, worked from the entry as it is written."""
    if "time" in part:
        return part["time"]
    whole = (
        plain_best(distance(event), DRILLS[part["do"]].pace.like[:4])
        * part["distance"]
        / distance(event)
    )
    worn_factors = [GEAR[id][2] for id in worn(event.item, part)]
    whole *= math.prod(worn_factors) * DRILLS[part["do"]].pace.factor
    if isinstance(part["effort"], str):
        return whole / EFFORTS[part["effort"]][2]
    [(form, words)] = part["effort"].items()
    times = [whole / EFFORTS[word][2] for word in words]
    if form == "rotate":
        return times[(event.number - 1) % len(times)]
    if form == "descend":
        return times[0] + (times[1] - times[0]) * (event.number - 1) / max(
            1, event.item["reps"] - 1
        )
    slow, fast = times
    return slow if slow == fast else slow * fast * math.log(slow / fast) / (slow - fast)


def plain_need(event, target: float) -> float:
    """Target and wanted rest up to a five, the rest between the words' middles by numpy; at least
    what the five swimmers of the fullest lane (14 in 3) need to leave, 10 s apart on the back, 5 s
    else.
    """
    weights = [part.get("distance", 1) for part, _, _ in event.pieces]
    mean = sum(w * (a + b) / 2 for w, (_, a, b) in zip(weights, event.pieces, strict=True)) / sum(
        weights
    )
    fifties = distance(event) / 50 or target / 60
    asked = [
        wanted * target if rule == "share_of_work" else min(30, wanted * fifties)
        for rule, _, wanted in REST.values()
    ]
    middles = [(low + high) / 2 for low, high, _ in EFFORTS.values()]
    on_back = any(DRILLS[part["do"]].position == "supine" for part, _, _ in event.pieces)
    leave = 5 * (10 if on_back else 5) if distance(event) else 0
    return up_to_five(max(target + numpy.interp(float(mean), middles, asked), leave))


def is_suggested(event) -> bool:
    sendoff = event.item.get("sendoff")
    return isinstance(sendoff, dict) and "osprey-1" not in sendoff


def plain_clock(event, target: float, needs: list[float]) -> float:
    if is_suggested(event):  # the item's largest, or its own where they lie far apart
        far = max(needs) - min(needs) >= 30
        return plain_need(event, target) if far else max(needs)
    sendoff = event.item.get("sendoff")
    if sendoff:
        return sendoff["osprey-1"] if isinstance(sendoff, dict) else sendoff
    return up_to_five(target + event.item["rest"]) if "rest" in event.item else target


def gear_changed(before, event) -> set[str]:
    """Gear that goes on or off before a rep: between items from the last part to the first one,
    within an item from the whole rep.
    """
    if before is None:
        return set()
    ends, begins = ([worn(own.item, part) for part, _, _ in own.pieces] for own in (before, event))
    if before.path != event.path:
        ends, begins = ends[-1:], begins[:1]
    return set().union(*ends) ^ set().union(*begins)


@given(items(TIMED))
def test_clock_work_and_load_add_up_to_the_plain_ones(written):
    found = clock(group(OSPREY)).run(expand(structure_items(written), DRILLS, SCALE))
    total, work, load, pause, before, unfit = 0.0, 0.0, 0.0, 0.0, None, False
    needs: dict[int, list[float]] = {}
    for event in laid_out(written):
        if event.pieces is not None:
            target = sum(plain_target(event, part) for part, _, _ in event.pieces)
            needs.setdefault(id(event.item), []).append(plain_need(event, target))
    for event in laid_out(written):
        if event.pieces is None:
            total, pause = total + event.seconds, pause + event.seconds
            continue
        targets = [plain_target(event, part) for part, _, _ in event.pieces]
        total += plain_clock(event, sum(targets), needs[id(event.item)]) + max(
            0, max((GEAR[id][1] for id in gear_changed(before, event)), default=0) - pause
        )
        sendoff = event.item.get("sendoff") and not is_suggested(event)
        unfit |= bool(sendoff) and plain_clock(event, 0, []) < sum(targets) - 1e-9
        work += sum(targets)
        load += sum(
            float(a + b) / 2 * t / 60 for t, (_, a, b) in zip(targets, event.pieces, strict=True)
        )
        pause, before = 0.0, event
    assert found.clock.value == pytest.approx(total, rel=1e-9, abs=1e-9)
    if unfit:
        assert found.unfit and found.work is None
        assert (found.rest, found.density, found.rated_work) == (None,) * 3
    else:
        assert (found.work.value, found.rated_work.value) == pytest.approx(
            (work, load), rel=1e-9, abs=1e-9
        )
        assert found.rest.value >= -1e-6 and not found.unfit


@given(items(TIMED))
def test_stretches_of_the_strip_follow_each_other_and_add_up_to_the_work(written):
    of = clock(group(OSPREY))
    laid = expand(structure_items(written), DRILLS, SCALE)
    found = of.run(laid)
    moments = timeline(laid, found, SCALE)
    if found.unfit:
        assert moments is None
        return
    assert sum(moment.length for moment in moments) == pytest.approx(found.work.value)
    assert all(moment.length > 0 and moment.effort in EFFORTS for moment in moments)
    starts = [moment.start for moment in moments]
    ends = [moment.start + moment.length for moment in moments]
    assert all(
        end <= start + 1e-6
        for end, start in zip(ends, [*starts[1:], found.clock.value], strict=bool(moments))
    )


@pytest.mark.parametrize(
    "written", [[{"reps": 2, "distance": 50, "do": "board-kick", "effort": "easy", "sendoff": 60}]]
)
def test_no_strip_without_targets(written):
    of = clock(group(OSPREY))
    laid = expand(structure_items(written), DRILLS, SCALE)
    assert timeline(laid, of.run(laid), SCALE) is None
