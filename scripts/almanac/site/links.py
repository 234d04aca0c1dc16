"""Where pages stand, and links between them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from almanac.frozen import quick
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry


@quick
@dataclass(frozen=True, slots=True)
class Link:
    """A link to a page: its address from the site's root, its words, and one line about it."""

    href: str
    title: str
    summary: str = ""


def page_of(entry: Entry) -> str:
    """The address of an entry's page from the site's root."""
    return f"{KIND[entry.kind].pages}/{entry.id}.html"


def place_of_rule(name: str) -> str:
    """The anchor of a house rule on the safety page."""
    return f"rule-{name.replace('_', '-')}"


def link(entry: Entry) -> Link:
    """A link to an entry's page."""
    return Link(page_of(entry), entry.title, entry.summary)


def links(entries: Iterable[Entry]) -> list[Link]:
    """Links to entries, by title."""
    return [link(entry) for entry in sorted(entries, key=lambda entry: entry.title.casefold())]


def is_listed(catalogue: Catalogue, goal: str) -> bool:
    """Whether the list of goals has a place for a goal: some drill or set serves it."""
    return any(goal in drill.goals for drill in catalogue.drills.values()) or any(
        goal in swim_set.goals for swim_set in catalogue.sets.values()
    )


@dataclass(frozen=True)
class Page:
    """A page to be written: its Markdown file below the pages' root, its template, and what that
    shows.
    """

    file: str
    template: str
    context: Mapping[str, object]

    @property
    def base(self) -> str:
        """The way from the page back to the site's root."""
        return "../" * self.file.count("/")
