"""What is told of a piece whoever does it: its title, its goals, drills, gear and strokes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.pieces import (
    PART,
    TENTHS,
    PracticePiece,
)
from almanac.arithmetic.events import Piece as Swum
from almanac.arithmetic.events import Rep
from almanac.arithmetic.glance import chief_drill
from almanac.arithmetic.warm_and_easy import effort_words_of
from almanac.model.drill import Drill
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import (
    KICK,
    TO_WARM_UP,
)
from almanac.report.compose.candidate import Candidate
from almanac.report.compose.laid import Laid
from almanac.report.compose.roles import PieceRoles
from almanac.report.compose.serves import Served, Serving
from almanac.units import Course
from almanac.wording.reading import asked_for


@dataclass(frozen=True)
class Places:
    """Where words and entries stand in the table."""

    goals: Mapping[str, int]
    efforts: Mapping[str, int]
    strokes: Mapping[str, int]
    gear: Mapping[str, int]
    drills: Mapping[str, int]


@dataclass(frozen=True)
class PieceFacts:
    """Tells of candidates as pieces."""

    analysis: Analysis
    places: Places
    talk_most_s: int

    @cached_property
    def _roles(self) -> PieceRoles:
        return PieceRoles(self.analysis)

    @cached_property
    def _serving(self) -> Serving:
        return Serving(self.analysis)

    def is_elsewhere(self, swim_set: SwimSet, course: Course) -> bool:
        """Whether a set opens practices in pools of another course alone."""
        pools = self.analysis.catalogue.club.pools
        opened = {
            pools[practice.pool].course
            for practice in self.analysis.computable_practices.values()
            if practice.parts[0].set == swim_set.id
        }
        opens = bool(opened) or TO_WARM_UP in swim_set.goals
        return opens and course not in {swim_set.course, *opened}

    def piece(self, own: Candidate, laid: Laid) -> PracticePiece:
        """A candidate as a piece, by how it is swum as written."""
        reps = laid.run.every_rep
        pieces = [piece for rep in reps for piece in rep.pieces]
        drills = list(dict.fromkeys(piece.drill.id for piece in pieces))
        roles = self._roles.roles(own, reps)
        gear = list(dict.fromkeys(id for piece in pieces for id in piece.gear))
        serves = self._serving.of(own, reps, roles)
        chief = self._chief(serves, pieces)
        return PracticePiece(
            of=own.of,
            id=own.id,
            part=own.part,
            title=self._title(own),
            roles=roles,
            goals=tuple(self.places.goals[one.goal] for one in serves),
            shares=tuple(one.share for one in serves),
            shows=tuple(one.show for one in serves),
            drills=tuple(sorted(self.places.drills[id] for id in drills)),
            asks=self._asks(drills),
            strokes=self._strokes(pieces),
            kick=_kick(pieces),
            hardest=max(self._efforts(reps)),
            effort=self._serving.effort(reps, self.places.efforts),
            gear=_placed(gear, self.places.gear),
            begins=_placed(_at(laid, 0), self.places.gear),
            ends=_placed(_at(laid, -1), self.places.gear),
            most_in_lane=laid.run.most_in_lane or 0,
            talk=TENTHS * min(self.talk_most_s, self._roles.talk(own, roles)),
            cue=_cue(chief),
            called=_called(chief, serves) if own.of == PART and chief else self._title(own),
            what=own.scale.what if own.scale else "",
            written=own.scale.written if own.scale else 1,
        )

    def _title(self, own: Candidate) -> str:
        if own.swim_set:
            return own.swim_set.title
        if own.drill:
            return own.drill.title
        parts = self.analysis.catalogue.words("practice-parts")
        practice = self.analysis.catalogue.practices[own.id]
        return f"{parts[own.word].title} of “{practice.title}”"

    def _efforts(self, reps: Iterable[Rep]) -> set[int]:
        words = {word for rep in reps for word in effort_words_of(rep, self.analysis.scale)}
        return {self.places.efforts[word] for word in words}

    def _asks(self, drills: Sequence[str]) -> tuple[int, ...]:
        every = self.analysis.catalogue.drills
        needs = {need for id in drills for need in every[id].needs_first}
        return tuple(sorted(self.places.drills[need] for need in needs - set(drills)))

    def _strokes(self, pieces: Sequence[Swum]) -> tuple[int, ...]:
        swum = {piece.drill.stroke for piece in pieces if piece.drill.mode != KICK}
        words = self.analysis.catalogue.words("strokes")
        return tuple(sorted(self.places.strokes[word] for word in swum if not words[word].quiet))

    def _chief(self, serves: Sequence[Served], pieces: Sequence[Swum]) -> Drill | None:
        """The drill that it is most about: of what serves its chief goal, else of all but plain
        stroke, else of all.
        """
        first = next((one.drill for one in serves if one.drill), "")
        if first:
            return self.analysis.catalogue.drills[first]
        taught = [own for own in pieces if not own.drill.is_full_stroke]
        return chief_drill(taught) or chief_drill(pieces)


def _placed(ids: Iterable[str], places: Mapping[str, int]) -> tuple[int, ...]:
    return tuple(sorted(places[id] for id in dict.fromkeys(ids)))


def _at(laid: Laid, end: int) -> tuple[str, ...]:
    """The gear that is worn at the first (0) or the last (-1) length, by whichever group."""
    each = [swum.reps for swum in laid.swums if swum.reps]
    return tuple(id for reps in each for id in reps[end].pieces[end].gear)


def _called(chief: Drill, serves: Sequence[Served]) -> str:
    """What a part is called by: its chief drill, with the length of its reps: Freestyle 200s."""
    each = next((one.each for one in serves if one.drill), 0)
    return f"{chief.title} {each}s" if each else chief.title


def _cue(chief: Drill | None) -> str:
    """The first cue of the drill that it is most about that nobody can mistake when it stands
    alone: what every lane hears; "" where there is none.
    """
    return next(filter(_is_harmless, chief.cues), "") if chief else ""


@cache
def _is_harmless(cue: str) -> bool:
    """Whether a cue asks for no danger where nothing else is said: a drill says the rest."""
    return not any(True for _ in asked_for(ended(cue)))


def ended(text: str) -> str:
    """A text as a sentence."""
    return text if text.endswith((".", "!", "?")) else f"{text}."


def _kick(pieces: Sequence[Swum]) -> int:
    whole = sum(piece.distance for piece in pieces)
    legs = sum(piece.distance for piece in pieces if piece.drill.mode == KICK)
    return int(1000 * legs // whole) if whole else 0
