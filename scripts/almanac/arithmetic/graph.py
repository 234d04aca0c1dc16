"""The graph that drills make by what they need first and what they lead to."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from graphlib import CycleError, TopologicalSorter
from heapq import heappop, heappush
from typing import Any

Graph = Mapping[str, Sequence[str]]


def circles(graph: Graph) -> list[tuple[str, ...]]:
    """Chains of ids that lead back to their start; each begins at its first id by name.

    ``graph`` maps an id to the ids it points at. A circle is named, the arrow that closes it is set
    aside, and so on until none is left: so a graph with a circle always gives at least one.
    """
    left = {node: sorted(set(graph[node])) for node in sorted(graph)}
    found: dict[tuple[str, ...], None] = {}
    while True:
        try:
            TopologicalSorter(left).prepare()
        except CycleError as problem:
            chain = problem.args[1][:0:-1]  # it names them against the arrows, the first one twice
            found[_turned(chain)] = None
            left[chain[-1]].remove(chain[0])
        else:
            return list(found)


def _turned(circle: Sequence[str]) -> tuple[str, ...]:
    first = circle.index(min(circle))
    return (*circle[first:], *circle[:first])


def teaching_order(needs: Graph, order: Callable[[str], Any]) -> list[str]:
    """Ids so that each comes after all it needs; ties by ``order`` and then by id.

    ``needs`` maps every id to those it needs first. Ids in a circle, and what needs them, are left
    out.
    """
    sorter = TopologicalSorter({id: set(first) & needs.keys() for id, first in needs.items()})
    with suppress(CycleError):  # what is in no circle can be had all the same
        sorter.prepare()
    ready: list[tuple[Any, str]] = []
    taught: list[str] = []
    while True:
        for id in sorter.get_ready():
            heappush(ready, (order(id), id))
        if not ready:
            return taught
        taught.append(heappop(ready)[1])
        sorter.done(taught[-1])
