"""An entry's file cut up so that a changed one keeps what was not changed, comments and all."""

from __future__ import annotations

import pytest

from almanac.report.written_slices import above, of_keys, of_parts
from almanac.source.reader import Document, read

PRACTICE = """\
# Kept since spring.
title: T
# Shortest on Tuesdays.
parts:
{parts}focus: F  # said at the wall
"""
PARTS = """\
  # Wet before anything else.
  - part: warm-up
    set: easy
# Never without the assistant.

  - part: main
    note: >-
      Loud.
    # The rope is short.
    set: hard
"""


def document(parts: str) -> Document:
    found, findings = read(PRACTICE.format(parts=parts).encode(), "plans/practices/x.yml")
    assert found is not None and not findings
    return found


def test_keys_and_parts_together_are_the_whole_file() -> None:
    own = document(PARTS)
    keys = dict(of_keys(own))
    assert "".join(keys.values()) == own.text
    parts = of_parts(own, "parts")
    assert parts is not None
    assert keys["parts"] == above(keys["parts"]) + "parts:\n" + "".join(parts)
    assert above(keys["parts"]) == "# Shortest on Tuesdays.\n"
    assert [text.splitlines()[0] for text in parts] == [
        "  # Wet before anything else.",
        "# Never without the assistant.",
    ]


@pytest.mark.parametrize("indent", [0, 4])
def test_parts_stand_two_blanks_in_and_no_comment_is_cut(indent: int) -> None:
    """A comment that stands further out than its part stays one."""
    lines = PARTS.splitlines(keepends=True)
    written = "".join(
        line if line.startswith("#") or not line.strip() else " " * indent + line[2:]
        for line in lines
    )
    parts = of_parts(document(written), "parts")
    assert parts is not None
    shifted = "".join(parts)
    assert [line.lstrip() for line in shifted.splitlines()] == [
        line.strip() for line in PARTS.splitlines()
    ]
    assert document(shifted).data == document(PARTS).data


def test_a_list_on_one_line_is_not_cut_up() -> None:
    own, _ = read(b"parts: [{part: main, set: hard}]\n", "plans/practices/x.yml")
    assert own is not None
    assert of_parts(own, "parts") is None
