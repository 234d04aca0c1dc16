"""Rules on the words of an entry: a term of the trade is explained somewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.explained import explained, terms
from almanac.analysis.texts import strings
from almanac.checks.rule import Problem, warns
from almanac.kinds import KINDS
from almanac.model.catalogue import Key
from almanac.source.reader import DataPath
from almanac.source.texts import texts_of
from almanac.wording.trade import trade_terms

_SAYING = frozenset(kind.key for kind in KINDS if kind.says_texts)
_NOT_PROSE = ("also_called", "asked_as", "evidence", "review", "accepts")


@warns("unexplained-term")
def unexplained_term(analysis: Analysis) -> Iterator[Problem]:
    """Where a club keeps a list of terms, each term of the trade that an entry uses, and each word
    in capitals that is short for something, stands in a list that explains it: the terms, another
    vocabulary, or the name of a piece of gear. Somebody new to the deck has no other way to learn
    it. Which words are of the trade the program knows from a list of its own.
    """
    catalogue = analysis.catalogue
    if not terms(catalogue):
        return
    known = explained(catalogue)
    for key, entry in catalogue.entries.items():
        if entry.kind not in _SAYING:
            continue
        data = {name: value for name, value in catalogue.documents[key].data.items()
                if name not in _NOT_PROSE}  # fmt: skip
        used = trade_terms(" ".join(strings(data)))
        for term in sorted(term for term in used if known.plain(term) not in known.words):
            message = f"no list explains '{term}'"
            hint = "explain it in drills/vocabulary/terms.yml, or say it in plain words"
            yield Problem(entry, _place(key, data, term), message, hint)


def _place(key: Key, data: Mapping[str, Any], term: str) -> DataPath:
    """The first text that holds a term."""
    found = (text.path for text in texts_of(*key, data) if term in trade_terms(text.text))
    return next(found, ())
