"""What to write instead of a field that does not belong where it stands."""

from __future__ import annotations

import re
from collections.abc import Mapping

from almanac.kinds import KIND
from almanac.source import schemas
from almanac.source.days_said import weekday_said
from almanac.source.explain.entry_slips import cut_by_comma, cut_word
from almanac.source.explain.hints import FIXED, SOURCE, TO_A_SOURCE
from almanac.source.failure import Failure
from almanac.source.meant.decimal_commas import split_number
from almanac.source.meant.further_out import further_out
from almanac.source.meant.named_by_key import ALSO_CALLED
from almanac.source.meant.stands_for import could_be, free_for, one_day
from almanac.source.meant.words import list_cut_by_comma
from almanac.source.said.times import minutes_until
from almanac.source.suggest import listed, nearest

_FEW = 12  # fields that are told all
_HARDLY_CHANCE = 0.8  # so like that one is taken for the other, though it is also a field elsewhere
_PEOPLE = {"coach", "coaches", "trainer", "teacher", "swimmer", "swimmers", "athlete", "athletes"}
_NOBODY = "nobody is named here: lane groups, roles and how many adults are enough"


def key_hint(failure: Failure, key: str, sure: Mapping[str, str], stands: Mapping[str, str]) -> str:
    """For a key that does not belong here: the one that was meant, the kind it belongs to, or all
    that there are. ``sure`` and ``stands`` are what ``sure_keys`` and ``stands_for`` say of the
    keys here.
    """
    known = failure.fields
    if key in sure:
        return f"write {sure[key]}; {FIXED}"
    if key == "id" and not failure.path:
        return "take this line out: an entry's id is the name of its file, and stands nowhere in it"
    if meant := split_number(failure, key) or _without_colon(failure, key):
        return meant
    if key == SOURCE and failure.path[:1] == ("evidence",):
        return TO_A_SOURCE
    if meant := list_cut_by_comma(failure, key) or cut_by_comma(failure, key):
        return meant
    if meant := _field_meant(failure, key, stands):
        return meant
    homes = (
        [kind for kind in KIND if kind != failure.kind and key in schemas.fields(kind)]
        if not failure.path
        else []
    )
    elsewhere = f"'{key}' is a field of a {listed(homes)}, not of a {failure.kind}" if homes else ""
    if failure.says("says"):
        return str(failure.says("says"))
    free = [name for name in known if name not in failure.value]
    near = nearest(key, free, _HARDLY_CHANCE if elsewhere else 0.7)
    if (day := weekday_said(key)) in known:
        return f"write {day}"
    if near:
        is_other = not could_be(failure, near, failure.value[key])
        return (
            is_other and free_for(failure, key)
        ) or f"did you mean '{near}'? {elsewhere}".strip()
    if meant := cut_word(failure, key) or elsewhere or free_for(failure, key):
        return meant
    unused = [name for name in known if name not in failure.value]
    usual = [name for name in unused if name not in failure.says("seldom", ())]
    if len(known) <= _FEW or not unused:
        return f"the fields here are {listed(known, 24)}"
    return f"the {'usual ' * bool(usual)}fields left here are {listed(usual or unused, 12)}"


def _field_meant(failure: Failure, key: str, stands: Mapping[str, str]) -> str:
    """The field that a word of the coach's own stands for, or the place that it belongs to; "" for
    neither.
    """
    also = ALSO_CALLED.get(key)
    if also in failure.fields and also not in failure.value:
        return f"write {also}"
    if home := further_out(failure, key):
        return home
    if "minutes" in failure.fields and (many := minutes_until(failure.value, key)):
        return f"write minutes: {many} in its place, from {failure.value['start']} on"
    if name := stands.get(key):
        about = failure.about(name).partition(". ")[0]
        return f"write {name}, which is missing here: {about}".rstrip(": ")
    if day := one_day(failure, key):
        return f"write from: {day}, to: {day} in its place"
    is_person = key.lower() in _PEOPLE and not isinstance(failure.value[key], int)
    return _NOBODY if is_person and not free_for(failure, key) else ""


def _without_colon(failure: Failure, key: str) -> str:
    """For a field whose colon is left out, is another sign or has no blank behind it."""
    open_bracket = re.match(r"([a-z_]+) *[{\[]", key)
    if open_bracket and open_bracket[1] in failure.fields:
        return f"no colon stands behind '{open_bracket[1]}': write {open_bracket[1]}: {{..."
    tight = re.fullmatch(r"([a-z_]+) ?[:=] ?(\S.*)", key)
    if tight and tight[1] in failure.fields and failure.value[key] is None:
        return f"a colon and a blank belong between them: write {tight[1]}: {tight[2]}"
    return ""
