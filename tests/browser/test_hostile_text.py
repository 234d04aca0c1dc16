"""Hostile text in every field of every kind (``hostile_world``): nothing of it runs, and what is
shown is what was written.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from xml.etree import ElementTree

import pytest
import vobject
from hostile_world import EVIL, PAYLOADS, Injected, inject, is_free
from playwright.sync_api import Browser, BrowserContext, Page, expect
from pypdf import PdfReader
from shared import DAY, is_long, made_once

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND, WITH_PAGES
from almanac.model.load import load
from almanac.publish.build import build_site
from almanac.source import schemas

from .web import Server, Watched

MARK = re.compile(r"Zq\d+z")
# Fields that no page shows, or that only a script writes on one. Data files hold them all.
NOT_SHOWN = re.compile(
    r"(log|policy)\.|club\.(title|site\.about|pools\.\*\.ends\.)|vocabulary\.(title|about|words\.\*\.(alarm|also|control|gravity))"
    r"|.*\.asked_as\[\]$|.*\.forms\[\]$|.*\.cord\.at$|.*\.words\.\*\.(title|means)$"
)
ADDRESSES = {
    "href",
    "src",
    "srcset",
    "action",
    "formaction",
    "data",
    "poster",
    "xlink:href",
    "ping",
    "background",
    "cite",
}


@pytest.fixture(scope="session")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the hostile catalogue, and what was put into it."""

    def make(folder: Path) -> None:
        put = inject(folder)
        own = load(folder)
        assert own.catalogue is not None
        assert not [finding for finding in own.findings if finding.is_error]
        build_site(Analysis(own.catalogue, DAY), own.names, folder, folder / "site")
        (folder / "put.json").write_text(json.dumps([vars(one) for one in put]), "utf-8")

    return made_once(tmp_path_factory, "hostile", make)


@pytest.fixture(scope="session")
def site(made: Path) -> Path:
    return made / "site"


@pytest.fixture(scope="session")
def put(made: Path) -> list[Injected]:
    return [Injected(**one) for one in json.loads((made / "put.json").read_text("utf-8"))]


def in_line(text: str) -> str:
    return " ".join(text.split())


class Shown(HTMLParser):
    """What a page says, and each attribute of each element."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.said: list[str] = []
        self.attributes: list[tuple[str, str, str]] = []
        self._inside = 0
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.attributes += [(tag, name, value or "") for name, value in attrs] or [(tag, "", "")]
        self._inside += tag in {"script", "style"}

    def handle_endtag(self, tag: str) -> None:
        self._inside -= tag in {"script", "style"}

    def handle_data(self, data: str) -> None:
        if not self._inside:
            self.said.append(data)


@pytest.fixture(scope="session")
def shown(site: Path) -> dict[str, Shown]:
    return {
        str(path.relative_to(site)): Shown(path.read_text("utf-8"))
        for path in sorted(site.rglob("*.html"))
    }


def test_every_free_field_of_every_kind_is_attacked(put: list[Injected]) -> None:
    assert {one.kind for one in put} == KIND.keys()
    assert len(put) >= 400 and len({one.field for one in put}) >= 200
    assert {payload for payload in PAYLOADS for one in put if payload in one.text} == set(PAYLOADS)


@pytest.mark.parametrize("payload", PAYLOADS)
def test_what_takes_no_free_text_takes_no_payload(payload: str) -> None:
    """Ids, names that authors give and other texts of a form: names of words, pools, groups,
    variants, checks.
    """
    forms = set(
        re.findall(
            r'"pattern": ("(?:[^"\\]|\\.)*")',
            "".join(json.dumps(schemas.raw(name)) for name in ("common", *KIND)),
        )
    )
    closed = [
        json.loads(form)
        for form in forms
        if not is_free([{"type": "string", "pattern": json.loads(form)}])
    ]
    assert len(closed) >= 8
    for form in closed:
        for text in (payload, f"a {payload}", f"a{payload}"):
            if re.search(form, text):
                assert re.fullmatch(r"[\w -]+", text, re.ASCII), (form, text)


def test_pages_show_what_was_written(put: list[Injected], shown: dict[str, Shown]) -> None:
    whole = {MARK.search(one.text)[0]: one for one in put}  # type: ignore[index]
    seen = set()
    for file, page in shown.items():
        said = in_line("".join(page.said))
        for mark in set(MARK.findall(said)):
            seen.add(mark)
            assert in_line(whole[mark].text) in said, f"{file}: {whole[mark].field}"
    hidden = {one.field for mark, one in whole.items() if mark not in seen}
    assert not {field for field in hidden if not NOT_SHOWN.match(field)}


def test_pages_have_no_element_attribute_or_address_of_the_texts(shown: dict[str, Shown]) -> None:
    for file, page in shown.items():
        for tag, name, value in page.attributes:
            assert tag not in {"iframe", "base", "object", "embed", "form_", "frame", "x"}, file
            assert not name.startswith("on") and name not in {"srcdoc", "autofocus_", "style"}, (
                file,
                tag,
                name,
            )
            if name in ADDRESSES:
                assert "evil.example" not in value, (file, tag, name, value)
                assert urlsplit(value).scheme in {"", "http", "https", "data"}, (
                    file,
                    tag,
                    name,
                    value,
                )
            if name == "content" and tag == "meta":
                assert not value.startswith("0;"), (file, value)


def test_data_files_hold_what_was_written(site: Path, put: list[Injected]) -> None:
    def texts(value: Any) -> Iterator[str]:
        if isinstance(value, str):
            yield value
        for inner in (
            value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
        ):
            yield from texts(inner)

    held = set(texts(json.loads((site / "data/v1/catalogue.json").read_text("utf-8"))))
    assert {one.text for one in put} <= held
    for path in site.rglob("*.json"):
        json.loads(path.read_text("utf-8"))
    for path in (*site.rglob("*.svg"), *site.rglob("*.xml")):
        tree = ElementTree.fromstring(path.read_text("utf-8"))
        for element in tree.iter():
            assert element.tag.rpartition("}")[2] not in {
                "script",
                "foreignObject",
                "image",
                "use_",
            }, path
            assert not [name for name in element.attrib if name.startswith("on")], path


def test_tables_hold_no_formula_and_calendars_no_line_of_the_texts(site: Path) -> None:
    tables = list(site.rglob("*.csv"))
    assert len(tables) >= 4
    for path in tables:
        for row in csv.reader(io.StringIO(path.read_text("utf-8"))):
            for cell in row:
                assert not re.match(r"\s*[=+@|%＝＋－＠]|\s*-(?![\d.]+$)", cell), (path, cell)
        assert re.search(r"(?m)[,\n]\"?'[=+@-]", path.read_text("utf-8")), path
    known = {"UID", "DTSTAMP", "SUMMARY", "LOCATION", "DESCRIPTION", "DTSTART", "DTEND", "URL"}
    known.add("TRANSP")  # a word of the program's own, never of the texts
    calendars = list(site.rglob("*.ics"))
    assert {path.parent.name for path in calendars} == {"block", "meet", "season"}
    for path in calendars:
        (read,) = vobject.readComponents(path.read_text("utf-8"))
        assert {child.name for child in read.getChildren()} == {
            "PRODID",
            "VERSION",
            "X-WR-CALNAME",
            "VEVENT",
        }
        for event in read.vevent_list:
            assert {child.name for child in event.getChildren()} <= known
        assert any(MARK.search(event.summary.value) for event in read.vevent_list)


# ---- in a browser


PWN = """
window.pwned = 0;
window.pwn = () => { window.pwned += 1; };
document.addEventListener('securitypolicyviolation', event =>
  console.error('policy: ' + event.violatedDirective + ' ' + event.blockedURI));
"""


@pytest.fixture
def watched(browser: Browser, site: Path) -> Iterator[tuple[Page, str]]:
    """A page that fails its test where anything of a text ran, or where it asked another host."""
    with Server(site) as server:
        context: BrowserContext = browser.new_context(
            viewport={"width": 360, "height": 640}, service_workers="block"
        )
        context.add_init_script(PWN)
        page = context.new_page()
        told = Watched(page, server.address)
        page.on(
            "dialog",
            lambda dialog: (told.troubles.append(f"dialog: {dialog.message}"), dialog.dismiss()),
        )
        context.on("page", lambda other: told.troubles.append(f"opened {other.url}"))
        yield page, server.address
        context.close()
    assert told.troubles == []


def chosen(shown: dict[str, Shown]) -> list[str]:
    """The page of each kind that holds most of the texts, and every page that holds many kinds; all
    of them with --long.
    """
    if is_long():
        return list(shown)
    marks = {file: len(set(MARK.findall("".join(page.said)))) for file, page in shown.items()}
    kinds = [
        max((file for file in marks if file.startswith(f"{kind.pages}/")), key=marks.__getitem__)
        for kind in WITH_PAGES.values()
    ]
    rest = sorted((file for file in marks if file not in kinds), key=lambda file: -marks[file])
    return [*kinds, *rest[:5], "find.html", "add.html"]


def test_nothing_of_a_text_runs(
    watched: tuple[Page, str], put: list[Injected], shown: dict[str, Shown]
) -> None:
    page, address = watched
    whole = {MARK.search(one.text)[0]: in_line(one.text) for one in put}  # type: ignore[index]
    for file in chosen(shown):
        page.goto(address + file)
        page.evaluate("for (const part of document.querySelectorAll('details')) part.open = true")
        page.evaluate("""for (const element of document.querySelectorAll('main *'))
          for (const name of ['mouseover', 'focus', 'toggle',
            'pointerenter']) element.dispatchEvent(new Event(name))""")
        said = in_line(page.evaluate("document.body.textContent"))
        for mark in set(MARK.findall("".join(shown[file].said))):
            assert mark not in said or whole[mark] in said, (file, mark)
        assert page.evaluate("window.pwned") == 0, file
        assert (
            page.evaluate("getComputedStyle(document.querySelector('h1') || document.body).display")
            != "none"
        )


def test_nothing_of_a_text_runs_where_scripts_put_it(
    watched: tuple[Page, str], put: list[Injected]
) -> None:
    """The search, the finder, the cards on deck and the form: there scripts write what files
    hold.
    """
    page, address = watched
    drill = next(one for one in put if (one.field, one.id) == ("drill.title", "back-kick"))
    words = MARK.search(drill.text)[0]  # type: ignore[index]
    page.goto(f"{address}find.html?q={words}")
    expect(page.locator("[data-results]")).to_contain_text(words)
    page.goto(address + "find.html")
    page.locator("#find-words").fill(words)
    expect(page.locator("[data-results]")).to_contain_text(words)
    assert drill.text in in_line(page.locator("[data-results]").first.inner_text())
    page.goto(address + "drills/back-kick.html")
    page.get_by_role("button", name="Add to my cards").click()
    page.goto(address + "cards.html")
    expect(page.locator("main")).to_contain_text(words)
    page.goto(address + "judge.html")
    expect(page.locator("main")).to_be_visible()
    page.goto(address + "add.html#kind=drill")
    expect(page.locator("form").first).to_be_attached()
    assert page.evaluate("window.pwned") == 0


def test_paper_has_no_link_of_the_texts(watched: tuple[Page, str], tmp_path: Path) -> None:
    page, address = watched
    page.goto(address + "practices/thursday.html")
    page.pdf(path=tmp_path / "practice.pdf")
    reader = PdfReader(tmp_path / "practice.pdf")
    links = [
        str(annotation.get_object().get("/A", {}).get("/URI", ""))
        for sheet in reader.pages for annotation in sheet.get("/Annots", [])
    ]  # fmt: skip
    assert all(EVIL not in link and not link.startswith(("javascript:", "data:")) for link in links)
    assert not {"/JavaScript", "/OpenAction"} & (
        reader.trailer["/Root"].get("/Names", {}).keys() | reader.trailer["/Root"].keys()
    )
