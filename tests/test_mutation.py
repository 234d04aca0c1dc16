"""The mutants that `scripts/mutants` makes: the slips that it should think of, and none in
words.
"""

from __future__ import annotations

import ast
import importlib
import importlib.util
import json
import textwrap
from pathlib import Path

import pytest

SCRIPTS = Path(__file__).resolve().parents[1] / "scripts" / "mutation"


@pytest.fixture
def mutate(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.syspath_prepend(str(SCRIPTS))
    return importlib.import_module("mutate")


@pytest.mark.parametrize(
    ("written", "slips"),
    [
        ("a < b", {"a <= b", "a >= b"}),
        ("a == b", {"a != b"}),
        ("a + b", {"a - b"}),
        ("a << b", {"a >> b"}),
        ("a >> b", {"a << b"}),
        ("60 * a", {"60 / a", "61 * a", "59 * a"}),
        ("a and b", {"a or b", "a", "b"}),
        ("not a", {"a"}),
        ("max(a, b)", {"min(a, b)", "a", "b"}),
        ("any(a)", {"all(a)"}),
        ("a if b else c", {"a", "c"}),
        ("sorted(a, key=b)", {"sorted(a)"}),
        ("[x for x in a if x]", {"[x for x in a]"}),
        ("a[1:]", {"a[:]", "a[2:]", "a[0:]"}),
        ("a.get(b, 0)", {"a.get(b)", "a.get(b, 1)", "a.get(b, -1)"}),
        ("zip(a, b, strict=True)", set()),  # a guard that no input reaches
        ("'kick'", {"'XXkick'"}),
    ],
)
def test_slips_of_an_expression(mutate, written, slips):
    source = f"def f(a, b, c):\n    return {written}\n"
    made = mutate.mutants("m", source)
    assert {mutant.now for mutant in made} == {f"return {slip}" for slip in slips | {"None"}}
    assert {tuple(mutant.lines) for mutant in made} == {(2,)}
    for mutant in made:
        assert mutant.now in ast.unparse(mutate.mutated(source, mutant.number))


def test_slips_of_statements_and_where_they_are(mutate):
    source = textwrap.dedent('''
        """Words."""
        LIMIT = 3
        def f(a: int, b: int = 2) -> int:
            """More words: 1 < 2."""
            assert a > 0
            if a:
                raise ValueError("words")
            a += b
            return a
    ''')
    made = [
        (m.place, m.was, m.now, m.lines and tuple(m.lines)) for m in mutate.mutants("m", source)
    ]
    assert made == [
        ("(module)", "LIMIT = 3", "LIMIT = 4", None),
        ("(module)", "LIMIT = 3", "LIMIT = 2", None),
        ("f", "2", "3", None),
        ("f", "2", "1", None),
        ("f", "a", "True", (7,)),
        ("f", "a", "False", (7,)),
        ("f", "raise ValueError('words')", "pass", (8,)),
        ("f", "a += b", "a -= b", (9,)),
        ("f", "a += b", "pass", (9,)),
        ("f", "return a", "return None", (10,)),
    ]


def test_tests_of_a_module_of_figures_alone_are_those_of_the_modules_that_use_it(
    mutate, monkeypatch, tmp_path
):
    """Its lines run as it is imported, before any test, so that no test is seen to run them."""
    monkeypatch.syspath_prepend(str(SCRIPTS))
    outcomes = importlib.import_module("outcomes")
    monkeypatch.setattr(outcomes, "KEPT", tmp_path)
    lines = {"planning.variety": [30]}
    seen = {"test_a.py::test_one": {"seconds": 1, "lines": lines}}
    seen["test_b.py::test_two"] = {"seconds": 1, "lines": {"pace": [1]}}
    (tmp_path / "plain-x.json").write_text(json.dumps(seen), "utf-8")
    plain = outcomes.plain_run([], "x")
    (mutant, *_) = mutate.mutants("planning.costs", "EMPTY = 5000\n")
    assert plain.batches(mutant) == [[], ["test_a.py::test_one"]]


def test_what_is_listed_as_equivalent_is_a_mutant_that_is_made(mutate) -> None:
    """Else `scripts/mutants` ends with 1 after a run of hours."""
    forks = importlib.import_module("forks")
    spec = importlib.util.spec_from_file_location("mutants", SCRIPTS / "__main__.py")
    program = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(program)
    sources = {name: path.read_text("utf-8") for name, path in forks.modules().items()}
    made = (one for name, source in sources.items() for one in mutate.mutants(name, source))
    same, stale = program.equivalents(program.names(made))
    assert same
    assert stale == []
