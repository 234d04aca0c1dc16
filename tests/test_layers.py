"""The structure holds: data flows one way, modules stay small, commands and layers are documented."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from almanac.checks import RULES
from almanac.commands.main import COMMANDS
from almanac.source.codes import READING_CODES

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "scripts" / "almanac"
LAYERS = (
    "resources",
    "units",
    "findings",
    "source",
    "model",
    "arithmetic",
    "analysis",
    "checks",
    "drawing",
    "report",
    "site",
    "publish",
    "commands",
)
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path.name != "__main__.py")
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "mkdocs.yml", "drills", "plans", "scripts", "tests", "site_src", "pyproject.toml",
    "requirements.txt", "requirements-test.txt", "LICENSE",
}  # fmt: skip


def layer_of(module: str) -> int | None:
    parts = module.split(".")
    return (
        LAYERS.index(parts[1])
        if parts[0] == "almanac" and len(parts) > 1 and parts[1] in LAYERS
        else None
    )


def imports(path: Path) -> list[str]:
    tree = ast.parse(path.read_text("utf-8"))
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            found += [node.module, *(f"{node.module}.{alias.name}" for alias in node.names)]
    return found


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_layer_imports_only_layers_before_it(path: Path) -> None:
    own = layer_of("almanac." + ".".join(path.relative_to(PACKAGE).with_suffix("").parts))
    if own is not None:
        later = [
            name for name in imports(path) if (layer := layer_of(name)) is not None and layer > own
        ]
        assert not later


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_modules_stay_small_and_say_what_they_are(path: Path) -> None:
    text = path.read_text("utf-8")
    assert ast.get_docstring(ast.parse(text))
    assert text.count("\n") <= 260, "split it: a module holds 60 to 200 lines"


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_functions_fit_a_screen(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef):
            assert (node.end_lineno or 0) - node.lineno < 60, node.name


def test_arithmetic_reads_no_file_and_no_clock() -> None:
    for path in (PACKAGE / "arithmetic").glob("*.py"):
        forbidden = {"os", "pathlib", "time", "random", "io", "datetime.datetime"} & set(
            imports(path)
        )
        assert not forbidden, path.name


def test_every_command_is_documented() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    for command in COMMANDS:
        assert f"| `{command.NAME}" in readme
        assert command.__doc__


def test_nothing_unexpected_stands_at_the_top() -> None:
    tracked = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - {
        "build",
        "site",
    }
    assert tracked <= TOP_LEVEL


def test_every_code_is_documented() -> None:
    written = set()
    for path in (
        *(PACKAGE / "source").glob("*.py"),
        *(PACKAGE / "model").glob("*.py"),
        PACKAGE / "checks" / "__init__.py",
    ):
        written |= set(
            re.findall(r"(?:say|error|warning)\(\s*\"([a-z0-9-]+)\"", path.read_text("utf-8"))
        )
    assert "duplicate-key" in written
    assert written <= READING_CODES.keys()
    assert all(rule.explanation for rule in RULES)
    assert not READING_CODES.keys() & {rule.code for rule in RULES}
