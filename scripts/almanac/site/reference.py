"""Pages made from the code itself: the fields of every kind of entry, and every check; and the
safety page.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.brief import gathered
from almanac.checks import RULES
from almanac.findings import Severity
from almanac.kinds import KIND, WITH_PAGES
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.pool import Emergency
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import GRAVITIES, HAZARDS
from almanac.report.brief_text import own_words
from almanac.report.limit_rows import level_limits, limits_of_all
from almanac.report.pool_text import end_rows
from almanac.site.links import Link, Page, link, place_of_rule
from almanac.source import schemas
from almanac.source.codes import READING_CODES

_TYPE_WORDS = {
    "string": "text",
    "integer": "whole number",
    "number": "number",
    "boolean": "true or false",
    "array": "list",
}


def reference_pages(analysis: Analysis) -> Iterator[Page]:
    """The safety page, the field tables and the list of checks."""
    catalogue = analysis.catalogue
    safety = {
        "house": [
            (place_of_rule(name), rule) for name, rule in catalogue.policy.house_rules.items()
        ],
        "emergencies": _emergencies(catalogue),
        "sections": list(_hazards(catalogue)),
        "ends": list(end_rows(catalogue)),
        "limits": list(level_limits(catalogue)),
        "all_levels": list(limits_of_all(catalogue)),
    }
    yield Page("safety.md", "safety", safety)
    yield Page(
        "fields.md",
        "fields",
        {"kinds": [_kind(kind) for kind in KIND], "shared": _shared_kinds()},
    )
    shown = {"by_severity": list(_rules()), "reading": sorted(READING_CODES.items())}
    yield Page("checks.md", "checks", shown)


def _emergencies(catalogue: Catalogue) -> list[tuple[str, Emergency]]:
    return [
        (pool.title, pool.emergency)
        for pool in catalogue.club.pools.values()
        if pool.emergency != Emergency()
    ]


def _rules() -> Iterator[tuple[str, list[dict[str, Any]]]]:
    """The rules by what comes of breaking one, each by its code."""
    for severity, title in ((Severity.ERROR, "Errors"), (Severity.WARNING, "Warnings")):
        yield (
            title,
            [
                {"code": rule.code, "paragraphs": rule.explanation.split("\n\n")}
                for rule in sorted(RULES, key=lambda rule: rule.code)
                if rule.severity is severity
            ],
        )


def _hazards(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    """Every hazard by its gravity, with its standard control and the entries that name it, each
    with what it adds of its own. A hazard that no entry names stands here as well.
    """
    carriers: list[Drill | Gear | Benchmark | SwimSet | Practice] = [
        *catalogue.gear.values(),
        *catalogue.drills.values(),
        *catalogue.benchmarks.values(),
        *catalogue.sets.values(),
        *catalogue.practices.values(),
    ]
    named: dict[str, list[tuple[Link, str]]] = {}
    for entry in carriers:
        for line in gathered(entry.key, [(own, entry.key) for own in entry.hazards], {}):
            words = " ".join(own_words(source) for source in line.sources)
            named.setdefault(line.hazard, []).append((link(entry), words))
    vocabularies = catalogue.vocabularies
    if HAZARDS not in vocabularies or GRAVITIES not in vocabularies:
        return
    for id, gravity in catalogue.words(GRAVITIES).items():
        rows = [
            (key, word, named.get(key, []))
            for key, word in catalogue.words(HAZARDS).items()
            if word.gravity == id
        ]
        yield {"title": gravity.title, "means": gravity.means, "rows": rows}


def _kind(kind: str) -> dict[str, Any]:
    schema = schemas.raw(kind)
    return {
        "kind": kind,
        "title": schema["title"],
        "about": schema["description"],
        "file": f"data/v1/schema/{kind}.json",
        "has_pages": kind in WITH_PAGES,
        "rows": list(_rows(schema)),
    }


def _shared_kinds() -> list[dict[str, Any]]:
    """The pieces of a set that nest: a round, reps, a part, a pause."""
    pieces = schemas.raw("common")["$defs"]
    return [
        {
            "kind": name,
            "title": pieces[name]["title"].capitalize(),
            "rows": list(_rows(pieces[name])),
        }
        for name in ("reps", "part", "round", "pause")
    ]


def _rows(schema: schemas.Schema, prefix: str = "") -> Iterator[dict[str, str]]:
    """A row for each field, and for the fields inside it."""
    required = schema.get("required", ())
    for name, piece in schema.get("properties", {}).items():
        field = schemas.resolve(piece)
        yield {
            "field": prefix + name,
            "holds": _holds(field),
            "must": "yes" if name in required else "",
            "about": field.get("description", ""),
        }
        inner = schemas.resolve(field.get("items", {})) if field.get("type") == "array" else field
        if inner.get("type") == "object" and "properties" in inner and not prefix.count("."):
            yield from _rows(inner, f"{prefix}{name}.")


def _holds(field: schemas.Schema) -> str:
    """What a field holds, in a few words."""
    if "vocabulary" in field:
        return f"a word of {field['vocabulary']}"
    if "reference" in field:
        return f"the id of a {str(field['reference']).replace('_', ' ')}"
    if "clock" in field:
        return "a time, m:ss or seconds"
    if "enum" in field:
        return " or ".join(map(str, field["enum"]))
    if "const" in field:
        return str(field["const"]).lower()
    kind = field.get("type", "")
    if kind == "array":
        return f"list of: {_holds(schemas.resolve(field.get('items', {})))}" + _counted(field)
    if kind == "string" and "maxLength" in field:
        return f"text, {field.get('minLength', 0)} to {field['maxLength']} characters"
    return _TYPE_WORDS.get(str(kind), "fields" if kind == "object" else "see its description")


def _counted(field: schemas.Schema) -> str:
    return (
        f", {field['minItems']} to {field['maxItems']}"
        if {"minItems", "maxItems"} <= field.keys()
        else ""
    )
