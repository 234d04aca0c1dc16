"""What entries accept: warnings, and errors of safety where a level lets a role accept them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import is_computable
from almanac.checks.rule import Breach, Rule
from almanac.findings import Finding, Place, Severity, error, warning
from almanac.model.entry import Acceptance, Entry
from almanac.source import schemas
from almanac.source.suggest import nearest

_AGAIN = "mend what it accepted, or weigh it again"
Key = tuple[str, str]  # a file, and the code of a check


@dataclass(frozen=True)
class Accepted:
    """An acceptance of an entry, and what it accepts."""

    entry: Entry
    acceptance: Acceptance
    number: int
    rule: Rule | None
    breaches: tuple[Breach, ...]

    @property
    def path(self) -> tuple[str, int]:
        """Where it stands in its entry."""
        return ("accepts", self.number)


def acceptances(
    analysis: Analysis, breaches: Sequence[Breach], rules: Sequence[Rule]
) -> Iterator[Accepted]:
    """Every acceptance of every entry, with the breaches that it names."""
    by_key = defaultdict[Key, list[Breach]](list)
    for breach in breaches:
        by_key[breach.finding.place.file, breach.rule.code].append(breach)
    by_code = {rule.code: rule for rule in rules}
    for entry in analysis.catalogue.entries.values():
        for number, own in enumerate(entry.accepts):
            met = tuple(by_key.get((entry.file, own.check), ()))
            yield Accepted(entry, own, number, by_code.get(own.check), met)


def weighed(
    analysis: Analysis, breaches: Sequence[Breach], rules: Sequence[Rule]
) -> Iterator[Finding]:
    """The findings that no entry accepts, and what is amiss with the acceptances."""
    found = [*acceptances(analysis, breaches, rules)]
    accepted = set[Key]()
    amiss: list[Finding] = []
    for own in found:
        said = [*_amiss(analysis, own, rules)]
        amiss += said
        if not said:
            accepted.add((own.entry.file, own.acceptance.check))
    for breach in breaches:
        if (breach.finding.place.file, breach.rule.code) not in accepted:
            yield breach.finding
    yield from amiss


def _amiss(analysis: Analysis, own: Accepted, rules: Sequence[Rule]) -> Iterator[Finding]:
    place = analysis.catalogue.place(own.entry, own.path)
    code, until = own.acceptance.check, own.acceptance.until
    if own.rule is None:
        yield _unknown(code, place, rules)
    elif own.rule.severity is Severity.ERROR and not own.rule.is_refusal:
        message = f"{code} is an error, and only a warning or a refusal can be accepted"
        hint = "mend what is wrong, and remove the acceptance"
        yield error("acceptance-of-error", place, message, hint)
    elif until < analysis.today:
        say = error if own.rule.is_refusal else warning
        yield say("acceptance-ended", place, f"the acceptance of {code} ended on {until}", _AGAIN)
    elif not own.breaches:
        if is_computable(analysis, own.entry):
            message = f"nothing here breaks {code} any more"
            yield error("acceptance-unneeded", place, message, "remove the acceptance")
    elif own.rule.is_refusal:
        yield from _not_allowed(analysis, own, place)


def _unknown(code: str, place: Place, rules: Sequence[Rule]) -> Finding:
    near = nearest(
        code,
        (rule.code for rule in rules if rule.severity is Severity.WARNING or rule.is_refusal),
    )
    hint = (
        f"did you mean '{near}'?" if near else "write a check's code, as it stands in the finding"
    )
    return error("unknown-check", place, f"there is no check '{code}'", hint)


def _not_allowed(analysis: Analysis, own: Accepted, place: Place) -> Iterator[Finding]:
    catalogue, code = analysis.catalogue, own.acceptance.check
    most = catalogue.policy.limit("acceptance_most")
    levels = list(catalogue.words("levels"))
    found = {breach.level if breach.level in levels else levels[0] for breach in own.breaches}
    level = min(found, key=levels.index)
    title = catalogue.words("levels")[level].title
    words = catalogue.words("levels").items()
    strictest = next(level for level in schemas.level_defaults() if level)
    closed = [word for word, own in words if own.accepts_nothing or word == strictest]
    highest = max(map(levels.index, [levels[0], *closed]))
    is_closed = levels.index(level) <= highest  # a level put below these opens none of them
    roles = () if is_closed else catalogue.policy.of_level(level).accepted_by
    if not roles:
        message = f"{title} accepts no {code}: those who do it are of that level"
        yield error("acceptance-not-allowed", place, message, "mend the entry, and remove this")
    elif own.acceptance.by not in roles:
        who = " or ".join(roles)
        by = own.acceptance.by
        what = f"{by} cannot accept {code}" if by else f"it does not say who accepts {code}"
        message = f"{what}: for {title} {who} may"
        yield error("acceptance-not-allowed", place, message, f"write by: {roles[0]}, once they do")
    elif (days := (own.acceptance.until - analysis.today).days) > most:
        message = f"{code} is accepted for {days} days"
        hint = f"accept it for {most:.0f} days at most, and weigh it again then"
        yield error("acceptance-not-allowed", place, message, hint)
