"""Rules on what a club makes of its site's look."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.contrast import (
    contrast,
    far_enough,
    hardest_ground,
    is_amber,
    is_far_enough,
)
from almanac.checks.rule import Problem, forbids
from almanac.rounding import show_number

# Paper, what lies on it and danger, with the contrast that a colour must have there: WCAG 2.2,
# 1.4.6, on danger 1.4.3. styles/tokens.css has these; tests/test_look.py holds the two together.
GROUNDS = {
    "light": (("#ffffff", 7.0), ("#eaf1f4", 7.0), ("#fff3d6", 4.5)),
    "dark": (("#0c1a22", 7.0), ("#16303c", 7.0), ("#3a2a08", 4.5)),
}


@forbids("site-colour")
def site_colour(analysis: Analysis) -> Iterator[Problem]:
    """A colour of the club's site is far enough from what it stands on to be read with wet glasses
    in the sun, seven to one as WCAG 2.2 measures it; and it is not amber, which is danger's alone.
    """
    club = analysis.catalogue.club
    for look, grounds in GROUNDS.items():
        colour = getattr(club.site.colours, look)
        if not colour:
            continue
        path = ("site", "colours", look)
        if is_amber(colour):
            message = f"{colour} is amber, which stands for danger and for nothing else"
            yield Problem(club, path, message, "take another colour: blue, green, red or violet")
        elif not is_far_enough(colour, grounds):
            ground, wanted = hardest_ground(colour, grounds)
            ratio = show_number(contrast(colour, ground), 2)
            message = (
                f"{colour} has a contrast of {ratio} to 1 with {ground}, which it stands on; "
                f"{show_number(wanted)} to 1 is wanted"
            )
            hint = f'the same colour further off is "{far_enough(colour, grounds)}"'
            yield Problem(club, path, message, hint)
