"""How long Find takes to answer a tap or a letter, with many more drills than there are."""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path

from playwright.sync_api import Page

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.site.entry_parts import Parts
from almanac.site.finder import Finder

SLOWED = 4  # times: a phone's processor beside this one
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


def finder_times(page: Page, address: str, rounds: int) -> list[float]:
    """Milliseconds from tap to list, the processor slowed, sorted."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    page.goto(address + "find.html")
    page.wait_for_selector("[data-found][data-texts=read]", timeout=120_000)
    return sorted(page.evaluate(_TAPS, {"rounds": rounds}))
