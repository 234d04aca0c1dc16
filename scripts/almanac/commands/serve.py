"""Build the site, serve it on this machine alone, and build again when a file changes.

A broken entry shows its findings here and leaves the last good site standing.
"""

from __future__ import annotations

import argparse
import functools
import http.server
import threading
from datetime import date
from pathlib import Path

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer
from watchdog.observers.api import BaseObserver

from almanac.commands.build import build_checked
from almanac.commands.outcome import ERRORS, FINE, root_of
from almanac.commands.shared import load_and_check
from almanac.findings import as_text

NAME = "serve"
_SETTLE_S = 0.3  # editors write a file in several steps
_WATCHED = ("drills", "plans", "site_src")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--port",
        type=int,
        default=8000,
        help="the port on 127.0.0.1 (default: 8000; 0 takes a free one)",
    )


def run(arguments: argparse.Namespace) -> int:
    root = root_of(arguments.root).resolve()
    site = root / "site"
    if not _rebuild(root, site) and not (site / "index.html").is_file():
        return ERRORS
    handler = functools.partial(_Quiet, directory=str(site))
    with http.server.ThreadingHTTPServer(("127.0.0.1", arguments.port), handler) as server:
        changed = threading.Event()
        observer = _watch(root, changed)
        threading.Thread(target=_rebuild_on, args=(changed, root, site), daemon=True).start()
        print(f"serving http://127.0.0.1:{server.server_port}/ (stop with Ctrl-C)", flush=True)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            print("stopped")
        finally:
            observer.stop()
    return FINE


def _rebuild(root: Path, site: Path) -> bool:
    checked = load_and_check(root, date.today())
    print(as_text(checked.findings, checked.loaded.count), flush=True)
    built = build_checked(checked, root, site)
    print("built" if built else "the last good site stays", flush=True)
    return built


def _rebuild_on(changed: threading.Event, root: Path, site: Path) -> None:
    while changed.wait():
        while changed.is_set():
            changed.clear()
            changed.wait(_SETTLE_S)
        _rebuild(root, site)


class _Watcher(FileSystemEventHandler):
    def __init__(self, changed: threading.Event) -> None:
        self._changed = changed

    def on_any_event(self, event: FileSystemEvent) -> None:
        if event.event_type in {"created", "modified", "moved", "deleted"}:
            self._changed.set()


def _watch(root: Path, changed: threading.Event) -> BaseObserver:
    observer = Observer()
    for name in _WATCHED:
        if (root / name).is_dir():
            observer.schedule(_Watcher(changed), str(root / name), recursive=True)
    observer.daemon = True
    observer.start()
    return observer


class _Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files without a line for each request, and never from a browser's cache."""

    def log_message(self, format: str, *args: object) -> None:
        pass

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()
