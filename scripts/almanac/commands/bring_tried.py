"""What is brought into a catalogue, tried in a copy of it before anything is written: in waves
where a lane has no room, and refused where a check refuses it.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from almanac.commands.outcome import UsageError
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.commands.start_room import waves_due, with_added
from almanac.kinds import TOP_FOLDERS
from almanac.publish.atomic import replace_file
from almanac.site.folder import naming

_MOST_ROUNDS = 4  # what has waves may then need smaller ones


def sound_here(root: Path, files: Mapping[str, str], day: date) -> Mapping[str, str]:
    """What comes as it can stand here: tried in a copy of the catalogue, in waves where a lane has
    no room. Raises UsageError where a check refuses an entry there: with an error nothing is built
    any more.
    """
    with tempfile.TemporaryDirectory(prefix="almanac-bring-") as scratch:
        copy = Path(scratch)
        for name in TOP_FOLDERS:
            if (root / name).is_dir():
                # a link that leads nowhere, as some editors leave, is nothing that comes
                shutil.copytree(root / name, copy / name, symlinks=True)
        write_all(copy, files)
        checked = load_and_check(copy, day)
        for _ in range(_MOST_ROUNDS):
            roomier = _in_waves(checked, files)
            if not roomier:
                break
            files = {**files, **roomier}
            for file, text in roomier.items():
                replace_file(copy / file, text.encode("utf-8"))
            checked = load_and_check(copy, day)
        for finding in checked.findings:
            if finding.is_error and finding.place.file in files:
                message = f"{finding.place.file}: {finding.message}; {finding.hint}"
                raise UsageError(f"nothing was brought: {message}")
    return files


def _in_waves(checked: CheckedCatalogue, files: Mapping[str, str]) -> dict[str, str]:
    """Those of the files in which a lane has no room, with waves where it has none."""
    if checked.analysis is None:
        return {}
    documents = checked.loaded.documents
    return {
        documents[key].file: with_added(documents[key], own)
        for key, own in waves_due(checked.analysis).items()
        if documents[key].file in files
    }


def write_all(root: Path, files: Mapping[str, str]) -> None:
    """Write new files, all or none. Raises OSError."""
    written: list[Path] = []
    try:
        for file, text in files.items():
            path = root / file
            path.parent.mkdir(parents=True, exist_ok=True)
            with naming(path), path.open("x", encoding="utf-8") as new:
                written.append(path)
                new.write(text)
    except BaseException:
        for path in written:
            path.unlink(missing_ok=True)
        raise
