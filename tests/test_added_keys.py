"""Keys that are added to an entry's text: each where it belongs, and every other byte as it was."""

from __future__ import annotations

import pytest

from almanac.source.edits.added_keys import with_keys
from almanac.source.reader import read

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def added(text: str, keys: dict[str, str], path: tuple[str | int, ...] = ("days",)) -> str | None:
    document, findings = read(text.encode(), "x.yml")
    assert document is not None and not findings
    return with_keys(document, {path: keys}, DAYS)


@pytest.mark.parametrize(
    ("before", "keys", "after"),
    [
        ("days:\n  mon: {rest: true}\n  wed: {rest: true}\n", {"tue": "{rest: true}"},
         "days:\n  mon: {rest: true}\n  tue: {rest: true}\n  wed: {rest: true}\n"),
        ("days:\n  wed: {rest: true}  # a note\nend: 1\n",
         {"mon": "{rest: true}", "sun": "{a: 1}", "tue": "{a: 2}"},
         ("days:\n  mon: {rest: true}\n  tue: {a: 2}\n  wed: {rest: true}  # a note\n  sun: {a: "
         "1}\nend: 1\n")),
        ("days:\n  mon:\n    practice: a\n    land: b\n\n# below\nend: 1\n", {"tue": "{a: 1}"},
         "days:\n  mon:\n    practice: a\n    land: b\n  tue: {a: 1}\n\n# below\nend: 1\n"),
        ("days:\n  # of Wednesday\n  wed: {a: 1}\n", {"tue": "{a: 2}"},
         "days:\n  tue: {a: 2}\n  # of Wednesday\n  wed: {a: 1}\n"),
        ("days: {mon: {a: 1}, wed: {a: 2}}\n", {"tue": "{a: 3}", "sun": "{a: 4}"},
         "days: {mon: {a: 1}, tue: {a: 3}, wed: {a: 2}, sun: {a: 4}}\n"),
        ("days:\n  mon: {a: 1}", {"tue": "{a: 2}"}, "days:\n  mon: {a: 1}\n  tue: {a: 2}"),
        ("days:\r\n  mon: {a: 1}\r\nend: 1\r\n", {"tue": "{a: 2}"},
         "days:\r\n  mon: {a: 1}\r\n  tue: {a: 2}\r\nend: 1\r\n"),
        ("days:\n  mon:\n    other: >-\n      Two\n      lines.\n", {"sun": "{a: 2}"},
         "days:\n  mon:\n    other: >-\n      Two\n      lines.\n  sun: {a: 2}\n"),
        ("days:\n  mon:\n    all:\n      - a\n      - b: 1\n        c: 2\n", {"sun": "{a: 2}"},
         "days:\n  mon:\n    all:\n      - a\n      - b: 1\n        c: 2\n  sun: {a: 2}\n"),
        # What is empty gets a line each, where it ends a line, and what is said of it stays.
        ("days: {}\nend: 1\n", {"tue": "{a: 2}", "mon": "{a: 1}"},
         "days:\n  mon: {a: 1}\n  tue: {a: 2}\nend: 1\n"),
        ("days: {}   # to come\r\nend: 1\r\n", {"mon": "{a: 1}"},
         "days:   # to come\r\n  mon: {a: 1}\r\nend: 1\r\n"),
        ("days: { }", {"mon": "{a: 1}"}, "days:\n  mon: {a: 1}"),
        ("{x: 1, days: {}, end: 1}\n", {"mon": "{a: 1}", "tue": "{b: 1}"},
         "{x: 1, days: {mon: {a: 1}, tue: {b: 1}}, end: 1}\n"),
    ],
)  # fmt: skip
def test_a_key_is_put_in_where_it_belongs(before: str, keys: dict[str, str], after: str) -> None:
    assert added(before, keys) == after


def test_what_would_not_read_as_that_is_refused() -> None:
    assert added("days:\n  mon: {a: 1}\n", {"tue": "{a: 1}\n  wed: {a: 2}"}) is None
    assert added("days: []\n", {"tue": "{a: 1}"}) is None
    assert added("days: {mon: {a: 1}}\n", {"tue": "{a: 1}}, end: {b: 1"}) is None
