"""How charts show efforts: a colour and a hatch for each, by its place on the scale and not by its
name.

Five places have colours of their own, at the ratings that a scale of five plain words is likely to
have; between two of them lies a half step. Two to nine efforts are all told apart.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from almanac.frozen import quick
from almanac.model.policy import Word

_PHONE_PX = 336  # what a drawing has of a narrow phone
_HATCHES = {
    "dots": '<circle cx="3" cy="3" r="1.2"/>',
    "slant": '<path d="M0 8L8 0"/>',
    "cross": '<path d="M0 8L8 0M0 0L8 8"/>',
    "bars": '<path d="M2 0V8M6 0V8"/>',
    "rings": '<circle cx="4" cy="4" r="2" fill="none"/>',
    "slope": '<path d="M0 0L8 8"/>',
    "grid": '<path d="M0 4H8M4 0V8"/>',
    "rows": '<path d="M0 2H8M0 6H8"/>',
}
# The rating of each colour, and its hatch: colour is never alone.
_PLACES = ((1.5, ""), (4.0, "dots"), (6.0, "slant"), (8.0, "cross"), (9.5, "bars"))
_HALF_STEPS = ("rings", "slope", "grid", "rows")
LAST = 2 * (len(_PLACES) - 1)
"""The number of the last step; the first is 0, and the odd ones are half steps."""


@quick
@dataclass(frozen=True, slots=True)
class EffortMark:
    """How an effort is shown: its title within a sentence, and its step from 0 to ``LAST``."""

    title: str
    step: int

    @property
    def css_class(self) -> str:
        """The class that the style sheet colours: ``effort-0`` to ``effort-4``, ``effort-0-half``
        ...
        """
        return f"effort-{self.step // 2}{'-half' if self.step % 2 else ''}"

    @property
    def hatch(self) -> str:
        """The name of its hatch; "" for none."""
        place = self.step // 2
        return _HALF_STEPS[place] if self.step % 2 else _PLACES[place][1]


def effort_marks(efforts: Mapping[str, Word]) -> dict[str, EffortMark]:
    """A mark for each effort of a scale, easiest first; no two alike up to nine efforts."""
    wanted = [round(2 * _place(_middle(word))) for word in efforts.values()]
    steps = _apart(wanted) if len(wanted) <= LAST + 1 else wanted
    return {
        name: EffortMark(word.title.lower(), step)
        for (name, word), step in zip(efforts.items(), steps, strict=True)
    }


def hatch_patterns(identifier: str, marks: Mapping[str, EffortMark], units: float) -> str:
    """The hatches of the marks as SVG patterns, each under its name after ``identifier``.

    A drawing that is ``units`` wide is shown as wide as a phone: a hatch of 8 units is scaled so
    that it is seen there, and drawn in what stands out from its effort's colour.
    """
    scale = f"{units / _PHONE_PX:.2f}"
    used = {mark.hatch: mark.css_class for mark in marks.values() if mark.hatch}
    return "".join(
        f'<pattern id="{identifier}-{name}" class="hatch {css.replace("effort", "hatch")}" '
        f'width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="scale({scale})">'
        f"{_HATCHES[name]}</pattern>"
        for name, css in used.items()
    )


def marked(mark: EffortMark, box: str, identifier: str) -> str:
    """A rectangle in an effort's colour with its hatch over it; ``box`` holds its attributes."""
    over = f'<rect {box} fill="url(#{identifier}-{mark.hatch})"/>' if mark.hatch else ""
    return f'<rect class="{mark.css_class}" {box}/>{over}'


def _middle(word: Word) -> float:
    """The middle of what a word owns; a word without a rating is an error that stops the build."""
    return (word.rating.least + word.rating.most) / 2 if word.rating else 0.0


def _place(rating: float) -> float:
    """Where a rating lies among the five places, from 0 to 4."""
    ratings = [rating for rating, _ in _PLACES]
    if rating <= ratings[0]:
        return 0.0
    for number, (low, high) in enumerate(pairwise(ratings)):
        if rating <= high:
            return number + (rating - low) / (high - low)
    return float(len(ratings) - 1)


def _apart(wanted: list[int]) -> list[int]:
    """The steps nearest to those wanted that rise from each to the next."""
    steps = list(wanted)
    for number in range(1, len(steps)):
        steps[number] = max(steps[number], steps[number - 1] + 1)
    most = LAST
    for number in reversed(range(len(steps))):
        steps[number] = min(steps[number], most)
        most = steps[number] - 1
    return steps
