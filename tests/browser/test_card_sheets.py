"""Gathered cards: few of each entry, none for a line left over, a set for one lane group in one
pool, every hazard's words on them.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from itertools import groupby

import pytest
from playwright.sync_api import Browser, Page, expect

from .web import Server

# an entry of each kind that is gathered most, those whose cards were three and four
FEW = ("drills/back-streamline-kick.html", "sets/kick-and-go.html",
       "faults/knees-break-surface.html", "benchmarks/back-kick-200.html",
       "gear/parachute.html")  # fmt: skip
LONG = ("sets/heron-warm-up.html", "progressions/kick-into-stroke.html",
        "practices/heron-kick-and-go.html")  # fmt: skip
LONG_COURSE = "sets/all-out-fifties.html"  # written for another pool than the club's own
# Title, "2 of 3", lines of text and the last block's class of each card, in order.
_CARDS = """() => [...document.querySelectorAll('.paper-card')].map(card => {
  const body = card.querySelector('.card-body');
  const range = document.createRange();
  range.selectNodeContents(body);
  const tops = [...range.getClientRects()].filter(own => own.height > 4 && own.width > 4)
    .map(own => Math.round(own.bottom / 4));
  return [card.querySelector('.card-title').textContent,
    card.querySelector('.card-part-of')?.textContent ?? '', new Set(tops).size,
    body.lastElementChild.className];
})"""


@pytest.fixture(scope="module")
def cards(browser: Browser, server: Server) -> Iterator[Page]:
    """The cards page of a device on which nobody has chosen anything."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(server.address + "cards.html")
    yield page
    context.close()


def gather(page: Page, *files: str) -> None:
    kept = json.dumps([{"href": file, "title": file} for file in files])
    page.evaluate(
        "kept => localStorage.setItem(`deck-almanac ${location.pathname.replace(/[^/]*$/, '')} "
        "cards`, kept)",
        kept,
    )
    page.reload()
    expect(page.locator("[data-cards-told]")).to_contain_text("sheet")


def of_entry(page: Page) -> dict[str, list[tuple[str, int, str]]]:
    found = page.evaluate(_CARDS)
    return {
        title: [(part, lines, last) for _, part, lines, last in own]
        for title, own in groupby(found, key=lambda card: card[0])
    }


def of_group(page: Page, file: str, group: str, what: str) -> list[str]:
    """What the whiteboard of a set's page says to a lane group: ``go`` or ``target``."""
    found: list[str] = page.evaluate(
        """async ([file, group, what]) => {
          const text = await (await fetch(file)).text();
          const page = new DOMParser().parseFromString(text, 'text/html');
          const own = page.querySelectorAll('.board > p:not([data-group]), .board > p[data-group~='
            + group + ']');
          return [...own].flatMap(line => [...line.querySelectorAll('.' + what)])
            .filter(said => !said.dataset.group || said.dataset.group === group)
            .map(said => said.firstChild.textContent.trim());
        }""",
        [file, group, what],
    )
    return found


def test_five_entries_take_at_most_two_small_cards_each(cards: Page) -> None:
    gather(cards, *FEW)
    own = of_entry(cards)
    assert len(own) == len(FEW)
    assert {title: len(each) for title, each in own.items() if len(each) > 2} == {}
    assert cards.locator(".paper-sheet").count() == 3


def test_no_card_is_for_a_line_left_over_or_ends_in_a_head(cards: Page) -> None:
    gather(cards, *FEW, *LONG)
    for title, each in of_entry(cards).items():
        assert len(each) < 2 or min(lines for _, lines, _ in each) > 4, (title, each)
        assert not [last for _, _, last in each if "card-part-head" in last], title


def test_every_hazard_of_an_entry_is_on_its_cards(cards: Page) -> None:
    """Whole on one card, on each paper."""
    gather(cards, *FEW)
    for file in FEW:
        told = cards.evaluate(
            """async file => {
              const page = new DOMParser().parseFromString(await (await fetch(file)).text(),
                'text/html');
              page.querySelectorAll('.deck-card .card-whole').forEach(part => part.remove());
              const lines = page.querySelectorAll(
                '.deck-card :is(.card-danger, .card-also li, .card-house)');
              return [...lines].map(line => line.textContent.trim());
            }""",
            file,
        )
        assert told, file
        for layout in ("a6", "a5", "letter"):
            cards.locator(f"[name=layout][value={layout}]").check()
            expect(cards.locator(f".paper-sheet.layout-{layout}").first).to_be_attached()
            bodies = cards.locator(".paper-card .card-body").all_text_contents()
            for line in told:
                assert any(" ".join(line.split()) in " ".join(own.split()) for own in bodies), line
    cards.locator("[name=layout][value=a6]").check()


def test_a_set_for_which_no_group_is_chosen_is_that_of_the_group_it_is_for(cards: Page) -> None:
    gather(cards, FEW[1])
    lines = cards.locator(".paper-card .card-board")
    assert lines.locator(".whose").count() == 0
    assert lines.locator(".go").all_inner_texts() == of_group(cards, FEW[1], "heron-1", "go")
    targets = of_group(cards, FEW[1], "heron-1", "target")
    assert targets and lines.locator(".target").all_inner_texts() == targets
    expect(cards.locator(".card-part-of").first).to_contain_text("Heron, lanes 1 to 3, 25 m pool")
    cards.locator("[data-choose=group]").select_option("reed-1")  # nobody wrote send-offs for it
    expect(cards.locator(".card-part-of").first).to_contain_text("Reed, lanes 1 and 2")
    suggested = of_group(cards, FEW[1], "reed-1", "go")
    assert suggested and lines.locator(".go").all_inner_texts() == suggested


def test_a_set_stands_in_its_own_pool_until_another_is_chosen(cards: Page) -> None:
    """In another pool its lines tell no time of its own; the table tells those of that pool."""
    gather(cards, LONG_COURSE)
    names, goes = cards.locator(".paper-card .card-names"), cards.locator(".card-board .go")
    own = goes.all_inner_texts()
    assert own and "50 m pool" in cards.locator(".paper-card").first.inner_text()
    cards.locator("[data-choose=pool]").select_option("25m")
    expect(names.first).to_contain_text("25 m pool")
    expect(goes).to_have_count(0)
    expect(cards.locator(".paper-card table")).to_contain_text("Send-off")
