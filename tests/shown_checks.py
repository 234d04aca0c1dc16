"""What no text that is shown may hold: a negative rest, a density over 100 %, an id where a title
exists, a monotony of a week that is not known, the noise of binary fractions. Over pages, cards,
terminal texts, CSV and JSON.
"""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.report.reports import REPORTS
from almanac.site.run_data import run_files
from almanac.site.site_pages import SitePages
from almanac.source.names import Names

# A time below zero. A sum in a working ("1:00 − 0:45") has a space after its sign.
_BELOW_ZERO = re.compile(r"(?<![\w.:–-])[-−]\d+(:\d\d|\.\d+ s|\d* s\b)")
_NOISE = re.compile(
    r"\d\.\d*?(?:9{4,}|0{4,}[1-9])\d*|\d\.\d{7,}"
)  # of binary fractions: 0.30000000000000004
_DOI = re.compile(r"\b10\.\d{4,9}/\S+")  # a publication's number, whose decimals are no measurement
_DENSITY = re.compile(r"[Dd]ensity\D{0,40}?(\d+) %")
_WORD = re.compile(r"(?<![\w/.-])[\w-]++(?!/)")  # no part of a path or an address
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


Texts = list[tuple[str, str]]  # what is shown, by file or command


@dataclass(frozen=True)
class Shown:
    """All that is shown of a catalogue: pages with their cards and terminal texts; data files."""

    texts: Texts
    data: Texts


def shown_of(analysis: Analysis, names: Names) -> Shown:
    """What a catalogue shows, worked out once for whoever looks through it."""
    pages = pages_of(analysis, names)
    entries = analysis.catalogue.entries.values()
    runs = (own for entry in entries for own in run_files(analysis, entry))
    return Shown([*texts_of(pages)], [*pages.data(), *runs])


def pages_of(analysis: Analysis, names: Names) -> SitePages:
    """The pages of a catalogue, each worked out when it is asked for."""
    return SitePages(analysis, names)


def texts_of(pages: SitePages) -> Iterator[tuple[str, str]]:
    """Every text that is shown of a catalogue."""
    yield from ((file, text) for file, text in pages.of_entries() if file.endswith(".md"))
    yield from pages.others.items()
    yield from summed_of(pages.analysis)


def shown_in(root: Path, analysis: Analysis) -> Shown:
    """The same, as a build has written it below a root."""
    pages = root / "build" / "pages"
    files = [(path.relative_to(pages).as_posix(), path) for path in sorted(pages.rglob("*.*"))]
    by_ending = {
        ending: [(file, path.read_text("utf-8")) for file, path in files if file.endswith(ending)]
        for ending in (".md", ".json", ".csv")
    }
    texts, *data = by_ending.values()
    return Shown([*texts, *summed_of(analysis)], [*chain(*data)])


def summed_of(analysis: Analysis) -> Iterator[tuple[str, str]]:
    """What a terminal says of whatever is added up."""
    for kind, ids in computed(analysis):
        for id in ids:
            if summed := REPORTS[kind].summed(analysis, id, None, None):
                yield f"sum {id}", REPORTS[kind].text(analysis.catalogue, summed)


def computed(analysis: Analysis) -> Iterator[tuple[str, list[str]]]:
    yield "set", [*analysis.computable]
    yield "practice", [*analysis.practices]
    yield "block", [*analysis.blocks]


def slips_in_texts(catalogue: Catalogue, texts: Texts) -> list[str]:
    """Each place at which a text shows what it must not."""
    ids, found = ids_with_titles(catalogue), []
    for file, text in texts:
        words = _DOI.sub(" ", seen(text))
        plain = _TYPED.sub(" ", words)
        own = [("below zero", match) for match in _BELOW_ZERO.finditer(words)]
        own += [("noise", match) for match in _NOISE.finditer(words)]
        own += [("id", match) for match in _WORD.finditer(plain) if match[0] in ids]
        found += [
            f"{file}: {what}: {m.string[max(0, m.start() - 50) : m.end() + 20]!r}"
            for what, m in own
        ]
        found += [
            f"{file}: density {match[1]} %"
            for match in _DENSITY.finditer(words)
            if int(match[1]) > 100
        ]
    return found


def slips_in_json(value: Any, path: str = "") -> Iterator[str]:
    """Each number in JSON that is below zero where it is a rest, over 1 where it is a density, or
    holds more than tenths of seconds or the noise of binary fractions; and a monotony or strain of
    a week of which fewer than seven days are known.
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


def slips_in_data(data: Texts) -> list[str]:
    """The slips of every data file of a site."""
    found = []
    for file, text in data:
        if file.endswith(".json") and "/schema/" not in file:
            found += [f"{file}: {slip}" for slip in slips_in_json(json.loads(text))]
        elif file.endswith(".csv"):
            rows = [line for line in text.splitlines() if re.search(r",-\d", line)]
            found += [f"{file}: {row}" for row in rows]
    return found
