"""One failure of a JSON Schema keyword, told as findings: what is wrong in plain words, and a
hint.

One small function a keyword. Where a schema piece carries ``says``, its words serve as the hint.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from math import inf
from pathlib import PurePosixPath

from jsonschema.exceptions import ValidationError

from almanac.findings import Finding, warning
from almanac.source.explain import amounts, times
from almanac.source.explain.choices import choice
from almanac.source.explain.entry_slips import of_type
from almanac.source.explain.hints import FIXED, form_hint, reference_hint, word_hint
from almanac.source.explain.hints_of_type import YES, type_hint
from almanac.source.explain.keys import dependent, missing_keys, together, unknown_keys
from almanac.source.explain.told_elsewhere import cut_behind, loose_below
from almanac.source.failure import Failure, humanize, quote, type_name
from almanac.source.meant.left_open import with_leave
from almanac.source.names import Names
from almanac.source.reader import Document
from almanac.source.results import is_result


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
        for finding in tell(failure):
            yield with_leave(finding, failure)


def _type(failure: Failure) -> Iterator[Finding]:
    if cut_behind(failure) or loose_below(failure):
        return
    if failure.value is None and failure.path and ":" in str(failure.path[-1]):
        return  # told at its key, which has taken the value in
    if (told := times.groups_in_list(failure)) is not None:
        yield from told
        return
    if slip := of_type(failure):
        yield slip
        return
    message = f"{failure.name} must be {failure.noun}, and is {type_name(failure.value)}"
    hint = type_hint(failure)
    if failure.value is None and failure.path and isinstance(failure.path[-1], int):
        hint = "write it behind the dash, or take the dash out"
    yield failure.say("wrong-type", message, hint)


def _word(failure: Failure) -> Iterator[Finding]:
    words = failure.names.of("vocabulary", failure.wanted)
    message = f"{quote(failure.value)} is not one of the {humanize(failure.wanted)}"
    yield failure.say("unknown-word", message, word_hint(failure, words))


def _reference(failure: Failure) -> Iterator[Finding]:
    kind, id = humanize(failure.wanted), failure.value
    moved = failure.names.moved.get((failure.wanted, id))
    if moved and (failure.wanted, id) in failure.names.retired:
        place = failure.document.place(failure.path, failure.on_key)
        told = f"the {kind} '{id}' is retired"
        itself = (failure.kind, PurePosixPath(place.file).stem) == (failure.wanted, moved)
        hint = f"write {moved}, which took its place, or another"
        if itself:
            hint = "take it out here: this entry took its place"
        elif is_result(failure.path):
            hint = (
                f"take it out here: what was timed in it is no time of {moved}, and counts no more"
            )
        yield warning("moved-reference", place, told, hint)
    elif moved:
        place = failure.document.place(failure.path, failure.on_key)
        yield warning(
            "moved-reference",
            place,
            f"the {kind} '{id}' has moved",
            f"write {moved}; {FIXED}",
        )
    elif moved is not None:
        hint = f"mend 'moved_to' in {id}.yml, or name an entry that is there"
        yield failure.say(
            "unknown-reference",
            f"the {kind} '{id}' has moved, and no entry stands at the end of the way",
            hint,
        )
    elif failure.on_key and (both := re.fullmatch(r"([a-z0-9-]+)(:| +)([0-9:.]+)", id)):
        amiss = "no space stands after this colon"
        if both[2] != ":":
            amiss = f"no colon stands behind {quote(both[1])}"
        yield failure.say("unknown-reference", amiss, f"write {both[1]}: {both[3]}")
    else:
        yield failure.say(
            "unknown-reference", f"no {kind} {quote(id)}", reference_hint(failure, kind)
        )


def _pattern(failure: Failure) -> Iterator[Finding]:
    if "clock" in failure.schema or len(failure.value) > failure.schema.get("maxLength", inf):
        return
    if failure.says("format") == "date":
        yield from times.day(failure)
    elif "\n" in failure.value:
        yield failure.say(
            "bad-form",
            f"{failure.name} must be one line",
            "write it on one line, or fold it with '>-'",
        )
    else:
        hint = "write its blanks with the space bar: one of them only looks like a blank"
        if "\u00a0" not in failure.value:
            hint = form_hint(failure) or failure.says("says") or failure.says("description")
        amiss = "will not do as a name" if failure.on_key else f"cannot be {quote(failure.value)}"
        yield failure.say("bad-form", f"{failure.name} {amiss}", hint)


def _constant(failure: Failure) -> Iterator[Finding]:
    wanted = str(failure.wanted).lower()
    message = f"{failure.name} can only be {wanted}, and is {type_name(failure.value)}"
    hint = f"write {wanted}, or leave '{failure.path[-1]}' out"
    if failure.value == wanted:
        hint = f"write {wanted}, without quotes"
    elif wanted == "true" and str(failure.value).lower() in YES | {"true", "x"}:
        hint = f"write true: {quote(failure.value)[1:-1]} is text here"
    yield failure.say("wrong-value", message, hint)


_EXPLANATIONS: dict[str, Callable[[Failure], Iterator[Finding]]] = {
    "additionalProperties": unknown_keys,
    "required": missing_keys,
    "type": _type,
    "vocabulary": _word,
    "enum": choice,
    "reference": _reference,
    "not_with": together,
    "clock": times.clock,
    "format": times.day,
    "pattern": _pattern,
    "minimum": amounts.bound,
    "maximum": amounts.bound,
    "exclusiveMinimum": amounts.bound,
    "exclusiveMaximum": amounts.bound,
    "multipleOf": amounts.step,
    "minLength": amounts.length,
    "maxLength": amounts.length,
    "minItems": amounts.amount,
    "maxItems": amounts.amount,
    "minProperties": amounts.amount,
    "maxProperties": amounts.amount,
    "uniqueItems": amounts.repeated,
    "const": _constant,
    "dependentRequired": dependent,
}
