"""How alike texts are, against every pair counted by sets: runs that both have over runs that
either has (Jaccard 1901).
"""

from __future__ import annotations

import itertools
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.likeness import Likeness, alike, runs_of_words


@pytest.mark.parametrize(
    ("text", "runs"),
    [
        ("", set()),
        ("two words", set()),
        ("three short words", {("three", "short", "words")}),
        ("Toes, up! Then KICK.", {("toes", "up", "then"), ("up", "then", "kick")}),
        ("one two one two one", {("one", "two", "one"), ("two", "one", "two")}),
        ("6 × 50 on the back", {("6", "50", "on"), ("50", "on", "the"), ("on", "the", "back")}),
        ("Straße ist naß", {("strasse", "ist", "nass")}),  # case folded, not lowered
        ("snake_case is two", {("snake", "case", "is"), ("case", "is", "two")}),
    ],
)
def test_runs_of_three_words(text, runs):
    assert runs_of_words(text) == runs


def plain_likeness(texts: dict[str, str], least: float) -> list[Likeness]:
    """Every pair, counted one by one; a run that more than 40 texts hold tells nothing of two."""
    runs = {}
    for id, text in texts.items():
        words = text.lower().split()
        runs[id] = {tuple(words[at : at + 3]) for at in range(len(words) - 2)}
    holders = Counter(run for own in runs.values() for run in own)
    found = []
    for one, other in itertools.combinations(texts, 2):
        both = {run for run in runs[one] & runs[other] if holders[run] <= 40}
        either = len(runs[one]) + len(runs[other]) - len(both)
        if both and len(both) / either >= least:
            found.append(Likeness(one, other, len(both) / either))
    return sorted(found, key=lambda pair: (-pair.share, pair.first, pair.second))


_TEXTS = st.lists(st.lists(st.sampled_from("abc"), max_size=8).map(" ".join), max_size=6)


@given(_TEXTS, st.sampled_from([0.0, 0.1, 0.25, 0.5, 1.0]))
def test_likeness_is_that_of_every_pair_counted(texts, least):
    named = {f"id-{number}": text for number, text in enumerate(texts)}
    assert list(alike(named, least)) == plain_likeness(named, least)


@pytest.mark.parametrize("copies", [2, 39, 40, 41, 42])
def test_what_many_texts_say_tells_nothing(copies):
    texts = {f"id-{number:02}": "hands at the sides" for number in range(copies)}
    found = list(alike(texts, 0.5))
    assert found == plain_likeness(texts, 0.5)
    assert len(found) == (copies * (copies - 1) // 2 if copies <= 40 else 0)


def test_a_pair_at_the_least_itself_is_told():
    texts = {"one": "a b c d", "other": "a b c e"}  # 1 of 3 runs
    assert [pair.share for pair in alike(texts, 1 / 3)] == [1 / 3]
    assert not list(alike(texts, 0.34))


def test_the_most_alike_come_first_and_then_by_name():
    texts = {"d": "a b c d", "c": "a b c d", "b": "a b c e", "a": "x a b c"}
    order = [(pair.first, pair.second) for pair in alike(texts, 0.1)]
    assert order[0] == ("d", "c")
    assert order[1:] == sorted(order[1:]) and len(order) == 6
