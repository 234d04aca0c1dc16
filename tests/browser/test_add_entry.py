"""The page "Add an entry", filled in as a coach would: from an empty form to a file that the check accepts."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect

from almanac.commands.main import main
from almanac.model.load import load
from almanac.source.reader import read

from .conftest import ROOT
from .web import Server, Watched

REPOSITORY = "https://github.com/quillwater/deck-almanac"
LONG = (
    "The legs are asked to hold a straight downbeat while the arms wait, so that the swimmer feels which half of the beat moves the body. "
    "It serves early in a season, before speed."
)


class Form:
    """The form on a page, filled by label."""

    def __init__(self, page: Page, server: Server) -> None:
        self.page, self.server = page, server
        self.steps = 0

    def open(self, kind: str) -> Form:
        self.page.goto(f"{self.server.address}add.html")
        self.page.get_by_role("radio", name=kind, exact=True).check()
        expect(self.page.locator("[data-result]")).to_be_visible()
        return self

    def group(self, *names: str) -> Locator:
        """A group inside groups, each by its name: a list's item by the list's name and its number."""
        found = self.page.locator("[data-add]")
        for name in names:
            found = found.get_by_role("group", name=name, exact=True).first
        return found

    def fill(self, label: str, value: str, *groups: str) -> Form:
        """Fill in, choose or tick what has this label."""
        field = self.group(*groups).get_by_label(label, exact=True).first
        self.steps += 1
        if field.evaluate("field => field.tagName") == "SELECT":
            field.select_option(value)
        else:
            field.fill(value)
        field.blur()
        return self

    def add(self, name: str, *groups: str) -> Form:
        self.steps += 1
        self.group(*groups).get_by_role("button", name=name, exact=True).first.click()
        return self

    @property
    def text(self) -> str:
        """The file as it will be, once the form has caught up with the typing."""
        self.page.wait_for_timeout(350)
        return self.page.locator("[data-yaml]").evaluate("element => element.textContent")  # type: ignore[no-any-return]

    @property
    def left(self) -> str:
        self.page.wait_for_timeout(350)
        return self.page.locator("[data-count]").inner_text()

    def data(self) -> dict[str, Any]:
        document, findings = read(self.text.encode(), "entry.yml")
        assert document is not None
        assert findings == []
        return document.data


ORDER = "Everything that can be checked here is in order."


@pytest.fixture
def desk(browser: Browser, server: Server) -> Iterator[Page]:
    """A page on a desk. The test fails where it logged an error, threw one, or asked another host."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, permissions=["clipboard-read", "clipboard-write"])
    page = context.new_page()
    watched = Watched(page, server.address)
    yield page
    assert watched.troubles == []
    context.close()


@pytest.fixture
def root(tmp_path: Path) -> Path:
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, tmp_path / name)
    return tmp_path


def errors_with(root: Path, path: str, text: str, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """What `almanac check` finds wrong with a catalogue to which this file has been added, of the file itself."""
    (root / path).parent.mkdir(parents=True, exist_ok=True)
    assert not (root / path).exists()
    (root / path).write_text(text, "utf-8")
    capsys.readouterr()
    main(["check", "--format", "json", "--root", str(root)])
    findings = json.loads(capsys.readouterr().out)["findings"]
    return [finding["message"] for finding in findings if finding["severity"] == "error" and finding["file"] == path]


def fill_drill(form: Form) -> Form:
    form.fill("Title", "Slow count back kick").fill("Summary", "Flutter on the back to a slow spoken count, one beat a word.")
    form.fill("Mode", "kick").fill("Stroke", "backstroke").fill("Kick", "flutter").fill("Position", "supine").fill("Arms", "at-sides")
    form.fill("Purpose", LONG).fill("Goals, number 1", "kick-technique", "Goals").fill("Level", "building")
    form.fill("From", "easy", "Effort").fill("To", "steady", "Effort")
    form.fill("Distance", "25", "Dose").fill("From", "4", "Dose", "Reps").fill("To", "8", "Dose", "Reps").fill("Rest", "0:15", "Dose").fill("Most", "12", "Dose")
    form.fill("Steps, number 1", "Push off on the back, arms at the sides.", "Steps")
    form.fill("Steps, number 2", "Kick one beat to each word of the count: no word, no beat.", "Steps")
    form.fill("Cues, number 1", "One word, one beat", "Cues")
    form.fill("From", "side-deck", "Look for", "Look for, number 1").fill("See", "Each beat as large as the last.", "Look for", "Look for, number 1")
    for number, see, because, say in (
        ("1", "Beats run ahead of the words.", "A slow beat feels like sinking.", "Belly up first, then count again."),
        ("2", "Feet stop at the top.", "The word is held too long.", "Short words: one, two, one, two."),
    ):
        item = ("Goes wrong", f"Goes wrong, number {number}")
        form.fill("See", see, *item).fill("Because", because, *item).fill("Say", say, *item)
    item = ("Safety", "Safety, number 1")
    form.fill("Hazard", "A head meets the wall while the mind is on the count.", *item).fill("Control", "The count ends at the flags; from there an arm goes up.", *item)
    item = ("Evidence", "Evidence, number 1")
    form.fill("Claim", "A slow beat lets a swimmer feel both halves of it.", *item).fill("Basis", "common-practice", *item)
    form.fill("By", "head-coach", "Review").fill("Family", "flutter-on-back", "File")
    return form


def test_a_drill_from_empty_to_a_file_that_the_check_accepts(desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    form = Form(desk, server).open("Drill")
    assert "still to fill in" in form.left
    fill_drill(form)
    assert form.left == ORDER
    expect(desk.locator("[data-path]")).to_have_text("drills/skills/flutter-on-back/slow-count-back-kick.yml")
    card = desk.locator("[data-card]")
    for words in ("Slow count back kick", "Flutter on the back to a slow", "One word, one beat", "A head meets the wall"):
        expect(card).to_contain_text(words)
    assert form.data()["dose"] == {"distance": 25, "reps": {"from": 4, "to": 8}, "rest": "0:15", "most": 12}
    assert errors_with(root, "drills/skills/flutter-on-back/slow-count-back-kick.yml", form.text, capsys) == []
    assert form.steps <= 36


def test_a_set_with_rounds_parts_and_a_pause(desk: Page, server: Server, root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    form = Form(desk, server).open("Set")
    form.fill("Title", "Twice down the ladder").fill("Purpose", "Hold the straight downbeat while the legs tire, then swim on it.")
    form.fill("Goals, number 1", "kick-endurance", "Goals").fill("Level", "performing").fill("Course", "25m")
    first = ("Items", "Items, number 1")
    form.group(*first).get_by_label("Items, number 1 in which form").select_option("a round")
    form.fill("Rounds", "2", *first).fill("Pause between", "1:00", *first)
    inner = (*first, "Items", "Items, number 1")
    form.fill("Reps", "4", *inner).fill("Distance", "50", *inner).fill("Do", "back-streamline-kick", *inner)
    form.group(*inner, "Effort").get_by_label("Effort in which form").select_option("descend")
    form.fill("Descend, number 1", "steady", *inner, "Effort").fill("Descend, number 2", "fast", *inner, "Effort")
    form.group(*inner, "Sendoff (optional)").get_by_label("Sendoff (optional) in which form").select_option("one for each lane group")
    groups = {"osprey-1": "1:20", "osprey-2": "1:25", "heron-1": "1:40", "heron-2": "1:50"}
    titles = {id: title for id, title, _ in json.loads((server.folder / "data/v1/form.json").read_text("utf-8"))["reference"]["lane_group"]}
    for group, time in groups.items():
        form.fill(titles[group], time, *inner)
    expect(form.group(*inner).get_by_label("Rest (optional)", exact=True)).to_be_hidden()  # send-off and rest exclude each other
    form.add("Add one to Items", "Items")  # the inner list's own button stands first: a second item of the round
    second = (*first, "Items", "Items, number 2")
    form.fill("Reps", "2", *second)
    form.add("Add one to Parts", *second).add("Add one to Parts", *second)
    for number, distance, drill, effort in (("1", "25", "back-streamline-kick", "strong"), ("2", "50", "backstroke-swim", "fast")):
        part = (*second, "Parts (optional)", f"Parts, number {number}")
        form.fill("Distance", distance, *part).fill("Do", drill, *part).fill("One word", effort, *part)
    form.fill("Rest (optional)", "0:20", *second)
    desk.get_by_role("button", name="Add one to Items", exact=True).last.click()
    last = desk.get_by_role("group", name="Items, number 2", exact=True).last
    last.get_by_label("Items, number 2 in which form").select_option("a pause")
    last.get_by_label("Pause", exact=True).fill("2:00")
    assert form.left == ORDER
    assert form.data()["items"] == [
        {
            "rounds": 2,
            "pause_between": "1:00",
            "items": [
                {"reps": 4, "distance": 50, "do": "back-streamline-kick", "effort": {"descend": ["steady", "fast"]}, "sendoff": dict(sorted(groups.items(), key=lambda pair: list(titles).index(pair[0])))},
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
    expect(board.nth(0)).to_have_text("2 rounds of 1:00 between rounds")
    expect(board.nth(1)).to_contain_text("4 × 50 Back streamline kick descend steady to fast on 1:")
    expect(board.nth(2)).to_contain_text("2 × 75 as 25 Back streamline kick (strong), then 50 ")
    expect(board.nth(3)).to_have_text("Pause 2:00")
    assert errors_with(root, "plans/sets/twice-down-the-ladder.yml", form.text, capsys) == []
