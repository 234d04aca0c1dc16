"""Pages rendered by MkDocs: our HTML kept out of Markdown changes nothing, and no link leads nowhere."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from shared import made_once

from almanac.analysis.analysis import Analysis
from almanac.model.load import Loaded
from almanac.publish.errors import SiteError
from almanac.publish.keep_html import is_html
from almanac.publish.links import LinkCheck
from almanac.publish.postprocess import postprocess
from almanac.publish.render import render
from almanac.resources import SETTINGS
from almanac.site.settings import SiteSettings, read_settings
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages

SETTINGS_READ = SiteSettings("Deck Almanac", "A catalogue.", "https://club.example/deck/", "")


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory, loaded: Loaded, analysis: Analysis) -> Path:
    """The written pages of the small catalogue, and below ``site`` what MkDocs makes of them."""

    def make(folder: Path) -> None:
        write_pages(SitePages(analysis, loaded.names, read_settings(SETTINGS)), folder / "pages")
        render(folder, folder / "pages", folder / "site-0")
        render(folder, folder / "pages", folder / "site-1", hooks=())

    return made_once(tmp_path_factory, "rendered", make)


def test_without_the_hook_the_site_is_the_same_but_for_white_space(pages: Path) -> None:
    quick, plain = (
        {
            path.relative_to(pages / site): "".join(path.read_text("utf-8").split())
            for path in (pages / site).rglob("*.html")
        }
        for site in ("site-0", "site-1")
    )
    assert len(quick) > 40
    assert quick.keys() == plain.keys()
    assert [str(page) for page in quick if quick[page] != plain[page]] == []


def test_what_our_templates_write_is_kept_out(pages: Path) -> None:
    read = []
    for path in (pages / "pages").glob("*/*.md"):
        text = path.read_text("utf-8").split("---\n", 2)[2]
        bodies = (body.strip() for body in re.split(r"(?m)^#{1,6} .*$", text))
        read += [f"{path.name}: {body[:60]}" for body in bodies if body and not is_html(body)]
    assert read == []


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ("<p>a</p>", True),
        ("\n<p>a</p>\n\n<p>b</p>\n", True),
        ("<p>a</p>\n\nb *c*", False),
        ("<p>a</p>\n\n    <p>code</p>", False),
        ("<div markdown>\n*a*\n</div>", False),
        ('<div markdown="1">\n*a*\n</div>', False),
        ("a <b>c</b>", False),
        ("", False),
    ],
)
def test_only_what_is_html_throughout_is_kept_out(body: str, expected: bool) -> None:
    assert is_html(body) is expected


LEADS = {
    "index.html": '<p id="top-of-it"></p><a href="sets/one.html#clock">a</a> <img src="a.svg">',
    "sets/one.html": '<h2 id="clock">a</h2><a href="../index.html#top-of-it">a</a> <a href="#clock">a</a>',
}


def broken(pages: dict[str, str], base: str = "/") -> list[str]:
    check = LinkCheck(base)
    for file, text in pages.items():
        check.add(file, text)
    return list(check.broken([*pages, "a.svg", "find.html"]))


def test_links_that_lead_somewhere_are_fine() -> None:
    assert broken(LEADS) == []


@pytest.mark.parametrize(
    ("link", "expected"),
    [
        ('<a href="no.html">', "sets/one.html leads to no.html, and sets/no.html is not there"),
        ('<img src="../b.svg">', "sets/one.html leads to ../b.svg, and b.svg is not there"),
        ('<a class="a" href="#no">', "sets/one.html leads to #no, and sets/one.html has no place of that name"),
        ('<a href="../index.html#no">', "sets/one.html leads to ../index.html#no, and index.html has no place of that name"),
        ('<a href="/deck/no.html">', "sets/one.html leads to /deck/no.html, and no.html is not there"),
        ('<script src="../no.js">x</script>', "sets/one.html leads to ../no.js, and no.js is not there"),
        ('<a href="/deck/index.html#top-of-it">', None),
        ('<a href="/deck/">', None),
        ('<a href="../find.html#goal=a,b">', None),
        ('<a href="https://elsewhere.example/no.html">', None),
        ('<a href="mailto:desk@club.example">', None),
        ('<a href="%6Fne.html?a=1#clock">', None),
        ('<script>let a = \'<a href="no.html">\'</script>', None),
        ('<p>write href="no.html" there</p>', None),
    ],
)  # fmt: skip
def test_a_link_that_leads_nowhere_is_told(link: str, expected: str | None) -> None:
    pages = {**LEADS, "sets/one.html": LEADS["sets/one.html"] + link}
    assert broken(pages, "/deck/") == ([expected] if expected else [])


def test_a_link_in_our_html_that_leads_nowhere_fails_the_build(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    page = '# A\n\n<p>See <a href="gone.html">that</a> and <a href="#no">this</a>.</p>\n'
    (tmp_path / "pages" / "index.md").write_text(page, "utf-8")
    plain = tmp_path / "site"
    plain.mkdir()
    (plain / "index.html").write_text(f"<head></head>{page}", "utf-8")
    (plain / "search").mkdir()
    (plain / "search" / "search_index.json").write_text('{"docs": []}', "utf-8")
    with pytest.raises(SiteError) as failed:
        postprocess(plain, SETTINGS_READ, "")
    assert str(failed.value).splitlines() == [
        "links lead nowhere:",
        "index.html leads to #no, and index.html has no place of that name",
        "index.html leads to gone.html, and gone.html is not there",
    ]


def test_what_mkdocs_warns_of_fails_the_build(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "index.md").write_text("# A\n\n[gone](gone.md)\n", "utf-8")
    with pytest.raises(SiteError, match=r"(?s)MkDocs failed:.*gone\.md"):
        render(tmp_path, tmp_path / "pages", tmp_path / "site")
