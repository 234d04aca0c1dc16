"""What keeps a site from being built."""

from __future__ import annotations


class SiteError(Exception):
    """The site could not be built; the message says why, in a sentence."""


class PlaceError(SiteError):
    """A site may not be put where it was asked for; the message says why, in a sentence."""


class DiskError(SiteError):
    """The machine will not take the files of a site; the message names the path, in a sentence."""

    def __init__(self, problem: OSError, otherwise: object) -> None:
        """``otherwise`` is named where the problem names no path."""
        why = problem.strerror or str(problem)
        super().__init__(f"{problem.filename or otherwise}: {why}")


class PortError(Exception):
    """A port cannot be had; the message says why, in a sentence."""
