"""Arguments of ``sum`` that say what is otherwise on the night of a practice."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from dataclasses import replace

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.commands.find_entry import FoundEntry
from almanac.commands.given import natural
from almanac.commands.outcome import UsageError
from almanac.model.practice import Lanes
from almanac.model.tonight import Tonight, tonight

_KIND = "practice"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments, in a group of their own."""
    night = parser.add_argument_group("a practice on the night; everything follows")
    night.add_argument(
        "--heads", metavar="GROUP=N", action="append", default=[], help="swimmers who came"
    )
    night.add_argument(
        "--lanes", metavar="GROUP=1,2", action="append", default=[], help="its lanes, by number"
    )
    night.add_argument(
        "--without-lane", metavar="N", type=int, action="append", default=[],
        help="a lane that is out of use",
    )  # fmt: skip
    night.add_argument("--adults", metavar="N", type=int, help="adults who are there")
    night.add_argument("--minutes", metavar="N", type=int, help="minutes that are left")
    night.add_argument(
        "--from-part", metavar="N", type=int, default=1, help="the part that comes next"
    )


def change_of(arguments: argparse.Namespace) -> Tonight:
    """What the arguments say. Raises UsageError for what cannot be read."""
    for name in ("adults", "minutes", "from_part"):
        value = getattr(arguments, name)
        if value is not None and value < 1:
            raise UsageError(f"--{name.replace('_', '-')} is a whole number from 1 on")
    return Tonight(
        heads={group: _number(text, "--heads") for group, text in _pairs(arguments.heads, "heads")},
        lanes={
            group: _numbers(text, "--lanes") for group, text in _pairs(arguments.lanes, "lanes")
        },
        out_of_use=tuple(arguments.without_lane),
        adults=arguments.adults,
        minutes=arguments.minutes,
        begins_with=arguments.from_part,
    )


def as_it_is(found: FoundEntry, analysis: Analysis, change: Tonight) -> FoundEntry:
    """The practice as it is on the night, with the findings that it and its sets then have."""
    if found.kind != _KIND:
        raise UsageError(
            f"what is otherwise on the night is for a practice; this is a {found.kind}"
        )
    catalogue = analysis.catalogue
    practice = catalogue.practices[found.id]
    squad = [id for id, group in catalogue.lane_groups.items() if group.squad == practice.squad]
    for group in (*change.heads, *change.lanes):
        if group not in squad:
            raise UsageError(f"'{found.id}' is not for {group}; it is for {', '.join(squad)}")
    if change.begins_with > len(practice.parts):
        raise UsageError(f"'{found.id}' has {len(practice.parts)} parts")
    own = Analysis(tonight(catalogue, found.id, change), analysis.today)
    sets = {catalogue.sets[doing.set].file for _, doing in practice.doings if doing.set}
    findings = [finding for finding in check(own) if finding.place.file in {practice.file, *sets}]
    return replace(found, analysis=own, findings=findings)


def _pairs(texts: Iterable[str], name: str) -> list[tuple[str, str]]:
    pairs = [tuple(text.partition("=")[::2]) for text in texts]
    if any(not group or not value for group, value in pairs):
        raise UsageError(f"--{name} is written GROUP=NUMBER, say --{name} osprey-1=4")
    groups = [group for group, _ in pairs]
    if twice := next((group for group in groups if groups.count(group) > 1), ""):
        raise UsageError(f"--{name} names {twice} twice: say each lane group once")
    return [(group, value) for group, value in pairs]


def _number(text: str, name: str) -> int:
    number = natural(text)
    if number is None or not 0 < number <= 200:
        raise UsageError(f"{name}: '{text}' is no whole number from 1 to 200")
    return number


def _numbers(text: str, name: str) -> Lanes:
    return tuple(_number(one, name) for one in text.split(","))
