"""Mends of how entries are written, put into their files."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import TypeVar

from almanac.analysis.analysis import Analysis
from almanac.checks.expectations import Mismatch, differences
from almanac.model.catalogue import Key
from almanac.model.load import Loaded
from almanac.publish.atomic import replace_file
from almanac.source.edits.mended import mended
from almanac.source.edits.mends import with_values
from almanac.source.edits.rewrite import renumbered
from almanac.source.edits.style import fixed, style_findings
from almanac.source.reader import Document, read

Mended = TypeVar("Mended")

_BOM = b"\xef\xbb\xbf"


def fix(root: Path, loaded: Loaded) -> list[str]:
    """Mend every sound entry's key order, quoted times and list order. Returns the files that were
    changed.

    A file is replaced whole or not at all. One whose mended text would not read back as the same
    data is left alone.
    """
    told = {finding.place.file for finding in loaded.findings if finding.is_error}
    changed = []
    for (kind, _), document in loaded.documents.items():
        if document.file in told or not any(style_findings(document, kind)):
            continue
        text = fixed(document, kind)
        again, findings = read(text.encode("utf-8"), document.file)
        if (
            text != document.text
            and again is not None
            and not findings
            and _same(again.data, document.data)
            and _replace(root / document.file, document.text, text)
        ):
            changed.append(document.file)
    return changed


def mend_words(root: Path, loaded: Loaded) -> list[str]:
    """Put each word that was surely meant in place of what stands there: an id in another style, by
    a title or of before a rename, a word with a capital. Returns the files that were changed; other
    errors in them are no hindrance.
    """
    return _put(root, loaded, loaded.meant, mended)


def mend_values(root: Path, loaded: Loaded) -> list[str]:
    """Put what a message says to write in place of a value, where it leaves no choice. Returns the
    files that were changed.
    """
    return _put(root, loaded, loaded.values, with_values)


def _put(
    root: Path,
    loaded: Loaded,
    due: Mapping[Key, Mended],
    written: Callable[[Document, Mended], str | None],
) -> list[str]:
    """Put what is due in each document into its file. Returns the files that were changed."""
    changed = []
    for key, own in due.items():
        document = loaded.documents[key]
        text = written(document, own)
        if text is not None and _replace(root / document.file, document.text, text):
            changed.append(document.file)
    return changed


def mend_expectations(root: Path, loaded: Loaded, today: date) -> list[str]:
    """Write what sound sets add up to where their authors believe something else: after a change of
    rounds that is what was meant. Returns a line for each, with both figures.
    """
    if loaded.catalogue is None:
        return []
    changed: list[str] = []
    found: dict[str, list[Mismatch]] = {}
    for own in differences(Analysis(loaded.catalogue, today)):
        if own.written:
            found.setdefault(own.swim_set.id, []).append(own)
    for id, each in found.items():
        document = loaded.documents["set", id]
        text = renumbered(document, {("expect", *own.path): own.written for own in each})
        if text is not None and _replace(root / document.file, document.text, text):
            changed += (
                f"{document.file}: expect {' '.join(own.path)} {own.believed} is {own.written}"
                for own in each
            )
    return changed


def _same(new: object, old: object) -> bool:
    """Whether data are the same but for the order of keys and of sorted lists."""
    if isinstance(new, dict) and isinstance(old, dict):
        return new.keys() == old.keys() and all(_same(new[key], old[key]) for key in new)
    if isinstance(new, list) and isinstance(old, list):
        return new == old or sorted(map(repr, new)) == sorted(map(repr, old))
    return new == old


def _replace(path: Path, before: str, text: str) -> bool:
    """Put the mended text into its file, unless it was saved since it was read, or is lent."""
    if not path.is_file():
        return False
    raw = path.read_bytes()
    bom = _BOM if raw.startswith(_BOM) else b""
    if raw != bom + before.encode("utf-8"):
        return False
    mode = path.stat().st_mode
    replace_file(path, bom + text.encode("utf-8"))
    path.chmod(mode)
    return True
