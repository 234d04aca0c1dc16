"""What of a lane group's day has to stay, whatever else is left out on the deck, so that it breaks
no rule of rest and safety that ``check`` holds a practice against.

Several changes may come together. So nothing is weighed by itself: what stays keeps the rules with
all else gone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.events import Rep
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import is_under
from almanac.arithmetic.warm_and_easy import Words, effort_words_of
from almanac.checks.after_fast import breath_of, too_soon
from almanac.checks.run_room import DayRoom
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class Stays:
    """An item of a part that has to stay, by the part's number and its path: its first rep of each
    round at the least, or all of it where that is not the one that counts (``is_whole``).
    """

    number: int
    path: DataPath
    is_whole: bool


@dataclass(frozen=True)
class PartOfDay:
    """A part as one lane group does it; ``least_gap_s`` goes by before it at the least, talk and
    changes.
    """

    swum: Swum
    clock: GroupClock
    least_gap_s: float = 0.0


@dataclass(frozen=True)
class DayOfCrew:
    """All that a lane group does, part after part, at the level of its squad."""

    analysis: Analysis
    level: str
    parts: tuple[PartOfDay, ...]

    def words(self, rep: Rep) -> Words:
        """The effort words of a rep."""
        return effort_words_of(rep, self.analysis.scale)

    def is_fast(self, rep: Rep) -> bool:
        """Whether anything of a rep counts as fast."""
        return not self.words(rep).isdisjoint(self.analysis.scale.fast)

    def dives(self, rep: Rep) -> bool:
        """Whether anything of a rep counts as work under water."""
        return is_under(rep, self.analysis.catalogue.policy.limit("push_off_most"))

    @cached_property
    def warms_up(self) -> Stays | None:
        """The item that warms up (``no-warm-up``): the first with a gentle rep, where fast work
        follows. None where there is nothing fast, or that goes first already.
        """
        scale, found = self.analysis.scale, None
        for number, rep in self._reps:
            if self.is_fast(rep):
                return found
            if found is None and not self.words(rep).isdisjoint(scale.gentle):
                found = Stays(number, rep.path, rep.number > 1)
        return None

    @cached_property
    def ends_easy(self) -> Stays | None:
        """The item that follows the hardest work (``no-easy-after-all-out``): the last that begins
        with a rep at the easiest effort, else that holds one. None where nothing is done at the
        hardest, or nothing easy follows it already.
        """
        scale, found = self.analysis.scale, list[Stays]()
        for number, rep in reversed(self._reps):
            words = self.words(rep)
            if scale.easiest in words:
                found.append(Stays(number, rep.path, rep.number > 1))
            elif scale.hardest in words:
                return min(found, key=lambda own: own.is_whole, default=None)
        return None

    @cached_property
    def room(self) -> DayRoom:
        """How much more of it there is room for."""
        return DayRoom.of(self.analysis, self.level, tuple(part.swum for part in self.parts))

    @property
    def has_dives(self) -> bool:
        """Whether it holds any work under water."""
        return any(self.dives(rep) for _, rep in self._reps)

    @cached_property
    def breathes_until(self) -> int:
        """The number of the last part up to which nothing may go, because the time it takes may
        lie between fast work and work under water (``under-water-after-fast``); -1 where time
        enough is left with all that is gentle gone.
        """
        under = [number for number, rep in self._reps if self.dives(rep)]
        if not under:
            return -1
        breath = breath_of(self.analysis)
        for number, part in enumerate(self.parts):
            breath.wait(part.least_gap_s if number else 0.0)
            left = [rep for rep in part.swum.reps if self.is_fast(rep) or self.dives(rep)]
            breath.swim(left, part.swum.course, replace(part.clock, changes=()))
        return max(under) if any(True for _ in too_soon(self.analysis, breath.found)) else -1

    def stays(self, number: int) -> tuple[Stays, ...]:
        """What has to stay of a part."""
        each = (self.warms_up, self.ends_easy)
        return tuple(own for own in each if own and own.number == number)

    @cached_property
    def _reps(self) -> tuple[tuple[int, Rep], ...]:
        return tuple(self._each_rep())

    def _each_rep(self) -> Iterator[tuple[int, Rep]]:
        for number, part in enumerate(self.parts):
            for rep in part.swum.reps:
                yield number, rep
