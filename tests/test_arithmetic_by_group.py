"""Send-offs for each rep, and what differs by lane group and by round: totals worked out by hand,
and against a plain reckoning that walks the written data itself.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_world import LONG, SHORT, YARDS, catalogue, group, swim_set
from hypothesis import given, settings
from hypothesis import strategies as st
from shared import examples

from almanac.arithmetic.summary import SetSummary, groups_meant, summarise
from almanac.arithmetic.timing import Timing
from almanac.model import variants
from almanac.model.catalogue import Catalogue
from almanac.units import Course, parse_time


def crawl(reps: int, distance: int, **more: Any) -> dict[str, Any]:
    return {"reps": reps, "distance": distance, "do": "crawl", "effort": "steady", **more}


def lanes(*names: str) -> Catalogue:
    """A club whose lane groups swim 100 m of front crawl in 1:20."""
    known = catalogue()
    club = known.club
    crawling = {name: group({"crawl-100": "1:20.0"}) for name in names}
    entries = {**known.entries, ("club", "club"): replace(club, lane_groups=crawling)}
    return Catalogue(entries, {}, {})


def added_up(*items: dict[str, Any], course: Course | None = None) -> SetSummary:
    return summarise(Timing(lanes("quick", "slow", "third")), swim_set(*items), course)


def clock(summary: SetSummary, name: str) -> float:
    found = summary.clocks[name].clock
    assert found is not None
    return found.value


def test_a_send_off_for_each_rep():
    # 1:40 + 1:35 + 1:30 + 1:25 = 6:10
    found = added_up(crawl(4, 100, sendoff=["1:40", "1:35", "1:30", "1:25"]))
    assert clock(found, "quick") == 370
    assert [rep.sendoff_s for rep in found.clocks["quick"].reps] == [100, 95, 90, 85]


def test_a_send_off_for_each_rep_by_lane_group():
    # quick 1:40 + 1:35 = 3:15; slow 2 × 1:50 = 3:40; the third has none and gets the suggested one
    of = {"quick": ["1:40", "1:35"], "slow": "1:50"}
    found = added_up(crawl(2, 100, sendoff=of))
    assert (clock(found, "quick"), clock(found, "slow")) == (195, 220)
    assert all(rep.suggested for rep in found.clocks["third"].reps)


def test_send_offs_for_each_rep_move_to_a_pool_of_yards():
    # 100 s × 0.9144 = 91.44, up to 95; 95 s × 0.9144 = 86.868, up to 90
    found = added_up(crawl(2, 100, sendoff=["1:40", "1:35"]), course=YARDS)
    assert [rep.sendoff_s for rep in found.clocks["quick"].reps] == [95, 90]


def test_lanes_that_swim_another_set_in_the_same_time():
    # quick 6 × 100 on 1:30 = 9:00; slow 5 × 100 on 1:45 = 8:45; third 8 × 50 on 1:05 = 8:40
    by_group = {
        "slow": {"reps": 5, "sendoff": "1:45"},
        "third": {
            "reps": 8,
            "distance": 50,
            "do": "backstroke",
            "sendoff": "1:05",
            "gear": ["fins"],
        },
    }
    found = added_up(crawl(6, 100, sendoff="1:30", by_group=by_group))
    assert [clock(found, name) for name in ("quick", "slow", "third")] == [540, 525, 520]
    of = {name: found.of(name) for name in found.swum}
    assert {name: swum.distance.value for name, swum in of.items()} == {
        "quick": 600, "slow": 500, "third": 400,
    }  # fmt: skip
    assert {name: len(swum.reps) for name, swum in of.items()} == {
        "quick": 6, "slow": 5, "third": 8,
    }  # fmt: skip
    assert of["third"].by["stroke"] == {"backstroke": 400} and of["third"].gear == ("fins",)
    assert of["quick"].by["gear"] == {"none": 600} and found.gear == ("fins",)
    assert found.differs and len(found.ways) == 3


def test_reps_that_a_group_leaves_out_cost_it_nothing():
    # quick 2 × 100 + 4 × 50; slow 2 × 100 and none of the others
    items = (
        crawl(2, 100, sendoff="1:30"),
        crawl(4, 50, sendoff="1:00", by_group={"slow": {"reps": 0}}),
    )
    found = added_up(*items)
    assert (clock(found, "quick"), clock(found, "slow")) == (420, 180)
    assert found.of("slow").distance.value == 200 and found.of("quick").distance.value == 400


def test_groups_that_do_the_same_share_it():
    by_group = {"slow": {"reps": 5}, "third": {"reps": 5}}
    found = added_up(crawl(6, 100, rest="0:10", by_group=by_group))
    assert found.of("slow") is found.of("third") and found.of("quick") is found.first
    assert found.of("nobody") is found.first and found.of(None) is found.first


def test_a_set_is_meant_for_whom_something_is_different():
    own = swim_set(crawl(6, 100, sendoff={"quick": "1:30"}, by_group={"third": {"reps": 5}}))
    assert groups_meant(lanes("quick", "slow", "third"), own) == ("quick", "third")


def test_gear_and_effort_by_round():
    # three rounds of 2 × 50: the first in fins, the last fast
    items = {
        "rounds": 3,
        "by_round": {"1": {"gear": ["fins"]}, "3": {"effort": "fast"}},
        "items": [crawl(2, 50, sendoff="1:00")],
    }
    found = added_up(items).first
    assert found.by["gear"] == {"fins": 100, "none": 200}
    assert found.by["effort"] == {"steady": 200, "fast": 100}
    assert [rep.rounds for rep in found.reps] == [(1,), (1,), (2,), (2,), (3,), (3,)]


def test_one_item_alone_by_round_and_the_last_however_many():
    # 2 rounds of 2 × 50 + 1 × 100; the last round has 4 × 50 on 0:55: 2 × 60 + 120 + 4 × 55 + 120
    items = [
        crawl(2, 50, sendoff="1:00", by_round={"last": {"reps": 4, "sendoff": "0:55"}}),
        crawl(1, 100, sendoff="2:00"),
    ]
    found = added_up({"rounds": 2, "items": items})
    assert clock(found, "quick") == 580
    assert found.distance.value == 500 and found.lengths == 20


def test_a_round_that_differs_must_end_at_a_wall_too():
    items = {"rounds": 2, "items": [crawl(1, 100, by_round={"2": {"distance": 75}})]}
    found = added_up(items, course=LONG)
    assert [(misfit.path, misfit.distance) for misfit in found.misfits] == [
        (("items", 0, "items", 0), 75)
    ]


# ---- against a plain reckoning of the written data

REPS = st.integers(1, 4)
TIME = st.sampled_from(["0:50", "1:00", "1:15", "1:40", "2:05"])
GROUPS = ("quick", "slow", "third")


@st.composite
def sendoffs(draw: st.DrawFn, reps: int) -> Any:
    def of_one() -> Any:
        each = st.lists(TIME, min_size=reps, max_size=reps)
        return draw(TIME | each) if reps > 1 else draw(TIME)

    return {name: of_one() for name in GROUPS} if draw(st.booleans()) else of_one()


@st.composite
def changes(draw: st.DrawFn) -> dict[str, Any]:
    reps, found = draw(st.integers(0, 5)), {}
    if draw(st.booleans()):
        found |= {"reps": reps, "sendoff": draw(TIME)}
    if draw(st.booleans()):
        found["distance"] = draw(st.sampled_from([25, 50, 75]))
    if draw(st.booleans()):
        found["gear"] = draw(st.sampled_from([[], ["fins"], ["board", "fins"]]))
    return found or {"do": "backstroke"}


@st.composite
def items(draw: st.DrawFn, in_round: bool = False) -> dict[str, Any]:
    if not in_round and draw(st.booleans()):
        rounds = draw(st.integers(1, 3))
        found: dict[str, Any] = {
            "rounds": rounds,
            "items": draw(st.lists(items(in_round=True), min_size=1, max_size=3)),
        }
        if draw(st.booleans()):
            found["pause_between"] = 30
        if draw(st.booleans()):
            found["by_round"] = {draw(st.sampled_from(["1", "last"])): {"gear": ["fins"]}}
        return found
    reps = draw(REPS)
    found = crawl(reps, draw(st.sampled_from([25, 50, 100])), sendoff=draw(sendoffs(reps)))
    if draw(st.booleans()):
        found["by_group"] = {draw(st.sampled_from(GROUPS)): draw(changes())}
    if in_round and draw(st.booleans()):
        found["by_round"] = {draw(st.sampled_from(["1", "2", "last"])): draw(changes())}
    return found


def plainly(
    written: list[dict[str, Any]], name: str
) -> list[tuple[int, str, tuple[str, ...], float]]:
    """Every rep of a lane group as (distance, drill, gear, what it takes): breaks as no
    distance.
    """
    out: list[tuple[int, str, tuple[str, ...], float]] = []

    def reps(item: dict[str, Any], said: list[dict[str, Any]]) -> None:
        own = dict(item)
        for change in said:
            own |= change
        sendoff = own["sendoff"]
        sendoff = sendoff[name] if isinstance(sendoff, dict) else sendoff
        for number in range(own["reps"]):
            time = sendoff[min(number, len(sendoff) - 1)] if isinstance(sendoff, list) else sendoff
            gear = tuple(own.get("gear", ()))
            out.append((own["distance"], own["do"], gear, float(parse_time(time))))

    for item in written:
        if "rounds" not in item:
            reps(item, [item.get("by_group", {}).get(name, {})])
            continue
        for number in range(1, item["rounds"] + 1):
            is_last = number == item["rounds"]
            for inner in item["items"]:
                said = [inner.get("by_group", {}).get(name, {})]
                said += [
                    by["last"] if is_last and "last" in by else by.get(str(number), {})
                    for by in (item.get("by_round", {}), inner.get("by_round", {}))
                ]
                reps(inner, said)
            if item.get("pause_between") and not is_last:
                out.append((0, "", (), float(item["pause_between"])))
    return out


@given(written=st.lists(items(), min_size=1, max_size=4), name=st.sampled_from(GROUPS))
@settings(max_examples=examples(150, 2000), deadline=None)
def test_every_group_adds_up_to_the_plain_reckoning(
    written: list[dict[str, Any]], name: str
) -> None:
    found, wanted = added_up(*written), plainly(written, name)
    swum, run = found.of(name), found.clocks[name]
    reps = [rep for rep in wanted if rep[0]]
    assert [
        (rep.distance, rep.pieces[0].drill.id, tuple(sorted(rep.gear))) for rep in swum.reps
    ] == [rep[:3] for rep in reps]
    assert swum.distance.value == sum(rep[0] for rep in reps)
    waits = sum(change.uncovered_s for change in run.changes)
    assert clock(found, name) == pytest.approx(sum(rep[3] for rep in wanted) + waits)
    for split in swum.by.values():
        assert sum(split.values()) == swum.distance.value
    assert swum.course == SHORT


# ---- variants, A and B


def test_a_variant_that_groups_are_given() -> None:
    # A is the set as written, 6 × 100; B is 8 × 50 and no second item; slow has a send-off of its
    # own
    items = (
        crawl(6, 100, sendoff="1:30",
              by_variant={"B": {"reps": 8, "distance": 50, "sendoff": "1:00"}},
              by_group={"slow": {"sendoff": "1:10"}}),
        crawl(2, 100, sendoff="1:40", by_variant={"B": {"reps": 0}}),
    )  # fmt: skip
    own = replace(swim_set(*items), variants={"A": ("quick",), "B": ("slow", "third")})
    found = summarise(Timing(lanes("quick", "slow", "third")), own)
    assert [found.of(name).distance.value for name in ("quick", "slow", "third")] == [800, 400, 400]
    assert [clock(found, name) for name in ("quick", "slow", "third")] == [740, 560, 480]


def test_a_practice_gives_a_group_another_variant() -> None:
    items = crawl(6, 100, sendoff="1:30", by_variant={"B": {"reps": 4}, "C": {"reps": 5}})
    own = replace(swim_set(items), variants={"B": ("quick", "slow"), "C": ()})
    chosen = variants.given(own, {"slow": "C"})
    found = summarise(Timing(lanes("quick", "slow", "third")), chosen)
    assert [len(found.of(name).reps) for name in ("quick", "slow", "third")] == [4, 5, 6]
    assert variants.given(chosen) is chosen


def rounds(number: int, *items: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"rounds": number, "items": list(items), **more}


def of_each(summary: SetSummary) -> dict[str, float]:
    return {name: summary.of(name).distance.value for name in ("quick", "slow", "third")}


def test_rounds_and_the_pause_between_them_are_a_lane_groups_own():
    # quick 4 × 100 on 1:40 and 3 × 1:00 = 9:40; slow 3 × 1:40 and 2 × 1:30 = 8:00; the third waits
    by_group = {"slow": {"rounds": 3, "pause_between": "1:30"}, "third": {"rounds": 0}}
    item = rounds(4, crawl(1, 100, sendoff="1:40"), pause_between="1:00", by_group=by_group)
    found = added_up(item)
    assert of_each(found) == {"quick": 400, "slow": 300, "third": 0}
    assert [clock(found, name) for name in ("quick", "slow", "third")] == [580, 480, 0]
    catalogue_ = lanes("quick", "slow", "third")
    assert set(groups_meant(catalogue_, swim_set(item))) == {"quick", "slow"}


def test_the_last_round_is_a_lane_groups_own_last():
    by_round = {"last": {"effort": "fast"}}
    item = rounds(3, crawl(1, 100), by_round=by_round, by_group={"slow": {"rounds": 2}})
    found = added_up(item)
    fast = {name: found.of(name).by["effort"].get("fast") for name in ("quick", "slow")}
    assert fast == {"quick": 100, "slow": 100}
    assert [len(found.of(name).reps) for name in ("quick", "slow")] == [3, 2]


def test_a_variant_goes_round_as_often_as_it_says_and_the_group_before_it():
    own = swim_set(
        rounds(
            4,
            crawl(1, 100),
            by_variant={"A": {"rounds": 2, "pause_between": "0:20"}},
            by_group={"slow": {"rounds": 3}},
        )
    )
    own = replace(own, variants={"A": ("slow", "third")})
    found = summarise(Timing(lanes("quick", "slow", "third")), own)
    assert of_each(found) == {"quick": 400, "slow": 300, "third": 200}
    breaks = [event.seconds for event in found.of("slow").events if not hasattr(event, "item")]
    assert breaks == [20, 20]  # the pause of the variant, the rounds of the group


def test_inner_reps_of_a_lane_group_stay_its_own_in_its_own_rounds():
    inner = crawl(2, 100, by_group={"slow": {"distance": 50}})
    found = added_up(rounds(3, inner, by_group={"slow": {"rounds": 1}}))
    assert of_each(found) == {"quick": 600, "slow": 100, "third": 600}


def test_a_time_to_hold_falls_away_for_another_swim_unless_it_is_the_groups_own():
    by_group = {"slow": {"distance": 50}, "third": {"distance": 50, "aim": "0:42"}}
    found = added_up(crawl(1, 100, aim="1:15", by_group=by_group))
    aims = {name: found.clocks[name].reps[0].aim for name in ("quick", "slow", "third")}
    assert {name: aim and aim.value for name, aim in aims.items()} == {
        "quick": 75,
        "slow": None,
        "third": 42,
    }
    easier = added_up(crawl(1, 100, aim="1:15", by_group={"slow": {"effort": "easy"}}))
    assert easier.clocks["slow"].reps[0].aim is not None  # the same swim: the time stays


def test_waves_notes_and_starts_of_a_group_and_of_a_round():
    by_round = {"last": {"waves": {"number": 2}, "note": "All in."}}
    item = crawl(1, 100, note="Long.", by_round=by_round, by_group={"slow": {"note": "Tall."}})
    found = added_up(rounds(2, item))
    for name, note in (("quick", "Long."), ("slow", "Tall.")):
        first, last = found.clocks[name].reps
        assert (first.order.waves, last.order.waves) == (1, 2)
        assert (first.rep.item.note, last.rep.item.note) == (note, "All in.")
