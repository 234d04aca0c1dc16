"""What a reviewer must not miss, in whole sentences, for the top of a review."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby

from almanac.analysis.comparison import Comparison
from almanac.analysis.figure_moves import FigureMove
from almanac.findings import Place, counted
from almanac.model.guard_changes import ACCEPTED, GONE, LOOSER
from almanac.model.loosened import STEPS, Loosened, is_danger
from almanac.report.fenced import fenced, linked
from almanac.report.review.dangers import gone, is_gone, who
from almanac.report.review.files import first_of, of_checks, of_file
from almanac.report.review.many import of_many, of_word, together
from almanac.report.set_json import dotted
from almanac.report.values_told import (
    WHOLE,
    amount,
    differences,
    in_words,
    is_sentence,
)
from almanac.report.working_text import show_value

_CHECKS = (
    "scripts/",
    "tests/",
    "site_src/",
    ".github/",
    ".ci/",
    ".pre-commit",
    "pyproject.toml",
    "requirements",
)
_BY_KIND = {
    "policy": "Limit loosened",
    "club": "Fact of the club loosened",
    "practice": "Fewer adults",
    "timetable": "More adults counted on",
    "set": "More in a lane",
    "benchmark": "Longer test",
}
_OF_TIME = {"factor", "pace_factor", "change_s", "share_of_best"}  # rest is reckoned with these


def first_lines(
    review: Comparison, address: str, new: Iterable[str], brief: bool = False
) -> Iterator[str]:
    """One list item each, the gravest first; dangers that go stand above them
    (``review/dangers.py``). ``new`` are lines on what is new (``review/new.py``). ``brief`` tells
    what is alike in many entries in one.
    """
    for change in review.entries:
        if change.what == "unreadable":
            link = linked(change.file, Place(change.file), address)
            yield f"- **Cannot be read.** {link}: nothing of it is in this review but its findings."
    if checks := [file for file in review.files if file.path.startswith(_CHECKS)]:
        yield f"- {of_checks(checks, address)}"
    if times := [one for one in review.loosened if _is_club_time(one)]:
        yield f"- {_of_times(times, address)}"
    loosened = [one for one in review.loosened if not (is_gone(one) or _is_club_time(one))]
    for own in together(loosened) if brief else ([one] for one in loosened):
        yield f"- {_sentences(own, review, address)}"
    yield from new
    more = [
        move
        for move in review.figures
        if move.near and move.name == "distance" and move.before is not None and _growth(move) > 0
    ]
    for moves in _by_entry(more) if brief else ([move] for move in more):
        yield f"- **More work.** {_more(moves)}"
    for file in review.files:
        if said := of_file(file):
            link = linked(file.path, Place(file.path), address if file.mode_after else "")
            yield f"- {link} is {file.what}: {said}."


def _is_club_time(one: Loosened) -> bool:
    """Whether it is a time of a lane group that becomes faster: after a day of tests many do."""
    return one.kind == "club" and one.path[-1:] == ("time",) and one.sort == LOOSER


def _of_times(times: Sequence[Loosened], address: str) -> str:
    named = [
        f"{fenced(dotted(one.path[1:-1]))} from {amount(one.before)} to {amount(one.after)}"
        for one in times
    ]
    club = linked("club", Place(times[0].file), address)
    return (
        f"**Times become faster.** {club}: {first_of(named)}."
        " The rest that send-offs leave is reckoned with them."
    )


def _sentences(own: Sequence[Loosened], review: Comparison, address: str) -> str:
    """What is loosened, one or several alike."""
    if len(own) == 1:
        return _sentence(own[0], who(own[0], review, address))
    if own[0].sort == GONE:
        return of_word(own, review, address)
    return of_many(_looser(own[0]), own, review, address)


def _looser(one: Loosened) -> str:
    """What a number that lets more happen is called."""
    if one.path[-1] in _OF_TIME:
        return "Time reckoned otherwise"
    return _BY_KIND.get(one.kind, "Dose raised")


def _sentence(one: Loosened, who: str) -> str:
    where = fenced(dotted(one.path))
    if one.path[0] == STEPS:
        return f"**A step under water is told otherwise.** {who}: {_of_step(one)}"
    if one.sort == GONE:
        return gone(one, who)
    if one.sort == ACCEPTED:
        return f"**Accepted.** {_accepted(one, who, where)}"
    if one.sort == LOOSER:
        reason = one.after.get("reason") if isinstance(one.after, Mapping) else None
        why = f" The reason given: {fenced(reason, WHOLE)}." if reason else ""
        return (
            f"**{_looser(one)}.** {who}: {where} goes from {amount(one.before)} to"
            f" {amount(one.after)}.{why}"
        )
    if not (is_danger(one.before) or is_sentence(one.before) or is_sentence(one.after)):
        is_gravity = one.kind == "vocabulary" and one.path[-1] == "gravity"
        what = "A danger is called more or less grave" if is_gravity else "Other limits hold"
        return f"**{what}.** {who}: {_other(one, where)}; what is allowed hangs on it."
    what = "A danger is told otherwise" if is_danger(one.before) else "A guard is told otherwise"
    return f"**{what}.** {who}, {where}: {differences(one.before, one.after)}."


def _other(one: Loosened, where: str) -> str:
    """What stands there now; of the words of a list those that come and go, where some do."""
    if one.kind == "vocabulary" and one.path == ("words",):
        old, new = (str(words).split(", ") for words in (one.before, one.after))
        told = [
            f"{fenced(', '.join(words), WHOLE)} {what}"
            for what, words in (
                ("no longer stands there", [word for word in old if word not in new]),
                ("is new", [word for word in new if word not in old]),
            )
            if words
        ]
        if told:
            return f"of the {where} " + ", and ".join(told)
    before, after = (
        "nothing said" if value is None else in_words(value) for value in (one.before, one.after)
    )
    return f"{where} goes from {before} to {after}"


def _of_step(one: Loosened) -> str:
    if one.before is None:
        return f"it now says as well: {in_words(one.after)}."
    if one.after is None:
        return f"it no longer says: {in_words(one.before)}."
    return f"{differences(one.before, one.after)}."


def _accepted(one: Loosened, who: str, where: str) -> str:
    if not isinstance(one.after, Mapping) or "check" not in one.after:
        return f"{who} now holds under {where}: {in_words(one.after)}."
    check, until, by, reason = (
        fenced(one.after.get(name, ""), WHOLE) for name in ("check", "until", "by", "reason")
    )
    role = f", in the name of {by}" if "by" in one.after else ""
    earlier = f" Before: {in_words(one.before)}." if one.before is not None else ""
    return (
        f"{who} accepts what the check {check} finds, until {until}{role}."
        f" The reason given: {reason}.{earlier}"
    )


def _by_entry(moves: Iterable[FigureMove]) -> Iterator[list[FigureMove]]:
    """The moves of each entry together, the largest of them first."""
    for _, own in groupby(moves, key=lambda move: (move.kind, move.id)):
        yield sorted(own, key=_growth, reverse=True)


def _growth(move: FigureMove) -> float:
    return (move.after or 0) - (move.before or 0)


def _more(moves: Sequence[FigureMove]) -> str:
    move, *others = moves
    group = f" for {fenced(move.whose)}" if move.whose else ""
    before, after = (show_value(value or 0, move.unit) for value in (move.before, move.after))
    also = f", and for {counted(len(others), 'other lane group')}" if others else ""
    return (
        f"{move.kind.capitalize()} {fenced(move.id)} grows{group} from {before} to {after}{also}."
    )
