"""A set on the clock for one lane group: targets, send-offs, rest, gear changes, rated work.

Convention, stated wherever the clock is shown: the last rep's full send-off counts, so 8 × 50 on
1:00 is 8:00.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from operator import attrgetter

from almanac.arithmetic.assumed import targets
from almanac.arithmetic.events import Event, Rep
from almanac.arithmetic.gear_changes import gear_changes
from almanac.arithmetic.group_clock import DoesNotFit, GroupClock
from almanac.arithmetic.lane_order import LaneOrder, lane_order
from almanac.arithmetic.manners import until_all_done, wait_after
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.rest_rules import rest_after
from almanac.arithmetic.timed_reps import Like, TimedRep, likes_of, unlike, until_done
from almanac.arithmetic.working import Known, Labelled, Product, Sum, UpTo, Working, gathered
from almanac.model.gear import Gear
from almanac.model.policy import Policy
from almanac.source.reader import DataPath
from almanac.units import Course

_Paced = tuple[Rep, tuple[Target | NoNumber, ...], Target | NoNumber]


@dataclass(frozen=True)
class Clock:
    """Puts sets on the clock for one lane group in one course. ``most_in_lane`` is what the set
    says of the swimmers in a lane.
    """

    group: str
    pacer: Pacer
    policy: Policy
    gear: Mapping[str, Gear]
    most_in_lane: int | None = None

    @property
    def course(self) -> Course:
        """The course that it reckons in."""
        return self.pacer.course

    def run(self, events: tuple[Event, ...]) -> GroupClock:
        """The whole set on the clock: its reps, its pauses, and the gear changes that no pause
        covers.

        The last rep's full send-off counts, so 8 × 50 on 1:00 is 8:00.
        """
        reps = tuple(self._timed([event for event in events if isinstance(event, Rep)]))
        timed = {id(item.rep): item for item in reps}
        changes = tuple(gear_changes(events, self.gear, self.course))
        spent = [
            timed[id(event)].clock if isinstance(event, Rep) else Known(event.seconds, "pause", "s")
            for event in events
        ]
        waits = [Known(change.uncovered_s, "gear change", "s") for change in changes]
        known = [working for working in spent if working is not None]
        targets = [item.target.working for item in reps if isinstance(item.target, Target)]
        whole, unfit = len(known) == len(spent), tuple(self._unfit(reps))
        return GroupClock(
            group=self.group,
            reps=reps,
            changes=changes,
            clock=gathered([*known, *waits]) if whole else None,
            work=gathered(targets) if len(targets) == len(reps) and not unfit else None,
            unfit=unfit,
            last_touch=None if unfit or not whole else self.last_touch(events, reps, waits, known),
        )

    def last_touch(
        self,
        events: tuple[Event, ...],
        reps: tuple[TimedRep, ...],
        waits: list[Known],
        spent: list[Working],
    ) -> Working | None:
        """When the last swimmer of the fullest lane is home, in seconds from the start of the set:
        the leader's last start, then the waves before the last one, (swimmers at once − 1) × gap,
        and the time of the rep, of a pair or a team until the last of them has touched.
        """
        if not reps:
            return None
        last, order = reps[-1], reps[-1].order
        if not isinstance(last.target, Target):
            return None
        number = max(index for index, event in enumerate(events) if isinstance(event, Rep))
        start = Labelled(gathered([*spent[:number], *waits]), "leader's last start", "s")
        terms: list[Working] = [start, order.tail, last.all_done(last.target.working)]
        if order.waves > 1:
            before = Known((order.waves - 1) / order.waves, "waves before the last")
            terms.insert(1, Product((before, spent[number])))
        return Sum(tuple(terms))

    def _unfit(self, reps: Sequence[TimedRep]) -> Iterator[DoesNotFit]:
        """For each item with reps whose target is longer than the send-off, the worst of them."""
        if all(timed.fits for timed in unlike(reps)):
            return
        for path in dict.fromkeys(timed.rep.path for timed in reps if not timed.fits):
            own = [timed for timed in reps if timed.rep.path == path]
            fits_s = self.needed_s(own, "least")
            found = [
                DoesNotFit(timed, sendoff_s, done_s, fits_s)
                for timed in own
                if (sendoff_s := timed.sendoff_s) is not None
                and (done_s := timed.done_s) is not None
            ]
            yield max(found, key=lambda unfit: unfit.done_s - unfit.sendoff_s)

    def needed_s(self, reps: Sequence[TimedRep], which: str) -> float:
        """The least send-off that holds every known target of one item, of which there is one at
        least, and the rest after it.
        """
        needs = (self.need(timed.rep, timed.target, which) for timed in reps)
        return max(need.value for need in needs if need)

    def _timed(self, reps: Sequence[Rep]) -> Iterator[TimedRep]:
        """Each rep on the clock. Reps of one item at the same efforts differ in nothing else, and
        are worked out once.
        """
        paced: dict[Like, _Paced] = {}
        likes = likes_of(reps)
        for rep, like in zip(reps, likes, strict=True):
            if like not in paced:
                paced[like] = rep, *targets(self.pacer, rep, self.group)
        suggested = self._suggested(paced)
        known = {like: self._laid(*own, suggested.get(like)) for like, own in paced.items()}
        return (
            known[like].like(rep, self._aim(rep)) for rep, like in zip(reps, likes, strict=True)
        )

    def _aim(self, rep: Rep) -> Working | None:
        aim = rep.item.aim.of(self.group) if rep.item.aim else None
        return None if aim is None else Known(aim, "asked for", "s")

    def rep(self, rep: Rep) -> TimedRep:
        """One rep: its target, its send-off or rest, and what it takes of the clock.

        On a send-off it takes the send-off, and its rest is what the target leaves of it. With
        plain rest it leaves at target + rest, up to the next multiple of the policy's
        ``rest_step``. With neither it takes its target. In waves it takes no less than all of them
        need. A broken swim takes the rests inside it too; where others swim before one goes again,
        or one must climb out for a dive, the clock runs on until that is done (``wait_after``).
        Where a set names send-offs but none for this group, the suggested one stands in.
        """
        return next(self._timed([rep]))

    def _laid(
        self,
        rep: Rep,
        pieces: tuple[Target | NoNumber, ...],
        target: Target | NoNumber,
        suggestion: Working | None,
    ) -> TimedRep:
        item = rep.item
        order = self.order(rep)
        if item.sendoff is None:
            spent = self._without_sendoff(rep, target, order)
            return TimedRep(rep, pieces, target, None, False, spent, order)
        named = item.sendoff.of(self.group, rep.number)
        if named is None:
            return TimedRep(rep, pieces, target, suggestion, True, suggestion, order)
        sendoff: Working = Known(named, "send-off", "s")
        if item.sendoff.ratio != 1:
            sendoff = UpTo(Product((sendoff, Known(float(item.sendoff.ratio)))), self._step)
        return TimedRep(rep, pieces, target, sendoff, False, sendoff, order)

    def order(self, rep: Rep) -> LaneOrder:
        """How the group's fullest lane swims a rep."""
        return lane_order(rep, self.pacer.paces.group, self.policy, self.most_in_lane)

    def _without_sendoff(
        self, rep: Rep, target: Target | NoNumber, order: LaneOrder
    ) -> Working | None:
        if isinstance(target, NoNumber):
            return None
        done = until_done(rep, target.working)
        wait = wait_after(rep, done)
        rest = None if rep.item.rest is None else Known(rep.item.rest, "rest", "s")
        known = [after for after in (rest, wait) if after is not None]
        after = max(known, key=attrgetter("value")) if known else None
        own = Sum((done, after)) if after else done
        if rest is None and order.waves == 1:
            return own
        turns = order.least_interval(until_all_done(rep, done)) if order.waves > 1 else own
        leaves = UpTo(max(own, turns, key=attrgetter("value")), self.policy.limit("rest_step"))
        return Labelled(leaves, "with rest", "s")

    @property
    def _step(self) -> float:
        return self.policy.limit("sendoff_step")

    def _suggested(self, paced: Mapping[Like, _Paced]) -> dict[Like, Working | None]:
        """The suggested send-off of each sort of rep, where its item names none for the group."""
        items: dict[DataPath, dict[Like, Working | None]] = {}
        for like, (rep, _, target) in paced.items():
            if rep.item.sendoff is not None and rep.item.sendoff.of(self.group) is None:
                items.setdefault(rep.path, {})[like] = self.need(rep, target, "wanted")
        own_from = self.policy.limit("own_sendoff_from")
        return {
            like: sendoff
            for needs in items.values()
            for like, sendoff in zip(needs, suggest([*needs.values()], own_from), strict=True)
        }

    def need(self, rep: Rep, target: Target | NoNumber, which: str) -> Working | None:
        """The least multiple of the send-off step that holds a rep's target and the ``least`` or
        the ``wanted`` rest after it, and that the lane has room for: heads × gap, or all waves one
        after the other. None where the target is not known.
        """
        if isinstance(target, NoNumber):
            return None
        done, order = until_done(rep, target.working), self.order(rep)
        need: Working = Sum((done, self.rest_for(rep, target, which)))
        if order.heads > 1:
            room = order.least_interval(until_all_done(rep, done))
            need = max(need, room, key=attrgetter("value"))
        return UpTo(need, self._step)

    def rest_for(self, rep: Rep, target: Target, which: str) -> Working:
        """The ``least`` or the ``wanted`` rest after a rep; the wanted is never below the least,
        and neither below what goes by anyway while others swim their turns.
        """
        rest = partial(rest_after, rep, target.working, self.pacer.scale, self.policy, self.course)
        rests = [rest(asked) for asked in dict.fromkeys((which, "least"))]
        if wait := wait_after(rep, until_done(rep, target.working)):
            rests.append(wait)
        return max(rests, key=attrgetter("value"))


def suggest(needs: Sequence[Working | None], own_from: float) -> Sequence[Working | None]:
    """The suggested send-off of each rep of one item, from what each of them needs.

    One for the item, the largest, because a lane keeps one send-off in its head; but each rep its
    own where the largest and the least differ by the policy's ``own_sendoff_from`` seconds or more.
    None for all where one is not known: a send-off that some of the reps may not fit is no
    suggestion.
    """
    known = [need for need in needs if need is not None]
    if len(known) < len(needs):
        return [None] * len(needs)
    most = max(known, key=attrgetter("value"))
    least = min(need.value for need in known)
    return known if most.value - least >= own_from else [most] * len(known)
