"""Rules on gear: whom and what it is for, what it goes with, and how much of it."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.loads import loads_hands
from almanac.checks.gear_judged import judged
from almanac.checks.once import once
from almanac.checks.rule import Problem, forbids, refuses
from almanac.model.gear import Gear
from almanac.model.vocabularies import EFFECTS
from almanac.wording.loads_named import names_a_weight

_found = once(judged)


@refuses("gear-not-for")
def gear_not_for(analysis: Analysis) -> Iterator[Problem]:
    """Gear is used by the levels, and for the modes, kicks, strokes, positions and efforts, that
    its entry does not leave out (``not_for``), and where it says ``turns`` in no rep with a turn.
    A drill neither needs nor adds what is not for its own way of moving.
    """
    yield from _found(analysis, "gear-not-for")


@forbids("gear-slows")
def gear_slows(analysis: Analysis) -> Iterator[Problem]:
    """Gear that makes a swimmer slower (``pace_factor`` above 1, of what supports or informs above
    ``gear_slows_most`` in the policy), that has ``drag:``, that is a
    weight by its own words, or that ties the swimmer under an ``effect`` of the club's own, is
    gear that resists: under another name it would escape every limit on what is resisted.
    """
    slows_most = analysis.catalogue.policy.limit("gear_slows_most")
    for gear in analysis.catalogue.gear.values():
        told = _resists_by(gear, slows_most)
        if told and not gear.resists:
            field, what = told
            hint = "write effect: resists, with its drag"
            yield Problem(gear, (field,), f"{what}, and its effect is '{gear.effect}'", hint)


def _resists_by(gear: Gear, slows_most: float) -> tuple[str, str] | None:
    is_known = gear.effect in EFFECTS and not gear.assists
    if gear.pace_factor > (slows_most if is_known else 1):
        return "pace_factor", "it makes a swimmer slower"
    if gear.drag is not None:
        return "drag", "it has drag"
    if gear.effect not in EFFECTS and gear.ties:
        return "effect", "it ties the swimmer"
    for field, text in (
        ("title", gear.title),
        ("summary", gear.summary),
        ("what_it_changes", gear.what_it_changes),
    ):
        if names_a_weight(text):
            return field, "it is a weight by its own words"
    return None


@refuses("gear-for-all")
def gear_for_all(analysis: Analysis) -> Iterator[Problem]:
    """Gear that resists, or with which the hands take more water, leaves out every level that the
    policy lets have none of it (``resisted_most`` or ``plates_most`` of 0): what is for
    everybody is given to the children, whatever the sets say.
    """
    catalogue = analysis.catalogue
    for gear in catalogue.gear.values():
        for level in catalogue.words("levels"):
            limits = catalogue.policy.of_level(level)
            is_none = (gear.resists and not limits.limit("resisted_most")) or (
                loads_hands(gear) and not limits.limit("plates_most")
            )
            if is_none and level not in gear.not_for.levels:
                message = f"it loads a swimmer, and does not leave out {level}"
                yield Problem(gear, ("not_for",), message, f"write levels: [{level}] there", True)


@refuses("gear-together")
def gear_together(analysis: Analysis) -> Iterator[Problem]:
    """Nobody wears or holds at once two pieces of gear of which one says that it ``excludes`` the
    other, nor more that resist than ``resisting_at_once_most`` in the policy, nor more in all that
    resist or assist than ``gear_at_once_most``: in drills, in sets, and where gear changes inside a
    rep or from round to round.
    """
    yield from _found(analysis, "gear-together")


@refuses("resisted-rep")
def resisted_rep(analysis: Analysis) -> Iterator[Problem]:
    """One rep is resisted for no longer than the level of those who do it allows
    (``resisted_rep_most`` in the policy).
    """
    yield from _found(analysis, "resisted-rep")


@refuses("resisted-dose")
def resisted_dose(analysis: Analysis) -> Iterator[Problem]:
    """A set, and a practice, hold no more resisted distance than the level of those who do it
    allows (``resisted_most``), with as many rounds or reps as the set may be asked for. What is
    held counts as ``held_as_50`` says.
    """
    yield from _found(analysis, "resisted-dose")


@refuses("resisted-before-meet")
def resisted_before_meet(analysis: Analysis) -> Iterator[Problem]:
    """Nothing is resisted in the last days before the ``race_day`` of a block
    (``resisted_before_meet`` in the policy).
    """
    yield from _found(analysis, "resisted-before-meet")


@refuses("plates-dose")
def plates_dose(analysis: Analysis) -> Iterator[Problem]:
    """A set, a practice and a day of a block hold no more distance with plates on the hands than
    the level allows (``plates_most``): children swim without them.
    """
    yield from _found(analysis, "plates-dose")
