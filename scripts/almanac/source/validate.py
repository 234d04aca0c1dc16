"""A document against the schema of its kind, with findings in words that say what to write.

``jsonschema`` does the checking; two keywords of ours are added to it. ``vocabulary`` and
``reference`` look a word up in the names of the present catalogue, so that a schema never holds a
list of its own.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from jsonschema import Draft202012Validator, FormatChecker
from jsonschema.exceptions import ValidationError
from jsonschema.validators import extend

from almanac.findings import Finding
from almanac.kinds import KIND
from almanac.source import schemas
from almanac.source.asked_about import asked_about
from almanac.source.at_once import takes
from almanac.source.at_once_values import exact
from almanac.source.cut_text import cut_texts
from almanac.source.edits.mends import value_meant, would_do
from almanac.source.explain.hints import FIXED
from almanac.source.explain.keywords import explain
from almanac.source.failure import Failure
from almanac.source.meant.moved_in import moved_in, moved_lines
from almanac.source.meant.named_by_key import sure_keys
from almanac.source.names import Answer, Names, Question, Unfound
from almanac.source.reader import DataPath, Document
from almanac.units import TimeError, parse_whole_time, parse_written_time

_MOST_TRIED = 40  # mends of one entry, each of which reads it anew; a next --fix does the others


@dataclass
class Validated:
    """What one document gave.

    ``moved`` has, by (path, old id), the id that replaced it; ``meant``, by (path, whether it is a
    key), the word that was surely meant by one of no list; ``values``, by path, the YAML that
    belongs in place of a value, of so many that were ``tried``; ``unfound`` the words
    that are of no list; ``asked`` what of the names;
    ``style``, of a sound one, what has one right answer in how it is written.
    """

    findings: list[Finding] = field(default_factory=list)
    style: list[Finding] = field(default_factory=list)
    moved: dict[tuple[DataPath, str], str] = field(default_factory=dict)
    meant: dict[tuple[DataPath, bool], str] = field(default_factory=dict)
    values: dict[DataPath, str] = field(default_factory=dict)
    tried: int = 0
    unfound: list[Unfound] = field(default_factory=list)
    asked: Mapping[Question, Answer] = field(default_factory=dict)

    @property
    def sound(self) -> bool:
        """Whether nothing in it is an error."""
        return not any(finding.is_error for finding in self.findings)


@dataclass(frozen=True)
class Shapes:
    """The schemas of all kinds, bound to the names of one catalogue."""

    names: Names
    amiss: list[str] = field(default_factory=list, compare=False)

    @cached_property
    def _validators(self) -> dict[str, Any]:
        cls: Any = extend(  # type: ignore[no-untyped-call]
            Draft202012Validator,
            {
                "properties": self._properties,
                "items": self._items,
                "vocabulary": self._look_up("vocabulary"),
                "reference": self._look_up("reference"),
                "not_with": _not_with,
                "clock": _clock,
                "pattern": _pattern,
            },
            type_checker=Draft202012Validator.TYPE_CHECKER.redefine("integer", _is_integer),
        )
        return {
            kind: cls(schemas.inlined(kind), format_checker=FormatChecker(["date"]))
            for kind in KIND
        }

    @cached_property
    def _asked(self) -> dict[Question, Answer]:
        """What was asked of the names for the document at hand, and answered."""
        return {}

    def _ask(self, keyword: str, name: str, word: str) -> Answer:
        question = (keyword, name, word)
        if question not in self._asked:
            self._asked[question] = self.names.answer(*question)
        return self._asked[question]

    def _look_up(self, keyword: str) -> Any:
        def check(
            validator: Any, name: str, instance: Any, schema: Any
        ) -> Iterator[ValidationError]:
            if isinstance(instance, str) and self._ask(keyword, name, instance) is False:
                yield ValidationError(f"{instance!r} is not in {name}")

        return check

    def _properties(
        self, validator: Any, fields: schemas.Schema, instance: Any, schema: Any
    ) -> Iterator[ValidationError]:
        if isinstance(instance, dict):
            for name, piece in fields.items():
                if name in instance and not takes(piece, instance[name], self._ask):
                    yield from validator.descend(instance[name], piece, path=name, schema_path=name)

    def _items(
        self, validator: Any, piece: schemas.Schema, instance: Any, schema: Any
    ) -> Iterator[ValidationError]:
        if isinstance(instance, list):
            for number, item in enumerate(instance):
                if not takes(piece, item, self._ask):
                    yield from validator.descend(item, piece, path=number)

    def validator(self, kind: str) -> Any:
        """The validator of a kind: ``iter_errors`` of plain data."""
        return self._validators[kind]

    def _problems(self, data: Any, kind: str) -> Iterable[Any]:
        if takes(schemas.inlined(kind), data, self._ask):
            return ()
        found: Iterable[Any] = self.validator(kind).iter_errors(data)
        return found

    def check(self, document: Document, kind: str) -> Validated:
        """All findings of one document against the schema of ``kind``, and what it names that has
        moved.
        """
        self._asked.clear()
        checked = Validated()
        found: dict[Any, Finding] = {}
        for problem in self._problems(document.data, kind):
            for finding in explain(problem, document, kind, self.names):
                # One mistake can fail in several keywords, and is told once.
                once = (finding.place, finding.code, finding.message)
                if once not in found:
                    found[once] = self._with_mend(finding, problem, document, kind, checked)
                    self._note_unfound(problem, found[once], checked)
            if problem.validator in {"reference", "vocabulary"}:
                self._note_meant(problem, checked)
            if problem.validator == "additionalProperties":
                failure = Failure(problem, document, kind, self.names)
                for key, name in sure_keys(failure).items():
                    checked.meant[(*failure.path, key), True] = name
            if problem.validator == "reference":
                new = self.names.moved.get((problem.validator_value, problem.instance))
                if new:
                    checked.moved[tuple(problem.absolute_path), problem.instance] = new
        moved = moved_in(document, kind) if found else None
        if moved := moved or moved_lines(document, found.values(), self.amiss):
            checked.findings, checked.asked = [moved], dict(self._asked)
            return checked
        cut = dict(cut_texts(document, kind))
        places = cut.keys() | {finding.place for finding in cut.values()}
        told = (finding for finding in found.values() if finding.place not in places)
        checked.findings += [*cut.values(), *told]
        self._ask_about(document, kind, checked)
        checked.asked = dict(self._asked)
        return checked

    def _ask_about(self, document: Document, kind: str, checked: Validated) -> None:
        """Tell what may be so and hardly ever is meant."""
        for finding, path, new in asked_about(document, kind):
            told = finding
            if new and path not in checked.values:
                checked.values[path] = new
                told = replace(finding, hint=f"{finding.hint}; {FIXED}")
            checked.findings.append(told)

    def _with_mend(
        self, finding: Finding, problem: Any, document: Document, kind: str, checked: Validated
    ) -> Finding:
        """A finding, which says so where ``check --fix`` writes what it says: what would be said
        if nothing was guessed.
        """
        failure = Failure(problem, document, kind, self.names)
        new = value_meant(failure, finding) if checked.tried < _MOST_TRIED else ""
        checked.tried += bool(new)
        if not new or not would_do(document, failure.path, new, self.validator(kind)):
            return finding
        sure = replace(self.names, is_guessing=False)
        if finding not in explain(problem, document, kind, sure):
            return finding
        checked.values[failure.path] = new
        return replace(finding, hint=f"{finding.hint}; {FIXED}")

    def _note_unfound(self, problem: Any, finding: Finding, checked: Validated) -> None:
        """Keep a word that is not of its list."""
        keyword, name, word = problem.validator, problem.validator_value, problem.instance
        if keyword in {"vocabulary", "reference"}:
            certain = self.names.certain(keyword, name, word)
            checked.unfound.append(Unfound(keyword, name, word, certain, finding))

    def _note_meant(self, problem: Any, checked: Validated) -> None:
        """Keep the word that was surely meant, for ``check --fix``."""
        keyword, name, word = problem.validator, problem.validator_value, problem.instance
        meant = self.names.certain(keyword, name, word)
        if keyword == "reference":
            is_retired = (name, word) in self.names.retired  # what serves instead, a coach decides
            meant = "" if is_retired else self.names.moved.get((name, word)) or meant
        if meant:
            is_key = "propertyNames" in problem.absolute_schema_path
            path = tuple(problem.absolute_path) + ((word,) if is_key else ())
            checked.meant[path, is_key] = meant


def _is_integer(checker: Any, instance: Any) -> bool:
    # JSON Schema lets 6.0 pass for a whole number; what counts and multiplies here wants a true
    # one.
    return isinstance(instance, int) and not isinstance(instance, bool)


def _pattern(validator: Any, pattern: str, instance: Any, schema: Any) -> Iterator[ValidationError]:
    if isinstance(instance, str) and not exact(pattern).search(instance):
        yield ValidationError(f"{instance!r} does not match {pattern!r}")


def _not_with(
    validator: Any, pairs: Mapping[str, Collection[str]], instance: Any, schema: Any
) -> Iterator[ValidationError]:
    if not isinstance(instance, dict):
        return
    for key, others in pairs.items():
        for other in others:
            if key in instance and other in instance:
                yield ValidationError(f"{key} and {other}", validator_value=(key, other))


def _clock(validator: Any, wanted: object, instance: Any, schema: Any) -> Iterator[ValidationError]:
    if isinstance(instance, str) or (
        isinstance(instance, (int, float)) and not isinstance(instance, bool)
    ):
        try:
            (parse_whole_time if wanted == "whole" else parse_written_time)(instance)
        except TimeError as problem:
            yield ValidationError(str(problem), cause=problem)
