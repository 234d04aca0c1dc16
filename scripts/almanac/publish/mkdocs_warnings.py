"""What MkDocs warns of, kept from the terminal and told as a SiteError."""

from __future__ import annotations

import logging
from collections.abc import Iterator
from contextlib import contextmanager

from jinja2 import TemplateError
from mkdocs.exceptions import MkDocsException
from yaml import YAMLError

from almanac.publish.errors import SiteError


@contextmanager
def as_site_error() -> Iterator[list[str]]:
    """Keep what MkDocs warns of from the terminal, and make a SiteError of what it raises, which
    tells both. Yields what was said so far.
    """
    said: list[str] = []
    with _listening(said):
        try:
            yield said
        except (MkDocsException, TemplateError, YAMLError) as problem:
            lines = "\n".join([*said, str(problem)]).rstrip()
            raise SiteError(f"MkDocs failed:\n{lines}") from problem


class _Ear(logging.Handler):
    def __init__(self, said: list[str]) -> None:
        super().__init__(logging.WARNING)
        self._said = said

    def emit(self, record: logging.LogRecord) -> None:
        self._said.append(f"{record.levelname}: {record.getMessage()}")


@contextmanager
def _listening(said: list[str]) -> Iterator[None]:
    """Gather in ``said`` what MkDocs warns of, and keep it from the terminal."""
    logger, ear = logging.getLogger("mkdocs"), _Ear(said)
    logger.addHandler(ear)
    was, logger.propagate = logger.propagate, False
    try:
        yield
    finally:
        logger.propagate = was
        logger.removeHandler(ear)
