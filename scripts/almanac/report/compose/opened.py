"""A practice that is written, as Make a practice opens it to be changed:
``data/v1/compose/practices/ID.json``, whose form ``site_src/schemas/compose_practice.json`` tells.

Each part stands in it held, as a piece that is offered nowhere else (``compose.held``); a part that
stands by itself also says which piece of the squad's table it is, so that it can be swapped, cut or
lengthened like any other.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.order import laid, soonest_under
from almanac.arithmetic.composing.pieces import PLACES, SET, UNKNOWN, Offer, PracticePiece
from almanac.arithmetic.composing.table import ComposeTable, Limits
from almanac.arithmetic.composing.wishes import Wishes
from almanac.arithmetic.facets import distance_working
from almanac.arithmetic.leaving_out import ends_home
from almanac.arithmetic.practice_aims import chief_goals
from almanac.model.practice import Practice
from almanac.report.bound_parts import bound_by
from almanac.report.compose.held import HeldParts
from almanac.report.compose.json import limits_json, offer_json, piece_json
from almanac.report.compose.parts import other_sizes, part_keys
from almanac.report.compose.table import places_of
from almanac.report.written_slices import above, of_keys, of_parts

FORM = 1


def can_open(analysis: Analysis, practice: Practice) -> str:
    """Why a practice cannot be opened to be changed, as a clause; "" where it can."""
    summary = analysis.practices.get(practice.id)
    if summary is None or summary.ends_s is None:
        return "not all of its times are known"
    if len(practice.parts) > len(PLACES):
        return f"it has more than {len(PLACES)} parts"
    return "" if _parts_text(analysis, practice) else "its parts stand on one line"


def opened_json(analysis: Analysis, table: ComposeTable, practice: Practice) -> dict[str, Any]:
    """A practice that can be opened (``can_open``), with its parts held in the table's squad."""
    summary = analysis.practices[practice.id]
    places = places_of(analysis.catalogue)
    held = HeldParts(analysis, summary, table.squad, places)
    numbers, offers = range(len(practice.parts)), held.offers()
    pieces = [held.piece(number) for number in numbers]
    texts = _parts_text(analysis, practice) or []
    others = _pieces(analysis, practice)
    return {
        "form": FORM,
        "id": practice.id,
        "title": practice.title,
        "pool": practice.pool,
        "head": [
            [key, text if key != "parts" else above(text)]
            for key, text in of_keys(analysis.catalogue.documents[practice.key])
        ],
        "adults": practice.adults or 1,
        "focus": practice.focus,
        "goals": [*chief_goals(summary)],
        "pieces": [*map(piece_json, pieces)],
        "offers": [offer_json(own) for own in offers],
        "taught": held.taught(),
        "limits": limits_json(limits_of(table, practice.pool, pieces, offers)),
        "parts": [
            _told({
                "text": texts[number],
                "why": bound_by(analysis, practice.parts[number]),
                "stays": held.stays(number),
                "gear": held.gear(number),
                **others.get(number, {}),
            })
            for number in numbers
        ],
    }  # fmt: skip


def limits_of(
    table: ComposeTable, pool: str, pieces: Sequence[PracticePiece], offers: Sequence[Offer]
) -> Limits:
    """The limits of a squad for a practice that is opened, of which these are the parts: what it
    does as it is written it may go on to do, for the whole of it has been checked where it was
    written.
    """
    own, groups = table.squad.limits, table.squad.groups
    sizes = [offer.sizes[0] for offer in offers]
    all_swim = Wishes(
        pool, tuple(range(len(groups))), tuple(one.lanes for one in groups),
        tuple(one.heads for one in groups), table.squad.minutes, (), (),
    )  # fmt: skip
    asked = Asked(table, all_swim)
    order = [
        (piece.roles, Sized(offer.piece, piece, size, 0, offer.adults))
        for piece, offer, size in zip(pieces, offers, sizes, strict=True)
    ]
    soonest = soonest_under(asked, laid(asked, order))
    return Limits(
        fast=max(own.fast, sum(size.fast for size in sizes)),
        resisted=max(own.resisted, sum(size.resisted for size in sizes)),
        plates=max(own.plates, sum(size.plates for size in sizes)),
        under=max(own.under, sum(size.under for size in sizes)),
        under_after_fast=min(own.under_after_fast, soonest)
        if soonest != UNKNOWN
        else own.under_after_fast,
    )


def _told(own: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in own.items() if value}


def _parts_text(analysis: Analysis, practice: Practice) -> list[str] | None:
    return of_parts(analysis.catalogue.documents[practice.key], "parts")


def _pieces(analysis: Analysis, practice: Practice) -> dict[int, dict[str, Any]]:
    """By number of a part that is a piece of its squad's table too its key (``as``), how often
    (``number``, none for as written) and the seconds of talk before it.
    """
    squad = practice.squad
    keys = analysis.once((part_keys, squad), lambda: part_keys(analysis, squad))
    found = {}
    for number, part in enumerate(practice.parts):
        key = keys.get((practice.id, number), "")
        if part.set and part.end == "start":
            key = f"{SET}/{part.set}"
        if key and not bound_by(analysis, part) and not _ends_away(analysis, practice, number):
            often = part.rounds or part.reps or 0
            found[number] = {"as": key, "number": often, "talk": int(part.talk or 0)}
    return found


def _ends_away(analysis: Analysis, practice: Practice, number: int) -> bool:
    """Whether items in place end where no other piece begins, and so with a rep more or fewer."""
    if practice.parts[number].set:
        return False
    course = analysis.practices[practice.id].course
    ways = other_sizes(analysis, practice, number)
    return not any(ends_home(distance_working(items).value, course) for items in ways)
