"""The pieces that a practice is composed of, with their figures: whole numbers alone. Times are
tenths of seconds and rounded up; metres are rounded up.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

TENTHS = 10
"""In a second."""
UNKNOWN = -1
"""In place of a number that there is none of."""

SET, PART, DRILL = "set", "part", "drill"
"""Where a piece comes from: a set, a part of a practice, or a drill in its own dose."""
HELD = "held"
"""A part of a practice that is opened to be changed, which stands as it is written and in no
other.
"""
PLACES = "0123456789AB"
"""What held parts stand as, each by its place among the parts of its practice; no letter of
``ROLES`` is among them.
"""
WARM_UP, SKILL, MAIN, EASY, COOL_DOWN = ROLES = "wsmec"
"""What a piece may stand as. ``EASY`` is relief: easy swimming that carries what was trained."""


@dataclass(frozen=True)
class PracticePiece:
    """Something that can stand in a practice, whoever does it.

    ``of`` says where it comes from (``SET``, ``PART`` or ``DRILL``), ``id`` of which entry,
    ``part`` which part of a practice from 0. ``roles`` are the letters that it may stand as.
    ``goals`` are by their place in the table, the chief one first, with ``shares``, permille of its
    metres that serve each (0: it is written for it, and no line shows it), and ``shows``, what in
    it does. ``drills`` are what it has done, and ``asks`` what these need first and it does not
    itself hold. ``strokes`` are those of its full-stroke metres, ``kick`` permille of its metres
    that are legs alone, ``hardest`` its hardest effort by place, ``effort`` the hardest that a fair
    share of it is swum at. ``begins`` and ``ends`` are the gear worn at its first and at its last
    length, ``gear`` all of it; of these no more than ``most_in_lane`` swimmers of a lane use it at
    once (0: all). ``talk`` goes before it. ``cue`` is what every
    lane hears, ``called`` what it is called in a title. ``what`` is scaled,
    rounds or reps ("" for nothing), ``written`` is how often.
    """

    of: str
    id: str
    part: int
    title: str
    roles: str
    goals: tuple[int, ...]
    shares: tuple[int, ...]
    shows: tuple[str, ...]
    drills: tuple[int, ...]
    asks: tuple[int, ...]
    strokes: tuple[int, ...]
    kick: int
    hardest: int
    effort: int
    gear: tuple[int, ...]
    begins: tuple[int, ...]
    ends: tuple[int, ...]
    most_in_lane: int
    talk: int
    what: str
    written: int
    cue: str
    called: str

    @property
    def key(self) -> str:
        """Its name for whoever composes: ``set/kick-and-go``, ``part/osprey-chute/0``."""
        return f"{self.of}/{self.id}" + (f"/{self.part}" if self.of in (PART, HELD) else "")


@dataclass(frozen=True)
class Size:
    """A piece done so many times, at one squad in one pool.

    ``distance`` is in the pool's unit. ``times`` hold for each lane group of the squad, in the
    club's order, what it takes with the lanes and heads that it usually has: until its clock is
    over and its last swimmer home; None where it is not for that group, or its time is not known.
    ``fast``, ``resisted``, ``plates`` and ``under`` are metres, of the lane group with the most.
    ``goes_under`` is how long after its start somebody first goes under water with no fast work of
    the piece before that; ``calm`` how long before its end the last fast work was over; ``UNKNOWN``
    where nothing is. ``doses`` are permille of what a drill's dose lets the level do in a practice:
    by drill, where all of it is plain, and where some of it is not.
    """

    number: int
    distance: int
    times: tuple[int | None, ...]
    fast: int
    resisted: int
    plates: int
    under: int
    goes_under: int
    calm: int
    doses: tuple[tuple[int, int, int], ...]


@dataclass(frozen=True)
class Sizes:
    """Sizes that grow evenly: ``first``, and so many ``more`` of them, each ``each`` above the one
    before in its number, distance, times, doses and what else is counted.
    """

    first: Size
    more: int = 0
    each: Size | None = None

    @cached_property
    def all(self) -> tuple[Size, ...]:
        """Every size, by number."""
        return tuple(self._grown(times) for times in range(self.more + 1))

    def _grown(self, times: int) -> Size:
        first, each = self.first, self.each
        if not times or each is None:
            return first
        both = zip(first.times, each.times, strict=True)
        doses = zip(first.doses, each.doses, strict=True)
        return Size(
            first.number + times * each.number,
            first.distance + times * each.distance,
            tuple(
                None if one is None or more is None else one + times * more for one, more in both
            ),
            first.fast + times * each.fast,
            first.resisted + times * each.resisted,
            first.plates + times * each.plates,
            first.under + times * each.under,
            first.goes_under,
            first.calm,
            tuple(
                (one[0], one[1] + times * more[1], one[2] + times * more[2]) for one, more in doses
            ),
        )


@dataclass(frozen=True)
class Offer:
    """A piece as a squad may do it in a pool, with the ``adults`` that it needs. ``room`` is by
    lane group the most swimmers that a lane has room for (0: nothing says so). ``runs`` are its
    sizes, by number.
    """

    piece: int
    adults: int
    room: tuple[int, ...]
    runs: tuple[Sizes, ...]

    @cached_property
    def sizes(self) -> tuple[Size, ...]:
        """Every size, by number."""
        return tuple(size for run in self.runs for size in run.all)
