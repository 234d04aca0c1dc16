"""Arguments of ``sum`` and ``explain`` that ask for a set with fewer or more rounds, or reps, than
it is written with.
"""

from __future__ import annotations

import argparse
from dataclasses import replace

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.scaling import OutOfBounds, with_counts
from almanac.checks import check
from almanac.commands.find_entry import FoundEntry
from almanac.commands.outcome import UsageError
from almanac.model.catalogue import Catalogue
from almanac.model.expectation import Expectation

_KIND = "set"
_UNNEEDED = "acceptance-unneeded"  # of the set as it is written


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments, in a group of their own."""
    asked = parser.add_argument_group("a set with fewer or more; everything follows")
    asked.add_argument("--rounds", metavar="N", type=int, help="rounds of its largest round")
    asked.add_argument("--reps", metavar="N", type=int, help="reps of its largest item")


def is_asked(arguments: argparse.Namespace) -> bool:
    """Whether a set is asked for other than it is written."""
    return arguments.rounds is not None or arguments.reps is not None


def as_asked(found: FoundEntry, analysis: Analysis, arguments: argparse.Namespace) -> FoundEntry:
    """The set as it is asked for, with the findings that it then has. What its author expects is of
    the set as it is written.
    """
    if found.kind != _KIND:
        raise UsageError(f"--rounds and --reps are for a set; this is a {found.kind}")
    catalogue = analysis.catalogue
    own = catalogue.sets[found.id]
    most_reps = catalogue.policy.limit("most_reps")
    try:
        own = with_counts(own, arguments.rounds, arguments.reps, most_reps)
    except OutOfBounds as problem:
        raise UsageError(str(problem)) from problem
    own = replace(own, expect=Expectation())
    entries = {**catalogue.entries, (_KIND, found.id): own}
    then = Analysis(Catalogue(entries, catalogue.documents, catalogue.moved), analysis.today)
    findings = [
        finding
        for finding in check(then)
        if finding.place.file == own.file and finding.code != _UNNEEDED
    ]
    return replace(found, analysis=then, findings=findings)
