"""The cheapest plan by CP-SAT of OR-Tools, an optional extra, with a bound that no plan is under.

It begins from another plan, searches with one worker for a deterministic time and with a fixed
seed, so that the same problem gives the same plan; no clock is asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from importlib.util import find_spec
from typing import Any

from almanac.arithmetic.planning.model import Plan, PlanProblem, PlanRule, units_over

DETERMINISTIC_TIME = 14.0
"""Of CP-SAT's own unit, which counts work; some ten seconds of a processor."""
_SEED = 1


class SolverFailed(RuntimeError):
    """The solver found no plan, though it was given one."""


@dataclass(frozen=True)
class Solved:
    """A plan, what it costs, and what no plan costs less than."""

    plan: Plan
    cost: int
    bound: int

    @property
    def is_best(self) -> bool:
        """Whether no plan is cheaper."""
        return self.cost <= self.bound


def can_solve() -> bool:
    """Whether the solver is installed."""
    return find_spec("ortools") is not None


def solved(
    problem: PlanProblem, hint: Plan, deterministic_time: float = DETERMINISTIC_TIME
) -> Solved:
    """The best plan that is found from another one. Raises ImportError without OR-Tools, and
    SolverFailed.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    stands = _stands(model, problem, hint)
    _order(model, problem, stands)
    terms = [
        cost * stands[slot][place]
        for slot, costs in enumerate(problem.own)
        for place, cost in costs.items()
        if cost
    ]
    for rule in problem.rules:
        _rule(model, rule, stands, hint, terms)
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2  # the bound is nearer by far
    solver.parameters.random_seed = _SEED
    solver.parameters.max_deterministic_time = deterministic_time
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        raise SolverFailed(solver.status_name(status))
    plan = tuple(
        next(place for place, variable in own.items() if solver.boolean_value(variable))
        for own in stands
    )
    bound = -int(-solver.best_objective_bound // 1)  # whole points: a bound between two is the next
    return Solved(plan, problem.cost(plan), bound)


Stands = list[dict[int, Any]]  # by slot and choice whether it stands there


def _stands(model: Any, problem: PlanProblem, hint: Plan) -> Stands:
    found: Stands = []
    for slot, may in enumerate(problem.may):
        own = {place: model.new_bool_var(f"{slot}:{place}") for place in may}
        model.add_exactly_one(own.values())
        for place, variable in own.items():
            model.add_hint(variable, place == hint[slot])
        found.append(own)
    return found


def _order(model: Any, problem: PlanProblem, stands: Stands) -> None:
    """Of each drill that a practice needs, some earlier slot teaches it."""
    taught: dict[str, list[Any]] = {}
    for own in stands:
        for place, variable in own.items():
            for need in sorted(problem.choices[place].needs):
                model.add_bool_or([~variable, *taught.get(need, [])])
        for place, variable in own.items():
            for drill in sorted(problem.choices[place].teaches & _needed(problem)):
                taught.setdefault(drill, []).append(variable)


def _needed(problem: PlanProblem) -> frozenset[str]:
    return frozenset(need for choice in problem.choices for need in choice.needs)


def _rule(model: Any, rule: PlanRule, stands: Stands, hint: Plan, terms: list[Any]) -> None:
    """A limit, or a wish with the units that it is over; nothing where it cannot be over."""
    highest = _highest(rule, stands)
    if not highest:
        return
    amount = sum(
        each * stands[slot][place]
        for slot, own in rule.amounts.items()
        for place, each in own.items()
    )
    if rule.is_limit:
        model.add(amount <= rule.most)
        return
    over = model.new_int_var(0, highest, "")
    model.add(amount - rule.most <= rule.unit * over)
    model.add_hint(over, rule.over(hint))
    terms.append(rule.points * over)


def _highest(rule: PlanRule, stands: Stands) -> int:
    """The most units that a rule can be over, whatever stands in its slots."""
    most = sum(
        max(own.get(place, 0) for place in stands[slot]) for slot, own in rule.amounts.items()
    )
    return units_over(most, rule.most, rule.unit)
