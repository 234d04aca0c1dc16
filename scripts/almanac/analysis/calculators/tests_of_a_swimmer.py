"""From one or two tests: targets, send-offs, a descend ladder."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    How,
    Line,
    NoAnswer,
    Takes,
    number,
    word,
)
from almanac.analysis.calculators.tested_swimmer import (
    POOLS,
    REFUSALS,
    TestedSwimmer,
    effort_field,
    tested_in,
    tested_swimmer,
)
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.effort_pace import EffortPace
from almanac.arithmetic.pace_lines import line_through
from almanac.arithmetic.rest_rules import rest_working
from almanac.arithmetic.working import Known, Sum, UpTo, Working
from almanac.units import COURSES


def _send_off(
    tested: TestedSwimmer, effort: str, target: Working, metres: float
) -> tuple[float, float]:
    """The rest that an effort wants after a rep, and the send-off that leaves it."""
    policy = tested.club.catalogue.policy
    rules = policy.rest[effort]
    fifties = Known(metres / 50)
    rest = max(
        (rest_working(rule, fifties, target, policy) for rule in (rules.wanted, rules.least)),
        key=lambda asked: asked.value,
    )
    return rest.value, UpTo(Sum((target, rest)), policy.limit("sendoff_step")).value


def _send_offs(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    tested = tested_swimmer(values, club)
    effort, distance = word(values, "effort"), number(values, "rep")
    found: dict[str, float] = {}
    for name, course in COURSES.items():
        target = tested.seconds(effort, distance, course)
        metres = distance * course.unit.metres
        rest, send_off = _send_off(tested, effort, target, metres)
        found |= {f"target-{name}": target.value, f"send-off-{name}": send_off}
        if name == word(values, "pool"):
            found |= {"target": target.value, "rest": rest, "send-off": send_off}
    basis = "one-test" if tested.line.estimated else "two-tests"
    mid_pool = (f"mid-{name}" for name, course in COURSES.items() if distance % course.length)
    says = ("read", *mid_pool, basis, "other-pools")
    return Answer(found, says)


def _ladder(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    tested = tested_swimmer(values, club)
    course, reps = COURSES[word(values, "pool")], int(number(values, "reps"))
    first, last = (
        tested.seconds(word(values, name), number(values, "rep"), course).value
        for name in ("from", "to")
    )
    times = [first + (last - first) * rep / (reps - 1) for rep in range(reps)]
    step = (first - last) / (reps - 1)
    if step < 0:
        raise NoAnswer("rises")
    one = ("one-test",) if tested.line.estimated else ("two-tests",)
    return Answer({"times": times, "step": step}, ("read", *one))


_BASIS = {
    "one-test": "From one test, so by the club's own exponent: estimated.",
    "two-tests": "From the line through both tests.",
}

SEND_OFFS = Calculator(
    name="send-offs",
    title="Send-offs and targets",
    asks="What does this swimmer hold over a distance at an effort, and when do they leave?",
    fields=lambda club: (
        *tested_in(club),
        effort_field(club, "effort", "Effort", 2),
        Field("rep", "Distance of a rep", least=10, most=2_000, default=100),
    ),
    lines=(
        Line("target", "Target", How.TIME),
        Line("send-off", "Send-off", How.CLOCK),
        Line("rest", "Rest that the effort wants", How.CLOCK),
        *(
            line
            for name, title in POOLS
            for line in (
                Line(f"target-{name}", f"Target in {title}", How.TIME),
                Line(f"send-off-{name}", f"Send-off in {title}", How.CLOCK),
            )
        ),
    ),
    sentences={
        "read": "{rep} at {effort}: hold {target}, leave on {send-off}.",
        **{f"mid-{name}": f"In {title} it ends mid-pool, not at a wall." for name, title in POOLS},
        **_BASIS,
        "other-pools": "For the other pools by length alone; what a turn more or less is worth, "
        "nobody can say beforehand.",
    },
    limits="A target is a share of the best that the tests tell, by the club's own effort words. "
    "Gear and drills change it: a set's page counts them in.",
    work=_send_offs,
    by=(line_through, EffortPace.time, rest_working),
    refusals=REFUSALS,
    example={"distance": 100, "time": 80.0, "distance-2": 200, "time-2": 170.0},
    asked_as=(
        "interval from a test time",
        "what should I leave on",
        "how fast should they kick a hundred",
        "how fast should I swim",
        "what time should they hold",
        "what pace for a fifty",
        "pace from a test",
        "what interval",
        "what send-off",
        "turnaround",
        "cycle time",
        "leave on what",
        "interval for 100s",
        "pace chart",
        "times for a set",
        "target times",
    ),
)
DESCEND = Calculator(
    name="descend",
    title="A descend ladder",
    asks="Each rep a little faster: which times?",
    fields=lambda club: (
        *tested_in(club),
        effort_field(club, "from", "First rep at", 1),
        effort_field(club, "to", "Last rep at", 3),
        Field("rep", "Distance of a rep", least=10, most=2_000, default=100),
        Field("reps", "Reps", Takes.WHOLE, least=2, most=20, default=4),
    ),
    lines=(
        Line("times", "Times", How.TIME),
        Line("step", "Faster each time by", unit="s"),
    ),
    sentences={"read": "{reps} × {rep}: {times}. Each {step} faster.", **_BASIS},
    limits="Evenly by the clock, from the time of the first effort to that of the last.",
    work=_ladder,
    by=(line_through, EffortPace.time, EffortScale.span),
    refusals={**REFUSALS, "rises": "A descend gets faster: let the last effort be the harder."},
    example={"distance": 100, "time": 80.0, "distance-2": 200, "time-2": 170.0},
    asked_as=(
        "descending set times",
        "ladder of times",
        "faster each one times",
        "descend times",
        "times to drop",
    ),
)
