"""The structure holds: data flows one way, modules stay small, commands and layers are
documented.
"""

from __future__ import annotations

import ast
import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

from almanac.checks import RULES
from almanac.commands.main import COMMANDS, module_of
from almanac.source.codes import READING_CODES

ROOT = Path(__file__).resolve().parents[1]
LINT = Path(sys.executable).with_name("lint-imports")
PACKAGE = ROOT / "scripts" / "almanac"
SOURCE = PACKAGE / "source"
LONGEST = 250  # lines of a module
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path.name != "__main__.py")
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "mkdocs.yml", "drills", "plans", "scripts", "tests", "site_src",
    "pyproject.toml",
    "requirements.txt", "requirements-test.txt", "LICENSE",
}  # fmt: skip


def lint(config: Path, package: Path = PACKAGE.parent) -> subprocess.CompletedProcess[str]:
    """What import-linter says of the contracts in ``config``, for the package below ``package``."""
    return subprocess.run(
        [LINT, "--config", config, "--no-cache"],
        cwd=ROOT, env={**os.environ, "PYTHONPATH": str(package)}, capture_output=True, text=True,
        check=False,
    )  # fmt: skip


def test_the_import_contracts_hold() -> None:
    done = lint(ROOT / "pyproject.toml")
    assert done.returncode == 0, done.stdout
    assert "5 kept, 0 broken" in done.stdout


def test_the_contracts_are_shown() -> None:
    """DEVELOPERS.md lists them, and the layers in their order, the lowest first."""
    shown = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    contracts = settings["tool"]["importlinter"]["contracts"]
    assert all(f"\n- {contract['name']}\n" in shown for contract in contracts)
    layers = [layer.replace(" | ", ", ") for layer in reversed(contracts[0]["layers"])]
    assert f"\n{' → '.join(layers)}\n" in shown


AGAINST_THE_FLOW = {
    "units": "from almanac.model.entry import Entry",
    "source/names": "from almanac.checks.rule import Rule",
    "arithmetic/kick": "import time",
    "report/whiteboard": "from markupsafe import Markup",
    "site/finder": "import mkdocs",
}


def test_an_import_against_the_flow_breaks_its_contract(tmp_path: Path) -> None:
    shutil.copytree(PACKAGE, tmp_path / "almanac", ignore=shutil.ignore_patterns("__pycache__"))
    circle = {"analysis/pool_fits": "from almanac.analysis.analysis import Analysis"}
    for module, line in (AGAINST_THE_FLOW | circle).items():
        path = tmp_path / "almanac" / f"{module}.py"
        path.write_text(f"{path.read_text('utf-8')}\n{line}\n", "utf-8")
    said = lint(ROOT / "pyproject.toml", tmp_path).stdout
    assert "0 kept, 5 broken" in said
    assert "- .pool_fits -> .analysis" in said  # the circle
    for module in AGAINST_THE_FLOW:
        assert f"almanac.{module.replace('/', '.')} -> " in said


def test_modules_and_functions_stay_small_and_a_class_has_a_name_of_its_own() -> None:
    """All in one test, each module parsed once: a test a module took longer to report than to
    run.
    """
    assert len(MODULES) > 500
    faults, classes = [], dict[str, str]()
    lengths = {path: path.read_text("utf-8").count("\n") for path in MODULES}
    long = [path for path, lines in lengths.items() if lines > 200]
    if len(long) > len(MODULES) / 20:  # some hold one thing that takes more
        faults.append(f"{len(long)} modules are longer than 200 lines: split what holds two things")
    for path in MODULES:
        name, text = path.relative_to(PACKAGE), path.read_text("utf-8")
        tree = ast.parse(text)
        if not ast.get_docstring(tree):
            faults.append(f"{name}: says not what it is")
        if lengths[path] > LONGEST:
            faults.append(f"{name}: split it: a module holds 60 to 200 lines")
        faults += [
            f"{name}:{node.lineno}: {node.name} fits no screen"
            for node in ast.walk(tree)
            if isinstance(node, ast.FunctionDef) and (node.end_lineno or 0) - node.lineno >= 60
        ]
        for node in tree.body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                other = classes.setdefault(node.name, str(name))
                if other != str(name):
                    faults.append(
                        f"{name}: {node.name} is a class of {other} too: one name, one thing"
                    )
    assert faults == []


def test_who_tells_a_slip_is_listed() -> None:
    """Each module of the packages that tell slips stands in the table of who is asked."""
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    table = text[text.index("## Slips of a hand") : text.index("## Mutants")]
    told = [path for name in ("syntax", "meant", "explain") for path in SOURCE.glob(f"{name}/*.py")]
    names = {f"{path.parent.name}/{path.name}" for path in told if path.stem != "__init__"}
    assert len(names) > 30
    assert sorted(name for name in names if f"`{name}`" not in table) == []


def test_every_command_is_documented() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    for command in COMMANDS:
        assert f"| `{command}" in readme
        assert module_of(command).__doc__


def test_nothing_unexpected_stands_at_the_top() -> None:
    tracked = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - {
        "build",
        "site",
    }
    assert tracked <= TOP_LEVEL


def test_every_code_is_documented() -> None:
    written = set()
    for path in (
        *(PACKAGE / "source").rglob("*.py"),
        *(PACKAGE / "model").rglob("*.py"),
        PACKAGE / "checks" / "__init__.py",
    ):
        written |= set(
            re.findall(r"(?:say|error|warning)\(\s*\"([a-z0-9-]+)\"", path.read_text("utf-8"))
        )
    assert "duplicate-key" in written
    assert written <= READING_CODES.keys()
    assert all(rule.explanation for rule in RULES)
    assert not READING_CODES.keys() & {rule.code for rule in RULES}
