"""Changes of many files that happen whole or not at all.

What is to stand in each file is first written into one journal (``journal.py``). A kill before that
leaves everything as it was; after it, whoever next opens the folder does the rest. One change at a
time below a root; a file that somebody has written since it was read is never written over.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path

from almanac.journal import journal_of, notes_of
from almanac.kinds import TOP_FOLDERS
from almanac.publish.atomic import put_in_place, replace_file, written_beside
from almanac.publish.idle_turns import sweep
from almanac.publish.turn import turn

Texts = Mapping[str, str | None]
"""By path below the root, what a file holds; None where there is none."""

_LEFT = re.compile(r"\.\w{8}\.tmp")  # what a kill leaves of a file that was being written


class ChangedSince(Exception):
    """A file holds something else than what a change was worked out from; nothing was written."""

    def __init__(self, file: str) -> None:
        super().__init__(f"{file} was written meanwhile, so nothing was changed: do it again")


def change(root: Path, after: Texts, read: Texts) -> None:
    """Put each text into its file, and remove the files of which none is left. A file that began
    with a byte order mark still does, and so does a text that brings one. ``read`` is what the
    change was worked out from; what is not in it is no file.

    Raises ChangedSince where a file is not as it was read, and OSError where the machine refuses;
    then every file is as it was.
    """
    with turn(notes_of(root)):
        before = {file: _held(root / file) for file in after}
        for file, text in before.items():
            if _plain(text) != _plain(read.get(file)):
                raise ChangedSince(file)
        after = {file: _marked(text, before[file]) for file, text in after.items()}
        journal = journal_of(root)
        replace_file(journal, json.dumps({"before": before, "after": after}).encode("utf-8"))
        try:
            _put(root, after)
        except OSError:
            _back(root, before)
            journal.unlink()
            raise
        journal.unlink()
    sweep(notes_of(root).parent)


def finish(root: Path) -> list[str]:
    """Do what a killed change has left undone. Returns the files; those that somebody has written
    since are left alone, and so is what is no entry below the root.
    """
    with turn(notes_of(root)):
        journal = journal_of(root)
        before, after = _noted(journal)
        due = {
            file: text
            for file, text in after.items()
            if _is_entry(root, file) and _held(root / file) == before.get(file) != text
        }
        _put(root, due)
        for folder in {(root / file).parent for file in after if _is_entry(root, file)}:
            for left in folder.glob(".*.tmp"):
                if _LEFT.fullmatch(left.name):
                    left.unlink(missing_ok=True)
        journal.unlink(missing_ok=True)
        return list(due)


def _noted(journal: Path) -> tuple[Texts, Texts]:
    """What a journal says was and is to be; nothing where it is not whole."""
    try:
        said = json.loads(journal.read_text("utf-8"))
        before, after = dict(said["before"]), dict(said["after"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return {}, {}
    texts = (*before.values(), *after.values())
    return (before, after) if all(t is None or isinstance(t, str) for t in texts) else ({}, {})


def _plain(text: str | None) -> str | None:
    return text if text is None else text.removeprefix("\ufeff")


def _marked(text: str | None, before: str | None) -> str | None:
    mark = "\ufeff" if (text or "")[:1] == "\ufeff" or (before or "")[:1] == "\ufeff" else ""
    return text if text is None else mark + text.removeprefix("\ufeff")


def _is_entry(root: Path, file: str) -> bool:
    """Whether a path leads to where entries stand, through no link out of the root."""
    path = Path(file)
    if path.suffix != ".yml" or path.parts[0] not in TOP_FOLDERS or ".." in path.parts:
        return False
    return (root / path).resolve().is_relative_to(root.resolve())


def _held(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8")
    except FileNotFoundError:
        return None


def _back(root: Path, before: Texts) -> None:
    """Have every file as it was. One that the machine refuses is so still: it is left alone, or
    those after it would stay changed.
    """
    for file, text in before.items():
        if _held(root / file) != text:
            _put(root, {file: text})


def _put(root: Path, texts: Texts) -> None:
    # All of it is on the disk before any file is another: on a full one none is, and none has to go
    # back, for which there would be no room either.
    written: dict[str, Path] = {}
    try:
        for file, text in texts.items():
            if text is not None:
                written[file] = written_beside(root / file, text.encode("utf-8"))
        # What is written comes first, so that no entry is ever missing.
        for file, beside in written.items():
            put_in_place(root / file, beside)
    finally:
        for beside in written.values():
            beside.unlink(missing_ok=True)
    for file, text in texts.items():
        if text is None:
            (root / file).unlink(missing_ok=True)
