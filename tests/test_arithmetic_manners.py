"""Drills in turn, starts, partners, teams and times to hold: worked by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from arithmetic_world import (
    CRAWL,
    DRILLS,
    HAZARD,
    SHORT,
    activity,
    catalogue,
    clock,
    made,
    rep,
    swim_set,
    target,
)
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.course import Unfit
from almanac.arithmetic.lanes import too_tight
from almanac.arithmetic.manners import others_turns, wait_after, with_manners
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Known
from almanac.model.catalogue import Catalogue
from almanac.model.manner import Manner
from almanac.model.policy import Vocabulary, Word
from almanac.model.structure import structure_items
from almanac.report.set_json import set_json
from almanac.report.working_text import formula

STROKES = ("butterfly", "backstroke", "breaststroke", "freestyle")
LISTS = {
    "starts": {"dive": Word("From a dive", "", ready_s=20, safety=(HAZARD,))},
    "partners": {
        "by-turns": Word("By turns", "", takes_turns=True, safety=(HAZARD,)),
        "alongside": Word("Alongside", ""),
    },
    "teams": {"relay-of-four": Word("Relay of four", "", swimmers=4, safety=(HAZARD,))},
}


def world() -> Catalogue:
    """The small club with the three lists, and a drill for each stroke of a medley, swum as fast
    as backstroke.
    """
    plain = catalogue()
    strokes = {
        f"{stroke}-swim": replace(
            DRILLS["backstroke"],
            id=f"{stroke}-swim",
            **{**activity(*CRAWL.values()), "stroke": stroke},
        )
        for stroke in STROKES
    }
    lists = [made(Vocabulary, id=id, words=words) for id, words in LISTS.items()]
    more = {(entry.kind, entry.id): entry for entry in [*strokes.values(), *lists]}
    return replace(plain, entries={**plain.entries, **more})


MEDLEY = [f"{stroke}-swim" for stroke in STROKES]


def summed(*items: dict[str, Any]) -> SetSummary:
    return summarise(Timing(world()), swim_set(*items, course=SHORT))


def reps(count: int, distance: int, do: Any = "kick", **more: Any) -> dict[str, Any]:
    return {"reps": count, "distance": distance, "do": do, "effort": "steady", **more}


def test_strokes_in_turn_across_reps() -> None:
    summary = summed(reps(6, 50, {"medley": MEDLEY}))
    assert summary.by["stroke"] == {
        "butterfly": 100, "backstroke": 100, "breaststroke": 50, "freestyle": 50,
    }  # fmt: skip
    assert [rep.pieces[0].drill.stroke for rep in summary.reps] == [*STROKES, *STROKES[:2]]


def test_strokes_in_turn_within_each_rep() -> None:
    summary = summed(reps(3, 100, {"split": MEDLEY}))
    assert summary.by["stroke"] == dict.fromkeys(STROKES, 75)
    assert (summary.distance.value, summary.misfits) == (300, ())
    exact = summed(reps(1, 50, {"split": MEDLEY[:3]}))
    assert exact.by["stroke"] == dict.fromkeys(STROKES[:3], Fraction(50, 3))
    assert exact.distance.value == 50


def test_drills_in_turn_have_targets_of_their_own() -> None:
    run = summed(reps(4, 50, {"rotate": ["kick", "slow-kick"]})).clocks["osprey-1"]
    kick, slow = (target(drill=id, effort="steady").seconds for id in ("kick", "slow-kick"))
    assert [timed.target_s for timed in run.reps] == pytest.approx([kick, slow, kick, slow])
    assert run.work is not None
    assert run.work.value == pytest.approx(2 * kick + 2 * slow)


@given(
    st.lists(
        st.tuples(st.integers(1, 9), st.integers(1, 8),
                  st.lists(st.sampled_from(MEDLEY), min_size=2, max_size=5)),
        min_size=1, max_size=4,
    )
)  # fmt: skip
def test_strokes_in_turn_against_counting_reps_one_by_one(
    items: list[tuple[int, int, list[str]]],
) -> None:
    summary = summed(*(reps(count, 25 * far, {"rotate": do}) for count, far, do in items))
    counted: dict[str, int] = {}
    for count, far, do in items:
        for number in range(count):
            stroke = do[number % len(do)].removesuffix("-swim")
            counted[stroke] = counted.get(stroke, 0) + 25 * far
    assert summary.by["stroke"] == counted


def test_a_partner_who_takes_turns_doubles_the_clock_and_not_the_distance() -> None:
    fifty = target(effort="steady").seconds
    summary = summed(reps(4, 50, partner="by-turns"))
    run = summary.clocks["osprey-1"]
    assert summary.distance.value == 200
    assert run.clock is not None and run.work is not None and run.rest is not None
    assert run.clock.value == pytest.approx(8 * fifty)
    assert run.work.value == pytest.approx(4 * fifty)
    assert run.reps[0].rest_s == pytest.approx(fifty)
    assert run.density is not None and run.density.value == pytest.approx(0.5)


def test_the_rest_that_is_shown_after_a_rep_is_the_swimmers_own() -> None:
    # on a send-off the partner's turn is rest, as in the rest of the whole set: clock less work
    for item in (reps(4, 50, partner="by-turns", sendoff=150), reps(4, 50, partner="by-turns")):
        told = set_json(summed(item))["groups"]["osprey-1"]
        assert told["rest_s"] == pytest.approx(sum(rep["rest_s"] for rep in told["reps"]), abs=0.4)
        assert told["rest_s"] > 0


def test_rest_that_is_shorter_than_the_partners_turn_is_that_turn() -> None:
    fifty = target(effort="steady").seconds
    for rest, waits in ((10, fifty), (fifty + 30, fifty + 30)):
        (timed,) = summed(reps(1, 50, partner="by-turns", rest=rest)).clocks["osprey-1"].reps
        assert timed.clock is not None
        assert timed.clock.value == 5 * -(-(fifty + waits) // 5)


def test_a_partner_alongside_changes_no_clock() -> None:
    own = summed(reps(4, 50, partner="alongside")).clocks["osprey-1"].clock
    plain = summed(reps(4, 50)).clocks["osprey-1"].clock
    assert own is not None and plain is not None and own.value == plain.value


def test_of_a_relay_of_four_each_swims_a_quarter_and_the_clock_is_the_teams() -> None:
    fifty = target(effort="steady").seconds
    summary = summed(reps(2, 200, team="relay-of-four"))
    run = summary.clocks["osprey-1"]
    assert (summary.distance.value, summary.lengths, summary.by["mode"]) == (100, 4, {"kick": 100})
    assert run.clock is not None and run.work is not None
    assert run.clock.value == pytest.approx(2 * 4 * fifty)
    assert run.work.value == pytest.approx(2 * fifty)
    assert [timed.target_s for timed in run.reps] == pytest.approx([fifty, fifty])


def test_of_a_medley_relay_a_swimmer_has_a_quarter_of_each_stroke_on_average() -> None:
    summary = summed(reps(1, 200, {"split": MEDLEY}, team="relay-of-four"))
    assert summary.by["stroke"] == dict.fromkeys(STROKES, Fraction(25, 2))
    assert summary.distance.value == 50


def test_a_leg_of_a_relay_ends_at_a_wall() -> None:
    (found,) = summed(reps(1, 50, team="relay-of-four")).misfits
    # each swims half a length; a length each is the nearest, 4 × 25
    assert (found.distance, found.swimmers, found.nearest) == (Fraction(25, 2), 4, 100)


def test_parts_of_a_relay_are_shared_as_the_whole_is() -> None:
    def shared(*distances: int) -> SetSummary:
        parts = [{"distance": own, "do": "kick", "effort": "steady"} for own in distances]
        return summed({"reps": 1, "parts": parts, "team": "relay-of-four"})

    assert (shared(100, 100).misfits, shared(100, 100).distance.value) == ((), 50)
    # 15 m of each end between the walls
    (found,) = shared(60, 140).misfits
    assert (found.why, found.part, found.distance) == (Unfit.CHANGES, 0, 60)


def test_a_dive_takes_the_climb_out_where_no_rest_covers_it() -> None:
    fifty = target(effort="steady").seconds

    def spent(**more: Any) -> float:
        (timed,) = summed(reps(1, 50, start="dive", **more)).clocks["osprey-1"].reps
        assert timed.clock is not None
        return timed.clock.value

    assert spent() == pytest.approx(fifty + 20)
    assert spent(rest=10) == 5 * -(-(fifty + 20) // 5)
    assert spent(rest=60) == 5 * -(-(fifty + 60) // 5)


def test_a_sendoff_that_leaves_no_time_to_climb_out_is_too_tight() -> None:
    fifty = target(effort="steady").seconds
    run = summed(reps(2, 50, start="dive", sendoff=fifty + 15)).clocks["osprey-1"]
    (tight,) = too_tight(run, clock())
    assert tight.least_rest_s == 20
    plain = summed(reps(2, 50, sendoff=fifty + 15)).clocks["osprey-1"]
    assert too_tight(plain, clock()) == []


def test_dangers_of_start_partner_and_team_stand_in_the_brief() -> None:
    summary = summed(
        reps(1, 100, start="dive", team="relay-of-four"), reps(1, 50, partner="by-turns")
    )
    (line,) = (line for line in summary.brief if "starts" in line.ids)
    words = {("vocabulary", id) for id in ("starts", "teams", "partners")}
    assert words <= set(line.keys)


DIVED, BY_TURNS, RELAY = {"start": "dive"}, {"partner": "by-turns"}, {"team": "relay-of-four"}


@pytest.mark.parametrize(
    ("words", "swimmers", "turns", "ready_s", "lists"),
    [
        ({}, 1, 1, 0, []),
        (DIVED, 1, 1, 20, ["starts"]),
        (BY_TURNS, 1, 2, 0, ["partners"]),
        ({"partner": "alongside"}, 1, 1, 0, []),
        (RELAY, 4, 4, 0, ["teams"]),
        # of each four, who swim a quarter, two pairs by turns
        ({**DIVED, **BY_TURNS, **RELAY}, 4, 8, 20, ["starts", "partners", "teams"]),
    ],
)
def test_what_the_words_of_an_item_come_to(words, swimmers, turns, ready_s, lists) -> None:  # type: ignore[no-untyped-def]
    items = with_manners(structure_items([reps(1, 100, **words)]), world().vocabularies)
    hazards = tuple((HAZARD, name) for name in lists)
    assert [item.manner for item in items] == [Manner(swimmers, turns, ready_s, hazards)]  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("manner", "printed"),
    [
        (Manner(), None),
        (Manner(ready_s=1), "1 s back to the start"),
        (Manner(turns=3), "2 others' turns × 45 s swum"),
        (Manner(turns=2, ready_s=20), "1 others' turns × 45 s swum"),  # back before the partner is
        (Manner(turns=2, ready_s=45), "1 others' turns × 45 s swum"),
        (Manner(turns=2, ready_s=50), "50 s back to the start"),
    ],
)
def test_what_goes_by_before_one_starts_again_as_it_is_printed(manner, printed) -> None:  # type: ignore[no-untyped-def]
    (laid,) = rep()
    laid = replace(laid, item=replace(laid.item, manner=manner))
    wait = wait_after(laid, Known(45, "swum", "s"))
    others = others_turns(laid, Known(45, "swum", "s"))
    assert (wait and formula(getattr(wait, "inner", wait))) == printed
    assert others is None or (others.what, others.unit) == ("while the others go", "s")


def test_a_start_in_rounds_and_in_one_of_them_sends_one_back() -> None:
    # 50 on the back at steady, then 20 s until one is back at the start
    steady = 47.2 / 0.8
    inside = {"rounds": 2, "items": [reps(1, 50, start="dive")]}
    last = {"rounds": 2, "items": [reps(1, 50, by_round={"last": {"start": "dive"}})]}
    for item, waits in ((inside, 20 + 20), (last, 20)):
        found = summed(item).clocks["osprey-1"].clock
        assert found is not None and found.value == pytest.approx(2 * steady + waits)


def test_a_time_to_hold_stands_beside_the_target_and_changes_nothing() -> None:
    asked = summed(reps(6, 50, aim="0:38.0")).clocks["osprey-1"]
    plain = summed(reps(6, 50)).clocks["osprey-1"]
    assert (asked.clock, asked.work) == (plain.clock, plain.work)
    (row,) = item_rows(asked)
    assert row.aim is not None and row.target is not None
    assert (row.aim.value, row.target.value) == (38, plain.reps[0].target_s)
    own = summed(reps(6, 50, aim={"heron-1": 50})).clocks["osprey-1"]
    assert item_rows(own)[0].aim is None


def test_the_last_touch_of_a_relay_is_that_of_its_last_swimmer() -> None:
    fifty = target(effort="steady").seconds
    run = summed(reps(1, 200, team="relay-of-four")).clocks["osprey-1"]
    # 14 heads in 3 lanes are 5 in the fullest: two of them leave in the first leg, 10 s apart on
    # the back.
    assert run.last_touch is not None
    assert run.last_touch.value == pytest.approx(4 * fifty + 10)


def test_a_sendoff_that_does_not_hold_the_partners_turn_does_not_fit() -> None:
    fifty = target(effort="steady").seconds
    (unfit,) = summed(reps(2, 50, partner="by-turns", sendoff=fifty + 20)).clocks["osprey-1"].unfit
    assert unfit.done_s == pytest.approx(2 * fifty)
    assert unfit.fits_s >= 2 * fifty
    assert summed(reps(2, 50, partner="by-turns", sendoff=150)).clocks["osprey-1"].unfit == ()
