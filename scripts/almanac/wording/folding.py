"""A text as an eye reads it: look-alike letters, hidden characters, emphasis and odd spacing
undone.
"""

from __future__ import annotations

import html
import re
import unicodedata
from functools import lru_cache

# Letters of other scripts that look like ours, which no compatibility form undoes.
_LOOKS_LIKE = {
    "a": "аɑαᴀӑ", "b": "вьʙβҍ", "c": "сϲᴄ¢", "d": "ԁɗᴅժ", "e": "еєҽᴇεё€", "f": "ғꜰϝƒ",
    "g": "ɡԍɢց", "h": "һнʜհη", "i": "іıɪιїɩ¡", "j": "јʝᴊ", "k": "кκᴋ", "l": "ӏʟⅼɭ",
    "m": "мᴍ", "n": "пɴոռ", "o": "оοσᴏօө", "p": "рρᴘ", "q": "ԛզ", "r": "гʀᴦɾ", "s": "ѕꜱʂտ",
    "t": "тτᴛ", "u": "υսᴜս", "v": "ѵνᴠ", "w": "ԝωᴡա", "x": "хχ×", "y": "уүγʏ", "z": "ᴢʐ",
    "'": "’‘ʼ`´ʹ", "-": "‐‑‒–−", "; ": "—",
}  # fmt: skip
_BLANK_LETTERS = "\u115f\u1160\u3164\uffa0\u2800"
_AS_OURS = str.maketrans({other: ours for ours, others in _LOOKS_LIKE.items() for other in others})
_DIGIT_AS_LETTER = str.maketrans("013457@$", "oieastas")

_TAG = re.compile(r"</?[a-z][^<>]{0,60}>", re.IGNORECASE)
_CAMEL = re.compile(r"(?<=[a-z])(?=[A-Z][a-z])")
_EMPHASIS = re.compile(r"(?<=\w)[*_~`]+(?=\w)|[*_~`#]+")
_DIGIT_IN_WORD = re.compile(r"\b[a-z]+[013457@$]+[a-z]+(?:[013457@$]+[a-z]+)*\b")
_SPACED = re.compile(r"\b(?:[a-z][ .\-]{1,2}){3,}[a-z]\b(?!')\.?|\b(?:[a-z]  ?){3,}[a-z]\b")
_DRESSED = re.compile(  # begins with what is rare, so that it is quickly looked for
    r"[^a-z,;:'\"()\[\]{}!?/+=%|\\2689](?:"
    r"(?<! )(?:"  # a space, which is not rare, has one reason to stop for
    r"(?<=[^\x00-\x7f°²³±·µ])|(?<=[*_~`&<#])|(?<=[A-Za-z][01345@$7])[01345@$7]*[A-Za-z]"
    r"|(?<=[a-z][A-Z])|(?<=[a-z]-)\s|(?<=\n)\n"
    r")|(?<=[ .-])[A-Za-z][ .-]{1,2}[A-Za-z](?:[ .-]|$))"
)
_BLANKS = re.compile(r"\s+")


def is_plain(text: str) -> bool:
    """Whether a text hides and dresses nothing."""
    return not _DRESSED.search(text)


@lru_cache(maxsize=8)  # a text is looked at, and then read
def fold(text: str) -> str:
    """The text in plain small letters, with what hides or dresses its words taken off."""
    if is_plain(text):
        return text.lower()
    text = html.unescape(text)
    if not text.isascii():
        text = _as_ascii(text)
    text = _TAG.sub("", text)
    text = _CAMEL.sub(" ", text).casefold()
    text = _EMPHASIS.sub(lambda found: "" if _is_inside(found) else " ", text)
    text = _DIGIT_IN_WORD.sub(lambda word: word[0].translate(_DIGIT_AS_LETTER), text)
    text = _SPACED.sub(_joined, text)
    return _BLANKS.sub(" ", text.replace("\n\n", ". ")).strip()


def _as_ascii(text: str) -> str:
    """Compatibility forms and look-alikes as our letters, marks and hidden characters gone."""
    plain = unicodedata.normalize("NFKD", text)
    seen = "".join(char for char in plain if not _is_hidden(char)).translate(_AS_OURS)
    return "".join(c if c.isascii() else c.casefold().translate(_AS_OURS) for c in seen)


def _is_hidden(char: str) -> bool:
    return unicodedata.category(char) in {"Mn", "Me", "Cf"} or char in _BLANK_LETTERS


def _is_inside(found: re.Match[str]) -> bool:
    start, end = found.span()
    text = found.string
    return start > 0 and end < len(text) and text[start - 1].isalpha() and text[end].isalpha()


def _joined(spaced: re.Match[str]) -> str:
    words = re.split(r"[ .\-]{2,}", spaced[0])
    return " ".join(re.sub(r"[ .\-]", "", word) for word in words)
