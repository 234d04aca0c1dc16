"""Failures of how much or how many, told as findings: numbers, lengths of texts, items of lists."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.findings import Finding
from almanac.source.explain.times import of_groups
from almanac.source.failure import Failure, quote

_SHARE_MOST = 3  # what a share or a factor can come to


def bound(failure: Failure) -> Iterator[Finding]:
    """A number that is out of its bounds. A time is told as one, elsewhere."""
    if "clock" in failure.schema:
        return
    low, above = failure.schema.get("minimum"), failure.schema.get("exclusiveMinimum")
    bounds = (("at least", low), ("more than", above), ("at most", failure.schema.get("maximum")))
    span = " and ".join(f"{words} {bound}" for words, bound in bounds if bound is not None)
    message = f"{failure.name} is {failure.value}; it must be {span}"
    hint = _in_its_unit(failure) or failure.says("description")
    yield failure.say("out-of-range", message, hint)


def _in_its_unit(failure: Failure) -> str:
    """For a number that is a hundred times what it may be: the share that it is as a percentage,
    the metres that it is in centimetres; "" elsewhere.
    """
    most, least = failure.schema.get("maximum", 0), failure.schema.get("minimum", 0)
    part = failure.value / 100
    names = [str(own) for own in failure.path if own not in ("from", "to")]
    if failure.value <= most or not least <= part <= most:
        return ""
    if names and names[-1].endswith("_m"):
        return f"write {part:g}, in metres: {failure.value:g} looks like centimetres"
    return f"write {part:g}, which is {failure.value:g} %" if most <= _SHARE_MOST else ""


def step(failure: Failure) -> Iterator[Finding]:
    """A number between the steps that it goes in. A time is told as one, elsewhere."""
    if failure.says("clock"):
        return
    message = f"{failure.name} is {failure.value}; it goes in steps of {failure.wanted}"
    yield failure.say("out-of-range", message, failure.says("description"))


def length(failure: Failure) -> Iterator[Finding]:
    """A text with too few or too many characters."""
    count, limit = len(failure.value), failure.wanted
    has = f"{failure.name} has {count} character{'s' * (count != 1)}"
    if count < limit:
        yield failure.say(
            "too-short", f"{has}; it needs at least {limit}", failure.says("description")
        )
    else:
        yield failure.say(
            "too-long", f"{has}; it may have at most {limit}", failure.says("description")
        )


def amount(failure: Failure) -> Iterator[Finding]:
    """Too few or too many items or fields."""
    if of_groups(failure.value, failure):
        return  # told at the first of them
    is_fields = isinstance(failure.value, dict) and failure.fields
    if is_fields and {*failure.value} - {*failure.fields}:
        return  # which of them does not belong is told at that one
    count, limit = len(failure.value), failure.wanted
    thing = "field" if isinstance(failure.value, dict) else "item"
    has = f"{failure.name} holds {count or 'no'} {thing}{'s' * (count != 1)}"
    if count < limit:
        yield failure.say(
            "too-few", f"{has}; it needs at least {limit}", failure.says("description")
        )
    else:
        yield failure.say(
            "too-many", f"{has}; it may hold at most {limit}", failure.says("description")
        )


def repeated(failure: Failure) -> Iterator[Finding]:
    """An item that stands twice."""
    seen = set()
    for number, item in enumerate(failure.value):
        if repr(item) in seen:
            message = (
                f"{quote(item) if isinstance(item, str) else 'the same item'} stands twice "
                f"in {failure.name}"
            )
            yield failure.say(
                "repeated-item", message, "remove one of the two", (*failure.path, number)
            )
        seen.add(repr(item))
