"""Words: terms that entries use are explained, pages mark the first use of one, and the page has
them all.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from shared import CATALOGUE, DAY, copied

from almanac.analysis.analysis import Analysis
from almanac.analysis.explained import terms
from almanac.checks import check
from almanac.model.load import load
from almanac.site.terms import TermMarks
from almanac.wording.trade import trade_terms

FOLD = (
    '<details class="fold"><summary><h2>Why push-off</h2></summary>\n<div '
    'class="fold-body">\n{}\n</div></details>'
)


TERMS = """\
title: Words
about: Terms that these tests mark on pages.
words:
  push-off: {title: Push-off, means: "Leaving the wall with both feet.",
    forms: [push-off, push-offs], shown_by: back-streamline-kick}
  streamline: {title: Streamline, means: "The longest, thinnest line."}
  supine: {title: Supine, means: "Lying on the back.", also: [face up]}
  prone: {title: Prone, means: "Lying on the front."}
  rep: {title: Rep, means: "One of several equal swims.", forms: [rep, reps]}
  im: {title: Medley, means: "The four strokes in turn.", forms: [IM, medley]}
"""


@pytest.fixture(scope="module")
def with_terms(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small catalogue with a few terms."""
    root = copied(CATALOGUE, tmp_path_factory.mktemp("terms") / "club")
    (root / "drills" / "vocabulary" / "terms.yml").write_text(TERMS, "utf-8")
    return root


@pytest.fixture(scope="module")
def marks(with_terms: Path) -> TermMarks:
    loaded = load(with_terms)
    assert loaded.findings == []
    assert loaded.catalogue is not None
    return TermMarks(loaded.catalogue)


def marked(marks: TermMarks, inner: str) -> list[str]:
    return re.findall(
        r'<a class="term" href="\.\./words\.html#t-([a-z-]+)">',
        marks.marked(FOLD.format(inner), "../"),
    )


@pytest.mark.parametrize(
    ("inner", "found"),
    [
        ("<p>A push-off in streamline.</p>", ["push-off", "streamline"]),
        ("<p>Push-offs, and a push-off.</p>", ["push-off"]),
        ("<dd>In STREAMLINE, by the way.</dd>", ["streamline"]),
        ("<p>push-off, streamline, supine, prone, reps</p>", ["push-off", "streamline", "supine"]),
        ('<p class="aim">push-off</p><ul><li>push-off</li></ul><h3>push-off</h3>', []),
        ('<p>The <a href="x.html">push-off</a>.</p>', []),
        ("<p>A non-push-off and a push-offer.</p>", []),
        ("<p>The <b>push-off</b> &#39;streamline&#39;</p>", ["push-off", "streamline"]),
        ("<p><strong>Hurt in a push-off</strong> In streamline.</p>", ["streamline"]),
        ("<p>im and au are no words of ours; IM is.</p>", ["im"]),
    ],
)  # fmt: skip
def test_what_is_marked(marks, inner, found):
    assert marked(marks, inner) == found


def test_outside_of_folds_nothing_is_marked_and_nothing_is_added(marks):
    text = "<p>A push-off in streamline.</p>"
    assert marks.marked(text, "") == text


def test_marks_are_all_that_is_added_and_stand_at_the_foot(marks):
    page = FOLD.format("<p>A push-off in streamline &amp; back.</p>") + FOLD.format(
        "<p>A push-off, supine.</p>"
    )
    text = marks.marked(page, "../")
    body, _, foot = text.partition('\n<details class="fold page-words')
    assert re.sub(r'<a class="term"[^>]*>|</a>', "", body) == page
    assert re.findall(r"#t-([a-z-]+)", foot) == ["push-off", "streamline", "supine"]


def test_every_term_has_its_place_and_its_meaning(marks):
    own = terms(marks.catalogue)
    rows = [row for letter in marks.page().context["letters"].values() for row in letter]
    assert {row["key"] for row in rows} == set(own)
    assert all(len(row["means"]) >= 10 for row in rows)
    assert rows[0]["shown"] is None and {row["also"] for row in rows} == {"", "face up"}


def test_without_terms_nothing_is_marked_and_no_term_is_asked_for(analysis):
    text = FOLD.format("<p>A push-off.</p>")
    assert TermMarks(analysis.catalogue).marked(text, "") == text
    assert not [finding for finding in check(analysis) if finding.code == "unexplained-term"]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Hold a streamline off the wall.", {"streamline"}),
        ("Two tumble turns, then scull.", {"tumble turn", "scull"}),
        ("Swim easy to the wall and rest.", set()),
        ("RPE 7 at the end of the IM set", {"RPE", "IM"}),
        ("KICK HARD", set()),
        ("Up at 6 AM in the UK", set()),
        ("Lactate, threshold and VO2 work", {"lactate", "threshold", "VO2"}),
    ],
)
def test_terms_of_the_trade_are_known(text, found):
    assert trade_terms(text) == found


def test_a_term_that_no_list_explains_is_told_once_an_entry(with_terms: Path, tmp_path: Path):
    root = copied(with_terms, tmp_path / "club")
    path = root / "drills" / "faults" / "knees-break-surface.yml"
    text = path.read_text("utf-8")
    told = "refer_on: Lactate and more lactate, by VO2.\n"
    path.write_text(re.sub(r"refer_on:.*\n(?:  .*\n)*", told, text, count=1), "utf-8")
    catalogue = load(root).catalogue
    assert catalogue is not None
    found = [finding for finding in check(Analysis(catalogue, DAY))
             if finding.code == "unexplained-term"]  # fmt: skip
    here = [one for one in found if one.place.file.endswith("knees-break-surface.yml")]
    told = {one.message for one in here}
    assert {"no list explains 'VO2'", "no list explains 'lactate'"} <= told
    assert len(told) == len(here)
    assert not any("streamline" in one.message for one in found)
