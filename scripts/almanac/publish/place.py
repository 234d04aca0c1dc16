"""Where a site may be put, and how it is put there: nothing that this program has not built is ever
replaced.
"""

from __future__ import annotations

import contextlib
import json
import shutil
from pathlib import Path

from almanac.kinds import TOP_FOLDERS
from almanac.publish.errors import PlaceError
from almanac.publish.offline import LIST, WORKER, file_hash, is_unlisted
from almanac.publish.turn import LOCK
from almanac.resources import HOME, PACKAGE, SITE_SOURCE
from almanac.site.folder import Folder

_FIRST_PAGE = "index.html"  # the one that people change by hand
_PAGES_OF_A_SAVE = 3
_MOST_BYTES = 50_000_000  # of a list of files
_REPOSITORY = ".git"
_KEPT = ("CNAME", ".nojekyll")  # what hosts ask to stand beside a site
_LITTER = (".DS_Store", "Thumbs.db", "desktop.ini")


def place_of(out: Path, root: Path, work: Path) -> Path:
    """The folder that a site for ``out`` goes to; a link stays a link, and what it leads to is that
    folder. ``root`` holds the entries, ``work`` what a build keeps.

    Raises PlaceError where something else stands there, or all of it stands below.
    """
    try:
        place = out.resolve()
        _keep_sources(place, root.resolve(), work.resolve())
        _keep_others(place)
    except RuntimeError:  # what Path raises for a circle of links
        raise PlaceError(f"{out} is a link that leads round in a circle") from None
    except OSError as problem:
        raise PlaceError(f"{out} cannot be looked at: {problem.strerror}") from None
    return place


def _keep_sources(place: Path, root: Path, work: Path) -> None:
    for above in (root, HOME, SITE_SOURCE, PACKAGE):
        if _is_below(above, place):
            what = "is the folder of" if above == place else "holds"
            whose = "the entries" if above == root else "the program"
            raise PlaceError(f"{place} {what} {whose}, which a site would replace; {_MEND}")
    folders = [root / name for name in (*TOP_FOLDERS, _REPOSITORY)]
    for source in (*folders, work, SITE_SOURCE, PACKAGE):
        if _is_below(place, source.resolve()):
            raise PlaceError(f"{place}: no site belongs in {source}; {_MEND}")


_MEND = "name another folder with --out"


def _keep_others(place: Path) -> None:
    there = next(path for path in (place, *place.parents) if path.exists())
    if not there.is_dir():
        raise PlaceError(f"{there} is a file; {_MEND}")
    if there != place:
        return
    if (place / _REPOSITORY).exists():
        raise PlaceError(f"{place} is a Git repository, which a site would replace; {_MEND}")
    if any(place.iterdir()) and not is_built(place):
        raise PlaceError(
            f"{place} holds what no build of a site has put there, and it would be lost; "
            f"empty that folder yourself, or {_MEND}"
        )
    if is_built(place):
        _keep_strangers(place)


def _keep_strangers(place: Path) -> None:
    """Raises PlaceError where somebody has put a file of their own into a site of ours."""
    listed = json.loads((place / LIST).read_bytes())["files"]
    if _is_changed(place, listed):
        raise PlaceError(
            f"{place / _FIRST_PAGE} was changed after a build had made it, and that would be lost; "
            f"move it elsewhere, or {_MEND}"
        )
    for path in sorted(place.rglob("*")):
        file = path.relative_to(place).as_posix()
        is_none = path.is_dir() and not path.is_symlink()
        if not is_none and file not in listed and not is_unlisted(file) and not _is_hosts(file):
            raise PlaceError(
                f"{path} is of no build of this program, and it would be lost; "
                f"move it elsewhere, or {_MEND}"
            )


def _is_changed(place: Path, listed: object) -> bool:
    """Whether somebody has changed the first page of a site by hand: it is not as the list of the
    site says, and nearly all other pages are. Where more differ, a ``serve`` was killed at a save.
    """
    if not isinstance(listed, dict) or not _differs(place, _FIRST_PAGE, listed):
        return False
    pages = (file for file in listed if file.endswith(".html"))
    return sum(_differs(place, file, listed) for file in pages) < _PAGES_OF_A_SAVE


def _differs(place: Path, file: str, listed: dict[str, object]) -> bool:
    said, page = listed.get(file), place / file
    if not isinstance(said, list) or not said or not page.is_file():
        return False
    return bool(file_hash(page.read_bytes()) != said[0])


def _is_hosts(file: str) -> bool:
    """Whether a file is what a host asks for, which is kept, or the litter of a file manager."""
    return file in _KEPT or file.rpartition("/")[2] in _LITTER


def is_built(folder: Path) -> bool:
    """Whether a folder carries the mark of a site that this program has built: its list of files,
    and the worker beside it.
    """
    listed = folder / LIST
    try:
        if listed.stat().st_size > _MOST_BYTES or not (folder / WORKER).is_file():
            return False
        mark = json.loads(listed.read_bytes())
    except (OSError, ValueError, RecursionError):
        return False
    is_mark = isinstance(mark, dict) and {"format", "version", "files"} <= mark.keys()
    return is_mark and isinstance(mark["files"], dict | list)


def _is_below(inner: Path, outer: Path) -> bool:
    """Whether a folder is another or stands below it, by whatever name."""
    return any(_is_same(path, outer) for path in (inner, *inner.parents))


def _is_same(one: Path, other: Path) -> bool:
    if one == other:
        return True
    try:  # capitals may not count here
        return one.samefile(other)
    except OSError:
        return False


def keep_others_work(work: Path) -> None:
    """Raises PlaceError where the folder that a build keeps its pages in is somebody else's, and
    OSError.
    """
    settings = work / "mkdocs.yml"
    is_own = (work / LOCK).exists() or (
        settings.is_file() and settings.read_bytes().startswith(b"INHERIT: ")
    )
    for folder in (work / "pages", work / "site"):
        if not is_own and folder.is_dir() and any(folder.iterdir()):
            raise PlaceError(f"{folder} is of no build of this program: move it elsewhere")


def mend(place: Path) -> None:
    """Undo what a build that was killed between its two renames has left. Raises OSError."""
    old = _old(place)
    if is_built(old):
        if place.exists():
            shutil.rmtree(old, ignore_errors=True)
        else:
            old.rename(place)
    shutil.rmtree(_new(place), ignore_errors=True)


def put(fresh: Path, place: Path) -> None:
    """Put a fresh site in place of what stands there by renames, so that a reader sees the one or
    the other. The old one stays where the fresh one was, for the next build to take what is equal
    from.

    Raises PlaceError and OSError; then what stood there stands there.
    """
    place.parent.mkdir(parents=True, exist_ok=True)
    mend(place)
    _keep_others(place)  # again: the build took a while, and somebody may have come since
    for name in _KEPT:
        if (place / name).is_file():
            shutil.copy2(place / name, fresh / name)
    old, new = _old(place), fresh
    if _are_apart(fresh, place.parent):
        new = _new(place)
        _copy(fresh, new)
    if old.exists():
        raise PlaceError(f"{old} is in the way: move it elsewhere")
    has_old = place.exists()
    if has_old:
        place.rename(old)
    try:
        new.rename(place)
    except OSError:
        if has_old:
            old.rename(place)
        raise
    if has_old and new is fresh:
        with contextlib.suppress(OSError):
            old.rename(fresh)
    shutil.rmtree(old, ignore_errors=True)


def _are_apart(one: Path, other: Path) -> bool:
    """Whether no rename leads from one folder to the other."""
    return one.stat().st_dev != other.stat().st_dev


def _copy(fresh: Path, new: Path) -> None:
    copied = Folder(new)
    try:
        for path in sorted(fresh.rglob("*")):
            if path.is_file():
                copied.put(path.relative_to(fresh).as_posix(), path.read_bytes())
    except OSError:
        shutil.rmtree(new, ignore_errors=True)
        raise


def _old(place: Path) -> Path:
    return place.with_name(f".{place.name}.almanac-old")


def _new(place: Path) -> Path:
    return place.with_name(f".{place.name}.almanac-new")
