"""Changing a proposal: a piece swapped, kept, moved, taken out; whatever is done, it stays a
practice that can be swum.
"""

from __future__ import annotations

import json
import random
import shutil
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from compose_requests import drawn
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.changes import (
    DEEDS,
    KEEP,
    OUT,
    SWAP,
    Deed,
    change,
)
from almanac.arithmetic.composing.chosen import Chosen, ChosenPractice, practice_of, standing
from almanac.arithmetic.composing.order import SLACK_MOST, unsafe, whole
from almanac.arithmetic.composing.request import BadWish, wishes_of
from almanac.arithmetic.composing.unmet import SLOT, TIME_LEFT, unmet
from almanac.checks import check
from almanac.commands.main import main
from almanac.model.load import load
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.table import compose_table

SQUADS = ("heron", "osprey", "reed")
WISHES = ("--squad", "heron", "--minutes", "60", "--goals", "kick-into-stroke")


@cache
def proposals() -> list[tuple[Asked, ChosenPractice, int]]:
    """First proposals for requests by chance, with what each costs."""
    catalogue = load(CATALOGUE).catalogue
    assert catalogue is not None
    analysis = Analysis(catalogue, DAY)
    found: list[tuple[Asked, ChosenPractice, int]] = []
    tables = {squad: compose_table(analysis, squad).table for squad in SQUADS}
    for seed in range(40):
        chance = random.Random(seed)
        table = tables[chance.choice([*tables])]
        asked = Asked(table, wishes_of(table, drawn(table, chance, "home")))
        first = compose(table, asked.wishes, most=1)
        found += [(asked, practice_of(own.order), own.cost) for own in first]
    assert len(found) >= 10
    return found


Step = tuple[Asked, ChosenPractice, Deed, ChosenPractice | str]


@cache
def steps() -> list[Step]:
    """Deeds drawn by chance, each with the practice after it, or the sentence that refuses it."""
    found: list[Step] = []
    for seed, (asked, practice, _) in enumerate(proposals()):
        chance = random.Random(seed)
        for _ in range(15):
            role = chance.choice(practice.parts).role
            deed = Deed(chance.choice(DEEDS), role)
            try:
                after = change(asked, practice, deed)
            except BadWish as problem:
                found.append((asked, practice, deed, str(problem)))
            else:
                found.append((asked, practice, deed, after))
                practice = after
    return found


def done(do: str) -> list[tuple[Asked, ChosenPractice, Deed, ChosenPractice]]:
    every = [
        (asked, before, deed, after)
        for asked, before, deed, after in steps()
        if deed.do == do and isinstance(after, ChosenPractice)
    ]
    assert every, do
    return every


def keys(practice: ChosenPractice) -> list[str]:
    return [own.piece for own in practice.parts]


def test_a_proposal_costs_in_its_place_what_it_cost_where_it_was_composed() -> None:
    for asked, practice, cost in proposals():
        assert standing(asked, practice).cost == cost


@pytest.mark.parametrize("do", DEEDS)
def test_after_each_deed_the_slot_and_every_limit_hold(do: str) -> None:
    for asked, _, _, after in done(do):
        order = standing(asked, after).order
        assert asked.slot - whole(order) >= 0
        assert unsafe(asked, order) == ""
        roles = [one.role for one in order]
        assert (roles[0], roles[-1]) == ("w", "c") and "m" in roles


def test_another_piece_stands_where_one_is_swapped_and_the_first_does_not_come_back() -> None:
    for asked, before, deed, after in done(SWAP):
        place = next(at for at, own in enumerate(before.parts) if own.role == deed.role)
        gone = before.parts[place].piece
        assert gone in after.out and gone not in keys(after)
        assert [own for at, own in enumerate(keys(after)) if at != place] == [
            own for at, own in enumerate(keys(before)) if at != place
        ]
        assert asked.slot - whole(standing(asked, after).order) <= SLACK_MOST
        changed = [
            one for one, own in zip(before.parts, after.parts, strict=True)
            if one.piece == own.piece and one.number != own.number
        ]  # fmt: skip
        assert len(changed) <= 2 and not any(own.kept for own in changed)


def test_what_is_kept_is_done_as_often_as_before_whatever_else_is_done() -> None:
    kept = 0
    for _, before, deed, after in steps():
        if isinstance(after, ChosenPractice) and deed.do != "free":
            for own in before.parts:
                if own.kept:
                    kept += 1
                    assert (own.piece, own.number) in [(o.piece, o.number) for o in after.parts]
    assert kept


def test_a_piece_that_is_moved_changes_places_with_its_neighbour() -> None:
    for do, by in (("up", -1), ("down", 1)):
        for _, before, deed, after in done(do):
            place = [own.role for own in before.parts].index(deed.role)
            expected = keys(before)
            expected[place], expected[place + by] = expected[place + by], expected[place]
            assert keys(after) == expected


def test_what_is_taken_out_is_gone_and_as_little_of_the_slot_is_left_as_can_be() -> None:
    for asked, before, deed, after in done(OUT):
        gone = next(own.piece for own in before.parts if own.role == deed.role)
        assert [own for own in keys(before) if own != gone] == keys(after)
        order = standing(asked, after).order
        left = asked.slot - whole(order)
        if left > SLACK_MOST:
            for one, own in zip(order, after.parts, strict=True):
                offer = next(each for each in asked.offers if each.piece == one.own.place)
                more = [size.takes - one.own.takes for size in asked.sized(offer)]
                free = [] if own.kept else [extra for extra in more if 0 < extra <= left]
                tried = [_resized(asked, after, one.role, extra, one.own.takes) for extra in free]
                assert not any(tried)


def test_a_slot_that_is_no_longer_filled_is_told_with_what_is_left() -> None:
    told = 0
    for asked, _, _, after in done(OUT):
        now = standing(asked, after)
        left = asked.slot - whole(now.order)
        found = [
            own for own in unmet(asked, Proposal(now.order, now.cost)) if own.because == TIME_LEFT
        ]
        assert [own.which for own in found if own.wish == SLOT] == (
            [left // 10] if left > SLACK_MOST else []
        )
        told += len(found)
    assert told
    for asked, practice, _ in proposals():
        now = standing(asked, practice)
        assert SLOT not in [own.wish for own in unmet(asked, Proposal(now.order, now.cost))]


def _resized(asked: Asked, practice: ChosenPractice, role: str, extra: int, takes: int) -> bool:
    """Whether a piece may take so much longer."""
    place = next(at for at, own in enumerate(practice.parts) if own.role == role)
    own = practice.parts[place]
    offer = next(each for each in asked.offers if asked.table.pieces[each.piece].key == own.piece)
    size = next(each for each in asked.sized(offer) if each.takes == takes + extra)
    parts = list(practice.parts)
    parts[place] = replace(own, number=size.number)
    try:
        standing(asked, replace(practice, parts=tuple(parts)))
    except BadWish:
        return False
    return True


def test_each_refusal_is_one_sentence() -> None:
    refused = {after for _, _, _, after in steps() if isinstance(after, str)}
    assert "A practice begins with its warm-up." in refused
    assert "A practice needs its warm-up: swap it for another." in refused
    assert any(" is kept: free it first." in own for own in refused)
    assert all(own.endswith(".") and "\n" not in own and "{" not in own for own in refused)


@pytest.mark.parametrize(
    ("parts", "sentence"),
    [
        ([], "A practice begins with a warm-up, has a main set and ends with a cool-down."),
        ([("w", "set/none", 1)], "there is no piece 'set/none'"),
        ([("w", "set/kick-and-go", 1)], "set/kick-and-go cannot stand there"),
        ([("m", "", 99)], " cannot stand there"),
        ([("n", "", -1)], "No piece stands in a practice twice."),
    ],
)
def test_a_practice_that_cannot_be_is_told_in_a_sentence(
    parts: list[tuple[str, str, int]], sentence: str
) -> None:
    """As it may come with a link: a piece of each told role is put in the place of a proposal's."""
    asked, practice, _ = next(own for own in proposals() if own[0].table.squad.id == "heron")
    by_role = {own.role: own for own in practice.parts}
    for role, key, number in parts:
        main_set = by_role["m"]
        count = main_set.number if number < 0 else number
        by_role[role] = Chosen(role, key or main_set.piece, count)
    order = sorted(by_role.values(), key=lambda own: "wsmnec".index(own.role)) if parts else []
    with pytest.raises(BadWish) as told:
        standing(asked, ChosenPractice(tuple(order)))
    assert sentence in str(told.value)


def test_what_was_changed_breaks_no_rule(tmp_path: Path) -> None:
    """The last of each row of deeds as an entry beside the others; that they are alike is no
    wonder.
    """
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    catalogue = load(root).catalogue
    assert catalogue is not None
    made = {own: compose_table(Analysis(catalogue, DAY), own) for own in SQUADS}
    last = {
        id(asked): (asked, after)
        for asked, _, _, after in steps()
        if isinstance(after, ChosenPractice)
    }
    written = 0
    for asked, practice in last.values():
        own = made[asked.table.squad.id]
        if len(asked.wishes.groups) == len(own.table.squad.groups):
            now = standing(asked, practice)
            whole_practice = Proposal(now.order, now.cost)
            data = practice_entry(
                own.table, own.candidates, asked.wishes, whole_practice, "17:30", {}
            )
            (root / f"plans/practices/changed-{written}.yml").write_text(as_yaml(data), "utf-8")
            written += 1
    loaded = load(root)
    assert loaded.catalogue is not None and written >= 5
    found = [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]
    told = [one for one in found if "changed-" in one.place.file]
    assert [one for one in told if one.code != "near-duplicate"] == []


def run(*argv: str) -> int:
    return main(["compose", "practice", "--root", str(CATALOGUE), "--today", str(DAY), *argv])


def test_the_command_changes_a_proposal_and_says_what_moved(capsys: Any) -> None:
    assert run(*WISHES, "--json") == 0
    (first, *_) = json.loads(capsys.readouterr().out)["proposals"]
    deeds = ("--change", "swap=m", "--change", f"{KEEP}=w", "--json")
    assert run(*WISHES, *deeds) == 0
    data = json.loads(capsys.readouterr().out)
    (own,) = data["proposals"]
    assert own["parts"][0]["piece"] == first["parts"][0]["piece"]
    before, after = (
        next(part["piece"] for part in each["parts"] if part["as"] == "m") for each in (first, own)
    )
    assert before != after
    swapped, kept = data["changes"]
    assert swapped == ["now 58:35", "main set now Legs before arms", "main set 1:17 shorter"]
    assert kept == ["now 58:35", "warm-up kept"]
    assert run(*WISHES, *deeds[:-1]) == 0
    assert capsys.readouterr().out.endswith(f"{'; '.join(kept)}\n")


def test_the_command_refuses_a_change_in_a_sentence(capsys: Any) -> None:
    assert run(*WISHES, "--change", "out=w") == 2
    said = capsys.readouterr()
    assert "A practice needs its warm-up: swap it for another." in said.err
    assert said.err.count("\n") == 1 and not said.out


def test_a_changed_proposal_is_saved(capsys: Any, tmp_path: Path) -> None:
    shutil.copytree(CATALOGUE, tmp_path / "club")
    wanted = ("--change", "swap=m", "--save", "tonight")
    root = ("--root", str(tmp_path / "club"))
    assert main(["compose", "practice", *root, "--today", str(DAY), *WISHES, *wanted]) == 0
    assert capsys.readouterr().out.startswith("wrote ")
    text = (tmp_path / "club/plans/practices/tonight.yml").read_text("utf-8")
    assert "set: legs-before-arms" in text and "set: kick-and-go" not in text


def test_what_the_user_took_out_is_not_to_be_mended_by_more_minutes() -> None:
    """Of relief or a skill that was taken out it is said that there is none, and no more."""
    went = 0
    for asked, _, deed, after in done(OUT):
        own = Proposal(standing(asked, after).order, 0, after.out)
        gone = {"e": "relief", "s": "skill"}.get(deed.role)
        told = [one for one in unmet(asked, own) if one.wish == gone]
        assert all(one.because == TIME_LEFT for one in told)
        went += len(told)
    assert went
