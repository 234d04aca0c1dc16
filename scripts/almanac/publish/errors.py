"""What keeps a site from being built."""

from __future__ import annotations


class SiteError(Exception):
    """The site could not be built; the message says why, in a sentence."""


class PortError(Exception):
    """A port cannot be had; the message says why, in a sentence."""
