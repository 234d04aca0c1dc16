"""Questions in a terminal for a new entry, from the schema of its kind; every answer is checked
before the next.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from almanac.model.load import Loaded
from almanac.source import schemas
from almanac.source.reader import Document
from almanac.source.starters import quoted
from almanac.source.validate import Shapes


def ask(kind: str, loaded: Loaded) -> dict[str, str]:
    """Answers for the required top-level fields that are one text or one word, as YAML by field."""
    schema = schemas.raw(kind)
    shapes = Shapes(loaded.names)
    answers: dict[str, str] = {}
    for name, piece in schema["properties"].items():
        field = schemas.resolve(piece)
        if name in schema["required"] and field.get("type") == "string" and "format" not in field:
            answers[name] = _answer(kind, name, field, shapes)
    return answers


def _answer(kind: str, name: str, field: Mapping[str, Any], shapes: Shapes) -> str:
    words = _choices(field, shapes)
    print(f"\n{name}: {field.get('description', '')}")
    for number, word in enumerate(words, 1):
        print(f"  {number:2} {word}")
    while True:
        given = input("> ").strip()
        if words and given.isdigit() and 0 < int(given) <= len(words):
            given = words[int(given) - 1]
        problems = _problems(kind, name, given, shapes)
        if not problems:
            return quoted(given)
        print("\n".join(f"  {problem}" for problem in problems))


def _choices(field: Mapping[str, Any], shapes: Shapes) -> list[str]:
    for keyword in ("vocabulary", "reference"):
        if keyword in field:
            return list(shapes.names.of(keyword, field[keyword]))[:30]
    return []


def _problems(kind: str, name: str, given: str, shapes: Shapes) -> list[str]:
    """What the schema says against an answer, in the words of the check."""
    document = Document("answer", f"{name}: {quoted(given)}\n", {name: given})
    findings = shapes.check(document, kind).findings
    return [
        f"{finding.message}; {finding.hint}"
        for finding in findings
        if finding.code != "missing-key"
    ]
