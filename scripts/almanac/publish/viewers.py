"""The browsers that look at a served site: which page each shows, and what there is to tell it."""

from __future__ import annotations

import threading
import time
from typing import Any

_WAIT_S = 20.0  # the longest that an answer is put off
_LOOKS_S = 30.0  # a page that has not asked for so long is no longer in view
_SHOWN_EVERYWHERE = (".css", ".js", ".svg", ".png")


class Viewers:
    """What has changed since when, for the pages that ask. Used by many threads at once."""

    def __init__(self) -> None:
        self._news = threading.Condition()
        # Versions go on where an earlier server stopped, so that a page of its time is seen as old.
        self._version = int(time.time() * 1000)
        self._pages: dict[str, int] = {}
        self._everywhere = self._version
        self._told, self._message = 0, ""
        self._asked: dict[str, float] = {}
        self._is_closed = False

    @property
    def version(self) -> int:
        """The version that a page which is sent now has."""
        return self._version

    @property
    def in_view(self) -> list[str]:
        """The pages that some browser shows now, by their file from the root of the site; the one
        that asked last first.
        """
        with self._news:
            recent = {file: asked for file, asked in self._asked.items()
                      if time.monotonic() - asked < _LOOKS_S}  # fmt: skip
        return sorted(recent, key=lambda file: -recent[file])

    def changed(self, file: str) -> None:
        """A file of the site is another: the page itself, or what every page may show."""
        with self._news:
            self._version += 1
            if file.endswith(".html"):
                self._pages[file] = self._version
            elif file.endswith(_SHOWN_EVERYWHERE):
                self._everywhere = self._version
            self._news.notify_all()

    def all_changed(self) -> None:
        """The whole site is another."""
        with self._news:
            self._version += 1
            self._everywhere = self._version
            self._news.notify_all()

    def say(self, message: str) -> None:
        """Show a message on every page; "" takes it away."""
        with self._news:
            if message != self._message:
                self._told, self._message = self._told + 1, message
                self._news.notify_all()

    def wait(self, page: str, since: int, told: str, wait_s: float = _WAIT_S) -> dict[str, Any]:
        """Wait until there is something to tell a page of version ``since``, or until the longest
        wait is over. ``told`` is what ``told`` was in the last answer, "" before the first.
        """

        def is_news() -> bool:
            return self._is_closed or told != str(self._told) or self._is_old(page, since)

        with self._news:
            self._asked[page] = time.monotonic()
            self._news.wait_for(is_news, wait_s)
            self._asked[page] = time.monotonic()
            is_old = self._is_old(page, since)
            return {"reload": is_old, "told": str(self._told), "message": self._message}

    def close(self) -> None:
        """Let nobody wait any more."""
        with self._news:
            self._is_closed = True
            self._news.notify_all()

    def _is_old(self, page: str, since: int) -> bool:
        return max(self._pages.get(page, 0), self._everywhere) > since
