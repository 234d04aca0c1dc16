"""The whiteboard: a set in words, as a coach would write it up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from almanac.model.catalogue import Catalogue
from almanac.model.changes import LAST, changed
from almanac.model.swim_set import (
    Build,
    Change,
    Descend,
    Effort,
    Hold,
    Item,
    Part,
    Pause,
    Reps,
    Rotate,
    Round,
    Sendoff,
    SwimSet,
    Times,
    Waves,
)
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.units import show_number, show_time

TO_MARK = {
    "wall": "to the wall", "flags": "to the flags", "near-flags": "to the first flags",
    "middle": "to the middle", "15m": "to 15 m", "end": "to the end",
}  # fmt: skip


@dataclass(frozen=True)
class BoardLine:
    """One line: how deep in rounds, what is done, how hard, when to go, and the note; each may be
    empty.

    ``go_of`` holds, where lane groups differ, each group's id, title and own words for ``go``.
    ``groups`` are the lane groups that the line is for, and ``whose`` says who they are; both are
    empty where it is for all.
    """

    depth: int
    what: str
    effort: str = ""
    go: str = ""
    gear: str = ""
    note: str = ""
    go_of: tuple[tuple[str, str, str], ...] = ()
    groups: tuple[str, ...] = ()
    whose: str = ""


def board(catalogue: Catalogue, swim_set: SwimSet) -> list[BoardLine]:
    """The set's lines, in order."""
    return board_lines(catalogue, swim_set.items)


def board_lines(catalogue: Catalogue, items: tuple[Item, ...]) -> list[BoardLine]:
    """The lines of items, in order."""
    return list(_lines(catalogue, items, 0))


def _lines(catalogue: Catalogue, items: tuple[Item, ...], depth: int) -> Iterator[BoardLine]:
    for item in items:
        if isinstance(item, Pause):
            yield BoardLine(depth, f"Pause {show_time(item.seconds)}", note=item.note)
        elif isinstance(item, Round):
            between = (
                f"{show_time(item.pause_between)} between rounds" if item.pause_between else ""
            )
            yield BoardLine(depth, f"{item.rounds} rounds of", go=between, note=item.note)
            yield from _lines(catalogue, item.items, depth + 1)
            yield from _by_round(catalogue, item.by_round, depth + 1)
        else:
            yield from _by_group(catalogue, item, depth)
            yield from _by_round(catalogue, item.by_round, depth + 1)


def _by_group(catalogue: Catalogue, item: Reps, depth: int) -> Iterator[BoardLine]:
    """The line of reps; one for each way of doing them where lane groups differ."""
    if not item.by_group:
        yield _reps(catalogue, item, depth)
        return
    others = tuple(group for group in catalogue.lane_groups if group not in item.by_group)
    for change in dict.fromkeys(map(repr, item.by_group.values())):
        groups = tuple(group for group, own in item.by_group.items() if repr(own) == change)
        whose = ", ".join(catalogue.lane_groups[group].title for group in groups)
        own = changed(item, item.by_group[groups[0]])
        line = _reps(catalogue, own, depth) if own.reps else BoardLine(depth, "Wait")
        yield _only_for(line, groups, whose)
    yield _only_for(_reps(catalogue, item, depth), others, "Others")


def _only_for(line: BoardLine, groups: tuple[str, ...], whose: str) -> BoardLine:
    go_of = tuple(own for own in line.go_of if own[0] in groups)
    go = "; ".join(f"{title} {words}" for _, title, words in go_of) if line.go_of else line.go
    return replace(line, groups=groups, whose=whose, go_of=go_of, go=go)


def _by_round(
    catalogue: Catalogue, changes: Mapping[str, Change], depth: int
) -> Iterator[BoardLine]:
    for number, change in changes.items():
        which = "Last round" if number == LAST else f"Round {number}"
        effort = effort_words(catalogue, change.effort) if change.effort else ""
        gear = gear_words(catalogue, change.gear or ())
        what = ", ".join(filter(None, (_how_many(catalogue, change), _no_gear(change))))
        go = _go(catalogue, change)
        yield BoardLine(depth, f"{which}: {what}" if what else which, effort, go, gear)


def _how_many(catalogue: Catalogue, change: Change) -> str:
    if change.parts:
        return "as " + ", then ".join(_part(catalogue, part) for part in change.parts)
    each = show_time(change.time) if change.time else str(change.distance or "")
    count = "" if change.reps is None else f"{change.reps} ×"
    drill = catalogue.drills[change.do].title if change.do else ""
    return " ".join(filter(None, (count, each, drill)))


def _no_gear(change: Change) -> str:
    return "without gear" if change.gear == () else ""


def _go(catalogue: Catalogue, item: Reps | Change) -> str:
    if item.sendoff:
        return sendoff_words(catalogue, item.sendoff)
    return f"{show_time(item.rest)} rest" if item.rest else ""


def _reps(catalogue: Catalogue, item: Reps, depth: int) -> BoardLine:
    go = _go(catalogue, item)
    gear = gear_words(catalogue, item.gear)
    if not item.is_parted:
        part = item.parts[0]
        each = show_time(part.hold_s) if part.hold_s else show_number(part.distance)
        what = f"{item.reps} × {each} {catalogue.drills[part.do].title}"
        return BoardLine(
            depth,
            what,
            _joined(effort_words(catalogue, part.effort), waves_words(item.waves)),
            go,
            gear,
            item.note,
            _go_of(catalogue, item.sendoff),
        )
    parts = ", then ".join(_part(catalogue, part) for part in item.parts)
    what = f"{item.reps} × {show_number(item.distance)} as {parts}"
    return BoardLine(
        depth, what, waves_words(item.waves), go, gear, item.note, _go_of(catalogue, item.sendoff)
    )


def waves_words(waves: Waves | None) -> str:
    """Who swims while who rests, in words: ``in 2 waves``, ``2 at a time``."""
    if waves is None:
        return ""
    return f"in {waves.number} waves" if waves.number else f"{waves.swimmers} at a time"


def _joined(*words: str) -> str:
    return ", ".join(filter(None, words))


def _go_of(catalogue: Catalogue, sendoff: Sendoff | None) -> tuple[tuple[str, str, str], ...]:
    times = sendoff.by_group if sendoff else {}
    return tuple(
        (group, catalogue.lane_groups[group].title, f"on {_times(own)}")
        for group, own in times.items()
    )


def _part(catalogue: Catalogue, part: Part) -> str:
    gear = f" with {gear_words(catalogue, part.gear)}" if part.gear else ""
    effort = effort_words(catalogue, part.effort)
    rest = f", {show_time(part.rest)} rest" if part.rest else ""
    far = TO_MARK[part.to] if part.to else show_number(part.distance)
    passing = ", gear changed in passing" if part.in_passing else ""
    return f"{far} {catalogue.drills[part.do].title} ({effort}){gear}{passing}{rest}"


def effort_words(catalogue: Catalogue, effort: Effort) -> str:
    """An effort in words: ``steady``, ``descend steady to fast``."""

    def title(word: str) -> str:
        return catalogue.efforts[word].title.lower()

    match effort:
        case Hold(word):
            return title(word)
        case Descend(first, last):
            return f"descend {title(first)} to {title(last)}"
        case Build(first, last):
            return f"build {title(first)} to {title(last)}"
        case Rotate(words):
            return "in turn " + ", ".join(map(title, words))


def gear_words(catalogue: Catalogue, gear: tuple[str, ...]) -> str:
    """Gear by title."""
    return " and ".join(catalogue.gear[id].title.lower() for id in gear)


def sendoff_words(catalogue: Catalogue, sendoff: Sendoff) -> str:
    """A send-off in words: ``on 1:05``, one for each rep, or where lane groups differ one for each
    of them.
    """
    if sendoff.every:
        return f"on {_times(sendoff.every)}"
    if len(set(sendoff.by_group.values())) == 1 and len(sendoff.by_group) > 1:
        return f"on {_times(next(iter(sendoff.by_group.values())))}"
    return "; ".join(
        f"{catalogue.lane_groups[group].title} on {_times(own)}"
        for group, own in sendoff.by_group.items()
    )


def _times(times: Times) -> str:
    return ", ".join(map(show_time, times))


def board_text(lines: list[BoardLine]) -> str:
    """The whiteboard for a terminal."""
    shown = []
    for line in lines:
        parts = [
            f"{line.whose}: {line.what}" if line.whose else line.what,
            line.effort,
            f"with {line.gear}" if line.gear else "",
            line.go,
            f"({line.note})" if line.note else "",
        ]
        shown.append("    " * line.depth + ", ".join(filter(None, parts)))
    return "\n".join(shown)


def facet_title(catalogue: Catalogue, facet: str, word: str) -> str:
    """How a facet's word is shown: the vocabulary's title, or gear by title."""
    if facet == "gear":
        return (
            " + ".join(catalogue.gear[id].title for id in word.split("+"))
            if word != "none"
            else "No gear"
        )
    return catalogue.words(VOCABULARY_OF[facet])[word].title


def in_order(catalogue: Catalogue, facet: str, split: Mapping[str, object]) -> list[str]:
    """The words of a facet's split in the order of their vocabulary; gear as it appears."""
    if facet == "gear":
        return list(split)
    return [word for word in catalogue.words(VOCABULARY_OF[facet]) if word in split]
