"""Rules on words: those that the program asks for, and those of efforts with ratings, shares,
rests.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.effort_faults import misplaced_shares, scale_gaps
from almanac.checks.rule import Problem, forbids
from almanac.model.policy import Rating, Word
from almanac.model.vocabularies import BUILT_ON
from almanac.units import show_number


@forbids("word-missing")
def word_missing(analysis: Analysis) -> Iterator[Problem]:
    """Vocabularies keep the words that the program itself asks for by name: kick, flutter, supine
    and so on.
    """
    for name, words in BUILT_ON.items():
        vocabulary = analysis.catalogue.vocabularies[name]
        for word in words:
            if word not in vocabulary.words:
                message = f"'{word}' is missing, and the program asks for it by name"
                yield Problem(
                    vocabulary,
                    ("words",),
                    message,
                    f"add '{word}' again; its title may change",
                    of_key=True,
                )


@forbids("effort-scale")
def effort_scale(analysis: Analysis) -> Iterator[Problem]:
    """The effort words share out the 0 to 10 field: no gap, no overlap, easiest first, each with
    its share of best.
    """
    vocabulary = analysis.catalogue.vocabularies["efforts"]
    for word in scale_gaps(vocabulary.words):
        message = f"'{word}' {_out_of_scale(vocabulary.words, word)}"
        yield Problem(
            vocabulary,
            ("words", word),
            message,
            "let each rating begin where the one before it ends, from 0 to 10",
        )


@forbids("effort-shares")
def effort_shares(analysis: Analysis) -> Iterator[Problem]:
    """A harder effort is the faster at every distance and every level: its share of the best speed
    is above that of the easier word before it, and its reference distance is no longer.
    """
    vocabulary = analysis.catalogue.vocabularies["efforts"]
    for word in misplaced_shares(vocabulary.words):
        before = list(vocabulary.words)[list(vocabulary.words).index(word) - 1]
        yield Problem(
            vocabulary,
            ("words", word),
            f"'{word}' would not be faster than '{before}' at every distance",
            "raise its share_of_best (or by_level), or shorten its reference_m",
        )


def _out_of_scale(words: Mapping[str, Word], word: str) -> str:
    """What is amiss with a word of the effort scale."""
    rating = words[word].rating
    if rating is None or words[word].share_of_best is None:
        return f"has no {'rating' if rating is None else 'share_of_best'}"
    before = (
        list(words.values())[list(words).index(word) - 1].rating
        if word != next(iter(words))
        else Rating(0, 0)
    )
    ended = before.most if before else rating.least
    if rating.least != ended:
        return (
            f"begins at {show_number(rating.least)}, and what is easier ends at "
            f"{show_number(ended)}"
        )
    if rating.most <= rating.least:
        return f"ends at {show_number(rating.most)}, not above where it begins"
    return f"ends at {show_number(rating.most)}, and is the hardest: the scale goes to 10"


@forbids("rest-for-each-effort")
def rest_for_each_effort(analysis: Analysis) -> Iterator[Problem]:
    """The policy says for every effort word which rest it needs."""
    policy = analysis.catalogue.policy
    for word in analysis.catalogue.efforts:
        if word not in policy.rest:
            yield Problem(
                policy,
                ("rest",),
                f"no rest is given for '{word}'",
                f"add '{word}' with least and wanted",
                of_key=True,
            )
