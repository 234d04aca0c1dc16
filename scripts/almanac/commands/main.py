"""``almanac COMMAND``: the arguments, the exit codes, and what happens when the program itself
fails.
"""

from __future__ import annotations

import argparse
import gc
import io
import os
import sys
import tempfile
import traceback
from collections.abc import Sequence
from pathlib import Path

from almanac import __version__
from almanac.commands import build, check, explain, new, review, serve, sum_
from almanac.commands.shared import FAULT, WRONG_USAGE, UsageError

COMMANDS = (check, build, serve, sum_, explain, new, review)
_MANY = 1_000_000  # new things between two looks for rubbish


def parser() -> argparse.ArgumentParser:
    """The whole command line."""
    top = argparse.ArgumentParser(
        prog="almanac", description="A swimming club's drill catalogue as code."
    )
    top.add_argument("--version", action="version", version=f"almanac {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", required=True)
    shared = argparse.ArgumentParser(add_help=False)
    shared.add_argument(
        "--root",
        type=Path,
        default=Path(),
        metavar="DIR",
        help="the folder that holds drills/ and plans/",
    )
    for module in COMMANDS:
        summary = (module.__doc__ or "").strip().splitlines()[0]
        command = commands.add_parser(
            module.NAME, parents=[shared], help=summary, description=module.__doc__
        )
        module.add_arguments(command)
        command.set_defaults(run=module.run)
    return top


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns 0 fine, 1 findings of severity error, 2 wrong usage, 3 a fault of
    the program.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(
                errors="backslashreplace"
            )  # a terminal that lacks an arrow or an accent is no fault
    gc.set_threshold(
        _MANY
    )  # a catalogue is many small things that all stay: to look often costs a fifth of a check
    try:
        arguments = parser().parse_args(argv)
        code: int = arguments.run(arguments)
        sys.stdout.flush()
        return code
    except SystemExit as ended:  # argparse has said what is wrong
        return ended.code if isinstance(ended.code, int) else WRONG_USAGE
    except UsageError as problem:
        print(f"almanac: {problem}", file=sys.stderr)
        return WRONG_USAGE
    except (KeyboardInterrupt, EOFError):
        return 130
    except BrokenPipeError:  # the reader of our output went away, as `almanac check | head` does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except Exception:
        print(
            f"almanac: a fault of the program itself; please report {_keep_traceback()}",
            file=sys.stderr,
        )
        return FAULT


def _keep_traceback() -> str:
    with tempfile.NamedTemporaryFile(
        "w", prefix="almanac-", suffix=".log", delete=False, encoding="utf-8"
    ) as file:
        traceback.print_exc(file=file)
    return file.name
