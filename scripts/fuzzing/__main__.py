"""Damages entries of the tests' smallest catalogue by chance, and tells every case that ends in an
exception, in silence or at a wrong place. Ends with 1 where there is one.
"""

from __future__ import annotations

import argparse
import multiprocessing
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path

from damage import SORTS, damaged, sound_entries
from judge import Judge

ROOT = Path(__file__).resolve().parents[2] / "tests" / "examples" / "base"
CASES = 20_000
SHARES = {"bytes": 0.55, "structure": 0.4, "values": 0.05}
SHOWN_EACH = 10  # so many cases have their pages written
MOST_SHOWN = 20


def numbers(cases: int, sort: str | None = None) -> dict[str, int]:
    """How many cases of each sort, of so many in all."""
    return {sort: cases} if sort else {sort: round(cases * SHARES[sort]) for sort in SORTS}


def slips(sort: str, seed: int, cases: range, root: Path = ROOT) -> Iterator[str]:
    """What is wrong, each with the case that shows it."""
    entries, judge = sound_entries(root), Judge(root)
    for number in cases:
        case = damaged(sort, seed, number, entries)
        is_checked = sort == "values"
        is_shown = is_checked and number % SHOWN_EACH == 0
        for fault in judge.faults(case, is_checked, is_shown):
            which = f"--sort {sort} --seed {seed} --only {number}"
            yield f"{which} ({case.sound.file}, {case.done}): {fault}"


def _share(job: tuple[str, int, range]) -> list[str]:
    return list(slips(*job))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--cases", type=int, default=CASES)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--sort", choices=SORTS)
    parser.add_argument("--only", type=int, help="one case by its number; it is printed")
    given = parser.parse_args()
    if given.only is not None:
        sys.stdout.buffer.write(
            damaged(given.sort, given.seed, given.only, sound_entries(ROOT)).raw + b"\n"
        )
        found = list(slips(given.sort, given.seed, range(given.only, given.only + 1)))
        print(*found, sep="\n")
        return bool(found)
    started = time.perf_counter()
    wanted = numbers(given.cases, given.sort)
    jobs = [
        (sort, given.seed, range(first, min(first + 500, count)))
        for sort, count in wanted.items()
        for first in range(0, count, 500)
    ]
    found = []
    with multiprocessing.Pool(os.cpu_count()) as pool:
        for told in pool.imap_unordered(_share, jobs):
            for slip in told[: max(0, MOST_SHOWN - len(found))]:
                print(slip, flush=True)
            found += told
    counted = ", ".join(f"{count:,} of {sort}" for sort, count in wanted.items())
    took = f"{time.perf_counter() - started:.0f} s"
    print(f"{len(found):,} slips in {counted}; seed {given.seed}, {took}")
    return bool(found)


if __name__ == "__main__":
    sys.exit(main())
