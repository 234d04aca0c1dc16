"""``almanac COMMAND``: the arguments, the exit codes, and what happens when the program itself
fails.
"""

from __future__ import annotations

import argparse
import gc
import importlib
import io
import os
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, nullcontext, suppress
from pathlib import Path
from types import ModuleType
from typing import NoReturn

from almanac import STOPPED, __version__, cache, stop
from almanac.commands.every_command import shared_arguments
from almanac.commands.outcome import (
    FAULT,
    MACHINE,
    WRONG_USAGE,
    MachineError,
    UsageError,
    keep_traceback,
)

# By name, the module below ``almanac.commands``: only the one that is asked for is imported.
COMMANDS = {
    "check": "check",
    "build": "build",
    "serve": "serve",
    "sum": "sum_",
    "explain": "explain",
    "calc": "calc",
    "compose": "compose",
    "export": "export",
    "new": "new",
    "rename": "rename",
    "retire": "retire",
    "review": "review",
    "bring": "bring",
    "update": "update",
    "start": "start",
}
_SHARED = {"--root": 2, "--today": 2, "--no-cache": 1}  # how many words each takes
_MANY = 1_000_000  # new things between two looks for rubbish


def module_of(command: str) -> ModuleType:
    """The module of a command."""
    return importlib.import_module(f"almanac.commands.{COMMANDS[command]}")


def parser(argv: Sequence[str] = ()) -> argparse.ArgumentParser:
    """The command line: all of it, or where ``argv`` begins with a command that command alone."""
    top = argparse.ArgumentParser(
        prog="almanac",
        description="A swimming club's drill catalogue as code.",
        epilog="--root DIR, --today DATE and --no-cache, which every command takes, may stand "
        "before it or behind it.",
    )
    top.add_argument("--version", action="version", version=f"almanac {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", required=True)
    shared = shared_arguments()
    asked = argv[0] if argv else ""
    for name in [asked] if asked in COMMANDS else COMMANDS:
        module = module_of(name)
        command = commands.add_parser(
            name, parents=[shared], help=_first_sentence(module), description=module.__doc__
        )
        module.add_arguments(command)
        command.set_defaults(run=module.run)
    return top


def command_first(given: Sequence[str]) -> Sequence[str]:
    """The same words with what every command takes behind the command, where it stood before it."""
    at = 0
    while at < len(given) and (words := _SHARED.get(given[at].partition("=")[0])):
        at += 1 if "=" in given[at] else words
    if at < len(given) and given[at] in COMMANDS:
        return [given[at], *given[:at], *given[at + 1 :]]
    return given


def _first_sentence(module: ModuleType) -> str:
    text = " ".join((module.__doc__ or "").split())
    sentence, stop, _rest = text.partition(". ")
    return sentence + stop.strip()


def entry() -> NoReturn:
    """Run one command and end the process at once: to take apart all that a build has made takes a
    tenth of it.
    """
    code = main()
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError):  # main has told what could not be written
            stream.flush()
    os._exit(code)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns 0 fine, 1 findings of severity error, 2 wrong usage, 3 a fault of
    the program, 4 the machine's fault, 130 stopped by Ctrl-C.
    """
    _ready_streams()
    # A catalogue is many small things that all stay: to look often costs a fifth of a check.
    gc.set_threshold(_MANY)
    given = sys.argv[1:] if argv is None else argv
    try:
        if signal.getsignal(signal.SIGINT) is stop:  # from here on it is told below
            signal.signal(signal.SIGINT, signal.default_int_handler)
        given = command_first(given)
        arguments = parser(given).parse_args(given)
        with _without_cache() if arguments.no_cache else nullcontext():
            code: int = arguments.run(arguments)
        sys.stdout.flush()
    except SystemExit as ended:  # argparse has said what is wrong
        return ended.code if isinstance(ended.code, int) else WRONG_USAGE
    except UsageError as problem:
        return _end(WRONG_USAGE, str(problem))
    except MachineError as problem:
        return _end(MACHINE, str(problem))
    except (KeyboardInterrupt, EOFError):
        return _end(STOPPED, "stopped")
    except BrokenPipeError:  # the reader of our output went away, as `almanac check | head` does
        _print_no_more()
        return 0
    except OSError as problem:
        why = problem.strerror or str(problem)
        return _end(MACHINE, f"{problem.filename or 'the output'}: {why}")
    except Exception:  # noqa: BLE001 - whatever it was, the user gets one sentence and its log
        return _end(FAULT, f"a fault of the program itself; please report {keep_traceback()}")
    return code


def _ready_streams() -> None:
    """Have each of the three streams there, and none of them stumble over a character."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        stream = getattr(sys, name)
        if stream is None:  # closed by whoever called us
            setattr(sys, name, Path(os.devnull).open(mode))  # noqa: SIM115 (as long as the process)
        elif mode == "w" and isinstance(stream, io.TextIOWrapper):
            # A terminal that lacks an arrow or an accent is no fault.
            stream.reconfigure(errors="backslashreplace")


def _end(code: int, words: str) -> int:
    """Say one sentence, where that is possible. Returns the exit code."""
    try:
        sys.stdout.flush()
    except OSError:
        _print_no_more()
    with suppress(OSError):
        print(f"almanac: {words}", file=sys.stderr, flush=True)
    return code


def _print_no_more() -> None:
    """Python itself writes what is left when it ends, and would fail again."""
    with suppress(OSError, ValueError):  # a test's stream has no number
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


@contextmanager
def _without_cache() -> Iterator[None]:
    """Stores are neither read nor written, by this process and those that it starts."""
    before = os.environ.get(cache.SWITCH)
    os.environ[cache.SWITCH] = "1"
    try:
        yield
    finally:
        if before is None:
            del os.environ[cache.SWITCH]
        else:
            os.environ[cache.SWITCH] = before
