"""Room in the lanes of a new club: its first sets in waves where a lane holds more swimmers than go
round in it at once; practices that then take longer get a longer slot, or fewer rounds and reps.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lanes import crowded
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.scaling import REPS, ROUNDS, scalable
from almanac.checks.on_the_clock import swum_by_groups
from almanac.commands.shared import CheckedCatalogue
from almanac.model.catalogue import Key
from almanac.publish.atomic import replace_file
from almanac.source import schemas
from almanac.source.edits.added_keys import with_keys
from almanac.source.edits.mends import with_values
from almanac.source.reader import DataPath, Document, read

_STEP_MINUTES = 5  # of a slot
_LONGEST_MINUTES = 90  # of a first practice, whatever its level bears: house preference

Values = dict[DataPath, str]


@dataclass
class MadeRoom:
    """What has been made room for: files with waves, practices with fewer rounds or reps, and
    squads whose practice fits no slot, by their titles.
    """

    in_waves: set[str] = field(default_factory=set)
    shortened: set[str] = field(default_factory=set)
    without: list[str] = field(default_factory=list)

    def told(self) -> Iterator[str]:
        """What a coach has to know of it, in sentences."""
        if self.in_waves:
            yield (
                f"lanes are full: in {len(self.in_waves)} of the sets and practices swimmers go in "
                "waves, one wave while the others rest"
            )
        for file in sorted(self.shortened):
            yield f"{file} has fewer rounds or reps than its sets, so that every wave has its turn"
        for title in self.without:
            yield f"{title}: no practice yet, for so many in a lane none fits: give it more lanes"


def make_room(root: Path, checked: CheckedCatalogue, room: MadeRoom) -> bool:
    """Write into the entries below ``root`` what their lanes have no room without, and note it.
    Returns whether anything was changed: what has waves may then need other ones.
    """
    if checked.analysis is None:
        return False
    due = waves_due(checked.analysis)
    room.in_waves |= {checked.loaded.documents[key].file for key in due}
    gone = set[Key]()
    for id, summary in checked.analysis.practices.items():
        if summary.slack_s is None or summary.slack_s >= 0:
            continue
        file = checked.loaded.documents["practice", id].file
        if values := _fitted(checked.analysis, summary):
            room.shortened |= {file} if len(values) > 1 else set()
            due["practice", id] |= values
        else:
            squad = checked.analysis.catalogue.club.squads[summary.practice.squad]
            room.without.append(squad.title)
            room.shortened.discard(file)
            room.in_waves.discard(file)
            (root / file).unlink()
            gone.add(("practice", id))
    for key in due.keys() - gone:
        document = checked.loaded.documents[key]
        replace_file(root / document.file, with_added(document, due[key]).encode("utf-8"))
    return bool(due or gone)


def waves_due(analysis: Analysis) -> dict[Key, Values]:
    """By entry the waves of each item that some lane has no room for."""
    due: dict[Key, Values] = defaultdict(dict)
    for key, path, swimmers in _at_once(analysis):
        due[key][(*path, "waves")] = f"{{swimmers: {swimmers}}}"
    return due


def _at_once(analysis: Analysis) -> Iterator[tuple[Key, DataPath, int]]:
    """Each item that some lane has no room for: how many of a lane may swim it at once."""
    fewest: dict[tuple[Key, DataPath], int] = {}
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            for full in crowded(run, analysis.catalogue.lane_groups[group], swum.course):
                at = swum.entry.key, (*swum.path, *full.timed.rep.path)
                fewest[at] = min(full.most_heads, fewest.get(at, full.most_heads))
    return ((*at, heads) for at, heads in fewest.items())


def _fitted(analysis: Analysis, summary: PracticeSummary) -> Values:
    """The slot that a practice needs, and where that is too long the rounds and reps that are left
    of its sets; none where less is not to be had.
    """
    practice, policy = summary.practice, analysis.catalogue.policy
    level = analysis.catalogue.club.squads[practice.squad].level
    most = min(_LONGEST_MINUTES, policy.of_level(level).limit("practice_minutes_most"))
    needed = practice.slot.minutes - (summary.slack_s or 0) / 60
    slot = _STEP_MINUTES * math.ceil(needed / _STEP_MINUTES)
    if slot <= most:
        return {("slot", "minutes"): str(slot)}
    share, fewer = most / needed, Values()
    for number, part in enumerate(practice.parts):
        swim_set = analysis.catalogue.sets.get(part.set or "")
        for what, asked in ((ROUNDS, part.rounds), (REPS, part.reps)):
            scale = swim_set and scalable(swim_set, what, policy.limit("most_reps"))
            if scale and (now := asked or scale.written) > scale.least:
                fewer["parts", number, what] = str(max(scale.least, int(now * share)))
    return {**fewer, ("slot", "minutes"): f"{most:.0f}"} if fewer else {}


def with_added(document: Document, values: Mapping[DataPath, str]) -> str:
    """A document's text with values in their places, of keys too that it has not yet."""
    new: dict[DataPath, dict[str, str]] = defaultdict(dict)
    old = Values()
    for path, value in values.items():
        try:
            document.node(path)
            old[path] = value
        except KeyError:
            new[path[:-1]][str(path[-1])] = value
    first = with_values(document, old)
    again, _ = read(first.encode("utf-8"), document.file) if first else (None, [])
    text = with_keys(again, new, _ORDER) if again else None
    assert text is not None, document.file
    return text


_ORDER = [
    key
    for schema, piece in (("practice", "part_of_practice"), ("common", "reps"))
    for key in schemas.raw(schema)["$defs"][piece]["properties"]
]
