"""Fields that are none, beside one that is missing or free and takes what stands under them: a
field's name in another language, or a word of the coach's own for it, is told once.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from typing import Any

from jsonschema import Draft202012Validator

from almanac.source import schemas
from almanac.source.failure import Failure, quote
from almanac.source.meant.put_together import is_free_text, taken
from almanac.source.suggest import listed

_SORTS: dict[str, type | tuple[type, ...]] = {
    "integer": int, "number": (int, float), "boolean": bool, "array": list, "object": dict,
}  # fmt: skip
_MOST_OFFERED = 4
_FEW = 8  # fields that are told all
_BEGINS = 5  # letters by which a word is known in any of its forms
_ROUND, _REP = "rounds", "reps"


def missing(failure: Failure) -> list[str]:
    """The fields that the mapping of a failed keyword needs and has not."""
    needed = _needed(failure, failure.around[-1], failure.value)
    return [name for name in dict.fromkeys(needed) if name not in failure.value]


def _needed(failure: Failure, piece: schemas.Schema, value: Mapping[str, Any]) -> Iterator[str]:
    piece = failure.resolved(piece)
    yield from piece.get("required", [])
    for own in piece.get("allOf", []):
        yield from _needed(failure, own, value)
    asked = piece.get("if", {}).get("required")
    if asked:
        branch = "then" if {*asked} <= {*value} else "else"
        yield from _needed(failure, piece.get(branch, {}), value)


def stands_for(failure: Failure) -> dict[str, str]:
    """By each key that is no field here the one field that is missing and takes what stands under
    it.
    """
    if not isinstance(failure.value, dict):
        return {}
    strange = [key for key in failure.value if key not in failure.fields]
    lacking = [name for name in missing(failure) if name in failure.fields]
    found: dict[str, str] = {}
    for key in strange:
        fitting = [name for name in lacking if could_be(failure, name, failure.value[key])]
        exact = [name for name in fitting if not _is_any_text(failure, name)] or fitting
        if len(exact) == 1 and exact[0] not in found.values():
            found[key] = exact[0]
    return found


def could_be(failure: Failure, name: str, value: Any) -> bool:
    """Whether a field could hold a value, by its sort and, where it takes a word, an id, a time or
    a day, by what it says.
    """
    piece = failure.resolved(failure.fields[name])
    sorts = piece.get("type", "string" if "clock" in piece else [])
    if value is None:
        return False
    if isinstance(value, str) and (taken(failure, piece, value) or is_free_text(failure, piece)):
        return True
    if isinstance(value, dict) and piece.get("properties"):
        return {*value} <= {*piece["properties"]}
    for sort in [sorts] if isinstance(sorts, str) else sorts:
        if sort in _SORTS and isinstance(value, _SORTS[sort]):
            return isinstance(value, bool) is (sort == "boolean")
    return isinstance(value, str) and any(
        taken(failure, way, value) for way in _branches(failure, piece)
    )


def _branches(failure: Failure, piece: schemas.Schema) -> Iterator[schemas.Schema]:
    """The shapes that a piece may have, by what is written."""
    for name in ("then", "else"):
        if isinstance(piece.get(name), dict):
            own = failure.resolved(piece[name])
            yield own
            yield from _branches(failure, own)


def _is_any_text(failure: Failure, name: str) -> bool:
    return is_free_text(failure, failure.fields[name])


def free_for(failure: Failure, key: str) -> str:
    """For a key that is no field, the free field that takes what stands under it and is said in the
    words of the key, or the few that take it; "" where there are none.
    """
    value = failure.value[key]
    if value is None or isinstance(value, bool):
        return ""
    apart = _apart(failure, failure.around[-1])
    present = failure.value.keys()
    barred = {name for own in apart.keys() & present for name in apart[own]} | present
    free = [
        name
        for name in failure.fields
        if name not in barred and present.isdisjoint(apart.get(name, ()))
    ]
    fitting = [name for name in free if _would_take(failure, name, value)]
    said = {name: _in_common(key, f"{name} {failure.about(name)}") for name in fitting}
    most = max(said.values(), default=0)
    near = [name for name in fitting if said[name] == most]
    is_number = isinstance(value, int | float)
    if len(near) == 1 and (most or len(failure.fields) > _FEW or isinstance(value, str)):
        about = re.split(r"\. |: ", failure.about(near[0]))[0]
        return f"did you mean '{near[0]}'" + (f", {about}?" if about else "?")
    if is_number or not 0 < len(fitting) <= _MOST_OFFERED or len(failure.fields) <= _FEW:
        return ""
    what = quote(value) if isinstance(value, str | int | float) else "what stands under it"
    return f"{what} may stand under {listed(fitting)} here"


def one_day(failure: Failure, key: str) -> str:
    """The day under a key that is no field, where a first and a last day are due; "" elsewhere."""
    ends = {"from", "to"}
    if not ends <= {*failure.fields} or ends & {*failure.value}:
        return ""
    value, first = failure.value[key], failure.resolved(failure.fields["from"])
    is_day = first.get("format") == "date" and isinstance(value, str)
    return taken(failure, first, value) if is_day else ""


def _would_take(failure: Failure, name: str, value: Any) -> bool:
    """Whether a field takes a value: a word, an id, a time or a day of its own list or form, a
    sentence where it takes any text, all else by the schema.
    """
    piece = failure.fields[name]
    if isinstance(value, str) and (" " not in value.strip() or not _is_any_text(failure, name)):
        return not _is_any_text(failure, name) and bool(taken(failure, piece, value))
    pieces = [failure.resolved(piece), *_branches(failure, failure.resolved(piece))]
    if isinstance(value, int | float) and any("clock" in own for own in pieces):
        return False  # nobody writes a time so under another name
    items = failure.resolved(pieces[0].get("items", {}))
    if isinstance(value, list) and {"vocabulary", "reference"} & {*items}:
        return all(isinstance(own, str) and taken(failure, items, own) for own in value)
    shared = schemas.bundled(failure.kind)["$defs"]
    is_valid: bool = Draft202012Validator({**piece, "$defs": shared}).is_valid(value)
    return is_valid


def _in_common(key: str, text: str) -> int:
    """How many words of a key begin as words of a text do."""
    begins = {word[:_BEGINS] for word in re.findall("[a-z]{3,}", text.lower())}
    words = {word[:_BEGINS] for word in re.findall("[a-z]{3,}", str(key).lower())}
    return len(words & begins)


def _apart(failure: Failure, piece: schemas.Schema) -> dict[str, Collection[str]]:
    """By a field those that exclude it, beside what stands there."""
    piece = failure.resolved(piece)
    found = dict(piece.get("not_with", {}))
    for own in (piece, *_branches(failure, piece)):
        for key, others in own.get("not_with", {}).items():
            found[key] = {*found.get(key, ()), *others}
    return found


def loose_in_round(failure: Failure) -> tuple[str, str, str] | None:
    """For rounds whose reps stand beside them, and not in a list: the first field of these, what
    is wrong, the mend.
    """
    value = failure.value
    if not isinstance(value, dict) or _ROUND not in value or value.get("items") is not None:
        return None
    reps = schemas.resolve({"$ref": f"common.json#/$defs/{_REP}"})["properties"]
    loose = [key for key in value if key in reps and key not in failure.fields]
    own = [key for key in value if key in failure.fields and key not in (_ROUND, "items")]
    if not loose or any(key not in reps and key not in failure.fields for key in value):
        return None
    row = [*loose, *(key for key in own if key == "note")]
    message = "what is done in each round stands beside 'rounds', and belongs into its list"
    begin = "write" if "items" in value else "write 'items:' below 'rounds', and"
    hint = (
        f"{begin} two spaces further in a dash before '{row[0]}', with "
        f"{listed(row[1:], 6).replace(' or ', ' and ') or 'the others'} lined up behind it"
    )
    return loose[0], message, hint


def turns_meant(failure: Failure) -> str:
    """For a list of efforts where one plan of them belongs: what it may be; "" elsewhere."""
    words = failure.names.of("vocabulary", "efforts")
    value = failure.value
    if failure.path[-1:] != ("effort",) or len(value) < 2 or any(it not in words for it in value):
        return ""
    row = f"[{', '.join(value)}]"
    two = f"; within each rep {{build: {row}}}, from rep to rep {{descend: {row}}}"
    return f"by turns {{rotate: {row}}}" + (two if len(value) == 2 else "")
