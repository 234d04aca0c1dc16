"""Composed practices in words: why a piece stands there, what is not met, which wish hinders."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.composing.asked import NOT_FOR, Asked
from almanac.arithmetic.composing.changes import DOWN, FREE, KEEP, UP, Deed
from almanac.arithmetic.composing.order import SLACK_MOST, Stood, whole
from almanac.arithmetic.composing.pieces import TENTHS, UNKNOWN, PracticePiece
from almanac.arithmetic.composing.sentences import (
    SENTENCES,
    role_word,
    said,
    words_in_a_row,
)
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.unmet import EFFORT, GOAL, HARDER, MINUTES, TIME_LEFT, Unmet
from almanac.arithmetic.composing.why import CARRIES, NO_OTHER, STANDS, TRAINS, WARMS, Note, Why
from almanac.arithmetic.composing.wishes import MAINS, is_held
from almanac.units import show_time

_SOME = 300
"""Permille of a piece below which it has only some of a goal."""


def why_words(table: ComposeTable, one: Stood, own: Why) -> Iterator[str]:
    """Why a piece stands there, in short phrases."""
    yield from _serves_words(table, one.own.piece, own.goals)
    yield from (_note_words(table, one, note) for note in own.notes)
    if own.days != UNKNOWN:
        yield said(f"done-{own.days}" if own.days < 2 else "done", days=own.days)
    for gear, used, here in own.gear:
        yield said("gear", used=used, gear=table.gear[gear].title.lower(), here=here)


def _serves_words(table: ComposeTable, piece: PracticePiece, goals: Sequence[int]) -> Iterator[str]:
    """The goals that a piece serves, and what in it does; those together that the same does."""
    alike: dict[tuple[str, str], list[str]] = {}
    for goal in goals:
        place = piece.goals.index(goal)
        share, show = piece.shares[place], piece.shows[place]
        show = "" if show.startswith(piece.title) else show  # the row says it already
        key = "written-for" if not share else "serves" if not show else "serves-by"
        key = "serves-some" if key == "serves-by" and share < _SOME else key
        alike.setdefault((key, show), []).append(table.goals[goal].title.lower())
    for (key, show), titles in alike.items():
        yield said(key, goal=words_in_a_row(titles), show=show)


def _note_words(table: ComposeTable, one: Stood, note: Note) -> str:
    """What a piece does where it stands."""
    if note.does == STANDS:
        return said("stands-held" if is_held(one.role) else f"stands-{one.role}")
    if note.does in (WARMS, CARRIES):
        strokes = [table.strokes[stroke].title.lower() for stroke in note.which]
        return said(note.does, strokes=words_in_a_row(strokes))
    if note.does == TRAINS:
        (goal,), show = note.which, one.own.piece.shows[0]
        title = table.goals[goal].title.lower()
        return said("trains-by" if show else "trains", goal=title, show=show)
    if note.does == NO_OTHER:
        goals = words_in_a_row([table.goals[goal].title.lower() for goal in note.which])
        key = {NOT_FOR: "no-other", MINUTES: "no-other-fits"}.get(note.because, "no-other-because")
        return said(key, goal=goals, because=SENTENCES[f"because-{note.because}"])
    efforts = [table.efforts[effort].title.lower() for effort in note.which]
    return said(note.does, effort="".join(efforts))


def unmet_words(table: ComposeTable, own: Unmet, goals: int) -> str:
    """What is not met, as a sentence; of so many ``goals``, of which a single one is not left
    out.
    """
    if own.wish == GOAL:
        because = said(f"because-{own.because}")
        mend = said(_of_goals(f"mend-{own.because}", goals))
        return said("unmet-goals", goal=table.goals[own.which].title, because=because, mend=mend)
    if own.wish == EFFORT:
        key = "unmet-effort-harder" if own.because == HARDER else "unmet-effort"
        return said(_of_goals(key, goals), effort=table.efforts[own.which].title.lower())
    if own.because == TIME_LEFT:
        return said(f"unmet-{own.wish}-time-left", time=show_time(max(own.which, 0)))
    if own.because == NOT_FOR:
        return said(f"unmet-{own.wish}-none")
    if own.because != MINUTES:
        because, mend = said(f"because-{own.because}"), said(f"mend-{own.because}")
        return said(f"unmet-{own.wish}-because", because=because, mend=mend)
    return said(_of_goals(f"unmet-{own.wish}", goals))


def _of_goals(key: str, goals: int) -> str:
    """The sentence that offers no goal to drop where there is one alone."""
    return f"{key}-one" if goals == 1 and f"{key}-one" in SENTENCES else key


def change_words(
    asked: Asked, before: Sequence[Stood], after: Sequence[Stood], deed: Deed | None = None
) -> Iterator[str]:
    """What moved with a change, and by how much, in short phrases; ``deed`` None where the practice
    was given other minutes.
    """
    yield said("now", time=show_time(-(-whole(after) // TENTHS)))
    left = asked.slot - whole(after)
    if left > SLACK_MOST:
        yield said("left", time=show_time(left // TENTHS))
    roles = [one.role for one in after]
    if deed and deed.do in (KEEP, FREE):
        what = _named(after, after[roles.index(deed.role)])
        yield said("kept" if deed.do == KEEP else "free", what=what)
    if deed and deed.do in (UP, DOWN):
        place = roles.index(deed.role)
        beside = after[place + 1 if deed.do == UP else place - 1]
        pair = {"what": _named(after, after[place]), "next": _named(after, beside)}
        yield said(f"moved-{deed.do}", **pair)
    yield from _pieces_words(before, after)


def _pieces_words(before: Sequence[Stood], after: Sequence[Stood]) -> Iterator[str]:
    """What each piece was and is."""
    places, by_role = {one.own.place: one for one in before}, {one.role: one for one in before}
    for one in after:
        old = places.get(one.own.place) or by_role[one.role]
        what = _named(after, one)
        if old.own.place != one.own.place:
            what = role_word(one.role).lower()
            yield said("another", what=what, title=one.own.piece.title)
        more = one.own.takes - old.own.takes
        seconds = (abs(more) + TENTHS // 2) // TENTHS
        if seconds:
            yield said("longer" if more > 0 else "shorter", what=what, time=show_time(seconds))
    if len(after) < len(before):
        still = {one.own.place for one in after}
        yield from (
            said("gone", what=_named(before, one)) for one in before if one.own.place not in still
        )


def _named(order: Sequence[Stood], one: Stood) -> str:
    """A piece by what it stands as; by its title where there are more such."""
    mains = [each.role for each in order if each.role in MAINS]
    if is_held(one.role) or (one.role in mains and len(mains) > 1):
        return one.own.piece.title
    return role_word(one.role).lower()
