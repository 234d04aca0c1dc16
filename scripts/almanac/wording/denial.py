"""Whether a danger that is named is denied: "never hold the breath" forbids what "hold the breath"
asks for.
"""

from __future__ import annotations

from collections.abc import Sequence

from almanac.wording.tokens import Token

_BREAKS = {"FULL", "HALF", "COMMA"}
_SOFT = {"AND", "UNTIL", "EVEN"}


def is_excused(row: Sequence[Token], start: int, end: int, tells: bool = False) -> bool:
    """Whether the words from ``start`` up to ``end`` are denied in their own clause."""
    return (
        _is_denied_inside(row, start)
        or _is_denied_before(row, start)
        or _is_denied_after(row, end)
        or _is_stopped(row, start, end)
        or (tells and _is_told(row, start))
    )


_HELPS = {"do", "does", "did", "is", "are", "should", "must", "can", "will"}


def _is_denied_inside(row: Sequence[Token], start: int) -> bool:
    """Whether it begins with the verb that a denial follows: "we do not do lengths under water"."""
    after = row[start + 1 : start + 3]
    said = [token.text for token in after]
    return row[start].text in _HELPS and said[:1] == ["not"] and said[1:] in (["do"], ["swim"])


def _flips(token: Token) -> bool:
    return bool(token.meanings & {"NOT", "NO", "AVOID", "HARM", "FORGET", "WITHOUT"}) or (
        "STOP" in token.meanings and token.text.startswith("stop")
    )


def _is_denied_before(row: Sequence[Token], start: int) -> bool:
    flips = 0
    at = start - 1
    while at >= 0:
        token = row[at]
        if token.meanings & _BREAKS:
            if not _carries(row, at):
                break
        elif token.meanings & {"AND", "UNTIL"}:
            if not (token.text == "and" and _nobody_can(row, at)):
                break
        elif "IF" in token.meanings and token.text in {"if", "when", "once", "whenever"}:
            break
        elif _flips(token) and not _is_harmless_denial(row, at, start):
            flips += 1
            if any(other.text in _UNTIL_DONE for other in row[at + 1 : start]):
                flips += 1
        at -= 1
    return flips % 2 == 1


_UNTIL_DONE = {"before", "unless"}
_REASSURES = {
    "hard", "damage", "shame", "hurt", "hurts", "cheating", "skimp", "trick", "secret", "doubt",
    "problem", "fuss", "strain", "straining", "record", "fins", "magic", "limit", "simpler",
    "easier", "better", "dizzy", "faint", "drown", "drowned", "blackout",
}  # fmt: skip


def _is_harmless_denial(row: Sequence[Token], at: int, start: int) -> bool:
    """Whether what is denied is an objection, and not the danger: "there is nothing hard in"."""
    return any(token.text in _REASSURES for token in row[at + 1 : min(at + 4, start)])


def _nobody_can(row: Sequence[Token], at: int) -> bool:
    """Whether what "and" joins cannot go together: "nobody can talk and hold the breath"."""
    before = [token.text for token in row[max(0, at - 5) : at]]
    return "can" in before and any(word in before for word in ("nobody", "no_one"))


def _carries(row: Sequence[Token], at: int) -> bool:
    """Whether a denial before a break holds after it: it stands alone there ("Never, ever"), or a
    list goes on with "or".
    """
    before = at - 1
    while before >= 0 and not row[before].meanings & _BREAKS:
        if not (_flips(row[before]) or row[before].meanings & {"LIGHT"}):
            break
        before -= 1
    else:
        return "FULL" not in row[at].meanings and at - before > 1
    if "COMMA" in row[at].meanings:
        after = at + 1
        while after < len(row) and not row[after].meanings & {"FULL", "HALF"}:
            if row[after].text in {"or", "nor"}:
                return True
            after += 1
    return False


_AND_STOPS = [["and", word] for word in ("stops", "ends", "rests", "leaves")]


def _is_denied_after(row: Sequence[Token], end: int) -> bool:
    if [token.text for token in row[end : end + 2]] in _AND_STOPS:
        return True
    if _is_judged(row, end):
        return True
    flips = decides = 0
    for token in row[end:]:
        if token.meanings & _BREAKS or token.meanings & _SOFT or "IF" in token.meanings:
            break
        if "HARM" in token.meanings or token.text in {
            "stops",
            "ends",
            "ends_the",
            "ends_it",
            "out",
            "leaves",
            "ended",
            "ends_their",
        }:
            flips += 1
            decides += 1
        elif token.meanings & {"NOT", "NO"}:
            flips += 1
        elif "ALLOWED" in token.meanings:
            decides += 1
        elif "DIZZY" in token.meanings and "UNTIL" not in token.meanings:
            flips += 1
            decides += 1
    return decides > 0 and flips % 2 == 1


def _is_stopped(row: Sequence[Token], start: int, end: int) -> bool:
    """Whether it stands in an if-clause whose main clause stops it."""
    first = start
    while first and not row[first - 1].meanings & {"FULL"}:
        first -= 1
    last = end
    while last < len(row) and not row[last].meanings & {"FULL"}:
        last += 1
    before = row[first:start]
    conditions = [at for at, token in enumerate(before) if "IF" in token.meanings]
    if not conditions:
        return False
    if any(token.meanings & {"COMMA", "HALF"} for token in before[conditions[-1] :]):
        return False
    around = [
        *enumerate(row[first : first + conditions[-1]], first),
        *enumerate(row[end:last], end),
    ]
    return any(
        "STOP" in token.meanings
        and not (at and (row[at - 1].meanings & {"NOT", "NO", "UNTIL"} or row[at - 1].text == "it"))
        for at, token in around
    )


_VERDICT = {"do", "does", "try", "copy", "allow", "allowed", "offered", "here", "worth", "ask"}


def _is_judged(row: Sequence[Token], end: int) -> bool:
    """Whether the sentence ends by forbidding what it named: ": never do it"."""
    last = end
    while last < len(row) and "FULL" not in row[last].meanings:
        last += 1
    said = row[end:last]
    for at, token in enumerate(said[:-1]):
        if "NOT" in token.meanings and said[at + 1].text in _VERDICT and len(said) - at <= 5:
            return any(other.meanings & _BREAKS for other in said[:at]) and not any(
                other.meanings & {"STOP", "SURFACE"} for other in said[at:]
            )
    return False


_ASKS = {
    "GO", "STAY", "HOLD", "TAKE", "PERSIST", "DIVE", "KEEP", "NOT", "NO", "DIST", "PANT",
    "SHUT", "CEASE", "BREATHE", "HYPERVENTILATE", "HOW_LONG", "AS_LONG_AS", "PUMP", "FILL",
    "ONE", "PUSH",
}  # fmt: skip
_TELLS = {"nobody", "no_one", "none"}


def _is_told(row: Sequence[Token], start: int) -> bool:
    """Whether the sentence tells what somebody does, and asks for nothing."""
    first = start
    while first and "FULL" not in row[first - 1].meanings:
        first -= 1
    head = row[first]
    counts = "NUM" in head.meanings and row[first + 1 : first + 2] and row[first + 1].text == "x"
    asks = counts or (head.meanings & _ASKS and head.text not in _TELLS)
    return not asks or head.text.endswith(("ing", "ion", "ed"))
