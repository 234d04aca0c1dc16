"""The requirements files from pyproject.toml: whole, with hashes, for all systems and Pythons.

Each file holds everything that its purpose needs, product included, because pip's hash mode takes
whole lists alone. It starts with a digest of the needs that it was made from: `--check` compares
that with pyproject.toml and asks no network. Only the standard library is used here; uv resolves,
in a throw-away environment.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import subprocess
import sys
import tempfile
import tomllib
import venv
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
UV = "uv==0.13.9"
UV_COMPILE = ["-m", "uv", "pip", "compile"]
# file -> the groups of pyproject.toml that it holds beside the product's own needs
LOCKS = {
    "requirements.txt": ["set-up"],
    "requirements-test.txt": ["set-up", "test"],
    "scripts/requirements-bench.txt": ["set-up", "test", "bench"],
    "scripts/requirements-node.txt": ["set-up", "node"],
    "scripts/requirements-solver.txt": ["set-up", "solver"],
}
PYTHONS = ["3.11", "3.12", "3.13", "3.14", "3.15"]
NOT_YET = {"scripts/requirements-solver.txt": ["3.15"]}  # OR-Tools has no wheel for it
SYSTEMS = [
    "x86_64-unknown-linux-gnu",
    "aarch64-unknown-linux-gnu",
    "aarch64-apple-darwin",
    "x86_64-pc-windows-msvc",
]
MARK = "# made from needs with the digest "


def needs(project: dict[str, Any], groups: list[str]) -> list[str]:
    """What pyproject.toml asks for, sorted: the product's needs and those of ``groups``, extras
    among them.
    """
    asked = list(project["project"]["dependencies"])
    known = project["dependency-groups"] | project["project"]["optional-dependencies"]
    for group in groups:
        asked += known[group]
    return sorted(asked)


def digest(project: dict[str, Any], groups: list[str]) -> str:
    """A digest of what decides a lock, but for what the index offers on the day."""
    decides = [project["project"]["requires-python"], needs(project, groups)]
    return hashlib.sha256(json.dumps(decides).encode()).hexdigest()


def outdated(root: Path) -> list[str]:
    """The requirements files under ``root`` that do not come from its pyproject.toml as it is."""
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))
    return [
        name for name, groups in LOCKS.items() if _mark_of(root / name) != digest(project, groups)
    ]


def _mark_of(lock: Path) -> str | None:
    """The digest that a file was made from; None where it says none or is missing."""
    if not lock.is_file():
        return None
    lines = lock.read_text(encoding="utf-8").splitlines()
    return next((line.removeprefix(MARK) for line in lines if line.startswith(MARK)), None)


def compile_all(root: Path, upgrade: bool) -> None:
    """Write every file. A smaller one binds the larger: one version of a package in all."""
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))
    with tempfile.TemporaryDirectory() as folder:
        venv.create(folder, with_pip=True)
        program = Path(folder) / ("Scripts" if os.name == "nt" else "bin") / "python"
        subprocess.run([program, "-m", "pip", "install", "--quiet", UV], check=True)
        done: list[str] = []
        for name, groups in LOCKS.items():
            asked = Path(folder) / "needs.in"
            asked.write_text("\n".join(needs(project, groups)) + "\n", encoding="utf-8")
            _compile(program, root, asked, name, done, upgrade)
            body = (root / name).read_text(encoding="utf-8")
            (root / name).write_text(f"{MARK}{digest(project, groups)}\n{body}", encoding="utf-8")
            done.append(name)
        for name in LOCKS:
            _prove(program, root, name)


def _compile(
    program: Path, root: Path, asked: Path, name: str, bound_by: list[str], upgrade: bool
) -> None:
    """One run of uv: ``asked`` becomes the file ``name``; its pins stay unless ``upgrade``."""
    options: list[str | Path] = ["--quiet", "--universal", "--generate-hashes", "--no-annotate"]
    options += ["--python-version", PYTHONS[0]]
    options += ["--custom-compile-command", "scripts/lock", "--output-file", name]
    options += [part for bound in bound_by for part in ("--constraint", bound)]
    options += ["--upgrade"] if upgrade else []
    subprocess.run([program, *UV_COMPILE, *options, asked], check=True, cwd=root)


def _prove(program: Path, root: Path, name: str) -> None:
    """Raise CalledProcessError where a supported system or Python has no wheel of some package.

    It asks no network: the run before has filled uv's cache with what the index says.
    """
    for python in [own for own in PYTHONS if own not in NOT_YET.get(name, [])]:
        for system in SYSTEMS:
            options = ["--quiet", "--offline", "--no-deps", "--only-binary", ":all:"]
            options += ["--python-version", python, "--python-platform", system, name]
            command = [str(program), *UV_COMPILE, *options]
            subprocess.run(command, check=True, cwd=root, stdout=subprocess.DEVNULL)


def main() -> int:
    """Exit code 0, or 1 where --check finds a file that does not fit."""
    parser = argparse.ArgumentParser(
        prog="scripts/lock", description=__doc__.splitlines()[0] if __doc__ else None
    )
    parser.add_argument(
        "--check", action="store_true", help="only say which files no longer fit pyproject.toml"
    )
    parser.add_argument(
        "--upgrade",
        action="store_true",
        help="take the newest versions in place of the present pins",
    )
    asked = parser.parse_args()
    if not asked.check:
        compile_all(ROOT, asked.upgrade)
    stale = outdated(ROOT)
    for name in stale:
        print(
            f"{name} was not made from pyproject.toml as it stands: run scripts/lock",
            file=sys.stderr,
        )
    return 1 if stale else 0


if __name__ == "__main__":
    raise SystemExit(main())
