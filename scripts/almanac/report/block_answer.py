"""The answer of ``compose block``: planned figures beside the wishes, and which wish to drop."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.planning_wishes import BlockLimits, BlockWishes
from almanac.arithmetic.practice_aims import benchmarks_run
from almanac.findings import Finding, as_text, counted
from almanac.report.block_again import again_words
from almanac.report.block_judged import JudgedBlock
from almanac.report.block_wishes import (
    OF_BLOCK,
    WishRow,
    wish_lines,
    wish_rows,
)
from almanac.units import show_number, show_share

OPTIONS = {
    "kick_share": "--kick",
    "supine_share": "--on-back",
    "resisted_share": "--resisted",
    "fast_share": "--fast",
    "dolphin_share": "--dolphin",
}


@dataclass(frozen=True)
class BlockAnswer:
    """A block beside its wishes. ``how`` says how it was chosen, "" for one that was only judged;
    ``empty`` are slots in which nothing may stand, ``left`` those that are left out, with why.
    """

    analysis: Analysis
    id: str
    judged: JudgedBlock
    wishes: BlockWishes
    limits: BlockLimits
    findings: tuple[Finding, ...] = ()
    how: str = ""
    empty: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    composed: tuple[str, ...] = ()

    @property
    def rows(self) -> list[WishRow]:
        """Every wish beside what is planned; of a race the taper too, where there is none."""
        own = self.judged.summary
        rows = wish_rows(self.analysis.catalogue, own)
        if self.wishes.taper and self.wishes.race and own.taper is None:
            what = f"a taper before the race on {self.wishes.race}"
            rows.append(WishRow(("taper", "none"), what, "one", "none", False))
        return rows

    def is_run(self, benchmark: str) -> bool:
        """Whether some practice of the squad runs a benchmark."""
        squad, known = self.judged.summary.block.squad, self.analysis.catalogue.benchmarks
        return any(
            benchmark in benchmarks_run(known, summary)
            for summary in self.analysis.practices.values()
            if summary.practice.squad == squad
        )


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
    yield from _not_met(answer)
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


def _not_met(answer: BlockAnswer) -> Iterator[str]:
    """Each wish that is not met, with what to drop or to change; and main sets that come again."""
    for row in answer.rows:
        if row.met is False:
            yield from (f"not met: {own}" for own in _drops(answer, row))
    yield from again_words(answer.analysis.catalogue, answer.judged.again)


def _drops(answer: BlockAnswer, row: WishRow) -> Iterator[str]:
    """What to drop or to change for a wish that is not met."""
    kind, of = row.key
    if kind == "load":
        yield (
            f"week {of} weighs {row.planned} of a full one ({row.wished} was wished); "
            f"{_without_tests(answer, int(of))}take it as it is, or name other --loads"
        )
    elif kind == "share":
        yield f"{row.planned} {row.what}; drop {OPTIONS[of]}, or let it reach that"
    elif kind == "goal":
        mend = "drop it" if row.wished == OF_BLOCK else "give it less weight, or drop it"
        yield f"{row.what} in {row.planned}; {mend}"
    elif kind == "stroke":
        yield f"{row.what}: {row.planned}; drop --strokes, or ask for less"
    elif kind == "test":
        weeks = [number for benchmark, number in answer.judged.untested if benchmark == of]
        if not answer.is_run(of):
            yield f"no practice of the squad runs {of}: write one that does, or drop that --test"
            return
        for number in weeks:
            yield f"{of} is not run in week {number}; drop that --test"
    elif of == "none":
        yield f"{row.what}: {row.planned}; make its last weeks lighter and mark them as taper"
    else:
        yield f"{row.what}: {row.planned}; change the race day, the taper or the loads"


def _without_tests(answer: BlockAnswer, number: int) -> str:
    """Of a week that is too heavy and runs a test that other weeks run too: the wish without it."""
    week = answer.judged.weeks[number - 1]
    if week.of_full is None or week.wished is None or week.of_full <= week.wished:
        return ""
    asked: dict[str, list[int]] = {}
    for other, own in enumerate(answer.judged.summary.block.weeks, 1):
        for benchmark in own.benchmarks:
            asked.setdefault(benchmark, []).append(other)
    ways = [
        f"--test {benchmark}={','.join(str(other) for other in weeks if other != number)}"
        for benchmark, weeks in asked.items()
        if number in weeks and len(weeks) > 1 and (benchmark, number) not in answer.judged.untested
    ]
    return f"run its test in the other weeks alone ({' '.join(ways)}), " if ways else ""


def answer_json(answer: BlockAnswer) -> Mapping[str, Any]:
    """The contract of ``--json``, version 1."""
    own = answer.judged
    return {
        "version": 1,
        "block": answer.id,
        "title": own.summary.block.title,
        "starts": own.summary.block.starts.isoformat(),
        "group": own.summary.group,
        "how": answer.how,
        "weeks": [
            {
                "number": week.number,
                "kind": week.kind,
                "load": round(week.load),
                "of_full": None if week.of_full is None else round(week.of_full),
                "wished": week.wished,
                "races": round(week.races),
                "metres": round(week.metres),
                "kick_share": _rounded(week.kick),
                "supine_share": _rounded(week.supine),
                "days": {
                    day.name: [practice.practice.id for practice in day.practices]
                    for day in plan.days
                    if day.practices
                },
            }
            for week, plan in zip(own.weeks, own.summary.weeks, strict=True)
        ],
        "shares": [
            {
                "name": share.name,
                "share": _rounded(share.share),
                "from": share.wished.least,
                "to": share.wished.most,
                "met": share.is_met,
            }
            for share in own.shares
        ],
        "goals": [
            {"goal": goal.name, "practices": goal.found, "wished": goal.wished}
            for goal in own.goals
        ],
        "not_met": [*_not_met(answer)],
        "empty": [*answer.empty],
        "left_out": [*answer.left],
        "composed": [*answer.composed],
        "findings": [finding.message for finding in answer.findings],
    }


def _rounded(share: float | None) -> float | None:
    return None if share is None else round(share, 3)
