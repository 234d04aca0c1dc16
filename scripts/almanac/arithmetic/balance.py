"""Balance: metres by facet of what a lane group swims, and the shares that coaches ask for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from almanac.arithmetic.swum import Swum
from almanac.model import vocabularies as words


@dataclass(frozen=True)
class Balance:
    """Distance in metres: the whole, by facet, and what coaches ask for of it."""

    metres: float
    by: Mapping[str, Mapping[str, float]]
    kick_m: float
    flutter_kick_m: float
    supine_flutter_m: float
    resisted_m: float
    fast_m: float
    kick_into_stroke_m: float

    @property
    def kick_share(self) -> float | None:
        """Kick as a share of the whole, None where nothing is swum."""
        return _share(self.kick_m, self.metres)

    @property
    def supine_share(self) -> float | None:
        """Flutter on the back as a share of all flutter done legs only."""
        return _share(self.supine_flutter_m, self.flutter_kick_m)

    @property
    def resisted_share(self) -> float | None:
        """Resisted distance as a share of the whole."""
        return _share(self.resisted_m, self.metres)

    @property
    def fast_share(self) -> float | None:
        """Distance at efforts that count as fast as a share of the whole."""
        return _share(self.fast_m, self.metres)

    @property
    def dolphin_m(self) -> float:
        """Distance with a dolphin kick, with arms or without."""
        return self.by.get("kick", {}).get(words.DOLPHIN, 0.0)

    @property
    def dolphin_share(self) -> float | None:
        """Distance with a dolphin kick as a share of the whole."""
        return _share(self.dolphin_m, self.metres)


def _share(part: float, whole: float) -> float | None:
    return part / whole if whole else None


def balance_of(swum: Iterable[Swum]) -> Balance:
    """The distance of what is swum by facet, and what coaches ask for of it."""
    by: dict[str, dict[str, float]] = {}
    sums = dict.fromkeys(("kick", "flutter", "supine", "resisted", "fast", "into_stroke"), 0.0)
    each = tuple(swum)
    for own in each:
        unit, metres = own.course.unit.metres, own.metres
        for facet, split in own.by.items():
            for word, distance in split.items():
                words = by.setdefault(facet, {})
                words[word] = words.get(word, 0.0) + float(distance) * unit
        flutter = sum(piece.distance * unit for piece in own.pieces if piece.drill.is_flutter_kick)
        sums["kick"] += metres * _float(own.shares.kick)
        sums["flutter"] += flutter
        sums["supine"] += flutter * _float(own.shares.supine_flutter)
        sums["resisted"] += metres * _float(own.shares.resisted)
        sums["fast"] += metres * _float(own.shares.fast)
        sums["into_stroke"] += own.shares.kick_into_stroke * unit
    whole = sum(own.metres for own in each)
    return Balance(whole, by, *sums.values())


def _float(share: Fraction | None) -> float:
    return float(share or 0)
