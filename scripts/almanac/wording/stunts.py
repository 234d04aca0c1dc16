"""Acts that no session asks for, whatever its fields say: somebody tied, blind or run into."""

from __future__ import annotations

import re

from almanac.wording.clauses import denies, sentences

_OTHER = r"(?:partner|mate|coach|somebody|someone|another|helper)"
_OWN = r"(?:the|your|their|both|his|her)"
_ACTS = {
    "bound": rf"(?:wrists?|hands|arms) (?:are )?tied|(?:tie|bind)s? {_OWN} (?:wrists|hands|arms)",
    "short of air": rf"tape[sd]? {_OWN} mouth|mouth (?:is )?taped|through a straw",
    "run on deck": r"(?:race|sprint|run|chase)s?\b.{0,20}\b(?:round|along|down|across|on) the "
    r"(?:pool ?)?deck",
    "leap with a run-up": r"run-?up\b.{0,40}\b(?:leap|jump|dive)"
    r"|(?:leap|jump|dive)s?\b.{0,30}\brun-?up|jumps? down from the (?:starting )?block",
    "fall": r"let yourself fall|falls? backwards off",
    "sat on": rf"{_OTHER} (?:sits|stands|kneels|lies) on (?:you|the swimmer|{_OWN})",
    "pushed under": rf"{_OTHER} (?:pushes|presses|holds|forces) {_OWN} (?:head|face) under",
    "into the wall": r"until the head (?:touches|hits|meets) the wall|hits? the wall hard",
    "into each other": r"(?:side by side|abreast)\b.{0,40}\bopposite directions|do not give way"
    r"|(?:overtakes?|pass|passes) (?:wherever|anywhere)|so close that (?:they|you) touch",
    "on the neck": r"(?:on to|onto) the crown of the head|walks? on (?:the|your) hands",
    "into pain": r"until it hurts|to the point of pain"
    r"|(?:first|one|somebody|someone) (?:one )?is sick",
    "as a punishment": r"is last (?:does|do|swims?|has|gets)\b.{0,15}\b"
    r"(?:more|extra|again|push-ups)",
}
_STUNT = re.compile(rf"\b(?:{'|'.join(_ACTS.values())})\b", re.IGNORECASE)
_BLIND = re.compile(
    r"\b(?:eyes (?:shut|closed)|(?:shut|close)s? (?:the|your|their|both) eyes|blindfold\w*"
    r"|painted black|black(?:ed|ened)? (?:out )?(?:goggles|lenses))\b",
    re.IGNORECASE,
)
_AT_REST = re.compile(r"\b(?:hold|holding|gutter|stand|standing|still|float|open)\b", re.IGNORECASE)
_AT_SPEED = re.compile(
    r"\b(?:wall|sprint\w*|fast(?:er|est)?|full speed|all-out|flags|race|dive)\b", re.IGNORECASE
)
_DENIES = denies("stops?", "unless", "less", "avoid", "before", "if", "may")


def asks_for_a_stunt(text: str) -> str:
    """The words of a text that ask for such an act; "" where none do. A denial excuses its own
    sentence.
    """
    if not (_STUNT.search(text) or _BLIND.search(text)):  # of most texts that is all
        return ""
    for sentence in sentences(text):
        found = _STUNT.search(sentence) or _blind_at_speed(sentence)
        if found and not _DENIES.search(sentence.replace(found[0], " ")):
            return found[0].strip()
    return ""


def _blind_at_speed(sentence: str) -> re.Match[str] | None:
    is_moving = _AT_SPEED.search(sentence) and not _AT_REST.search(sentence)
    return _BLIND.search(sentence) if is_moving else None
