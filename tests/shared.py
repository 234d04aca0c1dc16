"""What all tests share: the small catalogue, how much of a long test runs, and what is made once a
run.

``catalogue/`` is a small club with an entry of every kind and every form that an entry can take.
Tests of the code read it and never the club's own entries, so that a coach's edit breaks no test of
the code; what the club itself promises of its entries stands in ``test_content.py``.
"""

from __future__ import annotations

import fcntl
import os
import random
import shutil
import subprocess
import sys
import sysconfig
import venv
import zipfile
from collections.abc import Callable, Iterable
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

import pytest

from almanac import second_process
from almanac.analysis.analysis import Analysis
from almanac.model import load as loading
from almanac.model.load import load
from almanac.model.reading import EntryReader
from almanac.publish import render
from almanac.publish.build import build_site
from almanac.resources import HOME
from almanac.source.document_store import DocumentStore

CATALOGUE = Path(__file__).parent / "catalogue"
DAY = date(2026, 11, 25)  # the day on which the small catalogue is looked at

T = TypeVar("T")
_long = False


def set_long(whole: bool) -> None:
    """Told once, before tests are collected, whether ``--long`` was given."""
    global _long
    _long = whole


def is_long() -> bool:
    """Whether the whole of long tests was asked for."""
    return _long


def examples(by_default: int, whole: int) -> int:
    """How many examples a property is tried on."""
    return whole if _long else by_default


def share(cases: Iterable[T], most: int, seed: object = 0) -> list[T]:
    """A seeded share of cases, ``most`` at most, in their order; all of them where ``--long`` was
    given.
    """
    every = list(cases)
    if _long or len(every) <= most:
        return every
    chosen = sorted(random.Random(repr(seed)).sample(range(len(every)), most))
    return [every[number] for number in chosen]


class _Remembered(DocumentStore):
    """Remembers whatever any test has read, by the bytes."""

    def forget_unused(self) -> None:
        """Another test may ask for it."""


def read_once() -> None:
    """From here on ``load`` in this process reads no file anew whose bytes it has met, as
    ``almanac check`` does not (``test_check_cache.py`` holds that to what is read anew). With a
    store of its own it asks that one.
    """
    store = _Remembered(CATALOGUE)

    def reader(root: Path, own: DocumentStore | None = None, *rest: Any) -> EntryReader:
        return EntryReader(root, store if own is None else own, *rest)

    loading.EntryReader = reader  # type: ignore[misc, assignment]


TWO_CAN = second_process.is_possible  # as the program has it


def in_one_process() -> None:
    """From here on this process halves no work with a second one: a run has a worker for each core
    already. What tests begin as a process of its own does, and ``test_installed.py`` sets a site
    made so beside one that was not.
    """
    for module in (second_process, render):
        module.is_possible = lambda: False


def made_once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], None]) -> Path:
    """A folder that one worker fills and every worker of the run then uses."""
    base = factory.getbasetemp()
    base = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    folder, half_made = base / name, base / f"{name}.half-made"
    with (base / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)  # until the file is closed
        if not folder.is_dir():
            shutil.rmtree(half_made, ignore_errors=True)
            half_made.mkdir()
            make(half_made)
            half_made.rename(folder)
    return folder


def built_once(factory: pytest.TempPathFactory, name: str, root: Path) -> Path:
    """A folder with a copy of the entries below ``root``, the pages and the site that a build makes
    of them.
    """

    def make(scratch: Path) -> None:
        own = load(copied(root, scratch))
        assert own.catalogue is not None, "the catalogue does not load: run almanac check"
        build_site(Analysis(own.catalogue, DAY), own.names, scratch, scratch / "site")

    return made_once(factory, name, make)


def installed_from_wheel(scratch: Path) -> None:
    """A wheel built from the checkout, and unpacked into a virtual environment beside the libraries
    of this one.
    """
    build = [
        sys.executable,
        "-m",
        "pip",
        "wheel",
        "--quiet",
        "--disable-pip-version-check",
        "--no-deps",
        "--no-build-isolation",
    ]
    subprocess.run(
        [*build, "--wheel-dir", str(scratch), str(HOME)], check=True, capture_output=True
    )
    venv.create(scratch / "environment", symlinks=True)
    (folder,) = (scratch / "environment").glob("lib/python*/site-packages")
    (wheel,) = scratch.glob("*.whl")
    with zipfile.ZipFile(wheel) as unpacked:
        unpacked.extractall(folder)
    # the libraries alone: the line that leads to the checkout stands in a .pth of theirs, which
    # nobody reads
    (folder / "libraries.pth").write_text(sysconfig.get_path("purelib") + "\n", "utf-8")


def copied(root: Path, into: Path) -> Path:
    """A copy of the entries below a root, to be changed."""
    for name in ("drills", "plans"):
        shutil.copytree(root / name, into / name)
    return into
