"""Print the summary of a set: totals, facets, clock for each lane group, gear, brief.

NAME is the id of a set, or the path of a set's file outside the catalogue.
"""

from __future__ import annotations

import argparse
import json

from almanac.arithmetic.summary import SetSummary, summarise
from almanac.checks.study import Study
from almanac.commands.named import named
from almanac.commands.shared import ERRORS, FINE, UsageError
from almanac.findings import as_text
from almanac.pages.sum_json import set_json
from almanac.pages.sum_text import set_text
from almanac.units import COURSES, Course

NAME = "sum"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", metavar="NAME", help="a set's id, or the path of its file")
    parser.add_argument("--course", choices=sorted(COURSES), help="lay it into this course (default: its own)")
    parser.add_argument("--group", metavar="G", help="one lane group (default: all)")
    parser.add_argument("--json", action="store_true", help="print JSON, version 1")


def run(arguments: argparse.Namespace) -> int:
    found = named(arguments.root, arguments.name)
    if found.study is None or found.id not in found.study.computable:
        print(as_text(found.findings, 1))
        return ERRORS
    summary = summarise_named(found.study, found.id, arguments.course, arguments.group)
    if arguments.json:
        print(json.dumps(set_json(summary, found.findings), ensure_ascii=False, indent=1))
    else:
        print(set_text(found.study.catalogue, summary))
        if found.findings:
            print("\n" + as_text(found.findings, 1))
    return ERRORS if any(finding.is_error for finding in found.findings) else FINE


def summarise_named(study: Study, id: str, course: str | None, group: str | None) -> SetSummary:
    """The summary of a computable set in a course, for one lane group or all. Raises UsageError for an unknown group."""
    groups = study.catalogue.lane_groups
    if group is not None and group not in groups:
        raise UsageError(f"there is no lane group '{group}'; there are {', '.join(groups)}")
    return summarise(study.catalogue, study.computable[id], Course.parse(course) if course else None, [group] if group else None)

