"""The look in numbers: every pair of colours that meets is measured, light and dark, from
tokens.css.
"""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.contrast import far_enough
from almanac.checks.site_look import GROUNDS
from almanac.drawing.charts.ticks import round_ticks
from almanac.resources import SITE_SOURCE
from almanac.site.settings import DARK, LIGHT

TOKENS = (SITE_SOURCE / "styles" / "tokens.css").read_text("utf-8")
STEPS = [f"{place}{half}" for place in range(5) for half in ("", "-half")][:-1]
TEXT, MARK = 4.5, 3.0  # WCAG 2.2, 1.4.3 and 1.4.11
PAIRS = [
    ("ink", "paper", 7), ("ink", "soft", 7), ("ink", "danger-ground", 7), ("quiet", "paper", 7),
    ("quiet", "soft", 7), ("action", "paper", 7), ("action", "soft", 7), ("on-action", "action", 7),
    ("on-stop", "stop", 7), ("edge", "paper", TEXT), ("edge", "soft", 4),
    ("danger-line", "paper", MARK),
    ("danger-line", "danger-ground", 4), ("action", "danger-ground", TEXT),
    *((f"hatch-{step}", f"effort-{step}", TEXT) for step in STEPS),
]  # fmt: skip


def colours(look: str) -> dict[str, str]:
    """The colours of a look by name: dark ones stand over the light ones."""
    light, _, dark = TOKENS.partition('[data-look="dark"]')
    found = dict(re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6});", light))
    return found | (
        dict(re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6});", dark)) if look == "dark" else {}
    )


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    ]
    return sum(weight * part for weight, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def contrast(one: str, other: str) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_measure_is_the_standards() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(
        4.478, abs=0.001
    )  # from memory: the grey that just misses 4.5


@pytest.mark.parametrize("look", ["light", "dark"])
@pytest.mark.parametrize(("one", "other", "least"), PAIRS)
def test_what_meets_is_told_apart(look: str, one: str, other: str, least: float) -> None:
    own = colours(look)
    assert contrast(own[one], own[other]) >= least


def test_a_clubs_colour_is_held_to_the_grounds_of_the_look() -> None:
    for look, grounds in GROUNDS.items():
        own = colours(look)
        assert [ground for ground, _ in grounds] == [
            own[name] for name in ("paper", "soft", "danger-ground")
        ]
        assert own["on-action"] == own["paper"]  # what stands on a filled button
        assert own["action"] == {"light": LIGHT, "dark": DARK}[look]


@given(st.sampled_from(["light", "dark"]), st.integers(0, 0xFFFFFF))
def test_the_colour_that_is_offered_is_far_enough(look: str, number: int) -> None:
    offered = far_enough(f"#{number:06x}", GROUNDS[look])
    assert all(contrast(offered, ground) >= wanted for ground, wanted in GROUNDS[look])


def test_both_looks_name_the_same_colours() -> None:
    _, _, dark = TOKENS.partition('[data-look="dark"]')
    light = {name for name, _ in re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6});", TOKENS)}
    assert light == {name for name, _ in re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{6});", dark)}


def test_amber_means_danger_and_nothing_else() -> None:
    """No colour but danger's lies in the amber sixth of the circle, where it is more than a
    tint.
    """
    amber = set()
    for path in sorted((SITE_SOURCE / "styles").glob("*.css")):
        for name, colour in re.findall(r"([a-z0-9-]+): (#[0-9a-f]{6});", path.read_text("utf-8")):
            red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
            if red >= green > blue and red - blue > 0.1 and 0.3 < (green - blue) / (red - blue) < 1:
                amber.add(name)
    assert amber == {"--danger-ground", "--danger-line"}


def test_only_what_speaks_of_danger_is_dressed_as_danger() -> None:
    spoken = re.compile("danger|refer|brief")
    for path in sorted((SITE_SOURCE / "styles").glob("*.css")):
        text = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
        for selector, rules in re.findall(r"([^{}]+){([^{}]*)}", text):
            if "var(--danger-" in rules:
                assert spoken.search(selector), f"{path.name}: {selector.strip()}"


def test_the_face_is_light_and_never_waited_for() -> None:
    assert "font-display: optional" in TOKENS
    assert "../fonts/hyperlegible-bold.woff2" in TOKENS
    first = (SITE_SOURCE / "scripts" / "kept.js").read_text("utf-8")
    assert re.search('rel: "preload".*"fonts/hyperlegible-bold.woff2"', first)


@pytest.mark.parametrize("most", [0, 0.4, 1, 7, 12.5, 99, 100, 101, 14_400, 17_350, 20_000])
def test_ticks_are_round_and_few(most: float) -> None:
    ticks = round_ticks(most)
    assert ticks[0] == 0 and ticks[-1] >= most
    assert 2 <= len(ticks) <= 5 and (most == 0 or len(ticks) >= 3)
    (step,) = {round(high - low, 9) for low, high in pairwise(ticks)}
    assert f"{step:e}".rstrip("0").split("e")[0].rstrip("0").rstrip(".") in {"1", "2", "2.5", "5"}
    assert most == 0 or ticks[-2] < most or len(ticks) == 3
