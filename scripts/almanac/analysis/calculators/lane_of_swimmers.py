"""The send-off of a lane: what its swimmers need, and how many fit."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    How,
    Line,
    Takes,
    number,
    word,
)
from almanac.arithmetic.clock import Clock
from almanac.arithmetic.lanes import Room, crowded, room_of
from almanac.arithmetic.working import Known, UpTo

_SIDES = (("front", "On the front"), ("back", "On the back"))


def _lane(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    limit = club.catalogue.policy.limit
    target, rest = number(values, "target"), number(values, "rest")
    heads, lengths = int(number(values, "swimmers")), number(values, "lengths")
    gap = number(values, "gap")
    if word(values, "side") == "back":
        gap = max(gap, limit("gap_on_back"))
    needed = max(target + rest, heads * gap)
    send_off = UpTo(Known(needed), limit("sendoff_step")).value
    rules = tuple(room_of(lengths, heads, gap, target, send_off))
    most = min(fit for _, _, _, fit in rules)
    full = [room for room, takes, in_s, fit in rules if fit < heads and takes > in_s]
    told = {Room.BACK: "back", Room.TAIL: "tail"}
    says = (*(told[room] for room in full[:1] if room in told), "read") if heads > 1 else ("alone",)
    return Answer(
        {
            "send-off": send_off,
            "left": send_off - target,
            "most": most,
            "gap-kept": gap,
            "last": (heads - 1) * gap + target,
        },
        (*says, "wider") if gap > number(values, "gap") else says,
    )


LANE = Calculator(
    name="lane",
    title="Send-off for a lane",
    asks="So many swimmers in one lane: what send-off do they need, and do they fit?",
    fields=lambda club: (
        Field("target", "Time of a rep", Takes.TIME, least=5, most=3_600),
        Field("rest", "Rest wanted", unit="s", most=1_800, default=15),
        Field("swimmers", "Swimmers in the lane", Takes.WHOLE, least=1, most=20, default=5),
        Field("gap", "Gap between them", unit="s", least=3, most=60, default=5),
        Field("lengths", "Lengths in a rep", Takes.WHOLE, least=1, most=80, default=2),
        Field("side", "Swum", Takes.CHOICE, default="front", choices=_SIDES),
    ),
    lines=(
        Line("send-off", "Send-off", How.CLOCK),
        Line("left", "Rest that it leaves", How.TIME),
        Line("last", "Last touch after the leader's start", How.TIME),
        Line("most", "Swimmers who fit", places=0),
        Line("gap-kept", "Gap", unit="s", places=0),
    ),
    sentences={
        "read": "{swimmers} swimmers {gap-kept} apart: leave on {send-off}; the last touches "
        "{last} after the leader has left.",
        "alone": "One swimmer alone: leave on {send-off}.",
        "back": "The leader is back at the wall before the last has left: {most} fit. Swim in "
        "waves, or from both ends.",
        "tail": "The leader meets the tail of the lane after two lengths: {most} fit. Take "
        "another lane, or swim in waves.",
        "wider": "On the back nobody sees ahead: the gap is {gap-kept}.",
    },
    limits="Taken for swimmers of one speed, going round in a circle. It tells the room, and never "
    "who may pass.",
    work=_lane,
    by=(crowded, Clock.need),
    refusals={},
    example={"target": 75.0, "rest": 15.0, "swimmers": 6, "gap": 5.0, "lengths": 4, "side": "back"},
    asked_as=(
        "how many in a lane",
        "swimmers per lane",
        "crowded lane",
        "how many fit in a lane",
        "swimmers in one lane",
        "lane full",
        "space in a lane",
        "kids per lane",
        "how many swimmers in a lane",
        "how many fit in a lane",
        "how close may they follow",
        "how close can they follow each other",
        "how many seconds apart in the lane",
    ),
)
