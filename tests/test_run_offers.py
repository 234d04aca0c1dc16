"""Which changes a run offers, worked out by hand; and never one that ``check`` would refuse."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
from arithmetic_plans import club, part, practice_of, summarised, swim
from run_changes import broken, offered, plain, together
from shared import share
from test_run_data import PARTS, looked_at
from unsafe_world import PRACTICE, write
from unsafe_world import analysis as read_analysis
from unsafe_world import club as unsafe_club

from almanac.analysis.analysis import Analysis
from almanac.checks.run_days import RunOffers, practice_offers
from almanac.checks.run_offers import CrewOffer, RepsOffer, RoundsOffer
from almanac.model.practice import PracticePart, Station
from almanac.model.structure import structure_items
from almanac.report.run.cuts import cuts
from almanac.report.run.json import practice_run

EASY = part(swim(effort="easy", reps=2, sendoff=150))
LAST = part(swim(effort="easy", sendoff=150))
FIRST = ("items", 0)


def offers(*parts: PracticePart) -> RunOffers:
    practice = practice_of(*parts)
    catalogue = club(practice, PARTS)
    return practice_offers(looked_at(catalogue), summarised(practice, catalogue))


def of_quick(number: int, *parts: PracticePart) -> CrewOffer:
    return offers(*parts).crews[number, "quick"]


def reps_of(*written: Any, then: PracticePart = LAST) -> list[RepsOffer]:
    """What is offered for each item of a part between an easy one and another."""
    return list(of_quick(1, EASY, part(*written), then).reps.values())


def test_reps_go_by_ones_or_by_as_many_as_come_home() -> None:
    there_and_back, length, half = reps_of(
        swim(distance=50, effort="steady", reps=6, sendoff=90),
        swim(distance=25, effort="steady", reps=6, sendoff=60),
        swim(distance=75, effort="steady", reps=1, sendoff=120),
    )
    assert there_and_back == RepsOffer(more=(5, 10), fewer=1, sit=1)
    assert length == RepsOffer(more=(5, 10), fewer=2, sit=2)
    assert half == RepsOffer(more=(5, 10)), "one 75 is all there is: two cannot go"


def test_of_two_lengths_that_end_far_away_none_can_go() -> None:
    (pair,) = reps_of(swim(distance=25, effort="steady", reps=2, sendoff=60))
    assert (pair.fewer, pair.sit) == (0, 2), "both can be sat out together, and none left out"


def test_straight_on_there_is_no_send_off_to_lengthen() -> None:
    straight, rest = reps_of(swim(effort="steady"), swim(effort="steady", rest=20))
    assert (straight.more, rest.more) == ((), (5, 10))


def test_an_entry_says_how_few_reps_there_may_be() -> None:
    four, three = reps_of(
        swim(distance=50, effort="steady", reps=4, sendoff=90, reps_between=[3, 6]),
        swim(distance=50, effort="steady", reps=3, sendoff=90, reps_between=[3, 6]),
    )
    assert (four.fewer, four.fewest) == (1, 3)
    assert three.fewer == 0


def test_what_warms_up_is_not_sat_out_and_its_part_not_skipped() -> None:
    fast = part(swim(effort="fast", sendoff=200, reps=2))
    found = offers(EASY, fast, LAST)
    assert found.skips == {1}, "the first warms up, and the last is never skipped"
    own = found.crews[0, "quick"].reps[FIRST]
    assert (own.sit, own.fewer) == (0, 1)
    assert found.crews[0, "quick"].meet, "what has been swum until then has warmed them up"
    assert offers(EASY, EASY, fast, LAST).skips == {1, 2}, "of two that warm up the first stays"
    assert offers(EASY, EASY, LAST).skips == {0, 1}, "where nothing is fast nothing need warm up"


def test_easy_swimming_stays_after_all_out() -> None:
    hard = part(swim(distance=50, reps=4, sendoff=200), swim(effort="easy", sendoff=150))
    middle = part(swim(effort="steady", sendoff=150))
    found = offers(EASY, hard, middle)
    assert not found.crews[1, "quick"].meet, "stopped after the last hard one nothing easy follows"
    assert found.skips == set(), "and skipped from there it would be the same"
    assert found.crews[1, "quick"].reps["items", 1].sit == 0
    assert found.crews[1, "quick"].reps[FIRST].sit == 1
    kept = offers(EASY, hard, LAST)
    assert kept.crews[1, "quick"].meet and kept.skips == {1}


def test_a_hard_one_in_turn_with_an_easy_one_is_not_left_last() -> None:
    turns = swim(distance=50, reps=4, sendoff=200, effort={"rotate": ["all-out", "easy"]})
    steady = part(swim(effort="steady", sendoff=150))
    assert reps_of(turns, then=steady)[0].fewer == 0
    assert reps_of(turns)[0].fewer == 1


def test_nobody_meets_after_the_last_stage() -> None:
    found = offers(EASY, LAST)
    assert [found.crews[number, "quick"].meet for number in (0, 1)] == [True, False]


@pytest.mark.parametrize(
    ("more", "offer"),
    [
        ({"rounds": 3}, RoundsOffer(1, 3)),
        ({"rounds": 3, "rounds_between": [2, 5]}, RoundsOffer(2, 5, copies=2)),
        ({"rounds": 1, "rounds_between": [1, 2]}, RoundsOffer(1, 2, copies=1)),
        ({"rounds": 1}, None),
        (
            {"rounds": 3, "rounds_between": [2, 5], "by_round": {"last": {"effort": "fast"}}},
            RoundsOffer(2, 3, keeps_last=True),
        ),
        ({"rounds": 3, "by_group": {"quick": {"rounds": 2}}}, RoundsOffer(1, 2)),
    ],
)
def test_rounds_go_up_and_down_within_what_the_entry_says(
    more: dict[str, Any], offer: RoundsOffer | None
) -> None:
    items = [swim(distance=50, do="kick", effort="steady", reps=2, sendoff=90)]
    own = of_quick(1, EASY, part({**more, "items": items}), LAST)
    assert own.rounds.get(FIRST) == offer


def test_a_round_that_ends_at_the_far_end_stays() -> None:
    rounds = {"rounds": 3, "items": [swim(distance=25, effort="steady", reps=3, sendoff=60)]}
    assert of_quick(1, EASY, part(rounds), LAST).rounds == {}


def test_no_more_rounds_than_the_dose_of_the_whole_day() -> None:
    """The dose of the kick is 12 × 50 at most: eight here and two before leave room for one round
    of two.
    """
    kick = {"do": "kick", "effort": "steady", "sendoff": 120, "distance": 50}
    rounds = {"rounds": 4, "rounds_between": [1, 9], "items": [swim(reps=2, **kick)]}
    own = of_quick(1, part(swim(reps=2, **kick)), part(rounds), LAST)
    assert own.rounds[FIRST].most == 5
    alone = of_quick(1, EASY, part(rounds), LAST)
    assert alone.rounds[FIRST].most == 6


def agains(*items: dict[str, Any]) -> list[int]:
    return [own.again for own in reps_of(*items)]


def test_a_rep_is_swum_again_after_a_stop_while_the_dose_of_the_day_has_room() -> None:
    """The dose of the kick is 12 × 50 at most; what comes first is granted first, rounds before
    reps.
    """
    kick = {"do": "kick", "effort": "steady", "sendoff": 120, "distance": 50}
    assert [agains(swim(reps=reps, **kick)) for reps in (10, 11, 12)] == [[2], [1], [0]]
    assert agains(swim(reps=5, **kick), swim(reps=6, **kick)) == [1, 0]
    rounds = {"rounds": 4, "rounds_between": [1, 9], "items": [swim(reps=2, **kick)]}
    assert agains(rounds) == [0], "six rounds may be asked for"


def test_steps_to_end_in_time_take_rounds_first_and_then_parts() -> None:
    rounds = {"rounds": 3, "items": [swim(distance=50, effort="steady", reps=4, sendoff=90)]}
    practice = practice_of(EASY, part(rounds), EASY, part({**rounds, "rounds": 2}), LAST)
    catalogue = club(practice, PARTS)
    own = practice_run(looked_at(catalogue), summarised(practice, catalogue))
    assert own["cuts"] == [
        {"part": 3, "do": "round"},
        {"part": 1, "do": "round"},
        {"part": 1, "do": "round"},
        {"part": 3, "do": "skip"},
        {"part": 2, "do": "skip"},
    ]
    assert list(cuts(own["parts"][:1])) == []


def test_at_stations_each_has_its_steps_and_none_is_skipped() -> None:
    two, three = (
        structure_items([{"rounds": rounds, "items": [swim(effort="steady", reps=2, sendoff=150)]}])
        for rounds in (2, 3)
    )
    stations = (Station(items=two, begins=("quick",)), Station(items=three, begins=("slow",)))
    practice = practice_of(EASY, PracticePart("main", stations=stations), LAST)
    catalogue = club(practice, PARTS)
    own = practice_run(looked_at(catalogue), summarised(practice, catalogue))
    assert [part_.get("turn") for part_ in own["parts"]] == [None, 1, 1, 2, 2, None]
    steps = [(step["part"], step["do"]) for step in own["cuts"]]
    three_rounds = [
        number
        for number, part_ in enumerate(own["parts"])
        if any(crew["blocks"][0].get("most") == 3 for crew in part_["crews"].values())
    ]
    both = [(number, "round") for number in (4, 3, 2, 1)]
    assert steps == [*both, *((number, "round") for number in reversed(three_rounds))]


def session(tmp_path: Path, parts: str) -> RunOffers:
    root = unsafe_club(tmp_path / "club")
    text = PRACTICE.format(squad="osprey", pool="home", adults="adults: 9\n", parts=parts)
    write(root, "plans/practices/session.yml", text)
    own = read_analysis(root)
    return practice_offers(own, own.practices["session"])


UNDER = "do: under, effort: strong, distance: 25"


def test_rest_after_work_under_water_grows_and_never_shrinks_again(tmp_path: Path) -> None:
    """Send-offs of 2:20, 2:22 and 2:20: they fall once, which is allowed. With 5 s more for the
    first they fall twice in a row, and with 10 for the second and 5 for the third too: only the
    last may grow.
    """
    times = ("2:20", "2:22", "2:20")
    lines = [f"{{reps: 2, {UNDER}, sendoff: '{time}'}}".replace("'", "") for time in times]
    found = session(
        tmp_path,
        f"  - {{part: main, items: [{', '.join(lines)}]}}\n"
        "  - {part: main, items: [{reps: 2, distance: 50, do: back-kick, effort: easy}]}\n",
    )
    own = [found.crews[1, "osprey-1"].reps["items", place] for place in range(3)]
    assert [one.sit for one in own] == [0, 0, 0], "who sits one out has it shorter after the next"
    assert [one.more for one in own] == [(), (), (5, 10)]
    assert [one.fewer for one in own] == [0, 0, 0]


def test_what_gives_breath_before_work_under_water_stays(tmp_path: Path) -> None:
    """Fast, then 2 × 50 easy, which take the 60 s and more that go by before anybody goes under."""
    under = f"{{reps: 2, {UNDER}, sendoff: 2:20}}"
    easy = "{reps: 2, distance: 50, do: back-kick, effort: easy, sendoff: 2:00}"
    fast = "{reps: 2, distance: 25, do: back-kick, effort: fast, sendoff: 0:50}"
    found = session(
        tmp_path,
        f"  - {{part: main, items: [{fast}, {easy}]}}\n"
        f"  - {{part: main, items: [{under}]}}\n  - {{part: main, items: [{easy}]}}\n",
    )
    before, under_, after = (found.crews[number, "osprey-1"] for number in (1, 2, 3))
    assert not before.meet and 1 not in found.skips
    assert [one.fewer for one in before.reps.values()] == [0, 0]
    assert [one.sit for one in before.reps.values()] == [2, 1], (
        "the clock goes on, and with it rest"
    )
    assert under_.reps[FIRST].sit == 0 and after.reps[FIRST].fewer == 1
    long = fast.replace("0:50", "2:00")
    rested = session(
        tmp_path / "again",
        f"  - {{part: main, talk: 3:00, items: [{long}]}}\n"
        f"  - {{part: main, talk: 3:00, items: [{under}]}}\n  - {{part: main, items: [{easy}]}}\n",
    )
    assert rested.crews[1, "osprey-1"].meet, "talk alone gives them breath"


def test_two_parts_share_what_the_day_has_room_for() -> None:
    """12 × 50 of the kick are the most: two parts of 2 × 2 leave room for two rounds more, once."""
    kick = swim(reps=2, do="kick", effort="steady", sendoff=120, distance=50)
    rounds = part({"rounds": 2, "rounds_between": [1, 9], "items": [kick]})
    found = offers(EASY, rounds, rounds, LAST)
    most = [found.crews[number, "quick"].rounds[FIRST].most for number in (1, 2)]
    assert most == [4, 2]


def test_changes_made_together_are_not_refused_either(analysis: Analysis) -> None:
    for seed, practice in enumerate(share(analysis.computable_practices.values(), 10)):
        before = broken(analysis, plain(analysis, practice))
        many = together(analysis, practice, random.Random(seed), often=(0.4, 1)[seed % 2])
        assert broken(analysis, many) <= before, (practice.id, seed)


def test_nothing_is_offered_that_check_would_refuse(analysis: Analysis) -> None:
    found = [
        (practice, is_offered, own)
        for practice in analysis.computable_practices.values()
        for is_offered, own in offered(analysis, practice)
    ]
    yes = [(practice, own) for practice, is_offered, own in found if is_offered]
    assert len(yes) > 20
    for practice, own in share(yes, 25):
        before = broken(analysis, plain(analysis, practice))
        assert broken(analysis, own.practice) <= before, (practice.id, own.what)
