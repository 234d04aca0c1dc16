"""The graph that drills make by what they need first and what they lead to."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Mapping, Sequence
from heapq import heapify, heappop, heappush
from typing import Any

Graph = Mapping[str, Sequence[str]]


def circles(graph: Graph) -> list[tuple[str, ...]]:
    """Chains of ids that lead back to their start; each begins at its first id by name.

    ``graph`` maps an id to the ids it points at. A graph with a circle always gives at least one:
    the one closed by each step back onto the path of a depth-first walk in the order of names.
    """
    found: dict[tuple[str, ...], None] = {}
    done: set[str] = set()
    for start in sorted(graph):
        trail: list[str] = []
        waiting = [iter([start])]
        while waiting:
            node = next(waiting[-1], None)
            if node is None:
                waiting.pop()
                if trail:
                    done.add(trail.pop())
            elif node in trail:
                found[_turned(trail[trail.index(node) :])] = None
            elif node not in done:
                trail.append(node)
                waiting.append(iter(sorted(graph.get(node, ()))))
    return list(found)


def _turned(circle: Sequence[str]) -> tuple[str, ...]:
    first = circle.index(min(circle))
    return (*circle[first:], *circle[:first])


def teaching_order(needs: Graph, order: Callable[[str], Any]) -> list[str]:
    """Ids so that each comes after all it needs; ties by ``order`` and then by id.

    ``needs`` maps every id to those it needs first. Ids in a circle, and what needs them, are left
    out.
    """
    open_needs = {id: {need for need in first if need in needs} for id, first in needs.items()}
    leads_to: dict[str, list[str]] = {id: [] for id in needs}
    for id, first in open_needs.items():
        for need in first:
            leads_to[need].append(id)
    ready = [(order(id), id) for id, first in open_needs.items() if not first]
    heapify(ready)
    taught: list[str] = []
    while ready:
        _, id = heappop(ready)
        taught.append(id)
        for later in leads_to[id]:
            open_needs[later].discard(id)
            if not open_needs[later]:
                heappush(ready, (order(later), later))
    return taught


def shortest_way(graph: Graph, start: str, target: str) -> list[str] | None:
    """The fewest steps from ``start`` to ``target`` along the graph, both included; None where
    there is no way.
    """
    came_from: dict[str, str | None] = {start: None}
    queue = deque([start])
    while queue:
        node = queue.popleft()
        if node == target:
            way = [node]
            while (before := came_from[way[-1]]) is not None:
                way.append(before)
            return way[::-1]
        for following in sorted(graph.get(node, ())):
            if following not in came_from:
                came_from[following] = node
                queue.append(following)
    return None
