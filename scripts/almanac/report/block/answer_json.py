"""The answer of ``compose block --json``."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from almanac.report.block.answer import BlockAnswer, not_met


def answer_json(answer: BlockAnswer) -> Mapping[str, Any]:
    """The contract of ``--json``, version 1: metres and loads are whole numbers, ``of_full`` and
    ``wished`` percent of a full week, shares of 1; None where nothing is known or was wished.
    """
    own = answer.judged
    return {
        "version": 1,
        "block": answer.id,
        "title": own.summary.block.title,
        "starts": own.summary.block.starts.isoformat(),
        "group": own.summary.group,
        "how": answer.how,
        "weeks": [
            {
                "number": week.number,
                "kind": week.kind,
                "load": round(week.load),
                "of_full": None if week.of_full is None else round(week.of_full),
                "wished": week.wished,
                "races": round(week.races),
                "metres": round(week.metres),
                "kick_share": _rounded(week.kick),
                "supine_share": _rounded(week.supine),
                "days": {
                    day.name: [practice.practice.id for practice in day.practices]
                    for day in plan.days
                    if day.practices
                },
            }
            for week, plan in zip(own.weeks, own.summary.weeks, strict=True)
        ],
        "shares": [
            {
                "name": share.name,
                "share": _rounded(share.share),
                "from": share.wished.least,
                "to": share.wished.most,
                "met": share.is_met,
            }
            for share in own.shares
        ],
        "goals": [
            {"goal": goal.name, "practices": goal.found, "wished": goal.wished}
            for goal in own.goals
        ],
        "not_met": [*not_met(answer)],
        "empty": [*answer.empty],
        "left_out": [*answer.left],
        "composed": [*answer.composed],
        "findings": [finding.message for finding in answer.findings],
    }


def _rounded(share: float | None) -> float | None:
    return None if share is None else round(share, 3)
