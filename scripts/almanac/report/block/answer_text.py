"""The answer of ``compose block`` for a terminal: planned figures beside the wishes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from almanac.findings import counted
from almanac.report.block.answer import BlockAnswer, not_met
from almanac.report.block.judged import JudgedBlock
from almanac.report.block.wishes import wish_lines
from almanac.report.findings_shown import as_text
from almanac.units import show_number, show_share


def answer_text(answer: BlockAnswer) -> str:
    """The answer for a terminal."""
    return "\n".join(_lines(answer))


def _lines(answer: BlockAnswer) -> Iterator[str]:
    own, block = answer.judged, answer.judged.summary.block
    group = answer.analysis.catalogue.lane_groups[own.summary.group].title
    sessions = counted(sum(week.sessions for week in own.weeks), "practice")
    weeks = counted(len(own.weeks), "week")
    yield f"{block.title}: {weeks} from {block.starts}, {sessions}; figures of {group}"
    yield from _table(answer)
    yield from _beside(answer)
    yield from not_met(answer)
    yield from (*answer.empty, *answer.left)
    if answer.composed:
        yield f"Composed beside it: {', '.join(answer.composed)}"
    if answer.how:
        yield answer.how
    if answer.findings:
        yield as_text(list(answer.findings), 1)


def _table(answer: BlockAnswer) -> Iterator[str]:
    own = answer.judged
    wished = any(week.wished is not None for week in own.weeks)
    head = "week  kind      load  of full" + ("  wished" if wished else "")
    yield f"{head}  metres   kick  on back  practices"
    for week, plan in zip(own.weeks, own.summary.weeks, strict=True):
        share = "-" if week.of_full is None else show_number(week.of_full, 0)
        days = [
            f"{day.name} {', '.join(practice.practice.id for practice in day.practices)}"
            for day in plan.days
            if day.practices
        ]
        row = f"{week.number:>4}  {week.kind:<8}  {show_number(week.load, 0):>4}  {share:>7}"
        if wished:
            row += f"  {'-' if week.wished is None else week.wished:>6}"
        metres = show_number(week.metres, 0)
        yield f"{row}  {metres:>6}  {show_share(week.kick):>5}  {show_share(week.supine):>7}  " + (
            "; ".join(days)
        )
    for week in own.weeks:
        if week.races:
            yield (
                f"week {week.number}: what is of a full one is without its races, which weigh "
                f"{show_number(week.races, 0)} beside it, by their minutes and rating"
            )


def _beside(answer: BlockAnswer) -> Iterator[str]:
    """Planned figures beside the wishes, those that are met and those that are not."""
    own = answer.judged
    yield from wish_lines(answer.rows)
    yield f"  {counted(own.warm_ups, 'warm-up')} in turn"
    yield from _most_often(own)


def _most_often(own: JudgedBlock) -> Iterator[str]:
    """The practice that comes more often than any other, where it comes again."""
    weeks = [[one.practice.id for day in week.days for one in day.practices]
             for week in own.summary.weeks]  # fmt: skip
    count = Counter(id for week in weeks for id in week)
    for id, times in count.most_common(1):
        if times > 1:
            inside = sum(id in week for week in weeks)
            yield (
                f"  most often: {id}, {times} of {count.total()} practices, in {inside} of "
                f"{counted(len(weeks), 'week')}"
            )
