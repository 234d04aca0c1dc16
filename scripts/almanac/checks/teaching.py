"""Rules on drills, faults and progressions: what leads to what, and what was taught first."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.graph import circles
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.drawing import GEAR
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.source.reader import DataPath


@forbids("circle")
def circle(analysis: Analysis) -> Iterator[Problem]:
    """``easier``, ``harder`` and ``needs_first`` each lead one way.

    A drill that is easier than itself by way of others, or needs itself first, can never be
    reached. The finding shows the circle as a chain of ids and stands at the drill that comes first
    in it by name.
    """
    drills = analysis.catalogue.drills
    for relation in ("easier", "harder", "needs_first"):
        graph = {id: getattr(drill, relation) for id, drill in drills.items()}
        for chain in circles(graph):
            following = chain[1] if len(chain) > 1 else chain[0]
            index = getattr(drills[chain[0]], relation).index(following)
            shown = " → ".join([*chain, chain[0]])
            message = f"'{relation}' goes round in a circle: {shown}"
            mend = "take one step out of it"
            if len(chain) == 1:
                message = f"'{relation}' of {chain[0]} names {chain[0]} itself"
                mend = f"take {chain[0]} out of '{relation}'"
            yield Problem(drills[chain[0]], (relation, index), message, mend)


@forbids("easier-and-harder")
def easier_and_harder(analysis: Analysis) -> Iterator[Problem]:
    """A drill names no other under both ``easier`` and ``harder``. Two that each name the other
    are a ``circle``.
    """
    for drill in analysis.catalogue.drills.values():
        for index, other in enumerate(drill.easier):
            if other in drill.harder:
                yield Problem(
                    drill,
                    ("easier", index),
                    f"'{other}' stands under easier and harder",
                    "keep one of the two",
                )


@warns("needs-higher-level")
def needs_higher_level(analysis: Analysis) -> Iterator[Problem]:
    """What a drill needs first is of the same level or a lower one."""
    order = list(analysis.catalogue.words("levels"))
    for drill in analysis.catalogue.drills.values():
        for index, need in enumerate(drill.needs_first):
            level = analysis.catalogue.drills[need].level
            if order.index(level) > order.index(drill.level):
                message = f"'{need}' is {level}, above this drill's {drill.level}"
                yield Problem(
                    drill,
                    ("needs_first", index),
                    message,
                    "raise this drill's level, or need another first",
                )


@warns("undrawn-word")
def undrawn_word(analysis: Analysis) -> Iterator[Problem]:
    """What a drill says of the body can be drawn.

    A word that is new to the body figure is good everywhere else; the drill's picture is a plain
    figure in a frame until the word is drawn. Gear that the figure does not know is named and not
    drawn.
    """
    for drill in analysis.catalogue.drills.values():
        for field, word in drill.undrawn:
            path: DataPath = (field,) if field in VOCABULARY_OF else ("figure", field)
            message = f"'{word}' is not drawn yet, and the drill has a neutral picture"
            yield Problem(drill, path, message, _to_draw(word))
        for number, gear in enumerate(drill.gear.needs):
            if gear not in GEAR:
                message = f"'{gear}' is not drawn yet, and the picture goes without it"
                path = ("gear", "needs", number)
                yield Problem(drill, path, message, _to_draw(gear))


def _to_draw(word: str) -> str:
    return (
        f"accept the warning; in the program, add '{word}' to scripts/almanac/model/drawing.py and "
        "its shape to scripts/almanac/drawing/swimmer"
    )


@forbids("effort-range")
def effort_range(analysis: Analysis) -> Iterator[Problem]:
    """A drill's range of effort runs from the easier word to the harder."""
    order = list(analysis.catalogue.efforts)
    for drill in analysis.catalogue.drills.values():
        if order.index(drill.effort.easiest) > order.index(drill.effort.hardest):
            message = f"from {drill.effort.easiest} to {drill.effort.hardest} runs backwards"
            yield Problem(
                drill,
                ("effort",),
                message,
                f"write from: {drill.effort.hardest}, to: {drill.effort.easiest}",
            )


@forbids("dose-range")
def dose_range(analysis: Analysis) -> Iterator[Problem]:
    """A drill's reps run from fewer to more, and the most in a practice is not below the fewest."""
    for drill in analysis.catalogue.drills.values():
        least, most = drill.dose.reps.least, drill.dose.reps.most
        if least > most:
            yield Problem(
                drill,
                ("dose", "reps"),
                f"from {least} to {most} runs backwards",
                f"write from: {most}, to: {least}",
            )
        elif drill.dose.most < least:
            message = f"at most {drill.dose.most} in a practice, though one go has {least} at least"
            yield Problem(drill, ("dose", "most"), message, f"write {least} or more")


@forbids("one-right-answer")
def one_right_answer(analysis: Analysis) -> Iterator[Problem]:
    """Each question of a progression has exactly one right answer."""
    for progression in analysis.catalogue.progressions.values():
        for number, stage in enumerate(progression.stages):
            for index, question in enumerate(stage.check_yourself):
                right = sum(option.right for option in question.options)
                if right != 1:
                    path = ("stages", number, "check_yourself", index)
                    message = (
                        f"{right or 'none'} of its answers {'is' if right < 2 else 'are'} "
                        "marked right"
                    )
                    yield Problem(progression, path, message, "mark one answer with 'right: true'")


@forbids("stage-before-need")
def stage_before_need(analysis: Analysis) -> Iterator[Problem]:
    """The stages of a progression agree with what its drills need first.

    Where a stage teaches a drill, a drill that it needs first must not be taught in a later stage.
    """
    drills = analysis.catalogue.drills
    for progression in analysis.catalogue.progressions.values():
        first: dict[str, int] = {}
        for number, stage in enumerate(progression.stages):
            for id in stage.drills:
                first.setdefault(id, number)
        for number, stage in enumerate(progression.stages):
            for index, id in enumerate(stage.drills):
                for need in drills[id].needs_first:
                    if first.get(need, number) > number:
                        message = (
                            f"'{id}' needs '{need}' first, which comes only in stage "
                            f"{first[need] + 1}"
                        )
                        yield Problem(
                            progression,
                            ("stages", number, "drills", index),
                            message,
                            "change their order",
                        )


@warns("mends-nothing-back")
def mends_nothing_back(analysis: Analysis) -> Iterator[Problem]:
    """A drill that claims to mend a fault is named by a cause of that fault.

    Otherwise a coach who starts from the fault never finds the drill.
    """
    for drill in analysis.catalogue.drills.values():
        for index, id in enumerate(drill.mends):
            fault = analysis.catalogue.faults[id]
            if not any(drill.id in cause.mended_by for cause in fault.causes):
                message = f"no cause of '{id}' names this drill"
                yield Problem(
                    drill,
                    ("mends", index),
                    message,
                    f"add it under a cause in {fault.file}, or remove it here",
                )
