"""The examples below ``tests/examples``: found, and built into a folder.

``base`` is the smallest whole catalogue. A case, in ``rejected/`` or ``accepted/``, holds only the
files that differ from it, at their paths, and stands for base with those files laid over it. What a
file cannot hold stands in the case's ``case.yml``, a list of steps that are taken in order after
that:

- ``{remove: PATH}``: base without this file or folder
- ``{folder: PATH}``: an empty folder
- ``{copy: PATH, to: PATH}``: a file under another name; ``latin1: true`` where the name is not to
be UTF-8
- ``{link: PATH, to: TARGET}``: a symbolic link
- ``{pipe: PATH}``: a named pipe
- ``{unreadable: PATH}``: a file that nobody may read
  - ``{replace: PATH, find: TEXT, with: TEXT}``: bytes that an editor would show badly or change,
  written with escapes; every ``find`` is replaced; ``encoding`` is UTF-8 unless it says otherwise;
  with ``times`` the new text is repeated so often, and with ``then`` some text follows it
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

EXAMPLES = Path(__file__).parent / "examples"
BASE = EXAMPLES / "base"
_ABOUT = {"case.yml", "expected.txt"}


@dataclass(frozen=True)
class Case:
    """One case: its folder, and the steps of its ``case.yml``."""

    folder: Path

    @property
    def name(self) -> str:
        """The name of its folder."""
        return self.folder.name

    @property
    def expected(self) -> Path:
        """The file with the exact output of ``almanac check``."""
        return self.folder / "expected.txt"

    @property
    def steps(self) -> list[dict[str, Any]]:
        """What its files cannot hold."""
        described = self.folder / "case.yml"
        return (
            yaml.load(described.read_text("utf-8"), yaml.CSafeLoader) if described.is_file() else []
        )

    def build(self, root: Path) -> set[Path]:
        """Lay the case out below ``root``. Returns the files that must not be readable."""
        shutil.copytree(BASE, root, dirs_exist_ok=True)
        shutil.copytree(
            self.folder, root, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*_ABOUT)
        )
        for step in self.steps:
            _STEPS[next(iter(step))](root, step)
        return {root / step["unreadable"] for step in self.steps if "unreadable" in step}


def cases(which: str) -> list[Case]:
    """The cases of ``rejected`` or ``accepted``, by name."""
    return [Case(folder) for folder in sorted((EXAMPLES / which).iterdir()) if folder.is_dir()]


def _remove(root: Path, step: dict[str, Any]) -> None:
    path = root / step["remove"]
    shutil.rmtree(path) if path.is_dir() else path.unlink()


def _copy(root: Path, step: dict[str, Any]) -> None:
    name = step["to"].encode("latin-1") if step.get("latin1") else step["to"].encode()
    target = os.fsencode(root) + b"/" + name
    os.makedirs(os.path.dirname(target), exist_ok=True)  # noqa: PTH103, PTH120 (a name that is no text)
    shutil.copyfile(root / step["copy"], target)


def _link(root: Path, step: dict[str, Any]) -> None:
    path = root / step["link"]
    path.unlink(missing_ok=True)
    path.symlink_to(step["to"])


def _pipe(root: Path, step: dict[str, Any]) -> None:
    os.mkfifo(root / step["pipe"])


def _replace(root: Path, step: dict[str, Any]) -> None:
    path, new = root / step["replace"], step["with"] * step.get("times", 1) + step.get("then", "")
    text = path.read_bytes().decode("utf-8")
    assert step["find"] in text, f"{step['find']!r} is not in {path}"
    path.write_bytes(text.replace(step["find"], new).encode(step.get("encoding", "utf-8")))


_STEPS: dict[str, Callable[[Path, dict[str, Any]], None]] = {
    "remove": _remove,
    "folder": lambda root, step: (root / step["folder"]).mkdir(parents=True),
    "copy": _copy,
    "link": _link,
    "pipe": _pipe,
    "unreadable": lambda root, step: (root / step["unreadable"]).chmod(0),
    "replace": _replace,
}
