"""A folder served on loopback, its text compressed, as a web host does."""

from __future__ import annotations

import functools
import gzip
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path


class _Zipped(SimpleHTTPRequestHandler):
    """Serves text compressed, as a web host does."""

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path.split("?")[0]))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        body = path.read_bytes()
        text = path.suffix not in {".png", ".gz"}
        body = gzip.compress(body, 9, mtime=0) if text else body
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "max-age=600")
        if text:
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *arguments: object) -> None:
        pass


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a folder served on loopback."""
    server = ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(_Zipped, directory=str(folder))
    )
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
