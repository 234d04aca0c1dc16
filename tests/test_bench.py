"""What the benchmarks measure beside stays what it was."""

from __future__ import annotations

import importlib.util
import subprocess
from pathlib import Path
from types import ModuleType

import pytest

from almanac.resources import HOME


@pytest.fixture
def corpus(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The module that writes the corpus; the benchmarks are scripts, and no package."""
    monkeypatch.syspath_prepend(str(HOME / "scripts"))
    spec = importlib.util.find_spec("bench_corpus")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_corpus_is_the_one_that_was_measured_beside(corpus: ModuleType) -> None:
    assert corpus.digest() == corpus.DIGEST


def test_a_corpus_of_other_words_is_another(
    corpus: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(corpus, "SENTENCES", corpus.SENTENCES + 1)
    assert corpus.digest() != corpus.DIGEST


def test_the_corpus_is_written_whole(corpus: ModuleType, tmp_path: Path) -> None:
    settings = corpus.write_corpus(tmp_path / "corpus")
    assert settings.is_file()
    assert len(list((settings.parent / "docs").iterdir())) == corpus.PAGES


@pytest.mark.parametrize(
    ("asked", "code"), [(["--help"], 0), (["pool"], 2), (["serve", "--help"], 2)]
)
def test_what_is_asked_of_the_benchmarks_is_looked_at_before_anything_is_set_up(
    asked: list[str], code: int, tmp_path: Path
) -> None:
    """A copy without the rest of the repository: set-up would fail there."""
    script = tmp_path / "scripts/bench"
    script.parent.mkdir()
    script.write_bytes((HOME / "scripts/bench").read_bytes())
    done = subprocess.run(["bash", script, *asked], capture_output=True, text=True, check=False)
    assert done.returncode == code
    said = done.stdout if code == 0 else done.stderr
    assert said.startswith("Set up on first use" if code == 0 else "bench ")
    if code == 0:
        assert all(f"`{what}`" in said for what in ("site", "build", "serve", "catalogue"))
