"""How cattrs reads what a set is made of: items, their parts, efforts and send-offs, where an entry
may write one thing in more than one form.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any, cast

from cattrs import Converter
from cattrs.gen import make_dict_structure_fn, override

from almanac.model.assumed import Assumed
from almanac.model.effort_plans import Build, Descend, Effort, Hold, Rotate
from almanac.model.entry import Ids, Seconds
from almanac.model.manner import Aim, Waves
from almanac.model.reps import Change, Distance, Part, Reps
from almanac.model.sendoff import Sendoff
from almanac.model.swim_set import Item, Pause, Round
from almanac.units import parse_time

_OF_PART = ("distance", "time", "do", "effort")  # what reps of one part say of it themselves


def register_items(converter: Converter) -> None:
    """Teach a converter to read items."""
    converter.register_structure_hook(Distance, lambda data, _: _distance(data))
    converter.register_structure_hook(Effort, lambda data, _: _effort(data))
    converter.register_structure_hook(Sendoff, lambda data, _: _sendoff(data))
    converter.register_structure_hook(Assumed, lambda data, _: _assumed(data))
    plain_part = make_dict_structure_fn(
        Part, converter, _cattrs_forbid_extra_keys=True, hold_s=override(rename="time")
    )
    converter.register_structure_hook(
        Part, lambda data, cls: plain_part({"distance": 0, **data, **_doing(data["do"])}, cls)
    )
    converter.register_structure_hook(Aim, lambda data, _: _aim(data))
    converter.register_structure_hook(
        Pause,
        make_dict_structure_fn(
            Pause, converter, _cattrs_forbid_extra_keys=True, seconds=override(rename="pause")
        ),
    )
    converter.register_structure_hook(Item, lambda data, _: converter.structure(data, _kind(data)))
    converter.register_structure_hook(Change, lambda data, _: _change(converter, data))
    plain_reps = make_dict_structure_fn(Reps, converter, _cattrs_forbid_extra_keys=True)
    converter.register_structure_hook(Reps, lambda data, cls: plain_reps(_parted(data), cls))


def _kind(data: Mapping[str, Any]) -> type[Reps | Pause | Round]:
    return Round if "rounds" in data else Pause if "pause" in data else Reps


def _parted(data: Mapping[str, Any]) -> Mapping[str, Any]:
    """Reps as parts, be it one. Gear of such reps is worn in all of them, and stays with them."""
    if "parts" in data:
        own = {name: data[name] for name in data if name != "distance"}
        return {**own, "is_parted": True, "stated": data.get("distance")}
    part = {name: data[name] for name in _OF_PART if name in data}
    own = {name: data[name] for name in data if name not in _OF_PART}
    do = data["do"]
    if isinstance(do, Mapping) and "split" in do and "distance" in data:
        share = Fraction(data["distance"], len(do["split"]))
        parts = [{**part, "do": drill, "distance": share} for drill in do["split"]]
        return {**own, "parts": parts, "is_split": True, "stated": data["distance"]}
    return {**own, "parts": [part]}


def _doing(do: str | Mapping[str, Any]) -> dict[str, Any]:
    """A drill, or drills in turn: the first of them, all of them, and how that is written."""
    if isinstance(do, str):
        return {"do": do}
    ((order, drills),) = do.items()
    return {"do": drills[0], "turns": drills, "order": order}


def _aim(data: Any) -> Aim:
    """One time for all, or one a lane group."""
    if isinstance(data, Mapping):
        return Aim(by_group={group: parse_time(time) for group, time in data.items()})
    return Aim(every=parse_time(data))


def _change(converter: Converter, data: Mapping[str, Any]) -> Change:
    """A change, field by field: what it does not name stays None."""
    types = {
        "reps": int,
        "distance": Distance,
        "time": Seconds,
        "do": str,
        "effort": Effort,
        "parts": tuple[Part, ...],
        "sendoff": Sendoff,
        "rest": Seconds,
        "gear": Ids,
        "assume": Seconds,
        "waves": Waves,
        "start": str,
        "aim": Aim,
        "note": str,
    }
    return Change(
        **{name: converter.structure(data[name], cast(Any, types[name])) for name in data}
    )


def _distance(data: float) -> Distance:
    """A distance as it is written, exactly: 12.5 is 25/2."""
    exact = Fraction(str(data))
    return int(exact) if exact.denominator == 1 else exact


def _effort(data: str | Mapping[str, Any]) -> Effort:
    """An effort plan: a word, or a mapping with one key; descend and build may stand together."""
    if isinstance(data, str):
        return Hold(data)
    if "rotate" in data:
        return Rotate(tuple(data["rotate"]))
    build = Build(*data["build"]) if "build" in data else None
    if "descend" not in data:
        assert build is not None
        return build
    first, last = data["descend"]
    return Descend(first, last, build)


def _sendoff(data: Any) -> Sendoff:
    """For all, or by lane group; one time, or one for each rep."""
    if isinstance(data, Mapping):
        return Sendoff(by_group={group: _times(times) for group, times in data.items()})
    return Sendoff(every=_times(data))


def _assumed(data: Any) -> Assumed:
    """One time for all lane groups, or one for each."""
    if isinstance(data, Mapping):
        times = {group: Seconds(parse_time(time)) for group, time in data.items()}
        return Assumed(by_group=times)
    return Assumed(Seconds(parse_time(data)))


def _times(data: Any) -> tuple[float, ...]:
    return tuple(map(parse_time, data if isinstance(data, list) else [data]))
