"""What is told without the library is what the library says."""

from __future__ import annotations

import copy
import random
from typing import Any

import pytest
from shared import examples, share

from almanac.model.load import Loaded
from almanac.source import validate
from almanac.source.reader import Document
from almanac.source.validate import Shapes

JUNK: tuple[Any, ...] = (
    "", "x", "x" * 5000, "two words", "back-kick", "2026-02-30", "2026-11-25", "20261125", "0:75",
    "1:15", "1:15\n", "٣", 0, 1,
    -1, 6.0, 0.5, 10**9, True, False, None, [], ["x"], ["x", "x"], [1, 1.0], {}, {"x": 1},
)  # fmt: skip


def spoilt(data: dict[str, Any], chance: random.Random) -> dict[str, Any]:
    """A copy with one place of it changed: replaced, doubled, taken out, or a field that is
    none.
    """
    copied = copy.deepcopy(data)
    places: list[tuple[Any, Any]] = []

    def walk(value: Any) -> None:
        for key, inner in value.items() if isinstance(value, dict) else enumerate(value):
            places.append((value, key))
            if isinstance(inner, (dict, list)):
                walk(inner)

    walk(copied)
    holder, key = chance.choice(places)
    match chance.randrange(4):
        case 0:
            del holder[key]
        case 1 if isinstance(holder, list):
            holder.append(holder[key])
        case 1:
            holder["nonsense"] = holder[key]
        case _:
            holder[key] = chance.choice(JUNK)
    return copied


def test_the_library_alone_finds_the_same(loaded: Loaded, monkeypatch: pytest.MonkeyPatch) -> None:
    # These two read the text, which is not spoilt.
    monkeypatch.setattr(validate, "cut_texts", lambda *_: ())
    monkeypatch.setattr(validate, "asked_about", lambda *_: ())
    chance = random.Random(1)
    with_it, without = Shapes(loaded.names), Shapes(loaded.names)
    found = 0
    for (kind, _), document in share(loaded.documents.items(), 60):
        for _ in range(examples(12, 300)):
            data = spoilt(document.data, chance)
            other = Document(document.file, document.text, data)
            quick = with_it.check(other, kind)
            with monkeypatch.context() as patch:
                patch.setattr(validate, "takes", lambda *_: False)
                whole = without.check(other, kind)
            assert quick.findings == whole.findings, data
            assert quick.moved == whole.moved
            found += bool(whole.findings)
    assert found > 300
