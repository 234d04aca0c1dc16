"""Parts of practices that stand by themselves, and may stand in another practice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import PART
from almanac.arithmetic.scaling import REPS, Scalable, item_at, scalable_of, scaled_items
from almanac.model.practice import Practice, PracticePart
from almanac.model.reps import Reps
from almanac.model.swim_set import Item
from almanac.model.vocabularies import TESTS
from almanac.report.bound_parts import bound_by
from almanac.report.compose.candidate import Candidate

MORE_REPS = 6
"""How many reps more, or fewer, than written a part that stands by itself is offered with."""


def parts_alone(
    analysis: Analysis, squad: str, broken: frozenset[str] = frozenset()
) -> Iterator[tuple[Practice, int]]:
    """The parts of a squad's practices that stand by themselves, by their number."""
    for _, practice in sorted(analysis.computable_practices.items()):
        if practice.squad == squad and practice.file not in broken:
            for number, part in enumerate(practice.parts):
                if _stands_alone(analysis, part):
                    yield practice, number


def part_keys(analysis: Analysis, squad: str) -> dict[tuple[str, int], str]:
    """By practice and number of a part that stands by itself the key of its piece; of parts that
    are alike the first is one.
    """
    first: dict[str, str] = {}
    found: dict[tuple[str, int], str] = {}
    for practice, number in parts_alone(analysis, squad):
        own = of_part(analysis, practice, number)
        key = first.setdefault(own.alike, f"{PART}/{practice.id}/{number}")
        found[practice.id, number] = key
    return found


def other_sizes(analysis: Analysis, practice: Practice, number: int) -> Iterator[tuple[Item, ...]]:
    """The items of a part that stands by itself: as written, and with more or fewer reps."""
    own = of_part(analysis, practice, number)
    yield own.items
    if own.scale:
        for often in own.numbers:
            yield scaled_items(own.items, own.scale, often)


def _stands_alone(analysis: Analysis, part: PracticePart) -> bool:
    """Whether a part makes sense in another practice: items that nothing binds."""
    return bool(part.items) and not part.set and not bound_by(analysis, part)


def of_part(analysis: Analysis, practice: Practice, number: int) -> Candidate:
    """A part that stands by itself, by its number."""
    part = practice.parts[number]
    most = analysis.catalogue.policy.limit("most_reps")
    scale = scalable_of(part.items, REPS, most)
    if scale and not _scales(part.items, scale):
        scale = None
    numbers: tuple[int, ...] = ()
    if scale:
        least = max(scale.least, scale.written - MORE_REPS)
        numbers = tuple(range(least, min(scale.most, scale.written + MORE_REPS) + 1))
        numbers = _in_whole_turns(part.items, scale, numbers)
    before = practice.parts[:number]
    data = analysis.catalogue.documents[practice.key].data["parts"][number]["items"]
    return Candidate(
        PART,
        practice.id,
        number,
        part.items,
        scale,
        numbers,
        word=part.part,
        follows=any(own.part not in (before[0].part, TESTS) for own in before),
        talk_s=int(part.talk or 0),
        written=tuple(_unsaid(item) for item in data),
    )


def _scales(items: tuple[Item, ...], scale: Scalable) -> bool:
    """Whether the reps of a part may be written otherwise by their number alone."""
    item = item_at(items, scale.path)
    assert isinstance(item, Reps)
    by_group = any(change.reps is not None for change in item.by_group.values())
    each = item.sendoff is not None and item.sendoff.differs
    return not (by_group or item.by_round or each)


def _in_whole_turns(
    items: tuple[Item, ...], scale: Scalable, numbers: tuple[int, ...]
) -> tuple[int, ...]:
    """Of drills that are done in turn each comes, and as often as the others where it was written
    so.
    """
    item = item_at(items, scale.path)
    assert isinstance(item, Reps)
    turns = max((len(part.turns) for part in item.parts if part.turns), default=1)
    if scale.written % turns == 0:
        return tuple(number for number in numbers if number % turns == 0)
    return tuple(number for number in numbers if number >= min(turns, scale.written))


def _unsaid(item: Mapping[str, Any]) -> dict[str, Any]:
    """Items as they are written, without what was said of them on that evening."""
    own = {key: value for key, value in item.items() if key != "note"}
    if "items" in own:
        own["items"] = [_unsaid(inner) for inner in own["items"]]
    for key in ("by_group", "by_round"):
        if key in own:
            own[key] = {name: _unsaid(change) for name, change in own[key].items()}
    return own
