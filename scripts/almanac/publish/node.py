"""Node and npm, which bundle and check the scripts of the pages.

The machine's own, else the wheel from PyPI that stands beside this Python.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

OLDEST_NODE = 20
_WHEEL = "scripts/requirements-node.txt"
_OFFLINE = re.compile("ECONNREFUSED|ECONNRESET|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|connection broken")


class NodeError(Exception):
    """Node or a library is missing, or a tool failed; the message says so, first in a sentence."""


def run_tool(source: Path, name: str, *arguments: str, for_tests: bool = False) -> str:
    """Run a tool of ``source/node_modules`` in ``source``, fetching the libraries where needed.

    Returns what it prints. Raises NodeError where it cannot run, or fails.
    """
    fetch_libraries(source, for_tests)
    tool = shutil.which(name, path=str(source / "node_modules" / ".bin"))
    if tool is None:
        raise NodeError(
            f"{name} is missing from {source / 'node_modules'}: remove that folder, and try again"
        )
    return _run([tool, *arguments], source, f"{name} found something wrong")


def fetch_libraries(source: Path, for_tests: bool = False) -> None:
    """Fetch the locked libraries with npm where they are not there yet.

    For tests that includes those which check the code. No script of a package is run.
    """
    lock = source / "package-lock.json"
    digest = hashlib.sha256(lock.read_bytes()).hexdigest()
    whole, some = f"{digest} all", f"{digest} bundled"
    stamp = source / "node_modules" / ".almanac-stamp"
    with alone(lock):
        held = stamp.read_text("utf-8") if stamp.is_file() else ""
        if held == whole or (held == some and not for_tests):
            return
        npm = shutil.which("npm", path=search_path())
        if npm is None:
            raise NodeError("npm is missing beside Node: install it (Debian: apt-get install npm)")
        command = [npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"]
        failed = "npm could not fetch the libraries of the scripts"
        _run(command + ([] if for_tests else ["--omit=dev"]), source, failed)
        stamp.write_text(whole if for_tests else some, "utf-8")


@contextlib.contextmanager
def alone(file: Path) -> Iterator[None]:
    """One process at a time; where the system has no such locks, the last one wins."""
    try:
        import fcntl
    except ImportError:
        yield
        return
    with file.open() as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield


def search_path() -> str:
    """Where to look for programs, a recent enough Node first. Raises NodeError without one."""
    path = os.environ.get("PATH", "")
    for place in (path, str(Path(sys.executable).parent)):
        node = shutil.which("node", path=place)
        if node and _is_recent(node):
            return os.pathsep.join((str(Path(node).parent), path))
    raise NodeError(
        "the scripts of the pages are not bundled, and there is no Node of version"
        f" {OLDEST_NODE} or later to bundle them: run bash scripts/build once, which fetches it,"
        " or install nodejs and npm"
    )


def install_node(root: Path) -> None:
    """Node as a wheel from PyPI into this Python, where the machine has none recent enough."""
    try:
        search_path()
    except NodeError:
        print("fetching Node into .venv, once ...", flush=True)
        pip = [sys.executable, "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
        _run(
            [*pip, "-r", _WHEEL],
            root,
            "Node could not be fetched from PyPI: install nodejs (20 or later) and npm",
            "",
        )


def _is_recent(node: str) -> bool:
    told = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout
    major = told.strip().removeprefix("v").split(".")[0]
    return major.isdigit() and int(major) >= OLDEST_NODE


def _run(command: Sequence[str], folder: Path, failed: str, path: str | None = None) -> str:
    environment = {**os.environ, "PATH": search_path() if path is None else path}
    done = subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )
    if done.returncode:
        words = f"{done.stdout}{done.stderr}"
        if _OFFLINE.search(words):  # npm and pip say so in many lines
            raise NodeError(f"{failed} (no network reached: connect, and run this again)")
        raise NodeError(f"{failed}:\n{words}".rstrip())
    return done.stdout
