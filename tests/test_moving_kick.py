"""Figures whose kick a page can set going: their joints, angles and rates."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape
from itertools import product
from math import cos, radians
from pathlib import Path
from types import SimpleNamespace
from typing import cast

import pytest
from drawing_checks import SVG, UNMOVED, Matrix, checked, moved, times, transform

from almanac.analysis.analysis import Analysis
from almanac.drawing.shapes import number
from almanac.drawing.swimmer.beating_legs import beats, chain_of
from almanac.drawing.swimmer.body import body_drawing
from almanac.drawing.swimmer.kicks import DOLPHIN_BEND, MOMENTS, beat_of, sway_at
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.poses import Pose, pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.segments import SHANK, THIGH
from almanac.model.catalogue import Catalogue
from almanac.model.policy import Beat
from almanac.site.drawing_html import figure, moving

SHEET = (Path(__file__).parents[1] / "site_src" / "styles" / "figures.css").read_text("utf-8")
VIEW = View(100.0, 50.0, 190.0)


def frames(name: str) -> list[str]:
    """The transforms of a movement, moment by moment; the last is the first again."""
    (body,) = re.findall(rf"@keyframes {name} \{{ (.*) \}}", SHEET)
    found = re.findall(r"([\d.]+)% \{ transform: (.*?); \}", body)
    assert [at for at, _ in found] == [number(100 * part / MOMENTS) for part in range(MOMENTS + 1)]
    assert found[0][1] == found[-1][1]
    return [change for _, change in found[:-1]]


@pytest.mark.parametrize(
    ("part", "factor"), [("thigh", "swing"), ("shank", "bend"), ("foot", "turn")]
)
def test_a_page_moves_the_angles_that_are_drawn(part: str, factor: str) -> None:
    place = ("thigh", "shank", "foot").index(part)
    angles = [beat_of("flutter", moment, near=True)[place] for moment in range(MOMENTS)]
    asked = [f"rotate(calc(var(--{factor}, 1) * {number(angle)}deg))" for angle in angles]
    assert frames(f"kick-{part}") == asked


def test_on_the_side_and_in_a_dolphin_what_moves_is_what_shows() -> None:
    shown = [beat_of("flutter", moment, near=True) for moment in range(MOMENTS)]
    assert frames("kick-aside") == [
        f"scaleX({cos(radians(thigh + shank)):.3f})" for thigh, shank, _ in shown
    ]
    assert frames("kick-sway") == [
        f"rotate(calc(var(--way, 1) * {number(-sway_at(moment))}deg))" for moment in range(MOMENTS)
    ]


def test_the_factors_of_the_sheet_are_those_of_the_drawing() -> None:
    def factors(kind: str) -> dict[str, float]:
        (rule,) = re.findall(rf"(?m)^{re.escape(kind)} \{{ (.*) \}}$", SHEET)
        return {name: float(value) for name, value in re.findall(r"--(\w+): ([\d.]+);", rule)}

    thigh, shank, _ = beat_of("flutter", 2, near=True)
    for size in ("small", "large"):
        other_thigh, other_shank, _ = beat_of("flutter", 2, size, near=True)
        asked = {"swing": other_thigh / thigh, "bend": other_shank / shank}
        assert factors(f".kick-{size}") == pytest.approx(asked)
        bend = beat_of("dolphin", 2, size, near=True)[1] / shank
        assert factors(f".kick-{size}.kick-dolphin") == pytest.approx({"bend": bend})
    assert f".kick-dolphin {{ --bend: {DOLPHIN_BEND}; }}" in SHEET
    rolled = pose(resolve_pose(position="rotating", arms="at-sides", kick="flutter")).spec.roll
    turned = pytest.approx(cos(radians(rolled)), abs=0.001)
    assert factors(".kick-rolled") == {"swing": turned, "bend": turned, "turn": turned}


def joints(held_kwargs: dict[str, str], moment: int, near: bool) -> tuple[tuple[float, float], ...]:
    """Where knee and ankle of a leg come to lie through its chain of groups."""
    held = pose(resolve_pose(**held_kwargs, moment=moment))  # type: ignore[arg-type]
    chain = chain_of(held, VIEW, near=near)
    matrix: Matrix = UNMOVED
    found = []
    for text in (chain.hip, chain.thigh, chain.knee):
        matrix = times(matrix, transform(text))
    found.append(moved(matrix, 0.0, 0.0))
    for text in (chain.shank, chain.ankle):
        matrix = times(matrix, transform(text))
    return (*found, moved(matrix, 0.0, 0.0))


def test_the_chain_ends_where_the_joints_are() -> None:
    for position, kick, moment, near in product(
        ("supine", "prone", "vertical", "rotating", "side"), ("flutter", "dolphin"), (0, 2, 5),
        (True, False)
    ):  # fmt: skip
        words = {"position": position, "arms": "at-sides", "kick": kick}
        bones = pose(resolve_pose(**words, moment=moment)).skeleton  # type: ignore[arg-type]
        leg = bones.near_leg if near else bones.far_leg
        for spot, joint in zip(joints(words, moment, near), (leg.knee, leg.ankle), strict=True):
            assert spot == pytest.approx(VIEW.spot(joint), abs=0.6), (position, kick, moment)


def test_an_angle_of_another_moment_is_all_that_parts_two_moments() -> None:
    """The groups that stay are the same at each moment: so a page that turns the others is
    right.
    """
    for position in ("supine", "prone", "vertical"):
        stays = []
        for moment in range(MOMENTS):
            held = pose(
                resolve_pose(position=position, arms="crossed", kick="flutter", moment=moment)
            )
            chain = chain_of(held, VIEW, near=True)
            stays.append(transform(f"{chain.hip} {chain.knee} {chain.ankle}"))
        assert all(matrix == pytest.approx(stays[0], abs=0.4) for matrix in stays), position


def test_legs_that_beat_in_water_can_move_and_no_others() -> None:
    def can(**words: str) -> bool:
        spec = resolve_pose(**{"position": "supine", "arms": "at-sides", "kick": "flutter"} | words)  # type: ignore[arg-type]
        assert beats(spec) == ("kick-leg" in body_drawing(
            **{"position": "supine", "arms": "at-sides",
               "kick": "flutter"} | words  # type: ignore[arg-type]
        ))  # fmt: skip
        return beats(spec)

    assert can() and can(kick="dolphin") and can(position="vertical") and can(setting="deck-edge")
    assert not can(kick="none") and not can(kick="breaststroke") and not can(wall="leaving")
    assert not can(position="on-land", posture="lying-on-back")


def test_both_legs_move_half_a_cycle_apart_in_a_flutter_together_in_a_dolphin_one_in_one() -> None:
    def kinds(**words: object) -> set[str]:
        svg = body_drawing(position="supine", arms="at-sides", **words)  # type: ignore[arg-type]
        return set(re.findall(r'class="(kick-(?:leg|still)[^"]*)"', svg))

    assert kinds(kick="flutter") == {"kick-leg", "kick-leg kick-late"}
    assert kinds(kick="dolphin") == {"kick-leg kick-dolphin"}
    assert kinds(kick="flutter", one_leg=True) == {"kick-leg", "kick-still"}


def test_fins_and_socks_go_with_the_foot() -> None:
    for gear in ("fins", "drag-socks"):
        root = checked(body_drawing(position="prone", arms="board", kick="flutter", gear=(gear,)))
        feet = [node for node in root.iter(f"{SVG}g") if node.get("class") == "kick-foot"]
        inside = {node.get("class") for foot in feet for node in foot.iter(f"{SVG}path")}
        assert "figure-gear" in inside, gear


def test_the_rate_is_the_catalogues_and_none_where_it_has_none(analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    kicking = next(drill for drill in catalogue.drills.values() if drill.is_flutter_kick)
    svg = body_drawing(position="supine", arms="at-sides", kick="flutter")
    words = catalogue.words("kicks")
    assert words["flutter"].beat is None and moving(catalogue, svg) == ""
    assert "data-beat" not in str(figure(catalogue, kicking))
    beat = Beat(1.6, 'ten "college" swimmers', "Somebody <2006>")
    known = {**words, "flutter": replace(words["flutter"], beat=beat)}
    told = cast("Catalogue", SimpleNamespace(words=lambda _: known))
    shown = moving(told, svg)
    assert 'data-flutter-s="0.625"' in shown and "data-dolphin-s" not in shown
    assert "<" not in shown and 'ten "college" swimmers' in unescape(shown)
    assert moving(told, body_drawing(position="supine", arms="at-sides", kick="none")) == ""


def test_lengths_of_a_chain_are_those_of_the_body() -> None:
    held = pose(resolve_pose(position="supine", arms="at-sides", kick="flutter"))
    chain = chain_of(held, VIEW, near=True)
    assert chain.knee.startswith(f"translate({number(-THIGH * VIEW.height)})")
    assert chain.ankle.startswith(f"translate({number(-SHANK * VIEW.height)})")


@pytest.mark.parametrize("position", ["supine", "prone", "vertical"])
@pytest.mark.parametrize("kick", ["flutter", "dolphin"])
def test_a_picture_that_moves_shows_at_each_moment_what_is_drawn_of_it(
    position: str, kick: str
) -> None:
    def held(moment: int) -> Pose:
        return pose(resolve_pose(position=position, arms="crossed", kick=kick, moment=moment))

    start = held(2)
    chain = chain_of(start, VIEW, near=True)
    x, y = VIEW.spot(start.skeleton.shoulder)
    sways = kick == "dolphin" and position != "vertical"
    for moment in range(MOMENTS):
        turned = (sway_at(2) - sway_at(moment)) * start.posture.belly if sways else 0.0
        matrix = transform(f"translate({x} {y}) rotate({turned}) translate({-x} {-y})")
        thigh, shank, _ = beat_of(kick, moment, near=True)
        steps = (f"{chain.hip} rotate({thigh}) {chain.knee}", f"rotate({shank}) {chain.ankle}")
        leg = held(moment).skeleton.near_leg
        for step, joint in zip(steps, (leg.knee, leg.ankle), strict=True):
            matrix = times(matrix, transform(step))
            assert moved(matrix, 0.0, 0.0) == pytest.approx(VIEW.spot(joint), abs=1.0), moment
