"""What is wished of a taper, as rules with points: fewer metres than before it, by so much."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.planning.aims import Aims
from almanac.arithmetic.planning.choices import METRES, Choice
from almanac.arithmetic.planning.costs import CUT, CUT_MARGIN, NOT_LIGHTER
from almanac.arithmetic.planning.model import PlanRule
from almanac.arithmetic.planning.rules import minus, sum_of
from almanac.arithmetic.planning.wishes import TaperWish

_WEEKS_BEFORE = 2  # loading weeks that a taper is held against


def taper_rules(aims: Aims) -> Iterator[PlanRule]:
    """The cut that is wished of a taper, or that each of its practices is lighter."""
    taper = aims.wishes.taper
    before = [w for w in range(len(aims.wishes.weeks)) if aims.wishes.is_loading(w)]
    before = before[-_WEEKS_BEFORE:]
    if taper is None or not before:
        return
    inside = [n for n in aims.inside() if taper.first <= aims.grid.slots[n].on <= taper.last]
    earlier = aims.slots_of(before)
    if aims.limits.light_days:
        yield from _lighter(aims, inside, earlier)
    elif aims.limits.cut:
        yield from _cut(aims, taper, inside, earlier, len(before))


def _cut(
    aims: Aims, taper: TaperWish, inside: Sequence[int], earlier: Sequence[int], weeks: int
) -> Iterator[PlanRule]:
    """Metres of a week of the taper over those of a loading week, in thousandths of a usual
    one: 7 · weeks · taper − (1 − cut) · days · before.
    """
    assert aims.limits.cut
    least, most = aims.limits.cut
    unit = max(1, taper.days * weeks * aims.metres * aims.slots_a_week)
    inner = least + CUT_MARGIN, most - CUT_MARGIN
    for name, cut, sign in (("cut too little", inner[0], 1), ("cut too much", inner[1], -1)):

        def during(own: Choice, sign: int = sign) -> int:
            return sign * 7000 * weeks * own.sums.get(METRES, 0)

        def before(own: Choice, cut: int = cut, sign: int = sign) -> int:
            return -sign * (1000 - cut) * taper.days * own.sums.get(METRES, 0)

        amounts = {**aims.grid.amounts(inside, during), **aims.grid.amounts(earlier, before)}
        yield PlanRule(name, str(taper.first), amounts, 0, CUT, unit)


def _lighter(aims: Aims, inside: Sequence[int], earlier: Sequence[int]) -> Iterator[PlanRule]:
    """Each practice of the taper is shorter than the mean of those before it."""
    count = len(earlier)

    def during(own: Choice) -> int:
        return count * own.sums.get(METRES, 0)

    before = minus(aims.grid.amounts(earlier, sum_of(METRES)))
    unit = max(1, count * aims.mean(METRES) // 100)
    for slot in inside:
        amounts = {**aims.grid.amounts([slot], during), **before}
        on = str(aims.grid.slots[slot].on)
        yield PlanRule("not lighter", on, amounts, -1, NOT_LIGHTER, unit)
