"""A store of what was worked out: never wrong, whatever happens to its files."""

from __future__ import annotations

import os
import threading
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac import cache
from almanac.cache import SWITCH, Cache, digest


@pytest.fixture(autouse=True)
def _on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(SWITCH, raising=False)


def stored_files(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()]


def test_a_value_comes_back_to_the_same_store_and_key_alone(tmp_path: Path) -> None:
    store = Cache("codes", ("1",), folder=tmp_path)
    assert store.get("a") is None
    store.put("a", b"worked out")
    assert Cache("codes", ("1",), folder=tmp_path).get("a") == b"worked out"
    assert store.get("b") is None
    assert Cache("codes", ("2",), folder=tmp_path).get("a") is None
    assert Cache("other", ("1",), folder=tmp_path).get("a") is None


def test_another_program_finds_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    Cache("codes", folder=tmp_path).put("a", b"worked out")
    monkeypatch.setattr(cache, "program_digest", lambda: b"another")
    assert Cache("codes", folder=tmp_path).get("a") is None


@given(flip=st.integers(0, 41), bit=st.integers(0, 7), cut=st.integers(0, 41))
def test_a_damaged_value_is_as_none(
    tmp_path_factory: pytest.TempPathFactory, flip: int, bit: int, cut: int
) -> None:
    folder = tmp_path_factory.mktemp("store")
    store = Cache("codes", folder=folder)
    store.put("a", b"worked out")
    (file,) = stored_files(folder)
    whole = file.read_bytes()
    assert len(whole) == 42
    damaged = bytearray(whole)
    damaged[flip] ^= 1 << bit
    for content in (bytes(damaged), whole[:cut], whole + b"more", b""):
        file.write_bytes(content)
        assert store.get("a") is None
    file.write_bytes(whole)
    assert store.get("a") == b"worked out"


def test_a_value_under_the_name_of_another_is_as_none(tmp_path: Path) -> None:
    store = Cache("codes", folder=tmp_path)
    store.put("a", b"of a")
    (of_a,) = stored_files(tmp_path)
    content = of_a.read_bytes()
    store.put("b", b"of b")
    (of_b,) = set(stored_files(tmp_path)) - {of_a}
    of_b.write_bytes(content)
    assert store.get("b") is None


@pytest.mark.parametrize("as_file", [True, False])
def test_a_folder_that_cannot_be_used_is_as_none(tmp_path: Path, as_file: bool) -> None:
    if as_file:
        (tmp_path / "codes").write_text("in the way", "utf-8")
    else:
        store = Cache("codes", folder=tmp_path)
        store.put("a", b"worked out")
        (file,) = stored_files(tmp_path)
        file.unlink()
        file.mkdir()
    store = Cache("codes", folder=tmp_path)
    store.put("a", b"worked out")
    assert store.get("a") is None
    store.trim()


def test_switched_off_nothing_is_read_or_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = Cache("codes", folder=tmp_path)
    store.put("a", b"worked out")
    monkeypatch.setenv(SWITCH, "1")
    off = Cache("codes", folder=tmp_path)
    off.put("b", b"more")
    assert off.get("a") is None
    assert len(stored_files(tmp_path)) == 1


def test_what_was_stored_longest_ago_goes_first(tmp_path: Path) -> None:
    store = Cache("codes", folder=tmp_path, most_bytes=150)
    for number, key in enumerate("abcd"):
        before = set(stored_files(tmp_path))
        store.put(key, b"0123456789")  # 42 bytes with its mark
        (file,) = set(stored_files(tmp_path)) - before
        os.utime(file, ns=(number, number))
    store.trim()
    assert [store.get(key) is None for key in "abcd"] == [True, False, False, False]


def test_writers_at_once_leave_one_whole_value(tmp_path: Path) -> None:
    store = Cache("codes", folder=tmp_path)
    values = [bytes([number]) * 50_000 for number in range(8)]
    writers = [threading.Thread(target=store.put, args=("a", value)) for value in values]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert store.get("a") in values
    assert len(stored_files(tmp_path)) == 1


def test_parts_cannot_run_into_each_other() -> None:
    assert len({digest("ab", "c"), digest("a", "bc"), digest("abc"), digest("abc", "")}) == 4
