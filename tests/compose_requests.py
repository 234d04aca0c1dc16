"""Requests for practices drawn by chance, and their answers as vectors that another program is held
to.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.changes import (
    DEEDS,
    Deed,
    change,
)
from almanac.arithmetic.composing.chosen import (
    ChosenPractice,
    ordered,
    practice_of,
    standing,
)
from almanac.arithmetic.composing.minutes import asked_in, in_minutes
from almanac.arithmetic.composing.request import BadWish, Request
from almanac.arithmetic.composing.table import ComposeTable
from almanac.commands.compose_save import lanes_of
from almanac.report.compose.answer import Proposals, answer_json, answered, proposal_json
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.json import table_json
from almanac.report.compose.table import Made
from almanac.report.compose.words import change_words

MORE = (-60, -40, -30, -20, -15, -10, 10, 15, 25)
OWN_TALK_S = 37  # of no piece
MINUTES = (20, 25, 30, 40, 45, 50, 60, 60, 75, 75, 90, 90, 105, 120)


def drawn(table: ComposeTable, chance: random.Random, pool: str) -> Request:
    """A request that can be: goals that something serves, minutes that the squad has, groups, gear
    that is not there, effort, what was done.
    """
    offers = table.squad.offers[pool]
    goals = sorted({goal for offer in offers for goal in table.pieces[offer.piece].goals})
    names = [table.goals[goal].id for goal in goals]
    efforts = [effort.id for effort in table.efforts]
    done = [own.id for own in table.practices]
    return Request(
        pool=pool,
        minutes=chance.choice([own for own in MINUTES if own <= table.squad.minutes]),
        goals=chance.sample(names, min(len(names), chance.choice([1, 1, 2, 2, 3]))),
        groups=[] if chance.random() < 0.7 else [chance.choice(table.squad.groups).id],
        gear={gear.id: 0 for gear in table.gear if chance.random() < 0.3},
        effort=chance.choice(["", "", "", *efforts]),
        done=[(id, chance.randint(1, 14)) for id in chance.sample(done, min(len(done), 3))],
    )


BAD: tuple[tuple[dict[str, object], str], ...] = (
    ({"minutes": 0}, "0 min: from 20 to 120 minutes can be composed"),
    ({"goals": []}, "no goal is named: one to 3 can be asked for"),
    ({"goals": ["flying"]}, "there is no goal 'flying'"),
    ({"groups": ["sharks"]}, "there is no lane group 'sharks'; there are heron-1, heron-2"),
    (
        {"lanes": {"heron-1": 0}},
        "0 lanes for Heron, lanes 1 to 3: from 1 to 6 can be, and who does not ",
    ),
    ({"lanes": {"heron-1": 60}}, "60 lanes for Heron, lanes 1 to 3: from 1 to 6 can be"),
    ({"heads": {"heron-1": 201}}, "201 swimmers for Heron, lanes 1 to 3: from 1 to 200 can be"),
    ({"gear": {"drag-socks": 500}}, "500 of drag-socks: the club owns "),
    ({"effort": "mad"}, "there is no effort 'mad'; there are easy, "),
    ({"pool": "sea"}, "there is no pool 'sea'; there are "),
    ({"done": [("nothing", 1)]}, "there is no practice of the squad, or piece, 'nothing'"),
    ({"done": [("set/kick-and-go", -1)]}, "set/kick-and-go was done -1 days ago: 0 is today"),
    ({"adults": 0}, "0 adults: "),
    ({"adults": 1, "heads": {"heron-1": 100}}, "1 adult: for "),
    (
        {"keep": [("set/kick-and-go", "c", -1)]},
        "set/kick-and-go cannot stand as cool-down, but as skill or main set",
    ),
    ({"keep": [("set/socks-and-speed", "m", -1)], "gear": {"drag-socks": 1}}, " are here"),
    (
        {"keep": [("set/kick-and-go", "m", -1), ("set/socks-and-speed", "m", -1)]},
        "set/socks-and-speed: another piece is kept there already",
    ),
    (
        {"keep": [("set/kick-and-go", "m", -1)], "leave_out": ["set/kick-and-go"]},
        "Kick and go cannot be kept: it is left out",
    ),
    ({"taught": {"nothing": 1}}, "there is no progression 'nothing'"),
    ({"taught": {"kick-into-stroke": 99}}, "stages, and 99 were told"),
)
"""What of a request for the small catalogue's Heron cannot be, and the sentence that says so."""


Case = tuple[str, Request, Any, Iterable[dict[str, Any]]]
"""A squad, what is asked, what is told, and the steps of a walk."""


def vectors(
    analysis: Analysis,
    made: Mapping[str, Made],
    cases: Iterable[tuple[str, Request, Any]],
    path: Path,
) -> dict[str, str]:
    """Writes each squad's data and what is answered to each request; what Node's tests are told
    by.
    """
    told = [
        {"squad": squad, "request": asdict(request), "answer": answer}
        | {name: [step for step in all_steps if ("minutes" in step) == (name == "timed")]
           for name in ("steps", "timed")}
        for squad, request, answer, steps in cases
        for all_steps in [[*steps]]
    ]  # fmt: skip
    data = {squad: table_json(analysis, own) for squad, own in made.items()}
    path.write_text(json.dumps({"data": data, "cases": told}), "utf-8")
    return {"VECTORS": str(path)}


def walked(answer: Proposals, chance: random.Random, deeds: int) -> Iterator[dict[str, Any]]:
    """Deeds drawn by chance, one after the other on the first proposal, each with what comes of
    it.
    """
    asked = answer.asked
    practice = practice_of(answer.proposals[0].order)
    for _ in range(deeds):
        roles = [own.role for own in practice.parts]
        deed = Deed(chance.choice(["swap", "swap", *DEEDS]), chance.choice([*roles, "n"]))
        step: dict[str, Any] = {"practice": chosen(practice), "deed": asdict(deed)}
        try:
            after = change(asked, practice, deed)
        except BadWish as problem:
            yield step | {"changed": {"refused": str(problem)}}
            continue
        before, now = standing(asked, practice), standing(asked, after)
        words = [*change_words(asked, before.order, now.order, deed)]
        proposal = proposal_json(answer, Proposal(now.order, now.cost, after.out))
        changed = {"practice": chosen(after), "proposal": proposal, "words": words}
        step |= {"entry": entry_text(answer, Proposal(now.order, now.cost, after.out))}
        yield step | {"changed": changed}
        practice = after
        if chance.random() < 0.3:  # as of a written practice, which has a talk of its own
            own, *others = practice.parts
            practice = replace(practice, parts=(replace(own, talk_s=OWN_TALK_S), *others))
        yield timed(answer, practice, asked.wishes.minutes + chance.choice([-5, 5, *MORE]))


def timed(answer: Proposals, practice: ChosenPractice, minutes: int) -> dict[str, Any]:
    """A practice given other minutes, with what comes of it."""
    step: dict[str, Any] = {"practice": chosen(practice), "minutes": minutes}
    try:
        asked = asked_in(answer.asked, minutes)
        after = in_minutes(asked, practice)
    except BadWish as problem:
        return step | {"changed": {"refused": str(problem)}}
    now = standing(asked, after)
    proposal = proposal_json(replace(answer, asked=asked), Proposal(now.order, now.cost, after.out))
    words = [*change_words(asked, ordered(asked, practice), now.order)]
    return step | {"changed": {"practice": chosen(after), "proposal": proposal, "words": words}}


def chosen(practice: ChosenPractice) -> dict[str, Any]:
    """A practice as the scripts of pages have it: without what is as usual."""
    parts = [
        {name: own for name, own in asdict(part).items() if own is not None}
        for part in practice.parts
    ]
    return {"parts": parts, "out": list(practice.out)}


def entry_text(answer: Proposals, own: Proposal) -> str:
    """A proposal as --save writes it."""
    table, wishes = answer.table, answer.asked.wishes
    lanes = lanes_of(table, wishes)
    return as_yaml(practice_entry(table, answer.made.candidates, wishes, own, "17:30", lanes))


def told_of(analysis: Analysis, made: Made, request: Request) -> Any:
    """The answer to a request as it is told, or the sentence that refuses it."""
    try:
        return answer_json(answered(analysis, made, request))
    except BadWish as problem:
        return {"refused": str(problem)}
