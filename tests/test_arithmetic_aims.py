"""Between which times a coach can ask to hold a rep: those of the tests at the hardest and the
easiest effort.

By hand: osprey-1 swims 100 crawl in a tested time; easy is a share of 0.72 of it and all out the
test itself; fins take 0.8 of the time.
"""

from __future__ import annotations

from typing import Any

import pytest
from arithmetic_world import clock, group, rep, swum

from almanac.arithmetic.aims import quickest_and_easiest
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber

OWN = group([swum("crawl-100", 72)])


def between(**more: Any) -> list[float | None]:
    pacer = clock(OWN).pacer
    (own,) = rep(distance=100, do="crawl", **more)
    found = quickest_and_easiest(pacer, own)
    return [one.seconds if isinstance(one, Target) else None for one in found]


@pytest.mark.parametrize("effort", ["easy", "strong", "all-out"])
def test_whatever_the_effort_of_the_rep(effort):
    assert between(effort=effort) == pytest.approx([72, 72 / 0.72])


def test_in_gear():
    assert between(effort="easy", gear=["fins"]) == pytest.approx([0.8 * 72, 0.8 * 72 / 0.72])


def test_without_a_test_there_is_no_number():
    pacer = clock(group([])).pacer
    (own,) = rep(distance=100, do="crawl", effort="easy")
    assert all(isinstance(one, NoNumber) for one in quickest_and_easiest(pacer, own))
