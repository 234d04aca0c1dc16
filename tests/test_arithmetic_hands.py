"""Adults and helpers of a practice, counted by hand: for the part, and for the moment that needs
most.

Squad osprey: `quick` is 10 heads on 3 lanes, `slow` 6 on 2; both swim 100 crawl well within 2:00.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import QUICK, SLOW, club, part, practice_of, run, summarised, swim
from arithmetic_world import DRILLS, PIECES, swim_set

from almanac.arithmetic.helping import Help
from almanac.model.entry import Helper
from almanac.model.practice import ListOfSome, PartOfSome, PracticePart, Station
from almanac.model.structure import structure_items
from almanac.report.hands_words import hands_words, help_words

WATCHER = Helper("watcher", "group", adult=True)
CALLER = Helper("caller", "part", adult=True)
SWIM = swim(sendoff=120)


def helped(*helpers: Helper, **more: Any) -> PracticePart:
    """A part of one 100 for all, that asks for helpers."""
    return part(SWIM, helpers=helpers, **more)


def counted(*parts: PracticePart, drills: tuple[Helper, ...] = (), **more: Any) -> tuple[int, dict]:
    """The adults that are needed, and everybody's job."""
    practice = practice_of(*parts)
    need = summarised(
        practice, club(practice, replace(DRILLS["crawl"], helpers=drills), **more)
    ).hands
    return need.adults, dict(need.jobs)


def test_somebody_coaches_a_part_that_nobody_takes_alone():
    assert counted(part(SWIM)) == (1, {"coach": 1})
    # two watchers, one for each lane group, and the coach beside them
    assert counted(helped(WATCHER)) == (3, {"coach": 1, "watcher": 2})
    assert counted(helped(WATCHER, led_by="squad-coach")) == (3, {"lead": 1, "watcher": 2})


@pytest.mark.parametrize(
    ("each", "count"), [("lane", 5), ("group", 2), ("part", 1), ("piece", 0)]
)  # 3 and 2 lanes, two lane groups, no gear
def test_what_one_of_them_is_enough_for(each, count):
    jobs = {"coach": 1, **({"timekeeper": count} if count else {})}
    assert counted(helped(Helper("timekeeper", each))) == (1, jobs)


def test_a_job_that_falls_to_the_coach_takes_nobody_more():
    assert counted(helped(WATCHER, coach_is="watcher")) == (2, {"coach": 1, "watcher": 1})
    assert counted(helped(CALLER, coach_is="caller")) == (1, {"coach": 1})
    assert counted(helped(CALLER, coach_is="watcher")) == (2, {"coach": 1, "caller": 1})
    # one of them must be an adult, and that is the coach: two watch beside, a swimmer each
    lanes = Helper("watcher", "lane")
    both = helped(Helper("watcher", "part", adult=True), lanes, coach_is="watcher")
    assert counted(both) == (1, {"coach": 1, "watcher": 5})
    assert counted(helped(lanes, coach_is="watcher")) == (1, {"coach": 1, "watcher": 4})
    # where the coach does nothing of it, one who watches is an adult beside the coach
    assert counted(helped(*both.helpers)) == (2, {"coach": 1, "watcher": 6})


def test_who_watches_what_goes_under_water_does_nothing_else():
    under = replace(
        DRILLS["crawl"], mode="underwater", helpers=(Helper("watcher", "lane", adult=True),)
    )
    practice = practice_of(part(SWIM, coach_is="watcher"))
    need = summarised(practice, club(practice, under)).hands
    assert under.is_under_water
    assert (need.adults, need.jobs) == (6, {"coach": 1, "watcher": 5})
    called = replace(under, helpers=(CALLER,))
    practice = practice_of(part(SWIM, coach_is="caller"))
    assert summarised(practice, club(practice, called)).hands.adults == 1


def test_who_is_asked_for_twice_is_needed_once_and_for_both():
    practice = practice_of(helped(CALLER))
    known = club(practice, replace(DRILLS["crawl"], helpers=(CALLER,)))
    summary = summarised(practice, known)
    assert summary.sheet[0].helps == (Help(CALLER, 1, (DRILLS["crawl"].title,)),)
    assert summary.hands.adults == 2


def stations(*alone: str, helpers: tuple[Helper, ...] = (CALLER,), **more: Any) -> PracticePart:
    items = structure_items([SWIM])
    return PracticePart(
        "main",
        stations=tuple(
            Station(items=items, helpers=helpers, led_by=who or None, **more) for who in alone
        ),
    )


def test_stations_at_the_same_moment():
    # a caller at each of the two, the coach of both, and whoever takes one alone
    assert counted(stations("", "")) == (3, {"coach": 1, "caller": 2})
    assert counted(stations("squad-coach", "")) == (4, {"lead": 1, "coach": 1, "caller": 2})
    assert counted(stations("squad-coach", "head-coach")) == (4, {"lead": 2, "caller": 2})
    # each who takes one alone calls there; whoever coaches both calls at one of them
    assert counted(stations("squad-coach", "head-coach", coach_is="caller")) == (2, {"lead": 2})
    assert counted(stations("squad-coach", "", coach_is="caller")) == (2, {"lead": 1, "coach": 1})
    assert counted(stations("", "", coach_is="caller")) == (2, {"coach": 1, "caller": 1})
    # whoever else stands there makes no odds, be it named before the caller or after
    watch = Helper("watcher", "part")
    for both in ((watch, CALLER), (CALLER, watch)):
        own = stations("", "", helpers=both, coach_is="caller")
        assert counted(own) == (2, {"coach": 1, "watcher": 2, "caller": 1})
    # told at the first of them
    both = run(stations("", ""))
    assert both.hands.run is both.runs[0]


def test_the_moment_that_needs_most_and_of_such_the_most_hands():
    few, many = helped(CALLER), helped(WATCHER)
    assert counted(few, many, few)[0] == 3
    timed = helped(CALLER, Helper("timekeeper", "lane"))
    assert counted(few, timed) == (2, {"coach": 1, "caller": 1, "timekeeper": 5})


def test_lists_apart_that_do_not_overlap_are_not_added():
    # quick is done after 120 s; only then does slow's second part ask for a caller
    items = structure_items([SWIM])
    apart = PracticePart(
        "main",
        apart=(
            ListOfSome(
                (PartOfSome(part="main", items=items, helpers=(CALLER,)),), groups=("quick",)
            ),
            ListOfSome(
                (
                    PartOfSome(part="main", items=items),
                    PartOfSome(part="main", items=items, helpers=(WATCHER,)),
                ),
                groups=("slow",),
            ),
        ),
    )
    assert counted(apart) == (2, {"coach": 1, "caller": 1})


def test_who_is_not_known_to_be_done_may_still_be_at_it():
    # of quick no time is known: at the least 40 m take 40 / 3.5 s and 10 s of rest, slow's first
    # 120 s
    items = structure_items([SWIM])
    untold = structure_items([swim(40, rest=10)])
    apart = PracticePart(
        "main",
        apart=(
            ListOfSome((PartOfSome("main", items=untold, helpers=(WATCHER,)),), groups=("quick",)),
            ListOfSome(
                (
                    PartOfSome("main", items=items),
                    PartOfSome("main", items=items, helpers=(CALLER,)),
                ),
                groups=("slow",),
            ),
        ),
    )
    unknown = {"quick": replace(QUICK, tests=()), "slow": SLOW}
    assert counted(apart, groups=unknown) == (3, {"coach": 1, "watcher": 1, "caller": 1})
    assert counted(apart) == (2, {"coach": 1, "watcher": 1})


def test_gear_is_told_of_the_first_part_that_takes_the_most():
    practice = practice_of(*(part(swim(gear=["fins"], sendoff=120)) for _ in range(2)))
    summary = summarised(practice)
    assert [need.run is summary.runs[0] for need in summary.gear] == [True]


def test_a_piece_of_gear_has_a_holder_for_as_many_as_are_owned_or_used():
    corded = replace(PIECES["fins"], helpers=(Helper("cord-holder", "piece"),))
    few = replace(swim_set(swim(gear=["fins"], sendoff=120)), most_in_lane=1)
    for owned, practice, holders in (
        ({"fins": 3}, practice_of(part(swim(gear=["fins"], sendoff=120))), 3),
        ({"fins": 40}, practice_of(part(swim(gear=["fins"], sendoff=120))), 16),
        ({}, practice_of(PracticePart("main", set="a-set")), 5),  # five lanes, one swimmer in each
    ):
        need = summarised(practice, club(practice, corded, few, owned=owned)).hands
        assert (need.adults, need.jobs) == (1, {"coach": 1, "cord-holder": holders})


def test_times_that_are_noted_want_somebody_with_a_watch_in_each_lane():
    noted = swim(sendoff=120, note_result="time")
    assert counted(part(noted)) == (1, {"coach": 1, "timekeeper": 5})
    assert counted(part(swim(sendoff=120, note_result="count"))) == (1, {"coach": 1})
    # one rep of many is enough; what is held has its time already
    assert counted(part(swim(sendoff=120), noted)) == (1, {"coach": 1, "timekeeper": 5})
    upright = {"reps": 1, "time": 30, "do": "upright", "effort": "easy", "note_result": "time"}
    assert counted(part(upright)) == (1, {"coach": 1})
    # the part says itself how many; and the coach may be one of them
    own = part(noted, helpers=(Helper("timekeeper", "part"),))
    assert counted(own) == (1, {"coach": 1, "timekeeper": 1})
    assert counted(part(noted, coach_is="timekeeper")) == (1, {"coach": 1, "timekeeper": 4})
    # for quick alone: three lanes
    mine = swim(sendoff=120, note_result="time", by_group={"slow": {"reps": 0}})
    assert counted(part(mine)) == (1, {"coach": 1, "timekeeper": 3})


def test_crews_in_fewer_lanes_need_fewer():
    there = replace(helped(Helper("watcher", "lane", adult=True)), lanes={"quick": (1,)})
    assert counted(there) == (4, {"coach": 1, "watcher": 3})


def test_in_words():
    practice = practice_of(
        helped(WATCHER, Helper("timekeeper", "lane"), CALLER, coach_is="watcher"), adults=3
    )
    summary = summarised(practice, club(practice))
    told = [help_words(own, "coach") for own in summary.sheet[0].helps]
    assert told == [
        "the coach and 1 adult watch, one for each lane group",
        "5 helpers keep time, one a lane",
        "1 adult calls",
    ]
    assert hands_words(summary, 4) == (
        "Needs 4 adults, the fewest by the house rules for 16 swimmers here, and has 3; at the "
        "same moment: "
        "1 to coach, 1 to watch, 1 to call. Beside them, adult or swimmer: 5 to keep time."
    )
    assert hands_words(summary, 3) == (
        "Needs 3 adults at the same moment, and has 3: 1 to coach, 1 to watch, 1 to call. "
        "Beside them, adult or swimmer: 5 to keep time."
    )
    assert help_words(Help(CALLER, 1, ("Upright kick",), by_coach=True), "squad coach") == (
        "the squad coach calls (Upright kick)"
    )
    assert help_words(Help(Helper("line-handler", "piece"), 1), "coach") == (
        "1 helper pays a line out"
    )
    assert run(part(SWIM)).sheet[0].helps == ()


def test_who_holds_a_cord_is_an_adult_where_the_reps_say_so():
    holder, watch = Helper("cord-holder", "piece"), Helper("timekeeper", "part")
    corded = replace(PIECES["fins"], helpers=(holder, watch))

    def told(*parts: PracticePart) -> list[Help]:
        practice = practice_of(*parts)
        return [
            own
            for row in summarised(practice, club(practice, corded, owned={"fins": 3})).sheet
            for own in row.helps
        ]

    def held(by: str, **more: Any) -> dict[str, Any]:
        cord = {"held_by": by, "at": "the wall"}
        return {**swim(sendoff=120, cord=cord), "gear": ["fins"], **more}

    titles = (PIECES["fins"].title,)
    adult, either = Help(replace(holder, adult=True), 3, titles), Help(holder, 3, titles)
    timed = Help(watch, 1, titles)
    assert told(part(held("adult"))) == [adult, timed]
    assert told(part(held("swimmer"))) == told(part(held("anchor"))) == [either, timed]
    assert told(part(held("swimmer"), held("adult"))) == [adult, timed]
    # a cord of other reps, without this gear, asks nothing of its holder
    other = held("adult", gear=["socks"])
    assert told(part(held("swimmer"), other)) == [either, timed]
    assert told(part(swim(sendoff=120, gear=["fins"]))) == [either, timed]
    # lists apart: for quick an adult holds, for slow a swimmer does
    apart = PracticePart(
        "main",
        apart=tuple(
            ListOfSome((PartOfSome("main", items=structure_items([held(by)])),), (group,))
            for group, by in (("quick", "adult"), ("slow", "swimmer"))
        ),
    )
    assert told(apart) == [adult, timed, either, timed]


def test_where_nobody_needs_anybody_nobody_is_told():
    none = Helper("caller", "piece")
    assert run(helped(none)).sheet[0].helps == ()
    assert counted(part(SWIM), drills=(none,)) == (1, {"coach": 1})


def test_drills_of_different_lane_groups_each_have_their_lanes_watched():
    watch = Helper("watcher", "lane", adult=True)
    every = Helper("caller", "group")
    titles = DRILLS["crawl"].title, DRILLS["kick"].title
    for modes in (("underwater", "kick"), ("kick", "underwater"), ("kick", "kick")):
        crawl, kick = (
            replace(DRILLS[id], mode=mode, helpers=(watch, every))
            for id, mode in zip(("crawl", "kick"), modes, strict=True)
        )
        # quick swims the one on three lanes, slow the other on two
        own = part(
            swim(sendoff=120, by_group={"slow": {"reps": 0}}),
            swim(do="kick", sendoff=300, by_group={"quick": {"reps": 0}}),
        )
        practice = practice_of(own)
        under = "underwater" in modes
        assert summarised(practice, club(practice, crawl, kick)).sheet[0].helps == (
            Help(watch, 5, titles, under_water=under),
            Help(every, 2, titles, under_water=under),
        )
    # both do both: nobody is counted twice
    practice = practice_of(part(swim(sendoff=120), swim(do="kick", sendoff=300)))
    told = summarised(practice, club(practice, crawl, kick)).sheet[0].helps
    assert told == (Help(watch, 5, titles), Help(every, 2, titles))


def test_holders_of_two_kinds_of_cord_are_those_of_the_one_that_takes_more():
    holder = Helper("cord-holder", "piece")
    corded = [replace(PIECES[id], helpers=(holder,)) for id in ("fins", "socks")]
    worn = [swim(gear=[id], sendoff=120) for id in ("fins", "socks")]
    for each in (worn, worn[::-1]):
        practice = practice_of(part(*each))
        known = club(practice, *corded, owned={"fins": 3, "socks": 2})
        assert [own.count for own in summarised(practice, known).sheet[0].helps] == [3]
