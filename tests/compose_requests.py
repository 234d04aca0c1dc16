"""Requests for practices drawn by chance, and answers in a form that another program can be held to."""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import Any

from almanac.arithmetic.composing import Proposal
from almanac.arithmetic.composing_request import Request
from almanac.arithmetic.composing_table import Table

MINUTES = (20, 25, 30, 40, 45, 50, 60, 60, 75, 75, 90, 90, 105, 120)


def drawn(table: Table, chance: random.Random, pool: str) -> Request:
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


def told(found: Sequence[Proposal]) -> list[dict[str, Any]]:
    """Proposals by what has to agree: points, and of each piece its role, key, number and lead."""
    return [
        {
            "cost": own.cost,
            "parts": [
                [one.role, one.own.piece.key, one.own.number, one.lead, one.own.takes]
                for one in own.order
            ],
        }
        for own in found
    ]
