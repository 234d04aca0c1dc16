"""Rules on acts that no session asks for, and on what no session does to those who swim it."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.helping import WATCHER
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses
from almanac.model.asked import asked
from almanac.model.drill import Drill
from almanac.model.entry import Entry
from almanac.model.vocabularies import TIRES
from almanac.units import show_number
from almanac.wording import abreast, clothes, somersaults
from almanac.wording.abreast import abreast_in
from almanac.wording.acts import starts_of
from almanac.wording.blind import BLIND, covers_the_eyes, moves_blind
from almanac.wording.clothes import swims_clothed
from almanac.wording.neglect import NEGLECT
from almanac.wording.somersaults import somersaults_in
from almanac.wording.stunts import STUNTS


def _judged(analysis: Analysis) -> Iterator[Coded]:
    policy = analysis.catalogue.policy
    most, side_by_side = policy.limit("somersaults_most"), policy.limit("abreast_most")
    for entry, path, text, level in asked(analysis.catalogue):
        starts = starts_of(text)
        if words := STUNTS.asked_in(text, starts) or (BLIND & starts and moves_blind(text)):
            yield "stunt", Problem(entry, path, f"'{words}' is asked for", _MEND, level=level)
        if words := NEGLECT.asked_in(text, starts):
            yield "neglect", Problem(entry, path, f"'{words}' is asked for", _END, level=level)
        if not starts.isdisjoint(somersaults.STARTS) and somersaults_in(text) > most:
            message = f"more than {show_number(most)} somersaults follow each other"
            mend = "one at a time, and the next when the pool stands still"
            yield "somersaults", Problem(entry, path, message, mend, level=level)
        if not starts.isdisjoint(abreast.STARTS) and abreast_in(text) > side_by_side:
            message = f"more than {show_number(side_by_side)} are side by side in a lane"
            mend = "one behind the other with a gap, in waves, or in more lanes"
            yield "abreast", Problem(entry, path, message, mend, level=level)
        if not starts.isdisjoint(clothes.STARTS) and (words := _clothed(entry, text)):
            message = f"'{words}', and nobody is named who watches for one that tires"
            yield "clothes-unsaid", Problem(entry, path, message, _CLOTHED, level=level)
    in_all = policy.limit("somersaults_in_all_most")
    for drill in analysis.catalogue.drills.values():
        if drill.dose.most > in_all and any(_TURNS_OVER in step.lower() for step in drill.steps):
            message = f"it has somersaults, {drill.dose.most} times in a practice"
            mend = f"most: {show_number(in_all)}, or fewer"
            found = Problem(drill, ("dose", "most"), message, mend, level=drill.level)
            yield "somersaults", found
    for gear in analysis.catalogue.gear.values():
        texts = {name: getattr(gear, name) for name in ("title", "summary", "what_it_changes")}
        if field := next((name for name, text in texts.items() if covers_the_eyes(text)), None):
            message, mend = "whoever wears it does not see the wall", "eyes stay open in the water"
            yield "stunt", Problem(gear, (field,), message, mend)


_TURNS_OVER = "somersault"
_MEND = "take it out: there is a way to the same end that nobody is hurt by"
_END = "take it out, and say when it ends: whoever is not well stops, and is looked at"
_CLOTHED = (
    f"make it a drill of its own, with - hazard: {TIRES} under safety and a watcher under helpers; "
    "light clothes, where everybody can stand"
)
_found = once(_judged)


def _clothed(entry: Entry, text: str) -> str:
    """The words by which a text has people swim in clothes that nothing is done about."""
    words = swims_clothed(text)
    if words and isinstance(entry, Drill) and (entry.is_on_land or _is_watched(entry)):
        return ""
    return words


def _is_watched(drill: Drill) -> bool:
    named = {own.hazard for own in drill.hazards}
    return TIRES in named and any(own.job == WATCHER for own in drill.helpers)


@refuses("stunt")
def stunt(analysis: Analysis) -> Iterator[Problem]:
    """No text asks for what hurts whatever is limited: hands or feet tied or a mouth taped,
    eyes shut at a wall or at speed, running on the deck, a leap with a run-up, somebody sat on,
    thrown in or pushed under, two who meet head on, a contest in gliding. Nor is there gear that
    keeps a swimmer from seeing.
    """
    yield from _found(analysis, "stunt")


@refuses("neglect")
def neglect(analysis: Analysis) -> Iterator[Problem]:
    """No text has people go on in pain, ill, dizzy, thirsty, in thunder or in the dark, with nobody
    on deck, until they drop, or as a punishment.
    """
    yield from _found(analysis, "neglect")


@refuses("somersaults")
def somersaults_in_a_row(analysis: Analysis) -> Iterator[Problem]:
    """No text has anybody turn over more often in a row than ``somersaults_most`` in the policy,
    nor a drill with somersaults a dose of more reps than ``somersaults_in_all_most``: a giddy
    swimmer under water does not know which way is up.
    """
    yield from _found(analysis, "somersaults")


@refuses("abreast")
def abreast_in_a_lane(analysis: Analysis) -> Iterator[Problem]:
    """No text has more swimmers side by side in one lane than ``abreast_most`` in the policy."""
    yield from _found(analysis, "abreast")


@refuses("clothes-unsaid")
def clothes_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Nobody swims in clothes but in a drill that names the hazard of tiring out of depth and asks
    for a watcher: cloth that is full of water weighs, and cannot be let go.
    """
    yield from _found(analysis, "clothes-unsaid")
