"""What ``start`` asks: each answer read as it was meant, a bad one told and asked again; whatever
is answered makes a sound club.
"""

from __future__ import annotations

import os
import pty
import sys
from datetime import date
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from shared import examples

from almanac.commands import start_answers as read
from almanac.commands import start_places as places
from almanac.commands.bring_tried import write_all
from almanac.commands.shared import load_and_check
from almanac.model.load import Loaded, load
from almanac.model.new_club import (
    LEVELS,
    TEST,
    NewClub,
    NewGroup,
    NewPool,
    NewSquad,
    club_file,
)
from almanac.model.starting import folder_of
from almanac.resources import HOME
from almanac.units import parse_time

DAY = date(2027, 6, 1)


@pytest.mark.parametrize(
    ("words", "depth"),
    [("1.0-1.9", (1.0, 1.9)), ("1,8 - 2", (1.8, 2.0)), ("2", (2.0, 2.0)), ("2.1-1.2 m", (1.2, 2.1)),
     ("4-7ft", (1.22, 2.13))],
)  # fmt: skip
def test_a_depth_in_metres_or_feet_from_either_end(words: str, depth: tuple[float, float]) -> None:
    """4 ft are 1.2192 m, 7 ft 2.1336 m: the foot is 0.3048 m, international agreement of 1959."""
    assert places.depth(words) == depth


@pytest.mark.parametrize(
    ("words", "course"),
    [("25", "25m"), ("25 m", "25m"), ("50m", "50m"), ("50-m-Bahn", "50m"), ("25 yards", "25yd"),
     ("25yd", "25yd"), ("Land", "land")],
)  # fmt: skip
def test_a_course_in_many_spellings(words: str, course: str) -> None:
    assert places.course(words) == course


@pytest.mark.parametrize("mark", [" / ", " /", "/ "])
def test_pools_in_one_line_are_parted_by_a_stroke_with_a_blank(mark: str) -> None:
    found = places.pools(f"Home 25m 6 1.0-1.9{mark}Hall 1/2 land")
    assert [(own.title, own.course) for own in found] == [("Home", "25m"), ("Hall 1/2", "land")]


def test_a_name_gives_an_id_and_stays_as_it_was_written() -> None:
    assert read.named("Größe Eins") == ("grosse-eins", "Größe Eins")
    assert read.named("reds") == ("reds", "Reds")
    assert read.named("on") == ("on", "On")


def test_a_squad_of_several_lane_groups() -> None:
    groups = (NewGroup(2, 10, "4:20"), NewGroup(1, 6, ""), NewGroup(1, 5, "5:01.5"))
    said = read.squad("Blue Team building 3 2 10 4:20 / 1 6 / 1 5 5:01,5")
    assert said == NewSquad("blue-team", "Blue Team", "building", 3, groups)


@pytest.mark.parametrize(
    ("words", "course", "assumed"),
    [
        ("Reds performing 2 2 10 4:40 / 2 9 -", "25m", {"reds-2": "4:40"}),
        ("Reds performing 2 2 10 - / 2 9 3:10", "25m", {"reds-1": "3:10"}),
        ("Reds performing 2 2 10 3:00 / 1 9 - / 1 4 5:00", "25m", {"reds-2": "3:30"}),
        ("Reds performing 2 2 10 - / 2 9 -", "25m", {"reds-1": "3:30", "reds-2": "3:30"}),
        # 200 yards are 182.88 m, by the yard of 0.9144 m
        ("Reds performing 2 2 10 4:34.3 / 2 9 -", "25yd", {"reds-2": "5:00"}),
    ],
)
def test_a_group_that_nobody_timed_is_as_quick_as_its_neighbours_let_it_be(
    words: str, course: str, assumed: dict[str, str]
) -> None:
    """Lane groups stand quickest first."""
    home = NewPool("home", "Home", course, 6, 1.0, 1.9)
    club = NewClub("Ours", "", "", "", "", (), (home,), (read.squad(words),), {})
    groups = yaml.load(club_file(club, DAY), yaml.BaseLoader)["lane_groups"]
    found = {
        id: own["time"]
        for id, group in groups.items()
        for own in group["assume"]
        if own["benchmark"] == TEST
    }
    seconds = {id: parse_time(time) for id, time in assumed.items()}
    assert {id: parse_time(time) for id, time in found.items()} == seconds


def test_a_colour_is_made_far_enough_from_what_it_stands_on() -> None:
    assert read.colours("-") == ()
    assert read.colours("#88aaff") != ("#88aaff", "#88aaff")
    assert read.colours("Green")[0] == "#0f5132"


@pytest.fixture(scope="module")
def shelf() -> Loaded:
    return load(HOME)


COUNTS = st.integers(1, 3)
GROUPS = st.builds(NewGroup, COUNTS, st.integers(1, 30), st.sampled_from(["", "3:30", "5:40.5"]))
SQUADS = st.builds(
    NewSquad, st.just(""), st.just("Squad: 1 #"), st.sampled_from(LEVELS), st.integers(1, 14),
    st.lists(GROUPS, min_size=1, max_size=3).map(tuple),
)  # fmt: skip
POOLS = st.one_of(
    st.builds(
        NewPool, st.just(""), st.just("Pool"), st.sampled_from(["25m", "25yd", "50m"]),
        st.integers(9, 20),
        st.sampled_from([0.4, 1.0, 1.83]), st.sampled_from([1.9, 2.0, 5.0]),
    ),
    st.just(NewPool("", "Hall", "land")),
)  # fmt: skip


@given(
    pools=st.lists(POOLS, min_size=1, max_size=3),
    squads=st.lists(SQUADS, min_size=1, max_size=3),
    gear=st.dictionaries(st.sampled_from(["fins", "kickboard", "snorkel"]), st.integers(0, 30)),
)
@settings(max_examples=examples(2, 60), deadline=None)
def test_whatever_is_answered_makes_a_sound_club(
    shelf: Loaded,
    tmp_path_factory: pytest.TempPathFactory,
    pools: list[NewPool],
    squads: list[NewSquad],
    gear: dict[str, int],
) -> None:
    """Ids that YAML would take for a number or a truth are among them."""
    ids = ("12", "on", "null")
    club = NewClub(
        'A "club": #1', "https://a.example/", "", "", "Wel: come #", (),
        tuple(NewPool(id, *list(vars(own).values())[1:]) for id,
              own in zip(ids, pools, strict=False)),
        tuple(NewSquad(id, *list(vars(own).values())[1:]) for id,
              own in zip(ids, squads, strict=False)),
        gear,
    )  # fmt: skip
    root = tmp_path_factory.mktemp("sound")
    write_all(root, folder_of(club, shelf, DAY, date(2027, 6, 29)))
    checked = load_and_check(root, DAY)
    assert [one for one in checked.findings if one.is_error] == []
    assert checked.loaded.catalogue is not None
    assert checked.loaded.catalogue.club.title == club.name


def typed(argv: list[str], answers: list[str]) -> tuple[str, int]:
    """What a program says on a terminal to answers, each typed once it asks; then its exit code."""
    child, terminal = pty.fork()
    if not child:
        os.execv(argv[0], argv)
    said, rest = b"", [*answers, "\x04"]
    while True:
        try:
            said += os.read(terminal, 1024)
        except OSError:  # the program has closed it
            break
        if said.endswith(b"] ") and rest:
            os.write(terminal, rest.pop(0).encode())
            os.write(terminal, b"\n") if rest else None
    return said.decode().replace("\r", ""), os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


TALK = {
    "S<V": "a name is 2 to 60 letters", "SV Gröna": "", "33": "'33' is none", "50": "",
    "Freibad": "", "six": "'six' is no number of lanes", "8": "",
    "0.4-0.9": "0.4 to 0.9 m is too shallow for any dive or start, which needs 1.35 m", "1,8-2": "",
    "-": "", "112 / Freibad": "2 of six are said", "": "", "Große": "", "b": "",
    "99": "'99' is no number of sessions", "4": "",
}  # fmt: skip
REST = [
    "2", "4", "16", "4:75", "4:10,5", "4", "", "", "", "kickbord 20", "fins 12", "our.example",
    "https://our.example/sv", "", "", "Willkommen: #1", "red",
]  # fmt: skip


def test_typed_at_a_terminal_a_bad_answer_is_told_and_asked_again(tmp_path: Path) -> None:
    argv = [
        sys.executable,
        "-m",
        "almanac",
        "start",
        str(tmp_path / "own"),
        "--today",
        "2027-06-01",
    ]
    said, code = typed(argv, [*TALK, *REST])
    assert code == 0, said
    for told in [
        *TALK.values(),
        "seconds run from 00 to 59; write 5:15",
        "is it 'kickboard'?",
        "do you mean https://our.example?",
    ]:
        assert told in said
    club = yaml.safe_load((tmp_path / "own/plans/club.yml").read_text("utf-8"))
    assert club["title"] == "SV Gröna" and club["site"]["welcome"] == "Willkommen: #1"
    assert club["pools"]["freibad"]["depth_m"] == {"from": 1.8, "to": 2}
    assert list(club["lane_groups"]) == ["grosse-1", "grosse-2"]
    assert club["gear_owned"] == {"fins": 12}


def test_answers_that_end_early_write_nothing(tmp_path: Path) -> None:
    said, code = typed([sys.executable, "-m", "almanac", "start", str(tmp_path / "own")], ["Ours"])
    assert code == 2 and "the answers ended before the questions" in said
    assert list(tmp_path.iterdir()) == []
