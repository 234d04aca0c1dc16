"""Puts small slips into the arithmetic, one at a time, and tells which of them no test meets.

Each mutant (`mutate.py`) runs in a forked process against the tests that run its lines, the
quickest first, until one fails (`forks.py`). What is found is kept in `build/mutants/`, so that a
stopped run goes on where it was; any change to the code or the tests starts afresh. Mutants
that change nothing anyone could see stand in `equivalent.yml`, each with its reason; an entry that
fits no mutant any more is told. Ends with 1 where the score is below the least.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import random
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

import forks
import yaml
from forks import ROOT
from mutate import Mutant, mutants
from outcomes import EQUIVALENT, KILLED, NOT_RUN, SURVIVED, TIMED_OUT, Book, Plain, plain_run

LISTED = Path(__file__).with_name("equivalent.yml")
TESTS = "tests/test_arithmetic_*.py"
WATCHED = ("tests/*.py", "scripts/almanac/**/*.py", "scripts/mutation/*.py")
LEAST_SCORE = 95.0  # percent of the mutants that are not equivalent
SPARE_S = 20  # of the processor's time, on top of ten times what the tests of a mutant take


def names(every: Iterable[Mutant]) -> dict[str, Mutant]:
    """Mutants by a name that outlives a move of its lines: module, place, what changes, and a count
    of those alike.
    """
    seen: Counter[str] = Counter()
    named = {}
    for mutant in every:
        alike = f"{mutant.module}.{mutant.place}: {mutant.was} -> {mutant.now}"
        seen[alike] += 1
        named[f"{alike} #{seen[alike]}"] = mutant
    return named


def equivalents(named: Mapping[str, Mutant]) -> tuple[set[str], list[str]]:
    """The names of the mutants that are listed as equivalent, and the entries that fit none."""
    by_text = defaultdict(set)
    for name, mutant in named.items():
        by_text[f"{mutant.module}.{mutant.place}", mutant.was, mutant.now].add(name)
    same, stale = set(), []
    for place, entries in (yaml.safe_load(LISTED.read_text("utf-8")) or {}).items():
        for entry in entries:
            assert entry["why"], f"no reason given in {place}"
            fitting = by_text.get((place, entry["was"], entry["now"]), set())
            same |= fitting
            stale += [] if fitting else [f"{place}: {entry['was']} -> {entry['now']}"]
    return same, stale


def run(chosen: Mapping[str, Mutant], plain: Plain, book: Book, jobs: int) -> None:
    """Try every mutant that the book does not know yet, ``jobs`` at a time."""
    waiting = [name for name in chosen if name not in book.found]
    running: dict[int, str] = {}  # by process
    total, started = len(waiting), time.monotonic()
    told = started
    while waiting or running:
        while waiting and len(running) < jobs:
            name = waiting.pop()
            mutant, batches = chosen[name], plain.batches(chosen[name])
            if not any(batches):
                book.note(name, NOT_RUN)
                continue
            limit = SPARE_S + 10 * sum(plain.seconds[test] for batch in batches for test in batch)
            running[forks.fork_mutant(mutant.module, mutant.number, batches, limit)] = name
        if running:
            pid, status = os.wait()
            name, code = running.pop(pid), os.waitstatus_to_exitcode(status)
            if code in (3, 5):  # pytest itself failed, or found none of the tests
                sys.exit(f"pytest ended with {code} for {name}")
            book.note(name, TIMED_OUT if code < 0 else KILLED if code else SURVIVED)
        if time.monotonic() - told > 30:
            told, left = time.monotonic(), len(waiting)
            print(f"{total - left} of {total}, {told - started:.0f} s", flush=True)
    book.save()


def table(chosen: Mapping[str, Mutant], found: Mapping[str, str]) -> float:
    """Print what became of the mutants of each module; the score of all of them in percent."""
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for name, mutant in chosen.items():
        for row in (mutant.module, "all"):
            counts[row][found[name]] += 1
    columns = (KILLED, TIMED_OUT, SURVIVED, NOT_RUN, EQUIVALENT)
    print(f"\n{'module':16}" + "".join(f"{column:>11}" for column in columns) + f"{'score':>10}")
    score = 100.0
    for row in sorted(counts, key=lambda row: (row == "all", row)):
        count = counts[row]
        real = sum(count.values()) - count[EQUIVALENT]
        score = 100 * (count[KILLED] + count[TIMED_OUT]) / real if real else 100.0
        print(
            f"{row:16}" + "".join(f"{count[column]:11}" for column in columns) + f"{score:8.1f} %"
        )
    return score


def show(chosen: Mapping[str, Mutant], found: Mapping[str, str]) -> None:
    """Print each mutant that no test met, as lines of a difference."""
    for name, mutant in chosen.items():
        if found[name] in (SURVIVED, NOT_RUN):
            print(
                f"\n{mutant.module}.py:{mutant.line} {mutant.module}.{mutant.place} ({found[name]})"
            )
            print("\n".join([f"- {line}" for line in mutant.was.splitlines()]))
            print("\n".join([f"+ {line}" for line in mutant.now.splitlines()]))


def digest_of(paths: Iterable[Path]) -> str:
    """One short word for the bytes of files."""
    digest = hashlib.sha256()
    for path in sorted(paths):
        digest.update(str(path).encode() + path.read_bytes())
    return digest.hexdigest()[:16]


def arguments(given: Sequence[str] | None) -> argparse.Namespace:
    """The command line."""
    parser = argparse.ArgumentParser(
        prog="scripts/mutants", description=(__doc__ or "").split("\n\n")[0]
    )
    add: Any = parser.add_argument
    again = "after a change of tests: only those that no test met the last time"
    equivalent = "try those listed as equivalent: a test that meets one proves it wrong"
    add("--module", action="append", help="such as pace; may be given again")
    add("--sample", type=int, metavar="N", help="only N mutants, drawn by chance")
    add("--seed", type=int, default=1, help="of the sample (%(default)s)")
    add("--jobs", type=int, default=os.cpu_count() or 1, help="processes at once (%(default)s)")
    add("--least", type=float, default=LEAST_SCORE, help="the score to reach, in %% (%(default)s)")
    add("--again", action="store_true", help=again)
    add("--equivalent", action="store_true", help=equivalent)
    return parser.parse_args(given)


def drawn(named: Mapping[str, Mutant], asked: argparse.Namespace) -> dict[str, Mutant]:
    """The mutants that the command line asks for."""
    found = [
        (name, mutant)
        for name, mutant in named.items()
        if not asked.module or mutant.module in asked.module
    ]
    if asked.sample is not None:
        found = random.Random(asked.seed).sample(found, min(asked.sample, len(found)))
    return dict(found)


def main(given: Sequence[str] | None = None) -> int:
    """Run; 0 where the score is reached, and every entry of the list still fits a mutant."""
    asked = arguments(given)
    sources = {name: path.read_text("utf-8") for name, path in forks.modules().items()}
    if unknown := set(asked.module or ()) - set(sources):
        sys.exit(f"no module of the arithmetic: {', '.join(sorted(unknown))}")
    named = names(mutant for name, source in sources.items() for mutant in mutants(name, source))
    same, stale = equivalents(named)
    chosen = drawn(named, asked)
    tried = {name: it for name, it in chosen.items() if (name in same) == asked.equivalent}
    forks.prepare()
    watched = [path for place in WATCHED for path in ROOT.glob(place)]
    digest = digest_of(watched)
    plain = plain_run(sorted(str(path.relative_to(ROOT)) for path in ROOT.glob(TESTS)), digest)
    book = Book(digest, asked.again)
    try:
        run(tried, plain, book, asked.jobs)
    finally:
        book.save()
    if asked.equivalent:
        wrong = [name for name in tried if book.found[name] in (KILLED, TIMED_OUT)]
        print("\n".join([f"{len(tried)} listed as equivalent, {len(wrong)} wrongly", *wrong]))
        return int(bool(wrong))
    found = {name: EQUIVALENT if name in same else book.found[name] for name in chosen}
    show(chosen, found)
    score = table(chosen, found)
    for entry in stale:
        print(f"listed as equivalent, but no such mutant: {entry}")
    return int(score < asked.least or bool(stale))


if __name__ == "__main__":
    sys.exit(main())
