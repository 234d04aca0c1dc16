"""Sessions that a careless coach might write, each of which is refused; and sound ones, of which
none is.

Both lists are of our own and were written from the trade's dangers; the limits are the program's
defaults.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from unsafe_world import analysis, club, codes, found, write

from almanac.report.practice_text import practice_text

OWN = "  - {{part: main, items: [{}]}}"  # items in place


def item(text: str) -> str:
    return OWN.format("{" + text + "}")


DIVE = "reps: 4, distance: 50, do: back-swim, effort: fast, rest: 2:00, start: dive"
CORD = (
    "reps: 4, time: 0:15, do: held-kick, effort: strong, rest: 1:00, gear: [cord], waves: "
    "{swimmers: 1}"
)
HELD_BY = ", cord: {held_by: %s, at: The rail at the deep end.}"
TWO_LISTS = """\
  - part: main
    apart:
      - {{groups: [osprey-1], parts: [{{part: main, {more}items: [{{{first}}}]}}]}}
      - {{groups: [osprey-2], parts: [{{part: main, items: [{{{second}}}]}}]}}"""
EASY = "reps: 2, distance: 50, do: back-swim, effort: easy"
MATS = "reps: 4, time: 0:30, do: mat-line, effort: easy, rest: 0:15"

UNSAFE = {
    "a dive where the water has 1.1 m": (item(DIVE), {"pool": "shallow"}, "start-depth"),
    "a dive in a pool that nobody has measured": (item(DIVE), {"pool": "unknown"}, "start-depth"),
    "a dive by beginners in 1.5 m": (item(DIVE), {"pool": "half", "squad": "heron"}, "start-depth"),
    "a dive from the shallow end": (
        f"  - {{part: main, end: turn, items: [{{{DIVE}}}]}}", {}, "start-depth"),
    "dives over one length, every second from the shallow end": (
        item("reps: 4, distance: 25, do: back-swim, effort: fast, rest: 2:00, start: back-start"),
        {}, "start-depth"),
    "a relay whose second swimmer dives at the shallow end": (
        item("reps: 2, distance: 50, do: back-swim, effort: fast, rest: 2:00, start: dive, team: "
             "relay-of-two"), {}, "start-depth"),
    "a dive in a nested round": (
        OWN.format("{rounds: 2, items: [{rounds: 2, items: [{" + DIVE + "}]}]}"),
        {"pool": "shallow"}, "start-depth"),
    "a start in the second part of a rep": (
        item("reps: 2, parts: [{distance: 25, do: back-swim, effort: easy}, {distance: 25, do: "
             "block-start, effort: easy}], rest: 1:00"), {}, "start-depth"),
    "a dive of one lane group alone": (
        item("reps: 4, distance: 50, do: back-swim, effort: easy, rest: 1:00, by_group: "
             "{osprey-2: {start: dive}}"), {"pool": "shallow"}, "start-depth"),
    "a start drill of one lane group alone": (
        item("reps: 4, distance: 50, do: back-swim, effort: easy, rest: 1:00, by_group: "
             "{osprey-2: {do: low-start}}"), {"pool": "half"}, "start-depth"),
    "a start that is taught in racing depth": (
        item("reps: 4, distance: 50, do: low-start, effort: easy, rest: 1:00"), {"pool": "half"},
        "start-depth"),
    "a start drill in turn with others": (
        item("reps: 4, distance: 50, do: {rotate: [back-swim, block-start]}, effort: easy, rest: "
             "1:00"), {"pool": "shallow"}, "start-depth"),
    "a dive in the lane by the steps": (
        f"  - {{part: main, lanes: {{osprey-2: [4]}}, items: [{{{DIVE}}}]}}", {},
        "start-forbidden"),
    "a dive in some corner of the pool": (
        f"  - {{part: main, place: By the slide., items: [{{{DIVE}}}]}}", {}, "start-depth"),
    "a start that nobody has explained": (
        item("reps: 4, distance: 50, do: back-swim, effort: easy, rest: 1:00, start: belly-flop"),
        {"pool": "shallow"}, "start-depth"),
    "a step into knee-deep water": (
        item("reps: 2, distance: 50, do: back-swim, effort: easy, rest: 1:00, start: step-in"),
        {"pool": "shallow"}, "start-depth"),
    "a beginner off the block": (item(DIVE), {"squad": "heron"}, "start-platform"),
    "a dive off a block of which nobody knows the height": (item(DIVE), {"pool": "bare"},
        "start-platform"),
    "a ledge start without a ledge": (
        item("reps: 2, distance: 50, do: back-swim, effort: fast, rest: 2:00, start: ledge-start"),
        {"pool": "half"}, "start-platform"),
    "a backstroke start without flags": (
        item("reps: 2, distance: 50, do: back-swim, effort: easy, rest: 2:00, start: back-start"),
        {"pool": "bare"}, "back-without-flags"),
    "strong kicking on the back without flags": (
        item("reps: 6, distance: 50, do: back-kick, effort: strong, rest: 0:20"), {"pool": "bare"},
        "back-without-flags"),
    "an effort that builds on the back without flags": (
        item("reps: 6, distance: 50, do: back-kick, effort: {build: [easy, fast]}, rest: 0:20"),
        {"pool": "bare"}, "back-without-flags"),
    "upright kicking where everybody stands": (
        item("reps: 4, time: 0:20, do: deep-kick, effort: strong, rest: 0:40"), {"pool": "shallow"},
        "depth-unfit"),
    "a standing drill in deep water": (
        item("reps: 4, time: 0:20, do: standing-wave, effort: easy, rest: 0:40"), {"pool": "bare"},
        "depth-unfit"),
    "a partner who should stand and cannot": (
        item("reps: 4, distance: 50, do: back-swim, effort: easy, rest: 0:40, partner: holds-feet"),
        {"pool": "cold"}, "depth-unfit"),
    "under water in a teaching pool": (
        item("reps: 2, distance: 50, do: under, effort: easy, rest: 3:00"), {"pool": "shallow"},
        "depth-unfit"),
    "a dive in a lane of the public": (item(DIVE), {"more": "lanes: {shared: [3]}\n"},
                                       "shared-lane-unfit"),
    "a cord that nobody holds": (item(CORD), {}, "cord-end-unsaid"),
    "a cord that a beginner holds": (item(CORD + HELD_BY % "swimmer"), {"squad": "heron"},
                                     "cord-held"),
    "a cord in a lane that others swim in": (
        item(CORD.replace(", waves: {swimmers: 1}", "") + HELD_BY % "adult"), {}, "cord-lane"),
    "three cords and two adults": (item(CORD + HELD_BY % "adult"), {"adults": 2}, "cord-adults"),
    "cords with nobody knows how many adults": (item(CORD + HELD_BY % "anchor"), {"adults": None},
                                                "cord-adults"),
    "a cord of one lane group alone": (
        item("reps: 4, time: 0:15, do: held-kick, effort: strong, rest: 1:00, by_group: "
             "{osprey-2: {gear: [cord]}}"), {}, "cord-end-unsaid"),
    "a coach alone": (item(EASY), {"adults": 1}, "coach-alone"),
    "starts with nobody knows how many adults": (item(DIVE), {"adults": None}, "coach-alone"),
    "water of 19 degrees": (item(EASY), {"pool": "cold"}, "water-temperature"),
    "water of 33 degrees": (item(EASY), {"pool": "hot"}, "water-temperature"),
    "beginners on hard mats": (
        item("reps: 2, time: 0:30, do: hard-mat-line, effort: easy, rest: 0:15"),
        {"squad": "heron"}, "land-level"),
    "half an hour and more on "
    "land": (item("reps: 50, time: 0:30, do: mat-line, effort: easy, rest: 0:15"), {}, "land-long"),
    "mats that nobody looks at while others swim": (
        TWO_LISTS.format(more="", first=MATS, second=EASY), {}, "land-alone"),
    "a dive that stands in a note": (
        item("reps: 2, distance: 50, do: back-swim, effort: easy, rest: 1:00, note: Dive in off "
             "the block.") , {"pool": "shallow"}, "dive-unsaid"),
}  # fmt: skip

SOUND = {
    "a dive off the block in 2 m": (item(DIVE), {}),
    "a beginner's dive off the edge in 2 m": (item(DIVE.replace("start: dive", "start: edge-dive")),
                                              {"squad": "heron"}),
    "a racing dive of the passed in 1.5 m": (item(DIVE), {"pool": "half"}),
    "dives of one length, walking back": (
        item("reps: 4, distance: 25, do: back-swim, effort: fast, rest: 2:00, start: dive"), {}),
    "backstroke starts over two lengths": (
        item("reps: 4, distance: 50, do: back-swim, effort: fast, rest: 2:00, start: back-start"),
        {}),
    "a start that is taught at the deep end": (
        item("reps: 4, distance: 50, do: low-start, effort: easy, rest: 1:00"), {}),
    "a relay that takes over in the water": (
        item("reps: 2, distance: 50, do: back-swim, effort: fast, rest: 2:00, team: relay-of-two"),
        {"pool": "shallow"}),
    "a relay of two lengths each, from dives": (
        item("reps: 2, distance: 100, do: back-swim, effort: fast, rest: 2:00, start: dive, team: "
             "relay-of-two"), {}),
    "a push from the wall in 1.1 m": (
        item("reps: 4, distance: 50, do: turn-work, effort: easy, rest: 0:30"), {"pool": "half"}),
    "easy on the back without flags": (item(EASY), {"pool": "bare"}),
    "upright kicking at the deep end": (
        item("reps: 4, time: 0:20, do: deep-kick, effort: strong, rest: 0:40"), {}),
    "a standing drill at the shallow end": (
        item("reps: 4, time: 0:20, do: standing-wave, effort: easy, rest: 0:40"), {}),
    "cords that passed swimmers hold, with adults": (item(CORD + HELD_BY % "swimmer"),
        {"adults": 2}),
    "a cord an adult each": (item(CORD + HELD_BY % "adult"), {"adults": 4}),
    "ten minutes of mats, all together": (item(MATS), {"squad": "heron"}),
    "mats with an adult while others swim": (
        TWO_LISTS.format(more="led_by: head-coach, ", first=MATS, second=EASY), {}),
    "plain swimming of which nobody says how many adults": (item(EASY), {"adults": None}),
    "no dive, says the note": (
        item(
            "reps: 2, distance: 50, do: back-swim, effort: easy, note: 'No dives here, push "
            "off.'"), {"pool": "shallow"}),
}  # fmt: skip


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return club(tmp_path_factory.mktemp("unsafe") / "club")


@pytest.mark.parametrize("name", UNSAFE)
def test_it_is_refused(name: str, root: Path) -> None:
    parts, where, code = UNSAFE[name]
    assert code in codes(root, parts, **where)


@pytest.mark.parametrize("name", SOUND)
def test_it_is_let_through(name: str, root: Path) -> None:
    parts, where = SOUND[name]
    assert codes(root, parts, **where) == set()


SET = """\
title: Dives
purpose: A set that no practice has, with a start that needs deep water.
goals: [kick-technique]
level: performing
course: {course}
{pools}items:
  - {{reps: 4, distance: 100, do: back-swim, effort: fast, rest: 2:00, start: {start}}}
"""


@pytest.mark.parametrize(
    ("course", "pools", "start", "refused"),
    [
        ("25m", "", "dive", set()),  # some pool of the course has the depth
        ("50m", "", "dive", {"start-depth"}),  # and of this one none
        ("50m", "", "push-off", set()),
        ("25m", "pools: [home]\n", "dive", set()),
        ("25m", "pools: [home, shallow]\n", "dive", {"start-depth"}),
        ("25m", "pools: [steps]\n", "dive", set()),  # its second lane has the depth
        ("25m", "pools: [half]\n", "ledge-start", {"start-platform"}),
    ],
)
def test_a_set_alone_is_held_against_the_pools_it_is_for(
    course: str, pools: str, start: str, refused: set[str], tmp_path: Path
) -> None:
    root = club(tmp_path / "club")
    write(root, "plans/sets/dives.yml", SET.format(course=course, pools=pools, start=start))
    assert found(root) == refused


BLOCK = """\
title: Autumn
summary: One week with a circuit on land in it.
squad: heron
goals: [kick-technique]
starts: 2026-09-07
purpose: The fifty on the back gets two seconds quicker.
weeks:
  - focus: Line first.
    days: {mon: {land: mats}, tue: {rest: true}, wed: {rest: true}, thu: {rest: true},
           fri: {rest: true}, sat: {rest: true}, sun: {rest: true}}
"""
CIRCUIT = """\
title: Mats
purpose: Twenty minutes on mats, of which the last are long.
goals: [kick-technique]
level: performing
course: land
items:
  - {reps: 25, time: 0:30, do: hard-mat-line, effort: easy, rest: 0:15}
"""


def test_a_circuit_of_a_block_is_of_the_level_of_its_squad(tmp_path: Path) -> None:
    root = club(tmp_path / "club")
    write(root, "plans/sets/mats.yml", CIRCUIT)
    write(root, "plans/blocks/autumn.yml", BLOCK)
    land = {"land-level", "land-long"}
    assert found(root) >= land
    osprey = BLOCK.replace("squad: heron", "squad: osprey")
    write(root, "plans/blocks/autumn.yml", osprey)
    assert not found(root) & land


def test_a_start_is_shown_with_its_depth_and_its_platform(root: Path) -> None:
    assert codes(root, item(DIVE)) == set()
    own = analysis(root)
    text = practice_text(own.catalogue, own.practices["session"])
    assert "from a dive at the deep end, 2 m deep to 6 m out, 0.7 m above the water" in text
    assert "in lanes 1 to 3" in text
    assert "the pool operator's and the federation's rules come first" in text


def test_a_level_may_accept_it_and_the_lowest_never(root: Path) -> None:
    accepts = (
        "accepts: [{check: start-depth, reason: The operator measured 1.5 m today., "
        "until: 2026-10-31, by: head-coach}]\n"
    )
    parts = item(DIVE) + "\n" + accepts
    assert "start-depth" not in codes(root, parts, pool="unknown")
    assert "start-depth" in codes(root, parts, pool="unknown", squad="heron")


ACCEPTED = """\
title: Accepted
purpose: A set that its level accepts for a while.
goals: [kick-technique]
level: performing
course: 25m
accepts: [{{check: {check}, reason: Looked at by the head coach., until: 2026-10-31,
  by: head-coach}}]
items:
  - {{{reps}}}
"""


@pytest.mark.parametrize(
    ("check", "reps"),
    [
        ("under-water-rest", "reps: 4, distance: 50, do: under, effort: easy, rest: 0:10"),
        ("resisted-rep", CORD.replace("0:15", "2:30") + HELD_BY % "adult"),
    ],
)
def test_what_a_level_accepts_of_a_set_is_not_accepted_for_a_lower_one(
    check: str, reps: str, root: Path
) -> None:
    write(root, "plans/sets/accepted.yml", ACCEPTED.format(check=check, reps=reps))
    try:
        part = "  - {part: main, set: accepted}"
        assert check not in codes(root, part)
        assert check in codes(root, part, squad="heron")
    finally:
        (root / "plans/sets/accepted.yml").unlink()
