"""The rule that a set adds up to what its author expects of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.summary import SetSummary
from almanac.checks.rule import Problem, forbids
from almanac.model.expectation import Expectation, GroupExpectation
from almanac.model.swim_set import SwimSet
from almanac.units import show_number, show_time


@forbids("expect-differs")
def expect_differs(analysis: Analysis) -> Iterator[Problem]:
    """What an author writes under ``expect`` is what the set adds up to; a difference shows
    both.
    """
    for own in differences(analysis):
        yield _told(analysis, own)


class Difference(NamedTuple):
    """What is believed of a set, by the way to it below ``expect``, and what it adds up to, as both
    are shown; "" where no number is known.
    """

    swim_set: SwimSet
    path: tuple[str, ...]
    believed: str
    computed: str

    @property
    def bare(self) -> str:
        """What it adds up to, as a number is written in an entry."""
        return self.computed.replace(",", "")


def differences(analysis: Analysis) -> Iterator[Difference]:
    """Every expectation that differs from what its set adds up to, once each."""
    for id, swim_set in analysis.computable.items():
        summary = analysis.summary(id)
        told = set[tuple[str, ...]]()
        groups = dict.fromkeys((*analysis.meant(swim_set), *swim_set.expect.by_group))
        for group in groups or (None,):
            for path, believed, computed in _totals_differ(swim_set.expect, summary, group):
                if path not in told:
                    told.add(path)
                    shown = show_number(believed), show_number(computed)
                    yield Difference(swim_set, path, *shown)
        yield from _clock_differences(swim_set, summary)


def _totals_differ(
    expect: Expectation, summary: SetSummary, group: str | None
) -> Iterator[tuple[tuple[str, ...], float, float]]:
    """What is believed of a lane group, and what it swims, where the two differ."""
    swum = summary.of(group)
    computed = {
        "distance": swum.distance.value,
        "reps": len(swum.reps),
        "lengths": float(swum.lengths),
    }
    own = expect.by_group.get(group or "", GroupExpectation())
    for name, value in computed.items():
        if getattr(own, name) is not None:
            if getattr(own, name) != value:
                yield ("by_group", group or "", name), getattr(own, name), value
        elif getattr(expect, name) not in (None, value):
            yield (name,), getattr(expect, name), value
    for facet, word in dict.fromkeys((*_words(expect.by), *_words(own.by))):
        is_own = word in own.by.get(facet, {})
        distance = (own if is_own else expect).by[facet][word]
        value = float(swum.by[facet].get(word, 0))
        if abs(distance - value) > 0.05:
            before = ("by_group", group or "") if is_own else ()
            yield (*before, "by", facet, word), distance, value


def _words(by: Mapping[str, Mapping[str, float]]) -> Iterator[tuple[str, str]]:
    return ((facet, word) for facet, words in by.items() for word in words)


def _clock_differences(swim_set: SwimSet, summary: SetSummary) -> Iterator[Difference]:
    for group, believed in swim_set.expect.clock.items():
        clock = summary.clocks[group].clock
        if clock is None or abs(clock.value - believed) > 0.5:
            computed = show_time(clock.value) if clock else ""
            yield Difference(swim_set, ("clock", group), show_time(believed), computed)


def _told(analysis: Analysis, own: Difference) -> Problem:
    groups = analysis.catalogue.lane_groups
    steps = (step for step in own.path if step not in ("by", "by_group"))
    what = " ".join(groups[step].title if step in groups else step for step in steps)
    computed = own.computed or "no number: a target is not known"
    message = f"'{what}' is believed to be {own.believed}, and the set adds up to {computed}"
    hint = f"write {own.bare}, or mend the items; where the items are right, almanac check --fix"
    mend = f"{hint} writes it" if own.bare else "take it out, or time a test"
    return Problem(own.swim_set, ("expect", *own.path), message, mend)
