"""The figures of sets, practices and blocks by name, as `explain` prints them: the sum, what it
comes to, its unit.

The sums are worked by hand in `test_arithmetic_practice.py`; here each is held as the line that a
coach reads.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_plans import (
    QUICK,
    SLOW,
    block,
    block_of,
    club,
    evening,
    part,
    practice_of,
    run,
    summarised,
    swim,
    whole,
)
from arithmetic_world import YARDS, swim_set

from almanac.analysis.figures import all_figures
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.analysis.figures.sets import SetForGroup, item_place
from almanac.arithmetic.block import summarise_block
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.training_load import Deviation
from almanac.model.block import Day, Week
from almanac.report.working_text import formula, steps


def set_figures(summary, group):
    return all_figures("set", SetForGroup(summary, group))


def practice_figures(summary, group):
    return all_figures("practice", PracticeForGroup(summary, group))


def block_figures(summary):
    return all_figures("block", summary)


def printed(figures):
    """By name: the sum, its value to four digits, its unit."""
    return {
        name: (formula(figure.working), round(figure.working.value, 4), figure.unit)
        for name, figure in figures.items()
    }


# Practices.


def test_figures_of_an_evening():
    assert printed(practice_figures(evening(), "quick")) == {
        "distance": ("2 × 100 + 100 + 100 + 100", 500, "m"),
        "mode swim": ("5 × 100", 500, "m"),
        "kick flutter": ("5 × 100", 500, "m"),
        "stroke freestyle": ("5 × 100", 500, "m"),
        "position prone": ("5 × 100", 500, "m"),
        "gear none": ("2 × 100", 200, "m"),
        "gear fins": ("100", 100, "m"),
        "gear socks": ("2 × 100", 200, "m"),
        "effort all-out": ("4 × 100", 400, "m"),
        "effort easy": ("100", 100, "m"),
        "minutes": ("(13:05 last finish − 1:00 first start) ÷ 60 s a minute", 12.0833, "min"),
        "rating": (
            "(7:34 on the clock × 9.5 rating + 2:10 on the clock × 1.5 rating) ÷ 9:44 on the clock",
            7.7192,
            "",
        ),
        "load": ("12.083 min × 7.719 rating", 93.2734, ""),
        "part 1 distance": ("2 × 100", 200, "m"),
        "part 1 clock": ("2 × 2:00 send-off", 240, "s"),
        "part 2 distance": ("100", 100, "m"),
        "part 2 clock": (
            "0 s leader's last start + 3 behind the leader × 5 s gap + 1:20 best time × 0.8 fins",
            79,
            "s",
        ),
        "part 3 distance": ("100", 100, "m"),
        "part 3 clock": ("2:30 send-off", 150, "s"),
        "part 4 distance": ("0", 0, "m"),
        "part 4 clock": ("1:00 pause", 60, "s"),
        "part 5 distance": ("100", 100, "m"),
        "part 5 clock": (
            (
                "0 s leader's last start + 3 behind the leader × 5 s gap + 1:20 best time ÷ 0.72 "
                "easy "
                "× 1.08 socks"
            ),
            135,
            "s",
        ),
        "time": (
            (
                "1:00 talk + 4:00 part 1 + 20 s gear + 1:30 part 2 + 15 s talk + 15 s gear + 2:30 "
                "part 3 + 1:00 part 4 "
                "+ 2:40 part 5"
            ),
            810,
            "s",
        ),
        "slack": ("30:00 slot − 13:30 practice", 990, "s"),
        "kick share": ("0 m kick ÷ 500 m in all", 0, ""),
        "resisted share": ("200 m resisted ÷ 500 m in all", 0.4, ""),
        "fast share": ("400 m fast and all-out ÷ 500 m in all", 0.8, ""),
        "kick into stroke": ("0 m", 0, "m"),
    }


def test_the_time_of_a_practice_is_that_of_its_slowest_group_whoever_asks():
    quick, slow = (practice_figures(evening(), group) for group in ("quick", "slow"))
    assert quick["time"].working == slow["time"].working
    # until the last of four is home, 5 s apart, 64 + 15; of three, 80 + 10
    assert quick["part 2 clock"].working.value == 79 and slow["part 2 clock"].working.value == 90
    # the last part: slow 150 s and 10 s rest, which covers the last of three; quick 120 and 15
    assert slow["minutes"].working.value - quick["minutes"].working.value == pytest.approx(25 / 60)


def test_in_yards_distances_are_in_yards():
    figures = practice_figures(run(part(swim(50, "kick", sendoff=90)), pool="away"), "quick")
    assert {
        figures[name].unit for name in ("distance", "mode kick", "gear none", "part 1 distance")
    } == {"yd"}


def test_what_is_not_known_is_no_figure():
    catalogue = club(groups={"quick": QUICK, "slow": replace(SLOW, tests=())})
    summary = summarised(practice_of(part(swim(sendoff=120)), part(swim())), catalogue)
    known, unknown = (set(practice_figures(summary, group)) for group in ("quick", "slow"))
    assert known - unknown == {"minutes", "rating", "load", "part 2 clock"}
    assert "part 1 clock" in unknown and "part 2 distance" in unknown
    assert not {"time", "slack"} & known


# Blocks.

LAND = Day(other="Land work", minutes=30, rating=4)
KICK = part(swim(100, "kick", gear=["chute"]))


def a_block():
    """Three weeks; the evening has 500 m and a load of 93.273, the kick 100 m and 29.854."""
    return block(
        whole({"mon": Day("evening"), "wed": LAND, "fri": LAND, "sat": LAND}),
        whole({"mon": Day("evening"), "sun": Day("kick")}),
        Week("", whole({"tue": Day("evening")}), taper=True),
        evening=evening(),
        kick=run(KICK, id="kick"),
    )


def test_figures_of_a_block():
    # chute kick: 100 m at the pace of 50 in 60 s, exponent 1.08 of the policy: 126.8 s × 1.25, and
    # three behind the leader, 10 s apart on the back, at 9.5
    figures = printed(block_figures(a_block()))
    assert figures == {
        "distance": ("3 × 500 m evening + 100 m kick", 1600, "m"),
        "kick share": ("100 m kick ÷ 1,600 m in all", 0.0625, ""),
        "supine share": ("100 m flutter on the back ÷ 100 m flutter kick", 1, ""),
        "resisted share": ("700 m resisted ÷ 1,600 m in all", 0.4375, ""),
        "fast share": ("1,300 m fast and all-out ÷ 1,600 m in all", 0.8125, ""),
    "dolphin share": ("0 m dolphin kick ÷ 1,600 m in all", 0, ""),
        "week 1 distance": ("500 m evening", 500, "m"),
        "week 1 kick share": ("0 m kick ÷ 500 m in all", 0, ""),
        "week 1 resisted share": ("200 m resisted ÷ 500 m in all", 0.4, ""),
        "week 1 fast share": ("400 m fast and all-out ÷ 500 m in all", 0.8, ""),
        "week 1 load": ("93.273 mon + 120 wed + 120 fri + 120 sat", 453.2734, ""),
        "week 1 monotony": ("64.753 daily mean ÷ 61.304 standard deviation of the sample", 1.0563,
                            ""),
        "week 1 strain": ("453.273 load × 1.056 monotony", 478.7787, ""),
        "week 2 distance": ("500 m evening + 100 m kick", 600, "m"),
        "week 2 kick share": ("100 m kick ÷ 600 m in all", 0.1667, ""),
        "week 2 supine share": ("100 m flutter on the back ÷ 100 m flutter kick", 1, ""),
        "week 2 resisted share": ("300 m resisted ÷ 600 m in all", 0.5, ""),
        "week 2 fast share": ("500 m fast and all-out ÷ 600 m in all", 0.8333, ""),
        "week 2 load": ("93.273 mon + 29.854 sun", 123.1276, ""),
        "week 3 distance": ("500 m evening", 500, "m"),
        "week 3 kick share": ("0 m kick ÷ 500 m in all", 0, ""),
        "week 3 resisted share": ("200 m resisted ÷ 500 m in all", 0.4, ""),
        "week 3 fast share": ("400 m fast and all-out ÷ 500 m in all", 0.8, ""),
        "week 3 load": ("93.273 tue", 93.2734, ""),
        "resisted distance": ("700 m", 700, "m"),
        "fast distance": ("1,300 m", 1300, "m"),
        "kick into stroke": ("0 m", 0, "m"),
        "week 1 resisted distance": ("200 m", 200, "m"),
        "week 1 fast distance": ("400 m", 400, "m"),
        "week 1 kick into stroke": ("0 m", 0, "m"),
        "week 2 distance change": ("600 m week 2 ÷ 500 m week 1 − 1", 0.2, ""),
        "week 2 resisted distance": ("300 m", 300, "m"),
        "week 2 resisted change": ("300 m week 2 ÷ 200 m week 1 − 1", 0.5, ""),
        "week 2 fast distance": ("500 m", 500, "m"),
        "week 2 fast change": ("500 m week 2 ÷ 400 m week 1 − 1", 0.25, ""),
        "week 2 kick into stroke": ("0 m", 0, "m"),
        "week 2 load change": ("123.128 week 2 ÷ 453.273 week 1 − 1", -0.7284, ""),
        "week 3 distance change": ("500 m week 3 ÷ 550 m median of weeks 1, 2 − 1", -0.0909, ""),
        "week 3 resisted distance": ("200 m", 200, "m"),
        "week 3 resisted change": ("200 m week 3 ÷ 250 m median of weeks 1, 2 − 1", -0.2, ""),
        "week 3 fast distance": ("400 m", 400, "m"),
        "week 3 fast change": ("400 m week 3 ÷ 450 m median of weeks 1, 2 − 1", -0.1111, ""),
        "week 3 kick into stroke": ("0 m", 0, "m"),
        "week 3 load change": ("93.273 week 3 ÷ 288.2 median of weeks 1, 2 − 1", -0.6764, ""),
        "taper": (
            ("(550 m mean of weeks 1 and 2 − 500 m a week of the taper) ÷ 550 m mean of weeks 1 "
            "and 2"), 0.0909, "",
        ),
        "taper days": ("6 days", 6, "days"),
    }  # fmt: skip


def test_figures_of_a_block_are_those_of_its_summary():
    summary = a_block()
    figures = {name: figure.working.value for name, figure in block_figures(summary).items()}
    assert figures["distance"] == summary.balance.metres
    assert figures["taper"] == pytest.approx(summary.taper.cut)
    for week in summary.weeks:
        own = {
            name: figures.get(f"week {week.number} {name}")
            for name in ("distance", "load", "monotony", "strain")
        }
        assert own["distance"] == week.balance.metres
        assert own["load"] == pytest.approx(week.load.total)
        assert own["monotony"] == (week.load.monotony and pytest.approx(week.load.monotony))
        assert own["strain"] == (week.load.strain and pytest.approx(week.load.strain))


def test_the_mean_of_a_week_is_over_all_its_days():
    figures = block_figures(a_block())
    told = {step.what: step.how for step in steps(figures["week 1 strain"].working, "strain")}
    assert told["daily mean"] == "(93.273 mon + 120 wed + 120 fri + 120 sat) ÷ 7 days"


def test_a_week_alike_but_for_a_rounding_has_no_monotony():
    one, other = Day(minutes=3, rating=0.1), Day(minutes=1, rating=0.3)  # 0.30000000000000004, 0.3
    days = [one, other, one, other, one, other, one]
    figures = block_figures(block(dict(zip(DAYS, days, strict=True))))
    assert "week 1 load" in figures
    assert not {"week 1 monotony", "week 1 strain"} & set(figures)


def test_the_convention_of_the_deviation_is_named():
    week = whole(dict.fromkeys(("mon", "tue", "wed", "fri"), LAND))
    for convention in Deviation:
        summary = summarise_block(
            block_of(week), lambda id, on: evening(), "quick", convention=convention
        )
        told = formula(block_figures(summary)["week 1 monotony"].working)
        assert told.endswith(f"standard deviation of the {convention.name.lower()}")


def test_a_week_without_a_load_has_its_distance_alone():
    untimed = replace(QUICK, tests=())
    summary = summarised(practice_of(part(swim())), club(groups={"quick": untimed}))
    names = set(block_figures(block({"mon": Day("p")}, whole({}), p=summary)))
    assert {name for name in names if name.startswith("week 1")} == {
        "week 1 distance",
        "week 1 kick share",
        "week 1 resisted share",
        "week 1 fast share",
        "week 1 resisted distance",
        "week 1 fast distance",
        "week 1 kick into stroke",
    }
    assert {name for name in names if name.startswith("week 2")} == {
        "week 2 distance",
        "week 2 load",
        "week 2 resisted distance",
        "week 2 fast distance",
        "week 2 kick into stroke",
    }
    assert not {"taper", "supine share"} & names


def test_a_week_whose_load_is_not_known_has_no_change_of_it():
    weeks = {"mon": Day(minutes=60, rating=7)}, {}, {"mon": Day(minutes=60, rating=7)}
    values = {name: figure.value for name, figure in block_figures(block(*weeks)).items()}
    assert values["week 1 load"] == 420
    assert [values.get(f"week {number} load change") for number in (1, 2, 3)] == [None] * 3


# Sets.


def test_figures_of_a_set():
    own = swim_set(
        swim(50, "kick", "all-out", reps=4, sendoff=90),
        {"rounds": 2, "items": [{"pause": 30}, swim(100, "crawl", "easy", rest=10)]},
    )
    figures = printed(set_figures(summarise(Timing(club(own)), own), "quick"))
    # 50 kick in 60 s; 100 crawl easy 80 / 0.72 = 111.11 s, + 10 s up to 125
    assert figures == {
        "distance": ("4 × 50 + 2 × 100", 400, "m"),
        "metres": ("(4 × 50 + 2 × 100) × 1 m a m", 400, "m"),
        "lengths": ("(4 × 50 + 2 × 100) ÷ 25 m a length", 16, ""),
        "mode kick": ("4 × 50", 200, "m"),
        "mode swim": ("2 × 100", 200, "m"),
        "kick flutter": ("4 × 50 + 2 × 100", 400, "m"),
        "stroke backstroke": ("4 × 50", 200, "m"),
        "stroke freestyle": ("2 × 100", 200, "m"),
        "position supine": ("4 × 50", 200, "m"),
        "position prone": ("2 × 100", 200, "m"),
        "gear none": ("4 × 50 + 2 × 100", 400, "m"),
        "effort all-out": ("4 × 50", 200, "m"),
        "effort easy": ("2 × 100", 200, "m"),
        "clock": ("4 × 1:30 send-off + 2 × 30 s pause + 2 × 2:05 with rest", 670, "s"),
        # four in the lane, five seconds apart on the front: 545 + 15 + 111.1
        "last touch": (
            "9:05 leader's last start + 3 behind the leader × 5 s gap + 1:20 best time ÷ 0.72 easy",
            671.1111,
            "s",
        ),
        "work": ("4 × 1:00 best time + 2 × 1:20 best time ÷ 0.72 easy", 462.2222, "s"),
        "rest": ("11:10 clock − 7:42.2 work", 207.7778, "s"),
        "density": ("7:42.2 work ÷ 11:10 clock", 0.6899, ""),
        "rated work": ("4 × 1 min × 9.5 rating + 2 × 1.852 min × 1.5 rating", 43.5556, ""),
        "target 1": ("1:00 best time", 60, "s"),
        "sendoff 1": ("1:30 send-off", 90, "s"),
        "rest 1": ("1:30 send-off − 1:00 best time", 30, "s"),
        "target 2.2": ("1:20 best time ÷ 0.72 easy", 111.1111, "s"),
        "rest 2.2": ("2:05 with rest − 1:20 best time ÷ 0.72 easy", 13.8889, "s"),
        "reps": ("6", 6, ""),
        "yards": ("(4 × 50 + 2 × 100) ÷ 0.9144 m a yd", 437.4453, "yd"),
        "kick share": ("200 m kick ÷ 400 m in all", 0.5, ""),
        "supine share": ("200 m flutter on the back ÷ 200 m flutter kick", 1, ""),
        "prone share": ("0 m flutter on the front ÷ 200 m flutter kick", 0, ""),
        "board share": ("0 m flutter with a board ÷ 200 m flutter kick", 0, ""),
        "resisted share": ("0 m resisted ÷ 400 m in all", 0, ""),
        "fast share": ("200 m fast and all-out ÷ 400 m in all", 0.5, ""),
        "kick into stroke": ("0 m", 0, "m"),
    }


def test_without_a_group_a_set_has_its_distances_alone():
    own = swim_set(swim(50, "kick", sendoff=90))
    summary = summarise(Timing(club(own)), own)
    names = set(set_figures(summary, None))
    assert names == set(set_figures(summary, "quick")) - {
        "clock", "last touch", "work", "rest", "density", "rated work", "target 1", "sendoff 1",
        "rest 1",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("written", "missing"),  # 8 × board kick, which nobody has tested
    [
        (swim(50, "board-kick", sendoff=60),
         {"work", "rest", "density", "rated work", "target 1", "rest 1"}),
        (swim(50, "board-kick", rest=10),
         {"clock", "work", "rest", "density", "rated work", "target 1", "rest 1", "sendoff 1"}),
        (swim(50, "kick", rest=10), {"sendoff 1"}),
    ],
)  # fmt: skip
def test_figures_without_a_number_are_left_out(written, missing):
    own = swim_set(written)
    every = {"clock", "work", "rest", "density", "rated work", "target 1", "sendoff 1", "rest 1"}
    assert every - set(set_figures(summarise(Timing(club(own)), own), "quick")) == missing


def test_a_set_in_yards_tells_its_metres_and_lengths():
    own = swim_set(swim(50, "kick", sendoff=90), course=YARDS)
    figures = printed(set_figures(summarise(Timing(club(own)), own), None))
    assert figures["distance"] == ("50", 50, "yd")
    assert figures["metres"] == ("50 × 0.9144 m a yd", 45.72, "m")
    assert figures["lengths"] == ("50 ÷ 25 yd a length", 2, "")
    assert figures["mode kick"][2] == "yd"


def test_an_item_tells_of_its_slowest_rep():
    own = swim_set(swim(50, "kick", {"descend": ["easy", "all-out"]}, reps=3, sendoff=120))
    figures = set_figures(summarise(Timing(club(own)), own), "quick")
    assert figures["target 1"].working.value == pytest.approx(60 / 0.72)
    assert figures["rest 1"].working.value == pytest.approx(120 - 60 / 0.72)


@pytest.mark.parametrize(
    ("path", "place"),
    [
        (("items", 0), "1"),
        (("items", 2), "3"),
        (("items", 0, "items", 1), "1.2"),
        (("items", 4, "items", 0, "items", 9), "5.1.10"),
    ],
)
def test_places_are_counted_from_one_through_the_rounds(path, place):
    assert item_place(path) == place
