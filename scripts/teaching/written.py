"""The file of weights."""

from __future__ import annotations

from collections.abc import Iterable

from teaching.bounds import Bounds
from teaching.course import OF_HITS, Course, Taught

_HEAD = """\
# What a text must weigh, and what its traits weigh: scripts/teach writes it, no hand.
# A kind, what it is of, the weight. "following": one group after the other in a clause; "beside":
# both in one text; "placed": a group where a text begins or ends; "shape": of the whole text;
# "hit": a pattern found; "phrase": a word as it stands, or two side by side; "glance": a plain
# word, for a first look.
"""
_DULL = 0.005  # a plain word that weighs less is left out


def written(course: Course, taught: Taught, bounds: Bounds) -> str:
    """The weights as a file that is read line by line."""
    kept = len(taught.columns)
    weights = taught.traits.weights
    names = course.traits.names
    lines = [f"bound\t{name}\t{bound:.3f}" for name, bound in bounds.items()]
    lines[-1] = f"bound\tglance\t{bounds['glance'] - taught.glance.bias:.3f}"
    lines.append(f"bound\tbias\t{taught.traits.bias:.3f}")
    lines.append(f"bound\tphrases\t{taught.phrases.bias:.3f}")
    lines += _sorted(zip(course.hits.names, weights[kept:] * OF_HITS, strict=True))
    lines += _sorted(zip((names[at] for at in taught.columns), weights[:kept], strict=True))
    said = (f"phrase\t{course.phrases.names[at]}" for at in taught.said)
    lines += _sorted(zip(said, taught.phrases.weights, strict=True))
    glance = zip(course.words.names, taught.glance.weights, strict=True)
    lines += _sorted((f"glance\t{word}", own) for word, own in glance if abs(own) > _DULL)
    return _HEAD + "\n".join(lines) + "\n"


def _sorted(weighed: Iterable[tuple[str, float]]) -> list[str]:
    return sorted(f"{name}\t{weight:.2f}" for name, weight in weighed)
