"""Teach the wording rule what its traits weigh, by the sentences of the tests and the texts of
catalogues: writes ``almanac/wording/weights.tsv``, and prints what is caught and stopped of each
writer's sentences by a model that has met none of that writer's.
"""

from __future__ import annotations

import argparse

import numpy as np

from almanac.wording.weights import FILE
from teaching.bounds import Bounds, Left, bounds, rates
from teaching.course import Course, Taught
from teaching.examples import CATALOGUE, THREEFOLD, WRITERS, examples
from teaching.written import written

_NEAR = 0.5
_FOLDS = 5


def main() -> None:
    """Leave out some writers after others, set the bounds by that, then learn from all."""
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--only-try", action="store_true", help="write no weights")
    only_try = arguments.parse_args().only_try
    course = Course(examples())
    writers = np.array([example.writer for example in course.examples])
    left = []
    names = [writer for writer in dict.fromkeys(writers) if writer != CATALOGUE]
    for out in (names[start::_FOLDS] for start in range(_FOLDS)):
        taught = course.taught(np.flatnonzero(~np.isin(writers, out)))
        for writer in out:
            own = np.flatnonzero(writers == writer)
            texts = [course.examples[at] for at in own]
            left.append(Left.of(writer, texts, course.scores(taught, own)))
    found = bounds([one for one in left if not one.is_known and one.writer != WRITERS[THREEFOLD]])
    for one in left:
        caught, stopped = rates(one, found)
        known = ", whom the patterns know" if one.is_known else ""
        print(f"{one.writer}: {caught:.1%} caught, {stopped:.1%} stopped{known}")
    if not only_try:
        FILE.write_text(written(course, of_all(course, found), found), "utf-8")


def of_all(course: Course, found: Bounds) -> Taught:
    """What is learnt of all; texts of a catalogue that are found, or nearly, then count in full."""
    everything = np.arange(len(course.examples))
    texts = np.flatnonzero([example.writer == CATALOGUE for example in course.examples])
    in_full: frozenset[int] = frozenset()
    while True:
        taught = course.taught(everything, in_full)
        near = texts[course.scores(taught, texts).whole > found["backed"] - _NEAR]
        if in_full.issuperset(near):
            return taught
        in_full |= frozenset(near)


if __name__ == "__main__":
    main()
