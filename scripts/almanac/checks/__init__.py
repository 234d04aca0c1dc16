"""One rule, one function, one stable code. This module is nothing but where rules stand, and how
they are run.
"""

from __future__ import annotations

from collections.abc import Sequence
from types import ModuleType

from almanac.analysis.analysis import Analysis
from almanac.checks import (
    adapted,
    aims,
    benchmarks,
    block_days,
    block_wishes,
    blocks,
    breathing,
    changes,
    claims,
    close_backs,
    club,
    conditions,
    cords,
    coverage,
    dive_words,
    doses,
    drill_doses,
    duplicates,
    emergencies,
    expectations,
    fast_dose,
    fault_tests,
    gear_said,
    gear_worn,
    halls,
    hazards,
    hours,
    land_effort,
    land_or_water,
    land_work,
    lane_bookings,
    lanes,
    levels,
    light_days,
    logs,
    meet_blocks,
    meet_starts,
    meets,
    parts,
    plan_names,
    pool_places,
    practice_day,
    practice_lanes,
    practices,
    quizzes,
    season_days,
    seasons,
    sessions,
    sets,
    site_look,
    slots_of_blocks,
    stunts,
    targets,
    teaching,
    terms,
    timed_tests,
    timetables,
    to_failure,
    under_water,
    under_water_told,
    unwritten,
    variants,
    vocabularies,
    wording,
)
from almanac.checks.acceptances import weighed
from almanac.checks.rule import Breach, Rule
from almanac.findings import Finding
from almanac.model.catalogue import Key
from almanac.progress import Progress, unseen
from almanac.second_process import begun, in_turns, is_worth
from almanac.source.harmless_texts import Told

Found = list[tuple[Finding, str]]

MODULES = (
    vocabularies,
    benchmarks,
    club,
    emergencies,
    teaching,
    terms,
    quizzes,
    fault_tests,
    breathing,
    duplicates,
    wording,
    halls,
    hazards,
    claims,
    adapted,
    unwritten,
    coverage,
    sets,
    expectations,
    parts,
    changes,
    variants,
    lanes,
    targets,
    aims,
    levels,
    practices,
    practice_day,
    practice_lanes,
    close_backs,
    pool_places,
    dive_words,
    cords,
    conditions,
    land_work,
    land_effort,
    land_or_water,
    blocks,
    block_days,
    block_wishes,
    sessions,
    hours,
    light_days,
    lane_bookings,
    doses,
    drill_doses,
    fast_dose,
    gear_worn,
    gear_said,
    under_water,
    under_water_told,
    to_failure,
    stunts,
    logs,
    meets,
    meet_starts,
    meet_blocks,
    site_look,
    timed_tests,
    timetables,
    slots_of_blocks,
    seasons,
    season_days,
    plan_names,
)


def _rules_of(*modules: ModuleType) -> tuple[Rule, ...]:
    """Each rule of each module, in the order in which they stand there."""
    return tuple(
        rule for module in modules for rule in vars(module).values() if isinstance(rule, Rule)
    )


RULES = _rules_of(*MODULES)
# What is only read, and asks for no figure.
_READING = _rules_of(duplicates, wording, unwritten, terms, stunts, gear_said)
_OF_TEXTS = _rules_of(breathing)
_FIGURING = tuple(rule for rule in RULES if rule not in (*_READING, *_OF_TEXTS))


def check(analysis: Analysis, progress: Progress = unseen) -> tuple[Finding, ...]:
    """Every finding of every rule, less what entries accept; and what is amiss with what they
    accept. Worked out once for an analysis.
    """
    return analysis.once(check, lambda: _check(analysis, progress))


def _check(analysis: Analysis, progress: Progress) -> tuple[Finding, ...]:
    """What is only read asks for no figure: a second process begins with it, and this one comes to
    help when it has judged the figures.
    """
    readings = analysis.readings
    turns = in_turns(readings.unread)

    def share() -> tuple[dict[str, Found], dict[Key, Told]]:
        return _found(analysis, _READING), {key: readings.read(key) for key in turns}

    beside = begun(share) if is_worth(len(analysis.catalogue.entries)) else share
    found = _found(analysis, _FIGURING, progress)
    progress("reading the texts")
    readings.take({key: readings.read(key) for key in turns})
    of_theirs, read = beside()
    readings.take(read)
    found |= of_theirs | _found(analysis, _OF_TEXTS)
    breaches = [
        Breach(finding, rule, level) for rule in RULES for finding, level in found[rule.code]
    ]
    return tuple(weighed(analysis, breaches, RULES))


def _found(
    analysis: Analysis, rules: Sequence[Rule], progress: Progress = unseen
) -> dict[str, Found]:
    """By the code of each rule its findings, with the levels that they stand on."""
    found = {}
    for number, rule in enumerate(rules, 1):
        progress("checking by rules", number, len(rules))
        breaches = rule.breaches(analysis)
        found[rule.code] = [(breach.finding, breach.level) for breach in breaches]
    return found
