"""Rules on where in a pool something is done: depth, platform and flags at each end and lane."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.pool_fit import Misplaced
from almanac.arithmetic.start_limits import OF_DEPTH, OF_PLATFORM, Lack, belies, start_limits
from almanac.checks.pool_words import hint, message
from almanac.checks.rule import Problem, forbids, refuses
from almanac.model.club import Club
from almanac.model.entry import ANY_DEPTH
from almanac.model.pool import Pool, PoolEnd
from almanac.source.reader import DataPath


@refuses("start-depth")
def start_depth(analysis: Analysis) -> Iterator[Problem]:
    """Nobody starts where the water is too shallow for it, or where its depth is not known.

    A dive, a backstroke start and a step off the edge are held against the pool's own data by end
    and lane (``ends`` in the club's file), for every practice in the lanes that each lane group
    has, and for every set against the pools that it names. What a drill teaches, what some lane
    groups do and what comes in the second leg of a relay counts as well, and no drill may itself
    ask for water (``depth_m``) that is too shallow for its start. The limits are the
    policy's: ``start_depth_least`` of the level, ``teaching_depth_least``,
    ``feet_first_depth_least``. Local codes, the pool operator's and the federation's rules come
    first, and may ask for more.
    """
    yield from _problems(analysis, lambda own: own.is_start and own.shortfall.lack in OF_DEPTH)
    catalogue = analysis.catalogue
    words = catalogue.vocabularies["starts"].words if "starts" in catalogue.vocabularies else {}
    for drill in catalogue.drills.values():
        most = drill.depth_m.most
        if drill.start in words and most is not None:
            limits = start_limits(catalogue.policy, drill.level, words[drill.start], taught=True)
            if most < limits.depth_least:
                least = limits.depth_least
                text = f"{drill.start!r} needs {least:g} m of water, and depth_m ends at {most:g} m"
                mend = "start in the water, or let the drill have deeper water"
                yield Problem(drill, ("depth_m",), text, mend, of_key=True, level=drill.level)


@forbids("start-forbidden")
def start_forbidden(analysis: Analysis) -> Iterator[Problem]:
    """Nobody starts at an end or in a lane where the pool's operator allows no starts
    (``starts: false``), whatever the depth; and no acceptance changes that.
    """
    return _problems(analysis, lambda own: own.shortfall.lack is Lack.NO_STARTS)


@refuses("start-platform")
def start_platform(analysis: Analysis) -> Iterator[Problem]:
    """Nobody dives off a platform that is too high for the level (``platform_most`` in the policy),
    or whose height nobody has measured; and a start from a ledge is done where one can be hung.
    """
    return _problems(analysis, lambda own: own.is_start and own.shortfall.lack in OF_PLATFORM)


@refuses("depth-unfit")
def depth_unfit(analysis: Analysis) -> Iterator[Problem]:
    """What needs deep water or water to stand in (``depth_m`` of drills and partners), and what is
    done under water (``under_water_depth_least`` in the policy), is done where the pool has it.
    """
    return _problems(analysis, lambda own: not own.is_start and own.shortfall.lack in OF_DEPTH)


@refuses("back-without-flags")
def back_without_flags(analysis: Analysis) -> Iterator[Problem]:
    """Towards a wall without backstroke flags nobody comes in on the back at more than the policy's
    ``back_without_flags_most``, and nobody does backstroke starts: there is no count to that wall.
    """
    return _problems(analysis, lambda own: own.shortfall.lack is Lack.NO_FLAGS)


def _problems(analysis: Analysis, wanted: Callable[[Misplaced], bool]) -> Iterator[Problem]:
    catalogue = analysis.catalogue
    for id, fits in analysis.practice_fits.items():
        practice = catalogue.practices[id]
        pool, level = (
            catalogue.club.pools[practice.pool],
            catalogue.club.squads[practice.squad].level,
        )
        told = set[tuple[DataPath, str, str]]()
        for own in fits:
            if wanted(own.found):
                key = own.path, own.found.what, own.found.end
                said = f"{own.crew.title}: {message(catalogue, pool, own.found)}"
                if key not in told:
                    told.add(key)
                    yield Problem(practice, own.path, said, hint(pool, own.found), level=level)
    for id, lacking in analysis.set_fits.items():
        swim_set = catalogue.sets[id]
        told = set()
        for tried in lacking:
            pool = catalogue.club.pools[tried.pool]
            for found in tried.found:
                key = found.path, found.what, tried.pool
                if wanted(found) and key not in told:
                    told.add(key)
                    said = f"{pool.title}: {message(catalogue, pool, found)}"
                    yield Problem(
                        swim_set, found.path, said, hint(pool, found), level=swim_set.level
                    )


@forbids("depth-unsaid")
def depth_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """A drill that is done upright in the water says how deep that has to be (``depth_m``): from
    where the feet clear the floor, which is no less than ``upright_depth_least``, or to where
    everybody stands, which is no more than ``standing_depth_most``.
    """
    policy = analysis.catalogue.policy
    clear, stands = (policy.limit(name) for name in ("upright_depth_least", "standing_depth_most"))
    for drill in analysis.catalogue.drills.values():
        if not drill.is_upright or drill.is_on_land:
            continue
        least, most = drill.depth_m.least, drill.depth_m.most
        if drill.depth_m == ANY_DEPTH:
            text = "it is done upright, and nothing says how deep the water has to be"
            mend = "write depth_m: {from: 1.8} where the feet must clear the floor, or {to: 1.2}"
            yield Problem(drill, ("position",), text, mend)
        elif (least or 0) < clear and not (most and most <= stands):
            text = "it is done upright, and in such water one neither stands nor clears the floor"
            mend = f"write depth_m: {{from: {clear:g}}} or deeper, or {{to: {stands:g}}} or less"
            yield Problem(drill, ("depth_m",), text, mend, of_key=True)


@forbids("start-unsaid")
def start_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Wall work, which is where starts are taught, says how a rep starts (``start``), be it by a
    push from the wall; so that nobody learns a dive where the depth is not asked for.
    """
    for drill in analysis.catalogue.drills.values():
        if drill.is_wall_work and not drill.start:
            text = "it is wall work, and nothing says how a rep starts"
            mend = "write start: with a word of starts (drills/vocabulary/starts.yml), say push-off"
            yield Problem(drill, ("mode",), text, mend)


@forbids("start-word")
def start_word(analysis: Analysis) -> Iterator[Problem]:
    """A word of starts that says one enters from the water, backwards or feet first is in step with
    what it goes ``off`` and with its own words; one that is not counts as head-first.
    """
    if "starts" not in analysis.catalogue.vocabularies:
        return
    starts = analysis.catalogue.vocabularies["starts"]
    for name, word in starts.words.items():
        why = belies(word)
        if why:
            text = f"enters is {word.enters}, and {why}: it counts as head-first"
            mend = "write enters: head-first, or mend the rest of it"
            yield Problem(starts, ("words", name, "enters"), text, mend)


@forbids("pool-ends")
def pool_ends(analysis: Analysis) -> Iterator[Problem]:
    """What is said of a pool's ends fits the pool: depths within those of the whole, lanes that it
    has, an edge no higher than the platform.
    """
    club = analysis.catalogue.club
    for id, pool in club.pools.items():
        if pool.depth_m.least > pool.depth_m.most:
            continue  # told at its depth
        for name, end in pool.ends.items():
            path: DataPath = ("pools", id, "ends", name)
            yield from _end_problems(club, pool, end, path)
            for lane in end.lanes:
                where = (*path, "lanes", lane)
                if int(lane) > pool.lanes:
                    text = f"there is no lane {lane}: the club has {pool.lanes} here"
                    yield Problem(club, where, text, "name one of them, counted from 1", True)
                else:
                    yield from _end_problems(club, pool, end.in_lane(int(lane)), where)


def _end_problems(club: Club, pool: Pool, here: PoolEnd, path: DataPath) -> Iterator[Problem]:
    least, most = pool.depth_m.least, pool.depth_m.most
    if not least <= here.depth_m <= most:
        text = f"{here.depth_m} m lies outside the pool's {least} to {most} m"
        yield Problem(club, path, text, "mend it, or depth_m of the pool", True)
    if here.edge_m and here.platform_m is not None and here.edge_m > here.platform_m:
        text = "the edge is higher than the platform"
        yield Problem(club, path, text, "write the higher one under platform_m", True)
