"""Print the summary of a set, a practice or a block.

NAME is an id, or the path of a file outside the catalogue. A set shows the whiteboard, totals,
facets, the clock of each lane group, gear and brief; a practice its run sheet, as it is written or
as it is on the night; a block its weeks.
"""

from __future__ import annotations

import argparse
import json
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import WHOLES
from almanac.commands import asked_for, on_the_night
from almanac.commands.find_entry import FoundEntry, find_entry
from almanac.commands.outcome import ERRORS, FINE, UsageError, today
from almanac.report.findings_shown import FORMATS, as_text
from almanac.report.reports import REPORTS
from almanac.units import COURSES, Course

NAME = "sum"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="an id, or the path of a file")
    parser.add_argument(
        "--course", choices=sorted(COURSES), help="lay a set into this course (default: its own)"
    )
    parser.add_argument("--group", metavar="G", help="one lane group (default: all)")
    parser.add_argument("--json", action="store_true", help="print JSON, version 1")
    on_the_night.add_arguments(parser)
    asked_for.add_arguments(parser)


def run(arguments: argparse.Namespace) -> int:
    found = find_entry(arguments.root, arguments.name, arguments.today or today())
    if found.analysis is None or not found.computable:
        print(FORMATS["json" if arguments.json else "text"](*found.reasons))
        return ERRORS
    change = on_the_night.change_of(arguments)
    if change.changes_anything:
        found = on_the_night.as_it_is(found, found.analysis, change)
    if asked_for.is_asked(arguments):
        assert found.analysis is not None
        found = asked_for.as_asked(found, found.analysis, arguments)
    assert found.analysis is not None  # it was there, and only its entries change
    if arguments.course and not REPORTS[found.kind].takes_course:
        raise UsageError(
            f"--course lays a set into another pool, and '{found.id}' is a {found.kind}"
        )
    text, data = _shown(found, found.analysis, arguments.course, arguments.group)
    if arguments.json:
        print(json.dumps(data, ensure_ascii=False, indent=1))
    else:
        print(text)
        if found.findings:
            print("\n" + as_text(found.findings, 1))
    return ERRORS if found.has_errors else FINE


def _shown(
    found: FoundEntry, analysis: Analysis, course: str | None, group: str | None
) -> tuple[str, dict[str, Any]]:
    """What is printed: as text, and as data."""
    check_group(analysis, group)
    report = REPORTS[found.kind]
    summed = report.summed(analysis, found.id, Course.parse(course) if course else None, group)
    if not summed:
        groups = WHOLES[found.kind].groups(analysis, found.id)
        raise UsageError(
            f"'{found.id}' is not for {group}; it is for {', '.join(groups) or 'no lane group'}"
        )
    return report.text(analysis.catalogue, summed), report.json(summed, found.findings)


def check_group(analysis: Analysis, group: str | None) -> None:
    """Raise UsageError for a lane group that the club does not have."""
    groups = analysis.catalogue.lane_groups
    if group is not None and group not in groups:
        raise UsageError(f"there is no lane group '{group}'; there are {', '.join(groups)}")
