"""The rules on what no text may ask for, wherever it stands."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids
from almanac.wording.dangers import ARE_FURTHER


@forbids("breath-holding")
def breath_holding(analysis: Analysis) -> Iterator[Problem]:
    """No text asks for air to be withheld, for staying under water as long or as far as it goes,
    for breaths to be counted down, for over-breathing, or for going on through the wish for air or
    dizziness.

    Hyperventilation before underwater swimming and extended breath-holding "are dangerous and
    potentially deadly" (joint statement of the American Red Cross and the YMCA of the USA, 27 May
    2015). Every text of every kind is read, titles and ids too, by what its words mean. A text may
    forbid what it names: "never hold the breath". It may tell of it where its field says what goes
    wrong. A program does not understand all that it reads: a person reads the rest.
    """
    yield from _problems(analysis, are_further=False)


@forbids("reckless-wording")
def reckless_wording(analysis: Analysis) -> Iterator[Problem]:
    """No text asks for swimming alone or unwatched, for dives into shallow or unknown water, for
    going on through pain, for a covered mouth, or for anyone to be held or weighed down under
    water.
    """
    yield from _problems(analysis, are_further=True)


def _problems(analysis: Analysis, are_further: bool) -> Iterator[Problem]:
    told = set()
    for entry, text, asking in analysis.asked_for:
        here = (entry.file, text.path, text.is_key)
        if (asking.danger.name in ARE_FURTHER) is are_further and here not in told:
            told.add(here)
            message = f"'{asking.words}' {asking.danger.asks}"
            yield Problem(entry, text.path, message, asking.danger.mend, text.is_key)
