"""What pages that are no entry's are found by, and places on them: a part of a page that is looked
for by itself, every hazard and house rule of the safety page among them.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator, Mapping

from almanac.model.catalogue import Catalogue
from almanac.model.vocabularies import GRAVITIES, HAZARDS
from almanac.site.front_matter import front_matter_of
from almanac.site.links import place_of_rule
from almanac.site.search_documents import SearchedPage, once

PAGE = "page"  # the kind of a page that is no entry's
EDITORS = "editors"  # of one that only those who write entries look for
FORMULA = "formula"  # of one on the page that tells how figures are computed
CALCULATOR = "calculator"  # one of the page of calculators
DANGER = "danger"  # of a hazard, a house rule and what is done in an emergency
KINDS = (
    (DANGER, "Danger", "Dangers"),
    (PAGE, "Page", "Pages"),
    (FORMULA, "Formula", "Formulas"),
    (CALCULATOR, "Calculator", "Calculators"),
    (EDITORS, "For editors", "For editors"),
)
_SAFETY = "safety.html"
_ANCHORED = re.compile(r"^## .*\{#([\w-]+)\}\s*$", re.MULTILINE)
_MARKUP = re.compile(
    r"<(script|style|svg)\b.*?</\1>|<[^>]*>|^\s{0,3}#+ |[*`|]", re.DOTALL | re.MULTILINE
)


def page_documents(catalogue: Catalogue, pages: Mapping[str, str]) -> Iterator[SearchedPage]:
    """The pages that are no entry's: ``pages`` holds their Markdown by their file. A page is
    followed by the places on it that its front matter names; the safety page by its hazards
    and rules.
    """
    for file, text in pages.items():
        page = f"{file.removesuffix('.md')}.html"
        yield from _page(page, text)
        if page == _SAFETY:
            yield from _dangers(catalogue)


def _dangers(catalogue: Catalogue) -> Iterator[SearchedPage]:
    """Every hazard by what it means and is looked for by, and every house rule."""
    has_words = {HAZARDS, GRAVITIES} <= catalogue.vocabularies.keys()
    gravities = catalogue.words(GRAVITIES) if has_words else {}
    for id, word in catalogue.words(HAZARDS).items() if has_words else ():
        gravity = gravities[word.gravity].title if word.gravity in gravities else ""
        yield _place(
            f"{_SAFETY}#{id}", DANGER, word.title, word.also, fact=gravity,
            summary=word.means, text=word.control,
        )  # fmt: skip
    for id, rule in catalogue.policy.house_rules.items():
        yield _place(
            f"{_SAFETY}#{place_of_rule(id)}", DANGER, rule.title, rule.asked_as, fact="House rule",
            summary=rule.text, text=rule.reason,
        )  # fmt: skip


def alarms(catalogue: Catalogue) -> list[str]:
    """What is typed where a hazard happens: help is then found before all else."""
    has_words = HAZARDS in catalogue.vocabularies
    words = catalogue.words(HAZARDS).values() if has_words else ()
    return list(dict.fromkeys(phrase for word in words for phrase in word.alarm))


def _place(
    location: str, kind: str, title: str, asked: tuple[str, ...] = (), *, fact: str, **texts: str
) -> SearchedPage:
    """A place on a page: what it says beside its title, ``summary`` and ``text``."""
    return SearchedPage(
        key=None,
        location=location,
        kind=kind,
        title=title,
        also="",
        tags="",
        summary=texts.get("summary", ""),
        fact=fact,
        asked="; ".join(asked),
        text=once(texts.get("text", "")),
    )


def _page(location: str, markdown: str) -> Iterator[SearchedPage]:
    """A page that is no entry's: its title, and all that it says; of one for editors what it is
    looked for by alone, or its many words would answer what a coach asks. Then the places on it.
    """
    fields, markdown = front_matter_of(markdown)
    kind = EDITORS if fields.get("readers") == EDITORS else PAGE
    name = location.removesuffix(".html")
    title = fields.get("title", name)
    about = fields.get("description", "")
    body = _MARKUP.sub(" ", markdown)
    yield SearchedPage(
        key=None,
        location=location,
        kind=kind,
        title=title,
        also=name,
        tags="",
        summary="" if kind == EDITORS else about,
        fact=about,
        asked="; ".join(fields.get("asked", ())),
        text="" if kind == EDITORS else once(html.unescape(body)),
    )
    sections = dict(_sections(markdown))
    for place in fields.get("places", ()):
        own_kind, asked = place.get("kind", PAGE), tuple(place.get("asked", ()))
        yield _place(
            f"{location}#{place['at']}", own_kind, place["title"], asked, fact=title,
            text=html.unescape(_MARKUP.sub(" ", sections.get(place["at"], ""))),
        )  # fmt: skip


def _sections(markdown: str) -> Iterator[tuple[str, str]]:
    """What stands under each heading that names its own anchor, by the anchor."""
    parts = _ANCHORED.split(markdown)
    yield from zip(parts[1::2], parts[2::2], strict=True)
