"""Dangers that a change no longer tells. They are never folded: each in full, or where there are
many the words of each entry in a line.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.comparison import Comparison
from almanac.findings import Place
from almanac.model.guard_changes import GONE
from almanac.model.loosened import Loosened, is_danger
from almanac.report.fenced import fenced, linked
from almanac.report.set_json import dotted
from almanac.report.values_told import WHOLE, in_words

_MOST = 3  # told in full before an entry has a line


def dangers_gone(review: Comparison) -> list[Loosened]:
    """The dangers that go, the gravest first."""
    return [one for one in review.loosened if is_gone(one)]


def is_gone(one: Loosened) -> bool:
    """Whether it is a danger that goes."""
    return one.sort == GONE and is_danger(one.before)


def in_full(review: Comparison, address: str) -> Iterator[str]:
    """Each danger with all that was said of it."""
    return (f"- {gone(one, who(one, review, address))}" for one in dangers_gone(review))


def in_brief(review: Comparison, address: str) -> Iterator[str]:
    """The same where they are few; else each entry with the words of its dangers."""
    found = dangers_gone(review)
    if len(found) <= _MOST:
        yield from in_full(review, address)
        return
    by_entry: dict[str, list[Loosened]] = {}
    for one in found:
        by_entry.setdefault(who(one, review, address), []).append(one)
    for name, dangers in by_entry.items():
        words = ", ".join(map(_word, dangers))
        other = dangers[0].successor
        told = f": {fenced(other)}, in its place, does not tell" if other else " no longer tells"
        yield f"- **Dangers gone.** {name}{told}: {words}."


def _word(one: Loosened) -> str:
    gravity = one.hazard.get("gravity")
    grave = f" ({fenced(gravity)})" if gravity else ""
    return f"{fenced(one.before['hazard'], WHOLE)}{grave}"


def who(one: Loosened, review: Comparison, address: str) -> str:
    """The kind and the id of what is loosened, with a link while its file is there."""
    return f"{one.kind.capitalize()} {link_to(one, review, address)}"


def link_to(one: Loosened, review: Comparison, address: str) -> str:
    """The id of what is loosened, with a link while its file is there."""
    gone_files = {change.file for change in review.entries if change.what == "removed"}
    return linked(one.id, Place(one.file), "" if one.file in gone_files else address)


def gone(one: Loosened, who: str) -> str:
    """A danger or another guard that goes, in full."""
    what = "Danger gone" if is_danger(one.before) else "Guard gone"
    where, said = fenced(dotted(one.path)), in_words(one.before)
    if one.successor:
        other = f"{fenced(one.successor)}, which takes its place,"
        return f"**{what}.** {who}: {other} does not say under {where}: {said}.{_of_word(one)}"
    return f"**{what}.** {who} no longer says under {where}: {said}.{_of_word(one)}"


def _of_word(one: Loosened) -> str:
    """What the vocabulary says of a hazard, in sentences, but for what the entry said itself."""
    told = {"title": "Its name is", "gravity": "Its gravity is", "control": "What is always done:"}
    beside = {"title": "own", "control": "control"}
    return "".join(
        f" {words} {fenced(one.hazard[name], WHOLE)}."
        for name, words in told.items()
        if name in one.hazard and beside.get(name) not in one.before
    )
