"""What Find takes out of a question, in JavaScript, run by Node."""

from __future__ import annotations

from pathlib import Path

from node_scripts import run_by_node


def test_what_is_heard_beside_the_words() -> None:
    run_by_node(Path(__file__).parent / "find" / "question.test.js")
