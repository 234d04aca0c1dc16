"""Mends of single values that leave no choice: what a message says to write in place of a value is
tried there, and where the entry's schema then has nothing against it, ``check --fix`` writes it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

import yaml

from almanac.findings import Finding
from almanac.source.edits.rewrite import but_for
from almanac.source.edits.style import span
from almanac.source.failure import Failure
from almanac.source.reader import DataPath, Document, read

_SAYS = re.compile(
    r"write (it as a list: |- )?(\S.*?)(?:, counted from [-0-9]+"
    r"|, in (?:metres|Celsius) and digits alone(?:: so much is .+)?"
    r"|: all of it in minutes, in digits alone|: in seconds, in digits alone"
    r"|: (?:[Yy]es|YES|[Nn]o|NO|[Oo]n|[Oo]ff|[yn]|none|True|TRUE|False|FALSE) is text here)?"
)
_NUMBER = re.compile(r"write ([0-9]+(?:\.[0-9]+)?) in digits alone, without quotes or unit")
_UNITS = {"distance": r"m|met(?:re|er)s?", "minutes": r"m|mins?|minutes"}
"""The unit that a number of a field may have behind it, and is still surely that number."""
_BY_END = {"_m": r"m|met(?:re|er)s?", "_s": r"s|secs?|seconds?"}
_UNSURE = re.compile(r"[0-9]+[,;'′’-][0-9]|[0-9]+ ?['′’]|[-–−].*")
"""Times that may be others: 1,5 a minute and a half, 15' seconds with half of their sign, -0:05 so
much less."""
_OPEN = ("...", " or ", ";", "note:")  # something is left to say, or to choose
_CODES = (
    "unknown-key", "unknown-word", "bad-time", "bad-date", "bad-form", "wrong-type", "wrong-value",
)  # fmt: skip


def value_meant(failure: Failure, finding: Finding) -> str:
    """The YAML that a finding says to write in place of a value, where nothing is left to choose;
    "" elsewhere. Whether it would do there is asked of the schema by ``would_do``.
    """
    rounded = getattr(failure.problem.cause, "hint", "")  # 1:5 may be 1:05 or 1:50
    if finding.code not in _CODES or failure.on_key or not failure.path or finding.hint == rounded:
        return ""
    if finding.code == "unknown-word" and failure.problem.validator != "enum":
        return ""  # of a vocabulary, whose sure words are known elsewhere
    if number := _NUMBER.fullmatch(finding.hint):
        return number[1] if _is_sure(failure, number[1]) else ""
    said = _SAYS.fullmatch(finding.hint)
    if not said or any(mark in said[2] for mark in _OPEN):
        return ""
    if finding.code == "unknown-key":
        is_all = len(failure.value) == 1 and said[2].startswith("{")
        return said[2] if is_all else ""
    if finding.place != failure.document.place(failure.path):
        return ""
    # One depth of a pool may be that of either end, and a comma may belong to the text.
    is_depth = isinstance(failure.value, int | float) and str(failure.path[-1]).endswith("_m")
    is_row = said[1] and "," in said[2] and " " in said[2].replace(", ", ",")
    is_unsure = finding.code == "bad-time" and _UNSURE.fullmatch(str(failure.value))
    is_spoken = "call: " in said[2] and re.search("[A-Za-z]", str(failure.value))
    return "" if is_depth or is_spoken or is_unsure or (is_row and "{" not in said[2]) else said[2]


def _is_sure(failure: Failure, number: str) -> bool:
    text = str(failure.value).strip().lower()
    names = [str(own) for own in failure.path if own not in ("from", "to")]  # of a range's ends
    field = names[-1] if names else ""
    unit = _UNITS.get(field) or next(
        (own for end, own in _BY_END.items() if field.endswith(end)), ""
    )
    bare = re.sub(rf" ?(?:{unit})$", "", text) if unit else text
    is_times = bare in {"once", "twice"} and field not in {"reps", "rounds"}
    return bare == number or (bare.isalpha() and not is_times)


def would_do(document: Document, path: DataPath, new: str, validator: Any) -> bool:
    """Whether an entry has nothing wrong at a value, nor below it, with YAML in its place."""
    text = with_values(document, {path: new})
    again = text and read(text.encode("utf-8"), document.file)[0]
    if not again or but_for(again.data, {path}) != but_for(document.data, {path}):
        return False
    problems: Iterable[Any] = validator.iter_errors(again.data)
    return not any(tuple(own.absolute_path)[: len(path)] == path for own in problems)


def with_values(document: Document, values: Mapping[DataPath, str]) -> str | None:
    """The document's text with YAML in place of some values, every other byte as it was; None where
    one of these is no plain value, or the text would not be sound.
    """
    edits = []
    for path, new in values.items():
        where = _span(document, path)
        if not where:
            return None
        edits.append((where, new))
    text = document.text
    for (start, end), new in sorted(edits, reverse=True):
        text = text[:start] + new + text[end:]
    again, findings = read(text.encode("utf-8"), document.file)
    return text if again is not None and not findings else None


def _span(document: Document, path: DataPath) -> tuple[int, int] | None:
    """Where a plain value stands, or fields in one line; None for what goes over several."""
    first = last = document.node(path)
    if isinstance(first, yaml.MappingNode) and not first.flow_style:
        first, last = first.value[0][0], first.value[-1][1]
    if isinstance(first, yaml.SequenceNode) or isinstance(last, yaml.CollectionNode) is not (
        last is first and isinstance(first, yaml.MappingNode)
    ):
        return None
    start, end = span(document.text, first)[0], span(document.text, last)[1]
    is_folded = isinstance(last, yaml.ScalarNode) and last.style in {"|", ">"}
    return None if is_folded or "\n" in document.text[start:end] else (start, end)
