"""The blocks of a run as JSON: seconds to the tenth, so rounded that they add up to the clock."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from typing import Any

from almanac.arithmetic.lap_ends import Ends
from almanac.arithmetic.pace import Target
from almanac.arithmetic.run_blocks import Block, RepsBlock, RoundsBlock, WaitBlock, home_s
from almanac.arithmetic.timed_reps import TimedRep
from almanac.checks.run_offers import CrewOffer, RepsOffer, RoundsOffer
from almanac.checks.run_room import AGAIN_MOST
from almanac.model.catalogue import Catalogue
from almanac.report.run.items import item_json, number
from almanac.report.shown import shown_rest
from almanac.units import Course

_OF_EACH = ("target", "rest", "home", "aim", "gap", "marks")


@dataclass
class ItemsOfPart:
    """The items of a part, each once, in the order in which they are first met."""

    catalogue: Catalogue
    course: Course
    items: list[dict[str, Any]] = field(default_factory=list)
    _places: dict[int, tuple[Any, int]] = field(default_factory=dict)

    def place(self, timed: TimedRep) -> int:
        """Where the item of a rep stands among them."""
        item = timed.rep.item
        if id(item) not in self._places:
            told = item_json(self.catalogue, timed.rep, self.course)
            if told not in self.items:
                self.items.append(told)
            self._places[id(item)] = item, self.items.index(told)
        return self._places[id(item)][1]


@dataclass
class BlocksOfCrew:
    """Writes the blocks of those who go together in one part, one after the other. ``begins`` says
    of each of their reps at which ends of the pool it may begin, nothing on land. ``has_home`` is
    False where nobody comes home to a wall, or does so only after the send-off.
    """

    items: ItemsOfPart
    begins: Sequence[Ends]
    offer: CrewOffer
    has_home: bool = True
    _at_s: float = 0.0  # the exact moment on the clock of the part
    _numbers: dict[int, tuple[TimedRep, tuple[Any, ...]]] = field(default_factory=dict)
    _known: dict[tuple[Any, ...], tuple[dict[str, Any], float]] = field(default_factory=dict)

    def written(self, blocks: Iterable[Block]) -> list[dict[str, Any]]:
        """The blocks as JSON."""
        return [self._block(block) for block in blocks]

    def _block(self, block: Block) -> dict[str, Any]:
        if isinstance(block, RepsBlock):
            return self._reps(block)
        if isinstance(block, WaitBlock):
            return self._wait(block)
        return self._rounds(block)

    def _takes(self, seconds: float) -> int | float:
        """What goes by, in tenths: the difference of two moments as they are shown, so that what
        is rounded is never lost.
        """
        before, self._at_s = self._at_s, self._at_s + seconds
        return number(number(self._at_s) - number(before))

    def _every(self, timed: TimedRep) -> int | float | None:
        return None if timed.clock is None else self._takes(timed.clock.value)

    def _reps(self, block: RepsBlock) -> dict[str, Any]:
        """The reps of a block; those of another round that take the same, in whole tenths, once."""
        begins = self.begins[block.first] if self.begins else frozenset[str]()
        like = begins, *(id(timed.pieces) for timed in block.reps)
        if like in self._known:
            told, takes_s = self._known[like]
            self._at_s += takes_s
            return told
        before, told = self._at_s, self._told_of(block, begins)
        each = [timed.clock.value for timed in block.reps if timed.clock]
        if all(round(value, 1) == value for value in each) and round(before, 1) == before:
            self._known[like] = told, sum(each)
        return told

    def _told_of(self, block: RepsBlock, begins: Ends) -> dict[str, Any]:
        first, known = block.reps[0], [self._of_each(timed) for timed in block.reps]
        told = dict(zip(_OF_EACH, map(_once, zip(*known, strict=True)), strict=True))
        order, item = first.order, first.rep.item
        go = "" if item.sendoff is not None else "straight" if item.rest is None else "rest"
        in_turn = any(part.turns for part in item.parts)
        does = [own.rep.pieces[0].drill.id for own in block.reps] if in_turn else []
        more: dict[str, Any] = {
            "go": go,
            "aim": told["aim"],
            "gap": told["gap"],
            "in_lane": order.heads if order.heads > 1 else 0,
            "waves": order.waves if order.waves > 1 else 0,
            "at_once": order.at_once if order.waves > 1 else 0,
            "begins": next(iter(begins)) if len(begins) == 1 else "",
            "does": does if len(set(does)) > 1 else [],
            "suggested": first.suggested,
            "marks": list(dict.fromkeys(mark for *_, marks in known for mark in marks)),
        }
        return {
            "item": self.items.place(first),
            "reps": len(block.reps),
            "every": _once(map(self._every, block.reps)),
            "target": told["target"],
            "rest": told["rest"],
            **({"home": told["home"]} if self.has_home else {}),
            **{key: value for key, value in more.items() if value},
            **_reps_offer(self.offer.reps[first.rep.path]),
        }

    def _of_each(self, timed: TimedRep) -> tuple[Any, ...]:
        """What differs from rep to rep; reps of one item at one effort share it."""
        if id(timed.pieces) not in self._numbers:
            rest, home = shown_rest(timed), home_s(timed)
            told = (
                None if timed.target_s is None else number(timed.target_s),
                None if rest is None else number(float(rest)),
                None if home is None else number(home),
                timed.aim and number(timed.aim.value),
                number(timed.order.gap_s) if timed.order.heads > 1 else 0,
                _marks(timed),
            )
            self._numbers[id(timed.pieces)] = timed, told
        return self._numbers[id(timed.pieces)][1]

    def _wait(self, block: WaitBlock) -> dict[str, Any]:
        told: dict[str, Any] = {"wait": self._takes(block.seconds), "why": block.why.name.lower()}
        if block.note:
            told["note"] = block.note
        if block.change:
            more = {
                "on": sorted(block.change.on),
                "off": sorted(block.change.off),
                "far": block.change.at_far_end,
            }
            told |= {key: value for key, value in more.items() if value}
        return told

    def _rounds(self, block: RoundsBlock) -> dict[str, Any]:
        written = []
        for number_, blocks in enumerate(block.rounds, 1):
            written.append(self.written(blocks))
            if number_ < len(block.rounds):
                self._takes(block.between_s)
        each = [(len(list(same)), own) for own, same in groupby(written)]
        told: dict[str, Any] = {
            "rounds": [{"times": times, "blocks": blocks} for times, blocks in each]
        }
        told |= {"between": number(block.between_s)} if block.between_s else {}
        offer = self.offer.rounds.get(block.path)
        return {**told, **_rounds_offer(offer)} if offer else told


def _reps_offer(offer: RepsOffer) -> dict[str, Any]:
    fewest = offer.fewest if offer.fewer and offer.fewest > 1 else 0
    told = {"more": list(offer.more), "fewer": offer.fewer, "fewest": fewest, "sit": offer.sit}
    again = {"again": offer.again} if offer.again < AGAIN_MOST else {}
    return {key: value for key, value in told.items() if value} | again


def _rounds_offer(offer: RoundsOffer) -> dict[str, Any]:
    more = {"keeps_last": offer.keeps_last, "copies": offer.copies}
    told = {"least": offer.least, "most": offer.most}
    return told | {key: value for key, value in more.items() if value}


def _once(each: Iterable[Any]) -> Any:
    """One value for all reps, or one for each where they differ."""
    values = list(each)
    return values[0] if values.count(values[0]) == len(values) else values


def _marks(timed: TimedRep) -> tuple[str, ...]:
    """What the target of a rep stands on, where that is less than fresh tests of this pool; or what
    is amiss with it.
    """
    target = timed.target
    if not isinstance(target, Target):
        return ("unknown",)
    holds = {
        "assumed": target.assumed,
        "estimated": target.estimated,
        "other pool": target.other_course,
        "old test": target.stale,
        "does not fit": not timed.fits,
    }
    return tuple(mark for mark, is_so in holds.items() if is_so)
