"""Rules on the club, the policy, the vocabularies, benchmarks, blocks and reviews."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.effort_faults import misplaced_shares, scale_gaps
from almanac.arithmetic.pace_lines import PaceLine
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.benchmark import Benchmark
from almanac.model.policy import Rating, Word
from almanac.model.vocabularies import BUILT_ON, CRITICAL_SPEED
from almanac.units import COURSES, show_distance, show_number


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


@warns("tests-disagree")
def tests_disagree(analysis: Analysis) -> Iterator[Problem]:
    """A lane group's tests of one activity slow with distance as swimmers do.

    Where the exponent of time on distance from one test to the next is outside the policy's
    ``least_exponent`` to ``greatest_exponent``, one of the two times is a mistake of the stopwatch
    or the list, and no targets are worked out from them.
    """
    club = analysis.catalogue.club
    for id in club.lane_groups:
        for names in _disagreeing(analysis, id):
            message = f"the times for {' and '.join(names)} cannot all be right"
            path = ("lane_groups", id, "tests")
            yield Problem(club, path, message, "check the stopwatch, and test again", of_key=True)


def _disagreeing(analysis: Analysis, group: str) -> Iterator[tuple[str, ...]]:
    """Pairs of a lane group's tests that cannot both be right, by benchmark, each once."""
    told: set[tuple[str, ...]] = set()
    for course in COURSES.values():
        paces = analysis.timing.clock(group, course).pacer.paces
        for like in analysis.catalogue.benchmarks:
            line = paces.line(like, course)
            for segment in line.unsound if isinstance(line, PaceLine) else ():
                names = tuple(point.benchmark for point in segment.ends)
                if names not in told:
                    told.add(names)
                    yield names


@warns("pair-without-figure")
def pair_without_figure(analysis: Analysis) -> Iterator[Problem]:
    """Benchmarks that are paired tell something together: critical speed, for a benchmark that
    gives it and a pair of the same activity over another distance; or the drag of gear, for the
    same activity and distance with it and without.

    A word of ``test-uses`` that was renamed would else take the figure off the page unseen.
    """
    benchmarks = analysis.catalogue.benchmarks
    for benchmark in benchmarks.values():
        pairs = [benchmarks[id] for id in benchmark.pair_with]
        if pairs and not any(_tell_together(benchmark, other) for other in pairs):
            message = "nothing is worked out from this benchmark and those it is paired with"
            hint = f"let it give {CRITICAL_SPEED}, or pair it with the same swim in other gear"
            yield Problem(benchmark, ("pair_with",), message, hint, of_key=True)


def _tell_together(one: Benchmark, other: Benchmark) -> bool:
    if one.activity != other.activity:
        return False
    if one.metres == other.metres:
        return set(one.gear) != set(other.gear)
    return CRITICAL_SPEED in one.gives


@forbids("benchmark-mid-pool")
def benchmark_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """A benchmark's distance ends at a wall of the course that it is swum in."""
    for benchmark in analysis.catalogue.benchmarks.values():
        course = benchmark.protocol.course
        if benchmark.distance % course.length:
            message = (
                f"{show_distance(benchmark.distance, course.unit)} ends between the walls of "
                f"a {course} pool"
            )
            yield Problem(benchmark, ("distance",), message, f"write a multiple of {course.length}")


@forbids("depth-range")
def depth_range(analysis: Analysis) -> Iterator[Problem]:
    """A pool's depth runs from its shallowest to its deepest."""
    for id, pool in analysis.catalogue.club.pools.items():
        if pool.depth_m.least > pool.depth_m.most:
            message = f"from {pool.depth_m.least} to {pool.depth_m.most} runs backwards"
            yield Problem(
                analysis.catalogue.club,
                ("pools", id, "depth_m"),
                message,
                "write the shallowest under 'from'",
            )


@forbids("block-starts-monday")
def block_starts_monday(analysis: Analysis) -> Iterator[Problem]:
    """A block starts on a Monday, so that its weeks are calendar weeks."""
    for block in analysis.catalogue.blocks.values():
        if block.starts.weekday() != 0:
            message = f"{block.starts} is a {block.starts:%A}"
            yield Problem(block, ("starts",), message, "write the Monday of its first week")


@forbids("review-order")
def review_order(analysis: Analysis) -> Iterator[Problem]:
    """The next review comes after the last one."""
    for entry in analysis.catalogue.entries.values():
        if entry.review and entry.review.again <= entry.review.on:
            message = f"again on {entry.review.again}, though reviewed on {entry.review.on}"
            yield Problem(entry, ("review", "again"), message, "write a later day")


@warns("review-overdue")
def review_overdue(analysis: Analysis) -> Iterator[Problem]:
    """An entry is looked over again by the day that its review names."""
    for entry in analysis.catalogue.entries.values():
        if entry.review and entry.review.on < entry.review.again < analysis.today:
            message = f"the review was due on {entry.review.again}"
            yield Problem(
                entry,
                ("review", "again"),
                message,
                "look it over, then set 'on' to today and 'again' to the next day",
            )
