"""The schemas: sound in themselves, described throughout, published in plain keywords, in step with
the model.
"""

from __future__ import annotations

import dataclasses
import json
import re
import shutil
import types
import typing
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Any, get_args, get_origin

import pytest
from example_cases import BASE, Case, cases
from jsonschema import Draft202012Validator, FormatChecker
from jsonschema.validators import extend

from almanac.kinds import KIND
from almanac.model.entry import Entry, Seconds
from almanac.model.expectation import Expectation
from almanac.model.load import Loaded, load
from almanac.model.policy import LevelLimits
from almanac.model.structure import CLASSES, structure
from almanac.model.swim_set import Item
from almanac.resources import HOME
from almanac.source import published_schemas, schemas
from almanac.units import Course

EVERY_FIELD = next(case for case in cases("accepted") if case.name == "every-field")
OWN_KEYWORDS = {
    "vocabulary", "reference", "not_with", "clock", "says", "sorted", "looser", "seldom", "tells",
}  # fmt: skip
STANDARD = {
    "$schema", "$id", "$defs", "$ref", "title", "description", "type", "enum", "const",
    "properties", "required",
    "additionalProperties", "propertyNames", "items", "minItems", "maxItems", "uniqueItems",
    "minLength", "maxLength",
    "pattern", "format", "multipleOf", "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum",
    "minProperties", "maxProperties",
    "dependentRequired", "dependentSchemas", "if", "then", "else", "not", "anyOf", "allOf", "oneOf",
    "default",
}  # fmt: skip
BY_NAME = {
    "properties",
    "$defs",
    "dependentSchemas",
}  # under these stand names, and a schema under each

kinds = pytest.mark.parametrize("kind", list(KIND))


@pytest.fixture(scope="module")
def every_field(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The catalogue in which every field of every kind stands."""
    root = tmp_path_factory.mktemp("every-field")
    EVERY_FIELD.build(root)
    return load(root)


def pieces(schema: Any, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every schema inside a schema, with where it stands."""
    if isinstance(schema, list):
        for number, item in enumerate(schema):
            yield from pieces(item, f"{path}/{number}")
    elif isinstance(schema, dict):
        yield path, schema
        for keyword, value in schema.items():
            if keyword in BY_NAME:
                for name, piece in value.items():
                    yield from pieces(piece, f"{path}/{keyword}/{name}")
            elif keyword not in {
                "enum",
                "const",
                "required",
                "dependentRequired",
                "not_with",
                "type",
                "default",
            }:
                yield from pieces(value, f"{path}/{keyword}")


# ---- sound in themselves


@pytest.mark.parametrize("name", ["common", *KIND])
def test_written_schemas_are_sound(name: str) -> None:
    Draft202012Validator.check_schema(schemas.raw(name))


@kinds
def test_bundled_schemas_are_sound_and_whole(kind: str) -> None:
    bundled = schemas.bundled(kind)
    Draft202012Validator.check_schema(bundled)
    for path, piece in pieces(bundled):
        if "$ref" in piece:
            assert piece["$ref"].removeprefix("#/$defs/") in bundled["$defs"], (
                f"{path} leads nowhere"
            )


@pytest.mark.parametrize("name", ["common", *KIND])
def test_schemas_use_known_keywords(name: str) -> None:
    for path, piece in pieces(schemas.raw(name)):
        unknown = piece.keys() - STANDARD - OWN_KEYWORDS
        assert not unknown, f"{name}.json{path}: {sorted(unknown)}"


@pytest.mark.parametrize("name", ["common", *KIND])
def test_what_is_seldom_filled_in_is_a_field_and_never_needed(name: str) -> None:
    for path, piece in pieces(schemas.raw(name)):
        seldom = set(piece.get("seldom", ()))
        assert seldom <= piece.get("properties", {}).keys(), path
        assert not seldom & set(piece.get("required", ())), path


@pytest.mark.parametrize("name", ["common", *KIND])
def test_every_property_is_described(name: str) -> None:
    for path, piece in pieces(schemas.raw(name)):
        for field, written in piece.get("properties", {}).items():
            if {"if", "else"} & {*path.split("/")}:
                continue  # a condition, no field
            about = schemas.resolve(written).get("description", "")
            about = about or schemas.raw(name).get("$defs", {}).get(
                written.get("$ref", "").rpartition("/")[2], {}
            ).get("description", "")
            assert len(about) > 5 and about.endswith("."), (
                f"{name}.json{path}/properties/{field} has no description, or no full stop"
            )


@kinds
def test_every_text_list_and_number_is_bounded(kind: str) -> None:
    """No field takes a text, list or number without end: it would overflow a page, or a sum."""
    for path, piece in pieces(schemas.bundled(kind)):
        if path.endswith("/if"):
            continue  # a condition, no field
        if piece.get("type") == "array":
            assert {"minItems", "maxItems"} <= piece.keys(), f"{kind}{path}"
        if piece.get("type") == "string":
            assert piece.keys() & {"maxLength", "vocabulary", "reference", "format", "pattern"}, (
                f"{kind}{path}"
            )
        if piece.get("type") == "object" and "properties" in piece:
            assert piece.get("additionalProperties") is False, f"{kind}{path} takes any key"


# ---- published


@kinds
def test_published_copies_use_standard_keywords_only(kind: str, every_field: Loaded) -> None:
    published = published_schemas.published(kind, every_field.names.words)
    Draft202012Validator.check_schema(published)
    for path, piece in pieces(published):
        assert piece.keys() <= STANDARD, f"{kind}{path}: {sorted(piece.keys() - STANDARD)}"
    for path, piece in pieces(schemas.bundled(kind)):
        written = dict(pieces(published))[path]
        assert piece.get("properties", {}).keys() == written.get("properties", {}).keys(), (
            f"{kind}{path} loses a field"
        )


def published_findings(loaded: Loaded) -> Iterator[str]:
    """What a plain JSON Schema checker says of every document, by the published copies."""
    checkers = {
        kind: Draft202012Validator(
            published_schemas.published(kind, loaded.names.words),
            format_checker=FormatChecker(["date"]),
        )
        for kind in KIND
    }
    for (kind, id), document in loaded.documents.items():
        for problem in checkers[kind].iter_errors(document.data):
            yield f"{kind} {id}: {problem.json_path}: {problem.message[:200]}"


def test_every_entry_passes_its_published_copy(loaded: Loaded) -> None:
    assert list(published_findings(loaded)) == []


@pytest.mark.parametrize(
    "case", [case for case in cases("accepted") if not case.steps], ids=lambda case: case.name
)
def test_accepted_examples_pass_the_published_copies(case: Case, tmp_path: Path) -> None:
    case.build(tmp_path)
    assert list(published_findings(load(tmp_path))) == []


SCHEMA_MISTAKES = (
    "key-",
    "type-",
    "word-",
    "choice-",
    "sendoff-and",
    "distance-and",
    "time-",
    "day-",
    "range-",
    "text-",
    "list-",
    "item-",
)
LOOSER = {
    "type-decimal-that-is-whole",  # 6.0 is a whole number to JSON Schema
    "text-of-blanks",  # which signs no eye sees, no pattern says
    # what is left of it is a text, and a comment is no part of the data
    "text-cut-by-a-comment",
    "text-cut-by-a-comment-in-brackets",
}


@pytest.mark.parametrize(
    "case",
    [case for case in cases("rejected") if case.name.startswith(SCHEMA_MISTAKES)],
    ids=lambda case: case.name,
)
def test_the_published_copies_refuse_what_check_refuses(case: Case, tmp_path: Path) -> None:
    case.build(tmp_path)
    assert bool(list(published_findings(load(tmp_path)))) == (case.name not in LOOSER)


# ---- in step with the model


class Visits:
    """Validates documents against a bundled schema and keeps which fields and references they
    reached.
    """

    def __init__(self, kind: str) -> None:
        self.fields: set[tuple[int, str]] = set()
        self.references: set[tuple[str, str]] = set()
        self.reference_pieces: set[int] = set()
        plain = Draft202012Validator.VALIDATORS["properties"]

        def properties(validator: Any, fields: Any, instance: Any, schema: Any) -> Any:
            if isinstance(instance, dict):
                self.fields |= {(id(schema), name) for name in fields if name in instance}
            return plain(validator, fields, instance, schema)

        def reference(validator: Any, wanted: str, instance: Any, schema: Any) -> Any:
            self.references.add((wanted, instance))
            self.reference_pieces.add(id(schema))
            return ()

        self.validator = extend(
            Draft202012Validator, {"properties": properties, "reference": reference}
        )(schemas.bundled(kind))

    def visit(self, data: Any) -> None:
        """Go through one document."""
        assert list(self.validator.iter_errors(data)) == []


def documents(loaded: Loaded, kind: str) -> dict[str, Any]:
    return {id: document.data for (own, id), document in loaded.documents.items() if own == kind}


@kinds
def test_the_example_of_every_field_has_every_field(kind: str, every_field: Loaded) -> None:
    """So that the tests below see every field: a new one goes into
    tests/examples/accepted/every-field.
    """
    visits = Visits(kind)
    for data in documents(every_field, kind).values():
        visits.visit(data)
    for path, piece in pieces(schemas.bundled(kind)):
        unseen = [
            name
            for name, field in piece.get("properties", {}).items()
            if (id(piece), name) not in visits.fields and "default" not in field
        ]  # a limit with a default is one of many of one shape
        of_stub = {"moved_to", "retired", "title"} if path == "/then" else {"moved_to"}
        assert path.endswith("/if") or not set(unseen) - of_stub, (
            f"{kind}{path}: add {unseen} to the example every-field"
        )
        assert (
            "reference" not in piece
            or id(piece) in visits.reference_pieces
            or path.endswith("/moved_to")
        ), f"{kind}{path}"


def test_every_limit_has_a_default_that_its_own_schema_takes() -> None:
    """So a rule that brings a limit leaves every club's policy valid as it stands."""
    limits = schemas.bundled("policy")["properties"]["limits"]["properties"]
    whole = published_schemas.published("policy", {})
    for name, default in schemas.defaults("policy", "limits").items():
        schema = {**whole["properties"]["limits"]["properties"][name], "$defs": whole["$defs"]}
        Draft202012Validator(schema).validate(default)
    assert schemas.defaults("policy", "limits").keys() == limits.keys()


LIMIT_FORMS = {"#/$defs/limit", "#/$defs/limit_above_zero"}
LEVELS = schemas.bundled("policy")["properties"]["levels"]["additionalProperties"]["properties"]
LIMITS_OF_LEVELS = {name for name, field in LEVELS.items() if str(field.get("$ref")) in LIMIT_FORMS}
OF_THE_CLUB_ALONE = {"light_days", "slowest_afloat"}


def test_every_limit_of_a_level_has_its_defaults() -> None:
    others = {field.name for field in dataclasses.fields(LevelLimits)} - {"limits"}
    assert LIMITS_OF_LEVELS | others == set(LEVELS)
    for level, defaults in schemas.level_defaults().items():
        assert set(LEVELS) - set(defaults) == OF_THE_CLUB_ALONE, level


def test_every_limit_that_the_program_asks_for_is_in_the_schema() -> None:
    """By ``limit("name")``; of these each of a level and of all has a value for every club."""
    known = {*schemas.defaults("policy", "limits"), *LIMITS_OF_LEVELS - OF_THE_CLUB_ALONE}
    asked = {
        name: file.name
        for file in (HOME / "scripts/almanac").rglob("*.py")
        for name in re.findall(r"\blimit\(\s*\"(\w+)\"", file.read_text("utf-8"))
    }
    assert len(asked) > 50
    assert {name: file for name, file in asked.items() if name not in known} == {}


def test_every_limit_of_a_level_has_a_title_to_be_shown_by() -> None:
    titles = schemas.level_titles()
    assert titles.keys() == LIMITS_OF_LEVELS
    assert len(set(titles.values())) == len(titles)
    assert not any("_" in title for title in titles.values())


def test_a_policy_without_limits_has_the_defaults(tmp_path: Path) -> None:
    root = tmp_path / "root"
    shutil.copytree(BASE, root)
    policy = root / "plans" / "policy.yml"
    text = policy.read_text("utf-8")
    own = text[text.index("limits:") : text.index("levels:")]
    policy.write_text(
        text.replace(
            own,
            "limits:\n  days_off: {value: 2, unit: days, reason: Two., source: house preference}\n",
        ),
        "utf-8",
    )
    loaded = load(root)
    assert loaded.catalogue is not None and loaded.findings == []
    assert loaded.catalogue.policy.limit("days_off") == 2
    assert loaded.catalogue.policy.limit("gap_on_back") == 10
    rules = loaded.catalogue.policy.house_rules
    assert list(rules) == ["who_decides", "water_temperature", "lightning", "two_adults"]


@kinds
def test_every_reference_of_a_schema_is_reported_by_the_model(
    kind: str, every_field: Loaded
) -> None:
    """What the schema marks as naming another entry, the dataclass lists in ``references()``, and
    nothing else.
    """
    for id, data in documents(every_field, kind).items():
        visits = Visits(kind)
        visits.visit(data)
        entry = structure(data, kind, id, f"{kind}/{id}.yml")
        assert {
            (reference.kind, reference.id) for reference in entry.references()
        } == visits.references, id


RENAMED = {
    "for_whom": "for",
    "hazards": "safety",
    "drawing": "figure",
    "viewpoint": "from",
    "least": "from",
    "most": "to",
    "easiest": "from",
    "hardest": "to",
    "first": "from",
    "last": "to",
}
SCALARS = {str, int, float, bool, date, Course}
NOT_COMPARED = {"Item", "Expectation"}  # read by hand: compared below


def compare(cls: type[Any], schema: Mapping[str, Any], root: Mapping[str, Any], where: str) -> None:
    """A dataclass and the schema of what it holds have the same fields, and so on down."""
    schema = inlined(schema, root)
    schema = with_limits_apart(schema) if cls is LevelLimits else schema
    hints = typing.get_type_hints(cls)
    renamed = {field.name: RENAMED.get(field.name, field.name) for field in dataclasses.fields(cls)}
    own = {"id", "file"} if issubclass(cls, Entry) else set()
    own |= {field.name for field in dataclasses.fields(cls) if field.metadata.get("resolved")}
    fields = {
        name: written(name, renamed[name], schema["properties"])
        for name in renamed
        if name not in own
    }
    idle = {
        name
        for name in ("summary", "also_called", "asked_as", "review", "accepts")
        if name not in schema["properties"]
    }  # every Entry has them
    assert set(fields.values()) - idle == set(schema["properties"]), (
        f"{where}: {cls.__name__} and its schema have parted"
    )
    required = {
        name for name, field in zip(renamed, dataclasses.fields(cls), strict=True)
        if field.default is dataclasses.MISSING
        and field.default_factory is dataclasses.MISSING
        and name not in own
    }  # fmt: skip
    assert {fields[name] for name in required} <= set(schema.get("required", ())), (
        f"{where}: {cls.__name__} must have more than its schema"
    )
    for name, key in fields.items():
        if key in schema["properties"]:
            compare_type(hints[name], schema["properties"][key], root, f"{where}.{key}")


def with_limits_apart(schema: Mapping[str, Any]) -> Mapping[str, Any]:
    """What stands of a level: the class keeps its limits by name, so that a new one needs no
    field.
    """
    limits = {name: schema["properties"][name] for name in LIMITS_OF_LEVELS}
    others = {name: own for name, own in schema["properties"].items() if name not in limits}
    apart = {"limits": {"type": "object", "properties": limits}}
    return {**schema, "properties": {**others, **apart}}


def written(name: str, renamed: str, properties: Mapping[str, Any]) -> str:
    """The field's name in an entry: ``what`` of a drill's ``look_for`` is written ``see``."""
    if name == "what" and "see" in properties:
        return "see"
    return name if name in properties else renamed


def inlined(schema: Mapping[str, Any], root: Mapping[str, Any]) -> Mapping[str, Any]:
    while "$ref" in schema:
        schema = {
            **root["$defs"][schema["$ref"].rpartition("/")[2]],
            **{key: value for key, value in schema.items() if key != "$ref"},
        }
    return schema


def compare_type(hint: Any, schema: Mapping[str, Any], root: Mapping[str, Any], where: str) -> None:
    schema = inlined(schema, root)
    origin, args = get_origin(hint), get_args(hint)
    if origin in {types.UnionType, typing.Union} and hint != Item:
        (inner,) = [arg for arg in args if arg is not type(None)]
        compare_type(inner, schema, root, where)
    elif origin is tuple and args[0] != Item:
        assert schema["type"] == "array", where
        compare_type(args[0], schema["items"], root, where)
    elif origin is not None and issubclass(origin, Mapping):
        assert schema["type"] == "object", where
        if "properties" in schema:
            for name, piece in schema["properties"].items():
                compare_type(args[1], piece, root, f"{where}.{name}")
        else:
            compare_type(args[1], schema["additionalProperties"], root, where)
    elif dataclasses.is_dataclass(hint) and hint is not Course and hint is not Expectation:
        compare(hint, schema, root, where)
    elif hint in SCALARS or hint is Seconds:
        expect_scalar(hint, schema, where)


def expect_scalar(hint: Any, schema: Mapping[str, Any], where: str) -> None:
    words = {str: "string", int: "integer", float: "number", date: "string"}
    if hint is Seconds:
        assert schema.get("clock"), where
    elif hint is Course:
        assert "25yd" in schema["enum"], where
    elif hint is bool:
        assert schema.get("const") is True or schema["type"] == "boolean", where
    elif "enum" in schema:
        assert hint is str, where
    else:
        assert schema["type"] == words[hint], where
        assert (hint is date) == (schema.get("format") == "date"), where


@kinds
def test_dataclasses_have_the_fields_of_their_schemas(kind: str) -> None:
    root = schemas.bundled(kind)
    whole = root if "properties" in root else root["else"]  # of one kind the form comes first
    compare(CLASSES[kind], {**whole, "$defs": {}}, root, kind)


def test_the_expectation_has_the_fields_of_its_schema() -> None:
    fields = schemas.fields("set")["expect"]["properties"]
    assert {field.name for field in dataclasses.fields(Expectation)} == set(fields)


def test_each_kind_has_a_class_and_each_class_its_kind() -> None:
    assert list(CLASSES) == list(KIND)


@kinds
def test_what_the_schema_lets_pass_the_model_takes(kind: str, every_field: Loaded) -> None:
    """And what it holds is immutable: frozen dataclasses, hashable but for their mappings."""
    for id, data in documents(every_field, kind).items():
        entry = structure(json.loads(json.dumps(data)), kind, id, f"{kind}/{id}.yml")
        assert isinstance(entry, CLASSES[kind]) and entry.id == id
        with pytest.raises(dataclasses.FrozenInstanceError):
            entry.id = "other"  # type: ignore[misc]


def test_the_base_is_small() -> None:
    assert sum(file.stat().st_size for file in BASE.rglob("*.yml")) < 16_000
