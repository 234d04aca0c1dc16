"""What is found by the weight of a text's words, where no pattern knows how it is said."""

from __future__ import annotations

from almanac.wording.dangers.danger import Danger

_MEND = "say plainly what is meant, and that everyone breathes and stops when they need to"

BY_WEIGHT = Danger(
    name="by-weight",
    asks="reads, with the words around it, like air withheld or a long stay under water",
    mend=_MEND,
    sayings=(),
)
FURTHER_BY_WEIGHT = Danger(
    name="reckless-by-weight",
    asks="reads, with the words around it, like what hurts or drowns people",
    mend=_MEND,
    sayings=(),
)
