"""What every drawn figure must be, for the tests of figures."""

from __future__ import annotations

import re
from math import cos, radians, sin
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
PATH_STEP = re.compile(r"([MLHVCSQA])([^A-Z]*)")


Spot = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]
"""a b c d e f of SVG: x' = ax + cy + e, y' = bx + dy + f."""
UNMOVED: Matrix = (1, 0, 0, 1, 0, 0)


def moved(matrix: Matrix, x: float, y: float) -> Spot:
    """A spot after a transform."""
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


def transform(text: str) -> Matrix:
    """The matrix of a transform attribute of translations, rotations and scales."""
    whole = UNMOVED
    for name, arguments in re.findall(r"(\w+)\(([^)]*)\)", text):
        numbers = [float(item) for item in arguments.split()]
        if name == "translate":
            one: Matrix = (1, 0, 0, 1, numbers[0], numbers[1] if len(numbers) > 1 else 0)
        elif name == "scale":
            one = (numbers[0], 0, 0, numbers[-1], 0, 0)
        else:
            assert name == "rotate" and len(numbers) == 1, text
            turn = radians(numbers[0])
            one = (cos(turn), sin(turn), -sin(turn), cos(turn), 0, 0)
        whole = times(whole, one)
    return whole


def times(outer: Matrix, inner: Matrix) -> Matrix:
    """The transform of first the inner, then the outer matrix."""
    a, b, c, d, _, _ = outer
    return (
        a * inner[0] + c * inner[1],
        b * inner[0] + d * inner[1],
        a * inner[2] + c * inner[3],
        b * inner[2] + d * inner[3],
        *moved(outer, inner[4], inner[5]),
    )


def _collect(node: ElementTree.Element, matrix: Matrix, spots: list[Spot]) -> None:
    """All corners and control points of what is drawn below a node, in the figure's own units."""
    matrix = times(matrix, transform(node.get("transform", "")))
    spots += [moved(matrix, x, y) for x, y in _own_spots(node)]
    for inner in node:
        if inner.tag == f"{SVG}svg":  # what is outside of a window is cut off
            spots += [moved(matrix, x, y) for x, y in _box(inner)]
        else:
            _collect(inner, matrix, spots)


def _box(node: ElementTree.Element) -> list[Spot]:
    x, y, w, h = (float(node.get(name, "0")) for name in ("x", "y", "width", "height"))
    assert w >= 0 and h >= 0
    return [(x, y), (x + w, y + h)]


def _own_spots(node: ElementTree.Element) -> list[Spot]:
    if node.tag == f"{SVG}rect":
        return _box(node)
    if node.tag == f"{SVG}circle":
        x, y, r = (float(node.get(name, "0")) for name in ("cx", "cy", "r"))
        return [(x - r, y - r), (x + r, y + r)]
    if node.tag != f"{SVG}path":
        return []
    spots: list[Spot] = []
    for letter, text in PATH_STEP.findall(node.get("d", "")):
        numbers = [float(item) for item in text.split()]
        if letter in "HV":
            last = spots[-1]
            spots += [(x, last[1]) if letter == "H" else (last[0], x) for x in numbers]
            continue
        numbers = numbers[5:] if letter == "A" else numbers
        spots += zip(numbers[0::2], numbers[1::2], strict=True)
    return spots


def extent(root: ElementTree.Element) -> tuple[float, float, float, float]:
    """The smallest box around everything drawn, curves taken at their control points."""
    spots: list[Spot] = []
    _collect(root, UNMOVED, spots)
    xs, ys = zip(*spots, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def checked(svg: str) -> ElementTree.Element:
    """The figure as a tree, after what must hold for each: words, scaling, no style or script, all
    inside.
    """
    root = ElementTree.fromstring(svg)
    role = "group" if root.find(f".//{SVG}a") is not None else "img"  # nothing in an image is read
    assert root.tag == f"{SVG}svg" and root.get("role") == role
    assert root.get("width") is None and root.get("height") is None
    title, desc = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None and title.text and title.get("id") == root.get("aria-labelledby")
    assert desc is not None and desc.text and desc.get("id") == root.get("aria-describedby")
    for node in root.iter():
        assert node.tag.removeprefix(SVG) in {
            "a",
            "svg",
            "title",
            "desc",
            "path",
            "rect",
            "circle",
            "text",
            "g",
        }
        assert node.get("style") is None and not any(name.startswith("on") for name in node.attrib)
    assert "nan" not in svg and "inf" not in svg
    _, _, width, height = (float(item) for item in root.get("viewBox", "").split())
    left, top, right, bottom = extent(root)
    assert left >= -2.5 and top >= -0.5, (left, top)
    assert right <= width + 2.5 and bottom <= height + 0.5, (right, bottom)
    return root
