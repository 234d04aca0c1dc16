"""What the club's own texts promise over all entries of a kind: no answer is given away, and no
test of a cause is said twice.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from scipy import stats

from almanac.model.catalogue import Catalogue
from almanac.model.load import load
from almanac.model.progression import Question
from almanac.resources import HOME
from almanac.wording.asked_for import metres_asked, seconds_asked

BY_CHANCE = 0.05  # how seldom chance alone gives what is no longer taken for chance


@pytest.fixture(scope="module")
def club() -> Catalogue:
    loaded = load(HOME)
    assert loaded.catalogue is not None, loaded.findings
    return loaded.catalogue


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
