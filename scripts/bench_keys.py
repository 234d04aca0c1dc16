"""What a key in Find costs the processor, however busy the machine is: the time of the page's main
thread from one key to the next, by Chromium's own trace.
"""

from __future__ import annotations

import json
from bisect import bisect_right
from collections import Counter
from typing import Any

from playwright.sync_api import Browser, Page

TYPED = ("knees out of water", "12 min 2 lanes fins", "sore shoulder", "streamlien kik bak")
_TRACED = ["devtools.timeline", "toplevel"]
_BETWEEN_MS = 100  # a quick hand; what is done later than this after a key is no wait
_TASK = "ThreadControllerImpl::RunTask"


def key_times(browser: Browser, page: Page, address: str) -> list[float]:
    """Milliseconds of processor time that each key takes, typed into the box when all is read,
    sorted: the search, the layout and the drawing of the list.
    """
    page.goto(address + "find.html")
    page.wait_for_selector("[data-found][data-texts=read]")
    browser.start_tracing(page=page, categories=_TRACED)
    for words in TYPED:
        page.fill("#find-words", "")
        page.keyboard.type(words, delay=_BETWEEN_MS)
    page.wait_for_timeout(_BETWEEN_MS)
    return taken(json.loads(browser.stop_tracing())["traceEvents"])


def taken(events: list[dict[str, Any]]) -> list[float]:
    """The same of the events of a trace (their times are microseconds)."""
    keys = [event for event in events if _type(event) == "keydown"]
    times = sorted(event["ts"] for event in keys)
    threads = {(event["pid"], event["tid"]) for event in keys}
    took = Counter[int]()
    for event in events:
        if event["name"] == _TASK and (event["pid"], event["tid"]) in threads:
            # the task that hears a key begins before the key is told
            at = bisect_right(times, event["ts"] + event.get("dur", 0)) - 1
            if at >= 0 and event["ts"] - times[at] < 1000 * _BETWEEN_MS:
                took[at] += event.get("tdur", 0)
    return sorted(took[number] / 1000 for number in range(len(times)))


def _type(event: dict[str, Any]) -> str:
    found = event.get("args", {}).get("data", {}) if event["name"] == "EventDispatch" else {}
    return str(found.get("type", ""))
