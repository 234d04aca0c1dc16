"""Seeded saves: what an editor, a script or a checkout may do to a catalogue between two runs."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from pathlib import Path

_SUMMARY = re.compile(r"(?m)^summary: (>-\n +)?(?=[A-Za-z])")
Save = Callable[[Path, random.Random], None]


def _entries(root: Path, folder: str) -> list[Path]:
    return sorted((root / folder).rglob("*.yml"))


def _replaced(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    path.write_text(text.replace(old, new, 1), "utf-8")


def edit_text(root: Path, chance: random.Random) -> None:
    """A sentence more in the summary of any entry that has one."""
    path = chance.choice([p for p in _entries(root, ".") if _SUMMARY.search(p.read_text("utf-8"))])
    seen = f"Seen {chance.randrange(1000)} times. "
    path.write_text(
        _SUMMARY.sub(lambda found: found[0] + seen, path.read_text("utf-8"), 1), "utf-8"
    )


def comment(root: Path, chance: random.Random) -> None:
    """A remark that changes nothing."""
    path = chance.choice(_entries(root, "."))
    path.write_text(f"{path.read_text('utf-8')}# {chance.randrange(1000)}\n", "utf-8")


def add_drill(root: Path, chance: random.Random) -> None:
    """A drill like another, under another name."""
    path = chance.choice([*_entries(root, "drills/skills"), *_entries(root, "drills/faults")])
    new = path.with_name(f"one-more-{chance.randrange(1000)}.yml")
    new.write_text(path.read_text("utf-8"), "utf-8")


def remove_set(root: Path, chance: random.Random) -> None:
    """A set gone; what names it loses it."""
    sets = _entries(root, "plans/sets")
    if len(sets) > 1:
        chance.choice(sets).unlink()


def retitle_goal(root: Path, chance: random.Random) -> None:
    """Another title for a word of a vocabulary."""
    _replaced(
        root / "drills/vocabulary/goals.yml", "title: Kick", f"title: Kick {chance.choice('abc')}"
    )


def rename_site(root: Path, chance: random.Random) -> None:
    """The site's name stands on every page."""
    _replaced(root / "plans/club.yml", "title: ", "site: {name: Our Drills}\ntitle: ")


def rename_word(root: Path, chance: random.Random) -> None:
    """A word that entries use gets another name: they are told, and the next time it is back."""
    path = root / "drills/vocabulary/goals.yml"
    old, new = ("  kick-endurance:", "  endurance:")
    _replaced(path, *((old, new) if old in path.read_text("utf-8") else (new, old)))


def break_or_mend(root: Path, chance: random.Random) -> None:
    """An entry broken, or the one that was broken mended."""
    broken = [p for p in _entries(root, "plans") if "\nnonsense: yes" in p.read_text("utf-8")]
    if broken:
        _replaced(broken[0], "\nnonsense: yes", "")
    else:
        path = chance.choice(_entries(root, "plans"))
        path.write_text(f"{path.read_text('utf-8')}\nnonsense: yes\n", "utf-8")


def no_yaml(root: Path, chance: random.Random) -> None:
    """A file cut off, as an editor may leave it for a moment; mended by the next."""
    drills = _entries(root, "drills/skills")
    half = [path for path in drills if path.read_text("utf-8").startswith("title: [")]
    if half:
        half[0].unlink()
    elif drills:
        chance.choice(drills).write_text("title: [", "utf-8")


def move_folder(root: Path, chance: random.Random) -> None:
    """A family of drills under another name."""
    families = sorted(p for p in (root / "drills/skills").iterdir() if p.is_dir())
    family = chance.choice(families)
    family.rename(family.with_name(f"family-{len(family.name)}-{chance.randrange(1000)}"))


def stray(root: Path, chance: random.Random) -> None:
    """What does not belong there: a picture, a folder, a link."""
    path = root / "plans" / f"stray-{chance.randrange(1000)}"
    chance.choice([path.mkdir, path.touch, lambda: path.symlink_to("nowhere")])()


SAVES: tuple[Save, ...] = (
    edit_text, comment, add_drill, remove_set, retitle_goal, rename_site, rename_word,
    break_or_mend, no_yaml, move_folder, stray,
)  # fmt: skip
