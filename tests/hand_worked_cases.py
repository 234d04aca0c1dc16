"""The sets of ``hand_worked/``, and the small catalogue with all of them in it as the program reads
it.
"""

from __future__ import annotations

import itertools
import re
import textwrap
import types
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import yaml
from shared import CATALOGUE, DAY, copied, made_once

from almanac.arithmetic.scaling import scalable, scaled
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.timing import Timing
from almanac.model.load import Loaded, load
from almanac.units import COURSES

FOLDER = Path(__file__).parent / "hand_worked"
WORDS = {  # that the small catalogue has no need of
    "starts": "dive: {title: From a dive, means: Head first from the edge., ready_s: 20, "
    "safety: [{hazard: head-into-floor, control: Deep end only.}]}",
    "partners": "by-turns: {title: By turns, means: One goes as the other rests., takes_turns: "
    "true}",
    "teams": "relay-of-four: {title: Relay of four, means: Four share the distance., swimmers: 4}",
}


@dataclass(frozen=True)
class Case:
    """A set as it is written, its ``items`` one by one, and what was worked out for it by hand; all
    values as written.
    """

    id: str
    items: tuple[str, ...]
    told: Mapping[str, Any]

    @property
    def worked(self) -> Mapping[str, Any]:
        """The figures that were worked out."""
        return self.told["worked"]

    def entry(self, *items: str) -> str:
        """The file of a set of some items, else of its own: the reader of the program is to read
        it.
        """
        own = ("variants", "most_in_lane")
        most = "".join(f"{name}: {self.told[name]}\n" for name in own if name in self.told)
        written = "".join(textwrap.indent(item, "  ") for item in items or self.items)
        return (
            f"title: {self.id.replace('-', ' ').capitalize()}\n"
            "purpose: A set whose totals were worked out by hand.\n"
            "goals: [kick-technique]\nlevel: performing\n"
            f"course: {self.told.get('course', '25m')}\n{most}items:\n{written}"
        )


def cases() -> list[Case]:
    """Every set of the folder."""
    return [case for path in sorted(FOLDER.glob("*.yml")) for case in _cases(path.read_text())]


def _cases(text: str) -> list[Case]:
    lines, all_told, found = text.splitlines(keepends=True), yaml.load(text, yaml.CBaseLoader), []
    for key, value in yaml.compose(text, yaml.CBaseLoader).value:
        items = next(node for name, node in value.value if name.value == "items")
        starts = [item.start_mark.line for item in items.value] + [items.end_mark.line]
        written = tuple(
            textwrap.dedent("".join(lines[start:end])) for start, end in itertools.pairwise(starts)
        )
        found.append(Case(key.value, written, all_told[key.value]))
    return found


CASES = cases()


def twice(case: Case) -> str:
    """A set of two rounds of the items of a case."""
    inner = "".join(textwrap.indent(item, "    ") for item in case.items)
    return case.entry(f"- rounds: 2\n  items:\n{inner}")


def turned(case: Case) -> str:
    """The items of a case, the last first."""
    return case.entry(*reversed(case.items))


# Swimmers of the lane groups that the sums were worked for: five and six to a lane, for the
# crowded cases.
HEADS = {"heron-1": 16, "heron-2": 15, "osprey-1": 14, "osprey-2": 15}


def with_heads(club: str) -> str:
    """A club with so many swimmers in each lane group."""
    for group, heads in HEADS.items():
        club, changed = re.subn(
            rf"(\n  {group}:\n(?:    .*\n)*?    heads: )\d+", rf"\g<1>{heads}", club
        )
        assert changed == 1, group
    return club


def read_all(factory: pytest.TempPathFactory, moved: bool = True) -> Loaded:
    """The small catalogue with every set, each as it is and, if ``moved``, twice over, and with its
    items turned round.
    """

    def make(folder: Path) -> None:
        copied(CATALOGUE, folder)
        club = folder / "plans" / "club.yml"
        club.write_text(with_heads(club.read_text("utf-8")), "utf-8")
        for name, word in WORDS.items():
            with (folder / "drills" / "vocabulary" / f"{name}.yml").open("a") as vocabulary:
                vocabulary.write(f"  {word}\n")
        for case in CASES:
            written = {"": case.entry()}
            if moved:
                written |= {" twice": twice(case), " turned": turned(case)}
            for ending, entry in written.items():
                titled = entry.replace("\n", f"{ending}\n", 1)
                name = f"{case.id}{ending.replace(' ', '-')}.yml"
                (folder / "plans" / "sets" / name).write_text(titled)

    return load(made_once(factory, "hand-worked" + ("-moved" if moved else ""), make))


def summary(
    loaded: Loaded,
    id: str,
    course: str | None = None,
    asked: Mapping[str, str] = types.MappingProxyType({}),
) -> SetSummary:
    """A set added up by the program for every lane group, in its own course or another, as it is
    written or ``asked`` for more rounds or reps.
    """
    assert loaded.catalogue is not None
    timing, own = Timing(loaded.catalogue, day=DAY), loaded.catalogue.sets[id]
    for what, number in asked.items():
        scale = scalable(own, what, loaded.catalogue.policy.limit("most_reps"))
        assert scale is not None
        own = scaled(own, scale, int(number))
    return summarise(timing, own, course and COURSES[course])
