"""Pages rendered by MkDocs: our HTML kept out of Markdown changes nothing, and no link leads
nowhere.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shared import TWO_CAN, made_once

from almanac.analysis.analysis import Analysis
from almanac.model.load import Loaded
from almanac.publish.errors import SiteError
from almanac.publish.keep_html import as_html, is_html
from almanac.publish.links import LinkCheck
from almanac.publish.postprocess import close_set
from almanac.publish.render import render
from almanac.publish.whole_site import write_site
from almanac.resources import SITE_SOURCE
from almanac.second_process import begun, from_both_ends, in_turns, shared
from almanac.site.folder import Folder
from almanac.site.settings import SiteSettings
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages

SETTINGS = SiteSettings("A club", "Its drills.", "https://club.example/")


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory, loaded: Loaded, analysis: Analysis) -> Path:
    """The written pages of the small catalogue, and below ``site`` what MkDocs makes of them."""

    def make(folder: Path) -> None:
        bundled = json.loads((SITE_SOURCE / "package.json").read_text("utf-8"))["bundles"]
        scripts = [(file, b"") for file in (*bundled, "scripts/licences.txt")]
        own = SitePages(analysis, loaded.names)
        write_pages(own, folder / "pages", scripts)
        render(folder, folder / "pages", Folder(folder / "site-0").put, SETTINGS)
        render(folder, folder / "pages", Folder(folder / "site-1").put, SETTINGS, hooks=())

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
    "sets/one.html": '<h2 id="clock">a</h2><a href="../index.html#top-of-it">a</a> <a '
    'href="#clock">a</a>',
}


def broken(pages: dict[str, str], base: str = "/") -> list[str]:
    check = LinkCheck(base)
    for file, text in pages.items():
        check.add(file, text)
    return list(check.broken([*pages, "a.svg", "find.html"]))


def test_a_blank_stands_between_the_links_of_a_list(pages: Path) -> None:
    """An expression's text is stripped at its ends, so that a separator in one loses its blank."""
    block = (pages / "site-0" / "blocks" / "heron-legs-in-three-weeks.html").read_text("utf-8")
    assert re.search(r"Kick into stroke</a>, <a [^>]*>Kick endurance</a>", block)
    for page in sorted((pages / "site-0").rglob("*.html")):
        assert "</a>,<" not in page.read_text("utf-8"), page.name


def test_no_page_shows_a_link_as_it_is_written(pages: Path) -> None:
    """A link in Markdown within HTML is no link."""
    written = {
        page.name: "](" in re.sub(r"<(script|pre|code)\b.*?</\1>", "", text, flags=re.DOTALL)
        for page in (pages / "site-0").rglob("*.html")
        for text in [page.read_text("utf-8")]
    }
    assert len(written) > 20
    assert [name for name, is_shown in written.items() if is_shown] == []


def test_links_that_lead_somewhere_are_fine() -> None:
    assert broken(LEADS) == []


@pytest.mark.parametrize(
    ("link", "expected"),
    [
        ('<a href="no.html">', "sets/one.html leads to no.html, and sets/no.html is not there"),
        ('<img src="../b.svg">', "sets/one.html leads to ../b.svg, and b.svg is not there"),
        ('<a class="a" href="#no">',
         "sets/one.html leads to #no, and sets/one.html has no place of that name"),
        ('<a href="../index.html#no">',
         "sets/one.html leads to ../index.html#no, and index.html has no place of that name"),
        ('<a href="/deck/no.html">',
         "sets/one.html leads to /deck/no.html, and no.html is not there"),
        ('<script src="../no.js">x</script>',
         "sets/one.html leads to ../no.js, and no.js is not there"),
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


def test_a_link_in_our_html_that_leads_nowhere_fails_the_build(pages: Path, tmp_path: Path) -> None:
    shutil.copytree(pages / "pages", tmp_path / "pages")
    page = tmp_path / "pages" / "drills" / "index.md"
    more = '\n\n<p>See <a href="gone.html">that</a> and <a href="#no">this</a>.</p>\n'
    page.write_text(page.read_text("utf-8") + more, "utf-8")
    with pytest.raises(SiteError) as failed:
        write_site(tmp_path, tmp_path / "pages", tmp_path / "site", SETTINGS, "")
    assert str(failed.value).splitlines() == [
        "links lead nowhere:",
        "drills/index.html leads to #no, and drills/index.html has no place of that name",
        "drills/index.html leads to gone.html, and drills/gone.html is not there",
    ]


def test_a_folder_is_filled_anew_and_keeps_what_is_equal(tmp_path: Path) -> None:
    for file, text in {"same": "a", "other": "b", "deep/gone": "c", "longer": "d"}.items():
        (tmp_path / file).parent.mkdir(exist_ok=True)
        (tmp_path / file).write_text(text, "utf-8")
        os.utime(tmp_path / file, ns=(1, 1))
    folder = Folder(tmp_path)
    for file, text in {"same": "a", "other": "B", "longer": "dd", "new/one": "e"}.items():
        folder.put(file, text.encode())
    folder.drop_others()
    now = {path for path in tmp_path.rglob("*") if path.is_file()}
    read = {path.relative_to(tmp_path).as_posix(): path.read_text("utf-8") for path in now}
    assert read == {"same": "a", "other": "B", "longer": "dd", "new/one": "e"}
    assert folder.files == read.keys()
    assert not (tmp_path / "deep").exists()
    assert {path.name for path in now if path.stat().st_mtime_ns == 1} == {"same"}


@pytest.fixture
def two_processors(monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine with two, and no thread that a test before this one has left."""
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    monkeypatch.setattr("threading.active_count", lambda: 1)
    monkeypatch.setattr("almanac.second_process.is_possible", TWO_CAN)


@pytest.mark.usefixtures("two_processors")
def test_a_second_process_gives_what_one_would(monkeypatch: pytest.MonkeyPatch) -> None:
    beside = begun(os.getpid)
    assert beside() != os.getpid()
    monkeypatch.setattr("os.cpu_count", lambda: 1)
    assert begun(os.getpid)() == os.getpid()


@pytest.mark.usefixtures("two_processors")
def test_what_fails_in_a_second_process_is_done_here() -> None:
    here = os.getpid()

    def fails_there() -> int:
        if os.getpid() != here:
            raise RuntimeError("no room")
        return here

    assert begun(fails_there)() == here
    with pytest.raises(ZeroDivisionError):
        begun(lambda: 1 // 0)()


@pytest.mark.usefixtures("two_processors")
def test_two_processes_share_a_work_out() -> None:
    here, items = os.getpid(), list(range(5_000))

    def work(item: int) -> tuple[int, int]:
        return item * item, os.getpid()

    found = shared(items, work)
    assert list(found) == items
    assert all(square == item * item for item, (square, _) in found.items())
    assert {process for _, process in found.values()} >= {here}
    assert shared([3, 2], work) == {3: (9, here), 2: (4, here)}


@pytest.mark.usefixtures("two_processors")
def test_what_is_lost_with_a_second_process_is_done_here() -> None:
    here = os.getpid()

    def work(item: int) -> int:
        if os.getpid() != here:
            os._exit(9)
        return -item

    assert shared(list(range(100)), work) == {item: -item for item in range(100)}


@pytest.mark.usefixtures("two_processors")
@pytest.mark.parametrize("count", [0, 1, 23, 1_999, 2_001, 70_000])
def test_each_turn_is_given_once(count: int) -> None:
    turns = in_turns(range(count))
    beside = begun(lambda: list(turns))
    mine = list(turns)
    assert sorted([*mine, *beside()]) == list(range(count))


@pytest.mark.usefixtures("two_processors")
@pytest.mark.parametrize("count", [0, 1, 23, 1_999, 2_001, 70_000])
def test_each_thing_is_given_once_from_one_end_or_the_other(count: int) -> None:
    ahead, back = from_both_ends(range(count))
    beside = begun(lambda: list(back))
    mine = list(ahead)
    numbers, things = zip(*mine, *beside(), strict=True) if count else ((), ())
    assert sorted(things) == list(range(count))
    assert count > 2_000 or sorted(numbers) == sorted(things)
    assert [thing for _, thing in mine] == list(range(len(mine)))


ENDLESS = """
import os, sys, time
from almanac.second_process import begun

os.cpu_count = lambda: 2
beside = begun(lambda: (print(os.getpid(), flush=True), time.sleep(600)))
time.sleep(600)
"""


def test_a_second_process_ends_with_the_first() -> None:
    """Its output is then closed, for which whoever has killed the first may wait."""
    first = subprocess.Popen([sys.executable, "-c", ENDLESS], stdout=subprocess.PIPE, text=True)
    assert first.stdout is not None
    assert int(first.stdout.readline()) != first.pid
    first.kill()
    assert first.stdout.read() == ""  # nobody holds it open any more
    first.wait()


def test_what_mkdocs_warns_of_fails_the_build(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "index.md").write_text("# A\n\n[gone](gone.md)\n", "utf-8")
    with pytest.raises(SiteError, match=r"(?s)MkDocs failed:.*gone\.md"):
        render(tmp_path, tmp_path / "pages", lambda *_: None, SETTINGS)


@pytest.mark.parametrize(
    ("markdown", "expected"),
    [
        ("# A kick\n\n<p>b</p>\n", '<h1 id="a-kick">A kick</h1>\n\n\n<p>b</p>\n'),
        ("## It&#39;s up { #up }\n", '<h2 id="up">It&#39;s up</h2>\n\n'),
        ("## Up\n<p>a</p>\n## Up\n", '<h2 id="up">Up</h2>\n\n<p>a</p>\n<h2 id="up_1">Up</h2>\n\n'),
        ("## So *much*\n<p>a</p>", None),
        ("## Up\nand *down*", None),
    ],
)
def test_a_page_of_html_and_headings_never_meets_markdown(markdown, expected):
    assert as_html(re.split(r"(?m)^(#{1,6} .*)$", markdown)) == expected


@given(st.text("ab \t\n\r\x0b\xa0\u2028", max_size=20))
def test_a_page_loses_empty_lines_and_indents_alone(page: str) -> None:
    closed = close_set(page)
    assert re.sub(r"[ \t\r\n]", "", closed) == re.sub(r"[ \t\r\n]", "", page)
    assert closed.count("\n") <= page.count("\n")
    assert "" not in closed.split("\n")[1:-1]
    assert all(line == line.strip(" \t\r") for line in closed.split("\n"))


def test_preformatted_text_is_left_as_it_is() -> None:
    assert close_set("<pre>a  \n\n  b</pre>") == "<pre>a  \n\n  b</pre>"
