"""Practices composed from the club's own catalogue: how many wishes are met, and what check says of
them.
"""

from __future__ import annotations

import json
import random
import shutil
from dataclasses import asdict, replace
from functools import cache
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
from compose_requests import drawn, vectors, walked
from compose_runs import runs_as_entries
from compose_sizes import every_size
from node_scripts import run_by_node
from opened_practices import does_the_same, findings_of_saved, opened_by_page, with_parts
from shared import DAY, examples, is_long

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.costs import is_again
from almanac.arithmetic.composing.lists import SHORT, SHORTEST, of_role
from almanac.arithmetic.composing.order import BREATH, DOSE, laid, too_much, unsafe, whole
from almanac.arithmetic.composing.pieces import MAIN
from almanac.arithmetic.composing.request import Request, wishes_of
from almanac.arithmetic.composing.unmet import unmet
from almanac.arithmetic.scaling import item_at
from almanac.arithmetic.trained import Training
from almanac.arithmetic.warm_and_easy import effort_words_of
from almanac.checks import check
from almanac.commands import compose_practice
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.model.load import load
from almanac.report.compose.answer import Proposals, answer_json, answered
from almanac.report.compose.entry import as_yaml, practice_entry
from almanac.report.compose.laid import Layer
from almanac.report.compose.named import SUMMARY_MOST, TITLE_MOST, focus, served, summary, title
from almanac.report.compose.opened import limits_of
from almanac.report.compose.table import Made, compose_table
from almanac.report.compose.words import unmet_words
from almanac.wording.reading import asked_for

ROOT = Path(__file__).parents[1]
SCRIPT = Path(__file__).parent / "compose" / "vectors.test.js"
REQUESTS = examples(16, 200)
SQUADS = ("heron", "osprey", "reed")
POOLS = ("home", "home", "home", "home", "long-course", "yards-meet")


@cache
def read() -> CheckedCatalogue:
    """The club's catalogue, read and checked once for all of these tests."""
    return load_and_check(ROOT, DAY)


def analysed() -> Analysis:
    analysis = read().analysis
    assert analysis is not None
    return analysis


@cache
def made(squad: str) -> Made:
    return compose_table(analysed(), squad)


def test_every_size_of_every_piece_is_run_as_the_program_runs_it(tmp_path: Path) -> None:
    path = tmp_path / "sizes.json"
    path.write_text(json.dumps(every_size(analysed())), "utf-8")
    run_by_node(Path(__file__).parent / "make" / "sizes.test.js", SIZES=str(path))


def test_a_composed_practice_is_run_as_the_build_runs_it_once_it_is_an_entry(
    tmp_path: Path,
) -> None:
    """The last request brings a set of which some is swum by time, nobody knows how far."""
    by_time = Request("home", 20, ["walls", "line-and-balance"])
    asked = [*answers(), (by_time, answered(analysed(), made("reed"), by_time))]
    whole_squads = [(own, asdict(request)) for request, own in asked if not request.groups]
    told = [one["piece"] for one in answer_json(whole_squads[-1][0])["proposals"][0]["parts"]]
    assert "set/slide-first" in told
    path = runs_as_entries(ROOT, whole_squads, tmp_path)
    run_by_node(Path(__file__).parent / "make" / "lay.test.js", CASES=str(path))


@cache
def answers() -> list[tuple[Request, Proposals]]:
    found = []
    for seed in range(REQUESTS):
        chance = random.Random(seed)
        own = made(chance.choice(SQUADS))
        request = drawn(own.table, chance, chance.choice(POOLS))
        found.append((request, answered(analysed(), own, request)))
    return found


def test_nearly_every_wish_that_can_be_is_met_to_within_two_minutes() -> None:
    met = [own for _, own in answers() if own.proposals]
    assert len(met) >= 0.95 * REQUESTS
    for own in met:
        assert 0 <= 600 * own.asked.wishes.minutes - whole(own.proposals[0].order) <= 1200


def test_no_work_is_done_again_and_few_skills_are_as_long_as_a_main_set() -> None:
    """A skill that is more than a quarter of an hour is one that nothing shorter takes the place
    of.
    """
    skills = []
    for _, own in answers():
        for proposal in own.proposals:
            work = {one.role: one.own for one in proposal.order if one.role in "smn"}
            mains = [work[role] for role in "mn" if role in work]
            if "s" in work:
                skills.append(work["s"].takes)
                assert not any(is_again(own.asked, work["s"], main) for main in mains)
            # Of two main sets each may bring a stroke that the other has not.
            both = [is_again(own.asked, *pair) for pair in permutations(mains, 2)]
            assert not both or not all(both)
    assert sum(takes > 9000 for takes in skills) <= 0.12 * len(skills)


def test_what_stands_as_the_main_set_is_more_than_a_few_minutes_of_the_slot() -> None:
    """In twenty-five minutes for three goals an easy hundred metres once served two, after nine
    minutes of skill: one goal is told as missed instead.
    """
    goals = ["kick-endurance", "line-and-balance", "aerobic-base"]
    short = Request(pool="home", minutes=25, goals=goals)
    first = answered(analysed(), made("heron"), short)
    assert "goals" in {own.wish for own in unmet(first.asked, first.proposals[0])}
    for own in (first, *(own for _, own in answers() if own.proposals)):
        mains = [one.own.takes for one in own.proposals[0].order if one.role in "mn"]
        assert 5 * sum(mains) >= own.asked.slot


def test_more_minutes_are_named_for_a_skill_where_one_serves_what_is_wished() -> None:
    told = {}
    for goal in ("warm-up", "walls"):
        table = made("heron").table
        asked = Asked(table, wishes_of(table, Request("home", 90, [goal])))
        bare = [one for one in compose(table, asked.wishes)[0].order if one.role != "s"]
        left = asked.slot - sum(one.lead + one.own.takes for one in bare)
        longer = replace(bare[0], lead=bare[0].lead + left)  # as if the slot were full
        proposal = Proposal((longer, *bare[1:]), 0)
        (told[goal],) = (own for own in unmet(asked, proposal) if own.wish == "skill")
    assert (told["warm-up"].because, told["walls"].because) == ("groups", "minutes")
    assert [unmet_words(table, own, 1) for own in told.values()] == [
        "There is no skill in it: none for what is wished is written for them.",
        "There is no skill in it: take more minutes.",
    ]


@pytest.mark.parametrize("squad", SQUADS)
def test_who_asks_for_legs_on_the_back_gets_main_sets_of_kick_on_the_back(squad: str) -> None:
    """By the drills of the lines themselves, held seconds as metres: more than half of each."""
    drills, catalogue = made(squad).table.drills, analysed().catalogue
    for minutes in (25, 45, 60):
        request = Request(pool="home", minutes=minutes, goals=["legs-on-back"])
        own = answered(analysed(), made(squad), request)
        assert len(own.proposals) == 3
        for proposal in own.proposals:
            (main, *_) = [one.own.piece for one in proposal.order if one.role == "m"]
            lies = [catalogue.drills[drills[drill]] for drill in main.drills]
            assert any(drill.is_kick and drill.is_on_back for drill in lies), main.key
            assert main.shares[main.goals.index(own.asked.wishes.goals[0])] >= 500, main.key


def test_a_drill_of_legs_on_the_back_and_a_set_that_is_mostly_such_name_the_goal() -> None:
    catalogue = analysed().catalogue
    ways = {"legs-on-back": catalogue.words("goals")["legs-on-back"].trained_by}
    training = Training(analysed().scale, catalogue.gear, ways)
    for drill in catalogue.drills.values():
        if drill.is_flutter_kick and drill.is_on_back:
            assert "legs-on-back" in drill.goals, drill.id
    for id in analysed().computable:
        reps = analysed().summary(id).reps
        share = training.of(reps, "legs-on-back").share
        gentle = {"warm-up", "recovery"} & set(catalogue.sets[id].goals)
        assert gentle or ("legs-on-back" in catalogue.sets[id].goals) == (share >= 0.5), id


def test_where_a_main_set_serves_a_goal_so_does_one_of_each_other_proposal() -> None:
    for _, own in answers():
        wished = set(own.asked.wishes.goals)
        serves = [
            any(wished & set(one.own.piece.goals) for one in each.order if one.role in "mn")
            for each in own.proposals
        ]
        assert serves == sorted(serves)


def test_an_evening_of_recovery_has_no_hard_work_and_misses_no_skill() -> None:
    """Of Reed, which has one easy set alone, an hour is not filled with it."""
    for squad in ("heron", "osprey"):
        request = Request(pool="home", minutes=60, goals=["recovery"])
        own = answered(analysed(), made(squad), request)
        assert own.proposals, squad
        for proposal in own.proposals:
            work = [one.own.piece for one in proposal.order if one.role in "smn"]
            assert max(piece.hardest for piece in work) <= own.asked.table.gentle
            assert "skill" not in {one.wish for one in unmet(own.asked, proposal)}


def test_where_nothing_fits_some_wish_is_named() -> None:
    for _, own in answers():
        assert own.proposals or own.hinders


def walk(seed: int) -> list[dict[str, Any]]:
    """Changes of the first proposal of a request."""
    _, own = answers()[seed]
    return [*walked(own, random.Random(seed), 8)] if own.proposals else []


def test_the_scripts_of_the_pages_answer_the_same(tmp_path: Path) -> None:
    cases = [
        (own.table.squad.id, request, answer_json(own), walk(seed))
        for seed, (request, own) in enumerate(answers())
    ]
    for heads in ({"heron-2": 20}, {"heron-2": 24}, {"heron-1": 18, "heron-2": 20}):
        request = Request(pool="home", minutes=60, goals=["walls"], heads=heads)
        told = answer_json(answered(analysed(), made("heron"), request))
        assert told["hinders"], "so many have no room"
        cases.append(("heron", request, told, []))
    for squad in SQUADS:
        request = Request(pool="home", minutes=60, goals=["recovery"])
        cases.append((squad, request, answer_json(answered(analysed(), made(squad), request)), []))
    every = {squad: made(squad) for squad in SQUADS}
    run_by_node(SCRIPT, **vectors(analysed(), every, cases, tmp_path / "vectors.json"))


@pytest.mark.skipif(not is_long(), reason="a check of all that the club has; each night")
def test_what_is_composed_passes_every_check(tmp_path: Path) -> None:
    """As entries beside the club's own; of two that are composed it is no wonder that they are
    alike.
    """
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, tmp_path / name)
    written = 0
    for _, own in answers():
        wishes = own.asked.wishes
        if len(wishes.groups) == len(own.table.squad.groups):
            for one in own.proposals[:1]:
                data = practice_entry(own.table, own.made.candidates, wishes, one, "17:30", {})
                file = tmp_path / f"plans/practices/composed-{written}.yml"
                file.write_text(as_yaml(data), "utf-8")
                written += 1
    loaded = load(tmp_path)
    assert loaded.catalogue is not None and written >= REQUESTS // 3
    findings = [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]
    told = [one for one in findings if "composed-" in one.place.file]
    assert [one for one in told if one.code != "near-duplicate"] == []
    assert not any("(plans/practices/composed-" not in one.message for one in told)


def test_every_practice_of_the_club_opens_on_its_own_clock_and_is_changed_and_saved(
    tmp_path: Path,
) -> None:
    """In Make a practice, as the program does it too; what is saved passes every check."""
    analysis = analysed()
    steps = opened_by_page(analysis, tmp_path)
    assert {own["id"] for own in steps} == set(analysis.catalogue.practices)
    does_the_same(analysis, steps if is_long() else random.Random(1).sample(steps, 120))
    if is_long():
        saved, told = findings_of_saved(ROOT, tmp_path, steps)
        assert saved > 4 * len(analysis.catalogue.practices)
        assert told == []


def test_what_a_held_part_has_of_a_drill_counts_against_its_dose() -> None:
    """Three cords has Seven walls at a station: seven goes of a turn of which ten are the most, so
    that the set cannot stand in it again.
    """
    table = with_parts(analysed(), made("osprey").table, "osprey-cords")
    dose = analysed().catalogue.drills["backstroke-turn-approach"].dose
    assert dose.most == 10
    asked = Asked(table, wishes_of(table, Request("home", 90, [table.goals[0].id])))
    keys = ("held/osprey-cords/1", "set/seven-walls")
    places = [table.piece_of[key] for key in keys]
    offers = {own.piece: own for own in asked.offers}
    held, again = (next(asked.sized(offers[place])) for place in places)
    assert not too_much(asked, [held])
    assert not too_much(asked, [again])
    assert too_much(asked, [held, again]) == DOSE


def test_a_practice_that_is_opened_goes_under_water_no_sooner_than_it_is_written() -> None:
    """Fast work put before work under water, where an hour has to be between the two: it may stand
    as it is written, and a tenth sooner it may not.
    """
    hour, table = 36000, made("osprey").table
    limits = replace(table.squad.limits, under_after_fast=hour)
    table = replace(table, squad=replace(table.squad, limits=limits))
    own = with_parts(analysed(), table, "osprey-up-by-twelve")
    assert own.squad.limits.under_after_fast == hour  # under water first, as it is written
    asked = Asked(own, wishes_of(own, Request("home", 90, [own.goals[0].id])))
    places = [own.piece_of[f"held/osprey-up-by-twelve/{part}"] for part in (0, 2, 1, 3)]
    offers = [next(one for one in asked.offers if one.piece == place) for place in places]
    pieces = [own.pieces[place] for place in places]
    lowered = limits_of(table, "home", pieces, offers)
    fast, under = (offers[place].sizes[0] for place in (1, 2))
    soonest = lowered.under_after_fast
    assert fast.calm + under.goes_under + pieces[2].talk <= soonest < hour
    order = laid(asked, [("", next(asked.sized(offer))) for offer in offers])
    for more, told in ((0, ""), (1, BREATH)):
        least = replace(lowered, under_after_fast=soonest + more)
        squad = replace(own.squad, limits=least)
        assert unsafe(replace(asked, table=replace(own, squad=squad)), order) == told


def test_a_short_piece_is_a_main_set_where_it_serves_a_wished_goal() -> None:
    """Speed is soon done: what takes between three and five minutes stands as main set for its
    goals alone.
    """
    found = set()
    for id in SQUADS:
        own = made(id).table
        pool, minutes = next(iter(own.squad.offers)), 60
        served = {goal for one in own.squad.offers[pool] for goal in own.pieces[one.piece].goals}
        for goal in sorted(served):
            request = Request(pool, minutes, [own.goals[goal].id])
            asked = Asked(own, wishes_of(own, request))
            for sizes in of_role(asked, MAIN):
                for one in sizes:
                    serves = goal in one.piece.goals
                    assert one.takes >= (SHORT if serves else SHORTEST)
                    found.add(serves and one.takes < SHORTEST)
    assert found == {True, False}


def test_drills_in_turn_come_in_whole_turns() -> None:
    """Three strokes in turn are done three, six or nine times where they were written so, and never
    once.
    """
    found = 0
    for id in SQUADS:
        for own in made(id).candidates.values():
            item = item_at(own.items, own.scale.path) if own.of == "part" and own.scale else None
            turns = max((len(part.turns) for part in item.parts), default=1) if item else 1
            if own.scale and turns > 1:
                whole = own.scale.written % turns == 0
                assert all(n % turns == 0 if whole else n >= turns for n in own.numbers), own.id
                found += whole
    assert found


def test_in_50_m_nothing_fast_ends_in_mid_pool() -> None:
    """There is no wall to touch or to hold there; 25s that are easy one swims back from."""
    short, fast = 0, set(analysed().scale.fast)
    for id in SQUADS:
        own = made(id)
        layer = Layer(analysed(), id, "long-course")
        for offer in own.table.squad.offers["long-course"]:
            for number in {size.number for size in (offer.sizes[0], offer.sizes[-1])}:
                laid = layer.lay(own.candidates[own.table.pieces[offer.piece].key], number)
                assert laid is not None
                for rep in (rep for swum in laid.swums for rep in swum.reps):
                    if rep.distance and rep.distance % 50 and not rep.item.manner.ready_s:
                        words = effort_words_of(rep, analysed().scale)
                        assert not words & fast, own.table.pieces[offer.piece].key
                        short += 1
        spin = own.table.piece_of.get("drill/backstroke-spin", -1)
        for pool, has in (("home", id != "reed"), ("long-course", False)):
            assert any(one.piece == spin for one in own.table.squad.offers[pool]) == has
    assert short


def test_a_reason_is_borne_out_by_what_is_swum() -> None:
    """Speed has fast work in it, legs have kick, nothing is said to serve a goal that it does not
    name, and what a goal is said to be served by is a drill of the piece.
    """
    served = 0
    for _, own in answers():
        for proposal in own.proposals:
            for one in proposal.order:
                piece = one.own.piece
                for place, share in zip(piece.goals, piece.shares, strict=True):
                    goal = own.table.goals[place].id
                    show = piece.shows[piece.goals.index(place)]
                    assert bool(show) == bool(share) or goal == "warm-up"
                    if goal in ("race-speed", "kick-speed"):
                        assert piece.hardest >= own.table.fast and (
                            "fast" in show or "all-out" in show
                        )
                    if goal in ("kick-speed", "kick-endurance"):
                        assert piece.kick or piece.of == "set"
                    if goal == "recovery":
                        assert share >= 750 and "easy" in show
                    titles = [
                        analysed().catalogue.drills[own.table.drills[id]].title
                        for id in piece.drills
                    ]
                    assert not show or any(title in show for title in titles)
                    served += 1
    assert served


def test_no_cool_down_stands_twice_and_nobody_is_warmed_up_by_what_is_none() -> None:
    for _, own in answers():
        for proposal in own.proposals:
            roles = {one.role: one.own.piece.roles for one in proposal.order}
            assert "w" in roles["w"] and "c" in roles["c"] and "c" not in roles.get("e", "")


def test_where_some_work_is_harder_than_was_wished_it_is_told() -> None:
    asked = [own for _, own in answers() if own.asked.wishes.effort >= 0 and own.proposals]
    assert asked
    for own in asked:
        for proposal in own.proposals:
            work = [one.own.piece.effort for one in proposal.order if one.role in "smn"]
            told = [one for one in unmet(own.asked, proposal) if one.wish == "effort"]
            assert bool(told) == (
                max(work) > own.asked.wishes.effort
                or own.asked.wishes.effort
                not in [one.own.piece.effort for one in proposal.order if one.role in "mn"]
            )


def test_titles_say_what_it_is_for_fit_and_differ_between_proposals() -> None:
    count = alike = 0
    for _, own in answers():
        titles = [title(own.asked, one) for one in own.proposals]
        assert all(
            len(one) <= TITLE_MOST and one.startswith(own.table.squad.title) for one in titles
        )
        count, alike = count + len(titles), alike + len(titles) - len(set(titles))
        for one, called in zip(own.proposals, titles, strict=True):
            chief = served(own.asked, one)[:1]
            assert all(goal in called for goal in chief), called
            assert len(summary(own.asked, one)) <= SUMMARY_MOST
            assert focus(own.asked, one).endswith((".", "!", "?"))
            for text in (called, summary(own.asked, one), focus(own.asked, one)):
                assert not any(True for _ in asked_for(text)), text
    assert alike <= 0.02 * count


def test_what_is_for_under_water_is_told_in_words_that_ask_for_no_long_stay_there() -> None:
    """Sets with numbers in their titles: "under water", "set" and "ten" side by side read like
    one.
    """
    own = made("heron")
    request = Request("home", 105, ["underwater", "aerobic-base"])
    answer = answered(analysed(), own, request)
    told = [summary(answer.asked, one) for one in answer.proposals]
    assert any("ten" in text and "under water" in text for text in told), told
    assert not [text for text in told if any(True for _ in asked_for(text))]


def test_of_goals_with_long_titles_as_many_are_told_as_there_is_room_for(tmp_path: Path) -> None:
    """Titles as long as a vocabulary lets them be: three of them are longer than a summary."""
    own = made("heron")
    goals = tuple(replace(one, title=one.title.ljust(60, "o")) for one in own.table.goals)
    long = replace(own, table=replace(own.table, goals=goals))
    request = Request(pool="home", minutes=75, goals=["kick-technique", "walls", "kick-speed"])
    answer = answered(analysed(), long, request)
    assert any(len(served(answer.asked, one)) > 1 for one in answer.proposals)
    for one in answer.proposals:
        told = summary(answer.asked, one)
        assert f"For {served(answer.asked, one)[0]}" in told and len(told) <= SUMMARY_MOST
        assert len(title(answer.asked, one)) <= TITLE_MOST
    steps = [*walked(answer, random.Random(1), 6)]
    case = ("heron", request, answer_json(answer), steps)
    run_by_node(SCRIPT, **vectors(analysed(), {"heron": long}, [case], tmp_path / "vectors.json"))


def run(*argv: str) -> int:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(compose_practice, "load_as_checked", lambda root, day: read())
        return main(["compose", "practice", "--root", str(ROOT), "--today", str(DAY), *argv])


def test_a_line_that_lane_groups_swim_in_their_own_way_says_whose_it_is(capsys) -> None:
    wishes = ("--squad", "heron", "--minutes", "60", "--goals", "stroke-technique")
    keep = ("--keep", "set/two-beats-to-an-arm=m")
    assert run(*wishes, *keep) == 0
    said = capsys.readouterr().out
    assert "Heron, lanes 4 to 6: 5 × 50 as 25 Strokes that hold" in said
    assert "Heron, lanes 1 to 3: 6 × 50 as 25 Strokes that hold" in said
    assert run(*wishes, *keep, "--groups", "heron-1") == 0
    said = capsys.readouterr().out
    assert "  6 × 50 as 25 Strokes that hold" in said
    assert "5 × 50 as 25 Strokes that hold" not in said and "Others" not in said
    assert "  2 rounds, 0:30 between rounds\n" in said


def test_where_lanes_are_too_full_the_limit_and_the_heads_that_would_go_are_named(capsys) -> None:
    wishes = ("--squad", "heron", "--minutes", "60", "--goals", "walls")
    assert run(*wishes, "--heads", "heron-2=20") == 0
    said = capsys.readouterr().out
    assert "Nothing fits.\nNo warm-up has room for 7 in a lane.\n" in said
    assert "\nWith 18 in Heron, lanes 4 to 6, 6 in a lane, there would be one: “Heron: " in said
    assert run(*wishes, "--heads", "heron-2=18") == 0
    assert "Nothing fits." not in capsys.readouterr().out
