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

_NEARLY = 0.05  # of a unit of distance, in which a share of a rep may be lost


@forbids("expect-differs")
def expect_differs(analysis: Analysis) -> Iterator[Problem]:
    """What an author writes under ``expect`` is what the set adds up to; a difference shows
    both.
    """
    for own in differences(analysis):
        yield _told(analysis, own)


class Mismatch(NamedTuple):
    """What is believed of a set, by the way to it below ``expect``, and what it adds up to for each
    lane group that it is said of, in the words of the clock and of numbers; for None where there
    are no groups. Without any where no number is known. ``written`` is the one figure that would
    do, as it stands in an entry; "" where none does.
    """

    swim_set: SwimSet
    path: tuple[str, ...]
    believed: str
    computed: Mapping[str | None, str]
    written: str


def differences(analysis: Analysis) -> Iterator[Mismatch]:
    """Every expectation that differs from what its set adds up to, once each."""
    for id, swim_set in analysis.computable.items():
        summary = analysis.summary(id)
        groups = dict.fromkeys((*analysis.meant(swim_set), *swim_set.expect.by_group))
        said: dict[tuple[str, ...], float] = {}
        swum: dict[tuple[str, ...], dict[str | None, float]] = {}
        for group in groups or (None,):
            for path, believed, value in _totals(swim_set.expect, summary, group):
                said[path] = believed
                swum.setdefault(path, {})[group] = value
        for path, believed in said.items():
            if not all(_is_as_believed(believed, value) for value in swum[path].values()):
                yield _difference(swim_set, path, believed, swum[path])
        yield from _clock_differences(swim_set, summary)


def _is_as_believed(believed: float, value: float) -> bool:
    return abs(believed - value) <= _NEARLY


def _difference(
    swim_set: SwimSet, path: tuple[str, ...], believed: float, swum: Mapping[str | None, float]
) -> Mismatch:
    """A total that is believed, beside what each lane group swims."""
    one = next(iter(swum.values()))
    is_one = all(_is_as_believed(one, value) for value in swum.values())
    is_one = is_one and ("by" in path or float(one).is_integer())
    written = f"{round(one, 1):.10g}" if is_one else ""
    computed = {group: show_number(value) for group, value in swum.items()}
    return Mismatch(swim_set, path, show_number(believed), computed, written)


def _totals(
    expect: Expectation, summary: SetSummary, group: str | None
) -> Iterator[tuple[tuple[str, ...], float, float]]:
    """What is believed of a lane group, and what it swims."""
    swum = summary.of(group)
    computed = {
        "distance": swum.distance.value,
        "reps": len(swum.reps),
        "lengths": float(swum.lengths),
    }
    own = expect.by_group.get(group or "", GroupExpectation())
    for name, value in computed.items():
        if getattr(own, name) is not None:
            yield ("by_group", group or "", name), getattr(own, name), value
        elif getattr(expect, name) is not None:
            yield (name,), getattr(expect, name), value
    for facet, word in dict.fromkeys((*_words(expect.by), *_words(own.by))):
        is_own = word in own.by.get(facet, {})
        distance = (own if is_own else expect).by[facet][word]
        before = ("by_group", group or "") if is_own else ()
        yield (*before, "by", facet, word), distance, float(swum.by[facet].get(word, 0))


def _words(by: Mapping[str, Mapping[str, float]]) -> Iterator[tuple[str, str]]:
    return ((facet, word) for facet, words in by.items() for word in words)


def _clock_differences(swim_set: SwimSet, summary: SetSummary) -> Iterator[Mismatch]:
    for group, believed in swim_set.expect.clock.items():
        clock = summary.clocks[group].clock
        if clock is None or abs(clock.value - believed) > 0.5:
            shown = show_time(clock.value) if clock else ""
            computed: dict[str | None, str] = {group: shown} if shown else {}
            yield Mismatch(swim_set, ("clock", group), show_time(believed), computed, shown)


def _told(analysis: Analysis, own: Mismatch) -> Problem:
    groups = analysis.catalogue.lane_groups
    steps = (step for step in own.path if step not in ("by", "by_group"))
    what = " ".join(groups[step].title if step in groups else step for step in steps)
    figures = own.computed
    computed = next(iter(figures.values()), "no number: a target is not known")
    hint = f"write {own.written}, or mend the items; where the items are right, almanac check --fix"
    hint = f"{hint} writes it" if own.written else "take it out, or time a test"
    if figures and not own.written:
        each = ((groups[group].title if group else "all", own) for group, own in figures.items())
        computed = ", ".join(f"{figure} for {title}" for title, figure in each)
        hint = "lane groups differ: take it out, and write what each swims under by_group"
        hint = hint if len({*figures.values()}) > 1 else "take it out: it takes whole numbers"
    message = f"'{what}' is believed to be {own.believed}, and the set adds up to {computed}"
    return Problem(own.swim_set, ("expect", *own.path), message, hint)
