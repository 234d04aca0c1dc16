"""One rule, one function, one stable code. This module is nothing but where rules stand, and how
they are run.
"""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.checks import (
    aims,
    block_days,
    blocks,
    breathing,
    changes,
    club,
    conditions,
    cords,
    coverage,
    dive_words,
    doses,
    duplicates,
    gear_worn,
    hazards,
    land_work,
    lanes,
    logs,
    parts,
    pool_places,
    practice_day,
    practice_lanes,
    practices,
    sets,
    targets,
    teaching,
    to_failure,
    under_water,
    unwritten,
    wording,
)
from almanac.checks.acceptances import weighed
from almanac.checks.rule import Rule
from almanac.findings import Finding

MODULES = (
    club,
    teaching,
    breathing,
    duplicates,
    wording,
    hazards,
    unwritten,
    coverage,
    sets,
    parts,
    changes,
    lanes,
    targets,
    aims,
    practices,
    practice_day,
    practice_lanes,
    pool_places,
    dive_words,
    cords,
    conditions,
    land_work,
    blocks,
    block_days,
    doses,
    gear_worn,
    under_water,
    to_failure,
    logs,
)

# Each rule of each module, in the order in which they stand there.
RULES: tuple[Rule, ...] = tuple(
    rule for module in MODULES for rule in vars(module).values() if isinstance(rule, Rule)
)


def check(analysis: Analysis) -> tuple[Finding, ...]:
    """Every finding of every rule, less what entries accept; and what is amiss with what they
    accept. Worked out once for an analysis.
    """
    return analysis.found_once(_check)


def _check(analysis: Analysis) -> tuple[Finding, ...]:
    breaches = [breach for rule in RULES for breach in rule.breaches(analysis)]
    return tuple(weighed(analysis, breaches, RULES))
