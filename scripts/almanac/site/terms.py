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
_WORD = re.compile(r"[\w-]+")
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
    def _by_first_word(self) -> Mapping[str, list[tuple[int, str, str]]]:
        """The forms that have each small word first, the longest first: how many letters stand
        before it, the form, and its key.
        """
        found: dict[str, list[tuple[int, str, str]]] = {}
        for form in sorted(self._by_form, key=len, reverse=True):
            if first := _WORD.search(form):
                own = first.start(), form, self._by_form[form]
                found.setdefault(first[0].lower(), []).append(own)
        return found

    @cached_property
    def _found(self) -> dict[str, list[tuple[int, int, str]]]:
        """The terms of texts that have been looked at: half of them stand on several pages."""
        return {}

    def _terms_in(self, words: str) -> list[tuple[int, int, str]]:
        """Where terms begin and end in a text, and their keys."""
        if words not in self._found:
            self._found[words] = list(self._looked_up(words))
        return self._found[words]

    def _looked_up(self, words: str) -> Iterator[tuple[int, int, str]]:
        """The same, looked up by words, since a pattern of all forms tries each of them at each
        letter.
        """
        end = 0
        for word in _WORD.finditer(words):
            for before, form, key in self._by_first_word.get(word[0].lower(), ()):
                start = word.start() - before
                if start >= end and _is_at(form, words, start):
                    end = start + len(form)
                    yield start, end, key
                    break

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
        def marked(words: str) -> str:
            parts, at = [], 0
            for start, end, key in self._terms_in(words):
                if key not in seen and len(seen) < most:
                    seen[key] = None
                    link = f'<a class="term" href="{base}words.html#t-{key}">{words[start:end]}</a>'
                    parts += [words[at:start], link]
                    at = end
            return "".join([*parts, words[at:]]) if parts else words

        def prose(found: re.Match[str]) -> str:
            opening, inner, closing = found.groups()
            if len(seen) >= most or "<a" in inner or "<svg" in inner:
                return found[0]
            name, end, plain = inner.rpartition("</strong>")  # what is told is named first
            parts = _TAGS.split(plain)
            parts[::2] = map(marked, parts[::2])
            return f"{opening}{name}{end}{''.join(parts)}{closing}"

        return prose

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


def _is_at(form: str, text: str, start: int) -> bool:
    """Whether a form stands at a place of a text and neither begins nor ends within a word; what is
    not all capitals may stand there in any.
    """
    end = start + len(form)
    own = text[start:end]
    if start < 0 or (own != form and (form.isupper() or own.lower() != form)):
        return False
    return not (_WORD.match(text, end) or (start and _WORD.match(text[start - 1])))


def _also(word: Word, other: Word | None) -> str:
    """Its other names, its own and those that the search knows of it."""
    small = word.title.lower()
    names = dict.fromkeys((*word.also, *(other.also if other else ())))
    return ", ".join(name for name in names if name.lower() != small)
