"""Rules on what was kept of a day: its date, its lane groups, and that it tells of no person."""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterator
from datetime import date
from itertools import combinations

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.block import Block, Session
from almanac.model.catalogue import Catalogue
from almanac.model.log import Log
from almanac.model.meet import Meet
from almanac.model.season import Season
from almanac.model.timetable import Timetable
from almanac.source.reader import DataPath

RATED_HEADS = 5  # below it a mean could tell what one child said

_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_SENTENCE = re.compile(r"[^.!?:;\n]+")
_ADDRESS = re.compile(r"\S+@\S+|(?:\+|\b0)\d(?:[ ()/-]?\d){7,}")
_FEASTS = (
    "New Year Christmas Advent Easter Pentecost Whitsun Carnival Lent Ramadan Eid Diwali Passover "
    "Hanukkah Thanksgiving"
)  # what weeks of a plan are told by
_PLAIN = {"I", *calendar.day_name, *calendar.month_name, *_FEASTS.split()}


@forbids("log-ahead")
def log_ahead(analysis: Analysis) -> Iterator[Problem]:
    """What is kept of a day has happened: its date is not after today."""
    for log in analysis.catalogue.logs.values():
        if log.on > analysis.today:
            message = f"{log.on} is still to come"
            yield Problem(log, ("on",), message, "write the day on which it was done")


@forbids("log-other-group")
def log_other_group(analysis: Analysis) -> Iterator[Problem]:
    """The lane groups of what is kept are of the squad that the practice is for."""
    catalogue = analysis.catalogue
    for log in catalogue.logs.values():
        squad = catalogue.practices[log.practice].squad if log.practice else log.squad
        for index, group in enumerate(log.groups):
            if catalogue.lane_groups[group].squad != squad:
                message = f"'{group}' is no lane group of {squad}, whose session this is"
                yield Problem(log, ("groups", index), message, f"name a lane group of {squad}")


@forbids("log-twice")
def log_twice(analysis: Analysis) -> Iterator[Problem]:
    """A session of a lane group is kept once: one practice, one day, one start."""
    logs = analysis.catalogue.logs.values()
    for first, second in combinations(sorted(logs, key=lambda log: (log.on, log.id)), 2):
        same = _session(first) == _session(second)
        groups = set(first.groups) & set(second.groups)
        shares = not first.groups or not second.groups or groups
        if same and shares and (not first.start or first.start == second.start):
            message = f"'{first.id}' keeps this session already"
            hint = "remove one of the two, or name in each its own groups or its start"
            yield Problem(second, ("on",), message, hint)


@forbids("rating-of-few")
def rating_of_few(analysis: Analysis) -> Iterator[Problem]:
    """A mean rating is kept of at least five swimmers: of fewer it could tell what one of them
    said.
    """
    for log in analysis.catalogue.logs.values():
        if log.rating is not None and log.heads < RATED_HEADS:
            message = f"a rating of {log.heads} heads could tell of one swimmer"
            hint = f"leave the rating out: it is kept from {RATED_HEADS} heads on"
            yield Problem(log, ("rating",), message, hint)


def _session(log: Log) -> tuple[object, ...]:
    return (log.what, log.squad, log.on)


@warns("log-not-planned")
def log_not_planned(analysis: Analysis) -> Iterator[Problem]:
    """What is kept of land or other work stands beside a session that a block of the squad has on
    that day: no page would show it else.
    """
    for log in analysis.catalogue.logs.values():
        blocks = [own for own in analysis.catalogue.blocks.values() if own.squad == log.squad]
        sessions = [session for block in blocks for session in _sessions_on(block, log.on)]
        if log.practice is None and not any(log.keeps(session) for session in sessions):
            others = [own.other or own.land or own.practice for own in sessions]
            there = f"it has {', '.join(map(str, others))}" if others else "it has no session"
            message = f"no block of {log.squad} has '{log.what}' on {log.on}: {there}"
            key = "land" if log.land else "other"
            yield Problem(log, (key,), message, "write it as the block does, or plan it there")


def _sessions_on(block: Block, on: date) -> tuple[Session, ...]:
    """What a block has on a day."""
    week, number = divmod((on - block.starts).days, DAYS_A_WEEK)
    days = block.weeks[week].days if 0 <= week < len(block.weeks) else {}
    day = days.get(DAYS[number])
    return day.every_session if day else ()


@warns("name-in-log")
def name_in_log(analysis: Analysis) -> Iterator[Problem]:
    """What is kept names no person. A capital inside a sentence that stands in no title, word list
    or name of the club is taken for a name, and so are two capitals in a row, an address and a
    telephone number. A single name that begins a sentence cannot be told from any other word.
    """
    known = known_words(analysis.catalogue)
    for log in analysis.catalogue.logs.values():
        texts: list[tuple[DataPath, str]] = [(("title",), log.title), (("note",), log.note)]
        texts += [(("changed", number), text) for number, text in enumerate(log.changed)]
        for path, text in texts:
            found = next(names_in(text, known), None)
            if found:
                message = f"'{found}' reads like a name, an address or a number of a person"
                hint = "say it without: a swimmer, the lane, the coach on deck"
                yield Problem(log, path, message, hint)


def names_in(text: str, known: set[str]) -> Iterator[str]:
    """What of a text reads like a name, an address or a number of a person."""
    yield from _ADDRESS.findall(text)
    for sentence in _SENTENCE.findall(text):
        words = _WORD.findall(sentence)
        for number, word in enumerate(words):
            capital = word[:1].isupper() and word.removesuffix("'s").removesuffix("’s") not in known
            pair = number + 1 < len(words) and words[number + 1][:1].isupper()
            if capital and not word.isupper() and (number or (pair and words[1] not in known)):
                yield word


def known_words(catalogue: Catalogue) -> set[str]:
    """The words with a capital that the catalogue itself uses in titles and names."""
    club = catalogue.club
    of_days = Log | Meet | Season | Timetable  # what a name is looked for in vouches for none
    titles = [entry.title for entry in catalogue.entries.values() if not isinstance(entry, of_days)]
    titles += [word.title for own in catalogue.vocabularies.values() for word in own.words.values()]
    titles += [pool.title for pool in club.pools.values()]
    titles += [squad.title for squad in club.squads.values()]
    titles += [group.title for group in club.lane_groups.values()]
    return _PLAIN | {word for title in titles for word in _WORD.findall(title)}
