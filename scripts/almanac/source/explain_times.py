"""Failures of times and days, told as findings."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.findings import Finding
from almanac.source.failure import Failure, quote
from almanac.source.put_together import of_groups, several_times
from almanac.source.times_meant import day_meant, days_meant, dotted_time, time_meant


def groups_in_list(failure: Failure) -> list[Finding] | None:
    """Lane groups with their times in a list, told at the first of them; None for anything else."""
    *path, last = failure.path or ("",)
    if not isinstance(last, int):
        return None
    data: object = failure.document.data
    for step in path:
        data = data[step]  # type: ignore[index]
    meant = of_groups(data, failure)
    if not meant:
        return None
    message = f"lane groups stand in braces with their times, and '{path[-1]}' is a list"
    return [] if last else [failure.say("wrong-type", message, f"write {meant}", tuple(path))]


def clock(failure: Failure) -> Iterator[Finding]:
    """A length of time that is none, or no whole one."""
    if (told := groups_in_list(failure)) is not None:
        yield from told
        return
    message, hint = str(failure.problem.cause), getattr(failure.problem.cause, "hint", "")
    written = failure.written
    said = failure.value if isinstance(failure.value, str) else ""
    if said and (meant := time_meant(said) or of_groups(said, failure)):
        hint = f"write {meant}"
    elif said and (meant := several_times(said, failure)):
        hint = meant
    elif isinstance(failure.value, float) and (meant := dotted_time(written)):
        is_whole = failure.wanted == "whole"
        message = f"{written} is read as {failure.value} seconds"
        message += ", and this is in whole seconds" if is_whole else ""
        seconds = "" if is_whole else f", or 0:{failure.value:05.2f} for seconds"
        hint = f"write {meant} for minutes and seconds{seconds}"
    yield failure.say("bad-time", message, hint)


def day(failure: Failure) -> Iterator[Finding]:
    """A day that is none."""
    said = failure.value if isinstance(failure.value, str) else ""
    meant = f"write {day_meant(said)}" if day_meant(said) else days_meant(said)
    usual = "write a day that exists, from 1900 to 2199, as YYYY-MM-DD"
    yield failure.say("bad-date", f"{quote(failure.value)} is no day", meant or usual)
