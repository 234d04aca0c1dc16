"""Every layer has what it must have for every kind of entry, under the kind's own key."""

from __future__ import annotations

from pathlib import Path

import pytest

from almanac.analysis.figures import REGISTRY
from almanac.analysis.figures.wholes import WHOLES
from almanac.kinds import KIND, KINDS, SUMMED, WITH_PAGES
from almanac.model.structure import CLASSES
from almanac.report.reports import REPORTS
from almanac.resources import STARTERS
from almanac.site.kind_indexes import INDEXES
from almanac.site.kind_pages import PAGES

ROOT = Path(__file__).resolve().parents[1]

PER_KIND = {
    "schemas": (
        {path.stem for path in (ROOT / "scripts/almanac/schemas").glob("*.json")} - {"common"},
        set(KIND),
    ),
    "classes": (set(CLASSES), set(KIND)),
    "starters": (
        {path.stem for path in STARTERS.glob("*.yml")},
        {kind.key for kind in KINDS if kind.has_starter},
    ),
    "templates of pages": (
        {path.name.removesuffix(".md.j2") for path in (ROOT / "site_src/templates").glob("*.j2")}
        & set(KIND),
        set(WITH_PAGES),
    ),
    "deck cards": (
        {
            path.stem.removeprefix("_card_")
            for path in (ROOT / "site_src/templates").glob("_card_*")
        },
        set(WITH_PAGES),
    ),
    "indexes": (set(INDEXES), set(WITH_PAGES)),
    "pages": (set(PAGES), set(WITH_PAGES)),
    "reports": (set(REPORTS), set(SUMMED)),
    "figures": (set(REGISTRY), set(WHOLES)),
    "figures of what is added up": (set(REGISTRY) & set(SUMMED), set(SUMMED)),
}


@pytest.mark.parametrize("registry", PER_KIND)
def test_every_layer_has_its_part_of_every_kind(registry: str) -> None:
    present, wanted = PER_KIND[registry]
    assert present == wanted


def test_a_class_says_which_kind_it_is() -> None:
    assert all(cls.kind == kind for kind, cls in CLASSES.items())


def test_names_of_kinds_are_whole_and_their_own() -> None:
    for of in ("key", "files", "title", "plural"):
        names = [getattr(kind, of) for kind in KINDS]
        assert all(names) and len(set(names)) == len(names)
    assert all(kind.about for kind in WITH_PAGES.values())
    assert set(SUMMED) <= set(WITH_PAGES)
