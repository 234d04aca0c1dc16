"""What a piece of gear is not for."""

from __future__ import annotations

from dataclasses import dataclass

from almanac.model.moving import Moving


@dataclass(frozen=True)
class NotFor:
    """What a piece of gear is not for: words of vocabularies, reps with a turn in them, and people
    and conditions in sentences.
    """

    levels: tuple[str, ...] = ()
    modes: tuple[str, ...] = ()
    kicks: tuple[str, ...] = ()
    strokes: tuple[str, ...] = ()
    positions: tuple[str, ...] = ()
    efforts: tuple[str, ...] = ()
    turns: bool = False
    people: tuple[str, ...] = ()

    def way(self, moving: Moving) -> str:
        """The word of what is done that it is not for: a mode, kick, stroke or position; "" where
        there is none.
        """
        asked = (
            (moving.mode, self.modes),
            (moving.kick, self.kicks),
            (moving.stroke, self.strokes),
            (moving.position, self.positions),
        )
        return next((word for word, refused in asked if word in refused), "")
