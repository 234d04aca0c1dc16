"""The settings of the site that its pages need, read once from its mkdocs.yml."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from mkdocs.utils.yaml import yaml_load


@dataclass(frozen=True)
class SiteSettings:
    """Name and description of the site; ``address`` is its own, ``repository`` that of its host's
    pages, each "" where unset.

    Links in calendars and QR codes need ``address``. ``repository`` ends neither in a slash nor in
    ``.git``.
    """

    name: str
    description: str
    address: str
    repository: str


def read_settings(config: Path) -> SiteSettings:
    """The settings of an mkdocs.yml. Raises OSError or yaml.YAMLError where it cannot be read."""
    with config.open(encoding="utf-8") as file:
        read: dict[str, Any] = yaml_load(file)
    return SiteSettings(
        str(read.get("site_name") or ""),
        str(read.get("site_description") or ""),
        _web_address(read.get("site_url")),
        _web_address(read.get("repo_url")).rstrip("/").removesuffix(".git"),
    )


def _web_address(value: Any) -> str:
    """The value where it is a web address, else "": nothing else may become a link."""
    text = str(value or "").strip()
    return text if urlsplit(text).scheme in {"http", "https"} else ""
