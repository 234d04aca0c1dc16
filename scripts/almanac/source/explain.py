"""One failure of a JSON Schema keyword, told as findings: what is wrong in plain words, and the mend.

One small function a keyword. Where a schema piece carries ``says``, its words serve as the message.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from jsonschema.exceptions import ValidationError

from almanac.findings import Finding, error, warning
from almanac.source import schemas
from almanac.source.names import Names
from almanac.source.reader import Document, Path
from almanac.source.suggest import listed, nearest

_TYPES = {
    "string": "text", "integer": "a whole number", "number": "a number", "boolean": "true or false",
    "array": "a list", "object": "a mapping of fields", "null": "empty",
}  # fmt: skip
_KIND_WORDS = {"lane_group": "lane group"}


class _Failure:
    """One ValidationError with what the explanations need of it."""

    def __init__(self, problem: ValidationError, document: Document, kind: str, names: Names) -> None:
        self.value: Any = problem.instance
        self.wanted: Any = problem.validator_value
        self.schema: Any = problem.schema if isinstance(problem.schema, dict) else {}
        self.path: Path = tuple(step for step in problem.absolute_path if isinstance(step, str | int))
        self.cause = problem.cause
        self.document, self.kind, self.names = document, kind, names
        self.on_key = "propertyNames" in problem.absolute_schema_path
        if self.on_key:
            self.path = (*self.path, self.value)

    @property
    def name(self) -> str:
        """The field's name for a sentence: the nearest key on the way to the value."""
        keys = [step for step in self.path if isinstance(step, str)]
        return f"'{keys[-1]}'" if keys else "the entry"

    def say(self, code: str, message: str, mend: str, path: Path | None = None, of_key: bool | None = None) -> Finding:
        place = self.document.place(self.path if path is None else path, self.on_key if of_key is None else of_key)
        return error(code, place, message, mend)


def explain(problem: ValidationError, document: Document, kind: str, names: Names) -> Iterator[Finding]:
    """Findings for one failed keyword. A keyword that has no explanation of its own is told in general words."""
    failure = _Failure(problem, document, kind, names)
    tell = _EXPLANATIONS.get(str(problem.validator))
    if tell is None:
        yield failure.say("bad-value", f"{failure.name} is not as the schema asks: {problem.message[:160]}", _describe(failure))
    else:
        yield from tell(failure)


def _describe(failure: _Failure) -> str:
    return str(failure.schema.get("description", ""))


def _unknown_keys(failure: _Failure) -> Iterator[Finding]:
    known = failure.schema.get("properties", {})
    for key in failure.value:
        if key not in known:
            path = (*failure.path, key)
            yield failure.say("unknown-key", f"there is no field '{key}' here", _key_mend(failure, key, known), path, True)


def _key_mend(failure: _Failure, key: str, known: dict[str, Any]) -> str:
    near = nearest(key, known)
    if near:
        return f"did you mean '{near}'?"
    homes = [kind for kind in schemas.KINDS if kind != failure.kind and key in schemas.fields(kind)]
    if homes and not failure.path:
        return f"'{key}' is a field of a {listed(homes)}, not of a {failure.kind}"
    return f"the fields here are {listed(known, 24)}"


def _missing(failure: _Failure) -> Iterator[Finding]:
    # jsonschema tells each missing key apart, but not which; the first caller tells them all, repeats fall out later.
    for key in failure.wanted:
        if key not in failure.value:
            piece = schemas.resolve(failure.schema.get("properties", {}).get(key, {}))
            what = "the entry" if not failure.path else _owner(failure)
            yield failure.say("missing-key", f"{what} has no '{key}'", f"add '{key}': {_lower(piece.get('description', key))}")


def _owner(failure: _Failure) -> str:
    title = failure.schema.get("title")
    return str(title) if title else f"{failure.name} {_numbered(failure.path)}".rstrip()


def _numbered(path: Path) -> str:
    return f"(number {path[-1] + 1})" if path and isinstance(path[-1], int) else ""


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:].rstrip(".")


def _type(failure: _Failure) -> Iterator[Finding]:
    wanted = [failure.wanted] if isinstance(failure.wanted, str) else failure.wanted
    named = listed(_TYPES[word] for word in wanted)
    yield failure.say("wrong-type", f"{failure.name} must be {named}, and is {_kind_of(failure.value)}", _type_mend(failure, wanted))


def _kind_of(value: Any) -> str:
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return f"the word {str(value).lower()}"
    if isinstance(value, (int, float)):
        return f"the number {value}"
    return "text" if isinstance(value, str) else "a list" if isinstance(value, list) else "a mapping of fields"


def _type_mend(failure: _Failure, wanted: list[str]) -> str:
    value = failure.value
    if "boolean" in wanted and isinstance(value, str):
        return "write true or false; yes, no, on and off are text here"
    if wanted == ["string"] and isinstance(value, (bool, int, float)):
        return f"put it in quotes: \"{str(value).lower()}\""
    if "array" in wanted and not isinstance(value, (dict, list)):
        return f"write it as a list: [{value}]" if value is not None else "write a list: [first, second]"
    return _describe(failure)


def _word(failure: _Failure) -> Iterator[Finding]:
    words = failure.names.of("vocabulary", failure.wanted)
    near = nearest(failure.value, words)
    mend = f"did you mean '{near}'?" if near else f"the words are {listed(words, 24)} (drills/vocabulary/{failure.wanted}.yml)"
    yield failure.say("unknown-word", f"'{failure.value}' is not one of the {failure.wanted.replace('-', ' ')}", mend)


def _choice(failure: _Failure) -> Iterator[Finding]:
    near = nearest(str(failure.value), map(str, failure.wanted))
    mend = f"did you mean {near}?" if near else f"write {listed(map(str, failure.wanted))}"
    yield failure.say("unknown-word", f"{failure.value!r} is not one of {listed(map(str, failure.wanted))}", mend)


def _reference(failure: _Failure) -> Iterator[Finding]:
    kind, names = failure.wanted, failure.names
    told = _KIND_WORDS.get(kind, kind)
    moved = names.moved.get((kind, failure.value))
    if moved:
        place = failure.document.place(failure.path, failure.on_key)
        yield warning("moved-reference", place, f"the {told} '{failure.value}' has moved", f"write {moved}")
        return
    known = names.of("reference", kind)
    near = nearest(failure.value, known)
    if near:
        mend = f"the nearest: {near} ({known[near]})"
    else:
        mend = f"no {told} is spelt nearly so" + (f"; there are {listed(known)}" if 0 < len(known) <= 12 else "")
    yield failure.say("unknown-reference", f"no {told} '{failure.value}'", mend)


def _together(failure: _Failure) -> Iterator[Finding]:
    key, other = failure.wanted
    yield failure.say("not-together", f"'{key}' and '{other}' exclude each other", f"keep '{key}' or '{other}'", (*failure.path, other), True)


def _clock(failure: _Failure) -> Iterator[Finding]:
    yield failure.say("bad-time", str(failure.cause), getattr(failure.cause, "mend", ""))


def _date(failure: _Failure) -> Iterator[Finding]:
    yield failure.say("bad-date", f"'{failure.value}' is no day", "write a day that exists, as YYYY-MM-DD")


def _pattern(failure: _Failure) -> Iterator[Finding]:
    if "clock" in failure.schema:
        return
    if failure.schema.get("format") == "date":
        yield from _date(failure)
    elif "\n" in failure.value:
        yield failure.say("bad-form", f"{failure.name} must be one line", "join the lines, or fold them with '>-'")
    else:
        says = failure.schema.get("says", f"{failure.name} does not have the right form")
        yield failure.say("bad-form", f"'{failure.value[:80]}' will not do", says)


def _bound(failure: _Failure) -> Iterator[Finding]:
    if "clock" not in failure.schema:
        low = failure.schema.get("minimum", failure.schema.get("exclusiveMinimum"))
        high = failure.schema.get("maximum")
        least = f"more than {low}" if "exclusiveMinimum" in failure.schema else f"at least {low}"
        span = " and ".join(filter(None, [least if low is not None else "", f"at most {high}" if high is not None else ""]))
        yield failure.say("out-of-range", f"{failure.name} is {failure.value}; it must be {span}", _describe(failure))


def _length(failure: _Failure) -> Iterator[Finding]:
    count, limit = len(failure.value), failure.wanted
    word = "short" if count < limit else "long"
    bound = f"at least {limit}" if count < limit else f"at most {limit}"
    yield failure.say(f"too-{word}", f"{failure.name} has {count} characters; it needs {bound}", _describe(failure))


def _amount(failure: _Failure) -> Iterator[Finding]:
    count, limit = len(failure.value), failure.wanted
    code, bound = ("too-few", f"at least {limit}") if count < limit else ("too-many", f"at most {limit}")
    yield failure.say(code, f"{failure.name} holds {count}; it needs {bound}", _describe(failure))


def _repeated(failure: _Failure) -> Iterator[Finding]:
    for number, item in enumerate(failure.value):
        if item in failure.value[:number]:
            message = f"'{item}' stands twice in {failure.name}"
            yield failure.say("repeated-item", message, "remove one of the two", (*failure.path, number))


def _constant(failure: _Failure) -> Iterator[Finding]:
    wanted = str(failure.wanted).lower()
    yield failure.say("wrong-value", f"{failure.name} can only be {wanted}", f"write {wanted}, or leave it out")


def _dependent(failure: _Failure) -> Iterator[Finding]:
    for key, others in failure.wanted.items():
        for other in others:
            if key in failure.value and other not in failure.value:
                mend = f"add '{other}', or remove '{key}'"
                yield failure.say("missing-key", f"'{key}' needs '{other}' beside it", mend, (*failure.path, key), True)


_EXPLANATIONS: dict[str, Callable[[_Failure], Iterator[Finding]]] = {
    "additionalProperties": _unknown_keys, "required": _missing, "type": _type, "vocabulary": _word,
    "enum": _choice, "reference": _reference, "not_with": _together, "clock": _clock, "format": _date,
    "pattern": _pattern, "minimum": _bound, "maximum": _bound, "exclusiveMinimum": _bound,
    "minLength": _length, "maxLength": _length, "minItems": _amount, "maxItems": _amount,
    "minProperties": _amount, "maxProperties": _amount, "uniqueItems": _repeated, "const": _constant,
    "dependentRequired": _dependent,
}  # fmt: skip
