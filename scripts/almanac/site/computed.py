"""The page "How it is computed": each formula, its source and its limits, from the docstrings of
the code itself.
"""

from __future__ import annotations

import inspect
import re
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import registered
from almanac.analysis.figures.figure import Documented
from almanac.model.policy import RestRule
from almanac.site.entry_page import source_link
from almanac.site.formulas import ASKED, FORMER, FORMULAS
from almanac.site.links import Page
from almanac.site.search_pages import FORMULA
from almanac.units import show_number


@dataclass(frozen=True)
class Formula:
    """A formula as the page tells it; ``code`` names where it stands."""

    title: str
    code: str
    paragraphs: tuple[str, ...]

    @property
    def place(self) -> str:
        """Its anchor on the page."""
        return place_of(self.code)

    @property
    def former(self) -> tuple[str, ...]:
        """The anchors that it had before."""
        return tuple(place for place, member in FORMER.items() if code_of(member) == self.code)


def place_of(code: str) -> str:
    """The anchor on the page of a formula, by where it stands in the code."""
    return re.sub(r"[^a-z0-9]+", "-", f"of-{code}".lower()).strip("-")


def computed_page(analysis: Analysis) -> Page:
    """The page, with the policy's limits at its end."""
    formulas = {
        title: [
            Formula(name, code_of(member), paragraphs(member.__doc__)) for name, member in members
        ]
        for title, members in chapters().items()
    }
    sections = [{"title": title, "formulas": own} for title, own in formulas.items()]
    places = [
        {"at": formula.place, "title": formula.title, "kind": FORMULA}
        | ({"asked": ASKED[formula.title]} if formula.title in ASKED else {})
        for own in formulas.values()
        for formula in own
    ]
    return Page(
        "computed.md",
        "computed",
        {
            "places": places,
            "sections": sections,
            "limits": _limits(analysis),
            "rests": _rests(analysis),
        },
    )


def chapters() -> dict[str, list[tuple[str, Documented]]]:
    """Every formula that is told, by the title of its chapter: its own title, and the function."""
    found = {title: list(members) for title, members in FORMULAS}
    told = {code_of(member) for members in found.values() for _, member in members}
    for section, figure in registered():
        for member in figure.documented:
            if code_of(member) not in told:
                told.add(code_of(member))
                chapter = found[section.chapter]
                chapter.append((_title(figure.name, section.key, chapter), member))
    return found


def _title(name: str, of: str, chapter: list[tuple[str, Documented]]) -> str:
    """A figure's name, and what it is of where the chapter tells of another of that name."""
    title = name.capitalize()
    article = "an" if of[0] in "aeiou" else "a"
    return f"{title} of {article} {of}" if title in {told for told, _ in chapter} else title


def paragraphs(docstring: str | None) -> tuple[str, ...]:
    """A docstring's paragraphs, without the marks of code and without what is raised."""
    told = (
        " ".join(part.split()).replace("``", "")
        for part in inspect.cleandoc(docstring or "").split("\n\n")
    )
    without = (re.sub(r"\s*Raises [^.]*?(\.(?=\s|$)|$)", "", part) for part in told)
    return tuple(part for part in without if part)


def code_of(member: Documented) -> str:
    """Where a formula stands in the code."""
    function: Any = member
    if isinstance(member, property):
        function = member.fget
    elif isinstance(member, cached_property):
        function = member.func
    return f"{function.__module__.removeprefix('almanac.')}.{function.__qualname__}"


def _limits(analysis: Analysis) -> list[dict[str, object]]:
    return [
        {
            "name": name.replace("_", " "),
            "value": f"{show_number(limit.value, 3)} {limit.unit}",
            "reason": limit.reason,
            "source": limit.source,
            "sources": list(map(source_link, analysis.catalogue.sources_of(limit.sources))),
        }
        for name, limit in analysis.catalogue.policy.limits.items()
    ]


def _rests(analysis: Analysis) -> list[dict[str, str]]:
    return [
        {
            "effort": analysis.catalogue.efforts[word].title,
            "least": _rule(rest.least),
            "wanted": _rule(rest.wanted),
            "reason": rest.reason,
            "source": rest.source,
        }
        for word, rest in analysis.catalogue.policy.rest.items()
    ]


def _rule(rule: RestRule) -> str:
    if rule.seconds_per_50 is not None:
        return f"{show_number(rule.seconds_per_50)} s for each 50 m"
    return f"{show_number(rule.share_of_work or 0.0, 2)} × the work"
