"""Files that were renamed since the last commit: which id an old one has become."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import cached_property
from pathlib import Path, PurePosixPath

from almanac.kinds import KIND
from almanac.source.git.objects import RevisionError, contents, tree
from almanac.source.git.revision import resolve

_LIKE = 0.6  # of its lines: git's own measure for a rename is a half
_MOST_ASKED = 30


@dataclass(frozen=True, eq=False)
class Renamed:
    """The renames below one root since its last commit, looked up only when one is asked for.

    ``texts`` are the present files' texts by their paths.
    """

    root: Path
    texts: Mapping[str, str]

    def __call__(self, kind: str, id: str) -> str:
        """The id of the one file that an entry's of the last commit has become; "" for none."""
        if kind not in KIND or KIND[kind].single:
            return ""
        before = self._gone.get((kind, id))
        return self._like(kind, before) if before is not None else ""

    def _like(self, kind: str, before: str) -> str:
        near = [
            PurePosixPath(file).stem
            for file in self._new
            if file.startswith(f"{KIND[kind].files}/") and _alike(before, self.texts[file])
        ]
        return near[0] if len(near) == 1 else ""

    @property
    def was_asked(self) -> bool:
        """Whether the last commit was looked at: what is said then hangs on it too."""
        return "_committed" in vars(self)

    @cached_property
    def _committed(self) -> dict[str, str]:
        """Objects of the last commit by path; none where there is no repository."""
        try:
            listed = tree(self.root, resolve(self.root, "HEAD"))
            return {it.path: it.object for it in listed if it.path.endswith(".yml")}
        except RevisionError:
            return {}

    @cached_property
    def _new(self) -> list[str]:
        return [file for file in self.texts if file not in self._committed]

    @cached_property
    def _gone(self) -> dict[tuple[str, str], str]:
        """By kind and id, the text of each file of the last commit that is no more."""
        paths = {
            (kind.key, PurePosixPath(path).stem): self._committed[path]
            for kind in KIND.values()
            for path in self._committed
            if path.startswith(f"{kind.files}/") and path not in self.texts
        }
        few = dict(list(paths.items())[:_MOST_ASKED])
        held = _held(self.root, set(few.values()))
        return {key: held[name] for key, name in few.items() if name in held}


def _held(root: Path, objects: Iterable[str]) -> dict[str, str]:
    asked = sorted(objects)
    try:
        return {
            name: raw.decode("utf-8", "replace")
            for name, raw in (contents(root, asked) if asked else ())
        }
    except RevisionError:
        return {}


def _alike(one: str, other: str) -> bool:
    return SequenceMatcher(None, one.splitlines(), other.splitlines(), False).ratio() >= _LIKE
