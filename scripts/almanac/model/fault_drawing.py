"""What a fault says of its picture: the body as it should be, and what is wrong with it beside."""

from __future__ import annotations

from dataclasses import dataclass, field, fields, replace

from almanac.model.drawing import DrawnBody

SLIPS = (
    "knees-up",
    "hips-low",
    "legs-low",
    "chest-up",
    "head-up",
    "hooked-feet",
    "arched",
    "bicycle",
    "shins-only",
    "thighs-forward",
    "elbow-dropped",
    "elbow-leads",
    "elbow-bent",
    "early-lift",
    "feet-wide",
    "aslant",
    "snaking",
    "hand-crosses",
    "feet-crossed",
    "legs-split",
    "knees-wide",
    "one-foot-out",
    "feet-slide",
    "runs-deep",
    "falls-flat",
    "tips-forward",
    "climbs",
)
PLACES = ("head", "waist", "hip", "knee", "foot", "elbow", "hand", "far-foot", "far-hand")


@dataclass(frozen=True)
class WrongBody(DrawnBody):
    """The fault: what slips, and the words that are not those of the body as it should be."""

    slips: tuple[str, ...] = ()


@dataclass(frozen=True)
class FaultDrawing(DrawnBody):
    """The body as it should be, seen from the side or from above, the fault, and the ``place`` at
    which the two differ. ``tolerance_cm``: how far it may be off before a coach would mend it, on a
    swimmer of 1.70 m. ``matter_of_time``: what is wrong is when it happens, which no still shows.
    """

    place: str = "hip"
    tolerance_cm: float | None = None
    matter_of_time: bool = False
    wrong: WrongBody = field(default_factory=WrongBody)

    @property
    def wrong_body(self) -> DrawnBody:
        """The fault with the words that it does not say taken from the body as it should be."""
        own = {
            name: getattr(self.wrong, name) for name in (part.name for part in fields(DrawnBody))
        }
        said = {name: value for name, value in own.items() if value not in (None, False, "", ())}
        right = {part.name: getattr(self, part.name) for part in fields(DrawnBody)}
        return replace(DrawnBody(**right), **said)
