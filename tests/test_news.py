"""What is new: the repository's history told as a page, as data and as a feed."""

from __future__ import annotations

import json
import re
from pathlib import Path
from xml.etree import ElementTree

from plans_world import club
from test_review import edit, git

from almanac import __version__
from almanac.model.load import load
from almanac.resources import HOME
from almanac.site.news import news_files, news_items, news_page
from almanac.site.settings import SiteSettings
from almanac.source.git.revision import history

ATOM = "{http://www.w3.org/2005/Atom}"
KICK = "drills/skills/kicking/back-kick.yml"


def made(tmp_path: Path) -> Path:
    root = club(tmp_path / "club")
    git(root, "init", "--quiet", "--initial-branch", "main")
    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message", "base")
    edit(root, KICK, "factor: 1.0", "factor: 1.1")
    git(root, "commit", "--quiet", "--all", "--message", "slower")
    (root / "plans/blocks/autumn.yml").unlink()
    git(root, "commit", "--quiet", "--all", "--message", "no block")
    return root


def test_changes_newest_first(tmp_path: Path) -> None:
    found = news_items(history(made(tmp_path), 50))
    assert [(change.what, change.kind, change.id) for change in found[:2]] == [
        ("removed", "block", "autumn"),
        ("changed", "drill", "back-kick"),
    ]
    assert ("added", "drill", "back-kick") in [
        (change.what, change.kind, change.id) for change in found
    ]
    assert len(news_items(history(tmp_path / "club", 1))) == 1


def test_page_data_and_feed(tmp_path: Path) -> None:
    root = made(tmp_path)
    catalogue = load(root).catalogue
    assert catalogue is not None
    found = news_items(history(root, 50))
    days = news_page(catalogue, found).context["days"]
    assert isinstance(days, list) and len(days) == 1  # all of it today
    files = dict(
        news_files(catalogue, found, SiteSettings("Our Club", "", "https://club.example/"))
    )
    told = json.loads(files["data/v1/changes.json"])
    assert told["version"] == 1 and len(told["changes"]) == len(found)
    feed = ElementTree.fromstring(files["data/v1/feed.xml"])
    links = [link.get("href") for link in feed.iter(f"{ATOM}link")]
    assert "https://club.example/drills/back-kick.html" in links
    assert feed.findtext(f"{ATOM}title") and feed.findtext(f"{ATOM}updated")


def test_without_a_repository_there_is_nothing_to_tell(tmp_path: Path) -> None:
    root = club(tmp_path)
    assert news_items(history(root, 50)) == []
    catalogue = load(root).catalogue
    assert catalogue is not None
    assert news_page(catalogue, []).context["days"] == []
    ElementTree.fromstring(
        dict(news_files(catalogue, [], SiteSettings("Our Club", "")))["data/v1/feed.xml"]
    )


def test_version_changes_and_tags_agree() -> None:
    """The first section of the changes is of the version that the program says; every tag of a
    version has its section, and what has a tag is not called unreleased.
    """
    changes = (HOME / ".github/CHANGELOG.md").read_text("utf-8")
    told = re.findall(r"(?m)^## (\d+\.\d+\.\d+)(, not yet released)?$", changes)
    assert len(told) == changes.count("\n## ")
    assert told[0][0] == __version__
    listed = git(HOME, "tag", "--list", "v*") if (HOME / ".git").exists() else ""
    tags = {tag for tag in listed.split() if tag[1:2].isdigit()}
    assert {f"v{version}" for version, waits in told if not waits} >= tags
    assert not [version for version, waits in told if waits and f"v{version}" in tags]
