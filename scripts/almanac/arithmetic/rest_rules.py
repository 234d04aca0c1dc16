"""The rest that an effort asks after a rep."""

from __future__ import annotations

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Rep
from almanac.arithmetic.working import Known, Labelled, Product, Sum, Working
from almanac.model.policy import Policy, RestRule
from almanac.units import Course

# What is asked for is ``least``, below which a send-off is too tight, or ``wanted``.


def rest_after(
    rep: Rep, target: Working, scale: EffortScale, policy: Policy, course: Course, which: str
) -> Working:
    """The ``least`` or the ``wanted`` rest after a rep in seconds, for its mean rating.

    At the middle of an effort word's interval it is what that word's rule asks; between two
    middles it lies between the two rules, in proportion to the rating; beyond the first and the
    last middle it is that word's own. So no rep wants 12 s where the next, a breath harder, wants
    25 s.
    """
    easier, harder, along = scale.around(rep.mean_rating)
    fifties = _fifties(rep, target, policy, course)
    asked = [
        rest_working(getattr(policy.rest[word], which), fifties, target, policy)
        for word in ((easier, harder) if along else (easier,))
    ]
    if not along:
        return Labelled(asked[0], f"{which} rest at {scale.titles[easier]}", "s")
    named = [
        Product((Known(share), Labelled(rest, f"rest at {scale.titles[word]}", "s")))
        for share, rest, word in zip(
            (float(1 - along), float(along)), asked, (easier, harder), strict=True
        )
    ]
    ends = f"{scale.titles[easier]} to {scale.titles[harder]}"
    return Labelled(Sum(tuple(named)), f"{which} rest from {ends}", "s")


def rest_working(rule: RestRule, fifties: Known, target: Working, policy: Policy) -> Working:
    """Rest in seconds that one rule asks: so much for each 50 m, but never more than the policy's
    ``rest_by_distance_most``, or a share of the target time.

    A rep that is held rather than travelled counts as 50 m for each ``held_as_50`` seconds of it.
    """
    if rule.seconds_per_50 is None:
        return Product((Known(rule.share_of_work or 0.0, "share of the work"), target))
    asked = Product((Known(rule.seconds_per_50, "rest for each 50 m", "s"), fifties))
    most = policy.limit("rest_by_distance_most")
    return Known(most, "the most for distance", "s") if asked.value > most else asked


def _fifties(rep: Rep, target: Working, policy: Policy, course: Course) -> Known:
    if not rep.distance:
        return Known(target.value / policy.limit("held_as_50"))
    return Known(float(rep.distance) * course.unit.metres / 50)
