"""The figures of entries' pages: the body of a drill, its neighbours, the ladder of a
progression.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from html import unescape
from weakref import WeakKeyDictionary

from markupsafe import Markup, escape

from almanac.drawing.charts.ladder import Rung, progression_ladder
from almanac.drawing.charts.neighbours import neighbours
from almanac.drawing.swimmer.body import Words, picture_drawing
from almanac.drawing.swimmer.fault import fault_drawing
from almanac.model.catalogue import Catalogue
from almanac.model.drawing import DrawingChoice
from almanac.model.drill import Drill
from almanac.model.entry import Ids
from almanac.model.fault import Fault
from almanac.model.fault_drawing import FaultDrawing
from almanac.model.moving import Activity
from almanac.model.progression import Progression
from almanac.model.vocabularies import DOLPHIN, FLUTTER, VOCABULARY_OF
from almanac.site.pictures import FOLDER, named

# Of each catalogue, as long as there is one, the drill whose picture each drill has.
_NAMES: WeakKeyDictionary[Catalogue, dict[str, str]] = WeakKeyDictionary()
_FLUTTERS, _DOLPHINS = r'class="kick-leg(?! kick-dolphin)', "kick-dolphin"


def figure(catalogue: Catalogue, drill: Drill) -> Markup:
    """The body figure of a drill. Its id lets the deck card on the same page show it again."""
    svg = picture(catalogue, drill)
    svg = svg.replace("<svg ", f"<svg {moving(catalogue, svg)}", 1)
    for part in ("title", "desc"):
        svg = svg.replace(f'"figure-{part}"', f'"figure-{drill.id}-{part}"')
    return Markup(svg)


def moving(catalogue: Catalogue, svg: str) -> str:
    """The attributes by which a page can set the kick of a picture going: seconds a cycle of each
    kick that it shows, and in words how fast it was measured to be. None where no rate is known.
    """
    beats = {
        kick: beat
        for kick, shown in ((FLUTTER, _FLUTTERS), (DOLPHIN, _DOLPHINS))
        if re.search(shown, svg)
        and (beat := getattr(catalogue.words("kicks").get(kick), "beat", None)) is not None
    }
    cycles = "".join(
        f'data-{kick}-s="{1 / beat.cycles_per_s:.3f}" ' for kick, beat in beats.items()
    )
    told = " ".join(
        f"{catalogue.words('kicks')[kick].title}: {beat.cycles_per_s} cycles a second of each leg "
        f"({beat.measured}; {beat.source})."
        for kick, beat in beats.items()
    )
    return f'{cycles}data-beat="{escape(told)}" ' if beats else ""


def figure_file(catalogue: Catalogue, id: str) -> str:
    """The file of a drill's picture, which is that of the first that is drawn alike."""
    if catalogue not in _NAMES:
        drills = catalogue.drills.items()
        _NAMES[catalogue] = named({name: picture(catalogue, drill) for name, drill in drills})
    return f"{FOLDER}/{_NAMES[catalogue][id]}.svg"


@dataclass(frozen=True)
class PictureWords:
    """A picture for who does not see it, where a page shows it as a file: in a line, and in all its
    words.
    """

    title: str
    words: str


def figure_told(catalogue: Catalogue, id: str) -> PictureWords:
    """A drill's picture in the drawing's own words."""
    return _told(picture(catalogue, catalogue.drills[id]))


def fault_told(fault: Fault) -> PictureWords:
    """A fault's picture, wrong beside right, in the drawing's own words."""
    return _told(str(fault_figure(fault)))


def _told(svg: str) -> PictureWords:
    return PictureWords(*(_within(svg, name) for name in ("title", "desc")))


def _within(svg: str, name: str) -> str:
    found = re.search(rf"<{name}\b[^>]*>(.*?)</{name}>", svg, re.DOTALL)
    return unescape(found[1]) if found else ""


def picture(catalogue: Catalogue, drill: Drill) -> str:
    """The body figure by itself: the same for all drills that are drawn alike."""
    titles = tuple(
        (field, catalogue.words(VOCABULARY_OF[field])[word].title)
        for field, word in drill.undrawn
        if field in VOCABULARY_OF
    )
    shows_speeds = bool(drill.drawing.speed)
    efforts = tuple((word, effort.title) for word, effort in catalogue.efforts.items())
    return _drawn(
        drill.activity, drill.gear.needs, drill.drawing, titles, efforts if shows_speeds else ()
    )


Titles = tuple[tuple[str, str], ...]


@lru_cache(maxsize=1024)
def _drawn(
    activity: Activity, gear: Ids, choice: DrawingChoice, titles: Titles, efforts: Titles
) -> str:
    words = Words(activity.position, activity.arms, activity.kick, activity.stroke, gear)
    svg = picture_drawing(
        words, choice, identifier="figure", titles=dict(titles), efforts=dict(efforts)
    )
    return svg.replace("<svg ", '<svg id="drawing" ', 1)


def fault_figure(fault: Fault) -> Markup:
    """The picture of a fault beside what is right; nothing where it says none."""
    if fault.drawing is None:
        return Markup("")
    return Markup(_fault_drawn(fault.drawing).replace('"figure-', f'"figure-{fault.id}-'))


def fault_files(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """The picture of each fault as a file beside its page, for the pages that teach it: the file's
    name, and SVG.
    """
    for id, fault in catalogue.faults.items():
        if fault.drawing is not None:
            yield fault_file(id), str(fault_figure(fault))


def fault_file(id: str) -> str:
    """The file of a fault's picture."""
    return f"faults/{id}.svg"


@lru_cache(maxsize=256)
def _fault_drawn(choice: FaultDrawing) -> str:
    svg = fault_drawing(choice, identifier="figure")
    return svg.replace("<svg ", '<svg id="drawing" ', 1)


def neighbours_chart(catalogue: Catalogue, drill: Drill) -> Markup:
    """A drill among the drills that are easier, harder and needed first; nothing where it stands
    alone.
    """

    def titles(ids: Ids) -> list[str]:
        return [catalogue.drills[id].title for id in ids]

    easier, harder, first = titles(drill.easier), titles(drill.harder), titles(drill.needs_first)
    svg = neighbours(
        drill.title,
        easier=easier,
        harder=harder,
        needs_first=first,
        identifier=f"neighbours-{drill.id}",
    )
    return Markup(svg)


def ladder_chart(progression: Progression) -> Markup:
    """The stages of a progression as a ladder."""
    rungs = [Rung(stage.title, stage.aim) for stage in progression.stages]
    return Markup(
        progression_ladder(rungs, identifier=f"ladder-{progression.id}", name=progression.title)
    )
