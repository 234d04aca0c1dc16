"""Running tests inside a forked process: which lines a test runs, and whether one meets a mutant.

A process that is forked here has imported what tests need, but nothing of the arithmetic: that is
read afresh, with the mutant in it, so that constants and defaults are mutated like the rest.
"""

from __future__ import annotations

import ast
import gc
import importlib
import importlib.abc
import importlib.machinery
import importlib.util
import json
import os
import resource
import signal
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from types import CodeType, FrameType, ModuleType
from typing import Any

import pytest
from mutate import mutated

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "scripts" / "almanac"
BEFOREHAND = (
    *("hypothesis", "networkx", "numpy", "pint", "scipy.stats", "scipy.integrate", "yaml"),
    "almanac.model.load",
)
SLOW_TO_START = ("cacheprovider", "hypothesispytest", "unraisableexception", "xdist", "timeout")


def modules() -> dict[str, Path]:
    """The modules of the arithmetic, by their own names: ``pace``, and with the package that one
    stands in before it, ``package.pace``.
    """
    folder = PACKAGE / "arithmetic"
    found = [path for path in folder.rglob("*.py") if path.name != "__init__.py"]
    return {".".join(path.relative_to(folder).with_suffix("").parts): path for path in found}


def importers() -> dict[str, set[str]]:
    """By module of the arithmetic those others of it that import it."""
    found: dict[str, set[str]] = defaultdict(set)
    for name, path in modules().items():
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                own = node.module.partition("almanac.arithmetic.")[2]
                for used in (own, *(f"{own}.{alias.name}" for alias in node.names)):
                    found[used].add(name)
    return found


def dotted(path: Path) -> str:
    """The name that a module is imported by."""
    return ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts)


def prepare() -> None:
    """Import what tests need, but nothing of the arithmetic."""
    sys.path.insert(0, str(PACKAGE.parent))
    sys.dont_write_bytecode = False  # or every process would compile every module
    for name in BEFOREHAND:
        importlib.import_module(name)
    gc.freeze()
    assert not {dotted(path) for path in modules().values()} & set(sys.modules)


class Recorder:
    """A pytest plugin: for each test its seconds, and the lines that it runs of each module."""

    def __init__(self) -> None:
        self.names = {str(path): name for name, path in modules().items()}
        self.lines: dict[str, set[int]] = defaultdict(set)
        self.found: dict[str, dict[str, Any]] = {}

    def _trace(self, frame: FrameType, event: str, _: object) -> Callable[..., Any] | None:
        name = self.names.get(frame.f_code.co_filename)
        if name is None:
            return None
        seen = self.lines[name]
        seen.add(frame.f_lineno)

        def each(frame: FrameType, event: str, _: object) -> Callable[..., Any]:
            seen.add(frame.f_lineno)
            return each

        return each

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self.lines.clear()
        started = time.process_time()
        sys.settrace(self._trace)
        try:
            return (yield)
        finally:
            sys.settrace(None)
            lines = {module: sorted(seen) for module, seen in self.lines.items()}
            self.found[item.nodeid] = {"seconds": time.process_time() - started, "lines": lines}


class Chosen:
    """A pytest plugin: only these tests, in this order; properties are tried alike each time, and
    never shrunk.
    """

    def __init__(self, tests: Sequence[str] | None) -> None:
        self.order = {test: number for number, test in enumerate(tests or ())}

    @pytest.hookimpl(tryfirst=True)
    def pytest_collection(self) -> None:
        from hypothesis import HealthCheck, Phase, settings

        settings.register_profile(
            "mutants",
            deadline=None,
            database=None,
            derandomize=True,
            max_examples=50,
            phases=(Phase.explicit, Phase.generate),
            suppress_health_check=list(HealthCheck),
        )
        settings.load_profile("mutants")

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        if self.order:
            items[:] = sorted(
                (item for item in items if item.nodeid in self.order),
                key=lambda i: self.order[i.nodeid],
            )


class Mutated(importlib.abc.MetaPathFinder):
    """Finds one module with its mutant in it."""

    def __init__(self, name: str, path: Path, number: int) -> None:
        self.name, self.path, self.number = name, path, number

    def find_spec(self, name: str, path: object = None, target: ModuleType | None = None) -> Any:
        if name != self.name:
            return None
        return importlib.util.spec_from_file_location(
            name, self.path, loader=_Loader(name, self.path, self.number)
        )


class _Loader(importlib.machinery.SourceFileLoader):
    def __init__(self, name: str, path: Path, number: int) -> None:
        super().__init__(name, str(path))
        self.number = number

    def get_code(self, fullname: str) -> CodeType:
        return compile(mutated(Path(self.path).read_text("utf-8"), self.number), self.path, "exec")


def _pytest(files: Sequence[str], *plugins: object) -> int:
    os.chdir(ROOT)
    quiet = ["-q", "-x", "--no-header", "--tb=no", "-W", "ignore", "--assert=plain"]
    for plugin in SLOW_TO_START:
        quiet += ["-p", f"no:{plugin}"]
    return int(pytest.main([*quiet, *files], plugins=list(plugins)))


def fork_plain(files: Sequence[str], written: Path) -> int:
    """Fork a process that runs all tests on the code as it stands, and writes what each runs.
    Gives the process's id.
    """
    if pid := os.fork():
        return pid
    recorder = Recorder()
    code = _pytest(files, Chosen(None), recorder)
    written.write_text(json.dumps(recorder.found), "utf-8")
    os._exit(code)


def fork_mutant(module: str, number: int, batches: Sequence[Sequence[str]], seconds: float) -> int:
    """Fork a process that runs batches of tests, one after the other, with a mutant in place, and
    ends with 0 where it survives them all. Gives the process's id.

    It is stopped after ``seconds`` of the processor's time, or ten times as long by the wall clock.
    """
    if pid := os.fork():
        return pid
    silence = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silence, 1)
    os.dup2(silence, 2)
    resource.setrlimit(resource.RLIMIT_CPU, (int(seconds) + 1, int(seconds) + 2))
    resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    signal.alarm(10 * int(seconds) + 10)
    path = modules()[module]
    sys.meta_path.insert(0, Mutated(dotted(path), path, number))
    code = 3  # where pytest itself breaks
    try:
        for tests in filter(None, batches):
            code = _pytest(sorted({test.split("::")[0] for test in tests}), Chosen(tests))
            if code:
                break
    finally:
        os._exit(code)
