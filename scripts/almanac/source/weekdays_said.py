"""Days of the week as they are said elsewhere: in full, and in other languages of coaches."""

from __future__ import annotations

from almanac.source.suggest import fold

# English, German, French, Spanish and Italian, as calendars shorten them; none stands for two.
_SAID = {
    "mon": "monday mo montag lun lu lundi lunes lunedi",
    "tue": "tuesday tues di die dienstag mar ma mardi martes martedi",
    "wed": "wednesday weds mi mit mittwoch mer me mercredi mie miercoles mercoledi",
    "thu": "thursday thur thurs do don donnerstag jeu je jeudi jue jueves gio giovedi",
    "fri": "friday fr fre freitag ven ve vendredi vie viernes venerdi",
    "sat": "saturday sa sam samstag sonnabend samedi sab sabado sabato",
    "sun": "sunday so son sonntag dim dimanche dom domingo domenica",
}
_BY_WORD = {word: day for day, words in _SAID.items() for word in (day, *words.split())}
_PLAIN = str.maketrans("áéíóúàèìòùâêîôû", "aeiouaeiouaeiou")


def weekday_said(text: str) -> str:
    """The day, as ``tue``, that a word for it stands for; "" where it is none."""
    return _BY_WORD.get(fold(text).rstrip(".").translate(_PLAIN), "")
