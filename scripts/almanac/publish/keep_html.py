"""A hook of MkDocs that keeps our own HTML out of Python-Markdown, which would read each tag of it
only to write it back.

The section bodies of a page that are HTML are taken out before the page is rendered and put back
afterwards; so are the headings between them, where the page is nothing else. It only makes the
build quicker: without it the site is the same but for white space.
"""

from __future__ import annotations

import html as entities
import re
from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

from markdown.extensions.toc import slugify, unique
from mkdocs.structure.toc import get_toc

if TYPE_CHECKING:
    from mkdocs.structure.pages import Page

# At the start of a line. What begins with a sign of its own is found in a ninth of the time.
_HEADING = re.compile(r"(#(?<![^\n]#)#{0,5} .*)")
# A heading that Markdown would change nothing of; it may name its anchor.
_PLAIN = re.compile(r"(#{1,6}) ([^*_`\[\]<>\\!{}]*?)(?: \{ #([\w-]+) \})?")
_MARKDOWN_WITHIN = re.compile(r"\smarkdown(=|>|\s)")
_KEPT = "kept_html"


def on_page_markdown(markdown: str, /, *, page: Page, **_: Any) -> str:
    """Leave a mark in place of each body that is HTML; what stood there is kept with the page."""
    bodies: list[str] = []

    def taken(body: str) -> str:
        bodies.append(body.strip())
        return f'\n\n<div data-kept="{len(bodies) - 1}"></div>\n\n'

    parts = _HEADING.split(markdown)
    whole = as_html(parts) if "title" in page.meta else None
    if whole is not None:
        parts = [taken(whole) if whole.strip() else whole]
        vars(page)["render"] = partial(_leave, page)
    else:
        parts[::2] = [taken(body) if is_html(body) else body for body in parts[::2]]
    page.meta[_KEPT] = bodies
    return "".join(parts)


def _leave(page: Page, *_: Any) -> None:
    """In place of what MkDocs does to render a page, where it holds nothing but HTML that was taken
    out: to make Python-Markdown ready takes longer than to render what is left.
    """
    page.content, page.toc = (page.markdown or "").strip(), get_toc([])
    page.present_anchor_ids, page.links_to_anchors = set(), {}


def as_html(parts: Sequence[str]) -> str | None:
    """A page of bodies, and of headings between them, as HTML; None where that takes Markdown."""
    headings = [_PLAIN.fullmatch(part) for part in parts[1::2]]
    if not all(is_html(body) or not body.strip() for body in parts[::2]) or None in headings:
        return None
    used = {found[3] for found in headings if found and found[3]}
    made = [parts[0]]
    for found, body in zip(headings, parts[2::2], strict=True):
        if found:
            level, text = len(found[1]), found[2]
            anchor = found[3] or unique(slugify(entities.unescape(text), "-"), used)
            made.append(f'<h{level} id="{anchor}">{text}</h{level}>\n')
        made.append(body)
    return "".join(made)


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
