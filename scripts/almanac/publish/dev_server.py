"""The site served on this machine alone: pages as they are by now, each with the script that loads
it again; no offline worker.
"""

from __future__ import annotations

import errno
import http.server
import json
import mimetypes
import posixpath
import re
import time
from collections.abc import Callable
from html import escape
from pathlib import Path
from urllib.parse import SplitResult, parse_qs, unquote, urlsplit

from almanac.publish.errors import PortError
from almanac.publish.offline import WORKER
from almanac.publish.viewers import Viewers
from almanac.resources import SITE_SOURCE

_CHANGES, _RELOAD = "_serve/changes", "_serve/reload.js"
_OWN = {_RELOAD: "reload.js", WORKER: "worker.js"}  # instead of what a site has there
_MISSING = "404.html"
_SWAP_S = 0.1  # for a moment neither the old site nor the new one stands in its place

_NUMBER = re.compile("[0-9]{1,18}")
_OWN_HOST = re.compile(r"(127\.0\.0\.1|localhost|\[::1\])(:[0-9]{1,5})?", re.IGNORECASE)
_FORBIDDEN = {"\\", ":", "\0"}

Finished = Callable[[str], bytes | None]


class DevServer(http.server.ThreadingHTTPServer):
    """Serves ``site``; ``finished`` gives files that are ahead of what stands there."""

    daemon_threads = True

    def __init__(self, port: int, site: Path, viewers: Viewers, finished: Finished) -> None:
        """Take the port. Raises PortError where that cannot be had."""
        self.site, self.viewers, self.finished = site, viewers, finished
        try:
            super().__init__(("127.0.0.1", port), _Handler)
        except OSError as problem:
            raise PortError(_port_words(port, problem)) from None

    def content(self, file: str) -> bytes | None:
        """A file of the site as it is by now; None where there is none."""
        if not _FORBIDDEN.isdisjoint(file):  # on some systems these lead out of the site
            return None
        ahead = self.finished(file)
        if ahead is not None:
            return ahead
        for wait_s in (0.0, _SWAP_S):
            time.sleep(wait_s)
            try:
                return (self.site / file).read_bytes()
            except (OSError, ValueError):  # not there, a folder, or a name that none can have
                if self.site.is_dir():
                    break
        return None

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that went away while it was answered is no fault."""


def _is_own(host: str) -> bool:
    """Whether a Host header names this machine."""
    return _OWN_HOST.fullmatch(host.strip()) is not None


def _port_words(port: int, problem: OSError) -> str:
    if problem.errno == errno.EADDRINUSE:
        return f"port {port} is taken: stop what uses it, or name another with --port"
    return f"port {port} cannot be had: {problem.strerror}"


class _Handler(http.server.BaseHTTPRequestHandler):
    server: DevServer
    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        try:
            address = urlsplit(self.path)
        except ValueError:
            return self._refuse(400, "that is no address")
        hosts = [*self.headers.get_all("Host", [""]), *filter(None, [address.netloc])]
        if not all(map(_is_own, hosts)):
            # A page from elsewhere, whose name was made to lead here, may read nothing.
            return self._refuse(421, "this site is served to this machine alone")
        return self._answer(address)

    def _refuse(self, code: int, words: str) -> None:
        self._send(code, "refused.txt", f"{words}\n".encode())

    def _answer(self, address: SplitResult) -> None:
        file = posixpath.normpath("/" + unquote(address.path)).lstrip("/")
        if not file or address.path.endswith("/"):
            file = posixpath.join(file, "index.html")
        if file == _CHANGES:
            self._tell(parse_qs(address.query))
        elif file in _OWN:
            self._send(200, file, (SITE_SOURCE / "serve" / _OWN[file]).read_bytes())
        else:
            self._send_site(file)

    def do_HEAD(self) -> None:
        self.do_GET()

    def log_message(self, format: str, *args: object) -> None:
        """No line for each request."""

    def _send_site(self, file: str) -> None:
        # asked before the file is read: rather a version too old than one too new
        version = self.server.viewers.version
        content, code = self.server.content(file), 200
        if content is None:
            content, code = self.server.content(_MISSING) or b"", 404
        if code == 404 or file.endswith(".html"):
            content = with_reloader(content, file, version)
        self._send(code, file if code == 200 else _MISSING, content)

    def _tell(self, query: dict[str, list[str]]) -> None:
        page, since, told = (query.get(name, [""])[0] for name in ("page", "since", "told"))
        known = int(since) if _NUMBER.fullmatch(since) else 0
        answer = self.server.viewers.wait(page, known, told)
        self._send(200, "answer.json", json.dumps(answer).encode())

    def _send(self, code: int, file: str, content: bytes) -> None:
        kind = mimetypes.guess_type(file)[0] or "application/octet-stream"
        text = kind.startswith("text/") or kind.endswith(("json", "javascript", "xml"))
        self.send_response(code)
        self.send_header("Content-Type", f"{kind}; charset=utf-8" if text else kind)
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Cache-Control", "no-cache")
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)


def with_reloader(page: bytes, file: str, version: int) -> bytes:
    """A page with the script that loads it again when it has changed."""
    script = (
        f'<script src="/{_RELOAD}" data-page="{escape(file)}" data-version="{version}"></script>'
    )
    head, found, rest = page.rpartition(b"</body>")
    return head + script.encode() + found + rest if found else page + script.encode()
