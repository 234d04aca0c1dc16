"""What no plan of a block costs less than, without a solver: a relaxation.

Instead of keeping to rules, a plan pays for each: so much for what it has of it, and as much back
for the most that it may be, never more than the points of a unit (Lagrangian relaxation: Fisher
1981, Manage Sci 27:1-18; from memory). Whatever is paid, no sound plan pays more than it costs, and
with the rules gone every slot has a cheapest choice of its own. In the end each week is searched
with its own rules (``planning.weeks``). What is to be paid is sought by
subgradients, each leaning on those before (Camerini, Fratta and Maffioli 1975, Math Program Study
3:26-34; from memory). Of the order of teaching it is kept that nothing stands where no earlier slot
can have taught what it needs; the rest is left out, which only lowers the bound.

Whole numbers throughout, so that the bound holds to the point, and is the same on any machine.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from almanac.arithmetic.planning.model import Plan, PlanProblem
from almanac.arithmetic.planning.weeks import least_by_weeks

ROUNDS = 800
"""Rounds in which it is sought what to pay; as many on any machine."""
_POINT = 10**12  # parts of a point that are reckoned in
_UNIT = 10**6  # parts of a rule's unit
_PATIENCE = 30  # rounds without a better bound, then steps are half as long
_OLD, _ALL = 9, 10  # so many of ten parts of a step are the one before
_LIMIT = 1000  # points a unit that are paid for a limit at most


def least_cost(problem: PlanProblem, plan: Plan, rounds: int = ROUNDS) -> int:
    """Points that no sound plan costs less than; ``plan`` is one that is known."""
    cost, paid = problem.cost(plan), _Paid(replace(problem, may=_teachable(problem)), plan)
    best, kept, stale, halves = paid.bound(), [*paid.each], 0, 0
    for _ in range(rounds):
        short = _POINT * cost - paid.bound()
        if short <= 0 or not paid.step(short, halves):
            break
        found = paid.bound()
        if found > best:
            best, kept, stale = found, [*paid.each], 0
        elif stale < _PATIENCE:
            stale += 1
        else:
            stale, halves = 0, halves + 1
            paid.back_to(kept)
    paid.back_to(kept)
    best = max(best, paid.unpaid, paid.by_weeks())
    return min(cost, -(-best // _POINT))


def _teachable(problem: PlanProblem) -> tuple[tuple[int, ...], ...]:
    """By slot what may stand there and needs nothing that no earlier slot can teach; all of it
    where that is nothing, since what stands fast was not asked.
    """
    found, taught = list[tuple[int, ...]](), set[str]()
    for may in problem.may:
        own = tuple(place for place in may if problem.needed[place] <= taught) or may
        found.append(own)
        taught.update(*(problem.choices[place].teaches for place in own))
    return tuple(found)


@dataclass
class _Paid:
    """What is paid for one of each rule's amount, and what each choice costs so in its slot, in
    parts of a point; and how each was changed last, in parts of its unit.
    """

    problem: PlanProblem
    plan: Plan
    each: list[int] = field(default_factory=list)
    costs: list[dict[int, int]] = field(default_factory=list)
    last: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        problem = self.problem
        self.each = [0] * len(problem.rules)
        self.last = [0] * len(problem.rules)
        pairs = zip(problem.own, problem.may, strict=True)
        self.costs = [{place: _POINT * own.get(place, 0) for place in may} for own, may in pairs]
        over = (not rule.is_limit and rule.over(self.plan) for rule in problem.rules)
        self.back_to([self._most[n] if is_over else 0 for n, is_over in enumerate(over)])

    @cached_property
    def _most(self) -> list[int]:
        """The most that is paid for one of each rule's amount; nothing for a limit that the plan is
        beyond, since what stands fast was over it.
        """
        return [
            0 if rule.is_limit and rule.over(self.plan)
            else _POINT * (rule.points or _LIMIT) // rule.unit
            for rule in self.problem.rules
        ]  # fmt: skip

    @cached_property
    def _amounts(self) -> list[list[tuple[int, Mapping[int, int]]]]:
        """By rule and slot the amounts of choices that may stand there."""
        may = [frozenset(own) for own in self.problem.may]
        return [
            [
                (slot, {place: own[place] for place in own if place in may[slot]})
                for slot, own in rule.amounts.items()
            ]
            for rule in self.problem.rules
        ]

    @property
    def unpaid(self) -> int:
        """What the choices cost that are the cheapest where nothing is paid."""
        pairs = zip(self.problem.own, self.problem.may, strict=True)
        return _POINT * sum(min(own.get(place, 0) for place in may) for own, may in pairs)

    def _pay(self, number: int, amount: int) -> None:
        more = amount - self.each[number]
        self.each[number] = amount
        for slot, amounts in self._amounts[number]:
            own = self.costs[slot]
            for place, has in amounts.items():
                own[place] += more * has

    def back_to(self, each: list[int]) -> None:
        """Pay what was paid before."""
        for number, amount in enumerate(each):
            if amount != self.each[number]:
                self._pay(number, amount)
        self.last = [0] * len(each)

    def bound(self) -> int:
        """What the cheapest choices cost, without what is paid back."""
        back = zip(self.each, self.problem.rules, strict=True)
        return sum(map(min, map(dict.values, self.costs))) - sum(p * r.most for p, r in back if p)

    def by_weeks(self) -> int:
        """What the cheapest choices cost where each week keeps to its own rules."""
        problem, plan = self.problem, self.plan
        kept = frozenset(
            number
            for number, rule in enumerate(problem.rules)
            if not (rule.is_limit and rule.over(plan))
        )
        return least_by_weeks(problem, problem.may, self.costs, self.each, kept, _POINT)

    def step(self, short: int, halves: int) -> bool:
        """Pay more for rules that the cheapest choices are over, less for others, by how far the
        bound falls ``short``; whether there is any.
        """
        over, rules = self._over(), self.problem.rules
        for number, rule in enumerate(rules):
            now = over[number] * _UNIT // rule.unit
            self.last[number] = (_OLD * self.last[number] + (_ALL - _OLD) * now) // _ALL
        ways = [(number, own) for number, own in enumerate(self.last) if self._can(number, own)]
        length = sum(own * own for _, own in ways)
        for number, own in ways:
            more = short * _UNIT * own // ((length * rules[number].unit) << halves)
            self._pay(number, max(0, min(self._most[number], self.each[number] + more)))
        return length > 0

    def _can(self, number: int, way: int) -> bool:
        """Whether more, or less, can be paid for a rule."""
        paid = self.each[number]
        return (way > 0 and paid < self._most[number]) or (way < 0 < paid)

    def _over(self) -> list[int]:
        """By how much the cheapest choices together are over the most of each rule, or under it."""
        found = [-rule.most for rule in self.problem.rules]
        for slot, own in enumerate(self.costs):
            cheapest = min(own, key=own.__getitem__)
            for number, amount in self.problem.rules_at[slot].get(cheapest, ()):
                found[number] += amount
        return found
