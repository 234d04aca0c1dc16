"""Terms of the trade on pages: the first use of one in folded prose leads to what it means, those
of a page stand at its foot, and the page Words has them all.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from almanac.analysis.explained import OTHER_WORDS, terms
from almanac.model.catalogue import Catalogue
from almanac.model.policy import Word
from almanac.site.drawing_html import figure_file
from almanac.site.links import Page, link
from almanac.site.templates import safe

MEANINGS = "words/meanings.js"
_A_SECTION = 3
"""How many are marked in one fold at most."""
_FOLDS = re.compile(r"(<details\b[^>]*>|</details>)")
_PROSE = re.compile(r"(<p>|<dd>)(.*?)(</p>|</dd>)", re.DOTALL)
_TAGS = re.compile(r"(<[^>]+>)")
OTHERS = "others"
_CHOSEN = ("efforts", "kicks", "positions", "arms", "modes")
"""Vocabularies whose words the page Words tells beside the terms."""


@dataclass(frozen=True)
class TermMarks:
    """The terms of a catalogue, as pages mark them."""

    catalogue: Catalogue

    @cached_property
    def _by_form(self) -> Mapping[str, str]:
        """The key of each form, small but where it is all capitals."""
        return {
            form if form.isupper() else form.lower(): key
            for key, word in terms(self.catalogue).items()
            for form in word.forms or (word.title,)
        }

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        forms = sorted(self._by_form, key=len, reverse=True)
        cases = (re.escape(form) if form.isupper() else f"(?i:{re.escape(form)})" for form in forms)
        return re.compile(rf"(?<![\w-])(?:{'|'.join(cases)})(?![\w-])")

    def _may_mark(self, words: str, seen: Mapping[str, None]) -> bool:
        """Whether a text may hold a term that is not marked yet: to try each form at each letter of
        it takes longer than all else of its page.
        """
        small = words.lower()
        return any(form.lower() in small and key not in seen for form, key in self._by_form.items())

    def marked(self, text: str, base: str) -> str:
        """A page with the first use of each term in its folded prose marked, three a fold at most,
        and all of these at its foot. Cues, boards, chips and headings are left as they are: only
        plain paragraphs inside folds are prose.
        """
        if not self._by_form:
            return text
        seen: dict[str, None] = {}
        pieces, depth, most = [], 0, 0
        for piece in _FOLDS.split(text):
            if piece.startswith("<details"):
                most = most if depth else len(seen) + _A_SECTION
                depth += 1
            depth -= piece == "</details>"
            pieces.append(_PROSE.sub(self._marker(seen, base, most), piece) if depth else piece)
        return "".join(pieces) + self._foot(seen, base) if seen else text

    def _marker(
        self, seen: dict[str, None], base: str, most: int
    ) -> Callable[[re.Match[str]], str]:
        def mark(found: re.Match[str]) -> str:
            key = self._key(found[0])
            if key in seen or len(seen) >= most:
                return found[0]
            seen[key] = None
            return f'<a class="term" href="{base}words.html#t-{key}">{found[0]}</a>'

        def prose(found: re.Match[str]) -> str:
            opening, inner, closing = found.groups()
            if len(seen) >= most or "<a" in inner or "<svg" in inner:
                return found[0]
            name, end, plain = inner.rpartition("</strong>")  # what is told is named first
            if not self._may_mark(plain, seen):
                return found[0]
            parts = _TAGS.split(plain)
            parts[::2] = (self._pattern.sub(mark, words) for words in parts[::2])
            return f"{opening}{name}{end}{''.join(parts)}{closing}"

        return prose

    def _key(self, words: str) -> str:
        return self._by_form.get(words) or self._by_form[words.lower()]

    def _foot(self, seen: Mapping[str, None], base: str) -> str:
        own = terms(self.catalogue)
        ordered = sorted(seen, key=lambda key: own[key].title.casefold())
        chips = " ".join(
            f'<a href="{base}words.html#t-{key}">{safe(own[key].title)}</a>' for key in ordered
        )
        return (
            '\n<details class="fold page-words not-on-paper" data-search-exclude><summary>'
            f'<h2>Words on this page</h2> <span class="fold-count">{len(seen)}</span></summary>\n'
            f'<div class="fold-body"><p class="link-chips">{chips}</p></div></details>\n'
        )

    def meanings(self) -> tuple[str, str]:
        """What a page tells at a tap, as a script: a page opened from a folder may fetch nothing
        else.
        """
        told = {key: [word.title, word.means] for key, word in terms(self.catalogue).items()}
        text = json.dumps(told, ensure_ascii=False, separators=(",", ":"))
        return MEANINGS, f"self.almanacMeanings={text};\n"

    def page(self) -> Page:
        """The page Words, by letter."""
        letters: dict[str, list[dict[str, Any]]] = {}
        for row in sorted(self._rows(), key=lambda row: str(row["title"]).casefold()):
            first = str(row["title"])[0].upper()
            letters.setdefault(first if first.isalnum() else OTHERS, []).append(row)
        chosen = [
            (vocabulary.title, [word for word in vocabulary.words.values() if not word.quiet])
            for vocabulary in map(self.catalogue.vocabularies.get, _CHOSEN)
            if vocabulary
        ]
        return Page("words.md", "words", {"letters": letters, "chosen": chosen})

    def _rows(self) -> Iterator[dict[str, Any]]:
        others = self.catalogue.vocabularies.get(OTHER_WORDS)
        by_title = {word.title: word for word in others.words.values()} if others else {}
        for key, word in terms(self.catalogue).items():
            shown = self.catalogue.drills.get(word.shown_by)
            yield {
                "key": key,
                "title": word.title,
                "means": word.means,
                "also": _also(word, by_title.get(word.title)),
                "shown": link(shown) if shown else None,
                "figure": figure_file(self.catalogue, shown.id) if shown else "",
            }


def _also(word: Word, other: Word | None) -> str:
    """Its other names, its own and those that the search knows of it."""
    small = word.title.lower()
    names = dict.fromkeys((*word.also, *(other.also if other else ())))
    return ", ".join(name for name in names if name.lower() != small)
