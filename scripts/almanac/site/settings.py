"""The settings of the site that its pages need, from what the club says of it."""

from __future__ import annotations

from dataclasses import dataclass, field

from almanac.model.catalogue import Catalogue
from almanac.model.club import SiteColours

_ABOUT = "A swimming club's drill catalogue, checked and added up."
LIGHT, DARK = "#0d4a66", "#8fd0ee"
"""The colours of what is pressed, as styles/tokens.css has them."""


@dataclass(frozen=True)
class SiteSettings:
    """Name and description of the site; ``address`` is its own, ``repository`` that of its host's
    pages, each "" where unset.

    Links in calendars and QR codes need ``address``. ``repository`` ends neither in a slash nor in
    ``.git``. ``has_water`` is false of a club that has no pool.
    """

    name: str
    description: str
    address: str = ""
    repository: str = ""
    colours: SiteColours = field(default_factory=lambda: SiteColours(LIGHT, DARK))
    has_water: bool = True


def settings_of(catalogue: Catalogue) -> SiteSettings:
    """The settings that a club's file gives, the program's own for what it does not say."""
    club, site = catalogue.club, catalogue.club.site
    return SiteSettings(
        site.name or club.title,
        site.about or _ABOUT,
        site.address if site.address.endswith("/") or not site.address else f"{site.address}/",
        site.repository.rstrip("/").removesuffix(".git"),
        SiteColours(site.colours.light or LIGHT, site.colours.dark or DARK),
        bool(club.waters),
    )
