"""The graph of drills against networkx: circles, the order of teaching, the shortest way."""

from __future__ import annotations

from itertools import pairwise

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.graph import circles, teaching_order

FIXED = {
    "a": ["b", "c"],
    "b": ["d"],
    "c": ["d"],
    "d": ["e"],
    "e": [],
}  # check-values.md, section 15
NEEDS = {
    "a": [],
    "b": ["a"],
    "c": ["a"],
    "d": ["b", "c"],
    "e": ["d"],
}  # the same, from the other end

nodes = [f"drill-{letter}" for letter in "abcdefghij"]
graphs = st.dictionaries(
    st.sampled_from(nodes), st.lists(st.sampled_from(nodes), max_size=4), min_size=1
)
orders = st.fixed_dictionaries({node: st.integers(0, 3) for node in nodes})
edges = st.lists(st.tuples(st.integers(0, 9), st.integers(0, 9)), max_size=25)


@st.composite
def acyclic(draw):
    """What each node needs first, without a circle, in a random order of the nodes."""
    order, pairs = draw(st.permutations(nodes)), draw(edges)
    return {
        order[later]: [order[first] for first, end in pairs if end == later and first < later]
        for later in range(len(order))
    }


def directed(graph):
    """The same graph in networkx."""
    found = networkx.DiGraph()
    found.add_nodes_from(graph)
    found.add_edges_from((node, to) for node, ends in graph.items() for to in ends)
    return found


def backwards(needs):
    """From what is needed first to what needs it."""
    return directed(needs).reverse()


# Circles.


@given(graphs)
def test_circles_are_found_where_there_are_some_and_are_real(graph):
    found = circles(graph)
    assert bool(found) == (not networkx.is_directed_acyclic_graph(directed(graph)))
    for chain in found:
        assert all(to in graph[node] for node, to in pairwise([*chain, chain[0]]))
        assert len(set(chain)) == len(chain) and chain[0] == min(chain)
    assert len(set(found)) == len(found)


@given(graphs)
def test_circles_are_among_networkx_s(graph):  # turned to begin at their first by name
    every = {
        tuple(c[c.index(min(c)) :] + c[: c.index(min(c))])
        for c in networkx.simple_cycles(directed(graph))
    }
    assert set(circles(graph)) <= every


@pytest.mark.parametrize(
    ("graph", "found"),
    [
        (FIXED, []),
        (
            {**FIXED, "e": ["a"]},
            [("a", "b", "d", "e"), ("a", "c", "d", "e")],
        ),  # section 15: e -> a closes a circle
        ({"a": ["a"]}, [("a",)]),
        ({"b": ["a"], "a": ["b"]}, [("a", "b")]),
        ({"a": ["nowhere"]}, []),
        ({}, []),
    ],
)
def test_fixed_circles(graph, found):
    got = circles(graph)
    assert set(got) <= set(found) and bool(got) == bool(found)


@given(graphs)
def test_circles_are_the_same_whatever_the_order_of_files(graph):
    turned = {node: ends[::-1] for node, ends in reversed(graph.items())}
    assert circles(turned) == circles(graph)


def test_a_long_chain_is_no_deep_recursion():
    chain = {f"{n:05d}": [f"{n + 1:05d}"] for n in range(3000)}
    assert circles(chain) == []
    assert len(circles({**chain, "03000": ["00000"]})[0]) == 3001
    assert len(teaching_order({**chain, "03000": []}, lambda id: 0)) == 3001


# The order of teaching.


@given(acyclic(), orders)
def test_teaching_order_is_networkx_s(needs, level):
    taught = teaching_order(needs, level.__getitem__)
    assert taught == list(
        networkx.lexicographical_topological_sort(backwards(needs), key=lambda id: (level[id], id))
    )
    place = {id: number for number, id in enumerate(taught)}
    assert all(place[first] < place[id] for id, firsts in needs.items() for first in firsts)


@given(graphs, orders)
def test_what_is_in_a_circle_or_needs_one_is_left_out(graph, level):
    needs = {node: graph.get(node, []) for node in nodes}
    whole = backwards(needs)
    round_about = {
        node
        for group in networkx.strongly_connected_components(whole)
        if len(group) > 1
        for node in group
    }
    round_about |= {node for node in nodes if node in needs[node]}
    left_out = round_about.union(*(networkx.descendants(whole, node) for node in round_about))
    assert sorted(teaching_order(needs, level.__getitem__)) == sorted(set(nodes) - left_out)


@pytest.mark.parametrize(
    ("needs", "level", "taught"),
    [
        (NEEDS, {}, "abcde"),  # section 15
        (NEEDS, {"b": 2, "c": 1}, "acbde"),
        ({"b": [], "a": []}, {}, "ab"),
        ({"a": ["elsewhere"]}, {}, "a"),  # what no entry holds asks for nothing
        ({"a": ["b", "b"], "b": []}, {}, "ba"),
        ({"a": ["b"], "b": ["a"], "c": ["a"], "d": []}, {}, "d"),
        ({}, {}, ""),
    ],
)
def test_fixed_orders(needs, level, taught):
    assert teaching_order(needs, lambda id: level.get(id, 0)) == list(taught)
