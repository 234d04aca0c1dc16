"""What goes into a wheel beside the package: what the program brings along, from where a checkout
has it. Setuptools calls it (``[tool.setuptools]`` in pyproject.toml).
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from setuptools.command.build_py import build_py
from setuptools.errors import SetupError

ROOT = Path(__file__).resolve().parents[1]
BROUGHT = "almanac/brought"
_FILES = ("mkdocs.yml", "LICENSE", "plans/policy.yml", "plans/club.yml")
_FOLDERS = (
    *(f"site_src/{name}" for name in ("pages", "templates", "styles", "images", "theme", "serve")),
    "site_src/schemas",
    "drills",
    "plans/sets",
)
# What the scripts of the pages are made from: in a source distribution, so that it is whole.
_ONLY_SOURCES = ("site_src/scripts", "site_src/offline")
_LISTS = ("site_src/package.json", "site_src/package-lock.json", "requirements.txt")
_NODE = "scripts/requirements-node.txt"


def parts() -> Iterator[str]:
    """What a wheel brings along, by path from the root of the checkout."""
    yield from _FILES
    yield from _below(_FOLDERS)


def _below(folders: tuple[str, ...]) -> Iterator[str]:
    for folder in folders:
        for path in sorted((ROOT / folder).rglob("*")):
            if path.is_file() and not {"__pycache__"} & {*path.parts} and path.name[0] != ".":
                yield path.relative_to(ROOT).as_posix()


def make_bundles() -> None:
    """The scripts of the pages, bundled where something of them has changed. Raises SetupError."""
    command = [sys.executable, "-m", "almanac.publish.bundles"]
    done = subprocess.run(
        command, cwd=ROOT / "scripts", capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise SetupError(f"the scripts of the pages are missing: {done.stderr.strip()}")


class BuildPy(build_py):
    """Builds the package, with what it brings along below ``almanac/brought/``."""

    def run(self) -> None:
        if not self.editable_mode:
            make_bundles()
            shutil.rmtree(Path(self.build_lib, "almanac"), ignore_errors=True)  # of an earlier one
            self.__dict__.pop("data_files", None)  # found before the bundles were made
        super().run()
        for source, target in self._brought():
            Path(target).parent.mkdir(parents=True, exist_ok=True)
            self.copy_file(source, target)

    def _brought(self) -> Iterator[tuple[str, str]]:
        for part in () if self.editable_mode else parts():
            yield part, f"{self.build_lib}/{BROUGHT}/{part}"

    def get_outputs(self, include_bytecode: bool = True) -> list[str]:
        return [*super().get_outputs(include_bytecode), *(target for _, target in self._brought())]

    def get_source_files(self) -> list[str]:
        own = (*parts(), *_below(_ONLY_SOURCES), *_LISTS, _NODE, "scripts/wheel_parts.py")
        return [*super().get_source_files(), *own]
