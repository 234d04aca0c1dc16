"""Tells that a file which the site is made from has been saved."""

from __future__ import annotations

import contextlib
import logging
import threading
from pathlib import Path
from types import TracebackType
from typing import Self

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer
from watchdog.observers.api import ObservedWatch

from almanac.kinds import TOP_FOLDERS
from almanac.resources import SETTINGS, SITE_SOURCE

_SETTLE_S = 0.05  # editors write a file in several steps
_SAVES = {"created", "modified", "moved", "deleted"}
_OF_SITE = ("pages", "templates", "styles", "scripts", "images", "theme", "offline")
# Of a save while it stops it would speak on the terminal, to nobody's use.
logging.getLogger("watchdog").addHandler(logging.NullHandler())


class Watch(FileSystemEventHandler):
    """Watches the entries below ``root`` and what the site is made from beside them.

    A folder that goes and comes again is watched again: its parent tells of it.
    """

    def __init__(self, root: Path) -> None:
        self._saved = threading.Event()
        self._observer = Observer()
        self._observer.daemon = True
        self._deep = {
            *(root / name for name in TOP_FOLDERS),
            *(SITE_SOURCE / name for name in _OF_SITE),
        }
        self._flat = {root, SITE_SOURCE, SETTINGS.parent}
        self._files = {SETTINGS, *SITE_SOURCE.glob("package*.json")}
        self._watched: dict[Path, ObservedWatch] = {}
        self._lock = threading.Lock()

    def __enter__(self) -> Self:
        self._observer.start()
        for folder in self._flat:
            with contextlib.suppress(OSError):
                self._observer.schedule(self, str(folder), recursive=False)
        for folder in self._deep:
            self._watch(folder)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        problem: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._observer.stop()

    def is_set(self) -> bool:
        """Whether something has been saved since the last ``wait``."""
        return self._saved.is_set()

    def wait(self) -> bool:
        """Wait for a save, and until it has settled. Always true."""
        self._saved.wait()
        while self._saved.is_set():
            self._saved.clear()
            self._saved.wait(_SETTLE_S)
        return True

    def on_any_event(self, event: FileSystemEvent) -> None:
        if event.event_type not in _SAVES:
            return
        for path in filter(None, (event.src_path, event.dest_path)):
            self._notice(Path(str(path)))

    def _notice(self, path: Path) -> None:
        if path in self._deep:
            self._watch(path)
            self._saved.set()
        elif path in self._files or any(folder in path.parents for folder in self._deep):
            self._saved.set()

    def _watch(self, folder: Path) -> None:
        """Watch a folder anew: the one that was there may be gone."""
        with self._lock:
            old = self._watched.pop(folder, None)
            if old is not None:
                with contextlib.suppress(KeyError, OSError):
                    self._observer.unschedule(old)
            if folder.is_dir():
                with contextlib.suppress(OSError):
                    self._watched[folder] = self._observer.schedule(
                        self, str(folder), recursive=True
                    )
