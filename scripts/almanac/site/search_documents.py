"""What the search in the header reads: a document a page, and the other words of the trade."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator, Mapping
from typing import Any

from almanac.analysis.texts import sentences, strings
from almanac.kinds import KIND, WITH_PAGES
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.site.links import page_of

VERSION = 1
FILE = "search/documents.json"
COLUMNS = ("location", "kind", "title", "also", "tags", "summary", "text")
_SHOWN_APART = {"title", "summary", "also_called", "review", "accepts", "moved_to"}
_TAGGED = ("goals", "levels", "positions", "strokes", "kicks", "efforts", "effects")
_FRONT_MATTER = re.compile(r"\A---\n(?P<fields>.*?)\n---\n", re.DOTALL)
_TITLE = re.compile(r'(?m)^title: (?P<title>".*"|.*)$')
_ABOUT = re.compile(r'(?m)^description: (?P<about>".*"|.*)$')
_MARKUP = re.compile(
    r"<(script|style|svg)\b.*?</\1>|<[^>]*>|^\s{0,3}#+ |[*`|]", re.DOTALL | re.MULTILINE
)


def search_file(catalogue: Catalogue, pages: Mapping[str, str]) -> tuple[str, str]:
    """The file's path below the site's root, and its text.

    ``pages`` holds the Markdown of the pages that are no entry's, by their file.
    """
    rows = [*map(list, _entries(catalogue)), *(_page(file, text) for file, text in pages.items())]
    data = {"version": VERSION, "synonyms": synonyms(catalogue), "columns": COLUMNS, "rows": rows}
    return FILE, json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def synonyms(catalogue: Catalogue) -> list[list[str]]:
    """Lists of names for one thing: ``also`` of every vocabulary, and what gear is also called."""
    words = [word for list in catalogue.vocabularies.values() for word in list.words.values()]
    others = [(word.title, word.also) for word in words]
    others += [(gear.title, gear.also_called) for gear in catalogue.gear.values()]
    return [[title, *also] for title, also in others if also]


def _entries(catalogue: Catalogue) -> Iterator[tuple[str, ...]]:
    for key, entry in catalogue.entries.items():
        if entry.kind in WITH_PAGES:
            data = catalogue.documents[key].data
            own = {name: value for name, value in data.items() if name not in _SHOWN_APART}
            also = "; ".join(entry.also_called)
            tags = "; ".join(_tags(catalogue, entry, own))
            text = _once(" ".join([*sentences(own), *_named(catalogue, entry, "drill")]))
            kind = KIND[entry.kind].title
            yield page_of(entry), kind, entry.title, also, tags, entry.summary, text


def _tags(catalogue: Catalogue, entry: Entry, data: Mapping[str, Any]) -> list[str]:
    """The kind, titles of the words that an entry carries, and of the gear and faults it names."""
    carried = {text for text in strings(data) if " " not in text}
    words = [
        word.title
        for name in _TAGGED
        for id, word in catalogue.words(name).items()
        if id in carried and id not in {"any", "none"}
    ]
    named = _named(catalogue, entry, "gear", "fault")
    return list(dict.fromkeys([KIND[entry.kind].title, *words, *named]))


def _named(catalogue: Catalogue, entry: Entry, *kinds: str) -> list[str]:
    """Titles of the entries of some kinds that an entry names."""
    named = dict.fromkeys((reference.kind, reference.id) for reference in entry.references())
    return [catalogue.entries[key].title for key in named if key[0] in kinds]


def _once(text: str) -> str:
    """The words of a text, each once: enough for finding it, at a third of the weight."""
    return " ".join(dict.fromkeys(re.findall(r"\w+(?:[-'’]\w+)*", text.lower())))


def _page(file: str, markdown: str) -> list[str]:
    """A page that is no entry's: its title, and all that it says."""
    found = _FRONT_MATTER.match(markdown)
    title = _TITLE.search(found["fields"]) if found else None
    name = title["title"].strip('"') if title else file.removesuffix(".md")
    about = _ABOUT.search(found["fields"]) if found else None
    summary = html.unescape(about["about"].strip('"')) if about else ""
    body = _MARKUP.sub(" ", markdown[found.end() :] if found else markdown)
    text = _once(html.unescape(body))
    return [f"{file.removesuffix('.md')}.html", "Page", html.unescape(name), "", "", summary, text]
