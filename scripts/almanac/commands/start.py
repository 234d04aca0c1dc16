"""Begin the catalogue of a club of its own in an empty folder. Asks in a terminal for what no
option says; every question has a default.

Writes the club, a first progression with its drills and faults, a set for each level, a practice, a
workflow that checks and publishes, and a README. All of it or nothing; a folder that holds anything
but git's own is left alone.
"""

from __future__ import annotations

import argparse
import re
import shutil
import sys
import tempfile
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from typing import TypeVar

from almanac.commands.bring import write_all
from almanac.commands.outcome import FINE, UsageError, today
from almanac.commands.shared import load_and_check
from almanac.findings import as_text
from almanac.model.bringing import NotBrought
from almanac.model.load import load
from almanac.model.starting import LEVELS, WORKFLOW, NewClub, NewPool, NewSquad, folder_of
from almanac.resources import HOME
from almanac.source.paths import bad_name
from almanac.units import COURSES

NAME = "start"
_REVIEW_STANDS = timedelta(weeks=4)
_POOL, _SQUAD = "pool 25m 6 1.0-1.9", "squad building 3 3 12 4:30"
_POOL_HELP = f"id, course, lanes, depth in metres; again for another pool (default: '{_POOL}')"
_SQUAD_HELP = (
    "id, level, sessions a week, lanes, heads, and the time over 200 kicked on the back, or '-'; "
    f"again for another squad (default: '{_SQUAD}')"
)
_ASK_SQUAD = f"Squad: {_SQUAD_HELP.partition(';')[0]}"
_OF_GIT = {".git"}  # a repository with nothing in it yet is empty
_DEPTH = r"(\d+(?:[.,]\d+)?)"
T = TypeVar("T")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", type=Path, metavar="DIR", help="an empty folder, or a new one")
    parser.add_argument("--name", help="the club's name, which is the site's")
    parser.add_argument("--address", help="where the site will be: https://club.example/almanac/")
    parser.add_argument("--repository", help="the repository's address at its host")
    parser.add_argument("--pool", action="append", metavar="WORDS", help=_POOL_HELP)
    parser.add_argument("--squad", action="append", metavar="WORDS", help=_SQUAD_HELP)
    parser.add_argument("--gear", help="what the club owns: 'kickboard=20 fins=12'")
    parser.add_argument(
        "--program",
        help="what pip is to install the program from, in the club's workflow: git+https://HOST/"
        "OWNER/NAME.git@COMMIT of its repository, or the address of a wheel",
    )


def run(arguments: argparse.Namespace) -> int:
    folder: Path = arguments.folder
    if folder.exists() and not (
        folder.is_dir() and {it.name for it in folder.iterdir()} <= _OF_GIT
    ):
        raise UsageError(f"{folder} holds something already: name an empty folder, or a new one")
    club = _asked(arguments)
    day, shelf = arguments.today or today(), load(HOME)
    known = shelf.catalogue.gear if shelf.catalogue else {}
    for id in club.gear:
        if id not in known:
            raise UsageError(f"no gear '{id}' comes with the program, but {', '.join(known)}")
    try:
        files = folder_of(club, shelf, day, day + _REVIEW_STANDS)
    except NotBrought as problem:
        raise UsageError(f"nothing was written: {problem}") from None
    beside = folder if folder.exists() else folder.resolve().parent
    beside.mkdir(parents=True, exist_ok=True)
    scratch = Path(tempfile.mkdtemp(prefix=".almanac-start-", dir=beside))
    try:
        write_all(scratch, files)
        (scratch / "drills").mkdir(exist_ok=True)
        checked = load_and_check(scratch, day)
        if checked.exit_code:
            raise UsageError(f"nothing was written:\n{as_text(checked.findings, 0)}")
        _put(scratch, folder)
    finally:
        shutil.rmtree(scratch, ignore_errors=True)
    print(f"{folder} holds {checked.loaded.count} entries; now: almanac build --root {folder}")
    if not club.program:
        print(f"{folder / WORKFLOW} publishes nothing until PROGRAM in it says what pip installs")
    return FINE


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


def _asked(arguments: argparse.Namespace) -> NewClub:
    asks = sys.stdin.isatty() and sys.stdout.isatty()

    def told(given: str | None, question: str, default: str, take: Callable[[str], T]) -> T:
        while True:
            words = given
            if words is None:
                words = (input(f"{question} [{default}] ").strip() if asks else "") or default
            try:
                return take(words)
            except ValueError as problem:
                if given is not None or not asks:
                    raise UsageError(str(problem)) from None
                print(f"  {problem}")

    pools = [told(own, "", "", _pool) for own in arguments.pool or ()]
    squads = [told(own, "", "", _squad) for own in arguments.squad or ()]
    return NewClub(
        told(arguments.name, "The club's name", "Our Swimming Club", _name),
        told(arguments.address, "The site's address, - for none", "-", _address),
        told(arguments.repository, "The repository's address, - for none", "-", _address),
        told(arguments.program, "What pip installs the program from, - for not yet", "-", _program),
        tuple(pools) or (told(None, "Pool: id, course, lanes, depth", _POOL, _pool),),
        tuple(squads) or (told(None, _ASK_SQUAD, _SQUAD, _squad),),
        told(arguments.gear, "Gear: what and how many", "kickboard=20", _gear),
    )


def _name(words: str) -> str:
    if not 2 <= len(words) <= 60 or re.search(r"[\n<>&]", words):
        raise ValueError("a name is 2 to 60 letters, without <, > and &")
    return words


def _address(words: str) -> str:
    if words in ("-", ""):
        return ""
    if not re.fullmatch(r"https?://[^\s/?#<>\"'@:]+(:\d{1,5})?(/[^\s?#<>\"']*)?", words):
        raise ValueError(f"'{words}' is no address: write https://, the host, and the path")
    return words


def _program(words: str) -> str:
    if words in ("-", ""):
        return ""
    if not re.fullmatch(r"\w[\w.+:/@=~%\[\]#&?-]*", words, re.ASCII):
        raise ValueError(f"'{words}' is nothing that pip installs: write one address, no spaces")
    return words


def _id(word: str) -> str:
    finding = bad_name(word, word, "file")
    if finding:
        raise ValueError(finding.message)
    return word


def _pool(words: str) -> NewPool:
    found = re.fullmatch(
        rf"(\S+) (\d+) ?-?(m|yd)\S* (\d+) {_DEPTH} ?- ?{_DEPTH}(?: ?m)?", words.strip(), re.ASCII
    )
    course = f"{found[2]}{found[3]}" if found else ""
    if not found or course not in COURSES or course == "land":
        raise ValueError(f"'{words}' is no pool: write it like '{_POOL}'")
    least, most = (float(found[at].replace(",", ".")) for at in (5, 6))
    return NewPool(_id(found[1]), course, int(found[4]), least, most)


def _squad(words: str) -> NewSquad:
    parts = words.split()
    counts = parts[2:5]
    if len(parts) != 6 or parts[1] not in LEVELS or not all(part.isdecimal() for part in counts):
        raise ValueError(f"'{words}' is no squad: write it like '{_SQUAD}'; {', '.join(LEVELS)}")
    sessions, lanes, heads = map(int, counts)
    time = "" if parts[5] == "-" else parts[5].replace(",", ".")
    return NewSquad(_id(parts[0]), parts[1], sessions, lanes, heads, time)


def _gear(words: str) -> dict[str, int]:
    pairs = re.findall(r"([\w-]+)=(\d+)", words)
    if words.strip("- ") and len(pairs) != len(words.replace(",", " ").split()):
        raise ValueError(f"'{words}' is no list of gear: write it like 'kickboard=20 fins=12'")
    return {_id(id): int(count) for id, count in pairs}
