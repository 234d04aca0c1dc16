"""Rules on variants of a set, and on the rounds and reps that a practice asks of it."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.scaling import REPS, ROUNDS, scalable
from almanac.checks.rule import Problem, forbids
from almanac.model.entry import Entry
from almanac.model.reps import Reps
from almanac.model.swim_set import Item, Round
from almanac.source.reader import DataPath


@forbids("variant-not-offered")
def variant_not_offered(analysis: Analysis) -> Iterator[Problem]:
    """A variant that reps or a part of a practice name is one that there is: of a set, one that it
    offers under ``variants``; of items in place, one that some of the reps have.
    """
    for swim_set in analysis.catalogue.sets.values():
        for name, path in _variants_named(swim_set.items, ("items",)):
            if name not in swim_set.variants:
                offered: Collection[str] = swim_set.variants
                yield _not_offered(swim_set, path, name, offered, "the set's 'variants'")
    for practice in analysis.catalogue.practices.values():
        for where, doing in practice.doings:
            named = dict(_variants_named(doing.items, (*where, "items")))
            known = analysis.catalogue.sets.get(doing.set or "")
            offered = known.variants if known else named
            for group, name in doing.variants.items():
                if name not in offered:
                    path = (*where, "variants", group)
                    of = "the set's 'variants'" if known else "'by_variant' of the reps here"
                    yield _not_offered(practice, path, name, offered, of)


@forbids("scale-not-offered")
def scale_not_offered(analysis: Analysis) -> Iterator[Problem]:
    """A part of a practice asks for rounds or reps that its set can be asked for: within the bounds
    that the set states, else up to what the policy lets a set hold (``most_reps``).
    """
    most = analysis.catalogue.policy.limit("most_reps")
    for practice in analysis.catalogue.practices.values():
        for where, doing in practice.doings:
            known = analysis.catalogue.sets.get(doing.set or "")
            for what, number in ((ROUNDS, doing.rounds), (REPS, doing.reps)):
                if number is None or known is None:
                    continue
                scale = scalable(known, what, most)
                if scale is None:
                    message = f"'{known.id}' has no {what} to ask for"
                    hint = "take it out, or write the part's items in place"
                elif not scale.least <= number <= scale.most:
                    message = f"'{known.id}' takes {scale.least} to {scale.most} {what}"
                    nearest = scale.least if number < scale.least else scale.most
                    hint = f"write {nearest}, or widen the bounds in the set ({what}_between)"
                else:
                    continue
                yield Problem(practice, (*where, what), message, hint)


def _variants_named(items: tuple[Item, ...], start: DataPath) -> Iterator[tuple[str, DataPath]]:
    for number, item in enumerate(items):
        here = (*start, number)
        if isinstance(item, (Reps, Round)):
            yield from ((name, (*here, "by_variant", name)) for name in item.by_variant)
        if isinstance(item, Round):
            yield from _variants_named(item.items, (*here, "items"))


def _not_offered(
    entry: Entry, path: DataPath, name: str, offered: Collection[str], of: str
) -> Problem:
    there = f"there are {', '.join(offered)}" if offered else "there are none"
    message = f"there is no variant '{name}': {there}"
    hint = f"name it under {of}" + (", or choose one of these" if offered else "")
    return Problem(entry, path, message, hint, of_key="by_variant" in path)


@forbids("variant-twice")
def variant_twice(analysis: Analysis) -> Iterator[Problem]:
    """No lane group is given two variants of a set."""
    for own in analysis.catalogue.sets.values():
        given_to: dict[str, str] = {}
        for name, groups in own.variants.items():
            for number, group in enumerate(groups):
                first = given_to.setdefault(group, name)
                if first != name:
                    title = analysis.catalogue.lane_groups[group].title
                    message = f"{title}: given {name}, and {first} before it"
                    path = ("variants", name, number)
                    yield Problem(own, path, message, "give it one of the two")
