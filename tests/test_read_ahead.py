"""What a second process reads while the first imports is what the first would have read."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY, TWO_CAN, copied

from almanac.cache import SWITCH
from almanac.commands.shared import load_and_check
from almanac.source import read_ahead
from almanac.source.document_store import DocumentStore
from almanac.source.read_ahead import ReadAhead, begin_reading
from almanac.source.snapshot import snapshot

ASKS = "drills/skills/breaststroke/asks.yml"
BROKEN = "drills/skills/breaststroke/broken.yml"
DRILL = "drills/skills/*/*.yml"


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A catalogue with a file that is no YAML and one that asks for a danger; two processors."""
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    monkeypatch.setattr("threading.active_count", lambda: 1)
    monkeypatch.setattr("almanac.second_process.is_possible", TWO_CAN)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.delenv(SWITCH, raising=False)
    root = copied(CATALOGUE, tmp_path / "club")
    (root / BROKEN).parent.mkdir(parents=True, exist_ok=True)
    (root / BROKEN).write_text("title: [unfinished\n", "utf-8")
    drill = min(root.glob(DRILL)).read_text("utf-8")
    asks = "summary: Hold your breath and swim as far as you can under water."
    (root / ASKS).write_text(re.sub(r"(?m)^summary:.*$", asks, drill), "utf-8")
    return root


def at_once(work: Callable[[], ReadAhead]) -> Callable[[], ReadAhead]:
    """All of it done before anybody waits."""
    found = work()
    return lambda: found


@pytest.mark.parametrize("read", ["nothing", "what there was time for", "all"])
def test_what_was_read_ahead_gives_the_same_findings(
    root: Path, monkeypatch: pytest.MonkeyPatch, read: str
) -> None:
    if read == "nothing":
        monkeypatch.setattr("os.cpu_count", lambda: 1)
    if read == "all":
        monkeypatch.setattr(read_ahead, "begun", at_once)
    seen = snapshot(root)
    store = DocumentStore(root)
    ahead = begin_reading(root, store, seen.contents)
    got: list[ReadAhead] = []

    def kept() -> ReadAhead:
        got.append(ahead())
        return got[-1]

    found = load_and_check(root, DAY, store, seen, ahead=kept)
    assert len(got) == 1
    assert set(got[0].data) <= set(seen.contents)
    assert (set(got[0].data) == set(seen.contents)) or read != "all"
    assert (got[0] == ReadAhead()) or read != "nothing"
    alone = load_and_check(root, DAY)
    assert found.findings == alone.findings
    assert {BROKEN, ASKS} <= {one.place.file for one in found.findings}
    assert found.loaded.catalogue is not None
    assert alone.loaded.catalogue is not None
    assert found.loaded.catalogue.entries == alone.loaded.catalogue.entries


def test_who_waits_for_nothing_has_every_file_and_text_read(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # As long as nobody comes for the result, the other goes on.
    monkeypatch.setattr(read_ahead, "begun", at_once)
    ahead = begin_reading(root, DocumentStore(root), snapshot(root).contents)()
    assert ahead.data[BROKEN][0] is None
    assert ahead.data[BROKEN][1]
    assert len(ahead.told) == sum(data is not None for data, _ in ahead.data.values())
    assert any(told for told in ahead.told.values())


def test_what_is_remembered_is_not_read_ahead(root: Path) -> None:
    store = DocumentStore(root)
    load_and_check(root, DAY, store)
    store.save()
    contents = snapshot(root).contents
    assert begin_reading(root, DocumentStore(root), contents)() == ReadAhead()
