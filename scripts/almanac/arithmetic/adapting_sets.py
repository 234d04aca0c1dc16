"""How a set fits a need, by its drills and by what it asks of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.adapting import Answers, own_line
from almanac.frozen import quick
from almanac.model.drill import Drill
from almanac.model.entry import Ids
from almanac.model.need import AS_IS, CHANGED, LEAVE_OUT, Adapt, Need


@dataclass(frozen=True)
class SetAsks:
    """What a set asks: its drills, the gear worn in it, and its words of efforts and of starts."""

    drills: Sequence[Drill]
    gear: Ids = ()
    efforts: Ids = ()
    starts: Ids = ()


@quick
@dataclass(frozen=True)
class SetAnswer:
    """How a set of so many ``drills`` fits a need: those that are left out, each with what is done
    instead, None for nothing; those that are changed; the gear, the efforts and the starts that are
    left out; what changes at its efforts and starts; and what the set says itself, None where it
    says nothing.
    """

    need: str
    drills: int
    left_out: tuple[tuple[Drill, Drill | None], ...]
    changed: tuple[Drill, ...]
    without: Ids
    efforts: Ids
    starts: Ids
    changes: Ids
    own: Adapt | None

    @property
    def leaves_out(self) -> bool:
        """Whether something of it is left out."""
        return bool(self.left_out or self.without or self.efforts or self.starts)

    @property
    def fits(self) -> str:
        """As the set says; else left out where all its drills are, as it is where all are."""
        if self.own:
            return self.own.fits
        if self.left_out and len(self.left_out) == self.drills:
            return LEAVE_OUT
        return CHANGED if self.leaves_out or self.changed or self.changes else AS_IS


def set_answers(
    needs: Mapping[str, Need], known: Answers, asked: SetAsks, own: Iterable[Adapt] = ()
) -> Iterator[SetAnswer]:
    """How what a set asks fits each need."""
    lines = tuple(own)
    for id, need in needs.items():
        fits = {drill.id: known.of[id, drill.id] for drill in asked.drills}
        left = [drill for drill in asked.drills if fits[drill.id].is_left_out]
        efforts, easier = _of_words(known, need, "efforts", asked.efforts)
        starts, other = _of_words(known, need, "starts", asked.starts)
        yield SetAnswer(
            id,
            len(asked.drills),
            tuple((drill, known.instead(id, drill)) for drill in left),
            tuple(drill for drill in asked.drills if fits[drill.id].fits == CHANGED),
            tuple(gear for gear in asked.gear if known.of_gear[id, gear].is_left_out),
            efforts,
            starts,
            tuple(dict.fromkeys((*easier, *other))),
            own_line(id, lines),
        )


def _of_words(known: Answers, need: Need, field: str, words: Ids) -> tuple[Ids, Ids]:
    """Of a set's words those that the rules of a need leave out, and what they change at others."""
    found = {word: known.of_word(need, field, word) for word in words}
    left = tuple(word for word, answer in found.items() if answer.is_left_out)
    changes = (
        said for word, answer in found.items() if word not in left for said in answer.changes
    )
    return left, tuple(dict.fromkeys(changes))
