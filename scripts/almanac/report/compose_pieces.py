"""Which pieces of the catalogue a practice may be composed of: sets, parts of practices that stand
by themselves, and drills in their own dose.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing_pieces import DRILL, PART, SET
from almanac.arithmetic.scaling import (
    REPS,
    ROUNDS,
    Scalable,
    item_at,
    scalable,
    scalable_of,
    scaled_items,
)
from almanac.model.drill import Drill
from almanac.model.effort_plans import Hold
from almanac.model.practice import Practice, PracticePart
from almanac.model.reps import Part, Reps
from almanac.model.swim_set import Item, SwimSet
from almanac.model.vocabularies import TESTS
from almanac.report.bound_parts import bound_by, is_plain
from almanac.units import show_time

DRILLS_A_GOAL = 3
"""So many drills are offered for a goal in their own dose: the sets teach most of what there is."""
MORE_REPS = 6
"""How many reps more, or fewer, than written a part that stands by itself is offered with."""


@dataclass(frozen=True)
class Candidate:
    """A piece before it is laid out: where it comes from and its items, what of them is scaled, and
    to which ``numbers``. ``word`` is the part of a practice that it was written for ("" where it is
    a set or a drill); ``follows`` whether a main part goes before it there, ``talk_s`` the talk it
    had there. ``written`` are a part's items as its file has them, without notes.
    """

    of: str
    id: str
    part: int
    items: tuple[Item, ...]
    scale: Scalable | None
    numbers: tuple[int, ...]
    swim_set: SwimSet | None = None
    drill: Drill | None = None
    word: str = ""
    follows: bool = False
    talk_s: int | None = None
    written: tuple[Any, ...] = ()

    @property
    def alike(self) -> str:
        """The same for parts that are one piece."""
        return f"{self.written} {self.word}"


def candidates(analysis: Analysis, squad: str, broken: frozenset[str]) -> Iterator[Candidate]:
    """Every candidate for a squad, in the order of the table: sets, then parts, then drills, each
    by id. ``broken`` are files with an error; nothing of them is offered.
    """
    catalogue = analysis.catalogue
    for _, swim_set in sorted(analysis.computable.items()):
        squads = {catalogue.lane_groups[group].squad for group in analysis.meant(swim_set)}
        if squad in squads and swim_set.file not in broken and not swim_set.is_on_land:
            yield _of_set(analysis, swim_set)
    known: set[str] = set()
    for practice, number in _parts_alone(analysis, squad, broken):
        own = _of_part(analysis, practice, number)
        if own.alike not in known:
            known.add(own.alike)
            yield own
    for drill in _chosen_drills(analysis, squad):
        if drill.file not in broken:
            yield _of_drill(analysis, drill)


def _parts_alone(
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
    for practice, number in _parts_alone(analysis, squad):
        own = _of_part(analysis, practice, number)
        key = first.setdefault(own.alike, f"{PART}/{practice.id}/{number}")
        found[practice.id, number] = key
    return found


def other_sizes(analysis: Analysis, practice: Practice, number: int) -> Iterator[tuple[Item, ...]]:
    """The items of a part that stands by itself: as written, and with more or fewer reps."""
    own = _of_part(analysis, practice, number)
    yield own.items
    if own.scale:
        for often in own.numbers:
            yield scaled_items(own.items, own.scale, often)


def _chosen_drills(analysis: Analysis, squad: str) -> list[Drill]:
    """For each goal a few drills that a squad may do: those of its own level before easier ones, in
    the order of teaching; by id.
    """
    order = list(analysis.catalogue.words("levels"))
    level = order.index(analysis.catalogue.club.squads[squad].level)
    taught = [analysis.catalogue.drills[id] for id in analysis.teaching_order]
    fit = [own for own in taught if is_plain(own) and own.dose.distance and not own.is_full_stroke]
    fit = [own for own in fit if order.index(own.level) <= level]
    found: dict[str, Drill] = {}
    for goal in analysis.catalogue.words("goals"):
        of_goal = [own for own in fit if own.goals[0] == goal]
        of_goal.sort(key=lambda own: -order.index(own.level))
        found |= {own.id: own for own in of_goal[:DRILLS_A_GOAL]}
    return [found[id] for id in sorted(found)]


def _of_set(analysis: Analysis, swim_set: SwimSet) -> Candidate:
    most = analysis.catalogue.policy.limit("most_reps")
    found = scalable(swim_set, ROUNDS, most) or scalable(swim_set, REPS, most)
    scale = found if found and len(found.offered()) > 1 else None
    numbers = tuple(scale.offered()) if scale else ()
    return Candidate(SET, swim_set.id, 0, swim_set.items, scale, numbers, swim_set=swim_set)


def _stands_alone(analysis: Analysis, part: PracticePart) -> bool:
    """Whether a part makes sense in another practice: items that nothing binds."""
    return bool(part.items) and not part.set and not bound_by(analysis, part)


def _of_part(analysis: Analysis, practice: Practice, number: int) -> Candidate:
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


def _of_drill(analysis: Analysis, drill: Drill) -> Candidate:
    """A drill in its own dose, at its easiest effort."""
    dose = drill.dose
    numbers = tuple(range(dose.reps.least, min(dose.reps.most, dose.most) + 1))
    part = Part(dose.distance or 0, drill.id, Hold(drill.effort.easiest), drill.gear.needs)
    item = Reps(reps=numbers[0], parts=(part,), rest=dose.rest, gear=drill.gear.needs)
    written = {
        "reps": numbers[0],
        "distance": dose.distance,
        "do": drill.id,
        "effort": drill.effort.easiest,
        "rest": show_time(dose.rest),
    }
    scale = scalable_of((item,), REPS, analysis.catalogue.policy.limit("most_reps"))
    return Candidate(DRILL, drill.id, 0, (item,), scale, numbers, drill=drill, written=(written,))
