"""The adults and helpers of a practice in words: of a part, and of the moment that needs most."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.arithmetic.at_once import COACHES, LEADS
from almanac.arithmetic.helping import Help
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.watching import watch
from almanac.findings import counted
from almanac.model.catalogue import Catalogue

JOBS = {
    COACHES: ("coaches", "coach"),
    LEADS: ("takes a part alone", "take a part alone"),
    "watcher": ("watches", "watch"),
    "cord-holder": ("holds a cord", "hold a cord each"),
    "line-handler": ("pays a line out", "pay a line out each"),
    "timekeeper": ("keeps time", "keep time"),
    "caller": ("calls", "call"),
}
"""What one does, and what several do."""
_EACH = {
    "lane": ", one a lane",
    "piece": ", one for each piece in use",
    "group": ", one for each lane group",
    "part": "",
}


def help_words(own: Help, coach: str) -> str:
    """Whom a part needs for one job, and what for: ``2 adults watch, one for each lane group``;
    ``the coach calls (Upright kick)``.
    """
    one, many = JOBS[own.helper.job]
    others, who = own.others, "adult" if own.helper.adult else "helper"
    people = f"{others} {who}{'s' * (others != 1)}"
    if own.by_coach:
        words = f"the {coach} {one}" if not others else f"the {coach} and {people} {many}"
    else:
        words = f"{people} {one if others == 1 else many}"
    each = _EACH[own.helper.each] if own.count > 1 else ""
    return words + each + (f" ({', '.join(own.titles)})" if own.titles else "")


def hands_words(summary: PracticeSummary, least: int) -> str:
    """How many adults and helpers the practice needs at the same moment, beside how many it has;
    and where the house rules ask for more than the work does, ``least``, that number and why.
    """
    need = summary.hands
    if need is None:
        return ""
    has = summary.practice.adults
    beside = "" if has is None else f", and has {has}"
    must = jobs_words(need.must)
    if need.adults >= least:
        words = f"Needs {counted(need.adults, 'adult')} at the same moment{beside}: {must}."
    else:
        rule = f"the fewest by the house rules for {counted(_heads(summary), 'swimmer')} here"
        words = f"Needs {counted(least, 'adult')}, {rule}{beside}; at the same moment: {must}."
    others = {job: count - need.must.get(job, 0) for job, count in need.jobs.items()}
    more = jobs_words({job: count for job, count in others.items() if count})
    return words + (f" Beside them, adult or swimmer: {more}." if more else "")


def adults_least(catalogue: Catalogue, summary: PracticeSummary) -> int:
    """The fewest adults that the house rules let a practice have, whatever is done in it."""
    level = catalogue.club.squads[summary.practice.squad].level
    return watch(catalogue.policy, level, summary.pool).least(_heads(summary))


def _heads(summary: PracticeSummary) -> int:
    return sum(group.heads for group in summary.groups.values())


def jobs_words(jobs: Mapping[str, int]) -> str:
    """How many do each job: ``1 to coach, 2 to watch``."""
    return ", ".join(
        f"{count} to {JOBS[job][1].removesuffix(' each' if count == 1 else '')}"
        for job, count in jobs.items()
    )
