"""One rule, one function, one stable code. This module is nothing but where rules stand, and how
they are run.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import is_computable
from almanac.checks import (
    block_days,
    blocks,
    breathing,
    changes,
    club,
    coverage,
    duplicates,
    lanes,
    logs,
    parts,
    practice_day,
    practice_lanes,
    practices,
    sets,
    targets,
    teaching,
    wording,
)
from almanac.checks.rule import Rule
from almanac.findings import Finding, Severity, error, warning
from almanac.model.entry import Acceptance, Entry
from almanac.source.suggest import nearest

MODULES = (
    club,
    teaching,
    breathing,
    duplicates,
    wording,
    coverage,
    sets,
    parts,
    changes,
    lanes,
    targets,
    practices,
    practice_day,
    practice_lanes,
    blocks,
    block_days,
    logs,
)

# Each rule of each module, in the order in which they stand there.
RULES: tuple[Rule, ...] = tuple(
    rule for module in MODULES for rule in vars(module).values() if isinstance(rule, Rule)
)


def check(analysis: Analysis) -> tuple[Finding, ...]:
    """Every finding of every rule, less the warnings that entries accept; and what is amiss with
    those. Worked out once for an analysis.
    """
    return analysis.found_once(_check)


def _check(analysis: Analysis) -> tuple[Finding, ...]:
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
    elif not met and is_computable(analysis, entry):
        message = f"nothing here breaks {acceptance.check} any more"
        yield error("acceptance-unneeded", place, message, "remove the acceptance")
