"""A new file of an entry: its name is free and sound, and it is written whole or not at all."""

from __future__ import annotations

from pathlib import Path

from almanac.commands.outcome import UsageError
from almanac.model.load import Loaded
from almanac.site.folder import naming
from almanac.source.paths import bad_name, plain_id


def refuse_bad_id(loaded: Loaded, kind: str, id: str, file: str) -> None:
    """Raise UsageError where an id may not be, or is an entry's already."""
    finding = bad_name(id, file, "file")
    if finding:
        better = plain_id(id)
        say = f": say {better}" if better and bad_name(better, file, "file") is None else ""
        raise UsageError(finding.message + say)
    taken = {
        **loaded.names.of("reference", kind),
        **{old: new for (own, old), new in loaded.names.moved.items() if own == kind},
    }
    same = next((known for known in taken if known.casefold() == id.casefold()), None)
    if same:
        raise UsageError(f"the {kind} '{same}' exists already: {taken[same]}; choose another id")


def write_new(path: Path, text: str) -> None:
    """Write a new file, whole or not at all. Raises OSError."""
    with naming(path), path.open("x", encoding="utf-8") as new:
        try:
            new.write(text)
            new.flush()
        except OSError:
            path.unlink()
            raise
