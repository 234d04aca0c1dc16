"""What the choices of each week cost at least, where the rules of the week itself are kept and only
the others are paid for.

The bound of ``planning.bound`` pays for every rule, so that of a week its load may be hit by
choices that no plan can mix. Here each week is searched, what is cheapest first: what the choices
so far cost, with what is paid, and with what a rule really costs once all of its slots have one. A
search that is broken off has still found what nothing costs less than.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from heapq import heappop, heappush

from almanac.arithmetic.planning.model import PlanProblem, PlanRule

TRIED = 4000
"""Choices that are looked at in a week, at most; as many on any machine."""

Costs = Sequence[Mapping[int, int]]
"""By slot and choice what it costs, with what is paid for the rules that count it."""


@dataclass(frozen=True)
class Payment:
    """A rule of a problem, by its place, and what is paid for one of its amount."""

    number: int
    rule: PlanRule
    paid: int

    def more(self, amount: int, point: int) -> int:
        """What it really costs above what is paid; -1 where a limit is broken."""
        over = self.rule.over_by(amount)
        if over and self.rule.is_limit:
            return -1
        return point * self.rule.points * over - self.paid * (amount - self.rule.most)


@dataclass(frozen=True)
class PaidWeek:
    """The slots of a week with what may stand in each, the cheapest first, and the rules that count
    nothing else. ``taught`` is all that may have been before; ``asks`` are the slots in which what
    may stand is not settled yet. A point is ``point`` parts.
    """

    problem: PlanProblem
    slots: tuple[int, ...]
    ways: tuple[tuple[tuple[int, int], ...], ...]
    rules: tuple[Payment, ...]
    taught: frozenset[str]
    asks: frozenset[int]
    point: int

    @cached_property
    def _ending(self) -> tuple[tuple[Payment, ...], ...]:
        """By slot the rules that have all of their slots with it."""
        found: list[list[Payment]] = [[] for _ in self.slots]
        for own in self.rules:
            found[max(map(self.slots.index, own.rule.amounts))].append(own)
        return tuple(map(tuple, found))

    @cached_property
    def _least_after(self) -> tuple[int, ...]:
        """By slot what those after it cost at least."""
        least = [0]
        for ways in self.ways[:0:-1]:
            least.append(least[-1] + ways[0][0])
        return tuple(reversed(least))

    def least(self) -> int:
        """Parts that no choices for the week cost less than."""
        back = sum(own.paid * own.rule.most for own in self.rules)
        first = self.ways[0][0][0] + self._least_after[0] - back
        # Of a node: what it costs at least, the slot, the way that it takes there, what stands in
        # those before, and what these cost.
        heap: list[tuple[int, int, int, tuple[int, ...], int]] = [(first, 0, 0, (), -back)]
        for _ in range(TRIED):
            if not heap:
                return first  # only of a week in which what stands fast breaks a limit
            least, at, way, before, cost = heappop(heap)
            if at == len(self.slots):
                return least
            own, place = self.ways[at][way]
            if way + 1 < len(self.ways[at]):
                more = self.ways[at][way + 1][0] - own
                heappush(heap, (least + more, at, way + 1, before, cost))
            after = (*before, place)
            beyond = self._beyond(at, after)
            if beyond < 0 or not self._may(at, after):
                continue
            cost += own + beyond
            heappush(heap, (cost + self._least_after[at], at + 1, 0, after, cost))
        return heap[0][0] if heap else first

    def _beyond(self, at: int, plan: tuple[int, ...]) -> int:
        """What the rules that end with a slot really cost above what is paid; -1 where one is a
        limit that is broken.
        """
        whole = 0
        for own in self._ending[at]:
            amounts = own.rule.amounts
            amount = sum(
                amounts[slot].get(place, 0)
                for slot, place in zip(self.slots, plan, strict=False)
                if slot in amounts
            )
            more = own.more(amount, self.point)
            if more < 0:
                return -1
            whole += more
        return whole

    def _may(self, at: int, plan: tuple[int, ...]) -> bool:
        """Whether what stands in a slot needs nothing that cannot have been before it."""
        *before, last = plan
        needs = self.problem.needed[last] - self.taught
        if not needs or self.slots[at] not in self.asks:
            return True
        return needs <= frozenset().union(*(self.problem.choices[own].teaches for own in before))


def least_by_weeks(
    problem: PlanProblem,
    teachable: Sequence[Sequence[int]],
    costs: Costs,
    paid: Sequence[int],
    kept: frozenset[int],
    point: int,
) -> int:
    """Parts of a point that no sound plan costs less than, by weeks. ``teachable`` is what may
    stand in each slot, ``paid`` what is paid for one of each rule's amount; ``kept`` are the rules
    that can be held to, by place.
    """
    weeks = [*_weeks(problem, teachable, costs, paid, kept, point)]
    inside = {own.number for week in weeks for own in week.rules}
    back = sum(
        own * problem.rules[number].most for number, own in enumerate(paid) if number not in inside
    )
    return sum(week.least() for week in weeks) - back


def _weeks(
    problem: PlanProblem,
    teachable: Sequence[Sequence[int]],
    costs: Costs,
    paid: Sequence[int],
    kept: frozenset[int],
    point: int,
) -> Iterator[PaidWeek]:
    rules: dict[int, list[Payment]] = {}
    for number in sorted(kept):
        rule = problem.rules[number]
        own = {problem.slots[slot].week for slot in rule.amounts}
        if len(own) == 1:
            rules.setdefault(own.pop(), []).append(Payment(number, rule, paid[number]))
    taught: frozenset[str] = frozenset()
    by_week: dict[int, list[int]] = {}
    for slot, day in enumerate(problem.slots):
        by_week.setdefault(day.week, []).append(slot)
    for week, slots in by_week.items():
        ways = [tuple(sorted((costs[slot][own], own) for own in teachable[slot])) for slot in slots]
        asks = frozenset(slot for slot in slots if len(teachable[slot]) > 1)
        own_rules = tuple(rules.get(week, ()))
        yield PaidWeek(problem, tuple(slots), tuple(ways), own_rules, taught, asks, point)
        teaches = (problem.choices[own].teaches for slot in slots for own in teachable[slot])
        taught = taught.union(*teaches)
