"""Begin the catalogue of a club of its own in an empty folder. Asks in a terminal for what no
option says; every question has a default.

Writes the club, a first progression with its drills and faults, a set for each level, a practice, a
workflow that checks and publishes, and a README. All of it or nothing; a folder that holds anything
but git's own is left alone.
"""

from __future__ import annotations

import argparse
import contextlib
import re
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from pathlib import Path

from almanac.commands.bring_tried import write_all
from almanac.commands.outcome import FINE, UsageError, today
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.commands.start_answers import SQUAD
from almanac.commands.start_places import POOL
from almanac.commands.start_questions import ask_club
from almanac.commands.start_room import MadeRoom, make_room
from almanac.journal import notes_of
from almanac.model.bringing import NotBrought
from almanac.model.load import Loaded, load
from almanac.model.new_club import LEVELS, NewClub
from almanac.model.starting import WORKFLOW, folder_of
from almanac.publish.turn import turn
from almanac.resources import HOME

NAME = "start"
_REVIEW_STANDS = timedelta(weeks=4)
_POOL_HELP = (
    "name, course (25m, 50m, 25yd), lanes, depth in metres or feet; or a name and land; another "
    f"behind a / , or by the option again (default: '{POOL}'; with a hall: '{POOL} / Hall land')"
)
_SQUAD_HELP = (
    "name, level, sessions a week, then of each lane group lanes, heads, and the time over 200 "
    "kicked on the back, or -; a further group behind a / ; on land only heads; again for another "
    f"squad (default: '{SQUAD}')"
)
_MOST_ROUNDS = 8  # of making room: with waves a practice takes longer
_MADE_UP = r"\w{8}"  # how mkdtemp ends a name
_OF_GIT = {".git"}  # a repository with nothing in it yet is empty


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", type=Path, metavar="DIR", help="an empty folder, or a new one")
    parser.add_argument("--name", help="the club's name, which is the site's")
    parser.add_argument("--address", help="where the site will be: https://club.example/almanac/")
    parser.add_argument("--repository", help="the repository's address at its host")
    parser.add_argument("--pool", action="append", metavar="WORDS", help=_POOL_HELP)
    parser.add_argument(
        "--emergency",
        metavar="WORDS",
        help="what is done in an emergency where the squads train, with / between: number to call, "
        "address as it is said, where telephone, defibrillator and first-aid box are, the way in",
    )
    parser.add_argument("--squad", action="append", metavar="WORDS", help=_SQUAD_HELP)
    parser.add_argument("--gear", help="what the club owns: 'kickboard=20 fins=12'; - for nothing")
    parser.add_argument("--welcome", help="a sentence or two for the first page")
    parser.add_argument(
        "--colour", help="of what is pressed: blue, green, red, violet, or # and six digits"
    )
    parser.add_argument(
        "--program",
        help="what pip is to install the program from, in the club's workflow: git+https://HOST/"
        "OWNER/NAME.git@COMMIT of its repository, or the address of a wheel",
    )


def run(arguments: argparse.Namespace) -> int:
    folder: Path = arguments.folder
    _sweep(folder)
    if folder.exists() and not (
        folder.is_dir() and {it.name for it in folder.iterdir()} <= _OF_GIT
    ):
        raise UsageError(f"{folder} holds something already: name an empty folder, or a new one")
    day, shelf = arguments.today or today(), load(HOME)
    assert shelf.catalogue is not None, "the catalogue that the program comes with is sound"
    policy = shelf.catalogue.policy
    start_depths = (policy.of_level(level).limit("start_depth_least") for level in LEVELS)
    club = ask_club(arguments, shelf.catalogue.gear, min(start_depths))
    checked, room = _write(folder, club, shelf, day)
    for said in room.told():
        print(f"note: {said}")
    print(f"{folder} holds {checked.loaded.count} entries; now: almanac build --root {folder}")
    if not club.program:
        print(f"{folder / WORKFLOW} publishes nothing until PROGRAM in it says what pip installs")
    return FINE


@contextlib.contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """One start at a time for a folder, where the machine lets that be noted."""
    with contextlib.ExitStack() as stack:
        with contextlib.suppress(OSError):
            stack.enter_context(turn(notes_of(folder)))
        yield


def _scratch(folder: Path) -> tuple[Path, str]:
    """Where a new club is written before it has its place, and how its folder's name begins."""
    beside = folder if folder.exists() else folder.resolve().parent
    return beside, f".almanac-start-{folder.resolve().name}-"


def _sweep(folder: Path) -> None:
    """Remove what a start that was killed has left, which would make the folder one that holds
    something.
    """
    beside, begins = _scratch(folder)
    with _alone(folder):
        for left in _in(beside):
            if re.fullmatch(re.escape(begins) + _MADE_UP, left.name):
                shutil.rmtree(left, ignore_errors=True)


def _in(folder: Path) -> list[Path]:
    try:
        return [*folder.iterdir()]
    except OSError:  # it is not there, or may be entered and not looked through
        return []


def _write(
    folder: Path, club: NewClub, shelf: Loaded, day: date
) -> tuple[CheckedCatalogue, MadeRoom]:
    """Write the folder of a new club, all or nothing, once everything in it has been checked."""
    room = MadeRoom()
    try:
        files = folder_of(club, shelf, day, day + _REVIEW_STANDS)
    except NotBrought as problem:
        raise UsageError(f"nothing was written: {problem}") from None
    with _alone(folder):
        return _written(folder, files, day, room), room


def _written(folder: Path, files: Mapping[str, str], day: date, room: MadeRoom) -> CheckedCatalogue:
    beside, begins = _scratch(folder)
    beside.mkdir(parents=True, exist_ok=True)
    scratch = Path(tempfile.mkdtemp(prefix=begins, dir=beside))
    try:
        write_all(scratch, files)
        (scratch / "drills").mkdir(exist_ok=True)
        checked = load_and_check(scratch, day)
        for _ in range(_MOST_ROUNDS):
            if not make_room(scratch, checked, room):
                break
            checked = load_and_check(scratch, day)
        for finding in checked.findings:
            if finding.is_error:
                raise UsageError(f"nothing was written: {finding.message}; {finding.hint}")
        _put(scratch, folder)
    except OSError as problem:  # it names what is gone by then
        problem.filename, problem.filename2 = str(folder), None
        raise
    finally:
        shutil.rmtree(scratch, ignore_errors=True)
    return checked


def _put(scratch: Path, folder: Path) -> None:
    """Make of a scratch folder the one that was asked for. One that is there stays itself: whoever
    stands in it sees what comes.
    """
    if not folder.exists():
        scratch.chmod(0o755)
        scratch.rename(folder)
        return
    names = [path.name for path in scratch.iterdir()]
    try:
        for name in names:
            (scratch / name).rename(folder / name)
    except BaseException:
        for name in names:
            if (folder / name).exists():
                (folder / name).rename(scratch / name)
        raise
