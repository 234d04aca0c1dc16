"""The JSON Schemas, one a kind of entry: loaded, bundled with the pieces they share, filled with
words.

The files use keywords of our own: ``vocabulary`` and ``reference`` name the list that a text must
be taken from, ``not_with`` names keys that exclude each other; ``looser`` says which change of a
field lets more happen, for reviews (``source/looser.py``); ``tells`` marks a text that says what
goes wrong and not what to do (``source/texts.py``). ``published`` turns them into plain
2020-12 keywords, so that any checker or editor understands the published copy.
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from almanac.kinds import KIND
from almanac.resources import SCHEMAS

Schema = dict[str, Any]

_SHARED = "common.json#/$defs/"
_TOLD = ("description", "says", "looser")


@cache
def raw(name: str) -> Schema:
    """The schema file of a kind, or ``common``, as it is written."""
    schema: Schema = json.loads((SCHEMAS / f"{name}.json").read_text("utf-8"))
    return schema


@cache
def bundled(kind: str) -> Schema:
    """The schema of a kind with every shared piece that it uses copied into its own ``$defs``.

    It also takes the stub of an entry that has moved: ``moved_to`` and nothing else.
    """
    shared = raw("common")["$defs"]
    used: dict[str, Any] = {}

    def localise(piece: Any) -> Any:
        if isinstance(piece, list):
            return [localise(item) for item in piece]
        if not isinstance(piece, dict):
            return piece
        target = piece.get("$ref", "")
        if isinstance(target, str) and target.startswith(_SHARED):
            name = target.removeprefix(_SHARED)
            if name not in used:
                used[name] = None
                used[name] = localise(shared[name])
            return {**piece, "$ref": f"#/$defs/{name}"}
        return {key: localise(value) for key, value in piece.items()}

    own = localise(raw(kind))
    own["$defs"] = {**own.get("$defs", {}), **dict(sorted(used.items()))}
    return _or_moved(own, shared["moved_to"], kind) if KIND[kind].can_move else own


@cache
def inlined(kind: str) -> Schema:
    """The bundled schema as it is quickest to check by: without descriptions, and with what each
    ``$ref`` names in its place.

    A piece that holds itself keeps its ``$ref``.
    """
    schema = bundled(kind)
    pieces = schema.get("$defs", {})

    def open_up(piece: Any, inside: tuple[str, ...]) -> Any:
        if isinstance(piece, list):
            return [open_up(item, inside) for item in piece]
        if not isinstance(piece, dict):
            return piece
        own = {
            key: value
            for key, value in piece.items()
            if not (key in _TOLD and isinstance(value, str))
        }
        name = str(own.get("$ref", "")).removeprefix("#/$defs/")
        if name not in pieces or name in inside or own.keys() & pieces[name].keys():
            return {key: open_up(value, inside) for key, value in own.items()}
        del own["$ref"]
        return {**open_up(pieces[name], (*inside, name)), **open_up(own, inside)}

    return {key: value if key == "$defs" else open_up(value, ()) for key, value in schema.items()}


_RETIRED: Schema = {
    "retired": {
        "description": "The day on which the entry was retired.",
        "type": "string",
        "format": "date",
        "pattern": "^(19|20|21)\\d{2}-\\d{2}-\\d{2}$",
    },
    "title": {
        "description": "What it was called.",
        "type": "string",
        "minLength": 1,
        "maxLength": 80,
        "pattern": "^[^\\n<>&]+$",
    },
}


def _or_moved(schema: Schema, moved_to: Schema, kind: str) -> Schema:
    head = {key: schema.pop(key) for key in ("$schema", "$id", "title", "description", "$defs")}
    stub = {
        "additionalProperties": False,
        "says": "a file that says moved_to holds nothing else, but retired and title: its fields "
        "belong to the entry that replaced it",
        "properties": {"moved_to": {**moved_to, "reference": kind}, **_RETIRED},
        "dependentRequired": {"retired": ["title"], "title": ["retired"]},
    }
    return {
        **head,
        "type": "object",
        "if": {"required": ["moved_to"]},
        "then": stub,
        "else": schema,
    }


WHERE_USED = frozenset({"starts", "partners", "teams"})
"""Vocabularies that a catalogue may do without until an entry takes a word from one."""


@cache
def vocabularies() -> frozenset[str]:
    """The vocabularies that the schemas take words from: every one of them must be there, but for
    those of ``WHERE_USED``.
    """

    def named(piece: Any) -> set[str]:
        if isinstance(piece, list):
            return set().union(*map(named, piece))
        if not isinstance(piece, dict):
            return set()
        own = {piece["vocabulary"]} if isinstance(piece.get("vocabulary"), str) else set()
        return own.union(*map(named, piece.values()))

    return frozenset(set().union(*(named(raw(name)) for name in ("common", *KIND))))


def fields(kind: str) -> Schema:
    """The properties of a kind, by name, as they are written."""
    properties: Schema = raw(kind)["properties"]
    return properties


def defaults(kind: str, field: str) -> Schema:
    """By name, what stands for each part of a field that an entry leaves out."""
    parts = resolve(fields(kind)[field])["properties"]
    return {name: piece["default"] for name, piece in parts.items() if "default" in piece}


@cache
def level_defaults() -> dict[str, Schema]:
    """By level, what stands for each limit that a policy leaves out of it: a default holds one for
    each level, the strictest first. Under "" those strictest, for a level that none of them names.
    """
    limits = _level_limits()
    given = {name: piece["default"] for name, piece in limits.items() if "default" in piece}
    levels = dict.fromkeys(level for default in given.values() for level in default)
    strictest = {name: next(iter(default.values())) for name, default in given.items()}
    named = {
        level: {name: default.get(level, strictest[name]) for name, default in given.items()}
        for level in levels
    }
    return {"": strictest, **named}


@cache
def level_titles() -> dict[str, str]:
    """What each limit that depends on a level is called on a page."""
    return {name: piece["title"] for name, piece in _level_limits().items() if "title" in piece}


def _level_limits() -> dict[str, Schema]:
    limits: dict[str, Schema] = resolve(fields("policy")["levels"])["additionalProperties"][
        "properties"
    ]
    return limits


def resolve(piece: Schema) -> Schema:
    """A piece of a schema with its ``$ref`` into the shared pieces opened; its own keys win."""
    target = piece.get("$ref", "")
    if not target.startswith(_SHARED):
        return piece
    return {**resolve(raw("common")["$defs"][target.removeprefix(_SHARED)]), **piece}
