"""Work to failure is refused in whichever words; a word of warning, and an end that is named, are
not.
"""

from __future__ import annotations

import pytest

from almanac.checks.to_failure import asks_for_failure


@pytest.mark.parametrize(
    "text",
    [
        "To failure.",
        "Kick the last one to failure.",
        "Repeat to exhaustion, then one more.",
        "Go until you can't.",
        "Sprint until your legs give out.",
        "Hold the wall and kick till they drop.",
        "Keep going until you cannot go on.",
        "Past the point of exhaustion is where it counts.",
        "Until nothing is left.",
        "Last one swimming wins.",
        "Round after round until somebody is sick.",
        "Vertical kick till your arms can no longer hold up.",
    ],
)
def test_unsafe(text: str) -> None:
    assert asks_for_failure(text)


@pytest.mark.parametrize(
    "text",
    [
        "Never to failure: stop at the first broken beat.",
        "Rise until the rate cannot rise any more, then ease.",
        "Talk until talking is easy.",
        "Rest until it could be done again.",
        "Stop before the legs fail, not when they do.",
        "Kick until you reach the flags.",
        "Hold the line until they call you in.",
        "The watch ran to the tenth, a failure of the battery.",
        "Who wins the last length says the number.",
        "Not until you cannot go on: six, and out.",
        "Until the last of the lane has touched.",
        "Drop the board at the flags.",
    ],
)
def test_harmless(text: str) -> None:
    assert not asks_for_failure(text)
