"""Compose a practice from the catalogue: up to three, each piece with its reason.

``compose practice`` takes what is wished for, proposes, says what it could not meet and which wish
to drop for it, and writes a proposal as an entry (--save).
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from itertools import pairwise
from typing import NoReturn

from almanac.commands import compose_block, compose_practice
from almanac.commands.every_command import shared_arguments
from almanac.commands.outcome import UsageError
from almanac.source.suggest import nearest

NAME = "compose"
_FOLLOWS = "its value has to follow it"


class _Wishes(argparse.ArgumentParser):
    """Of a wish that cannot be read one sentence alone, as of any other wish that cannot be; the
    usage is longer than a screen.
    """

    def error(self, message: str) -> NoReturn:
        message = message.replace("expected one argument", _FOLLOWS)
        about, _, problem = message.partition("argument ")
        raise UsageError(problem if not about and problem else message)

    def parse_known_args(  # type: ignore[override]
        self, args: Sequence[str] | None = None, namespace: argparse.Namespace | None = None
    ) -> tuple[argparse.Namespace, list[str]]:
        """The same; what is no option, stands alone or has an empty value is told here, where the
        options are known.
        """
        for option, value in pairwise(args or ()):
            if option in self._option_string_actions and not value:
                raise UsageError(f"{option}: {_FOLLOWS}")
        found, others = super().parse_known_args(args, namespace)
        if others:
            raise UsageError(self._no_option(others[0].partition("=")[0]))
        return found, others

    def _no_option(self, word: str) -> str:
        if not word.startswith("-"):
            return f"'{word}' stands alone: names in a row have commas and no spaces between them"
        options = [own for own in self._option_string_actions if own.startswith("--")]
        near = nearest(word, options)
        return f"there is no option {word}; " + (
            f"did you mean {near}?" if near else f"{self.prog} --help has them all"
        )


def add_arguments(parser: argparse.ArgumentParser) -> None:
    own_class: type[argparse.ArgumentParser] = _Wishes
    what = parser.add_subparsers(
        dest="what",
        metavar="WHAT",
        required=True,
        help="what is composed",
        parser_class=own_class,
    )
    for module in (compose_practice, compose_block):
        shared = [shared_arguments(again=True)]
        own = what.add_parser(
            module.NAME,
            parents=shared,
            help=module.HELP,
            description=module.__doc__,
            usage=f"almanac compose {module.NAME} {module.EXAMPLE}",
        )
        module.add_arguments(own)
        own.set_defaults(compose=module.run)


def run(arguments: argparse.Namespace) -> int:
    code: int = arguments.compose(arguments)
    return code
