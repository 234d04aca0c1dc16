"""What is not to come again too soon or too often in a block: main sets, practices, warm-ups."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.planning.costs import (
    AGAIN,
    AGAIN_DAYS,
    SAME_AGAIN,
    SAME_AGAIN_DAYS,
    SAME_WARM_UP,
    TOO_OFTEN,
    WARM_UPS_OF,
)
from almanac.arithmetic.planning.model import PlanRule
from almanac.arithmetic.planning.rules import Counted, Grid


def variety(grid: Grid, inside: Sequence[int]) -> Iterator[PlanRule]:
    """What is to change from session to session, in the slots of the block itself."""
    free = [slot for slot in inside if len(grid.may[slot]) > 1]
    own = {place for slot in free for place in grid.may[slot]} - {0}
    mains = sorted({main for place in own for main in grid.choices[place].mains})
    for first, slots in grid.windows(AGAIN_DAYS):
        for main in mains:
            amounts = grid.amounts(slots, _has_main(main))
            yield PlanRule("again", f"{main} {first}", amounts, 1, AGAIN)
    for first, slots in grid.windows(SAME_AGAIN_DAYS):
        for place in sorted(own):
            same = {slot: {place: 1} for slot in slots if place in grid.may[slot]}
            which = f"{grid.choices[place].id} {first}"
            yield PlanRule("same again", which, same, 1, SAME_AGAIN)
    most = 1 + -(-len(free) // max(1, len(own)))
    for place in sorted(own):
        amounts = {slot: {place: 1} for slot in free if place in grid.may[slot]}
        yield PlanRule("too often", grid.choices[place].id, amounts, most, TOO_OFTEN)
    opens = sorted({grid.choices[place].opens for place in own} - {""})
    for at in range(len(free) - WARM_UPS_OF + 1) if len(opens) > 1 else ():
        for one in opens:
            amounts = grid.amounts(free[at : at + WARM_UPS_OF], _opens(one))
            yield PlanRule("same warm-up", f"{one} {at}", amounts, WARM_UPS_OF // 2, SAME_WARM_UP)


def _has_main(main: str) -> Counted:
    return lambda choice: int(main in choice.mains)


def _opens(one: str) -> Counted:
    return lambda choice: int(choice.opens == one)
