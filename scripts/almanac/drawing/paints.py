"""The one table of paints of all drawings, and their colours by name."""

from __future__ import annotations

# Class name to (property, its colour where no stylesheet sets one). `site_src/styles/figures.css`
# sets each
# property for light, dark and print; the colours here are its light ones.
COLOURS = {
    "near": "#1d4e6b",
    "far": "#a9c3d1",
    "suit": "#0b2a3d",
    "far-suit": "#7797a8",
    "edge": "#ffffff",
    "line": "#12384d",
    "water": "#dcedf4",
    "surface": "#2f7fa3",
    "wall": "#e6e2d8",
    "joint": "#8d8775",
    "gear": "#a9cc2f",
    "gear-line": "#33450a",
    "text": "#14222b",
}


def colour(name: str) -> str:
    """The CSS colour of a name of ``COLOURS``, through its custom property."""
    return f"var(--figure-{name}, {COLOURS[name]})"


# What a thing of a class is painted with.
PAINTS: dict[str, dict[str, str]] = {
    "near": {
        "fill": colour("near"),
        "stroke": colour("edge"),
        "stroke-width": "1.6",
        "paint-order": "stroke",
    },
    "trunk": {"fill": colour("near")},
    "far": {
        "fill": colour("far"),
        "stroke": colour("line"),
        "stroke-width": "1.5",
        "paint-order": "stroke",
    },
    "near-suit": {"fill": colour("suit")},
    "far-suit": {
        "fill": colour("far-suit"),
        "stroke": colour("line"),
        "stroke-width": "1.5",
        "paint-order": "stroke",
    },
    "skin-line": {
        "fill": "none",
        "stroke": colour("edge"),
        "stroke-width": "1.1",
        "stroke-linecap": "round",
    },
    "goggles": {"fill": colour("edge")},
    "water": {"fill": colour("water")},
    "surface": {
        "fill": "none",
        "stroke": colour("surface"),
        "stroke-width": "1.3",
        "stroke-linecap": "round",
    },
    "ripple": {
        "fill": "none",
        "stroke": colour("surface"),
        "stroke-width": "0.7",
        "stroke-linecap": "round",
    },
    "wall": {"fill": colour("wall"), "stroke": colour("joint"), "stroke-width": "1"},
    "tiles": {"fill": "none", "stroke": colour("joint"), "stroke-width": "0.6"},
    "gear": {
        "fill": colour("gear"),
        "stroke": colour("gear-line"),
        "stroke-width": "1.1",
        "stroke-linejoin": "round",
    },
    "gear-line": {
        "fill": "none",
        "stroke": colour("gear-line"),
        "stroke-width": "1.3",
        "stroke-linecap": "round",
    },
    "gear-rim": {"fill": "none", "stroke": colour("gear-line"), "stroke-width": "4"},
    "gear-strap": {"fill": "none", "stroke": colour("gear"), "stroke-width": "2"},
    "arrow": {
        "fill": "none",
        "stroke": colour("line"),
        "stroke-width": "1.5",
        "stroke-linecap": "round",
    },
    "ring-edge": {"fill": "none", "stroke": colour("edge"), "stroke-width": "4.4"},
    "ring": {
        "fill": "none",
        "stroke": colour("line"),
        "stroke-width": "2.2",
        "stroke-dasharray": "5 3",
    },
    "sign": {
        "fill": "none",
        "stroke": colour("line"),
        "stroke-width": "2.6",
        "stroke-linecap": "round",
        "stroke-linejoin": "round",
    },
    "text": {"fill": colour("text")},
}
