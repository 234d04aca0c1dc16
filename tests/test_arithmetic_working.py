"""The working behind every figure: it comes to the figure, as a tree and as the line that a coach
reads.
"""

from __future__ import annotations

import math
import re
from dataclasses import fields, is_dataclass
from enum import Enum
from fractions import Fraction
from functools import cached_property

import pytest
from arithmetic_strategies import TRAVELLED, items
from arithmetic_world import (
    DRILLS,
    SCALE,
    SHORT,
    catalogue,
    clock,
    group,
    rep,
    swim_set,
    swum,
)
from hypothesis import given
from hypothesis import strategies as st

from almanac.analysis.figures import all_figures
from almanac.analysis.figures.sets import SetForGroup
from almanac.arithmetic.expand import expand
from almanac.arithmetic.lanes import crowded, too_tight
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import (
    Between,
    BuildTime,
    Difference,
    Known,
    Labelled,
    PowerLaw,
    Product,
    Quotient,
    Sum,
    UpTo,
    Working,
    gathered,
    times,
    total,
)  # fmt: skip
from almanac.model.entry import Entry
from almanac.model.structure import structure_items
from almanac.report.working_text import formula, show_value, steps
from almanac.units import COURSES


def worked(tree: Working) -> float:
    """The value of a working from its parts, by the definition of each."""
    match tree:
        case Known(value):
            return value
        case Labelled(inner=inner):
            return worked(inner)
        case Sum(terms):
            return math.fsum(map(worked, terms))
        case Product(factors):
            return math.prod(map(worked, factors))
        case Quotient(over, under):
            return worked(over) / worked(under)
        case Difference(whole, less):
            return worked(whole) - worked(less)
        case UpTo(inner, step):
            return step * math.ceil(worked(inner) / step - 0.0005)
        case PowerLaw(reference, reference_m, metres, exponent):
            return worked(reference) * math.exp(
                exponent * (math.log(metres) - math.log(reference_m))
            )
        case Between(first, last, along):
            return (1 - along) * worked(first) + along * worked(last)
        case BuildTime(slow, fast):
            speeds = [1 / worked(slow), 1 / worked(fast)]
            return (
                worked(slow)
                if math.isclose(*speeds)
                else math.log(speeds[1] / speeds[0]) / (speeds[1] - speeds[0])
            )


# The line that a coach reads, as an expression: clock times as seconds, names and units left out.
_CLOCK = re.compile(r"(?:(\d+):)?(\d+):(\d\d(?:\.\d)?)")
_KEPT = {"of", "the", "way", "from", "to", "building"}
_FORMS = [
    (
        re.compile(r"([\d.,]+) % of the way from ([\d.,]+) to ([\d.,]+)"),
        r"(\2 + (\3 - \2) * \1 / 100)",
    ),
    (re.compile(r"building from ([\d.,]+) to ([\d.,]+)"), r"build(\1, \2)"),
]


def read(line: str) -> float:
    """The value of a printed line."""
    text = _CLOCK.sub(
        lambda m: repr(3600 * int(m[1] or 0) + 60 * int(m[2]) + float(m[3])),
        line.replace("up to the next", "@"),
    )
    text = re.sub(r"(?<=\d),(?=\d)", "", text)
    text = re.sub(
        r"(?<![\w.])[A-Za-z][\w'’/-]*", lambda word: word[0] if word[0] in _KEPT else "", text
    )
    text = re.sub(r" +", " ", text)
    for form, expression in _FORMS:
        text = form.sub(expression, text)
    text = re.sub(r"\b(of|the|way|from|to|building)\b", "", text)
    text = text.translate(str.maketrans({"×": "*", "÷": "/", "−": "-", "^": "**"}))
    while ", @" in text:  # "inner, up to the next 5": inner reaches back to its bracket
        before, after = text.split(", @", 1)
        depth, start = 0, len(before)
        while start and depth >= 0:
            start -= 1
            depth += {")": 1, "(": -1}.get(before[start], 0)
        start += depth < 0
        step = re.match(r" *[\d.]+", after)[0]
        text = f"{before[:start]}up({before[start:]}, {step}){after[len(step) :]}"
    assert not re.search(r"[^\d\s.,+*/()-]", re.sub(r"\b(up|build)\b", "", text)), (line, text)
    known = {
        "up": lambda inner, step: step * math.ceil(inner / step - 0.0005),
        "build": lambda slow, fast: (
            slow if slow == fast else slow * fast * math.log(slow / fast) / (slow - fast)
        ),
    }
    return eval(
        text, {"__builtins__": {}}, known
    )  # nothing but numbers, signs and the two names, as asserted above


@given(items(), st.sampled_from(list(COURSES.values())))
def test_every_figure_is_what_its_working_comes_to(written, course):
    summary = summarise(Timing(catalogue()), swim_set(*written), course)
    for figure in all_figures("set", SetForGroup(summary, "osprey-1")).values():
        assert math.isclose(
            figure.working.value, worked(figure.working), rel_tol=1e-9, abs_tol=1e-9
        ), figure


def slack(working: Working) -> float:
    """How far the printed line may be off: its numbers are rounded, and a rounding up may tip
    over.
    """
    tips = working.step if isinstance(working, UpTo) else 0
    inner = (getattr(working, field.name) for field in fields(working))
    found = [
        part
        for value in inner
        for part in (value if isinstance(value, tuple) else (value,))
        if is_dataclass(part)
    ]
    weight = (
        math.prod(part.value for part in working.factors if isinstance(part, Known))
        if isinstance(working, Product)
        else 1
    )
    return tips + sum(map(slack, found)) * max(1, weight)


@given(items())
def test_every_figure_as_printed_comes_to_what_is_shown(written):
    summary = summarise(Timing(catalogue()), swim_set(*written))
    for figure in all_figures("set", SetForGroup(summary, "osprey-1")).values():
        *_, last = steps(figure.working, figure.name, figure.unit)
        shown, exact = read(last.value), figure.working.value
        assert last.value == show_value(exact, figure.unit)
        assert abs(shown - exact) <= (0.5 if figure.unit == "s" and exact >= 60 else 0.051), last
        assert read(last.how) == pytest.approx(exact, rel=0.01, abs=0.3 + slack(figure.working)), (
            last
        )


@pytest.mark.parametrize(
    ("working", "line", "value"),
    [
        (Sum(()), "0", 0),
        (Product((Known(2), Sum((Known(3), Known(4))))), "2 × (3 + 4)", 14),
        (Quotient(Known(90.0, unit="s"), Known(0.9, "fast")), "1:30 ÷ 0.9 fast", 100),
        (
            Difference(Known(65.0, unit="s"), Sum((Known(20.0, unit="s"), Known(3.0, unit="s")))),
            "1:05 − (20 s + 3 s)",
            42,
        ),
        (
            UpTo(Sum((Known(54, unit="s"), Known(3, unit="s"))), 5),
            "54 s + 3 s, up to the next 5 s",
            60,
        ),
        (
            Product((Known(6), UpTo(Known(57.0, unit="s"), 5))),
            "6 × (57 s, up to the next 5 s)",
            360,
        ),
        (
            PowerLaw(Known(50.0), 50, 100, 1.06),
            "50 s × (100 m ÷ 50 m) ^ 1.06",
            50 * 2.0849315,
        ),  # Riegel's form, k = 1.06
        (Between(Known(60.0), Known(50.0), 0.4), "40 % of the way from 1:00 to 50 s", 56),
        (BuildTime(Known(60.0), Known(50.0)), "building from 1:00 to 50 s pace", 54.696),
    ],
)
def test_lines(working, line, value):
    assert formula(working) == line
    assert working.value == pytest.approx(value, abs=1e-3)
    assert read(line) == pytest.approx(value, abs=0.05)


def test_figures_are_named_by_the_place_of_their_item():
    inner = {"reps": 2, "distance": 50, "do": "kick", "effort": "easy", "sendoff": 90}
    summary = summarise(
        Timing(catalogue()),
        swim_set({"rounds": 2, "items": [{"pause": 9}, inner]}, {**inner, "do": "float"}),
    )
    named = {"distance", "metres", "lengths", "mode kick", "effort easy", "gear none", "clock"}
    of_items = {"target 1.2", "sendoff 1.2", "rest 1.2", "sendoff 2"}
    figures = all_figures("set", SetForGroup(summary, "osprey-1"))
    assert named | of_items <= set(figures) and not {
        "target 2",
        "work",
        "density",
        "load",
        "target 1.1",
    } & set(figures)
    assert not {
        name
        for name in all_figures("set", SetForGroup(summary, None))
        if name.split()[0] in {"clock", "target", "sendoff", "rest"}
    }


@given(st.lists(st.integers(0, 5), max_size=30))
def test_gathering_terms_keeps_their_sum(numbers):
    terms = [Known(number, "s") for number in numbers]
    assert gathered(terms).value == total(terms).value == Sum(tuple(terms)).value == sum(numbers)
    assert [times(number, Known(7)).value for number in numbers] == [
        7 * number for number in numbers
    ]


def test_terms_that_come_to_the_same_but_say_another_thing_stay_apart():
    pause, talk = Known(60, "pause", "s"), Known(60, "talk", "s")
    again = Known(60, "pause", "s")  # another object that says the same
    assert gathered([pause, talk, again, talk, talk]) == Sum(
        (Product((Known(2), pause)), Product((Known(3), talk)))
    )
    assert gathered([pause]) is pause and gathered([]) == Sum(())
    assert gathered([pause, Known(0, "wait", "s"), talk]) == Sum((pause, talk))
    assert times(3, pause, "rounds") == Product((Known(3, "rounds"), pause))
    assert times(1, pause, "rounds") is pause and times(0, pause).value == 0


# Nothing that is no number, whatever the club writes.


def no_such_number(thing, where="") -> list[str]:
    """Where a nan or an infinity stands in anything that the arithmetic gives."""
    if isinstance(thing, float):
        return [] if math.isfinite(thing) else [where]
    if isinstance(thing, (tuple, list, frozenset)):
        return [
            found
            for number, one in enumerate(thing)
            for found in no_such_number(one, f"{where}[{number}]")
        ]
    if isinstance(thing, dict):
        return [
            found for key, one in thing.items() for found in no_such_number(one, f"{where}.{key}")
        ]
    if not is_dataclass(thing) or isinstance(thing, (Enum, Fraction, Entry)):
        return []
    names = {field.name for field in fields(thing)}
    names |= {
        name
        for name in dir(type(thing))
        if isinstance(getattr(type(thing), name), (property, cached_property))
    }
    return [
        found
        for name in sorted(names)
        for found in no_such_number(getattr(thing, name), f"{where}.{name}")
    ]


_times = st.one_of(st.floats(0.01, 6000), st.sampled_from([0.01, 30, 60, 86399]))
_tests = st.lists(
    st.builds(swum, st.sampled_from(["kick-25", "kick-50", "kick-200", "back-100", "back-400",
                                     "board-100"]), _times,
              st.sampled_from(list(COURSES.values())), st.dates().map(str)), max_size=8,
)  # fmt: skip


@given(
    items(TRAVELLED, step=5),
    _tests,
    st.integers(1, 200),
    st.integers(1, 10),
    _times,
    st.sampled_from(list(COURSES.values())),
)
def test_no_nan_and_no_infinity_and_no_crash(written, tests, heads, lanes, gap, course):
    of = group(tests, heads, lanes, gap)
    on = clock(of, course)
    run = on.run(expand(structure_items(written), DRILLS, SCALE))
    found = [run, item_rows(run), too_tight(run, on), crowded(run, of, course)]
    assert no_such_number(found) == []
    summary = summarise(Timing(catalogue(of)), swim_set(*written), course)
    for figure in all_figures("set", SetForGroup(summary, "osprey-1")).values():
        assert math.isfinite(figure.working.value) and steps(
            figure.working, figure.name, figure.unit
        )


def test_a_set_of_pauses_or_of_holding_alone():
    for written in ([{"pause": 60}], [{"reps": 3, "time": 20, "do": "upright", "effort": "fast"}]):
        summary = summarise(Timing(catalogue()), swim_set(*written))
        assert (
            summary.distance.value == 0
            and summary.shares.kick is None
            and summary.shares.fast is None
        )
        assert no_such_number([summary.clocks["osprey-1"], summary.shares, dict(summary.by)]) == []
        assert summary.clocks["osprey-1"].clock.value == 60
    (timed,) = clock(course=SHORT).run(rep(reps=1)).reps
    assert no_such_number(timed) == []
