"""Questions in a terminal for a new entry, from the schema of its kind: each with what its answers
mean and what Enter gives; every answer is checked before the next.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from almanac.commands.given import natural
from almanac.commands.outcome import UsageError
from almanac.kinds import IN_CLUB
from almanac.model.load import Loaded
from almanac.source import schemas
from almanac.source.reader import Document
from almanac.source.scalars import in_quotes, scalar
from almanac.source.validate import Shapes

_MOST_SHOWN = 30
_LATER = "Enter leaves it for later"


@dataclass(frozen=True)
class AskedField:
    """A field that is asked for: its schema, its choices with what each means, and what Enter
    gives, "" where that leaves the starter's own sentence.
    """

    name: str
    field: Mapping[str, Any]
    choices: Mapping[str, str]
    default: str = ""

    @property
    def is_list(self) -> bool:
        """Whether several words may be given."""
        return self.field.get("type") == "array"


def ask(kind: str, loaded: Loaded, defaults: Mapping[str, Any]) -> dict[str, Any]:
    """Answers for the required fields that are one text, one word or a list of words, by field.
    What is left for later is not among them.
    """
    shapes = Shapes(loaded.names)
    answers: dict[str, Any] = {}
    for question in _questions(kind, loaded):
        default = defaults.get(question.name, "")
        shown = ", ".join(default) if isinstance(default, list) else str(default)
        answer = _answer(kind, replace(question, default=shown), shapes)
        if answer:
            answers[question.name] = answer
    return answers


def as_yaml(answer: str | list[str], is_word: bool) -> str:
    """An answer as it stands in a file: words plain, texts in quotation marks."""
    if isinstance(answer, list):
        return f"[{', '.join(map(scalar, answer))}]"
    return scalar(answer) if is_word else in_quotes(answer)


def is_word(kind: str, name: str) -> bool:
    """Whether a field takes a word or an id, and no text."""
    field = schemas.resolve(schemas.fields(kind)[name])
    return bool({"vocabulary", "reference", "enum"} & field.keys())


def choose(name: str, about: str, choices: Mapping[str, str], default: str) -> str:
    """One of some choices, or a word of one's own."""
    question = AskedField(name, {"description": about}, choices, default)
    _put(question)
    return _chosen(_line(question), question) or default


def _questions(kind: str, loaded: Loaded) -> list[AskedField]:
    schema = schemas.raw(kind)
    found = []
    for name, piece in schema["properties"].items():
        field = schemas.resolve(piece)
        if name not in schema["required"] or "format" in field:
            continue
        of_words = schemas.resolve(field["items"]) if field.get("type") == "array" else field
        choices = _choices(of_words, loaded)
        if (
            field.get("type") == "string"
            or "enum" in field
            or (choices and "vocabulary" in of_words)
        ):
            found.append(AskedField(name, field, choices))
    return found


def _choices(field: Mapping[str, Any], loaded: Loaded) -> dict[str, str]:
    """Words of a vocabulary with what they mean, ids of entries with their titles."""
    if "vocabulary" in field:
        listed = field["vocabulary"]
        document = loaded.documents.get(("vocabulary", listed))
        means = document.data.get("words", {}) if document else {}
        return {
            word: str(means.get(word, {}).get("means", ""))
            for word in loaded.names.of("vocabulary", listed)
        }
    if "enum" in field:
        return dict.fromkeys(map(str, field["enum"]), "")
    if "reference" in field:
        kind = field["reference"]
        ids = loaded.names.of("reference", kind)
        return {id: _title(loaded, kind, id) for id in ids}
    return {}


def _title(loaded: Loaded, kind: str, id: str) -> str:
    own = loaded.documents.get(("club", "club") if kind in IN_CLUB else (kind, id))
    data = own.data if own else {}
    named = data.get(IN_CLUB[kind], {}).get(id, {}) if kind in IN_CLUB else data
    return str(named.get("title", ""))


def _put(question: AskedField) -> None:
    """What is asked, and of what one may choose."""
    about = str(question.field.get("description", ""))
    least, most = (question.field.get(name) for name in ("minLength", "maxLength"))
    if least and most and not question.choices:
        about += f" ({least} to {most} characters)"
    print(f"\n{question.name}: {about}")
    widest = max(map(len, question.choices), default=0)
    shown = list(question.choices.items())[:_MOST_SHOWN]
    for number, (word, means) in enumerate(shown, 1):
        print(f"  {number:2} {word.ljust(widest)}  {means}".rstrip())
    if len(question.choices) > _MOST_SHOWN:
        print(f"  ... and {len(question.choices) - _MOST_SHOWN} more, by name")
    if question.is_list:
        print("  several with commas between them, the chief one first")


def _line(question: AskedField) -> str:
    try:
        return input(f"[{question.default or _LATER}] > ").strip()
    except EOFError:
        raise UsageError("nothing was written: the answers ended before the questions") from None


def _chosen(given: str, question: AskedField) -> str:
    """A choice by its number, else what was given."""
    words = list(question.choices)
    number = natural(given)
    return words[number - 1] if number and number <= len(words) else given


def _answer(kind: str, question: AskedField, shapes: Shapes) -> str | list[str]:
    """An answer that will do; "" for later."""
    _put(question)
    while True:
        given = _line(question) or question.default
        if not given:
            return ""
        answer: str | list[str] = (
            [_chosen(piece.strip(), question) for piece in given.split(",") if piece.strip()]
            if question.is_list
            else _chosen(given, question)
        )
        problems = _problems(kind, question, answer, shapes)
        if not problems:
            return answer
        print("\n".join(f"  {problem}" for problem in problems))


def _problems(
    kind: str, question: AskedField, answer: str | list[str], shapes: Shapes
) -> list[str]:
    """What the schema says against an answer, in the words of the check."""
    text = f"{question.name}: {as_yaml(answer, is_word(kind, question.name))}\n"
    document = Document("answer", text, {question.name: answer})
    findings = shapes.check(document, kind).findings
    return [
        f"{finding.message}; {finding.hint}"
        for finding in findings
        if finding.code != "missing-key"
    ]
