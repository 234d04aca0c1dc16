"""A look at a text spares its parts a reading, and never one that is worth it."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st
from sentence_lists import BATCHES, sentences

from almanac.wording.glance import may_hold, worth_weighing
from almanac.wording.parts import FEWEST, parts_of
from almanac.wording.phrases import pieces
from almanac.wording.reading import AT_A_GLANCE, CLAUSE

_MORE = AT_A_GLANCE * CLAUSE
_SIGNS = (" ", ", ", ". ", "? ", "; ", ", and ", " then ", " but ", " - ", ".” ", "  ", ": ", ".5 ")
_WORDS = (
    "hold", "your", "breath", "lungs", "empty", "air", "until", "the", "wall", "swim", "easy", "a",
    "b", "no", "25",
    "metres", "kick", "toes", "up", "body", "flat", "under", "water",
)  # fmt: skip


def is_worth_a_reading(text: str) -> bool:
    """Whether some part of a text, each looked at by itself, is worth weighing."""
    return any(
        worth_weighing(part.text, _MORE * part.is_clause)
        for part in parts_of(text)
        if len(pieces(part.text)) >= FEWEST
    )


def is_missed(text: str) -> bool:
    return is_worth_a_reading(text) and not may_hold(text, FEWEST, _MORE)


def joined(batch: int) -> list[str]:
    """Each harmless sentence of a batch with an unsafe one, in one of the ways that texts go on."""
    pairs = zip(sentences("harmless", batch), sentences("unsafe", batch), strict=False)
    signs = itertools.cycle(_SIGNS)
    both = (pair if number % 2 else pair[::-1] for number, pair in enumerate(pairs))
    return [f"{one.rstrip('.')}{next(signs)}{other}" for one, other in both]


@given(st.lists(st.tuples(st.sampled_from(_WORDS), st.sampled_from(_SIGNS)), max_size=40))
def test_no_text_by_chance_hides_a_part_that_is_worth_weighing(
    words: list[tuple[str, str]],
) -> None:
    assert not is_missed("".join(itertools.chain.from_iterable(words)))


def test_no_unsafe_sentence_is_hidden_beside_a_harmless_one() -> None:
    texts = [text for batch in BATCHES for text in joined(batch)]
    worth = [text for text in texts if is_worth_a_reading(text)]
    assert len(worth) > len(texts) / 3
    assert [text for text in worth if not may_hold(text, FEWEST, _MORE)] == []


def test_few_texts_are_read_for_nothing() -> None:
    """Else the parts of harmless texts are what a check of many entries takes longest with."""
    lists = [sentences("harmless", batch) for batch in BATCHES]
    pairs = [pair for own in lists for pair in itertools.pairwise(own)]
    texts = [f"{one.rstrip('.')}, {other}" for one, other in pairs]
    worth = sum(map(is_worth_a_reading, texts))
    assert sum(may_hold(text, FEWEST, _MORE) for text in texts) < 1.3 * worth
