"""The sizes that a piece is offered in: the first, and what each further one adds."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from functools import cache

from almanac.arithmetic.composing.pieces import UNKNOWN, Size, Sizes

FEW = 4
"""So many sizes, evenly apart, of what does not grow evenly."""
_WHOLE = 1000
"""Permille of what may be done of a drill in a practice."""


Can = Callable[[int], bool]


def sizes_of(
    numbers: Sequence[int],
    size_at: Callable[[int], Size | None],
    can: Can | None = None,
    written: int = 0,
) -> tuple[Sizes, ...]:
    """The sizes of a piece done ``numbers`` times, least first, without those that it cannot be
    done. Times of reps that are all alike grow evenly: where the first two and the last agree on
    that, those between are not laid out. Of what does not grow evenly a few are offered, and what
    is ``written`` or next below it: a practice that is opened to be changed has it so often.

    ``can`` says whether there is a size for a number, where that is known sooner than the size.
    """
    at = cache(size_at)
    can = can or (lambda number: at(number) is not None)
    known = _short_enough(_home(numbers, can), can)
    if len(known) > FEW:
        tried = [known[0], known[1], known[-1]]
        sizes = [size for number in tried if (size := at(number))]
        run = _even(sizes, tried, len(known)) if len(sizes) == len(tried) else None
        if run:
            return _allowed(run)
        last = len(known) - 1
        few = {known[place * last // (FEW - 1)] for place in range(FEW)}
        few.add(max((number for number in known if number <= written), default=known[0]))
        known = [number for number in known if number in few]
    return tuple(own for number in known if (size := at(number)) for own in _allowed(Sizes(size)))


def _home(numbers: Sequence[int], can: Can) -> Sequence[int]:
    """The numbers after which one is back at the end where one began, as far as the first two of
    them tell: all, or every other one.
    """
    if len(numbers) < 3 or (can(numbers[0]) and can(numbers[1])):
        return numbers
    return numbers[::2] if can(numbers[0]) else numbers[1::2]


def _short_enough(numbers: Sequence[int], can: Can) -> Sequence[int]:
    """The numbers up to the first that cannot be done, where the last cannot: what is too much done
    so often is too much done more often.
    """
    if can(numbers[-1]):
        return numbers
    return numbers[: bisect_left(numbers, True, key=lambda number: not can(number))]


def _even(sizes: Sequence[Size], numbers: Sequence[int], count: int) -> Sizes | None:
    """The run that sizes make, if they lie on one; what is counted may lie below it."""
    runs = (_along(sizes, numbers, count, little) for little in (0, 1))
    return next((run for run in runs if run), None)


def _along(sizes: Sequence[Size], numbers: Sequence[int], count: int, little: int) -> Sizes | None:
    """The run with ``little`` tenths more each time, for times that were rounded up."""
    first, second = sizes[:2]
    stride = numbers[1] - numbers[0]
    each = _above(first, second, little)
    if each is None:
        return None
    run = Sizes(first, count - 1, each)
    for number, size in zip(numbers, sizes, strict=True):
        own = run.all[(number - numbers[0]) // stride]
        if not _is_like(own, size, little * count):
            return None
        if (own.goes_under, own.calm) != (size.goes_under, size.calm) or not _covers(own, size):
            return None
    return run


def _is_like(own: Size, size: Size, little: int) -> bool:
    """Whether a run has the number, distance and times of a size; no less, and little more."""
    times = zip(own.times, size.times, strict=True)
    near = all(a is None or b is None or 0 <= a - b <= little for a, b in times)
    return near and (own.number, own.distance) == (size.number, size.distance)


def _above(first: Size, second: Size, little: int) -> Size | None:
    """What the second of two sizes adds, with one more of all that was rounded up."""
    if [one is None for one in first.times] != [one is None for one in second.times]:
        return None
    if [own[0] for own in first.doses] != [own[0] for own in second.doses]:
        return None
    if any(
        (a[1] == UNKNOWN) != (b[1] == UNKNOWN)
        for a, b in zip(first.doses, second.doses, strict=True)
    ):
        return None
    return Size(
        second.number - first.number,
        second.distance - first.distance,
        tuple(
            None if a is None or b is None else b - a + little
            for a, b in zip(first.times, second.times, strict=True)
        ),
        second.fast - first.fast,
        second.resisted - first.resisted,
        second.plates - first.plates,
        second.under - first.under,
        UNKNOWN,
        UNKNOWN,
        tuple(
            (a[0], 0 if a[1] == UNKNOWN else _more(a[1], b[1]), _more(a[2], b[2]))
            for a, b in zip(first.doses, second.doses, strict=True)
        ),
    )


def _more(first: int, second: int) -> int:
    return second - first + (1 if second > first else 0)


def _covers(own: Size, size: Size) -> bool:
    """Whether all that is counted of a size is no more than the run has it."""
    counted = [(own.fast, size.fast), (own.resisted, size.resisted)]
    counted += [(own.plates, size.plates), (own.under, size.under)]
    same = [one[0] for one in own.doses] == [one[0] for one in size.doses]
    counted += [
        pair
        for one, other in zip(own.doses, size.doses, strict=False)
        for pair in zip(one[1:], other[1:], strict=True)
    ]
    return same and all(most >= real for most, real in counted)


def _allowed(run: Sizes) -> tuple[Sizes, ...]:
    """The run up to the size that the drills' doses let the level do; none where not even the first
    is let.
    """
    fits = [
        all(
            max(plain, 0 if plain != UNKNOWN else strict) <= _WHOLE
            for _, plain, strict in own.doses
        )
        for own in run.all
    ]
    count = fits.index(False) if False in fits else len(fits)
    if not count or not any(run.first.times):
        return ()
    return (Sizes(run.first, count - 1, run.each if count > 1 else None),)
