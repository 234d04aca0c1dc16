"""Deck cards on paper: page counts, nothing cut, black on white, a QR code on each."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, StorageState, expect
from pypdf import PdfReader
from pypdf.generic import ContentStream

from almanac.analysis.analysis import Analysis

from .web import ADDRESS, Server, Watched

PAGES = ("drills/back-streamline-kick.html", "drills/back-float-and-line.html",
         "sets/kick-and-go.html", "faults/knees-break-surface.html",
         "gear/parachute.html", "benchmarks/back-kick-200.html",
         "progressions/kick-into-stroke.html")  # fmt: skip
SIZES = {"a6": (210, 297), "a5": (148, 210), "letter": (279, 216)}
# Every block of a card lies inside its card, and every card inside its sheet.
_CUT = """() => [...document.querySelectorAll('.paper-card')].flatMap(card => {
  const outer = card.getBoundingClientRect();
  const body = card.querySelector('.card-body');
  const cut = body.scrollHeight > body.clientHeight + 1 || body.scrollWidth > body.clientWidth + 1;
  const parts = [...card.querySelectorAll('.card-head, .card-foot, .card-body > *')].filter(part =>
    {
    const box = part.getBoundingClientRect();
    return box.height && (box.bottom > outer.bottom + 1 || box.right > outer.right + 1 ||
      box.top < outer.top - 1);
  });
  return cut || parts.length ? [card.querySelector('.card-title').textContent] : [];
})"""

# Sizes of text on cards, in points: the least of all, and those of the cards as wholes.
_SIZES = """() => {
  const points = element => Math.round(parseFloat(getComputedStyle(element).fontSize) * 7.5) / 10;
  const all = [...document.querySelectorAll('.paper-card *:not(svg, svg *)')].filter(own =>
    own.innerText?.trim());
  return {least: Math.min(...all.map(points)),
    bodies: [...new Set([...document.querySelectorAll('.paper-card .card-body')].map(points))]};
}"""


@pytest.fixture
def phone(kept_phone: Page) -> Page:
    return kept_phone


def pdf(page: Page, **options: object) -> PdfReader:
    return PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True, **options)))  # type: ignore[arg-type]


def millimetres(reader: PdfReader) -> set[tuple[int, int]]:
    return {
        (
            round(float(page.mediabox.width) / 72 * 25.4),
            round(float(page.mediabox.height) / 72 * 25.4),
        )
        for page in reader.pages
    }


@pytest.fixture(scope="module")
def kept(browser: Browser, server: Server) -> StorageState:
    """What a phone keeps on which a card of every kind was gathered by hand."""
    context = browser.new_context(viewport={"width": 360, "height": 640}, has_touch=True)
    page = context.new_page()
    for number, file in enumerate(PAGES, 1):
        page.goto(server.address + file)
        page.get_by_role("button", name="Add to my cards").tap()
        expect(page.get_by_role("link", name=f"My cards ({number})")).to_be_visible()
    page.get_by_role("link", name="My cards (").tap()
    expect(page.locator("[data-cards-told]")).to_contain_text("sheet")
    state = context.storage_state()
    context.close()
    return state


@pytest.fixture
def gathered(browser: Browser, server: Server, kept: StorageState) -> Iterator[Page]:
    """The cards page of that phone."""
    context = browser.new_context(
        viewport={"width": 360, "height": 640}, has_touch=True, storage_state=kept
    )
    page = context.new_page()
    watched = Watched(page, server.address)
    page.goto(server.address + "cards.html")
    expect(page.locator("[data-cards-told]")).to_contain_text("sheet")
    yield page
    assert watched.troubles == []
    context.close()


@pytest.mark.parametrize("layout", SIZES)
def test_gathered_cards(gathered: Page, layout: str) -> None:
    gathered.locator(f"[name=layout][value={layout}]").check()
    expect(gathered.locator(f".paper-sheet.layout-{layout}").first).to_be_attached()
    told = gathered.locator("[data-cards-told]").inner_text()
    cards, sheets = int(told.split()[0]), int(told.split(" on ")[1].split()[0])
    assert cards >= len(PAGES)
    assert gathered.evaluate(_CUT) == []
    assert gathered.locator(".paper-card svg.code").count() == len(PAGES)
    titles = [
        title.replace("\xa0", " ")
        for title in gathered.locator(".paper-card .card-title").all_inner_texts()
    ]
    assert len(set(titles)) == len(PAGES)
    assert gathered.evaluate(_SIZES) == {"least": 11, "bodies": [11]}
    told = gathered.locator(".paper-card .card-names").evaluate_all(
        "names => names.map(own => [own.querySelector('.card-title').textContent,"
        " own.querySelector('.card-part-of')?.textContent.split(',')[0] ?? ''])"
    )
    for title in {title for title, _ in told}:
        parts = [part for other, part in told if other == title]
        count = len(parts)
        assert parts == [f"{place + 1} of {count}" if count > 1 else "" for place in range(count)]
    reader = pdf(gathered)
    assert len(reader.pages) == sheets
    assert millimetres(reader) == {SIZES[layout]}
    text = " ".join(page.extract_text() for page in reader.pages)
    assert "My cards" not in text and "Lane group" not in text  # no site furniture
    host = ADDRESS.split("://")[1]
    assert f"{host}drills/back-streamline-kick.html" in text.replace("\n", "")


def test_the_brief_is_on_the_card_whole(gathered: Page) -> None:
    gathered.locator("[name=layout][value=a6]").check()
    on_cards = gathered.locator(".paper-card .card-danger").all_inner_texts()
    gathered.goto(gathered.url.split("cards.html")[0] + "sets/kick-and-go.html")
    brief = gathered.locator(".deck-card .card-brief .card-danger").all_text_contents()
    assert 3 <= len(brief) <= 4
    assert {line.split()[0] for line in brief} and all(
        any(line[:40] in card for card in on_cards) for line in brief
    )


def test_the_cards_follow_the_chosen_lane_group(gathered: Page) -> None:
    told = gathered.locator("[data-cards-told]")
    chooser = gathered.locator('[data-choose="group"]')
    expect(chooser).to_have_value("")  # none is mine
    expect(told).to_contain_text("A practice for each of its groups, a set for the one")
    for group, title in (("osprey-1", "Osprey, lanes 1 to 3"), ("reed-1", "Reed, lanes 1 and 2")):
        chooser.select_option(group)
        expect(gathered.locator(".paper-card .card-clock")).to_contain_text(title)
        expect(told).to_contain_text(f"For {title}")


def test_taking_cards_off(gathered: Page) -> None:
    gathered.get_by_role("button", name="Take Kick and go off").tap()
    expect(
        gathered.locator(".paper-card .card-title").filter(has_text="Kick and go")
    ).to_have_count(0)
    gathered.get_by_role("button", name="Take all off").tap()
    expect(gathered.locator("[data-cards-told]")).to_contain_text("No cards yet")
    expect(gathered.locator("[data-cards-print]")).to_be_disabled()


@pytest.mark.parametrize("file", PAGES)
def test_an_entry_prints_as_its_card_alone(phone: Page, server: Server, file: str) -> None:
    phone.goto(server.address + file)
    reader = pdf(phone, format="A4")
    text = " ".join(page.extract_text() for page in reader.pages)
    assert "Deck Almanac" not in text and "Add to my cards" not in text and "Search" not in text
    assert file in text.replace("\n", "")
    assert 1 <= len(reader.pages) <= (1 if file.startswith("sets/") else 2)
    assert re.search(r"Printed 2.* · data [0-9a-f]{8}", text)
    assert all(
        len(page.extract_text().split()) > 12 for page in reader.pages
    )  # no page for a line left over


def test_what_takes_several_sheets_says_on_each_what_it_is_and_how_many(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}blocks/heron-legs-in-three-weeks.html")
    title = phone.locator(".deck-card .card-title").text_content() or "?"
    phone.locator(".deck-card .card-body").evaluate(
        "body => { for (let n = 0; n < 4; n++) body.append(...body.cloneNode(true).children); }"
    )
    sheets = pdf(phone, format="A4").pages
    assert len(sheets) > 1
    for number, sheet in enumerate(sheets, 1):
        text = " ".join(sheet.extract_text().split())
        assert title in text and f"{number} of {len(sheets)}" in text


@pytest.mark.parametrize("way", ["alone", "gathered"])
def test_words_in_a_picture_are_as_large_as_any_on_paper(
    phone: Page, server: Server, way: str
) -> None:
    drill = "drills/dolphin-small-and-fast.html"
    if way == "gathered":
        phone.goto(f"{server.address}cards.html#only={drill}")
        expect(phone.locator(".paper-card .card-figure text").first).to_be_attached()
    else:
        phone.goto(server.address + drill)
        phone.emulate_media(media="print")
    sizes = phone.locator(".card-figure svg").evaluate_all(
        "(svgs, words) => svgs.flatMap(svg => [...document.querySelectorAll(words)].map(text =>"
        " parseFloat(text.getAttribute('font-size')) * 0.75 *"
        " Math.min(svg.clientWidth / svg.viewBox.baseVal.width,"
        " svg.clientHeight / svg.viewBox.baseVal.height)))",
        ".card-figure text" if way == "gathered" else "#drawing text",
    )
    phone.emulate_media(media=None)  # type: ignore[arg-type]
    assert sizes and min(sizes) >= 11


@pytest.mark.parametrize("file", ["sets/kick-and-go.html", "blocks/heron-legs-in-three-weeks.html"])
def test_every_hazard_is_in_full_on_paper(phone: Page, server: Server, file: str) -> None:
    phone.goto(server.address + file)
    told = phone.locator(".brief > li, .brief-more > ul > li:not(.brief-from)").evaluate_all(
        "lines => lines.map(line => (line.querySelector('p') ?? "
        "line.querySelector('strong').nextSibling).textContent)"
    )
    text = " ".join(" ".join(page.extract_text() for page in pdf(phone, format="A4").pages).split())
    assert len(told) > 6
    for control in told:
        assert text.count(" ".join(control.split())) == 1, control


def test_what_a_drill_adds_to_a_danger_is_on_its_sheet(phone: Page, server: Server) -> None:
    """In full there; a card that is gathered has room for what is done about it alone."""
    phone.goto(server.address + PAGES[0])
    added = phone.locator(".danger details li").evaluate_all(
        "lines => lines.map(line => [...line.childNodes].find(own => own.nodeType === 3"
        " && own.textContent.trim())?.textContent ?? '')"
    )
    text = " ".join(" ".join(page.extract_text() for page in pdf(phone, format="A4").pages).split())
    assert any(added)
    for words in added:
        assert " ".join(words.split()) in text


def test_what_is_folded_is_open_on_paper(phone: Page, server: Server) -> None:
    phone.goto(server.address + "safety.html")
    folds = phone.locator(
        "details:not([open]) > :not(summary, details, :has(details), .not-on-paper, .not-on-paper "
        "*, .on-phone *)"
    )
    wanted = ["".join(fold.split()) for fold in folds.all_text_contents() if fold.strip()]
    assert wanted
    text = "".join("".join(page.extract_text() for page in pdf(phone, format="A4").pages).split())
    for fold in wanted:
        assert fold[:30] in text
    assert not phone.locator("details[open]").count()


def test_one_card_without_gathering(phone: Page, server: Server) -> None:
    phone.goto(server.address + PAGES[0])
    phone.get_by_role("link", name="Print card").tap()
    expect(phone.locator("[data-cards-told]")).to_contain_text("on 1 sheet.")
    expect(phone.locator(".paper-card svg.figure")).to_be_visible()
    assert (
        phone.evaluate("getComputedStyle(document.querySelector('.paper-card')).color")
        == "rgb(0, 0, 0)"
    )


def test_a_practice_makes_a_card_for_each_lane_group(
    phone: Page, server: Server, analysis: Analysis
) -> None:
    practice = "heron-kick-and-go"
    groups = [group.title for group in analysis.practices[practice].groups.values()]
    phone.goto(f"{server.address}cards.html#only=practices/{practice}.html")
    expect(phone.locator("[data-cards-told]")).to_contain_text("sheet")
    names = phone.locator(".paper-card .card-names").all_inner_texts()
    assert len(groups) == 2
    assert all(any(group in name for name in names) for group in groups)
    for name in names:
        assert sum(group in name for group in groups) == 1
    for group in groups:
        own = phone.locator(".paper-card").filter(has_text=group)
        boards = " ".join(own.locator(".card-board").all_inner_texts())
        assert boards and not any(other in boards for other in groups)
    phone.locator('[data-choose="group"]').select_option(label=groups[1])
    expect(phone.locator("[data-cards-told]")).to_contain_text(f"For {groups[1]}.")
    for name in phone.locator(".paper-card .card-names").all_inner_texts():
        assert groups[1] in name


@pytest.mark.parametrize("file", [PAGES[0], PAGES[2]])
def test_paper_is_black_and_white_alone(phone: Page, server: Server, file: str) -> None:
    phone.goto(server.address + file)
    reader = pdf(phone, format="A4")
    colours = {
        tuple(map(float, numbers))
        for page in reader.pages
        for numbers, operator in ContentStream(page.get_contents(), reader).operations
        if operator in (b"rg", b"RG")
    }
    assert (0, 0, 0) in colours
    assert colours <= {(0, 0, 0), (1, 1, 1)}
