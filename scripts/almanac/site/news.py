"""What is new: from the repository's history to a page, ``changes.json`` and a feed."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Any
from xml.etree import ElementTree

from almanac.kinds import WITH_PAGES, kind_of_path
from almanac.model.catalogue import Catalogue
from almanac.site.links import Link, Page, page_of
from almanac.site.settings import SiteSettings

VERSION = 1
MOST_COMMITS = 300
_WORDS = {"A": "added", "M": "changed", "D": "removed", "R": "moved", "T": "changed"}
_ATOM = "http://www.w3.org/2005/Atom"


@dataclass(frozen=True)
class NewsItem:
    """What happened to one entry in one commit; ``on`` is a day, YYYY-MM-DD."""

    on: str
    commit: str
    what: str
    kind: str
    id: str


def news_items(log: str) -> list[NewsItem]:
    """Changes of entries from the text that ``source.revision.history`` gives, newest first."""
    found: list[NewsItem] = []
    commit = on = ""
    for line in log.splitlines():
        fields = line.split("\t")
        if fields[0] == "commit" and len(fields) == 3:
            commit, on = fields[1], fields[2]
        elif len(fields) > 1 and fields[0][:1] in _WORDS:
            kind, id = _entry(fields[-1])
            if kind:
                found.append(NewsItem(on, commit, _WORDS[fields[0][:1]], kind, id))
    return found


def _entry(file: str) -> tuple[str, str]:
    path, kind = PurePosixPath(file), kind_of_path(file)
    return (kind.key, path.stem) if kind and path.suffix == ".yml" else ("", "")


def news_page(catalogue: Catalogue, found: list[NewsItem]) -> Page:
    """The page: by day, what was added, changed, moved and removed, with links to what is still
    here.
    """
    days: dict[str, list[tuple[str, str, Link | None, str]]] = {}
    for change in _last_of_each_day(found):
        entry = catalogue.entries.get((change.kind, change.id))
        page = (
            Link(page_of(entry), entry.title)
            if entry is not None and change.kind in WITH_PAGES
            else None
        )
        days.setdefault(change.on, []).append((change.what, change.kind, page, change.id))
    return Page("new.md", "new", {"days": list(days.items())[:60]})


def _last_of_each_day(found: list[NewsItem]) -> Iterator[NewsItem]:
    """Each entry once a day: what a day's several commits did to it together is told by the last,
    or as added.
    """
    told: dict[tuple[str, str, str], NewsItem] = {}
    for change in found:
        key = (change.on, change.kind, change.id)
        if key not in told or change.what == "added":
            told[key] = change
    return iter(told.values())


def news_files(
    catalogue: Catalogue, found: list[NewsItem], settings: SiteSettings
) -> Iterator[tuple[str, str]]:
    """The data file and the feed, as their paths below the site's root and their texts."""
    yield "data/v1/changes.json", news_json(found)
    yield "data/v1/feed.xml", news_feed(catalogue, found, settings)


def news_json(found: list[NewsItem]) -> str:
    """``data/v1/changes.json``: every change, newest first."""
    entries: list[dict[str, Any]] = [
        {
            "on": change.on,
            "commit": change.commit,
            "what": change.what,
            "kind": change.kind,
            "id": change.id,
        }
        for change in found
    ]
    return (
        json.dumps(
            {"version": VERSION, "changes": entries}, ensure_ascii=False, separators=(",", ":")
        )
        + "\n"
    )


def news_feed(catalogue: Catalogue, found: list[NewsItem], settings: SiteSettings) -> str:
    """An Atom feed (RFC 4287) of the last hundred changes. Links are relative where the
    site's address is not known.
    """
    address = settings.address
    feed = ElementTree.Element("feed", xmlns=_ATOM)
    _add(feed, "title", f"{settings.name}: what is new")
    _add(feed, "id", address or "urn:deck-almanac")
    _add(feed, "updated", f"{found[0].on if found else '1970-01-01'}T00:00:00Z")
    _add(_add(feed, "author"), "name", catalogue.club.title)
    for change in list(_last_of_each_day(found))[:100]:
        known = catalogue.entries.get((change.kind, change.id))
        entry = _add(feed, "entry")
        _add(entry, "title", f"{change.what}: {known.title if known else change.id}")
        _add(entry, "id", f"urn:deck-almanac:{change.commit}:{change.kind}:{change.id}")
        _add(entry, "updated", f"{change.on}T00:00:00Z")
        if known is not None and change.kind in WITH_PAGES:
            _add(
                entry,
                "link",
                href=f"{address.rstrip('/')}/{page_of(known)}"
                if address
                else f"../../{page_of(known)}",
            )
    return '<?xml version="1.0" encoding="utf-8"?>\n' + ElementTree.tostring(feed, "unicode") + "\n"


def _add(
    parent: ElementTree.Element, tag: str, text: str = "", **attributes: str
) -> ElementTree.Element:
    child = ElementTree.SubElement(parent, tag, attributes)
    child.text = text or None
    return child
