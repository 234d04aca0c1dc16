"""Terms of swimming that somebody new does not know: an entry that uses one needs a list that
explains it. Words that a newspaper uses as we do are left out; what is short for something is found
by its capitals.
"""

from __future__ import annotations

import re

_SINGLE = frozenset((
    "aerobic", "anaerobic", "lactate", "threshold", "hypoxic", "hyperventilation",
    "hyperventilate", "taper", "tapering", "fartlek", "scull", "sculling", "bilateral",
    "break-out", "breakout", "changeover", "change-over", "chop", "monotony", "periodisation",
    "polarised", "prone", "supine", "instep", "bulkhead", "gutter", "streamline", "push-off",
    "pull-out", "pullout", "send-off", "somersault", "dryland", "kickboard", "pull-buoy",
    "paddles", "fins", "snorkel", "tethered", "resisted", "assisted", "flutter", "up-beat",
    "down-beat", "upbeat", "downbeat", "up-kick", "down-kick", "six-beat", "four-beat",
    "two-beat", "beeper", "strouhal", "plantarflexion", "dorsiflexion", "plyometrics",
    "isometric", "isokinetic", "eccentric", "concentric", "proprioception", "periodization",
    "microcycle", "mesocycle", "macrocycle", "macro-cycle", "overreaching", "supercompensation",
    "ergometer", "flume", "ratchet",
))  # fmt: skip
_BY_FORM = {f"{word}s": word for word in _SINGLE} | {word: word for word in _SINGLE}
_PHRASES = (
    "arm cycle", "body roll", "broken swim", "catch-up", "circle swimming", "critical speed",
    "dead spot", "dolphin kick", "early vertical forearm", "false start", "flip turn",
    "flutter kick", "heart rate zone", "hooked feet", "kick set", "lane group", "leg cycle",
    "long course", "negative split", "pace clock", "positive split", "race pace", "scissor kick",
    "short course", "stroke rate", "stroke length", "track start", "tumble turn", "vertical kick",
    "whip kick", "drag suit", "drag socks", "stretch cord", "training load", "the catch",
    "high elbow", "power rack", "ankle flexion",
)  # fmt: skip
_BY_FIRST = {
    first: [phrase for phrase in _PHRASES if re.split(r"[ -]", phrase)[0] == first]
    for first in {re.split(r"[ -]", phrase)[0] for phrase in _PHRASES}
}
_CAPITALS = re.compile(r"[A-Z](?<!\w.)[A-Z]{1,4}\d?\b")  # a search stops at capitals alone
_PLAIN_CAPITALS = frozenset((
    "AM", "PM", "UK", "US", "USA", "OK", "TV", "A4", "ID", "QR", "CSV", "PDF", "NOT", "AND", "OR",
    "II", "III", "IV", "VI",
))  # fmt: skip
_APART = str.maketrans(dict.fromkeys(".,;:!?()[]\"'“”‘’/–—·×+=", " "))


def trade_terms(text: str) -> set[str]:
    """The terms of the trade in a text, and each word in capitals that is short for something."""
    small = text.lower().translate(_APART)
    words = set(small.split())
    single = {_BY_FORM[word] for word in words & _BY_FORM.keys()}
    starts = words | {word.split("-", 1)[0] for word in words if "-" in word}
    near = [phrase for first in starts & _BY_FIRST.keys() for phrase in _BY_FIRST[first]]
    phrases = {phrase for phrase in near if phrase in small}
    short = {} if text.isupper() else set(_CAPITALS.findall(text)) - _PLAIN_CAPITALS
    return single | phrases | set(short)
