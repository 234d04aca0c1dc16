"""Lighthouse on a page of the site, as a phone meets it."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path

CHROMIUM = os.environ.get("ALMANAC_CHROMIUM", "")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
LIGHTHOUSE = "lighthouse@12.8.2"
SHIFT = "cumulative-layout-shift"


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
    scores = {name: round(100 * own["score"]) for name, own in told["categories"].items()}
    return {**scores, SHIFT: told["audits"][SHIFT]["numericValue"]}
