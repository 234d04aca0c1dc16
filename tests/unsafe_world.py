"""A small club with deep, shallow and unmeasured pools, two squads, a cord and a mat: what sessions
are tried on.
"""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

from example_cases import BASE

from almanac.analysis.analysis import Analysis
from almanac.checks import RULES, check
from almanac.model.load import load

TODAY = date(2026, 10, 1)
POOLS = """\
  home: {title: Home pool, course: 25m, lanes: 4, depth_m: {from: 1.0, to: 2.0}, flags: true,
    water_c: 28,
    ends: {start: {title: Deep end, depth_m: 2.0, platform_m: 0.7, edge_m: 0.3, ledge: true,
      lanes: {4: {starts: false}}},
           turn: {title: Shallow end, depth_m: 1.0, platform_m: 0.3}}}
  half: {title: Half deep, course: 25m, lanes: 4, depth_m: {from: 1.1, to: 1.5}, flags: true,
    ends: {start: {depth_m: 1.5, platform_m: 0.6}, turn: {depth_m: 1.1, platform_m: 0.3}}}
  shallow: {title: Teaching pool, course: 25m, lanes: 4, depth_m: {from: 0.8, to: 1.1}, flags: true,
    water_c: 28.5}
  unknown: {title: Somewhere, course: 25m, lanes: 4, depth_m: {from: 1.0, to: 3.0}, flags: true}
  bare: {title: Without flags, course: 25m, lanes: 4, depth_m: {from: 2.0, to: 2.0}, flags: false,
    water_c: 27}
  steps: {title: With steps, course: 25m, lanes: 2, depth_m: {from: 1.0, to: 2.0}, flags: true,
    ends: {start: {depth_m: 2.0, platform_m: 0.6, lanes: {1: {depth_m: 1.0}}},
      turn: {depth_m: 1.0, platform_m: 0.3}}}
  long: {title: Long pool, course: 50m, lanes: 4, depth_m: {from: 1.1, to: 1.1}, flags: true}
  cold: {title: Lido, course: 25m, lanes: 4, depth_m: {from: 2.0, to: 2.0}, flags: true,
    water_c: 19}
  hot: {title: Spa, course: 25m, lanes: 4, depth_m: {from: 2.0, to: 2.0}, flags: true, water_c: 33}
"""
GROUPS = """\
  osprey-1:
    title: Osprey, lanes 1 and 2
    squad: osprey
    lanes: 2
    heads: 4
    gap: 0:10
    tests: [{benchmark: back-kick-50, time: 0:50.0, course: 25m, on: 2026-09-15}]
  osprey-2:
    title: Osprey, lane 3
    squad: osprey
    lanes: 1
    heads: 2
    gap: 0:10
    tests: [{benchmark: back-kick-50, time: 0:52.0, course: 25m, on: 2026-09-15}]
"""
WORDS = {
    "starts": """\
  dive: {title: From a dive, means: Head first off the block., enters: head-first, ready_s: 20}
  edge-dive: {title: Off the edge, means: Head first off the edge., enters: head-first, off: edge,
    ready_s: 20}
  back-start: {title: Backstroke start, means: Feet on the wall., enters: backwards}
  ledge-start: {title: Ledge start, means: Toes on the ledge., enters: backwards, off: ledge,
    ready_s: 10}
  step-in: {title: Step in, means: Feet first off the edge., enters: feet-first, ready_s: 20}
  belly-flop: {title: Our own start, means: A word that says not how.}
  push-off: {title: Push from the wall, means: Feet on the wall., enters: in-the-water}
""",
    "partners": """\
  holds-feet: {title: Holds the feet, means: The partner stands and holds., takes_turns: true,
    depth_m: {to: 1.3}}
""",
    "teams": """\
  relay-of-two: {title: Relay of two, means: Two share the distance., swimmers: 2}
""",
}  # fmt: skip
CORD = """\
title: Cord
summary: An elastic tube from the wall to a belt, heavier with every metre.
acts_on: [body]
effect: resists
what_it_changes: The load rises with every metre that is kicked away from the wall.
hazards: [{hazard: head-into-wall, control: The anchor is pulled by hand before each use.}]
not_for: {levels: [foundation], people: [A lane that others use.]}
change_s: 30
pace_factor: 1.0
drag: {calibrate: true, how: Read a scale on deck at each mark of the tape.}
tied_to: either
care: Rinse and dry out of the sun.
review: {by: head-coach, on: 2026-09-01, again: 2027-09-01}
"""
PRACTICE = """\
title: Session
summary: A session that some coach has written down.
squad: {squad}
pool: {pool}
slot: {{start: "18:00", minutes: 75}}
focus: Toes make the water boil.
{adults}parts:
  - {{part: warm-up, items: [{{reps: 2, distance: 50, do: back-kick, effort: easy}}]}}
{parts}
"""
FORBIDDEN = {"start-forbidden", "shared-lane-unfit"}  # by others, so that no role may accept it
SAFETY = {rule.code for rule in RULES if rule.is_refusal} | FORBIDDEN


def write(root: Path, file: str, text: str) -> None:
    """Put a file below the root."""
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


def drill(root: Path, name: str, **changed: str) -> None:
    """Another drill: the back float with some fields otherwise, or more."""
    text = (BASE / "drills/skills/kicking/back-float.yml").read_text("utf-8")
    text = text.replace("title: Back float", f"title: {name.replace('-', ' ').capitalize()}")
    for key, value in changed.items():
        lines = text.splitlines()
        at = [number for number, line in enumerate(lines) if line.startswith(f"{key}:")]
        if at:
            lines[at[0]] = f"{key}: {value}"
        else:
            lines.insert(lines.index("steps:"), f"{key}: {value}")
        text = "\n".join(lines) + "\n"
    write(root, f"drills/skills/kicking/{name}.yml", text)


def club(root: Path) -> Path:
    """The club, without a session."""
    shutil.copytree(BASE, root)
    own = root / "plans/club.yml"
    text = own.read_text("utf-8")
    lines = text.splitlines(keepends=True)
    text = "".join(POOLS if line.startswith("  home:") else line for line in lines)
    text = text.replace("lane_groups:\n", f"lane_groups:\n{GROUPS}")
    text = text.replace("squads:\n",
                        "squads:\n  osprey: {title: Osprey, level: performing, sessions_a_week: "
                        "6}\n")  # fmt: skip
    own.write_text(text.replace("  fins: 4", "  fins: 4\n  cord: 3"), "utf-8")
    policy = root / "plans/policy.yml"
    text = policy.read_text("utf-8").replace(
        "  performing:\n", "  performing:\n    accepted_by: [head-coach]\n"
    )
    policy.write_text(text, "utf-8")
    for name, words in WORDS.items():
        head = f"title: {name.capitalize()}\nabout: Words of the sessions that are tried.\nwords:\n"
        write(root, f"drills/vocabulary/{name}.yml", head + words)
    modes = root / "drills/vocabulary/modes.yml"
    modes.write_text(
        modes.read_text("utf-8")
        + "  wall: {title: Wall work, means: Starts and turns.}\n"
        + "  underwater: {title: Under water, means: Below the surface.}\n"
        + "  land: {title: On land, means: Out of the water.}\n",
        "utf-8",
    )
    write(root, "drills/gear/cord.yml", CORD)
    held = "{time: 0:15, reps: {from: 2, to: 6}, rest: 0:15, most: 12}"
    drill(root, "held-kick", dose=held, level="performing")
    drill(root, "mat-line", mode="land", dose=held, effort="{from: easy, to: strong}")
    drill(root, "hard-mat-line", mode="land", dose=held, level="performing")
    drill(root, "deep-kick", dose=held, depth_m="{from: 1.8}")
    drill(root, "standing-wave", dose=held, depth_m="{to: 1.2}")
    drill(root, "block-start", mode="wall", start="dive")
    drill(root, "low-start", mode="wall", start="back-start")
    under = "{distance: 50, reps: {from: 2, to: 4}, rest: 1:30, most: 8}"
    watched = "[{job: watcher, each: lane}]"
    under_water = {"mode": "underwater", "under_water": "8", "helpers": watched}
    drill(root, "under", level="performing", dose=under, **under_water)
    drill(root, "turn-work", mode="wall", start="push-off")
    return root


def codes(
    root: Path,
    parts: str,
    *,
    squad: str = "osprey",
    pool: str = "home",
    adults: int | None = 9,
    more: str = "",
) -> set[str]:
    """The codes of safety that a session gives; ``parts`` are lines of a list, after the first."""
    told = "" if adults is None else f"adults: {adults}\n"
    text = PRACTICE.format(squad=squad, pool=pool, adults=told + more, parts=parts.rstrip())
    write(root, "plans/practices/session.yml", text)
    return found(root)


def analysis(root: Path) -> Analysis:
    """The analysis of a folder. Every file in it must be sound in itself."""
    loaded = load(root)
    assert not [finding for finding in loaded.findings if finding.is_error], loaded.findings
    assert loaded.catalogue is not None
    return Analysis(loaded.catalogue, TODAY)


def found(root: Path) -> set[str]:
    """The codes of safety that a folder gives."""
    return {finding.code for finding in check(analysis(root))} & SAFETY
