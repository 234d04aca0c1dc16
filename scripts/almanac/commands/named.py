"""What an argument names: an id or a title, in any case and number; else what is near."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Protocol, TypeVar

from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.commands.outcome import UsageError
from almanac.model.catalogue import Catalogue
from almanac.source.suggest import near_names, not_there, same_key

_LEAST_DAY = 2  # letters that tell a day of the week: mo, tu
V = TypeVar("V")


class Titled(Protocol):
    """What has a title."""

    @property
    def title(self) -> str: ...


@dataclass(frozen=True)
class NamesOf:
    """What there is of a kind: by id its title and other names, and what it means; ``hint`` says
    how these are named, where nothing is near.
    """

    what: str
    called: Mapping[str, Sequence[str]]
    means: Mapping[str, str] = field(default_factory=dict)
    hint: str = ""

    def id_of(self, given: str) -> str:
        """The id that is meant. Raises UsageError with what is near for a name of nothing, or of
        several.
        """
        if given in self.called:
            return given
        key = same_key(given)
        meant = [
            id for id, names in self.called.items() if key in map(same_key, (id, *names)) and key
        ]
        if len(meant) == 1:
            return meant[0]
        near = meant or near_names(given, self.called, self.means)
        hint = f"; {self.hint}" if self.hint and not near else ""
        raise UsageError(not_there(self.what, given, [*self.called], near) + hint)

    def ids_of(self, given: Iterable[str]) -> list[str]:
        """The same of several."""
        return [self.id_of(own) for own in given]

    def keyed(self, given: Mapping[str, V]) -> dict[str, V]:
        """The same of the names that something is told of. Raises UsageError too where two of them
        are the same.
        """
        found: dict[str, V] = {}
        for name, value in given.items():
            id = self.id_of(name)
            if id in found:
                raise UsageError(f"'{id}' is told twice, the second time as '{name}'")
            found[id] = value
        return found


def entries(what: str, every: Mapping[str, Titled]) -> NamesOf:
    """Entries, squads, pools or lane groups, which have a title and may have other names."""
    return NamesOf(
        what,
        {id: (own.title, *getattr(own, "also_called", ())) for id, own in every.items()},
    )


def words(catalogue: Catalogue, what: str, list_name: str) -> NamesOf:
    """The words of a vocabulary."""
    every = catalogue.words(list_name)
    return NamesOf(
        what,
        {id: (own.title, *getattr(own, "also", ())) for id, own in every.items()},
        {id: own.means for id, own in every.items()},
    )


def day_named(text: str) -> str:
    """A day of the week by its short name, from its name or the beginning of it: mon of Mondays,
    MON and mo. What is none is given back for its list to refuse.
    """
    plain = text.strip().casefold()
    for short, name in zip(DAYS, DAY_NAMES, strict=True):
        if len(plain) >= _LEAST_DAY and f"{name.casefold()}s".startswith(plain):
            return short
    return plain
