"""What a figure is: a number with a name, a unit, a way to be shown, and the working that it comes
from.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import Enum
from functools import cached_property
from typing import Any, Generic, TypeVar

from almanac.arithmetic.working import Working
from almanac.frozen import quick

S = TypeVar("S")  # what a figure is of: a set, a lane group's clock, a week of a block
Documented = Callable[..., Any] | property | cached_property[Any]


class Shown(Enum):
    """How a number is shown to a reader; ``report/shown.py`` holds the format of each."""

    TIME = "time"
    TENTHS = "time to a tenth of a second"
    PACE = "time to a tenth of a second, and of what"
    DISTANCE = "distance"
    METRES = "whole metres"
    SHARE = "share"
    CHANGE = "change"
    WHOLE = "whole number"
    NUMBER = "number to a tenth"
    HUNDREDTHS = "number to a hundredth"
    SPEED = "speed"


@dataclass(frozen=True)
class Figure(Generic[S]):
    """One figure of a kind of entry.

    ``name`` is what ``explain`` and reviews call it ("" for the one that goes by the name of what
    it is of alone), ``title`` what a page does. ``working`` gives
    the expression whose value is the figure, None where there is no number; a page then shows
    ``absent``. ``unit`` may follow from what the figure is of. ``explained`` are the functions
    whose docstrings tell how it is computed: that of ``working`` where none are named.
    ``converts`` where it is another figure in another unit, for readers who reckon in that.
    ``partly`` says how much of it is known where a part is missing, and stands beside the number.
    """

    name: str
    title: str
    working: Callable[[S], Working | None]
    shown: Shown
    unit: str | Callable[[S], str] = ""
    explained: tuple[Documented, ...] = ()
    absent: str = "–"
    converts: bool = False
    partly: Callable[[S], str] = lambda subject: ""

    @property
    def documented(self) -> tuple[Documented, ...]:
        """The functions whose docstrings tell how it is computed."""
        return self.explained or (self.working,)

    def of(self, subject: S, label: str = "{}") -> NamedFigure:
        """The figure of one subject; ``label`` has its name in place of ``{}``."""
        unit = self.unit if isinstance(self.unit, str) else self.unit(subject)
        if self.shown in (Shown.TIME, Shown.TENTHS):
            unit = "s"
        name = label.replace("{}", self.name).strip()
        return NamedFigure(name, self.working(subject), unit, self, self.partly(subject))


@quick
@dataclass(frozen=True, slots=True)
class NamedFigure:
    """A figure of one subject, worked out: its full name, its working (None where there is no
    number) and its unit ("" for a bare number, "s" for seconds). ``partly`` says how much is known,
    "" where all is.
    """

    name: str
    working: Working | None
    unit: str
    figure: Figure[Any] = field(repr=False)
    partly: str = ""

    @property
    def value(self) -> float | None:
        """The number, where there is one."""
        return None if self.working is None else self.working.value


@dataclass(frozen=True)
class Section:
    """Figures of one sort of subject that an entry holds: the entry itself, a lane group's clock, a
    week.

    ``subjects`` gives each of them with the form of its figures' names, ``week 3 {}``. ``tables``
    are the figures in the groups that a page shows together; a new figure is one line in one.
    ``chapter`` is where "How it is computed" tells of a figure that is new there.
    """

    key: str
    subjects: Callable[[Any], Iterator[tuple[str, Any]]]
    tables: dict[str, tuple[Figure[Any], ...]]
    chapter: str

    def figures(self, whole: Any) -> Iterator[NamedFigure]:
        """Every figure of every subject in a whole entry."""
        for label, subject in self.subjects(whole):
            for table in self.tables.values():
                for figure in table:
                    yield figure.of(subject, label)
