"""The page "Add an entry", filled in as a coach would: from an empty form to a file that the check
accepts.
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Locator, Page, Route, expect
from shared import is_long, share

from almanac.commands.main import main
from almanac.model.load import load
from almanac.source.reader import Document, read
from almanac.source.validate import Shapes

from .conftest import ROOT
from .test_add_rules import HOSTILE, REFUSED, read_at_any_size
from .web import Kept, Server, Watched

REPOSITORY = "https://github.com/quillwater/deck-almanac"
SIZES = {"phone": {"width": 360, "height": 640}, "desk": {"width": 1280, "height": 900}}
LONG = (
    "The legs are asked to hold a straight downbeat while the arms wait, so that the swimmer "
    "feels which half of the beat moves the body. "
    "It serves early in a season, before speed."
)


def named(name: str) -> re.Pattern[str]:
    """A label, or the same marked as optional."""
    return re.compile(rf"^{re.escape(name)}( \(optional\))?$")


# Fills in what a coach could: what stands there, is open to be typed in, and has the word that is
# chosen. It is looked up here, for by role and label Playwright works out the name of everything in
# the form for each field. ``test_by_keyboard_alone`` types by keys and chooses by roles.
_FILL = """([groups, label, value]) => {
  const is = (named, name) => {
    const words = named.textContent.replace(/\\s+/g, " ").trim();
    return words === name || words === `${name} (optional)`;
  };
  const first = (all, what) => {
    const found = all.find(own => own.checkVisibility());
    if (!found) throw new Error(`no ${what} in sight`);
    return found;
  };
  let within = document.querySelector("[data-add]");
  within.querySelectorAll("details").forEach(one => { one.open = true; });
  for (const name of groups) {
    const legends = [...within.querySelectorAll("fieldset > legend:first-child")];
    const named = legends.filter(legend => is(legend, name));
    within = first(named.map(legend => legend.parentElement), name);
  }
  const fields = [...within.querySelectorAll("input, select, textarea")];
  const field = first(fields.filter(own => [...own.labels].some(named => is(named, label))), label);
  if (field.matches(":disabled, :read-only:not(select)")) throw new Error(`${label} is closed`);
  field.focus();
  field.value = value;
  if (field.value !== value) throw new Error(`${label} does not take ${value}`);
  for (const type of ["input", "change"]) field.dispatchEvent(new Event(type, { bubbles: true }));
  field.blur();
}"""


class Form:
    """The form on a page, filled by label."""

    def __init__(self, page: Page, server: Server) -> None:
        self.page, self.server = page, server
        self.steps = 0

    def open(self, kind: str) -> Form:
        self.page.goto(f"{self.server.address}add.html")
        self.page.set_default_timeout(8000)
        self.page.get_by_role("radio", name=kind, exact=True).check()
        expect(self.page.locator("[data-result]")).to_be_visible()
        return self

    def group(self, *names: str) -> Locator:
        """A group inside groups, each by its name: a list's item by the list's name and its
        number.
        """
        found = self.page.locator("[data-add]")
        found.locator("details").evaluate_all("all => all.forEach(one => { one.open = true; })")
        for name in names:
            found = found.get_by_role("group", name=named(name)).first
        return found

    def fill(self, label: str, value: str, *groups: str) -> Form:
        """Fill in or choose what has this label, in groups as ``group`` has them."""
        self.steps += 1
        self.page.evaluate(_FILL, [list(groups), label, value])
        return self

    def add(self, name: str, *groups: str) -> Form:
        self.steps += 1
        self.group(*groups).get_by_role("button", name=name, exact=True).first.click()
        return self

    def settle(self) -> Form:
        """Wait until the form has caught up with the typing."""
        self.page.wait_for_selector("[data-result]:not([aria-busy])")
        return self

    @property
    def text(self) -> str:
        """The file as it will be."""
        self.settle()
        return self.page.locator("[data-yaml]").evaluate("element => element.textContent")  # type: ignore[no-any-return]

    @property
    def left(self) -> str:
        """The line that says what is left to do."""
        self.settle()
        return self.page.locator("[data-count]").inner_text()

    def data(self) -> dict[str, Any]:
        document, findings = read(self.text.encode(), "entry.yml")
        assert document is not None
        assert findings == []
        return document.data


ORDER = "Everything that can be checked here is in order."


@pytest.fixture(scope="module")
def drafts(browser: Browser, server: Server) -> dict[str, str]:
    """What this device keeps of a drill and a fault that were filled in, typed once for the tests
    that go on from there.
    """
    page = browser.new_page()
    for kind, fill in (("Drill", fill_drill), ("Fault", fill_fault)):
        fill(Form(page, server).open(kind)).settle()
    kept: dict[str, str] = page.evaluate("({...localStorage})")
    page.close()
    return kept


def opened_again(page: Page, server: Server, drafts: dict[str, str], kind: str) -> Form:
    """The form of a kind as the draft has filled it in."""
    page.goto(f"{server.address}offline.json")
    page.evaluate("kept => Object.assign(localStorage, kept)", drafts)
    form = Form(page, server).open(kind)
    expect(page.get_by_label("Title", exact=True)).not_to_have_value("")
    return form


@pytest.fixture(scope="module")
def kept_desks(browser: Browser, server: Server) -> Iterator[Kept]:
    may = ["clipboard-read", "clipboard-write"]
    with Kept(browser, server, viewport={"width": 1280, "height": 900}, permissions=may) as kept:
        yield kept


@pytest.fixture
def desk(kept_desks: Kept) -> Iterator[Page]:
    """A page on a desk, which keeps nothing of the test before it."""
    yield from kept_desks.lent()


@pytest.fixture
def root(tmp_path: Path) -> Path:
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, tmp_path / name)
    return tmp_path


def errors_with(root: Path, path: str, text: str, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """What `almanac check` finds wrong with a catalogue to which this file has been added, of the
    file itself.
    """
    (root / path).parent.mkdir(parents=True, exist_ok=True)
    assert not (root / path).exists()
    (root / path).write_text(text, "utf-8")
    capsys.readouterr()
    main(["check", "--format", "json", "--root", str(root)])
    findings = json.loads(capsys.readouterr().out)["findings"]
    return [
        finding["message"]
        for finding in findings
        if finding["severity"] == "error" and finding["file"] == path
    ]


def fill_drill(form: Form) -> Form:
    form.fill("Title", "Slow count back kick").fill(
        "Summary", "Flutter on the back to a slow spoken count, one beat a word."
    )
    form.fill("Mode", "kick").fill("Stroke", "backstroke").fill("Kick", "flutter").fill(
        "Position", "supine"
    ).fill("Arms", "at-sides")
    form.fill("Purpose", LONG).fill("Goals, number 1", "kick-technique", "Goals").fill(
        "Level", "building"
    )
    form.fill("From", "easy", "Effort").fill("To", "steady", "Effort")
    form.fill("Distance", "25", "Dose").fill("From", "4", "Dose", "Reps").fill(
        "To", "8", "Dose", "Reps"
    ).fill("Rest", "0:15", "Dose").fill("Most", "12", "Dose")
    form.fill("Steps, number 1", "Push off on the back, arms at the sides.", "Steps")
    form.fill(
        "Steps, number 2", "Kick one beat to each word of the count: no word, no beat.", "Steps"
    )
    form.fill("Cues, number 1", "One word, one beat", "Cues")
    form.fill("From", "side-deck", "Look for", "Look for, number 1").fill(
        "See", "Each beat as large as the last.", "Look for", "Look for, number 1"
    )
    for number, see, because, say in (
        (
            "1",
            "Beats run ahead of the words.",
            "A slow beat feels like sinking.",
            "Belly up first, then count again.",
        ),
        (
            "2",
            "Feet stop at the top.",
            "The word is held too long.",
            "Short words: one, two, one, two.",
        ),
    ):
        item = ("Goes wrong", f"Goes wrong, number {number}")
        form.fill("See", see, *item).fill("Because", because, *item).fill("Say", say, *item)
    item = ("Safety", "Safety, number 1")
    form.fill("Hazard", "head-into-wall", *item).fill(
        "Own", "The mind is on the count, and the flags go by.", *item
    ).fill("Control", "The count ends at the flags; from there an arm goes up.", *item)
    item = ("Evidence", "Evidence, number 1")
    form.fill("Claim", "A slow beat lets a swimmer feel both halves of it.", *item).fill(
        "Basis", "common-practice", *item
    )
    form.fill("By", "head-coach", "Review").fill("Family", "flutter-on-back", "File")
    return form


def test_a_drill_from_empty_to_a_file_that_the_check_accepts(
    desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    form = Form(desk, server).open("Drill")
    assert "still to fill in" in form.left
    fill_drill(form)
    assert form.left == ORDER
    expect(desk.locator("[data-path]")).to_have_text(
        "drills/skills/flutter-on-back/slow-count-back-kick.yml"
    )
    card = desk.locator("[data-card]")
    for words in (
        "Slow count back kick",
        "Flutter on the back to a slow",
        "One word, one beat",
        "Head meets the wall",
    ):
        expect(card).to_contain_text(words)
    assert form.data()["dose"] == {
        "distance": 25,
        "reps": {"from": 4, "to": 8},
        "rest": "0:15",
        "most": 12,
    }
    assert (
        errors_with(
            root, "drills/skills/flutter-on-back/slow-count-back-kick.yml", form.text, capsys
        )
        == []
    )
    assert form.steps <= 36


def test_what_was_done_on_a_day_is_kept_without_typing_yaml(
    desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    form = Form(desk, server).open("Log")
    fields = desk.locator("[data-fields]")
    fields.get_by_label(named("Practice")).select_option("heron-kick-and-go")
    form.fill("Title", "Tuesday as it was").fill("On", "2026-09-15").fill("Minutes", "58")
    form.fill("Metres", "1500").fill("Heads", "11").fill("Rating", "5.5")
    form.add("Add one to Changed").fill(
        "Changed, number 1", "The last round was left out.", "Changed"
    )
    assert form.left == ORDER
    expect(desk.locator("[data-path]")).to_have_text("plans/logs/tuesday-as-it-was.yml")
    expect(desk.locator("[data-card]")).to_contain_text("58 minutes, 1500 metres, 11 swimmers")
    assert errors_with(root, "plans/logs/tuesday-as-it-was.yml", form.text, capsys) == []


def test_what_is_seldom_filled_in_stands_below_more(desk: Page, server: Server) -> None:
    form = Form(desk, server).open("Set")
    item = form.group("Items", "Items, number 1")
    more = item.locator("details.add-more")
    more.evaluate("one => { one.open = false; }")
    aim = more.get_by_role("group", name=named("Aim"))
    expect(aim).to_be_hidden()
    more.locator("summary").click()
    aim.get_by_label(named("One time")).fill("0:72.0")
    more.locator("summary").click()
    expect(aim).to_be_hidden()
    form.settle()
    desk.locator("[data-mistakes] a").first.click()  # the link opens what is folded
    expect(aim.get_by_label(named("One time"))).to_be_focused()


def test_rounds_and_holds_of_a_lane_group_stand_on_the_card(
    desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    form = Form(desk, server).open("Set")
    form.fill("Title", "Three of four rounds").fill("Purpose", LONG).fill("Level", "performing")
    form.fill("Goals, number 1", "kick-technique", "Goals").fill("Course", "25m")
    item = ("Items", "Items, number 1")
    form.group(*item).get_by_role("combobox").first.select_option("a round")
    form.fill("Rounds", "4", *item)
    inner = (*item, "Items", "Items, number 1")
    form.fill("Reps", "2", *inner).fill("Distance", "50", *inner).fill("Rest", "0:30", *inner)
    form.fill("One drill", "back-streamline-kick", *inner).fill(
        "One word", "strong", *inner, "Effort"
    )
    form.add("Add by round", *inner)
    last = (*inner, "By round", "By round, number 1")
    form.fill("Round", "last", *last).fill("Aim", "0:55", *last)
    title = next(
        title
        for id, title, _ in json.loads((server.folder / "data/v1/form.json").read_text("utf-8"))[
            "reference"
        ]["lane_group"]
        if id == "heron-2"
    )
    own = form.group(*item).get_by_role("group", name=named("By group")).last
    own.get_by_role("button").first.click()
    own = form.group(*item).get_by_role("group", name=named("By group")).last
    own.get_by_role("button", name=f"Add {title.lower()}").click()
    own.get_by_label(named("Rounds")).last.fill("3")
    (round_,) = form.data()["items"]
    assert round_["by_group"] == {"heron-2": {"rounds": 3}}
    assert round_["items"][0]["by_round"] == {"last": {"aim": "0:55"}}
    for words in (f"{title}: 3 rounds", "Others: 4 rounds", "Last round hold 0:55"):
        expect(desk.locator("[data-card]")).to_contain_text(words)
    assert errors_with(root, "plans/sets/three-of-four-rounds.yml", form.text, capsys) == []


def test_a_set_with_rounds_parts_and_a_pause(
    desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    form = Form(desk, server).open("Set")
    form.fill("Title", "Twice down the ladder").fill(
        "Purpose", "Hold the straight downbeat while the legs tire, then swim on it."
    )
    form.fill("Goals, number 1", "kick-endurance", "Goals").fill("Level", "performing").fill(
        "Course", "25m"
    )
    first = ("Items", "Items, number 1")
    form.group(*first).get_by_role(
        "combobox", name="Items, number 1 in which form", exact=True
    ).select_option("a round")
    form.fill("Rounds", "2", *first).fill("Pause between", "1:00", *first)
    inner = (*first, "Items", "Items, number 1")
    form.fill("Reps", "4", *inner).fill("Distance", "50", *inner).fill(
        "One drill", "back-streamline-kick", *inner
    )
    form.group(*inner, "Effort").get_by_role(
        "combobox", name="Effort in which form", exact=True
    ).select_option("descend")
    form.fill("Descend, number 1", "steady", *inner, "Effort").fill(
        "Descend, number 2", "fast", *inner, "Effort"
    )
    form.group(*inner, "Sendoff").get_by_role(
        "combobox", name="Sendoff (optional) in which form", exact=True
    ).select_option("one for each lane group")
    groups = {"osprey-1": "1:20", "osprey-2": "1:25", "heron-1": "1:40", "heron-2": "1:50"}
    titles = {
        id: title
        for id, title, _ in json.loads((server.folder / "data/v1/form.json").read_text("utf-8"))[
            "reference"
        ]["lane_group"]
    }
    for group, time in groups.items():
        form.fill("One time", time, *inner, "Sendoff", titles[group])
    expect(
        form.group(*inner).get_by_label(named("Rest"))
    ).to_be_hidden()  # send-off and rest exclude each other
    form.add(
        "Add one to Items", "Items"
    )  # the inner list's own button stands first: a second item of the round
    second = (*first, "Items", "Items, number 2")
    form.fill("Reps", "2", *second)
    form.add("Add one to Parts", *second).add("Add one to Parts", *second)
    for number, distance, drill, effort in (
        ("1", "25", "back-streamline-kick", "strong"),
        ("2", "50", "backstroke-swim", "fast"),
    ):
        part = (*second, "Parts", f"Parts, number {number}")
        form.fill("Distance", distance, *part).fill("One drill", drill, *part).fill(
            "One word", effort, *part
        )
    rest = form.group(*second).get_by_label(named("Rest")).last  # each part may have one too
    rest.fill("0:20")
    rest.blur()
    desk.get_by_role("button", name="Add one to Items", exact=True).last.click()
    last = desk.get_by_role("group", name="Items, number 2", exact=True).last
    last.get_by_role("combobox", name="Items, number 2 in which form", exact=True).select_option(
        "a pause"
    )
    last.get_by_label("Pause", exact=True).fill("2:00")
    assert form.left == ORDER
    assert form.data()["items"] == [
        {
            "rounds": 2,
            "pause_between": "1:00",
            "items": [
                {
                    "reps": 4,
                    "distance": 50,
                    "do": "back-streamline-kick",
                    "effort": {"descend": ["steady", "fast"]},
                    "sendoff": dict(
                        sorted(groups.items(), key=lambda pair: list(titles).index(pair[0]))
                    ),
                },
                {
                    "reps": 2,
                    "parts": [
                        {"distance": 25, "do": "back-streamline-kick", "effort": "strong"},
                        {"distance": 50, "do": "backstroke-swim", "effort": "fast"},
                    ],
                    "rest": "0:20",
                },
            ],
        },
        {"pause": "2:00"},
    ]
    board = desk.locator("[data-card] .board p")
    expect(board).to_have_count(4)
    expect(board.nth(0)).to_have_text("2 rounds 1:00 between rounds")
    expect(board.nth(1)).to_contain_text(
        "4 × 50 Back streamline kick descend steady to fast Heron, lanes 1 to 3 on 1:40"
    )
    expect(board.nth(2)).to_contain_text("2 × 75 as 25 Back streamline kick (strong), then 50 ")
    expect(board.nth(3)).to_have_text("Pause 2:00")
    assert errors_with(root, "plans/sets/twice-down-the-ladder.yml", form.text, capsys) == []


def fill_fault(form: Form) -> Form:
    form.fill("Title", "Toes curl in").fill(
        "Summary", "The feet curl inward and the ankle works like a hook."
    ).fill("Stroke", "backstroke")
    form.fill("From", "side-deck", "See", "See, number 1").fill(
        "What", "Soles show at the end of each beat.", "See", "See, number 1"
    )
    form.fill(
        "Why it matters", "A hooked foot pushes water up instead of back, and the calf tires first."
    )
    cause = ("Causes", "Causes, number 1")
    form.fill("Cause", "Cold or tired calves.", *cause).fill(
        "Tell apart", "Ask for ten loose beats at the wall: the feet uncurl.", *cause
    )
    form.fill("Mended by, number 1", "deck-edge-back-kick", *cause, "Mended by")
    form.fill(
        "Refer on", "Cramp that comes back in every session goes to a licensed health professional."
    )
    return form.fill("By", "head-coach", "Review")


def test_a_fault_from_empty_to_a_file_that_the_check_accepts(
    desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    form = fill_fault(Form(desk, server).open("Fault"))
    assert form.left == ORDER
    assert list(form.data()) == [
        "title",
        "summary",
        "stroke",
        "see",
        "why_it_matters",
        "causes",
        "refer_on",
        "review",
    ]
    assert errors_with(root, "drills/faults/toes-curl-in.yml", form.text, capsys) == []
    with desk.expect_download() as downloading:
        desk.get_by_role("button", name="Download").click()
    assert downloading.value.suggested_filename == "toes-curl-in.yml"
    assert Path(downloading.value.path()).read_text("utf-8") == form.text
    desk.get_by_role("button", name="Copy").click()
    expect(desk.locator("[data-told]")).to_have_text("Copied.")
    assert desk.evaluate("navigator.clipboard.readText()") == form.text


@pytest.mark.parametrize("text", share([*HOSTILE, *REFUSED], 12), ids=lambda text: ascii(text[:30]))
def test_hostile_text_typed_into_the_form(typist: Form, text: str) -> None:
    form = typist
    form.page.get_by_label("Title", exact=True).fill(text)
    form.page.get_by_label("Purpose", exact=True).fill(text)
    document, findings = read_at_any_size((form.text or "{}").encode())
    assert document is not None
    shown = text.replace("\r\n", "\n").replace("\r", "\n")
    line = shown.replace("\n", " ")  # a box of one line makes blanks of line ends
    trimmed = {
        name: value for name, value in (("title", line), ("purpose", shown)) if value.strip(BLANKS)
    }
    assert {name: document.data.get(name) for name in trimmed} == {
        name: value.strip(BLANKS) for name, value in trimmed.items()
    }
    codes = {finding.code for finding in findings}
    assert codes <= {"control-character", "blank-text"}
    for code in ("control-character", "blank-text"):
        told = form.page.locator(f'[data-mistakes] li[data-code="{code}"]').count() > 0
        assert told == (code in codes), code
    assert form.page.locator("[data-add] :is(script, b:not(:empty))").count() == 0
    if trimmed.get("title") and len(text) < 50:
        expect(form.page.locator("[data-card] .add-card-title")).to_have_js_property(
            "textContent", line.strip(BLANKS)
        )


# What the browser takes for blank at the ends of a text.
BLANKS = (
    "\t\n\v\f\r \u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a"
    "\u2028\u2029\u202f\u205f\u3000\ufeff"
)


@pytest.fixture(scope="module")
def typist(browser: Browser, server: Server) -> Iterator[Form]:
    """The form of a set, for one text after another."""
    page = browser.new_page()
    watched = Watched(page, server.address)
    yield Form(page, server).open("Set")
    assert watched.troubles == []
    page.close()


def test_a_hundred_thousand_letters_are_refused_in_words(desk: Page, server: Server) -> None:
    form = Form(desk, server).open("Set").fill("Purpose", "kick " * 20_000)
    slot = desk.locator(".add-field", has=desk.get_by_label("Purpose")).first
    expect(slot).to_contain_text("this must have at most 700 characters, and has 99999")
    expect(desk.locator("[data-mistakes]")).to_contain_text(
        "the file has more than 65,536 bytes (64 KiB), the most that an entry may have"
    )
    desk.get_by_role("button", name="Copy").click()  # the page is not held up by its own checks
    expect(desk.locator("[data-told]")).not_to_be_empty()
    assert "more than" not in form.fill("Purpose", "kick").left


def kept(page: Page) -> list[str]:
    return page.evaluate("Object.keys(localStorage).filter((key) => key.includes('draft'))")  # type: ignore[no-any-return]


def test_a_draft_survives_a_closed_tab(server: Server, context: BrowserContext) -> None:
    page = context.new_page()
    form = Form(page, server).open("Drill")
    assert kept(page) == []
    fill_drill(form)
    form.add("Add gear").add("Add one to Cues", "Cues")
    before = form.text
    page.close()
    page = context.new_page()
    form = Form(page, server).open("Drill")
    assert form.text == before
    expect(page.locator("[data-draft-told]")).to_contain_text("Your draft of")
    expect(page.get_by_label("Cues, number 2", exact=True)).to_be_visible()  # still empty
    page.get_by_role("radio", name="Fault").check()
    expect(page.get_by_label(named("Why it matters"))).to_be_visible()  # no drill's form
    fill_fault(form)
    fault = form.text
    assert "title: Toes curl in" in fault
    page.reload()
    assert form.text == fault
    page.get_by_role("radio", name="Drill").check()
    expect(page.get_by_label("Title", exact=True)).to_have_value("Slow count back kick")
    assert form.text == before
    page.get_by_role("button", name="Discard this draft").click()
    expect(page.get_by_label("Title", exact=True)).to_have_value("")
    page.get_by_role("button", name="Bring it back").click()
    expect(page.get_by_label("Title", exact=True)).to_have_value("Slow count back kick")
    assert form.text == before
    page.get_by_role("button", name="Discard this draft").click()
    expect(page.get_by_label("Title", exact=True)).to_have_value("")
    page.reload()
    expect(page.get_by_label("Title", exact=True)).to_have_value("")
    page.get_by_role("radio", name="Fault").check()
    expect(page.get_by_label("Title", exact=True)).not_to_have_value("")
    assert form.text == fault


def test_a_draft_that_is_nobody_s_form_does_no_harm(
    server: Server, context: BrowserContext
) -> None:
    page = context.new_page()
    watched = Watched(page, server.address)
    form = Form(page, server).open("Set")
    for entry in (
        {
            "items": [[], 5, "x", {"rounds": {}, "items": "<b>"}, {"pause": None}],
            "goals": {"a": 1},
            "level": "soaring",
            "expect": [],
            "title": 7,
        },
    ):
        page.evaluate(
            "(entry) => localStorage.setItem('deck-almanac / draft-set', JSON.stringify({at: {}, "
            "id: 5, family: [], entry}))",
            entry,
        )
        page.reload()
        expect(page.locator("[data-mistakes]")).to_contain_text(
            "“soaring” is not one of the levels"
        )
    assert form.text
    assert watched.troubles == []


def with_repository(page: Page, server: Server, address: str) -> None:
    """As though the club had set repo_url before it built the site."""
    data = json.loads((server.folder / "data/v1/form.json").read_text("utf-8"))
    page.route(
        "**/data/v1/form.json", lambda route: route.fulfill(json={**data, "repository": address})
    )


def test_the_pull_request_link_holds_folder_name_and_text(
    desk: Page, server: Server, drafts: dict[str, str]
) -> None:
    with_repository(desk, server, REPOSITORY)
    Form(desk, server).open("Fault")
    link = desk.get_by_role("link", name="Open a pull request")
    expect(link).to_be_hidden()  # no name yet
    form = opened_again(desk, server, drafts, "Fault")
    text = form.text
    address = urlsplit(link.get_attribute("href") or "")
    assert (
        f"{address.scheme}://{address.netloc}{address.path}"
        == f"{REPOSITORY}/new/main/drills/faults"
    )
    assert parse_qs(address.query) == {"filename": ["toes-curl-in.yml"], "value": [text]}
    assert link.get_attribute("rel") == "noopener noreferrer"
    for number in range(1, 4):
        form.add("Add one to Evidence", "Evidence").fill(
            "Claim", "“—” " * 99 + "x", "Evidence", f"Evidence, number {number}"
        )
    assert len(form.text.encode()) < 8000
    expect(desk.locator("[data-propose-told]")).to_contain_text(
        "The text is too long for a link. Copy it first"
    )
    assert "value=" not in (link.get_attribute("href") or "")
    assert len(link.get_attribute("href") or "") < 8000


def test_a_new_family_is_part_of_the_file_s_name(
    desk: Page, server: Server, drafts: dict[str, str]
) -> None:
    with_repository(desk, server, REPOSITORY)
    form = opened_again(desk, server, drafts, "Drill").fill("Family", "counted", "File")
    assert form.left == ORDER
    address = urlsplit(
        desk.get_by_role("link", name="Open a pull request").get_attribute("href") or ""
    )
    assert address.path.endswith("/new/main/drills/skills")
    assert parse_qs(address.query)["filename"] == ["counted/slow-count-back-kick.yml"]


def test_without_a_repository_the_page_says_how_to_send_the_file(
    desk: Page, server: Server, drafts: dict[str, str]
) -> None:
    with_repository(desk, server, "")
    opened_again(desk, server, drafts, "Fault")
    expect(desk.locator("[data-propose-told]")).to_contain_text(
        "send it to whoever keeps the catalogue as drills/faults/toes-curl-in.yml"
    )
    expect(desk.locator("[data-propose]")).to_be_hidden()


@pytest.mark.parametrize("address", ["javascript:alert(1)", "ftp://host/x", "//host/x"])
def test_only_a_web_address_becomes_a_link(
    desk: Page, server: Server, drafts: dict[str, str], address: str
) -> None:
    with_repository(desk, server, address)
    assert opened_again(desk, server, drafts, "Fault").left == ORDER
    expect(desk.locator("[data-propose]")).to_be_hidden()


BAD_IDS = (
    (
        "Back-Streamline-Kick",
        (
            "“Back-Streamline-Kick” is no id: an id is lower-case letters, digits and single "
            "hyphens write back-streamline-kick"
        ),
    ),
    ("back_kick", "“back_kick” is no id"),
    ("../../etc/passwd", "“../../etc/passwd” is no id"),
    ("<b>", "“<b>” is no id"),
    ("con", "“con” is a device's name on some computers"),
    ("lpt1", "“lpt1” is a device's name on some computers"),
    ("a" * 61, "the id has 61 characters, at most 60"),
    (
        "back-streamline-kick",
        (
            "the drill “back-streamline-kick” exists already: "
            "drills/skills/flutter-on-back/back-streamline-kick.yml"
        ),
    ),
)


def test_ids_that_are_refused(desk: Page, server: Server, drafts: dict[str, str]) -> None:
    form = opened_again(desk, server, drafts, "Drill")
    for id, words in BAD_IDS:
        assert form.fill("Id", id, "File").left == "1 thing to mend."
        expect(desk.locator("[data-file] .is-wrong")).to_contain_text(words)
        expect(desk.locator("[data-path]")).to_be_empty()
    assert form.fill("Id", "kept-count", "File").left == ORDER


def test_the_id_follows_the_title_until_it_is_typed(desk: Page, server: Server) -> None:
    form = Form(desk, server).open("Set").fill("Title", "Été: 4 × 100 “kick & go”!")
    assert form.text
    expect(desk.get_by_label("Id", exact=True)).to_have_value("ete-4-100-kick-go")
    form.fill("Id", "summer-set", "File").fill("Title", "Winter set")
    assert form.text
    expect(desk.get_by_label("Id", exact=True)).to_have_value("summer-set")
    form.fill("Id", "ladder-on-bakc", "File")
    near = desk.locator("[data-near] a")
    expect(near).to_have_attribute("href", f"{server.address}sets/ladder-on-back.html")


ITEM = ("Items", "Items, number 1")
MISTAKES = [
    ("Set", "missing-key", (), "Title", ""),
    ("Set", "too-short", (), "Purpose", "Too short."),
    ("Set", "too-long", (), "Title", "x" * 61),
    ("Set", "bad-form", (), "Title", "Kick <b>hard</b>"),
    ("Drill", "bad-form", ("Cues",), "Cues, number 1", "Kick"),
    ("Drill", "bad-form", ("Cues",), "Cues, number 1", "one two three four five six seven eight"),
    ("Set", "bad-time", ITEM, "Rest", "1:75"),
    ("Set", "bad-time", ITEM, "Rest", "0:5"),
    ("Set", "bad-time", ITEM, "Rest", "a minute"),
    ("Set", "bad-time", ITEM, "Rest", "0"),
    ("Set", "wrong-type", ITEM, "Reps", "25m"),
    ("Set", "wrong-type", ITEM, "Reps", "2.5"),
    ("Gear", "wrong-type", (), "Pace factor", "1,05"),
    ("Set", "out-of-range", ITEM, "Distance", "0"),
    ("Set", "out-of-range", ITEM, "Reps", "101"),
    ("Set", "unknown-reference", ITEM, "One drill", "back-streamline-kik"),
    ("Set", "unknown-reference", ITEM, "One drill", "drag-socks"),
    ("Set", "unknown-reference", ITEM, "One drill", "qqq"),
    ("Benchmark", "bad-form", (), "Repeat every", "a month"),
    ("Practice", "bad-form", ("Slot",), "Start", "5:30 pm"),
    ("Gear", "too-short", ("Hazards", "Hazards, number 1"), "Own", "Bruises"),
]  # fmt: skip


@pytest.fixture(scope="module")
def shapes() -> Shapes:
    """The command line's own check of an entry's shape."""
    return Shapes(load(ROOT).names)


@pytest.fixture(scope="module")
def forms(browser: Browser, server: Server) -> Iterator[Callable[[str], Form]]:
    """An empty form of a kind, made once, for one mistake after another: each takes back what it
    typed.
    """
    context = browser.new_context(viewport=SIZES["desk"])
    troubles = []

    @cache
    def opened(kind: str) -> Form:
        page = context.new_page()
        troubles.append(Watched(page, server.address).troubles)
        return Form(page, server).open(kind)

    yield opened
    context.close()
    assert not any(troubles)


def codes_on_the_command_line(shapes: Shapes, kind: str, form: Form) -> set[str]:
    """What the check finds in the file as it stands, by code."""
    document, findings = read(form.text.encode(), "entry.yml")
    data: dict[str, Any] = document.data if document else {}
    found = shapes.check(Document("entry.yml", form.text or "{}", data), kind.lower()).findings
    return {finding.code for finding in [*found, *findings]} - {"empty-file"}


def codes_of(messages: Locator) -> list[str | None]:
    """The codes of what the form says, each in words."""
    assert all(messages.all_inner_texts())
    return [message.get_attribute("data-code") for message in messages.all()]


@pytest.mark.parametrize(
    ("kind", "code", "groups", "label", "typed"),
    MISTAKES,
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_mistake_is_told_beside_its_field_by_the_code_of_the_check(
    forms: Callable[[str], Form],
    shapes: Shapes,
    kind: str,
    code: str,
    groups: tuple[str, ...],
    label: str,
    typed: str,
) -> None:
    form = forms(kind).fill(label, typed, *groups)
    assert form.left
    field = form.group(*groups).get_by_label(named(label)).first
    expect(field).to_have_attribute("aria-invalid", "true")
    beside = form.page.locator(
        f"#{(field.get_attribute('aria-describedby') or '').split()[1]} .add-message"
    )
    assert codes_of(beside) == [code]
    assert code in codes_on_the_command_line(shapes, kind, form)
    field.fill("")


def test_mistakes_that_take_two_fields(desk: Page, server: Server, shapes: Shapes) -> None:
    form = Form(desk, server).open("Set")
    item = form.group(*ITEM)
    excluded = (
        (item.get_by_label(named("Distance")).first, "50"),
        (form.group(*ITEM, "Sendoff").get_by_label(named("One time")).first, "1:00"),
    )
    form.fill("Rest", "0:20", *ITEM).fill("Time", "0:30", *ITEM).settle()  # which hide the others
    for field, value in excluded:
        field.evaluate(
            """(field, value) => {
              field.value = value;
              field.dispatchEvent(new Event('input', {bubbles: true}));
            }""",
            value,
        )
    form.add("Add one to Goals", "Goals").fill("Goals, number 1", "rotation", "Goals").fill(
        "Goals, number 2", "rotation", "Goals"
    )
    form.add("Add expect").add("Add clock", "Expect")
    codes = codes_of(form.settle().page.locator("[data-mistakes] li"))
    assert sorted(map(str, codes)) == ["not-together", "not-together", "repeated-item"]
    assert set(codes) <= codes_on_the_command_line(shapes, "Set", form)


def test_the_list_of_what_is_left_leads_to_the_fields(desk: Page, server: Server) -> None:
    form = Form(desk, server).open("Drill").fill("Title", "x")
    assert form.left.startswith("1 thing to mend, ")
    desk.get_by_role(
        "link", name="Title: this must have at least 2 characters, and has 1", exact=True
    ).click()
    expect(desk.get_by_label("Title", exact=True)).to_be_focused()
    desk.locator("[data-blanks]").get_by_role("link", name="Effort", exact=True).click()
    expect(desk.get_by_label("From", exact=True).first).to_be_focused()
    expect(desk.locator("[data-count]")).to_have_attribute("role", "status")
    expect(desk.locator(".add-wrong").first).to_have_attribute("aria-live", "polite")


def press(page: Page, *keys: str) -> None:
    for key in keys:
        page.keyboard.press(key)


def focused(page: Page) -> str:
    """The label or words of what has the focus."""
    script = "(document.activeElement.labels?.[0] ?? document.activeElement).textContent.trim()"
    return page.evaluate(script)  # type: ignore[no-any-return]


def tab_to(page: Page, words: str, most: int = 80) -> None:
    for _ in range(most):
        page.keyboard.press("Tab")
        if focused(page) == words:
            return
    raise AssertionError(f"no way to {words!r} by keyboard")


def test_a_kind_that_comes_late_makes_no_form(desk: Page, server: Server) -> None:
    held: list[Route] = []
    desk.route("**/schema/fault.json", lambda route: held.append(route))
    desk.goto(f"{server.address}add.html#drill")
    expect(desk.get_by_label("Mode", exact=True)).to_be_visible()
    desk.get_by_role("radio", name="Fault", exact=True).check()
    desk.get_by_role("radio", name="Set", exact=True).check()
    expect(desk.get_by_label("Course", exact=True)).to_be_visible()
    with desk.expect_response("**/schema/fault.json"):
        held[0].continue_()
    desk.evaluate("new Promise(done => setTimeout(done))")
    expect(desk.get_by_label("Course", exact=True)).to_be_visible()


def test_by_keyboard_alone(desk: Page, server: Server) -> None:
    desk.goto(f"{server.address}add.html")
    tab_to(desk, "Drill")
    press(desk, "ArrowRight", "ArrowRight", "ArrowRight", "ArrowRight", "ArrowRight", "Space")
    expect(desk.get_by_label("Course", exact=True)).to_be_visible()
    tab_to(desk, "Title")
    desk.keyboard.type("Keys only")
    tab_to(desk, "Course")
    press(desk, "ArrowDown", "ArrowDown")
    tab_to(desk, "Reps")
    desk.keyboard.type("4")
    tab_to(desk, "Add one to Items")
    press(desk, "Enter")
    expect(
        desk.get_by_role("group", name="Items, number 2", exact=True).get_by_role("combobox").first
    ).to_be_focused()
    desk.keyboard.type("a pause")
    tab_to(desk, "Pause")
    desk.keyboard.type("1:30")
    tab_to(desk, "Up: number 2 of Items")
    press(desk, "Enter")
    assert focused(desk) == "Down: number 1 of Items"
    expect(desk.locator("[data-told]")).to_have_text("Number 2 is now number 1 of Items.")
    form = Form(desk, server)
    assert form.data()["items"] == [{"pause": "1:30"}, {"reps": 4}]
    tab_to(desk, "Remove: number 1 of Items")
    press(desk, "Enter")
    assert focused(desk) == "Remove: number 1 of Items"
    assert form.data() == {"title": "Keys only", "course": "25m", "items": [{"reps": 4}]}
    tab_to(desk, "Copy", 160)
    press(desk, "Enter")
    expect(desk.locator("[data-told]")).to_have_text("Copied.")


# All forms are made of the same parts, whose contrast takes most of axe's time: it is looked at in
# these, one of each size and scheme; in all of them by --long, and of the others the usual run
# opens two.
CONTRASTED = {("Drill", "desk", "dark"), ("Gear", "phone", "light")}


@pytest.mark.parametrize(
    ("kind", "size", "scheme"),
    [
        ("Drill", "phone", "light"), ("Drill", "desk", "dark"), ("Fault", "phone", "dark"),
        ("Gear", "phone", "light"), ("Set", "phone", "dark"),
        *share(
            [("Benchmark", "phone", "light"), ("Progression", "phone", "dark"),
             ("Set", "desk", "light"),
             ("Practice", "phone", "light"), ("Block", "phone", "dark")], 2, "forms",
        ),
    ],
)  # fmt: skip
def test_every_form_is_open_to_all(
    desk: Page, server: Server, size: str, scheme: Any, kind: str
) -> None:
    """axe finds nothing, what is pressed is 44 px high, nothing reaches beyond the screen: with all
    groups open and messages shown.
    """
    page = desk
    page.set_viewport_size(SIZES[size])  # type: ignore[arg-type]
    page.emulate_media(color_scheme=scheme)
    form = Form(page, server).open(kind).fill("Title", "x")
    adding = page.locator("[data-fields] button:not([disabled])", has_text=re.compile("^Add"))
    adding.evaluate_all("all => all.slice(0, 12).forEach(button => button.click())")
    page.get_by_role("button", name="Copy").click()
    assert "to mend" in form.left
    rules = {"color-contrast": {"enabled": is_long() or (kind, size, scheme) in CONTRASTED}}
    options = {"resultTypes": ["violations"], "rules": rules, "preload": False}
    found = Axe().run(page, context="[data-add]", options=options)
    assert found.violations_count == 0, found.generate_report()
    small = page.evaluate("""() => [...document.querySelectorAll(
        "[data-add] :is(button, select, input, textarea, a)")]
      .map((element) => [element.closest("label.chip, .is-yes, .add-field") ?? element, element])
      .filter(([box, element]) => element.getClientRects().length &&
        Math.max(box.getBoundingClientRect().height, element.getBoundingClientRect().height) < 44)
      .map(([, element]) => element.outerHTML.slice(0, 120))""")
    assert small == []
    assert page.evaluate("document.documentElement.scrollWidth") <= SIZES[size]["width"]


def test_with_no_signal_the_page_says_so(context: BrowserContext, server: Server) -> None:
    page = context.new_page()
    page.route("**/data/v1/**", lambda route: route.abort())
    page.goto(f"{server.address}add.html")
    page.get_by_role("radio", name="Drill").check()
    expect(page.locator("[data-told]")).to_contain_text("The form could not be made")
    page.unroute("**/data/v1/**")
    page.get_by_role("radio", name="Fault").check()
    expect(page.get_by_label("Title", exact=True)).to_be_visible()


def test_without_a_script_the_way_by_git_stands(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{server.address}add.html")
    expect(page.get_by_text("write the file by hand")).to_be_visible()
    expect(page.locator("[data-add]")).to_be_hidden()
    expect(page.get_by_role("heading", name="With Git")).to_be_visible()
    context.close()
