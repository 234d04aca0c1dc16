"""A plan without a solver: slot by slot the cheapest, then exchanges in a fixed number of steps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from almanac.arithmetic.planning.model import Plan, PlanProblem, units_over

STEPS = 60_000
"""Exchanges that are tried after the greedy plan; as many on any machine."""
_EVERY = 4  # of so many exchanges one swaps two slots
_HIGHEST = 240  # so many points dearer may a plan be at first, and none at the end
_FACTOR, _ADDED, _ALL, _HALF = 6364136223846793005, 1442695040888963407, 2**64, 2**32


def chances(seed: int) -> Iterator[int]:
    """Whole numbers by chance, the same on any machine: a linear congruential sequence modulo 2^64
    with the constants of MMIX, its upper half. Source: Knuth, The Art of Computer Programming 2,
    3.3.4, table 1, line 26; from memory.
    """
    state = seed
    while True:
        state = (state * _FACTOR + _ADDED) % _ALL
        yield state // _HALF


@dataclass
class Standing:
    """A plan that changes slot by slot, with the sums of its rules and its cost."""

    problem: PlanProblem
    plan: list[int]
    sums: list[int] = field(default_factory=list)
    cost: int = 0

    def __post_init__(self) -> None:
        plan = tuple(self.plan)
        self.sums = [rule.sum_of(plan) for rule in self.problem.rules]
        self.cost = self.problem.cost(plan)

    def changes(self, slots: tuple[int, ...], places: tuple[int, ...]) -> dict[int, int]:
        """By rule how much its sum changes where these slots hold these choices."""
        found: dict[int, int] = {}
        for slot, place in zip(slots, places, strict=True):
            at = self.problem.rules_at[slot]
            for rule, amount in at.get(self.plan[slot], ()):
                found[rule] = found.get(rule, 0) - amount
            for rule, amount in at.get(place, ()):
                found[rule] = found.get(rule, 0) + amount
        return found

    def dearer(self, slots: tuple[int, ...], places: tuple[int, ...]) -> int | None:
        """Points that a change costs; None where it passes a limit."""
        rules, found = self.problem.rules, 0
        for rule, change in self.changes(slots, places).items():
            own, before = rules[rule], self.sums[rule]
            after = units_over(before + change, own.most, own.unit)
            if not own.points and after and change > 0:
                return None
            found += own.points * (after - units_over(before, own.most, own.unit))
        for slot, place in zip(slots, places, strict=True):
            costs = self.problem.own[slot]
            found += costs.get(place, 0) - costs.get(self.plan[slot], 0)
        return found

    def set(self, slots: tuple[int, ...], places: tuple[int, ...], dearer: int) -> None:
        """Make a change that costs so much."""
        for rule, change in self.changes(slots, places).items():
            self.sums[rule] += change
        for slot, place in zip(slots, places, strict=True):
            self.plan[slot] = place
        self.cost += dearer

    def is_taught(self, slots: tuple[int, ...], places: tuple[int, ...]) -> bool:
        """Whether everything still comes after what it needs, were these slots to hold these."""
        plan = list(self.plan)
        for slot, place in zip(slots, places, strict=True):
            plan[slot] = place
        return self.problem.untaught(plan) < 0


def greedy(problem: PlanProblem) -> Plan:
    """Slot by slot what costs least beside what stands already; of what costs the same, what comes
    first in the list. A slot in which nothing may stand stays empty.
    """
    empty = [may[0] for may in problem.may]
    standing, taught = Standing(problem, empty), set[str]()
    for slot, may in enumerate(problem.may):
        best: tuple[int, int] | None = None
        for place in may:
            if problem.needed[place] <= taught:
                dearer = standing.dearer((slot,), (place,))
                if dearer is not None and (best is None or dearer < best[0]):
                    best = dearer, place
        if best:
            standing.set((slot,), (best[1],), best[0])
        taught |= problem.choices[standing.plan[slot]].teaches
    return tuple(standing.plan)


@dataclass
class _Exchanges:
    """Exchanges of a standing plan: another practice for a slot, or two slots that swap theirs."""

    standing: Standing
    chance: Iterator[int]
    free: tuple[int, ...]

    def drawn(self) -> tuple[tuple[int, ...], tuple[int, ...]]:
        problem, plan = self.standing.problem, self.standing.plan
        slot = self.free[next(self.chance) % len(self.free)]
        if next(self.chance) % _EVERY == 0:
            other = self.free[next(self.chance) % len(self.free)]
            if plan[other] in problem.may[slot] and plan[slot] in problem.may[other]:
                return (slot, other), (plan[other], plan[slot])
        may = problem.may[slot]
        return (slot,), (may[next(self.chance) % len(may)],)


def improved(problem: PlanProblem, plan: Plan, steps: int = STEPS, seed: int = 1) -> Plan:
    """A plan that is no dearer, after so many exchanges drawn by a seed. A dearer one is taken for
    the while where it costs less more than a threshold that falls to nothing (threshold accepting:
    Dueck and Scheuer 1990, J Comput Phys 90:161-75; from memory).
    """
    free = tuple(slot for slot, may in enumerate(problem.may) if len(may) > 1)
    if not free:
        return plan
    standing = Standing(problem, list(plan))
    exchanges = _Exchanges(standing, chances(seed), free)
    best, cost = plan, standing.cost
    for step in range(steps):
        slots, places = exchanges.drawn()
        if len(slots) == 2 and slots[0] == slots[1]:
            continue
        threshold = _HIGHEST * (steps - step) ** 2 // steps**2
        dearer = standing.dearer(slots, places)
        if dearer is None or dearer > threshold or not standing.is_taught(slots, places):
            continue
        standing.set(slots, places, dearer)
        if standing.cost < cost:
            best, cost = tuple(standing.plan), standing.cost
    return best
