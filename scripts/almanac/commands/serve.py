"""Build the site, serve it on this machine alone, and keep it up to date as files are saved.

The page in view comes first and loads itself again. A broken entry shows its findings here and on
the page, and leaves the last good site standing.
"""

from __future__ import annotations

import argparse
import contextlib
import threading
from collections.abc import Callable
from datetime import date

from almanac.commands.outcome import ERRORS, FINE, MachineError, demand_explanations, root_of, today
from almanac.commands.rebuild import Rebuilder, tell
from almanac.commands.watch import Watch
from almanac.publish.dev_server import DevServer
from almanac.publish.errors import PortError
from almanac.publish.viewers import Viewers

NAME = "serve"
_HIGHEST_PORT = 65535


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--port",
        type=_port,
        default=8000,
        help="the port on 127.0.0.1 (default: 8000; 0 takes a free one)",
    )


def run(arguments: argparse.Namespace) -> int:
    demand_explanations()
    root = root_of(arguments.root).resolve()
    site, viewers = root / "site", Viewers()
    with Watch(root) as watch:
        rebuilder = Rebuilder(root, site, viewers, _day(arguments.today), watch.is_set)
        try:
            server = DevServer(arguments.port, site, viewers, rebuilder.finished)
        except PortError as problem:
            raise MachineError(str(problem)) from None
        with server:
            rebuilder.mend()
            if not rebuilder.rebuild() and not (site / "index.html").is_file():
                return ERRORS
            threading.Thread(target=_follow, args=(watch, rebuilder), daemon=True).start()
            with contextlib.suppress(KeyboardInterrupt):  # it may come as soon as it is offered
                tell(f"serving http://127.0.0.1:{server.server_port}/ (stop with Ctrl-C)")
                server.serve_forever()
            viewers.close()
            tell("stopped")
    return FINE


def _port(text: str) -> int:
    if not (text.isascii() and text.isdecimal() and int(text[:6]) <= _HIGHEST_PORT):
        raise argparse.ArgumentTypeError(f"'{text}' is no port: name one from 0 to {_HIGHEST_PORT}")
    return int(text)


def _day(given: date | None) -> Callable[[], date]:
    """The day that was asked for, or the one that it is: a server may run past midnight."""
    return lambda: given or today()


def _follow(watch: Watch, rebuilder: Rebuilder) -> None:
    rebuilder.prepare()
    while watch.wait():
        rebuilder.rebuild()
