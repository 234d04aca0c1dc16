"""Rules on the quick tests by which a coach tells the causes of a fault apart."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import isinf

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, warns
from almanac.model.fault import Cause, Fault
from almanac.model.vocabularies import ASSISTS, SUPPORTS
from almanac.source.reader import DataPath
from almanac.wording.time_and_distance import metres_asked, seconds_asked

_WITHOUT = re.compile(r"\b(?:without|bare|off|no|none|nothing)\b")
_NO_WORDS = re.compile(r"\W+")


@warns("same-test")
def same_test(analysis: Analysis) -> Iterator[Problem]:
    """No two causes of a fault are told apart by the same words: they are then not told apart."""
    for fault in analysis.catalogue.faults.values():
        first: dict[str, int] = {}
        for number, cause in enumerate(fault.causes):
            said = _NO_WORDS.sub(" ", cause.tell_apart.lower()).strip()
            if first.setdefault(said, number) != number:
                message = f"it is the test of cause {first[said] + 1} too"
                hint = "say what is seen with this cause and not with that one"
                yield Problem(fault, _path(number), message, hint)


@warns("test-too-long")
def long_test(analysis: Analysis) -> Iterator[Problem]:
    """A test of a cause is done on deck while the lane waits: the times that it names come to
    ``test_s_most`` at most and the distances to ``test_m_most``, and no part of it is left for
    another day.
    """
    policy = analysis.catalogue.policy
    most_s, most_m = policy.limit("test_s_most"), policy.limit("test_m_most")
    for fault, number, cause in _tests(analysis):
        seconds, metres = seconds_asked(cause.tell_apart), metres_asked(cause.tell_apart)
        if seconds > most_s:
            asked = (
                "part of it is for another day" if isinf(seconds) else f"it asks for {seconds:g} s"
            )
            message = f"{asked}, and a test takes {most_s:g} s at most"
        elif metres > most_m:
            message = f"it asks for {metres:g} m, and a test for {most_m:g} m at most"
        else:
            continue
        hint = "find what shows in a length or two, or at the wall"
        yield Problem(fault, _path(number), message, hint)


@warns("masked-test")
def masked_test(analysis: Analysis) -> Iterator[Problem]:
    """A test with gear that assists or supports says how it goes without: blades, boards and buoys
    hold up whoever wears them, whatever the cause.
    """
    for fault, number, cause in _tests(analysis):
        if _WITHOUT.search(cause.tell_apart.lower()):
            continue
        for index, id in enumerate(cause.gear):
            gear = analysis.catalogue.gear[id]
            if gear.effect in (ASSISTS, SUPPORTS):
                message = f"it {gear.effect} whoever uses it, whatever the cause"
                hint = "say what is seen without it too, or test without gear"
                yield Problem(fault, ("causes", number, "gear", index), message, hint)


def _tests(analysis: Analysis) -> Iterator[tuple[Fault, int, Cause]]:
    for fault in analysis.catalogue.faults.values():
        for number, cause in enumerate(fault.causes):
            yield fault, number, cause


def _path(number: int) -> DataPath:
    return ("causes", number, "tell_apart")
