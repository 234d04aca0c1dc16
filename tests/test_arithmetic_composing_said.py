"""What is said of a composed practice: every sentence in known words, said somewhere, and none that
is missing.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from language import dictionary

from almanac.arithmetic.composing import asked, hinders, order, sentences, unmet
from almanac.arithmetic.composing import why as of
from almanac.arithmetic.composing.sentences import SENTENCES, role_word, said, words_in_a_row

PROGRAM = Path(__file__).parents[1] / "scripts" / "almanac"
OWN = sentences.__file__  # which says nothing itself


def sources() -> str:
    """The code that says something of a practice."""
    layers = (PROGRAM / "arithmetic", PROGRAM / "report")
    paths = [path for layer in layers for path in layer.rglob("*.py") if path != Path(OWN)]
    return "\n".join(path.read_text("utf-8") for path in sorted(paths))


def test_every_sentence_is_in_known_words() -> None:
    for key, text in SENTENCES.items():
        words = re.findall(r"[A-Za-z]+", re.sub(r"\{\w+\}", "", text))
        assert not [word for word in words if word.lower() not in dictionary()], key
        assert "xx" not in text.lower(), key


def test_every_sentence_is_said_by_its_key_or_by_a_key_that_is_put_together() -> None:
    text = sources()
    whole = set(re.findall(r"""["']([a-z][\w-]*)["']""", text))
    made = {
        tuple(re.split(r"\{[^}]+\}", one)) for one in re.findall(r'f"([a-z]+-[^"]*\{[^"]+)"', text)
    } | {("role-", "")}
    assert not [
        key
        for key in SENTENCES
        if key not in whole
        and not any(key.startswith(first) and key.endswith(last) for first, last in made)
    ]


@pytest.mark.parametrize(
    ("prefix", "words"),
    [
        ("role-", "wsmnec"), ("stands-", "wsmnc"),
        ("", (of.WARMS, of.LEGS, of.COMES_UP, of.CARRIES, of.AFTER, of.USED, of.AS_WISHED)),
        ("", (of.TRAINS, "trains-by", "serves", "serves-by", "serves-some", "written-for")),
        ("unmet-effort-", (unmet.HARDER,)), ("", (of.NO_OTHER,)),
        ("no-other-", ("fits", "because")),
        ("because-", (asked.NOT_FOR, asked.GEAR, asked.ROOM, asked.ADULTS, asked.LATELY,
                      asked.LEFT_OUT)),
        ("because-", (unmet.MINUTES, unmet.TAUGHT)),
        ("bad-keep-", (asked.NOT_FOR, asked.ROOM, asked.ADULTS, asked.LEFT_OUT)),
        ("bad-keep-", (asked.GEAR, "twice")),
        ("unmet-", (unmet.GOAL, unmet.EFFORT, unmet.NO_SKILL, unmet.NO_RELIEF)),
        ("unmet-skill-", ("none", "because")),
        ("unmet-", (f"{unmet.NO_SKILL}-time-left", f"{unmet.NO_RELIEF}-time-left",
                    f"{unmet.SLOT}-time-left")),
        ("hinders-", (unmet.GOAL, unmet.EFFORT, unmet.MINUTES, unmet.TAUGHT, unmet.KEEP,
                      hinders.PIECE, hinders.FULL, asked.GEAR, asked.ROOM)),
        ("hinders-", (asked.ADULTS, asked.LATELY, asked.LEFT_OUT, "fewer")), ("done-", "01"),
        ("broken-", (order.TIME, order.LIMIT, order.DOSE, order.BREATH, order.TAUGHT)),
        ("what-", ("lanes", "heads", "pool", "group", "goal", "gear", "effort", "piece", "done")),
        ("what-", ("progression",)),
    ],
)  # fmt: skip
def test_there_is_a_sentence_for_each_reason_and_role(prefix: str, words: tuple[str, ...]) -> None:
    assert not [word for word in words if prefix + word not in SENTENCES]


def test_blanks_are_filled() -> None:
    assert said("serves", goal="walls") == "serves walls"
    assert said("hinders-room", role="main set", heads=9) == "No main set has room for 9 in a lane."
    assert said("what-pool") == "pool"
    assert [role_word(role) for role in "wsmnec"] == [
        "Warm-up", "Skill", "Main set", "Main set", "Relief", "Cool-down",
    ]  # fmt: skip
    assert [words_in_a_row(own) for own in (["a"], ["a", "b"], ["a", "b", "c"])] == [
        "a",
        "a and b",
        "a, b and c",
    ]
    with pytest.raises(KeyError):
        said("serves")
