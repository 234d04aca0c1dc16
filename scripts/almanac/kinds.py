"""The kinds of entries: one record each, of names alone. What a layer has for a kind (a schema, a
class, figures, a report, a page) it registers itself under the kind's key; tests/test_kinds.py
lists those registers and tells what is missing.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Kind:
    """A kind of entry.

    ``key`` is how references, data and the command line name it. ``files`` is the folder of its
    files, with families below it where ``deep``; where ``single``, it is the one file itself.
    ``pages`` is the folder of its pages, "" where it has none. The rest says what is done with it:
    ``new`` writes a starter, its figures are added up, likeness is looked for in what it says.
    """

    key: str
    files: str
    title: str
    plural: str
    about: str = ""
    pages: str = ""
    deep: bool = False
    single: bool = False
    has_starter: bool = True
    is_summed: bool = False
    says_texts: bool = False

    @property
    def can_move(self) -> bool:
        """Whether an id may leave a stub behind: links from outside lead to what has a page."""
        return bool(self.pages)


KINDS = (
    Kind("vocabulary", "drills/vocabulary", "Vocabulary", "Vocabularies", has_starter=False),
    Kind(
        "drill", "drills/skills", "Drill", "Drills", "By family, in teaching order.",
        pages="drills", deep=True, says_texts=True,
    ),
    Kind(
        "fault", "drills/faults", "Fault", "Faults", "What a coach sees go wrong, by stroke.",
        pages="faults", says_texts=True,
    ),
    Kind(
        "gear", "drills/gear", "Gear", "Gear",
        "What it does to the swimmer, its dangers, its drag.",
        pages="gear", says_texts=True,
    ),
    Kind(
        "benchmark", "drills/benchmarks", "Benchmark", "Benchmarks",
        "Timed tests that give a lane group its paces.",
        pages="benchmarks", says_texts=True,
    ),
    Kind(
        "progression", "drills/progressions", "Progression", "Progressions",
        "Ordered stages, each with a test for moving on.",
        pages="progressions", says_texts=True,
    ),
    Kind(
        "source", "drills/sources", "Source", "Sources",
        "Who says so: who was measured, what it shows, what it does not show.",
        pages="sources",
    ),
    Kind(
        "need", "drills/needs", "Need", "Needs",
        "What changes for whom: a sore shoulder, asthma, a leg that does not kick.",
        pages="needs", says_texts=True,
    ),
    Kind(
        "set", "plans/sets", "Set", "Sets", "By level, each added up.",
        pages="sets", is_summed=True, says_texts=True,
    ),
    Kind(
        "practice", "plans/practices", "Practice", "Practices",
        "Sessions on the clock, by squad.",
        pages="practices", is_summed=True, says_texts=True,
    ),
    Kind(
        "block", "plans/blocks", "Block", "Blocks", "Weeks of sessions, by squad.",
        pages="blocks", is_summed=True,
    ),
    Kind(
        "meet", "plans/meets", "Meet", "Meets",
        "Days of races: warm-up lanes, events in order, what to bring.",
        pages="meets",
    ),
    Kind(
        "timetable", "plans/timetables", "Timetable", "Timetables",
        "Who has which lanes of which pool when.",
        pages="timetables",
    ),
    Kind(
        "season", "plans/seasons", "Season", "Seasons",
        "The year on one page: terms, meets, the blocks of every squad.",
        pages="seasons",
    ),
    Kind("log", "plans/logs", "Log", "Logs"),
    Kind("club", "plans/club.yml", "Club", "Clubs", single=True, has_starter=False),
    Kind("policy", "plans/policy.yml", "Policy", "Policies", single=True, has_starter=False),
)  # fmt: skip

KIND = {kind.key: kind for kind in KINDS}
WITH_PAGES = {kind.key: kind for kind in KINDS if kind.pages}
SUMMED = tuple(kind.key for kind in KINDS if kind.is_summed)

# What the club's file lists by id: entries name these as they name entries.
IN_CLUB = {"squad": "squads", "lane_group": "lane_groups", "pool": "pools"}

TOP_FOLDERS = tuple(dict.fromkeys(kind.files.split("/")[0] for kind in KINDS))


def kind_of_path(file: str) -> Kind | None:
    """The kind whose folder a file stands in, by its path below the root; None for one that is in
    none.
    """
    within = (kind for kind in KINDS if not kind.single and file.startswith(f"{kind.files}/"))
    return next(within, None)
