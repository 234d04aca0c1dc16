"""A piece that a practice may be composed of, as it is written: before it is laid into a pool."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from almanac.arithmetic.scaling import Scalable
from almanac.model.drill import Drill
from almanac.model.swim_set import Item, SwimSet


@dataclass(frozen=True)
class Candidate:
    """A piece before it is laid out: where it comes from and its items, what of them is scaled, and
    to which ``numbers``. ``word`` is the part of a practice that it was written for ("" where it is
    a set or a drill); ``follows`` whether a main part goes before it there, ``talk_s`` the talk it
    had there. ``written`` are a part's items as its file has them, without notes.
    """

    of: str
    id: str
    part: int
    items: tuple[Item, ...]
    scale: Scalable | None
    numbers: tuple[int, ...]
    swim_set: SwimSet | None = None
    drill: Drill | None = None
    word: str = ""
    follows: bool = False
    talk_s: int | None = None
    written: tuple[Any, ...] = ()

    @property
    def alike(self) -> str:
        """The same for parts that are one piece."""
        return f"{self.written} {self.word}"
