"""The addresses of the site and of its repository, where the club has said them."""

from __future__ import annotations

import re
from pathlib import Path

_SITE_URL = re.compile(r"(?m)^site_url:\s*[\"']?(https?://[^\s\"'#]+)")
_REPOSITORY = re.compile(r"(?m)^repo_url:\s*[\"']?(https?://[^\s\"'#]+)")


def site_address(config: Path) -> str:
    """``site_url`` of an mkdocs.yml, or "" where it is not set. Links in calendars and QR codes need it."""
    found = _SITE_URL.search(config.read_text("utf-8"))
    return found[1] if found else ""


def repository_address(config: Path) -> str:
    """``repo_url`` of an mkdocs.yml without a slash or ``.git`` at its end, or "" where it is not set."""
    found = _REPOSITORY.search(config.read_text("utf-8"))
    return found[1].rstrip("/").removesuffix(".git") if found else ""
