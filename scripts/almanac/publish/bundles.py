"""The scripts of the pages: ES modules in ``site_src/``, bundled by esbuild with their libraries.

The bundles are package data in ``bundles/KEY/``, where KEY is a hash of all that goes into them:
nothing is done while it stays the same, and a folder is whole or not there. A program without
``site_src/``, installed from a wheel, uses what it brought along.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import shutil
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from almanac.publish.node import NodeError, alone, fetch_libraries, install_node, run_tool
from almanac.resources import BUNDLES, HOME, SITE_SOURCE

LICENCES = "scripts/licences.txt"
PUBLISHED = ("scripts", "fonts")
"""The folders of the bundles that become folders of the site."""
# Pages opened from a folder load no modules, so each bundle is a classic script. None of these
# makes code need `eval`, which the policy of the pages forbids.
_OPTIONS = (
    "--bundle",
    "--minify",
    "--format=iife",
    "--charset=utf8",
    "--target=es2022",
    "--log-level=warning",
    "--loader:.woff2=copy",
)
_LISTS = ("package.json", "package-lock.json")  # what is bundled, and the libraries
_FOLDERS = ("scripts", "offline")


def bundles(source: Path = SITE_SOURCE, store: Path = BUNDLES) -> Path:
    """The folder with the bundles of the sources as they are now, made where it is not there.

    Raises NodeError where they cannot be made.
    """
    if not (source / _LISTS[0]).is_file():  # installed: there is nothing to make them from
        return _brought_along(store)
    folder = store / key(source)
    if not folder.is_dir():
        store.mkdir(parents=True, exist_ok=True)
        with alone(source / "package.json"):
            if not folder.is_dir():  # another process may just have made it
                _make(source, folder)
                _drop_others(folder)
    return folder


def key(source: Path) -> str:
    """A hash of everything that the bundles are made from."""
    digest = hashlib.sha256(repr(_OPTIONS).encode())
    modules = sorted(path for folder in _FOLDERS for path in (source / folder).rglob("*.js"))
    for path in (*(source / name for name in _LISTS), *modules):
        content = path.read_bytes()
        digest.update(f"{path.relative_to(source).as_posix()} {len(content)}\n".encode() + content)
    return digest.hexdigest()[:16]


def _make(source: Path, folder: Path) -> None:
    with TemporaryDirectory(dir=folder.parent, prefix=".making-") as scratch:
        made, report = Path(scratch) / "made", Path(scratch) / "report.json"
        entries = json.loads((source / "package.json").read_text("utf-8"))["bundles"]
        where = (f"--outdir={made}", "--outbase=.", f"--metafile={report}")
        run_tool(source, "esbuild", *entries, *_OPTIONS, *where)
        packages = packages_of(json.loads(report.read_text("utf-8"))["inputs"])
        (made / LICENCES).write_text(
            "\n\n".join(_licence(source, name) for name in packages), "utf-8"
        )
        made.rename(folder)


def packages_of(inputs: Iterable[str]) -> list[str]:
    """The packages that bundled files come from: ``node_modules/@scope/name/...`` is of
    ``@scope/name``.
    """
    found = set()
    for path in inputs:
        _, inside, file = path.rpartition("node_modules/")
        if inside:
            parts = file.split("/")
            found.add("/".join(parts[: 2 if file.startswith("@") else 1]))
    return sorted(found)


def _licence(source: Path, package: str) -> str:
    """A bundled package's name, version and author, with the text of its licence."""
    folder = source / "node_modules" / package
    about = json.loads((folder / "package.json").read_text("utf-8"))
    title = f"{package} {about['version']} ({about['license']}), by {_author(about)}"
    texts = [
        path.read_text("utf-8")
        for path in sorted(folder.iterdir())
        if path.stem.lower() in ("license", "licence")
    ]
    if not texts and about["license"] == "MIT":  # named, but its text is left out
        _, _, terms = (HOME / "LICENSE").read_text("utf-8").partition("\nPermission is")
        texts = [f"Copyright (c) {_author(about)}\n\nPermission is{terms}"]
    return "\n\n".join([title, *texts])


def _author(about: Mapping[str, Any]) -> str:
    author = about["author"]
    return str(author["name"] if isinstance(author, dict) else author)


def _drop_others(folder: Path) -> None:
    for other in folder.parent.iterdir():
        if other.is_dir() and other != folder:
            shutil.rmtree(other, ignore_errors=True)


def _brought_along(store: Path) -> Path:
    # A newer version put over an older one leaves the folder of the older, with nothing in it.
    there = store.iterdir() if store.is_dir() else ()
    found = [path for path in there if path.is_dir() and any(path.iterdir())]
    if len(found) != 1:
        raise NodeError(
            "this installation holds no bundled scripts: install it again from a complete wheel"
        )
    return found[0]


def main() -> int:
    """Bundle what has changed, with Node from PyPI where the machine has none."""
    parser = argparse.ArgumentParser(description=main.__doc__)
    parser.add_argument(
        "--for-tests", action="store_true", help="fetch what checks the scripts, too"
    )
    for_tests = parser.parse_args().for_tests
    try:
        if for_tests or not (BUNDLES / key(SITE_SOURCE)).is_dir():
            install_node(HOME)
            fetch_libraries(SITE_SOURCE, for_tests)
        bundles()
    except NodeError as problem:
        print(problem, file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
