"""A hook of MkDocs that keeps our own HTML out of Python-Markdown, which would read each tag of it
only to write it back.

The section bodies of a page that are HTML are taken out before the page is rendered and put back
afterwards. It only makes the build quicker: without it the site is the same but for white space.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from mkdocs.structure.pages import Page

_HEADING = re.compile(r"^(#{1,6} .*)$", re.MULTILINE)
_MARKDOWN_WITHIN = re.compile(r"\smarkdown(=|>|\s)")
_KEPT = "kept_html"


def on_page_markdown(markdown: str, /, *, page: Page, **_: Any) -> str:
    """Leave a mark in place of each body that is HTML; what stood there is kept with the page."""
    bodies: list[str] = []

    def taken(body: str) -> str:
        if not is_html(body):
            return body
        bodies.append(body.strip())
        return f'\n\n<div data-kept="{len(bodies) - 1}"></div>\n\n'

    parts = _HEADING.split(markdown)
    parts[::2] = map(taken, parts[::2])
    page.meta[_KEPT] = bodies
    return "".join(parts)


def on_page_content(html: str, /, *, page: Page, **_: Any) -> str:
    """Put back what was taken out."""
    for number, body in enumerate(page.meta.pop(_KEPT, ())):
        html = html.replace(f'<div data-kept="{number}"></div>', body, 1)
    return html


def is_html(body: str) -> bool:
    """Whether a section body is HTML throughout: it begins with a tag, and so does what comes after
    each empty line; no element asks for Markdown within.
    """
    blocks = re.split(r"\n\s*\n", body.strip())
    asks = "markdown" in body and _MARKDOWN_WITHIN.search(body)
    return not asks and all(block.startswith("<") for block in blocks)
