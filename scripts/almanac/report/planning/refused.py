"""What is wished of a block and no practice that the squad has, or that can be composed, gives."""

from __future__ import annotations

from almanac.arithmetic.composing.request import BadWish
from almanac.report.planning.problem import Planning


def refuse_unfit(planning: Planning) -> None:
    """Raises BadWish where nothing may stand in any slot, or nothing serves a goal."""
    _something_fits(planning)
    _all_served(planning)


def _something_fits(planning: Planning) -> None:
    if not any(place for may in planning.grid.may for place in may):
        longest = max(slot.minutes for slot in planning.slots)
        raise BadWish(
            f"nothing fits any slot, the longest of {longest} minutes, and nothing can be composed "
            f"for one; of the squad's practices: {planning.why_empty(0)}"
        )


def _all_served(planning: Planning) -> None:
    served = {goal for choice in planning.choices for goal in choice.goals}
    words = planning.analysis.catalogue.words("goals")
    for goal in planning.wishes.goals:
        if goal not in served:
            title = words[goal].title.lower()
            known = ", ".join(id for id in words if id in served)
            raise BadWish(
                f"nothing that {planning.squad} may do in these slots serves {title}; there is "
                f"something for {known or 'no goal'}"
            )
