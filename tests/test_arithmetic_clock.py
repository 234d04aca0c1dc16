"""Sets on the clock: send-offs, rest, gear changes, load; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from arithmetic_strategies import middle
from arithmetic_world import (
    DRILLS,
    EFFORTS,
    LONG,
    PIECES,
    SCALE,
    SHORT,
    YARDS,
    catalogue,
    clock,
    events,
    group,
    rep,
    swim_set,
)

from almanac.arithmetic.clock import suggest
from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.expand import expand
from almanac.arithmetic.gear_changes import gear_changes
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Known
from almanac.model.manner import Manner
from almanac.model.structure import structure_items
from almanac.report.working_text import formula

FORTY_FIVE = {"kick-50": 45 * 0.87}  # a group that holds 45 s over 50 at strong


def run(*written, of=None, course=SHORT):
    """Items, as an entry writes them, on the clock of one lane group."""
    return clock(of, course).run(events(*written))


def item(reps=1, distance=50, do="kick", effort="strong", **more):
    return {"reps": reps, "distance": distance, "do": do, "effort": effort, **more}


# the definition in check-values.md, section 16
def test_eight_fifties_on_the_minute_are_eight_minutes():
    found = run(item(8, sendoff="1:00"), of=group(FORTY_FIVE))
    assert found.clock.value == 480
    assert [timed.rest_s for timed in found.reps] == pytest.approx([15] * 8)
    assert found.density.value == pytest.approx(0.75)
    assert found.work.value == pytest.approx(360) and found.rest.value == pytest.approx(120)
    assert found.rated_work.value == pytest.approx(
        6 * 6
    )  # 6 minutes of work at the middle of strong, 6


LADDER = [  # the example of design/entries.md
    {
        "rounds": 2, "pause_between": "1:00", "items": [
            item(6, do="kick", effort={"descend": ["steady", "fast"]},
                 sendoff={"osprey-1": "1:05", "osprey-2": "1:10"}),
            {"reps": 2, "rest": "0:20", "parts": [
                {"distance": 25, "do": "kick", "effort": "strong"},
                {"distance": 50, "do": "backstroke", "effort": {"build": ["strong", "fast"]}},
            ]},
        ],
    },
    item(1, 100, "backstroke", "easy"),
]  # fmt: skip


def test_ladder_on_the_back_by_hand_for_osprey_1():
    # Kick tests 25 in 22.0 s, 50 in 47.2 s, 200 in 210 s. 50 is its own test; 75 lies between 50
    # and 200: exponent ln(210 / 47.2) / ln 4 = 1.07677, 47.2 × 1.5 ^ 1.07677 = 73.0383 s.
    # Backstroke 100 in 69 s, 400 in 312 s: exponent ln(312 / 69) / ln 4 = 1.08844, 75 in 50.4500 s.
    found = run(*LADDER)
    descend, parted, last = found.reps[:6], found.reps[6:8], found.reps[16]
    # 47.2 / 0.80 = 59.0000 down to 47.2 / 0.94 = 50.2128 in five steps of 1.7574.
    assert [t.target_s for t in descend] == pytest.approx(
        [59.0000, 57.2426, 55.4851, 53.7277, 51.9702, 50.2128], abs=1e-4
    )
    assert [t.sendoff_s for t in descend] == [65] * 6
    assert [t.rest_s for t in descend] == pytest.approx(
        [6.0000, 7.7574, 9.5149, 11.2723, 13.0298, 14.7872], abs=1e-4
    )
    # Kick 25 at the pace of 75 at strong: 73.0383 / 3 / 0.87 = 27.9840. Backstroke 50 at the pace
    # of 75 is 33.6333; building
    # from / 0.87 = 38.6590 to / 0.94 = 35.7801: 38.6590 × 35.7801 × ln(38.6590 / 35.7801) / 2.8789
    # = 37.1824. Sum 65.1665.
    assert [t.target_s for t in parted] == pytest.approx([65.1665] * 2, abs=1e-4)
    # + 20 s rest = 85.1665, up to the next five: 90, which leaves 24.8335.
    assert [t.clock.value for t in parted] == [90, 90]
    assert [t.rest_s for t in parted] == pytest.approx([24.8335] * 2, abs=1e-4)
    # 100 easy: 69 / 0.72 = 95.8333, straight on.
    assert (
        last.target_s == last.clock.value == pytest.approx(95.8333, abs=1e-4) and last.rest_s == 0
    )
    # 2 × (6 × 65 + 2 × 90) + one pause of 60 + 95.8333 = 1295.8333: 21:36.
    assert found.clock.value == pytest.approx(1295.8333, abs=1e-4)
    # 2 × (327.6383 + 2 × 65.1665) + 95.8333 = 1011.7758 of work.
    assert found.work.value == pytest.approx(1011.7758, abs=1e-4)
    assert found.rest.value == pytest.approx(284.0575, abs=1e-4)
    assert found.density.value == pytest.approx(0.780792, abs=1e-6)
    # Minutes × rating, ratings 4, 4.8, ... 8 down the descend; 6 in the kick, 7 in the build, 1.5
    # in the last 100.
    assert found.rated_work.value == pytest.approx(95.6488, abs=1e-4)
    assert found.changes == () and found.missing == ()


TO_A_FIVE = [
    (1, 50),
    (4.9, 50),
    (5, 50),
    (5.002, 50),
    (5.004, 55),
    (10, 55),
    ("0:14", 60),
    (15.001, 60),
]


@pytest.mark.parametrize(("rest", "clock_s"), TO_A_FIVE)
def test_plain_rest_leaves_on_a_five(
    rest, clock_s
):  # 45 s + rest, up to the next five; a thousandth of a step is forgiven
    (timed,) = run(item(rest=rest), of=group(FORTY_FIVE)).reps
    assert timed.clock.value == clock_s and timed.sendoff is None


@pytest.mark.parametrize(
    ("effort", "target_s", "wanted_s", "sendoff_s"),  # osprey's 50 kick is 47.2 s
    [
        ("easy", 65.5556, 10, 80),
        ("steady", 59.0000, 10, 70),
        ("strong", 54.2529, 15, 70),
        ("fast", 50.2128, 25.1064, 80),
        ("all-out", 47.2, 94.4, 145),
    ],
)
def test_suggested_sendoff(effort, target_s, wanted_s, sendoff_s):
    of = clock()
    (timed,) = of.run(rep(effort=effort, sendoff={"heron-1": 90})).reps
    assert timed.suggested and timed.sendoff_s == timed.clock.value == sendoff_s
    assert timed.target_s == pytest.approx(target_s, abs=1e-4)
    assert of.rest_for(timed.rep, timed.target, "wanted").value == pytest.approx(wanted_s, abs=1e-4)


BETWEEN = [  # rating of one 50 of 45 s at strong; least and wanted by hand
    # from easy (1.5) to steady (4): 2.75 is half way from 3 to 4, from 10 to 10
    ({"build": ["easy", "steady"]}, 3.5, 10),
    # from strong (6, 5 s and 15 s) to fast (8, a quarter and a half of the work): 7 is half way
    ({"build": ["strong", "fast"]}, (5 + 0.25 * 43.2444) / 2, (15 + 0.5 * 43.2444) / 2),
]


@pytest.mark.parametrize(("effort", "least", "wanted"), BETWEEN)
def test_rest_between_two_words_lies_between_their_rules(effort, least, wanted):
    # 39.15 s is the best 50; from / 0.87 = 45 to / 0.94 = 41.6489 building: 43.2971
    of = clock(group(FORTY_FIVE))
    (timed,) = of.run(rep(effort=effort)).reps
    rests = [of.rest_for(timed.rep, timed.target, which).value for which in ("least", "wanted")]
    assert rests == pytest.approx([least, wanted], abs=0.02)


@pytest.mark.parametrize(
    ("ready_s", "least", "wanted"), [(0, 5, 15), (3, 5, 15), (12, 12, 15), (40, 40, 40)]
)  # seconds until one is back at the start, beside 5 s and 15 s at strong
def test_no_rest_is_shorter_than_the_way_back_to_the_start(ready_s, least, wanted):
    of = clock()
    (laid,) = rep()
    back = replace(laid, item=replace(laid.item, manner=Manner(ready_s=ready_s)))
    timed = of.rep(back)
    rests = [of.rest_for(back, timed.target, which).value for which in ("least", "wanted")]
    assert rests == [least, wanted]


def test_an_easy_four_hundred_does_not_want_eighty_seconds():
    of = clock()
    for metres, wanted in ((100, 20), (150, 30), (400, 30)):
        (timed,) = of.run(rep(distance=metres, effort="easy")).reps
        assert of.rest_for(timed.rep, timed.target, "wanted").value == wanted


def test_a_held_rep_wants_rest_by_its_time():
    # a minute counts as 50 m: 30 s at strong want half of 15 s; at fast half the work
    for effort, wanted in (("strong", 7.5), ("fast", 15)):
        (laid,) = events({"reps": 1, "time": 30, "do": "upright", "effort": effort})
        of = clock()
        (timed,) = of.run((laid,)).reps
        assert of.rest_for(timed.rep, timed.target, "wanted").value == pytest.approx(wanted)


def test_one_suggested_sendoff_an_item_is_what_its_slowest_rep_needs():
    # Osprey's 50 kick, descend easy to strong: 65.56 + 10, 59.90 at 3.75 (a tenth from steady to
    # easy) + 10, 54.25 + 15, each up to a five: 80, 70, 70. They differ by less than 30 s: one, 80.
    found = run(item(3, effort={"descend": ["easy", "strong"]}, sendoff={"heron-1": 90}))
    assert [timed.sendoff_s for timed in found.reps] == [80] * 3
    assert [timed.clock.value for timed in found.reps] == [80] * 3 and found.clock.value == 240
    # strong to all-out: 54.25 + 15 = 69.25; 47.2 + 94.4 = 141.6: 70 and 145, each its own
    far = run(item(2, effort={"descend": ["strong", "all-out"]}, sendoff={"heron-1": 90}))
    assert [timed.sendoff_s for timed in far.reps] == [70, 145] and far.clock.value == 215


@pytest.mark.parametrize(
    ("heads", "sendoff_s"),
    [(1, 70), (2, 120), (3, 180)],  # alone no gap is kept; heads × 60 s, or 54.25 s + 15 s of rest
)
def test_a_suggested_sendoff_lets_the_last_leave_before_the_leader_goes_again(heads, sendoff_s):
    found = run(item(sendoff={"heron-1": 90}), of=group(heads=heads, lanes=1, gap=60))
    assert found.reps[0].sendoff_s == sendoff_s
    alone = run(item(sendoff={"heron-1": 90}), of=group(heads=1, lanes=1, gap=100))
    assert alone.reps[0].sendoff_s == 70


def test_the_clock_and_the_last_touch_as_they_are_printed():
    four = group(FORTY_FIVE, heads=4, lanes=1, gap=10)
    found = run(
        item(2, sendoff=60), {"pause": 40}, item(gear=["fins"], sendoff=90), {"pause": 5}, of=four
    )
    assert formula(found.clock) == "2 × 1:00 send-off + 40 s pause + 1:30 send-off + 5 s pause"
    assert found.clock.value == 255
    # the last rep is left on after 2 × 60 and 40 s; three more leave 10 s apart
    start, tail, swum = found.last_touch.terms
    assert start.value == 160 and start.what == "leader's last start"
    assert formula(start.inner) == "2 × 1:00 send-off + 40 s pause"
    assert (tail.value, formula(tail)) == (30, "3 behind the leader × 10 s gap")
    assert swum.value == found.reps[-1].target_s
    # fins take 20 s to put on; no pause covers them
    bare = run(item(2, sendoff=60), item(gear=["fins"], sendoff=90), of=four)
    assert formula(bare.clock) == "2 × 1:00 send-off + 1:30 send-off + 20 s gear change"
    assert bare.last_touch.terms[0].value == 2 * 60 + 20
    rested = run(item(2, rest=20), of=four)
    assert rested.reps[0].clock.value == 65 and rested.reps[0].clock.what == "with rest"
    assert formula(rested.reps[0].clock.inner).endswith("+ 20 s rest, up to the next 5 s")


def test_the_clocks_of_a_catalogue_are_made_once_and_know_the_level_and_the_day():
    known = catalogue()
    timing = Timing(known, day=date(2026, 9, 1))
    own = timing.clock("osprey-1", SHORT)
    assert own is timing.clock("osprey-1", SHORT) and own is timing.clocks.clock("osprey-1", SHORT)
    assert (own.group, own.course, own.pacer.level) == ("osprey-1", SHORT, "performing")
    assert own.pacer.paces.day == date(2026, 9, 1) and timing.scale is own.pacer.scale
    assert timing.clock("osprey-1", LONG).course == LONG
    few = group(heads=2)
    there = timing.clocks.clock("osprey-1", SHORT, few)
    assert there.pacer.paces.group is few and own.pacer.paces.group is not few
    assert (there.group, there.pacer.level) == ("osprey-1", "performing")
    assert Timing(known, timing.clocks).clocks is timing.clocks
    nobody = replace(timing.clocks, squads={})
    assert nobody.clock("osprey-1", SHORT).pacer.level == ""
    with pytest.raises(KeyError):
        timing.clock("osprey-9", SHORT)


def test_no_sendoff_is_suggested_for_an_item_of_which_a_rep_is_not_known():
    known, unknown = Known(60, "", "s"), None
    assert suggest([known, unknown], 30) == [None, None]


def test_reps_that_want_half_a_minute_more_or_less_go_on_their_own_send_offs():
    short, middle, long = (Known(seconds, "", "s") for seconds in (60, 89, 90))
    assert suggest([short, long], 30) == [short, long]  # from 30 s on
    assert suggest([short, middle], 30) == [middle, middle]
    assert suggest([middle, short], 30) == [middle, middle]


def test_a_hundred_wants_twice_the_rest_of_a_fifty_and_yards_less():
    for course, metres in ((SHORT, 100), (LONG, 100), (YARDS, 91.44)):
        of = clock(course=course)
        (timed,) = of.run(rep(distance=100)).reps
        assert of.rest_for(timed.rep, timed.target, "wanted").value == pytest.approx(
            15 * metres / 50
        )


@pytest.mark.parametrize(
    ("metric", "in_yards"), [("1:00", 55), ("1:05", 60), ("1:20", 75), (5, 5), ("5:00", 275)]
)
def test_sendoffs_laid_into_yards_go_up_to_a_five(metric, in_yards):  # 60 × 0.9144 = 54.864
    laid = lay_in_course(swim_set(item(sendoff=metric)), YARDS)
    (timed,) = clock(course=YARDS).run(expand(laid.items, DRILLS, SCALE)).reps
    assert timed.sendoff_s == in_yards and not timed.suggested


PAUSE = {"pause": 20}


@pytest.mark.parametrize(
    ("written", "changes"),  # for each: before which rep, on, off, cost, covered, at the far end
    [
        ([item(4)], []),
        ([item(2, gear=["socks"])], []),  # on before the set
        ([item(2, gear=["board", "fins"]), item(2, gear=["fins", "board"])], []),
        ([item(2), item(2, gear=["socks"])], [(2, {"socks"}, set(), 30, 0, False)]),
        ([item(2, gear=["socks"]), item(2)], [(2, set(), {"socks"}, 30, 0, False)]),
        ([item(1, gear=["fins"]), item(1, gear=["socks", "chute"])],
         [(1, {"socks", "chute"}, {"fins"}, 45, 0, False)]),
        ([item(1), PAUSE, item(1, gear=["socks"])], [(1, {"socks"}, set(), 30, 20, False)]),
        ([item(1), PAUSE, PAUSE, item(1, gear=["socks"])], [(1, {"socks"}, set(), 30, 40, False)]),
        ([item(1, 25), item(1, 25, gear=["fins"])], [(1, {"fins"}, set(), 20, 0, True)]),
        ([item(3, 25), item(1, 75), item(1, gear=["fins"])], [(4, {"fins"}, set(), 20, 0, False)]),
        # what the drill needs
        ([item(1, do="socks-kick"), item(1)], [(1, set(), {"socks"}, 30, 0, False)]),
        ([{"rounds": 2, "pause_between": 40, "items": [item(1), item(1, gear=["socks"])]}],
         [(1, {"socks"}, set(), 30, 0, False), (2, set(), {"socks"}, 30, 40, False),
          (3, {"socks"}, set(), 30, 0, False)]),
    ],
)  # fmt: skip
def test_gear_changes(written, changes):
    laid = events(*written)
    numbers = {
        id(event): number
        for number, event in enumerate(event for event in laid if hasattr(event, "pieces"))
    }
    found = list(gear_changes(laid, PIECES, SHORT))
    assert [
        (numbers[id(c.before)], c.on, c.off, c.cost_s, c.covered_s, c.at_far_end) for c in found
    ] == changes
    plain = sum(event.seconds for event in laid if not hasattr(event, "pieces")) + sum(
        t.clock.value for t in run(*written).reps
    )
    assert run(*written).clock.value == pytest.approx(
        plain + sum(max(0, cost - covered) for *_, cost, covered, _ in changes)
    )


INSIDE = [  # gear and rest of two parts of one rep, seconds that it costs: fins 20, socks 30
    ({"gear": ["fins"]}, {}, 20),
    ({}, {"gear": ["socks"]}, 30),
    ({"gear": ["fins"]}, {"gear": ["socks"]}, 30),
    ({"gear": ["fins"]}, {"gear": ["fins"]}, 0),
    ({"gear": ["fins"], "rest": 15}, {}, 15 + 5),  # the rest covers what it can
    ({"gear": ["fins"], "rest": 25}, {}, 25),
    ({"gear": ["fins"]}, {"in_passing": True}, 0),
]


@pytest.mark.parametrize(("first", "second", "costs_s"), INSIDE)
def test_gear_inside_a_rep_costs_its_change(first, second, costs_s):
    half = {"distance": 25, "do": "kick", "effort": "strong"}
    written = {"reps": 1, "parts": [{**half, **first}, {**half, **second}]}
    laid = expand(structure_items([written]), DRILLS, SCALE, PIECES)
    (timed,) = clock().run(laid).reps
    assert timed.clock.value == pytest.approx(timed.target_s + costs_s)
    assert timed.done_s == pytest.approx(timed.target_s + costs_s)
    on_a_sendoff = {**written, "sendoff": 120}
    (timed,) = clock().run(expand(structure_items([on_a_sendoff]), DRILLS, SCALE, PIECES)).reps
    assert timed.rest_s == pytest.approx(120 - timed.target_s - costs_s)


def test_gear_that_came_off_inside_a_rep_does_not_come_off_again_after_it():
    half = {"distance": 25, "do": "kick", "effort": "strong"}
    parted = {"reps": 2, "parts": [{**half, "gear": ["fins"]}, half]}
    laid = expand(structure_items([parted, item(1)]), DRILLS, SCALE, PIECES)
    assert not list(gear_changes(laid, PIECES, SHORT))
    (change,) = gear_changes(
        expand(structure_items([parted, item(1, gear=["fins"])]), DRILLS, SCALE, PIECES),
        PIECES,
        SHORT,
    )
    assert (change.on, change.off) == ({"fins"}, set())
    # and what goes on before a rep is what it begins with
    (change,) = gear_changes(events(item(1), parted), PIECES, SHORT)
    assert (change.on, change.off) == ({"fins"}, set())


def test_no_number_leaves_the_totals_out_and_says_why_once():
    found = run(item(4, do="board-kick", sendoff=60), item(2, do="float", rest=10), item(1))
    assert (
        found.clock,
        found.work,
        found.rated_work,
        found.rest,
        found.density,
    ) == (None,) * 5
    assert found.last_touch is None
    assert found.missing == (
        NoNumber(Because.NOT_TESTED, "board-kick", "board-100"),
        NoNumber(Because.NO_PACE_RULE, "float"),
    )
    assert [timed.clock and timed.clock.value for timed in found.reps[:5]] == [60] * 4 + [None]
    on_sendoffs = run(item(4, do="board-kick", sendoff=60))
    assert on_sendoffs.clock.value == 240 and on_sendoffs.work is None
    assert (on_sendoffs.density, on_sendoffs.rest) == (None, None)
    assert [timed.rest_s for timed in on_sendoffs.reps] == [None] * 4


@pytest.mark.parametrize(("sendoff", "rest_s"), [(47, 8), (45, 0)])
def test_rest_down_to_none(sendoff, rest_s):
    found = run(item(4, sendoff=sendoff), of=group(FORTY_FIVE))
    assert found.rest.value == pytest.approx(rest_s, abs=1e-9) and not found.unfit


def test_a_set_that_does_not_fit_has_a_clock_and_no_rest():
    # 45 s at strong on 0:40; 45 s + the least rest of 5 s is 50 s
    found = run(item(4, sendoff=40), item(2, sendoff=60), of=group(FORTY_FIVE))
    assert found.clock.value == 280
    assert (found.work, found.rest, found.density, found.rated_work) == (None,) * 4
    assert [timed.rest_s for timed in found.reps[:4]] == [None] * 4
    assert found.reps[4].rest_s == pytest.approx(15)
    (unfit,) = found.unfit
    assert (unfit.timed.rep.number, unfit.sendoff_s, unfit.fits_s) == (1, 40, 50)
    assert unfit.done_s == pytest.approx(45)


def test_the_worst_of_an_item_is_told_and_of_each_item_its_own():
    # 45 s at strong: one second too long for 0:44, fifteen for 0:30; 25 m in 21.29 s
    short = item(1, 25, sendoff=20)
    alone = group(FORTY_FIVE, heads=1, lanes=1)
    found = run(item(3, sendoff=[44, 30, 44]), short, of=alone)
    first, second = found.unfit
    assert (first.timed.rep.number, first.sendoff_s, first.fits_s) == (2, 30, 50)
    assert first.done_s == pytest.approx(45)
    # 50 m at 45 s and 100 m by the single exponent 1.08 take 25 m in 45 / 2 ^ 1.08 = 21.29 s
    assert second.timed.rep.path == ("items", 1) and second.done_s == pytest.approx(45 / 2**1.08)
    assert second.fits_s == 25  # 21.29 + 2.5 s of rest


def test_a_rep_without_a_time_is_not_the_one_that_does_not_fit():
    turns = item(3, do={"rotate": ["float", "kick", "float"]}, sendoff=40)
    (unfit,) = run(turns, of=group(FORTY_FIVE)).unfit
    assert (unfit.timed.rep.number, unfit.fits_s) == (2, 50)


def test_a_wave_waits_for_those_before_it_as_it_is_printed():
    four = group(FORTY_FIVE, heads=4, lanes=1, gap=10)
    found = run(item(2, waves={"number": 2}, sendoff=120), of=four)
    # the second of two waves goes half the send-off after the leader, its second swimmer 10 s later
    assert [term.value for term in found.last_touch.terms] == pytest.approx([120, 60, 10, 45])
    assert formula(found.last_touch.terms[1]) == "0.5 waves before the last × 2:00 send-off"


def test_the_send_off_that_fits_fits_every_rep_of_the_item():
    # 45 s at strong, 41.65 s at fast and a quarter of it as rest, 52.06 s: 0:55
    found = run(item(2, effort={"descend": ["strong", "fast"]}, sendoff=44), of=group(FORTY_FIVE))
    (unfit,) = found.unfit
    assert (unfit.timed.rep.number, unfit.fits_s) == (1, 55)
    again = run(item(2, effort={"descend": ["strong", "fast"]}, sendoff=55), of=group(FORTY_FIVE))
    assert not again.unfit and all(timed.rest_s > 5 for timed in again.reps)


def test_the_far_end_is_that_of_the_wall_passed_last():  # after so many metres of a 25 m pool
    ends = {}
    for metres in (10, 24, 25, 30, 49, 50, 60, 75, 100):
        (change,) = gear_changes(events(item(1, metres), item(1, gear=["fins"])), PIECES, SHORT)
        ends[metres] = change.at_far_end
    assert [metres for metres, far in ends.items() if far] == [25, 30, 49, 75]


@pytest.mark.parametrize(("course", "at_far_end"), [(LONG, True), (SHORT, False), (YARDS, False)])
def test_a_fifty_ends_at_the_far_end_of_a_long_pool(course, at_far_end):
    (change,) = gear_changes(events(item(1), item(1, gear=["fins"])), PIECES, course)
    assert change.at_far_end == at_far_end


def test_middle_of_each_word_is_its_own():
    assert [SCALE.word_at(middle(word)) for word in EFFORTS] == list(EFFORTS)


def test_a_time_to_hold_is_the_coach_s_own():
    asked, for_others, none = run(item(aim=40), item(aim={"heron-1": 40}), item()).reps
    assert formula(asked.aim) == "40 s asked for"
    assert (for_others.aim, none.aim) == (None, None)


def test_only_a_sendoff_that_had_to_be_found_is_suggested():
    resting, straight_on, named, found = run(
        item(rest=10), item(), item(sendoff=90), item(sendoff={"heron-1": 90})
    ).reps
    assert [resting.suggested, straight_on.suggested, named.suggested] == [False] * 3
    assert found.suggested


def test_reps_alike_are_worked_out_once():
    first, second, faster = run(
        item(2, effort="easy", rest=10), item(1, effort="fast", rest=10)
    ).reps
    assert first.target is second.target and first.rep is not second.rep
    assert faster.target is not first.target


def test_nothing_to_swim_has_no_density():
    found = run()
    assert (found.clock.value, found.work.value, found.density) == (0, 0, None)
