"""Proposals written as entries beside the others, with the run that the build makes of each."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from compose_requests import entry_text
from compose_sizes import runs_by_pool, source
from shared import DAY, copied

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.model.load import load
from almanac.report.compose.answer import Proposals, answer_json
from almanac.report.compose.json import table_json
from almanac.report.run.json import practice_run


def runs_as_entries(
    catalogue: Path, answers: list[tuple[Proposals, dict[str, Any]]], tmp_path: Path
) -> Path:
    """A file for ``make/lay.test.js``: every proposal, and what the build runs of it once it is an
    entry of a copy of the catalogue, where no rule of check but that of likeness says anything of
    it.
    """
    root = copied(catalogue, tmp_path / "club")
    cases: list[dict[str, Any]] = []
    for number, (answer, request) in enumerate(answers):
        for place, own in enumerate(answer.proposals):
            id = f"composed-{number}-{place}"
            text = entry_text(answer, own)
            (root / f"plans/practices/{id}.yml").write_text(text, "utf-8")
            proposal = answer_json(answer)["proposals"][place]
            squad = answer.table.squad.id
            cases.append({"id": id, "squad": squad, "request": request, "proposal": proposal})
    loaded = load(root).catalogue
    assert loaded is not None
    after = Analysis(loaded, DAY)
    found = [one for one in check(after) if "composed-" in one.place.file]
    assert [one for one in found if one.code != "near-duplicate"] == []
    for case in cases:
        case["run"] = practice_run(after, after.practices[case["id"]])
    made = {answer.table.squad.id: answer.made for answer, _ in answers}
    data = {id: table_json(after, own) for id, own in made.items()}
    pieces = {part["piece"] for case in cases for part in case["proposal"]["parts"]}
    sources = dict(source(after, key) for key in sorted(pieces))
    runs = {id: runs_by_pool(after, own) for id, own in made.items()}
    path = tmp_path / "cases.json"
    path.write_text(
        json.dumps({"data": data, "sources": sources, "cases": cases, "runs": runs}), "utf-8"
    )
    return path
