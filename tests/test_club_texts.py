"""What the club's own texts promise over all entries: British, plain and easily read, not the same
everywhere, and no answer given away.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from language import (
    ARCHAIC,
    WHO_ALONE,
    misspelt,
    reading_grade,
    sentences,
    shared_phrases,
)

from almanac.analysis.texts import strings
from almanac.model.catalogue import Catalogue
from almanac.model.load import Loaded
from almanac.model.progression import Question
from almanac.wording.time_and_distance import metres_asked, seconds_asked

BY_CHANCE = 0.05  # how seldom chance alone gives what is no longer taken for chance
AGE_14 = 9  # the year of school, at its American count, in which most are 14 when it begins
WORDS_MOST = 40  # in a sentence
AS_PRINTED = {"title", "in", "by", "doi", "url", "via", "published_in"}  # of a source
AS_TYPED = {"asked_as", "also_called"}  # what people say and type, right or wrong; so is "also"
SAID_IN_ONE_WAY = {"safety", "hazards", "evidence", "refer_on", "protocol", "review", "accepts"}
TERMS = {
    # names of positions, tests and places: one thing has one name
    "arms at the sides", "from the head end", "from flags to flags", "kick on the back",
    "flutter on the back", "lengths of flutter on", "time from a push-off",
    "the back in streamline", "goes down through water", "a piece of gear",
    "the pace factor is", "pace factor is 1", "is that swimmer's factor",
    # pain is sent on in one way
    "a licensed health professional", "to a licensed health", "goes to a licensed",
}  # fmt: skip
LEARNT_FROM = ("drill", "fault", "gear", "benchmark", "progression")


@pytest.fixture(scope="module")
def club(club: Loaded) -> Catalogue:
    assert club.catalogue is not None, club.findings
    return club.catalogue


def questions(club: Catalogue) -> Iterator[Question]:
    for progression in club.progressions.values():
        for stage in progression.stages:
            yield from stage.check_yourself


def by_rank(questions: list[Question]) -> list[int]:
    """How often the right one of three answers is the shortest, the middle one, the longest. Where
    two are of one length they share the rank in turn, the one that stands first before.
    """
    found: Counter[int] = Counter()
    for question in questions:
        lengths = [(len(option.answer), index) for index, option in enumerate(question.options)]
        right = next(index for index, option in enumerate(question.options) if option.right)
        found[sorted(lengths).index((len(question.options[right].answer), right))] += 1
    return [found[rank] for rank in range(3)]


def by_place(questions: list[Question]) -> list[int]:
    """How often the right one of three answers stands first, second, third."""
    found = Counter(
        next(index for index, option in enumerate(question.options) if option.right)
        for question in questions
    )
    return [found[place] for place in range(3)]


def is_chance(counts: list[int]) -> bool:
    """Pearson's chi-square against equal shares, by scipy."""
    from scipy import stats

    return bool(stats.chisquare(counts).pvalue > BY_CHANCE)


def test_neither_place_nor_length_tells_the_right_answer(club: Catalogue) -> None:
    of_three = [question for question in questions(club) if len(question.options) == 3]
    assert len(of_three) > 200
    assert is_chance(by_place(of_three)), by_place(of_three)
    assert is_chance(by_rank(of_three)), by_rank(of_three)


def test_chance_is_told_from_a_habit() -> None:
    assert is_chance([83, 74, 73])
    assert not is_chance([120, 60, 50])


def test_no_answer_is_given_twice(club: Catalogue) -> None:
    for question in questions(club):
        answers = [option.answer.lower() for option in question.options]
        assert len(set(answers)) == len(answers), question.question


@pytest.mark.parametrize(
    ("text", "seconds", "metres"),
    [
        ("Ten beats slowly, then ten as quick as can be.", 0, 0),
        ("Two 25s in socks and one 25 bare straight after.", 0, 75),
        ("Kick 10 m, arms at the sides, then swim 10.", 0, 20),
        ("4 x 50 m at race rate.", 0, 200),
        ("Take the splits of a 200 kick.", 0, 200),
        ("Rest for a minute, then ten seconds on the back.", 70, 0),
        ("Quicker by half a second over 15 metres.", 0.5, 15),
        ("Hold it for 20 s. The 25 is then level.", 20, 25),
        ("Look at it again on another day.", float("inf"), 0),
    ],
)
def test_what_a_test_asks_for(text: str, seconds: float, metres: float) -> None:
    assert (seconds_asked(text), metres_asked(text)) == (seconds, metres)


def texts(club: Catalogue, leave: set[str]) -> Iterator[tuple[str, str, list[str]]]:
    """Kind, id and texts of each entry, without the fields of some names, at any depth."""
    for (kind, id), document in club.documents.items():
        kept = _without(document.data, leave | (AS_PRINTED if kind == "source" else set()))
        yield kind, id, [text for text in strings(kept) if " " in text]


def _without(value: Any, leave: set[str]) -> Any:
    if isinstance(value, dict):
        return {key: _without(held, leave) for key, held in value.items() if key not in leave}
    return [_without(held, leave) for held in value] if isinstance(value, list) else value


def test_every_word_is_spelt_as_in_britain(club: Catalogue) -> None:
    found = {
        (f"{kind} {id}", word)
        for kind, id, own in texts(club, AS_TYPED | {"also", "alarm", "sources", "source", "check"})
        for text in own
        for word in misspelt(text)
    }
    assert not found, "mend them, or add them to tests/words/known.txt with a reason"


def test_no_turn_is_archaic(club: Catalogue) -> None:
    found = [
        (id, turn.group())
        for _, id, own in texts(club, AS_TYPED)
        for text in own
        for turn in (*ARCHAIC.finditer(text), *WHO_ALONE.finditer(text))
    ]
    assert found == []


def test_entries_are_readable_at_fourteen(club: Catalogue) -> None:
    hard = {
        (kind, id): round(reading_grade(" ".join(own)), 1)
        for kind, id, own in texts(club, AS_TYPED | {"also", "evidence"})
        if kind not in ("source", "policy") and sum(len(text.split()) for text in own) > 60
    }
    assert len(hard) > 300
    assert {key: grade for key, grade in hard.items() if grade > AGE_14} == {}


def test_no_sentence_runs_on(club: Catalogue) -> None:
    found = [
        (id, len(sentence.split()), sentence)
        for kind, id, own in texts(club, AS_TYPED | {"also", "evidence"})
        if kind in LEARNT_FROM
        for text in own
        for sentence in sentences(text)
        if len(sentence.split()) > WORDS_MOST
    ]
    assert found == []


def test_no_turn_of_words_is_everywhere(club: Catalogue) -> None:
    by_kind: dict[str, dict[str, list[str]]] = {}
    for kind, id, own in texts(club, AS_TYPED | SAID_IN_ONE_WAY | {"question", "read", "sources"}):
        by_kind.setdefault(kind, {})[id] = own
    for kind, entries in by_kind.items():
        found = shared_phrases(entries, max(3, len(entries) / 10))
        told = {phrase: len(ids) for phrase, ids in found.items() if phrase not in TERMS}
        assert told == {}, f"{kind}: say it in the words of each"


def test_what_is_found() -> None:
    assert [*misspelt("The colour of the centre, recieved in a program's gray.")] == [
        "recieved", "program's", "gray",
    ]  # fmt: skip
    assert [*misspelt("He practiced at the practice that the swimmers' club licensed.")] == [
        "practiced"
    ]
    assert ARCHAIC.search("Rest upon the gutter") and not ARCHAIC.search("Hold on the gutter")
    assert WHO_ALONE.search("Out at the cone; who is dizzy rests.") and not WHO_ALONE.search(
        "Who rests?"
    )
    assert shared_phrases({"a": ["Kick hard past flags."], "b": ["Then kick hard past flags"]}, 1)
    assert not shared_phrases({"a": ["one of the few"], "b": ["one of the few"]}, 1)


def test_the_grade_is_that_of_textstat() -> None:
    # automated_readability_index of textstat 0.7.13, run once on 26 November 2026
    text = (
        "The swimmer lies on the back and looks at one lamp in the roof. Both ears are under "
        "water. "
        "When the hips come up, the kick begins; it is small and quick."
    )
    assert reading_grade(text) == pytest.approx(1.8602083333)
