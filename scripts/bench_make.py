"""How long Make a practice takes from a tap until what was tapped for is painted, on a phone's
processor: the first proposal in a fresh page, and what is tapped for afterwards.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable

from playwright.sync_api import Browser, Page, ViewportSize

from bench_finder import SLOWED
from bench_lines import Report

PHONE: ViewportSize = {"width": 360, "height": 640}
THINKS_MS = 2500  # from the questions until the tap: three questions take longer
FIRST_MS, BLOCKED_MS = 300.0, 50.0
FIRST = "first proposal of a fresh page"
BLOCKED = "longest task while it is answered"
# squad, minutes, goals by what is offered
ASKED = (
    ("Heron", 60, (0,)), ("Heron", 60, (3, 1)), ("Heron", 45, (2,)), ("Heron", 75, (1, 4, 6)),
    ("Heron", 30, (5,)), ("Heron", 90, (7, 2)), ("Osprey", 60, (0, 2)), ("Osprey", 75, (1,)),
    ("Osprey", 90, (4, 3, 8)), ("Osprey", 45, (6,)), ("Osprey", 105, (5, 9)),
    ("Osprey", 90, (2,)), ("Reed", 45, (0,)), ("Reed", 30, (1, 2)), ("Reed", 60, (3,)),
    ("Reed", 40, (4, 0)),
)  # fmt: skip
# Notes when the box next shows what `window.awaits` selects: from the tap itself, by the clock of
# its event, to the task after the frame that paints it. Beside it each task of 50 ms or more.
_WATCH = """() => {
  window.tapped = 0;
  window.tasks = [];
  new PerformanceObserver((list) => {
    window.tasks.push(...list.getEntries().map((one) => one.duration));
  }).observe({ type: "longtask" });
  addEventListener("click", (event) => {
    if (window.awaits) {
      window.tapped = event.timeStamp;
    }
  }, true);
  new MutationObserver(() => {
    if (window.awaits && window.tapped && window.awaits()) {
      window.awaits = null;
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => { window.took = performance.now() - window.tapped; };
        channel.port2.postMessage(0);
      });
    }
  }).observe(document, { subtree: true, childList: true });
}"""
# What is drawn anew is no longer the element that stood there.
_AWAIT = """(selector) => {
  const old = document.querySelector(selector);
  window.took = window.tapped = 0;
  window.awaits = () => {
    const now = document.querySelector(selector);
    return now && now !== old;
  };
}"""
_TOOK = "() => window.took"


def make_times(browser: Browser, address: str) -> dict[str, list[float]]:
    """Milliseconds by what is tapped for, each sorted: of ``ASKED``, each in a fresh page with
    nothing kept; processor slowed.
    """
    times: dict[str, list[float]] = defaultdict(list)
    for squad, minutes, goals in ASKED:
        context = browser.new_context(viewport=PHONE)
        page = context.new_page()
        page.add_init_script(f"({_WATCH})()")
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        page.goto(address + "make.html")
        page.click(f"text={squad}")
        page.wait_for_selector(".make-go button")
        page.evaluate("() => { window.tasks = []; }")
        _answer(page, minutes, goals)
        page.wait_for_timeout(THINKS_MS)
        times[BLOCKED].append(max(page.evaluate("() => window.tasks"), default=0.0))
        times[FIRST].append(_took(page, ".make-rows", page.locator(".make-go button").click))
        _deeds(page, times)
        _again(page, times, minutes + 5)
        context.close()
    return {what: sorted(own) for what, own in times.items()}


def _answer(page: Page, minutes: int, goals: tuple[int, ...]) -> None:
    """Type and tick as a coach does; goals beyond those that are offered begin again."""
    page.fill("#make-minutes", str(minutes))
    chips = page.locator("input[name=goal]")
    for goal in dict.fromkeys(goal % chips.count() for goal in goals):
        chips.nth(goal).evaluate("(own) => own.click()")


def _took(page: Page, selector: str, tap: Callable[[], None]) -> float:
    """Milliseconds from a tap until a new one of what is selected is painted."""
    page.evaluate(_AWAIT, selector)
    tap()
    page.wait_for_function(_TOOK)
    return float(page.evaluate(_TOOK))


def _deeds(page: Page, times: dict[str, list[float]]) -> None:
    """Another proposal, and another piece."""
    page.wait_for_timeout(500)
    turn = page.locator(".make-turn button", has_text="Next")
    if turn.count():
        times["next proposal"].append(_took(page, ".make-rows", turn.click))
        page.wait_for_timeout(500)
    page.click(".make-rows > li:first-child button")
    swap = page.locator(".make-rows > li:first-child [data-do=swap]")
    times["swap"].append(_took(page, ".make-rows", swap.click))
    page.wait_for_timeout(500)


def _again(page: Page, times: dict[str, list[float]], minutes: int) -> None:
    """Asked once more for something else, in the same page."""
    page.click(".make-turn button >> text=Questions")
    page.wait_for_selector(".make-go button")
    page.fill("#make-minutes", str(minutes))
    page.wait_for_timeout(THINKS_MS)
    go = page.locator(".make-go button")
    times["first proposal, asked once more"].append(_took(page, ".make-rows", go.click))


def speed_of_make(report: Report, browser: Browser, address: str) -> None:
    """Each beside its goal, by its 90th percentile."""
    for what, times in make_times(browser, address).items():
        report.line(
            f"Make a practice, {what}, {SLOWED} × slowed, 90th percentile",
            times[int(len(times) * 0.9)],
            BLOCKED_MS if what == BLOCKED else FIRST_MS,
            "ms",
            f", median {times[len(times) // 2]:.0f}, worst {times[-1]:.0f}, {len(times)} times",
        )
