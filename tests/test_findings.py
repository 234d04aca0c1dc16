"""Findings: their order, their count, and the three ways in which they are printed."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.findings import Finding, Place, error, warning, worst_first
from almanac.report.findings_shown import FORMATS, as_annotations, as_json, as_text, count_line

WRONG = error(
    "bad-time",
    Place("plans/sets/x.yml", 15, 16),
    "'1:75' is no time",
    "write 2:15, or 75 for seconds",
)
DOUBT = warning("review-overdue", Place("drills/gear/fins.yml", 3, 1), "the review was due")
MISSING = error(
    "missing-file", Place("plans/club.yml"), "this file is missing", "write it\nor put it back"
)


def test_text_as_the_design_shows_it() -> None:
    assert as_text([WRONG, MISSING, DOUBT], 212) == (
        "plans/sets/x.yml:15:16: error bad-time: '1:75' is no time\n"
        "    write 2:15, or 75 for seconds\n"
        "plans/club.yml: error missing-file: this file is missing\n"
        "    write it\n"
        "    or put it back\n"
        "drills/gear/fins.yml:3:1: warning review-overdue: the review was due\n"
        "2 errors, 1 warning in 212 entries"
    )


@pytest.mark.parametrize(
    ("findings", "entries", "line"),
    [
        ([], 0, "0 errors, 0 warnings in 0 entries"),
        ([WRONG], 1, "1 error, 0 warnings in 1 entry"),
        ([DOUBT], 2, "0 errors, 1 warning in 2 entries"),
        ([WRONG, MISSING, DOUBT, DOUBT], 1234, "2 errors, 2 warnings in 1,234 entries"),
        ([WRONG] * 1500, 3, "1,500 errors, 0 warnings in 3 entries"),
    ],
)
def test_the_count(findings: list[Finding], entries: int, line: str) -> None:
    assert count_line(findings, entries) == line


def test_json_holds_every_field() -> None:
    assert json.loads(as_json([WRONG, DOUBT], 212)) == {
        "version": 1,
        "entries": 212,
        "errors": 1,
        "warnings": 1,
        "findings": [
            {
                "severity": "error", "code": "bad-time", "file": "plans/sets/x.yml", "line": 15,
                "column": 16,
                "message": "'1:75' is no time", "mend": "write 2:15, or 75 for seconds",
            },
            {
                "severity": "warning", "code": "review-overdue", "file": "drills/gear/fins.yml",
                "line": 3, "column": 1,
                "message": "the review was due", "mend": "",
            },
        ],
    }  # fmt: skip


def test_annotations_for_github() -> None:
    assert as_annotations([WRONG, MISSING, DOUBT], 3).splitlines() == [
        (
            "::error file=plans/sets/x.yml,line=15,col=16,title=bad-time::'1:75' is no "
            "time%0Awrite 2:15, or 75 for seconds"
        ),
        (
            "::error file=plans/club.yml,title=missing-file::this file is missing%0Awrite "
            "it%0Aor put it back"
        ),
        "::warning file=drills/gear/fins.yml,line=3,col=1,title=review-overdue::the review was due",
        "2 errors, 1 warning in 3 entries",
    ]


def test_annotations_escape_what_would_end_them() -> None:
    found = error("bad-id", Place("plans/a,b:c%.yml", 1, 2), "50 % of\r\nit::error::", "and 100%")
    assert as_annotations([found], 1).splitlines()[0] == (
        "::error file=plans/a%2Cb%3Ac%25.yml,line=1,col=2,title=bad-id::50 %25 "
        "of%0D%0Ait::error::%0Aand 100%25"
    )


@given(st.text(), st.text(), st.text())
def test_one_annotation_is_one_line_whatever_it_says(file: str, message: str, hint: str) -> None:
    first, *rest = re.split(
        "[\r\n]", as_annotations([error("bad-id", Place(file, 1, 1), message, hint)], 1)
    )
    assert first.startswith("::error file=") and rest == ["1 error, 0 warnings in 1 entry"]


def test_of_one_file_twenty_are_printed_and_the_rest_counted() -> None:
    many = [error("bad-id", Place("a.yml", line, 1), "m") for line in range(1, 24)]
    few = [error("bad-id", Place("b.yml", line, 1), "m") for line in range(1, 21)]
    findings = worst_first([*many, *few, DOUBT])
    lines = as_text(findings, 3).splitlines()
    assert [line for line in lines if line.startswith("a.yml")] == [
        *(f"a.yml:{line}:1: error bad-id: m" for line in range(1, 21)),
        "a.yml: 3 more findings; almanac check --all shows every one",
    ]
    assert len([line for line in lines if line.startswith("b.yml")]) == 20
    assert lines[-1] == "43 errors, 1 warning in 3 entries"
    notices = as_annotations(findings, 3).splitlines()
    assert len(notices) == 20 + 20 + 1 + 1 + 1
    assert "::notice file=a.yml::3 more findings; almanac check --all shows every one" in notices
    assert len(json.loads(as_json(findings, 3))["findings"]) == 44
    assert as_text(findings, 3, shows_all=True).count("a.yml:") == 23
    assert as_annotations(findings, 3, shows_all=True).count("file=a.yml") == 23


def test_what_one_check_finds_in_many_files_is_told_together() -> None:
    """An old catalogue breaks each newer rule in as many places as it has entries."""
    wall = [
        error("hazard-unsaid", Place(f"d/{n:02}.yml", 3, 1), "m", "write it") for n in range(24)
    ]
    start = [error("start-unsaid", Place(f"d/{n:02}.yml", 5, 1), "m") for n in range(2)]
    doubts = [warning("one-sided", Place(f"p/{n}.yml", n + 1, 1), "w") for n in range(15)]
    findings = worst_first([*start, *wall, *doubts])
    lines = as_text(findings, 50).splitlines()
    assert lines == [
        "d/00.yml:3:1: error hazard-unsaid: m",
        "    write it",
        "d/01.yml:3:1: error hazard-unsaid: m",
        "    write it",
        "    22 more hazard-unsaid like this in 22 files",
        "d/00.yml:5:1: error start-unsaid: m",
        "d/01.yml:5:1: error start-unsaid: m",
        "p/0.yml:1:1: warning one-sided: w",
        "    14 more one-sided like this in 14 files",
        "the errors first, a check at a time; almanac check --all shows every one",
        "26 errors, 15 warnings in 50 entries",
    ]
    assert as_text(findings, 50, shows_all=True).count("hazard-unsaid") == 24
    assert as_annotations(findings, 50).count("title=hazard-unsaid") == 24
    assert len(as_text(findings[:40], 50).splitlines()) > 40  # few are told one by one


def test_worst_first_then_by_place_without_repeats() -> None:
    places = [
        Place("b.yml", 1, 1),
        Place("a.yml", 10, 1),
        Place("a.yml", 2, 9),
        Place("a.yml", 2, 1),
        Place("a.yml"),
    ]
    errors = [error("c", place, "m") for place in places]
    warnings = [warning("c", place, "m") for place in places]
    ordered = worst_first([*warnings, *errors, *warnings])
    assert [(finding.severity.word, str(finding.place)) for finding in ordered] == [
        (word, place)
        for word in ("error", "warning")
        for place in ("a.yml", "a.yml:2:1", "a.yml:2:9", "a.yml:10:1", "b.yml:1:1")
    ]


def test_at_one_place_by_code_and_message() -> None:
    found = [error(code, Place("a.yml", 1, 1), message) for code in "ba" for message in "yx"]
    assert [(finding.code, finding.message) for finding in worst_first(found)] == [
        ("a", "x"),
        ("a", "y"),
        ("b", "x"),
        ("b", "y"),
    ]


def test_a_finding_can_be_named_below_a_folder() -> None:
    assert WRONG.under("club/").place == Place("club/plans/sets/x.yml", 15, 16)


@pytest.mark.parametrize("name", sorted(FORMATS))
def test_every_format_takes_no_findings(name: str) -> None:
    assert "0" in FORMATS[name]([], 0)
