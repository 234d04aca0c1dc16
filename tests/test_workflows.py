"""What publishes a site by itself, this one's and a new club's; what reviews a proposal is in
``test_pull_request.py``.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import yaml
from git_world import git
from shared import CATALOGUE, copied

from almanac.resources import HOME, STARTERS

OWN = sorted((HOME / ".github/workflows").glob("*.yml"))
EVERY = [*OWN, STARTERS / "club/workflow.yml"]
_USE = re.compile(r"(?m)^ *(?:- )?uses: (.*)$")
_PINNED = re.compile(r"([\w-]+/[\w-]+)@([0-9a-f]{40}) # (v\d+\.\d+\.\d+)\b.*")


def _jobs(path: Path) -> tuple[dict[str, Any], dict[str, Any]]:
    workflow = yaml.safe_load(path.read_text("utf-8"))
    return workflow, workflow["jobs"]


def test_every_action_is_pinned_by_commit_and_the_same_everywhere() -> None:
    pins: dict[str, set[tuple[str, str]]] = {}
    for path in EVERY:
        uses = _USE.findall(path.read_text("utf-8"))
        assert uses, path
        for use in uses:
            found = _PINNED.fullmatch(use)
            assert found, (path.name, use)
            pins.setdefault(found[1], set()).add((found[2], found[3]))
    assert {name: len(own) for name, own in pins.items()} == dict.fromkeys(pins, 1)


def test_what_a_new_club_gets_has_the_fewest_rights() -> None:
    workflow, jobs = _jobs(STARTERS / "club/workflow.yml")
    assert workflow["permissions"] == {"contents": "read"}
    rights = {name: job.get("permissions") for name, job in jobs.items()}
    assert rights == {"site": None, "publish": {"pages": "write", "id-token": "write"}}
    assert not [step for step in jobs["publish"]["steps"] if "run" in step]
    assert "refs/heads/main" in jobs["publish"]["if"]
    (checkout,) = [step for step in jobs["site"]["steps"] if "checkout@" in step.get("uses", "")]
    assert checkout["with"]["persist-credentials"] is False


def test_no_job_runs_on_for_hours() -> None:
    """A job without a limit may run for six: https://docs.github.com/actions, timeout-minutes."""
    for path in EVERY:
        for name, job in _jobs(path)[1].items():
            assert 0 < job["timeout-minutes"] <= 120, (path.name, name)


def test_a_new_club_reads_in_the_summary_what_a_proposal_changes(tmp_path: Path) -> None:
    """The step is run as a runner runs it, by bash, on a proposal that is merged into main."""
    _, jobs = _jobs(STARTERS / "club/workflow.yml")
    (step,) = [own for own in jobs["site"]["steps"] if "almanac review" in own.get("run", "")]
    assert step["if"] == "github.event_name == 'pull_request'" and step["continue-on-error"]
    assert "${{" not in step["run"]  # nothing of a proposal's is pasted into what is run
    root, summary = copied(CATALOGUE, tmp_path / "club"), tmp_path / "summary.md"
    changed = root / "plans/sets/kick-and-go.yml"
    git(root, "init", "-qb", "main")
    git(root, "add", "-A")
    git(root, "commit", "-qm", "before")
    git(root, "switch", "-qc", "proposal")
    changed.write_text(changed.read_text("utf-8").replace("reps: 4", "reps: 6", 1), "utf-8")
    git(root, "commit", "-qam", "more")
    git(root, "switch", "-q", "main")
    git(root, "merge", "-q", "--no-ff", "-m", "as a host merges it to be tried", "proposal")
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    environment = {**os.environ, "PATH": path, "GITHUB_STEP_SUMMARY": str(summary)}
    command = step["run"].replace("$$", "$")
    subprocess.run(["bash", "-c", command], cwd=root, env=environment, check=False)
    said = summary.read_text("utf-8")
    assert "`kick-and-go`" in said and "4" in said and "6" in said and "figure" in said


def test_the_site_is_published_from_the_default_branch_alone() -> None:
    workflow, jobs = _jobs(HOME / ".github/workflows/publish.yml")
    assert set(workflow[True]) == {"push", "workflow_dispatch"}  # YAML 1.1 reads 'on' as true
    assert workflow[True]["push"] == {"branches": ["main"]}
    assert jobs["publish"]["needs"] == "build" and "default_branch" in jobs["build"]["if"]
    runs = [step["run"] for step in jobs["build"]["steps"] if "run" in step]
    assert runs == ["bash scripts/build"] and (HOME / "scripts/build").is_file()
    assert not [step for step in jobs["publish"]["steps"] if "run" in step]
