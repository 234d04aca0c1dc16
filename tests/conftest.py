"""Settings for every test, and what is read once: the small catalogue."""

from __future__ import annotations

import gc
import importlib
import os
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Generator
from pathlib import Path

import pytest
from hypothesis import settings
from shared import (
    CATALOGUE,
    DAY,
    built_once,
    in_one_process,
    installed_from_wheel,
    made_once,
    read_once,
    set_long,
)

from almanac.analysis.analysis import Analysis
from almanac.model.load import Loaded, load
from almanac.resources import HOME

# A slow machine is no failure of a property; the default run tries the same examples each time.
settings.register_profile("default-run", deadline=None, derandomize=True, max_examples=40)
settings.register_profile("long-run", deadline=None, max_examples=500, print_blob=True)

# Whoever reads the club's own entries breaks when a coach edits them: these alone may.
OF_THE_CLUB = {
    "test_content.py", "test_club_blocks.py", "test_club_briefs.py", "test_club_composing.py",
    "test_club_judged.py",
    "test_club_kick.py", "test_club_search.py", "test_club_words.py",
    "test_club_site.py", "test_club_texts.py", "test_lent.py", "test_own_clubs.py",
    "test_start_answers.py", "test_start_room.py", "test_own_clubs_opened.py",
    "test_forms.py",
    "test_review_hostile.py",  # a proposal without lists of words is lent the program's
    "test_update.py",  # what a list has not is looked for in the program's
}  # fmt: skip
# What tests read and no test stands in: some thousand folders, into each of which pytest would
# look.
collect_ignore = [
    "catalogue",
    "examples",
    "hand_worked",
    "queries",
    "sentences",
    "sessions",
    "words",
]
# A worker takes a file at a time, these first, the longest at the head: what is long and begun last
# keeps one worker at work while the others wait. Files of the browser stand between others, for
# they do not fill a core.
LONGEST = (
    "test_memory.py",  # first: it goes through all objects, of which there are few yet
    "test_content.py", "test_add_entry.py", "test_serve.py", "test_access.py", "test_words.py",
    "test_run.py",
    "test_own_clubs_opened.py", "test_recipes.py", "test_finder.py", "test_compose_block.py",
    "test_add_rules.py", "test_fuzz.py",
    "test_examples.py", "test_offline.py", "test_club_composing.py", "test_print.py",
    "test_own_clubs.py", "test_journeys.py", "test_rename.py",
    "test_club_search.py", "test_club_blocks.py", "test_search.py", "test_installed.py",
    "test_shown_everywhere.py", "test_style.py", "test_no_fault.py", "test_hostile_text.py",
    "test_never_lose.py", "test_bring.py", "test_start_answers.py", "test_every_page.py",
    "test_start_room.py", "test_compose.py", "test_rendering.py",
    "test_choices.py", "test_check_cache.py", "test_club_site.py", "test_schemas.py",
    "test_paper.py", "test_scripts.py", "test_lent.py", "test_unsafe_words.py",
    "test_reproducible.py", "test_hand_worked_moved.py", "test_new_and_fix.py", "test_home.py",
    "test_make_page.py", "test_drawing_body.py",
    "test_computed_page.py", "test_taken_over.py", "test_policy.py", "test_review_hostile.py",
    "test_layers.py",
)  # fmt: skip
_OWN = tuple(f"{HOME / name}/" for name in ("drills", "plans"))
_opened: set[str] = set()


def _notice(event: str, arguments: tuple[object, ...]) -> None:
    """An audit hook: called by Python before it opens a file."""
    if event == "open" and isinstance(arguments[0], str) and arguments[0].startswith(_OWN):
        _opened.add(arguments[0])


sys.addaudithook(_notice)
_SCRATCH = pytest.StashKey[str]()

# The tests make some 100,000 files. On a disk that takes minutes, in memory a second.
_MEMORY = Path("/dev/shm")
_ROOM = 2**31  # bytes; a run fills a fifth of them


def _has_room(folder: Path) -> bool:
    """Whether a folder may be written to, programs in it be run, and a run's files have room in
    it.
    """
    if not os.access(folder, os.W_OK):
        return False
    about = os.statvfs(folder)
    return about.f_bavail * about.f_frsize >= _ROOM and not about.f_flag & os.ST_NOEXEC


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The longest files come first, the others in their order."""
    place = {name: number for number, name in enumerate(LONGEST)}
    items.sort(key=lambda item: place.get(item.path.name, len(place)))


def pytest_collection(session: pytest.Session) -> None:
    """Each worker begins elsewhere to read the modules, and so finds most of them compiled by
    another: where nothing is compiled yet, as in a bare clone, all would else compile the same ones
    at the same time.
    """
    worker = getattr(session.config, "workerinput", None)
    if worker is None or session.config.args != session.config.getini("testpaths"):
        return
    names = sorted(path.stem for path in Path(__file__).parent.glob("test_*.py"))
    first = int(worker["workerid"][2:]) * len(names) // worker["workercount"]
    for name in (*names[first:], *names[:first]):
        try:
            importlib.import_module(name)
        except (Exception, pytest.skip.Exception):
            pass  # the collection tells it, with its place


def pytest_collection_finish() -> None:
    """Some million objects that stay to the end are not looked through again and again."""
    gc.freeze()


@pytest.hookimpl(trylast=True)  # after the fixtures are gone
def pytest_runtest_teardown(item: pytest.Item) -> None:
    """A test of the code that has read an entry of the club's fails."""
    opened = sorted(_opened)
    _opened.clear()
    if opened and item.path.name not in OF_THE_CLUB:
        pytest.fail(f"reads the club's own entries: {opened[0]} and {len(opened) - 1} more")


def pytest_addoption(parser: pytest.Parser) -> None:
    """``--long``: all of what runs as a seeded share otherwise."""
    parser.addoption("--long", action="store_true", help="run the whole of long tests, not a share")


def pytest_configure(config: pytest.Config) -> None:
    """Before any module is read, since parametrised cases are chosen then."""
    if os.environ.get("CI") and not os.environ.get("ALMANAC_CHROMIUM"):
        raise pytest.UsageError("CI leaves no test out: set ALMANAC_CHROMIUM to a Chromium's path")
    if "PYTEST_XDIST_WORKER" not in os.environ:  # workers inherit the run's own folders
        if "TMPDIR" not in os.environ and _has_room(_MEMORY):
            tempfile.tempdir = str(_MEMORY)
            os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(_MEMORY))
        scratch = config.stash[_SCRATCH] = tempfile.mkdtemp(prefix="almanac-tests-")
        os.environ["TMPDIR"] = tempfile.tempdir = scratch
        os.environ["XDG_CACHE_HOME"] = str(Path(scratch, "cache"))
        os.environ["XDG_STATE_HOME"] = str(Path(scratch, "state"))
    whole = bool(config.getoption("--long"))
    set_long(whole)
    if not whole:
        read_once()
        in_one_process()
    settings.load_profile("long-run" if whole else "default-run")


@pytest.hookimpl(optionalhook=True, wrapper=True)
def pytest_xdist_auto_num_workers() -> Generator[None, int, int]:
    """A worker more than cores: one of them mostly waits for the browser."""
    return (yield) + 1


def pytest_unconfigure(config: pytest.Config) -> None:
    """What the run has stored is nobody else's."""
    if made := config.stash.get(_SCRATCH, None):
        shutil.rmtree(made, ignore_errors=True)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Which tests were left out, file by file: a run without a browser is not a whole run."""
    skipped = terminalreporter.getreports("skipped")
    for file, count in sorted(Counter(report.nodeid.split("::")[0] for report in skipped).items()):
        terminalreporter.write_line(f"left out: {file} ({count} tests)", yellow=True)
    if skipped:
        terminalreporter.write_line(f"because: {skipped[0].longrepr[2]}", yellow=True)


@pytest.fixture(scope="session")
def loaded() -> Loaded:
    """The small catalogue with its documents; not to be changed."""
    return load(CATALOGUE)


@pytest.fixture(scope="session")
def club_root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The club's own entries with the pages and the site that a build makes of them, built once a
    run.
    """
    return built_once(tmp_path_factory, "club", HOME)


@pytest.fixture(scope="session")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The Python of a virtual environment that the program was installed into, with no checkout in
    sight.
    """
    return made_once(tmp_path_factory, "installed", installed_from_wheel) / "environment/bin/python"


@pytest.fixture(scope="session")
def analysis(loaded: Loaded) -> Analysis:
    """The small catalogue, worked out; not to be changed."""
    assert loaded.catalogue is not None, loaded.findings
    return Analysis(loaded.catalogue, DAY)


@pytest.fixture(scope="session")
def club() -> Loaded:
    """The club's own entries, for the tests of ``OF_THE_CLUB`` alone; not to be changed."""
    return load(HOME)
