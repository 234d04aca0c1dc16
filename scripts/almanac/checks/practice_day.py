"""Rules on a practice as it happens: who is apart from whom, with how many adults, and whether its
clock is known.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.at_once import COACHES, LEADS
from almanac.arithmetic.crews import HALVES
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.checks.each_practice import practices_of
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.practice import PracticePart


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


_VERBS = {
    COACHES: "coach",
    LEADS: "take a part alone",
    "watcher": "watch",
    "cord-holder": "hold cords",
    "line-handler": "pay lines out",
    "timekeeper": "keep time",
    "caller": "call",
}


@forbids("adults-short")
def adults_short(analysis: Analysis) -> Iterator[Problem]:
    """As many adults are there as a practice needs at the same moment: one for each part that is
    led alone, one who coaches all the others, and those whom drills, gear and parts ask for in
    ``helpers``, save a job that falls to the coach (``coach_is``). Not looked at where a practice
    does not say how many ``adults`` it has.
    """
    for practice, summary in practices_of(analysis):
        need = summary.hands
        if need and practice.adults is not None and practice.adults < need.adults:
            jobs = ", ".join(f"{count} to {_VERBS[job]}" for job, count in need.must.items())
            message = f"{need.adults} adults are needed at the same moment ({jobs})"
            hint = (
                "have parts run one after the other, say which job the coach does (coach_is), "
                "or find another adult"
            )
            yield Problem(practice, ("adults",), message, hint)


@warns("part-length-unknown")
def part_length_unknown(analysis: Analysis) -> Iterator[Problem]:
    """How long each part takes each lane group is known. Where it is not, every time after it on
    the run sheet is only the earliest.
    """
    for practice, summary in practices_of(analysis):
        for missing in summary.ends.missing:
            group = analysis.catalogue.lane_groups[missing.group].title
            message = f"{group}: how long it takes is not known; later times are only the earliest"
            yield Problem(practice, missing.path, message, _mend(group, missing.reasons))


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
