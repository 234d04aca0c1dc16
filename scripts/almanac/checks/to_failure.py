"""The rule that refuses work to failure: how much is done is said beforehand."""

from __future__ import annotations

import re
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, refuses
from almanac.model.block import Block
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.walk import notes_with_paths
from almanac.source.reader import DataPath

_WHO = (
    r"(?:you|they|he|she|everyone|somebody|someone|one of you|swimmers?|"
    r"(?:the|your|their) (?:legs?|arms?|lungs?|body|lane|swimmers?))"
)
_ENDS = r"fails?|drops?|collapses?|gives? out|gives? up|vomits?|throws? up|(?:are|is|feels?) sick"
_SIGNS = re.compile(
    r"\b(?:to|until|till|unto|past|beyond|into) (?:the point of |total |complete |muscle |full )?"
    r"(?:failure|exhaustion)\b|"
    rf"\b(?:until|till) {_WHO} (?:{_ENDS}|can(?:no|')t|can no longer|have nothing left)\b|"
    r"\b(?:until|till) (?:there is |you have )?nothing (?:is )?left\b|"
    r"\blast (?:one |swimmer )?(?:left )?(?:standing|going|kicking|swimming) wins\b",
    re.IGNORECASE,
)
_NAMED = ("until", "till", "failure", "exhaustion", "wins")
_DENIED = re.compile(
    r"\b(?:never|not|nobody|no one|none|stop|before|instead of|rather than)\b", re.IGNORECASE
)


@refuses("to-failure")
def to_failure(analysis: Analysis) -> Iterator[Problem]:
    """No set, practice, block or drill is done to failure: how much is done is said beforehand, and
    it ends while the shape still holds. Who is worked until nothing is left is weakest in deep
    water. A sentence that forbids it may name it.
    """
    for entry in analysis.catalogue.entries.values():
        for path, text in _texts(entry):
            words = asks_for_failure(text)
            if words:
                hint = "write how many, and stop while the shape holds"
                yield Problem(entry, path, f"'{words}' is work to failure", hint)


def asks_for_failure(text: str) -> str:
    """The words of a text that ask for work to failure; "" where none do."""
    folded = text.casefold()
    if not any(word in folded for word in _NAMED):
        return ""
    for sentence in re.split(r"(?<=[.!?;:])\s", text):
        found = _SIGNS.search(sentence)
        if found and not _DENIED.search(sentence[: found.start()]):
            return found[0]
    return ""


def _texts(entry: Entry) -> Iterator[tuple[DataPath, str]]:
    match entry:
        case SwimSet():
            yield ("purpose",), entry.purpose
            yield from notes_with_paths(entry.items)
        case Practice():
            yield ("focus",), entry.focus
            for path, doing in entry.doings:
                yield (*path, "note"), doing.note
                yield from notes_with_paths(doing.items, (*path, "items"))
        case Block():
            yield ("purpose",), entry.purpose
            for number, week in enumerate(entry.weeks):
                yield ("weeks", number, "focus"), week.focus
        case Drill():
            yield ("purpose",), entry.purpose
            for name in ("cues", "steps"):
                texts: tuple[str, ...] = getattr(entry, name)
                yield from (((name, number), text) for number, text in enumerate(texts))
        case _:
            return
    yield ("title",), entry.title
    yield ("summary",), entry.summary
