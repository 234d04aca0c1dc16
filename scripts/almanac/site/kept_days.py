"""What was done of each day of a block, in a few words, to stand beside what was planned."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.figures import table
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.kept import kept_sessions
from almanac.report.shown import shown

_TOLD = (("planned minutes", "kept minutes", "min"), ("planned metres", "kept metres", "m"))
Done = dict[str, list[tuple[str, str]]]  # by the day: lane group, and what it did


def done_of_days(groups: Mapping[str, BlockSummary]) -> Done:
    """What lane groups did on each day that was kept, of how much that was planned."""
    found: Done = {}
    for id, summary in groups.items():
        for kept in kept_sessions(summary):
            own = {figure.name: shown(figure) for figure in table("block", "kept", "kept", kept)}
            told = [f"{own[done]} of {own[planned]} {unit}" for planned, done, unit in _TOLD]
            found.setdefault(str(kept.day.on), []).append((id, f"done {', '.join(told)}"))
    return found
