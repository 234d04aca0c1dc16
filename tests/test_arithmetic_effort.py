"""The effort scale: which word owns a rating, how a span divides, and what makes a scale
unsound.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from arithmetic_world import EFFORTS, SCALE, clock, events
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.effort import EffortScale, EffortSpan
from almanac.arithmetic.effort_faults import misplaced_shares, scale_gaps
from almanac.model.effort_plans import Build, Descend, Hold, Rotate
from almanac.model.policy import Rating, Word

WORDS = list(EFFORTS)
ratings = st.integers(0, 100).map(lambda tenths: Fraction(tenths, 10))


@pytest.mark.parametrize(
    ("rating", "word"),
    [
        (0, "easy"),
        (2.9, "easy"),
        (3, "steady"),
        (4, "steady"),
        (5, "strong"),
        (7, "fast"),
        (9, "all-out"),
        (10, "all-out"),
    ],
)
def test_a_border_belongs_to_the_harder_word(rating, word):
    assert SCALE.word_at(Fraction(str(rating))) == word


def test_ratings_and_shares():
    assert [SCALE.rating(word) for word in WORDS] == [Fraction(3, 2), 4, 6, 8, Fraction(19, 2)]
    assert [SCALE.share(word) for word in WORDS] == [0.72, 0.80, 0.87, 0.94, 1.0]


@pytest.mark.parametrize(
    ("effort", "spans"),  # reps 1 to 3 of 3: first and last rating
    [
        (Hold("strong"), [(6, 6)] * 3),
        (Descend("steady", "fast"), [(4, 4), (6, 6), (8, 8)]),
        (Build("steady", "fast"), [(4, 8)] * 3),
        (Rotate(("steady", "fast")), [(4, 4), (8, 8), (4, 4)]),
        (Rotate(("steady", "fast", "strong")), [(4, 4), (8, 8), (6, 6)]),
    ],
)
def test_spans(effort, spans):
    found = [SCALE.span(effort, number, 3) for number in (1, 2, 3)]
    assert [(span.start, span.end) for span in found] == spans
    assert [span.mean for span in found] == [Fraction(start + end, 2) for start, end in spans]


def test_an_even_effort_stands_at_its_first_word():
    even = EffortSpan(Fraction(6), Fraction(6), ("strong", "strong"), Fraction(0))
    assert SCALE.span(Hold("strong"), 1, 1) == SCALE.span(Rotate(("strong",)), 2, 3) == even
    assert hash(SCALE.span(Hold("strong"), 1, 1)) == hash(even)


def test_a_split_is_worked_out_once():
    span = SCALE.span(Build("easy", "fast"), 1, 1)
    assert SCALE.split(span) is SCALE.split(span)


def counting(**words):
    """A scale whose words, in order, count as fast, as gentle, or as neither."""
    given = {name.replace("_", "-"): how for name, how in words.items()}
    return EffortScale(
        {name: replace(SCALE.words[name], counts_as=how) for name, how in given.items()}
    )


@pytest.mark.parametrize(
    ("words", "fast", "gentle", "told"),
    [
        ({"easy": "", "steady": "", "strong": "", "fast": "", "all_out": ""},
         ("fast", "all-out"), ("easy", "steady"), "fast or all-out"),  # else the two at either end
        ({"easy": "gentle", "steady": "", "strong": "fast", "fast": "fast", "all_out": "fast"},
         ("strong", "fast", "all-out"), ("easy",), "strong, fast or all-out"),
        ({"easy": "gentle", "steady": "gentle", "strong": "gentle", "fast": "", "all_out": "fast"},
         ("all-out",), ("easy", "steady", "strong"), "all-out"),
        ({"easy": "gentle", "steady": "gentle", "strong": "", "fast": "fast", "all_out": ""},
         ("fast", "all-out"), ("easy", "steady"), "fast or all-out"),  # harder than fast is fast
    ],
)  # fmt: skip
def test_efforts_that_count_as_fast_and_as_gentle(words, fast, gentle, told):
    own = counting(**words)
    assert (own.fast, own.gentle, own.fast_words("or")) == (fast, gentle, told)


@pytest.mark.parametrize(
    ("rows", "counted", "fast"),
    [
        # what begins where one of them does, or above it, is as hard as that one
        ([(0, 5), (5, 7), (7, 9), (9, 10)], ["steady", "fast"], ["steady", "strong", "fast"]),
        ([(0, 5), (5, 8), (7, 10)], ["steady"], ["steady", "strong"]),  # an overlap
        ([(0, 5), (5, 8), (5, 10)], ["steady"], ["steady", "strong"]),
        # a word without a rating is as fast as it says, and makes no other fast
        ([(0, 3), (None, None), (3, 9), (9, 10)], ["steady"], ["steady"]),
        ([(0, 3), (None, None), (3, 10)], ["strong"], ["strong"]),
    ],
)
def test_what_is_harder_than_a_fast_word_is_fast_whatever_the_scale(rows, counted, fast):
    words = scale(*((*row, 1) for row in rows))
    own = EffortScale(
        {
            name: replace(word, counts_as="fast" if name in counted else "")
            for name, word in words.items()
        }
    )
    assert own.fast == tuple(fast)


@pytest.mark.parametrize(
    ("rating", "around"),
    [
        (0, ("easy", "easy", 0)),  # below the first middle, 1.5
        (1.5, ("easy", "easy", 0)),
        (5, ("steady", "strong", Fraction(1, 2))),
        (6, ("strong", "strong", 0)),
        (6.2, ("strong", "fast", Fraction(1, 10))),
        (9.9, ("all-out", "all-out", 0)),
    ],
)
def test_the_words_around_a_rating(rating, around):
    assert EffortScale(SCALE.words).around(rating) == around


def test_the_outermost_words():
    own = EffortScale(SCALE.words)
    assert (own.easiest, own.hardest) == ("easy", "all-out")


def test_a_word_without_a_rating_owns_nothing():
    own = EffortScale(scale((0, 3, 0.7), (None, None, None), (3, 10, 1)))
    assert [own.word_at(Fraction(rating)) for rating in (0, 3, 10)] == ["easy", "strong", "strong"]


def test_a_descend_over_one_rep_is_its_first_word():
    # A finding forbids it; it must not divide by zero.
    assert SCALE.span(Descend("steady", "fast"), 1, 1) == EffortSpan(
        Fraction(4), Fraction(4), ("steady", "fast"), Fraction(0)
    )


@pytest.mark.parametrize(
    ("start", "end", "split"),
    [
        (4, 4, {"steady": 1}),
        (4, 8, {"steady": Fraction(1, 4), "strong": Fraction(1, 2), "fast": Fraction(1, 4)}),
        (8, 4, {"steady": Fraction(1, 4), "strong": Fraction(1, 2), "fast": Fraction(1, 4)}),
        (5, 7, {"strong": 1}),
        (0, 10, dict(zip(WORDS, [Fraction(tenths, 10) for tenths in (3, 2, 2, 2, 1)],
                         strict=True))),
    ],
)  # fmt: skip
def test_splits(start, end, split):
    assert SCALE.split(EffortSpan(Fraction(start), Fraction(end), ("easy", "easy"), None)) == split


@given(ratings, ratings)
def test_a_split_is_whole(start, end):
    split = SCALE.split(EffortSpan(start, end, ("easy", "easy"), None))
    assert sum(split.values()) == 1 and all(share > 0 for share in split.values())


def scale(*rows):
    """A scale of words from, to and share; None for what a word lacks."""
    words = {}
    for name, (least, most, share) in zip(WORDS, rows, strict=False):
        words[name] = Word(name, "", None if least is None else Rating(least, most), share)
    return words


@pytest.mark.parametrize(
    ("rows", "failing"),
    [
        ([(0, 3, 0.7), (3, 5, 0.8), (5, 10, 1)], []),
        ([(0, 10, 1)], []),
        ([(1, 3, 0.7), (3, 10, 1)], ["easy"]),  # does not begin at 0
        ([(0, 3, 0.7), (3, 9, 1)], ["steady"]),  # does not end at 10
        ([(0, 3, 0.7), (3, 5, 0.8), (5, 9, 1)], ["strong"]),
        ([(1, 3, 0.7), (3, 9, 1)], ["easy"]),  # the first thing to put right
        ([(0, 3, 0.7), (4, 10, 1)], ["steady"]),  # a gap
        ([(0, 5, 0.7), (3, 10, 1)], ["steady"]),  # an overlap
        ([(0, 0, 0.7), (0, 10, 1)], ["easy"]),  # a word that owns nothing
        ([(0, 5, 0.7), (5, 4, 0.8), (4, 10, 1)], ["steady"]),  # runs backwards
        ([(0, 3, None), (3, 10, 1)], ["easy"]),
        ([(None, None, 0.7), (3, 10, 1)], ["easy"]),
        ([(0, 3, 0.7), (None, None, None), (5, 10, 1)], ["steady"]),
    ],
)
def test_scales_with_gaps(rows, failing):
    assert scale_gaps(scale(*rows)) == failing


def test_a_level_may_have_its_own_share_and_an_effort_a_reference():
    word = Word("Easy", "", Rating(0, 10), 0.8, reference_m=400, by_level={"building": 0.9})
    scale = EffortScale({"easy": word})
    assert [scale.share("easy", level) for level in ("building", "performing", "")] == [
        0.9, 0.8, 0.8,
    ]  # fmt: skip
    assert scale.reference_m("easy") == 400 and SCALE.reference_m("easy") == 0


@pytest.mark.parametrize(
    ("easy", "strong", "misplaced"),
    [
        ({}, {}, []),
        ({"share_of_best": 0.9}, {}, ["strong"]),
        ({"share_of_best": 0.91}, {}, ["strong"]),
        ({"reference_m": 400}, {"reference_m": 100}, []),
        ({"reference_m": 100}, {"reference_m": 100}, []),
        ({"reference_m": 100}, {"reference_m": 400}, ["strong"]),
        ({}, {"reference_m": 50}, ["strong"]),
        ({}, {"reference_m": 1}, ["strong"]),
        ({"share_of_best": None}, {}, []),  # what a word lacks is another finding
        ({}, {"share_of_best": None}, []),
        ({"by_level": {"building": 0.85}}, {}, []),
        ({"by_level": {"building": 0.95}}, {}, ["strong"]),
        ({"by_level": {"building": 0.95}}, {"by_level": {"building": 0.97}}, []),
        ({}, {"by_level": {"building": 0.8}}, ["strong"]),
    ],
)
def test_a_harder_word_must_be_faster_at_every_distance_and_level(easy, strong, misplaced):
    words = {
        "easy": replace(Word("Easy", "", Rating(0, 5), 0.8), **easy),
        "strong": replace(Word("Strong", "", Rating(5, 10), 0.9), **strong),
    }
    assert misplaced_shares(words) == misplaced


def test_a_built_descend_has_the_times_of_the_descend_and_the_shape_of_the_build():
    # ratings: steady 4, fast 8; easy 1.5 to strong 6 rises by 4.5, so 2.25 below and above
    both = Descend("steady", "fast", Build("easy", "strong"))
    plain = [SCALE.span(Descend("steady", "fast"), number, 3) for number in (1, 2, 3)]
    built = [SCALE.span(both, number, 3) for number in (1, 2, 3)]
    assert [(span.words, span.along, span.mean) for span in built] == [
        (span.words, span.along, span.mean) for span in plain
    ]
    assert [(span.start, span.end) for span in built] == [
        (Fraction(7, 4), Fraction(25, 4)),
        (Fraction(15, 4), Fraction(33, 4)),
        (Fraction(6), Fraction(10)),  # as far as the scale goes, on both sides alike
    ]


def test_a_descend_whose_build_falls_is_even():
    falling = Descend("steady", "fast", Build("strong", "easy"))
    spans = [SCALE.span(falling, number, 3) for number in (1, 2, 3)]
    assert [(span.start, span.end) for span in spans] == [(4, 4), (6, 6), (8, 8)]


def test_a_built_descend_takes_as_long_as_the_descend():
    plain = {"reps": 3, "distance": 50, "do": "kick", "effort": {"descend": ["steady", "fast"]}}
    built = {**plain, "effort": {**plain["effort"], "build": ["easy", "strong"]}}
    times = [[rep.target_s for rep in clock().run(events(own)).reps] for own in (plain, built)]
    assert times[0] == times[1] and times[0][0] > times[0][2]
