"""What no text may ask for, a group of meaning a module."""

from __future__ import annotations

from almanac.wording.dangers.bounds import BOUNDS
from almanac.wording.dangers.by_weight import BY_WEIGHT, FURTHER_BY_WEIGHT
from almanac.wording.dangers.counting_down import COUNTING_DOWN
from almanac.wording.dangers.danger import Danger, Saying
from almanac.wording.dangers.enduring import ENDURING
from almanac.wording.dangers.further import FURTHER
from almanac.wording.dangers.over_breathing import OVER_BREATHING
from almanac.wording.dangers.puffing import PUFFING
from almanac.wording.dangers.pushing_through import PUSHING_THROUGH
from almanac.wording.dangers.rationing import RATIONING
from almanac.wording.dangers.remaining import REMAINING
from almanac.wording.dangers.shutting import SHUTTING
from almanac.wording.dangers.staying_under import STAYING_UNDER
from almanac.wording.dangers.withholding import WITHHOLDING

DANGERS = (
    WITHHOLDING,
    STAYING_UNDER,
    COUNTING_DOWN,
    OVER_BREATHING,
    PUSHING_THROUGH,
    ENDURING,
    PUFFING,
    RATIONING,
    REMAINING,
    SHUTTING,
    BOUNDS,
    FURTHER,
)

ARE_FURTHER = frozenset({FURTHER.name, FURTHER_BY_WEIGHT.name})

__all__ = ["ARE_FURTHER", "BY_WEIGHT", "DANGERS", "FURTHER_BY_WEIGHT", "Danger", "Saying"]
