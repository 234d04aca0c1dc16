"""The page of a fault."""

from __future__ import annotations

from almanac.model.catalogue import Catalogue
from almanac.model.fault import Cause, Fault
from almanac.site.drawing_html import fault_figure
from almanac.site.entry_page import entry_page, evidence_rows
from almanac.site.links import Page, link


def fault_page(catalogue: Catalogue, fault: Fault) -> Page:
    """The page of a fault."""
    viewpoints = catalogue.words("viewpoints")
    return entry_page(
        catalogue,
        fault,
        figure=fault_figure(fault),
        stroke=catalogue.words("strokes")[fault.stroke].title,
        see=[(viewpoints[sight.viewpoint].title, sight.what) for sight in fault.see],
        causes=[
            (
                cause,
                [link(catalogue.drills[id]) for id in cause.mended_by],
                _needs(catalogue, cause),
            )
            for cause in fault.causes
        ],
        look_alikes=[
            (link(catalogue.faults[other.fault]), other.difference)
            for other in fault.not_to_confuse_with
        ],
        evidence=evidence_rows(catalogue, fault.evidence),
    )


def _needs(catalogue: Catalogue, cause: Cause) -> str:
    """What a test needs, in words; "" where it needs nothing."""
    return ", ".join([*(catalogue.gear[id].title.lower() for id in cause.gear), *cause.needs])
