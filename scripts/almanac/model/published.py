"""Sources: what was published, who was measured, and what it does not show."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Ids

_INITIALS = re.compile(r" [A-Z]{1,4}$")
BEARING = frozenset({"study", "review", "conference", "guidance", "rule"})
_MEASURED = frozenset({"study", "review", "conference"})
UNDER_WATER = "under-water"
"""A place of ``place``, as the schema lists them."""


@dataclass(frozen=True, kw_only=True)
class Source(Entry):
    """A publication, a rule or guidance. ``stroke``, ``kick``, ``position`` and ``place`` are ""
    where it is not known which, or where there were several; ``n`` is None where nobody says.
    """

    kind: ClassVar[str] = "source"
    sort: str
    by: Ids
    published_in: str
    who: str
    conditions: str
    finding: str
    not_shown: str
    read: str
    read_on: date
    year: int | None = None
    n: int | None = None
    stroke: str = ""
    kick: str = ""
    position: str = ""
    place: str = ""
    via: str = ""
    edition: str = ""
    doi: str = ""
    url: str = ""

    @property
    def cited(self) -> str:
        """How it is named in a line: Atkison and others 2014."""
        first, *others = (_INITIALS.sub("", name) for name in self.by)
        more = f" and {others[0]}" if len(others) == 1 else " and others" if others else ""
        return f"{first}{more}{f' {self.year}' if self.year else ''}"

    @property
    def bears_a_claim(self) -> bool:
        """Whether a claim may stand as published on it: ratings of experts, news and handbooks do
        not bear one.
        """
        return self.sort in BEARING

    @property
    def is_measured(self) -> bool:
        """Whether somebody or something was measured for it."""
        return self.sort in _MEASURED
