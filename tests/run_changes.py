"""What a change that a run offers makes of a practice, written as a practice of its own: so that
``check`` can be asked what it says of it. A change of one lane group is made of all of them where
all are offered it.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace

from almanac.analysis.analysis import Analysis
from almanac.checks import RULES
from almanac.checks.run_days import RunOffers, practice_offers
from almanac.model.catalogue import Catalogue
from almanac.model.practice import Practice, PracticePart
from almanac.model.reps import Reps
from almanac.model.swim_set import Item, Round
from almanac.source.reader import DataPath

CODES = {
    "no-warm-up", "no-easy-after-all-out", "under-water-after-fast", "under-water-rest",
    "under-water-set",
    "under-water-practice", "under-water-rep", "drill-dose", "resisted-dose", "resisted-rep",
    "plates-dose",
    "sendoff-too-tight", "start-forbidden", "start-depth", "depth-unfit", "land-long",
    "gear-not-for",
    "back-without-flags",
}  # fmt: skip


@dataclass(frozen=True)
class Changed:
    """A practice after a change, and what the change was."""

    what: str
    practice: Practice


def plain(analysis: Analysis, practice: Practice) -> Practice:
    """The practice with its sets as items in place, so that they can be changed. Variants stay as
    they are.
    """
    sets = analysis.catalogue.sets
    parts = tuple(
        replace(part, set=None, items=sets[part.set].items)
        if part.set and not (part.variants or part.rounds or part.reps or sets[part.set].variants)
        else part
        for part in practice.parts
    )
    return replace(practice, parts=parts)


def offered(analysis: Analysis, practice: Practice) -> Iterator[tuple[bool, Changed]]:
    """Changes of a practice, and whether each is offered: parts that go, fewer reps, rounds, and
    stops after which nothing of the part is done.
    """
    summary = analysis.practices[practice.id]
    offers, own = practice_offers(analysis, summary), plain(analysis, practice)
    for number, row in enumerate(summary.sheet):
        place = row.stage.number - 1
        part = own.parts[place]
        if not row.is_for_all:
            continue
        gone = own.parts[:place] + own.parts[place + 1 :]
        if len(own.parts) > 1 and place < len(own.parts) - 1:
            yield number in offers.skips, Changed(f"skip {place}", replace(own, parts=gone))
        if part.set:
            continue
        for is_offered, what, items in _of_part(offers, number, part):
            changed = replace(part, items=items)
            parts = (*own.parts[:place], changed, *own.parts[place + 1 :])
            yield is_offered, Changed(f"part {place}: {what}", replace(own, parts=parts))


def _of_part(
    offers: RunOffers, number: int, part: PracticePart
) -> Iterator[tuple[bool, str, tuple[Item, ...]]]:
    crews = [own for (place, _), own in offers.crews.items() if place == number]
    for path, reps in _reps(part.items, ("items",)):
        each = [crew.reps[path] for crew in crews if path in crew.reps]
        if not each or reps.by_group or reps.by_round:
            continue
        fewer = each[0].fewer
        if fewer:
            for left in range(reps.reps - fewer, 0, -fewer):
                items = _with(part.items, path, replace(reps, reps=left))
                yield True, f"{left} reps of {path}", items
        sits = all(own.sit for own in each)
        yield sits, f"none of {path}", _with(part.items, path, None)
    for path, own in {path: own for crew in crews for path, own in crew.rounds.items()}.items():
        item = part.items[int(path[1])]
        assert isinstance(item, Round)
        for rounds in range(own.least, own.most + 1) if not item.by_group else ():
            items = _with(part.items, path, replace(item, rounds=rounds))
            yield True, f"{rounds} rounds of {path}", items
    meets = all(crew.meet for crew in crews)
    for place, item in enumerate(part.items):
        if isinstance(item, Reps):
            for done in range(1, item.reps + 1):
                stopped = (*part.items[:place], replace(item, reps=done))
                yield meets, f"stopped after {done} of item {place}", stopped


def together(
    analysis: Analysis, practice: Practice, chance: random.Random, often: float
) -> Practice:
    """Many changes that are offered, made together, each as far as it goes: items sat out or cut to
    their fewest reps, rounds to the least or the most, parts skipped.
    """
    summary = analysis.practices[practice.id]
    offers, own = practice_offers(analysis, summary), plain(analysis, practice)
    parts: list[PracticePart | None] = list(own.parts)
    for number, row in enumerate(summary.sheet):
        place = row.stage.number - 1
        part = own.parts[place]
        if not row.is_for_all or part.set:
            continue
        if number in offers.skips and chance.random() < often / 2:
            parts[place] = None
            continue
        crews = [crew for (at, _), crew in offers.crews.items() if at == number]
        items = part.items
        for path, reps in reversed(
            [*_reps(part.items, ("items",))]
        ):  # what goes moves nothing before it
            each = [crew.reps[path] for crew in crews if path in crew.reps]
            if not each or reps.by_group or chance.random() >= often:
                continue
            if all(one.sit for one in each):
                items = _with(items, path, None)
            elif all(one.fewer for one in each):
                fewest = max(one.fewest for one in each)
                left = range(reps.reps, fewest - 1, -max(one.fewer for one in each))[-1]
                items = _with(items, path, replace(reps, reps=left))
        for path, round_ in {
            path: one for crew in crews for path, one in crew.rounds.items()
        }.items():
            item = part.items[int(path[1])]
            if items == part.items and isinstance(item, Round) and not item.by_group:
                rounds = chance.choice((round_.least, round_.most))
                items = _with(items, path, replace(item, rounds=rounds))
        parts[place] = replace(part, items=items) if items else None
    return replace(own, parts=tuple(part for part in parts if part))


def _reps(items: tuple[Item, ...], path: DataPath) -> Iterator[tuple[DataPath, Reps]]:
    for number, item in enumerate(items):
        if isinstance(item, Reps):
            yield (*path, number), item
        elif isinstance(item, Round):
            yield from _reps(item.items, (*path, number, "items"))


def _with(items: tuple[Item, ...], path: DataPath, item: Item | None) -> tuple[Item, ...]:
    """Items with another in the place of one; without it where there is none, and without rounds of
    nothing.
    """
    place, rest = int(path[1]), path[2:]
    inner = items[place]
    if rest and isinstance(inner, Round):
        held = _with(inner.items, rest, item)
        swims = any(isinstance(own, (Reps, Round)) for own in held)
        return _with(items, path[:2], replace(inner, items=held) if swims else None)
    return (*items[:place], *((item,) if item else ()), *items[place + 1 :])


def broken(analysis: Analysis, practice: Practice) -> set[str]:
    """The codes of the rules of rest, order and safety that a practice breaks, alone in its
    club.
    """
    sets = {doing.set for _, doing in practice.doings}
    kept = {
        key: entry
        for key, entry in analysis.catalogue.entries.items()
        if entry.kind not in ("practice", "block", "log", "progression", "fault")
        and (entry.kind != "set" or entry.id in sets)
    }
    documents = analysis.catalogue.documents
    alone = Catalogue({**kept, ("practice", practice.id): practice}, documents, {})
    own = Analysis(alone, analysis.today)
    found = (one.finding for rule in RULES if rule.code in CODES for one in rule.breaches(own))
    return {one.code for one in found if one.place.file == practice.file}
