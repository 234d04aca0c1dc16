"""What no text that is shown may hold: a negative rest, a density over 100 %, an id where a title
exists, a monotony of a week that is not known, the noise of binary fractions. Over pages, cards, terminal texts, CSV and JSON.
"""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.report.reports import REPORTS
from almanac.resources import HOME
from almanac.site.run_data import run_files
from almanac.site.settings import read_settings
from almanac.site.site_pages import SitePages
from almanac.source.names import Names

SETTINGS = HOME / "mkdocs.yml"

# A time below zero. A sum in a working ("1:00 − 0:45") has a space after its sign.
_BELOW_ZERO = re.compile(r"(?<![\w.:–-])[-−]\d+(:\d\d|\.\d+ s|\d* s\b)")
_NOISE = re.compile(
    r"\d\.\d*?(?:9{4,}|0{4,}[1-9])\d*|\d\.\d{7,}"
)  # of binary fractions: 0.30000000000000004
_DOI = re.compile(r"\b10\.\d{4,9}/\S+")  # a publication's number, whose decimals are no measurement
_DENSITY = re.compile(r"[Dd]ensity\D{0,40}?(\d+) %")
_NOT_SEEN = re.compile(r"<(script|style|code|pre)\b.*?</\1>|<!--.*?-->|<[^>]*>", re.DOTALL)
_FRONT = re.compile(r"\A---\n.*?\n---\n", re.DOTALL)
# An id beside its title, a file's path, an anchor: what people type and follow.
_TYPED = re.compile(
    r"\([a-z0-9]+(-[a-z0-9]+)+\)|[\w./-]*/[\w./-]+|`[^`]*`|\[[^\]]*\]\([^)]*\)|\{ ?#[^}]*\}"
)


def seen(text: str) -> str:
    """The words of a page that a reader sees."""
    return html.unescape(_NOT_SEEN.sub(" ", _FRONT.sub("", text)))


def ids_with_titles(catalogue: Catalogue) -> dict[str, str]:
    """Ids that nobody would take for words, with their titles: those with a hyphen or a digit."""
    titled = {group: of.title for group, of in catalogue.lane_groups.items()}
    kinds = (catalogue.drills, catalogue.gear, catalogue.sets, catalogue.benchmarks)
    titled |= {id: entry.title for known in kinds for id, entry in known.items()}
    return {id: title for id, title in titled.items() if re.search(r"[-\d]", id)}


def texts_of(analysis: Analysis, names: Names) -> Iterator[tuple[str, str]]:
    """Every text that is shown of a catalogue: pages with their cards, and terminal texts."""
    pages = SitePages(analysis, names, read_settings(SETTINGS))
    yield from ((file, text) for file, text in pages.of_entries() if file.endswith(".md"))
    yield from pages.others.items()
    for kind, ids in computed(analysis):
        for id in ids:
            summed = REPORTS[kind].summed(analysis, id, None, None)
            if summed:
                yield f"sum {id}", REPORTS[kind].text(analysis.catalogue, summed)


def computed(analysis: Analysis) -> Iterator[tuple[str, list[str]]]:
    yield "set", [*analysis.computable]
    yield "practice", [*analysis.practices]
    yield "block", [*analysis.blocks]


def slips_in_texts(analysis: Analysis, names: Names) -> list[str]:
    """Each place at which a text shows what it must not."""
    ids = re.compile(
        r"(?<![\w/.-])("
        + "|".join(map(re.escape, ids_with_titles(analysis.catalogue)))
        + r")(?![\w/-])"
    )
    found = []
    for file, text in texts_of(analysis, names):
        words = _DOI.sub(" ", seen(text))
        plain = _TYPED.sub(" ", words)
        for what, pattern, within in (
            ("below zero", _BELOW_ZERO, words),
            ("noise", _NOISE, words),
            ("id", ids, plain),
        ):
            found += [
                f"{file}: {what}: {within[max(0, m.start() - 50) : m.end() + 20]!r}"
                for m in pattern.finditer(within)
            ]
        found += [
            f"{file}: density {match[1]} %"
            for match in _DENSITY.finditer(words)
            if int(match[1]) > 100
        ]
    return found


def slips_in_json(value: Any, path: str = "") -> Iterator[str]:
    """Each number in JSON that is below zero where it is a rest, over 1 where it is a density, or
    holds more than tenths of seconds or the noise of binary fractions; and a monotony or strain of a
    week of which fewer than seven days are known.
    """
    if isinstance(value, dict):
        if value.get("known_days", 7) < 7 and (value.get("monotony") or value.get("strain")):
            yield f"{path}: monotony of {value['known_days']} days"
        for key, inner in value.items():
            yield from slips_in_json(inner, f"{path}.{key}")
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            yield from slips_in_json(inner, f"{path}[{number}]")
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        name = path.rpartition(".")[2].partition("[")[0]
        if name in {"rest_s", "waits_s", "rest_inside_s"} and value < 0:
            yield f"{path}: {value} is below zero"
        if name == "density" and not 0 <= value <= 1:
            yield f"{path}: {value} is no density"
        if _NOISE.search(repr(value)):
            yield f"{path}: {value!r} is noise"
        if name.endswith("_s") and value != round(value, 1):
            yield f"{path}: {value} is not in tenths"


def slips_in_data(analysis: Analysis, names: Names) -> list[str]:
    """The slips of every data file of a site."""
    found = []
    runs = (
        own for entry in analysis.catalogue.entries.values() for own in run_files(analysis, entry)
    )
    for file, text in (*SitePages(analysis, names, read_settings(SETTINGS)).data(), *runs):
        if file.endswith(".json") and "/schema/" not in file:
            found += [f"{file}: {slip}" for slip in slips_in_json(json.loads(text))]
        elif file.endswith(".csv"):
            rows = [line for line in text.splitlines() if re.search(r",-\d", line)]
            found += [f"{file}: {row}" for row in rows]
    return found
