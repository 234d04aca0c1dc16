"""Compose a practice from the catalogue: up to three, each piece with its reason.

``compose practice`` takes what is wished for, proposes, says what it could not meet and which wish
to drop for it, and writes a proposal as an entry (--save).
"""

from __future__ import annotations

import argparse
from typing import NoReturn

from almanac.commands import compose_block, compose_practice
from almanac.commands.every_command import shared_arguments
from almanac.commands.outcome import UsageError

NAME = "compose"


class _Wishes(argparse.ArgumentParser):
    """Of a wish that cannot be read one sentence alone, as of any other wish that cannot be; the
    usage is longer than a screen.
    """

    def error(self, message: str) -> NoReturn:
        about, _, problem = message.partition("argument ")
        if not about and problem:
            raise UsageError(problem)
        super().error(message)


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
            module.NAME, parents=shared, help=module.HELP, description=module.__doc__
        )
        module.add_arguments(own)
        own.set_defaults(compose=module.run)


def run(arguments: argparse.Namespace) -> int:
    code: int = arguments.compose(arguments)
    return code
