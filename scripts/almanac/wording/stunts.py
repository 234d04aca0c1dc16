"""Acts that no session asks for, whatever its fields say: somebody tied, blind or run into."""

from __future__ import annotations

import re

_SOMEBODY = r"(?:partner|mate|coach|somebody|someone|another|helper)"
_STUNTS = re.compile(
    r"\b(?:(?:wrists?|hands|arms) (?:are )?tied"
    r"|(?:tie|bind)s? (?:the|your|their|both) (?:wrists|hands|arms)"
    r"|tape[sd]? (?:the|your|their) mouth|mouth (?:is )?taped|through a straw"
    r"|run-?up\b.{0,40}\b(?:leap|jump|dive)|(?:leap|jump|dive)s?\b.{0,30}\brun-?up"
    r"|(?:race|sprint|run|chase)s?\b.{0,20}\b(?:round|along|down|across|on) the (?:pool ?)?deck"
    rf"|{_SOMEBODY} (?:sits|stands|kneels|lies) on (?:you|your|the swimmer|their|his|her)\b"
    rf"|{_SOMEBODY} (?:pushes|presses|holds|forces) (?:the|your|their|his|her) (?:head|face) under"
    r"|until the head (?:touches|hits|meets) the wall|hits? the wall hard"
    r"|(?:side by side|abreast)\b.{0,40}\bopposite directions|do not give way"
    r"|(?:overtakes?|pass|passes) (?:wherever|anywhere) "
    r"|(?:on to|onto) the crown of the head|walks? on (?:the|your) hands"
    r"|until it hurts|to the point of pain|let yourself fall|falls? backwards off"
    r"|(?:first|one|somebody|someone) (?:one )?is sick|so close that (?:they|you) touch"
    r"|jumps? down from the (?:starting )?block"
    r"|is last (?:does|do|swims?|has|gets)\b.{0,15}\b(?:more|extra|again|push-ups))\b",
    re.IGNORECASE,
)
_BLIND = re.compile(
    r"\b(?:eyes (?:shut|closed)|(?:shut|close)s? (?:the|your|their|both) eyes|blindfold\w*"
    r"|painted black|black(?:ed|ened)? (?:out )?(?:goggles|lenses))\b",
    re.IGNORECASE,
)
_AT_REST = re.compile(r"\b(?:hold|holding|gutter|stand|standing|still|float|open)\b", re.IGNORECASE)
_AT_SPEED = re.compile(
    r"\b(?:wall|sprint\w*|fast(?:er|est)?|full speed|all-out|flags|race|dive)\b", re.IGNORECASE
)
_QUICK = re.compile(
    r"t(?:ie|ap)|straw|run|rac|sprint|chase|sit|stand|lie|kneel|head|face|wall|way|overtak|pass|walk"
    r"|hurt|pain|fall|sick|close|jump|quick|last|eyes|blind|black|bind|leap|hands",
    re.IGNORECASE,
)
_DENIES = re.compile(
    r"\b(?:no|not|never|nobody|none|without|instead of|rather than|stop|stops|unless|less|avoid"
    r"|before|if|may)\b|n't\b",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"[.;:!?]")


def asks_for_a_stunt(text: str) -> str:
    """The words of a text that ask for such an act; "" where none do. A denial excuses its own
    sentence.
    """
    if not _QUICK.search(text):
        return ""
    for sentence in _SENTENCE.split(text):
        found = _STUNTS.search(sentence)
        blind = None if found else _BLIND.search(sentence)
        if blind and _AT_SPEED.search(sentence) and not _AT_REST.search(sentence):
            found = blind
        if found and not _DENIES.search(sentence.replace(found[0], " ")):
            return found[0].strip()
    return ""
