"""``almanac check`` and ``almanac sum`` as they are called: exit codes, roots, formats, and the
JSON contract.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE, cases
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.checks import RULES
from almanac.commands import shared, sum_
from almanac.commands.main import COMMANDS, main, module_of, parser
from almanac.kinds import KIND
from almanac.report.set_json import set_json
from almanac.site.reference import reference_pages
from almanac.source import schemas

LADDER = "ladder-on-back"
ENTRIES = len([*BASE.rglob("*.yml")])


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A copy of the smallest catalogue, to be spoilt."""
    shutil.copytree(BASE, tmp_path / "club")
    return tmp_path / "club"


def called(capsys: pytest.CaptureFixture[str], *argv: str | Path) -> tuple[int, str, str]:
    """The exit code, output and error output of a command."""
    code = main([str(argument) for argument in argv])
    said = capsys.readouterr()
    return code, said.out, said.err


def spoil(root: Path, file: str, old: str, new: str) -> None:
    text = (root / file).read_text("utf-8")
    assert old in text
    (root / file).write_text(text.replace(old, new), "utf-8")


# ---- check


def test_check_of_a_sound_catalogue(capsys: pytest.CaptureFixture[str]) -> None:
    assert called(capsys, "check", "--root", BASE) == (
        0,
        f"0 errors, 0 warnings in {ENTRIES} entries\n",
        "",
    )


def test_check_of_here(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(BASE)
    assert called(capsys, "check")[0] == 0


def test_check_with_an_error(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:75")
    code, out, err = called(capsys, "check", "--root", root)
    assert (code, err) == (1, "")
    assert out.splitlines() == [
        (
            "plans/sets/six-fifties.yml:11:14: error bad-time: '1:75' is no time: seconds run "
            "from 00 to 59"
        ),
        "    write 2:15, or 75 for seconds",
        f"1 error, 0 warnings in {ENTRIES} entries",
    ]


def test_check_with_a_warning_alone_is_fine(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:22")
    code, out, _ = called(capsys, "check", "--root", root)
    assert code == 0 and out.endswith(f"0 errors, 1 warning in {ENTRIES} entries\n")


def test_check_as_json(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:75")
    code, out, _ = called(capsys, "check", "--root", root, "--format", "json")
    document = json.loads(out)
    assert code == 1
    assert {name: document[name] for name in ("version", "entries", "errors", "warnings")} == {
        "version": 1, "entries": ENTRIES, "errors": 1, "warnings": 0,
    }  # fmt: skip
    assert document["findings"][0]["code"] == "bad-time" and document["findings"][0]["line"] == 11


def test_check_as_annotations(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:75")
    code, out, _ = called(capsys, "check", "--root", root, "--format", "github")
    assert code == 1
    assert out.splitlines()[0].startswith(
        "::error file=plans/sets/six-fifties.yml,line=11,col=14,title=bad-time::'1:75' is no time"
    )


def test_one_file_does_not_flood_the_terminal(
    capsys: pytest.CaptureFixture[str], root: Path
) -> None:
    (root / "plans/sets/six-fifties.yml").write_text("items:\n" + "  - a\n" * 10_000, "utf-8")
    code, out, _ = called(capsys, "check", "--root", root)
    file = [line for line in out.splitlines() if line.startswith("plans/sets/six-fifties.yml")]
    assert code == 1 and len(file) == 21 and "10,006 errors" in out.splitlines()[-1]
    assert file[-1].endswith(" more findings; almanac check --all shows every one")
    code, out, _ = called(capsys, "check", "--all", "--root", root)
    assert code == 1 and out.count("error wrong-type") == 10_000


@pytest.mark.parametrize("key", ["a", "a{}"])
def test_a_file_of_thousands_of_fields_is_told_in_seconds(
    key: str, capsys: pytest.CaptureFixture[str], root: Path
) -> None:
    fields = "".join(f"{key}: b\n".format(number) for number in range(5_000))
    (root / "plans/sets/six-fifties.yml").write_text(fields, "utf-8")
    since = time.process_time()
    code, _, _ = called(capsys, "check", "--root", root)
    assert code == 1 and time.process_time() - since < 60  # it took many minutes


@pytest.mark.parametrize(
    "argv",
    [
        [], ["chek"], ["check", "--format", "xml"], ["check", "extra"], ["sum"],
        ["sum", LADDER, "--course", "33m"],
        ["check", "--root"], ["sum", LADDER, "--group"],
    ],
)  # fmt: skip
def test_wrong_usage_is_2(capsys: pytest.CaptureFixture[str], argv: list[str]) -> None:
    code, out, err = called(capsys, *argv)
    assert (code, out) == (2, "") and "usage: almanac" in err


def test_a_root_that_is_none(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    code, out, err = called(capsys, "check", "--root", tmp_path / "nowhere")
    assert (code, out, err) == (2, "", f"almanac: there is no folder {tmp_path / 'nowhere'}\n")
    code, out, err = called(capsys, "check", "--root", tmp_path)
    assert (code, out) == (2, "")
    assert (
        err == f"almanac: {tmp_path} holds neither drills/ nor plans/; go to the repository, or "
        "name it with --root\n"
    )


@pytest.mark.parametrize("command", ["check", "sum"])
def test_a_fault_of_the_program_is_one_sentence_and_a_log(
    command: str,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("the pool is empty")

    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.setattr(
        shared if command == "check" else sum_,
        "load_and_check" if command == "check" else "find_entry",
        broken,
    )
    named = ["six-fifties"] if command == "sum" else []
    code, out, err = called(capsys, command, *named, "--root", BASE, "--no-cache")
    assert (code, out) == (3, "")
    assert err.count("\n") == 1 and err.startswith(
        "almanac: a fault of the program itself; please report "
    )
    log = Path(err.split()[-1])
    assert (
        log.parent == tmp_path
        and "the pool is empty" in log.read_text("utf-8")
        and "Traceback" in log.read_text("utf-8")
    )


def test_a_terminal_that_lacks_a_character_is_no_fault(root: Path) -> None:
    spoil(
        root, "drills/skills/kicking/back-float.yml", "harder: [back-kick]", "easier: [back-kick]"
    )
    environment = {**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    done = subprocess.run(
        [sys.executable, "-m", "almanac", "check", "--root", root],
        env=environment,
        capture_output=True,
        check=False,
    )
    assert done.returncode == 1 and done.stderr == b""
    assert b"back-kick \\u2192 back-float" in done.stdout


def test_output_that_nobody_reads_is_no_fault() -> None:
    line = f"{sys.executable} -m almanac sum six-fifties --root {BASE} --json | head -1"
    done = subprocess.run(["bash", "-o", "pipefail", "-c", line], capture_output=True, check=False)
    assert done.stdout == b"{\n" and done.stderr == b""


# ---- sum


def test_the_ladder_on_the_back(capsys: pytest.CaptureFixture[str]) -> None:
    """The worked example of the design: 1000 m, 700 kicked on the back, 300 swum."""
    code, out, _ = called(capsys, "sum", LADDER, "--root", CATALOGUE)
    assert code == 0
    assert "Distance 1,000 m = 2 × (6 × 50 + 2 × (25 + 50)) + 100" in out
    assert "17 reps, 40 lengths of 25 m" in out
    assert "Swim 300 m (30 %), Kick 700 m (70 %)" in out
    assert "On the back 1,000 m (100 %)" in out


@pytest.fixture(scope="module")
def ladder() -> dict[str, Any]:
    """What ``almanac sum ladder-on-back --json`` prints."""
    with contextlib.redirect_stdout(io.StringIO()) as out:
        assert main(["sum", LADDER, "--root", str(CATALOGUE), "--json"]) == 0
    document: dict[str, Any] = json.loads(out.getvalue())
    return document


def test_the_ladder_as_json(ladder: dict[str, Any]) -> None:
    summary = ladder
    assert (
        summary["distance"],
        summary["unit"],
        summary["metres"],
        summary["lengths"],
        summary["reps"],
    ) == (
        1000,
        "m",
        1000.0,
        40,
        17,
    )
    assert summary["by"]["mode"] == {"kick": 700, "swim": 300}
    assert summary["by"]["position"] == {"supine": 1000}
    assert summary["shares"]["kick"] == 0.7 and summary["shares"]["supine_flutter"] == 1


def summed(capsys: pytest.CaptureFixture[str], *argv: str | Path) -> dict[str, Any]:
    code, out, _ = called(capsys, "sum", *argv, "--json")
    assert code == 0
    document: dict[str, Any] = json.loads(out)
    return document


CONTRACT: dict[str, Any] = {
    "version": int, "kind": str, "id": str, "course": str, "distance": (int, float), "unit": str,
    "metres": float,
    "lengths": (int, float), "reps": int, "by": dict, "groups": dict, "brief": list,
    "findings": list,
}  # fmt: skip
GROUP = {"clock_s": float, "work_s": float, "rest_s": float, "rated_work": float, "reps": list}
REP = {
    "path": str, "round": (int, type(None)), "rep": int, "distance": int, "target_s": float,
    "sendoff_s": (float, type(None)),
    "rest_s": float,
}  # fmt: skip
FINDING = {
    "severity": str,
    "code": str,
    "file": str,
    "line": int,
    "column": int,
    "message": str,
    "mend": str,
}


def holds(value: dict[str, Any], contract: dict[str, Any]) -> None:
    """Every field of a contract is there, and of its type."""
    for name, kinds in contract.items():
        assert isinstance(value[name], kinds), f"{name}: {value[name]!r}"


def test_the_json_contract(ladder: dict[str, Any]) -> None:
    """As architecture.md shows it; fields may be added, none may go or change its type."""
    summary = ladder
    holds(summary, CONTRACT)
    assert (summary["version"], summary["kind"], summary["id"], summary["course"]) == (
        1,
        "set",
        LADDER,
        "25m",
    )
    assert set(summary["by"]) == {"mode", "kick", "stroke", "position", "gear", "effort"}
    for facet in summary["by"].values():
        assert sum(facet.values()) == pytest.approx(summary["distance"])
    for group in summary["groups"].values():
        holds(group, GROUP)
        assert len(group["reps"]) == summary["reps"]
        for rep in group["reps"]:
            holds(rep, REP)
    first = summary["groups"]["osprey-1"]["reps"][0]
    assert (first["path"], first["round"], first["rep"], first["distance"], first["sendoff_s"]) == (
        "items[0].items[0]",
        1,
        1,
        50,
        65.0,
    )
    for line in summary["brief"]:
        holds(
            line,
            {
                "hazard": str,
                "title": str,
                "gravity": str,
                "control": str,
                "from": list,
                "adds": list,
            },
        )
    for finding in summary["findings"]:
        holds(finding, FINDING)
        assert finding["file"] == f"plans/sets/{LADDER}.yml"


def test_sum_holds_the_findings_of_the_set_alone(
    capsys: pytest.CaptureFixture[str], root: Path
) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:22")
    spoil(
        root,
        "drills/gear/fins.yml",
        "on: 2026-09-01, again: 2027-09-01",
        "on: 2020-09-01, again: 2021-09-01",
    )
    assert [
        finding["code"] for finding in summed(capsys, "six-fifties", "--root", root)["findings"]
    ] == ["sendoff-too-tight"]
    code, out, _ = called(capsys, "sum", "six-fifties", "--root", root)
    assert code == 0 and out.endswith(
        "    write 1:25, the nearest that fits; 1:30 leaves the rest that the effort wants\n"
        "0 errors, 1 warning in 1 entry\n"
    )


def test_sum_for_one_lane_group(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    another = (
        "  heron-2: {title: Heron two, squad: heron, lanes: 1, heads: 4, gap: 0:10}\ngear_owned:"
    )
    spoil(root, "plans/club.yml", "gear_owned:", another)
    assert list(summed(capsys, "six-fifties", "--root", root)["groups"]) == ["heron-1", "heron-2"]
    assert list(summed(capsys, "six-fifties", "--root", root, "--group", "heron-1")["groups"]) == [
        "heron-1"
    ]


def test_sum_for_a_lane_group_that_is_none(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = called(capsys, "sum", "six-fifties", "--root", BASE, "--group", "heron-9")
    assert (code, out, err) == (
        2,
        "",
        "almanac: there is no lane group 'heron-9'; there are heron-1\n",
    )


@pytest.mark.parametrize(
    ("course", "unit", "metres", "lengths"),
    [("25yd", "yd", 274.32, 12), ("25m", "m", 300, 12), ("50m", "m", 300, 6)],
)
def test_sum_in_another_course(
    capsys: pytest.CaptureFixture[str], course: str, unit: str, metres: float, lengths: int
) -> None:
    summary = summed(capsys, "six-fifties", "--root", BASE, "--course", course)
    assert (summary["course"], summary["distance"], summary["unit"]) == (course, 300, unit)
    assert (summary["metres"], summary["lengths"]) == (metres, lengths)


@pytest.mark.parametrize(
    ("name", "near"),
    [("six-fiftys", "six-fifties"), ("SIX_FIFTIES", "six-fifties"), ("tusday", "tuesday")],
)
def test_a_misspelt_name_suggests(capsys: pytest.CaptureFixture[str], name: str, near: str) -> None:
    code, out, err = called(capsys, "sum", name, "--root", BASE)
    assert (code, out) == (2, "") and err.endswith(f"'{name}'; the nearest: {near}\n")


def test_a_name_far_from_any(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = called(capsys, "sum", "somersaults", "--root", BASE)
    assert (code, out) == (2, "") and "'somersaults'" in err and "nearest" not in err


def test_sum_by_an_old_name(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    (root / "plans/sets/old-fifties.yml").write_text("moved_to: six-fifties\n")
    assert summed(capsys, "old-fifties", "--root", root)["id"] == "six-fifties"


def test_sum_by_an_old_name_that_leads_nowhere(
    capsys: pytest.CaptureFixture[str], root: Path
) -> None:
    (root / "plans/sets/old-fifties.yml").write_text("moved_to: gone\n")
    code, _, err = called(capsys, "sum", "old-fifties", "--root", root)
    assert code == 2 and "'old-fifties'" in err


def test_sum_of_a_file_outside(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    file = tmp_path / "tonight.yml"
    file.write_text(
        (BASE / "plans/sets/six-fifties.yml").read_text("utf-8").replace("reps: 6", "reps: 8"),
        "utf-8",
    )
    summary = summed(capsys, file, "--root", BASE)
    assert (summary["id"], summary["distance"], summary["findings"]) == ("tonight", 400, [])


def test_sum_of_a_file_outside_named_like_a_set(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    file = tmp_path / "six-fifties.yml"
    file.write_text(
        (BASE / "plans/sets/six-fifties.yml").read_text("utf-8").replace("reps: 6", "reps: 8"),
        "utf-8",
    )
    assert summed(capsys, file, "--root", BASE)["distance"] == 400
    assert summed(capsys, "six-fifties", "--root", BASE)["distance"] == 300


def test_sum_of_a_broken_file_outside(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    file = tmp_path / "tonight.yml"
    file.write_text(
        (BASE / "plans/sets/six-fifties.yml")
        .read_text("utf-8")
        .replace("do: back-kick", "do: back-kik"),
        "utf-8",
    )
    code, out, _ = called(capsys, "sum", file, "--root", BASE)
    assert code == 1
    assert out.splitlines() == [
        f"{file}:9:9: error unknown-reference: no drill 'back-kik'",
        "    write back-kick (drills/skills/kicking/back-kick.yml); almanac check --fix does it",
        "1 error, 0 warnings in 1 entry",
    ]


def test_sum_of_a_file_that_is_not_there(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    code, out, err = called(capsys, "sum", tmp_path / "gone.yml", "--root", BASE)
    assert (code, out, err) == (2, "", f"almanac: there is no file {tmp_path / 'gone.yml'}\n")


def test_sum_of_a_broken_set(capsys: pytest.CaptureFixture[str], root: Path) -> None:
    spoil(root, "plans/sets/six-fifties.yml", "1:45", "1:75")
    code, out, _ = called(capsys, "sum", "six-fifties", "--root", root)
    assert code == 1 and out.startswith("plans/sets/six-fifties.yml:11:14: error bad-time:")


@pytest.mark.parametrize(
    "file", ["drills/skills/kicking/back-kick.yml", "plans/club.yml", "drills/vocabulary/goals.yml"]
)
def test_sum_where_something_else_is_broken_says_what(
    capsys: pytest.CaptureFixture[str], root: Path, file: str
) -> None:
    """Not "0 errors" and nothing more: the error that keeps the set from being worked out."""
    (root / file).write_text("title: [\n", "utf-8")
    code, out, _ = called(capsys, "sum", "six-fifties", "--root", root)
    assert (
        code == 1
        and out.startswith(f"{file}:1:8: error yaml-syntax:")
        and out.endswith(f"1 error, 0 warnings in {ENTRIES} entries\n")
    )
    code, out, _ = called(capsys, "sum", "six-fifties", "--root", root, "--json")
    assert code == 1 and json.loads(out)["findings"][0]["file"] == file


def test_every_set_adds_up(analysis: Analysis) -> None:
    """No set makes inf, nan or a fault; facets add up."""
    assert len(analysis.computable) > 10
    for id in analysis.computable:
        summary = set_json(analysis.summary(id))
        json.dumps(summary, allow_nan=False)
        for facet in summary["by"].values():
            assert sum(facet.values()) == pytest.approx(summary["distance"], abs=0.01)


# ---- documented


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_explains_itself(capsys: pytest.CaptureFixture[str], name: str) -> None:
    module = module_of(name)
    assert name == module.NAME
    code, out, _ = called(capsys, module.NAME, "--help")
    assert code == 0
    said = " ".join(out.split())
    assert " ".join((module.__doc__ or "-").split())[:60] in said, (
        "the help is the module's own docstring"
    )
    assert "--root DIR" in said
    (commands,) = (action for action in parser()._actions if action.dest == "command")
    for action in commands.choices[module.NAME]._actions:  # type: ignore[index, call-overload, union-attr]
        assert action.help, f"{module.NAME} {action.dest} has no help"


def test_the_help_lists_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = called(capsys, "--help")
    assert code == 0 and all(f"\n    {name} " in out for name in COMMANDS)
    said = " ".join(out.split())
    for name in COMMANDS:
        sentence = " ".join((module_of(name).__doc__ or "").split()).partition(". ")[0].rstrip(".")
        assert f"{name} {sentence}." in said, f"{name} is not told in a whole sentence"


def test_the_version(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = called(capsys, "--version")
    assert code == 0 and out.startswith("almanac ")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_check_is_explained(rule: Any) -> None:
    assert len(rule.explanation) > 30 and rule.explanation.rstrip(")").endswith("."), (
        "the docstring is what is published"
    )
    assert rule.code == rule.code.lower() and " " not in rule.code


def test_codes_are_given_once() -> None:
    codes = [rule.code for rule in RULES]
    assert len(codes) == len(set(codes))


def test_the_checks_page_and_the_field_tables_hold_all_there_is() -> None:
    analysis = shared.load_and_check(BASE, DAY).analysis
    assert analysis is not None
    pages = {page.file: page.context for page in reference_pages(analysis)}
    shown = [rule for _, rules in pages["checks.md"]["by_severity"] for rule in rules]
    assert {rule["code"] for rule in shown} == {rule.code for rule in RULES}
    assert all(paragraph for rule in shown for paragraph in rule["paragraphs"])
    assert [kind["kind"] for kind in pages["fields.md"]["kinds"]] == list(KIND)
    for kind in pages["fields.md"]["kinds"]:
        assert {row["field"] for row in kind["rows"]} >= set(schemas.fields(kind["kind"]))
        assert all(row["about"] and row["holds"] for row in kind["rows"]), kind["kind"]


def test_rejected_examples_stop_a_build(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A failing build writes nothing into the site."""
    case = next(case for case in cases("rejected") if case.name == "time-over-59-seconds")
    case.build(tmp_path)
    (tmp_path / "site").mkdir()
    (tmp_path / "site/index.html").write_text("the last good one")
    code, out, err = called(capsys, "build", "--root", tmp_path)
    assert code == 1 and "bad-time" in out and err == "nothing was built: mend the errors first\n"
    assert [file.name for file in (tmp_path / "site").iterdir()] == ["index.html"]
    assert not (tmp_path / "build").exists()


def test_explain_asks_for_a_name_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain"]) == 2
    assert capsys.readouterr().err.rstrip().endswith("required: NAME")


def test_a_set_is_asked_for_fewer_or_more_rounds(capsys: pytest.CaptureFixture[str]) -> None:
    # 2 × (6 × 50 + 2 × (25 + 50)) + 100 as written: 450 m a round
    for number, metres, expected in ((1, 550, []), (3, 1450, ["drill-dose"])):
        argv = ("sum", LADDER, "--rounds", str(number), "--json", "--root", CATALOGUE)
        status, out, _ = called(capsys, *argv)
        asked = json.loads(out)
        assert asked["distance"] == metres and status == bool(expected)
        assert {finding["code"] for finding in asked["findings"]} == {*expected}
    status, _, err = called(capsys, "sum", LADDER, "--rounds", "0", "--root", CATALOGUE)
    assert status == 2 and f"'{LADDER}' takes 1 to" in err
