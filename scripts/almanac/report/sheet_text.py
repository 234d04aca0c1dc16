"""The run sheet of a practice in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from almanac.analysis.figures import table
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.practices import PartForGroup
from almanac.arithmetic.crews import Crew
from almanac.arithmetic.moment import Missing
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetRow
from almanac.checks.pool_words import lane_words
from almanac.model.catalogue import Catalogue
from almanac.model.pool import START_END
from almanac.model.practice import Doing
from almanac.report.hands_words import help_words
from almanac.report.known_words import basis_words, no_number_words
from almanac.report.sheet_moments import cell_words, moment_words
from almanac.report.shown import with_working
from almanac.units import clock_time, show_time


def sheet_lines(catalogue: Catalogue, summary: PracticeSummary) -> Iterator[str]:
    """The run sheet by the clock."""
    start = summary.practice.slot.start
    for row in summary.sheet:
        before = "".join(f", {words}" for words in before_words(row))
        yield f"{moment_words(start, row.starts)}  {part_title(catalogue, row)}{before}"
        for words in where_words(catalogue, row):
            yield f"         {words}"
        for cell in row.cells:
            yield f"         {cell.crew.title} {cell_words(start, cell)}"
            for figure in other_figures(summary, row, cell.group):
                yield f"         {cell.crew.title} {with_working(figure)}"
        if row.joins:
            yield "         latecomers may join"
    yield slack_words(summary)
    yield from missing_words(catalogue, summary)
    yield from assumed_words(catalogue, summary)


def before_words(row: SheetRow) -> Iterator[str]:
    """What goes before a part: talk, changing over, changing gear."""
    if row.talk_s:
        yield f"{show_time(row.talk_s)} talk before it"
    if row.change_s:
        yield f"{show_time(row.change_s)} to change over"
    if row.gear_s:
        yield f"{show_time(row.gear_s)} to change gear"


def short_before(row: SheetRow) -> Iterator[str]:
    """The same in short."""
    for word, seconds in (("talk", row.talk_s), ("change", row.change_s), ("gear", row.gear_s)):
        if seconds:
            yield f"{word} {show_time(seconds)} first"


def part_title(catalogue: Catalogue, row: SheetRow) -> str:
    """A part by its name, and who does it where not all do."""
    name = part_name(catalogue, row)
    return name if row.is_for_all else f"{name}, {crew_titles(row.run.crews)}"


def part_name(catalogue: Catalogue, row: SheetRow) -> str:
    """A part by its word and its set, and the turn where groups change over."""
    run = row.run
    title = catalogue.words("practice-parts")[run.word].title
    if run.swim_set:
        title += f": {run.swim_set.title}{_asked_words(run.doing)}"
    return f"{title}, turn {row.stage.turn}" if row.stage.turn else title


def _asked_words(doing: Doing) -> str:
    """The rounds or reps that a set is asked for."""
    counts = ((doing.rounds, "round"), (doing.reps, "rep"))
    return "".join(f", {count} {what}{'s' * (count != 1)}" for count, what in counts if count)


def crew_titles(crews: Iterable[Crew]) -> str:
    """Crews by title."""
    return " and ".join(crew.title for crew in crews) or "nobody"


def where_words(catalogue: Catalogue, row: SheetRow) -> Iterator[str]:
    """Where a part is, who takes it, and which lanes each crew has where they are not its own."""
    doing = row.run.doing
    if doing.place:
        yield f"Where: {doing.place}"
    if doing.led_by:
        yield f"Taken by: {catalogue.words('roles')[doing.led_by].title.lower()}"
    if doing.end != START_END:
        yield "Leaves from the other end (turn)"
    for crew in row.run.crews:
        if crew.group in doing.lanes:
            yield f"{crew.title} in {lane_words(crew.lanes)}"
    coach = catalogue.words("roles")[doing.led_by].title.lower() if doing.led_by else "coach"
    if row.helps:
        yield f"Helpers: {'; '.join(help_words(own, coach) for own in row.helps)}"


def other_figures(summary: PracticeSummary, row: SheetRow, group: str) -> list[NamedFigure]:
    """The figures of a part for a lane group that the run sheet has no place of its own for."""
    part = PartForGroup(row.run, group, summary.course.unit.value)
    return table("practice", "part", "sheet", part, ("distance", "clock"))


def slack_words(summary: PracticeSummary, starts: str = "") -> str:
    """Whether it fits the slot; ``starts`` as HH:MM where that is not the slot's own time."""
    slack, minutes = summary.slack_s, summary.practice.slot.minutes
    start = starts or summary.practice.slot.start
    if slack is None:
        earliest = clock_time(start, summary.ends.s)
        over = summary.ends.s - 60 * minutes
        beyond = f", {show_time(over)} over the slot of {minutes} minutes" if over > 0 else ""
        return f"Ends from {earliest} on{beyond}; when is not known."
    end = clock_time(start, summary.ends_s or 0)
    if slack < 0:
        return f"Ends at {end}: {show_time(-slack)} over the slot of {minutes} minutes."
    return f"Ends at {end}: {show_time(slack)} to spare in a slot of {minutes} minutes."


def end_words(summary: PracticeSummary) -> str:
    """The same in short, where the slot stands beside it: ``Ends 20:10:15, 4:45 to spare``."""
    if summary.slack_s is None:
        return slack_words(summary)
    end = clock_time(summary.practice.slot.start, summary.ends_s or 0)
    beyond = "over" if summary.slack_s < 0 else "to spare"
    return f"Ends {end}, {show_time(abs(summary.slack_s))} {beyond}."


def slot_words(summary: PracticeSummary) -> str:
    """The slot by the clock: ``18:45 to 20:15``."""
    slot = summary.practice.slot
    return f"{slot.start} to {clock_time(slot.start, 60 * slot.minutes)[:5]}"


def missing_words(catalogue: Catalogue, summary: PracticeSummary) -> Iterator[str]:
    """Why times are not known: each part without a length, once a lane group."""
    for missing in summary.ends.missing:
        yield f"Not known: {missing_sentence(catalogue, summary, missing)}"


def assumed_words(catalogue: Catalogue, summary: PracticeSummary) -> Iterator[str]:
    """What the times of each part stand on where some are assumed: each thing once, with all the
    lane groups that it holds of.
    """
    for row in summary.sheet:
        word = catalogue.words("practice-parts")[row.run.word].title.lower()
        whose: dict[str, list[str]] = {}
        for cell in row.cells:
            run = row.run.clocks[cell.group]
            for line in basis_words(catalogue, run) if run.assumed else ():
                whose.setdefault(line, []).append(cell.crew.title)
        for line, titles in whose.items():
            yield f"Part {row.stage.number} ({word}), {'; '.join(titles)}: {line}"


def halves_words(summary: PracticeSummary) -> Iterator[str]:
    """Whose figures are those of a half alone."""
    for group in summary.halved:
        yield (
            f"{summary.groups[group].title}: its halves do different things. Distance, minutes, "
            "rating and load are its first half's."
        )


def missing_sentence(catalogue: Catalogue, summary: PracticeSummary, missing: Missing) -> str:
    """One part without a length: for whom, and why."""
    row = next(row for row in summary.sheet if row.run.path == missing.path)
    word = catalogue.words("practice-parts")[row.run.word].title.lower()
    reasons = (no_number_words(catalogue, reason) for reason in missing.reasons)
    why = "; ".join(reasons) or "a target is not known"
    group = summary.groups[missing.group].title
    return f"how long part {row.stage.number} ({word}) takes {group}, because {why}"


LATECOMERS = (
    "Latecomers join with their own group at the start of a part where that is said: one that "
    "begins gently and holds nothing resisted or under water. Never in the middle of a part."
)
