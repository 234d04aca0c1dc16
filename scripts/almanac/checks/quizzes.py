"""Rules on the questions of progressions: an answer must not be found without knowing it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, warns
from almanac.model.progression import Progression, Question
from almanac.source.reader import DataPath

_SENTENCE = re.compile(r"[A-Z0-9\"“'‘].*[.!?][\"”'’]?")
_LEAST_WORDS = 4


@warns("answers-unlike")
def answers_unlike(analysis: Analysis) -> Iterator[Problem]:
    """The answers to a question are of like length, the longest at most ``answers_apart_most``
    times the shortest: one that stands out is picked, or passed over, without being known.
    """
    most = analysis.catalogue.policy.limit("answers_apart_most")
    for progression, path, question in _questions(analysis):
        lengths = [len(option.answer) for option in question.options]
        if max(lengths) > most * min(lengths):
            told = _standing_out(question, lengths)
            message = f"its answers are of {min(lengths)} to {max(lengths)} letters{told}"
            hint = "say the short one in full, or the long one shorter"
            yield Problem(progression, (*path, "options"), message, hint)


@warns("answer-no-sentence")
def answer_no_sentence(analysis: Analysis) -> Iterator[Problem]:
    """Each answer is a whole sentence, a wrong one too: four words or more, from a capital to a
    full stop. A scrap of a sentence is seen to be wrong before it is thought about.
    """
    for progression, path, question in _questions(analysis):
        for number, option in enumerate(question.options):
            words = len(option.answer.split())
            if words < _LEAST_WORDS or not _SENTENCE.fullmatch(option.answer):
                message = f"'{option.answer}' is no whole sentence"
                hint = "write what somebody who believes it would say"
                place = (*path, "options", number, "answer")
                yield Problem(progression, place, message, hint)


def _standing_out(question: Question, lengths: list[int]) -> str:
    for option, length in zip(question.options, lengths, strict=True):
        if option.right and length in (min(lengths), max(lengths)):
            return (
                f", and the {'shortest' if length == min(lengths) else 'longest'} is the right one"
            )
    return ""


def _questions(analysis: Analysis) -> Iterator[tuple[Progression, DataPath, Question]]:
    for progression in analysis.catalogue.progressions.values():
        for number, stage in enumerate(progression.stages):
            for index, question in enumerate(stage.check_yourself):
                yield progression, ("stages", number, "check_yourself", index), question
