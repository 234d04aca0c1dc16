"""The club's own entries, and they alone: a coach's edit can break a test here and nowhere else.

Tests of the code stand on the small catalogue in ``catalogue/``; ``conftest.py`` fails one that
reads the club's.
"""

from __future__ import annotations

import json
import random
import shlex
from datetime import date
from pathlib import Path

import pytest
from drawing_checks import checked
from run_changes import broken, offered, plain, together
from shared import DAY, share
from shown_checks import shown_in, slips_in_data, slips_in_texts
from test_run_data import differences, runs_of
from test_schemas import published_findings

from almanac.analysis.adapted import answers_of, done_by, set_answers_of
from almanac.analysis.analysis import Analysis
from almanac.analysis.calculators.drag import CHUTES
from almanac.arithmetic.events import Piece
from almanac.arithmetic.pace import Target
from almanac.checks import check
from almanac.commands import find_entry
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue
from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.model.effort_plans import Hold
from almanac.model.load import Loaded
from almanac.model.need import AS_IS, CHANGED, LEAVE_OUT
from almanac.model.walk import efforts_named
from almanac.report.set_json import set_json
from almanac.resources import HOME
from almanac.site.adapt_lines import adapted_practice
from almanac.site.drawing_html import fault_figure, figure, ladder_chart, neighbours_chart, picture
from almanac.source.edits.style import fixed
from almanac.source.reader import read
from almanac.units import COURSES


def latest(loaded: Loaded) -> date:
    """The day of the latest entry: what is found on it hangs on the entries and not on today."""
    assert loaded.catalogue is not None, loaded.findings
    reviewed = [entry.review.on for entry in loaded.catalogue.entries.values() if entry.review]
    groups = loaded.catalogue.club.lane_groups.values()
    return max([DAY, *reviewed, *(test.on for group in groups for test in group.tests)])


@pytest.fixture(scope="module")
def club_analysis(club: Loaded) -> Analysis:
    assert club.catalogue is not None, club.findings
    return Analysis(club.catalogue, latest(club))


def found(loaded: Loaded, analysis: Analysis) -> list[Finding]:
    return [*loaded.findings, *check(analysis)]


def test_nothing_is_shown_that_cannot_be(club_root: Path, club_analysis: Analysis) -> None:
    shown = shown_in(club_root, club_analysis)
    assert len(shown.texts) > 600 and len(shown.data) > 600
    assert slips_in_texts(club_analysis.catalogue, shown.texts) == []
    assert slips_in_data(shown.data) == []


def test_nothing_is_found(club: Loaded, club_analysis: Analysis) -> None:
    assert found(club, club_analysis) == []
    assert club.count > 90


def test_nothing_is_found_in_the_small_catalogue(loaded: Loaded, analysis: Analysis) -> None:
    assert found(loaded, analysis) == []
    kinds = {kind for kind, _ in loaded.documents}
    assert kinds == set(KIND)  # an entry of every kind


def test_the_ladder_on_the_back(club_analysis: Analysis) -> None:
    """The worked example of the design: 2 × (6 × 50 + 2 × (25 + 50)) + 100."""
    ladder = set_json(club_analysis.summary("ladder-on-back"))
    assert (ladder["distance"], ladder["unit"], ladder["lengths"], ladder["reps"]) == (
        1000, "m", 40, 17,
    )  # fmt: skip
    assert ladder["by"]["mode"] == {"kick": 700, "swim": 300}
    assert ladder["by"]["position"] == {"supine": 1000}
    assert ladder["shares"]["supine_flutter"] == 1


def test_every_set_adds_up(club_analysis: Analysis) -> None:
    """No set makes inf, nan or a fault; every facet adds up to the set's distance."""
    assert len(club_analysis.computable) == len(club_analysis.catalogue.sets) > 10
    for id in club_analysis.computable:
        summary = set_json(club_analysis.summary(id))
        json.dumps(summary, allow_nan=False)
        for facet in summary["by"].values():
            assert sum(facet.values()) == pytest.approx(summary["distance"], abs=0.01)


def test_published_values(club_analysis: Analysis) -> None:
    catalogue = club_analysis.catalogue
    # Coloretti et al. 2025, J Strength Cond Res 39:e701-5: drag over speed squared, by area
    parachute = catalogue.gear["parachute"].drag
    assert parachute is not None
    assert parachute.table == CHUTES  # what the calculator goes by
    assert {row.area_cm2: row.k for row in parachute.table} == {
        400: 15.4, 529: 19.7, 900: 37.2, 1600: 73.9,
    }  # fmt: skip
    # Bosquet et al. 2007, Med Sci Sports Exerc 39:1358-65: the cut of a taper
    cut = [catalogue.policy.limit(f"taper_cut_{end}") for end in ("least", "most")]
    assert cut == [0.41, 0.6]


def test_every_entry_passes_its_published_schema(club: Loaded) -> None:
    assert list(published_findings(club)) == []


def test_every_run_laid_end_to_end_is_its_run_sheet_and_its_clock(club_analysis: Analysis) -> None:
    runs = runs_of(club_analysis)
    assert len(runs) > 90
    assert [told for own in runs.values() for told in differences(own)] == []
    for own in (own for own in runs.values() if own["kind"] == "set"):
        clocks = club_analysis.summary(own["id"]).clocks
        for group, crew in own["parts"][0]["crews"].items():
            clock = clocks[group].clock
            assert clock is None or crew["clock_over_s"] == pytest.approx(clock.value, abs=0.05)


def test_no_run_offers_what_check_would_refuse(club_analysis: Analysis) -> None:
    found = [
        (practice, is_offered, own)
        for practice in club_analysis.computable_practices.values()
        for is_offered, own in offered(club_analysis, practice)
    ]
    for practice, _, own in share([one for one in found if one[1]], 30):
        before = broken(club_analysis, plain(club_analysis, practice))
        assert broken(club_analysis, own.practice) <= before, (practice.id, own.what)
    for seed, practice in enumerate(share(club_analysis.computable_practices.values(), 15)):
        many = together(club_analysis, practice, random.Random(seed), often=(0.4, 0.7, 1)[seed % 3])
        before = broken(club_analysis, plain(club_analysis, practice))
        assert broken(club_analysis, many) <= before, (practice.id, seed)
    refused = [
        (practice, own)
        for practice, is_offered, own in found
        if "skip" in own.what and not is_offered
    ]
    assert any(broken(club_analysis, own.practice) for _, own in refused), (
        "what is refused is refused for a reason"
    )


def test_putting_in_order_changes_no_data(club: Loaded) -> None:
    for (kind, _), document in club.documents.items():
        text = fixed(document, kind)
        again, findings = read(text.encode(), document.file)
        assert not findings and again is not None
        assert again.data == document.data, document.file


def test_every_drill_and_progression_is_drawn(club_analysis: Analysis) -> None:
    catalogue = club_analysis.catalogue
    for drill in catalogue.drills.values():
        checked(str(figure(catalogue, drill)))
        if around := str(neighbours_chart(catalogue, drill)):
            checked(around)
    for progression in catalogue.progressions.values():
        checked(str(ladder_chart(progression)))


DRAWN_ALIKE: dict[frozenset[str], str] = {}
"""Drills that differ in nothing that can be drawn, with the reason."""


def test_no_two_drills_share_a_picture(club_analysis: Analysis) -> None:
    by_picture: dict[str, set[str]] = {}
    for id, drill in club_analysis.catalogue.drills.items():
        by_picture.setdefault(picture(club_analysis.catalogue, drill), set()).add(id)
    alike = {frozenset(ids) for ids in by_picture.values() if len(ids) > 1}
    assert alike == set(DRAWN_ALIKE), sorted(sorted(ids) for ids in alike)


def test_every_fault_shows_what_is_wrong_beside_what_is_right(club_analysis: Analysis) -> None:
    drawn = set()
    for fault in club_analysis.catalogue.faults.values():
        assert fault.drawing is not None, fault.id
        checked(str(fault_figure(fault)))
        drawn.add(str(fault_figure(fault)).replace(fault.id, ""))
    assert len(drawn) == len(club_analysis.catalogue.faults)


def test_the_readme_shows_what_the_command_prints(
    club: Loaded,
    club_analysis: Analysis,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    checked = CheckedCatalogue(club, club_analysis, found(club, club_analysis))
    monkeypatch.setattr(find_entry, "load_and_check", lambda *_: checked)  # read once
    command, *printed = (
        (HOME / "README.md")
        .read_text("utf-8")
        .split("```\n$ almanac ")[1]
        .split("```")[0]
        .splitlines()
    )
    day = str(club_analysis.today)
    assert main([*shlex.split(command), "--root", str(HOME), "--today", day]) == 0
    assert capsys.readouterr().out.splitlines() == printed


def test_a_harder_effort_is_faster_for_every_group_and_distance(club_analysis: Analysis) -> None:
    """And easy work is no faster than what a group holds in its longest test."""
    catalogue = club_analysis.catalogue
    tried = 0
    for group in catalogue.lane_groups:
        for course in COURSES.values():
            pacer = club_analysis.timing.clock(group, course).pacer
            for drill in catalogue.drills.values():
                if drill.pace is None:
                    continue
                for distance in (25, 50, 75, 100, 200, 400, 800):
                    times = []
                    for word in catalogue.efforts:
                        span = pacer.scale.span(Hold(word), 1, 1)
                        paced = pacer.piece(Piece(distance, drill, span, ()), distance)
                        if isinstance(paced, Target):
                            times.append(paced.seconds)
                    assert times == sorted(times, reverse=True)
                    assert len(set(times)) == len(times)
                    tried += len(times) > 1
    assert tried > 5000


def test_what_is_said_of_critical_speed_names_the_distances_it_came_from(
    club_analysis: Analysis,
) -> None:
    """Toubekis 2011: 1.33 m/s from 50, 100, 200 and 400 m, 1.28 from 200 and 400."""
    claims = [
        evidence.claim
        for benchmark in club_analysis.catalogue.benchmarks.values()
        for evidence in benchmark.evidence
        if "1.33" in evidence.claim
    ]
    assert claims and all("50, 100, 200 and 400" in " ".join(claim.split()) for claim in claims)


def test_every_published_claim_names_a_source_and_every_contested_one_both_sides(
    club_analysis: Analysis,
) -> None:
    catalogue = club_analysis.catalogue
    claims = [
        claim
        for entry in catalogue.entries.values()
        for claim in getattr(entry, "evidence", ())
        if claim.basis != "common-practice"
    ]
    assert len(claims) > 200
    for claim in claims:
        sources = [catalogue.sources[id] for id in claim.sources]
        if claim.basis == "published":
            assert any(source.bears_a_claim for source in sources), claim
        else:
            assert claim.against, claim
    assert all(source.not_shown for source in catalogue.sources.values())


_STARTS = {"dive", "edge-dive", "backstroke-start", "ledge-start"}
# What a set of kick on the back changes for whom, common practice: of which drills, and how they
# may fit.
FOR_WHOM = {
    "arms at the sides for a sore shoulder": (
        "sore-shoulder", lambda own: own.arms == "at-sides" and own.is_on_back and own.is_kick,
        {AS_IS},
    ),
    "no board ahead and nothing overhead": (
        "sore-shoulder", lambda own: own.arms in {"streamline", "board"} and own.is_kick,
        {LEAVE_OUT},
    ),
    "no dolphin for a sore low back": (
        "sore-low-back", lambda own: own.kick == "dolphin", {LEAVE_OUT},
    ),
    "a small flutter for a sore low back": (
        "sore-low-back", lambda own: own.is_flutter_kick and own.arms == "at-sides",
        {AS_IS, CHANGED},
    ),
    "no breaststroke kick for a sore knee": (
        "sore-knee", lambda own: own.kick == "breaststroke", {LEAVE_OUT},
    ),
    "fins off for a cramp": ("cramp", lambda own: "fins" in own.gear.needs, {LEAVE_OUT}),
    "a long warm-up and free rest for asthma": (
        "asthma", lambda own: own.effort.easiest in {"fast", "all-out"}, {CHANGED},
    ),
    "no starts in pregnancy": ("pregnancy", lambda own: own.start in _STARTS, {LEAVE_OUT}),
    "nothing under water in pregnancy": (
        "pregnancy", lambda own: own.is_under_water or own.under_water, {LEAVE_OUT},
    ),
    "upright or on the side in late pregnancy": (
        "pregnancy",
        lambda own: own.is_flutter_kick and own.position == "side" and not own.gear.needs,
        {AS_IS},
    ),
    "no resistance in a growth spurt": (
        "growth-spurt", lambda own: {"drag-socks", "parachute", "stretch-cord"} & {*own.gear.needs},
        {LEAVE_OUT},
    ),
    "one arm for masters": (
        "masters", lambda own: own.arms == "streamline" and own.is_flutter_kick and own.is_on_back,
        {CHANGED},
    ),
    "a light or an arm for who does not hear": (
        "deaf-or-hard-of-hearing", lambda own: own.start in _STARTS and own.id != "relay-takeover",
        {CHANGED},
    ),
    "a tapper for who does not see": (
        "low-vision",
        lambda own: any(hazard.hazard == "head-into-wall" for hazard in own.hazards),
        {CHANGED, LEAVE_OUT},
    ),
    "sculling for legs that are still": (
        "leg-that-does-not-kick", lambda own: own.arms == "sculling", {AS_IS},
    ),
    "short for the very young": (
        "very-young", lambda own: own.level == "foundation" and own.is_kick and own.is_on_back,
        {CHANGED, LEAVE_OUT},
    ),
    "nothing for a period": ("period", lambda own: True, {AS_IS}),
}  # fmt: skip


@pytest.mark.parametrize("practice", FOR_WHOM)
def test_what_changes_for_whom(club_analysis: Analysis, practice: str) -> None:
    need, is_asked, fits = FOR_WHOM[practice]
    asked = [own for own in club_analysis.catalogue.drills.values() if is_asked(own)]
    of = answers_of(club_analysis).of
    assert asked
    assert {
        own.id: of[need, own.id].fits for own in asked if of[need, own.id].fits not in fits
    } == {}


def test_a_sentence_stands_for_every_change_and_something_instead_of_most(
    club_analysis: Analysis,
) -> None:
    known = answers_of(club_analysis)
    assert all(own.changes for own in known.of.values() if own.fits != AS_IS)
    left = [key for key, own in known.of.items() if own.is_left_out]
    drills = club_analysis.catalogue.drills
    stood_in = [need for need, id in left if known.instead(need, drills[id])]
    assert len(stood_in) > 0.75 * len(left) > 100


def test_what_the_finder_gives_for_a_need_holds_nothing_that_it_leaves_out(
    club_analysis: Analysis,
) -> None:
    catalogue, known = club_analysis.catalogue, answers_of(club_analysis)
    for swim_set in catalogue.sets.values():
        found = {own.need: own for own in set_answers_of(club_analysis, swim_set)}
        drills = [own.id for own in swim_set.references() if own.kind == "drill"]
        for need in done_by(club_analysis, swim_set):
            left = any(known.of[need, drill].is_left_out for drill in drills)
            assert not left or found[need].own, (need, swim_set.id)
        hard = {"fast", "all-out"} & set(efforts_named(swim_set.items))
        for need in ("pregnancy", "faints-or-seizures"):
            assert not hard or need not in done_by(club_analysis, swim_set), (need, swim_set.id)
    for practice in catalogue.practices.values():
        whole = set(catalogue.needs)
        for _, doing in practice.doings:
            if doing.set:
                whole &= set(done_by(club_analysis, catalogue.sets[doing.set]))
        assert set(done_by(club_analysis, practice)) <= whole
        rows = adapted_practice(club_analysis, practice).rows
        assert len(rows) == len(catalogue.needs) - len(done_by(club_analysis, practice))
