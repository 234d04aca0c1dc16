"""The answer to a request for a practice as a coach would write it up: a whiteboard for each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.order import Stood, whole
from almanac.arithmetic.composing.pieces import TENTHS
from almanac.arithmetic.composing.sentences import role_word
from almanac.arithmetic.composing.unmet import unmet
from almanac.arithmetic.composing.why import why
from almanac.arithmetic.scaling import scaled_items
from almanac.findings import counted
from almanac.report.compose.answer import Proposals, adults
from almanac.report.compose.laid import Layer
from almanac.report.compose.lines import line_words, lines_of
from almanac.report.compose.named import focus, title
from almanac.report.compose.words import unmet_words, why_words
from almanac.units import show_time


def _seconds(tenths: int) -> int:
    return -(-tenths // TENTHS)


def answer_text(answer: Proposals) -> str:
    """The answer for a terminal: a whiteboard for each proposal."""
    asked, table = answer.asked, answer.table
    pool = next(own for own in table.pools if own.id == asked.wishes.pool)
    goals = ", ".join(table.goals[goal].title.lower() for goal in asked.wishes.goals)
    head = f"{table.squad.title}, {pool.title}, {asked.wishes.minutes} minutes: {goals}"
    if not answer.proposals:
        why_not = [words for _, words in answer.said_hinders]
        return "\n".join([head, "Nothing fits.", *why_not])
    missed = [_missed(answer, own) for own in answer.proposals]
    all_of = {2: "Both", 3: "All three"}.get(len(missed))
    in_all = [words for words in missed[0] if all_of and all(words in own for own in missed)]
    first = "\n".join([head, *(f"{all_of}: {words}" for words in in_all)])
    blocks = [
        "\n".join(_board(answer, number, own, [one for one in own_missed if one not in in_all]))
        for number, (own, own_missed) in enumerate(zip(answer.proposals, missed, strict=True), 1)
    ]
    changes = ["\n".join("; ".join(own) for own in answer.changes)] if answer.changes else []
    return "\n\n".join([first, *blocks, *changes])


def _missed(answer: Proposals, own: Proposal) -> list[str]:
    """What a proposal does not meet, each with what to drop."""
    goals = len(answer.asked.wishes.goals)
    return [unmet_words(answer.table, one, goals) for one in unmet(answer.asked, own)]


def _board(answer: Proposals, number: int, own: Proposal, missed: Sequence[str]) -> Iterator[str]:
    """The whiteboard of a proposal, what only it misses before its pieces."""
    takes = _seconds(whole(own.order))
    left = 60 * answer.asked.wishes.minutes - takes
    unit = answer.unit
    far = sum(one.own.size.distance for one in own.order)
    count = len(answer.proposals)
    hands = counted(adults(answer.asked, own), "adult")
    yield title(answer.asked, own)
    by_time = [_by_time(answer, one) for one in own.order]
    whole_far = _far(far, unit, sum(by_time))
    yield f"{number} of {count}: {show_time(takes)}, {show_time(left)} left, {whole_far}, {hands}"
    yield from (f"  {words}" for words in missed)
    yield f"  every lane hears: {focus(answer.asked, own)}"
    at = 0
    for one, unknown in zip(own.order, by_time, strict=True):
        begins = at + one.lead
        at = begins + one.own.takes
        piece = one.own.piece
        often = f", {_often(one)}" if one.own.steps else ""
        swum = [show_time(_seconds(one.own.takes)), _far(one.own.size.distance, unit, unknown)]
        yield (
            f"  after {show_time(_seconds(begins)):>7}  {role_word(one.role)}: "
            f"{piece.title}{often} ({', '.join([*swum, *before_words(one)])})"
        )
        for line in _lines(answer, one):
            yield f"                 {line}"
        reasons = "; ".join(why_words(answer.table, one, why(answer.asked, own.order, one)))
        if reasons:
            yield f"                 why: {reasons}"


def _by_time(answer: Proposals, one: Stood) -> int:
    """How many reps of a piece are swum by time, so that nobody knows how far."""
    layer = Layer(answer.analysis, answer.table.squad.id, answer.asked.wishes.pool)
    laid = layer.lay(answer.made.candidates[one.own.piece.key], one.own.number)
    swums = laid.swums if laid else ()
    return max((sum(own.unknown is not None for own in swum.by_time) for swum in swums), default=0)


def _far(distance: int, unit: str, unknown: int) -> str:
    """A distance; what is swum by time is not silently none of it."""
    return f"{distance} {unit}" + (f" and {unknown} by time" if unknown else "")


def before_words(one: Stood) -> Iterator[str]:
    """What goes before a piece: its talk, and what a change of gear takes beyond it."""
    talk = min(one.lead, one.own.piece.talk)
    if talk:
        yield f"{show_time(_seconds(talk))} talk before it"
    if one.lead > talk:
        yield f"{show_time(_seconds(one.lead - talk))} to change gear before it"


def _often(one: Stood) -> str:
    """How often, beside how often it is written: ``2 rounds of 3``."""
    piece, number = one.own.piece, one.own.number
    return f"{counted(number, piece.what.removesuffix('s'))}, written {piece.written}"


def _lines(answer: Proposals, one: Stood) -> Sequence[str]:
    """What is written on the board for a piece, so often as it is done."""
    candidate = answer.made.candidates[one.own.piece.key]
    items = candidate.items
    if candidate.scale and one.own.steps:
        items = scaled_items(items, candidate.scale, one.own.number)
    groups = [answer.table.squad.groups[group].id for group in answer.asked.wishes.groups]
    lines = lines_of(answer.analysis.catalogue, items, groups)
    return [f"{'  ' * line.depth}{line_words(line)}" for line in lines]
