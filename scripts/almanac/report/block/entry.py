"""A planned block as an entry of the catalogue, in YAML as entries are written."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from almanac.arithmetic.planning.model import Plan
from almanac.arithmetic.planning.wishes import BlockWishes, Permille
from almanac.model.catalogue import Catalogue
from almanac.report.block.entry_weeks import by_weight, small, week_lines
from almanac.report.planning.problem import Planning
from almanac.report.planning.request import BlockRequest, meet_of
from almanac.source.scalars import in_quotes

LINE, SUMMARY_MOST = 112, 120
_WORDS = {2: "Two", 3: "Three", 4: "Four", 5: "Five", 6: "Six", 7: "Seven", 8: "Eight",
          9: "Nine", 10: "Ten", 12: "Twelve"}  # fmt: skip


def block_text(
    planning: Planning,
    asked: BlockRequest,
    plan: Plan,
    met: Sequence[str],
    unserved: Collection[str] = (),
) -> str:
    """The text of the entry; ``met`` are the shares that the plan keeps to, ``unserved`` the goals
    that nothing in it serves.
    """
    return "\n".join([*_head(planning, asked, unserved), *week_lines(planning, asked, plan),
                      *_tail(planning, asked, met)]) + "\n"  # fmt: skip


def _head(planning: Planning, asked: BlockRequest, unserved: Collection[str]) -> Iterator[str]:
    catalogue, wishes = planning.analysis.catalogue, planning.wishes
    squad = catalogue.club.squads[asked.squad].title
    chief = " and ".join(_titles(catalogue, wishes)[:2])
    weeks = _count(len(wishes.weeks))
    yield f"title: {in_quotes(f'{squad}: {chief}'[:60].rstrip(', '))}"
    summary = f"{weeks} for {squad}: {', '.join(_titles(catalogue, wishes))}."
    if len(summary) > SUMMARY_MOST:
        summary = f"{weeks} for {squad}: {chief}."
    yield f"summary: {in_quotes(summary)}"
    yield f"squad: {asked.squad}"
    served = [goal for goal in by_weight(wishes) if goal not in unserved]
    yield f"goals: [{', '.join(served or by_weight(wishes))}]"
    yield f"starts: {wishes.first}"
    yield "purpose: >-"
    yield from (f"  {line}" for line in _wrapped(_purpose(planning, asked)))


def _titles(catalogue: Catalogue, wishes: BlockWishes) -> list[str]:
    words = catalogue.words("goals")
    return [words[goal].title.lower() for goal in by_weight(wishes)]


def _count(weeks: int) -> str:
    return f"{_WORDS.get(weeks, str(weeks))} weeks" if weeks > 1 else "A week"


def _purpose(planning: Planning, asked: BlockRequest) -> str:
    """What it is for and how it will show, from the wishes."""
    catalogue, wishes = planning.analysis.catalogue, planning.wishes
    titles = _titles(catalogue, wishes)
    said = [f"For {titles[0]} above all" if len(titles) > 1 else f"For {titles[0]}"]
    if len(titles) > 1:
        said[0] += f", beside it {', '.join(titles[1:])}"
    said[0] += f", over {_count(len(wishes.weeks)).lower()}."
    tested: dict[str, list[int]] = {}
    for number, week in enumerate(wishes.weeks, 1):
        for benchmark in week.benchmarks:
            tested.setdefault(benchmark, []).append(number)
    again = {benchmark: weeks for benchmark, weeks in tested.items() if len(weeks) > 1}
    if again:
        names = " and ".join(f"the {small(catalogue.benchmarks[id].title)}" for id in again)
        first, last = (sorted({weeks[n] for weeks in again.values()}) for n in (0, -1))
        one = len(again) == 1
        said.append(
            f"It has worked when {names} of {_weeks_of(last)} {'is' if one else 'are'} quicker "
            f"than {'that' if one else 'those'} of {_weeks_of(first)} by more than "
            f"{'the test calls' if one else 'the tests call'} a change."
        )
    else:
        said.append("It has worked when what each evening asks for holds to its last repeat.")
    meet = meet_of(catalogue, asked)
    if meet:
        said.append(f"It leads to {meet.title}.")
    said.append("Planned by almanac compose block from the practices of the squad.")
    return " ".join(said)


def _weeks_of(numbers: Sequence[int]) -> str:
    return f"week{'s' * (len(numbers) > 1)} {' and '.join(map(str, numbers))}"


def _wrapped(text: str) -> Iterator[str]:
    line = ""
    for word in text.split():
        if line and len(line) + 1 + len(word) > LINE:
            yield line
            line = word
        else:
            line = f"{line} {word}".strip()
    yield line


def _tail(planning: Planning, asked: BlockRequest, met: Sequence[str]) -> Iterator[str]:
    wishes = planning.wishes
    own = planning.limits.light_days is not None
    if wishes.taper and own:
        yield f"taper: {{from: {wishes.taper.first}, to: {wishes.taper.last}}}"
    if wishes.race:
        yield f"race_day: {wishes.race}"
    if asked.meet:
        yield f"meet: {asked.meet}"
    kept = {name: own for name, own in wishes.shares.items() if name in met}
    if kept:
        yield "balance:"
        yield from _ranges(kept, 2)
    yield from _wishes(
        planning, asked, {n: own for n, own in wishes.shares.items() if n not in met}
    )


def _wishes(
    planning: Planning, asked: BlockRequest, missed: Mapping[str, Permille]
) -> Iterator[str]:
    """What was wished and nothing else in the block says."""
    goals = ", ".join(
        f"{goal}: {planning.wishes.goals[goal]}" for goal in by_weight(planning.wishes)
    )
    yield "wishes:"
    yield f"  goals: {{{goals}}}"
    if missed:
        yield "  shares:"
        yield from _ranges(missed, 4)
    if planning.wishes.strokes:
        yield f"  strokes: {planning.wishes.strokes / 1000:g}"
    if planning.aims.full:
        yield f"  loads: [{', '.join(map(str, planning.aims.loads(asked.loads)))}]"
        yield f"  full_load: {planning.aims.full}"


def _ranges(shares: Mapping[str, Permille], indent: int) -> Iterator[str]:
    for name, (least, most) in shares.items():
        yield f"{indent * ' '}{name}: {{from: {least / 1000:g}, to: {most / 1000:g}}}"
