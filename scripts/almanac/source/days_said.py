"""Days of the week and months as they are said elsewhere: in full, and in other languages of
coaches.
"""

from __future__ import annotations

from almanac.source.suggest import fold

# English, German, French, Spanish and Italian, as calendars shorten them. None stands for two: di
# is dimanche as well as Dienstag, do is domingo and domenica as well as Donnerstag.
_SAID = {
    "mon": "monday mo montag lun lu lundi lunes lunedi",
    "tue": "tuesday tues tu die dienstag mar ma mardi martes martedi",
    "wed": "wednesday weds we mi mit mittwoch mer me mercredi mie miercoles mercoledi",
    "thu": "thursday thur thurs th don donnerstag jeu je jeudi jue jueves gio giovedi",
    "fri": "friday fr fre freitag ven ve vendredi vie viernes venerdi",
    "sat": "saturday sa sam samstag sonnabend samedi sab sabado sabato",
    "sun": "sunday su so son sonntag dim dimanche dom domingo domenica",
}
_BY_WORD = {word: day for day, words in _SAID.items() for word in (day, *words.split())}
# The months in order; each word is what a name of one begins with, in the same languages.
_MONTHS = (
    "jan ene gen", "feb fev", "mar mrz maer", "apr abr avr", "may mai mag", "jun juin giu",
    "jul juil lug", "aug ago aou", "sep set", "oct okt ott", "nov", "dec dez dic",
)  # fmt: skip
_MONTH_BEGINS = {word: n for n, words in enumerate(_MONTHS, start=1) for word in words.split()}
_PLAIN = str.maketrans("áéíóúàèìòùâêîôûä", "aeiouaeiouaeioua")


def weekday_said(text: str) -> str:
    """The day, as ``tue``, that a word for it stands for; "" where it is none."""
    return _BY_WORD.get(fold(text).rstrip(".").translate(_PLAIN), "")


def month_said(text: str) -> int:
    """The number of the month, from 1, that a word for it stands for; 0 where it is none."""
    said = text.lower().rstrip(".").translate(_PLAIN)
    return _MONTH_BEGINS.get(said[:4]) or _MONTH_BEGINS.get(said[:3], 0)
