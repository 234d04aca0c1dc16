"""One rule, one function, one stable code. This module is nothing but the list of rules, and how
they are run.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from almanac.analysis.analysis import Analysis
from almanac.checks import (
    blocks,
    breathing,
    club,
    coverage,
    lanes,
    practices,
    sets,
    teaching,
    wording,
)
from almanac.checks import duplicates as sameness
from almanac.checks.rule import Rule
from almanac.findings import Finding, Severity, error, warning
from almanac.model.entry import Acceptance, Entry
from almanac.source.suggest import nearest

RULES: tuple[Rule, ...] = (
    club.word_missing,
    club.effort_scale,
    club.rest_for_each_effort,
    club.tests_disagree,
    club.benchmark_mid_pool,
    club.depth_range,
    club.block_starts_monday,
    club.review_order,
    club.review_overdue,
    teaching.circle,
    teaching.easier_and_harder,
    teaching.needs_higher_level,
    teaching.effort_range,
    teaching.dose_range,
    teaching.one_right_answer,
    teaching.stage_before_need,
    teaching.mends_nothing_back,
    breathing.breath_holding,
    sameness.near_duplicate,
    wording.empty_word,
    wording.passive_step,
    wording.missing_unit,
    coverage.coverage_hole,
    coverage.gap_filled,
    sets.too_many_reps,
    sets.descend_one_rep,
    sets.effort_falls,
    sets.rep_ends_mid_pool,
    sets.change_mid_pool,
    sets.expect_differs,
    lanes.sendoff_too_tight,
    lanes.lane_crowded,
    lanes.gap_over_sendoff,
    practices.practice_overruns,
    practices.lanes_short,
    practices.squad_empty,
    practices.part_mid_pool,
    practices.gear_short,
    practices.no_warm_up,
    practices.no_easy_after_all_out,
    practices.resisted_dose,
    blocks.other_squad,
    blocks.hard_days_in_a_row,
    blocks.days_off,
    blocks.supine_share,
    blocks.balance_missed,
    blocks.taper_cut,
    blocks.taught_before_need,
    blocks.goal_unserved,
    blocks.benchmark_due,
)


@lru_cache(maxsize=4)  # a build shows on its pages what the check before it has found
def check(analysis: Analysis) -> tuple[Finding, ...]:
    """Every finding of every rule, less the warnings that entries accept; and what is amiss with
    those.
    """
    findings = [finding for rule in RULES for finding in rule.findings(analysis)]
    return tuple(_weighed(analysis, findings))


def _weighed(analysis: Analysis, findings: Sequence[Finding]) -> Iterator[Finding]:
    accepted = {
        (entry.file, acceptance.check): acceptance
        for entry in analysis.catalogue.entries.values()
        for acceptance in entry.accepts
        if acceptance.until >= analysis.today
    }
    met = set()
    for finding in findings:
        key = (finding.place.file, finding.code)
        if key in accepted and not finding.is_error:
            met.add(key)
        else:
            yield finding
    for entry in analysis.catalogue.entries.values():
        for number, acceptance in enumerate(entry.accepts):
            yield from _acceptance(
                analysis, entry, number, acceptance, (entry.file, acceptance.check) in met
            )


def _acceptance(
    analysis: Analysis, entry: Entry, number: int, acceptance: Acceptance, met: bool
) -> Iterator[Finding]:
    place = analysis.catalogue.place(entry, ("accepts", number))
    rule = next((rule for rule in RULES if rule.code == acceptance.check), None)
    if rule is None:
        near = nearest(
            acceptance.check, (rule.code for rule in RULES if rule.severity is Severity.WARNING)
        )
        hint = (
            f"did you mean '{near}'?"
            if near
            else "write a check's code, as it stands in the warning"
        )
        yield error("unknown-check", place, f"there is no check '{acceptance.check}'", hint)
    elif rule.severity is Severity.ERROR:
        message = f"{acceptance.check} is an error, and only a warning can be accepted"
        yield error(
            "acceptance-of-error", place, message, "mend what is wrong, and remove the acceptance"
        )
    elif acceptance.until < analysis.today:
        message = f"the acceptance of {acceptance.check} ended on {acceptance.until}"
        yield warning(
            "acceptance-ended", place, message, "mend what it accepted, or weigh it again"
        )
    elif not met and analysis.is_computable(entry):
        message = f"nothing here breaks {acceptance.check} any more"
        yield error("acceptance-unneeded", place, message, "remove the acceptance")
