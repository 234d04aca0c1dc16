"""Progressions: ordered stages, each with a test for moving on, from which an assistant learns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import blake2s
from typing import ClassVar

from almanac.model.entry import Entry, Evidence, Ids, Reference, Span, leans_on, references


@dataclass(frozen=True)
class Option:
    """One answer to a question, whether it is right, and why."""

    answer: str
    why: str
    right: bool = False


@dataclass(frozen=True)
class Question:
    """A question that an assistant answers alone."""

    question: str
    options: tuple[Option, ...]

    @property
    def key(self) -> str:
        """What answers to it are kept under: another question has another."""
        return blake2s(self.question.encode(), digest_size=5).hexdigest()


@dataclass(frozen=True)
class Stage:
    """One stage of a progression."""

    title: str
    aim: str
    drills: Ids
    sessions: Span
    move_on_when: str
    step_back_when: str
    check_yourself: tuple[Question, ...]
    sets: Ids = ()


@dataclass(frozen=True, kw_only=True)
class Progression(Entry):
    """Ordered stages towards a skill."""

    kind: ClassVar[str] = "progression"
    goal: str
    level: str
    for_whom: str
    why: str
    stages: tuple[Stage, ...]
    shown_on_deck: tuple[str, ...] = ()
    evidence: tuple[Evidence, ...] = ()

    @property
    def questions(self) -> tuple[Question, ...]:
        """The questions of all stages, in order."""
        return tuple(question for stage in self.stages for question in stage.check_yourself)

    def references(self) -> Iterator[Reference]:
        for stage in self.stages:
            yield from references("drill", stage.drills, "teaches")
            yield from references("set", stage.sets, "uses")
        yield from leans_on(self.evidence)
