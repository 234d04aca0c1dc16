"""What was kept of sessions, as rows of a table: what was done beside what was planned."""

from __future__ import annotations

from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import table
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.kept import kept_sessions
from almanac.model.catalogue import Catalogue
from almanac.model.log import Log
from almanac.model.practice import Practice
from almanac.report.shown import shown
from almanac.site.links import Link, link


def kept_rows(catalogue: Catalogue, summary: BlockSummary) -> list[dict[str, Any]]:
    """The sessions of a block that were kept, by day, for its lane group."""
    return [
        {
            "on": str(kept.day.on),
            "entry": _entry(catalogue, kept.log),
            "what": kept.log.other,
            "cells": [shown(figure) for figure in table("block", "kept", "kept", kept)],
            "heads": kept.log.heads,
            "told": _told(kept.log),
        }
        for kept in kept_sessions(summary)
    ]


def _entry(catalogue: Catalogue, log: Log) -> Link | None:
    """The link to the practice or the circuit that was done."""
    if log.practice:
        return link(catalogue.practices[log.practice])
    return link(catalogue.sets[log.land]) if log.land else None


def logs_of(analysis: Analysis, practice: Practice) -> list[dict[str, Any]]:
    """What was kept of a practice, the newest first."""
    groups = analysis.catalogue.lane_groups
    logs = analysis.catalogue.users(practice, Log)
    return [
        {
            "on": str(log.on),
            "groups": ", ".join(groups[group].title for group in log.groups),
            "cells": [log.minutes, log.metres, log.heads, log.rating],
            "told": _told(log),
        }
        for log in sorted(logs, key=lambda log: (log.on, log.id), reverse=True)
    ]


def _told(log: Log) -> list[str]:
    """What was changed, and the note."""
    return [*log.changed, *([log.note] if log.note else [])]
