"""Why a piece stands in a practice, what the practice does not meet, and which wish hinders: by
hand.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from composing_world import GROUPS, asked, piece, size, table

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.hinders import Hinders, hindering
from almanac.arithmetic.composing.order import laid
from almanac.arithmetic.composing.pieces import UNKNOWN
from almanac.arithmetic.composing.table import TableSquad
from almanac.arithmetic.composing.unmet import Unmet, unmet
from almanac.arithmetic.composing.why import Note, Why, why
from almanac.arithmetic.composing.wishes import Kept

# 15 000 + 30 000 + 14 000 tenths: 98 minutes and 20 seconds, of 100.
OPEN = (piece("open", "w"), (size(15000),))
MAIN = (piece("main", "m", goals=(0,)), (size(30000),))
CLOSE = (piece("close", "c"), (size(14000),))
NONE = frozenset[int]()


def practice(own: Asked, **more: Any) -> Proposal:
    """The first three pieces of a table, or those that are named by role, as a practice."""
    roles = {"w": 0, "m": 1, "c": 2} | more
    order = []
    for role, place in sorted(roles.items(), key=lambda both: "wsmnec".index(both[0])):
        (one,) = own.sized(next(offer for offer in own.offers if offer.piece == place))
        order.append((role, one))
    return Proposal(laid(own, order), 0)


def test_a_piece_stands_for_goals_that_it_serves_after_days_with_so_much_gear() -> None:
    own = asked(
        (piece(goals=(2, 0), gear=(1, 0), most_in_lane=3), (size(),)), goals=(0, 1, 2),
        days={0: 9}, gear=(17, 18),
    )  # fmt: skip
    (one,) = laid(own, [("m", next(own.sized(own.offers[0])))])
    assert why(own, (one,), one) == Why((0, 2), (), 9, ((1, 12, 18), (0, 12, 17)))
    (one,) = laid(asked(), [("m", next(asked().sized(asked().offers[0])))])
    assert why(asked(), (one,), one) == Why((0,), (), UNKNOWN, ())


def notes(own: Asked, role: str, **more: Any) -> list[Note]:
    """What the piece of a role does in the practice of a table."""
    order = practice(own, **more).order
    return [*why(own, order, next(one for one in order if one.role == role)).notes]


def test_a_warm_up_says_what_of_the_work_is_warm_after_it() -> None:
    def warm(of_warm_up: dict[str, Any], **of_main: Any) -> list[Note]:
        pieces = [(piece("open", "w", **of_warm_up), (size(15000),)),
                  (piece("main", "m", goals=(0,), **of_main), (size(30000),)), CLOSE]  # fmt: skip
        return notes(asked(*pieces), "w")

    assert warm({}) == [Note("stands")] == warm({"strokes": (0,)}, strokes=(1,))
    assert warm({"strokes": (0, 1)}, strokes=(1, 2)) == [Note("warms", (1,))]
    hard = {"kick": 600, "hardest": 3}  # legs first, from a word below fast on
    assert warm({"kick": 100}, **hard) == [Note("stands"), Note("legs")]
    assert warm({}, **hard) == [Note("stands")] == warm({"kick": 100}, kick=600, hardest=1)
    assert warm({"hardest": 2}, hardest=3) == [Note("stands"), Note("comes-up", (2,))]
    assert warm({"hardest": 2}, hardest=4) == [Note("stands")] == warm({"hardest": 1}, hardest=1)


def test_relief_carries_tired_legs_into_a_stroke_of_the_work_or_comes_after_it() -> None:
    def ease(legs: int, **of: Any) -> list[Note]:
        main = (piece("main", "m", goals=(0,), strokes=(0, 1), kick=legs), (size(30000),))
        return notes(asked(OPEN, main, CLOSE, (piece("ease", "e", **of), (size(),))), "e", e=3)

    assert ease(501, strokes=(1, 2)) == [Note("carries", (1,))]
    assert ease(501, strokes=(1,), kick=300) == [Note("carries", (1,))]
    assert ease(501, strokes=(1,), kick=301, hardest=1) == [Note("after", (1,))]
    assert ease(500, strokes=(1,)) == [Note("after", (0,))] == ease(501, strokes=(2,))


def test_a_skill_is_used_or_stands_before_the_main_set_and_the_end_is_easy() -> None:
    def of(goal: int, *drills: int) -> list[Note]:
        main = (piece("main", "m", goals=(0,), drills=(1,)), (size(30000),))
        skill = (piece("skill", "s", goals=(goal,), drills=drills), (size(),))
        return notes(asked(OPEN, main, CLOSE, skill), "s", s=3)

    none = Note("no-other", (0,), "groups")
    assert of(0, 1) == [Note("used")] and of(2, 0, 1) == [Note("used"), none]
    assert of(0, 0) == [] and of(2, 0) == [Note("stands"), none]
    assert notes(asked(OPEN, MAIN, CLOSE), "c") == [Note("stands")]


def test_what_comes_after_its_use_does_not_come_back() -> None:
    main = (piece("main", "m", goals=(0,), drills=(1,)), (size(30000),))
    skill = (piece("skill", "s", goals=(0,), drills=(1,)), (size(),))
    own = asked(OPEN, main, CLOSE, skill)
    order = practice(own, s=3).order
    by_role = {one.role: one for one in order}
    moved = [by_role[role] for role in "wmsc"]
    assert why(own, order, by_role["s"]).notes == (Note("used"),)
    assert why(own, moved, by_role["s"]).notes == ()


def test_a_main_set_of_none_of_the_goals_says_what_it_trains_and_that_it_is_as_hard_as_wished() -> (
    None
):
    def main(goals: tuple[int, ...], effort: int = UNKNOWN) -> list[Note]:
        own = (piece("main", "m", goals=goals, effort=2, hardest=3), (size(30000),))
        return notes(asked(OPEN, own, CLOSE, effort=effort), "m")

    none = Note("no-other", (0,), "groups")
    assert main((0,)) == [] and main(()) == [Note("stands"), none]
    assert main((2, 1)) == [Note("trains", (2,)), none]
    assert main((0,), 2) == [Note("as-wished", (2,))] and main((0,), 3) == []
    assert main((2,), 2) == [Note("trains", (2,)), none, Note("as-wished", (2,))]


@pytest.mark.parametrize(
    ("others", "wished", "because"),
    [
        # A main set elsewhere does not count, nor what stands already; what may stand fits less
        # well.
        ([piece("other", "m", goals=(0,))], {}, "groups"),
        ([piece("s", "s", goals=(0,))], {}, "minutes"),
        ([piece("s", "s", goals=(2,))], {}, "groups"),
        ([piece("s", "s", goals=(0,), gear=(0,))], {"gear": (0, 0)}, "gear"),
        ([piece("s", "s", goals=(1,), asks=(0,))], {"goals": (0, 1)}, "taught"),
    ],
)  # fmt: skip
def test_work_that_serves_no_goal_says_why_nothing_else_stands_there(
    others: list[Any], wished: dict[str, Any], because: str
) -> None:
    skill = (piece("skill", "s", goals=(2,)), (size(),))
    own = asked(OPEN, MAIN, CLOSE, skill, *((each, (size(),)) for each in others), **wished)
    told = Note("no-other", own.wishes.goals, because)
    assert notes(own, "s", s=3) == [Note("stands"), told]


def test_where_a_main_set_stands_for_the_goals_no_other_of_the_same_piece_is_named() -> None:
    """The second main set trains something else: what is for the goal stands as the first, or may
    stand in its place.
    """
    other = (piece("other", "m", goals=(2,)), (size(),))
    told = Note("trains", (2,))
    own = asked(OPEN, MAIN, CLOSE, other)
    assert notes(own, "n", n=3) == [told, Note("no-other", (0,), "groups")]
    own = asked(OPEN, MAIN, CLOSE, other, (piece("more", "m", goals=(0,)), (size(),)))
    assert notes(own, "n", n=3) == [told, Note("no-other", (0,), "minutes")]
    assert notes(asked(of=own.table, goals=()), "n", n=3) == [told]


def missed(*serve: tuple[Any, ...], **wished: Any) -> list[Unmet]:
    """What a practice without goal 1 does not meet, where other pieces serve that."""
    own = asked(OPEN, MAIN, CLOSE, *serve, **({"goals": (0, 1), "minutes": 99} | wished))
    return [one for one in unmet(own, practice(own)) if one.wish == "goals"]


WALL = piece("wall", "m", goals=(1,), gear=(0,))
KICK = piece("kick", "se", goals=(1,), asks=(0,))


@pytest.mark.parametrize(
    ("serve", "wished", "because"),
    [
        ([], {}, "groups"), ([WALL], {"gear": (9, 20)}, "gear"),
        ([WALL], {"gear": (17, 20)}, "minutes"),
        ([WALL], {"gear": (17, 20), "left_out": NONE | {3}}, "leave_out"),
        ([WALL], {"gear": (17, 20), "days": {3: 1}}, "done"),
        ([KICK], {}, "taught"), ([KICK], {"taught": NONE | {0}}, "minutes"),
        ([KICK], {"days": {3: 1}}, "taught"),
        ([piece("drill", "sm", of="drill", goals=(1,))], {"days": {3: 1}}, "minutes"),
        ([piece("ease", "ec", goals=(1,))], {}, "groups"),
        ([piece("else", "m", goals=(2,))], {}, "groups"),
        ([WALL, KICK], {"gear": (0, 0)}, "taught"),
        ([WALL, WALL], {"gear": (0, 0), "left_out": NONE | {3}}, "gear"),
    ],
)  # fmt: skip
def test_what_keeps_the_work_for_a_goal_out_is_told(
    serve: list[Any], wished: dict[str, Any], because: str
) -> None:
    found = missed(*((own, (size(),)) for own in serve), **wished)
    assert found == [Unmet("goals", 1, because)]


def test_of_pieces_that_are_not_for_these_groups_another_reason_is_told() -> None:
    lone = (piece("lone", "m", goals=(1,)), (size((None, 600)),))
    wall = (WALL, (size(),))
    assert missed(lone) == [Unmet("goals", 1, "groups")]
    assert missed(lone, wall, gear=(0, 0)) == [Unmet("goals", 1, "gear")]


def others(own: Asked, **more: Any) -> list[Unmet]:
    return [*unmet(own, practice(own, **more))]


def test_an_effort_a_skill_and_relief_are_told_where_they_are_missing() -> None:
    hard = (piece("main", "m", goals=(0,), hardest=3, kick=501), (size(30000),))
    skill = (piece("skill", "s", goals=(0,), hardest=2), (size(500, distance=200),))
    second = (piece("second", "m", hardest=2), (size(500),))
    ease = (piece("ease", "e"), (size(500),))
    own = asked(OPEN, hard, CLOSE, skill, second, ease, minutes=99)
    skill_, relief = Unmet("skill", UNKNOWN, "minutes"), Unmet("relief", UNKNOWN, "minutes")
    assert others(own) == [skill_, relief]
    assert others(own, e=5) == [skill_]
    assert others(own, n=4) == [skill_]  # 100 of 200 metres at 501 permille
    assert others(own, s=3) == []  # 200 metres of skill and 100 of kick
    at = {
        effort: Asked(own.table, replace(own.wishes, effort=effort)) for effort in (UNKNOWN, 2, 3)
    }
    assert [others(at[effort], s=3) for effort in at] == [[], [Unmet("effort", 2, "goals")], []]
    # A second main set is as hard as wished, and the first is harder.
    assert others(at[2], s=3, n=4) == [Unmet("effort", 2, "harder")]
    assert others(at[3], s=3, n=4) == []
    opens = (replace(OPEN[0], hardest=4, effort=4), OPEN[1])  # what is no work may be harder
    hot = asked(opens, hard, CLOSE, skill, minutes=99, effort=3)
    assert others(hot, s=3) == []


@pytest.mark.parametrize(
    ("minutes", "left"),
    # 59 000 tenths are done: of 101 minutes 160 s are left, of 100 minutes 100 s.
    [(100, None), (101, 160), (103, 280)],
)
def test_what_nothing_fills_is_told_beyond_two_minutes(minutes: int, left: int | None) -> None:
    own = asked(OPEN, MAIN, CLOSE, minutes=minutes)
    expected = [Unmet("skill", UNKNOWN, "groups" if left is None else "time-left")]
    if left is not None:
        expected.append(Unmet("slot", left, "time-left"))
    assert others(own) == expected
    odd = asked(OPEN, MAIN, (CLOSE[0], (size(13995),)), minutes=101)
    assert others(odd)[1:] == [Unmet("slot", 160, "time-left")]  # 160.5 s
    short = [(piece(id, role), (size(7600),)) for id, role in (("a", "w"), ("b", "m"), ("c", "c"))]
    assert others(asked(*short, goals=(), minutes=39)) == []
    assert others(asked(*short, goals=(), minutes=40)) == [Unmet("skill", UNKNOWN, "groups")]


def hinders(*pieces: Any, rooms: Any = (), squad: Any = None, **wished: Any) -> list[Hinders]:
    of = table(*(pieces or (OPEN, MAIN, CLOSE)), rooms=rooms, **(squad or {}))
    own = asked(of=of, **wished)
    assert not compose(of, own.wishes)
    return [*hindering(of, own.wishes)]


def test_what_there_is_no_piece_for_is_told_first() -> None:
    assert hinders(OPEN) == [Hinders("piece", 2), Hinders("piece", 4)]
    assert hinders((piece(roles="s"), (size(),))) == [Hinders("piece", at) for at in (0, 2, 4)]
    assert hinders(OPEN, MAIN, minutes=50) == [Hinders("piece", 4)]
    assert hinders(pool="away") == [Hinders("piece", at) for at in (0, 2, 4)]


def test_a_drill_is_no_main_set_of_a_slot_that_is_longer_than_half_an_hour() -> None:
    """Without another there is none, and not a slot of 30 minutes; what is too full is told though
    a drill is not.
    """
    ends = [(piece(role, role), (size(5000),)) for role in "wc"]
    drill = (piece("drill", "sm", of="drill", goals=(0,)), (size(7500),))
    assert hinders(*ends, drill, minutes=31) == hinders(*ends, drill) == [Hinders("piece", 2)]
    assert compose(table(*ends, drill), asked(minutes=30).wishes)
    full = hinders(*ends, drill, MAIN, rooms=[(0, 0)] * 3 + [(3, 3)], minutes=60)
    assert full[0] == Hinders("room", 2, ((UNKNOWN, 5),))


ASKS = (piece("main", "m", goals=(0,), asks=(0,)), (size(30000),))
SOCKS = (piece("main", "m", goals=(0,), gear=(1,)), (size(30000),))
LONG = (piece("long", "m", goals=(0,)), (size(40000),))


@pytest.mark.parametrize(
    ("pieces", "wished", "wish"),
    [
        ([OPEN, MAIN, CLOSE], {"days": {1: 3}}, "done"),
        ([OPEN, SOCKS, CLOSE], {"gear": (10, 16)}, "gear"),
        ([OPEN, MAIN, CLOSE], {"adults": 0}, "adults"), ([OPEN, ASKS, CLOSE], {}, "taught"),
        ([OPEN, MAIN, CLOSE, LONG], {"kept": (Kept(3, "m"),)}, "keep"),
        ([OPEN, MAIN, CLOSE], {"left_out": NONE | {1}}, "leave_out"),
    ],
)  # fmt: skip
def test_one_wish_that_hinders_is_told(
    pieces: list[Any], wished: dict[str, Any], wish: str
) -> None:
    # With the long main set kept, ten minutes more would do too: 15 000 + 40 000 + 14 000 of 115
    # minutes.
    also = [Hinders("minutes", 115)] if wish == "keep" else []
    which = 1 if wish == "gear" else UNKNOWN  # of the gear that is missing
    assert hinders(*pieces, **wished) == [Hinders(wish, which), *also]
    assert hinders(*pieces, **wished, minutes=50) == []


def many(hardest: int, goals: tuple[int, ...]) -> list[Any]:
    """Twenty main sets, each too long for the slot."""
    of = {"hardest": hardest, "goals": goals}
    return [(piece(f"long-{at}", "m", **of), (size(90000),)) for at in range(20)]


def test_what_only_hides_what_would_fit_hinders_too() -> None:
    """Fifteen of many are tried: what fits is not among them where effort or goal wants others."""
    hard = (piece("hard", "m", goals=(0,), hardest=4), (size(30000),))
    found = hinders(OPEN, hard, CLOSE, *many(0, (0,)), effort=0)
    assert found == [Hinders("effort", UNKNOWN)]
    idle = (piece("idle", "m"), (size(30000),))
    assert hinders(OPEN, idle, CLOSE, *many(0, (0,)), goals=(0, 1)) == [Hinders("goals", 0)]
    assert hinders(OPEN, idle, CLOSE, *many(0, (0,)), goals=(0,)) == []


@pytest.mark.parametrize(
    ("minutes", "squad", "nearest"),
    [
        # 59 000 tenths fit into 99 and 100 minutes.
        (90, 120, 100), (105, 120, 100), (94, 120, 99), (70, 120, 100), (69, 120, 99),
        (68, 120, None),
        (65, 120, None), (90, 99, None), (90, 100, 100),
    ],
)  # fmt: skip
def test_the_nearest_minutes_that_would_do_are_told(
    minutes: int, squad: int, nearest: int | None
) -> None:
    found = hinders(minutes=minutes, squad={"minutes": squad})
    assert found == ([] if nearest is None else [Hinders("minutes", nearest)])


def test_no_fewer_than_20_and_no_more_than_120_minutes_are_told_and_more_before_fewer() -> None:
    def of(tenths: int, **more: Any) -> list[Any]:
        return [OPEN, (piece("main", "m", **more), (size(tenths - 29000),)), CLOSE]

    assert hinders(*of(72000), minutes=115, squad={"minutes": 130}) == [Hinders("minutes", 120)]
    assert hinders(*of(75000), minutes=120, squad={"minutes": 130}) == []
    small = [
        (piece(role, role), (size(tenths),))
        for role, tenths in (("w", 4000), ("m", 4000), ("c", 3900))
    ]
    assert hinders(*small, minutes=25) == [Hinders("minutes", 20)]
    small[2] = (small[2][0], (size(700),))
    assert hinders(*small, minutes=20) == []
    two = [OPEN, CLOSE, (piece("main", "m", what="rounds"), (size(27000), size(33000, 2)))]
    assert hinders(*two, minutes=100) == [Hinders("minutes", 105)]


def test_where_lanes_are_too_full_the_most_in_a_lane_that_would_do_is_told() -> None:
    """12 in the two lanes of quick are 6 in a lane, two more than usual; a main set has room for 4
    or 5.
    """
    for room, most, heads in ((5, 5, 10), (4, 4, 8)):
        found = hinders(rooms=((0, 0), (room, 0), (0, 0)), heads=(12, 9))
        assert found == [
            Hinders("room", 2, ((UNKNOWN, 6),)), Hinders("lanes", most, ((0, heads),)),
        ]  # fmt: skip
    # Slow is no fuller than usual: of 6 in a lane of quick none are fewer in slow.
    both = hinders(rooms=((0, 0), (5, 5), (0, 0)), heads=(12, 13))
    assert both == [
        Hinders("room", 2, ((UNKNOWN, 7),)), Hinders("lanes", 5, ((0, 10), (1, 10))),
    ]  # fmt: skip
    alone = hinders(rooms=((0, 0), (0, 5), (0, 0)), heads=(12, 13), groups=(1,))
    assert alone == [Hinders("room", 2, ((UNKNOWN, 7),)), Hinders("lanes", 5, ((1, 10),))]


def test_where_another_piece_has_room_its_role_is_not_told() -> None:
    long = (piece("long", "m"), (size(50000),))
    found = hinders(
        OPEN, MAIN, CLOSE, long, rooms=((5, 0), (5, 0), (5, 0), (0, 0)), heads=(12, 9), minutes=98
    )
    assert [own for own in found if own.wish == "room"] == [
        Hinders("room", 0, ((UNKNOWN, 6),)), Hinders("room", 4, ((UNKNOWN, 6),)),
    ]  # fmt: skip


def test_where_the_lanes_are_fewer_than_usual_the_usual_ones_would_do() -> None:
    """8 in one lane are 4 more than usual; in 2 as usual. With no more than 4 in the one lane it
    would do too.
    """
    own: TableSquad = table().squad
    assert own.groups == GROUPS
    found = hinders(rooms=((0, 0), (3, 0), (0, 0)), lanes=(1, 2), heads=(8, 9))
    assert found == [Hinders("room", 2, ((UNKNOWN, 8),))]
    found = hinders(rooms=((0, 0), (4, 0), (0, 0)), lanes=(1, 2), heads=(8, 9))
    assert found == [Hinders("room", 2, ((UNKNOWN, 8),)), Hinders("lanes", 4, ((0, 4),))]


def test_heads_are_counted_up_from_the_usual_while_they_do() -> None:
    """With 4 in a lane two minutes and more of the slot are left, though with 5, who take longer,
    less would be.
    """
    short = (piece("close", "c"), (size(13790),))
    found = hinders(OPEN, MAIN, short, rooms=((6, 0), (5, 0), (6, 0)), heads=(12, 9))
    assert found == [Hinders("room", 2, ((UNKNOWN, 6),))]


def test_no_more_heads_are_counted_than_there_are() -> None:
    """With 4 in a lane of quick 8 and slow's 9 use the 17 socks that are there; two full lanes of
    slow would be 10.
    """
    main = (piece("main", "m", goals=(0,), gear=(1,)), (size(30000),))
    found = hinders(OPEN, main, CLOSE, gear=(10, 17), heads=(12, 9))
    assert found == [Hinders("lanes", 4, ((0, 8),))]


def test_where_no_wish_alone_is_in_the_way_the_fewest_are_told_together() -> None:
    """The main set was done lately, and takes two adults, of whom there is none; the effort that
    is wished too is in nobody's way.
    """
    of = table(OPEN, MAIN, CLOSE)
    own = asked(of=of, days={1: 3}, adults=0, effort=0)
    (found,) = hindering(of, own.wishes)
    assert found == Hinders("together", 100, drops=("done", "adults"))
    assert found.instead is not None and compose(of, found.instead)
    assert found.instead.effort == 0
    longer = asked(of=of, days={1: 3}, adults=0, minutes=90)
    assert hindering(of, longer.wishes) == (Hinders("together", 100, drops=("done", "adults")),)


def test_of_gear_the_one_is_named_that_will_do_alone() -> None:
    both = (piece("main", "m", goals=(0,), gear=(0, 1)), (size(30000),))
    few = {"heads": (4, 5)}  # of whom each has what the club owns
    assert hinders(OPEN, both, CLOSE, gear=(0, 20), **few) == [Hinders("gear", 0)]
    assert hinders(OPEN, both, CLOSE, gear=(0, 0), **few) == [Hinders("gear", UNKNOWN)]
