"""The schemas as others read them: in standard keywords alone, and what that leaves out."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from almanac.source.schemas import Schema, bundled

_OWN_KEYWORDS = {"not_with", "clock", "says", "sorted", "looser", "seldom", "tells"}
_NOTED = ("vocabulary", "reference", "clock", "says", "sorted", "seldom")


def published(kind: str, names: Mapping[tuple[str, str], Collection[str]]) -> Schema:
    """The bundled schema in standard keywords only.

    ``names`` gives, by ("vocabulary", name) and ("reference", kind), the words that are allowed
    now.
    """

    def standard(piece: Any) -> Any:
        if isinstance(piece, list):
            return [standard(item) for item in piece]
        if not isinstance(piece, dict):
            return piece
        # Under ``properties`` stand fields, not keywords: one of them may be called ``clock``.
        out = {
            key: {name: standard(field) for name, field in value.items()}
            if key == "properties"
            else standard(value)
            for key, value in piece.items()
            if key not in _OWN_KEYWORDS
        }
        for keyword in ("vocabulary", "reference"):
            if isinstance(piece.get(keyword), str):
                out["enum"] = list(names.get((keyword, str(out.pop(keyword))), ()))
        if isinstance(piece.get("not_with"), dict):
            out["dependentSchemas"] = {
                key: {"not": {"anyOf": [{"required": [other]} for other in others]}}
                for key, others in piece["not_with"].items()
            }
        return out

    result: Schema = standard(bundled(kind))
    return result


def notes(kind: str) -> dict[str, Schema]:
    """What ``published`` leaves out and wording needs, by JSON Pointer into the published schema.

    Each note holds those of ``vocabulary``, ``reference``, ``clock``, ``says`` and ``sorted`` that
    the piece has.
    """
    found: dict[str, Schema] = {}

    def walk(piece: Any, pointer: str, is_fields: bool = False) -> None:
        if not isinstance(piece, dict):
            return
        own = {} if is_fields else {key: piece[key] for key in _NOTED if key in piece}
        if own:
            found[pointer] = own
        for key, value in piece.items():
            if is_fields or key not in _NOTED:
                walk(value, f"{pointer}/{key}", not is_fields and key in {"properties", "$defs"})

    walk(bundled(kind), "")
    return found
