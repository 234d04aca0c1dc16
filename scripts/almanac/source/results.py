"""Which references are of times that were swum: what was timed in one test was in no other."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.source.names import Names
from almanac.source.reader import DataPath

_OF_GROUP = ("tests", "assume")


def is_result(path: DataPath) -> bool:
    """Whether a place in ``plans/club.yml`` names the benchmark of a lane group's time: of one that
    is retired the time counts no more, and never as one of what took its place.
    """
    return len(path) == 5 and path[0] == "lane_groups" and path[2] in _OF_GROUP


def but_results(
    moved: Mapping[tuple[DataPath, str], str], names: Names
) -> dict[tuple[DataPath, str], str]:
    """The present ids by place and old id, without those of times of a retired benchmark."""
    return {
        (path, id): new
        for (path, id), new in moved.items()
        if not (is_result(path) and ("benchmark", id) in names.retired)
    }
