"""What each test runs, and what became of each mutant: kept on disk, so that a run can go on."""

from __future__ import annotations

import json
import os
import sys
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

import forks
from forks import ROOT
from mutate import Mutant

KEPT = ROOT / "build" / "mutants"
KILLED, TIMED_OUT, SURVIVED = "killed", "timed out", "survived"
NOT_RUN, EQUIVALENT = "never run", "equivalent"


@dataclass
class Plain:
    """What each test runs of the code as it stands: its seconds; tests by line; and by module, the
    tests of every file of which one runs some of it.
    """

    seconds: dict[str, float] = field(default_factory=dict)
    by_line: dict[tuple[str, int], set[str]] = field(default_factory=lambda: defaultdict(set))
    by_module: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))

    def batches(self, mutant: Mutant) -> list[list[str]]:
        """The tests that run a mutant's lines; then the others about its module, for what is worked
        out once is run by the first test alone that asks for it. The quickest first.
        """
        every = self.by_module[mutant.module]
        lines = mutant.lines or ()
        first = set().union(*(self.by_line.get((mutant.module, line), ()) for line in lines))
        batches = (first, every - first)
        return [sorted(batch, key=lambda test: (self.seconds[test], test)) for batch in batches]


def plain_run(files: Sequence[str], digest: str) -> Plain:
    """Every test on the code as it stands; read from the last run where nothing has changed."""
    KEPT.mkdir(parents=True, exist_ok=True)
    written = KEPT / f"plain-{digest}.json"
    if not written.exists():
        for old in KEPT.glob("plain-*.json"):
            old.unlink()
        print(f"{len(files)} files of tests on the code as it stands ...", flush=True)
        part = written.with_suffix(".part")
        if os.waitstatus_to_exitcode(os.waitpid(forks.fork_plain(files, part), 0)[1]) != 0:
            sys.exit("the tests fail without any mutant: mend that first")
        part.rename(written)
    plain = Plain()
    of_file: dict[str, set[str]] = defaultdict(set)
    for test, found in json.loads(written.read_text("utf-8")).items():
        plain.seconds[test] = found["seconds"]
        of_file[test.split("::")[0]].add(test)
        for module, lines in found["lines"].items():
            plain.by_module[module].add(test)
            for line in lines:
                plain.by_line[module, line].add(test)
    for module, tests in plain.by_module.items():
        about = {test.split("::")[0] for test in tests}
        plain.by_module[module] = set().union(*(of_file[file] for file in about))
    # A module of figures alone runs as it is imported, before any test: those of its users.
    for module, users in forks.importers().items():
        if module in forks.modules() and module not in plain.by_module:
            known = (plain.by_module[user] for user in users if user in plain.by_module)
            plain.by_module[module] = set().union(*known)
    return plain


class Book:
    """What became of each mutant, kept on disk as it is found."""

    def __init__(self, digest: str, again: bool) -> None:
        self.path = KEPT / "outcomes.json"
        self.digest = digest
        kept = json.loads(self.path.read_text("utf-8")) if self.path.exists() else {}
        self.found: dict[str, str] = (
            kept.get("found", {}) if again or kept.get("digest") == digest else {}
        )
        if (
            again
        ):  # what was killed is believed; the rest is tried against the tests as they are now
            self.found = {
                name: what for name, what in self.found.items() if what in (KILLED, TIMED_OUT)
            }
        self.unsaved = 0

    def note(self, name: str, what: str) -> None:
        """Write down what became of one mutant."""
        self.found[name] = what
        self.unsaved += 1
        if self.unsaved >= 20:
            self.save()

    def save(self) -> None:
        """Write everything to disk."""
        part = self.path.with_suffix(".part")
        part.write_text(json.dumps({"digest": self.digest, "found": self.found}), "utf-8")
        part.rename(self.path)
        self.unsaved = 0
