"""Expansion, facets, distance and re-laying against a plain reference that works on entries as they
are written.
"""

from __future__ import annotations

import ast
import operator
from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from arithmetic_strategies import Plain, distance, items, laid_out, worn
from arithmetic_world import DRILLS, EFFORTS, LONG, PIECES, SCALE, SHORT, YARDS, events, swim_set
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.course import Unfit, lay_in_course, misfits, nearest_lengths
from almanac.arithmetic.events import Break, Rep, reps
from almanac.arithmetic.expand import count_reps, expand
from almanac.arithmetic.facets import FACETS, all_facets, distance_working, facet_working, shares
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.model.manner import Manner
from almanac.model.reps import Change
from almanac.model.sendoff import Sendoff
from almanac.model.structure import structure_items
from almanac.model.swim_set import Round, reps_of
from almanac.report.working_text import formula
from almanac.units import COURSES

COURSE = st.sampled_from(list(COURSES.values()))
ANY_DISTANCE = items(step=1)


@given(ANY_DISTANCE)
def test_every_event_is_the_plain_one(written):
    laid = expand(structure_items(written), DRILLS, SCALE)
    plain = laid_out(written)
    assert len(laid) == len(plain)
    for event, expected in zip(laid, plain, strict=True):
        assert (event.path, event.rounds) == (expected.path, expected.rounds)
        if expected.pieces is None:
            assert isinstance(event, Break) and event.seconds == expected.seconds
            continue
        assert (
            isinstance(event, Rep)
            and event.number == expected.number
            and event.distance == distance(expected)
        )
        for piece, (part, start, end) in zip(event.pieces, expected.pieces, strict=True):
            assert (piece.distance, piece.hold_s) == (part.get("distance", 0), part.get("time"))
            assert (piece.drill.id, piece.effort.start, piece.effort.end) == (
                part["do"],
                start,
                end,
            )
            assert set(piece.gear) == worn(expected.item, part) and len(set(piece.gear)) == len(
                piece.gear
            )


@given(ANY_DISTANCE)
def test_paths_lead_to_what_they_name(written):
    for event in expand(structure_items(written), DRILLS, SCALE):
        found = {"items": written}
        for step in event.path:
            found = found[step]
        if isinstance(event, Break):
            assert (found if event.path[-1] == "pause_between" else found["pause"]) == event.seconds
        else:
            assert found["reps"] == event.item.reps


@given(ANY_DISTANCE)
def test_count_is_that_of_the_reps_laid_out(written):
    model = structure_items(written)
    laid, plain = expand(model, DRILLS, SCALE), laid_out(written)
    assert (
        count_reps(model)
        == len(list(reps(laid)))
        == sum(event.pieces is not None for event in plain)
    )


def test_counting_does_not_lay_out():
    deep = [{"reps": 100, "distance": 25, "do": "kick", "effort": "easy"}]
    for _ in range(8):
        deep = [{"rounds": 50, "items": deep}]
    assert count_reps(structure_items(deep)) == 100 * 50**8


@pytest.mark.parametrize(("rounds", "pauses"), [(1, 0), (2, 1), (4, 3)])
def test_no_pause_after_the_last_round(rounds, pauses):
    laid = events(
        {
            "rounds": rounds,
            "pause_between": 60,
            "items": [{"reps": 1, "distance": 25, "do": "kick", "effort": "easy"}],
        }
    )
    assert sum(isinstance(event, Break) for event in laid) == pauses
    assert isinstance(laid[-1], Rep)


def test_a_descend_starts_again_in_each_round():
    inner = {"reps": 3, "distance": 50, "do": "kick", "effort": {"descend": ["steady", "fast"]}}
    laid = events({"rounds": 2, "items": [inner]})
    assert [event.pieces[0].effort.mean for event in laid] == [4, 6, 8] * 2


def halves_of_the_scale(start: Fraction, end: Fraction) -> Counter[str]:
    """Words owning each half point of rating between two ratings; every border and every middle
    falls on a half.
    """
    low, high = sorted((start, end))
    steps = [low + Fraction(n, 2) for n in range(int(2 * (high - low)))] or [low]
    return Counter(
        next(w for w, (least, most, _) in reversed(EFFORTS.items()) if least <= step <= most)
        for step in steps
    )


def plain_facets(plain: list[Plain]) -> dict[str, Counter[str]]:
    found: dict[str, Counter[str]] = {facet: Counter() for facet in FACETS}
    for event in plain:
        for part, start, end in event.pieces or []:
            far = Fraction(part.get("distance", 0))
            for facet in ("mode", "kick", "stroke", "position"):
                found[facet][getattr(DRILLS[part["do"]], facet)] += far
            found["gear"]["+".join(sorted(worn(event.item, part))) or "none"] += far
            split = halves_of_the_scale(start, end)
            for word, count in split.items():
                found["effort"][word] += far * Fraction(count, split.total())
    return found


@given(ANY_DISTANCE)
def test_facets_are_the_plain_ones_and_each_adds_up_exactly(written):
    laid = list(reps(expand(structure_items(written), DRILLS, SCALE)))
    pieces = tuple(piece for rep in laid for piece in rep.pieces)
    whole = sum(distance(event) for event in laid_out(written))
    expected = plain_facets(laid_out(written))
    for facet, split in all_facets(pieces, SCALE).items():
        assert all(isinstance(value, Fraction) for value in split.values())
        assert sum(split.values()) == whole
        assert +Counter(split) == +expected[facet]
        for word, value in split.items():
            assert facet_working(pieces, facet, word, SCALE).value == pytest.approx(
                float(value), abs=1e-9
            )


@given(ANY_DISTANCE)
def test_shares_lie_between_none_and_all(written):
    laid = tuple(reps(expand(structure_items(written), DRILLS, SCALE)))
    found = shares(laid, PIECES, SCALE)
    named = [
        found.kick,
        found.supine_flutter,
        found.prone_flutter,
        found.board_flutter,
        found.resisted,
        found.fast,
    ]
    assert all(share is None or 0 <= share <= 1 for share in named)
    assert 0 <= found.kick_into_stroke <= sum(rep.distance for rep in laid)
    assert (found.kick is None) == (not any(rep.distance for rep in laid))


EVALUATED = {ast.Add: operator.add, ast.Mult: operator.mul}


def evaluated(text: str) -> int:
    """The value of sums and products of whole numbers; anything else in the text is an error."""

    def value(node: ast.expr) -> int:
        if isinstance(node, ast.BinOp):
            return EVALUATED[type(node.op)](value(node.left), value(node.right))
        assert isinstance(node, ast.Constant) and isinstance(node.value, int), text
        return node.value

    return value(ast.parse(text.replace("×", "*").replace(",", ""), mode="eval").body)


@given(ANY_DISTANCE)
def test_the_distance_as_printed_comes_to_the_distance(written):
    working = distance_working(structure_items(written))
    assert (
        working.value
        == evaluated(formula(working))
        == sum(distance(event) for event in laid_out(written))
    )


HALF, THIRD = Fraction(25, 2), Fraction(25, 3)


@pytest.mark.parametrize(
    ("distances", "more", "printed"),
    [
        ((25, 50), {}, "2 × (25 + 50)"),
        ((HALF, HALF), {}, "2 × (12.5 + 12.5)"),
        ((25, THIRD), {}, "2 × 33.333"),  # a mark has no round figure
        ((2 * THIRD, 4 * THIRD), {}, "2 × 50"),
        ((25, 25), {"is_split": True}, "2 × 50"),
        ((200,), {"manner": Manner(swimmers=4)}, "2 × 200 ÷ 4 swimmers"),
    ],
)
def test_the_distance_as_a_coach_adds_it_up(distances, more, printed):
    one = {"distance": 25, "do": "kick", "effort": "easy"}
    (item,) = structure_items([{"reps": 2, "parts": [one] * len(distances)}])
    parts = zip(item.parts, distances, strict=True)
    item = replace(item, parts=tuple(replace(part, distance=own) for part, own in parts), **more)
    nobody = replace(item, reps=0)  # adds nothing
    assert formula(distance_working((nobody, item, nobody))) == printed


def test_what_is_none_of_a_word_is_no_term_of_it():
    easy, steady = ({"do": "kick", "distance": 100, "effort": own} for own in ("easy", "steady"))
    pieces = [own.pieces[0] for own in events({"reps": 2, **easy}, {"reps": 2, **steady})]
    assert formula(facet_working(pieces, "effort", "steady", SCALE)) == "2 × 100"


@given(items(step=5), COURSE, COURSE)
def test_laid_there_and_back_is_the_set_again(written, here, there):
    first = swim_set(*written, course=here)
    assert lay_in_course(lay_in_course(first, there), here) == first
    for before, after in zip(
        reps_of(first.items), reps_of(lay_in_course(first, there).items), strict=True
    ):
        assert after.parts == before.parts and (after.sendoff is None) == (before.sendoff is None)
        if after.sendoff:
            yards = {
                SHORT: 1,
                LONG: 1,
                YARDS: Fraction(9144, 10000),
            }  # 1 yd = 0.9144 m exactly (agreement of 1959)
            assert after.sendoff.ratio == yards[there] / yards[here]


@pytest.mark.parametrize(
    ("reps", "changes", "most"),
    [(4, [], 4), (4, [10], 10), (4, [2], 4), (4, [None, 5], 5), (4, [None], 4), (0, [None], 0)],
)
def test_reps_are_counted_for_whoever_swims_the_most(reps, changes, most):
    (item,) = structure_items([{"reps": 1, "distance": 50, "do": "crawl", "effort": "easy"}])
    by_group = {str(number): Change(reps=own) for number, own in enumerate(changes)}
    assert count_reps((replace(item, reps=reps, by_group=by_group),)) == most


def test_gear_that_nobody_knows_costs_nothing_inside_a_rep():
    half = {"distance": 25, "do": "crawl", "effort": "easy"}
    (laid,) = events({"reps": 1, "parts": [half, {**half, "gear": ["fins"]}]})
    assert [piece.change_s for piece in laid.pieces] == [0, 0]


def test_how_far_goes_what_nobody_swims_by_time():
    (laid,) = events({"reps": 1, "time": 60, "do": "crawl", "effort": "easy"})
    (piece,) = laid.pieces
    assert (piece.distance, piece.unknown) == (0, NoNumber(Because.NO_GROUP, "crawl"))


def test_what_changes_for_some_moves_to_another_pool_as_the_rest_does():
    minute = {"1": Change(sendoff=Sendoff((60.0,)))}
    (item,) = structure_items([{"reps": 2, "distance": 50, "do": "crawl", "effort": "easy"}])
    own = replace(item, by_group=minute, by_variant=minute, by_round=minute)
    first = replace(swim_set(), items=(Round(2, (own,), by_round=minute),))
    (laid,) = lay_in_course(first, YARDS).items
    (inner,) = laid.items
    yards = {"1": Change(sendoff=Sendoff((60.0,), ratio=Fraction(9144, 10000)))}
    assert (inner.by_group, inner.by_variant, inner.by_round, laid.by_round) == (yards,) * 4


def plain_nearest(distance: int, length: int) -> int:
    return min(range(length, distance + 2 * length, length), key=lambda d: (abs(d - distance), -d))


def plain_misfits(written: list[dict], length: int) -> list[tuple]:
    found: dict[tuple, tuple] = {}
    for event in laid_out(written):
        if event.pieces is None or event.path in found:
            continue
        walls = [
            sum(part.get("distance", 0) for part, _, _ in event.pieces[:n])
            for n in range(1, len(event.pieces) + 1)
        ]
        between = [n for n, at in enumerate(walls) if at % length]
        if walls[-1] % length:
            found[event.path] = (True, None, plain_nearest(walls[-1], length))
        elif between:
            found[event.path] = (
                False,
                between[0],
                plain_nearest(event.pieces[between[0]][0]["distance"], length),
            )
    return [(path, *rest) for path, rest in found.items()]


@given(st.one_of(items(step=5), items(step=25)), COURSE)
def test_misfits_are_the_plain_ones(written, course):
    found = [(m.path, m.ends, m.part, m.nearest) for m in misfits(structure_items(written), course)]
    assert found == plain_misfits(written, course.length)


@given(st.integers(1, 5000), COURSE)
def test_nearest_lengths(distance, course):
    assert nearest_lengths(distance, course) == plain_nearest(distance, course.length)


@pytest.mark.parametrize(
    ("distance", "nearest"),
    [(1, 25), (12, 25), (37, 25), (Fraction(75, 2), 50), (38, 50), (Fraction(251, 4), 75)],
)
def test_the_nearest_lengths_are_one_at_least_and_of_two_as_near_the_longer(distance, nearest):
    found = nearest_lengths(distance, SHORT)
    assert found == nearest and isinstance(found, int)


# A glide whose own dose is 10 m, in a pool of 25; a kick's dose is 50 m.
GLIDE = {
    **DRILLS,
    "crawl": replace(DRILLS["crawl"], dose=replace(DRILLS["crawl"].dose, distance=10)),
}
GLIDED = {"do": "crawl", "effort": "easy"}
TEAM = Manner(swimmers=2)


@pytest.mark.parametrize(
    ("written", "manner", "why"),
    [
        ({"distance": 10}, None, None),  # one rep: nobody has to be back for the next
        ({"distance": 10, "reps": 4, "rest": 20}, None, None),
        ({"distance": 10, "reps": 4, "sendoff": 40}, None, None),
        ({"distance": 10, "reps": 4}, None, Unfit.ENDS),  # when does one get back?
        ({"distance": 20, "reps": 1}, TEAM, Unfit.ENDS),  # ten each: the next stands at the wall
        ({"distance": 30, "reps": 1}, None, Unfit.ENDS),  # longer than the pool
        ({"parts": [{**GLIDED, "distance": 15}] * 2, "rest": 20}, None, Unfit.ENDS),
        ({"distance": 10, "do": "kick"}, None, Unfit.ENDS),
        ({"distance": 10, "do": {"rotate": ["crawl", "kick"]}, "rest": 20}, None, Unfit.ENDS),
        ({"parts": [{**GLIDED, "do": "kick", "distance": d} for d in (7.5, 17.5)]}, None,
         Unfit.CHANGES),
        ({"distance": 10, "do": "kick", "reps": 0}, None, None),  # nobody swims it
        ({"time": 30, "do": "upright"}, None, None),  # held: it ends where it began
    ],
)  # fmt: skip
def test_what_is_shorter_than_a_length_ends_where_it_ends(written, manner, why):
    own = written if "parts" in written else {**GLIDED, **written}
    (item,) = structure_items([{"reps": 1, **own}])
    laid = replace(item, manner=manner) if manner else item
    assert [own.why for own in misfits((laid,), SHORT, drills=GLIDE)] == ([why] if why else [])
