"""The site measured as a phone meets it: weight of a first visit, speed of Make a practice and of
the finder, Lighthouse; each beside its goal.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from datetime import date
from pathlib import Path

from playwright.sync_api import Browser, ViewportSize, sync_playwright

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.publish.build import build_site
from bench_finder import SLOWED, finder_times, give_finder
from bench_host import served
from bench_keys import key_times
from bench_lighthouse import ARGUMENTS, CHROMIUM, SHIFT, lighthouse
from bench_lines import Report
from bench_make import speed_of_make

ROOT = Path(__file__).resolve().parents[1]
DRILL = "drills/back-streamline-kick.html"
LOOKED_AT = (  # a page of each sort that Lighthouse looks at
    DRILL, "index.html", "find.html", "tonight.html", "sets/kick-and-go.html",
    "faults/knees-break-surface.html", "practices/heron-kick-and-go.html",
    "blocks/osprey-towards-200-back.html", "gear/parachute.html", "benchmarks/back-kick-200.html",
    "progressions/kick-into-stroke.html", "drills/index.html", "run.html", "add.html",
    "safety.html", "sources/bosquet-2007.html", "needs/sore-shoulder.html", "computed.html",
    "settings.html", "more.html", "make.html", "around.html",
    "kick-cycle.html", "cards.html", "coverage.html", "by/goal.html",
)  # fmt: skip
PHONE: ViewportSize = {"width": 360, "height": 640}
DRILLS = 1000  # that the finder has when taps are timed
MOST_BYTES, MOST_MS, MOST_SHIFT = 200_000, 100.0, 0.05
LEAST_SCORES = {"performance": 95, "accessibility": 100, "best-practices": 100, "seo": 100}


def built_site(work: Path) -> Path:
    """The repository's site, built below ``work``."""
    root, site = work / "root", work / "site"
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, root / name)
    loaded = load(root)
    if loaded.catalogue is None:
        sys.exit("the catalogue does not load: run almanac check")
    build_site(Analysis(loaded.catalogue, date.today()), loaded.names, root, site)
    return site


def first_visit(browser: Browser, address: str) -> tuple[int, int]:
    """Bytes on the wire, headers too, and requests of a first visit to a drill's page."""
    context = browser.new_context(viewport={"width": 360, "height": 640})
    page = context.new_page()
    session = context.new_cdp_session(page)
    sizes: list[float] = []
    session.on("Network.loadingFinished", lambda event: sizes.append(event["encodedDataLength"]))
    session.send("Network.enable")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(address + DRILL, wait_until="networkidle")
    page.wait_for_timeout(500)
    context.close()
    return round(sum(sizes)), len(asked)


def scores_of(report: Report, address: str, work: Path) -> None:
    """Lighthouse's scores of each page, beside their goals; says where there can be none."""
    for page in LOOKED_AT:
        scores = lighthouse(address, page, work)
        if isinstance(scores, str):
            print(f"skip Lighthouse: {scores}")
            return
        report.line(f"{page}: {SHIFT}", scores.pop(SHIFT), MOST_SHIFT, digits=3)
        for what, score in scores.items():
            report.line(f"{page}: {what}", score, LEAST_SCORES[what], at_least=True)


def speed_of_finder(report: Report, site: Path, browser: Browser, address: str, work: Path) -> None:
    """What a key costs with the drills that there are, and a tap with many more."""
    keys = key_times(browser, browser.new_page(viewport=PHONE), address)
    report.line(
        f"a key in Find, main thread {SLOWED} × slowed, 95th percentile",
        SLOWED * keys[int(len(keys) * 0.95)],
        MOST_MS,
        "ms",
        f", median {SLOWED * keys[len(keys) // 2]:.0f}, worst {SLOWED * keys[-1]:.0f},"
        f" {len(keys)} keys",
    )
    rows = give_finder(site, work, DRILLS)
    times = finder_times(browser.new_page(viewport=PHONE), address, 60)
    report.line(
        f"finder, {rows} rows, {SLOWED} × slowed, 95th percentile",
        times[int(len(times) * 0.95)],
        MOST_MS,
        "ms",
        f", median {times[len(times) // 2]:.0f}, worst {times[-1]:.0f}, {len(times)} acts",
    )


def main() -> int:
    """Measure everything once and print it. Returns 1 where a goal is missed."""
    if not CHROMIUM:
        sys.exit("no Chromium: set ALMANAC_CHROMIUM to its path")
    report = Report(width=62)
    with (
        tempfile.TemporaryDirectory(prefix="almanac-bench-") as name,
        sync_playwright() as playwright,
    ):
        work = Path(name)
        site = built_site(work)
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
        with served(site) as address:
            weight, requests = first_visit(browser, address)
            more = f", {requests} requests"
            report.line("first visit of a drill page, compressed", weight, MOST_BYTES, "B", more)
            scores_of(report, address, work)
            speed_of_make(report, browser, address)
            speed_of_finder(report, site, browser, address, work)
        browser.close()
    return report.exit_code


if __name__ == "__main__":
    sys.exit(main())
