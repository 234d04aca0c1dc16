"""The solver beside every plan there is, where OR-Tools stands. Nights have it
(``ALMANAC_NEEDS_SOLVER``), and fail without it; elsewhere these tests are left out, and the run
says so.
"""

from __future__ import annotations

import itertools
import os
import random
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from planning_world import choice, grid, problem
from shared import CATALOGUE, DAY

from almanac.arithmetic.planning.greedy import greedy, improved
from almanac.arithmetic.planning.model import PlanProblem, PlanRule
from almanac.arithmetic.planning.solver import SolverFailed, can_solve, solved
from almanac.commands.main import main

if not can_solve() and not os.environ.get("ALMANAC_NEEDS_SOLVER"):
    pytest.skip("OR-Tools is not installed (pip install ortools)", allow_module_level=True)


@pytest.mark.parametrize("seed", range(8))
def test_the_solver_finds_the_cheapest_of_every_plan_and_proves_it(seed: int) -> None:
    own = problem(random.Random(seed))
    found = solved(own, greedy(own), 5)
    cheapest = min(own.cost(plan) for plan in itertools.product(*own.may) if own.is_sound(plan))
    assert own.is_sound(found.plan)
    assert found.cost == own.cost(found.plan) == cheapest == found.bound
    assert found.is_best


@pytest.mark.parametrize("seed", [1, 2])
def test_the_same_problem_gives_the_same_plan_and_bound(seed: int) -> None:
    own = problem(random.Random(seed), slots=12, choices=8)
    hint = improved(own, greedy(own), 200)
    one, other = solved(own, hint, 0.3), solved(own, hint, 0.3)
    assert one == other
    assert one.bound <= one.cost <= own.cost(hint)


def test_a_limit_that_less_than_nothing_may_pass_is_kept_too() -> None:
    """Amounts below zero: leaving a slot empty is what passes the limit."""
    own = grid([0, 2], [choice("a"), choice("b")])
    least = PlanRule("least", "", {0: {1: -2, 2: -1}, 1: {1: -2, 2: -1}}, -3, 0)
    costs = ({0: 0, 1: 9, 2: 1}, {0: 0, 1: 9, 2: 2})
    asked = PlanProblem(own.slots, own.choices, own.may, costs, (least,))
    found = solved(asked, (1, 1), 1)
    assert asked.is_sound(found.plan) and found.cost == 10  # 1 and 9: -1 and -2 are -3
    wish = replace(least, points=3)
    assert (
        solved(replace(asked, rules=(wish,)), (1, 1), 1).cost == 6
    )  # two of one point, one unit short


def test_a_wish_is_over_by_all_of_it_where_the_other_slot_stays_empty() -> None:
    """Less than nothing of it may stand in the first slot, and nothing does: 5 are 3 over 2, 9
    points.
    """
    own = grid([0, 2], [choice("a"), choice("b")])
    wish = PlanRule("wish", "", {0: {1: -2, 2: -2}, 1: {1: 5, 2: 5}}, 2, 3)
    costs = ({0: 0, 1: 90, 2: 90}, {0: 90, 1: 0, 2: 90})
    found = solved(PlanProblem(own.slots, own.choices, own.may, costs, (wish,)), (1, 1), 1)
    assert (found.plan, found.cost, found.bound) == ((0, 1), 9, 9)


def test_where_no_plan_keeps_a_limit_the_solver_has_failed() -> None:
    own = grid([0], [choice("a")])
    never = PlanRule("never", "", {0: {1: 1}}, 0)
    with pytest.raises(SolverFailed, match="INFEASIBLE"):
        solved(PlanProblem(own.slots, own.choices, ((1,),), ({1: 0},), (never,)), (1,), 1)


def test_the_solver_works_alone_from_a_seed_for_a_time_that_no_clock_tells(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """More workers, or the time by the clock, and the plan would hang on the machine (the manual of
    CP-SAT).
    """
    from ortools.sat.python import cp_model

    made, solver = [], cp_model.CpSolver
    monkeypatch.setattr(cp_model, "CpSolver", lambda: made.append(solver()) or made[-1])
    own = problem(random.Random(1))
    assert own.is_sound(solved(own, greedy(own), 5).plan)
    asked = made[0].parameters
    assert (asked.num_workers, asked.random_seed, asked.max_deterministic_time) == (1, 1, 5)
    assert asked.max_time_in_seconds == float("inf")


def test_the_command_tells_the_gap(capsys, tmp_path: Path) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    argv = [
        "compose",
        "block",
        "--root",
        str(root),
        "--today",
        str(DAY),
        "--squad",
        "heron",
        "--weeks",
        "3",
    ]
    argv += [
        "--starts",
        "2027-01-04",
        "--goals",
        "kick-into-stroke",
        "--like",
        "heron-legs-in-three-weeks",
    ]
    assert main([*argv, "--days", "mon,wed,fri", "--steps", "200"]) == 0
    said = capsys.readouterr().out
    assert "By the solver: " in said and ("no plan has fewer" in said)
    assert main([*argv, "--days", "mon,wed,fri", "--steps", "200"]) == 0
    assert capsys.readouterr().out == said
