"""What a change loosens in many entries alike, as one line of a review with the most of it first:
one that hides among forty stands at the head of them.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence

from almanac.analysis.comparison import Comparison
from almanac.findings import counted
from almanac.model.guard_changes import GONE, LOOSER, size
from almanac.model.loosened import Loosened, is_danger
from almanac.report.fenced import fenced
from almanac.report.review.dangers import link_to, who
from almanac.report.set_json import dotted
from almanac.report.values_told import amount, in_words

_MOST = 3  # told one by one before they are one line
_NAMED = 3  # of one line
_WORDS = "words"


def together(found: Sequence[Loosened]) -> Iterator[list[Loosened]]:
    """What is loosened, alike with alike where these are many, each where its first stands."""
    same: dict[Hashable, list[Loosened]] = {}
    for number, one in enumerate(found):
        same.setdefault(_likeness(one) or number, []).append(one)
    for own in same.values():
        if len(own) > _MOST or _is_word(own[0]):
            yield own
        else:
            yield from ([one] for one in own)


def _likeness(one: Loosened) -> Hashable:
    """By what several are told as one; nothing where each is told by itself."""
    if _is_word(one):
        return one.file, one.path[:2]
    is_number = one.sort == LOOSER and one.kind != "club" and _times(one) is not None
    return (one.kind, one.path, one.under_water) if is_number else None


def _is_word(one: Loosened) -> bool:
    """Whether it is a field of a word of a vocabulary, and goes."""
    is_of_word = one.kind == "vocabulary" and one.path[:1] == (_WORDS,) and len(one.path) > 2
    return one.sort == GONE and is_of_word and not is_danger(one.before)


def _times(one: Loosened) -> float | None:
    """How many times as much it lets happen as before; None where that is no number."""
    before, after = (size(value, "", {}) or 0 for value in (one.before, one.after))
    return max(before, after) / min(before, after) if min(before, after) > 0 else None


def of_word(own: Sequence[Loosened], review: Comparison, address: str) -> str:
    """A word of a vocabulary with all that it no longer says."""
    word = fenced(dotted(own[0].path[:2]))
    said = "; ".join(f"{fenced(dotted(one.path[2:]))} {in_words(one.before)}" for one in own)
    return f"**Guard gone.** {who(own[0], review, address)} no longer says under {word}: {said}."


def of_many(what: str, own: Sequence[Loosened], review: Comparison, address: str) -> str:
    """How many entries let more happen in one field, and those that let the most."""
    most = sorted(own, key=lambda one: _times(one) or 0, reverse=True)[:_NAMED]
    each = ", ".join(
        f"from {amount(one.before)} to {amount(one.after)} in {link_to(one, review, address)}"
        for one in most
    )
    where = " that go under water" if own[0].under_water else ""
    return (
        f"**{what}.** {counted(len(own), own[0].kind)}{where}: {fenced(dotted(own[0].path))} goes"
        f" {each}, and no further in the others."
    )
