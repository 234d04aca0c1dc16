"""One failed keyword of a schema, with what its explanation needs: the value, its name and place,
what the schema says.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, cast

import yaml
from jsonschema.exceptions import ValidationError

from almanac.findings import Finding, error
from almanac.source import schemas
from almanac.source.names import Names
from almanac.source.reader import DataPath, Document

_MOST_SHOWN = 60
_INTO_ANOTHER = {"properties", "items", "additionalProperties", "propertyNames"}
_TYPES = {
    "string": "text", "integer": "a whole number", "number": "a number", "boolean": "true or false",
    "array": "a list", "object": "fields (name: value)", "null": "empty",
}  # fmt: skip


def quote(value: Any) -> str:
    """A value for a sentence: in quotes, on one line, not too long."""
    text = str(value).lower() if isinstance(value, bool) else str(value)
    text = text if len(text) <= _MOST_SHOWN else text[: _MOST_SHOWN - 1] + "…"
    return (
        "'"
        + "".join(
            char if char.isprintable() else char.encode("unicode-escape").decode() for char in text
        )
        + "'"
    )


def type_name(value: Any) -> str:
    """What sort of value it is, for a sentence."""
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return f"the word {str(value).lower()}"
    if isinstance(value, int | float):
        return f"the number {value}"
    if isinstance(value, str):
        return f"the text {quote(value)}"
    return "a list" if isinstance(value, list) else "fields (name: value)"


@dataclass(frozen=True)
class Failure:
    """A ValidationError in a document of a kind."""

    problem: ValidationError
    document: Document
    kind: str
    names: Names

    @property
    def value(self) -> Any:
        """What stands in the document."""
        return self.problem.instance

    @property
    def wanted(self) -> Any:
        """What the keyword asks for."""
        return self.problem.validator_value

    @property
    def schema(self) -> schemas.Schema:
        """The piece of the schema whose keyword failed."""
        return self.around[0]

    @property
    def on_key(self) -> bool:
        """Whether it is a key that fails, not a value."""
        return "propertyNames" in self.problem.absolute_schema_path

    @property
    def path(self) -> DataPath:
        """The way to the value in the document; where a key fails, the way to what stands under
        it.
        """
        path = tuple(cast("Iterable[str | int]", self.problem.absolute_path))
        return (*path, self.value) if self.on_key else path

    @property
    def name(self) -> str:
        """The value's name for a sentence: its key, or its number in the list of that key."""
        keys = [step for step in self.path if isinstance(step, str)]
        if not keys:
            return "the entry"
        last = self.path[-1]
        return quote(last) if isinstance(last, str) else f"number {last + 1} of {quote(keys[-1])}"

    @cached_property
    def _walked(self) -> tuple[list[schemas.Schema], list[str], list[str]]:
        """The way through the schema to the keyword that failed: jsonschema names each step but the
        references.
        """
        root = piece = schemas.bundled(self.kind)
        around, instead, types = [root], list[str](), list[str]()
        *way, keyword = map(str, self.problem.absolute_schema_path)
        named = False
        for step in [*way, ""]:
            while (step or keyword) not in piece and "$ref" in piece:
                piece = root["$defs"][piece["$ref"].rpartition("/")[2]]
                around.append(piece)
            if not step:
                break
            if step == "else" and piece is not root:
                instead += piece["if"].get("required", [])
                types += filter(None, [piece["if"].get("type")])
            if step in _INTO_ANOTHER and not named:
                around, instead, types = [], [], []
            piece = piece[step]
            named = step == "properties" and not named
            if not named:
                around.append(piece)
        return around[::-1], instead, types

    @property
    def around(self) -> list[schemas.Schema]:
        """The pieces of the schema that this value answers to, the one that failed first."""
        return self._walked[0]

    @property
    def instead(self) -> list[str]:
        """Keys that, had they been there, would have chosen another form: ``rounds`` or ``pause``
        for ``reps``.
        """
        return self._walked[1]

    def says(self, keyword: str, otherwise: Any = "") -> Any:
        """What the nearest piece around the value has under a keyword."""
        return next((piece[keyword] for piece in self.around if keyword in piece), otherwise)

    @cached_property
    def fields(self) -> Mapping[str, schemas.Schema]:
        """The fields that may stand here, with their schemas as written."""
        found: dict[str, schemas.Schema] = {}
        for piece in self.around:
            found = {**piece.get("properties", {}), **found}
        return found

    def resolved(self, piece: schemas.Schema) -> schemas.Schema:
        """A piece of the schema, with what its references lead to in place of them."""
        while "$ref" in piece:
            own = {key: value for key, value in piece.items() if key != "$ref"}
            there = schemas.bundled(self.kind)["$defs"][piece["$ref"].rpartition("/")[2]]
            piece = {**there, **own}
        return piece

    @cached_property
    def siblings(self) -> Mapping[str, Any]:
        """The fields among which the value stands; none where it stands in a list."""
        data: Any = self.document.data
        for step in self.path[:-1]:
            data = data[step]
        return data if isinstance(data, dict) else {}

    @property
    def written(self) -> str:
        """The value as it stands in its file; "" where it is no plain value, or stands in none."""
        try:
            node = self.document.node(self.path)
        except KeyError:
            return ""
        return str(node.value) if isinstance(node, yaml.ScalarNode) else ""

    def about(self, field: str) -> str:
        """The description of a field that may stand here, as it is put in a sentence: lower case,
        no full stop.
        """
        piece = self.fields.get(field, {})
        text = str(piece.get("description", self.resolved(piece).get("description", "")))
        return text[:1].lower() + text[1:].rstrip(".")

    @property
    def noun(self) -> str:
        """What belongs here, for a sentence."""
        wanted = [self.wanted] if isinstance(self.wanted, str) else self.wanted
        words = [_TYPES[word] for word in wanted]
        if self.says("clock"):
            words = ["a time"]
        elif self.says("format") == "date":
            words = ["a day"]
        elif self.says("vocabulary"):
            words = [f"a word of the {humanize(self.says('vocabulary'))}"]
        elif self.says("reference"):
            words = [f"the id of a {humanize(self.says('reference'))}"]
        return " or ".join(dict.fromkeys([*(_TYPES[word] for word in self._walked[2]), *words]))

    def say(
        self,
        code: str,
        message: str,
        hint: str,
        path: DataPath | None = None,
        of_key: bool | None = None,
    ) -> Finding:
        """An error at the value, at its key, or at another path."""
        place = self.document.place(
            self.path if path is None else path, self.on_key if of_key is None else of_key
        )
        return error(code, place, message, hint)


def humanize(name: str) -> str:
    """The name of a list or kind in words."""
    return name.replace("-", " ").replace("_", " ")
