"""Rules on the dose that a drill gives itself: what sets are held to is no slip of the pen."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, refuses
from almanac.model.drill import Drill
from almanac.model.policy import Policy
from almanac.source.reader import DataPath
from almanac.units import show_number, show_time

_FASTEST = 2.5  # m/s, in the water: above any record
_FIFTY = 50.0


@refuses("dose-high")
def dose_high(analysis: Analysis) -> Iterator[Problem]:
    """The dose of a drill in the water has a ceiling of its own: what its ``most`` comes to is no
    farther than ``dose_drill_most`` in the policy, or where the whole stroke is swum
    ``dose_swim_most``; what is held is held no longer than ``dose_held_rep_most`` at one go and
    ``dose_held_most`` in all. Work on land is held to its minutes.
    """
    policy = analysis.catalogue.policy
    for drill in analysis.catalogue.drills.values():
        if not drill.is_on_land:
            for path, message, hint in _high(drill, policy):
                yield Problem(drill, path, message, hint, level=drill.level)


def _high(drill: Drill, policy: Policy) -> Iterator[tuple[DataPath, str, str]]:
    dose, most_path = drill.dose, ("dose", "most")
    if dose.time is not None:
        rep, whole = policy.limit("dose_held_rep_most"), policy.limit("dose_held_most")
        if dose.time > rep:
            yield ("dose", "time"), f"held for {show_time(dose.time)}", _at_most(show_time(rep))
        elif dose.most * dose.time > whole:
            held = show_time(dose.most * dose.time)
            yield most_path, f"held for {held} in a practice", _at_most(show_time(whole))
        return
    metres = dose.most * float(dose.distance or 0)
    limit = policy.limit("dose_swim_most" if drill.is_full_stroke else "dose_drill_most")
    if metres > limit:
        far = show_number(metres)
        yield most_path, f"{far} m of it in a practice", _at_most(f"{show_number(limit)} m")


def _at_most(what: str) -> str:
    return f"{what} at most: fewer, or shorter"


@refuses("dose-rest")
def dose_rest(analysis: Analysis) -> Iterator[Problem]:
    """The rest in a drill's dose is no less than the policy's least for the easiest effort that the
    drill is done at (``rest``): a share of the work is reckoned as if nobody swam below 2.5 m/s.
    """
    policy = analysis.catalogue.policy
    for drill in analysis.catalogue.drills.values():
        rule = policy.rest.get(drill.effort.easiest)
        if rule is None or drill.is_on_land:
            continue
        dose = drill.dose
        metres = float(dose.distance or _FIFTY * (dose.time or 0) / policy.limit("held_as_50"))
        if rule.least.seconds_per_50 is not None:
            asked = rule.least.seconds_per_50 * metres / _FIFTY
            least = min(asked, policy.limit("rest_by_distance_most"))
        else:
            work_s = dose.time or metres / _FASTEST
            least = (rule.least.share_of_work or 0.0) * work_s
        if dose.rest < least - 0.5:
            message = f"{show_time(dose.rest)} of rest, and it is {drill.effort.easiest} at least"
            hint = f"the policy asks {show_time(least)} for that"
            yield Problem(drill, ("dose", "rest"), message, hint, level=drill.level)
