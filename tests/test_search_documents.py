"""What the header's search reads: every page once, in words, with the other names of things."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from shared import CATALOGUE

from almanac.kinds import WITH_PAGES
from almanac.model.catalogue import Catalogue
from almanac.model.load import load
from almanac.model.swim_set import reps_of
from almanac.site.links import page_of
from almanac.site.search_documents import (
    SearchedPage,
    document_of,
    synonyms,
    texts_file,
)
from almanac.site.search_pages import page_documents
from almanac.site.templates import front_matter

PAGE = """---
title: "Safety &amp; law"
description: "What comes first."
asked: ["who is &amp; is not in charge", "rules"]
---

# Safety & law

<p class="lead">Local **law** &amp; the <a href="x.html">operator</a>'s rules.</p>
<script>var hidden = 1;</script>
"""


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    found = load(CATALOGUE).catalogue
    assert found is not None
    return found


def documents(catalogue: Catalogue, pages: dict[str, str]) -> list[SearchedPage]:
    with_pages = (own for own in catalogue.entries.values() if own.kind in WITH_PAGES)
    return [
        *(document_of(catalogue, entry) for entry in with_pages),
        *page_documents(catalogue, pages),
    ]


def rows(catalogue: Catalogue, **pages: str) -> dict[str, SearchedPage]:
    found = documents(catalogue, {f"{name}.md": text for name, text in pages.items()})
    return {document.location: document for document in found}


def test_every_entry_with_a_page_is_there_once(catalogue: Catalogue) -> None:
    pages = [page_of(entry) for entry in catalogue.entries.values() if entry.kind in WITH_PAGES]
    assert sorted(rows(catalogue)) == sorted(pages)


def test_a_drill_is_found_by_its_words_its_gear_and_its_faults(catalogue: Catalogue) -> None:
    found = rows(catalogue)["drills/back-kick-with-parachute.html"]
    drill = catalogue.drills["back-kick-with-parachute"]
    tags = found.tags.split("; ")
    assert {"Drill", "On the back", "Backstroke", catalogue.gear["parachute"].title} <= set(tags)
    assert {catalogue.faults[id].title for id in drill.mends} <= set(tags)
    assert found.also == "; ".join(drill.also_called)
    words = found.text.split()
    assert len(words) == len(set(words))


def test_a_page_that_is_no_entry_is_its_words_without_markup(catalogue: Catalogue) -> None:
    page = rows(catalogue, safety=PAGE)["safety.html"]
    assert (page.title, page.summary) == ("Safety & law", "What comes first.")
    assert page.text.split() == ["safety", "law", "local", "the", "operator", "s", "rules"]


def test_what_people_type_is_found_by_and_shown_nowhere(catalogue: Catalogue) -> None:
    drill = replace(next(iter(catalogue.drills.values())), asked_as=("legs like a duck", "quack"))
    found = document_of(catalogue, drill)
    assert found.asked == "legs like a duck; quack"
    page = rows(catalogue, safety=PAGE)["safety.html"]
    assert page.asked == "who is & is not in charge; rules"


def test_a_set_is_asked_for_by_its_reps_and_with_their_rounds(catalogue: Catalogue) -> None:
    lines = {
        f"{item.reps}x{item.distance}"
        for item in reps_of(catalogue.sets["cord-holds"].items)
        if item.distance
    }
    asked = set(document_of(catalogue, catalogue.sets["cord-holds"]).asked.split("; "))
    assert lines < asked


def test_hazards_and_house_rules_are_found_by_themselves(catalogue: Catalogue) -> None:
    found = rows(catalogue, safety=PAGE)
    blackout, rule = found["safety.html#blackout"], found["safety.html#rule-lightning"]
    word = catalogue.vocabularies["hazards"].words["blackout"]
    assert (blackout.kind, blackout.title, blackout.fact) == ("danger", word.title, "Life")
    assert blackout.asked.split("; ") == list(word.also)
    assert (rule.kind, rule.fact) == ("danger", "House rule") and "thunder" in rule.asked
    assert not any(names[0] == word.title for names in synonyms(catalogue))
    assert not any("#" in place for place in rows(catalogue, privacy=PAGE))


def test_a_page_names_places_on_it_that_are_found_by_themselves(catalogue: Catalogue) -> None:
    place = {"at": "in-water", "title": "Cold & wet", "kind": "danger", "asked": ["brr & ice"]}
    head = str(front_matter(title="A & B", places=[place, {"at": "dry", "title": "Dry"}]))
    found = rows(catalogue, wet=f"{head}\n\nText.\n")
    assert [found["wet.html"].title, found["wet.html#in-water"].title] == ["A & B", "Cold & wet"]
    assert found["wet.html#in-water"].asked == "brr & ice"
    assert [found[f"wet.html#{at}"].kind for at in ("in-water", "dry")] == ["danger", "page"]
    assert found["wet.html#dry"].fact == "A & B"


def test_a_page_without_fields_is_found_by_its_file(catalogue: Catalogue) -> None:
    for head in ("", "---\n---\n", "---\n\n---\n"):
        page = rows(catalogue, bare=f"{head}Words.\n")["bare.html"]
        assert (page.title, page.text.strip()) == ("bare", "words")


def test_a_page_for_editors_is_found_by_what_it_is_called_alone(catalogue: Catalogue) -> None:
    text = PAGE.replace("asked:", "readers: editors\nasked:")
    page = rows(catalogue, law=text)["law.html"]
    assert (page.kind, page.text, page.summary) == ("editors", "", "")
    assert page.asked == "who is & is not in charge; rules"


def test_names_for_one_thing_come_from_vocabularies_and_gear(catalogue: Catalogue) -> None:
    levels = catalogue.vocabularies["levels"]
    word = replace(levels.words["foundation"], also=("beginner",))
    changed = replace(levels, words={**levels.words, "foundation": word})
    entries = {**catalogue.entries, ("vocabulary", "levels"): changed}
    found = synonyms(Catalogue(entries, catalogue.documents, {}))
    assert [word.title, "beginner"] in found
    gear = next(gear for gear in catalogue.gear.values() if gear.also_called)
    assert [gear.title, *gear.also_called] in found


def test_texts_stand_in_a_script_that_a_page_from_a_folder_may_load(catalogue: Catalogue) -> None:
    found = list(documents(catalogue, {"safety.md": PAGE}))
    file, script = texts_file(found)
    assert file == "search/texts.js"
    texts = json.loads(script.removeprefix("self.almanacTexts=").removesuffix(";\n"))
    assert texts == [[document.asked, document.text] for document in found]
