"""Where it is noted that files of a folder are being changed together: in the user's own state, and
never in the folder, so that nobody who proposes a change can bring one.
"""

from __future__ import annotations

import hashlib
from pathlib import Path

from platformdirs import user_state_dir

_DIGITS = 24


def notes_of(root: Path) -> Path:
    """The folder of what is noted of a root, by its whole path."""
    own = hashlib.sha256(str(root.resolve()).encode("utf-8", "surrogateescape")).hexdigest()
    return Path(user_state_dir("deck-almanac")) / "changes" / own[:_DIGITS]


def journal_of(root: Path) -> Path:
    """The file that holds a change while it is made; there only while one is, or was killed."""
    return notes_of(root) / "change.json"
