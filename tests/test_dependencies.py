"""What is imported, what pyproject.toml names and what the requirements files pin are one and the
same.
"""

from __future__ import annotations

import ast
import re
import runpy
import shutil
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
LOCKING = runpy.run_path(str(ROOT / "scripts" / "lock_requirements.py"))
LOCKS = LOCKING["LOCKS"]
INSTALLED = packages_distributions()
PRODUCT = sorted((ROOT / "scripts" / "almanac").rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
BENCH = sorted((ROOT / "scripts").glob("*.py"))
# Needs that no module imports: where they are used, and the words that show it.
USED_OTHERWISE = {
    "mkdocs": ("scripts/almanac/**/*.py", "mkdocs"),
    "setuptools": ("pyproject.toml", 'build-backend = "setuptools'),
    "mypy": ("pyproject.toml", "[tool.mypy]"),
    "ruff": ("pyproject.toml", "[tool.ruff]"),
    "import-linter": ("pyproject.toml", "[tool.importlinter]"),
    "pytest-timeout": ("pyproject.toml", "\ntimeout = "),
    "pytest-xdist": ("scripts/test", "--numprocesses"),
    "types-jsonschema": ("scripts/almanac/**/*.py", "from jsonschema"),
    "types-pyyaml": ("scripts/almanac/**/*.py", "import yaml"),
    "check-jsonschema": ("scripts/bench_*.py", "check-jsonschema"),
}


def _imported(files: list[Path]) -> set[str]:
    """The distributions that ``files`` import from, by canonical name, without the standard library
    and this repository.
    """
    names: set[str] = set()
    for file in files:
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                names |= {alias.name.partition(".")[0] for alias in node.names}
            elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
                names.add(node.module.partition(".")[0])
    ours = {"almanac"} | {
        path.stem for folder in ("tests", "scripts") for path in (ROOT / folder).glob("*.py")
    }
    ours |= {path.parent.name for path in (ROOT / "scripts").glob("*/*.py")}
    foreign = names - set(sys.stdlib_module_names) - ours
    return {canonicalize_name(INSTALLED.get(name, [name])[0]) for name in foreign}


def _named(needs: list[str]) -> set[str]:
    return {canonicalize_name(Requirement(need).name) for need in needs}


PRODUCT_NEEDS = _named(PROJECT["project"]["dependencies"])
EXTRAS = _named(
    [need for needs in PROJECT["project"]["optional-dependencies"].values() for need in needs]
)
GROUPS = {group: _named(needs) for group, needs in PROJECT["dependency-groups"].items()}


def test_each_import_is_named() -> None:
    assert _imported(PRODUCT) <= PRODUCT_NEEDS | EXTRAS, (
        "add it to dependencies in pyproject.toml, then run scripts/lock"
    )
    assert _imported(TESTS) <= PRODUCT_NEEDS | EXTRAS | GROUPS["test"], (
        "add it to the group test, then run scripts/lock"
    )
    assert _imported(BENCH) <= PRODUCT_NEEDS | GROUPS["test"] | GROUPS["bench"] | GROUPS["set-up"]


@pytest.mark.parametrize(
    "needs, files",
    [
        (PRODUCT_NEEDS, PRODUCT),
        (EXTRAS, PRODUCT),
        (GROUPS["test"], TESTS),
        (GROUPS["bench"], BENCH),
        (GROUPS["set-up"], []),
    ],
    ids=["product", "extras", "test", "bench", "set-up"],
)
def test_each_need_is_used(needs: set[str], files: list[Path]) -> None:
    unused = needs - _imported(files)
    assert [name for name in sorted(unused) if not _used_otherwise(name)] == []


def _used_otherwise(name: str) -> bool:
    if name not in USED_OTHERWISE:
        return False
    pattern, words = USED_OTHERWISE[name]
    return any(words in path.read_text(encoding="utf-8") for path in ROOT.glob(pattern))


def test_each_need_has_its_reason() -> None:
    developers = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").lower()
    named = PRODUCT_NEEDS.union(EXTRAS, *GROUPS.values())
    missing = [
        name
        for name in named
        if not re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", developers)
    ]
    assert missing == [], "DEVELOPERS.md, Dependencies, says why each is needed"


def _pins(lock: str) -> dict[str, set[str]]:
    """What a requirements file pins: the versions by name, and a failure where a line has no
    hash.
    """
    pins: dict[str, set[str]] = {}
    text = re.sub(r"(?m)^#.*\n", "", (ROOT / lock).read_text(encoding="utf-8")).replace("\\\n", "")
    for line in text.splitlines():
        need, *hashes = line.split("--hash=sha256:")
        assert hashes and all(re.fullmatch(r"[0-9a-f]{64}\s*", each) for each in hashes), line[:80]
        requirement = Requirement(need.strip())
        pins.setdefault(canonicalize_name(requirement.name), set()).add(
            str(requirement.specifier).removeprefix("==")
        )
    return pins


@pytest.mark.parametrize("lock", LOCKS)
def test_a_lock_fits_its_needs(lock: str) -> None:
    """Each need is pinned, to versions that it allows, with hashes."""
    pins = _pins(lock)
    for need in LOCKING["needs"](PROJECT, LOCKS[lock]):
        requirement = Requirement(need)
        versions = pins[canonicalize_name(requirement.name)]
        assert all(requirement.specifier.contains(version) for version in versions), need


def test_locks_agree() -> None:
    """A package has one version whatever it is installed for, so that tests run what the product
    runs.
    """
    product, *others = [_pins(lock) for lock in LOCKS]
    for pins in others:
        assert product.items() <= pins.items()
        for more in others:
            assert {name: pins[name] for name in pins.keys() & more} == {
                name: more[name] for name in pins.keys() & more
            }


def test_locks_are_up_to_date() -> None:
    assert LOCKING["outdated"](ROOT) == [], "run scripts/lock"


def test_a_changed_need_outdates_the_locks(tmp_path: Path) -> None:
    (tmp_path / "scripts").mkdir()
    for name in ["pyproject.toml", *LOCKS]:
        shutil.copy(ROOT / name, tmp_path / name)
    assert LOCKING["outdated"](tmp_path) == []
    text = (tmp_path / "pyproject.toml").read_text(encoding="utf-8")
    for old, new, stale in [
        ('"cattrs"', '"cattrs>=1"', list(LOCKS)),
        (
            '"hypothesis"',
            '"hypothesis>=1"',
            [lock for lock, groups in LOCKS.items() if "test" in groups],
        ),
        ('">=3.11"', '">=3.12"', list(LOCKS)),
    ]:
        (tmp_path / "pyproject.toml").write_text(text.replace(old, new), encoding="utf-8")
        assert LOCKING["outdated"](tmp_path) == stale
    (tmp_path / "requirements.txt").unlink()
    assert "requirements.txt" in LOCKING["outdated"](tmp_path)


def test_packages_and_their_data_are_discovered() -> None:
    """No list of folders is kept by hand: every folder with Python is a package, every other holds
    data that a pattern names.
    """
    settings = PROJECT["tool"]["setuptools"]
    assert settings["packages"]["find"]["where"] == ["scripts"]
    patterns = settings["package-data"]["almanac"]
    for folder in {path.parent for path in PRODUCT}:
        assert (folder / "__init__.py").is_file(), f"{folder} is not found without __init__.py"
    program = ROOT / "scripts" / "almanac"
    data = {
        path for path in program.rglob("*") if path.is_file() and path.suffix not in {".py", ".pyc"}
    }
    carried = {path for pattern in patterns for path in program.glob(pattern)}
    assert data <= carried, "name it in package-data"


def test_before_a_commit_the_pinned_ruff_looks() -> None:
    """pre-commit fetches it by itself, so that nobody needs one of their own."""
    (pin,) = re.findall(r"(?m)^ruff==\S+", (ROOT / "requirements-test.txt").read_text("utf-8"))
    hooks = (ROOT / ".pre-commit-config.yaml").read_text("utf-8")
    found = re.findall(r"additional_dependencies: \[(.*)\]", hooks)
    assert found and set(found) == {pin}, f"write {pin} in .pre-commit-config.yaml"
    assert ".venv/bin/ruff" not in hooks
