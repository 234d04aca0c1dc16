"""A share as a bar, to stand beside its number in a table."""

from __future__ import annotations

WIDTH, HEIGHT = 120, 10


def bar(share: float, css_class: str = "bar-fill") -> str:
    """A bar filled to ``share``, 0 to 1. Hidden from screen readers, which read the number beside
    it.

    Raises ValueError for a share outside 0 to 1.
    """
    if not -1e-9 <= share <= 1 + 1e-9:
        raise ValueError(f"a share lies between 0 and 1, and {share} does not")
    return (
        f'<svg class="bar" viewBox="0 0 {WIDTH} {HEIGHT}" preserveAspectRatio="none" '
        'aria-hidden="true">'
        f'<rect class="bar-ground" width="{WIDTH}" height="{HEIGHT}"/>'
        f'<rect class="{css_class}" width="{share * WIDTH:.2f}" height="{HEIGHT}"/></svg>'
    )
