"""What publishes a site by itself, this one's and a new club's; what reviews a proposal is in
``test_pull_request.py``.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import yaml

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


def test_the_site_is_published_from_the_default_branch_alone() -> None:
    workflow, jobs = _jobs(HOME / ".github/workflows/publish.yml")
    assert set(workflow[True]) == {"push", "workflow_dispatch"}  # YAML 1.1 reads 'on' as true
    assert workflow[True]["push"] == {"branches": ["main"]}
    assert jobs["publish"]["needs"] == "build" and "default_branch" in jobs["build"]["if"]
    runs = [step["run"] for step in jobs["build"]["steps"] if "run" in step]
    assert runs == ["bash scripts/build"] and (HOME / "scripts/build").is_file()
    assert not [step for step in jobs["publish"]["steps"] if "run" in step]
