"""Where a lane group is after reps or rounds are left out: at the end of the pool where what
follows begins, or at the other.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from almanac.arithmetic.events import Rep
from almanac.model.reps import in_all
from almanac.units import LAND, Course

_STEPS = (1, 2, 4)


def step_home(rep: Rep, course: Course) -> int:
    """How many reps are left out together, so that whatever follows begins at the end where it is
    planned: one where a rep comes back to its own end, two where it ends at the other, four where
    it ends halfway to it; 0 where no such number does.

    On land, held in place and where one gets back to the start each time, one.
    """
    if course == LAND or rep.item.manner.ready_s:
        return 1
    lengths = Fraction(rep.distance) * rep.item.manner.swimmers / course.length
    return next((step for step in _STEPS if lengths * step % 2 == 0), 0)


def comes_home(reps: Iterable[Rep], course: Course) -> bool:
    """Whether reps, one after the other, end at the end where the first of them began."""
    swum = [rep for rep in reps if not rep.item.manner.ready_s]
    return ends_home(in_all(rep.distance * rep.item.manner.swimmers for rep in swum), course)


def ends_home(distance: float | Fraction, course: Course) -> bool:
    """Whether so far, in the course's unit, ends where it began; on land, always."""
    return course == LAND or Fraction(distance) / course.length % 2 == 0
