"""The rule that refuses breath-holding, wherever an entry could ask for it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.model.fault import Fault
from almanac.model.knowledge import Drill
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.walk import notes_with_paths
from almanac.source.reader import DataPath

_SIGNS = re.compile(
    r"hypoxic|breath[- ]?hold|hold(?:ing)? (?:your|the|their|his|her) breath|lung buster|"
    r"no[- ]breath(?:er|ers| sprint| swim| length| on| until| between| \d)|"
    r"(?:\d+|\b(?:four|five|six|seven|eight|ten|lengths?|far|long))\b[^.;:]{0,20}"
    r"(?:without (?:a |one |any )?breath|without breathing)|"
    r"(?:swim|swum|kick|kicked|glide|lengths?|metres|far)\b[^.;:]{0,12}(?:on|in) one breath",
    re.IGNORECASE,
)
_NAMED = ("breath", "hypox", "lung bu")  # one of them stands in everything that _SIGNS finds
_REFUSED = re.compile(
    r"\b(?:never|not|no one|nobody|refused?|don't|instead of|stop)\b", re.IGNORECASE
)


@forbids("breath-holding")
def breath_holding(analysis: Analysis) -> Iterator[Problem]:
    """Breath-holding for distance or time is refused.

    Hyperventilation before underwater swimming and extended breath-holding "are dangerous and
    potentially deadly" (joint statement of the American Red Cross and the YMCA of the USA, 27 May
    2015). No title, summary, cue, step, correction, test, focus or note may ask for it. A sentence
    that forbids it may name it.
    """
    for entry, path, text in _texts(analysis.catalogue):
        folded = text.casefold()
        if not any(word in folded for word in _NAMED):
            continue
        for sentence in re.split(r"(?<=[.!?;:])\s", text):
            if _SIGNS.search(sentence) and not _REFUSED.search(sentence):
                yield Problem(
                    entry,
                    path,
                    f"'{sentence}' asks for breath-holding",
                    "take it out: it is refused here",
                )


def _texts(catalogue: Catalogue) -> Iterator[tuple[Entry, DataPath, str]]:
    for entry in catalogue.entries.values():
        yield entry, ("title",), entry.title
        yield entry, ("summary",), entry.summary
        for path, text in _own_texts(entry):
            yield entry, path, text


def _own_texts(entry: Entry) -> Iterator[tuple[DataPath, str]]:
    match entry:
        case Drill():
            for name in ("cues", "steps"):
                yield from (
                    ((name, number), text) for number, text in enumerate(getattr(entry, name))
                )
            yield from (
                (("goes_wrong", number, "say"), wrong.say)
                for number, wrong in enumerate(entry.goes_wrong)
            )
        case Fault():
            yield from (
                (("causes", number, "tell_apart"), cause.tell_apart)
                for number, cause in enumerate(entry.causes)
            )
        case SwimSet():
            yield from notes_with_paths(entry.items)
        case Practice():
            yield ("focus",), entry.focus
            for number, part in enumerate(entry.parts):
                if part.apart or part.stations:
                    yield ("parts", number, "note"), part.note
            for path, doing in entry.doings:
                yield (*path, "note"), doing.note
                yield from notes_with_paths(doing.items, (*path, "items"))
        case Block():
            yield from (
                (("weeks", number, "focus"), week.focus) for number, week in enumerate(entry.weeks)
            )
