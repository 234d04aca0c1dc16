"""What a composed practice is called, what it is for, and what every lane hears."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.pieces import MAIN, PART, SKILL, UNKNOWN, PracticePiece
from almanac.arithmetic.composing.sentences import said
from almanac.arithmetic.composing.unmet import WORK
from almanac.arithmetic.composing.wishes import MAINS, SECOND
from almanac.report.compose.facts import ended

TITLE_MOST, SUMMARY_MOST = 60, 120
"""As long as the schema lets them be."""


def title(asked: Asked, own: Proposal, most: int = TITLE_MOST) -> str:
    """The squad, what the practice is for and the main set, ``Heron: kick into stroke – kick
    and go``, with as many of the goals as there is room for, the chief one always: the main set's
    own title is cut at a comma before one is left out.
    """
    squad, goals = asked.table.squad.title, served(asked, own)
    for count in range(len(goals), min(len(goals), 1) - 1, -1):
        for called in _called(asked, own):
            what = " – ".join(filter(None, [", ".join(goals[:count]), called]))
            found = said("entry-title", squad=squad, title=what)
            if len(found) <= most:
                return found
    return found[: most - 1].rpartition(" ")[0].rstrip(", –") + "…"


def _called(asked: Asked, own: Proposal) -> list[str]:
    """The main set, after the work that serves the chief goal where it does not itself; one that is
    a part of a practice with its distance where there is room, for many such are alike.
    """
    work = [one.own.piece for one in own.order if one.role in WORK]
    stood = next(one.own for one in own.order if one.role == MAIN)
    main, pool = stood.piece, asked.wishes.pool
    chief = next((goal for goal in asked.wishes.goals if _serve(work, goal)), UNKNOWN)
    if chief not in (UNKNOWN, *main.goals):
        return [_both(asked, _serve(work, chief)[0], main), _small(asked, main)]
    called = _small(asked, main)
    course = next(one.course for one in asked.table.pools if one.id == pool)
    unit = course.lstrip("0123456789")
    far = [f"{called}, {stood.size.distance} {unit}"] if main.of == PART else []
    return [*far, called, *([called.partition(",")[0]] if "," in called else [])]


def _both(asked: Asked, one: PracticePiece, other: PracticePiece) -> str:
    return said("and").join([_small(asked, one), _small(asked, other)])


def _small(asked: Asked, piece: PracticePiece) -> str:
    text = piece.called.removeprefix(f"{asked.table.squad.title}: ")
    return text[:1].lower() + text[1:]


def _serve(work: Sequence[PracticePiece], goal: int) -> list[PracticePiece]:
    return [piece for piece in work if goal in piece.goals]


def served(asked: Asked, own: Proposal) -> list[str]:
    """The wished goals that its work serves, in the order of the wish."""
    work = [one.own.piece for one in own.order if one.role in WORK]
    goals = [goal for goal in asked.wishes.goals if _serve(work, goal)]
    return [asked.table.goals[goal].title.lower() for goal in goals]


def summary(asked: Asked, own: Proposal) -> str:
    """What it is for, and what is done beside the main set that the title names: one piece of work
    alone, for what two titles say side by side, neither may mean; and without the word for its
    role, for "set" after "under water" and before a number reads like a long stay there. No longer
    than the schema lets it be: with fewer goals where their titles are long.
    """
    by_role = {one.role: one for one in own.order}
    one = next(by_role[role] for role in (SKILL, SECOND, MAIN) if role in by_role)
    goals = served(asked, own) or [asked.table.squad.title]
    purposes = [
        said("entry-purpose", goals=", ".join(goals[:count])) for count in range(len(goals), 0, -1)
    ]
    key = "entry-centre" if one.role == MAIN else "entry-beside"
    work = said(key, title=one.own.piece.title.rstrip("."))
    whole = [f"{work} {purposes[0]}", *purposes]
    return next(text for text in whole if len(text) <= SUMMARY_MOST)


def focus(asked: Asked, own: Proposal) -> str:
    """What every lane hears: the cue of the work that serves the chief goal, else of the main set
    and of what stands beside it, else the main set's title.
    """
    by_role = {one.role: one.own.piece for one in reversed(own.order)}
    work = [by_role[role] for role in (*MAINS, SKILL) if role in by_role]
    return ended(next(_cues(work, asked.wishes.goals[:1]), work[0].title))


def _cues(work: Sequence[PracticePiece], chief: Sequence[int]) -> Iterator[str]:
    for pieces in ([own for own in work if set(chief) & set(own.goals)], work):
        yield from (own.cue for own in pieces if own.cue)
