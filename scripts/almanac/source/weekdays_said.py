"""Days of the week as they are said elsewhere: in full, and in other languages of coaches."""

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
_PLAIN = str.maketrans("áéíóúàèìòùâêîôû", "aeiouaeiouaeiou")


def weekday_said(text: str) -> str:
    """The day, as ``tue``, that a word for it stands for; "" where it is none."""
    return _BY_WORD.get(fold(text).rstrip(".").translate(_PLAIN), "")
