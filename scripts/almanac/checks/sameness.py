"""Rules on what two entries say alike, and on what nobody uses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.arithmetic.likeness import alike
from almanac.checks.rule import Problem, warns
from almanac.checks.study import Study
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.units import show_share

TEXT_KINDS = ("drill", "fault", "gear", "benchmark", "progression", "set", "practice")
_NOT_SAID = {"review", "accepts", "evidence", "safety", "hazards", "also_called"}


@warns("near-duplicate")
def near_duplicate(study: Study) -> Iterator[Problem]:
    """No two entries of a kind say the same: fewer shared runs of words than the policy's ``near_duplicate``.

    Dangers and evidence may be worded alike: a danger said in one way everywhere is a danger remembered.
    """
    for kind in TEXT_KINDS:
        for pair in alike(texts_of(study.catalogue, kind), study.catalogue.policy.limit("near_duplicate")):
            first, second = (study.catalogue.entries[kind, id] for id in (pair.first, pair.second))
            message = f"it says {show_share(pair.share)} the same as '{second.id}' ({second.file})"
            yield Problem(first, (), message, "say what only this one does, or merge the two")


def texts_of(catalogue: Catalogue, kind: str) -> dict[str, str]:
    """By id, all that the entries of a kind say, for likeness."""
    return {id: said(catalogue, entry) for (own, id), entry in catalogue.entries.items() if own == kind}


def said(catalogue: Catalogue, entry: Entry) -> str:
    """What an entry says: its texts, without dangers, evidence, review and other names."""
    data = catalogue.documents[entry.kind, entry.id].data
    return " ".join(_texts({name: value for name, value in data.items() if name not in _NOT_SAID}))


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str) and " " in value:
        yield value
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _texts(inner)
