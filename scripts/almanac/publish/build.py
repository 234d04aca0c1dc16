"""The whole site published: pages and data on disk, then MkDocs, then one rename."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from almanac.analysis.analysis import Analysis
from almanac.publish.bundles import bundles
from almanac.publish.node import NodeError
from almanac.publish.postprocess import postprocess
from almanac.resources import SETTINGS, SITE_SOURCE
from almanac.site.news import MOST_COMMITS, news_items
from almanac.site.settings import read_settings
from almanac.site.write import write_pages
from almanac.source.names import Names
from almanac.source.revision import history


class SiteError(Exception):
    """The site could not be built; the message says why, in a sentence."""


def build_site(analysis: Analysis, names: Names, root: Path, out: Path) -> None:
    """Write the pages of a checked catalogue, have MkDocs render them, and put the result in place
    of ``out``.

    Raises SiteError where that fails; ``out`` is then as it was.
    """
    work = root / "build"
    pages, fresh = work / "pages", work / "site"
    try:
        bundled = bundles()
        for folder in (pages, fresh):
            shutil.rmtree(folder, ignore_errors=True)
        settings = read_settings(SETTINGS)
        write_pages(analysis, names, settings, pages, news_items(history(root, MOST_COMMITS)))
        shutil.copytree(bundled / "scripts", pages / "scripts")
        _run_mkdocs(work, pages, fresh)
        postprocess(fresh, settings, (bundled / "offline" / "worker.js").read_text("utf-8"))
        _replace(fresh, out)
    except NodeError as problem:
        raise SiteError(str(problem)) from problem
    except OSError as problem:
        raise SiteError(f"{problem.filename}: {problem.strerror}") from problem


def _run_mkdocs(work: Path, pages: Path, fresh: Path) -> None:
    config = work / "mkdocs.yml"
    inherited = os.path.relpath(SETTINGS, work)
    theme = f"theme:\n  custom_dir: {SITE_SOURCE / 'theme'}\n"
    config.write_text(
        f"INHERIT: {inherited}\ndocs_dir: {pages.name}\nsite_dir: {fresh.name}\n{theme}", "utf-8"
    )
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "build",
        "--strict",
        "--quiet",
        "--config-file",
        str(config),
    ]
    done = subprocess.run(
        command,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise SiteError(f"MkDocs failed:\n{done.stdout}{done.stderr}".rstrip())


def _replace(fresh: Path, out: Path) -> None:
    """Put the fresh site in place of the old by renames, so that a reader sees the one or the
    other.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    if (
        fresh.stat().st_dev != out.parent.stat().st_dev
    ):  # a rename cannot cross file systems: copy beside it first
        near = out.with_name(f".{out.name}.new")
        shutil.rmtree(near, ignore_errors=True)
        fresh = Path(shutil.move(fresh, near))
    old = out.with_name(f".{out.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)
