"""The wording rule: how many unsafe sentences it catches, how many harmless ones it stops, and the
parts that it stands on.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from example_cases import cases
from sentence_lists import BATCHES, sentences
from shared import share

from almanac.analysis.askings import Readings
from almanac.analysis.texts import strings
from almanac.model.load import Loaded, load
from almanac.source.reader import DataPath
from almanac.source.texts import texts_of
from almanac.wording.amounts import tokens
from almanac.wording.dangers import BY_WEIGHT, DANGERS
from almanac.wording.families import FAMILIES
from almanac.wording.folding import fold
from almanac.wording.glance import worth_weighing
from almanac.wording.lexicon import AMOUNTS, words
from almanac.wording.parts import parts_of
from almanac.wording.patterns import Pattern, TokenRow
from almanac.wording.reading import Asking, asked_for, hits_of
from almanac.wording.topics import TOPICS
from almanac.wording.weighing import Weighed
from almanac.wording.weights import weights
from almanac.wording.words import MEANINGS

EVERY_FIELD = next(case for case in cases("accepted") if case.name == "every-field")
LEAST_CAUGHT = 0.9
MOST_STOPPED = 0.01


def rate(kind: str, batch: int) -> float:
    """The share of a batch that is caught: of the longest batches a seeded share is read, but by
    ``--long`` all.
    """
    read = share(sentences(kind, batch), 250, (kind, batch))
    return sum(bool(asked_for(text)) for text in read) / len(read)


def test_rates_over_all_sentences(capsys: pytest.CaptureFixture[str]) -> None:
    """What is caught and stopped of all sentences that the rule has been mended and taught by.

    Of sentences that it had never met it caught, and stopped, on the first try:

    - batch 1, before there was a rule of this kind: 6 % and 1 % (the rule of fixed phrases) - batch
    2, odd voices, after mending by batch 1: 54 % and 6 % - batch 3, plain sentences, after mending
    by batch 2: 89 % and 5 % - batch 4, other kinds of text, after mending by batch 3: 69 % and 4 %
    - batch 5, written to slip past, after mending by batch 4 and plain talk: 31 % and 1 % - batch
    6, plain sentences with traps, after mending by batch 5: 78 % and 1 % - batches 7, 8 and 9, by
    another hand, after mending by batch 6: 82 % and 8 %, 73 % and 12 %, 67 % and 5 % - batch 10, by
    another hand: 54 % and 6 %; after mending by 7, 8 and 9: 61 % and 6 % - batch 11, by another
    hand: 46 % and 5 %; after mending by 7, 8 and 9: 56 % and 8 %; after mending by 10 too: 59 % and
    8 % - batches 12 and 13, by two other hands, with pictures, games, tables and tricks: 45 % and 9
    %, 41 % and 7 %; batch 14, plain sentences by the hand that set up the weights: 57 % and 7 %;
    batch 16, terse ones by the same hand: 40 % and 2 %

    That was patterns alone; of batch 17, by another hand, they have 45 % and 8 %. With weights, on
    the first try: batch 16 46 % and 1 %, batch 17 56 % and 5 %, batch 19 68 % and 8 %, batch 20
    71 % and 7 %; batch 18 keeps what speaks of air, water and the senses out of two hands' lists of
    every danger; batches 21, 22 and 23, by three hands, half of them without a plain word, 56 % and
    8 %, 72 % and 12 %, 71 % and 9 %; with phrases and these, batches 24 and 25 79 % and 7 %, 85 %
    and 8 %.

    Kept aside until it had been taught by all before: of batch 26, by a careful judge, most of the
    harmless ones near misses, it caught and stopped 91 % and 4 % (without phrases and batches 21 to
    25: 85 % and 7 %), of batch 27, by another, 98 % and 4 %; of the 220 plain ones at the head of
    these lists 98 % and 1 %. Of 300 plain sentences that nobody who taught it has read, 95 % and 1
    % (before: 91 % and 1 %; patterns alone 84 % and 7 %); of 400 that were written to slip past, 80
    % and 9 % (before: 64 % and 10 %). ``scripts/teach`` prints what is caught and stopped of each
    writer's sentences by a model that was taught without them: 71 to 86 %, and 5 to 15 %, of
    batches 12 to 25.

    Batch 28, 350 and 350 by an independent hand (27 November 2026), half of the unsafe ones sly,
    two thirds of the harmless ones near misses: 92 % and 4 % on the first try. Batch 29, in the
    manner of what was missed of it, by the hand that then taught it: 62 % and 11 %. Batch 30, as
    sly, by one who wrote of air alone: 82 % and 6 %; of those written to slip past it then caught
    and stopped 83 % and 9 %.
    """
    found = {batch: (rate("unsafe", batch), rate("harmless", batch)) for batch in BATCHES}
    with capsys.disabled():
        for batch, (caught, stopped) in found.items():
            print(f"\n  batch {batch}: {caught:.1%} caught, {stopped:.1%} stopped", end="")
    counts = {
        batch: (len(sentences("unsafe", batch)), len(sentences("harmless", batch)))
        for batch in BATCHES
    }
    unsafe = sum(unsafe for unsafe, _ in counts.values())
    harmless = sum(harmless for _, harmless in counts.values())
    assert min(unsafe, harmless) >= 200
    assert sum(counts[b][0] * found[b][0] for b in BATCHES) >= LEAST_CAUGHT * unsafe
    assert sum(counts[b][1] * found[b][1] for b in BATCHES) <= MOST_STOPPED * harmless


def test_a_danger_is_found_among_harmless_words() -> None:
    """Unsafe sentences that are found alone, each put into a paragraph of three harmless ones, and
    beside a harmless clause. Read as a whole alone, 45, 22 and 84 % of them were found.
    """
    chance = random.Random(12)
    found = [text.rstrip(".!?") for text in sentences("unsafe", 28) if asked_for(text)]
    around = [text for text in sentences("harmless", 28) if text.endswith(".")]
    for least, tail in ((0.88, ""), (0.74, f"; {CLAUSES[0]}"), (0.88, f", then {CLAUSES[1]}")):
        texts = [f"{text}{tail}." for text in found]
        if not tail:
            texts = [
                " ".join((*own[:2], text, own[2]))
                for text in texts
                for own in [chance.sample(around, 3)]
            ]
        assert sum(bool(asked_for(text)) for text in texts) >= least * len(texts), tail


CLAUSES = (
    "a coach at the flags calls each swimmer in",
    "rest until the last one has touched the wall",
)


def test_a_part_is_read_alone_where_it_can_be_understood() -> None:
    text = "Should one of them beg for air, help all of them out, then go on. Is this wise or not?"
    assert [(part.text, part.is_clause, part.may_be_denied) for part in parts_of(text)] == [
        ("Should one of them beg for air, help all of them out, then go on.", False, True),
        ("help all of them out then go on.", True, False),
    ]
    text = "Never do that. We all swim it slowly to the wall. The next one is quicker than this."
    assert [(part.text, part.is_clause, part.may_be_denied) for part in parts_of(text)] == [
        ("Never do that. We all swim it slowly to the wall.", False, False),
        ("The next one is quicker than this.", False, True),
    ]


# ---- denials


@pytest.mark.parametrize(
    "text",
    [
        "Never hold the breath.",
        "No breath-holding, ever.",
        "Do not, under any circumstances, hold your breath.",
        "Never hold your breath, stay under for long, or hyperventilate.",
        "Breath-holding is not allowed here.",
        "Holding the breath under water can kill.",
        "If anyone stays under past the mark, stop the set.",
        "Nobody can talk and hold the breath.",
        "Avoid holding the breath.",
        "Stop at once when you feel dizzy.",
    ],
)
def test_a_denial_excuses_what_it_denies(text: str) -> None:
    assert asked_for(text) == ()


@pytest.mark.parametrize(
    "text",
    [
        "Never breathe.",
        "Do not stop when dizzy.",
        "Don't come up until the flags.",
        "Stop. Then swim 25 m with no air.",
        "It is never too long to stay under.",
        "Never stop holding your breath.",
        "Do not avoid holding your breath.",
        "Do not slow down, and hold your breath to the wall.",
        "Never hold back: hold your breath to the wall.",
        "Breath-holding is not dangerous.",
        "Never rest. Stay under as long as you can.",
        "You may stop if you like; the aim is 50 m without air.",
    ],
)
def test_a_denial_excuses_nothing_else(text: str) -> None:
    assert asked_for(text)


def test_what_tells_of_a_danger_may_name_it_and_may_not_ask_for_it() -> None:
    told = "A swimmer holds the breath and goes as far as possible under water."
    assert asked_for(told)
    assert not asked_for(told, tells=True)
    assert asked_for("Hold your breath as long as you can.", tells=True)


# ---- letters


@pytest.mark.parametrize(
    "text",
    [
        "no air", "NO AIR", "n\u200bo a\u00adir", "\uff4e\uff4f \uff41\uff49\uff52",
        "n\u043e \u0430ir",
        "no\u00a0air", "n\u0301o a\u0301ir", "no   air", "*no* **air**", "n o  a i r", "no a1r",
        "no &#97;ir",
        "no <b>a</b>ir", "\U0001d427\U0001d428 \U0001d41a\U0001d422\U0001d42b", "n\u03bf air",
        "n\u0585 air",
    ],
)  # fmt: skip
def test_dressed_letters_are_undone(text: str) -> None:
    assert fold(text).split() == ["no", "air"]


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("br-eath", "breath"),
        ("breth", "breath"),
        ("withot", "without"),
        ("#holdyourbreath", "hold your breath"),
        ("NoBreath", "no breath"),
        ("breadth", "breadth"),
        ("together", "together"),
        ("repair", "repair"),
    ],
)
def test_words_that_are_cut_joined_or_misspelt_are_read(text: str, read: str) -> None:
    assert " ".join(str(token) for token in tokens(text)).removesuffix(" .") == read


def test_amounts_are_read_with_their_units() -> None:
    read = {text: tokens(text)[0].meanings for text in ("25 m", "10 m", "40 s", "3 s", "0.9 m")}
    assert "DIST" in read["25 m"]
    assert "NEAR" in read["10 m"]
    assert "LONG_TIME" in read["40 s"]
    assert "BRIEF" in read["3 s"]
    assert "SHALLOW" in read["0.9 m"]
    assert "COUNT_DOWN" in tokens("5-4-3-2")[0].meanings
    assert "COUNT_UP" in tokens("three, five, seven")[0].meanings


def test_a_text_that_repeats_itself_is_read_in_time() -> None:
    for piece in (
        "to the ",
        "no a ",
        "hold your ",
        "breathe 3, ",
        "a b c ",
        "under as long ",
        "- ",
    ):
        asked_for(piece * (1200 // len(piece)))


# ---- the grammar


def patterns() -> Iterator[Pattern]:
    for danger in DANGERS:
        for saying in danger.sayings:
            yield saying.pattern
            yield from saying.unless


def test_every_name_in_a_pattern_is_a_meaning_a_family_or_a_word() -> None:
    known = {*MEANINGS, *FAMILIES, *AMOUNTS, "FULL", "HALF", "COMMA"}
    names = {name for pattern in patterns() for name in pattern.names}
    assert {name for name in names if name.isupper() and name not in known} == set()
    assert {name for name in names if "_" in name and name.islower()} <= words().keys()


def test_no_meaning_and_no_family_is_unused() -> None:
    names = {name for pattern in patterns() for name in pattern.names}
    by_hand = {"NO_LONGER", "SKY", "AVOID", "HARM", "FORGET", "ALLOWED", "AND"}
    units = {"UNIT_M", "UNIT_S", "UNIT_MIN"}
    assert FAMILIES.keys() <= names
    assert {*MEANINGS} - names <= by_hand | units


# ---- the weights


def test_a_first_look_loses_little() -> None:
    unsafe = [text for batch in BATCHES for text in sentences("unsafe", batch)]
    lost = [text for text in unsafe if not worth_weighing(text) and weighs(text) > bound("alone")]
    assert len(lost) <= 0.01 * len(unsafe), lost


def weighs(text: str) -> float:
    return Weighed(text, tokens(text)).weight


def bound(name: str) -> float:
    return weights().bounds[name]


def test_every_trait_that_weighs_can_be_found() -> None:
    """So that a topic or a meaning that is renamed is taught again."""
    sizes = {"few", "some", "many"}
    known = {*MEANINGS, *AMOUNTS, *(f"#{topic}" for topic in TOPICS), *sizes}
    pairs = (weights().following, weights().beside)
    groups = {*weights().groups, *(one for pair in pairs for one in pair)}
    groups |= {one for pair in (*pairs, weights().placed) for row in pair.values() for one in row}
    assert groups <= known, groups - known
    assert weights().hits.keys() - {"asked"} <= {danger.name for danger in DANGERS}


def test_what_no_pattern_knows_is_found_by_its_weight_and_names_its_words() -> None:
    text = "The tank's full, the cap's on, off you go to the other end."
    row = TokenRow(tokens(text))
    assert not any(True for _ in hits_of(row))
    (asking,) = asked_for(text)
    assert asking.danger is BY_WEIGHT
    assert {word for word in asking.words.split() if word != "..."} <= set(map(str, row.tokens))
    assert asked_for(text, tells=True) == ()


def test_a_trait_counts_once_and_a_long_text_weighs_no_more() -> None:
    once = "Swim the length on one lungful."
    assert weighs(f"{once} {once}") == pytest.approx(weighs(once), abs=1.5)


def test_a_model_is_fitted_to_its_examples() -> None:
    from teaching.model import fitted, table  # here: it takes scipy

    rows = [["air", "none"], ["air", "none", "wall"], ["air", "wall"], ["wall"], ["wall", "rest"]]
    learnt = table(rows, 1)
    unsafe = np.array([1.0, 1.0, 0.0, 0.0, 0.0])
    model = fitted(learnt.evened(), unsafe, np.ones(5), 100.0)
    assert ((model.of(learnt.evened()) > 0) == (unsafe > 0)).all()
    by_name = dict(zip(learnt.names, model.weights, strict=True))
    assert by_name["none"] > by_name["air"] > by_name["rest"]


# ---- which texts are read


@pytest.fixture(scope="module")
def every_field(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    root = tmp_path_factory.mktemp("every-field")
    EVERY_FIELD.build(root)
    return load(root)


def test_every_sentence_of_every_kind_is_a_text(every_field: Loaded) -> None:
    """Whatever has a space in it was worded by an author; the schemas tell the rest."""
    for (kind, id), document in every_field.catalogue.documents.items():
        read = {text.text for text in texts_of(kind, id, document.data)}
        assert {text for text in strings(document.data) if " " in text} - read <= PLAIN, (kind, id)
        assert id in read


PLAIN = {"4 weeks", "6 weeks", "8 weeks"}  # amounts, which the schema fixes


def test_a_danger_is_found_in_every_text(every_field: Loaded) -> None:
    for (kind, id), document in every_field.catalogue.documents.items():
        data = deepcopy(document.data)
        places = [text for text in texts_of(kind, id, data) if text.path and not text.is_key]
        for place in places:
            put(data, place.path, "Swim 25 m with no air.")
        for text in texts_of(kind, id, data):
            if text.path and not text.is_key:
                assert asked_for(text.text, text.tells), (kind, text.path)


def put(data: Any, path: DataPath, value: str) -> None:
    *inner, last = path
    for step in inner:
        data = data[step]
    data[last] = value


def test_ids_and_coined_keys_are_read() -> None:
    drill = {"title": "Plain"}
    vocabulary = {"words": {"no-air-sprint": {"title": "Plain", "means": "Plain words."}}}
    first = next(texts_of("drill", "hold-your-breath", drill))
    assert first.text == "hold-your-breath"
    assert asked_for("hold-your-breath")
    keys = [text for text in texts_of("vocabulary", "kicks", vocabulary) if text.is_key]
    assert [text.text for text in keys] == ["no-air-sprint"]


def test_a_file_that_asks_for_nothing_is_read_once(
    every_field: Loaded, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.delenv("ALMANAC_NO_CACHE", raising=False)
    read: list[str] = []

    def counted(text: str, tells: bool = False) -> tuple[Asking, ...]:
        read.append(text)
        return asked_for(text, tells)

    monkeypatch.setattr("almanac.source.harmless_texts.asked_for", counted)
    assert Readings(every_field.catalogue).askings == ()
    assert read
    read.clear()
    assert Readings(every_field.catalogue).askings == ()
    assert read == []
