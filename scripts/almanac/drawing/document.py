"""A whole SVG element: its frame, its title and its description."""

from __future__ import annotations

import re

from almanac.drawing.shapes import number, words


def checked_identifier(identifier: str) -> str:
    """The identifier as given; raises ValueError where it cannot begin an id."""
    if not re.fullmatch(r"[A-Za-z][A-Za-z0-9_-]*", identifier):
        raise ValueError(
            f"identifier {identifier!r} must be a letter, then letters, digits, - or _"
        )
    return identifier


def document(
    kind: str,
    width: float,
    height: float,
    identifier: str,
    title_and_description: tuple[str, str],
    parts: list[str],
    role: str = "img",
) -> str:
    """A whole SVG element with its title and description (``title_and_description``). Its ``role``
    is a group's where parts of it are links: a reader hears nothing inside an image.
    """
    title, text = f"{identifier}-title", f"{identifier}-desc"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="figure figure-{kind}" '
        f'viewBox="0 0 {number(width)} {number(height)}" role="{role}" aria-labelledby="{title}" '
        f'aria-describedby="{text}">'
        f"{words('title', title_and_description[0], title)}"
        f"{words('desc', title_and_description[1], text)}{''.join(parts)}</svg>"
    )
