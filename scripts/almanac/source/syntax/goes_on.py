"""Lines that go on with the text above them and begin too far out, as an editor wraps them or a
paste leaves them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from almanac.source.syntax.slips import Recognised, indent_of
from almanac.source.syntax.tried import Trial

_BEGINS = re.compile(r" *(?:- +)?(?:([\w-]+):(?: +|$))?")
_FOLD = re.compile(r"[>|][-+]?")
_ENDS = (".", "!", "?")
_FEWEST_WORDS = 3  # of a text, which a word of a list or an id never has


def goes_on(number: int, trial: Trial) -> Recognised | None:
    """What is to tell of a line without a colon; None where it goes on with nothing."""
    lines = trial.lines
    above = next((own for own in range(number - 1, -1, -1) if lines[own].strip()), None)
    if above is None or not lines[number : number + 1]:
        return None
    start, wanted = _text_above(above, lines)
    own = indent_of(lines[number])
    if start is None or wanted <= own or not _is_text(lines[number], lines[above]):
        return None
    is_wrapped = lines[number][own].islower() and not lines[above].rstrip().endswith(_ENDS)
    if lines[start].startswith("- ", own) and not is_wrapped:
        return None  # a line of the list, rather, whose dash is missing
    end = number + 1
    while end < len(lines) and lines[end].strip() and not _is_begun(lines[end]):
        if indent_of(lines[end]) >= wanted:
            break
        end += 1
    moved = [" " * (wanted - own) + line for line in lines[number:end]]
    if not trial.would_do([*lines[:number], *moved, *lines[end:]]):
        return None
    begun = _BEGINS.match(lines[start])
    name = f" of '{begun[1]}'" if begun and begun[1] else ""
    more = {1: "", 2: " and before the line below it"}.get(
        end - number, f" and before the {end - number - 1} lines below it"
    )
    message = f"this line goes on with the text{name} above it, and begins too far out"
    return (number, own), message, f"write {wanted - own} blanks before it{more}"


def _text_above(above: int, lines: Sequence[str]) -> tuple[int | None, int]:
    """The line with the field or the dash of the text that a line belongs to, and how far in its
    lines begin.
    """
    start = above
    while start >= 0 and not _is_begun(lines[start]):
        start -= 1
    if start < 0:
        return None, 0
    if start < above:
        return start, indent_of(lines[above])
    return start, indent_of(lines[start]) + 2 + 2 * lines[start].lstrip().startswith("- ")


def _is_text(line: str, above: str) -> bool:
    """Whether a line, and the one above it, can be of a text: no id and no word of a list."""
    begun = _BEGINS.match(above)
    rest = above[begun.end() :] if begun else above
    is_fold = _FOLD.fullmatch(rest.strip()) is not None
    is_more = len(line.split()) > 1 or line.rstrip().endswith(_ENDS)  # or its last word
    return is_more and (is_fold or len(rest.split()) >= _FEWEST_WORDS)


def _is_begun(line: str) -> bool:
    found = _BEGINS.match(line)
    return bool(found and found[0].strip())
