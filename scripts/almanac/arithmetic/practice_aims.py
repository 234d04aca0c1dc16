"""What a practice is for: the goals that it chiefly serves, and the benchmarks that it runs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.arithmetic.events import Rep
from almanac.arithmetic.practice import PracticeSummary
from almanac.model import vocabularies as words
from almanac.model.benchmark import Benchmark

GOALS_OF_DRILL, SERVES_FROM = 2, 0.2
"""Of a drill so many goals count, and from such a share of the metres on; house preference."""


def chief_goals(summary: PracticeSummary) -> tuple[str, ...]:
    """The goals that a practice is for: of what is neither its warm-up nor its cool-down, those of
    its sets, and those first named by drills, where at least a fifth of the metres serves them.
    """
    metres: dict[str, float] = {}
    work = [run for run in summary.runs if run.word not in (words.OPENS, words.CLOSES)]
    for run in work:
        for piece in run.first.pieces:
            goals = run.swim_set.goals if run.swim_set else piece.drill.goals[:GOALS_OF_DRILL]
            for goal in goals:
                metres[goal] = metres.get(goal, 0.0) + float(piece.distance)
    whole = sum(float(piece.distance) for run in work for piece in run.first.pieces)
    served = [goal for goal, own in metres.items() if own >= SERVES_FROM * whole]
    return tuple(sorted(served, key=lambda goal: -metres[goal]))


def benchmarks_run(benchmarks: Mapping[str, Benchmark], summary: PracticeSummary) -> Iterator[str]:
    """The benchmarks that its tests are by what is done and how far."""
    reps = [rep for run in summary.runs if run.word == words.TESTS for rep in run.every_rep]
    for id, benchmark in benchmarks.items():
        if any(_is_of(benchmark, summary, rep) for rep in reps):
            yield id


def _is_of(benchmark: Benchmark, summary: PracticeSummary, rep: Rep) -> bool:
    """Whether a rep is as a benchmark is swum; its arms are the protocol's, and not looked at."""
    if benchmark.distance != rep.distance or summary.course != benchmark.protocol.course:
        return False
    return all(
        piece.drill.mode == benchmark.mode
        and piece.drill.stroke == benchmark.stroke
        and piece.drill.kick == benchmark.kick
        and piece.drill.position == benchmark.position
        and set(piece.gear) == set(benchmark.gear)
        for piece in rep.pieces
    )
