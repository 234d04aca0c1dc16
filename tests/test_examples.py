"""Every example, rejected and accepted, gives exactly the findings that stand beside it.

To write the expected files anew after a change of words: ``REWRITE_EXPECTED=1 pytest
tests/test_examples.py``; then read each line of the difference as the coach who will get it.
"""

from __future__ import annotations

import ast
import os
import re
from datetime import date
from pathlib import Path

import pytest
from example_cases import BASE, EXAMPLES, Case, cases

from almanac import source
from almanac.analysis.analysis import Analysis
from almanac.checks import RULES, check
from almanac.findings import worst_first
from almanac.model.load import load
from almanac.report.findings_shown import as_text

TODAY = date(2026, 10, 1)
SOURCE = Path(source.__file__).parent
REWRITE = "REWRITE_EXPECTED" in os.environ


def checked(root: Path) -> str:
    """What ``almanac check`` prints of a folder on the day of the examples."""
    loaded = load(root)
    analysis = Analysis(loaded.catalogue, TODAY) if loaded.catalogue else None
    return as_text(
        worst_first([*loaded.findings, *(check(analysis) if analysis else ())]), loaded.count
    )


def by_name(case: Case) -> str:
    return case.name


def test_base_has_nothing_to_find() -> None:
    assert checked(BASE) == "0 errors, 0 warnings in 29 entries"


@pytest.mark.parametrize("case", cases("rejected"), ids=by_name)
def test_rejected(case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    unreadable = case.build(tmp_path)
    _refuse(unreadable, monkeypatch)
    found = checked(tmp_path) + "\n"
    if REWRITE:
        case.expected.write_text(found, "utf-8")
    assert found == case.expected.read_text("utf-8")
    assert not found.startswith("0 errors, 0 warnings"), "a rejected case has at least one finding"


@pytest.mark.parametrize("case", cases("accepted"), ids=by_name)
def test_accepted(case: Case, tmp_path: Path) -> None:
    case.build(tmp_path)
    assert checked(tmp_path).startswith("0 errors, 0 warnings in ")


def _refuse(files: set[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    """Make reading fail even for root, whom no permission stops."""
    really = Path.open

    def refusing(self: Path, *args: object, **kwargs: object) -> object:
        if self in files:
            raise PermissionError(13, "Permission denied", str(self))
        return really(self, *args, **kwargs)  # type: ignore[arg-type]

    monkeypatch.setattr(Path, "open", refusing)


def given() -> set[str]:
    """The codes of all findings that rejected examples give."""
    lines = "\n".join(case.expected.read_text("utf-8") for case in cases("rejected"))
    return set(re.findall(r"(?m)^\S.*?: (?:error|warning) ([a-z0-9-]+): ", lines))


def written(file: Path) -> set[str]:
    """The codes that a module gives: the first argument of each call that makes a finding."""
    calls = (
        node
        for node in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(node, ast.Call) and node.args
    )
    named = (
        call
        for call in calls
        if ast.unparse(call.func).rpartition(".")[2] in {"error", "warning", "say", "_say"}
    )
    return {call.args[0].value for call in named if isinstance(call.args[0], ast.Constant)}


def test_every_check_has_an_example() -> None:
    missing = {rule.code for rule in RULES} - given()
    assert not missing, f"no rejected example breaks {sorted(missing)}"


@pytest.mark.parametrize(
    "file",
    [*SOURCE.rglob("*.py"), SOURCE / "../model/load.py", SOURCE / "../checks/__init__.py"],
    ids=lambda file: file.stem,
)
def test_every_other_code_has_an_example(file: Path) -> None:
    # bad-value: for a schema keyword that nobody has explained yet. Of what git's trees alone can
    # hold, tests/test_review_hostile.py makes some.
    in_trees = {"case-clash", "marked-as-program", "submodule"}
    unseen = written(file) - given() - {"bad-value"} - in_trees
    assert not unseen, f"no rejected example gives {sorted(unseen)}"


def test_codes_are_found_in_the_source() -> None:
    assert {"unknown-key"} <= written(SOURCE / "explain/keys.py")
    assert {"bad-time"} <= written(SOURCE / "explain/times.py")
    assert {"too-long"} <= written(SOURCE / "explain/amounts.py")
    assert {"duplicate-key", "control-character"} <= written(SOURCE / "tree.py")


def test_there_are_enough_examples() -> None:
    assert len(cases("rejected")) >= 75
    assert len(cases("accepted")) >= 15
    assert not [path for path in EXAMPLES.rglob("*") if path.is_symlink()]
