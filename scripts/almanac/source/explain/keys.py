"""A failed keyword on keys told as findings: unknown, missing, together, one without another."""

from __future__ import annotations

import re
from collections.abc import Iterator

from almanac.findings import Finding, error
from almanac.source.explain.entry_slips import hashed_out, lost_fields
from almanac.source.explain.hints import FIXED
from almanac.source.explain.hints_of_keys import key_hint
from almanac.source.explain.told_elsewhere import meant_by_others
from almanac.source.failure import Failure, quote
from almanac.source.meant.named_by_key import put_together, sure_keys
from almanac.source.meant.stands_for import loose_in_round, stands_for
from almanac.source.meant.stands_for import missing as all_missing
from almanac.source.said.days import year_on
from almanac.source.suggest import listed, nearest

_MANY = 3  # keys with one slip are told together

_OF_A_CHAT = re.compile(r"[0-9]{1,2}:[0-5][0-9]\b")


def _slip(failure: Failure) -> tuple[str, str] | None:
    """A key that is nearly one which would have chosen another form, and that one: ``round`` for
    ``rounds``.
    """
    if {"items"} & {*failure.value} and "rounds" in failure.instead:
        # only rounds hold items: what else is strange beside them says how often
        own = ("items", "pause_between", "note", "talk")
        often = next((key for key in failure.value if key not in {*failure.fields, *own}), None)
        return (often, "rounds") if often else None
    for key in failure.value:
        near = nearest(key, failure.instead) if key not in failure.fields else None
        if near:
            return key, near
    return None


def unknown_keys(failure: Failure) -> Iterator[Finding]:
    """Keys that there are not, or the one that was nearly another form."""
    if loose := loose_in_round(failure):
        key, message, hint = loose
        yield failure.say("unknown-key", message, hint, (*failure.path, key), True)
        return
    if "pause" in failure.value and "reps" in failure.value:
        said = failure.document.node((*failure.path, "pause")).value
        hint = (
            f"write rest: {said} for a rest after each rep, or put pause: {said} behind a dash of "
            "its own"
        )
        message = "a pause is an item of its own, and stands among the fields of reps"
        yield failure.say("unknown-key", message, hint, (*failure.path, "pause"), True)
        return
    slip = _slip(failure)
    if not slip and (meant := put_together(failure)):
        key, message, hint = meant
        yield failure.say("unknown-key", message, hint, (*failure.path, key), True)
        return
    lost = () if failure.path else lost_fields(failure.kind, failure.value).values()
    unknown = [key for key in failure.value if key not in failure.fields]
    sure, stands = sure_keys(failure), stands_for(failure)
    if len(sure) >= _MANY:
        unknown = [key for key in unknown if key not in sure]
        names, fields = (
            listed(own, 4).replace(" or ", " and ") for own in (map(quote, sure), sure.values())
        )
        yield failure.say(
            "unknown-key",
            f"{names} are no fields: these are in small letters, with _ for a blank",
            f"write {fields}; {FIXED}",
            (*failure.path, next(iter(sure))),
            True,
        )
    for key in [slip[0]] if slip else unknown:
        if any(key in own for own in lost):
            continue  # told at the field that they belong to
        hint = _slip_hint(failure, *slip) if slip else key_hint(failure, key, sure, stands)
        if _OF_A_CHAT.match(key):
            hint = "an hour and a name before a text come from a chat: take the line out"
        yield failure.say(
            "unknown-key", f"there is no field {quote(key)} here", hint, (*failure.path, key), True
        )


def _slip_hint(failure: Failure, key: str, meant: str) -> str:
    """What to write for a key that chooses another form."""
    if sure_keys(failure).get(key) == meant:
        return f"write {meant}; {FIXED}"
    if meant == "rounds":
        value = failure.value[key]
        said = re.match(r"[1-9][0-9]?", str(value) if isinstance(value, int) else key)
        return f"write rounds: {said[0] if said else '...'} in its place: only rounds hold items"
    return f"did you mean '{meant}'?"


def missing_keys(failure: Failure) -> Iterator[Finding]:
    """Keys that must be there and are not."""
    # jsonschema tells each missing key apart, but not which; the first caller tells them all,
    # repeats fall out later.
    if loose_in_round(failure) or _slip(failure) or put_together(failure):
        return
    misspelt = meant_by_others(failure)
    missing = [key for key in failure.wanted if key not in failure.value]
    if failure.path and not failure.value and len(row := all_missing(failure)) > 1:
        told = ", ".join(f"{name}: ..." for name in row)
        yield failure.say("missing-key", f"{failure.name} is empty", f"write {{{told}}}")
        return
    for key in missing:
        if key not in misspelt:
            if place := hashed_out(failure, key):
                message = f"'{key}' is missing from {failure.name}: '#' makes this line a comment"
                hint = f"take the '#' away once the line is right: {failure.about(key)}"
                yield error("missing-key", place, message, hint.rstrip(": "))
                continue
            hint = f"add '{key}': {failure.about(key)}".rstrip(": ")
            if key == "again" and (offered := year_on(failure.value.get("on"))):
                hint += f"; {offered}"
            if len(missing) == len(failure.wanted) and failure.instead:
                here = [other for other in failure.instead if other in failure.fields]
                hint += (
                    f"; or write {listed(repr(other) for other in here or failure.instead)} instead"
                )
            yield failure.say("missing-key", f"'{key}' is missing from {failure.name}", hint)


def together(failure: Failure) -> Iterator[Finding]:
    """Two keys that exclude each other."""
    key, other = failure.wanted
    hint, at = f"keep '{key}' or '{other}', and take the other out", other
    if {key, other} == {"time", "distance"} and not {"sendoff", "rest"} & {*failure.value}:
        at, said = "time", failure.document.node((*failure.path, "time")).value
        hint = (
            f"write sendoff: {said} where each leaves on it, rest: {said} where they rest so long; "
            "only reps without a distance have a time"
        )
    yield failure.say(
        "not-together",
        f"'{key}' and '{other}' exclude each other",
        hint,
        (*failure.path, at),
        True,
    )


def dependent(failure: Failure) -> Iterator[Finding]:
    """A key that needs another beside it."""
    meant = meant_by_others(failure)
    for key, others in failure.wanted.items():
        for other in others:
            if key in failure.value and other not in failure.value and other not in meant:
                hint = f"add '{other}', or remove '{key}'"
                said = f"'{key}' needs '{other}' beside it"
                yield failure.say("missing-key", said, hint, (*failure.path, key), True)
