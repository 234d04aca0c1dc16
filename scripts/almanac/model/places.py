"""Where work is done: told by its mode, which is a word that the program knows or one of the
club's own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from almanac.model import vocabularies as words
from almanac.model.catalogue import Key
from almanac.model.entry import Entry
from almanac.model.moving import Moving
from almanac.model.policy import Vocabulary

_MODES = ("vocabulary", "modes")


def placed(entries: Mapping[Key, Entry]) -> dict[Key, Entry]:
    """The entries, each drill and test of a mode of the club's own with where that is done: under
    water, where the mode does not say.
    """
    modes = entries[_MODES]
    assert isinstance(modes, Vocabulary)
    own = {
        name: word.done or words.BELOW
        for name, word in modes.words.items()
        if name not in words.DONE
    }
    return {
        key: replace(entry, done=own[entry.mode])
        if isinstance(entry, Moving) and entry.mode in own
        else entry
        for key, entry in entries.items()
    }
