"""What a calculator is: what it asks for, what it answers, and the words of both. A page's script
works out the same by the same names, so that the words stand here alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum

from almanac.analysis.figures.figure import Documented
from almanac.arithmetic.effort import EffortScale
from almanac.model.catalogue import Catalogue

Given = float | str | Sequence[float]
Found = float | Sequence[float]


class Takes(Enum):
    """What is typed into a field: a time of m:ss, a number, a whole number, or a word of a list."""

    TIME = "time"
    NUMBER = "number"
    WHOLE = "whole"
    CHOICE = "choice"


@dataclass(frozen=True)
class Field:
    """One thing that a calculator asks for.

    ``least`` and ``most`` bound what is taken, in seconds where it is a time. ``default`` stands
    there at first; without one the field is empty. ``choices`` are (word, title). ``many`` takes a
    list; ``optional`` may stay empty.
    """

    name: str
    title: str
    takes: Takes = Takes.NUMBER
    unit: str = ""
    least: float = 0
    most: float = 100_000
    default: float | str | None = None
    choices: tuple[tuple[str, str], ...] = ()
    many: bool = False
    optional: bool = False


class How(Enum):
    """How a number of an answer is shown."""

    TIME = "time"  # to a tenth of a second
    CLOCK = "clock"  # in whole seconds
    NUMBER = "number"


@dataclass(frozen=True)
class Line:
    """One number of the answer, or a row of them: ``places`` decimals where it is a number."""

    name: str
    title: str
    how: How = How.NUMBER
    unit: str = ""
    places: int = 1


@dataclass(frozen=True)
class Answer:
    """What was worked out: a number by each line's name, and the sentences to be read with it."""

    numbers: Mapping[str, Found]
    says: tuple[str, ...]


class NoAnswer(Exception):
    """Nothing can be worked out from what was given: the name of the sentence that says why, and
    the numbers in it.
    """

    def __init__(self, why: str, **numbers: float) -> None:
        super().__init__(why)
        self.why, self.numbers = why, numbers


@dataclass(frozen=True)
class ClubNumbers:
    """What of a club's own numbers its calculators go by."""

    catalogue: Catalogue

    @property
    def scale(self) -> EffortScale:
        """Its efforts."""
        return EffortScale(self.catalogue.efforts)


Work = Callable[[Mapping[str, Given], ClubNumbers], Answer]


@dataclass(frozen=True)
class Calculator:
    """One calculator. ``sentences`` and ``refusals`` hold names of fields and lines in braces,
    which are told as they are shown. ``limits`` says what the answer is not; ``by`` are the
    formulas. ``fields`` may hang on the club's words.
    """

    name: str
    title: str
    asks: str
    fields: Callable[[ClubNumbers], tuple[Field, ...]]
    lines: tuple[Line, ...]
    sentences: Mapping[str, str]
    limits: str
    work: Work
    by: tuple[Documented, ...]
    refusals: Mapping[str, str]
    example: Mapping[str, Given]
    asked_as: tuple[str, ...] = ()
    on_land: bool = False
    """Whether a club that has no pool has a use for it."""


def number(values: Mapping[str, Given], name: str) -> float:
    """A number that was given."""
    value = values[name]
    assert isinstance(value, (int, float))
    return value


def word(values: Mapping[str, Given], name: str) -> str:
    """A word that was chosen."""
    return str(values[name])


def fields(*own: Field) -> Callable[[ClubNumbers], tuple[Field, ...]]:
    """Fields that are the same for every club."""
    return lambda club: own
