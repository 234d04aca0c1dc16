"""Words of vocabularies are data: a new word, a sixth effort and other names go from schema to
page.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml
from shared import CATALOGUE, DAY, copied
from words_world import Use, define, id_of, offered, put, uses, without

from almanac.analysis.analysis import Analysis
from almanac.analysis.comparison import Side, review
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.arithmetic.effort import EffortScale
from almanac.checks import check
from almanac.commands.main import main
from almanac.drawing.charts.effort_marks import LAST, effort_marks
from almanac.findings import Finding
from almanac.kinds import KINDS, SUMMED
from almanac.model.load import Loaded, load
from almanac.model.policy import Rating, Word
from almanac.model.vocabularies import (
    BLACKOUT,
    BUILT_ON,
    CRITICAL_SPEED,
    HAZARDS,
    LINE,
    LOADED_LINE,
    TIRES,
    VOCABULARY_OF,
    WALL_AHEAD,
)
from almanac.report.review.json import review_json
from almanac.report.review.markdown import review_markdown
from almanac.resources import SITE_SOURCE
from almanac.site.entry_page import tags
from almanac.site.entry_parts import Parts
from almanac.site.finder import Finder
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
from almanac.source import schemas

VOCABULARIES = sorted(schemas.vocabularies())
NEW = "brand-new"
ALWAYS_NAMED = {BLACKOUT, TIRES, WALL_AHEAD, LINE, LOADED_LINE}  # hazards of some sorts of work
# What a new word may bring beside what was found before: a picture that is wanted, a goal and a
# level that nothing serves yet, or a part of a practice that no test gives a time.
UNTIMED = {"part-length-unknown", "target-unknown"}
WANTED = {
    "arms": {"undrawn-word", *UNTIMED},
    "goals": {"coverage-hole", "goal-unserved"},
    "kicks": {"undrawn-word", *UNTIMED},
    "levels": {"coverage-hole"},
    "modes": UNTIMED,
    "positions": {"undrawn-word", *UNTIMED},
    "strokes": {"undrawn-word", *UNTIMED},
}
FASTER = "\n  fast:\n    least:"  # what its rest stands before in the policy
SPLIT = "strong"  # the effort whose upper half the new one takes


def added(root: Path, vocabulary: str) -> None:
    """A new word in a vocabulary; an effort takes half of another, and has a rest of its own."""
    title = f"Brand new {vocabulary}"
    if vocabulary != "efforts":
        told = f"title: {title}, means: Nobody had it before."
        if vocabulary == "hazards":
            told += ", gravity: can-ache, control: Nobody goes near the new thing."
        if vocabulary == "starts":  # one that does not say so is head first until it does
            told += ", enters: in-the-water"
        if vocabulary == "modes":  # one that does not say so is done under water until it does
            told += ", done: at-the-surface"
        define(root, vocabulary, f"{NEW}: {{{told}}}")
        if vocabulary == "levels":  # one without limits of its own has the strictest
            limited(root, {NEW: "performing"})
        return
    file = root / "drills/vocabulary/efforts.yml"
    whole, half = "rating: {from: 5, to: 7}", "rating: {from: 5, to: 6}"
    assert whole in file.read_text("utf-8")
    file.write_text(file.read_text("utf-8").replace(whole, half), "utf-8")
    rest = (
        f"means: Nobody had it before., {half.replace('5, to: 6', '6, to: 7')}, share_of_best: 0.9"
    )
    define(root, vocabulary, f"{NEW}: {{title: {title}, {rest}}}", after=SPLIT)
    policy = root / "plans/policy.yml"
    rest = (
        "{least: {seconds_per_50: 6}, wanted: {seconds_per_50: 20}, reason: It is hard., "
        "source: us me}"
    )
    text = policy.read_text("utf-8")
    assert FASTER in text
    policy.write_text(text.replace(FASTER, f"\n  {NEW}: {rest}{FASTER}"), "utf-8")


def limited(root: Path, levels: dict[str, str]) -> None:
    """Give each of these levels the limits that the program has for another, in the policy, but for
    those that stand there.
    """
    policy = root / "plans/policy.yml"
    by_level = schemas.raw("policy")["properties"]["levels"]["additionalProperties"]["properties"]
    own = yaml.safe_load(policy.read_text("utf-8"))["levels"]
    for level, like in levels.items():
        lines = [
            f"    {name}: {{value: {limit['value']}, unit: {limit['unit']}, "
            "reason: It is ours., source: us}\n"
            for name, piece in by_level.items()
            for limit in [piece.get("default", {}).get(like)]
            if limit and name not in own.get(level, {})
        ]
        text, head = policy.read_text("utf-8"), f"  {level}:\n"
        if level not in own:
            text = text.replace("\nlevels:\n", f"\nlevels:\n{head}")
        assert text.count(head) == 1
        policy.write_text(text.replace(head, head + "".join(lines)), "utf-8")


def found(root: Path) -> tuple[Loaded, list[Finding]]:
    """The catalogue below a root and every finding on it."""
    loaded = load(root)
    if loaded.catalogue is None:
        return loaded, list(loaded.findings)
    return loaded, [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]


def first_uses(vocabulary: str, loaded: Loaded) -> list[Use]:
    """For each field that takes words of a vocabulary, a place that a new word can take."""
    places = [use for use in uses(loaded) if use.vocabulary == vocabulary]
    if vocabulary == "efforts":  # the policy has a rest for each, and the new one has its own
        places = [use for use in places if use.word == SPLIT and not use.of_key]
    if vocabulary == "effects":  # what slows or ties a swimmer has to say that it resists
        places = [use for use in places if use.word != "resists"]
    if vocabulary == "levels":  # gear that loads a swimmer has to leave out the lowest
        places = [use for use in places if use.kind != "gear" or use.word != "foundation"]
    if vocabulary == HAZARDS:  # some have to be named where they are met
        places = [use for use in places if use.word not in ALWAYS_NAMED]
    by_field: dict[tuple[str, ...], Use] = {}
    for use in places:
        by_field.setdefault(use.where, use)
    return list(by_field.values())


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small catalogue without what its sets expect: another word would be another sum."""
    root = copied(CATALOGUE, tmp_path_factory.mktemp("plain"))
    without(root, load(root).documents, "expect")
    assert found(root)[1] == []
    return root


@pytest.fixture(scope="module")
def whole(plain: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The plain catalogue with a new word in every vocabulary, used wherever the schemas let it
    be.
    """
    root = copied(plain, tmp_path_factory.mktemp("whole"))
    for vocabulary in VOCABULARIES:
        added(root, vocabulary)
        # A gap between a goal and a level that are both new would be filled by the drill that has
        # both.
        places = [
            use
            for use in first_uses(vocabulary, load(root))
            if use.where[-1] != "level" or "gaps" not in use.where
        ]
        put(root, [(use, NEW) for use in places])
    return root


def pages(root: Path, into: Path) -> dict[str, str]:
    """Every page of the catalogue below a root, by its path."""
    loaded, findings = found(root)
    assert loaded.catalogue is not None and not any(finding.is_error for finding in findings)
    analysis = Analysis(loaded.catalogue, DAY)
    write_pages(SitePages(analysis, loaded.names), into / "pages")
    return {
        file.relative_to(into / "pages").as_posix(): file.read_text("utf-8")
        for file in (into / "pages").rglob("*")
        if file.suffix in {".md", ".json", ".svg"}
    }


def test_the_small_catalogue_has_a_word_wherever_a_schema_takes_one() -> None:
    """So that the tests below put a new one there: a new field goes into the small catalogue."""
    seen = {use.piece for use in uses(load(CATALOGUE))}
    by = {id_of(_accepted_by(kind.key)) for kind in KINDS if _accepted_by(kind.key)}
    seen |= by if seen & by else set()  # one acceptance by a role serves for all kinds
    for kind in KINDS:
        of_change = _of_change(kind.key)
        for piece in offered(kind.key):
            assert id_of(of_change.get(id_of(piece), piece)) in seen, f"{kind.key}: {piece}"


def _of_change(kind: str) -> dict[int, dict[str, Any]]:
    """What a change of reps may say, by its own piece the one of the reps: one serves for both."""
    defs = schemas.bundled(kind)["$defs"]
    own, reps = (defs.get(name, {}).get("properties", {}) for name in ("change", "reps"))
    return {id_of(piece): reps[name] for name, piece in own.items() if name in reps}


def _accepted_by(kind: str) -> dict[str, Any]:
    """The piece of a kind's schema that holds the role in an acceptance."""
    accepts = schemas.bundled(kind)["$defs"].get("accepts")
    return accepts["items"]["properties"]["by"] if accepts else {}


@pytest.mark.parametrize("vocabulary", VOCABULARIES)
def test_a_new_word_passes_every_check_with_the_wanted_warnings(
    vocabulary: str, plain: Path, tmp_path: Path
) -> None:
    root = copied(plain, tmp_path)
    added(root, vocabulary)
    places = first_uses(vocabulary, load(root))
    put(root, [(use, NEW) for use in places])
    loaded, findings = found(root)
    assert loaded.catalogue is not None
    assert {use.where for use in uses(loaded) if use.word == NEW} >= {use.where for use in places}
    assert not [finding for finding in findings if finding.is_error]
    assert {finding.code for finding in findings} == WANTED.get(vocabulary, set())
    for finding in findings:
        assert finding.place.line and finding.message and finding.hint


def test_new_words_of_every_vocabulary_come_to_every_page(whole: Path, tmp_path: Path) -> None:
    written = pages(whole, tmp_path)
    entries = {file: text for file, text in written.items() if file.endswith(".md") and "/" in file}
    for vocabulary in VOCABULARIES:
        shown = f"brand new {vocabulary}"
        assert any(shown in text.lower() for text in entries.values()), vocabulary
    pictures = [text for file, text in written.items() if file.endswith(".svg")]
    assert any("arms: Brand new arms" in text for text in pictures)
    drill = next(use.entry for use in first_uses("arms", load(CATALOGUE)) if use.kind == "drill")
    assert "Not drawn yet:" in next(text for file, text in entries.items() if f"/{drill}." in file)


def test_new_words_come_through_every_command(
    whole: Path, plain: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    used = {use.kind: use.entry for use in uses(load(whole)) if use.word == NEW}
    assert set(SUMMED) <= set(used)
    for id in (used[kind] for kind in SUMMED if kind in used):
        for arguments in (["sum", id], ["sum", id, "--json"], ["explain", id, "distance"]):
            assert main([*arguments, "--root", str(whole)]) in {0, None}, arguments
        said = capsys.readouterr().out
        assert id in said
    loaded = [load(root) for root in (plain, whole)]
    sides = []
    for one in loaded:
        assert one.catalogue is not None
        analysis = Analysis(one.catalogue, DAY)
        sides.append(Side(one.documents, analysis, [*one.findings, *check(analysis)]))
    result = review(*sides)
    assert NEW in review_markdown(result, "main") and review_json(result, "main")["figures"]


def test_a_set_expects_a_new_word_like_any_other(whole: Path, tmp_path: Path) -> None:
    root = copied(whole, tmp_path)
    catalogue = load(root).catalogue
    assert catalogue is not None
    analysis = Analysis(catalogue, DAY)
    facets = ("mode", "kick", "stroke", "position", "effort")
    expected = 0
    for id in analysis.computable:
        by = analysis.summary(id).by
        new = {facet: float(by[facet][NEW]) for facet in facets if NEW in by[facet]}
        if new:
            expected += len(new)
            words = ", ".join(
                f"{facet}: {{{NEW}: {distance:g}}}" for facet, distance in new.items()
            )
            file = root / catalogue.sets[id].file
            line = f"\nexpect: {{by: {{{words}}}}}\nreview:"
            file.write_text(file.read_text("utf-8").replace("\nreview:", line, 1), "utf-8")
    assert expected >= 2
    codes = {finding.code for finding in found(root)[1]}
    fine = {"undrawn-word", "coverage-hole", "goal-unserved", "key-order", *UNTIMED}
    assert not codes - fine, codes


# --- other names


@pytest.fixture(scope="module")
def renamed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small catalogue with another name and title for every word that the program does not ask
    for.
    """
    root = copied(CATALOGUE, tmp_path_factory.mktemp("renamed"))
    loaded = load(root)
    assert loaded.catalogue is not None
    kept = {(name, word) for name, words in BUILT_ON.items() for word in words}
    kept |= {("test-uses", CRITICAL_SPEED), *((HAZARDS, word) for word in ALWAYS_NAMED)}
    put(
        root,
        [
            (use, f"other-{use.word}")
            for use in uses(loaded)
            if (use.vocabulary, use.word) not in kept
        ],
    )
    # A level that the program has no limits for has the strictest, but for what the policy says.
    limited(root, {f"other-{level}": level for level in ("foundation", "building", "performing")})
    for name, vocabulary in loaded.catalogue.vocabularies.items():
        file = root / vocabulary.file
        text = file.read_text("utf-8")
        for word in vocabulary.words:
            if (name, word) not in kept:
                text = text.replace(f"\n  {word}: {{title: ", f"\n  other-{word}: {{title: Other ")
        file.write_text(text, "utf-8")
    return root


def test_no_figure_hangs_on_the_name_of_a_word(renamed: Path) -> None:
    before, after = (load(root).catalogue for root in (CATALOGUE, renamed))
    assert before is not None and after is not None
    assert all(word.startswith("other-") for word in after.efforts)
    sides = [Analysis(catalogue, DAY) for catalogue in (before, after)]
    assert {finding.code for finding in check(sides[1])} == {"undrawn-word"}
    for kind, wholes in WHOLES.items():
        for id in wholes.computable(sides[0]):
            for group in wholes.groups(sides[0], id):
                one, other = (
                    [figure.value for figure in figures_for(side, kind, id, group).values()]
                    for side in sides
                )
                assert one == other, (kind, id, group)


def test_every_page_is_written_in_other_names(renamed: Path, tmp_path: Path) -> None:
    written = pages(renamed, tmp_path)
    plain = "\n".join(
        text for file, text in written.items() if file.startswith(("sets/", "blocks/"))
    )
    for step in range(0, LAST + 1, 2):
        assert f'class="effort-{step // 2}"' in plain
    assert "other fast or other all-out" in plain and "other steady" in plain
    for title in ("Easy", "Steady", "Strong", "Fast", "All-out"):
        assert f"</svg>{title}<" not in plain and f"</svg>Other {title}<" in plain
    assert " rest at other " in plain and " rest at other-" not in plain  # in workings, too
    assert re.search(r"÷ [\d.]+ other (easy|strong)", plain) and not re.search(r"\d other-", plain)


# --- colours


def scale(*ends: float) -> dict[str, Word]:
    """Efforts that end at these ratings."""
    starts = (0.0, *ends)
    return {
        f"e{number}": Word(f"E{number}", "How hard it is.", Rating(start, end), 0.9)
        for number, (start, end) in enumerate(zip(starts, ends, strict=False))
    }


@pytest.mark.parametrize("count", range(1, LAST + 2))
def test_efforts_of_any_number_are_told_apart(count: int) -> None:
    for ends in (
        [10 * (number + 1) / count for number in range(count)],
        [10 - 0.1 * number for number in reversed(range(count))],
        [*(0.1 * (number + 1) for number in range(count - 1)), 10.0],
    ):
        marks = list(effort_marks(scale(*ends)).values())
        steps = [mark.step for mark in marks]
        assert steps == sorted(set(steps)) and steps[0] >= 0 and steps[-1] <= LAST
        assert (
            len({mark.css_class for mark in marks}) == len({mark.hatch for mark in marks}) == count
        )


def test_more_efforts_than_steps_share_some() -> None:
    steps = [mark.step for mark in effort_marks(scale(*range(1, 11), 10.5, 11)).values()]
    assert steps == sorted(steps) and steps[-1] <= LAST


def test_five_plain_efforts_have_the_five_colours() -> None:
    marks = effort_marks(scale(3, 5, 7, 9, 10)).values()
    assert [mark.css_class for mark in marks] == [f"effort-{place}" for place in range(5)]
    assert [mark.hatch for mark in marks] == ["", "dots", "slant", "cross", "bars"]


def test_an_effort_keeps_its_colour_when_another_is_named_or_split() -> None:
    five = effort_marks(scale(3, 5, 7, 9, 10))
    six = effort_marks(scale(3, 5, 6, 7, 9, 10))
    assert [six[name].step for name in ("e0", "e1", "e4", "e5")] == [
        five[name].step for name in ("e0", "e1", "e3", "e4")
    ]


def test_the_style_sheet_has_a_colour_for_every_step_in_light_and_dark() -> None:
    tokens, sheet = (
        (SITE_SOURCE / f"styles/{name}.css").read_text("utf-8") for name in ("tokens", "almanac")
    )
    for step in range(LAST + 1):
        mark = replace(effort_marks(scale(10))["e0"], step=step)
        assert tokens.count(f"--{mark.css_class}: #") == 2, mark
        assert f".{mark.css_class} {{ fill: var(--{mark.css_class}); }}" in sheet


# --- what the data marks


@pytest.mark.parametrize(
    ("counts", "fast", "gentle", "told"),
    [
        ({}, ("e3", "e4"), ("e0", "e1"), "e3 or e4"),
        ({"e4": "fast"}, ("e4",), ("e0", "e1"), "e4"),
        (
            {"e2": "fast", "e3": "fast", "e4": "fast"},
            ("e2", "e3", "e4"),
            ("e0", "e1"),
            "e2, e3 or e4",
        ),
        ({"e0": "gentle"}, ("e3", "e4"), ("e0",), "e3 or e4"),
    ],
)
def test_efforts_count_as_their_words_say_else_by_their_place(
    counts: dict[str, str], fast: tuple[str, ...], gentle: tuple[str, ...], told: str
) -> None:
    words = {
        name: replace(word, counts_as=counts.get(name, ""))
        for name, word in scale(3, 5, 7, 9, 10).items()
    }
    efforts = EffortScale(words)
    assert (efforts.fast, efforts.gentle, efforts.fast_words("or")) == (fast, gentle, told)


def test_a_quiet_word_is_no_tag_and_no_choice(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    quiet = {
        (field, word)
        for field in ("position", "arms", "kick", "stroke")
        for word, meaning in catalogue.words(VOCABULARY_OF[field]).items()
        if meaning.quiet
    }
    assert {word for _, word in quiet} >= {"any", "none", "free"}
    for drill in catalogue.drills.values():
        shown = [
            catalogue.words(VOCABULARY_OF[field])[getattr(drill, field)].title
            for field in ("position", "arms", "kick", "stroke")
            if (field, getattr(drill, field)) not in quiet
        ]
        assert tags(catalogue, drill) == shown
    facets = Finder(Parts(analysis)).page().context["facets"]
    choices = {facet["id"]: {word for word, _ in facet["words"]} for facet in facets}
    assert "supine" in choices["position"] and "any" not in choices["position"] | choices["stroke"]
