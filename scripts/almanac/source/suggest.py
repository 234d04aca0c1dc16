"""Did you mean: the nearest of the words that would have been right."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from difflib import SequenceMatcher, get_close_matches

_LEAST_PART = 5  # letters of a word of an id that tell it from others
_LONGEST = 80
_LEAST_SURE = 5  # letters of a word that one of them can be wrong of and nothing else be meant
_SHORT = 3  # letters of a piece of an id: with fewer, another one is another thing
# Dashes as programs for letters put them, and signs that nobody sees.
_LIKE_HYPHENS = dict.fromkeys(map(ord, "‐‑‒–—―−"), "-") | dict.fromkeys((0xAD, 0x200B, 0xFEFF))


def nearest(word: str, choices: Iterable[str], cutoff: float = 0.7) -> str | None:
    """The choice spelt most like ``word``, or the only one that it begins or is a part of; None
    where none is near.

    Case, underscores and a file's ending do not count; the same words in another order, or in the
    plural, are nearer than another word.
    ``cutoff`` is how near it must be, 0 to 1 (difflib's ratio).
    """
    folded: dict[str, str] = {}
    for choice in choices:
        folded.setdefault(fold(choice), choice)
    written = fold(word)[:_LONGEST]
    same = [choice for choice in folded if _words(choice) == _words(written)]
    match = (
        [written] * (written in folded)
        or same
        or get_close_matches(written, folded, n=1, cutoff=cutoff)
    )
    begun = [choice for choice in folded if len(written) > 2 and choice.startswith(written)]
    parts = {*written.split("-")}
    holding = [own for own in folded if parts <= {*own.split("-")} and len(written) >= _LEAST_PART]
    near = match or next((own for own in (begun, holding) if len(own) == 1), [])
    return folded[near[0]] if near else None


def fold(word: str) -> str:
    """A word or id in the style of ids, without the ending of a file."""
    plain = word.strip().casefold().translate(_LIKE_HYPHENS)
    return re.sub(r"[\s_-]+", "-", re.sub(r"\.ya?ml$", "", plain))


def one_letter_off(word: str, choices: Iterable[str], others: Iterable[str] = ()) -> str:
    """The one choice from which a word differs by a letter too many, too few or other, or by two
    that changed places; "" where there is none, or another. A number tells things apart, and so
    does a short piece, as in ``group-b``, or one that stands in some choice or in ``others``:
    ``ankle-hand`` is no slip where hands are spoken of.
    """
    known, written = [*choices], fold(word)
    if not _LEAST_SURE <= len(written) <= _LONGEST:
        return ""
    near = [own for own in known if _differs_by_one(written, fold(own))]
    if len(near) != 1 or _numbers_differ(written, near[0]):
        return ""
    said, meant = ({*own.split("-")} for own in (written, fold(near[0])))
    is_hyphen = written.replace("-", "") == fold(near[0]).replace("-", "")
    if not is_hyphen and min(map(len, said ^ meant)) < _SHORT:
        return ""
    words = {piece for own in (*known, *others) for piece in fold(own).split("-")}
    return "" if (said - meant) & words else near[0]


def _differs_by_one(one: str, other: str) -> bool:
    if len(one) == len(other):
        unlike = [at for at in range(len(one)) if one[at] != other[at]]
        first, last = (unlike[0], unlike[-1]) if unlike else (0, 0)
        is_swap = one[first : last + 1] == other[first : last + 1][::-1]
        return len(unlike) == 1 or (len(unlike) == 2 and last - first == 1 and is_swap)
    short, long = sorted((one, other), key=len)
    return len(long) - len(short) == 1 and any(
        long[:at] + long[at + 1 :] == short for at in range(len(long))
    )


def _words(word: str) -> list[str]:
    return sorted(piece.removesuffix("s") for piece in word.split("-"))


def listed(words: Iterable[str], most: int = 12) -> str:
    """Words for a sentence: ``a, b or c``, cut after ``most``."""
    shown = list(words)
    if len(shown) > most:
        return ", ".join(shown[:most]) + f" and {len(shown) - most} more"
    return " or ".join(filter(None, [", ".join(shown[:-1]), shown[-1] if shown else ""]))


SHOWN = 25
"""Of more names none is told."""
_NEAR_MOST = 8  # names that are told as near
_LEAST_PIECE = 3  # letters of a word that tell what it is a part of


def absent(what: str, id: str, known: Iterable[str]) -> str:
    """That an id is not there, with the nearest that are; else with all, where these are few."""
    names = list(known)
    return not_there(what, id, names, near_names(id, dict.fromkeys(names, ())))


def not_there(what: str, id: str, names: Sequence[str], near: Sequence[str]) -> str:
    """That an id is not there, with those that are ``near``; else with all, where these are few."""
    if near:
        meant = listed((f"'{own}'" for own in near), _NEAR_MOST)
        return f"there is no {what} '{id}'; did you mean {meant}?"
    told = f"; there are {', '.join(names)}" if 1 < len(names) <= SHOWN else ""
    told = f"; there is {names[0]}" if len(names) == 1 else told
    return f"there is no {what} '{id}'{told}"


def near_names(
    word: str, called: Mapping[str, Iterable[str]], means: Mapping[str, str] | None = None
) -> list[str]:
    """The ids that a word may stand for, where it is none: the one that is spelt most like it, or
    those that have each of several words; else those of which it is a part or a beginning, else
    those whose meaning has it. ``called`` are by id its titles and other names, ``means`` by id
    what it means; none where none is near.
    """
    names = [(name, id) for id, others in called.items() for name in (id, *others)]
    own = nearest(word, (name for name, _ in names))
    is_other = own is not None and _numbers_differ(own, word)
    all_of_it = with_each_word(word, names)
    if own is not None and not is_other:  # a number tells things apart
        id = next(id for name, id in names if name == own)
        return [id] if id in all_of_it or not all_of_it else all_of_it
    if all_of_it:
        return all_of_it
    wanted = [piece for piece in _words(fold(word)) if len(piece) >= _LEAST_PIECE]
    for texts in (names, [(text, id) for id, text in (means or {}).items()]):
        found = [id for text, id in texts if wanted and _holds(text, wanted)]
        if found:
            return [*dict.fromkeys(found)]
    return []


def with_each_word(word: str, names: Sequence[tuple[str, str]]) -> list[str]:
    """The ids whose name has each of several words, these spelt as words of names are; the likest
    first. Letters alone would take a bracket kick for a back kik.
    """
    wanted = [piece for piece in fold(word)[:_LONGEST].split("-") if len(piece) >= _LEAST_PIECE]
    if len(wanted) < 2:
        return []
    known = sorted({own for name, _ in names for own in re.findall(r"\w+", name.casefold())})
    spelt = [
        piece if any(own.startswith(piece) for own in known) else nearest(piece, known) or piece
        for piece in wanted
    ]
    found = [(name, id) for name, id in names if _holds(name, spelt)]
    said = "-".join(spelt)
    found.sort(key=lambda own: -SequenceMatcher(None, said, fold(own[0])).ratio())
    return [*dict.fromkeys(id for _, id in found)]


def _numbers_differ(one: str, other: str) -> bool:
    return re.findall("[0-9]+", one) != re.findall("[0-9]+", other)


def _holds(text: str, wanted: Sequence[str]) -> bool:
    """Whether each of some words begins a word of a text."""
    pieces = re.findall(r"\w+", text.casefold())
    return all(any(piece.startswith(own) for piece in pieces) for own in wanted)


def same_key(word: str) -> str:
    """A word as it is compared where it is surely meant: without case, plurals, and what stands
    between its pieces.
    """
    return "-".join(piece.removesuffix("s") for piece in re.findall(r"\w+", fold(word)))
