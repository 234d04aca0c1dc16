"""The picture of a QR code, for a reader of such pictures."""

from __future__ import annotations

import re

import numpy


def drawn(svg: str) -> numpy.ndarray:
    """The picture that a code's SVG draws: runs of dark modules along the lines of one path."""
    size = int(re.search(r'viewBox="0 0 (\d+) ', svg)[1])  # type: ignore[index]
    picture = numpy.full((size, size), 255, numpy.uint8)
    x = y = 0.0
    for command, numbers in re.findall(
        r"([Mmh])([-\d. ]*)", svg.rsplit(' d="', maxsplit=1)[-1].split('"', maxsplit=1)[0]
    ):
        values = [float(number) for number in numbers.split()]
        if command == "h":
            picture[int(y), int(x) : int(x + values[0])] = 0
            x += values[0]
        else:
            x, y = (values[0], values[1]) if command == "M" else (x + values[0], y + values[1])
    return picture.repeat(4, 0).repeat(4, 1)
