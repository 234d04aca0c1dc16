"""Copy entries from another catalogue, with all that they need. Says where each came from, and
never writes over what is there.

A line that only points at an entry that does not come along goes; send-offs of lane groups that are
not here become a rest. A practice, a block, a meet or a timetable is brought for squads, lane
groups and pools of the club's own. Nothing comes that a check then refuses, and all comes or none.
The review that an entry had there stands for four weeks: by then somebody here has read it, and
signed it.
"""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from almanac.commands.bring_tried import sound_here
from almanac.commands.outcome import FINE, MachineError, UsageError, root_of, today
from almanac.findings import counted
from almanac.kinds import IN_CLUB, KIND, kind_of_path
from almanac.model.bringing import BROUGHT, Bringing, NotBrought, Origin, bring
from almanac.model.bringing_plans import PLANS, Clubs
from almanac.model.catalogue import Catalogue, Key
from almanac.model.club import Club
from almanac.model.load import load
from almanac.publish.together import ChangedSince, change
from almanac.source.edits.rewrite import uses
from almanac.source.reader import read
from almanac.source.suggest import nearest

NAME = "bring"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "ids", nargs="+", metavar="ID", help="an id, or kind/id where several kinds have it"
    )
    parser.add_argument(
        "--from",
        dest="source",
        type=Path,
        required=True,
        metavar="FOLDER",
        help="the folder of the other catalogue, which holds drills/ and plans/",
    )
    parser.add_argument(
        "--as",
        dest="renamed",
        action="append",
        default=[],
        metavar="THEIRS=OURS",
        help="which squad, lane group or pool of yours stands for one of theirs, in a practice, a "
        "block, a meet or a timetable; again for another; - for a lane group leaves that out",
    )
    parser.add_argument("--dry-run", action="store_true", help="say what would come, write nothing")


def run(arguments: argparse.Namespace) -> int:
    root, source = root_of(arguments.root), root_of(arguments.source)
    of, into = load(source), load(root)
    if of.catalogue is None:
        raise UsageError(f"{source} is no sound catalogue: see almanac check --root {source}")
    wanted = [_key(of.catalogue, given) for given in arguments.ids]
    told = origin_of(of.catalogue)
    day = arguments.today or today()
    origin = Origin(told, day)
    has_plans = any(kind in PLANS for kind, _ in wanted)
    if has_plans:
        if into.catalogue is None:
            raise UsageError(f"{root} is no sound catalogue: see almanac check --root {root}")
        clubs = Clubs(
            of.catalogue.club, into.catalogue.club, _renamed(arguments.renamed, of.catalogue.club)
        )
        origin = replace(origin, clubs=clubs, groups=_by_level(clubs.here))
    try:
        found = bring(of, into.names, wanted, origin)
    except NotBrought as problem:
        raise UsageError(f"nothing was brought: {problem}") from None
    _refuse_overwriting(root, found)
    files = sound_here(root, found.files, day)
    if not arguments.dry_run:
        try:
            change(root, files, {})
        except ChangedSince as problem:
            raise MachineError(str(problem)) from None
    for file, text in files.items():
        in_waves = ", in waves here, since lanes are full" if text != found.files[file] else ""
        print(f"{file}  from {told}{_whose(file, text)}{in_waves}")
    for file in found.stays:
        print(f"{file}  is here already, and stays as it is")
    what = "would come" if arguments.dry_run else "came"
    if not files:
        print(f"nothing {what}: all of it is here already")
        return FINE
    came = counted(len(files), "entry", "entries")
    print(f"{came} {what}; read them, sign them, then: almanac check")
    return FINE


def origin_of(catalogue: Catalogue) -> str:
    """A catalogue in words: its club, and the address of its site where that is said."""
    club = catalogue.club
    return f"{club.title}, {club.site.address}" if club.site.address else club.title


def _key(catalogue: Catalogue, given: str) -> Key:
    kind, _, id = given.rpartition("/")
    kinds = [
        own for own in (*BROUGHT, *PLANS) if (own, id) in catalogue.entries and kind in ("", own)
    ]
    if len(kinds) > 1:
        choices = " or ".join(f"{own}/{id}" for own in kinds)
        raise UsageError(f"'{id}' is more than one entry there: write {choices}")
    if kinds:
        return kinds[0], id
    for own in (*BROUGHT, *PLANS):
        if kind in ("", own) and (now := catalogue.moved.get((own, id))):
            print(f"'{id}' is '{now}' there now")
            return own, now
    other = [own for own in KIND if (own, id) in catalogue.entries]
    if other:
        raise UsageError(f"'{id}' is a {other[0]}, which is of one club alone: write one of yours")
    near = nearest(id, [own for _, own in catalogue.entries])
    raise UsageError(f"nothing there is called '{given}'" + (f"; is it '{near}'?" if near else ""))


def _renamed(given: list[str], there: Club) -> dict[str, str]:
    """What stands for what, as it was asked for."""
    known = [id for name in IN_CLUB.values() for id in getattr(there, name)]
    found: dict[str, str] = {}
    for words in given:
        theirs, _, ours = words.partition("=")
        if not (theirs and ours):
            raise UsageError(f"--as: '{words}' is no pair: write the id there, =, and the id here")
        if theirs not in known:
            near = nearest(theirs, known)
            what = f"is it '{near}'?" if near else f"there are {', '.join(known)}"
            raise UsageError(
                f"--as: no squad, lane group or pool there is called '{theirs}'; {what}"
            )
        if found.setdefault(theirs, ours) != ours:
            raise UsageError(f"--as: '{theirs}' stands for '{found[theirs]}' and for '{ours}'")
    return found


def _whose(file: str, text: str) -> str:
    """Whom a plan is for here, and in which pool, by id; "" of what is for everybody."""
    kind, (plan, _) = kind_of_path(file), read(text.encode(), file)
    if plan is None or kind is None or kind.key not in PLANS:
        return ""
    named = dict.fromkeys(use.id for use in uses(plan, kind.key) if use.kind in IN_CLUB)
    return f", here for {', '.join(named)}"


def _by_level(club: Club) -> dict[str, tuple[str, ...]]:
    """The lane groups of each level, by id."""
    found: dict[str, tuple[str, ...]] = {}
    for id, group in club.lane_groups.items():
        level = club.squads[group.squad].level
        found[level] = (*found.get(level, ()), id)
    return found


def _refuse_overwriting(root: Path, found: Bringing) -> None:
    there = [file for file in found.files if (root / file).exists()]
    if there:
        raise UsageError(f"nothing was brought: {there[0]} stands here already")
