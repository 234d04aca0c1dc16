"""Entries damaged by chance (scripts/fuzz): each is told, in its place, and none ends in a
traceback.

20,000 cases with `--long`, in parts so that workers share them, else the first part of each sort;
`scripts/fuzz --cases 200000` does more of them by hand.
"""

from __future__ import annotations

import importlib
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from example_cases import BASE
from shared import CATALOGUE, examples

from almanac.source import reader, tree

SCRIPTS = Path(__file__).resolve().parents[1] / "scripts" / "fuzzing"
CASES = {"bytes": 11_000, "structure": 8_600, "values": 400}
PARTS = 4


@pytest.fixture
def damage(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    monkeypatch.syspath_prepend(str(SCRIPTS))
    return importlib.import_module("damage")


@pytest.fixture
def judge(damage: ModuleType) -> ModuleType:
    return importlib.import_module("judge")


def slips(damage: ModuleType, judge: ModuleType, sort: str, numbers: range) -> Iterator[str]:
    entries, judging = damage.sound_entries(BASE), judge.Judge(BASE)
    for number in numbers:
        case = damage.damaged(sort, 0, number, entries)
        is_checked = sort == "values"
        for slip in judging.faults(case, is_checked, is_checked and number % 50 == 0):
            yield f"{number} ({case.sound.file}, {case.done}): {slip}"


@pytest.mark.parametrize("part", range(examples(1, PARTS)))
@pytest.mark.parametrize("sort", CASES)
def test_damage_is_told_in_its_place(
    damage: ModuleType, judge: ModuleType, sort: str, part: int
) -> None:
    each = CASES[sort] // PARTS
    assert list(slips(damage, judge, sort, range(part * each, (part + 1) * each))) == []


def test_there_are_as_many_cases_as_are_promised() -> None:
    assert sum(CASES.values()) == 20_000


def test_damage_to_what_all_else_stands_on_is_no_fault(
    damage: ModuleType, judge: ModuleType
) -> None:
    """Vocabularies, the club and its policy, in a catalogue with an entry of every form."""
    entries = [
        entry
        for entry in damage.sound_entries(CATALOGUE)
        if entry.kind in {"vocabulary", "club", "policy"}
    ]
    judging = judge.Judge(CATALOGUE)
    for number in range(examples(6, 400)):
        case = damage.damaged("values", 1, number, entries)
        assert judging.faults(case, True, number % 3 == 0) == [], case.done


# ---- the judge is one


def test_every_sort_of_damage_is_done_and_much_of_it_is_told(damage: ModuleType) -> None:
    entries = damage.sound_entries(BASE)
    done: Counter[str] = Counter()
    codes: Counter[str] = Counter()
    for number in range(1500):
        case = damage.damaged("bytes", 0, number, entries)
        done.update(word.split()[0] for word in case.done.split(", "))
        codes.update(finding.code for finding in reader.read(case.raw, "x.yml")[1])
    assert {
        "piece",
        "flip",
        "cut",
        "again",
        "noise",
        "end",
        "control",
        "bytes",
        "anchor",
        "tag",
        "tab",
        "comment",
    } <= {*done}
    assert {
        "not-utf8",
        "control-character",
        "anchor",
        "tag",
        "tab-indent",
        "duplicate-key",
        "yaml-syntax",
    } <= {*codes}
    same = [damage.damaged("structure", 3, 14, entries).raw for _ in range(2)]
    assert same[0] == same[1], "the same seed and number give the same case"


def test_the_judge_meets_an_exception_a_wrong_place_and_silence(
    damage: ModuleType, judge: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    entries, judging = damage.sound_entries(BASE), judge.Judge(BASE)
    cases = [damage.damaged("bytes", 0, number, entries) for number in range(80)]

    def met(name: str, patched: Any, owner: Any = judge) -> str:
        with monkeypatch.context() as patch:
            patch.setattr(owner, name, patched)
            return "\n".join(slip for case in cases for slip in judging.faults(case))

    def broken(*_: Any) -> None:
        raise ZeroDivisionError("no lengths")

    def one_line_down(raw: bytes, file: str) -> tuple[Any, list[Any]]:
        document, findings = reader.read(raw, file)
        return document, [
            replace(it, place=replace(it.place, line=it.place.line + 1)) for it in findings
        ]

    def elsewhere(raw: bytes, file: str) -> tuple[Any, list[Any]]:
        document, findings = reader.read(raw, file)
        return document, [replace(it, place=replace(it.place, column=4000)) for it in findings]

    assert "ZeroDivisionError: no lengths" in met("_plain", broken, tree.Builder)
    assert "is not told" in met("read", one_line_down)
    assert "does not stand in the file" in met("read", elsewhere)
    assert "nothing is told of a file that is not read" in met("read", lambda *_: (None, []))
