"""Rules on work under water: how far, how long, how often, and the rest after it.

A drill at the surface or at the wall that stays under for more than ``push_off_most`` of the policy
after its walls counts as such work, whatever its mode.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.helping import WATCHER
from almanac.checks.once import once
from almanac.checks.rule import Problem, forbids, refuses
from almanac.checks.under_water_judged import judged
from almanac.model.vocabularies import DONE
from almanac.units import show_number
from almanac.wording.lengths_under import goes_on_under

_found = once(judged)


@refuses("under-water-rep")
def under_water_rep(analysis: Analysis) -> Iterator[Problem]:
    """One rep is no farther and no longer under water than the level of those who do it allows
    (``under_water_rep_most``, ``under_water_time_most`` in the policy): all its stretches together,
    with fins or without.

    What is done under water is swum for a distance, never for a time.
    """
    yield from _found(analysis, "under-water-rep")


@refuses("under-water-set")
def under_water_set(analysis: Analysis) -> Iterator[Problem]:
    """A set, and a part of a practice, holds no more reps and no more metres under water than the
    level allows (``under_water_reps_most``, ``under_water_set_most``), whatever rounds, lane
    groups and variants make of it, and with as many rounds or reps as it may be asked for.
    """
    yield from _found(analysis, "under-water-set")


@refuses("under-water-practice")
def under_water_practice(analysis: Analysis) -> Iterator[Problem]:
    """A practice, and all practices of a day of a block together, hold no more metres under water
    than the level allows (``under_water_practice_most``); and any seven days of a block no more
    sets with work under water than ``under_water_sets_most``.
    """
    yield from _found(analysis, "under-water-practice")


@refuses("under-water-rest")
def under_water_rest(analysis: Analysis) -> Iterator[Problem]:
    """After each rep with work under water comes rest at the wall, counted from the touch: at least
    ``under_water_rest_least``, and ``under_water_rest_share`` times the time under water. It does
    not shrink from rep to rep, be they items of their own. Where it is not known that is an error
    too.
    """
    yield from _found(analysis, "under-water-rest")


@refuses("under-water-after-fast")
def under_water_after_fast(analysis: Analysis) -> Iterator[Problem]:
    """Nobody goes under water out of breath: since the last touch of fast work, across items,
    rounds and parts of a practice, the seconds of ``under_water_after_fast`` have gone by, be it in
    rest, easy swimming, talk or a change of gear. A time that is not known counts as the least that
    it can be.
    """
    yield from _found(analysis, "under-water-after-fast")


@refuses("under-water-goal")
def under_water_goal(analysis: Analysis) -> Iterator[Problem]:
    """How far, how long or how often under water is nobody's goal: no such rep has a time to hold,
    or lengths or a count to note, and no timed test is done under water.
    """
    yield from _found(analysis, "under-water-goal")


@refuses("under-water-loaded")
def under_water_loaded(analysis: Analysis) -> Iterator[Problem]:
    """Nothing that resists, and no cord, is on anybody under water."""
    yield from _found(analysis, "under-water-loaded")


@refuses("under-water-wall")
def under_water_wall(analysis: Analysis) -> Iterator[Problem]:
    """After the walls of ordinary swimming and in wall work nobody is under water for longer than
    ``wall_most`` of the level; a drill whose picture is under water says how far that is
    (``under_water``).
    """
    yield from _found(analysis, "under-water-wall")


@refuses("under-water-drill")
def under_water_drill(analysis: Analysis) -> Iterator[Problem]:
    """The dose of a drill that is done under water keeps to what its own level allows: distance,
    reps and rest.
    """
    yield from _found(analysis, "under-water-drill")


@forbids("under-water-unsaid")
def under_water_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """A drill whose mode is work under water is under for at least a share of its dose
    (``under_water_said_least`` in the policy): one that claims less is swimming after a push-off,
    which has a mode of its own, or its ``under_water`` is a slip that every limit would go by. So
    it is where its steps go on to the far wall.
    """
    least = analysis.catalogue.policy.limit("under_water_said_least")
    for drill in analysis.catalogue.drills.values():
        said, distance = drill.under_water, float(drill.dose.distance or 0)
        if drill.is_under_water and said is not None and said < least * distance:
            text = f"work under water of {show_number(distance)} says {show_number(said)} m of that"
            mend = "write all metres under water, give the rest a drill of its own, or another mode"
            yield Problem(drill, ("under_water",), text, mend)
        elif drill.is_under_water and said is not None and said < distance:
            for number, step in enumerate(drill.steps):
                if goes_on_under(step):
                    text = f"this goes on under water, and under_water says {show_number(said)} m"
                    mend = "say where the head comes up, or write under_water as far as it goes"
                    yield Problem(drill, ("steps", number), text, mend)


@refuses("under-water-unwatched")
def under_water_unwatched(analysis: Analysis) -> Iterator[Problem]:
    """A drill that is done under water asks for somebody who does nothing but watch (``helpers``
    with the job of a watcher): nobody there can call.
    """
    for drill in analysis.catalogue.drills.values():
        watched = any(helper.job == WATCHER for helper in drill.helpers)
        if drill.is_under_water and not drill.is_on_land and not watched:
            text = "it is done under water, and nobody is asked to watch"
            mend = "write helpers: [{job: watcher, each: lane}]"
            yield Problem(drill, ("mode",), text, mend, level=drill.level)


@forbids("mode-unsaid")
def mode_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """A mode that the program does not know says where such work is done (``done``); until it does
    it counts as under water, because nobody knows. Of the others the program knows it.
    """
    modes = analysis.catalogue.vocabularies["modes"]
    for name, word in modes.words.items():
        known = DONE.get(name, "")
        if not known and not word.done:
            text = "nothing says where this is done, so it counts as work under water"
            mend = "write done: at-the-surface, under-water or on-land"
            yield Problem(modes, ("words", name), text, mend, of_key=True)
        elif known and word.done not in ("", known):
            text = f"'{name}' is done {known.replace('-', ' ')} for every rule, and this says not"
            mend = "take it out, or make a word of your own"
            yield Problem(modes, ("words", name, "done"), text, mend)
