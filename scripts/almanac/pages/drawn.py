"""The figures of entries' pages: the body of a drill, its neighbours, the ladder of a progression."""

from __future__ import annotations

from markupsafe import Markup

from almanac.figures.body import body_figure
from almanac.figures.ladder import Rung, progression_ladder
from almanac.figures.neighbours import neighbours
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Ids
from almanac.model.knowledge import Drill
from almanac.model.progression import Progression


def figure(drill: Drill) -> Markup:
    """The body figure of a drill. Its id lets the deck card on the same page show it again."""
    choice = drill.figure
    svg = body_figure(
        position=drill.position,
        arms=drill.arms,
        kick=drill.kick,
        stroke=drill.stroke,
        gear=drill.gear.needs,
        setting=choice.setting,
        posture=choice.posture,
        wall=choice.wall,
        face=choice.face,
        together=choice.together,
        one_leg=choice.one_leg,
        moment=2 if choice.moment is None else choice.moment,
        identifier=f"figure-{drill.id}",
    )
    return Markup(svg.replace("<svg ", '<svg id="drawing" ', 1))


def neighbours_figure(catalogue: Catalogue, drill: Drill) -> Markup:
    """A drill among the drills that are easier, harder and needed first; nothing where it stands alone."""

    def titles(ids: Ids) -> list[str]:
        return [catalogue.drills[id].title for id in ids]

    easier, harder, first = titles(drill.easier), titles(drill.harder), titles(drill.needs_first)
    svg = neighbours(drill.title, easier=easier, harder=harder, needs_first=first, identifier=f"neighbours-{drill.id}")
    return Markup(svg)


def ladder_figure(progression: Progression) -> Markup:
    """The stages of a progression as a ladder."""
    rungs = [Rung(stage.title, stage.aim) for stage in progression.stages]
    return Markup(progression_ladder(rungs, identifier=f"ladder-{progression.id}", name=progression.title))
