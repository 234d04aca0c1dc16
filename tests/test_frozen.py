"""What frozen dataclasses are made by, beside the library's own."""

import pickle
from dataclasses import FrozenInstanceError, dataclass, field, replace
from functools import cached_property

import pytest

from almanac.frozen import kept, quick


@quick
@dataclass(frozen=True, slots=True)
class Slotted:
    first: float
    second: str = "as told"
    third: tuple[int, ...] = ()


@quick
@dataclass(frozen=True)
class Plain:
    first: float
    second: str = "as told"

    @kept
    def twice(self) -> float:
        """Worked out once."""
        asked.append(self.first)
        return 2 * self.first


@quick
@dataclass(frozen=True, kw_only=True)
class Named:
    third: list[int] = field(default_factory=list)
    second: str = "as told"


@quick
@dataclass(frozen=True)
class Longer(Named):
    first: float


asked: list[float] = []


def test_what_is_made_for_a_field_is_made_anew_for_each() -> None:
    one, other = Longer(1.0), Longer(1.0, second="other")
    assert one.third == other.third == [] and one.third is not other.third
    assert (one.second, other.second) == ("as told", "other")
    assert Longer(1.0, third=[1]) == replace(one, third=[1])
    with pytest.raises(TypeError):
        Longer(1.0, [1])  # type: ignore[misc]


def test_it_is_made_and_refuses_as_the_librarys() -> None:
    for own in (Slotted(1.0), Plain(first=1.0)):
        assert (own.first, own.second) == (1.0, "as told")
        assert replace(own, second="other").second == "other"
        assert own == type(own)(1.0) != type(own)(2.0) and hash(own) == hash(type(own)(1.0))
        assert pickle.loads(pickle.dumps(own)) == own
        with pytest.raises(FrozenInstanceError):
            own.first = 2.0  # type: ignore[misc]
    assert repr(Slotted(1.0, third=(2,))) == "Slotted(first=1.0, second='as told', third=(2,))"
    with pytest.raises(TypeError):
        Plain()  # type: ignore[call-arg]


def test_what_is_kept_is_worked_out_once_and_documented() -> None:
    asked.clear()
    own = Plain(21.0)
    assert own.twice == own.twice == 42.0 and asked == [21.0]
    assert isinstance(vars(Plain)["twice"], cached_property)
    assert vars(Plain)["twice"].__doc__ == "Worked out once."
    assert own == Plain(21.0)
