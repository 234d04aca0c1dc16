"""How texts are measured: their words, how hard they are to read, and what many of them share."""

from __future__ import annotations

import gzip
import json
import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from importlib.resources import files
from pathlib import Path

import codespell_lib
import spellchecker

KNOWN = Path(__file__).parent / "words" / "known.txt"
_WORD = re.compile(r"[A-Za-z]+(?:['’][a-z]+)?")
_SENTENCE_END = re.compile(r"[.!?](?=\s|$)")
_CLAUSE = re.compile(r"[.;:!?,]")
_EMPTY = frozenset(
    re.findall(
        r"\w+",
        "a all an and are as at be but by do does down each every few for from had has have he "
        "her here"
        " his if in into is it its less more most no not of off on one or out over own same she "
        "so than"
        " that the their them then there they this three to two up was what when which who with you"
        " your",
    )
)
NOT_AMERICAN = {"practice", "practices", "licensed", "story"}  # right in Britain: nouns, to license
ARCHAIC = re.compile(
    r"\b(?:upon|lest|whilst|amongst|amidst?|unto|ere|aloft|hence(?:forth)?|thus|thence|whence|hither"
    r"|thither|n[ao]ught|there(?:of|in|upon|with)|where(?:of|in|upon|by)|albeit|betwixt|forthwith"
    r"|nigh|oft|'tis|shall|thou|thee|nay|aye|yonder|perchance|verily|athwart|save for|would "
    r"that|gidd(?:y|iness)|tells on)\b",
    re.IGNORECASE,
)
# "Who has none stops", for "anyone who has none stops"; a question, asked or told, is another
# thing.
WHO_ALONE = re.compile(
    r"(?:^|[.;] )who (?!reviewed|may start|swims where|goes first)(?=[^.;?]*[.;])", re.IGNORECASE
)


@cache
def dictionary() -> frozenset[str]:
    """The English words that pyspellchecker ships, and ours of ``known.txt``."""
    packed = files(spellchecker) / "resources" / "en.json.gz"
    english = json.loads(gzip.decompress(packed.read_bytes()))
    own = [line.split("#")[0] for line in KNOWN.read_text("utf-8").splitlines()]
    return frozenset([*english, *" ".join(own).split()])


@cache
def american() -> Mapping[str, str]:
    """American spellings, each with the British one, as codespell pairs them."""
    table = files(codespell_lib) / "data" / "dictionary_en-GB_to_en-US.txt"
    pairs = [line.split("->") for line in table.read_text("utf-8").splitlines() if "->" in line]
    return {
        one.strip(): british
        for british, spelt in pairs
        for one in spelt.split(",")
        if one.strip() and one.strip() not in NOT_AMERICAN
    }


def misspelt(text: str) -> Iterator[str]:
    """The words of a text that no list knows, and those that are spelt as in America."""
    for word in _WORD.findall(text):
        plain = re.sub(r"'s?$", "", word.lower().replace("’", "'"))
        if plain in american() or (len(plain) > 2 and plain not in dictionary()):
            yield word


def reading_grade(text: str) -> float:
    """The year of school in which a text is read with ease: 4.71 characters a word + 0.5 words a
    sentence - 21.43 (Smith and Senter 1967, Automated Readability Index).
    """
    words = text.split()
    characters = sum(map(len, words))
    sentences = max(1, len(_SENTENCE_END.findall(text)))
    return 4.71 * characters / len(words) + 0.5 * len(words) / sentences - 21.43


def sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return re.split(r"(?<=[.!?])\s+", text)


def shared_phrases(entries: Mapping[str, Iterable[str]], most: float) -> dict[str, set[str]]:
    """Runs of four words, two of them no mere link, that stand in more than ``most`` entries."""
    found = defaultdict[str, set[str]](set)
    for id, texts in entries.items():
        for text in texts:
            for clause in _CLAUSE.split(text.lower()):
                words = clause.split()
                for run in zip(*(words[start:] for start in range(4)), strict=False):
                    if sum(not word.isdigit() and word not in _EMPTY for word in run) >= 2:
                        found[" ".join(run)].add(id)
    return {phrase: ids for phrase, ids in found.items() if len(ids) > most}
