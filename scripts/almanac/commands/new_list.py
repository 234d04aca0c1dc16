"""A list of words of the program, or its limits, as files of a club's own, to be changed and added
to.
"""

from __future__ import annotations

import re
from pathlib import Path

from almanac.commands.new_file import write_new
from almanac.commands.outcome import FINE, UsageError
from almanac.kinds import KIND
from almanac.resources import HOME
from almanac.source.lent import lent
from almanac.source.suggest import absent

_HEAD = "# The program's, and this club's own from now on: change what stands here, add to it.\n"
_SHOWN_BY = re.compile(r", shown_by: [a-z0-9-]+")  # a drill that the club may not have


def copy_list(root: Path, id: str) -> int:
    """Write the program's list of that name into the club's folder, with those that the program
    lends only beside it. Raises UsageError where it has none, or the club has its own.
    """
    folder = KIND["vocabulary"].files
    file = f"{folder}/{id}.yml"
    borrowed = [own for own in lent(root) if own.startswith(f"{folder}/")]
    if (root / file).exists():
        raise UsageError(f"{file} is there already: add to it what is missing")
    if file not in borrowed:
        known = [Path(own).stem for own in borrowed]
        raise UsageError(absent("list of the program's", id, known))
    write_list(root, file)
    alone = {*borrowed} - {file} - {*lent(root)}  # lent no more, beside a list of one's own
    for own in sorted(alone):
        write_list(root, own)
    return FINE


def write_list(root: Path, file: str) -> None:
    """Write one of the program's lists where the club's own stands."""
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    write_new(path, _HEAD + _SHOWN_BY.sub("", (HOME / file).read_text("utf-8")))
    print(f"wrote {path}; change it or add to it, then: almanac check")
