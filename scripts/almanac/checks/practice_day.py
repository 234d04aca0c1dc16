"""Rules on a practice as it happens: who is apart from whom, in which lanes, with how many adults,
and whether its clock is known.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.at_once import moments
from almanac.arithmetic.crews import HALVES, Crew
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice import PracticeSummary
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.knowledge import Gear
from almanac.model.practice import Practice, PracticePart
from almanac.source.reader import DataPath


@forbids("apart-unsound")
def apart_unsound(analysis: Analysis) -> Iterator[Problem]:
    """Where a practice runs apart or changes over, each lane group of the squad is in one list or
    begins at one station, or both halves of the lanes do.
    """
    for id, practice in analysis.computable_practices.items():
        groups = tuple(analysis.practices[id].groups)
        for number, part in enumerate(practice.parts):
            problem = _unsound(part, groups)
            if problem:
                key = "apart" if part.apart else "stations"
                hint = "name each lane group of the squad once, or give each half of the lanes"
                yield Problem(practice, ("parts", number, key), problem, hint, of_key=True)


def _unsound(part: PracticePart, groups: tuple[str, ...]) -> str:
    if not part.apart and not part.stations:
        return ""
    named = [(own.groups, own.half) for own in part.apart]
    named += [(station.begins, station.half) for station in part.stations]
    if part.stations and not any(ids or half for ids, half in named):
        return ""
    halves = [half for _, half in named if half]
    ids = Counter(id for names, _ in named for id in names)
    if halves and ids:
        return "some have lane groups and some have halves of the lanes"
    if halves:
        sound = sorted(halves) == sorted(HALVES)
        return "" if sound else "not both halves of the lanes are there, each once"
    wrong = [f"'{id}' is not of this squad" for id in ids if id not in groups]
    wrong += [f"'{id}' is named twice" for id, count in ids.items() if count > 1]
    wrong += [f"'{id}' is nowhere" for id in groups if id not in ids]
    return wrong[0] if wrong else ""


@forbids("lane-not-there")
def lane_not_there(analysis: Analysis) -> Iterator[Problem]:
    """A lane that is named is one of the pool's, and in use; and no lane group is left without a
    lane while it is in the water.
    """
    for practice, summary in _practices(analysis):
        for path, lanes in _named_lanes(practice):
            beyond = [lane for lane in lanes if lane > summary.pool.lanes]
            closed = [lane for lane in lanes if lane in practice.lanes.out_of_use]
            if beyond:
                message = f"there is no lane {beyond[0]}: the club has {summary.pool.lanes} here"
                yield Problem(practice, path, message, "name one of them, counted from 1")
            elif closed and path != ("lanes", "out_of_use"):
                message = f"lane {closed[0]} is out of use"
                yield Problem(practice, path, message, "give the lane group another lane")
        for run, crew in _in_water(summary):
            if not crew.lanes:
                message = f"{crew.name} has no lane left: all of its own are out of use"
                hint = "give it lanes of others in `lanes`, for the practice or for this part"
                yield Problem(practice, run.path, message, hint)
                break


def _named_lanes(practice: Practice) -> Iterator[tuple[DataPath, tuple[int, ...]]]:
    own = practice.lanes
    yield ("lanes", "out_of_use"), own.out_of_use
    yield ("lanes", "shared"), own.shared
    for group, lanes in own.groups.items():
        yield ("lanes", "groups", group), lanes
    for path, doing in practice.doings:
        for group, lanes in doing.lanes.items():
            yield (*path, "lanes", group), lanes


@forbids("lane-twice")
def lane_twice(analysis: Analysis) -> Iterator[Problem]:
    """No two lane groups are in one lane at the same moment."""
    for practice, summary in _practices(analysis):
        for busy in moments(summary.sheet):
            holder: dict[int, Crew] = {}
            for row, cell in busy:
                if not row.run.is_in_water:
                    continue
                clash = next((lane for lane in cell.crew.lanes if lane in holder), None)
                if clash is not None and holder[clash].group != cell.group:
                    message = f"lane {clash} has {holder[clash].name} and {cell.crew.name} in it"
                    hint = "give one of them other lanes"
                    yield Problem(practice, row.run.path, message, hint)
                holder.update(dict.fromkeys(cell.crew.lanes, cell.crew))


@forbids("shared-lane-unfit")
def shared_lane_unfit(analysis: Analysis) -> Iterator[Problem]:
    """In a lane that is shared with the public nobody goes under water, on a cord or against gear
    that resists: strangers cannot know of it.
    """
    for practice, summary in _practices(analysis):
        for run, crew in _in_water(summary):
            shared = [lane for lane in crew.lanes if lane in practice.lanes.shared]
            what = _unfit(run, crew, analysis.catalogue.gear) if shared else ""
            if what:
                message = f"{crew.name} has {what} in lane {shared[0]}, shared with the public"
                hint = "give it other lanes for this part, or do it on another day"
                yield Problem(practice, run.path, message, hint)


def _unfit(run: PartRun, crew: Crew, gear: dict[str, Gear]) -> str:
    for piece in run.of(crew.group).pieces:
        if piece.drill.is_under_water:
            return piece.drill.title.lower()
        for id in piece.gear:
            if gear[id].resists or any(one.job == "cord-holder" for one in gear[id].helpers):
                return f"{piece.drill.title.lower()} with {gear[id].title.lower()}"
    return ""


@warns("shared-lane-full")
def shared_lane_full(analysis: Analysis) -> Iterator[Problem]:
    """A lane that is shared with the public holds few of the squad (``shared_lane_most`` in the
    policy); who has no other lane is no more than that.
    """
    most = int(analysis.catalogue.policy.limit("shared_lane_most"))
    for practice, summary in _practices(analysis):
        told: set[str] = set()
        for run, crew in _in_water(summary):
            shared = [lane for lane in crew.lanes if lane in practice.lanes.shared]
            full = bool(shared) and len(shared) == len(crew.lanes)
            if full and crew.heads > most * len(shared) and crew.name not in told:
                told.add(crew.name)
                message = (
                    f"{crew.name}: {crew.heads} heads, and only lanes that are shared with the "
                    f"public, which hold {most} each"
                )
                hint = "give it a lane of its own, or have some do their part on land"
                yield Problem(practice, run.path, message, hint)


@forbids("adults-short")
def adults_short(analysis: Analysis) -> Iterator[Problem]:
    """As many adults are there as a practice needs at the same moment: one for each part that is
    led alone, and those whom drills, gear and parts ask for in ``helpers``. Not looked at where a
    practice does not say how many ``adults`` it has.
    """
    for practice, summary in _practices(analysis):
        need = summary.hands
        if need and practice.adults is not None and practice.adults < need.adults:
            jobs = ", ".join(f"{count} to {_verb(job)}" for job, count in need.jobs.items())
            message = f"{need.adults} adults are needed at the same moment ({jobs})"
            hint = "have parts run one after the other, or find another adult"
            yield Problem(practice, ("adults",), message, hint)


def _verb(job: str) -> str:
    return {
        "lead": "take a part alone",
        "watcher": "watch",
        "cord-holder": "hold cords",
        "timekeeper": "keep time",
        "caller": "call",
    }[job]


@warns("part-length-unknown")
def part_length_unknown(analysis: Analysis) -> Iterator[Problem]:
    """How long each part takes each lane group is known. Where it is not, every time after it on
    the run sheet is only the earliest.
    """
    for practice, summary in _practices(analysis):
        for missing in summary.ends.missing:
            message = (
                f"how long it takes {missing.group} is not known, so every later time is only "
                "the earliest"
            )
            yield Problem(practice, missing.path, message, _mend(missing.group, missing.reasons))


def _mend(group: str, reasons: tuple[NoNumber, ...]) -> str:
    tests = dict.fromkeys(reason.benchmark for reason in reasons if reason.benchmark)
    if tests:
        return (
            f"swim {' and '.join(tests)} with {group}, or give its reps send-offs, or assume a time"
        )
    drills = dict.fromkeys(
        reason.drill for reason in reasons if reason.because is Because.NO_PACE_RULE
    )
    what = f"give {' and '.join(drills)} a pace, or" if drills else "give"
    return f"{what} its reps send-offs, or assume a time"


def _practices(analysis: Analysis) -> Iterator[tuple[Practice, PracticeSummary]]:
    for id, summary in analysis.practices.items():
        yield analysis.catalogue.practices[id], summary


def _in_water(summary: PracticeSummary) -> Iterator[tuple[PartRun, Crew]]:
    """Each crew in each part that is in the water, once."""
    seen: set[tuple[DataPath, str]] = set()
    for run in summary.runs:
        for crew in run.crews:
            if run.is_in_water and (run.path, crew.name) not in seen:
                seen.add((run.path, crew.name))
                yield run, crew
