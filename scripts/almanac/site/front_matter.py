"""What stands before a page's Markdown, between two lines of three hyphens."""

from __future__ import annotations

import html
import re
from typing import Any

import yaml

_FRONT_MATTER = re.compile(r"\A---\n(?P<fields>.*?)^---\n", re.DOTALL | re.MULTILINE)


def front_matter_of(text: str) -> tuple[dict[str, Any], str]:
    """The fields of a page, texts as they are read, which stand there as HTML; and the Markdown
    after them. No fields where there is no front matter, or nothing in it.
    """
    found = _FRONT_MATTER.match(text)
    if not found:
        return {}, text
    fields = yaml.load(found["fields"], Loader=yaml.CSafeLoader)
    return _plain(fields or {}), text[found.end() :]


def _plain(value: Any) -> Any:
    if isinstance(value, str):
        return html.unescape(value)
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    return [_plain(inner) for inner in value] if isinstance(value, list) else value
