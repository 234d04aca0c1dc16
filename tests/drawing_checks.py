"""What every drawn figure must be, for the tests of figures."""

from __future__ import annotations

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
PATH_STEP = re.compile(r"([MLHVCSQA])([^A-Z]*)")


def of(nodes: list[ElementTree.Element], name: str) -> list[ElementTree.Element]:
    """The elements of a name."""
    return [node for node in nodes if node.tag == f"{SVG}{name}"]


def extent(root: ElementTree.Element) -> tuple[float, float, float, float]:
    """The smallest box around everything drawn, curves taken at their control points."""
    xs: list[float] = []
    ys: list[float] = []
    windows = [inner for inner in root.iter(f"{SVG}svg") if inner is not root]
    behind = {id(node) for inner in windows for node in inner.iter() if node is not inner}
    for node in windows:  # what is outside of a window is cut off
        x, y, w, h = (float(node.get(name, "")) for name in ("x", "y", "width", "height"))
        xs += [x, x + w]
        ys += [y, y + h]
    shapes = [node for node in root.iter() if id(node) not in behind]
    for node in of(shapes, "rect"):
        x, y, w, h = (float(node.get(name, "0")) for name in ("x", "y", "width", "height"))
        assert w >= 0 and h >= 0
        xs += [x, x + w]
        ys += [y, y + h]
    for node in of(shapes, "circle"):
        x, y, r = (float(node.get(name, "0")) for name in ("cx", "cy", "r"))
        xs += [x - r, x + r]
        ys += [y - r, y + r]
    for node in of(shapes, "path"):
        for letter, text in PATH_STEP.findall(node.get("d", "")):
            numbers = [float(item) for item in text.split()]
            if letter == "A":
                numbers = numbers[5:]
            xs += [] if letter == "V" else numbers if letter == "H" else numbers[0::2]
            ys += [] if letter == "H" else numbers if letter == "V" else numbers[1::2]
    return min(xs), min(ys), max(xs), max(ys)


def checked(svg: str) -> ElementTree.Element:
    """The figure as a tree, after what must hold for each: words, scaling, no style or script, all
    inside.
    """
    root = ElementTree.fromstring(svg)
    assert root.tag == f"{SVG}svg" and root.get("role") == "img"
    assert root.get("width") is None and root.get("height") is None
    title, desc = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None and title.text and title.get("id") == root.get("aria-labelledby")
    assert desc is not None and desc.text and desc.get("id") == root.get("aria-describedby")
    for node in root.iter():
        assert node.tag.removeprefix(SVG) in {
            "svg",
            "title",
            "desc",
            "path",
            "rect",
            "circle",
            "text",
        }
        assert node.get("style") is None and not any(name.startswith("on") for name in node.attrib)
    assert "nan" not in svg and "inf" not in svg
    _, _, width, height = (float(item) for item in root.get("viewBox", "").split())
    left, top, right, bottom = extent(root)
    assert left >= -2.5 and top >= -0.5, (left, top)
    assert right <= width + 2.5 and bottom <= height + 0.5, (right, bottom)
    return root
