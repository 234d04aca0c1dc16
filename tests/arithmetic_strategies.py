"""Random sets as entries write them, and the plain reference that lays them out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from arithmetic_world import DRILLS, EFFORTS, GEAR
from hypothesis import strategies as st

TRAVELLED = [id for id in DRILLS if id != "upright"]
TIMED = ["kick", "slow-kick", "socks-kick", "backstroke"]  # those that osprey's tests cover

_words = st.sampled_from(list(EFFORTS))
_pairs = st.lists(_words, min_size=2, max_size=2)
_efforts = st.one_of(
    _words,
    st.fixed_dictionaries({"descend": _pairs}),
    st.fixed_dictionaries({"build": _pairs}),
    st.fixed_dictionaries({"rotate": st.lists(_words, min_size=2, max_size=4)}),
)
_gear = st.lists(st.sampled_from(list(GEAR)), min_size=1, max_size=2, unique=True)
_seconds = st.integers(1, 300)
_sendoffs = st.one_of(
    _seconds, st.fixed_dictionaries({"osprey-1": _seconds}), st.just({"heron-1": 70})
)
_leaving = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"rest": _seconds}),
    st.fixed_dictionaries({"sendoff": _sendoffs}),
)


def items(drills: list[str] = TRAVELLED, step: int = 25) -> st.SearchStrategy[list[dict[str, Any]]]:
    """Lists of items: reps, parted reps, held reps, pauses, rounds in rounds; distances in
    multiples of ``step``.
    """
    piece = {
        "distance": st.integers(1, 8).map(lambda n: n * step),
        "do": st.sampled_from(drills),
        "effort": _efforts,
    }
    part = st.fixed_dictionaries(piece, optional={"gear": _gear})
    count = {"reps": st.integers(1, 5)}
    whole = st.fixed_dictionaries({**count, **piece}, optional={"gear": _gear})
    parted = st.fixed_dictionaries(
        {**count, "parts": st.lists(part, min_size=2, max_size=3)}, optional={"gear": _gear}
    )
    held = st.fixed_dictionaries(
        {**count, "time": _seconds, "do": st.just("upright"), "effort": _efforts}
    )
    reps = st.builds(
        lambda item, leaving: {**item, **leaving}, st.one_of(whole, parted, held), _leaving
    )
    pause = st.fixed_dictionaries({"pause": _seconds})

    def rounds(inner: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
        held = {"rounds": st.integers(1, 3), "items": st.lists(inner, min_size=1, max_size=3)}
        return st.fixed_dictionaries(held, optional={"pause_between": _seconds})

    return st.lists(
        st.recursive(st.one_of(reps, pause), rounds, max_leaves=4), min_size=1, max_size=3
    )


@dataclass
class Plain:
    """One event of the plain reference; ``pieces`` are (part as written, start, end) and None for a
    pause.
    """

    path: tuple[Any, ...]
    rounds: tuple[int, ...]
    number: int = 0
    item: Any = None
    pieces: list[tuple[dict[str, Any], Fraction, Fraction]] | None = None
    seconds: float = 0


def middle(word: str) -> Fraction:
    """The middle of a word's rating."""
    return Fraction(EFFORTS[word][0] + EFFORTS[word][1], 2)


def ratings(effort: Any, number: int, of: int) -> tuple[Fraction, Fraction]:
    """First and last rating of rep ``number`` of ``of``."""
    if isinstance(effort, str):
        return middle(effort), middle(effort)
    [(form, words)] = effort.items()
    if form == "rotate":
        turn = [words[n % len(words)] for n in range(of)]
        return middle(turn[number - 1]), middle(turn[number - 1])
    first, last = map(middle, words)
    if form == "build":
        return first, last
    steps = [first + (last - first) * n / (of - 1) for n in range(of)] if of > 1 else [first]
    return steps[number - 1], steps[number - 1]


def laid_out(
    items: list[dict[str, Any]], path: tuple[Any, ...] = ("items",), rounds: tuple[int, ...] = ()
) -> list[Plain]:
    """Every event of items as they are written, one by one."""
    out: list[Plain] = []
    for place, item in enumerate(items):
        here = (*path, place)
        if "pause" in item:
            out.append(Plain(here, rounds, seconds=item["pause"]))
        elif "rounds" in item:
            turns = [
                laid_out(item["items"], (*here, "items"), (*rounds, turn + 1))
                for turn in range(item["rounds"])
            ]
            for turn, turn_events in enumerate(turns):
                if turn and "pause_between" in item:  # before each round but the first
                    out.append(
                        Plain(
                            (*here, "pause_between"), (*rounds, turn), seconds=item["pause_between"]
                        )
                    )
                out += turn_events
        else:
            for number in range(1, item["reps"] + 1):
                parts = item.get("parts", [item])
                pieces = [(part, *ratings(part["effort"], number, item["reps"])) for part in parts]
                out.append(Plain(here, rounds, number, item, pieces))
    return out


def worn(item: dict[str, Any], part: dict[str, Any]) -> set[str]:
    """All gear of a part: the item's, its own, and what its drill needs."""
    return {*item.get("gear", ()), *part.get("gear", ()), *DRILLS[part["do"]].gear.needs}


def distance(event: Plain) -> int:
    """The distance of a rep; 0 for a pause and for what is held."""
    return sum(part.get("distance", 0) for part, _, _ in event.pieces or [])
