"""The site measured as a phone meets it: weight of a first visit, speed of the finder, Lighthouse;
each beside its budget.
"""

from __future__ import annotations

import functools
import gzip
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.publish.build import build_site
from almanac.site.entry_parts import Parts
from almanac.site.finder import Finder
from bench_keys import key_times

ROOT = Path(__file__).resolve().parents[1]
CHROMIUM = os.environ.get("ALMANAC_CHROMIUM", "")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
DRILL = "drills/back-streamline-kick.html"
LOOKED_AT = (  # a page of each sort that Lighthouse looks at
    DRILL, "index.html", "find.html", "tonight.html", "sets/kick-and-go.html",
    "faults/knees-break-surface.html", "practices/heron-kick-and-go.html",
    "blocks/osprey-towards-200-back.html", "gear/parachute.html", "benchmarks/back-kick-200.html",
    "progressions/kick-into-stroke.html", "drills/index.html", "run.html", "add.html",
    "safety.html", "sources/bosquet-2007.html", "needs/sore-shoulder.html", "computed.html",
    "settings.html", "more.html", "kick-cycle.html", "cards.html", "coverage.html", "by/goal.html",
)  # fmt: skip
DRILLS, SLOWED = 1000, 4
PHONE: ViewportSize = {"width": 360, "height": 640}
LIGHTHOUSE = "lighthouse@12.8.2"
BUDGETS = {
    "weight": 200_000,
    "finder": 100.0,
    "performance": 95,
    "accessibility": 100,
    "best-practices": 100,
    "seo": 100,
    "cumulative-layout-shift": 0.05,
}

# From a tap on a choice, or a letter typed, to the frame in which the list stands. Runs in the
# page.
_TAPS = """async ({ rounds }) => {
  const drawn = () => new Promise(done => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = done;
    channel.port2.postMessage(0);
  }));
  const measure = async act => {
    await drawn();
    const start = performance.now();
    act();
    await drawn();
    return performance.now() - start;
  };
  document.querySelectorAll("details.facet-box").forEach(box => { box.open = true; });
  const times = [];
  for (let round = 0; round < rounds; round += 1) {
    const inputs = [...document.querySelectorAll("fieldset input")]
      .filter(input => !input.disabled && input.value);
    const input = inputs[(round * 7919) % inputs.length];
    times.push(await measure(() => input.click()));
    const words = document.getElementById("find-words");
    const typed = "streamlien kick bak".slice(0, round % 20);
    times.push(await measure(() => {
      words.value = typed;
      words.dispatchEvent(new Event("input", { bubbles: true }));
    }));
    if (round % 3 === 2) {
      times.push(await measure(() => document.querySelector("[data-clear]").click()));
    }
  }
  return times;
}"""


class _Zipped(SimpleHTTPRequestHandler):
    """Serves text compressed, as a web host does."""

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path.split("?")[0]))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        body = path.read_bytes()
        text = path.suffix not in {".png", ".gz"}
        body = gzip.compress(body, 9, mtime=0) if text else body
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "max-age=600")
        if text:
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *arguments: object) -> None:
        pass


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a folder served on loopback."""
    server = ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(_Zipped, directory=str(folder))
    )
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()


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


def multiply_drills(root: Path, drills: int) -> None:
    """Copies of the drills under new ids and titles, until there are ``drills``."""
    own = sorted((root / "drills" / "skills").glob("*/*.yml"))
    for number in range(drills - len(own)):
        path = own[number % len(own)]
        copy = number // len(own) + 2
        text = re.sub(
            r"(?m)^title: *\"?(.*?)\"?$", rf'title: "\1 {copy}"', path.read_text("utf-8"), count=1
        )
        path.with_name(f"{path.stem}-{copy}.yml").write_text(text, "utf-8")


def give_finder(site: Path, work: Path, drills: int) -> int:
    """Put the table of a catalogue with ``drills`` drills into the finder's page, and its texts
    beside it. Returns the rows that it has.
    """
    multiply_drills(work / "root", drills)
    catalogue = load(work / "root").catalogue
    assert catalogue is not None
    finder = Finder(Parts(Analysis(catalogue, date.today())))
    data, (file, texts) = finder.data(), finder.texts()
    (site / file).write_text(texts, "utf-8")
    page = site / "find.html"
    table = json.dumps(data, separators=(",", ":")).replace("<", "\\u003c")
    text = re.sub(
        r'(id="finder-data">)[^<]*', lambda found: found[1] + table, page.read_text("utf-8")
    )
    page.write_text(text, "utf-8")
    return len(data["rows"])


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


def finder_times(page: Page, address: str, rounds: int) -> list[float]:
    """Milliseconds from tap to list, the processor slowed, sorted."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    page.goto(address + "find.html")
    page.wait_for_selector("[data-found][data-texts=read]", timeout=120_000)
    return sorted(page.evaluate(_TAPS, {"rounds": rounds}))


def lighthouse(address: str, page: str, work: Path) -> dict[str, float] | str:
    """Lighthouse's scores of a page for a phone, and how far it shifts; or why there are none."""
    if shutil.which("npx") is None:
        return "npx is not here: install Node.js 20 or newer"
    out = work / f"{page.replace('/', '-')}.json"
    flags = "--headless=new " + " ".join(ARGUMENTS)
    command = [
        "npx",
        "--yes",
        LIGHTHOUSE,
        address + page,
        "--quiet",
        f"--chrome-flags={flags}",
        "--output=json",
        f"--output-path={out}",
        "--only-categories=performance,accessibility,best-practices,seo",
    ]
    done = subprocess.run(
        command,
        env={**os.environ, "CHROME_PATH": CHROMIUM},
        capture_output=True,
        text=True,
        check=False,
    )
    if not out.is_file():
        return (
            f"{LIGHTHOUSE} did not run: "
            f"{(done.stderr.strip().splitlines() or ['no reason given'])[-1]}"
        )
    told = json.loads(out.read_text("utf-8"))
    if "BENCH_KEEP" in os.environ:
        shutil.copy(out, os.environ["BENCH_KEEP"])
    shift = "cumulative-layout-shift"
    scores = {name: round(100 * own["score"]) for name, own in told["categories"].items()}
    return {**scores, shift: told["audits"][shift]["numericValue"]}


class Report:
    """Lines of measured against budget; remembers whether one was exceeded."""

    def __init__(self) -> None:
        self.exceeded = False

    def line(
        self, what: str, value: float, name: str, unit: str, more: str = "", at_least: bool = False
    ) -> None:
        """One figure: fine at most at its budget, or with ``at_least`` at least at it."""
        budget = BUDGETS[name]
        fine = value >= budget if at_least else value <= budget
        self.exceeded |= not fine
        bound = "at least" if at_least else "at most"
        digits = 0 if budget >= 1 else 3
        print(
            f"{'fine' if fine else 'OVER':5}{what:62}{value:>10,.{digits}f} {unit:3} {bound} "
            f"{budget:,.{digits}f}{more}",
            flush=True,
        )


def main() -> int:
    """Measure everything once and print it. Returns 1 where a budget is exceeded."""
    if not CHROMIUM:
        sys.exit("no Chromium: set ALMANAC_CHROMIUM to its path")
    report = Report()
    with (
        tempfile.TemporaryDirectory(prefix="almanac-bench-") as name,
        sync_playwright() as playwright,
    ):
        work = Path(name)
        site = built_site(work)
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
        with served(site) as address:
            weight, requests = first_visit(browser, address)
            report.line(
                "first visit of a drill page, compressed",
                weight,
                "weight",
                "B",
                f", {requests} requests",
            )
            for page in LOOKED_AT:
                scores = lighthouse(address, page, work)
                if isinstance(scores, str):
                    print(f"skip Lighthouse: {scores}")
                    break
                for what, score in scores.items():
                    is_score = what != "cumulative-layout-shift"
                    report.line(f"{page}: {what}", score, what, "", at_least=is_score)
            keys = key_times(browser, browser.new_page(viewport=PHONE), address)
            late, middle = keys[int(len(keys) * 0.95)], keys[len(keys) // 2]
            report.line(
                f"a key in Find, main thread {SLOWED} × slowed, 95th percentile",
                SLOWED * late,
                "finder",
                "ms",
                f", median {SLOWED * middle:.0f}, worst {SLOWED * keys[-1]:.0f}, {len(keys)} keys",
            )
            rows = give_finder(site, work, DRILLS)
            times = finder_times(browser.new_page(viewport=PHONE), address, 60)
            middle, late = times[len(times) // 2], times[int(len(times) * 0.95)]
            more = f", median {middle:.0f}, worst {times[-1]:.0f}, {len(times)} acts"
            report.line(
                f"finder, {rows} rows, {SLOWED} × slowed, 95th percentile",
                late,
                "finder",
                "ms",
                more,
            )
        browser.close()
    return int(report.exceeded)


if __name__ == "__main__":
    sys.exit(main())
