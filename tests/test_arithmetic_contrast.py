"""Colours: luminance and contrast as published, the nearest colour that is far enough by hand."""

from __future__ import annotations

import pytest

from almanac.arithmetic.contrast import (
    channels,
    contrast,
    far_enough,
    hardest_ground,
    is_amber,
    is_far_enough,
    luminance,
)

WHITE, BLACK = "#ffffff", "#000000"


def test_channels_are_parts_of_255() -> None:
    assert channels("#ff3300") == (1.0, 0.2, 0.0)


@pytest.mark.parametrize(
    ("colour", "expected"),
    [
        # The weights of WCAG 2.2; a grey is as light as one of its channels.
        (BLACK, 0), (WHITE, 1), ("#ff0000", 0.2126), ("#00ff00", 0.7152), ("#0000ff", 0.0722),
        # IEC 61966-2-1: 10 and 11 of 255 lie on either side of where the curve is no longer a line.
        ("#0a0a0a", 0.0030353), ("#0b0b0b", 0.0033465), ("#808080", 0.2158605),
    ],
)  # fmt: skip
def test_luminance_is_that_of_wcag(colour: str, expected: float) -> None:
    assert luminance(colour) == pytest.approx(expected, abs=5e-8)


@pytest.mark.parametrize(
    ("colour", "expected"),
    # WCAG 2.2, understanding 1.4.3: #777777 on white is 4.47:1, #767676 4.54:1; black on white is
    # 21:1.
    [("#777777", 4.47), ("#767676", 4.54), (BLACK, 21), (WHITE, 1)],
)
def test_contrast_is_that_of_wcag(colour: str, expected: float) -> None:
    assert contrast(colour, WHITE) == contrast(WHITE, colour)
    assert int(100 * contrast(colour, WHITE) + 1e-9) / 100 == expected


def test_the_hardest_ground_is_the_one_of_which_least_of_what_is_wanted_is_had() -> None:
    """Of black 21 on white: three times 7; grey has 4.54 on white and 4.63 on black."""
    grounds = [(WHITE, 7.0), (BLACK, 1.0)]
    assert hardest_ground(BLACK, grounds) == (BLACK, 1.0)
    assert hardest_ground("#767676", grounds) == (WHITE, 7.0)
    assert is_far_enough(BLACK, [(WHITE, contrast(BLACK, WHITE))])
    assert not is_far_enough("#767676", [(WHITE, 4.55)])
    assert not is_far_enough("#767676", [(BLACK, 4.0), (WHITE, 4.55)])


@pytest.mark.parametrize(
    ("colour", "ground", "wanted", "expected"),
    [
        ("#767676", WHITE, 4.5, "#767676"),
        # 136 less 13 hundredths of itself is 118, 76 in hexadecimal; less 12 it is 120.
        ("#888888", WHITE, 4.5, "#767676"), ("#880000", BLACK, 1.0, "#880000"),
        # 255 less 54 hundredths is 117, less 53 it is 120.
        (WHITE, WHITE, 4.5, "#757575"), (WHITE, WHITE, 20.99, BLACK),
        # 85 and 19 hundredths of the 170 up to white are 117, 18 are 116: 4.56 and 4.49 on black.
        ("#555555", BLACK, 4.5, "#757575"),
    ],
)  # fmt: skip
def test_a_colour_goes_by_hundredths_to_black_or_white(
    colour: str, ground: str, wanted: float, expected: str
) -> None:
    assert far_enough(colour, [(ground, wanted)]) == expected


def test_on_a_ground_of_more_than_half_luminance_a_colour_gets_darker_else_lighter() -> None:
    light, dark = "#bcbcbc", "#bbbbbb"  # 0.503 and 0.497
    assert far_enough(light, [(light, 1.5)]) < light
    assert far_enough(dark, [(dark, 1.5)]) > dark


def test_no_colour_is_further_than_black_and_white() -> None:
    with pytest.raises(AssertionError):
        far_enough(WHITE, [(WHITE, 21.1)])


@pytest.mark.parametrize(
    ("colour", "is_one"),
    [
        # Red, then green, then blue; green between three tenths of the way to red and all of it.
        ("#ffaa00", True), ("#ff4d00", True), ("#ff4c00", False), ("#ffff00", False),
        ("#fffe00", True),
        ("#aaff00", False), ("#00aaff", False), ("#aa00ff", False),
        # 26 of 255 between red and blue are more than a tenth, 25 are grey.
        ("#807366", True), ("#807367", False), ("#ffb380", True),
    ],
)  # fmt: skip
def test_amber_is_a_sixth_of_the_circle(colour: str, is_one: bool) -> None:
    assert is_amber(colour) is is_one
