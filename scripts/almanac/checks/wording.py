"""Rules on how entries are worded, as far as a program can tell."""

from __future__ import annotations

import re
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, warns
from almanac.model.drill import Drill
from almanac.source.reader import DataPath

_PARTICIPLES = r"(?:\w+ed|done|held|kept|made|taken|given|put|swum|drawn|thrown)"
_JOINED = r"(?!(?:until|when|once|while|if|that|which|who|and|as|so|where|before|after)\b)"
_PASSIVE = re.compile(rf"^(?:{_JOINED}[\w'-]+ ){{1,4}}(?:is|are) {_PARTICIPLES}\b")
_BARE_NUMBER = re.compile(
    r"\b(?:rest|gap|pause|wait|hold)(?: of| for)? (?P<number>\d+)\b(?![:.]\d)"
    r"(?! "
    r"?(?:s|m|yd|min|seconds?|minutes?|metres?|yards?|lengths?|beats?|strokes?|breaths?|times|reps?|swimmers?|to|or|and|-)\b)"
)


def _instructions(drill: Drill) -> Iterator[tuple[DataPath, str]]:
    """What a drill tells people to do or say, with its path."""
    for name in ("steps", "cues"):
        yield from (((name, number), text) for number, text in enumerate(getattr(drill, name)))
    yield from (
        (("goes_wrong", number, "say"), wrong.say) for number, wrong in enumerate(drill.goes_wrong)
    )
    yield from (
        (("safety", number, "control"), hazard.control)
        for number, hazard in enumerate(drill.hazards)
    )


@warns("empty-word")
def empty_word(analysis: Analysis) -> Iterator[Problem]:
    """Steps, cues, corrections and controls hold none of the policy's ``empty_words``.

    "Properly" and "be careful" tell nobody what to do: name the part of the body, the direction,
    the count.
    """
    words = analysis.catalogue.policy.empty_words
    if not words:
        return
    found = re.compile(r"\b(?:" + "|".join(map(re.escape, words)) + r")\b", re.IGNORECASE)
    for drill in analysis.catalogue.drills.values():
        for path, text in _instructions(drill):
            match = found.search(text)
            if match:
                hint = "say what to do, with which part, how far"
                yield Problem(drill, path, f"'{match.group()}' tells nobody what to do", hint)


@warns("passive-step")
def passive_step(analysis: Analysis) -> Iterator[Problem]:
    """A step begins with what the swimmer does: "Push off on the back", and not "The wall is pushed
    off".
    """
    for drill in analysis.catalogue.drills.values():
        for number, step in enumerate(drill.steps):
            match = _PASSIVE.match(step)
            if match:
                message = f"'{match.group()}' does not say who does it"
                yield Problem(drill, ("steps", number), message, "begin with what the swimmer does")


@warns("missing-unit")
def missing_unit(analysis: Analysis) -> Iterator[Problem]:
    """A rest, a gap or a hold that is given as a number has its unit: "rest 20 s", and not "rest
    20".
    """
    for drill in analysis.catalogue.drills.values():
        for path, text in _instructions(drill):
            match = _BARE_NUMBER.search(text)
            if match:
                yield Problem(
                    drill,
                    path,
                    f"'{match.group()}' has no unit",
                    f"write {match['number']} s, or what it counts",
                )
