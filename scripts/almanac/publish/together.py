"""Changes of many files that happen whole or not at all.

What is to stand in each file is first written into one journal in the root folder. A kill before
that leaves everything as it was; after it, whoever next opens the folder does the rest.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from almanac.kinds import JOURNAL
from almanac.publish.atomic import replace_file

Texts = Mapping[str, str | None]
"""By path below the root, what a file holds; None where there is none."""


def change(root: Path, after: Texts) -> None:
    """Put each text into its file, and remove the files of which none is left. A file that began
    with a byte order mark still does.

    Raises OSError where the machine refuses; then every file is as it was.
    """
    before = {file: _held(root / file) for file in after}
    after = {file: _marked(text, before[file]) for file, text in after.items()}
    journal = root / JOURNAL
    replace_file(journal, json.dumps({"before": before, "after": after}).encode("utf-8"))
    try:
        _put(root, after)
    except OSError:
        _put(root, before)
        journal.unlink()
        raise
    journal.unlink()


def finish(root: Path) -> list[str]:
    """Do what a killed change has left undone. Returns the files; those that somebody has written
    since are left alone.
    """
    journal = root / JOURNAL
    if not journal.is_file():
        return []
    try:
        said = json.loads(journal.read_text("utf-8"))
        before: Texts = said["before"]
        after: Texts = said["after"]
    except (ValueError, KeyError, TypeError):
        return []  # somebody else's file
    due = {
        file: text
        for file, text in after.items()
        if _is_below(file) and _held(root / file) == before.get(file) != text
    }
    _put(root, due)
    with suppress(FileNotFoundError):
        journal.unlink()
    return list(due)


def _marked(text: str | None, before: str | None) -> str | None:
    mark = "\ufeff" if before and before[0] == "\ufeff" else ""
    return text if text is None else mark + text.removeprefix("\ufeff")


def _is_below(file: str) -> bool:
    path = Path(file)
    return not path.is_absolute() and ".." not in path.parts and path.suffix == ".yml"


def _held(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8")
    except FileNotFoundError:
        return None


def _put(root: Path, texts: Texts) -> None:
    for (
        file,
        text,
    ) in texts.items():  # what is written comes first, so that no entry is ever missing
        if text is not None:
            replace_file(root / file, text.encode("utf-8"))
    for file, text in texts.items():
        if text is None:
            (root / file).unlink(missing_ok=True)
