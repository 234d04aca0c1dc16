"""A server on loopback whose files can be made to fail, and a page that remembers its troubles."""

from __future__ import annotations

import functools
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from types import TracebackType
from typing import Any
from xml.etree import ElementTree

from playwright.sync_api import Browser, Page, Request, expect

ADDRESS = "https://quillwater.example/"  # of the small catalogue's club
# A page of the small catalogue for every template, and the states of a page that look unlike it.
TEMPLATES = (
    "index.html", "more.html", "settings.html", "tonight.html", "find.html",
    "find.html#open=goal,gear,minutes", "cards.html", "drills/back-streamline-kick.html",
    "sets/kick-and-go.html",
    "faults/knees-break-surface.html", "gear/parachute.html", "benchmarks/back-kick-200.html",
    "progressions/kick-into-stroke.html", "learn.html", "judge.html", "words.html",
    "calculators.html#points",
    "make.html", "make.html#squad=heron&pool=home&minutes=60&goals=kick-endurance,kick-into-stroke",
    "practices/heron-kick-and-go.html", "blocks/heron-legs-in-three-weeks.html", "by/goal.html",
    "drills/index.html", "practices/index.html",
    "needs/sore-shoulder.html", "coverage.html", "safety.html", "kick-cycle.html", "new.html",
    "fields.html", "checks.html", "computed.html",
    "add.html", "run.html#practice=heron-kick-and-go", "data.html", "privacy.html", "404.html",
    "otherwise.html", "around.html", "levels.html",
)  # fmt: skip


class _Handler(SimpleHTTPRequestHandler):
    def __init__(self, *arguments: Any, failing: set[str], asked: list[str], **named: Any) -> None:
        self.failing, self.asked = failing, asked
        super().__init__(*arguments, **named)

    def do_GET(self) -> None:
        path = self.path.split("?")[0]
        self.asked.append(path)
        if path == "/favicon.ico":  # a page that names no icon, as JSON, is no trouble
            self.send_response(204)
            self.end_headers()
        elif path in self.failing:
            self.send_error(503)
        else:
            super().do_GET()

    def log_message(self, format: str, *arguments: object) -> None:
        pass

    def handle(self) -> None:
        try:
            super().handle()
        except (BrokenPipeError, ConnectionResetError):
            pass  # the browser went away


class Server:
    """Serves a folder. Paths in ``failing`` answer 503; ``asked`` is what was asked for."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.failing: set[str] = set()
        self.asked: list[str] = []
        handler = functools.partial(
            _Handler, directory=str(folder), failing=self.failing, asked=self.asked
        )
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
        self.address = f"http://127.0.0.1:{self._server.server_port}/"

    def __enter__(self) -> Server:
        threading.Thread(target=self._server.serve_forever, daemon=True).start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._server.shutdown()
        self._server.server_close()


class Watched:
    """What went wrong on a page: errors thrown and logged, and requests to another host."""

    def __init__(self, page: Page, address: str) -> None:
        self.troubles: list[str] = []
        self._address = address
        page.on("pageerror", lambda error: self.troubles.append(f"{page.url}: {error}"))
        page.on(
            "console",
            lambda message: (
                message.type == "error" and self.troubles.append(f"{page.url}: {message.text}")
            ),
        )
        page.on("request", self._look)

    def _look(self, request: Request) -> None:
        if not request.url.startswith((self._address, "data:", "blob:")):
            self.troubles.append(f"asked another host: {request.url}")


class Kept:
    """A window that stays open from test to test and forgets each: what was stored, routed and
    set.
    """

    def __init__(self, browser: Browser, server: Server, **options: Any) -> None:
        self._server, self._size = server, options["viewport"]
        self._context = browser.new_context(**options)
        self._page = self._context.new_page()
        self._watched = Watched(self._page, server.address)
        self._devtools = self._context.new_cdp_session(self._page)

    def __enter__(self) -> Kept:
        return self

    def __exit__(self, *_: object) -> None:
        self._context.close()

    def lent(self) -> Iterator[Page]:
        """The page, for one test, which fails where it logged an error, threw one, or asked another
        host.
        """
        yield self._page
        self._forget()
        troubles, self._watched.troubles = self._watched.troubles, []
        assert troubles == []

    def _forget(self) -> None:
        page, address = self._page, self._server.address
        page.unroute_all(behavior="ignoreErrors")
        page.goto(f"{address}offline.json")  # a page that runs nothing and keeps nothing
        assert page.evaluate("String(Date).includes('native code')"), "set a clock on new_phone"
        page.evaluate("sessionStorage.clear()")
        everything = {"origin": address.rstrip("/"), "storageTypes": "all"}
        self._devtools.send("Storage.clearDataForOrigin", everything)
        page.set_viewport_size(self._size)
        page.emulate_media(media="null", color_scheme="null", reduced_motion="null")


def sitemap(site: Path) -> list[str]:
    """Every page of the site's own map, by its path from the root."""
    name = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
    own = ADDRESS
    found = [
        str(entry.findtext(f"{name}loc"))
        for entry in ElementTree.parse(site / "sitemap.xml").getroot()
    ]
    return [address.removeprefix(own) or "index.html" for address in found]


# Types each question into the box of Find, and gives the addresses of the best three.
_ASK_SEARCH = """questions => questions.map(question => {
  const box = document.querySelector("#find-words");
  box.value = question;
  box.dispatchEvent(new Event("input", { bubbles: true }));
  const hits = question ? [...document.querySelectorAll("[data-results] a")] : [];
  return hits.slice(0, 3).map(hit => hit.href.slice(document.baseURI.split("find.html")[0].length));
})"""


def ask(page: Page, address: str, *questions: str) -> list[list[str]]:
    """What the search answers to questions: for each the addresses of the best three."""
    find(page, address)
    return answered(page, *questions)


def find(page: Page, address: str) -> None:
    """Open Find and wait until it has read all texts."""
    page.goto(f"{address}find.html")
    expect(page.locator("[data-found]")).to_have_attribute("data-texts", "read")


def answered(page: Page, *questions: str) -> list[list[str]]:
    """The same of Find where it is open."""
    answers: list[list[str]] = page.evaluate(_ASK_SEARCH, list(questions))
    return answers
