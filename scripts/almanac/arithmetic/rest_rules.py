"""The rest that an effort asks after a rep."""

from __future__ import annotations

from almanac.arithmetic.working import Known, Product, Working
from almanac.model.policy import RestRule


def rest_working(rule: RestRule, metres: float, target: Working) -> Working:
    """Rest in seconds that a rule asks after a rep of ``metres`` metres."""
    if rule.seconds_per_50 is not None:
        return Product((Known(rule.seconds_per_50, "rest for each 50 m", "s"), Known(metres / 50)))
    return Product((Known(rule.share_of_work or 0.0, "share of the work"), target))
