"""The JSON contract of a review, version 1."""

from __future__ import annotations

from typing import Any

from almanac.analysis.comparison import Comparison
from almanac.report.set_json import dotted
from almanac.rounding import decimals

VERSION = 1


def review_json(review: Comparison, base: str) -> dict[str, Any]:
    """The review for a program, version 1."""
    return {
        "version": VERSION,
        "base": base,
        "loosened": [
            {
                "sort": one.sort,
                "kind": one.kind,
                "id": one.id,
                "file": one.file,
                "path": dotted(one.path),
                "before": one.before,
                "after": one.after,
            }
            for one in review.loosened
        ],
        "entries": [
            {
                "what": change.what,
                "kind": change.kind,
                "id": change.id,
                "file": change.file,
                "moved_from": change.moved_from,
                "moved_to": change.moved_to,
                "fields": [
                    {"path": dotted(f.path), "before": f.before, "after": f.after}
                    for f in change.fields
                ],
            }
            for change in review.entries
        ],
        "naming": [{"kind": kind, "id": id} for kind, id in sorted(review.naming)],
        "figures": [
            {
                "kind": move.kind,
                "id": move.id,
                "group": move.group,
                "figure": move.name,
                "unit": move.unit,
                "before": move.before,
                "after": move.after,
                "near": move.near,
            }
            for move in review.figures
        ],
        "findings": {
            "appeared": [finding.as_json() for finding in review.appeared],
            "gone": [finding.as_json() for finding in review.gone],
        },
        "alike": [
            {"kind": kind, "ids": [pair.first, pair.second], "share": decimals(pair.share, 3)}
            for kind, pair in review.alike
        ],
        "files": [{"what": file.what, "file": file.path} for file in review.files],
        "unused": [{"kind": kind, "id": id} for kind, id in review.unused],
    }
