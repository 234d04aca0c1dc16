"""One failure of a JSON Schema keyword, told as findings: what is wrong in plain words, and the
mend.

One small function a keyword. Where a schema piece carries ``says``, its words serve as the mend.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from jsonschema.exceptions import ValidationError

from almanac.findings import Finding, warning
from almanac.source.failure import Failure, shown, sort_of, told
from almanac.source.mends import key_mend, reference_mend, type_mend
from almanac.source.names import Names
from almanac.source.reader import Document
from almanac.source.suggest import listed, nearest


def explain(
    problem: ValidationError, document: Document, kind: str, names: Names
) -> Iterator[Finding]:
    """Findings for one failed keyword. A keyword that has no explanation of its own is told in
    general words.
    """
    failure = Failure(problem, document, kind, names)
    tell = _EXPLANATIONS.get(str(problem.validator))
    if tell is None:
        message = f"{failure.name} is not as the schema asks: {problem.message[:160]}"
        yield failure.say("bad-value", message, failure.says("description"))
    else:
        yield from tell(failure)


def _slip(failure: Failure) -> tuple[str, str] | None:
    """A key that is nearly one which would have chosen another form, and that one: ``round`` for
    ``rounds``.
    """
    for key in failure.value:
        near = nearest(key, failure.instead) if key not in failure.fields else None
        if near:
            return key, near
    return None


def _unknown_keys(failure: Failure) -> Iterator[Finding]:
    slip = _slip(failure)
    for key in [slip[0]] if slip else [key for key in failure.value if key not in failure.fields]:
        mend = f"did you mean '{slip[1]}'?" if slip else key_mend(failure, key)
        yield failure.say(
            "unknown-key", f"there is no field {shown(key)} here", mend, (*failure.path, key), True
        )


def _missing(failure: Failure) -> Iterator[Finding]:
    # jsonschema tells each missing key apart, but not which; the first caller tells them all,
    # repeats fall out later.
    if _slip(failure):
        return
    misspelt = {nearest(key, failure.fields) for key in failure.value if key not in failure.fields}
    missing = [key for key in failure.wanted if key not in failure.value]
    for key in missing:
        if key not in misspelt:
            mend = f"add '{key}': {failure.about(key)}".rstrip(": ")
            if len(missing) == len(failure.wanted) and failure.instead:
                here = [other for other in failure.instead if other in failure.fields]
                mend += (
                    f"; or write {listed(repr(other) for other in here or failure.instead)} instead"
                )
            yield failure.say("missing-key", f"'{key}' is missing from {failure.name}", mend)


def _type(failure: Failure) -> Iterator[Finding]:
    message = f"{failure.name} must be {failure.noun}, and is {sort_of(failure.value)}"
    yield failure.say("wrong-type", message, type_mend(failure))


def _word(failure: Failure) -> Iterator[Finding]:
    words = failure.names.of("vocabulary", failure.wanted)
    near = nearest(failure.value, words)
    mend = (
        f"did you mean '{near}'?"
        if near
        else f"the words are {listed(words, 24)} (drills/vocabulary/{failure.wanted}.yml)"
    )
    yield failure.say(
        "unknown-word", f"{shown(failure.value)} is not one of the {told(failure.wanted)}", mend
    )


def _choice(failure: Failure) -> Iterator[Finding]:
    choices = [str(choice) for choice in failure.wanted]
    near = nearest(failure.value, choices) if isinstance(failure.value, str) else None
    mend = f"did you mean '{near}'?" if near else f"write {listed(choices)}"
    yield failure.say(
        "unknown-word",
        f"{failure.name} must be one of {listed(choices)}, and is {sort_of(failure.value)}",
        mend,
    )


def _reference(failure: Failure) -> Iterator[Finding]:
    kind, id = told(failure.wanted), failure.value
    moved = failure.names.moved.get((failure.wanted, id))
    if moved:
        place = failure.document.place(failure.path, failure.on_key)
        yield warning("moved-reference", place, f"the {kind} '{id}' has moved", f"write {moved}")
    elif moved is not None:
        mend = f"mend 'moved_to' in {id}.yml, or name an entry that is there"
        yield failure.say(
            "unknown-reference",
            f"the {kind} '{id}' has moved, and no entry stands at the end of the way",
            mend,
        )
    else:
        yield failure.say(
            "unknown-reference", f"no {kind} {shown(id)}", reference_mend(failure, kind)
        )


def _together(failure: Failure) -> Iterator[Finding]:
    key, other = failure.wanted
    mend = f"keep '{key}' or '{other}', and take the other out"
    yield failure.say(
        "not-together",
        f"'{key}' and '{other}' exclude each other",
        mend,
        (*failure.path, other),
        True,
    )


def _clock(failure: Failure) -> Iterator[Finding]:
    yield failure.say(
        "bad-time", str(failure.problem.cause), getattr(failure.problem.cause, "mend", "")
    )


def _date(failure: Failure) -> Iterator[Finding]:
    yield failure.say(
        "bad-date", f"{shown(failure.value)} is no day", "write a day that exists, as YYYY-MM-DD"
    )


def _pattern(failure: Failure) -> Iterator[Finding]:
    if "clock" in failure.schema:
        return
    if failure.says("format") == "date":
        yield from _date(failure)
    elif "\n" in failure.value:
        yield failure.say(
            "bad-form",
            f"{failure.name} must be one line",
            "write it on one line, or fold it with '>-'",
        )
    else:
        mend = failure.says("says") or failure.says("description")
        amiss = "will not do as a name" if failure.on_key else f"cannot be {shown(failure.value)}"
        yield failure.say("bad-form", f"{failure.name} {amiss}", mend)


def _bound(failure: Failure) -> Iterator[Finding]:
    if "clock" in failure.schema:
        return
    low, above = failure.schema.get("minimum"), failure.schema.get("exclusiveMinimum")
    bounds = (("at least", low), ("more than", above), ("at most", failure.schema.get("maximum")))
    span = " and ".join(f"{words} {bound}" for words, bound in bounds if bound is not None)
    message = f"{failure.name} is {failure.value}; it must be {span}"
    yield failure.say("out-of-range", message, failure.says("description"))


def _length(failure: Failure) -> Iterator[Finding]:
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


def _amount(failure: Failure) -> Iterator[Finding]:
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


def _repeated(failure: Failure) -> Iterator[Finding]:
    seen = set()
    for number, item in enumerate(failure.value):
        if repr(item) in seen:
            message = (
                f"{shown(item) if isinstance(item, str) else 'the same item'} stands twice "
                f"in {failure.name}"
            )
            yield failure.say(
                "repeated-item", message, "remove one of the two", (*failure.path, number)
            )
        seen.add(repr(item))


def _constant(failure: Failure) -> Iterator[Finding]:
    wanted = str(failure.wanted).lower()
    message = f"{failure.name} can only be {wanted}, and is {sort_of(failure.value)}"
    yield failure.say("wrong-value", message, f"write {wanted}, or leave '{failure.path[-1]}' out")


def _dependent(failure: Failure) -> Iterator[Finding]:
    for key, others in failure.wanted.items():
        for other in others:
            if key in failure.value and other not in failure.value:
                mend = f"add '{other}', or remove '{key}'"
                yield failure.say(
                    "missing-key",
                    f"'{key}' needs '{other}' beside it",
                    mend,
                    (*failure.path, key),
                    True,
                )


_EXPLANATIONS: dict[str, Callable[[Failure], Iterator[Finding]]] = {
    "additionalProperties": _unknown_keys,
    "required": _missing,
    "type": _type,
    "vocabulary": _word,
    "enum": _choice,
    "reference": _reference,
    "not_with": _together,
    "clock": _clock,
    "format": _date,
    "pattern": _pattern,
    "minimum": _bound,
    "maximum": _bound,
    "exclusiveMinimum": _bound,
    "exclusiveMaximum": _bound,
    "minLength": _length,
    "maxLength": _length,
    "minItems": _amount,
    "maxItems": _amount,
    "minProperties": _amount,
    "maxProperties": _amount,
    "uniqueItems": _repeated,
    "const": _constant,
    "dependentRequired": _dependent,
}
