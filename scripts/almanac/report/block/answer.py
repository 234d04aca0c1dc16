"""The answer of ``compose block``: a block beside its wishes, and which of them to drop."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.planning.wishes import BlockLimits, BlockWishes
from almanac.arithmetic.practice_aims import benchmarks_run
from almanac.findings import Finding
from almanac.report.block.again import again_words
from almanac.report.block.judged import JudgedBlock
from almanac.report.block.wishes import OF_BLOCK, WishRow, wish_rows

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


def not_met(answer: BlockAnswer) -> Iterator[str]:
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
