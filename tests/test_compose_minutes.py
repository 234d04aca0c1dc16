"""A proposal that is given other minutes: its pieces stay where they can, and where they cannot it
is said what to do first.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from composing_world import piece, size, table, wishes
from shared import CATALOGUE, DAY
from test_compose_changes import keys, proposals

from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.changes import OUT, SWAP, Deed, change
from almanac.arithmetic.composing.chosen import (
    ChosenPractice,
    ordered,
    practice_of,
    standing,
)
from almanac.arithmetic.composing.minutes import asked_in, in_minutes
from almanac.arithmetic.composing.order import SLACK_MOST, unsafe, whole
from almanac.arithmetic.composing.request import BadWish
from almanac.commands.main import main

WISHES = ("--squad", "heron", "--minutes", "60", "--goals", "kick-endurance,kick-into-stroke")
MINUTES = (-40, -30, -20, -15, -10, -5, 5, 10, 20)


def tried() -> tuple[
    list[tuple[Asked, ChosenPractice, ChosenPractice]], list[tuple[Asked, ChosenPractice, str]]
]:
    """Proposals in other minutes: before and after, and those that are refused with why."""
    done, refused = [], []
    for asked, practice, _ in proposals():
        for more in MINUTES:
            try:
                other = asked_in(asked, asked.wishes.minutes + more)
            except BadWish:
                continue
            try:
                done.append((other, practice, in_minutes(other, practice)))
            except BadWish as problem:
                refused.append((other, practice, str(problem)))
    assert len(done) > 50 and len(refused) > 10
    return done, refused


def test_pieces_stay_in_their_order_within_the_slot_and_every_limit() -> None:
    full = 0
    for asked, before, after in tried()[0]:
        assert keys(after) == keys(before) and after.out == before.out
        order = standing(asked, after).order
        left = asked.slot - whole(order)
        assert left >= 0 and unsafe(asked, order) == ""
        full += left <= SLACK_MOST
    assert full > 40


def test_where_no_size_fills_other_minutes_it_stands_with_what_is_left() -> None:
    """Ninety minutes are swum; in 110 nothing can be done more often, and the rest is left."""
    opens, main, closes = (
        (piece(role, role, goals=(0,)), (size(takes),))
        for role, takes in (("w", 12000), ("m", 36000), ("c", 6000))
    )
    asked = Asked(table(opens, main, closes), wishes(minutes=92))
    practice = practice_of(compose(asked.table, asked.wishes)[0].order)
    longer = asked_in(asked, 110)
    after = in_minutes(longer, practice)
    assert after.parts == practice.parts
    assert longer.slot - whole(standing(longer, after).order) > SLACK_MOST


def test_as_few_pieces_as_will_do_are_done_more_or_less_often() -> None:
    """No piece that is another number could have stayed as it was, with the others as they are."""
    for asked, before, after in tried()[0]:
        if asked.slot - whole(standing(asked, after).order) > SLACK_MOST:
            continue  # nothing fills it
        for old, now in zip(before.parts, after.parts, strict=True):
            if old.number != now.number:
                same = tuple(old if one is now else one for one in after.parts)
                try:
                    order = standing(asked, replace(after, parts=same)).order
                except BadWish:
                    continue
                assert asked.slot - whole(order) > SLACK_MOST


def test_what_is_kept_is_done_as_often_and_freed_where_that_is_enough() -> None:
    freed = 0
    for asked, before, after in tried()[0]:
        changed = [
            k for k, (old, now) in enumerate(zip(before.parts, after.parts, strict=True))
            if old.number != now.number
        ]  # fmt: skip
        kept = replace(before, parts=tuple(replace(own, kept=True) for own in before.parts))
        if changed and asked.slot < whole(ordered(asked, before)):
            with pytest.raises(BadWish, match=r"Free what is kept first\.$"):
                in_minutes(asked, kept)
            freed += 1
        elif not changed:
            assert in_minutes(asked, kept) == kept
    assert freed > 10


def test_what_is_refused_fits_once_what_the_sentence_names_is_taken_out() -> None:
    went = 0
    for asked, practice, said in tried()[1]:
        assert said.startswith(f"In {asked.wishes.minutes} minutes it does not fit: at its short")
        pieces = {
            asked.table.pieces[asked.table.piece_of[own.piece]].title: own for own in practice.parts
        }
        if "Take out " not in said:
            swap = said.partition("Swap ")[2].partition(", the longest")[0]
            assert swap in pieces, said
            continue
        named = said.partition("Take out ")[2].removesuffix(" first.")
        gone = [own for title, own in pieces.items() if title in named]
        parts = tuple(own for own in practice.parts if own not in gone)
        assert gone and keys(in_minutes(asked, replace(practice, parts=parts)))
        went += 1
    assert went > 3


def test_the_command_does_the_same_and_says_what_moved(capsys: pytest.CaptureFixture[str]) -> None:
    def asked(*changes: str) -> int:
        arguments = [own for change in changes for own in ("--change", change)]
        return main(["--root", str(CATALOGUE), "compose", "practice", *WISHES, *arguments,
                     "--today", DAY.isoformat()])  # fmt: skip

    assert asked("minutes=55") == 0
    told = capsys.readouterr().out
    assert "55 minutes: kick endurance" in told and " shorter" in told
    assert asked("minutes=40") == 2
    assert "Swap Heron warm-up, the longest, first." in capsys.readouterr().err
    assert asked("minutes=5") == 2
    assert "5 min: from 20 to 120 minutes can be composed" in capsys.readouterr().err
    assert asked("minutes=long") == 2
    assert "'long' is no whole number" in capsys.readouterr().err


def test_other_deeds_go_on_in_the_new_minutes() -> None:
    asked, practice, _ = next(own for own in proposals() if own[0].wishes.minutes == 60)
    other = asked_in(asked, 75)
    after = change(other, in_minutes(other, practice), Deed(SWAP, "m"))
    assert 0 <= other.slot - whole(standing(other, after).order) <= SLACK_MOST
    assert OUT and after.out == (next(own.piece for own in practice.parts if own.role == "m"),)
