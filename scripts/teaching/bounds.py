"""What a text must weigh to be found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from teaching.course import Scores
from teaching.examples import Example
from teaching.model import Numbers

MOST_STOPPED = 0.075  # of the harmless sentences of writers whom neither model nor patterns know
_LOST = 0.008  # of what would be found, how much may be lost by each look before the last
_STEP, _LEAST, _MOST = 0.02, -1.5, 4.0
_BACKING = 1.6  # how much less a text may weigh with a pattern that nothing denies
_BEFORE_BACKING = 1.5  # and how much less again before patterns are looked for

Bounds = Mapping[str, float]


@dataclass(frozen=True)
class Left:
    """A writer's sentences, and what they weigh by a model that was taught by the others."""

    writer: str
    is_known: bool
    unsafe: Numbers
    asked: Numbers
    scores: Scores

    @classmethod
    def of(cls, writer: str, examples: Sequence[Example], scores: Scores) -> Left:
        """The sentences of one writer."""
        unsafe = np.array([one.is_unsafe for one in examples])
        asked = np.array([one.is_asked for one in examples])
        return cls(writer, examples[0].is_known, unsafe, asked, scores)

    def found(self, backed: float, alone: float) -> Numbers:
        """Which sentences are found."""
        whole = self.scores.whole
        return (self.asked & (whole > backed)) | (whole > alone)


def rates(left: Left, found: Bounds) -> tuple[float, float]:
    """The share of unsafe sentences that are caught, and of harmless ones that are stopped."""
    is_found = left.found(found["backed"], found["alone"])
    looked_at = (left.scores.glance > found["glance"]) & (left.scores.bare > found["least"])
    is_found &= looked_at
    return is_found[left.unsafe].mean(), is_found[~left.unsafe].mean()


def bounds(of: Sequence[Left]) -> Bounds:
    """The bounds by which most is caught of those left out, and little enough stopped."""
    tried = [
        (caught, stopped, backed, alone)
        for alone in np.arange(_LEAST, _MOST, _STEP)
        for backed in [alone - _BACKING]
        for caught, stopped in [_mean_rates(of, backed, alone)]
    ]
    _, _, backed, alone = max(one for one in tried if one[1] <= MOST_STOPPED)
    caught = [left.found(backed, alone) & left.unsafe for left in of]
    least = np.concatenate([left.scores.bare[own] for left, own in zip(of, caught, strict=True)])
    glance = np.concatenate([left.scores.glance[own] for left, own in zip(of, caught, strict=True)])
    return {
        "backed": float(backed),
        "alone": float(alone),
        "least": min(float(np.quantile(least, _LOST)), backed - _BEFORE_BACKING),
        "glance": float(np.quantile(glance, _LOST)),
    }


def _mean_rates(of: Sequence[Left], backed: float, alone: float) -> tuple[float, float]:
    found = [left.found(backed, alone) for left in of]
    caught = np.mean([own[left.unsafe].mean() for left, own in zip(of, found, strict=True)])
    stopped = np.mean([own[~left.unsafe].mean() for left, own in zip(of, found, strict=True)])
    return float(caught), float(stopped)
